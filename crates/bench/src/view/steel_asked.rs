//! What the page of steels asks for, as questions write it. The planner of tempers and the next step ask for the same.

use biteband_steel::grade::search;
use biteband_steel::quench::Medium;

use super::Problem;
use crate::answer::{SteelAnswer, SteelQuestion, steel};
use crate::section::SectionInput;
use crate::state::{App, Field, ShapeKind, SteelField, SteelState};
use crate::words::{Language, SteelPage};

/// How many names are suggested.
const SUGGESTED: usize = 6;

/// How a question names the steel.
#[derive(Clone, Debug, Default)]
pub(super) struct Named {
    pub(super) steel: Option<String>,
    pub(super) composition: Option<String>,
}

/// The steel, and what is to be said of its name.
#[derive(Default)]
pub(super) struct Asked {
    pub(super) named: Option<Named>,
    pub(super) card: Option<Box<SteelAnswer>>,
    pub(super) understood: Vec<String>,
    /// Steels that one name may mean: key, label, whether it is taken.
    pub(super) candidates: Vec<(String, String, bool)>,
    pub(super) suggestions: Vec<String>,
    pub(super) hint: Option<SteelPage>,
    pub(super) problem: Option<(SteelField, Problem)>,
}

/// A text that says something.
pub(super) fn given(text: &str) -> Option<String> {
    let text = text.trim();
    (!text.is_empty()).then(|| text.to_owned())
}

/// Finds the steel.
pub(super) fn asked(app: &App, language: Language) -> Asked {
    let state = &app.saved.steel;
    let units = app.saved.settings.units;
    let typing = |field: SteelField| app.session.active == Some(Field::Steel(field));
    let mut asked = Asked::default();
    if state.by_composition {
        let Some(text) = given(&state.own) else {
            asked.hint = Some(SteelPage::Empty);
            return asked;
        };
        match crate::composition::parse_composition(language, &text) {
            Ok(_) => asked.named = Some(Named { steel: None, composition: Some(text) }),
            Err(_) if typing(SteelField::Own) => asked.hint = Some(SteelPage::Typing),
            Err(refusal) => asked.problem = Some((SteelField::Own, refusal.into())),
        }
        return asked;
    }
    let Some(name) = given(&state.query) else {
        asked.hint = Some(SteelPage::Empty);
        return asked;
    };
    let of = state.picked.clone().unwrap_or_else(|| name.clone());
    match steel(language, &SteelQuestion { name: of.clone(), units }) {
        Ok(card) => {
            if state.picked.is_some() {
                if let Ok(typed) = steel(language, &SteelQuestion { name: name.clone(), units }) {
                    asked.candidates = meanings(&typed, card.key);
                }
            } else {
                asked.candidates = meanings(&card, card.key);
            }
            // That a grade's own name stands for it needs no sentence.
            let plain = card.candidates.is_empty() && card.designation == card.key;
            asked.understood = card.verdict.iter().skip(usize::from(plain)).cloned().collect();
            if typing(SteelField::Query) {
                asked.suggestions = suggest(&name);
            }
            asked.card = Some(Box::new(card));
            asked.named = Some(Named { steel: Some(of), composition: None });
        }
        Err(refusal) => {
            asked.suggestions = suggest(&name);
            if typing(SteelField::Query) {
                asked.hint = Some(SteelPage::Typing);
            } else {
                asked.problem = Some((SteelField::Query, refusal.into()));
            }
        }
    }
    asked
}

/// The steels that the typed name may mean, the chosen one marked.
fn meanings(typed: &SteelAnswer, chosen: &str) -> Vec<(String, String, bool)> {
    if typed.candidates.is_empty() {
        return Vec::new();
    }
    let first = (typed.key, format!("{}: {}", typed.name, typed.closeness_text));
    let others = typed
        .candidates
        .iter()
        .map(|one| (one.key, format!("{}: {}", one.name, one.closeness_text)));
    std::iter::once(first)
        .chain(others)
        .map(|(key, label)| (key.to_owned(), label, key == chosen))
        .collect()
}

fn suggest(name: &str) -> Vec<String> {
    let found = search(name, SUGGESTED).into_iter().map(|one| one.text().to_owned());
    found.filter(|text| text != name).collect()
}

/// The section; nothing while a size is missing.
pub(super) fn section(state: &SteelState) -> Option<SectionInput> {
    let size = given(&state.size)?;
    let two = || Some(format!("{size} x {}", given(&state.second)?));
    let mut section = SectionInput { length: given(&state.length), ..SectionInput::default() };
    match state.shape {
        ShapeKind::Round => section.round = Some(size),
        ShapeKind::Square => section.square = Some(size),
        ShapeKind::Hexagon => section.hex = Some(size),
        ShapeKind::Plate => section.plate = Some(size),
        ShapeKind::Tube => section.tube = Some(two()?),
        ShapeKind::Flat => section.flat = Some(two()?),
    }
    Some(section)
}

/// What is in the tank and how it is moved.
pub(super) fn medium(state: &SteelState) -> String {
    let mut bath = state.medium.clone();
    if state.medium != Medium::Air.key() {
        bath.push(':');
        bath.push_str(&state.movement);
    }
    bath
}

/// The bath with its amounts.
pub(super) fn bath(state: &SteelState) -> String {
    let mut bath = medium(state);
    let part = |before: &str, text: &str| given(text).map(|text| format!("{before}{text}"));
    let (litres, celsius) = (part("", &state.litres), part("@", &state.bath_temperature));
    let amount = litres.unwrap_or_default() + &celsius.unwrap_or_default();
    for part in [given(&amount), part("flash=", &state.flash_point)].into_iter().flatten() {
        bath.push(':');
        bath.push_str(&part);
    }
    bath
}

/// The checks of the oven's dial.
pub(super) fn checks(state: &SteelState) -> Vec<String> {
    state.checks.iter().map(|check| format!("{}={}", check.dial, check.truth)).collect()
}

//! The page of steels: what a bar is, what its section reaches, how to heat it and what the bath does.

use biteband_steel::furnace::Protection;
use biteband_steel::quench::{Medium, Movement};

use super::section::{BandView, SectionView, bands, section};
use super::steel_asked::{Named, asked, bath, checks, given, section as section_of};
use super::{Chip, Problem};
use crate::answer::{
    HeatAnswer, HeatQuestion, ReachAnswer, ReachQuestion, SteelAnswer, heat, reach, steel_targets,
};
use crate::format::Units;
use crate::measure::parse_length;
use crate::refusal::Refusal;
use crate::state::{App, Field, ShapeKind, SteelField, SteelState, has_degrees, is_truth};
use crate::words::{Language, Reach as ReachWords, SteelPage};

/// How many kinds of part are listed.
const KINDS: usize = 8;

/// Everything the page shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SteelView {
    /// By its name or by its composition.
    pub how: Vec<(bool, Chip)>,
    /// What the name stands for.
    pub understood: Vec<String>,
    /// Steels that one name may mean: key and label.
    pub candidates: Vec<(String, String, bool)>,
    /// Names like what was typed.
    pub suggestions: Vec<String>,
    /// Own bars that are kept.
    pub kept: Vec<String>,
    /// Forms of the part.
    pub shapes: Vec<(ShapeKind, Chip)>,
    /// Fields of its sizes.
    pub sizes: Vec<(SteelField, SteelPage)>,
    /// What may be in the tank.
    pub media: Vec<Chip>,
    /// How it may be moved; empty for air.
    pub movements: Vec<Chip>,
    /// What may keep the air off.
    pub protections: Vec<Chip>,
    /// Kinds of part: text and the hardness that a tap takes.
    pub kinds: Vec<(String, String)>,
    /// Their cautions.
    pub kind_cautions: Vec<&'static str>,
    /// Checks of the dial that are kept.
    pub checks: Vec<String>,
    /// What to do next while something is missing.
    pub hint: String,
    /// Problems of fields that were left.
    pub problems: Vec<(SteelField, Problem)>,
    /// Why there is no answer.
    pub problem: Option<Problem>,
    /// What the section reaches.
    pub reach: Option<ReachView>,
    /// How to heat it.
    pub heat: Option<HeatView>,
    /// What is known of the grade: heading and text.
    pub card: Vec<String>,
    /// What goes wrong with it, and the usual cautions, each once.
    pub cautions: Vec<String>,
    /// Sources: name and whether it was read.
    pub sources: Vec<String>,
}

/// What the section reaches.
#[derive(Clone, Debug, PartialEq)]
pub struct ReachView {
    /// Steel, section, bath.
    pub asked: String,
    /// In large letters.
    pub verdict: String,
    /// The numbers.
    pub say: String,
    /// The section.
    pub section: SectionView,
    /// Bands against what is wanted.
    pub bands: BandView,
    /// What can be done.
    pub ways: Vec<String>,
    /// Where it comes from.
    pub why: Vec<String>,
}

/// One line of the recipe.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct RecipeRow {
    /// What.
    pub name: SteelPage,
    /// How much.
    pub value: String,
    /// What it rests on.
    pub note: String,
}

/// How to heat it.
#[derive(Clone, Debug, PartialEq)]
pub struct HeatView {
    /// The stop, when there is one.
    pub stop: Option<String>,
    /// The recipe.
    pub rows: Vec<RecipeRow>,
    /// The shortest hold as a timer takes it.
    pub hold: Option<String>,
    /// The heat as it goes on the card of the part: temperature, hold, bath.
    pub done: String,
    /// Everything behind it, in sentences.
    pub why: Vec<String>,
    /// Lists to tick off: title and items.
    pub lists: Vec<(String, Vec<String>)>,
}

/// Makes the page.
#[must_use]
pub fn steel_page(app: &App, language: Language) -> SteelView {
    let state = &app.saved.steel;
    let units = app.saved.settings.units;
    let page = Page { app, state, language, units };
    let mut view = page.choices();
    page.kinds(&mut view);
    page.unkept(&mut view);
    let named = page.steel(&mut view);
    if let Some(name) = named {
        page.answers(&mut view, &name);
    }
    view
}

struct Page<'a> {
    app: &'a App,
    state: &'a SteelState,
    language: Language,
    units: Units,
}

impl Page<'_> {
    fn label(&self, label: SteelPage) -> String {
        self.language.steel_page(label).to_owned()
    }

    fn chip(&self, key: &'static str, label: SteelPage, on: bool) -> Chip {
        Chip { key, label: self.label(label), on }
    }

    /// Whether a field is being typed into.
    fn typing(&self, field: SteelField) -> bool {
        self.app.session.active == Some(Field::Steel(field))
    }

    fn choices(&self) -> SteelView {
        use SteelPage as S;
        let state = self.state;
        let say = |words: ReachWords<'_>| self.language.reach(words).into_owned();
        let shapes = [S::Round, S::Tube, S::Square, S::Hexagon, S::Flat, S::Plate];
        let shape = |(kind, label)| (kind, self.chip("", label, state.shape == kind));
        // Motor oil is on the list: who has it in the tank must be told.
        let media = Medium::ALL.iter().copied().map(|medium| Chip {
            key: medium.key(),
            label: say(ReachWords::MediumName(medium)),
            on: state.medium == medium.key(),
        });
        let movements = Movement::ALL.iter().copied().map(|movement| Chip {
            key: movement.key(),
            label: say(ReachWords::MovementName(movement)),
            on: state.movement == movement.key(),
        });
        let protections = [
            (Protection::Open, S::Open),
            (Protection::Coated, S::Coated),
            (Protection::Foil, S::Foil),
            (Protection::Charcoal, S::Charcoal),
            (Protection::Atmosphere, S::Atmosphere),
        ];
        SteelView {
            how: vec![
                (false, self.chip("name", S::ByName, !state.by_composition)),
                (true, self.chip("composition", S::ByComposition, state.by_composition)),
            ],
            kept: state
                .kept
                .iter()
                .map(|bar| format!("{}: {}", bar.name, bar.composition))
                .collect(),
            shapes: ShapeKind::ALL.into_iter().zip(shapes).map(shape).collect(),
            sizes: sizes(state.shape),
            media: media.collect(),
            movements: if state.medium == Medium::Air.key() {
                Vec::new()
            } else {
                movements.collect()
            },
            protections: protections
                .into_iter()
                .map(|(kind, label)| self.chip(kind.key(), label, state.protection == kind.key()))
                .collect(),
            checks: state
                .checks
                .iter()
                .map(|check| format!("{} = {}", check.dial, check.truth))
                .collect(),
            ..SteelView::default()
        }
    }

    /// Usual hardness of the kind of part that was typed.
    fn kinds(&self, view: &mut SteelView) {
        let Some(text) = given(&self.state.kind) else { return };
        match steel_targets(self.language, self.units, &text) {
            Ok(found) => {
                let rows = found.targets.iter().take(KINDS);
                view.kinds = rows
                    .map(|row| {
                        let take = match (row.hrc_low, row.hrc_high) {
                            (Some(low), Some(high)) => {
                                format!("{}-{} HRC", plain(low), plain(high))
                            }
                            (Some(low), None) => format!("{} HRC min", plain(low)),
                            (None, Some(high)) => format!("{} HRC max", plain(high)),
                            (None, None) => String::new(),
                        };
                        (format!("{}, {}: {}", row.part, row.zone, take), take)
                    })
                    .collect();
                for row in found.targets.iter().take(KINDS) {
                    if !row.caution.is_empty() && !view.kind_cautions.contains(&row.caution) {
                        view.kind_cautions.push(row.caution);
                    }
                }
            }
            Err(refusal) if !self.typing(SteelField::Kind) => {
                view.problems.push((SteelField::Kind, refusal.into()));
            }
            Err(_) => {}
        }
    }

    /// Why a bar or a check that was to be kept is not: a key that does nothing must say so.
    fn unkept(&self, view: &mut SteelView) {
        let state = self.state;
        for (field, label) in [
            (SteelField::Own, SteelPage::NeedsOwn),
            (SteelField::OwnName, SteelPage::NeedsName),
            (SteelField::Dial, SteelPage::NeedsDegrees),
            (SteelField::Truth, SteelPage::NeedsDegrees),
        ] {
            let text = state.text(field).trim();
            let degrees = matches!(field, SteelField::Dial | SteelField::Truth);
            let wrong = match field {
                SteelField::Dial => !has_degrees(text),
                SteelField::Truth => !is_truth(text),
                _ => text.is_empty(),
            };
            let session = &self.app.session;
            let name = Field::Steel(field);
            // An empty field that was only passed through is no mistake.
            let due = session.missing == Some(name)
                || (degrees && !text.is_empty() && session.left.contains(&name));
            if wrong && due && !self.typing(field) {
                let problem = Problem { message: self.label(label), instead: String::new() };
                view.problems.push((field, problem));
            }
        }
    }

    /// Finds the steel; what is to be said of its name goes into the view.
    fn steel(&self, view: &mut SteelView) -> Option<Named> {
        let found = asked(self.app, self.language);
        view.hint = found.hint.map(|hint| self.label(hint)).unwrap_or_default();
        view.problems.extend(found.problem);
        view.understood = found.understood;
        view.candidates = found.candidates;
        view.suggestions = found.suggestions;
        if let Some(card) = found.card {
            fill_card(view, &card);
        }
        found.named
    }

    fn questions(&self, named: &Named) -> (Option<ReachQuestion>, HeatQuestion) {
        let section = section_of(self.state);
        let question = HeatQuestion {
            steel: named.steel.clone(),
            composition: named.composition.clone(),
            section: section.clone().unwrap_or_default(),
            quench: Some(bath(self.state)),
            protection: Some(self.state.protection.clone()),
            oven: checks(self.state),
            units: self.units,
            ..HeatQuestion::default()
        };
        let reach = section.map(|section| ReachQuestion {
            steel: named.steel.clone(),
            composition: named.composition.clone(),
            section,
            quench: Some(bath(self.state)),
            target: given(&self.state.target),
            part: None,
            units: self.units,
        });
        (reach, question)
    }

    fn answers(&self, view: &mut SteelView, named: &Named) {
        let (asked, how) = self.questions(named);
        if let Some(question) = asked {
            match reach(self.language, &question) {
                Ok(answer) => self.reached(view, &answer),
                Err(refusal) => self.refused(view, named, refusal),
            }
        } else {
            view.hint = self.label(SteelPage::NoSection);
        }
        match heat(self.language, &how) {
            Ok(answer) => self.heated(view, &answer),
            Err(refusal) => {
                // A bath that cannot be cools no section either.
                if refusal.code.starts_with("bath.") {
                    view.reach = None;
                }
                self.refused(view, named, refusal);
            }
        }
    }

    /// A field that is still being typed into is no mistake; one that was left before it is.
    fn refused(&self, view: &mut SteelView, named: &Named, refusal: Refusal) {
        let mut refusal = Some(refusal);
        if let Some(Field::Steel(active)) = self.app.session.active {
            let mut state = self.state.clone();
            state.edit(active, String::new());
            let (asked, how) = Page { state: &state, ..*self }.questions(named);
            let of_section = asked.and_then(|question| reach(self.language, &question).err());
            refusal = of_section.or_else(|| heat(self.language, &how).err());
        }
        match refusal {
            None => view.hint = self.label(SteelPage::Typing),
            Some(refusal) if view.problem.is_none() => view.problem = Some(refusal.into()),
            Some(_) => {}
        }
    }

    fn reached(&self, view: &mut SteelView, answer: &ReachAnswer) {
        let mut why = vec![answer.basis.clone()];
        why.extend(answer.on_record.iter().cloned());
        why.extend(answer.notes.iter().cloned());
        view.reach = Some(ReachView {
            asked: answer.asked.clone(),
            verdict: answer.verdict.clone(),
            say: answer.say.clone(),
            section: section(answer, self.second()),
            bands: bands(answer),
            ways: answer.ways_out.iter().map(|way| way.text.clone()).collect(),
            why,
        });
        add(&mut view.cautions, answer.cautions.iter().cloned());
        add_sources(view, &answer.sources);
    }

    /// Bore of a tube as a share of its outside; of a flat the larger size in mm.
    fn second(&self) -> Option<f64> {
        let mm = |text: &str| parse_length(text).ok().map(|length| length.mm.get());
        let (first, second) = (mm(&self.state.size)?, mm(&self.state.second)?);
        match self.state.shape {
            ShapeKind::Tube => Some(second / first),
            ShapeKind::Flat => Some(first.max(second)),
            _ => None,
        }
    }

    fn heated(&self, view: &mut SteelView, answer: &HeatAnswer) {
        let medium = Medium::find(&self.state.medium);
        let medium = medium.map(|medium| self.language.reach(ReachWords::MediumName(medium)));
        view.heat = Some(super::steel_heat::heat_view(
            self.language,
            answer,
            self.units,
            medium.as_deref().unwrap_or_default(),
        ));
        add(&mut view.cautions, answer.cautions.iter().cloned());
        add_sources(view, &answer.sources);
    }
}

fn fill_card(view: &mut SteelView, card: &SteelAnswer) {
    let texts = [
        card.title.as_str(),
        &card.composition.text,
        &card.hardening.text,
        &card.supplied.text,
        &card.as_quenched.text,
        &card.section,
        &card.tempering.text,
        card.avoid.as_ref().map_or("", |avoid| avoid.text.as_str()),
        &card.working.text,
    ];
    let texts = texts.into_iter().chain(card.ages.iter().map(|age| age.text.as_str()));
    let texts = texts.chain(card.notes.iter().map(String::as_str));
    view.card = texts.filter(|text| !text.is_empty()).map(str::to_owned).collect();
    add(&mut view.cautions, card.hazards.iter().cloned());
    add(&mut view.cautions, card.cautions.iter().cloned());
    let source = |source: &crate::answer::SteelSource| {
        format!("{}: {} ({})", source.id, source.title, source.seen)
    };
    view.sources = card.sources.iter().map(source).collect();
}

fn add_sources(view: &mut SteelView, keys: &[&'static str]) {
    let found = keys.iter().filter_map(|key| biteband_steel::source(key));
    add(
        &mut view.sources,
        found.map(|source| {
            format!("{}: {} ({})", source.key(), source.title(), source.seen().key())
        }),
    );
}

fn plain(value: f64) -> String {
    crate::format::exact(value)
}

/// The fields of a shape's sizes.
fn sizes(shape: ShapeKind) -> Vec<(SteelField, SteelPage)> {
    use SteelPage as S;
    let (first, second) = match shape {
        ShapeKind::Round => (S::Diameter, None),
        ShapeKind::Tube => (S::Outside, Some(S::Inside)),
        ShapeKind::Square => (S::Side, None),
        ShapeKind::Hexagon => (S::AcrossFlats, None),
        ShapeKind::Flat => (S::Width, Some(S::Thickness)),
        ShapeKind::Plate => (S::Thickness, None),
    };
    let mut fields = vec![(SteelField::Size, first)];
    fields.extend(second.map(|label| (SteelField::Second, label)));
    fields.push((SteelField::Length, S::Length));
    fields
}

/// Adds what is not there yet, by itself or inside a longer sentence.
fn add(list: &mut Vec<String>, more: impl IntoIterator<Item = String>) {
    for text in more {
        if !text.is_empty() && !list.iter().any(|known| known.contains(&text)) {
            list.push(text);
        }
    }
}

//! What the temper planner and the next step remember: what was done to the part, and the person's own results.
//!
//! Steel, section, bath, wanted hardness and the checks of the oven are those of the page of steels.

use serde::{Deserialize, Serialize};

use super::texts::Texts;
use super::{Action, App, Field, Saved};

/// A field of the planner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum TemperField {
    /// A temper whose hardness is asked for.
    At,
    /// Time at heat.
    Held,
    /// Tempers that the part has had.
    Done,
    /// Hardness as quenched.
    AsQuenched,
    /// Measured hardness of an own result.
    Measured,
    /// The temper before it.
    After,
}

impl TemperField {
    /// All of them.
    pub const ALL: [Self; 6] =
        [Self::At, Self::Held, Self::Done, Self::AsQuenched, Self::Measured, Self::After];

    /// Stable name for element ids.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::At => "temper-at",
            Self::Held => "temper-held",
            Self::Done => "temper-done",
            Self::AsQuenched => "temper-quenched",
            Self::Measured => "temper-measured",
            Self::After => "temper-after",
        }
    }
}

/// What was done to the part last.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum PartStage {
    Bought,
    #[default]
    Quenched,
    Tempered,
}

impl PartStage {
    /// All of them, in the order of the work.
    pub const ALL: [Self; 3] = [Self::Bought, Self::Quenched, Self::Tempered];

    /// Stable name, as in a question.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Bought => "bought",
            Self::Quenched => "quenched",
            Self::Tempered => "tempered",
        }
    }
}

/// A result of the person's own, every text as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct OwnResult {
    /// The steel it was found on, as it was named then.
    pub steel: String,
    /// What was measured.
    pub hardness: String,
    /// The temper before it, as the oven's dial showed it.
    pub temper: String,
}

/// The planner as it is stored: the texts of the fields in the order of [`TemperField::ALL`], the stage, a letter for each
/// switch that is on, then the results. The pages read a [`Planner`] from it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct TemperState {
    texts: Texts,
}

/// The planner as far as it has come; every text as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
#[expect(clippy::struct_excessive_bools, reason = "each is a switch of the page")]
pub struct Planner {
    /// Own results that are kept.
    pub results: Vec<OwnResult>,
    /// Own results are left out of the plan.
    pub by_the_book: bool,
    /// What was done to the part last.
    pub stage: PartStage,
    /// It is at its size.
    pub at_size: bool,
    /// It was heated well above its window.
    pub overheated: bool,
    /// No time is left today for a full temper.
    pub hurried: bool,
}

/// Parts of a result; typed texts hold no such sign.
const PARTED: char = '\t';
/// Places of stage, switches and first result, behind the fields.
const STAGE: usize = TemperField::ALL.len();
const SWITCHES: usize = STAGE + 1;
const RESULTS: usize = STAGE + 2;

impl TemperState {
    /// The text of a field.
    #[must_use]
    pub fn text(&self, field: TemperField) -> &str {
        self.texts.at(field as usize)
    }

    pub(crate) fn edit(&mut self, field: TemperField, text: String) {
        self.texts.put(field as usize, text);
    }

    /// What it holds besides the fields.
    #[must_use]
    pub fn planner(&self) -> Planner {
        let stage = PartStage::ALL.into_iter().find(|one| one.key() == self.texts.at(STAGE));
        let switches = self.texts.at(SWITCHES);
        let results = self.texts.from(RESULTS).map(|text| {
            let mut parts = text.split(PARTED).map(str::to_owned);
            let mut next = || parts.next().unwrap_or_default();
            OwnResult { steel: next(), hardness: next(), temper: next() }
        });
        Planner {
            results: results.collect(),
            by_the_book: switches.contains('b'),
            stage: stage.unwrap_or_default(),
            at_size: switches.contains('s'),
            overheated: switches.contains('o'),
            hurried: switches.contains('h'),
        }
    }

    pub(crate) fn keep(&mut self, planner: Planner) {
        self.texts.put(STAGE, planner.stage.key().to_owned());
        let switches = [
            (planner.at_size, 's'),
            (planner.overheated, 'o'),
            (planner.hurried, 'h'),
            (planner.by_the_book, 'b'),
        ];
        let on = switches.into_iter().filter(|(on, _)| *on).map(|(_, letter)| letter);
        self.texts.put(SWITCHES, on.collect());
        let results = planner.results.into_iter();
        let written =
            results.map(|one| [one.steel, one.hardness, one.temper].join(&String::from(PARTED)));
        self.texts.put_from(RESULTS, written);
    }
}

/// Something that happened on the planner or beside the next step.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum TemperAction {
    /// What was done to the part last.
    Stage(PartStage),
    /// It is at its size, or not.
    AtSize(bool),
    /// It was heated too hot, or not.
    Overheated(bool),
    /// No time is left today, or there is.
    Hurried(bool),
    /// Own results are left out, or count.
    ByTheBook(bool),
    /// Keeps the result that was typed.
    AddResult,
    /// Forgets one.
    RemoveResult(usize),
}

/// A change of the planner. It brings along what does it, so that only the parts that make one hold the code.
#[derive(Clone, Debug)]
pub struct TemperChange {
    action: TemperAction,
    does: fn(&mut App, TemperAction),
}

impl PartialEq for TemperChange {
    fn eq(&self, other: &Self) -> bool {
        self.action == other.action
    }
}

impl TemperChange {
    pub(super) fn apply(self, app: &mut App) {
        (self.does)(app, self.action);
    }
}

impl From<TemperAction> for Action {
    fn from(action: TemperAction) -> Self {
        Self::Temper(TemperChange { action, does: change })
    }
}

fn change(app: &mut App, action: TemperAction) {
    let Saved { steel, temper, .. } = &mut app.saved;
    let named = if steel.by_composition {
        &steel.own
    } else {
        steel.picked.as_ref().unwrap_or(&steel.query)
    };
    let before = temper.planner().results;
    app.session.missing = temper.act(action, named).map(Field::Temper);
    let after = temper.planner().results;
    match action {
        // What was measured on the part in hand stays with it.
        TemperAction::AddResult if after.len() > before.len() => {
            app.saved.part.learn(after.last().cloned(), None);
        }
        TemperAction::RemoveResult(index) => app.saved.part.learn(None, before.get(index)),
        _ => {}
    }
}

impl TemperState {
    /// The part was bought, quenched or tempered.
    pub(super) fn turn(&mut self, stage: PartStage) {
        self.keep(Planner { stage, ..self.planner() });
    }

    /// Does what happened on a part of this steel; a field that stands in the way is handed back, so that its error shows.
    fn act(&mut self, action: TemperAction, steel: &str) -> Option<TemperField> {
        let mut planner = self.planner();
        match action {
            TemperAction::Stage(stage) => planner.stage = stage,
            TemperAction::AtSize(on) => planner.at_size = on,
            TemperAction::Overheated(on) => planner.overheated = on,
            TemperAction::Hurried(on) => planner.hurried = on,
            TemperAction::ByTheBook(on) => planner.by_the_book = on,
            TemperAction::AddResult => {
                let figure = |text: &str| text.bytes().any(|sign| sign.is_ascii_digit());
                let after = self.text(TemperField::After);
                if !figure(self.text(TemperField::Measured)) {
                    return Some(TemperField::Measured);
                }
                // A temperature without its unit would be kept for a wrong one.
                if !(figure(after) && after.contains(['C', 'c', 'F', 'f'])) {
                    return Some(TemperField::After);
                }
                planner.results.push(OwnResult {
                    steel: steel.trim().to_owned(),
                    hardness: self.text(TemperField::Measured).to_owned(),
                    temper: self.text(TemperField::After).to_owned(),
                });
                self.edit(TemperField::Measured, String::new());
                self.edit(TemperField::After, String::new());
            }
            TemperAction::RemoveResult(index) => {
                if index < planner.results.len() {
                    // What is forgotten stands in the fields, so that a slip costs nothing.
                    let OwnResult { hardness, temper, .. } = planner.results.remove(index);
                    self.edit(TemperField::Measured, hardness);
                    self.edit(TemperField::After, temper);
                }
            }
        }
        self.keep(planner);
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_result_needs_both_figures_and_is_forgotten_without_loss() {
        let mut state = TemperState::default();
        assert_eq!(state.act(TemperAction::AddResult, "4140"), Some(TemperField::Measured));
        state.edit(TemperField::Measured, "53 HRC".into());
        assert_eq!(state.act(TemperAction::AddResult, "4140"), Some(TemperField::After));
        state.edit(TemperField::After, "220 °C / 2 h".into());
        assert_eq!(state.act(TemperAction::AddResult, " 4140 "), None);
        let kept = OwnResult {
            steel: "4140".into(),
            hardness: "53 HRC".into(),
            temper: "220 °C / 2 h".into(),
        };
        assert_eq!(state.planner().results, [kept]);
        assert_eq!(state.text(TemperField::Measured), "");
        let _ = state.act(TemperAction::RemoveResult(4), "4140");
        assert_eq!(state.planner().results.len(), 1);
        let _ = state.act(TemperAction::RemoveResult(0), "4140");
        assert!(state.planner().results.is_empty());
        assert_eq!(state.text(TemperField::After), "220 °C / 2 h");
    }

    #[test]
    fn stage_and_switches_are_kept_beside_every_field() {
        let mut state = TemperState::default();
        assert_eq!(state.planner(), Planner::default());
        for field in TemperField::ALL {
            state.edit(field, field.key().to_owned());
        }
        let _ = state.act(TemperAction::Stage(PartStage::Tempered), "");
        for action in [TemperAction::AtSize(true), TemperAction::ByTheBook(true)] {
            let _ = state.act(action, "");
        }
        let planner = state.planner();
        assert_eq!(planner.stage, PartStage::Tempered);
        assert!(planner.at_size && planner.by_the_book);
        assert!(!planner.overheated && !planner.hurried && planner.results.is_empty());
        let _ = state.act(TemperAction::AtSize(false), "");
        assert!(!state.planner().at_size && state.planner().by_the_book);
        for field in TemperField::ALL {
            assert_eq!(state.text(field), field.key());
        }
    }
}

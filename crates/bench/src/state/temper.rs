//! What the temper planner and the next step remember: what was done to the part, and the person's own results.
//!
//! Steel, section, bath, wanted hardness and the checks of the oven are those of the page of steels.

use serde::{Deserialize, Serialize};

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
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
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
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct OwnResult {
    /// The steel it was found on, as it was named then.
    pub steel: String,
    /// What was measured.
    pub hardness: String,
    /// The temper before it, as the oven's dial showed it.
    pub temper: String,
}

/// The planner as far as it has come; every text as typed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
#[expect(clippy::struct_excessive_bools, reason = "each is a switch of the page")]
pub struct TemperState {
    /// A temper whose hardness is asked for.
    pub at: String,
    /// Time at heat.
    pub held: String,
    /// Tempers that the part has had.
    pub done: String,
    /// Hardness as quenched.
    pub as_quenched: String,
    /// Own results that are kept.
    pub results: Vec<OwnResult>,
    /// Measured hardness of the result that is being typed.
    pub measured: String,
    /// Its temper.
    pub after: String,
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

impl TemperState {
    /// The text of a field.
    #[must_use]
    pub fn text(&self, field: TemperField) -> &str {
        match field {
            TemperField::At => &self.at,
            TemperField::Held => &self.held,
            TemperField::Done => &self.done,
            TemperField::AsQuenched => &self.as_quenched,
            TemperField::Measured => &self.measured,
            TemperField::After => &self.after,
        }
    }

    pub(crate) fn edit(&mut self, field: TemperField, text: String) {
        let own = match field {
            TemperField::At => &mut self.at,
            TemperField::Held => &mut self.held,
            TemperField::Done => &mut self.done,
            TemperField::AsQuenched => &mut self.as_quenched,
            TemperField::Measured => &mut self.measured,
            TemperField::After => &mut self.after,
        };
        *own = text;
    }

    /// Does what happened on a part of this steel; a field that stands in the way is handed back, so that its error shows.
    pub(crate) fn act(&mut self, action: TemperAction, steel: &str) -> Option<TemperField> {
        match action {
            TemperAction::Stage(stage) => self.stage = stage,
            TemperAction::AtSize(on) => self.at_size = on,
            TemperAction::Overheated(on) => self.overheated = on,
            TemperAction::Hurried(on) => self.hurried = on,
            TemperAction::ByTheBook(on) => self.by_the_book = on,
            TemperAction::AddResult => return self.add_result(steel),
            TemperAction::RemoveResult(index) => {
                if index < self.results.len() {
                    // What is forgotten stands in the fields, so that a slip costs nothing.
                    let OwnResult { hardness, temper, .. } = self.results.remove(index);
                    (self.measured, self.after) = (hardness, temper);
                }
            }
        }
        None
    }

    fn add_result(&mut self, steel: &str) -> Option<TemperField> {
        let figure = |text: &str| text.bytes().any(|sign| sign.is_ascii_digit());
        if !figure(&self.measured) {
            return Some(TemperField::Measured);
        }
        // A temperature without its unit would be kept for a wrong one.
        if !(figure(&self.after) && self.after.contains(['C', 'c', 'F', 'f'])) {
            return Some(TemperField::After);
        }
        self.results.push(OwnResult {
            steel: steel.trim().to_owned(),
            hardness: core::mem::take(&mut self.measured),
            temper: core::mem::take(&mut self.after),
        });
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
        state.edit(TemperField::After, "220 / 2 h".into());
        assert_eq!(state.act(TemperAction::AddResult, "4140"), Some(TemperField::After));
        assert_eq!(state.after, "220 / 2 h");
        state.edit(TemperField::After, "220 °C / 2 h".into());
        assert_eq!(state.act(TemperAction::AddResult, " 4140 "), None);
        let kept = OwnResult {
            steel: "4140".into(),
            hardness: "53 HRC".into(),
            temper: "220 °C / 2 h".into(),
        };
        assert_eq!((state.results.as_slice(), state.measured.as_str()), (&[kept][..], ""));
        let _ = state.act(TemperAction::RemoveResult(4), "4140");
        assert_eq!(state.results.len(), 1);
        let _ = state.act(TemperAction::RemoveResult(0), "4140");
        assert_eq!((state.results.len(), state.after.as_str()), (0, "220 °C / 2 h"));
    }

    #[test]
    fn every_field_holds_its_own_text() {
        let mut state = TemperState::default();
        for field in TemperField::ALL {
            state.edit(field, field.key().to_owned());
        }
        for field in TemperField::ALL {
            assert_eq!(state.text(field), field.key());
        }
    }
}

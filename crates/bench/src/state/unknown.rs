//! What the page of unknown bars remembers: the answers of each test, and those of the bar before.

use serde::{Deserialize, Serialize};

/// A test, by whose name its answer is kept.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum UnknownField {
    /// A magnet.
    Magnet,
    /// The spark at a wheel.
    Spark,
    /// A file on the bar as it was found.
    Found,
    /// The skin against what lies deeper.
    Skin,
    /// A coupon in oil.
    Oil,
    /// The break of a coupon.
    Snap,
    /// A coupon in water.
    Water,
}

impl UnknownField {
    /// All of them, in the order of their cost.
    pub const ALL: [Self; 7] =
        [Self::Magnet, Self::Spark, Self::Found, Self::Skin, Self::Oil, Self::Snap, Self::Water];

    /// Stable name for element ids.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Magnet => "unknown-magnet",
            Self::Spark => "unknown-spark",
            Self::Found => "unknown-found",
            Self::Skin => "unknown-skin",
            Self::Oil => "unknown-oil",
            Self::Snap => "unknown-snap",
            Self::Water => "unknown-water",
        }
    }
}

/// What was seen of a bar: an answer for each test, as chosen or as typed, in the order of [`UnknownField::ALL`];
/// empty where nothing was tried.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Seen {
    answers: Vec<String>,
}

impl Seen {
    /// The answer of a test.
    #[must_use]
    pub fn text(&self, field: UnknownField) -> &str {
        self.answers.get(field as usize).map_or("", String::as_str)
    }

    /// Whether nothing was seen yet.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.answers.iter().all(String::is_empty)
    }

    pub(crate) fn edit(&mut self, field: UnknownField, text: String) {
        let place = field as usize;
        if self.answers.len() <= place {
            self.answers.resize(place + 1, String::new());
        }
        if let Some(answer) = self.answers.get_mut(place) {
            *answer = text;
        }
    }
}

/// The bar in hand and the one before it.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct UnknownState {
    /// What was seen of the bar in hand.
    pub now: Seen,
    /// What was seen of the bar before it.
    pub last: Seen,
}

impl UnknownState {
    /// Takes an answer; the same once more takes it back.
    pub(crate) fn choose(&mut self, field: UnknownField, answer: &str) {
        let again = self.now.text(field) == answer;
        self.now.edit(field, if again { String::new() } else { answer.to_owned() });
    }

    /// Puts another bar in hand: a new one, or the last one when nothing was seen of this.
    pub(crate) fn turn(&mut self) {
        if self.now.is_empty() {
            core::mem::swap(&mut self.now, &mut self.last);
        } else {
            self.last = core::mem::take(&mut self.now);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_answer_is_taken_changed_and_taken_back() {
        let mut state = UnknownState::default();
        state.choose(UnknownField::Water, "<40 HRC");
        state.choose(UnknownField::Spark, "forks");
        state.choose(UnknownField::Spark, "bursts");
        assert_eq!(state.now.text(UnknownField::Spark), "bursts");
        assert_eq!(state.now.text(UnknownField::Water), "<40 HRC");
        assert_eq!(state.now.text(UnknownField::Magnet), "");
        state.choose(UnknownField::Spark, "bursts");
        state.choose(UnknownField::Water, "<40 HRC");
        assert!(state.now.is_empty());
    }

    #[test]
    fn a_new_bar_keeps_the_last_one_until_the_next() {
        let mut state = UnknownState::default();
        state.choose(UnknownField::Magnet, "none");
        let first = state.now.clone();
        state.turn();
        assert!(state.now.is_empty());
        state.turn();
        assert_eq!((&state.now, state.last.is_empty()), (&first, true));
        state.turn();
        state.choose(UnknownField::Magnet, "sticks");
        state.turn();
        assert_eq!(state.last.text(UnknownField::Magnet), "sticks");
    }
}

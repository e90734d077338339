//! What a card holds that no page has a place for. The state carries it as a text, which only the parts that work on
//! cards read and write: what the first module knows of every state weighs.

use serde::{Deserialize, Serialize};

use super::{Entry, Photo, ResultSheet, Zone};
use crate::state::PartState;

#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub(crate) struct Rest {
    pub(crate) created: String,
    pub(crate) demo: bool,
    pub(crate) recipe_of: String,
    pub(crate) recipe: Vec<Entry>,
    pub(crate) zones: Vec<Zone>,
    pub(crate) results: Vec<ResultSheet>,
    pub(crate) story: Vec<Entry>,
    pub(crate) photos: Vec<Photo>,
    /// The entry that was taken out last, and its place, so that a slip costs nothing.
    pub(crate) taken: Option<(usize, Entry)>,
}

impl Rest {
    /// What the state carries; of a text that is none, nothing.
    pub(crate) fn of(part: &PartState) -> Self {
        serde_json::from_str(part.written()).unwrap_or_default()
    }

    /// Puts it into the state.
    pub(crate) fn keep(&self, part: &mut PartState) {
        // Texts and numbers can always be written.
        part.write(serde_json::to_string(self).unwrap_or_default());
    }
}

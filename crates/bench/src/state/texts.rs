//! Texts by their place, the leanest form of what a page remembers.

use serde::{Deserialize, Serialize};

/// Texts in places; one that was never written is empty.
///
/// A list of texts and nothing else, because what the first module knows of every state weighs: the pages read what it
/// stands for.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub(super) struct Texts(Vec<String>);

impl Texts {
    pub(super) fn at(&self, place: usize) -> &str {
        self.0.get(place).map_or("", String::as_str)
    }

    pub(super) fn put(&mut self, place: usize, text: String) {
        if self.0.len() <= place {
            self.0.resize(place + 1, String::new());
        }
        if let Some(own) = self.0.get_mut(place) {
            *own = text;
        }
    }

    /// Every text from a place on.
    pub(super) fn from(&self, place: usize) -> impl Iterator<Item = &String> {
        self.0.iter().skip(place)
    }

    /// Puts a list in the place of every text from a place on.
    pub(super) fn put_from(&mut self, place: usize, texts: impl IntoIterator<Item = String>) {
        self.0.truncate(place);
        self.0.resize(place, String::new());
        self.0.extend(texts);
    }
}

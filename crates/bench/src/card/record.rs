//! The stored form of one card: a version number, what wrote it, and the card itself.

use serde::{Deserialize, Serialize};

use super::Card;
use crate::state::{Damage, Step, Version, migrate};

/// The version of the form that this program writes, in storage and in files.
pub const SCHEMA: u32 = 1;

/// The steps so far, one for each version. Version 1 is the first, so there is none.
pub(crate) const STEPS: [Step; SCHEMA as usize - 1] = [];

#[derive(Serialize, Deserialize)]
struct Record<T> {
    schema: u32,
    #[serde(default)]
    app: String,
    #[serde(default)]
    data: String,
    card: T,
}

/// Writes a card for storage.
#[must_use]
pub fn write_record(card: &Card) -> String {
    let (app, data) = super::versions();
    // Texts and numbers can always be written.
    serde_json::to_string(&Record { schema: SCHEMA, app, data, card }).unwrap_or_default()
}

/// Reads a stored card of this or any older version.
///
/// # Errors
/// [`Damage::Newer`] for a form of the future, [`Damage::Unreadable`] for anything else that is no card of ours.
pub fn read_record(text: &str) -> Result<Card, Damage> {
    let unreadable = |_| Damage::Unreadable;
    let version: Version = serde_json::from_str(text).map_err(unreadable)?;
    if version.number() == SCHEMA {
        return serde_json::from_str(text)
            .map(|record: Record<Card>| record.card)
            .map_err(unreadable);
    }
    let old: Record<serde_json::Value> = serde_json::from_str(text).map_err(unreadable)?;
    // As a text once more, because a second reader of cards would weigh as much as the first.
    let raised = migrate(version.number(), old.card, &STEPS)?.to_string();
    serde_json::from_str(&raised).map_err(unreadable)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A card as version 1 of the program stored it, kept so that every later version reads it.
    const SAMPLE_1: &str = include_str!("../../tests/stored/card-1.json");

    #[test]
    fn the_stored_sample_of_version_1_is_read() {
        let card = read_record(SAMPLE_1).unwrap();
        assert_eq!((card.name.as_str(), card.target.as_str()), ("Capstan pawl", "50-54 HRC"));
        assert_eq!((card.revision, card.story.len(), card.files.strokes.len()), (7, 1, 2));
        assert_eq!(card.zones.first().map(|zone| zone.place.as_str()), Some("nose"));
        assert_eq!(read_record(&write_record(&card)), Ok(card));
    }

    #[test]
    fn a_newer_form_is_told_from_damage() {
        let newer = SAMPLE_1.replacen("\"schema\":1", "\"schema\":9", 1);
        assert_eq!(read_record(&newer), Err(Damage::Newer(9)));
        let older = SAMPLE_1.replacen("\"schema\":1", "\"schema\":0", 1);
        assert_eq!(read_record(&older), Err(Damage::Unreadable));
        for length in (0..SAMPLE_1.len() - 2).step_by(17) {
            let cut = SAMPLE_1.get(..length).unwrap_or_default();
            assert_eq!(read_record(cut), Err(Damage::Unreadable), "{length}");
        }
    }
}

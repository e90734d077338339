//! The stored form of the state: a version number, what wrote it, and the state itself.
//!
//! Every older form is brought up by pure steps, one for each version; a newer form is left alone.

use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::Saved;

/// The version of the stored form that this program writes.
pub const SCHEMA: u32 = 1;

/// One step from a version to the next, on the `state` part of the document.
pub type Step = fn(Value) -> Value;

/// The steps so far: the first entry brings version 1 to 2. Version 1 is the first, so there is none.
const STEPS: [Step; SCHEMA as usize - 1] = [];

/// The stored document: the state with its version and what wrote it.
#[derive(Debug, Serialize, Deserialize)]
pub struct Document<T> {
    /// Version of the form.
    schema: u32,
    /// Version of the program that wrote it.
    #[serde(default)]
    app: String,
    /// Version of the data it was written with.
    #[serde(default)]
    data: String,
    /// The state.
    state: T,
}

impl<T> Document<T> {
    /// The state alone.
    pub fn into_state(self) -> T {
        self.state
    }
}

/// The version alone, which every form has had and will have.
#[derive(Debug, Deserialize)]
pub struct Version {
    schema: u32,
}

impl Version {
    /// Its number.
    #[must_use]
    pub const fn number(&self) -> u32 {
        self.schema
    }
}

/// The document to store.
#[must_use]
pub fn document(saved: &Saved) -> Document<&Saved> {
    Document {
        schema: SCHEMA,
        app: env!("CARGO_PKG_VERSION").to_owned(),
        data: biteband_hardness::DATA_VERSION.to_owned(),
        state: saved,
    }
}

/// Why a stored document was not taken.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Damage {
    /// It cannot be read.
    Unreadable,
    /// A newer program wrote it, in a form with this number.
    Newer(u32),
}

/// A stored document as its host holds it: a text for a program, an object for the browser, which has a
/// parser of its own that the page need not bring along.
pub trait Found {
    /// Reads it as a type; `None` when it is no such thing.
    fn read<T: DeserializeOwned>(&self) -> Option<T>;
    /// Reads a type out of a value that was brought up to this version.
    fn convert<T: DeserializeOwned>(value: Value) -> Option<T>;
}

/// A document as JSON text.
#[derive(Clone, Copy, Debug)]
pub struct JsonText<'a>(pub &'a str);

impl Found for JsonText<'_> {
    fn read<T: DeserializeOwned>(&self) -> Option<T> {
        serde_json::from_str(self.0).ok()
    }

    fn convert<T: DeserializeOwned>(value: Value) -> Option<T> {
        serde_json::from_value(value).ok()
    }
}

/// Reads a stored document of this or any older version.
///
/// # Errors
/// [`Damage::Newer`] for a form of the future, [`Damage::Unreadable`] for anything else that is no
/// document of ours.
pub fn read<F: Found>(found: &F) -> Result<Saved, Damage> {
    let Version { schema } = found.read().ok_or(Damage::Unreadable)?;
    let steps = steps_from(schema, &STEPS)?;
    if steps.is_empty() {
        return found.read().map(Document::into_state).ok_or(Damage::Unreadable);
    }
    let old: Document<Value> = found.read().ok_or(Damage::Unreadable)?;
    F::convert(run(old.state, steps)).ok_or(Damage::Unreadable)
}

/// Brings the state part of a document from its version to the one behind the last step.
///
/// # Errors
/// [`Damage::Newer`] when the version lies beyond the steps, [`Damage::Unreadable`] for version 0.
pub fn migrate(schema: u32, state: Value, steps: &[Step]) -> Result<Value, Damage> {
    Ok(run(state, steps_from(schema, steps)?))
}

/// The steps that a document of this version still needs. An older document needs at least one, so
/// without any step there is no older document.
fn steps_from(schema: u32, steps: &[Step]) -> Result<&[Step], Damage> {
    let done = schema.checked_sub(1).ok_or(Damage::Unreadable)?;
    let done = usize::try_from(done).map_err(|_| Damage::Newer(schema))?;
    steps.get(done..).ok_or(Damage::Newer(schema))
}

fn run(state: Value, steps: &[Step]) -> Value {
    steps.iter().fold(state, |state, step| step(state))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::state::{Action, App, Field, ShapeKind, SteelState, reduce};

    fn from_json(text: &str) -> Result<Saved, Damage> {
        read(&JsonText(text))
    }

    fn to_json(saved: &Saved) -> String {
        serde_json::to_string(&document(saved)).unwrap()
    }

    use serde_json::json;

    /// A document as version 1 of the program wrote it, kept so that every later version reads it.
    const SAMPLE_1: &str = include_str!("../../tests/stored/schema-1.json");

    #[test]
    fn the_stored_sample_of_version_1_is_read() {
        let saved = from_json(SAMPLE_1).unwrap();
        assert_eq!(saved.file_test.target_text, "50-54 HRC");
        assert_eq!(saved.file_test.now.strokes.len(), 6);
        assert_eq!(saved.file_test.now.proofs.len(), 1);
        assert!(saved.file_test.now.readings.is_empty());
        assert_eq!(saved.convert.text, "HV 700 ±50");
        assert_eq!(saved.convert.scale, "HV");
    }

    /// A document of the same version with readings of instruments, which older ones lack.
    const SAMPLE_READINGS: &str = include_str!("../../tests/stored/schema-1-readings.json");

    #[test]
    fn the_stored_sample_with_readings_is_read() {
        let saved = from_json(SAMPLE_READINGS).unwrap();
        let test = &saved.file_test;
        assert_eq!(test.instrument, "comparison");
        assert_eq!(test.reading_text, "53; 50");
        assert_eq!(test.now.readings.len(), 2);
        assert_eq!(test.now.readings[0].text, "52 53 HRC");
        assert_eq!(test.now.readings[1].on_known.as_deref(), Some(" 47 49"));
        assert!(test.past[0].readings.is_empty());
    }

    /// A document of the same version with the page of steels, which older ones lack.
    const SAMPLE_STEEL: &str = include_str!("../../tests/stored/schema-1-steel.json");

    #[test]
    fn the_stored_sample_with_a_steel_is_read_and_older_ones_have_an_empty_page() {
        let steel = from_json(SAMPLE_STEEL).unwrap().steel;
        assert_eq!((steel.query.as_str(), steel.picked.as_deref()), ("45", Some("C45")));
        assert_eq!((steel.own_name.as_str(), steel.by_composition), ("bar 7", false));
        assert_eq!(steel.kept[0].composition, "C=0,41 Mn=0,85 Cr=1,0 Mo=0,2");
        assert_eq!(steel.shape, ShapeKind::Tube);
        assert_eq!((steel.size.as_str(), steel.second.as_str()), ("1-1/2 in", "20 mm"));
        assert_eq!((steel.medium.as_str(), steel.movement.as_str()), ("vegetable_oil", "good"));
        assert_eq!((steel.litres.as_str(), steel.flash_point.as_str()), ("2 US gal", "230 °C"));
        assert_eq!((steel.target.as_str(), steel.kind.as_str()), ("50-54 HRC", "cold ch"));
        assert_eq!(steel.protection, "foil");
        assert_eq!((steel.checks[0].dial.as_str(), steel.truth.as_str()), ("240 °C", "231,9"));
        for older in [SAMPLE_1, SAMPLE_READINGS] {
            assert_eq!(from_json(older).unwrap().steel, SteelState::default());
        }
    }

    /// A document of the same version with a part in hand and a claim, which older ones lack.
    const SAMPLE_PART: &str = include_str!("../../tests/stored/schema-1-part.json");

    #[test]
    fn the_stored_sample_with_a_part_in_hand_is_read_and_older_ones_have_none() {
        let saved = from_json(SAMPLE_PART).unwrap();
        let card = crate::card::Card::of(&saved);
        assert_eq!((card.id.as_str(), card.name.as_str()), ("pawl-0001", "Capstan pawl"));
        assert_eq!(
            (card.steel.origin.as_str(), card.notes.as_str()),
            ("offcut from bar 7", "Fit to the wheel.")
        );
        assert_eq!((card.created.as_str(), card.story.len()), ("2026-03-02T14:00:00Z", 1));
        assert_eq!((card.zones.len(), card.tempering.results.len()), (1, 1));
        assert_eq!((card.claim.paper.as_str(), card.claim.place.as_str()), ("28-32 HRC", "skin"));
        assert_eq!(card.claim.readings.first().map(|one| one.text.as_str()), Some("288 HBW +-8"));
        for older in [SAMPLE_1, SAMPLE_READINGS, SAMPLE_STEEL] {
            assert!(!from_json(older).unwrap().part.in_hand());
        }
    }

    #[test]
    fn what_is_written_is_read_back_the_same() {
        let app = reduce(&App::default(), Action::Edit(Field::Convert, "52,5 HRC".into()));
        assert_eq!(from_json(&to_json(&app.saved)), Ok(app.saved));
    }

    #[test]
    fn steps_run_in_order_from_the_version_of_the_document() {
        fn rename(mut state: Value) -> Value {
            if let Some(map) = state.as_object_mut()
                && let Some(old) = map.remove("old")
            {
                map.insert("new".into(), old);
            }
            state
        }
        fn mark(mut state: Value) -> Value {
            if let Some(map) = state.as_object_mut() {
                let sum = map.len();
                map.insert("fields_before".into(), sum.into());
            }
            state
        }
        let steps: [Step; 2] = [rename, mark];
        let first = migrate(1, json!({"old": 7}), &steps);
        assert_eq!(first, Ok(json!({"new": 7, "fields_before": 1})));
        let second = migrate(2, json!({"new": 7}), &steps);
        assert_eq!(second, Ok(json!({"new": 7, "fields_before": 1})));
        assert_eq!(migrate(3, json!({"kept": 1}), &steps), Ok(json!({"kept": 1})));
    }

    #[test]
    fn a_newer_form_is_left_alone_and_damage_is_named() {
        assert_eq!(from_json(r#"{"schema":99,"state":{}}"#), Err(Damage::Newer(99)));
        assert_eq!(from_json(r#"{"schema":0,"state":{}}"#), Err(Damage::Unreadable));
        for damaged in ["", "{", "null", "[]", r#"{"schema":1}"#, r#"{"schema":1,"state":7}"#] {
            assert_eq!(from_json(damaged), Err(Damage::Unreadable), "{damaged}");
        }
        let wrong_type = r#"{"schema":1,"state":{"convert":{"text":5}}}"#;
        assert_eq!(from_json(wrong_type), Err(Damage::Unreadable));
    }

    proptest::proptest! {
        #[test]
        fn any_text_is_read_or_named_as_damaged(text in ".{0,300}") {
            let _ = from_json(&text);
        }
    }
}

//! Numbers in stored documents, written by the formatter that the page has anyway.
//!
//! A second float formatter with its tables would cost the page ten kilobytes after compression; the
//! shortest decimal that reads back to the same number is the same from both.

use serde::ser::{Error, SerializeSeq, Serializer};
use serde_json::value::RawValue;

fn raw<E: Error>(value: f64) -> Result<Box<RawValue>, E> {
    RawValue::from_string(value.to_string()).map_err(E::custom)
}

/// One number.
pub(crate) fn number<S: Serializer>(value: &f64, serializer: S) -> Result<S::Ok, S::Error> {
    serde::Serialize::serialize(&raw::<S::Error>(*value)?, serializer)
}

/// A number or nothing.
#[expect(clippy::ref_option, reason = "serde hands over a reference to the field")]
pub(crate) fn option<S: Serializer>(value: &Option<f64>, serializer: S) -> Result<S::Ok, S::Error> {
    match value {
        Some(value) => number(value, serializer),
        None => serializer.serialize_none(),
    }
}

/// A list of numbers.
pub(crate) fn list<S: Serializer>(values: &[f64], serializer: S) -> Result<S::Ok, S::Error> {
    let mut list = serializer.serialize_seq(Some(values.len()))?;
    for value in values {
        list.serialize_element(&raw::<S::Error>(*value)?)?;
    }
    list.end()
}

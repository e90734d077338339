//! Biteband for JavaScript: the questions and answers of the command line as plain objects.
//!
//! A refusal is a returned object with `refused`, never an exception, so that the types make a caller
//! look at it. What is absent is `null` in every answer; a question may leave out or set to
//! `undefined` whatever its type marks as optional.

use biteband_bench::Refusal;
use biteband_bench::answer::{
    self, ClaimQuestion, ConvertQuestion, FileQuestion, HeatQuestion, IndentQuestion,
    JominyQuestion, NextQuestion, ReachQuestion, SteelQuestion, TemperQuestion, UnknownQuestion,
};
use biteband_bench::card::{csv, file, find, text};
use biteband_bench::words::Language;
use serde::Serialize;
use serde::de::DeserializeOwned;
use wasm_bindgen::prelude::*;

#[wasm_bindgen(typescript_custom_section)]
const TYPES: &'static str = include_str!("types.d.ts");

const LANGUAGE: Language = Language::English;

#[derive(Serialize)]
struct Refused {
    refused: Refusal,
}

/// Plain objects and arrays, `null` for what is absent.
fn object(value: &impl Serialize) -> JsValue {
    let plain = serde_wasm_bindgen::Serializer::json_compatible();
    // The answers hold nothing that a plain object cannot.
    value.serialize(&plain).unwrap_or_default()
}

fn outcome<T: Serialize>(answer: Result<T, Refusal>) -> JsValue {
    match answer {
        Ok(answer) => object(&answer),
        Err(refused) => object(&Refused { refused }),
    }
}

/// Reads a question as the command line would read it from JSON: what is `undefined` counts as left
/// out, and a field that does not exist is an error instead of nothing.
fn question<T: DeserializeOwned>(given: &JsValue) -> Result<T, Refusal> {
    let refuse = |message: String, given: String| Refusal {
        code: "js.question",
        message,
        given,
        allowed: String::new(),
        instead: "See the package's types for the fields of a question.".to_owned(),
    };
    let text = js_sys::JSON::stringify(given).ok().and_then(|text| text.as_string());
    let Some(text) = text else {
        return Err(refuse("The question is not a plain object.".to_owned(), String::new()));
    };
    serde_json::from_str(&text).map_err(|error| {
        refuse(format!("The question has another shape: {error}."), text.chars().take(60).collect())
    })
}

/// Converts a reading, a range or a tolerance.
#[must_use]
#[wasm_bindgen(unchecked_return_type = "ConvertAnswer | Refused")]
pub fn convert(
    #[wasm_bindgen(js_name = "question", unchecked_param_type = "ConvertQuestion")] given: &JsValue,
) -> JsValue {
    outcome(question::<ConvertQuestion>(given).and_then(|asked| answer::convert(LANGUAGE, &asked)))
}

/// Says what strokes of graded files tell about a part.
#[must_use]
#[wasm_bindgen(js_name = fileTest, unchecked_return_type = "FileAnswer | FileRefused | Refused")]
pub fn file_test(
    #[wasm_bindgen(js_name = "question", unchecked_param_type = "FileQuestion")] given: &JsValue,
) -> JsValue {
    outcome(question::<FileQuestion>(given).and_then(|asked| answer::assess(LANGUAGE, &asked)))
}

/// Says what the mark of a hardness test is worth.
#[must_use]
#[wasm_bindgen(unchecked_return_type = "IndentAnswer | Refused")]
pub fn indent(
    #[wasm_bindgen(js_name = "question", unchecked_param_type = "IndentQuestion")] given: &JsValue,
) -> JsValue {
    outcome(question::<IndentQuestion>(given).and_then(|asked| answer::indent(LANGUAGE, &asked)))
}

/// Shows what is known of a steel, by any of its designations.
#[must_use]
#[wasm_bindgen(unchecked_return_type = "SteelAnswer | Refused")]
pub fn steel(
    #[wasm_bindgen(js_name = "question", unchecked_param_type = "SteelQuestion")] given: &JsValue,
) -> JsValue {
    outcome(question::<SteelQuestion>(given).and_then(|asked| answer::steel(LANGUAGE, &asked)))
}

/// Says how hard a steel becomes along the end-quench bar.
#[must_use]
#[wasm_bindgen(unchecked_return_type = "JominyAnswer | Refused")]
pub fn jominy(
    #[wasm_bindgen(js_name = "question", unchecked_param_type = "JominyQuestion")] given: &JsValue,
) -> JsValue {
    outcome(question::<JominyQuestion>(given).and_then(|asked| answer::jominy(LANGUAGE, &asked)))
}

/// Says how to heat a part, how long to hold it, and whether the bath bears its quench.
#[must_use]
#[wasm_bindgen(unchecked_return_type = "HeatAnswer | Refused")]
pub fn heat(
    #[wasm_bindgen(js_name = "question", unchecked_param_type = "HeatQuestion")] given: &JsValue,
) -> JsValue {
    outcome(question::<HeatQuestion>(given).and_then(|asked| answer::heat(LANGUAGE, &asked)))
}

/// Says what hardness a section can reach from its skin to its middle, and the ways out.
#[must_use]
#[wasm_bindgen(unchecked_return_type = "ReachAnswer | Refused")]
pub fn reach(
    #[wasm_bindgen(js_name = "question", unchecked_param_type = "ReachQuestion")] given: &JsValue,
) -> JsValue {
    outcome(question::<ReachQuestion>(given).and_then(|asked| answer::reach(LANGUAGE, &asked)))
}

/// Says what hardness tempers leave, or how to temper for a hardness.
#[must_use]
#[wasm_bindgen(unchecked_return_type = "TemperAnswer | Refused")]
pub fn temper(
    #[wasm_bindgen(js_name = "question", unchecked_param_type = "TemperQuestion")] given: &JsValue,
) -> JsValue {
    outcome(question::<TemperQuestion>(given).and_then(|asked| answer::temper(LANGUAGE, &asked)))
}

/// Says what to do next with a part.
#[must_use]
#[wasm_bindgen(js_name = nextStep, unchecked_return_type = "NextStepAnswer | Refused")]
pub fn next_step(
    #[wasm_bindgen(js_name = "question", unchecked_param_type = "NextQuestion")] given: &JsValue,
) -> JsValue {
    outcome(question::<NextQuestion>(given).and_then(|asked| answer::next(LANGUAGE, &asked)))
}

/// Says what a bar of unknown steel can be, what to try next and what not to make of it.
#[must_use]
#[wasm_bindgen(unchecked_return_type = "UnknownAnswer | Refused")]
pub fn unknown(
    #[wasm_bindgen(js_name = "question", unchecked_param_type = "UnknownQuestion")] given: &JsValue,
) -> JsValue {
    outcome(question::<UnknownQuestion>(given).and_then(|asked| answer::unknown(LANGUAGE, &asked)))
}

/// Says whether a paper is right: what it says against what was measured.
#[must_use]
#[wasm_bindgen(unchecked_return_type = "ClaimAnswer | Refused")]
pub fn claim(
    #[wasm_bindgen(js_name = "question", unchecked_param_type = "ClaimQuestion")] given: &JsValue,
) -> JsValue {
    outcome(question::<ClaimQuestion>(given).and_then(|asked| answer::claim(LANGUAGE, &asked)))
}

/// Says whether the text of a file of parts is valid, and what it holds.
#[must_use]
#[wasm_bindgen(js_name = checkParts, unchecked_return_type = "PartsCounts | Refused")]
pub fn check_parts(text: &str) -> JsValue {
    outcome(file::read(LANGUAGE, text.as_bytes()).map(|parts| file::counts(&parts)))
}

/// Tells a part of a file as a text that stands alone: the one of that id or name, or the only one. Days are those of a
/// time zone that lies so many minutes east of Greenwich.
#[must_use]
#[expect(clippy::needless_pass_by_value, reason = "what comes from outside comes by value")]
#[wasm_bindgen(js_name = partText, unchecked_return_type = "string | Refused")]
pub fn part_text(
    text: &str,
    part: Option<String>,
    #[wasm_bindgen(js_name = "offsetMinutes")] offset_minutes: Option<i32>,
) -> JsValue {
    let told = file::read(LANGUAGE, text.as_bytes()).and_then(|parts| {
        let one = find::one(LANGUAGE, &parts, part.as_deref())?;
        Ok(text::plain(one, LANGUAGE, offset_minutes.unwrap_or_default()))
    });
    outcome(told)
}

/// The results of a file of parts as a table for a spreadsheet (CSV).
#[must_use]
#[wasm_bindgen(js_name = partsCsv, unchecked_return_type = "string | Refused")]
pub fn parts_csv(text: &str) -> JsValue {
    outcome(file::read(LANGUAGE, text.as_bytes()).map(|parts| csv::results(&parts, LANGUAGE)))
}

/// Every conversion table in short.
#[must_use]
#[wasm_bindgen(unchecked_return_type = "TableListing[]")]
pub fn tables() -> JsValue {
    object(&answer::tables())
}

/// One table as printed.
#[must_use]
#[wasm_bindgen(unchecked_return_type = "Table | Refused")]
pub fn table(id: &str) -> JsValue {
    outcome(answer::table(LANGUAGE, id))
}

/// Every source.
#[must_use]
#[wasm_bindgen(unchecked_return_type = "Source[]")]
pub fn sources() -> JsValue {
    outcome(answer::sources(LANGUAGE, None))
}

/// Version of the package.
#[must_use]
#[wasm_bindgen]
pub fn version() -> String {
    env!("CARGO_PKG_VERSION").to_owned()
}

//! The schema file and the checker say the same of a file.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may fail loudly")]

use biteband_bench::card::{Card, demo, file};
use biteband_bench::words::Language;
use jsonschema::Validator;
use serde_json::{Value, json};

const SCHEMA: &str = include_str!("../schema/biteband-parts-1.schema.json");
const CARDS_1: &str = include_str!("stored/cards-1.json");

fn schema() -> Value {
    serde_json::from_str(SCHEMA).unwrap()
}

fn validator() -> Validator {
    jsonschema::options().should_validate_formats(true).build(&schema()).unwrap()
}

fn read(value: &Value) -> Result<Vec<Card>, String> {
    file::read(Language::English, value.to_string().as_bytes())
        .map_err(|refused| format!("{} {}", refused.code, refused.message))
}

/// The stored sample, in which every list of the first part has an entry.
fn sample() -> Value {
    let mut sample: Value = serde_json::from_str(CARDS_1).unwrap();
    let claim = sample["parts"][1]["claim"].clone();
    sample["parts"][0]["story"][2]["claim"] = claim;
    sample
}

/// Every place of a document, as a JSON pointer.
fn places(value: &Value, at: &str, found: &mut Vec<String>) {
    found.push(at.to_owned());
    match value {
        Value::Object(fields) => {
            fields.iter().for_each(|(name, value)| places(value, &format!("{at}/{name}"), found));
        }
        Value::Array(items) => {
            (0..)
                .zip(items)
                .for_each(|(i, value): (usize, _)| places(value, &format!("{at}/{i}"), found));
        }
        _ => {}
    }
}

#[test]
fn the_schema_is_one_of_draft_2020_12_and_names_every_field_with_a_description() {
    let schema = schema();
    assert!(jsonschema::draft202012::meta::is_valid(&schema));
    let mut pointers = Vec::new();
    places(&schema, "", &mut pointers);
    let mut objects = 0;
    for pointer in pointers {
        let here = schema.pointer(&pointer).unwrap();
        if here["type"] == "object" {
            assert_eq!(here["additionalProperties"], false, "{pointer}");
            objects += 1;
        }
        if pointer.rsplit('/').nth(1) == Some("properties") {
            assert!(here["description"].is_string(), "{pointer}");
        }
    }
    // As many of each as the checker takes.
    let most = |pointer: &str| schema.pointer(pointer).unwrap().as_u64().unwrap();
    for (pointer, known) in [
        ("/properties/parts/maxItems", file::MOST_PARTS),
        ("/$defs/card/properties/story/maxItems", file::MOST_ENTRIES),
        ("/$defs/card/properties/photos/maxItems", file::MOST_PHOTOS),
        ("/$defs/files/properties/strokes/maxItems", file::MOST_STROKES),
        ("/$defs/name/maxLength", file::MOST_NAME),
        ("/$defs/text/maxLength", file::MOST_TEXT),
        ("/$defs/long/maxLength", file::MOST_NOTES),
        // Four letters of base64 for three bytes.
        ("/$defs/photo/properties/data/maxLength", file::MOST_PHOTO.div_ceil(3) * 4),
    ] {
        assert_eq!(most(pointer), u64::try_from(known).unwrap(), "{pointer}");
    }
    // The document, the card and the objects in it.
    assert_eq!(objects, 18);
}

#[test]
fn what_the_tool_writes_is_valid() {
    let validator = validator();
    for text in
        [CARDS_1.to_owned(), file::write(&demo::parts(Language::English), 0), file::write(&[], 0)]
    {
        let value: Value = serde_json::from_str(&text).unwrap();
        let errors: Vec<String> =
            validator.iter_errors(&value).map(|error| error.to_string()).collect();
        assert_eq!(errors, [""; 0]);
    }
    // And it writes every field that the schema has: none is forgotten in either.
    let cards = read(&sample()).unwrap();
    let written: Value = serde_json::from_str(&file::write(&cards, 0)).unwrap();
    let mut own = Vec::new();
    places(&written, "", &mut own);
    let fields = |value: &Value| {
        value["properties"].as_object().unwrap().keys().cloned().collect::<Vec<_>>()
    };
    let schema = schema();
    let written_at = |pointer: &str| {
        let mut keys: Vec<String> =
            written.pointer(pointer).unwrap().as_object().unwrap().keys().cloned().collect();
        keys.sort();
        keys
    };
    let card = &schema["$defs"]["card"]["properties"];
    for (described, pointer) in [
        (&schema, ""),
        (&schema["$defs"]["card"], "/parts/0"),
        (&card["steel"], "/parts/0/steel"),
        (&card["section"], "/parts/0/section"),
        (&card["zones"]["items"], "/parts/0/zones/0"),
        (&card["bath"], "/parts/0/bath"),
        (&card["tempering"], "/parts/0/tempering"),
        (&card["tempering"]["properties"]["results"]["items"], "/parts/0/tempering/results/0"),
        (&schema["$defs"]["files"], "/parts/0/files"),
        (&schema["$defs"]["files"]["properties"]["strokes"]["items"], "/parts/0/files/strokes/0"),
        (&schema["$defs"]["files"]["properties"]["proofs"]["items"], "/parts/0/files/proofs/0"),
        (&schema["$defs"]["files"]["properties"]["conditions"], "/parts/0/files/conditions"),
        (&schema["$defs"]["files"]["properties"]["expected"], "/parts/0/files/expected"),
        (&schema["$defs"]["reading"], "/parts/0/files/readings/0"),
        (&schema["$defs"]["claim"], "/parts/0/claim"),
        (&schema["$defs"]["said"], "/parts/0/said/0"),
        (&schema["$defs"]["entry"], "/parts/0/story/0"),
        (&schema["$defs"]["photo"], "/parts/0/photos/0"),
    ] {
        let mut described = fields(described);
        described.sort();
        assert_eq!(described, written_at(pointer), "{pointer}");
    }
}

/// What the checker knows beyond the form: that a band is not upside down, and that a picture is one.
fn beyond_the_form(pointer: &str, value: &Value) -> bool {
    let field = pointer.rsplit('/').next().unwrap();
    (matches!(field, "low" | "high") && value.is_number())
        || (pointer.contains("/photos/0/") && matches!(field, "data" | "media_type"))
}

#[test]
fn every_place_with_every_kind_of_value_is_judged_alike_by_schema_and_checker() {
    let (validator, sample) = (validator(), sample());
    let mut pointers = Vec::new();
    places(&sample, "", &mut pointers);
    // The second of a kind is judged as the first.
    let again = ["/parts/1/", "/story/0/", "/strokes/1/", "/strokes/2", "/readings/1"];
    pointers.retain(|pointer| {
        let heat = pointer.contains("/story/2/") && !pointer.contains("/claim");
        !heat && again.iter().all(|part| !pointer.contains(part))
    });
    let values = [
        json!(null),
        json!(true),
        json!(7),
        json!(-1),
        json!(1.5),
        json!(55.5),
        json!(300),
        json!(20_001),
        json!("text"),
        json!(""),
        json!("lines\nof a text"),
        json!("bell \u{7}"),
        json!("x".repeat(201)),
        json!("x".repeat(2_001)),
        json!("é".repeat(20_001)),
        json!("2026-11-12T14:03:00Z"),
        json!("photo-0001"),
        json!([]),
        json!([[]]),
        json!([7]),
        json!({}),
        json!({ "nmae": 1 }),
    ];
    let (mut valid, mut invalid) = (0, 0);
    let mut judge = |value: &Value, what: &str| {
        let (by_schema, by_checker) = (validator.is_valid(value), read(value));
        assert_eq!(by_schema, by_checker.is_ok(), "{what}: {by_checker:?}");
        if by_schema { valid += 1 } else { invalid += 1 }
    };
    judge(&sample, "as it is");
    for pointer in &pointers {
        for value in &values {
            if beyond_the_form(pointer, value) {
                continue;
            }
            let mut changed = sample.clone();
            changed.pointer_mut(pointer).unwrap().clone_from(value);
            judge(&changed, &format!("{pointer} = {value}"));
        }
        if let Some((outer, name)) = pointer.rsplit_once('/') {
            let mut without = sample.clone();
            match without.pointer_mut(outer).unwrap() {
                Value::Object(fields) => drop(fields.remove(name)),
                Value::Array(items) => drop(items.remove(name.parse().unwrap())),
                _ => {}
            }
            // Without its type a picture is none, which the schema cannot say.
            if !beyond_the_form(pointer, &Value::Null) {
                judge(&without, &format!("without {pointer}"));
            }
        }
        let mut more = sample.clone();
        if let Some(fields) = more.pointer_mut(pointer).unwrap().as_object_mut() {
            fields.insert("nmae".to_owned(), json!(""));
            judge(&more, &format!("{pointer} with a slip"));
        }
    }
    assert!(valid > 500 && invalid > 2_000, "{valid} {invalid}");
}

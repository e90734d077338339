//! The file of parts: what is written is read, and what is wrong is refused with its place and changes nothing.

#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a test may fail loudly")]

use std::io::{self, Read};

use biteband_bench::Refusal;
use biteband_bench::card::file::{self, MOST_BYTES, MOST_PARTS};
use biteband_bench::card::{Card, Photo, demo};
use biteband_bench::words::Language;
use proptest::prelude::*;
use serde_json::{Value, json};

const ENGLISH: Language = Language::English;
/// 2026-11-12 14:03 UTC.
const NOW: i64 = 1_794_492_180_000;

fn read(text: &str) -> Result<Vec<Card>, Refusal> {
    file::read(ENGLISH, text.as_bytes())
}

#[track_caller]
fn refused(text: &str, code: &str) -> Refusal {
    let refused = read(text).unwrap_err();
    assert_eq!(refused.code, code, "{refused:?}");
    for words in [&refused.message, &refused.allowed, &refused.instead] {
        assert!(words.len() > 2, "{refused:?}");
    }
    refused
}

/// The demonstration as a file, open to changes.
fn whole() -> Value {
    serde_json::from_str(&file::write(&demo::parts(ENGLISH), NOW)).unwrap()
}

/// The file with one thing changed by its JSON pointer.
fn with(pointer: &str, value: Value) -> String {
    let mut whole = whole();
    *whole.pointer_mut(pointer).unwrap() = value;
    whole.to_string()
}

#[test]
fn what_is_written_is_read_and_written_the_same() {
    let parts = demo::parts(ENGLISH);
    let text = file::write(&parts, NOW);
    assert!(text.starts_with("{\n  \"format\": \"biteband-parts\",\n  \"schema\": 1,\n"), "{text}");
    assert!(text.contains("\"exported\": \"2026-11-12T14:03:00Z\""));
    assert_eq!(read(&text).unwrap(), parts);
    assert_eq!(file::write(&read(&text).unwrap(), NOW), text);
    // As a browser or an editor of Windows may hand it over.
    assert_eq!(read(&format!("\u{feff}{text}")).unwrap(), parts);
    assert_eq!(read(&text.replace('\n', "\r\n")).unwrap(), parts);
    assert_eq!(read(&file::write(&[], NOW)).unwrap(), []);
}

/// A file as version 1 of the form was first written, kept so that every later version reads it.
const CARDS_1: &str = include_str!("stored/cards-1.json");

#[test]
fn the_stored_sample_of_version_1_is_read() {
    let cards = read(CARDS_1).unwrap();
    assert_eq!(cards.len(), 2);
    let pawl = &cards[0];
    assert_eq!((pawl.name.as_str(), pawl.steel.name.as_str()), ("Capstan pawl", "4140"));
    assert_eq!((pawl.zones[0].place.as_str(), pawl.bath.litres.as_str()), ("nose", "14 L"));
    assert_eq!(pawl.story.len(), 3);
    assert_eq!(pawl.story[1].files.as_ref().unwrap().strokes.len(), 3);
    assert_eq!(pawl.story[1].low, Some(53.2));
    assert_eq!(pawl.files.readings[0].text, "52, 53 HRC");
    assert_eq!(pawl.files.conditions.skin_ground, Some(true));
    assert_eq!(pawl.tempering.results[0].temper, "205 °C / 2 h");
    assert_eq!(pawl.photos[0].media_type, "image/png");
    assert_eq!(cards[1].claim.paper, "28-32 HRC");
    // Fields that are left out are empty.
    assert_eq!(cards[1].notes, "");
}

/// A stream without an end that counts what is taken from it.
struct Endless(usize);

impl Read for Endless {
    fn read(&mut self, buffer: &mut [u8]) -> io::Result<usize> {
        buffer.fill(b' ');
        self.0 += buffer.len();
        Ok(buffer.len())
    }
}

#[test]
fn a_large_file_is_refused_before_it_is_read_and_never_taken_in_whole() {
    let mut endless = Endless(0);
    let bytes = file::take(&mut endless).unwrap();
    assert_eq!(bytes.len(), MOST_BYTES + 1);
    // Readers ask for a block at a time.
    assert!(endless.0 < MOST_BYTES + (1 << 20), "{}", endless.0);
    let refused = file::read(ENGLISH, &bytes).unwrap_err();
    assert_eq!(refused.code, "bench.parts_too_large");
    assert!(refused.allowed.contains("64 MB"), "{refused:?}");
    assert_eq!(refused.given, "> 64 MB");
    // One byte less is empty, which is another thing.
    assert_eq!(file::read(ENGLISH, &bytes[1..]).unwrap_err().code, "bench.parts_empty");
}

#[test]
fn hostile_shapes_are_refused() {
    for opened in ["[", "{\"a\":", "{\"parts\":["] {
        let refused = refused(&opened.repeat(100_000), "bench.parts_too_deep");
        assert!(refused.message.contains("line 1"), "{refused:?}");
    }
    let many = format!("{{\"parts\":[{}]}}", vec!["{}"; MOST_PARTS + 1].join(","));
    refused(&many, "bench.parts_too_much");
    let zones = format!("{{\"parts\":[{{\"zones\":[{}]}}]}}", vec!["{}"; 200_001].join(","));
    refused(&zones, "bench.parts_too_much");
    refused("", "bench.parts_empty");
    refused(" \n ", "bench.parts_empty");
    let latin = b"{\n\"format\": \"biteband-parts\",\n\"n\": \"\xB0C\"}";
    let refused = file::read(ENGLISH, latin).unwrap_err();
    assert_eq!(refused.code, "bench.parts_not_text");
    assert!(refused.message.contains("line 3"), "{refused:?}");
}

#[test]
fn a_file_that_is_cut_off_anywhere_is_refused() {
    let text = file::write(&demo::parts(ENGLISH), NOW);
    let end = text.trim_end().len();
    let in_number = text.find("\"low\": 42.").unwrap() + "\"low\": 42.".len();
    let cuts = (0..end).step_by(97).chain([in_number]);
    for cut in cuts.filter(|cut| text.is_char_boundary(*cut)) {
        let code = if cut == 0 { "bench.parts_empty" } else { "bench.parts_cut" };
        let start = text.get(..cut).unwrap();
        let refused = refused(start, code);
        let line = start.lines().count();
        // The place is the end of what is there, a line break back or forth.
        let near = (line.saturating_sub(1)..=line + 1)
            .any(|line| refused.message.contains(&format!("line {line},")));
        assert!(cut == 0 || near, "{cut} {line} {refused:?}");
    }
}

#[test]
fn other_formats_and_versions_are_named() {
    for other in [
        "[]",
        "7",
        "\"biteband-parts\"",
        "{}",
        "[\"biteband-parts\",1]",
        "{\"schema\":1,\"state\":{}}",
        "{\"format\":\"other\",\"schema\":1,\"parts\":[]}",
        "{\"format\":7,\"schema\":1,\"parts\":[]}",
    ] {
        let refused = refused(other, "bench.parts_other_format");
        assert!(refused.allowed.contains("biteband-parts"), "{refused:?}");
    }
    for version in ["null", "0", "-1", "1.5", "\"1\"", "[]", "true"] {
        let text = format!("{{\"format\":\"biteband-parts\",\"schema\":{version},\"parts\":[]}}");
        refused(&text, "bench.parts_no_version");
    }
    for version in ["2", "99", "4294967296", "18446744073709551615"] {
        // Whatever a newer version writes beside it.
        let text = format!(
            "{{\"format\":\"biteband-parts\",\"schema\":{version},\"new\":[[1]],\"parts\":{{}}}}"
        );
        let refused = refused(&text, "bench.parts_newer");
        assert!(refused.message.contains("newer version"), "{refused:?}");
        assert!(refused.instead.contains("Update Biteband"), "{refused:?}");
    }
    refused("{\"format\":\"biteband-parts\",\"schema\":1}", "bench.parts_field_missing");
    refused("{\"format\":\"biteband-parts\",\"schema\":1,\"parts\":[]} x", "bench.parts_not_json");
    refused("{\"format\":\"biteband-parts\",\"schema\":1,\"parts\":[],}", "bench.parts_not_json");
}

#[test]
fn a_wrong_type_is_named_with_its_place() {
    for (pointer, value, place) in [
        ("/parts", json!({}), "parts"),
        ("/parts/3", json!(7), "parts[3]"),
        ("/parts/3/name", json!(7), "parts[3].name"),
        ("/parts/3/steel", json!("4340"), "parts[3].steel"),
        ("/parts/3/files/strokes/0/file", json!("55"), "parts[3].files.strokes[0].file"),
        ("/parts/3/files/strokes/0/spot", json!(300), "parts[3].files.strokes[0].spot"),
        ("/parts/3/files/strokes/0/spot", json!(-1), "parts[3].files.strokes[0].spot"),
        ("/parts/3/story/1/low", json!("54"), "parts[3].story[1].low"),
        ("/parts/3/demo", json!("yes"), "parts[3].demo"),
        ("/parts/3/revision", json!(-1), "parts[3].revision"),
        ("/parts/3/notes", json!(null), "parts[3].notes"),
    ] {
        let refused = refused(&with(pointer, value), "bench.parts_shape");
        assert!(refused.message.starts_with(&format!("{place} is ")), "{refused:?}");
        assert!(refused.message.contains("instead of"), "{refused:?}");
    }
    // What a reader of objects would take for one.
    for (pointer, value) in [
        ("/parts/3/steel", json!(["4340"])),
        ("/parts/3/files/strokes/0", json!([55, "bites", 1])),
        ("/parts/3/section/shape", json!({ "round": null })),
        ("/parts/3/name", json!(["a"])),
        ("/parts/3/seen", json!([["a"]])),
    ] {
        refused(&with(pointer, value), "bench.parts_shape");
    }
}

#[test]
fn fields_that_do_not_exist_lack_or_stand_twice_are_named() {
    let mut odd = whole();
    odd["parts"][2]["steel"]["nmae"] = json!("O1");
    let refused_field = refused(&odd.to_string(), "bench.parts_field");
    assert!(
        refused_field.message.starts_with("parts[2].steel has a field nmae"),
        "{refused_field:?}"
    );
    let mut odd = whole();
    odd["extra"] = json!(1);
    refused(&odd.to_string(), "bench.parts_field");
    let mut lacks = whole();
    lacks["parts"][0]["files"]["strokes"][1].as_object_mut().unwrap().remove("outcome");
    let lacking = refused(&lacks.to_string(), "bench.parts_field_missing");
    assert!(
        lacking.message.contains("parts[0].files.strokes[1] lacks its field outcome"),
        "{lacking:?}"
    );
    let text = file::write(&demo::parts(ENGLISH), NOW);
    let twice = text.replacen("\"name\": \"Stern", "\"name\": \"x\",\n\"name\": \"Stern", 1);
    let twice = refused(&twice, "bench.parts_field_twice");
    assert!(twice.message.contains("parts[1] has the field name twice"), "{twice:?}");
}

#[test]
fn values_are_held_to_what_the_tool_knows() {
    let long = "x".repeat(201);
    let notes = "x".repeat(20_001);
    for (pointer, value, code) in [
        ("/parts/0/id", json!("short"), "bench.parts_id"),
        ("/parts/0/id", json!("Capital-Letters"), "bench.parts_id"),
        ("/parts/0/id", json!("../../etc/passwd"), "bench.parts_id"),
        ("/parts/0/id", json!("x".repeat(65)), "bench.parts_id"),
        ("/parts/0/id", json!("demo-bush-drift"), "bench.parts_id_twice"),
        ("/parts/0/created", json!("12 Nov 2026"), "bench.parts_moment"),
        ("/parts/0/changed", json!("2026-13-12T14:03:00Z"), "bench.parts_moment"),
        ("/parts/0/story/0/at", json!("yesterday"), "bench.parts_moment"),
        ("/parts/0/name", json!(long), "bench.parts_too_long"),
        ("/parts/0/notes", json!(notes), "bench.parts_too_long"),
        ("/parts/0/name", json!("Pawl\u{0}"), "bench.parts_control"),
        ("/parts/0/name", json!("Pawl\nof two lines"), "bench.parts_control"),
        ("/parts/0/tempering/measured", json!("46\tHRC"), "bench.parts_control"),
        ("/parts/0/notes", json!("bell \u{7}"), "bench.parts_control"),
        ("/parts/0/steel/origin", json!("\u{1b}[31m"), "bench.parts_control"),
        ("/parts/0/files/strokes/0/outcome", json!("chews"), "bench.parts_name"),
        ("/parts/0/files/strokes/0/outcome", json!(""), "bench.parts_name"),
        ("/parts/0/files/hand", json!("steady"), "bench.parts_name"),
        ("/parts/0/files/strokes/0/file", json!(29.9), "bench.parts_range"),
        ("/parts/0/files/strokes/0/file", json!(70.1), "bench.parts_range"),
        ("/parts/0/tempering/stage", json!("molten"), "bench.parts_name"),
        ("/parts/0/bath/medium", json!("milk"), "bench.parts_name"),
        ("/parts/0/bath/movement", json!("shaken"), "bench.parts_name"),
        ("/parts/0/bath/protection", json!("prayer"), "bench.parts_name"),
        ("/parts/0/section/shape", json!("blob"), "bench.parts_name"),
        ("/parts/0/story/0/kind", json!("blessed"), "bench.parts_name"),
        ("/parts/0/said/0/standing", json!("fine"), "bench.parts_name"),
        ("/parts/0/said/0/scale", json!("HRQ"), "bench.parts_name"),
        ("/parts/0/said/0/low", json!(99_999), "bench.parts_range"),
        ("/parts/0/said/0/low", json!(64.5), "bench.parts_backward"),
        ("/parts/4/claim/place", json!("rim"), "bench.parts_name"),
        ("/parts/4/claim/readings/0/instrument", json!("nose"), "bench.parts_name"),
        ("/parts/6/seen", json!(vec!["x"; 8]), "bench.parts_too_many"),
    ] {
        refused(&with(pointer, value.clone()), code);
    }
    // What is allowed, at its edges.
    for (pointer, value) in [
        ("/parts/0/name", json!("x".repeat(200))),
        ("/parts/0/name", json!("é".repeat(200))),
        ("/parts/0/name", json!("")),
        ("/parts/0/name", json!("<script>alert(1)</script> & \"so\" on")),
        ("/parts/0/notes", json!("one\n\ttwo\r\nthree")),
        ("/parts/0/id", json!("x".repeat(64))),
        ("/parts/0/files/strokes/0/file", json!(30)),
        ("/parts/0/files/strokes/0/file", json!(70)),
        ("/parts/0/created", json!("2026-11-12T15:03:00.5+01:00")),
        ("/parts/0/said/0/low", json!(null)),
    ] {
        read(&with(pointer, value)).unwrap();
    }
    let numbers = whole().to_string().replacen("\"file\":55.0", "\"file\":1e999", 1);
    refused(&numbers, "bench.parts_not_json");
}

fn photo(media_type: &str, bytes: &[u8]) -> Photo {
    use base64::Engine;
    Photo {
        id: "photo-0001".into(),
        media_type: media_type.into(),
        data: base64::engine::general_purpose::STANDARD.encode(bytes),
        ..Photo::default()
    }
}

#[test]
fn pictures_are_pictures_of_their_type_and_size() {
    let part = |photos: Vec<Photo>| {
        file::write(&[Card { id: "pawl-0001".into(), photos, ..Card::default() }], NOW)
    };
    // The first bytes as their standards name them.
    let jpeg = [0xFF, 0xD8, 0xFF, 0xE0, 0, 16];
    let png = [0x89, b'P', b'N', b'G', 13, 10, 26, 10, 0];
    let webp = *b"RIFF\x10\0\0\0WEBPVP8 ";
    for (media_type, bytes) in
        [("image/jpeg", &jpeg[..]), ("image/png", &png[..]), ("image/webp", &webp[..])]
    {
        read(&part(vec![photo(media_type, bytes)])).unwrap();
    }
    read(&part(vec![Photo { data: String::new(), ..photo("image/png", &png) }])).unwrap();
    refused(&part(vec![photo("image/png", &jpeg)]), "bench.parts_photo");
    refused(&part(vec![photo("", &jpeg)]), "bench.parts_photo");
    refused(&part(vec![photo("image/svg+xml", b"<svg onload=alert(1)>")]), "bench.parts_name");
    let odd = Photo { data: "data:image/png;base64,iVBOR".into(), ..photo("image/png", &png) };
    refused(&part(vec![odd]), "bench.parts_photo");
    let mut large = png.to_vec();
    large.resize(file::MOST_PHOTO, 0);
    read(&part(vec![photo("image/png", &large)])).unwrap();
    large.push(0);
    refused(&part(vec![photo("image/png", &large)]), "bench.parts_photo_too_large");
    refused(
        &part(vec![photo("image/png", &png), photo("image/png", &png)]),
        "bench.parts_id_twice",
    );
    let many = (0..13).map(|i| Photo { id: format!("photo-{i:04}"), ..photo("image/png", &png) });
    refused(&part(many.collect()), "bench.parts_too_many");
    let wide = Photo { width: 20_001, ..photo("image/png", &png) };
    refused(&part(vec![wide]), "bench.parts_range");
}

#[test]
fn what_is_too_much_for_one_file_goes_into_several_that_are_read() {
    let card = |i: usize| Card { id: format!("part-{i:05}"), ..Card::default() };
    let parts: Vec<Card> = (0..=MOST_PARTS).map(card).collect();
    let files = file::write_all(&parts, NOW);
    assert_eq!(files.len(), 2);
    let back: Vec<Card> = files.iter().flat_map(|text| read(text).unwrap()).collect();
    assert_eq!(back, parts);
    assert_eq!(file::write_all(&parts[..3], NOW), [file::write(&parts[..3], NOW)]);
    // Not the parts are too many here, but what they hold.
    let stroked = |i: usize| {
        let mut card = card(i);
        card.files.strokes = vec![demo::parts(ENGLISH)[0].files.strokes[0].clone(); 1_000];
        card
    };
    let parts: Vec<Card> = (0..250).map(stroked).collect();
    let files = file::write_all(&parts, NOW);
    assert_eq!(files.len(), 2);
    let back: Vec<Card> = files.iter().flat_map(|text| read(text).unwrap()).collect();
    assert_eq!(back, parts);
}

#[test]
fn a_file_is_counted() {
    let counts = file::counts(&demo::parts(ENGLISH));
    assert_eq!((counts.parts, counts.photos), (7, 0));
    // Of the pawl alone: three strokes before the temper, four after.
    let pawl = file::counts(&demo::parts(ENGLISH)[..1]);
    assert_eq!((pawl.entries, pawl.strokes), (3, 7));
}

proptest! {
    #[test]
    fn any_bytes_are_read_or_refused(bytes in prop::collection::vec(any::<u8>(), 0..200)) {
        let _ = file::read(ENGLISH, &bytes);
    }

    #[test]
    fn a_file_with_a_changed_byte_is_read_or_refused(place in 0.0..1.0_f64, byte in any::<u8>()) {
        let mut bytes = CARDS_1.as_bytes().to_vec();
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, clippy::cast_precision_loss,
            reason = "a place in a short text")]
        let place = (place * bytes.len() as f64) as usize;
        bytes[place] = byte;
        let _ = file::read(ENGLISH, &bytes);
    }
}

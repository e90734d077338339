//! English about parts as files, lists and on paper.

use std::borrow::Cow;

use super::part::{FactLabel, PartRefusal, PartWords, Shape};
use crate::card::{EntryKind, Standing};

type Words = Cow<'static, str>;

const fn fact(label: FactLabel) -> &'static str {
    use FactLabel as F;
    match label {
        F::Name => "Name",
        F::Steel => "Steel",
        F::Composition => "Composition",
        F::Origin => "Where from",
        F::Section => "Section",
        F::Kind => "Kind of part",
        F::Wanted => "Wanted",
        F::Zones => "Wanted elsewhere",
        F::Bath => "Bath",
        F::Air => "Against the air",
        F::Stage => "The part is",
        F::Tempers => "Tempers so far",
        F::AsQuenched => "Measured as quenched",
        F::LookedAt => "Temper looked at",
        F::Typed => "Not finished",
        F::Circumstances => "What else counts",
        F::Files => "Found now",
        F::Conditions => "How it was tested",
        F::OwnFiles => "Files used",
        F::Expected => "Expected before",
        F::Says => "That says",
        F::Paper => "The paper",
        F::PaperSays => "Is the paper right",
        F::Results => "Own results",
        F::Seen => "Seen of the bar",
        F::Notes => "Notes",
        F::Story => "Story",
        F::Recipe => "Recipe",
        F::Photos => "Photos",
    }
}

const fn kind(kind: EntryKind) -> &'static str {
    match kind {
        EntryKind::Hardened => "Hardened",
        EntryKind::Tempered => "Tempered",
        EntryKind::Filed => "Filed",
        EntryKind::Claimed => "Paper checked",
        EntryKind::Remark => "Remark",
    }
}

const fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::Nothing => "nothing found yet",
        Standing::Measured => "measured",
        Standing::Inside => "in the band",
        Standing::TooSoft => "too soft",
        Standing::TooHard => "too hard",
        Standing::Disagrees => "not as the paper says",
        Standing::NotProved => "not proved",
        Standing::Contradictory => "contradictory",
    }
}

pub(super) const MONTHS: [&str; 12] =
    ["Jan", "Feb", "Mar", "Apr", "May", "Jun", "Jul", "Aug", "Sep", "Oct", "Nov", "Dec"];

fn date(day: u8, month: u8, year: i32) -> Words {
    let name = MONTHS.get(usize::from(month).wrapping_sub(1)).copied().unwrap_or_default();
    format!("{day} {name} {year}").into()
}

/// A count with its noun.
fn count(count: usize, one: &str, many: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { many })
}

fn facts(phrase: PartWords<'_>) -> Words {
    use PartWords as P;
    match phrase {
        P::Picked { name, grade } => format!("{name}, taken as {grade}").into(),
        P::OwnBar { bar: "", composition } => {
            format!("by its own composition, {composition}").into()
        }
        P::OwnBar { bar, composition } => format!("{bar}: {composition}").into(),
        P::AlsoComposition { composition } => format!("{composition} (not used)").into(),
        P::LongOnly { length } => format!("{length} long").into(),
        P::Zone { place, target } => format!("{place}: {target}").into(),
        P::BathAt { temperature } => format!("at {temperature}").into(),
        P::Flash { temperature } => format!("flash point {temperature}").into(),
        P::LookedAt { at, held: "" } => at.to_owned().into(),
        P::LookedAt { at: "", held } => format!("{held} at heat").into(),
        P::LookedAt { at, held } => format!("{at}, {held} at heat").into(),
        P::Result { hardness, temper: "", steel: "" } => hardness.to_owned().into(),
        P::Result { hardness, temper, steel: "" } => format!("{hardness} after {temper}").into(),
        P::Result { hardness, temper: "", steel } => format!("{hardness} ({steel})").into(),
        P::Result { hardness, temper, steel } => {
            format!("{hardness} after {temper} ({steel})").into()
        }
        P::Set { grades } => format!("graded {grades} HRC").into(),
        P::GradedTo { tolerance } => format!("to within {tolerance} HRC").into(),
        P::Hand { hand } => format!("hand: {}", hand.to_lowercase()).into(),
        P::Proof { file, known, word } => {
            format!("the {file} file on a piece of {known} HRC {}", word.to_lowercase()).into()
        }
        P::SkinOff => "skin ground off".into(),
        P::SkinOn => "skin still on".into(),
        P::OnEdge => "on an edge".into(),
        P::OtherFinish => "another finish than the known pieces".into(),
        P::CarbideRich => "carbide-rich steel".into(),
        P::Expected { mean, sd, on: true } => format!("{mean} HRC, give or take {sd}").into(),
        P::Expected { mean, sd, on: false } => {
            format!("{mean} HRC, give or take {sd} (not counted in)").into()
        }
        P::Comparison { text, known, on_known } => {
            format!("{text}; known piece of {known} read {on_known}").into()
        }
        P::With { instrument, text } => format!("{text} ({instrument})").into(),
        P::PaperOf { paper } => format!("says {paper}").into(),
        P::PaperSteel { steel } => format!("of {steel}").into(),
        P::PaperRule { rule } => format!("rule {rule}").into(),
        P::PaperPlace { place, claimed: "" } => format!("measured at the {place}").into(),
        P::PaperPlace { place: "", claimed } => format!("holds for the {claimed}").into(),
        P::PaperPlace { place, claimed } => {
            format!("holds for the {claimed}, measured at the {place}").into()
        }
        P::PaperWithFiles => "the files count as well".into(),
        P::Recipe { of } => format!("as {of}").into(),
        P::Photos { count: n } => count(n, "photo", "photos").into(),
        _ => "".into(),
    }
}

pub(super) fn say(phrase: PartWords<'_>) -> Words {
    use PartWords as P;
    match phrase {
        P::Fact(label) => fact(label).into(),
        P::Kind(what) => kind(what).into(),
        P::SteelEntry => "Steel".into(),
        P::Standing(how) => standing(how).into(),
        P::NoName => "Part without a name".into(),
        P::Imported { name } => format!("{name} (imported)").into(),
        P::Date { day, month, year } => date(day, month, year),
        P::SaidBy { app, data } => format!("Biteband {app}, data {data}").into(),
        P::Outdated { app, data, now_app, now_data } => format!(
            "Said by Biteband {app} with data {data}; here is Biteband {now_app} with data {now_data}."
        )
        .into(),
        P::SaysTheSame { now } => format!("Today's version says the same: {now}").into(),
        P::SaysOtherwise { then, now } => {
            format!("Said then: {then}. Says today: {now}").into()
        }
        P::Part { name } => format!("PART: {name}").into(),
        P::WhatIs => "WHAT IT IS".into(),
        P::WhatDone => "WHAT WAS DONE, IN ORDER".into(),
        P::WhatFound => "WHAT WAS FOUND".into(),
        P::Nothing => "Nothing was noted.".into(),
        P::WhoSays { app, data } => format!(
            "Worked out by Biteband {app}, tables {data}, from what is written here. A band holds the part 19 times out of 20; HRC is Rockwell C."
        )
        .into(),
        P::Judgement => "A file test is a judgement by hand, not the reading of a hardness tester: a file bites what is softer than itself and skates on what is harder.".into(),
        P::Now => "now".into(),
        P::Earlier { count: n } => format!("... and {} before that", count(n, "entry", "entries")).into(),
        P::Shortened { what } => format!("Not all of it fits on one page. Left out or cut: {what}.").into(),
        P::Handwriting => "By hand".into(),
        P::Demo => "Invented, for the demonstration.".into(),
        P::Counts { parts, entries, strokes, photos } => format!(
            "{}, {} of history, {}, {}",
            count(parts, "part", "parts"),
            count(entries, "entry", "entries"),
            count(strokes, "file stroke", "file strokes"),
            count(photos, "photo", "photos")
        )
        .into(),
        other => facts(other),
    }
}

const fn shape(shape: Shape) -> &'static str {
    match shape {
        Shape::Text => "a text in quotes",
        Shape::Number => "a number",
        Shape::Whole => "a whole number",
        Shape::Switch => "true or false",
        Shape::List => "a list",
        Shape::Object => "an object with fields",
        Shape::Nothing => "nothing (null)",
        Shape::Other => "something else",
    }
}

const UNCHANGED: &str = "Nothing was changed.";
const ANOTHER: &str =
    "Take the file as Biteband wrote it, or another copy of it. Nothing was changed.";
const MEND: &str = "Mend this place in the file, or take another copy of it. Nothing was changed.";

/// What is wrong with a file as a whole, and with its form.
pub(super) fn refuse(what: PartRefusal<'_>) -> [Words; 3] {
    use PartRefusal as R;
    let place_of_json = |line: usize, column: usize| format!("line {line}, column {column}");
    match what {
        R::TooLarge { most } => [
            format!("The file is larger than {most}, so it was not read.").into(),
            format!("up to {most}").into(),
            "A file of parts is seldom more than a few MB; look whether it is the right one. If photos make it so large, export fewer parts at a time. Nothing was changed.".into(),
        ],
        R::NotText { line } => [
            format!("The file is no text in UTF-8: line {line} holds bytes that are no letters.").into(),
            "a JSON text in UTF-8, as Biteband exports it".into(),
            ANOTHER.into(),
        ],
        R::Empty => [
            "The file is empty.".into(),
            "a JSON text, as Biteband exports it".into(),
            ANOTHER.into(),
        ],
        R::Cut { line, column } => [
            format!("The file ends too early, at {}: the rest is missing.", place_of_json(line, column)).into(),
            "the whole file".into(),
            "Copy or send it again; a download or a memory card may have cut it off. Nothing was changed.".into(),
        ],
        R::NotJson { line, column } => [
            format!("The file is no JSON from {} on.", place_of_json(line, column)).into(),
            "a JSON text, as Biteband exports it".into(),
            MEND.into(),
        ],
        R::TooDeep { line, column, most } => [
            format!("The file is nested too deeply, at {}.", place_of_json(line, column)).into(),
            format!("lists and objects at most {most} deep").into(),
            ANOTHER.into(),
        ],
        R::TooMuch { line, column, parts, inner } => [
            format!("The file holds more lists and objects than any shop has parts, at {}.", place_of_json(line, column)).into(),
            format!("up to {parts} parts, up to {inner} lists and objects").into(),
            "Export fewer parts at a time. Nothing was changed.".into(),
        ],
        R::NotParts { found: "" } => [
            "The file is no file of parts: it does not say that it is one.".into(),
            "\"format\": \"biteband-parts\"".into(),
            ANOTHER.into(),
        ],
        R::NotParts { found } => [
            format!("The file is no file of parts: its format is {found}.").into(),
            "\"format\": \"biteband-parts\"".into(),
            ANOTHER.into(),
        ],
        R::NoVersion => [
            "The file does not say which version of its form it has.".into(),
            "\"schema\": 1".into(),
            ANOTHER.into(),
        ],
        R::Newer { found, known } => [
            format!("The file was written by a newer version of Biteband: its form is number {found}, and this one knows {known}.").into(),
            format!("form 1 to {known}").into(),
            "Update Biteband, then import again. Nothing was changed.".into(),
        ],
        R::Field { place, field, line } => [
            format!("{place} has a field {field} that no part has (line {line}).").into(),
            "the fields of the schema file".into(),
            "A slip in its name would lose what stands there, so it is not passed over. Mend or remove it; if a newer version wrote it, update Biteband. Nothing was changed.".into(),
        ],
        R::Missing { place, field, line } => [
            format!("{place} lacks its field {field} (line {line}).").into(),
            format!("with {field}").into(),
            MEND.into(),
        ],
        R::Double { place, field, line } => [
            format!("{place} has the field {field} twice (line {line}).").into(),
            "each field once".into(),
            MEND.into(),
        ],
        R::Shape { place: "", line, found, wanted } => [
            format!("An entry of a list is {} instead of {} (line {line}).", shape(found), shape(wanted)).into(),
            shape(wanted).into(),
            MEND.into(),
        ],
        R::Shape { place, line, found, wanted } => [
            format!("{place} is {} instead of {} (line {line}).", shape(found), shape(wanted)).into(),
            shape(wanted).into(),
            MEND.into(),
        ],
        other => refuse_value(other),
    }
}

/// What is wrong with a value of a card.
fn refuse_value(what: PartRefusal<'_>) -> [Words; 3] {
    use PartRefusal as R;
    match what {
        R::Id { place } => [
            format!("{place} is no name that cards can be merged by.").into(),
            "8 to 64 small letters a-z, figures and hyphens".into(),
            MEND.into(),
        ],
        R::TwiceId { place } => [
            format!("{place} stands twice in the file.").into(),
            "each id once".into(),
            "Two cards with one id cannot be told apart. Give one of them another id. Nothing was changed.".into(),
        ],
        R::Moment { place } => [
            format!("{place} is no moment.").into(),
            "2026-11-12T14:03:00Z (RFC 3339), or empty".into(),
            MEND.into(),
        ],
        R::TooLong { place, most } => [
            format!("{place} is too long.").into(),
            format!("up to {most} letters").into(),
            "Shorten it; long stories go into the notes. Nothing was changed.".into(),
        ],
        R::Control { place } => [
            format!("{place} holds a control character, which no keyboard types.").into(),
            "letters, figures, signs; in notes also new lines".into(),
            MEND.into(),
        ],
        R::OneOf { place, known } => [
            format!("{place} is no name that is known here.").into(),
            known.to_owned().into(),
            MEND.into(),
        ],
        R::Range { place, low, high } => [
            format!("{place} is out of range.").into(),
            format!("{low} to {high}").into(),
            MEND.into(),
        ],
        R::UpsideDown { place } => [
            format!("{place} has its low end above its high end.").into(),
            "low end first".into(),
            MEND.into(),
        ],
        R::TooMany { place, most } => [
            format!("{place} has too many entries.").into(),
            format!("up to {most}").into(),
            "Take some out, or make a second part of it. Nothing was changed.".into(),
        ],
        R::NotBase64 { place } => [
            format!("{place} is no picture in base64.").into(),
            "base64 with padding, without spaces or a prefix".into(),
            MEND.into(),
        ],
        R::NotPicture { place, media_type } => [
            format!("{place} does not begin as {media_type} does.").into(),
            "JPEG, PNG or WebP, as its media_type says".into(),
            MEND.into(),
        ],
        R::PictureTooLarge { place, most } => [
            format!("{place} is larger than {most}.").into(),
            format!("up to {most}").into(),
            "Make the picture smaller; 1600 pixels on its long side are plenty. Nothing was changed.".into(),
        ],
        other => refuse_choice(other),
    }
}

/// Why a part of a file cannot be told.
fn refuse_choice(what: PartRefusal<'_>) -> [Words; 3] {
    use PartRefusal as R;
    match what {
        R::NoSuchPart => [
            "No part in the file has this id or name.".into(),
            "an id, or a name as it is written".into(),
            "Leave --part out to see them all.".into(),
        ],
        R::SeveralParts { names } => [
            "The file holds several parts, and one is needed.".into(),
            names.to_owned().into(),
            format!("Name one of them by its id or its name. {UNCHANGED}").into(),
        ],
        _ => ["".into(), "".into(), UNCHANGED.into()],
    }
}

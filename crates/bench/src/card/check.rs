//! What the cards of a file are held to, beyond their form: names that are known, numbers in range, texts of a length that
//! a screen bears, pictures that are pictures.

use std::fmt;

use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use biteband_evidence::FileSet;
use biteband_hardness::{Axis, Scale};
use biteband_steel::furnace::Protection;
use biteband_steel::quench::{Medium, Movement};

use super::file::{megabytes, refusal};
use super::{Card, ClaimSheet, Entry, FileSheet, Photo, ReadingSheet, Said, moment_ms};
use crate::answer::INSTRUMENTS;
use crate::format;
use crate::refusal::Refusal;
use crate::state::{HandChoice, PartStage, UnknownField};
use crate::words::{Language, PartRefusal};

/// The longest name of a part, in letters.
pub const MOST_NAME: usize = 200;
/// The longest text of any other field of one line.
pub const MOST_TEXT: usize = 2_000;
/// The longest notes, remarks and answers.
pub const MOST_NOTES: usize = 20_000;
/// The most entries of a story, and of any other list of a part.
pub const MOST_ENTRIES: usize = 1_000;
/// The most strokes of one file test.
pub const MOST_STROKES: usize = 1_000;
/// The most photos of a part.
pub const MOST_PHOTOS: usize = 12;
/// The largest photo, in bytes.
pub const MOST_PHOTO: usize = 2 << 20;
/// The longest side of a photo, in pixels.
const MOST_PIXELS: u32 = 20_000;

/// Where in the file: a chain of fields and places in lists.
struct Place<'a> {
    outer: Option<&'a Place<'a>>,
    step: Step,
}

#[derive(Clone, Copy)]
enum Step {
    Field(&'static str),
    Item(usize),
}

impl Place<'_> {
    const fn field(&self, name: &'static str) -> Place<'_> {
        Place { outer: Some(self), step: Step::Field(name) }
    }

    const fn item(&self, index: usize) -> Place<'_> {
        Place { outer: Some(self), step: Step::Item(index) }
    }
}

impl fmt::Display for Place<'_> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if let Some(outer) = self.outer {
            outer.fmt(f)?;
        }
        match self.step {
            Step::Field(name) if self.outer.is_none() => f.write_str(name),
            Step::Field(name) => write!(f, ".{name}"),
            Step::Item(index) => write!(f, "[{index}]"),
        }
    }
}

type Checked = Result<(), Refusal>;

/// Looks every card over.
pub(super) fn check(language: Language, cards: &[Card]) -> Checked {
    let check = Check { language };
    let parts = Place { outer: None, step: Step::Field("parts") };
    let mut ids = std::collections::BTreeSet::new();
    for (index, card) in cards.iter().enumerate() {
        let at = parts.item(index);
        check.card(&at, card)?;
        if !ids.insert(card.id.as_str()) {
            let id = at.field("id");
            return Err(check.wrong(&id, "bench.parts_id_twice", &card.id, |place| {
                PartRefusal::TwiceId { place }
            }));
        }
    }
    Ok(())
}

/// Whether a text can be the id of a card or of a photo: 8 to 64 small letters, figures and hyphens.
fn is_id(text: &str) -> bool {
    let signs = |byte: u8| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'-';
    (8..=64).contains(&text.len()) && text.bytes().all(signs)
}

/// A name that is made of another one, no longer than a name may be: where it would be, the end of the other one is left
/// out.
///
/// ```
/// use biteband_bench::card::{file::MOST_NAME, name_of_name};
/// let second = |name: &str| format!("{name} (2)");
/// assert_eq!(name_of_name("Pawl", &second), "Pawl (2)");
/// let longest = name_of_name(&"x".repeat(MOST_NAME), &second);
/// assert_eq!(longest.chars().count(), MOST_NAME);
/// assert!(longest.ends_with("x… (2)"), "{longest}");
/// ```
#[must_use]
pub fn name_of_name(name: &str, made: &dyn Fn(&str) -> String) -> String {
    let whole = made(name);
    let over = whole.chars().count().saturating_sub(MOST_NAME);
    if over == 0 {
        return whole;
    }
    let kept = name.chars().count().saturating_sub(over + 1);
    let mut cut: String = name.chars().take(kept).collect();
    cut.push('…');
    made(&cut)
}

struct Check {
    language: Language,
}

impl Check {
    fn wrong(
        &self,
        at: &Place<'_>,
        code: &'static str,
        given: &str,
        what: impl for<'a> Fn(&'a str) -> PartRefusal<'a>,
    ) -> Refusal {
        let place = at.to_string();
        refusal(self.language, code, format::shortened(given), what(&place))
    }

    fn id(&self, at: &Place<'_>, text: &str) -> Checked {
        if is_id(text) {
            return Ok(());
        }
        Err(self.wrong(at, "bench.parts_id", text, |place| PartRefusal::Id { place }))
    }

    fn moment(&self, at: &Place<'_>, text: &str) -> Checked {
        if text.is_empty() || moment_ms(text).is_some() {
            return Ok(());
        }
        Err(self.wrong(at, "bench.parts_moment", text, |place| PartRefusal::Moment { place }))
    }

    fn text(&self, at: &Place<'_>, text: &str, most: usize) -> Checked {
        // Bytes are at least as many as letters, and quicker to count.
        if text.len() > most && text.chars().count() > most {
            return Err(self.wrong(at, "bench.parts_too_long", text, |place| {
                PartRefusal::TooLong { place, most }
            }));
        }
        let lines = most == MOST_NOTES;
        let odd = |sign: char| sign.is_control() && !(lines && matches!(sign, '\n' | '\r' | '\t'));
        if text.contains(odd) {
            let given = text.escape_debug().to_string();
            return Err(self
                .wrong(at, "bench.parts_control", &given, |place| PartRefusal::Control { place }));
        }
        Ok(())
    }

    /// Several fields of one line of the same object.
    fn texts(&self, at: &Place<'_>, all: &[(&'static str, &str)]) -> Checked {
        all.iter().try_for_each(|(name, text)| self.text(&at.field(name), text, MOST_TEXT))
    }

    /// One of some names, or empty.
    fn name(&self, at: &Place<'_>, text: &str, known: &[&str]) -> Checked {
        if text.is_empty() || known.contains(&text) {
            return Ok(());
        }
        let known = known.join(", ");
        let place = at.to_string();
        let what = PartRefusal::OneOf { place: &place, known: &known };
        Err(refusal(self.language, "bench.parts_name", format::shortened(text), what))
    }

    fn range(&self, at: &Place<'_>, given: f64, low: f64, high: f64) -> Checked {
        if given >= low && given <= high {
            return Ok(());
        }
        let (low, high) = (format::exact(low), format::exact(high));
        let place = at.to_string();
        let what = PartRefusal::Range { place: &place, low: &low, high: &high };
        Err(refusal(self.language, "bench.parts_range", format::exact(given), what))
    }

    fn most<T>(&self, at: &Place<'_>, list: &[T], most: usize) -> Checked {
        if list.len() <= most {
            return Ok(());
        }
        let given = list.len().to_string();
        Err(self.wrong(at, "bench.parts_too_many", &given, |place| PartRefusal::TooMany {
            place,
            most,
        }))
    }

    fn each<T>(
        &self,
        at: &Place<'_>,
        list: &[T],
        most: usize,
        one: impl Fn(&Place<'_>, &T) -> Checked,
    ) -> Checked {
        self.most(at, list, most)?;
        list.iter().enumerate().try_for_each(|(index, item)| one(&at.item(index), item))
    }

    fn card(&self, at: &Place<'_>, card: &Card) -> Checked {
        self.id(&at.field("id"), &card.id)?;
        self.text(&at.field("name"), &card.name, MOST_NAME)?;
        self.text(&at.field("recipe_of"), &card.recipe_of, MOST_NAME)?;
        self.moment(&at.field("created"), &card.created)?;
        self.moment(&at.field("changed"), &card.changed)?;
        self.each(&at.field("recipe"), &card.recipe, MOST_ENTRIES, |at, one| self.entry(at, one))?;
        self.texts(at, &[("kind", &card.kind), ("target", &card.target)])?;
        self.steel(&at.field("steel"), card)?;
        let section = &card.section;
        self.texts(
            &at.field("section"),
            &[("size", &section.size), ("second", &section.second), ("length", &section.length)],
        )?;
        self.each(&at.field("zones"), &card.zones, MOST_ENTRIES, |at, zone| {
            self.texts(at, &[("place", &zone.place), ("target", &zone.target)])
        })?;
        self.bath(&at.field("bath"), card)?;
        self.tempering(&at.field("tempering"), card)?;
        self.files(&at.field("files"), &card.files)?;
        self.claim(&at.field("claim"), &card.claim)?;
        self.each(&at.field("seen"), &card.seen, UnknownField::ALL.len(), |at, answer| {
            self.text(at, answer, MOST_TEXT)
        })?;
        self.text(&at.field("notes"), &card.notes, MOST_NOTES)?;
        self.each(&at.field("said"), &card.said, MOST_ENTRIES, |at, one| self.said(at, one))?;
        self.each(&at.field("story"), &card.story, MOST_ENTRIES, |at, one| self.entry(at, one))?;
        self.each(&at.field("begun"), &card.begun, Card::BEGUN.len() + 1, |at, text| {
            self.text(at, text, MOST_TEXT)
        })?;
        let photos = at.field("photos");
        self.each(&photos, &card.photos, MOST_PHOTOS, |at, photo| self.photo(at, photo))?;
        for (index, photo) in card.photos.iter().enumerate() {
            if card.photos.iter().take(index).any(|other| other.id == photo.id) {
                let at = photos.item(index);
                return Err(self.wrong(
                    &at.field("id"),
                    "bench.parts_id_twice",
                    &photo.id,
                    |place| PartRefusal::TwiceId { place },
                ));
            }
        }
        Ok(())
    }

    fn steel(&self, at: &Place<'_>, card: &Card) -> Checked {
        let steel = &card.steel;
        self.texts(
            at,
            &[
                ("name", &steel.name),
                ("grade", &steel.grade),
                ("composition", &steel.composition),
                ("bar", &steel.bar),
                ("origin", &steel.origin),
            ],
        )
    }

    fn bath(&self, at: &Place<'_>, card: &Card) -> Checked {
        let bath = &card.bath;
        let media: Vec<&str> = Medium::ALL.iter().map(|one| one.key()).collect();
        self.name(&at.field("medium"), &bath.medium, &media)?;
        let movements: Vec<&str> = Movement::ALL.iter().map(|one| one.key()).collect();
        self.name(&at.field("movement"), &bath.movement, &movements)?;
        let protections: Vec<&str> = Protection::ALL.iter().map(|one| one.key()).collect();
        self.name(&at.field("protection"), &bath.protection, &protections)?;
        self.texts(
            at,
            &[
                ("litres", &bath.litres),
                ("temperature", &bath.temperature),
                ("flash_point", &bath.flash_point),
            ],
        )
    }

    fn tempering(&self, at: &Place<'_>, card: &Card) -> Checked {
        let sheet = &card.tempering;
        self.name(&at.field("stage"), &sheet.stage, &PartStage::ALL.map(PartStage::key))?;
        self.texts(
            at,
            &[
                ("done", &sheet.done),
                ("as_quenched", &sheet.as_quenched),
                ("at", &sheet.at),
                ("held", &sheet.held),
                ("measured", &sheet.measured),
                ("after", &sheet.after),
            ],
        )?;
        self.each(&at.field("results"), &sheet.results, MOST_ENTRIES, |at, one| {
            let texts =
                [("steel", &*one.steel), ("hardness", &one.hardness), ("temper", &one.temper)];
            self.texts(at, &texts)
        })
    }

    fn files(&self, at: &Place<'_>, files: &FileSheet) -> Checked {
        self.texts(at, &[("set", &files.set), ("tolerance", &files.tolerance)])?;
        self.name(&at.field("hand"), &files.hand, &HandChoice::ALL.map(HandChoice::key))?;
        self.each(&at.field("strokes"), &files.strokes, MOST_STROKES, |at, stroke| {
            self.grade(&at.field("file"), stroke.file)?;
            self.outcome(&at.field("outcome"), &stroke.outcome)
        })?;
        self.each(&at.field("proofs"), &files.proofs, MOST_STROKES, |at, proof| {
            self.grade(&at.field("file"), proof.file)?;
            self.range(&at.field("known"), proof.known, 0.0, 100.0)?;
            self.outcome(&at.field("outcome"), &proof.outcome)
        })?;
        self.readings(&at.field("readings"), &files.readings)?;
        let expected = &files.expected;
        self.texts(&at.field("expected"), &[("mean", &expected.mean), ("sd", &expected.sd)])
    }

    /// What the set of files itself allows.
    fn grade(&self, at: &Place<'_>, grade: f64) -> Checked {
        match FileSet::new(&[grade]) {
            Ok(_) => Ok(()),
            Err(biteband_evidence::Error::OutOfRange { min, max, .. }) => {
                self.range(at, grade, min, max)
            }
            Err(error) => Err(Refusal::of_evidence(self.language, &error)),
        }
    }

    fn outcome(&self, at: &Place<'_>, outcome: &str) -> Checked {
        let known = ["bites", "slight", "skates"];
        // Unlike other names it cannot be left out.
        self.name(at, if outcome.is_empty() { "-" } else { outcome }, &known)
    }

    fn readings(&self, at: &Place<'_>, readings: &[ReadingSheet]) -> Checked {
        let known = INSTRUMENTS.map(|(key, _)| key);
        self.each(at, readings, MOST_ENTRIES, |at, one| {
            self.name(&at.field("instrument"), &one.instrument, &known)?;
            self.texts(
                at,
                &[("text", &one.text), ("known", &one.known), ("on_known", &one.on_known)],
            )
        })
    }

    fn claim(&self, at: &Place<'_>, claim: &ClaimSheet) -> Checked {
        self.texts(at, &[("paper", &claim.paper), ("steel", &claim.steel), ("rule", &claim.rule)])?;
        let places = ["skin", "core"];
        self.name(&at.field("place"), &claim.place, &places)?;
        self.name(&at.field("claimed_place"), &claim.claimed_place, &places)?;
        self.readings(&at.field("readings"), &claim.readings)
    }

    fn entry(&self, at: &Place<'_>, entry: &Entry) -> Checked {
        self.moment(&at.field("at"), &entry.at)?;
        self.text(&at.field("what"), &entry.what, MOST_NOTES)?;
        self.text(&at.field("said"), &entry.said, MOST_NOTES)?;
        self.texts(at, &[("app", &entry.app), ("data", &entry.data)])?;
        self.band(at, &entry.scale, entry.low, entry.high)?;
        if let Some(files) = &entry.files {
            self.files(&at.field("files"), files)?;
        }
        if let Some(claim) = &entry.claim {
            self.claim(&at.field("claim"), claim)?;
        }
        Ok(())
    }

    fn said(&self, at: &Place<'_>, said: &Said) -> Checked {
        self.text(&at.field("text"), &said.text, MOST_NOTES)?;
        self.texts(at, &[("app", &said.app), ("data", &said.data)])?;
        self.band(at, &said.scale, said.low, said.high)
    }

    fn band(&self, at: &Place<'_>, scale: &str, low: Option<f64>, high: Option<f64>) -> Checked {
        if !scale.is_empty() && Axis::find(scale).is_none_or(|axis| axis.symbol() != scale) {
            let scales = Scale::ALL.into_iter().map(Axis::Hardness);
            let known: Vec<&str> = scales.chain([Axis::Tensile]).map(Axis::symbol).collect();
            return self.name(&at.field("scale"), scale, &known);
        }
        for (name, end) in [("low", low), ("high", high)] {
            if let Some(end) = end {
                // Whatever the scale, no hardness and no strength of steel is larger.
                self.range(&at.field(name), end, 0.0, 10_000.0)?;
            }
        }
        match (low, high) {
            (Some(low), Some(high)) if low > high => {
                let given = format!("{} to {}", format::exact(low), format::exact(high));
                Err(self.wrong(at, "bench.parts_backward", &given, |place| {
                    PartRefusal::UpsideDown { place }
                }))
            }
            _ => Ok(()),
        }
    }

    fn photo(&self, at: &Place<'_>, photo: &Photo) -> Checked {
        self.id(&at.field("id"), &photo.id)?;
        self.moment(&at.field("at"), &photo.at)?;
        self.text(&at.field("text"), &photo.text, MOST_NOTES)?;
        let types = ["image/jpeg", "image/png", "image/webp"];
        let (data, media_type) = (at.field("data"), at.field("media_type"));
        self.name(&media_type, &photo.media_type, &types)?;
        for (name, side) in [("width", photo.width), ("height", photo.height)] {
            self.range(&at.field(name), side.into(), 0.0, MOST_PIXELS.into())?;
        }
        if photo.data.is_empty() {
            return Ok(());
        }
        let large = || {
            let most = megabytes(MOST_PHOTO);
            let given = format!("> {most}");
            let place = data.to_string();
            let what = PartRefusal::PictureTooLarge { place: &place, most: &most };
            refusal(self.language, "bench.parts_photo_too_large", given, what)
        };
        if photo.data.len() > MOST_PHOTO.div_ceil(3) * 4 {
            return Err(large());
        }
        let bytes = STANDARD.decode(&photo.data).map_err(|_| {
            self.wrong(&data, "bench.parts_photo", &photo.data, |place| PartRefusal::NotBase64 {
                place,
            })
        })?;
        if bytes.len() > MOST_PHOTO {
            return Err(large());
        }
        let begins = match photo.media_type.as_str() {
            "image/jpeg" => bytes.starts_with(&[0xFF, 0xD8, 0xFF]),
            "image/png" => bytes.starts_with(b"\x89PNG\r\n\x1A\n"),
            "image/webp" => bytes.starts_with(b"RIFF") && bytes.get(8..12) == Some(b"WEBP"),
            _ => false,
        };
        if begins {
            return Ok(());
        }
        let place = data.to_string();
        let what = PartRefusal::NotPicture { place: &place, media_type: &photo.media_type };
        Err(refusal(self.language, "bench.parts_photo", format::shortened(&photo.data), what))
    }
}

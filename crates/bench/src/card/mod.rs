//! The part card: what a part is, what is wanted of it, how it stands, and what was done to it.
//!
//! A card is a by-product: it is made of what the pages hold of the part in hand ([`Card::of`]) and handed back to them
//! when the part is taken in hand again ([`Card::put`]). Every text stands as it was typed. The same form is stored,
//! exported, imported and read by the command line.
//!
//! ```
//! use biteband_bench::card::Card;
//! use biteband_bench::state::Saved;
//!
//! let mut saved = Saved::default();
//! saved.steel.query = "4140".into();
//! saved.file_test.target_text = "50-54 HRC".into();
//! let card = Card::of(&saved);
//! assert_eq!((card.steel.name.as_str(), card.target.as_str()), ("4140", "50-54 HRC"));
//! ```

mod check;
pub mod csv;
pub mod demo;
mod entry;
mod facts;
pub mod file;
pub mod find;
pub mod merge;
mod record;
mod rest;
mod said;
mod scan;
mod sheet;
pub mod text;

use serde::{Deserialize, Serialize};

pub use check::name_of_name;
pub use entry::{entry_of_claim, entry_of_files, found, versions};
pub use facts::{Again, Fact, Row, StoryLine, again, compare, day, facts, story, story_with};
pub use record::{SCHEMA, read_record, write_record};
pub(crate) use rest::Rest;
pub use said::{Said, SaidOf, Standing, said, said_of_card};
pub use sheet::{Sheets, moment, moment_ms};

use crate::answer::{ProofInput, StrokeInput};

/// The card of one part.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Card {
    /// Stable name, by which cards are merged: small letters, figures and hyphens.
    pub id: String,
    /// What the person calls the part.
    pub name: String,
    /// When it was begun, UTC: `2026-11-12T14:03:00Z`.
    pub created: String,
    /// When it was changed last, UTC.
    pub changed: String,
    /// How often it was changed.
    pub revision: u64,
    /// It belongs to the demonstration.
    pub demo: bool,
    /// The part that it was duplicated from, by name.
    pub recipe_of: String,
    /// What was done to that part.
    pub recipe: Vec<Entry>,
    /// The steel.
    pub steel: SteelSheet,
    /// Form and sizes.
    pub section: SectionSheet,
    /// Kind of part, as in the list of usual hardnesses.
    pub kind: String,
    /// Wanted hardness of the body: `50-54 HRC`.
    pub target: String,
    /// Places that are wanted otherwise.
    pub zones: Vec<Zone>,
    /// The bath, and what keeps the air off.
    pub bath: BathSheet,
    /// What was done to it, and the temper that is looked at.
    pub tempering: TemperSheet,
    /// The file test as it stands.
    pub files: FileSheet,
    /// What a paper says of it, against what was measured.
    pub claim: ClaimSheet,
    /// What was seen of the bar while its steel was unknown: an answer for each test.
    pub seen: Vec<String>,
    /// Remarks.
    pub notes: String,
    /// What the tool says now, with the versions that say it.
    pub said: Vec<Said>,
    /// What was done and found before, oldest first.
    pub story: Vec<Entry>,
    /// Photographs.
    pub photos: Vec<Photo>,
    /// What stands in fields and waits for its key, so that it is there when the part is taken in hand again: a place that
    /// is wanted otherwise and its hardness, a remark, how it was hardened, a temper, a reading of the file test.
    pub begun: Vec<String>,
}

/// The steel of a part.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct SteelSheet {
    /// What is stamped on the bar.
    pub name: String,
    /// The grade that was chosen where the name means several.
    pub grade: String,
    /// Composition of an own bar.
    pub composition: String,
    /// Its name.
    pub bar: String,
    /// The composition counts instead of the name.
    pub by_composition: bool,
    /// Where it comes from.
    pub origin: String,
}

/// Form and sizes of a part.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct SectionSheet {
    /// `round`, `tube`, `square`, `hexagon`, `flat` or `plate`.
    pub shape: crate::state::ShapeKind,
    /// Diameter, side, thickness or outside.
    pub size: String,
    /// Inside or width.
    pub second: String,
    /// Length.
    pub length: String,
}

/// A place of the part that is wanted otherwise than its body.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Zone {
    /// Where: struck end, edge.
    pub place: String,
    /// Wanted hardness: `45 HRC max`.
    pub target: String,
}

/// The bath, and what keeps the air off.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct BathSheet {
    /// Stable name of what is in the tank.
    pub medium: String,
    /// Stable name of how it is moved.
    pub movement: String,
    /// How much.
    pub litres: String,
    /// How warm.
    pub temperature: String,
    /// Flash point on the drum.
    pub flash_point: String,
    /// Stable name of what keeps the air off.
    pub protection: String,
}

/// What was done to the part, and the temper that is looked at.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct TemperSheet {
    /// `bought`, `quenched` or `tempered`; empty is `quenched`.
    pub stage: String,
    /// The tempers so far: `205C/2h, 230C/2h`.
    pub done: String,
    /// Measured before the first temper.
    pub as_quenched: String,
    /// The temper that is looked at.
    pub at: String,
    /// Time at heat.
    pub held: String,
    /// It is at its size.
    pub at_size: bool,
    /// It was heated well above its window.
    pub overheated: bool,
    /// No time is left for a full temper.
    pub hurried: bool,
    /// A result that is being typed: what was measured.
    pub measured: String,
    /// The temper before it.
    pub after: String,
    /// What was measured on this part after a temper.
    pub results: Vec<ResultSheet>,
}

/// What was measured after a temper.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct ResultSheet {
    /// The steel as it was named then.
    pub steel: String,
    /// What was measured.
    pub hardness: String,
    /// The temper before it, as the oven's dial showed it.
    pub temper: String,
}

/// A file test with everything that its band rests on.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct FileSheet {
    /// Grades of the files: `65 60 55 50 45 40`.
    pub set: String,
    /// To how many HRC they are graded.
    pub tolerance: String,
    /// `careful`, `practised` or `casual`; empty is `practised`.
    pub hand: String,
    /// Strokes on the part, oldest first.
    pub strokes: Vec<StrokeInput>,
    /// Strokes on known pieces.
    pub proofs: Vec<ProofInput>,
    /// Readings of instruments.
    pub readings: Vec<ReadingSheet>,
    /// The spot of the next stroke, from 1.
    pub spot: u8,
    /// What shifts every stroke.
    pub conditions: ConditionsSheet,
    /// What was expected before.
    pub expected: ExpectedSheet,
}

/// Readings of one instrument on one spot.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct ReadingSheet {
    /// Stable name of the instrument; empty for the usual one of the scale.
    pub instrument: String,
    /// As written: `52, 53 HRC`.
    pub text: String,
    /// For a comparison, the hardness of the known piece.
    pub known: String,
    /// For a comparison, the readings of that piece.
    pub on_known: String,
}

/// What shifts every stroke.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct ConditionsSheet {
    /// Whether the skin was ground off; absent when not said.
    pub skin_ground: Option<bool>,
    /// On an edge or corner.
    pub edge: bool,
    /// Another finish than the pieces the files are known on.
    pub finish_differs: bool,
    /// Carbide-rich steel.
    pub carbide_rich: bool,
}

/// What was expected before a file test.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct ExpectedSheet {
    /// It counts.
    pub on: bool,
    /// Mean, HRC.
    pub mean: String,
    /// Standard deviation, HRC.
    pub sd: String,
}

/// What a paper says, against what was measured.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct ClaimSheet {
    /// What the paper says: `28-32 HRC`.
    pub paper: String,
    /// Readings of instruments, one for each instrument and place.
    pub readings: Vec<ReadingSheet>,
    /// What files said counts as well.
    pub with_files: bool,
    /// The grade that the paper names; empty for that of the part.
    pub steel: String,
    /// `simple`, `guarded:0.95`, `U`; empty for the usual one.
    pub rule: String,
    /// Where it was measured: `skin` or `core`; empty when not said.
    pub place: String,
    /// Where the paper's number was measured.
    pub claimed_place: String,
}

/// Something that was done or found.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Entry {
    /// When, UTC; empty until it is stored.
    pub at: String,
    /// What kind of thing.
    pub kind: EntryKind,
    /// What, in words.
    pub what: String,
    /// What the tool said of it then.
    pub said: String,
    /// Symbol of the scale of the band; empty without one.
    pub scale: String,
    /// Its low end; absent where it is open.
    pub low: Option<f64>,
    /// Its high end; absent where it is open.
    pub high: Option<f64>,
    /// Version of the program that said it.
    pub app: String,
    /// Version of the data it rests on.
    pub data: String,
    /// What it rests on, for a file test and for a claim that counts one.
    pub files: Option<FileSheet>,
    /// What it rests on, for a claim.
    pub claim: Option<ClaimSheet>,
}

impl Entry {
    /// The file test that it is the history of; that of a claim is counted elsewhere.
    #[must_use]
    pub fn test(&self) -> Option<&FileSheet> {
        self.files.as_ref().filter(|_| self.kind == EntryKind::Filed)
    }
}

/// Kind of an entry.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum EntryKind {
    /// Heated and quenched.
    Hardened,
    /// Tempered.
    Tempered,
    /// Stroked with files, or read with an instrument.
    Filed,
    /// A paper was held against it.
    Claimed,
    /// Anything else, in the person's words.
    #[default]
    Remark,
}

/// A photograph, made small.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Photo {
    /// Stable name: small letters, figures and hyphens.
    pub id: String,
    /// When it was added, UTC.
    pub at: String,
    /// What it shows.
    pub text: String,
    /// `image/jpeg`, `image/png` or `image/webp`.
    pub media_type: String,
    /// Width in pixels.
    pub width: u32,
    /// Height in pixels.
    pub height: u32,
    /// The picture in base64; empty where it is kept apart.
    pub data: String,
}

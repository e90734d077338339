//! What the page remembers, what can happen to it, and how it changes.
//!
//! [`reduce`](reduce::reduce) is pure: the same state and action give the same new state. Everything
//! in [`Saved`] is stored on every change; [`Session`] lives only while the page is open.

mod claim;
mod field;
mod mark;
mod part;
mod reduce;
mod saved;
mod steel;
mod temper;
mod texts;
mod timer;
mod unknown;

use biteband_hardness::Material;
use serde::{Deserialize, Serialize};

use crate::answer::{ConditionsInput, DEFAULT_INSTRUMENT, ProofInput, ReadingInput, StrokeInput};
use crate::format::Units;

pub use claim::{ClaimAction, ClaimChange, ClaimField, ClaimReading, ClaimState, OWN_LEVEL, RULES};
pub use field::{Field, PadKey};
pub use mark::{MarkField, MarkKind, MarkState, RoundShape};
pub use part::{History, PartAction, PartChange, PartField, PartNotice, PartState, unstamped};
pub use reduce::{list_of_grades, number, reduce, text};
pub use saved::{
    Damage, Document, Found, JsonText, SCHEMA, Step, Version, document, migrate, read,
};
pub use steel::{DialCheck, OwnSteel, ShapeKind, SteelAction, SteelField, SteelState};
pub(crate) use steel::{POINTS, has_degrees, is_truth};
pub use temper::{
    OwnResult, PartStage, Planner, TemperAction, TemperChange, TemperField, TemperState,
};
pub use timer::{
    MOST_TIMERS, Timer, TimerAction, TimerChange, TimerField, TimerKind, TimerState, Timers,
};
pub use unknown::{Seen, UnknownField, UnknownState};

/// A page of the application.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Page {
    /// Strokes of graded files.
    #[default]
    FileTest,
    /// From scale to scale.
    Convert,
    /// From a mark to its number.
    Mark,
    /// Sheets for the wall.
    Paper,
    /// What a steel can do in a section.
    Steel,
    /// Tempers for a hardness.
    Temper,
    /// How long a part is in the oven.
    Timer,
    /// What a bar without papers can be.
    Unknown,
    /// Whether the paper is right.
    Claim,
    /// The cards of the parts.
    Parts,
    /// Sources, limits, settings.
    About,
}

impl Page {
    /// The part of the address behind `#`.
    #[must_use]
    pub const fn hash(self) -> &'static str {
        match self {
            Self::FileTest => "#file-test",
            Self::Convert => "#convert",
            Self::Mark => "#mark",
            Self::Paper => "#paper",
            Self::Steel => "#steel",
            Self::Temper => "#temper",
            Self::Timer => "#timer",
            Self::Unknown => "#unknown",
            Self::Claim => "#claim",
            Self::Parts => "#parts",
            Self::About => "#about",
        }
    }

    /// Finds a page by the part of the address behind `#`.
    #[must_use]
    pub fn from_hash(hash: &str) -> Option<Self> {
        let all = [
            Self::FileTest,
            Self::Convert,
            Self::Mark,
            Self::Paper,
            Self::Steel,
            Self::Temper,
            Self::Timer,
            Self::Unknown,
            Self::Claim,
            Self::Parts,
            Self::About,
        ];
        all.into_iter().find(|page| page.hash() == hash)
    }
}

/// Brightness of the page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Theme {
    /// As the device says.
    #[default]
    Auto,
    /// For daylight.
    Light,
    /// For judging hot steel in half dark.
    Dim,
}

/// How the person strokes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HandChoice {
    /// Files proved, pressure controlled.
    Careful,
    /// Done often.
    #[default]
    Practised,
    /// Seldom done, or mixed files.
    Casual,
}

impl HandChoice {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 3] = [Self::Careful, Self::Practised, Self::Casual];

    /// The name that questions use.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Careful => "careful",
            Self::Practised => "practised",
            Self::Casual => "casual",
        }
    }
}

/// Choices that hold for every page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct Settings {
    /// Brightness.
    pub theme: Theme,
    /// Units of strength.
    pub units: Units,
}

/// Strokes, proofs and readings at one moment, for undo.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Strokes {
    /// Strokes on the part, oldest first.
    pub strokes: Vec<StrokeInput>,
    /// Strokes on known pieces.
    pub proofs: Vec<ProofInput>,
    /// Readings of instruments.
    pub readings: Vec<ReadingInput>,
    /// The spot that the next stroke is counted to, from 1.
    pub spot: u8,
}

/// The file test as far as it has come.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct FileTestState {
    /// Grades as typed.
    pub grades_text: String,
    /// The last grades that could be read, hardest first.
    pub grades: Vec<f64>,
    /// Tolerance of the grades as typed.
    pub tolerance_text: String,
    /// How the person strokes.
    pub hand: HandChoice,
    /// What was stroked.
    pub now: Strokes,
    /// What was stroked before each of the last changes, oldest first.
    pub past: Vec<Strokes>,
    /// Skin, place, finish, steel.
    pub conditions: ConditionsInput,
    /// Wanted hardness as typed.
    pub target_text: String,
    /// Grade of the file to prove.
    pub proof_file: Option<f64>,
    /// Hardness of the known piece as typed.
    pub proof_known_text: String,
    /// Whether the expected hardness is counted in.
    pub prior_on: bool,
    /// Expected hardness as typed.
    pub prior_mean_text: String,
    /// Its standard deviation as typed.
    pub prior_sd_text: String,
    /// Stable name of the instrument to read with next.
    pub instrument: String,
    /// Its readings as typed so far.
    pub reading_text: String,
}

impl FileTestState {
    /// Clears what was found on the part; what was proved of the files stays.
    pub(crate) fn fresh(&mut self) {
        let proofs = std::mem::take(&mut self.now.proofs);
        self.now = Strokes { proofs, spot: 1, ..Strokes::default() };
        self.past.clear();
    }
}

impl Default for FileTestState {
    fn default() -> Self {
        Self {
            grades_text: "65 60 55 50 45 40".to_owned(),
            grades: vec![65.0, 60.0, 55.0, 50.0, 45.0, 40.0],
            tolerance_text: "1".to_owned(),
            hand: HandChoice::default(),
            now: Strokes { spot: 1, ..Strokes::default() },
            past: Vec::new(),
            conditions: ConditionsInput::default(),
            target_text: String::new(),
            proof_file: None,
            proof_known_text: String::new(),
            prior_on: false,
            prior_mean_text: String::new(),
            prior_sd_text: "2".to_owned(),
            instrument: DEFAULT_INSTRUMENT.to_owned(),
            reading_text: String::new(),
        }
    }
}

/// The conversion as far as it has come.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct ConvertState {
    /// As typed.
    pub text: String,
    /// Symbol of the scale that a bare number stands in.
    pub scale: String,
    /// Whether the rarer scales are offered.
    pub more: bool,
    /// One table instead of the order of preference.
    pub table: Option<String>,
    /// Stable name of the class of materials.
    pub material: String,
    /// Scales to convert to, by symbol; empty for the usual ones.
    pub to: Vec<String>,
    /// How far the drawing is drawn in, in steps; negative is further out.
    pub zoom: i8,
    /// How far it is moved to harder numbers, in quarters of its width.
    pub pan: i8,
}

impl Default for ConvertState {
    fn default() -> Self {
        Self {
            text: String::new(),
            scale: "HRC".to_owned(),
            more: false,
            table: None,
            material: Material::default().key().to_owned(),
            to: Vec::new(),
            zoom: 0,
            pan: 0,
        }
    }
}

/// A sheet for the wall.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SheetKind {
    /// Scales side by side.
    #[default]
    Strip,
    /// Numbers in rows.
    Chart,
    /// A card to tick while filing.
    FileCard,
    /// Thinnest section for each test.
    Thickness,
}

/// The sheet to print as far as it was chosen; base and scales are those of the conversion.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct PaperState {
    /// Which sheet.
    pub kind: SheetKind,
    /// Ends on the base scale as typed; empty for the usual ones.
    pub span_text: String,
    /// US Letter instead of A4.
    pub letter: bool,
}

/// Everything that survives a reload.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Saved {
    /// The page last shown.
    pub page: Page,
    /// Choices.
    pub settings: Settings,
    /// The file test.
    pub file_test: FileTestState,
    /// The conversion.
    pub convert: ConvertState,
    /// The mark.
    pub mark: MarkState,
    /// The sheet to print.
    pub paper: PaperState,
    /// The steel, its section and its bath.
    pub steel: SteelState,
    /// What was done to the part, and own results of tempering.
    pub temper: TemperState,
    /// The timers.
    pub timer: TimerState,
    /// Unknown bars.
    pub unknown: UnknownState,
    /// The claim.
    pub claim: ClaimState,
    /// The part in hand.
    pub part: PartState,
}

/// Something that storage or the service worker said.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Notice {
    /// The page works without a network from now on.
    OfflineReady,
    /// A new version waits.
    UpdateWaiting,
    /// What was stored could not be read and is kept aside.
    StoredDamaged,
    /// What was stored comes from a newer version with this format number.
    StoredNewer(u32),
    /// Nothing can be stored.
    StorageRefused,
    /// The last change could not be stored.
    StorageFull,
}

/// What lives only while the page is open.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Session {
    /// The field whose number pad is open.
    pub active: Option<Field>,
    /// The field for which the device's own keyboard was asked.
    pub letters: Option<Field>,
    /// Fields that were left at least once: their errors are shown.
    pub left: Vec<Field>,
    /// The field that a key which was just pressed waits for.
    pub missing: Option<Field>,
    /// What is to be told.
    pub notices: Vec<Notice>,
    /// The device's clock when a timer was last looked at, in milliseconds; nought before the first look.
    pub now_ms: i64,
    /// Whether the choice of a part is open.
    pub choosing: bool,
    /// What the keeping of cards has to say.
    pub parts: Vec<PartNotice>,
    /// What makes history of a file test.
    pub history: History,
}

impl Session {
    pub(crate) fn leave(&mut self, field: Field) {
        if !self.left.contains(&field) {
            self.left.push(field);
        }
    }
}

/// The whole state of the page.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct App {
    /// What survives a reload.
    pub saved: Saved,
    /// What does not.
    pub session: Session,
}

/// Something that happened.
#[derive(Clone, Debug, PartialEq)]
pub enum Action {
    /// Another page.
    Go(Page),
    /// Brightness.
    SetTheme(Theme),
    /// Units of strength.
    SetUnits(Units),
    /// A file was stroked; the outcome as questions name it.
    Stroke {
        /// Grade, HRC.
        grade: f64,
        /// `bites`, `slight` or `skates`.
        outcome: &'static str,
    },
    /// Takes the last stroke, proof, reading or clearing back.
    Undo,
    /// Clears strokes, proofs and readings.
    StartAgain,
    /// The next strokes are on this spot.
    PickSpot(u8),
    /// Text was typed.
    Edit(Field, String),
    /// A key of the number pad.
    Pad(Field, PadKey),
    /// A field was entered.
    Enter(Field),
    /// A field was left.
    Leave(Field),
    /// The device's own keyboard is wanted for a field.
    Letters(Field),
    /// How the person strokes.
    SetHand(HandChoice),
    /// Skin, place, finish, steel.
    SetConditions(ConditionsInput),
    /// Takes a ready-made set: grades and tolerance as typed.
    TakeSet(&'static str, &'static str),
    /// The file to prove.
    ProofFile(f64),
    /// The chosen file was stroked on the known piece.
    Prove(&'static str),
    /// Takes a proof away.
    RemoveProof(usize),
    /// The instrument to read with next, by its stable name.
    SetInstrument(&'static str),
    /// Takes the typed readings in, if they can be read.
    AddReading,
    /// Takes readings away.
    RemoveReading(usize),
    /// Counts the expectation in or not.
    SetPrior(bool),
    /// The scale of a bare number.
    ConvertScale(&'static str),
    /// Offers rarer scales or not.
    ConvertMore(bool),
    /// One table instead of the order of preference.
    ConvertTable(Option<&'static str>),
    /// Another class of materials.
    ConvertMaterial(&'static str),
    /// A scale to convert to, in or out; the list as it stands comes along, because an empty choice
    /// means the usual scales.
    ConvertTo {
        /// Symbols shown now.
        shown: Vec<&'static str>,
        /// Symbol to put in or take out.
        scale: &'static str,
    },
    /// The usual scales again.
    ConvertUsual,
    /// Draws the scales further in or out and moves them; nothing for both is the first view again.
    ConvertDraw {
        /// Steps further in.
        zoom: i8,
        /// Quarters of the width to harder numbers.
        pan: i8,
    },
    /// Kind of the mark.
    MarkKind(MarkKind),
    /// Rockwell scale of the mark.
    MarkScale(&'static str),
    /// Where on a round part the mark stands.
    MarkShape(RoundShape),
    /// One diagonal along the axis.
    MarkAlong(bool),
    /// Which sheet to print.
    PaperKind(SheetKind),
    /// US Letter instead of A4.
    PaperLetter(bool),
    /// Something on the page of steels.
    Steel(SteelAction),
    /// Something about tempering or the next step.
    Temper(TemperChange),
    /// Something about the timers.
    Timer(TimerChange),
    /// An answer of a test of an unknown bar; the same once more takes it back.
    Saw(UnknownField, &'static str),
    /// A new unknown bar, or the last one again.
    TurnBar,
    /// Something on the page of claims.
    Claim(ClaimChange),
    /// Opens or closes the choice of a part on top of the page.
    Choose(bool),
    /// Something about the part in hand.
    Part(PartChange),
    /// What was stored has arrived.
    Loaded(Box<Saved>),
    /// Something is to be told.
    Tell(Notice),
    /// It was read.
    Dismiss(Notice),
}

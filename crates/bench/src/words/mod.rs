//! Everything the tool says, as phrases; one module for each language.
//!
//! A phrase is named here once, with what it needs to be said. A language is one function with a
//! match over all phrases, so that a missing sentence does not compile.

mod about;
mod about_english;
mod card;
mod card_english;
mod claim;
mod claim_english;
mod claim_page;
mod claim_page_english;
mod english;
mod harden;
mod harden_english;
mod heat;
mod heat_english;
mod indent;
mod indent_english;
mod mark;
mod mark_english;
mod materials;
mod measure;
mod measure_english;
mod next;
mod next_english;
mod paper;
mod paper_english;
mod part;
mod part_english;
mod parts;
mod parts_english;
mod print;
mod print_english;
mod reach;
mod reach_english;
mod reading;
mod reading_english;
mod section;
mod section_english;
mod steel;
mod steel_english;
mod steel_page;
mod steel_page_english;
mod temper;
mod temper_english;
mod temper_page;
mod temper_page_english;
mod timer;
mod timer_english;
mod unknown;
mod unknown_english;
mod unknown_page;
mod unknown_page_english;

use std::borrow::Cow;

use biteband_evidence as evidence;
use biteband_hardness::designation::Remark;
use biteband_hardness::{Axis, Material, TableId, designation};

pub use about::About;
pub use card::CardWords;
pub use claim::{Claim, ClaimRefusal, Side, Way};
pub use claim_page::{ClaimPage, ClaimSays};
pub use harden::{Harden, HardenRefusal};
pub use heat::{BathFault, Heat, HeatRefusal, List, Magnet};
pub use indent::{Indent, IndentRefusal};
pub use mark::Mark;
pub use measure::Unmeasured;
pub use next::{Act, NextRefusal, NextStep};
pub use paper::Paper;
pub use part::{FactLabel, PartRefusal, PartWords, Shape};
pub use parts::{PartsPage, PartsSays};
pub use print::{Print, Unprintable};
pub use reach::{Likely, Reach, ReachRefusal};
pub use reading::{Gauge, Unreadable};
pub use section::SectionRefusal;
pub use steel::{SteelRefusal, SteelWords};
pub use steel_page::{RecipeNote, SteelPage};
pub use temper::{Above, TemperRefusal, Tempers};
pub use temper_page::{TemperPage, TemperSaid};
pub use timer::{TimerPage, TimerSays};
pub use unknown::{Sure, Unknown, UnknownRefusal};
pub use unknown_page::UnknownPage;

/// A language of the tool.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Language {
    /// English, with the words of British and American shops side by side where they differ.
    #[default]
    English,
}

impl Language {
    /// Finds a language by its tag.
    #[must_use]
    pub fn find(tag: &str) -> Option<Self> {
        match tag.to_ascii_lowercase().split(['-', '_']).next() {
            Some("en") => Some(Self::English),
            _ => None,
        }
    }

    /// The tags that [`Language::find`] knows.
    pub const TAGS: &'static str = "en";

    /// A fixed label.
    ///
    /// Inlined, so that each label is known where it is used and stands in the part of the page that shows it.
    #[must_use]
    #[expect(clippy::inline_always, reason = "a call would keep every label in the first module")]
    #[inline(always)]
    pub const fn label(self, ui: Ui) -> &'static str {
        match self {
            Self::English => english::ui_words(ui),
        }
    }

    /// Says a phrase.
    #[must_use]
    pub fn say(self, phrase: Phrase<'_>) -> Cow<'static, str> {
        match self {
            Self::English => english::say(phrase),
        }
    }
}

/// A sentence or label, with what it needs to be said.
#[derive(Clone, Copy, Debug)]
#[expect(missing_docs, reason = "a phrase is documented by its words in each language")]
pub enum Phrase<'a> {
    // Names.
    FileTest,
    Convert,
    Steel,
    About,
    AxisName(Axis),
    ScaleHint(Axis),
    Estimate,
    Outcome(evidence::Outcome),
    Hand(evidence::Hand),
    HandMeaning(evidence::Hand),

    // What was understood, and what is open.
    Remark(Remark),
    Understood(&'a str),
    TableNotes {
        parenthesised: bool,
        recalled: bool,
    },
    OnRow {
        row: &'a str,
    },
    BetweenRows {
        lower: &'a str,
        upper: &'a str,
    },
    WidthMeaning,
    OtherTables {
        span: &'a str,
    },
    OtherTablesNone,
    ConvertCaution,
    TensileCaution,
    MaterialName(Material),
    SteelScope,

    // Refusals: message, allowed range, way out.
    DesignationRefused(&'a designation::Error),
    DesignationInstead(&'a designation::Error),
    OutsideScale {
        given: &'a str,
        low: &'a str,
        high: &'a str,
    },
    OutsideScaleInstead(biteband_hardness::Scale),
    OutsideTables {
        given: &'a str,
        to: Axis,
        end: &'a str,
        becomes: &'a str,
        table: TableId,
        above: bool,
    },
    OutsideTablesInstead {
        from: Axis,
        to: Axis,
        above: bool,
        material: Material,
    },
    LastAgreed {
        at: &'a str,
        says: &'a str,
    },
    NoTable {
        from: Axis,
        to: Axis,
        material: Material,
    },
    NoTableInstead {
        from: Axis,
        material: Material,
    },
    NoMaterial(Material),
    NoMaterialInstead(Material),
    TableOfOther {
        table: TableId,
        material: Material,
    },
    OtherMetalCaution {
        recalled: bool,
    },
    MeasuredStrength {
        shown: &'a str,
    },
    NotInTable {
        from: Axis,
        to: Axis,
        table: TableId,
    },
    NotInTableInstead,
    NoSingleTable {
        low: &'a str,
        high: &'a str,
        to: Axis,
    },
    NoSingleTableInstead,
    SameScale(Axis),
    SameScaleInstead,
    BackwardRange {
        low: &'a str,
        high: &'a str,
    },
    BackwardRangeInstead {
        low: &'a str,
        high: &'a str,
    },
    NoLimit,
    NotANumber,
    NotANumberInstead,
    UnknownTable {
        given: &'a str,
    },
    UnknownScale {
        given: &'a str,
    },
    UnknownMaterial {
        given: &'a str,
    },
    UnknownSource {
        given: &'a str,
    },
    Evidence(&'a evidence::Error),
    EvidenceInstead(&'a evidence::Error),
    PriorUnreadable,
    PriorUnreadableInstead,
    TargetInOtherUnit,
    TargetInOtherUnitInstead,
    NotListOfGrades {
        given: &'a str,
    },
    NotListOfGradesInstead,
    StrokesUnreadable {
        given: &'a str,
    },
    StrokesInstead,
    ProofsUnreadable {
        given: &'a str,
    },
    ProofsInstead,

    // The file test's verdict.
    NothingStroked,
    NothingStrokedNumber,
    BetweenFiles {
        softer: &'a str,
        harder: &'a str,
    },
    LikeFile {
        grade: &'a str,
    },
    SofterThanAll {
        grade: &'a str,
    },
    HarderThanAll {
        grade: &'a str,
    },
    MixedFiles,
    FilesDisagree {
        harder: &'a str,
        softer: &'a str,
    },
    FileDisagreesWithItself {
        grade: &'a str,
    },
    NoNumber,
    Cause(evidence::Cause),
    WithoutFile {
        grade: &'a str,
        band: &'a str,
    },
    BandOr {
        low: &'a str,
    },
    BandBelow {
        high: &'a str,
    },
    BandBetween {
        low: &'a str,
        high: &'a str,
    },
    BandUnknown,
    LevelMeaning,
    OpenBelow,
    OpenAbove,
    OneFileOnly,
    SkinNotGround,
    SkinNotSaid,
    CarbideRich,
    EdgeStroked,
    FinishDiffers,
    PriorUsed {
        mean: &'a str,
        sd: &'a str,
    },
    TargetUnder,
    TargetInside,
    TargetOver,
    TargetMet,
    TargetTooSoft,
    TargetTooHard,
    TargetNotProved,
    OddsUnder {
        percent: u32,
    },
    OddsInside {
        percent: u32,
        target: &'a str,
    },
    OddsOver {
        percent: u32,
    },
    NextStroke {
        grade: &'a str,
        again: bool,
    },
    NextWidth {
        now: &'a str,
        then: &'a str,
    },
    NextDoubt {
        grade: &'a str,
    },
    NextOpen {
        grade: &'a str,
    },
    NextTooLittle,
    NextTooLittleProve {
        now: &'a str,
        then: &'a str,
    },
    NextSettle {
        softer: &'a str,
        harder: &'a str,
    },
    NextNothing,
    NextSkin,
    StrokesAside {
        grades: &'a str,
    },
    EyesTitle,
    Eyes,
    OtherScales,
    BelowTable,
    AboveTable {
        end: &'a str,
    },
    OtherScalesWidth,

    // The page.
    Seen(&'a str),
    TableSummary {
        rows: usize,
        columns: &'a str,
    },
    StrokeCount {
        word: &'a str,
        count: usize,
    },
    StrokeKey {
        word: &'a str,
        grade: &'a str,
    },
    SpotNumber(u8),
    ProofLine {
        grade: &'a str,
        known: &'a str,
        outcome: &'a str,
    },
    RidgeLabel {
        band: &'a str,
    },
    AlignedLabel {
        scales: &'a str,
    },
    StoredDamaged,
    StoredNewer {
        found: u32,
        known: u32,
    },
    StorageRefused,
    StorageFull,
    Wants {
        target: &'a str,
    },
    PaperSays {
        paper: &'a str,
    },
    Version {
        app: &'a str,
        data: &'a str,
    },
}

/// A fixed label or text of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "a label is documented by its words in each language")]
pub enum Ui {
    Brand,
    NoName,
    ChoosePart,
    QuickLookUp,
    OpenAbout,
    Back,
    SkipToContent,
    Pages,
    GradedFiles,
    Slight,
    LikelyCauses,
    Undo,
    StartAgain,
    Spot,
    NewSpot,
    Target,
    TargetHint,
    TargetNone,
    Conditions,
    ConditionSkin,
    SkinGround,
    SkinNotGround,
    ConditionPlace,
    PlaceFlat,
    PlaceEdge,
    ConditionFinish,
    FinishSame,
    FinishDifferent,
    ConditionSteel,
    SteelOrdinary,
    SteelCarbide,
    HandTitle,
    FilesTitle,
    FilesLabel,
    FilesHint,
    ToleranceLabel,
    ToleranceHint,
    TradeSet,
    OrdinaryFile,
    ProveTitle,
    ProveWhy,
    ProveFile,
    ProveKnown,
    ProveKnownHint,
    ProveBites,
    ProveSkates,
    Remove,
    PriorTitle,
    PriorWhy,
    PriorOn,
    PriorMean,
    PriorSd,
    ReadingTitle,
    ReadingInstrument,
    ReadingField,
    ReadingHint,
    ReadingAdd,
    Why,
    WhyModel,
    NextTitle,
    ConvertField,
    ConvertScales,
    ConvertHint,
    ConvertEmpty,
    ConvertTyping,
    MoreScales,
    FewerScales,
    TableChoice,
    TableAny,
    AllTables,
    MaterialChoice,
    TargetsChoice,
    UsualScales,
    ZoomIn,
    ZoomOut,
    PanSofter,
    PanHarder,
    ZoomReset,
    SideBySide,
    TabConvert,
    TabMark,
    TabPaper,
    TabSteel,
    TabTemper,
    Timer,
    TabUnknown,
    TabClaim,
    Parts,
    ConvertWhere,
    ConvertResults,
    PadTitle,
    PadDone,
    PadErase,
    PadSpace,
    PadLetters,
    OfflineReady,
    UpdateWaiting,
    UpdateNow,
    UpdateLater,
    Dismiss,
    ShowStored,
    PartComing,
    PartMissing,
    PartMissingInstead,
    TryAgain,
}

//! Questions and answers as the command line and the JavaScript package exchange them.
//!
//! Field names are stable; numbers are unrounded. The page makes its screens from the same answers.

mod cited;
mod claim;
mod claim_answer;
mod claim_measured;
mod claim_paper;
mod claim_question;
mod claim_settle;
mod clashes;
mod convert;
mod file_question;
mod file_scales;
mod file_test;
mod frame;
mod framed;
mod heat;
mod heat_answer;
mod heat_bath;
mod heat_parts;
mod indent;
mod indent_answer;
mod indent_question;
mod jominy;
mod next;
mod next_answer;
mod next_said;
mod reach;
mod reach_answer;
mod reach_said;
mod readings;
mod series;
mod source;
mod steel;
mod steel_answer;
mod temper;
mod temper_ages;
mod temper_answer;
mod temper_brittle;
mod temper_refused;
mod temper_said;
mod unknown;
mod unknown_answer;

pub use cited::CitedAnswer;
pub use claim::claim;
pub(crate) use claim::claimed;
pub use claim_answer::{
    AchievableAnswer, ClaimAnswer, ClaimedAnswer, DoubtAnswer, EstimateAnswer, MeasuredAnswer,
    PaperAnswer, RiskAnswer, SettleAnswer,
};
pub(crate) use claim_answer::{ClaimFound, Claimed};
pub(crate) use claim_paper::own_words;
pub use claim_question::ClaimQuestion;
pub(crate) use claim_question::{check_paper, check_rule};
pub use clashes::ClashAnswer;
pub use convert::{
    ConvertAnswer, ConvertInput, ConvertQuestion, Converted, Measured, Note, Other, choose,
    convert, default_targets, parse_axis, parse_table,
};
pub(crate) use file_question::with_scale;
pub use file_question::{
    ConditionsInput, FileQuestion, ProofInput, StrokeInput, build, parse_prior, parse_proofs,
    parse_strokes, parse_target,
};
pub use file_scales::BandInScale;
pub(crate) use file_test::{Assessed, PROVED, assessed};
pub use file_test::{
    BandAnswer, CauseAnswer, ContradictionAnswer, FileAnswer, FileOutcome, FileRefused, NextAnswer,
    TargetAnswer, assess,
};
pub use heat::{HeatQuestion, heat};
pub use heat_answer::{
    BathAnswer, Checklist, CrossCheckAnswer, FlashAnswer, HardenAnswer, HeatAnswer, HeatPart,
    HeatThroughAnswer, HoldAnswer, HoldRuleAnswer, KnownPointAnswer, OvenAnswer, ProtectionAnswer,
    QuenchingAnswer, SkinAnswer, TankAnswer,
};
pub use indent::indent;
pub use indent_answer::{
    BetterAnswer, ConvertedAnswer, CorrectionAnswer, IndentAnswer, LimitAnswer, MachineAnswer,
    MachineLimitAnswer, MarkAnswer, OutlierAnswer, SeriesAnswer, ThinnestAnswer,
};
pub use indent_question::{IndentQuestion, parse_readings};
pub use jominy::{
    DiameterAnswer, JominyAnswer, JominyPoint, JominyQuestion, OutsideAnswer, jominy,
};
pub use next::{NextQuestion, next, promised};
pub use next_answer::{AdvisedTemper, NextStepAnswer, OddsAnswer, OptionAnswer};
pub(crate) use next_said::rounded_percent;
pub use reach::{ReachQuestion, reach};
pub use reach_answer::{
    PartAnswer, PositionAnswer, QuenchAnswer, ReachAnswer, SectionAnswer, SeverityAnswer,
    WantedAnswer, WayOutAnswer,
};
pub(crate) use readings::{DEFAULT_INSTRUMENT, INSTRUMENTS, understood};
pub use readings::{ReadingAnswer, ReadingInput, parse_reading, read_reading};
pub(crate) use series::half_of;
pub use source::{SourceAnswer, TableAnswer, TableListing, TableRow, sources, table, tables};
pub(crate) use source::{hardness_sources, standard};
pub(crate) use steel::named;
pub use steel::{SteelQuestion, find_steels, steel, steel_targets, steels};
pub use steel_answer::{
    AgeAnswer, AsQuenchedAnswer, AvoidAnswer, CandidateAnswer, CompositionAnswer, ConditionAnswer,
    ElementAnswer, FindAnswer, HardeningAnswer, SteelAnswer, SteelListing, SteelSource,
    SuppliedAnswer, TargetRow, TargetsAnswer, TemperatureStep, TemperingAnswer, WorkingAnswer,
};
pub(crate) use temper::{HELD, hrc_of, not_as_quenched, temper_curve, time, wanted};
pub use temper::{TemperQuestion, temper, tempered};
pub use temper_answer::{
    AfterAnswer, AgeOption, BrittleAnswer, CurvePoint, LearnedAnswer, OwnPoint, PlanAnswer,
    SheetAnswer, TemperAnswer,
};

pub(crate) use unknown::readable;
pub use unknown::{UnknownQuestion, parse_coupons, unknown};
pub use unknown_answer::{
    UnknownAnswer, UnknownCarbon, UnknownClash, UnknownFamily, UnknownHardness, UnknownNext,
    UnknownPromise, UnknownQuench, UnknownUse,
};

//! What each page shows, ready to be put into elements: texts, marks, and places on drawings.
//!
//! Places are numbers in the coordinates of the drawing's own view box.

mod about;
mod claim;
mod claim_rule;
mod convert;
mod file_test;
mod hand;
mod mark;
mod next;
mod paper;
mod part_card;
mod parts;
mod reading;
mod ridge;
mod scales;
mod section;
mod steel;
mod steel_asked;
mod steel_heat;
mod temper;
mod temper_curve;
mod temper_view;
mod timer;
mod unknown;

pub use about::{AboutView, about};
pub use claim::{ClaimVerdict, ClaimView, ClaimWay, KeptReading, claim_page};
pub use convert::{ConvertView, ResultView, SideBySide, TableChip, convert};
pub(crate) use file_test::asked as file_test_asked;
pub use file_test::{ConflictView, FileTestView, OddsView, ProofView, ScaleRow, file_test};
pub use hand::{HandView, hand};
pub use mark::{MarkEntry, MarkView, mark};
pub use next::{ActView, NextView, StepView, next_step};
pub use paper::{PaperView, SheetView, paper};
pub use part_card::{CardView, FactGroup, StoryRow, ZoneRow, fact_groups, part_card};
pub use parts::{
    ConflictRow, DamagedView, ExportView, Exported, ImportView, Kept, PartRow, PartsView, chooser,
    exports, file_name, import, name_of, part_in_hand, parts,
};
pub use ridge::{KeyView, RidgeView, RuleRow, RuleTick, RuleView};
pub use scales::{AlignedView, ScaleLine, ScaleTick};
pub use section::{BandRow, BandView, Callout, Layer, SectionView};
pub use steel::{HeatView, ReachView, RecipeRow, SteelView, steel_page};
pub use temper::temper_page;
pub use temper_curve::{CurveText, CurveView};
pub use temper_view::{LookedView, PlanView, ResultRow, StepRow, TemperView};
pub use timer::{
    Alarm, Clock, Device, Doing, RING, Ring, Sound, TimerRow, TimerView, TimerWatch, timer,
    timer_watch,
};
pub(crate) use unknown::seen_in_words;
pub use unknown::{FamilyRow, TestView, UnknownView, unknown};

use crate::refusal::Refusal;

/// A choice with its label and whether it is taken.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Chip {
    /// Stable name.
    pub key: &'static str,
    /// Label.
    pub label: String,
    /// Whether it is taken.
    pub on: bool,
}

/// Something wrong with a field or an answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Problem {
    /// What, and the range.
    pub message: String,
    /// The way out.
    pub instead: String,
}

impl From<Refusal> for Problem {
    fn from(refusal: Refusal) -> Self {
        Self { message: refusal.message, instead: refusal.instead }
    }
}

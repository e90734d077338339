//! What an answer about tempering holds.

use serde::Serialize;

use super::CitedAnswer;

/// A hardness after tempering.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AfterAnswer {
    /// As likely harder as softer, HRC.
    pub median: f64,
    /// Lower end of the band, HRC.
    pub low: f64,
    /// Upper end of the band, HRC.
    pub high: f64,
    /// The share of results that the band is meant to hold.
    pub level: f64,
    /// Some of the band lies below 20 HRC, where the scale ends.
    pub below_20: bool,
    /// In whole HRC.
    pub shown: String,
}

/// One temper of a plan.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct PlanAnswer {
    /// Of the metal, as well as it is known, °C.
    pub celsius: f64,
    /// What the oven's dial shows then, °C; absent without a check of the dial and without own results.
    pub dial_c: Option<f64>,
    /// At heat each time, h.
    pub hours: f64,
    /// How many times.
    pub times: u8,
    /// The hardness after it and all before it.
    pub expect: AfterAnswer,
    /// In words.
    pub text: String,
}

/// A place of the tempering curve.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct CurvePoint {
    /// Of the metal, °C.
    pub celsius: f64,
    /// HRC.
    pub low: f64,
    /// HRC.
    pub median: f64,
    /// HRC.
    pub high: f64,
}

/// An own result on the curve.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct OwnPoint {
    /// Hottest temper, of the metal, °C.
    pub celsius: f64,
    /// As measured, HRC.
    pub hrc: f64,
    /// What the book says there, HRC.
    pub book: f64,
}

/// What own results taught.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct LearnedAnswer {
    /// How many results.
    pub count: usize,
    /// How much harder this steel is than the book, HRC; negative is softer.
    pub offset_hrc: f64,
    /// Standard deviation of that, HRC.
    pub offset_sd: f64,
    /// How much hotter the oven is than its dial, K; after a check of the dial, than the check says.
    pub oven_k: f64,
    /// Standard deviation of that, K.
    pub oven_sd: f64,
    /// The results on the curve.
    pub points: Vec<OwnPoint>,
    /// In words.
    pub text: Vec<String>,
}

/// A range of tempers that makes the steel brittle.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BrittleAnswer {
    /// `tempered_martensite` or `slow_cooling`.
    pub kind: &'static str,
    /// As wide as the sources have it, °C.
    pub low_c: f64,
    /// The same, °C.
    pub high_c: f64,
    /// What all sources agree on, °C.
    pub core_low_c: f64,
    /// The same, °C.
    pub core_high_c: f64,
    /// Whether a temper of the answer lies in it.
    pub inside: bool,
    /// Each source and its range.
    pub each: Vec<String>,
    /// In words; empty when nothing of the answer touches it.
    pub text: String,
    /// Where it stands.
    pub sources: Vec<&'static str>,
}

/// What one printed curve says.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SheetAnswer {
    /// Name of the sheet.
    pub sheet: &'static str,
    /// HRC; absent where it says nothing.
    pub low: Option<f64>,
    /// HRC.
    pub high: Option<f64>,
    /// Where it stands.
    pub cited: CitedAnswer,
}

/// An age of the 17-4 type.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct AgeOption {
    /// As in `H900`.
    pub name: &'static str,
    /// `asked`, `meets` the target, or the next `harder` or `softer` one.
    pub role: &'static str,
    /// Least hardness, HRC; there is no highest.
    pub least_hrc: Option<f64>,
    /// Where it stands.
    pub cited: CitedAnswer,
    /// In words.
    pub text: String,
}

/// The hardness after tempering, or a plan for a hardness.
#[derive(Clone, Debug, Default, PartialEq, Serialize)]
pub struct TemperAnswer {
    /// Stable name of the grade; absent for a composition.
    pub steel: Option<&'static str>,
    /// What names were taken for.
    pub understood: Vec<String>,
    /// What to do or what it leaves.
    pub verdict: String,
    /// The hardness after the tempers that were given.
    pub hardness: Option<AfterAnswer>,
    /// The tempers for the target that was given, the mildest first.
    pub plan: Vec<PlanAnswer>,
    /// From one temper of the plan to the next, K.
    pub step_k: Option<f64>,
    /// Fall for every 10 K there, HRC.
    pub fall_per_10k: Option<f64>,
    /// Ages, for a grade that is aged.
    pub ages: Vec<AgeOption>,
    /// `regression`, `regression_edge`, `sheets` or `age_table`.
    pub method: &'static str,
    /// What the numbers rest on.
    pub basis: Vec<String>,
    /// The curve for the time that was given, 10 K apart.
    pub curve: Vec<CurvePoint>,
    /// How many times each temper of curve and plan is done.
    #[serde(skip)]
    pub times: u8,
    /// What each printed curve says; empty for the regression.
    pub sheets: Vec<SheetAnswer>,
    /// What own results taught.
    pub learned: Option<LearnedAnswer>,
    /// Time to heat through before the time at heat begins, min; absent without a section.
    pub heat_through_min: Option<f64>,
    /// Embrittling ranges that apply.
    pub brittle: Vec<BrittleAnswer>,
    /// The colour on bright plain carbon steel; absent elsewhere.
    pub colour: Option<String>,
    /// What is outside the data, or near an end.
    pub warnings: Vec<String>,
    /// How to go about it.
    pub notes: Vec<String>,
    /// What the dial has to show for the first temper of the plan, or that it was not checked: one of the notes, for
    /// a page that shows it beside the plan.
    #[serde(skip)]
    pub dial: String,
    /// Where it can hurt.
    pub cautions: Vec<String>,
    /// Stable names of the sources.
    pub sources: Vec<&'static str>,
}

impl TemperAnswer {
    /// The ages and what is to be known of them, in one text.
    pub(crate) fn aged(&self) -> String {
        format!("{} {}", self.verdict, self.notes.join(" "))
    }
}

//! What is answered about a heat and a quench; field names are stable, numbers unrounded.

use serde::Serialize;

use super::TemperatureStep;
use super::cited::CitedAnswer;

/// A heat and a quench, from the window to the bath.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HeatAnswer {
    /// Key of the grade; absent for a composition.
    pub steel: Option<&'static str>,
    /// What the name stands for, and how near it is to the grade; empty for a composition.
    pub understood: Vec<String>,
    /// What to do, or the stop with its figure.
    pub verdict: String,
    /// The hardening window.
    pub harden: HardenAnswer,
    /// Preheating, one step after another.
    pub preheat: Vec<TemperatureStep>,
    /// The same in words; empty without steps.
    pub preheat_text: String,
    /// What stands between the skin and the air.
    pub protection: ProtectionAnswer,
    /// The part; absent when no section and no mass is given.
    pub part: Option<HeatPart>,
    /// Minutes until the middle is hot: of a part that scales, of stainless steel the bright figure.
    pub heat_through_min: Option<f64>,
    /// Shortest and longest of that, in words and numbers.
    pub heat_through: Option<HeatThroughAnswer>,
    /// Minutes to hold after that.
    pub hold_min: Option<f64>,
    /// What the data of the grade and the rules of the trade say.
    pub hold: HoldAnswer,
    /// What the skin loses; absent when the time or the temperature is not known.
    pub skin: Option<SkinAnswer>,
    /// What it is quenched in.
    pub quench: QuenchingAnswer,
    /// What the quench does to the bath; absent when none is given, or none that a part warms.
    pub bath: Option<BathAnswer>,
    /// The smallest tank that covers the part.
    pub tank: Option<TankAnswer>,
    /// What the dial must show; absent without checks of the oven.
    pub oven: Option<OvenAnswer>,
    /// What an oven can be checked against.
    pub known_points: Vec<KnownPointAnswer>,
    /// What can go wrong with this grade, from its data.
    pub hazards: Vec<&'static str>,
    /// What else is to be known, and what is missing.
    pub notes: Vec<String>,
    /// Where work can hurt, or go wrong.
    pub cautions: Vec<String>,
    /// What to look at before, between and after.
    pub checklists: Vec<Checklist>,
    /// Stable names.
    pub sources: Vec<&'static str>,
}

/// The window, in °C of the metal.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HardenAnswer {
    /// Lower end; absent when no window is known.
    pub low_c: Option<f64>,
    /// Upper end.
    pub high_c: Option<f64>,
    /// What everything else is worked out for: as given, or the middle of the window.
    pub at_c: f64,
    /// `grade`, `formula` or `none`.
    pub method: &'static str,
    /// How far the lower end lies above the point where a magnet lets go, in K.
    pub over_magnet_low_k: Option<f64>,
    /// How far the upper end does.
    pub over_magnet_high_k: Option<f64>,
    /// The window by formulas beside that of a grade; absent outside their steels.
    pub cross_check: Option<CrossCheckAnswer>,
    /// Where the window stands.
    #[serde(flatten)]
    pub cited: CitedAnswer,
    /// In words.
    pub text: String,
}

/// A window from the composition, in °C.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct CrossCheckAnswer {
    /// Ac3 by the mean of the formulas.
    pub ac3_c: f64,
    /// The lowest Ac3 that is to be expected.
    pub ac3_low_c: f64,
    /// The highest.
    pub ac3_high_c: f64,
    /// 30 K above the mean.
    pub low_c: f64,
    /// 60 K above it.
    pub high_c: f64,
    /// Whether its middle is within 15 K of the grade's.
    pub agrees: bool,
    /// Where the formulas stand.
    #[serde(flatten)]
    pub cited: CitedAnswer,
    /// In words.
    pub text: String,
}

/// What stands between the skin and the air.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ProtectionAnswer {
    /// `open`, `coated`, `foil`, `charcoal` or `atmosphere`.
    pub kind: &'static str,
    /// Whether this grade must not be heated in the open.
    pub needed: bool,
    /// In words.
    pub text: String,
}

/// The part as it was understood.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HeatPart {
    /// `round`, `tube`, `plate`, `square`, `hexagon` or `flat`; absent when only the mass is given.
    pub shape: Option<&'static str>,
    /// The size through which the heat must come.
    pub ruling_mm: Option<f64>,
    /// Absent without a length or a mass.
    pub mass_kg: Option<f64>,
}

/// How long until the middle is hot.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HeatThroughAnswer {
    /// Minutes for a part that scales.
    pub low_min: f64,
    /// Minutes for a bright part.
    pub high_min: f64,
    /// The middle is this near to the furnace then, in K.
    pub within_k: f64,
    /// From where the part is heated, in °C.
    pub from_c: f64,
    /// A wrap or a box stands around the part: count from when it has the colour of the furnace.
    pub at_least: bool,
    /// Where the model stands.
    #[serde(flatten)]
    pub cited: CitedAnswer,
    /// In words.
    pub text: String,
}

/// How long to hold; minutes after the part is heated through.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HoldAnswer {
    /// The shortest of all rules.
    pub low_min: Option<f64>,
    /// The longest.
    pub high_min: Option<f64>,
    /// What the data of the grade say, as printed.
    pub soak: &'static str,
    /// The rules of the trade.
    pub rules: Vec<HoldRuleAnswer>,
    /// In words.
    pub text: String,
}

/// One rule.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct HoldRuleAnswer {
    /// Stable name.
    pub rule: &'static str,
    /// Shortest hold by it, in minutes.
    pub low_min: f64,
    /// Longest.
    pub high_min: f64,
    /// Where it stands.
    #[serde(flatten)]
    pub cited: CitedAnswer,
    /// In words.
    pub text: String,
}

/// What the skin loses.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct SkinAnswer {
    /// Minutes at heat that are counted.
    pub minutes: f64,
    /// Depth of lost carbon in open air, in mm.
    pub low_mm: f64,
    /// Its upper end.
    pub high_mm: f64,
    /// The least to grind off each face, in mm.
    pub grind_mm: f64,
    /// Where the models stand.
    #[serde(flatten)]
    pub cited: CitedAnswer,
    /// In words.
    pub text: String,
}

/// What it is quenched in.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct QuenchingAnswer {
    /// What the sources of the grade name, the usual one first.
    pub named: Vec<&'static str>,
    /// What was asked for.
    pub medium: Option<&'static str>,
    /// How it is moved.
    pub movement: Option<&'static str>,
    /// How it stands to the grade: `named`, `between`, `sharper`, `milder`.
    pub fit: Option<&'static str>,
    /// `low`, `raised` or `high`.
    pub crack_risk: Option<&'static str>,
    /// Where the rules for cracks stand; empty without a bath.
    pub sources: &'static [&'static str],
    /// In words.
    pub text: String,
}

/// What the part does to the bath.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BathAnswer {
    /// What is in the tank.
    pub medium: &'static str,
    /// How much, in litres.
    pub litres: Option<f64>,
    /// How warm as the part goes in, in °C.
    pub start_c: f64,
    /// No temperature was given, so 20 °C is taken.
    pub start_assumed: bool,
    /// How much it warms, in K; absent without a volume or a mass.
    pub rise_c: Option<f64>,
    /// How warm it gets.
    pub peak_c: Option<f64>,
    /// What the peak may be.
    pub limit_c: Option<f64>,
    /// Litres that are needed: the larger of both ways.
    pub needed_l: Option<f64>,
    /// By the rule of one US gallon per pound.
    pub by_rule_l: Option<f64>,
    /// By the heat balance; absent when the bath starts at its limit.
    pub by_balance_l: Option<f64>,
    /// Of an oil.
    pub flash: Option<FlashAnswer>,
    /// `enough`, `too_small`, `too_hot`, `fire_risk` or `do_not_use`; absent when it cannot be told.
    pub verdict: Option<&'static str>,
    /// Where the balance stands.
    #[serde(flatten)]
    pub cited: CitedAnswer,
    /// In words.
    pub text: String,
}

/// Where an oil catches fire.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct FlashAnswer {
    /// The flash point.
    pub celsius: f64,
    /// Not given, so the lowest of its kind is taken.
    pub assumed: bool,
    /// From the peak up to it; below nought when the peak is beyond it.
    pub margin_k: f64,
}

/// A tank for a part that goes in upright; inner sizes in mm.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TankAnswer {
    /// Length.
    pub long_mm: f64,
    /// Width.
    pub wide_mm: f64,
    /// Depth of the liquid.
    pub liquid_mm: f64,
    /// Height of the wall.
    pub wall_mm: f64,
    /// Liquid in it, in litres.
    pub litres: f64,
    /// In words.
    pub text: String,
}

/// What the dial must show.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OvenAnswer {
    /// What to set; absent when the oven was not checked near that temperature.
    pub dial_c: Option<f64>,
    /// What is to be added to the dial there, in K.
    pub offset_k: Option<f64>,
    /// 95 % half-width of that.
    pub half_width_k: Option<f64>,
    /// In words.
    pub text: String,
}

/// Something whose temperature is known.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct KnownPointAnswer {
    /// Stable name.
    pub point: &'static str,
    /// Its temperature.
    pub celsius: f64,
    /// How near a shop comes to it, in K.
    pub half_width_k: f64,
    /// Where it stands.
    #[serde(flatten)]
    pub cited: CitedAnswer,
    /// How it is done.
    pub text: String,
}

/// A list to tick off.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Checklist {
    /// `before_heating`, `before_quench`, `after` or `oven`.
    pub list: &'static str,
    /// Its heading.
    pub title: String,
    /// What to look at.
    pub items: Vec<String>,
}

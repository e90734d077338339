//! How long to hold a part once it is hot: the trade does not agree.

use biteband_hardness::Seen;

use crate::section::Section;
use crate::{Cited, Confidence, Interval};

/// A rule of the trade.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum RuleOfHold {
    /// One minute for each millimetre after it is heated through.
    MinutePerMillimetre,
    /// Half an hour for each inch after it is heated through.
    HalfHourPerInch,
    /// One hour for each inch of thickness, the heating included.
    HourPerInchInAll,
    /// Ten to thirty minutes at heat whatever the size, for low-alloy tool steel.
    ToolSteel,
}

impl RuleOfHold {
    /// Stable name for JSON and tests.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::MinutePerMillimetre => "minute_per_mm",
            Self::HalfHourPerInch => "half_hour_per_inch",
            Self::HourPerInchInAll => "hour_per_inch_in_all",
            Self::ToolSteel => "tool_steel",
        }
    }
}

/// What one rule says, in minutes after the part is heated through.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoldRule {
    /// The rule.
    pub rule: RuleOfHold,
    /// Shortest and longest hold in minutes; both are nought where heating already took the whole time.
    pub minutes: Interval,
    /// Where the rule stands.
    pub cited: Cited,
}

/// All rules side by side; none of them is proved.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hold {
    /// Each rule.
    pub rules: [HoldRule; 4],
    /// From the shortest to the longest of them, in minutes.
    pub span: Interval,
}

/// What the rules of the trade say of the hold after a part is heated through. The grade's own data go
/// before every one of them.
///
/// # Units
/// `heat_through` and the holds in minutes; the size is the section's ruling one.
///
/// # Source
/// 10 to 30 minutes: a steel maker's data sheet, seen. One hour per inch in all, with about half of it as the
/// hold: recalled. One minute per millimetre: common practice, no source.
///
/// # Example
/// ```
/// use biteband_steel::furnace::hold;
/// use biteband_steel::section::{Section, Shape};
/// let round = Section::new(Shape::Round { diameter: 25.4 }, None).unwrap();
/// let found = hold(&round, 17.0);
/// assert_eq!((found.span.low, found.span.high), (10.0, 43.0));
/// ```
#[must_use]
pub fn hold(section: &Section, heat_through: f64) -> Hold {
    let mm = section.ruling().mm;
    let inches = mm / 25.4;
    let heating = if heat_through.is_finite() { heat_through.max(0.0) } else { 0.0 };
    let one = |minutes: f64| Interval { low: minutes, high: minutes };
    let cited = |sources, seen, confidence| Cited { sources, seen, confidence };
    let practice = cited(&["biteband-trade"], Seen::Recalled, Confidence::Low);
    let hour = cited(&["biteband-trade"], Seen::Recalled, Confidence::Medium);
    let sheet = cited(&["tool-steel-sheet"], Seen::Seen, Confidence::Medium);
    let rule = |rule, minutes, cited| HoldRule { rule, minutes, cited };
    let rules = [
        rule(RuleOfHold::MinutePerMillimetre, one(mm), practice),
        rule(RuleOfHold::HalfHourPerInch, one(30.0 * inches), hour),
        rule(RuleOfHold::HourPerInchInAll, one((60.0 * inches - heating).max(0.0)), hour),
        rule(RuleOfHold::ToolSteel, Interval { low: 10.0, high: 30.0 }, sheet),
    ];
    let low = rules.iter().map(|rule| rule.minutes.low).fold(f64::INFINITY, f64::min);
    let high = rules.iter().map(|rule| rule.minutes.high).fold(0.0, f64::max);
    Hold { rules, span: Interval { low, high } }
}

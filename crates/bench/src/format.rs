//! Numbers as they are shown: rounded by the rule of the scale, always with their unit.

use biteband_hardness::{Axis, Rounding};
use biteband_quantity::{Litres, Megapascals, Shown, confined};
use serde::{Deserialize, Serialize};

/// A note of the data as a sentence of its own: a capital first and a full stop last; empty stays empty.
///
/// ```
/// use biteband_bench::format::sentence;
/// assert_eq!(sentence("protect from decarburization"), "Protect from decarburization.");
/// assert_eq!(sentence(""), "");
/// ```
#[must_use]
pub fn sentence(note: &str) -> String {
    let mut signs = note.chars();
    let Some(first) = signs.next() else { return String::new() };
    let end = if note.ends_with(['.', '!', '?', ')']) { "" } else { "." };
    first.to_uppercase().chain(signs).chain(end.chars()).collect()
}

/// Units of everything that is not a hardness; a display choice, the core sees one unit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Units {
    /// Strength in MPa.
    #[default]
    Metric,
    /// Strength in ksi.
    Inch,
}

impl Units {
    /// The unit behind a number on this axis.
    #[must_use]
    pub const fn of(self, axis: Axis) -> &'static str {
        match (self, axis) {
            (Self::Inch, Axis::Tensile) => "ksi",
            _ => axis.unit(),
        }
    }

    /// A converted number, rounded by the rule of its scale; ksi go to whole numbers.
    #[must_use]
    pub fn number(self, axis: Axis, value: f64) -> String {
        match (self, axis) {
            (Self::Inch, Axis::Tensile) => fixed(value / Megapascals::PER_KSI, 0),
            _ => converted(axis, value),
        }
    }

    /// Half of a width with its unit: two figures at most, because a width is known no better.
    #[must_use]
    pub fn width(self, axis: Axis, half: f64) -> String {
        let half = if self.of(axis) == "ksi" { half / Megapascals::PER_KSI } else { half };
        let decimals = u8::from(half < 10.0);
        format!("{} {}", fixed(half, decimals), self.of(axis))
    }

    /// A converted number with its unit.
    #[must_use]
    pub fn with_unit(self, axis: Axis, value: f64) -> String {
        format!("{} {}", self.number(axis, value), self.of(axis))
    }

    /// A temperature of the data with its unit; in °F to the nearest five, as finely as such figures are
    /// known.
    ///
    /// ```
    /// use biteband_bench::format::Units;
    /// assert_eq!(Units::Metric.temperatures(843.0, 871.0), "843 – 871 °C");
    /// assert_eq!(Units::Inch.temperatures(843.0, 871.0), "1550 – 1600 °F");
    /// ```
    #[must_use]
    pub fn temperatures(self, low: f64, high: f64) -> String {
        let (text, unit): (fn(f64) -> String, _) = match self {
            Self::Metric => (exact, "°C"),
            Self::Inch => (|celsius| fixed(((celsius * 1.8 + 32.0) / 5.0).round() * 5.0, 0), "°F"),
        };
        format!("{} {unit}", dash(&text(low), &text(high)))
    }

    /// A temperature in whole degrees.
    ///
    /// ```
    /// use biteband_bench::format::Units;
    /// assert_eq!(Units::Metric.degrees(204.4), "204 °C");
    /// assert_eq!(Units::Inch.degrees(204.4), "400 °F");
    /// ```
    #[must_use]
    pub fn degrees(self, celsius: f64) -> String {
        match self {
            Self::Metric => format!("{} °C", fixed(celsius, 0)),
            Self::Inch => format!("{} °F", fixed(celsius * 1.8 + 32.0, 0)),
        }
    }

    /// A volume in litres, or in US gallons.
    #[must_use]
    pub fn litres(self, litres: f64) -> String {
        match self {
            Self::Metric => format!("{} L", plain(litres)),
            Self::Inch => format!("{} US gal", plain(litres / Litres::US_GALLON)),
        }
    }

    /// A volume that is needed, rounded up: a bath that is a cup too small is too small.
    ///
    /// ```
    /// use biteband_bench::format::Units;
    /// assert_eq!(Units::Metric.litres_up(10.27), "11 L");
    /// assert_eq!(Units::Metric.litres_up(7.62), "7.7 L");
    /// assert_eq!(Units::Inch.litres_up(10.27), "2.8 US gal");
    /// ```
    #[must_use]
    pub fn litres_up(self, litres: f64) -> String {
        let up = |value: f64, step: f64| (value * step).ceil() / step;
        match self {
            Self::Metric => self.litres(up(litres, if litres < 10.0 { 10.0 } else { 1.0 })),
            Self::Inch => {
                format!("{} US gal", plain(up(litres / Litres::US_GALLON, 10.0)))
            }
        }
    }

    /// "353 – 390 HBW", "353 HBW min".
    #[must_use]
    pub fn range(self, axis: Axis, low: Option<f64>, high: Option<f64>) -> String {
        let unit = self.of(axis);
        let text = |v: f64| self.number(axis, v);
        match (low, high) {
            (Some(low), Some(high)) => format!("{} {unit}", dash(&text(low), &text(high))),
            (Some(low), None) => format!("{} {unit} min", text(low)),
            (None, Some(high)) => format!("{} {unit} max", text(high)),
            (None, None) => String::new(),
        }
    }
}

/// A number as it was given, without needless decimals.
#[must_use]
pub fn exact(value: f64) -> String {
    // Three hundred digits tell nobody anything.
    Shown(value).to_string()
}

/// A number with a fixed count of decimals, halves to the even neighbour.
///
/// Put together from whole numbers, as [`Shown`] is and for the same reason.
#[must_use]
pub fn fixed(value: f64, decimals: u8) -> String {
    let mut unit = 1_i64;
    for _ in 0..decimals.min(6) {
        unit = unit.saturating_mul(10);
    }
    let scaled = (value * to_float(unit)).round_ties_even();
    let sign = if scaled < 0.0 { "-" } else { "" };
    let whole = to_whole(scaled.abs());
    let (before, after) = (whole / unit, whole % unit);
    if decimals == 0 {
        format!("{sign}{before}")
    } else {
        format!("{sign}{before}.{after:0width$}", width = usize::from(decimals.min(6)))
    }
}

#[expect(clippy::cast_precision_loss, reason = "powers of ten to a million are exact")]
const fn to_float(unit: i64) -> f64 {
    unit as f64
}

#[expect(clippy::cast_possible_truncation, reason = "larger numbers end at the largest whole one")]
const fn to_whole(value: f64) -> i64 {
    value as i64
}

/// A table end: at most one decimal.
#[must_use]
pub fn plain(value: f64) -> String {
    tenth(value).to_string()
}

/// A number to the tenth, ready to be written: what drawings place their lines with.
pub(crate) fn tenth(value: f64) -> Shown {
    Shown((value * 10.0).round() / 10.0)
}

/// As given, with its unit.
#[must_use]
pub fn exact_with_unit(axis: Axis, value: f64) -> String {
    match axis {
        Axis::Tensile => format!("{} MPa", fixed(value, 0)),
        Axis::Hardness(scale) => format!("{} {scale}", Shown(value)),
    }
}

/// A converted number, rounded by the rule of its scale.
#[must_use]
pub fn converted(axis: Axis, value: f64) -> String {
    let (rounded, decimals) = Rounding::converted(axis).apply(value);
    fixed(rounded, decimals)
}

/// A converted number with its unit.
#[must_use]
pub fn converted_with_unit(axis: Axis, value: f64) -> String {
    format!("{} {}", converted(axis, value), axis.unit())
}

/// A range with an en dash.
#[must_use]
pub fn dash(low: &str, high: &str) -> String {
    if low == high { low.to_owned() } else { format!("{low} – {high}") }
}

/// A hardness limit in whole HRC, rounded outward, so that the shown band is never narrower than the
/// computed one.
#[must_use]
pub fn outward_low(hrc: f64) -> String {
    fixed(hrc.floor(), 0)
}

/// See [`outward_low`].
#[must_use]
pub fn outward_high(hrc: f64) -> String {
    fixed(hrc.ceil(), 0)
}

/// Shares in whole per cent that add to 100: the largest remainders are rounded up.
#[must_use]
pub fn percents<const N: usize>(shares: [f64; N]) -> [u32; N] {
    let floors = shares.map(|s| confined(s * 100.0, 0.0, 100.0).floor());
    let mut missing = 100.0 - floors.iter().sum::<f64>();
    let mut shown = floors;
    while missing > 0.5 {
        let short = |(share, shown): (&f64, &f64)| share * 100.0 - shown;
        let shortfalls = shares.iter().zip(shown.iter()).map(short);
        // The first of equal shortfalls is rounded up, so that the answer does not depend on chance.
        let (mut largest, mut place) = (f64::NEG_INFINITY, 0);
        for (i, shortfall) in shortfalls.enumerate() {
            if shortfall > largest {
                (largest, place) = (shortfall, i);
            }
        }
        if let Some(share) = shown.get_mut(place) {
            *share += 1.0;
        }
        missing -= 1.0;
    }
    shown.map(|share| u32::try_from(to_whole(share)).unwrap_or(0))
}

/// Long input cut for an error message; nothing is cut where it is stored.
#[must_use]
pub fn shortened(text: &str) -> String {
    let text = text.trim();
    if text.chars().count() <= 60 {
        return text.to_owned();
    }
    let mut cut: String = text.chars().take(57).collect();
    cut.push_str("...");
    cut
}

/// A text broken at spaces into lines of some columns, unless one word is longer; in front of the first and of the other
/// ones stand so many spaces.
///
/// ```
/// use biteband_bench::format::wrapped;
/// assert_eq!(wrapped(12, [0, 2], "one two  three four"), "one two\n  three four");
/// ```
#[must_use]
pub fn wrapped(columns: usize, margins: [usize; 2], text: &str) -> String {
    let [first, other] = margins;
    let (mut lines, mut used) = (String::new(), 0);
    for word in text.split_whitespace() {
        let length = word.chars().count();
        if used > 0 && used + 1 + length <= columns {
            lines.push(' ');
            used += 1;
        } else {
            let margin = if used == 0 { first } else { other };
            if used > 0 {
                lines.push('\n');
            }
            lines.extend(std::iter::repeat_n(' ', margin));
            used = margin;
        }
        lines.push_str(word);
        used += length;
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;
    use biteband_hardness::Scale;

    #[test]
    fn fixed_decimals_agree_with_the_standard_library() {
        for value in [0.0, 0.04, 0.96, 9.96, 12.5, 99.949, 1203.0, -3.26, 61.0] {
            for decimals in 0..3_u8 {
                let theirs = format!("{value:.*}", usize::from(decimals));
                assert_eq!(fixed(value, decimals), theirs, "{value} {decimals}");
            }
        }
    }

    #[test]
    fn percents_always_add_to_a_hundred() {
        assert_eq!(percents([1.0 / 3.0, 1.0 / 3.0, 1.0 / 3.0]), [34, 33, 33]);
        assert_eq!(percents([0.0, 1.0, 0.0]), [0, 100, 0]);
        assert_eq!(percents([0.004, 0.992, 0.004]).iter().sum::<u32>(), 100);
    }

    #[test]
    fn a_band_is_never_shown_narrower_than_it_is() {
        assert_eq!((outward_low(53.7), outward_high(61.3)), ("53".into(), "62".into()));
        assert_eq!((outward_low(53.0), outward_high(62.0)), ("53".into(), "62".into()));
    }

    #[test]
    fn strength_goes_to_the_five_of_the_tables() {
        assert_eq!(converted_with_unit(Axis::Tensile, 1203.2), "1205 MPa");
        assert_eq!(converted_with_unit(Axis::Hardness(Scale::Hrc), 51.6), "52 HRC");
        assert_eq!(Units::Inch.with_unit(Axis::Tensile, 1203.2), "175 ksi");
    }

    #[test]
    fn long_input_is_cut_in_messages_only() {
        assert_eq!(shortened(&"é".repeat(100)).chars().count(), 60);
        assert_eq!(shortened(" 52 HRC "), "52 HRC");
    }
}

//! The band of a file test on the scales of drawings and certificates.

use biteband_evidence::Band;
use biteband_hardness::{Axis, Choice, Reading, Scale, convert, spans};
use serde::Serialize;

use crate::format::{self, Units};
use crate::words::{Language, Phrase};

const HRC: Axis = Axis::Hardness(Scale::Hrc);
/// One-sided 95 % point of a normal law, for a band with an open end.
const ONE_SIDED_95: f64 = 1.644_853_626_951_472;
/// Two-sided 95 % point of a normal law.
const TWO_SIDED_95: f64 = 1.959_963_984_540_054;

/// The band on another scale.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BandInScale {
    /// Symbol of the scale, `Rm` for tensile strength.
    pub scale: &'static str,
    /// Low end; absent when open or below the table.
    pub low: Option<f64>,
    /// High end; absent when open or above the table.
    pub high: Option<f64>,
    /// Stable name of the table.
    pub table: &'static str,
    /// Rounded by the rule of the scale, with what is missing said.
    pub shown: String,
}

/// The band on the scales of drawings and certificates, widened by the conversion's own width.
pub(super) fn scales(language: Language, units: Units, band: &Band) -> Vec<BandInScale> {
    let axes = [Axis::Hardness(Scale::Hv), Axis::Hardness(Scale::Hbw), Axis::Tensile];
    axes.into_iter().filter_map(|axis| scale(language, units, band, axis)).collect()
}

/// One limit on another axis, or on which side of the table it lies.
enum Limit {
    Open,
    At { value: f64, sd: f64 },
    Below,
    Above { end: f64 },
}

fn limit(axis: Axis, hrc: Option<f64>) -> Limit {
    let Some(hrc) = hrc else { return Limit::Open };
    let found = Reading::new(HRC, hrc).and_then(|reading| convert(reading, axis, Choice::STEEL));
    if let Ok(found) = found {
        return Limit::At { value: found.at.value, sd: found.width.sd };
    }
    match spans(HRC, axis, Choice::STEEL).next() {
        Some((_, span)) if hrc > span.low.0 => Limit::Above { end: span.high.1 },
        _ => Limit::Below,
    }
}

fn scale(language: Language, units: Units, band: &Band, axis: Axis) -> Option<BandInScale> {
    let (low, high) = (limit(axis, band.low()), limit(axis, band.high()));
    let middle = match limit(axis, band.median()) {
        Limit::At { value, sd } => Some((value, TWO_SIDED_95 * sd)),
        _ => None,
    };
    let widen = |value: f64, sd: f64, side: f64| match middle {
        // Independent errors add in quadrature around the middle of a closed band.
        // A square root is the same on every machine; `hypot` is not.
        Some((centre, half)) => {
            let own = value - centre;
            centre + side * (own * own + half * half).sqrt()
        }
        None => value + side * ONE_SIDED_95 * sd,
    };
    let low_value = match low {
        Limit::At { value, sd } => Some(widen(value, sd, -1.0)),
        _ => None,
    };
    let high_value = match high {
        Limit::At { value, sd } => Some(widen(value, sd, 1.0)),
        _ => None,
    };
    let text = |v: f64| units.number(axis, v);
    let unit = units.of(axis);
    let beyond = |end: f64| language.say(Phrase::AboveTable { end: &units.with_unit(axis, end) });
    let shown = match (low_value, high_value) {
        (Some(low), Some(high)) => format!("{} {unit}", format::dash(&text(low), &text(high))),
        (Some(low), None) => match high {
            Limit::Above { end } => format!("{} {unit} – {}", text(low), beyond(end)),
            _ => {
                language.say(Phrase::BandOr { low: &format!("{} {unit}", text(low)) }).into_owned()
            }
        },
        (None, Some(high_value)) => match low {
            Limit::Below => {
                format!("{} – {} {unit}", language.say(Phrase::BelowTable), text(high_value))
            }
            _ => language
                .say(Phrase::BandBelow { high: &format!("{} {unit}", text(high_value)) })
                .into_owned(),
        },
        (None, None) => match low {
            Limit::Above { end } => beyond(end).into_owned(),
            _ => return None,
        },
    };
    let table =
        spans(HRC, axis, Choice::STEEL).next().and_then(|(id, _)| id.get()).map_or("", |t| t.key());
    Some(BandInScale { scale: axis.symbol(), low: low_value, high: high_value, table, shown })
}

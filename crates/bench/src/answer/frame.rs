//! The axis on which a claim and what was measured meet.
//!
//! A claim is held against readings in its own scale where that can be, because a table between them is the largest
//! doubt there is. The belief's grid then holds that scale's own points on a straight line, one unit for about one HRC;
//! where files speak, it holds HRC.

use biteband_hardness::{
    Axis, Choice, Error, Reading, Scale, TableId, convert as convert_one, convert_limits,
};
use biteband_quantity::confined;

pub(super) const HRC: Axis = Axis::Hardness(Scale::Hrc);
/// Where the middle of a claim lies on a straight axis.
const MIDDLE: f64 = 45.0;
/// How far from it a reading is followed; beyond it, it is far away.
const FAR: f64 = 24.0;

/// Points of a scale on a straight axis.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Straight {
    middle: f64,
    /// Points for one unit of the axis.
    points: f64,
}

/// The axis of a belief.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Frame {
    claim: Axis,
    work: Axis,
    straight: Option<Straight>,
    /// Between claim and axis, if they differ: the table and its standard uncertainty on the axis.
    conversion: Option<(TableId, f64)>,
    is_claim: bool,
    is_open: bool,
}

/// Limits of a claim.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Said {
    pub(super) axis: Axis,
    pub(super) low: Option<f64>,
    pub(super) high: Option<f64>,
    /// To which the paper rounds.
    pub(super) step: f64,
}

impl Said {
    /// The middle, or the only limit.
    pub(super) fn middle(&self) -> f64 {
        match (self.low, self.high) {
            (Some(low), Some(high)) => f64::midpoint(low, high),
            (one, other) => one.or(other).unwrap_or_default(),
        }
    }
}

/// The limits of a claim on the working scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Placed {
    pub(super) frame: Frame,
    /// In points of the working scale.
    pub(super) low: Option<f64>,
    pub(super) high: Option<f64>,
    /// Units of the axis for one point of the claim.
    pub(super) slope: f64,
    /// The claim ends below all that the axis can tell: it may be contradicted, not borne out.
    pub(super) beneath: bool,
}

impl Frame {
    /// HRC as it is.
    pub(super) const HRC: Self = Self {
        claim: HRC,
        work: HRC,
        straight: None,
        conversion: None,
        is_claim: false,
        is_open: false,
    };

    /// Whether a claim is held against something on it.
    pub(super) const fn is_claim(&self) -> bool {
        self.is_claim
    }

    /// The same axis with open ends: of a reading that no table leads to it, it is enough to know on which side it lies.
    pub(super) const fn opened(mut self) -> Self {
        self.is_open = true;
        self
    }

    /// Whether its ends are open.
    pub(super) const fn is_open(&self) -> bool {
        self.is_open
    }

    /// Whether a number lies farther from the claim than it is followed: above or below.
    pub(super) fn is_far(&self, value: f64) -> Option<bool> {
        let Straight { middle, points } = self.straight?;
        ((value - middle).abs() > FAR * points).then_some(value > middle)
    }

    /// The scale of the claim.
    pub(super) const fn claim(&self) -> Axis {
        self.claim
    }

    /// The scale of the axis.
    pub(super) const fn work(&self) -> Axis {
        self.work
    }

    /// The table between claim and axis, with its standard uncertainty on the axis.
    pub(super) const fn conversion(&self) -> Option<(TableId, f64)> {
        self.conversion
    }

    /// Units of the axis for one point of the working scale.
    pub(super) fn unit(&self) -> f64 {
        self.straight.map_or(1.0, |straight| 1.0 / straight.points)
    }

    /// A number of the working scale on the axis.
    pub(super) fn place(&self, value: f64) -> f64 {
        self.straight.map_or(value, |Straight { middle, points }| {
            MIDDLE + confined((value - middle) / points, -FAR, FAR)
        })
    }

    /// A place on the axis as a number of the working scale.
    pub(super) fn value(&self, place: f64) -> f64 {
        self.straight
            .map_or(place, |Straight { middle, points }| middle + (place - MIDDLE) * points)
    }

    /// The axis of a claim on a working scale.
    ///
    /// `files` says that files speak too: a limit below the tables is then an end of the axis.
    pub(super) fn of(said: &Said, work: Axis, files: bool) -> Result<Placed, Error> {
        let mut conversion = None;
        let (mut low, mut high, mut beneath) = (said.low, said.high, false);
        if said.axis != work {
            let below = |limit: Option<f64>| limit.is_some_and(|at| is_below(said.axis, at, work));
            if files && below(said.low) {
                low = None;
            }
            let sunk = files && below(said.high);
            let (from, upto) = (low, if sunk { None } else { high });
            let limits = if from.is_none() && upto.is_none() {
                None
            } else {
                Some(convert_limits(said.axis, from, upto, work, Choice::STEEL)?)
            };
            let ends = limits.iter().flat_map(|limits| [limits.low, limits.high]).flatten();
            let sd = ends.clone().map(|end| end.width.sd).fold(0.0, f64::max);
            conversion = ends.clone().next().map(|end| (end.table, sd));
            low = limits.and_then(|limits| limits.low).map(|end| end.at.value);
            high = limits.and_then(|limits| limits.high).map(|end| end.at.value);
            if sunk {
                // HRC ends at 20 for the tables: all that is known of the limit is that it lies lower.
                (high, beneath) = (Some(work.conversion_ends().0), true);
            }
        }
        let here = Said { axis: work, low, high, step: said.step };
        let straight = (work != HRC)
            .then(|| Straight { middle: here.middle(), points: points(work, here.middle()) });
        let mut frame = Self {
            claim: said.axis,
            work,
            straight,
            conversion: None,
            is_claim: true,
            is_open: false,
        };
        frame.conversion = conversion.map(|(table, sd)| (table, sd * frame.unit()));
        // Beyond the tables a point of the claim counts as in the width of a conversion.
        let beyond = || 1.0 / points(said.axis, said.middle());
        let slope = slope(said.axis, work, said.middle()).map(|slope| slope * frame.unit());
        let slope = slope.unwrap_or_else(beyond);
        Ok(Placed { frame, low, high, slope, beneath })
    }
}

fn is_below(from: Axis, value: f64, to: Axis) -> bool {
    let found = Reading::new(from, value).and_then(|at| convert_one(at, to, Choice::STEEL));
    matches!(found, Err(Error::OutsideTables { nearest, .. }) if !nearest.above)
}

/// Points of one scale for one point of another, about a value.
fn slope(from: Axis, to: Axis, value: f64) -> Option<f64> {
    if from == to {
        return Some(1.0);
    }
    let at = |value: f64| {
        let found = Reading::new(from, value).and_then(|at| convert_one(at, to, Choice::STEEL));
        found.ok().map(|found| found.at.value)
    };
    let step = value / 100.0;
    let ends = (at(value - step), at(value), at(value + step));
    match ends {
        (Some(low), _, Some(high)) => Some((high - low).abs() / (2.0 * step)),
        (Some(low), Some(here), None) => Some((here - low).abs() / step),
        (None, Some(here), Some(high)) => Some((high - here).abs() / step),
        _ => None,
    }
}

/// Points of a scale that are about one HRC: by the tables, and beyond them by what counts as one in the width of a
/// conversion.
fn points(axis: Axis, value: f64) -> f64 {
    let share = match axis {
        Axis::Hardness(Scale::Hbw | Scale::Hbs | Scale::Hbw500) => 0.02,
        Axis::Hardness(Scale::Hv | Scale::Hk | Scale::HvUci) => 0.03,
        Axis::Tensile => 0.039,
        Axis::Hardness(Scale::Hrb) => return 1.5,
        Axis::Hardness(_) => return 1.0,
    };
    let by_table = slope(axis, HRC, value).filter(|slope| *slope > 0.0);
    by_table.map_or(share * value, |slope| 1.0 / slope)
}

//! Readings that disagree with the files, with each other or among themselves.

use alloc::vec::Vec;

use biteband_quantity::sort_by_number;

use libm::{exp, fabs};

use crate::assess::FileTest;
use crate::band::Band;
use crate::contradiction::SURPRISE_BELOW;
use crate::error::Error;
use crate::interval::Level;
use crate::readings::{Group, Readings, mean, number};

/// A source of evidence that can be set aside.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Witness {
    /// All strokes of files and their proofs.
    Files,
    /// All readings of the group at this place, counted from 0.
    Group(usize),
    /// One reading.
    Reading {
        /// The place of its group, counted from 0.
        group: usize,
        /// Its place in the group, counted from 0.
        reading: usize,
    },
}

/// What may set a reading against the rest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Suspect {
    /// A soft skin that the files cut and the instrument went through.
    SoftSkin,
    /// A hard skin that the files skate on and the instrument went through, or a steel rich in carbides.
    HardSkin,
    /// The files are worn or clogged.
    WornFiles,
    /// The reading was mistyped or taken from another scale.
    Mistyped,
    /// The instrument is out of adjustment.
    InstrumentOff,
    /// The piece is too light, thin, round or rough for the instrument.
    PieceUnfit,
    /// The conversion does not fit the steel.
    ConversionUnfit,
    /// They lay on different spots.
    DifferentSpots,
}

/// The causes when the readings are harder than the files say, likeliest first; common practice, no source.
const FILES_SOFTER: &[Suspect] = &[
    Suspect::SoftSkin,
    Suspect::Mistyped,
    Suspect::InstrumentOff,
    Suspect::DifferentSpots,
    Suspect::ConversionUnfit,
];

/// The causes when the readings are softer than the files say, likeliest first; common practice, no source.
const FILES_HARDER: &[Suspect] = &[
    Suspect::WornFiles,
    Suspect::HardSkin,
    Suspect::PieceUnfit,
    Suspect::Mistyped,
    Suspect::InstrumentOff,
    Suspect::DifferentSpots,
    Suspect::ConversionUnfit,
];

/// The causes when two instruments disagree, likeliest first; common practice, no source.
const BETWEEN_GROUPS: &[Suspect] = &[
    Suspect::InstrumentOff,
    Suspect::PieceUnfit,
    Suspect::Mistyped,
    Suspect::DifferentSpots,
    Suspect::ConversionUnfit,
];

/// The causes when one instrument disagrees with itself, likeliest first; common practice, no source.
const WITHIN_GROUP: &[Suspect] = &[Suspect::Mistyped, Suspect::DifferentSpots, Suspect::PieceUnfit];

/// Two witnesses that no hardness explains together.
///
/// # Source
/// The ratio is the generalised likelihood ratio of "one hardness" against "a hardness for each", with all biases integrated. A conversion or a tester
/// that two groups share is left at zero. A reading is held against the mean of the others of its group, with their own scatter and the spot's.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Clash {
    harder: Witness,
    softer: Witness,
    surprise: f64,
    suspects: &'static [Suspect],
    without_harder: Band,
    without_softer: Band,
}

impl Clash {
    /// The witness that says harder.
    #[must_use]
    pub const fn harder(&self) -> Witness {
        self.harder
    }

    /// The witness that says softer.
    #[must_use]
    pub const fn softer(&self) -> Witness {
        self.softer
    }

    /// The likelihood ratio, from 0 to [`SURPRISE_BELOW`]; the smaller, the worse.
    #[must_use]
    pub const fn surprise(&self) -> f64 {
        self.surprise
    }

    /// What may be behind it, likeliest first.
    #[must_use]
    pub const fn suspects(&self) -> &'static [Suspect] {
        self.suspects
    }

    /// The band if the harder witness is set aside.
    pub const fn without_harder(&self) -> Band {
        self.without_harder
    }

    /// The band if the softer witness is set aside.
    pub const fn without_softer(&self) -> Band {
        self.without_softer
    }
}

/// Two witnesses, the harder first, their likelihood ratio and what may be behind it.
type Pair = (Witness, Witness, f64, &'static [Suspect]);

/// The clashes of a test, the worst first.
pub(crate) fn clashes(test: &FileTest, level: Level) -> Result<Vec<Clash>, Error> {
    let readings = test.readings();
    if readings.is_empty() {
        return Ok(Vec::new());
    }
    let mut pairs = Vec::new();
    against_files(test, &mut pairs);
    between_groups(test, &mut pairs);
    for (place, group) in readings.groups().iter().enumerate() {
        pairs.extend(within_group(readings, place, group));
    }
    pairs.retain(|(_, _, surprise, _)| *surprise < SURPRISE_BELOW);
    sort_by_number(&mut pairs, |(_, _, surprise, _)| *surprise);
    let band = |witness| test.set_aside(witness).belief().map(|belief| belief.band(level));
    let mut clashes = Vec::with_capacity(pairs.len());
    for (harder, softer, surprise, suspects) in pairs {
        let (without_harder, without_softer) = (band(harder)?, band(softer)?);
        clashes.push(Clash { harder, softer, surprise, suspects, without_harder, without_softer });
    }
    Ok(clashes)
}

fn against_files(test: &FileTest, pairs: &mut Vec<Pair>) {
    if test.strokes().is_empty() {
        return;
    }
    let (engine, product) = test.product();
    let files = engine.likelihood(&product);
    for (place, group) in test.readings().groups().iter().enumerate() {
        let own = test.readings().alone(group, test.axis());
        let (surprise, group) = (ratio(&files, &own), Witness::Group(place));
        pairs.push(if centre(&files) > centre(&own) {
            (Witness::Files, group, surprise, FILES_HARDER)
        } else {
            (group, Witness::Files, surprise, FILES_SOFTER)
        });
    }
}

fn between_groups(test: &FileTest, pairs: &mut Vec<Pair>) {
    let (readings, axis) = (test.readings(), test.axis());
    for (place, one) in readings.groups().iter().enumerate() {
        for (earlier, other) in readings.groups().iter().enumerate().take(place) {
            let key = |group: &Group| group.conversion().map(|(key, _)| key);
            let likelihood = |group: &Group| {
                if one.shares_tester(other) {
                    readings.on_spot(group, axis)
                } else if key(one) == key(other) {
                    readings.unconverted(group, axis)
                } else {
                    readings.alone(group, axis)
                }
            };
            let surprise = ratio(&likelihood(one), &likelihood(other));
            let (one_is_harder, one, other) = (
                mean(one.values()) > mean(other.values()),
                Witness::Group(place),
                Witness::Group(earlier),
            );
            let (harder, softer) = if one_is_harder { (one, other) } else { (other, one) };
            pairs.push((harder, softer, surprise, BETWEEN_GROUPS));
        }
    }
}

/// The reading of a group that lies farthest from the others.
fn within_group(readings: &Readings, place: usize, group: &Group) -> Option<Pair> {
    let (count, middle) = (group.values().len(), mean(group.values()));
    if count < 2 {
        return None;
    }
    let mut farthest = (0, 0.0);
    for (reading, value) in group.values().iter().enumerate() {
        if fabs(value - middle) > fabs(farthest.1) {
            farthest = (reading, value - middle);
        }
    }
    let (reading, away) = farthest;
    let one = Witness::Reading { group: place, reading };
    // Of two readings either may be the wrong one; of more it is the one apart.
    let rest = if count == 2 {
        Witness::Reading { group: place, reading: 1 - reading }
    } else {
        Witness::Group(place)
    };
    // With r the distance from the mean of all n, that from the others is r n/(n-1), and its variance v n/(n-1).
    let variance = group.random() * group.random() + readings.spot() * readings.spot();
    let others = number(count) / (number(count) - 1.0);
    let surprise = exp(-0.5 * away * away * others / variance);
    let (harder, softer) = if away > 0.0 { (one, rest) } else { (rest, one) };
    Some((harder, softer, surprise, WITHIN_GROUP))
}

/// The greatest likelihood of one hardness for both, against a hardness for each.
fn ratio(one: &[f64], other: &[f64]) -> f64 {
    let greatest = |values: &mut dyn Iterator<Item = f64>| values.fold(0.0, f64::max);
    let both = greatest(&mut one.iter().zip(other).map(|(one, other)| one * other));
    both / (greatest(&mut one.iter().copied()) * greatest(&mut other.iter().copied()))
}

/// The place about which a likelihood lies.
fn centre(likelihood: &[f64]) -> f64 {
    let moment: f64 = likelihood.iter().zip(0_u32..).map(|(value, at)| value * f64::from(at)).sum();
    moment / likelihood.iter().sum::<f64>()
}

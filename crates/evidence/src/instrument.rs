//! Instruments and how far their readings are usually off.

use libm::fabs;

/// What a reading was taken with.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Instrument {
    /// A Rockwell C bench tester that is checked on a block every week.
    RockwellVerified,
    /// A Rockwell C bench tester that is not.
    RockwellUnverified,
    /// A Rockwell B bench tester.
    RockwellBall,
    /// A Vickers bench tester at HV10 to HV30.
    Vickers,
    /// A Vickers bench tester near HV1.
    VickersLight,
    /// A Brinell bench tester, 10 mm ball and 3000 kgf.
    Brinell,
    /// A portable rebound tester of Leeb's kind.
    Leeb,
    /// A portable tester with a diamond on a vibrating rod, ultrasonic contact impedance.
    Ultrasonic,
    /// A Brinell indent read with a handheld scope.
    BrinellScope,
    /// Any tester, read against a piece of known hardness.
    Comparison,
    /// Something else.
    Other,
}

/// The unit of an uncertainty.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Unit {
    /// Rockwell C points, whatever the scale of the reading.
    Hrc,
    /// Points of the reading's own scale.
    Points,
    /// Percent of the reading.
    Percent,
}

/// The usual uncertainty of an instrument, in two parts.
///
/// Both are standard uncertainties. The random part is drawn anew for every reading, the shared part is the same for all readings of the instrument and
/// does not average down.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Usual {
    /// The random part of a single reading.
    pub random: f64,
    /// The shared part.
    pub shared: f64,
    /// The unit of both.
    pub unit: Unit,
}

impl Instrument {
    /// Every instrument.
    pub const ALL: [Self; 11] = [
        Self::RockwellVerified,
        Self::RockwellUnverified,
        Self::RockwellBall,
        Self::Vickers,
        Self::VickersLight,
        Self::Brinell,
        Self::Leeb,
        Self::Ultrasonic,
        Self::BrinellScope,
        Self::Comparison,
        Self::Other,
    ];

    /// The usual uncertainty when the person knows none better.
    ///
    /// # Source
    /// The totals are assumed from published precision: 0.5 HRC verified, 0.8 HRC not, 1 HRB, 2 % of HV10 to HV30, 3 % of HV1, 1.5 % of
    /// HBW 10/3000, 1.8 HRC after conversion for Leeb, 4 % for ultrasonic contact impedance, 2 HRC for anything else. ASTM E18-19 Table 4 has
    /// 0.15 to 0.34 HRC within a laboratory and 0.26 to 0.44 HRC between laboratories, which a shop does not reach.
    ///
    /// The split into random and shared is assumed throughout: no source states one.
    ///
    /// The handheld scope is derived: a diameter read to 0.05 mm (recalled) as a rectangular half-width is 0.029 mm, and
    /// `dHBW/HBW = d / (q (D - q)) dd` with `q^2 = D^2 - d^2` makes it 1.2 % at 5 mm, 1.7 % at 3.5 mm and 2.3 % at 2.5 mm on a ball of 10 mm; 2 % stands
    /// for them, assumed, and smaller balls double it. The shared part holds the force and how the reader sets the edge.
    ///
    /// A comparison has no shared part of its own: the bias of the tester cancels, and the known piece brings its uncertainty.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::{Instrument, Unit};
    /// let usual = Instrument::RockwellVerified.usual();
    /// assert_eq!(usual.unit, Unit::Points);
    /// assert!((usual.random.hypot(usual.shared) - 0.5).abs() < 0.01);
    /// ```
    pub const fn usual(self) -> Usual {
        let (random, shared, unit) = match self {
            Self::RockwellVerified => (0.3, 0.4, Unit::Points),
            Self::RockwellUnverified => (0.3, 0.74, Unit::Points),
            Self::RockwellBall => (0.6, 0.8, Unit::Points),
            Self::Vickers => (1.0, 1.73, Unit::Percent),
            Self::VickersLight => (2.0, 2.24, Unit::Percent),
            Self::Brinell => (0.7, 1.33, Unit::Percent),
            Self::Leeb => (0.8, 1.6, Unit::Hrc),
            Self::Ultrasonic => (2.5, 3.1, Unit::Percent),
            Self::BrinellScope => (2.0, 1.5, Unit::Percent),
            Self::Comparison => (0.3, 0.0, Unit::Hrc),
            Self::Other => (1.0, 1.73, Unit::Hrc),
        };
        Usual { random, shared, unit }
    }
}

impl Usual {
    /// The random and the shared part in HRC, for a reading on its own scale.
    ///
    /// # Units
    /// `value` in the reading's own scale; `slope` in HRC per point of that scale at the value, 1 for a reading in HRC. Its sign does not matter.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::Instrument;
    /// // Near 600 HV one HRC is 18 HV (ASTM E140 Table 1: 54 HRC is 577 HV, 55 HRC is 595 HV, 56 HRC is 613 HV).
    /// let (random, shared) = Instrument::Vickers.usual().in_hrc(595.0, 1.0 / 18.0);
    /// assert!((random - 0.33).abs() < 0.01 && (shared - 0.57).abs() < 0.01);
    /// ```
    #[must_use]
    pub fn in_hrc(&self, value: f64, slope: f64) -> (f64, f64) {
        let one = match self.unit {
            Unit::Hrc => 1.0,
            Unit::Points => fabs(slope),
            Unit::Percent => fabs(value * slope) / 100.0,
        };
        (self.random * one, self.shared * one)
    }
}

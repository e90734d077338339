//! Scales of hardness, and tensile strength beside them as an estimate.

use core::fmt;

/// A hardness scale, with its load or indenter where the standard makes it part of the name.
///
/// A new variant does not compile until it has a symbol and a range.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Scale {
    /// Rockwell C: diamond cone, 150 kgf.
    Hrc,
    /// Rockwell A: diamond cone, 60 kgf.
    Hra,
    /// Rockwell D: diamond cone, 100 kgf.
    Hrd,
    /// Superficial Rockwell 15N: diamond cone, 15 kgf.
    Hr15n,
    /// Superficial Rockwell 30N: diamond cone, 30 kgf.
    Hr30n,
    /// Superficial Rockwell 45N: diamond cone, 45 kgf.
    Hr45n,
    /// Rockwell B: 1/16 in ball, 100 kgf.
    Hrb,
    /// Rockwell E: 1/8 in ball, 100 kgf.
    Hre,
    /// Rockwell F: 1/16 in ball, 60 kgf.
    Hrf,
    /// Rockwell G: 1/16 in ball, 150 kgf.
    Hrg,
    /// Rockwell H: 1/8 in ball, 60 kgf.
    Hrh,
    /// Rockwell K: 1/8 in ball, 150 kgf.
    Hrk,
    /// Superficial Rockwell 15T: 1/16 in ball, 15 kgf.
    Hr15t,
    /// Superficial Rockwell 30T: 1/16 in ball, 30 kgf.
    Hr30t,
    /// Superficial Rockwell 45T: 1/16 in ball, 45 kgf.
    Hr45t,
    /// Superficial Rockwell 15W: 1/8 in ball, 15 kgf.
    Hr15w,
    /// Vickers.
    Hv,
    /// Brinell, carbide ball; 10 mm and 3000 kgf in the tables of steel.
    Hbw,
    /// Brinell with a 10 mm ball and 500 kgf, which gives other numbers on the same metal.
    Hbw500,
    /// Brinell, steel ball, as printed in older tables; withdrawn.
    Hbs,
    /// Knoop.
    Hk,
    /// Shore scleroscope: a dropped diamond hammer, not the rubber scale.
    Scleroscope,
    /// Leeb rebound, any device. No table here.
    Leeb,
    /// Ultrasonic contact impedance, in its own Vickers-like numbers. No table here.
    HvUci,
}

impl Scale {
    /// Every scale, in the order in which lists show them.
    pub const ALL: [Self; 24] = [
        Self::Hrc,
        Self::Hv,
        Self::Hbw,
        Self::Hra,
        Self::Hrd,
        Self::Hr15n,
        Self::Hr30n,
        Self::Hr45n,
        Self::Hrb,
        Self::Hrf,
        Self::Hr15t,
        Self::Hr30t,
        Self::Hr45t,
        Self::Hr15w,
        Self::Hbw500,
        Self::Hk,
        Self::Hbs,
        Self::Scleroscope,
        Self::Hre,
        Self::Hrg,
        Self::Hrh,
        Self::Hrk,
        Self::Leeb,
        Self::HvUci,
    ];

    /// The symbol, without force or ball.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Hrc => "HRC",
            Self::Hra => "HRA",
            Self::Hrd => "HRD",
            Self::Hr15n => "HR15N",
            Self::Hr30n => "HR30N",
            Self::Hr45n => "HR45N",
            Self::Hrb => "HRB",
            Self::Hre => "HRE",
            Self::Hrf => "HRF",
            Self::Hrg => "HRG",
            Self::Hrh => "HRH",
            Self::Hrk => "HRK",
            Self::Hr15t => "HR15T",
            Self::Hr30t => "HR30T",
            Self::Hr45t => "HR45T",
            Self::Hr15w => "HR15W",
            Self::Hv => "HV",
            Self::Hbw => "HBW",
            Self::Hbw500 => "HBW 10/500",
            Self::Hbs => "HBS",
            Self::Hk => "HK",
            Self::Scleroscope => "HSc",
            Self::Leeb => "HL",
            Self::HvUci => "HV(UCI)",
        }
    }

    /// Whether the number comes from a depth under a Rockwell test.
    #[must_use]
    pub const fn is_rockwell(self) -> bool {
        self.is_diamond_rockwell() || self.is_ball_rockwell()
    }

    /// Rockwell scales with a diamond cone: A, C, D and N; they carry no ball letter.
    #[must_use]
    pub const fn is_diamond_rockwell(self) -> bool {
        matches!(self, Self::Hrc | Self::Hra | Self::Hrd | Self::Hr15n | Self::Hr30n | Self::Hr45n)
    }

    /// Rockwell scales with a ball: B, E, F, G, H, K, T and W; standards want W or S behind the symbol.
    #[must_use]
    pub const fn is_ball_rockwell(self) -> bool {
        matches!(
            self,
            Self::Hrb
                | Self::Hre
                | Self::Hrf
                | Self::Hrg
                | Self::Hrh
                | Self::Hrk
                | Self::Hr15t
                | Self::Hr30t
                | Self::Hr45t
                | Self::Hr15w
        )
    }

    /// The numbers that may be written in this scale.
    ///
    /// # Source
    /// `rockwell-ranges` for the diamond scales of hard steel and for B (recalled; C from 10, below 20
    /// only on a machine verified for it); the soft ends of the others, and the hard ends of E, F and H,
    /// are where the tables of softer metals print plain numbers (`astm-e140`);
    /// `brinell-vickers-designation` for HBW to 650, here with room for the parenthesised rows of older
    /// tables; Vickers and Knoop have no upper limit in use, and 4000 lies above any steel
    /// or hardmetal; the scleroscope scale ends at 140 (from memory).
    #[must_use]
    pub const fn range(self) -> (f64, f64) {
        match self {
            Self::Hra => (20.0, 95.0),
            Self::Hrc => (10.0, 70.0),
            Self::Hrd => (8.0, 77.0),
            Self::Hrb => (10.0, 100.0),
            Self::Hre => (46.0, 101.0),
            Self::Hrf => (40.0, 110.0),
            Self::Hrg => (30.0, 94.0),
            Self::Hrh => (80.0, 108.0),
            Self::Hrk => (40.0, 100.0),
            Self::Hr15n => (61.5, 94.0),
            Self::Hr30n => (26.5, 86.0),
            Self::Hr45n => (2.0, 77.0),
            Self::Hr15t => (53.5, 94.5),
            Self::Hr30t => (12.0, 85.5),
            Self::Hr45t => (1.0, 77.0),
            Self::Hr15w => (70.0, 97.0),
            Self::Hbw | Self::Hbs | Self::Hbw500 => (3.0, 750.0),
            Self::Hv | Self::Hk | Self::HvUci => (1.0, 4000.0),
            Self::Scleroscope => (0.0, 140.0),
            Self::Leeb => (0.0, 1000.0),
        }
    }
}

impl fmt::Display for Scale {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.symbol())
    }
}

/// What a column of a published table holds: a hardness scale, or tensile strength as an estimate.
///
/// Tensile strength is kept apart on purpose: it is another property, printed beside hardness, and
/// every table calls it approximate.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Axis {
    /// A hardness scale.
    Hardness(Scale),
    /// Tensile strength in MPa, an estimate.
    Tensile,
}

impl Axis {
    /// Symbol as used in tables and JSON: the scale's own, or `Rm`.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::Hardness(scale) => scale.symbol(),
            Self::Tensile => "Rm",
        }
    }

    /// The unit written behind a number: the scale's symbol, or MPa.
    #[must_use]
    pub const fn unit(self) -> &'static str {
        match self {
            Self::Hardness(scale) => scale.symbol(),
            Self::Tensile => "MPa",
        }
    }

    /// Finds an axis by its symbol, whatever the case; `MPa` and `UTS` also mean tensile strength.
    #[must_use]
    pub fn find(text: &str) -> Option<Self> {
        let text = text.trim();
        let same = |symbol: &str| symbol.eq_ignore_ascii_case(text);
        if ["Rm", "MPa", "UTS", "tensile"].into_iter().any(same) {
            return Some(Self::Tensile);
        }
        if same("HB") {
            return Some(Self::Hardness(Scale::Hbw));
        }
        if same("HS") || same("Shore") {
            return Some(Self::Hardness(Scale::Scleroscope));
        }
        let ball = Scale::ALL.into_iter().find(|scale| {
            scale.is_ball_rockwell()
                && text.get(..scale.symbol().len()).is_some_and(same_as(scale.symbol()))
                && text.get(scale.symbol().len()..).is_some_and(|rest| {
                    rest.eq_ignore_ascii_case("W") || rest.eq_ignore_ascii_case("S")
                })
        });
        Scale::ALL.into_iter().find(|scale| same(scale.symbol())).or(ball).map(Self::Hardness)
    }

    /// Ends beyond which no conversion is made, whatever a table prints there for comparison.
    ///
    /// # Source
    /// ASTM E140 Tables 1 and 2 end at 20 HRC and 100 HRB; the rows that SAE J417 and ISO 18265 print
    /// beyond stand in parentheses, outside the recommended range of the test.
    #[must_use]
    pub const fn conversion_ends(self) -> (f64, f64) {
        match self {
            Self::Hardness(Scale::Hrc) => (20.0, f64::INFINITY),
            Self::Hardness(Scale::Hrb) => (f64::NEG_INFINITY, 100.0),
            _ => (f64::NEG_INFINITY, f64::INFINITY),
        }
    }

    /// Whether a value lies between those ends.
    pub(crate) const fn converts(self, value: f64) -> bool {
        let (low, high) = self.conversion_ends();
        value >= low && value <= high
    }
}

fn same_as(symbol: &str) -> impl Fn(&str) -> bool + '_ {
    move |text| symbol.eq_ignore_ascii_case(text)
}

impl fmt::Display for Axis {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.symbol())
    }
}

/// One number on one scale.
///
/// Numbers of different scales are different things: 60 on one and 60 on another neither compare nor
/// subtract, and the type has no order and no arithmetic.
///
/// ```compile_fail
/// use biteband_hardness::{Axis, Reading, Scale};
/// let a = Reading::new(Axis::Hardness(Scale::Hrc), 60.0).unwrap();
/// let b = Reading::new(Axis::Hardness(Scale::Hrb), 60.0).unwrap();
/// let _ = a < b; // two readings have no order
/// ```
///
/// ```compile_fail
/// use biteband_hardness::{Axis, Reading, Scale};
/// let a = Reading::new(Axis::Hardness(Scale::Hrc), 60.0).unwrap();
/// let b = Reading::new(Axis::Hardness(Scale::Hrb), 60.0).unwrap();
/// let _ = a - b; // and no difference
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reading {
    axis: Axis,
    value: f64,
}

impl Reading {
    /// Takes a number that can be written on this axis.
    ///
    /// # Units
    /// The scale's own number, or MPa for tensile strength.
    ///
    /// # Errors
    /// [`Error::NotANumber`](crate::Error::NotANumber) for NaN and infinities,
    /// [`Error::OutsideScale`](crate::Error::OutsideScale) outside the scale's range,
    /// [`Error::Strength`](crate::Error::Strength) outside the bounds of tensile strength.
    ///
    /// # Example
    /// ```
    /// use biteband_hardness::{Axis, Reading, Scale};
    /// assert!(Reading::new(Axis::Hardness(Scale::Hrc), 58.0).is_ok());
    /// assert!(Reading::new(Axis::Hardness(Scale::Hrb), 110.0).is_err());
    /// ```
    pub fn new(axis: Axis, value: f64) -> Result<Self, crate::Error> {
        if !value.is_finite() {
            return Err(crate::Error::NotANumber { axis });
        }
        match axis {
            Axis::Tensile => {
                biteband_quantity::Megapascals::new(value).map_err(crate::Error::Strength)?;
            }
            Axis::Hardness(scale) => {
                let (min, max) = scale.range();
                if value < min || value > max {
                    return Err(crate::Error::OutsideScale { scale, given: value });
                }
            }
        }
        Ok(Self { axis, value: value + 0.0 })
    }

    /// The axis it stands on.
    #[must_use]
    pub const fn axis(self) -> Axis {
        self.axis
    }

    /// Its number.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.value
    }
}

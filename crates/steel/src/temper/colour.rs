//! Temper colours: what a bright surface of plain carbon steel shows, and from how hot.
//!
//! A colour is a check for a short torch heat, and never stands without its temperature: lists differ by 35 °C,
//! and a colour moves with the time at heat.

use alloc::vec::Vec;
use core::fmt;

use super::sheet::same_effect;
use crate::composition::Interval;
use crate::generated::tempering::COLOURS;
use crate::grade::{Family, Grade, Hardening};
use crate::keyed::keyed;
use crate::source::{Cited, Confidence};
use biteband_hardness::Seen;

/// Minutes of the short torch heat that the lists are taken to mean. Ours.
pub const TORCH: f64 = 2.0;

keyed! {
    /// The colours in the order in which they come.
    Colour {
        /// Pale yellow.
        LightStraw = "light_straw",
        /// Straw yellow.
        Straw = "straw",
        /// Deep straw to dark yellow.
        DarkStraw = "dark_straw",
        /// Yellow-brown to spotted red-brown.
        Brown = "brown",
        /// Brown-purple to dark purple.
        Purple = "purple",
        /// Full to dark blue.
        Blue = "blue",
        /// Pale blue.
        LightBlue = "light_blue",
    }
}

/// A line of the data file: where one source sees a colour.
#[derive(Debug)]
pub struct ColourRow {
    pub(crate) colour: Colour,
    pub(crate) celsius: Interval,
    pub(crate) cited: Cited,
    pub(crate) note: &'static str,
}

impl ColourRow {
    /// The colour.
    #[must_use]
    pub const fn colour(&self) -> Colour {
        self.colour
    }

    /// In °C.
    #[must_use]
    pub const fn celsius(&self) -> Interval {
        self.celsius
    }

    /// Where it stands.
    #[must_use]
    pub const fn cited(&self) -> Cited {
        self.cited
    }

    /// The print, and the source's own name of the colour.
    #[must_use]
    pub const fn note(&self) -> &'static str {
        self.note
    }
}

/// A colour with its temperature, which it never stands without.
#[derive(Clone, Debug)]
pub struct Shade {
    /// The colour.
    pub colour: Colour,
    /// From the coldest to the hottest that a source gives, in °C, for the time that was asked for.
    pub celsius: Interval,
    /// That time, in minutes.
    pub minutes: f64,
    /// Every source, for a short torch heat.
    pub each: Vec<&'static ColourRow>,
}

/// Why a steel has no colours here.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum NoColours {
    /// Chromium and other elements keep the surface bright: the colours come later, by an amount that no source
    /// here puts into figures. Go by a thermometer.
    Alloyed {
        /// What kind of steel it is.
        family: Family,
    },
    /// The steel is not hardened and tempered.
    NotHardened,
}

impl NoColours {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Alloyed { .. } => "colour.alloyed",
            Self::NotHardened => "colour.not_hardened",
        }
    }
}

impl fmt::Display for NoColours {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Alloyed { family } => {
                write!(f, "on {} steel the colours come later than any list says", family.key())
            }
            Self::NotHardened => f.write_str("a steel that is not hardened is not tempered"),
        }
    }
}

impl core::error::Error for NoColours {}

/// Every colour on bright plain carbon steel, from the coldest, for a short torch heat.
///
/// # Source
/// `data/temper-colours.csv`; several lines are recalled, as they say.
///
/// # Example
/// ```
/// use biteband_steel::temper::colour::{self, Colour};
/// let straw = colour::all().into_iter().find(|shade| shade.colour == Colour::Straw).unwrap();
/// assert_eq!((straw.celsius.low, straw.celsius.high), (220.0, 238.0));
/// ```
#[must_use]
pub fn all() -> Vec<Shade> {
    held(TORCH)
}

/// The same for a longer heat: an oxide skin grows with time, so that a colour comes at a lower temperature,
/// about 40 K for an hour.
///
/// # Source
/// That colour goes by time and temperature: `ASM4D-COLOUR`. By how much is ours, `temper-colour-time`: the equal
/// parameter of Hollomon and Jaffe with the constant 20 against a torch heat of 2 min. Purple has been seen after
/// a long hold at 204 °C, twice as far.
#[must_use]
pub fn held(minutes: f64) -> Vec<Shade> {
    let shade = |&colour: &Colour| {
        let each: Vec<&ColourRow> = COLOURS.iter().filter(|row| row.colour == colour).collect();
        let low = each.iter().map(|row| row.celsius.low).reduce(f64::min)?;
        let high = each.iter().map(|row| row.celsius.high).reduce(f64::max)?;
        let at = |celsius| same_effect(celsius, TORCH, minutes);
        Some(Shade { colour, celsius: Interval { low: at(low), high: at(high) }, minutes, each })
    };
    Colour::ALL.iter().filter_map(shade).collect()
}

/// The colours that a temperature in °C may show after so many minutes: those whose spread holds it, or the two
/// beside it; none beyond the first and the last.
///
/// # Example
/// ```
/// use biteband_steel::temper::colour::{Colour, TORCH, at};
/// let shown: Vec<Colour> = at(282.0, TORCH).iter().map(|shade| shade.colour).collect();
/// assert_eq!(shown, [Colour::Purple]);
/// assert!(at(150.0, TORCH).is_empty());
/// ```
#[must_use]
pub fn at(celsius: f64, minutes: f64) -> Vec<Shade> {
    let all = held(minutes);
    let holds = |shade: &Shade| shade.celsius.low <= celsius && celsius <= shade.celsius.high;
    if all.iter().any(holds) {
        return all.into_iter().filter(holds).collect();
    }
    let below = all.iter().rev().find(|shade| shade.celsius.high < celsius);
    let above = all.iter().find(|shade| shade.celsius.low > celsius);
    below.zip(above).map_or_else(Vec::new, |(a, b)| alloc::vec![a.clone(), b.clone()])
}

/// Whether the colours say anything of a grade.
///
/// # Errors
/// [`NoColours`]: alloyed, tool or stainless steel, or one that is not hardened.
///
/// # Example
/// ```
/// use biteband_steel::Grade;
/// use biteband_steel::temper::colour::speak_for;
/// assert!(speak_for(Grade::by_key("1084").unwrap()).is_ok());
/// assert!(speak_for(Grade::by_key("W1").unwrap()).is_ok());
/// assert!(speak_for(Grade::by_key("O1").unwrap()).is_err());
/// ```
pub fn speak_for(grade: &Grade) -> Result<(), NoColours> {
    if matches!(grade.hardening(), Hardening::None) {
        return Err(NoColours::NotHardened);
    }
    // Water-hardening tool steel is plain carbon steel by what is in it.
    let limits = grade.limits();
    let alloy: f64 =
        [crate::Element::Cr, crate::Element::Ni, crate::Element::Mo, crate::Element::W]
            .into_iter()
            .filter_map(|element| limits.range(element))
            .map(Interval::middle)
            .sum();
    let plain = match grade.family() {
        Family::Carbon | Family::FreeMachining => true,
        Family::Tool => alloy <= PLAIN,
        _ => false,
    };
    if plain { Ok(()) } else { Err(NoColours::Alloyed { family: grade.family() }) }
}

/// Most chromium, nickel, molybdenum and tungsten together of a steel that still counts as plain, in mass
/// percent. Ours.
const PLAIN: f64 = 0.5;

/// Where the shift with time stands.
#[must_use]
pub const fn cited() -> Cited {
    Cited {
        sources: &["temper-colour-time", "ASM4D-COLOUR"],
        seen: Seen::Ours,
        confidence: Confidence::Low,
    }
}

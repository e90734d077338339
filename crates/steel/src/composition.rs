//! What is in a steel: shares of mass, of one heat or as the limits of a grade.

use core::fmt;

use biteband_quantity::Shown;

/// An element that the standards of this trade limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
#[expect(missing_docs, reason = "each is its chemical symbol")]
pub enum Element {
    C,
    Mn,
    Si,
    P,
    S,
    Ni,
    Cr,
    Mo,
    V,
    W,
    Co,
    Cu,
    B,
    Pb,
}

impl Element {
    /// All of them, in the order of the data file.
    pub const ALL: [Self; 14] = [
        Self::C,
        Self::Mn,
        Self::Si,
        Self::P,
        Self::S,
        Self::Ni,
        Self::Cr,
        Self::Mo,
        Self::V,
        Self::W,
        Self::Co,
        Self::Cu,
        Self::B,
        Self::Pb,
    ];

    /// Chemical symbol.
    #[must_use]
    pub const fn symbol(self) -> &'static str {
        match self {
            Self::C => "C",
            Self::Mn => "Mn",
            Self::Si => "Si",
            Self::P => "P",
            Self::S => "S",
            Self::Ni => "Ni",
            Self::Cr => "Cr",
            Self::Mo => "Mo",
            Self::V => "V",
            Self::W => "W",
            Self::Co => "Co",
            Self::Cu => "Cu",
            Self::B => "B",
            Self::Pb => "Pb",
        }
    }

    /// Finds an element by its symbol, in any case.
    #[must_use]
    pub fn find(symbol: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|element| element.symbol().eq_ignore_ascii_case(symbol.trim()))
    }

    /// The largest share that is still taken for a steel, in mass percent: wide enough for every grade
    /// of the data files, narrow enough to catch a slipped decimal comma. Ours.
    #[must_use]
    pub const fn largest(self) -> f64 {
        match self {
            Self::C => 2.5,
            Self::Mn => 15.0,
            Self::Si => 4.0,
            Self::P => 0.2,
            Self::S => 0.5,
            Self::Ni => 35.0,
            Self::Cr => 30.0,
            Self::Mo | Self::Co => 12.0,
            Self::V | Self::Cu => 6.0,
            Self::W => 20.0,
            Self::B => 0.02,
            Self::Pb => 0.4,
        }
    }

    const fn index(self) -> usize {
        self as usize
    }
}

impl fmt::Display for Element {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.symbol())
    }
}

/// From a lowest to a highest number, both inside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Interval {
    /// Lowest.
    pub low: f64,
    /// Highest.
    pub high: f64,
}

impl Interval {
    /// The middle.
    #[must_use]
    pub const fn middle(self) -> f64 {
        f64::midpoint(self.low, self.high)
    }
}

/// Why a set of shares is no composition.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum CompositionError {
    /// Not a number, negative, or more than any steel holds.
    Outside {
        /// The element.
        element: Element,
        /// As given, in mass percent.
        given: f64,
    },
    /// A lowest share above the highest.
    Backward {
        /// The element.
        element: Element,
        /// As given first.
        low: f64,
        /// As given second.
        high: f64,
    },
    /// The elements together leave less than half for the iron.
    TooMuch {
        /// Sum of the shares, in mass percent.
        sum: f64,
    },
    /// Nothing can be worked out without the carbon.
    NoCarbon,
}

impl CompositionError {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Outside { .. } => "steel.share_outside",
            Self::Backward { .. } => "steel.share_backward",
            Self::TooMuch { .. } => "steel.shares_too_much",
            Self::NoCarbon => "steel.no_carbon",
        }
    }
}

impl fmt::Display for CompositionError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match *self {
            Self::Outside { element, given } => write!(
                f,
                "{} % {element} is outside 0 to {} %, the most that a steel holds",
                Shown(given),
                Shown(element.largest())
            ),
            Self::Backward { element, low, high } => {
                write!(f, "{element} runs backwards from {} to {} %", Shown(low), Shown(high))
            }
            Self::TooMuch { sum } => write!(
                f,
                "the elements add up to {} %, which leaves less than half for the iron",
                Shown(sum)
            ),
            Self::NoCarbon => f.write_str("a composition needs its carbon"),
        }
    }
}

impl core::error::Error for CompositionError {}

/// The composition of one heat, in mass percent; an element that is not stated is not nought but unknown.
///
/// # Example
/// ```
/// use biteband_steel::{Composition, Element};
/// let heat = Composition::new(&[(Element::C, 0.41), (Element::Mn, 0.85), (Element::Cr, 1.0)])?;
/// assert_eq!(heat.get(Element::Mn), Some(0.85));
/// assert_eq!(heat.get(Element::Mo), None);
/// assert!(Composition::new(&[(Element::C, 41.0)]).is_err());
/// # Ok::<(), biteband_steel::CompositionError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Composition {
    shares: [Option<f64>; Element::ALL.len()],
}

impl Composition {
    /// Makes a composition; of an element given twice the last counts.
    ///
    /// # Errors
    /// [`CompositionError`]: a share that no steel has, too little iron, or no carbon.
    pub fn new(shares: &[(Element, f64)]) -> Result<Self, CompositionError> {
        let mut all = [None; Element::ALL.len()];
        for &(element, given) in shares {
            if !(given >= 0.0 && given <= element.largest()) {
                return Err(CompositionError::Outside { element, given });
            }
            if let Some(share) = all.get_mut(element.index()) {
                *share = Some(given);
            }
        }
        let sum: f64 = all.iter().flatten().sum();
        if sum > 50.0 {
            return Err(CompositionError::TooMuch { sum });
        }
        let made = Self { shares: all };
        if made.get(Element::C).is_none() { Err(CompositionError::NoCarbon) } else { Ok(made) }
    }

    /// The share of an element in mass percent; `None` when it is not stated.
    #[must_use]
    pub fn get(&self, element: Element) -> Option<f64> {
        self.shares.get(element.index()).copied().flatten()
    }

    /// Carbon, in mass percent.
    #[must_use]
    pub fn carbon(&self) -> f64 {
        self.get(Element::C).unwrap_or(0.0)
    }
}

/// Limits of a grade or of a bar's paper, in mass percent: an end that is not stated is `None`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct CompositionLimits {
    limits: [(Option<f64>, Option<f64>); Element::ALL.len()],
}

impl CompositionLimits {
    /// Makes limits from lowest and highest shares.
    ///
    /// # Errors
    /// [`CompositionError`] as [`Composition::new`], and for limits upside down. The iron is judged by
    /// the middles.
    pub fn new(limits: &[(Element, Option<f64>, Option<f64>)]) -> Result<Self, CompositionError> {
        let mut all = [(None, None); Element::ALL.len()];
        let mut middles = alloc::vec::Vec::new();
        for &(element, low, high) in limits {
            for given in [low, high].into_iter().flatten() {
                if !(given >= 0.0 && given <= element.largest()) {
                    return Err(CompositionError::Outside { element, given });
                }
            }
            if let (Some(low), Some(high)) = (low, high)
                && low > high
            {
                return Err(CompositionError::Backward { element, low, high });
            }
            if let Some(slot) = all.get_mut(element.index()) {
                *slot = (low, high);
            }
        }
        let made = Self { limits: all };
        for element in Element::ALL {
            if let Some(range) = made.range(element) {
                middles.push((element, range.middle()));
            }
        }
        Composition::new(&middles).map(|_| made)
    }

    /// Limits that the generator has checked as [`Self::new`] would.
    pub(crate) fn of_checked(limits: &[(Element, Option<f64>, Option<f64>)]) -> Self {
        let mut all = [(None, None); Element::ALL.len()];
        for &(element, low, high) in limits {
            if let Some(slot) = all.get_mut(element.index()) {
                *slot = (low, high);
            }
        }
        Self { limits: all }
    }

    /// Lowest and highest share as they are stated.
    #[must_use]
    pub fn stated(&self, element: Element) -> (Option<f64>, Option<f64>) {
        self.limits.get(element.index()).copied().unwrap_or((None, None))
    }

    /// The range of an element: a maximum alone runs from nought; a minimum alone is a range of no width.
    #[must_use]
    pub fn range(&self, element: Element) -> Option<Interval> {
        match self.stated(element) {
            (None, None) => None,
            (low, Some(high)) => Some(Interval { low: low.unwrap_or(0.0), high }),
            (Some(low), None) => Some(Interval { low, high: low }),
        }
    }
}

impl From<Composition> for CompositionLimits {
    fn from(heat: Composition) -> Self {
        Self { limits: heat.shares.map(|share| (share, share)) }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn shares_that_no_steel_has_are_refused() {
        for bad in [f64::NAN, -0.1, 2.6, f64::INFINITY] {
            assert!(matches!(
                Composition::new(&[(Element::C, bad)]),
                Err(CompositionError::Outside { element: Element::C, .. })
            ));
        }
        let heavy = [(Element::C, 0.1), (Element::Ni, 35.0), (Element::Cr, 30.0)];
        assert_eq!(Composition::new(&heavy), Err(CompositionError::TooMuch { sum: 65.1 }));
        assert_eq!(Composition::new(&[(Element::Mn, 0.8)]), Err(CompositionError::NoCarbon));
    }

    #[test]
    fn limits_upside_down_are_refused() {
        let upside = [(Element::C, Some(0.4), Some(0.3))];
        assert!(matches!(
            CompositionLimits::new(&upside),
            Err(CompositionError::Backward { element: Element::C, .. })
        ));
    }

    #[test]
    fn every_element_is_found_by_its_symbol() {
        for element in Element::ALL {
            assert_eq!(Element::find(element.symbol()), Some(element));
        }
        assert_eq!(Element::find(" mn "), Some(Element::Mn));
        assert_eq!(Element::find("Xx"), None);
    }

    #[test]
    fn open_ends_have_their_range() {
        let limits = CompositionLimits::new(&[
            (Element::C, Some(0.4), None),
            (Element::S, None, Some(0.04)),
        ])
        .unwrap();
        assert_eq!(limits.range(Element::C), Some(Interval { low: 0.4, high: 0.4 }));
        assert_eq!(limits.range(Element::S), Some(Interval { low: 0.0, high: 0.04 }));
        assert_eq!(limits.range(Element::Ni), None);
    }
}

//! Conditions of delivery: the ages of the 17-4 type, the letters of BS 970, the property classes of bolts.

use crate::generated::conditions::{BOLTS, BS, PH};
use crate::source::Cited;

/// An age of the 17-4 precipitation-hardening type. What is not stated is `None`.
#[derive(Debug)]
pub struct PhAge {
    pub(crate) name: &'static str,
    pub(crate) steps: &'static [(f64, f64)],
    pub(crate) hrc_min: Option<f64>,
    pub(crate) hbw_min: Option<f64>,
    pub(crate) tensile_min: Option<f64>,
    pub(crate) yield_min: Option<f64>,
    pub(crate) note: &'static str,
    pub(crate) cited: Cited,
}

impl PhAge {
    /// Name, as in `H900`; `A` is the mill's solution treatment.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        self.name
    }

    /// Temperature in °C and hours of each step; none in condition A.
    #[must_use]
    pub const fn steps(&self) -> &'static [(f64, f64)] {
        self.steps
    }

    /// Least hardness in HRC.
    #[must_use]
    pub const fn hrc_min(&self) -> Option<f64> {
        self.hrc_min
    }

    /// Least hardness in HBW.
    #[must_use]
    pub const fn hbw_min(&self) -> Option<f64> {
        self.hbw_min
    }

    /// Least tensile strength in MPa.
    #[must_use]
    pub const fn tensile_min(&self) -> Option<f64> {
        self.tensile_min
    }

    /// Least yield strength in MPa.
    #[must_use]
    pub const fn yield_min(&self) -> Option<f64> {
        self.yield_min
    }

    /// What of it was read and what recalled.
    #[must_use]
    pub const fn note(&self) -> &'static str {
        self.note
    }

    /// Where it stands.
    #[must_use]
    pub const fn cited(&self) -> Cited {
        self.cited
    }
}

/// A condition letter of BS 970: hardness and strength of bar hardened and tempered by the mill.
#[derive(Debug)]
pub struct BsCondition {
    pub(crate) letter: char,
    pub(crate) hbw: (f64, Option<f64>),
    pub(crate) tensile: (f64, Option<f64>),
    pub(crate) cited: Cited,
}

impl BsCondition {
    /// The letter.
    #[must_use]
    pub const fn letter(&self) -> char {
        self.letter
    }

    /// Lowest and highest hardness in HBW; the last letter has no highest.
    #[must_use]
    pub const fn hbw(&self) -> (f64, Option<f64>) {
        self.hbw
    }

    /// Lowest and highest tensile strength in MPa.
    #[must_use]
    pub const fn tensile(&self) -> (f64, Option<f64>) {
        self.tensile
    }

    /// Where it stands.
    #[must_use]
    pub const fn cited(&self) -> Cited {
        self.cited
    }
}

/// A property class of bolts, screws and studs after ISO 898-1.
#[derive(Debug)]
pub struct BoltClass {
    pub(crate) name: &'static str,
    pub(crate) tensile: f64,
    pub(crate) cited: Cited,
}

impl BoltClass {
    /// The class, as in `10.9`.
    #[must_use]
    pub const fn name(&self) -> &'static str {
        self.name
    }

    /// Nominal tensile strength in MPa.
    #[must_use]
    pub const fn tensile(&self) -> f64 {
        self.tensile
    }

    /// Where it stands.
    #[must_use]
    pub const fn cited(&self) -> Cited {
        self.cited
    }
}

/// The property classes of bolts, from the softest.
///
/// # Source
/// `data/bolt-classes.csv`.
///
/// # Example
/// ```
/// use biteband_steel::condition;
/// assert!(condition::bolt_classes().iter().all(|class| class.tensile() >= 400.0));
/// ```
#[must_use]
pub const fn bolt_classes() -> &'static [BoltClass] {
    BOLTS
}

/// The property class of a name without a word before it.
///
/// # Example
/// ```
/// use biteband_steel::condition;
/// // Nominal strength in MPa: the figure before the point times 100.
/// assert_eq!(condition::bolt("10.9").map(|class| class.tensile()), Some(1000.0));
/// assert!(condition::bolt("10.8").is_none());
/// ```
#[must_use]
pub fn bolt(name: &str) -> Option<&'static BoltClass> {
    BOLTS.iter().find(|class| class.name == name)
}

/// The ages of the 17-4 type, from the mill's condition to the softest.
///
/// ```
/// use biteband_steel::condition;
/// let peak = condition::ph_ages().iter().find(|age| age.name() == "H900").unwrap();
/// assert_eq!(peak.steps(), [(482.0, 1.0)]);
/// ```
#[must_use]
pub const fn ph_ages() -> &'static [PhAge] {
    PH
}

/// The condition letters, from the softest.
#[must_use]
pub const fn bs_letters() -> &'static [BsCondition] {
    BS
}

/// The condition of a letter, in either case.
///
/// ```
/// use biteband_steel::condition;
/// assert_eq!(condition::bs('t').map(|condition| condition.hbw()), Some((248.0, Some(302.0))));
/// assert!(condition::bs('A').is_none());
/// ```
#[must_use]
pub fn bs(letter: char) -> Option<&'static BsCondition> {
    BS.iter().find(|condition| condition.letter.eq_ignore_ascii_case(&letter))
}

/// Parts a British name in capital letters from its condition letter: an EN number, or six signs as in
/// 817M40, then the letter.
///
/// ```
/// use biteband_steel::condition;
/// assert_eq!(condition::split("817M40T"), Some(("817M40", 'T')));
/// assert_eq!(condition::split("4140"), None);
/// ```
#[must_use]
pub fn split(name: &str) -> Option<(&str, char)> {
    let letter = name.chars().next_back()?;
    let bare = name.strip_suffix(letter)?;
    let of_en = |bare: &str| bare.strip_prefix("EN").is_some_and(figures);
    let of_six = |bare: &str| {
        bare.len() == 6
            && bare
                .split_once(['M', 'A', 'H'])
                .is_some_and(|(a, b)| a.len() == 3 && figures(a) && figures(b))
    };
    // The standard's number may stand before the name.
    let named = bare.strip_prefix("BS970").or_else(|| bare.strip_prefix("BS")).unwrap_or(bare);
    (bs(letter).is_some() && (of_en(named) || of_six(named))).then_some((bare, letter))
}

fn figures(text: &str) -> bool {
    !text.is_empty() && text.bytes().all(|sign| sign.is_ascii_digit())
}

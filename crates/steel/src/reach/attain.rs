//! Hardness at each place of a section.

use alloc::boxed::Box;
use alloc::vec::Vec;
use core::fmt;

use libm::{erfc, sqrt};

use super::fit::Fit;
use super::record::{Off, differences, shift};
use super::through::{Depth, Through};
use crate::composition::{CompositionLimits, Interval};
use crate::grade::{Grade, Hardening};
use crate::hardenability::{self, Band, EndQuench};
use crate::quench::{self, Medium, Movement, severity};
use crate::quenchant::Quenchant;
use crate::section::{self, Equivalent, Place, PlaceDistance, Section, Shape, equivalent};
use crate::source::Cited;

/// Below this the Rockwell C scale ends.
const SCALE_END: f64 = 20.0;

/// As-quenched hardness of a place, in HRC. An end that is `None` is not known; a low end of 20 with
/// `below_scale` means "below 20".
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Attained {
    /// The softest that is to be expected.
    pub low: Option<f64>,
    /// The middle of the expectation, where there is one.
    pub mid: Option<f64>,
    /// The hardest that is to be expected.
    pub high: Option<f64>,
    /// Some of it lies below 20 HRC, where the scale ends.
    pub below_scale: bool,
    /// What its ends mean.
    pub kind: Kind,
}

/// What the ends of a hardness mean.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// 19 bars in 20 lie between them.
    Band,
    /// A range that is published, without a share of bars.
    Range,
}

/// A band of 95 % ends at so many standard deviations.
const HALF_WIDTH: f64 = 1.96;

/// Whether a hardness is reached.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Verdict {
    /// Even the hardest that is to be expected stays below.
    No,
    /// The band holds it, or nobody knows.
    Maybe,
    /// Even the softest that is to be expected is above.
    Yes,
}

impl Verdict {
    /// The word used in JSON.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::No => "no",
            Self::Maybe => "maybe",
            Self::Yes => "yes",
        }
    }
}

impl Attained {
    /// Nothing is known.
    const UNKNOWN: Self =
        Self { low: None, mid: None, high: None, below_scale: false, kind: Kind::Range };

    /// Harder by so much; the scale ends where it ends.
    fn moved(self, by: f64) -> Self {
        let end = |end: Option<f64>| end.map(|hrc| (hrc + by).max(SCALE_END));
        Self { low: end(self.low), mid: end(self.mid), high: end(self.high), ..self }
    }

    const fn range(range: Interval) -> Self {
        let Interval { low, high } = range;
        Self { low: Some(low), mid: Some(range.middle()), high: Some(high), ..Self::UNKNOWN }
    }

    /// The chance that at least `wanted` HRC are reached; `None` where only the ends of a published range are
    /// known, or not even those.
    #[must_use]
    pub fn chance(&self, wanted: f64) -> Option<f64> {
        if self.kind == Kind::Range || self.below_scale && wanted <= SCALE_END {
            return None;
        }
        let (low, mid, high) = (self.low?, self.mid?, self.high?);
        let half = if wanted > mid { high - mid } else { mid - low };
        let far = (wanted - mid) / (half / HALF_WIDTH).max(1e-9);
        Some(0.5 * erfc(far / core::f64::consts::SQRT_2))
    }

    /// Whether at least `wanted` HRC are reached: yes from a chance of 0.95 on, no up to one of 0.05; of a
    /// published range by its ends.
    #[must_use]
    pub fn reaches(&self, wanted: f64) -> Verdict {
        let (sure, never) = match self.chance(wanted) {
            Some(chance) => (chance >= 0.95, chance <= 0.05),
            None => (
                self.low.is_some_and(|low| low >= wanted),
                self.high.is_some_and(|high| high < wanted),
            ),
        };
        match (sure, never) {
            (true, _) => Verdict::Yes,
            (_, true) => Verdict::No,
            _ => Verdict::Maybe,
        }
    }
}

/// A place with the distance from the quenched end that cools like it, and its hardness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Position {
    /// Which, and how it cools.
    pub at: PlaceDistance,
    /// What it reaches.
    pub hardness: Attained,
}

/// Where the hardness comes from.
#[derive(Clone, Debug)]
pub enum Basis {
    /// The end-quench curve.
    Curve(Band),
    /// The published as-quenched hardness, and how thick the grade hardens through where that is known.
    Published {
        /// As quenched, in HRC.
        as_quenched: Interval,
        /// Where that stands.
        cited: Cited,
        /// How thick it hardens through, and how this section stands to it.
        through: Option<(&'static Through, Depth)>,
    },
}

/// Hardness from the skin to the middle.
#[derive(Clone, Debug)]
pub struct Reach {
    /// Places from the skin inward.
    pub positions: Vec<Position>,
    /// Where the hardness comes from.
    pub basis: Basis,
    /// How the bath stands to the grade; `None` for an own composition.
    pub fit: Option<Fit>,
    /// The grade hardens in a case only: this is its core.
    pub core_only: bool,
}

impl Reach {
    /// The hardness of a place, if the section has it.
    #[must_use]
    pub fn at(&self, place: Place) -> Option<Attained> {
        let found = self.positions.iter().find(|position| position.at.place == place)?;
        Some(found.hardness)
    }
}

/// Why there is no hardness.
#[derive(Clone, Debug, PartialEq)]
pub enum Error {
    /// The grade does not harden by quenching.
    DoesNotHarden {
        /// The grade.
        grade: &'static Grade,
    },
    /// The grade hardens by ageing.
    Ages {
        /// The grade.
        grade: &'static Grade,
    },
    /// Nobody quenches the grade in this.
    Never {
        /// The grade.
        grade: &'static Grade,
        /// The bath.
        medium: Quenchant,
    },
    /// Too mild a bath, and no figure for it.
    TooMild {
        /// The grade.
        grade: &'static Grade,
        /// The bath.
        medium: Quenchant,
    },
    /// The data say nothing of the grade as quenched.
    Unknown {
        /// The grade.
        grade: &'static Grade,
    },
    /// No curve for this composition.
    Hardenability(hardenability::Error),
    /// No severity for this bath.
    Quench(quench::Error),
    /// No distance for this section and severity.
    Section(section::Error),
}

impl From<section::Error> for Error {
    fn from(error: section::Error) -> Self {
        Self::Section(error)
    }
}

impl Error {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::DoesNotHarden { .. } => "reach.does_not_harden",
            Self::Ages { .. } => "reach.ages",
            Self::Never { .. } => "reach.never_in_this",
            Self::TooMild { .. } => "reach.too_mild",
            Self::Unknown { .. } => "reach.unknown",
            Self::Hardenability(error) => error.code(),
            Self::Quench(error) => error.code(),
            Self::Section(error) => error.code(),
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::DoesNotHarden { grade } => write!(f, "{} does not harden", grade.name()),
            Self::Ages { grade } => write!(f, "{} hardens by ageing", grade.name()),
            Self::Never { grade, medium } => {
                write!(f, "{} is not quenched in {}", grade.name(), medium.key())
            }
            Self::TooMild { grade, medium } => {
                write!(f, "{} does not get hard in {}", grade.name(), medium.key())
            }
            Self::Unknown { grade } => {
                write!(f, "nothing is known of {} as quenched", grade.name())
            }
            Self::Hardenability(error) => error.fmt(f),
            Self::Quench(error) => error.fmt(f),
            Self::Section(error) => error.fmt(f),
        }
    }
}

impl core::error::Error for Error {}

/// What a grade's sources would call a bath; the kind of oil changes its speed, not what it is.
#[must_use]
pub const fn quenchant(medium: Medium) -> Quenchant {
    match medium {
        Medium::Water => Quenchant::Water,
        Medium::Brine => Quenchant::Brine,
        Medium::Oil | Medium::VegetableOil | Medium::UnknownOil => Quenchant::Oil,
        Medium::FastOil => Quenchant::FastOil,
        Medium::Polymer => Quenchant::Polymer,
        Medium::Salt => Quenchant::Salt,
        Medium::Air => Quenchant::Air,
    }
}

/// How a section cools in a bath: the same for every steel.
#[derive(Clone, Debug)]
pub struct Quench {
    section: Section,
    medium: Medium,
    movement: Movement,
    /// An error where no severity is published; the equal-time round is then that in oil, on which it hardly
    /// depends.
    severity: Result<quench::Severity, quench::Error>,
    cooling: Equivalent,
}

impl Quench {
    /// Works the cooling out.
    ///
    /// # Errors
    /// [`Error::Quench`] for an oil of unknown kind, [`Error::Section`] for a severity out of bounds.
    pub fn new(section: Section, medium: Medium, movement: Movement) -> Result<Self, Error> {
        let found = severity(medium, movement);
        if let Err(error @ quench::Error::Unknown) = found {
            return Err(Error::Quench(error));
        }
        let used =
            found.or_else(|_| severity(Medium::Oil, Movement::Mild)).map_err(Error::Quench)?;
        let cooling = equivalent(&section, &used)?;
        Ok(Self { section, medium, movement, severity: found, cooling })
    }

    /// A section whose middle cools like that of a long round of `round` mm, whose places stand for its own: a
    /// quick answer for sizes and baths that are only tried out.
    pub(super) fn like_round(
        section: Section,
        round: f64,
        medium: Medium,
        movement: Movement,
    ) -> Option<Self> {
        let long = Section::new(Shape::Round { diameter: round }, None).ok()?;
        let found = Self::new(long, medium, movement).ok()?;
        Some(Self { section, ..found })
    }

    /// The section.
    #[must_use]
    pub const fn section(&self) -> &Section {
        &self.section
    }

    /// What is in the tank.
    #[must_use]
    pub const fn medium(&self) -> Medium {
        self.medium
    }

    /// How it is moved.
    #[must_use]
    pub const fn movement(&self) -> Movement {
        self.movement
    }

    /// The severity, where one is published.
    #[must_use]
    pub fn severity(&self) -> Option<quench::Severity> {
        self.severity.ok()
    }

    /// Places, distances and the equal-time round; the distances mean nothing without a severity.
    #[must_use]
    pub const fn cooling(&self) -> &Equivalent {
        &self.cooling
    }
}

/// What is quenched.
#[derive(Clone, Debug)]
pub enum Steel {
    /// A grade of the data.
    Grade(&'static Grade),
    /// A bar that is known by its composition.
    Own(Box<CompositionLimits>),
}

impl Steel {
    /// The limits of its composition.
    #[must_use]
    pub fn limits(&self) -> CompositionLimits {
        match self {
            Self::Grade(grade) => grade.limits(),
            Self::Own(limits) => **limits,
        }
    }

    /// The grade, if it is one.
    #[must_use]
    pub const fn grade(&self) -> Option<&'static Grade> {
        match self {
            Self::Grade(grade) => Some(grade),
            Self::Own(_) => None,
        }
    }
}

/// What is the same for every section and bath of a steel: the curve is worked out once.
#[derive(Clone, Debug)]
pub struct Prepared {
    steel: Steel,
    band: Option<Band>,
    /// What bars of the grade on record differ from the curve.
    record: Vec<Off>,
}

impl Prepared {
    /// Makes a steel ready. A grade goes by its H-band or by ASTM A255 where its composition is inside that
    /// method, and otherwise by its published figures; tool and stainless steels always go by those.
    ///
    /// # Errors
    /// [`Error::DoesNotHarden`] and [`Error::Ages`]; [`Error::Hardenability`] for an own composition
    /// without a curve.
    pub fn new(steel: Steel) -> Result<Self, Error> {
        let band = match &steel {
            Steel::Own(limits) => {
                Some(Band::for_limits(limits, None).map_err(Error::Hardenability)?)
            }
            Steel::Grade(grade) => match grade.hardening() {
                Hardening::None => return Err(Error::DoesNotHarden { grade }),
                Hardening::Age => return Err(Error::Ages { grade }),
                // Without a curve the published figures speak.
                Hardening::Through | Hardening::Case => Band::for_grade(grade).ok(),
            },
        };
        let record = match (&band, steel.grade()) {
            (Some(band), Some(grade)) => differences(grade.key(), |medium, diameter| {
                on_curve(band, medium, diameter).unwrap_or([None; 4])
            }),
            _ => Vec::new(),
        };
        Ok(Self { steel, band, record })
    }

    /// The steel.
    #[must_use]
    pub const fn steel(&self) -> &Steel {
        &self.steel
    }

    /// The hardness of a section in a bath.
    ///
    /// # Errors
    /// [`Error::Never`], [`Error::TooMild`], [`Error::Unknown`], and [`Error::Quench`] where the curve needs
    /// a severity that nobody has published.
    ///
    /// # Example
    /// ```
    /// use biteband_steel::Grade;
    /// use biteband_steel::quench::{Medium, Movement};
    /// use biteband_steel::reach::{Prepared, Quench, Steel, Verdict};
    /// use biteband_steel::section::{Place, Section, Shape};
    /// let pawl = Section::new(Shape::Round { diameter: 50.0 }, None).unwrap();
    /// let oil = Quench::new(pawl, Medium::Oil, Movement::Mild)?;
    /// let steel = Prepared::new(Steel::Grade(Grade::by_key("4140").unwrap()))?;
    /// let found = steel.reach(&oil)?;
    /// assert_eq!(found.at(Place::Middle).unwrap().reaches(52.0), Verdict::No);
    /// # Ok::<(), biteband_steel::reach::Error>(())
    /// ```
    pub fn reach(&self, quench: &Quench) -> Result<Reach, Error> {
        let grade = self.steel.grade();
        let medium = quenchant(quench.medium);
        let fit = grade.map(|grade| Fit::of(grade, medium));
        if let (Some(grade), Some(Fit::Never)) = (grade, fit) {
            return Err(Error::Never { grade, medium });
        }
        let core_only = grade.is_some_and(|grade| grade.hardening() == Hardening::Case);
        let (positions, basis) = match (&self.band, grade) {
            (Some(band), _) => {
                quench.severity.map_err(Error::Quench)?;
                let mut positions = by_band(band, &quench.cooling);
                for Position { at, hardness } in &mut positions {
                    let by = shift(&self.record, medium, at.place, quench.cooling.round);
                    *hardness = hardness.moved(by);
                }
                (positions, Basis::Curve(band.clone()))
            }
            (None, Some(grade)) if fit == Some(Fit::Milder) => {
                return Err(Error::TooMild { grade, medium });
            }
            (None, Some(grade)) => published(grade, &quench.cooling, medium)?,
            // An own composition without a curve was refused when it was made ready.
            (None, None) => return Err(Error::Hardenability(hardenability::Error::NotANumber)),
        };
        Ok(Reach { positions, basis, fit, core_only })
    }
}

/// What the middle curve gives for a long round in a gently moved bath, at each of [`Place::SOLID`].
fn on_curve(band: &Band, medium: Quenchant, diameter: f64) -> Option<[Option<f64>; 4]> {
    let medium = if medium == Quenchant::Water { Medium::Water } else { Medium::Oil };
    let bath = severity(medium, Movement::Mild).ok()?;
    let section = Section::new(Shape::Round { diameter }, None).ok()?;
    let cooling = equivalent(&section, &bath).ok()?;
    Some(Place::SOLID.map(|place| {
        let at = cooling.places.iter().find(|at| at.place == place)?;
        number(band.mid.hardness_at(at.jominy.mid)).map(|(hrc, _)| hrc)
    }))
}

/// A reading of the curve as a number: the end of the scale where it lies below, and whether it does.
fn number(read: Option<EndQuench>) -> Option<(f64, bool)> {
    match read? {
        EndQuench::Hrc(hrc) if hrc >= SCALE_END => Some((hrc, false)),
        EndQuench::Hrc(_) | EndQuench::Below20 => Some((SCALE_END, true)),
        // Beyond the end of a curve the hardness is that of the end or less.
        EndQuench::AtMost(hrc) => Some((hrc, false)),
    }
}

/// Two independent doubts: that of the steel at the middle distance, and that of the distance on the middle
/// curve. Each is a half-width, and they go together as the root of the sum of squares.
fn by_band(band: &Band, cooling: &Equivalent) -> Vec<Position> {
    let place = |at: &PlaceDistance| {
        let distance = at.jominy;
        let read = |curve: &hardenability::Curve, mm| number(curve.hardness_at(mm));
        let hardness = (|| {
            let (mid, mid_below) = read(&band.mid, distance.mid)?;
            let (soft_steel, low_below) = read(&band.low, distance.mid)?;
            let (hard_steel, _) = read(&band.high, distance.mid)?;
            let (soft_place, place_below) = read(&band.mid, distance.high)?;
            let (hard_place, _) = read(&band.mid, distance.low)?;
            let together = |steel: f64, place: f64| {
                let (steel, place) = ((steel - mid).abs(), (place - mid).abs());
                sqrt(steel * steel + place * place)
            };
            let low = mid - together(soft_steel, soft_place);
            // Nothing is harder than the quenched end of the hardest bar.
            let (end, _) = read(&band.high, 0.0)?;
            let high = (mid + together(hard_steel, hard_place)).min(end);
            let beyond = matches!(band.mid.hardness_at(distance.high), Some(EndQuench::AtMost(_)));
            let below_scale = mid_below || low_below || place_below || low < SCALE_END;
            Some(Attained {
                low: (!beyond || below_scale).then_some(low.max(SCALE_END)),
                mid: Some(mid),
                high: Some(high),
                below_scale,
                kind: Kind::Band,
            })
        })();
        Position { at: *at, hardness: hardness.unwrap_or(Attained::UNKNOWN) }
    };
    cooling.places.iter().map(place).collect()
}

/// Published figures: the skin reaches the as-quenched range; what lies deeper does so as far as the grade
/// hardens through, and is otherwise as its papers say, or unknown.
fn published(
    grade: &'static Grade,
    cooling: &Equivalent,
    medium: Quenchant,
) -> Result<(Vec<Position>, Basis), Error> {
    let as_quenched = grade.as_quenched().ok_or(Error::Unknown { grade })?;
    let said = Through::of(grade.key(), medium).map(|said| (said, said.depth(cooling.round)));
    let hard = Attained::range(as_quenched);
    let place = |at: &PlaceDistance| {
        let outside = matches!(at.place, Place::Skin);
        let hardness = match said {
            Some((_, Depth::Full)) => hard,
            _ if outside => hard,
            Some((said, Depth::Shell)) => {
                let (low, high) = said.core();
                let inner = at.place == Place::Middle || at.place == Place::Bore;
                if inner {
                    let mid = low.zip(high).map(|(low, high)| f64::midpoint(low, high));
                    Attained {
                        low,
                        mid,
                        high: high.or(Some(as_quenched.high)),
                        ..Attained::UNKNOWN
                    }
                } else {
                    Attained { low, high: Some(as_quenched.high), ..Attained::UNKNOWN }
                }
            }
            // Between, or nothing is said: no harder than the skin, and nobody knows how soft.
            Some((_, Depth::Open)) | None => {
                Attained { high: Some(as_quenched.high), ..Attained::UNKNOWN }
            }
        };
        Position { at: *at, hardness }
    };
    let positions = cooling.places.iter().map(place).collect();
    let cited = grade.as_quenched_cited();
    Ok((positions, Basis::Published { as_quenched, cited, through: said }))
}

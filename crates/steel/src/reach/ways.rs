//! Ways out where a wanted hardness is not reached.

use alloc::vec::Vec;

use libm::{log, pow};

use super::attain::{Error, Prepared, Quench, Steel, Verdict, quenchant};
use super::fit::{Fit, crack_risk};
use crate::grade::{Family, Grade, Hardening};
use crate::quench::{Medium, Movement};
use crate::section::{Place, Section, Shape};
use crate::transform::CrackReason;

/// What is asked of a part: at least this hardness as quenched, at this place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Wanted {
    /// HRC.
    pub hrc: f64,
    /// Where.
    pub place: Place,
}

/// Something that can be done.
#[derive(Clone, Debug, PartialEq)]
pub enum WayOut {
    /// A smaller section of the same form.
    Smaller {
        /// The ruling size in mm up to which the middle of the expectation reaches it.
        likely: Option<f64>,
        /// The ruling size in mm up to which it is sure.
        sure: Option<f64>,
    },
    /// Other grades that do it in the same section and bath, the surest first.
    Grades(Vec<(&'static Grade, Verdict)>),
    /// The bath moved faster, or a sharper one.
    Faster {
        /// What is in it.
        medium: Medium,
        /// How it is moved.
        movement: Movement,
        /// What it brings.
        verdict: Verdict,
        /// How it stands to the grade.
        fit: Option<Fit>,
    },
    /// The skin reaches it, and may be all that the work needs.
    SkinOnly(Verdict),
    /// The hardness in HRC that is sure at this place.
    Lower(f64),
}

/// Grades that are offered at most.
const OFFERED: usize = 5;
/// Steps of halving the size; the last is finer than a part is sawn.
const HALVINGS: usize = 9;

/// What can be done where `wanted` is not sure; empty where it is.
///
/// Smaller sections and other grades are worked out by the same method as the answer itself. Baths are the
/// same medium moved faster, then a fast oil; never one that the grade's sources do not name or that cools
/// sharper than they do, unless it is marked by its [`Fit`].
///
/// # Errors
/// As [`Prepared::reach`].
///
/// # Example
/// ```
/// use biteband_steel::Grade;
/// use biteband_steel::quench::{Medium, Movement};
/// use biteband_steel::reach::{Prepared, Quench, Steel, WayOut, Wanted, ways_out};
/// use biteband_steel::section::{Place, Section, Shape};
/// let pawl = Section::new(Shape::Round { diameter: 50.0 }, None).unwrap();
/// let oil = Quench::new(pawl, Medium::Oil, Movement::Mild)?;
/// let steel = Prepared::new(Steel::Grade(Grade::by_key("4140").unwrap()))?;
/// let ways = ways_out(&steel, &oil, Wanted { hrc: 50.0, place: Place::Middle })?;
/// // Modern Steels and Their Properties: 4340 has 55 HRC in the middle of a 2 in round out of oil.
/// assert!(ways.iter().any(|way| matches!(way, WayOut::Grades(grades)
///     if grades.iter().any(|(grade, _)| grade.key() == "4340"))));
/// # Ok::<(), biteband_steel::reach::Error>(())
/// ```
pub fn ways_out(steel: &Prepared, quench: &Quench, wanted: Wanted) -> Result<Vec<WayOut>, Error> {
    let found = steel.reach(quench)?;
    let here = found.at(wanted.place);
    if here.is_none_or(|here| here.reaches(wanted.hrc) == Verdict::Yes) {
        return Ok(Vec::new());
    }
    let mut ways = Vec::new();
    let (likely_here, _) = judged(steel, quench, wanted).unwrap_or((false, Verdict::Maybe));
    let sizes = Sizes::new(quench);
    let largest = |passes: fn(bool, Verdict) -> bool| {
        sizes.as_ref().and_then(|sizes| largest(steel, sizes, wanted, passes))
    };
    // At the size at hand it is more likely than not already: only the sure size is news.
    let likely = if likely_here { None } else { largest(|likely, _| likely) };
    let sure = largest(|_, verdict| verdict == Verdict::Yes);
    if likely.is_some() || sure.is_some() {
        ways.push(WayOut::Smaller { likely, sure });
    }
    let grades = other_grades(steel, quench, wanted);
    if !grades.is_empty() {
        ways.push(WayOut::Grades(grades));
    }
    let now = here.map(|here| here.reaches(wanted.hrc));
    ways.extend(faster(steel, quench, wanted, now));
    if wanted.place != Place::Skin
        && let Some(skin) = found.at(Place::Skin)
        && skin.reaches(wanted.hrc) != Verdict::No
    {
        ways.push(WayOut::SkinOnly(skin.reaches(wanted.hrc)));
    }
    if let Some(here) = here.filter(|here| !here.below_scale)
        && let Some(low) = here.low
    {
        // The lower end of a band is surer than sure: whole numbers above it may be so too.
        let mut sure = libm::floor(low);
        while here.reaches(sure + 1.0) == Verdict::Yes {
            sure += 1.0;
        }
        ways.push(WayOut::Lower(sure));
    }
    Ok(ways)
}

/// Whether the middle of the expectation reaches it, and the verdict.
fn judged(steel: &Prepared, quench: &Quench, wanted: Wanted) -> Option<(bool, Verdict)> {
    let here = steel.reach(quench).ok()?.at(wanted.place)?;
    Some((here.mid.is_some_and(|mid| mid >= wanted.hrc), here.reaches(wanted.hrc)))
}

/// The section with every size of its cut times `by`; the length stays.
fn scaled(section: &Section, by: f64) -> Option<Section> {
    let shape = match section.shape() {
        Shape::Round { diameter } => Shape::Round { diameter: diameter * by },
        Shape::Tube { outer, inner } => Shape::Tube { outer: outer * by, inner: inner * by },
        Shape::Plate { thickness } => Shape::Plate { thickness: thickness * by },
        Shape::Square { side } => Shape::Square { side: side * by },
        Shape::Hexagon { across_flats } => Shape::Hexagon { across_flats: across_flats * by },
        Shape::Flat { width, thickness } => {
            Shape::Flat { width: width * by, thickness: thickness * by }
        }
    };
    Section::new(shape, section.length()).ok()
}

/// Sections of the same form in the same bath, by their equal-time rounds: worked out at two sizes, and
/// between and below straight on logarithms, on which they lie nearly.
struct Sizes<'a> {
    quench: &'a Quench,
    /// How the equal-time round goes with the size.
    power: f64,
}

/// The second size that is worked out.
const SECOND: f64 = 0.4;

impl<'a> Sizes<'a> {
    fn new(quench: &'a Quench) -> Option<Self> {
        let round = quench.cooling().round;
        let long_round = matches!(quench.section().shape(), Shape::Round { .. })
            && quench.section().length().is_none();
        let power = if long_round {
            1.0
        } else {
            let second = scaled(quench.section(), SECOND)?;
            let second = Quench::new(second, quench.medium(), quench.movement()).ok()?;
            log(second.cooling().round / round) / log(SECOND)
        };
        Some(Self { quench, power })
    }

    fn at(&self, by: f64) -> Option<Quench> {
        let Self { quench, power } = self;
        let round = quench.cooling().round * pow(by, *power);
        let section = scaled(quench.section(), by)?;
        Quench::like_round(section, round, quench.medium(), quench.movement())
    }
}

/// The largest ruling size of this form, in mm, below the one at hand that passes; smaller ones harden
/// no less deeply.
fn largest(
    steel: &Prepared,
    sizes: &Sizes<'_>,
    wanted: Wanted,
    passes: impl Fn(bool, Verdict) -> bool,
) -> Option<f64> {
    let try_out = |by: f64| {
        let quench = sizes.at(by)?;
        let (likely, verdict) = judged(steel, &quench, wanted)?;
        passes(likely, verdict).then(|| quench.section().ruling().mm)
    };
    // A tenth of the size: smaller is another part.
    let mut best = try_out(0.1)?;
    let (mut low, mut high) = (0.1, 1.0);
    for _ in 0..HALVINGS {
        let by = f64::midpoint(low, high);
        match try_out(by) {
            Some(size) => (best, low) = (size, by),
            None => high = by,
        }
    }
    Some(best)
}

/// Grades whose sources name this bath and that do it: of the same kind of steel first, sure ones first.
fn other_grades(
    steel: &Prepared,
    quench: &Quench,
    wanted: Wanted,
) -> Vec<(&'static Grade, Verdict)> {
    let own = steel.steel().grade();
    let kind = |grade: &Grade| match grade.family() {
        Family::Stainless | Family::PhStainless => 2,
        Family::Tool => 1,
        _ => 0,
    };
    let home = own.map_or(0, kind);
    let mut found: Vec<(&'static Grade, Verdict, u8)> = Vec::new();
    for grade in Grade::all() {
        let same = own.is_some_and(|own| own.key() == grade.key());
        if same
            || grade.hardening() != Hardening::Through
            || Fit::of(grade, quenchant(quench.medium())) != Fit::Named
        {
            continue;
        }
        let Ok(prepared) = Prepared::new(Steel::Grade(grade)) else { continue };
        if let Some((likely, verdict)) = judged(&prepared, quench, wanted)
            && (likely || verdict == Verdict::Yes)
            && !cracked_by_water(grade, quench)
        {
            let far = u8::from(kind(grade) != home) * (1 + kind(grade));
            found.push((grade, verdict, far));
        }
    }
    // A stable order: kind of steel, then sureness, then the order of the data.
    let rank = |(_, verdict, far): &(&Grade, Verdict, u8)| {
        f64::from(*far) + if *verdict == Verdict::Yes { 0.0 } else { 0.5 }
    };
    biteband_quantity::sort_by_number(&mut found, rank);
    found.into_iter().take(OFFERED).map(|(grade, verdict, _)| (grade, verdict)).collect()
}

/// Alloy steel that is rather quenched in oil is not offered for water, whatever its papers allow.
fn cracked_by_water(grade: &Grade, quench: &Quench) -> bool {
    crack_risk(&grade.limits(), quenchant(quench.medium()))
        .is_some_and(|risk| risk.reasons.contains(&CrackReason::AlloyInWater))
}

/// The first step faster that changes the verdict for the better, in the same medium, and in a fast oil
/// where it is oil.
fn faster(steel: &Prepared, quench: &Quench, wanted: Wanted, now: Option<Verdict>) -> Vec<WayOut> {
    let mut ways = Vec::new();
    let mut media = alloc::vec![quench.medium()];
    if matches!(quench.medium(), Medium::Oil | Medium::VegetableOil) {
        media.push(Medium::FastOil);
    }
    for medium in media {
        let better = Movement::ALL
            .iter()
            .copied()
            .filter(|movement| *movement > quench.movement() || medium != quench.medium());
        for movement in better {
            // A jet is no bath of a small shop, and its H is beyond the checks of the method.
            if movement == Movement::Violent {
                continue;
            }
            let round = quench.cooling().round;
            let Some(tried) = Quench::like_round(*quench.section(), round, medium, movement) else {
                continue;
            };
            let Some((likely, verdict)) = judged(steel, &tried, wanted) else { continue };
            if Some(verdict) > now && (likely || verdict == Verdict::Yes) {
                let fit = steel.steel().grade().map(|grade| Fit::of(grade, quenchant(medium)));
                ways.push(WayOut::Faster { medium, movement, verdict, fit });
                break;
            }
        }
    }
    ways
}

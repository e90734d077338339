//! Tempering ranges that leave a steel brittle, as each source gives them.

use alloc::vec::Vec;

use crate::composition::{CompositionLimits, Element, Interval};
use crate::generated::tempering::BRITTLE;
use crate::grade::{Family, Grade};
use crate::keyed::keyed;
use crate::source::Cited;

keyed! {
    /// What happens in the range.
    BrittleKind {
        /// The impact value of tempered martensite falls, however short the temper.
        TemperedMartensite = "tempered_martensite",
        /// Comes with long holding or slow cooling through the range, and goes with a fast cool from above it.
        Reversible = "reversible",
        /// The grade's own row advises against it: hardness is lost, or corrosion resistance, and no toughness is
        /// gained.
        Trough = "trough",
    }
}

/// A statement of the data file.
#[derive(Debug)]
pub(crate) struct BrittleRow {
    pub(crate) kind: BrittleKind,
    pub(crate) low: Option<f64>,
    pub(crate) high: f64,
    pub(crate) grades: &'static [&'static str],
    pub(crate) families: &'static [Family],
    pub(crate) cited: Cited,
    pub(crate) note: &'static str,
}

/// What one source says.
#[derive(Clone, Copy, Debug)]
pub struct Statement {
    /// From here, in °C; `None` where the source only says up to where.
    pub low: Option<f64>,
    /// Up to here, in °C.
    pub high: f64,
    /// Where it stands.
    pub cited: Cited,
    /// What else it says.
    pub note: &'static str,
}

impl Statement {
    fn holds(&self, celsius: f64) -> bool {
        self.low.is_none_or(|low| low <= celsius) && celsius <= self.high
    }
}

/// A range that a steel is not to be tempered in.
#[derive(Clone, Debug)]
pub struct Brittle {
    /// What happens there.
    pub kind: BrittleKind,
    /// From the lowest beginning that a source states to the highest end, in °C.
    pub spread: Interval,
    /// Where all of them agree, in °C; `None` where they have nothing in common.
    pub core: Option<Interval>,
    /// Every source.
    pub each: Vec<Statement>,
    /// Molybdenum delays it: then only slow cooling of thick parts counts. Of the reversible kind alone.
    pub delayed: bool,
}

/// How a temperature stands to a range.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Outside.
    Clear,
    /// So many of the sources hold it for brittle, the others do not.
    Disputed {
        /// Those that do.
        sources: usize,
    },
    /// All of them do.
    Agreed,
}

impl Brittle {
    fn new(kind: BrittleKind, each: Vec<Statement>, delayed: bool) -> Option<Self> {
        let lows = || each.iter().filter_map(|said| said.low);
        let highs = || each.iter().map(|said| said.high);
        let spread = Interval { low: lows().reduce(f64::min)?, high: highs().reduce(f64::max)? };
        let core = Interval { low: lows().reduce(f64::max)?, high: highs().reduce(f64::min)? };
        Some(Self { kind, spread, core: (core.low <= core.high).then_some(core), each, delayed })
    }

    /// How a temperature in °C stands to the range. Below the lowest beginning that is stated it is clear, also
    /// where a source says only up to where: the low tempers for wear are common practice.
    #[must_use]
    pub fn standing(&self, celsius: f64) -> Standing {
        let sources = self.each.iter().filter(|said| said.holds(celsius)).count();
        if !(self.spread.low <= celsius && celsius <= self.spread.high) || sources == 0 {
            Standing::Clear
        } else if sources == self.each.len() {
            Standing::Agreed
        } else {
            Standing::Disputed { sources }
        }
    }
}

/// The ranges of a grade: what sources say of it and of its family, and its own row.
///
/// # Source
/// `data/embrittling.csv` and the grade's row in `data/steels.csv`; the reversible kind and for which
/// compositions it counts are recalled from handbooks.
///
/// # Example
/// ```
/// use biteband_steel::Grade;
/// use biteband_steel::temper::brittle::{self, BrittleKind, Standing};
/// let ranges = brittle::ranges(Grade::by_key("4140").unwrap());
/// let martensite = ranges.iter().find(|range| range.kind == BrittleKind::TemperedMartensite).unwrap();
/// assert_eq!(martensite.standing(300.0), Standing::Agreed);
/// assert!(matches!(martensite.standing(220.0), Standing::Disputed { .. }));
/// assert_eq!(martensite.standing(190.0), Standing::Clear);
/// ```
#[must_use]
pub fn ranges(grade: &Grade) -> Vec<Brittle> {
    let own = grade.avoid().map(|range| {
        // The words of the row tell brittleness from a temper that is merely no use.
        let brittle = grade.avoid_why().contains("embrittle");
        let kind = if brittle { BrittleKind::TemperedMartensite } else { BrittleKind::Trough };
        let said = Statement {
            low: Some(range.low),
            high: range.high,
            cited: grade.temper_cited(),
            note: grade.avoid_why(),
        };
        (kind, said)
    });
    found(grade.key(), grade.family(), &grade.limits(), own)
}

/// The same for a steel that is no grade of the list, by its family and composition.
#[must_use]
pub fn ranges_of(family: Family, limits: &CompositionLimits) -> Vec<Brittle> {
    found("", family, limits, None)
}

fn found(
    key: &str,
    family: Family,
    limits: &CompositionLimits,
    own: Option<(BrittleKind, Statement)>,
) -> Vec<Brittle> {
    let middle = |element| limits.range(element).map_or(0.0, Interval::middle);
    // Silicon moves the range up, so that the handbook's figure for families does not hold.
    let silicon = middle(Element::Si) > 1.0;
    let alloyed = middle(Element::Ni) + middle(Element::Cr) >= 0.5;
    let temper_brittle = alloyed && (middle(Element::Mn) >= 0.5 || middle(Element::Ni) >= 0.5);
    let says = |row: &&BrittleRow| {
        let general = row.families.contains(&family)
            && match row.kind {
                BrittleKind::TemperedMartensite => !(silicon && row.low.is_some()),
                BrittleKind::Reversible => temper_brittle,
                BrittleKind::Trough => false,
            };
        general || row.grades.contains(&key)
    };
    let mut all = Vec::new();
    for &kind in BrittleKind::ALL {
        let rows = BRITTLE.iter().filter(says).filter(|row| row.kind == kind);
        let mut each: Vec<Statement> = rows
            .map(|row| Statement { low: row.low, high: row.high, cited: row.cited, note: row.note })
            .collect();
        each.extend(own.filter(|(of, _)| *of == kind).map(|(_, said)| said));
        let delayed = kind == BrittleKind::Reversible && middle(Element::Mo) >= 0.15;
        all.extend(Brittle::new(kind, each, delayed));
    }
    all
}

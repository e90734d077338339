//! How thick a grade hardens through, as its papers say.

use crate::composition::Interval;
use crate::generated::through::THROUGH;
use crate::quenchant::Quenchant;
use crate::source::Cited;

/// What the sources say of one grade in one medium; sizes are rounds in mm, hardness is HRC.
#[derive(Debug)]
pub struct Through {
    pub(crate) key: &'static str,
    pub(crate) quenchant: Quenchant,
    pub(crate) full: Option<f64>,
    pub(crate) not_full: Option<f64>,
    pub(crate) shell: Option<Interval>,
    pub(crate) core_low: Option<f64>,
    pub(crate) core_high: Option<f64>,
    pub(crate) cited: Cited,
    pub(crate) note: &'static str,
}

/// How a section stands to what the sources say.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Depth {
    /// Hard through.
    Full,
    /// Between what is known to be hard through and what is known not to be.
    Open,
    /// Known not to be hard through.
    Shell,
}

impl Through {
    /// What is said of a grade in this medium; where only a milder one is named, that, because what the
    /// milder one hardens through the sharper one does too.
    ///
    /// ```
    /// use biteband_steel::Quenchant;
    /// use biteband_steel::reach::Through;
    /// let said = Through::of("O1", Quenchant::Oil).unwrap();
    /// assert_eq!(said.full(), Some(50.0));
    /// assert!(Through::of("O1", Quenchant::Air).is_none());
    /// ```
    #[must_use]
    pub fn of(key: &str, medium: Quenchant) -> Option<&'static Self> {
        let rows = || THROUGH.iter().filter(move |row| row.key == key);
        rows().find(|row| row.quenchant == medium).or_else(|| {
            let milder = rows().filter(|row| sharpness(row.quenchant) < sharpness(medium));
            milder.max_by_key(|row| sharpness(row.quenchant))
        })
    }

    /// The medium that the row speaks of.
    #[must_use]
    pub const fn quenchant(&self) -> Quenchant {
        self.quenchant
    }

    /// Up to this round the whole section is hard, in mm; `None` when no limit is stated.
    #[must_use]
    pub const fn full(&self) -> Option<f64> {
        self.full
    }

    /// From this round on the middle is known to stay softer, in mm.
    #[must_use]
    pub const fn not_full(&self) -> Option<f64> {
        self.not_full
    }

    /// Depth of the hard shell of a section that is not hard through, in mm.
    #[must_use]
    pub const fn shell(&self) -> Option<Interval> {
        self.shell
    }

    /// Lowest and highest hardness in the middle beyond that, in HRC, as far as it is known.
    #[must_use]
    pub const fn core(&self) -> (Option<f64>, Option<f64>) {
        (self.core_low, self.core_high)
    }

    /// Where it stands.
    #[must_use]
    pub const fn cited(&self) -> Cited {
        self.cited
    }

    /// What else the sources say.
    #[must_use]
    pub const fn note(&self) -> &'static str {
        self.note
    }

    /// How a section of this equal-time round stands to it. A row without any limit says "hardens through".
    #[must_use]
    pub fn depth(&self, round_mm: f64) -> Depth {
        match (self.full, self.not_full) {
            (None, None) => Depth::Full,
            (Some(full), _) if round_mm <= full => Depth::Full,
            (_, Some(not_full)) if round_mm >= not_full => Depth::Shell,
            _ => Depth::Open,
        }
    }
}

/// Order of the media by how sharply they cool; ours, after the bands of Grossmann's severities.
pub(super) const fn sharpness(medium: Quenchant) -> u8 {
    match medium {
        Quenchant::Air | Quenchant::Plate => 0,
        Quenchant::Salt | Quenchant::InterruptedOil => 1,
        Quenchant::Oil => 2,
        Quenchant::FastOil | Quenchant::Polymer => 3,
        Quenchant::Water => 4,
        Quenchant::Brine => 5,
    }
}

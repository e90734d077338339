//! Names of steels and how near each is to the grade it leads to.

use super::Grade;
use crate::generated::designations::DESIGNATIONS;
use crate::keyed::keyed;
use crate::source::Cited;

keyed! {
    /// Who gives the name.
    System {
        /// AISI, SAE or ASTM.
        AisiSae = "aisi_sae",
        /// Unified Numbering System.
        Uns = "uns",
        /// Name of a European or German standard.
        EnName = "en_name",
        /// Material number of a European or German standard.
        EnNumber = "en_number",
        /// British Standard, the old EN numbers included.
        Bs = "bs",
        /// Japanese standard.
        Jis = "jis",
        /// Chinese standard.
        Gb = "gb",
        /// A word of the shop or the trade.
        Shop = "shop name",
    }
}

keyed! {
    /// How near a designation is to the grade.
    Closeness {
        /// Another name of the grade.
        Same = "same",
        /// Not the same steel: limits differ a little.
        Near = "near",
        /// Only of the same kind.
        Approximate = "approximate",
    }
}

/// A name that leads to a grade.
///
/// # Example
/// ```
/// use biteband_steel::grade::{Closeness, System, find};
/// let found = find("1.7225")?;
/// assert_eq!(found.designation.system(), System::EnNumber);
/// assert_eq!(found.designation.closeness(), Closeness::Same);
/// assert!(found.designation.also_near().any(|grade| grade.key() == "4140"));
/// # Ok::<(), biteband_steel::grade::Error>(())
/// ```
#[derive(Debug)]
pub struct Designation {
    pub(crate) text: &'static str,
    pub(crate) system: System,
    pub(crate) grade: &'static Grade,
    pub(crate) closeness: Closeness,
    pub(crate) also_near: &'static [&'static Grade],
    pub(crate) note: &'static str,
    pub(crate) cited: Cited,
}

impl Designation {
    /// Every designation, in the order of the data file.
    #[must_use]
    pub fn all() -> &'static [Self] {
        DESIGNATIONS
    }

    /// As it is written.
    #[must_use]
    pub const fn text(&self) -> &'static str {
        self.text
    }

    /// Who gives the name.
    #[must_use]
    pub const fn system(&self) -> System {
        self.system
    }

    /// The grade it leads to.
    #[must_use]
    pub const fn grade(&self) -> &'static Grade {
        self.grade
    }

    /// How near it is to the grade.
    #[must_use]
    pub const fn closeness(&self) -> Closeness {
        self.closeness
    }

    /// Other grades it is near to.
    pub fn also_near(&self) -> impl Iterator<Item = &'static Grade> {
        self.also_near.iter().copied()
    }

    /// What has to be known of the name.
    #[must_use]
    pub const fn note(&self) -> &'static str {
        self.note
    }

    /// Where the pair of name and grade stands.
    #[must_use]
    pub const fn cited(&self) -> Cited {
        self.cited
    }
}

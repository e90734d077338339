//! What a part is made of, as far as a conversion must know it.

use core::fmt;

/// A class of materials: the tables of one say nothing about another.
///
/// Some classes have no table here. They are named all the same, so that a person who has such a part
/// is told why there is no number instead of being given that of another material.
///
/// # Example
/// ```
/// use biteband_hardness::Material;
/// assert_eq!(Material::find("cartridge-brass"), Some(Material::CartridgeBrass));
/// assert!(Material::CartridgeBrass.has_tables());
/// assert!(!Material::CastIron.has_tables());
/// ```
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Material {
    /// Carbon, alloy and low-alloy tool steel, not austenitic, the same all through.
    #[default]
    CarbonAlloySteel,
    /// Austenitic stainless steel as annealed plate.
    AusteniticPlate,
    /// Austenitic stainless steel as sheet, annealed to cold-worked.
    AusteniticSheet,
    /// Nickel and alloys with more than half of it.
    NickelAlloy,
    /// Brass with 70 % copper and 30 % zinc.
    CartridgeBrass,
    /// Brass with about 60 % copper, with or without lead.
    LeadedBrass,
    /// Wrought aluminium alloys.
    WroughtAluminium,
    /// Tool and high-speed steel with much chromium, molybdenum, tungsten or vanadium.
    HighAlloyToolSteel,
    /// Steel with a hard skin over a softer core.
    CaseHardenedSteel,
    /// Steel hardened by drawing, rolling or peening.
    ColdWorkedSteel,
    /// Grey, ductile, malleable and white iron.
    CastIron,
    /// Copper and its alloys other than these two kinds of brass.
    CopperAlloy,
    /// Sintered carbide.
    Hardmetal,
}

impl Material {
    /// Every class, those with tables first.
    pub const ALL: [Self; 13] = [
        Self::CarbonAlloySteel,
        Self::AusteniticPlate,
        Self::AusteniticSheet,
        Self::NickelAlloy,
        Self::CartridgeBrass,
        Self::LeadedBrass,
        Self::WroughtAluminium,
        Self::HighAlloyToolSteel,
        Self::CaseHardenedSteel,
        Self::ColdWorkedSteel,
        Self::CastIron,
        Self::CopperAlloy,
        Self::Hardmetal,
    ];

    /// Stable name, as in `--material cartridge-brass`.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::CarbonAlloySteel => "carbon-alloy-steel",
            Self::AusteniticPlate => "austenitic-plate",
            Self::AusteniticSheet => "austenitic-sheet",
            Self::NickelAlloy => "nickel-alloy",
            Self::CartridgeBrass => "cartridge-brass",
            Self::LeadedBrass => "leaded-brass",
            Self::WroughtAluminium => "wrought-aluminium",
            Self::HighAlloyToolSteel => "high-alloy-tool-steel",
            Self::CaseHardenedSteel => "case-hardened-steel",
            Self::ColdWorkedSteel => "cold-worked-steel",
            Self::CastIron => "cast-iron",
            Self::CopperAlloy => "copper-alloy",
            Self::Hardmetal => "hardmetal",
        }
    }

    /// Finds a class by its stable name, whatever the case.
    #[must_use]
    pub fn find(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|material| material.key().eq_ignore_ascii_case(key.trim()))
    }

    /// Whether a published table of this project holds for the class.
    #[must_use]
    pub fn has_tables(self) -> bool {
        crate::generated::CLASSES.iter().any(|class| class.material == self)
    }
}

impl fmt::Display for Material {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.key())
    }
}

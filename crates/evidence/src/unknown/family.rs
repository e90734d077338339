//! Families of steel, how their bars answer, and what they may be used for.

use biteband_hardness::Seen;
use biteband_steel::{Cited, Confidence, keyed};

use super::clue::{Fracture, Magnet, Skin, Spark};
use super::generated::{FAMILIES, GRAINS, MAGNETS, SKINS, SPARKS};

keyed! {
    /// A family of steels that shop tests tell apart.
    Kind {
        /// Low carbon and free machining: 1018, A36, 12L14.
        LowCarbon = "low_carbon",
        /// Medium carbon: 1045, 1541.
        MediumCarbon = "medium_carbon",
        /// High carbon: 1075 to 1095, W1.
        HighCarbon = "high_carbon",
        /// Low alloy with medium carbon: 4140, 4340.
        LowAlloy = "low_alloy",
        /// Spring steel: 5160, 6150.
        Spring = "spring",
        /// Oil-hardening tool and bearing steel: O1, L6, 52100.
        OilTool = "oil_tool",
        /// Air-hardening tool steel: A2, D2.
        AirTool = "air_tool",
        /// Hot-work steel: H13.
        HotWork = "hot_work",
        /// Shock-resisting tool steel: S1, S7.
        Shock = "shock",
        /// High-speed steel: M2.
        HighSpeed = "high_speed",
        /// Stainless that hardens: 410, 420, 440.
        MartensiticStainless = "martensitic_stainless",
        /// Stainless that does not: 304, 316.
        AusteniticStainless = "austenitic_stainless",
        /// Stainless that ages: 17-4PH.
        PhStainless = "ph_stainless",
        /// Austenitic manganese wear steel.
        Manganese = "manganese",
        /// Cast iron.
        CastIron = "cast_iron",
        /// Something else.
        Other = "other",
    }
}

keyed! {
    /// How a family hardens.
    Heat {
        /// From a cherry red, as hard as its carbon allows.
        Carbon = "carbon",
        /// From a heat of its own, above what a cherry red gives.
        Own = "own",
        /// Not by a quench.
        None = "none",
    }
}

keyed! {
    /// What a bar may be made into.
    Purpose {
        /// Hammers, hardy tools, drifts.
        Hammers = "hammers",
        /// Shafts, pins, levers.
        Shafts = "shafts",
        /// Cold chisels and punches.
        Chisels = "chisels",
        /// Cutting edges.
        Edges = "edges",
        /// Springs.
        Springs = "springs",
        /// Tools that touch hot steel.
        HotTools = "hot_tools",
        /// Parts that are carburized.
        Case = "case",
        /// Parts that stay soft.
        SoftParts = "soft_parts",
        /// Parts that must not rust.
        Rust = "rust",
        /// Bits ground to shape without heating.
        GroundBits = "ground_bits",
        /// Plates that are battered.
        Battering = "battering",
        /// Blocks and weights.
        Blocks = "blocks",
        /// Lifting, steering, pressure: never from an unknown bar.
        Safety = "safety",
    }
}

/// How hard a coupon of a family comes out of the quench.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Quenched {
    /// Below the hardness of its carbon by a one-sided loss with these means, in HRC.
    Carbon {
        /// Mass percent, evenly likely between.
        carbon: (f64, f64),
        oil: f64,
        water: f64,
    },
    /// From a cherry red about so hard in any bath: mean and standard deviation, in HRC.
    Fixed { mean: f64, sd: f64 },
}

/// Hardness of bars as they are found: a share of hardened ones, and the rest.
#[derive(Clone, Copy, Debug)]
pub(super) struct Found {
    pub(super) share: f64,
    pub(super) hard: (f64, f64),
    pub(super) soft: (f64, f64),
}

#[derive(Debug)]
pub(super) struct Family {
    pub(super) kind: Kind,
    pub(super) prior: f64,
    pub(super) heat: Heat,
    pub(super) quenched: Quenched,
    pub(super) found: Found,
}

/// A purpose, what it needs as quenched in HRC, and the families that suit it.
#[derive(Debug)]
pub(super) struct Fit {
    pub(super) purpose: Purpose,
    pub(super) least: Option<f64>,
    pub(super) warn: bool,
    pub(super) suits: &'static [Kind],
}

/// A column of answers: one chance for each family, in the order of [`Kind::ALL`].
pub(super) type Row<A> = (A, [f64; Kind::ALL.len()]);

impl Family {
    pub(super) const fn all() -> &'static [Self] {
        FAMILIES
    }

    fn chance<A: Copy + PartialEq>(&self, rows: &[Row<A>], answer: A) -> f64 {
        let row = rows.iter().find(|row| row.0 == answer);
        let mut chances = row.into_iter().flat_map(|row| Kind::ALL.iter().zip(&row.1));
        chances.find(|(kind, _)| **kind == self.kind).map_or(0.0, |(_, chance)| *chance)
    }

    pub(super) fn magnet(&self, answer: Magnet) -> f64 {
        self.chance(MAGNETS, answer)
    }

    pub(super) fn spark(&self, answer: Spark) -> f64 {
        self.chance(SPARKS, answer)
    }

    pub(super) fn skin(&self, answer: Skin) -> f64 {
        self.chance(SKINS, answer)
    }

    /// Of coupons that snap, how many show this grain.
    pub(super) fn grain(&self, answer: Fracture) -> f64 {
        self.chance(GRAINS, answer)
    }
}

impl Kind {
    /// How the family hardens.
    #[must_use]
    pub fn heat(self) -> Heat {
        let family = FAMILIES.iter().find(|family| family.kind == self);
        family.map_or(Heat::None, |family| family.heat)
    }
}

/// Where families, answers and purposes stand.
#[must_use]
pub const fn cited() -> Cited {
    Cited {
        sources: &["sorting-practice", "spark-table", "astm-a255"],
        seen: Seen::Ours,
        confidence: Confidence::Low,
    }
}

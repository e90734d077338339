//! What can be seen of a bar.

use biteband_steel::keyed;

use super::span::Span;

keyed! {
    /// What a magnet does on clean metal.
    Magnet {
        /// It sticks.
        Sticks = "sticks",
        /// It pulls weakly.
        Weak = "weak",
        /// It does not stick.
        None = "none",
    }
}

keyed! {
    /// What the spark looks like at the wheel.
    Spark {
        /// Hardly any, dull red and short.
        None = "none",
        /// Long straw-coloured lines with few forks.
        Straw = "straw",
        /// Bright lines with forks and some bursts.
        Forks = "forks",
        /// Bright, many bursts, beginning close to the wheel.
        Bursts = "bursts",
        /// Orange broken lines that end in detached spear points.
        Spears = "spears",
        /// Plain lines, orange to yellow-white, hardly a fork.
        Plain = "plain",
        /// Short and dull red at the wheel, then a bush of fine straw-coloured bursts.
        Bushy = "bushy",
    }
}

keyed! {
    /// The skin against the metal some millimetres deeper.
    Skin {
        /// Much the same.
        Same = "same",
        /// Hard skin, softer below: induction hardened, carburized or battered.
        Hard = "hard",
        /// Soft skin, harder below: it has lost its carbon.
        Soft = "soft",
    }
}

keyed! {
    /// How a quenched coupon broke.
    Fracture {
        /// It bent.
        Bent = "bent",
        /// It tore, grey and fibrous.
        Torn = "torn",
        /// It snapped with a fine grey grain.
        Fine = "fine",
        /// It snapped with a coarse bright grain.
        Coarse = "coarse",
    }
}

keyed! {
    /// What a coupon was quenched in.
    Bath {
        /// Oil.
        Oil = "oil",
        /// Water.
        Water = "water",
    }
}

keyed! {
    /// A test of the bar, in the order of its cost.
    Test {
        /// A magnet.
        Magnet = "magnet",
        /// The spark at a wheel.
        Spark = "spark",
        /// A file on the bar as it was found.
        Found = "found",
        /// A file on the skin and some millimetres deeper.
        Skin = "skin",
        /// A coupon from the middle, quenched in oil.
        CouponOil = "coupon_oil",
        /// Snapping the coupon.
        Snap = "snap",
        /// Another coupon, quenched in water.
        CouponWater = "coupon_water",
    }
}

/// One thing that was seen.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Clue {
    /// With a magnet.
    Magnet(Magnet),
    /// At the wheel.
    Spark(Spark),
    /// Hardness of the bar as it was found, in HRC.
    Found(Span),
    /// Skin against what lies deeper.
    Skin(Skin),
    /// Hardness of a 6 mm coupon after its quench, untempered, in HRC.
    Coupon(Bath, Span),
    /// How the coupon broke that was quenched last.
    Snap(Fracture),
}

impl Clue {
    /// The test that it comes from.
    #[must_use]
    pub const fn test(&self) -> Test {
        match self {
            Self::Magnet(_) => Test::Magnet,
            Self::Spark(_) => Test::Spark,
            Self::Found(_) => Test::Found,
            Self::Skin(_) => Test::Skin,
            Self::Coupon(Bath::Oil, _) => Test::CouponOil,
            Self::Coupon(Bath::Water, _) => Test::CouponWater,
            Self::Snap(_) => Test::Snap,
        }
    }
}

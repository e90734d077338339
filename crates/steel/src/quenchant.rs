//! What a steel is quenched in.

use crate::keyed::keyed;

keyed! {
    /// A medium for quenching, by the words of the grades' data; how strongly it cools depends on the bath.
    ///
    /// ```
    /// use biteband_steel::Quenchant;
    /// assert_eq!(Quenchant::find("fast_oil"), Some(Quenchant::FastOil));
    /// assert_eq!(Quenchant::InterruptedOil.key(), "interrupted_oil");
    /// ```
    Quenchant {
        /// Plain water.
        Water = "water",
        /// Salt dissolved in water, which breaks the steam skin.
        Brine = "brine",
        /// Ordinary quenching oil.
        Oil = "oil",
        /// Oil made to cool fast.
        FastOil = "fast_oil",
        /// Polymer dissolved in water.
        Polymer = "polymer",
        /// Molten salt.
        Salt = "salt",
        /// Still or blown air.
        Air = "air",
        /// Between cold plates.
        Plate = "plate",
        /// Oil until the colour is gone, then air.
        InterruptedOil = "interrupted_oil",
    }
}

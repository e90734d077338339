//! Tensile strength as measured, beside what the tables print.

/// Tensile strength that measured steels had at a hardness.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MeasuredStrength {
    /// Middle, in MPa.
    pub value: f64,
    /// Half of the band that holds `level` of all heats, in MPa.
    pub half: f64,
    /// The share of heats meant, 0.95.
    pub level: f64,
}

impl MeasuredStrength {
    /// Softest and hardest measured steel, HV.
    pub const RANGE: (f64, f64) = (195.0, 380.0);

    /// MPa for one HV, and the half-width of the band as a share of it.
    const RATIO: f64 = 3.12;
    const SHARE: f64 = 0.04;

    /// What carbon and low-alloy steel, quenched and tempered, had at a Vickers hardness.
    ///
    /// # Units
    /// HV in, MPa out.
    ///
    /// # Valid for
    /// 195 to 380 HV, tempered at 550 to 680 C, bars of one size class from one laboratory; `None`
    /// outside. Not for untempered, cold-worked, stainless or cast steel.
    ///
    /// # Accuracy
    /// The band held at least 95 % of 360 results of 120 heats; doubt about the hardness comes on top.
    ///
    /// # Source
    /// `nims-fatigue`, measured; the ratio and the band are worked out from it here.
    ///
    /// # Example
    /// ```
    /// use biteband_hardness::MeasuredStrength;
    /// let found = MeasuredStrength::at(300.0).unwrap();
    /// assert!((found.value - 936.0).abs() < 1e-9); // ISO 18265 prints 965
    /// assert!(MeasuredStrength::at(640.0).is_none());
    /// ```
    #[must_use]
    pub fn at(vickers: f64) -> Option<Self> {
        let (low, high) = Self::RANGE;
        if !(vickers >= low && vickers <= high) {
            return None;
        }
        let value = Self::RATIO * vickers;
        Some(Self { value, half: Self::SHARE * value, level: 0.95 })
    }
}

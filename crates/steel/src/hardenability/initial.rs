//! Hardness that carbon alone decides.

/// Value of a polynomial, the constant first.
pub(super) fn polynomial(coefficients: &[f64], x: f64) -> f64 {
    coefficients.iter().rev().fold(0.0, |sum, a| sum * x + a)
}

/// Hardness in HRC of the quenched end, all martensite, at a carbon in mass percent.
///
/// Carbon counts from 0.10 to 0.70 %; outside it is taken at the nearer end, because the polynomial turns
/// round there. Above 0.70 % read the result as "about 65 HRC".
///
/// Source: ASTM A255-10 (2014), the newer text; the older one differs by less than 0.4 HRC up to 0.65 %.
///
/// # Example
/// ```
/// use biteband_steel::hardenability::initial_hardness;
/// assert!((initial_hardness(0.40) - 56.3).abs() < 0.05);
/// assert_eq!(initial_hardness(1.0), initial_hardness(0.70));
/// ```
#[must_use]
pub fn initial_hardness(carbon: f64) -> f64 {
    let coefficients = [33.087, 50.723, 33.662, -2.7048, -107.02, 43.523];
    polynomial(&coefficients, carbon.clamp(0.10, 0.70))
}

/// Hardness in HRC of half martensite, half softer structure, at a carbon in mass percent.
///
/// Carbon counts from 0.10 to 0.72 %; outside it is taken at the nearer end.
///
/// Source: ASTM A255-89 to -02, recalled and read in an excerpt; within 2 HRC of SAE J406.
///
/// # Example
/// ```
/// use biteband_steel::hardenability::fifty_percent_martensite;
/// assert!((fifty_percent_martensite(0.40) - 42.4).abs() < 0.05);
/// ```
#[must_use]
pub fn fifty_percent_martensite(carbon: f64) -> f64 {
    let coefficients = [22.974, 6.214, 356.364, -1091.488, 1464.88, -750.441];
    polynomial(&coefficients, carbon.clamp(0.10, 0.72))
}

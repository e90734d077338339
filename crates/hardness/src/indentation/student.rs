//! Student's t.

use super::error::Error;

/// Most readings of a series: beyond it the sums below grow long for nothing.
pub(super) const MOST: usize = 1000;

/// The half width, in standard uncertainties, that holds a chance of the mean.
///
/// # Units
/// `chance` two-sided, as 0.95; `freedom` the degrees of freedom, one less than the readings.
///
/// # Accuracy
/// Against SciPy to 1e-9 of the value, tails to 1e-6 included.
///
/// # Errors
/// [`Error::NoQuantile`] for a chance not between 0 and 1 or for 0 or more than 1000 degrees of freedom.
///
/// # Source
/// `students-t`, 26.7.3 and 26.7.4: a finite sum over the powers of a cosine.
///
/// # Example
/// ```
/// use biteband_hardness::indentation::student_t;
/// // ISO 6508-1:2005 takes 1.84 for two means.
/// assert!((student_t(0.6827, 1)? - 1.84).abs() < 0.005);
/// # Ok::<(), biteband_hardness::indentation::Error>(())
/// ```
pub fn student_t(chance: f64, freedom: u32) -> Result<f64, Error> {
    let most = u32::try_from(MOST).unwrap_or(u32::MAX);
    if chance > 0.0 && chance < 1.0 && (1..=most).contains(&freedom) {
        let (mut near, mut far) = (0.0, 1.0);
        for _ in 0..90 {
            let middle = f64::midpoint(near, far);
            if inside(middle, freedom) > chance {
                near = middle;
            } else {
                far = middle;
            }
        }
        let share = f64::midpoint(near, far);
        Ok(libm::sqrt(f64::from(freedom)) * (1.0 - share) / share)
    } else {
        Err(Error::NoQuantile { chance, freedom })
    }
}

/// The chance inside plus and minus t, where t over the root of the degrees of freedom is
/// (1 - share) / share: a tail, where share is small, keeps all its digits.
fn inside(share: f64, freedom: u32) -> f64 {
    // Sine and cosine of the handbook's angle, whose tangent that ratio is; `rest` is what the angle
    // leaves of a right one.
    let slant = libm::hypot(share, 1.0 - share);
    let (sine, cosine) = ((1.0 - share) / slant, share / slant);
    let rest = libm::atan2(share, 1.0 - share);
    let odd = freedom % 2 == 1;
    let (mut term, mut sum) = if odd { (cosine, 0.0) } else { (1.0, 0.0) };
    let mut power = u32::from(odd);
    while power + 2 <= freedom {
        sum += term;
        term *= cosine * cosine * f64::from(power + 1) / f64::from(power + 2);
        power += 2;
    }
    if odd { 1.0 - (rest - sine * sum) / core::f64::consts::FRAC_PI_2 } else { sine * sum }
}

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
        // The angle is counted from the far end, where a tail has all its digits.
        let (mut near, mut far) = (0.0, core::f64::consts::FRAC_PI_2);
        for _ in 0..90 {
            let middle = f64::midpoint(near, far);
            if inside(middle, freedom) > chance {
                near = middle;
            } else {
                far = middle;
            }
        }
        Ok(libm::sqrt(f64::from(freedom)) / libm::tan(f64::midpoint(near, far)))
    } else {
        Err(Error::NoQuantile { chance, freedom })
    }
}

/// The chance inside plus and minus t, where `rest` is the angle whose cotangent is t over the root of
/// the degrees of freedom.
fn inside(rest: f64, freedom: u32) -> f64 {
    // In the handbook's angle, pi/2 - rest, sine and cosine change places.
    let (sine, cosine) = (libm::cos(rest), libm::sin(rest));
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

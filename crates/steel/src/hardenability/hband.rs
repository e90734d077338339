//! Published bands of the end-quench hardness of H-steels.

use alloc::vec::Vec;

use super::curve::Curve;
use super::generated::BANDS;

/// Highest hardness that the bands print; where they print none, it is above.
const TOP: f64 = 65.0;

/// A published band.
#[derive(Debug)]
pub(super) struct HBand {
    pub(super) name: &'static str,
    /// Halves of a sixteenth of an inch, highest and lowest HRC; nought where none is printed.
    pub(super) rows: &'static [(u8, u8, u8)],
}

/// The curves of a band: lowest, middle, highest.
pub(super) struct Curves {
    pub(super) low: Curve,
    pub(super) mid: Curve,
    pub(super) high: Curve,
}

/// Names of the H-bands at hand, as `4140H`.
///
/// Source: SAE J1268 and ASTM A304, recalled.
///
/// # Example
/// ```
/// assert!(biteband_steel::hardenability::h_bands().any(|name| name == "8620H"));
/// ```
pub fn h_bands() -> impl Iterator<Item = &'static str> {
    BANDS.iter().map(|band| band.name)
}

/// The H-band of a grade: that of the same number with an H behind it. The limits of an H-steel are a little
/// wider than those of the grade, so the band holds the grade. Relatives from other standards have
/// limits of their own and no H-band.
///
/// # Example
/// ```
/// use biteband_steel::hardenability::h_band_of;
/// assert_eq!(h_band_of("4140"), Some("4140H"));
/// assert_eq!(h_band_of("42CrMo4"), None);
/// ```
#[must_use]
pub fn h_band_of(key: &str) -> Option<&'static str> {
    h_bands().find(|name| name.strip_suffix('H') == Some(key))
}

/// The curves of a band by its name.
pub(super) fn find(name: &str) -> Option<(&'static str, Curves)> {
    let band = BANDS.iter().find(|band| band.name == name)?;
    Some((band.name, band.curves()))
}

impl HBand {
    fn curves(&self) -> Curves {
        let printed = |at: u8| f64::from(at) * (25.4 / 32.0);
        let (mut low, mut mid, mut high) = (Vec::new(), Vec::new(), Vec::new());
        for &(at, highest, lowest) in self.rows {
            let mm = printed(at);
            let highest = if highest == 0 { TOP } else { f64::from(highest) };
            high.push((mm, highest));
            if lowest != 0 {
                low.push((mm, f64::from(lowest)));
            }
            // Without a lowest the middle is no higher than with one of 20 HRC.
            mid.push((mm, f64::midpoint(highest, f64::from(lowest.max(20)))));
        }
        // The bar is as hard in front of the first printed distance as there.
        for points in [&mut low, &mut mid, &mut high] {
            if let Some(&(_, first)) = points.first() {
                points.insert(0, (0.0, first));
            }
        }
        let fades = low.len() < high.len();
        let low = Curve::through(low);
        let mid = Curve::through(mid).known_to(low.end());
        Curves { low: if fades { low.fading() } else { low }, mid, high: Curve::through(high) }
    }
}

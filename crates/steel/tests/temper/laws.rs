//! Laws that hold for every steel that is taken.

use biteband_steel::Composition;
use biteband_steel::Element::{C, Cr, Mn, Mo, Ni, Si, V};
use biteband_steel::temper::{Regression, Temper};
use proptest::prelude::*;

prop_compose! {
    fn any_steel()(
        c in 0.15..=1.3_f64, mn in 0.0..=2.2_f64, si in 0.0..=2.2_f64, ni in 0.0..=4.0_f64,
        cr in 0.0..=2.0_f64, mo in 0.0..=0.6_f64, v in 0.0..=0.3_f64,
    ) -> Composition {
        let shares = [(C, c), (Mn, mn), (Si, si), (Ni, ni), (Cr, cr), (Mo, mo), (V, v)];
        Composition::new(&shares).unwrap()
    }
}

fn at(celsius: f64, minutes: f64) -> [Temper; 1] {
    [Temper::new(celsius, minutes).unwrap()]
}

proptest! {
    #[test]
    fn hotter_is_never_harder(
        heat in any_steel(), a in 50.0..=800.0_f64, b in 50.0..=800.0_f64, minutes in 0.2..=6000.0_f64,
    ) {
        let steel = Regression::new(&heat).unwrap();
        let (cold, hot) = (steel.hrc(&at(a.min(b), minutes)), steel.hrc(&at(a.max(b), minutes)));
        prop_assert!(cold.is_finite() && hot.is_finite());
        prop_assert!(hot <= cold + 1e-9, "{cold} {hot}");
        prop_assert!(cold <= steel.hrc(&[]) + 1e-9 && cold <= 68.0 + 1e-9);
    }

    #[test]
    fn longer_is_never_harder(
        heat in any_steel(), celsius in 50.0..=800.0_f64, a in 0.2..=6000.0_f64, b in 0.2..=6000.0_f64,
    ) {
        let steel = Regression::new(&heat).unwrap();
        let (short, long) = (steel.hrc(&at(celsius, a.min(b))), steel.hrc(&at(celsius, a.max(b))));
        prop_assert!(long <= short + 1e-9, "{short} {long}");
    }

    #[test]
    fn one_more_temper_is_never_harder_and_their_order_does_not_matter(
        heat in any_steel(), a in 100.0..=700.0_f64, b in 100.0..=700.0_f64, minutes in 1.0..=600.0_f64,
    ) {
        let steel = Regression::new(&heat).unwrap();
        let (first, second) = (Temper::new(a, minutes).unwrap(), Temper::new(b, 60.0).unwrap());
        let both = steel.hrc(&[first, second]);
        prop_assert!(both <= steel.hrc(&[first]) + 1e-9);
        prop_assert!((both - steel.hrc(&[second, first])).abs() < 1e-9);
    }

    #[test]
    fn the_slope_is_that_of_the_hardness(
        heat in any_steel(), celsius in 110.0..=690.0_f64, minutes in 10.0..=600.0_f64,
    ) {
        let steel = Regression::new(&heat).unwrap();
        let slope = steel.slope_per_kelvin(&at(celsius, minutes));
        let wide = steel.hrc(&at(celsius + 8.0, minutes)) - steel.hrc(&at(celsius - 8.0, minutes));
        prop_assert!(slope <= 1e-12);
        prop_assert!((slope - wide / 16.0).abs() < 0.02, "{slope} {}", wide / 16.0);
    }

    #[test]
    fn the_spread_is_sane(heat in any_steel(), celsius in 50.0..=800.0_f64) {
        let steel = Regression::new(&heat).unwrap();
        let sd = steel.sd(&at(celsius, 60.0));
        // A shop's own scatter is at least a point, and nothing is known worse than this where there are data.
        prop_assert!(sd > 1.0 && sd < 4.0, "{sd}");
    }
}

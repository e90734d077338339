//! What holds for every number, tried on random ones.

use biteband_hardness::indentation::{
    Convex, Indentation, Instrument, Material, Part, Series, Surface, Test, brinell,
    brinell_diameter, combine, default_standard_uncertainty, fitting, force, indices, knoop,
    knoop_depth, knoop_diagonal, leeb, leeb_rebound, machine_limits, rockwell, rockwell_depth,
    rockwell_flat, rockwell_shown, standard_tests, student_t, valid_tests, vickers, vickers_depth,
    vickers_diagonal, vickers_factor, vickers_flat, vickers_shown, window,
};
use biteband_hardness::{Axis, Reading, Scale};
use biteband_quantity::{BallMillimetres, KilogramsForce, Millimetres};
use proptest::prelude::*;
use proptest::sample::select;

use crate::{ball, kgf, mm};

fn close(a: f64, b: f64) -> bool {
    (a - b).abs() <= 1e-9 * a.abs().max(b.abs()).max(1e-3)
}

fn rockwells() -> impl Strategy<Value = Scale> {
    select(Scale::ALL.into_iter().filter(|scale| scale.is_rockwell()).collect::<Vec<_>>())
}

/// Scales with a table for cylinders, its smallest and its largest diameter, its first and last reading.
const ROUND: [(Scale, f64, (f64, f64)); 12] = [
    (Scale::Hrc, 6.4, (20.0, 90.0)),
    (Scale::Hra, 6.4, (20.0, 90.0)),
    (Scale::Hrd, 6.4, (20.0, 90.0)),
    (Scale::Hrb, 6.4, (0.0, 100.0)),
    (Scale::Hrf, 6.4, (0.0, 100.0)),
    (Scale::Hrg, 6.4, (0.0, 100.0)),
    (Scale::Hr15n, 3.2, (20.0, 90.0)),
    (Scale::Hr30n, 3.2, (20.0, 90.0)),
    (Scale::Hr45n, 3.2, (20.0, 90.0)),
    (Scale::Hr15t, 3.2, (20.0, 90.0)),
    (Scale::Hr30t, 3.2, (20.0, 90.0)),
    (Scale::Hr45t, 3.2, (20.0, 90.0)),
];

fn any_number() -> impl Strategy<Value = f64> {
    prop_oneof![
        any::<f64>(),
        select(vec![
            f64::NAN,
            f64::INFINITY,
            f64::NEG_INFINITY,
            0.0,
            -0.0,
            f64::MIN_POSITIVE,
            5e-324
        ]),
        -1000.0..4000.0,
    ]
}

proptest! {
    #[test]
    fn law_sizes_and_numbers_go_there_and_back(
        hardness in 1.0..4000.0_f64, load in 0.001..100.0_f64, share in 0.01..0.999_f64,
        test in select(standard_tests().collect::<Vec<_>>()),
    ) {
        let load = kgf(load);
        prop_assert!(close(vickers(load, vickers_diagonal(load, hardness).unwrap()), hardness));
        prop_assert!(close(knoop(load, knoop_diagonal(load, hardness).unwrap()), hardness));
        if let Test::Brinell { ball, force } = test {
            let diameter = mm(share * ball.get());
            let number = brinell(ball, force, diameter).unwrap();
            let back = brinell_diameter(ball, force, number).unwrap();
            prop_assert!(close(back.get(), diameter.get()));
        }
    }

    #[test]
    fn law_depths_and_velocities_go_there_and_back(
        scale in rockwells(), value in -50.0..99.9_f64, impact in 0.1..10.0_f64, hl in 0.0..1000.0_f64,
    ) {
        let depth = rockwell_depth(scale, value).unwrap();
        prop_assert!((rockwell(scale, depth).unwrap() - value).abs() < 1e-9);
        let rebound = leeb_rebound(impact, hl).unwrap();
        prop_assert!(close(leeb(impact, rebound).unwrap().0, hl));
    }

    #[test]
    fn law_a_larger_mark_is_a_softer_part(
        a in 0.01..0.99_f64, step in 0.0001..0.01_f64, scale in rockwells(), load in 0.1..100.0_f64,
    ) {
        let (small, large) = (mm(a), mm(a + step));
        let load = kgf(load);
        prop_assert!(vickers(load, small) > vickers(load, large));
        prop_assert!(knoop(load, small) > knoop(load, large));
        prop_assert!(rockwell(scale, small).unwrap() > rockwell(scale, large).unwrap());
        let of = |size| brinell(ball(1.0), load, size);
        if let (Ok(hard), Ok(soft)) = (of(small), of(large)) {
            prop_assert!(hard > soft);
        }
    }

    #[test]
    fn law_twice_the_size_and_four_times_the_force_is_the_same_number(
        load in 0.1..20.0_f64, size in 0.05..0.4_f64,
    ) {
        let twice = (kgf(4.0 * load), mm(2.0 * size));
        prop_assert!(close(vickers(kgf(load), mm(size)), vickers(twice.0, twice.1)));
        prop_assert!(close(knoop(kgf(load), mm(size)), knoop(twice.0, twice.1)));
        // For Brinell the ball has to grow with it: that is what the index is for.
        let (one, other) = (
            brinell(ball(5.0), kgf(load), mm(size)).unwrap(),
            brinell(ball(10.0), twice.0, twice.1).unwrap(),
        );
        prop_assert!(close(one, other));
    }

    #[test]
    fn law_corrections_go_there_and_back(
        of in select(ROUND.to_vec()), place in 0.0..=1.0_f64, across in 1.0..12.0_f64,
    ) {
        let (scale, smallest, (first, last)) = of;
        let (reading, part) = (first + (last - first) * place, mm(smallest * across));
        let there = rockwell_flat(scale, reading, part, Convex::Cylinder).unwrap();
        prop_assert!(there.flat >= reading && there.amount() <= 13.0 + 1e-9);
        let back = rockwell_shown(scale, there.flat, part, Convex::Cylinder).unwrap();
        prop_assert!((back.shown - reading).abs() < 1e-9);
        // A larger part needs no larger correction.
        let larger = rockwell_flat(scale, reading, mm(part.get() * 1.1), Convex::Cylinder).unwrap();
        prop_assert!(larger.amount() <= there.amount() + 1e-9);
        // A reading higher up is not overtaken.
        let up = (reading + 0.5).min(last);
        let higher = rockwell_flat(scale, up, part, Convex::Cylinder).unwrap();
        prop_assert!(higher.flat >= there.flat);
    }

    #[test]
    fn law_corrections_on_a_ball_go_there_and_back(
        reading in 55.0..=65.0_f64, diameter in 4.0..100.0_f64,
    ) {
        let there = rockwell_flat(Scale::Hrc, reading, mm(diameter), Convex::Sphere).unwrap();
        let back = rockwell_shown(Scale::Hrc, there.flat, mm(diameter), Convex::Sphere).unwrap();
        prop_assert!((back.shown - reading).abs() < 1e-9);
    }

    #[test]
    fn law_vickers_on_curves_goes_there_and_back(
        surface in select(Surface::ALL.to_vec()), share in 0.001..=1.0_f64,
        hardness in 50.0..1200.0_f64, load in 0.1..100.0_f64,
    ) {
        let load = kgf(load);
        let diagonal = vickers_diagonal(load, hardness).unwrap();
        let part = mm(diagonal.get() / (surface.largest_ratio() * share));
        // The last bit of the quotient may carry the largest ratio beyond itself.
        prop_assume!(diagonal.get() / part.get() <= surface.largest_ratio());
        let there = vickers_flat(load, diagonal, surface, part).unwrap();
        prop_assert!(close(there.shown, hardness));
        let back = vickers_shown(load, there.flat, surface, part).unwrap();
        prop_assert!(close(back.shown, there.shown) && close(back.diagonal.get(), diagonal.get()));
        prop_assert!(close(back.factor, there.factor));
    }

    #[test]
    fn law_factors_move_one_way_from_one(
        surface in select(Surface::ALL.to_vec()), share in 0.001..0.99_f64,
    ) {
        let at = |share: f64| vickers_factor(surface, surface.largest_ratio() * share).unwrap();
        let (here, further) = (at(share), at(share + 0.01));
        let convex = here < 1.0;
        prop_assert_eq!(convex, further < here);
        prop_assert!((0.84..1.16).contains(&here));
        prop_assert!((at(1e-6) - 1.0).abs() < 1e-6);
    }

    #[test]
    fn law_no_number_makes_a_panic(a in any_number(), b in any_number(), count in any::<u32>()) {
        let lengths = [a, b].map(Millimetres::new);
        let load = KilogramsForce::new(b).unwrap_or(kgf(10.0));
        let sphere = BallMillimetres::new(a).unwrap_or(ball(2.5));
        prop_assert_eq!(KilogramsForce::from_newtons(a).is_ok(), (9.806_65e-5..=29_419.95).contains(&a));
        let part = Part {
            thickness: lengths[0].ok(),
            to_edge: lengths[1].ok(),
            to_next: lengths[0].ok(),
            mark: lengths[1].ok(),
            soft_metal: a > b,
        };
        let tests = [
            Test::Vickers { force: load },
            Test::Knoop { force: load },
            Test::Brinell { ball: sphere, force: load },
            Test::Rockwell { scale: Scale::Hrb },
            Test::Rockwell { scale: Scale::Leeb },
        ];
        let sizes: Vec<Millimetres> = lengths.iter().flatten().copied().collect();
        for test in tests {
            let _: String = test.to_string();
            for made in [
                Indentation::at(test, a),
                Indentation::from_sizes(test, &sizes),
                Indentation::from_depth(test, sizes.first().copied().unwrap_or(mm(0.1))),
            ].into_iter().flatten() {
                prop_assert!(made.value.is_finite());
                let on = made.on(part);
                prop_assert!(on.checks.iter().all(|check| check.needed.is_finite() && check.given.is_finite()));
            }
        }
        if let Ok(length) = lengths[0] {
            let _ = (vickers_depth(length).is_ok(), knoop_depth(length).is_ok());
            for surface in Surface::ALL {
                let _ = vickers_flat(load, length, surface, mm(5.0)).is_ok();
                let _ = vickers_shown(load, b, surface, length).is_ok();
            }
            for scale in Scale::ALL {
                for shape in [Convex::Cylinder, Convex::Sphere] {
                    let _ = rockwell_flat(scale, b, length, shape).is_ok();
                    let _ = rockwell_shown(scale, b, length, shape).is_ok();
                }
            }
        }
        for scale in Scale::ALL {
            let _ = (rockwell_depth(scale, a).is_ok(), machine_limits(scale, a).len());
            for instrument in [Instrument::Bench, Instrument::BenchVerified, Instrument::Leeb, Instrument::Uci] {
                let _ = default_standard_uncertainty(instrument, scale, a, Some(load)).is_some();
            }
            let _ = Series::new(scale, &[a, b, a]).map(|made| (made.outlier().is_some(), made.budget(a, b, a).is_ok()));
            if let Ok(reading) = Reading::new(Axis::Hardness(scale), a) {
                let _ = valid_tests(mm(0.6), reading).len();
            }
        }
        let _ = (leeb(a, b).is_ok(), leeb_rebound(a, b).is_ok(), combine(&[a, b]).is_ok());
        let _ = (student_t(a, count).is_ok(), student_t(b, count % 50).is_ok(), window(a));
        let _ = (fitting(a, None).len(), fitting(b, Some(Material::Copper)).len());
        let _ = (force(a, sphere).is_ok(), indices(Material::LightMetal, b).is_some());
    }
}

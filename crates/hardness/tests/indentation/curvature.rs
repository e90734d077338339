//! All cells of all tables of corrections, and factors against SciPy.

use biteband_hardness::indentation::{
    Convex, Error, Side, Surface, rockwell_flat, rockwell_shown, vickers_factor, vickers_flat,
    vickers_shown,
};
use biteband_hardness::{Scale, Seen};

use crate::{kgf, mm, near, reference, rows};

const CAD: &[Scale] = &[Scale::Hrc, Scale::Hra, Scale::Hrd];
const BFG: &[Scale] = &[Scale::Hrb, Scale::Hrf, Scale::Hrg];
const N: &[Scale] = &[Scale::Hr15n, Scale::Hr30n, Scale::Hr45n];
const T: &[Scale] = &[Scale::Hr15t, Scale::Hr30t, Scale::Hr45t];

/// File, scales, cells, largest accepted correction, and whether the cells were read.
const TABLES: [(&str, &[Scale], usize, f64, Seen); 4] = [
    ("cad", CAD, 135, 3.0, Seen::Seen),
    ("bfg", BFG, 77, 5.0, Seen::Seen),
    ("superficial-n", N, 90, 2.0, Seen::Recalled),
    ("superficial-t", T, 56, 5.0, Seen::Recalled),
];

#[test]
fn every_cell_of_the_cylinder_tables() {
    for (name, scales, count, most, seen) in TABLES {
        let table = rows(&format!("data/curvature/{name}.csv"));
        let diameters: Vec<f64> = table[0][1..].iter().map(|text| text.parse().unwrap()).collect();
        let mut cells = 0;
        for row in &table[1..] {
            let reading: f64 = row[0].parse().unwrap();
            for (diameter, cell) in diameters.iter().zip(&row[1..]) {
                let printed: f64 = cell.parse().unwrap();
                cells += 1;
                for scale in scales {
                    let what = format!("{name} {reading} {scale} on {diameter} mm");
                    let made =
                        rockwell_flat(*scale, reading, mm(*diameter), Convex::Cylinder).unwrap();
                    near(made.amount(), printed, 1e-9, &what);
                    assert_eq!(made.accepted, printed <= most, "{what}");
                    assert_eq!(made.cited.seen, seen, "{what}");
                    assert_eq!(made.cited.source.get().unwrap().key(), "astm-e18");
                    assert!(!made.beyond_last && (made.half_width - 0.5).abs() < 1e-12);
                    let back =
                        rockwell_shown(*scale, made.flat, mm(*diameter), Convex::Cylinder).unwrap();
                    near(back.shown, reading, 1e-9, &what);
                }
            }
        }
        assert_eq!(cells, count, "{name}");
    }
}

/// The table of C, A and D is a rounded form of 0.0064 (100 - H)² / D: with the rounding of 0.5 every
/// place between its cells lies within 0.5 of it.
#[test]
fn places_between_the_cells_follow_the_smooth_form() {
    for reading in 20..=90 {
        for tenths in 64..=380 {
            let (reading, diameter) = (f64::from(reading), f64::from(tenths) / 10.0);
            let made = rockwell_flat(Scale::Hrc, reading, mm(diameter), Convex::Cylinder).unwrap();
            let rest = 100.0 - reading;
            let smooth = 0.0064 * rest * rest / diameter;
            near(made.amount(), smooth, 0.5, &format!("{reading} HRC on {diameter} mm"));
        }
    }
}

#[test]
fn beyond_the_last_column_the_correction_fades_to_a_flat() {
    let at = |diameter| rockwell_flat(Scale::Hrc, 20.0, mm(diameter), Convex::Cylinder).unwrap();
    assert!(!at(38.0).beyond_last && at(38.1).beyond_last);
    near(at(38.0).amount(), 1.0, 1e-9, "printed");
    near(at(38.000_001).amount(), 1.0, 1e-6, "no jump");
    near(at(76.0).amount(), 0.5, 1e-9, "half the curvature");
    assert!(at(10_000.0).amount() < 0.004);
}

#[test]
fn every_cell_of_the_sphere() {
    let diameters = [4.0, 6.5, 8.0, 9.5, 11.0, 12.5, 15.0, 20.0, 25.0];
    for row in reference("curvature-rockwell-hrc-sphere.csv") {
        let reading: f64 = row[1].parse().unwrap();
        for (diameter, cell) in diameters.into_iter().zip(&row[2..]) {
            let printed: f64 = cell.parse().unwrap();
            let what = format!("{reading} HRC on a ball of {diameter} mm");
            let made = rockwell_flat(Scale::Hrc, reading, mm(diameter), Convex::Sphere).unwrap();
            near(made.amount(), printed, 0.05 + 1e-9, &what);
            assert_eq!(made.cited.seen, Seen::Recalled);
            let back = rockwell_shown(Scale::Hrc, made.flat, mm(diameter), Convex::Sphere).unwrap();
            near(back.shown, reading, 1e-9, &what);
        }
    }
}

#[test]
fn refusals_of_corrections() {
    let cylinder = |scale, reading, diameter| {
        rockwell_flat(scale, reading, mm(diameter), Convex::Cylinder).unwrap_err()
    };
    assert!(
        matches!(cylinder(Scale::Hrc, 55.0, 6.3), Error::TooSmall { smallest, .. } if smallest > 6.39)
    );
    assert!(matches!(cylinder(Scale::Hrc, 19.9, 10.0), Error::OutsideRoundTable { .. }));
    assert!(matches!(cylinder(Scale::Hrb, 101.0, 10.0), Error::OutsideRoundTable { .. }));
    assert!(matches!(cylinder(Scale::Hrc, f64::NAN, 10.0), Error::OutsideRoundTable { .. }));
    assert!(matches!(cylinder(Scale::Hre, 90.0, 10.0), Error::NoRoundTable { scale: Scale::Hre }));
    assert!(matches!(cylinder(Scale::Hv, 500.0, 10.0), Error::NoRoundTable { .. }));
    let sphere = |scale, reading, diameter| {
        rockwell_flat(scale, reading, mm(diameter), Convex::Sphere).unwrap_err()
    };
    assert!(matches!(sphere(Scale::Hra, 80.0, 10.0), Error::NoRoundTable { .. }));
    assert!(matches!(sphere(Scale::Hrc, 54.9, 10.0), Error::OutsideRoundTable { .. }));
    assert!(matches!(sphere(Scale::Hrc, 60.0, 3.9), Error::TooSmall { .. }));
    // 20 HRC shown on 10 mm is 24.5 on a flat: what is softer is not in the table.
    let softer = rockwell_shown(Scale::Hrc, 24.4, mm(10.0), Convex::Cylinder).unwrap_err();
    assert!(matches!(softer, Error::OutsideRoundTable { low, .. } if (low - 24.5).abs() < 1e-9));
    assert!(rockwell_shown(Scale::Hrc, f64::NAN, mm(10.0), Convex::Cylinder).is_err());
    assert!(rockwell_shown(Scale::Hrc, 50.0, mm(1.0), Convex::Cylinder).is_err());
}

fn surface(name: &str) -> Surface {
    let side = if name.starts_with("convex") { Side::Convex } else { Side::Concave };
    if name.contains("sphere") {
        Surface::Sphere(side)
    } else if name.contains("45") {
        Surface::CylinderAt45(side)
    } else {
        Surface::CylinderAlong(side)
    }
}

#[test]
fn every_cell_of_the_vickers_tables() {
    let cells = reference("curvature-vickers.csv");
    assert_eq!(cells.len(), 153);
    let mut last = Vec::new();
    for cell in &cells {
        let ratio: f64 = cell[1].parse().unwrap();
        let factor = vickers_factor(surface(&cell[0]), ratio).unwrap();
        near(factor, cell[2].parse().unwrap(), 0.0015, &format!("{} {ratio}: print", cell[0]));
        near(factor, cell[3].parse().unwrap(), 0.00006, &format!("{} {ratio}: script", cell[0]));
        last.retain(|(name, _)| *name != cell[0]);
        last.push((cell[0].clone(), ratio));
    }
    assert_eq!(last.len(), 6);
    for (name, ratio) in last {
        near(surface(&name).largest_ratio(), ratio, 1e-12, &name);
        assert!(vickers_factor(surface(&name), ratio + 0.001).is_err());
    }
}

#[test]
fn a_mark_too_long_for_its_surface_is_refused_both_ways() {
    for surface in Surface::ALL {
        // 100 HV10 has a diagonal of 0.43 mm, far beyond a quarter of 1 mm.
        let shown = vickers_shown(kgf(10.0), 100.0, surface, mm(1.0)).unwrap_err();
        let flat = vickers_flat(kgf(10.0), mm(0.43), surface, mm(1.0)).unwrap_err();
        assert!(matches!(shown, Error::TooCurved { ratio, largest } if ratio > largest));
        assert!(matches!(flat, Error::TooCurved { .. }));
        // At the end of the table both ways still answer.
        let end = mm(surface.largest_ratio() * 0.999_999);
        let there = vickers_flat(kgf(10.0), end, surface, mm(1.0)).unwrap();
        let back = vickers_shown(kgf(10.0), there.flat, surface, mm(1.0)).unwrap();
        near(back.diagonal.get(), end.get(), 1e-9, "diagonal");
        assert_eq!(there.cited.source.get().unwrap().key(), "vickers-geometry");
    }
}

#[test]
fn factors_are_those_of_an_independent_integration() {
    for row in reference("factors.csv") {
        let surface = surface(&format!("{} {}", row[1], row[0]));
        let ratio: f64 = row[2].parse::<f64>().unwrap().min(surface.largest_ratio());
        let factor = vickers_factor(surface, ratio).unwrap();
        near(factor, row[3].parse().unwrap(), 5e-7, &format!("{surface:?} {ratio}"));
    }
}

//! Every row of `tests/reference/indentation/checks.csv`. The inputs stand here, the expected numbers are
//! read from the file: the published answer, or where none is printed the number of a separate script.

use std::collections::BTreeSet;
use std::f64::consts::FRAC_PI_2;

use biteband_hardness::indentation::{
    Convex, Indentation, Part, Rule, Series, Side, Surface, Test, brinell, brinell_diameter,
    combine, knoop, leeb, rockwell, rockwell_flat, vickers, vickers_depth, vickers_diagonal,
    vickers_flat, window,
};
use biteband_hardness::{Axis, Choice, Reading, Scale, convert};

use crate::{ball, kgf, mm, near, newtons, reference};

/// Which column of the file holds the expected numbers.
#[derive(Clone, Copy)]
enum Expected {
    Published,
    Computed,
}
use Expected::{Computed, Published};

struct Checks {
    rows: Vec<Vec<String>>,
    done: BTreeSet<String>,
}

impl Checks {
    /// Compares our numbers with the first numbers of a row's column.
    fn row(&mut self, id: u32, column: Expected, within: f64, ours: &[f64]) {
        let row = self.rows.iter().find(|row| row[0] == id.to_string()).unwrap();
        let text = &row[match column {
            Published => 3,
            Computed => 4,
        }];
        let expected = numbers(text);
        assert!(expected.len() >= ours.len() && !ours.is_empty(), "row {id}: {text}");
        for (value, expected) in ours.iter().zip(expected) {
            near(*value, expected, within, &format!("row {id}: {}", row[2]));
        }
        self.done.insert(row[0].clone());
    }
}

/// The numbers of a text in their order; digits inside a word, as in HV10, count too but come last.
fn numbers(text: &str) -> Vec<f64> {
    text.split(|c: char| !c.is_ascii_digit() && c != '.')
        .filter_map(|word| word.parse().ok())
        .collect()
}

fn thinnest(test: Test, value: f64, rules: usize) -> Vec<f64> {
    let part = Part { thickness: Some(mm(1.0)), ..Part::default() };
    let made = Indentation::at(test, value).unwrap().on(part);
    let needed: Vec<f64> = (made.checks.iter())
        .filter(|check| matches!(check.rule, Rule::Thickness { .. }))
        .map(|check| check.needed)
        .collect();
    assert_eq!(needed.len(), rules);
    needed
}

#[test]
fn every_row_of_the_checks() {
    let mut checks = Checks { rows: reference("checks.csv"), done: BTreeSet::new() };
    assert_eq!(checks.rows.len(), 60);
    vickers_rows(&mut checks);
    brinell_rows(&mut checks);
    rockwell_rows(&mut checks);
    other_rows(&mut checks);
    tensile_rows(&mut checks);
    let left: Vec<&String> =
        checks.rows.iter().map(|row| &row[0]).filter(|id| !checks.done.contains(*id)).collect();
    assert!(left.is_empty(), "rows without a check: {left:?}");
}

fn vickers_rows(checks: &mut Checks) {
    checks.row(1, Published, 0.5, &[vickers(newtons(98.07), mm(0.15))]);
    let on_ball =
        vickers_flat(newtons(98.07), mm(0.15), Surface::Sphere(Side::Convex), mm(10.0)).unwrap();
    checks.row(2, Published, 0.5, &[on_ball.flat]);
    // The file multiplies the rounded 824 with its factor.
    checks.row(2, Computed, 0.3, &[on_ball.flat]);
    checks.row(3, Published, 0.5, &[vickers(newtons(294.2), mm(0.415))]);
    let in_bore =
        vickers_flat(newtons(294.2), mm(0.415), Surface::CylinderAlong(Side::Concave), mm(5.0))
            .unwrap();
    checks.row(4, Published, 0.5, &[in_bore.flat]);
    checks.row(4, Computed, 0.3, &[in_bore.flat]);
    checks.row(5, Published, 0.00005, &[vickers(newtons(1.0), mm(1.0))]);
    checks.row(5, Computed, 0.000_001, &[vickers(newtons(1.0), mm(1.0))]);
    checks.row(6, Published, 0.00005, &[vickers(kgf(1.0), mm(1.0))]);
    checks.row(7, Published, 0.0005, &[vickers_depth(mm(0.35)).unwrap().get()]);
    checks.row(8, Published, 0.05, &[kgf(30.0).newtons()]);
    checks.row(9, Published, 0.005, &[kgf(10.0).newtons()]);
    checks.row(10, Computed, 0.00005, &[vickers_diagonal(kgf(30.0), 640.0).unwrap().get()]);
    checks.row(11, Computed, 0.05, &[vickers(kgf(10.0), mm(0.2))]);
}

fn brinell_rows(checks: &mut Checks) {
    checks.row(12, Published, 0.5, &[brinell(ball(10.0), kgf(500.0), mm(1.62)).unwrap()]);
    let diameter = brinell_diameter(ball(10.0), kgf(500.0), 450.0).unwrap();
    checks.row(13, Published, 0.005, &[diameter.get()]);
    for (id, diameter, within) in [
        (14, 2.4, 0.5),
        (15, 2.5, 0.5),
        (16, 3.0, 0.5),
        (17, 3.5, 0.5),
        (18, 4.0, 0.5),
        (19, 4.5, 0.5),
        (20, 5.0, 0.5),
        (21, 5.5, 0.5),
        (22, 6.0, 0.05),
    ] {
        let value = brinell(ball(10.0), kgf(3000.0), mm(diameter)).unwrap();
        checks.row(id, Published, within, &[value]);
        checks.row(id, Computed, 0.006, &[value]);
    }
    checks.row(23, Published, 0.5, &[window(30.0).1]);
    checks.row(24, Published, 0.05, &[window(30.0).0]);
    for (id, index) in [(25, 10.0), (26, 5.0), (27, 2.5)] {
        let (low, high) = window(index);
        checks.row(id, Computed, 0.06, &[high, low]);
    }
    let force = |index, diameter| {
        biteband_hardness::indentation::force(index, ball(diameter)).unwrap().newtons()
    };
    checks.row(28, Published, 0.05, &[force(30.0, 1.0)]);
    checks.row(29, Published, 0.0005, &[force(30.0, 2.5) / 1000.0]);
    checks.row(30, Published, 0.0005, &[force(30.0, 5.0) / 1000.0]);
    checks.row(31, Published, 0.005, &[force(30.0, 10.0) / 1000.0]);
    let small = Indentation::at(Test::brinell(1.0, 30.0).unwrap(), 600.0).unwrap();
    checks.row(32, Computed, 0.000_006, &[small.depth.get()]);
    near(thinnest(small.test, 600.0, 2)[0], 0.127, 0.0005, "row 32: eight depths");
    checks.row(33, Computed, 0.005, &thinnest(Test::brinell(10.0, 3000.0).unwrap(), 200.0, 2));
}

fn rockwell_rows(checks: &mut Checks) {
    checks.row(34, Published, 1e-9, &[rockwell(Scale::Hrc, mm(0.072)).unwrap()]);
    checks.row(35, Published, 1e-9, &[rockwell(Scale::Hr30n, mm(0.082)).unwrap()]);
    checks.row(36, Computed, 1e-9, &[rockwell(Scale::Hrb, mm(0.1)).unwrap()]);
    for (id, scale, value) in [
        (37, Scale::Hrc, 60.0),
        (38, Scale::Hrc, 20.0),
        (39, Scale::Hrb, 80.0),
        (40, Scale::Hr30n, 80.0),
    ] {
        checks.row(id, Computed, 1e-9, &thinnest(Test::rockwell(scale).unwrap(), value, 1));
    }
    let cylinder = |scale, reading, diameter| {
        rockwell_flat(scale, reading, mm(diameter), Convex::Cylinder).unwrap()
    };
    for (id, scale, reading, diameter) in
        [(41, Scale::Hrc, 55.0, 10.0), (42, Scale::Hrc, 30.0, 6.4), (44, Scale::Hrb, 80.0, 13.0)]
    {
        let made = cylinder(scale, reading, diameter);
        checks.row(id, Published, 1e-9, &[made.amount(), made.flat]);
    }
    // The published interpolation starts its first column at 6 mm where ASTM E18 has 6.4: 1.28 for 1.25.
    checks.row(43, Published, 0.03, &[cylinder(Scale::Hrc, 60.0, 8.0).amount()]);
    let sphere = rockwell_flat(Scale::Hrc, 60.0, mm(10.0), Convex::Sphere).unwrap();
    checks.row(45, Computed, 0.006, &[sphere.amount()]);
}

fn other_rows(checks: &mut Checks) {
    checks.row(46, Published, 0.0005, &[knoop(newtons(1.0), mm(1.0))]);
    // The file's 0.9807 N and 4.903 N are 0.1 and 0.5 kgf, and its constant has the rounded 0.102.
    checks.row(47, Computed, 0.5, &[knoop(newtons(0.9807), mm(0.05))]);
    checks.row(48, Computed, 0.5, &[knoop(newtons(4.903), mm(0.1))]);
    checks.row(49, Computed, 0.05, &[leeb(2.05, 1.2).unwrap().0]);
    let block = Series::new(Scale::Hrc, &[40.61, 40.72, 40.65, 40.61, 40.55]).unwrap();
    checks.row(50, Published, 0.005, &[block.mean(), block.spread().unwrap().range]);
    let budget = combine(&[0.54, 0.15, 0.08, 0.53, 0.03]).unwrap();
    checks.row(51, Published, 0.005, &[budget.expanded]);
    // ISO 6508-1 takes the permitted machine error over 2.8.
    near(1.5 / 2.8, 0.54, 0.005, "row 51: machine");
    let days = [[60.9, 61.0, 61.1, 61.1, 60.7], [60.7, 60.8, 61.1, 61.0, 60.8]];
    let means = days.map(|day| Series::new(Scale::Hrc, &day).unwrap().mean());
    checks.row(52, Computed, 0.005, &means);
    let between = Series::new(Scale::Hrc, &means).unwrap().spread().unwrap();
    checks.row(52, Published, 0.005, &[between.deviation, between.of_mean_widened]);
}

/// ISO 18265 Table A.1 by the library's own conversion, and the relation that is not in it.
fn tensile_rows(checks: &mut Checks) {
    let strength = |vickers: f64| {
        let reading = Reading::new(Axis::Hardness(Scale::Hv), vickers).unwrap();
        let made = convert(reading, Axis::Tensile, Choice::STEEL).unwrap();
        assert_eq!(made.table.get().unwrap().key(), "iso-18265-a1");
        made.at.value
    };
    let rows =
        [(53, 80.0), (54, 200.0), (55, 300.0), (56, 400.0), (57, 480.0), (58, 600.0), (59, 650.0)];
    for (id, vickers) in rows {
        checks.row(id, Published, 1e-9, &[strength(vickers)]);
    }
    // E. J. Pavlina and C. J. Van Tyne, J. Mater. Eng. Perform. 17 (2008). Not in the library: on 360
    // measured heats it reads 77 MPa high where ISO 18265 reads 25 MPa high. Its own standard error,
    // recalled as 112 MPa, holds the difference between the two.
    let relation = -99.8 + 3.734 * 240.0;
    checks.row(60, Computed, 0.05, &[relation]);
    assert!((relation - strength(240.0)).abs() < 112.0);
    assert!(relation > strength(240.0));
}

/// The angle of the Vickers diamond gives the depth by another way than the formula's seventh.
#[test]
fn depth_of_a_vickers_mark_is_half_its_side_over_the_tangent() {
    let side = 0.35 / 2.0_f64.sqrt();
    let expected = side / 2.0 * (FRAC_PI_2 - 68.0_f64.to_radians()).tan();
    near(vickers_depth(mm(0.35)).unwrap().get(), expected, 1e-12, "depth");
}

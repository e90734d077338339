//! Several readings, against SciPy, JCGM 100 and ISO 6508-1.

use biteband_hardness::Scale;
use biteband_hardness::indentation::{Error, Series, combine, student_t};

use crate::{near, reference};

#[test]
fn students_t_is_that_of_scipy() {
    let rows = reference("student.csv");
    assert_eq!(rows.len(), 150);
    for row in rows {
        let (freedom, chance): (u32, f64) = (row[0].parse().unwrap(), row[1].parse().unwrap());
        let expected: f64 = row[2].parse().unwrap();
        let found = student_t(chance, freedom).unwrap();
        near(found / expected, 1.0, 1e-9, &format!("t of {chance} with {freedom}"));
    }
}

/// A series of readings of which all but one alternate about a mean shows the critical distance.
#[test]
fn critical_distances_are_those_of_scipy() {
    for row in reference("grubbs.csv") {
        let (count, expected): (usize, f64) = (row[0].parse().unwrap(), row[1].parse().unwrap());
        let mut readings: Vec<f64> =
            (0..count).map(|k| if k % 2 == 0 { 50.0 } else { 50.001 }).collect();
        readings[count / 2] = 60.0;
        let found = Series::new(Scale::Hrc, &readings).unwrap().outlier().unwrap();
        near(found.critical, expected, 1e-9, &format!("{count} readings"));
        assert_eq!(found.index, count / 2);
        near(found.value, 60.0, 1e-12, "value");
        assert!(found.distance > found.critical);
    }
}

/// JCGM 100, H.6, read: 0.5 for the scale, 0.20 for five repeated depths, 0.11 for the block, display step
/// 0.1: 0.55 HRC at 64.0 HRC.
#[test]
fn budget_of_jcgm_100() {
    let budget = combine(&[0.5, 0.20, 0.11, 0.1 / 12.0_f64.sqrt()]).unwrap();
    near(budget.combined, 0.55, 0.005, "combined");
    near(budget.expanded, 1.1, 0.01, "expanded");
    assert_eq!(budget.largest, 0);
    // The block's part: a range of 0.015 of the depth of 36 units, triangular, over the root of 24.
    near(0.015 * 36.0 / 24.0_f64.sqrt(), 0.11, 0.005, "block");
}

/// ISO 6508-1:2005, annex: five readings of 61 HRC, display step 0.1, machine 0.54, reference block 0.15 and
/// the tester's own repeatability 0.08: 1.14 is the factor for five readings.
#[test]
fn budget_of_a_series() {
    let day = Series::new(Scale::Hrc, &[60.9, 61.0, 61.1, 61.1, 60.7]).unwrap();
    let spread = day.spread().unwrap();
    near(spread.of_mean_widened / spread.of_mean, 1.14, 0.005, "factor");
    near(spread.deviation, 0.1673, 0.0001, "deviation");
    near(spread.half_width_95 / spread.of_mean, 2.776, 0.001, "Student's t for four");
    let budget = day.budget(0.54, 0.15, 0.1).unwrap();
    near(
        budget.combined.powi(2),
        0.54_f64.powi(2) + 0.15_f64.powi(2) + 0.0853_f64.powi(2) + 0.0289_f64.powi(2),
        1e-4,
        "squares",
    );
    assert_eq!(budget.largest, 1);
    assert_eq!(day.scale(), Scale::Hrc);
    assert_eq!(day.readings().len(), 5);
}

#[test]
fn one_reading_has_no_spread_and_two_no_outlier() {
    let one = Series::new(Scale::Hrc, &[60.0]).unwrap();
    assert!(one.spread().is_none() && one.outlier().is_none());
    near(one.budget(0.5, 0.0, 0.0).unwrap().combined, 0.5, 1e-12, "machine alone");
    let two = Series::new(Scale::Hrc, &[60.0, 50.0]).unwrap();
    assert!(two.spread().is_some() && two.outlier().is_none());
    let same = Series::new(Scale::Hrc, &[60.1; 7]).unwrap();
    assert!(same.outlier().is_none());
    near(same.spread().unwrap().range, 0.0, 0.0, "range");
}

#[test]
fn series_and_budgets_that_are_refused() {
    assert!(matches!(Series::new(Scale::Hrc, &[]), Err(Error::ReadingCount { given: 0, .. })));
    assert!(Series::new(Scale::Hrc, &[60.0; 1000]).is_ok());
    assert!(Series::new(Scale::Hrc, &[60.0; 1001]).is_err());
    assert!(matches!(Series::new(Scale::Hrc, &[60.0, f64::NAN]), Err(Error::Hardness(_))));
    assert!(matches!(Series::new(Scale::Hrc, &[60.0, 99.0]), Err(Error::Hardness(_))));
    assert!(matches!(combine(&[]), Err(Error::ReadingCount { .. })));
    for bad in [-0.1, f64::NAN, f64::INFINITY, 1e300] {
        assert!(matches!(combine(&[0.5, bad]), Err(Error::Uncertainty { .. })));
    }
    for (chance, freedom) in [(0.0, 4), (1.0, 4), (f64::NAN, 4), (0.95, 0), (0.95, 1001)] {
        assert!(matches!(student_t(chance, freedom), Err(Error::NoQuantile { .. })));
    }
}

//! The exact words of every refusal. A new variant does not compile until it stands here.

use std::collections::BTreeSet;

use biteband_hardness::Scale;
use biteband_hardness::indentation::{
    Convex, Error, Indentation, Series, Side, Surface, Test, brinell_diameter, combine, leeb,
    rockwell_depth, rockwell_flat, student_t, vickers_diagonal, vickers_factor,
};
use biteband_quantity::Millimetres;

use crate::{ball, kgf, mm};

/// The code that each refusal must carry.
fn code(error: &Error) -> &'static str {
    match error {
        Error::Quantity(_) => "quantity.out_of_bounds",
        Error::Hardness(inside) => inside.code(),
        Error::NotAHardness { .. } => "indentation.not_a_hardness",
        Error::SizeCount { .. } => "indentation.size_count",
        Error::UnequalDiagonals { .. } => "indentation.unequal_diagonals",
        Error::NotBelowBall { .. } => "indentation.not_below_ball",
        Error::BallSinks { .. } => "indentation.ball_sinks",
        Error::NotByDepth { .. } => "indentation.not_by_depth",
        Error::NotBySize { .. } => "indentation.not_by_size",
        Error::NoDepth { .. } => "indentation.no_depth",
        Error::Velocity { .. } => "indentation.velocity",
        Error::NoRoundTable { .. } => "indentation.no_round_table",
        Error::TooSmall { .. } => "indentation.too_small",
        Error::OutsideRoundTable { .. } => "indentation.outside_round_table",
        Error::TooCurved { .. } => "indentation.too_curved",
        Error::ReadingCount { .. } => "indentation.reading_count",
        Error::Uncertainty { .. } => "indentation.uncertainty",
        Error::NoQuantile { .. } => "indentation.no_quantile",
    }
}
const CODES: usize = 18;

#[test]
fn message_of_every_refusal() {
    let vickers = Test::vickers(10.0).unwrap();
    let brinell = Test::brinell(10.0, 500.0).unwrap();
    let cone = Test::rockwell(Scale::Hrc).unwrap();
    let cylinder = |scale, reading, diameter| {
        rockwell_flat(scale, reading, mm(diameter), Convex::Cylinder).unwrap_err()
    };
    let cases: Vec<(Error, &str)> = vec![
        (
            Millimetres::new(-1.0).map_err(Error::from).unwrap_err(),
            "length of -1 mm is outside 0.000001 to 10000 mm: from a nanometre of depth to the largest part in a shop",
        ),
        (
            Series::new(Scale::Hrc, &[60.0, 90.0]).unwrap_err(),
            "90 HRC is outside the scale, which runs from 10 to 70",
        ),
        (
            vickers_diagonal(kgf(10.0), 0.0).unwrap_err(),
            "a hardness of 0 is not a finite number above nought",
        ),
        (
            Indentation::from_sizes(vickers, &[]).unwrap_err(),
            "0 sizes were given; a reading is made from one or two",
        ),
        (
            Indentation::from_sizes(vickers, &[mm(0.2), mm(0.22)]).unwrap_err(),
            "diagonals of 0.2 and 0.22 mm differ by more than 5 % of their mean",
        ),
        (
            Indentation::from_sizes(brinell, &[mm(10.0)]).unwrap_err(),
            "an indentation of 10 mm is not smaller than its ball of 10 mm",
        ),
        (
            brinell_diameter(ball(10.0), kgf(3000.0), 3.0).unwrap_err(),
            "at 3 HBW the ball of 10 mm sinks in beyond its half; this test ends at 19.098593171 HBW",
        ),
        (Test::rockwell(Scale::Hv).unwrap_err(), "HV is not measured by a depth"),
        (
            Indentation::from_sizes(cone, &[mm(0.4)]).unwrap_err(),
            "HRC is not measured by the size of a mark",
        ),
        (
            rockwell_depth(Scale::Hrb, 130.0).unwrap_err(),
            "130 HRB has no depth; the scale is 130 at no depth at all",
        ),
        (
            leeb(2.05, 2.1).unwrap_err(),
            "a rebound of 2.1 m/s after an impact of 2.05 m/s does not happen",
        ),
        (cylinder(Scale::Hre, 80.0, 10.0), "no correction for HRE on this shape is known here"),
        (
            cylinder(Scale::Hrc, 60.0, 5.0),
            "a diameter of 5 mm is below the 6.4 mm where corrections of HRC begin",
        ),
        (
            cylinder(Scale::Hrc, 15.0, 10.0),
            "15 HRC is outside the corrections for this diameter, which serve 20 to 90",
        ),
        (
            vickers_factor(Surface::Sphere(Side::Concave), 0.2).unwrap_err(),
            "a diagonal of 0.2 times the diameter is beyond the 0.094 of the printed table",
        ),
        (Series::new(Scale::Hrc, &[]).unwrap_err(), "0 readings were given; 1 to 1000 are needed"),
        (
            combine(&[0.5, -0.1]).unwrap_err(),
            "a standard uncertainty of -0.1 is not a finite number from nought up",
        ),
        (
            student_t(0.95, 0).unwrap_err(),
            "Student's t has no limit for a chance of 0.95 with 0 degrees of freedom",
        ),
    ];
    let mut codes = BTreeSet::new();
    for (error, text) in &cases {
        assert_eq!(error.to_string(), *text);
        assert_eq!(error.code(), code(error), "{text}");
        assert!(!text.contains('\n') && !text.ends_with('.'));
        codes.insert(error.code());
    }
    assert_eq!(codes.len(), CODES);
}

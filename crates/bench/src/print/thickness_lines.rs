//! The lines of the thickness chart, by the rules of the tests.

use biteband_hardness::indentation::{Error, Indentation, Test};
use biteband_hardness::{Axis, Choice, Reading, Scale, Seen, convert};

use super::thickness::{Line, thickness};
use super::{Paper, Sheet};
use crate::answer::standard;
use crate::words::{Language, Print};

/// Hardness at the soft and the hard end of the chart, HRC.
const ENDS: (u16, u16) = (20, 65);

/// The tests of the chart.
fn tests() -> impl Iterator<Item = Test> {
    let rockwell =
        [Scale::Hrc, Scale::Hra, Scale::Hr30n, Scale::Hr15n].into_iter().map(Test::rockwell);
    let brinell =
        [(10.0, 3000.0), (2.5, 187.5)].into_iter().map(|(ball, kgf)| Test::brinell(ball, kgf));
    let vickers = [30.0, 10.0, 1.0].into_iter().map(Test::vickers);
    rockwell.chain(vickers).chain(brinell).filter_map(Result::ok)
}

/// The thinnest section of the usual tests at every quarter of a point from 20 to 65 HRC: the strictest of the rules that are
/// known, and none where no table reaches the test's scale or the test leaves its own range.
///
/// # Example
/// ```
/// use biteband_bench::print::thickness_lines;
/// let lines = thickness_lines();
/// let cone = lines.iter().find(|line| line.label == "HRC").unwrap();
/// // Ten depths at 60 HRC.
/// assert!(cone.points.iter().any(|&(hrc, mm)| hrc == 60.0 && (mm - 0.8).abs() < 1e-9));
/// ```
#[must_use]
pub fn thickness_lines() -> Vec<Line> {
    let line = |test: Test| Line {
        label: test.to_string(),
        // Quarters of a point, so that a step of the printed table stands where it is.
        points: (4 * ENDS.0..=4 * ENDS.1)
            .filter_map(|quarters| point(test, f64::from(quarters) / 4.0))
            .collect(),
    };
    tests().map(line).collect()
}

fn point(test: Test, hrc: f64) -> Option<(f64, f64)> {
    let made = at(test, hrc).ok().filter(Indentation::valid)?;
    let needed = made.thinnest().map(|(_, needed, _)| needed).fold(0.0, f64::max);
    Some((hrc, needed))
}

/// The mark of a test on a part of this hardness.
fn at(test: Test, hrc: f64) -> Result<Indentation, Error> {
    let own = Axis::Hardness(Scale::Hrc);
    let axis = Axis::Hardness(test.scale());
    let value = if axis == own {
        hrc
    } else {
        convert(Reading::new(own, hrc)?, axis, Choice::STEEL)?.at.value
    };
    Indentation::at(test, value)
}

/// The chart of the usual tests, with the rules and whose they are at its foot.
#[must_use]
pub fn usual_thickness(language: Language, paper: Paper) -> Sheet {
    let mut rules: Vec<(String, Seen)> = Vec::new();
    for test in tests() {
        let Ok(made) = at(test, 50.0) else { continue };
        for (_, _, cited) in made.thinnest() {
            let Some(source) = cited.source.get() else { continue };
            let name = standard(source);
            if !rules.iter().any(|known| known.0 == name) {
                rules.push((name, cited.seen));
            }
        }
    }
    let named: Vec<String> = rules
        .into_iter()
        .map(|(name, seen)| if seen == Seen::Recalled { format!("{name}†") } else { name })
        .collect();
    let notes = [
        language.print(Print::ThicknessRules { named: &named.join(", ") }).into_owned(),
        language.print(Print::ThicknessSteps).into_owned(),
    ];
    thickness(language, paper, &thickness_lines(), &notes)
}

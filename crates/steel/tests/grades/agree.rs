//! What must agree between the cells of a row.

use std::collections::BTreeSet;
use std::path::Path;

use biteband_steel::condition::{self, PhAge};
use biteband_steel::{Element, Family, Grade, Hardening, Interval, TemperMethod, target};

/// Initial hardness of the end-quench test in HRC from carbon in mass percent, ASTM A255, used up to 0.70.
fn initial_hardness(carbon: f64) -> f64 {
    let c = carbon.clamp(0.10, 0.70);
    33.087 + 50.723 * c + 33.662 * c.powi(2) - 2.7048 * c.powi(3) - 107.02 * c.powi(4)
        + 43.523 * c.powi(5)
}

/// Secondary hardening lifts these above their hardness as quenched.
const SECONDARY: [&str; 9] = ["H11", "H13", "M2", "M42", "T1", "A2", "D2", "X153CrMoV12", "D3"];

fn inside(range: Option<Interval>, low: f64, high: f64) -> bool {
    range.is_none_or(|range| low <= range.low && range.low <= range.high && range.high <= high)
}

#[test]
fn the_equation_is_that_of_the_standard() {
    // Sums done by hand from the printed coefficients; 0.7 C is the last carbon of the standard's table.
    for (carbon, expected) in [(0.20, 44.40), (0.40, 56.30), (0.60, 64.57)] {
        assert!((initial_hardness(carbon) - expected).abs() < 0.02, "{carbon}");
    }
}

#[test]
fn ranges_run_upward_and_stay_plausible() {
    for grade in Grade::all() {
        let at = grade.key();
        assert!(inside(grade.window(), 700.0, 1320.0), "{at}");
        assert!(inside(grade.temper_range(), 90.0, 700.0), "{at}");
        assert!(inside(grade.avoid(), 150.0, 650.0), "{at}");
        assert!(inside(grade.as_quenched(), 20.0, 69.0), "{at}");
        assert!(inside(grade.working(), 18.0, 69.0), "{at}");
        assert!(grade.preheat().iter().all(|step| inside(Some(*step), 300.0, 900.0)), "{at}");
        let supplied = grade.supplied();
        let (low, high) = (supplied.min.unwrap_or(80.0), supplied.max.unwrap_or(480.0));
        assert!((80.0..=480.0).contains(&low) && low <= high && high <= 480.0, "{at}");
        assert!(supplied.typical.is_none_or(|typical| low <= typical && typical <= high), "{at}");
        if grade.avoid().is_some() {
            assert!(!grade.avoid_why().is_empty(), "{at}");
        }
    }
}

#[test]
fn tempering_stays_below_hardening_and_preheat_too() {
    for grade in Grade::all() {
        let Some(window) = grade.window() else { continue };
        assert!(grade.temper_range().is_none_or(|temper| temper.high < window.low));
        assert!(grade.preheat().iter().all(|step| step.high < window.high), "{}", grade.key());
    }
}

#[test]
fn as_quenched_is_what_the_carbon_allows() {
    let mut checked = 0;
    for grade in Grade::all() {
        let hardens = matches!(grade.hardening(), Hardening::Through | Hardening::Case);
        let Some(hard) = grade.as_quenched().filter(|_| hardens) else { continue };
        let carbon = grade.limits().range(Element::C).unwrap();
        // Case grades: EN 10084 itself allows 16MnCr5+H 47 HRC at 1.5 mm, 3.2 above the equation.
        let wide = grade.family() == Family::Stainless || grade.hardening() == Hardening::Case;
        let tolerance = if wide { 4.0 } else { 3.0 };
        let most = if carbon.high <= 0.70 {
            (initial_hardness(carbon.high) + tolerance).min(69.0)
        } else {
            69.0
        };
        assert!(hard.high <= most, "{}: {} above {most}", grade.key(), hard.high);
        checked += 1;
    }
    assert!(checked > 60, "{checked}");
}

#[test]
fn no_grade_works_harder_than_it_quenches() {
    for grade in Grade::all().iter().filter(|grade| grade.hardening() == Hardening::Through) {
        let (Some(work), Some(hard)) = (grade.working(), grade.as_quenched()) else { continue };
        let lift = if SECONDARY.contains(&grade.key()) { 3.0 } else { 0.0 };
        assert!(work.high <= hard.high + lift, "{}", grade.key());
    }
}

#[test]
fn a_grade_that_does_not_harden_carries_no_such_number() {
    for grade in Grade::all() {
        let at = grade.key();
        if grade.hardening() == Hardening::None {
            assert!(grade.window().is_none() && grade.temper_range().is_none(), "{at}");
            assert!(grade.as_quenched().is_none() && grade.working().is_none(), "{at}");
            assert!(grade.quenchants().is_empty() && grade.preheat().is_empty(), "{at}");
            assert_eq!(grade.temper_method(), TemperMethod::None, "{at}");
        } else {
            assert!(!grade.quenchants().is_empty(), "{at}");
            assert_ne!(grade.temper_method(), TemperMethod::None, "{at}");
            let ages = grade.temper_method() == TemperMethod::AgeTable;
            assert_eq!(ages, grade.hardening() == Hardening::Age, "{at}");
        }
    }
}

#[test]
fn the_regression_is_used_inside_its_range_only() {
    // The composition range of the open tempering data set behind the regression.
    let range = [
        (Element::Mn, 1.85),
        (Element::Ni, 3.41),
        (Element::Cr, 1.57),
        (Element::Mo, 0.36),
        (Element::V, 0.16),
    ];
    for grade in Grade::all().iter().filter(|g| g.temper_method() == TemperMethod::Regression) {
        let limits = grade.limits();
        for (element, most) in range {
            let least = limits.stated(element).0.unwrap_or(0.0);
            assert!(least <= most, "{}: {element}", grade.key());
        }
        assert_eq!(limits.stated(Element::W).0, None, "{}", grade.key());
    }
}

#[test]
fn keys_and_names_are_one_of_a_kind() {
    let mut keys = BTreeSet::new();
    let mut names = BTreeSet::new();
    for grade in Grade::all() {
        assert!(keys.insert(grade.key().to_uppercase()), "{}", grade.key());
        assert!(names.insert(grade.name().to_lowercase()), "{}", grade.name());
        if let Some(curve) = grade.curve_from() {
            assert!(Grade::by_key(curve).is_some(), "{}", grade.key());
        }
    }
}

#[test]
fn a_struck_tool_never_comes_without_its_caution() {
    for row in target::all() {
        let part: Vec<_> =
            target::all().iter().filter(|other| other.part() == row.part()).collect();
        let struck = part
            .iter()
            .any(|zone| zone.zone().contains("struck") || zone.caution().contains("struck tool"));
        if struck {
            assert!(!row.caution().is_empty(), "{}, {}", row.part(), row.zone());
            assert!(row.hrc().1.is_some(), "{}, {}", row.part(), row.zone());
        }
        // ASME B107.47, clause 4.3: a struck end of 45 HRC at most.
        if row.zone() == "struck end" {
            assert!(row.hrc().1.unwrap() <= 45.0, "{}", row.part());
        }
    }
}

#[test]
fn targets_run_upward_and_ask_no_hardness_of_what_does_not_harden() {
    for row in target::all() {
        let (low, high) = row.hrc();
        let at = (row.part(), row.zone());
        for end in [low, high].into_iter().flatten() {
            assert!((14.0..=70.0).contains(&end), "{at:?}");
        }
        assert!(low.zip(high).is_none_or(|(low, high)| low <= high), "{at:?}");
        assert!(low.is_some() || high.is_some(), "{at:?}");
        for grade in row.grades() {
            let soft = grade.hardening() == Hardening::None;
            assert!(!soft || low.unwrap_or(0.0) <= 25.0, "{at:?}: {}", grade.key());
        }
    }
}

#[test]
fn conditions_run_one_way() {
    let ages: Vec<f64> = condition::ph_ages().iter().filter_map(PhAge::hrc_min).collect();
    assert!(ages.is_sorted_by(|harder, softer| harder > softer));
    let letters = condition::bs_letters();
    assert!(letters.is_sorted_by(|soft, hard| soft.hbw().0 < hard.hbw().0));
    // Strength over hardness of hardened and tempered steel lies near 3.4 MPa for one HBW (ISO 18265 A.1).
    for letter in letters {
        let ratio = letter.tensile().0 / letter.hbw().0;
        assert!((3.2..3.6).contains(&ratio), "{}: {ratio}", letter.letter());
        assert!(letter.hbw().1.is_none_or(|high| high > letter.hbw().0));
    }
}

/// ISO 898-1, how its classes are named: the figure before the point is a hundredth of the nominal strength in MPa. Least
/// strength and hardness by its tables, `tests/reference/tables/checkpoints.csv`: the least strength is the nominal one or
/// up to 40 MPa more.
#[test]
fn classes_of_bolts_are_named_by_their_strength() {
    for class in condition::bolt_classes() {
        let (hundreds, _) = class.name().split_once('.').unwrap();
        let named = 100.0 * hundreds.parse::<f64>().unwrap();
        assert!((class.tensile() - named).abs() < 1e-9, "{}", class.name());
    }
    let path = "../../tests/reference/tables/checkpoints.csv";
    let text = std::fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join(path)).unwrap();
    let mut counted = 0;
    for line in text.lines().filter(|line| line.contains("ISO 898-1") && line.contains("Rm_MPa")) {
        let class = line.split("class ").nth(1).and_then(|rest| rest.split(' ').next()).unwrap();
        let least: f64 = line
            .split("Rm_MPa,")
            .nth(1)
            .and_then(|rest| rest.split(',').next())
            .unwrap()
            .parse()
            .unwrap();
        let nominal = condition::bolt(class).unwrap().tensile();
        assert!((0.0..=40.0).contains(&(least - nominal)), "{class}: {least}");
        counted += 1;
    }
    assert_eq!(counted, 4);
}

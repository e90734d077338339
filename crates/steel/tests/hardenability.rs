//! Hardenability against the standard's example, published H-bands and an independent working.

#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use std::collections::BTreeMap;

use biteband_steel::Element::{B, C, Co, Cr, Cu, Mn, Mo, Ni, Si, V, W};
use biteband_steel::hardenability::{
    Band, Curve, DEEP, EndQuench, Error, HEAT_ERROR, Method, Note, distance_factor,
    fifty_percent_martensite, h_band_of, h_bands, ideal_diameter, initial_hardness,
};
use biteband_steel::{Composition, CompositionLimits, Element, Grade, source};
use proptest::prelude::*;

/// A sixteenth of an inch in millimetres.
const SIXTEENTH: f64 = 25.4 / 16.0;

fn read(path: &str) -> Vec<BTreeMap<String, String>> {
    let path = format!("{}/../../{path}", env!("CARGO_MANIFEST_DIR"));
    let mut reader = csv::ReaderBuilder::new().comment(Some(b'#')).from_path(path).unwrap();
    reader.deserialize().map(Result::unwrap).collect()
}

fn reference(name: &str) -> Vec<BTreeMap<String, String>> {
    read(&format!("tests/reference/hardenability/{name}"))
}

fn number(row: &BTreeMap<String, String>, name: &str) -> f64 {
    row.get(name).unwrap().parse().unwrap()
}

fn optional(row: &BTreeMap<String, String>, name: &str) -> Option<f64> {
    row.get(name).filter(|text| !text.is_empty()).map(|text| text.parse().unwrap())
}

fn heat(shares: &[(Element, f64)]) -> Composition {
    Composition::new(shares).unwrap()
}

fn inches(shares: &[(Element, f64)]) -> f64 {
    ideal_diameter(&heat(shares)).unwrap().inches
}

/// The composition limits of the H-steels, by name.
fn h_limits() -> BTreeMap<String, CompositionLimits> {
    let limits = |row: &BTreeMap<String, String>| {
        let of = |element: Element| {
            let name = element.symbol();
            let high = row.get(&format!("{name}_max")).filter(|text| !text.is_empty());
            let high = high.map(|text| text.parse().unwrap());
            (element, optional(row, &format!("{name}_min")), high)
        };
        CompositionLimits::new(&[C, Mn, Si, Ni, Cr, Mo, V].map(of)).unwrap()
    };
    let rows = reference("h-grade-compositions.csv");
    rows.iter().map(|row| (row.get("steel").unwrap().clone(), limits(row))).collect()
}

/// SAE 4118 modified, the worked example of ASTM A255: 1.95 in; the rounded factors give 1.948, unrounded
/// ones 1.932 in.
const EXAMPLE: [(Element, f64); 8] =
    [(C, 0.22), (Mn, 0.80), (Si, 0.18), (Ni, 0.10), (Cr, 0.43), (Mo, 0.25), (Cu, 0.10), (V, 0.05)];

#[test]
fn the_example_of_the_standard() {
    let made = ideal_diameter(&heat(&EXAMPLE)).unwrap();
    assert!(made.inches >= 1.93 && made.inches <= 1.95, "{}", made.inches);
    assert!((made.mm - 49.1).abs() < 0.05, "{}", made.mm);
    assert!(made.outside.is_empty());
    // Factors as printed, in the order of the standard.
    let printed = [0.119, 3.667, 1.126, 1.036, 1.929, 1.75, 1.04, 1.09];
    for ((element, factor), printed) in made.factors.iter().zip(printed) {
        assert!((factor - printed).abs() < 0.005, "{element}: {factor}");
    }
    // The curve, worked out independently (Python, SciPy); there the factors are joined by the cubic and not
    // the hardness, which moves it by up to 0.13 HRC between the distances of the table.
    let initial = initial_hardness(0.22);
    assert!((initial - 45.6).abs() < 0.05);
    let curve = Curve::new(initial, made.mm).unwrap();
    for (sixteenths, hrc) in
        [(1.0, 45.6), (2.0, 44.7), (3.0, 40.6), (4.0, 36.0), (5.0, 30.0), (6.0, 25.7), (8.0, 22.8)]
    {
        let here = curve.hardness_at(sixteenths * SIXTEENTH).and_then(EndQuench::hrc).unwrap();
        assert!((here - hrc).abs() <= 0.18, "J{sixteenths}: {here}");
    }
    for sixteenths in [12.0, 16.0] {
        assert_eq!(curve.hardness_at(sixteenths * SIXTEENTH), Some(EndQuench::Below20));
    }
}

/// Tables of both texts of the standard, and the older text's own polynomial as it is printed.
#[test]
fn hardness_by_carbon_is_that_of_the_tables() {
    for row in reference("initial.csv") {
        let carbon = number(&row, "carbon");
        assert!((initial_hardness(carbon) - number(&row, "new")).abs() <= 0.05, "{carbon}");
        let half = fifty_percent_martensite(carbon);
        assert!((half - number(&row, "half_martensite")).abs() <= 0.05, "{carbon}: {half}");
        let agree = if carbon <= 0.65 { 0.45 } else { 1.05 };
        assert!((initial_hardness(carbon) - number(&row, "old")).abs() <= agree, "{carbon}");
    }
    let older = |c: f64| {
        35.395 + 6.990 * c + 312.330 * c.powi(2) - 821.744 * c.powi(3) + 1015.479 * c.powi(4)
            - 538.346 * c.powi(5)
    };
    for hundredths in 10..=64 {
        let carbon = f64::from(hundredths) / 100.0;
        assert!((initial_hardness(carbon) - older(carbon)).abs() <= 0.4, "{carbon}");
    }
    // The polynomials turn round beyond: "about 65 HRC".
    for carbon in [0.7, 0.8, 1.2] {
        assert!((initial_hardness(carbon) - 65.0).abs() < 1.0);
    }
    assert!(fifty_percent_martensite(1.0) > 53.0);
    assert_eq!(initial_hardness(0.02).to_bits(), initial_hardness(0.10).to_bits());
}

/// Jumps at the joints of the factors, in percent, found with an independent program.
#[test]
fn factors_join_as_they_do_in_the_standard() {
    let base = [(C, 0.40), (Mn, 0.8)];
    for (element, at, percent) in [
        (C, 0.39, 0.5),
        (C, 0.55, -0.3),
        (C, 0.65, -0.05),
        (C, 0.75, -0.06),
        (Mn, 1.20, 0.0),
        (Ni, 1.50, -0.14),
    ] {
        let with = |share: f64| inches(&[base[0], base[1], (element, share)]);
        let jump = 100.0 * (with(f64::next_up(at)) / with(at) - 1.0);
        assert!((jump - percent).abs() <= 0.05, "{element} {at}: {jump}");
    }
}

#[test]
fn more_of_an_element_never_hardens_less_within_a_branch() {
    let base = [(C, 0.40), (Mn, 0.8), (Si, 0.25)];
    for (element, from, to) in [
        (C, 0.01, 0.39),
        (C, 0.391, 0.55),
        (C, 0.551, 0.65),
        (C, 0.651, 0.75),
        (C, 0.751, 0.90),
        (Mn, 0.0, 1.95),
        (Si, 0.0, 2.0),
        (Ni, 0.0, 1.5),
        (Ni, 1.501, 3.5),
        (Cr, 0.0, 2.5),
        (Mo, 0.0, 0.55),
        (Cu, 0.0, 0.55),
        (V, 0.0, 0.2),
    ] {
        let mut last = 0.0;
        for step in 0..=200 {
            let share = from + (to - from) * f64::from(step) / 200.0;
            let here = inches(&[base[0], base[1], base[2], (element, share)]);
            assert!(here > last, "{element} {share}");
            last = here;
        }
    }
}

/// Where the raw polynomials have their lowest values, and what holds beyond: an independent test over ideal
/// diameters from 10 to 200 mm.
#[test]
fn distance_factors_end_where_they_misbehave() {
    for (mm, at, lowest) in [(3.0, 50.0, 1.013), (5.0, 100.0, 1.009), (7.0, 125.0, 1.004)] {
        let factor = distance_factor(mm, at).unwrap();
        assert!((factor - lowest).abs() < 0.01, "{mm} mm: {factor}");
    }
    for (mm, to) in [(9.0, 137.0), (11.0, 147.0), (13.0, 148.0), (15.0, 155.0), (20.0, 177.0)] {
        let factor = distance_factor(mm, to).unwrap();
        assert!((1.0..1.03).contains(&factor), "{mm} mm: {factor}");
    }
    // The polynomial of 3 mm turns over below 17 mm and falls to 1.09 at 10 mm: it is held from 20 mm on.
    assert_eq!(distance_factor(3.0, 10.0), distance_factor(3.0, 20.0));
    assert!(distance_factor(3.0, 10.0).unwrap() > 1.09);
    for mm in [3.0, 5.0, 7.0, 9.0, 11.0, 13.0, 15.0] {
        assert_eq!(distance_factor(mm, 200.0), Some(1.0));
    }
    for mm in [20.0, 30.0, 50.0] {
        assert_eq!(distance_factor(mm, DEEP), distance_factor(mm, 1000.0));
        assert_eq!(distance_factor(mm, 15.0), distance_factor(mm, 1.0));
    }
    assert_eq!(distance_factor(12.0, 100.0), None);
}

/// The inch form of the distance factors is a table of its own in the standard. From 1 in on, up to where each
/// holds; the ends of the last two are recalled with a question mark, so that 6 in is theirs.
#[test]
fn the_inch_form_agrees() {
    for row in reference("inch-factors.csv") {
        let sixteenths = number(&row, "sixteenths");
        let end = number(&row, "valid_to").min(6.0);
        for step in 0..=100 {
            let inches = 1.0 + (end - 1.0) * f64::from(step) / 100.0;
            let printed = (0..6)
                .map(|power: i32| number(&row, &format!("a{power}")) * inches.powi(power))
                .sum::<f64>();
            // As hard a start as makes every place a number of the scale.
            let curve = Curve::new(1000.0, inches * 25.4).unwrap();
            let here = curve.hardness_at(sixteenths * SIXTEENTH).and_then(EndQuench::hrc).unwrap();
            let apart = (1000.0 / here - printed).abs();
            // The limits are printed to two decimals, and to "about 0.2" at J4.
            let allowed = number(&row, "within") + 0.012;
            assert!(apart <= allowed, "J{sixteenths}, {inches} in: {apart}");
        }
    }
}

proptest! {
    /// No rise with the distance, and no fall with the ideal diameter beyond the 0.1 HRC by which the cubic
    /// between two distances may bend when one of them reaches its end.
    #[test]
    fn curves_fall_along_the_bar_and_rise_with_the_ideal_diameter(
        ideal_diameter in 15.0..250.0,
        more in 0.0..20.0,
        initial in 38.0..66.0,
    ) {
        let curve = Curve::new(initial, ideal_diameter).unwrap();
        let deeper = Curve::new(initial, ideal_diameter + more).unwrap();
        let mut last = initial;
        for step in 0..=400 {
            let mm = f64::from(step) / 8.0;
            let here = curve.hardness_at(mm).unwrap().highest();
            prop_assert!(here <= last, "{mm} mm");
            prop_assert!(deeper.hardness_at(mm).unwrap().highest() >= here - 0.1, "{mm} mm");
            last = here;
        }
    }

    /// Whatever the composition, there is a curve of numbers or a refusal.
    #[test]
    fn any_composition_is_answered_or_refused(
        shares in proptest::collection::vec((0..Element::ALL.len(), 0.0..4.0), 0..8),
        carbon in 0.0..1.2,
        mm in 0.0..100.0,
    ) {
        let mut all = vec![(C, carbon)];
        for (place, share) in shares {
            all.push((Element::ALL[place], share * Element::ALL[place].largest() / 20.0));
        }
        let Ok(heat) = Composition::new(&all) else { return Ok(()) };
        if let Ok(band) = Band::for_composition(&heat) {
            for curve in [&band.low, &band.mid, &band.high] {
                let highest = curve.hardness_at(mm).unwrap().highest();
                prop_assert!((20.0..66.5).contains(&highest), "{highest}");
            }
            prop_assert!(band.ideal_diameter.mid > 0.0 && band.ideal_diameter.high.is_finite());
        }
    }

    /// Edges lie around the middle; more of everything is no softer.
    #[test]
    fn bands_are_in_order(
        carbon in 0.12..0.68,
        mn in 0.5..1.5,
        cr in 0.0..1.3,
        mo in 0.0..0.5,
        width in 0.0..0.1,
    ) {
        let limits = CompositionLimits::new(&[
            (C, Some(carbon - width / 5.0), Some(carbon + width / 5.0)),
            (Mn, Some(mn - width), Some(mn + width)),
            (Cr, Some(f64::max(cr - width, 0.0)), Some(cr + width)),
            (Mo, Some(f64::max(mo - width / 2.0, 0.0)), Some(mo + width / 2.0)),
        ]).unwrap();
        let heat = heat(&[(C, carbon), (Mn, mn), (Cr, cr), (Mo, mo)]);
        for band in [Band::for_limits(&limits, None), Band::for_composition(&heat)] {
            let band = band.unwrap();
            let diameters = band.ideal_diameter;
            prop_assert!(diameters.low <= diameters.mid && diameters.mid <= diameters.high);
            for step in 0..=60 {
                let mm = f64::from(step);
                let at = |curve: &Curve| curve.hardness_at(mm).unwrap().highest();
                prop_assert!(at(&band.low) <= at(&band.mid) + 0.1, "{mm}");
                prop_assert!(at(&band.mid) <= at(&band.high) + 0.1, "{mm}");
            }
        }
    }
}

/// How the curve of the middle composition lies in the published bands: by grade as an independent program
/// found it, over all at most 2.3 HRC from the middles, and 99 % of the points inside.
#[test]
fn middle_compositions_lie_in_the_published_bands() {
    let bands = read("crates/steel/data/hbands.csv");
    let limits = h_limits();
    let (mut squares, mut points, mut inside) = (0.0, 0.0, 0.0);
    let expected = reference("mid-composition.csv");
    assert_eq!(expected.len(), h_bands().count());
    for row in expected {
        let steel = &row["steel"];
        let band = Band::for_limits(&limits[steel], None).unwrap();
        let (mut own, mut count, mut within) = (0.0, 0.0, 0.0);
        for printed in bands.iter().filter(|printed| printed.get("steel") == Some(steel)) {
            let (Some(max), Some(min)) =
                (optional(printed, "HRC_max"), optional(printed, "HRC_min"))
            else {
                continue;
            };
            let mm = number(printed, "J_sixteenths") * SIXTEENTH;
            let here = band.mid.hardness_at(mm).unwrap().highest();
            own += (here - f64::midpoint(max, min)).powi(2);
            count += 1.0;
            if here >= min - 0.5 && here <= max + 0.5 {
                within += 1.0;
            }
        }
        let rms = f64::sqrt(own / count);
        assert!((rms - number(&row, "rms")).abs() <= 0.3, "{steel}: {rms}");
        assert!((100.0 * within / count - number(&row, "inside_percent")).abs() < 0.5, "{steel}");
        squares += own;
        points += count;
        inside += within;
    }
    let rms = f64::sqrt(squares / points);
    assert!(rms <= 2.3, "{rms} over {points} points");
    assert!(inside / points >= 0.99, "{inside} of {points}");
}

/// Edges by ASTM A255 against the published ones. An independent program (Python, SciPy) found 2.70 HRC (RMS)
/// and a mean of -1.18 below, 2.94 and -0.12 above.
#[test]
fn edges_are_about_those_of_the_published_bands() {
    let bands = read("crates/steel/data/hbands.csv");
    let limits = h_limits();
    let (mut low, mut high) = (Vec::new(), Vec::new());
    for printed in &bands {
        let band = Band::for_limits(&limits[&printed["steel"]], None).unwrap();
        let mm = number(printed, "J_sixteenths") * SIXTEENTH;
        let (Some(max), Some(min)) = (optional(printed, "HRC_max"), optional(printed, "HRC_min"))
        else {
            continue;
        };
        // The program went on below 20 HRC; here that is as good as 20.
        low.push(band.low.hardness_at(mm).unwrap().highest() - min);
        high.push(band.high.hardness_at(mm).unwrap().highest() - max);
    }
    let count = f64::from(u32::try_from(low.len()).unwrap());
    let mean = |off: &[f64]| off.iter().sum::<f64>() / count;
    let rms = |off: &[f64]| f64::sqrt(off.iter().map(|off| off * off).sum::<f64>() / count);
    assert!(rms(&low) <= 2.75 && (mean(&low) + 1.18).abs() < 0.3, "{} {}", rms(&low), mean(&low));
    assert!((rms(&high) - 2.94).abs() < 0.05 && (mean(&high) + 0.12).abs() < 0.05);
}

/// Every printed limit comes back, and what is not printed is said to be below the scale.
#[test]
fn published_bands_are_given_as_printed() {
    let limits = h_limits();
    let mut first = BTreeMap::new();
    for printed in read("crates/steel/data/hbands.csv") {
        let steel = printed["steel"].clone();
        let band = Band::for_limits(&limits[&steel], Some(&steel)).unwrap();
        assert!(matches!(band.method, Method::HBand { name } if name == steel));
        let mm = number(&printed, "J_sixteenths") * SIXTEENTH;
        let (low, high) = (band.low.hardness_at(mm), band.high.hardness_at(mm));
        // Above 65 HRC nothing is printed.
        let max = optional(&printed, "HRC_max").unwrap_or(65.0);
        assert_eq!(high, Some(EndQuench::Hrc(max)), "{steel} {mm}");
        let min = optional(&printed, "HRC_min").map_or(EndQuench::Below20, EndQuench::Hrc);
        assert_eq!(low, Some(min), "{steel} {mm}");
        let middle = band.mid.hardness_at(mm).unwrap();
        match min {
            EndQuench::Hrc(min) => assert_eq!(middle, EndQuench::Hrc(f64::midpoint(max, min))),
            _ => assert!(matches!(middle, EndQuench::AtMost(_)), "{steel} {mm}: {middle:?}"),
        }
        first.entry(steel).or_insert(max);
        assert_eq!(band.cited.sources, ["sae-j1268", "astm-a304"]);
    }
    assert_eq!(first.len(), 14);
    for (key, band) in
        [("4140", Some("4140H")), ("EN19", None), ("8620", Some("8620H")), ("", None)]
    {
        assert_eq!(h_band_of(key), band);
    }
}

#[test]
fn nothing_is_extrapolated() {
    let limits = h_limits();
    let band = Band::for_limits(&limits["1038H"], Some("1038H")).unwrap();
    // The band ends at J16.
    assert_eq!(band.high.hardness_at(40.0), Some(EndQuench::AtMost(21.0)));
    assert_eq!(band.low.hardness_at(40.0), Some(EndQuench::Below20));
    let heat = heat(&[(C, 0.40), (Mn, 0.80), (Ni, 1.4), (Cr, 1.0), (Mo, 0.3)]);
    let band = Band::for_composition(&heat).unwrap();
    let end = band.mid.hardness_at(50.0).and_then(EndQuench::hrc).unwrap();
    assert_eq!(band.mid.hardness_at(80.0), Some(EndQuench::AtMost(end)));
    for bad in [-1.0, f64::NAN] {
        assert_eq!(band.mid.hardness_at(bad), None);
    }
    assert_eq!(Curve::new(f64::NAN, 50.0), Err(Error::NotANumber));
    assert_eq!(Curve::new(50.0, 0.0), Err(Error::NotANumber));
}

#[test]
fn a_heat_has_the_error_of_the_method() {
    let heat = heat(&[(C, 0.41), (Mn, 0.85), (Si, 0.25), (Cr, 1.0), (Mo, 0.2), (Ni, 0.1)]);
    let band = Band::for_composition(&heat).unwrap();
    let at = |curve: &Curve| curve.hardness_at(25.4).and_then(EndQuench::hrc).unwrap();
    assert!((at(&band.mid) - at(&band.low) - HEAT_ERROR).abs() < 1e-9);
    assert!((at(&band.high) - at(&band.mid) - HEAT_ERROR).abs() < 1e-9);
    let end = band.high.hardness_at(0.0).and_then(EndQuench::hrc).unwrap();
    assert!((end - initial_hardness(0.41)).abs() < 1e-12);
    // The same from a paper that limits what else there may be.
    let limits = CompositionLimits::from(heat);
    assert_eq!(Band::for_limits(&limits, None), Ok(band.clone()));
    // A wide manganese widens more than the method does.
    let wide = CompositionLimits::new(&[(C, Some(0.41), Some(0.41)), (Mn, Some(0.4), Some(1.6))]);
    let wide = Band::for_limits(&wide.unwrap(), None).unwrap();
    let at = |curve: &Curve| curve.hardness_at(6.0).and_then(EndQuench::hrc).unwrap();
    assert!(at(&wide.mid) - at(&wide.low) > HEAT_ERROR);
    // Only the copper is unknown.
    assert_eq!(band.notes, [Note::Residual { element: Cu, share: 0.15 }]);
}

#[test]
fn what_the_standard_does_not_cover_is_labelled_or_refused() {
    let base = [(C, 0.40), (Mn, 0.80)];
    let of = |more: &[(Element, f64)]| Band::for_composition(&heat(&[&base, more].concat()));
    let labelled = of(&[(Cr, 1.7), (Si, 0.1)]).unwrap();
    assert_eq!(labelled.method, Method::A255Wide);
    let outside: Vec<Element> = labelled.outside.iter().map(|outside| outside.element).collect();
    assert_eq!(outside, [Si, Cr]);
    for (element, given) in [
        (Cr, 2.6),
        (Ni, 3.6),
        (Mo, 0.6),
        (Mn, 2.0),
        (Si, 2.1),
        (V, 0.3),
        (Cu, 0.6),
        (W, 0.5),
        (Co, 1.0),
    ] {
        let refused = of(&[(element, given)]).unwrap_err();
        assert!(matches!(refused, Error::Outside { element: e, .. } if e == element), "{refused}");
        assert!(ideal_diameter(&heat(&[base[0], base[1], (element, given)])).is_err());
    }
    assert_eq!(of(&[(B, 0.002)]).unwrap_err(), Error::Boron { given: 0.002 });
    assert!(of(&[(B, 0.0005)]).is_ok());
    let carbon = |c: f64| Band::for_composition(&heat(&[(C, c), (Mn, 0.5)]));
    assert_eq!(carbon(0.95).unwrap_err(), Error::HighCarbon { given: 0.95 });
    assert_eq!(carbon(0.05).unwrap_err(), Error::LowCarbon { given: 0.05 });
    let bare = Band::for_composition(&heat(&[(C, 0.45)])).unwrap_err();
    assert_eq!(bare, Error::Missing { element: Mn });
    let open = CompositionLimits::new(&[(C, None, Some(0.22)), (Mn, None, Some(1.6))]).unwrap();
    assert_eq!(Band::for_limits(&open, None).unwrap_err(), Error::OpenCarbon { given: 0.22 });
    let codes = [bare, Error::NotANumber, Error::Boron { given: 0.01 }].map(|error| error.code());
    assert_eq!(
        codes,
        ["hardenability.missing", "hardenability.not_a_number", "hardenability.boron"]
    );
}

/// What comes of every grade: a published band, a curve, a labelled curve or a refusal.
#[test]
fn every_grade_has_its_outcome() {
    let rows = reference("grades.csv");
    assert_eq!(rows.len(), Grade::all().len());
    for row in rows {
        let grade = Grade::by_key(&row["key"]).unwrap();
        let outcome = match Band::for_grade(grade) {
            Err(error) => error.code().to_owned(),
            Ok(band) => {
                assert!(band.cited.sources.iter().all(|key| source(key).is_some()));
                // As hard at the end as the grade can become, within what its own data say.
                let end = band.high.hardness_at(0.0).and_then(EndQuench::hrc).unwrap();
                let published = grade.as_quenched().map_or(end, |range| range.low);
                assert!(end >= published - 2.0, "{}: {end}", grade.key());
                match band.method {
                    Method::HBand { name } => name.to_owned(),
                    Method::A255 => "astm-a255".to_owned(),
                    Method::A255Wide => {
                        let symbols = band.outside.iter().map(|outside| outside.element.symbol());
                        format!("outside {}", symbols.collect::<Vec<_>>().join(" "))
                    }
                }
            }
        };
        assert_eq!(outcome, row["outcome"], "{}", grade.key());
    }
}

/// Vanadium beyond 0.10 % stays carbide; shallow and deep steels are named.
#[test]
fn notes_say_what_a_reader_must_know() {
    let of = |shares: &[(Element, f64)]| Band::for_composition(&heat(shares)).unwrap();
    let some = of(&[(C, 0.5), (Mn, 0.8), (Cr, 0.95), (V, 0.10)]);
    let more = of(&[(C, 0.5), (Mn, 0.8), (Cr, 0.95), (V, 0.18)]);
    assert!(some.mid == more.mid && !some.notes.contains(&Note::Vanadium));
    assert!(more.notes.contains(&Note::Vanadium));
    assert!(of(&[(C, 0.15), (Mn, 0.3)]).notes.contains(&Note::Shallow));
    let deep = of(&[(C, 0.40), (Mn, 0.8), (Ni, 1.8), (Cr, 1.3), (Mo, 0.3)]);
    assert!(deep.notes.contains(&Note::Deep));
}

//! Hardness along the end-quench bar of a grade or a heat.

use biteband_quantity::Shown;
use biteband_steel::Grade;
use biteband_steel::hardenability::{Band, Curve, EndQuench, HEAT_ERROR, Method, Note};
use serde::{Deserialize, Serialize};

use super::steel::named;
use crate::composition::parse_composition;
use crate::format::{self, Units};
use crate::measure::INCH;
use crate::refusal::Refusal;
use crate::words::{Harden, HardenRefusal, Language};

/// Sixteenths of an inch at which the curve is told: those that H-bands are printed at.
const DISTANCES: [f64; 24] = [
    1.0, 2.0, 3.0, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 13.0, 14.0, 15.0, 16.0, 18.0,
    20.0, 22.0, 24.0, 26.0, 28.0, 30.0, 32.0,
];

/// What is asked: a grade, or a composition.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "camelCase")]
pub struct JominyQuestion {
    /// Any designation of a grade: `4140`, `EN19`.
    pub steel: Option<String>,
    /// In place of it, mass percent of a heat, `C=0.41,Mn=0.85,Cr=1.0,Mo=0.2`, or limits, `C=0.38-0.43,Mn=0.75-1`.
    pub composition: Option<String>,
    /// Units of the texts; numbers stay in mm.
    pub units: Units,
}

/// The end-quench curve.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct JominyAnswer {
    /// Key of the grade; absent for a composition.
    pub steel: Option<&'static str>,
    /// What the name stands for, and how near it is to the grade; empty for a composition.
    pub understood: Vec<String>,
    /// `h-band`, `astm-a255`, or `astm-a255-outside-range`, which is to be taken as a guess.
    pub method: &'static str,
    /// Name of the H-band.
    pub h_band: Option<&'static str>,
    /// Where the curve comes from, in words.
    pub basis: String,
    /// From the quenched end inward.
    pub curve: Vec<JominyPoint>,
    /// In mm, by ASTM A255.
    pub ideal_diameter_mm: DiameterAnswer,
    /// The same in words.
    pub ideal_diameter: String,
    /// Elements outside the range of the standard.
    pub outside: Vec<OutsideAnswer>,
    /// Sentences.
    pub notes: Vec<String>,
    /// What to bear in mind.
    pub cautions: Vec<String>,
    /// `high`, `medium` or `low`.
    pub confidence: &'static str,
    /// `seen`, `recalled` or `ours`.
    pub seen: &'static str,
    /// Stable names.
    pub sources: Vec<&'static str>,
}

/// A place on the bar; HRC, absent below 20 HRC.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct JominyPoint {
    /// Distance from the quenched end.
    pub mm: f64,
    /// The same in sixteenths of an inch.
    pub sixteenths: f64,
    /// Lower edge.
    pub low: Option<f64>,
    /// Middle.
    pub mid: Option<f64>,
    /// Upper edge.
    pub high: Option<f64>,
    /// The middle is no higher than this, because no lower edge is printed.
    pub mid_at_most: bool,
    /// Lower edge, middle and upper edge in words.
    pub shown: [String; 3],
}

/// Ideal diameters in mm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct DiameterAnswer {
    /// Of the lowest composition.
    pub low: f64,
    /// Of the middle.
    pub mid: f64,
    /// Of the highest.
    pub high: f64,
}

/// An element outside the range of the standard; mass percent.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct OutsideAnswer {
    /// Symbol.
    pub element: &'static str,
    /// Its share.
    pub given: f64,
    /// Lowest of the standard.
    pub low: f64,
    /// Highest of the standard.
    pub high: f64,
    /// In words.
    pub text: String,
}

/// Says how hard a steel becomes along the end-quench bar.
///
/// # Errors
/// A refusal when the steel is not known, when the composition cannot be read, or when no curve can be made.
///
/// # Example
/// ```
/// use biteband_bench::answer::{JominyQuestion, jominy};
/// use biteband_bench::words::Language;
/// let question = JominyQuestion { steel: Some("4140".into()), ..Default::default() };
/// let answer = jominy(Language::English, &question).unwrap();
/// // SAE J1268, 4140H: 53 to 60 HRC at the first sixteenth.
/// assert_eq!((answer.curve[0].low, answer.curve[0].high), (Some(53.0), Some(60.0)));
/// ```
pub fn jominy(language: Language, question: &JominyQuestion) -> Result<JominyAnswer, Refusal> {
    let refuse = |code: &'static str, given: &str, what: HardenRefusal<'_>| {
        let [message, allowed, instead] = language.harden_refused(what);
        Refusal::new(code, message, given, allowed, instead)
    };
    let mut understood = Vec::new();
    let (grade, made) = match (&question.steel, &question.composition) {
        (None, None) => return Err(refuse("bench.missing_steel", "", HardenRefusal::NoSteel)),
        (Some(_), Some(_)) => {
            return Err(refuse("bench.missing_steel", "", HardenRefusal::SteelTwice));
        }
        (Some(name), None) => {
            let (grade, said) = named(language, question.units, name)?;
            understood = said;
            (Some(grade), Band::for_grade(grade))
        }
        (None, Some(text)) => {
            let limits = parse_composition(language, text)?;
            (None, Band::for_limits(&limits, None))
        }
    };
    let band = made.map_err(|error| {
        let published = grade.and_then(Grade::as_quenched).map(|range| {
            format!("{} HRC", format::dash(&format::exact(range.low), &format::exact(range.high)))
        });
        let depth = grade.map_or("", Grade::section_note);
        let given = question.steel.as_deref().or(question.composition.as_deref());
        let what = HardenRefusal::Core { error: &error, published: published.as_deref(), depth };
        refuse(error.code(), given.unwrap_or_default(), what)
    })?;
    Ok(JominyAnswer { understood, ..answer(language, question.units, grade, &band) })
}

fn answer(
    language: Language,
    units: Units,
    grade: Option<&'static Grade>,
    band: &Band,
) -> JominyAnswer {
    let say = |phrase: Harden<'_>| language.harden(phrase).into_owned();
    let h_band = match band.method {
        Method::HBand { name } => Some(name),
        Method::A255 | Method::A255Wide => None,
    };
    let error = format::exact(HEAT_ERROR);
    let basis = say(match h_band {
        Some(band) => Harden::FromBand { band },
        None if band.of_heat => Harden::FromHeat { error: &error },
        None => Harden::FromLimits,
    });
    let end = [&band.low, &band.mid, &band.high].map(Curve::end).into_iter().fold(0.0, f64::max);
    let distances = DISTANCES.iter().filter(|&&sixteenths| sixteenths * INCH / 16.0 <= end + 1e-9);
    let curve: Vec<JominyPoint> =
        distances.map(|&sixteenths| point(language, band, sixteenths)).collect();
    let outside = band.outside.iter().map(|found| {
        let [given, low, high] = [found.given, found.allowed.low, found.allowed.high].map(share);
        let element = found.element.symbol();
        OutsideAnswer {
            element,
            given: found.given,
            low: found.allowed.low,
            high: found.allowed.high,
            text: say(Harden::OutsideRange { element, given: &given, low: &low, high: &high }),
        }
    });
    let diameter = |mm: f64| length(units, mm);
    let found = band.ideal_diameter;
    let [low, mid, high] = [found.low, found.mid, found.high].map(diameter);
    JominyAnswer {
        steel: grade.map(Grade::key),
        understood: Vec::new(),
        method: band.method.key(),
        h_band,
        basis,
        ideal_diameter_mm: DiameterAnswer { low: found.low, mid: found.mid, high: found.high },
        ideal_diameter: say(Harden::IdealDiameter { low: &low, mid: &mid, high: &high }),
        outside: outside.collect(),
        notes: notes(language, units, band, &curve, end),
        cautions: [Harden::AnyBar, Harden::BarIsNotPart].map(say).to_vec(),
        confidence: band.cited.confidence.key(),
        seen: band.cited.seen.key(),
        sources: sources(band),
        curve,
    }
}

fn point(language: Language, band: &Band, sixteenths: f64) -> JominyPoint {
    let mm = sixteenths * INCH / 16.0;
    let at = |curve: &Curve| curve.hardness_at(mm).unwrap_or(EndQuench::Below20);
    let found = [at(&band.low), at(&band.mid), at(&band.high)];
    let number = |place: EndQuench| match place {
        EndQuench::Hrc(hrc) | EndQuench::AtMost(hrc) => Some(hrc),
        EndQuench::Below20 => None,
    };
    let [low, mid, high] = found.map(number);
    let shown = found.map(|place| match place {
        EndQuench::Hrc(hrc) => format::fixed(hrc, 0),
        EndQuench::AtMost(hrc) => {
            language.harden(Harden::AtMost { hrc: &format::fixed(hrc, 0) }).into_owned()
        }
        EndQuench::Below20 => "< 20".to_owned(),
    });
    let mid_at_most = matches!(found, [_, EndQuench::AtMost(_), _]);
    JominyPoint { mm, sixteenths, low, mid, high, mid_at_most, shown }
}

fn notes(
    language: Language,
    units: Units,
    band: &Band,
    curve: &[JominyPoint],
    end: f64,
) -> Vec<String> {
    let mut residuals: Vec<String> = Vec::new();
    let mut notes: Vec<Harden<'_>> = Vec::new();
    // What was counted makes the ideal diameter, not a printed band.
    for note in &band.notes {
        match note {
            Note::Residual { element, share: found } => {
                residuals.push(format!("{} % {element}", share(*found)));
            }
            Note::Vanadium => notes.push(Harden::Vanadium),
            Note::Shallow => notes.push(Harden::Shallow),
            Note::Deep => notes.push(Harden::Deep),
        }
    }
    if matches!(band.method, Method::HBand { .. }) {
        notes.clear();
        residuals.clear();
    }
    let list = residuals.join(", ");
    if !list.is_empty() {
        notes.push(Harden::Residuals { list: &list });
    }
    if curve.iter().any(|point| point.mid_at_most) {
        notes.push(Harden::MiddleOpen);
    }
    if curve.iter().any(|point| point.low.is_none()) {
        notes.push(Harden::Below20);
    }
    let at = length(units, end);
    notes.push(Harden::End { at: &at });
    notes.into_iter().map(|note| language.harden(note).into_owned()).collect()
}

fn sources(band: &Band) -> Vec<&'static str> {
    let mut all = band.cited.sources.to_vec();
    if !all.contains(&"astm-a255") {
        all.push("astm-a255");
    }
    all
}

/// In whole mm, or in inches to a tenth.
fn length(units: Units, mm: f64) -> String {
    match units {
        Units::Metric => format!("{} mm", format::fixed(mm, 0)),
        Units::Inch => format!("{} in", format::fixed(mm / INCH, 1)),
    }
}

/// Mass percent as it is written on certificates: without the digits behind which nobody looks.
fn share(percent: f64) -> String {
    Shown((percent * 1000.0).round() / 1000.0).to_string()
}

//! What is asked about an indentation, and how its parts are written.

use biteband_hardness::indentation::{
    Convex, Correction, Error, Indentation, Material, Part, Series, Side, Surface, Test,
    VickersRound, rockwell_flat, vickers_flat,
};
use biteband_hardness::{Axis, Scale, decimal};
use biteband_quantity::{BallMillimetres, Millimetres, Shown};
use serde::Deserialize;

use super::parse_axis;
use crate::format::{Units, shortened};
use crate::measure::{self, Length};
use crate::refusal::Refusal;
use crate::words::{IndentRefusal, Language};

/// What is asked. Lengths and forces are texts with their unit: `0.301mm`, `1-1/2in`, `30kgf`, `294.2N`.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "camelCase")]
pub struct IndentQuestion {
    /// `vickers`, `brinell`, `knoop` or `rockwell`.
    pub kind: String,
    /// Test force; not for Rockwell, whose scale fixes it.
    pub force: Option<String>,
    /// Ball of a Brinell test.
    pub ball: Option<String>,
    /// Rockwell scale by symbol.
    pub scale: Option<String>,
    /// One or two diagonals or diameters of the mark; the long diagonal for Knoop.
    pub sizes: Vec<String>,
    /// Depth under the preload, for Rockwell.
    pub depth: Option<String>,
    /// A number that was read, in place of sizes or depth.
    pub value: Option<f64>,
    /// Several numbers that were read, in the order taken.
    pub readings: Vec<f64>,
    /// Diameter of a round part, ball or bore.
    pub round: Option<String>,
    /// The test stands inside the round.
    pub bore: bool,
    /// The round is a ball instead of a shaft.
    pub sphere: bool,
    /// Vickers on a shaft or in a bore: one diagonal runs along the axis, instead of both at 45°.
    pub along_axis: bool,
    /// Thickness of the section, or depth of the hard case.
    pub thickness: Option<String>,
    /// From the centre of the mark to the nearest edge.
    pub edge: Option<String>,
    /// From centre to centre of the nearest other mark.
    pub next: Option<String>,
    /// Width of the mark of a Rockwell test, which its number does not tell.
    pub mark: Option<String>,
    /// `steel`, `cast-iron`, `copper`, `light-metal` or `lead-tin`; steel when absent, and then the index of a
    /// Brinell test is not looked at.
    pub material: Option<String>,
    /// Units of the texts; numbers stay in mm.
    pub units: Units,
}

/// Reads `52,53,51.5`, or with decimal commas `52; 53; 51,5`; spaces part numbers too.
///
/// # Errors
/// A refusal with an example.
///
/// # Example
/// ```
/// use biteband_bench::answer::parse_readings;
/// use biteband_bench::words::Language;
/// assert_eq!(parse_readings(Language::English, "52,53,51.5").unwrap(), [52.0, 53.0, 51.5]);
/// assert_eq!(parse_readings(Language::English, "52; 51,5").unwrap(), [52.0, 51.5]);
/// ```
pub fn parse_readings(language: Language, text: &str) -> Result<Vec<f64>, Refusal> {
    let parts: Vec<&str> = if text.contains(';') {
        text.split(';').collect()
    } else {
        text.split([',', ' ']).filter(|part| !part.is_empty()).collect()
    };
    let read: Option<Vec<f64>> = parts.into_iter().map(decimal).collect();
    read.filter(|list| !list.is_empty()).ok_or_else(|| {
        let given = shortened(text);
        let why = IndentRefusal::NotReadings { given: &given };
        refusal(language, "bench.unreadable_readings", why, &given)
    })
}

pub(super) fn refusal(
    language: Language,
    code: &'static str,
    why: IndentRefusal<'_>,
    given: &str,
) -> Refusal {
    let [message, allowed, instead] = language.indent_refused(why);
    Refusal::new(code, message, given, allowed, instead)
}

/// From an error of the core.
pub(super) fn refused(language: Language, error: &Error) -> Refusal {
    if let Error::Hardness(inside) = error {
        return Refusal::of_hardness(language, inside);
    }
    refusal(language, error.code(), IndentRefusal::Core(error), &given(error))
}

fn given(error: &Error) -> String {
    let number = match *error {
        Error::UnequalDiagonals { first, second } => {
            return format!("{}, {} mm", Shown(first), Shown(second));
        }
        Error::NoRoundTable { scale }
        | Error::NotByDepth { scale }
        | Error::NotBySize { scale } => {
            return scale.symbol().to_owned();
        }
        Error::Quantity(outside) => outside.given,
        Error::NotAHardness { given }
        | Error::NoDepth { given, .. }
        | Error::OutsideRoundTable { given, .. } => given,
        Error::TooSmall { diameter, .. } | Error::NotBelowBall { diameter, .. } => diameter,
        Error::BallSinks { hardness, .. } => hardness,
        Error::TooCurved { ratio, .. } => ratio,
        _ => return String::new(),
    };
    crate::format::exact(number)
}

/// What a correction for roundness says.
pub(super) enum Round {
    Rockwell(Correction),
    Vickers(VickersRound),
}

/// A question put together.
pub(super) struct Asked {
    pub(super) made: Indentation,
    pub(super) series: Option<Series>,
    pub(super) round: Option<Round>,
    pub(super) part: Part,
    pub(super) material: Option<Material>,
    pub(super) distance_without_mark: bool,
}

/// Reads every part of a question.
pub(super) fn read(language: Language, question: &IndentQuestion) -> Result<Asked, Refusal> {
    let core = |error| refused(language, &error);
    let test = test(language, question)?;
    let material = question.material.as_deref().map(|name| metal(language, name)).transpose()?;
    let (made, series) = measured(language, question, test)?;
    let mm = |text: &Option<String>| -> Result<Option<Millimetres>, Refusal> {
        text.as_deref().map(|text| Ok(measure::length(language, text)?.mm)).transpose()
    };
    let rockwell = matches!(test, Test::Rockwell { .. });
    if question.mark.is_some() && !rockwell {
        return Err(foreign(language, "mark"));
    }
    let part = Part {
        thickness: mm(&question.thickness)?,
        to_edge: mm(&question.edge)?,
        to_next: mm(&question.next)?,
        mark: mm(&question.mark)?,
        soft_metal: matches!(material, Some(Material::LightMetal | Material::LeadTin)),
    };
    let round = match mm(&question.round)? {
        Some(diameter) => Some(round(question, &made, diameter).map_err(core)?),
        None if question.bore || question.sphere || question.along_axis => {
            let why = IndentRefusal::ShapeWithoutRound;
            return Err(refusal(language, "bench.missing_round", why, ""));
        }
        None => None,
    };
    let distance = part.to_edge.is_some() || part.to_next.is_some();
    let distance_without_mark = rockwell && distance && part.mark.is_none();
    Ok(Asked { made: made.on(part), series, round, part, material, distance_without_mark })
}

fn foreign(language: Language, what: &str) -> Refusal {
    refusal(language, "bench.unreadable_question", IndentRefusal::NotOfThisTest { what }, what)
}

fn test(language: Language, question: &IndentQuestion) -> Result<Test, Refusal> {
    let kind = question.kind.trim().to_lowercase();
    let owned: [(&str, bool, &[&str]); 4] = [
        ("force", question.force.is_some(), &["vickers", "knoop", "brinell"]),
        ("ball", question.ball.is_some(), &["brinell"]),
        ("scale", question.scale.is_some(), &["rockwell"]),
        ("alongAxis", question.along_axis, &["vickers"]),
    ];
    if !["vickers", "brinell", "knoop", "rockwell"].contains(&kind.as_str()) {
        let given = shortened(&question.kind);
        let why = IndentRefusal::UnknownKind { given: &given };
        return Err(refusal(language, "bench.unknown_kind", why, &given));
    }
    for (what, present, kinds) in owned {
        if present && !kinds.contains(&kind.as_str()) {
            return Err(foreign(language, what));
        }
    }
    let force = |scale| {
        let missing =
            || refusal(language, "bench.missing_force", IndentRefusal::NoForce(scale), "");
        measure::force(language, question.force.as_deref().ok_or_else(missing)?)
    };
    match kind.as_str() {
        "vickers" => Ok(Test::Vickers { force: force(Scale::Hv)? }),
        "knoop" => Ok(Test::Knoop { force: force(Scale::Hk)? }),
        "brinell" => {
            let missing = || refusal(language, "bench.missing_ball", IndentRefusal::NoBall, "");
            let text = question.ball.as_deref().ok_or_else(missing)?;
            let ball = BallMillimetres::new(measure::length(language, text)?.mm.get())
                .map_err(|error| refused(language, &Error::Quantity(error)))?;
            Ok(Test::Brinell { ball, force: force(Scale::Hbw)? })
        }
        _ => {
            let missing = || refusal(language, "bench.missing_scale", IndentRefusal::NoScale, "");
            let text = question.scale.as_deref().ok_or_else(missing)?;
            let not_rockwell = Error::NotByDepth { scale: Scale::Hv };
            match parse_axis(language, text)? {
                Axis::Hardness(scale) => Test::rockwell(scale),
                Axis::Tensile => Err(not_rockwell),
            }
            .map_err(|error| refused(language, &error))
        }
    }
}

fn metal(language: Language, name: &str) -> Result<Material, Refusal> {
    match name.trim().to_lowercase().as_str() {
        "steel" => Ok(Material::Steel),
        "cast-iron" => Ok(Material::CastIron),
        "copper" => Ok(Material::Copper),
        "light-metal" => Ok(Material::LightMetal),
        "lead-tin" => Ok(Material::LeadTin),
        _ => {
            let given = shortened(name);
            let why = IndentRefusal::UnknownMetal { given: &given };
            Err(refusal(language, "bench.unknown_metal", why, &given))
        }
    }
}

/// The indentation by whichever of sizes, depth, number and readings is given.
fn measured(
    language: Language,
    question: &IndentQuestion,
    test: Test,
) -> Result<(Indentation, Option<Series>), Refusal> {
    let core = |error| refused(language, &error);
    let given = [
        !question.sizes.is_empty(),
        question.depth.is_some(),
        question.value.is_some(),
        !question.readings.is_empty(),
    ];
    match given.into_iter().filter(|given| *given).count() {
        1 => {}
        0 => {
            let why = IndentRefusal::NothingGiven;
            return Err(refusal(language, "bench.missing_measurement", why, ""));
        }
        _ => {
            let why = IndentRefusal::GivenTwice;
            return Err(refusal(language, "bench.unreadable_question", why, ""));
        }
    }
    if let Some(depth) = &question.depth {
        let depth = measure::length(language, depth)?.mm;
        return Ok((Indentation::from_depth(test, depth).map_err(core)?, None));
    }
    if let Some(value) = question.value {
        if !value.is_finite() {
            return Err(core(Error::NotAHardness { given: value }));
        }
        return Ok((Indentation::at(test, value).map_err(core)?, None));
    }
    if !question.readings.is_empty() {
        let series = Series::new(test.scale(), &question.readings).map_err(core)?;
        return Ok((Indentation::at(test, series.mean()).map_err(core)?, Some(series)));
    }
    let sizes: Vec<Length> = (question.sizes.iter())
        .map(|text| measure::length(language, text))
        .collect::<Result<_, _>>()?;
    if sizes.iter().any(|size| size.inch) && sizes.iter().any(|size| !size.inch) {
        let given = shortened(&question.sizes.join(", "));
        return Err(refusal(language, "bench.mixed_units", IndentRefusal::MixedUnits, &given));
    }
    let sizes: Vec<Millimetres> = sizes.into_iter().map(|size| size.mm).collect();
    Ok((Indentation::from_sizes(test, &sizes).map_err(core)?, None))
}

fn round(
    question: &IndentQuestion,
    made: &Indentation,
    diameter: Millimetres,
) -> Result<Round, Error> {
    let IndentQuestion { bore, sphere, along_axis, .. } = *question;
    match (made.test, made.size) {
        (Test::Rockwell { scale }, _) if !bore => {
            let shape = if sphere { Convex::Sphere } else { Convex::Cylinder };
            rockwell_flat(scale, made.value, diameter, shape).map(Round::Rockwell)
        }
        (Test::Vickers { force }, Some(diagonal)) => {
            let side = if bore { Side::Concave } else { Side::Convex };
            let surface = match (sphere, along_axis) {
                (true, _) => Surface::Sphere(side),
                (_, true) => Surface::CylinderAlong(side),
                _ => Surface::CylinderAt45(side),
            };
            vickers_flat(force, diagonal, surface, diameter).map(Round::Vickers)
        }
        (test, _) => Err(Error::NoRoundTable { scale: test.scale() }),
    }
}

//! English for indentations. That sheets are not stacked, that a mark on the far side spoils a test and the
//! advice behind refusals are common practice; where a standard says so it is named.

use std::borrow::Cow;

use biteband_hardness::Scale;
use biteband_hardness::indentation::{Error, Extent};
use biteband_quantity::Shown;

use super::Unmeasured;
use super::indent::{Indent, IndentRefusal};
use crate::format;

type Words = Cow<'static, str>;

const fn extent(of: Extent) -> &'static str {
    match of {
        Extent::Depth => "depth",
        Extent::Diagonal => "diagonal",
    }
}

/// "10 times the depth", "a third of the diagonal".
fn multiple(times: f64, of: Extent) -> String {
    if times < 0.5 {
        return format!("a third of the {}", extent(of));
    }
    format!("{} times the {}", Shown(times), extent(of))
}

/// "given 1 mm: enough."
fn against(given: &str, holds: bool, enough: &str, not: &str) -> String {
    format!("given {given}: {}", if holds { enough } else { not })
}

pub(super) fn say(phrase: Indent<'_>) -> Words {
    use Indent as P;
    match phrase {
        P::Kept => "Every rule that could be checked is kept. What was not given was not checked.".into(),
        P::NothingChecked => "Nothing was given that a rule could be held against.".into(),
        P::Broken { rules } => format!("By the rules below this is no valid test: {rules}. The number may be wrong by more than any width says.").into(),

        P::RuleName(rule) => match rule {
            "thickness" | "thickness_table" => "section too thin",
            "edge" => "too near an edge",
            "next" => "too near another mark",
            "brinell_smallest" => "mark too small for the ball",
            "brinell_largest" => "mark too large for the ball",
            "scale_low" => "below the scale",
            "scale_high" => "above the scale",
            "index" => "force and ball not those of the metal",
            _ => "too round for its correction",
        }
        .into(),

        P::Thickness { times, of, needed, given, holds } => format!("Section or hard case at least {}, {needed}; {}", multiple(times, of), against(given, holds, "enough.", "too thin.")).into(),
        P::ThicknessTable { needed, given, holds } => format!("The table of thinnest sections asks for {needed}; {}", against(given, holds, "enough.", "too thin.")).into(),
        P::Thinnest { times, of, needed } => format!("{needed} ({})", multiple(times, of)).into(),
        P::ThinnestTable { needed } => format!("{needed} (the standard's own table)").into(),
        P::Room { edge, times, needed, given, holds } => {
            let to = if edge { "To the edge" } else { "To the next mark" };
            format!("{to} at least {} marks, {needed}; {}", Shown(times), against(given, holds, "enough.", "too near.")).into()
        }
        P::BrinellShare { smallest, needed, given, holds } => {
            let (rule, share, not) = if smallest { ("at least", "0.24", "too small: a larger force or a smaller ball.") } else { ("at most", "0.60", "too large: a smaller force or a larger ball.") };
            format!("Mark {rule} {share} of the ball, {needed}; {}", against(given, holds, "inside.", not)).into()
        }
        P::ScaleEnd { low, needed, given, holds } => {
            let (end, not) = if low { ("begins", "below it: take a scale for softer metal.") } else { ("ends", "above it: take a scale for harder metal.") };
            format!("The scale {end} at {needed}; {}", against(given, holds, "on it.", not)).into()
        }
        P::Index { named, given, holds } => format!("For this metal the standard names an index (kgf over the square of the ball) of {named}; {}", against(given, holds, "one of them.", "not one of them, so the number compares with none of theirs.")).into(),
        P::CorrectionLimit { needed, given, holds } => format!("Corrections for round parts up to {needed} are accepted; {}", against(given, holds, "accepted.", "too much: grind a flat or take a lighter scale.")).into(),
        P::FromMemory => " (from memory)".into(),

        P::Added { amount, half, shown, flat } => format!("Read {shown} on the round; add {amount} ± {half} for the roundness: about {flat} on a flat.").into(),
        P::BeyondLast => "The diameter lies beyond the last one of the table: the correction is drawn on towards the nought of a flat.".into(),
        P::Multiplied { factor, shown, flat } => format!("Read {shown} on the curve; times {factor} ± 0.0025 for the curvature: about {flat} on a flat. Our own geometry, checked against the factors of ISO 6507-1 as remembered.").into(),

        P::Better { tests } => format!("Instead, by the same rules and as far as a table converts: {tests}.").into(),
        P::BetterNone => "None of the usual tests fits by these rules. Compare with a thicker piece of the same heat and temper, or have a section mounted and read with a light load.".into(),

        P::Series { count, mean, range, deviation, half } => format!("{count} readings: mean {mean}, range {range}, standard deviation {deviation}. The true mean lies within ± {half} at 95 %, as far as scatter goes; a tester that reads high does so every time.").into(),
        P::Outlier { value, place } => format!("Reading {place}, {value}, stands out from the others (Grubbs, 5 %). Look at the spot before you leave it out: a soft spot is an outlier too.").into(),
        P::MachineError { amount, standard } => format!("A verified tester may be off by {amount} ({standard})").into(),
        P::MachineSpread { amount, standard } => format!("Five readings of one block may differ by {amount} ({standard})").into(),
        P::AssumedUncertainty { amount } => format!("Without its certificate a tester checked weekly is taken to be sure to {amount}, one standard deviation; that figure is assumed.").into(),

        P::DoNotStack => "Do not stack pieces to make up thickness: they give under the load and the number comes out too soft. Common practice, and in ASTM E18 as remembered.".into(),
        P::FarSide => "Look at the far side after the test: if a mark shows there, the anvil was measured too. Common practice, no source.".into(),
        P::CaseNote => "For a hardened case give its depth as the thickness. A test that reaches through reads the core, too soft.".into(),
        P::NoMark => "A Rockwell number does not tell the width of its mark, so the distance was not checked. Measure the mark and give it.".into(),
        P::NearHundredB => "Near 100 HRB the ball sinks in little and one point is about 6 HBW (ASTM E140 Table 2, 100 HRB = 240 HBW). Where Brinell and HRB disagree there by a point or two, both may be right; Brinell tells more, and above 100 HRB only Brinell or HRC.".into(),
        P::OtherIndex => "Conversion tables hold for the index 30 (HBW 10/3000 and its kin), so this number is not converted.".into(),
        P::OtherMetal => "Conversion tables of steel do not hold for this metal, so nothing is converted.".into(),
    }
}

/// What may be given, with its unit.
pub(super) fn refuse(what: IndentRefusal<'_>) -> [Words; 3] {
    use IndentRefusal as R;
    match what {
        R::Quantity(outside) => super::measure_english::refuse(Unmeasured::Outside(outside)),
        R::UnknownKind { given } => [
            format!("\"{given}\" is no kind of test that is known here.").into(),
            "vickers, brinell, knoop, rockwell".into(),
            "Take one of these. For rebound and ultrasonic testers read the number and convert it.".into(),
        ],
        R::UnknownMetal { given } => [
            format!("\"{given}\" is no group of metals in the table of Brinell forces.").into(),
            "steel, cast-iron, copper, light-metal, lead-tin".into(),
            "Take the group that the metal belongs to, or leave it out.".into(),
        ],
        R::NoForce(Scale::Hv) => [
            "A Vickers test without its force says little: a light load reads the skin, a heavy one what lies below it.".into(),
            "30kgf, 10kgf, 98.07N".into(),
            "Give the force. If the drawing has none, ask for it: HV10 or HV30 for a section that is the same all through, HV1 or less for a thin case.".into(),
        ],
        R::NoForce(_) => [
            "The test force is missing.".into(),
            "3000kgf, 1kgf, 9.807N".into(),
            "Give the force with its unit; it stands behind the symbol, as in HBW 10/3000 or HK1.".into(),
        ],
        R::NoBall => [
            "The ball is missing.".into(),
            "10mm, 5mm, 2.5mm, 1mm".into(),
            "Give the diameter of the ball; it stands behind the symbol, as in HBW 10/3000.".into(),
        ],
        R::NoScale => [
            "The Rockwell scale is missing, and a Rockwell number without its letter is no number.".into(),
            "HRC, HRA, HRB, HR30N, HR30T".into(),
            "Name the scale.".into(),
        ],
        R::NothingGiven => [
            "There is nothing to work from.".into(),
            "sizes of the mark, a depth, a hardness, or readings".into(),
            "Give the mark as it was measured, or the number that was read.".into(),
        ],
        R::GivenTwice => [
            "Sizes, depth, hardness and readings are given together, and they need not agree.".into(),
            "one of them".into(),
            "Give one of them.".into(),
        ],
        R::NotOfThisTest { what } => [
            format!("{what} does not belong to this kind of test.").into(),
            "".into(),
            "Leave it out, or choose the other kind.".into(),
        ],
        R::MixedUnits => [
            "One size is in inches and the other metric.".into(),
            "both in one unit".into(),
            "Write both as they stand on the instrument.".into(),
        ],
        R::NotReadings { given } => [
            format!("\"{given}\" is not readable as readings.").into(),
            "52,53,51.5 or with decimal commas 52;53;51,5".into(),
            "Write numbers of one scale, up to 1000 of them.".into(),
        ],
        R::ShapeWithoutRound => [
            "Bore, sphere or axis is named without the diameter.".into(),
            "12mm, 1/2in".into(),
            "Give the diameter of the round.".into(),
        ],
        R::Core(error) => core(error),
    }
}

fn core(error: &Error) -> [Words; 3] {
    match *error {
        Error::Quantity(outside) => refuse(IndentRefusal::Quantity(outside)),
        // Made into a refusal where scales are known; the text stands for whatever is left.
        Error::Hardness(ref inside) => [format!("{inside}.").into(), "".into(), "".into()],
        Error::NotAHardness { .. } => [
            "A hardness is a number above nought.".into(),
            "above 0".into(),
            "Read the instrument again.".into(),
        ],
        Error::SizeCount { given } => [
            format!("{given} sizes are given; a reading is made from one, or from two that are averaged.").into(),
            "1 or 2".into(),
            "Give the two diagonals or diameters of one mark. Several marks are several readings.".into(),
        ],
        Error::UnequalDiagonals { first, second } => [
            format!("The diagonals, {} and {} mm, differ by more than 5 % of their mean. ISO 6507-1, as remembered, takes such a mark for bad.", Shown(first), Shown(second)).into(),
            "within 5 % of each other".into(),
            "Level the surface, look at the diamond, and test again; look whether both are in one unit.".into(),
        ],
        Error::NotBelowBall { diameter, ball } => [
            format!("A mark of {} mm is not smaller than its ball of {} mm.", Shown(diameter), Shown(ball)).into(),
            format!("0.24 to 0.60 of the ball: {} to {} mm", format::fixed(0.24 * ball, 2), format::fixed(0.6 * ball, 2)).into(),
            "Look at the units; otherwise take a smaller force or a larger ball.".into(),
        ],
        Error::BallSinks { hardness, ball, smallest } => [
            format!("At {} HBW a ball of {} mm sinks in beyond its half under this force.", Shown(hardness), Shown(ball)).into(),
            format!("above {} HBW", format::plain(smallest)).into(),
            "Take a smaller force or a larger ball.".into(),
        ],
        Error::NotByDepth { scale } => [
            format!("{scale} is no Rockwell scale: its number does not come from a depth.").into(),
            "HRC, HRA, HRD, HRB, HR15N, HR30N, HR45N, HR15T, HR30T, HR45T".into(),
            "Give the size of the mark for Vickers, Brinell and Knoop.".into(),
        ],
        Error::NotBySize { scale } => [
            format!("{scale} comes from a depth, not from the size of a mark.").into(),
            "a depth or a number that was read".into(),
            "Give the depth under the preload, or the number on the dial.".into(),
        ],
        Error::NoDepth { scale, given, zero } => [
            format!("{} {scale} has no depth: the scale counts down from {} at no depth at all.", Shown(given), Shown(zero)).into(),
            format!("below {} {scale}", Shown(zero)).into(),
            "Look at the scale: the number may be of another.".into(),
        ],
        Error::Velocity { .. } => [format!("{error}.").into(), "".into(), "Measure again.".into()],
        Error::NoRoundTable { scale } => [
            format!("No correction for {scale} on this shape is known here.").into(),
            "Rockwell A, B, C, D, F, G, N and T on a shaft, HRC on a ball, Vickers on shaft, ball and in a bore".into(),
            "Grind a flat, or test with one of these. Without the diameter the number is given as on a flat; Rockwell on a shaft or a ball reads too soft by that.".into(),
        ],
        Error::TooSmall { scale, diameter, smallest } => [
            format!("A round of {} mm is too small for {scale}: its corrections begin at {} mm, and nothing is known below.", format::fixed(diameter, 2), Shown(smallest)).into(),
            format!("{} mm and more", Shown(smallest)).into(),
            if smallest > 4.0 { "Take a lighter scale (HR15N and HR30N have corrections from 3.2 mm, mostly from memory), Vickers with a factor for the curvature, or grind a flat." } else { "Take Vickers with a factor for the curvature, or grind a flat." }.into(),
        ],
        Error::OutsideRoundTable { scale, given, low, high } => [
            format!("The corrections for this round serve {} to {} {scale}; {} lies outside, and nothing is drawn on.", Shown(low), Shown(high), format::plain(given)).into(),
            format!("{} to {} {scale}", Shown(low), Shown(high)).into(),
            "Grind a flat, or take a scale that has this hardness in its middle.".into(),
        ],
        Error::TooCurved { ratio, largest } => [
            format!("The diagonal is {} of the diameter; the tables of ISO 6507-1 end at {} as remembered.", format::fixed(ratio, 3), Shown(largest)).into(),
            format!("up to {}", Shown(largest)).into(),
            "Take a smaller force, or grind a flat.".into(),
        ],
        Error::ReadingCount { given, least, most } => [
            format!("{given} readings are given.").into(),
            format!("{least} to {most}").into(),
            "Give at least one, and no more than can be looked through.".into(),
        ],
        Error::Uncertainty { .. } | Error::NoQuantile { .. } => [
            format!("{error}.").into(),
            "".into(),
            "Give a number from nought up.".into(),
        ],
    }
}

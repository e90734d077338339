//! English for tempering.
//!
//! What is said of ovens, oil smoke, hands and the order of the work is common practice without a source.

use std::borrow::Cow;

use biteband_steel::temper::TemperError;
use biteband_steel::temper::colour::Colour;

use super::temper::{Above, TemperRefusal, Tempers};

type Words = Cow<'static, str>;

/// "twice ", "3 times "; nothing for once.
fn times(times: u8) -> String {
    match times {
        0 | 1 => String::new(),
        2 => "twice ".to_owned(),
        more => format!("{more} times "),
    }
}

const fn shade(colour: Colour) -> &'static str {
    match colour {
        Colour::LightStraw => "light straw",
        Colour::Straw => "straw",
        Colour::DarkStraw => "dark straw",
        Colour::Brown => "brown",
        Colour::Purple => "purple",
        Colour::Blue => "blue",
        Colour::LightBlue => "light blue",
    }
}

fn differ(spread: &str) -> String {
    if spread.is_empty() { String::new() } else { format!("; sources differ, {spread}") }
}

#[expect(clippy::too_many_lines, reason = "one sentence for each phrase")]
pub(super) fn say(phrase: Tempers<'_>) -> Words {
    use Tempers as T;
    match phrase {
        T::Leaves { steel, tempers, about, band } => {
            format!("{steel} after {tempers}: about {about}, {band}.").into()
        }
        T::OwnSteel => "This composition".into(),
        T::UpTo { high } => format!("up to {high}").into(),
        T::One { at, time } => format!("{at} for {time}").into(),
        T::Counts { at, time } => {
            format!("Together they count as {time} at {at}: time at heat adds up at the hottest temper.").into()
        }
        T::LaterTakes { at, fall: None } => {
            format!("What comes cooler after {at} changes next to nothing in hardness.").into()
        }
        T::LaterTakes { at, fall: Some(fall) } => {
            format!("What comes cooler after {at} takes about {fall} more off.").into()
        }
        T::FullyHard => {
            "All of this is for a part that was fully hardened before its first temper.".into()
        }
        T::First { at, time, times: count, expect, band } => format!(
            "Temper {}at {at} for {time}, then measure. Expect about {expect}, {band}.",
            times(count)
        )
        .into(),
        T::ThenMeasure { step, fall, last } => {
            let fall = fall.map_or_else(
                || "which takes next to nothing off at first".to_owned(),
                |fall| format!("which takes about {fall} off for every 10 °C (18 °F)"),
            );
            format!("While it is still too hard: {step} hotter each time, {fall}. Look again before {last}.").into()
        }
        T::NoMoreSteps => {
            "Measure afterwards. A further step would take it below what is wanted.".into()
        }
        T::KnownEnds { at, sheets } => format!(
            "{} at {at}: what a hotter temper leaves is not known.",
            if sheets { "The printed curves end" } else { "What is known ends" }
        )
        .into(),
        T::StopWhen { wanted } => {
            format!("Stop as soon as it measures {wanted}: tempering only softens.").into()
        }
        T::AtTheEnd { at } => format!(
            "{at} is as far as the usual range goes, so that this first temper is not on the safe side by itself: try it on an offcut."
        )
        .into(),
        T::Dial { dial, metal, width } => format!(
            "Your dial has to show {dial} for {metal} in the metal, give or take {width}."
        )
        .into(),
        T::DialUnchecked { width } => format!(
            "The dial of this oven was not checked: ovens of this kind were found up to {width} off. Put a thermometer beside the part."
        )
        .into(),
        T::DialLearned { dial, metal, width } => format!(
            "By your own results: set the dial to {dial}, which is about {metal} in the metal, give or take {width}: the dial was not checked."
        )
        .into(),
        T::DialBeyond { at, width } => format!(
            "No check of your dial reaches {at}: it may be up to {width} off there. Check it near that, or put a thermometer beside the part."
        )
        .into(),
        T::SnapTonight { at, time } => format!(
            "No time left for it today: {at} for {time}, at once, carries it over the night. It does not replace the temper."
        )
        .into(),
        T::Step { at, time, times: count, expect, band } => format!(
            "{at}, {}{time}: about {expect}, {band}",
            times(count)
        )
        .into(),
        T::FromModel { spread } => format!(
            "Worked out from the composition by a formula that was fitted to 1,172 measured results of 30 steels; left-out steels came out within {spread} (standard deviation) of it."
        )
        .into(),
        T::FromModelEdge => {
            "The composition lies at the edge of the steels that were measured: the band is wider.".into()
        }
        T::FromSheets { count: 1, ends } => format!(
            "From one printed tempering curve, which runs {ends}. Nothing is said beyond its ends."
        )
        .into(),
        T::FromSheets { count, ends } => format!(
            "From {count} printed tempering curves, which run {ends}. The band holds all of them; nothing is said beyond their ends."
        )
        .into(),
        T::FromSibling { steel, low: false } => format!(
            "The curve is that of {steel}, which is much like it: the band is wider."
        )
        .into(),
        T::FromSibling { steel, low: true } => format!(
            "The curve is that of {steel}; this grade stays below it: the band reaches further down."
        )
        .into(),
        T::SheetsApart { at, each } => {
            format!("The printed curves disagree at {at}: {each}. All of them are in the band.").into()
        }
        T::SheetTime { time } => format!(
            "The curve does not say how long it was held; {time} is assumed."
        )
        .into(),
        T::PastPeak { at } => format!(
            "This steel hardens again on tempering, most at about {at}: below that a hotter temper does not soften it."
        )
        .into(),
        T::BandMeaning => {
            "The band is meant to hold 9 results of 10 of bars of such a composition.".into()
        }
        T::BandOfSheets => {
            "The band is that of the printed curves, widened by how far such curves differ.".into()
        }
        T::AsQuenchedEntered { hrc } => format!(
            "Your {hrc} as quenched is in it, at half of its weight: more did not help with the measured steels."
        )
        .into(),
        T::AsQuenchedLeft => {
            "The hardness as quenched is not in it: above 0.7 % of carbon, and on printed curves, it does not help.".into()
        }
        T::OutsideData { element, given, low, high } => format!(
            "{element} {given} % is outside the measured steels ({low} to {high} %): take the figures as a guess."
        )
        .into(),
        T::OutsideTimes => {
            "Shorter or longer than what was measured: take the figures as a guess.".into()
        }
        T::HyperEutectoid => {
            "Above about 0.8 % of carbon some of it is not dissolved when the steel is hardened: the figures are a guide, a trial piece decides.".into()
        }
        T::HeatThrough { minutes } => format!(
            "Time to heat through comes before: about {minutes} in an oven that is already hot. Count the time at heat from then on."
        )
        .into(),
        T::HeatThroughUnknown => {
            "Time at heat counts from when the part is hot throughout, not from the door's closing.".into()
        }
        T::Learned { count, offset, harder } => format!(
            "Your last {} came out {offset} {} than the book; planned with that.",
            if count == 1 { "result".to_owned() } else { format!("{count} results") },
            if harder { "harder" } else { "softer" }
        )
        .into(),
        T::Doubted { hrc, offset, harder, most } => format!(
            "Your {hrc} is {offset} {} than the book, where results are hardly more than {most} off: {}are unit, scale and dial right? It counts for less and makes nothing surer; to leave it out, go by the book alone.",
            if harder { "harder" } else { "softer" },
            if harder { "" } else { "was it fully hard before the temper, " }
        )
        .into(),
        T::LearnedNothing { count: 1 } => {
            "Your last result came out within 1 HRC of the book; planned with that.".into()
        }
        T::LearnedNothing { count } => format!(
            "On average your last {count} results came out within 1 HRC of the book; planned with that."
        )
        .into(),
        T::LearnedOven { dial, hotter } => format!(
            "They speak for an oven that runs {dial} {} than its dial.",
            if hotter { "hotter" } else { "cooler" }
        )
        .into(),
        T::LearnedSplit => {
            "Whether the steel or the oven was off cannot be told apart from these results: each has got its usual share.".into()
        }
        T::InBrittle { at, range, spread } => format!(
            "{at} lies in the range that makes this steel brittle ({range}{}): for parts that are struck or bent, want a hardness on either side of it.",
            differ(spread)
        )
        .into(),
        T::StepsOver { range, spread, below, above } => format!(
            "On the way lies the range that makes this steel brittle ({range}{}): go past it in one step and do not stop inside. The steel has about {below} where the range begins and {above} where it ends.",
            differ(spread)
        )
        .into(),
        T::Disputed { spread } => format!(
            "Some sources hold tempers in {spread} for brittle in this steel, others do not: for parts that are struck, try one."
        )
        .into(),
        T::SlowCooling { range } => format!(
            "After a temper in {range} cool in water or oil, not slowly in the oven: nickel-chromium and manganese steels without molybdenum turn brittle otherwise."
        )
        .into(),
        T::BrittleSource { who, range } => format!("{who}: {range}").into(),
        T::Shade { first, last, spread } => {
            let name = if first == last {
                shade(first).to_owned()
            } else {
                format!("{} to {}", shade(first), shade(last))
            };
            format!(
                "On a bright surface it shows {name}, which the lists put at {spread} for such a time. The colour moves on with time and light deceives: a check on plain carbon steel, no measure. Go by the temperature."
            )
            .into()
        }
        T::ColoursOnlyCarbon => {
            "Temper colours come later on this steel than the lists say: go by the temperature.".into()
        }
        T::TemperAtOnce => {
            "Temper as soon as it is hand-warm: as quenched it is brittle and can crack by itself.".into()
        }
        T::OilSmoke => {
            "Wash quench oil off first: it smokes and can catch fire in the oven. A kitchen oven is for food or for parts, not for both on the same day.".into()
        }
        T::HotMetal => {
            "A part at tempering heat looks cold. Tongs and gloves, and a place where nobody takes hold of it.".into()
        }
        T::Twice { times: count } => format!(
            "{}, cooling to hand-warm in between: what changes on the first cooling is tempered by the next.",
            match count {
                2 => "Twice".to_owned(),
                more => format!("{more} times"),
            }
        )
        .into(),
        T::OnlyDown => "Tempering goes down only: too soft means hardening again.".into(),
        T::Ages17 { name, at, least } => format!("{name}: {at}, at least {least}").into(),
        T::LeastOnly => {
            "The standard gives the least hardness of each age and no highest; between its ages nobody knows. Bought in condition A it needs no quench before.".into()
        }
        T::Age { name, at, least, most: "", role: "meets" } => {
            format!("Age {name}, {at}: at least {least}, as wanted.").into()
        }
        T::Age { name, at, least, most, role } => match role {
            "meets" => format!(
                "Age {name}, {at}: at least {least}. Its upper end is not known: it may come out above {most}."
            ),
            "harder" => format!("Next harder: {name}, {at}: at least {least}."),
            "softer" => format!("Next softer: {name}, {at}: at least {least}; it may come out softer than wanted."),
            _ => format!("{name}, {at}: at least {least}."),
        }
        .into(),
        T::NearAc1 { ac1 } => format!(
            "This comes near to {ac1}, where the steel begins to change again: keep well below it."
        )
        .into(),
    }
}

pub(super) fn refuse(what: TemperRefusal<'_>) -> [Words; 3] {
    use TemperRefusal as R;
    match what {
        R::Temper { error, hot, apart } => no_temper(error, hot, apart),
        R::NoTime => [
            "A temper needs its time at heat.".into(),
            "205C/2h, or 205C for 90 min".into(),
            "Write how long the part had the temperature, heating up apart.".into(),
        ],
        R::Unreadable => [
            "There is no temper to be read.".into(),
            "205C/2h, 2x 540C/2h, 220C/2h; 300C/1h".into(),
            "Write a temperature with its unit, a slash and the time.".into(),
        ],
        R::NothingAsked => [
            "Neither a temper nor a wanted hardness is given.".into(),
            "a temper as 220C for 2h, or a target as 45 HRC".into(),
            "Give the temper to learn its hardness, or the hardness to learn its temper.".into(),
        ],
        R::AboveAc1 { at, ac1 } => [
            format!("{at} is no temper for this steel: from {ac1} on it begins to harden anew.").into(),
            format!("below {ac1}").into(),
            "To soften it altogether, anneal it: heat above the change and cool slowly.".into(),
        ],
        R::TargetAbove { target, most, band, at, quenched, above } => {
            target_above(target, [most, band, at], quenched, above)
        }
        R::TargetBelow { target, least, at } => [
            format!("{target} cannot be had by tempering: even {at} leaves about {least}.").into(),
            format!("from about {least} on").into(),
            "Anneal it, or leave it as it was bought; for a soft end draw that end alone with a torch.".into(),
        ],
        R::DoesNotHarden { steel } => [
            format!("{steel} does not harden, so there is nothing to temper.").into(),
            "a grade that hardens".into(),
            "See its card for how it is used, or take another steel.".into(),
        ],
        R::Ages { steel, ages } => [
            format!("{steel} is aged, not tempered, and only at the temperatures of its standard.").into(),
            ages.to_owned().into(),
            "Take the age whose least hardness comes next to what is wanted; nothing is known in between.".into(),
        ],
        R::CaseOnly { steel, range, working } => [
            format!("{steel} hardens in a carburized case alone; a case is only relieved, at {range}, and stays at {working}.").into(),
            range.to_owned().into(),
            "Temper it in that range, or take a steel that hardens through.".into(),
        ],
        R::NoCurve { steel, range } => [
            format!("No tempering curve of {steel} is known here; its usual range is {range}.").into(),
            "a grade with a curve, or a composition of a low-alloy steel".into(),
            "Temper an offcut that was hardened with the part at the low end of that range, measure it, and go up from there.".into(),
        ],
        R::OutsideSheets { why } => [
            format!("The printed curves of this steel say nothing of that: {why}.").into(),
            "tempers inside the printed curves".into(),
            "Stay inside the curves, or try it on an offcut that was hardened with the part.".into(),
        ],
        R::Composition { why } => [
            format!("No hardness after tempering for this composition: {why}.").into(),
            "0.15 to 1.3 % C, up to 2.2 % Mn and Si, 4 % Ni, 2 % Cr, 0.6 % Mo, 0.3 % V".into(),
            "Name the grade, if it is a tool steel or stainless: those go by printed curves.".into(),
        ],
        R::Learn { given } => [
            format!("\"{given}\" is no result of a temper.").into(),
            "53 HRC@220C/2h".into(),
            "Write what was measured, an at-sign, and the temper before it.".into(),
        ],
        R::Weigh { why } => [
            format!("The own results cannot be weighed: {why}.").into(),
            "up to 200 results".into(),
            "Take the odd one out.".into(),
        ],
        R::NotQuenched { given, range, harder } => not_quenched(given, range, harder),
        R::AsQuenched { given } => [
            format!("\"{given}\" is no hardness as quenched.").into(),
            "57 HRC, or 640 HV 10".into(),
            "Write the one number that was measured before the first temper.".into(),
        ],
    }
}

fn no_temper(error: &TemperError, hot: &str, apart: Option<&str>) -> [Words; 3] {
    match error {
        TemperError::Quantity(inside) => [
            format!("A {inside}.").into(),
            "50 to 800 °C, a second to 100 h".into(),
            "Look at the unit and the decimal point.".into(),
        ],
        TemperError::Outside { .. } => [
            format!("{hot} is no temper.").into(),
            "50 to 800 °C (120 to 1470 °F)".into(),
            format!(
                "Look at the unit: 400 F is 204 °C.{}",
                apart
                    .map(|apart| format!(
                        " As a difference, {hot} is {apart}: add it up and write the temperature that comes out."
                    ))
                    .unwrap_or_default()
            )
            .into(),
        ],
        TemperError::TooLong { .. } => [
            format!("{error}.").into(),
            "up to 100 h".into(),
            "Look at the unit: 90 min is 1.5 h.".into(),
        ],
    }
}

fn target_above(
    target: &str,
    [most, band, at]: [&str; 3],
    quenched: Option<&str>,
    above: Above,
) -> [Words; 3] {
    let tempered = format!("the mildest temper, {at}, leaves about {most}, {band}");
    let quenched =
        quenched.map(|hrc| format!(", and as quenched it has about {hrc}")).unwrap_or_default();
    [
                match above {
                    Above::Done => format!(
                        "{target} cannot be had any more: the tempers so far leave about {most}, {band}."
                    ),
                    Above::Middle | Above::Doubted => format!(
                        "{target} is above the middle of what this steel gives: {tempered}{quenched}. It is not to be counted on."
                    ),
                    Above::Steel => format!("{target} cannot be had: already {tempered}{quenched}."),
                }
                .into(),
                format!("up to about {most}").into(),
                match above {
                    Above::Steel => "Take a steel with more carbon, or want less.",
                    Above::Middle => {
                        "Want less, take a steel with more carbon, or try the mildest temper and keep what measures enough."
                    }
                    Above::Done => "Harden it again: tempering goes down only.",
                    Above::Doubted => {
                        "The book leaves more, but a result of yours is far below it: look into that one, or go by the book alone."
                    }
                }
                .into(),
            ]
}

fn not_quenched(given: &str, range: &str, harder: bool) -> [Words; 3] {
    [
            if harder {
                format!("{given} as quenched is more than a steel with this carbon can have.")
            } else {
                format!("{given} is softer than this steel is once it has hardened: then it was not hardened.")
            }
            .into(),
            range.to_owned().into(),
            if harder {
                "Look at scale and instrument, or at the steel."
            } else {
                "Harden it and measure again, or look at the steel."
            }
            .into(),
        ]
}

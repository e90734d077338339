//! English for grades of steel. That a name alone proves no steel, and the advice behind refusals, are common
//! practice.

use std::borrow::Cow;

use biteband_hardness::Seen;
use biteband_quantity::Shown;
use biteband_steel::grade::{Closeness, OwnGradeError, System};
use biteband_steel::target::Basis;
use biteband_steel::{
    CompositionError, Cryo, CurveCloseness, DoubleTemper, Family, Hardening, Quenchant,
    TemperMethod,
};

use super::steel::{SteelRefusal, SteelWords};

type Words = Cow<'static, str>;

const fn family(family: Family) -> &'static str {
    match family {
        Family::Carbon => "carbon steel",
        Family::FreeMachining => "free-machining steel",
        Family::Alloy => "alloy steel",
        Family::Tool => "tool steel",
        Family::Stainless => "stainless steel",
        Family::PhStainless => "precipitation-hardening stainless steel",
        Family::Structural => "structural steel",
    }
}

const fn hardens(hardening: Hardening) -> &'static str {
    match hardening {
        Hardening::Through => "hardens by quenching",
        Hardening::Case => "does not harden through; hardens in a carburized case",
        Hardening::Age => "hardens by ageing",
        Hardening::None => "does not harden by heat treatment",
    }
}

const fn system(system: System) -> &'static str {
    match system {
        System::AisiSae => "AISI/SAE/ASTM",
        System::Uns => "UNS",
        System::EnName => "EN/DIN name",
        System::EnNumber => "EN/DIN number",
        System::Bs => "British Standard",
        System::Jis => "JIS",
        System::Gb => "GB",
        System::Shop => "shop name",
    }
}

const fn closeness(closeness: Closeness) -> &'static str {
    match closeness {
        Closeness::Same => "same: another name of this grade",
        Closeness::Near => "near: not the same steel; check the paper",
        Closeness::Approximate => {
            "approximate: only of the same kind; go by the paper or a trial piece"
        }
    }
}

const fn medium(medium: Quenchant) -> &'static str {
    match medium {
        Quenchant::Water => "water",
        Quenchant::Brine => "brine",
        Quenchant::Oil => "oil",
        Quenchant::FastOil => "fast oil",
        Quenchant::Polymer => "polymer in water",
        Quenchant::Salt => "molten salt",
        Quenchant::Air => "air",
        Quenchant::Plate => "cold plates",
        Quenchant::InterruptedOil => "oil until the colour is gone, then air",
    }
}

fn method(method: TemperMethod, curve: &str, closeness: Option<CurveCloseness>) -> String {
    match method {
        TemperMethod::Regression => "Hardness after tempering: by the regression for low-alloy steels.".to_owned(),
        TemperMethod::RegressionEdge => "Hardness after tempering: by the regression for low-alloy steels, at the edge of its range.".to_owned(),
        TemperMethod::Curve => match closeness {
            Some(CurveCloseness::Own) => "Hardness after tempering: by a printed curve of this grade.".to_owned(),
            Some(CurveCloseness::Sibling) => format!("Hardness after tempering: by the printed curve of {curve}, a steel much like it."),
            Some(CurveCloseness::SiblingLow) => format!("Hardness after tempering: by the printed curve of {curve}, which stays below it."),
            Some(CurveCloseness::None) | None => "Hardness after tempering: no curve is known; harden and temper a trial piece.".to_owned(),
        },
        TemperMethod::Case => "Temper a hardened case low only.".to_owned(),
        TemperMethod::AgeTable => "Hardness by the ages below.".to_owned(),
        TemperMethod::None => String::new(),
    }
}

pub(super) fn say(phrase: SteelWords<'_>) -> Words {
    use SteelWords as P;
    match phrase {
        P::Title { name, family: of, hardening } => format!("{name}: {}, {}", family(of), hardens(hardening)).into(),
        P::System(of) => system(of).into(),
        P::Closeness(near) => closeness(near).into(),
        P::Named { designation, system: of, closeness: near, grade } => {
            let kind = system(of);
            format!("{designation} ({kind}) leads to {grade}. {}.", capital(closeness(near))).into()
        }
        P::Ambiguous { given, others, shown } => format!("AMBIGUOUS: {given} is the name of more than one steel. It can also mean {others}. What follows is {shown}; let the paper say which bar you have.").into(),
        P::AlsoNear { grades } => format!("Near it are also {grades}: not the same steels.").into(),
        P::Condition { letter, hbw, tensile } => format!("Condition {letter}: bought hardened and tempered to {hbw} ({tensile}).").into(),

        P::Mark(Seen::Recalled) => "(from memory)".into(),
        P::Mark(Seen::Part) => "(partly from memory)".into(),
        P::Mark(Seen::Seen | Seen::Ours) => "".into(),
        P::Basis(Basis::Standard) => "a standard".into(),
        P::Basis(Basis::Published) => "a published figure".into(),
        P::Basis(Basis::Practice) => "common practice".into(),

        P::Composition { limits, other, standard } => {
            let other = if other.is_empty() { String::new() } else { format!("; {other}") };
            format!("Composition in mass % by {standard}: {limits}{other}.").into()
        }
        P::Limit { element, low: Some(low), high: Some(high) } => format!("{element} {low} – {high}").into(),
        P::Limit { element, low: Some(low), high: None } => format!("{element} {low} min").into(),
        P::Limit { element, high, .. } => format!("{element} {} max", high.unwrap_or_default()).into(),
        P::Window { range, hardening: Hardening::Age } => format!("Solution treatment at {range}.").into(),
        P::Window { range, hardening: Hardening::Case } => format!("Hardening of the carburized part from {range}, of the metal.").into(),
        P::Window { range, .. } => format!("Hardening from {range}, of the metal.").into(),
        P::Preheat { steps } => format!("Preheat at {steps}.").into(),
        P::QuenchIn { media } => format!("Quench, the usual first: {media}.").into(),
        P::Medium(one) => medium(one).into(),
        P::Soak(text) => format!("Soak: {text}.").into(),
        P::DoesNotHarden => "It does not harden by heat treatment, so there is no hardening temperature, no quench and no temper to give.".into(),
        P::Supplied { hardness } => format!("As bought: {hardness}.").into(),
        P::Typical { hardness } => format!("{hardness} typical").into(),
        P::AsQuenched { range, hardening: Hardening::Case } => format!("As quenched, the core in a small section: {range}.").into(),
        P::AsQuenched { range, hardening: Hardening::Age } => format!("Before ageing: {range}.").into(),
        P::AsQuenched { range, .. } => format!("As quenched, in a small section: {range}.").into(),
        P::NotStated => "not stated".into(),
        P::Tempering { range, hardening: Hardening::Age } => format!("Ageing: {range}.").into(),
        P::Tempering { range, .. } => format!("Tempering: {range}.").into(),
        P::Method { method: of, curve, closeness: near } => method(of, curve, near).into(),
        P::Double(times) => match times {
            DoubleTemper::No => "",
            DoubleTemper::Recommended => "Tempering twice is better.",
            DoubleTemper::Yes => "Temper twice.",
            DoubleTemper::Triple => "Temper three times.",
            DoubleTemper::TripleForLarge => "Temper twice, large sections three times.",
        }
        .into(),
        P::Cold(worth) => match worth {
            Cryo::No => "",
            Cryo::Optional => "Cold treatment after the quench is a matter of choice.",
            Cryo::Possible => "Cold treatment after the quench can help.",
            Cryo::Useful => "Cold treatment after the quench helps.",
        }
        .into(),
        P::Avoid { range: "" } => "On tempering:".into(),
        P::Avoid { range } => format!("Avoid tempering at {range}:").into(),
        P::Working { range, hardening: Hardening::Case } => format!("Working hardness of the case: {range}.").into(),
        P::Working { range, .. } => format!("Working hardness: {range}.").into(),
        P::Use(text) => format!("Used for: {text}.").into(),
        P::Age { name, steps, hardness } if steps.is_empty() && hardness.is_empty() => format!("{name}: as the mill delivers it").into(),
        P::Age { name, steps, hardness } => format!("{name}: {steps}, {hardness}").into(),
        P::AgeStep { temperature, hours } => format!("{temperature} for {hours} h").into(),
        P::Section(text) => format!("Depth: {text}.").into(),
        P::HazardsHead => "Hazards:".into(),
        P::NotesHead => "Notes:".into(),

        P::Caution => "These are figures of the grade, not of your bar: a name on a bar proves no steel. Heat a trial piece before the part.".into(),
        P::DataInCelsius => "The notes stand as they were written down, in °C and mm.".into(),

        P::TargetRow { zone, range } => format!("{zone}: {range}").into(),
        P::FromGrades { grades } => format!("usually of {grades}").into(),
        P::TargetCaution => "Usual figures by kind of part; a drawing goes before them.".into(),
    }
}

/// The text with a capital letter at its beginning.
pub(super) fn capital(text: &str) -> String {
    let mut signs = text.chars();
    signs.next().map_or_else(String::new, |first| first.to_uppercase().chain(signs).collect())
}

const ELEMENTS: &str = "C, Mn, Si, P, S, Ni, Cr, Mo, V, W, Co, Cu, B, Pb in mass %";

pub(super) fn refuse(what: SteelRefusal<'_>) -> [Words; 3] {
    let designations = "any designation: 4140, EN19, 1.7225, 42CrMo4, SCM440, G41400, silver steel";
    let composition = "C=0.41,Mn=0.85,Cr=1.0 or ranges: C=0.38-0.43 Mn=0.75-1.0";
    let trial = "Without the composition nothing can be worked out: take it from the bar's paper, or harden a trial piece.";
    match what {
        SteelRefusal::NoGrade => [
            "No steel is named.".into(),
            designations.into(),
            "Name the steel, or list all with --list.".into(),
        ],
        SteelRefusal::UnknownGrade { given, nearest } => [
            format!("No steel here is called {given}. The nearest names are {nearest}; a wrong figure is a different steel, so none of them is taken for it.").into(),
            nearest.to_owned().into(),
            format!("Compare the name with the bar's paper and write one of these, or give the composition. {trial}").into(),
        ],
        SteelRefusal::UnknownPart { given } => [
            format!("No kind of part here is called {given}.").into(),
            "".into(),
            "Try one word of it, as in chisel, die, spring, gear; the part's drawing goes before any list.".into(),
        ],
        SteelRefusal::NotComposition { given } => [
            format!("{given} cannot be read as a composition.").into(),
            composition.into(),
            "Write each element with its share in mass %.".into(),
        ],
        SteelRefusal::UnknownElement { given } => [
            format!("{given} is not counted here: no method uses it.").into(),
            ELEMENTS.into(),
            "Leave it out; iron is the rest.".into(),
        ],
        SteelRefusal::ElementTwice { element } => [
            format!("{element} is given twice.").into(),
            composition.into(),
            "Keep the one that the paper states.".into(),
        ],
        SteelRefusal::Composition(error) => {
            let instead = match error {
                CompositionError::Outside { .. } => "Check the decimal point: shares are in mass %, so 0.41 and not 41.",
                CompositionError::Backward { .. } => "Write the lower share first.",
                CompositionError::TooMuch { .. } => "Check the decimal points; shares are in mass %, and iron is left out.",
                CompositionError::NoCarbon => trial,
            };
            let allowed = match *error {
                CompositionError::Outside { element, .. } => format!("0 to {} % {element}", Shown(element.largest())),
                _ => composition.to_owned(),
            };
            [format!("{}.", capital(&error.to_string())).into(), allowed.into(), instead.into()]
        }
        SteelRefusal::OwnGrade(error) => {
            let most = format!("1 to {} signs", biteband_steel::grade::OwnGrade::LONGEST_NAME);
            let instead = match error {
                OwnGradeError::NoName => "Write what stands on the bar or its paper.",
                OwnGradeError::TooLong { .. } => "Shorten it; the rest belongs into the notes of the part.",
                OwnGradeError::Known { .. } => "Choose that grade, or give yours another name.",
            };
            [format!("{}.", capital(&error.to_string())).into(), most.into(), instead.into()]
        }
    }
}

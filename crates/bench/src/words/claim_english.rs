//! English about claims.
//!
//! What is said of skins, straightened bars and disputes is common practice without a source.

use std::borrow::Cow;

use biteband_evidence::claim::{Rule, Source, Verdict};

use super::claim::{Claim, ClaimRefusal, Side, Way};

type Words = Cow<'static, str>;

fn verdict(verdict: Verdict, side: Option<Side>) -> Words {
    let side = match side {
        None => "",
        Some(Side::Under) => "most likely softer than the paper says",
        Some(Side::Inside) => "most likely as the paper says",
        Some(Side::Over) => "most likely harder than the paper says",
    };
    match (verdict, side) {
        (Verdict::Agrees, _) => "Agrees.".into(),
        (Verdict::Disagrees, "") => "Disagrees.".into(),
        (Verdict::Disagrees, side) => format!("Disagrees: {side}.").into(),
        (Verdict::NotProved, "") => "Not proved.".into(),
        (Verdict::NotProved, side) => format!("Not proved: {side}.").into(),
    }
}

fn rule(rule: Rule) -> Words {
    match rule {
        Rule::Simple => "It agrees where the middle of what was measured lies inside; a part on the limit is passed half of the time.".into(),
        Rule::Guarded(level) => {
            let percent = crate::format::plain(100.0 * level.get());
            format!("It agrees from a chance of {percent} % of lying inside, and disagrees from as much outside; between them nothing is proved.").into()
        }
        Rule::Band(ratio) => {
            let ratio = crate::format::exact(ratio);
            format!("It agrees where the middle lies inside by {ratio} U, and disagrees where it lies outside by as much; U is twice the standard uncertainty.").into()
        }
    }
}

fn doubt(source: Source, scales: &str) -> Words {
    match source {
        Source::Conversion if scales.is_empty() => "Conversion between scales".into(),
        Source::Conversion => format!("Conversion {scales}").into(),
        Source::InstrumentRandom => "Scatter of the tester".into(),
        Source::InstrumentBias => "What the tester is off by".into(),
        Source::Operator => "The hand that strokes the files".into(),
        Source::File => "The files, and the gap between them".into(),
        Source::Spot => "One place against the whole part".into(),
        Source::Rounding => "Rounding of the paper".into(),
        Source::Expected => "What was expected before".into(),
    }
}

fn act(way: Way<'_>) -> Words {
    match way {
        Way::None => "Nothing more is needed.".into(),
        Way::Agree => {
            "Agree with the supplier on one method before anything else is measured.".into()
        }
        Way::Ask => "Ask the supplier what was measured, and how.".into(),
        Way::SamePlace => "Measure where the paper's number was measured.".into(),
        Way::Tester { axis, again: false } => format!("Have it read in {}.", axis.symbol()).into(),
        Way::Tester { axis, again: true } => {
            format!("Have it read in {} on another tester.", axis.symbol()).into()
        }
        Way::TensileTest => "Have a test bar pulled.".into(),
        Way::KnownPiece => "Read it against a known piece.".into(),
        Way::MorePlaces => "Read three more places with the same tester.".into(),
        Way::Stroke { grade } => format!("Stroke the {grade} file.").into(),
    }
}

const fn why(way: Way<'_>) -> &'static str {
    match way {
        Way::None => "The rule has its verdict.",
        Way::Agree => {
            "Nothing at hand can prove this: the window is too narrow, or the part sits on its limit. Name one tester, one block to check it on, the places and how many, or ask for a wider window."
        }
        Way::Ask => "What the paper says cannot all be true, so no measurement can bear it out.",
        Way::SamePlace => "Skin and core of one bar differ, and both papers may be true.",
        Way::Tester { again: true, .. } => {
            "It shares no error with yours. Three readings side by side on a flat ground 0.8 mm (1/32 in) deep, tester checked on a block of about that hardness."
        }
        Way::Tester { .. } => {
            "The paper's own scale needs no table. Three readings side by side on a flat ground 0.8 mm (1/32 in) deep, tester checked on a block of about that hardness."
        }
        Way::TensileTest => "The paper states a strength, and hardness only estimates one.",
        Way::KnownPiece => {
            "A piece of like steel whose hardness is known in the paper's scale, read on the same tester in the same way: what the tester is off by falls away, and with it most of the table."
        }
        Way::MorePlaces => {
            "It averages the scatter and the places, not what the tester is off by nor the table."
        }
        Way::Stroke { .. } => "The file that tells most. Same spot, skin ground off.",
    }
}

fn letter_means(letter: char, means: &str, strength: &str) -> Words {
    format!("Condition {letter} of BS 970 is {means} and {strength}; it is tied to a ruling section that the letter does not name.").into()
}

const fn than(above: bool) -> &'static str {
    if above { "harder" } else { "softer" }
}

pub(super) fn say(phrase: Claim<'_>) -> Words {
    use Claim as C;
    match phrase {
        C::WouldBe { whole, become_: "" } => format!("{whole}, which no table here converts").into(),
        C::WouldBe { whole, become_ } => format!("{whole}, about {become_}").into(),
        C::Verdict { verdict: what, side } => verdict(what, side),
        C::Measured { measured, said } => format!("Measured: {measured}. The paper: {said}.").into(),
        C::MeasuredOpen { said } => format!("What was measured leaves a side open. The paper: {said}.").into(),
        C::Nothing => "Nothing was measured yet.".into(),
        C::Chances { under, inside, over } => format!("Softer {under}, inside {inside}, harder {over}.").into(),
        C::PaperWrong => "The paper itself cannot be right.".into(),
        C::Rule(what) => rule(what),
        C::GuardWidth { guard } => format!("The guard band is {guard} on each side.").into(),
        C::Reading { written, becomes, half, assumed } => {
            let kind = if assumed { "usual for the kind of tester" } else { "yours" };
            let becomes = if becomes.is_empty() { String::new() } else { format!(" is about {becomes}") };
            format!("{written}{becomes}, ± {half}, {kind}").into()
        }
        C::ReadingBeyond { written, end, above } => format!("{written} is {} than {end}, where the tables end", than(above)).into(),
        C::MeasuredBeyond { end, above, said } => format!("Measured: {} than {end}. The paper: {said}.", than(above)).into(),
        C::Uneven { range } => format!("The places differ by more than a tester scatters: {range}. The part is uneven, or one of them is off. The doubt is widened by as much; read each place once more.").into(),
        C::Doubt { source, scales } => doubt(source, scales),
        C::Do(way) => act(way),
        C::Why(way) => why(way).into(),
        C::WhyConversion { axis, percent } => format!("The paper is in {}; measuring in its scale removes the largest doubt, {percent} % of all. Three readings side by side on a flat ground 0.8 mm (1/32 in) deep.", axis.symbol()).into(),
        C::Settles { percent } => format!("That ends it with a chance of {percent}.").into(),
        C::AchievableMeasured { chance, half } => format!("As measured (± {half}) a part right in the middle could be shown inside with {chance} at best.").into(),
        C::AchievableFiles { chance, half } => format!("One pass of files (± {half}): {chance} at best.").into(),
        C::AchievableTester { axis, chance, half } => format!("A checked tester in {}, three readings (± {half}): {chance} at best.", axis.symbol()).into(),
        C::AchievableOpen => "The paper is open on one side: far enough from its limit every test can prove it.".into(),
        C::TooNarrow => "No test named here reaches 95 % even in the middle: the window is narrower than four standard uncertainties.".into(),
        C::Risk { bad, good } => format!("Of many parts from a process that just fills the window (19 of 20 inside), this rule lets through {bad} that are bad and turns away {good} that are good.").into(),
        C::Contradict { one, other, becomes } => format!("{one} and {other} contradict each other: {other} is about {becomes}. One of them is a slip, or another table was used. Ask which one was measured.").into(),
        C::NotComparable { one, other } => format!("No table here compares {one} with {other}.").into(),
        C::SameThing { one, other } => format!("{one} and {other} go together.").into(),
        C::AboveReach { steel, reach, said } => format!("{steel} reaches {reach} as quenched; {said} is more than it can have. Another steel, a hard case, or a slip.").into(),
        C::OnlyCase { steel, core: "", said } => format!("{steel} does not harden through: {said} it has only in a case. Ask for the depth of the case.").into(),
        C::OnlyCase { steel, core, said } => format!("{steel} has {said} only in a case: its core reaches {core} as quenched, in a thin section. Ask for the depth of the case.").into(),
        C::DoesNotHarden { steel } => format!("{steel} does not harden by heat treatment: a hardness like this is another steel, a case, or a slip.").into(),
        C::WrongLetter { letter, means, said, fits: "" } => format!("Condition {letter} of BS 970 is {means}; {said} belongs to no letter from R to Z. One of them is wrong.").into(),
        C::WrongLetter { letter, means, said, fits } => format!("Condition {letter} of BS 970 is {means}; {said} belongs to {fits}. One of them is wrong.").into(),
        C::Letter { letter, means, strength } => letter_means(letter, means, strength),
        C::BelowVerified => "HRC below 20 is valid only on a machine verified for it. Ask for HBW or HRB.".into(),
        C::AboveBrinell => "Above 650 HBW the ball itself gives way. Ask for HV or HRC.".into(),
        C::NoDiameter => "Strength classes go by diameter: the same bar belongs to a lower class when it is thicker. The data here have no diameters for them, so ask the supplier for which ruling section the class holds.".into(),
        C::AskPlace => "Say where it was measured, skin or core: a paper means the skin unless it says so, and a thick bar is softer inside.".into(),
        C::SkinAgainstCore => "A paper for the skin says nothing of the core: a thick bar is softer inside and the paper still true. Measure the skin to test the paper; ask for a core hardness, or another steel, if the part is made from the core.".into(),
        C::Supplied { steel, note } => format!("{steel} as bought: {note}").into(),
        C::About { half } => format!("A single number is what one test showed. It is held to within ± {half}, about what two honest testers differ by (common practice, no source); write a range if the order has one.").into(),
        C::InOtherScale { said, there } => format!("{said} is {there}.").into(),
        C::OpenBand => "On the open side the chances depend on how far hardness is followed, here from 10 to 80 HRC: they are no knowledge.".into(),
        C::FilesReach { softest } => format!("The softest file is {softest} HRC, and the paper lies below it: files cannot tell it from annealed stock. Tell them apart by a Brinell number, by a tester on a spot ground 0.8 mm (1/32 in) deep, since a straightened skin reads hard, or by how it drills beside a known piece.").into(),
        C::Beneath => "The paper's limit lies below 20 HRC, where no table and no file reaches: files can contradict it, never bear it out.".into(),
        C::OneTester => "Places read with the same kind of tester are taken to be read on one tester: what it is off by stays.".into(),
        C::ConversionCaution => "A converted number is an estimate. If money hangs on it, measure in the paper's own scale.".into(),
        C::Strength => "A strength from hardness is an estimate; a certificate of strength is settled by a test bar.".into(),
        C::DoNotHarden => "Do not harden the bar to find out what it was.".into(),
    }
}

pub(super) fn refuse(what: ClaimRefusal<'_>) -> [Words; 3] {
    use ClaimRefusal as C;
    match what {
        C::NoScale { one, other } => [
            "The paper's number has no scale, and scales are far apart.".into(),
            "28-32 HRC, 271-301 HBW, 1000 MPa min".into(),
            format!("Likely readings: {one}; or {other}. Ask the supplier, and write the scale behind the number.").into(),
        ],
        C::BeyondSteel { given, end } => [
            format!("{given} at least is above all that steel has: tables end at {end}.").into(),
            format!("up to {end}").into(),
            "Check the number and its scale against the paper. HV of 1000 and more belong to nitrided skins, coatings and hardmetal, which are not bought as bar.".into(),
        ],
        C::Letter { given } => [
            format!("Condition {given} is no letter of BS 970 that states a hardness.").into(),
            "R, S, T, U, V, W, X, Z".into(),
            "Ask the supplier for the hardness or the strength of the condition.".into(),
        ],
        C::Class { class, strength } => [
            format!("{class} is a property class: the strength of a finished bolt, nominally {strength} (from memory). It is no hardness.").into(),
            format!("{strength} min, 28-32 HRC, 271-301 HBW").into(),
            format!("To hold readings against it write {strength} min; better, the hardness that its standard gives for the size.").into(),
        ],
        C::Rule { given } => [
            format!("{given} is no rule that is known here.").into(),
            "simple, guarded:0.95 (0.5 to 0.999), U, 0.83U, 3sigma".into(),
            "Leave it out for guarded:0.95.".into(),
        ],
        C::Place { given } => [
            format!("{given} is no place that is known here.").into(),
            "skin, core".into(),
            "Skin is what a file or a tester meets on the outside; core is what a saw lays open.".into(),
        ],
    }
}

//! English for the page of claims.

use super::{ClaimPage, ClaimSays, Side};

pub(super) const fn label(label: ClaimPage) -> &'static str {
    use ClaimPage as C;
    match label {
        C::Says => "They say",
        C::SaysHint => "28-32 HRC, 1000 MPa min, 52 HRC / 544 HV, condition T",
        C::Measured => "You measured",
        C::MeasuredHint => "288 HBW ±8; side by side: 29, 30, 30 HRC",
        C::Instrument => "Read with",
        C::Usual => "the usual tester of its scale",
        C::AddReading => "+ reading",
        C::Kept => "Readings that count",
        C::Change => "Change",
        C::Witnesses => "What else counts",
        C::Files => "+ files",
        C::ToFiles => "To the file test",
        C::Details => "Steel, place and rule",
        C::Steel => "Steel that the paper names",
        C::SteelHint => "Empty: the steel of the page Steel",
        C::Place => "You measured at the",
        C::ClaimedPlace => "The paper means the",
        C::Skin => "skin",
        C::Core => "core",
        C::RuleTitle => "How sure",
        C::RuleProved => "proved at 95 %",
        C::RuleSimple => "shared risk",
        C::RuleU => "inside by U",
        C::RuleOwn => "own level",
        C::Level => "Own level",
        C::LevelHint => "99 %, or a guard band: 0.83U, 3sigma",
        C::LevelInstead => {
            "A level lies from 50 to 99.9 %; a guard band is written 0.83U or 3sigma."
        }
        C::Empty => "Type what the paper says with its scale, then what you measured.",
        C::Example => {
            "At the Saltmarsh Slip a shaft bar was bought pre-hard: the paper says 28-32 HRC, the tester showed 288 HBW ±8. Does the paper hold?"
        }
        C::Typing => "Go on typing.",
        C::NeedsReading => "Type what was read, with its scale: 288 HBW ±8.",
        C::Agrees => "Agrees",
        C::Disagrees => "Disagrees",
        C::NotProved => "Not proved",
        C::NotMeasured => "Nothing was measured yet",
        C::Drawn => "What they say against what was measured",
        C::DoubtTitle => "What the doubt is made of",
        C::DoubtSource => "From",
        C::DoubtHalf => "19 of 20 within",
        C::DoubtShare => "share",
        C::SettleTitle => "To settle it:",
        C::OthersTitle => "Other ways to settle it",
        C::BestTitle => "The most a test can show",
        C::PaperTitle => "The paper itself",
        C::Why => "Why, and how sure",
        C::Understood => "As it was understood",
        C::Risk => "What the rule costs",
        C::Sources => "Sources",
        C::NewClaim => "Another claim",
        C::LastClaim => "The last claim again",
        C::NoStroke => "No file was stroked yet.",
        C::ReadingsApart => "Readings kept there do not count here; type them above.",
        C::EitherSide => "It may lie on either side.",
        C::OpenSide => {
            "One side of what was measured is open: how likely the paper is, is not known."
        }
        C::PaperWrong => "The paper itself cannot be right.",
    }
}

pub(super) fn say(phrase: ClaimSays<'_>) -> String {
    use ClaimSays as C;
    match phrase {
        C::Is { written, becomes, half } => format!("{written} is about {becomes} ± {half}"),
        C::TheySay { said } => format!("They say: {said}"),
        C::Measured { shown } => format!("Measured: {shown}"),
        C::Below { high } => format!("softer than {high}"),
        C::Above { low } => format!("harder than {low}"),
        C::Side(Side::Under) => "Most likely softer than the paper says.".to_owned(),
        C::Side(Side::Inside) => "Most likely as the paper says.".to_owned(),
        C::Side(Side::Over) => "Most likely harder than the paper says.".to_owned(),
        C::Softer { percent } => format!("softer {percent}"),
        C::Inside { percent } => format!("inside {percent}"),
        C::Harder { percent } => format!("harder {percent}"),
        C::Strokes { strokes: 1, .. } => "Counts: the stroke of the page File test.".to_owned(),
        C::Strokes { strokes, files: 1 } => {
            format!("Counts: {strokes} strokes with one file, from the page File test.")
        }
        C::Strokes { strokes, files } => {
            format!("Counts: {strokes} strokes with {files} files, from the page File test.")
        }
        C::Expected { mean, sd } => {
            format!(
                "Counts: what was expected there, {mean} ± {sd} HRC. Switch it off there if it came from this paper."
            )
        }
        C::FromSteel { steel } => format!("Now: {steel}, from the page Steel."),
    }
}

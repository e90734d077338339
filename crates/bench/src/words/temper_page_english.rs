//! The temper planner and the panel of the next step, in English.

use super::TemperPage;
use super::temper_page::TemperSaid;

pub(super) const fn say(label: TemperPage) -> &'static str {
    use TemperPage as T;
    match label {
        T::Held => "Time at heat",
        T::HeldHint => {
            "Of each temper, once the part is hot throughout: 2 h, 90 min; empty for 2 h"
        }
        T::At => "A temper to look up",
        T::AtHint => "220 °C, 400 °F / 1 h: what it leaves",
        T::Given => "From the page Steel",
        T::NoSection => "No section: the time to heat through is not told.",
        T::NoChecks => "The oven's dial was not checked.",
        T::OnSteel => "Section and oven",
        T::Ask => "Give the wanted hardness for a plan, or a temper to learn what it leaves.",
        T::Typing => "Go on typing; the answer comes when the field can be read.",
        T::DoneTitle => "What was done to it",
        T::Stage => "The part is",
        T::Bought => "as bought",
        T::Quenched => "quenched",
        T::Tempered => "tempered",
        T::Done => "Tempers so far",
        T::DoneHint => "With their time: 205 °C / 2 h; several as 2x 205 °C / 2 h",
        T::AsQuenched => "Measured as quenched",
        T::AsQuenchedHint => "Before the first temper: 57 HRC; empty if not measured",
        T::Switches => "What else counts",
        T::AtSize => "at its final size",
        T::Overheated => "was heated too hot",
        T::Hurried => "no time left today",
        T::StepsTitle => "Temper, measure, go on only while it is too hard",
        T::StepThen => "then",
        T::OnDial => "on your dial",
        T::InMetal => "in the metal",
        T::Expect => "leaves about",
        T::CurveTitle => "Hardness after tempering",
        T::CurveTable => "The curve in figures",
        T::Temperature => "Temper",
        T::About => "about HRC",
        T::Band => "9 of 10",
        T::Wanted => "wanted",
        T::Brittle => "brittle",
        T::First => "first",
        T::Legend => "What the drawing shows",
        T::KeyMedian => "most likely hardness, in the metal",
        T::KeyBand => "9 results of 10 lie in it",
        T::KeyBook => "the book, without your results",
        T::KeyBrittle => "makes this steel brittle",
        T::KeyOwn => "your results, in HRC",
        T::KeySteps => "tempers of the plan",
        T::KeyLooked => "the temper looked up",
        T::BrittleEach => "Who puts the brittle range where",
        T::Colour => "Colour, as a check only",
        T::ResultsTitle => "Your own results",
        T::ResultsWhy => "What came out of your oven with this steel. The plan then goes by it.",
        T::Measured => "It measured",
        T::MeasuredHint => "53 HRC, 560 HV 10",
        T::After => "after a temper of",
        T::AfterHint => "As your dial showed it: 220 °C / 2 h",
        T::Keep => "Keep this result",
        T::Kept => "Results you keep",
        T::Remove => "remove",
        T::Book => "go by the book alone",
        T::NeedsMeasured => "Give what was measured: 53 HRC.",
        T::OfOther => "of another steel, not counted here",
        T::WhatNow => "What now?",
        T::NoTarget => {
            "Give the wanted hardness above, and this tells what to do next with the part."
        }
        T::TargetTyping => "The wanted hardness above cannot be read yet.",
        T::NoSteel => "Steel not named: nothing is said of tempers.",
        T::SteelUnread => "The steel on the page Steel is not known: nothing is said of tempers.",
        T::ResultsLeftOut => "A result of your own could not be counted; see the page Temper.",
        T::ToPlan => "The whole plan",
        T::ToSteel => "Steel and section",
        T::Undone => "Cannot be undone:",
        T::Others => "Other ways, the next best first",
        T::NotNow => "not now",
        T::Weighing => "How it is weighed",
    }
}

/// "2 h", "2 h, twice", "2 h, 3 times".
fn often(time: &str, times: u8) -> String {
    match times {
        0 | 1 => time.to_owned(),
        2 => format!("{time}, twice"),
        more => format!("{time}, {more} times"),
    }
}

pub(super) fn said(phrase: TemperSaid<'_>) -> String {
    use TemperSaid as T;
    match phrase {
        T::Asked { steel, target } => format!("{steel}, wanted {target}: first temper"),
        T::First { dial: true, at, time, times } => format!("Dial {at}, {}", often(time, times)),
        T::First { dial: false, at, time, times } => format!("{at}, {}", often(time, times)),
        T::Leaves { about } => format!("about {about}"),
        T::Each { time, times } => format!("Each for {}.", often(time, times)),
        T::HeatThrough { minutes } => {
            format!("Heated through in about {minutes}; the time at heat begins then.")
        }
        T::Section { shape, sizes } => format!("Section: {shape}, {sizes}."),
        T::Checks { count: 1 } => "Oven: checked at one temperature.".to_owned(),
        T::Checks { count } => format!("Oven: checked at {count} temperatures."),
        T::TakeTarget { target } => format!("{target}, as in the file test"),
        T::Result { hardness, temper } => format!("{hardness} after {temper}"),
        T::OfSteel { steel } => format!("on {steel}"),
        T::Curve { each, points } => {
            format!("Hardness over the temperature of the metal. {each} {points}.")
        }
        T::CurvePoint { at, about, band } => format!("{at}: about {about}, {band}"),
        T::CurveWanted { wanted } => format!(" Wanted {wanted}."),
        T::CurveBrittle { range } => format!(" Brittle at {range}."),
        T::CurveOwn { points } => format!(" Your results: {points}."),
        T::CurveSteps { steps } => format!(" Tempers of the plan: {steps}."),
        T::GoesBy { steel, target } => format!("{steel}, wanted {target}."),
    }
}

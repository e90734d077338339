//! English on paper: short enough to be read from where one stands.

use std::borrow::Cow;

use super::print::{Print, Unprintable};

type Words = Cow<'static, str>;

pub(super) fn say(phrase: Print<'_>) -> Words {
    use Print as P;
    match phrase {
        P::Strip { span } => format!("Scales side by side, {span}").into(),
        P::Chart { span } => format!("Conversion of {span}").into(),
        P::SheetNumber { number, count } => format!("Sheet {number} of {count}").into(),
        P::Estimates => "Converted numbers are estimates. ± is their own width.".into(),
        P::WidthUnderName(meaning) => format!("± under a name, at the middle of what is shown: {meaning}").into(),
        P::Recalled => "Rests on a cell that was taken from memory and checked, not read in print.".into(),
        P::StripEnds => "The name along a line is the table that it follows. A line ends where its table ends; tables are never joined.".into(),
        P::ChartCells => "A number that the table prints stands as printed; one between printed rows is rounded. A dash: no table reaches there.".into(),
        P::TableChanges => "A heavy bar across a column: below it the next table of its heading. Tables are never joined.".into(),
        P::Version { data } => format!("Biteband, tables {data}.").into(),

        P::Card => "File test card".into(),
        P::CardPart => "Part".into(),
        P::CardDate => "Date".into(),
        P::CardSteel => "Steel".into(),
        P::CardTemper => "Temper".into(),
        P::CardSpot => "Spot".into(),
        P::CardGrind => "1. Grind a flat below scale and soft skin. Clean the teeth.".into(),
        P::CardPush => "2. Lay the file flat. One slow, firm push, 5 kg (11 lb).".into(),
        P::CardTell => "3. Bites: it grips and cuts. Skates: it slides, no chips.".into(),
        P::CardOrder => "4. Hardest file first, then down. Fresh place, same finish.".into(),
        P::CardFile => "File".into(),
        P::CardStroke(number) => format!("Stroke {number}").into(),
        P::CardRule => "Mark the band here, HRC. A notch stands at each of your files.".into(),
        P::CardBracket => "The part lies between the hardest file that skates and the softest file that bites.".into(),
        P::CardWidth { skates, bites, low, high, half } => format!(
            "The honest width is about ±{half} HRC: when the {skates} and all softer skate and the {bites} and all harder bite, three strokes each in a careful hand, 19 of 20 such parts lie in {low} to {high} HRC."
        )
        .into(),
        P::CardDisagree => "If a file bites and a harder one skates, take no number: clean the teeth, grind again, prove both files on a known piece.".into(),
        P::CardCaution => "A file band is an estimate, and so is every number converted from it. If money or safety hangs on it, have the part measured.".into(),

        P::Thickness => "Thinnest section for a hardness test".into(),
        P::ThicknessMeaning => "On or above its line a test is valid. Below it: a lighter test.".into(),
        P::ThicknessAxis => "Thickness, mm".into(),
        P::ThicknessCaution => "For flat parts, the same all through. Converted numbers are estimates: near a line take the lighter test. After the test nothing may show on the far side.".into(),
        P::ThicknessRules { named } => format!("Each line is the strictest of the rules known for its test: {named}. †: rule from memory, not read in print.").into(),
        P::ThicknessSteps => "10 depths for a cone, 1.5 diagonals for Vickers, 8 and 10 depths for Brinell; for Rockwell also the table of ASTM E18, which goes in steps of 0.002 in. Brinell ends at 650 HBW, or where its mark leaves 0.24 to 0.60 of the ball.".into(),
    }
}

pub(super) fn refuse(what: Unprintable<'_>) -> [Words; 3] {
    use Unprintable as U;
    match what {
        U::NoSpan => [
            "There is too little between these ends to draw.".into(),
            "ends at least 0.5 apart, with a table between them".into(),
            "Move the ends further apart, as in 40..65.".into(),
        ],
        U::NoScales => [
            "There is no scale to set beside this one.".into(),
            "one scale or more".into(),
            "Name some, as in HV,HBW,Rm.".into(),
        ],
        U::ScaleTwice(axis) => [
            format!("{axis} is named twice.").into(),
            "each scale once".into(),
            "Leave one of the two out.".into(),
        ],
        U::UnreadableSpan { given } => [
            format!("{given} is not readable as a part of a scale.").into(),
            "40..65".into(),
            "Write the soft end, two points and the hard end.".into(),
        ],
        U::StepUnfit { given, unit } => [
            format!("A step of {given} {unit} does not make a chart.").into(),
            "more than 0, for at most 400 rows".into(),
            "Take a wider step, as in 1 for HRC or 10 for HV.".into(),
        ],
    }
}

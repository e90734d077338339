//! English. Plain and short; the words that the trade uses; no scolding.

use std::borrow::Cow;

use biteband_evidence::{self as evidence, Cause, Hand, Outcome};
use biteband_hardness::designation::{self, Remark};
use biteband_hardness::{Axis, Material, Scale, TableId};
use biteband_quantity::Shown;

use super::{Phrase, Ui, materials};

type Words = Cow<'static, str>;

#[expect(clippy::too_many_lines, reason = "one line for each phrase is the point of the list")]
pub(super) fn say(phrase: Phrase<'_>) -> Words {
    use Phrase as P;
    match phrase {
        P::FileTest => "File test".into(),
        P::Convert => "Convert".into(),
        P::Steel => "Steel".into(),
        P::About => "Sources, limits, settings".into(),
        P::AxisName(axis) => axis_name(axis).into(),
        P::ScaleHint(axis) => scale_hint(axis).into(),
        P::Estimate => "about {}".into(),
        P::Outcome(Outcome::Bite) => "bites".into(),
        P::Outcome(Outcome::Slight) => "not sure".into(),
        P::Outcome(Outcome::Skate) => "skates".into(),
        P::Hand(Hand::Careful) => "Careful".into(),
        P::Hand(Hand::Practised) => "Practised".into(),
        P::Hand(Hand::Casual) => "Casual".into(),
        P::HandMeaning(Hand::Careful) => "Files proved, pressure kept even, same finish. One stroke is worth about ±2 HRC.".into(),
        P::HandMeaning(Hand::Practised) => "Done often, files in good order. One stroke is worth about ±3 HRC.".into(),
        P::HandMeaning(Hand::Casual) => "Seldom done, or old and mixed files. One stroke is worth about ±5 HRC.".into(),

        P::Remark(remark) => remark_words(remark).into(),
        P::Understood(text) => format!("Read as {text}").into(),
        P::TableNotes { parenthesised, recalled } => table_notes(parenthesised, recalled).into(),
        P::OnRow { row } => format!("row {row}").into(),
        P::BetweenRows { lower, upper } => format!("between rows {lower} and {upper}").into(),
        P::WidthMeaning => "The width is the conversion's own, at 95 %: our working figure, made from how far independent tables disagree. No standard states one. A tester's own error comes on top.".into(),
        P::OtherTables { span } => format!("Other tables: {span}.").into(),
        P::OtherTablesNone => "No other table here holds this.".into(),
        P::ConvertCaution => "A converted number is an estimate. If money or safety hangs on it, measure in the scale that is asked for.".into(),
        P::TensileCaution => "Tensile strength from hardness is the least reliable figure of all. On 360 measured heats of heat-treated steel the ISO column reads 25 MPa high; measured steels fall 0 to 6 % below it. Never for cold-worked or case-hardened steel.".into(),
        P::SteelScope => "Carbon, alloy and low-alloy tool steel that a magnet holds, the same all through. Not stainless that a magnet ignores, not cast iron, not a hard case.".into(),
        P::MaterialName(material) => materials::name(material).into(),

        P::DesignationRefused(error) => designation_refused(error),
        P::DesignationInstead(error) => designation_instead(error),
        P::OutsideScale { given, low, high } => format!("{given} is not on the scale: it runs from {low} to {high}.").into(),
        P::OutsideScaleInstead(scale) => outside_scale_instead(scale).into(),
        P::OutsideTables { given, to, end, becomes, table, above } => {
            let way = if above { "above" } else { "below" };
            let table = table_name(table);
            format!("{given} is {way} what any table here converts to {}. The nearest is {end} = {becomes} ({table}).", target_name(to)).into()
        }
        P::OutsideTablesInstead { from, to, above, material: Material::CarbonAlloySteel } => outside_tables_instead(from, to, above).into(),
        P::OutsideTablesInstead { .. } => "Ask for the scale that the tables of this metal hold, or measure in the scale that is asked for.".into(),
        P::LastAgreed { at, says } => format!("The tables last speak together at {at}: {says}.").into(),
        P::NoTable { from, to, material } => format!("No published table here goes from {from} to {to} for {}.", materials::in_words(material)).into(),
        P::NoTableInstead { from, material } => no_table_instead(from, material).into(),
        P::NoMaterial(material) => materials::refused(material).into(),
        P::NoMaterialInstead(material) => materials::instead(material).into(),
        P::TableOfOther { table, material } => format!("{} is no table of {}.", table_name(table), materials::in_words(material)).into(),
        P::OtherMetalCaution { recalled: true } => "This table was recalled as a whole and read nowhere, and the width beside it is assumed: twice that of steel. Check the standard before money or safety hangs on it.".into(),
        P::OtherMetalCaution { recalled: false } => "The width beside it is assumed: twice that of steel, because no second table of this metal was found to measure against.".into(),
        P::MeasuredStrength { shown } => format!("Measured on 360 heats, quenched and tempered at 550 to 680 C: {shown}.").into(),
        P::NotInTable { from, to, table } => format!("{} does not hold both {from} and {to}.", table_name(table)).into(),
        P::NotInTableInstead => "Leave the choice of table open, or take one from the list.".into(),
        P::NoSingleTable { low, high, to } => format!("No single table holds both {low} and {high} with {to}, and tables of different ranges are never joined.").into(),
        P::NoSingleTableInstead => "Convert the two limits one by one; each then names its own table.".into(),
        P::SameScale(axis) => format!("The number is in {axis} already.").into(),
        P::SameScaleInstead => "Ask for another scale.".into(),
        P::BackwardRange { low, high } => format!("The range runs backwards, from {low} to {high}.").into(),
        P::BackwardRangeInstead { low, high } => format!("Write the softer end first: {low} to {high}.").into(),
        P::NoLimit => "There is no limit to convert.".into(),
        P::NotANumber => "That is not a number.".into(),
        P::NotANumberInstead => "Write it in figures, as in 52 or 52.5.".into(),
        P::UnknownTable { given } => format!("There is no table called {given} here.").into(),
        P::UnknownScale { given } => format!("{given} is not known here.").into(),
        P::UnknownMaterial { given } => format!("{given} is no class of materials that is known here.").into(),
        P::UnknownSource { given } => format!("There is no source called {given} here.").into(),
        P::Evidence(error) => evidence_words(error),
        P::EvidenceInstead(error) => evidence_instead(error).into(),
        P::PriorUnreadable => "The expected hardness is not readable.".into(),
        P::PriorUnreadableInstead => "Write mean and standard deviation in HRC, as in N(54,2).".into(),
        P::TargetInOtherUnit => "A single number is no target: a part is never exactly that hard.".into(),
        P::TargetInOtherUnitInstead => "Give a range, a minimum or a maximum.".into(),
        P::NotListOfGrades { given } => format!("{given} is not a list of file grades.").into(),
        P::NotListOfGradesInstead => "Write the grades with spaces between, as in 40 45 50 55 60 65.".into(),
        P::StrokesUnreadable { given } => format!("{given} is not readable as strokes.").into(),
        P::StrokesInstead => "Write the file, a colon, and b (bites), s (not sure) or k (skates) for each stroke: 55:b,b,s 50:k,k.".into(),
        P::ProofsUnreadable { given } => format!("{given} is not readable as a proof.").into(),
        P::ProofsInstead => "Write the file, @, the known hardness, a colon and b, s or k: 55@53:b,55@57:k.".into(),

        P::NothingStroked => "Press what each file did".into(),
        P::NothingStrokedNumber => "No stroke yet".into(),
        P::BetweenFiles { softer, harder } => format!("Between your {softer} and {harder} files").into(),
        P::LikeFile { grade } => format!("About as hard as your {grade} file").into(),
        P::SofterThanAll { grade } => format!("Softer than your {grade} file").into(),
        P::HarderThanAll { grade } => format!("Harder than your {grade} file").into(),
        P::MixedFiles => "The files do not give one clear bracket".into(),
        P::FilesDisagree { harder, softer } => format!("The {softer} bites, so the part is softer than {softer}. The {harder} skates, so it is harder than {harder}. Both cannot be true of one surface.").into(),
        P::FileDisagreesWithItself { grade } => format!("The {grade} file both bites and skates.").into(),
        P::NoNumber => "No number until that is settled.".into(),
        P::Cause(cause) => cause_words(cause).into(),
        P::WithoutFile { grade, band } => format!("Without the {grade}, in HRC: {band}").into(),
        P::BandOr { low } => format!("{low} or more").into(),
        P::BandBelow { high } => format!("below {high}").into(),
        P::BandBetween { low, high } => if low == high { low.to_owned().into() } else { format!("{low} – {high}").into() },
        P::BandUnknown => "?".into(),
        P::LevelMeaning => "19 of 20 such parts lie in the band.".into(),
        P::OpenBelow => "No file here is softer than the part, so nothing bounds it below: it may be far softer. Annealed stock, pre-hard bar (28-32 HRC, 271-301 HBW) and a part that never hardened all look alike to these files. Ask for the paper in HBW, or try how it drills beside a piece you know. Do not harden it to find out.".into(),
        P::OpenAbove => "No file here is harder than the part, so nothing bounds it above. As quenched that is normal for plain high-carbon steel, and brittle: temper it today.".into(),
        P::OneFileOnly => "One file says on which side of it the part lies, not how far. Skating at the edge does not prove the middle.".into(),
        P::SkinNotGround => "The skin is still on. Scale and lost carbon make files bite by 5 to 20 HRC too soon, so a bite says little here. Grind below the skin and stroke again.".into(),
        P::SkinNotSaid => "This takes the skin as ground off. If it is not, a bite may be only skin.".into(),
        P::CarbideRich => "Carbide-rich steel skates a file above its true hardness. The band is moved down by 1.5 HRC and widened; that figure is assumed.".into(),
        P::EdgeStroked => "An edge bites more than a flat. The band is moved up by 1.5 HRC and widened; that figure is assumed.".into(),
        P::FinishDiffers => "Smooth skates, rough bites. With another finish than your known pieces the band is widened by an assumed 1 HRC.".into(),
        P::PriorUsed { mean, sd } => format!("What you expected, {mean} HRC give or take {sd}, is counted in. Switch it off to see the files alone.").into(),
        P::TargetUnder => "under".into(),
        P::TargetInside => "in".into(),
        P::TargetOver => "over".into(),
        P::TargetMet => "In the band you want.".into(),
        P::TargetTooSoft => "Too soft.".into(),
        P::TargetTooHard => "Too hard.".into(),
        P::TargetNotProved => "Not proved either way.".into(),
        P::OddsUnder { percent } => format!("{percent} % under").into(),
        P::OddsInside { percent, target } => format!("{percent} % in {target}").into(),
        P::OddsOver { percent } => format!("{percent} % over").into(),
        P::NextStroke { grade, again: false } => format!("Next stroke: the {grade} file.").into(),
        P::NextStroke { grade, again: true } => format!("Next stroke: the {grade} file again, on a fresh spot.").into(),
        P::NextWidth { now, then } => format!("One stroke there narrows the answer most: the band is about {now} HRC wide now, {then} after it.").into(),
        P::NextDoubt { grade } => format!("A stroke of the {grade} says most about the band you want.").into(),
        P::NextOpen { grade } => {
            format!("The band is open on a side, and a stroke of the {grade} is the likeliest to close it.").into()
        }
        P::NextTooLittle => "Another stroke would change little. Compare side by side with an offcut tempered with the part, read it another way, or accept it on its work.".into(),
        P::NextTooLittleProve { now, then } => format!("Another stroke would change little. Prove your files on pieces of known hardness: that takes the band from {now} to about {then} HRC. Or compare with an offcut tempered with the part, or accept it on its work.").into(),
        P::NextSettle { softer, harder } if softer == harder => format!("Clean the teeth of the {softer}, grind a fresh flat below the skin, and stroke it again: same spot, same direction.").into(),
        P::NextSettle { softer, harder } => format!("Prove the {softer} and the {harder} on a piece of known hardness. Clean the teeth, then stroke both again: same spot, same direction.").into(),
        P::NextNothing => "Every file has had its strokes.".into(),
        P::StrokesAside { grades } => format!(
            "Strokes of your {grades} file are kept aside, because it is not in the set now. Add it again to count them."
        )
        .into(),
        P::NextSkin => "Grind through any soft skin first.".into(),
        P::EyesTitle => "Eyes.".into(),
        P::Eyes => "Hard steel chips. Wear eye protection when you file, strike or grind it.".into(),
        P::OtherScales => "The same band in other scales".into(),
        P::BelowTable => "below the table".into(),
        P::AboveTable { end } => format!("above the table, which ends at {end}").into(),
        P::OtherScalesWidth => "Wider than the band in HRC on purpose: the conversion's own width is counted in.".into(),

        P::Seen(how) => match how {
            "seen" => "Read in print.",
            "part" => "Part read in print, part from memory.",
            "ours" => "Our own working.",
            _ => "From memory.",
        }
        .into(),
        P::TableSummary { rows, columns } => format!("{rows} rows: {columns}").into(),
        P::StrokeCount { word, count } => if count > 1 { format!("{word} ×{count}").into() } else { word.to_owned().into() },
        P::StrokeKey { word, grade } => format!("{grade} file {word}").into(),
        P::SpotNumber(spot) => format!("Spot {spot}").into(),
        P::ProofLine { grade, known, outcome } => format!("{grade} file on {known} HRC: {outcome}").into(),
        P::RidgeLabel { band } => format!("Belief along the rule: {band} HRC").into(),
        P::AlignedLabel { scales } => format!("Scales aligned: {scales}").into(),
        P::StoredDamaged => "What was stored here could not be read. It is kept as it was; the page started fresh.".into(),
        P::StoredNewer { found, known } => format!("What is stored here was written by a newer version (format {found}; this one knows {known}). It is left as it is; nothing you enter now will be kept. Update the page.").into(),
        P::StorageRefused => "This browser does not let the page store anything. All works, but nothing is kept when you close it.".into(),
        P::StorageFull => "The storage is full: the last change is not kept. Free some room on the phone; the page tries again at the next key.".into(),
        P::Wants { target } => format!("wants {target}").into(),
        P::PaperSays { paper } => format!("paper says {paper}").into(),
        P::Version { app, data } => format!("Version {app}, tables {data}").into(),
    }
}

const fn axis_name(axis: Axis) -> &'static str {
    match axis {
        Axis::Tensile => "Tensile strength, estimate",
        Axis::Hardness(scale) => match scale {
            Scale::Hrc => "Rockwell C",
            Scale::Hra => "Rockwell A",
            Scale::Hrd => "Rockwell D",
            Scale::Hr15n => "Superficial 15N",
            Scale::Hr30n => "Superficial 30N",
            Scale::Hr45n => "Superficial 45N",
            Scale::Hrb => "Rockwell B",
            Scale::Hre => "Rockwell E",
            Scale::Hrf => "Rockwell F",
            Scale::Hrg => "Rockwell G",
            Scale::Hrh => "Rockwell H",
            Scale::Hrk => "Rockwell K",
            Scale::Hr15t => "Superficial 15T",
            Scale::Hr30t => "Superficial 30T",
            Scale::Hr45t => "Superficial 45T",
            Scale::Hr15w => "Superficial 15W",
            Scale::Hv => "Vickers",
            Scale::Hbw => "Brinell, carbide ball",
            Scale::Hbw500 => "Brinell with 500 kgf",
            Scale::Hbs => "Brinell, steel ball (old)",
            Scale::Hk => "Knoop",
            Scale::Scleroscope => "Shore scleroscope",
            Scale::Leeb => "Leeb rebound",
            Scale::HvUci => "Ultrasonic",
        },
    }
}

const fn scale_hint(axis: Axis) -> &'static str {
    match axis {
        Axis::Tensile => "MPa; ksi is read too",
        Axis::Hardness(Scale::Hv) => "pyramid; say the load, HV10 or HV30",
        Axis::Hardness(Scale::Hbw) => "ball; 10 mm and 3000 kgf unless said",
        Axis::Hardness(Scale::Scleroscope) => "dropped hammer; not Shore A or D for rubber",
        Axis::Hardness(_) => "",
    }
}

const fn remark_words(remark: Remark) -> &'static str {
    match remark {
        Remark::DecimalComma => "Comma read as decimal point.",
        Remark::SymbolFirst => "The standard form has the number first.",
        Remark::SpaceMissing => "The standard form has a space before the symbol.",
        Remark::OldSymbol => "Old or shop name of the scale.",
        Remark::LowerCase => "The standard form has capital letters.",
        Remark::RangeStyle => "Read as a range.",
        Remark::LimitStyle => "Read as a limit.",
        Remark::Approximate => "\"About\" is left out; say how far off it may be.",
        Remark::RockwellTakenAsC => {
            "Rockwell without a letter is taken as C. If it was soft steel it may be B: ask."
        }
        Remark::BallLetterMissing => {
            "Ball not said (W carbide, S steel): steel against carbide changes up to 1 point. Ask."
        }
        Remark::BallLetterOnDiamond => "This scale uses a diamond; the ball letter is left out.",
        Remark::ForceMissing => {
            "Load not said, as in HV10 or HV30. Ask for it, and whether skin or core was measured."
        }
        Remark::ForceNotStandard => "Not a usual test load; kept as written.",
        Remark::BrinellConditionMissing => {
            "Ball and load not said; the trade means 10 mm and 3000 kgf."
        }
        Remark::BrinellSymbolWithdrawn => "HB does not say which ball; read as HBW, carbide.",
        Remark::SteelBallWithdrawn => "HBS, the steel ball, is withdrawn; kept as history.",
        Remark::AboveBrinellLimit => {
            "Above 650 the Brinell ball itself gives way: for comparison only. Ask for HRC or HV."
        }
        Remark::DwellNotWritten => "A dwell of 10 to 15 s is the rule and is left out.",
        Remark::BelowVerifiedRockwellC => "Below 20 HRC counts only on a machine verified for it.",
        Remark::FromKsi => "Turned from ksi into MPa.",
    }
}

const fn table_notes(parenthesised: bool, recalled: bool) -> &'static str {
    match (parenthesised, recalled) {
        (false, false) => "",
        (true, false) => {
            "In parentheses in print: outside the recommended range of that test, for comparison only."
        }
        (false, true) => "This cell was taken from memory and checked, not read in print.",
        (true, true) => {
            "In parentheses in print, for comparison only; and taken from memory, not read in print."
        }
    }
}

fn table_name(table: TableId) -> &'static str {
    table.get().map_or("", |t| t.short())
}

const fn target_name(to: Axis) -> &'static str {
    match to {
        Axis::Tensile => "tensile strength",
        Axis::Hardness(scale) => scale.symbol(),
    }
}

fn designation_refused(error: &designation::Error) -> Words {
    use designation::Error as E;
    match error {
        E::Empty => "Nothing is written yet.".into(),
        E::TooLong => "That is longer than any hardness.".into(),
        E::NoNumber => "There is no number in it.".into(),
        E::NumberTooLong => "That number has more digits than any reading.".into(),
        E::Negative => "A hardness is not negative.".into(),
        E::NoScale => {
            "The number has no scale: 60 in one and 60 in another are different things.".into()
        }
        E::RockwellLetterMissing => "HR needs its letter: A, B, C, 15N, 30N and so on.".into(),
        E::RubberScale => "Shore A and Shore D are scales for rubber and plastic.".into(),
        E::UnknownScale(word) => format!(
            "\"{}\" is no hardness scale that is known here.",
            crate::format::shortened(word)
        )
        .into(),
        E::TwoScales(first, second) => {
            format!("Two scales stand in one reading: {first} and {second}.").into()
        }
        E::TwoNumbers(first, second) => format!(
            "Two numbers stand there, {} and {}, and it is not said how they belong together.",
            Shown(*first),
            Shown(*second)
        )
        .into(),
        E::SlashRange(first, second) => format!(
            "{}/{}: the slash belongs to test conditions, not to ranges.",
            Shown(*first),
            Shown(*second)
        )
        .into(),
        E::Backward(first, second) => {
            format!("The range runs backwards, from {} to {}.", Shown(*first), Shown(*second))
                .into()
        }
        E::BrinellPair { ball_mm, force_kgf } => format!(
            "No Brinell test has a {} mm ball with {} kgf.",
            Shown(*ball_mm),
            Shown(*force_kgf)
        )
        .into(),
        // The refusal of a number off its scale is worded with its range, in `refusal`.
        E::Outside(_) => "".into(),
    }
}

fn designation_instead(error: &designation::Error) -> Words {
    use designation::Error as E;
    match error {
        E::Empty | E::NoNumber | E::TooLong | E::NumberTooLong => "Write it as on the drawing: 52 HRC, 38-42 HRC, 640 HV 30, 900 MPa.".into(),
        E::Negative => "For a range write the softer end first, as in 38-42 HRC.".into(),
        E::NoScale => "Choose the scale, or write it behind the number. In most shops a bare number over 20 means HRC: ask.".into(),
        E::RockwellLetterMissing => "Ask which scale; for hardened steel it is nearly always HRC.".into(),
        E::RubberScale => "For the scleroscope write HSc, as in 70 HSc.".into(),
        E::UnknownScale(_) => "Known are HRC, HRA, HRD, HRB, HRF, HR15N to HR45T, HV, HBW, HBS, HK, HSc, MPa, ksi and the shop's Rc, BHN, Rockwell, Vickers.".into(),
        E::TwoScales(..) => "Convert the one that was measured; the other was converted from it and may be rounded.".into(),
        E::TwoNumbers(..) => "For a range write a dash between: 38-42 HRC. For a load write it behind the symbol: 640 HV 30.".into(),
        E::SlashRange(first, second) => format!("If a range is meant, write {} to {}.", Shown(*first), Shown(*second)).into(),
        E::Backward(first, second) => format!("Write the softer end first: {} to {}.", Shown(*second), Shown(*first)).into(),
        E::BrinellPair { .. } => "Usual pairs are 10/3000, 10/1500, 10/1000, 10/500, 5/750, 2.5/187.5 and 1/30. Ask what was used.".into(),
        E::Outside(_) => "".into(),
    }
}

const fn outside_scale_instead(scale: Scale) -> &'static str {
    match scale {
        Scale::Hrb => {
            "HRB stops at 100, about 240 HBW: for anything harder use HRC or HBW. Near the top 1 HRB is worth about 6 HBW, so even 98 is weak evidence."
        }
        Scale::Hrc => "For soft steel use HRB or HBW, for very hard steel HV.",
        Scale::Hbw | Scale::Hbs => "For hard steel use HRC or HV.",
        _ => "Check the scale, or use HV, which has no upper end.",
    }
}

const fn outside_tables_instead(from: Axis, to: Axis, above: bool) -> &'static str {
    match (from, to, above) {
        (_, Axis::Tensile, true) => {
            "Nobody has published a strength for steel this hard. Specify hardness instead, or have a tensile test made."
        }
        (Axis::Tensile, _, true) => "Specify hardness for steel this strong, or have it measured.",
        (Axis::Hardness(Scale::Hrc), _, false) => {
            "Ask for the HBW or HRB number, or measure in HV. Lists that print numbers down there set them in parentheses: good only to guess what was meant."
        }
        (_, Axis::Hardness(Scale::Hrc), false) => {
            "Steel this soft has no HRC number. Keep HBW or HV, or ask for HRB."
        }
        (_, Axis::Hardness(Scale::Hrb), true) => "Steel this hard has no HRB number. Ask for HRC.",
        _ => "Ask for another scale, or measure in HV, which covers soft and hard.",
    }
}

const fn no_table_instead(from: Axis, material: Material) -> &'static str {
    match from {
        _ if !matches!(material, Material::CarbonAlloySteel) => {
            "Ask for one of the scales that its tables hold, or check the class of the metal."
        }
        Axis::Hardness(Scale::Leeb | Scale::HvUci) => {
            "A portable instrument converts inside itself: ask which scale and which table it was set to, and use that number."
        }
        Axis::Hardness(Scale::Hre | Scale::Hrg | Scale::Hrh | Scale::Hrk) => {
            "That scale is for soft metals and has no table for steel here. Ask for HRB or HBW."
        }
        _ => "Ask for HV, HBW or HRC; most tables go through these.",
    }
}

fn evidence_words(error: &evidence::Error) -> Words {
    let whole = error.to_string();
    // The core speaks in one lower-case fragment with its way out behind a colon; here the fact is a
    // sentence, and the way out has its own words.
    let fact = whole.split_once(": ").map_or(whole.as_str(), |(fact, _)| fact);
    let (first, rest) = fact.split_at_checked(1).unwrap_or(("", fact));
    format!("{}{rest}.", first.to_ascii_uppercase()).into()
}

const fn evidence_instead(error: &evidence::Error) -> &'static str {
    use evidence::Error as E;
    match error {
        E::NoFiles => "Write at least one grade, or take the trade set.",
        E::TooManyFiles { .. } => "Leave out the files you did not stroke.",
        E::EqualGrades { .. } => "Keep one of the two, or write the grade you measured.",
        E::OutOfRange { .. } => "Check the number and its scale.",
        E::NoSuchFile { .. } | E::ForeignFile { .. } => "Add the file to your set.",
        E::TooManyStrokes { .. } => "Start again with fewer; they no longer tell anything.",
        E::TooManySpots { .. } => "Test the fifth place as a part of its own.",
        E::SlightInYesNo { .. } => "Answer bites or skates, or switch three answers on.",
        E::TargetUpsideDown { .. } | E::BeliefUpsideDown { .. } => "Write the softer end first.",
        E::NoReadings => "Type at least one reading, or take the instrument out.",
        E::TooManyReadings { .. } => "Keep the first 30; more no longer tell anything.",
        E::TooManyGroups { .. } => "Keep the eight instruments you trust most.",
        E::NothingLeft => {
            "What you expected and what the files say exclude each other: switch the expectation off."
        }
    }
}

const fn cause_words(cause: Cause) -> &'static str {
    match cause {
        Cause::WornOrClogged => "the file that skates is worn or its teeth are clogged",
        Cause::FilesSwapped => "the files were swapped",
        Cause::DifferentSpots => "the strokes lay on different spots",
        Cause::SoftSkin => "a soft skin or a soft patch",
        Cause::FinishDiffers => "one place is polished, the other ground",
    }
}

#[expect(clippy::too_many_lines, reason = "one line for each label is the point of the list")]
#[expect(clippy::inline_always, reason = "see `Language::label`")]
#[inline(always)]
pub(super) const fn ui_words(ui: Ui) -> &'static str {
    match ui {
        Ui::Brand => "Biteband",
        Ui::NoName => "Part without a name",
        Ui::ChoosePart => "Choose a part",
        Ui::QuickLookUp => "Quick look-up",
        Ui::OpenAbout => "Sources, limits and settings",
        Ui::Back => "Back",
        Ui::SkipToContent => "Skip to the page",
        Ui::Pages => "Pages",
        Ui::GradedFiles => "Your graded files, hardest on top",
        Ui::Slight => "not sure",
        Ui::LikelyCauses => "Likely causes, the likeliest first:",
        Ui::Undo => "Undo",
        Ui::StartAgain => "Start again",
        Ui::Spot => "Place on the part",
        Ui::NewSpot => "Fresh spot",
        Ui::Target => "Wanted hardness",
        Ui::TargetHint => "As on the drawing: 50-54, 58 HRC min, HV 700 +-50",
        Ui::TargetNone => "None: the band alone is shown.",
        Ui::Conditions => "About the surface",
        Ui::ConditionSkin => "Skin",
        Ui::SkinGround => "ground off",
        Ui::SkinNotGround => "still on",
        Ui::ConditionPlace => "Place",
        Ui::PlaceFlat => "flat",
        Ui::PlaceEdge => "edge or corner",
        Ui::ConditionFinish => "Finish",
        Ui::FinishSame => "like my known pieces",
        Ui::FinishDifferent => "smoother or rougher",
        Ui::ConditionSteel | Ui::TabSteel => "Steel",
        Ui::SteelOrdinary => "carbon or low alloy",
        Ui::SteelCarbide => "carbide-rich (D2, high speed)",
        Ui::HandTitle => "Your hand",
        Ui::FilesTitle => "Your files",
        Ui::FilesLabel => "Grades, HRC",
        Ui::FilesHint => "Any grades from 30 to 70, with spaces between",
        Ui::ToleranceLabel => "Graded to ±, HRC",
        Ui::ToleranceHint => "1 for test files; 3 for an ordinary file of about 63",
        Ui::TradeSet => "Six test files",
        Ui::OrdinaryFile => "One ordinary file",
        Ui::ProveTitle => "Prove your files",
        Ui::ProveWhy => {
            "Stroke a piece whose hardness you know. It tells how each file and your hand read, and is worth more than repeats."
        }
        Ui::ProveFile => "File",
        Ui::ProveKnown => "Known hardness, HRC",
        Ui::ProveKnownHint => "2 below and 2 above the file's number say most",
        Ui::ProveBites => "it bites",
        Ui::ProveSkates => "it skates",
        Ui::Remove => "Remove",
        Ui::PriorTitle => "What you expected",
        Ui::PriorWhy => {
            "If the steel and the temper promise a hardness, it can be counted in with the files. Off unless you switch it on."
        }
        Ui::PriorOn => "Count it in",
        Ui::PriorMean => "Expected, HRC",
        Ui::PriorSd => "Give or take, HRC",
        Ui::ReadingTitle => "Instrument readings",
        Ui::ReadingInstrument => "Instrument",
        Ui::ReadingField => "Reading",
        Ui::ReadingHint => "52 53, 640 HV10, 288 HBW ±8; against a known piece: 53; 50 HRC; 47",
        Ui::ReadingAdd => "Add the reading",
        Ui::Why => "Why",
        Ui::WhyModel => {
            "Each file has its own small error, your hand has one for the session, each spot has one. They do not average out, so three strokes of one file are worth less than three files. The widths are anchored to SAE J864, which has a proved file bite two points below its number and skate two points above; how the width splits between file, hand and spot is assumed, because nobody has published it."
        }
        Ui::NextTitle => "Next",
        Ui::ConvertField => "Hardness, as written",
        Ui::ConvertScales => "Scale of the number",
        Ui::ConvertHint => "52, 38-42, HV 700 +-50, BHN 300, 130 ksi",
        Ui::ConvertEmpty => "Type a number and choose its scale.",
        Ui::ConvertTyping => "Go on typing.",
        Ui::MoreScales => "more scales",
        Ui::FewerScales => "fewer",
        Ui::TableChoice => "Table",
        Ui::TableAny => "first that fits",
        Ui::AllTables => "What other tables say",
        Ui::MaterialChoice => "What it is made of",
        Ui::TargetsChoice => "Scales shown",
        Ui::UsualScales => "usual scales",
        Ui::ZoomIn => "Closer",
        Ui::ZoomOut => "Wider",
        Ui::PanSofter => "Softer",
        Ui::PanHarder => "Harder",
        Ui::ZoomReset => "Back to the number",
        Ui::SideBySide => "All tables side by side",
        Ui::TabConvert => "A number",
        Ui::TabMark => "A mark",
        Ui::TabPaper => "On paper",
        Ui::TabTemper => "Temper",
        Ui::Timer => "Timer",
        Ui::TabUnknown => "Unknown",
        Ui::TabClaim => "Claim",
        Ui::Parts => "Parts",
        Ui::ConvertWhere => "Where this comes from",
        Ui::ConvertResults => "Converted",
        Ui::PadTitle => "Number keys",
        Ui::PadDone => "Done",
        Ui::PadErase => "Erase",
        Ui::PadSpace => "Space",
        Ui::PadLetters => "ABC",
        Ui::OfflineReady => "Ready to use without a network.",
        Ui::UpdateWaiting => "A new version is ready. Yours goes on working until you ask for it.",
        Ui::UpdateNow => "Update now",
        Ui::UpdateLater => "Later",
        Ui::Dismiss => "Close",
        Ui::ShowStored => "Show what was stored",
        Ui::PartComing => "One moment: this page is being loaded.",
        Ui::PartMissing => "This page could not be loaded.",
        Ui::PartMissingInstead => {
            "Nothing you typed is lost. Check the network and try again; once it is here, it needs none."
        }
        Ui::TryAgain => "Try again",
    }
}

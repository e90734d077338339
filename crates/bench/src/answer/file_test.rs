//! What strokes of graded files and readings of instruments say.

use biteband_evidence::{
    Assessment, Band, FileTest, Finish, Outcome, Place, Shape, Skin, SteelKind, Stroke, Target,
    Worth,
};
use biteband_hardness::{Axis, Scale};
use serde::Serialize;

use super::clashes::{ClashAnswer, clashes, settle};
use super::file_question::{FileQuestion, build, parse_target};
use super::file_scales::{BandInScale, scales};
use super::readings::{ReadingAnswer, gather};
use crate::format::{self, Units};
use crate::refusal::Refusal;
use crate::words::{Gauge, Language, Phrase};

/// The answer, or contradictory evidence.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(untagged)]
pub enum FileOutcome {
    /// A band.
    Answered(Box<FileAnswer>),
    /// No band, because files or readings disagree.
    Refused(Box<FileRefused>),
}

/// A band with everything read off it.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FileAnswer {
    /// The verdict in words.
    pub verdict: String,
    /// The band.
    pub band: BandAnswer,
    /// Most likely middle, HRC; absent when an end is open.
    pub median: Option<f64>,
    /// Chances about the target, when there is one.
    pub target: Option<TargetAnswer>,
    /// Always empty here; filled where the answer is refused.
    pub contradictions: Vec<ContradictionAnswer>,
    /// What the readings of instruments were understood as.
    pub readings: Vec<ReadingAnswer>,
    /// Always empty here; filled where the answer is refused.
    pub clashes: Vec<ClashAnswer>,
    /// The next stroke.
    pub next: NextAnswer,
    /// The same band on other scales, widened by the conversion.
    pub scales: Vec<BandInScale>,
    /// What the band takes for granted.
    pub notes: Vec<String>,
    /// Cautions of the work itself.
    pub cautions: Vec<String>,
    /// Stable names of the sources.
    pub sources: Vec<&'static str>,
}

/// Contradictory evidence.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct FileRefused {
    /// Why there is no band.
    pub refused: Refusal,
    /// The files that disagree.
    pub contradictions: Vec<ContradictionAnswer>,
    /// What the readings of instruments were understood as.
    pub readings: Vec<ReadingAnswer>,
    /// Readings that disagree with the files or each other.
    pub clashes: Vec<ClashAnswer>,
    /// What to do.
    pub next: NextAnswer,
    /// Cautions of the work itself.
    pub cautions: Vec<String>,
}

/// A band of hardness.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BandAnswer {
    /// Always `HRC`.
    pub scale: &'static str,
    /// Low end; absent when open.
    pub low: Option<f64>,
    /// High end; absent when open.
    pub high: Option<f64>,
    /// The share of cases the band is meant to hold.
    pub level: f64,
    /// Nothing bounds it below.
    pub open_low: bool,
    /// Nothing bounds it above.
    pub open_high: bool,
    /// In whole HRC, rounded outward.
    pub shown: String,
}

/// Chances about the target.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct TargetAnswer {
    /// As understood, HRC.
    pub low: Option<f64>,
    /// As understood, HRC.
    pub high: Option<f64>,
    /// Chance of being softer.
    pub under: f64,
    /// Chance of being in it.
    pub inside: f64,
    /// Chance of being harder.
    pub over: f64,
    /// In words.
    pub verdict: String,
}

/// Two files that disagree, or one with itself.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ContradictionAnswer {
    /// The file that skates, HRC.
    pub harder: f64,
    /// The file that bites, HRC.
    pub softer: f64,
    /// What is odd about it.
    pub why: String,
    /// Likely causes, the likeliest first.
    pub causes: Vec<CauseAnswer>,
    /// The band if the harder file is set aside.
    pub without_harder: String,
    /// The band if the softer file is set aside.
    pub without_softer: String,
}

/// A likely cause.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct CauseAnswer {
    /// In words.
    pub text: String,
}

/// The next step.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct NextAnswer {
    /// Grade of the file to stroke; absent when another stroke would change little.
    pub file: Option<f64>,
    /// The reason.
    pub why: String,
    /// In words, complete.
    pub say: String,
    /// Width of the 95 % band to expect afterwards, HRC.
    pub expected_width: Option<f64>,
    /// Width of the 95 % band now, HRC.
    pub width_now: f64,
}

const HRC: Axis = Axis::Hardness(Scale::Hrc);

/// Answers the question.
///
/// # Errors
/// A refusal when the question makes no sense; contradictory evidence is an outcome of its own.
///
/// # Example
/// ```
/// use biteband_bench::answer::{FileOutcome, FileQuestion, assess, parse_strokes};
/// use biteband_bench::words::Language;
/// let strokes = parse_strokes(Language::English, "40:k 45:k 50:k 55:b 60:b 65:b").unwrap();
/// let question = FileQuestion { strokes, ..Default::default() };
/// let Ok(FileOutcome::Answered(answer)) = assess(Language::English, &question) else { panic!() };
/// assert!(answer.verdict.contains("50") && answer.verdict.contains("55"));
/// ```
pub fn assess(language: Language, question: &FileQuestion) -> Result<FileOutcome, Refusal> {
    Ok(assessed(language, question)?.outcome)
}

/// An answer with the assessment behind it, for those who draw the belief.
pub(crate) struct Assessed {
    pub(crate) outcome: FileOutcome,
    pub(crate) found: Assessment,
    pub(crate) target: Option<Target>,
}

/// See [`assess`].
pub(crate) fn assessed(language: Language, question: &FileQuestion) -> Result<Assessed, Refusal> {
    let test = build(language, question)?;
    let target = match question.target.as_deref().map(str::trim) {
        None | Some("") => None,
        Some(written) => Some(parse_target(language, written)?),
    };
    let found = test.assess(target).map_err(|error| Refusal::of_evidence(language, &error))?;
    let readings = gather(language, &question.readings)?.1;
    let outcome = answer(language, question.units, &test, &found, target, readings);
    Ok(Assessed { outcome, found, target })
}

fn answer(
    language: Language,
    units: Units,
    test: &FileTest,
    found: &Assessment,
    target: Option<Target>,
    readings: Vec<ReadingAnswer>,
) -> FileOutcome {
    let cautions = vec![language.say(Phrase::Eyes).into_owned()];
    let contradictions = contradictions(language, found);
    let clashes = clashes(language, found, &readings);
    let trouble = if let Some(first) = contradictions.first() {
        let [softer, harder] = [first.softer, first.harder].map(format::exact);
        let settle = language.say(Phrase::NextSettle { softer: &softer, harder: &harder });
        Some(("evidence.contradiction", first.why.clone(), settle))
    } else {
        let worst = clashes.first().zip(found.clashes().first());
        worst.map(|(told, clash)| {
            ("evidence.clash", told.text.clone(), language.gauge(settle(clash)))
        })
    };
    if let Some((code, why, settle)) = trouble {
        let no_number = language.say(Phrase::NoNumber);
        let given = given(test, &readings);
        let refused = Refusal::new(code, format!("{why} {no_number}"), given, "", settle.clone());
        let next = NextAnswer {
            file: None,
            why,
            say: settle.into_owned(),
            expected_width: None,
            width_now: found.advice().present_width(),
        };
        return FileOutcome::Refused(Box::new(FileRefused {
            refused,
            contradictions,
            readings,
            clashes,
            next,
            cautions,
        }));
    }
    let band = found.band();
    let known =
        !(test.strokes().is_empty() && readings.is_empty()) || test.prior().expected().is_some();
    let mut notes = notes(language, test, &band);
    if readings.iter().any(|reading| reading.assumed) {
        notes.push(language.gauge(Gauge::Assumed).into_owned());
    }
    FileOutcome::Answered(Box::new(FileAnswer {
        verdict: verdict(language, test),
        band: band_answer(language, &band),
        median: band.median(),
        // Before anything is known the odds would only show where the axis ends.
        target: target.filter(|_| known).and_then(|t| target_answer(language, found, t)),
        contradictions,
        readings,
        clashes,
        next: next_answer(language, test, found),
        scales: scales(language, units, &band),
        notes,
        cautions,
        sources: vec!["file-model", "sae-j864", "file-adjustments", "conversion-width"],
    }))
}

/// The strokes and readings that contradict each other.
pub(super) fn given(test: &FileTest, readings: &[ReadingAnswer]) -> String {
    let one = |stroke: &Stroke| {
        let grade = test.set().grade(stroke.file()).map(format::exact).unwrap_or_default();
        let letter = match stroke.outcome() {
            Outcome::Bite => "b",
            Outcome::Slight => "s",
            Outcome::Skate => "k",
        };
        format!("{grade}:{letter}")
    };
    let readings = readings.iter().map(|reading| reading.understood.clone());
    test.strokes().iter().map(one).chain(readings).collect::<Vec<_>>().join(" ")
}

/// How each file answered on the whole: most strokes win, a draw is "slight".
fn leanings(test: &FileTest) -> Vec<(f64, Option<Outcome>)> {
    test.set()
        .files()
        .map(|(file, grade)| {
            let count = |outcome| {
                test.strokes().iter().filter(|s| s.file() == file && s.outcome() == outcome).count()
            };
            let (bites, slight, skates) =
                (count(Outcome::Bite), count(Outcome::Slight), count(Outcome::Skate));
            let leaning = if bites + slight + skates == 0 {
                None
            } else if bites > slight.max(skates) {
                Some(Outcome::Bite)
            } else if skates > slight.max(bites) {
                Some(Outcome::Skate)
            } else {
                Some(Outcome::Slight)
            };
            (grade, leaning)
        })
        .collect()
}

fn verdict(language: Language, test: &FileTest) -> String {
    let leanings = leanings(test);
    let grades = |wanted: Outcome| {
        leanings.iter().filter(move |(_, l)| *l == Some(wanted)).map(|(grade, _)| *grade)
    };
    let hardest_skating = grades(Outcome::Skate).max_by(f64::total_cmp);
    let softest_biting = grades(Outcome::Bite).min_by(f64::total_cmp);
    let slight: Vec<f64> = grades(Outcome::Slight).collect();
    let text = |grade: f64| format::exact(grade);
    let read = !test.readings().is_empty();
    if read && test.strokes().is_empty() {
        return language.gauge(Gauge::ByReadings).into_owned();
    }
    let phrase = match (hardest_skating, softest_biting) {
        (None, None) if slight.is_empty() => language.say(Phrase::NothingStrokedNumber),
        _ if slight.len() == 1 => {
            let grade = slight.first().copied().map(text).unwrap_or_default();
            language.say(Phrase::LikeFile { grade: &grade })
        }
        (Some(skates), Some(bites)) if skates < bites && slight.is_empty() => {
            language.say(Phrase::BetweenFiles { softer: &text(skates), harder: &text(bites) })
        }
        (None, Some(bites)) if slight.is_empty() => {
            language.say(Phrase::SofterThanAll { grade: &text(bites) })
        }
        (Some(skates), None) if slight.is_empty() => {
            language.say(Phrase::HarderThanAll { grade: &text(skates) })
        }
        _ => language.say(Phrase::MixedFiles),
    };
    if read {
        return language.gauge(Gauge::WithReadings { verdict: &phrase }).into_owned();
    }
    phrase.into_owned()
}

/// A band in whole HRC, rounded outward.
pub(crate) fn shown_band(language: Language, shape: Shape) -> String {
    match shape {
        Shape::Unknown => language.say(Phrase::BandUnknown),
        Shape::Below(high) => language.say(Phrase::BandBelow { high: &format::outward_high(high) }),
        Shape::Above(low) => language.say(Phrase::BandOr { low: &format::outward_low(low) }),
        Shape::Between(low, high) => language.say(Phrase::BandBetween {
            low: &format::outward_low(low),
            high: &format::outward_high(high),
        }),
    }
    .into_owned()
}

fn band_answer(language: Language, band: &Band) -> BandAnswer {
    BandAnswer {
        scale: HRC.symbol(),
        low: band.low(),
        high: band.high(),
        level: band.level().get(),
        open_low: band.open_low(),
        open_high: band.open_high(),
        shown: shown_band(language, band.shape()),
    }
}

/// Chance at and above which a verdict about the target is given.
///
/// Source: the usual 95 % of a stated confidence; below it the answer is "not proved".
pub(crate) const PROVED: f64 = 0.95;

fn target_answer(language: Language, found: &Assessment, target: Target) -> Option<TargetAnswer> {
    let odds = found.odds()?;
    let verdict = if odds.inside() >= PROVED {
        Phrase::TargetMet
    } else if odds.under() >= PROVED {
        Phrase::TargetTooSoft
    } else if odds.over() >= PROVED {
        Phrase::TargetTooHard
    } else {
        Phrase::TargetNotProved
    };
    Some(TargetAnswer {
        low: target.low(),
        high: target.high(),
        under: odds.under(),
        inside: odds.inside(),
        over: odds.over(),
        verdict: language.say(verdict).into_owned(),
    })
}

pub(super) fn contradictions(language: Language, found: &Assessment) -> Vec<ContradictionAnswer> {
    found
        .contradictions()
        .iter()
        .map(|c| {
            let (harder, softer) =
                (format::exact(c.harder_grade()), format::exact(c.softer_grade()));
            let why = if c.is_one_file() {
                language.say(Phrase::FileDisagreesWithItself { grade: &harder })
            } else {
                language.say(Phrase::FilesDisagree { harder: &harder, softer: &softer })
            };
            let without = |grade: &str, band: Band| {
                let band = shown_band(language, band.shape());
                language.say(Phrase::WithoutFile { grade, band: &band }).into_owned()
            };
            ContradictionAnswer {
                harder: c.harder_grade(),
                softer: c.softer_grade(),
                why: why.into_owned(),
                causes: c
                    .causes()
                    .iter()
                    .map(|&cause| CauseAnswer {
                        text: language.say(Phrase::Cause(cause)).into_owned(),
                    })
                    .collect(),
                without_harder: without(&harder, c.without_harder()),
                without_softer: without(&softer, c.without_softer()),
            }
        })
        .collect()
}

fn next_answer(language: Language, test: &FileTest, found: &Assessment) -> NextAnswer {
    let advice = found.advice();
    let width_now = advice.present_width();
    let whole = |width: f64| format::fixed(width, 0);
    let Some(best) = advice.best() else {
        let say = language.say(Phrase::NextNothing).into_owned();
        return NextAnswer { file: None, why: say.clone(), say, expected_width: None, width_now };
    };
    let lone = test.set().count() == 1 && !test.strokes().is_empty();
    if advice.worth() == Worth::TooLittle || lone {
        let proving = advice.proving().filter(|p| p.expected_width() < width_now - 0.5);
        let say = match proving {
            Some(p) => language.say(Phrase::NextTooLittleProve {
                now: &whole(width_now),
                then: &whole(p.expected_width()),
            }),
            None => language.say(Phrase::NextTooLittle),
        }
        .into_owned();
        return NextAnswer {
            file: None,
            why: say.clone(),
            say,
            expected_width: Some(best.expected_width()),
            width_now,
        };
    }
    let grade = format::exact(best.grade());
    let again = test.strokes().iter().any(|s| s.file() == best.file());
    let band = found.band();
    let why = match best.expected_doubt() {
        Some(_) => language.say(Phrase::NextDoubt { grade: &grade }),
        // Where the band is open its width is only the reach of the axis, and says nothing.
        None if band.open_low() || band.open_high() => {
            language.say(Phrase::NextOpen { grade: &grade })
        }
        None => language.say(Phrase::NextWidth {
            now: &format::fixed(width_now, 1),
            then: &format::fixed(best.expected_width(), 1),
        }),
    };
    let say = language.say(Phrase::NextStroke { grade: &grade, again });
    NextAnswer {
        file: Some(best.grade()),
        why: why.clone().into_owned(),
        say: format!("{say} {why}"),
        expected_width: Some(best.expected_width()),
        width_now,
    }
}

pub(super) fn notes(language: Language, test: &FileTest, band: &Band) -> Vec<String> {
    let mut notes = Vec::new();
    let mut say = |phrase: Phrase<'_>| notes.push(language.say(phrase).into_owned());
    let stroked = !test.strokes().is_empty();
    // A reading says nothing of how files were used.
    let by_files = stroked || test.readings().is_empty();
    if stroked && test.set().count() == 1 {
        say(Phrase::OneFileOnly);
    }
    if stroked && band.open_low() && !band.open_high() {
        say(Phrase::OpenBelow);
    }
    if stroked && band.open_high() && !band.open_low() {
        say(Phrase::OpenAbove);
    }
    let conditions = test.conditions();
    match conditions.skin {
        Skin::NotGround if by_files => say(Phrase::SkinNotGround),
        Skin::NotSaid if by_files => say(Phrase::SkinNotSaid),
        _ => {}
    }
    if conditions.steel == SteelKind::CarbideRich {
        say(Phrase::CarbideRich);
    }
    if conditions.place == Place::Edge {
        say(Phrase::EdgeStroked);
    }
    if conditions.finish == Finish::Different {
        say(Phrase::FinishDiffers);
    }
    if let Some((mean, sd)) = test.prior().expected() {
        say(Phrase::PriorUsed { mean: &format::exact(mean), sd: &format::exact(sd) });
    }
    notes
}

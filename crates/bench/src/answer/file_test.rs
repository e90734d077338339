//! What strokes of graded files say.

use biteband_evidence::{
    Assessment, Band, Conditions, FileSet, FileTest, Finish, Hand, Outcome, Place, Prior, Proof,
    Shape, Skin, SteelKind, Stroke, Target, Worth,
};
use biteband_hardness::designation::Amount;
use biteband_hardness::{Axis, Reading, Scale, convert, designation, spans};
use serde::{Deserialize, Serialize};

use crate::format::{self, Units};
use crate::refusal::Refusal;
use crate::words::{Language, Phrase};

/// What is asked.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "camelCase")]
pub struct FileQuestion {
    /// Grades of the files at hand, HRC; empty for the trade set 40 to 65.
    pub set: Vec<f64>,
    /// Half-width to which the files are graded, HRC; absent for 1.
    pub tolerance: Option<f64>,
    /// `careful`, `practised` or `casual`; absent for practised.
    pub hand: Option<String>,
    /// Answers are bites or skates only.
    pub yes_no: bool,
    /// Strokes in any order.
    pub strokes: Vec<StrokeInput>,
    /// Strokes on pieces of known hardness.
    pub proved: Vec<ProofInput>,
    /// Skin, place, finish and steel.
    pub conditions: ConditionsInput,
    /// Expected hardness as mean and standard deviation, HRC.
    pub prior: Option<(f64, f64)>,
    /// The wanted hardness as written: `50-54 HRC`, `HV 700 +-50`.
    pub target: Option<String>,
    /// Units of the texts; numbers stay in MPa.
    pub units: Units,
}

/// One stroke.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StrokeInput {
    /// Grade of the file, HRC.
    pub file: f64,
    /// `bites`, `slight` or `skates`.
    pub outcome: String,
    /// Spot on the part, from 1; absent for 1.
    #[serde(default)]
    pub spot: Option<u8>,
}

/// One stroke on a piece of known hardness.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ProofInput {
    /// Grade of the file, HRC.
    pub file: f64,
    /// Hardness of the piece, HRC.
    pub known: f64,
    /// `bites`, `slight` or `skates`.
    pub outcome: String,
}

/// Conditions that shift every stroke.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "camelCase")]
pub struct ConditionsInput {
    /// Whether the skin was ground off; absent when not said.
    pub skin_ground: Option<bool>,
    /// Stroked on an edge or corner instead of a flat.
    pub edge: bool,
    /// The finish differs from that of the pieces the files are known on.
    pub finish_differs: bool,
    /// Carbide-rich or high-alloy steel.
    pub carbide_rich: bool,
}

impl ConditionsInput {
    fn read(self) -> Conditions {
        Conditions {
            skin: match self.skin_ground {
                None => Skin::NotSaid,
                Some(true) => Skin::Ground,
                Some(false) => Skin::NotGround,
            },
            place: if self.edge { Place::Edge } else { Place::Flat },
            finish: if self.finish_differs { Finish::Different } else { Finish::LikeProof },
            steel: if self.carbide_rich { SteelKind::CarbideRich } else { SteelKind::Ordinary },
        }
    }
}

/// The answer, or contradictory evidence.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(untagged)]
pub enum FileOutcome {
    /// A band.
    Answered(Box<FileAnswer>),
    /// No band, because files disagree.
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

/// The band on another scale.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct BandInScale {
    /// Symbol of the scale, `Rm` for tensile strength.
    pub scale: &'static str,
    /// Low end; absent when open or below the table.
    pub low: Option<f64>,
    /// High end; absent when open or above the table.
    pub high: Option<f64>,
    /// Stable name of the table.
    pub table: &'static str,
    /// Rounded by the rule of the scale, with what is missing said.
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
/// One-sided 95 % point of a normal law, for a band with an open end.
const ONE_SIDED_95: f64 = 1.644_853_626_951_472;
/// Two-sided 95 % point of a normal law.
const TWO_SIDED_95: f64 = 1.959_963_984_540_054;

fn parse_outcome(language: Language, text: &str) -> Result<Outcome, Refusal> {
    match text.trim().to_ascii_lowercase().as_str() {
        "bites" | "bite" | "b" => Ok(Outcome::Bite),
        "slight" | "s" | "?" | "not sure" => Ok(Outcome::Slight),
        "skates" | "skate" | "k" => Ok(Outcome::Skate),
        _ => Err(Refusal::new(
            "bench.unknown_outcome",
            language.say(Phrase::StrokesUnreadable { given: &format::shortened(text) }),
            format::shortened(text),
            "bites, slight, skates",
            language.say(Phrase::StrokesInstead),
        )),
    }
}

fn parse_hand(language: Language, text: Option<&str>) -> Result<Hand, Refusal> {
    match text.map(|t| t.trim().to_ascii_lowercase()).as_deref() {
        None | Some("" | "practised" | "practiced") => Ok(Hand::Practised),
        Some("careful") => Ok(Hand::Careful),
        Some("casual") => Ok(Hand::Casual),
        Some(other) => Err(Refusal::new(
            "bench.unknown_hand",
            language.say(Phrase::UnknownScale { given: &format::shortened(other) }),
            format::shortened(other),
            "careful, practised, casual",
            "",
        )),
    }
}

fn unreadable_strokes(language: Language, text: &str) -> Refusal {
    Refusal::new(
        "bench.unreadable_strokes",
        language.say(Phrase::StrokesUnreadable { given: &format::shortened(text) }),
        format::shortened(text),
        "55:b,b,s 50:k,k",
        language.say(Phrase::StrokesInstead),
    )
}

fn grade(text: &str) -> Option<f64> {
    biteband_hardness::decimal(text)
}

/// Reads `55:b,b,s 50:k,k`; a spot other than the first is written `55#2:b`.
///
/// # Errors
/// A refusal with an example.
pub fn parse_strokes(language: Language, text: &str) -> Result<Vec<StrokeInput>, Refusal> {
    let mut strokes = Vec::new();
    for group in text.split_whitespace() {
        let refuse = || unreadable_strokes(language, group);
        let (file, answers) = group.split_once(':').ok_or_else(refuse)?;
        let (file, spot) = match file.split_once('#') {
            Some((file, spot)) => {
                let spot = spot.parse::<u8>().ok().filter(|&spot| spot > 0);
                (file, Some(spot.ok_or_else(refuse)?))
            }
            None => (file, None),
        };
        let file = grade(file).ok_or_else(refuse)?;
        for answer in answers.split(',') {
            parse_outcome(language, answer)?;
            strokes.push(StrokeInput { file, outcome: answer.to_owned(), spot });
        }
    }
    Ok(strokes)
}

/// Reads `55@53:b,55@57:k`.
///
/// # Errors
/// A refusal with an example.
pub fn parse_proofs(language: Language, text: &str) -> Result<Vec<ProofInput>, Refusal> {
    let mut proofs = Vec::new();
    for item in text.split([',', ' ']).filter(|item| !item.is_empty()) {
        let refuse = || {
            Refusal::new(
                "bench.unreadable_proofs",
                language.say(Phrase::ProofsUnreadable { given: &format::shortened(item) }),
                format::shortened(item),
                "55@53:b,55@57:k",
                language.say(Phrase::ProofsInstead),
            )
        };
        let (file, rest) = item.split_once('@').ok_or_else(refuse)?;
        let (known, outcome) = rest.split_once(':').ok_or_else(refuse)?;
        let file = grade(file).ok_or_else(refuse)?;
        let known = grade(known).ok_or_else(refuse)?;
        parse_outcome(language, outcome)?;
        proofs.push(ProofInput { file, known, outcome: outcome.to_owned() });
    }
    Ok(proofs)
}

/// Reads `N(54,2)`, mean and standard deviation in HRC; with decimal commas `N(54,5; 2)`.
///
/// # Errors
/// A refusal with an example.
pub fn parse_prior(language: Language, text: &str) -> Result<(f64, f64), Refusal> {
    let inner = text.trim().strip_prefix(['N', 'n']).map(str::trim_start);
    let inner = inner.and_then(|rest| rest.strip_prefix('(')?.strip_suffix(')'));
    inner
        .and_then(|inner| inner.split_once(';').or_else(|| inner.split_once(',')))
        .and_then(|(mean, sd)| Some((grade(mean)?, grade(sd)?)))
        .ok_or_else(|| {
            Refusal::new(
                "bench.unreadable_prior",
                language.say(Phrase::PriorUnreadable),
                format::shortened(text),
                "N(54,2)",
                language.say(Phrase::PriorUnreadableInstead),
            )
        })
}

/// Reads a wanted hardness on any scale and brings its limits to HRC.
///
/// # Errors
/// A refusal when the text is no hardness or no table reaches HRC from it.
pub fn parse_target(language: Language, text: &str) -> Result<Target, Refusal> {
    // A bare range on the file page means HRC, the scale of the files.
    let parsed = match designation::parse(text) {
        Err(designation::Error::NoScale) => designation::parse(&format!("{text} HRC")),
        other => other,
    }
    .map_err(|error| Refusal::of_designation(language, text, &error))?;
    let written = parsed.designation();
    if matches!(written.amount, Amount::Single(_)) {
        return Err(Refusal::new(
            "bench.target_not_a_range",
            language.say(Phrase::TargetInOtherUnit),
            text.trim(),
            "50-54 HRC, 58 HRC min, 45 HRC max",
            language.say(Phrase::TargetInOtherUnitInstead),
        ));
    }
    let (low, high) = written.amount.limits();
    let to_hrc = |value: Option<f64>| -> Result<Option<f64>, Refusal> {
        let Some(value) = value else { return Ok(None) };
        if written.axis == HRC {
            return Ok(Some(value));
        }
        let refuse = |error| Refusal::of_hardness(language, &error);
        let reading = Reading::new(written.axis, value).map_err(refuse)?;
        Ok(Some(convert(reading, HRC, None).map_err(refuse)?.at.value))
    };
    let (low, high) = (to_hrc(low)?, to_hrc(high)?);
    let target = match (low, high) {
        (Some(low), Some(high)) => Target::between(low, high),
        (Some(low), None) => Target::at_least(low),
        (None, Some(high)) => Target::at_most(high),
        (None, None) => return Err(unreadable_strokes(language, text)),
    };
    target.map_err(|error| Refusal::of_evidence(language, &error))
}

/// Puts a question together as a file test.
///
/// # Errors
/// A refusal that names what is wrong with the set, a stroke, a proof or the expectation.
pub fn build(language: Language, question: &FileQuestion) -> Result<FileTest, Refusal> {
    let refuse = |error| Refusal::of_evidence(language, &error);
    let mut set = if question.set.is_empty() {
        FileSet::trade()
    } else {
        FileSet::new(&question.set).map_err(refuse)?
    };
    if let Some(tolerance) = question.tolerance {
        set = set.with_tolerance(tolerance).map_err(refuse)?;
    }
    let prior = match question.prior {
        Some((mean, sd)) => Prior::normal(mean, sd).map_err(refuse)?,
        None => Prior::flat(),
    };
    let answering = if question.yes_no {
        biteband_evidence::Answering::YesNo
    } else {
        biteband_evidence::Answering::ThreeWay
    };
    let mut test = FileTest::new(set.clone())
        .with_hand(parse_hand(language, question.hand.as_deref())?)
        .with_answering(answering)
        .with_conditions(question.conditions.read())
        .with_prior(prior);
    let find = |grade: f64| {
        set.find(grade).map_err(|error| Refusal {
            given: format::exact(grade),
            allowed: set.files().map(|(_, own)| format::exact(own)).collect::<Vec<_>>().join(", "),
            ..Refusal::of_evidence(language, &error)
        })
    };
    for stroke in &question.strokes {
        let file = find(stroke.file)?;
        let outcome = parse_outcome(language, &stroke.outcome)?;
        let spot = stroke.spot.unwrap_or(1).saturating_sub(1);
        test = test.with(Stroke::new(file, outcome).on_spot(spot)).map_err(refuse)?;
    }
    for proof in &question.proved {
        let file = find(proof.file)?;
        let outcome = parse_outcome(language, &proof.outcome)?;
        let proof = Proof::new(file, proof.known, outcome).map_err(refuse)?;
        test = test.with_proof(proof).map_err(refuse)?;
    }
    Ok(test)
}

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
    let outcome = answer(language, question.units, &test, &found, target);
    Ok(Assessed { outcome, found, target })
}

fn answer(
    language: Language,
    units: Units,
    test: &FileTest,
    found: &Assessment,
    target: Option<Target>,
) -> FileOutcome {
    let cautions = vec![language.say(Phrase::Eyes).into_owned()];
    let contradictions = contradictions(language, found);
    if let Some(first) = contradictions.first() {
        let [softer, harder] = [first.softer, first.harder].map(format::exact);
        let settle = language.say(Phrase::NextSettle { softer: &softer, harder: &harder });
        let refused = Refusal::new(
            "evidence.contradiction",
            format!("{} {}", first.why, language.say(Phrase::NoNumber)),
            stroke_list(test),
            "",
            settle.clone(),
        );
        let next = NextAnswer {
            file: None,
            why: first.why.clone(),
            say: settle.into_owned(),
            expected_width: None,
            width_now: found.advice().present_width(),
        };
        return FileOutcome::Refused(Box::new(FileRefused {
            refused,
            contradictions,
            next,
            cautions,
        }));
    }
    let band = found.band();
    let known = !test.strokes().is_empty() || test.prior().expected().is_some();
    FileOutcome::Answered(Box::new(FileAnswer {
        verdict: verdict(language, test),
        band: band_answer(language, &band),
        median: band.median(),
        // Before anything is known the odds would only show where the axis ends.
        target: target.filter(|_| known).and_then(|t| target_answer(language, found, t)),
        contradictions,
        next: next_answer(language, test, found),
        scales: scales(language, units, &band),
        notes: notes(language, test, &band),
        cautions,
        sources: vec!["file-model", "sae-j864", "file-adjustments", "conversion-width"],
    }))
}

fn stroke_list(test: &FileTest) -> String {
    let one = |stroke: &Stroke| {
        let grade = test.set().grade(stroke.file()).map(format::exact).unwrap_or_default();
        let letter = match stroke.outcome() {
            Outcome::Bite => "b",
            Outcome::Slight => "s",
            Outcome::Skate => "k",
        };
        format!("{grade}:{letter}")
    };
    test.strokes().iter().map(one).collect::<Vec<_>>().join(" ")
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
const PROVED: f64 = 0.95;

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

fn contradictions(language: Language, found: &Assessment) -> Vec<ContradictionAnswer> {
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

fn notes(language: Language, test: &FileTest, band: &Band) -> Vec<String> {
    let mut notes = Vec::new();
    let mut say = |phrase: Phrase<'_>| notes.push(language.say(phrase).into_owned());
    let stroked = !test.strokes().is_empty();
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
        Skin::Ground => {}
        Skin::NotGround => say(Phrase::SkinNotGround),
        Skin::NotSaid => say(Phrase::SkinNotSaid),
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

/// The band on the scales of drawings and certificates, widened by the conversion's own width.
fn scales(language: Language, units: Units, band: &Band) -> Vec<BandInScale> {
    let axes = [Axis::Hardness(Scale::Hv), Axis::Hardness(Scale::Hbw), Axis::Tensile];
    axes.into_iter().filter_map(|axis| scale(language, units, band, axis)).collect()
}

/// One limit on another axis, or on which side of the table it lies.
enum Limit {
    Open,
    At { value: f64, sd: f64 },
    Below,
    Above { end: f64 },
}

fn limit(axis: Axis, hrc: Option<f64>) -> Limit {
    let Some(hrc) = hrc else { return Limit::Open };
    let found = Reading::new(HRC, hrc).and_then(|reading| convert(reading, axis, None));
    if let Ok(found) = found {
        return Limit::At { value: found.at.value, sd: found.width.sd };
    }
    match spans(HRC, axis, None).next() {
        Some((_, span)) if hrc > span.low.0 => Limit::Above { end: span.high.1 },
        _ => Limit::Below,
    }
}

fn scale(language: Language, units: Units, band: &Band, axis: Axis) -> Option<BandInScale> {
    let (low, high) = (limit(axis, band.low()), limit(axis, band.high()));
    let middle = match limit(axis, band.median()) {
        Limit::At { value, sd } => Some((value, TWO_SIDED_95 * sd)),
        _ => None,
    };
    let widen = |value: f64, sd: f64, side: f64| match middle {
        // Independent errors add in quadrature around the middle of a closed band.
        // A square root is the same on every machine; `hypot` is not.
        Some((centre, half)) => {
            let own = value - centre;
            centre + side * (own * own + half * half).sqrt()
        }
        None => value + side * ONE_SIDED_95 * sd,
    };
    let low_value = match low {
        Limit::At { value, sd } => Some(widen(value, sd, -1.0)),
        _ => None,
    };
    let high_value = match high {
        Limit::At { value, sd } => Some(widen(value, sd, 1.0)),
        _ => None,
    };
    let text = |v: f64| units.number(axis, v);
    let unit = units.of(axis);
    let beyond = |end: f64| language.say(Phrase::AboveTable { end: &units.with_unit(axis, end) });
    let shown = match (low_value, high_value) {
        (Some(low), Some(high)) => format!("{} {unit}", format::dash(&text(low), &text(high))),
        (Some(low), None) => match high {
            Limit::Above { end } => format!("{} {unit} – {}", text(low), beyond(end)),
            _ => {
                language.say(Phrase::BandOr { low: &format!("{} {unit}", text(low)) }).into_owned()
            }
        },
        (None, Some(high_value)) => match low {
            Limit::Below => {
                format!("{} – {} {unit}", language.say(Phrase::BelowTable), text(high_value))
            }
            _ => language
                .say(Phrase::BandBelow { high: &format!("{} {unit}", text(high_value)) })
                .into_owned(),
        },
        (None, None) => match low {
            Limit::Above { end } => beyond(end).into_owned(),
            _ => return None,
        },
    };
    let table = spans(HRC, axis, None).next().and_then(|(id, _)| id.get()).map_or("", |t| t.key());
    Some(BandInScale { scale: axis.symbol(), low: low_value, high: high_value, table, shown })
}

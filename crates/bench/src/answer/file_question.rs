//! What is asked of a file test, and how its parts are written.

use biteband_evidence::{
    Conditions, FileSet, FileTest, Finish, Hand, Outcome, Place, Prior, Proof, Skin, SteelKind,
    Stroke, Target,
};
use biteband_hardness::designation::Amount;
use biteband_hardness::{Axis, Choice, Reading, Scale, convert, designation};
use serde::{Deserialize, Serialize};

use super::readings::{ReadingInput, gather};
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
    /// Readings of instruments on the part.
    pub readings: Vec<ReadingInput>,
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

const HRC: Axis = Axis::Hardness(Scale::Hrc);

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
    let (single, low, high) = limits_in_hrc(language, text)?;
    if single {
        return Err(Refusal::new(
            "bench.target_not_a_range",
            language.say(Phrase::TargetInOtherUnit),
            text.trim(),
            "50-54 HRC, 58 HRC min, 45 HRC max",
            language.say(Phrase::TargetInOtherUnitInstead),
        ));
    }
    let target = match (low, high) {
        (Some(low), Some(high)) => Target::between(low, high),
        (Some(low), None) => Target::at_least(low),
        (None, Some(high)) => Target::at_most(high),
        (None, None) => return Err(unreadable_strokes(language, text)),
    };
    target.map_err(|error| Refusal::of_evidence(language, &error))
}

/// A wanted hardness with the scale that it counts on: of a number without one HRC, the scale of the files. Anything
/// else stands as it was typed.
pub(crate) fn with_scale(text: &str) -> String {
    let text = text.trim();
    match designation::parse(text) {
        Err(designation::Error::NoScale) => format!("{text} HRC"),
        _ => text.to_owned(),
    }
}

/// Reads a hardness on any scale as limits in HRC, and whether it is a single number, which is both limits.
pub(super) fn limits_in_hrc(
    language: Language,
    text: &str,
) -> Result<(bool, Option<f64>, Option<f64>), Refusal> {
    // A bare range on the file page means HRC, the scale of the files.
    let parsed = designation::parse(&with_scale(text))
        .map_err(|error| Refusal::of_designation(language, text, &error))?;
    let written = parsed.designation();
    let (low, high) = written.amount.limits();
    let to_hrc = |value: Option<f64>| -> Result<Option<f64>, Refusal> {
        let Some(value) = value else { return Ok(None) };
        if written.axis == HRC {
            return Ok(Some(value));
        }
        let refuse = |error| Refusal::of_hardness(language, &error);
        let reading = Reading::new(written.axis, value).map_err(refuse)?;
        Ok(Some(convert(reading, HRC, Choice::STEEL).map_err(refuse)?.at.value))
    };
    let single = matches!(written.amount, Amount::Single(_));
    Ok((single, to_hrc(low)?, to_hrc(high)?))
}

/// Puts a question together as a file test.
///
/// # Errors
/// A refusal that names what is wrong with the set, a stroke, a proof, the expectation or a reading.
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
        .with_prior(prior)
        .with_readings(gather(language, &question.readings)?.0);
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

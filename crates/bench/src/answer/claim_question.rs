//! What is asked of a claim, and how a paper and a rule are read.

use biteband_evidence::Level;
use biteband_evidence::claim::Rule;
use biteband_hardness::designation::{self, Amount, Parsed, parse};
use biteband_hardness::{
    Axis, Choice, Error, Reading, Scale, convert as convert_one, convert_limits, decimal,
};
use biteband_steel::condition::{self, BoltClass, BsCondition};
use serde::Deserialize;

use super::file_question::FileQuestion;
use super::frame::{HRC, Said};
use super::readings::ReadingInput;
use crate::format::{self, Units};
use crate::refusal::Refusal;
use crate::words::{Claim, ClaimRefusal, Language};

/// What is asked.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "camelCase")]
pub struct ClaimQuestion {
    /// What the paper says: `28-32 HRC`, `363 HBW`, `1000 MPa min`, `52 HRC / 544 HV`, `condition T`.
    pub claim: String,
    /// Readings of instruments, one entry for each instrument and place.
    pub measured: Vec<ReadingInput>,
    /// What files said; its target is not used, its readings count as measured.
    pub files: FileQuestion,
    /// Any designation of the grade that the paper names.
    pub steel: Option<String>,
    /// `simple`, `guarded:0.95`, `U`, `0.83U` or `3sigma`; absent for `guarded:0.95`.
    pub rule: Option<String>,
    /// Where it was measured: `skin` or `core`.
    pub place: Option<String>,
    /// Where the paper's number was measured: `skin` or `core`; absent for the skin, as papers mean it.
    pub claimed_place: Option<String>,
    /// Units of the texts; numbers stay in MPa.
    pub units: Units,
}

/// Where on a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Spot {
    Skin,
    Core,
}

/// A paper as it was understood.
pub(super) struct Paper {
    /// Every hardness it states, in its order.
    pub(super) parts: Vec<Part>,
    /// The condition letter that stands for a hardness.
    pub(super) letter: Option<&'static BsCondition>,
}

/// One hardness of a paper.
pub(super) struct Part {
    pub(super) parsed: Parsed,
    /// As it was written.
    pub(super) text: String,
    pub(super) said: Said,
    /// A single number, and what it is held to within.
    pub(super) about: Option<f64>,
}

pub(super) fn refuse(
    language: Language,
    code: &'static str,
    given: &str,
    what: ClaimRefusal<'_>,
) -> Refusal {
    let [message, allowed, instead] = language.claim_refused(what);
    Refusal::new(code, message, format::shortened(given), allowed, instead)
}

pub(super) fn read_spot(language: Language, given: Option<&str>) -> Result<Option<Spot>, Refusal> {
    match given.map(|text| text.trim().to_ascii_lowercase()).as_deref() {
        None | Some("") => Ok(None),
        Some("skin") => Ok(Some(Spot::Skin)),
        Some("core") => Ok(Some(Spot::Core)),
        Some(other) => {
            let shown = format::shortened(other);
            let what = ClaimRefusal::Place { given: &shown };
            Err(refuse(language, "bench.unknown_place", other, what))
        }
    }
}

/// Reads `simple`, `guarded:0.95`, `99 %`, `U`, `0.83U`, `3sigma`; the name comes back in standard form.
pub(super) fn read_rule(
    language: Language,
    given: Option<&str>,
) -> Result<(Rule, String), Refusal> {
    let text = given.unwrap_or_default().trim().to_ascii_lowercase();
    let unknown = || {
        let shown = format::shortened(&text);
        refuse(language, "bench.unknown_rule", &text, ClaimRefusal::Rule { given: &shown })
    };
    let guarded = |level: f64| {
        let rule = Level::new(level).map(Rule::Guarded).map_err(|_| unknown())?;
        Ok((rule, format!("guarded:{}", format::exact(level))))
    };
    match text.as_str() {
        "" | "guarded" => guarded(0.95),
        "simple" => Ok((Rule::Simple, text)),
        // Three sigma are three standard uncertainties beyond the limit, 1.5 U.
        "3sigma" => Ok((Rule::Band(1.5), text)),
        "6sigma" => Ok((Rule::Band(3.0), text)),
        "u" => Ok((Rule::Band(1.0), "U".to_owned())),
        _ => {
            let level = text.strip_prefix("guarded:").unwrap_or(&text);
            let percent = level.strip_suffix('%').map(str::trim_end);
            if let Some(level) = decimal(percent.unwrap_or(level)) {
                // No chance is above one: 99 can only mean per cent.
                let whole = if percent.is_some() || level > 1.0 { 100.0 } else { 1.0 };
                return guarded(level / whole);
            }
            let ratio = text.strip_suffix('u').and_then(|ratio| decimal(ratio.trim_end()));
            let ratio = ratio.filter(|ratio| *ratio > 0.0 && *ratio <= 3.0).ok_or_else(unknown)?;
            Ok((Rule::Band(ratio), format!("{}U", format::exact(ratio))))
        }
    }
}

/// Whether a paper can be read.
///
/// # Errors
/// A refusal that says why not.
pub(crate) fn check_paper(language: Language, text: &str) -> Result<(), Refusal> {
    read_paper(language, text).map(drop)
}

/// Whether a rule can be read.
///
/// # Errors
/// A refusal that says why not.
pub(crate) fn check_rule(language: Language, text: &str) -> Result<(), Refusal> {
    read_rule(language, Some(text)).map(drop)
}

/// Reads a paper: one hardness, several with a slash, comma or brackets between, a condition letter, or both.
pub(super) fn read_paper(language: Language, text: &str) -> Result<Paper, Refusal> {
    let text = text.trim();
    if let Some((letter, beside)) = lettered(text) {
        let Some(found) = condition::bs(letter) else {
            let what = ClaimRefusal::Letter { given: letter };
            return Err(refuse(language, "bench.unknown_condition", text, what));
        };
        // The standard states the letter in Brinell; that is no conversion.
        let (low, high) = found.hbw();
        let parts = match (beside.as_str(), high) {
            ("", Some(high)) => {
                let range = format!("{}-{} HBW", format::exact(low), format::exact(high));
                vec![part(language, &range)?]
            }
            ("", None) => vec![part(language, &format!("{} HBW min", format::exact(low)))?],
            (beside, _) => stated(language, beside)?,
        };
        return Ok(Paper { parts, letter: Some(found) });
    }
    if let Some(class) = property_class(text) {
        let strength = format!("{} MPa", format::exact(class.tensile()));
        let what = ClaimRefusal::Class { class: class.name(), strength: &strength };
        return Err(refuse(language, "bench.claim_is_class", text, what));
    }
    Ok(Paper { parts: stated(language, text)?, letter: None })
}

/// The hardnesses that a paper states.
fn stated(language: Language, text: &str) -> Result<Vec<Part>, Refusal> {
    match parse(text) {
        Ok(_) => Ok(vec![part(language, text)?]),
        Err(designation::Error::NoScale) => Err(missing_scale(language, text)),
        Err(_) => match split(text) {
            Some(texts) => texts.into_iter().map(|one| part(language, one)).collect(),
            None => Ok(vec![part(language, text)?]),
        },
    }
}

/// A condition letter and what the paper states beside it: "condition T", "T condition", the letter alone,
/// "cond. T, 35 HRC", "360 HBW (condition T)", "817M40T 35 HRC".
fn lettered(text: &str) -> Option<(char, String)> {
    let mut signs = text.chars();
    if let (Some(letter), None) = (signs.next(), signs.next()) {
        return condition::bs(letter).map(|found| (found.letter(), String::new()));
    }
    let (letter, ahead, behind) = conditioned(text).or_else(|| named(text))?;
    let bare = |text: &str| text.trim_matches(|sign: char| " ,/;:=()-".contains(sign)).to_owned();
    let mut beside = [bare(ahead), bare(behind)].to_vec();
    beside.retain(|text| !text.is_empty());
    Some((letter.to_ascii_uppercase(), beside.join(" / ")))
}

/// The letter behind or before the word, and what stands around both.
fn conditioned(text: &str) -> Option<(char, &str, &str)> {
    let lower = text.to_ascii_lowercase();
    let at = lower.find("cond")?;
    let (ahead, word) = (text.get(..at)?, lower.get(at..)?);
    let word = ["condition", "cond.", "cond"].into_iter().find(|one| word.starts_with(one))?;
    let lone = |mut signs: [Option<char>; 2]| {
        let letter = signs[0].take().filter(char::is_ascii_alphabetic)?;
        signs[1].is_none_or(|next| !next.is_alphanumeric()).then_some(letter)
    };
    let behind = text.get(at + word.len()..)?.trim_start_matches([' ', ':', '=']);
    let mut signs = behind.chars();
    if let Some(letter) = lone([signs.next(), signs.next()]) {
        return Some((letter, ahead, behind.get(1..)?));
    }
    let ahead = ahead.trim_end();
    let mut signs = ahead.chars().rev();
    let letter = lone([signs.next(), signs.next()])?;
    Some((letter, ahead.get(..ahead.len() - 1)?, behind))
}

/// The letter behind a British name, which may be of up to three words, and what stands around the name.
fn named(text: &str) -> Option<(char, &str, &str)> {
    let mut words = Vec::new();
    let mut from = 0;
    for word in text.split([' ', ',', '/', ';', '(', ')']) {
        words.push((from, from + word.len()));
        from += word.len() + 1;
    }
    words.iter().enumerate().find_map(|(place, &(start, _))| {
        words.iter().skip(place).take(3).find_map(|&(_, end)| {
            let name = text.get(start..end)?.replace(' ', "").to_ascii_uppercase();
            let (_, letter) = condition::split(&name)?;
            Some((letter, text.get(..start)?, text.get(end..)?))
        })
    })
}

/// The property class of bolts that a paper names in the place of a hardness: `10.9`, `class 8.8`.
fn property_class(text: &str) -> Option<&'static BoltClass> {
    let text = text.to_ascii_lowercase();
    let words = ["property", "class", "grade"];
    let mut bare = text.split_whitespace().filter(|word| !words.contains(word));
    bare.next().filter(|_| bare.next().is_none()).and_then(condition::bolt)
}

/// The hardnesses of a paper that states more than one, if each side of some sign is one by itself.
fn split(text: &str) -> Option<Vec<&str>> {
    let text = text.strip_suffix(')').unwrap_or(text);
    for (at, sign) in text.char_indices().filter(|(_, c)| matches!(c, '/' | '(' | ';' | '=' | ','))
    {
        let (one, other) = (text.get(..at)?, text.get(at + sign.len_utf8()..)?);
        if parse(one).is_err() {
            continue;
        }
        let rest = match parse(other) {
            Ok(_) => Some(vec![other]),
            Err(_) => split(other.trim()),
        };
        if let Some(rest) = rest {
            return Some(std::iter::once(one).chain(rest).collect());
        }
    }
    None
}

/// One hardness with its limits; a single number is held to within what two honest testers may differ by.
fn part(language: Language, text: &str) -> Result<Part, Refusal> {
    let parsed = parse(text).map_err(|error| Refusal::of_designation(language, text, &error))?;
    let written = parsed.designation();
    let axis = written.axis;
    let (low, high) = written.amount.limits();
    // A range without width is a single number too.
    let single = match (written.amount, low, high) {
        (Amount::Single(value), ..) => Some(value),
        (_, Some(low), Some(high)) if high - low < 1e-9 => Some(low),
        _ => None,
    };
    let about = single.map(|value| about(axis, value));
    let (low, high) = match (single, about) {
        (Some(value), Some(about)) => (Some(value - about), Some(value + about)),
        _ => (low, high),
    };
    let numbers: Vec<f64> = match single {
        Some(value) => vec![value],
        None => low.into_iter().chain(high).collect(),
    };
    let said = Said { axis, low, high, step: step(axis, &numbers) };
    not_beyond(language, text, &said)?;
    Ok(Part { parsed, text: text.to_owned(), said, about })
}

/// What a single number is held to within.
///
/// Source: `claim-defaults`; common practice, no source.
fn about(axis: Axis, value: f64) -> f64 {
    match axis {
        Axis::Hardness(Scale::Hrb) => 3.0,
        Axis::Tensile
        | Axis::Hardness(
            Scale::Hbw | Scale::Hbs | Scale::Hbw500 | Scale::Hv | Scale::Hk | Scale::HvUci,
        ) => 0.05 * value,
        Axis::Hardness(_) => 2.0,
    }
}

/// The step to which a paper rounds: tenths if it writes any, tens of MPa if all are, whole numbers otherwise.
fn step(axis: Axis, numbers: &[f64]) -> f64 {
    let whole = |unit: f64| {
        numbers.iter().all(|number| (number / unit - (number / unit).round()).abs() < 1e-6)
    };
    if !whole(1.0) {
        0.1
    } else if axis == Axis::Tensile && whole(10.0) {
        10.0
    } else {
        1.0
    }
}

/// Refuses a least hardness above all that steel has: the end of the tables.
fn not_beyond(language: Language, text: &str, said: &Said) -> Result<(), Refusal> {
    let Some(low) = said.low else { return Ok(()) };
    let beyond = if said.axis == HRC {
        let end = end_of_hrc();
        (low > end).then_some((end, HRC))
    } else {
        let found = Reading::new(said.axis, low).and_then(|at| convert_one(at, HRC, Choice::STEEL));
        match found {
            Err(Error::OutsideTables { nearest, .. }) if nearest.above => {
                Some((nearest.value, said.axis))
            }
            _ => None,
        }
    };
    let Some((end, axis)) = beyond else { return Ok(()) };
    let (given, end) = (format::exact_with_unit(axis, low), format::converted_with_unit(axis, end));
    let what = ClaimRefusal::BeyondSteel { given: &given, end: &end };
    Err(refuse(language, "bench.claim_beyond_steel", text, what))
}

/// The hardest HRC of any table.
fn end_of_hrc() -> f64 {
    let spans = biteband_hardness::spans(HRC, Axis::Hardness(Scale::Hv), Choice::STEEL);
    spans.map(|(_, span)| span.high.0).fold(20.0, f64::max)
}

/// A number without a scale: what it would be on the two likeliest.
fn missing_scale(language: Language, text: &str) -> Refusal {
    let with = |symbol: &str| parse(&format!("{text} {symbol}")).ok();
    let high = ["HRC", "HV", "MPa"].into_iter().find_map(with).and_then(|parsed| {
        let (low, high) = parsed.designation().amount.limits();
        high.or(low)
    });
    let likely = match high.unwrap_or_default() {
        value if value <= 70.0 => [("HRC", "HBW"), ("HRB", "HBW")],
        value if value <= 100.0 => [("HRB", "HBW"), ("HRA", "HRC")],
        value if value <= 650.0 => [("HBW", "HRC"), ("HV", "HRC")],
        value if value <= 1000.0 => [("HV", "HRC"), ("MPa", "HBW")],
        _ => [("MPa", "HBW"), ("HV", "HRC")],
    };
    let spelled = likely.map(|(symbol, to)| {
        let whole = format!("{text} {symbol}");
        let become_ = with(symbol).and_then(|parsed| {
            let written = parsed.designation();
            let (low, high) = written.amount.limits();
            let to = Axis::find(to)?;
            let found = convert_limits(written.axis, low, high, to, Choice::STEEL).ok()?;
            let value = |end: Option<biteband_hardness::Conversion>| end.map(|end| end.at.value);
            Some(Units::Metric.range(to, value(found.low), value(found.high)))
        });
        language
            .claim(Claim::WouldBe {
                whole: &whole,
                become_: become_.as_deref().unwrap_or_default(),
            })
            .into_owned()
    });
    let [one, other] = &spelled;
    refuse(language, "bench.missing_scale", text, ClaimRefusal::NoScale { one, other })
}

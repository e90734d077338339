//! What the tool says of a part as its card stands.

use serde::{Deserialize, Serialize};

use super::{Card, ClaimSheet, SteelSheet};
use crate::answer::{
    ClaimQuestion, FileOutcome, FileQuestion, PROVED, ReadingInput, assess, claim,
};
use crate::format::Units;
use crate::state::{App, ClaimReading};
use crate::view::file_test_asked;
use crate::words::{CardWords, Language};

/// An answer, with the versions that gave it, so that it can be explained when they are long replaced.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Said {
    /// Of what.
    pub of: SaidOf,
    /// How the part stands.
    pub standing: Standing,
    /// In words.
    pub text: String,
    /// Symbol of the scale of the band; empty without one.
    pub scale: String,
    /// Its low end; absent where it is open.
    pub low: Option<f64>,
    /// Its high end; absent where it is open.
    pub high: Option<f64>,
    /// Version of the program.
    pub app: String,
    /// Version of the data.
    pub data: String,
}

/// What an answer is about.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum SaidOf {
    /// The hardness by files and readings, against the one that is wanted.
    #[default]
    Files,
    /// A paper, against what was measured.
    Claim,
}

/// How a part stands.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Standing {
    /// Nothing was found yet.
    #[default]
    Nothing,
    /// There is a band, and nothing to hold it against.
    Measured,
    /// It is as it is wanted, or as the paper says.
    Inside,
    /// It is softer.
    TooSoft,
    /// It is harder.
    TooHard,
    /// It is otherwise than the paper says.
    Disagrees,
    /// It may be either.
    NotProved,
    /// What was found contradicts itself.
    Contradictory,
}

/// What the tool says of the part in hand.
#[must_use]
pub fn said(app: &App, language: Language) -> Vec<Said> {
    of_files(&file_test_asked(app, language), language).into_iter().collect()
}

/// What the tool says of a file test; nothing where nothing was found, or where it cannot be read.
pub(super) fn of_files(question: &FileQuestion, language: Language) -> Option<Said> {
    if question.strokes.is_empty() && question.readings.is_empty() {
        return None;
    }
    let (app, data) = super::versions();
    let said = match assess(language, question).ok()? {
        FileOutcome::Refused(refused) => Said {
            standing: Standing::Contradictory,
            text: refused.refused.message,
            ..Said::default()
        },
        FileOutcome::Answered(answer) => {
            let band = language.card(CardWords::Band { band: &answer.band.shown });
            let (standing, text) = match answer.target {
                None => (Standing::Measured, band.into_owned()),
                Some(target) => {
                    let standing = match target {
                        _ if target.inside >= PROVED => Standing::Inside,
                        _ if target.under >= PROVED => Standing::TooSoft,
                        _ if target.over >= PROVED => Standing::TooHard,
                        _ => Standing::NotProved,
                    };
                    (standing, format!("{band}. {}", target.verdict))
                }
            };
            Said {
                standing,
                text,
                scale: answer.band.scale.to_owned(),
                low: answer.band.low,
                high: answer.band.high,
                ..Said::default()
            }
        }
    };
    Some(Said { of: SaidOf::Files, app, data, ..said })
}

/// What the tool says of a card: of its files and readings, and of its paper where there is one.
#[must_use]
pub fn said_of_card(card: &Card, language: Language) -> Vec<Said> {
    let mut app = App::default();
    card.put(&mut app.saved);
    let mut all = said(&app, language);
    all.extend(of_claim(card, &app, language));
    all
}

/// A card goes to other devices, so that it speaks in the units of the paper and not in those of a setting.
fn units_of(paper: &str) -> Units {
    let paper = paper.to_ascii_lowercase();
    if ["ksi", "psi"].iter().any(|unit| paper.contains(unit)) { Units::Inch } else { Units::Metric }
}

/// What the tool says of a paper; nothing where there is none, nothing was measured, or it cannot be read.
pub(super) fn of_claim(card: &Card, app: &App, language: Language) -> Option<Said> {
    let ClaimSheet { paper, readings, with_files, steel, rule, place, claimed_place } = &card.claim;
    let files = if *with_files {
        // What instruments read there would count twice, as on the page of claims.
        FileQuestion { readings: Vec::new(), target: None, ..file_test_asked(app, language) }
    } else {
        FileQuestion::default()
    };
    let measured = readings.iter().map(|one| ClaimReading::of(one).input(language));
    let measured: Vec<ReadingInput> = measured.filter_map(Result::ok).collect();
    if paper.trim().is_empty() || (measured.is_empty() && files.strokes.is_empty()) {
        return None;
    }
    let some = |text: &str| Some(text.trim().to_owned()).filter(|text| !text.is_empty());
    let question = ClaimQuestion {
        claim: paper.clone(),
        measured,
        files,
        steel: some(steel).or_else(|| {
            let SteelSheet { name, grade, by_composition, .. } = &card.steel;
            some(grade).or_else(|| some(name)).filter(|_| !by_composition)
        }),
        rule: some(rule),
        place: some(place),
        claimed_place: some(claimed_place),
        units: units_of(paper),
    };
    // A part whose steel is no grade here still has a paper.
    let answer = claim(language, &question)
        .or_else(|_| claim(language, &ClaimQuestion { steel: some(steel), ..question }));
    let (version, data) = super::versions();
    let said = match answer {
        Err(refused) if refused.code.starts_with("evidence.") => {
            Said { standing: Standing::Contradictory, text: refused.message, ..Said::default() }
        }
        Err(_) => return None,
        Ok(answer) => {
            let ends = answer.estimate.as_ref();
            Said {
                standing: match answer.verdict {
                    "agrees" => Standing::Inside,
                    "disagrees" => Standing::Disagrees,
                    _ => Standing::NotProved,
                },
                text: answer.verdict_text,
                scale: ends.map_or(String::new(), |_| answer.scale.to_owned()),
                low: ends.map(|ends| ends.low),
                high: ends.map(|ends| ends.high),
                ..Said::default()
            }
        }
    };
    Some(Said { of: SaidOf::Claim, app: version, data, ..said })
}

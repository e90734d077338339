//! The hardness that a section can reach, against what is wanted, and the ways out.

use std::collections::BTreeMap;

use biteband_hardness::{Axis, Scale};
use biteband_steel::quench::Severity;
use biteband_steel::reach::{
    Basis, Error, Fit, Kind, Position, Prepared, Quench, Reach, Steel, Wanted, WayOut, crack_risk,
    quenchant, ways_out,
};
use biteband_steel::section::Place;
use biteband_steel::target::{self, Target};
use biteband_steel::transform::{CrackLevel, CrackRisk};
use biteband_steel::{Grade, Quenchant, condition};
use serde::Deserialize;

use super::file_question::parse_target;
use super::reach_answer::{
    PartAnswer, PositionAnswer, QuenchAnswer, ReachAnswer, SeverityAnswer, WantedAnswer,
};
use super::steel::named;
use crate::composition::parse_composition;
use crate::format::{self, Units};
use crate::refusal::Refusal;
use crate::section::{SectionInput, parse_bath, size};
use crate::words::{Language, Reach as Words, ReachRefusal, SteelWords};

pub(super) const HRC: Axis = Axis::Hardness(Scale::Hrc);

/// What is asked.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(default, rename_all = "camelCase")]
pub struct ReachQuestion {
    /// Any designation of a grade.
    pub steel: Option<String>,
    /// In place of it, mass percent of a heat, or limits.
    pub composition: Option<String>,
    /// The section.
    pub section: SectionInput,
    /// The bath: `oil`, `oil:mild`, `water:good`.
    pub quench: Option<String>,
    /// Wanted hardness on any scale: `50 HRC`, `50-54 HRC`; of a single number, at least that.
    pub target: Option<String>,
    /// Kind of part: its usual hardness and its cautions are told.
    pub part: Option<String>,
    /// Units of the texts; numbers stay in mm.
    pub units: Units,
}

/// Says what hardness a section can reach.
///
/// # Errors
/// A refusal: a steel that is not known or does not harden, a section, bath or target that cannot be read or
/// taken, a bath that is not for the grade.
///
/// # Example
/// ```
/// use biteband_bench::answer::{ReachQuestion, reach};
/// use biteband_bench::section::SectionInput;
/// use biteband_bench::words::Language;
/// let question = ReachQuestion {
///     steel: Some("4140".into()),
///     section: SectionInput { round: Some("50mm".into()), ..Default::default() },
///     quench: Some("oil".into()),
///     target: Some("50 HRC".into()),
///     ..Default::default()
/// };
/// let answer = reach(Language::English, &question).unwrap();
/// assert_eq!(answer.target.unwrap()["middle"], "no");
/// ```
pub fn reach(language: Language, question: &ReachQuestion) -> Result<ReachAnswer, Refusal> {
    let speech = Speech { language, units: question.units };
    let (steel, understood) = steel_of(
        language,
        question.units,
        question.steel.as_deref(),
        question.composition.as_deref(),
    )?;
    let section = question.section.read(language)?;
    let bath = question.quench.as_deref().map(|text| parse_bath(language, text)).transpose()?;
    let bath =
        bath.ok_or_else(|| speech.refuse("bench.missing_quench", "", ReachRefusal::NoQuench))?;
    let wanted = question.target.as_deref().map(|text| wanted(language, text)).transpose()?;
    let parts = question.part.as_deref().map(|text| speech.parts(text)).transpose()?;
    let parts = parts.unwrap_or_default();
    if let Some((low, _)) = wanted {
        speech.not_beyond(&parts, low)?;
    }
    let refused = |error: Error| speech.refused(&error, question);
    let prepared = Prepared::new(steel).map_err(refused)?;
    let quench = Quench::new(section, bath.medium, bath.movement).map_err(refused)?;
    let found = prepared.reach(&quench).map_err(refused)?;
    let need = wanted.and_then(|(low, _)| low);
    let ways = match need {
        Some(hrc) => {
            // The place that rules is the innermost one.
            let place = found.positions.last().map_or(Place::Middle, |last| last.at.place);
            let place = if place == Place::Bore { Place::Middle } else { place };
            ways_out(&prepared, &quench, Wanted { hrc, place }).map_err(refused)?
        }
        None => Vec::new(),
    };
    Ok(speech.answer(Whole {
        prepared: &prepared,
        quench: &quench,
        found: &found,
        wanted,
        ways: &ways,
        parts,
        understood,
    }))
}

/// The grade or composition of a question, and what is to be said of its name.
pub(super) fn steel_of(
    language: Language,
    units: Units,
    steel: Option<&str>,
    composition: Option<&str>,
) -> Result<(Steel, Vec<String>), Refusal> {
    use crate::words::HardenRefusal;
    let refuse = |what: HardenRefusal<'_>| {
        let [message, allowed, instead] = language.harden_refused(what);
        Refusal::new("bench.missing_steel", message, "", allowed, instead)
    };
    match (steel, composition) {
        (None, None) => Err(refuse(HardenRefusal::NoSteel)),
        (Some(_), Some(_)) => Err(refuse(HardenRefusal::SteelTwice)),
        (Some(name), None) => {
            let (grade, said) = named(language, units, name)?;
            Ok((Steel::Grade(grade), said))
        }
        (None, Some(text)) => {
            Ok((Steel::Own(Box::new(parse_composition(language, text)?)), Vec::new()))
        }
    }
}

/// Lowest and highest wanted HRC; a single number is wanted at least.
fn wanted(language: Language, text: &str) -> Result<(Option<f64>, Option<f64>), Refusal> {
    let target = match parse_target(language, text) {
        Err(refusal) if refusal.code == "bench.target_not_a_range" => {
            let bare = text.trim().ends_with(|c: char| c.is_ascii_digit());
            let scale = if bare && !text.contains(char::is_alphabetic) { " HRC" } else { "" };
            parse_target(language, &format!("{text}{scale} min"))?
        }
        other => other?,
    };
    Ok((target.low(), target.high()))
}

#[derive(Clone, Copy)]
pub(super) struct Speech {
    pub(super) language: Language,
    pub(super) units: Units,
}

/// Everything that an answer is made from.
struct Whole<'a> {
    prepared: &'a Prepared,
    quench: &'a Quench,
    found: &'a Reach,
    wanted: Option<(Option<f64>, Option<f64>)>,
    ways: &'a [WayOut],
    parts: Vec<PartAnswer>,
    understood: Vec<String>,
}

impl Speech {
    pub(super) fn say(self, phrase: Words<'_>) -> String {
        self.language.reach(phrase).into_owned()
    }

    pub(super) fn size(self, mm: f64) -> String {
        size(self.units, mm)
    }

    /// A size up to which something holds: down to the whole millimetre, or the twentieth of an inch.
    pub(super) fn down(self, mm: f64) -> String {
        match self.units {
            Units::Metric if mm >= 10.0 => self.size((mm + 0.05).floor()),
            Units::Metric => self.size((mm * 10.0 + 0.5).floor() / 10.0),
            Units::Inch => self.size((mm / 1.27 + 0.05).floor() * 1.27),
        }
    }

    fn refuse(self, code: &'static str, given: &str, what: ReachRefusal<'_>) -> Refusal {
        let [message, allowed, instead] = self.language.reach_refused(what);
        Refusal::new(code, message, format::shortened(given), allowed, instead)
    }

    fn refused(self, error: &Error, question: &ReachQuestion) -> Refusal {
        let grade = match error {
            Error::DoesNotHarden { grade }
            | Error::Ages { grade }
            | Error::Never { grade, .. }
            | Error::TooMild { grade, .. }
            | Error::Unknown { grade } => Some(*grade),
            _ => None,
        };
        let media = grade.map(|grade| self.media(grade)).unwrap_or_default();
        let ages: Vec<&str> = condition::ph_ages().iter().map(condition::PhAge::name).collect();
        let given = match error {
            Error::Never { .. } | Error::TooMild { .. } | Error::Quench(_) => &question.quench,
            _ if question.steel.is_some() => &question.steel,
            _ => &question.composition,
        };
        let what = ReachRefusal::Core { error, named: &media, ages: &ages.join(", ") };
        self.refuse(error.code(), given.as_deref().unwrap_or_default(), what)
    }

    pub(super) fn media(self, grade: &'static Grade) -> String {
        let word = |one: &Quenchant| self.language.steel(SteelWords::Medium(*one)).into_owned();
        grade.quenchants().iter().map(word).collect::<Vec<_>>().join(", ")
    }

    fn parts(self, text: &str) -> Result<Vec<PartAnswer>, Refusal> {
        let rows = target::find(text);
        let Some(first) = rows.first() else {
            let given = format::shortened(text);
            let what = ReachRefusal::UnknownPart { given: &given };
            return Err(self.refuse("steel.unknown_part", text, what));
        };
        // `drill bushing, bought` and `drill bushing, shop made` are one kind of part.
        let kind = |row: &Target| row.part().split([',', '(']).next().map(str::trim);
        let of = rows.iter().filter(|row| kind(row) == kind(first));
        Ok(of
            .map(|row| {
                let (low, high) = row.hrc();
                let range = self.units.range(HRC, low, high);
                PartAnswer {
                    part: row.part(),
                    zone: row.zone(),
                    hrc_low: low,
                    hrc_high: high,
                    caution: row.caution(),
                    text: self.say(Words::PartRow { zone: row.zone(), range: &range }),
                }
            })
            .collect())
    }

    /// A hardness above every zone of the part is not what the part is made to.
    fn not_beyond(self, parts: &[PartAnswer], low: Option<f64>) -> Result<(), Refusal> {
        let highest = parts
            .iter()
            .filter_map(|part| part.hrc_high)
            .fold(None, |most: Option<f64>, one| Some(most.map_or(one, |most| most.max(one))));
        match (parts.first(), low, highest) {
            (Some(first), Some(low), Some(highest)) if low > highest => {
                let zones: Vec<&str> = parts.iter().map(|part| part.text.as_str()).collect();
                let what = ReachRefusal::BeyondPart {
                    part: first.part,
                    zones: &zones.join("; "),
                    several: zones.len() > 1,
                    caution: &format::sentence(first.caution),
                };
                Err(self.refuse("reach.beyond_part", &format!("{} HRC", format::exact(low)), what))
            }
            _ => Ok(()),
        }
    }

    fn position(self, quench: &Quench, position: &Position, need: Option<f64>) -> PositionAnswer {
        let Position { at, hardness } = position;
        let known = quench.severity().is_some();
        let chance = need.and_then(|hrc| hardness.chance(hrc));
        PositionAnswer {
            place: at.place.key(),
            name: self.say(Words::PlaceName(at.place)),
            jominy_mm: known.then_some(SeverityAnswer {
                low: at.jominy.low,
                mid: at.jominy.mid,
                high: at.jominy.high,
            }),
            second_opinion_mm: at.second_opinion.filter(|_| known),
            low: hardness.low,
            mid: hardness.mid,
            high: hardness.high,
            below_20: hardness.below_scale,
            meaning: match hardness.kind {
                Kind::Band => "band",
                Kind::Range => "range",
            },
            chance,
            target: need.map(|hrc| hardness.reaches(hrc).key()),
            shown: self.shown(*hardness),
        }
    }

    fn answer(self, whole: Whole<'_>) -> ReachAnswer {
        let Whole { prepared, quench, found, wanted, ways, parts, understood } = whole;
        let grade = prepared.steel().grade();
        let need = wanted.and_then(|(low, _)| low);
        let section = self.section(quench.section(), quench.cooling().round);
        let bath = self.say(Words::Bath { medium: quench.medium(), movement: quench.movement() });
        let name =
            grade.map_or_else(|| self.say(Words::OwnComposition), |grade| grade.name().to_owned());
        let risk = crack_risk(&prepared.steel().limits(), quenchant(quench.medium()));
        let positions: Vec<PositionAnswer> =
            found.positions.iter().map(|one| self.position(quench, one, need)).collect();
        let (verdict, say) = self.verdict(found, wanted);
        let (basis, sources) = self.basis(grade, found);
        let on_record = self.on_record(grade, quench);
        let mut sources = sources;
        if !on_record.is_empty() {
            sources.extend(["modern-steels", "rounds-weight"]);
        }
        sources.extend(quench.severity().map(|found| found.cited.sources).unwrap_or_default());
        sources.extend(quench.cooling().cited.sources);
        dedup(&mut sources);
        let target = need.map(|_| {
            let each = positions.iter().filter_map(|one| Some((one.place, one.target?)));
            each.collect::<BTreeMap<_, _>>()
        });
        ReachAnswer {
            steel: grade.map(Grade::key),
            understood,
            asked: format!("{name}, {}, {bath}", section.text),
            verdict,
            say,
            quench: self::bath(quench, found, risk.as_ref(), bath),
            method: method(found),
            basis,
            positions,
            target,
            wanted: wanted.map(|(low, high)| WantedAnswer {
                low,
                high,
                shown: self.units.range(HRC, low, high),
            }),
            ways_out: ways.iter().map(|way| self.way(quench, way)).collect(),
            notes: self.notes(quench, found, wanted, &section, !on_record.is_empty()),
            cautions: self.cautions(grade, found, risk.as_ref(), &parts),
            parts,
            on_record,
            sources,
            section,
        }
    }
}

fn bath(quench: &Quench, found: &Reach, risk: Option<&CrackRisk>, text: String) -> QuenchAnswer {
    let fit = found.fit.map(|fit| match fit {
        Fit::Named => "named",
        Fit::Between => "between",
        Fit::Sharper | Fit::Never => "sharper",
        Fit::Milder => "milder",
    });
    let level = risk.map(|risk| match risk.level {
        CrackLevel::Low => "low",
        CrackLevel::Raised => "raised",
        CrackLevel::High => "high",
    });
    QuenchAnswer {
        medium: quench.medium().key(),
        movement: quench.movement().key(),
        severity: quench.severity().map(|Severity { low, mid, high, .. }| SeverityAnswer {
            low,
            mid,
            high,
        }),
        fit,
        crack_risk: level,
        text,
    }
}

const fn method(found: &Reach) -> &'static str {
    match &found.basis {
        Basis::Curve(band) => band.method.key(),
        Basis::Published { .. } => "published-range",
    }
}

fn dedup(keys: &mut Vec<&'static str>) {
    let mut seen: Vec<&str> = Vec::new();
    keys.retain(|key| {
        let fresh = !seen.contains(key);
        if fresh {
            seen.push(key);
        }
        fresh
    });
}

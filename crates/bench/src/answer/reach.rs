//! The hardness that a section can reach, against what is wanted, and the ways out.

use std::collections::BTreeMap;

use biteband_hardness::{Axis, Scale};
use biteband_steel::hardenability::Method;
use biteband_steel::quench::Severity;
use biteband_steel::reach::{
    Attained, Bar, Basis, Depth, Error, Fit, Kind, Position, Prepared, Quench, Reach, Steel,
    Verdict, Wanted, WayOut, crack_risk, quenchant, ways_out,
};
use biteband_steel::section::{Place, Section, Shape, Why};
use biteband_steel::transform::{CrackLevel, CrackRisk};
use biteband_steel::{Grade, Quenchant, condition, target};
use serde::Deserialize;

use super::file_question::parse_target;
use super::reach_answer::{
    PartAnswer, PositionAnswer, QuenchAnswer, ReachAnswer, SectionAnswer, SeverityAnswer,
    WantedAnswer, WayOutAnswer,
};
use super::steel::named;
use crate::composition::parse_composition;
use crate::format::{self, Units};
use crate::refusal::Refusal;
use crate::section::{SectionInput, parse_bath, size};
use crate::words::{Language, Likely, Reach as Words, ReachRefusal, SteelWords};

const HRC: Axis = Axis::Hardness(Scale::Hrc);

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
    let bath = bath.ok_or_else(|| speech.refuse("bench.no_quench", "", ReachRefusal::NoQuench))?;
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
struct Speech {
    language: Language,
    units: Units,
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
    fn say(self, phrase: Words<'_>) -> String {
        self.language.reach(phrase).into_owned()
    }

    fn size(self, mm: f64) -> String {
        size(self.units, mm)
    }

    /// A size up to which something holds: down to the whole millimetre, or the twentieth of an inch.
    fn down(self, mm: f64) -> String {
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

    fn media(self, grade: &'static Grade) -> String {
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
        let of = rows.iter().filter(|row| row.part() == first.part());
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
                    caution: first.caution,
                };
                Err(self.refuse("reach.beyond_part", &format!("{} HRC", format::exact(low)), what))
            }
            _ => Ok(()),
        }
    }

    fn section(self, section: &Section, round: f64) -> SectionAnswer {
        let long = section.length().map(|mm| self.size(mm));
        let long = long.as_deref();
        let text = match section.shape() {
            Shape::Round { diameter } => {
                self.say(Words::Round { size: &self.size(diameter), long })
            }
            Shape::Tube { outer, inner } => {
                let (outer, inner) = (self.size(outer), self.size(inner));
                self.say(Words::Tube { outer: &outer, inner: &inner, long })
            }
            Shape::Plate { thickness } => {
                self.say(Words::Plate { size: &self.size(thickness), long })
            }
            Shape::Square { side } => self.say(Words::Square { size: &self.size(side), long }),
            Shape::Hexagon { across_flats } => {
                self.say(Words::Hexagon { size: &self.size(across_flats), long })
            }
            Shape::Flat { width, thickness } => {
                let (width, thickness) = (self.size(width), self.size(thickness));
                self.say(Words::Flat { width: &width, thickness: &thickness, long })
            }
        };
        let ruling = section.ruling();
        SectionAnswer {
            shape: section.shape().key(),
            ruling_mm: ruling.mm,
            ruled_by: ruling.why.key(),
            round_mm: round,
            mass_kg: section.mass().map(biteband_quantity::Kilograms::get),
            text,
        }
    }

    /// `43 – 57 HRC`, `at most 65 HRC`, `below 20 HRC`, `unknown`.
    fn shown(self, here: Attained) -> String {
        let hrc = |value: f64| format::fixed(value, 0);
        match (here.low, here.high) {
            (_, Some(high)) if here.below_scale && high <= 20.5 => self.say(Words::Below20),
            (low, Some(high)) if here.below_scale || low.is_none() => {
                self.say(Words::UpTo { hrc: &format!("{} HRC", hrc(high)) })
            }
            (Some(low), Some(high)) => format!("{} HRC", format::dash(&hrc(low), &hrc(high))),
            (Some(low), None) => self.say(Words::From { hrc: &format!("{} HRC", hrc(low)) }),
            (None, _) => self.say(Words::Unknown),
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

    fn verdict(
        self,
        found: &Reach,
        wanted: Option<(Option<f64>, Option<f64>)>,
    ) -> (String, String) {
        let bore = found.at(Place::Bore).is_some();
        let (Some(skin), Some(middle)) = (found.at(Place::Skin), found.at(Place::Middle)) else {
            return (String::new(), String::new());
        };
        let (skin_text, middle_text) = (self.shown(skin), self.shown(middle));
        let Some((Some(hrc), high)) = wanted else {
            let say = Words::Reaches { skin: &skin_text, inside: &middle_text, bore };
            return (skin_text.clone(), self.say(say));
        };
        let of = |here: Attained| Likely::of(here.reaches(hrc), here.chance(hrc));
        let half = found.at(Place::Half).map(of);
        let verdict = self.say(Words::Places { skin: of(skin), half, inside: of(middle), bore });
        let wanted = self.units.range(HRC, Some(hrc), high);
        let say = Words::Wants { wanted: &wanted, skin: &skin_text, inside: &middle_text, bore };
        (verdict, self.say(say))
    }

    fn mark(self, seen: biteband_hardness::Seen) -> String {
        self.language.steel(SteelWords::Mark(seen)).into_owned()
    }

    /// Where the hardness comes from, in words and as sources.
    fn basis(self, grade: Option<&'static Grade>, found: &Reach) -> (String, Vec<&'static str>) {
        match &found.basis {
            Basis::Curve(band) => {
                let text = match band.method {
                    Method::HBand { name } => self.say(Words::FromBand { band: name }),
                    Method::A255 | Method::A255Wide => self.say(Words::FromLimits),
                };
                (text, band.cited.sources.to_vec())
            }
            Basis::Published { as_quenched, cited, through } => {
                let range = self.units.range(HRC, Some(as_quenched.low), Some(as_quenched.high));
                let mark = self.mark(cited.seen);
                let mut said = vec![self.say(Words::Published { range: &range, seen: &mark })];
                let mut sources = cited.sources.to_vec();
                match through {
                    Some((row, depth)) => {
                        sources.extend(row.cited().sources);
                        said.extend(self.depth(row, *depth));
                    }
                    None => said.push(self.say(Words::DepthUnknown)),
                }
                let note = grade.map(Grade::section_note).filter(|note| !note.is_empty());
                said.extend(
                    note.map(|note| self.language.steel(SteelWords::Section(note)).into_owned()),
                );
                (said.join(" "), sources)
            }
        }
    }

    fn depth(self, row: &biteband_steel::reach::Through, depth: Depth) -> Vec<String> {
        let mut said = Vec::new();
        if let Some(full) = row.full() {
            let medium = self.language.steel(SteelWords::Medium(row.quenchant()));
            said.push(self.say(Words::ThroughTo {
                size: &self.size(full),
                medium: &medium,
                mark: &self.mark(row.cited().seen),
                note: row.note(),
            }));
        }
        match depth {
            Depth::Full => {}
            Depth::Open => said.push(self.say(Words::DepthOpen)),
            Depth::Shell => {
                if let Some(from) = row.not_full() {
                    said.push(self.say(Words::NotThroughFrom { size: &self.size(from) }));
                }
                if let Some(shell) = row.shell() {
                    let depth = match self.units {
                        Units::Metric => format!(
                            "{} mm",
                            format::dash(&format::exact(shell.low), &format::exact(shell.high))
                        ),
                        Units::Inch => {
                            format!("{} – {}", self.size(shell.low), self.size(shell.high))
                        }
                    };
                    said.push(self.say(Words::Shell { depth: &depth }));
                }
            }
        }
        said
    }

    /// Bars on record within a quarter of the size.
    fn on_record(self, grade: Option<&'static Grade>, quench: &Quench) -> Vec<String> {
        let Some(grade) = grade else { return Vec::new() };
        let round = quench.cooling().round;
        let medium = self.say(Words::MediumName(quench.medium()));
        let near = |bar: &&Bar| (bar.diameter() / round - 1.0).abs() <= 0.25;
        Bar::of(grade.key(), quenchant(quench.medium()))
            .filter(near)
            .map(|bar| {
                let readings = bar.hardness().map(format::exact).join(" / ");
                let size = self.size(bar.diameter());
                self.say(Words::OnRecord { size: &size, medium: &medium, readings: &readings })
            })
            .collect()
    }

    fn way(self, quench: &Quench, way: &WayOut) -> WayOutAnswer {
        let mut answer = WayOutAnswer {
            way: "",
            sure_mm: None,
            likely_mm: None,
            grades: Vec::new(),
            medium: None,
            movement: None,
            hrc: None,
            text: String::new(),
        };
        match way {
            WayOut::Smaller { likely, sure } => {
                let text = |mm: Option<f64>| mm.map(|mm| self.down(mm));
                let (likely_text, sure_text) = (text(*likely), text(*sure));
                (answer.way, answer.sure_mm, answer.likely_mm) =
                    ("smaller_section", *sure, *likely);
                answer.text = self.say(Words::Smaller {
                    sure: sure_text.as_deref(),
                    likely: likely_text.as_deref(),
                });
            }
            WayOut::Grades(grades) => {
                let names = |sure: bool| {
                    let of =
                        grades.iter().filter(|(_, verdict)| (*verdict == Verdict::Yes) == sure);
                    of.map(|(grade, _)| grade.name()).collect::<Vec<_>>().join(", ")
                };
                answer.way = "other_grade";
                answer.grades = grades.iter().map(|(grade, _)| grade.key()).collect();
                answer.text = self.say(Words::OtherGrades {
                    sure: &names(true),
                    likely: &names(false),
                    medium: quench.medium(),
                });
            }
            WayOut::Faster { medium, movement, verdict, fit } => {
                answer.way = "faster_quench";
                (answer.medium, answer.movement) = (Some(medium.key()), Some(movement.key()));
                answer.text = self.say(Words::Faster {
                    medium: *medium,
                    movement: *movement,
                    verdict: *verdict,
                    fit: *fit,
                    same: *medium == quench.medium(),
                });
            }
            WayOut::SkinOnly(verdict) => {
                answer.way = "skin_only";
                answer.text = self.say(Words::SkinOnly(*verdict));
            }
            WayOut::Lower(hrc) => {
                (answer.way, answer.hrc) = ("lower_target", Some(*hrc));
                answer.text =
                    self.say(Words::Lower { hrc: &format!("{} HRC", format::exact(*hrc)) });
            }
        }
        answer
    }

    fn notes(
        self,
        quench: &Quench,
        found: &Reach,
        wanted: Option<(Option<f64>, Option<f64>)>,
        section: &SectionAnswer,
        recorded: bool,
    ) -> Vec<String> {
        let ruling = quench.section().ruling();
        let (size, round) = (self.size(ruling.mm), self.down(section.round_mm));
        let mut notes = vec![self.say(Words::Ruled { by: ruling.why, size: &size, round: &round })];
        let mut note = |phrase: Words<'_>| notes.push(self.say(phrase));
        let skin = found.at(Place::Skin);
        if wanted.is_some() {
            note(Words::TemperTakes);
        }
        if let (Some((_, Some(high))), Some(skin)) = (wanted, skin)
            && skin.low.is_some_and(|low| low > high)
        {
            note(Words::SoftenLater);
        }
        if found.core_only {
            note(Words::CoreOnly);
        }
        if matches!(found.basis, Basis::Curve(_)) {
            note(Words::BandMeaning);
            note(Words::MildSeverity);
            if let Basis::Curve(band) = &found.basis {
                if band.method == Method::A255Wide {
                    note(Words::OutsideRange);
                }
                if let Some((hrc, place)) = second(quench, found, band) {
                    let hrc = format!("{} HRC", format::fixed(hrc, 0));
                    note(Words::SecondOpinion { hrc: &hrc, place });
                }
            }
            if !quench.cooling().checked {
                note(Words::ShapeUnchecked);
            }
        }
        if recorded {
            note(Words::Moved);
        }
        let softer = |outer: Attained, inner: Attained| {
            outer.mid.zip(inner.mid).is_none_or(|(outer, inner)| outer - inner > 3.0)
        };
        if let (Some(skin), Some(middle)) = (skin, found.at(Place::Middle))
            && softer(skin, middle)
        {
            note(Words::CutFromCore);
        }
        if !matches!(ruling.why, Why::Diameter) {
            note(Words::CornersCoolFaster);
        }
        notes
    }

    fn cautions(
        self,
        grade: Option<&'static Grade>,
        found: &Reach,
        risk: Option<&CrackRisk>,
        parts: &[PartAnswer],
    ) -> Vec<String> {
        let mut cautions = Vec::new();
        if found.fit == Some(Fit::Sharper) {
            let named = grade.map(|grade| self.media(grade)).unwrap_or_default();
            cautions.push(self.say(Words::SharperThanNamed { named: &named }));
        }
        if let Some(risk) = risk.filter(|risk| risk.level != CrackLevel::Low) {
            cautions.extend(risk.reasons.iter().map(|reason| self.say(Words::Cracks(*reason))));
        }
        cautions.extend(grade.into_iter().flat_map(Grade::hazards).map(str::to_owned));
        for part in parts {
            if !part.caution.is_empty() && !cautions.iter().any(|said| said == part.caution) {
                cautions.push(part.caution.to_owned());
            }
        }
        cautions.push(self.say(Words::NotForSafety));
        cautions
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

/// What conduction alone says of the middle, where it differs by more than 2 HRC.
fn second(
    quench: &Quench,
    found: &Reach,
    band: &biteband_steel::hardenability::Band,
) -> Option<(f64, Place)> {
    let at = quench.cooling().places.iter().find(|at| at.place == Place::Middle)?;
    let hrc = band.mid.hardness_at(at.second_opinion?)?.hrc()?;
    let mid = found.at(Place::Middle)?.mid?;
    ((hrc - mid).abs() > 2.0).then_some((hrc, Place::Middle))
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

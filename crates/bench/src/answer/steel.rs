//! Grades of steel: the card of one, searches, hardness by kind of part.

use biteband_hardness::{Axis, Scale, Seen};
use biteband_quantity::Shown;
use biteband_steel::condition::{BsCondition, PhAge, ph_ages};
use biteband_steel::grade::{Designation, Error, Found, find, search};
use biteband_steel::target::{self, Target};
use biteband_steel::{
    Cited, CurveCloseness, Element, Grade, Hardening, Interval, TemperMethod, source,
};
use serde::Deserialize;

use super::steel_answer::{
    AgeAnswer, AsQuenchedAnswer, AvoidAnswer, CandidateAnswer, CompositionAnswer, ConditionAnswer,
    ElementAnswer, FindAnswer, HardeningAnswer, SteelAnswer, SteelListing, SteelSource,
    SuppliedAnswer, TargetRow, TargetsAnswer, TemperatureStep, TemperingAnswer, WorkingAnswer,
};
use crate::composition::refusal;
use crate::format::{self, Units};
use crate::refusal::Refusal;
use crate::words::{About, Language, SteelRefusal, SteelWords};

/// How many matches a search shows.
const MATCHES: usize = 8;

const HRC: Axis = Axis::Hardness(Scale::Hrc);
const HBW: Axis = Axis::Hardness(Scale::Hbw);

/// Which steel.
#[derive(Clone, Debug, Default, PartialEq, Deserialize)]
#[serde(rename_all = "camelCase", deny_unknown_fields)]
pub struct SteelQuestion {
    /// Any designation: `4140`, `EN19`, `1.7225`, `silver steel`.
    pub name: String,
    /// Units of the texts.
    #[serde(default)]
    pub units: Units,
}

/// How the answer speaks.
#[derive(Clone, Copy)]
struct Speech {
    language: Language,
    units: Units,
}

/// Sentences one after another; empty ones drop out.
fn joined(texts: &[String]) -> String {
    let said: Vec<&str> =
        texts.iter().map(String::as_str).filter(|text| !text.is_empty()).collect();
    said.join(" ")
}

fn ends(range: Option<Interval>) -> (Option<f64>, Option<f64>) {
    (range.map(|range| range.low), range.map(|range| range.high))
}

impl Speech {
    fn say(self, phrase: SteelWords<'_>) -> String {
        self.language.steel(phrase).into_owned()
    }

    fn celsius(self, range: Interval) -> String {
        self.units.temperatures(range.low, range.high)
    }

    fn hrc(self, range: Interval) -> String {
        self.units.range(HRC, Some(range.low), Some(range.high))
    }

    /// A note of the data as a sentence in brackets.
    fn aside(note: &str) -> String {
        if note.is_empty() { String::new() } else { format!("({note})") }
    }

    fn mark(self, cited: Cited) -> String {
        self.say(SteelWords::Mark(cited.seen))
    }

    fn composition(self, grade: &'static Grade) -> CompositionAnswer {
        let limits = grade.limits();
        let stated = Element::ALL.into_iter().map(|element| (element, limits.stated(element)));
        let elements: Vec<ElementAnswer> = stated
            .filter(|(_, (min, max))| min.is_some() || max.is_some())
            .map(|(element, (min, max))| ElementAnswer { element: element.symbol(), min, max })
            .collect();
        let list = elements.iter().map(|one| {
            let text = |share: Option<f64>| share.map(|share| Shown(share).to_string());
            let (low, high) = (text(one.min), text(one.max));
            let (low, high) = (low.as_deref(), high.as_deref());
            self.say(SteelWords::Limit { element: one.element, low, high })
        });
        let list = list.collect::<Vec<String>>().join(", ");
        let (other, standard) = (grade.other(), grade.composition_standard());
        let cited = grade.composition_cited();
        CompositionAnswer {
            standard,
            other,
            note: grade.composition_note(),
            basis: cited.into(),
            text: joined(&[
                self.say(SteelWords::Composition { limits: &list, other, standard }),
                self.mark(cited),
            ]),
            elements,
        }
    }

    fn hardening(self, grade: &'static Grade) -> HardeningAnswer {
        let hardening = grade.hardening();
        let cited = grade.heat_cited();
        let (low_c, high_c) = ends(grade.window());
        let preheat: Vec<TemperatureStep> = grade
            .preheat()
            .iter()
            .map(|step| TemperatureStep { low_c: step.low, high_c: step.high })
            .collect();
        let text = if hardening == Hardening::None {
            self.say(SteelWords::DoesNotHarden)
        } else {
            let steps: Vec<String> = grade.preheat().iter().map(|s| self.celsius(*s)).collect();
            let media = grade.quenchants().iter().map(|one| self.say(SteelWords::Medium(*one)));
            let (steps, media) = (steps.join(", "), media.collect::<Vec<_>>().join(", "));
            let said = |here: bool, phrase| if here { self.say(phrase) } else { String::new() };
            let window = grade.window().map(|range| {
                let range = self.celsius(range);
                self.say(SteelWords::Window { range: &range, hardening })
            });
            joined(&[
                said(!steps.is_empty(), SteelWords::Preheat { steps: &steps }),
                window.unwrap_or_default(),
                said(!media.is_empty(), SteelWords::QuenchIn { media: &media }),
                said(!grade.soak().is_empty(), SteelWords::Soak(grade.soak())),
                self.mark(cited),
            ])
        };
        HardeningAnswer {
            kind: hardening.key(),
            low_c,
            high_c,
            preheat,
            quench: grade.quenchants().iter().map(|one| one.key()).collect(),
            soak: grade.soak(),
            basis: cited.into(),
            text,
        }
    }

    fn supplied(self, grade: &'static Grade) -> SuppliedAnswer {
        let cited = grade.supplied_cited();
        let of = grade.supplied();
        let mut parts: Vec<String> = Vec::new();
        let range = self.units.range(HBW, of.min, of.max);
        if !range.is_empty() {
            parts.push(range);
        }
        if let Some(typical) = of.typical {
            let hardness = self.units.with_unit(HBW, typical);
            parts.push(self.say(SteelWords::Typical { hardness: &hardness }));
        }
        if parts.is_empty() {
            parts.push(self.say(SteelWords::NotStated));
        }
        let hardness = parts.join(", ");
        SuppliedAnswer {
            hbw_min: of.min,
            hbw_typical: of.typical,
            hbw_max: of.max,
            note: grade.supplied_note(),
            basis: cited.into(),
            text: joined(&[
                self.say(SteelWords::Supplied { hardness: &hardness }),
                Self::aside(grade.supplied_note()),
                self.mark(cited),
            ]),
        }
    }

    fn as_quenched(self, grade: &'static Grade) -> AsQuenchedAnswer {
        let cited = grade.as_quenched_cited();
        let (hrc_low, hrc_high) = ends(grade.as_quenched());
        let text = grade.as_quenched().map_or_else(String::new, |range| {
            let (range, hardening) = (self.hrc(range), grade.hardening());
            joined(&[
                self.say(SteelWords::AsQuenched { range: &range, hardening }),
                Self::aside(grade.as_quenched_note()),
                self.mark(cited),
            ])
        });
        AsQuenchedAnswer {
            hrc_low,
            hrc_high,
            note: grade.as_quenched_note(),
            basis: cited.into(),
            text,
        }
    }

    fn tempering(self, grade: &'static Grade) -> TemperingAnswer {
        let cited = grade.temper_cited();
        let (low_c, high_c) = ends(grade.temper_range());
        let method = grade.temper_method();
        let (curve, closeness) = (grade.curve_from(), grade.curve_closeness());
        let text = grade.temper_range().map_or_else(String::new, |range| {
            let (range, hardening) = (self.celsius(range), grade.hardening());
            let curve = curve.unwrap_or_default();
            joined(&[
                self.say(SteelWords::Tempering { range: &range, hardening }),
                self.mark(cited),
                self.say(SteelWords::Method { method, curve, closeness }),
                self.say(SteelWords::Double(grade.double_temper())),
                self.say(SteelWords::Cold(grade.cryo())),
            ])
        });
        TemperingAnswer {
            low_c,
            high_c,
            method: method.key(),
            curve_from: curve,
            curve_closeness: closeness.map(CurveCloseness::key),
            double_temper: grade.double_temper().key(),
            cryo: grade.cryo().key(),
            basis: cited.into(),
            text,
        }
    }

    fn avoid(self, grade: &'static Grade) -> Option<AvoidAnswer> {
        let why = grade.avoid_why();
        if grade.avoid().is_none() && why.is_empty() {
            return None;
        }
        let (low_c, high_c) = ends(grade.avoid());
        let range = grade.avoid().map_or_else(String::new, |range| self.celsius(range));
        let range = self.say(SteelWords::Avoid { range: &range });
        let mark = self.mark(grade.temper_cited());
        let text = joined(&[range, format!("{why}."), mark]);
        Some(AvoidAnswer { low_c, high_c, why, text })
    }

    fn working(self, grade: &'static Grade) -> WorkingAnswer {
        let cited = grade.working_cited();
        let (hrc_low, hrc_high) = ends(grade.working());
        let range = grade.working().map_or_else(String::new, |range| {
            let (range, hardening) = (self.hrc(range), grade.hardening());
            self.say(SteelWords::Working { range: &range, hardening })
        });
        let used = match grade.typical_use() {
            "" => String::new(),
            used => self.say(SteelWords::Use(used)),
        };
        WorkingAnswer {
            hrc_low,
            hrc_high,
            typical_use: grade.typical_use(),
            basis: cited.into(),
            text: joined(&[range, used, self.mark(cited)]),
        }
    }

    fn age(self, age: &'static PhAge) -> AgeAnswer {
        let cited = age.cited();
        let steps = age.steps().iter().map(|(celsius, hours)| {
            let temperature = self.units.temperatures(*celsius, *celsius);
            let hours = Shown(*hours).to_string();
            self.say(SteelWords::AgeStep { temperature: &temperature, hours: &hours })
        });
        let steps = steps.collect::<Vec<_>>().join(", ");
        let least =
            [(HRC, age.hrc_min()), (HBW, age.hbw_min()), (Axis::Tensile, age.tensile_min())];
        let least = least.map(|(axis, least)| self.units.range(axis, least, None));
        let least: Vec<String> = least.into_iter().filter(|text| !text.is_empty()).collect();
        let phrase =
            SteelWords::Age { name: age.name(), steps: &steps, hardness: &least.join(", ") };
        AgeAnswer {
            age: age.name(),
            steps: age.steps(),
            hrc_min: age.hrc_min(),
            hbw_min: age.hbw_min(),
            tensile_min: age.tensile_min(),
            yield_min: age.yield_min(),
            note: age.note(),
            sources: cited.sources,
            seen: cited.seen.key(),
            text: joined(&[self.say(phrase), Self::aside(age.note())]),
        }
    }

    fn candidate(self, one: &'static Designation) -> CandidateAnswer {
        let closeness = one.closeness();
        CandidateAnswer {
            designation: one.text(),
            system: one.system().key(),
            key: one.grade().key(),
            name: one.grade().name(),
            closeness: closeness.key(),
            closeness_text: self.say(SteelWords::Closeness(closeness)),
            note: one.note(),
            seen: one.cited().seen.key(),
        }
    }

    /// What the name leads to, whether it is ambiguous, and what a letter behind it says.
    fn verdict(self, given: &str, found: &Found) -> Vec<String> {
        let Found { grade, designation, condition, candidates, .. } = found;
        let mut verdict = Vec::new();
        if !candidates.is_empty() {
            let others: Vec<String> = candidates
                .iter()
                .map(|one| format!("{} ({})", one.grade().name(), one.text()))
                .collect();
            let given = format::shortened(given);
            verdict.push(self.say(SteelWords::Ambiguous {
                given: &given,
                others: &others.join(", "),
                shown: grade.name(),
            }));
        }
        let named = SteelWords::Named {
            designation: designation.text(),
            system: designation.system(),
            closeness: designation.closeness(),
            grade: grade.name(),
        };
        let note = match designation.note() {
            "" => String::new(),
            note => format!("({note})"),
        };
        verdict.push(joined(&[self.say(named), note, self.mark(designation.cited())]));
        let near: Vec<&str> = designation.also_near().map(Grade::key).collect();
        if !near.is_empty() {
            verdict.push(self.say(SteelWords::AlsoNear { grades: &near.join(", ") }));
        }
        if let Some(condition) = condition {
            let (low, high) = condition.hbw();
            let hbw = self.units.range(HBW, Some(low), high);
            let (low, high) = condition.tensile();
            let tensile = self.units.range(Axis::Tensile, Some(low), high);
            verdict.push(joined(&[
                self.say(SteelWords::Condition {
                    letter: condition.letter(),
                    hbw: &hbw,
                    tensile: &tensile,
                }),
                self.mark(condition.cited()),
            ]));
        }
        verdict
    }

    fn card(self, given: &str, found: &Found) -> SteelAnswer {
        let Found { grade, designation, how, condition, candidates } = found;
        let grade = *grade;
        let condition_answer = condition.map(|condition| ConditionAnswer {
            letter: condition.letter(),
            hbw_low: condition.hbw().0,
            hbw_high: condition.hbw().1,
            tensile_low: condition.tensile().0,
            tensile_high: condition.tensile().1,
            sources: condition.cited().sources,
            seen: condition.cited().seen.key(),
        });
        let ages = match grade.temper_method() {
            TemperMethod::AgeTable => ph_ages().iter().map(|age| self.age(age)).collect(),
            _ => Vec::new(),
        };
        let mut notes: Vec<String> = [grade.composition_note(), grade.notes()]
            .into_iter()
            .filter(|note| !note.is_empty())
            .map(|note| format!("{note}."))
            .collect();
        if self.units == Units::Inch {
            notes.push(self.say(SteelWords::DataInCelsius));
        }
        let mut cautions = vec![self.say(SteelWords::Caution)];
        if grade.hardening() != Hardening::None {
            cautions.push(self.language.about(About::CautionCritical).to_owned());
        }
        let section = match grade.section_note() {
            "" => String::new(),
            note => self.say(SteelWords::Section(note)),
        };
        let of_condition = condition.map(BsCondition::cited);
        SteelAnswer {
            key: grade.key(),
            name: grade.name(),
            family: grade.family().key(),
            title: self.language.steel(title(grade)).into_owned(),
            designation: designation.text(),
            system: designation.system().key(),
            closeness: designation.closeness().key(),
            closeness_text: self.say(SteelWords::Closeness(designation.closeness())),
            how: how.key(),
            seen: designation.cited().seen.key(),
            note: designation.note(),
            candidates: candidates.iter().map(|one| self.candidate(one)).collect(),
            also_near: designation.also_near().map(Grade::key).collect(),
            condition: condition_answer,
            verdict: self.verdict(given, found),
            composition: self.composition(grade),
            hardening: self.hardening(grade),
            supplied: self.supplied(grade),
            as_quenched: self.as_quenched(grade),
            tempering: self.tempering(grade),
            avoid: self.avoid(grade),
            working: self.working(grade),
            ages,
            section,
            hazards: grade.hazards().map(format::sentence).collect(),
            notes,
            cautions,
            sources: sources_of(grade, designation, of_condition),
        }
    }

    fn target(self, row: &'static Target) -> TargetRow {
        let cited = row.cited();
        let (hrc_low, hrc_high) = row.hrc();
        let range = self.units.range(HRC, hrc_low, hrc_high);
        let grades: Vec<&'static str> = row.grades().iter().map(|grade| grade.key()).collect();
        let from = if grades.is_empty() {
            String::new()
        } else {
            self.say(SteelWords::FromGrades { grades: &grades.join(", ") })
        };
        let parts = [
            self.say(SteelWords::TargetRow { zone: row.zone(), range: &range }),
            row.other_scale().to_owned(),
            from,
            self.say(SteelWords::Basis(row.basis())),
        ];
        let said: Vec<String> = parts.into_iter().filter(|text| !text.is_empty()).collect();
        TargetRow {
            part: row.part(),
            zone: row.zone(),
            hrc_low,
            hrc_high,
            other_scale: row.other_scale(),
            grades,
            basis: row.basis().key(),
            caution: row.caution(),
            cited: cited.into(),
            text: joined(&[said.join("; "), self.mark(cited)]),
        }
    }
}

const fn title(grade: &'static Grade) -> SteelWords<'static> {
    SteelWords::Title { name: grade.name(), family: grade.family(), hardening: grade.hardening() }
}

/// Every source of a card once, in the order of its groups.
fn sources_of(
    grade: &'static Grade,
    designation: &'static Designation,
    condition: Option<Cited>,
) -> Vec<SteelSource> {
    let groups = [
        grade.composition_cited(),
        grade.heat_cited(),
        grade.supplied_cited(),
        grade.as_quenched_cited(),
        grade.temper_cited(),
        grade.working_cited(),
        designation.cited(),
    ];
    let mut found: Vec<SteelSource> = Vec::new();
    for key in groups.iter().chain(condition.as_ref()).flat_map(|cited| cited.sources) {
        if !found.iter().any(|known| known.id == *key) {
            let (title, seen) =
                source(key).map_or(("", Seen::Recalled), |source| (source.title(), source.seen()));
            found.push(SteelSource { id: key, title, seen: seen.key() });
        }
    }
    found
}

fn of_error(language: Language, given: &str, error: &Error) -> Refusal {
    let code = error.code();
    match error {
        Error::Empty => refusal(language, code, given, SteelRefusal::NoGrade),
        Error::Unknown { nearest } => {
            let names: Vec<&str> = nearest.iter().map(|one| one.text()).collect();
            let short = format::shortened(given);
            let what = SteelRefusal::UnknownGrade { given: &short, nearest: &names.join(", ") };
            refusal(language, code, given, what)
        }
    }
}

/// A grade by any of its designations, and what is to be said of the name; nothing where it is the grade's own
/// and leads nowhere else.
pub(crate) fn named(
    language: Language,
    units: Units,
    name: &str,
) -> Result<(&'static Grade, Vec<String>), Refusal> {
    let found = find(name).map_err(|error| of_error(language, name, &error))?;
    let own = found.designation.text() == found.grade.key();
    if own && found.candidates.is_empty() && found.condition.is_none() {
        return Ok((found.grade, Vec::new()));
    }
    Ok((found.grade, Speech { language, units }.verdict(name, &found)))
}

/// The card of a grade, by any of its designations.
///
/// # Errors
/// A refusal with the three nearest names; none of them is taken for the steel.
pub fn steel(language: Language, question: &SteelQuestion) -> Result<SteelAnswer, Refusal> {
    let SteelQuestion { name, units } = question;
    let found = find(name).map_err(|error| of_error(language, name, &error))?;
    Ok(Speech { language, units: *units }.card(name, &found))
}

/// Every grade in short.
#[must_use]
pub fn steels(language: Language) -> Vec<SteelListing> {
    let listing = |grade: &'static Grade| SteelListing {
        key: grade.key(),
        name: grade.name(),
        family: grade.family().key(),
        kind: grade.hardening().key(),
        text: language.steel(title(grade)).into_owned(),
    };
    Grade::all().iter().map(listing).collect()
}

/// Designations for a text, and the card when the text is one by itself.
///
/// # Errors
/// A refusal with the three nearest names when nothing is near.
pub fn find_steels(language: Language, question: &SteelQuestion) -> Result<FindAnswer, Refusal> {
    let SteelQuestion { name, units } = question;
    let speech = Speech { language, units: *units };
    let matches: Vec<CandidateAnswer> =
        search(name, MATCHES).into_iter().map(|one| speech.candidate(one)).collect();
    match find(name) {
        Ok(found) => Ok(FindAnswer { card: Some(speech.card(name, &found)), matches }),
        Err(error) if matches.is_empty() => Err(of_error(language, name, &error)),
        Err(_) => Ok(FindAnswer { card: None, matches }),
    }
}

/// Hardness by kind of part, for the parts that hold the words.
///
/// # Errors
/// A refusal that lists the kinds of parts.
pub fn steel_targets(
    language: Language,
    units: Units,
    part: &str,
) -> Result<TargetsAnswer, Refusal> {
    let speech = Speech { language, units };
    let targets: Vec<TargetRow> =
        target::find(part).into_iter().map(|row| speech.target(row)).collect();
    if targets.is_empty() {
        let given = format::shortened(part);
        let what = SteelRefusal::UnknownPart { given: &given };
        let refused = refusal(language, "steel.unknown_part", part, what);
        let mut parts: Vec<&str> = target::all().iter().map(Target::part).collect();
        parts.dedup();
        return Err(Refusal { allowed: parts.join("; "), ..refused });
    }
    let cautions =
        [speech.say(SteelWords::TargetCaution), language.about(About::CautionCritical).to_owned()];
    Ok(TargetsAnswer { targets, cautions: cautions.into() })
}

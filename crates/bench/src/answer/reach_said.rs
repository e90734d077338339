//! What is said of a section: shape, verdict, basis, ways out, notes and cautions in words.

use biteband_steel::Grade;
use biteband_steel::hardenability::{Band, Method};
use biteband_steel::reach::{
    Attained, Bar, Basis, Depth, Fit, Quench, Reach, Through, Verdict, WayOut, quenchant,
};
use biteband_steel::section::{Place, Section, Shape, Why};
use biteband_steel::transform::{CrackLevel, CrackReason, CrackRisk};

use super::reach::{HRC, Speech};
use super::reach_answer::{PartAnswer, SectionAnswer, WayOutAnswer};
use crate::format::{self, Units};
use crate::words::{About, Likely, Reach as Words, SteelWords};

impl Speech {
    pub(super) fn section(self, section: &Section, round: f64) -> SectionAnswer {
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
    pub(super) fn shown(self, here: Attained) -> String {
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

    pub(super) fn verdict(
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
            // Half way may lie between the two and be unknown.
            let through = found.positions.iter().all(|one| self.shown(one.hardness) == skin_text);
            let verdict = self.say(Words::Found { skin: &skin_text, through });
            let say = Words::Reaches { skin: &skin_text, inside: &middle_text, bore };
            return (verdict, self.say(say));
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
    pub(super) fn basis(
        self,
        grade: Option<&'static Grade>,
        found: &Reach,
    ) -> (String, Vec<&'static str>) {
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
                // The same figures once more, where a row says how thick it hardens through.
                let note = grade.filter(|_| through.is_none()).map(Grade::section_note);
                let note = note.filter(|note| !note.is_empty());
                said.extend(
                    note.map(|note| self.language.steel(SteelWords::Section(note)).into_owned()),
                );
                (said.join(" "), sources)
            }
        }
    }

    fn depth(self, row: &Through, depth: Depth) -> Vec<String> {
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
    pub(super) fn on_record(self, grade: Option<&'static Grade>, quench: &Quench) -> Vec<String> {
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

    pub(super) fn way(self, quench: &Quench, way: &WayOut) -> WayOutAnswer {
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

    pub(super) fn notes(
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
            if !matches!(ruling.why, Why::Diameter) {
                note(Words::CornersCoolFaster);
            }
        }
        notes
    }

    pub(super) fn cautions(
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
            // The carbon equivalent is told where no plainer rule speaks.
            let plain = |reason: &&CrackReason| {
                risk.reasons.len() == 1 || **reason != CrackReason::Equivalent
            };
            let reasons = risk.reasons.iter().filter(plain);
            cautions.extend(reasons.map(|reason| self.say(Words::Cracks(*reason))));
        }
        cautions.extend(grade.into_iter().flat_map(Grade::hazards).map(format::sentence));
        for part in parts {
            let said = format::sentence(part.caution);
            if !said.is_empty() && !cautions.contains(&said) {
                cautions.push(said);
            }
        }
        cautions.push(self.language.about(About::CautionCritical).to_owned());
        cautions
    }
}

/// What conduction alone says of the middle, where it differs by more than 2 HRC.
fn second(quench: &Quench, found: &Reach, band: &Band) -> Option<(f64, Place)> {
    let at = quench.cooling().places.iter().find(|at| at.place == Place::Middle)?;
    let hrc = band.mid.hardness_at(at.second_opinion?)?.hrc()?;
    let mid = found.at(Place::Middle)?.mid?;
    ((hrc - mid).abs() > 2.0).then_some((hrc, Place::Middle))
}

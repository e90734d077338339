//! Times, skin, quench, cautions and lists of the answer about a heat.

use biteband_hardness::decimal;
use biteband_quantity::{Celsius, MassPercent, Minutes};
use biteband_steel::furnace::{
    self, HeatThrough, KnownPoint, Protection, decarburised, heat_through, hold,
};
use biteband_steel::quench::Medium;
use biteband_steel::reach::{Fit, crack_risk, quenchant};
use biteband_steel::section::Shape;
use biteband_steel::transform::CrackLevel;
use biteband_steel::{Element, Family, Grade, Interval, Quenchant};

use super::heat::{Job, Speech, joined};
use super::heat_answer::{
    Checklist, HeatPart, HeatThroughAnswer, HoldAnswer, HoldRuleAnswer, KnownPointAnswer,
    ProtectionAnswer, QuenchingAnswer, SkinAnswer,
};
use crate::refusal::Refusal;
use crate::section::size;
use crate::words::{Heat, HeatRefusal, List};

/// From here on the open air spoils the skin deeper than is ground off, in °C. Common practice, no source.
const CLOSED: f64 = 900.0;
/// From here on the rules of the trade by size are not made for a steel, in °C. Common practice, no source.
const HIGH_SPEED: f64 = 1100.0;
/// Carbon of a carburized case, mass percent. Common practice, no source.
const CASE_CARBON: f64 = 0.8;
/// Hand-warm, in °C, as papers of tool steels have it (50 to 65).
const HAND_WARM: f64 = 60.0;

/// The hold: what the grade's data say, what the rules do, and what is taken.
pub(super) struct Holding {
    soak: &'static str,
    own: Option<Interval>,
    rules: Vec<furnace::HoldRule>,
    all: Option<Interval>,
    pub(super) taken: Option<f64>,
    hot: bool,
}

impl Holding {
    pub(super) fn of(job: &Job, through: Option<&HeatThrough>) -> Self {
        let soak = job.grade.map_or("", Grade::soak);
        let hot = job.grade.and_then(Grade::window).is_some_and(|w| w.low >= HIGH_SPEED);
        let mm = job.section.map(|section| section.ruling().mm);
        let own = own_soak(soak, mm);
        let found = job.section.as_ref().filter(|_| !hot).zip(through);
        let found = found.map(|(section, through)| hold(section, through.minutes.get()));
        let all = found.map(|found| found.span);
        let taken = own.or(all).map(|range| range.middle().ceil());
        let rules = found.map(|found| found.rules.to_vec()).unwrap_or_default();
        Self { soak, own, rules, all, taken, hot }
    }
}

/// The minutes at heat that stand at the beginning of a note of the data, before it speaks of other sheets:
/// `10-30 min at heat`, `20 min small to 45 min large`, `1 min per mm`.
fn own_soak(note: &str, mm: Option<f64>) -> Option<Interval> {
    if note.starts_with("1 min per mm") {
        return mm.map(|mm| Interval { low: mm, high: mm });
    }
    let first = note.split(['(', ';']).next()?;
    if !first.starts_with(|c: char| c.is_ascii_digit())
        || !first.contains(" min")
        || first.contains(" h ")
    {
        return None;
    }
    let mut found = first
        .split(|c: char| !c.is_ascii_digit())
        .filter(|figures| !figures.is_empty())
        .filter_map(decimal);
    let low = found.next()?;
    let high = found.next().unwrap_or(low);
    (low <= high).then_some(Interval { low, high })
}

impl Speech {
    /// What is missing, and what is not known of so hot a steel.
    pub(super) fn notes(self, job: &Job, known: bool) -> Vec<String> {
        let case = job.case_only();
        let plate = job.section.is_some_and(|s| matches!(s.shape(), Shape::Plate { .. }));
        let most = self.celsius(furnace::FURNACE.max);
        let weighed = job.mass.is_some();
        [
            (case, Heat::CaseOnly),
            (!known, Heat::TooHotToTell { most: &most }),
            (job.section.is_none(), Heat::GiveSection),
            (job.bath.is_none(), Heat::GiveQuench),
            (!weighed && job.section.is_some() && job.bath.is_none() && !plate, Heat::GiveLength),
            (!weighed && plate, Heat::NoMassOfPlate),
        ]
        .into_iter()
        .filter(|(here, _)| *here)
        .map(|(_, phrase)| self.say(phrase))
        .collect()
    }

    pub(super) fn preheat(self, job: &Job) -> String {
        let steps = job.grade.map_or(&[][..], Grade::preheat);
        if steps.is_empty() {
            return String::new();
        }
        let steps: Vec<String> =
            steps.iter().map(|step| self.units.temperatures(step.low, step.high)).collect();
        let steps: Vec<&str> = steps.iter().map(String::as_str).collect();
        self.say(Heat::Preheat { steps: &steps })
    }

    pub(super) fn part(job: &Job) -> Option<HeatPart> {
        (job.section.is_some() || job.mass.is_some()).then(|| HeatPart {
            shape: job.section.map(|section| section.shape().key()),
            ruling_mm: job.section.map(|section| section.ruling().mm),
            mass_kg: job.mass.map(biteband_quantity::Kilograms::get),
        })
    }

    pub(super) fn protection(self, job: &Job) -> ProtectionAnswer {
        let needed = job.grade.is_some_and(|grade| {
            grade.window().is_some_and(|window| window.low >= CLOSED)
                || grade.hazards().any(|text| {
                    ["must be protected", "protect from", "vacuum"].iter().any(|w| text.contains(w))
                })
        });
        let open = needed && job.protection == Protection::Open;
        let warning = open.then(|| self.say(Heat::NotInTheOpen));
        let text = [Some(self.say(Heat::Protection(job.protection))), warning];
        ProtectionAnswer {
            kind: job.protection.key(),
            needed,
            text: joined(text.into_iter().flatten()),
        }
    }

    pub(super) fn through(
        self,
        job: &Job,
        at: Option<Celsius>,
    ) -> Result<Option<HeatThrough>, Refusal> {
        let Some((section, at)) = job.section.zip(at) else { return Ok(None) };
        match heat_through(&section, at, job.start, job.protection) {
            Ok(found) => Ok(Some(found)),
            Err(furnace::Error::NothingToHeat { .. }) => Ok(None),
            Err(error) => Err(self.refuse(error.code(), "", HeatRefusal::Oven(&error))),
        }
    }

    /// The figure that counts: stainless steel stays bright.
    pub(super) fn main(job: &Job, found: &HeatThrough) -> f64 {
        let bright = |grade: &Grade| matches!(grade.family(), Family::Stainless);
        if job.grade.is_some_and(bright) { found.bright.get() } else { found.minutes.get() }
    }

    pub(super) fn through_answer(self, job: &Job, found: &HeatThrough) -> HeatThroughAnswer {
        let (low, high) = (found.minutes.get(), found.bright.get());
        let mm = job.section.map_or(0.0, |section| section.ruling().mm);
        let first = self.say(Heat::Through {
            low: &Self::minutes(low.round(), low.round()),
            high: &Self::minutes(high.round(), high.round()),
            from: &self.celsius(job.start.get()),
            size: &size(self.units, mm),
            within: &self.difference(found.within.get()),
        });
        let least = found.at_least.then(|| self.say(Heat::AtLeast));
        HeatThroughAnswer {
            low_min: low,
            high_min: high,
            within_k: found.within.get(),
            from_c: job.start.get(),
            at_least: found.at_least,
            cited: found.cited.into(),
            text: joined([Some(first), least].into_iter().flatten()),
        }
    }

    pub(super) fn hold(self, found: &Holding) -> HoldAnswer {
        let mut said = Vec::new();
        if !found.soak.is_empty() {
            said.push(self.say(Heat::Soak(found.soak)));
        }
        if let Some(all) = found.all {
            let [low, high] =
                [all.low.floor(), all.high.ceil()].map(|minutes| Self::minutes(minutes, minutes));
            said.push(self.say(Heat::TradeDisagrees { low: &low, high: &high }));
        }
        if found.hot {
            said.push(self.say(Heat::NoRules));
        }
        said.push(match found.taken {
            Some(minutes) => self.say(Heat::HoldTaken {
                minutes: &Self::minutes(minutes, minutes),
                own: found.own.is_some(),
            }),
            None => self.say(Heat::HoldUnknown),
        });
        let rule = |rule: &furnace::HoldRule| {
            let (low, high) = (rule.minutes.low, rule.minutes.high);
            let minutes = Self::minutes(low.round(), high.round());
            let words = self.say(Heat::Rule { rule: rule.rule, minutes: &minutes });
            HoldRuleAnswer {
                rule: rule.rule.key(),
                low_min: low,
                high_min: high,
                cited: rule.cited.into(),
                text: joined([format!("{words}."), self.mark(rule.cited)].into_iter()),
            }
        };
        let ends = [found.all, found.own].into_iter().flatten();
        let low = ends.clone().map(|range| range.low).reduce(f64::min);
        let high = ends.map(|range| range.high).reduce(f64::max);
        HoldAnswer {
            low_min: low,
            high_min: high,
            soak: found.soak,
            rules: found.rules.iter().map(rule).collect(),
            text: joined(said.into_iter()),
        }
    }

    pub(super) fn skin(
        self,
        job: &Job,
        at: Option<Celsius>,
        through: Option<&HeatThrough>,
        hold: Option<f64>,
    ) -> Option<SkinAnswer> {
        let minutes = Self::main(job, through?) + hold?;
        let case = job.case_only();
        let carbon = if case { CASE_CARBON } else { job.limits.range(Element::C)?.high };
        let carbon = MassPercent::new(carbon).ok()?;
        let time = Minutes::new(minutes).ok()?;
        // Below the range of the models carbon hardly moves, and nothing hardens either.
        let found = decarburised(at?, time, carbon, job.protection).ok()?;
        let (low, high) = (found.depth.low, found.depth.high);
        let first = self.say(Heat::Lost {
            minutes: &Self::minutes(minutes.round(), minutes.round()),
            low: &self.depth(low),
            high: &self.depth(high),
            protected: job.protection != Protection::Open,
        });
        // Rounded up to what a grinder is set to.
        let grind = self.depth((found.grind * 20.0).ceil() / 20.0);
        Some(SkinAnswer {
            minutes,
            low_mm: low,
            high_mm: high,
            grind_mm: found.grind,
            cited: found.cited.into(),
            text: joined([first, self.say(Heat::Grind { grind: &grind })].into_iter()),
        })
    }

    /// A bath that is not for the grade, before everything else.
    pub(super) fn fit_caution(self, job: &Job) -> Option<String> {
        let (grade, bath) = job.grade.zip(job.bath)?;
        let medium = bath.medium;
        match Fit::of(grade, quenchant(medium)) {
            Fit::Sharper | Fit::Never => Some(self.say(Heat::FitSharper { medium })),
            Fit::Milder => Some(self.say(Heat::FitMilder { medium })),
            Fit::Named | Fit::Between => None,
        }
    }

    pub(super) fn quench(self, job: &Job) -> QuenchingAnswer {
        let named: Vec<&'static str> =
            job.grade.map_or(&[][..], Grade::quenchants).iter().map(|one| one.key()).collect();
        let mut said = Vec::new();
        if let Some(grade) = job.grade {
            said.push(self.say(Heat::NamedMedia { media: &self.media(grade) }));
        }
        let fit = job.grade.zip(job.bath).map(|(grade, bath)| {
            let fit = Fit::of(grade, quenchant(bath.medium));
            said.extend(self.fit_caution(job));
            if fit == Fit::Between {
                said.push(self.say(Heat::FitBetween { medium: bath.medium }));
            }
            match fit {
                Fit::Named => "named",
                Fit::Between => "between",
                Fit::Milder => "milder",
                Fit::Sharper | Fit::Never => "sharper",
            }
        });
        let risk = job.bath.and_then(|bath| crack_risk(&job.limits, quenchant(bath.medium)));
        let level = risk.as_ref().map(|risk| match risk.level {
            CrackLevel::Low => "low",
            CrackLevel::Raised => "raised",
            CrackLevel::High => "high",
        });
        let sources = risk.as_ref().map_or(&[][..], |risk| risk.cited.sources);
        if let Some(risk) = risk.filter(|risk| risk.level > CrackLevel::Low) {
            let high = risk.level == CrackLevel::High;
            let head = self.say(if high { Heat::CrackHigh } else { Heat::CrackRaised });
            let reasons = risk.reasons.iter().map(|reason| self.say(Heat::Crack(*reason)));
            said.push(format!("{head} {}.", reasons.collect::<Vec<_>>().join("; ")));
            let mark = self.mark(risk.cited);
            said.push(mark);
        }
        QuenchingAnswer {
            named,
            medium: job.bath.map(|bath| bath.medium.key()),
            movement: job.bath.map(|bath| bath.movement.key()),
            fit,
            crack_risk: level,
            sources,
            text: joined(said.into_iter()),
        }
    }

    /// Where work can hurt; the baths are those that were asked for or, without one, those of the grade.
    pub(super) fn cautions(self, job: &Job) -> Vec<String> {
        let of_grade = |media: &[Quenchant]| {
            job.bath.is_none()
                && job
                    .grade
                    .is_some_and(|grade| grade.quenchants().iter().any(|m| media.contains(m)))
        };
        let bath = |media: &[Medium]| job.bath.is_some_and(|bath| media.contains(&bath.medium));
        let oils = [Medium::Oil, Medium::FastOil, Medium::VegetableOil, Medium::UnknownOil];
        let oil = bath(&oils)
            || of_grade(&[Quenchant::Oil, Quenchant::FastOil, Quenchant::InterruptedOil]);
        let lead = job.limits.stated(Element::Pb).1.is_some_and(|most| most > 0.05);
        let stop = self.celsius(HAND_WARM);
        [
            (oil, Heat::OilFire),
            (bath(&[Medium::VegetableOil]), Heat::CookingOil),
            (bath(&[Medium::Water, Medium::Polymer]) || of_grade(&[Quenchant::Water]), Heat::Steam),
            (bath(&[Medium::Brine]) || of_grade(&[Quenchant::Brine]), Heat::Brine),
            (bath(&[Medium::Salt]), Heat::HotSalt),
            (true, Heat::Burns),
            (lead, Heat::Lead),
            (true, Heat::Fumes),
            (job.protection == Protection::Charcoal, Heat::Charcoal),
            (job.protection == Protection::Atmosphere, Heat::Gas),
            (true, Heat::TemperAtOnce { stop: &stop }),
            (oil, Heat::LocalCodes),
        ]
        .into_iter()
        .filter(|(here, _)| *here)
        .map(|(_, phrase)| self.say(phrase))
        .collect()
    }

    pub(super) fn list(self, list: List) -> Checklist {
        let items = self.language.heat_list(list);
        Checklist {
            list: list.key(),
            title: self.say(Heat::ListTitle(list)),
            items: items.iter().map(|&item| item.to_owned()).collect(),
        }
    }

    pub(super) fn point(self, point: KnownPoint) -> KnownPointAnswer {
        let (celsius, width) = point.temperature();
        let (at, give) = (self.celsius(celsius), self.difference(width));
        let words = self.say(Heat::Point { point, at: &at, width: &give });
        KnownPointAnswer {
            point: point.key(),
            celsius,
            half_width_k: width,
            cited: point.cited().into(),
            text: joined([words, self.mark(point.cited())].into_iter()),
        }
    }
}

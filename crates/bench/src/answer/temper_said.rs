//! The parts of an answer about tempering, in words.

use biteband_evidence::Target;
use biteband_quantity::Celsius;
use biteband_steel::furnace::{self, OvenOffset, Protection, heat_through};
use biteband_steel::reach::Steel;
use biteband_steel::temper::{
    Aim, How, LEVEL, MEASURED, Method, Oven, Plan, PlanStep, Predict, Predicted, Temper, Way,
    colour, plan,
};
use biteband_steel::{CurveCloseness, Element, Grade, Interval};

use super::heat::{Speech, joined};
use super::temper::{HRC, Learnt, SNAP, TemperQuestion, learned, tempering_refused, time};
use super::temper_answer::{AfterAnswer, CurvePoint, PlanAnswer, SheetAnswer, TemperAnswer};
use crate::format::{self, fixed};
use crate::refusal::Refusal;
use crate::words::{TemperPage, Tempers};

/// From this carbon on a part of it stays undissolved when the steel is hardened, mass percent. Common practice, no source.
const HYPER: f64 = 0.85;
/// The curve is told this far apart, in K.
const CURVE: f64 = 10.0;
/// A later, cooler temper that takes less than this off changes next to nothing, in HRC. Ours: no tester shows it.
const NOTHING: f64 = 0.3;
/// A fall of less, in HRC for every 10 °C, would be printed as none.
const FLAT: f64 = 0.05;
/// So near to the beginning of the change is told, in K.
const NEAR: f64 = 40.0;

/// Everything that an answer is made from.
pub(super) struct Job<'a> {
    pub(super) speech: Speech,
    pub(super) question: &'a TemperQuestion,
    pub(super) steel: &'a Steel,
    pub(super) learnt: &'a Learnt<'a>,
    pub(super) checks: Option<OvenOffset>,
    pub(super) held: f64,
    pub(super) times: u8,
    pub(super) quenched: Option<f64>,
}

/// What was asked, as far as it is the same for a temper and for a plan.
pub(super) struct Asked<'a> {
    /// Tempers that the answer speaks of, the coldest and the hottest in °C.
    pub(super) span: Interval,
    /// The tempers themselves.
    pub(super) tempers: &'a [Temper],
    /// Those that the part has had before a plan.
    pub(super) done: &'a [Temper],
}

impl Job<'_> {
    pub(super) fn say(&self, phrase: Tempers<'_>) -> String {
        self.speech.language.tempers(phrase).into_owned()
    }

    pub(super) fn hrc(value: f64) -> String {
        format!("{} HRC", fixed(value, 0))
    }

    fn name(&self) -> String {
        self.steel
            .grade()
            .map_or_else(|| self.say(Tempers::OwnSteel), |grade| grade.name().to_owned())
    }

    pub(super) fn after(&self, found: &Predicted) -> AfterAnswer {
        let (low, high) = (format::outward_low(found.low), format::outward_high(found.high));
        AfterAnswer {
            median: found.median,
            low: found.low,
            high: found.high,
            level: LEVEL,
            below_20: found.below_scale,
            shown: if found.below_scale {
                self.say(Tempers::UpTo { high: &format!("{high} HRC") })
            } else {
                format!("{} HRC", format::dash(&low, &high))
            },
        }
    }

    /// The answer as a whole.
    ///
    /// # Errors
    /// A refusal: a temper that nothing is known of, or a target that none gives.
    pub(super) fn answer(
        &self,
        understood: Vec<String>,
        given: &[Temper],
        done: &[Temper],
        target: Option<(&str, Target)>,
    ) -> Result<TemperAnswer, Refusal> {
        let mut answer = TemperAnswer {
            steel: self.steel.grade().map(Grade::key),
            understood,
            method: self.learnt.taught.tempering().method().key(),
            times: self.times,
            ..TemperAnswer::default()
        };
        let all: Vec<Temper> = done.iter().chain(given).copied().collect();
        if !given.is_empty() {
            self.one(&mut answer, &all)?;
        }
        let mut span = span_of(&all);
        let mut asked = all.clone();
        if let Some((text, aim)) = target {
            let found = self.planned(&mut answer, done, text, aim)?;
            let steps: Vec<Temper> = found.steps.iter().map(|step| step.temper).collect();
            span = span_of(&steps);
            asked = steps;
        }
        let asked = Asked { span, tempers: &asked, done };
        self.curve(&mut answer);
        self.basis(&mut answer, &asked);
        self.brittle(&mut answer, &asked, target.map(|(_, aim)| aim));
        self.around(&mut answer, &asked);
        answer.learned = self.learnt.answer(self.speech);
        if let Some(learned) = &answer.learned {
            answer.notes.splice(0..0, learned.text.iter().cloned());
        }
        let mut seen: Vec<&str> = Vec::new();
        answer.sources.retain(|key| {
            let fresh = !seen.contains(key);
            seen.push(key);
            fresh
        });
        Ok(answer)
    }

    /// What tempers leave.
    fn one(&self, answer: &mut TemperAnswer, all: &[Temper]) -> Result<(), Refusal> {
        let tempering = self.learnt.taught.tempering();
        let given = all.last().map(|one| self.speech.celsius(one.celsius())).unwrap_or_default();
        let found = self
            .learnt
            .taught
            .in_metal(all)
            .map_err(|error| tempering_refused(self.speech, &error, &given))?;
        let after = self.after(&found);
        let list: Vec<String> = all
            .iter()
            .map(|one| {
                let at = self.speech.celsius(one.celsius());
                self.say(Tempers::One { at: &at, time: &time(one.minutes()) })
            })
            .collect();
        let about = Self::hrc(found.median);
        answer.verdict = self.say(Tempers::Leaves {
            steel: &self.name(),
            tempers: &list.join(", "),
            about: &about,
            band: &after.shown,
        });
        if let Some((hottest, minutes)) = tempering.together(all)
            && all.len() > 1
        {
            let at = self.speech.celsius(hottest);
            answer.notes.push(self.say(Tempers::Counts { at: &at, time: &time(minutes) }));
            let until = all.iter().rposition(|one| one.celsius() >= hottest).map_or(0, |at| at + 1);
            if let Some(before) = all.get(..until).filter(|before| before.len() < all.len())
                && let Ok(before) = self.learnt.taught.in_metal(before)
            {
                let fall = before.median - found.median;
                let fall = (fall >= NOTHING).then(|| format!("{} HRC", fixed(fall, 1)));
                answer.notes.push(self.say(Tempers::LaterTakes { at: &at, fall: fall.as_deref() }));
            }
        }
        answer.notes.push(self.say(Tempers::FullyHard));
        answer.hardness = Some(after);
        Ok(())
    }

    /// Tempers for a hardness.
    fn planned(
        &self,
        answer: &mut TemperAnswer,
        done: &[Temper],
        text: &str,
        aim: Target,
    ) -> Result<Plan, Refusal> {
        let limits = Aim { low: aim.low(), high: aim.high() };
        let over = self.brittle_range();
        let how = How { done, minutes: self.held, times: self.times, over };
        let make = |learnt: &Learnt<'_>| {
            plan(&learnt.taught.oven_set(), limits, how)
                .map_err(|error| self.no_plan(text, limits, how, &error))
        };
        let mut found = make(self.learnt)?;
        let first = found.steps.first().map(|step| step.temper.celsius());
        if self.learnt.checked && first.is_some_and(|first| self.width(first).is_none()) {
            // No check reaches the temper: the oven is as good as unchecked there.
            let tempering = self.learnt.taught.tempering();
            found = make(&learned(self.speech, tempering, &self.question.learn, None)?)?;
        }
        let found = found;
        answer.plan = found.steps.iter().map(|step| self.step(step)).collect();
        answer.step_k = Some(found.step);
        answer.fall_per_10k = Some(found.fall);
        let Some(first) = found.steps.first() else { return Ok(found) };
        let (metal, _) = self.metal_and_dial(first.temper.celsius());
        let at = self.set(metal);
        let said = self.first(first);
        let snap = if self.question.hurried {
            let (celsius, minutes) = SNAP;
            let at = self.speech.celsius(celsius);
            self.say(Tempers::SnapTonight { at: &at, time: &time(minutes) })
        } else {
            String::new()
        };
        answer.verdict = joined([snap, said].into_iter());
        let last = found.steps.last().filter(|_| found.steps.len() > 1);
        let fall = (found.fall >= FLAT).then(|| format!("{} HRC", fixed(found.fall, 1)));
        let steps = match last {
            Some(last) => self.say(Tempers::ThenMeasure {
                step: &self.speech.difference(found.step),
                fall: fall.as_deref(),
                last: &self.last(last.temper.celsius(), first.temper.celsius()),
            }),
            None if found.ends => String::new(),
            None => self.say(Tempers::NoMoreSteps),
        };
        answer.notes.extend(Some(steps).filter(|steps| !steps.is_empty()));
        if found.ends {
            let tempering = self.learnt.taught.tempering();
            answer.notes.push(self.say(Tempers::KnownEnds {
                at: &self.speech.celsius(tempering.range().high.floor()),
                sheets: matches!(tempering.way(), Way::Sheets(_)),
            }));
        }
        let wanted = self.speech.units.range(HRC, aim.low(), aim.high());
        answer.notes.push(self.say(Tempers::StopWhen { wanted: &wanted }));
        if answer.hardness.is_none() {
            answer.notes.push(self.say(Tempers::FullyHard));
        }
        if found.at_the_end {
            answer.warnings.push(self.say(Tempers::AtTheEnd { at: &at }));
        }
        if self.times > 1 {
            answer.notes.push(self.say(Tempers::Twice { times: self.times }));
        }
        // Steps from here on have no figure of the dial.
        let on_dial = |step: &&PlanAnswer| step.dial_c.is_some();
        let beyond = answer.plan.iter().find(|step| !on_dial(step));
        let beyond = beyond.filter(|_| answer.plan.first().as_ref().is_some_and(on_dial));
        let beyond = beyond.map(|step| self.beyond(&self.set(step.celsius)));
        let dial = self.dial(first.temper.celsius());
        let dial = joined([dial, beyond.unwrap_or_default()].into_iter());
        answer.notes.push(dial.clone());
        answer.dial = dial;
        Ok(found)
    }

    /// What the dial has to show for a temperature that is planned, or that nobody knows it there.
    pub(super) fn dial(&self, planned: f64) -> String {
        let (metal, dial) = self.metal_and_dial(planned);
        let at = self.set(metal);
        match (dial, self.width(metal)) {
            (Some(dial), Some(width)) if self.learnt.checked => self.say(Tempers::Dial {
                dial: &self.speech.celsius(dial),
                metal: &at,
                width: &self.speech.difference(width),
            }),
            (Some(dial), _) => self.say(Tempers::DialLearned {
                dial: &self.speech.celsius(dial),
                metal: &at,
                width: &self.speech.difference(2.0 * self.learnt.taught.oven().sd),
            }),
            (None, _) if self.checks.is_some() => self.beyond(&at),
            (None, _) => self.say(Tempers::DialUnchecked { width: &self.unchecked() }),
        }
    }

    /// A temperature that is to be set: as finely as an oven can be.
    pub(super) fn set(&self, celsius: f64) -> String {
        self.speech.units.temperatures(celsius.round(), celsius.round())
    }

    /// What an unchecked dial may be off.
    fn unchecked(&self) -> String {
        self.speech.difference(2.0 * Oven::UNCHECKED.sd_k)
    }

    /// No check reaches a temper.
    fn beyond(&self, at: &str) -> String {
        self.say(Tempers::DialBeyond { at, width: &self.unchecked() })
    }

    /// The last temper of a plan as its first is set: by the dial, where that has a figure for it.
    fn last(&self, last: f64, first: f64) -> String {
        let of = |of| self.speech.language.temper_page(of);
        match (self.metal_and_dial(last), self.metal_and_dial(first)) {
            ((_, Some(dial)), _) => format!("{} {}", self.set(dial), of(TemperPage::OnDial)),
            ((metal, _), (_, Some(_))) => {
                format!("{} {}", self.set(metal), of(TemperPage::InMetal))
            }
            ((metal, _), _) => self.set(metal),
        }
    }

    /// The first temper of a plan, and what to expect of it.
    pub(super) fn first(&self, first: &PlanStep) -> String {
        self.say(Tempers::First {
            at: &self.set(self.metal_and_dial(first.temper.celsius()).0),
            time: &time(first.temper.minutes()),
            times: first.times,
            expect: &Self::hrc(first.expect.median),
            band: &self.after(&first.expect).shown,
        })
    }

    pub(super) fn step(&self, step: &PlanStep) -> PlanAnswer {
        let after = self.after(&step.expect);
        let (celsius, dial_c) = self.metal_and_dial(step.temper.celsius());
        let text = self.say(Tempers::Step {
            at: &self.set(celsius),
            time: &time(step.temper.minutes()),
            times: step.times,
            expect: &Self::hrc(step.expect.median),
            band: &after.shown,
        });
        PlanAnswer {
            celsius,
            dial_c,
            hours: step.temper.hours(),
            times: step.times,
            expect: after,
            text,
        }
    }

    /// A temperature of the plan in the metal and on the dial: by checks, or by what own results taught of the oven.
    pub(super) fn metal_and_dial(&self, planned: f64) -> (f64, Option<f64>) {
        if self.learnt.checked {
            let dial = Celsius::new(planned).ok();
            let dial = dial.and_then(|at| self.checks.as_ref()?.dial_for(at).ok());
            return (planned, dial.map(Celsius::get));
        }
        if !self.learnt.taught.believed() {
            return (planned, None);
        }
        (planned + self.learnt.taught.oven().mean, Some(planned))
    }

    /// How well the dial is known there, K at 95 %.
    pub(super) fn width(&self, celsius: f64) -> Option<f64> {
        let checks = self.checks.as_ref()?;
        let dial = checks.dial_for(Celsius::new(celsius).ok()?).ok()?;
        Some(checks.at(dial).ok()?.half_width.get())
    }

    /// Tempers that are known both once and as often as the plan does them, in °C.
    fn known(&self) -> Interval {
        let tempering = self.learnt.taught.tempering();
        let low = tempering.known(self.held).low;
        Interval { low, ..tempering.known(self.held * f64::from(self.times)) }
    }

    /// The curve for one stay of the usual length at every temperature that is known.
    fn curve(&self, answer: &mut TemperAnswer) {
        let range = self.known();
        let mut celsius = (range.low / CURVE).ceil() * CURVE;
        while celsius <= range.high {
            let one = Temper::new(celsius, self.held).ok();
            let all: Vec<Temper> =
                one.into_iter().flat_map(|one| (0..self.times).map(move |_| one)).collect();
            if let Ok(found) = self.learnt.taught.in_metal(&all) {
                answer.curve.push(CurvePoint {
                    celsius,
                    low: found.low,
                    median: found.median,
                    high: found.high,
                });
            }
            celsius += CURVE;
        }
    }

    /// What the numbers rest on, and where they end.
    fn basis(&self, answer: &mut TemperAnswer, asked: &Asked<'_>) {
        let tempering = self.learnt.taught.tempering();
        match tempering.way() {
            Way::Regression(regression) => {
                answer.basis.push(self.say(Tempers::FromModel {
                    spread: &format!(
                        "{} HRC",
                        format::plain((regression.sd(asked.tempers) * 10.0).round() / 10.0)
                    ),
                }));
                if tempering.method() == Method::RegressionEdge {
                    answer.warnings.push(self.say(Tempers::FromModelEdge));
                }
                for (element, share, range) in regression.edges() {
                    answer.warnings.push(self.say(Tempers::OutsideData {
                        element: element.symbol(),
                        given: &format::exact((share * 1000.0).round() / 1000.0),
                        low: &format::exact(range.low),
                        high: &format::exact(range.high),
                    }));
                }
                let times = MEASURED.1;
                if asked
                    .tempers
                    .iter()
                    .any(|one| one.minutes() < times.low || one.minutes() > times.high)
                {
                    answer.warnings.push(self.say(Tempers::OutsideTimes));
                }
                let carbon = self.steel.limits().range(Element::C).map_or(0.0, Interval::middle);
                if carbon >= HYPER {
                    answer.warnings.push(self.say(Tempers::HyperEutectoid));
                }
                if let Some(hrc) = self.quenched {
                    let entered = regression.takes_as_quenched();
                    let hrc = Self::hrc(hrc);
                    answer.notes.push(self.say(if entered {
                        Tempers::AsQuenchedEntered { hrc: &hrc }
                    } else {
                        Tempers::AsQuenchedLeft
                    }));
                }
                answer.basis.push(self.say(Tempers::BandMeaning));
                answer.sources.extend(regression.cited().sources);
            }
            Way::Sheets(sheets) => {
                let total = self.held * f64::from(self.times);
                let ends = self.known();
                let ends_text = self.speech.units.temperatures(ends.low.round(), ends.high.round());
                answer.basis.push(
                    self.say(Tempers::FromSheets {
                        count: sheets.each().count(),
                        ends: &ends_text,
                    }),
                );
                let of = self.steel.grade().and_then(Grade::curve_from).and_then(Grade::by_key);
                match (sheets.closeness(), of) {
                    (CurveCloseness::Sibling, Some(of)) => answer
                        .warnings
                        .push(self.say(Tempers::FromSibling { steel: of.name(), low: false })),
                    (CurveCloseness::SiblingLow, Some(of)) => answer
                        .warnings
                        .push(self.say(Tempers::FromSibling { steel: of.name(), low: true })),
                    _ => {}
                }
                self.sheets(answer, asked);
                if let Some(peak) = sheets.peak(total) {
                    let at = self.speech.units.temperatures(peak.low.round(), peak.high.round());
                    answer.notes.push(self.say(Tempers::PastPeak { at: &at }));
                }
                if self.quenched.is_some() {
                    answer.notes.push(self.say(Tempers::AsQuenchedLeft));
                }
                answer.basis.push(self.say(Tempers::BandOfSheets));
            }
        }
        if let Some(ac1) = tempering.ac1()
            && asked.span.high > ac1 - NEAR
        {
            answer.warnings.push(self.say(Tempers::NearAc1 { ac1: &self.speech.celsius(ac1) }));
        }
    }

    /// What each printed curve says of the tempers.
    fn sheets(&self, answer: &mut TemperAnswer, asked: &Asked<'_>) {
        let Way::Sheets(sheets) = self.learnt.taught.tempering().way() else { return };
        // Of a plan the first temper is looked at, as often as it is done.
        let one: Vec<Temper> = if answer.hardness.is_some() {
            asked.tempers.to_vec()
        } else {
            let first = asked.tempers.first().copied();
            first.into_iter().flat_map(|one| (0..self.times).map(move |_| one)).collect()
        };
        let Ok(band) = sheets.band(&one) else { return };
        for said in &band.each {
            let reading = said.says.ok();
            answer.sources.extend(reading.iter().flat_map(|_| said.sheet.cited().sources));
            answer.sheets.push(SheetAnswer {
                sheet: said.sheet.name(),
                low: reading.map(|reading| reading.hrc.low),
                high: reading.map(|reading| reading.hrc.high),
                cited: said.sheet.cited().into(),
            });
        }
        if band.disagree {
            let each: Vec<String> = answer
                .sheets
                .iter()
                .filter_map(|sheet| Some((sheet.low?, sheet.high?)))
                .map(|(low, high)| format::dash(&fixed(low, 0), &fixed(high, 0)))
                .collect();
            let at = self.speech.celsius(band.celsius);
            answer.warnings.push(
                self.say(Tempers::SheetsApart {
                    at: &at,
                    each: &format!("{} HRC", each.join(", ")),
                }),
            );
        }
        if band.time_assumed {
            answer.notes.push(self.say(Tempers::SheetTime {
                time: &time(60.0 * biteband_steel::temper::USUAL_HOURS),
            }));
        }
    }

    /// Heating through, colour, and how to go about it.
    fn around(&self, answer: &mut TemperAnswer, asked: &Asked<'_>) {
        let section = (!self.question.section.is_empty())
            .then(|| self.question.section.read(self.speech.language).ok())
            .flatten();
        let through = section.and_then(|section| {
            let furnace = Celsius::new(asked.span.low).ok()?;
            let start = Celsius::new(20.0).ok()?;
            heat_through(&section, furnace, start, Protection::Open).ok()
        });
        answer.heat_through_min = through.as_ref().map(|found| found.bright.get());
        answer.notes.push(match &through {
            Some(found) => {
                let minutes = Speech::minutes(found.minutes.get(), found.bright.get());
                self.say(Tempers::HeatThrough { minutes: &minutes })
            }
            None => self.say(Tempers::HeatThroughUnknown),
        });
        if let Some(grade) = self.steel.grade() {
            if colour::speak_for(grade).is_ok() {
                let first = asked.tempers.first();
                let shades =
                    first.map(|one| colour::at(one.celsius(), one.minutes())).unwrap_or_default();
                if let (Some(one), Some(last)) = (shades.first(), shades.last()) {
                    let spread = self
                        .speech
                        .units
                        .temperatures(one.celsius.low.round(), last.celsius.high.round());
                    answer.colour = Some(self.say(Tempers::Shade {
                        first: one.colour,
                        last: last.colour,
                        spread: &spread,
                    }));
                    answer.sources.extend(colour::cited().sources);
                }
            } else {
                answer.notes.push(self.say(Tempers::ColoursOnlyCarbon));
            }
        }
        answer.notes.push(self.say(Tempers::OnlyDown));
        for caution in [Tempers::TemperAtOnce, Tempers::OilSmoke, Tempers::HotMetal] {
            answer.cautions.push(self.say(caution));
        }
        if furnace::FURNACE.check(asked.span.low).is_err() {
            answer.heat_through_min = None;
        }
    }
}

fn span_of(tempers: &[Temper]) -> Interval {
    let all = || tempers.iter().map(|one| one.celsius());
    Interval { low: all().fold(f64::MAX, f64::min), high: all().fold(f64::MIN, f64::max) }
}

//! Ranges that make a steel brittle, and how the tempers of an answer stand to them.

use biteband_evidence::Target;
use biteband_hardness::Source;
use biteband_steel::temper::brittle::{self, Brittle, BrittleKind, Standing};
use biteband_steel::{Family, Interval, source};

use super::temper_answer::{BrittleAnswer, TemperAnswer};
use super::temper_said::{Asked, Job};
use crate::tempers::temper as one_temper;
use crate::words::Tempers;

impl Job<'_> {
    /// Embrittling ranges that the answer lies in, or has to step over.
    pub(super) fn brittle(
        &self,
        answer: &mut TemperAnswer,
        asked: &Asked<'_>,
        aim: Option<Target>,
    ) {
        for range in &self.ranges() {
            let one = self.brittle_one(range, asked, aim);
            if one.inside || !one.text.is_empty() {
                answer.sources.extend(one.sources.iter().copied());
            }
            if !one.text.is_empty() {
                answer.warnings.push(one.text.clone());
            }
            answer.brittle.push(one);
        }
    }

    /// The range that a temper steps over: where all sources agree, or, where they have nothing in common, as far as any has it.
    pub(super) fn brittle_range(&self) -> Option<Interval> {
        let ranges = self.ranges();
        let found = ranges.iter().find(|one| one.kind != BrittleKind::Reversible)?;
        Some(found.core.unwrap_or(found.spread))
    }

    fn ranges(&self) -> Vec<Brittle> {
        match self.steel.grade() {
            Some(grade) => brittle::ranges(grade),
            None => brittle::ranges_of(Family::Alloy, &self.steel.limits()),
        }
    }

    fn brittle_one(
        &self,
        range: &Brittle,
        asked: &Asked<'_>,
        aim: Option<Target>,
    ) -> BrittleAnswer {
        let wide = |range: Interval| self.speech.units.temperatures(range.low, range.high);
        let core = range.core.unwrap_or(range.spread);
        let Interval { low, high } = asked.span;
        let inside =
            asked.tempers.iter().any(|one| range.standing(one.celsius()) != Standing::Clear);
        let core_text = wide(core);
        // With one source there is nothing to differ.
        let spread = if range.each.len() > 1 { wide(range.spread) } else { String::new() };
        let each = range
            .each
            .iter()
            .map(|one| {
                let who = one.cited.sources.first().and_then(|key| source(key));
                let who = who.map(Source::title).unwrap_or_default();
                let range = one.low.map_or_else(
                    || self.say(Tempers::UpTo { high: &self.speech.celsius(one.high) }),
                    |low| wide(Interval { low, high: one.high }),
                );
                self.say(Tempers::BrittleSource { who, range: &range })
            })
            .collect();
        // From the tempers it has had to those of the plan: what lies between is stepped over, unless it is behind it.
        let behind = asked.done.iter().any(|one| one.celsius() > core.high);
        let over = aim.is_some() && low > core.low && !behind;
        let text = match range.kind {
            BrittleKind::Reversible => {
                if inside && !range.delayed {
                    self.say(Tempers::SlowCooling { range: &wide(range.spread) })
                } else {
                    String::new()
                }
            }
            _ if asked
                .tempers
                .iter()
                .any(|one| range.standing(one.celsius()) == Standing::Agreed) =>
            {
                let at = self
                    .speech
                    .units
                    .temperatures(low.max(core.low).round(), high.min(core.high).round());
                self.say(Tempers::InBrittle { at: &at, range: &core_text, spread: &spread })
            }
            _ if over => {
                let hrc = |celsius: f64| {
                    let temper = one_temper(self.speech.language, "", celsius, self.held).ok()?;
                    Some(Self::hrc(self.learnt.taught.in_metal(&[temper]).ok()?.median))
                };
                let (below, above) =
                    (hrc(core.low).unwrap_or_default(), hrc(core.high).unwrap_or_default());
                self.say(Tempers::StepsOver {
                    range: &core_text,
                    spread: &spread,
                    below: &below,
                    above: &above,
                })
            }
            _ if inside => self.say(Tempers::Disputed { spread: &spread }),
            _ => String::new(),
        };
        BrittleAnswer {
            kind: range.kind.key(),
            low_c: range.spread.low,
            high_c: range.spread.high,
            core_low_c: core.low,
            core_high_c: core.high,
            inside,
            each,
            text,
            sources: range.each.iter().flat_map(|one| one.cited.sources).copied().collect(),
        }
    }
}

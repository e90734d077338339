//! Whether the paper is right: what it says against what was measured.

use biteband_evidence::claim::{Budget, Estimate, FileDoubt, Rule, Stated, Verdict};
use biteband_evidence::{AXIS_HIGH, AXIS_LOW, Assessment, FileTest, Level, Odds, Readings, Shape};
use biteband_hardness::{Axis, Error, Scale};
use biteband_quantity::Shown;

use super::claim_answer::{ClaimAnswer, ClaimFound, Claimed, ClaimedAnswer, EstimateAnswer};
use super::claim_paper::{Bar, findings, said_text};
use super::claim_question::{ClaimQuestion, Paper, Part, Spot, read_paper, read_rule, read_spot};
use super::claim_settle::{Doubted, achievable, ways};
use super::clashes::{clashes, settle};
use super::convert::note;
use super::file_question::{FileQuestion, build};
use super::file_test::{contradictions, given, notes as file_notes};
use super::frame::{Frame, HRC, Placed, Said};
use super::next_said::percent;
use super::readings::{ReadingAnswer, ReadingInput, gather_in, scale_of};
use super::steel::named;
use crate::format::{self, Units};
use crate::refusal::Refusal;
use crate::words::{Claim, Gauge, Language, Phrase, Side};

/// Standard uncertainty of a table in HRC where the claim lies below it.
const TABLE: f64 = 1.0;
/// How far beyond the limits of a claim files are followed, HRC.
const MARGIN: f64 = 6.0;

/// Says whether the paper holds.
///
/// # Errors
/// A refusal: a paper without a scale or beyond steel, a reading, rule, place or grade that cannot be read, scales that
/// no table joins, or evidence that contradicts itself.
///
/// # Example
/// ```
/// use biteband_bench::answer::{ClaimQuestion, claim, parse_reading};
/// use biteband_bench::words::Language;
/// let language = Language::English;
/// let question = ClaimQuestion {
///     claim: "28-32 HRC".into(),
///     measured: vec![parse_reading(language, "288 HBW +-8").unwrap()],
///     rule: Some("simple".into()),
///     ..Default::default()
/// };
/// let answer = claim(language, &question).unwrap();
/// assert_eq!(answer.verdict, "agrees");
/// assert_eq!(answer.doubt[0].source, "conversion");
/// ```
pub fn claim(language: Language, question: &ClaimQuestion) -> Result<ClaimAnswer, Refusal> {
    claimed(language, question).map(|claimed| claimed.answer)
}

/// See [`claim`].
pub(crate) fn claimed(language: Language, question: &ClaimQuestion) -> Result<Claimed, Refusal> {
    let (rule, rule_name) = read_rule(language, question.rule.as_deref())?;
    let place = read_spot(language, question.place.as_deref())?;
    let claimed = read_spot(language, question.claimed_place.as_deref())?.unwrap_or(Spot::Skin);
    let paper = read_paper(language, &question.claim)?;
    let bar = match question.steel.as_deref().map(str::trim).filter(|name| !name.is_empty()) {
        Some(name) => {
            let (grade, understood) = named(language, question.units, name)?;
            Some(Bar { grade, condition: Bar::condition(name), understood })
        }
        None => None,
    };
    let inputs: Vec<ReadingInput> =
        question.measured.iter().chain(&question.files.readings).cloned().collect();
    let scales: Vec<Axis> =
        inputs.iter().map(|input| scale_of(language, input)).collect::<Result<_, _>>()?;
    let filed = !question.files.strokes.is_empty() || question.files.prior.is_some();
    let part = chosen(&paper, &scales, filed);
    let Some(part) = part else {
        return Err(Refusal::of_designation(
            language,
            &question.claim,
            &biteband_hardness::designation::Error::Empty,
        ));
    };
    let met = meet(language, &part.said, &inputs, &scales, filed)?;
    let units = question.units;
    let mut asked = Asked { language, units, rule, paper: &paper, part, met, uneven: false };
    let mut test = asked.test(&question.files, filed)?;
    let assess =
        |test: &FileTest| test.assess(None).map_err(|error| Refusal::of_evidence(language, &error));
    let mut found = assess(&test)?;
    if let Some(readings) = asked.unevened(&found) {
        (asked.met.readings, asked.uneven) = (readings, true);
        test = asked.test(&question.files, filed)?;
        found = assess(&test)?;
    }
    asked.sound(&test, &found)?;
    let stated = asked.stated()?;
    let measured = !(test.strokes().is_empty() && asked.met.readings.is_empty());
    let papers = findings(&asked.about(), bar.as_ref(), place, claimed);
    let wrong = papers.iter().any(|one| one.wrong);
    let elsewhere = place.is_some_and(|place| place != claimed);
    let seen = measured.then(|| asked.seen(&stated, &found, wrong, elsewhere));
    let refuse = |error| Refusal::of_evidence(language, &error);
    let files = FileDoubt::of(&test).map_err(refuse)?;
    let budget =
        Budget::of(&asked.met.readings, files, test.prior().expected().map(|(_, sd)| sd), &stated);
    let doubted = Doubted {
        language,
        units: question.units,
        rule,
        stated: &stated,
        said: &part.said,
        placed: &asked.met.placed,
        test: &test,
        found: &found,
        budget: budget.as_ref(),
        files,
        verdict: seen.as_ref().map(|seen| seen.verdict),
        wrong,
        elsewhere,
        own_scale: scales.contains(&part.said.axis),
    };
    let (settle, ways) = ways(&doubted)?;
    let verdict = seen.as_ref().map_or(Verdict::NotProved, |seen| seen.verdict);
    let odds = seen.as_ref().map(|seen| seen.odds);
    let guard = budget.as_ref().map(|budget| rule.guard(budget.u()));
    let drawn = seen.as_ref().map(|seen| asked.drawn(seen, &found, wrong));
    let work = asked.frame().work();
    let answer = ClaimAnswer {
        claim: asked.claimed(),
        verdict: verdict.key(),
        verdict_text: asked.verdict_text(seen.as_ref(), wrong),
        under: odds.map(|odds| odds.under()),
        inside: odds.map(|odds| odds.inside()),
        over: odds.map(|odds| odds.over()),
        rule: rule_name,
        rule_text: asked.rule_text(guard),
        scale: asked.frame().work().symbol(),
        low: asked.met.placed.low,
        high: asked.met.placed.high,
        estimate: seen.as_ref().and_then(|seen| asked.estimate(seen, &stated)),
        readings: asked.measured(),
        doubt: budget
            .as_ref()
            .map(|budget| asked.doubt(budget, &scales, filed))
            .unwrap_or_default(),
        settle,
        ways,
        achievable: achievable(&doubted),
        risk: budget.as_ref().and_then(|budget| asked.risk(budget, &stated)),
        paper: papers,
        steel: bar.as_ref().map(|bar| bar.grade.key()),
        understood: bar.map(|bar| bar.understood).unwrap_or_default(),
        notes: asked.notes(&test, &found, &doubted),
        cautions: asked.cautions(&test, &scales, filed),
        sources: asked.sources(filed),
    };
    Ok(Claimed { answer, work, found: drawn })
}

/// The statement of the paper that is put to the test: in a measured scale if there is one, HRC for files, otherwise
/// the first.
fn chosen<'a>(paper: &'a Paper, scales: &[Axis], filed: bool) -> Option<&'a Part> {
    let of = |axis: Axis| paper.parts.iter().find(|part| part.said.axis == axis);
    let files = if filed { of(HRC) } else { None };
    files.or_else(|| scales.iter().find_map(|&axis| of(axis))).or_else(|| paper.parts.first())
}

/// Claim and readings on one axis.
pub(super) struct Met {
    pub(super) placed: Placed,
    pub(super) readings: Readings,
    pub(super) answers: Vec<ReadingAnswer>,
}

impl Met {
    /// Whether no limit lies behind the end of the tables beyond which a reading lies.
    fn sees_limits(&self) -> bool {
        let limits = || [self.placed.low, self.placed.high].into_iter().flatten();
        self.answers.iter().all(|answer| match answer.beyond {
            None => true,
            Some(above) => answer
                .raw
                .iter()
                .all(|&end| limits().all(|limit| if above { limit <= end } else { limit >= end })),
        })
    }
}

/// The first scale in which everything can be told: the claim's own, one that was measured, HRC. Files speak HRC only.
fn meet(
    language: Language,
    said: &Said,
    inputs: &[ReadingInput],
    scales: &[Axis],
    filed: bool,
) -> Result<Met, Refusal> {
    let tried: Vec<Axis> = if filed {
        vec![HRC]
    } else {
        std::iter::once(said.axis).chain(scales.iter().copied()).chain([HRC]).collect()
    };
    let mut first = None;
    // That a reading lies beyond every table is enough only where nothing more can be told.
    let tried = [false, true].iter().flat_map(|open| tried.iter().map(|work| (*open, *work)));
    for (open, work) in tried {
        let met = Frame::of(said, work, filed)
            .map_err(|error: Error| Refusal::of_hardness(language, &error))
            .and_then(|mut placed| {
                if open {
                    placed.frame = placed.frame.opened();
                }
                let (readings, answers) = gather_in(language, inputs, &placed.frame)?;
                Ok(Met { placed, readings, answers })
            });
        match met {
            // Behind the end of the tables a limit may lie on either side of the part.
            Ok(met) if met.sees_limits() => return Ok(met),
            Ok(_) => {}
            Err(refusal) => first = first.or(Some(refusal)),
        }
    }
    Err(first.unwrap_or_else(|| Refusal::new("bench.no_claim", "", "", "", "")))
}

/// What came out.
struct Seen {
    odds: Odds,
    estimate: Estimate,
    /// What was measured lies beyond what is followed, above or below, and at least past this place.
    beyond: Option<(bool, f64)>,
    /// The 95 % band on the axis, unless a side is open.
    band: Option<(f64, f64)>,
    verdict: Verdict,
}

impl Seen {
    /// Where the part most likely lies. Where a side is open, or all is even, no side is likelier for a reason.
    fn side(&self, wrong: bool) -> Option<Side> {
        let odds = self.odds;
        let most = f64::max(odds.under(), f64::max(odds.inside(), odds.over()));
        match self.band {
            None if self.beyond.is_none() => None,
            _ if most < 0.5 => None,
            _ if odds.inside() >= most => (!wrong).then_some(Side::Inside),
            _ if odds.under() >= most => Some(Side::Under),
            _ => Some(Side::Over),
        }
    }
}

/// Everything that an answer is made from.
pub(super) struct Asked<'a> {
    pub(super) language: Language,
    pub(super) units: Units,
    pub(super) rule: Rule,
    paper: &'a Paper,
    part: &'a Part,
    pub(super) met: Met,
    /// The readings of one tester differ by more than it scatters, and count as those of an uneven part.
    uneven: bool,
}

/// What the checks of a paper need.
pub(super) struct About<'a> {
    pub(super) language: Language,
    pub(super) units: Units,
    pub(super) paper: &'a Paper,
    pub(super) part: &'a Part,
}

impl Asked<'_> {
    fn about(&self) -> About<'_> {
        let &Self { language, units, paper, part, .. } = self;
        About { language, units, paper, part }
    }

    pub(super) fn frame(&self) -> &Frame {
        &self.met.placed.frame
    }

    pub(super) fn say(&self, phrase: Claim<'_>) -> String {
        self.language.claim(phrase).into_owned()
    }

    /// A number of the axis in the working scale.
    pub(super) fn width(&self, places: f64) -> f64 {
        places / self.frame().unit()
    }

    fn stated(&self) -> Result<Stated, Refusal> {
        let placed = &self.met.placed;
        let on_axis = |limit: Option<f64>| limit.map(|limit| placed.frame.place(limit));
        let step = self.part.said.step * placed.slope;
        let stated = Stated::new(on_axis(placed.low), on_axis(placed.high));
        stated.map(|stated| stated.rounded(step, step)).ok_or_else(|| {
            let end = |limit: Option<f64>| limit.unwrap_or_default();
            let (low, high) = (end(placed.low), end(placed.high));
            let error = biteband_evidence::Error::TargetUpsideDown { low, high };
            Refusal::of_evidence(self.language, &error)
        })
    }

    fn test(&self, files: &FileQuestion, filed: bool) -> Result<FileTest, Refusal> {
        let alone = FileQuestion { readings: Vec::new(), target: None, ..files.clone() };
        let test = build(self.language, &alone)?.with_readings(self.met.readings.clone());
        let test = if filed {
            // No farther than the claim asks, so that the same strokes give the band of the file test.
            let limits = [self.met.placed.low, self.met.placed.high].into_iter().flatten();
            let limits = limits.map(|limit| self.frame().place(limit));
            let (low, high) =
                limits.fold((AXIS_HIGH, AXIS_LOW), |(low, high), at| (low.min(at), high.max(at)));
            test.with_reach(f64::max(low - MARGIN, AXIS_LOW), f64::min(high + MARGIN, AXIS_HIGH))
        } else {
            test.with_reach(AXIS_LOW, AXIS_HIGH)
        };
        if !filed || self.frame().claim() == HRC {
            return Ok(test);
        }
        let sd = self.frame().conversion().map_or(TABLE, |(_, sd)| sd);
        test.with_conversion(sd).map_err(|error| Refusal::of_evidence(self.language, &error))
    }

    /// Refuses evidence that contradicts itself.
    fn sound(&self, test: &FileTest, found: &Assessment) -> Result<(), Refusal> {
        let language = self.language;
        let (code, why, way_out) = if let Some(first) = contradictions(language, found).first() {
            let [softer, harder] = [first.softer, first.harder].map(format::exact);
            let phrase = Phrase::NextSettle { softer: &softer, harder: &harder };
            ("evidence.contradiction", first.why.clone(), language.say(phrase))
        } else {
            let told = clashes(language, found, &self.met.answers);
            let Some((told, clash)) = told.first().zip(found.clashes().first()) else {
                return Ok(());
            };
            ("evidence.clash", told.text.clone(), language.gauge(settle(clash)))
        };
        let message = format!("{why} {}", language.say(Phrase::NoNumber));
        Err(Refusal::new(code, message, given(test, &self.met.answers), "", way_out))
    }

    fn seen(&self, stated: &Stated, found: &Assessment, wrong: bool, elsewhere: bool) -> Seen {
        let belief = found.belief();
        let odds = stated.odds(belief);
        let estimate = Estimate::of(belief);
        let shape = found.band().shape();
        let mut verdict = self.rule.judge(stated, odds, estimate);
        // On an open side the chances rest on where the axis ends, and a part of what is open is not excluded.
        let (agree, disagree) = match shape {
            Shape::Between(..) => (true, true),
            Shape::Below(high) => {
                (stated.low().is_none(), stated.low().is_some_and(|low| low > high))
            }
            Shape::Above(low) => {
                (stated.high().is_none(), stated.high().is_some_and(|high| high < low))
            }
            Shape::Unknown => (false, false),
        };
        // A paper for the skin is not contradicted by a softer core, nor borne out by it.
        let agree = agree && !wrong && !self.met.placed.beneath && !elsewhere;
        let disagree = disagree && !(elsewhere && verdict == Verdict::Disagrees);
        if (verdict == Verdict::Agrees && !agree) || (verdict == Verdict::Disagrees && !disagree) {
            verdict = Verdict::NotProved;
        }
        let (band, beyond) = match (shape, self.beyond()) {
            (Shape::Between(low, _), Some(true)) => (None, Some((true, low))),
            (Shape::Between(_, high), Some(false)) => (None, Some((false, high))),
            (Shape::Between(low, high), None) => (Some((low, high)), None),
            _ => (None, None),
        };
        Seen { odds, estimate, beyond, band, verdict }
    }

    fn claimed(&self) -> ClaimedAnswer {
        let Part { parsed, said, .. } = self.part;
        let remarks = self.paper.parts.iter().flat_map(|part| part.parsed.remarks());
        let mut notes = Vec::new();
        for &remark in remarks {
            let told = note(self.language, remark);
            if !notes.contains(&told) {
                notes.push(told);
            }
        }
        ClaimedAnswer {
            scale: said.axis.symbol(),
            low: said.low,
            high: said.high,
            understood: parsed.designation().to_string(),
            step: said.step,
            notes,
        }
    }

    /// Rounded by the rule of the scale; HRC outward.
    fn band_text(&self, low: f64, high: f64) -> String {
        let work = self.frame().work();
        if work == HRC {
            let ends = format::dash(&format::outward_low(low), &format::outward_high(high));
            return format!("{ends} {}", work.unit());
        }
        self.units.range(work, Some(low), Some(high))
    }

    /// What was measured. Files alone leave it open where between their grades a part lies: no number stands for all of it.
    fn measured_text(&self, about: &str, low: f64, high: f64) -> String {
        let band = self.band_text(low, high);
        if self.met.readings.is_empty() { band } else { format!("{about} ({band})") }
    }

    fn estimate(&self, seen: &Seen, stated: &Stated) -> Option<EstimateAnswer> {
        let (low, high) = seen.band?;
        let value = |place: f64| self.frame().value(place);
        let (low, high) = (value(low), value(high));
        let middle = value(seen.estimate.value);
        let about = self.units.with_unit(self.frame().work(), middle);
        Some(EstimateAnswer {
            value: middle,
            u: self.width(seen.estimate.u),
            low,
            high,
            capability: stated.capability(seen.estimate.u),
            shown: self.measured_text(&about, low, high),
        })
    }

    fn drawn(&self, seen: &Seen, found: &Assessment, wrong: bool) -> ClaimFound {
        let value = |place: f64| self.frame().value(place);
        let (low, high) = match found.band().shape() {
            Shape::Between(low, high) => match seen.beyond {
                Some((above, _)) => (above.then_some(low), (!above).then_some(high)),
                None => (Some(low), Some(high)),
            },
            Shape::Below(high) => (None, Some(high)),
            Shape::Above(low) => (Some(low), None),
            Shape::Unknown => (None, None),
        };
        let density = found.belief().density().map(|(place, density)| (value(place), density));
        ClaimFound {
            verdict: seen.verdict,
            side: seen.side(wrong),
            density: density.collect(),
            low: low.map(value),
            high: high.map(value),
        }
    }

    fn verdict_text(&self, seen: Option<&Seen>, wrong: bool) -> String {
        let said = said_text(self.units, self.part);
        let Some(seen) = seen else {
            return super::heat::joined([self.say(Claim::Nothing)].into_iter());
        };
        let (odds, side) = (seen.odds, seen.side(wrong));
        let measured = match seen.band {
            Some((low, high)) => {
                let value = |place: f64| self.frame().value(place);
                let about = self.units.with_unit(self.frame().work(), value(seen.estimate.value));
                let measured = self.measured_text(&about, value(low), value(high));
                self.say(Claim::Measured { measured: &measured, said: &said })
            }
            None => match seen.beyond {
                Some((above, end)) => {
                    let end = self.units.with_unit(self.frame().work(), self.frame().value(end));
                    self.say(Claim::MeasuredBeyond { end: &end, above, said: &said })
                }
                None => self.say(Claim::MeasuredOpen { said: &said }),
            },
        };
        let [under, inside, over] = [odds.under(), odds.inside(), odds.over()].map(percent);
        let chances = Claim::Chances { under: &under, inside: &inside, over: &over };
        let wrong = if wrong { self.say(Claim::PaperWrong) } else { String::new() };
        let verdict = self.say(Claim::Verdict { verdict: seen.verdict, side });
        super::heat::joined([verdict, measured, self.say(chances), wrong].into_iter())
    }

    fn rule_text(&self, guard: Option<f64>) -> String {
        let rule = self.say(Claim::Rule(self.rule));
        match (self.rule, guard) {
            (Rule::Band(_), Some(guard)) => {
                let guard = self.units.width(self.frame().work(), self.width(guard));
                format!("{rule} {}", self.say(Claim::GuardWidth { guard: &guard }))
            }
            _ => rule,
        }
    }

    fn notes(&self, test: &FileTest, found: &Assessment, doubted: &Doubted<'_>) -> Vec<String> {
        let mut notes = Vec::new();
        let said = said_text(self.units, self.part);
        let Part { said: limits, about, .. } = self.part;
        if let Some(about) = about {
            let half = self.units.width(limits.axis, *about);
            notes.push(self.say(Claim::About { half: &half }));
        }
        let other = if limits.axis == HRC { Axis::Hardness(Scale::Hbw) } else { HRC };
        if let Some(there) = super::claim_paper::there(limits, other) {
            let there = self.units.range(other, there.low, there.high);
            notes.push(self.say(Claim::InOtherScale { said: &said, there: &there }));
        }
        let stroked = !test.strokes().is_empty();
        if stroked {
            notes.extend(file_notes(self.language, test, &found.band()));
        }
        let open = found.band().open_low() || found.band().open_high();
        if open && doubted.verdict.is_some() {
            notes.push(self.say(Claim::OpenBand));
        }
        let softest = test.set().files().map(|(_, grade)| grade).fold(f64::INFINITY, f64::min);
        let limit = doubted.stated.high().or(doubted.stated.low());
        let undecided = doubted.verdict == Some(Verdict::NotProved);
        if stroked && undecided && limit.is_some_and(|limit| limit < softest) {
            let softest = Shown(softest).to_string();
            notes.push(self.say(Claim::FilesReach { softest: &softest }));
            notes.push(self.say(Claim::DoNotHarden));
        }
        if self.uneven {
            let all = self.met.answers.iter().flat_map(|answer| &answer.raw).copied();
            let low = all.clone().fold(f64::INFINITY, f64::min);
            let high = all.fold(f64::NEG_INFINITY, f64::max);
            let range = self.units.range(self.frame().work(), Some(low), Some(high));
            notes.push(self.say(Claim::Uneven { range: &range }));
        }
        if self.met.placed.beneath {
            notes.push(self.say(Claim::Beneath));
        }
        let groups = self.met.readings.groups();
        let shared = groups.iter().enumerate().any(|(place, group)| {
            groups.iter().take(place).any(|earlier| earlier.shares_tester(group))
        });
        if shared {
            notes.push(self.say(Claim::OneTester));
        }
        if self.met.answers.iter().any(|answer| answer.assumed) {
            notes.push(self.language.gauge(Gauge::Assumed).into_owned());
        }
        notes
    }

    fn cautions(&self, test: &FileTest, scales: &[Axis], filed: bool) -> Vec<String> {
        let mut cautions = Vec::new();
        if !self.joined_scales(scales, filed).is_empty() {
            cautions.push(self.say(Claim::ConversionCaution));
        }
        if self.frame().claim() == Axis::Tensile {
            cautions.push(self.say(Claim::Strength));
        }
        if !test.strokes().is_empty() {
            cautions.push(self.language.say(Phrase::Eyes).into_owned());
        }
        cautions
    }

    fn sources(&self, filed: bool) -> Vec<&'static str> {
        let mut sources = vec!["jcgm-106", "jcgm-100"];
        match self.rule {
            Rule::Band(_) => sources.extend(["ilac-g8", "iso-14253-1"]),
            Rule::Simple => sources.push("ilac-g8"),
            Rule::Guarded(_) => {}
        }
        sources.push("claim-defaults");
        if filed {
            sources.extend(["file-model", "sae-j864"]);
        }
        sources.push("conversion-width");
        for answer in &self.met.answers {
            let table = answer.table.and_then(biteband_hardness::TableId::find);
            let source = table.and_then(|table| Some(table.get()?.source()?.key()));
            if let Some(source) = source.filter(|source| !sources.contains(source)) {
                sources.push(source);
            }
        }
        sources
    }
}

/// The level at which a claim counts as proved unless another rule is asked for.
pub(super) const PROVED: Level = Level::P95;

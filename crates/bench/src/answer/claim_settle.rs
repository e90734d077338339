//! What would settle a claim, and the best that can be had.

use biteband_evidence::claim::{
    Budget, Estimate, FILES_PASS, FileDoubt, Rule, Share, Source, Stated, Verdict,
    settled_by_better, settled_by_reading, settled_by_stroke,
};
use biteband_evidence::{Assessment, FileTest, Group, Instrument, SPOT_SD};
use biteband_hardness::{Axis, Choice, Reading, Scale, convert as convert_one};
use biteband_quantity::sort_by_number;

use super::claim::PROVED;
use super::claim_answer::{AchievableAnswer, SettleAnswer};
use super::frame::{HRC, Placed, Said};
use super::next_said::percent;
use super::series::{K95, u_of};
use crate::format::{self, Units};
use crate::refusal::Refusal;
use crate::words::{Claim, Language, Way};

/// Readings of a tester that would be fetched.
const READS: f64 = 3.0;
/// Standard uncertainty of a known piece, HRC; that of a tester checked weekly, assumed.
const KNOWN: f64 = 0.5;
/// Of a tensile test on a bar of the same stock, a share of the strength; assumed.
const PULLED: f64 = 0.01;
/// Below this chance no way is worth its trouble, and both sides had better agree on one.
const HOPELESS: f64 = 0.10;

/// What is in doubt.
pub(super) struct Doubted<'a> {
    pub(super) language: Language,
    pub(super) units: Units,
    pub(super) rule: Rule,
    pub(super) stated: &'a Stated,
    pub(super) said: &'a Said,
    pub(super) placed: &'a Placed,
    pub(super) test: &'a FileTest,
    pub(super) found: &'a Assessment,
    pub(super) budget: Option<&'a Budget>,
    pub(super) files: Option<FileDoubt>,
    /// Before anything was measured there is none.
    pub(super) verdict: Option<Verdict>,
    /// The paper cannot be right, whatever is measured.
    pub(super) wrong: bool,
    /// It was measured elsewhere than the paper means.
    pub(super) elsewhere: bool,
    /// Something was read in the scale of the claim.
    pub(super) own_scale: bool,
}

/// What reads a scale on a bench.
fn tester(axis: Axis) -> Option<Instrument> {
    let Axis::Hardness(scale) = axis else { return None };
    Some(match scale {
        Scale::Hv | Scale::Hk | Scale::HvUci => Instrument::Vickers,
        Scale::Hbw | Scale::Hbs | Scale::Hbw500 => Instrument::Brinell,
        Scale::Leeb => Instrument::Leeb,
        Scale::Scleroscope => Instrument::Other,
        _ if scale.is_ball_rockwell() => Instrument::RockwellBall,
        _ => Instrument::RockwellVerified,
    })
}

/// A way with its chance, less the price of its trouble in chance. The prices are ours.
struct Weighed<'a> {
    way: Way<'a>,
    method: &'static str,
    chance: f64,
    price: f64,
}

impl Doubted<'_> {
    fn say(&self, phrase: Claim<'_>) -> String {
        self.language.claim(phrase).into_owned()
    }

    /// Standard uncertainty of a tester in the scale of the claim, on the axis.
    fn tester_u(&self) -> f64 {
        let (value, slope) = (self.said.middle(), self.placed.slope);
        let Some(instrument) = tester(self.said.axis) else { return PULLED * value * slope };
        let (random, shared) = instrument.usual().in_hrc(value, slope);
        u_of(READS, random, shared, SPOT_SD)
    }

    fn known_u() -> f64 {
        let random = Instrument::Comparison.usual().random;
        (KNOWN * KNOWN + 2.0 * random * random / READS + SPOT_SD * SPOT_SD).sqrt()
    }

    /// The budget after three more places with the tester that was used last.
    fn more_places(&self) -> Option<f64> {
        let last = self.test.readings().groups().last()?;
        let place = |group: &Group| {
            let one = group.values().first().copied().unwrap_or_default();
            let more =
                Group::new(group.instrument(), &[one], group.random(), group.shared()).ok()?;
            let more = match group.conversion() {
                Some((key, sd)) => more.with_conversion(key, sd).ok()?,
                None => more,
            };
            Some(
                group
                    .tester()
                    .map_or_else(|| more.clone(), |tester| more.clone().on_tester(tester)),
            )
        };
        let more = place(last)?;
        let mut readings = self.test.readings().clone();
        for _ in 0..3 {
            readings = readings.with(more.clone()).ok()?;
        }
        let expected = self.test.prior().expected().map(|(_, sd)| sd);
        Budget::of(&readings, self.files, expected, self.stated).map(|budget| budget.u())
    }
}

/// The best way, and all of them by their worth.
pub(super) fn ways(doubted: &Doubted<'_>) -> Result<(SettleAnswer, Vec<SettleAnswer>), Refusal> {
    let refuse = |error| Refusal::of_evidence(doubted.language, &error);
    if doubted.verdict.is_some_and(|verdict| verdict != Verdict::NotProved) {
        return Ok((answer(doubted, Way::None, "none", None), Vec::new()));
    }
    if doubted.wrong {
        return Ok((answer(doubted, Way::Ask, "ask", None), Vec::new()));
    }
    if doubted.elsewhere {
        return Ok((answer(doubted, Way::SamePlace, "same_place", None), Vec::new()));
    }
    let Doubted { stated, rule, test, found, .. } = *doubted;
    let by_reading = |u: f64| settled_by_reading(stated, rule, found.belief(), u).map_err(refuse);
    let axis = doubted.said.axis;
    let way = if axis == Axis::Tensile {
        Way::TensileTest
    } else {
        Way::Tester { axis, again: doubted.own_scale }
    };
    if doubted.verdict.is_none() {
        // Nothing is known yet: where the axis ends would be all that a chance rests on.
        let first = answer(doubted, way, "tester", None);
        return Ok((first.clone(), vec![first]));
    }
    let mut all = vec![Weighed {
        way,
        method: "tester",
        chance: by_reading(doubted.tester_u())?,
        price: 0.10,
    }];
    if axis != Axis::Tensile && !doubted.placed.beneath {
        let chance = by_reading(Doubted::known_u())?;
        all.push(Weighed { way: Way::KnownPiece, method: "known_piece", chance, price: 0.10 });
    }
    if let Some((then, budget)) = doubted.more_places().zip(doubted.budget) {
        let now = Estimate { value: Estimate::of(found.belief()).value, u: budget.u() };
        let chance = settled_by_better(stated, rule, now, then);
        all.push(Weighed { way: Way::MorePlaces, method: "more_places", chance, price: 0.03 });
    }
    let grade;
    if !test.strokes().is_empty()
        && let Some(best) = found.advice().best()
    {
        let chance = settled_by_stroke(stated, rule, test, best.file()).map_err(refuse)?;
        grade = format::exact(best.grade());
        all.push(Weighed {
            way: Way::Stroke { grade: &grade },
            method: "stroke",
            chance,
            price: 0.01,
        });
    }
    sort_by_number(&mut all, |one| one.price - one.chance);
    let ways: Vec<SettleAnswer> =
        all.iter().map(|one| answer(doubted, one.way, one.method, Some(one.chance))).collect();
    let hopeful = all.iter().any(|one| one.chance >= HOPELESS);
    let best = match ways.first() {
        Some(first) if hopeful => first.clone(),
        first => answer(doubted, Way::Agree, "agree", first.and_then(|first| first.chance)),
    };
    Ok((best, ways))
}

fn answer(
    doubted: &Doubted<'_>,
    way: Way<'_>,
    method: &'static str,
    chance: Option<f64>,
) -> SettleAnswer {
    let shares = doubted.budget.map(Budget::shares).unwrap_or_default();
    let first = shares.first().zip(whole_percents(&shares).into_iter().next());
    let conversion = first.filter(|(one, _)| one.source == Source::Conversion);
    let why = match (way, conversion) {
        (Way::Tester { axis, again: false }, Some((_, percent))) => {
            doubted.say(Claim::WhyConversion { axis, percent })
        }
        _ => doubted.say(Claim::Why(way)),
    };
    let ends = match (way, chance) {
        (Way::None | Way::Agree | Way::Ask | Way::SamePlace, _) | (_, None) => String::new(),
        (_, Some(chance)) => doubted.say(Claim::Settles { percent: &percent(chance) }),
    };
    SettleAnswer {
        method,
        chance,
        text: doubted.say(Claim::Do(way)),
        why: super::heat::joined([why, ends].into_iter()),
    }
}

/// The best chance of each means at hand, for a part in the middle of what the paper says.
pub(super) fn achievable(doubted: &Doubted<'_>) -> Vec<AchievableAnswer> {
    let Doubted { stated, placed, said, units, .. } = *doubted;
    let unit = placed.frame.unit();
    let one = |with: &'static str, u: f64| {
        let chance = stated.best(u);
        let (shown, half) = (percent(chance), units.width(placed.frame.work(), K95 * u / unit));
        let (chance_text, half) = (shown.as_str(), half.as_str());
        let text = match with {
            _ if stated.low().is_none() || stated.high().is_none() => Claim::AchievableOpen,
            "measured" => Claim::AchievableMeasured { chance: chance_text, half },
            "files" => Claim::AchievableFiles { chance: chance_text, half },
            _ => Claim::AchievableTester { axis: said.axis, chance: chance_text, half },
        };
        AchievableAnswer { with, u: u / unit, chance, text: doubted.say(text) }
    };
    let mut all = Vec::new();
    if let Some(budget) = doubted.budget {
        // The rounding of the paper is averaged in the chance itself.
        let (u, rounding) = (budget.u(), stated.rounding());
        all.push(one("measured", (u * u - rounding * rounding).max(0.0).sqrt()));
    }
    if let Some(hrc) = in_hrc(said)
        && doubted.test.set().files().any(|(_, grade)| (grade - hrc).abs() <= 5.0)
    {
        let conversion = if said.axis == HRC { 0.0 } else { 1.0 };
        // One unit of the axis is about one HRC.
        all.push(one("files", (FILES_PASS * FILES_PASS + conversion).sqrt()));
    }
    all.push(one("tester", doubted.tester_u()));
    if all.iter().all(|one| one.chance < PROVED.get())
        && let Some(last) = all.last_mut()
    {
        last.text = format!("{} {}", last.text, doubted.say(Claim::TooNarrow));
    }
    all
}

/// Shares in whole per cent that add to 100.
pub(super) fn whole_percents(shares: &[Share]) -> [u32; Source::ALL.len()] {
    let mut all = [0.0; Source::ALL.len()];
    for (place, share) in all.iter_mut().zip(shares) {
        *place = share.share;
    }
    format::percents(all)
}

fn in_hrc(said: &Said) -> Option<f64> {
    if said.axis == HRC {
        return Some(said.middle());
    }
    let found = Reading::new(said.axis, said.middle())
        .and_then(|reading| convert_one(reading, HRC, Choice::STEEL));
    found.ok().map(|found| found.at.value)
}

//! Checks of the paper itself, before anything is measured.

use biteband_hardness::designation::{Amount, Designation, Remark};
use biteband_hardness::{Axis, Choice, Scale, convert_limits};
use biteband_steel::condition::{BsCondition, bs_letters};
use biteband_steel::{Grade, Hardening, grade};

use super::claim::About;
use super::claim_answer::PaperAnswer;
use super::claim_question::{Part, Spot};
use super::frame::{HRC, Said};
use crate::format::{self, Units};
use crate::words::Claim;

const HBW: Axis = Axis::Hardness(Scale::Hbw);
/// A hardness from which on a grade that does not harden cannot have it, HRC. Ours: cold drawing does not get there.
const NOT_BY_DRAWING: f64 = 30.0;
/// How far above the grade's own figure a bar was hardened, not annealed, as a share. Ours.
const ABOVE_SUPPLIED: f64 = 1.1;

/// The grade that a paper names.
pub(super) struct Bar {
    pub(super) grade: &'static Grade,
    pub(super) condition: Option<&'static BsCondition>,
    pub(super) understood: Vec<String>,
}

impl Bar {
    /// The condition that a letter behind the name states.
    pub(super) fn condition(name: &str) -> Option<&'static BsCondition> {
        grade::find(name).ok().and_then(|found| found.condition)
    }
}

/// Limits on another scale.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct There {
    pub(super) low: Option<f64>,
    pub(super) high: Option<f64>,
    /// Half of the conversion's own width at 95 %, at the wider end.
    half: f64,
}

/// A claim on another scale, by one table.
pub(super) fn there(said: &Said, to: Axis) -> Option<There> {
    if said.axis == to {
        return Some(There { low: said.low, high: said.high, half: 0.0 });
    }
    let found = convert_limits(said.axis, said.low, said.high, to, Choice::STEEL).ok()?;
    let ends = found.low.iter().chain(&found.high);
    Some(There {
        low: found.low.map(|end| end.at.value),
        high: found.high.map(|end| end.at.value),
        half: ends.map(|end| end.width.half).fold(0.0, f64::max),
    })
}

impl There {
    /// Whether it has anything in common with limits, its own width allowed for.
    fn meets(&self, low: Option<f64>, high: Option<f64>) -> bool {
        let below = self.high.zip(low).is_some_and(|(own, low)| own + self.half < low);
        let above = self.low.zip(high).is_some_and(|(own, high)| own - self.half > high);
        !below && !above
    }
}

/// What a part of a paper says.
pub(super) fn said_text(units: Units, part: &Part) -> String {
    let written = part.parsed.designation();
    if written.axis == Axis::Tensile {
        own_words(units, &part.text, written)
    } else {
        written.to_string()
    }
}

/// A strength in the paper's own words, and behind them in the person's unit where that is another.
pub(crate) fn own_words(units: Units, text: &str, written: &Designation) -> String {
    let (axis, (low, high)) = (written.axis, written.amount.limits());
    let turned = match (units, written.amount) {
        (Units::Metric, _) => written.to_string(),
        (Units::Inch, Amount::Single(value)) => units.with_unit(axis, value),
        (Units::Inch, _) => units.range(axis, low, high),
    };
    let text = text.trim();
    let same = text.to_ascii_lowercase().contains(&units.of(axis).to_ascii_lowercase());
    if same { turned } else { format!("{text} ({turned})") }
}

/// The number itself, without what it is held to within.
fn bare(part: &Part) -> Said {
    let (low, high) = part.parsed.designation().amount.limits();
    Said { low, high, ..part.said }
}

impl About<'_> {
    fn finding(&self, code: &'static str, wrong: bool, phrase: Claim<'_>) -> PaperAnswer {
        PaperAnswer { code, text: self.language.claim(phrase).into_owned(), wrong }
    }

    fn text(&self) -> String {
        said_text(self.units, self.part)
    }

    /// Whether what the paper says in one scale and in another can both be true.
    fn scales(&self, all: &mut Vec<PaperAnswer>) {
        let Some((first, others)) = self.paper.parts.split_first() else { return };
        let one = said_text(self.units, first);
        for other in others {
            let (own, own_text) = (bare(other), said_text(self.units, other));
            let Some(found) = there(&own, first.said.axis) else {
                let phrase = Claim::NotComparable { one: &one, other: &own_text };
                all.push(self.finding("scales_not_comparable", false, phrase));
                continue;
            };
            let (low, high) = (bare(first).low, bare(first).high);
            if found.meets(low, high) {
                let phrase = Claim::SameThing { one: &one, other: &own_text };
                all.push(self.finding("scales_agree", false, phrase));
            } else {
                let becomes = match (found.low, found.high) {
                    (Some(low), Some(high)) if high - low < 1e-9 => {
                        self.units.with_unit(first.said.axis, low)
                    }
                    (low, high) => self.units.range(first.said.axis, low, high),
                };
                let phrase = Claim::Contradict { one: &one, other: &own_text, becomes: &becomes };
                all.push(self.finding("scales_contradict", true, phrase));
            }
        }
    }

    /// Whether the grade can have it, where the paper means it.
    fn reach(&self, bar: &Bar, claimed: Spot, all: &mut Vec<PaperAnswer>) {
        let (grade, said) = (bar.grade, self.text());
        let steel = grade.name();
        let low = there(&bare(self.part), HRC).and_then(|found| found.low);
        let quenched = grade.as_quenched().map(|range| range.high);
        let most = quenched.into_iter().chain(grade.working().map(|range| range.high));
        let most = most.reduce(f64::max);
        let hrc = |value: Option<f64>| {
            value.map(|value| format!("{} HRC", format::plain(value))).unwrap_or_default()
        };
        match low {
            Some(low) if grade.hardening() == Hardening::None && low >= NOT_BY_DRAWING => {
                all.push(self.finding("does_not_harden", true, Claim::DoesNotHarden { steel }));
            }
            // The working hardness of such a grade is that of its case; what it has as quenched is its core's.
            Some(low)
                if grade.hardening() == Hardening::Case
                    && low > quenched.unwrap_or(NOT_BY_DRAWING) =>
            {
                let core = hrc(quenched);
                let phrase = Claim::OnlyCase { steel, core: &core, said: &said };
                all.push(self.finding("only_case", claimed == Spot::Core, phrase));
            }
            Some(low) if most.is_some_and(|most| low > most) => {
                let reach = hrc(most);
                let phrase = Claim::AboveReach { steel, reach: &reach, said: &said };
                all.push(self.finding("above_reach", true, phrase));
            }
            _ => {}
        }
        let supplied = grade.supplied();
        let soft = supplied.max.or(supplied.typical).or(supplied.min);
        let hbw = there(&self.part.said, HBW).and_then(|found| found.low);
        let note = grade.supplied_note();
        if soft.zip(hbw).is_some_and(|(soft, hbw)| hbw > ABOVE_SUPPLIED * soft) {
            // The notes name the figures of a table of HBW and leave the unit out.
            let hbw = format!("{} HBW", format::plain(soft.unwrap_or_default()));
            let note = match note {
                "" => format!("{hbw}."),
                note => format!("{hbw} ({note})."),
            };
            all.push(self.finding("as_supplied", false, Claim::Supplied { steel, note: &note }));
        }
    }

    /// Whether a condition letter goes with the number that the paper states.
    fn letter(&self, condition: &BsCondition, all: &mut Vec<PaperAnswer>) {
        let strength = self.part.said.axis == Axis::Tensile;
        let of = |one: &BsCondition| if strength { one.tensile() } else { one.hbw() };
        let axis = if strength { Axis::Tensile } else { HBW };
        let (low, high) = of(condition);
        let Some(found) = there(&bare(self.part), axis) else { return };
        let means = self.units.range(axis, Some(low), high);
        if found.meets(Some(low), high) {
            return;
        }
        let fits: Vec<String> = bs_letters()
            .iter()
            .filter(|one| {
                let (low, high) = of(one);
                found.meets(Some(low), high)
            })
            .map(|one| one.letter().to_string())
            .collect();
        let said = self.text();
        let phrase = Claim::WrongLetter {
            letter: condition.letter(),
            means: &means,
            said: &said,
            fits: &fits.join(", "),
        };
        all.push(self.finding("wrong_letter", true, phrase));
    }
}

/// Everything that is to be said of the paper.
pub(super) fn findings(
    about: &About<'_>,
    bar: Option<&Bar>,
    place: Option<Spot>,
    claimed: Spot,
) -> Vec<PaperAnswer> {
    let mut all = Vec::new();
    about.scales(&mut all);
    if let Some(letter) = about.paper.letter {
        let (low, high) = letter.hbw();
        let means = about.units.range(HBW, Some(low), high);
        let (low, high) = letter.tensile();
        let strength = about.units.range(Axis::Tensile, Some(low), high);
        let phrase = Claim::Letter { letter: letter.letter(), means: &means, strength: &strength };
        all.push(about.finding("condition_letter", false, phrase));
        about.letter(letter, &mut all);
    }
    if let Some(bar) = bar {
        about.reach(bar, claimed, &mut all);
        let own = about.paper.letter.map(BsCondition::letter);
        if let Some(condition) = bar.condition.filter(|one| own != Some(one.letter())) {
            about.letter(condition, &mut all);
        }
    }
    let remarked = |remark: Remark| {
        about.paper.parts.iter().any(|part| part.parsed.remarks().contains(&remark))
    };
    if remarked(Remark::BelowVerifiedRockwellC) {
        all.push(about.finding("below_verified", false, Claim::BelowVerified));
    }
    if remarked(Remark::AboveBrinellLimit) {
        all.push(about.finding("above_brinell", false, Claim::AboveBrinell));
    }
    let class = about.part.said.axis == Axis::Tensile
        || about.paper.letter.is_some()
        || bar.is_some_and(|bar| bar.condition.is_some());
    if class {
        all.push(about.finding("no_diameter", false, Claim::NoDiameter));
    }
    match place {
        None => all.push(about.finding("ask_place", false, Claim::AskPlace)),
        Some(place) if place != claimed => {
            all.push(about.finding("skin_against_core", false, Claim::SkinAgainstCore));
        }
        Some(_) => {}
    }
    all
}

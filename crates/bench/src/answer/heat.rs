//! How to heat a part and what its quench does: window, times, skin, bath, fire, oven.

use biteband_hardness::Seen;
use biteband_quantity::{Bounds, Celsius, Kilograms, Litres};
use biteband_steel::bath::HOT;
use biteband_steel::furnace::{self, KnownPoint, Protection};
use biteband_steel::quench::Medium;
use biteband_steel::reach::{Fit, quenchant};
use biteband_steel::section::Section;
use biteband_steel::transform::{Estimate, TransformError, ac3};
use biteband_steel::{
    Cited, Composition, CompositionLimits, Confidence, Element, Family, Grade, Hardening, Interval,
    Quenchant,
};
use serde::Deserialize;

use super::TemperatureStep;
use super::heat_answer::{CrossCheckAnswer, HardenAnswer, HeatAnswer};
use super::heat_parts::Holding;
use super::steel::named;
use crate::composition::parse_composition;
use crate::format::{self, Units, fixed};
use crate::measure::{self, INCH, Kind, parse_mass};
use crate::refusal::Refusal;
use crate::section::{BathInput, SectionInput, parse_bath};
use crate::words::{Heat, HeatRefusal, Language, List, Magnet, SteelWords};

/// What a part may be hardened from, in °C. Ours.
const AT: Bounds = Bounds {
    what: "hardening temperature",
    symbol: "°C",
    min: 700.0,
    max: 1320.0,
    why: "below no steel hardens, above none is heated",
};
/// Above Ac3, in K: from and to. Common practice, no source.
const OVER_AC3: (f64, f64) = (30.0, 60.0);
/// The grade's window and the formula agree within this, in K: the error of the formulas.
const AGREE: f64 = 15.0;
/// So far above the magnet's point that it is no help, in K. Ours.
const FAR: f64 = 100.0;
/// The shop, in °C.
const SHOP: f64 = 20.0;
/// No window, no source.
const NOWHERE: Cited = Cited { sources: &[], seen: Seen::Recalled, confidence: Confidence::Low };

/// What is asked.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "camelCase")]
pub struct HeatQuestion {
    /// Any designation of a grade: `4140`, `EN19`.
    pub steel: Option<String>,
    /// In place of it, mass percent of a heat, or limits.
    pub composition: Option<String>,
    /// The section; may be left out.
    pub section: SectionInput,
    /// Mass of everything hot that goes into the bath together, in place of that of the section: `2.7kg`.
    pub mass: Option<String>,
    /// The bath: `oil`, `oil:6L@25C`, `oil:6L@25C:flash=180C`.
    pub quench: Option<String>,
    /// Hardening temperature, in place of the middle of the window: `850C`.
    pub at: Option<String>,
    /// How warm the part goes into the furnace; the shop if not given.
    pub start: Option<String>,
    /// `open`, `coated`, `foil`, `charcoal` or `atmosphere`; open if not given.
    pub protection: Option<String>,
    /// Checks of the oven: `240C=231.9C`, `240C=tin`.
    pub oven: Vec<String>,
    /// Units of the texts; numbers stay in °C, mm, kg and litres.
    pub units: Units,
}

/// How the answer speaks.
#[derive(Clone, Copy)]
pub(super) struct Speech {
    pub(super) language: Language,
    pub(super) units: Units,
}

/// Sentences one after another; empty ones drop out.
pub(super) fn joined(texts: impl Iterator<Item = String>) -> String {
    texts.filter(|text| !text.is_empty()).collect::<Vec<_>>().join(" ")
}

impl Speech {
    pub(super) fn say(self, phrase: Heat<'_>) -> String {
        self.language.heat(phrase).into_owned()
    }

    pub(super) fn refuse(self, code: &'static str, given: &str, what: HeatRefusal<'_>) -> Refusal {
        let [message, allowed, instead] = self.language.heat_refused(what);
        Refusal::new(code, message, format::shortened(given), allowed, instead)
    }

    /// A temperature in whole degrees.
    pub(super) fn celsius(self, celsius: f64) -> String {
        self.units.degrees(celsius)
    }

    /// A difference in whole degrees.
    pub(super) fn difference(self, kelvin: f64) -> String {
        match self.units {
            Units::Metric => format!("{} °C", fixed(kelvin, 0)),
            Units::Inch => format!("{} °F", fixed(kelvin * 1.8, 0)),
        }
    }

    /// A large rise or peak as it is worth saying: tens above a hundred. `offset` is 32 for temperatures.
    pub(super) fn about(self, kelvin: f64, offset: f64) -> String {
        let (value, unit) = match self.units {
            Units::Metric => (kelvin, "°C"),
            Units::Inch => (kelvin * 1.8 + offset, "°F"),
        };
        let value = if value > 100.0 { (value / 10.0).round() * 10.0 } else { value };
        format!("{} {unit}", fixed(value, 0))
    }

    pub(super) fn litres(self, litres: f64) -> String {
        self.units.litres(litres)
    }

    pub(super) fn litres_up(self, litres: Litres) -> String {
        self.units.litres_up(litres.get())
    }

    pub(super) fn minutes(low: f64, high: f64) -> String {
        format!("{} min", format::dash(&fixed(low.floor(), 0), &fixed(high.ceil(), 0)))
    }

    /// Fine depths: hundredths of a millimetre or thousandths of an inch.
    pub(super) fn depth(self, mm: f64) -> String {
        match self.units {
            Units::Metric => format!("{} mm", fixed(mm, 2)),
            Units::Inch => format!("{} in", fixed(mm / INCH, 3)),
        }
    }
}

/// Everything that was given, checked.
pub(super) struct Job {
    pub(super) grade: Option<&'static Grade>,
    pub(super) limits: CompositionLimits,
    pub(super) understood: Vec<String>,
    pub(super) section: Option<Section>,
    pub(super) mass: Option<Kilograms>,
    pub(super) bath: Option<BathInput>,
    pub(super) at: Option<Celsius>,
    pub(super) start: Celsius,
    pub(super) protection: Protection,
}

impl Job {
    /// Whether the grade hardens in a carburized case alone.
    pub(super) fn case_only(&self) -> bool {
        self.grade.is_some_and(|grade| grade.hardening() == Hardening::Case)
    }
}

/// Says how to heat a part, how long to hold it, and whether the bath bears it.
///
/// A bath that is too small is an answer, whose verdict begins with the stop and its figure.
///
/// # Errors
/// A refusal: a steel that is not known, does not harden or ages; a bath that the grade must not get; anything
/// that cannot be read, or that no part, bath or oven has.
///
/// # Example
/// ```
/// use biteband_bench::answer::{HeatQuestion, heat};
/// use biteband_bench::section::SectionInput;
/// use biteband_bench::words::Language;
/// let question = HeatQuestion {
///     steel: Some("4140".into()),
///     section: SectionInput {
///         round: Some("50mm".into()), length: Some("80mm".into()), ..Default::default()
///     },
///     quench: Some("oil:1L@25C".into()),
///     ..Default::default()
/// };
/// let answer = heat(Language::English, &question).unwrap();
/// // SAE: 1550 to 1600 °F.
/// assert_eq!((answer.harden.low_c, answer.harden.high_c), (Some(843.0), Some(871.0)));
/// assert!(answer.verdict.starts_with("Stop: the bath is too small."));
/// ```
pub fn heat(language: Language, question: &HeatQuestion) -> Result<HeatAnswer, Refusal> {
    let speech = Speech { language, units: question.units };
    let job = speech.job(question)?;
    let window = speech.window(&job)?;
    let at = Celsius::new(window.at_c)
        .map_err(|inside| speech.refuse(inside.code(), "", HeatRefusal::Outside(inside)))?;
    // Above, the properties of steel are not known.
    let known = (window.at_c <= furnace::FURNACE.max.min(HOT.max)).then_some(at);
    let mut notes = speech.notes(&job, known.is_some());
    let through = speech.through(&job, known)?;
    let hold_minutes = Holding::of(&job, through.as_ref());
    let skin = speech.skin(&job, known, through.as_ref(), hold_minutes.taken);
    let quench = speech.quench(&job);
    let bathed = job.bath.as_ref().map(|bath| speech.bath(bath, job.mass, known)).transpose()?;
    let (bath, stop, note) =
        bathed.map_or((None, None, None), |one| (one.answer, one.stop, one.note));
    notes.extend(note);
    let wet = job.bath.is_none_or(|bath| bath.medium != Medium::Air);
    let needed = bath.as_ref().and_then(|bath| bath.needed_l);
    let tank = job.section.as_ref().filter(|_| wet).and_then(|part| speech.tank(part, needed));
    let oven = speech.oven(&question.oven, at)?;
    let protection = speech.protection(&job);
    let low = through.as_ref().map(|found| Speech::main(&job, found));
    let verdict = if let Some(stop) = stop {
        stop
    } else {
        let open = protection.needed && job.protection == Protection::Open;
        let enough = bath.as_ref().is_some_and(|bath| bath.verdict == Some("enough"));
        let heat_to = match (job.at, window.low_c.zip(window.high_c)) {
            (None, Some((low, high))) => {
                Heat::HeatTo { range: &speech.units.temperatures(low.round(), high.round()) }
            }
            _ => Heat::HeatAt { at: &speech.celsius(window.at_c) },
        };
        let heat_to = speech.say(heat_to);
        let hot = low.map(|minutes| Speech::minutes(minutes.ceil(), minutes));
        joined(
            [
                job.case_only().then(|| speech.say(Heat::CaseOnly)),
                open.then(|| speech.say(Heat::NotInTheOpen)),
                speech.fit_caution(&job),
                Some(heat_to),
                hot.map(|minutes| speech.say(Heat::ThenThrough { minutes: &minutes })),
                hold_minutes.taken.map(|minutes| {
                    speech.say(Heat::ThenHold { minutes: &Speech::minutes(minutes, minutes) })
                }),
                enough.then(|| speech.say(Heat::BathEnough)),
            ]
            .into_iter()
            .flatten(),
        )
    };
    let mut answer = HeatAnswer {
        steel: job.grade.map(Grade::key),
        verdict,
        harden: window,
        preheat: job.grade.map_or(&[][..], Grade::preheat).iter().map(step).collect(),
        preheat_text: speech.preheat(&job),
        protection,
        part: Speech::part(&job),
        heat_through_min: low,
        heat_through: through.as_ref().map(|found| speech.through_answer(&job, found)),
        hold_min: hold_minutes.taken,
        hold: speech.hold(&hold_minutes),
        skin,
        quench,
        bath,
        tank,
        oven,
        known_points: KnownPoint::ALL.iter().copied().map(|point| speech.point(point)).collect(),
        hazards: job.grade.map(|grade| grade.hazards().collect()).unwrap_or_default(),
        notes,
        cautions: speech.cautions(&job),
        checklists: List::ALL.into_iter().map(|list| speech.list(list)).collect(),
        sources: Vec::new(),
        understood: job.understood,
    };
    answer.sources = sources(&answer);
    Ok(answer)
}

fn step(step: &Interval) -> TemperatureStep {
    TemperatureStep { low_c: step.low, high_c: step.high }
}

/// Every source once, in the order of the answer.
fn sources(answer: &HeatAnswer) -> Vec<&'static str> {
    let of_harden = answer.harden.cross_check.as_ref().map(|check| check.cited);
    let of_skin = answer.skin.as_ref().map(|skin| skin.cited);
    let of_bath = answer.bath.as_ref().map(|bath| bath.cited);
    let of_through = answer.heat_through.as_ref().map(|found| found.cited);
    let groups = [Some(answer.harden.cited), of_harden, of_through]
        .into_iter()
        .chain(answer.hold.rules.iter().map(|rule| Some(rule.cited)))
        .chain([of_skin, of_bath])
        .chain(answer.known_points.iter().map(|point| Some(point.cited)))
        .flatten()
        .map(|cited| cited.sources);
    let mut all = Vec::new();
    for key in groups.chain([answer.quench.sources]).flatten() {
        if !all.contains(key) {
            all.push(*key);
        }
    }
    all
}

impl Speech {
    fn job(self, question: &HeatQuestion) -> Result<Job, Refusal> {
        let language = self.language;
        let (grade, limits, understood) = match (&question.steel, &question.composition) {
            (None, None) => {
                return Err(self.refuse("bench.missing_steel", "", HeatRefusal::NoSteel));
            }
            (Some(_), Some(_)) => {
                return Err(self.refuse("bench.missing_steel", "", HeatRefusal::SteelTwice));
            }
            (Some(name), None) => {
                let (grade, said) = named(language, question.units, name)?;
                (Some(grade), grade.limits(), said)
            }
            (None, Some(text)) => (None, parse_composition(language, text)?, Vec::new()),
        };
        if let Some(grade) = grade {
            let name = grade.name();
            match grade.hardening() {
                Hardening::None => {
                    let what = HeatRefusal::DoesNotHarden { grade: name };
                    return Err(self.refuse("heat.does_not_harden", name, what));
                }
                Hardening::Age => {
                    return Err(self.refuse("heat.ages", name, HeatRefusal::Ages { grade: name }));
                }
                Hardening::Through | Hardening::Case => {}
            }
        }
        let section = if question.section == SectionInput::default() {
            None
        } else {
            Some(question.section.read(language)?)
        };
        let mass = question.mass.as_deref();
        let mass =
            mass.map(|text| measure::read(language, Kind::Mass, text, parse_mass)).transpose()?;
        let bath = question.quench.as_deref();
        let bath = bath.map(|text| parse_bath(language, text)).transpose()?;
        if let (Some(grade), Some(bath)) = (grade, &bath)
            && Fit::of(grade, quenchant(bath.medium)) == Fit::Never
        {
            let what = HeatRefusal::Never {
                grade: grade.name(),
                medium: bath.medium,
                named: &self.media(grade),
            };
            return Err(self.refuse("heat.never", bath.medium.key(), what));
        }
        let temperature = |text: &str, bounds: Bounds| {
            let celsius = measure::temperature(language, text)?;
            bounds
                .check(celsius.get())
                .map(|_| celsius)
                .map_err(|inside| self.refuse(inside.code(), text, HeatRefusal::Outside(inside)))
        };
        let at = question.at.as_deref().map(|text| temperature(text, AT)).transpose()?;
        let start = question.start.as_deref();
        let start = start.map(|text| temperature(text, furnace::START)).transpose()?;
        let start = match start {
            Some(start) => start,
            None => Celsius::new(SHOP)
                .map_err(|inside| self.refuse(inside.code(), "", HeatRefusal::Outside(inside)))?,
        };
        let protection = match question.protection.as_deref() {
            None => Protection::Open,
            Some(text) => Protection::find(&text.trim().to_lowercase()).ok_or_else(|| {
                let given = format::shortened(text);
                let what = HeatRefusal::Protection { given: &given };
                self.refuse("bench.unknown_protection", text, what)
            })?,
        };
        let mass = mass.or_else(|| section.and_then(|section| section.mass()));
        Ok(Job { grade, limits, understood, section, mass, bath, at, start, protection })
    }

    pub(super) fn media(self, grade: &Grade) -> String {
        let name = |one: &Quenchant| self.language.steel(SteelWords::Medium(*one)).into_owned();
        grade.quenchants().iter().map(name).collect::<Vec<_>>().join(", ")
    }

    pub(super) fn mark(self, cited: Cited) -> String {
        let low = cited.confidence == Confidence::Low;
        let low = if low { self.say(Heat::MarkLow) } else { String::new() };
        let seen = self.language.steel(SteelWords::Mark(cited.seen)).into_owned();
        joined([seen, low].into_iter())
    }

    /// The window: the grade's own, or by formula; and the other as a check.
    fn window(self, job: &Job) -> Result<HardenAnswer, Refusal> {
        let by_formula = formula(&job.limits);
        let own = job.grade.and_then(Grade::window);
        let given = job.at.map(Celsius::get);
        let (window, method, cited) = match (own.zip(job.grade), &by_formula) {
            (Some((window, grade)), _) => (Some(window), "grade", grade.heat_cited()),
            (None, Ok((window, estimate))) => (Some(*window), "formula", estimate.cited),
            (None, Err(error)) if given.is_none() => {
                let what = HeatRefusal::NoFormula { error };
                return Err(self.refuse(error.code(), "", what));
            }
            (None, Err(_)) => (None, "none", NOWHERE),
        };
        let at = given.or(window.map(Interval::middle)).unwrap_or(AT.min);
        let plain = job.grade.is_some_and(|grade| {
            grade.hardening() == Hardening::Through
                && matches!(grade.family(), Family::Carbon | Family::FreeMachining | Family::Alloy)
        });
        let cross_check = match (own, &by_formula) {
            (Some(own), Ok((window, estimate))) if plain => {
                Some(self.cross_check(own, *window, estimate))
            }
            _ => None,
        };
        let range =
            |range: Interval| self.units.temperatures(range.low.round(), range.high.round());
        let mut said = Vec::new();
        match (window, &by_formula) {
            (Some(window), _) if own.is_some() => {
                let case = job.case_only();
                said.push(self.say(Heat::Window { range: &range(window), case }));
                said.push(self.mark(cited));
            }
            (Some(window), Ok((_, estimate))) => said.push(self.say(Heat::WindowByFormula {
                range: &range(window),
                ac3: &self.celsius(estimate.mid),
                spread: &self.difference(spread(estimate)),
            })),
            _ => said.push(self.say(Heat::NoWindow { at: &self.celsius(at) })),
        }
        said.extend(cross_check.as_ref().map(|check| check.text.clone()));
        let (magnet, _) = KnownPoint::MagnetLetsGo.temperature();
        if let Some(window) = window {
            let (low, high) = (window.low - magnet, window.high - magnet);
            let place = if low <= 0.0 {
                Magnet::Below
            } else if low >= FAR {
                Magnet::Far
            } else {
                Magnet::Past
            };
            said.push(self.say(Heat::Magnet {
                place,
                low: &self.difference(low.abs()),
                high: &self.difference(high),
                point: &self.celsius(magnet),
            }));
            let (at_text, window_text) = (self.celsius(at), range(window));
            if at < window.low {
                said.push(self.say(Heat::BelowWindow { at: &at_text, range: &window_text }));
            } else if at > window.high {
                said.push(self.say(Heat::AboveWindow { at: &at_text, range: &window_text }));
            }
        }
        Ok(HardenAnswer {
            low_c: window.map(|window| window.low),
            high_c: window.map(|window| window.high),
            at_c: at,
            method,
            over_magnet_low_k: window.map(|window| window.low - magnet),
            over_magnet_high_k: window.map(|window| window.high - magnet),
            cross_check,
            cited: cited.into(),
            text: joined(said.into_iter()),
        })
    }

    fn cross_check(self, own: Interval, window: Interval, ac3: &Estimate) -> CrossCheckAnswer {
        let apart = (own.middle() - window.middle()).abs();
        let agrees = apart <= AGREE;
        let text = self.say(Heat::CrossCheck {
            range: &self.units.temperatures(window.low.round(), window.high.round()),
            ac3: &self.celsius(ac3.mid),
            spread: &self.difference(spread(ac3)),
            apart: &self.difference(apart),
            agrees,
        });
        CrossCheckAnswer {
            ac3_c: ac3.mid,
            ac3_low_c: ac3.low,
            ac3_high_c: ac3.high,
            low_c: window.low,
            high_c: window.high,
            agrees,
            cited: ac3.cited.into(),
            text,
        }
    }
}

fn spread(estimate: &Estimate) -> f64 {
    (estimate.high - estimate.mid).max(estimate.mid - estimate.low).ceil()
}

/// The window by Ac3 of the middle composition.
fn formula(limits: &CompositionLimits) -> Result<(Interval, Estimate), TransformError> {
    let shares = Element::ALL.map(|element| (element, limits.range(element).map(Interval::middle)));
    let known: Vec<(Element, f64)> =
        shares.into_iter().filter_map(|(element, share)| Some((element, share?))).collect();
    // Limits without carbon or with too much of everything have no middle that is a steel.
    let heat = Composition::new(&known).map_err(|_| TransformError::NoManganese)?;
    let estimate = ac3(&heat)?;
    let (from, to) = OVER_AC3;
    Ok((Interval { low: estimate.mid + from, high: estimate.mid + to }, estimate))
}

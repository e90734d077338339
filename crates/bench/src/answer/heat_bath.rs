//! What a quench does to its bath, and the tank that covers the part.

use biteband_quantity::{Celsius, Kilograms, Litres};
use biteband_steel::bath::{Bath, Error, HOT, Quench, Verdict, tank};
use biteband_steel::furnace::{self, KnownPoint, OvenCheck, OvenOffset};
use biteband_steel::quench::Medium;
use biteband_steel::section::Section;

use super::heat::{Speech, joined};
use super::heat_answer::{BathAnswer, FlashAnswer, OvenAnswer, TankAnswer};
use crate::measure;
use crate::refusal::Refusal;
use crate::section::BathInput;
use crate::state::POINTS;
use crate::words::{BathFault, Heat, HeatRefusal};

/// What a bath has where nothing is said: the shop, in °C.
const SHOP: f64 = 20.0;
/// How far a trusted thermometer may be off where nothing is said, in K. Ours.
const THERMOMETER: f64 = 5.0;
/// What the words of [`POINTS`] mean, in their order.
const KNOWN: [KnownPoint; POINTS.len()] = [
    KnownPoint::WaterBoils,
    KnownPoint::TinMelts,
    KnownPoint::ZincMelts,
    KnownPoint::AluminiumMelts,
    KnownPoint::AluminiumMelts,
    KnownPoint::MagnetLetsGo,
];

/// The bath, and the stop where it is not to be used.
pub(super) struct Bathed {
    pub(super) answer: Option<BathAnswer>,
    pub(super) stop: Option<String>,
    /// What is said where there is no balance.
    pub(super) note: Option<String>,
}

impl Speech {
    /// What the part does to the bath. Without a volume it is told what would be needed.
    pub(super) fn bath(
        self,
        input: &BathInput,
        mass: Option<Kilograms>,
        at: Option<Celsius>,
    ) -> Result<Bathed, Refusal> {
        let start = input.celsius.map_or(SHOP, Celsius::get);
        let flash = input.flash_point.map(Celsius::get);
        let litres = input.litres.map_or(1.0, Litres::get);
        let bath = match Bath::new(input.medium, litres, start, flash) {
            Ok(bath) => bath,
            Err(Error::NoHeatBalance { medium }) => {
                let note = Some(self.say(Heat::NoBalance { medium }));
                return Ok(Bathed { answer: None, stop: None, note });
            }
            Err(error) => return Err(self.bath_refused(error)),
        };
        let stop = (input.medium == Medium::UnknownOil).then(|| self.say(Heat::StopUnknownOil));
        let Some((mass, at)) = mass.zip(at) else {
            let missing = match mass {
                None => self.say(Heat::GiveLength),
                Some(_) => self.say(Heat::TooHotToTell { most: &self.celsius(HOT.max) }),
            };
            let text = joined([stop.clone(), Some(missing)].into_iter().flatten());
            let answer = BathAnswer {
                medium: input.medium.key(),
                litres: input.litres.map(Litres::get),
                start_c: start,
                start_assumed: input.celsius.is_none(),
                rise_c: None,
                peak_c: None,
                limit_c: None,
                needed_l: None,
                by_rule_l: None,
                by_balance_l: None,
                flash: None,
                verdict: stop.is_some().then(|| Verdict::DoNotUse.key()),
                cited: biteband_steel::bath::CITED.into(),
                text,
            };
            return Ok(Bathed { answer: Some(answer), stop, note: None });
        };
        let found = bath.quench(mass, at).map_err(|error| self.bath_refused(error))?;
        let known = input.litres.is_some();
        let stop = match found.verdict {
            Verdict::DoNotUse => stop,
            _ if !known => found.needed.is_none().then(|| self.starts_too_hot(&found)),
            Verdict::Enough => None,
            _ => Some(self.stop(input, &found)),
        };
        let text = self.bath_text(input, &found, stop.as_deref());
        let verdict = known || found.verdict == Verdict::DoNotUse;
        let flash = found.flash.filter(|_| known).map(|flash| FlashAnswer {
            celsius: flash.celsius.get(),
            assumed: flash.assumed,
            margin_k: flash.margin.get(),
        });
        let answer = BathAnswer {
            medium: input.medium.key(),
            litres: input.litres.map(Litres::get),
            start_c: start,
            start_assumed: input.celsius.is_none(),
            rise_c: known.then(|| found.rise.get()),
            peak_c: known.then(|| found.peak.get()),
            limit_c: Some(found.limit.get()),
            needed_l: found.needed.map(Litres::get),
            by_rule_l: Some(found.by_rule.get()),
            by_balance_l: found.by_balance.map(Litres::get),
            flash,
            verdict: verdict.then(|| found.verdict.key()),
            cited: found.cited.into(),
            text,
        };
        Ok(Bathed { answer: Some(answer), stop, note: None })
    }

    fn bath_refused(self, error: Error) -> Refusal {
        match error {
            Error::Quantity(inside) => {
                let given = crate::format::exact(inside.given);
                self.refuse(error.code(), &given, HeatRefusal::Outside(inside))
            }
            Error::NoHeatBalance { medium } => {
                let note = self.say(Heat::NoBalance { medium });
                Refusal::new(error.code(), note, medium.key(), "", "")
            }
        }
    }

    fn starts_too_hot(self, found: &Quench) -> String {
        self.say(Heat::StartsTooHot { limit: &self.celsius(found.limit.get()) })
    }

    /// Too small, with the figure; or no volume that would do.
    fn stop(self, input: &BathInput, found: &Quench) -> String {
        let (Some(needed), Some(litres)) = (found.needed, input.litres) else {
            return self.starts_too_hot(found);
        };
        let flash = found.flash.map(|flash| {
            (self.celsius(flash.celsius.get()), flash.assumed, flash.margin.get() < 0.0)
        });
        let (limit, rule) = (self.celsius(found.limit.get()), self.litres_up(found.by_rule));
        let fault = match (&flash, found.verdict) {
            (_, Verdict::TooSmall) => BathFault::Rule { rule: &rule },
            (Some((flash, assumed, past)), Verdict::FireRisk) if *past => {
                BathFault::PastFlash { flash, assumed: *assumed }
            }
            (Some((flash, assumed, _)), Verdict::FireRisk) => {
                BathFault::NearFlash { flash, assumed: *assumed }
            }
            _ => BathFault::TooHot { limit: &limit },
        };
        let rise = self.about(found.rise.get(), 0.0);
        let peak = self.about(found.peak.get(), 32.0);
        let litres = self.litres(litres.get());
        let first = self.say(Heat::Stop { litres: &litres, rise: &rise, peak: &peak, fault });
        let needed = self.needed(found, needed);
        joined([first, needed].into_iter())
    }

    fn needed(self, found: &Quench, needed: Litres) -> String {
        let balance = found.by_balance.unwrap_or(needed);
        self.say(Heat::Needed {
            needed: &self.litres_up(needed),
            rule: &self.litres_up(found.by_rule),
            balance: &self.litres_up(balance),
        })
    }

    fn bath_text(self, input: &BathInput, found: &Quench, stop: Option<&str>) -> String {
        let mut said: Vec<String> = Vec::new();
        match (stop, found.needed, input.litres) {
            (Some(stop), ..) => said.push(stop.to_owned()),
            (None, Some(needed), Some(litres)) => said.push(self.say(Heat::Enough {
                litres: &self.litres(litres.get()),
                rise: &self.difference(found.rise.get().ceil()),
                peak: &self.celsius(found.peak.get().ceil()),
                needed: &self.litres_up(needed),
                limit: &self.celsius(found.limit.get()),
            })),
            (None, Some(needed), None) => {
                said.push(self.needed(found, needed));
                said.push(self.say(Heat::NoVolume));
            }
            (None, None, _) => {}
        }
        said.push(self.say(Heat::SafeSide));
        if input.celsius.is_none() {
            said.push(self.say(Heat::StartAssumed { start: &self.celsius(SHOP) }));
        }
        if let Some(flash) = found.flash.filter(|_| found.verdict != Verdict::DoNotUse) {
            let at = self.celsius(flash.celsius.get());
            if stop.is_none() && input.litres.is_some() {
                let margin = self.difference(flash.margin.get().floor());
                said.push(self.say(Heat::Margin { margin: &margin, flash: &at }));
            }
            if flash.assumed {
                said.push(self.say(Heat::FlashAssumed { flash: &at }));
            } else if flash.below_guide {
                said.push(self.say(Heat::BelowGuide { flash: &at }));
            }
        }
        joined(said.into_iter())
    }

    /// The smallest tank that covers the part.
    pub(super) fn tank(self, section: &Section, needed: Option<f64>) -> Option<TankAnswer> {
        let found = tank(section)?;
        let size = |mm| crate::section::size(self.units, mm);
        let first = self.say(Heat::Tank {
            long: &size(found.long),
            wide: &size(found.wide),
            liquid: &size(found.liquid),
            wall: &size(found.wall),
            litres: &self.litres_up(found.litres),
        });
        let more = needed.is_some_and(|needed| needed > found.litres.get());
        let more = more.then(|| self.say(Heat::TankMore));
        Some(TankAnswer {
            long_mm: found.long,
            wide_mm: found.wide,
            liquid_mm: found.liquid,
            wall_mm: found.wall,
            litres: found.litres.get(),
            text: joined([Some(first), more].into_iter().flatten()),
        })
    }

    /// A check of the oven: `240C=231.9C`, `240C=tin`.
    fn check(self, text: &str) -> Result<OvenCheck, Refusal> {
        let given = crate::format::shortened(text);
        let (dial, truth) = text.split_once('=').ok_or_else(|| {
            let what = HeatRefusal::OvenPair { given: &given };
            self.refuse("bench.unreadable_oven", &given, what)
        })?;
        let dial = measure::temperature(self.language, dial)?;
        let name = truth.trim().to_lowercase();
        let by_name = POINTS.iter().zip(KNOWN).find(|(word, _)| **word == name).map(|one| one.1);
        let made = if let Some(point) = by_name.or_else(|| KnownPoint::find(&name)) {
            OvenCheck::at(point, dial)
        } else {
            let truth = measure::temperature(self.language, truth)?;
            // Half a kelvin: what is left of a printed figure that was rounded.
            let point = KnownPoint::ALL
                .iter()
                .find(|point| (point.temperature().0 - truth.get()).abs() <= 0.5);
            let width = point.map_or(THERMOMETER, |point| point.temperature().1);
            biteband_quantity::Kelvins::new(width)
                .map_err(furnace::Error::from)
                .and_then(|width| OvenCheck::new(dial, truth, width))
        };
        made.map_err(|error| self.refuse(error.code(), &given, HeatRefusal::Oven(&error)))
    }

    /// What the dial must show for a true temperature.
    pub(super) fn oven(
        self,
        checks: &[String],
        at: Celsius,
    ) -> Result<Option<OvenAnswer>, Refusal> {
        let Some(oven) = self.checks(checks)? else { return Ok(None) };
        let refused = |error: furnace::Error| {
            self.refuse(error.code(), &checks.join(", "), HeatRefusal::Oven(&error))
        };
        let found = oven.dial_for(at).and_then(|dial| Ok((dial, oven.at(dial)?)));
        let wanted = self.celsius(at.get());
        Ok(Some(match found {
            Ok((dial, offset)) => OvenAnswer {
                dial_c: Some(dial.get()),
                offset_k: Some(offset.kelvins.get()),
                half_width_k: Some(offset.half_width.get()),
                text: self.say(Heat::Dial {
                    at: &wanted,
                    dial: &self.celsius(dial.get()),
                    offset: &self.difference(offset.kelvins.get().abs()),
                    over: offset.kelvins.get() < 0.0,
                    width: &self.difference(offset.half_width.get()),
                }),
            },
            Err(furnace::Error::NotChecked { low, high, .. }) => OvenAnswer {
                dial_c: None,
                offset_k: None,
                half_width_k: None,
                text: self.say(Heat::NotCheckedThere {
                    at: &wanted,
                    low: &self.celsius(low),
                    high: &self.celsius(high),
                }),
            },
            Err(error) => return Err(refused(error)),
        }))
    }

    /// The oven as it was checked; nothing without a check.
    pub(super) fn checks(self, checks: &[String]) -> Result<Option<OvenOffset>, Refusal> {
        if checks.is_empty() {
            return Ok(None);
        }
        let all = checks.iter().map(|text| self.check(text)).collect::<Result<Vec<_>, _>>()?;
        OvenOffset::new(&all).map(Some).map_err(|error| {
            self.refuse(error.code(), &checks.join(", "), HeatRefusal::Oven(&error))
        })
    }
}

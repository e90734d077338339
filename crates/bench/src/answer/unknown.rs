//! What an unknown bar can be, what to try next, and what not to make of it.

use biteband_evidence::unknown::{
    Bar, Bath, CarbonBand, Clash, Clue, Fracture, Heat, Kind, Magnet, Purpose, Quench, Skin,
    Sorted, Span, Spark, Test, cited,
};
use biteband_steel::keyed;
use serde::Deserialize;

use super::file_question::limits_in_hrc;
use super::unknown_answer::{
    UnknownAnswer, UnknownCarbon, UnknownClash, UnknownFamily, UnknownNext, UnknownPromise,
    UnknownQuench, UnknownUse,
};
use crate::format::{self, Units};
use crate::refusal::Refusal;
use crate::words::{Language, Sure, Unknown, UnknownRefusal};

/// From this carbon on the hardness of a coupon says no more, in mass percent.
const SATURATED: f64 = 0.6;
/// Below this chance of plain and low-alloy steel no carbon is named.
const NAMES_CARBON: f64 = 0.2;
/// From this chance on, a family that wants a word of its own gets it.
const WORTH_A_WORD: f64 = 0.2;
/// Metal temperature for a coupon in °C: 20 to 45 K past the point where a magnet lets go.
const CHERRY: (f64, f64) = (790.0, 815.0);
/// Hardness of bought pre-hard bar with what a file may be off, in HRC.
const PRE_HARD: (f64, f64) = (25.0, 36.0);

/// What was seen of the bar; everything may be left out, and an empty text counts as left out.
#[derive(Clone, Debug, Default, PartialEq, Eq, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "camelCase")]
pub struct UnknownQuestion {
    /// `sticks`, `weak`, `none`.
    pub magnet: Option<String>,
    /// `none`, `straw`, `forks`, `bursts`, `spears`, `plain`, `bushy`.
    pub spark: Option<String>,
    /// An ordinary file on the bar as it was found, `bites` or `skates`; or its hardness, `28-32 HRC`.
    pub found: Option<String>,
    /// `same`, `hard`, `soft`: the skin against 5 mm deeper.
    pub skin: Option<String>,
    /// Hardness of a 6 mm coupon from the middle after oil: `50-55 HRC`, `>60 HRC`, `<40 HRC`, `55 HRC`.
    pub oil: Option<String>,
    /// The same after water.
    pub water: Option<String>,
    /// How the coupon broke that was quenched last: `bent`, `torn`, `fine`, `coarse`.
    pub snap: Option<String>,
    /// Units of the texts.
    pub units: Units,
}

/// Reads coupons as the command line has them, `oil:50-55 HRC`: what the files said after oil and after water.
///
/// # Errors
/// A refusal for a text without its bath, and for a bath that is given twice.
///
/// # Example
/// ```
/// use biteband_bench::answer::parse_coupons;
/// use biteband_bench::words::Language;
/// let [oil, water] = parse_coupons(Language::English, &["oil:50-55 HRC".to_owned()]).unwrap();
/// assert_eq!((oil.as_deref(), water), (Some("50-55 HRC"), None));
/// ```
pub fn parse_coupons(language: Language, texts: &[String]) -> Result<[Option<String>; 2], Refusal> {
    let refuse = |given: &str, what: UnknownRefusal<'_>| {
        let [message, allowed, instead] = language.unknown_refused(what);
        Refusal::new("bench.unreadable_coupon", message, given, allowed, instead)
    };
    let [mut oil, mut water] = [None, None];
    for text in texts {
        let given = format::shortened(text);
        let parts = text.split_once(':');
        let parts = parts.and_then(|(bath, said)| Some((Bath::find(bath)?, said.trim())));
        let Some((bath, said)) = parts else {
            return Err(refuse(&given, UnknownRefusal::Coupon { given: &given }));
        };
        let place = if bath == Bath::Oil { &mut oil } else { &mut water };
        if place.replace(said.to_owned()).is_some() {
            return Err(refuse(&given, UnknownRefusal::CouponTwice { bath: bath.key() }));
        }
    }
    Ok([oil, water])
}

/// Says what a bar of unknown steel can be.
///
/// Clues that do not go together are an answer too: `refused` says so, and nothing is recommended.
///
/// # Errors
/// A refusal when an answer is none of those that its test has, or a hardness cannot be read.
///
/// # Example
/// ```
/// use biteband_bench::answer::{UnknownQuestion, unknown};
/// use biteband_bench::words::Language;
/// let seen = |text: &str| Some(text.to_owned());
/// let axle = UnknownQuestion {
///     spark: seen("forks"),
///     skin: seen("hard"),
///     oil: seen("50-55 HRC"),
///     ..UnknownQuestion::default()
/// };
/// let answer = unknown(Language::English, &axle).unwrap();
/// assert_eq!(answer.families[0].family, "medium_carbon");
/// assert!(answer.avoid.iter().any(|one| one.purpose == "edges"));
/// ```
pub fn unknown(language: Language, question: &UnknownQuestion) -> Result<UnknownAnswer, Refusal> {
    let (bar, understood) = bar(language, question)?;
    let telling = Telling { language, units: question.units, bar: &bar, sorted: &bar.sort() };
    Ok(UnknownAnswer { understood, ..telling.answer() })
}

/// What was seen, as clues and as sentences.
fn bar(language: Language, question: &UnknownQuestion) -> Result<(Bar, Vec<String>), Refusal> {
    let (mut bar, mut understood) = (Bar::default(), Vec::new());
    for &test in Test::ALL {
        let text = match test {
            Test::Magnet => &question.magnet,
            Test::Spark => &question.spark,
            Test::Found => &question.found,
            Test::Skin => &question.skin,
            Test::CouponOil => &question.oil,
            Test::Snap => &question.snap,
            Test::CouponWater => &question.water,
        };
        let Some(text) = text.as_deref().map(str::trim).filter(|text| !text.is_empty()) else {
            continue;
        };
        let clue = clue(language, test, text)?;
        let answer = told(language, &clue, text);
        let said = language.unknown(Unknown::Seen { test, answer: &answer });
        understood.push(said.into_owned());
        bar = bar.with(clue);
    }
    Ok((bar, understood))
}

/// Whether a text is an answer of a test, without weighing it.
pub(crate) fn readable(language: Language, test: Test, text: &str) -> Result<(), Refusal> {
    clue(language, test, text).map(|_| ())
}

fn clue(language: Language, test: Test, text: &str) -> Result<Clue, Refusal> {
    let none = |known: Vec<&'static str>| {
        let (given, known) = (format::shortened(text), known.join(", "));
        let what = UnknownRefusal::Answer { test, given: &given, known: &known };
        let [message, allowed, instead] = language.unknown_refused(what);
        Refusal::new("bench.unknown_answer", message, given.clone(), allowed, instead)
    };
    let keys = |known: &mut dyn Iterator<Item = &'static str>| none(known.collect());
    Ok(match test {
        Test::Magnet => {
            let all = || keys(&mut Magnet::ALL.iter().map(|one| one.key()));
            Clue::Magnet(Magnet::find(text).ok_or_else(all)?)
        }
        Test::Spark => {
            let all = || keys(&mut Spark::ALL.iter().map(|one| one.key()));
            Clue::Spark(Spark::find(text).ok_or_else(all)?)
        }
        Test::Skin => {
            let all = || keys(&mut Skin::ALL.iter().map(|one| one.key()));
            Clue::Skin(Skin::find(text).ok_or_else(all)?)
        }
        Test::Snap => {
            let all = || keys(&mut Fracture::ALL.iter().map(|one| one.key()));
            Clue::Snap(Fracture::find(text).ok_or_else(all)?)
        }
        Test::Found => Clue::Found(match FileWord::find(text) {
            Some(FileWord::Bites) => Span::BITES,
            Some(FileWord::Skates) => Span::SKATES,
            None => span(language, text)?,
        }),
        Test::CouponOil => Clue::Coupon(Bath::Oil, span(language, text)?),
        Test::CouponWater => Clue::Coupon(Bath::Water, span(language, text)?),
    })
}

keyed! {
    /// What an ordinary file does.
    FileWord {
        /// Bites.
        Bites = "bites",
        /// Skates.
        Skates = "skates",
    }
}

/// Reads what files said of a coupon; a single number is one HRC wide to each side.
fn span(language: Language, text: &str) -> Result<Span, Refusal> {
    let (single, low, high) = limits_in_hrc(language, text)?;
    let span = match low {
        Some(number) if single => Span::about(number),
        _ => Span::new(low, high),
    };
    span.map_err(|error| {
        let [message, allowed, instead] = language.unknown_refused(UnknownRefusal::Span(&error));
        Refusal::new(error.code(), message, format::shortened(text), allowed, instead)
    })
}

/// An answer as it was understood.
fn told(language: Language, clue: &Clue, text: &str) -> String {
    let spanned = |span: Span| {
        if FileWord::find(text).is_some() {
            return text.to_lowercase().into();
        }
        let shown = |limit: f64| format::fixed(limit, 0);
        // A single number was made a span about itself.
        let single = limits_in_hrc(language, text).is_ok_and(|(single, ..)| single);
        let said = |what: Unknown<'_>| language.unknown(what);
        match (span.low(), span.high()) {
            (Some(low), Some(high)) if single => {
                said(Unknown::About { hrc: &shown(f64::midpoint(low, high)) })
            }
            (Some(low), Some(high)) => {
                said(Unknown::Between { low: &shown(low), high: &shown(high) })
            }
            (Some(low), None) => said(Unknown::AtLeast { low: &shown(low) }),
            (None, high) => said(Unknown::AtMost { high: &high.map_or_else(String::new, shown) }),
        }
    };
    match *clue {
        Clue::Magnet(answer) => language.unknown(Unknown::Magnet(answer)),
        Clue::Spark(answer) => language.unknown(Unknown::Spark(answer)),
        Clue::Skin(answer) => language.unknown(Unknown::Skin(answer)),
        Clue::Snap(answer) => language.unknown(Unknown::Fracture(answer)),
        Clue::Found(span) | Clue::Coupon(_, span) => spanned(span),
    }
    .into_owned()
}

struct Telling<'a> {
    language: Language,
    units: Units,
    bar: &'a Bar,
    sorted: &'a Sorted,
}

impl Telling<'_> {
    fn say(&self, phrase: Unknown<'_>) -> String {
        self.language.unknown(phrase).into_owned()
    }

    fn answer(&self) -> UnknownAnswer {
        let sorted = self.sorted;
        let clashes: Vec<UnknownClash> =
            sorted.clashes().iter().map(|one| self.clash(one)).collect();
        // Nothing is built on clues that contradict each other.
        let agree = clashes.is_empty();
        // Nor is a plain or low-alloy bar recommended before a coupon of it was quenched.
        let proved = self.has_coupon() || sorted.chance_of(Heat::Carbon) < 0.5;
        let uses = sorted.uses().filter(|_| agree && proved);
        let avoids = sorted.avoids().filter(|purpose| agree || *purpose == Purpose::Safety);
        let (verdict, next) = (self.verdict(), self.next());
        UnknownAnswer {
            refused: clashes.first().map(|clash| {
                let given = format!("{}, {}", clash.first, clash.second);
                let instead = clash.why.first().cloned().unwrap_or_default();
                Refusal::new("unknown.clash", clash.text.clone(), given, "", instead)
            }),
            carbon: self.carbon(sorted.carbon()),
            families: self.families(),
            promise: self.promise(),
            quench: UnknownQuench {
                key: sorted.quench().key(),
                text: self.say(Unknown::Quench(sorted.quench())),
            },
            uses: uses.map(|purpose| self.use_of(purpose)).collect(),
            avoid: avoids
                .map(|purpose| UnknownUse {
                    purpose: purpose.key(),
                    text: self.say(Unknown::Avoid(purpose)),
                })
                .collect(),
            settled: next.is_none().then(|| self.say(Unknown::Settled)),
            next,
            clashes,
            notes: self.notes(),
            cautions: [
                Unknown::Critical,
                Unknown::Eyes,
                Unknown::Snapping,
                Unknown::OilFire,
                Unknown::Fumes,
            ]
            .map(|caution| self.say(caution))
            .to_vec(),
            confidence: cited().confidence.key(),
            seen: cited().seen.key(),
            sources: cited().sources.to_vec(),
            understood: Vec::new(),
            heat: self.heat(),
            verdict,
        }
    }

    fn verdict(&self) -> String {
        if let Some(Clash { first, second, .. }) = self.sorted.clashes().first() {
            return self.say(Unknown::Disagree { first: *first, second: *second });
        }
        if self.bar.clues().is_empty() {
            return self.say(Unknown::Nothing);
        }
        self.likeliest(self.sorted)
    }

    fn likeliest(&self, sorted: &Sorted) -> String {
        let mut families = sorted.families().iter();
        let (Some(&(family, chance)), Some(&(second, next))) = (families.next(), families.next())
        else {
            return self.say(Unknown::Nothing);
        };
        let is = |sure: Sure| self.say(Unknown::Is { sure, family });
        match chance {
            0.9.. => is(Sure::Nearly),
            0.6.. => is(Sure::Likely),
            _ if chance + next >= 0.6 => self.say(Unknown::OneOf { first: family, second }),
            _ => is(Sure::Perhaps),
        }
    }

    fn carbon(&self, band: CarbonBand) -> UnknownCarbon {
        let CarbonBand { low, mid, high, level, chance } = band;
        let shown = |carbon: f64| format::fixed(carbon, 2);
        let [percent, _] = format::percents([chance, 1.0 - chance]);
        let text = if chance < NAMES_CARBON {
            self.say(Unknown::NoCarbon { percent })
        } else if mid > SATURATED {
            self.say(Unknown::CarbonHighOpen { low: &shown(low), percent })
        } else {
            let [mid, low, high] = [mid, low, high].map(shown);
            self.say(Unknown::Carbon { mid: &mid, low: &low, high: &high, percent })
        };
        UnknownCarbon { low, mid, high, level, chance, text, told: chance >= NAMES_CARBON }
    }

    fn families(&self) -> Vec<UnknownFamily> {
        let sorted = self.sorted.families();
        let mut chances = [0.0; Kind::ALL.len()];
        for (place, (_, chance)) in chances.iter_mut().zip(sorted) {
            *place = *chance;
        }
        let percents = format::percents(chances);
        let told = sorted.iter().zip(percents).map(|(&(kind, chance), percent)| UnknownFamily {
            family: kind.key(),
            name: self.say(Unknown::Family(kind)),
            chance,
            percent,
        });
        told.collect()
    }

    fn promise(&self) -> UnknownPromise {
        let promise = self.sorted.promise();
        let shown = |[low, _, high]: [f64; 3]| {
            format::dash(&format::outward_low(low), &format::outward_high(high))
        };
        let (oil, water) = (shown(promise.oil), shown(promise.water));
        let hardens = !matches!(self.sorted.quench(), Quench::Neither | Quench::OwnHeat);
        let text = if hardens {
            self.say(Unknown::Promise { oil: &oil, water: &water })
        } else {
            String::new()
        };
        UnknownPromise { oil: promise.oil.into(), water: promise.water.into(), text }
    }

    fn use_of(&self, purpose: Purpose) -> UnknownUse {
        let promise = self.sorted.promise();
        let quench = self.sorted.quench();
        let [_, mid, _] = if quench == Quench::Water { promise.water } else { promise.oil };
        let to = format::fixed(mid - biteband_evidence::unknown::DRAWN_BACK, 0);
        UnknownUse { purpose: purpose.key(), text: self.say(Unknown::Use { purpose, to: &to }) }
    }

    fn has_coupon(&self) -> bool {
        self.bar.coupon(Bath::Oil).or(self.bar.coupon(Bath::Water)).is_some()
    }

    fn heat(&self) -> String {
        self.units.temperatures(CHERRY.0, CHERRY.1)
    }

    fn next(&self) -> Option<UnknownNext> {
        let heat = self.heat();
        // A contradiction is settled before anything new is tried.
        if let Some(clash) = self.sorted.clashes().first() {
            let again = Unknown::Again { test: clash.second, heat: &heat };
            return Some(UnknownNext {
                test: clash.second.key(),
                name: self.say(Unknown::Test(clash.second)),
                again: true,
                how: self.say(again),
                why: self.say(Unknown::AgainWhy),
                fall_bits: None,
            });
        }
        let advice = self.sorted.advice()?;
        Some(UnknownNext {
            test: advice.test.key(),
            name: self.say(Unknown::Test(advice.test)),
            again: false,
            how: self.say(Unknown::How { test: advice.test, heat: &heat }),
            why: self.say(Unknown::Why(advice.test)),
            fall_bits: Some(advice.fall),
        })
    }

    fn clash(&self, clash: &Clash) -> UnknownClash {
        let &Clash { first, second, odds, ref causes } = clash;
        UnknownClash {
            first: first.key(),
            second: second.key(),
            odds,
            text: self.say(Unknown::Clash { first, second }),
            without: [first, second].map(|test| {
                let verdict = self.likeliest(&self.bar.clone().without(test).sort());
                self.say(Unknown::Without { test, verdict: &verdict })
            }),
            why: causes.iter().map(|cause| self.say(Unknown::Cause(*cause))).collect(),
        }
    }

    fn notes(&self) -> Vec<String> {
        let (bar, sorted) = (self.bar, self.sorted);
        let clue = |test: Test| bar.clue(test);
        let hard_skin = clue(Test::Skin) == Some(&Clue::Skin(Skin::Hard));
        let pre_hard = matches!(clue(Test::Found), Some(Clue::Found(span))
            if span.low().is_some_and(|low| low >= PRE_HARD.0)
                && span.high().is_some_and(|high| high <= PRE_HARD.1));
        let no_coupon = !self.has_coupon();
        let cast = sorted.chance(Kind::CastIron) >= WORTH_A_WORD;
        let shallow = sorted.quench() == Quench::Water;
        let high = !no_coupon && sorted.carbon().mid > SATURATED;
        let own = sorted.chance_of(Heat::Own) >= WORTH_A_WORD;
        let coarse = clue(Test::Snap) == Some(&Clue::Snap(Fracture::Coarse)) && !cast;
        let soft_skin = clue(Test::Skin) == Some(&Clue::Skin(Skin::Soft));
        let found_of_skin = hard_skin && clue(Test::Found).is_some();
        [
            (no_coupon && !cast, Unknown::NoCoupon),
            (cast, Unknown::CastIron),
            (own, Unknown::OwnHeat),
            (shallow, Unknown::Shallow),
            (high, Unknown::Saturated),
            (coarse, Unknown::Coarse),
            (soft_skin, Unknown::SoftSkin),
            (found_of_skin, Unknown::FoundOfSkin),
            (pre_hard, Unknown::PreHard),
            (true, Unknown::OneBar),
            (true, Unknown::Judged),
        ]
        .into_iter()
        .filter(|(holds, _)| *holds)
        .map(|(_, note)| self.say(note))
        .collect()
    }
}

//! A card in words: its facts, its story, two cards side by side, and what today's version says of an old test.

use biteband_evidence::{Hand, Outcome};
use biteband_steel::furnace::Protection;
use biteband_steel::quench::{Medium, Movement};
use serde::Serialize;
use time::OffsetDateTime;

use super::said::said_of_card;
use super::{
    Card, ClaimSheet, Entry, EntryKind, FileSheet, ReadingSheet, Said, SaidOf, TemperSheet, found,
    moment_ms, versions,
};
use crate::answer::{INSTRUMENTS, with_scale};
use crate::format;
use crate::state::{HandChoice, PartStage, ShapeKind, SteelState, UnknownField};
use crate::view::seen_in_words;
use crate::words::{FactLabel, Gauge, Language, PartWords, Phrase, Reach, SteelPage, TemperPage};

/// Something that a card says.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Fact {
    /// What it is about.
    pub of: FactLabel,
    /// The same in words.
    pub label: String,
    /// What the card says.
    pub text: String,
}

/// A line of the story.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct StoryLine {
    /// Its place among the entries; absent for the first, which is the steel, and the last, which is how it stands now.
    pub entry: Option<usize>,
    /// The day in local time: `12 Nov 2026`; empty when not known.
    pub date: String,
    /// What kind of thing: Steel, Hardened, Filed, Tempered.
    pub title: String,
    /// What, in words.
    pub what: String,
    /// What the tool said of it then.
    pub said: String,
    /// Who said it: `Biteband 0.1.0, data 2026.1`.
    pub versions: String,
    /// A sentence where another version said it than this one.
    pub outdated: String,
}

/// One fact of two cards.
#[derive(Clone, Debug, PartialEq, Eq, Serialize)]
pub struct Row {
    /// What it is about.
    pub label: String,
    /// What the first card says; empty for nothing.
    pub a: String,
    /// What the second says.
    pub b: String,
    /// Whether they say different things.
    pub differs: bool,
}

/// An old answer and today's.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Again {
    /// What was said then.
    pub then: String,
    /// What this version says of the same strokes and readings.
    pub now: String,
    /// Whether both are the same.
    pub same: bool,
    /// Both in a sentence.
    pub text: String,
}

/// Every fact of a card in words; what it does not say is left out.
#[must_use]
pub fn facts(card: &Card, language: Language) -> Vec<Fact> {
    let tested = !card.files.is_empty();
    // The files at hand are no fact of a part that they did not touch.
    let apart = |of| match of {
        FactLabel::Name | FactLabel::Story => true,
        FactLabel::OwnFiles => !tested,
        _ => false,
    };
    let teller = Teller::new(card, language);
    let told = FactLabel::ALL.into_iter().filter(|of| !apart(*of));
    let facts = told.map(|of| Fact { of, label: label(language, of), text: teller.tell(of) });
    facts.filter(|fact| !fact.text.is_empty()).collect()
}

/// Two cards side by side: a row for every fact that one of them has.
#[must_use]
pub fn compare(a: &Card, b: &Card, language: Language) -> Vec<Row> {
    let (one, other) = (Teller::new(a, language), Teller::new(b, language));
    let rows = FactLabel::ALL.into_iter().map(|of| {
        let (a, b) = (one.tell(of), other.tell(of));
        let differs = a != b;
        Row { label: label(language, of), a, b, differs }
    });
    rows.filter(|row| !(row.a.is_empty() && row.b.is_empty())).collect()
}

fn label(language: Language, of: FactLabel) -> String {
    language.part(PartWords::Fact(of)).into_owned()
}

/// The story of a card, oldest first, with days in a time zone that lies so many minutes east of Greenwich.
#[must_use]
pub fn story(card: &Card, language: Language, offset_minutes: i32) -> Vec<StoryLine> {
    story_with(card, &said_of_card(card, language), language, offset_minutes)
}

/// The same where it is known already what the tool says of the card.
#[must_use]
pub fn story_with(
    card: &Card,
    said: &[Said],
    language: Language,
    offset_minutes: i32,
) -> Vec<StoryLine> {
    let say = |words: PartWords<'_>| language.part(words).into_owned();
    let teller = Teller { card, language, said: said.to_vec() };
    let mut lines = Vec::new();
    let steel = [FactLabel::Steel, FactLabel::Origin, FactLabel::Section].map(|of| teller.tell(of));
    let steel = joined(steel, ", ");
    if !steel.is_empty() {
        lines.push(StoryLine {
            date: day(&card.created, language, offset_minutes),
            title: say(PartWords::SteelEntry),
            what: steel,
            ..StoryLine::default()
        });
    }
    let entries = card.story.iter().enumerate();
    lines.extend(entries.map(|(place, entry)| StoryLine {
        entry: Some(place),
        date: day(&entry.at, language, offset_minutes),
        title: say(PartWords::Kind(entry.kind)),
        what: entry.what.clone(),
        said: entry.said.clone(),
        versions: said_by(language, &entry.said, &entry.app, &entry.data),
        outdated: outdated(language, entry),
    }));
    if !card.files.is_empty() {
        let said = teller.said(SaidOf::Files);
        let (app, data) = versions();
        lines.push(StoryLine {
            entry: None,
            date: say(PartWords::Now),
            title: say(PartWords::Kind(EntryKind::Filed)),
            what: found(&card.files, language),
            versions: said_by(language, &said, &app, &data),
            said,
            outdated: String::new(),
        });
    }
    lines
}

/// The day of a moment: `12 Nov 2026`; empty for none.
#[must_use]
pub fn day(moment: &str, language: Language, offset_minutes: i32) -> String {
    let seconds = moment_ms(moment).map(|ms| ms.div_euclid(1000) + i64::from(offset_minutes) * 60);
    let local = seconds.and_then(|seconds| OffsetDateTime::from_unix_timestamp(seconds).ok());
    local.map_or_else(String::new, |local| {
        let (day, month, year) = (local.day(), u8::from(local.month()), local.year());
        language.part(PartWords::Date { day, month, year }).into_owned()
    })
}

/// What this version says of what an entry rests on; nothing where it rests on nothing.
#[must_use]
pub fn again(card: &Card, entry: usize, language: Language) -> Option<Again> {
    let entry = card.story.get(entry)?;
    let (files, claim) = (entry.files.clone(), entry.claim.clone());
    let of = if claim.is_some() { SaidOf::Claim } else { SaidOf::Files };
    let then = Card {
        target: card.target.clone(),
        steel: card.steel.clone(),
        files: files.unwrap_or_default(),
        claim: claim.unwrap_or_default(),
        ..Card::default()
    };
    let now = said_of_card(&then, language).into_iter().find(|said| said.of == of)?;
    let same = same_answer(entry, &now);
    let said = PartWords::SaysOtherwise { then: &entry.said, now: &now.text };
    let said = if same { PartWords::SaysTheSame { now: &now.text } } else { said };
    let text = language.part(said).into_owned();
    Some(Again { then: entry.said.clone(), now: now.text, same, text })
}

/// The same band in whole numbers, as it is shown; without a band the same words.
fn same_answer(then: &Entry, now: &Said) -> bool {
    if then.scale.is_empty() || now.scale.is_empty() {
        return then.said == now.text;
    }
    let shown = |low: Option<f64>, high: Option<f64>| {
        (low.map(format::outward_low), high.map(format::outward_high))
    };
    then.scale == now.scale && shown(then.low, then.high) == shown(now.low, now.high)
}

fn said_by(language: Language, said: &str, app: &str, data: &str) -> String {
    if said.is_empty() || app.is_empty() {
        return String::new();
    }
    language.part(PartWords::SaidBy { app, data }).into_owned()
}

fn outdated(language: Language, entry: &Entry) -> String {
    let (now_app, now_data) = versions();
    let Entry { app, data, .. } = entry;
    if app.is_empty() || (*app == now_app && *data == now_data) {
        return String::new();
    }
    let words = PartWords::Outdated { app, data, now_app: &now_app, now_data: &now_data };
    language.part(words).into_owned()
}

fn joined(texts: impl IntoIterator<Item = String>, between: &str) -> String {
    let texts: Vec<String> = texts.into_iter().filter(|text| !text.is_empty()).collect();
    texts.join(between)
}

struct Teller<'a> {
    card: &'a Card,
    language: Language,
    said: Vec<Said>,
}

impl<'a> Teller<'a> {
    fn new(card: &'a Card, language: Language) -> Self {
        Self { card, language, said: said_of_card(card, language) }
    }

    fn say(&self, words: PartWords<'_>) -> String {
        self.language.part(words).into_owned()
    }

    fn said(&self, of: SaidOf) -> String {
        self.said
            .iter()
            .find(|said| said.of == of)
            .map(|said| said.text.clone())
            .unwrap_or_default()
    }

    fn tell(&self, of: FactLabel) -> String {
        use FactLabel as F;
        let card = self.card;
        let typed = |text: &str| text.trim().to_owned();
        match of {
            F::Name => typed(&card.name),
            F::Steel => self.steel(),
            F::Composition => self.composition(),
            F::Origin => typed(&card.steel.origin),
            F::Section => self.section(),
            F::Kind => typed(&card.kind),
            F::Wanted => with_scale(&card.target),
            F::Zones => {
                let zones = card.zones.iter();
                joined(
                    zones.map(|zone| {
                        self.say(PartWords::Zone { place: &zone.place, target: &zone.target })
                    }),
                    "; ",
                )
            }
            F::Bath => self.bath(),
            F::Air => self.air(),
            F::Stage => self.stage(),
            F::Tempers => typed(&card.tempering.done),
            F::AsQuenched => typed(&card.tempering.as_quenched),
            F::LookedAt => {
                let (at, held) = (card.tempering.at.trim(), card.tempering.held.trim());
                if at.is_empty() && held.is_empty() {
                    return String::new();
                }
                self.say(PartWords::LookedAt { at, held })
            }
            F::Typed => self.typed(),
            F::Circumstances => self.circumstances(),
            F::Files => self.found(&card.files),
            F::Conditions => self.conditions(&card.files),
            F::OwnFiles => self.own_files(&card.files),
            F::Expected => self.expected(&card.files),
            F::Says => self.with_versions(SaidOf::Files),
            F::Paper => self.paper(&card.claim),
            F::PaperSays => self.with_versions(SaidOf::Claim),
            F::Results => {
                let results = card.tempering.results.iter();
                joined(results.map(|one| self.result(&one.hardness, &one.temper, &one.steel)), "; ")
            }
            F::Seen => {
                let seen = UnknownField::ALL.into_iter().zip(&card.seen);
                joined(seen.map(|(field, text)| seen_in_words(self.language, field, text)), "; ")
            }
            F::Notes => typed(&card.notes),
            F::Story => joined(card.story.iter().map(|entry| self.entry(entry)), "\n"),
            F::Recipe => self.recipe(),
            F::Photos => self.photos(),
        }
    }

    /// What stands in fields and waits for its key.
    fn typed(&self) -> String {
        let tempering = &self.card.tempering;
        let result = self.result(&tempering.measured, &tempering.after, "");
        let begun = self.card.begun.iter().map(|text| text.trim().to_owned());
        joined([result].into_iter().chain(begun), "; ")
    }

    fn with_versions(&self, of: SaidOf) -> String {
        let said = self.said(of);
        if said.is_empty() {
            return said;
        }
        let (app, data) = versions();
        let by = self.say(PartWords::SaidBy { app: &app, data: &data });
        format!("{said} ({by})")
    }

    fn steel(&self) -> String {
        let steel = &self.card.steel;
        let (name, grade) = (steel.name.trim(), steel.grade.trim());
        if steel.by_composition {
            let (bar, composition) = (steel.bar.trim(), steel.composition.trim());
            if composition.is_empty() {
                return bar.to_owned();
            }
            return self.say(PartWords::OwnBar { bar, composition });
        }
        if grade.is_empty() || grade == name {
            return name.to_owned();
        }
        self.say(PartWords::Picked { name, grade })
    }

    /// What was typed of the other way to name the steel.
    fn composition(&self) -> String {
        let steel = &self.card.steel;
        if steel.by_composition {
            return steel.name.trim().to_owned();
        }
        let both = [steel.bar.trim().to_owned(), steel.composition.trim().to_owned()];
        let composition = joined(both, ": ");
        if composition.is_empty() {
            return composition;
        }
        self.say(PartWords::AlsoComposition { composition: &composition })
    }

    fn section(&self) -> String {
        let section = &self.card.section;
        let (size, second) = (section.size.trim(), section.second.trim());
        let long = Some(section.length.trim()).filter(|long| !long.is_empty());
        if size.is_empty() && second.is_empty() {
            return long.map(|length| self.say(PartWords::LongOnly { length })).unwrap_or_default();
        }
        let words = match section.shape {
            ShapeKind::Round => Reach::Round { size, long },
            ShapeKind::Tube => Reach::Tube { outer: size, inner: second, long },
            ShapeKind::Square => Reach::Square { size, long },
            ShapeKind::Hexagon => Reach::Hexagon { size, long },
            ShapeKind::Flat => Reach::Flat { width: second, thickness: size, long },
            ShapeKind::Plate => Reach::Plate { size, long },
        };
        self.language.reach(words).into_owned()
    }

    /// Whether the part was in the fire, or is made like one that was. Bath and stage stand on the pages from the first,
    /// and what no one chose is no fact of a part before that.
    fn hardened(&self) -> bool {
        let TemperSheet { done, as_quenched, results, .. } = &self.card.tempering;
        let typed = [done, as_quenched].into_iter().any(|text| !text.trim().is_empty());
        let mut entries = self.card.story.iter().chain(&self.card.recipe);
        typed
            || !results.is_empty()
            || entries.any(|one| matches!(one.kind, EntryKind::Hardened | EntryKind::Tempered))
    }

    fn bath(&self) -> String {
        let bath = &self.card.bath;
        let usual = SteelState::default();
        let typed = [&bath.litres, &bath.temperature, &bath.flash_point];
        let moved = self.hardened() || bath.movement != usual.movement;
        let filled = typed.into_iter().any(|text| !text.trim().is_empty());
        if !(moved || filled || bath.medium != usual.medium) {
            return String::new();
        }
        let reach = |words: Reach<'_>| self.language.reach(words).into_owned();
        let medium = Medium::find(&bath.medium).map(|medium| reach(Reach::MediumName(medium)));
        // Air is not moved.
        let moved = moved && bath.medium != Medium::Air.key();
        let movement = Movement::find(&bath.movement).filter(|_| moved);
        let movement = movement.map(|movement| reach(Reach::MovementName(movement)));
        let temperature = bath.temperature.trim();
        let at = match temperature {
            "" => String::new(),
            temperature => self.say(PartWords::BathAt { temperature }),
        };
        let tank = joined([bath.litres.trim().to_owned(), at], " ");
        let flash = match bath.flash_point.trim() {
            "" => String::new(),
            temperature => self.say(PartWords::Flash { temperature }),
        };
        let (medium, movement) = (medium.unwrap_or_default(), movement.unwrap_or_default());
        joined([medium, movement, tank, flash], ", ")
    }

    fn air(&self) -> String {
        let label = match Protection::find(&self.card.bath.protection) {
            Some(Protection::Open) if self.hardened() => SteelPage::Open,
            None | Some(Protection::Open) => return String::new(),
            Some(Protection::Coated) => SteelPage::Coated,
            Some(Protection::Foil) => SteelPage::Foil,
            Some(Protection::Charcoal) => SteelPage::Charcoal,
            Some(Protection::Atmosphere) => SteelPage::Atmosphere,
        };
        self.language.steel_page(label).to_owned()
    }

    fn stage(&self) -> String {
        let stage = PartStage::ALL.into_iter().find(|one| one.key() == self.card.tempering.stage);
        let label = match stage {
            Some(PartStage::Bought) => TemperPage::Bought,
            Some(PartStage::Quenched) if self.hardened() => TemperPage::Quenched,
            None | Some(PartStage::Quenched) => return String::new(),
            Some(PartStage::Tempered) => TemperPage::Tempered,
        };
        self.language.temper_page(label).to_owned()
    }

    fn circumstances(&self) -> String {
        let sheet = &self.card.tempering;
        let switches = [
            (sheet.at_size, TemperPage::AtSize),
            (sheet.overheated, TemperPage::Overheated),
            (sheet.hurried, TemperPage::Hurried),
        ];
        let on = switches.into_iter().filter(|(on, _)| *on);
        joined(on.map(|(_, label)| self.language.temper_page(label).to_owned()), "; ")
    }

    fn result(&self, hardness: &str, temper: &str, steel: &str) -> String {
        let (hardness, temper, steel) = (hardness.trim(), temper.trim(), steel.trim());
        if hardness.is_empty() && temper.is_empty() {
            return String::new();
        }
        self.say(PartWords::Result { hardness, temper, steel })
    }

    /// Strokes, then readings with their instruments.
    fn found(&self, files: &FileSheet) -> String {
        let strokes = FileSheet { readings: Vec::new(), ..files.clone() };
        let readings = files.readings.iter().map(|one| self.reading(one));
        joined([found(&strokes, self.language)].into_iter().chain(readings), "; ")
    }

    fn reading(&self, one: &ReadingSheet) -> String {
        let text = one.text.trim();
        let whole = match (one.known.trim(), one.on_known.trim()) {
            ("", "") => text.to_owned(),
            (known, on_known) => self.say(PartWords::Comparison { text, known, on_known }),
        };
        let instrument = INSTRUMENTS.iter().find(|(key, _)| *key == one.instrument);
        instrument.map_or(whole.clone(), |(_, instrument)| {
            let instrument = self.language.gauge(Gauge::Instrument(*instrument));
            self.say(PartWords::With { instrument: &instrument, text: &whole })
        })
    }

    fn conditions(&self, files: &FileSheet) -> String {
        let conditions = files.conditions;
        let skin = conditions
            .skin_ground
            .map(|ground| self.say(if ground { PartWords::SkinOff } else { PartWords::SkinOn }));
        let switches = [
            (conditions.edge, PartWords::OnEdge),
            (conditions.finish_differs, PartWords::OtherFinish),
            (conditions.carbide_rich, PartWords::CarbideRich),
        ];
        let on = switches.into_iter().filter(|(on, _)| *on).map(|(_, words)| self.say(words));
        joined(skin.into_iter().chain(on), "; ")
    }

    fn own_files(&self, files: &FileSheet) -> String {
        let set = match files.set.trim() {
            "" => String::new(),
            grades => self.say(PartWords::Set { grades }),
        };
        let tolerance = match files.tolerance.trim() {
            "" => String::new(),
            tolerance => self.say(PartWords::GradedTo { tolerance }),
        };
        let hand = HandChoice::ALL.into_iter().find(|one| one.key() == files.hand);
        let hand = hand.map(|hand| {
            let hand = match hand {
                HandChoice::Careful => Hand::Careful,
                HandChoice::Practised => Hand::Practised,
                HandChoice::Casual => Hand::Casual,
            };
            self.say(PartWords::Hand { hand: &self.language.say(Phrase::Hand(hand)) })
        });
        let proofs = files.proofs.iter().map(|proof| {
            let word = match proof.outcome.as_str() {
                "bites" => Outcome::Bite,
                "skates" => Outcome::Skate,
                _ => Outcome::Slight,
            };
            let word = self.language.say(Phrase::Outcome(word));
            let (file, known) = (format::exact(proof.file), format::exact(proof.known));
            self.say(PartWords::Proof { file: &file, known: &known, word: &word })
        });
        let graded = joined([set, tolerance], " ");
        joined([graded].into_iter().chain(hand).chain(proofs), "; ")
    }

    fn expected(&self, files: &FileSheet) -> String {
        let expected = &files.expected;
        let mean = expected.mean.trim();
        if mean.is_empty() {
            return String::new();
        }
        self.say(PartWords::Expected { mean, sd: expected.sd.trim(), on: expected.on })
    }

    fn paper(&self, claim: &ClaimSheet) -> String {
        let some = |text: &str, words: PartWords<'_>| {
            if text.trim().is_empty() { String::new() } else { self.say(words) }
        };
        let paper = some(&claim.paper, PartWords::PaperOf { paper: claim.paper.trim() });
        let steel = some(&claim.steel, PartWords::PaperSteel { steel: claim.steel.trim() });
        let readings = claim.readings.iter().map(|one| self.reading(one));
        let readings = joined(readings, "; ");
        let (place, claimed) = (claim.place.as_str(), claim.claimed_place.as_str());
        let places = some(&format!("{place}{claimed}"), PartWords::PaperPlace { place, claimed });
        let rule = some(&claim.rule, PartWords::PaperRule { rule: claim.rule.trim() });
        let files =
            if claim.with_files { self.say(PartWords::PaperWithFiles) } else { String::new() };
        joined([joined([paper, steel], " "), readings, files, places, rule], "; ")
    }

    fn entry(&self, entry: &Entry) -> String {
        let kind = self.say(PartWords::Kind(entry.kind));
        let day = day(&entry.at, self.language, 0);
        let head = joined([day, kind], " ");
        joined([joined([head, entry.what.clone()], ": "), entry.said.clone()], ": ")
    }

    fn recipe(&self) -> String {
        let of = match self.card.recipe_of.trim() {
            "" => String::new(),
            of => self.say(PartWords::Recipe { of }),
        };
        let steps = self.card.recipe.iter().map(|entry| {
            let kind = self.say(PartWords::Kind(entry.kind));
            joined([joined([kind, entry.what.clone()], " "), entry.said.clone()], ": ")
        });
        joined([of, joined(steps, "; ")], ": ")
    }

    fn photos(&self) -> String {
        let photos = &self.card.photos;
        if photos.is_empty() {
            return String::new();
        }
        let count = self.say(PartWords::Photos { count: photos.len() });
        let texts = photos.iter().map(|photo| photo.text.trim().to_owned());
        joined([count, joined(texts, "; ")], ": ")
    }
}

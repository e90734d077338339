//! Cards looked for and put in order.

use std::borrow::Borrow;
use std::cmp::Ordering;

use super::file::refusal;
use super::{Card, Said, Standing, moment_ms};
use crate::format;
use crate::refusal::Refusal;
use crate::words::{Language, PartRefusal, PartWords};

/// By what a list of cards is ordered.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Order {
    /// What was changed last comes first.
    #[default]
    Changed,
    /// By name.
    Name,
    /// By steel.
    Steel,
    /// What still needs work comes first.
    Standing,
}

impl Order {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 4] = [Self::Changed, Self::Name, Self::Steel, Self::Standing];

    /// Stable name.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Changed => "changed",
            Self::Name => "name",
            Self::Steel => "steel",
            Self::Standing => "standing",
        }
    }
}

/// The one card that is meant: by its id, by its name whatever the case, or the only one there is.
///
/// # Errors
/// A refusal when there is none, or more than one.
pub fn one<'a>(
    language: Language,
    cards: &'a [Card],
    wanted: Option<&str>,
) -> Result<&'a Card, Refusal> {
    let Some(wanted) = wanted.map(str::trim) else {
        return match cards {
            [only] => Ok(only),
            [] => Err(refusal(language, "bench.unknown_part", "", PartRefusal::NoSuchPart)),
            several => Err(several_parts(language, several.iter(), "")),
        };
    };
    if let Some(found) = cards.iter().find(|card| card.id == wanted) {
        return Ok(found);
    }
    let named = || cards.iter().filter(|card| folded(&card.name) == folded(wanted));
    match (named().next(), named().nth(1)) {
        (Some(only), None) => Ok(only),
        (Some(_), Some(_)) => Err(several_parts(language, named(), wanted)),
        (None, _) => {
            let given = format::shortened(wanted);
            Err(refusal(language, "bench.unknown_part", given, PartRefusal::NoSuchPart))
        }
    }
}

fn several_parts<'a>(
    language: Language,
    cards: impl Iterator<Item = &'a Card>,
    given: &str,
) -> Refusal {
    // More than a screen of them helps nobody.
    let names: Vec<String> = cards
        .take(20)
        .map(|card| format!("{} ({})", card.id, format::shortened(&card.name)))
        .collect();
    let names = names.join(", ");
    let given = format::shortened(given);
    refusal(language, "bench.missing_part", given, PartRefusal::SeveralParts { names: &names })
}

/// Whether every word that is looked for stands somewhere on a card: in its name, steel, kind, wanted hardness, places,
/// origin, notes, story, or how it stands.
#[must_use]
pub fn matches(card: &Card, search: &str, language: Language) -> bool {
    let standings = card.said.iter().map(|said| said.standing);
    let standings = standings.map(|standing| language.part(PartWords::Standing(standing)));
    let zones = card.zones.iter().flat_map(|zone| [zone.place.as_str(), zone.target.as_str()]);
    let story = card.story.iter().map(|entry| entry.what.as_str());
    let texts = [
        &card.name,
        &card.steel.name,
        &card.steel.grade,
        &card.steel.bar,
        &card.steel.origin,
        &card.kind,
        &card.target,
        &card.recipe_of,
        &card.tempering.done,
        &card.claim.paper,
        &card.notes,
    ];
    let texts = texts.into_iter().map(String::as_str).chain(zones).chain(story);
    let mut whole = texts.collect::<Vec<_>>().join("\n");
    for standing in standings {
        whole.push('\n');
        whole.push_str(&standing);
    }
    let whole = whole.to_lowercase();
    search.to_lowercase().split_whitespace().all(|word| whole.contains(word))
}

/// Puts cards in order; what is equal goes by name, then by id, so that a list never jumps.
pub fn sort<C: Borrow<Card>>(cards: &mut [C], order: Order) {
    cards.sort_by(|a, b| {
        let (a, b): (&Card, &Card) = (a.borrow(), b.borrow());
        let first = match order {
            Order::Changed => moment_ms(&b.changed).cmp(&moment_ms(&a.changed)),
            Order::Name => Ordering::Equal,
            Order::Steel => folded(&a.steel.name).cmp(&folded(&b.steel.name)),
            Order::Standing => need(a).cmp(&need(b)),
        };
        let name = || folded(&a.name).cmp(&folded(&b.name));
        first.then_with(name).then_with(|| a.id.cmp(&b.id))
    });
}

fn folded(text: &str) -> String {
    text.trim().to_lowercase()
}

/// How much a card asks for work: contradictions first, what is as wanted last.
fn need(card: &Card) -> u8 {
    urgency(standing(&card.said))
}

/// How a card stands as a whole: as that answer that asks most for work.
#[must_use]
pub fn standing(said: &[Said]) -> Standing {
    let standings = said.iter().map(|said| said.standing);
    standings.min_by_key(|standing| urgency(*standing)).unwrap_or_default()
}

const fn urgency(standing: Standing) -> u8 {
    match standing {
        Standing::Contradictory => 0,
        Standing::TooHard | Standing::TooSoft | Standing::Disagrees => 1,
        Standing::NotProved => 2,
        Standing::Measured => 3,
        Standing::Nothing => 4,
        Standing::Inside => 5,
    }
}

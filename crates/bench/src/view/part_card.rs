//! The card of the part in hand, as the page of parts shows it.

use super::parts::{line, name_of};
use super::{Clock, Problem};
use crate::card::find::standing;
use crate::card::{Card, Rest, StoryLine, facts, story_with};
use crate::state::{App, Field, Page, PartField};
use crate::tempers::parse_tempers;
use crate::words::{About, FactLabel, Language, PartWords, PartsPage, PartsSays};

/// Everything that is shown of it.
#[derive(Clone, Debug, PartialEq)]
pub struct CardView {
    /// Name.
    pub name: String,
    /// Steel and wanted hardness.
    pub line: String,
    /// How it stands.
    pub standing: String,
    /// It is invented; empty for an own part.
    pub demo: String,
    /// Heading of the story.
    pub story_title: String,
    /// What was done and found, oldest first.
    pub story: Vec<StoryRow>,
    /// Whether an entry that was removed can be put back.
    pub put_back: bool,
    /// Places that are wanted otherwise.
    pub zones: Vec<ZoneRow>,
    /// What is to be minded where it is struck; empty where it is not.
    pub struck: String,
    /// What is wrong with fields.
    pub problems: Vec<(PartField, Problem)>,
}

/// A line of the story.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StoryRow {
    /// The line.
    pub line: StoryLine,
    /// What the key says that removes it; empty where it is made of the pages.
    pub remove: String,
}

/// Facts that are changed on one page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FactGroup {
    /// Heading.
    pub title: &'static str,
    /// The page, and what the way there says; nothing for what cannot be changed.
    pub change: Option<(Page, &'static str)>,
    /// What it is about, and what the card says.
    pub rows: Vec<(String, String)>,
}

/// A place that is wanted otherwise.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ZoneRow {
    /// Place and hardness.
    pub text: String,
    /// What the key says that removes it.
    pub remove: String,
}

/// What one page says of a part: heading, the page and what the way there says, and the facts.
type Group = (PartsPage, Option<(Page, PartsPage)>, &'static [FactLabel]);

/// Where facts are changed, in the order of the work.
const GROUPS: [Group; 6] = {
    use FactLabel as F;
    use PartsPage as P;
    const STEEL: &[FactLabel] = &[F::Steel, F::Composition, F::Section, F::Kind, F::Bath, F::Air];
    const FILES: &[FactLabel] =
        &[F::Wanted, F::Files, F::Says, F::Conditions, F::OwnFiles, F::Expected];
    const TEMPER: &[FactLabel] =
        &[F::Stage, F::Tempers, F::AsQuenched, F::LookedAt, F::Typed, F::Circumstances, F::Results];
    [
        (P::Steel, Some((Page::Steel, P::ToSteel)), STEEL),
        (P::Unknown, Some((Page::Unknown, P::ToUnknown)), &[F::Seen]),
        (P::FileTest, Some((Page::FileTest, P::ToFileTest)), FILES),
        (P::Temper, Some((Page::Temper, P::ToTemper)), TEMPER),
        (P::Paper, Some((Page::Claim, P::ToClaim)), &[F::Paper, F::PaperSays]),
        (P::Recipe, None, &[F::Recipe]),
    ]
};

/// Makes the view of a card that is in hand.
#[must_use]
pub fn part_card(app: &App, card: &Card, language: Language, clock: Clock) -> CardView {
    let name = name_of(card, language);
    let zones = card.zones.iter().map(|zone| {
        let words = PartWords::Zone { place: &zone.place, target: &zone.target };
        let text = language.part(words).into_owned();
        let remove = language.parts(PartsSays::RemoveOf { what: &text });
        ZoneRow { text, remove }
    });
    // What is typed is minded before it is added.
    let typed = app.saved.part.text(PartField::ZonePlace);
    let struck = card.zones.iter().map(|zone| zone.place.as_str()).chain([typed]);
    let struck = struck.into_iter().any(|place| language.is_struck(place));
    CardView {
        line: line(card, language),
        standing: language.part(PartWords::Standing(standing(&card.said))).into_owned(),
        demo: if card.demo { language.part(PartWords::Demo).into_owned() } else { String::new() },
        story_title: language.parts(PartsSays::Story { name: &name }),
        story: told(card, language, clock),
        put_back: Rest::of(&app.saved.part).taken.is_some(),
        zones: zones.collect(),
        struck: if struck {
            language.about(About::CautionStruck).to_owned()
        } else {
            String::new()
        },
        problems: problems(app, language),
        name,
    }
}

fn told(card: &Card, language: Language, clock: Clock) -> Vec<StoryRow> {
    let lines = story_with(card, &card.said, language, super::parts::east(clock));
    let rows = lines.into_iter().map(|line| {
        let what = format!("{} {}", line.title, line.what);
        let own = line.entry.is_some();
        let remove = language.parts(PartsSays::RemoveOf { what: what.trim() });
        StoryRow { line, remove: if own { remove } else { String::new() } }
    });
    rows.collect()
}

/// Facts by the page where they are changed.
#[must_use]
pub fn fact_groups(card: &Card, language: Language) -> Vec<FactGroup> {
    let facts = facts(card, language);
    let groups = GROUPS.into_iter().map(|(title, change, labels)| {
        let own = labels.iter().filter_map(|of| facts.iter().find(|fact| fact.of == *of));
        FactGroup {
            title: language.parts_page(title),
            change: change.map(|(page, label)| (page, language.parts_page(label))),
            rows: own.map(|fact| (fact.label.clone(), fact.text.clone())).collect(),
        }
    });
    groups.filter(|group| !group.rows.is_empty()).collect()
}

fn problems(app: &App, language: Language) -> Vec<(PartField, Problem)> {
    let mut all = Vec::new();
    if let Some(Field::Part(field)) = app.session.missing {
        let empty = app.saved.part.text(field).trim().is_empty();
        let say = |label: PartsPage| language.parts_page(label).to_owned();
        if empty {
            all.push((
                field,
                Problem {
                    message: say(PartsPage::Missing(field)),
                    instead: say(PartsPage::MissingInstead(field)),
                },
            ));
        }
    }
    let field = PartField::Tempered;
    let text = app.saved.part.text(field).trim();
    let typing = app.session.active == Some(Field::Part(field));
    if !text.is_empty()
        && !typing
        && let Err(refusal) = parse_tempers(language, text, None)
    {
        all.push((field, refusal.into()));
    }
    all
}

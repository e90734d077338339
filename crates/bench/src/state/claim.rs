//! What the page of claims remembers: what the paper says, what was measured, how sure one has to be, and the claim
//! before.

use serde::{Deserialize, Serialize};

use super::part;
use super::texts::Texts;
use super::{Action, App, Field};
use crate::answer::{ReadingInput, parse_reading, understood};
use crate::card::{ClaimSheet, ReadingSheet};
use crate::words::Language;

/// A field of the page of claims.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum ClaimField {
    /// What the paper says.
    Says,
    /// The reading in hand.
    Measured,
    /// The steel that the paper names.
    Steel,
    /// A level or rule of the person's own.
    Level,
}

impl ClaimField {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::Says, Self::Measured, Self::Steel, Self::Level];

    /// Stable name for element ids.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Says => "claim-says",
            Self::Measured => "claim-measured",
            Self::Steel => "claim-steel",
            Self::Level => "claim-level",
        }
    }
}

/// The claim as it is stored: the texts of the fields in the order of [`ClaimField::ALL`], the choices, the claim
/// before in one text, then the readings that are kept.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(transparent)]
pub struct ClaimState {
    texts: Texts,
}

/// A reading as typed, with the stable name of its instrument; empty for the usual one of its scale.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct ClaimReading {
    /// Stable name of the instrument.
    pub instrument: String,
    /// As typed.
    pub text: String,
}

impl ClaimReading {
    /// As a card has it; the parts of a comparison stand one behind the other.
    pub(crate) fn of(sheet: &ReadingSheet) -> Self {
        let compared = !(sheet.known.is_empty() && sheet.on_known.is_empty());
        let text = if compared {
            [sheet.text.as_str(), &sheet.known, &sheet.on_known].join("; ")
        } else {
            sheet.text.clone()
        };
        Self { instrument: sheet.instrument.clone(), text }
    }

    /// As a question has it.
    ///
    /// # Errors
    /// A refusal when what stands before a colon is no instrument.
    pub(crate) fn input(&self, language: Language) -> Result<ReadingInput, crate::Refusal> {
        if self.instrument.is_empty() {
            return parse_reading(language, self.text.trim());
        }
        Ok(ReadingInput::written(&self.instrument, self.text.trim()))
    }

    /// Whether it says anything.
    pub(crate) fn is_empty(&self) -> bool {
        self.text.trim().is_empty()
    }
}

/// Stable names of the rules; the first is the usual one.
pub const RULES: [&str; 3] = ["", "simple", "U"];
/// Stable name of a rule of the person's own.
pub const OWN_LEVEL: &str = "own";
/// What says that the strokes of the file test count.
const COUNT: &str = "files";

/// Parts of a reading; what stands behind the first one is text.
const PARTED: char = '\t';
/// Parts of the claim before; a field of one line holds no such sign.
const LINE: char = '\n';
const INSTRUMENT: usize = ClaimField::ALL.len();
const FILES: usize = INSTRUMENT + 1;
const RULE: usize = INSTRUMENT + 2;
const PLACE: usize = INSTRUMENT + 3;
const CLAIMED: usize = INSTRUMENT + 4;
const LAST: usize = INSTRUMENT + 5;
const READINGS: usize = INSTRUMENT + 6;
/// What makes a claim: its rule and the instrument stay for the next one.
const OWN: [usize; 6] = [
    ClaimField::Says as usize,
    ClaimField::Measured as usize,
    ClaimField::Steel as usize,
    FILES,
    PLACE,
    CLAIMED,
];

impl ClaimState {
    /// The text of a field.
    #[must_use]
    pub fn text(&self, field: ClaimField) -> &str {
        self.texts.at(field as usize)
    }

    pub(crate) fn edit(&mut self, field: ClaimField, text: String) {
        self.texts.put(field as usize, text);
    }

    /// Stable name of the instrument of the reading in hand; empty for the usual one.
    #[must_use]
    pub fn instrument(&self) -> &str {
        self.texts.at(INSTRUMENT)
    }

    /// Whether the strokes of the file test count.
    #[must_use]
    pub fn files(&self) -> bool {
        !self.texts.at(FILES).is_empty()
    }

    /// Stable name of the rule; empty for the usual one.
    #[must_use]
    pub fn rule(&self) -> &str {
        self.texts.at(RULE)
    }

    /// Where it was measured; empty where that was not said.
    #[must_use]
    pub fn place(&self) -> &str {
        self.texts.at(PLACE)
    }

    /// Where the paper's number was measured; empty where that was not said.
    #[must_use]
    pub fn claimed_place(&self) -> &str {
        self.texts.at(CLAIMED)
    }

    /// The reading in hand.
    #[must_use]
    pub fn in_hand(&self) -> ClaimReading {
        ClaimReading {
            instrument: self.instrument().to_owned(),
            text: self.text(ClaimField::Measured).to_owned(),
        }
    }

    /// The readings that are kept.
    #[must_use]
    pub fn readings(&self) -> Vec<ClaimReading> {
        let read = |kept: &String| {
            let (instrument, text) = kept.split_once(PARTED).unwrap_or(("", kept));
            ClaimReading { instrument: instrument.to_owned(), text: text.to_owned() }
        };
        self.texts.from(READINGS).map(read).collect()
    }

    /// Whether nothing was said of a claim yet.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        OWN.iter().all(|&place| self.texts.at(place).is_empty())
            && self.texts.from(READINGS).next().is_none()
    }

    /// Whether a claim was put aside.
    #[must_use]
    pub fn has_last(&self) -> bool {
        !self.texts.at(LAST).is_empty()
    }

    /// Puts a claim in the place of what stands here; the rule too, as a stable name or as a level of the person's own.
    pub(crate) fn put(&mut self, claim: &ClaimSheet) {
        let ClaimSheet { paper, readings, with_files, steel, rule, place, claimed_place } = claim;
        let own = !RULES.contains(&rule.as_str());
        for (at, text) in [
            (ClaimField::Says as usize, paper.as_str()),
            (ClaimField::Measured as usize, ""),
            (ClaimField::Steel as usize, steel),
            (ClaimField::Level as usize, if own { rule } else { "" }),
            (INSTRUMENT, ""),
            (FILES, if *with_files { COUNT } else { "" }),
            (RULE, if own { OWN_LEVEL } else { rule }),
            (PLACE, place),
            (CLAIMED, claimed_place),
            (LAST, ""),
        ] {
            self.texts.put(at, text.to_owned());
        }
        self.keep(readings.iter().map(ClaimReading::of).collect());
    }

    /// The claim as a card holds it; a reading that is still typed is one of its readings.
    #[must_use]
    pub fn sheet(&self) -> ClaimSheet {
        let own = self.rule() == OWN_LEVEL;
        let typed = Some(self.in_hand()).filter(|reading| !reading.is_empty());
        let readings = self.readings().into_iter().chain(typed).map(|one| ReadingSheet {
            instrument: one.instrument,
            text: one.text,
            ..ReadingSheet::default()
        });
        ClaimSheet {
            paper: self.text(ClaimField::Says).to_owned(),
            readings: readings.collect(),
            with_files: self.files(),
            steel: self.text(ClaimField::Steel).to_owned(),
            rule: if own { self.text(ClaimField::Level) } else { self.rule() }.to_owned(),
            place: self.place().to_owned(),
            claimed_place: self.claimed_place().to_owned(),
        }
    }

    fn keep(&mut self, readings: Vec<ClaimReading>) {
        let written = readings.into_iter().map(|one| [one.instrument, one.text].join("\t"));
        self.texts.put_from(READINGS, written);
    }

    fn take_in_hand(&mut self, reading: ClaimReading) {
        self.texts.put(INSTRUMENT, reading.instrument);
        self.edit(ClaimField::Measured, reading.text);
    }
}

/// Something that happened on the page of claims.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ClaimAction {
    /// The instrument of the reading in hand, by its stable name; empty for the usual one.
    Instrument(&'static str),
    /// The strokes of the file test count, or not.
    Files(bool),
    /// How sure one has to be, by its stable name.
    Rule(&'static str),
    /// Where it was measured; the same once more takes it back.
    Place(&'static str),
    /// Where the paper's number was measured; likewise.
    ClaimedPlace(&'static str),
    /// Keeps the reading in hand, so that another can be typed.
    AddReading,
    /// Takes a kept reading back into the field; what stands there takes its place.
    TakeReading(usize),
    /// Another claim, or the last one again.
    Turn,
}

/// A change of the claim. It brings along what does it, so that only the part that makes one holds the code.
#[derive(Clone, Debug)]
pub struct ClaimChange {
    action: ClaimAction,
    does: fn(&mut App, ClaimAction),
}

impl PartialEq for ClaimChange {
    fn eq(&self, other: &Self) -> bool {
        self.action == other.action
    }
}

impl ClaimChange {
    pub(super) fn apply(self, app: &mut App) {
        (self.does)(app, self.action);
    }
}

impl From<ClaimAction> for Action {
    fn from(action: ClaimAction) -> Self {
        Self::Claim(ClaimChange { action, does: change })
    }
}

fn change(app: &mut App, action: ClaimAction) {
    if action == ClaimAction::Turn {
        part::turn_claim(app);
    }
    app.session.missing = app.saved.claim.act(action).map(Field::Claim);
}

impl ClaimState {
    /// Does what happened; a field that stands in the way is handed back, so that its error shows.
    fn act(&mut self, action: ClaimAction) -> Option<ClaimField> {
        match action {
            ClaimAction::Instrument(key) => self.texts.put(INSTRUMENT, key.to_owned()),
            ClaimAction::Files(on) => {
                self.texts.put(FILES, if on { COUNT.to_owned() } else { String::new() });
            }
            ClaimAction::Rule(key) => self.texts.put(RULE, key.to_owned()),
            ClaimAction::Place(key) => self.choose(PLACE, key),
            ClaimAction::ClaimedPlace(key) => self.choose(CLAIMED, key),
            ClaimAction::AddReading => {
                let own = self.in_hand();
                // Whether it can be read is the same in every language.
                if own.is_empty() || !readable(&own) {
                    return Some(ClaimField::Measured);
                }
                let mut readings = self.readings();
                readings.push(own);
                self.keep(readings);
                self.edit(ClaimField::Measured, String::new());
            }
            ClaimAction::TakeReading(index) => {
                let mut readings = self.readings();
                if index < readings.len() {
                    let taken = readings.remove(index);
                    let own = self.in_hand();
                    if !own.is_empty() {
                        readings.insert(index, own);
                    }
                    self.take_in_hand(taken);
                    self.keep(readings);
                }
            }
            ClaimAction::Turn => self.turn(),
        }
        None
    }

    fn choose(&mut self, place: usize, key: &str) {
        let again = self.texts.at(place) == key;
        self.texts.put(place, if again { String::new() } else { key.to_owned() });
    }

    /// Puts the claim aside for another one, or takes the last one up when nothing was said of this.
    pub(super) fn turn(&mut self) {
        let last = self.texts.at(LAST).to_owned();
        if self.is_empty() {
            let texts: Vec<String> = last.split(LINE).map(str::to_owned).collect();
            if !last.is_empty() {
                self.texts.put_from(0, texts);
            }
            return;
        }
        self.texts.put(LAST, String::new());
        let whole: Vec<String> = self.texts.from(0).cloned().collect();
        for place in OWN {
            self.texts.put(place, String::new());
        }
        self.texts.put(LAST, whole.join("\n"));
        self.texts.put_from(READINGS, None);
    }
}

/// Whether numbers stand in a reading.
fn readable(reading: &ClaimReading) -> bool {
    let language = Language::default();
    reading.input(language).is_ok_and(|input| understood(language, &input).is_ok())
}

//! Between the pages and the card.

use serde::{Deserialize, Serialize};
use time::OffsetDateTime;
use time::format_description::well_known::Rfc3339;

use super::{
    BathSheet, Card, ClaimSheet, ConditionsSheet, ExpectedSheet, FileSheet, ReadingSheet, Rest,
    ResultSheet, SectionSheet, SteelSheet, TemperSheet,
};
use crate::answer::{ConditionsInput, ReadingInput};
use crate::section::{SectionInput, pair};
use crate::state::{
    ClaimState, FileTestState, HandChoice, OwnResult, PartField, PartStage, Planner, Saved, Seen,
    ShapeKind, SteelState, Strokes, TemperField, TemperState, UnknownField, UnknownState,
    list_of_grades,
};

/// A moment of the device's clock, in milliseconds, as a card writes it: `2026-11-12T14:03:00Z`. Empty for a moment that
/// no calendar has.
#[must_use]
pub fn moment(ms: i64) -> String {
    OffsetDateTime::from_unix_timestamp(ms.div_euclid(1000))
        .ok()
        .and_then(|moment| moment.format(&Rfc3339).ok())
        .unwrap_or_default()
}

/// The moment that a card writes, in milliseconds.
#[must_use]
pub fn moment_ms(text: &str) -> Option<i64> {
    let moment = OffsetDateTime::parse(text, &Rfc3339).ok()?;
    moment.unix_timestamp().checked_mul(1000)
}

/// What stands on the pages of a part, whole: how the quick look-up is put aside while a part is in hand.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(default)]
pub struct Sheets {
    file_test: FileTestState,
    steel: SteelState,
    temper: TemperState,
    unknown: UnknownState,
    claim: ClaimState,
}

impl Sheets {
    /// What stands on the pages now.
    #[must_use]
    pub fn of(saved: &Saved) -> Self {
        Self {
            file_test: saved.file_test.clone(),
            steel: saved.steel.clone(),
            temper: saved.temper.clone(),
            unknown: saved.unknown.clone(),
            claim: saved.claim.clone(),
        }
    }

    /// Pages without a part; the files, the person's hand and what was proved of them stay.
    #[must_use]
    pub fn empty(saved: &Saved) -> Self {
        let mut file_test = saved.file_test.clone();
        file_test.fresh();
        file_test.conditions = ConditionsInput::default();
        file_test.prior_on = false;
        file_test.prior_sd_text = FileTestState::default().prior_sd_text;
        for text in [
            &mut file_test.target_text,
            &mut file_test.prior_mean_text,
            &mut file_test.reading_text,
        ] {
            text.clear();
        }
        Self { file_test, ..Self::default() }
    }

    /// Puts them on the pages. What belongs to the shop and not to a part stays as it is: own bars, checks of the oven,
    /// own results.
    pub fn put(self, saved: &mut Saved) {
        let Self { file_test, mut steel, mut temper, unknown, claim } = self;
        let SteelState { kept, checks, dial, truth, .. } = &mut saved.steel;
        steel.kept = std::mem::take(kept);
        steel.checks = std::mem::take(checks);
        (steel.dial, steel.truth) = (std::mem::take(dial), std::mem::take(truth));
        let Planner { results, by_the_book, .. } = saved.temper.planner();
        temper.keep(Planner { results, by_the_book, ..temper.planner() });
        (saved.file_test, saved.steel) = (file_test, steel);
        (saved.temper, saved.unknown, saved.claim) = (temper, unknown, claim);
    }
}

impl Card {
    /// The fields of the part that wait for a key; a reading of the file test comes after them.
    pub(super) const BEGUN: [PartField; 5] = [
        PartField::ZonePlace,
        PartField::ZoneTarget,
        PartField::Remark,
        PartField::Hardened,
        PartField::Tempered,
    ];

    /// The card of the part in hand as it stands; of the quick look-up a card without an id.
    ///
    /// What the tool says of it, when it was changed and how often is not among it.
    #[must_use]
    pub fn of(saved: &Saved) -> Self {
        let rest = Rest::of(&saved.part);
        let text = |field| saved.part.text(field).to_owned();
        let Saved { file_test, steel, temper, unknown, claim, .. } = saved;
        let target = if file_test.target_text.trim().is_empty() {
            &steel.target
        } else {
            &file_test.target_text
        };
        let reading = file_test.reading_text.clone();
        let begun: Vec<String> = Self::BEGUN.map(text).into_iter().chain([reading]).collect();
        Self {
            id: saved.part.id().to_owned(),
            name: text(PartField::Name),
            created: rest.created,
            demo: rest.demo,
            recipe_of: rest.recipe_of,
            recipe: rest.recipe,
            steel: SteelSheet {
                name: steel.query.clone(),
                grade: steel.picked.clone().unwrap_or_default(),
                composition: steel.own.clone(),
                bar: steel.own_name.clone(),
                by_composition: steel.by_composition,
                origin: text(PartField::Origin),
            },
            section: SectionSheet {
                shape: steel.shape,
                size: steel.size.clone(),
                second: steel.second.clone(),
                length: steel.length.clone(),
            },
            kind: steel.kind.clone(),
            target: target.clone(),
            zones: rest.zones,
            bath: BathSheet {
                medium: steel.medium.clone(),
                movement: steel.movement.clone(),
                litres: steel.litres.clone(),
                temperature: steel.bath_temperature.clone(),
                flash_point: steel.flash_point.clone(),
                protection: steel.protection.clone(),
            },
            tempering: tempering(temper, rest.results),
            files: FileSheet::of(file_test),
            claim: claim.sheet(),
            seen: UnknownField::ALL.map(|field| unknown.now.text(field).to_owned()).to_vec(),
            notes: text(PartField::Notes),
            story: rest.story,
            photos: rest.photos,
            begun: if begun.iter().all(String::is_empty) { Vec::new() } else { begun },
            ..Self::default()
        }
    }

    /// Takes the part in hand: puts the card on the pages.
    pub fn put(&self, saved: &mut Saved) {
        let mut sheets = Sheets::empty(saved);
        self.files.put(&mut sheets.file_test);
        sheets.file_test.target_text.clone_from(&self.target);
        let begun = |place: usize| self.begun.get(place).cloned().unwrap_or_default();
        sheets.file_test.reading_text = begun(Self::BEGUN.len());
        sheets.steel = self.steel_state();
        self.tempering.put(&mut sheets.temper);
        let mut seen = Seen::default();
        for (field, answer) in UnknownField::ALL.into_iter().zip(&self.seen) {
            seen.edit(field, answer.clone());
        }
        sheets.unknown.now = seen;
        sheets.claim.put(&self.claim);
        sheets.put(saved);
        // What was measured on this part teaches the next plan, wherever the card comes from.
        let mut planner = saved.temper.planner();
        for result in &self.tempering.results {
            let own = OwnResult::from(result.clone());
            if !planner.results.contains(&own) {
                planner.results.push(own);
            }
        }
        saved.temper.keep(planner);
        let part = &mut saved.part;
        part.name_it(&self.id);
        part.edit(PartField::Name, self.name.clone());
        part.edit(PartField::Origin, self.steel.origin.clone());
        part.edit(PartField::Notes, self.notes.clone());
        for (place, field) in Self::BEGUN.into_iter().enumerate() {
            part.edit(field, begun(place));
        }
        let rest = Rest {
            created: self.created.clone(),
            demo: self.demo,
            recipe_of: self.recipe_of.clone(),
            recipe: self.recipe.clone(),
            zones: self.zones.clone(),
            results: self.tempering.results.clone(),
            story: self.story.clone(),
            photos: self.photos.clone(),
            taken: None,
        };
        rest.keep(part);
    }

    /// A new part that is to be made like this one: steel, section, wanted hardness, bath and what was done as the
    /// recipe; nothing that was found on this one.
    #[must_use]
    pub fn as_recipe(&self, id: &str, name: &str, now_ms: i64) -> Self {
        let now = moment(now_ms);
        Self {
            id: id.to_owned(),
            name: name.to_owned(),
            created: now.clone(),
            changed: now,
            revision: 0,
            demo: false,
            recipe_of: self.name.clone(),
            recipe: self.story.clone(),
            tempering: TemperSheet {
                stage: PartStage::Bought.key().to_owned(),
                at: self.tempering.at.clone(),
                held: self.tempering.held.clone(),
                results: Vec::new(),
                ..TemperSheet::default()
            },
            files: FileSheet {
                strokes: Vec::new(),
                readings: Vec::new(),
                spot: 1,
                conditions: ConditionsSheet::default(),
                expected: ExpectedSheet::default(),
                ..self.files.clone()
            },
            claim: ClaimSheet::default(),
            said: Vec::new(),
            story: Vec::new(),
            photos: Vec::new(),
            begun: Vec::new(),
            ..self.clone()
        }
    }

    fn steel_state(&self) -> SteelState {
        let Self { steel, section, bath, .. } = self;
        let or = |text: &str, usual: String| if text.is_empty() { usual } else { text.to_owned() };
        let usual = SteelState::default();
        SteelState {
            query: steel.name.clone(),
            picked: Some(steel.grade.clone()).filter(|grade| !grade.is_empty()),
            own: steel.composition.clone(),
            own_name: steel.bar.clone(),
            by_composition: steel.by_composition,
            shape: section.shape,
            size: section.size.clone(),
            second: section.second.clone(),
            length: section.length.clone(),
            medium: or(&bath.medium, usual.medium),
            movement: or(&bath.movement, usual.movement),
            litres: bath.litres.clone(),
            bath_temperature: bath.temperature.clone(),
            flash_point: bath.flash_point.clone(),
            protection: or(&bath.protection, usual.protection),
            target: self.target.clone(),
            kind: self.kind.clone(),
            kept: Vec::new(),
            checks: Vec::new(),
            dial: String::new(),
            truth: String::new(),
        }
    }
}

fn tempering(state: &TemperState, results: Vec<ResultSheet>) -> TemperSheet {
    let text = |field| state.text(field).to_owned();
    let planner = state.planner();
    TemperSheet {
        stage: planner.stage.key().to_owned(),
        done: text(TemperField::Done),
        as_quenched: text(TemperField::AsQuenched),
        at: text(TemperField::At),
        held: text(TemperField::Held),
        at_size: planner.at_size,
        overheated: planner.overheated,
        hurried: planner.hurried,
        measured: text(TemperField::Measured),
        after: text(TemperField::After),
        results,
    }
}

impl TemperSheet {
    fn put(&self, state: &mut TemperState) {
        for (field, text) in [
            (TemperField::Done, &self.done),
            (TemperField::AsQuenched, &self.as_quenched),
            (TemperField::At, &self.at),
            (TemperField::Held, &self.held),
            (TemperField::Measured, &self.measured),
            (TemperField::After, &self.after),
        ] {
            state.edit(field, text.clone());
        }
        let stage = PartStage::ALL.into_iter().find(|stage| stage.key() == self.stage);
        state.keep(Planner {
            stage: stage.unwrap_or_default(),
            at_size: self.at_size,
            overheated: self.overheated,
            hurried: self.hurried,
            ..Planner::default()
        });
    }
}

impl From<&SectionInput> for SectionSheet {
    /// What was written; of two sizes in one text each for itself.
    fn from(input: &SectionInput) -> Self {
        let SectionInput { round, tube, plate, square, hex, flat, length } = input;
        let (shape, text) = [
            (ShapeKind::Round, round),
            (ShapeKind::Tube, tube),
            (ShapeKind::Plate, plate),
            (ShapeKind::Square, square),
            (ShapeKind::Hexagon, hex),
            (ShapeKind::Flat, flat),
        ]
        .into_iter()
        .find_map(|(shape, text)| Some((shape, text.as_deref()?)))
        .unwrap_or_default();
        let (first, second) =
            if shape.has_second() { pair(text).unwrap_or((text, "")) } else { (text, "") };
        // Of a flat the width is written first, and the thickness rules.
        let (size, second) =
            if shape == ShapeKind::Flat { (second, first) } else { (first, second) };
        Self {
            shape,
            size: size.trim().to_owned(),
            second: second.trim().to_owned(),
            length: length.clone().unwrap_or_default(),
        }
    }
}

impl From<ResultSheet> for OwnResult {
    fn from(ResultSheet { steel, hardness, temper }: ResultSheet) -> Self {
        Self { steel, hardness, temper }
    }
}

impl From<OwnResult> for ResultSheet {
    fn from(OwnResult { steel, hardness, temper }: OwnResult) -> Self {
        Self { steel, hardness, temper }
    }
}

impl FileSheet {
    /// The file test of the page.
    #[must_use]
    pub fn of(state: &FileTestState) -> Self {
        let conditions = state.conditions;
        Self {
            set: state.grades_text.clone(),
            tolerance: state.tolerance_text.clone(),
            hand: state.hand.key().to_owned(),
            strokes: state.now.strokes.clone(),
            proofs: state.now.proofs.clone(),
            readings: state.now.readings.iter().cloned().map(ReadingSheet::from).collect(),
            spot: state.now.spot,
            conditions: ConditionsSheet {
                skin_ground: conditions.skin_ground,
                edge: conditions.edge,
                finish_differs: conditions.finish_differs,
                carbide_rich: conditions.carbide_rich,
            },
            expected: ExpectedSheet {
                on: state.prior_on,
                mean: state.prior_mean_text.clone(),
                sd: state.prior_sd_text.clone(),
            },
        }
    }

    /// Puts it on the page. What was found goes by the files and the hand that found it; where nothing was, those of the
    /// page stay, because they are the person's own.
    pub fn put(&self, state: &mut FileTestState) {
        let used = !(self.strokes.is_empty() && self.proofs.is_empty());
        if let Some(mut grades) = list_of_grades(&self.set).filter(|_| used) {
            biteband_quantity::sort_by_number(&mut grades, |grade| -*grade);
            state.grades = grades;
            state.grades_text.clone_from(&self.set);
            state.tolerance_text.clone_from(&self.tolerance);
        }
        let hand = HandChoice::ALL.into_iter().find(|hand| used && hand.key() == self.hand);
        state.hand = hand.unwrap_or(state.hand);
        state.now = Strokes {
            strokes: self.strokes.clone(),
            proofs: self.proofs.clone(),
            readings: self.readings.iter().cloned().map(ReadingInput::from).collect(),
            spot: self.spot.max(1),
        };
        state.past = Vec::new();
        state.conditions = ConditionsInput {
            skin_ground: self.conditions.skin_ground,
            edge: self.conditions.edge,
            finish_differs: self.conditions.finish_differs,
            carbide_rich: self.conditions.carbide_rich,
        };
        state.prior_on = self.expected.on;
        state.prior_mean_text.clone_from(&self.expected.mean);
        if !self.expected.sd.is_empty() {
            state.prior_sd_text.clone_from(&self.expected.sd);
        }
    }

    /// Whether nothing was found on the part.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.strokes.is_empty() && self.readings.is_empty()
    }

    /// Whether both found the same.
    #[must_use]
    pub fn same(&self, other: &Self) -> bool {
        self.strokes == other.strokes && self.readings == other.readings
    }
}

impl From<ReadingInput> for ReadingSheet {
    fn from(one: ReadingInput) -> Self {
        Self {
            instrument: one.instrument.unwrap_or_default(),
            text: one.text,
            known: one.known.unwrap_or_default(),
            on_known: one.on_known.unwrap_or_default(),
        }
    }
}

impl From<ReadingSheet> for ReadingInput {
    fn from(one: ReadingSheet) -> Self {
        let some = |text: String| Some(text).filter(|text| !text.is_empty());
        Self {
            instrument: some(one.instrument),
            text: one.text,
            known: some(one.known),
            on_known: some(one.on_known),
        }
    }
}

//! The parts of an invented boatyard, the Saltmarsh Slip, for the demonstration.
//!
//! What was done and found is made up; what the tool says of it is worked out when the demonstration is made, by the same
//! functions as for any part.
//!
//! ```
//! use biteband_bench::card::demo;
//! use biteband_bench::words::Language;
//! let parts = demo::parts(Language::English);
//! assert!(parts.len() == 7 && parts.iter().all(|card| card.demo && card.id.starts_with("demo-")));
//! ```

use super::{
    BathSheet, Card, ClaimSheet, ConditionsSheet, Entry, EntryKind, FileSheet, ReadingSheet,
    SectionSheet, SteelSheet, TemperSheet, Zone, entry_of_files, said_of_card,
};
use crate::answer::StrokeInput;
use crate::state::{App, FileTestState, PartStage, ShapeKind, UnknownField};
use crate::words::Language;

/// The seven parts.
#[must_use]
pub fn parts(language: Language) -> Vec<Card> {
    let all = [
        pawl(language),
        drift(language),
        bushing(language),
        screw(language),
        shaft_bar(),
        spring(language),
        axle(),
    ];
    let done = all.map(|Making { mut card, at }| {
        card.changed = at;
        card.said = said_of_card(&card, language);
        card
    });
    done.to_vec()
}

/// A card in the making, and when it was changed last.
struct Making {
    card: Card,
    at: String,
}

/// A part that was begun at a moment.
fn begin(at: &str, card: Card) -> Making {
    let card = Card { created: at.to_owned(), revision: 1, demo: true, ..card };
    Making { card, at: at.to_owned() }
}

impl Making {
    /// What was found with files, the skin ground off.
    fn stroke(mut self, strokes: &[(f64, &str)], at: &str) -> Self {
        self.card.files.conditions.skin_ground = Some(true);
        self.card.files.strokes.extend(strokes.iter().map(|(file, outcome)| StrokeInput {
            file: *file,
            outcome: (*outcome).to_owned(),
            spot: Some(1),
        }));
        self.changed(at)
    }

    /// What was found before a heat becomes history, with what the tool says of it.
    fn heat(mut self, language: Language, kind: EntryKind, what: &str, at: &str) -> Self {
        let mut app = App::default();
        self.card.put(&mut app.saved);
        let found = entry_of_files(&app, language);
        self.card.story.extend(found.map(|entry| Entry { at: self.at.clone(), ..entry }));
        self.card.files = files();
        let what = what.to_owned();
        self.card.story.push(Entry { at: at.to_owned(), kind, what, ..Entry::default() });
        self.changed(at)
    }

    fn hardened(mut self, language: Language, what: &str, at: &str) -> Self {
        self = self.heat(language, EntryKind::Hardened, what, at);
        PartStage::Quenched.key().clone_into(&mut self.card.tempering.stage);
        self
    }

    fn tempered(mut self, language: Language, what: &str, at: &str) -> Self {
        self = self.heat(language, EntryKind::Tempered, what, at);
        let tempering = &mut self.card.tempering;
        PartStage::Tempered.key().clone_into(&mut tempering.stage);
        if !tempering.done.is_empty() {
            tempering.done.push_str(", ");
        }
        tempering.done.push_str(what);
        self
    }

    fn remark(mut self, what: &str, at: &str) -> Self {
        let what = what.to_owned();
        self.card.story.push(Entry { at: at.to_owned(), what, ..Entry::default() });
        self.changed(at)
    }

    fn changed(mut self, at: &str) -> Self {
        at.clone_into(&mut self.at);
        self.card.revision += 1;
        self
    }
}

fn steel(name: &str, origin: &str) -> SteelSheet {
    SteelSheet { name: name.to_owned(), origin: origin.to_owned(), ..SteelSheet::default() }
}

fn section(shape: ShapeKind, size: &str, second: &str, length: &str) -> SectionSheet {
    let [size, second, length] = [size, second, length].map(str::to_owned);
    SectionSheet { shape, size, second, length }
}

fn bath(medium: &str, movement: &str, litres: &str, temperature: &str) -> BathSheet {
    let [medium, movement, litres, temperature] =
        [medium, movement, litres, temperature].map(str::to_owned);
    BathSheet { medium, movement, litres, temperature, ..BathSheet::default() }
}

fn files() -> FileSheet {
    FileSheet::of(&FileTestState::default())
}

fn bought() -> TemperSheet {
    TemperSheet { stage: PartStage::Bought.key().to_owned(), ..TemperSheet::default() }
}

fn pawl(language: Language) -> Making {
    let card = Card {
        id: "demo-capstan-pawl".into(),
        name: "Capstan pawl".into(),
        steel: steel("4140", "offcut from bar 7"),
        section: section(ShapeKind::Round, "50 mm", "", "80 mm"),
        kind: "pawl".into(),
        target: "50-54 HRC".into(),
        bath: bath("oil", "good", "14 L", "35 °C"),
        tempering: bought(),
        files: files(),
        notes: "Chamfer the nose before hardening. Fit to the wheel last.".into(),
        ..Card::default()
    };
    begin("2026-11-10T08:10:00Z", card)
        .hardened(language, "855 °C, 40 min at heat, oil 14 L at 35 °C", "2026-11-10T13:40:00Z")
        .stroke(&[(55.0, "skates"), (55.0, "skates"), (60.0, "bites")], "2026-11-10T15:05:00Z")
        .tempered(language, "205 °C / 2 h", "2026-11-11T09:30:00Z")
        .stroke(
            &[(50.0, "skates"), (50.0, "skates"), (55.0, "bites"), (55.0, "bites")],
            "2026-11-12T14:03:00Z",
        )
}

fn drift(language: Language) -> Making {
    let zone = Zone { place: "struck end".into(), target: "45 HRC max".into() };
    let card = Card {
        id: "demo-bush-drift".into(),
        name: "Stern-bush drift".into(),
        steel: steel("W1", "new bar, marked by the merchant"),
        section: section(ShapeKind::Round, "30 mm", "", "160 mm"),
        kind: "drift".into(),
        target: "52 HRC min".into(),
        zones: vec![zone],
        bath: bath("water", "good", "20 L", "20 °C"),
        tempering: bought(),
        files: files(),
        notes: "The end that is hit must stay softer than the hammer.".into(),
        ..Card::default()
    };
    begin("2026-10-19T07:55:00Z", card)
        .hardened(
            language,
            "790 °C, 20 min at heat, nose 60 mm deep in water of 20 °C",
            "2026-10-19T10:20:00Z",
        )
        .stroke(&[(60.0, "skates"), (65.0, "slight")], "2026-10-19T11:15:00Z")
        .tempered(language, "260 °C / 1 h", "2026-10-19T14:00:00Z")
        .remark(
            "Struck end drawn back with the torch, nose standing in water: the 40 skates there, the 45 bites.",
            "2026-10-20T08:30:00Z",
        )
        .stroke(
            &[(50.0, "skates"), (55.0, "skates"), (55.0, "skates"), (60.0, "bites")],
            "2026-10-20T09:10:00Z",
        )
}

fn bushing(language: Language) -> Making {
    let card = Card {
        id: "demo-jig-bushing".into(),
        name: "Drill-jig bushing".into(),
        steel: steel("O1", "ground flat stock, turned"),
        section: section(ShapeKind::Tube, "22 mm", "12 mm", "20 mm"),
        kind: "drill bushing".into(),
        target: "58-60 HRC".into(),
        bath: bath("oil", "mild", "6 L", "40 °C"),
        tempering: bought(),
        files: files(),
        notes: "Leave 0.2 mm in the bore for lapping.".into(),
        ..Card::default()
    };
    let mut made = begin("2026-11-02T08:00:00Z", card)
        .hardened(language, "800 °C, 20 min at heat, oil 6 L at 40 °C", "2026-11-02T11:25:00Z")
        .stroke(&[(60.0, "skates"), (65.0, "skates")], "2026-11-02T12:10:00Z")
        .tempered(language, "2x 215 °C / 1 h", "2026-11-02T16:30:00Z")
        .stroke(&[(55.0, "skates"), (60.0, "slight"), (65.0, "bites")], "2026-11-03T09:20:00Z");
    made.card.files.readings = vec![ReadingSheet {
        instrument: "bench-rockwell-verified".into(),
        text: "59, 59.5, 59 HRC".into(),
        ..ReadingSheet::default()
    }];
    made
}

fn screw(language: Language) -> Making {
    let card = Card {
        id: "demo-puller-screw".into(),
        name: "Prop-puller screw".into(),
        steel: steel("4340", "bar from the rack, end painted"),
        section: section(ShapeKind::Round, "36 mm", "", "220 mm"),
        kind: "puller screw".into(),
        target: "38-42 HRC".into(),
        bath: bath("oil", "moderate", "20 L", "40 °C"),
        tempering: bought(),
        files: files(),
        notes: "Cut the thread after tempering.".into(),
        ..Card::default()
    };
    begin("2026-09-14T07:40:00Z", card)
        .hardened(language, "840 °C, 45 min at heat, oil 20 L at 40 °C", "2026-09-14T13:10:00Z")
        .stroke(&[(50.0, "skates"), (55.0, "bites")], "2026-09-14T15:00:00Z")
        .tempered(language, "480 °C / 2 h", "2026-09-15T10:00:00Z")
        .stroke(&[(45.0, "skates"), (45.0, "skates"), (50.0, "bites")], "2026-09-15T14:45:00Z")
}

fn shaft_bar() -> Making {
    let reading = ReadingSheet {
        instrument: "brinell-scope".into(),
        text: "288, 292 HBW".into(),
        ..ReadingSheet::default()
    };
    let card = Card {
        id: "demo-shaft-bar".into(),
        name: "Shaft bar, bought pre-hard".into(),
        steel: steel("4140", "from the merchant, with a paper"),
        section: section(ShapeKind::Round, "60 mm", "", "1200 mm"),
        kind: "shaft".into(),
        tempering: bought(),
        files: files(),
        claim: ClaimSheet {
            paper: "28-32 HRC".into(),
            readings: vec![reading],
            place: "skin".into(),
            ..ClaimSheet::default()
        },
        notes: "Do not harden it to find out.".into(),
        ..Card::default()
    };
    begin("2026-10-26T09:00:00Z", card).remark(
        "Two Brinell marks on a flat ground 0.8 mm deep, read with the scope.",
        "2026-10-28T10:30:00Z",
    )
}

fn spring(language: Language) -> Making {
    let card = Card {
        id: "demo-latch-spring".into(),
        name: "Latch spring".into(),
        steel: steel("1075", "strip, annealed"),
        section: section(ShapeKind::Flat, "1.6 mm", "20 mm", "90 mm"),
        kind: "spring".into(),
        target: "44-48 HRC".into(),
        bath: bath("vegetable_oil", "mild", "4 L", "45 °C"),
        tempering: bought(),
        files: files(),
        notes: "Three of them; this is the first.".into(),
        ..Card::default()
    };
    let mut made = begin("2026-08-21T08:20:00Z", card)
        .hardened(language, "815 °C, 5 min at heat, rape oil 4 L at 45 °C", "2026-08-21T10:00:00Z")
        .stroke(&[(45.0, "bites"), (50.0, "skates"), (55.0, "skates")], "2026-08-21T10:50:00Z");
    // Scale still on it: the files contradict each other.
    made.card.files.conditions =
        ConditionsSheet { skin_ground: Some(false), ..ConditionsSheet::default() };
    made
}

fn axle() -> Making {
    let seen = UnknownField::ALL.map(|field| match field {
        UnknownField::Magnet => "sticks",
        UnknownField::Spark => "forks",
        UnknownField::Found => "bites",
        UnknownField::Oil => "50-55 HRC",
        UnknownField::Skin | UnknownField::Snap | UnknownField::Water => "",
    });
    let card = Card {
        id: "demo-unknown-axle".into(),
        name: "Axle of unknown steel".into(),
        steel: steel("", "old trailer axle, from the heap"),
        section: section(ShapeKind::Round, "40 mm", "", "600 mm"),
        bath: bath("oil", "mild", "14 L", "30 °C"),
        tempering: bought(),
        files: files(),
        seen: seen.map(str::to_owned).to_vec(),
        notes: "Wanted for a set of jaws, if it hardens.".into(),
        ..Card::default()
    };
    begin("2026-07-04T09:15:00Z", card).remark(
        "A coupon of 12 mm, 850 °C and oil: the 50 skates, the 55 bites.",
        "2026-07-04T15:40:00Z",
    )
}

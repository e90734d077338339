//! English for the page of parts.

use super::part_english::MONTHS;
use super::{PartsPage, PartsSays};
use crate::card::find::Order;
use crate::card::merge::Choice;
use crate::state::{PartField, PartNotice};

#[expect(clippy::too_many_lines, reason = "one arm for each label is the point of the list")]
pub(super) const fn label(label: PartsPage) -> &'static str {
    use PartsPage as P;
    match label {
        P::List => "Parts",
        P::Choose => "Choose a part",
        P::OrderTitle => "In order of",
        P::Sort(Order::Changed) => "last change",
        P::Sort(Order::Name) => "name",
        P::Sort(Order::Steel) => "steel",
        P::Sort(Order::Standing) => "what needs work",
        P::Empty => {
            "No parts yet. A part keeps on one card what you set, file, heat and note on every page, so that you find it again next year."
        }
        P::NoneFound => "No part holds these words.",
        P::InHand => "in hand",
        P::Demo => "demonstration",
        P::New => "New part",
        P::Begin => "Make what stands on the pages a part",
        P::PutAway => "Put away",
        P::All => "All parts",
        P::Field(field) => field_label(field),
        P::Hint(field) => field_hint(field),
        P::Missing(field) => missing(field),
        P::MissingInstead(field) => missing_instead(field),
        P::AddZone => "Add this place",
        P::AddRemark => "Add the remark",
        P::AddHardened => "It was hardened",
        P::AddTempered => "It was tempered",
        P::StruckEnd => "struck end",
        P::StruckTarget => "45 HRC max",
        P::StruckKey => "Struck end: 45 HRC at most",
        P::Zones => "Places that are wanted otherwise",
        P::ZonesWhy => "The rest of the part is wanted as the target on the file test says.",
        P::AddTitle => "It was heated",
        P::Facts => "What the card holds",
        P::ToSteel => "Change it on Steel",
        P::ToFileTest => "Change it on File test",
        P::ToTemper => "Change it on Temper",
        P::ToUnknown => "Change it on Unknown",
        P::ToClaim => "Change it on Claim",
        P::Steel => "Steel and bath",
        P::FileTest => "File test",
        P::Temper => "Tempering",
        P::Unknown => "Unknown bar",
        P::Paper => "Its paper",
        P::Recipe => "Its recipe",
        P::Remove => "Remove",
        P::PutBack => "Put back what was removed",
        P::Today => "What this version says",
        P::Tidy => "Remove entries",
        P::Close => "Close",
        P::Photos => "Photos",
        P::TakePhoto => "Add a photo",
        P::PhotoText => "What it shows",
        P::PhotoHint => {
            "Made small (1280 pixels at most) and kept on this device; the place where it was taken is not kept."
        }
        P::PhotoUnread => {
            "This file could not be read as a picture. JPEG, PNG and WebP work everywhere."
        }
        P::PhotosFull => "12 photos are all that one card holds. Remove one to add another.",
        P::PhotoTooLate => {
            "Another part was taken in hand before the photo was ready, so it was not added. Choose it again for the part that it shows."
        }
        P::PhotoGone => "The photo was removed.",
        P::PhotoMissing => "This photo is not on this device.",
        P::Print => "Print",
        P::Send => "Send",
        P::SendText => "The card as a text",
        P::Copied => "The text is copied. Paste it where you want to send it.",
        P::NotCopied => "This browser did not copy it. Select the text below and copy it by hand.",
        P::UseAsRecipe => "Use as recipe",
        P::RecipeMade => {
            "A new part with this one's steel, section, bath and target is in hand; what was done is its recipe."
        }
        P::Compare => "Compare",
        P::CompareWith => "Compare with",
        P::CompareNone => "choose a part",
        P::CompareEnd => "Close the comparison",
        P::Differs => "differs",
        P::Same => "the same",
        P::Delete => "Delete this part",
        P::ForGood => "Remove for good",
        P::ForGoodAsk => {
            "Nothing brings it back then, not even an import of an older file. Remove it?"
        }
        P::Keep => "Keep it",
        P::Undo => "Undo",
        P::Dismiss => "OK",
        P::Deleted => "Deleted parts",
        P::Back => "Put back",
        P::BackHeld => {
            "This part stands in the list already, so the deleted one stays where it is. Delete the other one first to put this one in its place."
        }
        P::Damaged => "A card that cannot be read",
        P::DamagedWhy => {
            "What is stored of it is no card any more. It is kept as it was found; save it as a file and look whether a text editor shows something worth having."
        }
        P::NewerWhy => {
            "A newer version of Biteband wrote it. It is kept as it is; that version reads it again."
        }
        P::Stored => "Show what is stored",
        P::SaveText => "Save it as a file",
        P::Files => "To a file and back",
        P::ExportAll => "Export all parts",
        P::ExportThis => "Export this part",
        P::Csv => "Results as a table (CSV)",
        P::Import => "Import a file of parts",
        P::ImportHint => {
            "You see what it would do first. Nothing of yours is replaced without asking."
        }
        P::ImportTitle => "What this file would do",
        P::Cancel => "Cancel",
        P::Nothing => "Everything in this file is here already. There is nothing to do.",
        P::Added => "New here: added",
        P::Raised => "The file holds all of yours and more: brought up to it",
        P::Pictures => "Pictures that are lost here: brought back",
        P::Old => "Yours holds all of the file's and more: left as it is",
        P::There => "The same here: left as it is",
        P::Conflicts => "Both hold something the other lacks: your choice",
        P::Mine => "Here",
        P::Theirs => "In the file",
        P::Pick(Choice::KeepBoth) => "keep both",
        P::Pick(Choice::KeepMine) => "keep mine",
        P::Pick(Choice::TakeTheirs) => "take the file's",
        P::UndoImport => "Undo the import",
        P::ChangedMeanwhile => {
            "A part was changed meanwhile. Look once more what the import would do; nothing was changed yet."
        }
        P::NotHandedOut => "This browser did not take the file. Nothing was changed here.",
        P::FileUnread => "The file could not be opened.",
        P::FileUnreadInstead => {
            "Copy it to this device first, then choose it again. Nothing was changed."
        }
        P::Promised => {
            "This browser promised to keep what is stored here, even when the device gets full."
        }
        P::NotPromised => {
            "This browser did not promise to keep what is stored here: export now and then."
        }
        P::OnlyMemory => {
            "Nothing can be stored on this device now: parts last until this page is closed. Export them before."
        }
        P::NotStored => {
            "It could not be stored; nothing was changed. Free some space, or export the parts."
        }
        P::ShowDemo => "Show the demonstration parts",
        P::DemoWhy => {
            "Seven invented parts of a boatyard shop, to look around. They go with one tap."
        }
        P::RemoveDemo => "Remove the demonstration parts",
        P::DemoGone => "The demonstration parts are gone.",
        P::Told(notice) => told(notice),
    }
}

const fn field_label(field: PartField) -> &'static str {
    match field {
        PartField::Name => "Name of the part",
        PartField::Origin => "Where its steel is from",
        PartField::Notes => "Notes",
        PartField::ZonePlace => "Place",
        PartField::ZoneTarget => "Wanted there",
        PartField::Remark => "Remark",
        PartField::Hardened => "Hardened",
        PartField::Tempered => "Tempered",
        PartField::Search => "Look for",
    }
}

const fn field_hint(field: PartField) -> &'static str {
    match field {
        PartField::Name => "As you call it in the shop.",
        PartField::Origin => "Bar, offcut, supplier, heat number.",
        PartField::Notes => "Whatever you want to know next time.",
        PartField::ZonePlace => "Struck end, edge, nose.",
        PartField::ZoneTarget => "45 HRC max, 30-35 HRC, or in words.",
        PartField::Remark => "What you saw or did; it gets today's date.",
        PartField::Hardened => {
            "In words: 855 °C, 40 min at heat, oil. Tempers before it no longer count, and the file test starts anew."
        }
        PartField::Tempered => {
            "With units, as the oven's dial showed it: 205 °C / 2 h. The file test starts anew; what it said stays in the story."
        }
        PartField::Search => "Name, steel, a word of the notes or the story.",
    }
}

const fn missing(field: PartField) -> &'static str {
    match field {
        PartField::ZonePlace => "No place is named.",
        PartField::ZoneTarget => "It is not said how hard it is wanted there.",
        PartField::Hardened => "It is not said how it was hardened.",
        PartField::Tempered => "No temper is typed.",
        _ => "Nothing is typed.",
    }
}

const fn missing_instead(field: PartField) -> &'static str {
    match field {
        PartField::ZonePlace => "Type where: struck end, edge, nose.",
        PartField::ZoneTarget => "Type a hardness, or words: 45 HRC max, soft.",
        PartField::Hardened => "Type heat, time and bath as far as you know them.",
        PartField::Tempered => "Type temperature and time: 205 °C / 2 h.",
        _ => "Type it first, then press the key.",
    }
}

const fn told(notice: PartNotice) -> &'static str {
    match notice {
        PartNotice::Forked => {
            "Another tab changed this part too. What you did here goes on as a second part; the other one is in the list."
        }
        PartNotice::NotWritten => {
            "The card could not be stored. It lasts while this page is open: free some space on the device, or export the part."
        }
        PartNotice::Damaged => {
            "The stored card of this part could not be read. It is kept in the list as it was found, and the card is written anew from what stands here."
        }
        PartNotice::Newer => {
            "The stored card of this part was written by a newer version of Biteband. It is kept in the list, and a card is written anew from what stands here."
        }
        PartNotice::ClockBack => {
            "The clock of this device stands before the last change of this part. Check date and time; the order of the story is by it."
        }
    }
}

/// A number with its noun.
fn parts(count: usize) -> String {
    if count == 1 { "1 part".to_owned() } else { format!("{count} parts") }
}

fn change(add: usize, replace: usize) -> String {
    match (add, replace) {
        (add, 0) => format!("{} added", parts(add)),
        (0, replace) => format!("{} brought up to the file", parts(replace)),
        (add, replace) => format!("{} added, {replace} brought up to the file", parts(add)),
    }
}

pub(super) fn say(phrase: PartsSays<'_>) -> String {
    use PartsSays as S;
    match phrase {
        S::Shown { shown, all } => format!("{shown} of {}", parts(all)),
        S::ShowAll { all } => format!("Show all {all}"),
        S::Paper { paper } => format!("paper says {paper}"),
        S::Day { day, month } => {
            let name = MONTHS.get(usize::from(month).wrapping_sub(1)).copied().unwrap_or_default();
            format!("{day} {name}")
        }
        S::Story { name } => format!("{name}, its story"),
        S::RemoveOf { what } => format!("Remove: {what}"),
        S::PhotoOf { name, number } => format!("Photo {number} of {name}"),
        S::Deleted { name } => format!("Deleted: {name}"),
        S::Copy { name } => format!("{name} (from its recipe)"),
        S::NeverExported { parts: count } => {
            format!("{} on this device alone: none was ever exported.", parts(count))
        }
        S::ChangedSince { parts: count, date } => {
            format!("{} changed since the last export on {date}.", parts(count))
        }
        S::AllExported { date } => format!("Nothing changed since the last export on {date}."),
        S::Written { parts: count, file } => {
            format!("{} handed to the browser as {file}.", parts(count))
        }
        S::WouldBeRefused { why } => format!(
            "Careful: this file would be refused on the way in. {why} Keep the parts here, and mend the card it names."
        ),
        S::Apply { add: 0, replace: 0 } => "Change nothing".to_owned(),
        S::Apply { add, replace } => format!("Import: {}", change(add, replace)),
        S::Imported { add, replace } => format!("Imported: {}.", change(add, replace)),
        S::ImportUndone { stay: 0 } => "The import is undone.".to_owned(),
        S::ImportUndone { stay } => format!(
            "The import is undone, except for {} changed since: nothing of that is taken away.",
            parts(stay)
        ),
        S::Unread { key } => format!("Card {key}"),
    }
}

/// Ends that hammers or presses meet.
const STRUCK: [&str; 5] = ["struck", "strike", "striking", "hammer", "head"];

pub(super) fn is_struck(place: &str) -> bool {
    let place = place.to_lowercase();
    STRUCK.iter().any(|word| place.contains(word))
}

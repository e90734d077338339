//! What is done with cards: each deed waits until everything lies where it belongs, reads what it needs anew, and writes
//! it as one.

use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use biteband_bench::card::merge::{self, Applied};
use biteband_bench::card::{
    Card, Photo, csv, demo as invented, file, moment, name_of_name, read_record, write_record,
};
use biteband_bench::state::{Action, App, Page, PartAction};
use biteband_bench::view::{Exported, Kept, Problem, file_name, name_of};
use biteband_bench::words::{PartsPage as P, PartsSays};
use wasm_bindgen_futures::spawn_local;
use yew::AttrValue;

use super::shelf::{self, CARDS, Change, DELETED, PAGE, PHOTOS, Written, gone, put};
use super::state::{Back, Hand, Import, State, Undo};
use super::{browser, keeper, say};
use crate::app::{Dispatch, LANGUAGE};
use crate::asked::clock;

/// The key of what was exported, and when.
const EXPORTED: &str = "exported";
/// The key that says that the browser was asked to keep what is stored.
const ASKED: &str = "asked-to-keep";

/// Reads what lies in storage.
pub(super) fn read(hand: &Hand) {
    let hand = hand.clone();
    spawn_local(async move {
        let cards = shelf::read_all(CARDS).await;
        let deleted = shelf::read_all(DELETED).await;
        let any = !cards.is_empty();
        let exported = shelf::read(PAGE, EXPORTED).await.unwrap_or_default();
        hand.change(move |state| {
            state.cards = std::mem::take(&mut state.cards).anew(cards);
            state.deleted = std::mem::take(&mut state.deleted).anew(deleted);
            state.exported = Exported::read(&exported);
            state.read = true;
        });
        if any {
            promise(&hand).await;
        }
    });
}

/// Asks the browser once to keep what is stored, and learns what it says.
async fn promise(hand: &Hand) {
    let asked = shelf::read(PAGE, ASKED).await.is_some();
    let mut promised = browser::promised(false).await;
    if promised == Some(false) && !asked {
        promised = browser::promised(true).await;
        shelf::write(vec![put(PAGE, ASKED, "1".to_owned())]).await;
    }
    hand.change(move |state| state.promised = promised);
}

/// Writes, and lets everybody who shows cards look again; otherwise says that nothing could be stored.
async fn write(hand: &Hand, changes: Vec<Change>) -> bool {
    let done = shelf::write(changes).await;
    if done {
        keeper::changed("");
    } else {
        hand.trouble(say(P::NotStored));
    }
    done
}

/// Takes a part in hand as it lies in storage now, and puts the focus on what is named.
pub(super) fn take(id: String, focus: Option<&'static str>) {
    spawn_local(async move {
        take_now(&id).await;
        if let Some(selector) = focus {
            browser::focus_later(selector);
        }
    });
}

async fn take_now(id: &str) {
    keeper::settled().await;
    let text = shelf::read(CARDS, id).await;
    if let Some(card) = text.and_then(|text| read_record(&text).ok()) {
        keeper::choose(card).await;
    }
}

/// A new part, which is named on the page.
pub(super) fn new(dispatch: &Dispatch) {
    let dispatch = dispatch.clone();
    spawn_local(async move {
        dispatch.emit(Action::Choose(false));
        keeper::begin_empty().await;
        dispatch.emit(Action::Go(Page::Parts));
        browser::focus_later("#field-part-name");
    });
}

/// What stands on the pages becomes a part.
pub(super) fn begin() {
    spawn_local(async {
        keeper::begin().await;
        browser::focus_later("#field-part-name");
    });
}

/// Puts the part in hand away.
pub(super) fn put_away() {
    spawn_local(async {
        keeper::put_away().await;
        browser::focus_if_lost();
    });
}

/// A new part after the recipe of another.
pub(super) fn as_recipe(hand: &Hand, card: Card) {
    let hand = hand.clone();
    spawn_local(async move {
        let name = name_of(&card, LANGUAGE);
        let name = name_of_name(&name, &|name| LANGUAGE.parts(PartsSays::Copy { name }));
        let made = card.as_recipe(&browser::new_id(), &name, browser::now_ms());
        keeper::settled().await;
        if write(&hand, vec![put(CARDS, made.id.clone(), write_record(&made))]).await {
            keeper::choose(made).await;
            hand.tell(say(P::RecipeMade), None);
            browser::focus_later("#field-part-name");
        }
    });
}

/// Moves a part to the deleted ones.
pub(super) fn delete(hand: &Hand, app: &Rc<App>, id: String) {
    let (hand, app) = (hand.clone(), Rc::clone(app));
    spawn_local(async move {
        keeper::settled().await;
        let in_hand = app.saved.part.id() == id;
        if in_hand && !keeper::put_away().await {
            return;
        }
        keeper::settled().await;
        let Some(text) = shelf::read(CARDS, &id).await else { return };
        let changes = vec![gone(CARDS, id.clone()), put(DELETED, id.clone(), text.clone())];
        if !write(&hand, changes).await {
            return;
        }
        let kept = Kept::read(id.clone(), text.clone(), LANGUAGE);
        let card = kept.card().cloned();
        let name = card.as_ref().map_or_else(|| id.clone(), |card| name_of(card, LANGUAGE));
        let back = vec![put(CARDS, id.clone(), text), gone(DELETED, id)];
        let undo = Undo::Write(Rc::new(back), card.filter(|_| in_hand).map(|card| card.id));
        let text = LANGUAGE.parts(PartsSays::Deleted { name: &name });
        hand.tell(text, Some((say(P::Undo), undo)));
        browser::focus_if_lost();
    });
}

/// Puts a part that was deleted back among the others.
pub(super) fn put_back(hand: &Hand, id: String) {
    let hand = hand.clone();
    spawn_local(async move {
        let Some(text) = shelf::read(DELETED, &id).await else { return };
        let changes = vec![put(CARDS, id.clone(), text), gone(DELETED, id.clone())];
        // A card that came back on another way, by an import, is not written over.
        let end = shelf::write_over(vec![(id.clone(), None)], changes).await;
        match end {
            Written::Done => keeper::changed(&id),
            Written::Held => hand.trouble(say(P::BackHeld)),
            Written::Failed => hand.trouble(say(P::NotStored)),
        }
    });
}

/// Removes a part for good, with its photos.
pub(super) fn remove(hand: &Hand, app: &Rc<App>, id: String) {
    let (hand, app) = (hand.clone(), Rc::clone(app));
    spawn_local(async move {
        let text = shelf::read(DELETED, &id).await.unwrap_or_default();
        let photos = read_record(&text).map(|card| card.photos).unwrap_or_default();
        let mut changes = vec![gone(DELETED, id.clone())];
        let used = photos_in_use(&app, &id).await;
        let free = photos.into_iter().filter(|photo| !used.contains(&photo.id));
        changes.extend(free.map(|photo| gone(PHOTOS, photo.id)));
        if write(&hand, changes).await {
            // What was taken back by the key of the deletion is no more.
            hand.change(|state| (state.asked, state.told) = (None, None));
        }
    });
}

/// The photos of every card but one.
async fn photos_in_use(app: &App, but: &str) -> BTreeSet<String> {
    let mut all = shelf::read_all(CARDS).await;
    all.extend(shelf::read_all(DELETED).await);
    let cards = all.into_iter().filter(|(key, _)| key != but);
    let mut cards: Vec<Card> = cards.filter_map(|(_, text)| read_record(&text).ok()).collect();
    cards.push(Card::of(&app.saved));
    cards.into_iter().flat_map(|card| card.photos).map(|photo| photo.id).collect()
}

/// Takes a deed back.
pub(super) fn undo(hand: &Hand, app: &Rc<App>, dispatch: &Dispatch, undo: Undo) {
    let (hand, app) = (hand.clone(), Rc::clone(app));
    match undo {
        Undo::Photo(photo) => {
            hand.change(move |state| state.told = None);
            dispatch.emit(PartAction::AddPhoto(photo).into());
        }
        Undo::Write(changes, id) => spawn_local(async move {
            // What came back on another way meanwhile is not written over.
            for change in changes.iter() {
                if let Some(key) = change.adds(CARDS)
                    && shelf::read(CARDS, key).await.is_some()
                {
                    hand.trouble(say(P::BackHeld));
                    return;
                }
            }
            if write(&hand, changes.to_vec()).await {
                hand.change(|state| state.told = None);
                if let Some(id) = id {
                    take_now(&id).await;
                    browser::focus_later("#part-card");
                }
            }
        }),
        Undo::Import(all) => spawn_local(async move { undo_import(&hand, &app, &all).await }),
    }
}

/// The demonstration comes or goes.
pub(super) fn demo(hand: &Hand, app: &Rc<App>, comes: bool) {
    let (hand, app) = (hand.clone(), Rc::clone(app));
    spawn_local(async move {
        keeper::settled().await;
        if comes {
            let parts = invented::parts(LANGUAGE);
            let changes = parts.iter().map(|card| put(CARDS, card.id.clone(), write_record(card)));
            write(&hand, changes.collect()).await;
            return;
        }
        if app.saved.part.in_hand() && Card::of(&app.saved).demo {
            if !keeper::put_away().await {
                return;
            }
            keeper::settled().await;
        }
        let (mut changes, mut back) = (Vec::new(), Vec::new());
        for store in [CARDS, DELETED] {
            for (key, text) in shelf::read_all(store).await {
                if read_record(&text).is_ok_and(|card| card.demo) {
                    changes.push(gone(store, key.clone()));
                    back.push(put(store, key, text));
                }
            }
        }
        if write(&hand, changes).await {
            hand.tell(say(P::DemoGone), Some((say(P::Undo), Undo::Write(Rc::new(back), None))));
        }
    });
}

/// Hands a text out as a file, and says so where that failed.
pub(super) fn hand_out(hand: &Hand, name: &str, kind: &str, text: &str) -> bool {
    let done = browser::hand_out(name, kind, text);
    if !done {
        hand.trouble(say(P::NotHandedOut));
    }
    done
}

/// The cards that are exported: one, or all of the person's own; those of the demonstration where there are no others.
/// That of the part in hand is taken from the pages, which hold it whole also where storage is full.
async fn to_export(own: Option<Card>, only: Option<String>) -> Vec<Card> {
    keeper::settled().await;
    let mut cards = mine().await;
    if let Some(own) = own {
        match cards.iter_mut().find(|card| card.id == own.id) {
            Some(stored) => *stored = own,
            None => cards.push(own),
        }
    }
    if let Some(id) = only {
        cards.retain(|card| card.id == id);
    }
    if cards.iter().any(|card| !card.demo) {
        cards.retain(|card| !card.demo);
    }
    cards
}

/// Writes parts to a file, with their photos, and reads it back by the checker before anything is said of it.
pub(super) fn export(hand: &Hand, own: Option<Card>, only: Option<String>) {
    let hand = hand.clone();
    spawn_local(async move {
        let mut cards = to_export(own, only).await;
        for photo in cards.iter_mut().flat_map(|card| &mut card.photos) {
            if let Some(whole) = read_photo(&photo.id).await {
                photo.data = whole.data;
            }
        }
        let clock = clock();
        let mut names = Vec::new();
        for (index, text) in file::write_all(&cards, clock.now_ms).iter().enumerate() {
            let name = file_name("parts", "json", index, clock);
            if !hand_out(&hand, &name, "application/json", text) {
                return;
            }
            if let Err(refused) = file::read(LANGUAGE, text.as_bytes()) {
                hand.trouble(LANGUAGE.parts(PartsSays::WouldBeRefused { why: &refused.message }));
                return;
            }
            names.push(name);
        }
        let exported = shelf::read(PAGE, EXPORTED).await.unwrap_or_default();
        let exported = Exported::read(&exported).with(&cards, clock.now_ms).write();
        // A record that cannot be kept only brings the reminder again.
        shelf::write(vec![put(PAGE, EXPORTED, exported)]).await;
        read(&hand);
        let file = names.join(", ");
        hand.tell(LANGUAGE.parts(PartsSays::Written { parts: cards.len(), file: &file }), None);
    });
}

/// Writes what was found on all parts as a table.
pub(super) fn export_table(hand: &Hand, own: Option<Card>) {
    let hand = hand.clone();
    spawn_local(async move {
        let cards = to_export(own, None).await;
        let name = file_name("results", "csv", 0, clock());
        if hand_out(&hand, &name, "text/csv", &csv::results(&cards, LANGUAGE)) {
            let said = PartsSays::Written { parts: cards.len(), file: &name };
            hand.tell(LANGUAGE.parts(said), None);
        }
    });
}

/// Reads a file and shows what its import would do.
pub(super) fn look_at(hand: &Hand, chosen: wasm_bindgen::JsValue) {
    let hand = hand.clone();
    spawn_local(async move {
        keeper::settled().await;
        let read = match browser::content(&chosen).await {
            Some(bytes) => file::read(LANGUAGE, &bytes).map_err(Problem::from),
            None => Err(Problem {
                message: say(P::FileUnread).to_owned(),
                instead: say(P::FileUnreadInstead).to_owned(),
            }),
        };
        let mine = mine().await;
        let pictures = shelf::keys(PHOTOS).await;
        hand.change(move |state| match read {
            Ok(theirs) => {
                let plan =
                    merge::plan(LANGUAGE, &mine, theirs, &|photo| !pictures.contains(&photo.id));
                state.import = Some(Import { plan, chosen: BTreeMap::new() });
                state.problem = None;
                state.told = None;
            }
            Err(problem) => {
                state.problem = Some(problem);
                state.import = None;
            }
        });
        browser::focus_later("#import");
    });
}

async fn mine() -> Vec<Card> {
    let all = shelf::read_all(CARDS).await;
    all.into_iter().filter_map(|(_, text)| read_record(&text).ok()).collect()
}

/// Does the import as it was shown; what changed meanwhile is shown anew first.
pub(super) fn import(hand: &Hand, app: &Rc<App>, import: &Import) {
    let (hand, app) = (hand.clone(), Rc::clone(app));
    let (plan, chosen) = (import.plan.clone(), import.chosen.clone());
    spawn_local(async move {
        keeper::settled().await;
        let theirs = plan.cards.iter().map(|one| one.card.clone()).collect();
        let there: BTreeMap<String, String> = shelf::read_all(CARDS).await.into_iter().collect();
        let mine: Vec<Card> = there.values().filter_map(|text| read_record(text).ok()).collect();
        let pictures = shelf::keys(PHOTOS).await;
        let again = merge::plan(LANGUAGE, &mine, theirs, &|photo| !pictures.contains(&photo.id));
        if again != plan {
            hand.change(move |state| {
                state.import = Some(Import { plan: again, chosen });
            });
            hand.trouble(say(P::ChangedMeanwhile));
            return;
        }
        let choose = |id: &str| chosen.get(id).copied().unwrap_or_default();
        let Applied { store, replaced } = merge::apply(LANGUAGE, plan, choose, browser::new_id);
        let (add, replace) = (store.len() - replaced.len(), replaced.len());
        let (mut changes, mut back) = (Vec::new(), Vec::new());
        for mut card in store {
            for photo in &mut card.photos {
                if !photo.data.is_empty() {
                    // Another picture under the same name is not written over.
                    if read_photo(&photo.id).await.is_some_and(|own| own.data != photo.data) {
                        photo.id = browser::new_id();
                    }
                    changes.push(put(PHOTOS, photo.id.clone(), json(photo)));
                    photo.data.clear();
                }
            }
            // A card that never had a moment of its own was changed by its coming here.
            if card.changed.is_empty() {
                card.changed = moment(browser::now_ms());
            }
            let text = write_record(&card);
            let before = there.get(&card.id).cloned();
            back.push(Back { id: card.id.clone(), now: text.clone(), before });
            changes.push(put(CARDS, card.id, text));
        }
        let expected = back.iter().map(|card| (card.id.clone(), card.before.clone())).collect();
        match shelf::write_over(expected, changes).await {
            Written::Done => back.iter().for_each(|card| keeper::changed(&card.id)),
            Written::Held => return hand.trouble(say(P::ChangedMeanwhile)),
            Written::Failed => return hand.trouble(say(P::NotStored)),
        }
        take_anew(&app, &back).await;
        hand.change(|state| {
            state.import = None;
            // What was missing may have come with it.
            state.photos.clear();
        });
        let text = LANGUAGE.parts(PartsSays::Imported { add, replace });
        hand.tell(text, Some((say(P::UndoImport), Undo::Import(Rc::new(back)))));
        browser::focus_if_lost();
    });
}

/// Where the card of the part in hand was replaced, the pages show the new one.
async fn take_anew(app: &App, cards: &[Back]) {
    let id = app.saved.part.id();
    if cards.iter().any(|card| card.id == id) {
        take_now(id).await;
    }
}

/// Brings back what an import replaced. A card that was changed since stays as it is.
async fn undo_import(hand: &Hand, app: &App, all: &[Back]) {
    keeper::settled().await;
    let (mut changes, mut expected, mut changed) = (Vec::new(), Vec::new(), 0);
    for Back { id, now, before } in all {
        if shelf::read(CARDS, id).await.as_ref() != Some(now) {
            changed += 1;
            continue;
        }
        expected.push((id.clone(), Some(now.clone())));
        changes.push(match before {
            Some(text) => put(CARDS, id.clone(), text.clone()),
            None => gone(CARDS, id.clone()),
        });
    }
    let id = app.saved.part.id();
    let leaves = all.iter().any(|card| card.id == id && card.before.is_none());
    if leaves && changed == 0 {
        if !keeper::put_away().await {
            return;
        }
        keeper::settled().await;
    }
    match shelf::write_over(expected, changes).await {
        Written::Done => all.iter().for_each(|card| keeper::changed(&card.id)),
        Written::Held => return hand.trouble(say(P::ChangedMeanwhile)),
        Written::Failed => return hand.trouble(say(P::NotStored)),
    }
    if !leaves {
        take_anew(app, all).await;
    }
    hand.tell(LANGUAGE.parts(PartsSays::ImportUndone { stay: changed }), None);
}

fn json(photo: &Photo) -> String {
    // Texts and numbers can always be written.
    serde_json::to_string(photo).unwrap_or_default()
}

async fn read_photo(id: &str) -> Option<Photo> {
    serde_json::from_str(&shelf::read(PHOTOS, id).await?).ok()
}

/// Adds a picture to the part in hand.
pub(super) fn add_photo(hand: &Hand, dispatch: &Dispatch, chosen: wasm_bindgen::JsValue) {
    let (hand, dispatch) = (hand.clone(), dispatch.clone());
    spawn_local(async move {
        let part = keeper::in_hand();
        let Some(mut photo) = browser::photo(chosen).await else {
            hand.trouble(say(P::PhotoUnread));
            return;
        };
        if !shelf::write(vec![put(PHOTOS, photo.id.clone(), json(&photo))]).await {
            hand.trouble(say(P::NotStored));
            return;
        }
        // It took its time; another part in hand is not what it shows.
        if keeper::in_hand() != part {
            shelf::write(vec![gone(PHOTOS, photo.id)]).await;
            hand.trouble(say(P::PhotoTooLate));
            return;
        }
        photo.data.clear();
        hand.change(|state| state.told = None);
        dispatch.emit(PartAction::AddPhoto(photo).into());
    });
}

/// Takes one away; its picture stays until nothing brings it back any more.
pub(super) fn remove_photo(hand: &Hand, dispatch: &Dispatch, photo: Photo) {
    let id = photo.id.clone();
    dispatch.emit(PartAction::RemovePhoto(id.clone()).into());
    hand.change(move |state| state.leaving.push(id));
    hand.tell(say(P::PhotoGone), Some((say(P::Undo), Undo::Photo(photo))));
}

/// Reads the pictures of the part in hand that were not read yet.
pub(super) fn fetch_photos(hand: &Hand, app: &App, state: &State) {
    if app.saved.page != Page::Parts || !app.saved.part.in_hand() {
        return;
    }
    let photos = Card::of(&app.saved).photos;
    for photo in photos.into_iter().filter(|photo| !state.photos.contains_key(&photo.id)) {
        let hand = hand.clone();
        spawn_local(async move {
            let whole = read_photo(&photo.id).await;
            let address = whole.map(|whole| {
                AttrValue::from(format!("data:{};base64,{}", whole.media_type, whole.data))
            });
            hand.change(move |state| {
                state.photos.insert(photo.id, address);
            });
        });
    }
}

/// When the page is left: pictures that were removed and that no card has go for good.
pub(super) fn sweep(app: &Rc<App>, state: &mut State) {
    if state.told.as_ref().is_some_and(|told| matches!(told.undo, Some((_, Undo::Photo(_))))) {
        state.told = None;
    }
    state.photos.clear();
    let leaving = std::mem::take(&mut state.leaving);
    if leaving.is_empty() {
        return;
    }
    let app = Rc::clone(app);
    spawn_local(async move {
        keeper::settled().await;
        let used = photos_in_use(&app, "").await;
        let free = leaving.into_iter().filter(|id| !used.contains(id));
        shelf::write(free.map(|id| gone(PHOTOS, id)).collect()).await;
    });
}

/// Sends the card as a text by the device's own ways, or puts it on the clipboard.
pub(super) fn send(hand: &Hand, title: String, text: String) {
    let hand = hand.clone();
    spawn_local(async move {
        if browser::share(&title, &text).await {
            return;
        }
        let said = if browser::copy(&text).await { P::Copied } else { P::NotCopied };
        hand.tell(say(said), None);
    });
}

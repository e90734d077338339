//! Keeps the card of the part in hand, whatever page is shown: it is written beside every change of the state.
//!
//! The state itself holds the part in hand whole and is written first, so nothing is lost when the page ends in
//! between: the card is brought up at the next start. A card that another tab changed meanwhile is never written over:
//! if nothing was changed here since, it is taken as it is now, otherwise the part goes on here as a second one.

use std::cell::RefCell;
use std::collections::{BTreeMap, BTreeSet};
use std::rc::Rc;

use biteband_bench::card::{
    Card, Sheets, moment, moment_ms, read_record, said_of_card, write_record,
};
use biteband_bench::state::{App, Damage, PartAction, PartNotice, Saved, unstamped};
use serde::{Deserialize, Serialize};

use super::browser;
use super::shelf::{self, CARDS, Change, PAGE, Written, gone, put};
use crate::app::{Dispatch, LANGUAGE};
use crate::store::{self, key_of_tab, of_json, to_json};

/// The key of what this tab knows of the card in hand.
const HAND: &str = "hand";
/// The key of the quick look-up while a part is in hand.
const QUICK: &str = "quick";
/// A clock may be wrong by this much, in milliseconds, before it is worth telling.
const CLOCK: i64 = 5 * 60_000;

/// The card in hand as this tab wrote or read it last.
#[derive(Clone, Debug, Default, Serialize, Deserialize)]
#[serde(default)]
struct Hand {
    id: String,
    revision: u64,
    changed: String,
    /// What it held.
    content: String,
}

#[derive(Default)]
struct Keeper {
    dispatch: Option<Dispatch>,
    /// Every card that was in hand here.
    hands: BTreeMap<String, Hand>,
    /// The id of the part in hand.
    in_hand: String,
    /// The last write failed, so that the state holds what no card does.
    unwritten: bool,
    /// Nothing is written until it is known what lies there.
    started: bool,
    busy: bool,
    /// The state as it was given last.
    latest: Option<Box<Saved>>,
    /// Ids under which nothing is written any more, because the part goes on here under another one.
    left: BTreeSet<String>,
    /// What is to be written when the write that runs is done.
    waiting: Option<Box<Saved>>,
    /// Who wants to know that cards changed.
    looks: Option<Rc<dyn Fn()>>,
    tabs: Option<browser::Tabs>,
}

thread_local! {
    static KEEPER: RefCell<Keeper> = RefCell::default();
}

fn with<T>(work: impl FnOnce(&mut Keeper) -> T) -> T {
    KEEPER.with_borrow_mut(work)
}

fn hand_of(id: &str) -> Hand {
    with(|keeper| keeper.hands.get(id).cloned()).unwrap_or_default()
}

fn remember(hand: Hand) {
    with(|keeper| {
        keeper.unwritten = false;
        keeper.hands.insert(hand.id.clone(), hand);
    });
}

/// Begins to keep the card. It is called whenever a page is drawn; called twice it does nothing more.
pub(super) fn follow(app: &Rc<App>, dispatch: &Dispatch) {
    let first = with(|keeper| keeper.dispatch.replace(dispatch.clone()).is_none());
    if first {
        store::beside(beside);
        with(|keeper| keeper.tabs = browser::Tabs::open(changed_elsewhere));
        let saved = app.saved.clone();
        wasm_bindgen_futures::spawn_local(async move {
            tell(PartAction::Ready);
            start(saved).await;
        });
    }
}

/// Names who wants to know that cards changed.
pub(super) fn look(does: Option<Rc<dyn Fn()>>) {
    with(|keeper| keeper.looks = does);
}

/// Cards changed: who shows them looks again, here and in other tabs.
pub(super) fn changed(id: &str) {
    with(|keeper| {
        if let Some(tabs) = &keeper.tabs {
            tabs.tell(id);
        }
    });
    look_again();
}

fn look_again() {
    let looks = with(|keeper| keeper.looks.clone());
    if let Some(looks) = looks {
        looks();
    }
}

fn tell(action: PartAction) {
    let dispatch = with(|keeper| keeper.dispatch.clone());
    if let Some(dispatch) = dispatch {
        dispatch.emit(action.into());
    }
}

/// The state was written.
fn beside(saved: &Saved) {
    if unstamped(saved) {
        let now_ms = browser::now_ms();
        // After this change, not in it.
        wasm_bindgen_futures::spawn_local(async move { tell(PartAction::Stamp(now_ms)) });
    }
    keep(saved);
}

/// Writes the card, one write after the other; what came in between is written as one.
fn keep(saved: &Saved) {
    let idle = with(|keeper| {
        saved.part.id().clone_into(&mut keeper.in_hand);
        keeper.waiting = Some(Box::new(saved.clone()));
        keeper.latest.clone_from(&keeper.waiting);
        keeper.started && !std::mem::replace(&mut keeper.busy, keeper.started)
    });
    if idle {
        wasm_bindgen_futures::spawn_local(async {
            while let Some(saved) = with(|keeper| keeper.waiting.take()) {
                write(&saved).await;
            }
            with(|keeper| keeper.busy = false);
        });
    }
}

/// Waits until everything that was changed lies where it belongs, and says whether it does. What could not be written is
/// tried once more.
pub(super) async fn settled() -> bool {
    idle().await;
    let unwritten = with(|keeper| keeper.latest.clone().filter(|_| keeper.unwritten));
    if let Some(saved) = unwritten {
        keep(&saved);
        idle().await;
    }
    with(|keeper| keeper.started && !keeper.busy && !keeper.unwritten)
}

async fn idle() {
    // A write that hangs must not hold up the person for ever.
    for _ in 0..100 {
        if with(|keeper| keeper.started && !keeper.busy) {
            return;
        }
        gloo::timers::future::TimeoutFuture::new(20).await;
    }
}

/// The state as it is when everything is written; otherwise the state alone holds what no card does, so that it must not
/// give way to another part, and that is said.
async fn whole() -> Option<Saved> {
    if settled().await {
        return with(|keeper| keeper.latest.as_deref().cloned());
    }
    tell(PartAction::Tell(PartNotice::NotWritten));
    None
}

/// What a card holds, apart from what is stamped on it when it is written.
fn content(card: &Card) -> String {
    let bare = Card { changed: String::new(), revision: 0, said: Vec::new(), ..card.clone() };
    write_record(&bare)
}

async fn write(saved: &Saved) {
    if !saved.part.in_hand() {
        with(|keeper| keeper.unwritten = false);
        return;
    }
    if with(|keeper| keeper.left.contains(saved.part.id())) {
        return;
    }
    let mut card = Card::of(saved);
    let content = content(&card);
    let hand = hand_of(&card.id);
    if hand.content == content {
        with(|keeper| keeper.unwritten = false);
        return;
    }
    card.said = said_of_card(&card, LANGUAGE);
    card.revision = hand.revision + 1;
    let now_ms = browser::now_ms();
    let before = moment_ms(&hand.changed).unwrap_or(now_ms);
    // A clock that was set back must not turn the order of the cards round.
    card.changed = moment(now_ms.max(before));
    let next = Hand {
        id: card.id.clone(),
        revision: card.revision,
        changed: card.changed.clone(),
        content,
    };
    let changes = written(&card, &next);
    let known = hand.revision;
    // What cannot be read is not ours to write over either.
    let ours = move |text: String| read_record(&text).is_ok_and(|card| card.revision == known);
    let then =
        move |found: Vec<Option<String>>| found.into_iter().flatten().all(ours).then_some(changes);
    let end = shelf::write_if(vec![card.id.clone()], Box::new(then)).await;
    match end {
        Written::Done => {
            remember(next);
            changed(&card.id);
            if before > now_ms + CLOCK {
                tell(PartAction::Tell(PartNotice::ClockBack));
            }
        }
        Written::Held => other_changed_it(saved).await,
        Written::Failed => {
            with(|keeper| keeper.unwritten = true);
            tell(PartAction::Tell(PartNotice::NotWritten));
        }
    }
}

fn written(card: &Card, hand: &Hand) -> Vec<Change> {
    let known = serde_json::to_string(hand).unwrap_or_default();
    vec![put(CARDS, card.id.clone(), write_record(card)), put(PAGE, key_of_tab(HAND), known)]
}

/// Another tab changed the card of the part in hand.
async fn other_changed_it(saved: &Saved) {
    let mine = content(&Card::of(saved));
    let known = hand_of(saved.part.id()).content;
    let there = shelf::read(CARDS, saved.part.id()).await.and_then(|text| read_record(&text).ok());
    // What was changed here since waits already.
    let since = with(|keeper| keeper.waiting.as_deref().map(Card::of));
    let since = since.filter(|card| card.id == saved.part.id() && content(card) != mine);
    match there {
        Some(card) if content(&card) == mine && since.is_some() => remember(Hand {
            id: card.id,
            revision: card.revision,
            changed: card.changed,
            content: mine,
        }),
        Some(card) if since.is_none() && (known == mine || content(&card) == mine) => {
            take(card, saved);
        }
        _ => {
            with(|keeper| {
                keeper.left.insert(saved.part.id().to_owned());
                keeper.waiting = None;
            });
            tell(PartAction::Fork(browser::new_id()));
            tell(PartAction::Tell(PartNotice::Forked));
        }
    }
}

/// Another tab says that it changed a card.
fn changed_elsewhere(id: &str) {
    look_again();
    let id = id.to_owned();
    wasm_bindgen_futures::spawn_local(async move {
        let there = shelf::read(CARDS, &id).await.and_then(|text| read_record(&text).ok());
        let newer = there.filter(|card| {
            let idle = with(|k| k.started && !k.busy && !k.unwritten && k.in_hand == card.id);
            idle && card.revision > hand_of(&card.id).revision
        });
        if let Some(card) = newer {
            let pages = with(|keeper| keeper.latest.clone()).unwrap_or_default();
            take(card, &pages);
        }
    });
}

/// What lies in storage is held against what the state holds, once.
async fn start(saved: Saved) {
    if saved.part.in_hand() {
        compare(&saved).await;
    }
    let waits = with(|keeper| {
        keeper.started = true;
        keeper.waiting.take()
    });
    keep(&waits.map_or(saved, |waits| *waits));
}

async fn compare(saved: &Saved) {
    let id = saved.part.id();
    let known = shelf::read(PAGE, &key_of_tab(HAND)).await;
    let known: Hand = known.and_then(|text| serde_json::from_str(&text).ok()).unwrap_or_default();
    let new = || Hand { id: id.to_owned(), ..Hand::default() };
    let known = if known.id == id { known } else { new() };
    let Some(text) = shelf::read(CARDS, id).await else {
        // It was never written, or it was deleted while it was in hand: it is written anew.
        return remember(new());
    };
    match read_record(&text) {
        Ok(card) if card.revision == known.revision => remember(known),
        Ok(_) => {
            remember(known);
            other_changed_it(saved).await;
        }
        Err(damage) => {
            // The state holds the part whole; what cannot be read is kept beside it.
            let aside = put(CARDS, format!("{id}-{}", browser::now_ms()), text);
            shelf::write(vec![aside, gone(CARDS, id)]).await;
            remember(new());
            tell(PartAction::Tell(match damage {
                Damage::Unreadable => PartNotice::Damaged,
                Damage::Newer(_) => PartNotice::Newer,
            }));
        }
    }
}

/// Puts a card that was read on the pages. What they make of it by themselves, as the files that are at hand where it
/// names none, is no change of it.
fn take(card: Card, pages: &Saved) {
    let mut after = pages.clone();
    card.put(&mut after);
    let hand = Hand {
        id: card.id.clone(),
        revision: card.revision,
        changed: card.changed.clone(),
        content: content(&Card::of(&after)),
    };
    with(|keeper| keeper.left.remove(&card.id));
    remember(hand);
    tell(PartAction::Take(Box::new(card)));
}

/// Takes another part in hand.
pub(super) async fn choose(card: Card) {
    if let Some(pages) = put_quick_aside().await {
        take(card, &pages);
    }
}

/// What stands on the pages becomes a part.
pub(super) async fn begin() {
    settled().await;
    let (id, now_ms) = (browser::new_id(), browser::now_ms());
    tell(PartAction::Begin { id, now_ms });
    shelf::write(vec![gone(PAGE, key_of_tab(QUICK))]).await;
}

/// A new part with empty pages.
pub(super) async fn begin_empty() {
    if put_quick_aside().await.is_some() {
        let (id, now_ms) = (browser::new_id(), browser::now_ms());
        tell(PartAction::BeginEmpty { id, now_ms });
    }
}

/// Puts the part away; the quick look-up stands as it was left. Says whether it did.
pub(super) async fn put_away() -> bool {
    if whole().await.is_none() {
        return false;
    }
    let quick = shelf::read(PAGE, &key_of_tab(QUICK)).await;
    let quick = quick.and_then(|text| of_json(&text)).map(Box::new);
    tell(PartAction::PutAway(quick));
    true
}

/// Keeps the quick look-up, when that is what stands on the pages, and hands back what stands there; nothing where it
/// could not be kept.
async fn put_quick_aside() -> Option<Saved> {
    let saved = whole().await?;
    if saved.part.in_hand() {
        return Some(saved);
    }
    let quick = to_json(&Sheets::of(&saved)).unwrap_or_default();
    let kept = shelf::write(vec![put(PAGE, key_of_tab(QUICK), quick)]).await;
    if !kept {
        tell(PartAction::Tell(PartNotice::NotWritten));
    }
    kept.then_some(saved)
}

/// The id of the part in hand.
pub(super) fn in_hand() -> String {
    with(|keeper| keeper.in_hand.clone())
}

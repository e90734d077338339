//! The pages, and which of them are parts of their own.
//!
//! The build cuts the functions named here out of the module, with all that only they need, into files that are
//! loaded when the page is first opened. The memory stays one: a part is handed the state like any other code.
#![expect(
    clippy::unnecessary_wraps,
    reason = "the macro puts the failure of loading into the result"
)]

use std::cell::Cell;
use std::rc::Rc;

use biteband_bench::state::{App, Page};
use biteband_bench::view::FileTestView;
use wasm_split_helpers::{SplitLoaderError, wasm_split};
use yew::Html;

use crate::app::Dispatch;
use crate::pages::file_test::Handed;
use crate::pages::{
    about, claim, convert, file_more, file_test, mark, next, paper, parts, steel, temper, timer,
    unknown,
};

/// What draws a page.
pub(crate) type Room = fn(&Rc<App>, &Dispatch) -> Html;

/// What draws the cards below the verdict of a file test.
pub(crate) type Cards = fn(Handed<'_>, &FileTestView) -> Html;

type Loaded = Result<Room, SplitLoaderError>;

#[wasm_split(convert, fallible)]
fn convert_part() -> Loaded {
    Ok(convert::convert)
}

/// With the other rooms of its place, with which it shares tables and words.
#[wasm_split(convert, fallible)]
fn mark_part() -> Loaded {
    Ok(mark::mark)
}

/// As the mark.
#[wasm_split(convert, fallible)]
fn paper_part() -> Loaded {
    Ok(paper::paper)
}

/// What comes with the data of steels: their page, the planner of tempers, the panel of the next step, claims. One
/// function for all, because each that is marked weighs in the first module.
#[wasm_split(steel, fallible)]
fn steel_part() -> Result<[Room; 4], SplitLoaderError> {
    Ok([steel::steel, temper::temper, next::next, claim::claim])
}

/// Draws the page, and on every other page what its top bar shows of the timers.
#[wasm_split(timer, fallible)]
fn timer_part() -> Loaded {
    Ok(timer::timer)
}

#[wasm_split(unknown, fallible)]
fn unknown_part() -> Loaded {
    Ok(unknown::unknown)
}

#[wasm_split(parts, fallible)]
fn parts_part() -> Loaded {
    Ok(parts::parts)
}

#[wasm_split(about, fallible)]
fn about_part() -> Loaded {
    Ok(about::about)
}

/// Below the first screen; with the smallest part, so that it comes at once.
#[wasm_split(about, fallible)]
fn more_part() -> Result<Cards, SplitLoaderError> {
    Ok(file_more::more)
}

/// The pages whose parts are loaded when the first page stands, so that a later tap need not wait; the one that is
/// opened most often first. That of the tempers holds a panel of the first page.
pub(crate) const PARTS: [Page; 10] = [
    Page::Temper,
    Page::Parts,
    Page::Convert,
    Page::Steel,
    Page::Timer,
    Page::Unknown,
    Page::Claim,
    Page::Mark,
    Page::Paper,
    Page::About,
];

/// A heat that a part was given, in words.
#[derive(Clone, Debug)]
pub(crate) enum Heat {
    /// Heated and quenched.
    Hardened(String),
    /// Tempered.
    Tempered(String),
}

/// What puts a heat on a card.
type OnCard = fn(&Dispatch, Heat);

thread_local! {
    static NEXT: Cell<Option<Room>> = const { Cell::new(None) };
    static MORE: Cell<Option<Cards>> = const { Cell::new(None) };
    static ON_CARD: Cell<Option<OnCard>> = const { Cell::new(None) };
}

/// Names what puts a heat on the card of the part in hand: cards have a part of their own.
pub(crate) fn put_on_card(does: OnCard) {
    // Opaque, because the optimiser sees that there is but one and would call it by its name.
    ON_CARD.set(Some(std::hint::black_box(does)));
}

/// What puts a heat on the card; nothing without a part in hand.
pub(crate) fn on_card(app: &App) -> Option<OnCard> {
    ON_CARD.get().filter(|_| app.saved.part.in_hand())
}

/// What draws the panel of the next step, once its part is there.
pub(crate) fn next_panel() -> Option<Room> {
    NEXT.get()
}

/// What draws the cards below the verdict, once their part is there.
pub(crate) fn more_cards() -> Option<Cards> {
    MORE.get()
}

/// What draws a page, where that is part of the first module.
pub(crate) fn at_hand(page: Page) -> Option<Room> {
    match page {
        Page::FileTest => Some(file_test::file_test),
        Page::Convert
        | Page::Mark
        | Page::Paper
        | Page::Steel
        | Page::Temper
        | Page::Timer
        | Page::Unknown
        | Page::Claim
        | Page::Parts
        | Page::About => None,
    }
}

/// Loads the part that draws a page; nothing when it could not be had. Once loaded it comes at once.
pub(crate) async fn load(page: Page) -> Option<Room> {
    match page {
        Page::FileTest => {
            MORE.set(more_part().await.ok());
            // The page itself is at hand; what could not be had is tried again at the next change.
            MORE.get().and(at_hand(page))
        }
        Page::Convert => convert_part().await.ok(),
        Page::Mark => mark_part().await.ok(),
        Page::Paper => paper_part().await.ok(),
        Page::Steel | Page::Temper | Page::Claim => {
            let [steel, temper, next, claim] = steel_part().await.ok()?;
            NEXT.set(Some(next));
            Some(match page {
                Page::Steel => steel,
                Page::Temper => temper,
                _ => claim,
            })
        }
        Page::Timer => timer_part().await.ok(),
        Page::Unknown => unknown_part().await.ok(),
        Page::Parts => parts_part().await.ok(),
        Page::About => about_part().await.ok(),
    }
}

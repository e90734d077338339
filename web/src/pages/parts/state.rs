//! What the page of parts holds besides the state of the application: what lies in storage, and what is open.

use std::cell::{Cell, RefCell};
use std::collections::BTreeMap;
use std::rc::Rc;

use biteband_bench::card::find::Order;
use biteband_bench::card::merge::{Choice, Plan};
use biteband_bench::card::{Card, Photo};
use biteband_bench::state::App;
use biteband_bench::view::{Exported, Kept, Problem};
use yew::html::Scope;
use yew::{AttrValue, Html};

use super::desk::Desk;
use super::shelf::Change;
use crate::app::{Dispatch, LANGUAGE};

/// What is held while the page is open.
#[derive(Default)]
pub(super) struct State {
    /// Whether storage was read.
    pub(super) read: bool,
    /// The cards, and what is no card any more.
    pub(super) cards: Read,
    /// Those that were deleted.
    pub(super) deleted: Read,
    pub(super) exported: Exported,
    /// Whether the browser promised to keep what is stored.
    pub(super) promised: Option<bool>,
    pub(super) order: Order,
    /// All rows are shown.
    pub(super) whole: bool,
    /// What is asked once more before it is removed for good.
    pub(super) asked: Option<String>,
    pub(super) told: Option<Told>,
    pub(super) import: Option<Import>,
    pub(super) problem: Option<Problem>,
    /// Photos that were read; nothing for one that is not there.
    pub(super) photos: BTreeMap<String, Option<AttrValue>>,
    /// Photos whose picture goes when nothing brings them back any more.
    pub(super) leaving: Vec<String>,
    /// What is open of the part in hand.
    pub(super) open: Open,
}

/// What lies in a store: keys and texts, and the same read.
#[derive(Default)]
pub(super) struct Read {
    pub(super) texts: Vec<(String, String)>,
    pub(super) kept: Vec<Kept>,
}

/// What is open of the part in hand; with another part all of it is closed.
#[derive(Default)]
#[expect(clippy::struct_excessive_bools, reason = "each is something that is open or not")]
pub(super) struct Open {
    /// Whether the name stands before the story, settled when the part is first drawn: a field that is typed in must not
    /// change its place.
    pub(super) named_first: Cell<Option<bool>>,
    /// Entries can be removed.
    pub(super) tidy: bool,
    /// Entries whose old answer is held against today's.
    pub(super) again: Vec<usize>,
    /// The part to compare with; an empty id while none is chosen.
    pub(super) with: Option<String>,
    /// What the card holds is shown.
    pub(super) facts: bool,
    /// The text of the card is shown.
    pub(super) text: bool,
    /// The sheet is shown.
    pub(super) sheet: bool,
}

/// An import that is looked at before it is done.
pub(super) struct Import {
    pub(super) plan: Plan,
    pub(super) chosen: BTreeMap<String, Choice>,
}

/// Something that was done, with what takes it back.
pub(super) struct Told {
    pub(super) text: String,
    pub(super) trouble: bool,
    pub(super) undo: Option<(&'static str, Undo)>,
}

/// What takes a deed back.
#[derive(Clone)]
pub(super) enum Undo {
    /// What is to be written, and the id of the part that is then to be in hand.
    Write(Rc<Vec<Change>>, Option<String>),
    /// What an import wrote.
    Import(Rc<Vec<Back>>),
    /// A photo that was removed.
    Photo(Photo),
}

/// A card that an import wrote.
pub(super) struct Back {
    pub(super) id: String,
    /// As it was written.
    pub(super) now: String,
    /// What lay there before; nothing where it is new.
    pub(super) before: Option<String>,
}

impl Read {
    /// The same store anew; a text that was read before is not read again.
    pub(super) fn anew(self, texts: Vec<(String, String)>) -> Self {
        let mut old: BTreeMap<(String, String), Kept> =
            self.texts.into_iter().zip(self.kept).collect();
        let kept = texts.iter().map(|one| {
            let read = || Kept::read(one.0.clone(), one.1.clone(), LANGUAGE);
            old.remove(one).unwrap_or_else(read)
        });
        let kept = kept.collect();
        Self { texts, kept }
    }
}

/// Where the state of a page that is left waits for it to be opened again.
pub(super) fn left() -> State {
    LEFT.with_borrow_mut(std::mem::take)
}

/// Leaves it there.
pub(super) fn leave(state: State) {
    LEFT.with_borrow_mut(|left| *left = state);
}

thread_local! {
    static LEFT: RefCell<State> = RefCell::default();
}

/// Changes what the page holds, from wherever something comes back.
#[derive(Clone)]
pub(super) struct Hand(pub(super) Scope<Desk>);

impl Hand {
    pub(super) fn change(&self, does: impl FnOnce(&mut State) + 'static) {
        self.0.send_message(super::desk::Change(Box::new(does)));
    }

    pub(super) fn tell(&self, text: impl Into<String>, undo: Option<(&'static str, Undo)>) {
        let text = text.into();
        self.change(move |state| state.told = Some(Told { text, trouble: false, undo }));
    }

    pub(super) fn trouble(&self, text: impl Into<String>) {
        let text = text.into();
        self.change(move |state| state.told = Some(Told { text, trouble: true, undo: None }));
    }
}

/// The panel of the next step as it was drawn last, and from what.
pub(super) type Panel = RefCell<Option<(Rc<App>, Html)>>;

/// What everything on the page is drawn from.
pub(super) struct Shown<'a> {
    pub(super) app: &'a Rc<App>,
    pub(super) dispatch: &'a Dispatch,
    pub(super) state: &'a State,
    pub(super) hand: &'a Hand,
    pub(super) kept: &'a [Kept],
    /// The card of the part in hand.
    pub(super) own: Option<&'a Card>,
    pub(super) panel: &'a Panel,
}

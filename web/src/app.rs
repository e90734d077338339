//! The application as a whole: state, address, theme, notices.

use std::rc::Rc;

use biteband_bench::state::{Action, App, Notice, Page, Theme, reduce};
use biteband_bench::words::{Language, Ui};
use gloo::events::EventListener;
use gloo::timers::callback::Timeout;
use yew::prelude::*;

use crate::parts::bars::{bottom_bar, tabs, title, top_bar};
use crate::parts::notices::notices;
use crate::parts::text::{p, para};
use crate::rooms::{self, PARTS, Room, at_hand, more_cards, next_panel};
use crate::store::Opened;

/// The one language of this version; the phrases come from `bench`.
pub(crate) const LANGUAGE: Language = Language::English;

/// How long after the start the parts of other pages are loaded, in milliseconds: the person acts first.
const REST: u32 = 1_000;

/// Where the start script finds the chosen theme before the first paint.
const THEME_KEY: &str = "biteband.theme";

/// A fixed label; inlined, so that it stands in the part that shows it.
#[expect(clippy::inline_always, reason = "a call would keep every label in the first module")]
#[inline(always)]
pub(crate) const fn label(ui: Ui) -> &'static str {
    LANGUAGE.label(ui)
}

/// Sends actions to the reducer.
pub(crate) type Dispatch = Callback<Action>;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct Props {
    pub(crate) opened: Opened,
}

/// What happens to the application.
pub(crate) enum Message {
    /// Something for the reducer.
    Do(Action),
    /// The part that draws a page was loaded, or could not be.
    Came(Page, Option<Room>),
    /// The part of the page that is shown is to be tried again.
    Again,
    /// Every part is to be loaded ahead of its use.
    Ahead,
}

/// The application: the state, the loaded rooms, and what was last shown.
pub(crate) struct Application {
    app: Rc<App>,
    dispatch: Dispatch,
    rooms: Vec<(Page, Room)>,
    /// Whether the part of the page that is shown could not be loaded.
    missing: bool,
    /// The state when it was last shown, and whether its room was there.
    shown: Option<(Rc<App>, bool)>,
    _listeners: Vec<EventListener>,
}

impl Component for Application {
    type Message = Message;
    type Properties = Props;

    fn create(ctx: &Context<Self>) -> Self {
        let dispatch = ctx.link().callback(Message::Do);
        Self {
            app: Rc::new(first_state(&ctx.props().opened)),
            rooms: Vec::new(),
            missing: false,
            shown: None,
            _listeners: listeners(&dispatch, ctx),
            dispatch,
        }
    }

    fn update(&mut self, ctx: &Context<Self>, message: Message) -> bool {
        match message {
            Message::Do(action) => {
                let next = reduce(&self.app, action);
                if next == *self.app {
                    return false;
                }
                // Another page is asked for, so that nothing is said of the last one.
                self.missing &= next.saved.page == self.app.saved.page;
                self.app = Rc::new(next);
            }
            Message::Again => {
                self.missing = false;
                load(self.app.saved.page, ctx);
            }
            Message::Ahead => {
                for page in PARTS {
                    load(page, ctx);
                }
                return false;
            }
            Message::Came(page, Some(room)) => self.rooms.push((page, room)),
            // Another page than the one that is shown is asked for again when it is opened.
            Message::Came(page, None) => self.missing |= page == self.app.saved.page,
        }
        true
    }

    fn view(&self, ctx: &Context<Self>) -> Html {
        let page = self.app.saved.page;
        let again = ctx.link().callback(|_: MouseEvent| Message::Again);
        html! {
            <>
                <a class="skip" href="#content" onclick={skip_to_content()}>{ label(Ui::SkipToContent) }</a>
                { top_bar(&self.app, self.timers(), &self.dispatch) }
                { self.choice() }
                { notices(&self.app.session.notices, ctx.props().opened.unreadable.as_deref(), &self.dispatch) }
                { match self.room() {
                    Some(room) => room(&self.app, &self.dispatch),
                    None => waiting(page, self.missing, again),
                } }
                { bottom_bar(page) }
            </>
        }
    }

    /// After every change: stores the state, shows the theme, names the page in the address.
    fn rendered(&mut self, ctx: &Context<Self>, _first: bool) {
        let app = Rc::clone(&self.app);
        let page = app.saved.page;
        let ready = self.room().is_some();
        let before = self.shown.replace((Rc::clone(&app), ready));
        match &before {
            // The state as it was read needs no writing back.
            Some((before, _)) if before.saved != app.saved => {
                let dispatch = self.dispatch.clone();
                let failed = Callback::from(move |notice| dispatch.emit(Action::Tell(notice)));
                ctx.props().opened.save(&app.saved, &failed);
            }
            _ => {}
        }
        show_theme(app.saved.settings.theme);
        // A timer is kept by its part, whatever page is shown.
        let had_timer = before.as_ref().is_some_and(|(before, _)| has_timer(before));
        if has_timer(&app) && !had_timer && self.loaded(Page::Timer).is_none() {
            load(Page::Timer, ctx);
        }
        // So is the card of the part in hand.
        if wants_parts(&app)
            && !before.as_ref().is_some_and(|(before, _)| wants_parts(before))
            && self.loaded(Page::Parts).is_none()
        {
            load(Page::Parts, ctx);
        }
        // The cards below the verdict come when it stands.
        if page == Page::FileTest && more_cards().is_none() && self.loaded(page).is_none() {
            load(page, ctx);
        }
        // And what to do with it, which stands on its page.
        if page == Page::Parts
            && app.saved.part.in_hand()
            && next_panel().is_none()
            && self.loaded(Page::Temper).is_none()
        {
            load(Page::Temper, ctx);
        }
        let moved = before.as_ref().is_none_or(|(before, _)| before.saved.page != page);
        if moved {
            name_page(page, before.is_none());
            if !ready {
                load(page, ctx);
            }
        } else if ready && before.is_some_and(|(_, ready)| !ready) {
            // The heading that had the focus while the room was fetched is gone.
            focus_heading();
        }
    }
}

impl Application {
    fn room(&self) -> Option<Room> {
        let page = self.app.saved.page;
        self.loaded(page).or_else(|| at_hand(page))
    }

    fn loaded(&self, page: Page) -> Option<Room> {
        self.rooms.iter().find(|(of, _)| *of == page).map(|(_, room)| *room)
    }

    /// What belongs to the part in hand on every page but its own.
    fn choice(&self) -> Html {
        match self.loaded(Page::Parts) {
            Some(room) if self.app.saved.page != Page::Parts => room(&self.app, &self.dispatch),
            _ => Html::default(),
        }
    }

    /// What the top bar shows of the timers; while their part is not there, the way to it.
    fn timers(&self) -> Html {
        match self.loaded(Page::Timer) {
            _ if self.app.saved.page == Page::Timer => Html::default(),
            Some(room) => room(&self.app, &self.dispatch),
            None if has_timer(&self.app) => {
                html! { <a class="running" href={Page::Timer.hash()}>{ label(Ui::Timer) }</a> }
            }
            None => Html::default(),
        }
    }
}

fn has_timer(app: &App) -> bool {
    app.saved.timer.any()
}

fn wants_parts(app: &App) -> bool {
    app.session.choosing || app.saved.part.in_hand()
}

/// Loads a part and tells when it came or did not.
fn load(page: Page, ctx: &Context<Application>) {
    let link = ctx.link().clone();
    wasm_bindgen_futures::spawn_local(async move {
        let room = rooms::load(page).await;
        link.send_message(Message::Came(page, room));
    });
}

/// What stands in a room's place until it is there.
fn waiting(page: Page, failed: bool, again: Callback<MouseEvent>) -> Html {
    html! {
        <main id="content" class="wide">
            <h1 tabindex="-1" class="unseen">{ title(page) }</h1>
            <div class="col">
                { tabs(page) }
                <div role="status">
                    if failed {
                        <section class="refusal">
                            <p><b>{ label(Ui::PartMissing) }</b></p>
                            { p(label(Ui::PartMissingInstead)) }
                            <button type="button" class="strong" onclick={again}>{ label(Ui::TryAgain) }</button>
                        </section>
                    } else {
                        { para("hint", label(Ui::PartComing)) }
                    }
                </div>
            </div>
        </main>
    }
}

fn first_state(opened: &Opened) -> App {
    let mut app = App::default();
    if let Some(saved) = &opened.saved {
        app.saved = saved.clone();
    }
    if let Some(page) = page_of_address() {
        app.saved.page = page;
    }
    app.session.notices.extend(opened.notice);
    if said_of_page("data-update").as_deref() == Some("waiting") {
        app.session.notices.push(Notice::UpdateWaiting);
    }
    app
}

/// What the start script left on the page.
pub(crate) fn said_of_page(name: &str) -> Option<String> {
    gloo::utils::document_element().get_attribute(name)
}

fn page_of_address() -> Option<Page> {
    Page::from_hash(&gloo::utils::window().location().hash().ok()?)
}

/// Moves the focus without touching the address, which names the page.
fn skip_to_content() -> Callback<MouseEvent> {
    Callback::from(|event: MouseEvent| {
        event.prevent_default();
        focus_heading();
    })
}

/// Puts the focus on the page's heading, so that a screen reader starts there.
fn focus_heading() {
    use wasm_bindgen::JsCast;
    let heading = gloo::utils::document().query_selector("main h1").ok().flatten();
    if let Some(heading) = heading.and_then(|h| h.dyn_into::<web_sys::HtmlElement>().ok()) {
        // An element that cannot take the focus leaves it where it was.
        let _ = heading.focus();
    }
}

/// Sets the theme and leaves it where the start script finds it; where storage is closed to the page,
/// the theme still holds until the page is left.
fn show_theme(theme: Theme) {
    let root = gloo::utils::document_element();
    let storage = gloo::utils::window().local_storage().ok().flatten();
    let name = match theme {
        Theme::Auto => {
            let _ = root.remove_attribute("data-theme");
            let _ = storage.map(|storage| storage.remove_item(THEME_KEY));
            return;
        }
        Theme::Light => "light",
        Theme::Dim => "dim",
    };
    let _ = root.set_attribute("data-theme", name);
    let _ = storage.map(|storage| storage.set_item(THEME_KEY, name));
}

/// Keeps the address and the page the same, so that the back button works.
fn name_page(page: Page, first: bool) {
    let location = gloo::utils::window().location();
    let named = location.hash().is_ok_and(|hash| hash == page.hash());
    if first {
        // The first page replaces the bare address, so that "back" leaves at once.
        if !named {
            let _ = location.replace(page.hash());
        }
        return;
    }
    if !named {
        let _ = location.set_hash(page.hash());
    }
    focus_heading();
}

/// What comes from outside the components: the back button, and what the start script says about the
/// service worker.
fn listeners(dispatch: &Dispatch, ctx: &Context<Application>) -> Vec<EventListener> {
    // Ahead of their use, but only when the page stands and the worker has fetched every file, so that none is
    // fetched twice.
    let link = ctx.link().clone();
    let ahead = move || {
        let link = link.clone();
        Timeout::new(REST, move || link.send_message(Message::Ahead)).forget();
    };
    if said_of_page("data-offline").is_some() {
        ahead();
    }
    let window = gloo::utils::window();
    let listen = |name: &'static str, answer: fn() -> Option<Action>| {
        let dispatch = dispatch.clone();
        EventListener::new(&window, name, move |_| {
            if let Some(action) = answer() {
                dispatch.emit(action);
            }
        })
    };
    let worker = EventListener::once(&window, "biteband:settled", move |_| ahead());
    vec![
        worker,
        listen("hashchange", || page_of_address().map(Action::Go)),
        listen("biteband:offline-ready", || Some(Action::Tell(Notice::OfflineReady))),
        listen("biteband:update-waiting", || Some(Action::Tell(Notice::UpdateWaiting))),
    ]
}

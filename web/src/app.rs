//! The application as a whole: state, address, theme, notices.

use std::rc::Rc;

use biteband_bench::state::{Action, App, Notice, Page, Theme, reduce};
use biteband_bench::words::{Language, Phrase, Ui};
use gloo::events::EventListener;
use yew::prelude::*;

use crate::pages::{
    about::about, convert::convert, file_test::file_test, mark::mark, paper::paper,
};
use crate::parts::bars::{bottom_bar, top_bar};
use crate::parts::notices::notices;
use crate::store::Opened;

/// The one language of this version; the phrases come from `bench`.
pub(crate) const LANGUAGE: Language = Language::English;

/// Where the start script finds the chosen theme before the first paint.
const THEME_KEY: &str = "biteband.theme";

/// A fixed label.
pub(crate) fn label(ui: Ui) -> AttrValue {
    AttrValue::from(LANGUAGE.say(Phrase::Ui(ui)))
}

/// Sends actions to the reducer.
pub(crate) type Dispatch = Callback<Action>;

#[derive(Clone, PartialEq, Properties)]
pub(crate) struct Props {
    pub(crate) opened: Opened,
}

/// `bench`'s state as a thing that Yew can reduce.
#[derive(PartialEq)]
struct Model(Rc<App>);

impl Reducible for Model {
    type Action = Action;

    fn reduce(self: Rc<Self>, action: Action) -> Rc<Self> {
        let next = reduce(&self.0, action);
        if next == *self.0 { self } else { Rc::new(Self(Rc::new(next))) }
    }
}

fn first_state(opened: &Opened) -> Model {
    let mut app = App::default();
    if let Some(saved) = &opened.saved {
        app.saved = saved.clone();
    }
    if let Some(page) = page_of_address() {
        app.saved.page = page;
    }
    app.session.notices.extend(opened.notice);
    let root = gloo::utils::document_element();
    if root.get_attribute("data-update").as_deref() == Some("waiting") {
        app.session.notices.push(Notice::UpdateWaiting);
    }
    Model(Rc::new(app))
}

fn page_of_address() -> Option<Page> {
    Page::from_hash(&gloo::utils::window().location().hash().ok()?)
}

/// The application.
#[component]
pub(crate) fn Application(props: &Props) -> Html {
    let opened = props.opened.clone();
    let model = use_reducer({
        let opened = opened.clone();
        move || first_state(&opened)
    });
    let app = Rc::clone(&model.0);
    let dispatch: Dispatch = {
        let dispatcher = model.dispatcher();
        use_callback((), move |action, ()| dispatcher.dispatch(action))
    };
    use_following(&app, &opened, &dispatch);
    use_messages(&dispatch);

    let page = match app.saved.page {
        Page::FileTest => file_test(&app, &dispatch),
        Page::Convert => convert(&app, &dispatch),
        Page::Mark => mark(&app, &dispatch),
        Page::Paper => paper(&app, &dispatch),
        Page::About => about(&app, &dispatch),
    };
    html! {
        <>
            <a class="skip" href="#content" onclick={skip_to_content()}>{ label(Ui::SkipToContent) }</a>
            { top_bar(app.saved.page, &dispatch) }
            { notices(&app.session.notices, opened.unreadable.as_deref(), &dispatch) }
            { page }
            { bottom_bar(app.saved.page) }
        </>
    }
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

/// After every change: stores the state, shows the theme, names the page in the address.
#[hook]
fn use_following(app: &Rc<App>, opened: &Opened, dispatch: &Dispatch) {
    let (opened, dispatch) = (opened.clone(), dispatch.clone());
    let before = use_mut_ref(|| None::<Rc<App>>);
    use_effect_with(Rc::clone(app), move |app| {
        let before = before.replace(Some(Rc::clone(app)));
        match &before {
            // The state as it was read needs no writing back.
            Some(before) if before.saved != app.saved => {
                let failed = Callback::from(move |notice| dispatch.emit(Action::Tell(notice)));
                opened.save(&app.saved, &failed);
            }
            _ => {}
        }
        show_theme(app.saved.settings.theme);
        let shown = before.map(|before| before.saved.page);
        if shown != Some(app.saved.page) {
            name_page(app.saved.page, shown.is_none());
        }
    });
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
#[hook]
fn use_messages(dispatch: &Dispatch) {
    let dispatch = dispatch.clone();
    use_effect_with((), move |()| {
        let window = gloo::utils::window();
        let listen = |name: &'static str, answer: fn() -> Option<Action>| {
            let dispatch = dispatch.clone();
            EventListener::new(&window, name, move |_| {
                if let Some(action) = answer() {
                    dispatch.emit(action);
                }
            })
        };
        let listeners = [
            listen("hashchange", || page_of_address().map(Action::Go)),
            listen("biteband:offline-ready", || Some(Action::Tell(Notice::OfflineReady))),
            listen("biteband:update-waiting", || Some(Action::Tell(Notice::UpdateWaiting))),
        ];
        move || drop(listeners)
    });
}

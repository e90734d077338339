//! The bars on top and at the bottom.

use biteband_bench::state::{Action, App, Page};
use biteband_bench::view::{HandView, hand};
use biteband_bench::words::{Phrase, Ui};
use yew::prelude::*;

use super::chips::press;
use crate::app::{Dispatch, LANGUAGE, label};

/// What is in hand, the timers, and the button to sources, limits and settings.
pub(crate) fn top_bar(app: &App, timers: Html, dispatch: &Dispatch) -> Html {
    let page = app.saved.page;
    let HandView { name, line } = hand(app, LANGUAGE);
    let open = app.session.choosing;
    let choose = press(dispatch, Action::Choose(!open));
    let about = page == Page::About;
    let go = press(dispatch, Action::Go(if about { Page::FileTest } else { Page::About }));
    html! {
        <header class="job">
            <button type="button" class="hand" onclick={choose} aria-expanded={open.to_string()}>
                <b>{ name }</b><span>{ line }</span><span class="unseen">{ label(Ui::ChoosePart) }</span>
                <svg viewBox="0 0 24 24" aria-hidden="true"><path d="M6 9l6 6 6-6" /></svg>
            </button>
            { timers }
            <button type="button" class="go" onclick={go}
                aria-label={if about { label(Ui::Back) } else { label(Ui::OpenAbout) }}>
                <svg viewBox="0 0 24 24" aria-hidden="true">
                    if about {
                        <path d="M15 5l-7 7 7 7" />
                    } else {
                        <path d="M4 7h16 M4 12h16 M4 17h16" />
                    }
                </svg>
            </button>
        </header>
    }
}

/// The rooms of a place, the place itself first; a room more is a line more.
const ROOMS: [&[(Page, &str)]; 3] = [
    &[
        (Page::Convert, label(Ui::TabConvert)),
        (Page::Mark, label(Ui::TabMark)),
        (Page::Paper, label(Ui::TabPaper)),
    ],
    &[
        (Page::Steel, label(Ui::TabSteel)),
        (Page::Temper, label(Ui::TabTemper)),
        (Page::Timer, label(Ui::Timer)),
        (Page::Unknown, label(Ui::TabUnknown)),
    ],
    &[(Page::Claim, label(Ui::TabClaim))],
];

/// The rooms of the place that a page belongs to; none for a page that stands alone.
fn rooms_of(page: Page) -> &'static [(Page, &'static str)] {
    let place = ROOMS.into_iter().find(|rooms| rooms.iter().any(|(room, _)| *room == page));
    place.unwrap_or_default()
}

/// What a page is called that is opened from another one.
pub(crate) fn title(page: Page) -> &'static str {
    let room = rooms_of(page).iter().find(|(room, _)| *room == page);
    room.map_or(label(Ui::OpenAbout), |(_, title)| *title)
}

/// The way from one room of a place to another; nothing on a page that is none of them.
pub(crate) fn tabs(shown: Page) -> Html {
    let rooms = rooms_of(shown);
    let [(place, title), _, ..] = rooms else { return Html::default() };
    let name =
        if *place == Page::Convert { LANGUAGE.say(Phrase::Convert) } else { (*title).into() };
    html! {
        <nav class="tabs unsheet" aria-label={name}>
            { for rooms.iter().map(|(page, title)| html! {
                <a href={page.hash()} aria-current={(*page == shown).then_some("page")}>{ *title }</a>
            }) }
        </nav>
    }
}

/// The places to go.
pub(crate) fn bottom_bar(shown: Page) -> Html {
    let places = [
        (
            Page::FileTest,
            LANGUAGE.say(Phrase::FileTest),
            "M4 20 L16 8 M7 17l3 3 M10 14l3 3 M13 11l3 3 M16 8l4-4",
        ),
        (
            Page::Convert,
            LANGUAGE.say(Phrase::Convert),
            "M4 4v16 M4 6h6 M4 11h4 M4 16h6 M20 4v16 M20 8h-6 M20 13h-4 M20 18h-6",
        ),
        (
            Page::Steel,
            LANGUAGE.say(Phrase::Steel),
            "M4 12a8 8 0 1 0 16 0a8 8 0 1 0-16 0 M8.5 12a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0-7 0",
        ),
        (
            Page::Claim,
            label(Ui::TabClaim).into(),
            "M12 4v16 M5 8h14 M5 8l-2 6h5z M19 8l-3 6h5z M8 20h8",
        ),
        (Page::Parts, label(Ui::Parts).into(), "M5 4h14v16H5z M8 9h8 M8 13h8 M8 17h5"),
    ];
    html! {
        <nav class="foot" aria-label={label(Ui::Pages)}>
            { for places.into_iter().map(|(page, name, icon)| {
                let here = shown == page || rooms_of(shown).first().is_some_and(|(place, _)| *place == page);
                html! {
                    <a href={page.hash()} class={classes!(here.then_some("on"))}
                        aria-current={here.then_some("page")}>
                        <svg viewBox="0 0 24 24" aria-hidden="true"><path d={icon} /></svg>
                        { name }
                    </a>
                }
            }) }
        </nav>
    }
}

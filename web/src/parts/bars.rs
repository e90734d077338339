//! The bars on top and at the bottom.

use std::borrow::Cow;

use biteband_bench::state::{Action, Page};
use biteband_bench::words::{Phrase, Ui};
use yew::prelude::*;

use super::chips::press;
use crate::app::{Dispatch, LANGUAGE, label};

/// What is in hand, and the button to sources, limits and settings.
pub(crate) fn top_bar(page: Page, dispatch: &Dispatch) -> Html {
    let about = page == Page::About;
    let go = press(dispatch, Action::Go(if about { Page::FileTest } else { Page::About }));
    html! {
        <header class="job">
            <div><b>{ label(Ui::Brand) }</b><span>{ label(Ui::QuickLookUp) }</span></div>
            <button type="button" class="go" onclick={go}
                aria-label={label(if about { Ui::Back } else { Ui::OpenAbout })}>
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

/// The rooms of Convert.
const ROOMS: [(Page, &str); 3] = [
    (Page::Convert, label(Ui::TabConvert)),
    (Page::Mark, label(Ui::TabMark)),
    (Page::Paper, label(Ui::TabPaper)),
];

/// The rooms of Steel.
const STEELS: [(Page, &str); 2] =
    [(Page::Steel, label(Ui::TabSteel)), (Page::Unknown, label(Ui::TabUnknown))];

/// What a page is called that is opened from another one.
pub(crate) fn title(page: Page) -> Cow<'static, str> {
    if page == Page::Steel {
        return LANGUAGE.say(Phrase::Steel);
    }
    let room = ROOMS.iter().chain(&STEELS).find(|(room, _)| *room == page);
    room.map_or(label(Ui::OpenAbout), |(_, title)| title).into()
}

/// The way from one room of a place to another; nothing on a page that is none of them.
pub(crate) fn tabs(shown: Page) -> Html {
    let places: [(&[(Page, &'static str)], Phrase<'_>); 2] =
        [(&ROOMS, Phrase::Convert), (&STEELS, Phrase::Steel)];
    let place = places.into_iter().find(|(rooms, _)| rooms.iter().any(|(page, _)| *page == shown));
    let Some((rooms, name)) = place else { return Html::default() };
    html! {
        <nav class="tabs unsheet" aria-label={LANGUAGE.say(name)}>
            { for rooms.iter().map(|(page, title)| html! {
                <a href={page.hash()} aria-current={(*page == shown).then_some("page")}>{ *title }</a>
            }) }
        </nav>
    }
}

/// The places to go.
pub(crate) fn bottom_bar(shown: Page) -> Html {
    let places = [
        (Page::FileTest, Phrase::FileTest, "M4 20 L16 8 M7 17l3 3 M10 14l3 3 M13 11l3 3 M16 8l4-4"),
        (
            Page::Convert,
            Phrase::Convert,
            "M4 4v16 M4 6h6 M4 11h4 M4 16h6 M20 4v16 M20 8h-6 M20 13h-4 M20 18h-6",
        ),
        (
            Page::Steel,
            Phrase::Steel,
            "M4 12a8 8 0 1 0 16 0a8 8 0 1 0-16 0 M8.5 12a3.5 3.5 0 1 0 7 0a3.5 3.5 0 1 0-7 0",
        ),
    ];
    html! {
        <nav class="foot" aria-label={label(Ui::Pages)}>
            { for places.into_iter().map(|(page, phrase, icon)| {
                // Marks and paper are rooms of Convert, unknown bars one of Steel.
                let here = shown == page
                    || (page == Page::Convert && matches!(shown, Page::Mark | Page::Paper))
                    || (page == Page::Steel && shown == Page::Unknown);
                html! {
                    <a href={page.hash()} class={classes!(here.then_some("on"))}
                        aria-current={here.then_some("page")}>
                        <svg viewBox="0 0 24 24" aria-hidden="true"><path d={icon} /></svg>
                        { LANGUAGE.say(phrase) }
                    </a>
                }
            }) }
        </nav>
    }
}

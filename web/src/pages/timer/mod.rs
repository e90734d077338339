//! Timers: a page of its own, and what a running one shows on every other page.

mod browser;
mod keeper;

use std::rc::Rc;

use biteband_bench::state::{App, Field, Page, TimerAction, TimerField};
use biteband_bench::view::{Doing, TimerRow, TimerView, timer as view_of, timer_watch};
use biteband_bench::words::TimerPage as T;
use yew::prelude::*;

use crate::app::{Dispatch, LANGUAGE};
use crate::asked;
use crate::parts::bars::tabs;
use crate::parts::chips::{Name as Group, chips, off, press};
use crate::parts::field::{Look, field};
use crate::parts::text::{block, heading, p, para, section};

const fn say(label: T) -> &'static str {
    LANGUAGE.timer_page(label)
}

/// The page; on another page, what its top bar shows of the timers. Every drawing passes here, so that this is also
/// where what runs is kept going.
pub(crate) fn timer(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    keeper::follow(app, dispatch);
    if app.saved.page == Page::Timer { page(app, dispatch) } else { bar(app, dispatch) }
}

fn act(dispatch: &Dispatch, action: TimerAction) -> Callback<MouseEvent> {
    press(dispatch, action.into())
}

/// What a press does that needs the time of the press. The press also lets the page sound.
fn at_press(
    dispatch: &Dispatch,
    action: impl Fn(i64) -> TimerAction + 'static,
) -> Callback<MouseEvent> {
    let dispatch = dispatch.clone();
    Callback::from(move |_: MouseEvent| {
        keeper::touched();
        dispatch.emit(action(asked::clock().now_ms).into());
    })
}

fn key(class: &'static str, text: &str, onclick: Callback<MouseEvent>) -> Html {
    html! { <button type="button" {class} {onclick}>{ text.to_owned() }</button> }
}

/// On other pages: what rings lies over the top, so that it is seen and can be quieted from everywhere.
fn bar(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let watch = timer_watch(app, LANGUAGE, asked::clock().now_ms);
    let rings = watch.rings.into_iter().map(|(index, text)| {
        html! {
            <p>
                <a href={Page::Timer.hash()}>{ text }</a>
                { key("strong", say(T::Quiet), act(dispatch, TimerAction::Quiet(index))) }
            </p>
        }
    });
    let rings: Vec<Html> = rings.collect();
    html! {
        <>
            if let Some(chip) = watch.chip {
                <a class="running" href={Page::Timer.hash()} aria-label={watch.label}>
                    <svg viewBox="0 0 24 24" aria-hidden="true"><path d="M4 13a8 8 0 1 0 16 0a8 8 0 1 0-16 0 M12 13V8 M9 2h6" /></svg>
                    { chip }
                </a>
            }
            <div role="alert" class={(!rings.is_empty()).then_some("ringing")}>{ rings }</div>
        </>
    }
}

fn page(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let view = view_of(app, LANGUAGE, asked::clock(), keeper::device());
    let alerts = view.alerts.iter().map(|text| para("met", text));
    let rows = view.rows.iter().enumerate().map(|(index, one)| {
        // Known again by its start, so that a second press never meets the timer that moved up.
        let twins = view.rows.iter().take(index).filter(|other| other.start_ms == one.start_ms);
        let key = format!("{}-{}", one.start_ms, twins.count());
        html! { <div {key} class="col">{ row(dispatch, index, one) }</div> }
    });
    html! {
        <main id="content" class="wide timers">
            <h1 tabindex="-1" class="unseen">{ say(T::Title) }</h1>
            <div class="col">
                { tabs(Page::Timer) }
                <div role="alert">{ for alerts }</div>
                if let Some(hint) = &view.hint { { para("hint", hint) } }
                <>{ for rows }</>
                if let Some(back) = &view.put_back {
                    { key("quiet", back, act(dispatch, TimerAction::PutBack)) }
                }
            </div>
            { block("col", vec![next(app, dispatch, &view), device(dispatch, &view)]) }
        </main>
    }
}

fn row(dispatch: &Dispatch, index: usize, row: &TimerRow) -> Html {
    let mut keys: Vec<Html> = Vec::new();
    if row.doing == Doing::Rings {
        let quiet = act(dispatch, TimerAction::Quiet(index));
        keys.push(key("strong", say(T::Quiet), quiet));
    }
    keys.extend(row.more.iter().map(|(by_ms, label)| {
        let by_ms = *by_ms;
        let more = at_press(dispatch, move |now_ms| TimerAction::Add { index, now_ms, by_ms });
        key("", label, more)
    }));
    let word = if row.doing == Doing::Runs { T::Stop } else { T::Remove };
    keys.push(key("", say(word), act(dispatch, TimerAction::Stop(index))));
    let class = if row.doing == Doing::Rings { "verdict conflict" } else { "verdict" };
    html! {
        <section {class} role="group" aria-label={row.name.clone()}>
            { para("say", &row.name) }
            <p class="num" role="timer">{ row.figure.clone() }</p>
            { para("say", &row.say) }
            { for row.notes.iter().map(|note| para("met", note)) }
            { block("actions", keys) }
        </section>
    }
}

/// The next timer.
fn next(app: &Rc<App>, dispatch: &Dispatch, view: &TimerView) -> Html {
    let kinds = view.kinds.iter();
    let kinds = kinds.map(|(kind, chip)| (chip.clone(), TimerAction::Kind(*kind).into()));
    let typed = |name, title, hint, problem| {
        let look = Look { title: say(title), hint: Some(say(hint)), class: "field" };
        field(app, dispatch, Field::Timer(name), look, problem)
    };
    let room = view.full.is_none();
    let start = |length_ms: Option<i64>, class: &'static str, text: &str| {
        let length_ms = length_ms.filter(|_| room);
        let start =
            |length_ms| at_press(dispatch, move |now_ms| TimerAction::Start { now_ms, length_ms });
        html! {
            <button type="button" {class} aria-disabled={off(length_ms.is_some())} onclick={length_ms.map(start)}>{ text.to_owned() }</button>
        }
    };
    let keys = view.keys.iter();
    let keys = keys.map(|(length_ms, label)| start(Some(*length_ms), "", label));
    let mut card = vec![chips(dispatch, say(T::KindTitle), Group::Seen, kinds)];
    card.push(typed(TimerField::Label, T::Part, T::PartHint, None));
    card.push(html! {
        <div class="group" role="group" aria-label={say(T::Keys)}>
            <span class="group-name" aria-hidden="true">{ say(T::Keys) }</span>
            <div class="starts">{ for keys }</div>
        </div>
    });
    card.push(view.full.iter().map(|full| para("hint", full)).collect());
    card.push(typed(TimerField::Length, T::Length, T::LengthHint, view.problem.as_ref()));
    card.push(start(view.typed_ms, "strong", say(T::Start)));
    section("card", card)
}

/// What the device does and does not, and what can be tried.
fn device(dispatch: &Dispatch, view: &TimerView) -> Html {
    let mut card = vec![heading(say(T::NotesTitle))];
    card.extend(view.notes.iter().map(|note| p(note)));
    let mut keys =
        vec![key("", say(T::TrySound), Callback::from(|_: MouseEvent| keeper::try_sound()))];
    if view.can_ask {
        let dispatch = dispatch.clone();
        let ask = Callback::from(move |_: MouseEvent| {
            let dispatch = dispatch.clone();
            wasm_bindgen_futures::spawn_local(async move {
                browser::ask().await;
                let now_ms = asked::clock().now_ms;
                dispatch.emit(TimerAction::Tick(now_ms).into());
            });
        });
        keys.push(key("", say(T::AskNotes), ask));
    }
    card.push(block("actions", keys));
    section("card", card)
}

//! The part in hand: what it is, what was done to it, and what can be done with its card.

use std::rc::Rc;

use biteband_bench::card::file::MOST_NOTES;
use biteband_bench::card::{self, Card, Sheets, compare, text};
use biteband_bench::print::{self, Paper};
use biteband_bench::state::{Action, App, Field as Name, PartAction, PartField};
use biteband_bench::view::{
    CardView, FactGroup, Kept, Problem, SheetView, fact_groups, name_of, part_card as view_of,
};
use biteband_bench::words::{Paper as OnPaper, PartsPage as P};
use yew::prelude::*;

use super::list::{key, with};
use super::state::{Shown, State};
use super::{acts, browser, photos, say, story};
use crate::app::LANGUAGE;
use crate::asked::clock;
use crate::parts::chips::{Name as Group, button, chips, press};
use crate::parts::field::{Look, field};
use crate::parts::text::{heading, p, para, section};
use crate::rooms::next_panel;

/// What everything about the part in hand is drawn from.
pub(super) struct Own<'a> {
    pub(super) shown: &'a Shown<'a>,
    pub(super) card: &'a Card,
    pub(super) view: &'a CardView,
}

/// The columns of the part in hand; nothing without one.
pub(super) fn card(shown: &Shown<'_>) -> Option<Html> {
    let card = shown.own?;
    let view = view_of(shown.app, card, LANGUAGE, clock());
    let own = Own { shown, card, view: &view };
    let open = &shown.state.open;
    let mut blocks = vec![("story", story::story(&own)), ("next", panel(shown))];
    // A part that nothing is known of is named first.
    let named_first = open.named_first.get().unwrap_or(view.story.is_empty());
    open.named_first.set(Some(named_first));
    blocks.insert(if named_first { 0 } else { blocks.len() }, ("what", own.what()));
    let blocks =
        blocks.into_iter().map(|(key, block)| html! { <div {key} class="col">{ block }</div> });
    Some(html! {
        <>
            <div class="col answer unsheet">
                <div class="col">{ for blocks }</div>
                { own.zones() }
                { photos::photos(&own) }
                { own.facts() }
            </div>
            if open.sheet { { own.sheet() } }
        </>
    })
}

/// The panel of the next step. It rests on nothing that is typed on this page, so that it is not worked out anew for it.
fn panel(shown: &Shown<'_>) -> Html {
    let app = shown.app;
    let here = |app: &App| matches!(app.session.active, Some(Name::Part(_)));
    let mut known = shown.panel.borrow_mut();
    if let Some((before, html)) = &*known
        && here(before)
        && here(app)
        && Sheets::of(&before.saved) == Sheets::of(&app.saved)
    {
        return html.clone();
    }
    let html: Html = next_panel().map(|panel| panel(app, shown.dispatch)).into_iter().collect();
    *known = Some((Rc::clone(app), html.clone()));
    html
}

impl Own<'_> {
    /// A field of the part.
    pub(super) fn field(&self, name: PartField) -> Html {
        let look =
            Look { title: say(P::Field(name)), hint: Some(say(P::Hint(name))), class: "field" };
        let shown = self.shown;
        field(shown.app, shown.dispatch, Name::Part(name), look, self.problem(name))
    }

    fn problem(&self, name: PartField) -> Option<&Problem> {
        let found = self.view.problems.iter().find(|(field, _)| *field == name);
        found.map(|(_, problem)| problem)
    }

    pub(super) fn button(&self, label: P, action: PartAction) -> Html {
        button(self.shown.dispatch, say(label), action.into())
    }

    /// Name, origin and notes.
    fn what(&self) -> Html {
        let inside = vec![self.field(PartField::Name), self.field(PartField::Origin), self.notes()];
        section("card", inside)
    }

    /// What the card holds, told when it is asked for.
    fn facts(&self) -> Html {
        let open = self.shown.state.open.facts;
        let hand = self.shown.hand.clone();
        let turn = Callback::from(move |event: MouseEvent| {
            event.prevent_default();
            hand.change(|state| state.open.facts = !state.open.facts);
        });
        html! {
            <details class="card" {open}>
                <summary onclick={turn}>{ say(P::Facts) }</summary>
                if open { { for fact_groups(self.card, LANGUAGE).iter().map(facts) } }
            </details>
        }
    }

    fn notes(&self) -> Html {
        let name = PartField::Notes;
        let dispatch = self.shown.dispatch.clone();
        let oninput = Callback::from(move |event: InputEvent| {
            if let Some(text) = browser::value(&event) {
                dispatch.emit(Action::Edit(Name::Part(name), text));
            }
        });
        html! {
            <div class="field">
                <label for="field-part-notes">{ say(P::Field(name)) }</label>
                <textarea id="field-part-notes" rows="3" maxlength={MOST_NOTES.to_string()} aria-describedby="field-part-notes-hint"
                    value={self.shown.app.saved.part.text(name).to_owned()} {oninput} />
                <p class="small" id="field-part-notes-hint">{ say(P::Hint(name)) }</p>
            </div>
        }
    }

    /// What can be done with the card, as keys in a row.
    pub(super) fn keys(&self) -> Html {
        let shown = self.shown;
        let chip = |on: bool, text: P, onclick: Callback<MouseEvent>| {
            html! {
                <button type="button" class={if on { "chip on" } else { "chip" }}
                    aria-expanded={on.to_string()} {onclick}>{ say(text) }</button>
            }
        };
        let open = &shown.state.open;
        let send = {
            let (hand, title) = (shown.hand.clone(), self.view.name.clone());
            let card = self.card.clone();
            Callback::from(move |_: MouseEvent| {
                hand.change(|state| state.open.text = true);
                acts::send(&hand, title.clone(), as_text(&card));
            })
        };
        let recipe = {
            let (hand, card) = (shown.hand.clone(), self.card.clone());
            Callback::from(move |_: MouseEvent| acts::as_recipe(&hand, card.clone()))
        };
        let export = {
            let (hand, card) = (shown.hand.clone(), self.card.clone());
            Callback::from(move |_: MouseEvent| {
                acts::export(&hand, Some(card.clone()), Some(card.id.clone()));
            })
        };
        let delete = {
            let (hand, app, id) = (shown.hand.clone(), Rc::clone(shown.app), self.card.id.clone());
            Callback::from(move |_: MouseEvent| acts::delete(&hand, &app, id.clone()))
        };
        // What opens elsewhere on the page takes the focus, or nobody would see it.
        let opens = |does: fn(&mut State), focus: &'static str| {
            let hand = shown.hand.clone();
            Callback::from(move |_: MouseEvent| {
                hand.change(does);
                browser::focus_later(focus);
            })
        };
        html! {
            <div class="chips">
                { chip(open.sheet, P::Print, opens(|state| state.open.sheet = !state.open.sheet, ".sheets .strong")) }
                { key("chip", say(P::Send), send) }
                { key("chip", say(P::UseAsRecipe), recipe) }
                { chip(open.with.is_some(), P::Compare, opens(|state| {
                    let open = state.open.with.is_some();
                    state.open.with = (!open).then(String::new);
                }, "#compare-with")) }
                { key("chip", say(P::ExportThis), export) }
                { key("chip", say(P::Delete), delete) }
            </div>
        }
    }

    /// The text of the card, to be taken by hand where nothing else takes it.
    pub(super) fn text(&self) -> Html {
        let close = with(self.shown, |state| state.open.text = false);
        let inside = vec![
            heading(say(P::SendText)),
            html! { <textarea class="stored" readonly=true rows="12" aria-label={say(P::SendText)} value={as_text(self.card)} /> },
            key("", say(P::Close), close),
        ];
        section("card", inside)
    }

    /// Beside another part.
    pub(super) fn compared(&self) -> Html {
        let shown = self.shown;
        let with_id = shown.state.open.with.clone().unwrap_or_default();
        let onchange = {
            let hand = shown.hand.clone();
            Callback::from(move |event: Event| {
                if let Some(id) = browser::value(&event) {
                    hand.change(move |state| state.open.with = Some(id));
                }
            })
        };
        let others = shown.kept.iter().filter_map(Kept::card).filter(|one| one.id != self.card.id);
        let options = others.map(|one| {
            let on = one.id == with_id;
            html! { <option value={one.id.clone()} selected={on}>{ name_of(one, LANGUAGE) }</option> }
        });
        let other = shown.kept.iter().filter_map(Kept::card).find(|one| one.id == with_id);
        let inside = vec![
            heading(say(P::Compare)),
            html! {
                <label class="choice"><span>{ say(P::CompareWith) }</span>
                    <select id="compare-with" {onchange}>
                        <option value="" selected={with_id.is_empty()}>{ say(P::CompareNone) }</option>
                        { for options }
                    </select>
                </label>
            },
            other.map_or_else(Html::default, |other| {
                let rows = compare(self.card, other, LANGUAGE);
                beside(&self.view.name, &name_of(other, LANGUAGE), &rows)
            }),
            key("", say(P::CompareEnd), with(shown, |state| state.open.with = None)),
        ];
        section("card", inside)
    }

    /// Places that are wanted otherwise.
    fn zones(&self) -> Html {
        let shown = self.shown;
        let kept = self.view.zones.iter().enumerate().map(|(index, zone)| {
            let gone = press(shown.dispatch, PartAction::RemoveZone(index).into());
            html! {
                <li>
                    <span>{ zone.text.clone() }</span>
                    <button type="button" aria-label={zone.remove.clone()} onclick={gone}>{ say(P::Remove) }</button>
                </li>
            }
        });
        let kept: Vec<Html> = kept.collect();
        let struck = {
            let dispatch = shown.dispatch.clone();
            Callback::from(move |_: MouseEvent| {
                for (field, text) in
                    [(PartField::ZonePlace, P::StruckEnd), (PartField::ZoneTarget, P::StruckTarget)]
                {
                    dispatch.emit(Action::Edit(Name::Part(field), say(text).to_owned()));
                }
            })
        };
        let caution = &self.view.struck;
        let inside = vec![
            para("small", say(P::ZonesWhy)),
            crate::parts::chips::list(say(P::Zones), kept),
            self.field(PartField::ZonePlace),
            self.field(PartField::ZoneTarget),
            if caution.is_empty() { Html::default() } else { section("caution", vec![p(caution)]) },
            html! {
                <div class="actions">
                    { self.button(P::AddZone, PartAction::AddZone) }
                    { key("", say(P::StruckKey), struck) }
                </div>
            },
        ];
        let open = !self.card.zones.is_empty() || self.problem(PartField::ZonePlace).is_some();
        html! { <details class="card" {open}><summary>{ say(P::Zones) }</summary>{ inside }</details> }
    }

    /// The card on one page of paper.
    fn sheet(&self) -> Html {
        let shown = self.shown;
        let letter = shown.app.saved.paper.letter;
        let (paper, class) = if letter { (Paper::Letter, "letter") } else { (Paper::A4, "a4") };
        let sheet = SheetView::from(print::part_card(self.card, LANGUAGE, paper, east()));
        let sizes = [(false, "A4"), (true, "Letter")].map(|(of, name)| {
            let label = name.to_owned();
            let chip = biteband_bench::view::Chip { key: name, label, on: of == letter };
            (chip, Action::PaperLetter(of))
        });
        let print = Callback::from(|_: MouseEvent| browser::print());
        let close = with(shown, |state| state.open.sheet = false);
        html! {
            <div class={classes!("col", "rest", "sheets", class)}>
                <section class="card unsheet">
                    { chips(shown.dispatch, LANGUAGE.paper(OnPaper::Size), Group::Seen, sizes) }
                    <div class="actions">
                        { key("strong", LANGUAGE.paper(OnPaper::Print), print) }
                        { key("", say(P::Close), close) }
                    </div>
                </section>
                <img src={sheet.address} alt={sheet.title} />
            </div>
        }
    }
}

fn as_text(card: &Card) -> String {
    text::plain(card, LANGUAGE, east())
}

/// By how many minutes the local time is ahead.
fn east() -> i32 {
    i32::try_from(clock().east_min).unwrap_or_default()
}

fn facts(group: &FactGroup) -> Html {
    let rows = group.rows.iter().map(|(label, text)| {
        html! { <div><dt>{ label.clone() }</dt><dd>{ text.clone() }</dd></div> }
    });
    html! {
        <div class="origin">
            <h3>{ group.title }</h3>
            <dl>{ for rows }</dl>
            if let Some((page, words)) = group.change { <a class="link" href={page.hash()}>{ words }</a> }
        </div>
    }
}

/// Two cards in a table, each fact over both; what differs is said in words and stands out.
pub(super) fn beside(one: &str, other: &str, rows: &[card::Row]) -> Html {
    let rows = rows.iter().map(|row| {
        let mark = if row.differs { P::Differs } else { P::Same };
        html! {
            <tbody class={row.differs.then_some("differs")}>
                <tr><th scope="rowgroup" colspan="2">{ row.label.clone() }{ ": " }{ say(mark) }</th></tr>
                <tr><td>{ shown_or_dash(&row.a) }</td><td>{ shown_or_dash(&row.b) }</td></tr>
            </tbody>
        }
    });
    html! {
        <table class="versus">
            <thead><tr><th scope="col">{ one.to_owned() }</th><th scope="col">{ other.to_owned() }</th></tr></thead>
            { for rows }
        </table>
    }
}

fn shown_or_dash(text: &str) -> String {
    if text.is_empty() { "–".to_owned() } else { text.to_owned() }
}

//! Steel: what a bar is, what its section reaches in a bath, and how to heat it.

use std::rc::Rc;

use biteband_bench::format::plain as place;
use biteband_bench::state::{
    Action, App, Field as Name, Page, SteelAction, SteelField, TimerAction, TimerKind,
};
use biteband_bench::view::{
    BandView, HeatView, ReachView, SectionView, SteelView, steel_page as view_of,
};
use biteband_bench::words::{Phrase, SteelPage as S};
use yew::prelude::*;

use super::convert::refusal;
use crate::app::{Dispatch, LANGUAGE};
use crate::parts::bars::tabs;
use crate::parts::chips::{Name as Group, chips, folded, key, keys, list, press};
use crate::parts::field::{Look, field};
use crate::parts::text::{block, heading, p, para, ps, section};
use crate::rooms::{Heat, on_card};

const fn say(label: S) -> &'static str {
    LANGUAGE.steel_page(label)
}

/// The page.
pub(crate) fn steel(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let view = view_of(app, LANGUAGE);
    let shown = Shown { app, dispatch, view: &view };
    let mut status: Vec<Html> = Vec::new();
    if !view.hint.is_empty() {
        status.push(para("hint", &view.hint));
    }
    status.extend(view.problem.iter().map(refusal));
    if let Some(stop) = view.heat.as_ref().and_then(|heat| heat.stop.as_ref()) {
        status.push(section("caution", vec![para("met", stop)]));
    }
    status.extend(view.reach.iter().map(verdict));
    html! {
        <main id="content" class="wide flow">
            <h1 tabindex="-1" class="unseen">{ LANGUAGE.say(Phrase::Steel) }</h1>
            { block("col asked", vec![tabs(Page::Steel), shown.steel(), shown.section()]) }
            <div role="status" class="col answer">{ status }</div>
            { block("col asked", vec![shown.bath(), shown.amounts(), shown.kinds(), shown.air()]) }
            <div class="col rest">
                <>{ for view.reach.iter().map(reached) }</>
                <>{ for view.heat.iter().map(|heat| shown.recipe(heat)) }</>
                if view.heat.is_none() { <a class="go" href={Page::Timer.hash()}>{ say(S::Timer) }</a> }
                if !view.cautions.is_empty() { { section("caution", vec![ps(&view.cautions)]) } }
                { folds(&view) }
            </div>
        </main>
    }
}

struct Shown<'a> {
    app: &'a Rc<App>,
    dispatch: &'a Dispatch,
    view: &'a SteelView,
}

fn act(action: SteelAction) -> Action {
    Action::Steel(action)
}

impl Shown<'_> {
    fn typed(&self, name: SteelField, title: S, hint: Option<S>, class: &'static str) -> Html {
        let look = Look { title: say(title), hint: hint.map(say), class };
        let problem = self.view.problems.iter().find(|(field, _)| *field == name);
        field(self.app, self.dispatch, Name::Steel(name), look, problem.map(|(_, problem)| problem))
    }

    fn key(&self, text: &str, on: Option<bool>, action: SteelAction) -> Html {
        key(self.dispatch, text, on, act(action))
    }

    fn steel(&self) -> Html {
        let view = self.view;
        let how =
            view.how.iter().map(|(by, chip)| (chip.clone(), act(SteelAction::ByComposition(*by))));
        let asked = if self.app.saved.steel.by_composition { self.own() } else { self.named() };
        let kept = view.kept.iter().enumerate().map(|(index, bar)| {
            self.entry(bar, Some(SteelAction::Take(index)), SteelAction::Forget(index), S::Forget)
        });
        let card = vec![
            chips(self.dispatch, say(S::How), Group::Heard, how),
            asked,
            list(say(S::KeptBars), kept.collect()),
        ];
        section("card", card)
    }

    /// A steel by its composition.
    fn own(&self) -> Html {
        let inside = [
            self.typed(SteelField::Own, S::Own, Some(S::OwnHint), "field"),
            self.typed(SteelField::OwnName, S::OwnName, None, "field"),
            self.key(say(S::Keep), None, SteelAction::Keep),
        ];
        inside.into_iter().collect()
    }

    /// A steel by its name.
    fn named(&self) -> Html {
        let view = self.view;
        let several = view.candidates.iter();
        let several = several
            .map(|(key, label, on)| self.key(label, Some(*on), SteelAction::Pick(key.clone())));
        let names = view.suggestions.iter();
        let names = names.map(|name| self.key(name, None, SteelAction::Name(name.clone())));
        let inside = [
            self.typed(SteelField::Query, S::Query, Some(S::QueryHint), "field large"),
            keys(say(S::Several), several.collect()),
            keys(say(S::Suggestions), names.collect()),
            ps(&view.understood),
        ];
        inside.into_iter().collect()
    }

    /// A kept thing that can be taken and taken away.
    fn entry(&self, text: &str, take: Option<SteelAction>, remove: SteelAction, word: S) -> Html {
        let gone = press(self.dispatch, act(remove));
        let label = format!("{} {text}", say(word));
        html! {
            <li>
                if let Some(take) = take {
                    { self.key(text, None, take) }
                } else {
                    <span>{ text.to_owned() }</span>
                }
                <button type="button" aria-label={label} onclick={gone}>{ say(word) }</button>
            </li>
        }
    }

    fn section(&self) -> Html {
        let view = self.view;
        let shapes =
            view.shapes.iter().map(|(kind, chip)| (chip.clone(), act(SteelAction::Shape(*kind))));
        let sizes = view.sizes.iter().map(|(name, title)| {
            let hint = if *name == SteelField::Length { S::LengthHint } else { S::SizeHint };
            self.typed(*name, *title, Some(hint), "field")
        });
        let card = vec![
            chips(self.dispatch, say(S::Shape), Group::Seen, shapes),
            sizes.collect(),
            self.typed(SteelField::Target, S::Target, Some(S::TargetHint), "field"),
        ];
        section("card", card)
    }

    fn bath(&self) -> Html {
        let view = self.view;
        let media =
            view.media.iter().map(|chip| (chip.clone(), act(SteelAction::Medium(chip.key))));
        let moved =
            view.movements.iter().map(|chip| (chip.clone(), act(SteelAction::Movement(chip.key))));
        let movement = if view.movements.is_empty() {
            Html::default()
        } else {
            chips(self.dispatch, say(S::Movement), Group::Seen, moved)
        };
        section("card", vec![chips(self.dispatch, say(S::Medium), Group::Seen, media), movement])
    }

    fn amounts(&self) -> Html {
        let fields = [
            (SteelField::Litres, S::Litres, S::LitresHint),
            (SteelField::BathTemperature, S::BathTemperature, S::BathTemperatureHint),
            (SteelField::FlashPoint, S::FlashPoint, S::FlashPointHint),
        ];
        let fields = fields
            .into_iter()
            .map(|(name, title, hint)| self.typed(name, title, Some(hint), "field"));
        folded(say(S::BathTitle), fields.collect())
    }

    fn kinds(&self) -> Html {
        let view = self.view;
        let rows = view.kinds.iter();
        let rows = rows.map(|(text, take)| self.key(text, None, SteelAction::Want(take.clone())));
        let cautions = if view.kind_cautions.is_empty() {
            Html::default()
        } else {
            section("caution", view.kind_cautions.iter().map(|caution| p(caution)).collect())
        };
        let card = [
            self.typed(SteelField::Kind, S::Kind, Some(S::KindHint), "field"),
            keys(say(S::KindRows), rows.collect()),
            cautions,
        ];
        folded(say(S::KindTitle), card.into_iter().collect())
    }

    fn air(&self) -> Html {
        let view = self.view;
        let kinds = view
            .protections
            .iter()
            .map(|chip| (chip.clone(), act(SteelAction::Protection(chip.key))));
        let checks = view.checks.iter().enumerate().map(|(index, check)| {
            self.entry(check, None, SteelAction::RemoveCheck(index), S::Remove)
        });
        let inside = [
            chips(self.dispatch, say(S::Protection), Group::Seen, kinds),
            para("group-name", say(S::OvenTitle)),
            self.typed(SteelField::Dial, S::Dial, Some(S::DialHint), "field"),
            self.typed(SteelField::Truth, S::Truth, None, "field"),
            self.key(say(S::AddCheck), None, SteelAction::AddCheck),
            list(say(S::OvenTitle), checks.collect()),
        ];
        folded(say(S::AirTitle), inside.into_iter().collect())
    }

    fn recipe(&self, view: &HeatView) -> Html {
        let rows = view.rows.iter().map(|row| {
            let timer = view.hold.as_ref().filter(|_| row.name == S::Hold);
            html! {
                <tr>
                    <th scope="row">{ say(row.name) }{ for timer.map(|hold| self.timer(hold)) }</th>
                    <td>{ &row.value }if !row.note.is_empty() { <span class="small">{ &row.note }</span> }</td>
                </tr>
            }
        });
        section(
            "card",
            vec![
                heading(say(S::RecipeTitle)),
                html! { <table class="read recipe"><tbody>{ for rows }</tbody></table> },
                card_key(self.app, self.dispatch, S::OnCard, (&view.done, Heat::Hardened)),
            ],
        )
    }

    /// Takes the hold to the page of timers, where it is started.
    fn timer(&self, hold: &str) -> Html {
        timer_key(self.app, self.dispatch, TimerKind::Soak, hold)
    }
}

/// The key that puts a heat on the card of the part in hand; nothing without one.
pub(super) fn card_key(
    app: &App,
    dispatch: &Dispatch,
    shown: S,
    (what, heat): (&str, fn(String) -> Heat),
) -> Html {
    let Some(does) = on_card(app).filter(|_| !what.is_empty()) else { return Html::default() };
    let label = format!("{}: {what}", say(S::OnCard));
    let (dispatch, what) = (dispatch.clone(), what.to_owned());
    let onclick = Callback::from(move |_: MouseEvent| does(&dispatch, heat(what.clone())));
    html! { <button type="button" aria-label={label} {onclick}>{ say(shown) }</button> }
}

/// The key that takes a time to the page of timers, where it is started.
pub(super) fn timer_key(app: &App, dispatch: &Dispatch, kind: TimerKind, length: &str) -> Html {
    let steel = &app.saved.steel;
    let name = if steel.by_composition { &steel.own_name } else { &steel.query };
    let prepare = TimerAction::Prepare { kind, label: name.clone(), length: length.to_owned() };
    let onclick = press(dispatch, prepare.into());
    html! { <button type="button" {onclick}>{ say(S::Timer) }</button> }
}

fn verdict(view: &ReachView) -> Html {
    section(
        "verdict",
        vec![para("say", &view.asked), para("num words", &view.verdict), para("say", &view.say)],
    )
}

fn reached(view: &ReachView) -> Html {
    let mut parts =
        vec![section("card", vec![heading(say(S::Across)), cut(&view.section), rule(&view.bands)])];
    if !view.ways.is_empty() {
        parts.push(section("next", vec![heading(say(S::WaysTitle)), ps(&view.ways)]));
    }
    parts.into_iter().collect()
}

/// The section from the end, with the hardness of its places.
fn cut(view: &SectionView) -> Html {
    html! {
        <svg class="cut" viewBox="0 0 340 200" role="img" aria-label={view.label.clone()}>
            { for view.layers.iter().map(|layer| html! { <path class={layer.class} d={layer.path.clone()} /> }) }
            { for view.callouts.iter().map(|call| {
                let ((x1, y1), (x2, y2)) = (call.from, call.at);
                html! {
                    <>
                        <line x1={place(x1)} y1={place(y1)} x2={place(x2)} y2={place(y2)} />
                        <circle cx={place(x1)} cy={place(y1)} r="3" />
                        <text x={place(x2)} y={place(y2)} dx="6" dy="-3">{ &call.name }</text>
                        <text class="strong" x={place(x2)} y={place(y2)} dx="6" dy="16">{ &call.shown }</text>
                    </>
                }
            }) }
        </svg>
    }
}

/// The bands of the places on the rule, with the wanted one as a bracket through them.
pub(crate) fn rule(view: &BandView) -> Html {
    let view_box = format!("0 0 320 {}", place(view.height));
    html! {
        <svg class="bands" viewBox={view_box} role="img" aria-label={view.label.clone()}>
            if let Some((x, width)) = view.goal {
                <rect class="goal" x={place(x)} y="2" width={place(width)} height={place(view.goal_height)} />
            }
            if !view.ridge.is_empty() { <path class="belief" d={view.ridge.clone()} /> }
            { for view.rows.iter().map(|row| html! {
                <>
                    <text x="12" y={place(row.name_y)}>{ &row.name }</text>
                    if let Some((x, width)) = row.band {
                        <rect class={if row.open { "band open" } else { "band" }} x={place(x)} y={place(row.band_y)} width={place(width)} height="11" />
                    }
                    if let Some(mid) = &row.mid { <path class="mid" d={mid.clone()} /> }
                </>
            }) }
            <path class="edge" d={view.edge.clone()} />
            { for view.numbers.iter().map(|(x, number)| html! {
                <text class="number" x={place(*x)} y={place(view.numbers_y)}>{ number }</text>
            }) }
        </svg>
    }
}

fn folds(view: &SteelView) -> Html {
    let mut all: Vec<Html> = Vec::new();
    if let Some(heat) = &view.heat {
        for (title, items) in &heat.lists {
            let items = items.iter().map(|item| html! { <li>{ item }</li> });
            all.push(html! { <details key={&**title} class="card"><summary>{ title }</summary><ul class="ticks">{ for items }</ul></details> });
        }
    }
    if !view.card.is_empty() {
        all.push(folded(say(S::CardTitle), ps(&view.card)));
    }
    let why = view.reach.iter().flat_map(|reach| &reach.why);
    let why: Vec<&String> = why.chain(view.heat.iter().flat_map(|heat| &heat.why)).collect();
    if !why.is_empty() {
        all.push(folded(say(S::WhyTitle), ps(why)));
        all.push(folded(say(S::SourcesTitle), ps(&view.sources)));
    }
    all.into_iter().collect()
}

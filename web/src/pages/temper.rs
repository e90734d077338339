//! Temper: tempers for a hardness as the oven's dial shows them, what a temper leaves, the curve, own results.

use std::rc::Rc;

use biteband_bench::format::plain as place;
use biteband_bench::state::{
    Action, App, Field as Name, Page, SteelAction, SteelField, TemperAction, TemperField, TimerKind,
};
use biteband_bench::view::{
    CurveText, CurveView, LookedView, PlanView, ResultRow, TemperView, temper_page as view_of,
};
use biteband_bench::words::{SteelPage, TemperPage as T, Ui};
use yew::prelude::*;

use super::convert::refusal;
use super::steel::{card_key, timer_key};
use crate::app::{Dispatch, LANGUAGE, label};
use crate::parts::bars::tabs;
use crate::parts::chips::{Name as Group, chips, folded, key, keys, list, press};
use crate::parts::field::{Look, field};
use crate::parts::text::{block, heading, p, para, ps, section};
use crate::rooms::Heat;

const fn say(label: T) -> &'static str {
    LANGUAGE.temper_page(label)
}

/// The page.
pub(crate) fn temper(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let view = view_of(app, LANGUAGE);
    let shown = Shown { app, dispatch, view: &view };
    let mut status: Vec<Html> = Vec::new();
    if !view.hint.is_empty() {
        status.push(para("hint", &view.hint));
    }
    status.extend(view.problem.iter().map(refusal));
    status.extend(view.plan.iter().map(verdict));
    status.extend(view.looked.iter().map(looked));
    html! {
        <main id="content" class="wide split">
            <h1 tabindex="-1" class="unseen">{ label(Ui::TabTemper) }</h1>
            { block("col asked", vec![tabs(Page::Temper), shown.asked()]) }
            <div class="col answer">
                <div role="status" class="col">{ status }</div>
                { view.plan.as_ref().map(|plan| steps(app, dispatch, plan)).unwrap_or_default() }
                { view.curve.as_ref().map(drawn).unwrap_or_default() }
                { warnings(&view) }
            </div>
            { block("col more", vec![shown.at(), shown.done(), shown.results()]) }
            <div class="col rest">{ folds(&view) }</div>
        </main>
    }
}

struct Shown<'a> {
    app: &'a Rc<App>,
    dispatch: &'a Dispatch,
    view: &'a TemperView,
}

impl Shown<'_> {
    fn entry(&self, name: Name, look: Look) -> Html {
        let problem = self.view.problems.iter().find(|(field, _)| *field == name);
        field(self.app, self.dispatch, name, look, problem.map(|(_, problem)| problem))
    }

    fn steel(&self, name: SteelField, title: SteelPage, hint: Option<SteelPage>) -> Html {
        let words = |label| LANGUAGE.steel_page(label);
        let look = Look { title: words(title), hint: hint.map(words), class: "field" };
        self.entry(Name::Steel(name), look)
    }

    fn typed(&self, name: TemperField, title: T, hint: T) -> Html {
        let look = Look { title: say(title), hint: Some(say(hint)), class: "field" };
        self.entry(Name::Temper(name), look)
    }

    /// Steel and target, which are those of the page Steel, and the time at heat.
    fn asked(&self) -> Html {
        let view = self.view;
        let pick = |action: SteelAction| Action::Steel(action);
        let offered = view.offered.as_ref().map(|(text, take)| {
            key(self.dispatch, text, None, pick(SteelAction::Want(take.clone())))
        });
        // Every list keeps its length, so that nothing that has the focus is made anew.
        let card = vec![
            if view.by_composition {
                self.steel(SteelField::Own, SteelPage::Own, Some(SteelPage::OwnHint))
            } else {
                self.named()
            },
            self.steel(SteelField::Target, SteelPage::Target, Some(SteelPage::TargetHint)),
            offered.unwrap_or_default(),
            self.typed(TemperField::Held, T::Held, T::HeldHint),
            self.timer(),
            html! {
                <div class="given">
                    <>{ for view.given.iter().map(|line| para("small", line)) }</>
                    <a class="link" href={Page::Steel.hash()}>{ say(T::OnSteel) }</a>
                </div>
            },
        ];
        section("card", card)
    }

    /// A steel by its name.
    fn named(&self) -> Html {
        let view = self.view;
        let pick = |action: SteelAction| Action::Steel(action);
        let several = view.candidates.iter().map(|(of, text, on)| {
            key(self.dispatch, text, Some(*on), pick(SteelAction::Pick(of.clone())))
        });
        let names = view
            .suggestions
            .iter()
            .map(|name| key(self.dispatch, name, None, pick(SteelAction::Name(name.clone()))));
        let inside = [
            self.steel(SteelField::Query, SteelPage::Query, Some(SteelPage::QueryHint)),
            keys(LANGUAGE.steel_page(SteelPage::Several), several.collect()),
            keys(LANGUAGE.steel_page(SteelPage::Suggestions), names.collect()),
            ps(&view.understood),
        ];
        inside.into_iter().collect()
    }

    /// Takes the time at heat to the page of timers, where it is started.
    fn timer(&self) -> Html {
        timer_key(self.app, self.dispatch, TimerKind::Temper, &self.view.held)
    }

    fn at(&self) -> Html {
        section("card", vec![self.typed(TemperField::At, T::At, T::AtHint)])
    }

    fn done(&self) -> Html {
        let view = self.view;
        let stages = view
            .stages
            .iter()
            .map(|(stage, chip)| (chip.clone(), Action::from(TemperAction::Stage(*stage))));
        let hurried = Action::from(TemperAction::Hurried(!view.hurried.on));
        let done = || self.typed(TemperField::Done, T::Done, T::DoneHint);
        let hurried = [(view.hurried.clone(), hurried)];
        let card = vec![
            heading(say(T::DoneTitle)),
            chips(self.dispatch, say(T::Stage), Group::Seen, stages),
            if view.tempered { done() } else { Html::default() },
            self.typed(TemperField::AsQuenched, T::AsQuenched, T::AsQuenchedHint),
            chips(self.dispatch, say(T::Switches), Group::Heard, hurried),
        ];
        section("card", card)
    }

    fn results(&self) -> Html {
        let view = self.view;
        let kept = view.results.iter().map(|row| self.kept(row)).collect();
        let mut card = vec![
            heading(say(T::ResultsTitle)),
            para("small", say(T::ResultsWhy)),
            ps(&view.learned),
            list(say(T::Kept), kept),
        ];
        let book = view.book.as_ref().map(|chip| {
            let action = Action::from(TemperAction::ByTheBook(!chip.on));
            chips(self.dispatch, say(T::Book), Group::Heard, [(chip.clone(), action)])
        });
        card.push(book.unwrap_or_default());
        card.push(self.typed(TemperField::Measured, T::Measured, T::MeasuredHint));
        card.push(self.typed(TemperField::After, T::After, T::AfterHint));
        let add = Action::from(TemperAction::AddResult);
        card.push(key(self.dispatch, say(T::Keep), None, add));
        section("card", card)
    }

    fn kept(&self, row: &ResultRow) -> Html {
        let gone = press(self.dispatch, Action::from(TemperAction::RemoveResult(row.index)));
        let label = format!("{} {}", say(T::Remove), row.text);
        html! {
            <li>
                <span>{ row.text.clone() }if !row.aside.is_empty() { <span class="small">{ row.aside.clone() }</span> }</span>
                <button type="button" aria-label={label} onclick={gone}>{ say(T::Remove) }</button>
            </li>
        }
    }
}

fn verdict(plan: &PlanView) -> Html {
    let mut inside = vec![para("say", &plan.asked), para("num words", &plan.first)];
    inside.push(para("say", &plan.verdict));
    inside.push(para(if plan.unchecked { "met" } else { "say" }, &plan.dial));
    if !plan.through.is_empty() {
        inside.push(para("say", &plan.through));
    }
    section("verdict", inside)
}

fn looked(view: &LookedView) -> Html {
    section("verdict", vec![para("num words", &view.about), para("say", &view.verdict)])
}

fn steps(app: &App, dispatch: &Dispatch, plan: &PlanView) -> Html {
    let row = |one: &biteband_bench::view::StepRow| {
        html! {
            <tr>
                <th scope="row">{ say(one.name) }{ card_key(app, dispatch, SteelPage::OnCardShort, (&one.done, Heat::Tempered)) }</th>
                <td>{ one.at.clone() }<small>{ say(one.of) }</small>
                    if !one.metal.is_empty() { <small>{ one.metal.clone() }{ " " }{ say(T::InMetal) }</small> }
                </td>
                <td>{ one.about.clone() }<small>{ one.band.clone() }</small></td>
            </tr>
        }
    };
    let table = html! {
        <table class="read steps">
            <thead><tr>
                <td></td><th scope="col">{ say(T::Temperature) }</th><th scope="col">{ say(T::Expect) }</th>
            </tr></thead>
            <tbody>{ for plan.steps.iter().map(row) }</tbody>
        </table>
    };
    let inside = vec![heading(say(T::StepsTitle)), para("small", &plan.each), table, ps(&plan.how)];
    section("card", inside)
}

fn drawn(view: &CurveView) -> Html {
    section(
        "card",
        vec![heading(say(T::CurveTitle)), para("small", &view.each), curve(view), legend(view)],
    )
}

fn text(one: &CurveText, class: &'static str) -> Html {
    let (x, y) = one.at;
    html! { <text {class} x={place(x)} y={place(y)} text-anchor={one.anchor}>{ one.text.clone() }</text> }
}

fn path(class: &'static str, d: &str) -> Html {
    if d.is_empty() {
        return Html::default();
    }
    html! { <path {class} d={d.to_owned()} /> }
}

fn curve(view: &CurveView) -> Html {
    let (width, height) = view.size;
    html! {
        <svg class="curve" viewBox={format!("0 0 {} {}", place(width), place(height))} role="img"
            aria-label={view.label.clone()}>
            { path("band", &view.band) }
            { path("brittle", &view.brittle) }
            { path("edges", &view.edges) }
            { path("goal", &view.wanted) }
            { path("edge", &view.edge) }
            { path("book", &view.book) }
            { path("median", &view.median) }
            { path("steps", &view.steps) }
            { path("looked", &view.looked) }
            { for view.own.iter().map(|(x, y)| html! { <circle class="own" cx={place(*x)} cy={place(*y)} r="6" /> }) }
            { for view.numbers.iter().map(|one| text(one, "number")) }
            { for view.texts.iter().map(|one| text(one, "word")) }
        </svg>
    }
}

/// What the lines mean, each beside a piece of it.
fn legend(view: &CurveView) -> Html {
    let piece = |class: &'static str| match class {
        "band" => path("band", "M1 3H33V17H1Z"),
        "goal" => path("goal", "M10 3H3V17H10M3 3H33M3 17H33"),
        "brittle" => path("brittle", "M5 2H29V18H5ZM5 10L13 2M5 18L21 2M13 18L29 2M21 18L29 10"),
        "steps" => path("steps", "M17 18V8m-5 0a5 5 0 1 0 10 0a5 5 0 1 0 -10 0"),
        "own" => html! { <circle class="own" cx="17" cy="10" r="6" /> },
        "looked" => path("looked", "M25 18V6H5"),
        class => path(class, "M1 10H33"),
    };
    html! {
        <ul class="legend-list" aria-label={say(T::Legend)}>
            { for view.legend.iter().map(|(class, meaning)| html! {
                <li>
                    <svg class="curve" viewBox="0 0 34 20" aria-hidden="true">{ piece(class) }</svg>
                    <span>{ say(*meaning) }</span>
                </li>
            }) }
        </ul>
    }
}

fn warnings(view: &TemperView) -> Html {
    let mut all = Vec::new();
    if !view.warnings.is_empty() {
        all.push(section("next", vec![ps(&view.warnings)]));
    }
    if let Some(colour) = &view.colour {
        all.push(section("card", vec![heading(say(T::Colour)), p(colour)]));
    }
    if !view.cautions.is_empty() {
        all.push(section("caution", vec![ps(&view.cautions)]));
    }
    all.into_iter().collect()
}

fn folds(view: &TemperView) -> Html {
    let mut all = Vec::new();
    if let Some(curve) = &view.curve {
        let rows = curve.rows.iter().map(|[at, about, band]| {
            html! { <tr><th scope="row">{ at.clone() }</th><td>{ about.clone() }</td><td>{ band.clone() }</td></tr> }
        });
        let head = [T::Temperature, T::About, T::Band];
        let head = head.map(|title| html! { <th scope="col">{ say(title) }</th> });
        all.push(folded(
            say(T::CurveTable),
            html! { <table class="read figures"><thead><tr>{ for head }</tr></thead><tbody>{ for rows }</tbody></table> },
        ));
    }
    if !view.brittle.is_empty() {
        all.push(folded(say(T::BrittleEach), ps(&view.brittle)));
    }
    if !view.why.is_empty() {
        all.push(folded(LANGUAGE.steel_page(SteelPage::WhyTitle), ps(&view.why)));
    }
    if !view.sources.is_empty() {
        all.push(folded(LANGUAGE.steel_page(SteelPage::SourcesTitle), ps(&view.sources)));
    }
    all.into_iter().collect()
}

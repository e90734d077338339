//! Claim: what the paper says, what was measured, whether it holds, what the doubt is made of, what would settle it.

use std::rc::Rc;

use biteband_bench::state::{App, ClaimAction, ClaimField, Field as Name, Page};
use biteband_bench::view::{
    Chip, ClaimVerdict, ClaimView, ClaimWay, KeptReading, claim_page as view_of,
};
use biteband_bench::words::{ClaimPage as C, Ui};
use yew::prelude::*;

use super::convert::refusal;
use super::file_test::odds;
use super::steel::rule;
use crate::app::{Dispatch, LANGUAGE, label};
use crate::parts::chips::{Name as Group, button, chips, folded, key, list, press};
use crate::parts::choice::choice;
use crate::parts::field::{Look, enter, field};
use crate::parts::text::{block, heading, p, para, ps, section};

const fn say(label: C) -> &'static str {
    LANGUAGE.claim_page(label)
}

/// The page.
pub(crate) fn claim(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let view = view_of(app, LANGUAGE);
    let shown = Shown { app, dispatch, view: &view };
    // Every list keeps its length, so that what is told and what has the focus is never made anew.
    let turn = view.turn.map(|turn| button(dispatch, say(turn), ClaimAction::Turn.into()));
    html! {
        <main id="content" class="wide split claim">
            <h1 tabindex="-1" class="unseen">{ label(Ui::TabClaim) }</h1>
            { block("col asked", vec![shown.says(), shown.measured()]) }
            <div class="col answer">
                <div role="status" class="col">{ status(&view) }</div>
                { beside(&view) }
            </div>
            { block("col more", vec![shown.details(), turn.unwrap_or_default()]) }
            <div class="col rest">{ rest(&view) }</div>
        </main>
    }
}

struct Shown<'a> {
    app: &'a Rc<App>,
    dispatch: &'a Dispatch,
    view: &'a ClaimView,
}

impl Shown<'_> {
    fn typed(&self, name: ClaimField, title: C, hint: C, class: &'static str) -> Html {
        let look = Look { title: say(title), hint: Some(say(hint)), class };
        field(self.app, self.dispatch, Name::Claim(name), look, self.view.problem_of(name))
    }

    fn chips(
        &self,
        title: C,
        name: Group,
        list: &[Chip],
        action: fn(&'static str) -> ClaimAction,
    ) -> Html {
        let list = list.iter().map(|chip| (chip.clone(), action(chip.key).into()));
        chips(self.dispatch, say(title), name, list)
    }

    fn says(&self) -> Html {
        section("card", vec![self.typed(ClaimField::Says, C::Says, C::SaysHint, "field large")])
    }

    fn measured(&self) -> Html {
        let view = self.view;
        let kept = view.kept.iter().map(|row| self.kept(row)).collect();
        let files = ClaimAction::Files(!view.files.on).into();
        let witnesses = html! {
            <div class="chips" role="group" aria-label={say(C::Witnesses)}>
                <button type="button" class="chip" onclick={self.typed_next(ClaimAction::AddReading)}>{ say(C::AddReading) }</button>
                { key(self.dispatch, &view.files.label, Some(view.files.on), files) }
            </div>
        };
        let card = vec![
            self.typed(ClaimField::Measured, C::Measured, C::MeasuredHint, "field"),
            if view.in_hand.is_empty() { Html::default() } else { para("small", &view.in_hand) },
            choice(self.dispatch, say(C::Instrument), &view.instruments, |key| {
                ClaimAction::Instrument(key).into()
            }),
            witnesses,
            list(say(C::Kept), kept),
            if view.files.on { self.files() } else { Html::default() },
        ];
        section("card", card)
    }

    /// A press after which the reading is typed: its field gets the focus.
    fn typed_next(&self, action: ClaimAction) -> Callback<MouseEvent> {
        press(self.dispatch, action.into()).reform(|event| {
            enter(Name::Claim(ClaimField::Measured));
            event
        })
    }

    fn kept(&self, row: &KeptReading) -> Html {
        let take = self.typed_next(ClaimAction::TakeReading(row.index));
        let label = format!("{} {}", say(C::Change), row.text);
        html! {
            <li>
                <span>{ row.text.clone() }<span class="small">{ row.aside.clone() }</span></span>
                <button type="button" aria-label={label} onclick={take}>{ say(C::Change) }</button>
            </li>
        }
    }

    fn files(&self) -> Html {
        html! {
            <div class="given">
                <>{ for self.view.files_said.iter().map(|line| para("small", line)) }</>
                <a class="link" href={Page::FileTest.hash()}>{ say(C::ToFiles) }</a>
            </div>
        }
    }

    fn details(&self) -> Html {
        let view = self.view;
        let level = || self.typed(ClaimField::Level, C::Level, C::LevelHint, "field");
        let inside = [
            self.typed(ClaimField::Steel, C::Steel, C::SteelHint, "field"),
            view.steel_from.iter().map(|line| para("small", line)).collect(),
            self.chips(C::Place, Group::Seen, &view.places, ClaimAction::Place),
            self.chips(
                C::ClaimedPlace,
                Group::Seen,
                &view.claimed_places,
                ClaimAction::ClaimedPlace,
            ),
            view.ask_place.iter().map(|line| para("small", line)).collect(),
            self.chips(C::RuleTitle, Group::Seen, &view.rules, ClaimAction::Rule),
            if view.own_level { level() } else { Html::default() },
            if view.rule_text.is_empty() {
                Html::default()
            } else {
                para("small", &view.rule_text)
            },
        ];
        folded(say(C::Details), inside.into_iter().collect())
    }
}

/// What is told as soon as it changes.
fn status(view: &ClaimView) -> Html {
    let mut all: Vec<Html> = view.hint.iter().map(|line| para("hint", line)).collect();
    all.extend(view.problem.iter().map(refusal));
    all.extend(view.verdict.iter().map(verdict));
    if !view.wrong.is_empty() {
        all.push(section("caution", vec![ps(&view.wrong)]));
    }
    if view.best_first && !view.best.is_empty() {
        all.push(section("card", vec![heading(say(C::BestTitle)), ps(&view.best)]));
    }
    all.into_iter().collect()
}

fn verdict(view: &ClaimVerdict) -> Html {
    let mut inside = Vec::new();
    if !view.say.is_empty() {
        inside.push(para("say", &view.say));
    }
    inside.push(para("num words", view.word));
    inside.push(view.odds.as_ref().map(odds).unwrap_or_default());
    if !view.aside.is_empty() {
        inside.push(para("met", &view.aside));
    }
    section(if view.conflict { "verdict conflict" } else { "verdict" }, inside)
}

/// The rule, the doubt, and the next act.
fn beside(view: &ClaimView) -> Html {
    let mut all = Vec::new();
    if let Some((drawn, verdict)) = view.rule.as_ref().zip(view.verdict.as_ref()) {
        all.push(section("card", vec![rule(drawn), legend(verdict)]));
    }
    if !view.doubt.is_empty() {
        all.push(section("card", vec![heading(say(C::DoubtTitle)), doubt(&view.doubt)]));
    }
    if let Some(way) = &view.settle {
        all.push(section("next", vec![way_out(way)]));
    }
    all.into_iter().collect()
}

/// What the bracket and the ridge are, each beside a piece of it.
fn legend(view: &ClaimVerdict) -> Html {
    let [said, measured] = view.told.clone();
    let line = |class: &'static str, d: &'static str, told: String| {
        html! {
            <li>
                <svg class="bands" viewBox="0 0 34 20" aria-hidden="true"><path {class} {d} /></svg>
                <span>{ told }</span>
            </li>
        }
    };
    html! {
        <ul class="legend-list">
            { line("mid", "M3 4v12M3 10H31M31 4v12", said) }
            { line("belief", "M1 17C11 17 11 3 17 3S23 17 33 17Z", measured) }
        </ul>
    }
}

fn doubt(rows: &[[String; 3]]) -> Html {
    let row = |[source, half, share]: &[String; 3]| {
        html! { <tr><th scope="row">{ source.clone() }</th><td>{ half.clone() }</td><td>{ share.clone() }</td></tr> }
    };
    let head = [C::DoubtSource, C::DoubtHalf, C::DoubtShare];
    let head = head.map(|title| html! { <th scope="col">{ say(title) }</th> });
    html! {
        <table class="read figures doubt">
            <thead><tr>{ for head }</tr></thead>
            <tbody>{ for rows.iter().map(row) }</tbody>
        </table>
    }
}

fn way_out(way: &ClaimWay) -> Html {
    html! {
        <>
            <p><b>{ way.lead }{ " " }{ way.text.clone() }</b></p>
            { p(&way.why) }
        </>
    }
}

fn rest(view: &ClaimView) -> Html {
    let ways = || {
        let ways = view.ways.iter().map(|way| {
            html! { <div class="origin"><p><b>{ way.text.clone() }</b></p>{ p(&way.why) }</div> }
        });
        folded(say(C::OthersTitle), ways.collect())
    };
    let paper = || section("card", vec![heading(say(C::PaperTitle)), ps(&view.paper)]);
    let best = || folded(say(C::BestTitle), ps(&view.best));
    // The list keeps its length, so that a fold that is open stays open.
    let all = [
        if view.ways.is_empty() { Html::default() } else { ways() },
        if view.paper.is_empty() { Html::default() } else { paper() },
        if view.cautions.is_empty() {
            Html::default()
        } else {
            section("caution", vec![ps(&view.cautions)])
        },
        if view.best_first || view.best.is_empty() { Html::default() } else { best() },
        if view.rule_text.is_empty() { Html::default() } else { folded(say(C::Why), why(view)) },
    ];
    all.into_iter().collect()
}

fn why(view: &ClaimView) -> Html {
    let mut all = vec![p(&view.rule_text), ps(&view.risk), ps(&view.notes)];
    for (title, lines) in [(C::Understood, &view.understood), (C::Sources, &view.sources)] {
        if !lines.is_empty() {
            all.push(html! { <h3>{ say(title) }</h3> });
            all.push(ps(lines));
        }
    }
    all.into_iter().collect()
}

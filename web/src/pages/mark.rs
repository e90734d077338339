//! From a mark to its number: what to measure, the number, and whether the test is valid.

use std::rc::Rc;

use biteband_bench::answer::IndentAnswer;
use biteband_bench::state::{Action, App, Field as Name, MarkField, MarkKind, Page};
use biteband_bench::view::{MarkEntry, MarkView, mark as view_of};
use biteband_bench::words::{Mark, Ui};
use yew::prelude::*;

use super::convert::refusal;
use super::file_test::Handed;
use crate::app::{Dispatch, LANGUAGE, label};
use crate::parts::bars::tabs;
use crate::parts::chips::{Name as Group, chips, folded};
use crate::parts::field::{Look, field};
use crate::parts::text::{block, heading, p, para, ps, row, section};

/// The page.
pub(crate) fn mark(app: &Rc<App>, dispatch: &Dispatch) -> Html {
    let props = Handed { app, dispatch };
    let view = view_of(app, LANGUAGE);
    let mut status: Vec<Html> = Vec::new();
    if !view.hint.is_empty() {
        status.push(para("hint", &view.hint));
    }
    status.extend(view.problem.iter().map(refusal));
    status.extend(view.answer.iter().map(|answer| verdict(&view, answer)));
    html! {
        <main id="content" class="wide">
            <h1 tabindex="-1" class="unseen">{ label(Ui::TabMark) }</h1>
            { block("col", vec![tabs(Page::Mark), entry(props, &view)]) }
            <div class="col">
                <div role="status" class="col">{ status }</div>
                { for view.answer.iter().map(|answer| rest(&view, answer)) }
            </div>
        </main>
    }
}

fn entry(props: Handed<'_>, view: &MarkView) -> Html {
    let Handed { app, dispatch } = props;
    let kinds = view.kinds.iter().map(|(kind, chip)| (chip.clone(), Action::MarkKind(*kind)));
    let scales = view.scales.iter().map(|chip| (chip.clone(), Action::MarkScale(chip.key)));
    let shapes = view.shapes.iter().map(|(shape, chip)| (chip.clone(), Action::MarkShape(*shape)));
    let lies = view.diagonals.iter().map(|(along, chip)| (chip.clone(), Action::MarkAlong(*along)));
    let typed = |name: MarkField, title: Mark, hint: Option<Mark>| {
        let look = Look {
            title: LANGUAGE.mark(title),
            hint: hint.map(|hint| LANGUAGE.mark(hint)),
            class: "field",
        };
        field(app, dispatch, Name::Mark(name), look, None)
    };
    let fields = view.fields.iter();
    let card = vec![
        chips(dispatch, LANGUAGE.mark(Mark::Kind), Group::Heard, kinds),
        drawing(app.saved.mark.kind, view.drawing),
        if view.scales.is_empty() {
            Html::default()
        } else {
            chips(dispatch, LANGUAGE.mark(Mark::Scale), Group::Seen, scales)
        },
        fields.map(|MarkEntry { field, title, hint }| typed(*field, *title, Some(*hint))).collect(),
    ];
    let round = [
        typed(MarkField::Round, Mark::Round, Some(Mark::RoundHint)),
        chips(dispatch, LANGUAGE.mark(Mark::RoundShape), Group::Seen, shapes),
        if view.diagonals.is_empty() {
            Html::default()
        } else {
            chips(dispatch, LANGUAGE.mark(Mark::Diagonals), Group::Seen, lies)
        },
    ];
    let thin = [
        typed(MarkField::Thickness, Mark::Thickness, Some(Mark::ThicknessHint)),
        typed(MarkField::Edge, Mark::Edge, None),
        typed(MarkField::Next, Mark::Next, None),
    ];
    let parts = [
        section("card", card),
        folded(LANGUAGE.mark(Mark::RoundTitle), round.into_iter().collect()),
        folded(LANGUAGE.mark(Mark::ThinTitle), thin.into_iter().collect()),
    ];
    parts.into_iter().collect()
}

/// The mark from above, or from the side where its depth counts, with what to measure.
fn drawing(kind: MarkKind, what: Mark) -> Html {
    let (shape, measure, letters): (_, _, &[(&str, &str, &str)]) = match kind {
        MarkKind::Vickers => (
            "M100 12 L148 60 L100 108 L52 60 Z",
            "M52 60 H148 M100 12 V108",
            &[("62", "54", "d1"), ("104", "44", "d2")],
        ),
        MarkKind::Brinell => (
            "M54 60 a46 46 0 1 0 92 0 a46 46 0 1 0 -92 0 Z",
            "M54 60 H146 M100 14 V106",
            &[("62", "54", "d1"), ("104", "44", "d2")],
        ),
        MarkKind::Knoop => (
            "M14 60 L100 48 L186 60 L100 72 Z",
            "M14 88 H186 M14 66 V94 M186 66 V94",
            &[("96", "106", "d")],
        ),
        MarkKind::Rockwell => (
            "M14 36 H70 L100 84 L130 36 H186",
            "M100 84 H160 M130 36 H160 M152 36 V84",
            &[("160", "64", "h")],
        ),
    };
    html! {
        <figure class="mark">
            <svg viewBox="0 0 200 120" role="img" aria-label={LANGUAGE.mark(what)}>
                <path class="shape" d={shape} />
                <path class="measure" d={measure} />
                { for letters.iter().map(|(x, y, letter)| html! { <text x={*x} y={*y}>{ *letter }</text> }) }
            </svg>
            <figcaption class="small">{ LANGUAGE.mark(what) }</figcaption>
        </figure>
    }
}

fn verdict(view: &MarkView, answer: &IndentAnswer) -> Html {
    let mut inside = vec![
        para("num", &answer.shown),
        para("say", &answer.designation),
        para("met", &answer.verdict),
    ];
    inside.push(ps(&view.broken));
    inside.extend(answer.correction.iter().map(|found| p(&found.text)));
    if let Some(series) = &answer.series {
        inside.push(p(&series.text));
        inside.extend(series.outlier.iter().map(|odd| para("met", &odd.text)));
    }
    section(if answer.valid { "verdict" } else { "verdict conflict" }, inside)
}

fn rest(view: &MarkView, answer: &IndentAnswer) -> Html {
    let rules = vec![ps(&view.kept), ps(answer.thinnest.iter().map(|found| &found.text))];
    let machine =
        vec![ps(answer.machine.limits.iter().map(|limit| &limit.text)), p(&answer.machine.text)];
    let better = || section("next", vec![heading(LANGUAGE.mark(Mark::Better)), ps(&view.better)]);
    let converted = || {
        let rows: Html =
            answer.converted.iter().map(|found| row(found.scale, &found.shown)).collect();
        let table = html! { <table class="read"><tbody>{ rows }</tbody></table> };
        section("card", vec![heading(LANGUAGE.mark(Mark::OtherScales)), table])
    };
    // The list keeps its length, so that a fold that is open stays open.
    let parts = [
        if view.better.is_empty() { Html::default() } else { better() },
        if answer.converted.is_empty() { Html::default() } else { converted() },
        answer.notes.iter().map(|note| para("small", note)).collect(),
        folded(LANGUAGE.mark(Mark::Rules), rules.into_iter().collect()),
        folded(LANGUAGE.mark(Mark::TesterTitle), machine.into_iter().collect()),
        answer.cautions.iter().map(|caution| section("caution", vec![p(caution)])).collect(),
    ];
    parts.into_iter().collect()
}

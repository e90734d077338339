//! The page that works a mark out: what was measured, the number, and whether the test is valid.

use biteband_hardness::Scale;

use super::{Chip, Problem};
use crate::answer::{IndentAnswer, IndentQuestion, indent, parse_readings};
use crate::refusal::Refusal;
use crate::state::{App, Field, MarkField, MarkKind, MarkState, RoundShape};
use crate::words::{Language, Mark, Ui};

/// Everything the page shows.
#[derive(Clone, Debug, PartialEq)]
pub struct MarkView {
    /// Kinds of test.
    pub kinds: Vec<(MarkKind, Chip)>,
    /// Rockwell scales; empty for the other kinds.
    pub scales: Vec<Chip>,
    /// What to measure, in words.
    pub drawing: Mark,
    /// Fields of the test itself.
    pub fields: Vec<MarkEntry>,
    /// Shapes of a round part.
    pub shapes: Vec<(RoundShape, Chip)>,
    /// How a Vickers mark lies on it; empty where that changes nothing.
    pub diagonals: Vec<(bool, Chip)>,
    /// What to do while nothing is readable yet.
    pub hint: String,
    /// What is wrong.
    pub problem: Option<Problem>,
    /// The answer; without the note that lists what stands in `better`.
    pub answer: Option<IndentAnswer>,
    /// Rules that are broken, each with its mark.
    pub broken: Vec<String>,
    /// Rules that are kept, likewise.
    pub kept: Vec<String>,
    /// Tests that would do, with what they would read.
    pub better: Vec<String>,
}

/// A field with its labels.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct MarkEntry {
    /// Which.
    pub field: MarkField,
    /// Its label.
    pub title: Mark,
    /// What to write.
    pub hint: Mark,
}

/// Makes the page.
#[must_use]
pub fn mark(app: &App, language: Language) -> MarkView {
    let state = &app.saved.mark;
    let say = |mark: Mark| language.mark(mark).to_owned();
    let kinds = [Mark::Vickers, Mark::Brinell, Mark::Knoop, Mark::Rockwell];
    let shapes = [
        (RoundShape::Shaft, Mark::Shaft),
        (RoundShape::Bore, Mark::Bore),
        (RoundShape::Ball, Mark::BallShape),
    ];
    let lies = [(false, Mark::Diagonals45), (true, Mark::DiagonalsAlong)];
    let has_lie = state.kind == MarkKind::Vickers && state.shape != RoundShape::Ball;
    let mut view = MarkView {
        kinds: MarkKind::ALL
            .into_iter()
            .zip(kinds)
            .map(|(kind, name)| {
                (kind, Chip { key: kind.key(), label: say(name), on: state.kind == kind })
            })
            .collect(),
        scales: if state.kind == MarkKind::Rockwell { scales(&state.scale) } else { Vec::new() },
        drawing: match state.kind {
            MarkKind::Vickers => Mark::DrawVickers,
            MarkKind::Brinell => Mark::DrawBrinell,
            MarkKind::Knoop => Mark::DrawKnoop,
            MarkKind::Rockwell => Mark::DrawRockwell,
        },
        fields: fields(state.kind),
        shapes: shapes
            .into_iter()
            .map(|(shape, name)| {
                (shape, Chip { key: "", label: say(name), on: state.shape == shape })
            })
            .collect(),
        diagonals: lies
            .into_iter()
            .filter(|_| has_lie)
            .map(|(along, name)| {
                (along, Chip { key: "", label: say(name), on: state.along_axis == along })
            })
            .collect(),
        hint: String::new(),
        problem: None,
        answer: None,
        broken: Vec::new(),
        kept: Vec::new(),
        better: Vec::new(),
    };
    let typing = matches!(app.session.active, Some(Field::Mark(_)));
    match question(app, language).and_then(|asked| asked.map(|q| indent(language, &q)).transpose())
    {
        Ok(None) => view.hint = say(Mark::Empty),
        Ok(Some(answer)) => fill(&mut view, answer),
        Err(_) if typing => {
            language.label(Ui::ConvertTyping).clone_into(&mut view.hint);
        }
        Err(refusal) => view.problem = Some(refusal.into()),
    }
    view
}

fn fill(view: &mut MarkView, mut answer: IndentAnswer) {
    let marked = |holds: bool| {
        let limits = answer.limits.iter().filter(move |limit| limit.holds == holds);
        let sign = if holds { '✓' } else { '✗' };
        limits.map(|limit| format!("{sign} {}", limit.text)).collect()
    };
    (view.broken, view.kept) = (marked(false), marked(true));
    view.better =
        answer.better.iter().map(|test| format!("{}: {}", test.test, test.shown)).collect();
    if !view.better.is_empty() && !answer.notes.is_empty() {
        answer.notes.remove(0);
    }
    view.answer = Some(answer);
}

fn scales(chosen: &str) -> Vec<Chip> {
    Scale::ALL
        .into_iter()
        .filter(|scale| scale.is_rockwell())
        .map(|scale| Chip {
            key: scale.symbol(),
            label: scale.symbol().to_owned(),
            on: scale.symbol() == chosen,
        })
        .collect()
}

fn fields(kind: MarkKind) -> Vec<MarkEntry> {
    let entry = |field, title, hint| MarkEntry { field, title, hint };
    let length = |field, title| entry(field, title, Mark::LengthHint);
    let force = entry(MarkField::Force, Mark::Force, Mark::ForceHint);
    let mut list = match kind {
        MarkKind::Vickers => vec![
            force,
            length(MarkField::First, Mark::FirstDiagonal),
            length(MarkField::Second, Mark::SecondDiagonal),
        ],
        MarkKind::Brinell => vec![
            length(MarkField::Ball, Mark::Ball),
            force,
            length(MarkField::First, Mark::Diameter),
            length(MarkField::Second, Mark::SecondDiameter),
        ],
        MarkKind::Knoop => vec![force, length(MarkField::First, Mark::LongDiagonal)],
        MarkKind::Rockwell => vec![length(MarkField::Depth, Mark::Depth)],
    };
    list.push(entry(MarkField::Readings, Mark::Readings, Mark::ReadingsHint));
    if kind == MarkKind::Rockwell {
        // A tester shows the number; its depth is the exception.
        list.reverse();
    }
    list
}

/// What is asked; nothing while neither a size nor a number is filled in.
fn question(app: &App, language: Language) -> Result<Option<IndentQuestion>, Refusal> {
    let state: &MarkState = &app.saved.mark;
    let filled = |field: MarkField| {
        let text = state.text(field).trim();
        (!text.is_empty()).then(|| text.to_owned())
    };
    let sized = state.kind != MarkKind::Rockwell;
    let mut readings = match filled(MarkField::Readings) {
        Some(text) => parse_readings(language, &text)?,
        None => Vec::new(),
    };
    let mut sizes: Vec<String> = Vec::new();
    let mut depth = None;
    if readings.is_empty() {
        if sized {
            sizes.extend(filled(MarkField::First));
            // Knoop has one diagonal; a second one typed for another test waits for that test.
            sizes.extend(filled(MarkField::Second).filter(|_| state.kind != MarkKind::Knoop));
        } else {
            depth = filled(MarkField::Depth);
        }
        if sizes.is_empty() && depth.is_none() {
            return Ok(None);
        }
    }
    let value = if readings.len() == 1 { readings.pop() } else { None };
    Ok(Some(IndentQuestion {
        kind: state.kind.key().to_owned(),
        force: filled(MarkField::Force).filter(|_| sized),
        ball: filled(MarkField::Ball).filter(|_| state.kind == MarkKind::Brinell),
        scale: (!sized).then(|| state.scale.clone()),
        sizes,
        depth,
        value,
        readings,
        round: filled(MarkField::Round),
        bore: state.shape == RoundShape::Bore,
        sphere: state.shape == RoundShape::Ball,
        along_axis: state.along_axis && state.kind == MarkKind::Vickers,
        thickness: filled(MarkField::Thickness),
        edge: filled(MarkField::Edge),
        next: filled(MarkField::Next),
        units: app.saved.settings.units,
        ..IndentQuestion::default()
    }))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(change: impl Fn(&mut MarkState)) -> MarkView {
        let mut app = App::default();
        change(&mut app.saved.mark);
        mark(&app, Language::English)
    }

    #[test]
    fn nothing_filled_in_is_a_hint_and_no_error() {
        for kind in MarkKind::ALL {
            let view = shown(|state| state.choose(kind));
            assert!(view.problem.is_none() && view.answer.is_none() && !view.hint.is_empty());
            assert_eq!(view.fields.iter().filter(|f| f.field == MarkField::Readings).count(), 1);
        }
    }

    #[test]
    fn a_vickers_mark_and_a_brinell_mark_give_the_printed_numbers() {
        // ISO 6507-1 curved-surface annex, example 2: 0.415 mm under 30 kgf is 323 HV (recalled).
        let view = shown(|state| state.first = "0.415 mm".into());
        assert!((view.answer.unwrap().value - 323.0).abs() < 0.5);
        // ISO 6506-4: 4.00 mm under 3000 kgf and 10 mm is 229 HBW (recalled).
        let view = shown(|state| {
            state.choose(MarkKind::Brinell);
            state.first = "4,00 mm".into();
        });
        assert!((view.answer.unwrap().value - 229.0).abs() < 0.5);
    }

    #[test]
    fn several_numbers_are_a_series_and_one_is_a_number() {
        let view = shown(|state| {
            state.choose(MarkKind::Rockwell);
            state.readings = "52; 53; 51,5".into();
            state.thickness = "0.6 mm".into();
        });
        let shown_better = view.better.len();
        assert!(view.broken.iter().all(|rule| rule.starts_with('✗')) && !view.broken.is_empty());
        let answer = view.answer.unwrap();
        assert!(answer.series.is_some() && !answer.valid && !answer.better.is_empty());
        // What stands as a list of its own is not told again as a note.
        assert_eq!(shown_better, answer.better.len());
        let listed = answer.better[0].test.as_str();
        assert!(answer.notes.iter().all(|note| !note.contains(listed)), "{:?}", answer.notes);
    }

    #[test]
    fn a_typed_force_stays_when_the_kind_changes() {
        let mut state = MarkState::default();
        state.choose(MarkKind::Brinell);
        assert_eq!(state.force, "3000 kgf");
        state.force = "750 kgf".into();
        state.choose(MarkKind::Vickers);
        assert_eq!(state.force, "750 kgf");
    }

    #[test]
    fn what_cannot_be_read_is_a_problem_with_a_way_out() {
        for text in ["0.3", "-0.3 mm", "0 mm", "x"] {
            let problem = shown(|state| state.first = text.into()).problem.unwrap();
            assert!(!problem.message.is_empty() && !problem.instead.is_empty(), "{text}");
        }
    }
}

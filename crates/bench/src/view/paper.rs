//! Sheets for the wall, as pictures that a browser shows and prints.

use biteband_hardness::{Axis, Scale};

use super::{Chip, Problem};
use crate::print::{self, Paper, Scales, Sheet, default_step, parse_span, usual_scales};
use crate::refusal::Refusal;
use crate::state::{App, PaperState, SheetKind};
use crate::words::{Language, Paper as Name};
use biteband_hardness::{Choice, spans};

/// The page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PaperView {
    /// Which sheet.
    pub kinds: Vec<(SheetKind, Chip)>,
    /// A4 and Letter.
    pub sizes: Vec<(bool, Chip)>,
    /// Whether ends can be typed.
    pub has_span: bool,
    /// Scales on the sheet, each on or off; empty for a sheet that has none to choose.
    pub scales: Vec<Chip>,
    /// Name of the paper for the style sheet.
    pub paper: &'static str,
    /// The sheets.
    pub sheets: Vec<SheetView>,
    /// Why there is none.
    pub problem: Option<Problem>,
}

/// A sheet as a picture.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SheetView {
    /// What it is, in words.
    pub title: String,
    /// The drawing as a `data:` address.
    pub address: String,
}

/// Makes the page.
#[must_use]
pub fn paper(app: &App, language: Language) -> PaperView {
    let state = &app.saved.paper;
    let base = Axis::find(&app.saved.convert.scale).unwrap_or(Axis::Hardness(Scale::Hrc));
    let chip = |key: &'static str, name: Name, on: bool| Chip {
        key,
        label: language.paper(name).to_owned(),
        on,
    };
    let kind = |kind: SheetKind, key, name| (kind, chip(key, name, state.kind == kind));
    let size = |letter: bool, key: &'static str| {
        (letter, Chip { key, label: key.to_owned(), on: state.letter == letter })
    };
    let scaled = matches!(state.kind, SheetKind::Strip | SheetKind::Chart);
    let made = sheets(app, language, state, base);
    let (sheets, problem) = match made {
        Ok(sheets) => (sheets.into_iter().map(SheetView::from).collect(), None),
        Err(refusal) => (Vec::new(), Some(Problem::from(refusal))),
    };
    PaperView {
        kinds: vec![
            kind(SheetKind::Strip, "strip", Name::Strip),
            kind(SheetKind::Chart, "chart", Name::Chart),
            kind(SheetKind::FileCard, "file-card", Name::Card),
            kind(SheetKind::Thickness, "thickness", Name::Thickness),
        ],
        sizes: vec![size(false, "A4"), size(true, "Letter")],
        has_span: scaled,
        scales: if scaled { scales(app, base) } else { Vec::new() },
        paper: if state.letter { "letter" } else { "a4" },
        sheets,
        problem,
    }
}

/// The scales beside the base: those chosen for the conversion, as far as they are others.
fn chosen(app: &App, base: Axis, (low, high): (f64, f64)) -> Vec<Axis> {
    let to: Vec<Axis> =
        app.saved.convert.to.iter().filter_map(|symbol| Axis::find(symbol)).collect();
    let to: Vec<Axis> = to.into_iter().filter(|axis| *axis != base).collect();
    if to.is_empty() { usual_scales(base, low, high) } else { to }
}

fn scales(app: &App, base: Axis) -> Vec<Chip> {
    let on = chosen(app, base, usual_span(base));
    biteband_hardness::reachable(biteband_hardness::Material::default(), base)
        .into_iter()
        .map(|axis| Chip {
            key: axis.symbol(),
            label: axis.symbol().to_owned(),
            on: on.contains(&axis),
        })
        .collect()
}

/// Where the tables of the base scale reach to Vickers, or to Rockwell C from Vickers itself.
fn usual_span(base: Axis) -> (f64, f64) {
    let hv = Axis::Hardness(Scale::Hv);
    let to = if base == hv { Axis::Hardness(Scale::Hrc) } else { hv };
    spans(base, to, Choice::STEEL)
        .next()
        .map_or((20.0, 68.0), |(_, span)| (span.low.0, span.high.0))
}

fn sheets(
    app: &App,
    language: Language,
    state: &PaperState,
    base: Axis,
) -> Result<Vec<Sheet>, Refusal> {
    let paper = if state.letter { Paper::Letter } else { Paper::A4 };
    match state.kind {
        SheetKind::FileCard => {
            return print::file_card(language, paper, &app.saved.file_test.grades);
        }
        SheetKind::Thickness => return Ok(vec![print::usual_thickness(language, paper)]),
        SheetKind::Strip | SheetKind::Chart => {}
    }
    let span = match state.span_text.trim() {
        "" => usual_span(base),
        typed => parse_span(language, typed)?,
    };
    let to = chosen(app, base, span);
    let scales = Scales {
        units: app.saved.settings.units,
        paper,
        language,
        ..Scales::new(base, span.0, span.1, &to)
    };
    match state.kind {
        SheetKind::Chart => print::chart(&scales, default_step(base)),
        _ => print::strip(&scales),
    }
}

impl From<Sheet> for SheetView {
    /// In an address a percent sign and a hash mean something else.
    fn from(sheet: Sheet) -> Self {
        let drawing = sheet.svg.replace('%', "%25").replace('#', "%23");
        Self { title: sheet.title, address: format!("data:image/svg+xml;charset=utf-8,{drawing}") }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn shown(change: impl Fn(&mut App)) -> PaperView {
        let mut app = App::default();
        change(&mut app);
        paper(&app, Language::English)
    }

    #[test]
    fn every_sheet_is_made_from_what_is_chosen_elsewhere() {
        let strip = shown(|_| {});
        assert!(strip.problem.is_none() && strip.sheets.len() == 1, "{:?}", strip.problem);
        let chart = shown(|app| app.saved.paper.kind = SheetKind::Chart);
        assert!(!chart.sheets.is_empty() && chart.has_span);
        let card = shown(|app| {
            app.saved.paper.kind = SheetKind::FileCard;
            app.saved.file_test.grades = vec![62.0, 48.0];
        });
        assert!(card.sheets.iter().any(|sheet| sheet.address.contains(">62<")));
        assert!(card.scales.is_empty() && !card.has_span);
    }

    #[test]
    fn every_base_scale_has_its_usual_ends() {
        for axis in Scale::ALL.into_iter().map(Axis::Hardness).chain([Axis::Tensile]) {
            if biteband_hardness::reachable(biteband_hardness::Material::default(), axis).is_empty()
            {
                continue;
            }
            let view = shown(|app| axis.symbol().clone_into(&mut app.saved.convert.scale));
            assert!(view.problem.is_none(), "{axis}: {:?}", view.problem);
        }
    }

    #[test]
    fn ends_that_cannot_be_drawn_are_a_problem_with_a_way_out() {
        for text in ["60", "65-40", "40-900", "x"] {
            let view = shown(|app| text.clone_into(&mut app.saved.paper.span_text));
            let problem = view.problem.unwrap();
            assert!(view.sheets.is_empty() && !problem.message.is_empty(), "{text}");
        }
    }

    #[test]
    fn an_address_holds_no_sign_that_ends_it() {
        for sheet in shown(|_| {}).sheets {
            assert!(!sheet.address.contains('#'));
        }
    }
}

//! `biteband print`.

use std::fs;
use std::path::{Path, PathBuf};

use biteband_bench::Refusal;
use biteband_bench::answer::parse_axis;
use biteband_bench::print::{
    Paper, Scales, Sheet, chart, default_step, document, file_card, parse_span, strip,
    usual_scales, usual_thickness,
};
use biteband_evidence::FileSet;
use biteband_hardness::Axis;
use serde::Serialize;

use crate::args::{Format, PaperName, PrintCommand, ScalesArgs, SheetArgs};
use crate::file::grades;
use crate::output::{Output, Stop};
use crate::words;

#[derive(Serialize)]
pub(crate) struct Written {
    pub(crate) written: Vec<String>,
}

#[derive(Serialize)]
struct Sheets<'a> {
    sheets: Vec<OneSheet<'a>>,
}

#[derive(Serialize)]
struct OneSheet<'a> {
    title: &'a str,
    svg: &'a str,
}

pub(crate) fn run(output: &mut Output, command: &PrintCommand) -> Result<(), Stop> {
    match command {
        PrintCommand::Strip(args) => {
            let sheets = with_scales(output, args, |scales, _| strip(scales))?;
            hand_out(output, &args.sheet, &sheets)
        }
        PrintCommand::Chart { scales: args, step } => {
            let sheets = with_scales(output, args, |scales, factor| {
                chart(scales, step.map_or(default_step(scales.base), |step| step * factor))
            })?;
            hand_out(output, &args.sheet, &sheets)
        }
        PrintCommand::FileCard { set, sheet } => {
            let grades = match set {
                None => FileSet::trade().files().map(|(_, grade)| grade).collect(),
                Some(text) => grades(output.language, text)?,
            };
            let sheets = file_card(output.language, sheet.paper.into(), &grades)?;
            hand_out(output, sheet, &sheets)
        }
        PrintCommand::Thickness { sheet } => {
            let drawn = usual_thickness(output.language, sheet.paper.into());
            hand_out(output, sheet, &[drawn])
        }
    }
}

impl From<PaperName> for Paper {
    fn from(name: PaperName) -> Self {
        match name {
            PaperName::A4 => Self::A4,
            PaperName::Letter => Self::Letter,
        }
    }
}

/// Draws with the scales of the options; the second argument turns their unit into MPa for strength in ksi.
fn with_scales(
    output: &Output,
    args: &ScalesArgs,
    draw: impl Fn(&Scales<'_>, f64) -> Result<Vec<Sheet>, Refusal>,
) -> Result<Vec<Sheet>, Refusal> {
    let language = output.language;
    let base = parse_axis(language, &args.base)?;
    let named: Vec<Axis> =
        args.scales.iter().map(|name| parse_axis(language, name)).collect::<Result<_, _>>()?;
    let (low, high) = parse_span(language, &args.from)?;
    let ends = Scales { units: output.units, ..Scales::new(base, low, high, &named) };
    let factor = ends.factor(base);
    let (low, high) = (low * factor, high * factor);
    let to = if named.is_empty() { usual_scales(base, low, high) } else { named.clone() };
    let paper = args.sheet.paper.into();
    draw(&Scales { low, high, to: &to, paper, language, ..ends }, factor)
}

/// To the file of `--out`, or to stdout.
pub(crate) fn hand_out(
    output: &mut Output,
    args: &SheetArgs,
    sheets: &[Sheet],
) -> Result<(), Stop> {
    let format = args.format.unwrap_or_else(|| Format::of(args.out.as_deref()));
    let several = sheets.len() > 1;
    let Some(path) = args.out.as_deref() else {
        if output.json {
            let sheets = sheets.iter().map(|s| OneSheet { title: &s.title, svg: &s.svg }).collect();
            output.object(&Sheets { sheets })?;
            return Ok(());
        }
        match (format, sheets) {
            (Format::Html, _) => output.line(&document(sheets))?,
            (Format::Svg, [only]) => output.line(&only.svg)?,
            (Format::Svg, _) => {
                return Err(words::several_sheets(output.language, sheets.len()).into());
            }
        }
        return Ok(());
    };
    let mut written = Vec::new();
    match format {
        Format::Html => written.push((path.to_owned(), document(sheets))),
        Format::Svg => {
            for (i, sheet) in sheets.iter().enumerate() {
                let name = if several { numbered(path, i + 1) } else { path.to_owned() };
                written.push((name, sheet.svg.clone()));
            }
        }
    }
    let mut names = Vec::new();
    for (name, text) in written {
        let shown = name.display().to_string();
        fs::write(&name, text).map_err(|error| {
            Stop::Input(words::file_not_written(output.language, &shown, &error))
        })?;
        names.push(shown);
    }
    if output.json {
        output.object(&Written { written: names })?;
    } else {
        for name in &names {
            output.line(name)?;
        }
    }
    Ok(())
}

/// `chart.svg` becomes `chart-2.svg`.
pub(crate) fn numbered(path: &Path, number: usize) -> PathBuf {
    let mut name = path.file_stem().unwrap_or_default().to_os_string();
    name.push(format!("-{number}"));
    if let Some(ending) = path.extension() {
        name.push(".");
        name.push(ending);
    }
    path.with_file_name(name)
}

impl Format {
    /// By the ending of the file's name; a drawing where that says nothing.
    fn of(path: Option<&Path>) -> Self {
        let ending = path.and_then(Path::extension).unwrap_or_default();
        if ending.eq_ignore_ascii_case("html") || ending.eq_ignore_ascii_case("htm") {
            Self::Html
        } else {
            Self::Svg
        }
    }
}

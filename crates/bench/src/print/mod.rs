//! Sheets for the wall and the bench: black on white, large type, A4 and Letter.
//!
//! Every sheet is one SVG drawing with its size in millimetres, without script, colour or a typeface of its
//! own. It says what it is, where its numbers come from, how far they may be off and which of them were
//! recalled, and carries the version of the tables instead of a date.
//!
//! ```
//! use biteband_bench::print::{Scales, document, strip};
//! use biteband_hardness::{Axis, Scale};
//!
//! let to = [Axis::Hardness(Scale::Hv), Axis::Hardness(Scale::Hbw), Axis::Tensile];
//! let sheets = strip(&Scales::new(Axis::Hardness(Scale::Hrc), 40.0, 65.0, &to)).unwrap();
//! assert!(sheets[0].svg.starts_with("<svg") && sheets[0].svg.contains("width=\"210mm\""));
//! assert!(document(&sheets).contains("@page"));
//! ```

mod chart;
mod file_card;
mod part_card;
mod strip;
mod svg;
mod thickness;
mod thickness_lines;

use biteband_hardness::{
    Axis, Choice, Conversion, DATA_VERSION, Error, Marks, Material, Reading, Scale, TableId,
    convert, decimal, spans,
};

use crate::answer::default_targets;
use crate::format::{self, Units};
use crate::refusal::Refusal;
use crate::words::{Language, Phrase, Print, Unprintable};

pub use chart::{chart, default_step};
pub use file_card::file_card;
pub use part_card::part_card;
pub use strip::strip;
pub use svg::Paper;
pub use thickness::{Line, thickness};
pub use thickness_lines::{thickness_lines, usual_thickness};

/// A piece of a table with less than this share of the span says less than the break it makes.
const SHORTEST: f64 = 0.025;

/// One side of paper.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sheet {
    /// What it is, in words.
    pub title: String,
    /// The paper it is made for.
    pub paper: Paper,
    /// The drawing: a whole SVG document.
    pub svg: String,
}

/// A part of one scale and the scales to set beside it.
#[derive(Clone, Copy, Debug)]
pub struct Scales<'a> {
    /// The scale that is read from.
    pub base: Axis,
    /// Its soft end, in its own unit; MPa for tensile strength.
    pub low: f64,
    /// Its hard end.
    pub high: f64,
    /// The scales beside it.
    pub to: &'a [Axis],
    /// Units of strength.
    pub units: Units,
    /// The paper.
    pub paper: Paper,
    /// The language.
    pub language: Language,
}

impl<'a> Scales<'a> {
    /// From `low` to `high` on a scale, on A4, in English and MPa.
    #[must_use]
    pub const fn new(base: Axis, low: f64, high: f64, to: &'a [Axis]) -> Self {
        let (units, paper, language) = (Units::Metric, Paper::A4, Language::English);
        Self { base, low, high, to, units, paper, language }
    }

    fn refused(&self, error: &Error) -> Refusal {
        Refusal::of_hardness(self.language, error)
    }

    /// Refuses what cannot be drawn: ends off the scale or in the wrong order, a scale twice, and a scale
    /// that no table reaches from anywhere between the ends.
    fn check(&self) -> Result<(), Refusal> {
        let Self { base: axis, low, high, .. } = *self;
        for end in [low, high] {
            let _: Reading = Reading::new(axis, end).map_err(|error| self.refused(&error))?;
        }
        if low > high {
            return Err(self.refused(&Error::Backward { axis, low, high }));
        }
        if high - low < 0.5 {
            return Err(refusal(
                self.language,
                "bench.print_no_span",
                Unprintable::NoSpan,
                &self.span(),
            ));
        }
        if self.to.is_empty() {
            return Err(refusal(
                self.language,
                "bench.unreadable_scales",
                Unprintable::NoScales,
                "",
            ));
        }
        for (place, &to) in self.to.iter().enumerate() {
            if self.to.iter().take(place).any(|&other| other == to) {
                let twice = Unprintable::ScaleTwice(to);
                return Err(refusal(self.language, "bench.unreadable_scales", twice, to.symbol()));
            }
            let middle = f64::midpoint(low, high);
            if to == axis || !self.reaches(to) {
                let nearest = self.converted(middle, to);
                return Err(nearest.err().map_or_else(
                    || {
                        refusal(
                            self.language,
                            "bench.print_no_span",
                            Unprintable::NoSpan,
                            &self.span(),
                        )
                    },
                    |error| self.refused(&error),
                ));
            }
        }
        Ok(())
    }

    /// Whether a table goes to this scale from a part of the span that is worth drawing.
    fn reaches(&self, to: Axis) -> bool {
        let least = SHORTEST * (self.high - self.low);
        spans(self.base, to, Choice::STEEL)
            .any(|(_, span)| span.high.0.min(self.high) - span.low.0.max(self.low) > least)
    }

    fn converted(&self, value: f64, to: Axis) -> Result<Conversion, Error> {
        convert(Reading::new(self.base, value)?, to, Choice::STEEL)
    }

    /// "40 – 65 HRC".
    fn span(&self) -> String {
        let factor = self.factor(self.base);
        let (low, high) = (format::plain(self.low / factor), format::plain(self.high / factor));
        format!("{} {}", format::dash(&low, &high), self.units.of(self.base))
    }

    /// What turns a shown number into the core's: MPa in a ksi where strength is shown in ksi, otherwise 1.
    #[must_use]
    pub fn factor(&self, axis: Axis) -> f64 {
        let inch = self.units.of(axis) == "ksi";
        if inch { biteband_quantity::Megapascals::PER_KSI } else { 1.0 }
    }

    /// The name of a column: the symbol, for strength with its unit.
    fn heading(&self, axis: Axis) -> String {
        match axis {
            Axis::Tensile => format!("Rm, {}", self.units.of(axis)),
            Axis::Hardness(scale) => scale.symbol().to_owned(),
        }
    }

    /// What stands at the foot of a sheet of conversions.
    fn notes(
        &self,
        to: &[Axis],
        tables: &[TableId],
        marks: Marks,
        about: &[Print<'_>],
    ) -> Vec<String> {
        let say = |phrase| self.language.say(phrase).into_owned();
        let mut notes = vec![say(Phrase::ConvertCaution)];
        notes.push(self.language.print(Print::WidthUnderName(&say(Phrase::WidthMeaning))).into());
        notes.extend(about.iter().map(|&words| self.language.print(words).into_owned()));
        if marks.parenthesised {
            let meaning = say(Phrase::TableNotes { parenthesised: true, recalled: false });
            notes.push(format!("( ) {meaning}"));
        }
        if marks.recalled {
            notes.push(format!("† {}", self.language.print(Print::Recalled)));
        }
        if to.contains(&Axis::Tensile) {
            notes.push(say(Phrase::TensileCaution));
        }
        notes.push(say(Phrase::SteelScope));
        let titles: Vec<String> = tables
            .iter()
            .filter_map(|id| id.get())
            .map(|table| format!("{}: {}", table.short(), table.title()))
            .collect();
        notes.push(format!("{}. {}", titles.join(". "), version(self.language)));
        notes
    }
}

/// The scales that are set beside a part of one when none are named: the usual ones that a table reaches from
/// its middle.
///
/// # Example
/// ```
/// use biteband_bench::print::usual_scales;
/// use biteband_hardness::{Axis, Scale};
/// // No table goes from 62 HRC to tensile strength.
/// assert!(!usual_scales(Axis::Hardness(Scale::Hrc), 58.0, 66.0).contains(&Axis::Tensile));
/// ```
#[must_use]
pub fn usual_scales(base: Axis, low: f64, high: f64) -> Vec<Axis> {
    let scales = Scales::new(base, low, high, &[]);
    let middle = f64::midpoint(low, high);
    let reached = |axis: &Axis| scales.converted(middle, *axis).is_ok();
    default_targets(Material::CarbonAlloySteel, base).into_iter().filter(reached).collect()
}

/// The width of a conversion as it stands under a column's name: a share where it is one.
fn width(found: &Conversion) -> String {
    let half = found.width.half;
    match found.to {
        Axis::Tensile | Axis::Hardness(Scale::Hv | Scale::Hbw | Scale::Hbs | Scale::Hk) => {
            format!("±{} %", format::fixed(100.0 * half / found.at.value, 0))
        }
        Axis::Hardness(_) => format!("±{}", format::fixed(half, 1)),
    }
}

fn version(language: Language) -> String {
    language.print(Print::Version { data: DATA_VERSION }).into_owned()
}

fn refusal(language: Language, code: &'static str, what: Unprintable<'_>, given: &str) -> Refusal {
    let [message, allowed, instead] = language.unprintable(what);
    Refusal::new(code, message, given, allowed, instead)
}

/// A number with the marks of its cells: parentheses as printed, a dagger for a recalled one.
fn marked(number: &str, marks: Marks) -> String {
    let (open, close) = if marks.parenthesised { ("(", ")") } else { ("", "") };
    format!("{open}{number}{close}{}", if marks.recalled { "†" } else { "" })
}

fn add(marks: &mut Marks, more: Marks) {
    marks.parenthesised |= more.parenthesised;
    marks.recalled |= more.recalled;
}

fn add_table(tables: &mut Vec<TableId>, table: TableId) {
    if !tables.contains(&table) {
        tables.push(table);
    }
}

/// "1 of 2", nothing for a single sheet.
fn sheet_number(language: Language, number: usize, count: usize) -> String {
    if count < 2 {
        return String::new();
    }
    language.print(Print::SheetNumber { number, count }).into_owned()
}

/// Reads "40..65" or "40-65", with point or comma, as the ends of a span.
///
/// # Errors
/// A refusal that shows how to write it. Order and range are checked where the scale is known.
///
/// # Example
/// ```
/// use biteband_bench::print::parse_span;
/// use biteband_bench::words::Language;
/// assert_eq!(parse_span(Language::English, "40..65").unwrap(), (40.0, 65.0));
/// assert!(parse_span(Language::English, "40 and up").is_err());
/// ```
pub fn parse_span(language: Language, text: &str) -> Result<(f64, f64), Refusal> {
    let ends = text.split_once("..").or_else(|| text.split_once(['-', '–']));
    let ends = ends.and_then(|(low, high)| Some((decimal(low)?, decimal(high)?)));
    ends.ok_or_else(|| {
        let given = format::shortened(text);
        refusal(
            language,
            "bench.unreadable_span",
            Unprintable::UnreadableSpan { given: &given },
            &given,
        )
    })
}

/// One HTML page for printing from a browser: every sheet on a side of its own, in its true size.
#[must_use]
pub fn document(sheets: &[Sheet]) -> String {
    let first = sheets.first();
    let paper = match first.map(|sheet| sheet.paper).unwrap_or_default() {
        Paper::A4 => "A4",
        Paper::Letter => "letter",
    };
    let mut title = String::new();
    svg::escape(&mut title, first.map_or("", |sheet| sheet.title.as_str()));
    let mut page = format!(
        "<!DOCTYPE html><html><head><meta charset=\"utf-8\"><title>{title}</title><style>\
         @page{{size:{paper} portrait;margin:0}}body{{margin:0}}\
         svg{{display:block;break-inside:avoid}}svg+svg{{break-before:page}}\
         </style></head><body>"
    );
    for sheet in sheets {
        page.push_str(&sheet.svg);
    }
    page.push_str("</body></html>");
    page
}

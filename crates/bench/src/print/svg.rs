//! A sheet of paper drawn in millimetres, black on white.

use biteband_quantity::Shown;

use std::fmt::{self, Write};

/// Paper that a shop printer takes.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Paper {
    /// 210 by 297 mm.
    #[default]
    A4,
    /// 8.5 by 11 in, 215.9 by 279.4 mm.
    Letter,
}

impl Paper {
    /// Width and height in mm, upright.
    ///
    /// # Source
    /// ISO 216 for A4, ANSI/ASME Y14.1 for Letter (both recalled).
    #[must_use]
    pub const fn size(self) -> (f64, f64) {
        match self {
            Self::A4 => (210.0, 297.0),
            Self::Letter => (215.9, 279.4),
        }
    }
}

/// What no sheet prints on, on every side, in mm: more than any printer needs.
pub(super) const MARGIN: f64 = 10.0;
/// From the middle of a figure down to the line it stands on, as a share of the type size.
pub(super) const HALF_FIGURE: f64 = 0.36;
/// Type that is read from a metre away, in mm: its capitals are 3.5 mm high.
pub(super) const WALL_TYPE: f64 = 4.9;
/// Type of what is read from near.
pub(super) const NOTE_TYPE: f64 = 2.8;
/// Line thicknesses in mm.
pub(super) const THIN: f64 = 0.2;
pub(super) const MEDIUM: f64 = 0.35;
pub(super) const THICK: f64 = 0.6;

/// Which end of a text stands at the given place.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Anchor {
    Start,
    Middle,
    End,
}

/// The room that a text takes, in mm: generous for any usual typeface without serifs, because the paper is
/// printed with whatever the machine has.
pub(super) fn text_width(text: &str, size: f64) -> f64 {
    let room = |sign| match sign {
        ' ' | 'f' | 'i' | 'j' | 'l' | 'r' | 't' | 'I' | '.' | ',' | ':' | ';' | '-' | '(' | ')' => {
            0.4
        }
        'm' | 'w' | 'M' | 'W' | '%' | '±' | '×' | '=' | '+' | '<' | '>' => 0.9,
        '@' => 1.05,
        // Signs as wide as they are high.
        '\u{2190}'.. => 1.1,
        _ => 0.62,
    };
    text.chars().map(room).sum::<f64>() * size
}

/// The type size at which a text fits into a width, at most `most`.
pub(super) fn fitting(text: &str, width: f64, most: f64) -> f64 {
    most.min(width / text_width(text, 1.0).max(0.1))
}

/// A word in pieces that fit into a width.
fn pieces(word: &str, size: f64, width: f64) -> Vec<String> {
    if text_width(word, size) <= width {
        return vec![word.to_owned()];
    }
    let mut all = vec![String::new()];
    for sign in word.chars() {
        let last = all.last().map_or("", String::as_str);
        if !last.is_empty() && text_width(last, size) + text_width("W", size) > width {
            all.push(String::new());
        }
        if let Some(last) = all.last_mut() {
            last.push(sign);
        }
    }
    all
}

/// Text broken at spaces into lines that fit into a width; a word that is longer is broken where the line ends.
pub(super) fn lines(text: &str, size: f64, width: f64) -> Vec<String> {
    let mut all: Vec<String> = Vec::new();
    for word in text.split(' ').flat_map(|word| pieces(word, size, width)) {
        match all.last_mut() {
            Some(line)
                if text_width(line, size) + text_width(&word, size) + 0.4 * size <= width =>
            {
                line.push(' ');
                line.push_str(&word);
            }
            _ => all.push(word),
        }
    }
    all
}

/// A sheet in the making.
pub(super) struct Canvas {
    out: String,
    pub(super) width: f64,
    pub(super) height: f64,
}

impl Canvas {
    pub(super) fn new(paper: Paper, title: &str) -> Self {
        let (width, height) = paper.size();
        let mut canvas = Self { out: String::new(), width, height };
        let (w, h) = (Shown(width), Shown(height));
        let _: fmt::Result = write!(
            canvas.out,
            "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{w}mm\" height=\"{h}mm\" \
             viewBox=\"0 0 {w} {h}\" font-family=\"sans-serif\" fill=\"#000\" stroke-linecap=\"square\">\
             <title>"
        );
        canvas.escaped(title);
        canvas.out.push_str("</title>");
        canvas.blank(0.0, 0.0, width, height);
        canvas
    }

    /// Left and right end of what may be printed on.
    pub(super) fn sides(&self) -> (f64, f64) {
        (MARGIN, self.width - MARGIN)
    }

    pub(super) fn finish(mut self) -> String {
        self.out.push_str("</svg>");
        self.out
    }

    /// Marks what follows, until [`Canvas::end_group`], as belonging together.
    pub(super) fn group(&mut self, name: &str) {
        self.out.push_str("<g data-name=\"");
        self.escaped(name);
        self.out.push_str("\">");
    }

    pub(super) fn end_group(&mut self) {
        self.out.push_str("</g>");
    }

    fn escaped(&mut self, text: &str) {
        escape(&mut self.out, text);
    }

    /// An attribute in hundredths of a millimetre, finer than any printer.
    fn attribute(&mut self, name: &str, value: f64) {
        let value = mm(value);
        let _: fmt::Result = write!(self.out, " {name}=\"{value}\"");
    }

    fn attributes(&mut self, all: &[(&str, f64)]) {
        for &(name, value) in all {
            self.attribute(name, value);
        }
    }

    /// A straight line of the given thickness; `dashes` are lengths of line and gap, or empty.
    pub(super) fn dashed(&mut self, from: (f64, f64), to: (f64, f64), weight: f64, dashes: &str) {
        self.out.push_str("<line");
        self.attributes(&[("x1", from.0), ("y1", from.1), ("x2", to.0), ("y2", to.1)]);
        self.pen(weight);
        if !dashes.is_empty() {
            let _: fmt::Result =
                write!(self.out, " stroke-linecap=\"butt\" stroke-dasharray=\"{dashes}\"");
        }
        self.out.push_str("/>");
    }

    pub(super) fn line(&mut self, from: (f64, f64), to: (f64, f64), weight: f64) {
        self.dashed(from, to, weight, "");
    }

    /// A line through many points.
    pub(super) fn polyline(&mut self, points: &[(f64, f64)], weight: f64, dashes: &str) {
        self.out.push_str("<polyline fill=\"none\" points=\"");
        for &(x, y) in points {
            let (x, y) = (mm(x), mm(y));
            let _: fmt::Result = write!(self.out, "{x},{y} ");
        }
        self.out.push('"');
        self.pen(weight);
        if !dashes.is_empty() {
            let _: fmt::Result = write!(self.out, " stroke-dasharray=\"{dashes}\"");
        }
        self.out.push_str("/>");
    }

    fn pen(&mut self, weight: f64) {
        self.out.push_str(" stroke=\"#000\"");
        self.attribute("stroke-width", weight);
    }

    /// An empty box with a border.
    pub(super) fn frame(&mut self, x: f64, y: f64, width: f64, height: f64, weight: f64) {
        self.rect(x, y, width, height, "none");
        self.pen(weight);
        self.out.push_str("/>");
    }

    /// White paper under what is drawn next.
    pub(super) fn blank(&mut self, x: f64, y: f64, width: f64, height: f64) {
        self.rect(x, y, width, height, "#fff");
        self.out.push_str("/>");
    }

    fn rect(&mut self, x: f64, y: f64, width: f64, height: f64, fill: &str) {
        let _: fmt::Result = write!(self.out, "<rect fill=\"{fill}\"");
        self.attributes(&[("x", x), ("y", y), ("width", width), ("height", height)]);
    }

    /// Text on its line.
    pub(super) fn text(
        &mut self,
        at: (f64, f64),
        size: f64,
        anchor: Anchor,
        bold: bool,
        text: &str,
    ) {
        self.out.push_str("<text");
        self.attributes(&[("x", at.0), ("y", at.1), ("font-size", size)]);
        self.rest_of_text(anchor, bold, text);
    }

    /// Text that climbs, its line to the right of it.
    pub(super) fn climbing(&mut self, at: (f64, f64), size: f64, bold: bool, text: &str) {
        let (x, y) = at;
        let _: fmt::Result =
            write!(self.out, "<text transform=\"rotate(-90 {} {})\"", mm(x), mm(y));
        self.attributes(&[("x", x), ("y", y), ("font-size", size)]);
        self.rest_of_text(Anchor::Start, bold, text);
    }

    fn rest_of_text(&mut self, anchor: Anchor, bold: bool, text: &str) {
        self.out.push_str(match anchor {
            Anchor::Start => "",
            Anchor::Middle => " text-anchor=\"middle\"",
            Anchor::End => " text-anchor=\"end\"",
        });
        self.out.push_str(if bold { " font-weight=\"bold\">" } else { ">" });
        self.escaped(text);
        self.out.push_str("</text>");
    }

    /// Text broken into lines from margin to margin, the first on line `y`; the line below the last comes back.
    pub(super) fn paragraph(&mut self, y: f64, size: f64, bold: bool, text: &str) -> f64 {
        let (left, right) = self.sides();
        let mut y = y;
        for line in lines(text, size, right - left) {
            self.text((left, y), size, Anchor::Start, bold, &line);
            y += 1.35 * size;
        }
        y
    }

    /// The title on top, with the number of the sheet where there are several; the place below it comes back.
    pub(super) fn title(&mut self, title: &str, sheet: &str) -> f64 {
        let (left, right) = self.sides();
        let y = MARGIN + 6.5;
        let room = right - left - text_width(sheet, WALL_TYPE) - 4.0;
        self.text((left, y), fitting(title, room, 8.0), Anchor::Start, true, title);
        self.text((right, y), WALL_TYPE, Anchor::End, false, sheet);
        y + 4.0
    }

    /// The room that notes take at the bottom.
    pub(super) fn foot_height(&self, notes: &[String]) -> f64 {
        let (left, right) = self.sides();
        let count = notes.iter().flat_map(|note| lines(note, NOTE_TYPE, right - left)).count();
        count_of(count) * 1.35 * NOTE_TYPE + 1.0
    }

    /// Notes in small type at the bottom, under a line; the place above it comes back.
    pub(super) fn foot(&mut self, notes: &[String]) -> f64 {
        let (left, right) = self.sides();
        let top = self.height - MARGIN - self.foot_height(notes);
        self.line((left + THIN, top), (right - THIN, top), THIN);
        let mut y = top + 1.35 * NOTE_TYPE;
        for note in notes {
            y = self.paragraph(y, NOTE_TYPE, false, note);
        }
        top - 2.0
    }
}

/// Text as XML and HTML hold it; signs that XML has no room for become spaces.
pub(super) fn escape(out: &mut String, text: &str) {
    for sign in text.chars() {
        match sign {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\u{fffe}' | '\u{ffff}' => out.push(' '),
            sign if sign.is_control() => out.push(' '),
            sign => out.push(sign),
        }
    }
}

fn mm(value: f64) -> Shown {
    Shown((value * 100.0).round() / 100.0)
}

/// A count as a length.
pub(super) fn count_of(count: usize) -> f64 {
    u32::try_from(count).map_or(0.0, f64::from)
}

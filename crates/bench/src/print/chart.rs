//! The conversion chart: a row for every step of one scale, hard on top.

use biteband_hardness::{Axis, Basis, Marks, Scale, TableId};
use biteband_quantity::confined;

use super::svg::{
    Anchor, Canvas, HALF_FIGURE, MEDIUM, THICK, THIN, WALL_TYPE, count_of, text_width,
};
use super::{Scales, Sheet, add, add_table, marked, refusal, sheet_number};
use crate::format;
use crate::refusal::Refusal;
use crate::words::{Print, Unprintable};

/// Least and most height of a row.
const ROW: (f64, f64) = (6.3, 9.5);
const SIZE: f64 = 5.0;
/// Type of the base scale's numbers.
const OWN_SIZE: f64 = 5.6;
/// Type of the table's name and of the width in a heading.
const HEAD_SIZE: f64 = 3.6;
/// More rows than anybody reads on a wall.
const MOST_ROWS: f64 = 400.0;

struct Cell {
    shown: String,
    table: TableId,
    marks: Marks,
}

impl Cell {
    fn of(scales: &Scales<'_>, value: f64, to: Axis) -> Option<Self> {
        let found = scales.converted(value, to).ok()?;
        let table = found.table.get()?;
        let printed = match found.at.basis {
            Basis::Row { row } if found.at.span.is_none() && scales.units.of(to) == to.unit() => {
                let index = table.rows().position(|other| (other - row).abs() < 1e-9);
                index.and_then(|index| table.cell(index, to))
            }
            _ => None,
        };
        let number = match (printed, found.at.span) {
            (Some(cell), _) => format::fixed(cell.value, cell.decimals),
            (None, Some((low, high))) => {
                format::dash(&scales.units.number(to, low), &scales.units.number(to, high))
            }
            (None, None) => scales.units.number(to, found.at.value),
        };
        let marks = found.at.marks;
        Some(Self { shown: marked(&number, marks), table: found.table, marks })
    }

    /// What stands before and behind the decimal point's place, so that figures stand under figures.
    fn halves(&self) -> (&str, &str) {
        let figure = |sign: char| sign.is_ascii_digit() || sign == '(';
        let cut = self.shown.find(|sign| !figure(sign)).unwrap_or(self.shown.len());
        self.shown.split_at_checked(cut).unwrap_or((&self.shown, ""))
    }
}

/// A column of the whole chart, before it is cut into sheets.
struct Column {
    axis: Axis,
    heading: String,
    width: String,
    cells: Vec<Option<Cell>>,
    /// Room before and behind the place of the decimal point.
    before: f64,
    behind: f64,
}

impl Column {
    fn new(scales: &Scales<'_>, rows: &[f64], axis: Axis) -> Self {
        let cells: Vec<Option<Cell>> =
            rows.iter().map(|&value| Cell::of(scales, value, axis)).collect();
        // Every sign as wide as a figure, because most are.
        let room = |half: &str| count_of(half.chars().count()) * 0.62 * SIZE;
        let halves = || cells.iter().flatten().map(Cell::halves);
        let before = halves().map(|(before, _)| room(before)).fold(SIZE / 2.0, f64::max);
        let behind = halves().map(|(_, behind)| room(behind)).fold(0.0, f64::max);
        // The row nearest the middle of those that have a number.
        let held: Vec<f64> =
            rows.iter().zip(&cells).filter_map(|(&row, cell)| cell.as_ref().map(|_| row)).collect();
        let middle = held.get(held.len() / 2).and_then(|&row| scales.converted(row, axis).ok());
        Self {
            axis,
            heading: scales.heading(axis),
            width: middle.map(|found| super::width(&found)).unwrap_or_default(),
            before,
            behind,
            cells,
        }
    }

    /// The least width that holds cells and heading.
    fn room(&self) -> f64 {
        (self.before + self.behind).max(text_width(&self.heading, SIZE)) + 2.0
    }

    /// The tables that its cells come from, from hard to soft.
    fn tables(&self, rows: &[usize]) -> Vec<TableId> {
        let mut tables = Vec::new();
        for &row in rows {
            if let Some(Some(cell)) = self.cells.get(row) {
                add_table(&mut tables, cell.table);
            }
        }
        tables
    }

    /// Heading, then the numbers of some rows; `tops` are the places of heading and rows and a row's height.
    fn draw(&self, canvas: &mut Canvas, block: &[usize], sides: (f64, f64), tops: (f64, f64, f64)) {
        let (x, width) = sides;
        let (head, top, high) = tops;
        let centre = x + width / 2.0;
        canvas.text((centre, head + 2.0), SIZE, Anchor::Middle, true, &self.heading);
        let tables = self.tables(block);
        let width_text = if tables.is_empty() { "" } else { self.width.as_str() };
        canvas.text((centre, head + 6.5), HEAD_SIZE, Anchor::Middle, false, width_text);
        let mut line = head + 6.5;
        for table in tables.into_iter().filter_map(TableId::get) {
            line += 1.3 * HEAD_SIZE;
            let size = super::svg::fitting(table.short(), width - 1.0, HEAD_SIZE);
            canvas.text((centre, line), size, Anchor::Middle, false, table.short());
        }
        let point = centre + (self.before - self.behind) / 2.0;
        let (mut y, mut above) = (top, None);
        for &row in block {
            let at = y + high / 2.0 + HALF_FIGURE * SIZE;
            if let Some(Some(cell)) = self.cells.get(row) {
                let (before, behind) = cell.halves();
                canvas.text((point, at), SIZE, Anchor::End, false, before);
                if !behind.is_empty() {
                    canvas.text((point, at), SIZE, Anchor::Start, false, behind);
                }
                if above.is_some_and(|above| above != cell.table) {
                    canvas.line((x + THICK, y), (x + width - THICK, y), 2.0 * THICK);
                }
                above = Some(cell.table);
            } else {
                canvas.text((centre, at), SIZE, Anchor::Middle, false, "–");
            }
            y += high;
        }
    }
}

/// The usual step between rows, in the unit of the scale: 1 on scales of a hundred, 10 on longer ones, 50 MPa.
#[must_use]
pub const fn default_step(base: Axis) -> f64 {
    match base {
        Axis::Tensile => 50.0,
        Axis::Hardness(Scale::Hv | Scale::Hbw | Scale::Hbs | Scale::Hk) => 10.0,
        Axis::Hardness(_) => 1.0,
    }
}

/// Draws the chart: a row for every `step` from the low end, cut into as many sheets as it needs.
///
/// A number that the table prints stands as printed, with its decimals and parentheses; one between printed
/// rows is rounded by the rule of its scale. A dash stands where no table reaches.
///
/// # Units
/// `step` in the unit of the base scale.
///
/// # Errors
/// As for the strip; and when the step is not positive or would make more than 400 rows.
pub fn chart(scales: &Scales<'_>, step: f64) -> Result<Vec<Sheet>, Refusal> {
    scales.check()?;
    let count = ((scales.high - scales.low) / step + 1e-6).floor() + 1.0;
    if !(step > 0.0 && count <= MOST_ROWS) {
        let given = format::exact(step);
        let words = Unprintable::StepUnfit { given: &given, unit: scales.base.unit() };
        return Err(refusal(scales.language, "bench.unreadable_step", words, &given));
    }
    let mut rows: Vec<f64> = Vec::new();
    while count_of(rows.len()) < count {
        rows.push(scales.low + count_of(rows.len()) * step);
    }
    rows.reverse();
    let columns: Vec<Column> =
        scales.to.iter().map(|&axis| Column::new(scales, &rows, axis)).collect();

    let title = scales.language.print(Print::Chart { span: &scales.span() }).into_owned();
    let plan = Plan::new(scales, &rows, &columns);
    let mut parts = Vec::new();
    for group in plan.column_groups() {
        for block in plan.row_blocks(&group) {
            parts.push((group.clone(), block));
        }
    }
    let number = |place| sheet_number(scales.language, place + 1, parts.len());
    let sheets = parts.iter().enumerate();
    Ok(sheets.map(|(i, (group, block))| plan.sheet(&title, &number(i), group, block)).collect())
}

/// A sheet before its rows are drawn: places of headings, first row and notes.
struct Begun {
    canvas: Canvas,
    head: f64,
    top: f64,
    foot: f64,
}

struct Plan<'a> {
    scales: &'a Scales<'a>,
    rows: &'a [f64],
    columns: &'a [Column],
    /// Width of the base scale's column.
    own: f64,
}

impl<'a> Plan<'a> {
    fn new(scales: &'a Scales<'a>, rows: &'a [f64], columns: &'a [Column]) -> Self {
        let labels = rows.iter().map(|&row| text_width(&Self::label(scales, row), OWN_SIZE));
        let heading = text_width(&scales.heading(scales.base), OWN_SIZE);
        Self { scales, rows, columns, own: labels.fold(heading, f64::max) + 4.0 }
    }

    fn label(scales: &Scales<'_>, row: f64) -> String {
        match scales.units.of(scales.base) {
            "ksi" => scales.units.number(scales.base, row),
            _ => format::plain(row),
        }
    }

    /// Columns that fit beside each other, as places in the list.
    fn column_groups(&self) -> Vec<Vec<&'a Column>> {
        let room = self.scales.paper.size().0 - 2.0 * super::svg::MARGIN - self.own;
        let mut groups: Vec<Vec<&Column>> = Vec::new();
        let mut used = f64::INFINITY;
        for column in self.columns {
            if used + column.room() > room {
                groups.push(Vec::new());
                used = 0.0;
            }
            used += column.room();
            if let Some(group) = groups.last_mut() {
                group.push(column);
            }
        }
        groups
    }

    /// Rows cut into even blocks for a group of columns, as places in the list.
    fn row_blocks(&self, group: &[&Column]) -> Vec<Vec<usize>> {
        let all: Vec<usize> = (0..self.rows.len()).collect();
        // A sheet of all rows would need the most room for headings and notes.
        let longest = self.begin("", "", group, &all);
        let room = longest.foot - longest.top;
        let most = all.iter().take_while(|&&n| count_of(n + 1) * ROW.0 <= room).count().max(1);
        let count = all.len().div_ceil(most);
        all.chunks(all.len().div_ceil(count)).map(<[usize]>::to_vec).collect()
    }

    /// A sheet with its title and notes, and the places between them.
    fn begin(&self, title: &str, number: &str, group: &[&Column], block: &[usize]) -> Begun {
        let scales = self.scales;
        let mut canvas = Canvas::new(scales.paper, title);
        let y = canvas.title(title, number) + 3.5;
        let y = canvas.paragraph(y, WALL_TYPE, false, &scales.language.print(Print::Estimates));
        let (mut tables, mut marks) = (Vec::new(), Marks::default());
        let mut stack = 1;
        for column in group {
            let own = column.tables(block);
            stack = stack.max(own.len());
            for table in own {
                add_table(&mut tables, table);
            }
            for &row in block {
                if let Some(Some(cell)) = column.cells.get(row) {
                    add(&mut marks, cell.marks);
                }
            }
        }
        let axes: Vec<Axis> = group.iter().map(|column| column.axis).collect();
        let mut about = vec![Print::ChartCells];
        about.extend((stack > 1).then_some(Print::TableChanges));
        let foot = canvas.foot(&scales.notes(&axes, &tables, marks, &about));
        let head = y + 3.0;
        let top = head + 6.5 + count_of(stack) * 1.3 * HEAD_SIZE + 2.0;
        Begun { canvas, head, top, foot }
    }

    fn sheet(&self, title: &str, number: &str, group: &[&Column], block: &[usize]) -> Sheet {
        let Begun { mut canvas, head, top, foot } = self.begin(title, number, group, block);
        let (left, right) = canvas.sides();
        let needed: f64 = group.iter().map(|column| column.room()).sum();
        let spare = ((right - left - self.own - needed) / count_of(group.len())).min(20.0);
        let end = left + self.own + needed + spare * count_of(group.len());
        let row = confined((foot - top) / count_of(block.len()), ROW.0, ROW.1);
        let bottom = top + count_of(block.len()) * row;
        self.own_column(&mut canvas, block, (left, end), (head, top, row));
        let mut x = left + self.own;
        for column in group {
            let width = column.room() + spare;
            canvas.group(&column.heading);
            column.draw(&mut canvas, block, (x, width), (head, top, row));
            canvas.end_group();
            canvas.line((x, head - 3.0), (x, bottom), THIN);
            x += width;
        }
        canvas.line((left, top), (end, top), THICK);
        Sheet { title: title.to_owned(), paper: self.scales.paper, svg: canvas.finish() }
    }

    /// The base scale's numbers, and the line under each row.
    fn own_column(
        &self,
        canvas: &mut Canvas,
        block: &[usize],
        sides: (f64, f64),
        tops: (f64, f64, f64),
    ) {
        let (left, end) = sides;
        let (head, top, high) = tops;
        let centre = left + self.own / 2.0;
        let heading = self.scales.heading(self.scales.base);
        canvas.group(&heading);
        canvas.text((centre, head + 2.0), OWN_SIZE, Anchor::Middle, true, &heading);
        let mut y = top;
        for (place, row) in block.iter().filter_map(|&row| self.rows.get(row)).enumerate() {
            let at = (centre, y + high / 2.0 + HALF_FIGURE * OWN_SIZE);
            canvas.text(at, OWN_SIZE, Anchor::Middle, true, &Self::label(self.scales, *row));
            y += high;
            // Every fifth line is heavier, to keep the eye in its row.
            canvas.line((left, y), (end, y), if (place + 1) % 5 == 0 { MEDIUM } else { THIN });
        }
        canvas.end_group();
    }
}

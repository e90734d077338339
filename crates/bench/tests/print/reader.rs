//! Sheets and tables read back, without the code that made them.

use biteband_bench::print::Sheet;
use biteband_hardness::DATA_VERSION;
use roxmltree::{Document, Node};

const MARGIN: f64 = 10.0;

/// The cells of two columns on the rows that print both, as written.
pub(crate) fn pairs<'a>(csv: &'a str, first: &str, second: &str) -> Vec<(&'a str, &'a str)> {
    let mut lines = csv.lines().filter(|line| !line.starts_with('#'));
    let headings: Vec<&str> = lines.next().unwrap().split(',').collect();
    let at = |name: &str| headings.iter().position(|heading| *heading == name).unwrap();
    let (first, second) = (at(first), at(second));
    let cells = lines.map(|line| line.split(',').collect::<Vec<_>>());
    cells
        .map(|row| (row[first], row[second]))
        .filter(|p| !p.0.is_empty() && !p.1.is_empty())
        .collect()
}

pub(crate) fn number(text: &str) -> f64 {
    text.trim_matches(['(', ')', '*', '†']).parse().unwrap()
}

/// The printed pairs of two columns as numbers, by rising first number.
pub(crate) fn printed(csv: &str, first: &str, second: &str) -> Vec<(f64, f64)> {
    let all = pairs(csv, first, second);
    let mut all: Vec<_> = all.iter().map(|(a, b)| (number(a), number(b))).collect();
    all.sort_by(|a, b| a.0.total_cmp(&b.0));
    all
}

pub(crate) fn get(node: Node<'_, '_>, name: &str) -> f64 {
    node.attribute(name).unwrap().parse().unwrap()
}

pub(crate) fn near(one: f64, other: f64, by: f64) -> bool {
    (one - other).abs() <= by
}

/// A box on the paper: left, top, right, bottom.
pub(crate) type Area = [f64; 4];

/// Advance widths of `DejaVu Sans` in thousandths of the type size, from its `hmtx` table: the widest face that
/// usually answers to `sans-serif`.
pub(crate) fn advance(sign: char) -> f64 {
    const WIDTHS: [(f64, &str); 23] = [
        (278.0, "ijl'"),
        (318.0, " ,.IJ"),
        (337.0, "/:;"),
        (361.0, "f-"),
        (392.0, "t()[]"),
        (411.0, "r!"),
        (460.0, "\""),
        (500.0, "°"),
        (525.0, "sz†–*_?"),
        (557.0, "cL"),
        (592.0, "kvxyF"),
        (603.0, "P"),
        (615.0, "aeoTY"),
        (636.0, "bdghnpquES0123456789"),
        (698.0, "KAVXZBRC"),
        (770.0, "UNHD"),
        (787.0, "GOQ"),
        (780.0, "&"),
        (838.0, "w±+=<>×→"),
        (863.0, "M"),
        (974.0, "m%"),
        (989.0, "W"),
        (1000.0, "@淬"),
    ];
    WIDTHS.iter().find(|(_, signs)| signs.contains(sign)).unwrap_or_else(|| panic!("{sign}")).0
}

/// The room of a text: as `DejaVu Sans` takes it, and 0.6 of the type size for each sign of a label.
pub(crate) fn room(text: Node<'_, '_>) -> Area {
    let words = text.text().unwrap_or_default();
    let (x, y, size) = (get(text, "x"), get(text, "y"), get(text, "font-size"));
    let signs = f64::from(u32::try_from(words.chars().count()).unwrap());
    let label = if words.contains(' ') { 0.0 } else { 0.6 * signs };
    let width = size * (words.chars().map(advance).sum::<f64>() / 1000.0).max(label);
    let (up, down) = (0.74 * size, 0.2 * size);
    if let Some(turned) = text.attribute("transform") {
        assert!(turned.starts_with("rotate(-90 "));
        return [x - up, y - width, x + down, y];
    }
    let left = match text.attribute("text-anchor") {
        None => x,
        Some("middle") => x - width / 2.0,
        Some(other) => {
            assert_eq!(other, "end");
            x - width
        }
    };
    [left, y - up, left + width, y + down]
}

pub(crate) fn written<'a>(document: &'a Document<'_>) -> Vec<Node<'a, 'a>> {
    let all = document.descendants().filter(|node| node.has_tag_name("text"));
    all.filter(|node| node.text().is_some_and(|text| !text.is_empty())).collect()
}

/// Everything that holds for each sheet: size, ink, margins, no text over text, caution and version.
pub(crate) fn sound(sheet: &Sheet) {
    let document = Document::parse(&sheet.svg).unwrap();
    let root = document.root_element();
    let (width, height) = sheet.paper.size();
    assert_eq!(root.attribute("width").unwrap(), format!("{width}mm"));
    assert_eq!(root.attribute("height").unwrap(), format!("{height}mm"));
    assert_eq!(root.attribute("viewBox").unwrap(), format!("0 0 {width} {height}"));
    assert_eq!(root.attribute("font-family"), Some("sans-serif"));
    let inside = |[left, top, right, bottom]: Area, what: &str| {
        let fits = left >= MARGIN - 0.01
            && top >= MARGIN - 0.01
            && right <= width - MARGIN + 0.01
            && bottom <= height - MARGIN + 0.01;
        assert!(fits, "{}: {what} at {left} {top} {right} {bottom}", sheet.title);
    };
    for node in root.descendants().filter(Node::is_element) {
        let name = node.tag_name().name();
        let known = ["svg", "title", "g", "text", "line", "rect", "polyline"];
        assert!(known.contains(&name), "{name}");
        for ink in ["fill", "stroke"] {
            let ink = node.attribute(ink).unwrap_or("none");
            assert!(["#000", "#fff", "none"].contains(&ink), "{ink}");
        }
        let half = node.attribute("stroke-width").map_or(0.0, |_| get(node, "stroke-width")) / 2.0;
        assert!(half == 0.0 || half >= 0.1, "{}: a line of {half}", sheet.title);
        match name {
            "line" => {
                let [x1, y1, x2, y2] = ["x1", "y1", "x2", "y2"].map(|end| get(node, end));
                // Ink of flat ends reaches beyond the place by half a thickness; 0.3 mm is less than any
                // printer's feed is off.
                assert!(half < 0.7);
                inside([x1.min(x2), y1.min(y2), x1.max(x2), y1.max(y2)], "line");
            }
            "rect" if node.attribute("fill") == Some("none") => {
                let [x, y, w, h] = ["x", "y", "width", "height"].map(|side| get(node, side));
                inside([x - half, y - half, x + w + half, y + h + half], "frame");
            }
            "polyline" => {
                for point in node.attribute("points").unwrap().split_whitespace() {
                    let (x, y) = point.split_once(',').unwrap();
                    let (x, y) = (number(x), number(y));
                    inside([x - half, y - half, x + half, y + half], "polyline");
                }
            }
            _ => {}
        }
    }
    let texts = written(&document);
    let rooms: Vec<Area> = texts.iter().map(|text| room(*text)).collect();
    for (i, one) in rooms.iter().enumerate() {
        inside(*one, texts[i].text().unwrap());
        for (j, other) in rooms.iter().enumerate().take(i) {
            let apart = one[2] <= other[0] + 0.05
                || other[2] <= one[0] + 0.05
                || one[3] <= other[1] + 0.3
                || other[3] <= one[1] + 0.3;
            let (a, b) = (texts[i].text().unwrap(), texts[j].text().unwrap());
            assert!(apart, "{} {:?}: {a:?} over {b:?}", sheet.title, sheet.paper);
        }
    }
    let words = words(&document);
    assert!(words.contains(DATA_VERSION) && words.contains("estimate"), "{words}");
}

pub(crate) fn words(document: &Document<'_>) -> String {
    let texts: Vec<&str> = written(document).iter().filter_map(Node::text).collect();
    texts.join(" ")
}

/// A scale as drawn: its engraved lines by lower and upper end, its ticks as value and place.
pub(crate) struct Drawn {
    pub(crate) lines: Vec<(f64, f64)>,
    pub(crate) labels: Vec<(String, f64)>,
    small: Vec<f64>,
}

impl Drawn {
    pub(crate) fn read(document: &Document<'_>, name: &str) -> Self {
        let group = document
            .descendants()
            .find(|node| node.attribute("data-name") == Some(name))
            .unwrap_or_else(|| panic!("{name} is not drawn"));
        let lines = || group.children().filter(|node| node.has_tag_name("line"));
        let upright = |node: &Node<'_, '_>| near(get(*node, "x1"), get(*node, "x2"), 1e-9);
        let spines: Vec<(f64, f64)> =
            lines().filter(upright).map(|node| (get(node, "y1"), get(node, "y2"))).collect();
        let spine = get(lines().find(upright).unwrap(), "x1");
        let ticks = lines().filter(|node| !upright(node) && near(get(*node, "x1"), spine, 1e-9));
        let texts: Vec<(String, f64)> = group
            .children()
            .filter(|node| node.has_tag_name("text") && node.attribute("transform").is_none())
            .filter(|node| get(*node, "x") > spine)
            // The middle of a figure stands 0.36 of the type size above its line.
            .map(|node| {
                (node.text().unwrap().to_owned(), get(node, "y") - 0.36 * get(node, "font-size"))
            })
            .collect();
        let (mut labels, mut small) = (Vec::new(), Vec::new());
        for y in ticks.map(|tick| get(tick, "y1")) {
            match texts.iter().find(|text| near(text.1, y, 0.02)) {
                Some(text) => labels.push((text.0.clone(), y)),
                None => small.push(y),
            }
        }
        assert_eq!(labels.len(), texts.len(), "{name}: every number has its tick");
        Self { lines: spines, labels, small }
    }

    /// Every tick with its value: between two numbers the small ones stand at equal steps.
    pub(crate) fn ticks(&self) -> Vec<(f64, f64)> {
        let mut ticks: Vec<(f64, f64)> =
            self.labels.iter().map(|(label, y)| (number(label), *y)).collect();
        let labels = ticks.clone();
        for pair in labels.windows(2) {
            let [(low, below), (high, above)] = [pair[0], pair[1]];
            let mut between: Vec<f64> =
                self.small.iter().copied().filter(|y| *y < below && *y > above).collect();
            between.sort_by(|a, b| b.total_cmp(a));
            let step = (high - low) / f64::from(u32::try_from(between.len() + 1).unwrap());
            let mut value = low;
            for y in between {
                value += step;
                ticks.push((value, y));
            }
        }
        ticks
    }
}

/// Linear interpolation over printed pairs, and whether the value is printed.
pub(crate) fn between_rows(rows: &[(f64, f64)], value: f64) -> Option<(f64, bool)> {
    if let Some(row) = rows.iter().find(|row| near(row.0, value, 1e-6)) {
        return Some((row.1, true));
    }
    let above = rows.iter().position(|row| row.0 > value).filter(|&place| place > 0)?;
    let [(x0, y0), (x1, y1)] = [rows[above - 1], rows[above]];
    Some((y0 + (value - x0) / (x1 - x0) * (y1 - y0), false))
}

//! The card of a file test: what each file did, where it was done, and how to read it.

use biteband_evidence::{AXIS_HIGH, AXIS_LOW, Error, FileSet, FileTest, Hand, Outcome};
use biteband_hardness::SourceId;
use biteband_quantity::confined;

use super::svg::{
    Anchor, Canvas, HALF_FIGURE, MARGIN, MEDIUM, Paper, THICK, THIN, WALL_TYPE, count_of, lines,
    text_width,
};
use super::{Sheet, sheet_number, version};
use crate::format;
use crate::refusal::Refusal;
use crate::words::{Language, Phrase, Print};

/// Strokes of one file that the card has room for.
const STROKES: [u32; 3] = [1, 2, 3];
const OUTCOMES: [Outcome; 3] = [Outcome::Bite, Outcome::Slight, Outcome::Skate];
/// Width of the column of file grades.
const GRADES: f64 = 27.0;
/// A box to tick.
const BOX: f64 = 6.5;
/// Least and most height of a file's row.
const ROW: (f64, f64) = (9.0, 15.0);
/// From the line of the rule down to the line of its numbers.
const RULE: f64 = 11.0;

/// Draws the card: a row for each file, hardest on top; a second sheet where one has no room for all.
///
/// The width that it names is that of the belief itself for a clean bracket: three strokes of every file in a
/// careful hand, the softer half skating and the harder half biting.
///
/// # Units
/// `grades` in HRC.
///
/// # Errors
/// A refusal for no file, too many, two alike, or a grade that no file has.
pub fn file_card(language: Language, paper: Paper, grades: &[f64]) -> Result<Vec<Sheet>, Refusal> {
    let refused = |error: Error| Refusal::of_evidence(language, &error);
    let set = FileSet::new(grades).map_err(refused)?;
    let reading = reading(language, &set).map_err(refused)?;
    let mut files: Vec<f64> = set.files().map(|(_, grade)| grade).collect();
    files.reverse();
    // What the first sheet leaves for rows: everything else on it has a height of its own.
    let most = if paper == Paper::A4 { 10 } else { 8 };
    let count = files.len().div_ceil(most);
    let groups = files.chunks(files.len().div_ceil(count)).enumerate();
    Ok(groups
        .map(|(i, group)| {
            let number = sheet_number(language, i + 1, count);
            sheet(language, paper, &number, group, &files, &reading)
        })
        .collect())
}

/// How to read the card, with the width that the belief has.
fn reading(language: Language, set: &FileSet) -> Result<String, Error> {
    let split = set.count() / 2;
    let mut test = FileTest::new(set.clone()).with_hand(Hand::Careful);
    let (mut skates, mut bites) = (None, None);
    for (place, (file, grade)) in set.files().enumerate() {
        let outcome = if place < split { Outcome::Skate } else { Outcome::Bite };
        for _ in STROKES {
            test = test.with_stroke(file, outcome)?;
        }
        if place < split {
            skates = Some(grade);
        } else {
            bites = bites.or(Some(grade));
        }
    }
    let found = test.assess(None)?;
    let band = found.band();
    Ok(match (skates, bites, band.low(), band.high()) {
        (Some(skates), Some(bites), Some(low), Some(high)) => {
            let half = format::fixed(((high - low) * 5.0).ceil() / 10.0, 1);
            let (skates, bites) = (format::exact(skates), format::exact(bites));
            let (low, high) = (format::fixed(low, 1), format::fixed(high, 1));
            let words = Print::CardWidth {
                skates: &skates,
                bites: &bites,
                low: &low,
                high: &high,
                half: &half,
            };
            language.print(words).into_owned()
        }
        _ => language.say(Phrase::OneFileOnly).into_owned(),
    })
}

fn sheet(
    language: Language,
    paper: Paper,
    number: &str,
    group: &[f64],
    files: &[f64],
    reading: &str,
) -> Sheet {
    let print = |words| language.print(words).into_owned();
    let title = print(Print::Card);
    let mut canvas = Canvas::new(paper, &title);
    let (left, right) = canvas.sides();
    let mut y = canvas.title(&title, number) + 1.0;
    y = fields(&mut canvas, language, y);

    let eyes = language.say(Phrase::Eyes);
    let size = WALL_TYPE;
    let high = 1.35 * size * count_of(lines(&eyes, size, right - left - 6.0).len()) + 2.5;
    canvas.frame(left + THICK, y, right - left - 2.0 * THICK, high, THICK);
    let mut line = y + 6.2;
    for part in lines(&eyes, size, right - left - 6.0) {
        canvas.text((left + 3.0, line), size, Anchor::Start, true, &part);
        line += 1.35 * size;
    }
    y += high + 6.5;
    for step in [Print::CardGrind, Print::CardPush, Print::CardTell, Print::CardOrder] {
        y = canvas.paragraph(y, size, false, &print(step));
    }

    // From the bottom up: notes, how to read, the rule; the boxes take what is left.
    let mut notes = vec![print(Print::CardCaution)];
    let sources = ["sae-j864", "eds-t-7159", "file-model"].into_iter().filter_map(SourceId::find);
    for (_, source) in sources {
        let seen = language.say(Phrase::Seen(source.seen().key()));
        notes.push(format!("{} ({}). {seen}", source.title(), source.body()));
    }
    if let Some(last) = notes.last_mut() {
        last.push(' ');
        last.push_str(&version(language));
    }
    let foot = canvas.foot(&notes);
    let to_read = [print(Print::CardBracket), reading.to_owned(), print(Print::CardDisagree)];
    let high: f64 = to_read
        .iter()
        .map(|text| 1.35 * 4.2 * count_of(lines(text, 4.2, right - left).len()))
        .sum();
    let mut line = foot - high + 3.0;
    let rule_top = line - 6.0 - RULE - 3.5;
    for text in &to_read {
        line = canvas.paragraph(line, 4.2, false, text);
    }
    rule(&mut canvas, language, files, rule_top);
    boxes(&mut canvas, language, group, y, rule_top - 15.0);
    Sheet { title, paper, svg: canvas.finish() }
}

/// Lines to write on; the line below comes back.
fn fields(canvas: &mut Canvas, language: Language, y: f64) -> f64 {
    let (left, right) = canvas.sides();
    let rows: [&[(Print<'_>, f64)]; 2] = [
        &[(Print::CardPart, 0.64), (Print::CardDate, 0.36)],
        &[(Print::CardSteel, 0.36), (Print::CardTemper, 0.36), (Print::CardSpot, 0.28)],
    ];
    let mut y = y;
    for row in rows {
        y += 6.0;
        let mut x = left;
        for &(name, share) in row {
            let name = language.print(name);
            let end = x + share * (right - left);
            canvas.text((x, y), WALL_TYPE, Anchor::Start, false, &name);
            let from = x + text_width(&name, WALL_TYPE) + 1.0;
            canvas.line((from, y + 0.8), (end - 3.0, y + 0.8), THIN);
            x = end;
        }
        y += 4.5;
    }
    y
}

/// A row of boxes for each file: strokes from left to right, each with its three answers.
fn boxes(canvas: &mut Canvas, language: Language, group: &[f64], top: f64, bottom: f64) {
    let (left, right) = canvas.sides();
    let pitch = (right - left - GRADES) / 9.0;
    let head = 12.0;
    let high = confined((bottom - top - head) / count_of(group.len()), ROW.0, ROW.1);
    let last = top + head + high * count_of(group.len());
    canvas.text(
        (left, top + 10.0),
        WALL_TYPE,
        Anchor::Start,
        true,
        &language.print(Print::CardFile),
    );
    let mut x = left + GRADES;
    for stroke in STROKES {
        canvas.line((x, top + 1.0), (x, last), MEDIUM);
        let name = language.print(Print::CardStroke(stroke));
        canvas.text((x + 1.5 * pitch, top + 5.0), WALL_TYPE, Anchor::Middle, true, &name);
        for outcome in OUTCOMES {
            let word = language.say(Phrase::Outcome(outcome));
            canvas.text((x + pitch / 2.0, top + 10.0), 3.9, Anchor::Middle, false, &word);
            x += pitch;
        }
    }
    canvas.line((right - MEDIUM, top + 1.0), (right - MEDIUM, last), MEDIUM);
    canvas.line((left + THIN, top + head), (right - MEDIUM, top + head), MEDIUM);
    let mut y = top + head;
    for &grade in group {
        let middle = y + high / 2.0;
        let at = (left + GRADES - 5.0, middle + HALF_FIGURE * 8.5);
        canvas.text(at, 8.5, Anchor::End, true, &format::exact(grade));
        let mut x = left + GRADES + pitch / 2.0;
        for _ in 0..9 {
            canvas.frame(x - BOX / 2.0, middle - BOX / 2.0, BOX, BOX, MEDIUM);
            x += pitch;
        }
        y += high;
        canvas.line((left + THIN, y), (right - MEDIUM, y), THIN);
    }
}

/// A blank rule to mark the band on, with the files' own grades above it.
fn rule(canvas: &mut Canvas, language: Language, files: &[f64], y: f64) {
    let (left, right) = canvas.sides();
    let (hardest, softest) = (files.first(), files.last());
    // The belief's own axis, to the next five.
    let end = |grade: Option<&f64>, beyond: f64| grade.map_or(beyond, |grade| grade + beyond);
    let low = ((end(softest, -10.0) / 5.0).floor() * 5.0).max(AXIS_LOW);
    let high = ((end(hardest, 7.0) / 5.0).ceil() * 5.0).min(AXIS_HIGH);
    let x = |hrc: f64| left + 6.0 + (hrc - low) / (high - low) * (right - left - 12.0);
    canvas.group("rule");
    canvas.text((MARGIN, y - 7.5), 4.2, Anchor::Start, false, &language.print(Print::CardRule));
    canvas.line((x(low), y), (x(high), y), THICK);
    let mut hrc = low.ceil();
    while hrc <= high {
        let five = (hrc / 5.0).fract().abs() < 1e-9;
        let length = if five { 5.0 } else { 2.6 };
        canvas.line((x(hrc), y), (x(hrc), y + length), if five { MEDIUM } else { THIN });
        if five {
            let at = (x(hrc), y + RULE);
            canvas.text(at, 5.6, Anchor::Middle, true, &format::exact(hrc));
        }
        hrc += 1.0;
    }
    for &file in files {
        let at = x(file);
        canvas.polyline(&[(at - 1.1, y - 3.2), (at, y - 1.0), (at + 1.1, y - 3.2)], MEDIUM, "");
    }
    canvas.end_group();
}

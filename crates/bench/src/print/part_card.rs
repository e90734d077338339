//! The card of a part on one side of paper: how it stands, its facts, its story, room to write, and who says so.

use biteband_hardness::{Axis, Scale, SourceId};
use biteband_quantity::confined;

use super::Sheet;
use super::svg::{
    Anchor, Canvas, MARGIN, MEDIUM, NOTE_TYPE, Paper, THICK, THIN, count_of, lines, text_width,
};
use crate::answer::{parse_target, steel_targets};
use crate::card::{Card, Fact, Said, SaidOf, StoryLine, facts, said_of_card, story};
use crate::format::{self, Units};
use crate::words::{About, FactLabel, Language, PartWords, Phrase, Print, Tempers};

/// From line to line, as a share of the type size.
const LEADING: f64 = 1.3;
/// Type of a title that takes several lines.
const SMALL_TITLE: f64 = 5.0;
/// Type of the verdict.
const VERDICT: f64 = 5.0;
/// The column of labels, as a share of the type size.
const LABELS: f64 = 10.5;
/// What stays free for the pen, at least.
const PEN: f64 = 24.0;
/// From one line to write on to the next.
const PEN_LINE: f64 = 8.0;
/// Height of the rule with its numbers.
const RULE: f64 = 15.0;

/// How much is told, from everything in large type to the least in small type.
struct Fit {
    size: f64,
    /// Lines of the notes, of any other fact, and of an entry of the story.
    notes: usize,
    fact: usize,
    entry: usize,
    /// Entries that are wanted at least; older ones are counted only.
    least: usize,
}

const FITS: [Fit; 4] = [
    Fit { size: 3.9, notes: 12, fact: 6, entry: 4, least: 6 },
    Fit { size: 3.9, notes: 5, fact: 4, entry: 3, least: 4 },
    Fit { size: 3.5, notes: 4, fact: 3, entry: 2, least: 3 },
    Fit { size: 3.2, notes: 3, fact: 2, entry: 2, least: 2 },
];
/// What every card fits into.
const LEAST: Fit = Fit { size: 2.9, notes: 1, fact: 1, entry: 1, least: 0 };

/// Draws the card, with days in a time zone that lies so many minutes east of Greenwich.
///
/// It is always one sheet. What does not fit is left out in this order: older entries of the story, which are counted;
/// the end of long notes; the end of long facts; the size of the type. The foot says so.
///
/// ```
/// use biteband_bench::card::demo;
/// use biteband_bench::print::{Paper, document, part_card};
/// use biteband_bench::words::Language;
/// let pawl = &demo::parts(Language::English)[0];
/// let sheet = part_card(pawl, Language::English, Paper::A4, 60);
/// assert!(document(&[sheet]).contains("Capstan pawl"));
/// ```
#[must_use]
pub fn part_card(card: &Card, language: Language, paper: Paper, offset_minutes: i32) -> Sheet {
    let say = |words: PartWords<'_>| language.part(words).into_owned();
    let name = card.name.trim();
    let title = if name.is_empty() { say(PartWords::NoName) } else { name.to_owned() };
    let page = Page {
        card,
        language,
        said: said_of_card(card, language),
        facts: facts(card, language).into_iter().filter(|fact| !is_apart(fact.of)).collect(),
        story: story(card, language, offset_minutes)
            .into_iter()
            .filter(|line| line.entry.is_some())
            .collect(),
    };
    let mut canvas = Canvas::new(paper, &title);
    let (left, right) = canvas.sides();
    let top = if text_width(&title, SMALL_TITLE) < right - left - 4.0 {
        canvas.title(&title, "") + 2.0
    } else {
        // In one line it would be too small to be found in a drawer.
        canvas.paragraph(MARGIN + SMALL_TITLE, SMALL_TITLE, true, &title) - SMALL_TITLE / 2.0
    };
    let mut notes = page.notes();
    // The sentence that something is left out has its place whether it is needed or not.
    notes.push(page.shortened());
    let foot = canvas.foot_height(&notes);
    let bottom = canvas.height - MARGIN - foot - PEN;
    let verdicts = page.verdict_height(&canvas);
    let (fit, entries) = page.fit(&canvas, bottom - top - verdicts);
    if page.is_whole(&canvas, fit, entries) {
        notes.pop();
    }
    let foot = canvas.foot(&notes);
    let y = page.draw_verdicts(&mut canvas, top);
    let y = page.draw_facts(&mut canvas, fit, y);
    let y = page.draw_story(&mut canvas, fit, entries, y);
    page.draw_pen(&mut canvas, y, foot);
    Sheet { title, paper, svg: canvas.finish() }
}

/// What stands elsewhere on the sheet, or is not worth paper.
const fn is_apart(of: FactLabel) -> bool {
    matches!(of, FactLabel::Says | FactLabel::PaperSays | FactLabel::LookedAt | FactLabel::Typed)
}

struct Page<'a> {
    card: &'a Card,
    language: Language,
    said: Vec<Said>,
    facts: Vec<Fact>,
    story: Vec<StoryLine>,
}

/// The first lines of a text; the last of them ends in dots where there would be more.
fn first_lines(text: &str, size: f64, width: f64, most: usize) -> Vec<String> {
    let mut all: Vec<String> = text.lines().flat_map(|line| lines(line, size, width)).collect();
    if all.len() > most {
        all.truncate(most);
        if let Some(last) = all.last_mut() {
            while text_width(last, size) + text_width(" ...", size) > width && last.pop().is_some()
            {
            }
            last.push_str(" ...");
        }
    }
    all
}

impl Page<'_> {
    fn say(&self, words: PartWords<'_>) -> String {
        self.language.part(words).into_owned()
    }

    fn shortened(&self) -> String {
        let story = self.say(PartWords::Fact(FactLabel::Story)).to_lowercase();
        let notes = self.say(PartWords::Fact(FactLabel::Notes)).to_lowercase();
        self.say(PartWords::Shortened { what: &format!("{story}, {notes}") })
    }

    fn labels(fit: &Fit) -> f64 {
        LABELS * fit.size
    }

    fn fact_lines(canvas: &Canvas, fit: &Fit, fact: &Fact, most: usize) -> Vec<String> {
        let (left, right) = canvas.sides();
        first_lines(&fact.text, fit.size, right - left - Self::labels(fit), most)
    }

    const fn most_of(fit: &Fit, of: FactLabel) -> usize {
        if matches!(of, FactLabel::Notes) { fit.notes } else { fit.fact }
    }

    fn entry_text(line: &StoryLine) -> String {
        let head = format!("{}: {}", line.title, line.what);
        if line.said.is_empty() { head } else { format!("{head} – {}", line.said) }
    }

    fn entry_lines(canvas: &Canvas, fit: &Fit, line: &StoryLine, most: usize) -> Vec<String> {
        let (left, right) = canvas.sides();
        let width = right - left - Self::labels(fit);
        first_lines(&Self::entry_text(line), fit.size, width, most)
    }

    /// How it is told in so much height, and how many of the newest entries.
    fn fit(&self, canvas: &Canvas, height: f64) -> (&'static Fit, usize) {
        let mut best = (&LEAST, 0);
        for fit in FITS.iter().chain([&LEAST]) {
            let step = LEADING * fit.size;
            let of_facts = self
                .facts
                .iter()
                .map(|fact| Self::fact_lines(canvas, fit, fact, Self::most_of(fit, fact.of)).len());
            // A heading for the story, a line for what is counted only, and air between.
            let mut left = height - count_of(of_facts.sum()) * step - 3.0 * step;
            let mut entries = 0;
            for line in self.story.iter().rev() {
                left -= count_of(Self::entry_lines(canvas, fit, line, fit.entry).len()) * step;
                if left < 0.0 {
                    break;
                }
                entries += 1;
            }
            best = (fit, entries);
            if left >= 0.0 || entries >= fit.least.min(self.story.len()).max(1) {
                break;
            }
        }
        best
    }

    /// Whether nothing is left out.
    fn is_whole(&self, canvas: &Canvas, fit: &Fit, entries: usize) -> bool {
        let all = usize::MAX;
        let fact = |fact: &Fact| {
            Self::fact_lines(canvas, fit, fact, all).len() <= Self::most_of(fit, fact.of)
        };
        let entry = |line: &StoryLine| Self::entry_lines(canvas, fit, line, all).len() <= fit.entry;
        entries == self.story.len() && self.facts.iter().all(fact) && self.story.iter().all(entry)
    }

    fn verdict_lines(canvas: &Canvas, said: &Said) -> Vec<String> {
        let (left, right) = canvas.sides();
        first_lines(&said.text, VERDICT, right - left - 6.0, 4)
    }

    fn verdict_height(&self, canvas: &Canvas) -> f64 {
        let of_texts = self.said.iter().map(|said| {
            count_of(Self::verdict_lines(canvas, said).len()) * LEADING * VERDICT + 5.0
        });
        let rule = if self.band().is_some() { RULE } else { 0.0 };
        of_texts.sum::<f64>() + rule
    }

    /// The band of the files, in HRC.
    fn band(&self) -> Option<(Option<f64>, Option<f64>)> {
        let hrc = Axis::Hardness(Scale::Hrc).symbol();
        let said = self.said.iter().find(|said| said.of == SaidOf::Files && said.scale == hrc)?;
        (said.low.is_some() || said.high.is_some()).then_some((said.low, said.high))
    }

    fn draw_verdicts(&self, canvas: &mut Canvas, top: f64) -> f64 {
        let (left, right) = canvas.sides();
        let height = self.verdict_height(canvas);
        if self.said.is_empty() {
            return top;
        }
        canvas.frame(left + THICK, top, right - left - 2.0 * THICK, height - 2.0, THICK);
        let mut y = top + 2.0;
        for said in &self.said {
            for line in Self::verdict_lines(canvas, said) {
                y += LEADING * VERDICT;
                canvas.text((left + 3.0, y - 1.2), VERDICT, Anchor::Start, true, &line);
            }
            if said.of == SaidOf::Files
                && let Some(band) = self.band()
            {
                self.draw_rule(canvas, band, y + 4.5);
                y += RULE;
            }
            y += 2.0;
        }
        top + height
    }

    /// The band as a bar over a rule, the wanted hardness in brackets.
    fn draw_rule(&self, canvas: &mut Canvas, band: (Option<f64>, Option<f64>), y: f64) {
        let (left, right) = canvas.sides();
        let target = parse_target(self.language, &self.card.target).ok();
        let wanted = target.map(|target| (target.low(), target.high()));
        let (from, to) = wanted.unwrap_or_default();
        let ends: Vec<f64> = [band.0, band.1, from, to].into_iter().flatten().collect();
        let lowest = ends.iter().copied().fold(f64::INFINITY, f64::min);
        let highest = ends.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        let low = ((lowest - 3.0) / 5.0).floor() * 5.0;
        let high = ((highest + 3.0) / 5.0).ceil() * 5.0;
        let x = |hrc: f64| {
            let share = confined((hrc - low) / (high - low), 0.0, 1.0);
            left + 8.0 + share * (right - left - 16.0)
        };
        canvas.group("rule");
        canvas.line((x(low), y), (x(high), y), MEDIUM);
        let mut hrc = low;
        while hrc <= high {
            let five = (hrc / 5.0).fract().abs() < 1e-9;
            canvas.line((x(hrc), y), (x(hrc), y + if five { 3.0 } else { 1.6 }), THIN);
            if five {
                canvas.text((x(hrc), y + 7.0), 3.9, Anchor::Middle, true, &format::exact(hrc));
            }
            hrc += 1.0;
        }
        let (start, end) = (x(band.0.unwrap_or(low)), x(band.1.unwrap_or(high)));
        canvas.line((start, y - 1.2), (end, y - 1.2), 1.2);
        for (limit, inward) in [(from, 1.5), (to, -1.5)] {
            if let Some(limit) = limit {
                let (at, high) = (x(limit), y - 3.6);
                canvas.polyline(
                    &[(at + inward, high), (at, high), (at, y + 3.6), (at + inward, y + 3.6)],
                    MEDIUM,
                    "",
                );
            }
        }
        canvas.end_group();
    }

    fn draw_facts(&self, canvas: &mut Canvas, fit: &Fit, top: f64) -> f64 {
        let (left, _) = canvas.sides();
        let mut y = top + 1.0;
        for fact in &self.facts {
            y = Self::draw_row(
                canvas,
                fit,
                y,
                &fact.label,
                &Self::fact_lines(canvas, fit, fact, Self::most_of(fit, fact.of)),
                left,
            );
        }
        y
    }

    fn draw_row(
        canvas: &mut Canvas,
        fit: &Fit,
        top: f64,
        label: &str,
        text: &[String],
        left: f64,
    ) -> f64 {
        let mut y = top;
        for (place, line) in text.iter().enumerate() {
            y += LEADING * fit.size;
            if place == 0 {
                canvas.text((left, y), fit.size, Anchor::Start, true, label);
            }
            canvas.text((left + Self::labels(fit), y), fit.size, Anchor::Start, false, line);
        }
        y
    }

    fn draw_story(&self, canvas: &mut Canvas, fit: &Fit, entries: usize, top: f64) -> f64 {
        if self.story.is_empty() {
            return top;
        }
        let (left, right) = canvas.sides();
        let mut y = top + 0.9 * fit.size;
        canvas.line((left + THIN, y), (right - THIN, y), THIN);
        let before = self.story.len().saturating_sub(entries);
        if before > 0 {
            y += LEADING * fit.size;
            let count = self.say(PartWords::Earlier { count: before });
            canvas.text((left, y), fit.size, Anchor::Start, false, &count);
        }
        for line in self.story.iter().skip(before) {
            let text = Self::entry_lines(canvas, fit, line, fit.entry);
            y = Self::draw_row(canvas, fit, y, &line.date, &text, left);
        }
        y
    }

    /// Lines to write on, down to the foot.
    fn draw_pen(&self, canvas: &mut Canvas, top: f64, foot: f64) {
        let (left, right) = canvas.sides();
        let title = self.say(PartWords::Handwriting);
        let mut y = top + PEN_LINE;
        canvas.text((left, y - 0.6), NOTE_TYPE, Anchor::Start, false, &title);
        let mut from = left + text_width(&title, NOTE_TYPE) + 1.0;
        while y < foot - PEN_LINE / 2.0 {
            canvas.line((from, y), (right - THIN, y), THIN);
            from = left + THIN;
            y += PEN_LINE;
        }
    }

    /// Cautions of the work that this part asks for, what the numbers are, and who says so.
    fn notes(&self) -> Vec<String> {
        let language = self.language;
        let mut notes = Vec::new();
        if self.card.demo {
            notes.push(self.say(PartWords::Demo));
        }
        notes.push(language.say(Phrase::Eyes).into_owned());
        if self.is_struck() {
            notes.push(language.about(About::CautionStruck).to_owned());
        }
        // The bath is among the facts only if there is one.
        let bath = self.facts.iter().any(|fact| fact.of == FactLabel::Bath);
        if bath && self.card.bath.medium.contains("oil") {
            notes.push(language.tempers(Tempers::OilSmoke).into_owned());
        }
        notes.push(language.about(About::CautionCritical).to_owned());
        notes.push(language.print(Print::CardCaution).into_owned());
        let by_files = self.said.iter().any(|said| said.of == SaidOf::Files);
        if by_files {
            notes.push(self.say(PartWords::Judgement));
            let sources = ["sae-j864", "file-model"].into_iter().filter_map(SourceId::find);
            let titles =
                sources.map(|(_, source)| format!("{} ({}).", source.title(), source.body()));
            notes.push(titles.collect::<Vec<_>>().join(" "));
        }
        let (app, data) = crate::card::versions();
        let by = self.say(PartWords::SaidBy { app: &app, data: &data });
        notes.push(format!("{by}."));
        notes
    }

    /// Whether somebody hits it: its kind has a struck end, or a place of it is named so.
    fn is_struck(&self) -> bool {
        let named = |text: &str| text.to_lowercase().contains("struck");
        let kind = self.card.kind.to_lowercase();
        // A screw is no screwdriver: only whole words count.
        let same = |part: &str| {
            let part = part.to_lowercase();
            kind.split_whitespace().all(|word| part.split_whitespace().any(|own| own == word))
        };
        let kinds = steel_targets(self.language, Units::Metric, &kind);
        let by_kind = kinds
            .is_ok_and(|found| found.targets.iter().any(|row| named(row.zone) && same(row.part)));
        by_kind || self.card.zones.iter().any(|zone| named(&zone.place))
    }
}

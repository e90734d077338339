//! `biteband part`.

use std::io;
use std::path::{Path, PathBuf};

use biteband_bench::answer::parse_target;
use biteband_bench::card::file::Counts;
use biteband_bench::card::merge::{self, Choice, Fate, Plan};
use biteband_bench::card::{
    Card, Fact, Photo, Row, Said, SectionSheet, StoryLine, Zone, again, csv, facts, file, find,
    said_of_card, story, text,
};
use biteband_bench::print::part_card;
use biteband_bench::section::SectionInput;
use biteband_bench::words::{Language, PartWords};
use clap::{Args, Subcommand, ValueEnum};
use serde::Serialize;

use crate::args::SheetArgs;
use crate::output::{Output, Stop};
use crate::part_file::{create, free_name, new_id, now_ms, read, read_if_there, replace};
use crate::print::{Written, hand_out, numbered};
use crate::section::SectionArgs;
use crate::words::{self, PartLine};

/// A FILE is a file of parts as the page exports it; `-` is standard input.
#[derive(Debug, Subcommand)]
pub(crate) enum PartCommand {
    /// Begin a part
    New(Box<NewArgs>),
    /// Say what is known of the parts of a file
    Show(ShowArgs),
    /// Make the card of a part on one sheet, to print on A4 or Letter
    Print {
        #[command(flatten)]
        from: FromArgs,
        #[command(flatten)]
        sheet: SheetArgs,
    },
    /// Join files into one, or make a table of results
    Export {
        /// Files of parts
        #[arg(value_name = "FILE", required = true)]
        files: Vec<PathBuf>,
        /// Only this part, by its id or its name
        #[arg(long, value_name = "PART")]
        part: Option<String>,
        /// A table of results instead, for a spreadsheet
        #[arg(long)]
        csv: bool,
        /// File to write, which must not be there yet; stdout if not given
        #[arg(long, value_name = "FILE")]
        out: Option<PathBuf>,
    },
    /// Take the parts of a file into another, with a preview and without losing any
    Import {
        /// The file to take in
        #[arg(value_name = "FILE")]
        file: PathBuf,
        /// The file that takes them; it is begun when it is not there
        #[arg(long, value_name = "FILE")]
        into: PathBuf,
        /// What to do with a part that both files have and that differs
        #[arg(long, value_enum, default_value_t = ConflictName::Both)]
        conflict: ConflictName,
        /// Only say what would be done
        #[arg(long)]
        dry_run: bool,
    },
    /// Say whether a file of parts is valid
    Check {
        /// The file
        #[arg(value_name = "FILE")]
        file: PathBuf,
    },
}

#[derive(Args, Debug)]
pub(crate) struct FromArgs {
    /// The file of parts
    #[arg(value_name = "FILE")]
    file: PathBuf,
    /// Only this part, by its id or its name
    #[arg(long, value_name = "PART")]
    part: Option<String>,
    /// Minutes by which local time is ahead of UTC, for the days of the story: 60, -300
    #[arg(long, value_name = "MINUTES", default_value_t = 0, allow_negative_numbers = true,
        value_parser = clap::value_parser!(i32).range(-1080..=1080))]
    offset: i32,
}

#[derive(Args, Debug)]
pub(crate) struct ShowArgs {
    #[command(flatten)]
    from: FromArgs,
    /// A table of results instead, for a spreadsheet
    #[arg(long, conflicts_with = "text")]
    csv: bool,
    /// A text that stands alone, for a letter or a forum
    #[arg(long)]
    text: bool,
}

#[derive(Args, Debug)]
pub(crate) struct NewArgs {
    /// What the part is called
    #[arg(long, value_name = "NAME")]
    name: String,
    /// What is stamped on the bar
    #[arg(long, value_name = "NAME")]
    steel: Option<String>,
    /// Where the bar comes from
    #[arg(long, value_name = "TEXT")]
    origin: Option<String>,
    #[command(flatten)]
    section: SectionArgs,
    /// Kind of part, as in the list of usual hardnesses: "cold chisel"
    #[arg(long, value_name = "PART")]
    kind: Option<String>,
    /// Wanted hardness: "50-54 HRC"
    #[arg(long, value_name = "HARDNESS")]
    target: Option<String>,
    /// A place that is wanted otherwise, once for each: "struck end=45 HRC max"
    #[arg(long = "zone", value_name = "PLACE=HARDNESS")]
    zones: Vec<String>,
    /// Remarks
    #[arg(long, value_name = "TEXT")]
    notes: Option<String>,
    /// Make it like a part of this file: what was done to that is the recipe
    #[arg(long, value_name = "FILE")]
    from: Option<PathBuf>,
    /// Which part of that file, by its id or its name
    #[arg(long, value_name = "PART", requires = "from")]
    part: Option<String>,
    /// File to write, which must not be there yet; stdout if not given
    #[arg(long, value_name = "FILE")]
    out: Option<PathBuf>,
}

/// `--conflict`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum ConflictName {
    /// Keep both: the one of the file becomes a part of its own
    Both,
    /// Leave the one of the file out
    Mine,
    /// Put the one of the file in its place; the old one is kept in a file beside
    Theirs,
}

impl From<ConflictName> for Choice {
    fn from(name: ConflictName) -> Self {
        match name {
            ConflictName::Both => Self::KeepBoth,
            ConflictName::Mine => Self::KeepMine,
            ConflictName::Theirs => Self::TakeTheirs,
        }
    }
}

pub(crate) fn run(output: &mut Output, command: PartCommand) -> Result<(), Stop> {
    match command {
        PartCommand::New(args) => new(output, *args),
        PartCommand::Show(args) => show(output, &args),
        PartCommand::Print { from, sheet } => {
            let parts = chosen(output.language, &from)?;
            let card = |card| part_card(card, output.language, sheet.paper.into(), from.offset);
            let sheets: Vec<_> = parts.iter().map(card).collect();
            hand_out(output, &sheet, &sheets)
        }
        PartCommand::Export { files, part, csv, out } => {
            export(output, &files, part.as_deref(), csv, out.as_deref())
        }
        PartCommand::Import { file, into, conflict, dry_run } => {
            import(output, &file, &into, conflict.into(), dry_run)
        }
        PartCommand::Check { file } => check(output, &file),
    }
}

/// The parts that are meant: the named one, or all.
fn chosen(language: Language, from: &FromArgs) -> Result<Vec<Card>, Stop> {
    let parts = read(language, &from.file)?;
    match from.part.as_deref() {
        None => Ok(parts),
        wanted => Ok(vec![find::one(language, &parts, wanted)?.clone()]),
    }
}

fn new(output: &mut Output, args: NewArgs) -> Result<(), Stop> {
    let language = output.language;
    let now = now_ms();
    let mut card = match &args.from {
        Some(path) => {
            let parts = read(language, path)?;
            let of = find::one(language, &parts, args.part.as_deref())?;
            of.as_recipe(&new_id(), &args.name, now)
        }
        // What a part is before anything was done to it.
        None => Card { demo: false, ..Card::default() }.as_recipe(&new_id(), &args.name, now),
    };
    let put = |place: &mut String, text: Option<String>| {
        if let Some(text) = text {
            *place = text;
        }
    };
    if let Some(target) = &args.target {
        parse_target(language, target)?;
    }
    let section = SectionInput::from(args.section);
    if !section.is_empty() {
        section.read(language)?;
        card.section = SectionSheet::from(&section);
    }
    for zone in &args.zones {
        let Some((place, target)) = zone.split_once('=') else {
            return Err(words::zone_unreadable(language, zone).into());
        };
        parse_target(language, target)?;
        let (place, target) = (place.trim().to_owned(), target.trim().to_owned());
        card.zones.push(Zone { place, target });
    }
    put(&mut card.steel.name, args.steel);
    put(&mut card.steel.origin, args.origin);
    put(&mut card.kind, args.kind);
    put(&mut card.target, args.target);
    put(&mut card.notes, args.notes);
    let whole = file::write(&[card], now);
    // What the next command would not read is not written.
    file::read(language, whole.as_bytes())?;
    hand_over(output, &[whole], args.out.as_deref())
}

/// Texts to a file that is not there yet, numbered where there are several, or to stdout.
fn hand_over(output: &mut Output, files: &[String], out: Option<&Path>) -> Result<(), Stop> {
    let Some(path) = out else {
        let [only] = files else {
            return Err(words::several_files(output.language, files.len()).into());
        };
        match serde_json::from_str::<serde_json::Value>(only) {
            Ok(document) if output.json => output.object(&document)?,
            _ => output.line(only)?,
        }
        return Ok(());
    };
    let mut written = Vec::new();
    for (place, text) in files.iter().enumerate() {
        let name = if files.len() > 1 { numbered(path, place + 1) } else { path.to_owned() };
        create(output.language, &name, text)?;
        written.push(name.display().to_string());
    }
    if output.json {
        output.object(&Written { written })?;
    } else {
        for name in &written {
            output.line(name)?;
        }
    }
    Ok(())
}

#[derive(Serialize)]
struct Shown {
    parts: Vec<ShownPart>,
}

#[derive(Serialize)]
struct ShownPart {
    id: String,
    name: String,
    said: Vec<Said>,
    facts: Vec<Fact>,
    story: Vec<StoryLine>,
}

fn show(output: &mut Output, args: &ShowArgs) -> Result<(), Stop> {
    let language = output.language;
    let offset = args.from.offset;
    let parts = chosen(language, &args.from)?;
    if args.csv {
        output.as_it_is(&csv::results(&parts, language))?;
        return Ok(());
    }
    if args.text {
        let texts: Vec<String> =
            parts.iter().map(|card| text::plain(card, language, offset)).collect();
        output.as_it_is(&texts.join("\n"))?;
        return Ok(());
    }
    let shown = |card: &Card| ShownPart {
        id: card.id.clone(),
        name: card.name.clone(),
        said: said_of_card(card, language),
        facts: facts(card, language),
        story: story(card, language, offset),
    };
    if output.json {
        let parts = parts.iter().map(shown).collect();
        output.object(&Shown { parts })?;
        return Ok(());
    }
    match &parts[..] {
        [only] => print(output, only, &shown(only))?,
        several => {
            for card in several {
                list(output, card)?;
            }
        }
    }
    Ok(())
}

/// A part in two lines.
fn list(output: &mut Output, card: &Card) -> io::Result<()> {
    let language = output.language;
    let said = said_of_card(card, language);
    let standing = language.part(PartWords::Standing(find::standing(&said)));
    output.text(0, &words::part_line(language, &PartLine::Listed { card, standing: &standing }))?;
    output.text(2, &words::part_line(language, &PartLine::Wants { card }))
}

fn print(output: &mut Output, card: &Card, shown: &ShownPart) -> io::Result<()> {
    let language = output.language;
    output.text(0, &words::part_line(language, &PartLine::Name { card }))?;
    for said in &shown.said {
        output.text(0, &said.text)?;
    }
    output.line("")?;
    let told = shown.facts.iter().map(|fact| format!("{}: {}", fact.label, fact.text));
    output.list(told.collect::<Vec<_>>().iter().map(String::as_str))?;
    let entries = shown.story.iter().map(|line| {
        let told = words::part_line(language, &PartLine::Story { line });
        // What another version said is said again.
        let outdated = line.entry.filter(|_| !line.outdated.is_empty());
        match outdated.and_then(|place| again(card, place, language)) {
            Some(now) => format!("{told} {}", now.text),
            None => told,
        }
    });
    let entries: Vec<String> = entries.collect();
    if !entries.is_empty() {
        output.line("")?;
        output.list(entries.iter().map(String::as_str))?;
    }
    Ok(())
}

fn export(
    output: &mut Output,
    files: &[PathBuf],
    part: Option<&str>,
    csv: bool,
    out: Option<&Path>,
) -> Result<(), Stop> {
    let language = output.language;
    let mut all = Vec::new();
    for path in files {
        let plan = merge::plan(language, &all, read(language, path)?, &without_picture);
        let done = merge::apply(language, plan, |_| Choice::KeepBoth, new_id);
        put_in(&mut all, done.store);
    }
    if part.is_some() {
        all = vec![find::one(language, &all, part)?.clone()];
    }
    if !csv {
        return hand_over(output, &file::write_all(&all, now_ms()), out);
    }
    let table = csv::results(&all, language);
    if out.is_some() {
        return hand_over(output, &[table], out);
    }
    Ok(output.as_it_is(&table)?)
}

/// Puts cards into a list: each in the place of its id, or at the end.
fn put_in(all: &mut Vec<Card>, cards: Vec<Card>) {
    for card in cards {
        match all.iter_mut().find(|own| own.id == card.id) {
            Some(own) => *own = card,
            None => all.push(card),
        }
    }
}

#[derive(Serialize)]
struct Imported {
    cards: Vec<ImportedCard>,
    stored: usize,
    replaced: usize,
    dry_run: bool,
    kept: Option<String>,
}

#[derive(Serialize)]
struct ImportedCard {
    id: String,
    name: String,
    fate: &'static str,
    rows: Vec<Row>,
}

fn import(
    output: &mut Output,
    from: &Path,
    into: &Path,
    choice: Choice,
    dry_run: bool,
) -> Result<(), Stop> {
    let language = output.language;
    let mut mine = read_if_there(language, into)?;
    let plan = merge::plan(language, &mine, read(language, from)?, &without_picture);
    let cards = preview(&plan);
    let of_conflicts: Vec<String> = plan
        .cards
        .iter()
        .filter(|planned| matches!(planned.fate, Fate::Conflict { .. }))
        .map(|planned| planned.card.id.clone())
        .collect();
    let done = merge::apply(language, plan, |_| choice, new_id);
    let lost: Vec<Card> =
        done.replaced.iter().filter(|card| of_conflicts.contains(&card.id)).cloned().collect();
    let (stored, replaced) = (done.store.len(), done.replaced.len());
    let mut kept = None;
    if !dry_run && stored > 0 {
        put_in(&mut mine, done.store);
        let whole = file::write(&mine, now_ms());
        // What could not be read again does not take the place of what can.
        file::read(language, whole.as_bytes())?;
        if !lost.is_empty() {
            let name = free_name(into);
            create(language, &name, &file::write(&lost, now_ms()))?;
            kept = Some(name.display().to_string());
        }
        replace(language, into, &whole)?;
    }
    if output.json {
        output.object(&Imported { cards, stored, replaced, dry_run, kept })?;
        return Ok(());
    }
    for card in &cards {
        let fate = words::fate(language, card.fate);
        output.text(0, &format!("{fate}: {} ({})", card.name, card.id))?;
        for row in card.rows.iter().filter(|row| row.differs) {
            output.text(2, &words::part_line(language, &PartLine::Differs { row }))?;
        }
    }
    let done = PartLine::Imported { stored, replaced, dry_run };
    output.text(0, &words::part_line(language, &done))?;
    if let Some(name) = &kept {
        output.text(0, &words::part_line(language, &PartLine::Kept { name }))?;
    }
    Ok(())
}

/// In a file the pictures stand in the cards.
fn without_picture(photo: &Photo) -> bool {
    photo.data.is_empty()
}

fn preview(plan: &Plan) -> Vec<ImportedCard> {
    let cards = plan.cards.iter().map(|planned| ImportedCard {
        id: planned.card.id.clone(),
        name: planned.card.name.clone(),
        fate: planned.fate.key(),
        rows: match &planned.fate {
            Fate::Conflict { rows, .. } => rows.clone(),
            _ => Vec::new(),
        },
    });
    cards.collect()
}

#[derive(Serialize)]
struct Valid {
    valid: bool,
    #[serde(flatten)]
    counts: Counts,
}

fn check(output: &mut Output, path: &Path) -> Result<(), Stop> {
    let counts = file::counts(&read(output.language, path)?);
    if output.json {
        output.object(&Valid { valid: true, counts })?;
        return Ok(());
    }
    let Counts { parts, entries, strokes, photos } = counts;
    let held = output.language.part(PartWords::Counts { parts, entries, strokes, photos });
    let name = path.display().to_string();
    let line = PartLine::Valid { name: &name, held: &held };
    output.text(0, &words::part_line(output.language, &line))?;
    Ok(())
}

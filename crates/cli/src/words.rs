//! What only the command line says; everything else comes from the words of the core.

use std::io;

use biteband_bench::Refusal;
use biteband_bench::card::{self, Card, StoryLine};
use biteband_bench::words::{Language, PartWords};

pub(crate) fn accepted(language: Language, allowed: &str) -> String {
    match language {
        Language::English => format!("Accepted: {allowed}"),
    }
}

pub(crate) fn not_written(language: Language, error: &io::Error) -> String {
    match language {
        Language::English => format!("The answer cannot be written: {error}\n"),
    }
}

pub(crate) fn file_not_written(language: Language, path: &str, error: &io::Error) -> String {
    match language {
        Language::English => {
            format!("{path} cannot be written: {error}. Check the folder, or leave --out away.")
        }
    }
}

/// Several drawings do not go through one pipe.
pub(crate) fn several_sheets(language: Language, count: usize) -> Refusal {
    match language {
        Language::English => Refusal {
            code: "cli.several_sheets",
            message: format!("This makes {count} sheets, and stdout takes one drawing."),
            given: count.to_string(),
            allowed: "one sheet".to_owned(),
            instead: "Write --format html, which holds all, or name a file with --out: each \
                      sheet then gets its number. Fewer scales or a shorter span make one sheet."
                .to_owned(),
        },
    }
}

pub(crate) fn repeated(language: Language) -> &'static str {
    match language {
        Language::English => "The print has this number on more than one row, so no single answer.",
    }
}

pub(crate) fn thinnest(language: Language, rules: &str) -> String {
    match language {
        Language::English => format!("Thinnest section or case for this mark: {rules}."),
    }
}

pub(crate) fn see_source(language: Language, names: &str) -> String {
    match language {
        Language::English => format!("Sources: {names} (\"biteband source NAME\" shows each)"),
    }
}

pub(crate) fn next_test(language: Language, test: &str) -> String {
    match language {
        Language::English => format!("Next: {test}"),
    }
}

pub(crate) fn good_for(language: Language) -> &'static str {
    match language {
        Language::English => "Good for",
    }
}

pub(crate) fn not_for(language: Language) -> &'static str {
    match language {
        Language::English => "Not for",
    }
}

pub(crate) fn grade_twice(language: Language, grade: f64) -> Refusal {
    match language {
        Language::English => Refusal {
            code: "cli.grade_twice",
            message: format!("The {grade} stands in two of --bites, --skates and --slight."),
            given: grade.to_string(),
            allowed: String::new(),
            instead: format!(
                "If it did both, write its strokes one by one: --strokes \"{grade}:b,k\"."
            ),
        },
    }
}

/// A stroke of a file that is not in the set: the way out names the option.
pub(crate) fn with_option_for_set(language: Language, refusal: Refusal) -> Refusal {
    if refusal.code != "evidence.no_such_file" {
        return refusal;
    }
    let instead = match language {
        Language::English => {
            format!("{} Name all your files with --set.", refusal.instead)
        }
    };
    Refusal { instead, ..refusal }
}

pub(crate) fn claim_is_the_target(language: Language) -> Refusal {
    match language {
        Language::English => Refusal {
            code: "cli.claim_is_the_target",
            message: "--target and a claim are two wishes for one part.".to_owned(),
            given: "--target".to_owned(),
            allowed: String::new(),
            instead: "Leave --target out: what the paper says is held against what was measured."
                .to_owned(),
        },
    }
}

pub(crate) fn doubt_title(language: Language) -> &'static str {
    match language {
        Language::English => "What the doubt is made of (half-widths at 95 %, shares):",
    }
}

pub(crate) fn other_ways(language: Language) -> &'static str {
    match language {
        Language::English => "Other ways to settle it:",
    }
}

pub(crate) fn no_prior_of_steel(language: Language) -> Refusal {
    match language {
        Language::English => Refusal {
            code: "cli.prior_without_steel",
            message: "What a steel promises is counted in by the command file, and only when the steel is named there."
                .to_owned(),
            given: "steel".to_owned(),
            allowed: "file --prior steel --steel 4140 --done 205C/2h, or N(54,2)".to_owned(),
            instead: "With file, name the grade behind --steel and the tempers it has had behind --done; next counts it in by \
                      itself. Or write what you expect yourself, mean and standard deviation in HRC."
                .to_owned(),
        },
    }
}

/// What the command says about a CSV file as a whole.
pub(crate) enum Sheet<'a> {
    CannotOpen { path: &'a str, error: &'a io::Error },
    CannotRead { path: &'a str, error: &'a io::Error },
    Empty { path: &'a str },
    NoColumn { column: &'a str, headings: &'a str },
    RecordTooLong { line: u64, megabytes: u64 },
    Finished { act: RowAct, rows: u64, with_reason: u64 },
}

pub(crate) fn sheet(language: Language, what: &Sheet<'_>) -> String {
    match language {
        Language::English => match what {
            Sheet::CannotOpen { path, error } => {
                format!("{path} cannot be opened: {error}. Check the name and the folder.")
            }
            Sheet::CannotRead { path, error } => {
                format!("Reading {path} failed: {error}. The rows before that are written.")
            }
            Sheet::Empty { path } => {
                format!("{path} is empty. The first row must hold the headings of the columns.")
            }
            Sheet::NoColumn { column, headings } => format!(
                "There is no column headed {column}. The headings are: {headings}. If that is \
                 one heading instead of several, name what stands between them with --delimiter."
            ),
            Sheet::RecordTooLong { line, megabytes } => format!(
                "The row that starts on line {line} runs on for more than {megabytes} MB: a \
                 quote that is opened there is never closed. The rows before it are written."
            ),
            Sheet::Finished { act: RowAct::Convert, rows, with_reason: 0 } => {
                format!("{rows} rows, all converted.")
            }
            Sheet::Finished { act: RowAct::Convert, rows, with_reason } => format!(
                "{rows} rows; {with_reason} of them not or only partly converted, see the last \
                 column."
            ),
            Sheet::Finished { act: RowAct::Temper, rows, with_reason: 0 } => {
                format!("{rows} rows, all with the hardness that their temper leaves.")
            }
            Sheet::Finished { act: RowAct::Temper, rows, with_reason } => format!(
                "{rows} rows; {with_reason} of them without a hardness after tempering, see the \
                 last column."
            ),
        },
    }
}

/// What is made of the rows of a file.
#[derive(Clone, Copy)]
pub(crate) enum RowAct {
    Convert,
    Temper,
}

/// Why a row is not converted, where the core has no words for it.
pub(crate) enum Row<'a> {
    Fields { found: usize, headings: usize },
    Lines { first: u64, last: u64 },
    NotText,
    EmptyCell,
    NoNumber { cell: &'a str },
}

pub(crate) fn row(language: Language, what: &Row<'_>) -> String {
    match language {
        Language::English => match what {
            Row::Fields { found, headings } => {
                format!("The row has {found} fields, there are {headings} headings.")
            }
            Row::Lines { first, last } => {
                format!("It runs from line {first} to line {last}: a quote may be left open.")
            }
            Row::NotText => "The cell is not text in UTF-8.".to_owned(),
            Row::EmptyCell => "The cell is empty.".to_owned(),
            Row::NoNumber { cell } => format!("\"{cell}\" is not a number."),
        },
    }
}

pub(crate) fn file_exists(language: Language, path: &str) -> Refusal {
    match language {
        Language::English => Refusal {
            code: "cli.file_exists",
            message: format!("{path} is there already, and nothing is written over it."),
            given: path.to_owned(),
            allowed: "a name that no file has yet".to_owned(),
            instead: "Name another file; to add to this one, use part import --into.".to_owned(),
        },
    }
}

pub(crate) fn zone_unreadable(language: Language, given: &str) -> Refusal {
    match language {
        Language::English => Refusal {
            code: "cli.zone",
            message: format!("\"{given}\" is no place with its hardness."),
            given: given.to_owned(),
            allowed: "--zone \"struck end=45 HRC max\"".to_owned(),
            instead: "Write the place, an equals sign and the wanted hardness.".to_owned(),
        },
    }
}

pub(crate) fn several_files(language: Language, count: usize) -> Refusal {
    match language {
        Language::English => Refusal {
            code: "cli.several_files",
            message: format!(
                "This makes {count} files, because one would be too large to be read again."
            ),
            given: count.to_string(),
            allowed: "one file on stdout".to_owned(),
            instead: "Name a file with --out: each gets its number. Or name one part with --part."
                .to_owned(),
        },
    }
}

/// What becomes of a card of an import.
pub(crate) fn fate(language: Language, key: &str) -> &'static str {
    match language {
        Language::English => match key {
            "new" => "New",
            "same" => "Is there already",
            "older" => "Is there already, and more",
            "newer" => "Brings more",
            "pictures" => "Brings lost pictures back",
            _ => "Differs",
        },
    }
}

/// A line about a part or a file of parts.
pub(crate) enum PartLine<'a> {
    Listed { card: &'a Card, standing: &'a str },
    Wants { card: &'a Card },
    Name { card: &'a Card },
    Story { line: &'a StoryLine },
    Differs { row: &'a card::Row },
    Imported { stored: usize, replaced: usize, dry_run: bool },
    Kept { name: &'a str },
    Valid { name: &'a str, held: &'a str },
}

pub(crate) fn part_line(language: Language, line: &PartLine<'_>) -> String {
    match language {
        Language::English => match line {
            PartLine::Listed { card, standing } => {
                format!("{}: {standing}", named(language, card))
            }
            PartLine::Wants { card } => {
                let paper = card.claim.paper.trim();
                let wants = match (card.target.trim(), paper) {
                    ("", "") => String::new(),
                    ("", paper) => format!(", paper says {paper}"),
                    (target, _) => format!(", wants {target}"),
                };
                let steel = match card.steel.name.trim() {
                    "" => "steel not named",
                    steel => steel,
                };
                format!("{steel}{wants} ({})", card.id)
            }
            PartLine::Name { card } => named(language, card),
            PartLine::Story { line } => {
                let StoryLine { date, title, what, said, versions, outdated, .. } = line;
                let mut whole = format!("{date} {title}: {what}").trim().to_owned();
                if !said.is_empty() {
                    whole = format!("{whole}: {said}");
                }
                if !versions.is_empty() {
                    whole = format!("{whole} ({versions})");
                }
                if !outdated.is_empty() {
                    whole = format!("{whole} {outdated}");
                }
                whole
            }
            PartLine::Differs { row } => {
                let or_nothing = |text: &str| {
                    if text.is_empty() { "nothing".to_owned() } else { text.to_owned() }
                };
                let (mine, theirs) = (or_nothing(&row.a), or_nothing(&row.b));
                format!("{}: here {mine} | in the file {theirs}", row.label)
            }
            PartLine::Imported { stored: 0, dry_run: false, .. } => {
                "Nothing was to be done.".to_owned()
            }
            PartLine::Imported { stored, replaced, dry_run } => {
                let added = stored - replaced;
                let done = if *dry_run { "would be" } else { "were" };
                format!("{added} {done} added, {replaced} {done} replaced.")
            }
            PartLine::Kept { name } => {
                format!("What stood in their place before is kept in {name}.")
            }
            PartLine::Valid { name, held } => format!("{name} is valid: {held}."),
        },
    }
}

fn named(language: Language, card: &Card) -> String {
    match card.name.trim() {
        "" => language.part(PartWords::NoName).into_owned(),
        name => name.to_owned(),
    }
}

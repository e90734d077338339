//! Where answers and refusals go.

use std::io::{self, BufWriter, Stdout, Write};

use biteband_bench::Refusal;
use biteband_bench::format::{self, Units};
use biteband_bench::words::Language;
use serde::Serialize;

use crate::words;

/// Columns of a plain terminal.
const COLUMNS: usize = 80;

/// Why a command ends without its answer.
#[derive(Debug)]
pub(crate) enum Stop {
    /// The data or the tables do not allow an answer.
    Refused(Refusal),
    /// An answer was printed that is itself a refusal; stdout and stderr have it already.
    Told,
    /// A file cannot be read or written, in words.
    Input(String),
    /// Nothing more can be written.
    Output(io::Error),
}

impl From<io::Error> for Stop {
    fn from(error: io::Error) -> Self {
        Self::Output(error)
    }
}

impl From<Refusal> for Stop {
    fn from(refusal: Refusal) -> Self {
        Self::Refused(refusal)
    }
}

impl Stop {
    pub(crate) fn exit_code(&self) -> u8 {
        const MISREAD: [&str; 4] =
            ["bench.unknown_", "bench.unreadable_", "bench.missing_", "cli."];
        match self {
            Self::Refused(refusal) if MISREAD.iter().any(|code| refusal.code.starts_with(code)) => {
                2
            }
            Self::Refused(_) | Self::Told => 1,
            Self::Input(_) | Self::Output(_) => 3,
        }
    }
}

#[derive(Serialize)]
struct Refused<'a> {
    refused: &'a Refusal,
}

/// Stdout and stderr with what the options say about them.
pub(crate) struct Output {
    out: BufWriter<Stdout>,
    pub(crate) json: bool,
    pub(crate) language: Language,
    pub(crate) units: Units,
}

impl Output {
    pub(crate) fn new(json: bool, language: Language, units: Units) -> Self {
        Self { out: BufWriter::new(io::stdout()), json, language, units }
    }

    pub(crate) fn flush(&mut self) -> io::Result<()> {
        self.out.flush()
    }

    /// One JSON object on a line of its own.
    pub(crate) fn object(&mut self, answer: &impl Serialize) -> io::Result<()> {
        serde_json::to_writer(&mut self.out, answer)?;
        self.out.write_all(b"\n")
    }

    /// A line of text as it is.
    pub(crate) fn line(&mut self, text: &str) -> io::Result<()> {
        writeln!(self.out, "{}", text.trim_end())
    }

    /// Text with its own lines and their ends.
    pub(crate) fn as_it_is(&mut self, text: &str) -> io::Result<()> {
        self.out.write_all(text.as_bytes())
    }

    /// Text broken at spaces, every line behind `indent` spaces.
    pub(crate) fn text(&mut self, indent: usize, text: &str) -> io::Result<()> {
        self.out.write_all(wrapped(indent, text).as_bytes())
    }

    /// Texts as a list with dashes.
    pub(crate) fn list<'a>(&mut self, texts: impl Iterator<Item = &'a str>) -> io::Result<()> {
        for text in texts {
            let item = wrapped(2, text);
            let item = item.strip_prefix("  ").unwrap_or(&item);
            self.out.write_all(b"- ")?;
            self.out.write_all(item.as_bytes())?;
        }
        Ok(())
    }

    /// A refusal beside answers, in words on stderr.
    pub(crate) fn aside(&self, refusal: &Refusal) -> io::Result<()> {
        let mut err = io::stderr().lock();
        err.write_all(wrapped(0, &refusal.message).as_bytes())?;
        if !refusal.instead.is_empty() {
            err.write_all(wrapped(2, &refusal.instead).as_bytes())?;
        }
        if !refusal.allowed.is_empty() {
            err.write_all(
                wrapped(2, &words::accepted(self.language, &refusal.allowed)).as_bytes(),
            )?;
        }
        Ok(())
    }

    /// Why the command ends, on stderr and, with `--json`, as an object on stdout.
    pub(crate) fn report(&mut self, stop: &Stop) -> io::Result<()> {
        match stop {
            Stop::Refused(refusal) => {
                if self.json {
                    self.object(&Refused { refused: refusal })?;
                }
                self.flush()?;
                self.aside(refusal)
            }
            Stop::Told => self.flush(),
            Stop::Input(message) => {
                self.flush()?;
                io::stderr().write_all(wrapped(0, message).as_bytes())
            }
            Stop::Output(error) => {
                io::stderr().write_all(words::not_written(self.language, error).as_bytes())
            }
        }
    }
}

/// Text on stderr, broken at spaces.
pub(crate) fn tell(text: &str) -> io::Result<()> {
    io::stderr().write_all(wrapped(0, text).as_bytes())
}

/// Breaks text at spaces, every line behind `indent` spaces and with an end.
fn wrapped(indent: usize, text: &str) -> String {
    let mut lines = format::wrapped(COLUMNS, [indent; 2], text);
    lines.push('\n');
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_line_is_longer_than_a_terminal_unless_one_word_is() {
        let text = wrapped(4, &"saltmarsh ".repeat(40));
        assert!(text.lines().all(|line| line.chars().count() <= COLUMNS));
        assert!(text.lines().all(|line| line.starts_with("    saltmarsh")));
        let long = "x".repeat(100);
        assert_eq!(wrapped(2, &format!("a {long} b")), format!("  a\n  {long}\n  b\n"));
    }

    #[test]
    fn options_that_cannot_be_read_are_usage_and_the_rest_is_refused() {
        let code = |code| {
            let text = String::new;
            Stop::Refused(Refusal {
                code,
                message: text(),
                given: text(),
                allowed: text(),
                instead: text(),
            })
            .exit_code()
        };
        assert_eq!(code("bench.unknown_scale"), 2);
        assert_eq!(code("bench.unreadable_strokes"), 2);
        assert_eq!(code("bench.missing_force"), 2);
        assert_eq!(code("cli.grade_twice"), 2);
        assert_eq!(code("bench.no_material"), 1);
        assert_eq!(code("hardness.outside_tables"), 1);
        assert_eq!(code("evidence.contradiction"), 1);
        assert_eq!(code("designation.no_scale"), 1);
    }
}

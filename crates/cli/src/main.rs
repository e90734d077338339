//! The `biteband` command: the questions of a bench PC and of scripts, answered by the same core as the page.
//!
//! What it prints, its fields and its exit codes are described in `README.md` beside this crate.

mod args;
mod claim;
mod convert;
mod file;
mod heat;
mod indent;
mod jominy;
mod next;
mod output;
mod part;
mod part_file;
mod print;
mod reach;
mod rows;
mod section;
mod sheet;
mod steel;
mod table;
mod temper;
mod temper_rows;
mod unknown;
mod words;

use std::io::{self, ErrorKind};
use std::process::ExitCode;

use args::{Cli, Command};
use clap::Parser;
use output::{Output, Stop};

fn main() -> ExitCode {
    let cli = Cli::parse();
    let mut output = Output::new(cli.json, cli.lang, cli.units.into());
    let done = match cli.command {
        Command::Claim(args) => claim::run(&mut output, *args),
        Command::Convert(question) => convert::run(&mut output, &question),
        Command::File(question) => file::run(&mut output, *question),
        Command::Heat(args) => heat::run(&mut output, *args),
        Command::Indent(command) => indent::run(&mut output, command),
        Command::Jominy { steel, composition } => jominy::run(&mut output, steel, composition),
        Command::Next(args) => next::run(&mut output, *args),
        Command::Part(command) => part::run(&mut output, *command),
        Command::Reach(question) => reach::run(&mut output, question),
        Command::Steel { name, list: _, find, target } => {
            steel::run(&mut output, &name.join(" "), find, target.as_deref())
        }
        Command::Unknown(args) => unknown::run(&mut output, args),
        Command::Table { id, list: _ } => table::table(&mut output, id.as_deref()),
        Command::Temper(args) => temper::run(&mut output, *args),
        Command::Print(command) => print::run(&mut output, &command),
        Command::Source { id, list: _ } => table::source(&mut output, id.as_deref()),
    };
    let done = done.and_then(|()| output.flush().map_err(Stop::from));
    match done {
        Ok(()) => ExitCode::SUCCESS,
        // Whoever read the pipe has what they wanted.
        Err(Stop::Output(error)) if error.kind() == ErrorKind::BrokenPipe => ExitCode::SUCCESS,
        Err(stop) => {
            let code = stop.exit_code();
            // A stream that is closed takes no message either; the exit code still tells.
            let _: io::Result<()> = output.report(&stop);
            ExitCode::from(code)
        }
    }
}

//! Everything a script would do for the project, as one program: `cargo xtask <command>`.

mod bindings;
mod budget;
mod calibrate;
mod coefficients;
mod curvature;
mod digest;
mod generated;
mod hardenability;
mod lean;
mod npm;
mod page;
mod parts;
mod post_build;
mod process;
mod project;
mod quenching;
mod release;
mod serve;
mod sheet;
mod single_file;
mod sorting;
mod steels;
mod suite;
mod tables;
mod tempering;
mod tools;

use std::process::ExitCode;

/// What every command returns; the error is a sentence for the person who ran it.
type Outcome<T = ()> = Result<T, Box<dyn std::error::Error>>;

const HELP: &str = "\
cargo xtask <command>

  app [--port N] [--build-only]   build the page into dist/ and serve it on this machine
  test [step ...]                 run every check, or only the named steps
  single-file                     make one self-contained HTML file from dist/
  tables                          write the static tables from the data files of hardness and steel
  calibrate [--check]             fit the tempering regression to its measured results
  npm                             build the npm package into target/npm-package/
  release [--out DIR]             lay out page, single file, npm package and command line to be handed out,
                                  under target/release-bundle/
  budget                          print the size table of dist/ and fail over a limit
  post-build [--dist DIR]         write the service worker of a built page (trunk calls this)
";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    match dispatch(&arguments) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("\nstopped: {error}");
            ExitCode::FAILURE
        }
    }
}

fn dispatch(arguments: &[String]) -> Outcome {
    let (command, rest) = match arguments.split_first() {
        Some((command, rest)) => (command.as_str(), rest),
        None => ("help", arguments),
    };
    match command {
        "app" => page::app(rest),
        "test" => suite::run(rest),
        "single-file" => single_file::run(),
        "tables" => generated::write(),
        "calibrate" => calibrate::run(rest),
        "npm" => npm::run(),
        "release" => release::run(rest),
        "budget" => budget::check(&project::dist()),
        "post-build" => post_build::run(rest),
        "help" | "--help" | "-h" => {
            print!("{HELP}");
            Ok(())
        }
        other => Err(format!("there is no command `{other}`\n\n{HELP}").into()),
    }
}

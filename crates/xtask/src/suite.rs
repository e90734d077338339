//! Every check of the project in one run, the quick and likely to fail first.

use crate::process::{Steps, cargo, run as run_program};
use crate::tools::{self, NeedsNode};
use crate::{Outcome, budget, npm, page, project, release, single_file};
use std::process::Command;

/// The word that names a step on the command line, its heading, and its work.
type Step = (&'static str, &'static str, fn() -> Outcome);

const STEPS: &[Step] = &[
    ("format", "Format of the sources", format),
    ("tables", "Generated tables are those of the data files", tables),
    ("lint", "Lints", lint),
    ("docs", "Documentation builds without a warning", docs),
    ("core", "The core compiles without an operating system's library", core),
    ("native", "Native tests", native),
    ("calibrate", "The coefficients of the tempering regression are what its data give", calibrate),
    ("npm", "The npm package and its example", npm),
    ("page", "The page and its size limits", page),
    ("release", "The release bundle, laid out from what is built", release::check),
    ("browser", "Browser tests", browser),
];

/// `cargo xtask test`: all steps, or those named, always in this order.
///
/// # Errors
///
/// The first step that fails, by name; the later ones are not tried.
pub(crate) fn run(arguments: &[String]) -> Outcome {
    if let Some(unknown) = arguments.iter().find(|word| STEPS.iter().all(|(key, ..)| key != word)) {
        let known: Vec<&str> = STEPS.iter().map(|(key, ..)| *key).collect();
        return Err(
            format!("there is no step {unknown}; the steps are {}", known.join(", ")).into()
        );
    }
    let mut steps = Steps::new();
    for (key, heading, work) in STEPS {
        if arguments.is_empty() || arguments.iter().any(|word| word == key) {
            steps.take(heading, work)?;
        }
    }
    steps.summary();
    println!("\nEvery check passed.");
    Ok(())
}

fn workspace_cargo(arguments: &[&str]) -> Command {
    let mut command = cargo();
    command.args(arguments).current_dir(project::root());
    command
}

fn format() -> Outcome {
    run_program(&mut workspace_cargo(&["fmt", "--all", "--check"]))
}

fn tables() -> Outcome {
    crate::generated::check()
}

fn lint() -> Outcome {
    tools::wasm_target()?;
    for what in [
        &["--workspace", "--all-targets"][..],
        &["-p", "biteband-web", "-p", "biteband-js", "--target", "wasm32-unknown-unknown"][..],
    ] {
        run_program(
            workspace_cargo(&["clippy", "--locked", "--quiet"])
                .args(what)
                .args(["--", "-D", "warnings"]),
        )?;
    }
    Ok(())
}

fn docs() -> Outcome {
    run_program(
        workspace_cargo(&["doc", "--locked", "--quiet", "--workspace", "--no-deps"])
            .env("RUSTDOCFLAGS", "-D warnings"),
    )
}

/// That the core crates say `no_std` is a test of this crate; that they then compile is shown here.
fn core() -> Outcome {
    tools::wasm_target()?;
    run_program(
        workspace_cargo(&["check", "--locked", "--quiet", "--target", "wasm32-unknown-unknown"])
            .args([
                "-p",
                "biteband-quantity",
                "-p",
                "biteband-hardness",
                "-p",
                "biteband-steel",
                "-p",
                "biteband-evidence",
            ]),
    )
}

fn native() -> Outcome {
    run_program(&mut workspace_cargo(&["test", "--locked", "--workspace"]))
}

fn calibrate() -> Outcome {
    crate::calibrate::run(&["--check".to_owned()])
}

fn npm() -> Outcome {
    npm::build()?;
    npm::test()
}

fn page() -> Outcome {
    page::build(&tools::toolbox(NeedsNode::Yes)?)?;
    budget::check(&project::dist())?;
    single_file::run()
}

fn browser() -> Outcome {
    let tools = tools::toolbox(NeedsNode::Yes)?;
    let chromium = tools::chromium()?;
    let folder = project::root().join("tests/browser");
    let tests: Vec<_> = project::files_below(&folder)?
        .into_iter()
        .filter(|name| name.ends_with(".test.mjs"))
        .map(|name| folder.join(name))
        .collect();
    if tests.is_empty() {
        return Err("there are no browser tests to run".into());
    }
    let modules = tools.node_modules.ok_or("the browser tests need node")?;
    run_program(
        Command::new("node")
            .args(["--test", "--test-concurrency=1", "--test-reporter=spec"])
            .args(tests)
            .env("BITEBAND_CHROMIUM", chromium)
            .env("BITEBAND_NODE_MODULES", modules)
            .env("BITEBAND_XTASK", this_program()?),
    )
}

/// This program's own file. A build during the run may have put a new one in its place; the system then
/// reports the old one as deleted, and the new one stands under the same name.
fn this_program() -> Outcome<String> {
    let path = std::env::current_exe()?.to_string_lossy().into_owned();
    Ok(path.strip_suffix(" (deleted)").unwrap_or(&path).to_owned())
}

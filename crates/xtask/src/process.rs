//! Running other programs, and telling the person what runs and how long it took.

use crate::{Outcome, project};
use std::path::PathBuf;
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// Cargo, the one that runs this program.
pub(crate) fn cargo() -> Command {
    Command::new(std::env::var_os("CARGO").unwrap_or_else(|| "cargo".into()))
}

/// Runs a program with its output shown.
///
/// # Errors
///
/// When it cannot be started or does not end well.
pub(crate) fn run(command: &mut Command) -> Outcome {
    let shown = shown(command);
    let status = command
        .stdin(Stdio::null())
        .status()
        .map_err(|error| format!("`{shown}` could not be started: {error}"))?;
    if status.success() { Ok(()) } else { Err(format!("`{shown}` ended with {status}").into()) }
}

/// Runs a program quietly and returns what it printed; `None` where it is missing or fails.
pub(crate) fn answer(command: &mut Command) -> Option<String> {
    let output = command.stdin(Stdio::null()).stderr(Stdio::null()).output().ok()?;
    output.status.success().then(|| String::from_utf8_lossy(&output.stdout).trim().to_owned())
}

/// The variable by which cargo has the compiler name sources without the folders of this machine, for one target:
/// what is built is the same bytes wherever the checkout lies, and does not tell whose machine it was.
pub(crate) fn without_places(target: &str) -> Option<(String, String)> {
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from).or_else(|| {
        let home = std::env::var_os("HOME").or_else(|| std::env::var_os("USERPROFILE"))?;
        Some(PathBuf::from(home).join(".cargo"))
    })?;
    let name = format!("CARGO_TARGET_{}_RUSTFLAGS", target.to_uppercase().replace('-', "_"));
    let mut flags: Vec<String> = std::env::var(&name).into_iter().collect();
    for (place, shown) in [(home, "cargo"), (project::root(), "biteband")] {
        let place = place.to_str()?.to_owned();
        // The variable is split at spaces, and no sign keeps one.
        if place.contains(' ') {
            return None;
        }
        flags.push(format!("--remap-path-prefix={place}={shown}"));
    }
    Some((name, flags.join(" ")))
}

/// Looks a program up in the folders of PATH.
pub(crate) fn find(name: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path)
        .flat_map(|folder| [folder.join(name), folder.join(format!("{name}.exe"))])
        .find(|candidate| candidate.is_file())
}

/// PATH with more folders in front.
///
/// # Errors
///
/// When a folder's name cannot stand in PATH.
pub(crate) fn path_with(folders: &[PathBuf]) -> Outcome<std::ffi::OsString> {
    let old = std::env::var_os("PATH").unwrap_or_default();
    let all = folders.iter().cloned().chain(std::env::split_paths(&old));
    Ok(std::env::join_paths(all)?)
}

fn shown(command: &Command) -> String {
    let program = PathBuf::from(command.get_program());
    let name = program.file_stem().unwrap_or(program.as_os_str()).to_string_lossy().into_owned();
    command.get_args().fold(name, |line, part| line + " " + &part.to_string_lossy())
}

/// A run of named steps: each is announced, timed, and named when it fails.
#[derive(Debug)]
pub(crate) struct Steps {
    done: Vec<(String, Duration)>,
    start: Instant,
}

impl Steps {
    /// Starts the clock.
    pub(crate) fn new() -> Self {
        Self { done: Vec::new(), start: Instant::now() }
    }

    /// Does one step.
    ///
    /// # Errors
    ///
    /// The step's own error with its name in front.
    pub(crate) fn take<T>(&mut self, name: &str, work: impl FnOnce() -> Outcome<T>) -> Outcome<T> {
        println!("\n== {name}");
        let start = Instant::now();
        let value = work().map_err(|error| format!("in the step \"{name}\": {error}"))?;
        println!("   {name}: done in {}", seconds(start.elapsed()));
        self.done.push((name.to_owned(), start.elapsed()));
        Ok(value)
    }

    /// Prints every step with its time.
    pub(crate) fn summary(&self) {
        println!("\n== Times");
        for (name, took) in &self.done {
            println!("{:>10}  {name}", seconds(*took));
        }
        println!("{:>10}  together", seconds(self.start.elapsed()));
    }
}

fn seconds(took: Duration) -> String {
    format!("{:.1} s", took.as_secs_f64())
}

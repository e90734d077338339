//! Building the page and showing it on this machine.

use crate::process::{Steps, run, without_places};
use crate::tools::{self, NeedsNode, Toolbox};
use crate::{Outcome, budget, project, serve};
use std::process::Command;

/// `cargo xtask app`.
///
/// # Errors
///
/// On a wrong option, a failed build, or an address that is taken.
pub(crate) fn app(arguments: &[String]) -> Outcome {
    let options = Options::read(arguments)?;
    let mut steps = Steps::new();
    let tools = steps.take("Looking for the build tools", || tools::toolbox(NeedsNode::No))?;
    steps.take("Building the page into dist/", || build(&tools))?;
    // Only the checks refuse a page over a limit: whoever works on its size must be able to look at it.
    if tools.node_modules.is_some() {
        budget::show(&project::dist())?;
    }
    if options.build_only { Ok(()) } else { serve::run(&project::dist(), options.port) }
}

/// Builds the page into `dist/`; trunk calls back into `post-build`.
///
/// # Errors
///
/// When trunk or its hook fails.
pub(crate) fn build(tools: &Toolbox) -> Outcome {
    run(Command::new("trunk")
        .args(["--quiet", "build", "--release", "--offline", "--locked"])
        .current_dir(project::root())
        .env("PATH", &tools.path)
        .envs(without_places(tools::WASM))
        // What went wrong in a build is said before; the way through trunk's own functions says nothing more.
        .env("RUST_BACKTRACE", "0")
        // Trunk takes the usual NO_COLOR=1 for a wrong value of its own option.
        .env_remove("NO_COLOR"))
}

#[derive(Debug, Default, PartialEq)]
struct Options {
    port: Option<u16>,
    build_only: bool,
}

impl Options {
    fn read(arguments: &[String]) -> Outcome<Self> {
        let mut options = Self::default();
        let mut rest = arguments.iter();
        while let Some(argument) = rest.next() {
            match argument.as_str() {
                "--build-only" => options.build_only = true,
                "--port" => {
                    let port = rest.next().ok_or("--port needs a number, as in --port 8740")?;
                    options.port = Some(port.parse().map_err(|_| {
                        format!("{port} is no port; a port is a number from 1 to 65535")
                    })?);
                }
                other => return Err(format!("app does not know the option {other}").into()),
            }
        }
        Ok(options)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(words: &[&str]) -> Outcome<Options> {
        Options::read(&words.iter().map(ToString::to_string).collect::<Vec<_>>())
    }

    #[test]
    fn options_are_read_and_wrong_ones_refused() {
        assert_eq!(read(&[]).unwrap(), Options::default());
        assert_eq!(
            read(&["--port", "80", "--build-only"]).unwrap(),
            Options { port: Some(80), build_only: true }
        );
        assert!(read(&["--port"]).is_err());
        assert!(read(&["--port", "99999"]).is_err());
        assert!(read(&["--prot", "1"]).is_err());
    }
}

//! Runs the built binary.

use std::io::Write;
use std::path::Path;
use std::process::{Command, Stdio};

use serde_json::Value;

/// What a run left behind.
pub(crate) struct Run {
    pub(crate) code: i32,
    pub(crate) out: String,
    pub(crate) err: String,
}

impl Run {
    /// The one JSON object on stdout.
    #[track_caller]
    pub(crate) fn json(&self) -> Value {
        assert_eq!(self.out.lines().count(), 1, "{}{}", self.out, self.err);
        let value: Value = serde_json::from_str(&self.out).unwrap();
        assert!(value.is_object());
        value
    }

    /// A refusal: exit code, reason on stderr, the same reason with a way out as JSON on stdout.
    #[track_caller]
    pub(crate) fn refused(&self, code: i32) -> Value {
        assert_eq!(self.code, code, "{}{}", self.out, self.err);
        assert!(!self.err.contains("panicked"), "{}", self.err);
        let refused = self.json()["refused"].clone();
        for field in ["code", "message", "given", "allowed", "instead"] {
            assert!(refused[field].is_string(), "{field}: {refused}");
        }
        let message = refused["message"].as_str().unwrap();
        assert!(message.len() > 10, "{refused}");
        let told: Vec<&str> = self.err.split_whitespace().collect();
        let words: Vec<&str> = message.split_whitespace().collect();
        assert!(told.starts_with(&words), "{} | {message}", self.err);
        refused
    }
}

/// Runs with arguments, nothing on stdin.
pub(crate) fn biteband(arguments: &[&str]) -> Run {
    run(arguments, b"", Path::new("."))
}

/// The same with `--json` in front.
pub(crate) fn json(arguments: &[&str]) -> Run {
    biteband(&[&["--json"], arguments].concat())
}

/// Runs with arguments, something on stdin, in a folder.
pub(crate) fn run(arguments: &[&str], input: &[u8], folder: &Path) -> Run {
    let mut child = Command::new(env!("CARGO_BIN_EXE_biteband"))
        .args(arguments)
        .current_dir(folder)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap();
    let mut stdin = child.stdin.take().unwrap();
    let input = input.to_vec();
    let feeder = std::thread::spawn(move || {
        // A command that refuses early does not read its input; that is not a fault.
        let _: std::io::Result<()> = stdin.write_all(&input);
    });
    let done = child.wait_with_output().unwrap();
    feeder.join().unwrap();
    Run {
        code: done.status.code().unwrap(),
        out: String::from_utf8_lossy(&done.stdout).into_owned(),
        err: String::from_utf8_lossy(&done.stderr).into_owned(),
    }
}

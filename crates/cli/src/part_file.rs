//! Files of parts, read and written without a way to lose one.

use std::fs::{self, File, OpenOptions};
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::time::{SystemTime, UNIX_EPOCH};

use biteband_bench::card::{Card, file};
use biteband_bench::words::Language;
use uuid::Uuid;

use crate::output::Stop;
use crate::words::{self, Sheet};

/// Now, in milliseconds.
pub(crate) fn now_ms() -> i64 {
    let since = SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default();
    i64::try_from(since.as_millis()).unwrap_or_default()
}

/// An id that no other card has.
pub(crate) fn new_id() -> String {
    Uuid::new_v4().hyphenated().to_string()
}

/// The parts of a file, or of standard input with `-`.
pub(crate) fn read(language: Language, path: &Path) -> Result<Vec<Card>, Stop> {
    let bytes = bytes(path).map_err(|error| {
        let path = path.display().to_string();
        Stop::Input(words::sheet(language, &Sheet::CannotOpen { path: &path, error: &error }))
    })?;
    Ok(file::read(language, &bytes)?)
}

/// What stands in a file, as far as a file of parts goes.
fn bytes(path: &Path) -> io::Result<Vec<u8>> {
    if path == Path::new("-") {
        return file::take(io::stdin().lock());
    }
    file::take(File::open(path)?)
}

/// The parts of a file that need not be there yet; nothing is read from where nothing is.
pub(crate) fn read_if_there(language: Language, path: &Path) -> Result<Vec<Card>, Stop> {
    match fs::symlink_metadata(path) {
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(Vec::new()),
        _ => read(language, path),
    }
}

/// Writes a file that is not there yet.
pub(crate) fn create(language: Language, path: &Path, text: &str) -> Result<(), Stop> {
    let made = OpenOptions::new().write(true).create_new(true).open(path);
    let written = made.and_then(|mut file| {
        file.write_all(text.as_bytes())?;
        file.sync_all()
    });
    written.map_err(|error| {
        let shown = path.display().to_string();
        if error.kind() == ErrorKind::AlreadyExists {
            return Stop::Refused(words::file_exists(language, &shown));
        }
        Stop::Input(words::file_not_written(language, &shown, &error))
    })
}

/// Puts a text in the place of a file: the old one stands until the new one is whole.
pub(crate) fn replace(language: Language, path: &Path, text: &str) -> Result<(), Stop> {
    // A link is kept; what it points to is replaced.
    let whole = fs::canonicalize(path).unwrap_or_else(|_| path.to_owned());
    swap(&whole, text).map_err(|error| {
        let shown = path.display().to_string();
        Stop::Input(words::file_not_written(language, &shown, &error))
    })
}

fn swap(path: &Path, text: &str) -> io::Result<()> {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    let beside = path.with_file_name(format!(".{name}.{}", new_id()));
    let written =
        OpenOptions::new().write(true).create_new(true).open(&beside).and_then(|mut file| {
            if let Ok(old) = fs::metadata(path) {
                file.set_permissions(old.permissions())?;
            }
            file.write_all(text.as_bytes())?;
            file.sync_all()?;
            fs::rename(&beside, path)
        });
    if written.is_err() {
        // It may not even be there.
        let _: io::Result<()> = fs::remove_file(&beside);
    }
    written
}

/// A name beside a file that nothing has yet: `shop.json` gives `shop.before-import.json`, then
/// `shop.before-import-2.json`.
pub(crate) fn free_name(path: &Path) -> PathBuf {
    let stem = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
    let ending = path.extension().map(|ending| ending.to_string_lossy().into_owned());
    let ending = ending.unwrap_or_else(|| "json".to_owned());
    let mut number = 1_usize;
    loop {
        let count = if number == 1 { String::new() } else { format!("-{number}") };
        let name = path.with_file_name(format!("{stem}.before-import{count}.{ending}"));
        if fs::symlink_metadata(&name).is_err() {
            return name;
        }
        number += 1;
    }
}

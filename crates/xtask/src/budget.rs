//! The size limits of the page, which are data in `budget.toml`.

use crate::post_build::is_kept;
use crate::{Outcome, parts, project};
use brotli::enc::BrotliEncoderParams;
use serde::Deserialize;
use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::fs;
use std::path::Path;

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Limits {
    compressed: Compressed,
    parts: BTreeMap<String, u64>,
    raw: Raw,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Compressed {
    first_module: u64,
    js: u64,
    css: u64,
    html: u64,
}

#[derive(Debug, Deserialize)]
#[serde(deny_unknown_fields)]
struct Raw {
    kept: u64,
}

/// Prints the size table of a built page and fails over a limit.
///
/// # Errors
///
/// When a limit is broken; the text names each.
pub(crate) fn check(folder: &Path) -> Outcome {
    let over = show(folder)?;
    if over.is_empty() {
        Ok(())
    } else {
        Err(format!("the page is too large in: {}", over.join("; ")).into())
    }
}

/// Prints the size table of a built page and returns what is over its limit.
///
/// # Errors
///
/// When the page or the limits cannot be read.
pub(crate) fn show(folder: &Path) -> Outcome<Vec<String>> {
    let limits = limits()?;
    let mut sizes = Sizes::default();
    for name in project::files_below(folder)? {
        sizes.add(&name, &fs::read(folder.join(&name))?)?;
    }
    let rows = sizes.rows(&limits)?;
    print!("{}", table(&rows));
    Ok(rows.into_iter().filter(Row::is_over).map(|row| row.what).collect())
}

fn limits() -> Outcome<Limits> {
    let text = fs::read_to_string(project::root().join("crates/xtask/budget.toml"))?;
    Ok(toml::from_str(&text)?)
}

/// Bytes by kind of file; compressed, but for `kept` and `raw_wasm`. Parts are packed as they lie there.
#[derive(Debug, Default)]
struct Sizes {
    first_module: u64,
    parts: BTreeMap<String, u64>,
    js: u64,
    css: u64,
    html: u64,
    kept: u64,
    raw_wasm: u64,
}

impl Sizes {
    fn add(&mut self, name: &str, bytes: &[u8]) -> Outcome {
        let raw = u64::try_from(bytes.len())?;
        if is_kept(name) {
            self.kept += raw;
        }
        if name == "sw-kill.js" {
            return Ok(());
        }
        if project::has_extension(name, "wasm") {
            self.raw_wasm += raw;
        }
        if let Some(part) = parts::packed_part(name) {
            *self.parts.entry(part.to_owned()).or_default() += raw;
        }
        if parts::is_plain_part(name) {
            return Ok(());
        }
        let counter = match name.rsplit_once('.').map(|(_, extension)| extension) {
            Some("wasm") => &mut self.first_module,
            Some("js") => &mut self.js,
            Some("css") => &mut self.css,
            Some("html") => &mut self.html,
            _ => return Ok(()),
        };
        *counter += compressed(bytes)?;
        Ok(())
    }

    fn rows(&self, limits: &Limits) -> Outcome<Vec<Row>> {
        let row = |what: &str, used, limit: u64| Row {
            what: what.to_owned(),
            used,
            limit: Some(limit * 1000),
        };
        let mut rows =
            vec![row("first module, brotli", self.first_module, limits.compressed.first_module)];
        for (part, used) in &self.parts {
            let limit = limits.parts.get(part);
            let limit =
                limit.ok_or_else(|| format!("the part {part} has no limit in budget.toml"))?;
            rows.push(row(&format!("part {part}, packed"), *used, *limit));
        }
        rows.extend([
            row("scripts, brotli", self.js, limits.compressed.js),
            row("style, brotli", self.css, limits.compressed.css),
            row("index.html, brotli", self.html, limits.compressed.html),
            row("kept on the device", self.kept, limits.raw.kept),
            Row { what: "wasm as it is".to_owned(), used: self.raw_wasm, limit: None },
        ]);
        Ok(rows)
    }
}

#[derive(Debug)]
struct Row {
    what: String,
    used: u64,
    limit: Option<u64>,
}

impl Row {
    fn is_over(&self) -> bool {
        self.limit.is_some_and(|limit| self.used > limit)
    }
}

fn table(rows: &[Row]) -> String {
    let mut text = format!("{:20} {:>10} {:>10}\n", "size in bytes", "used", "limit");
    for row in rows {
        let limit = row.limit.map_or_else(|| "-".to_owned(), |limit| limit.to_string());
        let mark = if row.is_over() { "  over" } else { "" };
        // Writing to a string cannot fail.
        let _ = writeln!(text, "{:20} {:>10} {limit:>10}{mark}", row.what, row.used);
    }
    text
}

fn compressed(bytes: &[u8]) -> Outcome<u64> {
    let settings = BrotliEncoderParams { quality: 11, lgwin: 22, ..Default::default() };
    let mut output = Vec::new();
    brotli::BrotliCompress(&mut &*bytes, &mut output, &settings)?;
    Ok(u64::try_from(output.len())?)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn limits_file_is_complete() {
        assert!(limits().unwrap().compressed.first_module > 0);
    }

    #[test]
    fn a_row_over_its_limit_is_marked() {
        let row = |used| Row { what: "style".to_owned(), used, limit: Some(10) };
        assert!(!row(10).is_over() && row(11).is_over());
        assert!(table(&[row(11)]).ends_with("11         10  over\n"));
    }

    #[test]
    fn workers_count_as_scripts_but_not_as_kept() {
        let mut sizes = Sizes::default();
        sizes.add("sw.js", b"self").unwrap();
        assert!(sizes.js > 0 && sizes.kept == 0);
    }

    #[test]
    fn a_part_counts_packed_in_its_own_row_and_among_what_is_kept() {
        let mut sizes = Sizes::default();
        sizes.add("biteband-web-0f-mark.part", b"packed").unwrap();
        sizes.add("biteband-web-0f-mark.wasm", b"the plain module").unwrap();
        assert_eq!(sizes.parts.get("mark"), Some(&6));
        assert_eq!((sizes.kept, sizes.raw_wasm, sizes.first_module), (6, 16, 0));
    }
}

//! The names under which module and script know each other's functions, made easy to compress.
//!
//! Every such name ends with sixteen digits of a hash that no compressor can make smaller, once in the module and once
//! in the script. Here they are counted instead: the same length, so that nothing moves, and still each its own.

use crate::{Outcome, project};
use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

/// Digits of a hash.
const DIGITS: usize = 16;

/// Counts the names in the scripts and modules of a folder.
///
/// # Errors
///
/// When a file cannot be read or replaced.
pub(crate) fn count(folder: &Path, script: &str) -> Outcome {
    let numbers = numbers(&fs::read(folder.join(script))?);
    for name in project::files_below(folder)? {
        let path = folder.join(&name);
        let mut bytes = fs::read(&path)?;
        replace(&mut bytes, &numbers);
        fs::write(path, bytes)?;
    }
    Ok(())
}

/// Every hash behind a name, in the order in which the script names them.
fn numbers(script: &[u8]) -> BTreeMap<Vec<u8>, String> {
    let mut found = BTreeMap::new();
    for hash in hashes(script) {
        let number = found.len();
        found.entry(hash.to_vec()).or_insert_with(|| format!("{number:0DIGITS$x}"));
    }
    found
}

/// Every hash: behind `_` or `_h`, and with no further letter or digit after it.
fn hashes(bytes: &[u8]) -> impl Iterator<Item = &[u8]> {
    let is_digit = |byte: &u8| matches!(byte, b'0'..=b'9' | b'a'..=b'f');
    bytes.windows(DIGITS + 2).enumerate().filter_map(move |(place, window)| {
        let (before, hash) = window.split_at(2);
        let named = before.ends_with(b"_") || before == b"_h";
        let ends = !bytes.get(place + DIGITS + 2).is_some_and(u8::is_ascii_alphanumeric);
        (named && ends && hash.iter().all(is_digit)).then_some(hash)
    })
}

fn replace(bytes: &mut [u8], numbers: &BTreeMap<Vec<u8>, String>) {
    for start in 0..bytes.len() {
        if let Some(place) = bytes.get_mut(start..start + DIGITS)
            && let Some(number) = numbers.get(&*place)
        {
            place.copy_from_slice(number.as_bytes());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hash_is_counted_the_same_in_script_and_module() {
        let mut script =
            b"import.__wbg_has_0ef114d846d9fd90(); invoke__hb51d1bde29d2e80d; __wbg_set_0ef114d846d9fd90"
                .to_vec();
        let mut module = b"\x1e__wbg_has_0ef114d846d9fd90\x00invoke__hb51d1bde29d2e80d_2".to_vec();
        let numbers = numbers(&script);
        replace(&mut script, &numbers);
        replace(&mut module, &numbers);
        let text = String::from_utf8(script).unwrap();
        assert_eq!(
            text,
            "import.__wbg_has_0000000000000000(); invoke__h0000000000000001; __wbg_set_0000000000000000"
        );
        assert_eq!(module, b"\x1e__wbg_has_0000000000000000\x00invoke__h0000000000000001_2");
    }

    #[test]
    fn other_words_stay() {
        let script = b"const a_0ef114d846d9fd90b = \"x0ef114d846d9fd90\"; const b_0ef114d846d9fd9;";
        assert!(numbers(script).is_empty());
    }
}

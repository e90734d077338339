//! Hashes and text forms of bytes.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest as _, Sha256};
use std::fmt::Write as _;

/// The hash as a browser wants it in an integrity mark or a content policy: `sha256-…`.
pub(crate) fn integrity(bytes: &[u8]) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(bytes)))
}

/// The hash in hexadecimal digits, as lists of sums have it.
pub(crate) fn hex(bytes: &[u8]) -> String {
    let mut text = String::new();
    for byte in Sha256::digest(bytes) {
        // Writing to a string cannot fail.
        let _ = write!(text, "{byte:02x}");
    }
    text
}

/// The first 16 hexadecimal digits of the hash: enough to tell versions apart in a name.
pub(crate) fn short(bytes: &[u8]) -> String {
    hex(bytes).chars().take(16).collect()
}

/// Bytes as base64 text.
pub(crate) fn base64(bytes: &[u8]) -> String {
    STANDARD.encode(bytes)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn hash_of_abc_is_the_published_one() {
        // FIPS 180-4, example "abc".
        assert_eq!(hex(b"abc"), "ba7816bf8f01cfea414140de5dae2223b00361a396177a9cb410ff61f20015ad");
        assert_eq!(short(b"abc"), "ba7816bf8f01cfea");
        assert_eq!(integrity(b"abc"), "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=");
    }
}

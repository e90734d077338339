//! Hashes and text forms of bytes.

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest as _, Sha256};

/// The hash as a browser wants it in an integrity mark or a content policy: `sha256-…`.
pub(crate) fn integrity(bytes: &[u8]) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(bytes)))
}

/// The first 16 hexadecimal digits of the hash: enough to tell versions apart in a name.
pub(crate) fn short(bytes: &[u8]) -> String {
    let digest = Sha256::digest(bytes);
    let start: [u8; 8] = std::array::from_fn(|at| digest.get(at).copied().unwrap_or(0));
    format!("{:016x}", u64::from_be_bytes(start))
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
        assert_eq!(short(b"abc"), "ba7816bf8f01cfea");
        assert_eq!(integrity(b"abc"), "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=");
    }
}

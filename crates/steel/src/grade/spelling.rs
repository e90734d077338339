//! What is the same name in another spelling.

use alloc::string::String;

/// Names longer than this are nobody's steel; what is longer is compared no further.
pub(super) const LONGEST: usize = 60;

/// Whether a sign only parts the letters and figures of a name.
const fn parts(sign: char) -> bool {
    sign.is_whitespace()
        || matches!(
            sign,
            '-' | '_'
                | '.'
                | ','
                | '/'
                | '('
                | ')'
                | '%'
                | '\''
                | '"'
                | ':'
                | '\u{2010}'
                | '\u{2011}'
                | '\u{2012}'
                | '\u{2013}'
                | '\u{2014}'
                | '\u{2212}'
        )
}

/// Capital letters and figures without what parts them: `en 19` and `EN-19` are one name, and so are
/// `1.7225` and `1,7225`. A sign that has no place in a name stays, so that it matches nothing.
pub(super) fn plain(text: &str) -> String {
    let signs = text.chars().filter(|sign| !parts(*sign));
    signs.map(|sign| sign.to_ascii_uppercase()).take(LONGEST).collect()
}

/// The words of a name in capital letters; a point or comma inside a number parts no words.
pub(super) fn words(text: &str) -> impl Iterator<Item = String> {
    text.split(|sign: char| sign.is_whitespace() || matches!(sign, '(' | ')'))
        .map(plain)
        .filter(|word| !word.is_empty())
}

/// Whether the words of `part` stand one after another in `whole`, which has more of them.
pub(super) fn within(part: &str, whole: &str) -> bool {
    let count = words(part).count();
    let longer = words(whole).count();
    count > 0
        && count < longer
        && (0..=longer.saturating_sub(count))
            .any(|start| words(part).eq(words(whole).skip(start).take(count)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn spellings_of_one_name_are_one() {
        for (one, other) in [
            ("1.7225", "1,7225"),
            ("EN19", "en 19"),
            ("42CrMo4", "42 Cr Mo 4"),
            ("17-4PH", "17\u{2013}4 ph"),
            ("BH224/5", "bh 224-5"),
        ] {
            assert_eq!(plain(one), plain(other));
        }
        assert_ne!(plain("4140?"), plain("4140"));
    }

    #[test]
    fn a_name_inside_a_longer_one_is_seen() {
        assert!(within("A2", "A2 stainless"));
        assert!(within("drill rod", "oil-hardening drill rod"));
        assert!(!within("A2", "A2"));
        assert!(!within("A", "A2 stainless"));
        assert!(!within("", "A2 stainless"));
    }
}

//! How hard parts of a kind are made.

use alloc::vec::Vec;

use crate::generated::targets::TARGETS;
use crate::grade::Grade;
use crate::keyed::keyed;
use crate::source::Cited;

keyed! {
    /// What stands behind a figure.
    Basis {
        /// A clause of a standard.
        Standard = "standard",
        /// A named page or sheet.
        Published = "published",
        /// Common practice, no single source.
        Practice = "practice",
    }
}

/// Working hardness of one zone of a kind of part.
#[derive(Debug)]
pub struct Target {
    pub(crate) part: &'static str,
    pub(crate) zone: &'static str,
    pub(crate) hrc: (Option<f64>, Option<f64>),
    pub(crate) other_scale: &'static str,
    pub(crate) grades: &'static [&'static Grade],
    pub(crate) basis: Basis,
    pub(crate) cited: Cited,
    pub(crate) caution: &'static str,
}

impl Target {
    /// Kind of part.
    #[must_use]
    pub const fn part(&self) -> &'static str {
        self.part
    }

    /// Zone of the part; "all" for the whole.
    #[must_use]
    pub const fn zone(&self) -> &'static str {
        self.zone
    }

    /// Lowest and highest HRC; an end that is not stated is `None`.
    #[must_use]
    pub const fn hrc(&self) -> (Option<f64>, Option<f64>) {
        self.hrc
    }

    /// What the source says beside HRC: another scale, a clause, a size.
    #[must_use]
    pub const fn other_scale(&self) -> &'static str {
        self.other_scale
    }

    /// Grades that such parts are usually made of.
    #[must_use]
    pub const fn grades(&self) -> &'static [&'static Grade] {
        self.grades
    }

    /// What stands behind the figure.
    #[must_use]
    pub const fn basis(&self) -> Basis {
        self.basis
    }

    /// Where it stands.
    #[must_use]
    pub const fn cited(&self) -> Cited {
        self.cited
    }

    /// What has to be said with it; a struck tool is never shown without.
    #[must_use]
    pub const fn caution(&self) -> &'static str {
        self.caution
    }
}

/// Every row, in the order of the data file.
#[must_use]
pub const fn all() -> &'static [Target] {
    TARGETS
}

/// Rows of the parts that hold every word, those whose part alone holds them first; a part always comes
/// with all its zones. A plural and one wrong letter in a longer word are forgiven.
///
/// # Example
/// ```
/// use biteband_steel::target;
/// let rows = target::find("Cold chisels");
/// let zones: Vec<&str> = rows.iter().map(|row| row.zone()).collect();
/// assert_eq!(zones, ["cutting edge", "struck end"]);
/// assert!(rows.iter().all(|row| !row.caution().is_empty()));
/// assert!(target::find("marmalade").is_empty());
/// ```
#[must_use]
pub fn find(text: &str) -> Vec<&'static Target> {
    let words: Vec<&str> = words(text).collect();
    let mut found: Vec<&'static Target> = Vec::new();
    if words.is_empty() {
        return found;
    }
    for with_zone in [false, true] {
        for row in TARGETS {
            let holds = words
                .iter()
                .all(|word| holds(row.part, word) || with_zone && holds(row.zone, word));
            if !holds {
                continue;
            }
            for zone in TARGETS.iter().filter(|other| other.part == row.part) {
                if !found.iter().any(|known| known.part == zone.part && known.zone == zone.zone) {
                    found.push(zone);
                }
            }
        }
    }
    found
}

fn words(text: &str) -> impl Iterator<Item = &str> {
    text.split(|sign: char| !sign.is_alphanumeric() && sign != '.').filter(|word| !word.is_empty())
}

fn holds(text: &str, word: &str) -> bool {
    words(text).any(|known| alike(known, word))
}

/// The same word, its plural, its beginning, or one letter of a longer word wrong.
fn alike(known: &str, word: &str) -> bool {
    let singular = |word: &'_ str| -> usize {
        let bytes = word.as_bytes();
        let plural =
            bytes.len() > 3 && bytes.last().is_some_and(|sign| sign.eq_ignore_ascii_case(&b's'));
        bytes.len() - usize::from(plural)
    };
    let cut = |word: &'_ str| -> Vec<u8> {
        word.bytes().take(singular(word)).map(|sign| sign.to_ascii_lowercase()).collect()
    };
    let (known, word) = (cut(known), cut(word));
    if known == word || word.len() > 2 && known.starts_with(&word) {
        return true;
    }
    // British and American spelling, a letter left out, a letter wrong.
    let (longer, shorter) =
        if known.len() < word.len() { (&word, &known) } else { (&known, &word) };
    if shorter.len() < 4 || longer.len() - shorter.len() > 1 {
        return false;
    }
    let start = longer.iter().zip(shorter).take_while(|(one, other)| one == other).count();
    let same_length = longer.len() == shorter.len();
    let rest = shorter.get(start + usize::from(same_length)..).unwrap_or_default();
    longer.get(start + 1..) == Some(rest)
}

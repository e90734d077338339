//! Matches while a person types.

use alloc::vec::Vec;

use super::Designation;
use super::nearest::{far, signs};
use super::spelling::plain;

/// Two letters or one figure off, as [`far`] counts.
const NEAR: u32 = 4;

/// Up to `most` designations for what has been typed so far: those that are it, begin with it, hold it,
/// and then those a slip away.
///
/// # Example
/// ```
/// use biteband_steel::grade::search;
/// let matches = search("42crmo", 3);
/// assert_eq!(matches.first().map(|one| one.text()), Some("42CrMo"));
/// assert_eq!(search("silver", 5).first().map(|one| one.text()), Some("silver steel"));
/// assert!(search("", 5).is_empty());
/// ```
#[must_use]
pub fn search(text: &str, most: usize) -> Vec<&'static Designation> {
    let name = plain(text);
    if name.is_empty() {
        return Vec::new();
    }
    let typed = signs(text);
    let mut ranked: Vec<((u32, usize), &'static Designation)> = Vec::new();
    for one in Designation::all() {
        let known = plain(one.text);
        let rank = if known == name {
            0
        } else if known.starts_with(name.as_str()) {
            1
        } else if name.len() > 1 && known.contains(name.as_str()) {
            2
        } else if name.len() > 2 {
            let far = far(&typed, &signs(one.text));
            if far > NEAR {
                continue;
            }
            far.saturating_add(3)
        } else {
            continue;
        };
        let rank = (rank, known.len());
        let place = ranked.iter().take_while(|(before, _)| *before <= rank).count();
        if place < most {
            ranked.truncate(most.saturating_sub(1));
            ranked.insert(place, (rank, one));
        }
    }
    ranked.into_iter().map(|(_, one)| one).collect()
}

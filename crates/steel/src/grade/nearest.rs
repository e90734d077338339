//! The designations nearest to a name that nobody knows.

use alloc::string::String;
use alloc::vec::Vec;

use super::Designation;
use super::spelling::plain;

/// A wrong figure makes another steel, a wrong letter more often a slip. Ours.
const FIGURE: u32 = 3;
const LETTER: u32 = 2;

fn cost(sign: char) -> u32 {
    if sign.is_ascii_digit() { FIGURE } else { LETTER }
}

/// Levenshtein's distance, in which figures weigh more than letters, with two neighbours that changed
/// places as one slip.
fn distance(one: &[char], other: &[char]) -> u32 {
    let mut before: Vec<u32> = Vec::new();
    let mut above: Vec<u32> = Vec::with_capacity(other.len().saturating_add(1));
    above.push(0);
    let mut sum = 0;
    for sign in other {
        sum += cost(*sign);
        above.push(sum);
    }
    let mut last_sign = None;
    for sign in one {
        let mut row = Vec::with_capacity(above.len());
        let mut left = above.first().copied().unwrap_or(0) + cost(*sign);
        row.push(left);
        let mut last_other = None;
        for (place, against) in other.iter().enumerate() {
            let over = |row: &[u32], at: usize| row.get(at).copied().unwrap_or(u32::MAX / 2);
            let same = match (sign == against, cost(*sign) == cost(*against)) {
                (true, _) => 0,
                (false, true) => cost(*sign),
                // A letter for a figure is both.
                (false, false) => FIGURE + LETTER,
            };
            let mut best = (over(&above, place) + same)
                .min(over(&above, place.saturating_add(1)) + cost(*sign))
                .min(left + cost(*against));
            if last_sign == Some(*against) && last_other == Some(*sign) && place > 0 {
                best = best
                    .min(over(&before, place.saturating_sub(1)) + cost(*sign).max(cost(*against)));
            }
            row.push(best);
            left = best;
            last_other = Some(*against);
        }
        (before, above) = (above, row);
        last_sign = Some(*sign);
    }
    above.last().copied().unwrap_or(0)
}

/// The same signs in another order are one slip of the pen, wherever they stand.
fn same_signs(one: &[char], other: &[char]) -> bool {
    let sorted = |signs: &[char]| {
        let mut signs = signs.to_vec();
        signs.sort_unstable();
        signs
    };
    one.len() == other.len() && sorted(one) == sorted(other)
}

/// How far a name is from a designation: the distance, where a sign too many or too few weighs a little more
/// than a wrong one, then what follows their common beginning.
pub(super) fn far(text: &str, designation: &str) -> (u32, usize) {
    let signs = |text: &str| plain(text).chars().collect::<Vec<char>>();
    let (one, other) = (signs(text), signs(designation));
    let same_start = one.iter().zip(&other).take_while(|(one, other)| one == other).count();
    let lengths = u32::try_from(one.len().abs_diff(other.len())).unwrap_or(0);
    let slips = distance(&one, &other).saturating_add(lengths);
    let far = if same_signs(&one, &other) { slips.min(FIGURE) } else { slips };
    (far, other.len().saturating_sub(same_start))
}

/// The three nearest designations, of three different grades.
pub(super) fn nearest(text: &str) -> Vec<&'static Designation> {
    let text: String = plain(text);
    let mut ranked: Vec<((u32, usize), &'static Designation)> =
        Designation::all().iter().map(|one| (far(&text, one.text), one)).collect();
    ranked.sort_by_key(|(far, _)| *far);
    let mut three: Vec<&'static Designation> = Vec::with_capacity(3);
    for (_, one) in ranked {
        if three.len() < 3 && !three.iter().any(|kept| kept.grade() == one.grade()) {
            three.push(one);
        }
    }
    three
}

#[cfg(test)]
mod tests {
    use super::*;

    fn between(one: &str, other: &str) -> u32 {
        far(one, other).0
    }

    #[test]
    fn figures_weigh_more_than_letters() {
        assert_eq!(between("4140", "4140"), 0);
        assert_eq!(between("4140", "4150"), FIGURE);
        assert_eq!(between("EM19", "EN19"), LETTER);
        assert_eq!(between("NE19", "EN19"), LETTER);
        assert_eq!(between("414", "4140"), FIGURE + 1);
        assert_eq!(between("4041", "4140"), FIGURE);
        assert_eq!(between("4041", "440A"), 2 * FIGURE + LETTER);
        assert_eq!(between("", "4140"), 4 * (FIGURE + 1));
    }
}

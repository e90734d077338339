//! The designations nearest to a name that nobody knows.

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
    let at = |row: &[u32], place: usize| row.get(place).copied().unwrap_or(u32::MAX / 2);
    let mut before: Vec<u32> = Vec::new();
    let mut above: Vec<u32> = Vec::from([0]);
    let mut row: Vec<u32> = Vec::new();
    let mut sum = 0;
    for sign in other {
        sum += cost(*sign);
        above.push(sum);
    }
    let mut last_sign = None;
    for sign in one {
        let mut left = at(&above, 0) + cost(*sign);
        row.clear();
        row.push(left);
        let mut last_other = None;
        for (place, against) in other.iter().enumerate() {
            let same = match (sign == against, cost(*sign) == cost(*against)) {
                (true, _) => 0,
                (false, true) => cost(*sign),
                // A letter for a figure is both.
                (false, false) => FIGURE + LETTER,
            };
            let mut best = (at(&above, place) + same)
                .min(at(&above, place.saturating_add(1)) + cost(*sign))
                .min(left + cost(*against));
            if last_sign == Some(*against) && last_other == Some(*sign) {
                let swapped = cost(*sign).max(cost(*against));
                best = best.min(at(&before, place.saturating_sub(1)) + swapped);
            }
            row.push(best);
            left = best;
            last_other = Some(*against);
        }
        core::mem::swap(&mut before, &mut above);
        core::mem::swap(&mut above, &mut row);
        last_sign = Some(*sign);
    }
    at(&above, other.len())
}

/// The same signs in another order are one slip of the pen, wherever they stand.
fn same_signs(one: &[char], other: &[char]) -> bool {
    let count = |signs: &[char], sign: char| signs.iter().filter(|known| **known == sign).count();
    one.len() == other.len() && one.iter().all(|sign| count(one, *sign) == count(other, *sign))
}

/// How far a plain name is from a designation: the distance, where a sign too many or too few weighs a little
/// more than a wrong one.
pub(super) fn far(name: &[char], designation: &[char]) -> u32 {
    let lengths = u32::try_from(name.len().abs_diff(designation.len())).unwrap_or(0);
    let slips = distance(name, designation).saturating_add(lengths);
    if same_signs(name, designation) { slips.min(FIGURE) } else { slips }
}

pub(super) fn signs(text: &str) -> Vec<char> {
    plain(text).chars().collect()
}

/// The three nearest designations, of three different grades; of equally far ones first that which has the
/// shortest rest behind the common beginning.
pub(super) fn nearest(text: &str) -> Vec<&'static Designation> {
    let name = signs(text);
    let ranked: Vec<((u32, usize), &'static Designation)> = Designation::all()
        .iter()
        .map(|one| {
            let known = signs(one.text);
            let same = name.iter().zip(&known).take_while(|(one, other)| one == other).count();
            ((far(&name, &known), known.len().saturating_sub(same)), one)
        })
        .collect();
    let mut three: Vec<&'static Designation> = Vec::new();
    for _ in 0..3 {
        let others = ranked.iter().filter(|(_, one)| {
            !three.iter().any(|kept: &&Designation| kept.grade() == one.grade())
        });
        three.extend(others.min_by_key(|(rank, _)| *rank).map(|(_, one)| *one));
    }
    three
}

#[cfg(test)]
mod tests {
    use super::*;

    fn between(one: &str, other: &str) -> u32 {
        far(&signs(one), &signs(other))
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

//! Numbers of one instrument as they are written, with their uncertainty.

use biteband_hardness::designation::{self, Amount, Designation};
use biteband_hardness::{Axis, decimal};

use crate::format;
use crate::refusal::Refusal;
use crate::words::{Language, Unreadable};

/// Half-width of a 95 % band in standard deviations of a normal law.
pub(super) const K95: f64 = 1.959_963_984_540_054;

/// Half-width at 95 % of so many readings of one instrument, the spot apart.
pub(crate) fn half_of(count: f64, random: f64, shared: f64, conversion: f64) -> f64 {
    K95 * u_of(count, random, shared, conversion)
}

/// Standard uncertainty of the mean of so many readings of one instrument, with one more doubt that they share.
pub(super) fn u_of(count: f64, random: f64, shared: f64, more: f64) -> f64 {
    (random * random / count + shared * shared + more * more).sqrt()
}

pub(super) fn refuse(
    language: Language,
    code: &'static str,
    given: &str,
    what: Unreadable<'_>,
) -> Refusal {
    let [message, instead] = language.unreadable(what);
    Refusal::new(code, message, format::shortened(given), "52, 53 HRC; 288 HBW +-8", instead)
}

/// Numbers of one scale.
pub(super) struct Series {
    pub(super) values: Vec<f64>,
    pub(super) axis: Axis,
    /// As the last number with a symbol was written.
    pub(super) written: Option<Designation>,
    /// Standard uncertainty as written, in the scale's own points.
    pub(super) given: Option<f64>,
}

/// Splits `288 HBW +-8` into what stands before, the standard uncertainty, and what stands behind it.
fn split_uncertainty(language: Language, text: &str) -> Result<(&str, Option<f64>, &str), Refusal> {
    let signs = [("+/-", K95), ("+-", K95), ("±", K95), ("u=", 1.0), ("u =", 1.0)];
    let found = signs.into_iter().find_map(|(sign, k)| Some((text.split_once(sign)?, k)));
    let Some(((before, after), k)) = found else { return Ok((text, None, "")) };
    let after = after.trim_start();
    let end = after.find(|c: char| !(c.is_ascii_digit() || c == '.' || c == ','));
    let (number, rest) = after.split_at_checked(end.unwrap_or(after.len())).unwrap_or((after, ""));
    let number = decimal(number.trim_end_matches(['.', ','])).filter(|number| *number > 0.0);
    let number = number.ok_or_else(|| {
        let given = format::shortened(after);
        refuse(
            language,
            "bench.unreadable_uncertainty",
            text,
            Unreadable::Uncertainty { given: &given },
        )
    })?;
    Ok((before, Some(number / k), rest.trim()))
}

/// Takes the bare numbers off the front: `52 53,5 HRC` leaves `HRC`.
fn bare_numbers(text: &str) -> (Vec<&str>, &str) {
    let mut numbers = Vec::new();
    let mut rest = text.trim();
    loop {
        let (piece, after) = rest.split_once(char::is_whitespace).unwrap_or((rest, ""));
        let digits = |c: char| c.is_ascii_digit() || c == '.' || c == ',';
        if piece.is_empty() || !piece.chars().all(digits) {
            return (numbers, rest);
        }
        let piece = piece.trim_start_matches(',').trim_end_matches([',', '.']);
        // No instrument reads hundredths: "52,53" is two readings, "52,5" is one.
        let one = piece.split_once(',').is_none_or(|(_, behind)| behind.len() == 1);
        if one {
            numbers.push(piece);
        } else {
            numbers.extend(piece.split(',').filter(|part| !part.is_empty()));
        }
        rest = after.trim_start();
    }
}

/// Reads numbers; those without a symbol take that of the others, or `scale`.
pub(super) fn series(
    language: Language,
    text: &str,
    scale: Option<Axis>,
) -> Result<Series, Refusal> {
    let (before, given, behind) = split_uncertainty(language, text)?;
    // "640 +-20 HV10": the symbol belongs to the number.
    let labelled = before.contains(char::is_alphabetic);
    let whole = if labelled { before.to_owned() } else { format!("{before} {behind}") };
    let parse = |text: &str| {
        let parsed = designation::parse(text);
        parsed.map_err(|error| Refusal::of_designation(language, text, &error))
    };
    let two_scales = |one: Axis, other: Axis| {
        Refusal::of_designation(language, text, &designation::Error::TwoScales(one, other))
    };
    let not_one =
        || refuse(language, "bench.reading_not_one_number", text, Unreadable::NotOneNumber);
    let mut values = Vec::new();
    let mut written: Option<Designation> = None;
    let chunks = whole.split(';').flat_map(|part| part.split(", "));
    for chunk in chunks.filter(|chunk| !chunk.trim().is_empty()) {
        let (mut numbers, symbol) = bare_numbers(chunk);
        let last = if symbol.is_empty() { None } else { Some(numbers.pop().unwrap_or_default()) };
        for number in numbers {
            match decimal(number) {
                Some(value) => values.push(value),
                None => drop(parse(number)?),
            }
        }
        let Some(last) = last else { continue };
        let parsed = parse(&format!("{last} {symbol}"))?;
        let own = parsed.designation();
        let Amount::Single(value) = own.amount else {
            return Err(not_one());
        };
        if let Some(other) = written.as_ref().filter(|other| other.axis != own.axis) {
            return Err(two_scales(other.axis, own.axis));
        }
        values.push(value);
        written = Some(own.clone());
    }
    let Some(axis) = written.as_ref().map(|own| own.axis).or(scale) else {
        // Nothing at all, or a number without a scale: the reader of hardness has the words.
        let _ = parse(whole.trim())?;
        return Err(not_one());
    };
    if values.is_empty() {
        let _ = parse(text)?;
    }
    if labelled && !behind.is_empty() && Axis::find(behind) != Some(axis) {
        let what = Unreadable::Uncertainty { given: &format::shortened(behind) };
        return Err(refuse(language, "bench.unreadable_uncertainty", text, what));
    }
    Ok(Series { values, axis, written, given })
}

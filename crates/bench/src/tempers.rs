//! Tempers as people write them: `205C/2h`, `300 °C for 1 h`, `2x 540C/2h`.

use biteband_steel::temper::{Temper, TemperError};

use crate::format::{fixed, shortened};
use crate::measure::{Kind, parse_difference, parse_time, read, temperature};
use crate::refusal::Refusal;
use crate::words::{Language, TemperRefusal};

/// More tempers than this are a slip of the pen.
const MOST: u8 = 6;

/// Reads one or several tempers: a temperature, `/` or `for` or a blank, a time; `2x` before or `x2` behind for several of the
/// same; commas or semicolons between different ones. A temper without a time is held for `usual`.
///
/// # Errors
/// A refusal: no unit, no time and no usual one, a temperature or a time that no temper has.
///
/// # Example
/// ```
/// use biteband_bench::tempers::parse_tempers;
/// use biteband_bench::words::Language;
/// let read = parse_tempers(Language::English, "2x 205C/2h, 300 °C for 60 min", None).unwrap();
/// assert_eq!(read.len(), 3);
/// assert!((read[2].celsius() - 300.0).abs() < 1e-9 && (read[2].minutes() - 60.0).abs() < 1e-9);
/// // 400 could be either.
/// let refusal = parse_tempers(Language::English, "400/2h", None).unwrap_err();
/// assert_eq!(refusal.code, "bench.unreadable_unit");
/// ```
pub fn parse_tempers(
    language: Language,
    text: &str,
    usual: Option<f64>,
) -> Result<Vec<Temper>, Refusal> {
    let mut all = Vec::new();
    for one in separate(text) {
        let (times, rest) = repeated(one);
        let (hot, held) = parted(rest);
        let celsius = temperature(language, hot)?.get();
        let minutes = match (held, usual) {
            (Some(held), _) => read(language, Kind::Time, held, parse_time)?.get(),
            (None, Some(usual)) => usual,
            (None, None) => {
                return Err(refused(language, one, "bench.missing_time", TemperRefusal::NoTime));
            }
        };
        let temper = temper(language, one, celsius, minutes)?;
        all.extend((0..times).map(|_| temper));
    }
    if all.is_empty() {
        return Err(refused(language, text, "bench.unreadable_temper", TemperRefusal::Unreadable));
    }
    Ok(all)
}

/// A temper of so many °C and minutes.
///
/// # Errors
/// A refusal: hotter, colder or longer than any temper.
pub fn temper(
    language: Language,
    given: &str,
    celsius: f64,
    minutes: f64,
) -> Result<Temper, Refusal> {
    Temper::new(celsius, minutes).map_err(|error: TemperError| {
        // In the unit that it was written in: what a slip of the unit makes of it would not be known again.
        let (hot, _) = parted(repeated(given).1);
        let hot =
            if hot.is_empty() { format!("{} °C", fixed(celsius, 0)) } else { shortened(hot) };
        let cold = matches!(error, TemperError::Outside { low, .. } if celsius < low);
        let apart = parse_difference(&hot).ok().filter(|_| cold);
        let apart = apart.map(|apart| format!("{} K", fixed(apart.get(), 0)));
        let what = TemperRefusal::Temper { error: &error, hot: &hot, apart: apart.as_deref() };
        refused(language, given, error.code(), what)
    })
}

fn refused(
    language: Language,
    given: &str,
    code: &'static str,
    what: TemperRefusal<'_>,
) -> Refusal {
    let [message, allowed, instead] = language.temper_refused(what);
    Refusal::new(code, message, shortened(given), allowed, instead)
}

/// Parts between semicolons, plus signs and those commas that are no decimal commas.
fn separate(text: &str) -> Vec<&str> {
    let signs: Vec<(usize, char)> = text.char_indices().collect();
    let mut parts = Vec::new();
    let mut from = 0;
    for (place, &(at, sign)) in signs.iter().enumerate() {
        let figure = |place: Option<usize>| {
            place.and_then(|place| signs.get(place)).is_some_and(|(_, sign)| sign.is_ascii_digit())
        };
        let decimal = sign == ',' && figure(place.checked_sub(1)) && figure(Some(place + 1));
        if matches!(sign, ';' | '+') || sign == ',' && !decimal {
            parts.extend(text.get(from..at));
            from = at + sign.len_utf8();
        }
    }
    parts.extend(text.get(from..));
    parts.retain(|part| !part.trim().is_empty());
    parts
}

/// `2x 205C/2h` and `205C/2h x2`: how many times, and the rest.
fn repeated(text: &str) -> (u8, &str) {
    let text = text.trim();
    let count = |text: &str| text.trim().parse::<u8>().ok().filter(|n| (1..=MOST).contains(n));
    let signs = ['x', 'X', '×'];
    if let Some((before, rest)) = text.split_once(signs)
        && let Some(times) = count(before)
    {
        return (times, rest.trim());
    }
    if let Some((rest, behind)) = text.rsplit_once(signs)
        && let Some(times) = count(behind)
    {
        return (times, rest.trim());
    }
    (1, text)
}

/// The temperature and the time behind it.
fn parted(text: &str) -> (&str, Option<&str>) {
    if let Some((hot, held)) = text.split_once('/') {
        return (hot.trim(), Some(held.trim()));
    }
    for word in [" for ", " @ "] {
        if let Some((hot, held)) = text.split_once(word) {
            return (hot.trim(), Some(held.trim()));
        }
    }
    // "205C 2h": the time begins with the first figure behind the letter of the degree.
    let degree = text.find(['C', 'c', 'F', 'f']);
    match degree.and_then(|at| text.split_at_checked(at + 1)) {
        Some((hot, held)) if held.trim().starts_with(|c: char| c.is_ascii_digit()) => {
            (hot.trim(), Some(held.trim()))
        }
        _ => (text, None),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Vec<(f64, f64)> {
        let found = parse_tempers(Language::English, text, None).unwrap();
        found.iter().map(|one| (one.celsius().round(), one.minutes().round())).collect()
    }

    #[test]
    fn tempers_in_every_way_of_writing_them() {
        for text in ["205C/2h", "205 °C / 2 h", "205C for 2h", "205c 2h", "401F/120min", "205C 2 h"]
        {
            assert_eq!(read(text), [(205.0, 120.0)], "{text}");
        }
        assert_eq!(read("2x 540C/2h"), [(540.0, 120.0); 2]);
        assert_eq!(read("540C/2h x3"), [(540.0, 120.0); 3]);
        assert_eq!(read("205,5C/1,5h; 220C/1h"), [(206.0, 90.0), (220.0, 60.0)]);
        assert_eq!(read("220C/2h, 300C/1h"), [(220.0, 120.0), (300.0, 60.0)]);
    }

    /// 25 °F as a temperature is -4 °C, as a difference 25 / 1.8 = 13.9 K.
    #[test]
    fn a_difference_is_not_taken_for_a_temperature() {
        for text in ["25F", "25F/1h", "220C+25F", "2x 25F/1h"] {
            let refusal = parse_tempers(Language::English, text, Some(120.0)).unwrap_err();
            assert_eq!(refusal.code, "temper.temperature_outside", "{text}");
            assert_eq!(refusal.message, "25F is no temper.", "{text}");
            assert!(refusal.instead.contains("difference, 25F is 14 K"), "{}", refusal.instead);
        }
        let hot = parse_tempers(Language::English, "1600F/1h", None).unwrap_err();
        assert_eq!(hot.message, "1600F is no temper.");
        assert!(!hot.instead.contains("difference"), "{}", hot.instead);
        assert_eq!(
            temper(Language::English, "", -3.9, 60.0).unwrap_err().message,
            "-4 °C is no temper."
        );
    }

    #[test]
    fn what_is_no_temper() {
        for (text, code) in [
            ("205", "bench.unreadable_unit"),
            ("205/2h", "bench.unreadable_unit"),
            ("205C", "bench.missing_time"),
            ("205C/2", "bench.unreadable_unit"),
            ("205 C/1h60", "bench.unreadable_time"),
            ("205C/0h", "quantity.out_of_bounds"),
            ("20C/1h", "temper.temperature_outside"),
            ("900C/1h", "temper.temperature_outside"),
            ("205C/200h", "temper.too_long"),
            ("", "bench.unreadable_temper"),
            ("straw", "bench.unreadable_temperature"),
        ] {
            let refusal = parse_tempers(Language::English, text, None).unwrap_err();
            assert_eq!(refusal.code, code, "{text}: {refusal:?}");
            assert!(!refusal.message.is_empty() && !refusal.instead.is_empty(), "{text}");
        }
    }
}

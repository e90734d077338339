//! Compositions as people write them.

use biteband_hardness::decimal;
use biteband_steel::grade::OwnGrade;
use biteband_steel::{CompositionLimits, Element};

use crate::format::shortened;
use crate::refusal::Refusal;
use crate::words::{Language, SteelRefusal};

/// Symbols of the elements that are read, carbon first.
pub fn symbols() -> impl Iterator<Item = &'static str> {
    Element::ALL.into_iter().map(Element::symbol)
}

type Limit = (Element, Option<f64>, Option<f64>);

/// Reads `C=0.41,Mn=0.85`, ranges `C=0.38-0.43`, maxima `P<0.035`; `C=0,41; Mn=0,85` with decimal commas.
///
/// A comma between two figures is a decimal comma, any other one parts elements.
///
/// # Errors
/// A refusal: unreadable, an element that no method counts, or a composition that no steel has.
///
/// # Example
/// ```
/// use biteband_bench::composition::parse_composition;
/// use biteband_bench::words::Language;
/// use biteband_steel::Element;
/// let heat = parse_composition(Language::English, "C=0,41 Mn=0,85").unwrap();
/// assert_eq!(heat.stated(Element::Mn), (Some(0.85), Some(0.85)));
/// let paper = parse_composition(Language::English, "C=0.38-0.43,P<0.035").unwrap();
/// assert_eq!(paper.stated(Element::P), (None, Some(0.035)));
/// let refused = parse_composition(Language::English, "C=41").unwrap_err();
/// assert_eq!(refused.code, "steel.share_outside");
/// ```
pub fn parse_composition(language: Language, text: &str) -> Result<CompositionLimits, Refusal> {
    let refuse = |code, what: SteelRefusal<'_>| refusal(language, code, text, what);
    let mut limits: Vec<Limit> = Vec::new();
    let mut rest = text.trim_start_matches(parts);
    while !rest.is_empty() {
        let (limit, after) = one(rest).map_err(|unread| match unread {
            Unread::Element(given) => {
                let given = shortened(given);
                refuse("bench.unknown_element", SteelRefusal::UnknownElement { given: &given })
            }
            Unread::Text => {
                let given = shortened(text);
                refuse(
                    "bench.unreadable_composition",
                    SteelRefusal::NotComposition { given: &given },
                )
            }
        })?;
        if limits.iter().any(|(element, ..)| *element == limit.0) {
            let element = limit.0.symbol();
            return Err(refuse(
                "bench.unreadable_composition",
                SteelRefusal::ElementTwice { element },
            ));
        }
        limits.push(limit);
        rest = after.trim_start_matches(parts);
    }
    if limits.is_empty() {
        let given = shortened(text);
        return Err(refuse(
            "bench.unreadable_composition",
            SteelRefusal::NotComposition { given: &given },
        ));
    }
    CompositionLimits::new(&limits)
        .map_err(|error| refuse(error.code(), SteelRefusal::Composition(&error)))
}

/// A grade of the person's own, from its name and its composition as written.
///
/// # Errors
/// A refusal: see [`parse_composition`] and [`OwnGrade::new`].
pub fn own_grade(language: Language, name: &str, composition: &str) -> Result<OwnGrade, Refusal> {
    let limits = parse_composition(language, composition)?;
    OwnGrade::new(name, limits)
        .map_err(|error| refusal(language, error.code(), name, SteelRefusal::OwnGrade(&error)))
}

pub(crate) fn refusal(
    language: Language,
    code: &'static str,
    given: &str,
    what: SteelRefusal<'_>,
) -> Refusal {
    let [message, allowed, instead] = language.steel_refused(what);
    Refusal::new(code, message, shortened(given), allowed, instead)
}

enum Unread<'a> {
    Element(&'a str),
    Text,
}

fn parts(sign: char) -> bool {
    sign.is_whitespace() || matches!(sign, ',' | ';' | '%')
}

/// The first element with its share, and what follows.
fn one(text: &str) -> Result<(Limit, &str), Unread<'_>> {
    let end = text.find(|sign: char| !sign.is_alphabetic()).unwrap_or(text.len());
    let (symbol, rest) = text.split_at_checked(end).ok_or(Unread::Text)?;
    if symbol.is_empty() {
        return Err(Unread::Text);
    }
    let rest = rest.trim_start();
    let (most, rest) = match rest.strip_prefix('<').or_else(|| rest.strip_prefix('\u{2264}')) {
        Some(rest) => (true, rest.strip_prefix('=').unwrap_or(rest)),
        None => (false, rest.strip_prefix(['=', ':']).unwrap_or(rest)),
    };
    let (first, rest) = number(rest).ok_or(Unread::Text)?;
    let element = Element::find(symbol).ok_or(Unread::Element(symbol))?;
    if most {
        return Ok(((element, None, Some(first)), rest));
    }
    match rest.trim_start().strip_prefix(['-', '\u{2013}', '\u{2212}']) {
        Some(rest) => {
            let (second, rest) = number(rest).ok_or(Unread::Text)?;
            Ok(((element, Some(first), Some(second)), rest))
        }
        None => Ok(((element, Some(first), Some(first)), rest)),
    }
}

/// The number at the beginning and what follows; a point or comma belongs to it when a figure follows.
fn number(text: &str) -> Option<(f64, &str)> {
    let text = text.trim_start();
    let mut end = 0;
    let mut signs = text.char_indices().peekable();
    while let Some((place, sign)) = signs.next() {
        let decimal = matches!(sign, '.' | ',')
            && signs.peek().is_some_and(|(_, next)| next.is_ascii_digit());
        if !sign.is_ascii_digit() && !decimal {
            break;
        }
        end = place + sign.len_utf8();
    }
    let (number, rest) = text.split_at_checked(end)?;
    decimal(number).map(|number| (number, rest))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(text: &str) -> Result<CompositionLimits, Refusal> {
        parse_composition(Language::English, text)
    }

    #[test]
    fn spellings_of_one_composition() {
        let wanted = read("C=0.41,Mn=0.85,Cr=1").unwrap();
        for text in [
            "C=0.41 Mn=0.85 Cr=1",
            "C = 0,41; Mn = 0,85; Cr = 1",
            "C=0,41,Mn=0,85,Cr=1",
            "c 0.41 % mn 0.85 % cr 1.0 %",
            "C:0.41, Mn:0.85, Cr:1.0,",
        ] {
            assert_eq!(read(text).unwrap(), wanted, "{text}");
        }
        let range = read("C=0,38\u{2013}0,43 Mn=0.75 - 1.0").unwrap();
        assert_eq!(range.stated(Element::C), (Some(0.38), Some(0.43)));
        assert_eq!(range.stated(Element::Mn), (Some(0.75), Some(1.0)));
    }

    #[test]
    fn what_is_no_composition_gives_no_number() {
        for (text, code) in [
            ("", "bench.unreadable_composition"),
            ("4140", "bench.unreadable_composition"),
            ("C=", "bench.unreadable_composition"),
            ("C=0.4-", "bench.unreadable_composition"),
            ("C=-0.4", "bench.unreadable_composition"),
            ("C=0.4,C=0.5", "bench.unreadable_composition"),
            ("C=0.4 Nb=0.02", "bench.unknown_element"),
            ("Mn=0.8", "steel.no_carbon"),
            ("C=41", "steel.share_outside"),
            ("C=0.43-0.38", "steel.share_backward"),
            ("C=0.1 Ni=35 Cr=30", "steel.shares_too_much"),
        ] {
            let refused = read(text).unwrap_err();
            assert_eq!(refused.code, code, "{text}");
            assert!(refused.message.ends_with('.') && !refused.instead.is_empty(), "{text}");
        }
    }

    #[test]
    fn an_own_grade_from_words() {
        let own = own_grade(Language::English, "axle", "C=0.4 Mn=0.8").unwrap();
        assert_eq!(own.name(), "axle");
        let known = own_grade(Language::English, "en 19", "C=0.4").unwrap_err();
        assert_eq!((known.code, known.given.as_str()), ("steel.own_name_known", "en 19"));
    }
}

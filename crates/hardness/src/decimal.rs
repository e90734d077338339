//! Decimal numbers as people type them.

/// No reading has more digits, and up to here a mantissa and a power of ten are exact doubles.
const MOST_DIGITS: usize = 12;

/// Reads digits with at most one decimal point or comma between them.
///
/// The mantissa and the power of ten are whole numbers that a double holds exactly, so their quotient
/// is the double nearest to the text, as any correct reader of decimals gives it.
///
/// # Errors
/// `None` for anything else, signs and exponents included, and for more than twelve digits.
///
/// # Example
/// ```
/// use biteband_hardness::decimal;
/// assert_eq!(decimal("52,5"), Some(52.5));
/// assert_eq!(decimal(" 0.1 "), Some(0.1));
/// assert_eq!(decimal("1e308"), None);
/// ```
#[must_use]
pub fn decimal(text: &str) -> Option<f64> {
    let text = text.trim();
    let (whole, fraction) = match text.split_once(['.', ',']) {
        Some((whole, fraction)) if !fraction.is_empty() => (whole, fraction),
        Some(_) => return None,
        None => (text, ""),
    };
    if whole.is_empty() || whole.len().saturating_add(fraction.len()) > MOST_DIGITS {
        return None;
    }
    let (mut mantissa, mut power) = (0.0, 1.0);
    for sign in whole.bytes().chain(fraction.bytes()) {
        if !sign.is_ascii_digit() {
            return None;
        }
        mantissa = mantissa * 10.0 + f64::from(sign.saturating_sub(b'0'));
    }
    for _ in fraction.bytes() {
        power *= 10.0;
    }
    Some(mantissa / power)
}

#[cfg(test)]
mod tests {
    extern crate std;
    use super::*;
    use std::string::ToString;

    proptest::proptest! {
        #[test]
        fn reads_the_same_double_as_the_standard_library(digits in 0_u64..1_000_000_000_000, cut in 1_usize..12) {
            let text = digits.to_string();
            let cut = cut.min(text.len());
            let (whole, fraction) = text.split_at(cut);
            let text = if fraction.is_empty() { text.clone() } else { std::format!("{whole}.{fraction}") };
            proptest::prop_assert_eq!(decimal(&text), text.parse::<f64>().ok());
        }
    }

    #[test]
    fn what_is_no_plain_decimal_is_refused() {
        for bad in ["", ".", "5.", ".5", "-5", "+5", "1e3", "NaN", "inf", "1.2.3", "1234567890123"]
        {
            assert_eq!(decimal(bad), None, "{bad}");
        }
    }
}

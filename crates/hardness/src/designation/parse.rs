//! Tokens into a designation.

use alloc::borrow::ToOwned;
use alloc::boxed::Box;
use alloc::string::String;
use alloc::vec::Vec;

use super::lex::{Kind, Sign, Token, tokens};
use super::units::{UnitRead, is_sign};
use super::{Amount, Designation, Error, MeasuredAs, Parsed, Remark};
use crate::axis::{Axis, Reading, Scale};
use biteband_quantity::Megapascals;

/// Words that carry no meaning of their own in a hardness.
const FILLERS: [&str; 6] = ["SCALE", "HARDNESS", "RM", "UTS", "TENSILE", "STRENGTH"];

/// Words between the two ends of a range.
const TO: [&str; 5] = ["TO", "THRU", "THROUGH", "UNTIL", "BIS"];

/// Words for more and for less, behind "or", "at" or "not".
const MORE: [&str; 9] =
    ["MORE", "BETTER", "HIGHER", "HARDER", "ABOVE", "OVER", "UP", "GREATER", "MOST"];
const LESS: [&str; 7] = ["LESS", "LOWER", "SOFTER", "BELOW", "UNDER", "DOWN", "LEAST"];

/// Reads a hardness, range or tensile strength as people write it.
///
/// # Units
/// Whatever the text names; tensile strength comes out in MPa, also from ksi.
///
/// # Errors
/// An [`Error`] that says what is missing or contradictory; nothing is guessed that the trade does
/// not take for granted, and what was taken for granted stands in the remarks.
///
/// # Example
/// ```
/// use biteband_hardness::designation::{Remark, parse};
/// let parsed = parse("Rc 52")?;
/// assert_eq!(parsed.designation().to_string(), "52 HRC");
/// assert_eq!(parsed.remarks(), [Remark::OldSymbol, Remark::SymbolFirst]);
/// # Ok::<(), biteband_hardness::designation::Error>(())
/// ```
pub fn parse(text: &str) -> Result<Parsed, Error> {
    if let Some((written, measured, table)) = split_converted(text) {
        let mut parsed = parse(&written)?;
        let measured = parse(&measured)?;
        for remark in measured.remarks {
            if !parsed.remarks.contains(&remark) {
                parsed.remarks.push(remark);
            }
        }
        parsed.designation.converted =
            Some(MeasuredAs { measured: Box::new(measured.designation), table });
        return Ok(parsed);
    }
    let mut parser = Parser { tokens: tokens(text)?, at: 0, remarks: Vec::new(), between: false };
    let designation = parser.designation()?;
    Ok(Parsed { designation, remarks: parser.remarks })
}

/// Splits `38 HRC (converted from 353 HBW 10/3000, ASTM E140 table 1)`.
fn split_converted(text: &str) -> Option<(String, String, String)> {
    let text = text.trim();
    let (written, rest) = text.split_once('(')?;
    let rest = rest.trim_start().strip_prefix("converted from")?.strip_suffix(')')?;
    let (measured, table) = rest.split_once(", ")?;
    // One level only: a conversion of a conversion is not a designation.
    if measured.contains('(') || table.trim().is_empty() {
        return None;
    }
    Some((written.to_owned(), measured.to_owned(), table.trim().to_owned()))
}

pub(super) struct Parser {
    tokens: Vec<Token>,
    at: usize,
    remarks: Vec<Remark>,
    /// "between" stood in front, so that "and" joins the two ends.
    between: bool,
}

/// A limit word or sign before or behind the number.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    AtLeast,
    AtMost,
}

impl Parser {
    pub(super) fn mark(&self) -> usize {
        self.at
    }

    pub(super) fn back_to(&mut self, mark: usize) {
        self.at = mark;
    }

    pub(super) fn advance(&mut self) {
        self.at = self.at.saturating_add(1);
    }

    pub(super) fn remark(&mut self, remark: Remark) {
        if !self.remarks.contains(&remark) {
            self.remarks.push(remark);
        }
    }

    pub(super) fn has(&self, remark: Remark) -> bool {
        self.remarks.contains(&remark)
    }

    fn peek(&self) -> Option<&Token> {
        self.tokens.get(self.at)
    }

    fn peek_at(&self, ahead: usize) -> Option<&Token> {
        self.tokens.get(self.at.saturating_add(ahead))
    }

    /// A number, the word written on to it, and what comes after.
    pub(super) fn peek_number_and_glued_word(&self) -> Option<(f64, &str, Option<&Kind>)> {
        match (&self.peek()?.kind, self.peek_at(1)?) {
            (Kind::Number { value, .. }, Token { kind: Kind::Word(word), glued: true, .. }) => {
                Some((*value, word, self.peek_at(2).map(|t| &t.kind)))
            }
            _ => None,
        }
    }

    fn has_word(&self, wanted: &str) -> bool {
        self.tokens.iter().any(|t| matches!(&t.kind, Kind::Word(word) if word == wanted))
    }

    pub(super) fn peek_word(&self) -> Option<&str> {
        match &self.peek()?.kind {
            Kind::Word(word) => Some(word),
            _ => None,
        }
    }

    pub(super) fn peek_glued_number(&self) -> Option<f64> {
        match self.peek()? {
            Token { kind: Kind::Number { value, .. }, glued: true, .. } => Some(*value),
            _ => None,
        }
    }

    pub(super) fn any_lower_case_since(&self, mark: usize) -> bool {
        let words = self.tokens.get(mark..self.at).unwrap_or_default();
        // The small m of Sm is the standard's own.
        words.iter().any(|t| {
            matches!(t.kind, Kind::Word(_))
                && t.text.trim_end_matches("Sm").contains(char::is_lowercase)
        })
    }

    pub(super) fn eat(&mut self, sign: Sign) -> bool {
        let here = self.peek().is_some_and(|t| is_sign(&t.kind, sign));
        if here {
            self.advance();
        }
        here
    }

    fn eat_word(&mut self, words: &[&str]) -> bool {
        let here = self.peek_word().is_some_and(|word| words.contains(&word));
        if here {
            self.advance();
        }
        here
    }

    /// A number, if one stands here.
    pub(super) fn number_here(&mut self) -> Option<f64> {
        let Kind::Number { value, comma } = self.peek()?.kind else { return None };
        if comma {
            self.remark(Remark::DecimalComma);
        }
        self.advance();
        Some(value)
    }

    pub(super) fn number_follows(&self) -> bool {
        matches!(self.peek(), Some(Token { kind: Kind::Number { .. }, .. }))
    }

    fn skip_fillers(&mut self) {
        loop {
            if self.eat(Sign::About) || self.eat_word(&["ABOUT", "APPROX", "CA"]) {
                self.remark(Remark::Approximate);
            } else if !self.eat_word(&FILLERS) {
                return;
            }
        }
    }

    fn side(&mut self) -> Option<Side> {
        if self.eat(Sign::AtLeast) {
            Some(Side::AtLeast)
        } else if self.eat(Sign::AtMost) {
            Some(Side::AtMost)
        } else if self.eat_word(&["MIN", "MINIMUM", "OVER", "ABOVE"]) {
            Some(Side::AtLeast)
        } else if self.eat_word(&["MAX", "MAXIMUM", "UNDER", "BELOW"]) {
            Some(Side::AtMost)
        } else {
            self.side_in_two_words()
        }
    }

    /// "at least", "or better", "not less than".
    fn side_in_two_words(&mut self) -> Option<Side> {
        let before = self.mark();
        let turned = self.eat_word(&["AT", "NOT", "NO"]);
        if turned || self.eat_word(&["OR", "AND"]) {
            let more = self.eat_word(&MORE);
            if more || self.eat_word(&LESS) {
                self.eat_word(&["THAN"]);
                self.remark(Remark::LimitStyle);
                return Some(if more == turned { Side::AtMost } else { Side::AtLeast });
            }
        }
        self.back_to(before);
        None
    }

    fn designation(&mut self) -> Result<Designation, Error> {
        self.eat(Sign::Open);
        self.skip_fillers();
        let from = self.eat_word(&["FROM"]);
        self.between = !from && self.has_word("AND") && self.eat_word(&["BETWEEN"]);
        if from || self.between {
            self.remark(Remark::RangeStyle);
        }
        let signed = self
            .peek()
            .is_some_and(|t| is_sign(&t.kind, Sign::AtLeast) || is_sign(&t.kind, Sign::AtMost));
        let mut side = self.side();
        if side.is_some() && !signed {
            self.remark(Remark::LimitStyle);
        }
        let mut amount = self.amount()?;
        let glued_unit = self.peek().is_some_and(|t| t.glued);
        self.skip_fillers();
        let mut unit = self.unit(amount.is_some())?;
        if amount.is_some() && unit.is_some() && glued_unit {
            self.remark(Remark::SpaceMissing);
        }
        self.skip_fillers();
        if amount.is_none() {
            if unit.is_none() {
                return Err(self.nothing_readable());
            }
            let before = self.side();
            if before.is_some() {
                self.remark(Remark::LimitStyle);
            }
            side = side.or(before);
            self.skip_label_dash();
            amount = self.amount()?;
            if amount.is_some() {
                self.remark(Remark::SymbolFirst);
            }
        }
        let Some(mut amount) = amount else { return Err(Error::NoNumber) };
        if unit.is_none() {
            // "28 min HRC" is as clear as "28 HRC min".
            if let Some(found) = self.side() {
                self.remark(Remark::LimitStyle);
                side = side.or(Some(found));
                unit = self.unit(true)?;
            }
        }
        let Some(unit) = unit else { return Err(self.no_unit(amount)) };
        if side.is_none() {
            side = self.side();
        }
        amount = self.second_end(amount, &unit)?;
        if from && side.is_none() && matches!(amount, Amount::Single(_)) {
            side = Some(Side::AtLeast);
        }
        self.finish(side, amount, unit)
    }

    /// Puts the pieces together and checks the numbers against the scale.
    fn finish(
        &mut self,
        side: Option<Side>,
        mut amount: Amount,
        unit: UnitRead,
    ) -> Result<Designation, Error> {
        let Some(axis) = unit.axis else { return Err(Error::NoScale) };
        self.skip_fillers();
        self.refuse_the_rest(axis, amount)?;
        match (side, amount) {
            (None, _) => {}
            (Some(Side::AtLeast), Amount::Single(v)) => amount = Amount::AtLeast(v),
            (Some(Side::AtMost), Amount::Single(v)) => amount = Amount::AtMost(v),
            (Some(_), other) => {
                let (low, high) = other.limits();
                return Err(Error::TwoNumbers(low.unwrap_or(0.0), high.unwrap_or(0.0)));
            }
        }
        if unit.ksi {
            amount = amount.map(|v| v * Megapascals::PER_KSI);
        }
        if let Amount::Range { low, high } = amount
            && low > high
        {
            return Err(Error::Backward(low, high));
        }
        let (checked, also) = match amount {
            Amount::Single(v) | Amount::AtLeast(v) | Amount::AtMost(v) => (v, v),
            Amount::Range { low, high } => (low, high),
            // A tolerance may reach past the end of a scale; its nominal may not.
            Amount::Tolerance { nominal, .. } => (nominal, nominal),
        };
        for value in [checked, also] {
            Reading::new(axis, value).map_err(Error::Outside)?;
            match axis {
                Axis::Hardness(Scale::Hbw | Scale::Hbs) if value > 650.0 => {
                    self.remark(Remark::AboveBrinellLimit);
                }
                Axis::Hardness(Scale::Hrc) if value < 20.0 => {
                    self.remark(Remark::BelowVerifiedRockwellC);
                }
                _ => {}
            }
        }
        let UnitRead { ball, condition, leeb, .. } = unit;
        Ok(Designation { amount, axis, ball, condition, leeb, converted: None })
    }

    /// `58 HRC to 62 HRC`, `60 HRC ± 1`: the second end or the tolerance behind the first symbol.
    fn second_end(&mut self, amount: Amount, unit: &UnitRead) -> Result<Amount, Error> {
        let Amount::Single(first) = amount else { return Ok(amount) };
        if self.peek().is_some_and(|t| is_sign(&t.kind, Sign::Slash)) {
            return Ok(amount);
        }
        let before = self.mark();
        let amount = self.behind_number(first)?;
        if matches!(amount, Amount::Single(_)) {
            self.back_to(before);
            return Ok(amount);
        }
        self.remark(match amount {
            Amount::Range { .. } => Remark::RangeStyle,
            _ => Remark::LimitStyle,
        });
        let second = self.unit(true)?;
        match (unit.axis, second.and_then(|u| u.axis)) {
            (Some(first), Some(second)) if first != second => Err(Error::TwoScales(first, second)),
            _ => Ok(amount),
        }
    }

    /// `HRC-58` and `HRC - 58`: the dash belongs to the label; `HRC -58` is a negative number.
    fn skip_label_dash(&mut self) {
        let dash = self.peek().filter(|t| is_sign(&t.kind, Sign::Dash)).map(|t| t.glued);
        let number = self.peek_at(1).filter(|t| matches!(t.kind, Kind::Number { .. }));
        if let (Some(dash), Some(number)) = (dash, number.map(|t| t.glued))
            && (dash || !number)
        {
            self.advance();
            self.remark(Remark::SymbolFirst);
        }
    }

    /// The number part: single, range or tolerance.
    fn amount(&mut self) -> Result<Option<Amount>, Error> {
        if self.peek().is_some_and(|t| is_sign(&t.kind, Sign::Dash)) {
            return Err(Error::Negative);
        }
        if self.superficial_here().is_some() {
            return Ok(None);
        }
        let Some(first) = self.grouped_number() else { return Ok(None) };
        self.behind_number(first).map(Some)
    }

    /// A number; thousands set apart are read where a strength is meant, which is never 1.2 MPa:
    /// `1 200 MPa`, `1,200 MPa`.
    fn grouped_number(&mut self) -> Option<f64> {
        let (one, three) = (self.peek()?.clone(), self.peek_at(1).cloned());
        let strength = self.has_word("MPA") || (self.has_word("N") && self.has_word("MM"));
        let digits = |text: &str| text.len() == 3 && text.bytes().all(|b| b.is_ascii_digit());
        if strength && let Kind::Number { value, .. } = one.kind {
            let joined = one.text.split_once([',', '.']);
            if joined.is_some_and(|(thousands, rest)| thousands.len() == 1 && digits(rest)) {
                self.advance();
                return Some(libm::rint(value * 1000.0));
            }
            if let Some(Token { kind: Kind::Number { value: rest, .. }, text, .. }) = three
                && one.text.len() == 1
                && digits(&text)
            {
                self.advance();
                self.advance();
                return Some(value * 1000.0 + rest);
            }
        }
        self.number_here()
    }

    /// What follows a first number: the other end, a tolerance, or nothing.
    fn behind_number(&mut self, first: f64) -> Result<Amount, Error> {
        let before = self.mark();
        let glued = self.peek().is_some_and(|t| t.glued);
        if self.eat(Sign::PlusMinus) {
            let width = self.number_here().ok_or(Error::NoNumber)?;
            return Ok(Amount::Tolerance { nominal: first, minus: width, plus: width });
        }
        let dash = self.peek().is_some_and(|t| is_sign(&t.kind, Sign::Dash));
        let loose = self
            .peek()
            .is_some_and(|t| is_sign(&t.kind, Sign::Dots) || is_sign(&t.kind, Sign::About));
        if self.eat(Sign::Dash)
            || self.eat(Sign::Dots)
            || self.eat(Sign::About)
            || self.eat_word(&TO)
            || (self.between && self.eat_word(&["AND"]))
        {
            if self.peek().is_some_and(|t| is_sign(&t.kind, Sign::Dash)) {
                return Err(Error::Negative);
            }
            let signed = dash && !glued && self.peek_glued_number().is_some();
            if let Some(second) = self.grouped_number() {
                // `60 -2 HRC`: a sign of its own, and far too small for the other end of a range.
                if signed && second * 4.0 < first {
                    self.remark(Remark::LimitStyle);
                    return Ok(Amount::Tolerance { nominal: first, minus: second, plus: 0.0 });
                }
                if (glued && dash) || loose {
                    self.remark(Remark::RangeStyle);
                }
                return Ok(Amount::Range { low: first, high: second });
            }
            self.back_to(before);
            return Ok(Amount::Single(first));
        }
        if self.eat(Sign::Slash) {
            let Some(second) = self.number_here() else {
                self.back_to(before);
                return Ok(Amount::Single(first));
            };
            return Err(Error::SlashRange(first, second));
        }
        if self.eat(Sign::Plus) {
            let Some(plus) = self.number_here() else {
                self.remark(Remark::LimitStyle);
                return Ok(Amount::AtLeast(first));
            };
            let slash = self.eat(Sign::Slash);
            let dash = self.eat(Sign::Dash);
            let minus = if slash || dash { self.number_here() } else { None };
            if !slash || minus.is_none() || dash {
                self.remark(Remark::LimitStyle);
            }
            let minus = minus.unwrap_or(0.0);
            return Ok(Amount::Tolerance { nominal: first, minus, plus });
        }
        Ok(Amount::Single(first))
    }

    /// Anything left over is a second reading, a second number or a word nobody knows.
    fn refuse_the_rest(&mut self, axis: Axis, amount: Amount) -> Result<(), Error> {
        let first = amount.limits();
        let first = first.0.or(first.1).unwrap_or(0.0);
        while self.peek().is_some_and(|t| matches!(t.kind, Kind::Sign(_))) {
            self.advance();
        }
        let Some(token) = self.peek().cloned() else { return Ok(()) };
        let second = self.number_here();
        let read = self.unit(second.is_some())?;
        match (read.and_then(|u| u.axis), second) {
            (Some(other), _) if other != axis => Err(Error::TwoScales(axis, other)),
            (_, Some(second)) => Err(Error::TwoNumbers(first, second)),
            _ => Err(Error::UnknownScale(token.text)),
        }
    }

    fn no_unit(&mut self, amount: Amount) -> Error {
        match self.peek() {
            Some(Token { kind: Kind::Word(_), text, .. }) => Error::UnknownScale(text.clone()),
            Some(Token { kind: Kind::Number { value, .. }, .. }) => {
                let (low, high) = amount.limits();
                Error::TwoNumbers(low.or(high).unwrap_or(0.0), *value)
            }
            _ => Error::NoScale,
        }
    }

    fn nothing_readable(&self) -> Error {
        match self.peek() {
            Some(Token { kind: Kind::Word(_), text, .. })
                if self.tokens.iter().any(|t| matches!(t.kind, Kind::Number { .. })) =>
            {
                Error::UnknownScale(text.clone())
            }
            _ => Error::NoNumber,
        }
    }
}

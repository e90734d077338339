//! Text into tokens: numbers, words and signs, each knowing whether a space stood before it.

use alloc::borrow::ToOwned;
use alloc::string::String;
use alloc::vec::Vec;

use super::Error;

/// No designation is longer; a longer text is something else pasted by mistake.
const LONGEST: usize = 200;
/// No reading has more digits.
const MOST_DIGITS: usize = 12;

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Sign {
    Dash,
    Dots,
    PlusMinus,
    Plus,
    Slash,
    Open,
    Close,
    AtLeast,
    AtMost,
    About,
}

#[derive(Clone, Debug, PartialEq)]
pub(super) enum Kind {
    Number {
        value: f64,
        comma: bool,
    },
    /// In upper case.
    Word(String),
    Sign(Sign),
}

#[derive(Clone, Debug, PartialEq)]
pub(super) struct Token {
    pub(super) kind: Kind,
    /// No space stood before it.
    pub(super) glued: bool,
    /// As written.
    pub(super) text: String,
}

/// One character to come and the rest, without slicing by computed places.
struct Reader<'a> {
    rest: &'a str,
}

impl<'a> Reader<'a> {
    fn peek(&self) -> Option<char> {
        self.rest.chars().next()
    }

    fn second(&self) -> Option<char> {
        self.rest.chars().nth(1)
    }

    fn take_while(&mut self, wanted: impl Fn(char) -> bool) -> &'a str {
        let end = self.rest.find(|c| !wanted(c)).unwrap_or(self.rest.len());
        let (taken, rest) = self.rest.split_at_checked(end).unwrap_or((self.rest, ""));
        self.rest = rest;
        taken
    }

    fn eat(&mut self, prefix: &str) -> bool {
        self.rest.strip_prefix(prefix).map(|rest| self.rest = rest).is_some()
    }
}

/// Signs by every way of typing them, longest first.
const SIGNS: [(&str, Sign); 22] = [
    ("+/-", Sign::PlusMinus),
    ("+-", Sign::PlusMinus),
    ("±", Sign::PlusMinus),
    (">=", Sign::AtLeast),
    ("=>", Sign::AtLeast),
    ("≥", Sign::AtLeast),
    (">", Sign::AtLeast),
    ("<=", Sign::AtMost),
    ("=<", Sign::AtMost),
    ("≤", Sign::AtMost),
    ("<", Sign::AtMost),
    ("...", Sign::Dots),
    ("..", Sign::Dots),
    ("…", Sign::Dots),
    ("-", Sign::Dash),
    ("–", Sign::Dash),
    ("—", Sign::Dash),
    ("−", Sign::Dash),
    ("+", Sign::Plus),
    ("/", Sign::Slash),
    ("(", Sign::Open),
    (")", Sign::Close),
];

pub(super) fn tokens(text: &str) -> Result<Vec<Token>, Error> {
    if text.trim().is_empty() {
        return Err(Error::Empty);
    }
    if text.len() > LONGEST {
        return Err(Error::TooLong);
    }
    let mut reader = Reader { rest: text };
    let mut found = Vec::new();
    while let Some(next) = reader.peek() {
        let spaced = !reader.take_while(char::is_whitespace).is_empty();
        let before = reader.rest;
        let Some(first) = reader.peek() else { break };
        let kind = if first.is_ascii_digit() {
            number(&mut reader)?
        } else if first.is_alphabetic() {
            Kind::Word(reader.take_while(char::is_alphabetic).to_uppercase())
        } else if reader.eat("~") || reader.eat("≈") {
            Kind::Sign(Sign::About)
        } else if reader.eat("²") {
            // The raised two of N/mm² is a two like any other.
            Kind::Number { value: 2.0, comma: false }
        } else if let Some(&(_, sign)) = SIGNS.iter().find(|(typed, _)| reader.eat(typed)) {
            Kind::Sign(sign)
        } else if next == '.' && reader.second().is_none() {
            // A full stop at the end of a sentence says nothing.
            break;
        } else {
            return Err(Error::UnknownScale(first.to_lowercase().collect()));
        };
        let length = before.len().saturating_sub(reader.rest.len());
        let text = before.get(..length).unwrap_or_default().to_owned();
        found.push(Token { kind, glued: !spaced && !found.is_empty(), text });
    }
    Ok(found)
}

fn number(reader: &mut Reader<'_>) -> Result<Kind, Error> {
    let mut text = String::from(reader.take_while(|c| c.is_ascii_digit()));
    let mut comma = false;
    if let (Some(point @ ('.' | ',')), Some('0'..='9')) = (reader.peek(), reader.second()) {
        comma = point == ',';
        reader.eat(if comma { "," } else { "." });
        text.push('.');
        text.push_str(reader.take_while(|c| c.is_ascii_digit()));
    }
    if text.len() > MOST_DIGITS {
        return Err(Error::NumberTooLong);
    }
    match text.parse::<f64>() {
        Ok(value) if value.is_finite() => Ok(Kind::Number { value, comma }),
        _ => Err(Error::NumberTooLong),
    }
}

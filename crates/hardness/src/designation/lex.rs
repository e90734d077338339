//! Text into tokens: numbers, words and signs, each knowing whether a space stood before it.

use alloc::borrow::ToOwned;
use alloc::string::String;
use alloc::vec::Vec;

use super::Error;
use crate::decimal::decimal;

/// No designation is longer; a longer text is something else pasted by mistake.
const LONGEST: usize = 200;

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

    fn eat_if(&mut self, wanted: impl Fn(char) -> bool) -> bool {
        let rest = self.rest.strip_prefix(wanted);
        rest.map(|rest| self.rest = rest).is_some()
    }

    /// A full stop, comma or the like at the end of the text says nothing.
    fn eat_end(&mut self) -> bool {
        let at_end =
            self.rest.chars().all(|c| matches!(c, '.' | ',' | ';' | '!') || c.is_whitespace());
        if at_end {
            self.rest = "";
        }
        at_end
    }

    fn eat(&mut self, prefix: &str) -> bool {
        self.rest.strip_prefix(prefix).map(|rest| self.rest = rest).is_some()
    }
}

/// Signs that set off a label, a quotation or a power and change nothing: `HRC: 58`, `"58 HRC"`,
/// `N/mm^2`.
const SILENT: [char; 9] = [':', '=', '"', '\'', '“', '”', '«', '»', '^'];

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
    let mut spaced = false;
    while !reader.rest.is_empty() {
        spaced |= !reader.take_while(char::is_whitespace).is_empty();
        let before = reader.rest;
        let Some(first) = reader.peek() else { break };
        let kind = if first.is_ascii_digit() {
            number(&mut reader)?
        } else if is_letter(first) {
            Kind::Word(reader.take_while(is_letter).to_ascii_uppercase())
        } else if reader.eat("~") || reader.eat("≈") {
            Kind::Sign(Sign::About)
        } else if reader.eat("²") {
            // The raised two of N/mm² is a two like any other.
            Kind::Number { value: 2.0, comma: false }
        } else if let Some(&(_, sign)) = SIGNS.iter().find(|(typed, _)| reader.eat(typed)) {
            Kind::Sign(sign)
        } else if reader.eat_if(|c| SILENT.contains(&c))
            || (after_word(&found) && reader.eat("."))
            || reader.eat_end()
        {
            continue;
        } else {
            return Err(Error::UnknownScale(String::from(first)));
        };
        let length = before.len().saturating_sub(reader.rest.len());
        let text = before.get(..length).unwrap_or_default().to_owned();
        found.push(Token { kind, glued: !spaced && !found.is_empty(), text });
        spaced = false;
    }
    Ok(found)
}

/// A letter of a word: any letter without accents, and any foreign sign that is not one of ours; no
/// symbol has accents, so how capital and small ones of these pair does not matter.
fn is_letter(c: char) -> bool {
    let of_ours = || {
        SIGNS.iter().any(|(typed, _)| typed.contains(c))
            || SILENT.contains(&c)
            || c == '≈'
            || c == '²'
    };
    c.is_ascii_alphabetic() || (!c.is_ascii() && !c.is_whitespace() && !of_ours())
}

/// Whether the last token is a word, whose full stop marks an abbreviation (`max.`, `approx.`).
fn after_word(found: &[Token]) -> bool {
    found.last().is_some_and(|t| matches!(t.kind, Kind::Word(_)))
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
    let value = decimal(&text).ok_or(Error::NumberTooLong)?;
    Ok(Kind::Number { value, comma })
}

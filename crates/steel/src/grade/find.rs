//! From what a person writes to a grade.

use alloc::string::String;
use alloc::vec::Vec;
use core::fmt;

use super::nearest::nearest;
use super::spelling::{plain, within};
use super::{Designation, Family, Grade, System};
use crate::condition::{self, BsCondition};

/// How the name was recognised.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum How {
    /// As it stands in the data, apart from capital letters.
    Exact,
    /// In another spelling, or with the name of its system before it or a word behind it.
    Spelling,
}

impl How {
    /// Stable name for JSON.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Exact => "exact",
            Self::Spelling => "spelling",
        }
    }
}

/// A grade found by a name.
#[derive(Clone, Debug)]
pub struct Found {
    /// The grade.
    pub grade: &'static Grade,
    /// The designation that was recognised, with its system, closeness, note and source.
    pub designation: &'static Designation,
    /// How it was recognised.
    pub how: How,
    /// The condition that a British letter behind the name states, as the T of `EN24T`.
    pub condition: Option<&'static BsCondition>,
    /// Designations of other grades that the name can also mean. When there are any, the name is
    /// ambiguous and the paper has to say which.
    pub candidates: Vec<&'static Designation>,
}

/// Why no grade was found.
#[derive(Clone, Debug)]
pub enum Error {
    /// Nothing was written.
    Empty,
    /// No designation is this one.
    Unknown {
        /// The three nearest designations, nearest first, of three grades. None of them is meant by
        /// itself: a wrong figure is a different steel.
        nearest: Vec<&'static Designation>,
    },
}

impl Error {
    /// Stable name for JSON, tests and support.
    #[must_use]
    pub const fn code(&self) -> &'static str {
        match self {
            Self::Empty => "steel.no_grade",
            Self::Unknown { .. } => "steel.unknown_grade",
        }
    }
}

impl fmt::Display for Error {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => f.write_str("no grade is named"),
            Self::Unknown { nearest } => {
                f.write_str("no grade has this name; the nearest are")?;
                for (place, one) in nearest.iter().enumerate() {
                    write!(f, "{}{}", if place == 0 { " " } else { ", " }, one.text())?;
                }
                Ok(())
            }
        }
    }
}

impl core::error::Error for Error {}

/// Words that stand before a designation, and the systems that they allow. Longer ones come first.
const BEFORE: &[(&str, &[System])] = &[
    ("AISISAE", &[System::AisiSae]),
    ("AISI", &[System::AisiSae]),
    ("SAE", &[System::AisiSae]),
    ("ASTM", &[System::AisiSae]),
    ("UNS", &[System::Uns]),
    ("BS970", &[System::Bs]),
    ("BS4659", &[System::Bs]),
    ("BS", &[System::Bs]),
    ("WERKSTOFFNUMMER", &[System::EnNumber]),
    ("WERKSTOFFNR", &[System::EnNumber]),
    ("WERKSTOFF", &[System::EnNumber]),
    ("MATERIALNUMBER", &[System::EnNumber]),
    ("MATNR", &[System::EnNumber]),
    ("WNR", &[System::EnNumber]),
    ("WNO", &[System::EnNumber]),
    ("DIN", &[System::EnName, System::EnNumber]),
    ("ENISO", &[System::EnName]),
    ("EN", &[System::EnName, System::EnNumber]),
    ("JIS", &[System::Jis]),
    ("GBT", &[System::Gb]),
    ("GB", &[System::Gb]),
    ("GRADE", System::ALL),
    ("TYPE", System::ALL),
];

/// Words that stand behind a designation, and the families that they allow.
const BEHIND: &[(&str, &[Family])] = &[
    ("TOOLSTEEL", &[Family::Tool]),
    ("STAINLESSSTEEL", &[Family::Stainless, Family::PhStainless]),
    ("STAINLESS", &[Family::Stainless, Family::PhStainless]),
    ("SPRINGSTEEL", &[Family::Carbon, Family::Alloy]),
    ("ALLOYSTEEL", &[Family::Alloy]),
    ("STEEL", Family::ALL),
];

/// Collects what a name can mean.
struct Readings {
    found: Vec<&'static Designation>,
}

impl Readings {
    fn add(&mut self, one: &'static Designation) {
        if !self.found.iter().any(|known| known.text == one.text) {
            self.found.push(one);
        }
    }

    /// Designations whose plain spelling is this, of the systems and families allowed.
    fn take(&mut self, name: &str, systems: &[System], families: &[Family]) {
        for one in Designation::all() {
            let allowed = systems.contains(&one.system) && families.contains(&one.grade().family());
            if allowed && plain(one.text) == name {
                self.add(one);
            }
        }
    }

    /// The same with the words that stand before a name taken off, and with a condition letter.
    fn take_with_prefix(&mut self, name: &str, families: &[Family]) {
        self.take(name, System::ALL, families);
        if let Some((bare, _)) = condition::split(name) {
            self.take(bare, &[System::Bs], families);
        }
        for (before, systems) in BEFORE {
            let Some(rest) = name.strip_prefix(before) else { continue };
            self.take(rest, systems, families);
            if let Some((bare, _)) = condition::split(rest)
                && systems.contains(&System::Bs)
            {
                self.take(bare, &[System::Bs], families);
            }
        }
    }
}

/// Everything that the name means in some spelling, the likeliest first.
fn readings(name: &str) -> Vec<&'static Designation> {
    let mut readings = Readings { found: Vec::new() };
    readings.take_with_prefix(name, Family::ALL);
    if !readings.found.is_empty() {
        return readings.found;
    }
    for (behind, families) in BEHIND {
        if let Some(rest) = name.strip_suffix(behind) {
            readings.take_with_prefix(rest, families);
        }
    }
    // Several bars of it.
    if readings.found.is_empty()
        && let Some(one) = name.strip_suffix('S')
    {
        readings.take(one, &[System::Shop], Family::ALL);
    }
    readings.found
}

/// Longer designations that hold the name as words of their own, and the British and German names of which
/// a bare number is the rest: `A2` is a tool steel and the name of a stainless, `45` is a Chinese grade, C45
/// and EN45.
fn also_meant(text: &str, name: &str) -> Vec<&'static Designation> {
    let mut readings = Readings { found: Vec::new() };
    for one in Designation::all() {
        if within(text, one.text) {
            readings.add(one);
        }
    }
    if name.len() <= 3 && name.bytes().all(|sign| sign.is_ascii_digit()) {
        for before in ["C", "EN"] {
            let longer = String::from(before) + name;
            readings.take(&longer, &[System::EnName, System::Bs], Family::ALL);
        }
    }
    readings.found
}

/// Finds a grade by any of its designations.
///
/// Capital letters, spaces, hyphens, points and commas do not matter; the name of the system may stand
/// before it (`AISI 4140`, `W.Nr. 1.7225`, `BS 970 EN19`), the word steel behind it, and a British condition
/// letter after it (`EN24T`). Anything else is not guessed.
///
/// # Errors
/// [`Error::Unknown`] with the three nearest designations, [`Error::Empty`].
///
/// # Example
/// ```
/// use biteband_steel::grade::{Closeness, Error, find};
/// assert_eq!(find("1,7225")?.grade.key(), "42CrMo4");
/// assert_eq!(find("42 crmo 4")?.grade.key(), "42CrMo4");
/// assert_eq!(find("EN 19")?.grade.key(), "EN19");
///
/// let hardened = find("EN24T")?;
/// assert_eq!(hardened.condition.map(|condition| condition.letter()), Some('T'));
///
/// // The name of two steels says so.
/// let named_twice = find("A2")?;
/// assert_eq!(named_twice.candidates.first().map(|other| other.grade().key()), Some("304"));
///
/// // A wrong figure is a different steel.
/// let Err(Error::Unknown { nearest }) = find("4041") else { panic!() };
/// assert_eq!(nearest.first().map(|one| one.text()), Some("4140"));
/// # Ok::<(), Error>(())
/// ```
pub fn find(text: &str) -> Result<Found, Error> {
    let text = text.trim();
    let name = plain(text);
    if name.is_empty() {
        return Err(Error::Empty);
    }
    let exact = Designation::all().iter().find(|one| one.text.eq_ignore_ascii_case(text));
    let mut all = Vec::new();
    all.extend(exact);
    if exact.is_none() {
        all = readings(&name);
    }
    let Some(designation) = all.first().copied() else {
        return Err(Error::Unknown { nearest: nearest(text) });
    };
    all.extend(also_meant(text, &name));
    let mut candidates: Vec<&'static Designation> = Vec::new();
    for one in all {
        let known = |other: &&Designation| other.grade() == one.grade();
        if one.grade() != designation.grade() && !candidates.iter().any(known) {
            candidates.push(one);
        }
    }
    Ok(Found {
        grade: designation.grade(),
        designation,
        how: if exact.is_some() { How::Exact } else { How::Spelling },
        condition: condition::split(name.strip_suffix("STEEL").unwrap_or(&name))
            .and_then(|(_, letter)| condition::bs(letter)),
        candidates,
    })
}

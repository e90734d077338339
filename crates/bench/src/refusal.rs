//! A refusal as it reaches the person: what, the range, why and the way out.

use biteband_evidence as evidence;
use biteband_hardness::{Axis, Choice, Error, Material, Reading, Scale, designation, spans};
use biteband_quantity::{Shown, sort_by_number};
use serde::Serialize;

use crate::format;
use crate::words::{Language, Phrase};

/// Why there is no answer, and what to do instead.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Refusal {
    /// Stable name.
    pub code: &'static str,
    /// What is wrong, in one or two sentences.
    pub message: String,
    /// What was given, as far as it was understood.
    pub given: String,
    /// What would be accepted.
    pub allowed: String,
    /// The way out.
    pub instead: String,
}

impl Refusal {
    pub(crate) fn new(
        code: &'static str,
        message: impl Into<String>,
        given: impl Into<String>,
        allowed: impl Into<String>,
        instead: impl Into<String>,
    ) -> Self {
        Self {
            code,
            message: message.into(),
            given: given.into(),
            allowed: allowed.into(),
            instead: instead.into(),
        }
    }

    /// From a text that is no hardness.
    #[must_use]
    pub fn of_designation(language: Language, text: &str, error: &designation::Error) -> Self {
        if let designation::Error::Outside(inner) = error {
            return Self { given: text.trim().to_owned(), ..Self::of_hardness(language, inner) };
        }
        Self::new(
            error.code(),
            language.say(Phrase::DesignationRefused(error)),
            format::shortened(text),
            "52 HRC, 38-42 HRC, 640 HV 30, 350 HBW 10/3000, HV 700 +-50, 28 HRC min, 900 MPa",
            language.say(Phrase::DesignationInstead(error)),
        )
    }

    /// From a conversion that no table allows.
    #[must_use]
    #[expect(clippy::too_many_lines, reason = "one arm for each refusal, none of them long")]
    pub fn of_hardness(language: Language, error: &Error) -> Self {
        let code = error.code();
        match *error {
            Error::NotANumber { axis } => Self::new(
                code,
                language.say(Phrase::NotANumber),
                axis.symbol(),
                "",
                language.say(Phrase::NotANumberInstead),
            ),
            Error::OutsideScale { scale, given } => {
                let axis = Axis::Hardness(scale);
                let (low, high) = scale.range();
                let given = format::exact_with_unit(axis, given);
                let (low, high) = (format::exact(low), format::exact(high));
                Self::new(
                    code,
                    language.say(Phrase::OutsideScale { given: &given, low: &low, high: &high }),
                    given.clone(),
                    format!("{low} to {high} {}", scale.symbol()),
                    language.say(Phrase::OutsideScaleInstead(scale)),
                )
            }
            Error::Strength(inner) => Self::new(
                code,
                format!("{inner}."),
                format!("{} {}", Shown(inner.given), inner.bounds.symbol),
                format!(
                    "{} to {} {}",
                    Shown(inner.bounds.min),
                    Shown(inner.bounds.max),
                    inner.bounds.symbol
                ),
                language.say(Phrase::OutsideScaleInstead(Scale::Hbw)),
            ),
            Error::SameAxis { axis } => Self::new(
                code,
                language.say(Phrase::SameScale(axis)),
                axis.symbol(),
                "",
                language.say(Phrase::SameScaleInstead),
            ),
            Error::Material { material } => Self::of_material(language, material),
            Error::NoTable { from, to, choice: Choice { only: Some(table), .. } } => Self::new(
                code,
                language.say(Phrase::NotInTable { from, to, table }),
                format!("{} to {}", from.symbol(), to.symbol()),
                "",
                language.say(Phrase::NotInTableInstead),
            ),
            Error::NoTable { from, to, choice } => Self::new(
                code,
                language.say(Phrase::NoTable { from, to, material: choice.material }),
                format!("{} to {}", from.symbol(), to.symbol()),
                "",
                language.say(Phrase::NoTableInstead { from, material: choice.material }),
            ),
            Error::OutsideTables { from, given, to, nearest, choice } => {
                let given = format::exact_with_unit(from, given);
                let end = format::converted_with_unit(from, nearest.value);
                let becomes = format::converted_with_unit(to, nearest.becomes);
                let mut message = language.say(Phrase::OutsideTables {
                    given: &given,
                    to,
                    end: &end,
                    becomes: &becomes,
                    table: nearest.table,
                    above: nearest.above,
                });
                if let Some((at, says)) = last_agreed(from, to, nearest.above, choice) {
                    let message = message.to_mut();
                    message.push(' ');
                    message.push_str(&language.say(Phrase::LastAgreed { at: &at, says: &says }));
                }
                Self::new(
                    code,
                    message,
                    given,
                    allowed(from, to, choice),
                    language.say(Phrase::OutsideTablesInstead {
                        from,
                        to,
                        above: nearest.above,
                        material: choice.material,
                    }),
                )
            }
            Error::Backward { axis, low, high } => {
                let (low_text, high_text) = (format::exact(low), format::exact(high));
                Self::new(
                    code,
                    language.say(Phrase::BackwardRange { low: &low_text, high: &high_text }),
                    format!("{low_text} to {high_text} {}", axis.unit()),
                    "",
                    language.say(Phrase::BackwardRangeInstead { low: &high_text, high: &low_text }),
                )
            }
            Error::NoLimit { axis } => {
                Self::new(code, language.say(Phrase::NoLimit), axis.symbol(), "", "")
            }
            Error::NoSingleTable { from, low, high, to, choice } => {
                let (low, high) =
                    (format::exact_with_unit(from, low), format::exact_with_unit(from, high));
                Self::new(
                    code,
                    language.say(Phrase::NoSingleTable { low: &low, high: &high, to }),
                    format!("{low} to {high}"),
                    allowed(from, to, choice),
                    language.say(Phrase::NoSingleTableInstead),
                )
            }
        }
    }

    /// From a class of materials that has no table here.
    #[must_use]
    pub fn of_material(language: Language, material: Material) -> Self {
        let known: Vec<&str> =
            Material::ALL.into_iter().filter(|m| m.has_tables()).map(Material::key).collect();
        Self::new(
            "bench.no_material",
            language.say(Phrase::NoMaterial(material)),
            material.key(),
            known.join(", "),
            language.say(Phrase::NoMaterialInstead(material)),
        )
    }

    /// From a question about file strokes that makes no sense.
    #[must_use]
    pub fn of_evidence(language: Language, error: &evidence::Error) -> Self {
        let (given, allowed) = match error {
            evidence::Error::OutOfRange { given, min, max, .. } => {
                (format::exact(*given), format!("{} to {}", Shown(*min), Shown(*max)))
            }
            _ => (String::new(), String::new()),
        };
        Self::new(
            error.code(),
            language.say(Phrase::Evidence(error)),
            given,
            allowed,
            language.say(Phrase::EvidenceInstead(error)),
        )
    }
}

/// "20 to 68 HRC (E140 T1), 20.3 to 68 HRC (ISO A.1)".
fn allowed(from: Axis, to: Axis, choice: Choice) -> String {
    let list: Vec<String> = spans(from, to, choice)
        .filter_map(|(id, span)| {
            let low = format::plain(span.low.0);
            let high = format::plain(span.high.0);
            Some(format!("{low} to {high} {} ({})", from.unit(), id.get()?.short()))
        })
        .collect();
    list.join(", ")
}

/// The last value on the refused side that two tables still hold, and what they say there.
fn last_agreed(from: Axis, to: Axis, above: bool, choice: Choice) -> Option<(String, String)> {
    let mut ends: Vec<f64> = spans(from, to, choice)
        .map(|(_, span)| if above { span.high.0 } else { span.low.0 })
        .collect();
    sort_by_number(&mut ends, |end| *end);
    if above {
        ends.reverse();
    }
    let at = *ends.get(1)?;
    let reading = Reading::new(from, at).ok()?;
    let says: Vec<String> = spans(from, to, choice)
        .filter_map(|(id, _)| {
            let table = id.get()?;
            let there = table.convert(from, reading.value(), to)?;
            Some(format!("{} ({})", format::converted_with_unit(to, there.value), table.short()))
        })
        .collect();
    (says.len() > 1).then(|| (format::converted_with_unit(from, at), says.join(", ")))
}

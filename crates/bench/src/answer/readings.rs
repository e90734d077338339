//! Readings of instruments: how they are written, and what they become in HRC.

use biteband_evidence::{Group, Instrument, Readings};
use biteband_hardness::designation;
use biteband_hardness::{Axis, Scale, TableId};
use serde::{Deserialize, Serialize};

use super::frame::{Frame, Said};
use super::framed::{Framed, framed, listed};
use super::series::{Series, half_of, refuse, series};
use crate::format;
use crate::refusal::Refusal;
use crate::words::{Gauge, Language, Unreadable};

/// Readings of one instrument on one spot.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields, rename_all = "camelCase")]
pub struct ReadingInput {
    /// Stable name of the instrument; absent for the usual one of the scale.
    pub instrument: Option<String>,
    /// As written: `52, 53, 51.5 HRC`, `288 HBW +-8`, `640 HV 10 u=12`.
    pub text: String,
    /// For a comparison, the hardness of the known piece as written.
    pub known: Option<String>,
    /// For a comparison, the readings of that piece as written.
    pub on_known: Option<String>,
}

/// What readings were understood as.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct ReadingAnswer {
    /// Stable name of the instrument.
    pub instrument: &'static str,
    /// The numbers with their scale.
    pub understood: String,
    /// Each reading in HRC.
    pub hrc: Vec<f64>,
    /// Standard uncertainty of a single reading, HRC.
    pub u_random: f64,
    /// Standard uncertainty that all of them share, HRC.
    pub u_shared: f64,
    /// Standard uncertainty of the conversion, HRC; absent for readings in HRC.
    pub u_conversion: Option<f64>,
    /// Whether the uncertainty was taken from the kind of instrument; otherwise it was written.
    pub assumed: bool,
    /// Stable name of the table of the conversion.
    pub table: Option<&'static str>,
    /// In words, with the half-width at 95 %.
    pub shown: String,
    /// The readings in the working scale of a claim, whose axis is followed only so far.
    #[serde(skip)]
    pub(crate) raw: Vec<f64>,
    /// The readings lie beyond a table's end, above or below it: no more is known of them.
    #[serde(skip)]
    pub(crate) beyond: Option<bool>,
}

impl ReadingAnswer {
    /// The mean in HRC and the half-width at 95 % of all that is off, the spot apart.
    pub(crate) fn mean_and_half(&self) -> (f64, f64) {
        let count: f64 = self.hrc.iter().map(|_| 1.0).sum();
        let conversion = self.u_conversion.unwrap_or(0.0);
        let half = half_of(count, self.u_random, self.u_shared, conversion);
        (self.hrc.iter().sum::<f64>() / count, half)
    }
}

const HRC: Axis = Axis::Hardness(Scale::Hrc);
/// The least scatter of a reading that is believed, HRC.
const LEAST_RANDOM: f64 = 0.1;
/// Where Rockwell scales end.
const HIGHEST_ROCKWELL: f64 = 100.0;
/// Standard uncertainty of a known piece where none is written, HRC: that of a tester which is checked weekly; assumed.
const KNOWN_SD: f64 = 0.5;
/// Below this force a Vickers test counts as light, kgf (ISO 6507-1, recalled: low-force Vickers is below HV5).
const LIGHT_KGF: f64 = 5.0;

/// The instrument that is offered first.
pub(crate) const DEFAULT_INSTRUMENT: &str = "bench-rockwell-unverified";

/// Every instrument by its stable name, in the order in which they are offered.
pub(crate) const INSTRUMENTS: [(&str, Instrument); 11] = [
    (DEFAULT_INSTRUMENT, Instrument::RockwellUnverified),
    ("bench-rockwell-verified", Instrument::RockwellVerified),
    ("bench-rockwell-ball", Instrument::RockwellBall),
    ("bench-vickers", Instrument::Vickers),
    ("bench-vickers-light", Instrument::VickersLight),
    ("bench-brinell", Instrument::Brinell),
    ("brinell-scope", Instrument::BrinellScope),
    ("portable-leeb", Instrument::Leeb),
    ("ultrasonic", Instrument::Ultrasonic),
    ("comparison", Instrument::Comparison),
    ("other", Instrument::Other),
];

/// The name that means the usual instrument of the scale.
const USUAL: &str = "bench";

fn key(instrument: Instrument) -> &'static str {
    INSTRUMENTS.iter().find(|(_, own)| *own == instrument).map_or("", |(key, _)| key)
}

fn instrument(language: Language, name: &str) -> Result<Option<Instrument>, Refusal> {
    let name = name.trim().to_ascii_lowercase();
    if name.is_empty() || name == USUAL {
        return Ok(None);
    }
    let found = INSTRUMENTS.iter().find(|(key, _)| *key == name);
    found.map(|(_, instrument)| Some(*instrument)).ok_or_else(|| {
        let given = format::shortened(&name);
        let allowed: Vec<&str> = INSTRUMENTS.iter().map(|(key, _)| *key).collect();
        Refusal {
            allowed: allowed.join(", "),
            ..refuse(
                language,
                "bench.unknown_instrument",
                &name,
                Unreadable::Instrument { given: &given },
            )
        }
    })
}

/// Reads `52 HRC`, `portable-leeb: 52, 53 HRC` and `comparison: 53; 50 HRC +-1; 47, 49`.
///
/// # Errors
/// A refusal when what stands before a colon is no instrument. The numbers are read with the question.
///
/// # Example
/// ```
/// use biteband_bench::answer::parse_reading;
/// use biteband_bench::words::Language;
/// let read = parse_reading(Language::English, "ultrasonic: 640 HV").unwrap();
/// assert_eq!((read.instrument.as_deref(), read.text.as_str()), (Some("ultrasonic"), "640 HV"));
/// ```
pub fn parse_reading(language: Language, text: &str) -> Result<ReadingInput, Refusal> {
    match text.split_once(':') {
        // "HRC: 58" is a way of writing a hardness.
        Some((name, rest)) if Axis::find(name).is_none() => {
            instrument(language, name)?;
            Ok(ReadingInput::written(name.trim(), rest.trim()))
        }
        _ => Ok(ReadingInput::written("", text)),
    }
}

impl ReadingInput {
    /// A text for an instrument; that of a comparison has the known piece and its readings behind semicolons.
    #[must_use]
    pub fn written(instrument: &str, text: &str) -> Self {
        let comparison = instrument.eq_ignore_ascii_case(key(Instrument::Comparison));
        let mut parts = text.splitn(if comparison { 3 } else { 1 }, ';').map(str::to_owned);
        Self {
            instrument: (!instrument.is_empty()).then(|| instrument.to_owned()),
            text: parts.next().unwrap_or_default(),
            known: parts.next(),
            on_known: parts.next(),
        }
    }
}

/// The scale of a bare number of the instrument.
const fn usual_scale(instrument: Instrument) -> Axis {
    Axis::Hardness(match instrument {
        Instrument::RockwellBall => Scale::Hrb,
        Instrument::Vickers | Instrument::VickersLight | Instrument::Ultrasonic => Scale::Hv,
        Instrument::Brinell | Instrument::BrinellScope => Scale::Hbw,
        _ => Scale::Hrc,
    })
}

/// What a number in this scale was most likely read with on a bench.
const fn usual_instrument(scale: Scale) -> Instrument {
    match scale {
        Scale::Hv => Instrument::Vickers,
        Scale::Hk => Instrument::VickersLight,
        Scale::HvUci => Instrument::Ultrasonic,
        Scale::Hbw | Scale::Hbs | Scale::Hbw500 => Instrument::Brinell,
        _ if scale.is_diamond_rockwell() => Instrument::RockwellUnverified,
        _ if scale.is_ball_rockwell() => Instrument::RockwellBall,
        _ => Instrument::Other,
    }
}

/// Whether the instrument reads the scale; portable ones show whatever they are set to.
fn reads(instrument: Instrument, scale: Scale) -> bool {
    let usual = usual_instrument(scale);
    match instrument {
        Instrument::Leeb | Instrument::Comparison | Instrument::Other => true,
        Instrument::RockwellVerified => usual == Instrument::RockwellUnverified,
        Instrument::BrinellScope => usual == Instrument::Brinell,
        Instrument::VickersLight | Instrument::Ultrasonic => {
            usual == instrument || usual == Instrument::Vickers
        }
        _ => usual == instrument,
    }
}

/// The instrument as named or as usual for what was written.
fn chosen(
    language: Language,
    named: Option<Instrument>,
    series: &Series,
    text: &str,
) -> Result<Instrument, Refusal> {
    let Axis::Hardness(scale) = series.axis else {
        return Err(refuse(language, "bench.reading_is_strength", text, Unreadable::Strength));
    };
    let instrument = named.unwrap_or_else(|| usual_instrument(scale));
    if !reads(instrument, scale) {
        let what = Unreadable::OtherScale { instrument, axis: series.axis };
        return Err(refuse(language, "bench.reading_in_other_scale", text, what));
    }
    let condition = series.written.as_ref().and_then(|written| written.condition);
    let light = condition.is_some_and(|condition| condition.force_kgf < LIGHT_KGF);
    Ok(if light && instrument == Instrument::Vickers {
        Instrument::VickersLight
    } else {
        instrument
    })
}

/// The readings of an entry as a group; those of a comparison against their known piece.
fn grouped(
    language: Language,
    input: &ReadingInput,
    instrument: Instrument,
    part: &Series,
    own: &Framed,
    (random, shared): (f64, f64),
    frame: &Frame,
) -> Result<Group, Refusal> {
    let text = input.text.as_str();
    let known = (input.known.as_deref(), input.on_known.as_deref());
    match (instrument, known) {
        (Instrument::Comparison, (Some(known), Some(on_known))) => {
            let series = |text: &str| {
                let found = series(language, text, Some(part.axis))?;
                if found.axis == part.axis {
                    return Ok(found);
                }
                let error = designation::Error::TwoScales(part.axis, found.axis);
                Err(Refusal::of_designation(language, text, &error))
            };
            let table = own.conversion.map(|(table, ..)| table);
            let piece = series(known)?;
            let known_sd = piece.given.map_or(KNOWN_SD, |given| given * own.slope.abs());
            let hardness = framed(language, &piece, table, frame)?;
            let [hardness] = hardness.values[..] else {
                return Err(refuse(
                    language,
                    "bench.reading_not_one_number",
                    known,
                    Unreadable::NotOneNumber,
                ));
            };
            let on_known = framed(language, &series(on_known)?, table, frame)?;
            Group::against(hardness, known_sd, &on_known.values, &own.values, random)
        }
        (Instrument::Comparison, _) => {
            return Err(refuse(
                language,
                "bench.known_piece_missing",
                text,
                Unreadable::KnownMissing,
            ));
        }
        (_, (None, None)) => {
            let group = Group::new(instrument, &own.values, random, shared);
            let tester = INSTRUMENTS.iter().position(|(_, own)| *own == instrument);
            // Several places that a claim was measured in are taken to be read on one tester of each kind.
            match tester.filter(|_| frame.is_claim()) {
                Some(tester) => {
                    group.map(|group| group.on_tester(u8::try_from(tester).unwrap_or(u8::MAX)))
                }
                None => group,
            }
        }
        _ => {
            return Err(refuse(
                language,
                "bench.known_piece_unwanted",
                text,
                Unreadable::KnownUnwanted,
            ));
        }
    }
    .map_err(|error| Refusal::of_evidence(language, &error))
}

/// One entry; `keys` are the conversions so far, since readings that came by the same one share its bias.
fn one(
    language: Language,
    input: &ReadingInput,
    keys: &mut Vec<(TableId, Axis)>,
    frame: &Frame,
) -> Result<(Group, ReadingAnswer), Refusal> {
    let text = input.text.as_str();
    let wrong = |error| Refusal::of_evidence(language, &error);
    let named = instrument(language, input.instrument.as_deref().unwrap_or_default())?;
    let mut part = series(language, text, named.map(usual_scale))?;
    // A bare number of a rebound tester that no Rockwell scale has is its own, which no table has.
    let beyond = part.values.iter().any(|&value| value > HIGHEST_ROCKWELL);
    if named == Some(Instrument::Leeb) && part.written.is_none() && beyond {
        part.axis = Axis::Hardness(Scale::Leeb);
    }
    let instrument = chosen(language, named, &part, text)?;
    let own = framed(language, &part, None, frame)?;
    let first = part.values.first().copied().unwrap_or_default();
    let (mut random, mut shared) = instrument.usual().in_hrc(first, own.slope);
    if let Some(given) = part.given {
        let more = given * own.slope.abs() / (random * random + shared * shared).sqrt();
        (random, shared) = (random * more, shared * more);
    }
    let random = random.max(LEAST_RANDOM);
    let group = grouped(language, input, instrument, &part, &own, (random, shared), frame)?;
    let group = match own.conversion {
        Some((table, axis, sd)) => {
            let place = keys.iter().position(|key| *key == (table, axis));
            let place = place.unwrap_or(keys.len());
            if place == keys.len() {
                keys.push((table, axis));
            }
            group.with_conversion(u8::try_from(place).unwrap_or(u8::MAX), sd).map_err(wrong)?
        }
        None => group,
    };
    let numbers: Vec<String> = part.values.iter().map(|value| format::exact(*value)).collect();
    let mut answer = ReadingAnswer {
        instrument: key(instrument),
        understood: format!("{} {}", numbers.join(", "), part.axis.unit()),
        hrc: group.values().to_vec(),
        u_random: group.random(),
        u_shared: group.shared(),
        u_conversion: own.conversion.map(|(_, _, sd)| sd),
        assumed: part.given.is_none(),
        table: own.conversion.and_then(|(table, ..)| Some(table.get()?.key())),
        shown: String::new(),
        raw: match instrument {
            // What was compared is told by the known piece, not by what the tester shows.
            Instrument::Comparison => group.values().iter().map(|at| frame.value(*at)).collect(),
            _ => own.raw,
        },
        beyond: own.beyond,
    };
    let (mean, half) = answer.mean_and_half();
    let as_written = part.axis == HRC && instrument != Instrument::Comparison && numbers.len() == 1;
    let hrc = if as_written { String::new() } else { format::fixed(mean, 1) };
    answer.shown = language
        .gauge(Gauge::Line {
            written: &answer.understood,
            instrument,
            hrc: &hrc,
            half: &format::fixed(half, 1),
            assumed: answer.assumed,
        })
        .into_owned();
    Ok((group, answer))
}

/// Reads one entry alone, to be shown in a list or checked before it is taken.
///
/// # Errors
/// A refusal that names what is wrong with it.
pub fn read_reading(language: Language, input: &ReadingInput) -> Result<ReadingAnswer, Refusal> {
    one(language, input, &mut Vec::new(), &Frame::HRC).map(|(_, answer)| answer)
}

/// Reads one entry in its own scale, whether a table leads from there or not, and says what it was understood as.
pub(crate) fn understood(language: Language, input: &ReadingInput) -> Result<String, Refusal> {
    let named = instrument(language, input.instrument.as_deref().unwrap_or_default())?;
    let own = series(language, &input.text, named.map(usual_scale))?;
    let (axis, first) = (listed(own.axis), own.values.first().copied());
    let said = Said { axis, low: first, high: None, step: 1.0 };
    let placed = Frame::of(&said, axis, false);
    let placed = placed.map_err(|error| Refusal::of_hardness(language, &error))?;
    one(language, input, &mut Vec::new(), &placed.frame).map(|(_, answer)| answer.understood)
}

/// All readings of a question.
pub(super) fn gather(
    language: Language,
    inputs: &[ReadingInput],
) -> Result<(Readings, Vec<ReadingAnswer>), Refusal> {
    gather_in(language, inputs, &Frame::HRC)
}

/// The scale that the text of an entry names, or that its instrument usually shows.
pub(super) fn scale_of(language: Language, input: &ReadingInput) -> Result<Axis, Refusal> {
    let named = instrument(language, input.instrument.as_deref().unwrap_or_default())?;
    Ok(listed(series(language, &input.text, named.map(usual_scale))?.axis))
}

/// All readings on the axis of a belief; in the answers `hrc` and the uncertainties are numbers of that axis.
pub(super) fn gather_in(
    language: Language,
    inputs: &[ReadingInput],
    frame: &Frame,
) -> Result<(Readings, Vec<ReadingAnswer>), Refusal> {
    let (mut readings, mut answers, mut keys) = (Readings::new(), Vec::new(), Vec::new());
    for input in inputs {
        let (group, answer) = one(language, input, &mut keys, frame)?;
        readings = readings.with(group).map_err(|error| Refusal::of_evidence(language, &error))?;
        answers.push(answer);
    }
    Ok((readings, answers))
}

#[cfg(test)]
mod tests {
    use super::*;

    const ENGLISH: Language = Language::English;

    fn read(instrument: &str, text: &str) -> ReadingAnswer {
        read_reading(ENGLISH, &ReadingInput::written(instrument, text)).unwrap()
    }

    fn refused(instrument: &str, text: &str) -> Refusal {
        let refusal = read_reading(ENGLISH, &ReadingInput::written(instrument, text)).unwrap_err();
        assert!(!refusal.message.is_empty() && !refusal.instead.is_empty(), "{refusal:?}");
        refusal
    }

    fn near(value: f64, wanted: f64, give: f64) -> bool {
        (value - wanted).abs() <= give
    }

    #[test]
    fn several_numbers_are_read_with_and_without_symbols() {
        for text in [
            "52, 53, 51.5 HRC",
            "52 53 51,5 HRC",
            "52; 53; 51,5 HRC",
            "HRC 52, 53, 51.5",
            "52 HRC, 53 HRC, 51.5 HRC",
        ] {
            let found = read("", text);
            assert_eq!(found.hrc, [52.0, 53.0, 51.5], "{text}");
            assert_eq!(found.understood, "52, 53, 51.5 HRC");
            assert_eq!(found.instrument, "bench-rockwell-unverified");
            assert!(found.assumed && found.table.is_none() && found.u_conversion.is_none());
        }
        assert_eq!(read("portable-leeb", "52,53").hrc, [52.0, 53.0]);
        assert_eq!(read("portable-leeb", "52,5").hrc, [52.5]);
    }

    #[test]
    fn the_scale_says_which_instrument_is_usual() {
        for (text, instrument) in [
            ("80 HRA", "bench-rockwell-unverified"),
            ("640 HV 10", "bench-vickers"),
            ("640 HV 1", "bench-vickers-light"),
            ("640 HV(UCI)", "ultrasonic"),
            ("350 HBW 10/3000", "bench-brinell"),
            ("640 HK", "bench-vickers-light"),
        ] {
            assert_eq!(read("", text).instrument, instrument, "{text}");
        }
    }

    #[test]
    fn a_reading_in_brinell_becomes_hrc_with_the_widths_of_its_parts() {
        let found = read("", "353 HBW");
        // ASTM E140 Table 1 prints 38 HRC = 353 HBW, 39 HRC = 362 HBW and 37 HRC = 344 HBW: 1 HRC is 9 HBW.
        assert!(near(found.hrc[0], 38.0, 1e-9));
        assert_eq!(found.table, Some("astm-e140-t1"));
        // 1 HRC is the working figure of a conversion; 0.7 % and 1.33 % of 353 HBW are those of the instrument.
        assert_eq!(found.u_conversion, Some(1.0));
        assert!(near(found.u_random, 0.007 * 353.0 / 9.0, 0.01), "{found:?}");
        assert!(near(found.u_shared, 0.0133 * 353.0 / 9.0, 0.02), "{found:?}");
    }

    #[test]
    fn a_written_uncertainty_counts_instead_of_the_usual_one() {
        for text in [
            "353 HBW u=9",
            "353 HBW u = 9",
            "353 HBW ±17.64",
            "353 HBW +-17.64 HBW",
            "353 +/-17,64 HBW",
        ] {
            let found = read("", text);
            // 9 HBW are 1 HRC here (ASTM E140 Table 1, rows 37 to 39); 17.64 is 1.96 times 9.
            let total = (found.u_random * found.u_random + found.u_shared * found.u_shared).sqrt();
            assert!(near(total, 1.0, 0.01), "{text}: {found:?}");
            assert!(near(found.u_shared / found.u_random, 1.33 / 0.7, 1e-6), "{text}: {found:?}");
            assert!(!found.assumed);
        }
        assert!(near(read("", "52 HRC u=0.01").u_random, LEAST_RANDOM, 1e-12));
    }

    #[test]
    fn a_comparison_takes_the_bias_of_the_tester_away() {
        // The tester shows 47 and 49 on a piece of 50, so 53 on the part is 55.
        let found = read("comparison", "53; 50 HRC +-1; 47, 49");
        assert_eq!(found.hrc, [55.0]);
        // The piece 1/1.96, the mean of two readings 0.3/sqrt(2): 0.553 together.
        assert!(near(found.u_shared, 0.553, 0.001), "{found:?}");
        assert_eq!(refused("comparison", "53 HRC").code, "bench.known_piece_missing");
        assert_eq!(refused("comparison", "53 HRC; 50 HRC; 640 HV").code, "designation.two_scales");
        let unwanted =
            ReadingInput { known: Some("50 HRC".into()), ..ReadingInput::written("", "52 HRC") };
        assert_eq!(
            read_reading(ENGLISH, &unwanted).unwrap_err().code,
            "bench.known_piece_unwanted"
        );
    }

    #[test]
    fn what_is_no_reading_is_refused_with_a_way_out() {
        for (instrument, text, code) in [
            ("", "52", "designation.no_scale"),
            ("", "", "designation.empty"),
            ("", "52-54 HRC", "bench.reading_not_one_number"),
            ("", "52 HRC min", "bench.reading_not_one_number"),
            ("", "52 HRC, 640 HV", "designation.two_scales"),
            ("", "52 HRC +-", "bench.unreadable_uncertainty"),
            ("", "52 HRC +-0", "bench.unreadable_uncertainty"),
            ("", "52 HRC +-1 dozen", "bench.unreadable_uncertainty"),
            ("", "900 MPa", "bench.reading_is_strength"),
            ("", "15 HRC, 12 HRC", "evidence.out_of_range"),
            ("", "52 HRC u=30", "evidence.out_of_range"),
            ("bench-brinell", "52 HRC", "bench.reading_in_other_scale"),
            ("ultrasonic", "52 HRC", "bench.reading_in_other_scale"),
            ("hammer", "52 HRC", "bench.unknown_instrument"),
            ("portable-leeb", "780 HLD", "hardness.no_table"),
            ("portable-leeb", "780", "hardness.no_table"),
            ("", "780 HRC", "hardness.outside_scale"),
            ("", "120 HBW", "hardness.outside_tables"),
        ] {
            assert_eq!(refused(instrument, text).code, code, "{instrument} {text}");
        }
        assert!(refused("portable-leeb", "780 HLD").instead.contains("which scale"));
        assert!(refused("hammer", "52 HRC").allowed.contains("portable-leeb"));
    }

    #[test]
    fn the_instrument_stands_before_a_colon() {
        let parsed = |text| parse_reading(ENGLISH, text).unwrap();
        assert_eq!(
            parsed("portable-leeb: 52 HRC"),
            ReadingInput::written("portable-leeb", "52 HRC")
        );
        assert_eq!(parsed("HRC: 52"), ReadingInput::written("", "HRC: 52"));
        assert_eq!(
            read_reading(ENGLISH, &parsed("bench: 640 HV10 +-20")).unwrap().instrument,
            "bench-vickers"
        );
        assert_eq!(
            parse_reading(ENGLISH, "leb: 52 HRC").unwrap_err().code,
            "bench.unknown_instrument"
        );
        assert_eq!(parsed("comparison: 53; 50 HRC; 47").on_known.as_deref(), Some(" 47"));
    }
}

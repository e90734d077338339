//! English about instruments and their readings.

use std::borrow::Cow;

use biteband_evidence::{Instrument, Suspect};

use super::reading::{Gauge, Unreadable};

type Words = Cow<'static, str>;

pub(super) fn say(phrase: Gauge<'_>) -> Words {
    use Gauge as G;
    match phrase {
        G::Instrument(instrument) => name(instrument).into(),
        G::Line { written, instrument, hrc, half, assumed } => {
            let kind = if assumed { "assumed" } else { "yours" };
            let becomes = if hrc.is_empty() { String::new() } else { format!("{hrc} ") };
            format!("{written}, {}: {becomes}±{half} HRC, {kind}", name(instrument)).into()
        }
        G::ByReadings => "By the readings alone".into(),
        G::WithReadings { verdict } => format!("{verdict}; the readings are counted in").into(),
        G::Assumed => "What an instrument is off by is assumed from its kind. If you know better, write it behind the number: ±8 holds 19 of 20 readings, u=4 is a standard uncertainty.".into(),
        G::Mixed => "The readings do not agree".into(),
        G::Files => "the files".into(),
        G::One { number, of } => format!("reading {number} of {of}").into(),
        G::Clash { harder, softer } => format!("Harder by {harder}, softer by {softer}: further apart than their widths allow. Both cannot be true of one part.").into(),
        G::Suspect(suspect) => suspect_words(suspect).into(),
        G::Without { witness, band } => format!("Without {witness}, in HRC: {band}").into(),
        G::SettleFiles => "Grind a fresh flat below the skin, read again on it, and stroke the files beside the mark.".into(),
        G::SettleInstruments => "Read a piece of known hardness with both instruments, then the part again, side by side on a fresh flat.".into(),
        G::SettleOne => "Check the number as written down. If it stands, read again on a fresh place beside the others.".into(),
    }
}

const fn name(instrument: Instrument) -> &'static str {
    match instrument {
        Instrument::RockwellVerified => "Rockwell on the bench, checked weekly",
        Instrument::RockwellUnverified => "Rockwell on the bench",
        Instrument::RockwellBall => "Rockwell ball on the bench",
        Instrument::Vickers => "Vickers on the bench",
        Instrument::VickersLight => "Vickers under light load",
        Instrument::Brinell => "Brinell on the bench",
        Instrument::Leeb => "portable rebound (Leeb)",
        Instrument::Ultrasonic => "portable ultrasonic (UCI)",
        Instrument::BrinellScope => "Brinell under a hand scope",
        Instrument::Comparison => "against a known piece",
        Instrument::Other => "something else",
    }
}

const fn suspect_words(suspect: Suspect) -> &'static str {
    match suspect {
        Suspect::SoftSkin => "a soft skin that the files cut and the instrument went through",
        Suspect::HardSkin => {
            "a hard skin that the files skate on and the instrument went through, or a carbide-rich steel"
        }
        Suspect::WornFiles => "the files are worn or their teeth are clogged",
        Suspect::Mistyped => "the reading was mistyped or taken from another scale",
        Suspect::InstrumentOff => "the instrument is out of adjustment",
        Suspect::PieceUnfit => {
            "the piece is too light, thin, round or rough for the instrument, which then reads low"
        }
        Suspect::ConversionUnfit => "the conversion does not fit this steel",
        Suspect::DifferentSpots => "they lay on different spots",
    }
}

pub(super) fn refuse(what: Unreadable<'_>) -> [Words; 2] {
    use Unreadable as U;
    match what {
        U::Instrument { given } => [
            format!("{given} is no instrument that is known here.").into(),
            "Name one of the list, or leave it out: the scale then says which is usual.".into(),
        ],
        U::Uncertainty { given } => [
            format!("{given} is not readable as an uncertainty.").into(),
            "Write it behind the number, more than zero and in the same scale: 288 HBW +-8, or u=4 for a standard uncertainty.".into(),
        ],
        U::NotOneNumber => [
            "A reading is one number, not a range or a limit.".into(),
            "Write several readings with spaces between, as in 52 53 51.5 HRC.".into(),
        ],
        U::Strength => [
            "A strength is no reading of a hardness tester.".into(),
            "Type the hardness that was read, as in 640 HV10.".into(),
        ],
        U::OtherScale { instrument, axis } => [
            format!("\"{}\" does not read {axis}.", name(instrument)).into(),
            "Choose the instrument that showed this number, or \"something else\".".into(),
        ],
        U::KnownMissing => [
            "A comparison needs the known piece and what was read on it.".into(),
            "Write readings of the part; the known hardness; readings of the piece: 53 54; 50 HRC +-1; 47 49.".into(),
        ],
        U::KnownUnwanted => [
            "A known piece belongs to a comparison only.".into(),
            "Leave it out, or name comparison as the instrument.".into(),
        ],
    }
}

//! English for hardenability. That a trial piece settles what no curve tells is common practice.

use std::borrow::Cow;

use biteband_quantity::Shown;
use biteband_steel::hardenability::Error;

use super::harden::{Harden, HardenRefusal};

type Words = Cow<'static, str>;

pub(super) fn say(phrase: Harden<'_>) -> Words {
    use Harden as P;
    match phrase {
        P::FromBand { band } => format!("The published H-band {band} (from memory): heats of this steel lie between its edges.").into(),
        P::FromLimits => "Worked out by ASTM A255 from the limits of the composition: its middle, and edges half way from there to the ends of every range, which is about how wide published bands are.".into(),
        P::FromHeat { error } => format!("Worked out by ASTM A255 from the composition, ± {error} HRC: twice what such curves miss the middles of published bands by.").into(),

        P::OutsideRange { element, given, low, high } => format!("Outside the range of the standard: {given} % {element}, stated for {low} to {high} %. Factors exist, so there is a curve, but take it as a guess.").into(),
        P::Residuals { list } => format!("Not stated, so counted as usual in scrap-based steel: {list}. A certificate makes the curve surer.").into(),
        P::Vanadium => "Vanadium counts as 0.1 %: more stays carbide at the usual hardening temperature.".into(),
        P::Shallow => "Shallow hardening: an ideal diameter below 15 mm is outside the table, so the soft side is unsure.".into(),
        P::Deep => "Deep hardening: an ideal diameter above 177.8 mm is beyond the table, which is read at its end.".into(),
        P::MiddleOpen => "\"at most\": the band prints no lower edge there, so the middle is no higher than shown.".into(),
        P::Below20 => "\"< 20\": below 20 HRC, where the scale ends.".into(),
        P::AtMost { hrc } => format!("at most {hrc}").into(),
        P::End { at } => format!("The curve ends at {at}. Further in, the steel is no harder than there.").into(),

        P::BarIsNotPart => "Distances are along the end-quench bar, not depths in a part: a section first has to be turned into the distance that cools like it.".into(),
        P::AnyBar => "One bar may lie anywhere between the edges. The mill's certificate or a trial piece says where.".into(),

        P::IdealDiameter { low, mid, high } => format!("Ideal diameter by ASTM A255: {mid} ({low} to {high}).").into(),
        P::Columns => "low, middle, high in HRC".into(),
    }
}

pub(super) fn refuse(what: HardenRefusal<'_>) -> [Words; 3] {
    use HardenRefusal as R;
    match what {
        R::NoSteel => [
            "There is no steel to work from.".into(),
            "4140, or C=0.41,Mn=0.85,Cr=1.0,Mo=0.2".into(),
            "Name a grade or give a composition.".into(),
        ],
        R::SteelTwice => [
            "A grade and a composition are given together, and they need not agree.".into(),
            "one of them".into(),
            "Give the composition of the certificate if there is one, otherwise the grade.".into(),
        ],
        R::Core { error, published, depth } => {
            let [message, allowed, mut instead] = core(error);
            if let Some(published) = published {
                let depth = if depth.is_empty() { String::new() } else { format!(" ({depth})") };
                instead =
                    format!("{instead} Published for this steel as quenched: {published}{depth}.")
                        .into();
            }
            [message, allowed, instead]
        }
    }
}

fn core(error: &Error) -> [Words; 3] {
    const TRIAL: &str = "Harden a trial piece of the same section and read it.";
    match *error {
        Error::Outside { element, given, allowed } => [
            format!("{} % {element} is outside what ASTM A255 has factors for, so there is no curve.", Shown(given)).into(),
            format!("{} to {} % {element}", Shown(allowed.low), Shown(allowed.high)).into(),
            TRIAL.into(),
        ],
        Error::Missing { element } => [
            format!("Without its {element} the depth of hardening cannot be worked out.").into(),
            "C=0.41,Mn=0.85".into(),
            format!("Add the {element} from the certificate.").into(),
        ],
        Error::Boron { given } => [
            format!("{} % B: boron deepens hardening by a table that is not at hand, so there is no curve.", Shown(given)).into(),
            format!("up to {} % B", Shown(Error::BORON)).into(),
            "Ask the mill for the end-quench curve of the heat, or harden a trial piece.".into(),
        ],
        Error::HighCarbon { given } => [
            format!("{} % C is above 0.7 %. Carbides stay undissolved, and only what is dissolved hardens, so the composition does not tell the depth.", Shown(given)).into(),
            "0.1 to 0.7 % C".into(),
            TRIAL.into(),
        ],
        Error::LowCarbon { given } => [
            format!("{} % C is below 0.1 %: this steel does not harden by quenching.", Shown(given)).into(),
            "0.1 to 0.7 % C".into(),
            "Case-harden it, or take a steel with more carbon.".into(),
        ],
        Error::OpenCarbon { given } => [
            format!("At most {} % C and no least carbon: the standard promises nothing about hardening.", Shown(given)).into(),
            "a least and a most carbon".into(),
            "Give the composition of the bar from its certificate.".into(),
        ],
        Error::NotHardened => [
            "This grade does not harden by quenching, so there is no end-quench curve.".into(),
            "".into(),
            "See its card for how it is used.".into(),
        ],
        Error::Published => [
            "A tool steel or stainless steel: part of its carbon and alloy stays in carbides, so the composition does not tell the depth.".into(),
            "carbon and low-alloy steels".into(),
            "Keep to what is published for the grade.".into(),
        ],
        // Curves are made from worked-out numbers only; the text stands for whatever is left.
        Error::NotANumber => [format!("{error}.").into(), "".into(), "".into()],
    }
}

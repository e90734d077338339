//! English for the hardness that a section can reach.
//!
//! That a part is tempered at once, that edges cool faster, and what a sharper bath does to a part are common
//! practice, no source.

use std::borrow::Cow;

use biteband_steel::quench::{self, Medium, Movement};
use biteband_steel::reach::{Error, Fit, Verdict};
use biteband_steel::section::{Place, Why};
use biteband_steel::transform::CrackReason;

use super::reach::{Likely, Reach, ReachRefusal};
use super::steel_english::capital;
use super::{
    HardenRefusal, SectionRefusal, SteelWords, harden_english, section_english, steel_english,
};

type Words = Cow<'static, str>;

/// What is in the tank, in a word.
pub(super) const fn medium(medium: Medium) -> &'static str {
    match medium {
        Medium::Water => "water",
        Medium::Brine => "brine",
        Medium::Oil => "oil",
        Medium::FastOil => "fast oil",
        Medium::VegetableOil => "vegetable oil",
        Medium::UnknownOil => "used or unknown oil",
        Medium::Polymer => "polymer in water",
        Medium::Salt => "molten salt",
        Medium::Air => "air",
    }
}

const fn movement(movement: Movement) -> &'static str {
    match movement {
        Movement::Still => "still",
        Movement::Mild => "moved gently",
        Movement::Moderate => "moved steadily",
        Movement::Good => "moved quickly",
        Movement::Strong => "pumped",
        Movement::Violent => "sprayed",
    }
}

const fn place(place: Place) -> &'static str {
    match place {
        Place::Skin => "skin",
        Place::ThreeQuarter => "near the skin",
        Place::Half => "half way",
        Place::Middle => "middle",
        Place::Bore => "bore",
    }
}

const fn likely(likely: Likely) -> &'static str {
    match likely {
        Likely::Yes => "yes",
        Likely::Likely => "likely",
        Likely::Open => "maybe",
        Likely::Unlikely => "unlikely",
        Likely::No => "no",
    }
}

const fn inside(bore: bool) -> &'static str {
    if bore { "wall" } else { "middle" }
}

fn long(shape: String, long: Option<&str>) -> Words {
    match long {
        Some(long) => format!("{shape}, {long} long").into(),
        None => shape.into(),
    }
}

const fn ruled(by: Why) -> &'static str {
    match by {
        Why::Diameter => "its diameter",
        Why::Wall => "its wall",
        Why::NarrowBore => {
            "its outside, because the bore is too narrow for the bath to run through"
        }
        Why::Thickness => "its thickness",
        Why::Side => "its side",
        Why::AcrossFlats => "its size across flats",
        Why::Length => "its length, the smallest size",
    }
}

/// Skin and middle alike are one word; otherwise each has its own.
fn places(skin: Likely, half: Option<Likely>, middle: Likely, bore: bool) -> Words {
    let same = skin == middle && half.is_none_or(|half| half == skin);
    match (same, skin) {
        (true, Likely::Yes) => "Yes, all through".into(),
        (true, Likely::No) => "No, not even the skin".into(),
        (true, other) => format!("{}, all through", capital(likely(other))).into(),
        _ => format!("Skin {}, {} {}", likely(skin), inside(bore), likely(middle)).into(),
    }
}

pub(super) fn say(phrase: Reach<'_>) -> Words {
    use Reach as P;
    match phrase {
        P::Round { size, long: l } => long(format!("{size} round"), l),
        P::Tube { outer, inner, long: l } => long(format!("{outer} tube with {inner} bore"), l),
        P::Plate { size, long: l } => long(format!("{size} plate"), l),
        P::Square { size, long: l } => long(format!("{size} square"), l),
        P::Hexagon { size, long: l } => long(format!("{size} hexagon"), l),
        P::Flat { width, thickness, long: l } => long(format!("{width} × {thickness} flat"), l),
        P::OwnComposition => "Own composition".into(),
        P::Bath { medium: m @ Medium::Air, .. } | P::MediumName(m) => medium(m).into(),
        P::Bath { medium: m, movement: how } => format!("{} {}", medium(m), movement(how)).into(),
        P::MovementName(how) => movement(how).into(),
        P::Ruled { by: by @ Why::Diameter, size, .. } => format!("Ruled by {}, {size}.", ruled(by)).into(),
        P::Ruled { by, size, round } => format!("Ruled by {}, {size}; its middle cools like that of a round of {round}.", ruled(by)).into(),

        P::Places { skin, half, inside, bore } => places(skin, half, inside, bore),
        P::Found { skin, through: true } => format!("{skin}, all through").into(),
        P::Found { skin, .. } => format!("Skin {skin}").into(),
        P::Wants { wanted, skin, inside: middle, .. } if skin == middle => format!("Wants {wanted}. As quenched {skin} all through.").into(),
        P::Reaches { skin, inside: middle, .. } if skin == middle => format!("As quenched {skin} all through.").into(),
        P::Wants { wanted, skin, inside: middle, bore } => format!("Wants {wanted}. As quenched {skin} at the skin, {middle} in the {}.", inside(bore)).into(),
        P::Reaches { skin, inside: middle, bore } => format!("As quenched {skin} at the skin, {middle} in the {}.", inside(bore)).into(),
        P::PlaceName(p) => place(p).into(),
        P::Unknown => "unknown".into(),
        P::UpTo { hrc } => format!("at most {hrc}").into(),
        P::From { hrc } => format!("{hrc} or more").into(),
        P::Below20 => "below 20 HRC".into(),

        P::FromBand { band } => format!("From the published H-band {band} (from memory): heats of this grade lie between its edges.").into(),
        P::FromLimits => "From the composition by ASTM A255: the middle of the limits, and edges half way from there to their ends.".into(),
        P::Published { range, seen } => format!("Published for this grade as quenched: {range}. {seen}").trim_end().to_owned().into(),
        P::ThroughTo { size, medium, mark, note } => {
            let note = if note.is_empty() { String::new() } else { format!(" ({note})") };
            format!("Its papers say it hardens through to about {size} in {medium}{note}. {mark}").trim_end().to_owned().into()
        }
        P::NotThroughFrom { size } => format!("From about {size} on its middle is known to stay softer.").into(),
        P::Shell { depth } => format!("It hardens in a shell of about {depth}; what lies deeper stays softer and tough. Test the rim of an end face, not a sawn middle.").into(),
        P::DepthOpen => "This section lies between what is known to harden through and what is known not to. Harden a trial piece and cut it.".into(),
        P::DepthUnknown => "How thick it hardens through in this bath is not in the data here: only the skin of a small section is promised.".into(),
        P::SecondOpinion { hrc, place: p } => format!("Worked out by heat flow alone, the {} would come to about {hrc}.", place(p)).into(),
        P::OnRecord { size, medium, readings } => format!("On record, from memory: one bar, {size} round, {medium}: {readings} HRC at skin, half way and middle.").into(),
        P::Moved => "Half of what bars on record differ from the method is taken over, because one bar cannot tell its grade from its own heat.".into(),

        P::Smaller { sure: Some(sure), likely: Some(likely) } if sure == likely => format!("Make it smaller: up to {sure} it does.").into(),
        P::Smaller { sure: Some(sure), likely: Some(likely) } => format!("Make it smaller: up to {sure} for sure, up to {likely} more likely than not.").into(),
        P::Smaller { sure: Some(sure), likely: None } => format!("Make it smaller: up to {sure} it does.").into(),
        P::Smaller { likely, .. } => format!("Make it smaller: up to {} it is more likely than not; no size makes it sure.", likely.unwrap_or_default()).into(),
        P::OtherGrades { sure, likely, medium: m } => {
            let m = medium(m);
            match (sure.is_empty(), likely.is_empty()) {
                (false, true) => format!("Take another steel: in this section and {m}, {sure} would.").into(),
                (true, _) => format!("Take another steel: in this section and {m}, {likely} probably would.").into(),
                (false, false) => format!("Take another steel: in this section and {m}, {sure} would; {likely} probably.").into(),
            }
        }
        P::Faster { medium: m, movement: how, verdict, fit, same } => {
            let bath = if same { format!("the same bath {}", movement(how)) } else { format!("{} {}", medium(m), movement(how)) };
            let brings = if verdict == Verdict::Yes { "makes it sure" } else { "makes it more likely than not" };
            let risk = match fit {
                Some(Fit::Sharper | Fit::Never) => " It is sharper than this grade's papers name, so thin, stepped or drilled parts may crack.",
                _ if same => " Faster cooling moves and cracks parts more.",
                _ => "",
            };
            format!("Quench faster: {bath} {brings}.{risk}").into()
        }
        P::SkinOnly(Verdict::Yes) => "Leave the middle soft: the skin reaches it, and for wear that is often all that is needed.".into(),
        P::SkinOnly(_) => "Leave the middle soft: the skin may reach it. Test it before you rely on it.".into(),
        P::Lower { hrc } => format!("Ask for less: {hrc} is sure all through, as quenched.").into(),

        P::TemperTakes => "Temper at once, as every hardened part. It takes hardness away, so as quenched must lie above what is wanted.".into(),
        P::SoftenLater => "Harder than wanted as quenched: tempering brings it down.".into(),
        P::CoreOnly => "This grade does not harden through: these are the numbers of its core. Its hard surface comes from carburizing.".into(),
        P::CutFromCore => "A part that is cut out of this section later has at its surface what the section has there: a hardened bar's skin proves nothing about its core.".into(),
        P::BandMeaning => "19 bars of 20 lie between the two numbers: the grade's limits, the bath and the way from section to end-quench bar are in them.".into(),
        P::CornersCoolFaster => "Edges and corners get harder than the middle of a face, blind holes stay softer.".into(),
        P::ShapeUnchecked => "Outside what the method was checked on (rounds of 12 to 150 mm in baths of H 0.25 to 2): take it as a guess.".into(),
        P::MildSeverity => "Nobody knows the severity of their own bath: it is taken from the published words for how it is moved, 30 % either way.".into(),
        P::Cracks(reason) => match reason {
            CrackReason::Equivalent => "Crack risk: carbon and alloy together are above what water is known to forgive (carbon equivalent 0.525, recalled).",
            CrackReason::AlloyInWater => "Crack risk: an alloy steel with this much carbon is quenched in oil; water cracks it.",
            CrackReason::CarbonInWater => "Crack risk: water only for simple, stout shapes without corners, steps or holes near edges.",
            CrackReason::MuchCarbonInWater => "Crack risk: much carbon in water. Round every corner, agitate, and temper before it is cold.",
            CrackReason::LateMartensite => "Crack risk: it hardens late and cold. Take it out hand-warm and temper at once.",
        }
        .into(),
        P::SharperThanNamed { named } => format!("This bath is sharper than what its papers name ({named}): the part may crack or warp.").into(),
        P::OutsideRange => "The composition is outside the range that ASTM A255 states, so take the numbers as a guess.".into(),
        P::PartRow { zone, range } => format!("{zone}: {range}").into(),
    }
}

pub(super) fn refuse(what: ReachRefusal<'_>) -> [Words; 3] {
    use ReachRefusal as R;
    match what {
        R::NoQuench => [
            "The bath is missing: the same steel comes out hard in water and soft in air.".into(),
            "oil, oil:mild, fast oil, vegetable oil, water, brine, air, salt, polymer".into(),
            "Name what is in the tank.".into(),
        ],
        R::UnknownPart { given } => [
            format!("No usual hardness for \"{given}\" is in the data here.").into(),
            "cold chisel, punch, drill bushing, spring, gauge and the like".into(),
            "Say the kind of part in other words, or give the wanted hardness itself.".into(),
        ],
        R::BeyondPart { part, zones, several, caution } => [
            format!("Harder than usual for this kind of part ({part}): {zones}. {caution}").trim_end().to_owned().into(),
            zones.to_owned().into(),
            if several { "Keep each zone in its own range: harden the working end only and temper the rest back." } else { "Ask for that range." }.into(),
        ],
        R::Core { error, named, ages } => core(error, named, ages),
    }
}

fn core(error: &Error, named: &str, ages: &str) -> [Words; 3] {
    let word = |medium| steel_english::say(SteelWords::Medium(medium));
    match error {
        Error::DoesNotHarden { grade } => [
            format!("{} does not harden by heat treatment, in no section and no bath.", grade.name()).into(),
            "a steel with enough carbon, or one that is carburized".into(),
            if grade.notes().is_empty() { "Take another steel: 4140, O1 or W1 are easy to get.".into() } else { format!("Take another steel. Its notes say: {}.", grade.notes()).into() },
        ],
        Error::Ages { grade } => [
            format!("{} is not quenched hard: it comes solution treated from the mill and hardens by ageing, the same all through.", grade.name()).into(),
            ages.to_owned().into(),
            "Age it: no quench and no bath.".into(),
        ],
        Error::Never { grade, medium } => [
            format!("{} is not to go into {}: it cracks. Its papers name {named}.", grade.name(), word(*medium)).into(),
            named.to_owned().into(),
            "Take the bath that its papers name. No number is given for another.".into(),
        ],
        Error::TooMild { grade, medium } => [
            format!("{} does not get hard in {}, and nobody has published how soft it stays. Its papers name {named}.", grade.name(), word(*medium)).into(),
            named.to_owned().into(),
            "Take the bath that its papers name, or a steel that hardens in yours.".into(),
        ],
        Error::Unknown { grade } => [
            format!("How hard {} comes out of the quench is not in the data here.", grade.name()).into(),
            "".into(),
            "Harden a trial piece of the same section.".into(),
        ],
        Error::Hardenability(error) => {
            harden_english::refuse(HardenRefusal::Core { error, published: None, depth: "" })
        }
        Error::Quench(quench::Error::Unknown) => [
            "Motor oil, used oil, thinned oil: neither its speed nor its flash point is known, and it may hold water or fuel.".into(),
            "quench oil with a data sheet, vegetable oil, water, brine".into(),
            "Do not quench in it. Take a quench oil, or fresh vegetable oil.".into(),
        ],
        Error::Quench(quench::Error::NoFigure { medium: m }) => [
            format!("No published severity for {}: it depends on the product, its share and its temperature.", medium(*m)).into(),
            "water, brine, oil, fast oil, vegetable oil, air".into(),
            "Go by the maker's data for the bath, or harden a trial piece of the same section.".into(),
        ],
        Error::Section(error) => section_english::refuse(SectionRefusal::Core(error)),
    }
}

//! Sections and baths that cannot be taken, in English.

use std::borrow::Cow;

use biteband_quantity::Shown;
use biteband_steel::section::Error;

use super::SectionRefusal;

type Words = Cow<'static, str>;

const MEDIA: &str = "oil, fast oil, vegetable oil, water, brine, air, salt, polymer";
const MOVEMENTS: &str = "still, mild, moderate, good, strong, violent";

pub(super) fn refuse(what: SectionRefusal<'_>) -> [Words; 3] {
    use SectionRefusal as R;
    match what {
        R::Shapes { none: true } => [
            "The section is missing: how hard a steel gets depends on how thick it is.".into(),
            "round, tube, plate, square, hexagon or flat, with its sizes".into(),
            "Give the shape and its size, as in 50 mm round.".into(),
        ],
        R::Shapes { none: false } => [
            "Several shapes are given for one part.".into(),
            "one of round, tube, plate, square, hexagon, flat".into(),
            "Give the one that rules where it has to be hard; ask again for another place.".into(),
        ],
        R::Pair { given } => [
            format!("\"{given}\" is not readable as two sizes.").into(),
            "40mm,20mm or 40mm x 20mm".into(),
            "Write both sizes with their units: outside and inside of a tube, width and thickness of a flat.".into(),
        ],
        R::Medium { given } => [
            format!("\"{given}\" is no quenching medium that is known here.").into(),
            MEDIA.into(),
            "Take the one that comes nearest to what is in the tank.".into(),
        ],
        R::BathPart { given, part } => [
            format!("In \"{given}\" the part \"{part}\" is neither a movement nor a volume with its temperature.").into(),
            format!("{MOVEMENTS}; 6L@25C; flash=180C").into(),
            "Write the medium first, then the parts with colons between: oil:mild:6L@25C.".into(),
        ],
        R::Core(Error::Wall { outer, inner }) => [
            format!("A tube of {} mm outside and {} mm inside has no wall.", Shown(*outer), Shown(*inner)).into(),
            "an inside smaller than the outside".into(),
            "Give the outside first, then the inside.".into(),
        ],
        R::Core(Error::Size(outside) | Error::Severity(outside)) => [
            format!("A {outside}.").into(),
            format!("{} to {} {}", Shown(outside.bounds.min), Shown(outside.bounds.max), outside.bounds.symbol).into(),
            "Look at the unit and the decimal point. Nothing here is known of larger or thinner parts.".into(),
        ],
    }
}

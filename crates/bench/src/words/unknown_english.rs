//! English about an unknown bar. How tests are done, what families are good for and what they need are common
//! practice, no source; that a magnet lets go at about 770 °C is an article's (seen); the limit of 45 HRC for struck
//! ends is ASME B107.47M-1998, 4.3 (seen).

use std::borrow::Cow;

use biteband_evidence::unknown::{
    Cause, Error, Fracture, Kind, Magnet, Purpose, Quench, Skin, Spark, Test,
};
use biteband_quantity::Shown;

use super::steel_english::capital;
use super::unknown::{Sure, Unknown, UnknownRefusal};

type Words = Cow<'static, str>;

const fn family(kind: Kind) -> &'static str {
    match kind {
        Kind::LowCarbon => "low carbon or free machining (1018, 12L14)",
        Kind::MediumCarbon => "medium carbon (1045, 1541)",
        Kind::HighCarbon => "high carbon (1075 to 1095, W1)",
        Kind::LowAlloy => "low alloy, medium carbon (4140, 4340)",
        Kind::Spring => "spring steel (5160, 6150)",
        Kind::OilTool => "oil-hardening tool or bearing steel (O1, L6, 52100)",
        Kind::AirTool => "air-hardening tool steel (A2, D2)",
        Kind::HotWork => "hot-work steel (H13)",
        Kind::Shock => "shock-resisting tool steel (S1, S7)",
        Kind::HighSpeed => "high-speed steel (M2)",
        Kind::MartensiticStainless => "stainless that hardens (410, 420, 440)",
        Kind::AusteniticStainless => "stainless that does not harden (304, 316)",
        Kind::PhStainless => "stainless that ages (17-4PH)",
        Kind::Manganese => "manganese wear steel",
        Kind::CastIron => "cast iron",
        Kind::Other => "something else",
    }
}

const fn test(test: Test) -> &'static str {
    match test {
        Test::Magnet => "magnet",
        Test::Spark => "spark",
        Test::Found => "file on the bar as found",
        Test::Skin => "skin against 5 mm deeper",
        Test::CouponOil => "coupon in oil",
        Test::Snap => "snapped coupon",
        Test::CouponWater => "coupon in water",
    }
}

const fn spark(spark: Spark) -> &'static str {
    match spark {
        Spark::None => "hardly any, dull red and short",
        Spark::Straw => "long, straw-coloured, few forks",
        Spark::Forks => "bright, forks, some bursts",
        Spark::Bursts => "bright, many bursts close to the wheel",
        Spark::Spears => "orange, broken, detached spear points",
        Spark::Plain => "plain lines, orange to yellow-white, hardly a fork",
        Spark::Bushy => "short and dull red, then a bush of fine bursts",
    }
}

const fn skin(skin: Skin) -> &'static str {
    match skin {
        Skin::Same => "much the same",
        Skin::Hard => "skin hard, softer below",
        Skin::Soft => "skin soft, harder below",
    }
}

const fn fracture(fracture: Fracture) -> &'static str {
    match fracture {
        Fracture::Bent => "bent",
        Fracture::Torn => "tore, grey",
        Fracture::Fine => "snapped, fine grey grain",
        Fracture::Coarse => "snapped, coarse bright grain",
    }
}

const fn magnet(magnet: Magnet) -> &'static str {
    match magnet {
        Magnet::Sticks => "sticks",
        Magnet::Weak => "pulls weakly",
        Magnet::None => "does not stick",
    }
}

pub(super) fn say(phrase: Unknown<'_>) -> Words {
    use Unknown as U;
    match phrase {
        U::Family(kind) => family(kind).into(),
        U::Magnet(answer) => magnet(answer).into(),
        U::Spark(answer) => spark(answer).into(),
        U::Skin(answer) => skin(answer).into(),
        U::Fracture(answer) => fracture(answer).into(),
        U::Test(of) => test(of).into(),
        U::Title(of) => capital(test(of)).into(),

        U::Seen { test: of, answer } => format!("{}: {answer}", capital(test(of))).into(),
        U::About { hrc } => format!("about {hrc} HRC").into(),
        U::Between { low, high } => format!("{low} to {high} HRC").into(),
        U::AtLeast { low } => format!("{low} HRC or more").into(),
        U::AtMost { high } => format!("{high} HRC or less").into(),

        U::Nothing => "Nothing seen yet".into(),
        U::Is { sure: Sure::Nearly, family: kind } => format!("Almost surely {}", family(kind)).into(),
        U::Is { sure: Sure::Likely, family: kind } => format!("Likely {}", family(kind)).into(),
        U::Is { sure: Sure::Perhaps, family: kind } => format!("Still open, perhaps {}", family(kind)).into(),
        U::OneOf { first, second } => format!("{}, or {}", capital(family(first)), family(second)).into(),
        U::Disagree { first, second } => format!("These do not go together: {} and {}", test(first), test(second)).into(),
        U::Carbon { mid, low, high, percent } => format!("Carbon about {mid} %, between {low} and {high} % in 19 of 20 such bars. Holds for plain and low-alloy steel, of which the chance is {percent} %.").into(),
        U::CarbonHighOpen { low, percent } => format!("Carbon {low} % or more: above 0.6 % the hardness of a coupon says no more. Holds for plain and low-alloy steel, of which the chance is {percent} %.").into(),
        U::NoCarbon { percent } => format!("Its carbon cannot be told from a coupon: most likely it hardens from a heat of its own or not at all. Plain or low-alloy steel has a chance of {percent} %.").into(),
        U::Promise { oil, water } => format!("As quenched a section of 6 mm should reach {oil} HRC in oil, {water} HRC in water (19 of 20).").into(),
        U::Quench(Quench::OilFirst) => "Oil first: water cracks what oil would have hardened.".into(),
        U::Quench(Quench::Oil) => "Oil. Water would gain little and may crack it; thick parts harden less deep than a coupon.".into(),
        U::Quench(Quench::Water) => "Water, because oil leaves it soft: a shallow steel. Thin parts or sharp corners: try oil first, water cracks.".into(),
        U::Quench(Quench::OwnHeat) => "Not from a cherry red: steels of this kind want a heat and a bath of their own. Find out which it is first.".into(),
        U::Quench(Quench::Neither) => "Neither: it does not harden by a quench, or not enough to be worth it.".into(),

        U::Use { purpose, to } => good_for(purpose, to),
        U::Avoid(purpose) => bad_for(purpose).into(),

        U::How { test, heat } => how(test, heat),
        U::Why(test) => why(test).into(),
        U::Again { test: of, heat } => format!("Once more: {}. {}", test(of), how(of, heat)).into(),
        U::AgainWhy => "One of the two must be wrong. Nothing is built on them until that is settled.".into(),
        U::Settled => "No test on this list says much more. Harden a trial piece of the part; who must know the grade has it analysed.".into(),

        U::Clash { first, second } => format!("The {} and the {} hardly go together in any steel.", test(first), test(second)).into(),
        U::Without { test: of, verdict } => format!("Without the {}: {}.", test(of), small(verdict)).into(),
        U::Cause(cause) => match cause {
            Cause::Cold => "Coupon quenched too cold: as the magnet let go, or cooled on the way. Go 20 to 45 °C (40 to 80 °F) past that point and be quick.",
            Cause::Decarburised => "Coupon lost carbon in the fire: grind 0.3 mm off all round and file again.",
            Cause::FromSkin => "Coupon cut from the skin, which may be cased, hardened or without carbon: cut it from the middle.",
            Cause::SparkOfSkin => "Spark of the skin or of a dirty wheel: grind 1 mm in, dress the wheel, compare with a known bar.",
            Cause::MagnetOnSkin => "Magnet on paint, plating or cold-worked skin: try it on a fresh cut.",
            Cause::Steam => "Steam round the coupon: move it briskly in cool water.",
            Cause::TwoSteels => "Coupons mixed up, or a bar welded of two steels.",
        }.into(),

        U::NoCoupon => "No coupon yet: quench one before you make anything of this bar.".into(),
        U::FoundOfSkin => "What the file says of a hard skin is not counted a second time.".into(),
        U::Coarse => "A coarse bright break means it was too hot or too long in the fire: next coupon at a lower heat.".into(),
        U::Shallow => "Soft in oil and hard in water: a plain, shallow steel. Thick parts get a hard shell only.".into(),
        U::Saturated => "Above 0.6 % carbon a coupon is as hard as any: 0.7 and 1.0 % look the same.".into(),
        U::CastIron => "Cast iron: graphite makes files and Rockwell read wrong, so give Brinell. A corner that skates a file is chilled white iron: grind or anneal it; there is nothing to temper. Do not quench the piece: it cracks.".into(),
        U::OwnHeat => "Tool steel with much alloy and hardening stainless want 870 to 1200 °C (1600 to 2190 °F). From a cherry red their coupons show only a part of what they can do.".into(),
        U::PreHard => "Bought bar at 28 to 32 HRC is often quenched and tempered already. Harden a coupon to find out, not the bar.".into(),
        U::SoftSkin => "A soft skin has lost its carbon: cut coupons from below it and machine it off the part.".into(),
        U::OneBar => "This holds for this bar. The next axle may be another steel: test each.".into(),
        U::Judged => "How common each family is and how its bars answer is judged by common practice, not counted. It sorts; it names no grade.".into(),

        U::Critical => "Never for lifting, steering, brakes or pressure: an unknown bar is not for parts on which somebody's safety hangs.".into(),
        U::Eyes => "Sparks and chips: face shield or glasses, nothing that burns near the wheel.".into(),
        U::Snapping => "A hard coupon flies when it snaps: wrap it in cloth, strike it in the vice, glasses on.".into(),
        U::OilFire => "Oil can catch fire: metal tin with a lid, coupon fully under in one move, nothing wet, never water on burning oil.".into(),
        U::Fumes => "Scrap may be galvanised, plated, painted or leaded (12L14): strip it, heat it outdoors or under extraction.".into(),
    }
}

fn good_for(purpose: Purpose, to: &str) -> Words {
    match purpose {
        Purpose::Hammers => "Hammers, hardy tools, drifts. A struck end at most 45 HRC.".into(),
        Purpose::Shafts => format!("Shafts, pins, levers, to about {to} HRC.").into(),
        Purpose::Chisels => "Cold chisels and punches. Struck end at most 45 HRC.".into(),
        Purpose::Edges => "Cutting edges: knives, wood chisels, form tools for soft metal.".into(),
        Purpose::Springs => "Springs.".into(),
        Purpose::HotTools => "Tools that touch hot steel: hot punches, drifts, swages.".into(),
        Purpose::Case => "Pins and bushes with a carburized case.".into(),
        Purpose::SoftParts => "Brackets, frames, soft jaws: parts that stay soft.".into(),
        Purpose::Rust => "Parts that must not rust.".into(),
        Purpose::GroundBits => "Lathe bits and scrapers, ground to shape cool, not heated.".into(),
        Purpose::Battering => "Plates that are battered: liners, crusher jaws.".into(),
        Purpose::Blocks => "Blocks, weights, laps.".into(),
        Purpose::Safety => "Nothing that people's safety hangs on.".into(),
    }
}

const fn bad_for(purpose: Purpose) -> &'static str {
    match purpose {
        Purpose::Hammers => "Hammers and other struck tools.",
        Purpose::Shafts => "Shafts and pins under load.",
        Purpose::Chisels => "Cold chisels and punches.",
        Purpose::Edges => "Cutting edges: they will not hold.",
        Purpose::Springs => "Springs.",
        Purpose::HotTools => "Tools that touch hot steel.",
        Purpose::Case => "Carburized parts.",
        Purpose::SoftParts => "Parts that stay soft.",
        Purpose::Rust => "Parts that must not rust.",
        Purpose::GroundBits => "Lathe bits.",
        Purpose::Battering => "Plates that are battered.",
        Purpose::Blocks => "Blocks and weights.",
        Purpose::Safety => "Lifting, steering, brakes, pressure: never.",
    }
}

fn how(test: Test, heat: &str) -> Words {
    match test {
        Test::Magnet => "Hold a magnet to clean bare metal.".into(),
        Test::Spark => "Grind 1 mm in, then touch a clean wheel lightly against a dark wall. Spark a bar you know beside it.".into(),
        Test::Found => "File clean metal below scale and paint: an ordinary file (bites, skates) or your graded set (40-45 HRC).".into(),
        Test::Skin => "Grind a notch about 5 mm deep. File the skin and the bottom of the notch.".into(),
        Test::CouponOil => format!("Saw a 6 mm piece from the middle of the bar. Heat it evenly to {heat}, 20 to 45 °C (40 to 80 °F) past where the magnet lets go, 5 minutes, then oil at once, moving. Grind 0.3 mm off and file it; do not temper it.").into(),
        Test::Snap => "Wrap the coupon in cloth, clamp half of it in the vice, strike it. Look at the grain.".into(),
        Test::CouponWater => format!("A second 6 mm piece from beside the first, the same {heat}, into hand-warm water. It may crack. Grind 0.3 mm off and file it.").into(),
    }
}

const fn why(test: Test) -> &'static str {
    match test {
        Test::Magnet => "It costs nothing and sets stainless and manganese steel apart.",
        Test::Spark => {
            "Forks and bursts show the carbon; spear points, dull and plain lines show alloy."
        }
        Test::Found => "It sets soft bar, pre-hard bar, springs and hard tools apart.",
        Test::Skin => "A hard skin over a soft middle is induction hardening or a case.",
        Test::CouponOil => {
            "How hard it gets in oil tells the carbon better than anything else on the bench."
        }
        Test::Snap => "The coupon is there already: the break shows whether it hardened through.",
        Test::CouponWater => {
            "The step from oil to water sets plain, shallow steel apart from alloy."
        }
    }
}

pub(super) fn refuse(what: UnknownRefusal<'_>) -> [Words; 3] {
    use UnknownRefusal as R;
    match what {
        R::Answer { test: of, given, known } => [
            format!("{given} is no answer to this test: {}.", test(of)).into(),
            known.to_owned().into(),
            "Take the answer that comes nearest, or leave the test out.".into(),
        ],
        R::Coupon { given } => [
            format!("{given} does not say what the coupon was quenched in.").into(),
            "oil:50-55 HRC, water:>60 HRC".into(),
            "Write the bath, a colon, and what the files said.".into(),
        ],
        R::CouponTwice { bath } => [
            format!("The coupon in {bath} is given twice.").into(),
            "one coupon for each bath".into(),
            "Give the harder of the two: a coupon comes out soft by mistake, not hard.".into(),
        ],
        R::Span(error) => span(error),
    }
}

fn span(error: &Error) -> [Words; 3] {
    const ALLOWED: &str = "50-55 HRC, >60 HRC, <40 HRC, 55 HRC";
    match *error {
        Error::OutOfRange { given, min, max } => [
            format!("{} HRC is outside what a file can tell of a coupon.", Shown(given)).into(),
            format!("{} to {} HRC", Shown(min), Shown(max)).into(),
            "Leave an end open that no file reaches: >60 HRC, <40 HRC.".into(),
        ],
        Error::UpsideDown { low, high } => [
            format!(
                "From {} down to {} HRC: the lower limit must stand below the upper one.",
                Shown(low),
                Shown(high)
            )
            .into(),
            ALLOWED.into(),
            "Exchange the limits.".into(),
        ],
        Error::Open => [
            "No limit, so nothing is said.".into(),
            ALLOWED.into(),
            "Leave the test out, or say what the files said.".into(),
        ],
    }
}

fn small(text: &str) -> String {
    let mut signs = text.chars();
    signs.next().into_iter().flat_map(char::to_lowercase).chain(signs).collect()
}

//! English for heating and quenching.
//!
//! What is said of fire, hands, eyes, fumes and corners, and the lists to tick off, are common practice without a
//! source, and say so where they stand. The stop at hand-warm (50 to 65 °C) is in the papers of tool steels.

use std::borrow::Cow;

use biteband_quantity::{Bounds, OutOfBounds, Shown};
use biteband_steel::furnace::{Error, KnownPoint, Protection, RuleOfHold};
use biteband_steel::quench::Medium;
use biteband_steel::transform::CrackReason;

use super::heat::{BathFault, Heat, HeatRefusal, List, Magnet};
use super::reach_english::medium;
use super::steel_english::capital;

type Words = Cow<'static, str>;

const fn protection(protection: Protection) -> &'static str {
    match protection {
        Protection::Open => {
            "Heated in the open: above about 700 °C (1300 °F) the skin scales and loses carbon all the time it is hot."
        }
        Protection::Coated => {
            "Coated: the skin keeps most of its carbon where the coat holds. Let it dry fully before it goes in."
        }
        Protection::Foil => {
            "Wrapped in stainless foil: double the seams and press out the air. Foil cuts hands. In its foil a part cools too slowly for an oil or water quench: cut it open and quench at once, or take an air-hardening steel."
        }
        Protection::Charcoal => {
            "Packed in a box with charcoal: the skin keeps its carbon or gains some. The box needs its own time to heat."
        }
        Protection::Atmosphere => "In gas or vacuum: the skin keeps nearly all its carbon.",
    }
}

const fn crack(reason: CrackReason) -> &'static str {
    match reason {
        CrackReason::Equivalent => {
            "carbon and alloy together are above what water forgives (equivalent above 0.525)"
        }
        CrackReason::AlloyInWater => "an alloy steel with 0.35 % carbon or more in water",
        CrackReason::CarbonInWater => {
            "0.35 to 0.50 % carbon in water: for simple, stout shapes only"
        }
        CrackReason::MuchCarbonInWater => "more than 0.50 % carbon in water",
        CrackReason::LateMartensite => {
            "it hardens late and cold, below 300 °C (570 °F), when nothing gives any more"
        }
    }
}

const fn rule(rule: RuleOfHold) -> &'static str {
    match rule {
        RuleOfHold::MinutePerMillimetre => "1 min per mm after it is hot",
        RuleOfHold::HalfHourPerInch => "half an hour per inch after it is hot",
        RuleOfHold::HourPerInchInAll => "1 h per inch, the heating included",
        RuleOfHold::ToolSteel => "10 to 30 min whatever the size, for low-alloy tool steel",
    }
}

const fn point(point: KnownPoint) -> &'static str {
    match point {
        KnownPoint::WaterBoils => {
            "Water boils in a pan in the oven (1 °C lower for each 300 m of height). Never water near molten metal or salt."
        }
        KnownPoint::TinMelts => {
            "A piece of pure tin slumps in a dry steel cup. Solder will not do: it is an alloy."
        }
        KnownPoint::ZincMelts => {
            "A piece of pure zinc slumps in a dry steel cup. Its smoke makes ill: take it out as soon as it has melted, with the doors of the shop open."
        }
        KnownPoint::AluminiumMelts => {
            "A piece of pure aluminium wire sags in a dry steel cup; alloys melt earlier."
        }
        KnownPoint::MagnetLetsGo => {
            "A piece of plain steel no longer holds a magnet. Magnet on a rod, out of the heat again at once."
        }
    }
}

fn fault(fault: BathFault<'_>) -> String {
    let assumed = |assumed| if assumed { ", the lowest of its kind," } else { "" };
    match fault {
        BathFault::Rule { rule } => {
            format!("That heat it would bear, but one US gallon per pound asks for {rule}")
        }
        BathFault::TooHot { limit } => format!("It may reach {limit} at most"),
        BathFault::NearFlash { flash, assumed: by } => format!(
            "That is within 60 °C (108 °F) of its flash point ({flash}{})",
            assumed(by).trim_end_matches(',')
        ),
        BathFault::PastFlash { flash, assumed: by } => format!(
            "That is past its flash point ({flash}{}): thick smoke and fire",
            assumed(by).trim_end_matches(',')
        ),
    }
}

fn with_spread(spread: &str) -> String {
    format!("give or take {spread}")
}

pub(super) fn say(phrase: Heat<'_>) -> Words {
    use Heat as P;
    match phrase {
        P::HeatTo { range } => format!("Heat to {range} of the metal.").into(),
        P::HeatAt { at } => format!("Heat to {at} of the metal, as asked.").into(),
        P::ThenThrough { minutes } => format!("It is hot through after about {minutes}.").into(),
        P::ThenHold { minutes } => format!("Then hold {minutes}.").into(),
        P::BathEnough => "The bath is large enough.".into(),

        P::Window { range, case: false } => format!("Hardening window of the grade: {range}.").into(),
        P::Window { range, case: true } => format!("Hardening window of the carburized part: {range}.").into(),
        P::WindowByFormula { range, ac3, spread } => format!("For a composition no window is on record. By common practice, 30 to 60 °C (54 to 108 °F) above Ac3, which by formulas is about {ac3}, {}: {range}.", with_spread(spread)).into(),
        P::NoWindow { at } => format!("No window is known for this composition, so whether {at} is right cannot be told.").into(),
        P::CrossCheck { range, ac3, spread, agrees: true, .. } => format!("By common practice, 30 to 60 °C (54 to 108 °F) above Ac3 (by formulas about {ac3}, {}), it would be {range}: that agrees.", with_spread(spread)).into(),
        P::CrossCheck { range, ac3, spread, apart, agrees: false } => format!("By common practice, 30 to 60 °C (54 to 108 °F) above Ac3 (by formulas about {ac3}, {}), it would be {range}: that differs by {apart}. What the grade's own sources say goes first.", with_spread(spread)).into(),
        P::Magnet { place: Magnet::Below, low, high, point } => format!("A magnet lets go at about {point}, which is inside the window: it reaches from {low} below that point to {high} above. Gone magnet alone does not tell that the part is hot enough.").into(),
        P::Magnet { place: Magnet::Past, low, high, point } => format!("A magnet lets go at about {point}; the window is {low} to {high} above that. Quenched as the magnet lets go, it would be too cold.").into(),
        P::Magnet { place: Magnet::Far, low, high, point } => format!("A magnet lets go at about {point}; the window is {low} to {high} above that, so far that the magnet is no help. It needs a thermometer.").into(),
        P::BelowWindow { at, range } => format!("{at} is below the window of {range}: it will not harden fully.").into(),
        P::AboveWindow { at, range } => format!("{at} is above the window of {range}: the grain grows, it cracks more easily, and soft austenite may stay.").into(),
        P::Preheat { steps } => format!("Preheat at {} until the part is as hot as the oven, then go on.", steps.join(", then ")).into(),
        P::Protection(how) => protection(how).into(),
        P::NotInTheOpen => "Do not heat this steel in the open: at its temperature the skin is spoiled deeper than is ground off. Foil, a box, gas or vacuum.".into(),
        P::MarkLow => "(low confidence)".into(),

        P::Through { low, high, from, size, within } => format!("Heating through from {from}: {low} if it scales, {high} if it stays bright, until the middle of {size} is within {within} of an oven that is at heat. One part by itself; several close together, or a small kiln that must recover, take longer.").into(),
        P::AtLeast => "These are the least: count from when the wrap or box has the colour of the oven.".into(),
        P::TooHotToTell { most } => format!("Above {most} the properties of steel are not known here, so there is no time, no lost carbon and no heat balance. Keep to the maker's sheet.").into(),
        P::NothingToHeat => "The part starts within 20 °C (36 °F) of the oven: there is nothing to heat through.".into(),
        P::Soak(text) => format!("The grade's data say of the hold: {text}.").into(),
        P::Rule { rule: of, minutes } => format!("{}: {minutes}", rule(of)).into(),
        P::TradeDisagrees { low, high } => format!("The trade does not agree: its rules give {low} to {high} for this section, and none of them is proved.").into(),
        P::NoRules => "The rules of the trade by size are not made for so hot a steel.".into(),
        P::HoldTaken { minutes, own: true } => format!("Taken here: {minutes}, by its own data (the middle where they give a range).").into(),
        P::HoldTaken { minutes, own: false } => format!("Taken here: {minutes}, the middle of the rules.").into(),
        P::HoldUnknown => "How long to hold depends on the section.".into(),
        P::Lost { minutes, low, high, protected: false } => format!("In {minutes} the skin loses carbon to a depth of {low} to {high} (by two models, from memory, low confidence).").into(),
        P::Lost { minutes, low, high, protected: true } => format!("In open air {minutes} would take the carbon out to a depth of {low} to {high} (by two models, from memory, low confidence); the protection holds most of that off.").into(),
        P::Grind { grind } => format!("Grind at least {grind} off a face before a file or a tester says anything: a file that bites an unground surface proves nothing. Then two steps more of 0.1 mm (0.004 in): harder with depth is lost carbon, soft all the way is not hardened.").into(),

        P::NamedMedia { media } => format!("Its sources quench it in {media}.").into(),
        P::FitBetween { medium: of } => format!("Its sources do not name {}, but sharper and milder baths.", medium(of)).into(),
        P::FitSharper { medium: of } => format!("CAUTION: {} is sharper than every bath that its sources name; it may crack.", capital(medium(of))).into(),
        P::FitMilder { medium: of } => format!("{} is milder than every bath that its sources name: except in thin sections it will not get hard.", capital(medium(of))).into(),
        P::Crack(reason) => crack(reason).into(),
        P::CrackHigh => "Risk of quench cracks high:".into(),
        P::CrackRaised => "Risk of quench cracks raised:".into(),

        P::Enough { litres, rise, peak, needed, limit } => format!("{litres} warm by about {rise} to {peak} at most; {limit} is the limit. Enough: {needed} are needed.").into(),
        P::Stop { litres, rise, peak, fault: of @ BathFault::Rule { .. } } => format!("Stop: the bath is too small. {litres} would warm by about {rise} to {peak}. {}.", fault(of)).into(),
        P::Stop { litres, rise, peak, fault: of } => format!("Stop: the bath is too small. {litres} would warm by about {rise}, to near {peak}. {}.", fault(of)).into(),
        P::StopUnknownOil => "Stop: do not quench in used, thinned, motor or unknown oil. Nobody knows its flash point, its water and what is dissolved in it. Take a quench oil with its data sheet, or fresh vegetable oil.".into(),
        P::Needed { needed, rule, balance } => format!("Needed are {needed}: {rule} by the rule of one US gallon per pound, {balance} by the heat balance; and room above it.").into(),
        P::StartsTooHot { limit } => format!("Stop: no volume helps: the bath starts at the {limit} that it may reach, or above. Let it cool, or take an oil with a higher flash point.").into(),
        P::SafeSide => "Reckoned on the safe side: all the heat of the part down to 60 °C (140 °F) stays in the bath. Count tongs and basket as part.".into(),
        P::StartAssumed { start } => format!("No temperature of the bath is given, so {start} is taken. Measure it.").into(),
        P::FlashAssumed { flash } => format!("No flash point is given, so {flash}, the lowest of its kind, is taken (partly from memory). The drum's data sheet has the true one: add flash=180C.").into(),
        P::BelowGuide { flash } => format!("A flash point of {flash} is lower than that of any quench oil in a machinists' guide, 177 °C (350 °F).").into(),
        P::Margin { margin, flash } => format!("From the peak to the flash point ({flash}) are {margin}; 60 °C (108 °F) at least are wanted.").into(),
        P::NoVolume => "How much is in the tank is not given, so whether it is enough is open: write oil:6L@25C.".into(),
        P::NoBalance { medium: Medium::Air } => "Air has no volume that warms. Stand the part free, and blow evenly if at all.".into(),
        P::NoBalance { medium: of } => format!("How much {} is needed, and how warm it may get, is in its maker's sheet.", medium(of)).into(),
        P::Tank { long, wide, liquid, wall, litres } => format!("To cover the part, upright: a tank of {long} by {wide} inside, liquid {liquid} deep, walls {wall} high: {litres} (common practice, no source).").into(),
        P::TankMore => "The heat asks for more than that: make it deeper or wider.".into(),

        P::GiveSection => "Give the section, as in 50 mm round, for the time to heat through and what the skin loses.".into(),
        P::GiveLength => "Give the length of the part, or its mass, for the bath.".into(),
        P::GiveQuench => "Give the bath with its volume and temperature, as in oil:6L@25C, to see whether it is enough.".into(),
        P::CaseOnly => "This grade hardens only in a carburized case: without carburizing a quench gives no useful hardness.".into(),
        P::NoMassOfPlate => "A plate has no width here: give a flat with its width, or the mass, for the bath.".into(),

        P::Dial { at, dial, offset, over, width } => {
            let way = if over { "much" } else { "little" };
            format!("For {at} set the dial to {dial}: it shows {offset} too {way} there, give or take {width}.").into()
        }
        P::NotCheckedThere { at, low, high } => format!("The oven was checked for readings of {low} to {high}; what it shows at {at} is not known from that. Check it near there.").into(),
        P::Point { point: of, at, width } => format!("{at}, give or take {width}: {}", point(of)).into(),

        P::Burns => "Glasses or a face shield, dry leather gloves, cotton or wool, no plastics. Black steel may still be at 500 °C (930 °F): treat every part as hot (common practice, no source).".into(),
        P::Fumes => "Never heat galvanised, plated, painted or oily parts: zinc, cadmium and chromium smoke make ill. Strip and degrease first; door open or extraction on (common practice, no source).".into(),
        P::Lead => "This steel holds lead: no heating without extraction.".into(),
        P::OilFire => "Hot steel in oil can catch fire: metal tank with a lid that shuts it, nothing that burns near or above, outdoors or under extraction. The whole part under in one quick move: half in, half out is what lights it. No drop of water in oil or on tongs. Extinguisher for burning liquids (class B) at hand and the lid first; never water (common practice, no source).".into(),
        P::CookingOil => "Burning cooking oil wants the lid or a wet-chemical extinguisher (class F, in America K); never water (common practice, no source).".into(),
        P::Steam => "Water spits and steams: go in upright and under in one move; a closed hollow can burst (common practice, no source).".into(),
        P::Brine => "Brine spits and eats tools and eyes: shield on, rinse the part afterwards (common practice, no source).".into(),
        P::HotSalt => "Molten salt bursts out at the least water, and some salts explode with soot, oil or cyanide: only with its maker's sheet and training (common practice, no source).".into(),
        P::Charcoal => "A box with charcoal gives off carbon monoxide: outdoors or under extraction (common practice, no source).".into(),
        P::Gas => "Inert gas takes the place of air: open the room before leaning in (common practice, no source).".into(),
        P::TemperAtOnce { stop } => format!("Untempered it is as brittle as glass and may crack by itself: temper as soon as it is hand-warm, about {stop}, within the hour, and not tomorrow.").into(),
        P::LocalCodes => "Fire codes, insurance and landlord may forbid an open oil quench. This reckoning does not replace them.".into(),
        P::ListTitle(list) => match list {
            List::Oven => "Is the oven true? (common practice, no source; the temperatures have theirs)",
            List::BeforeHeating => "Before heating (common practice, no source)",
            List::BeforeQuench => "Before the quench (common practice, no source)",
            List::After => "After the quench (common practice, no source)",
        }
        .into(),
    }
}

pub(super) const fn items(list: List) -> &'static [&'static str] {
    match list {
        List::Oven => &[
            "Put the sample where the part lies, beside the tip of the thermocouple, in a dry steel cup; not on the floor or near a wall that glows.",
            "Let the oven stand near the point for half an hour, then raise it by 5 °C (9 °F) every 10 minutes.",
            "Write down the dial when it happens. Do it twice; once more while cooling shows how far the sample lags.",
            "Wet or damp samples spit: dry them on the oven first.",
            "Check close to the temperature that is wanted: an offset at 230 °C (450 °F) says little at 800 °C (1470 °F).",
        ],
        List::BeforeHeating => &[
            "Sharp corners and notches broken or rounded, above all inside ones.",
            "Steps in section eased, or the thin side shielded; holes near an edge plugged with clay or wool.",
            "Scratches, stamps and hammer marks across the part ground out.",
            "Black skin of the bar off; stock left to grind afterwards.",
            "A trial piece of the same bar goes in with it.",
            "Wire or tongs ready, tried cold, warmed so that they do not chill a thin part.",
            "Dry, clean, degreased.",
        ],
        List::BeforeQuench => &[
            "Tank stands firm, near, full, stirred; its temperature measured.",
            "Lid and extinguisher in reach, not behind the fire.",
            "Way from oven to tank clear, three steps at most, walked once with a cold part.",
            "Who opens the oven, who holds the part, who takes the lid when it flares, who calls for help.",
            "How it goes in: longest size upright, flat sides vertical, under in one move, then move it up and down.",
        ],
        List::After => &[
            "Leave it under until it is hand-warm; do not lift it out to look.",
            "Temper at once.",
            "File only on a ground spot, on the teeth side of the file, twice in the same place.",
            "Lid on the tank when the part is out; look again after half an hour.",
        ],
    }
}

fn outside(inside: &OutOfBounds) -> [Words; 3] {
    let Bounds { min, max, symbol, .. } = inside.bounds;
    [
        format!("{}.", capital(&inside.to_string())).into(),
        format!("{} to {} {symbol}", Shown(min), Shown(max)).into(),
        "Look at the unit and the decimal point.".into(),
    ]
}

pub(super) fn refuse(what: HeatRefusal<'_>) -> [Words; 3] {
    use HeatRefusal as R;
    match what {
        R::NoSteel => [
            "There is no steel to heat.".into(),
            "4140, or C=0.41,Mn=0.85,Cr=1.0,Mo=0.2".into(),
            "Name a grade or give a composition.".into(),
        ],
        R::SteelTwice => [
            "A grade and a composition are given together, and they need not agree.".into(),
            "one of them".into(),
            "Give the composition of the certificate if there is one, otherwise the grade.".into(),
        ],
        R::DoesNotHarden { grade } => [
            format!("{grade} does not harden by heating and quenching.").into(),
            "a grade that hardens".into(),
            "See its card for how it is used, or take another steel.".into(),
        ],
        R::Ages { grade } => [
            format!("{grade} is not hardened by a quench: it was solution treated at the mill and hardens by ageing.").into(),
            "a grade that hardens by quenching".into(),
            "Age it: its card has the temperatures and times.".into(),
        ],
        R::Never { grade, medium: of, named } => [
            format!("{grade} is not to be quenched in {}: it cracks, and nobody has figures for it.", medium(of)).into(),
            named.to_owned().into(),
            "Take a bath that its sources name, or a steel for the bath at hand.".into(),
        ],
        R::NoFormula { error } => [
            format!("No hardening window for this composition: {error}.").into(),
            "0 to 0.6 % C, with Mn, and 5 % of alloy at most".into(),
            "Name the grade, or give the hardening temperature of the bar's paper.".into(),
        ],
        R::Protection { given } => [
            format!("\"{given}\" is no protection that is known here.").into(),
            "open, coated, foil, charcoal, atmosphere".into(),
            "Take the one that comes nearest.".into(),
        ],
        R::OvenPair { given } => [
            format!("\"{given}\" is no check of an oven.").into(),
            "240C=231.9C, or 240C=tin".into(),
            "Write what the dial showed, an equals sign, and the true temperature or what melted: water, tin, zinc, aluminium, magnet.".into(),
        ],
        R::Oven(Error::TooFarOff { dial, truth }) => [
            format!("A dial of {} °C at {} °C is a fault and no offset.", Shown(*dial), Shown(*truth)).into(),
            "up to 150 °C apart".into(),
            "Look for a wrong unit, a wrong or reversed thermocouple, or a sensor in the wrong place.".into(),
        ],
        R::Oven(&Error::Quantity(inside)) | R::Outside(inside) => outside(&inside),
        R::Oven(error) => [
            format!("{}.", capital(&error.to_string())).into(),
            "checks whose dial and truth rise together, 1 °C apart at least".into(),
            "Look through the checks: one of them is misread or stands twice.".into(),
        ],
    }
}

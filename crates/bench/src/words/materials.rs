//! English for classes of materials: a name that a machinist would use, and for a class without a table
//! why there is none and what can be said all the same.
//!
//! The Brinell ranges of cast iron are common practice of foundries, no source; that graphite parts
//! Rockwell from Brinell is said by every standard here in its scope, which names steel alone.

use biteband_hardness::Material;

pub(super) const fn name(material: Material) -> &'static str {
    match material {
        Material::CarbonAlloySteel => "Steel that a magnet holds",
        Material::AusteniticPlate => "Stainless a magnet ignores: soft plate",
        Material::AusteniticSheet => "Stainless a magnet ignores: sheet",
        Material::NickelAlloy => "Nickel and high-nickel alloys",
        Material::CartridgeBrass => "Cartridge brass, 70/30",
        Material::LeadedBrass => "Common brass, about 60 % copper",
        Material::WroughtAluminium => "Wrought aluminium",
        Material::HighAlloyToolSteel => "High-speed and high-chromium steel (M2, D2, H13)",
        Material::CaseHardenedSteel => "Hard skin: carburised, nitrided, induction-hardened",
        Material::ColdWorkedSteel => "Cold-drawn or cold-rolled steel, not annealed",
        Material::CastIron => "Cast iron",
        Material::CopperAlloy => "Copper, bronze, other brass",
        Material::Hardmetal => "Carbide (hardmetal)",
    }
}

/// Names in the middle of a sentence.
pub(super) const fn in_words(material: Material) -> &'static str {
    match material {
        Material::CarbonAlloySteel => "carbon and alloy steel",
        Material::AusteniticPlate => "annealed austenitic stainless plate",
        Material::AusteniticSheet => "austenitic stainless sheet",
        Material::NickelAlloy => "nickel alloys",
        Material::CartridgeBrass => "cartridge brass",
        Material::LeadedBrass => "brass with about 60 % copper",
        Material::WroughtAluminium => "wrought aluminium",
        Material::HighAlloyToolSteel => "high-alloy tool steel",
        Material::CaseHardenedSteel => "case-hardened steel",
        Material::ColdWorkedSteel => "cold-worked steel",
        Material::CastIron => "cast iron",
        Material::CopperAlloy => "copper alloys",
        Material::Hardmetal => "hardmetal",
    }
}

/// Why a class has no table.
pub(super) const fn refused(material: Material) -> &'static str {
    match material {
        Material::HighAlloyToolSteel => {
            "High-speed and high-chromium tool steels keep hard carbides and retained austenite, so the tables of plain and alloy steel do not hold for them. ISO 18265 gives them tables of their own, which are not here."
        }
        Material::CaseHardenedSteel => {
            "A hard skin over a soft core reads differently under every load: a light test sees the skin, a heavy one breaks through to the core. No table joins the two."
        }
        Material::ColdWorkedSteel => {
            "Cold work changes how steel hardens under the indenter itself, so ball and cone no longer agree as in the tables, and strength least of all."
        }
        Material::CastIron => {
            "Graphite makes Rockwell and Brinell part company in cast iron: the cone reads the iron between the flakes, the ball reads the whole. The steel tables do not hold."
        }
        Material::CopperAlloy => {
            "Only cartridge brass and common brass have a table here; coppers and bronzes work-harden in their own way."
        }
        Material::Hardmetal => {
            "Hardmetal has tables of its own, in HRA and HV, which are not here."
        }
        // These have tables, and no refusal is ever made for them.
        _ => "",
    }
}

/// What can be said without a table.
pub(super) const fn instead(material: Material) -> &'static str {
    match material {
        Material::HighAlloyToolSteel => {
            "Measure in the scale that is asked for. As a rough guide only, take the steel tables and count at least 1 HRC more doubt than they show."
        }
        Material::CaseHardenedSteel => {
            "Measure the skin with a load light enough for it: HR15N, HR30N, HV1 to HV10; the thinnest case for each test stands under Indentation. State case depth and hardness apart."
        }
        Material::ColdWorkedSteel => {
            "Measure in the scale that is asked for, and take strength from a tensile test."
        }
        Material::CastIron => {
            "Ask for Brinell. Common practice, no source: ordinary grey iron is 140 to 200 HBW, stronger grades 200 to 270. A corner that skates a file and burns drills is chilled white iron, 400 to 500: grind it or anneal it, there is nothing to temper."
        }
        Material::CopperAlloy | Material::Hardmetal => "Measure in the scale that is asked for.",
        _ => "",
    }
}

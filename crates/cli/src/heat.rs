//! `biteband heat`.

use std::io;

use biteband_bench::answer::{HeatAnswer, HeatQuestion, heat};
use biteband_bench::format::sentence;
use biteband_bench::words::SteelWords;
use clap::Args;

use crate::output::{Output, Stop};
use crate::section::SectionArgs;
use crate::words;

#[derive(Args, Debug)]
pub(crate) struct HeatArgs {
    /// Any designation of the grade: 4140, EN19
    #[arg(required_unless_present = "composition", conflicts_with = "composition")]
    steel: Option<String>,
    /// Mass percent in place of a grade: C=0.41,Mn=0.85,Cr=1.0,Mo=0.2
    #[arg(long, value_name = "LIST")]
    composition: Option<String>,
    #[command(flatten)]
    section: SectionArgs,
    /// Everything hot that goes into the bath together, in place of the mass of the section: 2.7kg, 6lb
    #[arg(long, value_name = "MASS", allow_hyphen_values = true)]
    mass: Option<String>,
    /// The bath: oil, oil:6L@25C, water:good:20L@15C, oil:6L@25C:flash=180C
    #[arg(long, value_name = "BATH")]
    quench: Option<String>,
    /// Hardening temperature, in place of the middle of the window: 850C
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    at: Option<String>,
    /// How warm the part goes into the furnace; 20C if not given
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    start: Option<String>,
    /// open, coated, foil, charcoal or atmosphere; open if not given
    #[arg(long, value_name = "HOW")]
    protection: Option<String>,
    /// A check of the oven, once for each: "240C=231.9C", "240C=tin"
    #[arg(long, value_name = "DIAL=TRUTH", allow_hyphen_values = true)]
    oven: Vec<String>,
}

pub(crate) fn run(output: &mut Output, args: HeatArgs) -> Result<(), Stop> {
    let question = HeatQuestion {
        steel: args.steel,
        composition: args.composition,
        section: args.section.into(),
        mass: args.mass,
        quench: args.quench,
        at: args.at,
        start: args.start,
        protection: args.protection,
        oven: args.oven,
        units: output.units,
    };
    let answer = heat(output.language, &question)?;
    if output.json {
        output.object(&answer)?;
    } else {
        print(output, &answer)?;
    }
    Ok(())
}

fn print(output: &mut Output, answer: &HeatAnswer) -> io::Result<()> {
    let language = output.language;
    output.text(0, &answer.verdict)?;
    for said in &answer.understood {
        output.text(0, said)?;
    }
    output.line("")?;
    let part = |text: Option<&String>| text.cloned().unwrap_or_default();
    let before = [
        answer.harden.text.clone(),
        part(answer.oven.as_ref().map(|oven| &oven.text)),
        answer.preheat_text.clone(),
        answer.protection.text.clone(),
        part(answer.heat_through.as_ref().map(|through| &through.text)),
        answer.hold.text.clone(),
    ];
    output.list(before.iter().map(String::as_str).filter(|text| !text.is_empty()))?;
    for rule in &answer.hold.rules {
        output.text(4, &rule.text)?;
    }
    // The stop stands above already.
    let bath = part(answer.bath.as_ref().map(|bath| &bath.text));
    let bath = bath.strip_prefix(&answer.verdict).map_or(bath.as_str(), str::trim).to_owned();
    let after = [
        part(answer.skin.as_ref().map(|skin| &skin.text)),
        answer.quench.text.clone(),
        bath,
        part(answer.tank.as_ref().map(|tank| &tank.text)),
    ];
    output.list(after.iter().map(String::as_str).filter(|text| !text.is_empty()))?;
    if !answer.notes.is_empty() {
        output.line("")?;
        output.list(answer.notes.iter().map(String::as_str))?;
    }
    if !answer.hazards.is_empty() {
        output.line("")?;
        output.text(0, &language.steel(SteelWords::HazardsHead))?;
        let hazards: Vec<String> = answer.hazards.iter().map(|one| sentence(one)).collect();
        output.list(hazards.iter().map(String::as_str))?;
    }
    output.line("")?;
    output.list(answer.cautions.iter().map(String::as_str))?;
    for list in &answer.checklists {
        output.line("")?;
        output.text(0, &list.title)?;
        if list.list == "oven" {
            output.list(answer.known_points.iter().map(|point| point.text.as_str()))?;
        }
        output.list(list.items.iter().map(String::as_str))?;
    }
    output.line("")?;
    output.text(0, &words::see_source(language, &answer.sources.join(", ")))
}

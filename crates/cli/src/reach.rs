//! `biteband reach`.

use std::io;

use biteband_bench::answer::{ReachAnswer, ReachQuestion, reach};
use biteband_bench::format::{Units, fixed};
use clap::Args;

use crate::output::{Output, Stop};
use crate::section::SectionArgs;
use crate::words;

/// A sixteenth of an inch in mm: places of the end-quench bar are counted in them.
const SIXTEENTH: f64 = 25.4 / 16.0;

/// What hardness a section can reach.
#[derive(Args, Debug)]
pub(crate) struct ReachArgs {
    /// Any designation of the grade: 4140, EN19
    #[arg(required_unless_present = "composition", conflicts_with = "composition")]
    steel: Option<String>,
    /// Mass percent in place of a grade: C=0.41,Mn=0.85,Cr=1.0,Mo=0.2
    #[arg(long, value_name = "LIST")]
    composition: Option<String>,
    #[command(flatten)]
    section: SectionArgs,
    /// The bath: oil, oil:mild, "fast oil:good", water, brine, air
    #[arg(long, value_name = "BATH")]
    quench: Option<String>,
    /// Wanted hardness: "50 HRC", "50-54 HRC"; of a single number, at least that
    #[arg(long, value_name = "HARDNESS")]
    target: Option<String>,
    /// Kind of part, for its usual hardness and its cautions: "cold chisel"
    #[arg(long, value_name = "PART")]
    part: Option<String>,
}

pub(crate) fn run(output: &mut Output, args: ReachArgs) -> Result<(), Stop> {
    let ReachArgs { steel, composition, section, quench, target, part } = args;
    let section = section.into();
    let units = output.units;
    let question = ReachQuestion { steel, composition, section, quench, target, part, units };
    let answer = reach(output.language, &question)?;
    if output.json {
        output.object(&answer)?;
    } else {
        print(output, &answer)?;
    }
    Ok(())
}

fn print(output: &mut Output, answer: &ReachAnswer) -> io::Result<()> {
    for said in &answer.understood {
        output.text(0, said)?;
    }
    output.text(0, &answer.asked)?;
    output.line("")?;
    output.text(0, &answer.verdict)?;
    output.text(0, &answer.say)?;
    output.line("")?;
    for position in &answer.positions {
        // Of a published range the place of the bar says nothing.
        let at = position.jominy_mm.filter(|_| position.meaning == "band");
        let at = at.map_or_else(String::new, |at| match output.units {
            Units::Metric => format!("J {} mm", fixed(at.mid, 0)),
            Units::Inch => format!("J{}", fixed(at.mid / SIXTEENTH, 0)),
        });
        let line = format!("  {:<14}{:<18}{at}", position.name, position.shown);
        output.line(line.trim_end())?;
    }
    if !answer.ways_out.is_empty() {
        output.line("")?;
        output.list(answer.ways_out.iter().map(|way| way.text.as_str()))?;
    }
    if !answer.parts.is_empty() {
        output.line("")?;
        let rows = answer.parts.iter().map(|part| format!("{}, {}", part.part, part.text));
        output.list(rows.collect::<Vec<_>>().iter().map(String::as_str))?;
    }
    output.line("")?;
    output.list(answer.cautions.iter().map(String::as_str))?;
    output.line("")?;
    output.text(0, &answer.basis)?;
    let rest = answer.on_record.iter().chain(&answer.notes);
    output.list(rest.map(String::as_str))?;
    output.line("")?;
    output.text(0, &words::see_source(output.language, &answer.sources.join(", ")))
}

//! `biteband temper`.

use std::io;

use biteband_bench::answer::{TemperAnswer, TemperQuestion, temper};
use clap::Args;

use crate::args::delimiter;
use crate::output::{Output, Stop};
use crate::section::SectionArgs;
use crate::{temper_rows, words};

#[derive(Args, Debug)]
pub(crate) struct TemperArgs {
    /// Any designation of the grade: 4140, EN19
    #[arg(required_unless_present_any = ["composition", "csv"], conflicts_with_all = ["composition", "csv"])]
    steel: Option<String>,
    /// Mass percent in place of a grade: C=0.41,Mn=0.85,Cr=1.0,Mo=0.2
    #[arg(long, value_name = "LIST")]
    composition: Option<String>,
    /// Temperature of the metal: 220C, 428F; several tempers as 220C/2h, 300C/1h
    #[arg(long, value_name = "TEMPERATURE", allow_hyphen_values = true)]
    at: Option<String>,
    /// Time at heat, of this temper or of each temper of the plan: 2h, 90min; 2h if not given
    #[arg(long = "for", value_name = "TIME", allow_hyphen_values = true)]
    held: Option<String>,
    /// A further temper, once for each: 300C/1h
    #[arg(long, value_name = "TEMPER", allow_hyphen_values = true)]
    then: Vec<String>,
    /// A temper that a part to be drawn back has had, once for each: 205C/2h
    #[arg(long, value_name = "TEMPER", allow_hyphen_values = true)]
    done: Vec<String>,
    /// Hardness that was measured as quenched: "57 HRC"
    #[arg(long, value_name = "HARDNESS")]
    as_quenched: Option<String>,
    /// Wanted hardness: "45 HRC", "50-54 HRC", "58 HRC min"
    #[arg(long, value_name = "HARDNESS")]
    target: Option<String>,
    /// An own result with this steel, once for each, as the oven's dial showed it: "53 HRC@220C/2h"
    #[arg(long, value_name = "RESULT")]
    learn: Vec<String>,
    /// A check of the oven, once for each: "240C=231.9C", "240C=tin"
    #[arg(long, value_name = "DIAL=TRUTH", allow_hyphen_values = true)]
    oven: Vec<String>,
    /// How many times each temper is done; what the grade wants if not given
    #[arg(long, value_name = "COUNT", value_parser = clap::value_parser!(u8).range(1..=4))]
    times: Option<u8>,
    /// There is no time left today for the full temper
    #[arg(long)]
    tonight: bool,
    #[command(flatten)]
    section: SectionArgs,
    /// Tempers many rows of a file, or of standard input with -
    #[arg(long, value_name = "FILE", conflicts_with_all = [
        "at", "held", "then", "done", "as_quenched", "target", "composition", "learn", "oven", "times", "tonight",
        "round", "tube", "plate", "square", "hex", "flat", "length",
    ])]
    csv: Option<String>,
    /// Sign between the fields of the file: , ; or tab
    #[arg(long, value_name = "SIGN", default_value = ",", value_parser = delimiter, requires = "csv")]
    delimiter: u8,
}

pub(crate) fn run(output: &mut Output, args: TemperArgs) -> Result<(), Stop> {
    if let Some(path) = &args.csv {
        return temper_rows::run(output, path, args.delimiter);
    }
    let question = TemperQuestion {
        steel: args.steel,
        composition: args.composition,
        at: args.at,
        held: args.held,
        then: args.then,
        done: args.done,
        as_quenched: args.as_quenched,
        target: args.target,
        learn: args.learn,
        oven: args.oven,
        section: args.section.into(),
        times: args.times,
        hurried: args.tonight,
        units: output.units,
    };
    let answer = temper(output.language, &question)?;
    if output.json {
        output.object(&answer)?;
    } else {
        print(output, &answer)?;
    }
    Ok(())
}

fn print(output: &mut Output, answer: &TemperAnswer) -> io::Result<()> {
    output.text(0, &answer.verdict)?;
    for said in &answer.understood {
        output.text(0, said)?;
    }
    if !answer.plan.is_empty() {
        output.line("")?;
        output.list(answer.plan.iter().map(|step| step.text.as_str()))?;
    }
    output.list(answer.ages.iter().skip(1).map(|age| age.text.as_str()))?;
    for group in [&answer.warnings, &answer.notes, &answer.cautions, &answer.basis] {
        if !group.is_empty() {
            output.line("")?;
            output.list(group.iter().map(String::as_str))?;
        }
    }
    if let Some(colour) = &answer.colour {
        output.line("")?;
        output.text(0, colour)?;
    }
    output.line("")?;
    output.text(0, &words::see_source(output.language, &answer.sources.join(", ")))
}

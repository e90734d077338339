//! `biteband next`.

use std::io;

use biteband_bench::answer::{NextQuestion, NextStepAnswer, next};
use biteband_bench::words::{NextStep, TemperPage};
use clap::Args;

use crate::args::FileArgs;
use crate::file;
use crate::output::{Output, Stop};
use crate::section::SectionArgs;
use crate::words;

#[derive(Args, Debug)]
#[expect(clippy::struct_excessive_bools, reason = "each is a switch of the command line")]
pub(crate) struct NextArgs {
    /// Any designation of the grade; without it nothing is said of tempers
    #[arg(conflicts_with = "composition")]
    steel: Option<String>,
    /// Mass percent in place of a grade: C=0.41,Mn=0.85,Cr=1.0,Mo=0.2
    #[arg(long, value_name = "LIST")]
    composition: Option<String>,
    /// Strokes, the same as --strokes: "55:b,b,s 50:k,k"
    #[arg(long, value_name = "STROKES", conflicts_with = "strokes")]
    files: Option<String>,
    #[command(flatten)]
    evidence: FileArgs,
    /// What was done to it last: bought, quenched or tempered
    #[arg(long, value_name = "STATE")]
    stage: Option<String>,
    /// A temper so far, once for each: 205C/2h
    #[arg(long, value_name = "TEMPER", allow_hyphen_values = true)]
    done: Vec<String>,
    /// An own result with this steel, once for each, as the oven's dial showed it: "53 HRC@220C/2h"
    #[arg(long, value_name = "RESULT")]
    learn: Vec<String>,
    /// A check of the oven, once for each: "240C=231.9C", "240C=tin"
    #[arg(long, value_name = "DIAL=TRUTH", allow_hyphen_values = true)]
    oven: Vec<String>,
    /// How long a further temper is held; 2h if not given
    #[arg(long = "for", value_name = "TIME", allow_hyphen_values = true)]
    held: Option<String>,
    #[command(flatten)]
    section: SectionArgs,
    /// The bath, for what hardening gives: oil, water:good
    #[arg(long, value_name = "BATH")]
    quench: Option<String>,
    /// Leave out what steel and treatment promise
    #[arg(long)]
    no_prior: bool,
    /// The part is at its size and may not be hardened again
    #[arg(long)]
    at_size: bool,
    /// It was heated well above its window
    #[arg(long)]
    overheated: bool,
    /// There is no time left today for a full temper
    #[arg(long)]
    tonight: bool,
}

pub(crate) fn run(output: &mut Output, mut args: NextArgs) -> Result<(), Stop> {
    if args.files.is_some() {
        args.evidence.strokes = args.files.take();
    }
    let question = NextQuestion {
        steel: args.steel,
        composition: args.composition,
        evidence: file::question(output, args.evidence)?,
        stage: args.stage,
        done: args.done,
        learn: args.learn,
        oven: args.oven,
        held: args.held,
        section: args.section.into(),
        quench: args.quench,
        no_prior: args.no_prior,
        at_size: args.at_size,
        overheated: args.overheated,
        hurried: args.tonight,
        units: output.units,
    };
    let answer = next(output.language, &question)
        .map_err(|refusal| words::with_option_for_set(output.language, refusal))?;
    if output.json {
        output.object(&answer)?;
    } else {
        print(output, &answer)?;
    }
    Ok(())
}

fn print(output: &mut Output, answer: &NextStepAnswer) -> io::Result<()> {
    output.text(0, &answer.verdict)?;
    output.text(0, &answer.why)?;
    for said in &answer.understood {
        output.text(0, said)?;
    }
    output.list(answer.cautions.iter().map(String::as_str))?;
    let (first, others) = match answer.options.split_first() {
        Some((first, others)) => (Some(first), others),
        None => (None, &[][..]),
    };
    if let Some(first) = first {
        let undone = [first.dial.as_str(), first.chances.as_str(), first.undone.as_str()];
        for text in undone.into_iter().filter(|text| !text.is_empty()) {
            output.text(0, text)?;
        }
    }
    if !others.is_empty() {
        output.line("")?;
        let head = output.language.next_step(NextStep::Others);
        output.text(0, &head)?;
        for one in others {
            let closed = if one.open {
                String::new()
            } else {
                format!("({})", output.language.temper_page(TemperPage::NotNow))
            };
            let parts = [
                one.text.as_str(),
                closed.as_str(),
                one.chances.as_str(),
                one.undone.as_str(),
                one.caution.as_str(),
            ];
            let parts: Vec<&str> = parts.into_iter().filter(|text| !text.is_empty()).collect();
            output.list(std::iter::once(parts.join(" ").as_str()))?;
        }
    }
    for group in [&answer.learned, &answer.notes] {
        if !group.is_empty() {
            output.line("")?;
            output.list(group.iter().map(String::as_str))?;
        }
    }
    output.line("")?;
    output.text(0, &words::see_source(output.language, &answer.sources.join(", ")))
}

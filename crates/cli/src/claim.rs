//! `biteband claim`.

use std::io;

use biteband_bench::answer::{ClaimAnswer, ClaimQuestion, claim, parse_reading};
use clap::Args;

use crate::args::FileArgs;
use crate::file;
use crate::output::{Output, Stop};
use crate::words;

#[derive(Args, Debug)]
pub(crate) struct ClaimArgs {
    /// What the paper says: "28-32 HRC", "363 HBW", "1000 MPa min", "52 HRC / 544 HV", "condition T"
    #[arg(value_name = "CLAIM", required = true)]
    claim: Vec<String>,
    /// Readings on the part, once for each instrument and place: "288 HBW +-8", "ultrasonic: 640 HV"
    #[arg(long, value_name = "READING")]
    measured: Vec<String>,
    /// Strokes, the same as --strokes: "55:b,b,s 50:k,k"
    #[arg(long, value_name = "STROKES", conflicts_with = "strokes")]
    files: Option<String>,
    /// The grade that the paper names: its reach and its condition letter are checked
    #[arg(long, value_name = "NAME")]
    steel: Option<String>,
    /// simple, guarded:0.95, U, 0.83U or 3sigma; guarded:0.95 if not given
    #[arg(long, value_name = "RULE")]
    rule: Option<String>,
    /// Where it was measured: skin or core
    #[arg(long, value_name = "PLACE")]
    place: Option<String>,
    /// Where the paper's number was measured: skin or core; skin if not given
    #[arg(long, value_name = "PLACE")]
    claimed_place: Option<String>,
    #[command(flatten)]
    evidence: FileArgs,
}

pub(crate) fn run(output: &mut Output, mut args: ClaimArgs) -> Result<(), Stop> {
    if args.evidence.target.is_some() {
        return Err(words::claim_is_the_target(output.language).into());
    }
    if args.files.is_some() {
        args.evidence.strokes = args.files.take();
    }
    let measured: Result<Vec<_>, _> =
        args.measured.iter().map(|text| parse_reading(output.language, text)).collect();
    let question = ClaimQuestion {
        claim: args.claim.join(" "),
        measured: measured?,
        files: file::question(output, args.evidence)
            .map_err(|refusal| words::with_option_for_set(output.language, refusal))?,
        steel: args.steel,
        rule: args.rule,
        place: args.place,
        claimed_place: args.claimed_place,
        units: output.units,
    };
    let answer = claim(output.language, &question)
        .map_err(|refusal| words::with_option_for_set(output.language, refusal))?;
    if output.json {
        output.object(&answer)?;
    } else {
        print(output, &answer)?;
    }
    Ok(())
}

fn print(output: &mut Output, answer: &ClaimAnswer) -> io::Result<()> {
    output.text(0, &answer.verdict_text)?;
    output.text(0, &answer.rule_text)?;
    for said in &answer.understood {
        output.text(0, said)?;
    }
    output.list(answer.readings.iter().map(|reading| reading.shown.as_str()))?;
    let wrong = answer.paper.iter().filter(|one| one.wrong);
    output.list(wrong.map(|one| one.text.as_str()))?;
    output.line("")?;
    output.text(0, &format!("{} {}", answer.settle.text, answer.settle.why))?;
    for caution in &answer.cautions {
        output.text(0, caution)?;
    }
    if !answer.doubt.is_empty() {
        output.line("")?;
        output.text(0, words::doubt_title(output.language))?;
        for one in &answer.doubt {
            let percent = format!("{} %", one.percent);
            output.line(&format!("  {:<36} {:>12} {percent:>6}", one.text, one.shown))?;
        }
    }
    // What has no chance of ending it settles nothing.
    let helps = |chance: Option<f64>| chance.is_none_or(|chance| chance >= 0.005);
    let others = answer.ways.iter().filter(|way| way.method != answer.settle.method);
    let others = others.filter(|way| helps(way.chance));
    let others: Vec<String> = others.map(|way| format!("{} {}", way.text, way.why)).collect();
    if !others.is_empty() {
        output.line("")?;
        output.text(0, words::other_ways(output.language))?;
        output.list(others.iter().map(String::as_str))?;
    }
    output.line("")?;
    let mut last = "";
    for one in &answer.achievable {
        // A claim that is open on a side says the same of every means.
        if one.text != last {
            output.text(0, &one.text)?;
        }
        last = &one.text;
    }
    if let Some(risk) = &answer.risk {
        output.text(0, &risk.text)?;
    }
    output.line("")?;
    let asides = answer.paper.iter().filter(|one| !one.wrong).map(|one| one.text.as_str());
    let remarks = answer.claim.notes.iter().map(|note| note.text.as_str());
    output.list(asides.chain(remarks).chain(answer.notes.iter().map(String::as_str)))?;
    output.line("")?;
    output.text(0, &words::see_source(output.language, &answer.sources.join(", ")))
}

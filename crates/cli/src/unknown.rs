//! `biteband unknown`.

use std::io;

use biteband_bench::answer::{UnknownAnswer, UnknownQuestion, parse_coupons, unknown};
use clap::Args;

use crate::output::{Output, Stop};
use crate::words;

/// Families below this share of a hundred are not listed in the text.
const LISTED: u32 = 1;

/// What was seen of a bar of unknown steel.
#[derive(Args, Debug)]
pub(crate) struct UnknownArgs {
    /// What a magnet does: sticks, weak, none
    #[arg(long, value_name = "ANSWER")]
    magnet: Option<String>,
    /// The spark: none, straw, forks, bursts, spears, plain, bushy
    #[arg(long, value_name = "ANSWER")]
    spark: Option<String>,
    /// A file on the bar as found: bites, skates, or its hardness as in "28-32 HRC"
    #[arg(long, value_name = "ANSWER")]
    found: Option<String>,
    /// The skin against 5 mm deeper: same, hard, soft
    #[arg(long, value_name = "ANSWER")]
    skin: Option<String>,
    /// What files say of a 6 mm coupon from the middle: oil:"50-55 HRC" water:">60 HRC"
    #[arg(long = "coupon", value_name = "BATH:HARDNESS", num_args = 1..)]
    coupons: Vec<String>,
    /// How the coupon broke: bent, torn, fine, coarse
    #[arg(long, value_name = "ANSWER")]
    snap: Option<String>,
}

pub(crate) fn run(output: &mut Output, args: UnknownArgs) -> Result<(), Stop> {
    let UnknownArgs { magnet, spark, found, skin, coupons, snap } = args;
    let [oil, water] = parse_coupons(output.language, &coupons)?;
    let units = output.units;
    let question = UnknownQuestion { magnet, spark, found, skin, oil, water, snap, units };
    let answer = unknown(output.language, &question)?;
    if output.json {
        output.object(&answer)?;
    } else {
        print(output, &answer)?;
    }
    match &answer.refused {
        Some(refusal) => {
            output.flush()?;
            output.aside(refusal)?;
            Err(Stop::Told)
        }
        None => Ok(()),
    }
}

fn print(output: &mut Output, answer: &UnknownAnswer) -> io::Result<()> {
    if !answer.understood.is_empty() {
        output.list(answer.understood.iter().map(String::as_str))?;
        output.line("")?;
    }
    output.text(0, &answer.verdict)?;
    let agree = answer.clashes.is_empty();
    if agree {
        output.text(0, &answer.carbon.text)?;
        output.line("")?;
        for family in answer.families.iter().filter(|family| family.percent >= LISTED) {
            output.line(&format!("  {:>3} %  {}", family.percent, family.name))?;
        }
    }
    for clash in &answer.clashes {
        output.line("")?;
        output.text(0, &clash.text)?;
        output.list(clash.without.iter().map(String::as_str))?;
        output.line("")?;
        output.list(clash.why.iter().map(String::as_str))?;
    }
    if let Some(next) = &answer.next {
        output.line("")?;
        output.text(0, &words::next_test(output.language, &next.name))?;
        output.text(2, &next.how)?;
        output.text(2, &next.why)?;
    }
    if let Some(settled) = &answer.settled {
        output.line("")?;
        output.text(0, settled)?;
    }
    for (title, list) in [
        (words::good_for(output.language), &answer.uses),
        (words::not_for(output.language), &answer.avoid),
    ] {
        if list.is_empty() {
            continue;
        }
        output.line("")?;
        output.line(title)?;
        output.list(list.iter().map(|one| one.text.as_str()))?;
    }
    if agree {
        output.line("")?;
        if !answer.promise.text.is_empty() {
            output.text(0, &answer.promise.text)?;
        }
        output.text(0, &answer.quench.text)?;
    }
    output.line("")?;
    output.list(answer.cautions.iter().map(String::as_str))?;
    output.line("")?;
    output.list(answer.notes.iter().map(String::as_str))?;
    output.line("")?;
    output.text(0, &words::see_source(output.language, &answer.sources.join(", ")))
}

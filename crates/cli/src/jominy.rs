//! `biteband jominy`.

use std::io;

use biteband_bench::answer::{JominyAnswer, JominyQuestion, jominy};
use biteband_bench::format::{Units, fixed};
use biteband_bench::words::Harden;

use crate::output::{Output, Stop};
use crate::words;

pub(crate) fn run(
    output: &mut Output,
    steel: Option<String>,
    composition: Option<String>,
) -> Result<(), Stop> {
    let question = JominyQuestion { steel, composition, units: output.units };
    let answer = jominy(output.language, &question)?;
    if output.json {
        output.object(&answer)?;
    } else {
        print(output, &answer)?;
    }
    Ok(())
}

fn print(output: &mut Output, answer: &JominyAnswer) -> io::Result<()> {
    let language = output.language;
    for said in &answer.understood {
        output.text(0, said)?;
    }
    output.text(0, &answer.basis)?;
    output.line("")?;
    output.line(&language.harden(Harden::Columns))?;
    for point in &answer.curve {
        let place = match output.units {
            Units::Metric => format!("{} mm", fixed(point.mm, 1)),
            Units::Inch => format!("{} in", fixed(point.mm / 25.4, 3)),
        };
        let [low, mid, high] = &point.shown;
        let sixteenths = format!("J{}", point.sixteenths);
        output.line(&format!("  {sixteenths:<4}{place:>9}  {low:>5}  {mid:>10}  {high:>5}"))?;
    }
    output.line("")?;
    output.text(0, &answer.ideal_diameter)?;
    let outside = answer.outside.iter().map(|outside| outside.text.as_str());
    output.list(outside.chain(answer.notes.iter().map(String::as_str)))?;
    output.line("")?;
    for caution in &answer.cautions {
        output.text(0, caution)?;
    }
    output.line("")?;
    output.text(0, &words::see_source(language, &answer.sources.join(", ")))
}

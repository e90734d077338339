//! `biteband steel`.

use std::io;

use biteband_bench::answer::{
    CandidateAnswer, SteelAnswer, SteelListing, SteelQuestion, TargetsAnswer, find_steels, steel,
    steel_targets, steels,
};
use biteband_bench::words::SteelWords;
use serde::Serialize;

use crate::output::{Output, Stop};
use crate::words;

#[derive(Serialize)]
struct Grades {
    grades: Vec<SteelListing>,
}

/// One of the four: a name, a text to look for, a kind of part, or everything.
pub(crate) fn run(
    output: &mut Output,
    name: &str,
    find: Option<String>,
    target: Option<&str>,
) -> Result<(), Stop> {
    let (language, units) = (output.language, output.units);
    if let Some(name) = find {
        let answer = find_steels(language, &SteelQuestion { name, units })?;
        if output.json {
            output.object(&answer)?;
        } else {
            print_matches(output, &answer.matches)?;
        }
    } else if let Some(part) = target {
        let answer = steel_targets(language, units, part)?;
        if output.json {
            output.object(&answer)?;
        } else {
            print_targets(output, &answer)?;
        }
    } else if name.is_empty() {
        let grades = steels(language);
        if output.json {
            output.object(&Grades { grades })?;
        } else {
            for grade in grades {
                let key = if grade.name.starts_with(grade.key) { "" } else { grade.key };
                output.text(0, &format!("{key} {}", grade.text))?;
            }
        }
    } else {
        let answer = steel(language, &SteelQuestion { name: name.to_owned(), units })?;
        if output.json {
            output.object(&answer)?;
        } else {
            print_card(output, &answer)?;
        }
    }
    Ok(())
}

fn print_card(output: &mut Output, card: &SteelAnswer) -> io::Result<()> {
    let language = output.language;
    output.text(0, &card.title)?;
    for text in &card.verdict {
        output.text(0, text)?;
    }
    output.line("")?;
    let avoid = card.avoid.as_ref().map_or("", |avoid| avoid.text.as_str());
    let groups = [
        card.composition.text.as_str(),
        &card.hardening.text,
        &card.section,
        &card.supplied.text,
        &card.as_quenched.text,
        &card.tempering.text,
        avoid,
        &card.working.text,
    ];
    output.list(groups.into_iter().filter(|text| !text.is_empty()))?;
    if !card.ages.is_empty() {
        output.line("")?;
        for age in &card.ages {
            output.text(2, &age.text)?;
        }
    }
    if !card.hazards.is_empty() {
        output.line("")?;
        output.text(0, &language.steel(SteelWords::HazardsHead))?;
        output.list(card.hazards.iter().map(String::as_str))?;
    }
    if !card.notes.is_empty() {
        output.line("")?;
        output.text(0, &language.steel(SteelWords::NotesHead))?;
        output.list(card.notes.iter().map(String::as_str))?;
    }
    output.line("")?;
    for caution in &card.cautions {
        output.text(0, caution)?;
    }
    let sources: Vec<&str> = card.sources.iter().map(|source| source.id).collect();
    output.text(0, &words::see_source(language, &sources.join(", ")))
}

fn print_matches(output: &mut Output, matches: &[CandidateAnswer]) -> io::Result<()> {
    for one in matches {
        output.text(0, &format!("{}: {}", one.designation, one.name))?;
        output.text(2, &one.closeness_text)?;
        if !one.note.is_empty() {
            output.text(2, one.note)?;
        }
    }
    Ok(())
}

fn print_targets(output: &mut Output, answer: &TargetsAnswer) -> io::Result<()> {
    let mut part = "";
    for row in &answer.targets {
        if row.part != part {
            part = row.part;
            output.text(0, part)?;
        }
        output.text(2, &row.text)?;
        if !row.caution.is_empty() {
            output.text(4, row.caution)?;
        }
        output.text(4, &words::see_source(output.language, &row.cited.sources.join(", ")))?;
    }
    output.line("")?;
    for caution in &answer.cautions {
        output.text(0, caution)?;
    }
    Ok(())
}

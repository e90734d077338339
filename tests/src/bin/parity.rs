//! Answers the questions of `tests/parity/questions.jsonl`, one JSON line for each.
//!
//! `parity.mjs` beside the questions asks the npm package the same and compares every number to the
//! last bit: `serde_json` writes the shortest text that reads back as the same double.

use std::error::Error;
use std::io::{self, Write};

use biteband_bench::Refusal;
use biteband_bench::answer::{
    ClaimQuestion, ConvertQuestion, FileQuestion, HeatQuestion, IndentQuestion, JominyQuestion,
    NextQuestion, ReachQuestion, SteelQuestion, TemperQuestion, UnknownQuestion, assess, claim,
    convert, heat, indent, jominy, next, reach, sources, steel, table, tables, temper, unknown,
};
use biteband_bench::words::Language;
use serde::Serialize;
use serde_json::{Value, json};

const LANGUAGE: Language = Language::English;

fn main() -> Result<(), Box<dyn Error>> {
    let path = std::env::args().nth(1).ok_or("usage: parity QUESTIONS")?;
    let text = std::fs::read_to_string(&path).map_err(|error| format!("{path}: {error}"))?;
    let mut out = io::BufWriter::new(io::stdout().lock());
    for (number, line) in (1..).zip(text.lines()) {
        let answer = answer(line).map_err(|error| format!("{path}, line {number}: {error}"))?;
        writeln!(out, "{answer}")?;
    }
    out.flush()?;
    Ok(())
}

fn answer(line: &str) -> Result<Value, Box<dyn Error>> {
    let Value::Object(asked) = serde_json::from_str(line)? else {
        return Err("a question is an object".into());
    };
    let Some((kind, question)) = asked.into_iter().next() else {
        return Err("a question names what it asks".into());
    };
    match kind.as_str() {
        "convert" => {
            let question: ConvertQuestion = serde_json::from_value(question)?;
            outcome(convert(LANGUAGE, &question))
        }
        "fileTest" => {
            let question: FileQuestion = serde_json::from_value(question)?;
            outcome(assess(LANGUAGE, &question))
        }
        "indent" => {
            let question: IndentQuestion = serde_json::from_value(question)?;
            outcome(indent(LANGUAGE, &question))
        }
        "steel" => {
            let question: SteelQuestion = serde_json::from_value(question)?;
            outcome(steel(LANGUAGE, &question))
        }
        "jominy" => {
            let question: JominyQuestion = serde_json::from_value(question)?;
            outcome(jominy(LANGUAGE, &question))
        }
        "heat" => {
            let question: HeatQuestion = serde_json::from_value(question)?;
            outcome(heat(LANGUAGE, &question))
        }
        "reach" => {
            let question: ReachQuestion = serde_json::from_value(question)?;
            outcome(reach(LANGUAGE, &question))
        }
        "temper" => {
            let question: TemperQuestion = serde_json::from_value(question)?;
            outcome(temper(LANGUAGE, &question))
        }
        "nextStep" => {
            let question: NextQuestion = serde_json::from_value(question)?;
            outcome(next(LANGUAGE, &question))
        }
        "unknown" => {
            let question: UnknownQuestion = serde_json::from_value(question)?;
            outcome(unknown(LANGUAGE, &question))
        }
        "claim" => {
            let question: ClaimQuestion = serde_json::from_value(question)?;
            outcome(claim(LANGUAGE, &question))
        }
        "table" => outcome(table(LANGUAGE, question.as_str().unwrap_or_default())),
        "tables" => outcome(Ok(tables())),
        "sources" => outcome(sources(LANGUAGE, None)),
        other => Err(format!("{other} is not asked here").into()),
    }
}

fn outcome(answer: Result<impl Serialize, Refusal>) -> Result<Value, Box<dyn Error>> {
    Ok(match answer {
        Ok(answer) => serde_json::to_value(answer)?,
        Err(refused) => json!({ "refused": refused }),
    })
}

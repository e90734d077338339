//! English for the page of sheets to print.

use super::Paper;

pub(super) const fn say(paper: Paper) -> &'static str {
    match paper {
        Paper::What => "Sheet",
        Paper::Strip => "strip of scales",
        Paper::Chart => "chart",
        Paper::Card => "file-test card",
        Paper::Thickness => "thinnest section",
        Paper::Size => "Paper size",
        Paper::Span => "From - to",
        Paper::SpanHint => "On the scale chosen under Convert; empty for the usual ends",
        Paper::Scales => "Scales on the sheet",
        Paper::Print => "Print",
        Paper::Why => {
            "Black on white, to scale on the paper you choose. Print at 100 %, without fitting to the page."
        }
    }
}

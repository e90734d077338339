//! Hardness from an indentation: the number, what roundness does to it, and whether the test is valid.

use super::convert::flags;
use super::indent_answer::{
    BetterAnswer, ConvertedAnswer, CorrectionAnswer, IndentAnswer, LimitAnswer, MachineAnswer,
    MachineLimitAnswer, MarkAnswer, OutlierAnswer, SeriesAnswer, ThinnestAnswer,
};
use super::indent_question::{Asked, IndentQuestion, Round, read};
use super::source::standard;
use crate::format::{self, Units};
use crate::measure::INCH;
use crate::refusal::Refusal;
use crate::words::{Indent, Language, Phrase};
use biteband_hardness::designation::Remark;
use biteband_hardness::indentation::{
    Check, Cited, Indentation, Instrument, LimitKind, Material, Rule, Series, Test,
    default_standard_uncertainty, fitting, index, indices, machine_limits, valid_tests,
};
use biteband_hardness::{Axis, Choice, Reading, Scale, Seen, Source, TableId, convert};
use biteband_quantity::{Millimetres, Shown};

fn source(cited: Cited) -> &'static str {
    cited.source.get().map_or("", |source| source.key())
}

/// A measured number: Rockwell to a tenth, the others to three figures.
fn number(scale: Scale, value: f64) -> String {
    if scale.is_rockwell() {
        format::plain(value)
    } else {
        format::converted(Axis::Hardness(scale), value)
    }
}

fn with_scale(scale: Scale, value: f64) -> String {
    format!("{} {scale}", number(scale, value))
}

/// A length in mm, or in inches where strength would be in ksi.
fn length(units: Units, mm: f64) -> String {
    let (value, decimals, unit) = match units {
        Units::Inch => (mm / INCH, if mm < 2.54 { 4 } else { 3 }, "in"),
        Units::Metric => (mm, if mm < 0.1 { 4 } else { 3 }, "mm"),
    };
    let text = format::fixed(value, decimals);
    format!("{} {unit}", text.trim_end_matches('0').trim_end_matches('.'))
}

/// How the answer speaks.
#[derive(Clone, Copy)]
struct Speech {
    language: Language,
    units: Units,
    scale: Scale,
}

impl Speech {
    fn say(self, phrase: Indent<'_>) -> String {
        self.language.indent(phrase).into_owned()
    }

    /// A sentence about a rule; one from memory says so.
    fn rule(self, phrase: Indent<'_>, cited: Cited) -> String {
        let mut text = self.say(phrase);
        if cited.seen == Seen::Recalled {
            text.push_str(&self.language.indent(Indent::FromMemory));
        }
        text
    }

    fn mm(self, mm: f64) -> String {
        length(self.units, mm)
    }

    fn limit(self, check: &Check) -> LimitAnswer {
        let Check { rule, needed, given, holds, cited } = *check;
        let on_scale = matches!(rule, Rule::ScaleLowest | Rule::ScaleHighest);
        let words =
            |value: f64| if on_scale { with_scale(self.scale, value) } else { self.mm(value) };
        let (need, have) = (words(needed), words(given));
        let (needed_text, given_text) = (need.as_str(), have.as_str());
        let phrase = match rule {
            Rule::Thickness { times, of } => {
                Indent::Thickness { times, of, needed: needed_text, given: given_text, holds }
            }
            Rule::ThicknessTable => {
                Indent::ThicknessTable { needed: needed_text, given: given_text, holds }
            }
            Rule::ToEdge { times } | Rule::ToNext { times } => {
                let edge = matches!(rule, Rule::ToEdge { .. });
                Indent::Room { edge, times, needed: needed_text, given: given_text, holds }
            }
            Rule::BrinellSmallest | Rule::BrinellLargest => {
                let smallest = rule == Rule::BrinellSmallest;
                Indent::BrinellShare { smallest, needed: needed_text, given: given_text, holds }
            }
            Rule::ScaleLowest | Rule::ScaleHighest => {
                let low = rule == Rule::ScaleLowest;
                Indent::ScaleEnd { low, needed: needed_text, given: given_text, holds }
            }
        };
        LimitAnswer {
            rule: rule_name(rule),
            needed,
            given,
            unit: if on_scale { self.scale.symbol() } else { "mm" },
            holds,
            source: source(cited),
            seen: cited.seen.key(),
            text: self.rule(phrase, cited),
        }
    }

    fn thinnest(self, made: &Indentation) -> Vec<ThinnestAnswer> {
        made.thinnest()
            .map(|(rule, needed, cited)| {
                let text = self.mm(needed);
                let phrase = match rule {
                    Rule::Thickness { times, of } => Indent::Thinnest { times, of, needed: &text },
                    _ => Indent::ThinnestTable { needed: &text },
                };
                ThinnestAnswer {
                    rule: rule_name(rule),
                    needed,
                    source: source(cited),
                    seen: cited.seen.key(),
                    text: self.rule(phrase, cited),
                }
            })
            .collect()
    }

    fn correction(self, round: &Round) -> CorrectionAnswer {
        let scale = self.scale;
        match round {
            Round::Rockwell(found) => {
                let (amount, half) =
                    (format::plain(found.amount()), format::plain(found.half_width));
                let (shown, flat) = (with_scale(scale, found.shown), with_scale(scale, found.flat));
                let phrase =
                    Indent::Added { amount: &amount, half: &half, shown: &shown, flat: &flat };
                let mut text = self.rule(phrase, found.cited);
                if found.beyond_last {
                    text.push(' ');
                    text.push_str(&self.language.indent(Indent::BeyondLast));
                }
                CorrectionAnswer {
                    amount: found.amount(),
                    factor: None,
                    half_width: found.half_width,
                    source: source(found.cited),
                    seen: found.cited.seen.key(),
                    text,
                }
            }
            Round::Vickers(found) => {
                let factor = format::fixed(found.factor, 3);
                let (shown, flat) = (with_scale(scale, found.shown), with_scale(scale, found.flat));
                let phrase = Indent::Multiplied { factor: &factor, shown: &shown, flat: &flat };
                CorrectionAnswer {
                    amount: found.flat - found.shown,
                    factor: Some(found.factor),
                    half_width: found.half_width * found.shown,
                    source: source(found.cited),
                    seen: found.cited.seen.key(),
                    text: self.say(phrase),
                }
            }
        }
    }

    fn series(self, series: &Series) -> SeriesAnswer {
        let two = |value: f64| format::fixed(value, 2);
        let (n, mean, spread) = (series.readings().len(), series.mean(), series.spread());
        let text = spread.map(|spread| {
            let (mean, range) = (two(mean), two(spread.range));
            let (deviation, half) = (two(spread.deviation), two(spread.half_width_95));
            self.say(Indent::Series {
                count: n,
                mean: &mean,
                range: &range,
                deviation: &deviation,
                half: &half,
            })
        });
        let outlier = series.outlier().map(|found| {
            let (place, value) = (found.index + 1, with_scale(self.scale, found.value));
            let cited = found.cited;
            let text = self.rule(Indent::Outlier { value: &value, place }, cited);
            OutlierAnswer { place, value: found.value, text }
        });
        SeriesAnswer {
            n,
            mean,
            range: spread.map(|spread| spread.range),
            sd: spread.map(|spread| spread.deviation),
            standard_uncertainty: spread.map(|spread| spread.of_mean_widened),
            half_width: spread.map(|spread| spread.half_width_95),
            level: 0.95,
            outlier,
            source: spread.map_or("jcgm-100", |spread| source(spread.cited)),
            text: text.unwrap_or_default(),
        }
    }

    fn machine(self, test: Test, value: f64) -> MachineAnswer {
        let limits = machine_limits(self.scale, value);
        let limits = limits.iter().filter_map(|limit| {
            let amount = with_scale(self.scale, limit.amount);
            let name = standard(limit.cited.source.get()?);
            let (amount, standard) = (amount.as_str(), name.as_str());
            let (kind, phrase) = match limit.kind {
                LimitKind::Error => ("error", Indent::MachineError { amount, standard }),
                LimitKind::Repeatability => {
                    ("repeatability", Indent::MachineSpread { amount, standard })
                }
                LimitKind::BlockRange => return None,
            };
            Some(MachineLimitAnswer {
                kind,
                amount: limit.amount,
                source: source(limit.cited),
                seen: limit.cited.seen.key(),
                text: self.rule(phrase, limit.cited),
            })
        });
        let limits = limits.collect();
        let force = match test {
            Test::Vickers { force } | Test::Knoop { force } | Test::Brinell { force, .. } => {
                Some(force)
            }
            Test::Rockwell { .. } => None,
        };
        let assumed =
            default_standard_uncertainty(Instrument::BenchVerified, self.scale, value, force);
        let text = assumed.map(|assumed| {
            let amount = format!("{} {}", format::plain(assumed.amount), self.scale);
            self.say(Indent::AssumedUncertainty { amount: &amount })
        });
        MachineAnswer {
            limits,
            standard_uncertainty: assumed.map(|assumed| assumed.amount),
            source: assumed.map(|assumed| source(assumed.cited)),
            text: text.unwrap_or_default(),
        }
    }

    fn index_limit(
        self,
        test: Test,
        material: Option<Material>,
        value: f64,
    ) -> Option<LimitAnswer> {
        let (Test::Brinell { ball, force }, Some(material)) = (test, material) else { return None };
        let (named, cited) = indices(material, value)?;
        let given = index(ball, force);
        let away = |of: f64| (of - given).abs();
        let mut nearest = *named.first()?;
        for &other in named {
            if away(other) < away(nearest) {
                nearest = other;
            }
        }
        let holds = away(nearest) <= 1e-3 * nearest;
        let list: Vec<String> = named.iter().map(|index| Shown(*index).to_string()).collect();
        let (list, text) =
            (list.join(", "), format!("{}", Shown((given * 1000.0).round() / 1000.0)));
        let text = self.rule(Indent::Index { named: &list, given: &text, holds }, cited);
        Some(LimitAnswer {
            rule: "index",
            needed: nearest,
            given,
            unit: "kgf/mm2",
            holds,
            source: source(cited),
            seen: cited.seen.key(),
            text,
        })
    }
}

const fn rule_name(rule: Rule) -> &'static str {
    match rule {
        Rule::Thickness { .. } => "thickness",
        Rule::ThicknessTable => "thickness_table",
        Rule::ToEdge { .. } => "edge",
        Rule::ToNext { .. } => "next",
        Rule::BrinellSmallest => "brinell_smallest",
        Rule::BrinellLargest => "brinell_largest",
        Rule::ScaleLowest => "scale_low",
        Rule::ScaleHighest => "scale_high",
    }
}

/// Tests that are valid where this one is not: other scales by the tables of steel where it is too thin,
/// other balls and forces where the ball does not fit.
fn better(asked: &Asked, value: f64, broken: &[&'static str]) -> Vec<BetterAnswer> {
    let Asked { made, part, material, .. } = asked;
    let too_thin = broken.iter().any(|rule| rule.starts_with("thickness"));
    let steel = matches!(material, None | Some(Material::Steel)) && converts(made.test);
    let mut found: Vec<Indentation> = Vec::new();
    if let (true, true, Some(thickness)) = (too_thin, steel, part.thickness) {
        let reading = Reading::new(Axis::Hardness(made.test.scale()), value);
        let tests = reading.map(|reading| valid_tests(thickness, reading)).unwrap_or_default();
        found.extend(tests.into_iter().filter_map(|fit| fit.outcome.ok()));
    } else if matches!(made.test, Test::Brinell { .. }) {
        let tests = fitting(value, *material).into_iter();
        found.extend(
            tests.filter_map(|test| Indentation::at(test, value).ok().map(|m| m.on(*part))),
        );
    }
    let fits = found.into_iter().filter(|other| other.test != made.test && other.valid());
    fits.map(|other| BetterAnswer {
        test: other.test.to_string(),
        value: other.value,
        shown: with_scale(other.test.scale(), other.value),
    })
    .collect()
}

/// Whether the tables of steel speak of numbers of this test: of Brinell only those of the index 30.
fn converts(test: Test) -> bool {
    match test {
        Test::Brinell { ball, force } => (index(ball, force) - 30.0).abs() < 0.03,
        _ => true,
    }
}

fn converted(test: Test, value: f64) -> Vec<ConvertedAnswer> {
    let own = Axis::Hardness(test.scale());
    let usual = [Scale::Hrc, Scale::Hv, Scale::Hbw].map(Axis::Hardness);
    let reach = |to: Axis| {
        let found = convert(Reading::new(own, value).ok()?, to, Choice::STEEL).ok()?;
        Some(ConvertedAnswer {
            scale: to.symbol(),
            value: found.at.value,
            half_width: found.width.half,
            table: found.table.get()?.key(),
            flags: flags(&[&found]),
            shown: format::converted_with_unit(to, found.at.value),
        })
    };
    usual.into_iter().filter(|to| *to != own).filter_map(reach).collect()
}

/// Says what an indentation is worth.
///
/// # Errors
/// A refusal when a part of the question cannot be read, when a number cannot be made from the mark, or when
/// no correction for the roundness is known.
///
/// # Example
/// ```
/// use biteband_bench::answer::{IndentQuestion, indent};
/// use biteband_bench::words::Language;
/// let question = IndentQuestion {
///     kind: "vickers".into(),
///     force: Some("294.2N".into()),
///     sizes: vec!["0.415mm".into()],
///     ..Default::default()
/// };
/// // ISO 6507-1, second example of the annex on curved surfaces: 323 HV30.
/// assert_eq!(indent(Language::English, &question).unwrap().designation, "323 HV30");
/// ```
pub fn indent(language: Language, question: &IndentQuestion) -> Result<IndentAnswer, Refusal> {
    let asked = read(language, question)?;
    let Asked { made, series, round, material, .. } = &asked;
    let (test, scale) = (made.test, made.test.scale());
    // Vickers and Knoop have no ends of their own that a rule could name.
    if matches!(test, Test::Vickers { .. } | Test::Knoop { .. }) {
        let _: Reading = Reading::new(Axis::Hardness(scale), made.value)
            .map_err(|error| Refusal::of_hardness(language, &error))?;
    }
    let speech = Speech { language, units: question.units, scale };
    let corrected = round.as_ref().map(|round| match round {
        Round::Rockwell(found) => found.flat,
        Round::Vickers(found) => found.flat,
    });
    let value = corrected.unwrap_or(made.value);

    let mut limits: Vec<LimitAnswer> = made.checks.iter().map(|c| speech.limit(c)).collect();
    limits.extend(speech.index_limit(test, *material, value));
    if let Some(Round::Rockwell(found)) = round {
        let (most, amount) = (format::plain(found.most), format::plain(found.amount()));
        let holds = found.accepted;
        let phrase = Indent::CorrectionLimit { needed: &most, given: &amount, holds };
        limits.push(LimitAnswer {
            rule: "correction",
            needed: found.most,
            given: found.amount(),
            unit: scale.symbol(),
            holds,
            source: source(found.limit),
            seen: found.limit.seen.key(),
            text: speech.rule(phrase, found.limit),
        });
    }
    let mut broken: Vec<&'static str> = Vec::new();
    for limit in limits.iter().filter(|limit| !limit.holds) {
        broken.push(limit.rule);
    }
    let better = if broken.is_empty() { Vec::new() } else { better(&asked, value, &broken) };
    let steel = matches!(material, None | Some(Material::Steel));
    let converted = if steel && converts(test) { converted(test, value) } else { Vec::new() };

    let mut answer = IndentAnswer {
        value: made.value,
        scale: scale.symbol(),
        corrected,
        shown: with_scale(scale, value),
        designation: designation(test, value),
        valid: broken.is_empty(),
        verdict: verdict(speech, &limits, &broken),
        thinnest: speech.thinnest(made),
        mark: MarkAnswer { size: made.size.map(Millimetres::get), depth: made.depth.get() },
        correction: round.as_ref().map(|round| speech.correction(round)),
        better,
        series: series.as_ref().map(|series| speech.series(series)),
        machine: speech.machine(test, value),
        converted,
        notes: Vec::new(),
        cautions: Vec::new(),
        sources: Vec::new(),
        limits,
    };
    answer.notes = notes(speech, &asked, &answer, &broken);
    if !answer.converted.is_empty() {
        answer.cautions.push(language.say(Phrase::ConvertCaution).into_owned());
    }
    answer.sources = sources(&answer, made.cited);
    Ok(answer)
}

/// "640 HV30", "80 HRBW": a ball scale carries the letter of the carbide ball.
fn designation(test: Test, value: f64) -> String {
    let scale = test.scale();
    let letter = if scale.is_ball_rockwell() && scale != Scale::Hr15w { "W" } else { "" };
    format!("{} {test}{letter}", number(scale, value))
}

fn verdict(speech: Speech, limits: &[LimitAnswer], broken: &[&'static str]) -> String {
    if limits.is_empty() {
        return speech.say(Indent::NothingChecked);
    }
    let mut names: Vec<String> = Vec::new();
    for rule in broken {
        let name = speech.say(Indent::RuleName(rule));
        if !names.contains(&name) {
            names.push(name);
        }
    }
    if names.is_empty() {
        return speech.say(Indent::Kept);
    }
    speech.say(Indent::Broken { rules: &names.join(", ") })
}

fn notes(
    speech: Speech,
    asked: &Asked,
    answer: &IndentAnswer,
    broken: &[&'static str],
) -> Vec<String> {
    let mut notes: Vec<Indent<'_>> = Vec::new();
    let too_thin = broken.iter().any(|rule| rule.starts_with("thickness"));
    let tests: Vec<&str> = answer.better.iter().map(|better| better.test.as_str()).collect();
    let tests = tests.join(", ");
    if !tests.is_empty() {
        notes.push(Indent::Better { tests: &tests });
    } else if too_thin {
        notes.push(Indent::BetterNone);
    }
    if too_thin {
        notes.push(Indent::DoNotStack);
    }
    if asked.part.thickness.is_some() {
        notes.extend([Indent::CaseNote, Indent::FarSide]);
    }
    if asked.distance_without_mark {
        notes.push(Indent::NoMark);
    }
    // ASTM E140 Table 2: 95 HRB is 210 HBW and 100 HRB 240, six to a point.
    let value = answer.corrected.unwrap_or(answer.value);
    let near_top = match asked.made.test.scale() {
        Scale::Hrb => value >= 95.0,
        Scale::Hbw => converts(asked.made.test) && (210.0..=250.0).contains(&value),
        _ => false,
    };
    if near_top {
        notes.push(Indent::NearHundredB);
    }
    if !matches!(asked.material, None | Some(Material::Steel)) {
        notes.push(Indent::OtherMetal);
    } else if !converts(asked.made.test) {
        notes.push(Indent::OtherIndex);
    }
    let mut notes: Vec<String> = notes.into_iter().map(|note| speech.say(note)).collect();
    if asked.made.test.scale() == Scale::Hrc && value < 20.0 {
        let below = Phrase::Remark(Remark::BelowVerifiedRockwellC);
        notes.push(speech.language.say(below).into_owned());
    }
    notes
}

fn sources(answer: &IndentAnswer, defined: Cited) -> Vec<&'static str> {
    let mut all = vec![source(defined)];
    all.extend(answer.limits.iter().map(|limit| limit.source));
    all.extend(answer.thinnest.iter().map(|rule| rule.source));
    all.extend(answer.correction.iter().map(|found| found.source));
    all.extend(answer.series.iter().map(|series| series.source));
    all.extend(answer.machine.limits.iter().map(|limit| limit.source));
    all.extend(answer.machine.source);
    let tables = answer
        .converted
        .iter()
        .filter_map(|found| TableId::find(found.table)?.get()?.source().map(Source::key));
    all.extend(tables);
    let mut unique: Vec<&'static str> = Vec::new();
    for name in all {
        if !unique.contains(&name) {
            unique.push(name);
        }
    }
    unique
}

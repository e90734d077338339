//! The page of claims: what the paper says, what was measured, and whether the one bears the other out.

use biteband_evidence::claim::Verdict;
use biteband_hardness::{Axis, designation};
use biteband_quantity::sort_by_number;

use super::claim_rule::{Drawn, middle, rule};
use super::section::BandView;
use super::steel_asked::given;
use super::{Chip, OddsView, Problem, file_test};
use crate::answer::{
    ClaimAnswer, ClaimFound, ClaimQuestion, Claimed, FileQuestion, INSTRUMENTS, MeasuredAnswer,
    Note, SettleAnswer, check_paper, check_rule, claimed, hardness_sources, named, own_words,
    rounded_percent, understood,
};
use crate::format::{self, Units};
use crate::refusal::Refusal;
use crate::state::{App, ClaimField, ClaimReading, ClaimState, Field, OWN_LEVEL, RULES};
use crate::words::{ClaimPage, ClaimSays, Gauge, Language};

/// Everything the page shows.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ClaimView {
    /// Instruments to choose from; the first is the usual one of the scale.
    pub instruments: Vec<Chip>,
    /// Readings that are kept.
    pub kept: Vec<KeptReading>,
    /// What the reading in hand was understood as, once there is an answer.
    pub in_hand: String,
    /// Whether the strokes of the file test count.
    pub files: Chip,
    /// What counts of them.
    pub files_said: Vec<String>,
    /// Where it was measured.
    pub places: Vec<Chip>,
    /// Where the paper's number was measured.
    pub claimed_places: Vec<Chip>,
    /// Why that is asked for, while it was not said.
    pub ask_place: Option<String>,
    /// The steel of the page of steels, while the paper names none.
    pub steel_from: Option<String>,
    /// How sure one has to be.
    pub rules: Vec<Chip>,
    /// The same in words.
    pub rule_text: String,
    /// An own level is asked for.
    pub own_level: bool,
    /// What to do next while something is missing.
    pub hint: Vec<String>,
    /// Problems of fields.
    pub problems: Vec<(Field, Problem)>,
    /// Why there is no answer.
    pub problem: Option<Problem>,
    /// The answer.
    pub verdict: Option<ClaimVerdict>,
    /// What of the paper cannot be right.
    pub wrong: Vec<String>,
    /// Both on one rule.
    pub rule: Option<BandView>,
    /// What the doubt is made of, the greatest first: source, half-width, share.
    pub doubt: Vec<[String; 3]>,
    /// What would settle it: what to do, and why with its chance.
    pub settle: Option<ClaimWay>,
    /// The other ways.
    pub ways: Vec<ClaimWay>,
    /// The best chance that can be had by each means.
    pub best: Vec<String>,
    /// Nothing was measured yet, so that this is what is to be known now.
    pub best_first: bool,
    /// What else is to be said of the paper.
    pub paper: Vec<String>,
    /// Where it can hurt, and what it is not good for.
    pub cautions: Vec<String>,
    /// What names and numbers were taken for.
    pub understood: Vec<String>,
    /// What the answer takes for granted.
    pub notes: Vec<String>,
    /// What the rule costs over many parts.
    pub risk: Option<String>,
    /// What it rests on: name and whether it was read.
    pub sources: Vec<String>,
    /// What a tap does that puts this claim aside; nothing where there is none.
    pub turn: Option<ClaimPage>,
}

impl ClaimView {
    /// The problem of a field, if it has one.
    #[must_use]
    pub fn problem_of(&self, field: ClaimField) -> Option<&Problem> {
        let found = self.problems.iter().find(|(of, _)| *of == Field::Claim(field));
        found.map(|(_, problem)| problem)
    }
}

/// Whether the paper holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClaimVerdict {
    /// What stands above it; empty where nothing was converted.
    pub say: String,
    /// In large letters.
    pub word: &'static str,
    /// The paper cannot be right, whatever was measured.
    pub conflict: bool,
    /// On which side the part most likely lies, and the chances; nothing where they are no knowledge.
    pub odds: Option<OddsView>,
    /// What is said in place of the chances.
    pub aside: String,
    /// What the paper says and what was measured, as the rule shows them.
    pub told: [String; 2],
}

/// A reading that is kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptReading {
    /// Its place in the list.
    pub index: usize,
    /// As typed.
    pub text: String,
    /// What it was understood as, or why it does not count.
    pub aside: String,
}

/// A way to settle it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ClaimWay {
    /// What stands before it; empty where nothing is left to be settled.
    pub lead: &'static str,
    /// What to do.
    pub text: String,
    /// Why, with the chance that it ends it.
    pub why: String,
}

/// Makes the page.
#[must_use]
pub fn claim_page(app: &App, language: Language) -> ClaimView {
    let page = Page { app, state: &app.saved.claim, language, units: app.saved.settings.units };
    let mut view = page.choices();
    let files = page.files(&mut view);
    let Some(says) = given(page.state.text(ClaimField::Says)) else {
        let texts = [ClaimPage::Empty, ClaimPage::Example];
        view.hint = texts.map(|text| page.label(text)).into();
        page.measured(&mut view);
        return view;
    };
    page.answer(&mut view, says, &files);
    view
}

/// A reading that counts, with its place among those that are kept; the one in hand has none.
type Counted = (Option<usize>, crate::answer::ReadingInput);

struct Page<'a> {
    app: &'a App,
    state: &'a ClaimState,
    language: Language,
    units: Units,
}

impl Page<'_> {
    fn label(&self, label: ClaimPage) -> String {
        self.language.claim_page(label).to_owned()
    }

    fn says(&self, phrase: ClaimSays<'_>) -> String {
        self.language.claim_says(phrase)
    }

    fn typing(&self, field: ClaimField) -> bool {
        self.app.session.active == Some(Field::Claim(field))
    }

    fn choices(&self) -> ClaimView {
        let state = self.state;
        let chip = |key: &'static str, label: ClaimPage, chosen: &str| Chip {
            key,
            label: self.label(label),
            on: key == chosen,
        };
        let spots = [("skin", ClaimPage::Skin), ("core", ClaimPage::Core)];
        let labels = [ClaimPage::RuleProved, ClaimPage::RuleSimple, ClaimPage::RuleU];
        let rules = RULES.into_iter().zip(labels).chain([(OWN_LEVEL, ClaimPage::RuleOwn)]);
        let usual = chip("", ClaimPage::Usual, state.instrument());
        let named = INSTRUMENTS.map(|(key, instrument)| Chip {
            key,
            label: self.language.gauge(Gauge::Instrument(instrument)).into_owned(),
            on: key == state.instrument(),
        });
        let places = |chosen: &str| spots.map(|(key, label)| chip(key, label, chosen)).into();
        ClaimView {
            instruments: std::iter::once(usual).chain(named).collect(),
            files: Chip { key: "files", label: self.label(ClaimPage::Files), on: state.files() },
            places: places(state.place()),
            claimed_places: places(state.claimed_place()),
            rules: rules.map(|(key, label)| chip(key, label, state.rule())).collect(),
            own_level: state.rule() == OWN_LEVEL,
            turn: match (state.is_empty(), state.has_last()) {
                (false, _) => Some(ClaimPage::NewClaim),
                (true, true) => Some(ClaimPage::LastClaim),
                (true, false) => None,
            },
            ..ClaimView::default()
        }
    }

    /// What the files say, and what of them counts.
    fn files(&self, view: &mut ClaimView) -> FileQuestion {
        if !self.state.files() {
            return FileQuestion::default();
        }
        let asked = file_test::asked(self.app, self.language);
        let mut grades: Vec<f64> = asked.strokes.iter().map(|stroke| stroke.file).collect();
        sort_by_number(&mut grades, |grade| *grade);
        grades.dedup_by(|one, other| one.total_cmp(other).is_eq());
        view.files_said.push(match asked.strokes.len() {
            0 => self.label(ClaimPage::NoStroke),
            strokes => self.says(ClaimSays::Strokes { strokes, files: grades.len() }),
        });
        if let Some((mean, sd)) = asked.prior {
            let [mean, sd] = [mean, sd].map(format::exact);
            view.files_said.push(self.says(ClaimSays::Expected { mean: &mean, sd: &sd }));
        }
        if !asked.readings.is_empty() {
            view.files_said.push(self.label(ClaimPage::ReadingsApart));
        }
        // One reading that stands on both pages would count twice.
        FileQuestion { readings: Vec::new(), target: None, ..asked }
    }

    /// Readings that can be read, and what is wrong with the others.
    fn measured(&self, view: &mut ClaimView) -> Vec<Counted> {
        let read = |reading: &ClaimReading| {
            let input = reading.input(self.language)?;
            understood(self.language, &input).map(|said| (input, said))
        };
        let mut counted = Vec::new();
        for (index, reading) in self.state.readings().into_iter().enumerate() {
            let aside = match read(&reading) {
                Ok((input, said)) => {
                    counted.push((Some(index), input));
                    said
                }
                Err(refusal) => refusal.message,
            };
            let text = reading.text.trim().to_owned();
            let aside = if aside == text { String::new() } else { aside };
            view.kept.push(KeptReading { index, text, aside });
        }
        let (own, name) = (self.state.in_hand(), Field::Claim(ClaimField::Measured));
        let wanted = self.app.session.missing == Some(name);
        let left = self.app.session.left.contains(&name);
        let problem = if own.is_empty() {
            wanted.then(|| Problem {
                message: self.label(ClaimPage::NeedsReading),
                instead: String::new(),
            })
        } else {
            match read(&own) {
                Ok((input, _)) => {
                    counted.push((None, input));
                    None
                }
                Err(refusal) => (wanted || left).then(|| refusal.into()),
            }
        };
        // The key that found it wanting leads back into the field, and it stays said until something is typed.
        let shown = problem.filter(|_| wanted || !self.typing(ClaimField::Measured));
        view.problems.extend(shown.map(|problem| (name, problem)));
        counted
    }

    /// A text that cannot be read: said once its field is left.
    fn refused(&self, view: &mut ClaimView, field: ClaimField, problem: Problem) {
        if self.typing(field) {
            view.hint = vec![self.label(ClaimPage::Typing)];
        } else {
            view.problems.push((Field::Claim(field), problem));
        }
    }

    /// The steel that the paper names, or that of the page of steels.
    fn steel(&self, view: &mut ClaimView) -> Option<String> {
        let known = |name: &str| named(self.language, self.units, name);
        if let Some(own) = given(self.state.text(ClaimField::Steel)) {
            return match known(&own) {
                Ok(_) => Some(own),
                Err(refusal) => {
                    self.refused(view, ClaimField::Steel, refusal.into());
                    None
                }
            };
        }
        let steel = &self.app.saved.steel;
        let there = steel.picked.as_ref().unwrap_or(&steel.query);
        let there = given(there).filter(|name| !steel.by_composition && known(name).is_ok())?;
        view.steel_from = Some(self.says(ClaimSays::FromSteel { steel: &there }));
        Some(there)
    }

    /// The rule, as questions have it.
    fn rule(&self, view: &mut ClaimView) -> Option<String> {
        if self.state.rule() != OWN_LEVEL {
            return given(self.state.rule());
        }
        let level = given(self.state.text(ClaimField::Level))?;
        match check_rule(self.language, &level) {
            Ok(()) => Some(level),
            Err(refusal) => {
                let instead = self.label(ClaimPage::LevelInstead);
                let problem = Problem { message: refusal.message, instead };
                self.refused(view, ClaimField::Level, problem);
                None
            }
        }
    }

    fn answer(&self, view: &mut ClaimView, says: String, files: &FileQuestion) {
        if let Err(refusal) = check_paper(self.language, &says) {
            self.refused(view, ClaimField::Says, refusal.into());
            self.measured(view);
            return;
        }
        let counted = self.measured(view);
        let paper = ClaimQuestion {
            claim: says,
            steel: self.steel(view),
            rule: self.rule(view),
            place: given(self.state.place()),
            claimed_place: given(self.state.claimed_place()),
            units: self.units,
            ..ClaimQuestion::default()
        };
        let with = |counted: &[Counted]| ClaimQuestion {
            measured: counted.iter().map(|(_, input)| input.clone()).collect(),
            files: files.clone(),
            ..paper.clone()
        };
        let mut found = claimed(self.language, &with(&counted));
        let mut used = counted.as_slice();
        // What is typed right now may be half of it.
        if found.is_err()
            && self.typing(ClaimField::Measured)
            && let Some(((None, _), kept)) = counted.split_last()
        {
            (found, used) = (claimed(self.language, &with(kept)), kept);
        }
        match found {
            Ok(claimed) => self.fill(view, claimed, used),
            Err(refusal) => self.without(view, refusal, &paper),
        }
    }

    /// What holds without a verdict: the paper alone.
    fn without(&self, view: &mut ClaimView, refusal: Refusal, paper: &ClaimQuestion) {
        view.problem = Some(refusal.into());
        if let Ok(Claimed { answer, .. }) = claimed(self.language, paper) {
            about_paper(view, answer, self.language);
            // It tells the way from nothing measured; here something was.
            view.settle = None;
        }
    }

    fn fill(&self, view: &mut ClaimView, claimed: Claimed, counted: &[Counted]) {
        let Claimed { answer, work, found } = claimed;
        let wrong = answer.paper.iter().any(|one| one.wrong);
        for ((index, _), read) in counted.iter().zip(&answer.readings) {
            let row = index.and_then(|index| view.kept.iter_mut().find(|row| row.index == index));
            match row {
                Some(row) => row.aside.clone_from(&read.shown),
                None => view.in_hand.clone_from(&read.shown),
            }
        }
        if let Some(found) = &found {
            view.verdict = Some(self.verdict(&answer, found, work, wrong));
            view.rule = Some(rule(&Drawn {
                language: self.language,
                units: self.units,
                work,
                said: &self.paper_text(&answer, work),
                measured: &self.band(found, work),
                answer: &answer,
                found,
            }));
            let doubt = answer.doubt.iter();
            let rows = doubt
                .map(|one| [one.text.clone(), one.shown.clone(), format!("{} %", one.percent)]);
            view.doubt = rows.collect();
        }
        about_paper(view, answer, self.language);
    }

    /// What the paper says, and what that is in the scale of the answer.
    fn paper_text(&self, answer: &ClaimAnswer, work: Axis) -> String {
        let typed = self.state.text(ClaimField::Says).trim();
        let strength = designation::parse(typed).ok();
        let strength = strength.filter(|one| one.designation().axis == Axis::Tensile);
        let own = if strength.is_some() { typed } else { &answer.claim.understood };
        if answer.claim.scale != answer.scale {
            let there = self.units.range(work, answer.low, answer.high);
            return format!("{own} ({there})");
        }
        strength.map_or_else(
            || own.to_owned(),
            |strength| own_words(self.units, typed, strength.designation()),
        )
    }

    /// What was measured, as a band.
    fn band(&self, found: &ClaimFound, work: Axis) -> String {
        let shown = |value: f64| self.units.with_unit(work, value);
        match (found.low, found.high) {
            (Some(_), Some(_)) => String::new(),
            (None, Some(high)) => self.says(ClaimSays::Below { high: &shown(high) }),
            (Some(low), None) => self.says(ClaimSays::Above { low: &shown(low) }),
            (None, None) => "?".to_owned(),
        }
    }

    fn verdict(
        &self,
        answer: &ClaimAnswer,
        found: &ClaimFound,
        work: Axis,
        wrong: bool,
    ) -> ClaimVerdict {
        let word = match found.verdict {
            Verdict::Agrees => ClaimPage::Agrees,
            Verdict::Disagrees => ClaimPage::Disagrees,
            Verdict::NotProved => ClaimPage::NotProved,
        };
        let side = match found.side {
            _ if wrong => self.label(ClaimPage::PaperWrong),
            Some(side) => self.says(ClaimSays::Side(side)),
            None if answer.estimate.is_none() => self.label(ClaimPage::OpenSide),
            None => self.label(ClaimPage::EitherSide),
        };
        // On an open side the chances rest on where the axis ends, unless the claim lies outside of it altogether.
        let told = answer.estimate.is_some() || found.verdict != Verdict::NotProved;
        let chances = answer.under.zip(answer.inside).zip(answer.over).filter(|_| told);
        let measured = match &answer.estimate {
            Some(estimate) => estimate.shown.clone(),
            None => self.band(found, work),
        };
        let said = self.paper_text(answer, work);
        ClaimVerdict {
            say: match answer.readings.as_slice() {
                [one] if !self.state.files() => self.becomes(one, work),
                _ => String::new(),
            },
            word: self.language.claim_page(word),
            conflict: wrong,
            aside: if chances.is_none() { side.clone() } else { String::new() },
            odds: chances.map(|((under, inside), over)| self.odds([under, inside, over], side)),
            told: [
                self.says(ClaimSays::TheySay { said: &said }),
                self.says(ClaimSays::Measured { shown: &measured }),
            ],
        }
    }

    /// What one reading is in the scale of the answer; empty where it was read in it.
    fn becomes(&self, reading: &MeasuredAnswer, work: Axis) -> String {
        if reading.understood.ends_with(work.unit()) {
            return String::new();
        }
        if reading.beyond.is_some() {
            return reading.shown.clone();
        }
        let (mean, half) = middle(reading);
        let (becomes, half) = (self.units.with_unit(work, mean), self.units.width(work, half));
        self.says(ClaimSays::Is { written: &reading.understood, becomes: &becomes, half: &half })
    }

    fn odds(&self, chances: [f64; 3], verdict: String) -> OddsView {
        let percent = format::percents(chances);
        let ([under, inside, over], [softer, within, harder]) = (chances, percent);
        // The sign of per cent stays with its number where the line is short.
        let shown = |chance: f64, whole: u32| {
            rounded_percent(chance, f64::from(whole)).replace(" %", "\u{a0}%")
        };
        let labels = [
            self.says(ClaimSays::Softer { percent: &shown(under, softer) }),
            self.says(ClaimSays::Inside { percent: &shown(inside, within) }),
            self.says(ClaimSays::Harder { percent: &shown(over, harder) }),
        ];
        OddsView { percent, labels, verdict }
    }
}

/// Whether a way has a chance that is worth a line: what ends nothing settles nothing.
fn helps(way: &SettleAnswer) -> bool {
    way.chance.is_none_or(|chance| chance >= 0.005)
}

/// Everything that is to be said beside the verdict.
fn about_paper(view: &mut ClaimView, answer: ClaimAnswer, language: Language) {
    let measured = view.verdict.is_some();
    let settle = &answer.settle;
    let others = answer.ways.into_iter().filter(|way| way.method != settle.method && helps(way));
    let way =
        |lead: &'static str, way: SettleAnswer| ClaimWay { lead, text: way.text, why: way.why };
    view.ways = others.map(|one| way("", one)).collect();
    let lead = match settle.method {
        "none" => "",
        _ => language.claim_page(ClaimPage::SettleTitle),
    };
    view.settle = Some(way(lead, answer.settle));
    view.best = answer.achievable.into_iter().map(|one| one.text).collect();
    view.best.dedup();
    view.best_first = !measured;
    view.rule_text = answer.rule_text;
    for one in answer.paper {
        match (one.wrong, one.code) {
            (true, _) => view.wrong.push(one.text),
            (false, "ask_place") => view.ask_place = Some(one.text),
            (false, _) => view.paper.push(one.text),
        }
    }
    view.cautions = answer.cautions;
    // What is asked about is for the person to do, what was only written otherwise is not.
    let (asks, read): (Vec<Note>, Vec<Note>) =
        answer.claim.notes.into_iter().partition(|note| note.asks);
    view.paper.extend(asks.into_iter().map(|note| note.text));
    view.understood = answer.understood;
    view.understood.extend(read.into_iter().map(|note| note.text));
    view.understood.extend(answer.readings.into_iter().map(|one| one.shown));
    view.notes = answer.notes;
    view.risk = answer.risk.map(|risk| risk.text);
    let all = hardness_sources();
    let sources = answer.sources.iter().filter_map(|key| all.iter().find(|one| one.id == *key));
    let line =
        |one: &crate::answer::SourceAnswer| format!("{}: {} ({})", one.id, one.title, one.seen);
    view.sources = sources.map(line).collect();
}

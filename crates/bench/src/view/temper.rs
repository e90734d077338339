//! The temper planner: tempers for a hardness, what a temper leaves, the curve, and what own results taught.

use biteband_steel::grade::find;

use super::steel_asked::{Asked, Named, asked, checks, given, section};
use super::temper_curve::{Drawn, curve};
use super::temper_view::{LookedView, PlanView, ResultRow, StepRow, TemperView};
use super::{Chip, Problem};
use crate::answer::{
    HELD, PlanAnswer, TemperAnswer, TemperQuestion, hrc_of, not_as_quenched, temper, temper_curve,
    time, wanted,
};
use crate::format::{Units, exact};
use crate::measure::{Kind, parse_time, read};
use crate::refusal::Refusal;
use crate::state::{
    App, Field, OwnResult, PartStage, Planner, ShapeKind, SteelField, TemperField, TemperState,
};
use crate::tempers::parse_tempers;
use crate::words::{Language, SteelPage, TemperPage, TemperSaid};

/// Makes the page.
#[must_use]
pub fn temper_page(app: &App, language: Language) -> TemperView {
    let page = Page {
        app,
        state: &app.saved.temper,
        planner: app.saved.temper.planner(),
        language,
        units: app.saved.settings.units,
        found: asked(app, language),
    };
    let mut view = page.choices();
    page.fields(&mut view);
    page.result_problems(&mut view);
    page.answers(&mut view);
    view
}

struct Page<'a> {
    app: &'a App,
    state: &'a TemperState,
    planner: Planner,
    language: Language,
    units: Units,
    found: Asked,
}

/// Stages of a part as chips.
pub(super) fn stages(shown: PartStage, language: Language) -> Vec<(PartStage, Chip)> {
    PartStage::ALL
        .into_iter()
        .map(|stage| {
            let label = match stage {
                PartStage::Bought => TemperPage::Bought,
                PartStage::Quenched => TemperPage::Quenched,
                PartStage::Tempered => TemperPage::Tempered,
            };
            let label = language.temper_page(label).to_owned();
            (stage, Chip { key: stage.key(), label, on: shown == stage })
        })
        .collect()
}

/// The tempers so far, once the part is tempered; what cannot be read is told.
pub(super) fn done(state: &TemperState, language: Language) -> Result<Vec<String>, Refusal> {
    match given(state.text(TemperField::Done))
        .filter(|_| state.planner().stage == PartStage::Tempered)
    {
        None => Ok(Vec::new()),
        Some(text) => parse_tempers(language, &text, None).map(|_| vec![text]),
    }
}

/// Own results as questions write them, with their places; those of other steels and those that cannot be read are left
/// out.
pub(super) fn results(app: &App, language: Language, named: &Named) -> Vec<(usize, String)> {
    let planner = app.saved.temper.planner();
    let all = planner.results.iter().enumerate().filter(|_| !planner.by_the_book);
    all.filter(|(_, one)| of_this(one, named) && unread(language, one).is_none())
        .map(|(index, one)| (index, format!("{}@{}", one.hardness.trim(), one.temper.trim())))
        .collect()
}

/// Whether a result was had with this steel: the same grade under whatever name, or the same composition.
fn of_this(result: &OwnResult, named: &Named) -> bool {
    let name = named.steel.as_ref().or(named.composition.as_ref());
    let Some(name) = name.map(|name| name.trim()) else { return false };
    let key = |name: &str| find(name).ok().map(|found| found.grade.key());
    let own = result.steel.trim();
    own.eq_ignore_ascii_case(name)
        || (named.steel.is_some() && key(own).is_some_and(|own| key(name) == Some(own)))
}

fn unread(language: Language, one: &OwnResult) -> Option<Refusal> {
    hrc_of(language, &one.hardness)
        .map(drop)
        .and_then(|()| parse_tempers(language, &one.temper, None).map(drop))
        .err()
}

/// A temper that is done once or several times.
struct Alike {
    celsius: f64,
    minutes: f64,
    times: u8,
}

impl Alike {
    /// The question with the time and the times of this temper.
    fn drawn(&self, question: TemperQuestion) -> TemperQuestion {
        let held = format!("{} min", exact(self.minutes));
        TemperQuestion { held: Some(held), times: Some(self.times), ..question }
    }
}

/// Time at heat of each temper of a plan.
fn minutes(question: &TemperQuestion) -> f64 {
    let held = question.held.as_deref().and_then(|text| parse_time(text).ok());
    held.map_or(HELD, biteband_quantity::Minutes::get)
}

impl Page<'_> {
    fn label(&self, label: TemperPage) -> String {
        self.language.temper_page(label).to_owned()
    }

    fn said(&self, phrase: TemperSaid<'_>) -> String {
        self.language.temper_said(phrase)
    }

    fn typing(&self, field: Field) -> bool {
        self.app.session.active == Some(field)
    }

    fn choices(&self) -> TemperView {
        let steel = &self.app.saved.steel;
        let offered = given(&self.app.saved.file_test.target_text)
            .filter(|_| given(&steel.target).is_none())
            .map(|target| (self.said(TemperSaid::TakeTarget { target: &target }), target));
        TemperView {
            by_composition: steel.by_composition,
            understood: self.found.understood.clone(),
            candidates: self.found.candidates.clone(),
            suggestions: self.found.suggestions.clone(),
            offered,
            held: given(self.state.text(TemperField::Held)).unwrap_or_else(|| time(HELD)),
            given: vec![self.section(), self.oven()],
            stages: stages(self.planner.stage, self.language),
            tempered: self.planner.stage == PartStage::Tempered,
            hurried: Chip {
                key: "hurried",
                label: self.label(TemperPage::Hurried),
                on: self.planner.hurried,
            },
            results: self.result_rows(),
            ..TemperView::default()
        }
    }

    fn section(&self) -> String {
        let steel = &self.app.saved.steel;
        let Some(size) = given(&steel.size) else { return self.label(TemperPage::NoSection) };
        let shape = match steel.shape {
            ShapeKind::Round => SteelPage::Round,
            ShapeKind::Tube => SteelPage::Tube,
            ShapeKind::Square => SteelPage::Square,
            ShapeKind::Hexagon => SteelPage::Hexagon,
            ShapeKind::Flat => SteelPage::Flat,
            ShapeKind::Plate => SteelPage::Plate,
        };
        let second = given(&steel.second).filter(|_| steel.shape.has_second());
        let sizes: Vec<String> = std::iter::once(size).chain(second).collect();
        self.said(TemperSaid::Section {
            shape: self.language.steel_page(shape),
            sizes: &sizes.join(" × "),
        })
    }

    fn oven(&self) -> String {
        match self.app.saved.steel.checks.len() {
            0 => self.label(TemperPage::NoChecks),
            count => self.said(TemperSaid::Checks { count }),
        }
    }

    fn result_rows(&self) -> Vec<ResultRow> {
        let named = self.found.named.as_ref();
        let rows = self.planner.results.iter().enumerate();
        rows.map(|(index, one)| {
            let (hardness, temper) = (one.hardness.trim(), one.temper.trim());
            let aside = if named.is_some_and(|named| of_this(one, named)) {
                unread(self.language, one).map(|refusal| refusal.message).unwrap_or_default()
            } else {
                let of = self.said(TemperSaid::OfSteel { steel: &one.steel });
                format!("{of}: {}", self.label(TemperPage::OfOther))
            };
            let text = self.said(TemperSaid::Result { hardness, temper });
            ResultRow { index, text, aside }
        })
        .collect()
    }

    /// Reads every field by itself, so that a problem stands where it is.
    fn fields(&self, view: &mut TemperView) {
        let language = self.language;
        let state = self.state;
        let mut check = |field: Field, found: Option<Refusal>| match found {
            Some(_) if self.typing(field) => view.hint = self.label(TemperPage::Typing),
            Some(refusal) => view.problems.push((field, refusal.into())),
            None => {}
        };
        let target = given(&self.app.saved.steel.target);
        check(
            Field::Steel(SteelField::Target),
            target.and_then(|text| wanted(language, &text).err()),
        );
        let held = given(state.text(TemperField::Held));
        let held = held.and_then(|text| read(language, Kind::Time, &text, parse_time).err());
        check(Field::Temper(TemperField::Held), held);
        let at = given(state.text(TemperField::At))
            .and_then(|text| parse_tempers(language, &text, Some(1.0)).err());
        check(Field::Temper(TemperField::At), at);
        check(Field::Temper(TemperField::Done), done(state, language).err());
        let quenched = given(state.text(TemperField::AsQuenched))
            .and_then(|text| hrc_of(language, &text).err());
        check(Field::Temper(TemperField::AsQuenched), quenched);
        match (self.found.hint, &self.found.problem) {
            (Some(hint), _) => language.steel_page(hint).clone_into(&mut view.hint),
            (None, Some((field, problem))) => {
                view.problems.push((Field::Steel(*field), problem.clone()));
            }
            (None, None) => {}
        }
    }

    /// Why a result that was to be kept is not, and what will be wrong with one that is typed.
    fn result_problems(&self, view: &mut TemperView) {
        let session = &self.app.session;
        for (field, text) in [
            (TemperField::Measured, self.state.text(TemperField::Measured)),
            (TemperField::After, self.state.text(TemperField::After)),
        ] {
            let name = Field::Temper(field);
            let due = session.missing == Some(name)
                || (given(text).is_some() && session.left.contains(&name));
            if !due || self.typing(name) {
                continue;
            }
            let problem = match (field, given(text)) {
                (TemperField::Measured, None) => Some(Problem {
                    message: self.label(TemperPage::NeedsMeasured),
                    instead: String::new(),
                }),
                (TemperField::Measured, Some(text)) => {
                    hrc_of(self.language, &text).err().map(Problem::from)
                }
                _ => parse_tempers(self.language, text, None).err().map(Problem::from),
            };
            view.problems.extend(problem.map(|problem| (name, problem)));
        }
    }

    fn question(&self, named: &Named) -> TemperQuestion {
        let steel = &self.app.saved.steel;
        TemperQuestion {
            steel: named.steel.clone(),
            composition: named.composition.clone(),
            held: given(self.state.text(TemperField::Held)),
            done: done(self.state, self.language).unwrap_or_default(),
            as_quenched: given(self.state.text(TemperField::AsQuenched)),
            oven: checks(steel),
            section: section(steel)
                .filter(|section| section.read(self.language).is_ok())
                .unwrap_or_default(),
            hurried: self.planner.hurried,
            units: self.units,
            ..TemperQuestion::default()
        }
    }

    fn answers(&self, view: &mut TemperView) {
        let Some(named) = &self.found.named else { return };
        // What is typed into now may be half of it; what was left and cannot be read must be mended first.
        let broken = |(field, _): &(Field, Problem)| {
            !matches!(field, Field::Temper(TemperField::Measured | TemperField::After))
        };
        if !view.hint.is_empty() || view.problems.iter().any(broken) {
            return;
        }
        let mut base = self.question(named);
        if let Some(refusal) = not_as_quenched(self.language, &base) {
            return self.refused(view, Field::Temper(TemperField::AsQuenched), refusal);
        }
        base.learn = self.counted(view, named, &base);
        let of_this = self.planner.results.iter().any(|one| of_this(one, named));
        view.book = of_this.then(|| Chip {
            key: "book",
            label: self.label(TemperPage::Book),
            on: self.planner.by_the_book,
        });
        let target = given(&self.app.saved.steel.target);
        let at = given(self.state.text(TemperField::At));
        let planned = target.as_ref().map(|target| {
            let question = TemperQuestion { target: Some(target.clone()), ..base.clone() };
            temper(self.language, &question)
        });
        let alike = at.as_deref().and_then(|at| self.alike(at, &base));
        let looked = at.map(|at| {
            let asked = TemperQuestion { at: Some(at), ..base.clone() };
            temper(self.language, &alike.as_ref().map_or(asked.clone(), |one| one.drawn(asked)))
        });
        if target.is_none() && looked.is_none() {
            view.hint = self.label(TemperPage::Ask);
        }
        let mut main = None;
        match looked {
            Some(Ok(answer)) if !answer.ages.is_empty() => return view.hint = answer.aged(),
            Some(Ok(answer)) => {
                self.looked(view, &answer);
                main = Some(answer);
            }
            Some(Err(refusal)) => self.refused(view, Field::Temper(TemperField::At), refusal),
            None => {}
        }
        let mark = main.as_ref().and_then(|answer| Some(answer.hardness.as_ref()?.median));
        let mut mark = alike.as_ref().zip(mark);
        // Alone it stands on a curve for its own time.
        let mut drawn = base.clone();
        if let Some(one) = alike.as_ref().filter(|_| main.is_some()) {
            drawn = one.drawn(drawn);
        }
        match planned {
            Some(Ok(answer)) if !answer.ages.is_empty() => return view.hint = answer.aged(),
            Some(Ok(answer)) => {
                view.plan = self.planned(&answer, target.as_deref().unwrap_or_default());
                drawn.clone_from(&base);
                let of_plan = |one: &Alike| {
                    (one.minutes - minutes(&base)).abs() < 0.5 && one.times == answer.times
                };
                mark = mark.filter(|(one, _)| of_plan(one));
                main = Some(answer);
            }
            Some(Err(refusal)) => {
                self.refused(view, Field::Steel(SteelField::Target), refusal);
            }
            None => {}
        }
        let main = match main {
            Some(answer) => answer,
            // Where the curve fails too, the reason stands already or is that of the curve.
            None => match temper_curve(self.language, &base) {
                Ok(answer) => answer,
                Err(refusal) => {
                    view.hint = String::new();
                    view.problem = Some(refusal.into());
                    return;
                }
            },
        };
        self.fill(view, &drawn, main, mark.map(|(one, hrc)| (one.celsius, hrc)));
    }

    /// Own results that count. One that the book refuses is set aside and says why.
    fn counted(&self, view: &mut TemperView, named: &Named, base: &TemperQuestion) -> Vec<String> {
        let all = results(self.app, self.language, named);
        let with = |learn: Vec<String>| TemperQuestion { learn, ..base.clone() };
        let every: Vec<String> = all.iter().map(|(_, text)| text.clone()).collect();
        if every.is_empty() || temper_curve(self.language, &with(every.clone())).is_ok() {
            return every;
        }
        let alone = temper_curve(self.language, base);
        if alone.is_err() {
            // Not the results are at fault.
            return Vec::new();
        }
        let mut counted = Vec::new();
        for (index, text) in all {
            match temper_curve(self.language, &with(vec![text.clone()])) {
                Ok(_) => counted.push(text),
                Err(refusal) => {
                    if let Some(row) = view.results.iter_mut().find(|row| row.index == index) {
                        row.aside = refusal.message;
                    }
                }
            }
        }
        counted
    }

    /// A refusal, unless its field is still being typed into.
    fn refused(&self, view: &mut TemperView, field: Field, refusal: Refusal) {
        if self.typing(field) {
            view.hint = self.label(TemperPage::Typing);
        } else if matches!(field, Field::Temper(_)) {
            view.problems.push((field, refusal.into()));
        } else {
            view.problem = Some(refusal.into());
        }
    }

    fn looked(&self, view: &mut TemperView, answer: &TemperAnswer) {
        let Some(after) = &answer.hardness else { return };
        let about = format!("{} HRC", crate::format::fixed(after.median, 0));
        view.looked = Some(LookedView {
            about: self.said(TemperSaid::Leaves { about: &about }),
            verdict: answer.verdict.clone(),
        });
        view.warnings.clone_from(&answer.warnings);
    }

    /// The temper that was looked up, once or several times the same, as the curve can be drawn for it.
    fn alike(&self, at: &str, base: &TemperQuestion) -> Option<Alike> {
        let tempers = parse_tempers(self.language, at, Some(minutes(base))).ok()?;
        let first = tempers.first()?;
        let times = u8::try_from(tempers.len()).ok().filter(|times| (1..=4).contains(times))?;
        tempers.iter().all(|one| one == first).then(|| Alike {
            celsius: first.celsius(),
            minutes: first.minutes(),
            times,
        })
    }

    fn planned(&self, answer: &TemperAnswer, target: &str) -> Option<PlanView> {
        let first = answer.plan.first()?;
        let steps = answer.plan.iter().enumerate().map(|(index, step)| self.step(index, step));
        let at = self.units.degrees(first.dial_c.unwrap_or(first.celsius));
        let held = time(60.0 * first.hours);
        let learned = answer.learned.as_ref().map_or(0, |learned| learned.text.len());
        let how = answer.notes.iter().skip(learned);
        let through = answer.heat_through_min.map(|minutes| time(minutes.ceil()));
        Some(PlanView {
            asked: self.said(TemperSaid::Asked { steel: &self.name(), target }),
            first: self.said(TemperSaid::First {
                dial: first.dial_c.is_some(),
                at: &at,
                time: &held,
                times: first.times,
            }),
            verdict: answer.verdict.clone(),
            dial: answer.dial.clone(),
            unchecked: first.dial_c.is_none(),
            each: self.said(TemperSaid::Each { time: &held, times: first.times }),
            through: through
                .map(|minutes| self.said(TemperSaid::HeatThrough { minutes: &minutes }))
                .unwrap_or_default(),
            steps: steps.collect(),
            how: how.take_while(|note| **note != answer.dial).cloned().collect(),
        })
    }

    fn step(&self, index: usize, step: &PlanAnswer) -> StepRow {
        let metal = self.units.degrees(step.celsius);
        let (at, of, metal) = match step.dial_c {
            Some(dial) => (self.units.degrees(dial), TemperPage::OnDial, metal),
            None => (metal, TemperPage::InMetal, String::new()),
        };
        let once = format!("{at} / {}", time(60.0 * step.hours));
        StepRow {
            done: if step.times > 1 { format!("{}x {once}", step.times) } else { once },
            name: if index == 0 { TemperPage::First } else { TemperPage::StepThen },
            at,
            of,
            metal,
            about: format!("{} HRC", crate::format::fixed(step.expect.median, 0)),
            band: step.expect.shown.clone(),
        }
    }

    fn name(&self) -> String {
        match &self.found.card {
            Some(card) => card.name.to_owned(),
            None => given(&self.app.saved.steel.own_name)
                .unwrap_or_else(|| self.app.saved.steel.own.trim().to_owned()),
        }
    }

    fn fill(
        &self,
        view: &mut TemperView,
        base: &TemperQuestion,
        answer: TemperAnswer,
        looked: Option<(f64, f64)>,
    ) {
        let learned = answer.learned.as_ref();
        let book = learned.and_then(|_| {
            let question = TemperQuestion { learn: Vec::new(), ..base.clone() };
            Some(temper_curve(self.language, &question).ok()?.curve)
        });
        let target = given(&self.app.saved.steel.target);
        let target = target.and_then(|text| wanted(self.language, &text).ok());
        let each = TemperSaid::Each { time: &time(minutes(base)), times: answer.times };
        view.curve = curve(&Drawn {
            language: self.language,
            units: self.units,
            curve: &answer.curve,
            book: book.as_deref().unwrap_or_default(),
            each: self.said(each),
            wanted: target.map(|target| (target.low(), target.high())),
            brittle: &answer.brittle,
            own: learned.map(|learned| learned.points.as_slice()).unwrap_or_default(),
            steps: answer.plan.iter().map(|step| (step.celsius, step.expect.median)).collect(),
            looked,
        });
        view.learned = learned.map(|learned| learned.text.clone()).unwrap_or_default();
        let how = view.plan.iter().flat_map(|plan| plan.how.iter().chain([&plan.dial]));
        let shown: Vec<&String> = view.learned.iter().chain(how).collect();
        let notes = answer.notes.into_iter().filter(|note| !shown.contains(&note));
        view.why = answer.basis.into_iter().chain(notes.collect::<Vec<_>>()).collect();
        // What the temper that was looked up warns of holds beside a plan too.
        for warning in answer.warnings {
            if !view.warnings.contains(&warning) {
                view.warnings.push(warning);
            }
        }
        view.brittle = answer.brittle.into_iter().flat_map(|range| range.each).collect();
        view.colour = answer.colour;
        view.cautions = answer.cautions;
        let sources = answer.sources.iter().filter_map(|key| biteband_steel::source(key));
        view.sources = sources
            .map(|source| format!("{}: {} ({})", source.key(), source.title(), source.seen().key()))
            .collect();
    }
}

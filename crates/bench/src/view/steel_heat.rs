//! The recipe of the page of steels: one line for each thing to do, the sentences behind it folded away.

use super::steel::{HeatView, RecipeRow};
use crate::answer::{BathAnswer, Checklist, HeatAnswer};
use crate::format::{Units, dash, fixed};
use crate::section::size;
use crate::words::{Language, RecipeNote, SteelPage};

/// A difference of temperatures.
fn kelvins(units: Units, low: f64, high: f64) -> String {
    let (by, unit) = match units {
        Units::Metric => (1.0, "°C"),
        Units::Inch => (1.8, "°F"),
    };
    format!("{} {unit}", dash(&fixed(low * by, 0), &fixed(high * by, 0)))
}

/// Minutes, in hours from two hours on.
fn time(low: f64, high: f64) -> String {
    if low >= 120.0 {
        format!("{} h", dash(&fixed(low / 60.0, 1), &fixed(high / 60.0, 1)))
    } else {
        format!("{} min", dash(&fixed(low, 0), &fixed(high, 0)))
    }
}

pub(super) fn heat_view(
    language: Language,
    answer: &HeatAnswer,
    units: Units,
    medium: &str,
) -> HeatView {
    let mut rows = Vec::new();
    let mut row = |name, value: String, note: String| rows.push(RecipeRow { name, value, note });
    if !answer.preheat.is_empty() {
        let steps = answer.preheat.iter().map(|step| units.temperatures(step.low_c, step.high_c));
        row(SteelPage::Preheat, steps.collect::<Vec<_>>().join(", "), String::new());
    }
    let harden = &answer.harden;
    if let (Some(low), Some(high)) = (harden.low_c, harden.high_c) {
        let past = harden.over_magnet_low_k.zip(harden.over_magnet_high_k);
        let note = past.map(|(low, high)| {
            language.recipe(RecipeNote::PastMagnet { range: &kelvins(units, low, high) })
        });
        row(SteelPage::Harden, units.temperatures(low, high), note.unwrap_or_default());
    }
    if let Some(oven) = &answer.oven
        && let Some(dial) = oven.dial_c
    {
        let width = oven
            .half_width_k
            .map(|half| language.recipe(RecipeNote::Width { half: &kelvins(units, half, half) }));
        row(
            SteelPage::DialSays,
            units.temperatures(dial.round(), dial.round()),
            width.unwrap_or_default(),
        );
    }
    if let Some(through) = &answer.heat_through {
        row(SteelPage::HeatThrough, time(through.low_min, through.high_min), String::new());
    }
    if let (Some(low), Some(high)) = (answer.hold.low_min, answer.hold.high_min) {
        row(SteelPage::Hold, time(low, high), answer.hold.soak.to_owned());
    }
    if let Some(bath) = &answer.bath {
        bath_row(language, &mut row, bath, units);
    }
    if let Some(tank) = &answer.tank {
        let text = [tank.long_mm, tank.wide_mm, tank.wall_mm].map(|mm| size(units, mm.ceil()));
        row(SteelPage::Tank, text.join(" × "), String::new());
    }
    if let Some(skin) = &answer.skin {
        row(SteelPage::Grind, size(units, skin.grind_mm), String::new());
    }
    let through = answer.heat_through.as_ref().map(|one| one.text.clone());
    let bath = answer.bath.as_ref().map(|one| one.text.clone());
    let tank = answer.tank.as_ref().map(|one| one.text.clone());
    let skin = answer.skin.as_ref().map(|one| one.text.clone());
    let oven = answer.oven.as_ref().map(|one| one.text.clone());
    let cross = harden.cross_check.as_ref().map(|one| one.text.clone());
    let mut why = vec![harden.text.clone()];
    why.extend(cross);
    why.extend([answer.preheat_text.clone(), answer.protection.text.clone()]);
    why.extend(through);
    why.push(answer.hold.text.clone());
    why.extend(answer.hold.rules.iter().map(|rule| rule.text.clone()));
    why.extend([skin, Some(answer.quench.text.clone()), bath, tank, oven].into_iter().flatten());
    why.extend(answer.notes.iter().cloned());
    why.retain(|text| !text.is_empty());
    let points = || answer.known_points.iter().map(|point| point.text.clone());
    let list = |list: &Checklist| {
        // The temperatures by which an oven is checked belong to its list.
        let points = points().filter(|_| list.list == "oven");
        (list.title.clone(), points.chain(list.items.iter().cloned()).collect())
    };
    let lists = answer.checklists.iter().map(list).collect();
    let stopped = answer.bath.as_ref().and_then(|bath| bath.verdict).is_some_and(|v| v != "enough");
    // A timer rings when the shortest hold is over; whoever wants more lets it run on.
    let hold = answer.hold.low_min.map(|low| time(low.ceil(), low.ceil()));
    let value = |name| rows.iter().find(|row| row.name == name).map(|row| row.value.as_str());
    let done = [value(SteelPage::Harden), value(SteelPage::Hold), Some(medium)];
    let done: Vec<&str> = done.into_iter().flatten().filter(|text| !text.is_empty()).collect();
    let done = done.join(", ");
    HeatView { done, stop: stopped.then(|| answer.verdict.clone()), rows, hold, why, lists }
}

fn bath_row(
    language: Language,
    row: &mut impl FnMut(SteelPage, String, String),
    bath: &BathAnswer,
    units: Units,
) {
    let Some(needed) = bath.needed_l else { return };
    let rise = bath.rise_c.zip(bath.peak_c).map(|(rise, peak)| {
        let (rise, peak) =
            (kelvins(units, rise, rise), units.temperatures(peak.round(), peak.round()));
        language.recipe(RecipeNote::Rises { rise: &rise, peak: &peak })
    });
    let needed = language.recipe(RecipeNote::OrMore { litres: &units.litres_up(needed) });
    row(SteelPage::Bath, needed, rise.unwrap_or_default());
}

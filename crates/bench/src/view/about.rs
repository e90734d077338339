//! Sources, tables, limits and settings.

use biteband_hardness::DATA_VERSION;

use super::Chip;
use crate::answer::{SourceAnswer, TableListing, hardness_sources, tables};
use crate::format::Units;
use crate::state::{App, Theme};
use crate::words::{Language, Phrase, Ui};

/// The page behind the button on top.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AboutView {
    /// Brightness.
    pub themes: Vec<(Theme, Chip)>,
    /// Units of strength.
    pub units: Vec<(Units, Chip)>,
    /// Cautions that hold for all work.
    pub cautions: Vec<String>,
    /// Every table in short.
    pub tables: Vec<TableListing>,
    /// Every source of what the page shows.
    pub sources: Vec<SourceAnswer>,
    /// Version of program and data.
    pub version: String,
}

/// Makes the page.
#[must_use]
pub fn about(app: &App, language: Language) -> AboutView {
    let settings = app.saved.settings;
    let theme = |theme, key, ui| {
        let label = language.say(Phrase::Ui(ui)).into_owned();
        (theme, Chip { key, label, on: settings.theme == theme })
    };
    let unit = |units, key: &'static str| {
        (units, Chip { key, label: key.to_owned(), on: settings.units == units })
    };
    let app_version = env!("CARGO_PKG_VERSION");
    AboutView {
        themes: vec![
            theme(Theme::Auto, "auto", Ui::ThemeAuto),
            theme(Theme::Light, "light", Ui::ThemeLight),
            theme(Theme::Dim, "dim", Ui::ThemeDim),
        ],
        units: vec![unit(Units::Metric, "MPa"), unit(Units::Inch, "ksi")],
        cautions: [
            Phrase::Eyes,
            Phrase::Ui(Ui::CautionStruck),
            Phrase::Ui(Ui::CautionCritical),
            Phrase::ConvertCaution,
            Phrase::TensileCaution,
        ]
        .into_iter()
        .map(|phrase| language.say(phrase).into_owned())
        .collect(),
        tables: tables(),
        sources: hardness_sources(),
        version: language
            .say(Phrase::Version { app: app_version, data: DATA_VERSION })
            .into_owned(),
    }
}

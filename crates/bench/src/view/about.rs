//! Sources, tables, limits and settings.

use biteband_hardness::DATA_VERSION;

use super::Chip;
use crate::answer::{SourceAnswer, TableListing, hardness_sources, tables};
use crate::format::Units;
use crate::state::{App, Theme};
use crate::words::{About, Language, Phrase};

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
    let theme = |theme, key, name| {
        let label = language.about(name).to_owned();
        (theme, Chip { key, label, on: settings.theme == theme })
    };
    let unit = |units, key: &'static str| {
        (units, Chip { key, label: key.to_owned(), on: settings.units == units })
    };
    let say = |phrase| language.say(phrase).into_owned();
    let app_version = env!("CARGO_PKG_VERSION");
    AboutView {
        themes: vec![
            theme(Theme::Auto, "auto", About::ThemeAuto),
            theme(Theme::Light, "light", About::ThemeLight),
            theme(Theme::Dim, "dim", About::ThemeDim),
        ],
        units: vec![unit(Units::Metric, "MPa, °C"), unit(Units::Inch, "ksi, °F")],
        cautions: vec![
            say(Phrase::Eyes),
            language.about(About::CautionStruck).to_owned(),
            language.about(About::CautionCritical).to_owned(),
            say(Phrase::ConvertCaution),
            say(Phrase::TensileCaution),
        ],
        tables: tables(),
        sources: hardness_sources(),
        version: say(Phrase::Version { app: app_version, data: DATA_VERSION }),
    }
}

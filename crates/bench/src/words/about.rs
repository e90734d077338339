//! Labels of the page of sources, limits and settings; loaded with it, as [`super::Mark`].

use super::{Language, about_english};

/// A fixed label or text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[expect(missing_docs, reason = "a label is documented by its words in each language")]
pub enum About {
    Theme,
    ThemeAuto,
    ThemeLight,
    ThemeDim,
    StrengthUnit,
    SourcesTitle,
    TablesTitle,
    LimitsTitle,
    LimitsText,
    CautionsTitle,
    CautionStruck,
    CautionCritical,
    PrivacyTitle,
    PrivacyText,
}

impl Language {
    /// A label of the page of sources, limits and settings.
    #[must_use]
    pub const fn about(self, about: About) -> &'static str {
        match self {
            Self::English => about_english::say(about),
        }
    }
}

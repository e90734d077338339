//! English for the page of sources, limits and settings.

use super::About;

pub(super) const fn say(about: About) -> &'static str {
    match about {
        About::Theme => "Brightness",
        About::ThemeAuto => "as the phone",
        About::ThemeLight => "light",
        About::ThemeDim => "dim",
        About::StrengthUnit => "Units",
        About::SourcesTitle => "Sources",
        About::TablesTitle => "Tables",
        About::LimitsTitle => "What it will not say",
        About::LimitsText => {
            "No number outside a published table: none below 20 HRC, none above 100 HRB, no tensile strength for very hard steel. No single number from a bracket of files. No number while two files contradict each other. No conversion for cast iron, cold-worked steel, a case-hardened skin, high-speed steel or hardmetal; none from a rebound number, because no relation was found that can be cited."
        }
        About::CautionsTitle => "Cautions",
        About::CautionStruck => {
            "Struck tools: at most 45 HRC at the struck end, and softer than the hammer; chamfer it and grind off mushrooms (ASME B107.47M, 4.3)."
        }
        About::CautionCritical => {
            "Lifting, steering, brakes, pressure: not from this tool. Ask a licensed engineer and follow the local code."
        }
        About::PrivacyTitle => "Your data",
        About::PrivacyText => {
            "Everything stays on this device. No account, no network, nothing counted."
        }
    }
}

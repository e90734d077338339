//! Sections and baths as people write them.

use biteband_quantity::{Celsius, Litres, Shown};
use biteband_steel::quench::{Medium, Movement};
use biteband_steel::section::{Section, Shape};
use serde::{Deserialize, Serialize};

use crate::format::{Units, shortened};
use crate::measure::{self, Kind, parse_volume};
use crate::refusal::Refusal;
use crate::words::{Language, SectionRefusal};

/// A section: exactly one shape, every size with its unit, and a length where it is known.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct SectionInput {
    /// Diameter of a round.
    pub round: Option<String>,
    /// Outside and inside of a tube, as in `40mm,20mm`.
    pub tube: Option<String>,
    /// Thickness of a wide plate.
    pub plate: Option<String>,
    /// Side of a square bar.
    pub square: Option<String>,
    /// Size across flats of a hexagon.
    pub hex: Option<String>,
    /// Width and thickness of a flat bar or a block, as in `60mm,12mm`.
    pub flat: Option<String>,
    /// Length.
    pub length: Option<String>,
}

impl SectionInput {
    /// Whether nothing was given.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        *self == Self::default()
    }

    /// The checked section.
    ///
    /// # Errors
    /// A refusal: no shape or several, a size that cannot be read, or one that no part has.
    ///
    /// # Example
    /// ```
    /// use biteband_bench::section::SectionInput;
    /// use biteband_bench::words::Language;
    /// let pawl = SectionInput { round: Some("2in".into()), ..SectionInput::default() };
    /// assert_eq!(pawl.read(Language::English).unwrap().ruling().mm, 50.8);
    /// let tube = SectionInput { tube: Some("20mm,25mm".into()), ..SectionInput::default() };
    /// assert_eq!(tube.read(Language::English).unwrap_err().code, "section.wall");
    /// ```
    pub fn read(&self, language: Language) -> Result<Section, Refusal> {
        let given = [&self.round, &self.tube, &self.plate, &self.square, &self.hex, &self.flat];
        let shapes = given.into_iter().flatten().count();
        if shapes != 1 {
            let code = if shapes == 0 { "bench.missing_section" } else { "bench.sections" };
            return Err(refused(language, code, "", SectionRefusal::Shapes { none: shapes == 0 }));
        }
        let mm = |text: &str| Ok(measure::length(language, text)?.mm.get());
        let two = |text: &str| -> Result<(f64, f64), Refusal> {
            let (first, second) = pair(text).ok_or_else(|| {
                let given = shortened(text);
                refused(
                    language,
                    "bench.unreadable_section",
                    text,
                    SectionRefusal::Pair { given: &given },
                )
            })?;
            Ok((mm(first)?, mm(second)?))
        };
        let shape = if let Some(text) = &self.round {
            Shape::Round { diameter: mm(text)? }
        } else if let Some(text) = &self.tube {
            let (outer, inner) = two(text)?;
            Shape::Tube { outer, inner }
        } else if let Some(text) = &self.plate {
            Shape::Plate { thickness: mm(text)? }
        } else if let Some(text) = &self.square {
            Shape::Square { side: mm(text)? }
        } else if let Some(text) = &self.hex {
            Shape::Hexagon { across_flats: mm(text)? }
        } else {
            let (width, thickness) = two(self.flat.as_deref().unwrap_or_default())?;
            Shape::Flat { width, thickness }
        };
        let length = self.length.as_deref().map(mm).transpose()?;
        Section::new(shape, length).map_err(|error| {
            refused(language, error.code(), &self.written(), SectionRefusal::Core(&error))
        })
    }

    /// Everything that was written, for a refusal.
    fn written(&self) -> String {
        let all = [
            ("round", &self.round),
            ("tube", &self.tube),
            ("plate", &self.plate),
            ("square", &self.square),
            ("hex", &self.hex),
            ("flat", &self.flat),
            ("length", &self.length),
        ];
        let said =
            all.into_iter().filter_map(|(name, text)| Some(format!("{name} {}", text.as_ref()?)));
        said.collect::<Vec<_>>().join(", ")
    }
}

/// Two sizes with a comma, a semicolon or an x between; a comma between two figures is a decimal comma.
pub(crate) fn pair(text: &str) -> Option<(&str, &str)> {
    if let Some(found) = text.split_once([';', 'x', '×']) {
        return Some(found);
    }
    let mut from = 0;
    while let Some(at) = text.get(from..)?.find(',') {
        let at = from + at;
        let (before, after) = (text.get(..at)?, text.get(at + 1..)?);
        let figure = |c: Option<char>| c.is_some_and(|c| c.is_ascii_digit());
        if !(figure(before.chars().next_back()) && figure(after.chars().next())) {
            return Some((before, after));
        }
        from = at + 1;
    }
    None
}

fn refused(
    language: Language,
    code: &'static str,
    given: &str,
    what: SectionRefusal<'_>,
) -> Refusal {
    let [message, allowed, instead] = language.section_refused(what);
    Refusal::new(code, message, shortened(given), allowed, instead)
}

/// A bath as it is written: `oil`, `oil:mild`, `oil:6L@25C`, `water:good:20L@15C`, `oil:6L@25C:flash=180C`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BathInput {
    /// What is in the tank.
    pub medium: Medium,
    /// How it is moved; gently where nothing is said.
    pub movement: Movement,
    /// Whether that was said.
    pub movement_given: bool,
    /// How much.
    pub litres: Option<Litres>,
    /// How warm.
    pub celsius: Option<Celsius>,
    /// Flash point of the oil.
    pub flash_point: Option<Celsius>,
}

/// Words of the shop for what is in the tank, beside the stable names.
const MEDIA: [(&str, Medium); 14] = [
    ("quench oil", Medium::Oil),
    ("mineral oil", Medium::Oil),
    ("fast oil", Medium::FastOil),
    ("vegetable oil", Medium::VegetableOil),
    ("vegetable", Medium::VegetableOil),
    ("canola", Medium::VegetableOil),
    ("rapeseed oil", Medium::VegetableOil),
    ("cooking oil", Medium::VegetableOil),
    ("motor oil", Medium::UnknownOil),
    ("used oil", Medium::UnknownOil),
    ("unknown oil", Medium::UnknownOil),
    ("salt water", Medium::Brine),
    ("salt bath", Medium::Salt),
    ("plate", Medium::Air),
];

/// Reads a bath.
///
/// # Errors
/// A refusal: a medium, a movement or a part that is not known, a volume or temperature without its unit.
///
/// # Example
/// ```
/// use biteband_bench::section::parse_bath;
/// use biteband_bench::words::Language;
/// use biteband_steel::quench::{Medium, Movement};
/// let bath = parse_bath(Language::English, "vegetable oil:6L@25C").unwrap();
/// assert_eq!((bath.medium, bath.movement), (Medium::VegetableOil, Movement::Mild));
/// assert_eq!(bath.litres.unwrap().get(), 6.0);
/// assert!(parse_bath(Language::English, "lava").is_err());
/// ```
pub fn parse_bath(language: Language, text: &str) -> Result<BathInput, Refusal> {
    let mut parts = text.split(':').map(str::trim);
    let name = parts.next().unwrap_or_default().to_lowercase();
    let key: String =
        name.split([' ', '-']).filter(|word| !word.is_empty()).collect::<Vec<_>>().join("_");
    let shop = || MEDIA.iter().find(|(word, _)| word.replace(' ', "_") == key).map(|one| one.1);
    let given = shortened(text);
    let unknown = |what: SectionRefusal<'_>| refused(language, "bench.unreadable_bath", text, what);
    let medium = Medium::find(&key)
        .or_else(shop)
        .ok_or_else(|| unknown(SectionRefusal::Medium { given: &shortened(&name) }))?;
    let mut bath = BathInput {
        medium,
        movement: Movement::Mild,
        movement_given: false,
        litres: None,
        celsius: None,
        flash_point: None,
    };
    for part in parts.filter(|part| !part.is_empty()) {
        let lower = part.to_lowercase();
        if let Some(movement) = Movement::find(&lower) {
            (bath.movement, bath.movement_given) = (movement, true);
        } else if let Some(flash) = lower.strip_prefix("flash") {
            let flash = flash.trim_start_matches(['=', ' ']);
            bath.flash_point = Some(measure::temperature(language, flash)?);
        } else if part.starts_with(|c: char| c.is_ascii_digit()) {
            let (litres, celsius) = part.split_once('@').unwrap_or((part, ""));
            bath.litres = Some(measure::read(language, Kind::Volume, litres, parse_volume)?);
            if !celsius.is_empty() {
                bath.celsius = Some(measure::temperature(language, celsius)?);
            }
        } else if let Some(celsius) = part.strip_prefix('@') {
            bath.celsius = Some(measure::temperature(language, celsius)?);
        } else {
            return Err(unknown(SectionRefusal::BathPart {
                given: &given,
                part: &shortened(part),
            }));
        }
    }
    Ok(bath)
}

/// A size as it is written: in mm to a tenth, or in inches to a thousandth.
#[must_use]
pub fn size(units: Units, mm: f64) -> String {
    match units {
        Units::Metric => {
            format!("{} mm", Shown((mm * 10.0).round() / 10.0))
        }
        Units::Inch => {
            format!("{} in", Shown((mm / measure::INCH * 1000.0).round() / 1000.0))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const ENGLISH: Language = Language::English;

    fn tube(text: &str) -> Result<Shape, Refusal> {
        let input = SectionInput { tube: Some(text.into()), ..SectionInput::default() };
        input.read(ENGLISH).map(|section| section.shape())
    }

    #[test]
    fn two_sizes_in_every_way_of_writing_them() {
        let wanted = Shape::Tube { outer: 40.5, inner: 20.0 };
        for text in
            ["40.5mm,20mm", "40,5mm,20mm", "40,5 mm; 20 mm", "40.5mm x 20mm", "4.05cm × 2cm"]
        {
            assert_eq!(tube(text).unwrap(), wanted, "{text}");
        }
        assert_eq!(tube("40mm").unwrap_err().code, "bench.unreadable_section");
        assert_eq!(tube("40,20").unwrap_err().code, "bench.unreadable_section");
        assert_eq!(tube("40mm,20").unwrap_err().code, "bench.unreadable_unit");
        assert_eq!(tube("20mm,40mm").unwrap_err().code, "section.wall");
    }

    #[test]
    fn one_shape_and_a_size_that_parts_have() {
        let none = SectionInput::default().read(ENGLISH).unwrap_err();
        assert_eq!(none.code, "bench.missing_section");
        let both = SectionInput {
            round: Some("10mm".into()),
            hex: Some("10mm".into()),
            ..SectionInput::default()
        };
        assert_eq!(both.read(ENGLISH).unwrap_err().code, "bench.sections");
        for text in ["0mm", "2000mm", "-5mm", "50"] {
            let round = SectionInput { round: Some(text.into()), ..SectionInput::default() };
            let refusal = round.read(ENGLISH).unwrap_err();
            assert!(!refusal.message.is_empty() && !refusal.instead.is_empty(), "{text}");
        }
    }

    #[test]
    fn baths_with_and_without_their_parts() {
        let bath = parse_bath(ENGLISH, "oil").unwrap();
        assert_eq!(
            (bath.medium, bath.movement, bath.movement_given),
            (Medium::Oil, Movement::Mild, false)
        );
        let bath = parse_bath(ENGLISH, "Water:Good:20L@15C").unwrap();
        assert_eq!((bath.medium, bath.movement), (Medium::Water, Movement::Good));
        assert!(bath.celsius.is_some_and(|c| (c.get() - 15.0).abs() < 1e-9));
        let bath = parse_bath(ENGLISH, "fast oil:5 US gal@100F:flash=356F").unwrap();
        assert_eq!(bath.medium, Medium::FastOil);
        assert!(bath.flash_point.is_some_and(|c| (c.get() - 180.0).abs() < 1e-9));
        for (text, code) in [
            ("lava", "bench.unreadable_bath"),
            ("oil:swirled", "bench.unreadable_bath"),
            ("oil:6L@25", "bench.unreadable_unit"),
            ("oil:6@25C", "bench.unreadable_unit"),
            ("oil:0L@25C", "quantity.out_of_bounds"),
        ] {
            assert_eq!(parse_bath(ENGLISH, text).unwrap_err().code, code, "{text}");
        }
    }

    proptest::proptest! {
        #[test]
        fn any_text_is_a_bath_or_a_refusal(text in ".{0,30}") {
            let _ = parse_bath(ENGLISH, &text);
            let _ = tube(&text);
        }
    }
}

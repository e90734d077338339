//! What the page of steels remembers: the steel, its section, the bath, what is wanted, and what the
//! person knows of their own oven and bars.

use serde::{Deserialize, Serialize};

/// Form of the part.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "each is what its name says")]
pub enum ShapeKind {
    #[default]
    Round,
    Tube,
    Square,
    Hexagon,
    Flat,
    Plate,
}

impl ShapeKind {
    /// All of them, in the order in which they are offered.
    pub const ALL: [Self; 6] =
        [Self::Round, Self::Tube, Self::Square, Self::Hexagon, Self::Flat, Self::Plate];

    /// Whether a second size belongs to it.
    #[must_use]
    pub const fn has_second(self) -> bool {
        matches!(self, Self::Tube | Self::Flat)
    }
}

/// A field of the page.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum SteelField {
    /// What is stamped on the bar.
    Query,
    /// Composition of an own bar.
    Own,
    /// Its name.
    OwnName,
    /// Diameter, side, thickness or outside.
    Size,
    /// Inside of a tube, width of a flat.
    Second,
    /// Length.
    Length,
    /// How much is in the tank.
    Litres,
    /// How warm it is.
    BathTemperature,
    /// Flash point on the drum.
    FlashPoint,
    /// Wanted hardness.
    Target,
    /// Kind of part, to look its usual hardness up.
    Kind,
    /// What the dial showed at a known temperature.
    Dial,
    /// The known temperature.
    Truth,
}

impl SteelField {
    /// All of them.
    pub const ALL: [Self; 13] = [
        Self::Query,
        Self::Own,
        Self::OwnName,
        Self::Size,
        Self::Second,
        Self::Length,
        Self::Litres,
        Self::BathTemperature,
        Self::FlashPoint,
        Self::Target,
        Self::Kind,
        Self::Dial,
        Self::Truth,
    ];

    /// Stable name for element ids.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Query => "steel-query",
            Self::Own => "steel-own",
            Self::OwnName => "steel-own-name",
            Self::Size => "steel-size",
            Self::Second => "steel-second",
            Self::Length => "steel-length",
            Self::Litres => "steel-litres",
            Self::BathTemperature => "steel-bath",
            Self::FlashPoint => "steel-flash",
            Self::Target => "steel-target",
            Self::Kind => "steel-kind",
            Self::Dial => "steel-dial",
            Self::Truth => "steel-truth",
        }
    }
}

/// A bar that the person knows by its own paper.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct OwnSteel {
    /// Its name.
    pub name: String,
    /// Its composition as typed.
    pub composition: String,
}

/// What the oven's dial showed at a temperature that was known.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct DialCheck {
    /// The dial, as typed.
    pub dial: String,
    /// The truth, as typed.
    pub truth: String,
}

/// The page as far as it has come; every text as typed.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default)]
pub struct SteelState {
    /// What is stamped on the bar.
    pub query: String,
    /// The grade that was chosen where a name means several.
    pub picked: Option<String>,
    /// Composition of an own bar; counts while `by_composition`.
    pub own: String,
    /// The name to keep it under.
    pub own_name: String,
    /// The own composition counts instead of the name.
    pub by_composition: bool,
    /// Own bars that are kept.
    pub kept: Vec<OwnSteel>,
    /// Form of the part.
    pub shape: ShapeKind,
    /// Diameter, side, thickness or outside.
    pub size: String,
    /// Inside or width.
    pub second: String,
    /// Length.
    pub length: String,
    /// Stable name of what is in the tank.
    pub medium: String,
    /// Stable name of how it is moved.
    pub movement: String,
    /// How much is in the tank.
    pub litres: String,
    /// How warm it is.
    pub bath_temperature: String,
    /// Flash point on the drum.
    pub flash_point: String,
    /// Wanted hardness.
    pub target: String,
    /// Kind of part.
    pub kind: String,
    /// Stable name of what keeps the air off.
    pub protection: String,
    /// Checks of the oven's dial.
    pub checks: Vec<DialCheck>,
    /// The dial of the check that is being typed.
    pub dial: String,
    /// Its truth.
    pub truth: String,
}

impl Default for SteelState {
    fn default() -> Self {
        let empty = String::new;
        Self {
            query: empty(),
            picked: None,
            own: empty(),
            own_name: empty(),
            by_composition: false,
            kept: Vec::new(),
            shape: ShapeKind::default(),
            size: empty(),
            second: empty(),
            length: empty(),
            medium: "oil".to_owned(),
            movement: "mild".to_owned(),
            litres: empty(),
            bath_temperature: empty(),
            flash_point: empty(),
            target: empty(),
            kind: empty(),
            protection: "open".to_owned(),
            checks: Vec::new(),
            dial: empty(),
            truth: empty(),
        }
    }
}

/// Something that happened on the page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum SteelAction {
    /// One of several grades with the same name.
    Pick(String),
    /// A name from the list of suggestions.
    Name(String),
    /// The own composition counts, or the name.
    ByComposition(bool),
    /// Keeps the own composition under its name.
    Keep,
    /// Takes an own bar that is kept.
    Take(usize),
    /// Forgets one.
    Forget(usize),
    /// Form of the part.
    Shape(ShapeKind),
    /// What is in the tank.
    Medium(&'static str),
    /// How it is moved.
    Movement(&'static str),
    /// What keeps the air off.
    Protection(&'static str),
    /// A wanted hardness from the list of kinds of part.
    Want(String),
    /// Keeps a check of the oven's dial.
    AddCheck,
    /// Forgets one.
    RemoveCheck(usize),
}

impl SteelState {
    /// The text of a field.
    #[must_use]
    pub fn text(&self, field: SteelField) -> &str {
        match field {
            SteelField::Query => &self.query,
            SteelField::Own => &self.own,
            SteelField::OwnName => &self.own_name,
            SteelField::Size => &self.size,
            SteelField::Second => &self.second,
            SteelField::Length => &self.length,
            SteelField::Litres => &self.litres,
            SteelField::BathTemperature => &self.bath_temperature,
            SteelField::FlashPoint => &self.flash_point,
            SteelField::Target => &self.target,
            SteelField::Kind => &self.kind,
            SteelField::Dial => &self.dial,
            SteelField::Truth => &self.truth,
        }
    }

    pub(crate) fn edit(&mut self, field: SteelField, text: String) {
        let own = match field {
            SteelField::Query => {
                // Another name is another steel: a choice among the old one's meanings is void.
                self.picked = None;
                &mut self.query
            }
            SteelField::Own => &mut self.own,
            SteelField::OwnName => &mut self.own_name,
            SteelField::Size => &mut self.size,
            SteelField::Second => &mut self.second,
            SteelField::Length => &mut self.length,
            SteelField::Litres => &mut self.litres,
            SteelField::BathTemperature => &mut self.bath_temperature,
            SteelField::FlashPoint => &mut self.flash_point,
            SteelField::Target => &mut self.target,
            SteelField::Kind => &mut self.kind,
            SteelField::Dial => &mut self.dial,
            SteelField::Truth => &mut self.truth,
        };
        *own = text;
    }

    /// Does what happened; a field whose text stands in the way is handed back, so that its error shows.
    pub(crate) fn act(&mut self, action: SteelAction) -> Option<SteelField> {
        match action {
            SteelAction::Pick(key) => self.picked = Some(key),
            SteelAction::Name(name) => self.edit(SteelField::Query, name),
            SteelAction::ByComposition(on) => self.by_composition = on,
            SteelAction::Keep => return self.keep(),
            SteelAction::Take(index) => {
                if let Some(OwnSteel { name, composition }) = self.kept.get(index).cloned() {
                    (self.own_name, self.own) = (name, composition);
                    self.by_composition = true;
                }
            }
            SteelAction::Forget(index) => {
                if index < self.kept.len() {
                    // What is forgotten stands in the fields, so that a slip costs nothing.
                    let OwnSteel { name, composition } = self.kept.remove(index);
                    (self.own_name, self.own) = (name, composition);
                }
            }
            SteelAction::Shape(shape) => self.shape = shape,
            SteelAction::Medium(key) => key.clone_into(&mut self.medium),
            SteelAction::Movement(key) => key.clone_into(&mut self.movement),
            SteelAction::Protection(key) => key.clone_into(&mut self.protection),
            SteelAction::Want(text) => self.target = text,
            SteelAction::AddCheck => return self.add_check(),
            SteelAction::RemoveCheck(index) => {
                if index < self.checks.len() {
                    let DialCheck { dial, truth } = self.checks.remove(index);
                    (self.dial, self.truth) = (dial, truth);
                }
            }
        }
        None
    }

    /// A bar of the same name is written over, because it is the same bar.
    fn keep(&mut self) -> Option<SteelField> {
        let name = self.own_name.trim().to_owned();
        let bar = OwnSteel { composition: self.own.trim().to_owned(), name };
        if bar.composition.is_empty() {
            return Some(SteelField::Own);
        }
        if bar.name.is_empty() {
            return Some(SteelField::OwnName);
        }
        match self.kept.iter_mut().find(|kept| kept.name == bar.name) {
            Some(kept) => *kept = bar,
            None => self.kept.push(bar),
        }
        None
    }

    fn add_check(&mut self) -> Option<SteelField> {
        if !has_degrees(&self.dial) {
            return Some(SteelField::Dial);
        }
        if !is_truth(&self.truth) {
            return Some(SteelField::Truth);
        }
        let check = DialCheck {
            dial: std::mem::take(&mut self.dial),
            truth: std::mem::take(&mut self.truth),
        };
        self.checks.push(check);
        None
    }
}

/// Whether a text ends with the letter of a temperature. Whether it is one altogether is told by the answer: to
/// read it as a whole here would bring the reader of every measure into the first module.
pub(crate) fn has_degrees(text: &str) -> bool {
    text.trim_end().ends_with(['C', 'c', 'F', 'f'])
}

/// Words of the shop for what melts, boils or lets go of a magnet at a known temperature.
pub(crate) const POINTS: [&str; 6] = ["water", "tin", "zinc", "aluminium", "aluminum", "magnet"];

/// Whether a text may be a known temperature: with its degrees, or one of the words.
pub(crate) fn is_truth(text: &str) -> bool {
    has_degrees(text) || POINTS.iter().any(|word| text.trim().eq_ignore_ascii_case(word))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn another_name_forgets_the_choice_among_the_old_ones_meanings() {
        let mut state = SteelState::default();
        state.edit(SteelField::Query, "45".into());
        assert_eq!(state.act(SteelAction::Pick("C45".into())), None);
        assert_eq!(state.picked.as_deref(), Some("C45"));
        state.edit(SteelField::Query, "45 ".into());
        assert_eq!(state.picked, None);
    }

    #[test]
    fn an_own_bar_is_kept_taken_and_forgotten_without_loss() {
        let mut state = SteelState::default();
        assert_eq!(state.act(SteelAction::Keep), Some(SteelField::Own));
        state.edit(SteelField::Own, "C=0.41".into());
        assert_eq!(state.act(SteelAction::Keep), Some(SteelField::OwnName));
        state.edit(SteelField::OwnName, " bar 7 ".into());
        assert_eq!(state.act(SteelAction::Keep), None);
        assert_eq!(state.kept, [OwnSteel { name: "bar 7".into(), composition: "C=0.41".into() }]);
        state.edit(SteelField::Own, "C=0.43".into());
        let _ = state.act(SteelAction::Keep);
        assert_eq!(state.kept.len(), 1);
        state.edit(SteelField::Own, String::new());
        let _ = state.act(SteelAction::Forget(0));
        assert_eq!((state.own.as_str(), state.kept.len()), ("C=0.43", 0));
        // A place that is not there changes nothing.
        let before = state.clone();
        let _ = (state.act(SteelAction::Forget(5)), state.act(SteelAction::Take(5)));
        assert_eq!(state, before);
    }

    #[test]
    fn a_check_of_the_oven_needs_both_temperatures_with_their_units() {
        let mut state = SteelState::default();
        state.edit(SteelField::Dial, "240 C".into());
        assert_eq!(state.act(SteelAction::AddCheck), Some(SteelField::Truth));
        state.edit(SteelField::Truth, "231.9".into());
        assert_eq!(state.act(SteelAction::AddCheck), Some(SteelField::Truth));
        assert_eq!(state.truth, "231.9");
        state.edit(SteelField::Truth, "231.9 °C".into());
        assert_eq!(state.act(SteelAction::AddCheck), None);
        assert_eq!((state.checks.len(), state.dial.as_str()), (1, ""));
        let _ = state.act(SteelAction::RemoveCheck(0));
        assert_eq!((state.checks.len(), state.truth.as_str()), (0, "231.9 °C"));
    }

    #[test]
    fn every_field_holds_its_own_text() {
        let mut state = SteelState::default();
        for field in SteelField::ALL {
            state.edit(field, field.key().to_owned());
        }
        for field in SteelField::ALL {
            assert_eq!(state.text(field), field.key());
        }
    }
}

//! Rules of the standards on where an indentation may stand.

use alloc::vec::Vec;

use super::brinell::SHARE;
use super::e18;
use super::formula::KNOOP_SHORT;
use super::generated::{
    ASTM_E10, ASTM_E18, ASTM_E92, ISO_4545_1, ISO_6506_1, ISO_6507_1, ISO_6508_1, ROCKWELL_RANGES,
};
use super::measure::{Indentation, Test};
use crate::axis::Scale;
use crate::source::{Seen, SourceId};
use biteband_quantity::Millimetres;

/// A source, and how this one number of it was known: a standard may be read in part.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Cited {
    /// Where it stands.
    pub source: SourceId,
    /// Read in print, recalled or worked out here.
    pub seen: Seen,
}

impl Cited {
    pub(super) const fn seen(source: SourceId) -> Self {
        Self { source, seen: Seen::Seen }
    }

    pub(super) const fn recalled(source: SourceId) -> Self {
        Self { source, seen: Seen::Recalled }
    }

    pub(super) const fn ours(source: SourceId) -> Self {
        Self { source, seen: Seen::Ours }
    }
}

/// What a thickness is a multiple of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Extent {
    /// Depth of the indentation.
    Depth,
    /// Its diagonal; the long one of a Knoop indentation.
    Diagonal,
}

/// One rule.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Rule {
    /// Section or hardened case at least so many times an extent.
    Thickness {
        /// How many times.
        times: f64,
        /// Of what.
        of: Extent,
    },
    /// Section at least as thick as the row of the standard's own table that serves this number.
    ThicknessTable,
    /// From the centre to the edge at least so many mean sizes of the indentation.
    ToEdge {
        /// How many times.
        times: f64,
    },
    /// From centre to centre at least so many mean sizes of the indentation.
    ToNext {
        /// How many times.
        times: f64,
    },
    /// Brinell indentation at least 0.24 of the ball.
    BrinellSmallest,
    /// Brinell indentation at most 0.60 of the ball.
    BrinellLargest,
    /// The number at or above the low end of its scale.
    ScaleLowest,
    /// The number at or below the high end of its scale.
    ScaleHighest,
}

impl Rule {
    /// Whether what is given may at most, rather than must at least, be what is needed.
    #[must_use]
    pub const fn is_limit_above(self) -> bool {
        matches!(self, Self::BrinellLargest | Self::ScaleHighest)
    }
}

/// A rule against what was given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Check {
    /// The rule.
    pub rule: Rule,
    /// The least or the most that it allows: mm, or the scale's number for the ends of a scale.
    pub needed: f64,
    /// What was given, in the same unit.
    pub given: f64,
    /// Whether the rule is kept.
    pub holds: bool,
    /// Who makes the rule.
    pub cited: Cited,
}

impl Check {
    pub(super) fn new(rule: Rule, needed: f64, given: f64, cited: Cited) -> Self {
        // A last bit of slack, or what is exactly as much as needed could fail by the rounding of a product.
        let more = if rule.is_limit_above() { needed - given } else { given - needed };
        let holds = more >= -1e-9;
        Self { rule, needed, given, holds, cited }
    }
}

/// Where a test stands on its part; what is not known is not checked.
///
/// Lengths in mm. For a hardened case give its depth as the thickness: a cone that reaches through the
/// case reads what is below it, by the same rule.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Part {
    /// Thickness of the section, or depth of the hard case.
    pub thickness: Option<Millimetres>,
    /// From the centre of the indentation to the nearest edge.
    pub to_edge: Option<Millimetres>,
    /// From centre to centre of the nearest other indentation.
    pub to_next: Option<Millimetres>,
    /// Width of the mark, for Rockwell tests, whose number does not tell it.
    pub mark: Option<Millimetres>,
    /// Aluminium, magnesium, lead, tin: standards ask for more room.
    pub soft_metal: bool,
}

/// Room around an indentation, in mean sizes of it: diameters, diagonals, for Knoop short diagonals.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spacing {
    /// Centre to edge.
    pub to_edge: f64,
    /// Centre to centre.
    pub to_next: f64,
    /// Who asks for it.
    pub cited: Cited,
}

/// The room that the standard of a test asks for.
///
/// # Source
/// `iso-6506-1` and `iso-6507-1`, read; `iso-6508-1` (2015 and later) and `iso-4545-1`, recalled.
/// Rockwell editions before 2015 asked for 4 diameters and 2 mm between centres.
#[must_use]
pub const fn spacing(test: Test, soft_metal: bool) -> Spacing {
    match test {
        Test::Rockwell { .. } => {
            Spacing { to_edge: 2.5, to_next: 3.0, cited: Cited::recalled(ISO_6508_1) }
        }
        Test::Brinell { .. } => {
            Spacing { to_edge: 2.5, to_next: 3.0, cited: Cited::seen(ISO_6506_1) }
        }
        Test::Vickers { .. } if soft_metal => {
            Spacing { to_edge: 3.0, to_next: 6.0, cited: Cited::seen(ISO_6507_1) }
        }
        Test::Vickers { .. } => {
            Spacing { to_edge: 2.5, to_next: 3.0, cited: Cited::seen(ISO_6507_1) }
        }
        Test::Knoop { .. } => Spacing {
            to_edge: if soft_metal { 3.0 } else { 2.5 },
            to_next: 2.5,
            cited: Cited::recalled(ISO_4545_1),
        },
    }
}

/// The thinnest sections that standards allow under a test, as multiples: one rule, or two where standards
/// differ.
fn thickness_rules(test: Test) -> [Option<(f64, Extent, Cited)>; 2] {
    match test {
        Test::Rockwell { scale } => {
            let times = if scale.is_ball_rockwell() { 15.0 } else { 10.0 };
            [Some((times, Extent::Depth, Cited::recalled(ISO_6508_1))), None]
        }
        Test::Brinell { .. } => [
            Some((8.0, Extent::Depth, Cited::seen(ISO_6506_1))),
            Some((10.0, Extent::Depth, Cited::recalled(ASTM_E10))),
        ],
        Test::Vickers { .. } => [Some((1.5, Extent::Diagonal, Cited::seen(ISO_6507_1))), None],
        Test::Knoop { .. } => [
            Some((1.0 / 3.0, Extent::Diagonal, Cited::recalled(ISO_4545_1))),
            Some((10.0, Extent::Depth, Cited::recalled(ASTM_E92))),
        ],
    }
}

/// Ends of a scale that a standard sets. Brinell ends at 650, where the ball itself gives way; Vickers and
/// Knoop have no end.
fn scale_ends(scale: Scale) -> (Option<f64>, Option<f64>, Cited) {
    match scale {
        Scale::Hv | Scale::Hk => (None, None, Cited::recalled(ROCKWELL_RANGES)),
        Scale::Hbw => (None, Some(650.0), Cited::recalled(ISO_6506_1)),
        _ => {
            let (low, high) = scale.range();
            (Some(low), Some(high), Cited::recalled(ROCKWELL_RANGES))
        }
    }
}

impl Indentation {
    /// What is known from the number and the mark alone.
    pub(super) fn check_itself(&mut self) {
        let (low, high, cited) = scale_ends(self.test.scale());
        for (rule, end) in [(Rule::ScaleLowest, low), (Rule::ScaleHighest, high)] {
            self.checks.extend(end.map(|end| Check::new(rule, end, self.value, cited)));
        }
        if let (Test::Brinell { ball, .. }, Some(size)) = (self.test, self.size) {
            let cited = Cited::seen(ISO_6506_1);
            let ends = [(Rule::BrinellSmallest, SHARE.0), (Rule::BrinellLargest, SHARE.1)];
            for (rule, share) in ends {
                self.checks.push(Check::new(rule, share * ball.get(), size.get(), cited));
            }
        }
    }

    /// The same indentation with the rules on its place checked, as far as the place is known.
    ///
    /// # Example
    /// ```
    /// use biteband_hardness::indentation::{Indentation, Part, Test};
    /// use biteband_quantity::Millimetres;
    /// let part = Part { thickness: Some(Millimetres::new(4.0)?), ..Part::default() };
    /// let brinell = Indentation::at(Test::brinell(10.0, 3000.0)?, 200.0)?.on(part);
    /// // ISO 6506-1 asks for 8 depths (3.8 mm), ASTM E10 for 10 (4.8 mm).
    /// let thickness = &brinell.checks[brinell.checks.len() - 2..];
    /// assert!(thickness[0].holds && !thickness[1].holds);
    /// # Ok::<(), biteband_hardness::indentation::Error>(())
    /// ```
    pub fn on(mut self, part: Part) -> Self {
        let size = self.size.or(part.mark).map(|size| match self.test {
            Test::Knoop { .. } => size.get() * KNOOP_SHORT,
            _ => size.get(),
        });
        if let Some(thickness) = part.thickness {
            let rules: Vec<_> = self.thinnest().collect();
            for (rule, needed, cited) in rules {
                self.checks.push(Check::new(rule, needed, thickness.get(), cited));
            }
        }
        let room = spacing(self.test, part.soft_metal);
        let places = [
            (part.to_edge, Rule::ToEdge { times: room.to_edge }, room.to_edge),
            (part.to_next, Rule::ToNext { times: room.to_next }, room.to_next),
        ];
        for (given, rule, times) in places {
            if let (Some(given), Some(size)) = (given, size) {
                self.checks.push(Check::new(rule, times * size, given.get(), room.cited));
            }
        }
        self
    }

    /// The thinnest section, or case, in mm that standards allow under this indentation: each rule with
    /// what it asks for and who makes it.
    ///
    /// # Source
    /// `iso-6506-1`, `iso-6507-1` and the table of `astm-e18`, read; `iso-6508-1`, `iso-4545-1`, `astm-e10`,
    /// `astm-e92`, recalled. The table is printed in steps of 0.002 in; between its rows the one that asks
    /// for more counts, and below its lowest number it says nothing.
    ///
    /// # Example
    /// ```
    /// use biteband_hardness::{Scale, indentation::{Indentation, Test}};
    /// let cone = Indentation::at(Test::rockwell(Scale::Hrc)?, 60.0)?;
    /// let needed: Vec<f64> = cone.thinnest().map(|(_, needed, _)| needed).collect();
    /// assert!((needed[0] - 0.80).abs() < 1e-9); // ten depths
    /// assert!((needed[1] - 0.762).abs() < 1e-9); // ASTM E18: 0.030 in serves 57 HRC and more
    /// # Ok::<(), biteband_hardness::indentation::Error>(())
    /// ```
    pub fn thinnest(&self) -> impl Iterator<Item = (Rule, f64, Cited)> + '_ {
        let rules = thickness_rules(self.test).into_iter().flatten();
        let multiples = rules.filter_map(|(times, of, cited)| {
            let extent = match of {
                Extent::Depth => self.depth,
                Extent::Diagonal => self.size?,
            };
            Some((Rule::Thickness { times, of }, times * extent.get(), cited))
        });
        let printed = e18::thinnest(self.test.scale(), self.value);
        let printed = printed.map(|needed| (Rule::ThicknessTable, needed, Cited::seen(ASTM_E18)));
        multiples.chain(printed)
    }
}

//! How one stroke answers: hands, answers and their chances.

use libm::{erfc, sqrt};

/// What a stroke of a file showed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Outcome {
    /// The file cuts.
    Bite,
    /// The file cuts a little, or the person is not sure.
    Slight,
    /// The file slides without cutting.
    Skate,
}

impl Outcome {
    /// The outcomes from the soft side to the hard side.
    pub const ALL: [Self; 3] = [Self::Bite, Self::Slight, Self::Skate];
}

/// Which answers were open to the person.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Answering {
    /// Bite, slight or skate.
    #[default]
    ThreeWay,
    /// Bite or skate only.
    YesNo,
}

/// How well files, pressure and judgement are held in check.
///
/// # Source
/// `file-model`: the totals are anchored to SAE J864 (careful), to "+-2 to 3 HRC with practice" (practised)
/// and to "+-5 HRC" (casual); the split into terms is assumed.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Hand {
    /// Proved files, controlled pressure.
    Careful,
    /// A practised hand with files that are looked after.
    #[default]
    Practised,
    /// Unproved, worn or mixed files, or an unpractised hand.
    Casual,
}

/// The terms of scatter of a hand, standard deviations in HRC.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Scatter {
    file: f64,
    stroke: f64,
    operator: f64,
    spot: f64,
    lapse: f64,
    half_width: f64,
    outcomes: f64,
}

/// A term of the scatter that can be left out, to see what it does.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Term {
    /// The bias of the operator.
    Operator,
    /// The bias of a spot.
    Spot,
}

/// The chances of the three outcomes of one stroke; they add to 1.
#[derive(Clone, Copy, Debug, PartialEq)]
#[must_use]
pub struct Chances {
    bite: f64,
    slight: f64,
    skate: f64,
}

impl Chances {
    pub(crate) const fn new(bite: f64, slight: f64, skate: f64) -> Self {
        Self { bite, slight, skate }
    }

    /// The chance of one outcome, from 0 to 1.
    #[must_use]
    pub const fn of(&self, outcome: Outcome) -> f64 {
        match outcome {
            Outcome::Bite => self.bite,
            Outcome::Slight => self.slight,
            Outcome::Skate => self.skate,
        }
    }
}

/// The normal distribution function, by the complementary error function so that both tails keep their digits.
pub(crate) fn phi(z: f64) -> f64 {
    0.5 * erfc(-z * core::f64::consts::FRAC_1_SQRT_2)
}

/// The chance of a normal law below a value; a law without width is taken for a very narrow one.
pub(crate) fn normal_below(value: f64, mean: f64, sd: f64) -> f64 {
    phi((value - mean) / f64::max(sd, 1e-9))
}

/// Half of the range over which a three-way answer is "slight", in HRC.
///
/// # Source
/// File-test model, assumed.
const HALF_WIDTH: f64 = 1.0;

impl Hand {
    /// The hands from the surest to the least sure.
    pub const ALL: [Self; 3] = [Self::Careful, Self::Practised, Self::Casual];

    /// The terms of scatter of this hand for files graded to `tolerance`, answered as `answering`.
    ///
    /// The table's term of the file holds a rectangular grade tolerance of 1 HRC; it is exchanged for the given one:
    /// `s_f^2 = max(s_f0^2 - 1/3, 0) + tolerance^2 / 3`.
    ///
    /// # Units
    /// `tolerance` is a half-width in HRC.
    ///
    /// # Source
    /// `file-model`; the exchange of the tolerance is arithmetic on the same table.
    pub(crate) fn scatter(self, answering: Answering, tolerance: f64) -> Scatter {
        let (file, stroke, operator, spot, lapse) = match self {
            Self::Careful => (0.6, 0.8, 0.3, 0.3, 0.01),
            Self::Practised => (1.0, 1.0, 0.7, 0.5, 0.02),
            Self::Casual => (1.5, 1.5, 1.5, 0.5, 0.03),
        };
        let rest = f64::max(file * file - 1.0 / 3.0, 0.0);
        let file = sqrt(rest + tolerance * tolerance / 3.0);
        let (half_width, outcomes) = match answering {
            Answering::ThreeWay => (HALF_WIDTH, 3.0),
            Answering::YesNo => (0.0, 2.0),
        };
        Scatter { file, stroke, operator, spot, lapse, half_width, outcomes }
    }

    /// The chances of a stroke by this hand with a file of known sharpness on a spot without any bias.
    ///
    /// `P(bite) = (1-L) Phi((x-d)/s_e) + L/3`, `P(skate) = (1-L) Phi((-x-d)/s_e) + L/3`, `P(slight)` the rest, with the half-width `d` of 1 HRC,
    /// the scatter of a stroke `s_e` and the lapse rate `L`. Yes or no answers have `d = 0` and `L/2`.
    ///
    /// # Units
    /// `margin` is the file's hardness less the part's, in HRC.
    ///
    /// # Source
    /// `file-model`.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::{Answering, Hand, Outcome};
    /// let even = Hand::Practised.chances(Answering::ThreeWay, 0.0);
    /// assert!((even.of(Outcome::Bite) - 0.16).abs() < 0.005);
    /// assert!((even.of(Outcome::Slight) - 0.68).abs() < 0.005);
    /// ```
    pub fn chances(self, answering: Answering, margin: f64) -> Chances {
        let scatter = self.scatter(answering, 1.0);
        scatter.chances_with(scatter.stroke, margin)
    }

    /// The chances of a single stroke by this hand when the biases of file, operator and spot are unknown.
    ///
    /// The formula of [`Hand::chances`] with the total standard deviation in place of `s_e`.
    ///
    /// # Units
    /// `margin` is the file's grade less the part's hardness, in HRC.
    ///
    /// # Source
    /// `file-model`; SAE J864 asks a proved file to cut 2 HRC below its number and not to cut 2 HRC above it.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::{Answering, Hand, Outcome};
    /// let below = Hand::Careful.chances_overall(Answering::YesNo, 2.0);
    /// assert!(below.of(Outcome::Bite) > 0.95);
    /// ```
    pub fn chances_overall(self, answering: Answering, margin: f64) -> Chances {
        let scatter = self.scatter(answering, 1.0);
        scatter.chances_with(scatter.total(), margin)
    }
}

impl Scatter {
    /// The same without one term.
    pub(crate) const fn without(mut self, term: Term) -> Self {
        match term {
            Term::Operator => self.operator = 0.0,
            Term::Spot => self.spot = 0.0,
        }
        self
    }

    /// The standard deviation of the bias of a file, in HRC.
    pub(crate) const fn file(&self) -> f64 {
        self.file
    }

    /// The standard deviation of the bias of the operator, in HRC.
    pub(crate) const fn operator(&self) -> f64 {
        self.operator
    }

    /// The standard deviation of the bias of a spot, in HRC.
    pub(crate) const fn spot(&self) -> f64 {
        self.spot
    }

    /// The margin beyond which the chances no longer change in an `f64`, in HRC.
    pub(crate) fn reach(&self) -> f64 {
        // Phi(-8.5) is 1e-17, far below the lapse rate it is added to.
        self.half_width + 8.5 * self.stroke
    }

    /// The standard deviation of one stroke with every bias unknown, in HRC.
    pub(crate) fn total(&self) -> f64 {
        sqrt(
            self.file * self.file
                + self.stroke * self.stroke
                + self.operator * self.operator
                + self.spot * self.spot,
        )
    }

    /// The chances at one latent margin, in HRC.
    pub(crate) fn chances(&self, margin: f64) -> Chances {
        self.chances_with(self.stroke, margin)
    }

    fn chances_with(&self, sd: f64, margin: f64) -> Chances {
        let kept = 1.0 - self.lapse;
        let floor = self.lapse / self.outcomes;
        let above = phi((margin - self.half_width) / sd);
        let below = phi((-margin - self.half_width) / sd);
        let slight = if self.half_width > 0.0 {
            kept * f64::max(1.0 - above - below, 0.0) + floor
        } else {
            0.0
        };
        Chances { bite: kept * above + floor, slight, skate: kept * below + floor }
    }
}

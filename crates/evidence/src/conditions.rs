//! The state of the part and what was expected of it before the first stroke.

use alloc::vec::Vec;

use crate::belief::normal_weight;
use crate::error::{Error, What, within};
use crate::quadrature::Axis;

/// Whether the skin was ground off before filing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Skin {
    /// Ground below scale and soft skin.
    Ground,
    /// Not ground: the file may meet a soft skin.
    ///
    /// Half the belief takes the skin as sound, half as soft by 12.5 HRC with a standard deviation of 4 HRC, so that bites give no firm upper limit.
    ///
    /// # Source
    /// Assumed, from shop knowledge that such a skin reads soft, often by 5 to 20 HRC (`file-adjustments`; common practice, no source).
    NotGround,
    /// Not said: taken as ground.
    #[default]
    NotSaid,
}

/// Where the file met the part.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    /// On a flat.
    #[default]
    Flat,
    /// On or near an edge, where the pressure is higher: the part reads softer by 1.5 HRC with a standard deviation of 1.5 HRC.
    ///
    /// # Source
    /// The direction is shop knowledge, the size is assumed (`file-adjustments`).
    Edge,
}

/// How the surface compares with the piece on which the files were proved.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum Finish {
    /// The same finish.
    #[default]
    LikeProof,
    /// Another finish, which adds a standard deviation of 1 HRC.
    ///
    /// # Source
    /// SAE J864 asks for the same finish; the size is assumed.
    Different,
}

/// What kind of steel it is, as far as a file feels it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub enum SteelKind {
    /// Carbon and low-alloy steel.
    #[default]
    Ordinary,
    /// Rich in hard carbides: the part reads harder than it is by 1.5 HRC with a standard deviation of 1.5 HRC.
    ///
    /// # Source
    /// `file-adjustments`, assumed.
    CarbideRich,
}

/// The conditions that shift every stroke on a part alike.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Conditions {
    /// The skin.
    pub skin: Skin,
    /// The place.
    pub place: Place,
    /// The finish.
    pub finish: Finish,
    /// The kind of steel.
    pub steel: SteelKind,
}

/// One part of the mixture that describes the shift of a whole part, in HRC; a positive shift makes files bite more.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Shift {
    pub(crate) weight: f64,
    pub(crate) mean: f64,
    pub(crate) variance: f64,
}

impl Conditions {
    /// The shift of the whole part as a mixture of normal distributions.
    pub(crate) fn shifts(self) -> Vec<Shift> {
        let (mut mean, mut variance) = (0.0, 0.0);
        match self.steel {
            SteelKind::Ordinary => {}
            SteelKind::CarbideRich => {
                mean -= 1.5;
                variance += 1.5 * 1.5;
            }
        }
        match self.place {
            Place::Flat => {}
            Place::Edge => {
                mean += 1.5;
                variance += 1.5 * 1.5;
            }
        }
        match self.finish {
            Finish::LikeProof => {}
            Finish::Different => variance += 1.0,
        }
        let sound = Shift { weight: 1.0, mean, variance };
        match self.skin {
            Skin::Ground | Skin::NotSaid => alloc::vec![sound],
            Skin::NotGround => alloc::vec![
                Shift { weight: 0.5, ..sound },
                Shift { weight: 0.5, mean: mean + 12.5, variance: variance + 4.0 * 4.0 },
            ],
        }
    }
}

/// What was expected of the part before the first stroke.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Prior(Option<Expected>);

/// A normal expectation, in HRC.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Expected {
    pub(crate) mean: f64,
    pub(crate) sd: f64,
}

impl Prior {
    /// Nothing was expected: every hardness of the axis is equally likely.
    #[must_use]
    pub const fn flat() -> Self {
        Self(None)
    }

    /// A hardness was expected, from the steel and what was done to it.
    ///
    /// # Units
    /// `mean` and `sd` in HRC.
    ///
    /// # Valid for
    /// A mean of 20 to 72 HRC, a standard deviation of 0.3 to 20 HRC.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    pub fn normal(mean: f64, sd: f64) -> Result<Self, Error> {
        let mean = within(What::PriorMean, mean, 20.0, 72.0)?;
        let sd = within(What::PriorSd, sd, 0.3, 20.0)?;
        Ok(Self(Some(Expected { mean, sd })))
    }

    /// The mean and standard deviation in HRC, unless the prior is flat.
    #[must_use]
    pub fn expected(&self) -> Option<(f64, f64)> {
        self.0.map(|expected| (expected.mean, expected.sd))
    }

    /// The density up to its constant at every place of an axis.
    pub(crate) fn weights(&self, axis: Axis) -> Vec<f64> {
        match self.0 {
            Some(Expected { mean, sd }) => {
                axis.values().map(|h| normal_weight(h, mean, sd)).collect()
            }
            None => alloc::vec![1.0; axis.len()],
        }
    }
}

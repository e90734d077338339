//! Readings of instruments and their likelihood.
//!
//! A reading is the part's hardness plus a bias of the conversion, a bias of the instrument, a bias of the spot and an error of its own, all normal.
//! The conversion is shared by all groups converted alike, the instrument and the spot by all readings of a group, the instrument besides by groups
//! that name the same tester. These biases form a tree, so the joint likelihood is products and blurs: the readings of a group at a fixed level,
//! blurred by spot and instrument, the groups of a conversion multiplied and blurred by it, the conversions multiplied. Without slips it equals the
//! normal law with the full matrix of covariances.

use alloc::vec::Vec;

use biteband_quantity::sort_by_number;

use libm::sqrt;

use crate::belief::{AXIS_HIGH, AXIS_LOW, Belief, normal_weight};
use crate::conditions::Prior;
use crate::error::{Error, What, within};
use crate::instrument::Instrument;
use crate::quadrature::{Axis, STEP, multiply, whole_above};
use crate::testers::{Family, Tester, families};

/// The most groups of readings.
pub const MAX_GROUPS: usize = 8;
/// The most readings of a group.
pub const MAX_READINGS: usize = 30;
/// The standard deviation of the hardness of a spot about that of the part, in HRC, unless another is given.
///
/// # Source
/// The spot term of a practised hand in the file-test model, so that files and readings on one part speak of the same thing; assumed.
pub const SPOT_SD: f64 = 0.5;
/// The chance that a reading is a slip (mistyped, badly seated, on scale), unless another is given; it then says nothing between 10 and 80 HRC.
///
/// # Source
/// The lapse rate of a careful hand in the file-test model; assumed.
pub const SLIP_RATE: f64 = 0.01;

/// How far a normal law is followed, in standard deviations; beyond it the density is below 1e-10 of its greatest.
const REACH: f64 = 7.0;

/// Readings of one instrument on one spot.
#[derive(Clone, Debug, PartialEq)]
#[must_use]
pub struct Group {
    instrument: Instrument,
    values: Vec<f64>,
    random: f64,
    shared: f64,
    conversion: Option<(u8, f64)>,
    tester: Option<u8>,
}

impl Group {
    /// A group of readings, side by side on one spot.
    ///
    /// # Units
    /// All in HRC or its equivalent: the readings; `random`, the standard uncertainty of a single reading; `shared`, that of the instrument's bias.
    ///
    /// # Valid for
    /// 1 to 30 readings of 15 to 70 HRC; `random` 0.1 to 5 HRC, `shared` 0 to 10 HRC.
    ///
    /// # Errors
    /// [`Error::NoReadings`], [`Error::TooManyReadings`], [`Error::OutOfRange`].
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::{Group, Instrument, Level, Prior, Readings};
    /// let (random, shared) = Instrument::RockwellVerified.usual().in_hrc(52.0, 1.0);
    /// let group = Group::new(Instrument::RockwellVerified, &[52.0, 52.5, 51.5], random, shared)?;
    /// let belief = Readings::new().with(group)?.belief(Prior::flat())?;
    /// // sqrt(0.3^2 / 3 + 0.4^2 + 0.5^2), the last term for the spot.
    /// assert!((belief.mean() - 52.0).abs() < 0.01 && (belief.sd() - 0.66).abs() < 0.02);
    /// # Ok::<(), biteband_evidence::Error>(())
    /// ```
    pub fn new(
        instrument: Instrument,
        values: &[f64],
        random: f64,
        shared: f64,
    ) -> Result<Self, Error> {
        count(values)?;
        let mut inside = Vec::with_capacity(values.len());
        for &value in values {
            inside.push(within(What::Reading, value, 15.0, 70.0)?);
        }
        Ok(Self {
            instrument,
            values: inside,
            random: within(What::ReadingSd, random, 0.1, 5.0)?,
            shared: within(What::SharedSd, shared, 0.0, 10.0)?,
            conversion: None,
            tester: None,
        })
    }

    /// A group read against a piece of known hardness on the same tester, in the same way.
    ///
    /// Every reading counts as the known hardness plus its distance from the mean reading of the piece. The bias of the tester cancels; what is shared
    /// is the uncertainty of the piece and the scatter of its mean. The nearer the piece is to the part, the better the bias cancels.
    ///
    /// # Units
    /// All in HRC or its equivalent: `known` and its standard uncertainty `known_sd`, the readings of the piece and of the part, the standard
    /// uncertainty `random` of a single reading.
    ///
    /// # Valid for
    /// As [`Group::new`], for the piece and its readings too.
    ///
    /// # Errors
    /// As [`Group::new`]; [`Error::OutOfRange`] also when the result lies outside 15 to 70 HRC.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::Group;
    /// // The tester shows 47 and 49 on a block of 50 HRC, and 53 on the part.
    /// let group = Group::against(50.0, 0.4, &[47.0, 49.0], &[53.0], 0.4)?;
    /// assert_eq!(group.values(), [55.0]);
    /// assert!((group.shared() - (0.4_f64.powi(2) + 0.4_f64.powi(2) / 2.0).sqrt()).abs() < 1e-12);
    /// # Ok::<(), biteband_evidence::Error>(())
    /// ```
    pub fn against(
        known: f64,
        known_sd: f64,
        on_known: &[f64],
        values: &[f64],
        random: f64,
    ) -> Result<Self, Error> {
        let piece = Self::new(Instrument::Comparison, on_known, random, known_sd)?;
        let known = within(What::Reading, known, 15.0, 70.0)?;
        let part = Self::new(Instrument::Comparison, values, random, known_sd)?;
        let off = mean(&piece.values) - known;
        let level: Vec<f64> = part.values.iter().map(|value| value - off).collect();
        let shared = sqrt(known_sd * known_sd + random * random / number(piece.values.len()));
        Self::new(Instrument::Comparison, &level, random, shared)
    }

    /// The same group with the uncertainty of its conversion to HRC.
    ///
    /// # Units
    /// `sd`, a standard uncertainty in HRC. `key` is the caller's name of table and scale: groups with the same key share one bias, whose standard
    /// deviation is the greatest given for it.
    ///
    /// # Valid for
    /// 0.3 to 10 HRC.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    pub fn with_conversion(mut self, key: u8, sd: f64) -> Result<Self, Error> {
        self.conversion = Some((key, within(What::ConversionSd, sd, 0.3, 10.0)?));
        Ok(self)
    }

    /// The same group, read on a tester that other groups may have been read on too.
    ///
    /// Groups with the same `tester` that are converted alike, or not at all, share its bias: reading more places then teaches nothing about it.
    /// Its standard deviation is the greatest that they give. A group without a tester has one of its own.
    pub const fn on_tester(mut self, tester: u8) -> Self {
        self.tester = Some(tester);
        self
    }

    /// The same group with another scatter of its readings.
    ///
    /// # Units
    /// `random`, the standard uncertainty of a single reading in HRC.
    ///
    /// # Valid for
    /// 0.1 to 5 HRC.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::{Group, Instrument};
    /// let group = Group::new(Instrument::RockwellVerified, &[28.0, 32.0], 0.3, 0.4)?;
    /// assert_eq!(group.with_scatter(2.8)?.random(), 2.8);
    /// # Ok::<(), biteband_evidence::Error>(())
    /// ```
    pub fn with_scatter(mut self, random: f64) -> Result<Self, Error> {
        self.random = within(What::ReadingSd, random, 0.1, 5.0)?;
        Ok(self)
    }

    /// The instrument.
    #[must_use]
    pub const fn instrument(&self) -> Instrument {
        self.instrument
    }

    /// The readings in HRC, in the order given.
    #[must_use]
    pub fn values(&self) -> &[f64] {
        &self.values
    }

    /// The standard uncertainty of a single reading, in HRC.
    #[must_use]
    pub const fn random(&self) -> f64 {
        self.random
    }

    /// The standard uncertainty of the instrument's bias, in HRC.
    #[must_use]
    pub const fn shared(&self) -> f64 {
        self.shared
    }

    /// The key of the conversion and its standard uncertainty in HRC, if the readings were converted.
    #[must_use]
    pub const fn conversion(&self) -> Option<(u8, f64)> {
        self.conversion
    }

    /// The tester, if it may be that of other groups.
    #[must_use]
    pub const fn tester(&self) -> Option<u8> {
        self.tester
    }

    /// Whether both are converted by the same, or neither is converted.
    pub(crate) fn converts_as(&self, other: &Self) -> bool {
        let key = |group: &Self| group.conversion.map(|(key, _)| key);
        key(self) == key(other)
    }

    /// Whether both were read on one tester and converted alike, so that the tester's bias is the same in both.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::{Group, Instrument};
    /// let group = |value| Group::new(Instrument::RockwellVerified, &[value], 0.3, 0.4);
    /// let (one, other) = (group(52.0)?.on_tester(7), group(53.0)?.on_tester(7));
    /// assert!(one.shares_tester(&other) && !one.shares_tester(&group(53.0)?));
    /// # Ok::<(), biteband_evidence::Error>(())
    /// ```
    #[must_use]
    pub fn shares_tester(&self, other: &Self) -> bool {
        self.tester.is_some() && self.tester == other.tester && self.converts_as(other)
    }

    fn without(&self, reading: usize) -> Self {
        let mut rest = self.clone();
        if reading < rest.values.len() {
            rest.values.remove(reading);
        }
        rest
    }
}

/// Groups of readings on one part.
#[derive(Clone, Debug, PartialEq)]
#[must_use]
pub struct Readings {
    groups: Vec<Group>,
    spot: f64,
    slip: f64,
}

impl Readings {
    /// No readings yet; [`SPOT_SD`] and [`SLIP_RATE`] hold.
    pub const fn new() -> Self {
        Self { groups: Vec::new(), spot: SPOT_SD, slip: SLIP_RATE }
    }

    /// The same readings with one more group.
    ///
    /// # Errors
    /// [`Error::TooManyGroups`] above 8.
    pub fn with(mut self, group: Group) -> Result<Self, Error> {
        if self.groups.len() >= MAX_GROUPS {
            return Err(Error::TooManyGroups { max: MAX_GROUPS });
        }
        self.groups.push(group);
        Ok(self)
    }

    /// The same readings on a part that differs from spot to spot by another standard deviation; each group lies on a spot of its own.
    ///
    /// # Units
    /// HRC.
    ///
    /// # Valid for
    /// 0.3 to 3 HRC: no steel part is known more closely than that.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    pub fn with_spot(mut self, sd: f64) -> Result<Self, Error> {
        self.spot = within(What::SpotSd, sd, 0.3, 3.0)?;
        Ok(self)
    }

    /// The same readings with another chance of a slip each; without slips one mistyped reading is believed.
    ///
    /// # Valid for
    /// 0 to 0.05.
    ///
    /// # Errors
    /// [`Error::OutOfRange`].
    pub fn with_slips(mut self, rate: f64) -> Result<Self, Error> {
        self.slip = within(What::SlipRate, rate, 0.0, 0.05)?;
        Ok(self)
    }

    /// The groups, in the order given.
    pub fn groups(&self) -> &[Group] {
        &self.groups
    }

    /// The standard deviation from spot to spot, in HRC.
    #[must_use]
    pub const fn spot(&self) -> f64 {
        self.spot
    }

    /// Whether there is no group.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.groups.is_empty()
    }

    /// The belief of the readings and an expectation alone, on the axis from 10 to 80 HRC.
    ///
    /// # Accuracy
    /// Limits of its intervals are within 0.003 HRC of the normal law with all covariances, within 0.007 HRC at the least scatter allowed
    /// (`tests/reference/readings`).
    ///
    /// # Errors
    /// [`Error::NothingLeft`] if readings and expectation exclude each other beyond the range of an `f64`, which needs slips to be ruled out.
    pub fn belief(&self, prior: Prior) -> Result<Belief, Error> {
        let axis = Axis::spanning(AXIS_LOW, AXIS_HIGH);
        let mut weights = prior.weights(axis);
        multiply(&mut weights, &self.likelihood(axis));
        Belief::from_weights(axis, weights)
    }

    /// The stretch of hardness about which the readings speak, in HRC.
    pub(crate) fn reach(&self) -> Option<(f64, f64)> {
        let ends = self.groups.iter().flat_map(|group| {
            let conversion = group.conversion.map_or(0.0, |(_, sd)| sd);
            let own = group.random * group.random + self.bias(group);
            let reach = 5.0 * sqrt(own + conversion * conversion);
            group.values.iter().map(move |value| (value - reach, value + reach))
        });
        ends.reduce(|one, other| (f64::min(one.0, other.0), f64::max(one.1, other.1)))
    }

    pub(crate) fn without_group(&self, group: usize) -> Self {
        let mut rest = self.clone();
        if group < rest.groups.len() {
            let _ = rest.groups.remove(group);
        }
        rest
    }

    pub(crate) fn without_reading(&self, group: usize, reading: usize) -> Self {
        let mut rest = self.clone();
        if let Some(group) = rest.groups.get_mut(group) {
            *group = group.without(reading);
        }
        rest
    }

    /// The variance of what the readings of a group share, the conversion apart.
    fn bias(&self, group: &Group) -> f64 {
        group.shared * group.shared + self.spot * self.spot
    }

    /// The likelihood of one group, brought to a greatest value of 1; the conversion is left at zero.
    pub(crate) fn unconverted(&self, group: &Group, axis: Axis) -> Vec<f64> {
        self.blurred(group, sqrt(self.bias(group)), axis)
    }

    /// The same with the bias of the tester left at zero too.
    pub(crate) fn on_spot(&self, group: &Group, axis: Axis) -> Vec<f64> {
        self.blurred(group, self.spot, axis)
    }

    fn blurred(&self, group: &Group, sd: f64, axis: Axis) -> Vec<f64> {
        let fine = whole_above(STEP * sqrt(number(group.values.len())) / group.random).max(1);
        let step = STEP / f64::from(fine);
        let more = reach(sd);
        let places = (axis.first - more) * fine..=(axis.last + more) * fine;
        // A fixed order keeps the last bit independent of the order of the readings.
        let mut values = group.values.clone();
        sort_by_number(&mut values, |value| *value);
        let height = (1.0 - self.slip) / (group.random * sqrt(core::f64::consts::TAU));
        let floor = self.slip / (AXIS_HIGH - AXIS_LOW);
        let level = |place: i32| -> f64 {
            let level = f64::from(place) * step;
            values.iter().map(|v| height * normal_weight(*v, level, group.random) + floor).product()
        };
        let mut found = blur(&places.map(level).collect::<Vec<f64>>(), sd, fine);
        let most = found.iter().copied().fold(f64::MIN_POSITIVE, f64::max);
        for value in &mut found {
            *value /= most;
        }
        found
    }

    /// The likelihood of groups that share a conversion, or a tester without one.
    fn family(&self, family: &Family<'_>, axis: Axis) -> Vec<f64> {
        let sd = family.conversion().unwrap_or(0.0);
        let wide = Axis { first: axis.first - reach(sd), last: axis.last + reach(sd) };
        let mut product = alloc::vec![1.0; wide.len()];
        for tester in family.testers() {
            multiply(&mut product, &self.one_tester(tester, wide));
        }
        blur(&product, sd, 1)
    }

    /// The likelihood of the groups that were read on one tester; the conversion is left at zero.
    fn one_tester(&self, tester: &Tester<'_>, axis: Axis) -> Vec<f64> {
        // A group that names no tester has no more than one blur to go through.
        if let [group] = tester.groups()
            && group.tester.is_none()
        {
            return self.unconverted(group, axis);
        }
        let sd = tester.sd();
        let wide = Axis { first: axis.first - reach(sd), last: axis.last + reach(sd) };
        let mut product = alloc::vec![1.0; wide.len()];
        for group in tester.groups() {
            multiply(&mut product, &self.on_spot(group, wide));
        }
        blur(&product, sd, 1)
    }

    /// The likelihood of one group as if it were alone.
    pub(crate) fn alone(&self, group: &Group, axis: Axis) -> Vec<f64> {
        self.family(&Family::of(group), axis)
    }

    /// The likelihood of all readings over the hardness of the part.
    pub(crate) fn likelihood(&self, axis: Axis) -> Vec<f64> {
        let mut all = alloc::vec![1.0; axis.len()];
        for family in families(&self.groups) {
            multiply(&mut all, &self.family(&family, axis));
        }
        all
    }
}

impl Default for Readings {
    fn default() -> Self {
        Self::new()
    }
}

fn count(values: &[f64]) -> Result<(), Error> {
    match values.len() {
        0 => Err(Error::NoReadings),
        count if count > MAX_READINGS => Err(Error::TooManyReadings { count, max: MAX_READINGS }),
        _ => Ok(()),
    }
}

/// A count of readings as a number.
pub(crate) fn number(count: usize) -> f64 {
    f64::from(u32::try_from(count).unwrap_or(u32::MAX))
}

pub(crate) fn mean(values: &[f64]) -> f64 {
    values.iter().sum::<f64>() / number(values.len())
}

/// How many places of the grid a bias is followed to either side.
fn reach(sd: f64) -> i32 {
    whole_above(REACH * sd / STEP)
}

/// A function averaged over a normal bias: it is given on a lattice `fine` times as fine as the grid and as far beyond its ends as the bias reaches.
fn blur(function: &[f64], sd: f64, fine: i32) -> Vec<f64> {
    if sd <= 0.0 {
        return function.to_vec();
    }
    let (step, last) = (STEP / f64::from(fine), reach(sd) * fine);
    let weights: Vec<f64> =
        (-last..=last).map(|place| normal_weight(f64::from(place) * step, 0.0, sd)).collect();
    let windows = function.windows(weights.len()).step_by(usize::try_from(fine).unwrap_or(1));
    windows
        .map(|part| part.iter().zip(&weights).map(|(value, weight)| value * weight).sum())
        .collect()
}

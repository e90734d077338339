//! What the doubt is made of.
//!
//! The errors of readings form a tree: scatter, spot, tester, conversion. Along it variances add, and where branches
//! meet the estimate is their mean weighed by the inverse of their variances, so every source keeps the square of its
//! branches' weights: the shares add to the whole without a draw of chance. This is the propagation of JCGM 100 for the
//! linear model.
//!
//! Files answer by yes and no, which is not linear. Their belief counts as one branch with the variance it has; what
//! operator and spot do in it is what it loses when the term is switched off in the model, and all the rest (bias of
//! the files, scatter of the strokes, the gap between two grades) is the files'.

use alloc::vec::Vec;

use libm::sqrt;

use super::{Estimate, Stated};
use crate::assess::FileTest;
use crate::error::Error;
use crate::interval::Level;
use crate::model::Term;
use crate::readings::{Group, Readings, number};
use crate::testers::{Family, Tester, families};

/// A source of doubt.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Source {
    /// The conversion from one scale to another.
    Conversion,
    /// The scatter of an instrument from reading to reading.
    InstrumentRandom,
    /// What an instrument is off by all the time.
    InstrumentBias,
    /// The hand that strokes the files.
    Operator,
    /// The files, and the gap between two of them.
    File,
    /// The hardness of a spot about that of the part.
    Spot,
    /// The rounding of the paper.
    Rounding,
    /// What was expected before.
    Expected,
}

impl Source {
    /// All of them.
    pub const ALL: [Self; 8] = [
        Self::Conversion,
        Self::InstrumentRandom,
        Self::InstrumentBias,
        Self::Operator,
        Self::File,
        Self::Spot,
        Self::Rounding,
        Self::Expected,
    ];

    /// The word in JSON.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Conversion => "conversion",
            Self::InstrumentRandom => "instrument_random",
            Self::InstrumentBias => "instrument_bias",
            Self::Operator => "operator",
            Self::File => "file",
            Self::Spot => "spot",
            Self::Rounding => "rounding",
            Self::Expected => "expected",
        }
    }
}

/// One source in a budget.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share {
    /// The source.
    pub source: Source,
    /// Its standard uncertainty in the estimate, in the unit of the readings.
    pub u: f64,
    /// Its share of the variance, 0 to 1.
    pub share: f64,
}

/// What files alone leave open.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FileDoubt {
    u: f64,
    operator: f64,
    spot: f64,
    conversion: f64,
}

impl FileDoubt {
    /// The doubt of the strokes of a test, its readings and its expectation left out; `None` where the files leave a
    /// side open.
    ///
    /// # Errors
    /// As [`FileTest::belief`].
    pub fn of(test: &FileTest) -> Result<Option<Self>, Error> {
        if test.strokes().is_empty() {
            return Ok(None);
        }
        let alone = test
            .clone()
            .with_readings(Readings::new())
            .with_prior(crate::conditions::Prior::flat());
        let belief = alone.belief()?;
        let band = belief.band(Level::P95);
        if band.open_low() || band.open_high() {
            return Ok(None);
        }
        let variance = |test: &FileTest| -> Result<f64, Error> {
            let u = Estimate::of(&test.belief()?).u;
            Ok(u * u)
        };
        let conversion = test.conversion() * test.conversion();
        let whole = variance(&alone)?;
        // The conversion is a term of its own; at least a tenth is left to the files.
        let own = f64::max(whole - conversion, 0.1 * whole);
        let lost = |term: Term| -> Result<f64, Error> {
            Ok(f64::max(whole - variance(&alone.clone().without_term(term))?, 0.0))
        };
        let (operator, spot) = (lost(Term::Operator)?, lost(Term::Spot)?);
        let fit = f64::min(1.0, 0.9 * own / f64::max(operator + spot, 1e-12));
        Ok(Some(Self {
            u: sqrt(own),
            operator: operator * fit,
            spot: spot * fit,
            conversion: test.conversion(),
        }))
    }

    /// The standard uncertainty of the files, the conversion apart.
    #[must_use]
    pub const fn u(&self) -> f64 {
        self.u
    }
}

/// Variance by source.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
struct Branch([f64; Source::ALL.len()]);

impl Branch {
    fn of(source: Source, variance: f64) -> Self {
        Self::default().with(source, variance)
    }

    fn with(mut self, source: Source, variance: f64) -> Self {
        for (own, value) in Source::ALL.iter().zip(&mut self.0) {
            if *own == source {
                *value += variance;
            }
        }
        self
    }

    fn variance(&self) -> f64 {
        self.0.iter().sum()
    }

    /// The mean of several branches, each weighed by the inverse of its variance.
    fn mean(all: &[Self]) -> Option<Self> {
        let whole: f64 = all.iter().map(|one| 1.0 / f64::max(one.variance(), 1e-12)).sum();
        if all.is_empty() {
            return None;
        }
        let mut sum = Self::default();
        for one in all {
            let weight = 1.0 / (f64::max(one.variance(), 1e-12) * whole);
            for (value, more) in sum.0.iter_mut().zip(one.0) {
                *value += weight * weight * more;
            }
        }
        Some(sum)
    }
}

/// The doubt about an estimate, by source.
#[derive(Clone, Debug, PartialEq)]
pub struct Budget {
    branch: Branch,
}

impl Budget {
    /// The budget of readings, of files if they bound the part on both sides, of an expectation, and of the rounding of
    /// what is stated.
    ///
    /// `None` where nothing bounds the part.
    ///
    /// # Units
    /// All in the unit of the readings; `expected` is a standard deviation.
    ///
    /// # Source
    /// `jcgm-100`, 5.2 and 8; weights by the inverse of the variance.
    ///
    /// # Example
    /// ```
    /// use biteband_evidence::claim::{Budget, Source, Stated};
    /// use biteband_evidence::{Group, Instrument, Readings};
    /// let group = Group::new(Instrument::Other, &[52.0], 0.3, 0.4)?.with_conversion(0, 1.2)?;
    /// let stated = Stated::new(Some(50.0), Some(54.0)).unwrap();
    /// let budget = Budget::of(&Readings::new().with(group)?, None, None, &stated).unwrap();
    /// // 0.3^2 + 0.4^2 + 1.2^2 + 0.5^2, the last for the spot: 1.94.
    /// assert!((budget.u() * budget.u() - 1.94).abs() < 1e-12);
    /// let conversion = budget.shares().into_iter().find(|one| one.source == Source::Conversion);
    /// assert!(conversion.is_some_and(|one| (one.share - 1.44 / 1.94).abs() < 1e-12));
    /// # Ok::<(), biteband_evidence::Error>(())
    /// ```
    #[must_use]
    pub fn of(
        readings: &Readings,
        files: Option<FileDoubt>,
        expected: Option<f64>,
        stated: &Stated,
    ) -> Option<Self> {
        let mut branches = branches_of(readings);
        branches.extend(files.map(|files| {
            let rest = files.u * files.u - files.operator - files.spot;
            Branch::of(Source::File, rest)
                .with(Source::Operator, files.operator)
                .with(Source::Spot, files.spot)
                .with(Source::Conversion, files.conversion * files.conversion)
        }));
        if branches.is_empty() {
            return None;
        }
        branches.extend(expected.map(|sd| Branch::of(Source::Expected, sd * sd)));
        let rounding = stated.rounding();
        let branch = Branch::mean(&branches)?.with(Source::Rounding, rounding * rounding);
        Some(Self { branch })
    }

    /// The combined standard uncertainty.
    #[must_use]
    pub fn u(&self) -> f64 {
        sqrt(self.branch.variance())
    }

    /// The sources that have a part in it, the greatest first; their shares add to 1.
    #[must_use]
    pub fn shares(&self) -> Vec<Share> {
        let whole = self.branch.variance();
        let mut all: Vec<Share> = Source::ALL
            .into_iter()
            .zip(self.branch.0)
            .filter(|(_, variance)| *variance > 0.0)
            .map(|(source, variance)| Share { source, u: sqrt(variance), share: variance / whole })
            .collect();
        biteband_quantity::sort_by_number(&mut all, |one| -one.share);
        all
    }
}

/// One branch for each conversion, and one for each tester that reads without.
fn branches_of(readings: &Readings) -> Vec<Branch> {
    let branch = |family: &Family<'_>| {
        let testers: Vec<Branch> =
            family.testers().iter().filter_map(|one| tester(readings, one)).collect();
        match family.conversion() {
            None => testers.first().copied(),
            Some(sd) => Some(Branch::mean(&testers)?.with(Source::Conversion, sd * sd)),
        }
    };
    families(readings.groups()).iter().filter_map(branch).collect()
}

/// The places read on a tester.
fn tester(readings: &Readings, tester: &Tester<'_>) -> Option<Branch> {
    let place = |group: &&Group| {
        let random = group.random() * group.random() / number(group.values().len());
        Branch::of(Source::InstrumentRandom, random)
            .with(Source::Spot, readings.spot() * readings.spot())
    };
    let places: Vec<Branch> = tester.groups().iter().map(place).collect();
    let bias = tester.sd();
    Branch::mean(&places).map(|mean| mean.with(Source::InstrumentBias, bias * bias))
}

//! Which groups of readings share a bias: the tree of conversions and testers.
//!
//! What is off in a conversion is off for all groups converted alike; what a tester is off by, for all groups that name
//! it and are converted alike. Of a bias that several groups share, the greatest standard deviation that they give holds:
//! it is one bias, and the widest statement about it is the safe one.

use alloc::vec::Vec;

use crate::readings::Group;

/// Groups read on one tester and converted alike, in their order; a group that names no tester is alone.
#[derive(Clone, Debug)]
pub(crate) struct Tester<'a> {
    groups: Vec<&'a Group>,
}

impl<'a> Tester<'a> {
    pub(crate) fn groups(&self) -> &[&'a Group] {
        &self.groups
    }

    /// The standard deviation of its bias.
    pub(crate) fn sd(&self) -> f64 {
        self.groups.iter().map(|group| group.shared()).fold(0.0, f64::max)
    }
}

/// Groups converted alike, tester by tester; without a conversion, those of one tester.
#[derive(Clone, Debug)]
pub(crate) struct Family<'a> {
    testers: Vec<Tester<'a>>,
}

impl<'a> Family<'a> {
    pub(crate) fn of(group: &'a Group) -> Self {
        Self { testers: alloc::vec![Tester { groups: alloc::vec![group] }] }
    }

    pub(crate) fn testers(&self) -> &[Tester<'a>] {
        &self.testers
    }

    /// The standard deviation of the conversion; `None` for groups that are not converted.
    pub(crate) fn conversion(&self) -> Option<f64> {
        let groups = self.testers.iter().flat_map(Tester::groups);
        groups.filter_map(|group| group.conversion()).map(|(_, sd)| sd).reduce(f64::max)
    }

    /// Takes a group in, or says that it belongs elsewhere.
    fn takes(&mut self, group: &'a Group) -> bool {
        let of = |tester: &Tester<'_>| tester.groups.iter().any(|own| own.shares_tester(group));
        let first = self.testers.iter().flat_map(Tester::groups).next();
        let alike = first.is_some_and(|own| group.conversion().is_some() && own.converts_as(group));
        if let Some(tester) = self.testers.iter_mut().find(|tester| of(tester)) {
            tester.groups.push(group);
        } else if alike {
            self.testers.push(Tester { groups: alloc::vec![group] });
        } else {
            return false;
        }
        true
    }
}

/// All groups, in the order of the first of each family.
pub(crate) fn families(groups: &[Group]) -> Vec<Family<'_>> {
    let mut all: Vec<Family<'_>> = Vec::new();
    for group in groups {
        if !all.iter_mut().any(|family| family.takes(group)) {
            all.push(Family::of(group));
        }
    }
    all
}

//! Volumes in a row, each exchanging heat with its neighbours and some with what surrounds them.

use alloc::vec::Vec;

/// The links of a row of volumes.
pub(crate) struct Chain {
    /// Conductance from each volume to the next; the last has none.
    links: Vec<f64>,
    /// Conductance from each volume to the surroundings.
    losses: Vec<f64>,
}

impl Chain {
    pub(crate) fn new(links: Vec<f64>, losses: Vec<f64>) -> Self {
        Self { links, losses }
    }

    /// Heat leaving each volume, for temperatures over those of the surroundings.
    pub(crate) fn outflow<'a>(&'a self, now: &'a [f64]) -> impl Iterator<Item = f64> + 'a {
        let next = now.iter().skip(1).chain(core::iter::once(&0.0));
        let mut arriving = 0.0;
        (now.iter().zip(next)).zip(self.links.iter().zip(&self.losses)).map(
            move |((here, next), (link, loss))| {
                let onward = link * (here - next);
                let out = onward - arriving + loss * here;
                arriving = onward;
                out
            },
        )
    }

    /// Solves (capacities + share × conductances) x = right by elimination; the matrix is diagonally
    /// dominant, so no pivot can vanish.
    pub(crate) fn solve(
        &self,
        capacities: &[f64],
        share: f64,
        right: impl Iterator<Item = f64>,
    ) -> Vec<f64> {
        let mut rows = Vec::with_capacity(capacities.len());
        let (mut before, mut ratio, mut value) = (0.0, 0.0, 0.0);
        let row = capacities.iter().zip(right).zip(self.links.iter().zip(&self.losses));
        for ((capacity, right), (link, loss)) in row {
            let after = share * link;
            let pivot = capacity + before + after + share * loss - before * ratio;
            value = (right + before * value) / pivot;
            ratio = after / pivot;
            rows.push((ratio, value));
            before = after;
        }
        let mut next = 0.0;
        let mut made: Vec<f64> = (rows.iter().rev())
            .map(|(ratio, value)| {
                next = value + ratio * next;
                next
            })
            .collect();
        made.reverse();
        made
    }
}

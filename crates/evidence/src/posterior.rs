//! From strokes to a belief: the product of the files with every shared bias integrated once.
//!
//! At fixed hardness, operator and spots each file is integrated over its own bias, the files are multiplied, then the operator and the spots are
//! integrated. Without proofs the operator and a single spot shift every margin alike, as the part's own hardness does, so they become one blur of
//! the belief at the end. Proofs see the operator but not the part, so with proofs the operator keeps its own nodes.
//!
//! The specification (`tests/reference/file_test`) integrates with 9 nodes of Gauss-Hermite. The sums here are the same integrals: [`crate::quadrature`] says why they are closer.

use alloc::vec::Vec;

use biteband_quantity::sort_by_number;

use crate::assess::FileTest;
use crate::belief::Belief;
use crate::error::Error;
use crate::model::{Chances, Outcome, Scatter};
use crate::quadrature::{
    Axis, Patch, SPOT_NODES, STEP, Weights, add_stretches, multiply, offset, patches, places,
    power, spaced, whole_above, whole_below,
};
use crate::strokes::{FileId, Tally};

/// The chances of the outcomes on the lattice of one offset, from the far skating side to the far biting side.
struct Table {
    offset: f64,
    chances: Vec<Chances>,
}

/// Everything known about one file.
#[derive(Clone, Debug, Default)]
pub(crate) struct FileRecord {
    /// One tally per spot in use.
    pub(crate) strokes: Vec<Tally>,
    /// Known pieces and their tallies, softest first.
    pub(crate) proofs: Vec<(f64, Tally)>,
}

impl FileRecord {
    fn is_empty(&self) -> bool {
        self.proofs.is_empty() && self.strokes.iter().all(|tally| tally.is_empty())
    }

    pub(crate) fn with_stroke(&self, spot: usize, outcome: Outcome) -> Self {
        let mut more = self.clone();
        if let Some(tally) = more.strokes.get_mut(spot) {
            tally.add(outcome);
        }
        more
    }

    pub(crate) fn with_proof(mut self, known: f64, outcome: Outcome) -> Self {
        let same = |other: f64| other.to_bits() == known.to_bits();
        if let Some((_, tally)) = self.proofs.iter_mut().find(|(other, _)| same(*other)) {
            tally.add(outcome);
        } else {
            let mut tally = Tally::default();
            tally.add(outcome);
            self.proofs.push((known, tally));
            // A fixed order of the pieces keeps the last bit independent of the order of the strokes.
            sort_by_number(&mut self.proofs, |(known, _)| *known);
        }
        self
    }

    pub(crate) fn total(&self) -> Tally {
        let mut sum = Tally::default();
        for tally in &self.strokes {
            sum.bites += tally.bites;
            sum.slights += tally.slights;
            sum.skates += tally.skates;
        }
        sum
    }

    /// The same file with only some of its strokes.
    pub(crate) fn keeping(&self, kept: impl Fn(Tally) -> Tally) -> Self {
        let strokes = self.strokes.iter().map(|tally| kept(*tally)).collect();
        Self { strokes, proofs: self.proofs.clone() }
    }
}

/// How the bias of the operator is integrated.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Operator {
    /// With nodes of its own if there are proofs, in the last blur otherwise.
    Integrated,
    /// Left at zero, because it can not set two files against each other.
    AtZero,
}

/// A function of the operator's node, the spots' point and the latent hardness; the file's own bias is integrated.
pub(crate) type Factor = Vec<f64>;

/// A file test made ready for numbers.
pub(crate) struct Engine {
    scatter: Scatter,
    grades: Vec<f64>,
    /// What was expected, and what the readings say.
    prior: Vec<f64>,
    grid: Axis,
    latent: Axis,
    kernel: Weights,
    operator: Vec<(i32, f64)>,
    rule: Vec<Patch>,
    spots: usize,
    own_bias: Weights,
    tables: Vec<Table>,
}

impl Engine {
    /// The engine of a test.
    ///
    /// `proved` says whether any file will carry proofs.
    pub(crate) fn new(test: &FileTest, operator: Operator, proved: bool) -> Self {
        let scatter = test.scatter();
        let grid = test.axis();
        let spots = test.spots().len();
        let free_operator = operator == Operator::Integrated && proved;
        let mut extra = test.conversion() * test.conversion();
        if operator == Operator::Integrated && !proved {
            extra += scatter.operator() * scatter.operator();
        }
        if spots < 2 {
            extra += scatter.spot() * scatter.spot();
        }
        let kernel = Weights::mixture(&test.conditions().shifts(), extra);
        let latent = Axis { first: grid.first - kernel.last(), last: grid.last - kernel.first };
        let operator = if free_operator {
            spaced(scatter.operator(), operator_spacing(&scatter))
        } else {
            alloc::vec![(0, 1.0)]
        };
        let mut prior = test.prior().weights(grid);
        if !test.readings().is_empty() {
            multiply(&mut prior, &test.readings().likelihood(grid));
        }
        let mut engine = Self {
            scatter,
            grades: test.set().files().map(|(_, grade)| grade).collect(),
            prior,
            grid,
            latent,
            kernel,
            operator,
            rule: patches(spots),
            spots,
            own_bias: Weights::normal(scatter.file()),
            tables: Vec::new(),
        };
        engine.make_tables();
        engine
    }

    /// The bias of a spot's node in HRC; a single spot has none here, it is part of the last blur.
    fn node_bias(&self, node: usize) -> f64 {
        SPOT_NODES.get(node).copied().unwrap_or(0.0) * self.scatter.spot()
    }

    fn nodes_in_use(&self) -> core::ops::RangeInclusive<usize> {
        if self.spots < 2 { 1..=1 } else { 0..=2 }
    }

    /// The chances for every offset from the lattice that a file on a spot can have: files often share one.
    fn make_tables(&mut self) {
        let reach = self.reach();
        let mut tables: Vec<Table> = Vec::new();
        for grade in &self.grades {
            for node in self.nodes_in_use() {
                let (_, offset) = split(grade + self.node_bias(node));
                if tables.iter().any(|table| table.offset.to_bits() == offset.to_bits()) {
                    continue;
                }
                let chances = (-reach..=reach)
                    .map(|place| self.scatter.chances(f64::from(place) * STEP + offset))
                    .collect();
                tables.push(Table { offset, chances });
            }
        }
        self.tables = tables;
    }

    fn reach(&self) -> i32 {
        whole_above(self.scatter.reach() / STEP) + 1
    }

    /// The likelihood of one tally, at a spot's node, over the latent hardness from the place `first` on.
    fn line(&self, first: i32, len: usize, grade: f64, node: usize, tally: Tally) -> Vec<f64> {
        let (place, offset) = split(grade + self.node_bias(node));
        let table = self.tables.iter().find(|table| table.offset.to_bits() == offset.to_bits());
        let powers: Vec<f64> = table
            .iter()
            .flat_map(|table| &table.chances)
            .map(|chances| likelihood(*chances, tally))
            .collect();
        let reach = self.reach();
        let values = (first..).take(len).map(|latent| {
            // Beyond the reach the chances no longer change.
            let steps = (place - latent).clamp(-reach, reach) + reach;
            let value = usize::try_from(steps).ok().and_then(|at| powers.get(at)).copied();
            value.unwrap_or(1.0)
        });
        values.collect()
    }

    /// The factor of a file, or nothing if nothing is known about it.
    pub(crate) fn factor(&self, file: FileId, record: &FileRecord) -> Option<Factor> {
        let grade = self.grades.get(file.place()).copied()?;
        if record.is_empty() {
            return None;
        }
        let farthest = self.farthest();
        let first = self.latent.first - farthest;
        let wide = places(first, self.latent.last + farthest);
        let proofs = self.proof_weights(grade, record);
        let line = |tally: Tally, node: usize| {
            let used = !tally.is_empty() && self.nodes_in_use().contains(&node);
            used.then(|| self.line(first, wide, grade, node, tally))
        };
        let lines: Vec<[Option<Vec<f64>>; 3]> =
            record.strokes.iter().map(|tally| [0, 1, 2].map(|node| line(*tally, node))).collect();
        let block = self.operator.len() * self.latent.len();
        let mut factor = Vec::with_capacity(self.rule.len() * block);
        let mut done: Vec<(Vec<usize>, Vec<f64>)> = Vec::new();
        for patch in &self.rule {
            // Spots on which this file was not used do not change its factor.
            let key: Vec<usize> = patch
                .nodes
                .iter()
                .zip(&record.strokes)
                .map(|(node, tally)| if tally.is_empty() { 1 } else { *node })
                .collect();
            if let Some((_, known)) = done.iter().find(|(other, _)| *other == key) {
                factor.extend_from_slice(known);
                continue;
            }
            let mut strokes = alloc::vec![1.0; wide];
            for line in
                key.iter().zip(&lines).filter_map(|(node, lines)| lines.get(*node)?.as_ref())
            {
                multiply(&mut strokes, line);
            }
            let rows = self.rows(&strokes, farthest, proofs.as_deref());
            factor.extend_from_slice(&rows);
            done.push((key, rows));
        }
        Some(factor)
    }

    /// The farthest place a file's bias together with the operator's can reach.
    fn farthest(&self) -> i32 {
        let operator = self.operator.last().map_or(0, |(place, _)| *place);
        self.own_bias.last() + operator
    }

    /// The likelihood of a file's proofs at every place of its bias together with the operator's.
    fn proof_weights(&self, grade: f64, record: &FileRecord) -> Option<Vec<f64>> {
        if record.proofs.is_empty() {
            return None;
        }
        let farthest = self.farthest();
        let weights = (-farthest..=farthest).map(|place| {
            let sharpness = grade + f64::from(place) * STEP;
            let each = record
                .proofs
                .iter()
                .map(|(known, tally)| likelihood(self.scatter.chances(sharpness - known), *tally));
            each.product()
        });
        Some(weights.collect())
    }

    /// One row per node of the operator: the strokes averaged over the file's bias, weighted by its proofs.
    fn rows(&self, strokes: &[f64], farthest: i32, proofs: Option<&[f64]>) -> Vec<f64> {
        let len = self.latent.len();
        let mut rows = Vec::with_capacity(self.operator.len() * len);
        let Some(proofs) = proofs else {
            // Without proofs the operator only shifts the row.
            let bias = self.own_bias.last();
            let mut shifting = alloc::vec![0.0; strokes.len().saturating_sub(2 * offset(bias))];
            let terms: Vec<(i32, f64)> =
                self.own_bias.iter().map(|(place, weight)| (bias - place, weight)).collect();
            add_stretches(&mut shifting, strokes, &terms);
            for (operator, _) in &self.operator {
                let start = offset(farthest - bias - operator);
                rows.extend(shifting.iter().skip(start).take(len));
            }
            return rows;
        };
        // A wide bias is followed every other place: its sum has converged long before.
        let stride = if self.scatter.file() < 0.9 { 1 } else { 2 };
        for (operator, _) in &self.operator {
            let mut row = alloc::vec![0.0; len];
            let near = |place: i32| (place + operator).rem_euclid(stride) == 0;
            let used = self.own_bias.iter().filter(|(place, _)| near(*place));
            let total: f64 = used.clone().map(|(_, weight)| weight).sum();
            let terms: Vec<(i32, f64)> = used
                .map(|(place, weight)| {
                    let both = place + operator;
                    let proof = proofs.get(offset(both + farthest)).copied().unwrap_or(0.0);
                    (farthest - both, weight / total * proof)
                })
                .collect();
            add_stretches(&mut row, strokes, &terms);
            rows.extend_from_slice(&row);
        }
        rows
    }

    /// The product of factors, brought to a greatest value of 1 after each so that nothing underflows.
    pub(crate) fn product<'a>(&self, factors: impl Iterator<Item = &'a Factor>) -> Factor {
        let size = self.rule.len() * self.operator.len() * self.latent.len();
        let mut product = alloc::vec![1.0; size];
        for factor in factors {
            let mut most = 0.0;
            for (value, more) in product.iter_mut().zip(factor) {
                *value *= more;
                most = f64::max(most, *value);
            }
            if most > 0.0 {
                for value in &mut product {
                    *value /= most;
                }
            }
        }
        product
    }

    /// A product averaged over the operator and the spots: the likelihood of the latent hardness.
    pub(crate) fn latent_likelihood(&self, product: &[f64]) -> Vec<f64> {
        let len = self.latent.len();
        let mut sum = alloc::vec![0.0; len];
        let weights = self
            .rule
            .iter()
            .flat_map(|patch| self.operator.iter().map(move |(_, weight)| patch.weight * weight));
        for (row, weight) in product.chunks_exact(len.max(1)).zip(weights) {
            for (value, more) in sum.iter_mut().zip(row) {
                *value += weight * more;
            }
        }
        sum
    }

    /// The likelihood of the part's hardness by the files alone, on the grid of the belief.
    pub(crate) fn likelihood(&self, product: &[f64]) -> Vec<f64> {
        let latent = self.latent_likelihood(product);
        let mut weights = alloc::vec![0.0; self.grid.len()];
        let start = self.grid.first - self.latent.first;
        let terms: Vec<(i32, f64)> =
            self.kernel.iter().map(|(shift, weight)| (start - shift, weight)).collect();
        add_stretches(&mut weights, &latent, &terms);
        weights
    }

    /// The likelihood times what else is known of the part's hardness, on the grid of the belief.
    pub(crate) fn weights(&self, product: &[f64]) -> Vec<f64> {
        let mut weights = self.likelihood(product);
        multiply(&mut weights, &self.prior);
        weights
    }

    /// The belief of prior and likelihood.
    pub(crate) fn belief(&self, weights: Vec<f64>) -> Result<Belief, Error> {
        Belief::from_weights(self.grid, weights)
    }
}

/// The nearest lattice place below a value, and what is left.
fn split(value: f64) -> (i32, f64) {
    let place = whole_below(value / STEP);
    (place, value - f64::from(place) * STEP)
}

/// The chance of a tally of independent outcomes.
fn likelihood(chances: Chances, tally: Tally) -> f64 {
    power(chances.of(Outcome::Bite), tally.bites)
        * power(chances.of(Outcome::Slight), tally.slights)
        * power(chances.of(Outcome::Skate), tally.skates)
}

/// The spacing of the operator's nodes, in HRC.
///
/// As a function of the operator's bias the product of six proved files is about as wide as a file's bias over the square root of 6; together with
/// the operator's own scatter `s` that leaves an effective `s_e`, and a spacing of `1.45 s_e` has an error of about `exp(-9.4)`.
fn operator_spacing(scatter: &Scatter) -> f64 {
    let operator = scatter.operator() * scatter.operator();
    let file = scatter.file() * scatter.file();
    1.45 * libm::sqrt(1.0 / (1.0 / operator + 6.0 / file))
}

//! A long hexagon on a triangular lattice, whose rows fit the flats and the corners exactly.
//!
//! Only the twelfth between a corner and the middle of a flat is carried; neighbours outside it are its
//! mirror images. Around each node lies a hexagonal volume (half of one on a flat, a third on a corner),
//! so every link crosses its face at a right angle.

use alloc::vec::Vec;

use super::{Body, Cooling, line};

/// Rows from the middle to a flat; multiples of eight, so that the places fall on nodes. The coarse lattice
/// serves where the temperature is nearly even, which also takes longest.
const ROWS: i32 = 16;
const COARSE: i32 = 8;
const NEARLY_EVEN: f64 = 0.5;
/// The thickness of a shell of time between two kept frames.
const KEPT: f64 = 0.02;
/// Below this the temperature is so even that only volume over surface counts, in which a hexagon and
/// a round of its size across flats are equal.
const EVEN: f64 = 0.1;

struct Node {
    neighbours: [(u16, f64); 6],
    /// Heat lost per unit of temperature, and the volume.
    loss: f64,
    volume: f64,
}

/// The node of the twelfth that lies at the mirror image of (p, q).
fn fold(p: i32, q: i32) -> (i32, i32) {
    let (p, q) = if q < 0 { (p + q, -q) } else { (p, q) };
    (p.max(q), p.min(q))
}

fn nodes(rows: i32) -> impl Iterator<Item = (i32, i32)> {
    (0..=rows).flat_map(|row| (0..=row / 2).map(move |q| (row - q, q)))
}

fn index(of: (i32, i32)) -> u16 {
    let (row, q) = (of.0 + of.1, of.1);
    // Rows hold 1, 1, 2, 2, 3, 3 ... nodes.
    let before =
        if row % 2 == 0 { row / 2 * (row / 2 + 1) } else { (row + 1) / 2 * ((row + 1) / 2) };
    u16::try_from(before + q).unwrap_or(0)
}

/// The lattice with the half size across flats as unit of length.
fn lattice(rows: i32, biot: f64) -> Vec<Node> {
    let root3 = libm::sqrt(3.0);
    let spacing = 2.0 / root3 / f64::from(rows);
    let node = |(p, q): (i32, i32)| {
        let row = p + q;
        let edge = row == rows;
        let steps = [(1, 0), (0, 1), (-1, 1), (-1, 0), (0, -1), (1, -1)];
        let neighbours = steps.map(|(dp, dq)| {
            let to = if row == 0 { (1, 0) } else { fold(p + dp, q + dq) };
            let link = if to.0 + to.1 > rows {
                0.0
            } else if edge && to.0 + to.1 == rows {
                0.5 / root3
            } else {
                1.0 / root3
            };
            (index(if link > 0.0 { to } else { (p, q) }), link)
        });
        let share = match (edge, q) {
            (false, _) => 1.0,
            (true, 0) => 1.0 / 3.0,
            (true, _) => 0.5,
        };
        let volume = share * spacing * spacing * root3 / 2.0;
        Node { neighbours, loss: if edge { biot * spacing } else { 0.0 }, volume }
    };
    nodes(rows).map(node).collect()
}

pub(super) fn cool(biot: f64, floor: f64) -> Cooling {
    if biot < EVEN {
        return line(Body::Cylinder, biot, floor);
    }
    let rows = if biot < NEARLY_EVEN { COARSE } else { ROWS };
    let nodes = lattice(rows, biot);
    // Two stages of Heun's rule are stable up to twice the time in which the quickest volume empties.
    let quickest = (nodes.iter())
        .map(|node| {
            node.volume / (node.loss + node.neighbours.iter().map(|(_, link)| link).sum::<f64>())
        })
        .fold(f64::INFINITY, f64::min);
    let step = 0.9 * quickest;
    let places = [(0, 0.0), (rows / 2, 0.5), (rows * 3 / 4, 0.75), (rows, 1.0)];
    let mut shown: Vec<usize> =
        places.iter().map(|(row, _)| usize::from(index((row / 2, row / 2)))).collect();
    shown.push(usize::from(index((rows, 0))));
    let mut made =
        Cooling::start(places.iter().map(|(_, at)| *at).chain([2.0 / libm::sqrt(3.0)]).collect());
    let rate = |now: &[f64], out: &mut Vec<f64>| {
        out.clear();
        out.extend(nodes.iter().zip(now).map(|(node, here)| {
            let gain: f64 = (node.neighbours.iter())
                .map(|(to, link)| link * (now.get(usize::from(*to)).unwrap_or(here) - here))
                .sum();
            (gain - node.loss * here) / node.volume
        }));
    };
    let mut now: Vec<f64> = nodes.iter().map(|_| 1.0).collect();
    let (mut first, mut second, mut ahead) = (Vec::new(), Vec::new(), Vec::new());
    let mut time = 0.0;
    while made.frames.iter().rev().take(shown.len()).any(|share| *share > floor) {
        rate(&now, &mut first);
        ahead.clear();
        ahead.extend(now.iter().zip(&first).map(|(here, rate)| here + step * rate));
        rate(&ahead, &mut second);
        for (here, (a, b)) in now.iter_mut().zip(first.iter().zip(&second)) {
            *here += 0.5 * step * (a + b);
        }
        time += step;
        if time >= made.end() * (1.0 + KEPT) {
            made.push(time, shown.iter().map(|at| now.get(*at).copied().unwrap_or(0.0)));
        }
    }
    made
}

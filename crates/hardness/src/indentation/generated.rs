// Written by `cargo xtask tables` from crates/hardness/data; edit the data files, not this.

use super::brinell::{IndexRow, Material};
use super::check::Cited;
use super::machine::{Between, LimitKind, LimitRow};
use super::round::RoundTable;
use super::e18::Thinnest;
use crate::axis::Scale;
use crate::source::{Seen, SourceId};

pub(super) const ISO_6506_1: SourceId = SourceId(17);
pub(super) const ISO_6507_1: SourceId = SourceId(18);
pub(super) const ISO_6508_1: SourceId = SourceId(19);
pub(super) const ISO_4545_1: SourceId = SourceId(20);
pub(super) const ASTM_E10: SourceId = SourceId(21);
pub(super) const ASTM_E18: SourceId = SourceId(22);
pub(super) const ASTM_E92: SourceId = SourceId(23);
pub(super) const ISO_6508_2: SourceId = SourceId(26);
pub(super) const JCGM_100: SourceId = SourceId(29);
pub(super) const ASTM_A956: SourceId = SourceId(30);
pub(super) const GRUBBS: SourceId = SourceId(31);
pub(super) const INDENTATION_DEFAULTS: SourceId = SourceId(33);
pub(super) const VICKERS_GEOMETRY: SourceId = SourceId(34);
pub(super) const ROCKWELL_RANGES: SourceId = SourceId(15);

pub(super) static ROUND: &[RoundTable] = &[
    RoundTable { scales: &[Scale::Hrc, Scale::Hra, Scale::Hrd], readings: &[20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0, 60.0, 65.0, 70.0, 75.0, 80.0, 85.0, 90.0], diameters: &[6.4, 10.0, 13.0, 16.0, 19.0, 22.0, 25.0, 32.0, 38.0], tenths: &[60, 45, 35, 25, 20, 15, 15, 10, 10, 55, 40, 30, 25, 20, 15, 10, 10, 10, 50, 35, 25, 20, 15, 10, 10, 10, 5, 40, 30, 20, 15, 15, 10, 10, 5, 5, 35, 25, 20, 15, 10, 10, 10, 5, 5, 30, 20, 15, 10, 10, 10, 5, 5, 5, 25, 20, 15, 10, 10, 5, 5, 5, 5, 20, 15, 10, 10, 5, 5, 5, 5, 0, 15, 10, 10, 5, 5, 5, 5, 0, 0, 15, 10, 10, 5, 5, 5, 5, 0, 0, 10, 10, 5, 5, 5, 5, 5, 0, 0, 10, 5, 5, 5, 5, 5, 0, 0, 0, 5, 5, 5, 5, 5, 0, 0, 0, 0, 5, 5, 5, 0, 0, 0, 0, 0, 0, 5, 0, 0, 0, 0, 0, 0, 0, 0], cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    RoundTable { scales: &[Scale::Hrb, Scale::Hrf, Scale::Hrg], readings: &[0.0, 10.0, 20.0, 30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 90.0, 100.0], diameters: &[6.4, 10.0, 13.0, 16.0, 19.0, 22.0, 25.0], tenths: &[125, 85, 65, 55, 45, 35, 30, 120, 80, 60, 50, 40, 35, 30, 110, 75, 55, 45, 40, 35, 30, 100, 65, 50, 45, 35, 30, 25, 90, 60, 45, 40, 30, 25, 25, 80, 55, 40, 35, 30, 25, 20, 70, 50, 35, 30, 25, 20, 20, 60, 40, 30, 25, 20, 20, 15, 50, 35, 25, 20, 15, 15, 15, 40, 30, 20, 15, 15, 15, 10, 35, 25, 15, 15, 10, 10, 5], cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    RoundTable { scales: &[Scale::Hr15n, Scale::Hr30n, Scale::Hr45n], readings: &[20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0, 60.0, 65.0, 70.0, 75.0, 80.0, 85.0, 90.0], diameters: &[3.2, 6.4, 10.0, 13.0, 19.0, 25.0], tenths: &[60, 30, 20, 15, 15, 15, 55, 30, 20, 15, 15, 10, 55, 30, 20, 15, 10, 10, 50, 25, 20, 15, 10, 10, 45, 25, 15, 15, 10, 10, 40, 20, 15, 10, 10, 10, 35, 20, 15, 10, 10, 10, 35, 20, 15, 10, 5, 5, 30, 15, 10, 10, 5, 5, 25, 15, 10, 5, 5, 5, 20, 10, 10, 5, 5, 5, 15, 10, 5, 5, 5, 0, 10, 5, 5, 5, 0, 0, 5, 5, 5, 5, 0, 0, 0, 0, 0, 0, 0, 0], cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    RoundTable { scales: &[Scale::Hr15t, Scale::Hr30t, Scale::Hr45t], readings: &[20.0, 30.0, 40.0, 50.0, 60.0, 70.0, 80.0, 90.0], diameters: &[3.2, 6.4, 10.0, 13.0, 16.0, 19.0, 25.0], tenths: &[130, 90, 60, 45, 45, 30, 20, 115, 75, 50, 35, 35, 25, 20, 100, 65, 45, 35, 30, 25, 20, 85, 55, 40, 30, 25, 20, 15, 65, 45, 30, 25, 20, 15, 15, 50, 35, 25, 20, 15, 10, 10, 30, 20, 15, 15, 10, 10, 5, 15, 10, 10, 5, 5, 5, 5], cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
];

pub(super) static INDEX: &[IndexRow] = &[
    IndexRow { material: Material::Steel, from: 0.0, at_from: true, indices: &[30.0], smallest_ball: 1.0, cited: Cited { source: SourceId(17), seen: Seen::Recalled } },
    IndexRow { material: Material::CastIron, from: 0.0, at_from: true, indices: &[10.0], smallest_ball: 2.5, cited: Cited { source: SourceId(17), seen: Seen::Recalled } },
    IndexRow { material: Material::CastIron, from: 140.0, at_from: true, indices: &[30.0], smallest_ball: 2.5, cited: Cited { source: SourceId(17), seen: Seen::Recalled } },
    IndexRow { material: Material::Copper, from: 0.0, at_from: true, indices: &[5.0], smallest_ball: 1.0, cited: Cited { source: SourceId(17), seen: Seen::Recalled } },
    IndexRow { material: Material::Copper, from: 35.0, at_from: true, indices: &[10.0], smallest_ball: 1.0, cited: Cited { source: SourceId(17), seen: Seen::Recalled } },
    IndexRow { material: Material::Copper, from: 200.0, at_from: false, indices: &[30.0], smallest_ball: 1.0, cited: Cited { source: SourceId(17), seen: Seen::Recalled } },
    IndexRow { material: Material::LightMetal, from: 0.0, at_from: true, indices: &[2.5], smallest_ball: 1.0, cited: Cited { source: SourceId(17), seen: Seen::Recalled } },
    IndexRow { material: Material::LightMetal, from: 35.0, at_from: true, indices: &[5.0, 10.0, 15.0], smallest_ball: 1.0, cited: Cited { source: SourceId(17), seen: Seen::Recalled } },
    IndexRow { material: Material::LightMetal, from: 80.0, at_from: false, indices: &[10.0, 15.0], smallest_ball: 1.0, cited: Cited { source: SourceId(17), seen: Seen::Recalled } },
    IndexRow { material: Material::LeadTin, from: 0.0, at_from: true, indices: &[1.0], smallest_ball: 1.0, cited: Cited { source: SourceId(17), seen: Seen::Recalled } },
];

pub(super) static LIMITS: &[LimitRow] = &[
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hrc], from: 20.0, at_from: true, to: 70.0, fixed: 1.5, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Seen } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hra], from: 20.0, at_from: true, to: 75.0, fixed: 2.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Seen } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hra], from: 75.0, at_from: false, to: 88.0, fixed: 1.5, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Seen } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hrb], from: 20.0, at_from: true, to: 45.0, fixed: 4.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Seen } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hrb], from: 45.0, at_from: false, to: 80.0, fixed: 3.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Seen } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hrb], from: 80.0, at_from: false, to: 100.0, fixed: 2.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Seen } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hr15n, Scale::Hr30n, Scale::Hr45n], from: 20.0, at_from: true, to: 94.0, fixed: 2.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hr15t, Scale::Hr30t, Scale::Hr45t], from: 10.0, at_from: true, to: 93.0, fixed: 3.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hrc], from: 20.0, at_from: true, to: 70.0, fixed: 0.8, per_depth: 0.02, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hra], from: 20.0, at_from: true, to: 88.0, fixed: 0.8, per_depth: 0.02, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hrb], from: 20.0, at_from: true, to: 100.0, fixed: 0.0, per_depth: 0.04, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hr15n, Scale::Hr30n, Scale::Hr45n], from: 20.0, at_from: true, to: 94.0, fixed: 1.2, per_depth: 0.04, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hr15t, Scale::Hr30t, Scale::Hr45t], from: 10.0, at_from: true, to: 93.0, fixed: 2.4, per_depth: 0.06, percent: 0.0, cited: Cited { source: SourceId(26), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::BlockRange, scales: &[Scale::Hrc], from: 20.0, at_from: true, to: 70.0, fixed: 0.4, per_depth: 0.01, percent: 0.0, cited: Cited { source: SourceId(27), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::BlockRange, scales: &[Scale::Hrb], from: 20.0, at_from: true, to: 100.0, fixed: 1.0, per_depth: 0.02, percent: 0.0, cited: Cited { source: SourceId(27), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::BlockRange, scales: &[Scale::Hrc], from: 20.0, at_from: true, to: 70.0, fixed: 0.0, per_depth: 0.015, percent: 0.0, cited: Cited { source: SourceId(28), seen: Seen::Seen } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hrc], from: 20.0, at_from: true, to: 35.0, fixed: 1.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hrc], from: 35.0, at_from: true, to: 60.0, fixed: 1.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hrc], from: 60.0, at_from: true, to: 70.0, fixed: 0.5, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hrc], from: 20.0, at_from: true, to: 35.0, fixed: 2.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hrc], from: 35.0, at_from: true, to: 60.0, fixed: 1.5, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hrc], from: 60.0, at_from: true, to: 70.0, fixed: 1.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hrb], from: 10.0, at_from: true, to: 60.0, fixed: 1.5, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hrb], from: 60.0, at_from: true, to: 80.0, fixed: 1.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hrb], from: 80.0, at_from: true, to: 100.0, fixed: 1.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hrb], from: 10.0, at_from: true, to: 60.0, fixed: 2.0, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hrb], from: 60.0, at_from: true, to: 80.0, fixed: 1.5, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hrb], from: 80.0, at_from: true, to: 100.0, fixed: 1.5, per_depth: 0.0, percent: 0.0, cited: Cited { source: SourceId(22), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hbw], from: 3.0, at_from: true, to: 125.0, fixed: 0.0, per_depth: 0.0, percent: 3.0, cited: Cited { source: SourceId(24), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hbw], from: 125.0, at_from: false, to: 225.0, fixed: 0.0, per_depth: 0.0, percent: 2.5, cited: Cited { source: SourceId(24), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hbw], from: 225.0, at_from: false, to: 650.0, fixed: 0.0, per_depth: 0.0, percent: 2.0, cited: Cited { source: SourceId(24), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hbw], from: 3.0, at_from: true, to: 125.0, fixed: 0.0, per_depth: 0.0, percent: 3.0, cited: Cited { source: SourceId(24), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hbw], from: 125.0, at_from: false, to: 225.0, fixed: 0.0, per_depth: 0.0, percent: 2.5, cited: Cited { source: SourceId(24), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Repeatability, scales: &[Scale::Hbw], from: 225.0, at_from: false, to: 650.0, fixed: 0.0, per_depth: 0.0, percent: 2.0, cited: Cited { source: SourceId(24), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hv], from: 5.0, at_from: true, to: 250.0, fixed: 0.0, per_depth: 0.0, percent: 3.0, cited: Cited { source: SourceId(25), seen: Seen::Recalled } },
    LimitRow { kind: LimitKind::Error, scales: &[Scale::Hv], from: 250.0, at_from: false, to: 3000.0, fixed: 0.0, per_depth: 0.0, percent: 2.0, cited: Cited { source: SourceId(25), seen: Seen::Recalled } },
];

pub(super) static BETWEEN: &[Between] = &[
    Between { scale: Scale::Hra, block: 62.8, mean: 62.5, within: 0.164, between: 0.538, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hra, block: 73.1, mean: 73.04, within: 0.138, between: 0.358, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hra, block: 83.9, mean: 84.54, within: 0.085, between: 0.468, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hrc, block: 25.0, mean: 24.99, within: 0.335, between: 0.44, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hrc, block: 45.0, mean: 45.35, within: 0.156, between: 0.259, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hrc, block: 65.0, mean: 65.78, within: 0.153, between: 0.389, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hr30n, block: 45.9, mean: 46.75, within: 0.299, between: 2.489, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hr30n, block: 64.0, mean: 64.74, within: 0.248, between: 0.651, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hr30n, block: 81.9, mean: 82.52, within: 0.195, between: 0.499, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hrb, block: 40.0, mean: 43.9, within: 0.492, between: 0.668, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hrb, block: 60.0, mean: 61.77, within: 0.663, between: 0.697, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hrb, block: 95.0, mean: 91.09, within: 0.25, between: 0.292, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hr30t, block: 22.0, mean: 18.33, within: 0.702, between: 0.901, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hr30t, block: 56.0, mean: 58.0, within: 0.476, between: 0.517, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
    Between { scale: Scale::Hr30t, block: 79.0, mean: 81.0, within: 0.61, between: 0.851, cited: Cited { source: SourceId(22), seen: Seen::Seen } },
];

pub(super) static THINNEST: &[Thinnest] = &[
    Thinnest { scale: Scale::Hr15n, first: 6, halves: &[184, 180, 176, 166, 152, 136, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0] },
    Thinnest { scale: Scale::Hr30n, first: 12, halves: &[164, 157, 148, 132, 114, 94, 0, 0, 0, 0, 0, 0, 0, 0, 0] },
    Thinnest { scale: Scale::Hr45n, first: 12, halves: &[154, 148, 144, 136, 126, 116, 102, 74, 40, 0, 0, 0, 0, 0, 0] },
    Thinnest { scale: Scale::Hra, first: 16, halves: &[172, 168, 164, 158, 152, 142, 134, 120, 0, 0, 0, 0, 0] },
    Thinnest { scale: Scale::Hrd, first: 20, halves: &[154, 150, 144, 136, 126, 116, 102, 86, 0, 0, 0] },
    Thinnest { scale: Scale::Hrc, first: 22, halves: &[138, 134, 130, 124, 114, 104, 90, 74, 56, 40] },
    Thinnest { scale: Scale::Hr15t, first: 10, halves: &[182, 172, 162, 150, 136, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0] },
    Thinnest { scale: Scale::Hr30t, first: 14, halves: &[160, 144, 128, 110, 90, 68, 0, 0, 0, 0, 0, 0, 0, 0] },
    Thinnest { scale: Scale::Hr45t, first: 16, halves: &[142, 124, 106, 86, 62, 36, 8, 0, 0, 0, 0, 0, 0] },
    Thinnest { scale: Scale::Hrf, first: 24, halves: &[196, 182, 170, 154, 138, 0, 0, 0, 0] },
    Thinnest { scale: Scale::Hrb, first: 24, halves: &[188, 174, 160, 142, 124, 104, 80, 56, 0] },
    Thinnest { scale: Scale::Hrg, first: 24, halves: &[188, 174, 152, 136, 118, 100, 84, 62, 44] },
];

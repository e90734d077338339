//! Symbols, old and new, and what stands behind them.

use alloc::borrow::ToOwned;

use super::lex::{Kind, Sign};
use super::parse::Parser;
use super::{Ball, Condition, Error, LeebDevice, Remark};
use crate::axis::{Axis, Scale};

/// Brinell balls in mm and the forces in kgf that belong to each.
///
/// Source: `brinell-vickers-designation`, the force-diameter indices 30, 15, 10, 5, 2.5 and 1.
pub(crate) const BRINELL_PAIRS: [(f64, &[f64]); 4] = [
    (10.0, &[3000.0, 1500.0, 1000.0, 500.0, 250.0, 100.0]),
    (5.0, &[750.0, 250.0, 125.0, 62.5, 25.0]),
    (2.5, &[187.5, 62.5, 31.25, 15.625, 6.25]),
    (1.0, &[30.0, 10.0, 5.0, 2.5, 1.0]),
];

/// Vickers forces in kgf. Source: `brinell-vickers-designation`.
const VICKERS_FORCES: [f64; 22] = [
    100.0, 50.0, 30.0, 20.0, 10.0, 5.0, 3.0, 2.0, 1.0, 0.5, 0.3, 0.2, 0.1, 0.05, 0.025, 0.02,
    0.015, 0.01, 0.005, 0.003, 0.002, 0.001,
];

/// Knoop forces in kgf. Source: `brinell-vickers-designation`.
const KNOOP_FORCES: [f64; 13] =
    [2.0, 1.0, 0.5, 0.3, 0.2, 0.1, 0.05, 0.025, 0.02, 0.01, 0.005, 0.002, 0.001];

/// A symbol with what stands behind it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct UnitRead {
    pub(super) axis: Option<Axis>,
    pub(super) ball: Option<Ball>,
    pub(super) condition: Option<Condition>,
    pub(super) leeb: Option<LeebDevice>,
    /// The number is in ksi and still to be made MPa.
    pub(super) ksi: bool,
}

impl UnitRead {
    fn of(axis: Axis) -> Self {
        Self { axis: Some(axis), ..Self::default() }
    }

    fn scale(scale: Scale) -> Self {
        Self::of(Axis::Hardness(scale))
    }
}

fn listed(list: &[f64], value: f64) -> bool {
    list.iter().any(|known| known.total_cmp(&value).is_eq())
}

fn rockwell_letter(letter: &str) -> Option<Scale> {
    Some(match letter {
        "A" => Scale::Hra,
        "B" => Scale::Hrb,
        "C" => Scale::Hrc,
        "D" => Scale::Hrd,
        "E" => Scale::Hre,
        "F" => Scale::Hrf,
        "G" => Scale::Hrg,
        "H" => Scale::Hrh,
        "K" => Scale::Hrk,
        _ => return None,
    })
}

fn superficial(load: f64, letter: &str) -> Option<Scale> {
    let tenths = [15.0, 30.0, 45.0].into_iter().position(|l: f64| l.total_cmp(&load).is_eq())?;
    Some(match (tenths, letter) {
        (0, "N") => Scale::Hr15n,
        (1, "N") => Scale::Hr30n,
        (2, "N") => Scale::Hr45n,
        (0, "T") => Scale::Hr15t,
        (1, "T") => Scale::Hr30t,
        (2, "T") => Scale::Hr45t,
        (0, "W") => Scale::Hr15w,
        _ => return None,
    })
}

fn split_ball(word: &str) -> (&str, Option<Ball>) {
    if let Some(base) = word.strip_suffix("SM") {
        (base, Some(Ball::SteelThin))
    } else if let Some(base) = word.strip_suffix('W') {
        (base, Some(Ball::Carbide))
    } else if let Some(base) = word.strip_suffix('S') {
        (base, Some(Ball::Steel))
    } else {
        (word, None)
    }
}

impl Parser {
    /// Reads a symbol if one stands here; `after_number` says whether a bare number behind the symbol
    /// is a test force (`640 HV 30`) or the reading itself (`HV 640`).
    pub(super) fn unit(&mut self, after_number: bool) -> Result<Option<UnitRead>, Error> {
        if let Some(scale) = self.superficial_short() {
            return Ok(Some(scale));
        }
        let Some(word) = self.peek_word() else { return Ok(None) };
        let word = word.to_owned();
        let start = self.mark();
        let read = self.unit_word(&word, after_number)?;
        if let Some(unit) = &read {
            let is_scale = matches!(unit.axis, Some(Axis::Hardness(_)));
            if is_scale && self.any_lower_case_since(start) && !self.has(Remark::OldSymbol) {
                self.remark(Remark::LowerCase);
            }
        }
        Ok(read)
    }

    fn unit_word(&mut self, word: &str, after_number: bool) -> Result<Option<UnitRead>, Error> {
        if let Some(scale) = word.strip_prefix("HR").filter(|rest| !rest.is_empty()) {
            let (letter, ball) = split_ball(scale);
            if let Some(scale) = rockwell_letter(letter) {
                self.advance();
                return Ok(Some(self.rockwell(scale, ball)));
            }
        }
        match word {
            "HR" => self.superficial_or_refuse().map(Some),
            "HB" | "BHN" | "HBN" | "BRINELL" => {
                self.advance();
                self.remark(Remark::BrinellSymbolWithdrawn);
                self.brinell(Scale::Hbw).map(Some)
            }
            "HBW" => {
                self.advance();
                self.brinell(Scale::Hbw).map(Some)
            }
            "HBS" => {
                self.advance();
                self.remark(Remark::SteelBallWithdrawn);
                self.brinell(Scale::Hbs).map(Some)
            }
            "HV" | "VICKERS" | "DPH" | "VPN" | "DPN" => {
                self.advance();
                if word != "HV" {
                    self.remark(Remark::OldSymbol);
                }
                if self.eat_uci() {
                    let force = self.number_here();
                    let condition = force.map(|force_kgf| Condition {
                        ball_mm: None,
                        force_kgf,
                        dwell_s: None,
                    });
                    return Ok(Some(UnitRead { condition, ..UnitRead::scale(Scale::HvUci) }));
                }
                Ok(Some(self.forced(Scale::Hv, &VICKERS_FORCES, after_number)))
            }
            "HK" | "KNOOP" => {
                self.advance();
                if word != "HK" {
                    self.remark(Remark::OldSymbol);
                }
                Ok(Some(self.forced(Scale::Hk, &KNOOP_FORCES, after_number)))
            }
            "HS" | "HSC" | "SHORE" | "SCLERO" | "SCLEROSCOPE" => {
                self.advance();
                if matches!(self.peek_word(), Some("A" | "D" | "OO")) {
                    return Err(Error::RubberScale);
                }
                while matches!(self.peek_word(), Some("SCLEROSCOPE" | "C")) {
                    self.advance();
                }
                if word != "HSC" {
                    self.remark(Remark::OldSymbol);
                }
                Ok(Some(UnitRead::scale(Scale::Scleroscope)))
            }
            "MPA" => {
                self.advance();
                Ok(Some(UnitRead::of(Axis::Tensile)))
            }
            "KSI" => {
                self.advance();
                self.remark(Remark::FromKsi);
                Ok(Some(UnitRead { ksi: true, ..UnitRead::of(Axis::Tensile) }))
            }
            "N" => Ok(self.newtons_per_mm2()),
            "ROCKWELL" | "R" | "RC" | "RB" | "RA" => Ok(Some(self.old_rockwell(word))),
            _ => Ok(self.leeb(word)),
        }
    }

    fn rockwell(&mut self, scale: Scale, ball: Option<Ball>) -> UnitRead {
        let ball = if scale.is_diamond_rockwell() {
            if ball.is_some() {
                self.remark(Remark::BallLetterOnDiamond);
            }
            None
        } else {
            if ball.is_none() {
                self.remark(Remark::BallLetterMissing);
            }
            ball
        };
        UnitRead { ball, ..UnitRead::scale(scale) }
    }

    /// `HR` with `15N`, `30TW` and the like behind it, or with its letter set apart (`HR C`, `HR-C`).
    fn superficial_or_refuse(&mut self) -> Result<UnitRead, Error> {
        self.advance();
        let glued = self.peek_glued_number().is_some();
        let dash = self.eat(Sign::Dash);
        if let Some((scale, ball)) = self.superficial_here() {
            if !glued || dash {
                self.remark(Remark::OldSymbol);
            }
            self.advance();
            self.advance();
            return Ok(self.rockwell(scale, ball));
        }
        let word = self.peek_word().map(ToOwned::to_owned).ok_or(Error::RockwellLetterMissing)?;
        let (letter, ball) = split_ball(&word);
        let scale = rockwell_letter(letter).ok_or(Error::RockwellLetterMissing)?;
        self.remark(Remark::OldSymbol);
        self.advance();
        Ok(self.rockwell(scale, ball))
    }

    /// `15N`, `30TW` and the like at this place: the load with its letter right behind.
    pub(super) fn superficial_here(&self) -> Option<(Scale, Option<Ball>)> {
        let (load, word, after) = self.peek_number_and_glued_word()?;
        // In 15W the letter is the scale, in 15TW it is the ball.
        let (letter, ball) = if word == "W" { (word, None) } else { split_ball(word) };
        // 45N/mm2 is a strength.
        let strength = after.is_some_and(|kind| is_sign(kind, Sign::Slash));
        superficial(load, letter).filter(|_| !strength).map(|scale| (scale, ball))
    }

    /// `45N` without its `HR`.
    fn superficial_short(&mut self) -> Option<UnitRead> {
        let (scale, ball) = self.superficial_here()?;
        self.advance();
        self.advance();
        self.remark(Remark::OldSymbol);
        Some(self.rockwell(scale, ball))
    }

    /// `Rc`, `R/C`, `Rockwell C`, `Rockwell`.
    fn old_rockwell(&mut self, word: &str) -> UnitRead {
        self.advance();
        self.remark(Remark::OldSymbol);
        if let Some(scale) = word.strip_prefix('R').and_then(rockwell_letter) {
            return self.rockwell(scale, None);
        }
        if let Some(short) = self.superficial_short() {
            return short;
        }
        let before = self.mark();
        let _ = self.eat(Sign::Slash) || self.eat(Sign::Dash);
        if let Some(scale) = self.peek_word().and_then(rockwell_letter) {
            self.advance();
            return self.rockwell(scale, None);
        }
        self.back_to(before);
        self.remark(Remark::RockwellTakenAsC);
        UnitRead::scale(Scale::Hrc)
    }

    /// Ball, force and dwell behind a Brinell symbol.
    fn brinell(&mut self, scale: Scale) -> Result<UnitRead, Error> {
        let before = self.mark();
        let ball = self.number_here();
        let force = if self.eat(Sign::Slash) { self.number_here() } else { None };
        let (Some(ball_mm), Some(force_kgf)) = (ball, force) else {
            self.back_to(before);
            self.remark(Remark::BrinellConditionMissing);
            return Ok(UnitRead::scale(scale));
        };
        let known = BRINELL_PAIRS
            .iter()
            .any(|(ball, forces)| ball.total_cmp(&ball_mm).is_eq() && listed(forces, force_kgf));
        if !known {
            return Err(Error::BrinellPair { ball_mm, force_kgf });
        }
        let dwell_s = self.dwell();
        // The tables of soft metals hold 10/500 beside 10/3000: another load is another number.
        let light = ball_mm.total_cmp(&10.0).is_eq() && force_kgf.total_cmp(&500.0).is_eq();
        let scale = if light { Scale::Hbw500 } else { scale };
        let condition = Some(Condition { ball_mm: Some(ball_mm), force_kgf, dwell_s });
        Ok(UnitRead { condition, ..UnitRead::scale(scale) })
    }

    /// Force and dwell behind HV or HK.
    fn forced(&mut self, scale: Scale, standard: &[f64], after_number: bool) -> UnitRead {
        let before = self.mark();
        let glued = self.peek_glued_number().is_some();
        // Behind a symbol that comes first a number is a force when the reading follows it, or when it
        // is a usual force written on to the symbol (HV30); HV700 and HV 30 are readings.
        let force = self.number_here().filter(|&force| {
            let usual = listed(standard, force);
            after_number || (usual && (self.number_follows() || (glued && force < 100.0)))
        });
        let Some(force_kgf) = force else {
            self.back_to(before);
            self.remark(Remark::ForceMissing);
            return UnitRead::scale(scale);
        };
        if !listed(standard, force_kgf) {
            self.remark(Remark::ForceNotStandard);
        }
        let dwell_s = self.dwell();
        let condition = Some(Condition { ball_mm: None, force_kgf, dwell_s });
        UnitRead { condition, ..UnitRead::scale(scale) }
    }

    fn dwell(&mut self) -> Option<f64> {
        let before = self.mark();
        if !self.eat(Sign::Slash) {
            return None;
        }
        let Some(seconds) = self.number_here() else {
            self.back_to(before);
            return None;
        };
        if (10.0..=15.0).contains(&seconds) {
            self.remark(Remark::DwellNotWritten);
            return None;
        }
        Some(seconds)
    }

    fn eat_uci(&mut self) -> bool {
        let before = self.mark();
        if self.eat(Sign::Open) && self.peek_word() == Some("UCI") {
            self.advance();
            if self.eat(Sign::Close) {
                return true;
            }
        }
        self.back_to(before);
        false
    }

    fn newtons_per_mm2(&mut self) -> Option<UnitRead> {
        let before = self.mark();
        self.advance();
        if self.eat(Sign::Slash) && self.peek_word() == Some("MM") {
            self.advance();
            if self.number_here().is_some_and(|two| two.total_cmp(&2.0).is_eq()) {
                return Some(UnitRead::of(Axis::Tensile));
            }
        }
        self.back_to(before);
        None
    }

    fn leeb(&mut self, word: &str) -> Option<UnitRead> {
        let device = match word.strip_prefix("HL")? {
            "D" => LeebDevice::D,
            "DC" => LeebDevice::Dc,
            "DL" => LeebDevice::Dl,
            "S" => LeebDevice::S,
            "E" => LeebDevice::E,
            "C" => LeebDevice::C,
            "G" => LeebDevice::G,
            _ => return None,
        };
        self.advance();
        let before = self.mark();
        let plus_15 = device == LeebDevice::D
            && self.eat(Sign::Plus)
            && self.number_here().is_some_and(|n| n.total_cmp(&15.0).is_eq());
        if !plus_15 {
            self.back_to(before);
        }
        let leeb = Some(if plus_15 { LeebDevice::D15 } else { device });
        Some(UnitRead { leeb, ..UnitRead::scale(Scale::Leeb) })
    }
}

/// What kind of token a sign is, for the parser's own tests of the next token.
pub(super) fn is_sign(kind: &Kind, sign: Sign) -> bool {
    matches!(kind, Kind::Sign(found) if *found == sign)
}

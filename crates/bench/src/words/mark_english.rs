//! English for the page that works a mark out.

use super::Mark;

pub(super) const fn say(mark: Mark) -> &'static str {
    match mark {
        Mark::Kind => "Kind of test",
        Mark::Vickers => "Vickers",
        Mark::Brinell => "Brinell",
        Mark::Knoop => "Knoop",
        Mark::Rockwell => "Rockwell",
        Mark::Scale => "Scale",
        Mark::DrawVickers => "Measure both diagonals of the square, corner to corner.",
        Mark::DrawBrinell => "Measure the rim-to-rim diameter twice, at a right angle.",
        Mark::DrawKnoop => "Measure the long diagonal, tip to tip.",
        Mark::DrawRockwell => {
            "The depth that stays under the preload after the full load is taken off; most testers show the number instead."
        }
        Mark::FirstDiagonal => "Diagonal d1",
        Mark::SecondDiagonal => "Diagonal d2",
        Mark::LongDiagonal => "Long diagonal d",
        Mark::Diameter => "Diameter d1",
        Mark::SecondDiameter => "Diameter d2",
        Mark::Depth => "Depth h",
        Mark::Force => "Test force",
        Mark::Ball => "Ball",
        Mark::Readings => "Or numbers that were read",
        Mark::ReadingsHint => "One or several of the same scale, as in 52; 53; 51,5",
        Mark::LengthHint => "With its unit: 0.301 mm, 0.012 in",
        Mark::ForceHint => "With its unit: 30 kgf, 294.2 N",
        Mark::RoundTitle => "On a round part",
        Mark::Round => "Diameter of the part",
        Mark::RoundHint => "Empty for a flat; 12 mm, 1/2 in",
        Mark::RoundShape => "Where the mark stands",
        Mark::Shaft => "on a shaft",
        Mark::Bore => "in a bore",
        Mark::BallShape => "on a ball",
        Mark::Diagonals => "Diagonals",
        Mark::Diagonals45 => "at 45° to the axis",
        Mark::DiagonalsAlong => "one along the axis",
        Mark::ThinTitle => "Thin, or near an edge",
        Mark::Thickness => "Thickness of section or hard case",
        Mark::ThicknessHint => "Looked at when filled in: 1 mm, 0.040 in",
        Mark::Edge => "Mark to edge, from its centre",
        Mark::Next => "Mark to next mark, centre to centre",
        Mark::Empty => "Fill in what was measured, or a number that was read.",
        Mark::Rules => "Rules of the test",
        Mark::Better => "Tests that would do here",
        Mark::OtherScales => "On other scales",
        Mark::TesterTitle => "What the tester may be off",
    }
}

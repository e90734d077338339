//! English for the next step.
//!
//! The order of causes and what is said of eyes, oil and hands are common practice without a source.

use std::borrow::Cow;

use biteband_evidence::step::Diagnosis;

use super::next::{Act, NextRefusal, NextStep};

type Words = Cow<'static, str>;

fn act(what: Act<'_>) -> Words {
    match what {
        Act::Accept => "Take it as it is.".into(),
        Act::ClearUp => "Clear up the contradiction first.".into(),
        Act::Stroke { grade } => format!("Stroke the {grade} file.").into(),
        Act::Read => "Have it read on a tester.".into(),
        Act::Grind => "Grind off the skin and file the fresh metal.".into(),
        Act::Temper { told } | Act::Age { told } => told.to_owned().into(),
        Act::Snap { at, time } => {
            format!("Tonight {at} for {time}; the full temper tomorrow.").into()
        }
        Act::Harden { again, temper } => {
            let again = if again { " again" } else { "" };
            if temper.is_empty() {
                format!("Harden it{again}, then temper.").into()
            } else {
                format!("Harden it{again}, then temper first at {temper}.").into()
            }
        }
        Act::ChangeTarget { range } => {
            format!("See whether the work can do with what it has: {range}.").into()
        }
        Act::ChangePlan => {
            "Change the plan: another steel, a thinner section or a faster bath.".into()
        }
        Act::ChangeSteel => "Take another steel, or want what this one has.".into(),
    }
}

const fn how(what: Act<'_>) -> &'static str {
    match what {
        Act::Accept => {
            "Nothing that can be done next makes a good part likelier by more than it costs."
        }
        Act::ClearUp => {
            "Prove the files that disagree on a piece of known hardness, clean their teeth, and stroke the same spot again in the same direction."
        }
        Act::Stroke { .. } => "On the same spot, skin ground off, with the file you know.",
        Act::Read => {
            "A bench tester tells more than a whole row of files. Give it a flat, a ground spot 0.8 mm (1/32 in) deep, and a part thick enough."
        }
        Act::Grind => {
            "0.2 to 0.5 mm (0.01 to 0.02 in) on a spot that does not matter, kept cool, then the same files again. About a third of soft parts are soft in the skin alone."
        }
        Act::Temper { .. } => {
            "The lowest temper that is likely to do; measure before going hotter. Count the time from when the part is hot throughout."
        }
        Act::Snap { .. } => {
            "As quenched a part can crack overnight by itself. A short low temper takes the worst of it and next to none of the hardness."
        }
        Act::Harden { again: false, .. } => {
            "From the grade's own window and held there, into the right bath; an offcut first. Measure it as quenched and temper it at once."
        }
        Act::Harden { .. } => {
            "From the grade's own window and held there, into the right bath. A part that failed to harden goes straight in again; one that did harden is heated through slowly or normalised first. Two or three tries at most: each costs skin and lets the grain grow."
        }
        Act::Age { .. } => "",
        Act::ChangeSteel => {
            "No heat makes it harder: it keeps what it was rolled or drawn to, and heat takes that away."
        }
        Act::ChangeTarget { .. } => {
            "What the part has been measured at, against what its work needs: a softer part wears, a harder one may chip."
        }
        Act::ChangePlan => {
            "The page Steel tells which section, bath or grade gets there. Rough the part out first, harden the skin alone, or want less."
        }
    }
}

const fn undone(what: Act<'_>) -> &'static str {
    match what {
        Act::Temper { .. } => "Too soft cannot be taken back but by hardening again.",
        Act::Harden { .. } => {
            "Scale, skin, size and straightness: what they lose is not had back, and it can crack."
        }
        Act::Age { .. } => {
            "What was aged hotter gets no harder by an age: only a solution heat takes it back."
        }
        Act::Grind => "What is ground off is off.",
        Act::Accept => {
            "In use a part that is too hard breaks without a warning; one that is too soft wears."
        }
        _ => "",
    }
}

const fn caution(what: Act<'_>) -> &'static str {
    match what {
        Act::Temper { .. } | Act::Snap { .. } | Act::Age { .. } => {
            "Wash oil off before the oven. A part at tempering heat looks cold: tongs and gloves."
        }
        Act::Harden { .. } => {
            "Oil burns: metal tank with a lid, nothing wet, part fully under in one move, extinguisher for burning oil at hand, never water on it. Glasses, face shield, sleeves."
        }
        Act::Stroke { .. } | Act::Grind | Act::ClearUp => "Glasses: hard steel throws chips.",
        Act::Accept => {
            "Lifting, steering, pressure: not from this tool; ask a licensed engineer and the local code. Struck ends: 45 HRC at most."
        }
        Act::Read | Act::ChangeTarget { .. } | Act::ChangePlan | Act::ChangeSteel => "",
    }
}

const fn stands(how: Diagnosis) -> &'static str {
    match how {
        Diagnosis::Unmeasured => "Nothing was measured yet.",
        Diagnosis::Contradiction => "What was measured contradicts itself.",
        Diagnosis::Untempered => "It is as quenched: brittle until it is tempered.",
        Diagnosis::NotHard => "It measures softer than hardening makes this steel.",
        Diagnosis::RetainedAustenite => {
            "It is soft after too much heat: some austenite has probably stayed."
        }
        Diagnosis::OutOfReach => "This section of this steel does not get that hard.",
        Diagnosis::TooHard => "It is probably harder than wanted.",
        Diagnosis::GoneTooFar => "It was tempered too far: softer than wanted.",
        Diagnosis::TooSoft => "As bought it is softer than wanted.",
        Diagnosis::NeverHardened => "As bought it is not hardened yet.",
        Diagnosis::Proved => "It is inside, as well as can be proved.",
        Diagnosis::Unclear => "It may be inside.",
    }
}

const fn causes(how: Diagnosis) -> &'static str {
    match how {
        Diagnosis::NotHard => {
            "Likely causes in their order: not hot enough or not held, soft skin, too slow a quench, another steel than it was sold as, too thick a section."
        }
        Diagnosis::RetainedAustenite => {
            "Likely causes in their order: too hot, held too long, taken from the quench too warm. Harden it again at the right heat, not hotter. Deep cold right after the quench helps high-alloy steels."
        }
        Diagnosis::GoneTooFar => {
            "Likely causes: an oven hotter than its dial, Fahrenheit taken for Celsius, more time at heat than was counted, or a part that was never fully hard."
        }
        Diagnosis::TooHard => {
            "Likely causes: an oven cooler than its dial, or a part that was not yet hot throughout when the time began."
        }
        Diagnosis::TooSoft => {
            "Pre-hard stock is sold at 28 to 32 HRC; a file set says nothing between that and annealed. Do not harden a bought part to find out."
        }
        Diagnosis::NeverHardened => {
            "Stock that was sold hardened, as spring strip or wear plate, has that on its paper: then hold the paper against a reading first."
        }
        _ => "",
    }
}

pub(super) fn say(phrase: NextStep<'_>) -> Words {
    use NextStep as N;
    match phrase {
        N::Do(what) => act(what),
        N::How(what) => how(what).into(),
        N::Undone(what) => undone(what).into(),
        N::Caution(what) => caution(what).into(),
        N::Stands(diagnosis) => stands(diagnosis).into(),
        N::Causes(diagnosis) => causes(diagnosis).into(),
        N::Chances { under, inside, over } => format!(
            "As it is: too soft {under}, as wanted {inside}, too hard {over}."
        )
        .into(),
        N::After { under, inside, over } => {
            format!("Afterwards: too soft {under}, as wanted {inside}, too hard {over}.").into()
        }
        N::Further { inside } => format!(
            "That counts this temper alone; with further ones where they are needed, as wanted {inside}."
        )
        .into(),
        N::NeverHardens => "This steel does not harden.".into(),
        N::IfBest => "Counted with the best step that would follow.".into(),
        N::AtSize => "Not while the part is at its size: scale and movement would spoil it.".into(),
        N::NoSteel => {
            "Without the steel nothing is said of tempers: name the grade, or its composition.".into()
        }
        N::NoCurve { why } => format!("Of tempers nothing is said: {why}").into(),
        N::Weighed => {
            "Each step is weighed by the chance of a good part in the end, less a price for trouble and for what cannot be undone: a stroke 1 %, a temper 2 %, grinding 3 %, a tester elsewhere 20 %, hardening again 30 %, another target or plan 50 %. The prices are ours.".into()
        }
        N::Today => "Temper it today, as soon as it is hand-warm.".into(),
        N::Expected { about, band } => format!(
            "Steel and treatment promise about {about} ({band}); that is taken to hold in 17 parts of 20 and is in the chances."
        )
        .into(),
        N::OnlyInside => {
            "What is wanted can only be had inside it: beyond it too soft is too likely. Tempered so, a part may break when it is struck or bent.".into()
        }
        N::Planned => {
            "That counts the tempers after it, as it usually goes: planned, not measured.".into()
        }
        N::TakenQuenched => "How it stands was not said: taken as quenched and not tempered.".into(),
        N::Others => "Other ways, the next best first:".into(),
        N::UseDecides => {
            "More strokes cannot prove it. Try it on light work, or lay an offcut that was treated with it beside it.".into()
        }
    }
}

pub(super) fn refuse(what: NextRefusal<'_>) -> [Words; 3] {
    match what {
        NextRefusal::NoTarget => [
            "Without a wanted hardness there is no next step but another stroke.".into(),
            "50-54 HRC, 58 HRC min, 45 HRC max".into(),
            "Give the hardness that the work needs; the page Steel lists it by kind of part."
                .into(),
        ],
        NextRefusal::Stage { given } => [
            format!("\"{given}\" is no state of a part that is known here.").into(),
            "bought, quenched, tempered".into(),
            "Take what was done to it last.".into(),
        ],
        NextRefusal::StageAgainstTempers => [
            "Tempers are given for a part that is said not to be tempered.".into(),
            "tempers with the state tempered".into(),
            "Leave the state out, or leave the tempers out.".into(),
        ],
    }
}

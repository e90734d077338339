//! English for the page of unknown bars.

use super::UnknownPage;

pub(super) const fn say(label: UnknownPage) -> &'static str {
    match label {
        UnknownPage::Empty => {
            "Magnet, spark and file first; what settles it is a coupon, quenched and filed."
        }
        UnknownPage::NotTried => "not tried",
        UnknownPage::NextIs => "Next",
        UnknownPage::Answer => "Answer",
        UnknownPage::Typed => "Or as the files say",
        UnknownPage::TypedHint => "HRC: 50-55, >60, <40, or one number",
        UnknownPage::Below40 => "below 40",
        UnknownPage::From40 => "40 – 45",
        UnknownPage::From45 => "45 – 50",
        UnknownPage::From50 => "50 – 55",
        UnknownPage::From55 => "55 – 60",
        UnknownPage::Over60 => "over 60",
        UnknownPage::Bites => "ordinary file bites",
        UnknownPage::Skates => "ordinary file skates",
        UnknownPage::Carbon => "Carbon",
        UnknownPage::CarbonPlace => "Carbon in %",
        UnknownPage::Families => "What it may be",
        UnknownPage::Others => "all others",
        UnknownPage::GoodFor => "Good for",
        UnknownPage::NotFor => "Not for",
        UnknownPage::Quench => "Oil or water",
        UnknownPage::Causes => "What may be behind it",
        UnknownPage::Why => "Why, and how sure",
        UnknownPage::RestsOn => {
            "Hardness by carbon: ASTM A255-10, read in part. Sparks: US Army Ordnance, course text OD1643, read in part. All else: common practice, no source."
        }
        UnknownPage::NewBar => "New bar",
        UnknownPage::LastBar => "The last bar again",
    }
}

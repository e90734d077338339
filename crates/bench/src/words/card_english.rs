//! The English of part cards.

use std::borrow::Cow;

use super::CardWords as C;

pub(super) fn say(phrase: C<'_>) -> Cow<'static, str> {
    match phrase {
        C::Band { band } => format!("{band} HRC").into(),
        C::Stroke { file, word, count: 1 } => format!("{file} {}", word.to_lowercase()).into(),
        C::Stroke { file, word, count } => {
            format!("{file} {} {count}×", word.to_lowercase()).into()
        }
    }
}

//! Parts that pages are made of.

pub(crate) mod aligned;
pub(crate) mod bars;
pub(crate) mod chips;
pub(crate) mod choice;
pub(crate) mod field;
pub(crate) mod notices;
pub(crate) mod pad;
pub(crate) mod rule;
pub(crate) mod text;

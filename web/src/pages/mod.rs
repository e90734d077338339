//! One module for each page.

pub(crate) mod about;
pub(crate) mod claim;
pub(crate) mod convert;
pub(crate) mod file_more;
pub(crate) mod file_test;
pub(crate) mod mark;
pub(crate) mod next;
pub(crate) mod paper;
pub(crate) mod parts;
pub(crate) mod steel;
pub(crate) mod temper;
pub(crate) mod timer;
pub(crate) mod unknown;

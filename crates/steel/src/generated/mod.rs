//! What `cargo xtask tables` writes from the data files.

pub(crate) mod conditions;
pub(crate) mod designations;
pub(crate) mod grades;
pub(crate) mod sources;
pub(crate) mod targets;
pub(crate) mod tempering;
pub(crate) mod through;

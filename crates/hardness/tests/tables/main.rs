//! Every printed cell of every table, read from the data files by a parser that shares nothing with the
//! generator, against the tables that the library holds and what it converts.
#![expect(
    clippy::unwrap_used,
    clippy::panic,
    clippy::indexing_slicing,
    reason = "a helper that fails is a test that fails"
)]

mod limits;
mod print;
mod rows;
mod sums;

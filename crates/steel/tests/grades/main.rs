//! Grades, designations, targets and conditions: every cell of the data files against what the library
//! holds, what must agree between cells, and names as people write them.
#![expect(clippy::unwrap_used, clippy::panic, reason = "a helper that fails is a test that fails")]

mod agree;
mod names;
mod print;
mod rows;

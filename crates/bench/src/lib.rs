//! The person's side of Biteband: questions and answers, words, formatting, the state of the page.
//!
//! Nothing here knows HTML or a browser, and nothing above here holds arithmetic, parsing or words.
//!
//! ```
//! use biteband_bench::answer::{ConvertQuestion, convert};
//! use biteband_bench::words::Language;
//!
//! let question = ConvertQuestion { text: "HRC 15".into(), to: vec!["HV".into()], ..Default::default() };
//! let refusal = convert(Language::English, &question).unwrap_err();
//! assert_eq!(refusal.code, "hardness.outside_tables");
//! assert!(refusal.message.contains("20 HRC = 238 HV"));
//! ```

pub mod answer;
pub mod card;
pub mod composition;
pub mod format;
pub mod measure;
pub mod print;
mod refusal;
pub mod section;
pub mod state;
pub mod tempers;
pub mod view;
pub mod words;

pub use refusal::Refusal;

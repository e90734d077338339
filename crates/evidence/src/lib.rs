//! evidence
#![no_std]
extern crate alloc;

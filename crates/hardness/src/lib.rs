//! hardness
#![no_std]
extern crate alloc;

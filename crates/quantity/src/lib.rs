//! quantity
#![no_std]
extern crate alloc;

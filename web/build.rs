//! Keeps the linker's notes on what refers to what in the page's module: the build cuts the module into parts by
//! them and leaves none of them behind.

fn main() {
    println!("cargo::rerun-if-changed=build.rs");
    if std::env::var("CARGO_CFG_TARGET_FAMILY").is_ok_and(|family| family == "wasm") {
        println!("cargo::rustc-link-arg-bins=--emit-relocs");
    }
}

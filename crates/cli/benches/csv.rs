//! Rows per second of `biteband convert --csv`, the whole program with its start.

use std::error::Error;
use std::fmt::Write as _;
use std::fs::{self, File};
use std::path::Path;
use std::process::{Command, Stdio};

use criterion::{Criterion, Throughput};

const ROWS: u32 = 200_000;

/// A column of readings spread over the hardened range, in tenths.
fn sheet(path: &Path) -> Result<(), Box<dyn Error>> {
    let mut text = String::from("part,hrc\n");
    for row in 0..ROWS {
        writeln!(text, "{row},{}.{}", 20 + row % 48, row % 10)?;
    }
    Ok(fs::write(path, text)?)
}

fn convert(path: &Path) -> Result<(), Box<dyn Error>> {
    let status = Command::new(env!("CARGO_BIN_EXE_biteband"))
        .args(["convert", "--csv"])
        .arg(path)
        .args(["--column", "hrc", "--from", "HRC", "--to", "HV,Rm"])
        .stdin(Stdio::null())
        .stdout(File::create(path.with_extension("out"))?)
        .stderr(Stdio::null())
        .status()?;
    if status.success() { Ok(()) } else { Err(format!("ended with {status}").into()) }
}

fn main() -> Result<(), Box<dyn Error>> {
    let path = std::env::temp_dir().join(format!("biteband-bench-{}.csv", std::process::id()));
    sheet(&path)?;
    convert(&path)?;
    let mut criterion = Criterion::default().sample_size(10).configure_from_args();
    let mut group = criterion.benchmark_group("csv");
    group.throughput(Throughput::Elements(ROWS.into()));
    group.bench_function("HRC to HV and Rm, rows", |b| b.iter(|| convert(&path)));
    group.finish();
    criterion.final_summary();
    fs::remove_file(path.with_extension("out"))?;
    Ok(fs::remove_file(&path)?)
}

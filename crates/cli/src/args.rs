//! The command line as `clap` reads it.

use std::path::PathBuf;

use biteband_bench::format::Units;
use biteband_bench::words::Language;
use clap::{Args, Parser, Subcommand, ValueEnum};

use crate::claim::ClaimArgs;
use crate::heat::HeatArgs;
use crate::next::NextArgs;
use crate::part::PartCommand;
use crate::reach::ReachArgs;
use crate::temper::TemperArgs;
use crate::unknown::UnknownArgs;

const EXIT_CODES: &str = "\
Exit codes:
  0  answered
  1  refused: outside a table or a range, or the evidence contradicts itself
  2  usage: an option cannot be read, or names something that is not there
  3  input file: missing, unreadable, or without the column asked for

Refusals go to stderr; with --json also to stdout as {\"refused\":{...}}.";

/// Hardness conversion from published tables, the graded-file hardness test, the marks of hardness tests, and
/// what is known of steels.
#[derive(Debug, Parser)]
#[command(name = "biteband", version, after_help = EXIT_CODES)]
pub(crate) struct Cli {
    #[command(subcommand)]
    pub(crate) command: Command,
    /// Print one JSON object instead of text
    #[arg(long, global = true)]
    pub(crate) json: bool,
    /// Language of the texts; only "en" in this version
    #[arg(long, global = true, value_name = "TAG", default_value = "en", value_parser = language)]
    pub(crate) lang: Language,
    /// Units of the texts; numbers in JSON stay in MPa, mm and °C
    #[arg(long, global = true, value_enum, default_value_t = UnitsName::Metric)]
    pub(crate) units: UnitsName,
}

fn language(tag: &str) -> Result<Language, String> {
    Language::find(tag).ok_or_else(|| format!("known are: {}", Language::TAGS))
}

/// `--units`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum UnitsName {
    /// Strength in MPa, lengths in mm, temperatures in °C
    Metric,
    /// Strength in ksi, lengths in inches, temperatures in °F
    Inch,
}

impl From<UnitsName> for Units {
    fn from(name: UnitsName) -> Self {
        match name {
            UnitsName::Metric => Self::Metric,
            UnitsName::Inch => Self::Inch,
        }
    }
}

#[derive(Debug, Subcommand)]
pub(crate) enum Command {
    /// Say whether a paper is right: what it says against what was measured
    Claim(Box<ClaimArgs>),
    /// Convert a reading, a range or a tolerance: "52 HRC", "38-42 HRC", "HV 700 +-50"
    Convert(ConvertArgs),
    /// Say what strokes of graded files tell about a part
    File(Box<FileCommand>),
    /// Say how to heat a part and hold it, and whether the bath bears it: window, times, skin, bath, fire, oven
    Heat(Box<HeatArgs>),
    /// Say what the mark of a hardness test is worth: number, roundness, thickness, validity
    #[command(subcommand)]
    Indent(IndentCommand),
    /// Say how hard a steel becomes along the end-quench bar: from its grade or its composition
    Jominy {
        /// Any designation of the grade: 4140, EN19
        #[arg(required_unless_present = "composition", conflicts_with = "composition")]
        steel: Option<String>,
        /// Mass percent in place of a grade: C=0.41,Mn=0.85,Cr=1.0,Mo=0.2
        #[arg(long, value_name = "LIST")]
        composition: Option<String>,
    },
    /// Say what to do now with a part: accept, stroke again, temper, harden again
    Next(Box<NextArgs>),
    /// Keep parts as a file: their steel, what is wanted, what was done and found
    #[command(subcommand)]
    Part(Box<PartCommand>),
    /// Say what hardness a section of a steel reaches, from the skin to the middle, and the ways out
    Reach(ReachArgs),
    /// Show what is known of a steel, or how hard a kind of part is made
    Steel {
        /// Any designation: 4140, EN19, 1.7225, 42CrMo4, "silver steel"
        #[arg(value_name = "NAME", required_unless_present_any = ["list", "find", "target"])]
        name: Vec<String>,
        /// List every grade
        #[arg(long, conflicts_with_all = ["name", "find", "target"])]
        list: bool,
        /// Look for a designation by a part of it
        #[arg(long, value_name = "TEXT", conflicts_with_all = ["name", "target"])]
        find: Option<String>,
        /// Usual hardness of a kind of part: "cold chisel"
        #[arg(long, value_name = "PART", conflicts_with = "name")]
        target: Option<String>,
    },
    /// Say what a bar of unknown steel can be: from magnet, spark, file and coupons
    Unknown(UnknownArgs),
    /// Show a conversion table as printed
    Table {
        /// Stable name, as in astm-e140-t1
        #[arg(required_unless_present = "list", conflicts_with = "list")]
        id: Option<String>,
        /// List every table
        #[arg(long)]
        list: bool,
    },
    /// Say what hardness tempers leave, or how to temper for a hardness
    Temper(Box<TemperArgs>),
    /// Show a source: what was read, what was recalled
    Source {
        /// Stable name, as in astm-e140
        #[arg(required_unless_present = "list", conflicts_with = "list")]
        id: Option<String>,
        /// List every source
        #[arg(long)]
        list: bool,
    },
    /// Make sheets for the wall and the bench, to print on A4 or Letter
    #[command(subcommand)]
    Print(PrintCommand),
}

/// Lengths carry mm, um or in; forces kgf, gf, N or kN.
#[derive(Debug, Subcommand)]
pub(crate) enum IndentCommand {
    /// A Vickers mark by its diagonals
    Vickers {
        /// Test force: 30kgf, 294.2N
        #[arg(long, value_name = "FORCE", allow_hyphen_values = true)]
        force: Option<String>,
        /// First diagonal: 0.301mm
        #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
        d1: Option<String>,
        /// Second diagonal
        #[arg(long, value_name = "LENGTH", requires = "d1", allow_hyphen_values = true)]
        d2: Option<String>,
        /// One diagonal runs along the axis of the round, instead of both at 45 degrees
        #[arg(long)]
        along_axis: bool,
        #[command(flatten)]
        part: OnPart,
    },
    /// A Brinell mark by its diameter
    Brinell {
        /// Ball: 10mm, 5mm, 2.5mm, 1mm
        #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
        ball: Option<String>,
        /// Test force: 3000kgf, 29.42kN
        #[arg(long, value_name = "FORCE", allow_hyphen_values = true)]
        force: Option<String>,
        /// Diameter of the mark: 3.2mm
        #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
        d: Option<String>,
        /// A second diameter across the first
        #[arg(long, value_name = "LENGTH", requires = "d", allow_hyphen_values = true)]
        d2: Option<String>,
        /// steel, cast-iron, copper, light-metal or lead-tin: which forces its standard names
        #[arg(long, value_name = "METAL")]
        material: Option<String>,
        #[command(flatten)]
        part: OnPart,
    },
    /// A Knoop mark by its long diagonal
    Knoop {
        /// Test force: 1kgf, 9.807N
        #[arg(long, value_name = "FORCE", allow_hyphen_values = true)]
        force: Option<String>,
        /// Long diagonal: 0.1mm
        #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
        d: Option<String>,
        #[command(flatten)]
        part: OnPart,
    },
    /// A Rockwell number, or the depth that it counts
    Rockwell {
        /// Scale by symbol: HRC, HRB, HR30N
        #[arg(long, value_name = "SCALE")]
        scale: Option<String>,
        /// Depth left under the preload: 0.090mm
        #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
        depth: Option<String>,
        /// Width of the mark, which the number does not tell; for --edge and --next
        #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
        mark: Option<String>,
        #[command(flatten)]
        part: OnPart,
    },
}

/// What is known of the number and the part, for every kind of test.
#[derive(Args, Debug)]
pub(crate) struct OnPart {
    /// The number that was read, in place of the size of the mark
    #[arg(long, value_name = "NUMBER", allow_hyphen_values = true)]
    pub(crate) value: Option<String>,
    /// Several numbers that were read: "52,53,51.5", with decimal commas "52;53;51,5"
    #[arg(long, value_name = "NUMBERS", allow_hyphen_values = true)]
    pub(crate) readings: Option<String>,
    /// Diameter of a round part: 12mm, 1/2in
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) round: Option<String>,
    /// The test stands inside the round
    #[arg(long)]
    pub(crate) bore: bool,
    /// The round is a ball
    #[arg(long)]
    pub(crate) sphere: bool,
    /// Thickness of the section, or depth of the hard case
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) thickness: Option<String>,
    /// From the centre of the mark to the nearest edge
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) edge: Option<String>,
    /// From centre to centre of the nearest other mark
    #[arg(long, value_name = "LENGTH", allow_hyphen_values = true)]
    pub(crate) next: Option<String>,
}

#[derive(Debug, Subcommand)]
pub(crate) enum PrintCommand {
    /// Scales side by side, as on a slide rule
    Strip(ScalesArgs),
    /// A table with a row for every step of one scale
    Chart {
        #[command(flatten)]
        scales: ScalesArgs,
        /// Step between rows; 1 on Rockwell scales, 10 on Vickers, Brinell and Knoop, 50 MPa if not given
        #[arg(long, allow_negative_numbers = true)]
        step: Option<f64>,
    },
    /// A card to tick while stroking with graded files
    FileCard {
        /// Grades of the files at hand; the trade set 40,45,50,55,60,65 if not given
        #[arg(long, value_name = "GRADES")]
        set: Option<String>,
        #[command(flatten)]
        sheet: SheetArgs,
    },
    /// The thinnest section for each test, over the hardness of the part
    Thickness {
        #[command(flatten)]
        sheet: SheetArgs,
    },
}

#[derive(Args, Debug)]
pub(crate) struct ScalesArgs {
    /// Soft and hard end on the base scale: 40..65
    #[arg(long, value_name = "SPAN", allow_hyphen_values = true)]
    pub(crate) from: String,
    /// The scale that is read from
    #[arg(long, value_name = "SCALE", default_value = "HRC")]
    pub(crate) base: String,
    /// Scales beside it, with commas between: HV,HBW,Rm; the usual ones if not given
    #[arg(long, value_name = "SCALES", value_delimiter = ',')]
    pub(crate) scales: Vec<String>,
    #[command(flatten)]
    pub(crate) sheet: SheetArgs,
}

#[derive(Args, Debug)]
pub(crate) struct SheetArgs {
    /// Paper of the sheets
    #[arg(long, value_enum, default_value_t = PaperName::A4, ignore_case = true)]
    pub(crate) paper: PaperName,
    /// A drawing for each sheet, or one page for the browser's print; by the ending of --out if not given
    #[arg(long, value_enum)]
    pub(crate) format: Option<Format>,
    /// File to write; stdout if not given. Several drawings get numbers: chart-1.svg, chart-2.svg
    #[arg(long, value_name = "FILE")]
    pub(crate) out: Option<PathBuf>,
}

/// `--paper`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum PaperName {
    /// 210 by 297 mm
    A4,
    /// 8.5 by 11 in
    Letter,
}

/// `--format`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Format {
    /// One drawing for each sheet
    Svg,
    /// One page that holds all sheets
    Html,
}

#[derive(Args, Debug)]
pub(crate) struct ConvertArgs {
    /// The hardness as written on the drawing or the paper
    #[arg(value_name = "READING", required_unless_present = "csv", conflicts_with = "csv")]
    pub(crate) text: Vec<String>,
    /// Scales to convert to, by symbol, with commas between: HV,HBW,Rm
    #[arg(long, value_name = "SCALES", value_delimiter = ',')]
    pub(crate) to: Vec<String>,
    /// Class of the metal: carbon-alloy-steel unless said, austenitic-plate, cartridge-brass, and others
    #[arg(long)]
    pub(crate) material: Option<String>,
    /// One table instead of the first that fits (see "table --list")
    #[arg(long, value_name = "ID")]
    pub(crate) table: Option<String>,
    /// Convert a column of a CSV file, or of stdin with "-", and write it to stdout
    #[arg(long, value_name = "FILE", requires = "column", requires = "to")]
    pub(crate) csv: Option<String>,
    /// Heading of the column that holds the readings
    #[arg(long, value_name = "HEADING", requires = "csv")]
    pub(crate) column: Option<String>,
    /// Scale of bare numbers in the column
    #[arg(long, value_name = "SCALE", requires = "csv")]
    pub(crate) from: Option<String>,
    /// Character between fields: one character, or "tab"
    #[arg(long, value_name = "CHAR", default_value = ",", requires = "csv", value_parser = delimiter)]
    pub(crate) delimiter: u8,
    /// Converted numbers rounded by the rule of their scale, or in full
    #[arg(long, value_enum, default_value_t = Digits::Shown, requires = "csv")]
    pub(crate) digits: Digits,
}

/// `--digits`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum Digits {
    /// Rounded by the rule of the scale
    Shown,
    /// Unrounded
    Full,
}

pub(crate) fn delimiter(text: &str) -> Result<u8, &'static str> {
    match text.as_bytes() {
        b"tab" | b"\\t" => Ok(b'\t'),
        [b'"' | b'\n' | b'\r'] => Err("a quote or line end cannot stand between fields"),
        [one] if one.is_ascii() => Ok(*one),
        _ => Err("write one plain character, as in ; or tab"),
    }
}

#[derive(Args, Debug)]
#[expect(clippy::struct_excessive_bools, reason = "each is a switch of the command line")]
pub(crate) struct FileArgs {
    /// Files that bite, by grade: 55,60,65
    #[arg(long, value_name = "GRADES")]
    pub(crate) bites: Option<String>,
    /// Files that skate, by grade: 40,45,50
    #[arg(long, value_name = "GRADES")]
    pub(crate) skates: Option<String>,
    /// Files that bite slightly, or where you are not sure
    #[arg(long, value_name = "GRADES")]
    pub(crate) slight: Option<String>,
    /// Strokes one by one: "55:b,b,s 50:k,k"; a second place on the part is written 55#2:b
    #[arg(long)]
    pub(crate) strokes: Option<String>,
    /// Grades of the files at hand; the trade set 40,45,50,55,60,65 if not given
    #[arg(long, value_name = "GRADES")]
    pub(crate) set: Option<String>,
    /// To how many HRC the files are graded: 1 for test files, 3 for an ordinary file of about 63
    #[arg(long, value_name = "HRC")]
    pub(crate) tolerance: Option<f64>,
    /// careful, practised or casual; practised if not given
    #[arg(long)]
    pub(crate) hand: Option<String>,
    /// Strokes on pieces of known hardness: "55@53:b,55@57:k"
    #[arg(long, value_name = "PROOFS")]
    pub(crate) proved: Option<String>,
    /// Expected hardness as mean and standard deviation: "N(54,2)"; of `file` also "steel", what the grade promises
    #[arg(long)]
    pub(crate) prior: Option<String>,
    /// Readings of an instrument on the part, once for each: "52, 53 HRC", "ultrasonic: 640 HV +-25"
    #[arg(long = "reading", value_name = "READING")]
    pub(crate) readings: Vec<String>,
    /// Wanted hardness: "50-54 HRC", "58 HRC min", "HV 700 +-50"
    #[arg(long)]
    pub(crate) target: Option<String>,
    /// Whether the skin was ground off or is still on
    #[arg(long, value_enum)]
    pub(crate) skin: Option<SkinName>,
    /// Stroked on an edge or corner instead of a flat
    #[arg(long)]
    pub(crate) edge: bool,
    /// The finish differs from that of the pieces the files are known on
    #[arg(long)]
    pub(crate) finish_differs: bool,
    /// Carbide-rich steel, as D2 or high speed
    #[arg(long)]
    pub(crate) carbide_rich: bool,
    /// Every answer was bites or skates; there was no third
    #[arg(long)]
    pub(crate) yes_no: bool,
}

/// `biteband file`: the evidence, and what the steel promises.
#[derive(Args, Debug)]
pub(crate) struct FileCommand {
    #[command(flatten)]
    pub(crate) evidence: FileArgs,
    /// The grade whose promise counts with --prior steel
    #[arg(long, value_name = "NAME")]
    pub(crate) steel: Option<String>,
    /// A temper the part has had, once for each: 205C/2h; without one the promise is that as quenched
    #[arg(long, value_name = "TEMPER", requires = "steel", allow_hyphen_values = true)]
    pub(crate) done: Vec<String>,
}

/// `--skin`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
pub(crate) enum SkinName {
    /// Ground off
    Ground,
    /// Still on
    On,
}

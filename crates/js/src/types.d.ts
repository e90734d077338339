/** What a conversion is asked. */
export interface ConvertQuestion {
  /** The hardness as written: `52 HRC`, `38-42 HRC`, `HV 700 +-50`. */
  text: string;
  /** Scales to convert to, by symbol; the usual ones if left out. */
  to?: string[];
  /** Material class; `carbon-alloy-steel`, or that of the table, if left out. */
  material?: MaterialClass | null;
  /** One table instead of the first that fits, by its id. */
  table?: string | null;
  /** Units of the texts; numbers stay in MPa. */
  units?: "metric" | "inch";
}

/** Classes with tables first; the last six are refused with the reason and what can be said. */
export type MaterialClass =
  | "carbon-alloy-steel"
  | "austenitic-plate"
  | "austenitic-sheet"
  | "nickel-alloy"
  | "cartridge-brass"
  | "leaded-brass"
  | "wrought-aluminium"
  | "high-alloy-tool-steel"
  | "case-hardened-steel"
  | "cold-worked-steel"
  | "cast-iron"
  | "copper-alloy"
  | "hardmetal";

/** A conversion that reached at least one scale. */
export interface ConvertAnswer {
  refused?: undefined;
  input: ConvertInput;
  /** The class whose tables were asked. */
  material: MaterialClass;
  results: Converted[];
  /** One entry for each scale that was not reached. */
  refusals: Refusal[];
  cautions: string[];
}

/** What was understood. */
export interface ConvertInput {
  /** Symbol of the scale, `Rm` for tensile strength. */
  scale: string;
  /** `null` for a maximum. */
  low: number | null;
  /** `null` for a minimum. */
  high: number | null;
  /** In standard form. */
  understood: string;
  notes: Note[];
}

/** Where a text strays from the standard form, or what it leaves open. */
export interface Note {
  code: string;
  text: string;
  /** Whether it asks for something only the person or the paper's author can say. */
  asks: boolean;
}

/** A number or range on another scale. */
export interface Converted {
  scale: string;
  unit: string;
  /** Unrounded; `null` for a range and where the print repeats a value. */
  value: number | null;
  /** Low end of the conversion's own width, or the converted low limit. */
  low: number | null;
  /** High end, likewise. */
  high: number | null;
  /** The share of cases that low to high is meant to hold; `null` for converted limits. */
  width_level: number | null;
  /** Half of the conversion's own width at 95 %. */
  half_width: number;
  table: string;
  source: string;
  /** `row 52`, `rows 52, 53`. */
  basis: string;
  flags: ("parenthesised" | "recalled" | "repeated")[];
  /** What other tables say. */
  others: Other[];
  /** What measured heats of steel had; only for tensile strength, from 195 to 380 HV. */
  measured: Measured | null;
  /** Rounded by the rule of the scale. */
  shown: string;
}

/** Tensile strength of measured steels at a hardness, in MPa. */
export interface Measured {
  value: number;
  low: number;
  high: number;
  width_level: number;
  source: string;
  /** In words. */
  shown: string;
}

/** What another table says. */
export interface Other {
  table: string;
  value: number | null;
  low: number | null;
  high: number | null;
  shown: string;
}

/** What one stroke of a file does. */
export type Outcome = "bites" | "slight" | "skates";

/** What a file test is asked. */
export interface FileQuestion {
  /** Grades of the files at hand, HRC; the trade set 40 to 65 if left out. */
  set?: number[];
  /** To how many HRC the files are graded; 1 if left out. */
  tolerance?: number | null;
  /** `practised` if left out. */
  hand?: "careful" | "practised" | "casual" | null;
  /** Every answer was bites or skates. */
  yesNo?: boolean;
  strokes?: Stroke[];
  /** Strokes on pieces of known hardness. */
  proved?: Proof[];
  conditions?: Conditions;
  /** Expected hardness: mean and standard deviation, HRC. */
  prior?: [mean: number, sd: number] | null;
  /** Wanted hardness as written: `50-54 HRC`, `58 HRC min`. */
  target?: string | null;
  /** Readings of instruments on the part. */
  readings?: ReadingInput[];
  /** Units of the texts; numbers stay in MPa. */
  units?: "metric" | "inch";
}

/** One stroke on the part. */
export interface Stroke {
  /** Grade of the file, HRC. */
  file: number;
  outcome: Outcome;
  /** Place on the part, from 1. */
  spot?: number | null;
}

/** One stroke on a piece of known hardness. */
export interface Proof {
  /** Grade of the file, HRC. */
  file: number;
  /** Hardness of the piece, HRC. */
  known: number;
  outcome: Outcome;
}

/** What a reading was taken with. */
export type Instrument =
  | "bench-rockwell-unverified"
  | "bench-rockwell-verified"
  | "bench-rockwell-ball"
  | "bench-vickers"
  | "bench-vickers-light"
  | "bench-brinell"
  | "brinell-scope"
  | "portable-leeb"
  | "ultrasonic"
  | "comparison"
  | "other";

/** Readings of one instrument on one spot. */
export interface ReadingInput {
  /** The usual one of the scale if left out. */
  instrument?: Instrument | null;
  /** As written: `52, 53, 51.5 HRC`, `288 HBW +-8`, `640 HV 10 u=12`. */
  text: string;
  /** For a comparison: hardness of the known piece, `50 HRC +-1`. */
  known?: string | null;
  /** For a comparison: readings of that piece, `47, 49 HRC`. */
  onKnown?: string | null;
}

/** Conditions that shift every stroke. */
export interface Conditions {
  /** Whether the skin was ground off; left out when not said. */
  skinGround?: boolean | null;
  edge?: boolean;
  finishDiffers?: boolean;
  carbideRich?: boolean;
}

/** A band with everything read off it. */
export interface FileAnswer {
  refused?: undefined;
  verdict: string;
  band: Band;
  /** HRC; `null` when an end is open. */
  median: number | null;
  /** `null` when no target was given. */
  target: TargetOdds | null;
  /** Always empty in an answer. */
  contradictions: Contradiction[];
  readings: ReadingAnswer[];
  /** Always empty in an answer. */
  clashes: Clash[];
  next: Next;
  /** The same band on other scales, widened by the conversion. */
  scales: BandInScale[];
  notes: string[];
  cautions: string[];
  /** Ids of the sources. */
  sources: string[];
}

/** Files or readings that contradict each other: no band. */
export interface FileRefused {
  refused: Refusal;
  contradictions: Contradiction[];
  readings: ReadingAnswer[];
  clashes: Clash[];
  next: Next;
  cautions: string[];
}

/** A band of hardness. */
export interface Band {
  scale: string;
  /** `null` when open. */
  low: number | null;
  /** `null` when open. */
  high: number | null;
  /** The share of cases the band is meant to hold. */
  level: number;
  open_low: boolean;
  open_high: boolean;
  /** In whole HRC, rounded outward. */
  shown: string;
}

/** The band on another scale. */
export interface BandInScale {
  scale: string;
  low: number | null;
  high: number | null;
  table: string;
  shown: string;
}

/** Chances about the target. */
export interface TargetOdds {
  /** As understood, HRC. */
  low: number | null;
  /** As understood, HRC. */
  high: number | null;
  under: number;
  inside: number;
  over: number;
  verdict: string;
}

/** Two files that disagree, or one with itself. */
export interface Contradiction {
  /** The file that skates, HRC. */
  harder: number;
  /** The file that bites, HRC. */
  softer: number;
  why: string;
  causes: { text: string }[];
  without_harder: string;
  without_softer: string;
}

/** What readings were understood as; uncertainties are standard ones in HRC. */
export interface ReadingAnswer {
  instrument: Instrument;
  /** The numbers with their scale. */
  understood: string;
  hrc: number[];
  /** Of a single reading. */
  u_random: number;
  /** What all readings of the instrument share. */
  u_shared: number;
  /** `null` for readings in HRC. */
  u_conversion: number | null;
  /** Taken from the kind of instrument, not written. */
  assumed: boolean;
  /** `null` for readings in HRC. */
  table: string | null;
  /** In words, with the half-width at 95 %. */
  shown: string;
}

/** Two sources that no hardness explains together: `files`, `readings[0]`, `readings[0].hrc[2]`. */
export interface Clash {
  harder: string;
  softer: string;
  text: string;
  why: string[];
  without_harder: string;
  without_softer: string;
}

/** The next step. */
export interface Next {
  /** Grade of the file to stroke; `null` when another stroke would change little. */
  file: number | null;
  why: string;
  say: string;
  expected_width: number | null;
  width_now: number;
}

/**
 * What is asked about the mark of a hardness test. Lengths and forces are texts with their unit: `0.301mm`,
 * `1-1/2in`, `30kgf`, `294.2N`. One of `sizes`, `depth`, `value` and `readings` is given.
 */
export interface IndentQuestion {
  kind: "vickers" | "brinell" | "knoop" | "rockwell";
  /** Test force; not for Rockwell, whose scale fixes it. */
  force?: string | null;
  /** Ball of a Brinell test. */
  ball?: string | null;
  /** Rockwell scale by symbol. */
  scale?: string | null;
  /** One or two diagonals or diameters of the mark; the long diagonal for Knoop. */
  sizes?: string[];
  /** Depth under the preload, for Rockwell. */
  depth?: string | null;
  /** A number that was read, in place of sizes or depth. */
  value?: number | null;
  /** Several numbers that were read, in the order taken. */
  readings?: number[];
  /** Diameter of a round part, ball or bore. */
  round?: string | null;
  bore?: boolean;
  sphere?: boolean;
  /** Vickers: one diagonal runs along the axis, instead of both at 45 degrees. */
  alongAxis?: boolean;
  /** Thickness of the section, or depth of the hard case. */
  thickness?: string | null;
  /** From the centre of the mark to the nearest edge. */
  edge?: string | null;
  /** From centre to centre of the nearest other mark. */
  next?: string | null;
  /** Width of the mark of a Rockwell test. */
  mark?: string | null;
  /** Metal of a Brinell test. */
  material?: "steel" | "cast-iron" | "copper" | "light-metal" | "lead-tin" | null;
  /** Units of the texts; numbers stay in mm. */
  units?: "metric" | "inch";
}

/** Hardness from the mark of a test. */
export interface IndentAnswer {
  refused?: undefined;
  /** By the formula, as read, or the mean of the readings; not corrected for roundness. */
  value: number;
  scale: string;
  /** What a flat would give; `null` without a round. */
  corrected: number | null;
  shown: string;
  /** With the conditions of the test: `640 HV30`. */
  designation: string;
  /** Whether every rule that could be checked is kept; where standards differ, the stricter too. */
  valid: boolean;
  verdict: string;
  limits: IndentLimit[];
  /** Thinnest sections for this mark, by every rule that is known. */
  thinnest: ThinnestSection[];
  mark: IndentMark;
  correction: RoundCorrection | null;
  /** Tests that are valid where this one is not. */
  better: BetterTest[];
  series: Series | null;
  machine: Machine;
  /** HRC, HV and HBW by the tables of steel, where one reaches. */
  converted: ConvertedIndent[];
  notes: string[];
  cautions: string[];
  /** Ids of the sources. */
  sources: string[];
}

/** A rule against what was given. */
export interface IndentLimit {
  rule: string;
  needed: number;
  given: number;
  /** `mm`, the scale for its own ends, `kgf/mm2` for the index of a Brinell test. */
  unit: string;
  holds: boolean;
  source: string;
  seen: string;
  text: string;
}

/** A thinnest section or case, in mm. */
export interface ThinnestSection {
  rule: string;
  needed: number;
  source: string;
  seen: string;
  text: string;
}

/** Size and depth of the mark in mm. */
export interface IndentMark {
  /** `null` for Rockwell. */
  size: number | null;
  depth: number;
}

/** What roundness does to the number. */
export interface RoundCorrection {
  amount: number;
  /** Only for Vickers. */
  factor: number | null;
  half_width: number;
  source: string;
  seen: string;
  text: string;
}

/** A test that is valid, and what it would read. */
export interface BetterTest {
  test: string;
  value: number;
  shown: string;
}

/** What several readings say. */
export interface Series {
  n: number;
  mean: number;
  range: number | null;
  /** Standard deviation of one reading. */
  sd: number | null;
  /** Of the mean, scatter only, widened for the count. */
  standard_uncertainty: number | null;
  half_width: number | null;
  level: number;
  outlier: Outlier | null;
  source: string;
  text: string;
}

/** A reading that stands out. */
export interface Outlier {
  /** Counted from 1. */
  place: number;
  value: number;
  text: string;
}

/** What a tester may be off. */
export interface Machine {
  limits: MachineLimit[];
  /** To assume without a certificate; `null` where there is nothing to assume. */
  standard_uncertainty: number | null;
  source: string | null;
  text: string;
}

/** What a standard allows a verified tester. */
export interface MachineLimit {
  kind: "error" | "repeatability";
  amount: number;
  source: string;
  seen: string;
  text: string;
}

/** The number on another scale. */
export interface ConvertedIndent {
  scale: string;
  value: number;
  half_width: number;
  table: string;
  flags: ("parenthesised" | "recalled")[];
  shown: string;
}

/** Which steel. */
export interface SteelQuestion {
  /** Any designation: `4140`, `EN19`, `1.7225`, `silver steel`. */
  name: string;
  /** Units of the texts. */
  units?: "metric" | "inch";
}

/** What is known of a grade. Temperatures in °C, strength in MPa, shares in mass percent. */
export interface SteelAnswer {
  refused?: undefined;
  key: string;
  name: string;
  family: "carbon" | "free-machining" | "alloy" | "tool" | "stainless" | "ph-stainless" | "structural";
  /** Name, kind and hardening in words. */
  title: string;
  /** The designation that was recognised. */
  designation: string;
  system: "aisi_sae" | "uns" | "en_name" | "en_number" | "bs" | "jis" | "gb" | "shop name";
  closeness: "same" | "near" | "approximate";
  closeness_text: string;
  how: "exact" | "spelling";
  seen: "seen" | "part" | "recalled";
  note: string;
  /** Other grades that the name can mean: when there are any, it is ambiguous. */
  candidates: SteelCandidate[];
  /** Keys of grades that are near to the designation too. */
  also_near: string[];
  /** The condition that a British letter behind the name states. */
  condition: SteelCondition | null;
  /** Sentences about the name. */
  verdict: string[];
  composition: SteelComposition;
  hardening: SteelHardening;
  supplied: SteelSupplied;
  as_quenched: SteelAsQuenched;
  tempering: SteelTempering;
  avoid: SteelAvoid | null;
  working: SteelWorking;
  /** Of the 17-4 type. */
  ages: SteelAge[];
  section: string;
  hazards: string[];
  notes: string[];
  cautions: string[];
  sources: SteelSource[];
}

/** Another grade that a name can mean. */
export interface SteelCandidate {
  designation: string;
  system: string;
  key: string;
  name: string;
  closeness: "same" | "near" | "approximate";
  closeness_text: string;
  note: string;
  seen: string;
}

/** A condition letter of BS 970. */
export interface SteelCondition {
  letter: string;
  hbw_low: number;
  hbw_high: number | null;
  tensile_low: number;
  tensile_high: number | null;
  sources: string[];
  seen: string;
}

/** Composition limits. */
export interface SteelComposition {
  standard: string;
  elements: SteelElement[];
  other: string;
  note: string;
  sources: string[];
  seen: string;
  confidence: "high" | "medium" | "low";
  text: string;
}

/** Limits of one element in mass percent. */
export interface SteelElement {
  element: string;
  min: number | null;
  max: number | null;
}

/** A temperature or a range of them. */
export interface TemperatureStep {
  low_c: number;
  high_c: number;
}

/** How to harden. */
export interface SteelHardening {
  kind: "through" | "case" | "age" | "none";
  low_c: number | null;
  high_c: number | null;
  preheat: TemperatureStep[];
  /** The usual medium first. */
  quench: string[];
  soak: string;
  sources: string[];
  seen: string;
  confidence: "high" | "medium" | "low";
  text: string;
}

/** The bar as it is bought. */
export interface SteelSupplied {
  hbw_min: number | null;
  hbw_typical: number | null;
  hbw_max: number | null;
  note: string;
  sources: string[];
  seen: string;
  confidence: "high" | "medium" | "low";
  text: string;
}

/** Hardness as quenched in a small section; of a case grade that of the core. */
export interface SteelAsQuenched {
  hrc_low: number | null;
  hrc_high: number | null;
  note: string;
  sources: string[];
  seen: string;
  confidence: "high" | "medium" | "low";
  text: string;
}

/** How to temper. */
export interface SteelTempering {
  low_c: number | null;
  high_c: number | null;
  method: "regression" | "regression_edge" | "curve" | "case" | "age_table" | "none";
  curve_from: string | null;
  curve_closeness: "own" | "sibling" | "sibling_low" | "none" | null;
  double_temper: "no" | "recommended" | "yes" | "triple" | "triple for large";
  cryo: "no" | "optional" | "possible" | "useful";
  sources: string[];
  seen: string;
  confidence: "high" | "medium" | "low";
  text: string;
}

/** A tempering range to avoid; without ends where only a reason is stated. */
export interface SteelAvoid {
  low_c: number | null;
  high_c: number | null;
  why: string;
  text: string;
}

/** Usual working hardness and use; of a case grade that of the case. */
export interface SteelWorking {
  hrc_low: number | null;
  hrc_high: number | null;
  typical_use: string;
  sources: string[];
  seen: string;
  confidence: "high" | "medium" | "low";
  text: string;
}

/** An age of the 17-4 type. */
export interface SteelAge {
  age: string;
  /** Temperature in °C and hours of each step. */
  steps: [number, number][];
  hrc_min: number | null;
  hbw_min: number | null;
  tensile_min: number | null;
  yield_min: number | null;
  note: string;
  sources: string[];
  seen: string;
  text: string;
}

/** A source of a card. */
export interface SteelSource {
  id: string;
  title: string;
  seen: string;
}

/** Why there is no answer, and what to do instead. */
export interface Refusal {
  /** Stable name. */
  code: string;
  message: string;
  given: string;
  allowed: string;
  instead: string;
}

/** A question without an answer. */
export interface Refused {
  refused: Refusal;
}

/** A table in a list of tables. */
export interface TableListing {
  id: string;
  short: string;
  title: string;
  source: string;
  row_scale: string;
  rows: number;
  columns: string[];
  seen: string;
}

/** A table as printed. */
export interface Table {
  refused?: undefined;
  id: string;
  title: string;
  source: string;
  material: string;
  conditions: string;
  remarks: string[];
  columns: string[];
  /** From hard to soft. */
  rows: TableRow[];
}

/** A printed row. */
export interface TableRow {
  /** One entry for each column; `null` where the print has a dash. */
  values: (number | null)[];
  /** As printed: parentheses kept, `~` behind a recalled number. */
  printed: string[];
}

/** A standard, paper, data set or own working. */
export interface Source {
  id: string;
  kind: string;
  body: string;
  title: string;
  edition: string;
  seen: string;
  note: string;
}

/** What is asked about the end-quench bar: one of `steel` and `composition`. */
export interface JominyQuestion {
  /** Any designation of a grade: `4140`, `EN19`. */
  steel?: string | null;
  /** Mass percent of a heat, `C=0.41,Mn=0.85,Cr=1.0,Mo=0.2`, or limits, `C=0.38-0.43,Mn=0.75-1`. */
  composition?: string | null;
  /** Units of the texts; numbers stay in mm. */
  units?: "metric" | "inch";
}

/** Hardness along the end-quench bar. */
export interface JominyAnswer {
  refused?: undefined;
  /** Key of the grade; `null` for a composition. */
  steel: string | null;
  /** What the name stands for, and how near it is to the grade; empty for a composition. */
  understood: string[];
  /** The last is to be taken as a guess. */
  method: "h-band" | "astm-a255" | "astm-a255-outside-range";
  h_band: string | null;
  basis: string;
  /** From the quenched end inward. */
  curve: JominyPoint[];
  /** By ASTM A255. */
  ideal_diameter_mm: IdealDiameters;
  ideal_diameter: string;
  /** Elements outside the range of the standard. */
  outside: OutsideElement[];
  notes: string[];
  cautions: string[];
  confidence: "high" | "medium" | "low";
  seen: string;
  /** Ids of the sources. */
  sources: string[];
}

/** A place on the bar; HRC, `null` below 20 HRC. */
export interface JominyPoint {
  mm: number;
  /** Sixteenths of an inch. */
  sixteenths: number;
  low: number | null;
  mid: number | null;
  high: number | null;
  /** The middle is no higher than this, because no lower edge is printed. */
  mid_at_most: boolean;
  /** Low, middle and high in words. */
  shown: string[];
}

/** Of the lowest, the middle and the highest composition, in mm. */
export interface IdealDiameters {
  low: number;
  mid: number;
  high: number;
}

/** An element outside the range of the standard; mass percent. */
export interface OutsideElement {
  element: string;
  given: number;
  low: number;
  high: number;
  text: string;
}

/** A section: one shape, every size with its unit. */
export interface SectionInput {
  /** Diameter of a round: `50mm`, `2in`. */
  round?: string | null;
  /** Outside and inside: `40mm,20mm`. */
  tube?: string | null;
  /** Thickness of a wide plate. */
  plate?: string | null;
  /** Side of a square bar. */
  square?: string | null;
  /** Size across flats. */
  hex?: string | null;
  /** Width and thickness: `60mm,12mm`. */
  flat?: string | null;
  length?: string | null;
}

/** What is asked about a heat: one of `steel` and `composition`, the rest as far as it is known. */
export interface HeatQuestion {
  /** Any designation of a grade: `4140`, `EN19`. */
  steel?: string | null;
  /** Mass percent of a heat, or limits. */
  composition?: string | null;
  section?: SectionInput;
  /** Everything hot that goes into the bath together, in place of the mass of the section: `2.7kg`. */
  mass?: string | null;
  /** The bath: `oil:6L@25C`, `oil:6L@25C:flash=180C`. */
  quench?: string | null;
  /** Hardening temperature in place of the middle of the window: `850C`. */
  at?: string | null;
  /** How warm the part goes in: `20C` if left out. */
  start?: string | null;
  /** `open` if left out, `coated`, `foil`, `charcoal`, `atmosphere`. */
  protection?: string | null;
  /** Checks of the oven: `240C=231.9C`, `240C=tin`. */
  oven?: string[];
  /** Units of the texts; numbers stay in °C, mm, kg and litres. */
  units?: "metric" | "inch";
}

/** How to heat a part, and what its quench does to the bath. */
export interface HeatAnswer {
  refused?: undefined;
  /** Key of the grade; `null` for a composition. */
  steel: string | null;
  understood: string[];
  /** What to do, or the stop with its figure. */
  verdict: string;
  harden: HeatWindow;
  preheat: TemperatureStep[];
  preheat_text: string;
  protection: HeatProtection;
  /** `null` without section and mass. */
  part: HeatPart | null;
  /** Minutes until the middle is hot. */
  heat_through_min: number | null;
  heat_through: HeatThrough | null;
  /** Minutes to hold after that. */
  hold_min: number | null;
  hold: HeatHold;
  skin: HeatSkin | null;
  quench: HeatQuench;
  bath: HeatBath | null;
  tank: HeatTank | null;
  /** `null` without checks. */
  oven: HeatOven | null;
  known_points: KnownPoint[];
  hazards: string[];
  notes: string[];
  cautions: string[];
  checklists: Checklist[];
  /** Ids of the sources. */
  sources: string[];
}

/** The window, in °C of the metal. */
export interface HeatWindow {
  low_c: number | null;
  high_c: number | null;
  /** What all else is worked out for. */
  at_c: number;
  method: "grade" | "formula" | "none";
  /** Over the point where a magnet lets go, in K. */
  over_magnet_low_k: number | null;
  over_magnet_high_k: number | null;
  cross_check: HeatCrossCheck | null;
  sources: string[];
  seen: string;
  confidence: string;
  text: string;
}

/** The window by formulas, in °C. */
export interface HeatCrossCheck {
  ac3_c: number;
  ac3_low_c: number;
  ac3_high_c: number;
  low_c: number;
  high_c: number;
  agrees: boolean;
  sources: string[];
  seen: string;
  confidence: string;
  text: string;
}

/** What stands between the skin and the air. */
export interface HeatProtection {
  kind: "open" | "coated" | "foil" | "charcoal" | "atmosphere";
  /** Not to be heated in the open. */
  needed: boolean;
  text: string;
}

/** The part as it was understood. */
export interface HeatPart {
  shape: string | null;
  ruling_mm: number | null;
  mass_kg: number | null;
}

/** Minutes until the middle is hot. */
export interface HeatThrough {
  /** Of a part that scales. */
  low_min: number;
  /** Of a bright part. */
  high_min: number;
  within_k: number;
  from_c: number;
  at_least: boolean;
  sources: string[];
  seen: string;
  confidence: string;
  text: string;
}

/** Minutes to hold. */
export interface HeatHold {
  low_min: number | null;
  high_min: number | null;
  /** What the grade's data say, as printed. */
  soak: string;
  rules: HoldRule[];
  text: string;
}

/** A rule of the trade; they do not agree. */
export interface HoldRule {
  rule: string;
  low_min: number;
  high_min: number;
  sources: string[];
  seen: string;
  confidence: string;
  text: string;
}

/** What the skin loses. */
export interface HeatSkin {
  minutes: number;
  /** Depth of lost carbon in open air. */
  low_mm: number;
  high_mm: number;
  /** The least to grind off. */
  grind_mm: number;
  sources: string[];
  seen: string;
  confidence: string;
  text: string;
}

/** What it is quenched in. */
export interface HeatQuench {
  /** By the sources of the grade. */
  named: string[];
  medium: string | null;
  movement: string | null;
  fit: "named" | "between" | "sharper" | "milder" | null;
  crack_risk: "low" | "raised" | "high" | null;
  /** Of the rules for cracks. */
  sources: string[];
  text: string;
}

/** What the part does to the bath. */
export interface HeatBath {
  medium: string;
  litres: number | null;
  start_c: number;
  start_assumed: boolean;
  rise_c: number | null;
  peak_c: number | null;
  limit_c: number | null;
  needed_l: number | null;
  by_rule_l: number | null;
  by_balance_l: number | null;
  flash: HeatFlash | null;
  verdict: "enough" | "too_small" | "too_hot" | "fire_risk" | "do_not_use" | null;
  sources: string[];
  seen: string;
  confidence: string;
  text: string;
}

/** Where an oil catches fire. */
export interface HeatFlash {
  celsius: number;
  assumed: boolean;
  margin_k: number;
}

/** A tank that covers the part; inner sizes. */
export interface HeatTank {
  long_mm: number;
  wide_mm: number;
  liquid_mm: number;
  wall_mm: number;
  litres: number;
  text: string;
}

/** What the dial must show; `null` where the oven was not checked. */
export interface HeatOven {
  dial_c: number | null;
  offset_k: number | null;
  half_width_k: number | null;
  text: string;
}

/** Something whose temperature is known. */
export interface KnownPoint {
  point: string;
  celsius: number;
  half_width_k: number;
  sources: string[];
  seen: string;
  confidence: string;
  text: string;
}

/** A list to tick off. */
export interface Checklist {
  list: "oven" | "before_heating" | "before_quench" | "after";
  title: string;
  items: string[];
}

/** What is asked about a section: one of `steel` and `composition`, one shape, and the bath. */
export interface ReachQuestion {
  /** Any designation of a grade: `4140`, `EN19`. */
  steel?: string | null;
  /** Mass percent of a heat, or limits. */
  composition?: string | null;
  section: SectionInput;
  /** The bath: `oil`, `oil:mild`, `water:good`. */
  quench?: string | null;
  /** Wanted hardness on any scale: `50 HRC`, `50-54 HRC`, `650 HV min`; of a single number, at least that. */
  target?: string | null;
  /** Kind of part, for its usual hardness and its cautions: `cold chisel`. */
  part?: string | null;
  /** Units of the texts; numbers stay in mm and kg. */
  units?: "metric" | "inch";
}

/** `maybe` where the band holds it, or nobody knows. */
export type Reached = "yes" | "maybe" | "no";

/** Place of a section. */
export type SectionPlace = "skin" | "three_quarter" | "half" | "middle" | "bore";

/** The hardness from the skin to the middle, as quenched. */
export interface ReachAnswer {
  refused?: undefined;
  /** Key of the grade; `null` for a composition. */
  steel: string | null;
  understood: string[];
  /** Steel, section and bath in one line. */
  asked: string;
  verdict: string;
  say: string;
  section: ReachSection;
  quench: ReachQuench;
  method: "h-band" | "astm-a255" | "astm-a255-outside-range" | "published-range";
  basis: string;
  /** From the skin inward. */
  positions: ReachPosition[];
  /** For each place; `null` without a target. */
  target: Partial<Record<SectionPlace, Reached>> | null;
  wanted: ReachWanted | null;
  ways_out: ReachWay[];
  parts: ReachPart[];
  /** Bars of this grade on record near this size. */
  on_record: string[];
  notes: string[];
  cautions: string[];
  /** Ids of the sources. */
  sources: string[];
}

/** The section as it was understood. */
export interface ReachSection {
  shape: "round" | "tube" | "plate" | "square" | "hexagon" | "flat";
  /** The size through which the heat must leave. */
  ruling_mm: number;
  ruled_by: string;
  /** The long round whose middle cools in the same time. */
  round_mm: number;
  /** `null` without a length. */
  mass_kg: number | null;
  text: string;
}

/** The bath as it was understood. */
export interface ReachQuench {
  medium: string;
  movement: string;
  /** Severity H in 1/inch; `null` where none is published. */
  severity: ReachSpan | null;
  /** How it stands to the grade; `null` for a composition. */
  fit: "named" | "between" | "sharper" | "milder" | null;
  crack_risk: "low" | "raised" | "high" | null;
  text: string;
}

/** A middle and how far it may lie to either side. */
export interface ReachSpan {
  low: number;
  mid: number;
  high: number;
}

/** A place of the section, in HRC; an end that is `null` is not known. */
export interface ReachPosition {
  where: SectionPlace;
  name: string;
  /** Place of the end-quench bar that cools alike, in mm; `null` where no severity is published. */
  jominy_mm: ReachSpan | null;
  /** The same by conduction alone. */
  second_opinion_mm: number | null;
  low: number | null;
  mid: number | null;
  high: number | null;
  /** Some of it lies below 20 HRC, where the scale ends. */
  below_20: boolean;
  /** `band` holds 95 of 100 bars; `range` is a published one. */
  meaning: "band" | "range";
  /** Chance that at least the wanted hardness is reached; `null` for published ranges. */
  chance: number | null;
  target: Reached | null;
  shown: string;
}

/** What is wanted, in HRC. */
export interface ReachWanted {
  low: number | null;
  high: number | null;
  shown: string;
}

/** Something that can be done; what does not belong to its kind is `null`. */
export interface ReachWay {
  way: "smaller_section" | "other_grade" | "faster_quench" | "skin_only" | "lower_target";
  /** Ruling size that is sure, in mm. */
  sure_mm: number | null;
  /** Ruling size that is more likely than not, in mm. */
  likely_mm: number | null;
  /** Keys of grades. */
  grades: string[];
  medium: string | null;
  movement: string | null;
  /** Hardness that is sure, in HRC. */
  hrc: number | null;
  text: string;
}

/** Usual hardness of one zone of a kind of part. */
export interface ReachPart {
  part: string;
  zone: string;
  hrc_low: number | null;
  hrc_high: number | null;
  caution: string;
  text: string;
}

/** What a temper is asked: a temper, a target, or both. */
export interface TemperQuestion {
  /** Any designation of a grade. */
  steel?: string | null;
  /** Mass percent of a heat, or limits. */
  composition?: string | null;
  /** Temperature of the metal: `220C`; several tempers as `220C/2h, 300C/1h`. */
  at?: string | null;
  /** Time at heat of the temper, or of each temper of the plan: `2h` if left out. */
  held?: string | null;
  /** Further tempers: `300C/1h`. */
  then?: string[];
  /** Tempers that a part to be drawn back has had: `205C/2h`. */
  done?: string[];
  /** Measured as quenched: `57 HRC`. */
  asQuenched?: string | null;
  /** Wanted: `45 HRC`, `50-54 HRC`. */
  target?: string | null;
  /** Own results, the temperature as the oven's dial showed it: `53 HRC@220C/2h`. */
  learn?: string[];
  /** Checks of the oven: `240C=231.9C`, `240C=tin`. */
  oven?: string[];
  section?: SectionInput;
  /** How many times each temper is done; what the grade wants if left out. */
  times?: number | null;
  /** No time is left today for the full temper. */
  hurried?: boolean;
  units?: "metric" | "inch";
}

/** A hardness after tempering, in HRC. */
export interface AfterTemper {
  median: number;
  low: number;
  high: number;
  /** The share of results that the band is meant to hold. */
  level: number;
  /** Some of the band lies below 20 HRC. */
  below_20: boolean;
  shown: string;
}

/** One temper of a plan. */
export interface PlanStep {
  /** Of the metal, °C. */
  celsius: number;
  /** What the oven's dial shows then, °C; `null` without a check and without own results. */
  dial_c: number | null;
  /** At heat each time, h. */
  hours: number;
  times: number;
  expect: AfterTemper;
  text: string;
}

/** A place of the tempering curve, HRC. */
export interface TemperCurvePoint {
  celsius: number;
  low: number;
  median: number;
  high: number;
}

/** An own result on the curve, HRC. */
export interface OwnPoint {
  celsius: number;
  hrc: number;
  book: number;
}

/** What own results taught. */
export interface Learned {
  count: number;
  /** How much harder this steel is than the book, HRC. */
  offset_hrc: number;
  offset_sd: number;
  /** How much hotter the oven is than its dial or than its check says, K. */
  oven_k: number;
  oven_sd: number;
  points: OwnPoint[];
  text: string[];
}

/** A range of tempers that makes the steel brittle, °C. */
export interface BrittleRange {
  kind: string;
  low_c: number;
  high_c: number;
  core_low_c: number;
  core_high_c: number;
  /** Whether a temper of the answer lies in it. */
  inside: boolean;
  each: string[];
  text: string;
  sources: string[];
}

/** What one printed curve says, HRC. */
export interface TemperSheet {
  sheet: string;
  low: number | null;
  high: number | null;
  cited: Figure;
}

/** An age of the 17-4 type. */
export interface AgeOption {
  /** As in `H900`. */
  name: string;
  role: "asked" | "meets" | "harder" | "softer";
  /** There is no highest. */
  least_hrc: number | null;
  cited: Figure;
  text: string;
}

/** The hardness after tempering, or a plan for a hardness. */
export interface TemperAnswer {
  refused?: undefined;
  /** Key of the grade; `null` for a composition. */
  steel: string | null;
  understood: string[];
  verdict: string;
  /** After the tempers that were given. */
  hardness: AfterTemper | null;
  /** For the target that was given, the mildest first. */
  plan: PlanStep[];
  /** From one temper of the plan to the next, K. */
  step_k: number | null;
  /** Fall for every 10 K there, HRC. */
  fall_per_10k: number | null;
  /** For a grade that is aged. */
  ages: AgeOption[];
  method: "regression" | "regression_edge" | "sheets" | "age_table";
  basis: string[];
  curve: TemperCurvePoint[];
  sheets: TemperSheet[];
  learned: Learned | null;
  /** Before the time at heat begins, min. */
  heat_through_min: number | null;
  brittle: BrittleRange[];
  colour: string | null;
  warnings: string[];
  notes: string[];
  cautions: string[];
  sources: string[];
}

/** What the next step is asked. */
export interface NextQuestion {
  /** Any designation of a grade; without it nothing is said of tempers. */
  steel?: string | null;
  composition?: string | null;
  /** What files and instruments said, and the target. */
  evidence?: FileQuestion;
  /** `tempered` if left out and there are tempers, otherwise `quenched`. */
  stage?: "bought" | "quenched" | "tempered" | null;
  /** Tempers so far: `205C/2h`. */
  done?: string[];
  /** Own results, the temperature as the oven's dial showed it: `53 HRC@220C/2h`. */
  learn?: string[];
  /** Checks of the oven: `240C=231.9C`, `240C=tin`. */
  oven?: string[];
  /** How long a further temper is held: `2h` if left out. */
  held?: string | null;
  /** Section and bath, for what hardening gives. */
  section?: SectionInput;
  quench?: string | null;
  /** Leave out what steel and treatment promise. */
  noPrior?: boolean;
  /** The part may not be hardened again. */
  atSize?: boolean;
  /** It was heated well above its window. */
  overheated?: boolean;
  /** No time is left today for a full temper. */
  hurried?: boolean;
  units?: "metric" | "inch";
}

/** Chances of ending under, inside and over the target. */
export interface NextOdds {
  under: number;
  inside: number;
  over: number;
}

/** A temper that is advised. */
export interface AdvisedTemper {
  /** Of the metal, °C. */
  celsius: number;
  /** What the oven's dial shows then, °C; `null` without a check that reaches and without own results. */
  dial_c: number | null;
  /** How well a checked dial is known there, K. */
  dial_half_width_c: number | null;
  /** At heat each time, h. */
  hours: number;
  times: number;
  /** The hardness to expect afterwards; `null` for a short low temper. */
  expect: AfterTemper | null;
}

/** One thing that could be done. */
export interface NextOption {
  action: NextAction;
  under: number;
  inside: number;
  over: number;
  /** The chance of a good part in the end, less all prices. */
  worth: number;
  /** What may not be done is shown and never advised. */
  open: boolean;
  temper: AdvisedTemper | null;
  file: number | null;
  text: string;
  /** What the oven's dial has to show for a temper; empty where nothing is known of the oven. */
  dial: string;
  how: string;
  chances: string;
  undone: string;
  caution: string;
}

/** What can be done with a part. */
export type NextAction =
  | "accept"
  | "clear_up"
  | "stroke"
  | "read"
  | "grind"
  | "temper"
  | "snap_temper"
  | "harden"
  | "age"
  | "change_target"
  | "change_plan";

/** The next step. */
export interface NextStepAnswer {
  refused?: undefined;
  steel: string | null;
  understood: string[];
  verdict: string;
  action: NextAction;
  why: string;
  diagnosis: string;
  now: NextOdds;
  options: NextOption[];
  learned: string[];
  notes: string[];
  cautions: string[];
  sources: string[];
}

/** What was seen of a bar of unknown steel; an empty text counts as left out. */
export interface UnknownQuestion {
  magnet?: "sticks" | "weak" | "none" | "" | null;
  spark?: "none" | "straw" | "forks" | "bursts" | "spears" | "plain" | "bushy" | "" | null;
  /** An ordinary file on the bar as it was found, `bites` or `skates`; or its hardness, `28-32 HRC`. */
  found?: string | null;
  /** The skin against 5 mm deeper. */
  skin?: "same" | "hard" | "soft" | "" | null;
  /** Hardness of a 6 mm coupon from the middle after oil: `50-55 HRC`, `>60 HRC`, `<40 HRC`. */
  oil?: string | null;
  /** The same after water. */
  water?: string | null;
  /** How the coupon broke that was quenched last. */
  snap?: "bent" | "torn" | "fine" | "coarse" | "" | null;
  units?: "metric" | "inch";
}

/** What a bar of unknown steel can be. */
export interface UnknownAnswer {
  /** Only where answers contradict each other; nothing is recommended then. */
  refused?: Refusal;
  verdict: string;
  carbon: UnknownCarbon;
  /** The likeliest first; the chances add to 1. */
  families: UnknownFamily[];
  promise: UnknownPromise;
  quench: UnknownQuench;
  use: UnknownUse[];
  avoid: UnknownUse[];
  /** `null` when no test is worth its trouble. */
  next: UnknownNext | null;
  /** What to do then. */
  settled: string | null;
  clashes: UnknownClash[];
  notes: string[];
  cautions: string[];
  confidence: "high" | "medium" | "low";
  seen: string;
  /** Ids of the sources. */
  sources: string[];
  understood: string[];
}

/** Carbon in mass percent, if the bar is a plain or low-alloy steel. */
export interface UnknownCarbon {
  low: number;
  mid: number;
  high: number;
  level: number;
  /** Chance of such a steel. */
  chance: number;
  text: string;
}

/** A family of steels. */
export interface UnknownFamily {
  family: string;
  name: string;
  chance: number;
  /** Whole per cent that add to 100. */
  percent: number;
}

/** Hardness as quenched of a 6 mm section. */
export interface UnknownPromise {
  oil: UnknownHardness;
  water: UnknownHardness;
  /** Empty for a steel that a quench from a cherry red does not harden. */
  text: string;
}

/** HRC of 95 % and their middle, from 10 to 75. */
export interface UnknownHardness {
  low: number;
  mid: number;
  high: number;
}

/** The bath for parts of this bar. */
export interface UnknownQuench {
  key: "oil_first" | "oil" | "water" | "own_heat" | "neither";
  text: string;
}

/** A use, or what to keep from. */
export interface UnknownUse {
  purpose: string;
  text: string;
}

/** A test of an unknown bar. */
export type UnknownTest = "magnet" | "spark" | "found" | "skin" | "coupon_oil" | "snap" | "coupon_water";

/** The next test. */
export interface UnknownNext {
  test: UnknownTest;
  name: string;
  /** A test that was made and is to be repeated. */
  again: boolean;
  how: string;
  why: string;
  /** By how much it should lower the doubt; `null` for a test that is repeated. */
  fall_bits: number | null;
}

/** Two tests whose answers hardly go together. */
export interface UnknownClash {
  first: UnknownTest;
  second: UnknownTest;
  odds: number;
  text: string;
  /** What the bar would be without the first, and without the second. */
  without: [string, string];
  why: string[];
}

/** What is asked of a claim. */
export interface ClaimQuestion {
  /** What the paper says: `28-32 HRC`, `363 HBW`, `1000 MPa min`, `52 HRC / 544 HV`, `condition T`. */
  claim: string;
  /** Readings on the part, one entry for each instrument and place. */
  measured?: ReadingInput[];
  /** What files said; its target is not used, its readings count as measured. */
  files?: FileQuestion;
  /** Any designation of the grade that the paper names. */
  steel?: string | null;
  /** `simple`, `guarded:0.95`, `U`, `0.83U`, `3sigma`; `guarded:0.95` if left out. */
  rule?: string | null;
  /** Where it was measured. */
  place?: "skin" | "core" | null;
  /** Where the paper's number was measured; the skin if left out. */
  claimedPlace?: "skin" | "core" | null;
  units?: "metric" | "inch";
}

/** Whether a paper is right. */
export interface ClaimAnswer {
  refused?: undefined;
  claim: Claimed;
  verdict: "agrees" | "disagrees" | "not proved";
  verdict_text: string;
  /** Chance of being softer than the paper says; `null` before anything was measured. */
  under: number | null;
  inside: number | null;
  over: number | null;
  /** The rule in standard form. */
  rule: string;
  rule_text: string;
  /** The scale in which both are held against each other. */
  scale: string;
  /** The paper's limits in that scale; `null` where open. */
  low: number | null;
  high: number | null;
  /** `null` where a side is open and before anything was measured. */
  estimate: ClaimEstimate | null;
  readings: ClaimReading[];
  /** What the doubt is made of, the greatest first; shares add to 1. */
  doubt: Doubt[];
  /** The best way to settle it. */
  settle: Settle;
  /** Every way, the best first. */
  ways: Settle[];
  /** The best chance that can be had. */
  achievable: Achievable[];
  /** What the rule costs over many parts; `null` for a claim open on a side. */
  risk: ClaimRisk | null;
  /** Checks of the paper itself. */
  paper: PaperFinding[];
  steel: string | null;
  understood: string[];
  notes: string[];
  cautions: string[];
  sources: string[];
}

/** What the paper says. */
export interface Claimed {
  scale: string;
  low: number | null;
  high: number | null;
  understood: string;
  /** The step to which it rounds. */
  step: number;
  notes: Note[];
}

/** What was measured, taken together, in the scale of the answer. */
export interface ClaimEstimate {
  value: number;
  /** Standard uncertainty. */
  u: number;
  /** Ends of the 95 % band. */
  low: number;
  high: number;
  /** The claim's window over 4 u; `null` where it is open on a side. */
  capability: number | null;
  shown: string;
}

/** What readings were understood as; numbers are of the scale of the answer. */
export interface ClaimReading {
  instrument: Instrument;
  understood: string;
  values: number[];
  /** Beyond the end of the tables, which then stands in `values`. */
  beyond: "softer" | "harder" | null;
  u_random: number;
  u_shared: number;
  /** `null` in the claim's own scale. */
  u_conversion: number | null;
  assumed: boolean;
  table: string | null;
  shown: string;
}

/** What doubt can come from. */
export type DoubtSource =
  | "conversion"
  | "instrument_random"
  | "instrument_bias"
  | "operator"
  | "file"
  | "spot"
  | "rounding"
  | "expected";

/** A source of doubt. */
export interface Doubt {
  source: DoubtSource;
  u: number;
  share: number;
  /** Whole per cent that add to 100. */
  percent: number;
  text: string;
  /** Half of its width at 95 %. */
  shown: string;
}

/** A way to settle a claim. */
export interface Settle {
  method: "tester" | "known_piece" | "more_places" | "stroke" | "none" | "agree" | "ask" | "same_place";
  /** The chance that it leads to a verdict. */
  chance: number | null;
  text: string;
  why: string;
}

/** The best chance that can be had with a means. */
export interface Achievable {
  with: "measured" | "files" | "tester";
  u: number;
  chance: number;
  text: string;
}

/** What a rule costs over many parts of a process that just fills the window. */
export interface ClaimRisk {
  bad_accepted: number;
  good_rejected: number;
  text: string;
}

/** Something about the paper itself. */
export interface PaperFinding {
  code: string;
  text: string;
  /** It cannot be right, whatever is measured. */
  wrong: boolean;
}

/** What a file of parts holds. */
export interface PartsCounts {
  refused?: undefined;
  parts: number;
  /** Entries of the stories. */
  entries: number;
  /** File strokes, those of the stories among them. */
  strokes: number;
  photos: number;
}

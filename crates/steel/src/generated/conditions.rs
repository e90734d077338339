// Written by `cargo xtask tables` from crates/steel/data; edit the data files, not this.

use crate::condition::{BoltClass, BsCondition, PhAge};
use crate::source::{Cited, Confidence};
use biteband_hardness::Seen;

pub(crate) static PH: &[PhAge] = &[
    PhAge { name: "A", steps: &[], hrc_min: None, hbw_min: None, tensile_min: None, yield_min: None, note: "solution treated 1024-1052 C, rapid cool: 363 HBW max (38 HRC max recalled)", cited: Cited { sources: &["RI-174"], seen: Seen::Seen, confidence: Confidence::High } },
    PhAge { name: "H900", steps: &[(482.0, 1.0)], hrc_min: Some(40.0), hbw_min: Some(388.0), tensile_min: Some(1310.0), yield_min: Some(1170.0), note: "age seen; HRC, HBW and strengths recalled", cited: Cited { sources: &["RI-174"], seen: Seen::Part, confidence: Confidence::High } },
    PhAge { name: "H925", steps: &[(496.0, 4.0)], hrc_min: Some(38.0), hbw_min: Some(375.0), tensile_min: Some(1170.0), yield_min: Some(1070.0), note: "age seen; rest recalled", cited: Cited { sources: &["RI-174"], seen: Seen::Part, confidence: Confidence::High } },
    PhAge { name: "H1025", steps: &[(552.0, 4.0)], hrc_min: Some(35.0), hbw_min: Some(331.0), tensile_min: Some(1070.0), yield_min: Some(1000.0), note: "age seen; rest recalled", cited: Cited { sources: &["RI-174"], seen: Seen::Part, confidence: Confidence::High } },
    PhAge { name: "H1075", steps: &[(579.0, 4.0)], hrc_min: Some(32.0), hbw_min: Some(311.0), tensile_min: Some(1000.0), yield_min: Some(860.0), note: "age, 311 HBW and 1000 MPa seen; HRC and yield recalled (31 in some printings)", cited: Cited { sources: &["RI-174", "IL-174"], seen: Seen::Part, confidence: Confidence::Medium } },
    PhAge { name: "H1100", steps: &[(593.0, 4.0)], hrc_min: Some(31.0), hbw_min: Some(302.0), tensile_min: Some(965.0), yield_min: Some(795.0), note: "age seen; rest recalled", cited: Cited { sources: &["RI-174"], seen: Seen::Part, confidence: Confidence::Medium } },
    PhAge { name: "H1150", steps: &[(621.0, 4.0)], hrc_min: Some(28.0), hbw_min: Some(277.0), tensile_min: Some(930.0), yield_min: Some(725.0), note: "age, 277 HBW and 930 MPa seen; HRC and yield recalled", cited: Cited { sources: &["RI-174", "IL-174"], seen: Seen::Part, confidence: Confidence::High } },
    PhAge { name: "H1150-M", steps: &[(760.0, 2.0), (621.0, 4.0)], hrc_min: Some(24.0), hbw_min: Some(255.0), tensile_min: Some(795.0), yield_min: Some(520.0), note: "age seen; rest recalled", cited: Cited { sources: &["RI-174"], seen: Seen::Part, confidence: Confidence::Medium } },
];

pub(crate) static BS: &[BsCondition] = &[
    BsCondition { letter: 'R', hbw: (201.0, Some(255.0)), tensile: (700.0, Some(850.0)), cited: Cited { sources: &["BS970-83"], seen: Seen::Seen, confidence: Confidence::High } },
    BsCondition { letter: 'S', hbw: (223.0, Some(277.0)), tensile: (775.0, Some(925.0)), cited: Cited { sources: &["BS970-83"], seen: Seen::Seen, confidence: Confidence::High } },
    BsCondition { letter: 'T', hbw: (248.0, Some(302.0)), tensile: (850.0, Some(1000.0)), cited: Cited { sources: &["BS970-83"], seen: Seen::Seen, confidence: Confidence::High } },
    BsCondition { letter: 'U', hbw: (269.0, Some(331.0)), tensile: (925.0, Some(1075.0)), cited: Cited { sources: &["BS970-83"], seen: Seen::Seen, confidence: Confidence::High } },
    BsCondition { letter: 'V', hbw: (293.0, Some(352.0)), tensile: (1000.0, Some(1150.0)), cited: Cited { sources: &["BS970-83"], seen: Seen::Seen, confidence: Confidence::High } },
    BsCondition { letter: 'W', hbw: (311.0, Some(375.0)), tensile: (1075.0, Some(1225.0)), cited: Cited { sources: &["BS970-83"], seen: Seen::Seen, confidence: Confidence::High } },
    BsCondition { letter: 'X', hbw: (341.0, Some(401.0)), tensile: (1150.0, Some(1300.0)), cited: Cited { sources: &["BS970-83"], seen: Seen::Seen, confidence: Confidence::High } },
    BsCondition { letter: 'Z', hbw: (444.0, None), tensile: (1550.0, None), cited: Cited { sources: &["BS970-83"], seen: Seen::Seen, confidence: Confidence::High } },
];

pub(crate) static BOLTS: &[BoltClass] = &[
    BoltClass { name: "4.6", tensile: 400.0, cited: Cited { sources: &["iso-898-1"], seen: Seen::Recalled, confidence: Confidence::High } },
    BoltClass { name: "4.8", tensile: 400.0, cited: Cited { sources: &["iso-898-1"], seen: Seen::Recalled, confidence: Confidence::High } },
    BoltClass { name: "5.6", tensile: 500.0, cited: Cited { sources: &["iso-898-1"], seen: Seen::Recalled, confidence: Confidence::High } },
    BoltClass { name: "5.8", tensile: 500.0, cited: Cited { sources: &["iso-898-1"], seen: Seen::Recalled, confidence: Confidence::High } },
    BoltClass { name: "6.8", tensile: 600.0, cited: Cited { sources: &["iso-898-1"], seen: Seen::Recalled, confidence: Confidence::High } },
    BoltClass { name: "8.8", tensile: 800.0, cited: Cited { sources: &["iso-898-1"], seen: Seen::Recalled, confidence: Confidence::High } },
    BoltClass { name: "9.8", tensile: 900.0, cited: Cited { sources: &["iso-898-1"], seen: Seen::Recalled, confidence: Confidence::High } },
    BoltClass { name: "10.9", tensile: 1000.0, cited: Cited { sources: &["iso-898-1"], seen: Seen::Recalled, confidence: Confidence::High } },
    BoltClass { name: "12.9", tensile: 1200.0, cited: Cited { sources: &["iso-898-1"], seen: Seen::Recalled, confidence: Confidence::High } },
];

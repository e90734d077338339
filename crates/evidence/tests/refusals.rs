//! Every refusal, word for word.

#![expect(clippy::unwrap_used, reason = "a helper that fails is a test that fails")]

use biteband_evidence::{
    Answering, Belief, Error, FileSet, FileTest, Group, Instrument, Level, Outcome, Prior, Proof,
    Readings, Stroke, Target,
};

fn refused<T: std::fmt::Debug>(result: Result<T, Error>, code: &str, text: &str) {
    let error = result.unwrap_err();
    assert_eq!(error.to_string(), text);
    assert_eq!(error.code(), code);
}

#[test]
fn refusal_no_files() {
    refused(
        FileSet::new(&[]),
        "evidence.no_files",
        "the set holds no file, at least 1 is needed: give the grades marked on the files",
    );
}

#[test]
fn refusal_too_many_files() {
    let grades: Vec<f64> = (0..25).map(|n| 30.0 + f64::from(n)).collect();
    refused(
        FileSet::new(&grades),
        "evidence.too_many_files",
        "the set holds 25 files, at most 24 are kept apart: leave out files that were not used",
    );
    assert!(FileSet::new(&grades[..24]).is_ok());
}

#[test]
fn refusal_equal_grades() {
    refused(
        FileSet::new(&[50.0, 60.0, 50.0]),
        "evidence.equal_grades",
        "two files are marked 50 HRC, grades must differ by 0.01 HRC or more: count the strokes of both as one file's or give each its measured grade",
    );
}

#[test]
fn refusal_out_of_range() {
    let code = "evidence.out_of_range";
    let file = FileSet::trade().find(60.0).unwrap();
    refused(
        FileSet::new(&[29.9]),
        code,
        "a file's grade is 29.9 HRC, the range is 30 to 70 HRC: leave out a file marked otherwise, since its bite is not described here",
    );
    refused(
        FileSet::trade().with_tolerance(5.5),
        code,
        "the tolerance of the grades is 5.5 HRC, the range is 0 to 5 HRC: use 1 HRC if it is not known",
    );
    refused(
        Proof::new(file, 72.5, Outcome::Bite),
        code,
        "the known piece is 72.5 HRC, the range is 20 to 72 HRC: prove the file on a piece near the file's own grade",
    );
    refused(
        Prior::normal(19.0, 2.0),
        code,
        "the expected hardness is 19 HRC, the range is 20 to 72 HRC: leave it out to let the files speak alone",
    );
    refused(
        Prior::normal(60.0, 0.2),
        code,
        "the standard deviation of the expected hardness is 0.2 HRC, the range is 0.3 to 20 HRC: leave it out to let the files speak alone",
    );
    refused(
        Target::at_least(f64::NAN),
        code,
        "a limit of the target is NaN HRC, the range is 10 to 75 HRC: give a target that files can speak about",
    );
    refused(
        Belief::flat(5.0, 60.0),
        code,
        "a limit of the belief is 5 HRC, the range is 10 to 80 HRC: give limits inside the axis",
    );
    refused(
        Level::new(95.0),
        code,
        "the level of an interval is 95, the range is 0.5 to 0.999: use 0.95 if in doubt",
    );
    for infinite in [f64::INFINITY, f64::NEG_INFINITY, f64::NAN] {
        assert_eq!(FileSet::new(&[infinite]).unwrap_err().code(), code);
        assert_eq!(Prior::normal(infinite, 1.0).unwrap_err().code(), code);
        assert_eq!(Prior::normal(50.0, infinite).unwrap_err().code(), code);
        assert_eq!(Proof::new(file, infinite, Outcome::Bite).unwrap_err().code(), code);
    }
}

#[test]
fn refusal_no_such_file() {
    refused(
        FileSet::trade().find(58.0),
        "evidence.no_such_file",
        "no file of the set is marked 58 HRC, only grades of the set can be stroked: add the file to the set",
    );
}

#[test]
fn refusal_foreign_file() {
    let file = FileSet::trade().find(65.0).unwrap();
    let small = FileTest::new(FileSet::new(&[50.0, 60.0]).unwrap());
    let text =
        "the stroke names file 5 counted from 0, the set holds 2: take the file from this set";
    refused(small.clone().with_stroke(file, Outcome::Bite), "evidence.foreign_file", text);
    let proof = Proof::new(file, 60.0, Outcome::Bite).unwrap();
    refused(small.with_proof(proof), "evidence.foreign_file", text);
}

#[test]
fn refusal_too_many_strokes() {
    let file = FileSet::trade().find(55.0).unwrap();
    let mut test = FileTest::default();
    for _ in 0..99 {
        test = test.with_stroke(file, Outcome::Bite).unwrap();
    }
    refused(
        test.clone().with_stroke(file, Outcome::Bite),
        "evidence.too_many_strokes",
        "the file marked 55 HRC has more than 99 strokes, more teach nothing: leave out the rest",
    );
    // The full file is no longer tried, the others are.
    assert_eq!(test.assess(None).unwrap().advice().trials().len(), 5);
}

#[test]
fn refusal_too_many_spots() {
    let file = FileSet::trade().find(55.0).unwrap();
    let mut test = FileTest::default();
    for spot in [7, 9, 200, 3] {
        test = test.with(Stroke::new(file, Outcome::Bite).on_spot(spot)).unwrap();
    }
    assert!(test.clone().with(Stroke::new(file, Outcome::Bite).on_spot(200)).is_ok());
    refused(
        test.with_stroke(file, Outcome::Bite),
        "evidence.too_many_spots",
        "the strokes lie on more than 4 spots, at most 4 are kept apart: assess the part in two goes",
    );
}

#[test]
fn refusal_slight_in_yes_no() {
    let file = FileSet::trade().find(55.0).unwrap();
    let sentence = "a slight bite of the file marked 55 HRC stands among yes or no answers, which are bites and skates: answer three ways or decide the stroke";
    let test = FileTest::default().with_answering(Answering::YesNo);
    let stroked = test.clone().with_stroke(file, Outcome::Slight).unwrap();
    refused(stroked.belief(), "evidence.slight_in_yes_no", sentence);
    refused(stroked.assess(None), "evidence.slight_in_yes_no", sentence);
    let proof = Proof::new(file, 55.0, Outcome::Slight).unwrap();
    refused(test.with_proof(proof).unwrap().belief(), "evidence.slight_in_yes_no", sentence);
}

#[test]
fn refusal_upside_down() {
    refused(
        Target::between(54.0, 50.0),
        "evidence.target_upside_down",
        "the target runs from 54 to 50 HRC, its lower limit must be below its upper limit: exchange the limits or widen them",
    );
    refused(
        Belief::flat(60.0, 60.0),
        "evidence.belief_upside_down",
        "the belief runs from 60 to 60 HRC, its lower limit must be below its upper limit: exchange the limits or widen them",
    );
}

#[test]
fn refusal_nothing_left() {
    let soft = Belief::flat(20.0, 30.0).unwrap();
    refused(
        soft.combined(&Belief::flat(50.0, 60.0).unwrap()),
        "evidence.nothing_left",
        "the two beliefs share no possible hardness, one of them must be wrong: check the evidence behind each",
    );
}

#[test]
fn refusal_no_readings() {
    refused(
        Group::new(Instrument::Leeb, &[], 1.0, 1.0),
        "evidence.no_readings",
        "the group holds no reading, at least 1 is needed: leave the instrument out or read the part",
    );
    refused(
        Group::against(50.0, 0.5, &[], &[52.0], 0.5),
        "evidence.no_readings",
        "the group holds no reading, at least 1 is needed: leave the instrument out or read the part",
    );
}

#[test]
fn refusal_too_many_readings() {
    refused(
        Group::new(Instrument::Leeb, &[50.0; 31], 1.0, 1.0),
        "evidence.too_many_readings",
        "the group holds 31 readings, more than 30 teach nothing: leave out the rest",
    );
    assert!(Group::new(Instrument::Leeb, &[50.0; 30], 1.0, 1.0).is_ok());
}

#[test]
fn refusal_too_many_groups() {
    let group = Group::new(Instrument::Leeb, &[50.0], 1.0, 1.0).unwrap();
    let mut readings = Readings::new();
    for _ in 0..8 {
        readings = readings.with(group.clone()).unwrap();
    }
    refused(
        readings.with(group),
        "evidence.too_many_groups",
        "the readings come from more than 8 instruments, at most 8 are kept apart: leave out the least sure",
    );
}

#[test]
fn refusal_readings_out_of_range() {
    let code = "evidence.out_of_range";
    let group = |value, random, shared| Group::new(Instrument::Other, &[value], random, shared);
    let reading = "check the number and its scale, since softer and harder parts lie off the axis of files and readings";
    for (value, text) in [(14.9, "14.9"), (70.5, "70.5")] {
        refused(
            group(value, 0.5, 0.5),
            code,
            &format!("a reading is {text} HRC, the range is 15 to 70 HRC: {reading}"),
        );
    }
    refused(
        Group::against(50.0, 0.5, &[40.0], &[62.5], 0.5),
        code,
        &format!("a reading is 72.5 HRC, the range is 15 to 70 HRC: {reading}"),
    );
    refused(
        group(50.0, 0.05, 0.5),
        code,
        "the standard uncertainty of a reading is 0.05 HRC, the range is 0.1 to 5 HRC: give the scatter of repeats on one piece",
    );
    refused(
        group(50.0, 0.5, 10.5),
        code,
        "the standard uncertainty of the instrument is 10.5 HRC, the range is 0 to 10 HRC: leave out an instrument that is off by more",
    );
    refused(
        group(50.0, 0.5, 0.5).unwrap().with_conversion(0, 0.2),
        code,
        "the standard uncertainty of the conversion is 0.2 HRC, the range is 0.3 to 10 HRC: leave it out when the instrument reads HRC",
    );
    refused(
        Readings::new().with_spot(0.2),
        code,
        "the standard deviation from spot to spot is 0.2 HRC, the range is 0.3 to 3 HRC: use 0.5 HRC if in doubt",
    );
    refused(
        Readings::new().with_slips(0.06),
        code,
        "the chance of a mistyped reading is 0.06, the range is 0 to 0.05: use 0.01 if in doubt",
    );
}

#[test]
fn refusal_readings_that_exclude_each_other_without_slips() {
    let group = Group::new(Instrument::Other, &[20.0, 60.0], 0.3, 0.3).unwrap();
    let sure = Readings::new().with_slips(0.0).unwrap().with(group.clone()).unwrap();
    assert_eq!(sure.belief(Prior::flat()), Err(Error::NothingLeft));
    assert!(Readings::new().with(group).unwrap().belief(Prior::flat()).is_ok());
}

//! `biteband part`: files of parts, hostile ones among them.

use std::fs::{self, File};
use std::path::{Path, PathBuf};

use crate::common::{Run, run};
use serde_json::{Value, json};

/// Parts as the first version wrote them.
const CARDS: &str = include_str!("../../../bench/tests/stored/cards-1.json");

fn folder(name: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    // What an earlier run left would pass for what this one writes.
    let _: std::io::Result<()> = fs::remove_dir_all(&folder);
    fs::create_dir_all(&folder).unwrap();
    folder
}

/// Runs a command of parts in a folder.
fn part(folder: &Path, arguments: &[&str]) -> Run {
    run(&[&["part"], arguments].concat(), b"", folder)
}

fn part_json(folder: &Path, arguments: &[&str]) -> Run {
    run(&[&["--json", "part"], arguments].concat(), b"", folder)
}

fn document(path: &Path) -> Value {
    serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap()
}

fn names(folder: &Path) -> Vec<String> {
    let entries = fs::read_dir(folder).unwrap();
    let mut names: Vec<String> =
        entries.map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned()).collect();
    names.sort();
    names
}

/// The sample with something changed.
fn changed(change: impl FnOnce(&mut Value)) -> String {
    let mut cards: Value = serde_json::from_str(CARDS).unwrap();
    change(&mut cards);
    cards.to_string()
}

#[test]
fn a_part_is_begun_shown_checked_and_made_again() {
    let folder = folder("part-new");
    let done = part(
        &folder,
        &[
            "new",
            "--name",
            "Stern-bush drift",
            "--steel",
            "W1",
            "--round",
            "30mm",
            "--length",
            "160mm",
            "--target",
            "52 HRC min",
            "--zone",
            "struck end=45 HRC max",
            "--origin",
            "new bar",
            "--kind",
            "drift",
            "--notes",
            "Softer than the hammer.",
            "--out",
            "drift.json",
        ],
    );
    assert_eq!((done.code, done.out.as_str()), (0, "drift.json\n"), "{}", done.err);
    let made = document(&folder.join("drift.json"));
    assert_eq!((&made["format"], &made["schema"]), (&json!("biteband-parts"), &json!(1)));
    let card = &made["parts"][0];
    assert_eq!(card["name"], "Stern-bush drift");
    assert_eq!(card["steel"]["name"], "W1");
    assert_eq!(
        card["section"],
        json!({"shape":"round","size":"30mm","second":"","length":"160mm"})
    );
    assert_eq!(card["zones"], json!([{"place":"struck end","target":"45 HRC max"}]));
    assert_eq!(card["tempering"]["stage"], "bought");
    // A version 4 id of RFC 9562: 36 signs, the version in the 15th.
    let id = card["id"].as_str().unwrap();
    assert!(id.len() == 36 && id.as_bytes()[14] == b'4', "{id}");
    assert!(card["created"].as_str().unwrap().ends_with('Z'), "{card}");

    let shown = part(&folder, &["show", "drift.json"]);
    for says in
        ["Stern-bush drift", "30mm round, 160mm long", "struck end: 45 HRC max", "as bought"]
    {
        assert!(shown.out.contains(says), "{says}: {}", shown.out);
    }
    let check = part_json(&folder, &["check", "drift.json"]);
    assert_eq!(check.code, 0);
    assert_eq!(check.json(), json!({"valid":true,"parts":1,"entries":0,"strokes":0,"photos":0}));

    fs::write(folder.join("cards.json"), CARDS).unwrap();
    let like = ["new", "--name", "Pawl 2", "--from", "cards.json", "--part", "capstan PAWL"];
    let second = part_json(&folder, &like).json();
    let card = &second["parts"][0];
    assert_eq!(
        (&card["steel"]["name"], &card["recipe_of"]),
        (&json!("4140"), &json!("Capstan pawl"))
    );
    assert_eq!(card["recipe"].as_array().unwrap().len(), 3);
    assert_eq!((&card["story"], &card["files"]["strokes"]), (&json!([]), &json!([])));
    // Without --part it is not clear which of the two.
    let which = part_json(&folder, &["new", "--name", "x", "--from", "cards.json"]).refused(2);
    assert_eq!(which["code"], "bench.missing_part");
    assert!(which["allowed"].as_str().unwrap().contains("Shaft bar"), "{which}");
}

#[test]
fn flats_and_tubes_are_read_as_the_page_holds_them() {
    let folder = folder("part-section");
    for (option, sizes, section) in [
        ("--flat", "60mm,12mm", json!({"shape":"flat","size":"12mm","second":"60mm","length":""})),
        ("--tube", "40mm,20mm", json!({"shape":"tube","size":"40mm","second":"20mm","length":""})),
        ("--hex", "24mm", json!({"shape":"hexagon","size":"24mm","second":"","length":""})),
    ] {
        let made = part_json(&folder, &["new", "--name", "x", option, sizes]).json();
        assert_eq!(made["parts"][0]["section"], section);
    }
}

#[test]
fn what_cannot_be_read_is_refused_before_anything_is_written() {
    let folder = folder("part-new-refused");
    fs::write(folder.join("there.json"), "mine").unwrap();
    let long = "x".repeat(201);
    for (arguments, exit, code) in [
        (&["--name", "x", "--round", "50"][..], 2, "bench.unreadable_unit"),
        (&["--name", "x", "--target", "52"], 1, "bench.target_not_a_range"),
        (&["--name", "x", "--zone", "struck end"], 2, "cli.zone"),
        (&["--name", "x", "--tube", "20mm,25mm"], 1, "section.wall"),
        (&["--name", &long], 1, "bench.parts_too_long"),
        (&["--name", "bell\u{7}"], 1, "bench.parts_control"),
        (&["--name", "x", "--out", "there.json"], 2, "cli.file_exists"),
    ] {
        let done = part_json(&folder, &[&["new"], arguments].concat());
        let refused = done.refused(exit);
        assert_eq!(refused["code"], code, "{arguments:?}");
    }
    assert_eq!(names(&folder), ["there.json"]);
    assert_eq!(fs::read_to_string(folder.join("there.json")).unwrap(), "mine");
    let nowhere = part(&folder, &["new", "--name", "x", "--out", "no/such/folder.json"]);
    assert_eq!(nowhere.code, 3, "{}", nowhere.err);
    assert_eq!(part(&folder, &["new"]).code, 2);
}

#[test]
fn parts_are_shown_as_a_list_one_by_one_as_text_and_as_a_table() {
    let folder = folder("part-show");
    fs::write(folder.join("cards.json"), CARDS).unwrap();
    let list = part(&folder, &["show", "cards.json"]);
    assert!(list.out.starts_with("Capstan pawl: "), "{}", list.out);
    assert!(list.out.contains("Shaft bar: not proved"), "{}", list.out);
    assert!(list.out.contains("paper says 28-32 HRC"), "{}", list.out);
    let one = part(&folder, &["show", "cards.json", "--part", "Capstan pawl", "--offset", "840"]);
    // 2026-11-10T13:40:00Z is the 11th on the islands where the day begins.
    assert!(one.out.contains("11 Nov 2026 Hardened: 855 °C"), "{}", one.out);
    // What another version said is said again.
    assert!(one.out.contains("Said by Biteband 0.1.0 with data 2026.1"), "{}", one.out);
    assert!(
        one.out.contains("Said then: 53 – 62 HRC.") || one.out.contains("says the same"),
        "{}",
        one.out
    );
    let text = part(&folder, &["show", "cards.json", "--part", "Capstan pawl", "--text"]);
    assert!(text.out.starts_with("PART: Capstan pawl\n\nWHAT IT IS\n"), "{}", text.out);
    let table = part(&folder, &["show", "cards.json", "--csv"]);
    assert!(table.out.starts_with("part,id,date,kind,what,said,scale,low,high,app,data\r\n"));
    // Three entries, one answer by files, one about the paper.
    assert_eq!(table.out.lines().count(), 6, "{}", table.out);
    let shown = part_json(&folder, &["show", "cards.json"]).json();
    assert_eq!(shown["parts"][1]["said"][0]["of"], "claim");
    assert_eq!(shown["parts"][0]["story"][0]["entry"], Value::Null);
    let piped = run(&["part", "check", "-"], CARDS.as_bytes(), &folder);
    assert_eq!(piped.out, "- is valid: 2 parts, 3 entries of history, 5 file strokes, 1 photo.\n");
    let ghost = part_json(&folder, &["show", "cards.json", "--part", "ghost"]).refused(2);
    assert_eq!(ghost["code"], "bench.unknown_part");
    assert_eq!(part(&folder, &["show", "cards.json", "--csv", "--text"]).code, 2);
    assert_eq!(part(&folder, &["show", "cards.json", "--offset", "9999"]).code, 2);
}

#[test]
fn sheets_are_drawn_for_both_papers() {
    let folder = folder("part-print");
    fs::write(folder.join("cards.json"), CARDS).unwrap();
    for (paper, width) in [("A4", "210mm"), ("letter", "215.9mm")] {
        let one = ["print", "cards.json", "--part", "Capstan pawl", "--paper", paper];
        let done = part(&folder, &one);
        assert_eq!((done.code, done.err.as_str()), (0, ""));
        let read = roxmltree::Document::parse(&done.out).unwrap();
        assert_eq!(read.root_element().attribute("width"), Some(width));
    }
    let all = part(&folder, &["print", "cards.json", "--out", "cards.svg"]);
    assert_eq!(all.out, "cards-1.svg\ncards-2.svg\n");
    let page = part(&folder, &["print", "cards.json", "--format", "html"]);
    assert_eq!(page.out.matches("<svg").count(), 2);
}

#[test]
fn files_are_joined_and_brought_into_one_form() {
    let folder = folder("part-export");
    fs::write(folder.join("cards.json"), CARDS).unwrap();
    let other = changed(|cards| {
        cards["parts"][0]["notes"] = json!("Something else.");
        cards["parts"].as_array_mut().unwrap().truncate(1);
    });
    fs::write(folder.join("other.json"), other).unwrap();
    let done =
        part(&folder, &["export", "cards.json", "other.json", "cards.json", "--out", "all.json"]);
    assert_eq!((done.code, done.out.as_str()), (0, "all.json\n"), "{}", done.err);
    let all = document(&folder.join("all.json"));
    let names: Vec<&str> = all["parts"]
        .as_array()
        .unwrap()
        .iter()
        .map(|card| card["name"].as_str().unwrap())
        .collect();
    assert_eq!(names, ["Capstan pawl", "Shaft bar", "Capstan pawl (imported)"]);
    assert_eq!(part(&folder, &["check", "all.json"]).code, 0);
    // Once more is the same.
    let again = part_json(&folder, &["export", "all.json", "cards.json"]).json();
    assert_eq!(again["parts"], all["parts"]);
    let one = part_json(&folder, &["export", "all.json", "--part", "Shaft bar"]).json();
    assert_eq!(one["parts"].as_array().unwrap().len(), 1);
    let table = part(&folder, &["export", "all.json", "--csv", "--out", "all.csv"]);
    assert_eq!((table.code, table.out.as_str()), (0, "all.csv\n"));
    assert!(fs::read_to_string(folder.join("all.csv")).unwrap().starts_with("part,id,"));
    let over = part_json(&folder, &["export", "cards.json", "--out", "all.json"]).refused(2);
    assert_eq!(over["code"], "cli.file_exists");
}

#[test]
fn an_import_is_previewed_and_done_once() {
    let folder = folder("part-import");
    fs::write(folder.join("cards.json"), CARDS).unwrap();
    let into = ["import", "cards.json", "--into", "shop.json"];
    let dry = part(&folder, &[&into[..], &["--dry-run"]].concat());
    assert!(dry.out.contains("New: Capstan pawl (c0ffee00-"), "{}", dry.out);
    assert!(dry.out.ends_with("2 would be added, 0 would be replaced.\n"), "{}", dry.out);
    assert_eq!(names(&folder), ["cards.json"]);
    let done = part(&folder, &into);
    assert!(done.out.ends_with("2 were added, 0 were replaced.\n"), "{}", done.out);
    let first = fs::read(folder.join("shop.json")).unwrap();
    let again = part(&folder, &into);
    assert!(again.out.ends_with("Nothing was to be done.\n"), "{}", again.out);
    assert_eq!(fs::read(folder.join("shop.json")).unwrap(), first);

    let grown = changed(|cards| {
        cards["parts"][0]["notes"] = json!("Chamfer the nose.\nFit to the wheel. Oil it.");
    });
    fs::write(folder.join("cards.json"), grown).unwrap();
    let newer = part_json(&folder, &into).json();
    assert_eq!(newer["cards"][0]["fate"], "newer");
    assert_eq!(
        (&newer["stored"], &newer["replaced"], &newer["kept"]),
        (&json!(1), &json!(1), &Value::Null)
    );

    let other = changed(|cards| cards["parts"][0]["notes"] = json!("Something else."));
    fs::write(folder.join("cards.json"), other).unwrap();
    let before = fs::read(folder.join("shop.json")).unwrap();
    let conflict = part(&folder, &[&into[..], &["--dry-run"]].concat());
    assert!(conflict.out.contains("Differs: Capstan pawl"), "{}", conflict.out);
    let words: Vec<&str> = conflict.out.split_whitespace().collect();
    assert!(words.join(" ").contains("Oil it. | in the file Something else."), "{words:?}");
    let mine = part(&folder, &[&into[..], &["--conflict", "mine"]].concat());
    assert!(mine.out.ends_with("Nothing was to be done.\n"), "{}", mine.out);
    assert_eq!(fs::read(folder.join("shop.json")).unwrap(), before);

    let both = part_json(&folder, &into).json();
    assert_eq!((&both["stored"], &both["replaced"]), (&json!(1), &json!(0)));
    assert_eq!(part_json(&folder, &into).json()["stored"], 0, "once more does nothing");
    let shop = document(&folder.join("shop.json"));
    assert_eq!(shop["parts"][2]["name"], "Capstan pawl (imported)");
    assert!(shop["parts"][0]["notes"].as_str().unwrap().ends_with("Oil it."));
}

#[test]
fn what_is_replaced_in_a_conflict_is_kept_beside() {
    let folder = folder("part-theirs");
    fs::write(folder.join("shop.json"), CARDS).unwrap();
    for (place, note) in ["Something else.", "And else again."].into_iter().enumerate() {
        let other = changed(|cards| cards["parts"][0]["notes"] = json!(note));
        fs::write(folder.join("other.json"), other).unwrap();
        let done =
            part(&folder, &["import", "other.json", "--into", "shop.json", "--conflict", "theirs"]);
        let kept = ["shop.before-import.json", "shop.before-import-2.json"][place];
        assert!(done.out.ends_with(&format!("is kept in {kept}.\n")), "{}", done.out);
        assert_eq!(document(&folder.join("shop.json"))["parts"][0]["notes"], note);
        assert_eq!(part(&folder, &["check", kept]).code, 0);
    }
    let old = document(&folder.join("shop.before-import.json"));
    assert_eq!(old["parts"][0]["notes"], "Chamfer the nose.\nFit to the wheel.");
    assert_eq!(names(&folder).len(), 4, "nothing else is left behind: {:?}", names(&folder));
}

/// Tries to check and to import a file; both refuse it, and the file that was to take it stays as it is.
#[track_caller]
fn hostile(folder: &Path, code: &str) {
    let check = part_json(folder, &["check", "hostile.json"]).refused(1);
    assert_eq!(check["code"], code, "{check}");
    assert!(!check["instead"].as_str().unwrap().is_empty(), "{check}");
    let import = ["import", "hostile.json", "--into", "shop.json", "--conflict", "theirs"];
    let import = part_json(folder, &import).refused(1);
    assert_eq!(import["code"], code);
    assert_eq!(fs::read_to_string(folder.join("shop.json")).unwrap(), CARDS);
    assert_eq!(names(folder), ["hostile.json", "shop.json"]);
}

#[test]
fn hostile_files_are_refused_and_change_nothing() {
    let folder = folder("part-hostile");
    let path = folder.join("hostile.json");
    fs::write(folder.join("shop.json"), CARDS).unwrap();

    // A gigabyte, of which the disk holds nothing.
    File::create(&path).unwrap().set_len(1 << 30).unwrap();
    hostile(&folder, "bench.parts_too_large");

    for (text, code) in [
        ("[".repeat(100_000), "bench.parts_too_deep"),
        ("{\"parts\":".repeat(100_000), "bench.parts_too_deep"),
        (changed(|cards| cards["schema"] = json!(2)), "bench.parts_newer"),
        (changed(|cards| cards["schema"] = json!(0)), "bench.parts_no_version"),
        (changed(|cards| cards["format"] = json!("x")), "bench.parts_other_format"),
        (changed(|cards| cards["parts"][0]["name"] = json!(7)), "bench.parts_shape"),
        (
            changed(|cards| cards["parts"][0]["files"]["strokes"][0]["file"] = json!("55")),
            "bench.parts_shape",
        ),
        (changed(|cards| cards["parts"][0]["nmae"] = json!("x")), "bench.parts_field"),
        (changed(|cards| cards["parts"][1]["id"] = json!("../../shop")), "bench.parts_id"),
        (
            changed(|cards| cards["parts"][0]["name"] = json!("\u{1b}]0;x\u{7}")),
            "bench.parts_control",
        ),
        (
            changed(|cards| cards["parts"][0]["photos"][0]["media_type"] = json!("image/jpeg")),
            "bench.parts_photo",
        ),
    ] {
        fs::write(&path, text).unwrap();
        hostile(&folder, code);
    }
    fs::write(&path, b"\xFF\xFE{\x00}\x00").unwrap();
    hostile(&folder, "bench.parts_not_text");
}

#[test]
fn a_file_that_is_cut_off_anywhere_changes_nothing() {
    let folder = folder("part-cut");
    fs::write(folder.join("shop.json"), CARDS).unwrap();
    for cut in (97..CARDS.trim_end().len()).step_by(97) {
        fs::write(folder.join("hostile.json"), &CARDS.as_bytes()[..cut]).unwrap();
        let import = part_json(&folder, &["import", "hostile.json", "--into", "shop.json"]);
        let code = import.refused(1)["code"].clone();
        // A cut through a letter of several bytes is no text any more.
        assert!(code == "bench.parts_cut" || code == "bench.parts_not_text", "{cut}: {code}");
        assert_eq!(fs::read_to_string(folder.join("shop.json")).unwrap(), CARDS);
    }
    assert_eq!(names(&folder), ["hostile.json", "shop.json"]);
}

#[test]
fn a_target_that_is_damaged_stays_as_it_is() {
    let folder = folder("part-damaged");
    fs::write(folder.join("cards.json"), CARDS).unwrap();
    fs::write(folder.join("shop.json"), "{\"half\":").unwrap();
    let done = part_json(&folder, &["import", "cards.json", "--into", "shop.json"]).refused(1);
    assert_eq!(done["code"], "bench.parts_cut");
    assert_eq!(fs::read_to_string(folder.join("shop.json")).unwrap(), "{\"half\":");
    let missing = part(&folder, &["check", "missing.json"]);
    assert_eq!(missing.code, 3);
    assert!(missing.err.contains("missing.json cannot be opened"), "{}", missing.err);
    let folder_as_file = part(&folder, &["check", "."]);
    assert_eq!(folder_as_file.code, 3, "{}", folder_as_file.err);
}

#[test]
fn scripts_in_names_are_text() {
    let folder = folder("part-script");
    let name = "<script>alert(1)</script>";
    let text = changed(|cards| {
        for place in ["name", "notes"] {
            cards["parts"][0][place] = json!(name);
        }
    });
    fs::write(folder.join("cards.json"), text).unwrap();
    assert_eq!(part(&folder, &["check", "cards.json"]).code, 0);
    let shown = part(&folder, &["show", "cards.json", "--part", name]);
    assert!(shown.out.starts_with(name), "{}", shown.out);
    let page = part(&folder, &["print", "cards.json", "--format", "html"]);
    assert!(!page.out.contains("<script") && page.out.contains("&lt;script&gt;"), "{}", page.out);
}

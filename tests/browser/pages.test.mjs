// The work that is done on the pages: by touch, by keyboard alone, and the worked cases of the bench.
//
// Expected numbers are those of the printed tables and of the file-test model, each named beside its check.
import assert from "node:assert/strict";
import { test } from "node:test";
import {
  BRACKET, ask, button, field, fileKey, fold, hasFocus, plain, press, says, stroke, tabTo, tapOrClick, textOf,
  typeOnPad,
} from "./hands.mjs";
import { reload, stage, until } from "./lib.mjs";

const { show } = stage();

// The chips of the number that is typed; those of the scales shown have the same names.
const scaleOfNumber = (page, name) =>
  page.getByRole("group", { name: "Scale of the number" }).getByRole("button", { name, exact: true });

async function band(page) {
  const said = await textOf(page, ".verdict .num");
  const found = /^(\d+) – (\d+) HRC$/.exec(said);
  assert.ok(found, said);
  return { low: Number(found[1]), high: Number(found[2]), width: found[2] - found[1] };
}

async function row(page, name) {
  const rows = page.getByRole("row").filter({ has: page.getByRole("rowheader", { name }) });
  return plain(await rows.first().innerText());
}

// Whether a range that is shown holds a number.
function holds(said, number) {
  const [from, to] = /(\d+) – (\d+)/.exec(said).slice(1).map(Number);
  return from < number && number < to;
}

async function odds(page) {
  const said = await textOf(page, ".legend");
  const found = [...said.matchAll(/(\d+) %/g)].map((match) => Number(match[1]));
  assert.equal(found.length, 3, said);
  return found;
}

test("six files pressed by touch give a band, its odds against the wanted one and the next stroke", async () => {
  const page = await show("", { device: "phone" });
  await says(page, ".verdict", "No stroke yet");
  const place = () => fileKey(page, 65, "bites").boundingBox();
  const before = await place();
  await stroke(page, ...BRACKET);
  // The model's typical bracket of 55 and 60 reads 53.7 to 61.3; five points down, opened to whole HRC.
  await says(page, ".verdict", "Between your 50 and 55 files", "48 – 57 HRC", "19 of 20");
  assert.equal((await place()).y, before.y, "the keys stay under the finger");

  // ASTM E140 Table 1: 49 HRC is 498 HV and 468 HBW, 56 HRC is 613 HV and 577 HBW.
  for (const [name, low, high] of [["Vickers", 498, 613], ["Brinell, carbide ball", 468, 577]]) {
    const said = await row(page, name);
    const [from, to] = /(\d+) – (\d+)/.exec(said).slice(1).map(Number);
    assert.ok(from <= low && to >= high && from > low - 60 && to < high + 60, said);
  }
  assert.match(await row(page, "Tensile strength"), /\d+ – \d+ MPa/);

  await typeOnPad(field(page, "Wanted hardness"), ["5", "0", "–", "5", "4"]);
  assert.equal(await field(page, "Wanted hardness").inputValue(), "50-54");
  await says(page, ".legend", "in 50-54");
  const [under, inside, over] = await odds(page);
  assert.equal(under + inside + over, 100);
  // The bracket's middle, 52.5, lies in the band; its upper half reaches farther out than its lower.
  assert.ok(inside > over && over > under && under > 0, `${under} ${inside} ${over}`);
  await says(page, ".verdict", "Not proved either way.");
  await says(page, ".next", /^Next stroke: the (50|55) file/);
});

test("a stroke and a start again are taken back by undo", async () => {
  const page = await show("", { device: "phone" });
  assert.ok(await button(page, "Undo").isDisabled());
  await stroke(page, ...BRACKET, [40, "skates"]);
  await fileKey(page, 40, "skates, 2").waitFor();
  await press(page, "Undo");
  await button(page, "40 file skates, 1").waitFor();
  await says(page, ".verdict", "48 – 57 HRC");
  await press(page, "Start again");
  await says(page, ".verdict", "No stroke yet");
  await button(page, "40 file skates").waitFor();
  await press(page, "Undo");
  await says(page, ".verdict", "48 – 57 HRC");
});

test("a reading is added by touch, survives a reload, and is removed", async () => {
  const page = await show("", { device: "phone" });
  await tapOrClick(fold(page, "Instrument readings"));
  assert.ok((await page.getByLabel("Instrument", { exact: true }).boundingBox()).height >= 48);
  await page.getByLabel("Instrument", { exact: true }).selectOption({ label: "portable rebound (Leeb)" });
  await typeOnPad(field(page, "Reading"), ["5", "2", "Space", "5", "3"]);
  assert.ok((await button(page, "Add the reading").boundingBox()).height >= 48);
  await press(page, "Add the reading");
  // The instrument is off by 0.8 HRC anew for each reading and by 1.6 HRC for both (assumed): 1.7 together, 3.3 either way.
  const line = /^52, 53 HRC, portable rebound \(Leeb\): 52\.5 ±3\.3 HRC, assumed/;
  await says(page, ".proofs", line);
  await says(page, ".verdict", "By the readings alone", "19 of 20");
  assert.ok(holds(await textOf(page, ".verdict .num"), 52.5));
  assert.equal(await field(page, "Reading").inputValue(), "");
  assert.equal(await page.locator(".ridge .read").count(), 1);

  // The same files as if the part were soft: both cannot be true.
  await stroke(page, [40, "bites"]);
  await says(page, ".verdict", "The readings do not agree", "No number", "52, 53 HRC");
  await says(page, ".causes", "soft skin", "Without the files");
  await press(page, "Undo");
  await says(page, ".verdict", "By the readings alone");

  await reload(page);
  await says(page, ".verdict", "By the readings alone");
  await tapOrClick(fold(page, "Instrument readings"));
  await says(page, ".proofs", line);
  const chosen = page.getByLabel("Instrument", { exact: true }).locator("option:checked");
  assert.equal(plain(await chosen.innerText()), "portable rebound (Leeb)");
  await tapOrClick(page.locator(".proofs").getByRole("button", { name: "Remove" }));
  await says(page, ".verdict", "No stroke yet");
  assert.equal(await page.locator(".proofs li").count(), 0);

  await typeOnPad(field(page, "Reading"), ["7", "8", "0"]);
  await press(page, "Add the reading");
  await says(page, ".field .error", "from HL to HRC", "which scale");
});

test("strokes on a fresh spot are counted apart", async () => {
  const page = await show("", { device: "phone" });
  assert.equal(await button(page, "Spot 2").count(), 0);
  await stroke(page, [55, "bites"], [50, "skates"]);
  await press(page, "Spot 2");
  assert.equal(await button(page, "Spot 2").getAttribute("aria-pressed"), "true");
  assert.equal(await button(page, "Spot 3").count(), 0, "a third place is offered once the second has a stroke");
  await stroke(page, [55, "bites"]);
  await button(page, "55 file bites, 2").waitFor();
  await button(page, "Spot 3").waitFor();
});

test("a surer hand narrows the band and a casual one widens it", async () => {
  const page = await show("", { device: "phone" });
  await stroke(page, ...BRACKET);
  const widths = {};
  for (const hand of ["Careful", "Practised", "Casual"]) {
    await press(page, hand);
    await until(hand, async () => (await button(page, hand).getAttribute("aria-pressed")) === "true");
    widths[hand] = (await band(page)).width;
  }
  // One stroke is worth about 2, 3 and 5 HRC either way.
  assert.ok(widths.Careful < widths.Practised && widths.Practised < widths.Casual, JSON.stringify(widths));
  await says(page, "main", "One stroke is worth about ±5 HRC.");
});

test("skin, edge, finish and carbides move the band and say why", async () => {
  const page = await show("", { device: "phone" });
  await stroke(page, ...BRACKET);
  await says(page, ".notes", "This takes the skin as ground off.");
  const plainBand = await band(page);
  await press(page, "ground off");
  await until("the caution about skin is gone", async () => !(await textOf(page, "main")).includes("This takes the skin"));
  for (const [choice, back, note, moved] of [
    ["still on", "ground off", "The skin is still on.", () => true],
    ["edge or corner", "flat", "An edge bites more than a flat.", (now) => now.high > plainBand.high],
    ["smoother or rougher", "like my known pieces", "Smooth skates, rough bites.", (now) => now.width >= plainBand.width],
    [
      "carbide-rich (D2, high speed)",
      "carbon or low alloy",
      "Carbide-rich steel skates a file above its true hardness.",
      (now) => now.low < plainBand.low,
    ],
  ]) {
    await press(page, choice);
    await says(page, ".notes", note);
    const text = await textOf(page, ".verdict .num");
    assert.ok(!text.includes(" – ") || moved(await band(page)), `${choice}: ${text}`);
    await press(page, back);
    await until(`${back} stands`, async () => !(await textOf(page, "main")).includes(note));
    assert.deepEqual(await band(page), plainBand);
  }
});

test("files proved on known pieces narrow a careful band, and a proof can be removed", async () => {
  const page = await show("", { device: "phone" });
  await stroke(page, ...BRACKET);
  const { width } = await band(page);
  await tapOrClick(fold(page, "Prove your files"));
  const list = page.locator(".proofs li");
  assert.ok(await button(page, "it bites").isDisabled(), "a proof needs a known hardness");
  for (const grade of [55, 50]) {
    await press(page, String(grade));
    for (const [known, word] of [[grade - 2, "it bites"], [grade + 2, "it skates"]]) {
      const typed = field(page, "Known hardness, HRC");
      await typed.fill(String(known));
      const before = await list.count();
      await press(page, word);
      await until("the proof is listed", async () => (await list.count()) === before + 1);
    }
  }
  assert.equal(plain(await list.locator("span").first().innerText()), "55 file on 53 HRC: bites");
  // SAE J864: a sound file bites two points below its number and skates two above, so these proofs speak for it.
  assert.ok((await band(page)).width <= width);
  await tapOrClick(list.first().getByRole("button", { name: "Remove" }));
  await until("the proof is gone", async () => (await list.count()) === 3);
  await press(page, "Undo");
  await until("the proof is back", async () => (await list.count()) === 4);
});

test("a set of one's own takes the place of the six files and keeps their strokes aside", async () => {
  const page = await show("", { device: "phone" });
  await stroke(page, [55, "bites"]);
  await tapOrClick(fold(page, "Your files"));
  await typeOnPad(field(page, "Grades, HRC"), ["Erase", "Erase", "0"]);
  await field(page, "Grades, HRC").fill("62 58,5 50");
  await until("the rule shows the set", async () => (await page.locator(".rule .file").count()) === 3);
  assert.deepEqual(await page.locator(".tick").allInnerTexts(), ["62", "58.5", "50"]);
  await says(page, ".notes", "Strokes of your 55 file are kept aside");
  await stroke(page, [62, "bites"], [58.5, "skates"]);
  await says(page, ".verdict", "Between your 58.5 and 62 files");
  await field(page, "Grades, HRC").fill("62 62");
  await field(page, "Grades, HRC").press("Enter");
  await says(page, "#field-grades-error", "Keep one of the two");
  assert.equal(await page.locator(".rule .file").count(), 3, "the rule keeps the last set that made sense");
  await press(page, "Six test files");
  await until("the six files are back", async () => (await page.locator(".rule .file").count()) === 6);
  await button(page, "55 file bites, 1").waitFor();
});

test("what was expected is counted in when it is asked for, and left out again", async () => {
  const page = await show("", { device: "phone" });
  await stroke(page, ...BRACKET);
  const alone = await band(page);
  await tapOrClick(fold(page, "What you expected"));
  await typeOnPad(field(page, "Expected, HRC"), ["5", "4"]);
  assert.deepEqual(await band(page), alone, "typing it counts nothing in");
  await press(page, "Count it in");
  await says(page, ".notes", "What you expected, 54 HRC give or take 2, is counted in.");
  const both = await band(page);
  // 54 give or take 2 alone is 50 to 58; files and expectation together are narrower than either.
  assert.ok(both.width < alone.width && both.low >= 49 && both.high <= 58, JSON.stringify(both));
  await press(page, "Count it in");
  await until("the files stand alone", async () => (await band(page)).width === alone.width);
  assert.deepEqual(await band(page), alone);
});

test("the whole file test is done by keyboard alone", async () => {
  const page = await show("");
  await tabTo(page.getByRole("link", { name: "Skip to the page" }));
  await page.keyboard.press("Enter");
  await until("the heading has the focus", () => hasFocus(page.locator("main h1")));
  for (const [at, [grade, word]] of BRACKET.entries()) {
    await tabTo(fileKey(page, grade, word));
    await page.keyboard.press(at % 2 ? "Enter" : "Space");
    await button(page, `${grade} file ${word}, 1`).waitFor();
  }
  await says(page, ".verdict", "Between your 50 and 55 files", "48 – 57 HRC");
  await page.keyboard.press("Escape");
  await says(page, ".verdict", "48 – 57 HRC");

  await tabTo(field(page, "Wanted hardness"));
  await page.keyboard.type("50-54");
  await page.keyboard.press("Escape");
  assert.equal(await field(page, "Wanted hardness").inputValue(), "50-54");
  await page.keyboard.press("Enter");
  await says(page, ".legend", "in 50-54");

  await tabTo(button(page, "Careful"));
  await page.keyboard.press("Space");
  await says(page, "main", "One stroke is worth about ±2 HRC.");
  await tabTo(fold(page, "Prove your files"));
  await page.keyboard.press("Enter");
  await tabTo(field(page, "Known hardness, HRC"));
  await page.keyboard.type("63");
  await tabTo(button(page, "it bites"));
  await page.keyboard.press("Space");
  await says(page, ".proofs", "65 file on 63 HRC: bites");

  await tabTo(button(page, "Start again"), { tab: "Shift+Tab" });
  await page.keyboard.press("Enter");
  await says(page, ".verdict", "No stroke yet");
  await tabTo(button(page, "Undo"), { tab: "Shift+Tab" });
  await page.keyboard.press("Space");
  await says(page, ".verdict", "Between your 50 and 55 files");
});

test("the keyboard goes round the file test, Convert and the sources without a trap", async () => {
  const page = await show("");
  const skip = page.getByRole("link", { name: "Skip to the page" });
  await tabTo(skip);
  await tabTo(page.getByRole("link", { name: "Convert" }));
  await page.keyboard.press("Enter");
  await field(page, "Hardness, as written").waitFor();
  await until("the heading has the focus", () => hasFocus(page.locator("main h1")));
  await tabTo(field(page, "Hardness, as written"));
  await page.keyboard.type("52");
  // ASTM E140 Table 1, row 52: 544 HV.
  await until("the answer comes", async () => (await textOf(page, ".results")).includes("544 HV"));
  await tabTo(scaleOfNumber(page, "HBW"));
  await page.keyboard.press("Escape");
  await tabTo(fold(page, "Where this comes from"));
  await page.keyboard.press("Space");
  await says(page, "main", "row 52");
  await tabTo(skip);
  await tabTo(button(page, "Sources, limits and settings"));
  await page.keyboard.press("Enter");
  await button(page, "dim").waitFor();
  await tabTo(button(page, "dim"));
  await page.keyboard.press("Space");
  await until("the page is dim", () => page.evaluate(() => document.documentElement.dataset.theme === "dim"));
  await tabTo(skip);
  await tabTo(button(page, "Back"));
  await page.keyboard.press("Enter");
  await page.waitForSelector(".rule");
});

const CASES = [
  {
    name: "an O1 bit between 55 and 60, 58 to 60 wanted, is proved neither way",
    strokes: [[65, "bites"], [60, "bites"], [55, "skates"]],
    target: "58-60",
    says: ["Between your 55 and 60 files", "Not proved either way."],
    // Prover windows of SAE J864 leave 53 to 62; a slip among three strokes a little more.
    check: ({ low, high }) => low >= 51 && low <= 53 && high >= 62 && high <= 64,
  },
  {
    name: "a 45 that bites and a 50 that skates give no number and are both named",
    strokes: [[40, "skates"], [45, "bites"], [50, "skates"], [55, "bites"], [60, "bites"]],
    says: ["No number until that is settled.", "The 45 bites", "The 50 skates", "Both cannot be true"],
    more: [[".next", "Prove the 45 and the 50"], [".causes", "worn", "swapped", "spots", "soft", "polished"]],
    silent: /\d+ – \d+ HRC|19 of 20/,
  },
  {
    name: "a part that skates even the 65 has no upper number",
    strokes: [[65, "skates"]],
    says: ["Harder than your 65 file", /6[2-5] or more HRC/],
    more: [[".notes", "temper it today"]],
    silent: / – /,
  },
  {
    name: "a part that even the 40 bites has no lower number and may be pre-hard or not hardened",
    strokes: [[40, "bites"]],
    says: ["Softer than your 40 file", /below 4[0-3] HRC/],
    // ASTM E140 Table 1: 28 HRC is 271 HBW and 32 HRC is 301 HBW.
    more: [[".notes", "far softer", "28-32 HRC, 271-301 HBW", "Do not harden it to find out"]],
    silent: / – /,
  },
  {
    name: "one ordinary file that skates says about 60 or more and nothing of the middle",
    ordinary: true,
    strokes: [[63, "skates"]],
    says: ["Harder than your 63 file", /(5[6-9]|6[0-3]) or more HRC/],
    more: [["main", "does not prove the middle"]],
    silent: / – /,
  },
  {
    name: "one ordinary file that bites after tempering is expected",
    ordinary: true,
    strokes: [[63, "bites"]],
    says: ["Softer than your 63 file", /below 6\d HRC/],
    more: [["main", "One file says on which side"]],
    silent: / – /,
  },
];

for (const device of ["phone", "desktop"]) {
  for (const { name, ordinary, strokes, target, says: verdict, more = [], silent, check } of CASES) {
    test(`${name} (${device})`, async () => {
      const page = await show("", { device });
      if (ordinary) {
        await tapOrClick(fold(page, "Your files"));
        await press(page, "One ordinary file");
        await until("one file is left", async () => (await page.locator(".rule .file").count()) === 1);
      }
      await stroke(page, ...strokes);
      if (target) await field(page, "Wanted hardness").fill(target);
      await says(page, ".verdict", ...verdict);
      for (const [place, ...texts] of more) await says(page, place, ...texts);
      if (silent) assert.doesNotMatch(await textOf(page, ".verdict"), silent);
      if (check) assert.ok(check(await band(page)), await textOf(page, ".verdict .num"));
      await says(page, "main", "Wear eye protection");
    });
  }

  for (const { name, text, scale, rows = [], says: told = [], silent } of [
    {
      name: "38-42 HRC on a drawing is 353 to 390 HBW",
      text: "38-42 HRC",
      // ASTM E140 Table 1, rows 38 and 42.
      rows: [["Brinell, carbide ball", "353 – 390 HBW"], ["Vickers", "372 – 412 HV"]],
      says: ["Read as 38 to 42 HRC", "A converted number is an estimate."],
    },
    {
      name: "363 HBW on the paper is 39 HRC",
      text: "363 HBW",
      // ASTM E140 Table 1, row 39: 362 HBW.
      rows: [["Rockwell C", "39 HRC"]],
    },
    {
      name: "HRC 15 is refused with the end of the table",
      text: "HRC 15",
      // ASTM E140 Table 1 ends at 20 HRC = 238 HV.
      says: ["Read as 15 HRC", "20 HRC = 238 HV", "Ask for the HBW or HRB number"],
      silent: ".results",
    },
    {
      name: "HRB 110 is refused with the end of its scale",
      text: "110",
      scale: "HRB",
      // ASTM E140 Table 2 ends at 100 HRB = 240 HBW.
      says: ["runs from 10 to 100", "about 240 HBW"],
      silent: ".results",
    },
    {
      name: "dowel pins of HV 700 ±50 are 58 to 62 HRC and the load is asked for",
      text: "HV 700 +-50",
      // ASTM E140 Table 1: 653 HV is 58 HRC, 746 HV is 62 HRC.
      rows: [["Rockwell C", "58 – 62 HRC"]],
      says: ["HV10 or HV30", "skin or core"],
    },
    {
      name: "no tensile strength is given for 62 HRC, and where the tables last agreed is",
      text: "62 HRC",
      // ISO 18265 Table A.1 ends at 2180 MPa, ASTM A370 at 59 HRC = 2420 MPa; ASTM E140 Table 1, row 62: 746 HV.
      rows: [["Vickers", "746 HV"]],
      says: ["2180 MPa", "59 HRC = 2420 MPa", "The tables last speak together at", "Specify hardness"],
      silent: ".results tr:has-text('MPa')",
    },
  ]) {
    test(`${name} (${device})`, async () => {
      const page = await show("#convert", { device });
      if (scale) await press(page, scale);
      await ask(page, text);
      if (rows.length > 0) await page.waitForSelector(".results");
      for (const [scaleName, shown] of rows) {
        const said = await row(page, scaleName);
        assert.ok(said.includes(shown), said);
      }
      await says(page, "main", ...told);
      if (silent) assert.equal(await page.locator(silent).count(), 0);
      assert.equal(await field(page, "Hardness, as written").inputValue(), text);
    });
  }
}

for (const sign of [".", ","]) {
  test(`the pad's ${sign} is a decimal sign`, async () => {
    const page = await show("#convert", { device: "phone" });
    await typeOnPad(field(page, "Hardness, as written"), ["5", "2", sign, "5"]);
    assert.equal(await field(page, "Hardness, as written").inputValue(), `52${sign}5`);
    await says(page, "main", "Read as 52.5 HRC");
    await press(page, "GB/T 1172");
    // GB/T 1172, row 52.5: 551 HV and 77.1 HRA, which a converted number rounds.
    await says(page, ".results", "551 HV", "77 HRA", "GB/T 1172");
  });
}

test("a bare number takes the scale of the pressed chip, and rarer scales come when asked for", async () => {
  const page = await show("#convert", { device: "phone" });
  await typeOnPad(field(page, "Hardness, as written"), ["5", "4", "4"]);
  await tapOrClick(scaleOfNumber(page, "HV"));
  // ASTM E140 Table 1, row 52: 544 HV.
  await says(page, ".results", "52 HRC");
  assert.equal(await scaleOfNumber(page, "HR15N").count(), 0);
  await press(page, "more scales");
  await scaleOfNumber(page, "HR15N").waitFor();
  await press(page, "fewer");
  await scaleOfNumber(page, "HR15N").waitFor({ state: "detached" });
});

test("the chosen table answers, and the sources are folded away until asked for", async () => {
  const page = await show("#convert", { device: "phone" });
  await ask(page, "40 HRC");
  await press(page, "A370 C");
  // ASTM A370, row 40: 392 HV, 1250 MPa.
  await says(page, ".results", "392 HV", "A370 C");
  assert.ok(holds(await row(page, "Tensile strength"), 1250));
  const origin = page.locator(".origin").first();
  assert.ok(!(await origin.isVisible()));
  await tapOrClick(fold(page, "Where this comes from"));
  await origin.waitFor();
  await says(page, ".origin", "ASTM International", "A370", "row 40");
  await press(page, "J417");
  // SAE J417 has the same row: 40 HRC is 392 HV.
  await says(page, ".results", "392 HV", "J417");
});

test("strength in ksi is chosen once and needs no typing again", async () => {
  const page = await show("#convert", { device: "phone" });
  await ask(page, "40 HRC");
  await press(page, "A370 C");
  await says(page, ".results", "A370 C", "MPa");
  assert.ok(holds(await row(page, "Tensile strength"), 1250));
  await tapOrClick(button(page, "Sources, limits and settings"));
  await press(page, "ksi, °F");
  await tapOrClick(page.getByRole("link", { name: "Convert" }));
  // ASTM A370, row 40: 182 ksi; a strength is shown as a range about it.
  await says(page, ".results", "A370 C", "ksi");
  assert.ok(holds(await row(page, "Tensile strength"), 182));
  assert.equal(await field(page, "Hardness, as written").inputValue(), "40 HRC");
  assert.doesNotMatch(await textOf(page, ".results"), /MPa/);
});

test("a tensile strength is turned into hardness", async () => {
  const page = await show("#convert", { device: "phone" });
  await typeOnPad(field(page, "Hardness, as written"), ["1", "2", "5", "5"]);
  await press(page, "MPa");
  // ISO 18265 Table A.1, row 1255 MPa: 390 HV, 371 HBW, 39.8 HRC.
  await says(page, ".results", "390 HV", "371 HBW", /39\.8 HRC|40 HRC/);
});

test("a text without sense is told only after the field is left, and stays", async () => {
  const page = await show("#convert");
  const typed = field(page, "Hardness, as written");
  await typed.click();
  await page.keyboard.type("quite hard");
  await says(page, "main", "Go on typing.");
  assert.equal(await page.locator(".error").count(), 0);
  await page.keyboard.press("Tab");
  await says(page, ".error", "There is no number in it.", "52 HRC, 38-42 HRC");
  assert.equal(await typed.getAttribute("aria-invalid"), "true");
  assert.equal(await typed.inputValue(), "quite hard");
});

test("half a number is no mistake while it is typed", async () => {
  const page = await show("#convert");
  const typed = field(page, "Hardness, as written");
  await typed.click();
  await page.keyboard.type("5");
  await says(page, "main", "Go on typing.");
  assert.equal(await page.locator(".error").count(), 0);
  assert.equal(await typed.getAttribute("aria-invalid"), null);
  await page.keyboard.type("2");
  await says(page, ".results", "544 HV");
});

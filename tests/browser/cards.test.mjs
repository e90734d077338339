// Part cards from end to end: a part is made, worked on over the pages, put away and taken again; recipe, comparison,
// deletion, demonstration, export, import with a conflict, paper, photos; by keyboard, on a narrow screen, where nothing
// can be stored.
import assert from "node:assert/strict";
import { mkdtempSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { test } from "node:test";
import { download, fields, go, press, stroke, tapOrClick, unfold, unfoldAll } from "./hands.mjs";
import { cards, store } from "./kept.mjs";
import { fits, noAxeViolations, printed, stage, until } from "./lib.mjs";

const { open } = stage();

// Enter is a line more in a field of several, as that of notes is; those are left for another place.
const { input, problem, fill } = fields("", (own) => own.blur());
const hand = (page) => page.locator("header.job .hand");
const inHand = (page) => hand(page).locator("b").innerText();
const rows = (page) => page.locator("main .cards .part");
const row = (page, name) => rows(page).filter({ hasText: name });
const notice = (page, text) => page.locator(".notice").filter({ hasText: text });
const story = (page) => page.locator(".story li").allInnerTexts();

async function parts(page) {
  await go(page, "#parts");
  await page.getByRole("heading", { name: "Parts", level: 2 }).waitFor();
}

// Waits until a card lies in storage as it is shown.
const keeps = (page, check) => until("the card is stored", async () => (await cards(page)).some(check));

async function newPart(page, name) {
  await press(page, "New part");
  await input(page, "part-name").waitFor();
  await fill(page, "part-name", name);
  await until("the name is shown on top", async () => (await inHand(page)) === name);
  await keeps(page, (card) => card.name === name);
}

async function demo(page) {
  await press(page, "Show the demonstration parts");
  await until("seven parts are listed", async () => (await rows(page).count()) === 7);
}

async function take(page, name) {
  await tapOrClick(row(page, name));
  await until(`${name} is in hand`, async () => (await inHand(page)) === name);
}

const folder = mkdtempSync(join(tmpdir(), "biteband-"));
process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
const upload = (name, content) => {
  const path = join(folder, name);
  writeFileSync(path, content);
  return path;
};

test("a part is made from what stands on the pages, worked on, put away and taken again", async () => {
  const { page } = await open("");
  await stroke(page, [55, "skates"], [60, "bites"]);
  await fill(page, "target", "50-54 HRC");
  await parts(page);
  await page.getByText("No parts yet").waitFor();
  await press(page, "Make what stands on the pages a part");
  await fill(page, "part-name", "Capstan pawl");
  await fill(page, "part-origin", "offcut from bar 7");
  await fill(page, "part-notes", "Chamfer the nose.\nFit to the wheel.");
  await go(page, "#steel");
  await fill(page, "steel-query", "4140");
  await fill(page, "steel-size", "50 mm");
  await fill(page, "steel-length", "80 mm");
  await page.getByRole("button", { name: /^Done: put it on the card/ }).click();
  await go(page, "#temper");
  await page.locator(".steps tbody tr").first().waitFor();
  const step = page.getByRole("button", { name: /^Done: put it on the card/ }).first();
  const temper = (await step.getAttribute("aria-label")).split(": ").at(-1);
  assert.match(temper, /^\d+ °C \/ \d+ h$/);
  await step.click();
  await go(page, "#file-test");
  await stroke(page, [50, "skates"], [55, "bites"]);
  await parts(page);
  const lines = await story(page);
  // What was stroked before the heat is history with its band; what was stroked after it stands now.
  const kinds = lines.map((line) => line.split(" ")[0]);
  assert.deepEqual(kinds, ["Steel", "Filed", "Hardened", "Tempered", "Filed"], lines.join("\n"));
  assert.match(lines[0], /4140, offcut from bar 7/);
  assert.match(lines[1], /55 skates, 60 bites[\s\S]*HRC/);
  assert.ok(lines[3].includes(temper), lines[3]);
  assert.match(lines[4], /50 skates, 55 bites/);
  // The next step stands on the page of the part.
  await page.locator(".what-now .act").waitFor();
  await keeps(page, (card) => card.story.length === 3 && card.files.strokes.length === 2 && card.story.every((one) => one.at));
  await press(page, "Put away");
  await until("the quick look-up is back", async () => (await inHand(page)) !== "Capstan pawl");
  await go(page, "#file-test");
  assert.equal(await input(page, "target").inputValue(), "", "a part that was begun leaves no look-up behind");
  await page.reload();
  await parts(page);
  await take(page, "Capstan pawl");
  assert.deepEqual(await story(page), lines);
  assert.equal(await input(page, "part-notes").inputValue(), "Chamfer the nose.\nFit to the wheel.");
  await page.reload();
  await until("it is still in hand", async () => (await inHand(page)) === "Capstan pawl");
  await go(page, "#temper");
  await input(page, "temper-done").waitFor();
  assert.equal(await input(page, "temper-done").inputValue(), temper);
});

test("the quick look-up stands as it was left when a part is put away", async () => {
  const { page } = await open("");
  await fill(page, "target", "58-60 HRC");
  await parts(page);
  await newPart(page, "Pin");
  await go(page, "#file-test");
  assert.equal(await input(page, "target").inputValue(), "");
  await tapOrClick(hand(page));
  await page.locator(".chooser").getByRole("button", { name: "Put away" }).click();
  await until("the target is back", async () => (await input(page, "target").inputValue()) === "58-60 HRC");
});

test("what was begun to be typed is there when the part is taken again", async () => {
  const { page } = await open("#parts");
  await newPart(page, "Drift");
  const begun = { "part-place": "struck end", "part-wanted": "45 HRC", "part-remark": "Ran hot on the", "part-tempered": "205C/" };
  for (const fold of ["Places that are wanted otherwise", "It was heated"]) await unfold(page, fold);
  for (const [id, text] of Object.entries(begun)) await fill(page, id, text);
  await keeps(page, (card) => card.begun[2] === "Ran hot on the" && card.begun[4] === "205C/");
  await newPart(page, "Pin");
  for (const id of Object.keys(begun)) assert.equal(await input(page, id).inputValue(), "", id);
  await take(page, "Drift");
  for (const [id, text] of Object.entries(begun)) assert.equal(await input(page, id).inputValue(), text, id);
});

test("whatever is typed and pasted can be exported and read again", async () => {
  const { page } = await open("#parts", { context: { acceptDownloads: true } });
  await newPart(page, "Pin");
  const name = input(page, "part-name");
  await name.click();
  await page.keyboard.press("End");
  await page.keyboard.insertText(`\u0007 of the ${"long ".repeat(100)}shaft`);
  await name.blur();
  const kept = await name.inputValue();
  // As many letters as the file takes, less the one that a screen does not show.
  assert.ok(kept.length === 199 && kept.startsWith("Pin of the long"), kept);
  await fill(page, "part-notes", "One\u0000\tand two.");
  await until("notes are clean", async () => (await input(page, "part-notes").inputValue()) === "One\tand two.");
  await keeps(page, (card) => card.name === kept && card.notes === "One\tand two.");
  const { text } = await download(page, () => press(page, "Export this part"));
  await page.getByLabel("Import a file of parts").setInputFiles(upload("pin.json", text));
  await page.getByText("The same here: left as it is").waitFor();
});

test("entries are added, removed and put back; a place that is struck is cautioned", async () => {
  const { page } = await open("#parts");
  await newPart(page, "Drift");
  await unfold(page, "It was heated");
  await fill(page, "part-tempered", "400 for a while");
  await press(page, "It was tempered");
  await problem(page, "part-tempered").waitFor();
  assert.equal(await input(page, "part-tempered").inputValue(), "400 for a while");
  await fill(page, "part-tempered", "205 °C / 2 h");
  await press(page, "It was tempered");
  await page.locator(".story li").filter({ hasText: "205 °C / 2 h" }).waitFor();
  await press(page, "Add the remark");
  await problem(page, "part-remark").waitFor();
  await fill(page, "part-remark", "Scale on the nose.");
  await press(page, "Add the remark");
  await page.locator(".story li").filter({ hasText: "Scale on the nose." }).waitFor();
  await press(page, "Remove entries");
  await page.getByRole("button", { name: "Remove: Tempered 205 °C / 2 h" }).click();
  await until("one entry is gone", async () => (await story(page)).length === 1);
  await until("the next entry has the focus", () =>
    page.evaluate(() => document.activeElement?.id === "remove-0"));
  await press(page, "Put back what was removed");
  await until("it is back in its place", async () => (await story(page))[0]?.startsWith("Tempered"));
  await unfold(page, "Places that are wanted otherwise");
  await press(page, "Struck end: 45 HRC at most");
  await page.locator(".caution").filter({ hasText: "at most 45 HRC at the struck end" }).waitFor();
  await press(page, "Add this place");
  await page.locator(".proofs li").filter({ hasText: "struck end: 45 HRC max" }).waitFor();
  await keeps(page, (card) => card.zones.length === 1 && card.story.length === 2);
});

test("what an older version said is marked, and held against today's answer when asked", async () => {
  const { page } = await open("");
  await stroke(page, [50, "skates"], [55, "bites"]);
  await parts(page);
  await press(page, "Make what stands on the pages a part");
  await unfold(page, "It was heated");
  await fill(page, "part-tempered", "205 °C / 2 h");
  await press(page, "It was tempered");
  await keeps(page, (card) => card.story.length === 2 && card.story.every((one) => one.at));
  await press(page, "Put away");
  // As if version 0.0.1 had tested it, and had found another band.
  for (const [id, text] of Object.entries(await store(page, "cards"))) {
    const record = JSON.parse(text);
    Object.assign(record.card.story[0], { app: "0.0.1", said: "10 – 12 HRC", low: 10, high: 12 });
    await store(page, "cards", id, JSON.stringify(record));
  }
  await page.reload();
  await rows(page).first().click();
  const filed = page.locator(".story li").filter({ hasText: "50 skates, 55 bites" });
  await filed.getByText("Said by Biteband 0.0.1").waitFor();
  await filed.getByRole("button", { name: "What this version says" }).click();
  await filed.getByText("Said then: 10 – 12 HRC. Says today: 4").waitFor();
});

test("the list is searched, ordered and marked; a part becomes the recipe of another", async () => {
  const { page } = await open("#parts");
  await demo(page);
  await fill(page, "part-search", "o1");
  await until("only what holds the word is listed", async () => (await rows(page).count()) < 7);
  await page.getByText(/^\d of 7 parts$/).waitFor();
  await fill(page, "part-search", "");
  await press(page, "name");
  const names = await rows(page).locator("b").allInnerTexts();
  assert.deepEqual(names, [...names].sort((a, b) => a.localeCompare(b)));
  await take(page, "Capstan pawl");
  assert.equal(await page.locator(".part[aria-current=true]").innerText().then((text) => text.includes("in hand")), true);
  const steel = (await cards(page)).find((card) => card.name === "Capstan pawl").steel.name;
  await press(page, "Use as recipe");
  await until("the new part is in hand", async () => (await inHand(page)) === "Capstan pawl (from its recipe)");
  await keeps(page, (card) => card.recipe_of === "Capstan pawl" && card.steel.name === steel && !card.demo
    && card.story.length === 0 && card.recipe.length > 0 && card.files.strokes.length === 0);
  await unfold(page, "What the card holds");
  await page.getByRole("heading", { name: "Its recipe", exact: true }).waitFor();
  // What is the person's own stays when the demonstration goes.
  await press(page, "Remove the demonstration parts");
  await until("only the own part is left", async () => (await rows(page).count()) === 1);
  assert.equal((await cards(page)).length, 1);
});

test("two parts are compared side by side, with what differs in words", async () => {
  const { page } = await open("#parts");
  await demo(page);
  await take(page, "Capstan pawl");
  await press(page, "Compare");
  await page.getByLabel("Compare with").selectOption({ label: "Drill-jig bushing" });
  const fact = (name) => page.locator(".versus tbody").filter({ has: page.getByText(name, { exact: true }) });
  await fact("Steel: differs").waitFor();
  assert.match(await fact("Steel: differs").innerText(), /4140[\s\S]*O1/);
  await fact("The part is: the same").waitFor();
  await noAxeViolations(page);
});

test("a part that is only looked at is not changed by it", async () => {
  const { page } = await open("#parts");
  await demo(page);
  const dates = async () => Object.fromEntries((await cards(page)).map((card) => [card.name, [card.changed, card.revision]]));
  const before = await dates();
  for (const name of ["Capstan pawl", "Stern-bush drift", "Drill-jig bushing"]) await take(page, name);
  await page.getByRole("button", { name: "Put away" }).click();
  await until("nothing is in hand", async () => (await inHand(page)) === "Biteband");
  assert.deepEqual(await dates(), before);
});

test("a deleted part comes back by one tap, stands among the deleted ones, and goes for good only when asked twice", async () => {
  const { page } = await open("#parts");
  await newPart(page, "Pin");
  await press(page, "Delete this part");
  await notice(page, "Deleted: Pin").getByRole("button", { name: "Undo" }).click();
  await until("it is in hand again", async () => (await inHand(page)) === "Pin");
  await until("its card has the focus", () => page.evaluate(() => document.activeElement?.id === "part-card"));
  await press(page, "Delete this part");
  await notice(page, "Deleted: Pin").getByRole("button", { name: "OK" }).click();
  await until("nothing is listed", async () => (await rows(page).count()) === 0);
  await page.reload();
  await unfold(page, "Deleted parts (1)");
  await press(page, "Put back");
  await row(page, "Pin").waitFor();
  await take(page, "Pin");
  await press(page, "Delete this part");
  await unfold(page, "Deleted parts (1)");
  await press(page, "Remove for good");
  await press(page, "Keep it");
  await press(page, "Remove for good");
  await page.getByText("Nothing brings it back").waitFor();
  await press(page, "Remove for good");
  await until("nothing is left of it", async () => (await page.getByText("Deleted parts").count()) === 0);
  assert.deepEqual(await cards(page), []);
});

test("an export holds everything, and an import of it does nothing", async () => {
  const { page } = await open("#parts", { context: { acceptDownloads: true } });
  const name = '<script>alert("x")</script> & <b>pin</b>';
  await newPart(page, name);
  await fill(page, "part-notes", "äöü – “quoted” \\ 50 %");
  await keeps(page, (card) => card.notes.startsWith("äöü"));
  await page.getByText("1 part on this device alone").waitFor();
  const { name: file, text } = await download(page, () => press(page, "Export all parts"));
  assert.match(file, /^biteband-parts-\d{4}-\d\d-\d\d\.json$/);
  const whole = JSON.parse(text);
  assert.equal(whole.format, "biteband-parts");
  assert.equal(whole.schema, 1);
  assert.equal(whole.parts.length, 1);
  assert.equal(whole.parts[0].name, name);
  assert.equal(whole.parts[0].notes, "äöü – “quoted” \\ 50 %");
  await notice(page, file).getByRole("button", { name: "OK" }).click();
  await page.getByText(/^Nothing changed since the last export on \d+ \w+\.$/).waitFor();
  // Shown for what it is: a text.
  assert.equal(await page.locator("main b b, main script, .hand b b").count(), 0);
  assert.equal(await inHand(page), name);
  await page.getByLabel("Import a file of parts").setInputFiles(upload("same.json", text));
  await page.getByText("Everything in this file is here already").waitFor();
  await press(page, "Cancel");
  const table = await download(page, () => press(page, "Results as a table (CSV)"));
  assert.match(table.name, /^biteband-results-\d{4}-\d\d-\d\d\.csv$/);
  assert.match(table.text, /^part,id,date,kind,/);
  await fill(page, "part-notes", "changed");
  await page.getByText(/^1 part changed since the last export on/).waitFor();
});

test("an import is shown first, a conflict is chosen, and all of it is undone by one tap", async () => {
  const { page } = await open("#parts", { context: { acceptDownloads: true } });
  await newPart(page, "Pin");
  await fill(page, "part-notes", "mine");
  await keeps(page, (card) => card.notes === "mine");
  const { text } = await download(page, () => press(page, "Export this part"));
  const theirs = JSON.parse(text);
  theirs.parts[0].notes = "theirs";
  theirs.parts.push({ id: "screw-0001", name: "Prop-puller screw" });
  const path = upload("theirs.json", JSON.stringify(theirs));
  const choose = () => page.getByLabel("Import a file of parts").setInputFiles(path);
  await choose();
  await page.getByRole("heading", { name: "What this file would do" }).waitFor();
  const notes = page.locator(".versus tbody").filter({ hasText: "Notes: differs" });
  assert.match(await notes.innerText(), /mine[\s\S]*theirs/);
  assert.equal((await cards(page)).length, 1, "nothing is done before it is asked for");
  await noAxeViolations(page);
  await press(page, "Cancel");
  assert.equal((await cards(page)).length, 1);
  // Both are kept, unless told otherwise.
  await choose();
  await press(page, "Import: 2 parts added");
  await until("three parts are there", async () => (await cards(page)).length === 3);
  const both = (await cards(page)).map((card) => [card.name, card.notes]).sort();
  assert.deepEqual(both, [["Pin (imported)", "theirs"], ["Pin", "mine"], ["Prop-puller screw", ""]]);
  await page.getByRole("button", { name: "Undo the import" }).click();
  await until("the import is undone", async () => (await cards(page)).length === 1);
  // The file's in place of the own one, which is in hand.
  await choose();
  await press(page, "take the file's");
  await press(page, "Import: 1 part added, 1 brought up to the file");
  await until("the pages show it", async () => (await input(page, "part-notes").inputValue()) === "theirs");
  await page.getByRole("button", { name: "Undo the import" }).click();
  await until("the own one is back", async () => (await input(page, "part-notes").inputValue()) === "mine");
  assert.deepEqual((await cards(page)).map((card) => card.notes), ["mine"]);
});

test("a file that is none is refused with the place and the way out, and nothing changes", async () => {
  const { page } = await open("#parts");
  await newPart(page, "Pin");
  for (const [text, said] of [
    ["{\"format\":\"biteband-parts\",\"schema\":1,\"parts\":[{\"id\":", /ends too early/],
    ["{\"format\":\"biteband-parts\",\"schema\":1,\"parts\":[{\"id\":\"pin-0001\",\"colour\":1}]}", /parts\[0\] has a field colour/],
    ["no json at all", /is no JSON/],
    [`{"format":"biteband-parts","schema":1,"parts":${"[".repeat(100_000)}`, /nested too deeply/],
    ['{"format":"biteband-parts","schema":9,"parts":[]}', /written by a newer version/],
    ['{"format":"biteband-parts","schema":1,"parts":[{"id":"pin-0001","name":5}]}', /parts\[0\]\.name is a number/],
  ]) {
    await page.getByLabel("Import a file of parts").setInputFiles(upload("bad.json", text));
    await page.locator(".refusal").filter({ hasText: said }).waitFor();
  }
  // A gigabyte that takes no room on this disk, and none in the page.
  const huge = upload("huge.json", "");
  truncateSync(huge, 2 ** 30);
  await page.getByLabel("Import a file of parts").setInputFiles(huge);
  await page.locator(".refusal").filter({ hasText: /larger than/ }).waitFor();
  assert.equal((await cards(page)).length, 1);
});

test("a card stands on one page of paper, and is sent as a text that can be selected", async () => {
  const { page } = await open("#parts", { init: () => { delete Navigator.prototype.share; } });
  await page.context().grantPermissions(["clipboard-read", "clipboard-write"]);
  await demo(page);
  await take(page, "Capstan pawl");
  await press(page, "Print");
  for (const [paper, size] of [["A4", [595, 842]], ["Letter", [612, 792]]]) {
    await press(page, paper);
    assert.deepEqual(await printed(page), [size], paper);
  }
  const sheet = decodeURIComponent((await page.locator(".sheets img").getAttribute("src")).split(",").slice(1).join(","));
  for (const word of ["Capstan pawl", "4140", "HRC"]) assert.ok(sheet.includes(word), word);
  await press(page, "Send");
  await notice(page, "The text is copied").waitFor();
  const text = page.getByRole("textbox", { name: "The card as a text" });
  const shown = await text.inputValue();
  assert.match(shown, /^PART: Capstan pawl\n/);
  assert.equal(await page.evaluate(() => navigator.clipboard.readText()), shown);
});

test("a photo is made small, described, kept over a reload, exported, removed and brought back", async () => {
  const { page } = await open("#parts", { context: { acceptDownloads: true } });
  await newPart(page, "Pin");
  const picture = await page.evaluate(() => {
    const canvas = Object.assign(document.createElement("canvas"), { width: 3000, height: 1500 });
    const ink = canvas.getContext("2d");
    ink.fillStyle = "#a33";
    ink.fillRect(0, 0, 1500, 1500);
    return canvas.toDataURL("image/png").split(",")[1];
  });
  const path = upload("photo.png", Buffer.from(picture, "base64"));
  const photos = await unfold(page, "Photos");
  await photos.locator("input[type=file]").setInputFiles(path);
  const image = photos.locator("img");
  await image.waitFor();
  // 1280 pixels at most, in the same proportion.
  assert.deepEqual(await image.evaluate((one) => [one.naturalWidth, one.naturalHeight]), [1280, 640]);
  await photos.getByLabel("What it shows").fill("the nose after quenching");
  await keeps(page, (card) => card.photos[0]?.text === "the nose after quenching" && card.photos[0].data === "");
  await page.reload();
  await page.getByRole("img", { name: "the nose after quenching" }).waitFor();
  const { text } = await download(page, () => press(page, "Export this part"));
  const [photo] = JSON.parse(text).parts[0].photos;
  assert.equal(photo.media_type, "image/jpeg");
  assert.deepEqual([...Buffer.from(photo.data, "base64").subarray(0, 3)], [0xff, 0xd8, 0xff]);
  // Where the picture was lost, the export of before brings it back.
  assert.equal((await store(page, "photos", photo.id, null))[photo.id], undefined);
  await page.reload();
  await page.getByText("This photo is not on this device").waitFor();
  await page.getByLabel("Import a file of parts").setInputFiles(upload("pin.json", text));
  await page.getByText("Pictures that are lost here: brought back").waitFor();
  await press(page, "Import: 1 part brought up to the file");
  await page.getByRole("img", { name: "the nose after quenching" }).waitFor();
  assert.equal(JSON.parse((await store(page, "photos"))[photo.id]).data, photo.data);
  await page.getByRole("button", { name: "Remove: Photo 1 of Pin" }).click();
  await until("it is gone", async () => (await page.locator(".photos img").count()) === 0);
  await notice(page, "The photo was removed").getByRole("button", { name: "Undo" }).click();
  await page.getByRole("img", { name: "the nose after quenching" }).waitFor();
  const bad = upload("no-picture.jpg", "no picture");
  await (await unfold(page, "Photos")).locator("input[type=file]").setInputFiles(bad);
  await notice(page, "could not be read as a picture").waitFor();
});

test("the choice on top works by keyboard: focus goes in, Escape closes and gives it back", async () => {
  const { page } = await open("#parts");
  await newPart(page, "Pin");
  await go(page, "#file-test");
  await hand(page).focus();
  await page.keyboard.press("Enter");
  await until("the focus is in the choice", () => page.evaluate(() => !!document.activeElement?.closest(".chooser")));
  assert.equal(await hand(page).getAttribute("aria-expanded"), "true");
  await noAxeViolations(page);
  await page.keyboard.press("Escape");
  await until("the focus is back", () => page.evaluate(() => document.activeElement?.matches(".hand")));
  assert.equal(await hand(page).getAttribute("aria-expanded"), "false");
  await page.keyboard.press("Enter");
  await page.locator(".chooser").getByRole("button", { name: "Put away" }).focus();
  await page.keyboard.press("Enter");
  await until("it is put away", async () => (await inHand(page)) !== "Pin");
  await hand(page).focus();
  await page.keyboard.press("Enter");
  await until("the focus is on the part", () => page.evaluate(() => !!document.activeElement?.matches(".chooser .part")));
  await page.keyboard.press("Enter");
  await until("it is in hand", async () => (await inHand(page)) === "Pin");
});

test("where nothing can be stored parts are kept until the page is closed, and that is said", async () => {
  const { page } = await open("#parts", { init: () => { delete globalThis.indexedDB; Object.defineProperty(globalThis, "indexedDB", { value: undefined }); } });
  await press(page, "New part");
  await fill(page, "part-name", "Pin");
  await page.getByText("Nothing can be stored on this device now").waitFor();
  await press(page, "New part");
  await fill(page, "part-name", "Pawl");
  await until("both are listed", async () => (await rows(page).count()) === 2);
  await take(page, "Pin");
});

test("a card that cannot be read is listed and can be saved, and the others are there", async () => {
  const { page } = await open("#parts", { context: { acceptDownloads: true } });
  await newPart(page, "Pin");
  await store(page, "cards", "broken-0001", "{\"schema\":1,\"card\":{\"name\":");
  await page.reload();
  const damaged = page.locator(".damaged");
  await damaged.waitFor();
  await row(page, "Pin").waitFor();
  await noAxeViolations(page);
  const { text } = await download(page, () => damaged.getByRole("button", { name: "Save it as a file" }).click());
  assert.equal(text, "{\"schema\":1,\"card\":{\"name\":");
});

for (const theme of ["light", "dim"]) {
  test(`list, card and choice on a narrow screen: nothing runs out, no target is small, no finding (${theme})`, async () => {
    const { page } = await open("#parts", { device: "phone", theme, context: { viewport: { width: 320, height: 640 } } });
    await noAxeViolations(page);
    await demo(page);
    await take(page, "Capstan pawl");
    await unfold(page, "What the card holds");
    await unfoldAll(page);
    await press(page, "Compare");
    await page.getByLabel("Compare with").selectOption({ label: "Drill-jig bushing" });
    await press(page, "Print");
    await tapOrClick(hand(page));
    await page.locator(".chooser").waitFor();
    await fits(page);
    await noAxeViolations(page);
  });
}

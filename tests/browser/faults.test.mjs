// What can go wrong while parts are kept: the last complete state is there, the person is told, export still works.
import assert from "node:assert/strict";
import { test } from "node:test";
import { button, download, field, fileKey, press, says, stroke, tapOrClick, type } from "./hands.mjs";
import { CLOSED, FULL, cards, store } from "./kept.mjs";
import { isReady, newVersionRuns, reload, shown, stage, until, withNewVersion } from "./lib.mjs";

const { expect, open, server } = stage();

const room = (page, name) => page.getByRole("link", { name, exact: true }).click();
// Enter is a line more in a field of several, as that of notes is.
const write = (page, name, text) => type(page, name, text, "Tab");
const cardOf = async (page, name) => (await cards(page)).find((card) => card.name === name);

// A part made of two strokes on the quick look-up, named, and stored where something can be stored.
async function withPart(page, { name = "Capstan pawl", stored = true } = {}) {
  await stroke(page, [55, "bites"], [50, "skates"]);
  await room(page, "Parts");
  await press(page, "Make what stands on the pages a part");
  await write(page, "Name of the part", name);
  if (stored) await until("the card is stored", async () => (await cardOf(page, name))?.files.strokes.length === 2);
}

async function pageWithPart(options = {}) {
  const { page, context } = await open("", { device: "phone", ...options });
  await withPart(page, options);
  return { page, context };
}

async function exported(page) {
  return JSON.parse((await download(page, () => press(page, "Export all parts"))).text);
}

async function take(page, name) {
  await page.getByText(name).first().click();
  await until("it is in hand", async () => (await field(page, "Name of the part").inputValue()) === name);
}

test("a page that is killed while it writes leaves the last complete state", async () => {
  expect(/the page crashed/);
  const { page, context } = await pageWithPart();
  await room(page, "File test");
  const session = await context.newCDPSession(page);
  await page.evaluate(() => {
    const press = () => document.querySelector("[aria-label^='55 file bites']").click();
    for (let time = 0; time < 40; time += 1) setTimeout(press, 7 * time);
  });
  await new Promise((done) => setTimeout(done, 120));
  const pressed = Number((await fileKey(page, 55, "bites").innerText()).match(/\d+/)?.[0] ?? 1);
  // A page that is gone answers nothing.
  session.send("Page.crash").catch(() => {});
  await page.waitForEvent("crash");
  const again = await context.newPage();
  await again.goto(server.url);
  await shown(again);
  await again.getByRole("button", { name: /Capstan pawl/ }).waitFor();
  const there = Number((await fileKey(again, 55, "bites").innerText()).match(/\d+/)?.[0] ?? 1);
  // The last press before the end may not have been handed over yet; every one before it was.
  assert.ok(there >= pressed - 1 && there <= 41, `${there} strokes, ${pressed} were shown`);
  await until("the card holds what the page shows", async () => {
    const card = await cardOf(again, "Capstan pawl");
    return card.files.strokes.filter((stroke) => stroke.file === 55).length === there;
  });
  await stroke(again, [60, "bites"]);
  await until("and goes on", async () => (await cardOf(again, "Capstan pawl")).files.strokes.at(-1).file === 60);
  await room(again, "Parts");
  assert.equal((await exported(again)).parts.length, 1);
});

for (const [what, init, fault] of FULL) {
  test(`storage that is full and ${what} is told, the part is exported whole, and stored when there is room`, async () => {
    if (fault) expect(fault);
    const { page } = await pageWithPart({ init });
    await page.evaluate(() => (globalThis.full = true));
    await write(page, "Notes", "Fit to the wheel.");
    await says(page, "body", "The card could not be stored.");
    assert.equal((await exported(page)).parts[0].notes, "Fit to the wheel.");
    assert.equal((await cardOf(page, "Capstan pawl")).notes, "", "the last complete state is there");
    // It must not give way to another part while it is nowhere else.
    await tapOrClick(button(page, "Put away").first());
    await tapOrClick(button(page, "New part").first());
    await new Promise((done) => setTimeout(done, 1_000));
    assert.equal(await field(page, "Notes").inputValue(), "Fit to the wheel.");
    assert.equal(await field(page, "Name of the part").inputValue(), "Capstan pawl");
    await page.evaluate(() => (globalThis.full = false));
    await write(page, "Where its steel is from", "bar 7");
    await until("all of it is stored", async () => {
      const card = await cardOf(page, "Capstan pawl");
      return card.notes === "Fit to the wheel." && card.steel.origin === "bar 7";
    });
  });
}

for (const [what, init] of CLOSED) {
  test(`where storage ${what}, parts are kept until the page is closed, it is said, and export works`, async () => {
    const { page } = await open("", { device: "phone", init });
    await shown(page);
    await withPart(page, { stored: false });
    await says(page, "body", "Nothing can be stored on this device now");
    await tapOrClick(button(page, "Put away").first());
    await take(page, "Capstan pawl");
    const file = await exported(page);
    assert.equal(file.parts[0].files.strokes.length, 2);
  });
}

async function secondTab(context) {
  const page = await context.newPage();
  await page.goto(new URL("#parts", server.url).href);
  await shown(page);
  return page;
}

test("two tabs keep a sheet each, share the cards, and tell each other what changed", async () => {
  const { page: one, context } = await pageWithPart();
  const two = await secondTab(context);
  // What stands on the pages of the first tab is not in the second one's way.
  await room(two, "File test");
  await stroke(two, [65, "skates"]);
  await until("each has a document of its own", async () => {
    const all = await store(two, "documents");
    return all.page?.includes("Capstan pawl") && all["page-2"]?.includes('"file":65');
  });
  await room(two, "Parts");
  await take(two, "Capstan pawl");
  await write(two, "Notes", "Seen from the second tab.");
  await until("the first tab shows it", async () => (await field(one, "Notes").inputValue()) === "Seen from the second tab.");
  await write(one, "Where its steel is from", "bar 7");
  await until("and the second what the first did", async () => (await field(two, "Where its steel is from").inputValue()) === "bar 7");
  assert.equal((await cards(one)).length, 1);
  // Loaded again, each finds its own.
  await reload(one);
  assert.equal(await field(one, "Notes").inputValue(), "Seen from the second tab.");
});

test("two tabs that do not hear each other both keep what they wrote", async () => {
  const { page: one, context } = await pageWithPart({ init: () => delete globalThis.BroadcastChannel });
  const two = await secondTab(context);
  await take(two, "Capstan pawl");
  await write(one, "Notes", "Written in the first tab.");
  await until("it is stored", async () => (await cardOf(one, "Capstan pawl")).notes !== "");
  await write(two, "Notes", "Written in the second tab.");
  await says(two, "body", "Another tab changed this part too.");
  await until("both are stored", async () => (await cardOf(two, "Capstan pawl (2)"))?.notes === "Written in the second tab.");
  assert.equal((await cardOf(two, "Capstan pawl")).notes, "Written in the first tab.");
  assert.equal((await exported(two)).parts.length, 2);
});

test("a new version that comes while a card is open finds the card as it was", async () => {
  const { page } = await pageWithPart();
  await isReady(page);
  await withNewVersion(server, async () => {
    await reload(page);
    await field(page, "Notes").fill("Typed just before.");
    await tapOrClick(button(page, "Update now"));
    await newVersionRuns(page);
    await shown(page);
    assert.equal(await field(page, "Notes").inputValue(), "Typed just before.");
    assert.equal((await cardOf(page, "Capstan pawl")).files.strokes.length, 2);
    assert.equal((await exported(page)).parts.length, 1);
  });
});

test("a clock that was set back is told, and turns nothing round", async () => {
  const init = () => {
    const real = Date.now;
    Date.now = () => real.call(Date) + (globalThis.shift ?? 0);
  };
  const { page } = await pageWithPart({ init });
  const before = await cardOf(page, "Capstan pawl");
  await page.evaluate(() => (globalThis.shift = -3 * 24 * 3600 * 1000));
  await write(page, "Remark", "Scale on the nose.");
  await press(page, "Add the remark");
  await says(page, "body", "clock");
  await until("it is stored", async () => (await cardOf(page, "Capstan pawl")).story.length === 1);
  const after = await cardOf(page, "Capstan pawl");
  assert.ok(after.changed >= before.changed, `${after.changed} is not before ${before.changed}`);
  assert.ok(after.revision > before.revision);
  assert.ok(after.story[0].at < before.changed, "what the clock said stands in the story");
  assert.equal((await exported(page)).parts[0].story.length, 1);
});

test("stored cards that were damaged are kept aside and told, all others are there, and export works", async () => {
  const { page } = await pageWithPart();
  const first = await cardOf(page, "Capstan pawl");
  await tapOrClick(button(page, "Put away").first());
  await room(page, "File test");
  await withPart(page, { name: "Stern-bush drift" });
  const drift = await cardOf(page, "Stern-bush drift");
  await store(page, "cards", drift.id, '{"schema":1,"card":{"name":');
  await store(page, "cards", "0123456789abcdef", "half a card");
  await reload(page);
  // The part in hand is whole in the state of the page.
  await says(page, "body", "The stored card of this part could not be read.");
  assert.equal(await field(page, "Name of the part").inputValue(), "Stern-bush drift");
  await until("it is written anew", async () => {
    const all = await store(page, "cards");
    return all[drift.id].includes('"Stern-bush drift"');
  });
  const texts = Object.values(await store(page, "cards"));
  assert.ok(texts.includes('{"schema":1,"card":{"name":'), "what could not be read is kept");
  assert.ok(texts.includes("half a card"));
  assert.equal(await page.getByText("A card that cannot be read").count(), 2);
  await page.getByText("Capstan pawl").first().waitFor();
  const names = (await exported(page)).parts.map((part) => part.name).sort();
  assert.deepEqual(names, ["Capstan pawl", "Stern-bush drift"]);
  const untouched = JSON.parse((await store(page, "cards"))[first.id]).card;
  assert.deepEqual(untouched, first, "the other card was not touched");
});

test("a card that another version writes while it is in hand is not written over", async () => {
  const { page } = await pageWithPart();
  const { id } = await cardOf(page, "Capstan pawl");
  const theirs = '{"schema":9,"card":{"name":"of the future"}}';
  await store(page, "cards", id, theirs);
  await write(page, "Notes", "Fit to the wheel.");
  await says(page, "body", "Another tab changed this part too.");
  await until("it goes on beside", async () => {
    const all = Object.values(await store(page, "cards"));
    return all.includes(theirs) && all.some((text) => text.includes("Capstan pawl (2)") && text.includes("Fit to the wheel."));
  });
});

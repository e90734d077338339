// What can go wrong while parts are kept: the last complete state is there, the person is told, export still works.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { FULL, isReady, newVersionRuns, reload, shown, stage, until, withNewVersion } from "./lib.mjs";

const { expect, open, server } = stage();

const key = (page, grade, word) => page.getByRole("button", { name: `${grade} file ${word}` });
const button = (page, name) => page.getByRole("button", { name, exact: true });
const field = (page, name) => page.getByLabel(name, { exact: true });
const place = (page, name) => page.getByRole("link", { name, exact: true }).click();
const says = (page, text) => page.locator("body").filter({ hasText: text }).waitFor({ timeout: 10_000 });

async function type(page, name, text) {
  await field(page, name).fill(text);
  await field(page, name).press("Tab");
}

// Everything in a store of the page's own database, or one text put into it.
const store = (page, name, key, text) =>
  page.evaluate(
    ([name, key, text]) =>
      new Promise((done, failed) => {
        const request = indexedDB.open("biteband");
        request.onerror = () => failed(request.error);
        request.onsuccess = () => {
          const database = request.result;
          const transaction = database.transaction(name, text === undefined ? "readonly" : "readwrite");
          const all = transaction.objectStore(name);
          if (text !== undefined) all.put(text, key);
          const [keys, texts] = [all.getAllKeys(), all.getAll()];
          transaction.oncomplete = () => {
            database.close();
            done(Object.fromEntries(keys.result.map((key, place) => [key, texts.result[place]])));
          };
          transaction.onabort = () => failed(transaction.error);
        };
      }),
    [name, key, text],
  );
const cards = async (page) => Object.values(await store(page, "cards")).map((text) => JSON.parse(text).card);
const cardOf = async (page, name) => (await cards(page)).find((card) => card.name === name);

// A part made of two strokes on the quick look-up, named, and stored where something can be stored.
async function withPart(page, { name = "Capstan pawl", stored = true } = {}) {
  await key(page, 55, "bites").click();
  await key(page, 50, "skates").click();
  await place(page, "Parts");
  await button(page, "Make what stands on the pages a part").click();
  await type(page, "Name of the part", name);
  if (stored) await until("the card is stored", async () => (await cardOf(page, name))?.files.strokes.length === 2);
}

async function pageWithPart(options = {}) {
  const { page, context } = await open("", { device: "phone", ...options });
  await withPart(page, options);
  return { page, context };
}

async function exported(page) {
  const [download] = await Promise.all([page.waitForEvent("download"), button(page, "Export all parts").click()]);
  return JSON.parse(readFileSync(await download.path(), "utf8"));
}

test("a page that is killed while it writes leaves the last complete state", async () => {
  expect(/the page crashed/);
  const { page, context } = await pageWithPart();
  await place(page, "File test");
  const session = await context.newCDPSession(page);
  await page.evaluate(() => {
    const press = () => document.querySelector("[aria-label^='55 file bites']").click();
    for (let time = 0; time < 40; time += 1) setTimeout(press, 7 * time);
  });
  await new Promise((done) => setTimeout(done, 120));
  const pressed = Number((await key(page, 55, "bites").innerText()).match(/\d+/)?.[0] ?? 1);
  // A page that is gone answers nothing.
  session.send("Page.crash").catch(() => {});
  await page.waitForEvent("crash");
  const again = await context.newPage();
  await again.goto(server.url);
  await shown(again);
  await again.getByRole("button", { name: /Capstan pawl/ }).waitFor();
  const there = Number((await key(again, 55, "bites").innerText()).match(/\d+/)?.[0] ?? 1);
  // The last press before the end may not have been handed over yet; every one before it was.
  assert.ok(there >= pressed - 1 && there <= 41, `${there} strokes, ${pressed} were shown`);
  await until("the card holds what the page shows", async () => {
    const card = await cardOf(again, "Capstan pawl");
    return card.files.strokes.filter((stroke) => stroke.file === 55).length === there;
  });
  await key(again, 60, "bites").click();
  await until("and goes on", async () => (await cardOf(again, "Capstan pawl")).files.strokes.at(-1).file === 60);
  await place(again, "Parts");
  assert.equal((await exported(again)).parts.length, 1);
});

for (const [what, init] of FULL) {
  test(`storage that is full and ${what} is told, the part is exported whole, and stored when there is room`, async () => {
    // The storage library lets go of its listeners when a transaction ends badly, and the browser still calls
    // them; it is told on the console and harms nothing.
    if (what === "fails as it ends") expect(/closure invoked recursively or after being dropped/);
    const { page } = await pageWithPart({ init });
    await page.evaluate(() => (globalThis.full = true));
    await type(page, "Notes", "Fit to the wheel.");
    await says(page, "The card could not be stored.");
    assert.equal((await exported(page)).parts[0].notes, "Fit to the wheel.");
    assert.equal((await cardOf(page, "Capstan pawl")).notes, "", "the last complete state is there");
    // It must not give way to another part while it is nowhere else.
    await button(page, "Put away").first().click();
    await button(page, "New part").first().click();
    await new Promise((done) => setTimeout(done, 1_000));
    assert.equal(await field(page, "Notes").inputValue(), "Fit to the wheel.");
    assert.equal(await field(page, "Name of the part").inputValue(), "Capstan pawl");
    await page.evaluate(() => (globalThis.full = false));
    await type(page, "Where its steel is from", "bar 7");
    await until("all of it is stored", async () => {
      const card = await cardOf(page, "Capstan pawl");
      return card.notes === "Fit to the wheel." && card.steel.origin === "bar 7";
    });
  });
}

for (const [what, init] of [
  ["is absent", () => Object.defineProperty(globalThis, "indexedDB", { value: undefined })],
  [
    "refuses to open",
    () => {
      IDBFactory.prototype.open = () => {
        throw new DOMException("The operation is insecure.", "SecurityError");
      };
    },
  ],
  ["never answers", () => (IDBFactory.prototype.open = () => new EventTarget())],
]) {
  test(`where storage ${what}, parts are kept until the page is closed, it is said, and export works`, async () => {
    const { page } = await open("", { device: "phone", init });
    await shown(page);
    await withPart(page, { stored: false });
    await says(page, "Nothing can be stored on this device now");
    await button(page, "Put away").first().click();
    await page.getByText("Capstan pawl").first().click();
    await until("it is in hand again", async () => (await field(page, "Name of the part").inputValue()) === "Capstan pawl");
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
  await place(two, "File test");
  await key(two, 65, "skates").click();
  await until("each has a document of its own", async () => {
    const all = await store(two, "documents");
    return all.page?.includes("Capstan pawl") && all["page-2"]?.includes('"file":65');
  });
  await place(two, "Parts");
  await two.getByText("Capstan pawl").first().click();
  await until("it is in hand", async () => (await field(two, "Name of the part").inputValue()) === "Capstan pawl");
  await type(two, "Notes", "Seen from the second tab.");
  await until("the first tab shows it", async () => (await field(one, "Notes").inputValue()) === "Seen from the second tab.");
  await type(one, "Where its steel is from", "bar 7");
  await until("and the second what the first did", async () => (await field(two, "Where its steel is from").inputValue()) === "bar 7");
  assert.equal((await cards(one)).length, 1);
  // Loaded again, each finds its own.
  await reload(one);
  assert.equal(await field(one, "Notes").inputValue(), "Seen from the second tab.");
});

test("two tabs that do not hear each other both keep what they wrote", async () => {
  const { page: one, context } = await pageWithPart({ init: () => delete globalThis.BroadcastChannel });
  const two = await secondTab(context);
  await two.getByText("Capstan pawl").first().click();
  await until("it is in hand", async () => (await field(two, "Name of the part").inputValue()) === "Capstan pawl");
  await type(one, "Notes", "Written in the first tab.");
  await until("it is stored", async () => (await cardOf(one, "Capstan pawl")).notes !== "");
  await type(two, "Notes", "Written in the second tab.");
  await says(two, "Another tab changed this part too.");
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
    await button(page, "Update now").click();
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
  await type(page, "Remark", "Scale on the nose.");
  await button(page, "Add the remark").click();
  await says(page, "clock");
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
  await button(page, "Put away").first().click();
  await place(page, "File test");
  await withPart(page, { name: "Stern-bush drift" });
  const drift = await cardOf(page, "Stern-bush drift");
  await store(page, "cards", drift.id, '{"schema":1,"card":{"name":');
  await store(page, "cards", "0123456789abcdef", "half a card");
  await reload(page);
  // The part in hand is whole in the state of the page.
  await says(page, "The stored card of this part could not be read.");
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
  await type(page, "Notes", "Fit to the wheel.");
  await says(page, "Another tab changed this part too.");
  await until("it goes on beside", async () => {
    const all = Object.values(await store(page, "cards"));
    return all.includes(theirs) && all.some((text) => text.includes("Capstan pawl (2)") && text.includes("Fit to the wheel."));
  });
});

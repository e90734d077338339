// What is kept on the device: across reloads, beside damage, with closed or full storage, through an update.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { pathToFileURL } from "node:url";
import {
  FULL, description, isReady, newVersionRuns, noAxeViolations, reload, shown, singleFile, stage, until, withNewVersion,
} from "./lib.mjs";

const { expect, open, server, show } = stage();
const SAMPLE = readFileSync(new URL("../../crates/bench/tests/stored/schema-1.json", import.meta.url), "utf8");

const key = (page, grade, word) => page.getByRole("button", { name: `${grade} file ${word}` });
const button = (page, name) => page.getByRole("button", { name, exact: true });
const field = (page, name) => page.getByLabel(name, { exact: true });

async function says(page, place, ...wanted) {
  for (const text of wanted) await page.locator(place).filter({ hasText: text }).first().waitFor({ timeout: 8000 });
}

// Types into a field and leaves it, which closes the pad.
async function type(page, name, text) {
  await field(page, name).fill(text);
  await field(page, name).press("Enter");
}

// Reads a document of the page's own database, or writes one.
const stored = (page, name, text) =>
  page.evaluate(
    ([name, text]) =>
      new Promise((done, failed) => {
        const request = indexedDB.open("biteband");
        request.onerror = () => failed(request.error);
        request.onsuccess = () => {
          const database = request.result;
          const mode = text === undefined ? "readonly" : "readwrite";
          const transaction = database.transaction("documents", mode);
          const store = transaction.objectStore("documents");
          const found = text === undefined ? store.get(name) : store.put(text, name);
          transaction.oncomplete = () => {
            database.close();
            done(found.result);
          };
          transaction.onabort = () => failed(transaction.error);
        };
      }),
    [name, text],
  );

// The page as it starts on a stored text.
async function startedWith(text) {
  const page = await show("", { device: "phone" });
  await stored(page, "page", text);
  await page.goto("about:blank");
  await page.goto(server.url);
  await shown(page);
  return page;
}

// Enters something and sees that the page answers it.
async function works(page) {
  await key(page, 55, "bites").click();
  await key(page, 50, "skates").click();
  await says(page, ".verdict", "Between your 50 and 55 files");
}

test("strokes, texts, page and theme are there again after a reload", async () => {
  const page = await show("", { device: "phone" });
  await works(page);
  await type(page, "Wanted hardness", "50-54");
  await button(page, "Casual").click();
  await page.getByRole("link", { name: "Convert" }).click();
  await type(page, "Hardness, as written", "quite hard");
  await button(page, "Sources, limits and settings").click();
  await button(page, "dim").click();
  await page.goBack();
  await field(page, "Hardness, as written").waitFor();
  await page.goto("about:blank");
  await page.goto(server.url);
  await shown(page);
  assert.equal(await field(page, "Hardness, as written").inputValue(), "quite hard");
  assert.equal(await page.evaluate(() => document.documentElement.dataset.theme), "dim");
  await page.getByRole("link", { name: "File test" }).click();
  await says(page, ".verdict", "Between your 50 and 55 files");
  await button(page, "55 file bites, 1").waitFor();
  assert.equal(await field(page, "Wanted hardness").inputValue(), "50-54");
  assert.equal(await button(page, "Casual").getAttribute("aria-pressed"), "true");
  await button(page, "Undo").click();
  await says(page, ".verdict", "Softer than your 55 file");
});

test("what was typed into the single file is there again when the file is opened anew", async () => {
  const file = pathToFileURL(singleFile).href;
  const page = await show(file, { device: "phone" });
  await works(page);
  await type(page, "Wanted hardness", "50-54");
  await page.goto("about:blank");
  await page.goto(file);
  await shown(page);
  await says(page, ".verdict", "Between your 50 and 55 files");
  assert.equal(await field(page, "Wanted hardness").inputValue(), "50-54");
});

test("every change is kept even when the page is loaded again at once", async () => {
  const page = await show("", { device: "phone" });
  for (const times of [2, 4, 6]) {
    await page.evaluate(() => {
      const press = () => document.querySelector("[aria-label^='55 file bites']").click();
      press();
      // The second press comes while the first one is still being written.
      setTimeout(() => {
        press();
        setTimeout(() => location.reload(), 0);
      }, 0);
    });
    await page.waitForEvent("load");
    await shown(page);
    await button(page, `55 file bites, ${times}`).waitFor({ timeout: 8000 });
  }
});

test("a document of the first stored form is read", async () => {
  const page = await startedWith(SAMPLE);
  assert.equal(await page.evaluate(() => document.documentElement.dataset.theme), "dim");
  assert.equal(await field(page, "Hardness, as written").inputValue(), "HV 700 ±50");
  // ASTM E140 Table 1: 653 HV is 58 HRC, 746 HV is 62 HRC.
  await says(page, ".results", "58 – 62 HRC");
  await page.getByRole("link", { name: "File test" }).click();
  assert.equal(await field(page, "Wanted hardness").inputValue(), "50-54 HRC");
  for (const name of ["65 file bites, 1", "55 file not sure, 1", "40 file skates, 1"]) await button(page, name).waitFor();
  assert.equal(await button(page, "Spot 2").getAttribute("aria-pressed"), "true");
  await page.locator("summary").filter({ hasText: "Prove your files" }).click();
  await says(page, ".proofs", "55 file on 53 HRC: bites");
});

for (const damaged of ["{\"schema\":1,\"state\":{\"convert\":{\"text\":5}}}", "half a docu", ""]) {
  test(`the stored text "${damaged}" is kept aside and offered, and the page works`, async () => {
    const page = await startedWith(damaged);
    await says(page, ".notice", "could not be read. It is kept as it was");
    await page.locator(".notice summary").click();
    assert.equal(await page.locator(".notice textarea").inputValue(), damaged);
    await noAxeViolations(page);
    assert.equal(await stored(page, "page-unreadable"), damaged);
    await works(page);
    await until("the new state is stored", async () => (await stored(page, "page")).includes("\"bites\""));
    assert.equal(await stored(page, "page-unreadable"), damaged);
    await page.locator(".notice").getByRole("button", { name: "Close" }).first().click();
    await reload(page);
    await says(page, ".verdict", "Between your 50 and 55 files");
    assert.equal(await page.locator(".notice.trouble").count(), 0);
  });
}

test("a document of a newer version is told and left as it is", async () => {
  const newer = "{\"schema\":99,\"app\":\"9.0.0\",\"state\":{\"kept\":true}}";
  const page = await startedWith(newer);
  await says(page, ".notice", "written by a newer version (format 99; this one knows 1)");
  await works(page);
  await page.getByRole("link", { name: "Convert" }).click();
  await type(page, "Hardness, as written", "52");
  await says(page, ".results", "544 HV");
  assert.equal(await stored(page, "page"), newer);
});

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
  [
    "never answers",
    () => {
      const real = IDBFactory.prototype.open;
      IDBFactory.prototype.open = function (name, version) {
        const request = real.call(this, `${name}-held-back`, version);
        for (const event of ["onsuccess", "onerror", "onupgradeneeded", "onblocked"]) {
          Object.defineProperty(request, event, { set() {}, get: () => null });
        }
        request.addEventListener = () => {};
        return request;
      };
    },
  ],
]) {
  test(`the page starts in five seconds and works where storage ${what}`, async () => {
    const { page } = await open("", { device: "phone", init, started: false });
    await page.waitForSelector("main.wide", { timeout: 5000 });
    await says(page, ".notice", "does not let the page store anything");
    await works(page);
    await noAxeViolations(page);
    await page.locator(".notice.trouble").getByRole("button", { name: "Close" }).click();
    await until("the notice is gone", async () => (await page.locator(".notice.trouble").count()) === 0);
    await says(page, ".verdict", "Between your 50 and 55 files");
  });
}

for (const [what, init] of FULL) {
  test(`storage that is full and ${what} is told, and nothing entered is lost`, async () => {
    // The storage library lets go of its listeners when a transaction ends badly, and the browser still calls
    // them; it is told on the console and harms nothing.
    if (what === "fails as it ends") expect(/closure invoked recursively or after being dropped/);
    const page = await show("", { device: "phone", init });
    await page.evaluate(() => (globalThis.full = true));
    await works(page);
    await says(page, ".notice", "The storage is full: the last change is not kept.");
    await type(page, "Wanted hardness", "50-54");
    await says(page, ".legend", "in 50-54");
    await page.evaluate(() => (globalThis.full = false));
    await button(page, "Careful").click();
    await until("all of it is stored", async () => ((await stored(page, "page")) ?? "").includes("careful"));
    await reload(page);
    await says(page, ".verdict", "Between your 50 and 55 files");
  });
}

test("the theme holds where the page may not use the local storage", async () => {
  const init = () => {
    Object.defineProperty(globalThis, "localStorage", {
      get() {
        throw new DOMException("The operation is insecure.", "SecurityError");
      },
    });
  };
  const page = await show("#about", { init });
  await button(page, "dim").click();
  await until("the page is dim", () => page.evaluate(() => document.documentElement.dataset.theme === "dim"));
  await reload(page);
  assert.equal(await page.evaluate(() => document.documentElement.dataset.theme), "dim");
});

test("the new version comes when it is asked for and finds all that was entered", async () => {
  const page = await show("", { device: "phone" });
  await isReady(page);
  await says(page, ".notice", "Ready to use without a network.");
  await works(page);
  await withNewVersion(server, async () => {
    await reload(page);
    await says(page, ".notice", "A new version is ready.");
    await type(page, "Wanted hardness", "50-54");
    await button(page, "Update now").tap();
    await newVersionRuns(page);
    await shown(page);
    await says(page, ".verdict", "Between your 50 and 55 files");
    assert.equal(await field(page, "Wanted hardness").inputValue(), "50-54");
    assert.equal(await button(page, "Update now").count(), 0);
  });
});

test("a new version that is put off is not asked about again until the next start", async () => {
  const page = await show("", { device: "phone" });
  await isReady(page);
  await withNewVersion(server, async () => {
    await reload(page);
    await button(page, "Later").tap();
    await button(page, "Update now").waitFor({ state: "detached" });
    await works(page);
    assert.equal(await button(page, "Update now").count(), 0);
    assert.doesNotMatch(await description(page), /Version two/);
    await reload(page);
    await button(page, "Update now").waitFor();
    await says(page, ".verdict", "Between your 50 and 55 files");
  });
});

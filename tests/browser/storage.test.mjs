// What is kept on the device: across reloads, beside damage, with closed or full storage, through an update.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { test } from "node:test";
import { pathToFileURL } from "node:url";
import { button, field, press, says, stroke, tapOrClick, type, unfold } from "./hands.mjs";
import { CLOSED, FULL, store } from "./kept.mjs";
import {
  description, isReady, newVersionRuns, noAxeViolations, reload, shown, singleFile, stage, until, withNewVersion,
} from "./lib.mjs";

const { expect, open, server, show } = stage();
const SAMPLE = readFileSync(new URL("../../crates/bench/tests/stored/schema-1.json", import.meta.url), "utf8");

// A document of the page's own database.
const stored = async (page, name) => (await store(page, "documents"))[name];

// The page as it starts on a stored text.
async function startedWith(text) {
  const page = await show("", { device: "phone" });
  await store(page, "documents", "page", text);
  await page.goto("about:blank");
  await page.goto(server.url);
  await shown(page);
  return page;
}

// Enters something and sees that the page answers it.
async function works(page) {
  await stroke(page, [55, "bites"], [50, "skates"]);
  await says(page, ".verdict", "Between your 50 and 55 files");
}

test("strokes, texts, page and theme are there again after a reload", async () => {
  const page = await show("", { device: "phone" });
  await works(page);
  await type(page, "Wanted hardness", "50-54");
  await press(page, "Casual");
  await page.getByRole("link", { name: "Convert" }).click();
  await type(page, "Hardness, as written", "quite hard");
  await tapOrClick(button(page, "Sources, limits and settings"));
  await press(page, "dim");
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
  await press(page, "Undo");
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
  await unfold(page, "Prove your files");
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

for (const [what, init] of CLOSED) {
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

for (const [what, init, fault] of FULL) {
  test(`storage that is full and ${what} is told, and nothing entered is lost`, async () => {
    if (fault) expect(fault);
    const page = await show("", { device: "phone", init });
    await page.evaluate(() => (globalThis.full = true));
    await works(page);
    await says(page, ".notice", "The storage is full: the last change is not kept.");
    await type(page, "Wanted hardness", "50-54");
    await says(page, ".legend", "in 50-54");
    await page.evaluate(() => (globalThis.full = false));
    await press(page, "Careful");
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
  await press(page, "dim");
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
    await tapOrClick(button(page, "Update now"));
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
    await tapOrClick(button(page, "Later"));
    await button(page, "Update now").waitFor({ state: "detached" });
    await works(page);
    assert.equal(await button(page, "Update now").count(), 0);
    assert.doesNotMatch(await description(page), /Version two/);
    await reload(page);
    await button(page, "Update now").waitFor();
    await says(page, ".verdict", "Between your 50 and 55 files");
  });
});

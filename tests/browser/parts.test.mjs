// The parts of the module: loaded when their page is opened, kept for use without a network, asked for again when
// they did not come.
import assert from "node:assert/strict";
import { readdirSync, rmSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { copyOfPage, dist, noAxeViolations, stage, until } from "./lib.mjs";

const { open, server, expect } = stage();

const isPart = (name) => /-(about|convert|mark|paper|steel|unknown|shared-\d+)\.wasm$/.test(name);
const go = (page, hash) => page.evaluate((to) => { location.hash = to; }, hash);
// Without a worker nothing is kept, as on the very first visit.
const noWorker = {
  init: () => {
    delete Navigator.prototype.serviceWorker;
    // When the page stands: the moment its first key is there.
    new MutationObserver((_, observer) => {
      if (!document.querySelector("main button")) return;
      globalThis.standing = performance.now();
      observer.disconnect();
    }).observe(document, { childList: true, subtree: true });
  },
};

const ROOMS = {
  "#convert": (page) => page.locator("#field-convert"),
  "#mark": (page) => page.locator("#field-mark-first"),
  "#paper": (page) => page.locator(".sheets img").first(),
  "#steel": (page) => page.locator("#field-steel-query"),
  "#unknown": (page) => page.locator(".steps"),
  "#about": (page) => page.getByRole("heading", { name: "Cautions" }),
};

for (const [hash, inside] of Object.entries(ROOMS)) {
  test(`${hash} opens as the first address`, async () => {
    const { page } = await open(hash);
    await inside(page).waitFor();
    assert.equal(await page.evaluate(() => location.hash), hash);
    assert.equal(await page.getByRole("heading", { level: 1 }).count(), 1);
  });
}

test("the start page stands before any part is asked for, and then every part comes ahead of its use", async () => {
  server.requests.length = 0;
  const { page } = await open("", noWorker);
  const parts = readdirSync(dist).filter(isPart);
  assert.ok(parts.length >= 5, parts.join());
  await until("every part is there", () => parts.every((part) => server.requests.includes(`/${part}`)));
  const [standing, first] = await page.evaluate(() => {
    const asked = performance.getEntriesByType("resource").filter((one) => /-(mark|convert)\.wasm$/.test(one.name));
    return [globalThis.standing, Math.min(...asked.map((one) => one.startTime))];
  });
  assert.ok(first > standing, `${first} is after ${standing}`);
  server.requests.length = 0;
  await go(page, "#mark");
  await ROOMS["#mark"](page).waitFor();
  assert.deepEqual(server.requests.filter(isPart), [], "a tap needs no request");
});

test("a room that was never opened opens with the network cut", async () => {
  const { page } = await open("");
  await page.waitForSelector("html[data-offline=ready]", { state: "attached" });
  await server.stop();
  try {
    for (const [hash, inside] of Object.entries(ROOMS)) {
      await page.goto(server.url + hash);
      await page.reload();
      await inside(page).waitFor();
    }
  } finally {
    await server.start();
  }
});

test("a part that cannot be had is said, loses nothing that was typed, and comes when asked for again", async () => {
  expect(/404/);
  expect(/mark\.wasm/);
  const folder = copyOfPage((copy) => {
    for (const name of readdirSync(copy)) if (/-mark\.wasm$/.test(name)) rmSync(join(copy, name));
  });
  server.mounts["/"] = folder;
  try {
    const { page } = await open("", { ...noWorker, device: "phone" });
    const target = page.locator("#field-target");
    await target.fill("50-54 HRC");
    await target.press("Enter");
    await go(page, "#mark");
    const status = page.getByRole("status").filter({ hasText: "could not be loaded" });
    await status.waitFor();
    await noAxeViolations(page);
    // The way to other pages stays open.
    await page.getByRole("link", { name: "A number" }).tap();
    await ROOMS["#convert"](page).waitFor();
    await go(page, "#mark");
    await status.waitFor();
    server.mounts["/"] = dist;
    await status.getByRole("button", { name: "Try again" }).tap();
    await ROOMS["#mark"](page).waitFor();
    await go(page, "#file-test");
    assert.equal(await target.inputValue(), "50-54 HRC");
  } finally {
    server.mounts["/"] = dist;
  }
});

for (const [hash, part, title] of [["#mark", /-mark\.wasm$/, "A mark"], ["#steel", /-steel\.wasm$/, "Steel"]]) {
  test(`while ${hash} is on its way the page says so, and its heading then has the focus`, async () => {
    const { page } = await open("about:blank", { ...noWorker, started: false });
    let release;
    const held = new Promise((done) => { release = done; });
    await page.route(part, async (route) => {
      await held;
      await route.continue();
    });
    await page.goto(server.url);
    await page.getByRole("button", { name: "Undo" }).waitFor();
    await go(page, hash);
    await page.getByRole("status").filter({ hasText: "being loaded" }).waitFor();
    await page.getByRole("heading", { level: 1, name: title, exact: true }).waitFor();
    await noAxeViolations(page);
    release();
    await ROOMS[hash](page).waitFor();
    await until("the heading has the focus", () => page.evaluate(() => document.activeElement?.tagName === "H1"));
  });
}

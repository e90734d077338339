// The parts of the module: loaded when their page is opened, kept for use without a network, asked for again when
// they did not come.
import assert from "node:assert/strict";
import { readFileSync, readdirSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { pathToFileURL } from "node:url";
import { go, hasFocus } from "./hands.mjs";
import {
  copyOfPage, dist, hold, isPlainPart, isReady, noAxeViolations, serving, singleFile, stage, until, withoutNetwork,
} from "./lib.mjs";

const { open, server, expect } = stage();

const isPart = (name) => /-(about|convert|parts|steel|timer|unknown|shared-\d+)\.part$/.test(name);
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
  "#temper": (page) => page.locator("#field-temper-held"),
  "#timer": (page) => page.locator("#field-timer-length"),
  "#unknown": (page) => page.locator(".steps"),
  "#parts": (page) => page.getByRole("button", { name: "New part" }),
  "#claim": (page) => page.locator("#field-claim-says"),
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
    const asked = performance.getEntriesByType("resource").filter((one) => /-convert\.part$/.test(one.name));
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
  await isReady(page);
  await withoutNetwork(server, async () => {
    for (const [hash, inside] of Object.entries(ROOMS)) {
      await page.goto(server.url + hash);
      await page.reload();
      await inside(page).waitFor();
    }
  });
});

// A page whose packed part of marks was spoilt.
const spoilt = (spoil) => copyOfPage((copy) => {
  for (const name of readdirSync(copy)) if (/-convert\.part$/.test(name)) spoil(join(copy, name));
});
// One bit in the middle, which a host or a cable may turn; the checksum at the end of the file then differs.
const turnBit = (path) => {
  const bytes = readFileSync(path);
  bytes[bytes.length >> 1] ^= 1;
  writeFileSync(path, bytes);
};

for (const [what, spoil] of [
  ["cut off", (path) => truncateSync(path, 20_000)],
  ["damaged", turnBit],
  ["not packed at all", (path) => writeFileSync(path, readFileSync(path.replace(/part$/, "wasm")))],
]) {
  test(`a part that is ${what} is refused and said, and a whole one comes when asked for again`, async () => {
    // As Chromium says that a stream broke off.
    expect(/TypeError: Failed to fetch/);
    await serving(server, spoilt(spoil), async () => {
      const { page } = await open("#mark", noWorker);
      await missing(page).waitFor();
      const asked = () => server.requests.filter((path) => /-convert\.part$/.test(path)).length;
      const before = asked();
      await again(page).click();
      await until("it is asked for again", () => asked() > before);
      await missing(page).waitFor();
      server.mounts["/"] = dist;
      await again(page).click();
      await ROOMS["#mark"](page).waitFor();
    });
  });
}

// Every room by its link, once the page stands.
async function throughRooms(page) {
  for (const [hash, inside] of Object.entries(ROOMS)) {
    await go(page, hash);
    await inside(page).waitFor();
  }
}

// What stands in place of a part that did not come.
const missing = (page) => page.getByRole("status").filter({ hasText: "could not be loaded" });
const again = (page) => missing(page).getByRole("button", { name: "Try again" });

// As browsers of before 2023.
const cannotUnpack = () => {
  delete globalThis.DecompressionStream;
};

test("a browser that cannot unpack fetches the plain parts", async () => {
  server.requests.length = 0;
  // Without the worker, which would unpack for the page what it has kept packed.
  const init = `(${cannotUnpack})(); (${noWorker.init})();`;
  const { page } = await open("", { init });
  await throughRooms(page);
  const plain = readdirSync(dist).filter(isPlainPart);
  assert.ok(plain.length >= 5, plain.join());
  await until("every part is there", () => plain.every((part) => server.requests.includes(`/${part}`)));
});

test("the single file opens its pages on a browser that cannot unpack", async () => {
  const { page } = await open(pathToFileURL(singleFile).href, { init: cannotUnpack });
  await throughRooms(page);
});

test("where the part of timers cannot be had, a timer is not silently forgotten", async () => {
  expect(/404/);
  expect(/timer\.part/);
  const { page } = await open("#timer", noWorker);
  await page.getByRole("button", { name: "1 h", exact: true }).click();
  await page.getByRole("timer").waitFor();
  await go(page, "#file-test");
  const folder = copyOfPage((copy) => {
    for (const name of readdirSync(copy)) if (/-timer\.part$/.test(name)) rmSync(join(copy, name));
  });
  await serving(server, folder, async () => {
    await page.reload();
    await page.locator("a.running").filter({ hasText: "Timer" }).click();
    await missing(page).waitFor();
    server.mounts["/"] = dist;
    await again(page).click();
    await page.getByRole("timer").waitFor();
  });
});

test("without a network a browser that cannot unpack has every page, kept plain", async () => {
  const folder = copyOfPage((copy) => {
    const worker = join(copy, "sw.js");
    const text = readFileSync(worker, "utf8");
    const old = text.replace('"DecompressionStream" in self', "false");
    assert.notEqual(old, text);
    writeFileSync(worker, old);
  }, { worker: false });
  await serving(server, folder, async () => {
    const { page } = await open("", { init: cannotUnpack });
    await isReady(page);
    await withoutNetwork(server, async () => {
      await page.reload();
      await throughRooms(page);
    });
  });
});

test("a part that cannot be had is said, loses nothing that was typed, and comes when asked for again", async () => {
  expect(/404/);
  expect(/convert\.part/);
  await serving(server, spoilt((path) => rmSync(path)), async () => {
    server.requests.length = 0;
    const { page } = await open("", { ...noWorker, device: "phone" });
    const target = page.locator("#field-target");
    await target.fill("50-54 HRC");
    await target.press("Enter");
    // What comes ahead of its use is asked for once: after that the part comes by the key alone.
    await until("the parts were asked for", () => server.requests.some((path) => /-unknown\.part$/.test(path)));
    await go(page, "#mark");
    await missing(page).waitFor();
    await noAxeViolations(page);
    // The way to other pages stays open.
    await page.getByRole("link", { name: "Steel", exact: true }).tap();
    await ROOMS["#steel"](page).waitFor();
    await go(page, "#mark");
    await missing(page).waitFor();
    server.mounts["/"] = dist;
    await again(page).tap();
    await ROOMS["#mark"](page).waitFor();
    await go(page, "#file-test");
    assert.equal(await target.inputValue(), "50-54 HRC");
  });
});

for (const [hash, part, title] of [["#mark", /-convert\.part$/, "A mark"], ["#steel", /-steel\.part$/, "Steel"]]) {
  test(`while ${hash} is on its way the page says so, and its heading then has the focus`, async () => {
    const { page } = await open("about:blank", { ...noWorker, started: false });
    const letGo = await hold(page, part);
    await page.goto(server.url);
    await page.getByRole("button", { name: "Undo" }).waitFor();
    await go(page, hash);
    await page.getByRole("status").filter({ hasText: "being loaded" }).waitFor();
    await page.getByRole("heading", { level: 1, name: title, exact: true }).waitFor();
    await noAxeViolations(page);
    letGo();
    await ROOMS[hash](page).waitFor();
    await until("the heading has the focus", () => hasFocus(page.locator("main h1")));
  });
}

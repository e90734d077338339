// The focus stays on what has it: whatever comes, goes or changes beside it, nothing that is typed in or pressed is made
// anew. A field that loses the focus loses the next sign as well.
import assert from "node:assert/strict";
import { test } from "node:test";
import { BRACKET, chip, fileKey, go, hasFocus, unfoldAll } from "./hands.mjs";
import { hold, isReady, stage, until } from "./lib.mjs";

const { open, server } = stage();

const PAGES = ["file-test", "convert", "mark", "paper", "steel", "temper", "timer", "unknown", "parts", "claim"];
// Each is right in some fields and wrong in others, so that answers and errors come and go.
const TEXTS = ["x", "O1", "58-60 HRC", "25 mm"];

async function opened(hash) {
  const { page } = await open(`#${hash}`);
  await isReady(page);
  if (hash === "parts") await page.getByRole("button", { name: "New part" }).click();
  await until("the parts have come", () =>
    page.evaluate(() => {
      const come = performance.getEntriesByType("resource").map((one) => one.name);
      return ["parts", "steel", "unknown"].every((part) => come.some((name) => name.endsWith(`-${part}.part`)));
    }));
  await page.locator("main input, main button").first().waitFor();
  await unfoldAll(page);
  return page;
}

const holdOn = (page) => page.evaluate(() => { globalThis.held = document.activeElement; });

async function stillHeld(page, what) {
  const now = await page.evaluate(() => {
    const one = document.activeElement;
    return one === globalThis.held ? undefined : `${one.tagName} ${one.id || one.textContent.slice(0, 40)}`;
  });
  assert.equal(now, undefined, `${what} has the focus no longer`);
}

for (const hash of PAGES) {
  test(`whatever is typed, chosen or pressed on #${hash} keeps the focus`, async () => {
    const page = await opened(hash);
    const fields = await page.locator("main input[type=text]").evaluateAll((all) => all.map((one) => one.id));
    assert.ok(fields.length > 0, "there is a field");
    for (const id of fields) {
      for (const text of TEXTS) {
        const own = page.locator(`#${id}`);
        // Some are there for a choice that another text has changed.
        if (!(await own.isVisible())) continue;
        await own.focus();
        await holdOn(page);
        await page.keyboard.press("Control+a");
        for (const sign of text) {
          await page.keyboard.type(sign);
          await stillHeld(page, `#${id} at ${sign} of ${text}`);
        }
        assert.equal(await own.inputValue(), text);
      }
    }
    for (const select of await page.locator("main select").all()) {
      const values = await select.locator("option").evaluateAll((all) => all.map((one) => one.value));
      for (const value of values) {
        await select.focus();
        await holdOn(page);
        await select.selectOption(value);
        await stillHeld(page, `the choice of ${value}`);
      }
    }
    // An answer to a test of an unknown steel hands the focus on to the next test.
    if (hash === "unknown") return;
    const chips = page.locator("main button.chip[aria-pressed]").filter({ visible: true });
    for (let index = 0; index < (await chips.count()); index += 1) {
      const own = chips.nth(index);
      const name = await own.innerText();
      await own.focus();
      await holdOn(page);
      await page.keyboard.press("Enter");
      await stillHeld(page, name);
    }
  });
}

test("what is loaded while somebody types on the first page moves no field", async () => {
  const { page } = await open("about:blank", { started: false, device: "phone" });
  const letGo = await hold(page, /\.part$/);
  await page.goto(server.url);
  const target = page.locator("#field-target");
  await target.focus();
  await page.keyboard.type("50-");
  letGo();
  await page.locator("summary").filter({ hasText: "Prove your files" }).waitFor();
  await page.locator(".what-now").waitFor();
  assert.ok(await hasFocus(target));
  await page.keyboard.type("54 HRC");
  assert.equal(await target.inputValue(), "50-54 HRC");
});

test("a key that has nothing left to do keeps the focus and does nothing", async () => {
  const { page } = await open("");
  for (const [grade, outcome] of BRACKET.slice(0, 2)) await fileKey(page, grade, outcome).click();
  const [undo, again] = [chip(page, "Undo"), chip(page, "Start again")];
  for (const key of [undo, undo, undo]) {
    await key.focus();
    await page.keyboard.press("Enter");
    assert.ok(await hasFocus(key));
  }
  assert.ok(await undo.isDisabled());
  await fileKey(page, 65, "bites").click();
  await again.focus();
  await page.keyboard.press("Enter");
  assert.ok(await again.isDisabled());
  assert.ok(await hasFocus(again));
});

test("a second press on the key of a timer that went does not stop the one that moved up", async () => {
  const { page } = await open("#timer");
  for (const length of ["5 min", "30 min"]) await chip(page, length).click();
  const timers = page.getByRole("timer");
  await until("both run", async () => (await timers.count()) === 2);
  const last = page.getByRole("button", { name: "Stop", exact: true }).nth(1);
  await last.focus();
  await page.keyboard.press("Enter");
  await until("one is left", async () => (await timers.count()) === 1);
  await page.keyboard.press("Enter");
  await go(page, "#about");
  await go(page, "#timer");
  assert.equal(await timers.count(), 1);
});

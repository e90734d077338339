// What a person does on the page, and how what is there is found; see lib.mjs for all else that a test needs.
//
// go(page, hash)        to another page by its address, as a link does.
// button(page, name)    a button anywhere on the page; chip(page, name): one of the page that is worked on, not of the
//                       bars and notices around it. Both by their exact names.
// fileKey(page, grade, word)  a key of the file test, however often it was pressed.
// field(page, name)     a field by its exact label.
// fold(page, title)     the line that opens a fold, by its exact text.
// status(page)          what the page that is worked on says by itself.
// hasFocus(locator)     whether the keyboard is there.
// tapOrClick(locator)   with the finger where the device is a phone, with the mouse elsewhere.
// press(page, name)     the same with a chip.
// stroke(page, ...strokes)  presses keys of the file test, each [grade, word]; BRACKET is a piece between 50 and 55.
// type(page, name, text, leave)  into a field by its label, and leaves it by a key: Enter unless told.
// ask(page, text)       types what Convert is to convert.
// fields(room, leave)   fields by the ends of their ids. Gives { input, problem, fill, fillAll }: input(page, id) is the
//                       field; problem(page, id) what is said of a text in it that cannot be read;
//                       fill(page, id, text) types into it, in a fold or not, and leaves it by Enter or by `leave`;
//                       fillAll(page, texts) fills each.
// typeOnPad(locator, signs)  by touch, with the page's own keys.
// tabTo(locator, options)    goes there by the Tab key alone; every stop on the way must show where it is.
//                       Options: `tab` another key; `most` stops.
// unfold(page, title)   opens a fold unless it is open, and gives it; unfoldAll(page) opens every one at once.
// textOf(page, place)   what is to be read there, in one line; plain(text) makes it one.
// says(page, place, ...wanted)  waits until the place says every one of the texts or patterns.
// download(page, act)   the file that comes when something is done: { name, text }.
import assert from "node:assert/strict";
import { readFileSync } from "node:fs";
import { until } from "./lib.mjs";

export const BRACKET = [[65, "bites"], [60, "bites"], [55, "bites"], [50, "skates"], [45, "skates"], [40, "skates"]];

export const go = (page, hash) => page.evaluate((to) => { location.hash = to; }, hash);

export const button = (page, name) => page.getByRole("button", { name, exact: true });
export const chip = (page, name) => page.locator("main").getByRole("button", { name, exact: true });
// Its name goes on with the number of strokes.
export const fileKey = (page, grade, word) => page.getByRole("button", { name: `${grade} file ${word}` });
export const field = (page, name) => page.getByLabel(name, { exact: true });
export const fold = (page, title) => {
  // Some titles end with how many there are, in brackets.
  const plainly = title.replace(/[()]/g, "\\$&");
  return page.locator("summary").filter({ hasText: new RegExp(`^${plainly}$`) });
};
export const status = (page) => page.locator("main").getByRole("status");
export const hasFocus = (locator) => locator.evaluate((one) => one === document.activeElement);

export async function tapOrClick(locator) {
  const touch = await locator.page().evaluate(() => matchMedia("(pointer: coarse)").matches);
  await (touch ? locator.tap() : locator.click());
}

export const press = (page, name) => tapOrClick(chip(page, name));

export async function stroke(page, ...strokes) {
  for (const [grade, word] of strokes) await tapOrClick(fileKey(page, grade, word));
}

export async function type(page, name, text, leave = "Enter") {
  await field(page, name).fill(text);
  await field(page, name).press(leave);
}

export const ask = (page, text) => type(page, "Hardness, as written", text);

export function fields(room = "", leave = (own) => own.press("Enter")) {
  const input = (page, id) => page.locator(`#field-${room}${id}`);
  const problem = (page, id) => page.locator(`#field-${room}${id}-error`);

  async function fill(page, id, text) {
    const own = input(page, id);
    await own.waitFor({ state: "attached" });
    await own.evaluate((one) => one.closest("details")?.setAttribute("open", ""));
    await own.fill(text);
    await leave(own);
  }

  async function fillAll(page, texts) {
    for (const [id, text] of Object.entries(texts)) await fill(page, id, text);
  }

  return { input, problem, fill, fillAll };
}

// The pad's keys as a person finds them: by their signs.
export async function typeOnPad(locator, signs) {
  const page = locator.page();
  await locator.tap();
  await page.waitForSelector(".pad");
  for (const sign of [...signs, "Done"]) {
    await page.locator(".pad").getByRole("button", { name: sign, exact: true }).tap();
  }
  await page.waitForSelector(".pad", { state: "detached" });
}

export async function tabTo(locator, { tab = "Tab", most = 120 } = {}) {
  const page = locator.page();
  for (let stops = 0; stops < most; stops += 1) {
    const before = await page.evaluateHandle(() => document.activeElement);
    await page.keyboard.press(tab);
    const stop = await page.evaluate((old) => {
      const now = document.activeElement;
      const style = getComputedStyle(now);
      return {
        what: `${now.tagName} ${now.getAttribute("aria-label") ?? now.textContent.slice(0, 40)}`,
        body: now === document.body,
        moved: now !== old,
        ringed: style.outlineStyle !== "none" && parseFloat(style.outlineWidth) >= 2,
      };
    }, before);
    assert.ok(stop.moved, `no way on from ${stop.what}`);
    assert.ok(stop.body || stop.ringed, `no visible focus on ${stop.what}`);
    if (await hasFocus(locator)) return;
  }
  assert.fail(`${locator} is not reached by ${tab}`);
}

export async function unfold(page, title) {
  const line = fold(page, title);
  const own = line.locator("xpath=..");
  if (!(await own.evaluate((one) => one.open))) await tapOrClick(line);
  return own;
}

export const unfoldAll = (page) =>
  page.evaluate(() => document.querySelectorAll("details").forEach((one) => (one.open = true)));

export const plain = (text) => text.replace(/\s+/g, " ").trim();
export const textOf = async (page, place) => plain((await page.locator(place).allInnerTexts()).join(" "));

export async function says(page, place, ...wanted) {
  for (const text of wanted) {
    const found = (said) => (text instanceof RegExp ? text.test(said) : said.includes(text));
    let said = "";
    const there = async () => found((said = await textOf(page, place)));
    await until(`${place} says ${text}`, there, 10_000).catch((error) => {
      throw new Error(`${error.message}; it says: ${said}`);
    });
  }
}

export async function download(page, act) {
  const [file] = await Promise.all([page.waitForEvent("download"), act()]);
  return { name: file.suggestedFilename(), text: readFileSync(await file.path(), "utf8") };
}

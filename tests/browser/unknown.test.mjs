// An unknown bar: one test after the other, until it is known what to make of it and what not. Expected steels and
// uses are those of the scenarios that stand beside them, never the page's own.
import assert from "node:assert/strict";
import { test } from "node:test";
import { fields, press, status, tapOrClick } from "./hands.mjs";
import { fits, noAxeViolations, stage, until } from "./lib.mjs";

const { open } = stage();

const { input, problem, fill } = fields("unknown-");
const step = (page, name) => page.locator(".step").filter({ has: page.locator("summary", { hasText: name }) });
const choice = (page, title, answer) => step(page, title).getByRole("button", { name: answer, exact: true });

async function answer(page, title, text) {
  const own = step(page, title);
  if (!(await own.evaluate((one) => one.open))) await tapOrClick(own.locator("summary"));
  await tapOrClick(choice(page, title, text));
}

const opened = (page) => page.locator(".step.now summary span").first();

// Scenario 16: bright spark, some forks; the skin files hard, 5 mm in files soft.
async function axle(page) {
  await answer(page, "Spark", "bright, forks, some bursts");
  await answer(page, "Skin against", "skin hard, softer below");
}

test("an axle by touch on a phone: likely medium carbon, a coupon from the middle in oil, then water", async () => {
  const { page } = await open("#steel", { device: "phone" });
  await page.getByRole("link", { name: "Unknown" }).tap();
  await page.locator(".steps").waitFor();
  assert.equal(await opened(page).innerText(), "Magnet");
  await axle(page);
  await status(page).getByText("Likely medium carbon").waitFor();
  assert.equal(await opened(page).innerText(), "Coupon in oil");
  assert.match(await step(page, "Coupon in oil").innerText(), /middle of the bar/);
  assert.equal(await page.getByRole("heading", { name: "Good for" }).count(), 0, "nothing is promised before a coupon");
  // 55 cuts it: water is next.
  await choice(page, "Coupon in oil", "50 – 55").tap();
  await until("water is next", async () => (await opened(page).innerText()) === "Coupon in water");
  const card = (name) => page.locator(".card").filter({ has: page.getByRole("heading", { name, exact: true }) });
  // Coupon at 55 or so: hammers, hardy tools, shafts to about 50; not cutting edges.
  const good = await card("Good for").innerText();
  assert.match(good, /Hammers, hardy tools/);
  const [, to] = good.match(/Shafts.* about (\d+) HRC/) ?? [];
  assert.ok(Number(to) >= 45 && Number(to) <= 53, good);
  assert.match(await card("Not for").innerText(), /Cutting edges/);
  await page.getByText("Never for lifting, steering").waitFor();
  await page.getByText("The next axle may be another steel").waitFor();
});

test("0.45 % C lies in the band of a coupon at 55, which is typed", async () => {
  const { page } = await open("#unknown");
  await axle(page);
  await fill(page, "oil", "55");
  const label = await page.locator("svg.bands").getAttribute("aria-label");
  const [, low, high] = label.match(/([\d.]+) – ([\d.]+)/) ?? [];
  assert.ok(Number(low) < 0.45 && 0.45 < Number(high) && high - low < 0.35, label);
});

test("every answer can be changed and taken back, and lasts over a reload", async () => {
  const { page } = await open("#unknown");
  await axle(page);
  await answer(page, "Spark", "long, straw-coloured, few forks");
  await status(page).getByText("Likely medium carbon").waitFor({ state: "hidden" });
  await page.reload();
  await page.locator(".steps").waitFor();
  await step(page, "Spark").getByText("long, straw-coloured, few forks").first().waitFor();
  // A test that was opened by hand folds away with its answer.
  await answer(page, "Magnet", "sticks");
  assert.equal(await step(page, "Magnet").evaluate((one) => one.open), false);
  // The same answer once more takes it back.
  await answer(page, "Spark", "long, straw-coloured, few forks");
  await step(page, "Spark").locator("summary").getByText("not tried").waitFor();
  await press(page, "New bar");
  await status(page).getByText("Nothing seen yet").waitFor();
  await press(page, "The last bar again");
  await step(page, "Skin against").locator("summary").getByText("skin hard").waitFor();
});

test("by keyboard alone: an answer hands the focus on to the next test", async () => {
  const { page } = await open("#unknown");
  await choice(page, "Magnet", "sticks").focus();
  await page.keyboard.press("Enter");
  await until("the next test has the focus", () =>
    page.evaluate(() => document.activeElement?.matches(".step.now > summary")));
  assert.equal(await opened(page).innerText(), "Spark");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Tab");
  await page.keyboard.press("Space");
  await until("the spark is answered", async () => (await step(page, "Spark").locator("summary").innerText()).includes("✓"));
});

test("answers that do not go together are said with what may be behind them, and recommend nothing", async () => {
  const { page } = await open("#unknown", { device: "phone" });
  await answer(page, "Magnet", "sticks");
  await answer(page, "Spark", "bright, many bursts close to the wheel");
  await answer(page, "Coupon in oil", "below 40");
  await status(page).getByText("These do not go together: spark and coupon in oil").waitFor();
  // Common practice, no source: what makes a coupon soft.
  const causes = await page.locator(".causes").innerText();
  for (const cause of [/too cold/, /lost carbon/, /from the skin/]) assert.match(causes, cause);
  assert.equal(await page.locator(".shares").count(), 0);
  assert.equal(await page.getByRole("heading", { name: "Good for" }).count(), 0);
  await noAxeViolations(page);
});

test("what cannot be read is said when the field is left, and stays typed", async () => {
  const { page } = await open("#unknown");
  await axle(page);
  const field = input(page, "oil");
  await field.pressSequentially("fifty");
  assert.equal(await page.locator(".error").count(), 0);
  await field.press("Tab");
  await problem(page, "oil").waitFor();
  assert.equal(await field.inputValue(), "fifty");
  await status(page).getByText("Likely medium carbon").waitFor();
});

for (const theme of ["light", "dim"]) {
  test(`shares are read without colour, and nothing runs out of a narrow screen (${theme})`, async () => {
    const { page } = await open("#unknown", { device: "phone", theme, context: { viewport: { width: 320, height: 640 } } });
    await noAxeViolations(page);
    await axle(page);
    await choice(page, "Coupon in oil", "50 – 55").tap();
    const rows = await page.locator(".shares li").allInnerTexts();
    assert.ok(rows.length >= 2 && rows.every((row) => /\d+ %/.test(row)), rows.join());
    const percents = rows.map((row) => Number(row.match(/(\d+) %/)[1]));
    assert.equal(percents.reduce((sum, percent) => sum + percent, 0), 100);
    await fits(page);
    await noAxeViolations(page);
  });
}

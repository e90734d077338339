// The rooms of Convert: metals, scales drawn closer, all tables, marks, paper. Expected numbers come from the
// tables and examples that stand beside them, never from the page.
import assert from "node:assert/strict";
import { test } from "node:test";
import { fields, press, status, typeOnPad } from "./hands.mjs";
import { printed, stage, until } from "./lib.mjs";

const { open } = stage();

const { input, fill } = fields();

test("brass is read off its own table, with its memory and its doubled width said", async () => {
  const { page } = await open("#convert");
  await page.locator(".choice select").selectOption("cartridge-brass");
  await fill(page, "convert", "120 HV");
  // ASTM E140 Table 4 (recalled): 120 HV = 67.0 HRB = 106 HB with 500 kgf.
  await status(page).getByText("67 HRB").waitFor();
  await status(page).getByText("106 HBW 10/500").waitFor();
  await page.locator(".caution").filter({ hasText: "recalled as a whole" }).waitFor();
});

test("cast iron is refused with the reason and Brinell ranges, and the number stays typed", async () => {
  const { page } = await open("#convert");
  await fill(page, "convert", "22 HRC");
  await page.locator(".choice select").selectOption("cast-iron");
  await page.locator(".refusal").filter({ hasText: "Graphite" }).waitFor();
  await page.locator(".refusal").filter({ hasText: "140 to 200 HBW" }).waitFor();
  assert.equal(await page.locator(".results").count(), 0);
  await page.locator(".choice select").selectOption("carbon-alloy-steel");
  // ASTM E140 Table 1: 22 HRC = 248 HV.
  await status(page).getByText("248 HV").waitFor();
});

test("scales are chosen, drawn closer and moved by buttons, and survive a reload", async () => {
  const { page } = await open("#convert");
  await fill(page, "convert", "60 HRC");
  await press(page, "HR15N");
  // ASTM E140 Table 1: 60 HRC = 90.2 HR15N.
  await status(page).getByText("90 HR15N").waitFor();
  const labels = () => page.locator(".aligned g").first().locator("text").allInnerTexts();
  const wide = await labels();
  await press(page, "Closer");
  await press(page, "Closer");
  const close = await labels();
  assert.notDeepEqual(close, wide);
  await press(page, "Softer");
  await until("the scale has moved", async () => (await labels()).join() !== close.join());
  await page.reload();
  await status(page).getByText("90 HR15N").waitFor();
  assert.notDeepEqual(await labels(), wide);
  await press(page, "Back to the number");
  await until("the first view is back", async () => (await labels()).join() === wide.join());
});

test("all tables stand side by side", async () => {
  const { page } = await open("#convert");
  await fill(page, "convert", "60 HRC");
  await page.getByText("All tables side by side").click();
  const row = page.locator(".beside tr").filter({ has: page.getByRole("rowheader", { name: "HV", exact: true }) });
  const cells = await row.locator("td").allInnerTexts();
  // 60 HRC: ASTM E140 697 HV, GB/T 1172 713 HV.
  assert.ok(cells.includes("697") && cells.includes("713"), cells.join());
});

test("a Vickers mark is worked out by touch with the page's own keys, units included", async () => {
  const { page } = await open("#mark", { device: "phone" });
  await typeOnPad(input(page, "mark-first"), ["0", ".", "4", "1", "5", "mm"]);
  // ISO 6507-1, curved surfaces, example 2 (recalled): 0.415 mm under 30 kgf is 323 HV; in a bore of 5 mm, one
  // diagonal along the axis, 347 HV30.
  await status(page).getByText("323 HV", { exact: true }).waitFor();
  await page.getByText("On a round part").tap();
  await press(page, "in a bore");
  await press(page, "one along the axis");
  await typeOnPad(input(page, "mark-round"), ["5", "mm"]);
  await status(page).getByText("347 HV", { exact: true }).waitFor();
  await page.reload();
  await status(page).getByText("347 HV", { exact: true }).waitFor();
});

test("a thin spring read by a cone is called invalid and lighter tests are offered", async () => {
  const { page } = await open("#mark");
  await press(page, "Rockwell");
  await fill(page, "mark-readings", "48");
  await fill(page, "mark-thickness", "0.6 mm");
  await page.waitForSelector(".verdict.conflict");
  // 48 HRC is 0.104 mm deep; ten times that is 1.04 mm.
  await page.locator(".verdict").getByText("1.04 mm").first().waitFor();
  await page.locator(".next").getByText("HR30N").first().waitFor();
});

test("what cannot be measured so is said with the way out", async () => {
  const { page } = await open("#mark");
  for (const [id, text] of [["mark-first", "0.3"], ["mark-first", "0 mm"], ["mark-first", "-0.3 mm"]]) {
    await fill(page, id, text);
    const refusal = page.locator(".refusal");
    await refusal.waitFor();
    assert.ok((await refusal.innerText()).length > 40);
    assert.equal(await input(page, id).inputValue(), text);
  }
});

for (const [paper, size] of [["A4", [595, 842]], ["Letter", [612, 792]]]) {
  test(`sheets print on ${paper}, one to a page and nothing else`, async () => {
    const { page } = await open("#paper");
    await press(page, paper);
    for (const sheet of ["strip of scales", "chart", "file-test card", "thinnest section"]) {
      await press(page, sheet);
      await page.locator(".sheets img").first().waitFor();
      const pages = await printed(page);
      const sheets = await page.locator(".sheets img").count();
      assert.deepEqual(pages, Array.from({ length: sheets }, () => size), sheet);
    }
  });
}

test("ends that cannot be drawn are refused and stay typed", async () => {
  const { page } = await open("#paper");
  await fill(page, "paper-span", "65-40");
  await page.locator(".refusal").waitFor();
  assert.equal(await input(page, "paper-span").inputValue(), "65-40");
  await fill(page, "paper-span", "40-65");
  await page.locator(".sheets img").waitFor();
});

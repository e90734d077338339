// How fast the page answers, as a table: `node tests/browser/speed.mjs`, on what was built.
//
// The processor is slowed four times, as an old phone is; the cold start also has a slow network.
import { fields, press } from "./hands.mjs";
import { DEVICES, dist, launch, Server, slow } from "./lib.mjs";

const CPU = 4;
const ROUNDS = 20;

const server = new Server("/", dist);
const browser = await launch();
const median = (list) => list.toSorted((a, b) => a - b)[Math.floor(list.length / 2)];

async function opened(path, network) {
  const context = await browser.newContext(DEVICES.phone);
  const page = await context.newPage();
  await slow(page, { cpu: CPU, network });
  await page.goto(server.url + path);
  await page.waitForSelector("main.wide");
  return { context, page };
}

// From a press to the frame behind the one that paints its answer.
const pressed = (page, name) =>
  page.evaluate(
    (name) =>
      new Promise((done) => {
        const key = document.querySelector(`[aria-label^="${name}"]`);
        const from = performance.now();
        key.click();
        requestAnimationFrame(() => setTimeout(() => done(performance.now() - from)));
      }),
    name,
  );

const typed = (page, text, id = "field-convert") =>
  page.evaluate(
    ([text, id]) =>
      new Promise((done) => {
        const field = document.getElementById(id);
        field.value = text;
        const from = performance.now();
        field.dispatchEvent(new InputEvent("input", { bubbles: true }));
        requestAnimationFrame(() => setTimeout(() => done(performance.now() - from)));
      }),
    [text, id],
  );

async function fileTest() {
  const { context, page } = await opened("");
  for (const grade of [65, 60, 55]) for (let n = 0; n < 3; n += 1) await pressed(page, `${grade} file bites`);
  for (const grade of [50, 45, 40]) for (let n = 0; n < 3; n += 1) await pressed(page, `${grade} file skates`);
  const times = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    times.push(await pressed(page, "50 file skates"));
    await page.getByRole("button", { name: "Undo" }).click();
  }
  await context.close();
  return times;
}

async function convert() {
  const { context, page } = await opened("#convert");
  const times = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    times.push(await typed(page, ["38", "38-4", "38-42", "700 HV", "52,5"][round % 5]));
  }
  await context.close();
  return times;
}

// The last key in the field of the wanted hardness, with section, bath and recipe on the page.
async function steel(shape, sizes) {
  const { context, page } = await opened("#steel");
  await page.waitForSelector("#field-steel-query");
  await press(page, shape);
  const texts = { query: "4140", ...sizes, length: "80 mm", litres: "20 L", bath: "25 °C" };
  await fields("steel-").fillAll(page, texts);
  await page.waitForSelector(".verdict");
  const times = [];
  for (let round = 0; round < ROUNDS; round += 1) {
    await typed(page, "50-5", "field-steel-target");
    times.push(await typed(page, round % 2 ? "50-54" : "50-56", "field-steel-target"));
  }
  await context.close();
  return times;
}

async function coldStart(network) {
  const context = await browser.newContext(DEVICES.phone);
  const page = await context.newPage();
  await page.addInitScript(() => {
    new PerformanceObserver((list) => {
      globalThis.largest = list.getEntries().at(-1).startTime;
    }).observe({ type: "largest-contentful-paint", buffered: true });
    new MutationObserver((_, observer) => {
      if (!document.querySelector(".rule")) return;
      globalThis.usable = performance.now();
      observer.disconnect();
    }).observe(document, { childList: true, subtree: true });
  });
  await slow(page, { cpu: CPU, network });
  await page.goto(server.url);
  await page.waitForFunction(() => globalThis.usable && globalThis.largest);
  await page.evaluate(() => new Promise((done) => requestAnimationFrame(() => setTimeout(done, 500))));
  const found = await page.evaluate(() => [globalThis.largest, globalThis.usable]);
  await context.close();
  return found;
}

try {
  server.compress = true;
  await server.start();
  const rows = {};
  const add = (what, times) => {
    rows[what] = { "median ms": Math.round(median(times)), "most ms": Math.round(Math.max(...times)) };
  };
  add("file test: press to painted verdict, 18 strokes", await fileTest());
  add("Convert: digit to painted answer", await convert());
  add("Steel, flat: key to painted verdict", await steel("flat", { size: "60 mm", second: "25 mm" }));
  add("Steel, tube: key to painted verdict", await steel("tube", { size: "60 mm", second: "30 mm" }));
  add("Steel, round: key to painted verdict", await steel("round", { size: "50 mm" }));
  for (const [network, name] of [[false, "no limit"], [true, "150 ms, 1.6 Mbit/s"]]) {
    const starts = [];
    for (let round = 0; round < 3; round += 1) starts.push(await coldStart(network));
    add(`cold start (${name}): largest paint`, starts.map(([largest]) => largest));
    add(`cold start (${name}): usable`, starts.map(([, usable]) => usable));
  }
  console.table(rows);
} finally {
  await browser.close();
  await server.stop();
}

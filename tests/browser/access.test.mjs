// The page for every hand, eye and screen: accessibility findings, small and enlarged screens, sizes of targets.
import assert from "node:assert/strict";
import { test } from "node:test";
import { ask, field, fields, fileKey, go, press, stroke, type, typeOnPad, unfoldAll } from "./hands.mjs";
import { isReady, noAxeViolations, stage, until } from "./lib.mjs";

const { open, server } = stage();

const { fillAll: steel } = fields("steel-");
const { fillAll: claim } = fields("claim-");

async function convert(page, text, place) {
  await go(page, "#convert");
  await ask(page, text);
  await page.waitForSelector(place);
}

// What the page can look like, each from the one before it.
const VIEWS = [
  ["the empty file test", (page) => page.waitForSelector(".rule")],
  [
    "the file test with a verdict",
    async (page) => {
      await stroke(page, [65, "bites"], [60, "bites"], [55, "bites"], [50, "skates"], [45, "skates"], [40, "not sure"]);
      await type(page, "Wanted hardness", "50-54");
      await page.waitForSelector(".odds");
    },
  ],
  [
    "the file test with a band that leaves the tables",
    async (page) => {
      await press(page, "Start again");
      await stroke(page, [65, "bites"], [60, "skates"]);
      await page.locator(".read").filter({ hasText: "above the table" }).waitFor();
    },
  ],
  [
    "the file test with a contradiction",
    async (page) => {
      await press(page, "Start again");
      await stroke(page, [40, "skates"], [45, "bites"], [50, "skates"], [55, "bites"]);
      await page.waitForSelector(".verdict.conflict");
    },
  ],
  ["Convert with results", (page) => convert(page, "38-42 HRC", ".results")],
  ["Convert with a refusal", (page) => convert(page, "15 HRC", ".refusal")],
  [
    "Convert for a metal without tables",
    async (page) => {
      await go(page, "#convert");
      await page.locator(".choice select").selectOption("cast-iron");
      await page.waitForSelector(".refusal");
    },
  ],
  [
    "Convert for brass",
    async (page) => {
      await page.locator(".choice select").selectOption("cartridge-brass");
      await convert(page, "120 HV", ".results");
      await page.locator(".choice select").selectOption("carbon-alloy-steel");
    },
  ],
  [
    "a mark on a thin round part",
    async (page) => {
      await go(page, "#mark");
      const texts = { first: "0.301 mm", second: "0.305 mm", round: "10 mm", thickness: "0.3 mm" };
      await fields("mark-").fillAll(page, texts);
      await page.waitForSelector(".verdict.conflict");
    },
  ],
  [
    "sheets of paper",
    async (page) => {
      await go(page, "#paper");
      await page.waitForSelector(".sheets img");
    },
  ],
  [
    "tempers for a hardness, with an own result and a temper looked up",
    async (page) => {
      await go(page, "#temper");
      await steel(page, { query: "O1", target: "58-60 HRC" });
      await fields("temper-").fillAll(page, { at: "300 °C", measured: "57 HRC", after: "205 °C / 2 h" });
      await press(page, "Keep this result");
      await page.waitForSelector("svg.curve circle.own");
    },
  ],
  [
    "the file test with a next step",
    async (page) => {
      await go(page, "#file-test");
      await page.waitForSelector(".what-now .act");
    },
  ],
  [
    "the first look at claims",
    async (page) => {
      await go(page, "#claim");
      await page.waitForSelector("#field-claim-says");
    },
  ],
  [
    "a claim with readings, strokes and a level that cannot be read",
    async (page) => {
      await press(page, "+ files");
      await unfoldAll(page);
      await press(page, "own level");
      await claim(page, { says: "38-42 HRC", level: "20 %", measured: "363 HBW" });
      await press(page, "+ reading");
      await page.waitForSelector("#field-claim-level-error");
    },
  ],
  [
    "a paper that contradicts itself",
    async (page) => {
      await press(page, "Another claim");
      await claim(page, { says: "52 HRC / 400 HB", measured: "52 HRC" });
      await page.waitForSelector(".verdict.conflict");
    },
  ],
  [
    "a steel with its section, recipe and ways out",
    async (page) => {
      await go(page, "#steel");
      const texts = { query: "4140", size: "50 mm", length: "80 mm", litres: "60 L", bath: "25 °C", target: "50-54 HRC", kind: "cold chisel" };
      await steel(page, texts);
      await page.waitForSelector(".next");
      await steel(page, { dial: "240 °C", truth: "231.9 °C" });
      await press(page, "Keep this check");
      await page.waitForSelector(".recipe");
    },
  ],
  [
    "a steel whose bath is too small",
    async (page) => {
      await press(page, "square");
      await steel(page, { size: "100 mm", length: "100 mm", litres: "6 L" });
      await page.getByRole("status").getByText("Stop").first().waitFor();
    },
  ],
  [
    "a name of several steels and a tube",
    async (page) => {
      await press(page, "tube");
      await steel(page, { query: "45", second: "60 mm", litres: "" });
      await page.getByRole("group", { name: /several steels/ }).waitFor();
    },
  ],
  [
    "an own bar that is kept, and one that cannot be",
    async (page) => {
      await press(page, "by its composition");
      await steel(page, { own: "C=0.41 Mn=0.85 Cr=1.0 Mo=0.2", "own-name": "bar 7 of the rack behind the lathe" });
      await press(page, "Keep this bar");
      await page.getByRole("list", { name: "Bars you keep" }).waitFor();
      await steel(page, { "own-name": "" });
      await press(page, "Keep this bar");
      await page.waitForSelector(".error");
    },
  ],
  [
    "an unknown steel",
    async (page) => {
      await press(page, "by its name");
      await steel(page, { query: "4041" });
      await page.waitForSelector(".error");
    },
  ],
  ["Convert with a mistake", (page) => convert(page, "quite hard", ".error")],
  [
    "the sources, limits and settings",
    async (page) => {
      await go(page, "#about");
      await page.waitForSelector("dl");
    },
  ],
  [
    "parts without any",
    async (page) => {
      await go(page, "#parts");
      await page.getByText("No parts yet").waitFor();
    },
  ],
  [
    "parts, one of them in hand",
    async (page) => {
      await press(page, "Show the demonstration parts");
      await page.locator(".cards .part").filter({ hasText: "Capstan pawl" }).click();
      await page.locator(".story li").first().waitFor();
    },
  ],
];

async function throughViews(page, work) {
  await page.waitForSelector("main.wide");
  for (const [name, reach] of VIEWS) {
    await reach(page);
    await unfoldAll(page);
    await work(name);
  }
}

const padOpen = async (page) => {
  await go(page, "#convert");
  await field(page, "Hardness, as written").tap();
  await page.waitForSelector(".pad");
  await until("the pad has come to rest", () =>
    page.evaluate(() => document.querySelector(".pad").getAnimations().every((one) => one.playState === "finished")),
  );
};

for (const device of ["phone", "desktop"]) {
  for (const theme of ["light", "dim"]) {
    test(`no page has an accessibility violation (${device}, ${theme})`, async () => {
      const { page } = await open("", { device, theme });
      await throughViews(page, () => noAxeViolations(page));
      if (device !== "phone") return;
      await padOpen(page);
      await noAxeViolations(page);
    });
  }
}

const sideways = (page) =>
  page.evaluate(() => {
    const wide = document.scrollingElement.clientWidth;
    const out = [...document.querySelectorAll("body *")].filter((one) => {
      // A table of numbers that is wider than the screen moves in a frame of its own.
      if (one.closest(".beside table")) return false;
      const box = one.getBoundingClientRect();
      return box.width > 1 && (box.right > wide + 0.5 || box.left < -0.5);
    });
    const scrolls = document.scrollingElement.scrollWidth > wide;
    return [...(scrolls ? ["the page scrolls sideways"] : []), ...out.map((one) => `${one.tagName} ${one.className}`)];
  });

// Text that is wider or higher than the control that it stands in.
const cutText = (page) =>
  page.evaluate(() =>
    [...document.querySelectorAll("button, .tick, td, th, nav a")]
      .filter((one) => one.offsetParent !== null && one.scrollWidth > one.clientWidth + 1)
      .map((one) => one.textContent),
  );

// A small phone; a desktop of 1280 x 900 at twice the size; one of 1280 x 1024 at four times the size.
for (const viewport of [{ width: 320, height: 640 }, { width: 640, height: 450 }, { width: 320, height: 256 }]) {
  const size = `${viewport.width} x ${viewport.height}`;
  test(`nothing is cut off or scrolls sideways at ${size}, all folds open`, async () => {
    const { page } = await open("", { context: { viewport } });
    await throughViews(page, async (name) => {
      assert.deepEqual(await sideways(page), [], name);
      assert.deepEqual(await cutText(page), [], name);
    });
  });
}

test("the file test is done on a screen of 320 x 256, as at four times the size", async () => {
  const { page } = await open("", { context: { viewport: { width: 320, height: 256 }, hasTouch: true, isMobile: true } });
  await page.waitForSelector(".rule");
  await stroke(page, [55, "bites"], [50, "skates"]);
  await typeOnPad(field(page, "Wanted hardness"), ["5", "0", "–", "5", "4"]);
  await page.locator(".legend").filter({ hasText: "in 50-54" }).waitFor();
  assert.deepEqual(await sideways(page), []);
});

test("the pad leaves its field in sight on a phone on its side", async () => {
  const { page } = await open("", { device: "phone", context: { viewport: { width: 844, height: 390 } } });
  await page.waitForSelector(".rule");
  await padOpen(page);
  const box = (place) => page.locator(place).boundingBox();
  // The page scrolls to the field when the pad stands, which may be a frame later.
  await until("the field stands above the pad", async () => {
    const [input, pad] = [await box("#field-convert"), await box(".pad")];
    return input.y >= 0 && input.y + input.height <= pad.y && pad.y + pad.height <= 390.5;
  });
});

for (const [screen, options] of [
  ["a phone", { device: "phone" }],
  ["a screen of 320 points", { device: "phone", context: { viewport: { width: 320, height: 640 } } }],
  ["a desktop", { device: "desktop" }],
]) {
  test(`the page is as wide as ${screen}, and everything that is pressed is large enough`, async () => {
    const { page } = await open("", options);
    const small = () =>
      page.evaluate(() =>
        [...document.querySelectorAll("button, a[href], input, textarea, summary")]
          .filter((one) => one.checkVisibility() && !one.matches(".skip"))
          .map((one) => [one, one.getBoundingClientRect()])
          .filter(([one, box]) => {
            const least = one.matches(".key") ? 48 : 44;
            return box.width < 44 - 0.5 || box.height < least - 0.5;
          })
          .map(([one, box]) => `${one.textContent || one.id}: ${box.width} x ${box.height}`),
      );
    await throughViews(page, async (name) => {
      assert.deepEqual(await small(), [], name);
      // A phone that meets anything wider shows the whole page smaller.
      assert.deepEqual(await sideways(page), [], name);
      assert.equal(await page.evaluate(() => innerWidth), page.viewportSize().width, name);
    });
    if (options.device !== "phone") return;
    await padOpen(page);
    assert.deepEqual(await small(), [], "the pad");
  });
}

for (const [name, context] of [
  ["forced colours", { forcedColors: "active" }],
  ["reduced motion", { reducedMotion: "reduce" }],
  ["more contrast", { contrast: "more" }],
]) {
  test(`every page stands with ${name}`, async () => {
    const { page } = await open("", { device: "phone", context });
    const names = [];
    await throughViews(page, async (view) => {
      assert.ok(await page.locator("main").isVisible(), view);
      names.push(view);
    });
    assert.equal(names.length, VIEWS.length);
    await padOpen(page);
    const moving = await page.evaluate(() => document.getAnimations().length);
    if (context.reducedMotion) assert.equal(moving, 0);
  });
}

test("a pressed key is told apart without its colour", async () => {
  const { page } = await open("", { device: "phone", context: { forcedColors: "active" } });
  await page.waitForSelector(".rule");
  const look = (word) =>
    fileKey(page, 55, word).evaluate((one) => {
      const { color, backgroundColor } = getComputedStyle(one);
      return { color, backgroundColor, text: one.textContent };
    });
  const before = await look("bites");
  await fileKey(page, 55, "bites").tap();
  await until("the mark comes", async () => (await look("bites")).text !== before.text);
  const after = await look("bites");
  assert.notEqual(after.backgroundColor, before.backgroundColor);
  assert.notEqual(after.color, after.backgroundColor);
});

test("nothing but the page's own host is asked for anything", async () => {
  const { context, page } = await open("", { device: "phone" });
  const hosts = new Set();
  context.on("request", (request) => hosts.add(new URL(request.url()).origin));
  await page.reload();
  await throughViews(page, async () => {});
  assert.deepEqual([...hosts], [server.origin]);
});

test("a new answer does not move the keys under the finger", async () => {
  const { page } = await open("", { device: "phone" });
  await page.waitForSelector(".rule");
  const place = async () => (await fileKey(page, 65, "bites").boundingBox()).y;
  const empty = await place();
  await stroke(page, [55, "bites"]);
  await page.locator(".verdict").filter({ hasText: "Softer than" }).waitFor();
  assert.equal(await place(), empty);
  await stroke(page, [50, "skates"]);
  await page.locator(".verdict").filter({ hasText: "Between" }).waitFor();
  assert.equal(await place(), empty);
  await isReady(page);
  await page.locator(".notice").waitFor();
  assert.equal(await place(), empty, "nor does good news");
});

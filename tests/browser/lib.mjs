// What every browser test needs: the built page on a local server, Chromium, and a watch over everything that
// must not happen (console errors and warnings, uncaught errors, policy violations, requests to other hosts).
//
// A test file:
//
//   import assert from "node:assert/strict";
//   import { test } from "node:test";
//   import { noAxeViolations, stage } from "./lib.mjs";
//
//   const { open } = stage();
//   test("the verdict appears", async () => {
//     const { page } = await open("", { device: "phone", theme: "dim" });
//     await page.getByRole("button", { name: "bites" }).first().click();
//     assert.match(await page.getByRole("status").innerText(), /HRC/);
//     await noAxeViolations(page);
//   });
//
// stage(options)        once per file: starts a server on the built page and one browser, and after each test
//                       closes its pages and fails the test on any fault. Options: `base`, the folder of the
//                       host ("/" unless told). Gives:
//   open(path, options) a fresh profile with one page at `path`, started. Options: `device` "phone" (390 x 844,
//                       touch) or "desktop" (1280 x 900, unless told); `theme` "light" or "dim": the system's;
//                       `chosen` the theme that the start script finds, until the page follows its own settings;
//                       `init` a function run in the page before its own scripts; `started: false` not to wait
//                       for the start; `context` more of Playwright's context options.
//                       Gives { context, page }; context.newPage() is another tab.
//   show(path, options) open() until what is worked on stands there too; gives the page.
//   expect(pattern)     in a test: faults that match are wanted, and the test fails when none comes.
//   server              the Server below.
//   browser()           the running browser.
// Server                url; requests (paths asked for); mounts (address prefix -> folder, to change what is
//                       served); compress (true: brotli); types (by the endings of names); stop() and start(): cut and restore the network.
// copyOfPage(change)    a copy of the built page in a temporary folder, `change(folder)` applied, its service worker
//                       written anew; `worker: false` leaves the old worker.
// started(page)         waits until the start script is done; shown(page) also until the page stands that is worked on;
//                       isReady(page) until all of it is kept for use without a network.
// reload(page)          loads the page again, until it is shown.
// serving(server, folder, work)  while it works, the host has this folder in place of the built page.
// withNewVersion(server, work)   while it works, the host has another version of the page: its description says so.
//                       newVersionRuns(page) waits for it; description(page) is what to look at.
// withoutNetwork(server, work)   while it works, the network is cut.
// hold(page, pattern)   requests that match wait until the function is called that this gives.
// isPlainPart(name)     whether a file of the page is the plain module of a part, which only old browsers fetch.
// axe(page, options)    accessibility findings as text lines; noAxeViolations(page, options) asserts none.
//                       Options: `within` a selector; `without` rule names.
// until(what, check)    waits until the (async) check holds. Playwright's waitForFunction does not wait for the
//                       promise of an async check.
// fits(page)            asserts that nothing runs out of the screen and that no target is too low for a finger.
// printed(page)         prints the sheets that are shown; gives the sizes of the pages of paper, in points.
// slow(page, options)   `cpu` times slower; `network: true` for 150 ms and 1.6 Mbit/s.
// shot(page, name)      a screenshot in tests/browser/shots/, which is not kept in the repository.
// launch(), DEVICES     a browser and the devices of open(), for scripts that are no tests.
//
// What a person does on the page is in hands.mjs, what the page keeps in its browser in kept.mjs.
//
// `cargo xtask test page browser` builds the page and runs the tests; after that `node --test
// tests/browser/one.test.mjs` runs one file on what was built.
import assert from "node:assert/strict";
import { execFileSync } from "node:child_process";
import {
  cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync,
} from "node:fs";
import http from "node:http";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { delimiter, extname, join } from "node:path";
import { after, afterEach, before } from "node:test";
import { fileURLToPath } from "node:url";
import { brotliCompressSync } from "node:zlib";

const project = fileURLToPath(new URL("../../", import.meta.url));
export const dist = process.env.BITEBAND_DIST ?? join(project, "dist");
export const singleFile = process.env.BITEBAND_SINGLE ?? join(project, "target/single/biteband.html");
const modules = process.env.BITEBAND_NODE_MODULES ?? join(project, "target/npm/node_modules");
const load = createRequire(join(modules, "from-here.js"));

const TYPES = {
  ".css": "text/css; charset=utf-8",
  ".html": "text/html; charset=utf-8",
  ".js": "text/javascript; charset=utf-8",
  ".png": "image/png",
  ".svg": "image/svg+xml",
  ".wasm": "application/wasm",
  ".webmanifest": "application/manifest+json",
  other: "application/octet-stream",
};

export class Server {
  mounts = {};
  requests = [];
  compress = false;
  types = TYPES;
  #http = http.createServer((request, response) => this.#answer(request, response));
  #port = 0;
  #small = new Map();

  constructor(base, folder) {
    this.base = base;
    this.mounts[base] = folder;
  }

  get origin() {
    return `http://127.0.0.1:${this.#port}`;
  }

  get url() {
    return this.origin + this.base;
  }

  async start() {
    await new Promise((done, failed) => {
      this.#http.once("error", failed);
      this.#http.listen(this.#port, "127.0.0.1", done);
    });
    this.#port = this.#http.address().port;
  }

  async stop() {
    const closed = new Promise((done) => this.#http.close(done));
    this.#http.closeAllConnections();
    await closed;
  }

  #answer(request, response) {
    const path = decodeURIComponent(new URL(request.url, this.origin).pathname);
    this.requests.push(path);
    const refuse = (status, headers = {}) => response.writeHead(status, headers).end();
    // As some hosts do; a worker that kept the redirected answer could not open the page.
    if (path.endsWith("/index.html")) return refuse(301, { location: path.slice(0, -"index.html".length) });
    const prefix = Object.keys(this.mounts)
      .filter((start) => path.startsWith(start))
      .sort((a, b) => b.length - a.length)[0];
    if (prefix === undefined || path.includes("..")) return refuse(404);
    const file = join(this.mounts[prefix], path.slice(prefix.length) || "index.html");
    if (!existsSync(file) || !statSync(file).isFile()) return refuse(404);
    const headers = {
      "content-type": this.types[extname(file)] ?? this.types.other,
      "cache-control": "no-cache",
      vary: "accept-encoding",
    };
    let body = readFileSync(file);
    if (this.compress) {
      body = this.#compressed(file, body);
      headers["content-encoding"] = "br";
    }
    response.writeHead(200, headers).end(body);
  }

  // The highest setting takes a second for the module; a measured start must not wait for it each time.
  #compressed(file, body) {
    const key = `${file} ${statSync(file).mtimeMs}`;
    if (!this.#small.has(key)) this.#small.set(key, brotliCompressSync(body));
    return this.#small.get(key);
  }
}

function chromium() {
  const names = ["chromium", "chromium-browser", "google-chrome"];
  const places = (process.env.PATH ?? "").split(delimiter);
  const found = places.flatMap((place) => names.map((name) => join(place, name))).find(existsSync);
  const path = process.env.BITEBAND_CHROMIUM ?? found;
  assert.ok(path, "Chromium was not found; set BITEBAND_CHROMIUM to its path");
  return path;
}

export async function launch() {
  const args = [
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
  ];
  // The browser refuses its sandbox to the administrator, as whom a build machine often works.
  if (process.getuid?.() === 0) args.push("--no-sandbox");
  return load("playwright-core").chromium.launch({ executablePath: chromium(), headless: true, args });
}

export const DEVICES = {
  phone: { viewport: { width: 390, height: 844 }, deviceScaleFactor: 2, isMobile: true, hasTouch: true },
  desktop: { viewport: { width: 1280, height: 900 } },
};

export function stage({ base = "/" } = {}) {
  const server = new Server(base, dist);
  let browser;
  let contexts = [];
  let faults = [];
  let expected = [];

  before(async () => {
    assert.ok(existsSync(join(dist, "index.html")), "build the page first: cargo xtask app --build-only");
    await server.start();
    browser = await launch();
  });
  after(async () => {
    await browser?.close();
    await server.stop();
  });
  afterEach(async () => {
    const missing = expected.filter((pattern) => !faults.some((fault) => pattern.test(fault)));
    const unwanted = faults.filter((fault) => !expected.some((pattern) => pattern.test(fault)));
    await Promise.all(contexts.map((context) => context.close()));
    [contexts, faults, expected] = [[], [], []];
    assert.deepEqual(unwanted, [], "nothing unwanted happens in the browser");
    assert.deepEqual(missing, [], "every expected fault comes");
  });

  function watch(context) {
    context.on("console", (message) => {
      if (["error", "warning"].includes(message.type())) {
        faults.push(`console ${message.type()}: ${message.text()} (${message.location().url})`);
      }
    });
    context.on("weberror", (error) => faults.push(`uncaught: ${error.error().stack ?? error.error()}`));
    context.on("request", (request) => {
      const url = new URL(request.url());
      const own = url.origin === server.origin || ["data:", "blob:", "file:"].includes(url.protocol);
      if (!own) faults.push(`request to another host: ${url}`);
    });
    context.on("page", (page) => page.on("crash", () => faults.push("the page crashed")));
  }

  async function open(path = "", options = {}) {
    const { device = "desktop", theme = "light", chosen, init, started: begun = true } = options;
    const context = await browser.newContext({
      ...DEVICES[device],
      colorScheme: theme === "dim" ? "dark" : "light",
      ...options.context,
    });
    contexts.push(context);
    watch(context);
    await context.addInitScript(() => {
      addEventListener("securitypolicyviolation", (event) => {
        console.error(`policy violation: ${event.violatedDirective} ${event.blockedURI}`);
      });
    });
    if (chosen) {
      await context.addInitScript((name) => {
        // The blank page that every tab begins with has no storage.
        if (location.protocol === "about:") return;
        if (!localStorage.getItem("biteband.theme")) localStorage.setItem("biteband.theme", name);
      }, chosen);
    }
    if (init) await context.addInitScript(init);
    const page = await context.newPage();
    await page.goto(new URL(path, server.url).href);
    if (begun) await started(page);
    return { context, page };
  }

  async function show(path, options) {
    const { page } = await open(path, options);
    await shown(page);
    return page;
  }

  return { open, show, server, expect: (pattern) => expected.push(pattern), browser: () => browser };
}

const copies = [];
process.on("exit", () => copies.forEach((folder) => rmSync(folder, { recursive: true, force: true })));

export function copyOfPage(change, { worker = true } = {}) {
  const folder = mkdtempSync(join(tmpdir(), "biteband-"));
  copies.push(folder);
  for (const name of readdirSync(dist)) {
    // A build that runs or has failed has its own hidden folder here.
    if (!name.startsWith(".")) cpSync(join(dist, name), join(folder, name), { recursive: true });
  }
  change(folder);
  if (worker) {
    const xtask = process.env.BITEBAND_XTASK;
    const [program, first] = xtask ? [xtask, []] : ["cargo", ["xtask"]];
    execFileSync(program, [...first, "post-build", "--dist", folder], { cwd: project });
  }
  return folder;
}

const hasData = (page, data) => page.waitForSelector(`html[data-${data}]`, { state: "attached" });

export const started = (page) => hasData(page, "start=done");
export const isReady = (page) => hasData(page, "offline=ready");

export async function shown(page) {
  await started(page);
  await page.waitForSelector("main.wide");
}

export async function reload(page) {
  await page.reload();
  await shown(page);
}

export async function serving(server, folder, work) {
  server.mounts["/"] = folder;
  try {
    await work();
  } finally {
    server.mounts["/"] = dist;
  }
}

export async function withNewVersion(server, work) {
  const two = copyOfPage((folder) => {
    const index = join(folder, "index.html");
    writeFileSync(index, readFileSync(index, "utf8").replace(/(name="description" content=")/, "$1Version two. "));
  });
  await serving(server, two, work);
}

export const description = (page) => page.locator("meta[name=description]").getAttribute("content");

export async function newVersionRuns(page) {
  // While one version gives way to the other there is for a moment nothing to read.
  await until("version two runs", async () => {
    const said = await description(page).catch(() => undefined);
    return (said ?? "").startsWith("Version two");
  });
}

export async function withoutNetwork(server, work) {
  await server.stop();
  try {
    await work();
  } finally {
    await server.start();
  }
}

export async function hold(page, pattern) {
  let letGo;
  const held = new Promise((done) => { letGo = done; });
  await page.route(pattern, async (route) => {
    await held;
    await route.continue();
  });
  return letGo;
}

// The sum in a name has up to sixteen digits: its leading noughts are left out.
export const isPlainPart = (name) => /-[0-9a-f]{1,16}-[^/]+\.wasm$/.test(name);

const RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"];

export async function axe(page, { within, without = [] } = {}) {
  await page.evaluate(load("axe-core").source);
  const rules = { "color-contrast-enhanced": { enabled: true } };
  for (const rule of without) rules[rule] = { enabled: false };
  const found = await page.evaluate(
    ([place, options]) => globalThis.axe.run(place ?? document, options),
    [within, { runOnly: { type: "tag", values: RULES }, rules, resultTypes: ["violations"] }],
  );
  return found.violations.flatMap(({ id, help, nodes }) =>
    nodes.map((node) => `${id}: ${help}: ${node.target.join(" ")}: ${node.failureSummary}`),
  );
}

export async function noAxeViolations(page, options) {
  assert.deepEqual(await axe(page, options), [], "no accessibility violation");
}

export async function fits(page) {
  const wide = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth);
  assert.ok(wide <= 0, `${wide} px too wide`);
  const small = await page.evaluate(() => {
    const targets = ":is(header, .chooser) :is(button, a), main :is(button, summary, a, input, select)";
    return [...document.querySelectorAll(targets)]
      .filter((one) => one.checkVisibility() && one.getBoundingClientRect().height < 47.5)
      .map((one) => one.outerHTML);
  });
  assert.deepEqual(small, [], "every target is high enough for a finger");
}

export async function printed(page) {
  await until("every sheet is drawn", () =>
    page.evaluate(() => {
      const sheets = [...document.querySelectorAll(".sheets img")];
      return sheets.length > 0 && sheets.every((one) => one.complete && one.naturalWidth > 0);
    }),
  );
  const pdf = (await page.pdf({ preferCSSPageSize: true })).toString("latin1");
  const boxes = pdf.matchAll(/\/MediaBox\s*\[\s*0 0 ([\d.]+) ([\d.]+)/g);
  return [...boxes].map(([, width, height]) => [Math.round(Number(width)), Math.round(Number(height))]);
}

export async function until(what, check, limit = 15_000) {
  const end = Date.now() + limit;
  while (!(await check())) {
    assert.ok(Date.now() < end, `${what}, in time`);
    await new Promise((done) => setTimeout(done, 50));
  }
}

export async function slow(page, { cpu = 1, network = false }) {
  const session = await page.context().newCDPSession(page);
  await session.send("Emulation.setCPUThrottlingRate", { rate: cpu });
  if (network) {
    await session.send("Network.enable");
    await session.send("Network.emulateNetworkConditions", {
      offline: false,
      latency: 150,
      downloadThroughput: 1.6e6 / 8,
      uploadThroughput: 0.75e6 / 8,
    });
  }
}

export async function shot(page, name) {
  const folder = fileURLToPath(new URL("shots/", import.meta.url));
  mkdirSync(folder, { recursive: true });
  await page.screenshot({ path: join(folder, `${name}.png`) });
}

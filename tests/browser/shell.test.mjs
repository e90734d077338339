// The page as a thing that is loaded, kept, updated and carried about, whatever it shows.
import assert from "node:assert/strict";
import { appendFileSync, readdirSync, readFileSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { test } from "node:test";
import { pathToFileURL } from "node:url";
import {
  copyOfPage, description, dist, isReady, newVersionRuns, noAxeViolations, serving, singleFile, stage, started, until,
  withNewVersion, withoutNetwork,
} from "./lib.mjs";

const { open, server, expect } = stage();

const keptCaches = (page) => page.evaluate(() => caches.keys());
const fileThat = (folder, ending) => join(folder, readdirSync(folder).find((name) => name.endsWith(ending)));

// Notes the events that the page is told, from before its own scripts.
const noteEvents = () => {
  globalThis.told = [];
  for (const name of ["biteband:offline-ready", "biteband:update-waiting"]) {
    addEventListener(name, () => globalThis.told.push(name));
  }
};
const eventsTold = (page) => page.evaluate(() => globalThis.told);

test("the first visit starts with few requests", async () => {
  server.requests.length = 0;
  const own = [];
  const { page } = await open("", { started: false });
  // Parts come ahead of their use when the start is over, which a slow machine may not wait for. The browser asks for the
  // icon by itself, again and again when a load was cut off by the next one.
  const aside = /\.part$|\/icon\.svg$/;
  page.on("request", (request) => aside.test(request.url()) || own.push(request.url()));
  await page.reload();
  await started(page);
  assert.ok(await page.getByRole("heading", { level: 1 }).isVisible());
  assert.ok(own.length > 0 && own.length <= 7, own.join("\n"));
});

test("the shell speaks before and without scripts", async () => {
  const { page } = await open("", { started: false, context: { javaScriptEnabled: false } });
  assert.equal(await page.getByRole("heading", { level: 1 }).innerText(), "File test");
  assert.match(await page.locator("main").innerText(), /Works without a network[^]*needs JavaScript/);
});

test("the shell has no accessibility violation on a phone", async () => {
  const { page } = await open("", { device: "phone" });
  await noAxeViolations(page);
});

test("a chosen theme stands when the body begins", async () => {
  const { page } = await open("", {
    theme: "light",
    chosen: "dim",
    init: () => {
      new MutationObserver((_, observer) => {
        if (!document.body) return;
        globalThis.themeAtBody = document.documentElement.dataset.theme;
        observer.disconnect();
      }).observe(document, { childList: true, subtree: true });
    },
  });
  assert.equal(await page.evaluate(() => globalThis.themeAtBody), "dim");
});

test("offline use is announced once and stays readable", async () => {
  const { page } = await open("", { init: noteEvents });
  await isReady(page);
  assert.deepEqual(await eventsTold(page), ["biteband:offline-ready"]);
  await page.reload();
  await isReady(page);
  assert.deepEqual(await eventsTold(page), []);
});

test("exactly the built files are kept, the parts in their packed form", async () => {
  const { page } = await open();
  await isReady(page);
  const kept = await page.evaluate(async () => {
    const [name] = await caches.keys();
    const requests = await (await caches.open(name)).keys();
    return requests.map((request) => new URL(request.url).pathname).sort();
  });
  const built = readdirSync(dist, { recursive: true, withFileTypes: true })
    .filter((entry) => entry.isFile() && !/^sw(-kill)?\.js$/.test(entry.name))
    .map((entry) => join(entry.parentPath ?? entry.path, entry.name).slice(dist.length))
    // The large icons belong to the system's home screen.
    .filter((path) => !path.startsWith("/.") && !path.endsWith(".wasm") && !path.endsWith("-512.png"))
    .map((path) => (path === "/index.html" ? "/" : path));
  assert.deepEqual(kept, built.sort());
});

test("every address of the page opens with the network cut", async () => {
  const { page } = await open();
  await isReady(page);
  await withoutNetwork(server, async () => {
    for (const path of ["", "?from=home", "index.html", "#convert"]) {
      await page.goto(server.url + path);
      await started(page);
      assert.ok(await page.getByRole("heading", { level: 1 }).isVisible(), path);
    }
    await page.reload();
    await started(page);
    assert.equal(await page.evaluate(() => fetch("icons/icon-192.png").then((answer) => answer.ok)), true);
  });
});

test("a host that compresses does not break the kept copy", async () => {
  server.compress = true;
  try {
    const { page } = await open();
    await isReady(page);
    await page.reload();
    await started(page);
  } finally {
    server.compress = false;
  }
});

test("the policy stops a script that is put into the page", async () => {
  expect(/policy violation: script-src-elem inline/);
  expect(/Content Security Policy/);
  const { page } = await open();
  await page.evaluate(() => {
    const script = document.createElement("script");
    script.textContent = "globalThis.intruder = true";
    document.body.append(script);
  });
  assert.equal(await page.evaluate(() => globalThis.intruder), undefined);
});

test("the manifest makes the page installable", async () => {
  const { context, page } = await open();
  await isReady(page);
  const session = await context.newCDPSession(page);
  const { errors, data } = await session.send("Page.getAppManifest");
  assert.deepEqual(errors, []);
  const { installabilityErrors } = await session.send("Page.getInstallabilityErrors");
  // A private profile, which every test has, can never install; nothing else may stand in the way.
  const reasons = installabilityErrors.map((error) => error.errorId);
  assert.deepEqual(reasons.filter((reason) => reason !== "in-incognito"), []);
  const manifest = JSON.parse(data);
  assert.equal(manifest.id, "/biteband");
  assert.equal(manifest.display, "standalone");
  const sizes = await page.evaluate(
    (icons) =>
      Promise.all(
        icons.map(async ({ src, sizes }) => {
          const image = new Image();
          image.src = src;
          await image.decode();
          return [sizes, `${image.naturalWidth}x${image.naturalHeight}`];
        }),
      ),
    manifest.icons.filter((icon) => icon.type === "image/png"),
  );
  for (const [said, found] of sizes) assert.equal(found, said);
  assert.ok(manifest.icons.some((icon) => icon.purpose === "maskable"));
});

test("a new version waits until it is asked for, and then only the asking tab starts anew", async () => {
  const { context, page } = await open("", { init: noteEvents });
  await isReady(page);
  const [oldCache] = await keptCaches(page);
  const other = await context.newPage();
  await other.goto(server.url);
  await isReady(other);
  await other.evaluate(() => (globalThis.untouched = true));

  await withNewVersion(server, async () => {
    await page.reload();
    await page.waitForSelector("html[data-update=waiting]", { state: "attached" });
    assert.deepEqual(await eventsTold(page), ["biteband:update-waiting"]);
    assert.doesNotMatch(await description(page), /Version two/);
    await page.reload();
    await page.waitForSelector("html[data-update=waiting]", { state: "attached" });
    assert.doesNotMatch(await description(page), /Version two/, "loading again does not take the new version");

    let loads = 0;
    page.on("load", () => (loads += 1));
    await page.evaluate(() => void dispatchEvent(new CustomEvent("biteband:update-now")));
    await newVersionRuns(page);
    await isReady(page);
    await page.waitForTimeout(300);
    assert.equal(loads, 1, "the page starts anew once");
    assert.equal(await page.evaluate(() => document.documentElement.dataset.update), undefined);
    assert.equal(await other.evaluate(() => globalThis.untouched), true);
    const caches = await keptCaches(page);
    assert.equal(caches.length, 1);
    assert.notEqual(caches[0], oldCache);
  });
});

test("a half-uploaded version is not taken", async () => {
  const { page } = await open();
  await isReady(page);
  const broken = copyOfPage((folder) => appendFileSync(join(folder, "boot.js"), "\n// version two\n"));
  appendFileSync(join(broken, "boot.js"), "// half of version three\n");
  await serving(server, broken, async () => {
    const end = await page.evaluate(async () => {
      const registration = await navigator.serviceWorker.getRegistration();
      const found = new Promise((done) => {
        registration.addEventListener("updatefound", () => done(registration.installing));
      });
      registration.update().catch(() => {});
      const worker = await found;
      if (worker.state === "installing") {
        await new Promise((done) => worker.addEventListener("statechange", done, { once: true }));
      }
      return worker.state;
    });
    assert.equal(end, "redundant");
    await page.reload();
    await started(page);
    await isReady(page);
    assert.equal(await page.evaluate(() => document.documentElement.dataset.update), undefined);
  });
});

test("a first visit to a half-uploaded version works and says that it is not kept", async () => {
  const broken = copyOfPage(() => {});
  appendFileSync(join(broken, "icons/icon.svg"), "<!-- half of version two -->");
  await serving(server, broken, async () => {
    const { page } = await open("", { init: noteEvents });
    await page.waitForSelector("html[data-offline=failed]", { state: "attached" });
    assert.deepEqual(await eventsTold(page), []);
  });
});

test("the clearing worker removes every kept file and itself", async () => {
  const { page } = await open("", { init: noteEvents });
  await isReady(page);
  const cleared = copyOfPage(
    (folder) => writeFileSync(join(folder, "sw.js"), readFileSync(join(folder, "sw-kill.js"))),
    { worker: false },
  );
  await serving(server, cleared, async () => {
    await page.reload();
    await until("the caches are gone", async () => (await keptCaches(page)).length === 0);
    await until("the worker is gone", () =>
      page.evaluate(async () => !(await navigator.serviceWorker.getRegistration())),
    );
    assert.deepEqual(await eventsTold(page), [], "a worker that clears up is no new version");
    server.requests.length = 0;
    await page.reload();
    await page.waitForSelector("html[data-offline=failed]", { state: "attached" });
    assert.ok(server.requests.includes("/"), "the page comes from the host again");
  });
  await page.reload();
  await isReady(page);
});

test("two copies on one host keep to their own caches", async () => {
  server.mounts["/shop/"] = dist;
  try {
    const { page } = await open();
    await isReady(page);
    await page.goto(`${server.url}shop/`);
    await isReady(page);
    const caches = (await keptCaches(page)).map((name) => name.replace(/^.*@/, ""));
    assert.deepEqual(caches.sort(), ["/", "/shop/"]);
  } finally {
    delete server.mounts["/shop/"];
  }
});

test("a host that has never heard of modules serves the page from a folder deep down", async () => {
  expect(/does not serve Wasm with `application\/wasm`/);
  const known = server.types;
  const { ".wasm": _, ".webmanifest": __, ...old } = known;
  server.types = { ...old, other: "text/plain" };
  server.mounts["/some/folder/"] = dist;
  try {
    const { page } = await open("some/folder/#convert");
    await page.locator("#field-convert").waitFor();
    await isReady(page);
    await page.getByText("Ready to use without a network.").waitFor();
    await page.reload();
    await page.locator("#field-convert").waitFor();
  } finally {
    server.types = known;
    delete server.mounts["/some/folder/"];
  }
});

test("the single file works from a phone's storage", async () => {
  const { page } = await open(pathToFileURL(singleFile).href, { device: "phone" });
  assert.ok(await page.getByRole("heading", { level: 1 }).isVisible());
  const { single, start, offline } = await page.evaluate(() => ({ ...document.documentElement.dataset }));
  assert.deepEqual({ single, start, offline }, { single: "true", start: "done", offline: "unavailable" });
  assert.equal(await page.locator("link[rel=manifest], script[src], link[rel=stylesheet]").count(), 0);
});

for (const [what, fault, spoil] of [
  ["cut off", undefined, (path) => truncateSync(path, 1000)],
  ["missing", /404/, (path) => rmSync(path)],
]) {
  test(`a module that is ${what} gives a plain message`, async () => {
    if (fault) expect(fault);
    // Plain as it is fetched and packed as it is kept, or the worker would mend it.
    const spoilt = (folder) => ["_bg.wasm", "_bg.part"].forEach((end) => spoil(fileThat(folder, end)));
    await serving(server, copyOfPage(spoilt), async () => {
      const { page } = await open("", { started: false });
      const failed = () => page.waitForSelector("html[data-start=failed]", { state: "attached" });
      await failed();
      assert.match(await page.getByRole("alert").innerText(), /could not start[^]*records are safe/);
      await noAxeViolations(page);
      await page.getByRole("button", { name: "Try again" }).click();
      await failed();
    });
  });
}

// Timers: they ring at their end, survive a reload, ring at once on waking and say how late, and say what the browser
// cannot do. The clock is Playwright's; sound, vibration, screen and notifications are stand-ins that count.
import assert from "node:assert/strict";
import { test } from "node:test";
import { chip, fields, go, press } from "./hands.mjs";
import { noAxeViolations, shot, stage, started, until } from "./lib.mjs";

const { open, server } = stage();

const TWO = new Date("2026-03-02T14:00:00Z");
const MINUTE = 60_000;

const standIns = () => {
  const calls = (globalThis.calls = { sounds: [], buzzes: [], locks: [], told: [], asked: 0 });
  class Node {
    frequency = { value: 0 };
    gain = { value: 0, turns: 0, setValueAtTime() { this.turns += 1; } };
    connect(next) { next.before = this; }
    disconnect() {}
    start(at) { this.at = at; calls.sounds.push(this); }
    stop(at) { if (at === undefined) this.silenced = true; else this.until = at; }
  }
  globalThis.AudioContext = class {
    state = "running";
    destination = {};
    began = Date.now();
    get currentTime() { return (Date.now() - this.began) / 1000; }
    createOscillator() { return new Node(); }
    createGain() { return new Node(); }
    async resume() { this.state = "running"; }
    async suspend() { this.state = "suspended"; }
  };
  navigator.vibrate = (pattern) => calls.buzzes.push(pattern.length);
  const wakeLock = {
    request: async (what) => {
      const lock = { what, released: false, release: async () => { lock.released = true; } };
      calls.locks.push(lock);
      return lock;
    },
  };
  Object.defineProperty(navigator, "wakeLock", { value: wakeLock, configurable: true });
  globalThis.Notification = class {
    static permission = "default";
    static async requestPermission() {
      calls.asked += 1;
      return (Notification.permission = "granted");
    }
    constructor(text) { calls.told.push(text); }
  };
  globalThis.seen = "visible";
  Object.defineProperty(document, "visibilityState", { get: () => globalThis.seen });
  delete Navigator.prototype.serviceWorker;
};

// An old browser that has none of it.
const nothing = () => {
  for (const name of ["AudioContext", "webkitAudioContext", "Notification"]) delete globalThis[name];
  for (const name of ["vibrate", "wakeLock", "serviceWorker"]) delete Navigator.prototype[name];
};

async function start(hash, options = {}) {
  const context = { timezoneId: "UTC", ...options.context };
  const { page } = await open("about:blank", { init: standIns, ...options, context, started: false });
  await page.clock.install({ time: TWO });
  await page.goto(server.url + hash);
  await started(page);
  return page;
}

const calls = (page) => page.evaluate(() => globalThis.calls);
const figure = (page) => page.getByRole("timer");
const alert = (page) => page.getByRole("alert");
const { input } = fields("timer-");

// The phone sleeps: nothing of the page runs until somebody wakes it.
async function sleep(page, until, event = "visibilitychange") {
  await page.clock.pauseAt(await page.evaluate(() => Date.now() + 1_000));
  await page.clock.setSystemTime(until);
  await page.evaluate((name) => {
    (name === "visibilitychange" ? document : globalThis).dispatchEvent(new Event(name));
  }, event);
}

test("a press starts one, and it rings at its end and not before", async () => {
  const page = await start("#timer", { device: "phone" });
  await page.clock.pauseAt(new Date(TWO.getTime() + MINUTE));
  await input(page, "label").fill("pawl");
  await press(page, "5 min");
  await page.locator("section[aria-label='Soak: pawl']").waitFor();
  assert.match(await page.locator("main").innerText(), /Rings at 14:06\./);
  assert.equal(await page.title(), "Soak: pawl, 5 min left");
  await page.clock.runFor(4 * MINUTE + 59_000);
  assert.equal(await figure(page).innerText(), "0:01");
  assert.equal(await alert(page).innerText(), "");
  let seen = await calls(page);
  // The sound is handed over ahead, for the end of five minutes and for two more.
  assert.deepEqual([seen.sounds.length, seen.buzzes.length], [1, 0]);
  const [sound] = seen.sounds;
  assert.ok(Math.abs(sound.at - 300) < 1.5 && Math.abs(sound.until - sound.at - 120) < 0.01, JSON.stringify(sound));

  await page.clock.runFor(2_000);
  assert.equal(await alert(page).innerText(), "Soak: pawl: time is up.");
  assert.match(await page.title(), /^Soak: pawl: time is up/);
  assert.match(await figure(page).innerText(), /^\+0:0\d$/);
  assert.doesNotMatch(await page.locator("main").innerText(), /late:/);
  seen = await calls(page);
  assert.equal(seen.sounds.length, 1, "the sound that was handed over is the one that is on");
  assert.ok(seen.buzzes.length === 1 && seen.buzzes[0] > 10);
  await page.clock.runFor(31_000);
  assert.equal((await calls(page)).buzzes.length, 2, "the vibration goes on");

  await press(page, "Quiet");
  await until("it is quiet", async () => (await calls(page)).sounds[0].silenced);
  seen = await calls(page);
  assert.equal(seen.buzzes.at(-1), 0);
  assert.ok(seen.locks.every((lock) => lock.released), "the screen may sleep");
  assert.equal(await alert(page).innerText(), "");
  assert.match(await page.title(), /^Biteband/);
});

test("the ring ends after two minutes by itself and stays to be read", async () => {
  const page = await start("#timer");
  await page.clock.pauseAt(new Date(TWO.getTime() + MINUTE));
  await press(page, "5 min");
  await page.clock.runFor(5 * MINUTE + 1_000);
  await alert(page).filter({ hasText: "time is up" }).waitFor();
  assert.ok((await calls(page)).locks.some((lock) => !lock.released));
  await page.clock.runFor(2 * MINUTE + 1_000);
  await until("the screen may sleep", async () => (await calls(page)).locks.every((lock) => lock.released));
  assert.match(await alert(page).innerText(), /time is up/);
  // Four times half a minute.
  await page.clock.runFor(MINUTE);
  assert.equal((await calls(page)).buzzes.filter((beats) => beats > 0).length, 4);
});

test("a phone that slept rings at once on waking and says how late", async () => {
  for (const event of ["visibilitychange", "focus", "pageshow"]) {
    const page = await start("#timer");
    await press(page, "30 min");
    await figure(page).waitFor();
    await sleep(page, new Date(TWO.getTime() + 41 * MINUTE + 30_000), event);
    await alert(page).filter({ hasText: "Soak: time is up." }).waitFor();
    assert.match(await page.locator("main").innerText(), /It rang 11 min late/, event);
    assert.match(await figure(page).innerText(), /^\+11:\d\d$/);
    const { sounds, buzzes } = await calls(page);
    assert.ok(sounds.length >= 1 && buzzes.length === 1, event);
  }
});

test("the loudspeaker's clock slept as well: the sound is handed over anew", async () => {
  const page = await start("#timer");
  await page.evaluate(() => {
    Object.defineProperty(AudioContext.prototype, "currentTime", { get: () => 0 });
  });
  await press(page, "30 min");
  await figure(page).waitFor();
  await sleep(page, new Date(TWO.getTime() + 41 * MINUTE));
  await alert(page).filter({ hasText: "time is up" }).waitFor();
  const { sounds } = await calls(page);
  assert.equal(sounds.at(-1).at, 0, "it sounds now");
  assert.ok(sounds.slice(0, -1).every((sound) => sound.silenced));
});

test("it survives a reload and is seen from every page, which leads back to it", async () => {
  const page = await start("#timer", { device: "phone" });
  await press(page, "temper");
  await input(page, "label").fill("drift");
  await press(page, "2 h");
  await figure(page).waitFor();
  await page.reload();
  await figure(page).waitFor();
  assert.match(await figure(page).innerText(), /^(2:00:00|1:59:\d\d)$/);
  await go(page, "#file-test");
  const running = page.locator("a.running");
  await running.waitFor();
  assert.equal((await running.innerText()).trim(), "2 h");
  assert.equal(await running.getAttribute("aria-label"), "Temper: drift, 2 h left");
  await page.reload();
  await running.filter({ hasText: "2 h" }).waitFor();
  await page.clock.fastForward(30 * MINUTE);
  await running.filter({ hasText: /1 h (29|30) min/ }).waitFor();
  await noAxeViolations(page);
  await running.tap();
  await page.getByText("Temper: drift").waitFor();
});

test("after a reload the page sounds from the first touch on, and says so before", async () => {
  const page = await start("#timer");
  await press(page, "30 min");
  await figure(page).waitFor();
  await page.reload();
  await page.getByText("No sound yet").waitFor();
  assert.equal((await calls(page)).sounds.length, 0);
  await page.getByRole("heading", { name: "How far you can rely on it" }).click();
  await page.getByText("A phone set to silent").waitFor();
  assert.equal((await calls(page)).sounds.length, 1);
});

test("on another page it rings over the top and is quieted there", async () => {
  const page = await start("#timer", { device: "phone" });
  await press(page, "15 min");
  await figure(page).waitFor();
  await go(page, "#convert");
  await page.locator("#field-convert").fill("52 HRC");
  await page.clock.fastForward(15 * MINUTE + 1_000);
  const ringing = page.locator(".ringing");
  await ringing.filter({ hasText: "Soak: time is up." }).waitFor();
  await noAxeViolations(page);
  await shot(page, "timer-rings-elsewhere");
  await ringing.getByRole("button", { name: "Quiet" }).tap();
  await until("it is gone", async () => (await ringing.count()) === 0);
  assert.equal(await page.locator("#field-convert").inputValue(), "52 HRC");
});

test("the screen is asked to stay on, again after the page was away, and only while a timer runs", async () => {
  const page = await start("#timer");
  const locks = async () => (await calls(page)).locks;
  assert.equal((await locks()).length, 0);
  await press(page, "30 min");
  await page.getByText("The screen stays on").waitFor();
  assert.deepEqual((await locks()).map((lock) => lock.what), ["screen"]);
  // As browsers do: a page that is not seen loses it.
  await page.evaluate(() => {
    globalThis.calls.locks[0].released = true;
    globalThis.seen = "hidden";
    document.dispatchEvent(new Event("visibilitychange"));
  });
  await page.clock.runFor(2_000);
  assert.equal((await locks()).length, 1, "not while it is hidden");
  await page.evaluate(() => {
    globalThis.seen = "visible";
    document.dispatchEvent(new Event("visibilitychange"));
  });
  await until("it is asked again", async () => (await locks()).length === 2);
  await press(page, "Stop");
  await until("it is given back", async () => (await locks())[1].released);
});

test("one that was stopped by a slip is put back and has lost nothing", async () => {
  const page = await start("#timer");
  await press(page, "1 h");
  await press(page, "+15 min");
  await page.clock.fastForward(10 * MINUTE);
  await press(page, "Stop");
  await page.getByText("No timer runs.").waitFor();
  await page.clock.fastForward(MINUTE);
  await press(page, "Put back: Soak");
  // 75 minutes less the eleven that have passed.
  await until("it goes on", async () => /^1:0[34]:\d\d$/.test(await figure(page).innerText()));
});

test("four run at once, and a fifth is refused with the reason", async () => {
  const page = await start("#timer");
  for (let one = 0; one < 4; one += 1) await press(page, "5 min");
  await page.getByText("4 timers are all there can be").waitFor();
  assert.equal(await figure(page).count(), 4);
  assert.ok(await chip(page, "5 min").isDisabled());
});

test("a typed length needs its unit; by keyboard alone from the field to the ring and to quiet", async () => {
  const page = await start("#timer");
  await input(page, "length").focus();
  await page.keyboard.type("45");
  assert.ok(await chip(page, "Start").isDisabled());
  await page.keyboard.press("Enter");
  await page.locator(".error").filter({ hasText: "45" }).waitFor();
  await input(page, "length").focus();
  await page.keyboard.type(" min");
  await page.locator(".error").waitFor({ state: "detached" });
  await page.keyboard.press("Tab");
  await page.keyboard.press("Enter");
  await until("it runs", async () => /^4[45]:\d\d$/.test(await figure(page).innerText()));
  assert.equal(await input(page, "length").inputValue(), "");
  await page.clock.fastForward(45 * MINUTE + 500);
  await alert(page).filter({ hasText: "time is up" }).waitFor();
  await chip(page, "Quiet").focus();
  await page.keyboard.press("Space");
  await until("it is quiet", async () => (await alert(page).innerText()) === "");
});

test("notifications are asked for by their key alone, and come while the page is not seen", async () => {
  const page = await start("#timer");
  await press(page, "5 min");
  await page.clock.runFor(5_000);
  assert.equal((await calls(page)).asked, 0);
  await press(page, "Send a notification too");
  await chip(page, "Send a notification too").waitFor({ state: "detached" });
  await page.evaluate(() => { globalThis.seen = "hidden"; });
  await page.clock.fastForward(5 * MINUTE);
  await until("it is told", async () => (await calls(page)).told.length === 1);
  assert.deepEqual((await calls(page)).told, ["Soak: time is up."]);
});

test("a browser that can do none of it says so and still tells the time", async () => {
  const page = await start("#timer", { init: nothing });
  for (const part of [/does not keep the screen on/, /makes no sound/, /cannot vibrate/, /second clock/]) {
    await page.getByText(part).waitFor();
  }
  assert.equal(await chip(page, "Send a notification too").count(), 0);
  await press(page, "5 min");
  await page.clock.fastForward(5 * MINUTE + 500);
  await alert(page).filter({ hasText: "time is up" }).waitFor();
});

test("with the real loudspeaker nothing complains", async () => {
  const page = await start("#timer", { init: () => {} });
  await press(page, "Try the sound");
  await press(page, "5 min");
  await page.clock.fastForward(5 * MINUTE + 500);
  await alert(page).filter({ hasText: "time is up" }).waitFor();
  await press(page, "Quiet");
  await page.reload();
  await chip(page, "Remove").waitFor();
  await page.clock.runFor(1_000);
});

test("the hold of a recipe goes to the timer with its steel, and is started there", async () => {
  const page = await start("#steel", { device: "phone" });
  await page.getByRole("link", { name: "Timer" }).first().waitFor();
  await fields("steel-").fillAll(page, { query: "4140", size: "50 mm", length: "80 mm" });
  await page.locator(".recipe").getByRole("button", { name: "Timer" }).scrollIntoViewIfNeeded();
  await shot(page, "timer-steel");
  await page.locator(".recipe").getByRole("button", { name: "Timer" }).click();
  await page.waitForURL(/#timer$/);
  assert.equal(await input(page, "label").inputValue(), "4140");
  const typed = await input(page, "length").inputValue();
  assert.match(typed, /^\d+ min$/);
  await press(page, "Start");
  await page.locator("section[aria-label='Soak: 4140']").waitFor();
  await until("it runs", async () => {
    const [left] = (await figure(page).innerText()).split(":");
    return Math.abs(Number(left) - parseInt(typed, 10)) <= 1;
  });
});

for (const theme of ["light", "dim"]) {
  test(`no accessibility violation, nothing too small and nothing too wide, ${theme}`, async () => {
    const page = await start("#timer", { device: "phone", theme });
    await noAxeViolations(page);
    await shot(page, `timer-start-${theme}`);
    await press(page, "5 min");
    await press(page, "2 h");
    await page.clock.fastForward(6 * MINUTE + 10_000);
    await alert(page).filter({ hasText: "time is up" }).waitFor();
    await noAxeViolations(page);
    await shot(page, `timer-${theme}`);
    for (const width of [390, 320]) {
      await page.setViewportSize({ width, height: 844 });
      const [wide, small, letters] = await page.evaluate(() => [
        document.documentElement.scrollWidth,
        [...document.querySelectorAll("main button, main input")].filter((one) => one.offsetHeight < 48).length,
        Math.min(...[...document.querySelectorAll(".num")].map((one) => parseFloat(getComputedStyle(one).fontSize))),
      ]);
      assert.ok(wide <= width && small === 0 && letters >= 32, `${width}: ${wide} ${small} ${letters}`);
    }
    await shot(page, `timer-320-${theme}`);
    await press(page, "Quiet");
    await go(page, "#convert");
    await page.locator("a.running").waitFor();
    await shot(page, `timer-chip-320-${theme}`);
  });
}

// Starts the page: sets the theme, loads the calculating module, keeps the page ready without a network.
//
// The page is told about offline use through events on `window`, and can read the latest state from <html>,
// because an event may come before the module listens:
//   biteband:offline-ready    the first install is done          data-offline="ready"
//   biteband:update-waiting   a new version waits to be used     data-update="waiting"
//   biteband:settled          the worker is ready or will never be: the network is free for other things
// and says `biteband:update-now` when the person asked for the new version and everything is saved.
// data-start is "done" once the module runs and "failed" where it does not.
// data-offline is "unavailable" where the browser or the address allows no service worker (a file, for one),
// and "failed" where it could not be set up; the page then works as long as the network does.
"use strict";
(() => {
  const SECOND = 1000;
  const root = document.documentElement;
  const address = document.currentScript.dataset;

  // This script holds up the first paint, so that a chosen theme never flashes in the other colours.
  try {
    const theme = localStorage.getItem("biteband.theme");
    if (theme === "light" || theme === "dim") root.dataset.theme = theme;
  } catch {
    // Storage may be closed to the page; the system's theme then stands.
  }

  // The single-file build has no address to load from: its own module script hands over the start function.
  const starter = address.js
    ? import(new URL(address.js, document.baseURI).href).then(
        (module) => () => module.default({ module_or_path: address.wasm }),
      )
    : new Promise((resolve) => {
        addEventListener("biteband:module", (event) => resolve(event.detail), { once: true });
      });
  const parsed = new Promise((resolve) => {
    if (document.readyState === "loading") addEventListener("DOMContentLoaded", resolve, { once: true });
    else resolve();
  });

  // Each open tab keeps a document of its own, so that none writes over another's: it holds the first free number for
  // as long as it is open. A tab that is loaded again waits long for the number that it had, because its last run may
  // not have let go yet; a new one waits a little, because one that was just closed may not have either.
  const TAB = "biteband.tab";
  const hold = (number, patience) =>
    new Promise((resolve) => {
      navigator.locks
        .request(`biteband-tab-${number}`, { signal: AbortSignal.timeout(patience) }, () => {
          resolve(true);
          return new Promise(() => {});
        })
        // Where locks are closed to the page it has no other tabs to know of.
        .catch((error) => resolve(error.name === "SecurityError"));
    });
  async function numbered() {
    if (!navigator.locks || !AbortSignal.timeout) return;
    let last = 0;
    try {
      last = Number(sessionStorage.getItem(TAB));
    } catch {
      // Without a memory of its own the tab is a new one each time.
    }
    let number = last;
    if (!last || !(await hold(last, 5 * SECOND))) {
      number = 1;
      while (!(await hold(number, 1.5 * SECOND))) number += 1;
    }
    if (number > 1) root.dataset.tab = number;
    try {
      sessionStorage.setItem(TAB, number);
    } catch {
      // As above.
    }
  }

  async function start() {
    if (typeof WebAssembly !== "object") {
      throw new Error("This browser is too old: it has no WebAssembly.");
    }
    const [run] = await Promise.all([starter, numbered(), parsed]);
    await run();
    root.dataset.start = "done";
  }

  async function showFailure(error) {
    await parsed;
    const add = (parent, tag, text) => {
      const element = parent.appendChild(document.createElement(tag));
      if (text) element.textContent = text;
      return element;
    };
    const page = document.createElement("main");
    const alert = add(page, "div");
    alert.setAttribute("role", "alert");
    add(alert, "h1", "Biteband could not start");
    add(alert, "p", "A part of the page could not be loaded or run on this device.");
    add(alert, "p", "Your records are safe: they are kept on this device and nothing was changed.");
    const again = add(page, "button", "Try again");
    again.type = "button";
    again.addEventListener("click", () => location.reload());
    add(page, "p", "For a report: ").appendChild(document.createElement("code")).textContent =
      error instanceof Error ? error.message : String(error);
    (document.getElementById("app") ?? document.body).replaceChildren(page);
    root.dataset.start = "failed";
  }

  const started = start().catch(showFailure);

  const tell = (name) => window.dispatchEvent(new CustomEvent(`biteband:${name}`));
  const settle = (state) => {
    root.dataset.offline = state;
    tell("settled");
  };

  async function keepOffline() {
    if (!("serviceWorker" in navigator) || !location.protocol.startsWith("http")) {
      settle("unavailable");
      return;
    }
    const container = navigator.serviceWorker;
    let registration;
    try {
      registration = await container.register("sw.js", { updateViaCache: "none" });
    } catch {
      settle("failed");
      return;
    }

    const firstTime = !registration.active;
    const isOurs = (name) =>
      name.startsWith("biteband-") && name.endsWith(`@${new URL(registration.scope).pathname}`);

    const ready = async () => {
      // The worker that clears up after a bad release also becomes active, but keeps nothing.
      if (!(await caches.keys()).some(isOurs)) {
        settle("failed");
        return;
      }
      if (root.dataset.offline === "ready") return;
      settle("ready");
      if (firstTime) tell("offline-ready");
    };
    const waiting = () => {
      if (!registration.waiting || !registration.active || root.dataset.update === "waiting") return;
      root.dataset.update = "waiting";
      tell("update-waiting");
    };
    const follow = (worker) => {
      worker?.addEventListener("statechange", () => {
        // The worker that clears up only passes through this state; a new version stays in it.
        if (worker.state === "installed") setTimeout(waiting, SECOND);
        if (worker.state === "activated") void ready();
        if (worker.state === "redundant" && !registration.active && !root.dataset.offline) settle("failed");
      });
    };

    registration.addEventListener("updatefound", () => follow(registration.installing));
    follow(registration.installing);
    waiting();
    if (registration.active?.state === "activated") void ready();
    else follow(registration.active);

    addEventListener("biteband:update-now", () => {
      if (!registration.waiting) return;
      // Only the tab that asked starts anew; another one goes on as it is.
      container.addEventListener("controllerchange", () => location.reload(), { once: true });
      registration.waiting.postMessage({ type: "skip-waiting" });
    });

    // A page that stays open for days is never navigated, so the browser would not look by itself.
    const DAY = 24 * 60 * 60 * SECOND;
    let looked = Date.now();
    document.addEventListener("visibilitychange", () => {
      if (document.visibilityState !== "visible" || Date.now() - looked < DAY) return;
      looked = Date.now();
      registration.update().catch(() => {
        // Without a network there is nothing to look at; the next day is soon enough.
      });
    });
  }

  // The worker fetches every file again; it must not compete with the first start.
  const loaded = new Promise((resolve) => {
    if (document.readyState === "complete") resolve();
    else addEventListener("load", resolve, { once: true });
  });
  void Promise.all([started, loaded]).then(keepOffline);
})();

// What the page keeps in its browser: a look into its database from beside it, and the ways in which storage fails.
//
// store(page, name)     everything in a store of the database, by its keys; store(page, name, key, text) after putting
//                       this in, or with null after taking it out.
// cards(page)           the cards of parts as they lie there.
// FULL                  ways in which full storage shows: what it does; an `init` for open(), after which it is full
//                       while `globalThis.full` is true; the fault that comes with it.
// CLOSED                ways in which there is no storage: what it does, and an `init` for open().

export const store = (page, name, key, text) =>
  page.evaluate(
    ([name, key, text]) =>
      new Promise((done, failed) => {
        const request = indexedDB.open("biteband");
        request.onerror = () => failed(request.error);
        request.onsuccess = () => {
          const database = request.result;
          const transaction = database.transaction(name, text === undefined ? "readonly" : "readwrite");
          const all = transaction.objectStore(name);
          if (text === null) all.delete(key);
          else if (text !== undefined) all.put(text, key);
          const [keys, texts] = [all.getAllKeys(), all.getAll()];
          transaction.oncomplete = () => {
            database.close();
            done(Object.fromEntries(keys.result.map((key, place) => [key, texts.result[place]])));
          };
          transaction.onabort = () => failed(transaction.error);
        };
      }),
    [name, key, text],
  );

export const cards = async (page) => Object.values(await store(page, "cards")).map((text) => JSON.parse(text).card);

export const FULL = [
  [
    "throws",
    () => {
      const real = IDBObjectStore.prototype.put;
      IDBObjectStore.prototype.put = function (...all) {
        if (globalThis.full) throw new DOMException("The disk is full.", "QuotaExceededError");
        return real.apply(this, all);
      };
    },
  ],
  [
    "fails as it ends",
    () => {
      const real = IDBTransaction.prototype.commit;
      IDBTransaction.prototype.commit = function () {
        return globalThis.full ? this.abort() : real.call(this);
      };
    },
    // The storage library lets go of its listeners when a transaction ends badly, and the browser still calls them;
    // it is told on the console and harms nothing.
    /closure invoked recursively or after being dropped/,
  ],
];

export const CLOSED = [
  ["is absent", () => Object.defineProperty(globalThis, "indexedDB", { value: undefined })],
  [
    "refuses to open",
    () => {
      IDBFactory.prototype.open = () => {
        throw new DOMException("The operation is insecure.", "SecurityError");
      };
    },
  ],
  [
    "never answers",
    () => {
      const real = IDBFactory.prototype.open;
      IDBFactory.prototype.open = function (name, version) {
        const request = real.call(this, `${name}-held-back`, version);
        for (const event of ["onsuccess", "onerror", "onupgradeneeded", "onblocked"]) {
          Object.defineProperty(request, event, { set() {}, get: () => null });
        }
        request.addEventListener = () => {};
        return request;
      };
    },
  ],
];

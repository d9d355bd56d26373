// The work kept in the browser: every change at once, in IndexedDB; one tab at a time may write a source.
//
// A kept work is what `InPeriod.recordState.toKeep` gives, under its id, with its revision and the moment it was saved.
// Folders that were opened (handles) stand beside it, under the same id. Page images are never kept.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const DATABASE = "inperiod-recording",
    SHELVES = ["works", "folders"];
  const { FORMAT } = InPeriod.recordState;

  const done = (request) =>
    new Promise((resolve, reject) => {
      request.onsuccess = () => resolve(request.result);
      request.onerror = () => reject(request.error);
    });

  let opening = null;

  /** The database; one made by a newer version of this page is opened as it is. */
  function database() {
    if (!opening) {
      opening = new Promise((resolve, reject) => {
        const attempt = (version) => {
          const request = root.indexedDB.open(DATABASE, version);
          request.onupgradeneeded = () => {
            for (const shelf of SHELVES) if (!request.result.objectStoreNames.contains(shelf)) request.result.createObjectStore(shelf);
          };
          request.onsuccess = () => {
            request.result.onversionchange = () => request.result.close();
            request.result.onclose = () => (opening = null);
            resolve(request.result);
          };
          request.onerror = (event) => {
            event.preventDefault();
            if (version && request.error.name === "VersionError") attempt(undefined);
            else reject(request.error);
          };
        };
        attempt(1);
      });
      opening.catch(() => (opening = null));
    }
    return opening;
  }

  async function on(shelf, mode, use) {
    const held = await database();
    const transaction = held.transaction(shelf, mode, { durability: "strict" });
    const ended = new Promise((resolve, reject) => {
      transaction.oncomplete = resolve;
      transaction.onabort = transaction.onerror = (event) => {
        event.preventDefault();
        reject(transaction.error || (event.target && event.target.error) || new Error("aborted"));
      };
    });
    ended.catch(() => {});
    const result = await done(use(transaction.objectStore(shelf)));
    await ended;
    return result;
  }

  /** Every kept work, the last saved first; none where the browser keeps nothing. */
  async function all() {
    try {
      const found = await on("works", "readonly", (shelf) => shelf.getAll());
      return found.filter((work) => work && work.id).sort((a, b) => ((a.saved || "") < (b.saved || "") ? 1 : -1));
    } catch (refused) {
      return [];
    }
  }

  /** A kept work, or null. */
  async function read(id) {
    try {
      return (await on("works", "readonly", (shelf) => shelf.get(id))) || null;
    } catch (refused) {
      return null;
    }
  }

  /** Whether a work was kept by a newer version of this page, which alone can go on with it. */
  const tooNew = (work) => work.format > FORMAT;

  async function remove(id) {
    for (const shelf of SHELVES) await on(shelf, "readwrite", (held) => held.delete(id)).catch(() => {});
  }

  const rememberFolder = (id, handle) => on("folders", "readwrite", (shelf) => shelf.put(handle, id)).catch(() => {});
  const folder = (id) => on("folders", "readonly", (shelf) => shelf.get(id)).catch(() => null);

  /** Why something could not be kept, in words. */
  function reason(slip) {
    return /quota|space|full/i.test(`${slip && slip.name} ${slip && slip.message}`)
      ? "the browser’s storage for this site is full"
      : "the browser keeps nothing for this page (its storage is switched off)";
  }

  /** Puts a work on its shelf unless a newer one lies there already: then another tab was here. */
  async function shelve(work) {
    const held = await database();
    const transaction = held.transaction("works", "readwrite", { durability: "strict" }),
      shelf = transaction.objectStore("works");
    let newer = null;
    await new Promise((resolve, reject) => {
      const refuse = (event) => {
        event.preventDefault();
        reject(transaction.error || (event.target && event.target.error) || new Error("aborted"));
      };
      transaction.oncomplete = resolve;
      transaction.onabort = transaction.onerror = refuse;
      const before = shelf.get(work.id);
      before.onsuccess = () => {
        newer = before.result && before.result.revision >= work.revision ? before.result : null;
        try {
          if (!newer) shelf.put(work, work.id);
        } catch (slip) {
          reject(slip);
        }
      };
    });
    return newer;
  }

  /**
   * Writes works one after another, the newest only where several wait. `told(null, work)` when a work is kept,
   * `told(reason, work)` when it could not be, `clashed(newer)` where another tab has kept a newer one.
   */
  function writer(told, clashed) {
    let waiting = null,
      busy = false;
    async function run() {
      busy = true;
      while (waiting) {
        const work = waiting;
        waiting = null;
        try {
          const newer = await shelve(work);
          if (newer) clashed(newer);
          else if (!waiting) told(null, work);
        } catch (slip) {
          if (!waiting) told(reason(slip), work);
        }
      }
      busy = false;
    }
    return {
      write(work) {
        waiting = work;
        if (!busy) run();
      },
      busy: () => busy,
    };
  }

  // ---- one tab at a time

  const nameOf = (id) => `inperiod-record-${id}`;

  /**
   * The right to write a work. `granted()` when it is ours, at once or when the other tab lets go; `refused()` where another
   * tab has it; `lost()` when another tab took it over. Gives {take(), leave()}.
   */
  function claim(id, { granted, refused, lost }) {
    const locks = root.navigator && root.navigator.locks;
    let release = null,
      left = false;
    const holding = (lock) =>
      new Promise((resolve) => {
        release = resolve;
        if (left) resolve();
        else granted(Boolean(lock));
      });
    const stolen = (slip) => {
      release = null;
      if (!left && slip && slip.name === "AbortError") lost();
    };
    const wait = () => locks.request(nameOf(id), holding).catch(stolen);
    if (!locks) granted(false);
    else {
      locks
        .request(nameOf(id), { ifAvailable: true }, (lock) => {
          if (lock) return holding(lock);
          if (left) return undefined;
          refused();
          wait();
          return undefined;
        })
        .catch((slip) => (slip && slip.name === "AbortError" ? stolen(slip) : granted(false)));
    }
    return {
      take: () => locks && locks.request(nameOf(id), { steal: true }, holding).catch(stolen),
      wait: () => locks && wait(),
      leave() {
        left = true;
        if (release) release();
      },
    };
  }

  InPeriod.recordKeep = { all, read, remove, tooNew, rememberFolder, folder, reason, writer, claim };
  if (typeof module !== "undefined") module.exports = InPeriod.recordKeep;
})(globalThis);

// One's own boards in the browser's storage, one entry a board.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const PREFIX = "inperiod-board:",
    FORMAT = 1;
  const LINES = "title target garment place worn_under care permanent_mark citation_style notes".split(" ");
  const LISTS = "features plates questions departures making revisions".split(" ");
  const TABLES = "wearer measures signed_off".split(" ");

  const nested = (value) => typeof value === "object" && value !== null;
  const empty = (value) => value === null || value === undefined || value === "" || (nested(value) && !Object.keys(value).length);

  /** A board with every field there, whatever was given; text is text. What has no place here is left out. */
  function boardOf(given) {
    const board = {};
    const text = (value) => (nested(value) || empty(value) ? "" : String(value));
    for (const name of LINES) board[name] = text(given[name]);
    for (const name of TABLES) board[name] = nested(given[name]) && !Array.isArray(given[name]) ? { ...given[name] } : {};
    for (const name of LISTS) board[name] = Array.isArray(given[name]) ? given[name].filter((each) => !empty(each)) : [];
    const wide = (name, short) => {
      board[name] = board[name].map((each) => (nested(each) ? { ...each } : { [short]: String(each) }));
    };
    wide("features", "term");
    wide("plates", "plate");
    wide("departures", "original");
    wide("revisions", "what");
    board.questions = board.questions.map(text).filter(Boolean);
    board.making = board.making.filter(nested);
    board.publish = given.publish !== false;
    return board;
  }

  /** The storage, or null where the browser refuses it. */
  function store() {
    try {
      return root.localStorage;
    } catch (refused) {
      return null;
    }
  }

  /** An entry from its text: {id, revision, saved, board}, or {id, text, broken: why}. Older shapes are taken. */
  function opened(id, text) {
    try {
      const given = JSON.parse(text);
      const board = given.board || (given.title !== undefined && given);
      if (given.format > FORMAT) return { id, text, broken: "It was saved by a newer version of this page." };
      if (!board || typeof board !== "object") return { id, text, broken: "What is saved is not a board." };
      return { id, revision: given.revision || 1, saved: given.saved || "", board: boardOf(board) };
    } catch (slip) {
      return { id, text, broken: "What is saved cannot be read." };
    }
  }

  function read(id) {
    let text = null;
    try {
      text = store().getItem(PREFIX + id);
    } catch (refused) {
      text = null;
    }
    return text === null ? null : opened(id, text);
  }

  /** Every board, the last saved first; broken ones last. */
  function all() {
    let keys = [];
    try {
      keys = Object.keys(store());
    } catch (refused) {
      keys = [];
    }
    const found = keys.filter((key) => key.startsWith(PREFIX)).map((key) => read(key.slice(PREFIX.length)));
    return found.filter(Boolean).sort((a, b) => ((a.saved || "") < (b.saved || "") ? 1 : -1));
  }

  /** Saves an entry as its next revision. Null when done, else why not, in words; the entry is then as it was. */
  function save(entry) {
    const next = { format: FORMAT, revision: entry.revision + 1, saved: new Date().toISOString(), board: entry.board };
    try {
      store().setItem(PREFIX + entry.id, JSON.stringify(next));
    } catch (refused) {
      return /quota/i.test(refused.name)
        ? "the browser’s storage for this site is full"
        : "the browser keeps nothing for this page (its storage is switched off)";
    }
    entry.revision = next.revision;
    entry.saved = next.saved;
    return null;
  }

  function remove(id) {
    try {
      store().removeItem(PREFIX + id);
    } catch (refused) {
      return;
    }
  }

  /** A new entry, not saved yet. */
  function fresh(board) {
    const id = Date.now().toString(36) + Math.random().toString(36).slice(2, 7);
    return { id, revision: 0, saved: "", board: boardOf(board) };
  }

  InPeriod.boards = { PREFIX, LISTS, TABLES, boardOf, nested, empty, opened, read, all, save, remove, fresh };
  if (typeof module !== "undefined") module.exports = InPeriod.boards;
})(globalThis);

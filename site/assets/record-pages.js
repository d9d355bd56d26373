// The page images that were opened: files on her own machine, which never leave it. What is kept of them is their names.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const PICTURE = /\.(png|jpe?g|webp|gif|avif)$/i,
    SHEET = /\.ya?ml$/i,
    LONGEST = 4096, // points a side that are held for drawing; regions are counted in the picture's own
    HELD = 3; // pages held ready at once
  const byName = (one, other) => one.name.localeCompare(other.name, "en", { numeric: true, sensitivity: "base" });

  /** Files by page name; a handle stands for a file until it is wanted. */
  const files = new Map();
  const ready = new Map();
  const known = new Map();

  const isPicture = (name) => PICTURE.test(name) && !name.startsWith(".");

  /** Files taken as pages: in the order of their names, those of a name already there in its place. Gives the new list of pages. */
  function take(given, pages) {
    const pictures = given.filter((each) => isPicture(each.name));
    for (const each of pictures) {
      files.set(each.name, each);
      ready.delete(each.name);
    }
    const names = new Set(pages.map((page) => page.name));
    const added = [...new Map(pictures.map((each) => [each.name, each])).values()].filter((each) => !names.has(each.name)).sort(byName);
    return added.length ? [...pages, ...added.map((each) => ({ name: each.name }))] : pages;
  }

  function forget() {
    files.clear();
    ready.clear();
    known.clear();
  }

  const isOpen = (page) => files.has(page.name);

  /** The file of a page, or null where it must be opened again. */
  async function fileOf(page) {
    const held = files.get(page.name);
    if (!held) return null;
    try {
      return held.getFile ? await held.getFile() : held;
    } catch (gone) {
      files.delete(page.name);
      return null;
    }
  }

  /**
   * A page ready for drawing: {bitmap, width, height, blocks}; width and height are the picture's own. Null where its file is not
   * open; throws where the browser cannot read the picture.
   */
  function load(page) {
    if (!ready.has(page.name)) {
      const loading = decoded(page);
      ready.set(page.name, loading);
      loading.then((held) => held || ready.delete(page.name), () => ready.delete(page.name));
      for (const name of [...ready.keys()].slice(0, -HELD)) {
        const old = ready.get(name);
        ready.delete(name);
        old.then((held) => held && held.bitmap.close(), () => {});
      }
    } else {
      const again = ready.get(page.name);
      ready.delete(page.name);
      ready.set(page.name, again);
    }
    return ready.get(page.name);
  }

  async function decoded(page) {
    const file = await fileOf(page);
    if (!file) return null;
    let bitmap = await root.createImageBitmap(file);
    const { width, height } = bitmap,
      scale = LONGEST / Math.max(width, height);
    if (scale < 1) {
      const whole = bitmap;
      bitmap = await root.createImageBitmap(whole, { resizeWidth: Math.round(width * scale), resizeHeight: Math.round(height * scale), resizeQuality: "high" });
      whole.close();
    }
    const facts = known.get(page.name) || { width, height, blocks: blocksOf(bitmap) };
    known.set(page.name, facts);
    return { bitmap, ...facts };
  }

  /** Width, height and blocks of a page that was loaded once, or null. */
  const factsOf = (page) => (page && known.get(page.name)) || null;

  function blocksOf(bitmap) {
    const width = 240,
      height = Math.max(1, Math.round((bitmap.height / bitmap.width) * width));
    if (height > 2000) return [];
    const canvas = document.createElement("canvas");
    canvas.width = width;
    canvas.height = height;
    const context = canvas.getContext("2d", { willReadFrequently: true });
    context.fillStyle = "#fff";
    context.fillRect(0, 0, width, height);
    context.drawImage(bitmap, 0, 0, width, height);
    const { data } = context.getImageData(0, 0, width, height),
      grey = new Uint8Array(width * height);
    for (let i = 0; i < grey.length; i += 1) grey[i] = (data[4 * i] * 299 + data[4 * i + 1] * 587 + data[4 * i + 2] * 114) / 1000;
    return InPeriod.findBlocks(grey, width, height);
  }

  /** The part of a page drawn small into a canvas; false where the page is not open. */
  async function drawPart(canvas, page, region) {
    const held = page && (await load(page).catch(() => null));
    if (!held) return false;
    const box = InPeriod.recordFigures.boxOf(region, held.width, held.height),
      { bitmap } = held;
    const scale = Math.min(canvas.width / (box.w * bitmap.width), canvas.height / (box.h * bitmap.height));
    const w = box.w * bitmap.width * scale,
      h = box.h * bitmap.height * scale;
    const context = canvas.getContext("2d");
    context.clearRect(0, 0, canvas.width, canvas.height);
    context.imageSmoothingQuality = "high";
    context.drawImage(
      bitmap, box.x * bitmap.width, box.y * bitmap.height, box.w * bitmap.width, box.h * bitmap.height,
      (canvas.width - w) / 2, (canvas.height - h) / 2, w, h,
    );
    return true;
  }

  // ---- what was dropped or chosen

  /** Files of a folder that was given as a handle, its folders included, to a depth of four. */
  async function filesIn(handle, depth = 4) {
    const found = [];
    for await (const each of handle.values()) {
      if (each.kind === "file" && (isPicture(each.name) || SHEET.test(each.name))) found.push(each);
      else if (each.kind === "directory" && depth > 1 && !each.name.startsWith(".")) found.push(...(await filesIn(each, depth - 1)));
    }
    return found;
  }

  /** Files that were dropped, folders walked through. */
  async function dropped(transfer) {
    const entries = [...transfer.items].map((item) => (item.webkitGetAsEntry ? item.webkitGetAsEntry() : null)).filter(Boolean);
    if (!entries.length) return [...transfer.files];
    const walk = async (entry) => {
      if (entry.isFile) return [await new Promise((resolve, reject) => entry.file(resolve, reject))];
      const reader = entry.createReader(),
        inside = [];
      for (;;) {
        const some = await new Promise((resolve, reject) => reader.readEntries(resolve, reject));
        if (!some.length) break;
        inside.push(...some);
      }
      return (await Promise.all(inside.filter((each) => !each.name.startsWith(".")).map(walk))).flat();
    };
    return (await Promise.all(entries.map(walk))).flat();
  }

  InPeriod.recordPages = { take, forget, isOpen, fileOf, load, factsOf, drawPart, filesIn, dropped, isPicture, SHEET };
  if (typeof module !== "undefined") module.exports = InPeriod.recordPages;
})(globalThis);

// What carries down: a new figure from the last one, ids from where a figure stands, names of files, pictures in words.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const { inOrder, isNothing } = InPeriod.recordState || (typeof require === "function" ? require("./record-state.js") : {});
  const CARRIED = ["garment", "wearer", "view", "medium"];
  const SEEN_FROM = { front: "from the front", back: "from the back", side: "from the side", detail: "a detail" };

  /** An id: small letters without accents, digits and single hyphens, at most so many signs. */
  function slug(text, longest = 60) {
    const words = InPeriod.fold(String(text)).replace(/[^a-z0-9 ]+/g, "").split(" ").filter(Boolean);
    return words.join("-").slice(0, longest).replace(/-+$/, "");
  }

  /** The first of name, name-b, name-c … that is not taken. */
  function free(name, taken) {
    for (let letter = 1; ; letter += 1) {
      const tried = letter === 1 ? name : `${name}-${letter <= 26 ? String.fromCharCode(96 + letter) : letter}`;
      if (!taken.has(tried)) return tried;
    }
  }

  /** The id of a source from its title and date: `autumn-list-1912`. */
  function sourceId(source, taken) {
    const year = /\d{4}/.exec(source.date || ""),
      name = slug(source.title || "", 60);
    if (!name) return "";
    return free(year && !name.includes(year[0]) ? `${name}-${year[0]}` : name, taken || new Set());
  }

  /** The id of a plate from where it stands: page 14, figure 3 is `p14-3`. */
  function plateId(plate, taken) {
    const { page, plate: leaf, figure, item } = plate.locator || {};
    const place = page !== undefined ? `p${slug(page, 20)}` : leaf !== undefined ? `plate-${slug(leaf, 20)}` : "";
    const own = slug(figure !== undefined ? figure : item !== undefined ? item : "", 30);
    return free([place, own && (place ? own : `f${own}`)].filter(Boolean).join("-") || "f1", taken);
  }

  const othersIds = (plates, index) => new Set(plates.filter((_, i) => i !== index).map((plate) => String(plate.id)));

  let named = {};

  /** The names of all page images beside the records; worked out anew only where something they depend on has changed. */
  function imageNames({ name, pages, source: { plates } }) {
    if (named.name === name && named.pages === pages && named.plates === plates) return named.names;
    const files = (plates || []).flatMap((plate) => (plate.image && typeof plate.image.file === "string" ? [plate.image.file] : []));
    const known = new Map(files.map((file) => [file.replace(/^.*\//, ""), file])),
      taken = new Set(),
      given = new Set();
    const names = pages.map((page) => {
      const [, stem, ending] = /^(.*?)(\.[a-z0-9]+)?$/i.exec(page.name),
        own = free(slug(stem) || "page", taken);
      taken.add(own);
      // A picture the records name already keeps that name.
      const called = `${own}${(ending || ".png").toLowerCase()}`,
        there = [known.get(page.name), known.get(called)].find((file) => file && !given.has(file));
      const file = there || `${name || "source"}/${called}`;
      given.add(file);
      return file;
    });
    named = { name, pages, plates, names };
    return names;
  }

  /** The name a page image is given beside the records: `<source>/<its own name>`, safe for every system. */
  const imageName = (work, page) => imageNames(work)[work.pages.indexOf(page)];

  /** Which page a plate's picture is, or -1. */
  const pageOf = (work, plate) =>
    plate && plate.image ? imageNames(work).indexOf(plate.image.file) : -1;

  /** The source under another id: its pictures go with it. */
  function renamed(work, name) {
    const old = `${work.name || "source"}/`,
      plates = work.source.plates;
    const moved = (plate) =>
      plate.image && String(plate.image.file).startsWith(old)
        ? { ...plate, image: { ...plate.image, file: `${name}/${plate.image.file.slice(old.length)}` } }
        : plate;
    return { ...work, name, source: plates ? { ...work.source, plates: plates.map(moved) } : work.source };
  }

  /** With the id that title and date give, as long as nobody has given it one. */
  function withName(work, taken) {
    if (work.named || work.file) return work;
    const name = sourceId(work.source, taken);
    return name === work.name ? work : renamed(work, name);
  }

  /** The page as printed, for a new figure: as the last one on that page image, or counted on from an earlier page. */
  function printedPage(work, index) {
    const plates = work.source.plates || [];
    for (let page = index; page >= 0; page -= 1) {
      const there = plates.filter((plate) => pageOf(work, plate) === page && plate.locator && plate.locator.page !== undefined).pop();
      if (there && page === index) return String(there.locator.page);
      if (there) return /^\d+$/.test(there.locator.page) ? String(Number(there.locator.page) + index - page) : undefined;
    }
    const named = work.pages[index] && /(?:^|[^a-z])p(?:age)?[ ._-]?0*(\d+)/i.exec(work.pages[index].name);
    return named ? named[1] : undefined;
  }

  /** A new figure after the one in hand: what does not change from figure to figure is carried down. */
  function nextPlate(work, region, today, altOf) {
    const plates = work.source.plates || [],
      last = plates[work.at] || plates[plates.length - 1] || {},
      page = work.pages[work.page];
    const plate = {},
      locator = {};
    const printed = page ? printedPage(work, work.page) : last.locator && last.locator.page;
    if (printed !== undefined) locator.page = printed;
    const neighbours = plates.filter((each) => ((each.locator || {}).page || "") === (printed || ""));
    const numbers = neighbours.map((each) => Number((each.locator || {}).figure)).filter((number) => number > 0);
    if (!plates.length || (last.locator && last.locator.figure !== undefined)) locator.figure = String(Math.max(0, ...numbers) + 1);
    if (!isNothing(locator)) plate.locator = inOrder(locator, "locator");
    for (const name of CARRIED) if (!isNothing(last[name])) plate[name] = last[name];
    if (page) {
      plate.image = { file: imageName(work, page), ...(region ? { region } : {}) };
      plate.image.alt = altOf(plate);
    }
    if (work.by) plate.recorded = { by: work.by, on: today };
    return { id: plateId(plate, othersIds(plates, -1)), ...plate };
  }

  /** The work with one more plate after the one in hand, and that one in hand. */
  function withPlate(work, plate) {
    const plates = (work.source.plates || []).slice(),
      at = Math.min(work.at < 0 ? plates.length : work.at + 1, plates.length);
    plates.splice(at, 0, plate);
    return { ...work, source: { ...work.source, plates }, at };
  }

  /**
   * The work with one plate changed. What follows from the plate follows it for as long as it is what would be
   * proposed: its id (until it was saved once) and its description.
   */
  function withChanged(work, index, change, altOf) {
    const plates = work.source.plates,
      before = plates[index],
      others = othersIds(plates, index);
    let after = change(before);
    if (after === before) return work;
    const saved = new Set(work.savedIds || []);
    if (after.id === before.id && !saved.has(before.id) && before.id === plateId(before, others)) after = { ...after, id: plateId(after, others) };
    if (after.image && before.image && after.image.alt === before.image.alt && before.image.alt === altOf(before))
      after = { ...after, image: { ...after.image, alt: altOf(after) } };
    const changed = plates.slice();
    changed[index] = after;
    return { ...work, source: { ...work.source, plates: changed } };
  }

  /** Features of the figure before, for a figure that differs little: those it does not have yet. */
  function repeated(plate, last) {
    const word = (feature) => JSON.stringify(typeof feature === "string" ? { term: feature } : feature);
    const held = new Set((plate.features || []).map(word));
    return [...(plate.features || []), ...(last.features || []).filter((feature) => !held.has(word(feature)))];
  }

  /** What a picture shows, for those who cannot see it, from what is recorded. `vocabulary` as in record-terms. */
  function inWords(plate, vocabulary) {
    const facets = new Map();
    for (const feature of plate.features || []) {
      const { term: word, reading, at } = typeof feature === "string" ? { term: feature } : feature;
      const term = vocabulary.terms.get(word);
      if (!term || reading === "inferred" || reading === "read") continue;
      const where = at && at !== "all-over" ? ` at the ${at}` : "";
      facets.set(term.facet.label, [...(facets.get(term.facet.label) || []), term.label.toLowerCase() + where]);
    }
    const garment = vocabulary.garments.get(plate.garment);
    const lead = [garment ? InPeriod.raised(garment.label) : "A garment", SEEN_FROM[plate.view]].filter(Boolean).join(", ");
    return [lead, ...[...facets].map(([facet, labels]) => `${facet}: ${labels.join(", ")}`)].map((part) => `${part}.`).join(" ");
  }

  // ---- a part of a picture: {x, y, w, h} in shares of its width and height

  function region(box, width, height) {
    const x = Math.round(box.x * width),
      y = Math.round(box.y * height);
    const w = Math.max(1, Math.min(width - x, Math.round(box.w * width))),
      h = Math.max(1, Math.min(height - y, Math.round(box.h * height)));
    return x === 0 && y === 0 && w === width && h === height ? undefined : `${x},${y},${w},${h}`;
  }

  function boxOf(text, width, height) {
    const found = /^(pct:)?([\d.]+),([\d.]+),([\d.]+),([\d.]+)$/.exec(text || "");
    if (!found) return { x: 0, y: 0, w: 1, h: 1 };
    const [x, y, w, h] = found.slice(2).map(Number);
    return found[1] ? { x: x / 100, y: y / 100, w: w / 100, h: h / 100 } : { x: x / width, y: y / height, w: w / width, h: h / height };
  }

  InPeriod.recordFigures = {
    slug, free, sourceId, plateId, othersIds, imageName, pageOf, renamed, withName, printedPage, nextPlate, withPlate, withChanged, repeated,
    inWords, region, boxOf,
  };
  if (typeof module !== "undefined") module.exports = InPeriod.recordFigures;
})(globalThis);

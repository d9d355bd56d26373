// The catalogue's own checks of one source file, in the words of the checker: records/building.py and records/checks/.
//
//   check(root, context)   root: the tree of recordYaml.read; context: what the build hands over (data/recording.js), and
//                          `file` (sources/<id>.yaml) and `pictures`: the names of the pictures there are, a Set, or a Map of
//                          names to [width, height]; null where that is not known, and then no picture is missed.
//                          Gives problems in order: {file, line, column, severity, message, hint, field}.
//                          A source of which only the name is known has null for its plates.
//   place(problem, root)   the field it concerns, as a path: ["plates", 2, "features", 0]; [] is the source as a whole.
//
// Not said here, because one file and a list of names cannot tell: what a picture file holds, pictures that would show what
// another source withholds, and all that concerns vocabulary, settings and boards.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  if (typeof require !== "undefined") require("./dating.js"), require("./record-shape.js");
  const { dating } = InPeriod;
  const { shape, sourceShape, nearest, cut, SPACE } = InPeriod.recordShape;

  const NUMBER = "(?:[0-9]{1,4}(?:\\.[0-9]{1,3}|[ -][0-9]{1,2}/[0-9]{1,2}|/[0-9]{1,2}| ?[¼½¾⅛⅜⅝⅞])?|[¼½¾⅛⅜⅝⅞])";
  const WIDTH = new RegExp(`^${NUMBER}(?: ?(?:-|–|to) ?${NUMBER})? ?(?:in|cm|mm)$`);
  // What a browser passes over in an address.
  const UNSEEN = /^[\x00-\x20\x7f-\xa0\u200b-\u200f\u2028\u2029\ufeff]+|[\t\n\r]+/g;
  const ODD_ADDRESS = new RegExp(`^(?:[A-Za-z][A-Za-z0-9+.-]{0,30}:(?![${SPACE}])|//)`),
    WEB_ADDRESS = new RegExp(`^https?://[^${SPACE}"'<>]+$`);
  const SAYS_NOTHING = new RegExp(
    `^[${SPACE}]*(?:(?:an? |the )?(?:image|picture|photo|photograph|scan|plate|figure|img|untitled)[${SPACE}\\p{Nd}._-]*` +
      `|[^${SPACE}]+\\.(?:png|jpe?g|tiff?|webp|gif)[${SPACE}]*)$`,
    "iu",
  );
  const IN_COPYRIGHT = /^https?:\/\/(?:www\.)?rightsstatements\.org\/(?:vocab|page)\/InC(?![\p{L}\p{N}_])/u;
  const DATES = ["date", "on_sale", "made", "photographed", "altered", "worn"];
  const SEE_GARMENTS = "Garments are listed in vocabulary/garment.yaml.",
    NO_SOURCE = "A source goes by the name of its file, without .yaml.";

  // ---- words

  const didYouMean = (word, words, otherwise = "") => {
    const near = nearest(word, words);
    return near ? `Did you mean ${near}?` : otherwise;
  };

  function listed(words, most = 8) {
    if (words.length > most) return `${words.slice(0, most).join(", ")} and ${words.length - most} more`;
    return [words.slice(0, -1).join(", "), words[words.length - 1]].filter(Boolean).join(" and ");
  }

  const parted = (word) => {
    const at = word.indexOf("/");
    return at < 0 ? [word, ""] : [word.slice(0, at), word.slice(at + 1)];
  };

  // ---- the vocabulary made ready, once

  const ready = new WeakMap();

  function indexed(list) {
    if (ready.has(list)) return ready.get(list);
    const facets = new Map(list.map((facet) => [facet.id, facet])),
      terms = new Map(list.flatMap((facet) => facet.terms.map((term) => [`${facet.id}/${term.id}`, { ...term, facet }])));
    const garments = new Map((facets.get("garment") || { terms: [] }).terms.map((term) => [term.id, term]));
    const widerOf = (garment) => {
      const chain = [];
      for (let at = garment; at && !chain.includes(at); at = (garments.get(at) || {}).broader) chain.push(at);
      return chain;
    };
    const allowed = (term) => (term.applies && term.applies.length ? term.applies : term.facet.applies) || [];
    const applies = (term, garment) => !allowed(term).length || widerOf(garment).some((each) => allowed(term).includes(each));
    const made = { facets, terms, garments, allowed, applies };
    ready.set(list, made);
    return made;
  }

  const named = (word, terms) => {
    const said = word.replace(/-/g, " ");
    return terms.find((term) => said === term.label.toLowerCase() || term.names.some((name) => said === name.toLowerCase()));
  };

  function unknownGarment(garment, { garments }) {
    if (garments.has(garment)) return null;
    const same = named(garment, [...garments.values()]);
    return [`The vocabulary has no garment ${garment}.`, same ? `Did you mean ${same.id}?` : didYouMean(garment, [...garments.keys()], SEE_GARMENTS)];
  }

  function unknownFeature(facet, term, vocabulary) {
    const { facets, terms } = vocabulary;
    if (facet === "garment") return ["The garment is not a feature.", "Write it in the field garment."];
    if (!facets.has(facet)) {
      const names = [...facets.keys()].filter((each) => each !== "garment");
      return [`The vocabulary has no facet ${facet}.`, didYouMean(facet, names, `The facets are ${listed(names, 40)}.`)];
    }
    return term === null || terms.has(term) ? null : [`The vocabulary has no term ${term}.`, nearestTerm(term, vocabulary)];
  }

  /** The term that goes by this name, the same id in another facet, or the one most like it. */
  function nearestTerm(key, { facets, terms }) {
    const [facet, word] = parted(key),
      own = facets.get(facet).terms,
      ids = own.map((term) => term.id);
    const same = named(word, own);
    if (same) return `Did you mean ${facet}/${same.id}? (${word.replace(/-/g, " ")} is another name of it.)`;
    let near = nearest(word, ids, 0.75);
    if (near) return `Did you mean ${facet}/${near}?`;
    const others = [...terms.keys()].filter((each) => ![facet, "garment"].includes(parted(each)[0]));
    near = nearest(word, [...new Set(others.map((each) => parted(each)[1]))], 0.75);
    if (near) return `Did you mean ${others.filter((each) => parted(each)[1] === near).join(" or ")}?`;
    return `Terms of ${facet} are ${listed(ids, 40)}.`;
  }

  // ---- dates

  /** The span of an EDTF date, or why it cannot be read. */
  function spanOf(text, seasons) {
    try {
      return dating.readEdtf(text, seasons);
    } catch (problem) {
      if (!(problem instanceof dating.Unreadable)) throw problem;
      return problem.message || `“${text}” cannot be read as a date.`;
    }
  }

  /** What is said of an unreadable date; what it is in EDTF where the reader of phrases knows it. */
  function aboutDate(key, text, reason) {
    const sentence = /[.?]$/.test(reason) ? reason : `${reason}.`;
    if (reason.includes("for example"))
      try {
        const { edtf, span } = dating.readPhrase(text);
        return [`${key}: “${cut(text, 60)}” is not an EDTF date.`, `For ${dating.inWords(span)} write ${edtf}.`];
      } catch (problem) {
        if (!(problem instanceof dating.Unreadable)) throw problem;
      }
    const plain = reason.includes("write") || sentence.endsWith("?");
    return [`${key}: ${sentence}`, plain ? "" : "Write a date such as 1912, 1912-09, 1912-23 (autumn), 1925~ (about) or 1912/1913."];
  }

  // ---- the record

  /** Shaped fields into a source, with what only reading a value shows. */
  function build(fields, id, seasons, complain) {
    const spans = new Map();

    const spot = (of, key) => (of.spots[key] ? { line: of.spots[key][0], column: of.spots[key][1] } : of);

    function date(of, key) {
      const text = of.at[key];
      if (text === undefined) return null;
      if (!spans.has(text)) spans.set(text, spanOf(text, seasons));
      const span = spans.get(text),
        mark = spot(of, key);
      if (typeof span !== "string") return { text, span, mark };
      complain("error", mark, ...aboutDate(key, text, span));
      of.leftOut.push(key);
      return null;
    }

    function feature(entry, [line, column]) {
      const mark = { line, column };
      const written = typeof entry === "string" ? entry : entry.at.term;
      const rest = typeof entry === "string" ? {} : entry.at;
      if (written === undefined) {
        const facet = rest.facet || "",
          state = "none" in rest ? "none" : "not visible";
        return { facet, term: null, state, word: `${facet}/${state}`, mark, at: rest.at, width: rest.width };
      }
      const [facet, term] = parted(written),
        shown = term !== "none" && term !== "not visible";
      return { facet, term: shown ? written : null, state: shown ? "shown" : term, word: written, mark, at: rest.at, width: rest.width };
    }

    function plate(of) {
      const { at } = of;
      const made = {
        id: at.id, key: `${id}/${at.id}`, fields: of, mark: of, spot: (key) => spot(of, key),
        garment: at.garment || "", outfit: at.outfit, sameCutAs: at.same_cut_as, publish: at.publish !== false,
        features: (at.features || []).map((each, i) => feature(each, at.features.spots[i])),
        date: date(of, "date"),
        image: at.image && at.image.at.file ? { ...at.image.at, mark: spot(at.image, "file") } : null,
      };
      if (at.recorded) date(at.recorded, "on");
      made.confirmations = (at.confirmations || [])
        .filter((each) => each.at.reading)
        .map((each) => ({ ...each.at, on: date(each, "on"), mark: each }));
      return made;
    }

    const { at } = fields,
      source = { id, fields, mark: fields, spot: (key) => spot(fields, key), leftOut: fields.leftOut };
    for (const key of DATES) source[key] = date(fields, key);
    if (at.held_by) date(at.held_by, "accessed");
    if (at.examined) date(at.examined, "on");
    const plates = at.plates || [];
    if (!plates.every((each) => each.at.id !== undefined)) fields.leftOut.push("plates");
    source.plates = plates.filter((each) => each.at.id !== undefined).map(plate);
    return source;
  }

  // ---- checks of the source: records/checks/sources.py, references.py, dates.py

  function checkSource(source, given, error, warn) {
    const { at } = source.fields,
      { id, plates, leftOut } = source;
    const first = new Map(),
      alike = new Map(),
      looks = (each) => each.replace(/0/g, "o").replace(/1/g, "l");
    for (const plate of plates) {
      const mark = plate.spot("id"),
        other = alike.get(looks(plate.id));
      if (first.has(plate.id)) error(mark, `The plate id ${plate.id} is used already on line ${first.get(plate.id)}.`, `Give this plate another id, such as ${plate.id}-b.`);
      else first.set(plate.id, plate.mark.line);
      if (other === undefined) alike.set(looks(plate.id), plate.id);
      else if (other !== plate.id) warnAlike(mark, plate.id, other);
    }
    function warnAlike(mark, one, other) {
      warn(mark, `The ids ${one} and ${other} look alike: they differ in 0 and o, or 1 and l, alone.`, "Give one of them a clearer id.");
    }
    const before = Object.keys(given.sources).filter((each) => looks(each) === looks(id) && `${each}.yaml` < `${id}.yaml`).sort((a, b) => (`${a}.yaml` < `${b}.yaml` ? -1 : 1));
    if (before.length) warnAlike(source.mark, id, before[0]);

    if (!plates.length && !at.examined && !leftOut.includes("plates") && !leftOut.includes("examined"))
      warn(source.mark, `The source ${id} has no plates.`, "Add plates:, or examined: with the pages that were looked at in vain.", "plates");
    if (!at.rights && !leftOut.includes("rights"))
      warn(source.mark, `The source ${id} does not say who may use it.`, "Add rights: with an address from rightsstatements.org or of a Creative Commons licence.", "rights");
    for (const [rights, mark, field] of [[at.rights, source.spot("rights")], ...plates.filter((each) => each.image).map(({ image }) => [image.rights, image.mark, "rights"])])
      if (rights && ODD_ADDRESS.test(rights.replace(UNSEEN, "")) && !WEB_ADDRESS.test(rights))
        error(mark, `The rights “${cut(rights, 60)}” are no web address that can be followed.`, "Write an address that starts with https:// or http://.", field);

    const figures = plates.map((each) => each.outfit);
    for (const plate of plates)
      if (plate.outfit && figures.filter((each) => each === plate.outfit).length === 1)
        warn(plate.spot("outfit"), `The outfit ${plate.outfit} has this one plate only.`, "Give the same outfit id to the other garments of the figure, or take it out here.");

    if (!source.date && !leftOut.includes("date"))
      warn(source.mark, `The source ${id} has no date, so it is counted nowhere.`, "Add date: in EDTF form, such as 1912 or 1925~; for a guess, with date_basis: estimate.", "date");
    if (source.date && !at.date_basis && !leftOut.includes("date_basis"))
      warn(source.date.mark, `The source ${id} does not say what its date rests on, so it is not weighed.`, "Add date_basis: printed, internal, documented, institution, seller, style or estimate.", "date_basis");
  }

  /** Whether following `onward` from there leads back to it. */
  function circles(start, onward) {
    const seen = new Set();
    for (let at = onward.get(start); at !== undefined && !seen.has(at); at = onward.get(at)) {
      if (at === start) return true;
      seen.add(at);
    }
    return false;
  }

  function checkReferences(source, given, error) {
    const { id, plates } = source,
      others = Object.keys(given.sources).filter((each) => each !== id && given.sources[each]),
      unread = (each) => each !== id && given.sources[each] === null;
    const ownKeys = new Map(plates.map((plate) => [plate.key, plate])),
      original = source.fields.at.reprint_of;
    if (original) {
      const mark = source.spot("reprint_of"),
        onward = new Map([...Object.entries(given.reprints || {}), [id, original]]);
      if (original === id) error(mark, `${id} is given as a reprint of itself.`, "Take it out.");
      else if (!others.includes(original) && !unread(original)) error(mark, `${id} is a reprint of ${original}, and there is no such source.`, didYouMean(original, others, NO_SOURCE));
      else if (circles(id, onward)) error(mark, `${id} is, by way of other reprints, a reprint of itself.`, "Take reprint_of out of the earliest of them.");
    }
    const onward = new Map(Object.entries(given.cuts || {}).filter(([key]) => parted(key)[0] !== id));
    for (const [key, plate] of ownKeys) if (plate.sameCutAs) onward.set(key, plate.sameCutAs);
    for (const [key, plate] of ownKeys) {
      const target = plate.sameCutAs,
        mark = plate.spot("same_cut_as");
      if (!target) continue;
      const [of, its] = parted(target),
        known = of === id ? ownKeys.has(target) : others.includes(of) && given.sources[of].includes(its);
      if (target === key) error(mark, `${key} is given as the same cut as itself.`, "Take it out.");
      else if (!known && !unread(of)) {
        const keys = of === id ? plates.map((each) => each.key).filter((each) => each !== key) : (given.sources[of] || []).map((each) => `${of}/${each}`);
        const hint = of === id || others.includes(of) ? didYouMean(target, keys, `The plates are those of the file sources/${of}.yaml.`) : didYouMean(of, [...others, id], NO_SOURCE);
        error(mark, `${key} is the same cut as ${target}, and there is no such plate.`, hint);
      } else if (circles(key, onward)) error(mark, `${key} is, by way of other plates, the same cut as itself.`, "Take same_cut_as out of the earliest of them.");
    }
  }

  // ---- checks of a plate: dates.py, features.py, readings.py, pictures.py

  function checkFeatures(plate, source, given, vocabulary, error, warn) {
    const { facets, terms, garments, allowed, applies } = vocabulary,
      { features, garment, key } = plate;
    const unknown = garment && unknownGarment(garment, vocabulary);
    if (unknown) error(plate.spot("garment"), ...unknown);
    if (!features.length && !plate.fields.leftOut.includes("features"))
      warn(plate.mark, `The plate ${key} records no features, so it answers nothing.`, "Add features: with a term for each thing that can be seen.", "features");
    const byFacet = new Map(),
      seen = new Set(),
      date = plate.date || source.date,
      latest = date && dating.widened(date.span, given.settings.circaYears).latest;
    for (const each of features) {
      const wrong = unknownFeature(each.facet, each.term, vocabulary),
        term = terms.get(each.term);
      if (wrong) error(each.mark, ...wrong);
      byFacet.set(each.facet, [...(byFacet.get(each.facet) || []), each]);
      if (term && each.facet !== "garment" && garments.has(garment) && !applies(term, garment))
        error(each.mark, `${each.term} does not apply to the garment ${garment}.`, `It applies to ${listed(allowed(term))}.`);
      if (term && term.notBefore && date && latest !== null && term.notBefore.day !== null && latest < term.notBefore.day) {
        const firm = ["A", "B"].includes(given.grades[source.fields.at.date_basis]);
        (firm ? error : warn)(each.mark, `${each.term} is recorded on a plate dated ${date.text}, but not before ${term.notBefore.date} (${term.notBefore.said}).`, "Check the date, the reading and the term; one of the three is wrong.");
      }
      const same = `${each.word} at ${each.at || ""}`;
      if (seen.has(same)) warn(each.mark, `${each.word} is listed twice on this plate${each.at ? ` at ${each.at}` : ""}.`, "Keep one, or say with at: where the other sits.");
      seen.add(same);
      if (each.width !== undefined && !WIDTH.test(each.width)) error(each.mark, `The width “${cut(each.width, 60)}” is not understood.`, "Write a number and in, cm or mm: 1 in, 1/2 in, 2.5 cm.");
    }
    for (const [id, of] of byFacet) {
      const facet = facets.get(id),
        several = [...new Set(of.map((each) => each.term).filter(Boolean))];
      if (facet && facet.exclusive && several.length > 1)
        error(of.find((each) => each.term === several[1]).mark, `A garment has one ${facet.label.toLowerCase()} at a time, and this plate has ${listed(several)}.`, "Keep one, and put the other in note:.");
      const absent = of.find((each) => each.state === "none"),
        others = [...new Set(of.filter((each) => each.state !== "none").map((each) => each.word))].sort();
      if (absent && others.length) error(absent.mark, `This plate says that there is no ${id}, and also ${listed(others)}.`, "Keep one of the two.");
    }
  }

  const covers = (one, dispute) =>
    one.feature === undefined || (dispute.feature !== undefined && [dispute.feature, dispute.instead].includes(one.feature));

  /** By their dates where these do not overlap, else by their places in the list. */
  function isLater(one, than, below) {
    const after = (a, b) => a.on && b.on && a.on.span.earliest !== null && b.on.span.latest !== null && a.on.span.earliest > b.on.span.latest;
    return after(one, than) || (!after(than, one) && below);
  }

  /** The disputes among confirmations, each {reading, feature, instead, on: {span} or null}, that no later one settles. */
  const openDisputes = (confirmations) =>
    confirmations.filter(
      (each, place) =>
        each.reading === "disputed" &&
        !confirmations.some((other, at) => other.reading !== "disputed" && covers(other, each) && isLater(other, each, at > place)),
    );

  function checkReadings(plate, vocabulary, error, warn) {
    const { confirmations, key } = plate;
    const reader = (each) => each.by || "A second reader",
      what = (each) => (each.feature ? `the reading of ${each.feature}` : "the reading");
    for (const each of openDisputes(confirmations))
      warn(each.mark, `${reader(each)} disputes ${what(each)} of ${key}${each.instead ? `, and reads ${each.instead}` : ""}.`,
        "Look at the plate together; then add an entry below: reading: confirmed, or corrected.");
    for (const each of confirmations)
      for (const word of [each.feature, each.instead].filter(Boolean)) {
        const [facet, term] = parted(word);
        const wrong = facet === "garment" ? unknownGarment(term, vocabulary) : unknownFeature(facet, term === "none" || term === "not visible" ? null : word, vocabulary);
        if (wrong) error(each.mark, ...wrong);
      }
    if (["features", "garment"].some((name) => plate.fields.leftOut.includes(name))) return;
    const recorded = [`garment/${plate.garment}`, ...plate.features.map((each) => each.word)],
      doubted = confirmations.filter((each) => each.reading !== "confirmed").map((each) => each.feature);
    for (const each of confirmations) {
      const word = { confirmed: each.feature, corrected: each.instead }[each.reading];
      if (!word || recorded.includes(word) || doubted.includes(word)) continue;
      const found = each.reading === "confirmed" ? "confirms" : `corrects ${what(each)} to`;
      warn(each.mark, `${reader(each)} ${found} ${word}, and ${key} does not record that.`, "Change the record, or add an entry below that says who found it wrong: corrected.");
    }
  }

  /** The name of a picture as the folder has it; null where it lies outside. */
  function pathOf({ file }) {
    const steps = file.split("/");
    return steps.includes("..") ? null : steps.filter((step) => step && step !== ".").join("/");
  }

  function checkPicture({ image, key }, pictures, error, warn) {
    const path = pathOf(image);
    if (path === null) error(image.mark, `The picture ${image.file} lies outside the folder images.`, "Put a copy into the folder images.");
    else if (pictures && !pictures.has(path)) error(image.mark, `The picture ${image.file} is not in the folder images.`, "Check its name, capitals included, or put it there.");
    const size = sizeOf(image, pictures);
    if (size && image.region) checkRegion(image, size, error, warn);
    if (!image.alt) warn(image.mark, `The picture of ${key} has no description for those who cannot see it.`, "Add alt: with a sentence that says what it shows.", "alt");
    else if (SAYS_NOTHING.test(image.alt)) warn(image.mark, `“${cut(cut(image.alt, 200).replace(new RegExp(`[${SPACE}]+`, "g"), " ").trim(), 60)}” does not describe the picture of ${key}.`, "Say in alt: what it shows, for example: Front of a frock with a square neck.", "alt");
  }

  const sizeOf = (image, pictures) => (pictures instanceof Map && pictures.get(pathOf(image))) || null;

  function numbersOf(region, [width, height]) {
    const numbers = region.replace("pct:", "").split(",").map(Number);
    return region.startsWith("pct:") ? numbers.map((each, i) => (each * [width, height][i % 2]) / 100) : numbers;
  }

  function checkRegion({ file, region, mark }, [width, height], error, warn) {
    const [x, y, w, h] = numbersOf(region, [width, height]),
      size = `${file} is ${width} pixels wide and ${height} high when upright`;
    if (x >= width || y >= height || !w || !h) error(mark, `The region ${region} holds nothing of the picture.`, `${size}; a region is x,y,w,h or pct:x,y,w,h.`, "region");
    else if (x + w > width + 1 || y + h > height + 1) warn(mark, `The region ${region} runs over the edge of the picture.`, `${size}; what lies outside is cut off.`, "region");
  }

  /** Pictures that stay out of the site for what other plates of this source, or their own rights, withhold. */
  function checkWithheld({ fields, plates }, pictures, warn) {
    const isOut = fields.at.publish === false;
    const inCopyright = ({ image }) => IN_COPYRIGHT.test(image.rights || fields.at.rights || "");
    const pictured = plates.filter((plate) => plate.image && pictures.has(pathOf(plate.image)));
    const secret = pictured.filter((plate) => isOut || !plate.publish || inCopyright(plate));
    for (const plate of pictured.filter((each) => each.publish && !isOut)) {
      const { image, key } = plate,
        other = secret.find((each) => each === plate || (each.image.file === image.file && overlap(image, each.image, pictures)));
      if (secret.includes(plate))
        warn(image.mark, `The picture of ${key} stays out of the site: its rights say that it is in copyright.`, "With leave to show it, say so in the rights of the picture: rights: Shown by leave of …", "rights");
      else if (other) warn(image.mark, `The picture of ${key} stays out of the site: it would show ${other.key} as well.`, "Give both a region, so that neither holds a part of the other.", "region");
    }
  }

  function overlap(one, other, pictures) {
    const size = sizeOf(one, pictures);
    if (!size) return false;
    const [[x, y, w, h], [left, top, wide, high]] = [one, other].map(({ region }) => boxOf(region, size));
    return x < left + wide && left < x + w && y < top + high && top < y + h;
  }

  /** The region in whole pixels, cut at the edges; a half goes to the even number, as Python rounds. */
  function boxOf(region, [width, height]) {
    if (!region) return [0, 0, width, height];
    const round = (number) => (number % 1 === 0.5 ? 2 * Math.round(number / 2) : Math.round(number));
    const [x, y, w, h] = numbersOf(region, [width, height]).map(round),
      left = Math.min(x, width - 1),
      top = Math.min(y, height - 1);
    return [left, top, Math.max(1, Math.min(w, width - left)), Math.max(1, Math.min(h, height - top))];
  }

  // ---- the door

  const ORDER = ["line", "column", "severity", "message", "hint"];

  /** Sorted as the checker sorts them, none twice. */
  function inOrder(problems) {
    const compare = (a, b) => {
      const by = ORDER.find((name) => a[name] !== b[name]);
      return by ? (a[by] < b[by] ? -1 : 1) : 0;
    };
    return problems.sort(compare).filter((each, i) => !i || compare(each, problems[i - 1]));
  }

  function check(tree, context) {
    const given = { ...(InPeriod.data || {}).recording, ...context };
    const { fields, problems } = shape(tree, sourceShape(given.shapes));
    const complain = (severity, { line, column }, message, hint, field) => problems.push({ line, column, severity, message, hint: hint || "", field });
    const error = complain.bind(null, "error"),
      warn = complain.bind(null, "warning");
    if (fields) {
      const id = given.file.replace(/^.*\//, "").replace(/\.yaml$/, "");
      const vocabulary = indexed(given.vocabulary),
        source = build(fields, id, given.settings.seasons, complain);
      checkSource(source, given, error, warn);
      checkReferences(source, given, error);
      for (const plate of source.plates) {
        checkFeatures(plate, source, given, vocabulary, error, warn);
        checkReadings(plate, vocabulary, error, warn);
        if (plate.image) checkPicture(plate, given.pictures, error, warn);
      }
      if (given.pictures) checkWithheld(source, given.pictures, warn);
    }
    return inOrder(problems).map((each) => ({ file: given.file, ...each }));
  }

  const known = new WeakMap();

  /** Where everything in the tree was written: the path of the outermost value or name that begins there. */
  function places(tree) {
    if (known.has(tree)) return known.get(tree);
    const found = new Map();
    const note = (line, column, path) => {
      const at = `${line}:${column}`;
      if (!found.has(at)) found.set(at, path);
    };
    const walk = (it, path) => {
      note(it.line, it.column, path);
      if (it.is === "items") it.items.forEach((each, i) => walk(each, [...path, i]));
      if (it.is === "table")
        for (const [name, each] of it.entries) {
          note(...it.keys.get(name), [...path, name]);
          walk(each, [...path, name]);
        }
    };
    walk(tree, []);
    known.set(tree, found);
    return found;
  }

  function place({ line, column, field }, tree) {
    const path = places(tree).get(`${line}:${column}`) || [];
    if (!field) return path;
    const it = path.reduce((node, step) => (node.is === "table" ? node.entries.get(step) : node.items[step]), tree);
    return [...(it.is === "table" ? path : path.slice(0, -1)), field];
  }

  InPeriod.recordChecks = { check, place, openDisputes };
  if (typeof module !== "undefined") module.exports = InPeriod.recordChecks;
})(globalThis);

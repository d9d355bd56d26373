// What on a board can hurt someone, each beside what it concerns: the Python side's rules and sentences, in step with
// generator/inperiod/making/cautions.py. The ids are places on the page of cautions, which names the published rules.
(function (root) {
  "use strict";

  const SENTENCES = {
    "cords-children": "Cords, ties and drawstrings on a child’s garment can strangle or catch, at the neck above all. Look up " +
      "16 CFR 1120, ASTM F1816, EN 14682 or the rule where the child lives, and ask whoever answers for product " +
      "safety there; a sewn-down bow can look the same.",
    "nightwear": "What is slept in is nightwear whatever its date, and has rules of its own: look up 16 CFR 1615 and 1616, " +
      "the Nightwear (Safety) Regulations 1985, or those where you are, and ask a testing house.",
    "flammable-cloth": "Light, open or napped cloth catches easily and burns fast. Keep it from flame; look up 16 CFR 1610 and " +
      "the rules where it is worn, and ask the fire officer of a stage or a public event.",
    "long-skirts": "A long or narrow skirt trips, catches in wheels and stairs, and fills and drags in water. Walk the " +
      "ground in it before the day, and ask whoever answers for safety at the place.",
    "wet-wool": "Wool drinks water, grows heavy and stretches, and can hold a swimmer down. Ask those who run the water, " +
      "a lifeguard or a swimming teacher, first; rules on lifejackets apply over any costume.",
    "celluloid": "Celluloid catches from a spark or a hot iron and burns fiercely. Keep it from heat, follow the local " +
      "rules for nitrate materials, and ask a conservator about old pieces.",
    "hatpins": "A hatpin is a sharp spike at the height of other people’s eyes. Guard its point, and ask before carrying " +
      "it where it may count as a weapon: local laws differ.",
    "tight-lacing": "Lacing or boning that is tight hinders breath, above all in heat, after meals and in exertion. Be able " +
      "to get out of it quickly, loosen it at any pain or faintness, and ask a doctor and an experienced corset " +
      "maker first.",
    "small-parts": "Buttons, beads, pins and press studs come off, and small children swallow them. Look up 16 CFR 1501 or " +
      "the rule where the child lives, and ask a testing house before it is given or sold.",
    "old-garments": "An old garment may carry poisonous dyes, pesticides, mould or dust, and weighted silk that shatters. Do " +
      "not wear, wash or shake it to learn about it; handle it as its conservator says and by local rules.",
    "arsenic-dyes": "Some old dyes and pigments hold arsenic or other poisons, which only an analysis shows. Ask a " +
      "conservator before handling one, and follow local rules and the supplier’s safety sheet in dyeing.",
    "hot-iron-sharp-tools": "Cutting and pressing mean sharp tools and hot irons. Use them as their makers say, keep them from " +
      "children, and follow the rules on workplace safety where others work or learn with you.",
  };
  const WITH_COMMAS = { "cords-children": "Cords, children", "hot-iron-sharp-tools": "Hot iron, sharp tools" };
  const NEAR_FLAME = "The board speaks of flame or heat near it.", NEAR_WATER = "The board speaks of water near it.";
  const CHILDREN = "boy girl infant".split(" ");
  const CHILD_GARMENTS = "child-frock child-suit sailor-suit romper infant-gown".split(" ");
  const BATHING = "bathing-wear bathing-dress bathing-suit bathing-two-piece bathing-trunks".split(" ");
  const ALWAYS = {
    "nightwear": "garment/nightwear garment/nightdress garment/nightshirt garment/pyjamas garment/dressing-gown",
    "flammable-cloth": "garment/crinoline silhouette/crinoline-bell fabric/lawn fabric/cambric fabric/batiste fabric/nainsook " +
      "fabric/voile fabric/muslin fabric/calico fabric/gingham fabric/chambray fabric/zephyr " +
      "fabric/cotton-crepe fabric/flannelette fabric/velveteen fabric/georgette fabric/chiffon " +
      "fabric/artificial-silk fabric/rayon fabric/organdie fabric/dimity fabric/net-bobbin fabric/lace-cloth " +
      "fabric/towelling fabric/seersucker fabric/cotton fabric/gauze lining/steel-cage",
    "long-skirts": "garment/bathing-dress silhouette/hobble skirt-cut/hobble-cut skirt-length/train skirt-length/ground " +
      "skirt-length/instep",
    "celluloid": "garment/fan garment/collar-piece garment/cuff-piece collar/boned-stand collar/wing " +
      "fastening/celluloid-buttons trim/sequins",
    "hatpins": "garment/headwear garment/hat",
    "tight-lacing": "garment/corset silhouette/s-bend silhouette/hourglass fastening/busk-front fastening/lacing " +
      "lining/boned-bodice lining/waist-stay",
  };
  const CORDS = ("neckline/halter collar/tie-bow fastening/lacing fastening/ribbon-tie fastening/drawstring " +
      "fastening/belt-tie fastening/tape-ties trim/sash trim/ribbon trim/beading-slotted").split(" ");
  const SMALL = ("fastening/buttons fastening/shank-buttons fastening/celluloid-buttons fastening/phenolic-buttons " +
      "fastening/pearl-buttons fastening/press-studs fastening/safety-pin fastening/toggle trim/beads " +
      "trim/sequins trim/buttons-ornamental").split(" ");
  const WOOL = ("fabric/flannel fabric/serge fabric/alpaca fabric/mohair fabric/wool-jersey fabric/worsted-knit " +
      "fabric/tweed fabric/wool").split(" ");
  const WATER = /\b(?:water|lake|river|sea|seaside|boats?|boathouse|beach|bath(?:e|es|ing)?|swim(?:s|ming|mer)?|pond|regatta|landing stage|quay|punt(?:s|ing)?)\b/;
  const FLAME = /\b(?:lanterns?|candles?|fires?|flames?|bonfires?|stoves?|gaslights?|lamps?|heaters?)\b/;
  const CORD = /\b(?:drawstrings?|neck cords?|cords?)\b/;
  const WORDS = {
    "celluloid": /\bcelluloid\b/,
    "hatpins": /\bhatpins?\b/,
    "tight-lacing": /\b(?:tight lacing|corsets?)\b/,
    "old-garments": /\b(?:extant|antique|old lace|museum)\b/,
  };

  const where = (key) => (key.startsWith("garment/") ? "garment" : key);

  /** The terms a board plans, in either form a feature is written; absent and unseen ones are none. */
  function termsOf(board) {
    return (board.features || []).map((each) => (typeof each === "string" ? each : each && each.term))
      .filter((term) => typeof term === "string" && !/\/(?:none|not visible)$/.test(term));
  }

  function wordsOf(board) {
    const texts = [board.title, board.notes, board.worn_under, board.care, ...(board.questions || [])];
    for (const { original, stand_in: standIn, reason } of board.departures || []) texts.push(original, standIn, reason);
    return texts.filter((text) => text).map((text) => String(text).toLowerCase()).join(" ");
  }

  function ofChildren(terms, making, words) {
    const found = [];
    for (const [which, keys] of [["cords-children", CORDS], ["small-parts", SMALL]]) {
      for (const key of terms) if (keys.includes(key)) found.push([which, key]);
    }
    making.forEach(({ of, ties }, i) => {
      // A tape sewn down along a seam is no cord; one with ties is.
      if (["ribbon", "tape ties", "eyelets"].includes(of) || (of === "tape" && ties)) found.push(["cords-children", `making ${i + 1}`]);
      if (["buttons", "press studs", "toggles", "hooks and eyes", "hooks and bars"].includes(of)) found.push(["small-parts", `making ${i + 1}`]);
    });
    if (CORD.test(words)) found.push(["cords-children", "words"]);
    return found;
  }

  /** What only the catalogue knows: gathered plates of surviving garments, and the vocabulary's own marks on terms. */
  function ofCatalogue(plates, terms, child, { kindOf, cautionsOf }) {
    const elsewhere = { "cords-children": child, "small-parts": child, "wet-wool": false };
    const found = plates.filter(({ plate }) => kindOf(plate) === "extant").map(() => ["old-garments", "plates"]);
    for (const key of terms)
      for (const which of cautionsOf(key))
        if (which in SENTENCES && elsewhere[which] !== false) found.push([which, key]);
    return found;
  }

  /** The heading a caution has on the page of cautions. */
  function cautionName(which) {
    return WITH_COMMAS[which] || which[0].toUpperCase() + which.slice(1).replace(/-/g, " ");
  }

  function sentence(which, words) {
    if (["flammable-cloth", "nightwear", "celluloid"].includes(which) && FLAME.test(words)) return `${SENTENCES[which]} ${NEAR_FLAME}`;
    if (["long-skirts", "wet-wool"].includes(which) && WATER.test(words)) return `${SENTENCES[which]} ${NEAR_WATER}`;
    return SENTENCES[which];
  }

  /**
   * [{ id, name, sentence, where }] of a board as its file has it; `where` is a planned term, garment, words, plates, making
   * or making 3. `catalogue` is { kindOf(plate), cautionsOf(term) }: the kind of a plate's source, and what a term is marked with.
   */
  function cautionsFor(board, catalogue) {
    const { garment, wearer, plates = [], making = [] } = board, terms = termsOf(board), words = wordsOf(board), found = [];
    const child = CHILDREN.includes(wearer && wearer.who) || CHILD_GARMENTS.includes(garment), bathing = BATHING.includes(garment);
    for (const [which, keys] of Object.entries(ALWAYS)) {
      if (which === "tight-lacing" && child) continue; // a laced neck is meant: see the cords of children's garments
      for (const key of [`garment/${garment}`, ...terms]) if (keys.split(" ").includes(key)) found.push([which, where(key)]);
    }
    if (child) found.push(...ofChildren(terms, making, words));
    if (bathing || WATER.test(words)) for (const key of terms) if (WOOL.includes(key)) found.push(["wet-wool", key]);
    if (bathing && !terms.some((key) => key.startsWith("fabric/"))) found.push(["wet-wool", "garment"]);
    for (const [which, pattern] of Object.entries(WORDS)) if (pattern.test(words)) found.push([which, "words"]);
    if (catalogue) found.push(...ofCatalogue(plates, terms, child, catalogue));
    if (making.length) found.push(["hot-iron-sharp-tools", "making"]);
    const elsewhere = found.filter((each) => each[1] !== "words").map(([which]) => which), order = Object.keys(SENTENCES), seen = new Set();
    return found
      .filter(([which, place]) => (place !== "words" || !elsewhere.includes(which)) && !seen.has(`${which} ${place}`) && seen.add(`${which} ${place}`))
      .sort((a, b) => order.indexOf(a[0]) - order.indexOf(b[0]))
      .map(([id, place]) => ({ id, name: cautionName(id), sentence: sentence(id, words), where: place }));
  }

  (root.InPeriod ||= {}).cautionsFor = cautionsFor;
  if (typeof module !== "undefined") module.exports = { cautionsFor };
})(globalThis);

// An answer, in the same elements and words as home_answer.html makes it of the same question.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const { h, amount, perCent, raised, writeAddress } = InPeriod;
  const { pairsOf, questionOf, withTerm } = InPeriod.question;
  const CITED = 3,
    USUAL = 6,
    LEAST_DOCUMENTS = 3;
  const NOTHING = "No feature asked about yet: add one above, or ask about what was usual, below.";
  const FRAMED = "By decade; the mark under the line is the time asked about. Hatched: nobody looked.";

  function decadeShares(facts, question, features) {
    const { sharesIn, yearStart } = InPeriod.evidence,
      decades = [];
    for (let decade = facts.decades[0]; decade <= facts.decades[1]; decade += 10) decades.push(decade);
    const windows = decades.map((decade) => ({ earliest: yearStart(decade), latest: yearStart(decade + 10) - 1 }));
    return { decades, shares: sharesIn(facts, question, features, windows) };
  }

  const worthDrawing = ({ terms, looked }) =>
    terms > 0 && looked.reduce((sum, count) => sum + count, 0) >= LEAST_DOCUMENTS;

  function strip({ facts, grades }, question, features, label) {
    const { decades, shares } = decadeShares(facts, question, features);
    const { earliest, latest } = question.window,
      year = InPeriod.evidence.decimalYear;
    const told = decades.map((decade, i) => `${decade}s ${shares[i] === null ? "not looked at" : perCent(shares[i])}`);
    const window = [earliest === null ? null : year(earliest), latest === null ? null : year(latest + 1)];
    const drawing = InPeriod.drawStrip({ decades, shares, window, says: `${label} by decade: ${told.join(", ")}.` });
    const facet = features[0].split("/")[0];
    const link =
      features.length === 1 &&
      worthDrawing(InPeriod.evidence.standsOn(facts, question.garment, facet, { grades })) &&
      h("a", { href: `timeline/${question.garment}/${facet}.html` }, "The whole timeline");
    return h("figure", { class: "fit-strip" }, drawing, h("figcaption", {}, FRAMED, link && " ", link));
  }

  function shareFigure({ share, frequency }) {
    if (share.value === null) return null;
    const interval = `${perCent(share.low)} to ${perCent(share.high)}`;
    const text =
      `${perCent(share.value)}, ${frequency || "not seen"}: ${amount(share.showing)} of ` +
      `${amount(share.recorded)} plates by weight; 95 % interval ${interval}.`;
    return h("figure", { class: "fit-share" }, InPeriod.drawShare(share, `Share: ${text}`), h("figcaption", {}, text));
  }

  function cited(plate, id) {
    const { path, picture } = plate;
    const image =
      picture &&
      h(
        "a",
        { class: "cite-picture", href: path, tabindex: -1, "aria-hidden": "true" },
        InPeriod.thumbnail(picture),
      );
    return h(
      "li",
      { class: "cite", "data-plate": plate.key },
      image,
      h(
        "div",
        { class: "cite-body" },
        InPeriod.plateLine(plate),
        h(
          "p",
          { class: "cite-text" },
          h("span", { id }, plate.cite),
          " ",
          h("span", {
            class: "cite-copy",
            "data-copy": id,
            "data-copy-name": `citation of ${plate.label}, ${plate.when}`,
          }),
        ),
      ),
    );
  }

  function citeHead({ verdict, cite }) {
    const one = cite.length === 1;
    if (verdict === "attested" || verdict === "seen once")
      return one ? "A plate to cite" : "Plates to cite, best first";
    return one ? "The one plate that shows it" : "The nearest plates that show it";
  }

  function fit(page, asked, question, found) {
    const { facts, leads } = page;
    const features = found.term.split(" + ");
    const together = features.length > 1;
    const term = together ? null : facts.terms[facts.termIndex.get(found.term)];
    const label = together ? "All of them on one garment" : term.label;
    const more =
      "plates.html#" + writeAddress([["garment", asked.garment], ...features.map((each) => ["feature", each])]);
    return h(
      "li",
      { class: together ? "fit fit-together" : "fit", "data-term": found.term, "data-verdict": found.verdict },
      h(
        "div",
        { class: "fit-head" },
        h(
          "h3",
          { class: "fit-name" },
          together
            ? label
            : [
                h("span", { class: "fit-facet" }, facts.facets[term.facet].label),
                " ",
                h("a", { href: `term/${found.term}.html` }, label),
              ],
        ),
        h("p", { class: "fit-verdict" }, InPeriod.verdict(found.verdict, "large")),
      ),
      h("p", { class: "fit-says" }, [leads[found.verdict], ...found.reasons.slice(0, 1)].join(" ")),
      h("div", { class: "fit-figures" }, shareFigure(found), strip(page, question, features, label)),
      h(
        "details",
        { class: "fit-why" },
        h("summary", {}, "How this was reached"),
        h(
          "ul",
          {},
          ...found.reasons.slice(1).map((reason) => h("li", {}, reason)),
        ),
      ),
      found.cite.length > 0 && [
        h("h4", { class: "cites-head" }, citeHead(found)),
        h("ol", { class: "cites" }),
        h("p", { class: "cites-more" }, h("a", { href: more }, together ? "Every plate that shows them all" : "Every plate that shows it")),
      ],
    );
  }

  function usual(page, asked, question, when) {
    const { facts, exclusive } = page;
    const facets = [...new Set(asked.features.map((feature) => feature.split("/")[0]))];
    const most = facets.length ? USUAL : USUAL / 2;
    const groups = (facets.length ? facets : facts.facets.map((facet) => facet.id)).map((facet) => {
      const others = InPeriod.evidence
        .usualInWindow(facts, question, facet)
        .filter((each) => !asked.features.includes(each.term))
        .slice(0, most);
      if (!others.length) return null;
      const items = others.map((each) => {
        const ask = "#" + writeAddress(pairsOf(withTerm(asked, each.term, exclusive), page.grades));
        return h(
          "li",
          {},
          h("a", { class: "usual-name", href: `term/${each.term}.html` }, each.label),
          " ",
          h("span", { class: "leader", "aria-hidden": "true" }),
          " ",
          h("span", { class: "usual-share" }, perCent(each.share.value)),
          " ",
          h(
            "a",
            { class: "usual-ask scripted-only", href: ask },
            "ask",
            h("span", { class: "unseen" }, ` about ${each.label}`),
          ),
        );
      });
      const { label } = facts.facets.find((each) => each.id === facet);
      return h("div", { class: "usual-group" }, h("h3", {}, label), h("ol", { class: "usual-list" }, ...items));
    });
    if (!groups.some(Boolean)) return null;
    return h(
      "section",
      { class: "part part-wide usual", "aria-labelledby": "usual-head" },
      h("h2", { id: "usual-head" }, asked.features.length ? `Also usual in ${when}` : `Usual in ${when}`),
      h("div", { class: "part-body usual-groups" }, ...groups),
    );
  }

  /** A term's label; nothing for several together. */
  function labelOf(facts, term) {
    const index = facts.termIndex.get(term);
    return index === undefined ? "" : facts.terms[index].label;
  }

  /** Weighs what is asked; gives the answer as below, and the promise of what is said of the plates to cite, null where it is there. */
  function answerTo(page, asked, window) {
    const { facts, holdings } = page,
      question = questionOf(asked, window);
    const given = InPeriod.evidence.answer(facts, question);
    const found = given.together ? [...given.features, given.together] : given.features;
    const coming = holdings.need(found.flatMap(({ cite }) => cite.slice(0, CITED).map(holdings.numberOf)));
    return { coming, ...answerParts(page, asked, question, found) };
  }

  /**
   * The answer as elements, what a screen reader is told of it, and what adds the plates to cite to it, once what is
   * said of these is there.
   */
  function answerParts(page, asked, question, found) {
    const { facts, holdings } = page,
      when = InPeriod.evidence.windowInWords(question.window);
    const garment = facts.garments[facts.garmentIndex.get(asked.garment)];
    const head = `${raised(garment.label)} for ${when}`;
    const fits = h(
      "ol",
      { class: "fits" },
      ...found.map((each) => fit(page, asked, question, each)),
    );
    const section = h(
      "section",
      { class: "part part-wide", "aria-labelledby": "answer-head" },
      h("h2", { id: "answer-head", tabindex: -1 }, head),
      found.length > 1 &&
        h(
          "ul",
          { class: "glance" },
          ...found.map((each) =>
            h(
              "li",
              {},
              InPeriod.verdict(each.verdict),
              " ",
              h("span", { class: "glance-what" }, labelOf(facts, each.term) || "together"),
            ),
          ),
        ),
      h("div", { class: "part-body" }, found.length ? fits : h("p", { class: "empty" }, NOTHING)),
    );
    const said = found.map((each) => `${labelOf(facts, each.term) || "All together"}: ${each.verdict}.`);
    const cite = () =>
      found.forEach((each, index) =>
        each.cite.slice(0, CITED).forEach((key, number) =>
          fits.children[index].querySelector(".cites").append(cited(holdings.plate(holdings.numberOf(key)), `cite-${index}-${number}`))));
    /** Adds what the verdicts hang on, which stands folded away and takes as long again to work out. */
    const hang = () => {
      for (const { term, sentence } of InPeriod.evidence.sensitivity(facts, question))
        fits.children[found.findIndex((each) => each.term === term)].querySelector(".fit-why ul").append(h("li", { class: "fit-hangs" }, sentence));
    };
    return {
      parts: [section, usual(page, asked, question, when)].filter(Boolean),
      said: [`${head}.`, ...said].join(" "),
      cite,
      hang,
    };
  }

  InPeriod.answerTo = answerTo;
  if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);

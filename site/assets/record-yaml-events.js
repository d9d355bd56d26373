// The events of a YAML text: what its tokens say, one after another, as libyaml's parser has it.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod ||= {});
  const { tokens, Stopped } = InPeriod.recordYaml || require("./record-yaml-scan.js");

  /**
   * Tell `hear` every event of a text in order, each before the next is looked for: document, table, items, scalar,
   * alias and end; beside them each dash of a list and, as soon as it is met, each comment. Throws `Stopped`.
   */
  function events(text, hear) {
    const { peek, take } = tokens(text, hear);
    let handles;

    const next = (...kinds) => kinds.includes(peek().is);
    const empty = (mark) => hear({ is: "scalar", text: "", style: "", start: mark, end: mark });

    function stop(problem, context, since) {
      throw new Stopped(problem, peek().start, context, since);
    }

    /** A node, or an empty value where one of the kinds comes instead. */
    function nodeUnless(kinds, mark, block, indentless) {
      if (next(...kinds)) empty(mark || peek().start);
      else node(block, indentless);
    }

    function stream() {
      for (let first = true; ; first = false) {
        if (!first) while (next("...")) take();
        if (next("end")) return;
        const { start } = peek();
        if (!first || next("%YAML", "%TAG", "---")) {
          directives();
          if (!next("---")) stop("did not find expected <document start>");
          hear({ is: "document", start });
          take();
          nodeUnless(["%YAML", "%TAG", "---", "...", "end"], null, true);
        } else {
          handles = new Set(["!", "!!"]);
          hear({ is: "document", start });
          node(true);
        }
        if (next("...")) take();
      }
    }

    function directives() {
      handles = new Set();
      for (let version = false; next("%YAML", "%TAG"); take()) {
        const { is, major, minor, handle } = peek();
        if (is === "%YAML") {
          if (version) stop("found duplicate %YAML directive");
          if (major !== 1 || (minor !== 1 && minor !== 2)) stop("found incompatible YAML document");
          version = true;
        } else {
          if (handles.has(handle)) stop("found duplicate %TAG directive");
          handles.add(handle);
        }
      }
      handles.add("!").add("!!");
    }

    /** One value with all that is in it; `block` where indentation counts, `indentless` where hyphens need not be indented. */
    function node(block, indentless) {
      if (next("alias")) {
        const { name, start, end } = take();
        hear({ is: "alias", anchor: name, start, end });
        return;
      }
      const event = { start: peek().start, end: peek().start, anchor: null, tagged: false };
      let tag = null;
      for (let each = 0; each < 2; each += 1) {
        if (event.anchor === null && next("anchor")) {
          const token = take();
          Object.assign(event, { anchor: token.name, end: token.end });
        } else if (!tag && next("tag")) {
          tag = take();
          event.end = tag.end;
        }
      }
      if (tag) {
        if (tag.handle && !handles.has(tag.handle)) {
          throw new Stopped("found undefined tag handle", tag.start, "while parsing a node", event.start);
        }
        event.tagged = tag.handle !== "" || tag.suffix !== "!";
      }
      const token = peek();
      if (indentless && token.is === "-") list(event, "items", indentlessItems);
      else if (token.is === "scalar") {
        hear(Object.assign(event, { is: "scalar", text: token.text, style: token.style, end: token.end }));
        take();
      } else if (token.is === "[") list(event, "items", flowItems, true);
      else if (token.is === "{") list(event, "table", flowTable, true);
      else if (block && token.is === "block [") list(event, "items", blockItems);
      else if (block && token.is === "block {") list(event, "table", blockTable);
      else if (event.anchor !== null || tag) hear(Object.assign(event, { is: "scalar", text: "", style: "" }));
      else stop("did not find expected node content", `while parsing a ${block ? "block" : "flow"} node`, event.start);
    }

    function list(event, is, inside, flow = false) {
      hear(Object.assign(event, { is, flow }));
      inside();
    }

    const ended = ({ start, end }) => hear({ is: "end", start, end });

    /** The entries of a list with hyphens, up to what is none. */
    function hyphens(none) {
      while (next("-")) {
        const { start, end } = take();
        hear({ is: "dash", start });
        nodeUnless(none, end, true);
      }
    }

    function indentlessItems() {
      hyphens(["-", "?", ":", "block end"]);
      const { start } = peek();
      ended({ start, end: start });
    }

    function blockItems() {
      const { start } = take();
      hyphens(["-", "block end"]);
      if (!next("block end")) stop("did not find expected '-' indicator", "while parsing a block collection", start);
      ended(take());
    }

    function blockTable() {
      const { start } = take(), none = ["?", ":", "block end"];
      while (next("?")) {
        nodeUnless(none, take().end, true, true);
        if (next(":")) nodeUnless(none, take().end, true, true);
        else empty(peek().start);
      }
      if (!next("block end")) stop("did not find expected key", "while parsing a block mapping", start);
      ended(take());
    }

    function flowItems() {
      const { start } = take(), kinds = [",", "]"];
      for (let first = true; !next("]"); first = false) {
        if (!first) {
          if (!next(",")) stop("did not find expected ',' or ']'", "while parsing a flow sequence", start);
          take();
        }
        if (next("?")) onePair(kinds);
        else if (!next("]")) node();
        else break;
      }
      ended(take());
    }

    /** `[name: value]`: an entry of a list that is a table of one. */
    function onePair(kinds) {
      const key = peek();
      hear({ is: "table", flow: true, start: key.start, end: key.end, anchor: null, tagged: false });
      take();
      // As libyaml has it: a colon or comma right here is passed over.
      if (next(":", ",")) empty(take().end);
      else nodeUnless(["]"]);
      if (next(":")) {
        take();
        nodeUnless(kinds);
      } else empty(peek().start);
      const { start } = peek();
      ended({ start, end: start });
    }

    function flowTable() {
      const { start } = take(), kinds = [",", "}"];
      for (let first = true; !next("}"); first = false) {
        if (!first) {
          if (!next(",")) stop("did not find expected ',' or '}'", "while parsing a flow mapping", start);
          take();
        }
        if (next("?")) {
          take();
          nodeUnless([":", ...kinds]);
          if (next(":")) {
            take();
            nodeUnless(kinds);
          } else empty(peek().start);
        } else if (!next("}")) {
          node();
          empty(peek().start);
        } else break;
      }
      ended(take());
    }

    stream();
  }

  InPeriod.recordYaml.events = events;
  if (typeof module !== "undefined") module.exports = InPeriod.recordYaml;
})(globalThis);

// Source files as YAML, read and written: the door to record-yaml-scan.js, -read.js and -write.js.
(function (root) {
  "use strict";
  const InPeriod = (root.InPeriod = root.InPeriod || {});
  if (typeof module !== "undefined") for (const part of ["scan", "read", "write"]) require(`./record-yaml-${part}.js`);

  if (typeof module !== "undefined") module.exports = InPeriod.recordYaml;
})(typeof window === "undefined" ? globalThis : window);

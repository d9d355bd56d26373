"""The scripts' short forms in ``site/shipped/``, made anew from ``site/assets/`` by terser.

    python tests/shipping.py          write what has changed, take away what has no script any more

Needs Node.js and the packages of ``tests/package.json`` (``sh tests/run.sh`` installs both).
"""

from __future__ import annotations

import json
import subprocess
import sys
from pathlib import Path

from conftest import CHECKOUT, find_node
from inperiod.publishing.scripts import MADE_FROM, SHORT, fingerprint

TERSER = CHECKOUT / "tests/node_modules/terser"
SCRIPTS = CHECKOUT / "site/assets"
SHIPPED = CHECKOUT / "site" / SHORT
_PROGRAM = """
  const [terser, ...files] = process.argv.slice(1);
  const { minify } = require(terser), { readFileSync } = require("fs");
  const how = { passes: 3, hoist_funs: true, inline: 1, unsafe_arrows: true, pure_getters: true };
  const compress = { ...how, ecma: 2020, global_defs: { module: undefined } };
  const options = { compress, mangle: true, ecma: 2020, format: { ascii_only: false } };
  const short = (file) => minify(readFileSync(file, "utf8").replace(/\\r\\n/g, "\\n"), options);
  const told = (all) => console.log(JSON.stringify(all.map((each) => each.code + "\\n")));
  Promise.all(files.map(short)).then(told);
"""


def short_forms(node: str, scripts: list[Path]) -> dict[str, str]:
    """The name of each script with its short form, as terser makes it."""
    command = [node, "-e", _PROGRAM, str(TERSER), *map(str, scripts)]
    told = subprocess.run(command, capture_output=True, text=True, check=True)
    return dict(zip([each.name for each in scripts], json.loads(told.stdout), strict=True))


def expected_files(node: str) -> dict[str, str]:
    """All that belongs into ``site/shipped/``, by name."""
    scripts = sorted(SCRIPTS.glob("*.js"))
    made_from = {each.name: fingerprint(each) for each in scripts}
    return {**short_forms(node, scripts), MADE_FROM: json.dumps(made_from, indent=1) + "\n"}


def ship() -> int:
    """Bring the folder up to date; the exit status."""
    node = find_node()
    if node is None or not TERSER.is_dir():
        print("Node.js and tests/node_modules are needed: run sh tests/run.sh once", file=sys.stderr)
        return 1
    SHIPPED.mkdir(exist_ok=True)
    files = expected_files(node)
    for stale in sorted({each.name for each in SHIPPED.iterdir()} - set(files)):
        (SHIPPED / stale).unlink()
    for name, text in files.items():
        (SHIPPED / name).write_text(text, encoding="utf-8", newline="\n")
    return 0


if __name__ == "__main__":
    sys.exit(ship())

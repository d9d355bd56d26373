"""The script that draws flats in the browser, made from the Python that draws them.

    python tests/flat_script.py       write site/assets/flat-drawing.js anew

So the drawing exists once, in ``generator/inperiod/drawing``. ``tests/drawing`` holds the script to it, and
the flats of the two sides to one another. Afterwards ``python tests/shipping.py`` makes the short form.
"""

from __future__ import annotations

import ast
import sys
from collections.abc import Iterable
from pathlib import Path

from conftest import CHECKOUT
from python_in_script import Script
from python_read import Known, Refused, indented, is_type

SCRIPT = CHECKOUT / "site/assets/flat-drawing.js"
ROOM = CHECKOUT / "generator"
DOORS = (
    ("inperiod.drawing.flats.flat", "draw_plan"),
    ("inperiod.drawing.flats.periods", "NEUTRAL_YEAR"),
)
"""What the browser calls; all that it does not need is left out."""
GIVEN = "broader_garments"
"""What it asks of the vocabulary, which is handed in."""
HEAD = """\
// Made by tests/flat_script.py from generator/inperiod/drawing, where every word of it is explained.
// Change it there. What Python's own words mean here is in flat-words.js.
(function (root) {
"use strict";
const InPeriod = (root.InPeriod = root.InPeriod || {});
const { %s } = InPeriod.flatWords;
"""
FOOT = """\
InPeriod.drawPlan = flat.draw_plan;
InPeriod.neutralYear = periods.NEUTRAL_YEAR;
if (typeof module !== "undefined") module.exports = InPeriod;
})(globalThis);
"""
WORDS = (
    "Markup Named bisect_left bisect_right bound enumerate escape get has item maxOf minOf mod named "
    "pairwise partition radians range replace reversed round rstrip same setdefault sorted truth zip"
)

Place = tuple[str, str]
"""A module and a name in it."""


class Module:
    """One module: its statements by the names they give, and what it takes from others."""

    def __init__(self, name: str) -> None:
        self.name, self.short = name, name.rpartition(".")[2]
        self.file = ROOM / (name.replace(".", "/") + ".py")
        self.tree = ast.parse(self.file.read_text(encoding="utf-8"))
        self.own: dict[str, ast.stmt] = {}
        self.taken: dict[str, Place] = {}
        for node in self.tree.body:
            if isinstance(node, ast.FunctionDef | ast.ClassDef):
                self.own[node.name] = node
            elif isinstance(node, ast.Assign) and not is_type(node.value):
                self.own |= {
                    each.id: node for each in ast.walk(node) if isinstance(each, ast.Name) and stored(each)
                }
            elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
                self.own[node.target.id] = node
            elif isinstance(node, ast.ImportFrom) and (node.module or "").startswith("inperiod.drawing"):
                self.taken |= {
                    each.asname or each.name: (node.module or "", each.name) for each in node.names
                }


def stored(name: ast.Name) -> bool:
    """Whether the name is being given a value."""
    return isinstance(name.ctx, ast.Store)


class Modules:
    """The modules that are needed, read as they are asked for."""

    def __init__(self) -> None:
        self.read: dict[str, Module] = {}

    def named(self, name: str) -> Module:
        if name not in self.read:
            self.read[name] = Module(name)
        return self.read[name]

    def is_module(self, place: Place) -> bool:
        return (ROOM / place[0].replace(".", "/") / (place[1] + ".py")).is_file()

    def home(self, place: Place) -> Place:
        """Where a name is defined that may have been handed on."""
        module = self.named(place[0])
        return self.home(module.taken[place[1]]) if place[1] in module.taken else place

    def needed(self, doors: Iterable[Place]) -> list[Place]:
        """All that definitions need, each after what it is made of itself."""
        found: dict[Place, None] = {}
        asked: set[Place] = set()

        def visit(place: Place) -> None:
            if place in asked:
                return
            asked.add(place)
            for each in self.mentions(place):
                visit(each)
            found[place] = None

        for door in doors:
            visit(door)
        return list(found)

    def mentions(self, place: Place) -> list[Place]:
        """The definitions of modules that one names."""
        module = self.named(place[0])
        node = module.own[place[1]]
        found: list[Place] = []
        parts: list[ast.AST] = [node]
        while parts:
            part = parts.pop()
            if isinstance(part, ast.Attribute) and isinstance(part.value, ast.Name):
                other = module.taken.get(part.value.id)
                if other and self.is_module(other):
                    found.append(self.home((".".join(other), part.attr)))
                    continue
            if isinstance(part, ast.Name) and part.id in module.own and part.id != place[1]:
                found.append((place[0], part.id))
            elif (
                isinstance(part, ast.Name)
                and part.id in module.taken
                and not self.is_module(module.taken[part.id])
            ):
                found.append(self.home(module.taken[part.id]))
            parts += [each for each in ast.iter_child_nodes(part) if not _is_note(part, each)]
        return found


def _is_note(parent: ast.AST, child: ast.AST) -> bool:
    """Whether it says only of what type something is."""
    kinds = ("annotation", "returns")
    return any(getattr(parent, each, None) is child for each in kinds) or isinstance(child, ast.expr_context)


def make() -> str:
    """The text of the script."""
    modules = Modules()
    places = modules.needed(DOORS)
    known = Known(classes={"Markup"}, methods={GIVEN}, functions={GIVEN: []})
    for place in places:
        known.learn(ast.Module([modules.named(place[0]).own[place[1]]], []))
    order: dict[str, list[str]] = {}
    for module, name in places:
        order.setdefault(module, []).append(name)
    wanted = {each for place in places for each in modules.mentions(place) if each[0] != place[0]}
    wanted |= set(DOORS)
    parts = [HEAD % ", ".join(WORDS.split())]
    parts += [_module(modules, known, name, set(names), wanted) for name, names in _sorted(modules, order)]
    return indented("\n".join(parts) + FOOT)


def _sorted(modules: Modules, order: dict[str, list[str]]) -> list[tuple[str, list[str]]]:
    """The modules, each after those it takes from."""
    found: dict[str, list[str]] = {}

    def visit(name: str) -> None:
        if name in found or name not in order:
            return
        for own in order[name]:
            for other, _ in modules.mentions((name, own)):
                if other != name:
                    visit(other)
        found[name] = order[name]

    for name in order:
        visit(name)
    return list(found.items())


def _module(modules: Modules, known: Known, name: str, names: set[str], wanted: set[Place]) -> str:
    """One module as a closed function that gives what others take."""
    module = modules.named(name)
    others = {short for short, place in module.taken.items() if modules.is_module(place)}
    script = Script(str(module.file.relative_to(CHECKOUT)), known, others)
    takes: dict[str, list[str]] = {}
    for own in sorted(names):
        for other, each in modules.mentions((name, own)):
            if other != name and each in module.taken:
                takes.setdefault(other.rpartition(".")[2], []).append(each)
    lines = [
        f"const {{ {', '.join(sorted(set(each)))} }} = {other};" for other, each in sorted(takes.items())
    ]
    done: set[int] = set()
    for own, node in module.own.items():
        if own in names and id(node) not in done:
            done.add(id(node))
            lines.append(script.definition(node))
    gives = ", ".join(sorted({each for other, each in wanted if other == name}))
    return f"const {module.short} = (() => {{\n" + "\n".join(lines) + f"\nreturn {{ {gives} }};\n}})();\n"


def write(file: Path = SCRIPT) -> int:
    """Bring the script up to date; the exit status."""
    try:
        text = make()
    except Refused as reason:
        print(reason, file=sys.stderr)
        return 1
    file.write_text(text, encoding="utf-8", newline="\n")
    return 0


if __name__ == "__main__":
    sys.exit(write())

"""Boards' making lists, by chance but always the same ones, with the sheet the Python side gives for each."""

from __future__ import annotations

import json
import random
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from typing import Any

from inperiod.dating import read_edtf
from inperiod.making import KINDS, as_json, sheet
from inperiod.making.cautions import ALWAYS, BATHING, CHILD_GARMENTS, CORDS, SMALL, WOOL
from inperiod.records.model import Board, Dated, Departure, Feature, Mark, Wearer

SEED = 1926
PER_KIND = 90
FRACTIONS = ("1/8", "1/4", "3/8", "1/2", "5/8", "3/4", "7/8", "1/16", "1/3")
JUNK: tuple[Any, ...] = (
    *("", "0", 0, 40, 1.5, -3, 1e-9, 1e9, 123456789, True, False, None, [], {}, ["3 in"], {"a": "3 in"}),
    *(
        "about a yard",
        "3 ells",
        "1/0 in",
        "34-36 in",
        "1,000 in",
        "2,5 cm",
        "-3 in",
        "1001 yd",
        "5 %",
        "60 %",
    ),
    *("½ in", "5′ 2″", '12 3/8"', "1 yd 4 1/2 in", "1 yd, 4 in", "  3\tin ", "2.54 CM", "0.9144 m", "any"),
    *(
        "“curly” & <b>tags</b>",
        "ein sehr langer Name " * 20,
        "🧵 thread",
        "ﬁne",
        "İ",
        "ß",
        "no-break\u00a0space",
    ),
)


class Chance:
    """What a board might say, by chance: mostly sound measures, sometimes the limits of sense."""

    def __init__(self, seed: int) -> None:
        self.random = random.Random(seed)
        self.metric = False

    def one(self, *values: Any) -> Any:
        return self.random.choice(values)

    def often(self, share: float = 0.5) -> bool:
        return self.random.random() < share

    def length(self, low: float, high: float) -> str:
        """A length between two numbers of inches, written in one of the ways people write it."""
        inches = self.random.uniform(low, high)
        if self.metric is not self.often(0.05):
            return self.one(f"{inches * 2.54:.1f} cm", f"{inches * 25.4:.0f} mm", f"{inches * 0.0254:.3f} m")
        whole = int(inches)
        if inches > 40 and self.often(0.3):
            return f"{whole // 36} yd {whole % 36} {self.one(*FRACTIONS)} in"
        if self.often(0.6):
            return f"{whole} {self.one(*FRACTIONS)} in" if whole else f"{self.one(*FRACTIONS)} in"
        return self.one(
            f"{max(1, whole)} in", f"{inches:.3f} in", f'{max(1, whole)}½"', f"{max(1, whole)}-3/4 inches"
        )

    def lengths(self, low: float, high: float) -> Any:
        several = [self.length(low, high) for _ in range(self.random.randint(1, 4))]
        several += several[-1:] * self.one(0, 0, 1, 2)
        named = {"neck": several[0], "armholes": several, "hem at back": self.length(low, high)}
        return self.one(several[0], several[0], several, named)

    def number(self, low: int, high: int) -> Any:
        count = self.random.randint(low, high)
        return self.one(count, count, str(count), float(count))

    def maybe(self, fields: dict[str, Any], share: float = 0.4) -> dict[str, Any]:
        return {name: value for name, value in fields.items() if self.often(share)}


def frill(by: Chance) -> dict[str, Any]:
    given = {"edge": by.lengths(2, 90)}
    given |= by.maybe(
        {"fullness": by.one(1, 1.5, "2", "2 1/2", 3, "1⅔"), "turning": by.length(0.1, 1), "open": True}
    )
    if by.often():
        given |= {"depth": by.length(0.5, 9), "hem": by.length(0.1, 1)}
        given |= by.maybe({"cloth_width": by.length(18, 60)}, 0.7)
    return given


def tucks(by: Chance) -> dict[str, Any]:
    style = by.one("pin", "wide", "blind", "growth")
    given = {"style": style, "width": by.length(0.06, 1)}
    given |= by.one({"gap": by.one("0", 0, by.length(0.1, 1))}, {"fold_to_fold": by.length(0.2, 1.5)})
    if style in ("blind", "growth") and by.often():
        given = {"style": style, "width": given["width"]}
    number, finished, flat = (
        {"number": by.number(1, 24)},
        {"finished": by.length(4, 60)},
        {"flat": by.length(4, 60)},
    )
    given |= by.one(number, finished, flat, number | finished, number | flat)
    return given | by.maybe(
        {"margin": by.length(0.2, 2), "turning": by.length(0.2, 1), "panels": by.number(1, 4)}, 0.3
    )


def pleats(by: Chance) -> dict[str, Any]:
    style = by.one("knife", "box", "inverted", "gathers", "shirring", "cartridge")
    given = {"style": style, "finished": by.length(5, 60)} | by.maybe({"turning": by.length(0.2, 1)})
    if style in ("gathers", "shirring", "cartridge"):
        return given | by.maybe({"fullness": by.one(1.5, 2, "2 1/4", 4)})
    given |= by.one(
        {"pleat": by.length(0.5, 3)}, {"number": by.number(1, 20)}, {"number": 4, "pleat": by.length(0.5, 3)}
    )
    return given | by.maybe({"depth": by.length(0.3, 3)})


def bias(by: Chance) -> dict[str, Any]:
    given = {"width": by.length(0.5, 4), "method": by.one("pieced", "continuous")}
    given |= by.one({"length": by.lengths(3, 200)}, {"remnant": [by.length(8, 60), by.length(8, 60)]})
    if by.often(0.2):
        given |= {"remnant": [by.length(8, 60), by.length(8, 60)]}
    extra = {"cloth_width": by.length(10, 60), "seam": by.length(0.1, 0.5), "shortest": by.length(0.1, 10)}
    return given | by.maybe({**extra, "turning": by.length(0.1, 1)}, 0.3)


def insertion(by: Chance) -> dict[str, Any]:
    of = by.one("insertion", "beading", "ribbon", "braid", "tape", "piping", "lace")
    given = {"of": of, "along": by.lengths(3, 90)}
    given |= by.maybe({"take_up": by.one("5 %", 0.05, "2.5%", "1/20"), "ties": by.length(5, 40)}, 0.3)
    given |= by.maybe({"corners": by.number(1, 6), "width": by.length(0.2, 2), "turning": by.length(0.1, 1)})
    return given


def fastenings(by: Chance) -> dict[str, Any]:
    given = {"of": by.one("buttons", "hooks and eyes", "hooks and bars", "press studs", "eyelets", "toggles")}
    given |= {"opening": by.length(3, 40)} | by.one(
        {"number": by.number(1, 20)}, {"spacing": by.length(0.5, 4)}
    )
    ends = {"top": by.one("0", by.length(0.2, 2)), "bottom": by.length(0.2, 2)}
    return given | by.maybe({**ends, "sets": by.number(1, 4), "spare": by.number(0, 3)})


def stitching(by: Chance) -> dict[str, Any]:
    given = {"along": by.lengths(3, 200), "factor": by.one(1, 2.5, "3 1/2", 4, 7)}
    extra = {"stitch": by.one("feather stitch", "ähre", "whipping"), "strands": by.number(1, 6)}
    return given | by.maybe({**extra, "skein": by.one("8 m", by.length(100, 400))}, 0.6)


def cloth(by: Chance) -> dict[str, Any]:
    doubled = by.often(0.35)
    given: dict[str, Any] = {
        "width": by.one("18 in", "27 in", "36 in", "54 in", "45 in", "60 in", "115 cm", "150 cm")
    }
    given |= {"doubled": True} if doubled else {}
    pieces = []
    for number in range(by.random.randint(1, 6)):
        piece = {"width": by.length(3, 16), "length": by.length(4, 48)} | by.maybe(
            {"name": f"piece № {number}"}, 0.8
        )
        piece |= by.maybe(
            {"number": by.number(1, 4), "turning": by.length(0.2, 1), "grain": by.one("crosswise", "any")}
        )
        pieces.append(piece | by.maybe({"fold": True}, 0.4 if doubled else 0.02))
    given |= {"pieces": pieces}
    given |= by.maybe({"one_way": by.often(), "selvedge": by.length(0.1, 0.6), "warp": by.one("4 %", 0.03)})
    given |= by.maybe(
        {"weft": by.one("2%", 0.05), "sold_by": by.one("1/4 yd", "10 cm", "1 yd", "50 cm")}, 0.3
    )
    return given | by.maybe(
        {"price": by.one(12.5, "1 1/2", 7, "0.99"), "currency": by.one("GBP", "EUR")}, 0.3
    )


def even_cloth(by: Chance) -> dict[str, Any]:
    """Whole sizes that may turn: places are often equally good, and the rules for ties decide."""
    sizes = [(by.random.randint(1, 8), by.random.randint(1, 8)) for _ in range(by.random.randint(3, 11))]
    pieces = [{"width": f"{across} in", "length": f"{along} in", "grain": "any"} for across, along in sizes]
    return {"width": "10 in", "pieces": pieces}


MAKERS: dict[str, Callable[[Chance], dict[str, Any]]] = {
    **{"frill": frill, "tucks": tucks, "pleats": pleats, "bias": bias, "insertion": insertion},
    **{"fastenings": fastenings, "stitching": stitching, "cloth": cloth},
}


def spoiled(by: Chance, given: dict[str, Any]) -> dict[str, Any]:
    """The same with one field written wrong, left out, misspelt, or nonsense."""
    name = by.one(*given)
    found = dict(given)
    match by.random.randrange(4):
        case 0:
            del found[name]
        case 1:
            found[f"{name}_"] = found.pop(name)
        case _:
            found[name] = by.one(*JUNK)
    return found


def boards() -> list[list[dict[str, Any]]]:
    """Lists of one line for every kind, lists with a line spoiled, and whole boards of several lines."""
    by, found = Chance(SEED), []
    for kind, maker in MAKERS.items():
        for _ in range(PER_KIND):
            by.metric = by.often(0.4)
            given = {"kind": kind, **maker(by)}
            given |= by.maybe(
                {"what": "Vorm & Saum", "at": "neck", "note": "By hand.", "buy": "lace, 5/8 in"}, 0.15
            )
            found.append([given])
            if by.often(0.4):
                found.append(
                    [{"kind": kind, **spoiled(by, {key: given[key] for key in given if key != "kind"})}]
                )
    found += [[{"kind": "cloth", **even_cloth(by)}] for _ in range(PER_KIND)]
    for _ in range(40):
        several = [by.one(*found[: len(MAKERS) * PER_KIND])[0] for _ in range(by.random.randint(2, 7))]
        found.append(several)
    found += [[{"kind": junk}] for junk in JUNK]
    found += [[], [{}], [{"kind": "frill", "edge": junk} for junk in JUNK]]
    return found


WORKS = (
    "tape",
    "ribbon",
    "tape ties",
    "eyelets",
    "press studs",
    "toggles",
    "hooks and eyes",
    "hooks and bars",
)
WORDS = (
    *(
        "For the river, by the boathouse.",
        "There will be candles.",
        "Draw it up on a cord.",
        "A celluloid buckle.",
    ),
    *(
        "With hatpins.",
        "Over a corset.",
        "Copied from an extant frock.",
        "Seaside stoves.",
        "Scordatura. Oceanic.",
    ),
)


def caution_boards() -> list[tuple[dict[str, Any], Board]]:
    """Boards as their files have them, and as they are read: all tables' terms, wearers and words, mixed."""
    by, mark = random.Random(SEED), Mark("boards/some.yaml")
    terms = sorted({*" ".join(ALWAYS.values()).split(), *CORDS, *SMALL, *WOOL, "fabric/silk", "trim/frill"})
    garments = [term.split("/")[1] for term in terms if term.startswith("garment/")]
    garments += [*CHILD_GARMENTS, *BATHING, "dress", "blouse"]
    features = [term for term in terms if not term.startswith("garment/")]
    found = []
    for _ in range(500):
        planned = by.choices(features, k=by.randint(0, 4))
        written = {
            "title": "A board",
            "target": "1926",
            "garment": by.choice(garments),
            "wearer": {"who": by.choice(("woman", "man", "girl", "boy", "infant", "any"))},
            "features": [by.choice((term, {"term": term})) for term in planned]
            + ["trim/none"] * by.randint(0, 1),
            "notes": by.choice((*WORDS, "Plain.", "Plain.")),
            "questions": by.choice(([], [by.choice(WORDS)])),
            "departures": by.choice(([], [{"original": by.choice(WORDS), "stand_in": "x", "reason": "y"}])),
            "making": by.choice(
                ([], [{"of": "tape", "ties": "3 in"}, {"of": "buttons"}], [{"of": by.choice(WORKS)}])
            ),
        }
        board = Board(
            "some",
            written["title"],
            Dated("1926", read_edtf("1926"), mark),
            written["garment"],
            mark,
            wearer=Wearer(**written["wearer"]),
            features=tuple(Feature(term.split("/")[0], term, mark) for term in planned),
            notes=written["notes"],
            questions=tuple(written["questions"]),
            departures=tuple(Departure(**each, mark=mark) for each in written["departures"]),
            making=tuple(written["making"]),
        )
        found.append((written, board))
    return found


def write_vectors(file: Path) -> Counter[str]:
    """The file of cases; counts of the lines of each kind, the cases and the problems in it."""
    counts: Counter[str] = Counter()
    cases = []
    for making in boards():
        made = sheet(making)
        counts["cases"] += 1
        counts["problems"] += len(made.problems)
        counts.update(line.kind for line in made.lines)
        cases.append({"making": making, "sheet": as_json(made)})
    assert set(KINDS) == set(MAKERS)
    file.write_text(json.dumps(cases, allow_nan=False), encoding="utf-8")
    return counts

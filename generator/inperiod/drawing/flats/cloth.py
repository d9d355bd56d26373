"""The garment's cloth as a light texture over the page's own ground: by colour, pattern and fabric."""

from __future__ import annotations

from functools import lru_cache

from markupsafe import Markup

from inperiod.drawing.flats.record import Record, term_id
from inperiod.drawing.marks import tag

FLOWER = "M14 22c6-12 16-4 8 3c12-3 12 10 1 8c2 12-12 10-8 0c-11 3-11-9-1-11"

# Path data in a square of so many millimetres; and a tone over it all.
PATTERNS: dict[str, tuple[int, str, float]] = {
    "striped": (42, "M10 0v42", 0.0),
    "tennis-stripe": (60, "M20 0v60M27 0v60", 0.0),
    "checked": (56, "M0 16h56M0 24h56M16 0v56M24 0v56", 0.0),
    "spotted": (64, "M16 16l.1 0M48 48l.1 0", 0.0),
    "floral-print": (
        88,
        FLOWER + "M60 66c5-9 13-3 7 3c9-3 9 8 1 7c2 9-10 8-7 0c-9 2-9-8-1-10M58 16l8-8M20 74l-8 8",
        0.0,
    ),
    "border-print": (88, FLOWER, 0.0),
    "jacquard-woven": (60, "M30 12l14 18l-14 18l-14-18z", 0.0),
    "navy": (26, "M0 26L26 0M-5 5L5 -5M21 31L31 21", 0.10),
    "black": (20, "M0 20L20 0M-5 5L5 -5M15 25L25 15", 0.20),
    "bright": (40, "M0 40L40 0", 0.05),
    "mauve-aniline": (40, "M0 40L40 0", 0.07),
    "synthetic-indigo-blue": (30, "M0 30L30 0", 0.09),
    "khaki": (44, "M0 44L44 0", 0.05),
    "pastel": (0, "", 0.035),
    "natural": (0, "", 0.03),
}

FABRICS: dict[str, tuple[int, str, float]] = {
    "gingham": (44, "M0 11h44M11 0v44", 0.0),
    "seersucker": (30, "M8 0c4 8-4 12 0 30", 0.0),
    "tweed": (36, "M4 8l6 6M22 4l6 6M14 24l6 6M30 20l4 4", 0.04),
    "towelling": (34, "M6 6c4 0 4 5 0 5M22 20c4 0 4 5 0 5", 0.0),
    "pique": (20, "M0 10h20", 0.0),
    "velvet": (18, "M6 0v18", 0.14),
    "velveteen": (18, "M6 0v18", 0.1),
    "lace-cloth": (36, "M18 8a10 10 0 1 0 .1 0", 0.0),
    "worsted-knit": (22, "M4 4l5 8l5-8", 0.0),
    "cotton-knit": (22, "M4 4l5 8l5-8", 0.0),
    "elastic-knit": (22, "M4 4l5 8l5-8", 0.0),
    "wool-jersey": (28, "M5 6l4 7l4-7", 0.0),
    "smocked": (22, "M4 4l5 8l5-8", 0.0),
}
PLAIN = ("white", "plain")


def cloth_of(record: Record) -> tuple[str | None, Markup]:
    """The name of the pattern, and its definition; None and nothing where the cloth is left white. Two tones
    of a garment are drawn on its collar and cuffs."""
    pattern: tuple[int, str, float] | None = None
    tone = 0.0
    names: list[str] = []
    for feature in record.all("colour"):
        name = term_id(feature)
        if name in PLAIN:
            record.drew(feature)
        elif name in PATTERNS and feature.at is None:
            size, lines, dark = PATTERNS[name]
            record.drew(feature)
            names.append(name)
            tone = max(tone, dark)
            if size and (pattern is None or name not in ("navy", "black", "bright")):
                pattern = (size, lines, dark)
    for feature in record.all("fabric"):
        name = term_id(feature)
        if name in FABRICS and feature.at is None and pattern is None:
            size, lines, dark = FABRICS[name]
            pattern, tone = (size, lines, dark), max(tone, dark)
            names.append(name)
            record.drew(feature)
    if pattern is None and tone == 0.0:
        return None, Markup("")
    size, lines, _ = pattern or (40, "", 0.0)
    return "cloth-" + "-".join(names), _definition("cloth-" + "-".join(names), size, lines, tone)


@lru_cache(maxsize=256)
def _definition(name: str, size: int, lines: str, tone: float) -> Markup:
    square = {"width": size, "height": size}
    parts = [tag("rect", {**square, "class": "ground", "fill": "Canvas", "stroke": "none"})]
    if tone:
        parts.append(tag("rect", {**square, "fill": "currentColor", "fill-opacity": tone, "stroke": "none"}))
    if lines:
        wide = 9 if "l.1 0" in lines else 2.2
        parts.append(
            tag(
                "path",
                {
                    "d": lines,
                    "fill": "none",
                    "stroke": "currentColor",
                    "stroke-width": wide,
                    "stroke-linecap": "round",
                    "stroke-opacity": 0.5,
                },
            )
        )
    return tag(
        "pattern",
        {"id": name, **square, "patternUnits": "userSpaceOnUse"},
        *parts,
    )

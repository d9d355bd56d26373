"""How each type of garment is put together, before its plate says more. Common practice, no source."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace


@dataclass(frozen=True, slots=True)
class Build:
    """``body`` is where the part on the trunk ends: ``skirt`` (by the skirt length), a level, or empty for
    none; ``legs`` where legs end: a level, or empty; ``skirt`` True for a skirt alone, from the waist.

    ``open`` garments part down the front; ``shape`` is a silhouette that goes before the period's; ``ease``
    multiplies breadths. ``neck``, ``sleeve``, ``waist``, ``length``, ``cut`` are what is taken where nothing
    is recorded, empty for the period's own. ``head`` is a hat or cap, which has neither trunk nor legs.
    ``under`` True for a skirt of its own below the part on the trunk.
    """

    body: str = "skirt"
    legs: str = ""
    skirt: bool = False
    open: bool = False
    shape: str = ""
    ease: float = 1.0
    neck: str = ""
    collar: str = "none"
    sleeve: str = ""
    waist: str = ""
    length: str = ""
    cut: str = ""
    frame: str = "whole"
    head: str = ""
    under: bool = False


DRESS = Build()
SKIRT = Build(body="", skirt=True, frame="lower")
LOOSE = Build(shape="loose", waist="no-waist", cut="gathered")
TOP = Build(body="high-hip", frame="upper", cut="straight")
SUIT = Build(
    body="crotch",
    legs="trunk",
    shape="tubular",
    ease=0.97,
    neck="scoop",
    sleeve="sleeveless",
    waist="no-waist",
    frame="suit",
    cut="straight",
)

GARMENTS: Mapping[str, Build] = {
    "dress": DRESS,
    "evening-dress": Build(neck="scoop", sleeve="short"),
    "tea-gown": Build(shape="loose", waist="no-waist", length="ground"),
    "maternity-dress": Build(ease=1.08),
    "blouse": TOP,
    "jumper-blouse": replace(TOP, body="hip", shape="tubular", waist="no-waist", sleeve="short", neck="v"),
    "middy-blouse": replace(
        TOP,
        body="hip",
        shape="tubular",
        ease=1.1,
        waist="no-waist",
        collar="sailor",
        sleeve="set-in-long",
        neck="v",
    ),
    "shirt": replace(
        TOP,
        body="crotch",
        shape="tubular",
        ease=1.08,
        waist="no-waist",
        neck="high",
        collar="shirt-collar",
        sleeve="shirt-sleeve",
    ),
    "jumper": replace(
        TOP, body="hip", shape="tubular", ease=1.03, waist="no-waist", neck="v", sleeve="set-in-long"
    ),
    "cardigan": replace(
        TOP,
        body="hip",
        shape="tubular",
        ease=1.05,
        waist="no-waist",
        neck="v",
        sleeve="set-in-long",
        open=True,
    ),
    "waistcoat": replace(TOP, neck="v", sleeve="sleeveless", waist="no-waist", shape="tubular", open=True),
    "jacket": Build(
        body="crotch",
        open=True,
        ease=1.1,
        shape="tubular",
        neck="v",
        collar="notched",
        sleeve="two-piece-coat",
        waist="no-waist",
        frame="jacket",
        cut="straight",
    ),
    "coat": Build(
        body="skirt",
        open=True,
        ease=1.12,
        neck="v",
        collar="notched",
        sleeve="two-piece-coat",
        waist="no-waist",
        length="mid-calf",
    ),
    "costume-suit": Build(
        body="crotch",
        open=True,
        ease=1.06,
        neck="v",
        collar="notched",
        sleeve="two-piece-coat",
        waist="no-waist",
        under=True,
    ),
    "lounge-suit": Build(
        body="crotch",
        legs="floor",
        open=True,
        ease=1.1,
        shape="tubular",
        neck="v",
        collar="notched",
        sleeve="two-piece-coat",
        waist="no-waist",
        cut="straight",
    ),
    "wrap": Build(
        open=True,
        shape="loose",
        ease=1.05,
        neck="high",
        sleeve="cape-sleeve",
        waist="no-waist",
        length="below-knee",
    ),
    "bathing-wrap": Build(
        open=True,
        shape="loose",
        neck="v",
        collar="shawl",
        sleeve="kimono",
        waist="no-waist",
        length="mid-calf",
    ),
    "skirt": SKIRT,
    "petticoat": Build(body="", skirt=True, frame="lower", cut="gathered"),
    "crinoline": Build(body="", skirt=True, frame="lower", shape="crinoline-bell", waist="natural"),
    "trousers": Build(body="", legs="floor", frame="lower"),
    "shorts": Build(body="", legs="thigh", frame="seat"),
    "knickerbockers": Build(body="", legs="below-knee", frame="lower"),
    "drawers": Build(body="", legs="knee", frame="seat"),
    "bathing-wear": SUIT,
    "bathing-dress": Build(
        body="skirt",
        legs="below-knee",
        shape="fitted-flared",
        ease=1.02,
        sleeve="short",
        neck="v",
        waist="natural",
        length="above-knee",
        cut="gathered",
        frame="bather",
    ),
    "bathing-suit": SUIT,
    "bathing-two-piece": replace(SUIT, body="brassiere", neck="sweetheart", sleeve="strap"),
    "bathing-trunks": Build(body="", legs="trunk", shape="tubular", frame="seat"),
    "beach-pyjamas": Build(
        body="hip",
        legs="floor",
        shape="bias-cling",
        ease=1.04,
        waist="natural",
        sleeve="sleeveless",
        neck="v",
        cut="straight",
    ),
    "nightwear": LOOSE,
    "nightdress": LOOSE,
    "nightshirt": Build(
        shape="loose",
        ease=0.96,
        waist="no-waist",
        length="below-knee",
        neck="high",
        collar="shirt-collar",
        sleeve="shirt-sleeve",
        cut="straight",
    ),
    "pyjamas": Build(
        body="crotch",
        legs="floor",
        open=True,
        shape="tubular",
        ease=1.1,
        waist="no-waist",
        neck="v",
        sleeve="set-in-long",
        cut="straight",
    ),
    "dressing-gown": Build(
        open=True,
        shape="loose",
        ease=0.98,
        waist="natural",
        neck="v",
        collar="shawl",
        sleeve="set-in-long",
        length="instep",
        cut="straight",
    ),
    "underwear": Build(shape="tubular", neck="scoop", sleeve="strap", waist="no-waist", length="knee"),
    "chemise": Build(shape="loose", ease=0.9, neck="scoop", sleeve="cap", waist="no-waist", length="knee"),
    "slip": Build(neck="scoop", sleeve="strap", waist="no-waist"),
    "combinations": Build(
        body="crotch",
        legs="knee",
        neck="scoop",
        sleeve="strap",
        waist="no-waist",
        frame="bather",
        cut="straight",
    ),
    "camisole": replace(TOP, neck="scoop", sleeve="strap"),
    "brassiere": Build(
        body="brassiere",
        neck="scoop",
        sleeve="strap",
        shape="tubular",
        waist="no-waist",
        frame="upper",
        cut="straight",
    ),
    "corset": Build(
        body="hip", neck="off-shoulder", sleeve="sleeveless", waist="natural", frame="upper", cut="straight"
    ),
    "child-frock": Build(
        shape="a-line", waist="low", length="above-knee", neck="round", sleeve="short", cut="gathered"
    ),
    "infant-gown": Build(
        shape="a-line", waist="no-waist", length="ground", neck="round", sleeve="set-in-long", cut="gathered"
    ),
    "overall": Build(
        shape="a-line", ease=1.06, waist="no-waist", neck="square", sleeve="sleeveless", cut="straight"
    ),
    "child-suit": Build(
        body="hip",
        legs="thigh",
        shape="tubular",
        ease=1.06,
        waist="natural",
        neck="high",
        collar="turnover",
        sleeve="set-in-long",
        cut="straight",
    ),
    "sailor-suit": Build(
        body="hip",
        legs="thigh",
        shape="tubular",
        ease=1.08,
        waist="no-waist",
        neck="v",
        collar="sailor",
        sleeve="set-in-long",
        cut="straight",
    ),
    "romper": Build(
        body="crotch",
        legs="trunk",
        shape="loose",
        ease=0.9,
        waist="no-waist",
        neck="round",
        sleeve="short",
        cut="straight",
    ),
    "hat": Build(body="", head="hat", frame="head"),
    "headwear": Build(body="", head="hat", frame="head"),
    "cap": Build(body="", head="cap", frame="head"),
    "bathing-cap": Build(body="", head="bathing-cap", frame="head"),
}


def build_of(chain: Sequence[str], year: float) -> Build | None:
    """The build of the narrowest type of the chain that has one, with what changed by the year; None for
    types that have no flat."""
    for garment in chain:
        if garment in GARMENTS:
            return _by_year(garment, GARMENTS[garment], year)
    return None


def _by_year(garment: str, build: Build, year: float) -> Build:
    if garment == "evening-dress":
        if year >= 1921.5:
            build = replace(build, sleeve="sleeveless", neck="v")
        if year >= 1929.5:
            build = replace(build, length="ground")
    elif garment in ("blouse", "camisole"):
        if 1897.5 <= year < 1909:
            build = replace(build, waist="pouched")
        elif year >= 1921.5 and year < 1931:
            build = replace(build, body="hip", waist="no-waist", shape="tubular")
        else:
            build = replace(build, waist="natural")
    elif garment in ("nightdress", "nightwear"):
        if year < 1912:
            build = replace(build, length="ground", neck="high", sleeve="set-in-long")
        elif year < 1930:
            length = "instep" if year < 1922 else "mid-calf"
            build = replace(build, length=length, neck="v", sleeve="kimono", ease=0.86)
        else:
            build = replace(build, shape="bias-cling", length="ankle", neck="v", sleeve="cap", cut="bias-cut")
    elif garment == "slip" and year < 1930:
        build = replace(build, shape="tubular")
    elif garment in ("child-frock",) and not 1905 <= year < 1931:
        build = replace(build, waist="no-waist" if year < 1905 else "natural")
    elif garment == "costume-suit":
        build = replace(build, shape="fitted-flared" if year < 1921 else "tubular")
    elif garment == "tea-gown" and year < 1915:
        build = replace(build, sleeve="bishop", neck="high")
    elif garment == "wrap" and year >= 1915:
        build = replace(build, neck="v")
    return build

"""What on a board can hurt someone, each beside what it concerns; the page of cautions says more.

The ids are those of the headings of ``site/pages/cautions.md``, which names the rules to look up. A
sentence here never says that something is safe or lawful: it points, and defers to the rules in force and to
people who know. Where the board's own words speak of water or flame, the caution says so.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any, NamedTuple

from inperiod.records.model import Board, Catalogue

SENTENCES: Mapping[str, str] = {
    "cords-children": (
        "Cords, ties and drawstrings on a child’s garment can strangle or catch, at the neck above all. "
        "Look up 16 CFR 1120, ASTM F1816, EN 14682 or the rule where the child lives, and ask whoever "
        "answers for product safety there; a sewn-down bow can look the same."
    ),
    "nightwear": (
        "What is slept in is nightwear whatever its date, and has rules of its own: look up 16 CFR 1615 and "
        "1616, the Nightwear (Safety) Regulations 1985, or those where you are, and ask a testing house."
    ),
    "flammable-cloth": (
        "Light, open or napped cloth catches easily and burns fast. Keep it from flame; look up 16 CFR 1610 "
        "and the rules where it is worn, and ask the fire officer of a stage or a public event."
    ),
    "long-skirts": (
        "A long or narrow skirt trips, catches in wheels and stairs, and fills and drags in water. Walk the "
        "ground in it before the day, and ask whoever answers for safety at the place."
    ),
    "wet-wool": (
        "Wool drinks water, grows heavy and stretches, and can hold a swimmer down. Ask those who run the "
        "water, a lifeguard or a swimming teacher, first; rules on lifejackets apply over any costume."
    ),
    "celluloid": (
        "Celluloid catches from a spark or a hot iron and burns fiercely. Keep it from heat, follow the "
        "local rules for nitrate materials, and ask a conservator about old pieces."
    ),
    "hatpins": (
        "A hatpin is a sharp spike at the height of other people’s eyes. Guard its point, and ask before "
        "carrying it where it may count as a weapon: local laws differ."
    ),
    "tight-lacing": (
        "Lacing or boning that is tight hinders breath, above all in heat, after meals and in exertion. Be "
        "able to get out of it quickly, loosen it at any pain or faintness, and ask a doctor and an "
        "experienced corset maker first."
    ),
    "small-parts": (
        "Buttons, beads, pins and press studs come off, and small children swallow them. Look up 16 CFR "
        "1501 or the rule where the child lives, and ask a testing house before it is given or sold."
    ),
    "old-garments": (
        "An old garment may carry poisonous dyes, pesticides, mould or dust, and weighted silk that "
        "shatters. Do not wear, wash or shake it to learn about it; handle it as its conservator says and "
        "by local rules."
    ),
    "arsenic-dyes": (
        "Some old dyes and pigments hold arsenic or other poisons, which only an analysis shows. Ask a "
        "conservator before handling one, and follow local rules and the supplier’s safety sheet in dyeing."
    ),
    "hot-iron-sharp-tools": (
        "Cutting and pressing mean sharp tools and hot irons. Use them as their makers say, keep them from "
        "children, and follow the rules on workplace safety where others work or learn with you."
    ),
}
WITH_COMMAS: Mapping[str, str] = {
    "cords-children": "Cords, children",
    "hot-iron-sharp-tools": "Hot iron, sharp tools",
}
"""Headings of the page of cautions that their ids do not spell."""

NEAR_FLAME = "The board speaks of flame or heat near it."
NEAR_WATER = "The board speaks of water near it."

CHILDREN = "boy girl infant".split()
CHILD_GARMENTS = "child-frock child-suit sailor-suit romper infant-gown".split()
BATHING = "bathing-wear bathing-dress bathing-suit bathing-two-piece bathing-trunks".split()
# Planned features or garments that call for a caution, for anyone.
ALWAYS: Mapping[str, str] = {
    "nightwear": (
        "garment/nightwear garment/nightdress garment/nightshirt garment/pyjamas garment/dressing-gown"
    ),
    "flammable-cloth": (
        "garment/crinoline silhouette/crinoline-bell fabric/lawn fabric/cambric fabric/batiste "
        "fabric/nainsook fabric/voile fabric/muslin fabric/calico fabric/gingham fabric/chambray "
        "fabric/zephyr fabric/cotton-crepe fabric/flannelette fabric/velveteen fabric/georgette "
        "fabric/chiffon fabric/artificial-silk fabric/rayon fabric/organdie fabric/dimity fabric/net-"
        "bobbin fabric/lace-cloth fabric/towelling fabric/seersucker fabric/cotton fabric/gauze "
        "lining/steel-cage"
    ),
    "long-skirts": (
        "garment/bathing-dress silhouette/hobble skirt-cut/hobble-cut skirt-length/train skirt-"
        "length/ground skirt-length/instep"
    ),
    "celluloid": (
        "garment/fan garment/collar-piece garment/cuff-piece collar/boned-stand collar/wing "
        "fastening/celluloid-buttons trim/sequins"
    ),
    "hatpins": ("garment/headwear garment/hat"),
    "tight-lacing": (
        "garment/corset silhouette/s-bend silhouette/hourglass fastening/busk-front fastening/lacing "
        "lining/boned-bodice lining/waist-stay"
    ),
}
CORDS = (
    "neckline/halter collar/tie-bow fastening/lacing fastening/ribbon-tie fastening/drawstring "
    "fastening/belt-tie fastening/tape-ties trim/sash trim/ribbon trim/beading-slotted"
).split()
SMALL = (
    "fastening/buttons fastening/shank-buttons fastening/celluloid-buttons fastening/phenolic-buttons "
    "fastening/pearl-buttons fastening/press-studs fastening/safety-pin fastening/toggle trim/beads "
    "trim/sequins trim/buttons-ornamental"
).split()
WOOL = (
    "fabric/flannel fabric/serge fabric/alpaca fabric/mohair fabric/wool-jersey fabric/worsted-knit "
    "fabric/tweed fabric/wool"
).split()
_WATER = re.compile(
    "\\b(?:water|lake|river|sea|seaside|boats?|boathouse|beach|bath(?:e|es|ing)?|swim(?:s|ming|mer)?|pond|"
    "regatta|landing stage|quay|punt(?:s|ing)?)\\b",
    re.ASCII,
)
_FLAME = re.compile(
    "\\b(?:lanterns?|candles?|fires?|flames?|bonfires?|stoves?|gaslights?|lamps?|heaters?)\\b", re.ASCII
)
_CORD = re.compile("\\b(?:drawstrings?|neck cords?|cords?)\\b", re.ASCII)
_WORDS = {
    "celluloid": re.compile("\\bcelluloid\\b", re.ASCII),
    "hatpins": re.compile("\\bhatpins?\\b", re.ASCII),
    "tight-lacing": re.compile("\\b(?:tight lacing|corsets?)\\b", re.ASCII),
    "old-garments": re.compile("\\b(?:extant|antique|old lace|museum)\\b", re.ASCII),
}


class Caution(NamedTuple):
    """``id`` is the place on the page of cautions, ``name`` its heading; ``where`` a planned term,
    ``garment``, ``words``, ``plates``, ``making``, or ``making 3`` for the third line of it."""

    id: str
    name: str
    sentence: str
    where: str


def caution_name(which: str) -> str:
    """The heading a caution has on the page of cautions: ``flammable-cloth`` is ``Flammable cloth``."""
    return WITH_COMMAS.get(which) or which.replace("-", " ").capitalize()


@dataclass(frozen=True, slots=True)
class _Seen:
    """What the rules look at."""

    garment: str
    child: bool
    terms: tuple[str, ...]
    making: tuple[Mapping[str, Any], ...]
    words: str

    @property
    def keys(self) -> tuple[str, ...]:
        return (f"garment/{self.garment}", *self.terms)


def cautions_for(board: Board, catalogue: Catalogue | None = None) -> tuple[Caution, ...]:
    """Everything on the board that can hurt, in one order, each caution once for each thing it concerns.

    With the catalogue, gathered plates of extant garments and the cautions of the vocabulary's own terms
    count as well.
    """
    seen = _seen(board)
    found = [*_of_terms(seen), *_of_children(seen), *_of_water(seen), *_of_words(seen)]
    if catalogue is not None:
        found += _of_catalogue(board, catalogue, seen)
    if seen.making:
        found.append(("hot-iron-sharp-tools", "making"))
    order = list(SENTENCES)
    elsewhere = {which for which, where in found if where != "words"}
    once = dict.fromkeys(each for each in found if each[1] != "words" or each[0] not in elsewhere)
    kept = sorted(once, key=lambda each: order.index(each[0]))
    return tuple(
        Caution(which, caution_name(which), _sentence(which, seen.words), where) for which, where in kept
    )


def _seen(board: Board) -> _Seen:
    texts = [board.title, board.notes, board.worn_under, board.care, *board.questions]
    for departure in board.departures:
        texts += [departure.original, departure.stand_in, departure.reason]
    words = " ".join(text.lower() for text in texts if text)
    child = board.wearer.who in CHILDREN or board.garment in CHILD_GARMENTS
    terms = tuple(feature.term for feature in board.features if feature.term)
    return _Seen(board.garment, child, terms, board.making, words)


def _sentence(which: str, words: str) -> str:
    said = SENTENCES[which]
    if which in ("flammable-cloth", "nightwear", "celluloid") and _FLAME.search(words):
        return f"{said} {NEAR_FLAME}"
    if which in ("long-skirts", "wet-wool") and _WATER.search(words):
        return f"{said} {NEAR_WATER}"
    return said


Found = tuple[str, str]


def _of_terms(seen: _Seen) -> Iterator[Found]:
    for which, keys in ALWAYS.items():
        if which == "tight-lacing" and seen.child:
            continue  # a laced neck is meant: see the cords of children's garments
        for key in seen.keys:
            if key in keys.split():
                yield which, _where(key)


def _where(key: str) -> str:
    return "garment" if key.startswith("garment/") else key


def _of_children(seen: _Seen) -> Iterator[Found]:
    if not seen.child:
        return
    for which, keys in (("cords-children", CORDS), ("small-parts", SMALL)):
        yield from ((which, key) for key in seen.terms if key in keys)
    for number, given in enumerate(seen.making, 1):
        of = given.get("of")
        # A tape sewn down along a seam is no cord; one with ties is.
        if of in ("ribbon", "tape ties", "eyelets") or (of == "tape" and given.get("ties")):
            yield "cords-children", f"making {number}"
        if of in ("buttons", "press studs", "toggles", "hooks and eyes", "hooks and bars"):
            yield "small-parts", f"making {number}"
    if _CORD.search(seen.words):
        yield "cords-children", "words"


def _of_water(seen: _Seen) -> Iterator[Found]:
    bathing = seen.garment in BATHING
    wool = [key for key in seen.terms if key in WOOL]
    if bathing or _WATER.search(seen.words):
        yield from (("wet-wool", key) for key in wool)
    cloths = [key for key in seen.terms if key.startswith("fabric/")]
    if bathing and not cloths:
        yield "wet-wool", "garment"


def _of_words(seen: _Seen) -> Iterator[Found]:
    for which, words in _WORDS.items():
        if words.search(seen.words):
            yield which, "words"


def _of_catalogue(board: Board, catalogue: Catalogue, seen: _Seen) -> list[Found]:
    found: list[Found] = []
    for gathered in board.plates:
        plate = catalogue.plates.get(gathered.plate)
        if plate is not None and catalogue.sources[plate.source].kind == "extant":
            found.append(("old-garments", "plates"))
    only_where = {"cords-children": seen.child, "small-parts": seen.child, "wet-wool": False}
    for key in seen.terms:
        term = catalogue.vocabulary.terms.get(key)
        for which in term.cautions if term else ():
            if which in SENTENCES and only_where.get(which, True):
                found.append((which, key))
    return found

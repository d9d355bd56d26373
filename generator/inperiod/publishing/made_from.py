"""What each piece of the site is made from, as a digest: where it is the same, so is the piece.

A piece names its ingredients in ``made_from``. Digests are of what is recorded, not of where in a file it was
written, so that a comment or an empty line changes nothing. Every key also holds the base: this program, the
templates, the settings and the vocabulary. A piece that names nothing is made from all there is.
"""

from __future__ import annotations

import platform
from collections import defaultdict
from collections.abc import Callable, Iterable, Mapping
from dataclasses import fields
from functools import cache, cached_property
from operator import attrgetter
from pathlib import Path
from typing import Any, TypeVar

import jinja2
import PIL

from inperiod.kept import kept
from inperiod.publishing.digests import digest, files_digest, plain
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.nearness import Neighbours
from inperiod.publishing.outlines import PlateOutline
from inperiod.publishing.page import Card, Link, Page
from inperiod.publishing.pictures import picture_of
from inperiod.records.model import Catalogue

Key = TypeVar("Key")

MadeFrom = tuple[str, ...]
"""A kind of thing and its name: see ``Ingredients.of``. Empty: all there is."""

_HEAD = attrgetter(
    *(each.name for each in fields(Page) if each.name not in ("context", "files", "made_from"))
)
_LINK = attrgetter(*(each.name for each in fields(Link)))


def _head_of(page: Page) -> list[Any]:
    """The fields of a page, its links as tuples."""
    return [
        _LINK(each) if isinstance(each, Link) else plain(each) if isinstance(each, tuple | Card) else each
        for each in _HEAD(page)
    ]


def base_digest(catalogue: Catalogue) -> bytes:
    """What every piece is made with: the program and what it stands on, the site's own files with the
    user's, the settings and the vocabulary."""
    own = catalogue.folder / "site"
    return digest(
        (
            platform.python_version(),
            jinja2.__version__,
            PIL.__version__,
            files_digest([Path(__file__).parents[1]], ".py"),
            files_digest([kept("site"), kept("schemas")]),
            files_digest([own / part for part in ("templates", "pages", "assets")]),
            plain(catalogue.settings),
            plain(catalogue.vocabulary),
        )
    )


class Ingredients:
    """Digests of all that pieces are made from, for one catalogue as it is published."""

    def __init__(self, look: Lookup, near: Neighbours, base: bytes, editions: Mapping[str, str]) -> None:
        """``editions`` tell what source files were read from, by source, where that is known: it saves asking
        a file that has not changed."""
        self._look = look
        self._near = near
        self._base = base
        self._editions = editions

    def complete(self, look: Lookup) -> None:
        """What planning has found out: it must be known before a key is asked for."""
        self._look = look

    def key(self, made_from: MadeFrom, page: Page | None = None) -> str:
        """The key of a piece. A page's own head (its title, its way, what stands before and after) is part
        of it."""
        head = _head_of(page) if page else None
        return digest((self._base, head, self.of(made_from))).hex()

    def of(self, made_from: MadeFrom) -> bytes:
        """The digest of what a piece names.

        Of one thing: ``("plate", key)``, ``("source", id)``, ``("records of", id)``, ``("all of", id)`` for
        those of its plates and its records, ``("term", key)``, ``("garment", id)``, ``("facet", id)``,
        ``("timeline", garment, facet)``, ``("file", path)``, ``("block", word, number, id, …)`` with pairs of
        a document's number and its source. Of all: ``("evidence",)``; ``("heads",)`` of sources; ``("lists",
        …)`` what evidence and lists know, with more words; ``("boards",)``; ``("base", …)`` with more words;
        or nothing: all there is.
        """
        match made_from:
            case ():
                return self.all
            case ("base", *more):
                return digest(more)
            case ("evidence",):
                return self.evidence
            case ("heads",):
                return self.heads
            case ("lists", *more):
                return digest((more, self.lists))
            case ("boards",):
                return self.boards
            case ("plate", key):
                return self._plate(key)
            case ("source", name):
                return self._source(name)
            case ("all of", name):
                return self._all_of(name)
            case ("records of", name):
                return digest((self._heads(name), self.whole[name]))
            case ("block", *words):
                return digest((words, [self.of(("records of", name)) for name in words[2::2]]))
            case ("timeline", garment, facet):
                return digest((self._timelines, self._choices, self.surveyed.get((garment, facet))))
            case ("term", key):
                return self._term(key)
            case ("garment", name):
                return digest((self._timelines, self._garments.get(name)))
            case ("facet", name):
                return digest((self._timelines, self._facets.get(name)))
            case ("file", path):
                seen = Path(path).stat()
                return digest((path, seen.st_size, seen.st_mtime_ns, seen.st_ino))
        raise ValueError(made_from)

    # --- of records, one by one ---------------------------------------------------------------------

    @cached_property
    def whole(self) -> Mapping[str, str]:
        """By source id: all that is recorded of it and of its plates. Of a file known by its edition: that,
        and what other files can change of what is published of it."""
        known, entangled = self._editions, self._look.catalogue.entangled
        return {
            key: known[key] if key in known and key not in entangled else self._whole(key)
            for key in self._look.outlines
        }

    def _whole(self, name: str) -> str:
        catalogue = self._look.catalogue
        source = catalogue.sources[name]
        pictures = [picture_of(catalogue, plate) for plate in source.plates]
        cuts = [(plate.key, plate.same_cut_as) for plate in source.plates]
        return digest((self._editions.get(name) or plain(source), cuts, repr(pictures))).hex()

    @cached_property
    def _bonds(self) -> Mapping[str, str]:
        """By source id, where there is any: what binds it to others for evidence, the documents it repeats
        and the first plates of cuts used again."""
        look, outlines = self._look, self._look.outlines
        found: dict[str, list[object]] = defaultdict(list)
        for key, cut in look.cuts.items():
            found[key.partition("/")[0]].append((key, min(key, *(other.key for other in cut))))
        for name, outline in outlines.items():
            seen, at = {name}, outline.reprint_of
            while at and at not in seen and at in outlines:
                seen.add(at)
                found[name].append(outlines[at].document)
                at = outlines[at].reprint_of
        return {name: digest(bonds).hex() for name, bonds in found.items()}

    def _bond(self, name: str) -> str:
        return self._bonds.get(name, "")

    @cached_property
    def weighed(self) -> Mapping[str, str]:
        """By plate key: what evidence knows of it."""
        return self._of_plates(lambda plate: plate.evidence)

    @cached_property
    def shown(self) -> Mapping[str, str]:
        """By plate key: what evidence and lists know of it together."""
        return self._of_plates(lambda plate: plate.evidence + plate.line)

    def _of_plates(self, told: Callable[[PlateOutline], str]) -> dict[str, str]:
        return {
            f"{name}/{plate.id}": told(plate) + self._bond(name)
            for name, outline in self._look.outlines.items()
            for plate in outline.plates
        }

    # --- of what they make together -----------------------------------------------------------------

    @cached_property
    def all(self) -> bytes:
        boards = plain(self._look.catalogue.boards)
        return digest((self.heads, list(self.whole.items()), list(self._bonds.items()), boards))

    @cached_property
    def heads(self) -> bytes:
        """What is recorded of sources but for their plates, and how many those are."""
        return digest([outline.head for outline in self._look.outlines.values()])

    @cached_property
    def evidence(self) -> bytes:
        """All that evidence knows."""
        return digest(
            [
                (name, each.document, each.evidence, self._bond(name))
                for name, each in self._look.outlines.items()
            ]
        )

    @cached_property
    def lists(self) -> bytes:
        """All that evidence and lists know."""
        lines = [each.lines for each in self._look.outlines.values()]
        return digest((self.evidence, self.heads, lines))

    @cached_property
    def boards(self) -> bytes:
        """What the pages of boards are made from: beside lists all that is recorded of gathered plates."""
        boards = self._look.catalogue.boards
        gathered = {each.plate.partition("/")[0] for board in boards.values() for each in board.plates}
        return digest((self.lists, plain(boards), [self.whole.get(name) for name in sorted(gathered)]))

    @cached_property
    def surveyed(self) -> Mapping[tuple[str, str], bytes]:
        """By garment and facet: the plates of the garment that record the facet."""
        return self._gathered(
            self.weighed, lambda plate, worn: [(garment, facet) for facet in plate.looked for garment in worn]
        )

    @cached_property
    def _facets(self) -> Mapping[str, bytes]:
        """By facet: the plates that record anything of it, be it that it cannot be seen."""
        return self._gathered(self.weighed, lambda plate, _: plate.looked.union(plate.unseen))

    @cached_property
    def _garments(self) -> Mapping[str, bytes]:
        """By garment: its plates, and those of narrower ones."""
        return self._gathered(self.shown, lambda _, worn: worn)

    @cached_property
    def _terms(self) -> Mapping[str, bytes]:
        """By term: the plates that show it, or a narrower one."""
        broader = cache(self._look.catalogue.vocabulary.broader_terms)
        return self._gathered(
            self.shown, lambda plate, _: {wide for term in plate.terms for wide in broader(term)}
        )

    def _gathered(
        self, told: Mapping[str, str], under: Callable[[PlateOutline, tuple[str, ...]], Iterable[Key]]
    ) -> dict[Key, bytes]:
        """What is told of the plates, gathered ``under`` that by which each is asked for: given the plate,
        and its garment with the broader ones."""
        found: dict[Key, list[str]] = defaultdict(list)
        worn = cache(self._look.catalogue.vocabulary.broader_garments)
        for name, outline in self._look.outlines.items():
            for plate in outline.plates:
                own = told[f"{name}/{plate.id}"]
                for key in under(plate, worn(plate.garment)):
                    found[key].append(own)
        return {key: digest("".join(each)) for key, each in found.items()}

    @cached_property
    def _shown_on(self) -> Mapping[str, set[str]]:
        """By term: the garments it is shown on, and broader ones."""
        vocabulary = self._look.catalogue.vocabulary
        found: dict[str, set[str]] = defaultdict(set)
        for outline in self._look.outlines.values():
            for plate in outline.plates:
                for term in plate.terms:
                    found[term].add(plate.garment)
        wide: dict[str, set[str]] = defaultdict(set)
        for term, garments in found.items():
            for broad in vocabulary.broader_terms(term):
                wide[broad].update(each for one in garments for each in vocabulary.broader_garments(one))
        return wide

    @cached_property
    def _timelines(self) -> bytes:
        return digest(sorted(self._look.timelines))

    @cached_property
    def _choices(self) -> bytes:
        """What a timeline can be narrowed to."""
        outlines = self._look.outlines.values()
        places = list(dict.fromkeys(each.place for each in outlines))
        return digest((places, sorted({each.kind for each in outlines})))

    def _heads(self, name: str) -> str:
        """A source's own head, and that of the source it reprints, which citations name."""
        outlines = self._look.outlines
        original = outlines.get(outlines[name].reprint_of or "")
        return outlines[name].head + (original.head if original else "")

    def _others(self, plate: str) -> tuple[list[str], list[str]]:
        """What the page of a plate says of plates of other sources: of the same cut, and near to it."""
        cuts = [self.shown[other.key] for other in self._look.cuts.get(plate, ())]
        return cuts, [self.shown[other] for other in self._near.keys(plate)]

    def excerpts(self) -> dict[str, str]:
        """By source the digest of what is taken from it for files of the whole catalogue."""
        return {name: digest((self._base, self.of(("records of", name)))).hex() for name in self.whole}

    def _plate(self, key: str) -> bytes:
        source = key.partition("/")[0]
        return digest((self._heads(source), self.whole[source], key, self._others(key)))

    def own(self, name: str) -> str:
        """What a source's group of pieces is made from but for what evidence and lists know of others."""
        return digest((self._heads(name), self.whole[name])).hex()

    def _all_of(self, name: str) -> bytes:
        others = [self._others(f"{name}/{plate.id}") for plate in self._look.outlines[name].plates]
        return digest((self.own(name), others))

    def _source(self, name: str) -> bytes:
        reprints = [self._look.outlines[each.id].head for each in self._look.reprints.get(name, ())]
        return digest((self._heads(name), reprints, self.whole[name]))

    def _term(self, key: str) -> bytes:
        """The plates that show it, and all that was looked at for its facet on garments they show it on."""
        facet = key.partition("/")[0]
        looked = [self.surveyed.get((garment, facet)) for garment in sorted(self._shown_on.get(key, ()))]
        return digest((self._terms.get(key), looked))

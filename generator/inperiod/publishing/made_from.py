"""What each piece of the site is made from, as a digest: where it is the same, so is the piece.

A piece names its ingredients in ``made_from``. Digests are of what is recorded, not of where in a file it was
written, so that a comment or an empty line changes nothing. Every key also holds the base: this program, the
templates, the settings and the vocabulary. A piece that names nothing is made from all there is.
"""

from __future__ import annotations

import platform
from collections import defaultdict
from collections.abc import Iterable, Mapping
from dataclasses import fields
from functools import cached_property
from operator import attrgetter
from pathlib import Path
from typing import Any

import jinja2
import PIL

from inperiod.kept import kept
from inperiod.publishing.digests import PLACES, digest, files_digest, plain
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.nearness import Neighbours
from inperiod.publishing.page import Card, Link, Page
from inperiod.publishing.pictures import on_the_same_page, picture_of
from inperiod.records.model import Catalogue, Plate, Source

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

    def __init__(self, look: Lookup, base: bytes, editions: Mapping[str, str]) -> None:
        """``editions`` tell what source files were read from, by source, where that is known: it saves asking
        every plate of a file that has not changed."""
        self._look = look
        self._base = base
        self._editions = editions
        self._near = Neighbours(look)

    def complete(self, look: Lookup, near: Neighbours) -> None:
        """What planning has found out: it must be known before a key is asked for."""
        self._look = look
        self._near = near

    def key(self, made_from: MadeFrom, page: Page | None = None) -> str:
        """The key of a piece. A page's own head (its title, its way, what stands before and after) is part
        of it."""
        head = _head_of(page) if page else None
        return digest((self._base, head, self.of(made_from))).hex()

    def of(self, made_from: MadeFrom) -> bytes:
        """The digest of what a piece names: ``("plate", key)``, ``("source", id)``, ``("records of", id)``,
        ``("block", word, number, id, …)`` with pairs of a document's number and its source, ``("timeline",
        garment, facet)``, ``("term", key)``, ``("garment", id)``, ``("facet", id)``, ``("evidence",)``,
        ``("file", path)``, ``("base", …)`` with more words, or nothing: all there is.
        """
        match made_from:
            case ():
                return self.all
            case ("base", *more):
                return digest(more)
            case ("evidence",):
                return self.evidence
            case ("plate", key):
                return self._plate(self._look.catalogue.plates[key])
            case ("source", name):
                return self._source(self._look.catalogue.sources[name])
            case ("records of", name):
                return digest([self._heads(name), *self._whole_plates(name)])
            case ("block", *words):
                return digest((words, [self.of(("records of", name)) for name in words[2::2]]))
            case ("timeline", garment, facet):
                return digest([self._timelines, self._choices, self.surveyed.get((garment, facet))])
            case ("term", key):
                return self._term(key)
            case ("garment", name):
                plates = self._look.of_garment.get(name, ())
                return digest([self._timelines, [self.shown[plate.key] for plate in plates]])
            case ("facet", name):
                return digest([self._timelines, self._of_facet.get(name)])
            case ("file", path):
                seen = Path(path).stat()
                return digest((path, seen.st_size, seen.st_mtime_ns, seen.st_ino))
        raise ValueError(made_from)

    # --- of records, one by one ---------------------------------------------------------------------

    @cached_property
    def whole(self) -> Mapping[str, bytes]:
        """By plate key: all that is recorded of it. Of a file known by its edition: that, and what other
        files can change of what is published of it."""
        known = self._editions
        return {
            key: digest((known[plate.source], key, plate.same_cut_as, plate.image is None))
            if plate.source in known
            else digest(plain(plate))
            for key, plate in self._look.catalogue.plates.items()
        }

    @cached_property
    def heads(self) -> Mapping[str, bytes]:
        """By source id: all that is recorded of it but its plates, and how many those are."""
        return {
            key: digest((_head(source), len(source.plates)))
            for key, source in self._look.catalogue.sources.items()
        }

    @cached_property
    def weighed(self) -> Mapping[str, bytes]:
        """By plate key: what evidence knows of it: its document, its garment, its features, its cut."""
        catalogue = self._look.catalogue
        documents = {key: digest(self._document(source)) for key, source in catalogue.sources.items()}
        leaders = {key: min(key, *(other.key for other in cut)) for key, cut in self._look.cuts.items()}
        return {
            plate.key: digest(
                (
                    documents[plate.source],
                    plate.date.text if plate.date else None,
                    plate.id,
                    plate.garment,
                    plate.wearer.who,
                    [(each.facet, each.term, each.state, each.reading) for each in plate.features],
                    leaders.get(plate.key),
                )
            )
            for plate in catalogue.plates.values()
        }

    def _document(self, source: Source) -> tuple[Any, ...]:
        """What evidence knows of a source, and of those it repeats."""
        chain: list[Source] = []
        at: Source | None = source
        while at is not None and at not in chain:
            chain.append(at)
            at = self._look.catalogue.sources.get(at.reprint_of or "")
        return tuple(
            (
                each.id,
                each.kind,
                each.market or each.publisher.place,
                each.date_basis,
                plain(each.date),
                each.reprint_of,
            )
            for each in chain
        )

    @cached_property
    def lines(self) -> Mapping[str, bytes]:
        """By plate key: what lists say and show of it."""
        look, heads = self._look, self._line_heads
        return {
            plate.key: digest(
                (
                    heads[plate.source],
                    plate.key,
                    plain(plate.date),
                    plate.garment,
                    plain(plate.locator),
                    plate.wearer.who,
                    self._picture(plate),
                )
            )
            for plate in look.catalogue.plates.values()
        }

    @cached_property
    def _line_heads(self) -> Mapping[str, bytes]:
        return {
            key: digest((source.title, plain(source.date), source.grade, len(source.plates) == 1))
            for key, source in self._look.catalogue.sources.items()
        }

    def _picture(self, plate: Plate) -> str | None:
        return repr(picture_of(self._look.catalogue, plate)) if plate.image else None

    @cached_property
    def shown(self) -> Mapping[str, bytes]:
        """By plate key: what evidence and lists know of it together."""
        lines = self.lines
        return {key: weighed + lines[key] for key, weighed in self.weighed.items()}

    # --- of what they make together -----------------------------------------------------------------

    @cached_property
    def all(self) -> bytes:
        catalogue = self._look.catalogue
        pictures = [self._picture(plate) for plate in catalogue.plates.values() if plate.image]
        return digest((list(self.heads.items()), list(self.whole.items()), plain(catalogue.boards), pictures))

    @cached_property
    def evidence(self) -> bytes:
        """All that evidence knows."""
        return digest(list(self.weighed.items()))

    @cached_property
    def surveyed(self) -> Mapping[tuple[str, str], bytes]:
        """By garment and facet: the plates of the garment that record the facet."""
        found: dict[tuple[str, str], list[bytes]] = defaultdict(list)
        chains: dict[str, tuple[str, ...]] = {}
        broader = self._look.catalogue.vocabulary.broader_garments
        weighed = self.weighed
        for plate in self._look.catalogue.plates.values():
            chain = chains.setdefault(plate.garment, broader(plate.garment))
            facets = {each.facet for each in plate.features if each.state != "not visible"}
            own = weighed[plate.key]
            for garment in chain:
                for facet in facets:
                    found[garment, facet].append(own)
        return {key: digest(digests) for key, digests in found.items()}

    @cached_property
    def _of_facet(self) -> Mapping[str, bytes]:
        """By facet: the plates that record anything of it, be it that it cannot be seen."""
        found: dict[str, list[bytes]] = defaultdict(list)
        weighed = self.weighed
        for plate in self._look.catalogue.plates.values():
            for facet in {each.facet for each in plate.features}:
                found[facet].append(weighed[plate.key])
        return {facet: digest(digests) for facet, digests in found.items()}

    @cached_property
    def _timelines(self) -> bytes:
        return digest(sorted(self._look.timelines))

    @cached_property
    def _choices(self) -> bytes:
        """What a timeline can be narrowed to."""
        sources = self._look.catalogue.sources.values()
        return digest(
            (
                list(dict.fromkeys(source.market or source.publisher.place for source in sources)),
                sorted({source.kind for source in sources}),
            )
        )

    def _heads(self, name: str) -> bytes:
        """A source's own head, and that of the source it reprints, which citations name."""
        original = self._look.catalogue.sources[name].reprint_of
        return self.heads[name] + self.heads.get(original or "", b"")

    def _whole_plates(self, name: str) -> Iterable[object]:
        for plate in self._look.catalogue.sources[name].plates:
            yield self.whole[plate.key], self._picture(plate)

    def _plate(self, plate: Plate) -> bytes:
        look = self._look
        mates = look.outfits.get((plate.source, plate.outfit or ""), ())
        page = on_the_same_page(look.catalogue, plate)
        others = (*mates, *look.cuts.get(plate.key, ()), *page)
        return digest(
            (
                self._heads(plate.source),
                self.whole[plate.key],
                self._picture(plate),
                [self.lines[each.key] for each in others],
                [self.shown[each] for each in self._near.keys(plate)],
            )
        )

    def _source(self, source: Source) -> bytes:
        reprints = [self.heads[each.id] for each in self._look.reprints.get(source.id, ())]
        return digest((self._heads(source.id), reprints, list(self._whole_plates(source.id))))

    def _term(self, key: str) -> bytes:
        """The plates that show it, and all that was looked at for its facet on garments they show it on."""
        facet = key.partition("/")[0]
        plates = self._look.showing.get(key, ())
        broader = self._look.catalogue.vocabulary.broader_garments
        garments = {garment for each in {plate.garment for plate in plates} for garment in broader(each)}
        looked = [self.surveyed.get((garment, facet)) for garment in sorted(garments)]
        return digest(([self.shown[plate.key] for plate in plates], looked))


def _head(source: Source) -> tuple[Any, ...]:
    return tuple(
        (each.name, plain(getattr(source, each.name)))
        for each in fields(source)
        if each.name != "plates" and each.name not in PLACES
    )

"""From a catalogue to a site on the disk."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from hashlib import blake2b
from itertools import accumulate, groupby
from pathlib import Path

from inperiod.hands import done_by_all, hands_here
from inperiod.kept import kept
from inperiod.publishing.excerpts import Excerpts
from inperiod.publishing.kept_pages import Kept, read_kept, write_kept
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.made_from import Ingredients, base_digest
from inperiod.publishing.nearness import Neighbours
from inperiod.publishing.outlines import outlines_of
from inperiod.publishing.own_files import refuse_links
from inperiod.publishing.pictures import scans_in, without_pictures
from inperiod.publishing.pieces import Piece, pieces_of, pieces_of_source
from inperiod.publishing.plan import Plan, plan_pages
from inperiod.publishing.published import published
from inperiod.publishing.render import environment, layers
from inperiod.publishing.scans import make_scans, place_for_scans
from inperiod.publishing.spare import place_for_spare
from inperiod.publishing.view_timeline import Shown, shown_timelines
from inperiod.publishing.write import (
    Aside,
    Filed,
    Standing,
    alone,
    refuse_foreign,
    refuse_place,
    swap_in,
)
from inperiod.records.keeping import add_standing
from inperiod.records.model import Catalogue
from inperiod.seldom import refuse_seldom

Progress = Callable[[int, int], None]

TOGETHER, NEAR_TOGETHER = 8, 200
"""Pieces that one process makes at a time, and plates whose neighbours it looks for at a time."""
OF_KIN = 4
"""So many times more pieces are made together where they are of one kin."""
FEW = 24
"""For fewer pieces it does not pay to start another process."""


@dataclass(frozen=True, slots=True)
class BuildReport:
    """What a build wrote. ``first`` is the page to open; ``size`` is in bytes."""

    target: Path
    first: Path
    pages: int
    plates: int
    sources: int
    files: int
    size: int


@refuse_seldom()
def build(
    catalogue: Catalogue,
    target: Path,
    progress: Progress | None = None,
    hands: int | None = None,
    editions: Mapping[str, str] | None = None,
    grounds: str | None = None,
) -> BuildReport:
    """Build the whole site into ``target`` and swap it in at the end.

    Deterministic: the same records give the same bytes. ``progress`` is told how many pieces are done, of
    how many; ``hands`` is how many processes work at it, left out as many as there are cores.
    ``editions`` and ``grounds`` tell what each source, and all of the catalogue, was read from (see
    ``Reading``), which saves time: from the same grounds the last site is left as it stands. Raises
    ``WillNotWrite`` where the target holds what is not ours, and whatever a template of the user's own
    raises; the last good site stays in either case.
    """
    target = Path(target)
    refuse_place(target, catalogue.folder)
    refuse_links(catalogue.folder)
    with alone(target):
        last = refuse_foreign(target, catalogue.folder)
        base = base_digest(catalogue)
        before = read_kept(catalogue.folder, target, base.hex())
        whole = _whole(catalogue, grounds)
        if before.still_stands(whole, last):
            return BuildReport(target, target / "index.html", **before.counts)
        shown = published(catalogue)
        with place_for_scans(shown) as place:
            scans = make_scans(scans_in(shown), place)
            shown = without_pictures(shown, frozenset(scans.damaged))
            hands = hands_here() if hands is None else hands
            look = Lookup(shown, outlined=outlines_of(shown, editions, base))
            neighbours = Neighbours(look)
            ingredients = Ingredients(look, neighbours, base, editions or {})
            plan = plan_pages(look, neighbours, _timelines(look, ingredients, before))
            ingredients.complete(plan.look)
            near = _near(neighbours, before, hands)
            excerpts = Excerpts(shown, ingredients.excerpts() if editions else None)
            stock = _Stock(plan, ingredients, before, last)
            stock.take(pieces_of(plan, _copies(shown) | scans.files, excerpts))
            stock.take_groups()
            files: dict[str, list[Filed]] = {}

            def fill(aside: Aside) -> Iterator[Filed]:
                for name, paths in stock.stands.items():
                    files[name] = [aside.keep(path) for path in paths]
                    yield from files[name]
                for name, filed in _made(stock.to_make, aside, hands, progress):
                    files[name] = filed
                    yield from filed

            written = swap_in(target, last, fill, place_for_spare(catalogue.folder, target))
            made = {
                name: (stock.keys[name], [[path, *standing] for path, standing in filed])
                for name, filed in files.items()
            }
            counts = {
                "pages": len(plan.first) + len(shown.plates) + len(plan.last),
                "plates": len(shown.plates),
                "sources": len(shown.sources),
                "files": written.files,
                "size": written.size,
            }
            rows = {garment: neighbours.grounds_of_row(garment) for garment in neighbours.rows}
            surveyed = _surveyed(plan, ingredients)
            timelines = [each.to_json() for each in plan.timelines]
            kept = Kept(made, stock.groups, rows, near, surveyed, timelines, whole, counts)
            write_kept(catalogue.folder, target, base.hex(), kept)
    return BuildReport(target, target / "index.html", **counts)


class _Stock:
    """The pieces of a site as they are taken stock of: ``stands`` has the files of those that can be left as
    they are, by name; ``to_make`` are the others. ``groups``: by source the key of all that belongs to it,
    and the names of those pieces."""

    def __init__(
        self, plan: Plan, ingredients: Ingredients, before: Kept, last: Mapping[str, Standing]
    ) -> None:
        self._plan = plan
        self._ingredients = ingredients
        self._before = before
        self._last = last
        self.keys: dict[str, str] = {}
        self.stands: dict[str, list[str]] = {}
        self.to_make: list[Piece] = []
        self.groups: dict[str, tuple[str, list[str]]] = {}

    def take(self, pieces: Iterable[Piece]) -> list[str]:
        """Each by itself; their names."""
        names = []
        for piece in pieces:
            names.append(piece.name)
            key = self._ingredients.key(piece.made_from, piece.page)
            if not self._left(piece.name, key):
                self.to_make.append(piece)
        return names

    def take_groups(self) -> None:
        """What belongs to each source: where nothing it is made of has changed, without asking each piece."""
        env = environment(self._plan.look.catalogue)
        for source in self._plan.look.outlines:
            key = self._ingredients.key(("all of", source))
            names = self._before.of_group(source, key)
            if not names or not all([self._left(name, self._before.pieces[name][0]) for name in names]):
                names = self.take(pieces_of_source(self._plan, env, source))
            self.groups[source] = (key, list(names))

    def _left(self, name: str, key: str) -> bool:
        self.keys[name] = key
        paths = self._before.paths(name, key, self._last)
        if paths is None:
            return False
        self.stands[name] = paths
        return True


def _whole(catalogue: Catalogue, grounds: str | None) -> str:
    """A digest of all that a site is built from but the base; empty where it is not known."""
    if grounds is None:
        return ""
    found = blake2b(grounds.encode(), digest_size=16)
    add_standing(found, catalogue.folder / "site")
    return found.hexdigest()


def _timelines(look: Lookup, ingredients: Ingredients, before: Kept) -> list[Shown]:
    """The timelines worth showing: those of the last build where the same was looked at for all of them; else
    with the weights that are known, of those for which the same was looked at, or nothing."""
    noted = before.surveyed
    looked = {f"{garment} {facet}": told.hex() for (garment, facet), told in ingredients.surveyed.items()}
    if noted and looked == {name: told for name, (told, _) in noted.items()}:
        return [Shown(*each) for each in before.timelines]
    known = {}
    for garment in look.facts.garments:
        for facet in look.facts.facets:
            name = f"{garment.id} {facet}"
            if name not in looked:
                known[garment.id, facet] = 0.0
            elif name in noted and noted[name][0] == looked[name]:
                known[garment.id, facet] = noted[name][1]
    return shown_timelines(look.facts, look.catalogue.settings.grades, known)


def _surveyed(plan: Plan, ingredients: Ingredients) -> dict[str, tuple[str, float]]:
    """What ``_timelines`` goes by the next time."""
    weights = {(each.garment, each.facet): each.weight for each in plan.timelines}
    return {
        f"{garment} {facet}": (looked.hex(), weights.get((garment, facet), 0.0))
        for (garment, facet), looked in ingredients.surveyed.items()
    }


def _near(near: Neighbours, before: Kept, hands: int) -> dict[str, Sequence[str]]:
    """By plate: the digest of what decides which plates are near to it, then their keys; worked out where it
    is not known from the last build."""
    found: dict[str, Sequence[str]] = {}
    unknown: list[str] = []
    for garment, row in near.rows.items():
        the_same = before.rows.get(garment) == near.grounds_of_row(garment)
        for plate in (stand.key for stand in row):
            known = before.near.get(plate)
            if known and (the_same or known[0] == near.grounds(plate)):
                found[plate] = known
                near.learn(plate, known[1:])
            else:
                unknown.append(plate)
    parts = [unknown[at : at + NEAR_TOGETHER] for at in range(0, len(unknown), NEAR_TOGETHER)]

    def work(part: Sequence[str]) -> list[tuple[str, ...]]:
        return [near.keys(plate) for plate in part]

    for number, keys in done_by_all(parts, work, hands, lambda _: None):
        for plate, nearest in zip(parts[number], keys, strict=True):
            near.learn(plate, nearest)
            found[plate] = (near.grounds(plate), *nearest)
    return found


def _made(
    pieces: Sequence[Piece], aside: Aside, hands: int, progress: Progress | None
) -> Iterator[tuple[str, list[Filed]]]:
    """Every piece made and put aside, by so many processes: its name and its files."""
    parts = _parts(pieces, hands)
    begun = list(accumulate(map(len, parts), initial=0))

    def make(part: Sequence[Piece]) -> list[list[Filed]]:
        return [
            [aside.copy(piece.path, piece.origin)]
            if piece.origin
            else [aside.put(path, text) for path, text in piece.make()]
            for piece in part
        ]

    def tell(part: int) -> None:
        if progress:
            progress(begun[part], len(pieces))

    for number, made in done_by_all(parts, make, hands if len(pieces) >= FEW else 1, tell):
        for piece, files in zip(parts[number], made, strict=True):
            yield piece.name, [(path, (size, time, inode)) for path, (size, time, inode) in files]
    tell(len(parts))


def _parts(pieces: Sequence[Piece], hands: int) -> list[list[Piece]]:
    """The pieces in parts for one process each: small enough for all hands, those of one kin together."""
    each = max(1, min(TOGETHER, len(pieces) // (64 * hands)))
    parts: list[list[Piece]] = []
    for kin, found in groupby(pieces, key=lambda piece: piece.kin):
        of_kin, most = list(found), OF_KIN * each if kin else each
        parts += [of_kin[at : at + most] for at in range(0, len(of_kin), most)]
    return parts


def _copies(catalogue: Catalogue) -> dict[str, Path]:
    """Scripts and other assets, and the user's own files in ``site/static``."""
    copies: dict[str, Path] = {}
    for folder in layers(catalogue, "assets"):
        if folder.is_dir():
            for file in sorted(folder.iterdir()):
                if file.is_file() and not file.name.startswith("."):
                    copies[f"assets/{file.name}"] = file
    own = catalogue.folder / "site" / "static"
    if own.is_dir():
        for file in sorted(own.rglob("*")):
            if file.is_file() and not file.name.startswith("."):
                copies[file.relative_to(own).as_posix()] = file
    return copies


def watched_folders(catalogue_folder: Path) -> list[Path]:
    """What a served site is built from."""
    return [catalogue_folder, kept("site")]

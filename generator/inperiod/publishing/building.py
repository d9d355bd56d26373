"""From a catalogue to a site on the disk."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from hashlib import blake2b
from itertools import accumulate, groupby
from pathlib import Path
from typing import Any

from inperiod.hands import done_by_all, hands_here
from inperiod.kept import kept
from inperiod.publishing.excerpts import Excerpts
from inperiod.publishing.kept_pages import Kept, Nearest, Notes, Worked
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.made_from import Ingredients, base_digest
from inperiod.publishing.nearness import Neighbours
from inperiod.publishing.outlines import outlines_of
from inperiod.publishing.own_files import refuse_links
from inperiod.publishing.pictures import scans_in, without_pictures
from inperiod.publishing.pieces import Piece, pieces_of
from inperiod.publishing.plan import plan_pages
from inperiod.publishing.published import published
from inperiod.publishing.render import layers
from inperiod.publishing.scans import make_scans, place_for_scans
from inperiod.publishing.spare import place_for_spare
from inperiod.publishing.stock import Stock
from inperiod.publishing.view_timeline import Shown
from inperiod.publishing.working_out import surveyed, work_out_near, worth_showing
from inperiod.publishing.write import (
    Aside,
    Filed,
    Standing,
    alone,
    refuse_foreign,
    refuse_place,
    swap_in,
)
from inperiod.records.grounds import add_standing
from inperiod.records.model import Catalogue
from inperiod.seldom import refuse_seldom

Progress = Callable[[int, int], None]

TOGETHER = 8
"""Pieces that one process makes at a time."""
OF_KIN = 4
"""So many times more pieces are made together where they are of one kin."""
FEW = 12
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
        notes = Notes(catalogue.folder, target, base.hex())
        before = notes.read(Kept)
        whole = _whole(catalogue, grounds)
        if before.still_stands(whole, last):
            return BuildReport(target, target / "index.html", **before.counts)
        shown = published(catalogue)
        with place_for_scans(shown) as place:
            scans = make_scans(scans_in(shown), place)
            shown = without_pictures(shown, frozenset(scans.damaged))
            hands = hands_here() if hands is None else hands
            look = Lookup(shown, outlined=outlines_of(shown, editions, base, hands))
            near = Neighbours(look)
            ingredients = Ingredients(look, near, base, editions or {})
            timelines, worked = _worked(look, ingredients, near, before, notes, hands)
            plan = plan_pages(look, near, timelines)
            ingredients.complete(plan.look)
            excerpts = Excerpts(shown, ingredients.excerpts() if editions else None)
            stock = Stock(plan, ingredients, before, before.altered(last))
            stock.take_stock(pieces_of(plan, _copies(shown) | scans.files, excerpts))
            files = {name: before.pieces[name] for name in stock.left}
            keys = {piece.name: key for key, piece in stock.to_make}
            moved: dict[str, Standing] = {}

            def fill(aside: Aside) -> Iterator[Filed]:
                left = [path for _, filed in files.values() for path, *_ in filed]
                for path, standing in aside.keep_all(left):
                    if standing is not last[path]:
                        moved[path] = standing
                    yield path, standing
                for name, filed in _made([piece for _, piece in stock.to_make], aside, hands, progress):
                    files[name] = (keys[name], [(path, *standing) for path, standing in filed])
                    yield from filed

            written = swap_in(target, last, fill, place_for_spare(catalogue.folder, target))
            counts = {
                "pages": len(plan.first) + len(shown.plates) + len(plan.last),
                "plates": len(shown.plates),
                "sources": len(shown.sources),
                "files": written.files,
                "size": written.size,
            }
            if moved:  # where the disk gives no file a second name
                files = {name: (key, _as_moved(filed, moved)) for name, (key, filed) in files.items()}
            shown_ones = [each.to_json() for each in timelines]
            lists = ingredients.lists.hex()
            notes.write(Kept(files, stock.groups, lists, shown_ones, whole, counts))
            if worked:
                notes.write(worked)
                notes.write(Nearest(lists, {plate: near.keys(plate) for plate in shown.plates}))
    return BuildReport(target, target / "index.html", **counts)


def _worked(
    look: Lookup, ingredients: Ingredients, near: Neighbours, before: Kept, notes: Notes, hands: int
) -> tuple[Sequence[Shown], Worked | None]:
    """The timelines worth showing, and what to note of what was worked out for them; None where evidence and
    lists know the same as last time, so that the last note is as good."""
    nearest = notes.read(Nearest)
    if before.lists == nearest.lists == ingredients.lists.hex():
        near.believe(nearest.plates)
        return [Shown(*each) for each in before.timelines], None
    last = notes.read(Worked)
    timelines = worth_showing(look, ingredients, last)
    rows = {garment: near.grounds_of_row(garment) for garment in near.rows}
    grounds = work_out_near(near, nearest.plates, last, hands)
    return timelines, Worked(rows, grounds, surveyed(timelines, ingredients))


def _as_moved(filed: Iterable[Sequence[Any]], moved: Mapping[str, Standing]) -> list[tuple[Any, ...]]:
    return [(path, *moved.get(path, standing)) for path, *standing in filed]


def _whole(catalogue: Catalogue, grounds: str | None) -> str:
    """A digest of all that a site is built from but the base; empty where it is not known."""
    if grounds is None:
        return ""
    found = blake2b(grounds.encode(), digest_size=16)
    add_standing(found, catalogue.folder / "site")
    return found.hexdigest()


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

"""From a catalogue to a site on the disk."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from inperiod.evidence import gather_facts
from inperiod.kept import kept
from inperiod.publishing.hands import done_by_all, hands_here
from inperiod.publishing.pictures import scans_in, without_pictures
from inperiod.publishing.pieces import Piece, pieces_of
from inperiod.publishing.plan import plan_pages
from inperiod.publishing.published import published
from inperiod.publishing.render import layers
from inperiod.publishing.scans import make_scans, place_for_scans
from inperiod.publishing.scripts import is_shipped_script
from inperiod.publishing.write import Aside, Filed, alone, refuse_foreign, refuse_place, swap_in
from inperiod.records.model import Catalogue

Progress = Callable[[int, int], None]

TOGETHER = 8
"""Pieces that one process makes at a time."""


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


def build(
    catalogue: Catalogue, target: Path, progress: Progress | None = None, hands: int | None = None
) -> BuildReport:
    """Build the whole site into ``target`` and swap it in at the end.

    Deterministic: the same records give the same bytes. ``progress`` is told how many pieces are done, of
    how many; ``hands`` is how many processes work at it, left out as many as there are cores. Raises
    ``WillNotWrite`` where the target holds what is not ours, and whatever a template of the user's own
    raises; the last good site stays in either case.
    """
    target = Path(target)
    refuse_place(target, catalogue.folder)
    with alone(target):
        last = refuse_foreign(target, catalogue.folder)
        shown = published(catalogue)
        with place_for_scans(shown) as place:
            scans = make_scans(scans_in(shown), place)
            shown = without_pictures(shown, frozenset(scans.damaged))
            facts = gather_facts(shown)
            pages = plan_pages(shown, facts)
            copies = _copies(shown)
            pieces = list(pieces_of(shown, facts, pages, copies))
            as_they_stand = {path: file for path, file in copies.items() if not is_shipped_script(file)}

            def fill(aside: Aside) -> Iterator[Filed]:
                for path, file in (as_they_stand | scans.files).items():
                    yield aside.copy(path, file)
                yield from _made(pieces, aside, hands_here() if hands is None else hands, progress)

            written = swap_in(target, last, fill)
    return BuildReport(
        target=target,
        first=target / "index.html",
        pages=len(pages),
        plates=len(shown.plates),
        sources=len(shown.sources),
        files=written.files,
        size=written.size,
    )


def _made(pieces: Sequence[Piece], aside: Aside, hands: int, progress: Progress | None) -> Iterator[Filed]:
    """Every piece made and put aside, by so many processes."""
    parts = [pieces[at : at + TOGETHER] for at in range(0, len(pieces), TOGETHER)]

    def make(part: Sequence[Piece]) -> list[Filed]:
        return [aside.put(path, text) for piece in part for path, text in piece.make()]

    def tell(begun: int) -> None:
        if progress:
            progress(min(len(pieces), begun * TOGETHER), len(pieces))

    for _, files in done_by_all(parts, make, hands, tell):
        for path, standing in files:
            yield path, (standing[0], standing[1], standing[2])
    tell(len(parts))


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

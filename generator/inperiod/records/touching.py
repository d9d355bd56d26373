"""Which records a change touches: the files that differ, and those whose soundness hangs on them."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterable, Iterator, Mapping
from pathlib import PurePosixPath
from typing import Any

from inperiod.records.model import Board, Catalogue, Feature, Source
from inperiod.records.places import SETTINGS_FILE
from inperiod.records.yaml_reading import plain_value, read_yaml

Touched = dict[str, tuple[str, ...]]
"""Files of a catalogue, relative to its folder, each with why it is touched; "" reads: it changed."""


def touched(catalogue: Catalogue, changed: Iterable[str], before: Mapping[str, bytes]) -> Touched:
    """The files that must be checked again after ``changed`` files were written, renamed or deleted.

    ``before`` holds what the changed files of the vocabulary were, so that a term that stayed the same
    touches nothing. Sources that reprint a changed one or reuse its cuts are touched, and by them others;
    boards that gather its plates; what records or plans a changed term, or a garment that a changed one is
    broader than; what shows a changed picture. Changed settings touch everything.
    """
    files = set(changed)
    found: dict[str, dict[str, None]] = defaultdict(dict)
    for file in sorted(files):
        found[file][""] = None
    if SETTINGS_FILE in files:
        for file in _every_file(catalogue):
            found[file]["the settings changed"] = None
    for file, reason in _by_reference(catalogue, files):
        found[file][reason] = None
    for file, reason in _by_vocabulary(catalogue, files, before):
        found[file][reason] = None
    for file, reason in _by_picture(catalogue, files):
        found[file][reason] = None
    return {file: tuple(reasons) for file, reasons in sorted(found.items())}


def _every_file(catalogue: Catalogue) -> Iterator[str]:
    records: list[Source | Board] = [*catalogue.sources.values(), *catalogue.boards.values()]
    yield from (each.mark.file for each in catalogue.vocabulary.facets.values())
    yield from (each.mark.file for each in records)


def _by_reference(catalogue: Catalogue, files: set[str]) -> Iterator[tuple[str, str]]:
    """Who refers to a changed source, and who to those, however far."""
    referring: dict[str, list[tuple[str, str]]] = defaultdict(list)
    for source in catalogue.sources.values():
        if source.reprint_of:
            referring[source.reprint_of].append((source.id, f"reprints {source.reprint_of}"))
        for cut in dict.fromkeys(each.same_cut_as for each in source.plates if each.same_cut_as):
            referring[cut.partition("/")[0]].append(
                (source.id, f"has a cut of {cut.partition('/')[0]} again")
            )
    reached = [PurePosixPath(each).stem for each in sorted(files) if each.startswith("sources/")]
    seen = set(reached)
    for one in reached:
        for other, reason in referring[one]:
            yield f"sources/{other}.yaml", reason
            if other not in seen:
                seen.add(other)
                reached.append(other)
    for board in catalogue.boards.values():
        gathered = dict.fromkeys(each.plate.partition("/")[0] for each in board.plates)
        yield from ((board.mark.file, f"gathers from {each}") for each in gathered if each in seen)


def _by_vocabulary(
    catalogue: Catalogue, files: set[str], before: Mapping[str, bytes]
) -> Iterator[tuple[str, str]]:
    """Who uses a changed term, and all of the vocabulary itself, whose entries refer to one another."""
    changed = [each for each in sorted(files) if each.startswith("vocabulary/")]
    if not changed:
        return
    for facet in catalogue.vocabulary.facets.values():
        if facet.mark.file not in files:
            yield facet.mark.file, "other terms changed"
    whole, terms = set(), set()
    for file in changed:
        name = PurePosixPath(file).stem
        now = (catalogue.folder / file).read_bytes() if (catalogue.folder / file).is_file() else b""
        differing = _differing(before.get(file, b""), now)
        if differing is None:
            whole.add(name)
        else:
            terms |= {f"{name}/{each}" for each in differing}
    records: list[Source | Board] = [*catalogue.sources.values(), *catalogue.boards.values()]
    for record in records:
        for used in dict.fromkeys(_used(catalogue, record)):
            if used.partition("/")[0] in whole or used in terms:
                yield record.mark.file, f"uses {used}"


def _differing(before: bytes, now: bytes) -> set[str] | None:
    """The ids of the terms that are not in both files alike; None where more than terms changed."""
    one, other = _terms(before), _terms(now)
    if one is None or other is None or one[0] != other[0]:
        return None
    ids = one[1].keys() | other[1].keys()
    return {each for each in ids if one[1].get(each) != other[1].get(each)}


def _terms(data: bytes) -> tuple[Any, dict[str, Any]] | None:
    root = read_yaml(data, "").root
    whole = plain_value(root) if root is not None else None
    if not isinstance(whole, dict) or not isinstance(whole.get("terms"), list):
        return None
    terms = whole.pop("terms")
    if not all(isinstance(each, dict) and "id" in each for each in terms):
        return None
    return whole, {str(each["id"]): each for each in terms}


def _used(catalogue: Catalogue, record: Source | Board) -> Iterator[str]:
    """What a record uses of the vocabulary: ``facet/term``, or ``facet/`` where it names no term."""
    described = record.plates if isinstance(record, Source) else (record,)
    for each in described:
        for garment in catalogue.vocabulary.broader_garments(each.garment):
            yield f"garment/{garment}"
        yield from (_of_feature(feature) for feature in each.features)


def _of_feature(feature: Feature) -> str:
    return feature.term or f"{feature.facet}/"


def _by_picture(catalogue: Catalogue, files: set[str]) -> Iterator[tuple[str, str]]:
    pictures = {each.removeprefix("images/") for each in files if each.startswith("images/")}
    for plate in catalogue.all_plates() if pictures else ():
        if plate.image and plate.image.file in pictures:
            yield f"sources/{plate.source}.yaml", f"shows {plate.image.file}"

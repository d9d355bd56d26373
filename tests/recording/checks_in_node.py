"""The checks of the page run under Node.js beside the checker's own: trees, contexts and what each says."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace
from pathlib import Path, PurePosixPath
from typing import Any

from inperiod.publishing.recording_data import recording_data
from inperiod.records.building import Builder
from inperiod.records.checks import CHECKS, boards, pictures, references, vocabulary
from inperiod.records.model import Catalogue
from inperiod.records.pictures import UnfitPicture, original_of
from inperiod.records.problems import Problem
from inperiod.records.shapes import shape_of
from inperiod.records.shaping import shape
from inperiod.records.yaml_reading import Items, Node, Scalar, Table, read_yaml
from parity import in_node

ASSETS = Path(__file__).parents[2] / "site" / "assets"

NOT_IN_THE_PAGE: Mapping[Any, str] = {
    vocabulary.facets_are_named_after_their_files: "concerns vocabulary files",
    vocabulary.terms_are_defined_once: "concerns vocabulary files",
    vocabulary.no_term_is_called_none: "concerns vocabulary files",
    vocabulary.broader_terms_exist: "concerns vocabulary files",
    vocabulary.broader_terms_make_no_circle: "concerns vocabulary files",
    vocabulary.related_terms_exist: "concerns vocabulary files",
    vocabulary.garments_applied_to_exist: "concerns vocabulary files",
    vocabulary.not_before_dates_have_a_source: "concerns vocabulary files",
    boards.supported_features_are_planned: "concerns boards",
    references.gathered_plates_exist: "concerns boards",
    pictures.pictures_are_sound: "asks what is in a picture file",
}
"""Checks the page cannot make, each with the reason. All others it makes; of pictures_show_nothing_withheld
it makes the part that concerns pictures of one source."""

IN_THE_PAGE = tuple(check for check in CHECKS if check not in NOT_IN_THE_PAGE)

RUNNER = """(() => {
  const revive = (node) =>
    node.is === "items" ? { ...node, items: node.items.map(revive) }
    : node.is === "table" ? { ...node, keys: new Map(node.keys), entries: new Map(node.entries.map(revived)) }
    : node;
  const revived = ([name, each]) => [name, revive(each)];
  const known = ({ pictures, ...rest }) => ({ ...rest, pictures: pictures && new Map(pictures) });
  const contexts = given.contexts.map(known);
  return given.files.map(({ file, tree, context }) => {
    const root = revive(tree);
    const found = checks.check(root, { ...contexts[context], file });
    return found.map((each) => ({ ...each, path: checks.place(each, root) }));
  });
})()"""


def said_by_the_page(node: str, files: Iterable[tuple[str, Node, int]], contexts: list[Any]) -> list[Any]:
    """The page's problems of each file, which is its name, its tree and which of the contexts it is in."""
    given = {
        "files": [{"file": file, "tree": as_json(tree), "context": at} for file, tree, at in files],
        "contexts": contexts,
    }
    found: list[Any] = in_node(node, RUNNER, {"checks": ASSETS / "record-checks.js"}, given)
    return found


def as_json(node: Node) -> dict[str, Any]:
    """A tree in the form the page's reader gives it, Maps as lists of pairs."""
    if isinstance(node, Scalar):
        own: dict[str, Any] = {"is": "scalar", "text": node.text, "plain": node.plain}
    elif isinstance(node, Items):
        own = {"is": "items", "items": [as_json(each) for each in node.items]}
    else:
        assert isinstance(node, Table)
        entries = [[name, as_json(each)] for name, each in node.entries.items()]
        own = {"is": "table", "entries": entries, "keys": [[name, at] for name, at in node.keys.items()]}
    return {**own, "line": node.line, "column": node.column}


def context_of(catalogue: Catalogue, unread: Iterable[str] = ()) -> dict[str, Any]:
    """What the page knows of a catalogue, with the pictures there are and their sizes."""
    known = dict(recording_data(catalogue))
    known["sources"] = {**known["sources"], **dict.fromkeys(unread)}
    return {**known, "pictures": sizes(catalogue)}


def sizes(catalogue: Catalogue) -> list[Any]:
    """Every picture of the folder: its name, and width and height where it can be opened."""
    home = catalogue.folder / "images"
    sizes: dict[str, list[int] | None] = {
        file.relative_to(home).as_posix(): None for file in home.rglob("*") if file.is_file()
    }
    for plate in catalogue.all_plates():
        name = str(PurePosixPath(plate.image.file)) if plate.image else ""
        if plate.image and name in sizes:
            try:
                original = original_of(catalogue, plate.image)
            except UnfitPicture:
                continue
            sizes[name] = [original.width, original.height] if original else None
    return list(sizes.items())


def said_by_the_checker(data: bytes, file: str, catalogue: Catalogue) -> tuple[Node | None, list[Problem]]:
    """The tree of a source file, and what the checker says of it in that catalogue, the reader apart."""
    root = read_yaml(data, file).root
    if root is None:
        return None, []
    fields, problems = shape(root, shape_of("source"), file)
    if fields is not None:
        builder = Builder(file, catalogue.settings.seasons)
        source = builder.source(fields)
        sources = {**catalogue.sources, source.id: source}
        in_order = {key: sources[key] for key in sorted(sources, key=lambda key: f"{key}.yaml")}
        whole = replace(catalogue, sources=in_order)
        problems += builder.problems
        problems += [each for check in IN_THE_PAGE for each in check(whole) if each.file == file]
    return root, sorted(set(problems))

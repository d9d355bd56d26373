"""Catalogues that say the same thing in every text field, made by walking the schemas: none is missed.

What a field cannot hold (an id, a date, one of a few words) it is given soundly; that such fields
refuse the rest is tried elsewhere.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

import yaml
from PIL import Image as Pillow

from inperiod.importing.writing import to_yaml
from inperiod.records.shapes import Shape, shape_of

SOUND: dict[str, Any] = {
    **{"accessed": "2026-01-02", "altered": "1950", "applies_to": "dress"},
    **{"base_address": "https://dress.example/x/", "build_date": "2026-01-02", "citation_style": "mla"},
    **{"cautions": "cords-children", "currency": "GBP", "date": "1926-05", "facet": "neckline"},
    **{"garment": "dress", "language": "en", "made": "1926", "on": "2026-01-02", "on_sale": "1926"},
    **{"photographed": "1926", "plate": "s-0/p1", "region": "0,0,3,3", "see_also": "garment/dress"},
    **{"target": "1926", "url": "https://museum.example/1", "width": "1 in", "worn": "1926"},
    **{"file": "plate.png", "outfit": "o"},
}
"""What fields hold that cannot hold any text; one that is not here is left out."""


def is_text(shape: Shape) -> bool:
    """Whether a field takes any line of text; a date is text too, and has a form of its own."""
    return (
        shape.kind == "text"
        and "EDTF" not in shape.expected
        and (shape.pattern is None or shape.pattern.fullmatch("<x onload='y'>") is not None)
    )


def text_fields(shape: Shape, path: tuple[str, ...] = ()) -> Iterator[tuple[str, ...]]:
    """The path of every field that takes any text; a list is ``*``, either of two forms both."""
    if is_text(shape):
        yield path
    for name, inner in shape.fields.items():
        yield from text_fields(inner, (*path, name))
    for inner in (shape.item, shape.scalar, shape.table):
        if inner is not None:
            yield from text_fields(inner, (*path, "*") if inner is shape.item else path)


def filled(shape: Shape, payload: str, given: dict[str, Any], name: str = "") -> Any:
    """A value of that shape with the payload wherever any text can stand. ``given`` goes before all else."""
    if name in given:
        return given[name]
    if name != "width" and is_text(shape):
        return payload
    match shape.kind:
        case "fields":
            if not shape.fields or (shape.open and set(shape.fields) == {"kind"}):
                words = {payload: payload, "what": payload, "note": payload, "at": payload, "buy": payload}
                return {**words, **({"kind": "frill"} if shape.fields else {})}
            made = {each: filled(inner, payload, given, each) for each, inner in shape.fields.items()}
            for _, forbidden in shape.one_of[:1]:
                made = {each: value for each, value in made.items() if each not in forbidden}
            return {each: value for each, value in made.items() if value is not None}
        case "list":
            assert shape.item is not None
            entry = filled(shape.item, payload, given, name)
            short = shape.item.scalar is not None and is_text(shape.item.scalar)
            entries = [entry, payload] if short else [entry]
            return [each for each in entries if each is not None] * max(1, shape.fewest)
        case "either":
            assert shape.table is not None
            return filled(shape.table, payload, given)
        case "word":
            return shape.words[0]
        case "flag" | "true":
            return True
        case "integer":
            return max(shape.low or 0, 1900 if name == "decades" else 1)
    return SOUND.get(name)


def source(payload: str, number: int) -> dict[str, Any]:
    term = f"facet-{number}/term-{number}"
    given = {
        "id": "p1",
        "term": term,
        "feature": term,
        "outfit": None,
        "decades": None,
        "publish": True,
        "date_basis": "printed",
    }
    made: dict[str, Any] = filled(shape_of("source"), payload, given)
    plate = made["plates"][0]
    plate["features"].append("facet-0/term-0")
    return made


def facet(payload: str, number: int) -> dict[str, Any]:
    given = {
        "id": f"term-{number}",
        "facet": f"facet-{number}",
        "applies_to": ["dress"],
        "exclusive": False,
        "draw": {},
    }
    made: dict[str, Any] = filled(shape_of("vocabulary"), payload, given)
    milestone = {"date": "1900", "event": payload, "source": payload, "note": payload}
    made["terms"][0] |= {"not_before": milestone, "in_dress_from": milestone}
    return made


def board(payload: str, number: int) -> dict[str, Any]:
    term = f"facet-{number}/term-{number}"
    given = {"plate": f"s-{number}/p1", "supports": term, "feature": term, "term": term, "publish": True}
    return filled(shape_of("board"), payload, given)  # type: ignore[no-any-return]


def settings(payload: str) -> dict[str, Any]:
    given = {"decades": [1890, 1950], "grades": "A"}
    return filled(shape_of("settings"), payload, given)  # type: ignore[no-any-return]


def write(folder: Path, payloads: Sequence[str], of_settings: str = "A catalogue") -> Path:
    """A whole catalogue: for each payload a source with a plate, a facet with a term, and a board."""
    for part in ("sources", "vocabulary", "boards", "images"):
        (folder / part).mkdir(parents=True, exist_ok=True)
    Pillow.new("RGB", (8, 8), "grey").save(folder / "images" / "plate.png")
    _file(folder / "inperiod.yaml", settings(of_settings))
    garments = [{"id": "dress", "label": "Dress", "definition": "A dress."}]
    _file(
        folder / "vocabulary" / "garment.yaml",
        {"facet": "garment", "label": "Garment", "exclusive": True, "terms": garments},
    )
    for number, payload in enumerate(payloads):
        _file(folder / "sources" / f"s-{number}.yaml", source(payload, number))
        _file(folder / "vocabulary" / f"facet-{number}.yaml", facet(payload, number))
        # As a browser writes it: its reader takes no name that is longer than a line.
        (folder / "boards" / f"b-{number}.yaml").write_text(to_yaml(board(payload, number)), encoding="utf-8")
    return folder


def _file(path: Path, record: dict[str, Any]) -> None:
    path.write_text(
        yaml.safe_dump(record, allow_unicode=False, sort_keys=False, width=1000), encoding="utf-8"
    )

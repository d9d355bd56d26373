"""IIIF manifests (Presentation API 3.0): a source with its plates as canvases, their regions and rights.

A manifest names everything by an address, so there are none until the catalogue has a ``base_address``.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from typing import Any

from inperiod.citing import cite_source, dating_line
from inperiod.dating import iso_day
from inperiod.publishing import paths
from inperiod.publishing.machine_tags import plate_title
from inperiod.publishing.pictures import Picture, picture_of
from inperiod.publishing.prose import site_root
from inperiod.publishing.scans import Size
from inperiod.records.model import Catalogue, Plate, Source

CONTEXT = "http://iiif.io/api/presentation/3/context.json"

# The size of a canvas whose plate has no picture; only its proportions matter.
EMPTY_CANVAS = (600, 800)


def manifest_files(catalogue: Catalogue) -> Iterator[tuple[str, str]]:
    """A manifest for every source, as path from the root of the site and text."""
    for source in catalogue.sources.values():
        yield from source_manifest(catalogue, source)


def source_manifest(catalogue: Catalogue, source: Source) -> Iterator[tuple[str, str]]:
    """The manifest of one source; nothing while the catalogue has no address."""
    root = site_root(catalogue.settings)
    if root:
        text = json.dumps(manifest(catalogue, source, root), ensure_ascii=False, indent=1)
        yield manifest_path(source.id), text + "\n"


def manifest_path(source: str) -> str:
    """Where the source's manifest lies, from the root of the site."""
    return f"iiif/{source}.json"


def manifest(catalogue: Catalogue, source: Source, root: str) -> dict[str, Any]:
    """The manifest of one source; ``root`` is the address of the site with a slash at its end."""
    here = root + manifest_path(source.id)
    made: dict[str, Any] = {
        "@context": CONTEXT,
        "id": here,
        "type": "Manifest",
        "label": _text(source.title, source.language),
        "metadata": [
            {"label": _text(label, "en"), "value": _text(value)}
            for label, value in _metadata(source)
            if value
        ],
        "requiredStatement": {
            "label": _text("Cite as", "en"),
            "value": _text(cite_source(catalogue, source.id), "en"),
        },
        "homepage": [
            {
                "id": root + paths.source_path(source.id),
                "type": "Text",
                "label": _text(source.title, source.language),
                "format": "text/html",
            }
        ],
        "items": [_canvas(catalogue, plate, root) for plate in source.plates],
    }
    if catalogue.settings.demonstration:
        made["summary"] = _text(catalogue.settings.demonstration, "en")
    rights = iiif_rights(source.rights)
    if rights:
        made["rights"] = rights
    earliest = source.date.span.earliest if source.date else None
    if earliest is not None:
        made["navDate"] = f"{iso_day(earliest)}T00:00:00Z"
    return made


def _metadata(source: Source) -> Iterator[tuple[str, str | None]]:
    yield "Date", dating_line(source)
    yield "Date (EDTF)", source.date.text if source.date else None
    yield "Publisher", source.publisher.name
    yield "Place", source.publisher.place
    yield "Held by", source.held_by.name
    yield "Shelfmark", source.held_by.accession or source.held_by.shelfmark


def _canvas(catalogue: Catalogue, plate: Plate, root: str) -> dict[str, Any]:
    address = f"{root}iiif/{plate.key}"
    picture = picture_of(catalogue, plate)
    width, height = (picture.figure.large.width, picture.figure.large.height) if picture else EMPTY_CANVAS
    canvas: dict[str, Any] = {
        "id": f"{address}/canvas",
        "type": "Canvas",
        "label": _text(plate_title(catalogue, plate), "en"),
        "width": width,
        "height": height,
        "homepage": [
            {
                "id": root + paths.plate_path(plate.key),
                "type": "Text",
                "label": _text(plate_title(catalogue, plate), "en"),
                "format": "text/html",
            }
        ],
        "items": [_painting(picture, address, root)] if picture else [],
    }
    if picture:
        canvas["thumbnail"] = [_image(picture.figure.small, root)]
    if plate.caption:
        canvas["summary"] = _text(plate.caption, catalogue.sources[plate.source].language)
    rights = iiif_rights(plate.image.rights if plate.image else None)
    if rights:
        canvas["rights"] = rights
    return canvas


def _painting(picture: Picture, address: str, root: str) -> dict[str, Any]:
    """The annotation page that puts the plate's picture on the canvas: its region alone where it has one."""
    return {
        "id": f"{address}/page",
        "type": "AnnotationPage",
        "items": [
            {
                "id": f"{address}/painting",
                "type": "Annotation",
                "motivation": "painting",
                "body": _image(picture.figure.large, root),
                "target": f"{address}/canvas",
            }
        ],
    }


def _image(size: Size, root: str) -> dict[str, Any]:
    """A copy of a picture as IIIF describes a plain image."""
    return {
        "id": root + size.jpg,
        "type": "Image",
        "format": "image/jpeg",
        "width": size.width,
        "height": size.height,
    }


def iiif_rights(address: str | None) -> str | None:
    """The address as IIIF wants it: rightsstatements.org or Creative Commons, in its ``http`` form."""
    known = re.match(r"https?://((?:www\.)?(?:rightsstatements\.org|creativecommons\.org)/.+)", address or "")
    return f"http://{known[1].removeprefix('www.')}" if known else None


def _text(value: str | None, language: str | None = None) -> dict[str, list[str]]:
    return {language or "none": [value or ""]}

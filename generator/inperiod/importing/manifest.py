"""A IIIF manifest (Presentation API 2 or 3) into one source file, with a plate stub for each canvas.

Only a file is read; nothing is fetched. What the manifest does not say is left for a person to say.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from inperiod.dating import Unreadable, read_phrase
from inperiod.importing.composing import safe_id
from inperiod.importing.ledger import Fate, Ledger
from inperiod.importing.table_import import CannotImport
from inperiod.importing.writing import source_yaml
from inperiod.records.reading import read_source
from inperiod.records.shapes import part

LARGEST = 20_000_000
DATE_LABELS = frozenset(
    {"date", "dated", "date of publication", "published", "publication date", "date issued"}
)
RIGHTS = re.compile(r"https?://(?:www\.)?(?:rightsstatements\.org|creativecommons\.org)/\S+")


@dataclass(frozen=True, slots=True)
class ManifestReport:
    """What was made of a manifest: the source's id, its file, what became of the file, and what to see to."""

    source: str
    file: str
    fate: Fate
    plates: int
    remarks: tuple[str, ...]
    dry_run: bool


def is_manifest(file: Path) -> bool:
    """Whether a file is to be read as a manifest: its name ends in ``.json``."""
    return file.suffix.lower() == ".json"


def import_manifest(file: Path, into: Path, *, dry_run: bool = False) -> ManifestReport:
    """Scaffold a source file from a manifest into the catalogue folder ``into``.

    A source file edited by hand is left alone; running it twice changes nothing. Raises ``CannotImport``
    where the file is no manifest of version 2 or 3, or the folder is unusable.
    """
    if not into.is_dir():
        raise CannotImport(f"there is no folder {into}; make one with: inperiod new {into}")
    if not (into / "sources").resolve().is_relative_to(into.resolve()):
        raise CannotImport(f"{into / 'sources'} leads out of the folder.")
    manifest = _read(file)
    source, remarks = _source(manifest, file)
    identity = safe_id(source["title"]) or safe_id(file.stem)
    if not identity:
        raise CannotImport(f"no id can be made from the title “{source['title']}” or the name of the file.")
    name = f"sources/{identity}.yaml"
    text = source_yaml(source)
    _, problems = read_source(text.encode("utf-8", errors="replace"), name, "northern", {})
    if faults := [each.message for each in problems if each.severity == "error"]:
        raise CannotImport(f"{file} holds what no record can: {' '.join(faults[:3])}")
    ledger = Ledger.of(into)
    fate = ledger.fate(name, text)
    if fate in ("new", "changed") and not dry_run:
        ledger.write(name, text)
        ledger.save()
    return ManifestReport(identity, name, fate, len(source.get("plates", ())), tuple(remarks), dry_run)


def _read(file: Path) -> dict[str, Any]:
    try:
        if file.stat().st_size > LARGEST:
            raise CannotImport(f"{file} is larger than {LARGEST // 1_000_000} MB; a manifest never is.")
        found = json.loads(file.read_text(encoding="utf-8-sig"))
    except OSError as error:
        raise CannotImport(f"{file} cannot be read: {error.strerror}.") from None
    except (ValueError, RecursionError) as error:
        raise CannotImport(f"{file} is not JSON: {error}.") from None
    if not isinstance(found, dict) or _kind(found) not in ("Manifest", "sc:Manifest"):
        raise CannotImport(
            f"{file} is not a IIIF manifest: expected type Manifest (version 3) or sc:Manifest (2)."
        )
    return found


def _kind(thing: dict[str, Any]) -> str:
    return str(thing.get("type") or thing.get("@type") or "")


def _source(manifest: dict[str, Any], file: Path) -> tuple[dict[str, Any], list[str]]:
    remarks: list[str] = []
    known = dict(_metadata(manifest))
    source: dict[str, Any] = {"title": text_of(manifest.get("label")) or file.stem, "kind": "other"}
    remarks.append("kind is “other”: say what it is.")
    printed = next((known[label] for label in known if label in DATE_LABELS), "")
    if printed:
        source["date_printed"] = printed
        try:
            source["date"] = read_phrase(printed).edtf
        except Unreadable as error:
            remarks.append(f"the date “{printed}” cannot be read ({error}): write it as EDTF.")
    else:
        remarks.append("no date is given.")
    remarks.append("say in date_basis what the date rests on.")
    source["language"] = (
        known.get("language") if re.fullmatch(r"[a-z]{2,3}", known.get("language", "")) else None
    )
    source["publisher"] = _filled({"name": known.get("publisher")})
    source["held_by"] = _filled({"name": _holder(manifest), "url": _address(manifest)})
    rights = RIGHTS.search(str(manifest.get("rights") or manifest.get("license") or ""))
    source["rights"] = rights[0] if rights else None
    if not rights:
        remarks.append("no rights statement is given.")
    source["note"] = f"Begun from the IIIF manifest {_id(manifest)}" if _id(manifest) else None
    source["plates"] = [_plate(number, canvas) for number, canvas in enumerate(_canvases(manifest), start=1)]
    if not source["plates"]:
        remarks.append("the manifest has no canvas, so there is no plate.")
    return _filled(source), remarks


def _plate(number: int, canvas: dict[str, Any]) -> dict[str, Any]:
    """A stub: where it is and which picture it is; garment and features are for a person to see."""
    label = " ".join(text_of(canvas.get("label")).split())[:120]
    page = re.fullmatch(
        r"(?:p\.?|pp\.?|page|seite|pagina|[Ss]\.)?\s*([0-9ivxlcdm]+[rv]?)", label, re.IGNORECASE
    )
    image = _image(canvas)
    seen = f"The picture: {image}" if image else None
    note = " ".join(part for part in (None if page else label, seen) if part)
    return _filled(
        {
            "id": f"c{number}",
            "locator": {"page": page[1]} if page else None,
            "garment": "other",
            "caption": " ".join(text_of(canvas.get("summary") or canvas.get("description")).split()),
            "note": note,
        }
    )


def _canvases(manifest: dict[str, Any]) -> Iterator[dict[str, Any]]:
    items = manifest.get("items")
    if items is None:
        items = [
            canvas
            for sequence in _list(manifest.get("sequences"))[:1]
            if isinstance(sequence, dict)
            for canvas in _list(sequence.get("canvases"))
        ]
    for item in _list(items):
        if isinstance(item, dict) and _kind(item) in ("Canvas", "sc:Canvas"):
            yield item


def _image(canvas: dict[str, Any]) -> str:
    """The address of the canvas's first picture, "" where there is none."""
    for holder in _list(canvas.get("images")):  # version 2
        if isinstance(holder, dict):
            return _web(_id(holder.get("resource")))
    for page in _list(canvas.get("items")):  # version 3
        for annotation in _list(page.get("items")) if isinstance(page, dict) else []:
            if isinstance(annotation, dict):
                body = annotation.get("body")
                inner = body.get("source") if isinstance(body, dict) and "source" in body else body
                return _web(inner if isinstance(inner, str) else _id(inner))
    return ""


def _metadata(manifest: dict[str, Any]) -> Iterator[tuple[str, str]]:
    for entry in _list(manifest.get("metadata")):
        if isinstance(entry, dict):
            yield text_of(entry.get("label")).casefold().strip(" :"), text_of(entry.get("value")).strip()


def _holder(manifest: dict[str, Any]) -> str:
    for provider in _list(manifest.get("provider")):
        if isinstance(provider, dict) and text_of(provider.get("label")):
            return text_of(provider["label"])
    return text_of(manifest.get("attribution"))[:200]


def _address(manifest: dict[str, Any]) -> str:
    for name in ("homepage", "related"):
        for entry in _list(manifest.get(name)):
            address = _web(entry if isinstance(entry, str) else _id(entry))
            if address:
                return address
    return ""


def text_of(value: object) -> str:
    """The words of a label or value of either version: text, language map or list, tags taken out."""
    if isinstance(value, str):
        return re.sub(r"<[^<>]{0,200}>", "", value).strip()
    if isinstance(value, list):
        return "; ".join(part for part in (text_of(each) for each in value) if part)
    if isinstance(value, dict):
        if "@value" in value:
            return text_of(value["@value"])
        preferred = value.get("en") or value.get("none") or next(iter(value.values()), "")
        return text_of(preferred)
    return ""


def _id(thing: object) -> str:
    return str(thing.get("id") or thing.get("@id") or "") if isinstance(thing, dict) else ""


def _web(address: str) -> str:
    return address if (form := part("address").pattern) and form.fullmatch(address) else ""


def _list(value: object) -> list[Any]:
    return value if isinstance(value, list) else [] if value is None else [value]


def _filled(record: dict[str, Any]) -> dict[str, Any]:
    return {key: value for key, value in record.items() if value}

"""What the browser's side is given: the facts, the vocabulary and the plates, as plain data scripts.

A data script calls ``InPeriod.receive(name, value)``, because a page opened from a folder may load a
script but may not fetch a file.
"""

from __future__ import annotations

import json
from collections.abc import Mapping
from typing import Any

from inperiod.citing import cite
from inperiod.evidence import Facts, facts_to_json
from inperiod.publishing import words
from inperiod.publishing.embedded import json_in_script
from inperiod.publishing.flats import FlatPicture, shown_picture
from inperiod.publishing.recording_data import recording_data
from inperiod.publishing.wording import LEADS, place_name
from inperiod.records.model import Catalogue, Facet, Plate, Term

CAPTIONS_ON_PAGE = 1500
"""Above this many plates the page of plates no longer carries every caption itself; a data script does."""


def data_script(name: str, value: Any) -> str:
    """A script that hands ``value`` over under ``name``; no text in it can end the script or a line."""
    return f"InPeriod.receive({json.dumps(name)},{json_in_script(value)});\n"


def browser_files(catalogue: Catalogue, facts: Facts) -> dict[str, str]:
    """The data scripts by their path in the site. The catalogue holds what may be published."""
    files = {
        "data/facts.js": data_script("facts", facts_to_json(facts)),
        "data/vocabulary.js": data_script("vocabulary", vocabulary_data(catalogue)),
        "data/plates.js": data_script("plates", plates_data(catalogue, facts)),
        "data/recording.js": data_script("recording", recording_data(catalogue)),
    }
    if has_captions_apart(catalogue):
        captions = [said_of(catalogue.plates[key]) for key in facts.keys]
        files["data/captions.js"] = data_script("captions", captions)
    return files


def has_captions_apart(catalogue: Catalogue) -> bool:
    """Whether the catalogue is so large that captions are given as data and not on the page of plates."""
    return len(catalogue.plates) > CAPTIONS_ON_PAGE


def said_of(plate: Plate) -> str:
    """All that is written about a plate: caption, translation and note."""
    return " ".join(part.strip() for part in (plate.caption, plate.translation, plate.note) if part)


def vocabulary_data(catalogue: Catalogue) -> Mapping[str, Any]:
    """What the facts do not hold of facets and terms: other names, what they apply to, what excludes what;
    and the words answers are put in."""
    vocabulary = catalogue.vocabulary
    return {
        "facets": [_facet(facet) for facet in vocabulary.facets.values() if facet.id != "garment"],
        "garments": {term.id: _names(term) for term in vocabulary.garments.values() if term.names},
        "kinds": {kind: one for kind, (one, _) in words.KINDS.items()},
        "leads": LEADS,
        "grades": catalogue.settings.grades,
        "places": places_of(catalogue),
    }


def places_of(catalogue: Catalogue) -> dict[str, str]:
    """Every place a source names: the key the evidence knows it by, and its name."""
    found: dict[str, str] = {}
    for source in catalogue.sources.values():
        for part in (source.market or source.publisher.place or "").split(","):
            if part.strip():
                found.setdefault(part.strip().casefold(), place_name(part.strip()))
    return dict(sorted(found.items(), key=lambda item: item[1].casefold()))


def _facet(facet: Facet) -> dict[str, Any]:
    names = {term.id: _names(term) for term in facet.terms if term.names}
    applies = {term.id: list(term.applies_to) for term in facet.terms if term.applies_to}
    fields = {
        "id": facet.id,
        "exclusive": facet.exclusive,
        "applies": list(facet.applies_to),
        "names": names,
        "termApplies": applies,
    }
    return {key: value for key, value in fields.items() if value or key == "id"}


def _names(term: Term) -> list[str]:
    return list(dict.fromkeys(name.name for name in term.names))


def plates_data(catalogue: Catalogue, facts: Facts) -> Mapping[str, Any]:
    """What the facts do not hold of plates. ``when`` follows the facts' documents; ``rows`` follow their
    plates: where in the source, the middle of the citation, the picture (of a flat its size alone; its path
    follows from the key). A source gives its title and what the citations of all its plates begin and end
    with."""
    own: dict[str, list[str]] = {}
    for key in facts.keys:
        own.setdefault(catalogue.plates[key].source, []).append(key)
    sources: dict[str, list[str]] = {}
    middles: dict[str, str] = {}
    for source, keys in own.items():
        beginning, rests, end = _shared([cite(catalogue, key) for key in keys])
        sources[source] = [catalogue.sources[source].title, beginning, end]
        middles.update(zip(keys, rests, strict=True))
    first = {
        document: key for key, (document, _) in reversed(list(zip(facts.keys, facts.plates, strict=True)))
    }
    when = [
        words.when(catalogue.dated(catalogue.plates[first[i]])) if i in first else ""
        for i in range(len(facts.documents))
    ]
    rows = []
    for key in facts.keys:
        plate = catalogue.plates[key]
        row: list[Any] = [words.short_place(plate.locator), middles[key]]
        picture = shown_picture(catalogue, plate)
        if isinstance(picture, FlatPicture):
            row.append([picture.width, picture.height])
        elif picture:
            row.append([picture.path, picture.alt, picture.width, picture.height])
        rows.append(row)
    return {"sources": sources, "when": when, "rows": rows}


def _common(texts: list[str]) -> str:
    """The longest text all of them begin with."""
    least, most = min(texts), max(texts)
    length = next((i for i, sign in enumerate(least) if sign != most[i : i + 1]), len(least))
    return least[:length]


def _shared(texts: list[str]) -> tuple[str, list[str], str]:
    """What all texts begin with, what is their own, and what all end with."""
    beginning = _common(texts)
    rests = [text[len(beginning) :] for text in texts]
    end = _common([rest[::-1] for rest in rests])[::-1]
    return beginning, [rest[: len(rest) - len(end)] for rest in rests], end

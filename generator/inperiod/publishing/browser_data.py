"""What the browser's side is given: the facts, the vocabulary and the plates, as plain data scripts.

A data script calls ``InPeriod.receive(name, value)``, because a page opened from a folder may load a
script but may not fetch a file.
"""

from __future__ import annotations

import json
import re
import unicodedata
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import pairwise
from math import inf
from typing import Any

from inperiod.citing import cite
from inperiod.dating import lexicon
from inperiod.evidence import Facts
from inperiod.evidence.exchange import columns_to_json, index_to_json, packed
from inperiod.evidence.facts import Days
from inperiod.publishing import words
from inperiod.publishing.embedded import json_in_script
from inperiod.publishing.flats import FlatPicture, shown_picture
from inperiod.publishing.recording_data import recording_data
from inperiod.publishing.wording import LEADS, place_name
from inperiod.records.model import Catalogue, Facet, Plate, Term

CAPTIONS_ON_PAGE = 1500
"""Above this many plates the page of plates no longer carries every caption itself; a data script does."""

PLATES_IN_BLOCK = 256


def data_script(name: str, value: Any) -> str:
    """A script that hands ``value`` over under ``name``; no text in it can end the script or a line."""
    return f"InPeriod.receive({json.dumps(name)},{json_in_script(value)});\n"


def browser_files(catalogue: Catalogue, facts: Facts) -> dict[str, str]:
    """The data scripts by their path in the site. The catalogue holds what may be published.

    A page loads the index, then only what its question needs: the plates of one garment and the narrower
    ones; what is said of the plates it shows, which lie together by their dates; and the words of a letter
    that is typed. A small catalogue has all plates in one, and its captions on the page of plates.
    """
    return {path: text for part in browser_parts(catalogue, facts) for path, text in part.make()}


@dataclass(frozen=True, slots=True)
class Part:
    """Data scripts that change together: what they are made from (see ``made_from.Ingredients.of``), and what
    gives their paths and texts."""

    name: str
    made_from: tuple[str, ...]
    make: Callable[[], Iterable[tuple[str, str]]]


def browser_parts(catalogue: Catalogue, facts: Facts) -> Iterator[Part]:
    """The same in parts: what is of all plates, and what is said of the plates of each block."""
    blocks = blocks_of(facts)
    yield Part("of all", (), partial(_of_all, catalogue, facts, blocks))
    documents: dict[int, list[int]] = defaultdict(list)
    for document, block in enumerate(blocks):
        documents[block].append(document)
    plates: dict[int, list[str]] = defaultdict(list)
    for key, (document, _) in zip(facts.keys, facts.plates, strict=True):
        plates[document].append(key)
    apart = "apart" if has_captions_apart(catalogue) else "on the page"
    for block, held in documents.items():
        made_from = [word for each in held for word in (str(each), facts.documents[each].source)]
        keys = {each: plates[each] for each in held if each in plates}
        if keys:
            make = partial(_of_block, catalogue, block, keys)
            yield Part(f"block {block}", ("block", apart, *made_from), make)


def _of_all(catalogue: Catalogue, facts: Facts, blocks: list[int]) -> Iterator[tuple[str, str]]:
    apart = has_captions_apart(catalogue)
    letters = words_by_letter(catalogue, facts) if apart else {}
    every = {**columns_to_json(facts, range(len(facts.plates))), **_names_of_every(catalogue, facts, letters)}
    files: dict[str, Mapping[Any, Any]] = {
        "index": {**index_to_json(facts), "blocks": packed(blocks), "apart": int(apart)},
        "every": every,
        "vocabulary": vocabulary_data(catalogue),
        "dates": lexicon.as_data(),
        "recording": recording_data(catalogue),
    }
    if apart:
        for garment, numbers in facts.plates_of.items():
            files[f"garment/{facts.garments[garment].id}"] = columns_to_json(facts, numbers)
    for letter, held in letters.items():
        files[f"words/{ord(letter)}"] = held
    return _scripts(files)


def _of_block(
    catalogue: Catalogue, block: int, plates: Mapping[int, Sequence[str]]
) -> Iterator[tuple[str, str]]:
    files = {f"rows/{block}": plates_data(catalogue, plates)}
    if has_captions_apart(catalogue):
        files[f"said/{block}"] = captions_data(catalogue, plates)
    return _scripts(files)


def _scripts(files: Mapping[str, Mapping[Any, Any]]) -> Iterator[tuple[str, str]]:
    for name, value in files.items():
        yield f"data/{name}.js", data_script(name, value)


def has_captions_apart(catalogue: Catalogue) -> bool:
    """Whether the catalogue is so large that captions are given as data and not on the page of plates."""
    return len(catalogue.plates) > CAPTIONS_ON_PAGE


def blocks_of(facts: Facts) -> list[int]:
    """By document: the block in which what is said of its plates lies. Blocks follow the dates."""
    order = sorted(range(len(facts.documents)), key=lambda at: (_middle(facts.documents[at].days), at))
    blocks = [0] * len(order)
    block = held = 0
    for document in order:
        count = len(facts.documents[document].plates)
        if held and held + count > PLATES_IN_BLOCK:
            block, held = block + 1, 0
        blocks[document] = block
        held += count
    return blocks


def _middle(days: Days | None) -> float:
    ends = [day for day in days or () if day is not None]
    return sum(ends) / len(ends) if ends else inf


def _names_of_every(catalogue: Catalogue, facts: Facts, letters: Iterable[str]) -> dict[str, Any]:
    """What the page of plates needs beside the plates: the names of what it sifts by, the place of each
    document were they ordered by title, and the letters its words begin with."""
    titles = {source: fold(catalogue.sources[source].title) for source in catalogue.sources}
    ranks = {title: rank for rank, title in enumerate(sorted(set(titles.values())))}
    return {
        "titles": packed(ranks[titles[document.source]] for document in facts.documents),
        "kinds": {kind: one for kind, (one, _) in words.KINDS.items()},
        "places": places_of(catalogue),
        "who": words.WORN_BY,
        "grades": words.GRADES_IN_SHORT,
        "letters": "".join(letters),
    }


def words_by_letter(catalogue: Catalogue, facts: Facts) -> dict[str, dict[str, str]]:
    """By first letter, by word: the numbers of the plates whose title, place in it, caption, translation or
    note has it, each less the one before, packed. Words are folded as the browser folds what is typed."""
    found: dict[str, list[int]] = defaultdict(list)
    folded = {key: fold(source.title) for key, source in catalogue.sources.items()}
    for number, key in enumerate(facts.keys):
        plate = catalogue.plates[key]
        own = fold(f"{words.short_place(plate.locator)} {said_of(plate)}")
        for word in {*folded[plate.source].split(), *own.split()}:
            found[word].append(number)
    letters: dict[str, dict[str, str]] = defaultdict(dict)
    for word in sorted(found):
        numbers = found[word]
        steps = (each - before for before, each in pairwise([0, *numbers]))
        letters[word[0]][word] = packed(steps)
    return letters


_LIGATURES = str.maketrans(
    {"æ": "ae", "œ": "oe", "ß": "ss", "ø": "o", "ł": "l", "đ": "d", "ð": "d", "þ": "th"}
)
_MARKS = re.compile("['’]")
_OTHER = re.compile("[\x00-/:-@\\[-`{-\x7f]+")


def fold(text: str) -> str:
    """Lower case, without diacritics, every other sign a space: the same as ``fold`` in ``base.js``."""
    plain = text.lower()
    if not plain.isascii():
        plain = unicodedata.normalize("NFD", plain)
        plain = "".join(sign for sign in plain if unicodedata.category(sign)[0] != "M").translate(_LIGATURES)
        plain = "".join(
            sign if sign in "'’" or unicodedata.category(sign)[0] in "LN" else " " for sign in plain
        )
    return " ".join(_OTHER.sub(" ", _MARKS.sub("", plain)).split())


def said_of(plate: Plate) -> str:
    """All that is written about a plate: caption, translation and note."""
    return " ".join(part.strip() for part in (plate.caption, plate.translation, plate.note) if part)


def vocabulary_data(catalogue: Catalogue) -> Mapping[str, Any]:
    """What the facts do not hold of facets and terms: other names, what they apply to, what excludes what,
    what calls for a caution; and the words answers are put in."""
    vocabulary = catalogue.vocabulary
    return {
        "facets": [_facet(facet) for facet in vocabulary.facets.values() if facet.id != "garment"],
        "garments": {term.id: _names(term) for term in vocabulary.garments.values() if term.names},
        "leads": LEADS,
        "grades": catalogue.settings.grades,
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
        "cautions": {term.id: list(term.cautions) for term in facet.terms if term.cautions},
    }
    return {key: value for key, value in fields.items() if value or key == "id"}


def _names(term: Term) -> list[str]:
    return list(dict.fromkeys(name.name for name in term.names))


def captions_data(catalogue: Catalogue, plates: Mapping[int, Sequence[str]]) -> dict[int, list[str]]:
    """By document: what is said of each of its plates, which are given by their keys."""
    return {document: [said_of(catalogue.plates[key]) for key in keys] for document, keys in plates.items()}


def plates_data(catalogue: Catalogue, plates: Mapping[int, Sequence[str]]) -> dict[int, list[Any]]:
    """What the facts do not hold of plates, by document: the title of its source, what the citations of all
    its plates begin and end with, its date in words, and for each plate where in the source it is, the
    middle of the citation, and the picture (of a flat its size alone; its path follows from the key)."""
    found: dict[int, list[Any]] = {}
    for document, keys in plates.items():
        own = [catalogue.plates[key] for key in keys]
        beginning, middles, end = _shared([cite(catalogue, key) for key in keys])
        when = words.when(catalogue.dated(own[0]))
        rows = [_row(catalogue, plate, middle) for plate, middle in zip(own, middles, strict=True)]
        found[document] = [catalogue.sources[own[0].source].title, beginning, end, when, rows]
    return found


def _row(catalogue: Catalogue, plate: Plate, middle: str) -> list[Any]:
    row: list[Any] = [words.short_place(plate.locator), middle]
    picture = shown_picture(catalogue, plate)
    if isinstance(picture, FlatPicture):
        row.append([picture.width, picture.height])
    elif picture:
        row.append([picture.path, picture.alt, picture.width, picture.height])
    return row


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

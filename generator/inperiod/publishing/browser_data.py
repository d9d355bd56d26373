"""What the browser's side is given: the facts, the vocabulary and the plates, as plain data scripts.

A data script calls ``InPeriod.receive(name, value)``, because a page opened from a folder may load a
script but may not fetch a file.
"""

from __future__ import annotations

import json
from collections import defaultdict
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from functools import partial
from itertools import pairwise
from typing import Any

from inperiod.citing import cite
from inperiod.dating import lexicon
from inperiod.evidence import Facts
from inperiod.evidence.exchange import columns_to_json, index_to_json, packed
from inperiod.publishing import words
from inperiod.publishing.embedded import json_in_script
from inperiod.publishing.flats import FlatPicture, shown_picture
from inperiod.publishing.found_by import fold, said_of
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.recording_data import recording_data
from inperiod.publishing.wording import LEADS, place_name
from inperiod.records.model import Catalogue, Facet, Plate, Term

CAPTIONS_ON_PAGE = 1500
"""Above this many plates the page of plates no longer carries every caption itself; a data script does."""

PLATES_IN_BLOCK = 256


def data_script(name: str, value: Any) -> str:
    """A script that hands ``value`` over under ``name``; no text in it can end the script or a line."""
    return f"InPeriod.receive({json.dumps(name)},{json_in_script(value)});\n"


@dataclass(frozen=True, slots=True)
class Part:
    """Data scripts that change together: what they are made from (see ``made_from.Ingredients.of``), and what
    gives their paths and texts."""

    name: str
    made_from: tuple[str, ...]
    make: Callable[[], Iterable[tuple[str, str]]]


def browser_parts(look: Lookup) -> Iterator[Part]:
    """The data scripts by their path in the site, in parts, but for ``words_files``. The catalogue holds what
    may be published.

    A page loads the index, then only what its question needs: the plates of one garment and the narrower
    ones; what is said of the plates it shows, which lie together by their dates; and the words of a letter
    that is typed. A small catalogue has all plates in one, and its captions on the page of plates.
    """
    catalogue = look.catalogue
    documents = documents_of(look)
    blocks = blocks_of(documents)
    apart = has_captions_apart(catalogue)
    letters = "".join(sorted({sign for each in look.outlines.values() for sign in each.letters}))
    every = letters if apart else ""
    yield Part("of evidence", ("lists", every), partial(_of_evidence, look, blocks, every))
    yield Part("vocabulary", ("base",), partial(_of_vocabulary, catalogue))
    yield Part("recording", (), lambda: _scripts({"recording": recording_data(catalogue)}))
    for block, held in enumerate(blocks):
        numbers = sorted(held)
        made_from = [word for each in numbers for word in (str(each), documents[each].source)]
        plates = {each: documents[each].keys for each in numbers if documents[each].plates}
        if plates:
            make = partial(_of_block, catalogue, block, plates)
            yield Part(f"block {block}", ("block", "apart" if apart else "on the page", *made_from), make)


def _of_evidence(look: Lookup, blocks: list[list[int]], letters: str) -> Iterator[tuple[str, str]]:
    catalogue, facts = look.catalogue, look.facts
    apart = has_captions_apart(catalogue)
    files: dict[str, Mapping[Any, Any]] = {
        "index": {**index_to_json(facts), "blocks": _packed_blocks(blocks), "apart": int(apart)},
        "every": {
            **columns_to_json(facts, range(len(facts.plates))),
            **_names_of_every(catalogue, facts, letters),
        },
    }
    if apart:
        for garment, numbers in facts.plates_of.items():
            files[f"garment/{facts.garments[garment].id}"] = columns_to_json(facts, numbers)
    return _scripts(files)


def _of_vocabulary(catalogue: Catalogue) -> Iterator[tuple[str, str]]:
    return _scripts({"vocabulary": vocabulary_data(catalogue), "dates": lexicon.as_data()})


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


@dataclass(frozen=True, slots=True)
class Document:
    """A document: what it is called, its source, the middle of its days (infinite where undated), and the ids
    of its plates in order."""

    id: str
    source: str
    middle: float
    plates: tuple[str, ...]

    @property
    def keys(self) -> list[str]:
        return [f"{self.source}/{plate}" for plate in self.plates]


def documents_of(look: Lookup) -> list[Document]:
    """The documents of all sources as evidence has them, in its order (see ``evidence.Facts``)."""
    found = [
        Document(name, source.id, middle, tuple(plates))
        for source in look.outlines.values()
        for name, middle, plates in source.documents
    ]
    return sorted(found, key=lambda each: each.id)


def blocks_of(documents: Sequence[Document]) -> list[list[int]]:
    """The numbers of the documents in order of their dates, in blocks: what is said of the plates of one lies
    together."""
    blocks: list[list[int]] = []
    held = 0
    for document in sorted(range(len(documents)), key=lambda at: (documents[at].middle, at)):
        count = len(documents[document].plates)
        if not blocks or (held and held + count > PLATES_IN_BLOCK):
            blocks.append([])
            held = 0
        blocks[-1].append(document)
        held += count
    return blocks


def _packed_blocks(blocks: Iterable[Sequence[int]]) -> str:
    """Of every block how many documents it holds, then which."""
    return packed(number for block in blocks for number in (len(block), *block))


def _names_of_every(catalogue: Catalogue, facts: Facts, letters: str) -> dict[str, Any]:
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
        "letters": letters,
    }


def words_files(look: Lookup, found_by: Mapping[str, Mapping[str, str]]) -> Iterator[tuple[str, str]]:
    """By letter: the script of the words that begin with it, and for each the numbers of the plates that have
    it, each less the one before, packed; none where captions are on the page of plates. ``found_by`` has by
    source and plate the words it is found by."""
    if not has_captions_apart(look.catalogue):
        return iter(())
    found: dict[str, list[int]] = defaultdict(list)
    number = 0
    for document in documents_of(look):
        held = found_by[document.source]
        for plate in document.plates:
            for word in held[plate].split():
                found[word].append(number)
            number += 1
    letters: dict[str, dict[str, str]] = defaultdict(dict)
    for word in sorted(found):
        steps = [each - before for before, each in pairwise([0, *found[word]])]
        letters[f"words/{ord(word[0])}"][word] = packed(steps)
    return _scripts(letters)


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

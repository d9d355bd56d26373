"""What was read before, kept so that it need not be read again: the same answers, sooner.

Everything kept is under a digest of what it was read from: of one source file, its bytes; of a whole
folder, the bytes of all its records and how its pictures stand. Notes lie in the catalogue's own folder and
are sealed with a key of this user's, so that one that came along with somebody else's folder, or was broken
or changed, is passed over like one that is missing. They are JSON: reading one runs nothing.
"""

from __future__ import annotations

import contextlib
import json
import os
import sys
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from hashlib import blake2b
from hmac import compare_digest
from pathlib import Path
from typing import TYPE_CHECKING, Any

from inperiod.own_folder import own_folder
from inperiod.records.as_json import from_json, to_json
from inperiod.records.grounds import Grounds, digest_of, program
from inperiod.records.model import Board, Catalogue, Facet, Settings, Source, Vocabulary, is_entangled
from inperiod.records.outcome import Reading
from inperiod.records.places import SETTINGS_FILE
from inperiod.records.problems import Problem
from inperiod.records.unopened import Entry, problem_to_json, unopened
from inperiod.seldom import refuse_seldom

if TYPE_CHECKING:
    from inperiod.records.reading import Dates

PART = "records"
WHOLE = "catalogue"
_SEAL = 64
TOGETHER = 8
"""Source files that one process reads at a time."""
HELD = 32_000_000
"""Bytes of source files that are held at once, but for those of the last of them."""
_SPARE = 200
"""So many notes of what source files held before are left: one may come back to it."""


@refuse_seldom()
def read_kept(folder: Path) -> Reading:
    """As ``read_catalogue``, from what is kept where nothing has changed since; what has changed is read and
    kept for the next time. ``grounds`` of the reading is then the digest of all that was read."""
    folder = Path(folder)
    store = Store.of(folder)
    looked = Grounds(folder)
    grounds = looked.of_all() if store else None
    if store is None or grounds is None:
        found: Reading = _reader().read_catalogue(folder)
        return found
    known = store.read(WHOLE)
    if known and known["grounds"] == grounds:
        return _known(folder, store, known)
    reading, note = _read(folder, store, known, looked)
    if note is None or looked.of_all() != grounds:  # somebody saved a file while it was read
        return reading
    store.write(WHOLE, {"grounds": grounds} | note)
    store.tidy(_SPARE, {WHOLE, "facts", *(each[1] for each in note["entries"])})
    return replace(
        reading, grounds=grounds, editions={each[2]: each[1] for each in note["entries"] if each[2]}
    )


def _reader() -> Any:
    """The module that reads, with all that it needs: opened where there is something to read."""
    from inperiod.records import reading

    return reading


@dataclass(frozen=True, slots=True)
class Store:
    """The notes of one catalogue. ``key`` is the user's own."""

    home: Path
    key: bytes

    @staticmethod
    def of(folder: Path, part: str = PART) -> Store | None:
        """The notes of that part of the program; None where nothing can be kept."""
        home = own_folder(folder, part)
        key = _key() if home else None
        return Store(home, key) if home and key else None

    def read(self, name: str) -> Any:
        """A note; None where there is none, or none of ours."""
        text = self.read_text(name)
        return None if text is None else json.loads(text)

    def read_text(self, name: str) -> str | None:
        """A note that is plain text; likewise."""
        try:
            data = (self.home / f"{name}.json").read_bytes()
        except OSError:
            return None
        seal, text = data[:_SEAL], data[_SEAL:]
        if not compare_digest(seal, self._seal(name, text)):
            return None
        return text.decode("utf-8", "surrogatepass")

    def write(self, name: str, note: Any) -> None:
        """Keep a note, where it can be written."""
        self.write_text(name, json.dumps(note, separators=(",", ":")))

    def write_text(self, name: str, note: str) -> None:
        """Keep plain text, where it can be written."""
        text = note.encode("utf-8", "surrogatepass")
        new = self.home / f"{name}.{os.getpid()}.new"
        with contextlib.suppress(OSError):
            new.write_bytes(self._seal(name, text) + text)
            os.replace(new, self.home / f"{name}.json")

    def tidy(self, spare: int, used: Iterable[str] = ()) -> None:
        """Take away what was written longest ago and is not used, all but so many notes, where it has become
        twice as many."""
        with contextlib.suppress(OSError):
            unused = set(os.listdir(self.home)) - {f"{name}.json" for name in used}
            if len(unused) > 2 * spare:
                files = sorted(
                    (self.home / name for name in unused), key=lambda each: each.stat().st_mtime_ns
                )
                for each in files[:-spare]:
                    each.unlink(missing_ok=True)

    def _seal(self, name: str, text: bytes) -> bytes:
        sealed = blake2b(name.encode(), key=self.key, digest_size=_SEAL // 2)
        sealed.update(text)
        return sealed.hexdigest().encode()


def _key() -> bytes | None:
    """The user's own key, made when it is first wanted; None where it can be neither read nor written."""
    given = os.environ.get("XDG_CACHE_HOME")
    usual = "Library/Caches" if sys.platform == "darwin" else ".cache"
    try:
        home = Path(given) if given else Path.home() / usual
        file = home / "inperiod" / "key"
        with contextlib.suppress(FileNotFoundError):
            key = file.read_bytes()
            return key if len(key) == 32 else None
        file.parent.mkdir(parents=True, exist_ok=True)
        with contextlib.suppress(FileExistsError):
            handle = os.open(file, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600)
            with open(handle, "wb") as stream:
                stream.write(os.urandom(32))
        key = file.read_bytes()
    except (OSError, RuntimeError):
        return None
    return key if len(key) == 32 else None


def _read(folder: Path, store: Store, known: Any, looked: Grounds) -> tuple[Reading, dict[str, Any] | None]:
    """The folder read, what is known of it from ``known``; and what to note of it, but for its grounds: None
    where a source file was not the one that was ``looked`` at."""
    reader = _reader()
    rules_from = looked.of_rules()
    if known and rules_from and known.get("rules") == rules_from:
        rules, of_rules = _rules(folder, known), _problems(known["problems of rules"])
        memory = _Memory(store, rules, known["entries"])
    else:
        of_rules = []
        rules = reader.read_rules(folder, of_rules)
        memory = _Memory(store, rules, ())
    problems = list(of_rules)
    entries = memory.entries(looked, problems)
    problems += [problem for each in entries for problem in each.problems]
    boards = reader.read_boards(rules, problems)
    found: Reading = reader.checked(unopened(rules, entries, boards, memory.source), problems)
    reading = replace(found, editions=_editions(entries))
    note = {
        "rules": rules_from,
        "problems of rules": [problem_to_json(each) for each in of_rules],
        "problems": [problem_to_json(each) for each in reading.problems],
        "settings": to_json(rules.settings),
        "facets": [[facet.mark.file, to_json(facet)] for facet in rules.vocabulary.facets.values()],
        "boards": [[board.mark.file, to_json(board)] for board in boards.values()],
        "entries": [each.to_json() for each in entries],
    }
    return reading, note if memory.as_looked_at else None


def _known(folder: Path, store: Store, known: Mapping[str, Any]) -> Reading:
    """The reading as it was noted."""
    rules = _rules(folder, known)
    boards = [from_json(Board, board, file) for file, board in known["boards"]]
    memory = _Memory(store, rules, known["entries"])
    catalogue = unopened(rules, memory.known.values(), {board.id: board for board in boards}, memory.source)
    problems = tuple(_problems(known["problems"]))
    return Reading(catalogue, problems, known["grounds"], _editions(memory.known.values()))


def _rules(folder: Path, known: Mapping[str, Any]) -> Catalogue:
    facets = [from_json(Facet, facet, file) for file, facet in known["facets"]]
    settings = from_json(Settings, known["settings"], SETTINGS_FILE)
    return Catalogue(folder, settings, Vocabulary({facet.id: facet for facet in facets}), {}, {})


def _problems(noted: Iterable[Sequence[Any]]) -> list[Problem]:
    return [Problem(*each) for each in noted]


def _editions(entries: Iterable[Entry]) -> dict[str, str]:
    return {each.source: each.note for each in entries if each.source is not None}


class _Memory:
    """Reads source files, each once and many by all hands. ``known`` are the entries of those that were read
    and checked by the same rules before, by their notes."""

    def __init__(self, store: Store, rules: Catalogue, known: Iterable[list[Any]]) -> None:
        self._store = store
        self._rules = rules
        self._program = program()
        self._dates: Dates = {}
        self._open: dict[str, Source] = {}
        self.as_looked_at = True
        entries = map(Entry.from_json, known)
        self.known = {each.note: each for each in entries}

    def entries(self, looked: Grounds, problems: list[Problem]) -> list[Entry]:
        """What is to be known of every source file, in order. ``as_looked_at`` tells afterwards whether they
        are the files that were looked at."""
        from inperiod.records.files import bytes_of, paths

        found: dict[str, Entry | None] = {}
        unknown: list[tuple[str, Path]] = []
        for file, path in paths(self._rules.folder, "sources", problems):
            digest = looked.of_file(file)
            found[file] = self.known.get(self._name(file, digest)) if digest else None
            if found[file] is None:
                unknown.append((file, path))
        read = ((file, bytes_of(self._rules.folder, path, file, problems)) for file, path in unknown)
        for lot in _lots((file, data) for file, data in read if data is not None):
            for file, data in lot:
                self.as_looked_at &= looked.of_file(file) in (None, digest_of(data))
            found |= self._by_all(lot)
        return [each for each in found.values() if each is not None]

    def source(self, entry: Entry) -> Source:
        """The source of an entry."""
        if entry.note in self._open:
            return self._open[entry.note]
        note = self._store.read(entry.note)
        if note is None:
            return self._again.sources[Path(entry.file).stem]
        return from_json(Source, note[0], entry.file)

    @cached_property
    def _again(self) -> Catalogue:
        """The whole folder read as it is, for what was taken away under our hands."""
        reading: Reading = _reader().read_catalogue(self._rules.folder)
        return reading.catalogue

    def _name(self, file: str, digest: str) -> str:
        grounds = (self._program, file.encode(), self._rules.settings.seasons.encode(), digest.encode())
        return blake2b(b"\0".join(grounds), digest_size=16).hexdigest()

    def _by_all(self, lot: Sequence[tuple[str, bytes]]) -> dict[str, Entry]:
        """Files read and checked by so many processes as can work at once, by their names."""
        from inperiod.hands import done_by_all, hands_here

        parts = [lot[at : at + TOGETHER] for at in range(0, len(lot), TOGETHER)]

        def work(part: Sequence[tuple[str, bytes]]) -> list[list[Any]]:
            return [self._entry(file, data).to_json() for file, data in part]

        found = done_by_all(parts, work, hands_here(), lambda _: None)
        entries = (Entry.from_json(each) for _, made in found for each in made)
        return {each.file: each for each in entries}

    def _entry(self, file: str, data: bytes) -> Entry:
        """A file that is not known by these rules: its record may be."""
        name = self._name(file, digest_of(data))
        note = self._store.read(name)
        if note is not None:
            record, faults = note[0] and from_json(Source, note[0], file), _problems(note[1])
        else:
            record, faults = _reader().read_source(data, file, self._rules.settings.seasons, self._dates)
            self._store.write(name, [record and to_json(record), [problem_to_json(each) for each in faults]])
        if record is None:
            return Entry(file, name, None, (), False, tuple(faults))
        from inperiod.records.checks import check_source

        self._open[name] = record
        wrong = (*faults, *check_source(record, self._rules))
        plates = tuple(each.id for each in record.plates)
        return Entry(file, name, record.id, plates, is_entangled(record), wrong)


def _lots(found: Iterable[tuple[str, bytes]]) -> Iterator[list[tuple[str, bytes]]]:
    """Files in lots that may be held at once."""
    lot: list[tuple[str, bytes]] = []
    held = 0
    for file, data in found:
        lot.append((file, data))
        held += len(data)
        if held > HELD:
            yield lot
            lot, held = [], 0
    yield lot

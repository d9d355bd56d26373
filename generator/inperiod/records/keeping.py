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
import stat
import sys
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from hashlib import blake2b
from hmac import compare_digest
from pathlib import Path
from typing import TYPE_CHECKING, Any

from inperiod.dating import Seasons
from inperiod.kept import kept
from inperiod.own_folder import own_folder
from inperiod.records.as_json import from_json, to_json
from inperiod.records.model import Board, Catalogue, Facet, Plate, Settings, Source, Vocabulary
from inperiod.records.outcome import Reading
from inperiod.records.places import FOLDERS, MAX_BYTES, SETTINGS_FILE
from inperiod.records.problems import Problem
from inperiod.seldom import refuse_seldom

if TYPE_CHECKING:
    from inperiod.records.reading import Dates, Files, Read

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
    grounds = _grounds(folder) if store else None
    if store is None or grounds is None:
        found: Reading = _reader().read_catalogue(folder)
        return found
    known = store.read(WHOLE)
    if known and known["grounds"] == grounds:
        return _known(folder, store, known)
    memory = _Memory(store)
    reading: Reading = _reader().read_catalogue(folder, memory.sources)
    if _grounds(folder) != grounds:  # somebody saved a file while it was read
        return reading
    store.write(WHOLE, _note(reading, grounds, memory.names))
    store.tidy(_SPARE, {WHOLE, "facts", *memory.names.values()})
    return replace(reading, grounds=grounds, editions=_editions(reading.catalogue, memory.names))


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
        try:
            data = (self.home / f"{name}.json").read_bytes()
        except OSError:
            return None
        seal, text = data[:_SEAL], data[_SEAL:]
        if not compare_digest(seal, self._seal(name, text)):
            return None
        return json.loads(text)

    def holds(self, name: str) -> bool:
        """Whether there is a note of that name, of ours or not."""
        return (self.home / f"{name}.json").exists()

    def write(self, name: str, note: Any) -> None:
        """Keep a note, where it can be written."""
        text = json.dumps(note, separators=(",", ":")).encode()
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


class _Memory:
    """Reads source files, each once and many by all hands. ``names`` are the notes they are kept under, by
    file."""

    def __init__(self, store: Store) -> None:
        self._store = store
        self._program = _program()
        self.names: dict[str, str] = {}

    def sources(self, found: Files, seasons: Seasons, dates: Dates) -> Iterator[Read[Source]]:
        """As ``read_source`` of each."""

        def read(file: str, data: bytes) -> Read[Source]:
            record, faults = _reader().read_source(data, file, seasons, dates)
            self._store.write(
                self.names[file], [record and to_json(record), [_problem(each) for each in faults]]
            )
            return record, faults

        for lot in _lots(found):
            self.names |= {file: self._name(file, data, seasons) for file, data in lot}
            new = self._by_all([each for each in lot if not self._store.holds(self.names[each[0]])], read)
            for file, data in lot:
                yield new.get(file) or self._known(file) or read(file, data)

    def _name(self, file: str, data: bytes, seasons: Seasons) -> str:
        grounds = (self._program, file.encode(), seasons.encode(), data)
        return blake2b(b"\0".join(grounds), digest_size=16).hexdigest()

    def _known(self, file: str) -> Read[Source] | None:
        note = self._store.read(self.names[file])
        if note is None:
            return None
        source, problems = note
        return source and from_json(Source, source, file), [Problem(*each) for each in problems]

    def _by_all(
        self, lot: Sequence[tuple[str, bytes]], read: Callable[[str, bytes], Read[Source]]
    ) -> dict[str, Read[Source]]:
        """Files read by so many processes as can work at once: what this one read; the others leave notes."""
        from inperiod.hands import done_by_all, hands_here

        parts = [lot[at : at + TOGETHER] for at in range(0, len(lot), TOGETHER)]
        mine: dict[str, Read[Source]] = {}

        def work(part: Sequence[tuple[str, bytes]]) -> None:
            mine.update({file: read(file, data) for file, data in part})

        for _ in done_by_all(parts, work, hands_here(), lambda _: None):
            pass
        return mine


def _lots(found: Files) -> Iterator[list[tuple[str, bytes]]]:
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


def _problem(each: Problem) -> list[Any]:
    return [each.file, each.line, each.column, each.severity, each.message, each.hint]


def _editions(catalogue: Catalogue, names: Mapping[str, str]) -> dict[str, str]:
    return {source.id: names[source.mark.file] for source in catalogue.sources.values()}


def _note(reading: Reading, grounds: str, names: Mapping[str, str]) -> Any:
    catalogue = reading.catalogue
    return {
        "grounds": grounds,
        "problems": [_problem(each) for each in reading.problems],
        "settings": to_json(catalogue.settings),
        "facets": [[facet.mark.file, to_json(facet)] for facet in catalogue.vocabulary.facets.values()],
        "boards": [[board.mark.file, to_json(board)] for board in catalogue.boards.values()],
        "sources": [
            [source.id, source.mark.file, names[source.mark.file], [plate.id for plate in source.plates]]
            for source in catalogue.sources.values()
        ],
    }


def _known(folder: Path, store: Store, known: Mapping[str, Any]) -> Reading:
    facets = [from_json(Facet, facet, file) for file, facet in known["facets"]]
    boards = [from_json(Board, board, file) for file, board in known["boards"]]
    sources = _Sources(folder, store, known["sources"])
    catalogue = Catalogue(
        folder,
        from_json(Settings, known["settings"], SETTINGS_FILE),
        Vocabulary({facet.id: facet for facet in facets}),
        sources,
        {board.id: board for board in boards},
    )
    # In the place of what the catalogue would work out, which would open every source to ask for one plate.
    vars(catalogue)["plates"] = _Plates(sources)
    problems = tuple(Problem(*each) for each in known["problems"])
    editions = {name: note for name, (_, note, _) in sources.entries.items()}
    return Reading(catalogue, problems, known["grounds"], editions)


class _Sources(Mapping[str, Source]):
    """Sources that are opened when they are asked for."""

    def __init__(self, folder: Path, store: Store, entries: list[list[Any]]) -> None:
        self._folder = folder
        self._store = store
        self.entries = {name: (file, note, plates) for name, file, note, plates in entries}
        self._open: dict[str, Source] = {}

    def __getitem__(self, name: str) -> Source:
        if name not in self._open:
            file, note, _ = self.entries[name]
            self._open[name] = self._read(file, note)
        return self._open[name]

    def _read(self, file: str, note: str) -> Source:
        known = self._store.read(note)
        if known is None:
            return self._again.sources[Path(file).stem]
        return from_json(Source, known[0], file)

    @cached_property
    def _again(self) -> Catalogue:
        """The whole folder read as it is, for what was taken away under our hands."""
        reading: Reading = _reader().read_catalogue(self._folder)
        return reading.catalogue

    def __iter__(self) -> Iterator[str]:
        return iter(self.entries)

    def __len__(self) -> int:
        return len(self.entries)


class _Plates(Mapping[str, Plate]):
    """The plates of sources that are opened when they are asked for."""

    def __init__(self, sources: _Sources) -> None:
        self._sources = sources
        self._keys: dict[str, tuple[str, int]] = {
            f"{name}/{plate}": (name, at)
            for name, (_, _, plates) in sources.entries.items()
            for at, plate in enumerate(plates)
        }

    def __getitem__(self, key: str) -> Plate:
        name, at = self._keys[key]
        return self._sources[name].plates[at]

    def __iter__(self) -> Iterator[str]:
        return iter(self._keys)

    def __len__(self) -> int:
        return len(self._keys)


def _grounds(folder: Path) -> str | None:
    """A digest of all that reading and checking look at; None where some of it cannot be read."""
    found = blake2b(_program(), digest_size=16)
    try:
        own = (folder / "vocabulary").is_dir()
        for place in (folder / SETTINGS_FILE, *(folder / name for name in FOLDERS)):
            _add(found, place, place.name, b"")
        if not own:
            _add(found, kept("vocabulary"), "kept", b"")
        add_standing(found, folder / "images")
    except (OSError, RuntimeError):  # the latter of links that lead in a circle
        return None
    return found.hexdigest()


def _add(found: Any, place: Path, name: str, before: bytes) -> None:
    """A file by its name and bytes, a folder by those of its entries, a link as well by where it leads."""
    label = before + b"/" + os.fsencode(name)
    if place.is_symlink():
        found.update(label + b"\0link\0" + os.fsencode(place.resolve()))
    if place.is_dir():
        if before:  # nothing below is read
            found.update(label + b"\0folder\0")
            return
        for entry in sorted(os.listdir(place)):
            _add(found, place / entry, entry, label)
    elif place.exists():
        seen = place.stat()
        if not stat.S_ISREG(seen.st_mode):
            found.update(label + b"\0other\0")
            return
        with place.open("rb") as stream:
            data = stream.read(MAX_BYTES + 1)
        found.update(b"%b\0%d\0" % (label, len(data)))
        found.update(data)


def add_standing(found: Any, folder: Path) -> None:
    """Add to a digest the files of a folder at any depth, by name, size and the time they were last
    written."""
    if not folder.is_dir():
        return
    for place, folders, names in os.walk(folder):
        folders.sort()
        for name in sorted(each for each in names if not each.endswith(".pyc")):
            seen = os.stat(os.path.join(place, name), follow_symlinks=True)
            found.update(
                os.fsencode(os.path.join(place, name)) + b"\0%d\0%d" % (seen.st_size, seen.st_mtime_ns)
            )


def _program() -> bytes:
    """What tells this program from another, or from itself before a change."""
    from inperiod import __version__

    found = blake2b(f"{__version__} {sys.version}".encode(), digest_size=16)
    for folder in (Path(__file__).parents[1] / "dating", Path(__file__).parent, kept("schemas")):
        add_standing(found, folder)
    return found.digest()

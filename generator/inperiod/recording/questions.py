"""What is asked of a source and of each of its plates, in the order one reads them off a page."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any, Protocol

from inperiod.dating import Unreadable, read_phrase
from inperiod.importing.composing import safe_id
from inperiod.importing.writing import source_yaml
from inperiod.recording.keeping import with_plates
from inperiod.recording.line import Unclear, read_line
from inperiod.records import read_catalogue
from inperiod.records.files import write_whole
from inperiod.records.finding import NotFound, find_garment
from inperiod.records.model import Catalogue
from inperiod.records.problems import Problem, nearest
from inperiod.records.shapes import shape_of


class Enough(Exception):
    """The person has had enough for now; what was finished is kept."""


class Terminal(Protocol):
    """Where questions are asked. ``ask`` gives the answer without space around it, ``usual`` where nothing
    was typed, and raises ``Enough`` at the end of input; ``words`` are what can be completed."""

    def ask(self, question: str, usual: str = "", words: Sequence[str] = ()) -> str: ...

    def say(self, text: str) -> None: ...


@dataclass(frozen=True, slots=True)
class Added:
    """The file that was written or added to, inside the catalogue folder; None where nothing was recorded."""

    file: str | None
    plates: int
    problems: tuple[Problem, ...] = ()


def add(folder: Path, terminal: Terminal) -> Added:
    """Ask for a source, new or there already, then for plate after plate.

    Each plate is written as soon as it is finished, so that nothing is lost when the person stops. Raises
    ``CannotAdd`` and ``OSError``."""
    catalogue = read_catalogue(folder).catalogue
    asking = _Asking(catalogue, terminal)
    try:
        name, start = asking.source()
    except Enough:
        return Added(None, 0)
    path, plates = folder / name, 0
    taken = (
        {plate.id for plate in catalogue.sources[path.stem].plates}
        if path.stem in catalogue.sources
        else set()
    )
    try:
        while plate := asking.plate(taken):
            data = path.read_bytes() if path.exists() else None
            write_whole(path, _joined(data, start, plate))
            plates += 1
            taken.add(plate["id"])
            for problem in _problems(folder, name, plate["id"]):
                terminal.say(f"  {problem.message} {problem.hint}".rstrip())
            terminal.say(f"Kept {plate['id']} in {name}.\n")
    except Enough:
        pass
    if not plates:
        return Added(None, 0)
    said = tuple(each for each in read_catalogue(folder).problems if each.file == name)
    return Added(name, plates, said)


def _joined(data: bytes | None, start: Mapping[str, Any], plate: Mapping[str, Any]) -> bytes:
    return source_yaml({**start, "plates": [plate]}).encode() if data is None else with_plates(data, [plate])


def _problems(folder: Path, name: str, plate: str) -> list[Problem]:
    """What the checker says of the plate that was added last."""
    reading = read_catalogue(folder)
    source = reading.catalogue.sources.get(Path(name).stem)
    lines = [each.mark.line for each in source.plates if each.id == plate] if source else [1]
    first = min(lines, default=1)
    return [each for each in reading.problems if each.file == name and each.line >= first]


@dataclass(slots=True)
class _Asking:
    """One sitting: what carries over from one plate to the next."""

    catalogue: Catalogue
    terminal: Terminal
    page: str = ""
    wearer: str = "woman"

    def source(self) -> tuple[str, dict[str, Any]]:
        """The file, and the fields of a new source; no fields where it is there already."""
        known = sorted(self.catalogue.sources)
        if known:
            given = self._one_of("Add to which source? Enter for a new one", known, usual="")
            if given:
                return f"sources/{given}.yaml", {}
        return self._new_source()

    def _new_source(self) -> tuple[str, dict[str, Any]]:
        fields = shape_of("source").fields
        title = self._needed("Title of the source")
        made: dict[str, Any] = {"title": title}
        made["kind"] = self._one_of("What kind", fields["kind"].words, needed=True)
        made |= self._date()
        if "date" in made:
            made["date_basis"] = self._one_of(
                "What the date rests on", fields["date_basis"].words, usual="printed"
            )
        publisher = {"name": self.terminal.ask("Publisher"), "place": self.terminal.ask("Place")}
        made["publisher"] = {key: value for key, value in publisher.items() if value}
        if held_by := self.terminal.ask("Where the copy is"):
            made["held_by"] = {"name": held_by}
        used = sorted({each.rights for each in self.catalogue.sources.values() if each.rights})
        made["rights"] = self.terminal.ask("Address of the rights statement or licence", words=used)
        if pages := self.terminal.ask("Pages you look through, such as 1-48"):
            made["examined"] = {"pages": pages}
        return f"sources/{self._new_id(title, made.get('date', ''))}.yaml", made

    def _new_id(self, title: str, date: str) -> str:
        year = date[:4] if date[:4].isdigit() else ""
        usual = safe_id(title if year in title else f"{title} {year}")
        while True:
            given = safe_id(self.terminal.ask("Short name of its file", usual))
            if given and given not in self.catalogue.sources:
                return given
            self.terminal.say("  There is a source of that name already." if given else "  A name is needed.")

    def _date(self) -> dict[str, Any]:
        """The date in the person's own words, shown back; nothing for what is undated."""
        while True:
            given = self.terminal.ask("Date, in your own words (Enter where there is none)")
            if not given:
                return {}
            try:
                read = read_phrase(given, seasons=self.catalogue.settings.seasons)
            except Unreadable as error:
                self.terminal.say(f"  {error}")
                continue
            note = f" {read.note}" if read.note else ""
            self.terminal.say(f"  Understood as {read.words}, written {read.edtf}.{note}")
            return {"date": read.edtf} | ({} if given == read.edtf else {"date_printed": given})

    def plate(self, taken: set[str]) -> dict[str, Any] | None:
        """One plate, or None where no garment is named."""
        garment = self._garment()
        if not garment:
            return None
        self.page = self.terminal.ask("Page", self.page)
        figure = self.terminal.ask("Figure on the page")
        item = self.terminal.ask("Item number")
        locator = {"page": self.page, "figure": figure, "item": item}
        who = shape_of("source").fields["plates"].item
        wearers = who.fields["wearer"].fields["who"].words if who else ()
        self.wearer = self._one_of("For whom", wearers, usual=self.wearer)
        made: dict[str, Any] = {
            "id": _free_id("-".join(["p" + self.page, figure] if figure else ["p" + self.page]), taken),
            "locator": {key: value for key, value in locator.items() if value},
            "garment": garment,
            "wearer": {"who": self.wearer},
            "features": self._features(garment),
            "caption": self.terminal.ask("Caption, as printed"),
        }
        amount, _, currency = self.terminal.ask("Price, such as 8/11 GBP").partition(" ")
        if amount:
            made["price"] = {"amount": amount, "currency": currency.strip().upper() or "GBP"}
        made["note"] = self.terminal.ask("Note")
        return made

    def _garment(self) -> str:
        vocabulary = self.catalogue.vocabulary
        names = [term.label for term in vocabulary.garments.values()]
        while True:
            given = self.terminal.ask("Garment (Enter to finish)", words=names)
            if not given:
                return ""
            try:
                return find_garment(vocabulary, given)
            except NotFound as error:
                self.terminal.say(f"  {error}")

    def _features(self, garment: str) -> list[Any]:
        vocabulary = self.catalogue.vocabulary
        apt = [
            term
            for term in vocabulary.terms.values()
            if term.facet != "garment" and vocabulary.applies(term, garment)
        ]
        names = [name for term in apt for name in (term.label, *(each.name for each in term.names))]
        features: list[Any] = []
        while given := self.terminal.ask("Feature (Enter when there are no more)", words=names):
            try:
                feature = read_line(given, vocabulary, garment)
            except Unclear as error:
                self.terminal.say(f"  {error}")
                continue
            features.append(feature)
            self.terminal.say(f"  {feature if isinstance(feature, str) else _in_brief(feature)}")
        return features

    def _needed(self, question: str) -> str:
        while not (given := self.terminal.ask(question)):
            self.terminal.say("  This is needed.")
        return given

    def _one_of(self, question: str, words: Sequence[str], usual: str = "", needed: bool = False) -> str:
        """One of the words, by its beginning where that is enough."""
        while True:
            given = self.terminal.ask(question, usual, words)
            if given in words or not (given or needed):
                return given
            begun = [each for each in words if each.startswith(given.lower().replace(" ", "-"))]
            if given and len(begun) == 1:
                return begun[0]
            near = None if begun else nearest(given, words)
            self.terminal.say(
                f"  Did you mean {near}?" if near else f"  One of: {', '.join(begun or words)}."
            )


def _free_id(wanted: str, taken: set[str]) -> str:
    """``wanted`` made safe, or with the next letter where a plate has it: p4, p4-b, p4-c."""
    own = safe_id(wanted) or "p"
    if own not in taken:
        return own
    return next(each for letter in map(chr, range(98, 123)) if (each := f"{own}-{letter}") not in taken)


def _in_brief(feature: Mapping[str, Any]) -> str:
    if "facet" in feature:
        state = "none" if feature.get("none") else "not visible"
        return f"{feature['facet']}, {state}"
    beside = [f"{key} {value}" for key, value in feature.items() if key != "term"]
    return ", ".join([str(feature["term"]), *beside])

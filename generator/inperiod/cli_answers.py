"""The commands that answer: when, fit, timeline, check, cite."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Iterator
from dataclasses import asdict
from pathlib import Path
from typing import Any

from inperiod import cli_words as words
from inperiod.cli_reply import CannotDo, Reply, counted, find_folder, read_folder
from inperiod.dating import Span, when_json, widened
from inperiod.records.finding import NotFound, find_facet, find_feature, find_garment
from inperiod.records.model import Catalogue, Settings, Vocabulary
from inperiod.records.problems import Problem, nearest


def when(arguments: argparse.Namespace) -> Reply:
    """``inperiod when``: 1 where a single phrase cannot be read; with ``--lines`` each line says so."""
    circa = Settings().circa_years if arguments.circa_years is None else arguments.circa_years
    if not 0 <= circa <= 50:
        raise CannotDo("--circa-years is a number of years from 0 to 50.")
    if (arguments.phrase is None) == (arguments.lines is None):
        raise CannotDo(
            'give one PHRASE in quotation marks, or --lines FILE. For example: inperiod when "ca. 1885–90"'
        )
    if arguments.lines is not None:
        phrases = _lines(arguments.lines)
        return Reply(documents=(when_json(each, circa, arguments.seasons) for each in phrases))
    data = when_json(arguments.phrase, circa, arguments.seasons)
    if "error" in data:
        return Reply(words=f"“{arguments.phrase}” cannot be read: {data['error']}", data=data, status=1)
    return Reply(words=words.when(data), data=data)


def _lines(name: str) -> Iterator[str]:
    try:
        if name == "-":
            stream = open(sys.stdin.fileno(), encoding="utf-8-sig", errors="replace", closefd=False)  # noqa: SIM115
        else:
            stream = open(name, encoding="utf-8-sig", errors="replace")  # noqa: SIM115
    except OSError as error:
        raise CannotDo(f"{name} cannot be read: {error.strerror}.") from None
    with stream:
        for line in stream:
            yield line.rstrip("\r\n")


def fit(arguments: argparse.Namespace) -> Reply:
    """``inperiod fit``."""
    from inperiod import evidence

    if not 0 <= arguments.worn_for <= 200:
        raise CannotDo("--worn-for is a number of years from 0 to 200.")
    reading = read_folder(arguments.folder)
    catalogue = reading.catalogue
    asked, span = _asked(arguments.when, catalogue.settings)
    garment, features = _named(catalogue.vocabulary, arguments.garment, arguments.feature)
    question = evidence.Question(
        garment=garment,
        features=features,
        window=evidence.Window(span.earliest, span.latest),
        worn_for=arguments.worn_for,
        **_limits(arguments, catalogue),
    )
    facts = evidence.kept_facts(reading)
    data = evidence.as_json(evidence.answer(facts, question), asked)
    for finding in data["features"]:
        usual = evidence.usual_in_window(facts, question, finding["term"].partition("/")[0])
        finding["usual"] = [evidence.as_json(each) for each in usual]
    if arguments.cite:
        data["citations"] = {
            key: _cited(catalogue, key, arguments.cite)
            for key in dict.fromkeys(key for finding in _findings(data) for key in finding["cite"])
        }
    data["sensitivity"] = [evidence.as_json(each) for each in evidence.sensitivity(facts, question)]
    notes = (*_notes(reading.problems, arguments.folder), *_unknown_place(arguments.place, catalogue))
    return Reply(words=words.fit(catalogue, data), data=data, notes=notes)


def _findings(data: dict[str, Any]) -> list[dict[str, Any]]:
    return [*data["features"], *([data["together"]] if data["together"] else [])]


def timeline(arguments: argparse.Namespace) -> Reply:
    """``inperiod timeline``."""
    from inperiod.evidence import as_json, kept_facts
    from inperiod.evidence import timeline as weigh

    reading = read_folder(arguments.folder)
    catalogue = reading.catalogue
    try:
        garment = find_garment(catalogue.vocabulary, arguments.garment)
        facet = find_facet(catalogue.vocabulary, arguments.facet)
    except NotFound as error:
        raise CannotDo(str(error)) from None
    limits = _limits(arguments, catalogue)
    facts = kept_facts(reading)
    data = as_json(weigh(facts, garment, facet, **limits))
    data.update(limits)
    notes = (*_notes(reading.problems, arguments.folder), *_unknown_place(arguments.place, catalogue))
    return Reply(words=words.timeline(catalogue, data), data=data, notes=notes)


def check(arguments: argparse.Namespace) -> Reply:
    """``inperiod check``: of everything, or with ``--changed`` of what a change touches."""
    folder = find_folder(arguments.folder)
    reading = read_folder(arguments.folder)
    catalogue, problems = reading.catalogue, reading.problems
    data: dict[str, Any] = {}
    sources, plates = len(catalogue.sources), len(catalogue.plates)
    said = ""
    if arguments.changed is not None:
        from inperiod.cli_changed import change_since
        from inperiod.cli_changed import words as what_changed

        change = change_since(folder, arguments.changed, reading)
        touched = [each for each in catalogue.sources.values() if each.mark.file in change.touched]
        sources, plates = len(touched), sum(len(each.plates) for each in touched)
        problems = tuple(each for each in problems if change.concerns(each))
        data["changed"] = change.as_json()
        said = f"{what_changed(folder, data['changed'])}\n"
    data["sources"] = sources
    data["plates"] = plates
    data["problems"] = [asdict(each) for each in problems]
    errors = any(each.severity == "error" for each in problems)
    return Reply(words=said + words.check(folder, data), data=data, status=1 if errors else 0)


def cite(arguments: argparse.Namespace) -> Reply:
    """``inperiod cite``: the plates and sources named, or those of a board, in the order given."""
    from inperiod import citing

    named, folder = _apart_from_folder(arguments.plates)
    reading = read_folder(folder)
    catalogue = reading.catalogue
    keys = [*named, *(_of_board(catalogue, arguments.board) if arguments.board else ())]
    if not keys:
        raise CannotDo("name a PLATE (source-id/plate-id), a source, or a board with --board ID.")
    known = {**catalogue.plates, **catalogue.sources}
    for key in keys:
        if key not in known:
            near = nearest(key, known)
            raise CannotDo(f"there is no plate {key}." + (f" Did you mean {near}?" if near else ""))
    if arguments.format not in ("text", "html"):
        text = citing.export(catalogue, keys, arguments.format)
    else:
        text = "\n".join(_cited(catalogue, key, arguments.style, arguments.format) for key in keys)
    return Reply(words=text.rstrip("\n"), notes=_notes(reading.problems, folder))


def _apart_from_folder(named: list[str]) -> tuple[list[str], str | None]:
    """The names of plates, and the folder where the last name is one."""
    if named and Path(named[-1], "inperiod.yaml").is_file():
        return named[:-1], named[-1]
    return named, None


def _of_board(catalogue: Catalogue, board: str) -> list[str]:
    if board not in catalogue.boards:
        near = nearest(board, catalogue.boards)
        raise CannotDo(f"there is no board {board}." + (f" Did you mean {near}?" if near else ""))
    gathered = [each.plate for each in catalogue.boards[board].plates]
    if not gathered:
        raise CannotDo(f"no plate is gathered on the board {board} yet.")
    return list(dict.fromkeys(gathered))


def _cited(catalogue: Catalogue, key: str, style: str | None, form: str = "text") -> str:
    """A plate or a source in a style. Raises ``CannotDo`` for a style that does not exist."""
    from inperiod import citing

    chosen = style or citing.DEFAULT_STYLE
    if chosen not in citing.STYLES:
        raise CannotDo(f"there is no citation style {chosen}. There are: {', '.join(citing.STYLES)}.")
    write = citing.cite if key in catalogue.plates else citing.cite_source
    return write(catalogue, key, chosen, form)


def _asked(text: str, settings: Settings) -> tuple[dict[str, Any], Span]:
    """The date asked about, as ``when`` gives it, and the days it covers, circa allowed for."""
    from inperiod.dating import Unreadable, read_phrase

    data = when_json(text, settings.circa_years, settings.seasons)
    try:
        span = read_phrase(text, settings.seasons).span
    except Unreadable as error:
        raise CannotDo(f"the date “{text}” cannot be read: {error}") from None
    return data, widened(span, settings.circa_years)


def _named(vocabulary: Vocabulary, garment: str, features: list[str]) -> tuple[str, tuple[str, ...]]:
    """The garment and the features asked about, as the vocabulary names them."""
    try:
        known = find_garment(vocabulary, garment)
        return known, tuple(find_feature(vocabulary, each, known) for each in features)
    except NotFound as error:
        raise CannotDo(str(error)) from None


def _limits(arguments: argparse.Namespace, catalogue: Catalogue) -> dict[str, Any]:
    kinds = _kinds()
    if arguments.kind is not None and arguments.kind not in kinds:
        near = nearest(arguments.kind, kinds)
        hint = f"Did you mean {near}?" if near else f"There are: {', '.join(kinds)}."
        raise CannotDo(f"no source is of the kind {arguments.kind}. {hint}")
    return {
        "place": arguments.place,
        "wearer": arguments.wearer,
        "kind": arguments.kind,
        "grades": arguments.grades or catalogue.settings.grades,
    }


def _kinds() -> tuple[str, ...]:
    from inperiod.records.shapes import shape_of

    return shape_of("source").fields["kind"].words


def _notes(problems: tuple[Problem, ...], folder: str | None) -> tuple[str, ...]:
    """That the answer rests on records some of which could not be read whole."""
    errors = sum(each.severity == "error" for each in problems)
    if not errors:
        return ()
    command = f"inperiod check {folder}" if folder else "inperiod check"
    said = f"{counted(errors, 'error')} in the records; the answer rests on what could be read"
    return (f"Note: {said}. See: {command}",)


def _unknown_place(place: str | None, catalogue: Catalogue) -> tuple[str, ...]:
    if place is None:
        return ()
    known: dict[str, str] = {}
    for source in catalogue.sources.values():
        for part in (source.market or source.publisher.place or "").split(","):
            known.setdefault(part.strip().casefold(), part.strip())
    if place.strip().casefold() in known:
        return ()
    near = nearest(place.strip().casefold(), known)
    hint = f" Did you mean {known[near]}?" if near else ""
    return (f"Note: no source here is from {place}.{hint}",)

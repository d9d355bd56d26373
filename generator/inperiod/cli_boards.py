"""The command that shows and checks one research board."""

from __future__ import annotations

import argparse
from collections.abc import Iterable
from dataclasses import asdict
from pathlib import Path
from typing import TYPE_CHECKING, Any

from inperiod.cli_reply import CannotDo, Reply, counted, find_folder, read_folder
from inperiod.cli_words import complaint, points, wrapped

if TYPE_CHECKING:
    from inperiod.boards import Checked, Planned, Remark, ResolvedBoard
    from inperiod.records.model import Catalogue
    from inperiod.records.problems import Problem


def board(arguments: argparse.Namespace) -> Reply:
    """``inperiod board``: 1 where the file, a line of its making sheet or the plan itself is in error."""
    from inperiod.boards import as_json, read_board_file, resolve
    from inperiod.evidence import gather_facts

    file, folder = _file(arguments.file, arguments.folder)
    reading = read_folder(folder)
    catalogue = reading.catalogue
    try:
        data = file.read_bytes()
    except OSError as error:
        raise CannotDo(f"{file} cannot be read: {error.strerror}.") from None
    checked = read_board_file(data, file.name, catalogue)
    problems = _problems(checked)
    if checked.board is None:
        return Reply("\n".join(_complaints(file, checked.problems)), {"problems": problems}, status=1)
    resolved = resolve(checked.board, catalogue, gather_facts(catalogue))
    document = {**as_json(resolved), "problems": problems}
    wrong = (
        any(each.severity == "error" for each in checked.problems)
        or resolved.sheet.problems
        or any(each.kind == "contradiction" for each in resolved.remarks)
    )
    text = "\n\n".join(_blocks(catalogue, resolved, file, checked.problems))
    return Reply(words=text, data=document, status=1 if wrong else 0)


def _file(given: str, folder: str | None) -> tuple[Path, str | None]:
    """The board's file and the catalogue folder: the one given, else the one the file lies in."""
    file = Path(given)
    if not file.is_file():
        named = find_folder(folder) / "boards" / f"{given}.yaml" if "/" not in given else file
        if not named.is_file():
            raise CannotDo(f"there is no board {given}.")
        return named, folder
    around = file.resolve().parent.parent
    if folder is None and file.resolve().parent.name == "boards" and (around / "inperiod.yaml").is_file():
        return file, str(around)
    return file, folder


def _problems(checked: Checked) -> list[dict[str, Any]]:
    return [asdict(each) for each in checked.problems]


def _complaints(file: Path, problems: Iterable[Problem]) -> list[str]:
    return [line for each in problems for line in complaint(file.as_posix(), asdict(each))]


def _blocks(
    catalogue: Catalogue, resolved: ResolvedBoard, file: Path, problems: tuple[Problem, ...]
) -> Iterable[str]:
    """The board, paragraph by paragraph."""
    from inperiod.publishing import words

    board = resolved.board
    garment = catalogue.vocabulary.garments.get(board.garment)
    what = [words.sentence(garment.label if garment else board.garment), words.when(board.target)]
    what += [f"for {who}" for who in [words.wearer(board.wearer)] if who]
    yield "\n".join([board.title, wrapped(", ".join(what), "  ", "  ")])
    for each in resolved.planned:
        yield "\n".join(_planned(catalogue, each))
    if not resolved.planned:
        yield "Nothing is planned yet."
    if resolved.together:
        yield "\n".join(
            [
                f"All of it on one garment: {resolved.together.verdict.upper()}",
                *points(resolved.together.reasons[:1]),
            ]
        )
    if resolved.remarks:
        yield "\n".join(_remarks(catalogue, resolved.remarks))
    if resolved.suggested:
        yield "\n".join(
            [
                "Plates that show more of the plan:",
                *(
                    wrapped(f"{each.plate}  {_labels(catalogue, each.shows)}", "  · ", "    ")
                    for each in resolved.suggested
                ),
            ]
        )
    yield from _kept(resolved)
    yield from _making(resolved)
    if resolved.bibliography:
        yield "\n".join(["Sources:", *(wrapped(each.text, "  ", "    ") for each in resolved.bibliography)])
    if problems:
        yield "\n".join(_complaints(file, problems))
    yield _count(resolved, problems)


def _labels(catalogue: Catalogue, terms: Iterable[str]) -> str:
    known = catalogue.vocabulary.terms
    return ", ".join(known[term].label if term in known else term for term in terms)


def _planned(catalogue: Catalogue, each: Planned) -> list[str]:
    from inperiod.publishing import words
    from inperiod.publishing.wording import LEADS, per_cent

    feature, finding = each.feature, each.finding
    term = feature.term or f"{feature.facet}/{feature.state}"
    label = words.sentence(_labels(catalogue, [term]))
    detail = words.detail(feature)
    name = f"{label} ({term})" + (f", {detail}" if detail else "")
    if finding is None:
        return [f"{name}: not asked"]
    lines = [f"{name}: {finding.verdict.upper()}"]
    lines.append(wrapped(" ".join([LEADS[finding.verdict], *finding.reasons[:1]]), "  ", "  "))
    if each.usual:
        usual = ", ".join(f"{other.label} {per_cent(other.share.value or 0)}" for other in each.usual)
        lines += points([f"Usual then: {usual}."])
    for support in each.supports:
        reason = f"  {support.gathered.reason}" if support.gathered.reason else ""
        lines.append(wrapped(f"{support.gathered.plate}{reason}", "    ", "      "))
    if not each.supports and each.to_cite:
        lines.append(wrapped(f"to gather: {', '.join(each.to_cite)}", "    ", "      "))
    return lines


def _remarks(catalogue: Catalogue, remarks: tuple[Remark, ...]) -> list[str]:
    from inperiod.boards import KINDS

    lines = ["To settle:"]
    for kind, heading in KINDS.items():
        of_kind = [each for each in remarks if each.kind == kind]
        if not of_kind:
            continue
        lines.append(f"  {heading}")
        for each in of_kind:
            about = f"{each.plate} ({_labels(catalogue, [each.term or ''])}): " if each.plate else ""
            lines.append(wrapped(f"{about}{each.sentence}", "    · ", "      "))
    return lines


def _kept(resolved: ResolvedBoard) -> Iterable[str]:
    """Questions, departures and what is worn under it: the board's own words."""
    board = resolved.board
    if board.questions:
        yield "\n".join(["Open questions:", *points(board.questions)])
    if board.departures:
        yield "\n".join(
            [
                "Departures:",
                *points(
                    f"{each.original} → {each.stand_in}. {each.reason} Shows: {each.shows_at or 'not said'}."
                    for each in board.departures
                ),
            ]
        )
    if board.worn_under:
        yield wrapped(f"Worn under it: {board.worn_under}")


def _making(resolved: ResolvedBoard) -> Iterable[str]:
    sheet = resolved.sheet
    if sheet.lines:
        lines = ["Making sheet:"]
        for each in sheet.lines:
            lines.append(wrapped(f"{each.title}. {each.cut}", "  · ", "    "))
            lines.append(wrapped(each.formula, "    ", "    "))
        yield "\n".join(lines)
    if sheet.shopping:
        bought = [", ".join(filter(None, (f"{each.text} {each.what}", each.cost))) for each in sheet.shopping]
        yield "\n".join(["To buy:", *(wrapped(each, "  · ", "    ") for each in bought)])
    if sheet.problems:
        yield "\n".join(
            [
                "Not worked out:",
                *points(f"Line {each.index + 1}: {each.message} {each.hint}" for each in sheet.problems),
            ]
        )
    sentences = dict.fromkeys([*sheet.cautions, *(each.sentence for each in resolved.cautions)])
    if sentences:
        yield "\n".join(["Cautions:", *points(sentences)])


def _count(resolved: ResolvedBoard, problems: tuple[Problem, ...]) -> str:
    attested = sum(each.verdict == "attested" for each in resolved.findings)
    errors = sum(each.severity == "error" for each in problems) + len(resolved.sheet.problems)
    contradictions = sum(each.kind == "contradiction" for each in resolved.remarks)
    return wrapped(
        f"{attested} of {counted(len(resolved.findings), 'planned feature')} attested; "
        f"{counted(contradictions, 'contradiction')}, {counted(errors, 'error')}."
    )

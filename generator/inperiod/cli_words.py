"""Answers in sentences, for the terminal. Nothing here computes: it puts the JSON's own values in words."""

from __future__ import annotations

import shutil
import textwrap
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from inperiod.cli_reply import counted
from inperiod.dating import Span, day_number, in_words
from inperiod.records.model import Catalogue

if TYPE_CHECKING:
    from inperiod.importing import ImportReport

WIDEST = 100
CITED = 5
"""Plates named under an answer; ``--json`` has them all."""
NAMED_ROWS = 40
"""Rows of an import named one by one; ``--json`` has them all."""


def _width() -> int:
    return min(shutil.get_terminal_size().columns, WIDEST)


def wrapped(text: str, first: str = "", rest: str = "") -> str:
    return textwrap.fill(
        text,
        _width(),
        initial_indent=first,
        subsequent_indent=rest,
        break_on_hyphens=False,
        break_long_words=False,
    )


def points(sentences: Iterable[str]) -> list[str]:
    return [wrapped(each, "  · ", "    ") for each in sentences]


def when(data: Mapping[str, Any]) -> str:
    """A date phrase as understood."""
    said = data["words"] if data["words"] != data["edtf"] else ""
    lines = [f"{data['edtf']}  ({said})" if said else str(data["edtf"]), f"  {_days(data)}"]
    if data["widened"] != {"earliest": data["earliest"], "latest": data["latest"]}:
        lines.append(f"  counted as {_days(data['widened'])}, because it is about or uncertain")
    if data.get("note"):
        lines.append(wrapped(data["note"], "  ", "  "))
    return "\n".join(lines)


def _days(ends: Mapping[str, str | None]) -> str:
    """``1 May 1912 to 31 May 1912``, with what an open end means."""
    earliest, latest = ends["earliest"], ends["latest"]
    if earliest is None:
        return f"any day up to {_day(latest)}" if latest else "any day"
    return f"{_day(earliest)} to {_day(latest)}" if latest else f"{_day(earliest)} or any later day"


def _day(text: str) -> str:
    try:
        day = day_number(*(int(part) for part in text.split("-")))
    except (TypeError, ValueError):
        return text
    return in_words(Span(day, day))


def fit(catalogue: Catalogue, data: Mapping[str, Any]) -> str:
    """The answer for each feature and for all together, the verdict first."""
    garment = catalogue.vocabulary.garments[data["garment"]].label
    blocks = [wrapped(f"{_capital(garment)}, {_when(data['when'])}{_limited(data)}")]
    for finding in data["features"]:
        label = catalogue.vocabulary.terms[finding["term"]].label
        blocks.append("\n".join(_finding(catalogue, f"{_capital(label)} ({finding['term']})", finding)))
    if data["together"]:
        blocks.append("\n".join(_finding(catalogue, "All of these together", data["together"])))
    if data["sensitivity"]:
        firm = [f"{each['term']}: {each['sentence']}" for each in data["sensitivity"]]
        blocks.append("\n".join(["What would change this:", *points(firm)]))
    if data.get("citations"):
        cited = [wrapped(text, "  ", "    ") for text in data["citations"].values()]
        blocks.append("\n".join(["Cited:", *cited]))
    return "\n\n".join(blocks)


def _capital(text: str) -> str:
    return text[:1].upper() + text[1:]


def _when(asked: Mapping[str, Any]) -> str:
    words = asked.get("words") or asked["edtf"]
    typed = f"“{asked['input']}” = " if asked["input"] not in (words, asked["edtf"]) else ""
    return f"{typed}{words}"


def _limited(data: Mapping[str, Any]) -> str:
    parts = [f"sources of grade {' and '.join(data['grades'])}"]
    if data.get("place"):
        parts.append(f"from {data['place']}")
    if data.get("wearer"):
        parts.append(f"for a {data['wearer']}")
    if data.get("kind"):
        parts.append(f"of the kind {data['kind']}")
    if data.get("worn_for"):
        parts.append(f"worn for up to {data['worn_for']:g} years")
    return f" ({', '.join(parts)})"


def _finding(catalogue: Catalogue, name: str, finding: Mapping[str, Any]) -> list[str]:
    from inperiod.publishing.wording import LEADS, cite_head, per_cent

    word = f", {finding['frequency']}" if finding["frequency"] and finding["in_window"] else ""
    lines = [f"{name}: {finding['verdict'].upper()}{word}"]
    first, *more = finding["reasons"] or ("",)
    lines.append(wrapped(f"{LEADS[finding['verdict']]} {first}", "  ", "  "))
    lines += points(more)
    if finding["verdict"] not in ("attested", "seen once") and finding.get("usual"):
        usual = (f"{each['label']} {per_cent(each['share']['value'])}" for each in finding["usual"][:4])
        lines.append(wrapped(f"Seen then: {', '.join(usual)}.", "  · ", "    "))
    cited = finding["cite"]
    if cited:
        some = f" (the first {CITED} of {len(cited)})" if len(cited) > CITED else ""
        lines.append(f"  {cite_head(finding['verdict'], len(cited))}{some}:")
        lines += [wrapped(_plate(catalogue, key), "    ", "      ") for key in cited[:CITED]]
    return lines


def _plate(catalogue: Catalogue, key: str) -> str:
    plate = catalogue.plates[key]
    source = catalogue.sources[plate.source]
    dated = catalogue.dated(plate)
    date = in_words(dated.text) if dated else "undated"
    grade = f", grade {source.grade}" if source.grade else ""
    return f"{key}  {source.title}, {date}{grade}"


def timeline(catalogue: Catalogue, data: Mapping[str, Any]) -> str:
    """A table of shares, terms against decades; decades in which nothing was recorded are left out."""
    from inperiod.evidence.facts import plural

    garment = catalogue.vocabulary.garments[data["garment"]].label
    facet = catalogue.vocabulary.facets[data["facet"]].label
    blocks = [wrapped(f"{_capital(facet)} of {plural(garment)}, by decade{_limited(data)}")]
    columns = [i for i, weight in enumerate(data["recorded"]) if weight > 0]
    if data["rows"] and columns:
        blocks += _tables(data, columns)
        blocks.append(
            wrapped(
                "Shares of the plates recording it, each weighed by how much of its date lies in the decade; "
                "a dot is none. Decades with nothing recorded are left out, and terms none of them shows."
            )
        )
    else:
        blocks.append("Nothing that is counted records it.")
    if data["left_out"]:
        blocks.append(_not_counted(data["left_out"]))
    return "\n\n".join(blocks)


def _tables(data: Mapping[str, Any], columns: Sequence[int]) -> list[str]:
    names = [row["label"] for row in data["rows"]]
    last = ["plates, by weight", "documents"]
    left = max(len(each) for each in (*names, *last)) + 2
    most = max(1, (_width() - left) // 8)
    tables = []
    for start in range(0, len(columns), most):
        part = columns[start : start + most]
        lines = [" " * left + "".join(f"{data['decades'][i]}s".rjust(8) for i in part)]
        for row in data["rows"]:
            if not any(row["shares"][i] for i in part):
                continue
            lines.append(row["label"].ljust(left) + "".join(_cell(row["shares"][i]).rjust(8) for i in part))
        lines.append(last[0].ljust(left) + "".join(f"{data['recorded'][i]:.1f}".rjust(8) for i in part))
        lines.append(last[1].ljust(left) + "".join(f"{data['looked'][i]}".rjust(8) for i in part))
        tables.append("\n".join(lines))
    return tables


def _cell(share: float | None) -> str:
    from inperiod.publishing.wording import per_cent

    if share is None:
        return ""
    return per_cent(share).replace("under ", "<") if share > 0 else "·"


def _not_counted(left_out: Iterable[Mapping[str, Any]]) -> str:
    from inperiod.evidence.sentences import not_counted

    return wrapped(not_counted((each["reason"], each["recording"], "") for each in left_out))


def check(folder: Path, data: Mapping[str, Any]) -> str:
    """Every problem as file:line:column with its hint, then the count."""
    lines = []
    for each in data["problems"]:
        lines += complaint((folder / each["file"]).as_posix(), each)
    errors = sum(each["severity"] == "error" for each in data["problems"])
    warnings = len(data["problems"]) - errors
    found = f"{counted(errors, 'error')}, {counted(warnings, 'warning')}"
    lines.append(f"{counted(data['sources'], 'source')}, {counted(data['plates'], 'plate')}: {found}.")
    return "\n".join(lines)


def complaint(file: str, problem: Mapping[str, Any]) -> list[str]:
    """A problem as file:line:column with what is wrong, and its hint on a line of its own."""
    place = f"{file}:{problem['line']}:{problem['column']}"
    said = [f"{place}: {problem['severity']}: {problem['message']}"]
    return [*said, f"    {problem['hint']}"] if problem["hint"] else said


_OUTCOMES = {
    "new": ("new", "would be new"),
    "changed": ("written anew, because table or mapping changed", "would be written anew"),
    "same": ("as they were", "are as they were"),
    "kept": ("left, because the file was edited by hand", "would be left: the file was edited by hand"),
    "not taken": ("not taken", "would not be taken"),
}


def imported(report: ImportReport, into: Path) -> str:
    """What an import did, counts first, then every row that was not taken and why."""
    lines = [wrapped(note) for note in report.notes]
    done = "A dry run: nothing was written. " if report.dry_run else ""
    lines.append(f"{done}{counted(len(report.rows), 'row')} read for {into}:")
    for outcome, (was, would) in _OUTCOMES.items():
        if number := report.count(outcome):  # type: ignore[arg-type]
            lines.append(f"  {number:5,} {would if report.dry_run else was}")
    refused = [each for each in report.rows if each.reasons]
    if refused:
        lines.append("Not taken:")
        lines += _some([f"  line {each.line}: {'; '.join(each.reasons)}." for each in refused])
    if report.dry_run and any(each.makes for each in report.rows):
        lines.append("Row by row:")
        lines += _some(
            [f"  line {each.line}: {each.plate}, {each.makes}" for each in report.rows if each.makes]
        )
    remarks = [
        f"  line {each.line} ({each.plate}): {'; '.join(each.remarks)}."
        for each in report.rows
        if each.remarks
    ]
    if remarks:
        lines.append("Taken, with a remark:")
        lines += _some(remarks)
    if report.complaints:
        would = "would say of it" if report.dry_run else "says of it"
        lines.append(f"inperiod check {would}:")
        lines += _some(
            [f"  {each.file}:{each.line}:{each.column}: {each.message}" for each in report.complaints]
        )
    if report.left:
        lines.append("From an earlier import, no longer in the table, and left as they are:")
        lines += _some([f"  {each}" for each in report.left])
    return "\n".join(lines)


def _some(lines: list[str]) -> list[str]:
    if len(lines) <= NAMED_ROWS:
        return lines
    return [*lines[:NAMED_ROWS], f"  … and {len(lines) - NAMED_ROWS:,} more; --json has them all."]

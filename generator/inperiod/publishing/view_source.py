"""A source's page, and the list of all sources."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from inperiod.dating import decimal_year
from inperiod.publishing import citations, paths, words
from inperiod.publishing.lookup import Lookup
from inperiod.publishing.manifests import manifest_path
from inperiod.publishing.page import Link
from inperiod.publishing.pictures import pages_of
from inperiod.publishing.prose import site_root, web_address
from inperiod.publishing.sheets import NOTICE, sheets_of
from inperiod.publishing.view_plate import Fact, dating, recorded, rights, weighed
from inperiod.publishing.wording import place_name
from inperiod.records.model import Creator, Plate, Source


def source_view(look: Lookup, source: Source) -> Mapping[str, Any]:
    """What the template ``source.html`` shows."""
    lines = tuple(
        replace(
            look.line(plate),
            source=words.shortened(plate.caption or "", 72),
            place="",
            when=words.short_place(plate.locator)
            or (plate.id if len(source.plates) > 1 else words.brief(look.catalogue.dated(plate))),
            grade=None,
        )
        for plate in source.plates
    )
    reprints = look.reprints.get(source.id, ())
    original = look.catalogue.sources.get(source.reprint_of or "")
    garments: dict[str, int] = defaultdict(int)
    for plate in source.plates:
        garments[plate.garment] += 1
    return {
        "source": source,
        "kind": words.sentence(words.kind(source)),
        "when": words.when(source.date),
        "facts": source_facts(source),
        "dating": dating(source),
        "weighed": weighed(source),
        "rights": rights(source),
        "examined": examined(source),
        "lines": lines,
        "pages": [
            (page.scan, page.label, tuple(_in_a_row(look, plate) for plate in page.plates))
            for page in pages_of(look.catalogue, source)
        ],
        "sheets": sheets_of(look.catalogue, source),
        "sheets_notice": NOTICE,
        "garments": tuple(
            (look.garment_link(garment), number)
            for garment, number in sorted(garments.items(), key=lambda item: (-item[1], item[0]))
        ),
        "original": Link(original.title, paths.source_path(original.id), words.when(original.date))
        if original
        else None,
        "reprints": tuple(
            Link(each.title, paths.source_path(each.id), words.when(each.date)) for each in reprints
        ),
        "citations": citations.of_source(look.catalogue, source.id),
        "manifest": manifest_path(source.id) if site_root(look.catalogue.settings) else None,
    }


def _in_a_row(look: Lookup, plate: Plate) -> Link:
    """A plate among others of its page."""
    return Link(look.plate_title(plate), paths.plate_path(plate.key))


def source_facts(source: Source) -> tuple[Fact, ...]:
    """What is known of the source as a thing."""
    publisher = ", ".join(part for part in (source.publisher.name, source.publisher.place) if part)
    numbers = ", ".join(
        part for part in (f"vol. {source.volume}" if source.volume else "", _issue(source.issue)) if part
    )
    held = source.held_by
    keeping = ", ".join(part for part in (held.name, held.shelfmark, held.accession) if part)
    made = [
        Fact("Kind", words.sentence(words.kind(source))),
        Fact("Publisher", publisher),
        *(Fact(words.sentence(each.role or "By"), each.name) for each in source.creators),
        Fact("In", source.container or ""),
        Fact("Number", numbers),
        Fact("Edition", source.edition or ""),
        Fact("Pages", words.pages(source.pages or "")),
        Fact("Drafting system", source.drafting_system or ""),
        Fact("Sold or worn in", place_name(source.market or "")),
        Fact("Language", words.language(source.language)),
        Fact("Kept by", keeping),
        Fact(
            "Online",
            held.url or "",
            f"Read {held.accessed}." if held.accessed else None,
            address=web_address(held.url),
        ),
    ]
    return tuple(fact for fact in made if fact.value)


def _issue(issue: str | None) -> str:
    if not issue:
        return ""
    return issue if issue.lower().startswith(("no", "issue", "nr", "heft")) else f"no. {issue}"


def creators(people: tuple[Creator, ...]) -> str:
    """The people who made it, in a line."""
    return ", ".join(f"{each.name} ({each.role})" if each.role else each.name for each in people)


def examined(source: Source) -> str | None:
    """Which pages were looked at, by whom and when, so that absence means something."""
    if source.examined is None:
        return None
    who = recorded(source.examined)
    pages = source.examined.pages
    what = (
        words.pages(pages)
        if pages and not pages[:1].isdigit()
        else f"pages {words.pages(pages)}"
        if pages
        else "what is recorded here"
    )
    found = words.counted(len(source.plates), "plate")
    end = f" ({who[0].lower() + who[1:]})" if who else ""
    return f"Looked through: {what}{end}. {words.sentence(found)} recorded."


@dataclass(frozen=True, slots=True)
class SourceLine:
    link: Link
    kind: str
    where: str
    when: str
    grade: str | None
    plates: str
    note: str | None


def sources_view(look: Lookup) -> Mapping[str, Any]:
    """Every source by decade, undated ones last."""
    decades: dict[str, list[SourceLine]] = {}
    for source in look.sources:
        decades.setdefault(_decade(source), []).append(_line(source))
    kinds: dict[str, list[Source]] = defaultdict(list)
    for source in look.sources:
        kinds[source.kind].append(source)
    return {
        "decades": tuple(decades.items()),
        "kinds": tuple(
            f"{len(each)} {words.kind(each[0], many=len(each) > 1)}"
            for each in sorted(kinds.values(), key=lambda each: (-len(each), each[0].kind))
        ),
    }


def _decade(source: Source) -> str:
    if source.date is None:
        return "Undated"
    known = [day for day in (source.date.span.earliest, source.date.span.latest) if day is not None]
    if not known:
        return "Undated"
    middle = sum(decimal_year(day) for day in known) / len(known)
    return f"{int(middle // 10 * 10)}s"


def _line(source: Source) -> SourceLine:
    note = None
    if source.reprint_of:
        note = "A reprint, counted with the source it repeats."
    elif not source.plates:
        note = "Looked through; nothing in it was recorded as a plate."
    return SourceLine(
        Link(words.shortened(source.title, 90), paths.source_path(source.id)),
        words.kind(source),
        source.publisher.place or place_name(source.market or "") or source.held_by.name or "",
        words.brief(source.date),
        source.grade,
        words.counted(len(source.plates), "plate"),
        note,
    )

"""A small catalogue made by hand, for tests of the site: every kind of record, and things that must not
get out."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import replace
from pathlib import Path
from typing import TypeVar

from inperiod.dating import read_edtf
from inperiod.records.model import (
    Board,
    Catalogue,
    Confirmation,
    Dated,
    Departure,
    Facet,
    Feature,
    Gathered,
    HeldBy,
    Image,
    Locator,
    Mark,
    Milestone,
    Name,
    Plate,
    Price,
    Publisher,
    Recorded,
    Settings,
    Source,
    Term,
    Vocabulary,
    Wearer,
)

Kind = TypeVar("Kind")
HERE = Mark("sample.yaml")
SECRET = "withheld-marvel"
NOTICE = "Everything in this catalogue is invented for a test."


def dated(text: str) -> Dated:
    return Dated(text, read_edtf(text), HERE)


def term(facet: str, name: str, **more: object) -> Term:
    return Term(facet, name, name.replace("-", " "), f"What is called {name}.", HERE, **more)  # type: ignore[arg-type]


def vocabulary() -> Vocabulary:
    garments = (
        term("garment", "dress"),
        term("garment", "day-dress", broader="dress"),
        term("garment", "coat"),
    )
    necks = (
        term("neckline", "round", names=(Name("jewel neck", use="US", period="1920s"),)),
        term(
            "neckline", "v", told_apart="A V has a point.", see_also=("round",), cautions=("cords-children",)
        ),
        term("neckline", "boat"),
    )
    fastenings = (
        term("fastening", "buttons"),
        term(
            "fastening",
            "slide-fastener",
            not_before=Milestone(dated("1917-03-20"), "patent granted", "US patent 1,219,881"),
        ),
    )
    return Vocabulary(
        {
            "garment": Facet("garment", "Garment", "What garment?", True, garments, HERE),
            "neckline": Facet(
                "neckline", "Neckline", "What line at the neck?", True, necks, HERE, ("dress",)
            ),
            "fastening": Facet("fastening", "Fastening", "What holds it shut?", False, fastenings, HERE),
        }
    )


def plate(source: str, name: str, *terms: str, **more: object) -> Plate:
    features = tuple(Feature(key.partition("/")[0], key, HERE) for key in terms)
    page, _, figure = name.partition("-")
    given: dict[str, object] = {
        "garment": "day-dress",
        "locator": Locator(page=page[1:], figure=figure or None),
    }
    return Plate(id=name, source=source, mark=HERE, features=features, **(given | more))  # type: ignore[arg-type]


def source(name: str, date: str | None, *plates: Plate, **more: object) -> Source:
    given: dict[str, object] = {
        "kind": "trade-catalogue",
        "date": dated(date) if date else None,
        "date_basis": "printed",
        "publisher": Publisher("Nobody & Daughters", "Nowhere"),
        "rights": "http://rightsstatements.org/vocab/NKC/1.0/",
        "examined": Recorded(by="A. T.", on="2026-01-02", pages="1-40"),
    }
    return Source(id=name, title=name.replace("-", " ").title(), mark=HERE, plates=plates, **(given | more))  # type: ignore[arg-type]


def sources() -> dict[str, Source]:
    made = [
        source(
            "spring-list-1924",
            "1924-03/1924-08",
            plate(
                "spring-list-1924",
                "p3-1",
                "neckline/v",
                "fastening/buttons",
                outfit="a",
                caption="Frock of voile",
                price=Price("8/11", "GBP"),
                wearer=Wearer("woman", sizes="36 to 44"),
                recorded=Recorded("A. T.", "2026-01-03"),
                confirmations=(
                    Confirmation(
                        "B. U.", "disputed", HERE, dated("2026-02-01"), "neckline/v", "neckline/round"
                    ),
                ),
            ),
            plate("spring-list-1924", "p3-2", garment="coat", outfit="a"),
        ),
        source(
            "autumn-list-1925",
            "1925-23",
            plate("autumn-list-1925", "p9-1", "neckline/v", same_cut_as="spring-list-1924/p3-1"),
            plate("autumn-list-1925", "p9-2", "neckline/round", note="The back is not shown."),
            held_by=HeldBy("A library", "X 1", url="https://example.org/x1", accessed="2026-01-01"),
        ),
        source("reprint-1970", "1970", reprint_of="spring-list-1924"),
        source("looked-through-1926", "1926"),
        source("undated-leaf", None, plate("undated-leaf", "p1-1", "neckline/v"), date_basis="estimate"),
        source(
            "from-style",
            "192X",
            plate("from-style", "p1-1", "neckline/boat"),
            date_basis="style",
            kind="photograph",
            language="de",
        ),
        source(
            "half-hidden-1926",
            "1926-05",
            plate("half-hidden-1926", "p1-1", "neckline/v", caption="Seen by all"),
            plate(
                "half-hidden-1926",
                SECRET,
                "neckline/round",
                caption=f"{SECRET} caption",
                note=f"{SECRET} note",
                image=Image(f"{SECRET}.png", HERE, alt=SECRET),
                publish=False,
            ),
        ),
        source(
            f"{SECRET}-source",
            "1927",
            plate(f"{SECRET}-source", "p1-1", "neckline/v", caption=f"{SECRET} caption"),
            publish=False,
        ),
        source(
            "pointing-1928",
            "1928",
            plate("pointing-1928", "p1-1", "neckline/v", same_cut_as=f"half-hidden-1926/{SECRET}"),
            reprint_of=f"{SECRET}-source",
        ),
    ]
    return {each.id: each for each in made}


def boards() -> dict[str, Board]:
    shown = Board(
        id="regatta",
        title="A frock for the regatta",
        target=dated("1926"),
        garment="day-dress",
        mark=HERE,
        features=(Feature("neckline", "neckline/v", HERE), Feature("fastening", "fastening/buttons", HERE)),
        plates=(
            Gathered("spring-list-1924/p3-1", HERE, "the neck", "neckline/v"),
            Gathered(f"half-hidden-1926/{SECRET}", HERE, f"{SECRET} reason"),
        ),
        notes="Some *notes*.",
        questions=("Which cloth?",),
        departures=(Departure("hand sewing", "machine sewing", "it will be washed", HERE, "inside"),),
    )
    hidden = replace(shown, id=f"{SECRET}-board", title=f"{SECRET} board", publish=False)
    return {each.id: each for each in (shown, hidden)}


def sample(folder: Path, **settings: object) -> Catalogue:
    """The sample; ``settings`` replace single settings. ``folder`` need not exist."""
    given: dict[str, object] = {"title": "A Sample", "decades": (1900, 1930), "demonstration": NOTICE}
    return Catalogue(folder, Settings(**(given | settings)), vocabulary(), sources(), boards())  # type: ignore[arg-type]


def hostile(catalogue: Catalogue, payload: str) -> Catalogue:
    """Every free text of the sample replaced by the payload; ids stay as they are."""

    def in_plate(each: Plate) -> Plate:
        return replace(
            each,
            caption=payload,
            translation=payload,
            note=payload,
            occasion=payload,
            medium=payload,
            treatment=(payload,),
            price=Price(payload, "GBP", payload),
            wearer=Wearer("woman", payload, payload, payload),
            locator=Locator(payload, payload, payload, payload, payload),
            recorded=Recorded(payload, payload, payload),
            features=tuple(
                replace(feature, at=payload, width=payload, colour=payload, note=payload)
                for feature in each.features
            ),
        )

    def in_source(each: Source) -> Source:
        return replace(
            each,
            title=payload,
            date_note=payload,
            date_printed=payload,
            publisher=Publisher(payload, payload),
            container=payload,
            volume=payload,
            issue=payload,
            market=payload,
            note=payload,
            rights=payload,
            held_by=HeldBy(payload, payload, payload, payload, "2026-01-01"),
            examined=Recorded(payload, payload, payload),
            plates=tuple(in_plate(one) for one in each.plates),
        )

    def in_term(each: Term) -> Term:
        return replace(
            each,
            label=payload,
            definition=payload,
            names=(Name(payload, payload, payload, payload, payload),),
            told_apart=payload,
            cautions=(payload,),
            source=payload,
        )

    def in_facet(each: Facet) -> Facet:
        return replace(
            each,
            label=payload,
            question=payload,
            note=payload,
            terms=tuple(in_term(one) for one in each.terms),
        )

    def in_board(each: Board) -> Board:
        return replace(
            each,
            title=payload,
            notes=payload,
            questions=(payload,),
            care=payload,
            worn_under=payload,
            permanent_mark=payload,
            place=payload,
            departures=(Departure(payload, payload, payload, HERE, payload),),
            plates=tuple(replace(one, reason=payload) for one in each.plates),
        )

    return Catalogue(
        catalogue.folder,
        replace(
            catalogue.settings,
            title=payload,
            subtitle=payload,
            demonstration=payload,
            licence=payload,
            editors=(payload,),
            build_date=payload,
        ),
        Vocabulary(_each(catalogue.vocabulary.facets, in_facet)),
        _each(catalogue.sources, in_source),
        _each(catalogue.boards, in_board),
    )


def _each(things: Mapping[str, Kind], change: Callable[[Kind], Kind]) -> dict[str, Kind]:
    return {key: change(value) for key, value in things.items()}

"""Sources of every kind and with every awkward field, invented, for the citation tests."""

from __future__ import annotations

from inperiod.dating import read_edtf
from inperiod.records.model import (
    Creator,
    Dated,
    HeldBy,
    Locator,
    Mark,
    Plate,
    Publisher,
    Source,
)

MARK = Mark("cases.py")
MUSEUM = HeldBy(name="Lake Ennor Museum", shelfmark="TC 1926/14")
READ = HeldBy(name="Lake Ennor Museum", url="https://example.org/scan/14", accessed="2024-05-01")


def dated(text: str | None) -> Dated | None:
    return Dated(text, read_edtf(text), MARK) if text else None


def source(id: str, kind: str, title: str, date: str | None = None, **fields: object) -> Source:
    locator = fields.pop("locator", Locator(page="14"))
    fields.setdefault("date_basis", "printed")
    plate = Plate(id="p1", source=id, garment="day-dress", mark=MARK, locator=locator)  # type: ignore[arg-type]
    return Source(id=id, kind=kind, title=title, mark=MARK, date=dated(date), plates=(plate,), **fields)  # type: ignore[arg-type]


FIRM = Publisher("Hollin & Wray", "Leeds")
ADA = (Creator("Quillfeather, Ada"),)

SOURCES = [
    source("catalogue", "trade-catalogue", "Autumn list of washing frocks", "1926", publisher=FIRM),
    source("catalogue-season", "trade-catalogue", "Autumn list of washing frocks", "1926-23", publisher=FIRM),
    source("catalogue-half-year", "trade-catalogue", "Winter list", "1926-09/1927-02", publisher=FIRM),
    source("catalogue-held", "trade-catalogue", "Boating coats", "1926", publisher=FIRM, held_by=MUSEUM),
    source("catalogue-read", "trade-catalogue", "Boating coats", "1926-04", publisher=FIRM, held_by=READ),
    source(
        "catalogue-corporate",
        "trade-catalogue",
        "Boating coats",
        "1926",
        creators=(Creator("Hollin & Wray Limited"),),
        publisher=FIRM,
    ),
    source(
        "catalogue-no-place", "trade-catalogue", "Boating coats", "1926", publisher=Publisher("Hollin & Wray")
    ),
    source("catalogue-undated", "trade-catalogue", "Boating coats", publisher=FIRM),
    source("catalogue-circa", "trade-catalogue", "Boating coats", "1926~", publisher=FIRM),
    source("catalogue-circa-range", "trade-catalogue", "Boating coats", "1924~/1926~", publisher=FIRM),
    source("catalogue-before", "trade-catalogue", "Boating coats", "../1907", publisher=FIRM),
    source("catalogue-decade", "trade-catalogue", "Boating coats", "192X", publisher=FIRM),
    source(
        "catalogue-figure",
        "trade-catalogue",
        "Boating coats",
        "1926",
        publisher=FIRM,
        locator=Locator(page="14", figure="3", item="2207"),
    ),
    source(
        "catalogue-plate-only",
        "trade-catalogue",
        "Boating coats",
        "1926",
        publisher=FIRM,
        locator=Locator(plate="VII", figure="2"),
    ),
    source(
        "catalogue-no-locator", "trade-catalogue", "Boating coats", "1926", publisher=FIRM, locator=Locator()
    ),
    source(
        "catalogue-french",
        "trade-catalogue",
        "Robes d’été pour la plage",
        "1926",
        publisher=FIRM,
        language="fr",
    ),
    source("catalogue-quotes", "trade-catalogue", 'The "Merle" frock & others', "1926", publisher=FIRM),
    source(
        "catalogue-internal",
        "trade-catalogue",
        "Boating coats",
        "1926",
        publisher=FIRM,
        date_basis="internal",
    ),
    source("catalogue-original", "trade-catalogue", "Frocks of the lake", "1912", publisher=FIRM),
    source(
        "catalogue-reprint",
        "trade-catalogue",
        "Frocks of the lake",
        "1946",
        publisher=Publisher("Pellow", "Bath"),
        reprint_of="catalogue-original",
    ),
    source("manual", "sewing-manual", "The home dressmaker", "1910", creators=ADA, publisher=FIRM),
    source(
        "manual-edition",
        "sewing-manual",
        "The home dressmaker",
        "1910",
        creators=ADA,
        edition="2",
        publisher=FIRM,
    ),
    source(
        "manual-edition-words",
        "sewing-manual",
        "The home dressmaker",
        "1910",
        creators=ADA,
        edition="revised edition",
        publisher=FIRM,
    ),
    source(
        "manual-two",
        "sewing-manual",
        "The home dressmaker",
        "1910",
        creators=(*ADA, Creator("Pellow, Ruth Mary")),
        publisher=FIRM,
    ),
    source(
        "manual-three",
        "sewing-manual",
        "The home dressmaker",
        "1910",
        creators=(*ADA, Creator("Pellow, Ruth Mary"), Creator("Särndahl, Åke")),
        publisher=FIRM,
    ),
    source(
        "manual-editor",
        "sewing-manual",
        "The home dressmaker",
        "1910",
        creators=(Creator("Pellow, Ruth Mary", "editor"),),
        publisher=FIRM,
    ),
    source(
        "manual-volume",
        "sewing-manual",
        "The home dressmaker",
        "1910",
        creators=ADA,
        volume="2",
        publisher=FIRM,
    ),
    source("magazine", "magazine-issue", "The Shore Weekly", "1926-06-12", volume="12", issue="3"),
    source("magazine-month", "magazine-issue", "The Shore Weekly", "1926-06", volume="12", issue="3"),
    source("magazine-held", "magazine-issue", "The Shore Weekly", "1926-06", held_by=READ),
    source(
        "magazine-article",
        "magazine-issue",
        "What to wear on the water",
        "1926-06",
        container="The Shore Weekly",
        creators=ADA,
        volume="12",
        issue="3",
        pages="12-15",
    ),
    source("newspaper", "newspaper", "The Ennor Post", "1926-06-12", publisher=Publisher(None, "Ennor")),
    source(
        "newspaper-article",
        "newspaper",
        "Frocks at the regatta",
        "1926-06-12",
        container="The Ennor Post",
    ),
    source(
        "pattern-sheet", "pattern-sheet", "Supplement 44", "1926-03", creators=(Creator("Hollin Patterns"),)
    ),
    source("pattern-envelope", "pattern-envelope", "Frock 2207", "1926", publisher=FIRM),
    source(
        "plate-sheet",
        "fashion-plate",
        "Toilettes de bain",
        "1912",
        creators=ADA,
        publisher=FIRM,
        language="fr",
        locator=Locator(figure="2"),
    ),
    source("advertisement", "advertisement", "Summer sale", "1926-06-12", container="The Ennor Post"),
    source("advertisement-loose", "advertisement", "Summer sale", "1926", publisher=FIRM),
    source(
        "photograph",
        "photograph",
        "Regatta day",
        "1926-07-03",
        creators=ADA,
        held_by=MUSEUM,
        locator=Locator(),
    ),
    source("photograph-unknown", "photograph", "Regatta day", "1926", locator=Locator(), held_by=MUSEUM),
    source(
        "extant",
        "extant",
        "Dress",
        "1924/1927",
        date_basis="institution",
        locator=Locator(),
        held_by=HeldBy(name="Lake Ennor Museum", accession="1977.3.2"),
    ),
    source(
        "extant-read",
        "extant",
        "Dress",
        "1925~",
        date_basis="institution",
        locator=Locator(),
        held_by=HeldBy("Lake Ennor Museum", None, "1977.3.2", "https://example.org/1977.3.2", "2024-05-01"),
    ),
    source(
        "sale",
        "sale-listing",
        "Frock of the 1920s",
        None,
        date_basis="seller",
        locator=Locator(),
        held_by=HeldBy(url="https://example.org/lot/9", accessed="2024-05-01"),
    ),
    source(
        "other", "other", "Scrapbook of cuttings", "1926", creators=ADA, held_by=MUSEUM, locator=Locator()
    ),
]

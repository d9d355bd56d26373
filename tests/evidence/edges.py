"""Edge cases with a name, for the vectors."""

from __future__ import annotations

from evidence.catalogues import (
    absent,
    dated,
    facts,
    hidden,
    plate,
    round_,
    shown,
    source,
    square,
    vocabulary,
    window,
    yearly,
)
from inperiod.evidence import Facts, Question, Window

SQUARE = ("neckline/square",)


def _ask(*whens: str, features: tuple[str, ...] = SQUARE, **more: object) -> list[Question]:
    return [Question("day-dress", features, window(when), **more) for when in whens]  # type: ignore[arg-type]


def named_edges() -> list[tuple[str, Facts, list[Question]]]:
    """(name, facts, questions) of every edge worth a name."""
    ten = range(1905, 1915)
    return [
        ("nothing at all", facts(), [Question("day-dress", SQUARE, Window(None, None))]),
        ("a source without plates", facts(source("a", "1912")), _ask("1912")),
        ("all undated", facts(source("a", None, square(3))), _ask("1912")),
        (
            "open spans",
            facts(source("a", "../1912", square()), source("b", "1912/..", square())),
            _ask("1912"),
        ),
        (
            "one sighting",
            facts(source("a", "1912", square())),
            _ask("1912", "1911", "1950", "../1911", "1913/.."),
        ),
        (
            "two on one day",
            facts(*(source(i, "1912-05-06", square()) for i in "ab")),
            _ask("1912", "1913-01-01"),
        ),
        (
            "two far apart",
            facts(*yearly(1900, 1930, (1902, 1928))),
            _ask("1902", "1915", "1928", "1929", "1890", "1902/1928", "1901/1903"),
        ),
        ("ends of the range", facts(*yearly(1900, 1930, ten)), _ask(*map(str, range(1899, 1932)))),
        (
            "window open at either side",
            facts(*yearly(1900, 1930, ten)),
            _ask("../1904", "../1907", "1910/..", "1916/.."),
        ),
        (
            "unequal documents",
            facts(*yearly(1900, 1930, ten, plates=30)),
            _ask("1903", "1908", "1920", "192X"),
        ),
        (
            "a gap well looked at",
            facts(*yearly(1900, 1935, [*range(1901, 1908), *range(1928, 1934)], plates=40)),
            _ask("1908", "1915", "191X", "1927", *(f"{year}/{year + 9}" for year in range(1908, 1919))),
        ),
        (
            "a gap whose single years hold too little",
            facts(*yearly(1900, 1929, (*range(1900, 1904), *range(1926, 1930)), plates=16)),
            _ask("1904", "1915", "1914-06", "1913/1916", "1925"),
        ),
        (
            "spans of twelve years and a day more",
            facts(
                source("a", "1901/1912", square()),
                source("b", "1901-01-01/1913-01-01", square()),
                source("c", "1910~", square(2)),
                source("d", "1911", square()),
            ),
            _ask("1901/1912", "1906", "1910", "1911"),
        ),
        (
            "before the patent",
            facts(
                source("a", "1913", [plate(shown("fastening/slide-fastener"))]),
                source("b", "1920", [plate(shown("fastening/slide-fastener"))]),
                words=vocabulary(
                    {"fastening/slide-fastener": "1917-03-20"}, {"fastening/slide-fastener": "1925"}
                ),
            ),
            _ask(
                "1913",
                "1917-03-19",
                "1917-03-20",
                "1917",
                "1920",
                "../1916",
                features=("fastening/slide-fastener",),
            )
            + _ask("1916", features=("neckline/square", "fastening/slide-fastener")),
        ),
        (
            "reprints, missing originals and circles",
            facts(
                source("a", "1905", round_()),
                source("b", "1912", square(2), reprint_of="a"),
                source("c", "1906"),
                source("d", "1913", square(2), reprint_of="c"),
                source("e", "1914", square(3), reprint_of="d"),
                source("f", "1915", square(), reprint_of="nowhere"),
                source("g", "1915", square(), reprint_of="h"),
                source("h", "1916", square(), reprint_of="g"),
            ),
            _ask("1905", "1906", "1912", "1913", "1915"),
        ),
        (
            "reused cuts across grades",
            facts(
                source("a", "1905", square(), basis="seller"),
                source("b", "1908", square(1, same_cut_as="a/p001")),
                source("c", "1911", square(1, same_cut_as="b/p001") + round_()),
            ),
            _ask("1905", "1908", "1911") + _ask("1905", "1908", "1911", grades="ABC"),
        ),
        (
            "plates with dates of their own",
            facts(
                source(
                    "a", "1912", [*square(2, date=dated("1908")), *round_(), *square(1, date=dated("1912"))]
                )
            ),
            _ask("1908", "1912", "1910"),
        ),
        (
            "wear allowance",
            facts(*yearly(1900, 1920, (1908, 1909, 1910))),
            _ask("1912", "1913", "1915", worn_for=4) + _ask("../1912", "1911", worn_for=0.5),
        ),
        (
            "inferred, absent, hidden",
            facts(
                source("a", "1912", [plate(shown("neckline/square", "inferred"))] * 2),
                source("b", "1913", [plate(absent("neckline")), plate(hidden("neckline"))]),
                source(
                    "c",
                    "1914",
                    [plate(shown("neckline/square", "read"), shown("neckline/square", "inferred"))],
                ),
            ),
            _ask("1912", "1913", "1914", "1912/1914"),
        ),
        (
            "grades never weighed",
            facts(
                *(
                    source(f"s{i}", "1912", square(i + 1), basis=basis)
                    for i, basis in enumerate(("institution", "seller", "style", None))
                ),
                source("r", "1912", round_(), basis="printed"),
            ),
            _ask("1912") + _ask("1912", grades="AB") + _ask("1912", grades="ABC"),
        ),
        (
            "before the common era and far ahead",
            facts(source("a", "-0044", square()), source("b", "Y12000", square())),
            _ask("-0044", "Y12000", "1912"),
        ),
        (
            "names in many letters",
            facts(source("é-ß-日本", "1912", square(), place="Straße, Köln")),
            _ask("1912", place="STRASSE"),
        ),
    ]

"""How long the phrase reader takes over 10,000 distinct phrases (aim: under 2 seconds).

python bench/phrases.py
"""

from __future__ import annotations

import itertools
import time

from inperiod.dating import Unreadable, read_edtf, read_phrase

FORMS = (
    "{year}",
    "c. {year}",
    "{year}–{short}",
    "c. {year}-c. {next}",
    "before {year}",
    "12 May {year}",
    "May 12, {year}",
    "Autumn and Winter {year}",
    "August - September {year}",
    "{year}, printed {next}",
    "designed {year}, made {next}",
    "{year} or {next}",
    "possibly {year}",
    "Easter {year}",
)
VAGUE = ("{part} {decade}s", "c. {part} {decade}s", "{part} {decade}s, altered {next}")
PARTS = ("early", "mid-", "late", "first half of the", "second half of the", "early to mid-")
WANTED = 10_000


def phrases() -> list[str]:
    found: dict[str, None] = {}
    for year, form in itertools.product(range(1400, 2030), FORMS):
        found[form.format(year=year, next=year + 7, short=f"{(year + 9) % 100:02d}")] = None
    for decade, part, form in itertools.product(range(1400, 2030, 10), PARTS, VAGUE):
        found[form.format(part=part, decade=decade, next=decade + 40)] = None
    for number, part in itertools.product(range(1, 22), PARTS):
        found[f"{part} {number}th century"] = None
        found[f"c. {part} {number}th–early {number + 1}th century"] = None
    return list(found)[:WANTED]


def main() -> None:
    texts = phrases()
    assert len(texts) == WANTED
    read_edtf.cache_clear()
    refused = 0
    start, started = time.perf_counter(), time.process_time()
    for text in texts:
        try:
            read_phrase(text)
        except Unreadable:
            refused += 1
    took, busy = time.perf_counter() - start, time.process_time() - started
    print(f"{len(texts):,} distinct phrases in {took:.2f} s, {busy:.2f} s of them computing; aim: under 2 s")
    print(f"{refused:,} refused")


if __name__ == "__main__":
    main()

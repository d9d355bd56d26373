"""How long ten thousand flats take to draw on one core: every plate of the demonstration again and again.

Nothing is kept from one to the next. Run with ``python bench/flats.py [COUNT]``; it prints the time, the
rate, and how it stands to the twenty seconds that are asked for.
"""

from __future__ import annotations

import sys
import time
from itertools import cycle, islice
from pathlib import Path

from inperiod.drawing.flats import draw_flat
from inperiod.publishing.flats import middle_year
from inperiod.records import read_catalogue

LIMIT = 20.0
FLATS = 10_000


def main() -> int:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else FLATS
    catalogue = read_catalogue(Path(__file__).parent.parent / "catalogue").catalogue
    dated = [(plate, middle_year(catalogue.dated(plate))) for plate in catalogue.plates.values()]
    size = drawn = 0
    begin = time.process_time()
    for plate, year in islice(cycle(dated), count):
        flat = draw_flat(plate, catalogue.vocabulary, year)
        if flat is not None:
            size += len(flat.svg)
            drawn += 1
    spent = time.process_time() - begin
    whole = spent * FLATS / count
    print(
        f"{drawn} flats in {spent:.1f} s of one core: "
        f"{1000 * spent / count:.2f} ms each, {size // drawn} bytes each"
    )
    print(f"{FLATS} flats: {whole:.1f} s, {whole / LIMIT:.2f} of the {LIMIT:.0f} s allowed")
    return 0 if whole <= LIMIT else 1


if __name__ == "__main__":
    sys.exit(main())

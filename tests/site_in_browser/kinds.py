"""One or two pages of every kind, as addresses from the root of the site."""

from __future__ import annotations

from pathlib import Path

from inperiod.publishing import paths
from inperiod.records.model import Catalogue

QUESTION = "index.html#garment=day-dress&when=1926&feature=neckline/v&feature=closure/back"


def one_of_each(catalogue: Catalogue, site: Path) -> list[str]:
    """``catalogue`` is what is published, ``site`` its build. Every page that stands at the top of the site,
    and of each folder the fullest and the emptiest."""
    top = sorted(page.name for page in site.glob("*.html"))
    plates = list(catalogue.plates.values())
    longest = max(plates, key=lambda plate: len(plate.caption or ""))
    bare = next(plate for plate in plates if not plate.caption)
    empty = next(source for source in catalogue.sources.values() if not source.plates)
    pictured = next(plate for plate in plates if plate.image and plate.image.region)
    chosen = [QUESTION, *top, paths.plate_path(longest.key), paths.plate_path(bare.key)]
    chosen += [paths.plate_path(pictured.key), paths.source_path(pictured.source)]
    chosen.append(paths.source_path(empty.id))
    for folder in sorted(each for each in site.iterdir() if each.is_dir()):
        pages = sorted(folder.rglob("*.html"), key=lambda page: (page.stat().st_size, page.as_posix()))
        chosen += [page.relative_to(site).as_posix() for page in (pages[-1:] + pages[:1])]
    return list(dict.fromkeys(chosen))

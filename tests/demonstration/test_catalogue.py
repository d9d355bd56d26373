"""The demonstration catalogue is sound, large enough, invented, and holds every case the tool knows."""

from __future__ import annotations

from collections import Counter
from pathlib import Path
from typing import TYPE_CHECKING
from urllib.parse import urlsplit

import pytest

from inperiod.dating import iso_day
from inperiod.records import read_catalogue

if TYPE_CHECKING:
    from inperiod.records.model import Catalogue, Plate, Source

KINDS = set(
    "trade-catalogue magazine-issue newspaper pattern-sheet pattern-envelope sewing-manual fashion-plate "
    "advertisement photograph extant sale-listing other".split()
)
INVENTED_HOSTS = {"example.org", "example.com"}  # kept for examples by RFC 2606, so nobody's


def plates_with(catalogue: Catalogue, term: str) -> list[Plate]:
    return [plate for plate in catalogue.all_plates() if any(f.term == term for f in plate.features)]


def decade_counts(catalogue: Catalogue) -> Counter[int]:
    """Dated sources by the decade in which they begin."""
    days = (source.date.span.earliest for source in catalogue.sources.values() if source.date)
    return Counter(int(iso_day(day)[:3]) * 10 for day in days if day is not None)


def test_it_is_read_without_a_complaint(demo_folder: Path) -> None:
    assert [problem.message for problem in read_catalogue(demo_folder).problems] == []


def test_it_is_large_enough(demo_catalogue: Catalogue) -> None:
    plates = list(demo_catalogue.all_plates())
    print(f"{len(demo_catalogue.sources)} sources, {len(plates)} plates")
    assert len(demo_catalogue.sources) >= 60
    assert len(plates) >= 400
    assert sum(plate.garment == "day-dress" for plate in plates) >= 150


def test_the_twenties_are_densest_and_no_decade_is_empty(demo_catalogue: Catalogue) -> None:
    counts = decade_counts(demo_catalogue)
    assert counts[1890] >= 5
    assert counts[1900] >= 9
    assert counts[1910] >= 12
    assert counts[1930] >= 10
    assert counts[1920] > counts[1910] + counts[1930]


def test_it_covers_the_years_1895_to_1939(demo_catalogue: Catalogue) -> None:
    dates = [source.date.text for source in demo_catalogue.sources.values() if source.date]
    assert any(text.startswith("1895") for text in dates)
    assert any(text.startswith("1939") for text in dates)


def test_every_kind_of_source_is_there(demo_catalogue: Catalogue) -> None:
    assert {source.kind for source in demo_catalogue.sources.values()} == KINDS


def test_several_countries_and_languages_are_there(demo_catalogue: Catalogue) -> None:
    sources = demo_catalogue.sources.values()
    assert {"GB", "IE", "US", "CA", "FR", "DE", "AU", "NZ"} <= {source.market for source in sources}
    assert {"en", "fr", "fr-CA", "de"} <= {source.language for source in sources}


@pytest.mark.parametrize(
    "garment",
    "day-dress blouse skirt bathing-dress bathing-suit boating-jacket flannels nightdress pyjamas "
    "child-frock sailor-suit romper beach-pyjamas".split(),
)
def test_wear_for_the_waters_edge_is_there(demo_catalogue: Catalogue, garment: str) -> None:
    assert sum(plate.garment == garment for plate in demo_catalogue.all_plates()) >= 4


@pytest.mark.parametrize("who", ["woman", "man", "girl", "boy", "infant"])
def test_everybody_is_dressed(demo_catalogue: Catalogue, who: str) -> None:
    assert sum(plate.wearer.who == who for plate in demo_catalogue.all_plates()) >= 2


@pytest.mark.parametrize("status", ["maternity", "mourning", "uniform", "working"])
def test_a_wearers_state_is_recorded(demo_catalogue: Catalogue, status: str) -> None:
    assert any(plate.wearer.status == status for plate in demo_catalogue.all_plates())


def test_every_source_says_its_rights_its_grade_and_what_was_examined(demo_catalogue: Catalogue) -> None:
    for source in demo_catalogue.sources.values():
        assert source.rights, source.id
        assert source.grade, source.id
        assert source.examined, source.id
        assert source.examined.by, source.id
        assert source.examined.on, source.id


def test_it_says_that_it_is_invented(demo_catalogue: Catalogue) -> None:
    notice = demo_catalogue.settings.demonstration or ""
    assert "invented" in notice
    assert "source" in notice


def test_no_address_leads_to_anybody(demo_catalogue: Catalogue) -> None:
    addresses = [s.held_by.url for s in demo_catalogue.sources.values() if s.held_by.url]
    assert len(addresses) >= 10
    assert {urlsplit(address).hostname for address in addresses} <= INVENTED_HOSTS
    assert all(s.held_by.accessed for s in demo_catalogue.sources.values() if s.held_by.url)


def dates(catalogue: Catalogue) -> list[str]:
    return [source.date.text for source in catalogue.sources.values() if source.date]


def test_an_exact_day_is_there(demo_catalogue: Catalogue) -> None:
    assert "1926-08-07" in dates(demo_catalogue)


def test_a_season_is_there(demo_catalogue: Catalogue) -> None:
    assert "1912-23" in dates(demo_catalogue)


def test_a_circa_date_is_there(demo_catalogue: Catalogue) -> None:
    source = demo_catalogue.sources["haddonwick-catalogue-about-1910"]
    assert source.date is not None
    assert source.date.text == "1910~"
    assert source.grade == "A"


def test_an_uncertain_date_is_there(demo_catalogue: Catalogue) -> None:
    assert "1929?" in dates(demo_catalogue)


def test_a_half_year_list_is_there(demo_catalogue: Catalogue) -> None:
    assert "1926-09/1927-02" in dates(demo_catalogue)


def test_dates_open_at_either_end_are_there(demo_catalogue: Catalogue) -> None:
    spans = [source.date.span for source in demo_catalogue.sources.values() if source.date]
    assert any(span.earliest is None for span in spans)
    assert any(span.latest is None for span in spans)


def test_a_date_of_issue_and_a_longer_sale_stand_side_by_side(demo_catalogue: Catalogue) -> None:
    source = demo_catalogue.sources["harrowmere-washing-frocks-1912"]
    assert source.date is not None
    assert source.on_sale is not None
    assert source.on_sale.text != source.date.text


def test_making_wearing_altering_and_photographing_have_their_own_dates(demo_catalogue: Catalogue) -> None:
    sources = demo_catalogue.sources.values()
    for name in ("made", "worn", "altered", "photographed"):
        assert any(getattr(source, name) for source in sources), name


def test_plates_with_dates_of_their_own_are_there(demo_catalogue: Catalogue) -> None:
    book = demo_catalogue.sources["cutting-book-of-miss-pell-1911-1914"]
    assert all(plate.date for plate in book.plates)


def test_a_reprint_is_there(demo_catalogue: Catalogue) -> None:
    reprint = demo_catalogue.sources["harrowmere-washing-frocks-1927-reissue"]
    assert reprint.reprint_of in demo_catalogue.sources


def test_cuts_are_used_again_in_another_firms_leaflet(demo_catalogue: Catalogue) -> None:
    again = demo_catalogue.sources["osselby-drapers-leaflet-1927"].plates
    assert all(plate.same_cut_as and plate.same_cut_as.startswith("haddonwick") for plate in again)


@pytest.mark.parametrize("grade", ["A", "B", "C"])
def test_every_grade_of_dating_is_there(demo_catalogue: Catalogue, grade: str) -> None:
    assert any(source.grade == grade for source in demo_catalogue.sources.values())


def test_most_sources_carry_evidence(demo_catalogue: Catalogue) -> None:
    """Grade A, closed at both ends and no longer than twelve years."""

    def counts(source: Source) -> bool:
        span = source.date.span if source.date else None
        if span is None or span.earliest is None or span.latest is None:
            return False
        return source.grade == "A" and span.latest - span.earliest <= 12 * 366

    assert sum(map(counts, demo_catalogue.sources.values())) >= 60


def test_dates_from_style_are_there(demo_catalogue: Catalogue) -> None:
    assert any(source.date_basis == "style" for source in demo_catalogue.sources.values())


def test_a_source_looked_through_and_empty_is_there(demo_catalogue: Catalogue) -> None:
    source = demo_catalogue.sources["quenby-boat-builders-list-1926"]
    assert source.plates == ()
    assert source.examined is not None
    assert source.examined.pages == "1-32"


@pytest.mark.parametrize("state", ["none", "not visible"])
def test_what_is_absent_and_what_cannot_be_seen_are_told_apart(demo_catalogue: Catalogue, state: str) -> None:
    assert any(f.state == state for plate in demo_catalogue.all_plates() for f in plate.features)


@pytest.mark.parametrize("reading", ["seen", "read", "inferred"])
def test_every_way_of_reading_is_there(demo_catalogue: Catalogue, reading: str) -> None:
    found = [f for plate in demo_catalogue.all_plates() for f in plate.features if f.reading == reading]
    assert len(found) >= 50


def test_places_widths_and_numbers_are_recorded(demo_catalogue: Catalogue) -> None:
    features = [f for plate in demo_catalogue.all_plates() for f in plate.features]
    assert any(f.at for f in features)
    assert any(f.width for f in features)
    assert any(f.count for f in features)
    assert any(f.colour for f in features)


def test_a_term_that_is_never_seen_is_in_the_vocabulary(demo_catalogue: Catalogue) -> None:
    assert "sleeve/virago" in demo_catalogue.vocabulary.terms
    assert plates_with(demo_catalogue, "sleeve/virago") == []


def test_a_plate_kept_off_the_site_is_there(demo_catalogue: Catalogue) -> None:
    hidden = [plate for plate in demo_catalogue.all_plates() if not plate.publish]
    assert 1 <= len(hidden) <= 3
    assert all(plate.caption for plate in hidden)


def test_every_view_medium_and_treatment_is_there(demo_catalogue: Catalogue) -> None:
    plates = list(demo_catalogue.all_plates())
    assert {plate.view for plate in plates} == {"front", "back", "side", "detail", "text only"}
    assert {plate.medium for plate in plates} >= {"cut", "photograph", "drawing", "colour plate", "object"}
    assert {each for plate in plates for each in plate.treatment} == {"retouched", "tinted", "reversed"}


def test_figures_in_several_garments_are_there(demo_catalogue: Catalogue) -> None:
    outfits = Counter((plate.source, plate.outfit) for plate in demo_catalogue.all_plates() if plate.outfit)
    assert len(outfits) >= 6
    assert min(outfits.values()) >= 2


def test_titles_that_try_the_page_are_there(demo_catalogue: Catalogue) -> None:
    titles = [source.title for source in demo_catalogue.sources.values()]
    assert max(map(len, titles)) > 250
    assert any(title.count("'") >= 4 for title in titles)
    assert any("Möwenbrück" in title for title in titles)


def test_prices_are_in_the_forms_of_their_countries(demo_catalogue: Catalogue) -> None:
    prices = {plate.price.amount for plate in demo_catalogue.all_plates() if plate.price}
    assert {"8/11", "$2.98", "39 fr.", "24,50 M."} <= prices


def test_every_foreign_caption_is_translated(demo_catalogue: Catalogue) -> None:
    for source in demo_catalogue.sources.values():
        for plate in source.plates:
            if plate.caption and source.language and not source.language.startswith("en"):
                assert plate.translation, plate.key


def test_three_boards_are_there_and_one_departs_from_its_evidence(demo_catalogue: Catalogue) -> None:
    garments = {board.garment for board in demo_catalogue.boards.values()}
    assert garments == {"day-dress", "bathing-suit", "nightdress"}
    departing = demo_catalogue.boards["nightdress-boathouse-hotel"]
    assert {each.shows_at for each in departing.departures} == {
        "across the field",
        "at arm's length",
        "inside",
    }
    for board in demo_catalogue.boards.values():
        assert board.notes
        assert board.questions
        assert board.permanent_mark
        assert all(each.plate in demo_catalogue.plates and each.reason for each in board.plates)

"""Phrases as catalogues and people write them, what they mean, and what is refused.

What the words mean is common cataloguing practice; thirds of decades and centuries, the months of seasons and
"NN00s is the century" are conventions of the project.
"""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from inperiod.dating import Undated, Unreadable, in_words, iso_day, lexicon, read_edtf, read_phrase

MEANT = """
1912                                        1912
the year 1912                               1912
c. 1910                                     1910~
ca.1910                                     1910~
c1910                                       1910~
circa 1910                                  1910~
1910 ca.                                    1910~
1910 (circa)                                1910~
about 1910                                  1910~
around the 1850s                            185X~
1910?                                       1910?
1910 (?)                                    1910?
probably 1910                               1910?
possibly c. 1912                            1912%
(1910)                                      1910
[ca. 1910]                                  1910~
192-                                        192X
[192-?]                                     192X?
19--                                        19XX
1920s                                       192X
1920's                                      192X
1920’s                                      192X
1920 s                                      192X
the 1920s                                   192X
1 9 2 6                                     1926
1926.                                       1926
early 1920s                                 1920/1923
mid-1920s                                   1924/1926
late 1920s                                  1927/1929
mid to late 1920s                           1924/1929
early to mid-1920s                          1920/1926
1920s (early)                               1920/1923
first half of the 1920s                     1920/1924
19th century                                18XX
19th c.                                     18XX
19thC                                       18XX
C19                                         18XX
18C                                         17XX
nineteenth century                          18XX
mid-nineteenth-century                      1834/1866
early 19th century                          1800/1833
mid-18th century                            1734/1766
late 19th century                           1867/1899
later 19th century                          1850/1899
early- to mid-18th century                  1700/1766
mid- to late-19th century                   1834/1899
first half of the 18th century              1700/1749
2nd half of 19th cent.                      1850/1899
second quarter of the 19th century          1825/1849
2nd quarter, 19th century                   1825/1849
3rd quarter 19th century                    1850/1874
last quarter of the 18th century            1775/1799
last third of the 19th century              1867/1899
19th century, second half                   1850/1899
19th century (late)                         1867/1899
first decade of the 20th century            190X
c. late 19th-early 20th century             1867~/1933~
late 19th-mid 20th century                  1867/1966
19th–early 20th century                     18XX/1933
18th - 19th century                         17XX/18XX
second half of the 19th century–early 20th century   1850/1933
16th or 18th century                        [15XX,17XX]
1800s                                       18XX
late 1700s                                  1767/1799
1900s (decade)                              190X
1890s-1900s                                 189X/190X
1896–1900s                                  1896/190X
early 21st century                          2000/2033
5th century BC                              -04XX
44 BC                                       -0043
100-50 BC                                   -0099/-0049
AD 79                                       0079
ca. 1885–90                                 1885~/1890~
c. 1908 - 1910                              1908~/1910~
1908-c. 1910                                1908/1910~
c.1820-c.1860                               1820~/1860~
about 1924-1927                             1924~/1927~
1924-1927?                                  1924?/1927?
1924?-1927                                  1924?/1927
1926–27                                     1926/1927
1926-27                                     1926/1927
1926-7                                      1926/1927
1926/27                                     1926/1927
1905–10                                     1905/1910
c. 1905-10                                  1905~/1910~
1920-25                                     1920/1925
1865 / 1887                                 1865/1887
1910 to 1915                                1910/1915
between 1910 and 1915                       1910/1915
from 1910 to 1915                           1910/1915
1910 through 1915                           1910/1915
1870-1880s                                  1870/188X
1920s-30s                                   192X/193X
1910s/20s                                   191X/192X
late 1910s–early 1920s                      1917/1923
late 1920s to early 30s                     1927/1933
c. 1761 - early 1770s                       1761~/1773~
1926 or 1927                                [1926,1927]
1926 or 27                                  [1926,1927]
late 18th or early 19th century             [1767..1799,1800..1833]
1933, 1937                                  {1933,1937}
1910, 1912 and 1915                         {1910,1912,1915}
1926, 27, 28                                {1926,1927,1928}
1940s, possibly early 1950s                 [194X,1950?..1953?]
before 1907                                 ../1906
pre-1914                                    ../1913
prior to 1907                               ../1906
before c. 1910                              ../1909~
pre-1912?                                   ../1911?
before the 1920s                            ../1919
before May 1926                             ../1926-04
before 1 May 1926                           ../1926-04-30
by 1917                                     ../1917
until 1917                                  ../1917
no later than 1917                          ../1917
in or before 1917                           ../1917
1917 or earlier                             ../1917
1917 at the latest                          ../1917
after 1920                                  1921/..
post-1945                                   1946/..
after autumn 1912                           1912-12/..
after c.1915                                1916~/..
not before 1917                             1917/..
no earlier than 1905                        1905/..
on or after 1905                            1905/..
1898 or later                               1898/..
1917 onwards                                1917/..
since 1917                                  1917/..
1912+                                       1912/..
after 1914 and before 1920                  1915/1919
Sept. 1926                                  1926-09
September, 1926                             1926-09
1926 May                                    1926-05
1852/XII                                    1852-12
XII 1926                                    1926-12
1858/2                                      1858-02
10/1926                                     1926-10
c. March 1944                               1944-03~
August - September 1954                     1954-08/1954-09
May/June 1926                               1926-05/1926-06
May or June 1926                            [1926-05,1926-06]
Jan. & Feb. 1913                            {1913-01,1913-02}
December 1945 - January 1946                1945-12/1946-01
12 May 1926                                 1926-05-12
12th May 1926                               1926-05-12
Saturday, 12 May 1926                       1926-05-12
May 12, 1926                                1926-05-12
May 12th, 1926                              1926-05-12
1926, May 12                                1926-05-12
5/31/1926                                   1926-05-31
31/5/1926                                   1926-05-31
31.5.1926                                   1926-05-31
12.V.1926                                   1926-05-12
1926/5/12                                   1926-05-12
1926-5-12                                   1926-05-12
June 19-20, 1964                            1964-06-19/1964-06-20
15–20 May 1926                              1926-05-15/1926-05-20
15 May–12 June 1926                         1926-05-15/1926-06-12
June 28 - July 3, 1926                      1926-06-28/1926-07-03
28 Dec 1925 - 3 Jan 1926                    1925-12-28/1926-01-03
early May 1926                              1926-05-01/1926-05-10
late February 1924                          1924-02-21/1924-02-29
early 1926                                  1926-37
late 1926                                   1926-39
first half of 1926                          1926-40
first quarter of 1926                       1926-33
Autumn 1912                                 1912-23
Fall, 1926                                  1926-23
1912 Autumn                                 1912-23
Winter 1912-13                              1912-24
Winter 1912/1913                            1912-24
Autumn and Winter 1912-13                   1912-23/1912-24
Autumn/Winter 1912                          1912-23/1912-24
A/W 1912-13                                 1912-23/1912-24
1912 Autumn-Winter                          1912-23/1912-24
Spring–Summer 1926                          1926-21/1926-22
the spring and summer of 1926               1926-21/1926-22
S/S 1999                                    1999-21/1999-22
winter and spring 1913                      1912-24/1913-21
spring and autumn 1912                      {1912-21,1912-23}
spring 1926 to autumn 1927                  1926-21/1927-23
Victorian                                   1837/1901
Edo period (1603-1867), 19th century        1800/1867
Ming Dynasty, 1368-1644, 16th century       15XX
Meiji period, late 19th century             1868/1899
Edwardian, c. 1905                          1905~
um 1890/95                                  1890~/1895~
vor 1914                                    ../1913
nach 1918                                   1919/..
1920er Jahre                                192X
Anfang der 1920er Jahre                     1920/1923
Ende 19. Jahrhundert                        1867/1899
1. Hälfte 19. Jh.                           1800/1849
zweites Viertel 19. Jahrhundert             1825/1849
12. Mai 1926                                1926-05-12
März 1926                                   1926-03
Herbst/Winter 1912/13                       1912-23/1912-24
zwischen 1910 und 1915                      1910/1915
von 1910 bis 1915                           1910/1915
vers 1880-1890                              1880~/1890~
début du XIXe siècle                        1800/1833
1ère moitié du XIXe siècle                  1800/1849
fin du XVIIIe - début du XIXe siècle        1767/1833
années 1920                                 192X
années 1920-1930                            192X/193X
années 1910-1914                            1910/1914
1er mai 1926                                1926-05-01
août 1926                                   1926-08
automne-hiver 1912-1913                     1912-23/1912-24
entre 1880 et 1890                          1880/1890
hacia 1920                                  1920~
finales del siglo XIX                       1867/1899
siglos XVIII-XIX                            17XX/18XX
último cuarto del siglo XIX                 1875/1899
12 de mayo de 1926                          1926-05-12
otoño e invierno 1912                       1912-23/1912-24
prima metà del XIX secolo                   1800/1849
prima del 1920                              ../1919
ottocento                                   18XX
autunno-inverno 1926-27                     1926-23/1926-24
eind 19e eeuw                               1867/1899
eerste helft 19e eeuw                       1800/1849
tussen 1900 en 1910                         1900/1910
"""
PAIRS = [tuple(line.rsplit(None, 1)) for line in MEANT.strip().splitlines()]


@pytest.mark.parametrize(("phrase", "edtf"), PAIRS)
def test_a_phrase_is_read_as_it_is_meant(phrase: str, edtf: str) -> None:
    understood = read_phrase(phrase)
    assert understood.edtf == edtf
    assert understood.span == read_edtf(edtf)
    assert understood.words == in_words(edtf)


@pytest.mark.parametrize(("phrase", "edtf"), PAIRS)
def test_capitals_spaces_and_the_kind_of_dash_change_nothing(phrase: str, edtf: str) -> None:
    typed = phrase.upper() if phrase != phrase.upper() else phrase
    assert read_phrase(f"\u00a0 {typed}  ".replace(" ", "\u2009 ")).edtf == edtf
    if "–" in phrase:
        assert read_phrase(phrase.replace("–", "—")).edtf == edtf


@pytest.mark.parametrize(
    "edtf", ["1912", "1912-09", "1912-23", "1910~", "1910/1915", "../1906", "[1926,1927]", "192X"]
)
def test_edtf_itself_is_a_phrase(edtf: str) -> None:
    assert read_phrase(f" {edtf} ").edtf == edtf


@pytest.mark.parametrize(
    ("phrase", "edtf", "note"),
    [
        ("1912-23", "1912-23", "read as autumn 1912; for the years 1912 to 1923 write 1912/1923"),
        ("1905-10", "1905-10", "read as October 1905; for the years 1905 to 1910 write 1905/1910"),
        ("1912-09", "1912-09", None),
        ("2001-34", "2001-34", None),
        ("5/12/1926", "1926-05-12", "the month is read first, then the day"),
        ("5/31/1926", "1926-05-31", None),
        ("1900s", "19XX", "1900s is read as the century; for the decade write 190X"),
        ("Meiji period", "1868/1912", "Meiji is read as 1868 to 1912"),
    ],
)
def test_what_can_be_meant_in_two_ways_says_how_it_was_taken(
    phrase: str, edtf: str, note: str | None
) -> None:
    understood = read_phrase(phrase)
    assert (understood.edtf, understood.note) == (edtf, note)


def test_winter_runs_over_new_year_in_the_north_and_summer_in_the_south() -> None:
    assert read_phrase("Winter 1912-13").edtf == "1912-24"
    assert read_phrase("Summer 1912-13", "southern").edtf == "1912-22"
    southern = read_phrase("Spring and Summer 1912-13", "southern")
    assert southern.edtf == "1912-21/1912-22"
    assert southern.span.latest is not None
    assert iso_day(southern.span.latest) == "1913-02-28"
    assert southern.words == "spring 1912 to summer 1912–13"
    for phrase, seasons in (("Summer 1912-13", "northern"), ("Winter 1912-13", "southern")):
        with pytest.raises(Unreadable):
            read_phrase(phrase, seasons)  # type: ignore[arg-type]


# ---- several events ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("phrase", "edtf", "note"),
    [
        ("designed 1938, made 1955", "1955", "the date given for “made”; also designed 1938"),
        (
            "1934 (designed) 1941 (manufactured)",
            "1941",
            "the date given for “manufactured”; also designed 1934",
        ),
        ("designed in 1926 and made in 1927", "1927", "the date given for “made”; also designed 1926"),
        ("1953-1957 (manufactured)", "1953/1957", "the date given for “manufactured”"),
        ("1984 (manufactured 1985)", "1985", "the date given for “manufactured”; also 1984"),
        ("2005, designed 1988", "2005", "also designed 1988"),
        ("1848 (designed 1847)", "1848", "also designed 1847"),
        ("designed 1984", "1984", "the date given for “designed”"),
        ("1991 designed", "1991", "the date given for “designed”"),
        ("1939, printed 1946", "1939", "also printed 1946"),
        ("1939, published 1946", "1939", "also published 1946"),
        ("1827, published May 7, 1856", "1827", "also published 7 May 1856"),
        ("published May 7, 1856", "1856-05-07", "the date given for “published”"),
        ("1585, printed c. 1650", "1585", "also printed about 1650"),
        ("1925, printed later", "1925", "also printed later"),
        ("1658, later impression", "1658", "also later impression"),
        ("1653 (dated in the third state)", "1653", "also third state"),
        (
            "modeled c. 1878, cast after c.1915",
            "1878~",
            "the date given for “modeled”; also cast about 1916 or later",
        ),
        ("modelled 1884-1887 cast 1912", "1884/1887", "the date given for “modelled”; also cast 1912"),
        ("1880s, altered 1920s", "188X", "also altered the 1920s"),
        ("c. 1840 (altered c. 1860)", "1840~", "also altered about 1860"),
        ("1905, worn 1912", "1905", "also worn 1912"),
        ("1734 (woven), 1740s (sewn)", "174X", "the date given for “sewn”; also woven 1734"),
        (
            "Project: 1902-1907; Drawn December 10, 1904",
            "1904-12-10",
            "the date given for “drawn”; also project 1902 to 1907",
        ),
        ("1960, Design Patent 191,300, 1961", "1960", "also patented 1961"),
        ("patented 1893", "1893", "the date given for “patented”"),
        ("19th century in the style of 16th century", "18XX", "also copying an older style"),
    ],
)
def test_of_several_events_the_making_counts_and_the_others_are_noted(
    phrase: str, edtf: str, note: str
) -> None:
    understood = read_phrase(phrase)
    assert (understood.edtf, understood.note) == (edtf, note)


@pytest.mark.parametrize(
    "phrase",
    [
        "made 1910, made 1915",
        "printed 1939, published 1946",
        "made 1910, printed in the reign of Gustav",
        "made 1910, 1912 revised",
        "1910, made sometime early",
        "Edo period (1603-1867), 20th century",
    ],
)
def test_events_that_cannot_be_told_apart_are_refused(phrase: str) -> None:
    with pytest.raises(Unreadable):
        read_phrase(phrase)


# ---- never a guess -----------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    "phrase", ["n.d.", "N.D.", "nd", "undated", "no date", "s. f.", "o. J.", "sans date"]
)
def test_a_phrase_that_says_there_is_no_date_is_told_apart(phrase: str) -> None:
    with pytest.raises(Undated):
        read_phrase(phrase)


@pytest.mark.parametrize(
    ("phrase", "said"),
    [
        ("turn of the century", "names no year"),
        ("interwar", "names no year"),
        ("mid-century", "names no year"),
        ("the twenties", "names no year"),
        ("late Victorian", "names no year"),
        ("'20s", "not read as a date"),
        ("Easter 1912", "“easter”"),
        ("London, 1926", "“london”"),
        ("1926 (spring catalogue)", "“catalogue”"),
        ("c. 1660 UPH 1641-1655", "“uph”"),
        ("1905/10", "write 1905-10 or 1905/1910"),
        ("1898/9", "write 1898-09 or 1898/1899"),
        ("9-1-1926", "two ways"),
        ("12/10/26", "four digits"),
        ("30 February 1926", "no 30 February"),
        ("35 May 1926", "no 35 May"),
        ("13/13/1926", "no month 13"),
        ("1915-1910", "did you mean 1910/1915"),
        ("1920s-1910s", "ends before it begins"),
        ("Autumn 1912-13", ""),
        ("Spring and Summer 1912-13", ""),
        ("late summer 1926", ""),
        ("1895-1905, probably 1898", ""),
        ("22nd century BCE 19", ""),
        ("25th century", ""),
        ("190", "four digits"),
        ("", "no date"),
        ("   ", "no date"),
        ("…", "no date"),
        ("1912 " * 60, "too long"),
        ("1 " * 60, ""),
        ("before after 1912", ""),
        ("circa", ""),
        ("c. c. c.", ""),
    ],
)
def test_what_cannot_be_read_is_refused_with_a_reason(phrase: str, said: str) -> None:
    with pytest.raises(Unreadable, match=said or None):
        read_phrase(phrase)


WORDS = sorted(
    {
        word
        for table in (lexicon.MONTHS, lexicon.WORDS, lexicon.EVENTS, lexicon.FILLERS, lexicon.PERIODS)
        for word in table.split()
    }
    | {
        "1912",
        "1920s",
        "30s",
        "19th",
        "XIX",
        "5",
        "12",
        "-",
        "–",
        "/",
        ",",
        "(",
        ")",
        "?",
        "1900s",
        "1912-13",
    }
)


@given(st.text(max_size=60) | st.lists(st.sampled_from(WORDS), max_size=9).map(" ".join))
def test_any_text_is_understood_or_refused_and_nothing_else(text: str) -> None:
    try:
        understood = read_phrase(text)
    except Unreadable:
        return
    assert understood.span == read_edtf(understood.edtf)
    assert understood.words


@given(st.integers(1000, 2030), st.integers(0, 80))
def test_every_way_of_writing_two_years_means_the_same(first: int, more: int) -> None:
    last = first + more
    for phrase in (
        f"{first}–{last}",
        f"{first} to {last}",
        f"from {first} to {last}",
        f"between {first} and {last}",
    ):
        span = read_phrase(phrase).span
        assert (span.earliest, span.latest) == (read_edtf(f"{first}").earliest, read_edtf(f"{last}").latest)

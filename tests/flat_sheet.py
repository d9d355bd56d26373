"""Sixty flats of varied garments, years and features on five sheets, to be looked at one by one.

    python tests/flat_sheet.py FOLDER

writes FOLDER/flats-1.png to FOLDER/flats-5.png by Chromium: twelve flats each, 380 pixels wide, under each
what it was drawn from, what was left out and what was assumed.
"""

from __future__ import annotations

import sys
from html import escape
from pathlib import Path

from playwright.sync_api import sync_playwright

from conftest import CHECKOUT, CHROMIUM_ARGUMENTS, find_chromium
from inperiod.drawing.flats import draw_plan
from inperiod.records import read_catalogue
from inperiod.records.model import Feature, Mark, Vocabulary

ON_A_SHEET = 12
STYLE = """
body { margin: 0; width: 1560px; font: 12px/1.3 system-ui, sans-serif; background: #f2efe7; color: #21242c; }
main { display: flex; flex-wrap: wrap; gap: 8px; padding: 8px; }
figure { margin: 0; width: 380px; background: #fbfaf4; }
figure svg { width: 100%; height: 400px; }
figcaption { padding: 4px; overflow-wrap: anywhere; }
.ground { fill: #fbfaf4; }
"""
# Garment, year, wearer, features with their places.
FLATS = """
day-dress 1900 woman: neckline/high collar/boned-stand sleeve/bishop waist/pouched
    fullness/pin-tucks@bodice trim/insertion@skirt
day-dress 1895 woman: sleeve/gigot collar/stand skirt-cut/gored closure/front fastening/hooks-and-eyes
day-dress 1912 woman: neckline/square sleeve/elbow waist/raised closure/back fastening/buttons
    trim/insertion@neckline
day-dress 1916 woman: collar/sailor sleeve/set-in-long skirt-cut/gored fastening/belt-tie
day-dress 1924 woman: neckline/boat sleeve/kimono waist/low trim/braid@hem colour/striped
day-dress 1927 woman: neckline/v collar/jabot waist/dropped-hip skirt-cut/pleated-all closure/side
day-dress 1933 woman: collar/bertha sleeve/puff-short yoke/hip-yoke skirt-cut/bias-cut
day-dress 1938 woman: collar/peter-pan sleeve/puff-short closure/front fastening/buttons
    fastening/buckle@waist
day-dress 1950 woman: neckline/sweetheart sleeve/cap skirt-cut/circular waist/natural colour/spotted
house-dress 1918 woman: closure/wrap-over neckline/surplice sleeve/three-quarter colour/checked
    trim/binding
house-dress 1936 woman: closure/front fastening/slide-fastener collar/revers trim/rickrack@collar
    sleeve/short
afternoon-dress 1908 woman: yoke/lace-yoke collar/boned-stand sleeve/three-quarter trim/lace-edging@sleeve
    silhouette/columnar
afternoon-dress 1926 woman: neckline/u trim/embroidery-colour@front sleeve/bell waist/low skirt-cut/tiered
evening-dress 1911 woman: neckline/square skirt-cut/tunic-over trim/beads@bodice silhouette/hobble
    skirt-length/train
evening-dress 1927 woman: neckline/v trim/fringe-trim@hem trim/sequins@bodice
    skirt-length/handkerchief-uneven
evening-dress 1934 woman: neckline/halter closure/back fastening/slide-fastener
evening-dress 1938 woman: neckline/one-shoulder trim/bow@shoulder
evening-dress 1860 woman: neckline/off-shoulder sleeve/short silhouette/crinoline-bell skirt-cut/flounced
tea-gown 1905 woman: sleeve/pagoda collar/ruffle trim/lace-edging@neckline closure/front
sports-dress 1928 woman: neckline/v collar/shirt-collar skirt-cut/pleated-all fastening/pearl-buttons
    closure/front-placket sleeve/sleeveless
maternity-dress 1936 woman: closure/wrap-over collar/shawl fastening/tape-ties
blouse 1901 woman: collar/stand fullness/pin-tucks@front closure/back fastening/buttons sleeve/bishop
blouse 1912 woman: neckline/high collar/jabot yoke/round-yoke sleeve/raglan
jumper-blouse 1923 woman: neckline/v trim/contrast-band@hem colour/contrast-two-colour sleeve/kimono
middy-blouse 1917 girl: collar/sailor trim/braid@collar trim/anchor-motif@sleeve fastening/lacing
    closure/front-placket
shirt 1910 man: collar/wing closure/front fastening/shank-buttons yoke/plastron
jumper 1925 man: neckline/v trim/stripes-knitted@neckline fabric/worsted-knit
cardigan 1932 woman: neckline/v closure/front fastening/buttons trim/embroidery-colour@front
waistcoat 1905 man: closure/front fastening/buttons neckline/v
jacket 1914 woman: collar/notched closure/side-front fastening/buttons sleeve/two-piece-coat
    trim/braid@edge
boating-jacket 1908 man: collar/notched colour/striped trim/binding@edge closure/front fastening/buttons
costume-suit 1911 woman: collar/shawl fastening/buttons closure/front skirt-length/ankle skirt-cut/gored
lounge-suit 1927 man: collar/notched closure/front fastening/buttons
coat 1919 woman: collar/shawl trim/fur-band@hem closure/wrap-over fastening/belt-tie
coat 1930 girl: collar/peter-pan closure/front fastening/buttons yoke/shoulder-yoke fullness/box-pleats
wrap 1905 woman: collar/ruffle trim/frill@hem sleeve/cape-sleeve closure/front fastening/frogs
skirt 1908 woman: skirt-cut/gored skirt-length/instep waist/natural trim/braid@hem yoke/hip-yoke
skirt 1925 woman: skirt-cut/wrap-skirt fullness/knife-pleats@side skirt-length/below-knee
skirt 1938 woman: skirt-cut/divided closure/side fastening/slide-fastener
trousers 1933 woman: closure/side fastening/buttons fastening/belt-tie
flannels 1912 man: closure/front lower-edge/cuffed colour/tennis-stripe
knickerbockers 1910 boy: closure/front fastening/buckle@waist fullness/gathers@leg
shorts 1936 woman: closure/front fastening/buttons fullness/inverted-pleat@leg
bathing-dress 1905 woman: collar/sailor sleeve/puff-short trim/braid@hem colour/navy fastening/buttons
    closure/front trim/sash
bathing-suit 1926 any: neckline/scoop trim/stripes-knitted@hem closure/shoulder fastening/buttons
    lower-edge/short-skirt-leg colour/navy
bathing-two-piece 1938 woman: neckline/halter colour/floral-print trim/bow
bathing-trunks 1935 man: fastening/buckle@waist trim/monogram@leg
beach-pyjamas 1931 woman: neckline/v closure/wrap-over collar/revers sleeve/sleeveless colour/border-print
bathing-wrap 1922 woman: collar/shawl fabric/towelling closure/front sleeve/kimono
nightdress 1904 woman: yoke/square-yoke fullness/pin-tucks@yoke trim/frill@sleeve collar/turnover
    closure/front-placket
nightdress 1932 woman: neckline/v trim/lace-edging@neckline fastening/ribbon-tie@waist
pyjamas 1922 man: fastening/frogs closure/front collar/mandarin trim/piping@edge
dressing-gown 1915 man: collar/shawl trim/braid@edge fastening/belt-tie closure/wrap-over
combinations 1908 woman: neckline/scoop trim/beading-slotted@neckline trim/lace-edging@leg closure/front
    fastening/pearl-buttons
camisole 1915 woman: neckline/square trim/beading-slotted@neckline fastening/ribbon-tie@neckline
    sleeve/strap trim/insertion@yoke
corset 1905 woman: closure/front fastening/busk-front trim/lace-edging@edge
petticoat 1895 woman: lower-edge/flounce fastening/drawstring@waist trim/lace-edging@hem
    fullness/growth-tucks@hem
child-frock 1910 girl: yoke/square-yoke fullness/smocking@bodice sleeve/puff-short trim/sash closure/back
    fastening/buttons
sailor-suit 1912 boy: collar/sailor trim/braid@collar trim/anchor-motif@sleeve
infant-gown 1900 infant: fullness/pin-tucks@front trim/insertion@front trim/lace-edging@hem
    fastening/drawstring@neckline
"""


def entries() -> list[str]:
    """The lines of ``FLATS``, those that go on joined."""
    return FLATS.strip().replace("\n    ", " ").splitlines()


def figure(entry: str, vocabulary: Vocabulary) -> str:
    """One flat with what is said of it."""
    head, _, rest = entry.partition(": ")
    garment, year, who = head.split()
    features = []
    for word in rest.split():
        term, _, place = word.partition("@")
        features.append(Feature(term.partition("/")[0], term, Mark(""), at=place or None))
    flat = draw_plan(features, garment, vocabulary, float(year), who)
    assert flat is not None, entry
    left, assumed = escape("; ".join(flat.undrawn)), escape(", ".join(flat.assumed))
    said = f"{entry}<br>not drawn: {left}<br>assumed: {assumed}"
    return f"<figure>{flat.svg}<figcaption>{said}</figcaption></figure>"


def main(folder: Path) -> None:
    """Write the sheets."""
    folder.mkdir(parents=True, exist_ok=True)
    catalogue = read_catalogue(CHECKOUT / "catalogue").catalogue
    figures = [figure(each, catalogue.vocabulary) for each in entries()]
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=find_chromium(), args=CHROMIUM_ARGUMENTS)
        tab = browser.new_page(viewport={"width": 1560, "height": 800})
        for begin in range(0, len(figures), ON_A_SHEET):
            body = "".join(figures[begin : begin + ON_A_SHEET])
            tab.set_content(f"<!doctype html><style>{STYLE}</style><main>{body}</main>")
            file = folder / f"flats-{begin // ON_A_SHEET + 1}.png"
            tab.screenshot(path=str(file), full_page=True)
        browser.close()


if __name__ == "__main__":
    main(Path(sys.argv[1]))

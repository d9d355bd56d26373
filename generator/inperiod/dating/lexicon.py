"""The words date phrases are made of, in the languages of catalogue scans: English, French, German, Spanish,
Italian, Dutch. All in lower case and without accents, as ``tokens.tidy`` leaves them.

The browser's side (``site/assets/dating.js``) is given these same tables as data: see ``as_data``.
"""

from __future__ import annotations

from typing import Any

# One line a month; any beginning of three letters or more that belongs to one month only is read too.
MONTHS = """
january janvier januar jaenner janner enero gennaio januari
february fevrier februar febrero febbraio februari
march mars marz maerz marzo maart
april avril abril aprile
may mai mayo maggio mei
june juin juni junio giugno
july juillet juli julio luglio
august aout agosto augustus
september septembre septiembre setiembre settembre
october octobre oktober octubre ottobre
november novembre noviembre
december decembre dezember diciembre dicembre
"""

# What each word is read as. A number before a word is what an ordinal counts.
WORDS = """
s21 spring printemps fruhling fruhjahr primavera lente voorjaar
s22 summer ete sommer verano estate zomer
s23 autumn fall automne herbst otono autunno herfst najaar
s24 winter hiver invierno inverno
circa ca cca about around approx approximately roughly vers environ um etwa ungefahr hacia alrededor
circa verso omstreeks rond cerca gegen ~
poss possibly probably perhaps maybe presumably wahrscheinlich vermutlich wohl probablement probablemente
poss posiblemente forse probabilmente waarschijnlijk
early beginning start begin anfang debut comienzos principios inicios inizio inizi vroeg fruhe fruhes
early fruhen anfangs
mid middle mitte milieu mediados midden
late end ende fin fine finales eind einde spat spates spate spaten laat tardo
before vor avant antes voor pre
after nach apres despues dopo na post
from since von ab depuis desde dal vanaf seit
to until till through thru by bis al tot hasta a
between entre zwischen tussen tra fra
and & et und y e en
or ou oder o
century centuries cent cen siecle siecles siglo siglos secolo secoli jahrhundert jahrhunderts
century jahrhunderte jh jhs jhd jhdt eeuw thc
decade decades
quarter qtr quart viertel kwart cuarto quarto
half halfte moitie mitad meta helft
third drittel tiers tercio terzo dritte dritten drittes troisieme tercer tercera terza derde
1 first erste ersten erstes erster premier premiere primer primera primo prima eerste
2 second latter zweite zweiten zweites zweiter deuxieme seconde segunda segundo seconda secondo tweede
4 fourth vierte vierten viertes quatrieme cuarta vierde
last final letzte letzten letztes dernier derniere ultimo ultima ultimi laatste
12 twelfth
13 thirteenth
14 fourteenth
15 fifteenth
16 sixteenth
17 seventeenth
18 eighteenth
19 nineteenth
20 twentieth
later
earlier
onward ff +
upto
period dynasty era reign
bc bce
ad ce
"""

# Before a round year these say that the decade is meant ("années 1920"); elsewhere they say nothing.
DECADE_WORDS = "annees anos anni jaren"

# Words that say nothing about the date.
FILLERS = """
the of in der die das des du de del della dello dell degli la le les los el il lo den dem im van het on
at during year years jahr jahre jahren annee ano anno jaar signed dated date datee datiert season month
months monday tuesday wednesday thursday friday saturday sunday part
"""

# Several words read as one, tried in this order on the whole phrase.
IDIOMS = (
    (r"\bre[- ](?=[a-z])", "re"),
    (r"\bin (?:the )?style of .*", " (copying an older style)"),
    (
        r"\b(?:design )?patent (?:(?:no|nr|number) [0-9,]{1,12}|[0-9]{1,3}(?:,[0-9]{3}){1,3}\b),?",
        " patented ",
    ),
    (r"\b(?:not before|(?:no|not) earlier than|nicht vor|pas avant|no antes de)\b", " from "),
    (r"\bnon prima del?\b|\bniet voor\b", " from "),
    (r"\b(?:or|and) (?:later|after)\b(?! ?[a-z0-9])|\bonwards?\b|\boder (?:spater|danach)\b", " onward "),
    (r"\bou (?:apres|plus tard)\b(?! ?[0-9])|\bo (?:posterior|despues|dopo)\b(?! ?[0-9])", " onward "),
    (r"\b(?:or|and) (?:earlier|before)\b(?! ?[a-z0-9])|\boder fruher\b", " upto "),
    (r"\bou avant\b(?! ?[0-9])|\bo (?:antes|prima)\b(?! ?[0-9])", " upto "),
    (r"\b(?:(?:no|not) later than|not after|nicht nach|spatestens|au plus tard)\b", " to "),
    (r"\b(?:in|on) or before\b", " to "),
    (r"\b(?:in|on) or after\b", " from "),
    (r"\b(?:b c(?: e)?|v chr)\b", " bc "),
    (r"\ba d\b", " ad "),
    (r"\b(?:and )?on$", " onward "),
    (r"\bat the latest\b", " upto "),
    (r"\bat the earliest\b", " onward "),
    (r"\b(?:prior to|earlier than|prima del?|antes del?)\b", " before "),
    (r"\b(?:later than|dopo il|despues del?)\b", " after "),
    (r"\b(?:a|f|h) ?[/&-] ?w\b|\ba ?[/&-] ?[hi]\b", " autumn winter "),
    (r"\bs ?[/&-] ?s\b|\bf ?[/&-] ?s\b|\bp ?[/&-] ?e\b", " spring summer "),
    (r"\btwenty[- ]first\b", " 21 "),
    (r"\bsettecento\b", " 18 century "),
    (r"\bottocento\b", " 19 century "),
    (r"\bnovecento\b", " 20 century "),
)

UNDATED = """
n d|nd|undated|no date|not dated|date unknown|unknown|unknown date|sans date|non date|ohne jahr|o j
undatiert|sin fecha|s f|s d|senza data|zonder jaar|z j|ongedateerd
"""

# What happened on the date. The making dates a thing; what has no name of its own comes next; then its
# design and its cloth; and last what was done with it or from it later.
EVENTS = """
making made manufactured manufacture produced production executed execution sewn knitted embroidered
making completed finished built constructed construction painted drawn carved modeled modelled block
making fabricated created assembled making hergestellt gefertigt fabrique realise fatto gemaakt hecho
making sewing stitched tailored cut taken embroidery knitting
beforehand design designed project projected conceived patent patented entworfen concu disegnato
beforehand ontworpen disenado woven weaving spun dyed introduced
afterwards printed print prints published publication issued reissued impression impressions edition
afterwards reedited cast casts recast reprinted reprint retouched reworked refired altered restored
afterwards remade remodelled repaired photographed posthumous posthumously copyright worn exhibited
afterwards gedruckt veroffentlicht imprime publie pubblicato stampato gedrukt impreso publicado
afterwards copyrighted © alteration alterations restyled refashioned restoration acquired used sold
afterwards presented
"""
RANKS = {"making": 0, "unnamed": 1, "beforehand": 2, "afterwards": 3}

# Reigns and periods with settled dates.
PERIODS = """
georgian 1714/1830
regency 1811/1820
victorian 1837/1901
edwardian 1901/1910
edo 1603/1868
meiji 1868/1912
taisho 1912/1926
showa 1926/1989
ming 1368/1644
qing 1644/1912
belle epoque 1871/1914
"""

# What EDTF's numbers from 21 to 41 in the place of a month are called, with the year where {} stands.
GROUPINGS = (
    *("spring {}", "summer {}", "autumn {}", "winter {}"),
    *("spring {} (northern)", "summer {} (northern)", "autumn {} (northern)", "winter {} (northern)"),
    *("spring {} (southern)", "summer {} (southern)", "autumn {} (southern)", "winter {} (southern)"),
    *("the first quarter of {}", "the second quarter of {}", "the third quarter of {}"),
    *("the last quarter of {}", "early {}", "the middle of {}", "late {}"),
    *("the first half of {}", "the second half of {}"),
)

# What people write for a date in EDTF, and what to write instead, with the groups of the pattern by number.
SLIPS = (
    (r"([0-9]{4})\s*[-–—]\s*([0-9]{4})", r"for {0} to {1} write {0}/{1}"),
    (r"([0-9]{2})([0-9]{2})\s*[–—/]\s*([0-9]{2})", r"for {0}{1} to {0}{2} write {0}{1}/{0}{2}"),
    (r"([0-9]{3})0'?s", r"for the {0}0s write {0}X"),
    (r"([0-9]{3})[xu?]", r"for the {0}0s write {0}X"),
    (r"(?:ca?\.?|circa|about)\s*([0-9]{4})", r"for about {0} write {0}~"),
    (r"before\s+([0-9]{4})", r"for {0} or earlier write ../{0}"),
    (r"after\s+([0-9]{4})", r"for {0} or later write {0}/.."),
    (r"([0-9]{4})-([0-9])", r"months have two digits: write {0}-0{1}"),
    (r"[0-9]{1,2}([/.-])[0-9]{1,2}\1[0-9]{2}", r"write the year with four digits"),
    (r"([0-9]{1,3})", r"years have four digits: fill up with zeros in front"),
)


def as_data() -> dict[str, Any]:
    """All tables by their names in lower case, a line of text each as above; the idioms and slips as pairs of
    a pattern, which JavaScript reads as Python does, and what is said or read instead."""
    tables = {
        "months": MONTHS,
        "words": WORDS,
        "decade_words": DECADE_WORDS,
        "fillers": FILLERS,
        "undated": UNDATED,
        "events": EVENTS,
        "periods": PERIODS,
    }
    texts = {name: text.strip("\n") for name, text in tables.items()}
    return {**texts, "ranks": RANKS, "idioms": IDIOMS, "slips": SLIPS, "groupings": GROUPINGS}

"""Does a caption say what the plate records? Words of the trade against the terms they name.

The rules are common practice, no source: what a reader of such captions would take the words to mean.
A rule asks for one of its terms wherever the caption, or its translation, uses the words.
"""

from __future__ import annotations

import re

from inperiod.records.model import Plate

RULES: tuple[tuple[str, str], ...] = (
    (r"square (neck|opening)|square at the neck", "neckline/square"),
    (r"\bV[- ]?(neck|front\b|back\b)|\bVs?\b(?! and| back)|a small V", "neckline/v neckline/surplice"),
    (r"\b(boat|bateau|batteau) neck", "neckline/boat"),
    (r"\b(round|Dutch) neck|round at the neck", "neckline/round"),
    (r"\bcowl\b", "neckline/cowl"),
    (r"\bhalter\b", "neckline/halter"),
    (r"sweetheart|heart neck|heart-shaped", "neckline/sweetheart"),
    (r"\bsurplice\b", "neckline/surplice"),
    (r"sailor collar", "collar/sailor"),
    (r"Peter Pan", "collar/peter-pan"),
    (r"(shawl|roll|rolling|tuxedo) collar", "collar/shawl"),
    (r"\bjabot", "collar/jabot"),
    (r"\bbertha", "collar/bertha"),
    (r"\brevers\b", "collar/revers collar/notched"),
    (r"(tie|scarf) (collar|neck)|necktie|bow tie", "collar/tie-bow"),
    (r"shirt collar", "collar/shirt-collar"),
    (r"boned collar|collar boned|collar band boned", "collar/boned-stand"),
    (r"sleeveless|\bno sleeves?\b", "sleeve/sleeveless sleeve/strap"),
    (r"kimono (sleeve|shoulder|cut)|magyar|sleeves? (cut )?in one", "sleeve/kimono sleeve/cap"),
    (r"elbow[- ]sleeve|sleeves? to the elbow|elbow sleeves", "sleeve/elbow sleeve/short"),
    (r"three-quarter (length )?sleeve|three-quarter sleeves", "sleeve/three-quarter"),
    (r"gigot|leg-o[f']?-?'?mutton", "sleeve/gigot"),
    (
        r"long,? (close )?sleeves?|sleeves? to the wrist",
        "sleeve/long-fitted sleeve/set-in-long sleeve/bishop sleeve/shirt-sleeve",
    ),
    (r"puff(ed)?[- ]sleeve|puffs at the shoulder|squared puffs|short puffs", "sleeve/puff-short"),
    (r"flutter sleeve", "sleeve/flutter"),
    (r"bell sleeve", "sleeve/bell"),
    (r"cape(let)? sleeve", "sleeve/cape-sleeve sleeve/flutter"),
    (r"short sleeve", "sleeve/short sleeve/cap sleeve/kimono sleeve/puff-short sleeve/flutter"),
    (r"slip-(on|over)|slips? (right )?(on|over)\b|pulls? (on|over)\b", "closure/slip-on"),
    (r"buttons? (down )?(in|at) (the )?back|back fastened|Fastens? (unseen )?behind", "closure/back"),
    (r"side-front", "closure/side-front"),
    (r"shoulder button|buttons? at (the |left )+shoulder", "closure/shoulder"),
    (r"press studs?|\bsnaps\b", "fastening/press-studs"),
    (r"slide[- ]fastener", "fastening/slide-fastener"),
    (r"\bfrogs\b(?! do)|frogged", "fastening/frogs"),
    (r"pearl buttons?", "fastening/pearl-buttons fastening/buttons trim/buttons-ornamental"),
    (r"\blow(-| )(waist|belt|sash)|long-waisted|waist low|long-bodied", "waist/low waist/dropped-hip"),
    (r"raised waist|waist set high|waist is high|raised line|lifted waist", "waist/raised"),
    (r"normal[- ](waist|line)|natural waist|real waist", "waist/natural"),
    (r"pouched", "waist/pouched"),
    (r"princess", "waist/princess"),
    (r"\bgodets?\b", "yoke/godet skirt-cut/godet-skirt"),
    (r"\btier(s|ed)?\b(?! on)", "skirt-cut/tiered"),
    (r"box[- ]pleat", "fullness/box-pleats"),
    (r"inverted pleat|kick pleat", "fullness/inverted-pleat"),
    (r"scallop(s|ed)?\b", "lower-edge/scalloped collar/peter-pan trim/frill"),
    (r"pin[- ]tuck", "fullness/pin-tucks"),
    (r"\bsmock(ed|ing)?\b", "fullness/smocking"),
    (r"\bshirr", "fullness/shirring"),
    (r"insertion\b", "trim/insertion trim/beading-slotted"),
    (r"rickrack", "trim/rickrack"),
    (r"fagot", "trim/fagoting"),
    (r"hem-?stitch", "seam/hem-stitched work/machine-hemstitched"),
    (r"soutache", "trim/soutache"),
    (r"\banchors?\b", "trim/anchor-motif"),
    (r"\bsash\b", "trim/sash fastening/belt-tie"),
    (r"\blawn\b(?! )", "fabric/lawn"),
    (r"\blinens?\b(?! collar)", "fabric/linen"),
    (r"cambric", "fabric/cambric"),
    (r"\bbatiste", "fabric/batiste"),
    (r"nainsook", "fabric/nainsook"),
    (r"\bvoile", "fabric/voile"),
    (r"\bmuslin", "fabric/muslin"),
    (r"\bcalico", "fabric/calico"),
    (r"gingham", "fabric/gingham"),
    (r"chambray", "fabric/chambray"),
    (r"\bzephyr", "fabric/zephyr"),
    (r"piqu[eé]|\bpique", "fabric/pique"),
    (r"\bdrill\b", "fabric/drill"),
    (r"poplin", "fabric/poplin"),
    (r"flannelette", "fabric/flannelette"),
    (r"\bflannel\b(?! petticoat)", "fabric/flannel"),
    (r"\bserge\b", "fabric/serge"),
    (r"\balpaca\b", "fabric/alpaca"),
    (r"\bmohair\b", "fabric/mohair"),
    (r"wool jersey", "fabric/wool-jersey"),
    (r"\btweed\b", "fabric/tweed"),
    (r"\bchallis\b", "fabric/challis"),
    (r"\bvelveteen\b", "fabric/velveteen"),
    (r"\bsatin\b(?![- ](sash|stitch|collar))", "fabric/satin"),
    (r"\btaffeta\b", "fabric/taffeta"),
    (r"cr[eê]pe de chine", "fabric/crepe-de-chine"),
    (r"georgette", "fabric/georgette"),
    (r"\bchiffon\b(?! velvet)", "fabric/chiffon"),
    (r"\bpongee", "fabric/pongee"),
    (r"\btussore", "fabric/tussore"),
    (r"artificial[ -]silk", "fabric/artificial-silk"),
    (r"\brayon\b", "fabric/rayon"),
    (r"organdie", "fabric/organdie"),
    (r"dimity", "fabric/dimity"),
    (r"towelling", "fabric/towelling"),
    (r"gaberdine", "fabric/gaberdine"),
    (r"seersucker", "fabric/seersucker"),
    (r"marocain", "fabric/crepe-marocain fabric/rayon"),
    (r"shantung", "fabric/shantung"),
    (r"cotton cr[eê]pe|crêpe-cotton", "fabric/cotton-crepe"),
)
"""Words in a caption (a regular expression) and the terms, any of which the plate must then record."""

OTHER_THINGS = (
    r"\S+[- ](finish|weight|look|weave|type)\b( of)?",  # "silk-finish", "serge-weight": not the cloth itself
    r"\([^)]*\)",
    r"(not|nor|no) (a )?(frogs?|bodice)",
)
"""Turns of phrase that name a thing only to say that this is not it."""


def disagreements(plate: Plate) -> list[str]:
    """What the caption of a plate promises and its features do not record; empty when they agree."""
    said = plate.translation or plate.caption or ""
    for phrase in OTHER_THINGS:
        said = re.sub(phrase, " ", said, flags=re.IGNORECASE)
    recorded = {feature.term for feature in plate.features if feature.term}
    missed = []
    for words, terms in RULES:
        found = re.search(words, said, re.IGNORECASE)
        if found and not recorded & set(terms.split()):
            missed.append(f"{plate.key}: “{found[0]}” but not {terms}")
    return missed


CLOTHS = {
    "fabric/crepe-de-chine": r"cr[eê]pe de chine",
    "fabric/pique": r"piqu[eé]",
    "fabric/wool-jersey": r"jersey|stockinette",
    "fabric/worsted-knit": r"wool|worsted|knit|jersey|shaker",
    "fabric/cotton-knit": r"cotton|stockinette|knit",
    "fabric/artificial-silk": r"artificial[- ]silk",
    "fabric/crepe-marocain": r"marocain",
    "fabric/cotton-crepe": r"cr[eê]pe",
    "fabric/towelling": r"towel|sponge",
    "fabric/elastic-knit": r"elastic",
    "fabric/drill": r"drill|galatea",
    "fabric/velveteen": r"velveteen|cotton velvet",
    "fabric/satin": r"satin|charmeuse",
}
"""How a caption may name a cloth, where that is not the term's own id."""


def says_cloth(plate: Plate, term: str) -> bool:
    """Whether the words printed with the plate name this cloth."""
    said = plate.translation or plate.caption or ""
    return bool(re.search(CLOTHS.get(term, term.split("/")[1]), said, re.IGNORECASE))

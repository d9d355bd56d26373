"""What the inputs are made from: sound ones, and the words people type into them."""

# ruff: noqa: E501 (lists of words)

from __future__ import annotations

import json
from pathlib import Path

CHECKOUT = Path(__file__).parents[2]
WHOLE = CHECKOUT / "tests" / "records" / "whole"
CASES = CHECKOUT / "tests" / "broken" / "cases"


def _words(text: str) -> tuple[bytes, ...]:
    """The words between upright strokes; ``↵`` is the end of a line."""
    return tuple(each.replace("↵", "\n").encode() for each in text.replace("\n", "").split("¦"))


YAML_WORDS = _words(
    "title: ¦plates:¦↵- ¦↵  ¦↵    - ¦: ¦{¦}¦[¦]¦&a ¦*a¦!!x ¦|¦>-¦---↵¦...¦? ¦<<: ¦features:¦neckline/square¦"
    "trim/none¦not_visible: true¦facet: trim¦garment: dress¦same_cut_as: summer-list/p3¦date: ¦1912-23¦1925~¦"
    "../1912¦date_basis: printed¦publish: false¦note: |↵  ¦id: ¦image: {file: ../x.png}¦# ¦ #x¦\"¦'¦“x”¦\\u0000¦"
    "\\¦true¦no¦~¦0x1F¦1e5¦-¦javascript:¦https://¦width: 1 1/2 in¦reading: inferred¦\t¦a: b: c¦reprint_of: a¦"
    "rights: data:x"
)
BOARD_WORDS = (
    *YAML_WORDS,
    *_words(
        "questions:¦departures:¦measures: {bust: 34 in}¦making:↵- kind: frill¦plates: [a/b]¦target: 1926"
    ),
)
EDTF_WORDS = _words(
    "1912¦191X¦19XX¦-23¦-12¦-31¦..¦/¦~¦?¦%¦[¦]¦{¦}¦,¦Y¦E¦S2¦T12:00:00Z¦X¦-0044¦0000¦9999¦Y-170000002¦1912-02-29¦"
    "21¦41¦Y1E12¦Y10000000000000"
)
PHRASE_WORDS = _words(
    "ca. ¦circa ¦about ¦early ¦mid-¦late ¦first half of ¦second quarter of the ¦19th century¦1920s¦ or ¦ to ¦–¦-¦/¦"
    " and ¦, ¦autumn ¦winter ¦May ¦12 ¦before ¦after ¦between ¦printed ¦made ¦altered ¦designed ¦Easter ¦Edwardian¦"
    "n.d.¦undated¦B.C.¦A.D. ¦?¦(¦)¦[¦]¦probably ¦1912¦1885–90¦'20s¦XIX¦cent.¦s¦th¦22nd¦decade¦quarter¦third¦"
    "Michaelmas ¦the ¦of ¦1912-13"
)
TABLE_WORDS = _words(',¦"¦;¦\t¦↵¦lace¦=cmd()¦square¦../a¦c. 1912¦dress')
MAPPING_WORDS = (*YAML_WORDS, *_words("{title}¦{no}¦{¦rows: sources¦words: [x]¦column: necks"))
JSON_WORDS = _words(
    '"id"¦"@id"¦"type"¦"Canvas"¦"label"¦"none"¦"items"¦"body"¦null¦[]¦{}¦1e999¦true¦["x"]¦{"en": 1}¦NaN¦"\\ud800"¦1912'
)
LINK_WORDS = _words(".¦9.¦=¦-_¦dGl0bGU6IHgK")

PHRASES = _words(
    "1912¦ca. 1885–90¦late 1920s¦second quarter of the 19th century¦Autumn and Winter 1912-13¦before 1907¦"
    "mid-18th century¦1939, printed 1946¦12 May 1926¦May 1926¦1920s-30s¦c.1910 (altered 1925)¦[1912?]¦n.d.¦"
    "probably 1926 or 1927¦Easter 1905¦early to mid-1930s¦last third of the 17th century¦Edwardian¦1900/1910"
)
EDTF = _words(
    "1912¦1912-23¦1912-08/1913-01¦192X¦1925~¦../1907¦1920/..¦[1926,1928..1930]¦{1912-01,1912-03}¦-0044¦Y170000002¦"
    "1950S2¦2004-06-~11¦?2004-06¦1984~-XX¦156X-12-25¦1912-09-01T10:00:00Z¦2004-39"
)
LINKS = _words("12.dGl0bGU6IHgK¦9.dGl0bGU6IHgK¦9.dGl0bGU6-HgK¦.")

MAPPING = """\
id: "x-{no}"
rows: plates
source:
  title: "{title}"
  kind: other
  date: "{date}"
  date_basis: institution
  held_by: {name: "{by}", url: "{url}"}
plate: {id: "{plate}", caption: "{title}; {note}", price: {amount: "{price}"}}
garment: "{garment}"
features:
  - {column: necks, facet: neckline, split: ";"}
  - {read: [title, note], rules: [{words: [lace, "lace trimmed"], unless: [unlaced], term: trim/insertion}]}
dates: {when: 1912, sometime: undated}
leave_out:
  - {read: [title], words: [doll], because: not dress}
"""
TABLE = """\
no,plate,title,date,by,url,price,garment,necks,note
1,a,A frock,1912,Museum,https://example.org/1,8/11,dress,square,"lace, white"
1,b,"A ""lace trimmed"" frock",autumn 1912,Museum,,,day dress,square; round neck,
2,,Doll's dress,c. 1910-15,,,,dress,,
3,,=1+1,when,@x,javascript:alert(1),-1,dress,nowhere,+2
"""
_CANVAS = {
    "type": "Canvas",
    "label": {"none": ["p. 1"]},
    "summary": {"en": ["<b>x</b>"]},
    "items": [{"items": [{"body": {"id": "https://example.org/1.jpg"}}]}],
}
_OLD_CANVAS = {"@type": "sc:Canvas", "label": "1r", "images": [{"resource": {"@id": "https://x.example/1"}}]}
MANIFESTS = [
    json.dumps(each).encode()
    for each in (
        {
            "@context": "http://iiif.io/api/presentation/3/context.json",
            "id": "https://example.org/m",
            "type": "Manifest",
            "label": {"en": ["Autumn list"]},
            "metadata": [{"label": {"en": ["Date"]}, "value": {"none": ["c. 1912"]}}],
            "rights": "http://rightsstatements.org/vocab/NKC/1.0/",
            "provider": [{"label": {"en": ["A museum"]}}],
            "homepage": [{"id": "https://example.org/"}],
            "items": [_CANVAS],
        },
        {
            "@type": "sc:Manifest",
            "@id": "https://example.org/m",
            "label": "List",
            "attribution": "A museum",
            "license": "http://rightsstatements.org/vocab/NKC/1.0/",
            "metadata": [{"label": "Dated", "value": ["1912"]}],
            "related": "https://example.org/",
            "sequences": [{"canvases": [_OLD_CANVAS]}],
        },
    )
]


def yaml_files() -> list[bytes]:
    """Small sound files of every kind, and every way to slip that has a case."""
    files = sorted([*WHOLE.rglob("*.yaml"), *CASES.rglob("*.yaml")])
    return list(dict.fromkeys(each.read_bytes() for each in files if _small(each)))


def board_files() -> list[bytes]:
    files = sorted([*WHOLE.glob("boards/*.yaml"), *(CHECKOUT / "catalogue" / "boards").glob("*.yaml")])
    return [each.read_bytes() for each in files if _small(each)]


def source_files() -> list[bytes]:
    return [each.read_bytes() for each in sorted(WHOLE.glob("sources/*.yaml"))]


def _small(file: Path) -> bool:
    return file.is_file() and file.stat().st_size < 6000

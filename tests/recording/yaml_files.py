"""Files for the two readers of YAML, the checker's and the browser's: good, bad and hostile, by name."""

from __future__ import annotations

import random
from collections.abc import Iterator
from pathlib import Path

CHECKOUT = Path(__file__).parents[2]
BROKEN = CHECKOUT / "tests/broken/cases"
SOURCES = CHECKOUT / "catalogue/sources"


def catalogue_files() -> dict[str, bytes]:
    """The demonstration sources."""
    return {f"good {each.stem}": each.read_bytes() for each in sorted(SOURCES.glob("*.yaml"))}


def broken_files() -> dict[str, bytes]:
    """The source files of the cases that the checker complains about."""
    files = sorted(BROKEN.glob("*/sources/*.yaml"))
    return {f"broken {each.parts[-3]} {each.stem}": each.read_bytes() for each in files}


def _nested(levels: int) -> str:
    """Few levels each, but each holding the one before by ``*``."""
    lines = ["title: x"]
    for level in range(levels):
        inner = f"*a{level - 1}" if level else "x"
        lines.append(f"k{level}: &a{level} " + "[" * 10 + inner + "]" * 10)
    return "\n".join(lines)


def _bomb() -> str:
    lines = ["a0: &a0 [x, x, x, x, x, x, x, x, x, x]"]
    for level in range(1, 10):
        lines.append(f"a{level}: &a{level} [{', '.join([f'*a{level - 1}'] * 10)}]")
    return "\n".join(lines)


HOSTILE: dict[str, bytes | str] = {
    "nothing": "",
    "comments only": "# one\n\n# two\n",
    "blanks only": "  \n\n",
    "mark only": b"\xef\xbb\xbf",
    "mark before text": b"\xef\xbb\xbftitle: x\n",
    "two marks": b"\xef\xbb\xbf\xef\xbb\xbftitle: x\n",
    "mark inside": "title: x\ufeffy\n",
    "UTF-16, little end first": "title: x\n".encode("utf-16"),
    "UTF-16, big end first": b"\xfe\xff" + "title: x\n".encode("utf-16-be"),
    "a letter of an older coding": "title: Prêt\n".encode("cp1252"),
    "the same after a mark": b"\xef\xbb\xbf" + "title: x\nnote: Prêt\n".encode("cp1252"),
    "a byte that no coding has": b"title: a\x81b\n",
    "cut in the middle of a letter": "title: é".encode()[:-1],
    "too long a form of a letter": b"title: \xc0\xaf\n",
    "half a character in bytes": b"title: \xed\xa0\x80\n",
    "beyond the last character": b"title: \xf4\x90\x80\x80\n",
    "NUL": b"title: a\x00b\n",
    "NUL, written": 'title: "a\\0b"\n',
    "half a character, written": 'title: "\\ud800"\n',
    "bell": b"title: a\x07\n",
    "C1 control": "title: a\x85b\n",
    "line separator": "title: a\u2028b\n",
    "zero width space": "title: a\u200bb\n",
    "no character": "title: \ufffe\n",
    "letters beyond the first plane": "𝒜: 😀 #x\n😀: [😀, 𝒜] #4\nnote: 😀: x\n",
    "tab before a field": "title: x\n\tkind: y\n",
    "tab after spaces": "a:\n  b: c\n \td: e\n",
    "tab after a colon": "title:\tx\n",
    "tab after a hyphen": "a:\n  -\tb\n",
    "tab before a comment": "title: x\t# y\n",
    "tab in brackets": "a: [\tb,\n\tc]\n",
    "old line ends": "title: x\rkind: y\r",
    "mixed line ends": "title: x\r\nkind: y\rdate: z\n: a\r\n",
    "curly quotes": "title: “x”\na: ‘y’\nb: „z“\nc: «d»\n",
    "many curly quotes": "a: “x”\n" + "".join(f"k{n}: “x”\n" for n in range(300)),
    "comments without a space": "title: Frock #4\nnote: x #\n",
    "many comments without a space": "".join(f"k{n}: x #4\n" for n in range(300)),
    "a name twice": "a: 1\nb: 2\na: 3\n",
    "a name twice in brackets": "a: {b: 1, b: 2}\n",
    "a name two hundred times": "a: 1\n" * 250,
    "merging": "a: &x {b: 1}\nc: {<<: *x}\n",
    "a list as a name": "? [a, b]\n: c\n{d: e}: f\n",
    "an empty name": ": a\n",
    "repeats": "a: &x {b: 1}\nc: *x\nd: [*x, *x]\n",
    "repeat of nothing": "a: *x\n",
    "asterisk in a note": "note: *important\n",
    "ampersand in a note": "note: & Sons\n",
    "a name beside an anchor": "&a a: b\n*a : c\n",
    "a list that holds itself": "a: &a [*a]\n",
    "bomb": _bomb(),
    "a hundred repeats": "a: &a x\nb: [" + ", ".join(["*a"] * 100) + "]\n",
    "a hundred and one repeats": "a: &a x\nb: [" + ", ".join(["*a"] * 101) + "]\n",
    "levels by repeats, sixty": _nested(5),
    "levels by repeats, more": _nested(8),
    "sixty levels": "a: " + "[" * 59 + "]" * 59,
    "sixty-one levels": "a: " + "[" * 60 + "]" * 60,
    "hundreds of levels": "[" * 900,
    "thousands of levels by lines": "[\n" * 5000,
    "levels by hyphens": "- " * 2000,
    "levels by indentation": "\n".join(" " * n + "a:" for n in range(200)),
    "tag": "a: !!str b\n",
    "tag of one's own": "a: !secret b\n",
    "tag that runs something": "a: !!python/object/apply:os.system [ls]\n",
    "tag whole": "a: !<tag:yaml.org,2002:str> b\n",
    "mark alone": "a: ! b\n",
    "unknown handle": "a: !e!b c\n",
    "exclamation": "note: !important, this\n",
    "two documents": "a: b\n---\nc: d\n",
    "document ends": "---\na: b\n...\n",
    "version": "%YAML 1.1\n---\na: b\n",
    "version two": "%YAML 2.0\n---\na: b\n",
    "unknown directive": "%FOO\n---\na: b\n",
    "tag handles": "%TAG ! !a\n%TAG ! !b\n---\na: b\n",
    "directive alone": "%YAML 1.1\n",
    "open quote": 'title: "x\nkind: y\n',
    "open apostrophe": "title: 'x\nkind: y\n",
    "apostrophe inside": "note: 'the lady's own'\n",
    "text after a quote": 'caption: "Frock" in white\n',
    "text after a bracket": "note: [sic] frock\n",
    "unknown escape": 'note: "C:\\dir"\n',
    "short escape": 'note: "\\x4"\n',
    "document line in quotes": 'note: "a\n--- b"\n',
    "open bracket": "a: [b, c\nd: e\n",
    "no comma": "a: {b: c d: e}\n",
    "wrong bracket": "a: [b}\n",
    "closing bracket alone": "]\n",
    "question in brackets": "a: [? , b]\n",
    "question before the end": "a: [? ] b\n",
    "colon before a comma": "a: [b:, c]\n",
    "one pair": "a: [b: c, d]\n",
    "block text": "a: |\n  x\n   y\n\n  z\nb: >\n  x\n  y\n\n   z\n",
    "block text, all signs": "a: |+\n  x\n\nb: >-\n  x\nc: |2\n    x\nd: >1-\n x\n",
    "block text to the end": "a: |+\n  x\n\n\n",
    "text beside a bar": "a: | text\n",
    "text not indented": "a: |\ntext\n",
    "indentation of nothing": "a: |0\n  x\n",
    "tab in block text": "a: |\n\tx\n",
    "second colon": "title: Frocks: new\n",
    "second colon in curly quotes": "title: “Frocks: new”\n",
    "no colon": "title x\nkind: y\n",
    "no space after a colon": "title: x\nkind:y\ndate: z\n",
    "field too deep": "title: x\n  kind: y\n",
    "field too shallow": "  title: x\nkind: y\n",
    "list beside its field": "a: - b\n",
    "list not in line": "a:\n  - b\n - c\n",
    "list among fields": "a: b\n- c\n",
    "at sign": "a: @b\n",
    "back tick": "a: `b`\n",
    "per cent": "a: %b\n",
    "bar in brackets": "a: [|]\n",
    "a name of a thousand letters": "k" * 1020 + ": v\n",
    "a name that is too long": "k" * 1100 + ": v\n",
    "a name on two lines": "a\n b: c\n",
    "numbers": "a: [1912, 012, 0x1F, 1e3, .5, -0, 12:30, 1912-09-01, .inf, 1e999]\n",
    "words": "a: [yes, no, on, ~, null, True]\n",
    "long line": "a: " + "x" * 100_000 + ": y\n",
    "long line of quotes": "a: b\n  " + '- "x": ' * 1000 + "y\n",
    "long line of colons": ":" * 50_000 + "\n",
    "long line of blanks": "a:" + " " * 100_000 + "x" + "\t" * 100_000 + ": y\n",
    "long line of short values": "a: [" + "x, " * 50_000 + "] #y\n",
    "long line of pictures": "a: [" + "😀, " * 50_000 + "] #y\n",
    "many empty lines": "a: x" + "\n" * 100_000,
    "too large": b"a: x\n" * 1_000_001,
    "as large as may be": b"# " + b"x" * 4_999_990 + b"\na: b",
}
"""Each is refused, or read, in its own way; nothing in them makes a reader slow."""

_FRAGMENTS = (
    *(
        "a",
        "b c",
        "- ",
        "-",
        ": ",
        ":",
        "? ",
        "[",
        "]",
        "{",
        "}",
        ", ",
        "\n",
        "\n  ",
        "\n    ",
        "  ",
        " ",
        "\t",
    ),
    *(
        "#",
        "# x\n",
        " #c",
        '"',
        "'",
        "|\n",
        "|+\n",
        ">\n",
        "&a ",
        "*a",
        "! ",
        "!!str ",
        "---\n",
        "...",
        "\\n",
    ),
    *("😀", "é", "\r\n", "a: b", "- x", "k: {a: b}\n", "@", "`", "“", "”", "<<: ", "\u200b", "~", "𝒜"),
)


def slips(count: int, seed: int = 1) -> Iterator[tuple[str, bytes]]:
    """Pieces of good files with slips of the pen in them; the same ones for the same seed."""
    chance = random.Random(seed)
    whole = [each.decode().splitlines(keepends=True) for each in catalogue_files().values()]
    for number in range(count):
        lines = chance.choice(whole)
        first = chance.randrange(len(lines))
        text = "".join(lines[first : first + chance.randint(1, 14)])
        for _ in range(chance.randint(1, 3)):
            at = chance.randrange(len(text) + 1)
            text = text[:at] + chance.choice(_FRAGMENTS) + text[at + chance.choice((0, 0, 1, 2)) :]
        yield f"slip {number}", text.encode()


def all_files() -> dict[str, bytes]:
    """More than three hundred files, by what they are."""
    hostile = {
        f"hostile {name}": data if isinstance(data, bytes) else data.encode()
        for name, data in HOSTILE.items()
    }
    return {**catalogue_files(), **broken_files(), **hostile, **dict(slips(150))}

"""No regular expression can be made to take time out of proportion to the text it is given."""

from __future__ import annotations

import json
import re
import subprocess
from pathlib import Path

import pytest

from hostile.patterns import attacks, of_the_package, of_the_schemas, steepness
from inperiod.importing.words import words

ROOT = Path(__file__).parents[2]

# These take the square of the length of their text, which is never long.
BOUNDED = {
    "inperiod.dating.phrases._LOOKS_LIKE_EDTF": "a phrase has at most 200 characters",
    "inperiod.publishing.words._ONE_YEAR": "given what the program itself says of a date",
    "inperiod.records.shaping": "given at most 200 characters",
    "inperiod.records.yaml_words": "looks at LONGEST_LINE characters of a line",
}
BOUNDED_IN_BROWSER = {
    "board-edit.js": "the title of a board, which its box holds to 1,000 characters",
    "board-file.js /=+$/": "what btoa gives ends in two at most",
    "dating.js": "a phrase has at most 200 characters",
    "making.js": "given what the script itself says of a number or a price",
    "record-figures.js": "given what has been cut short before",
    "record-yaml-read.js": "looks at 2,000 characters of a line",
    "put together /^(?:[0-9XYES": "a phrase has at most 200 characters",
    "put together /[\\t-\\r\\x1c": "given at most 200 characters",
}


def test_every_pattern_of_the_package_keeps_its_pace() -> None:
    found = list(dict.fromkeys(of_the_package()))
    assert len(found) > 100
    slow = []
    for place, method, pattern, flags in found:
        compiled = re.compile(pattern, flags)
        run = (
            (lambda text, it=compiled: it.sub("", text))
            if method.startswith("sub")
            else getattr(compiled, method)
        )
        if place in BOUNDED or place.partition(":")[0] in BOUNDED:
            continue
        for attack in attacks(pattern, flags):
            if said := steepness(run, attack):
                slow.append(f"{place} {method} {pattern[:80]!r}: {said}")
                break
    assert slow == []


def test_every_pattern_of_the_schemas_keeps_its_pace() -> None:
    found = list(dict.fromkeys(of_the_schemas()))
    assert len(found) >= 9
    for file, pattern in found:
        compiled = re.compile(pattern)
        for attack in attacks(pattern):
            assert steepness(compiled.fullmatch, attack) is None, (file, pattern)


def test_words_of_a_mapping_make_a_pattern_that_keeps_its_pace() -> None:
    for phrase in ("lace", "lace - trimmed", "a a a a a a", "(a+)+$", "y" * 50, "- -", "[", "\\"):
        finder = words([phrase, f"{phrase} {phrase}"], [phrase * 2])
        for part in (phrase, "a", " ", "-", "a ", "lace "):
            assert steepness(finder.found_in, ("", part, "\x01")) is None, phrase


@pytest.mark.parametrize("bad", ["(a+)+$", "(a|aa)+$", r"\s+$", "^(\\w+\\s?)*$", ".*.*=.*"])
def test_the_measure_finds_patterns_that_are_known_to_be_bad(bad: str) -> None:
    """Examples of OWASP's page on regular expression denial of service (from memory), and two squares."""
    assert any(steepness(re.compile(bad).search, attack) for attack in attacks(bad))


@pytest.mark.node
def test_every_pattern_of_the_browser_scripts_keeps_its_pace(node: str) -> None:
    acorn = ROOT / "tests" / "node_modules" / "acorn"
    if not acorn.is_dir():
        pytest.skip("tests/node_modules is not there: run tests/run.sh once")
    script = Path(__file__).with_name("patterns.js")
    listed = subprocess.run(
        [node, script, "list", ROOT / "site" / "assets", acorn], capture_output=True, text=True, check=True
    )
    found = json.loads(listed.stdout)
    assert len(found) > 60
    for each in found:
        each["attacks"] = _attacks_of(each["source"])
    ran = subprocess.run(
        [node, script, "try"],
        input=json.dumps(found),
        capture_output=True,
        text=True,
        check=True,
        timeout=300,
    )
    slow = json.loads(ran.stdout)
    assert [each for each in slow if not each.startswith(tuple(BOUNDED_IN_BROWSER))] == []


def _attacks_of(source: str) -> list[tuple[str, str, str]]:
    """Of a pattern of JavaScript, read as one of Python where that can be."""
    python = re.sub(
        r"\\p\{[^}]*\}",
        r"\\w",
        source.replace("(?<", "(?P<").replace("(?P<=", "(?<=").replace("(?P<!", "(?<!"),
    )
    python = re.sub(r"\\u\{?([0-9a-fA-F]{4})\}?", lambda code: re.escape(chr(int(code[1], 16))), python)
    try:
        return attacks(python.replace("[^]", "[\\s\\S]").replace("\\/", "/").replace("[[", "[\\["))
    except re.error:
        return attacks("")

"""The browser writes and tidies source files as the command line does, and changes what is asked only."""

from __future__ import annotations

import copy
import random
import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.importing.writing import DATE_FIELDS, PLATE_ORDER, SOURCE_ORDER, source_yaml
from inperiod.records.tidying import tidy
from inperiod.records.yaml_reading import Scalar, core_value, plain_value, read_yaml
from parity import in_node
from recording.yaml_files import CHECKOUT, all_files, catalogue_files, slips

pytestmark = pytest.mark.node

SCRIPT = {"yaml": CHECKOUT / "site/assets/record-yaml.js"}


def meaning(text: str | bytes) -> Any:
    data = text.encode() if isinstance(text, str) else text
    document = read_yaml(data, "")
    assert document.root is not None, document.problems
    assert not [each for each in document.problems if each.severity == "error"]
    return plain_value(document.root)


def readable(data: bytes) -> bool:
    document = read_yaml(data, "")
    return document.root is not None and not [each for each in document.problems if each.severity == "error"]


SOUND = {name: data.decode() for name, data in all_files().items() if readable(data) and len(data) < 50_000}
SOURCES = [
    text
    for text in SOUND.values()
    if isinstance(value := meaning(text), dict)
    and isinstance(value.get("plates"), list)
    and all(isinstance(each, dict) and isinstance(each.get("features"), list) for each in value["plates"])
]

# Letters that the Unicode versions of both sides know; the signs that YAML gives a meaning among them.
TEXTS = st.text(
    "abz09 .,:;'\"-_#&*[]{}éß¼Ⅷ中²ñ😀𝒜\n\t\\’–—/?!%@`|>+~=\u00a0\u200b\u2028\x85\ufeff\u0301X()“”",
    max_size=12,
)
USUAL = st.sampled_from(
    ["yes", "1912", "1912-23", "12:30", "a, b", "https://a.example/b?c=d", "Null", "1e5", "x" * 100]
)
NUMBERS = st.integers(-(10**14), 10**14) | st.sampled_from([0.5, -2.25, 1e-7, 1.5e-10, 1234567.875])
SINGLE = TEXTS | USUAL | NUMBERS | st.booleans() | st.none()
NAMES = st.sampled_from(["name", "place", "on", "date", "at", "a b", "no", "é", "x:y"])
VALUES = st.recursive(
    SINGLE,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(NAMES, inner, max_size=3),
    max_leaves=8,
)
FEATURES = st.lists(
    TEXTS | st.fixed_dictionaries({"term": TEXTS}, optional={"at": SINGLE, "note": SINGLE}), max_size=3
)
PLATES = st.fixed_dictionaries(
    {}, optional={**{name: VALUES for name in PLATE_ORDER if name != "features"}, "features": FEATURES}
)
WHOLE = st.fixed_dictionaries(
    {},
    optional={
        **{name: VALUES for name in SOURCE_ORDER if name != "plates"},
        "plates": st.lists(PLATES, max_size=3),
        "of_their_own": VALUES,
    },
)


def collected(strategy: Any, count: int) -> list[Any]:
    """So many values of a strategy, the same ones each time, for one run of Node.js instead of hundreds."""
    found: list[Any] = []

    @settings(max_examples=count, derandomize=True, database=None)
    @given(strategy)
    def collect(value: Any) -> None:
        found.append(value)

    collect()
    return found


def test_sources_are_written_byte_for_byte_as_the_command_line_writes_them(node: str) -> None:
    sources = [*collected(WHOLE, 210), *map(meaning, catalogue_files().values())]
    assert len(sources) > 290
    expected = [source_yaml(each) for each in sources]
    assert in_node(node, "given.map(yaml.sourceYaml)", SCRIPT, sources) == expected


def test_files_are_tidied_byte_for_byte_as_the_command_line_tidies_them(node: str) -> None:
    chance = random.Random(3)
    files = [data.decode() for data in all_files().values() if is_text(data) and len(data) < 50_000]
    files += [untidied(text, chance) for text in SOUND.values()]
    files += [data.decode() for _, data in slips(200, seed=5)]
    expected = [tidy(each.encode()).decode() for each in files]
    assert sum(text != after for text, after in zip(files, expected, strict=True)) > 100
    assert in_node(node, "given.map(yaml.tidy)", SCRIPT, files) == expected


def is_text(data: bytes) -> bool:
    try:
        return not data.decode().startswith("\ufeff")
    except UnicodeDecodeError:
        return False


def untidied(text: str, chance: random.Random) -> str:
    """The same text with blanks, deeper steps and comments strewn in."""
    slips_ = (
        lambda line: line + "  ",
        lambda line: line.replace(": ", ":   "),
        lambda line: line.replace("- ", "-   "),
        lambda line: line + "\n\n\n",
        lambda line: line + "\n      # deep",
        lambda line: "# above\n" + line,
        lambda line: " " * (len(line) - len(line.lstrip())) + line,
    )
    return "\n".join(
        chance.choice(slips_)(line) if chance.random() < 0.15 else line for line in text.split("\n")
    )


def test_what_is_tidy_already_stays_and_so_does_what_the_page_writes(node: str) -> None:
    texts = [source_yaml(meaning(each)) for each in catalogue_files().values()]
    again = (
        "given.map((text) => [yaml.updated(text, yaml.plainValue(yaml.read(text).root)), yaml.tidy(text)])"
    )
    assert in_node(node, again, SCRIPT, texts) == [[each, each] for each in texts]


def test_a_file_with_the_same_values_comes_out_as_it_was_but_tidy(node: str) -> None:
    sources = [text for text in SOUND.values() if isinstance(meaning(text), dict)]
    same = "given.map((text) => yaml.updated(text, yaml.plainValue(yaml.read(text).root)))"
    assert in_node(node, same, SCRIPT, sources) == [tidy(each.encode()).decode() for each in sources]


WORDS = ["new text", "1912", "a: b", "x, y", "two\nlines\n", "it’s “so”", "- z", "é😀", 3, True, 0.5, "#x"]


def edited(value: Any, chance: random.Random) -> Any:
    """A source with a few of the changes that a form makes."""
    new = copy.deepcopy(value)
    plates = new["plates"]
    for _ in range(chance.randint(1, 3)):
        plate = chance.choice(plates) if plates else {"features": []}
        features = plate["features"]
        match chance.randrange(10):
            case 0:
                new[chance.choice(SOURCE_ORDER[:-1])] = chance.choice([*WORDS, {"name": "N", "place": "P"}])
            case 1:
                new.pop(chance.choice([name for name in new if name != "plates"]), None)
                new.setdefault("title", "A title")
            case 2:
                added = {
                    "id": f"n{chance.randrange(99)}",
                    "garment": "skirt",
                    "features": ["a/b", {"term": "c/d", "at": "hem"}],
                }
                plates.insert(chance.randint(0, len(plates)), added)
            case 3 if len(plates) > 1:
                plates.remove(plate)
            case 4:
                chance.shuffle(plates)
            case 5:
                plate[chance.choice(PLATE_ORDER[1:-8])] = chance.choice(
                    [*WORDS, {"a": 1}, [1, "b"], ["x", {"y": ["z"]}]]
                )
            case 6:
                features.insert(
                    chance.randint(0, len(features)),
                    chance.choice(["e/f", {"facet": "q", "not_visible": True}]),
                )
            case 7 if features:
                features.pop(chance.randrange(len(features)))
            case 8 if features:
                features[chance.randrange(len(features))] = {"term": "z/y", "at": "hem"}
            case _:
                plate["caption"] = chance.choice(WORDS)
    return new


def commented(text: str, chance: random.Random) -> str:
    """The same text, tidy, with numbered comments above, beside and below its lines."""
    lines: list[str] = []
    for number, line in enumerate(tidy(text.encode()).decode().splitlines()):
        indent, kind = len(line) - len(line.lstrip()), chance.random()
        if kind < 0.15:
            lines.append(f"{' ' * indent}# c{number}.")
        beside = 0.15 < kind < 0.25 and re.fullmatch(r"\s*(- )?\w+: [\w-]+", line)
        lines.append(f"{line} # c{number}." if beside else line)
        if 0.25 < kind < 0.3:
            lines.append("")
    after = "\n".join(lines) + "\n"
    return after if readable(after.encode()) and meaning(after) == meaning(text) else text


def as_read(value: Any, place: str = "source", name: str = "") -> Any:
    """A value as it is read again: empty fields gone, a term alone short, a year that is text a number."""
    inside = {("source", "plates"): "plates", ("plate", "features"): "features"}
    each_is = {"plates": "plate", "features": "feature"}
    if isinstance(value, dict):
        if place == "feature" and value.keys() == {"term"}:
            return value["term"]
        left_out: tuple[Any, ...] = (None, "", {}, []) if place in ("source", "plate") else ()
        kept = {key: each for key, each in value.items() if each not in left_out}
        return {key: as_read(each, inside.get((place, key), ""), key) for key, each in kept.items()}
    if isinstance(value, list):
        return [as_read(each, each_is.get(place, "")) for each in value]
    plain = name in DATE_FIELDS and isinstance(value, str) and re.fullmatch(r"[0-9.][0-9X./~-]*", value)
    return core_value(Scalar(value, True, 1, 1)) if plain else value


def lines_of_untouched_plates(text: str, old: Any, new: Any) -> list[str]:
    """The blocks of lines, comments with them, of plates that are the same before and after."""
    kept = {each["id"] for each in old["plates"] if each in new["plates"] and isinstance(each.get("id"), str)}
    start = text.find("\nplates:\n")
    blocks = re.split(r"\n(?=  - id: )", text[start:])[1:]
    named = [
        (match[1], block) for block in blocks if (match := re.match(r"  - id: ([\w-]+)(?: #.*)?\n", block))
    ]
    ids = [each for each, _ in named]
    inner = [(name, block.split("\n")[1:]) for name, block in named if name in kept and ids.count(name) == 1]
    ends = [(lines, [at for at, line in enumerate(lines) if line.startswith("    ")]) for _, lines in inner]
    return ["\n".join(lines[: deep[-1] + 1]) for lines, deep in ends if deep]


def test_changed_values_are_in_the_file_and_all_else_is_as_it_was(node: str) -> None:
    chance = random.Random(11)
    texts = [commented(chance.choice(SOURCES), chance) for _ in range(100)]
    edits = [edited(meaning(each), chance) for each in texts]
    once = "yaml.updated(text, value)"
    update = f"given.map(([text, value]) => [{once}, yaml.updated({once}, value)])"
    found = in_node(node, update, SCRIPT, list(zip(texts, edits, strict=True)))
    checked = 0
    for text, new, (after, again) in zip(texts, edits, found, strict=True):
        assert as_read(meaning(after)) == as_read(new), text
        assert tidy(after.encode()).decode() == after
        assert again == after
        for block in lines_of_untouched_plates(tidy(text.encode()).decode(), meaning(text), new):
            checked += "#" in block
            assert block in after, after
    assert checked > 30


WORKED = (
    (
        "a value in its place, the comment beside it kept",
        "title: Old # the title\n# about the date\ndate: 1912 # printed\nplates: []\n",
        {"title": "New", "date": 1913, "plates": []},
        "title: New # the title\n# about the date\ndate: 1913 # printed\nplates: []\n",
    ),
    (
        "a new field where the house order has it",
        "title: T\n\n# what was seen\nplates:\n  - id: a # first\n",
        {"title": "T", "kind": "other", "plates": [{"id": "a"}]},
        "title: T\nkind: other\n\n# what was seen\nplates:\n  - id: a # first\n",
    ),
    (
        "plates in another order, with the comments above them, and one more",
        "title: T\nplates:\n  # first\n  - id: a\n    # of linen\n    garment: skirt\n\n"
        "  # second\n  - id: b\n",
        {"title": "T", "plates": [{"id": "b"}, {"id": "a", "garment": "coat"}, {"id": "c"}]},
        "title: T\nplates:\n  # second\n  - id: b\n\n"
        "  # first\n  - id: a\n    # of linen\n    garment: coat\n\n  - {id: c}\n",
    ),
    (
        "a plate taken out with what speaks of it alone",
        "title: T\nplates:\n  # page 14\n\n  # doubtful\n  - id: a\n  # sure\n  - id: b\n# end\n",
        {"title": "T", "plates": [{"id": "b"}]},
        "title: T\nplates:\n  # page 14\n\n  # sure\n  - id: b\n# end\n",
    ),
    (
        "lists in brackets, text in lines and quotation marks as they were",
        "title: 'T'\nlanguage: [en, fr] # both\nnote: |\n  One.\n  Two.\ncaption: >-\n  a\n  b\nplates:\n"
        "  - id: a\n    features: [a/b, c/d]\n",
        {
            "title": "T",
            "language": ["en", "de"],
            "note": "One.\nThree.\n",
            "caption": "a c",
            "plates": [{"id": "a", "features": ["a/b"]}],
        },
        "title: 'T'\nlanguage: [en, de] # both\nnote: |\n  One.\n  Three.\ncaption: >-\n  a c\nplates:\n"
        "  - id: a\n    features: [a/b]\n",
    ),
    (
        "what was repeated, written out where one of two changes",
        "title: T\nheld_by: &x\n  # where\n  name: A\nowner: *x\nplates: []\n",
        {"title": "T", "held_by": {"name": "B"}, "owner": {"name": "A"}, "plates": []},
        "title: T\n# where\nheld_by: {name: B}\nowner: {name: A}\nplates: []\n",
    ),
    (
        "a file of comments alone",
        "# mine\n\n# of 1912\n",
        {"title": "T"},
        "# mine\n# of 1912\ntitle: T\n",
    ),
    ("a file that cannot be read", "title: [\n", {"title": "T"}, "title: T\n"),
)


@pytest.mark.parametrize(
    ("text", "value", "after"), [each[1:] for each in WORKED], ids=[each[0] for each in WORKED]
)
def test_a_changed_file_keeps(node: str, text: str, value: Any, after: str) -> None:
    assert in_node(node, "yaml.updated(given[0], given[1])", SCRIPT, [text, value]) == after


def test_what_is_no_value_of_a_record_is_refused(node: str) -> None:
    refused = (
        "(() => { try { yaml.sourceYaml({ title: () => 1 }); } catch (error) { return error.name; } })()"
    )
    assert in_node(node, refused, SCRIPT) == "TypeError"

"""The browser's side of boards under Node.js against the Python side: the file, and what is worked out."""

from __future__ import annotations

import json
import random
from dataclasses import replace
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from inperiod.boards import as_json, read_board_file, resolve
from inperiod.evidence import facts_to_json
from inperiod.publishing.browser_data import vocabulary_data
from inperiod.records.model import Catalogue
from inperiod.records.yaml_reading import plain_value, read_yaml
from parity import differences, in_node

ASSETS = Path(__file__).parents[2] / "site" / "assets"
FILE = {"store": ASSETS / "board-store.js", "file": ASSETS / "board-file.js"}
ROUND_TRIP = """given.map((board) => {
  const text = file.writeBoard(store.boardOf(board));
  const whole = (value) => JSON.stringify(value, (name, each) => (each === "" ? undefined : each));
  return [text, whole(file.readBoard(text)) === whole(store.boardOf(board))];
})"""
READ = """given.map((text) => {
  try { return { value: file.readYaml(text) }; } catch (slip) {
    if (!(slip instanceof file.Unreadable)) throw slip;
    return { slip: slip.message };
  }
})"""


def without_marks(board):
    """A board as plain values, wherever in the file they stood."""
    fields = {
        name: getattr(board, name) for name in board.__dataclass_fields__ if name not in ("spots", "mark")
    }
    fields["target"] = board.target.text
    fields["features"] = [replace(each, mark=None) for each in board.features]
    fields["plates"] = [replace(each, mark=None) for each in board.plates]
    fields["departures"] = [replace(each, mark=None) for each in board.departures]
    fields["notes"] = (board.notes or "").rstrip("\n")
    return fields


def test_a_file_of_the_catalogue_goes_through_the_browser_unharmed(node, demo_folder, demo_catalogue):
    files = sorted((demo_folder / "boards").glob("*.yaml"))
    texts = [each.read_text(encoding="utf-8") for each in files]
    written = in_node(node, "given.map((text) => file.writeBoard(file.readBoard(text)))", FILE, texts)
    for before, after in zip(files, written, strict=True):
        checked = read_board_file(after.encode(), before.name, demo_catalogue)
        assert checked.problems == ()
        first = read_board_file(before.read_bytes(), before.name, demo_catalogue)
        one, other = without_marks(first.board), without_marks(checked.board)
        making = one.pop("making"), other.pop("making")
        assert one == other
        # Figures such as 22.50 come back as text, and mean the same to the making sheet.
        assert _as_text(making[0]) == _as_text(making[1])


def _as_text(value):
    if isinstance(value, dict):
        return {name: _as_text(each) for name, each in value.items()}
    if isinstance(value, list | tuple):
        return [_as_text(each) for each in value]
    return float(value) if str(value).replace(".", "", 1).isdigit() else value


WORDS = st.text(st.characters(min_codepoint=1, exclude_categories=("Cs",)), max_size=60)
LINE = WORDS.map(lambda text: " ".join(text.split()))
TRICKY = st.sampled_from(
    [
        "no",
        "1912",
        "- a",
        "a: b",
        "# x",
        "'",
        '"',
        "a #b",
        "|",
        "{",
        "x\ny\n",
        " x\n y",
        "\t",
        "é",
        "12:30",
        "~",
        "😀",
    ]
)
BOARDS = st.lists(
    st.fixed_dictionaries(
        {
            "title": LINE | TRICKY,
            "notes": WORDS | TRICKY,
            "care": st.lists(LINE | TRICKY, max_size=4).map("\n".join),
            "questions": st.lists(WORDS | TRICKY, max_size=3),
            "plates": st.lists(
                st.fixed_dictionaries({"plate": st.just("a/b"), "reason": WORDS | TRICKY}), max_size=2
            ),
            "measures": st.dictionaries(LINE.filter(bool) | TRICKY, LINE | TRICKY, max_size=3),
        }
    ),
    min_size=30,
    max_size=30,
)


@settings(max_examples=8, deadline=None)
@given(boards=BOARDS)
def test_whatever_is_written_reads_back_the_same_in_both_languages(node, boards):
    for board, (text, same) in zip(boards, in_node(node, ROUND_TRIP, FILE, boards), strict=True):
        assert same, text
        document = read_yaml(text.encode(), "boards/b.yaml")
        if document.root is None:
            assert not text.strip("{}\n")
            continue
        # A warning may say that curly quotation marks are part of the text; an error may not.
        assert not [each for each in document.problems if each.severity == "error"], text
        value = plain_value(document.root)
        for name in ("title", "notes", "care"):
            assert str(value.get(name, "")) == board[name], text
        assert [str(each) for each in value.get("questions", [])] == [e for e in board["questions"] if e], (
            text
        )
        kept = {name: each for name, each in board["measures"].items() if each}
        assert {str(name): str(each) for name, each in value.get("measures", {}).items()} == kept, text


WHOLE = [
    *("a: 1", "a:", "a: b c", "- a\n- b", "- a: b\n  c: d", "a: [b, c]", "a: {b: c}", "a: b # c\n# d\ne: f"),
    *(
        'a: {b: "c, d", e: [f, g]}',
        'a: "b\\n c\\u00e9"',
        "a: 'it''s'",
        "a: |\n  x\n   y\n\n  z\nb: c",
        "a: |-\n  x",
    ),
    *(
        "a: >-\n  x\n  y\n\n  z",
        "a:\n- b\n- c\nd: e",
        "a:\n  - b: c\n    d: e",
        "a: b\n  c d\ne: f",
        'a: "b\n  c"',
    ),
    *(
        "a: [b,\n  c]\nd: e",
        "- - a\n  - b\n- c",
        "a: 1.50",
        "a: no",
        "a: 12:30",
        "a: ~",
        "a: true",
        "a: ''",
        "a: |+\n  x\n\n",
    ),
    *(
        "a: http://b/c#d",
        "a: b:c",
        "a: -1",
        "a: - b",
        "a-b: c",
        "a b: c",
        '"a: b": c',
        "a: {}",
        "a: []",
        "a: {b: , c: d}",
    ),
]
REFUSED = [
    "a: b: c",
    "a: &x b",
    "a: *x",
    "a: !t b",
    "\ta: b",
    "a: b\na: c",
    "a: [b",
    'a: "b',
    "a: b\n  c: d",
    "a: {b}",
    "x",
]


def test_the_reader_takes_each_form_as_the_catalogue_does(node):
    for text, found in zip(WHOLE, in_node(node, READ, FILE, WHOLE), strict=True):
        document = read_yaml(text.encode(), "b.yaml")
        if "slip" in found:
            assert document.root is None or document.problems, (text, found)
            continue
        assert document.root is not None, (text, document.problems, found)
        expected = plain_value(document.root)
        assert _as_text(found["value"]) == _as_text(expected), text


@pytest.mark.parametrize("text", REFUSED)
def test_what_is_not_understood_is_refused_with_its_line(node, text):
    (found,) = in_node(node, READ, FILE, [text])
    assert found.get("slip", "").startswith("Line "), found


def test_a_field_that_has_no_place_is_named_with_its_line_and_not_dropped(node):
    texts = [
        "title: T\nbanana: x\n",
        "title: T\nplates:\n  - {plate: a/b, colour: red}\n",
        "title: [a]\n",
        "- a\n",
    ]
    wrapped = READ.replace("readYaml", "readBoard")
    slips = [each.get("slip", "") for each in in_node(node, wrapped, FILE, texts)]
    assert slips[0] == "Line 2: banana is not a field of a board."
    assert slips[1] == "Line 2: colour has no place in plates."
    assert all(each.startswith("Line 1: ") for each in slips[2:])


def test_a_link_carries_a_small_board_whole_and_refuses_a_large_one(node):
    board = {"title": "Täst “x”", "notes": "a\n\nb", "features": ["neckline/v"]}
    there = (
        "(() => { const b = store.boardOf(given); return [file.fromLink(file.inLink(b).slice(6)), b]; })()"
    )
    came, went = in_node(node, there, FILE, board)
    assert came == went
    large = {"title": "T", "notes": "x" * 20_000}
    assert in_node(node, "file.inLink(store.boardOf(given))", FILE, large) is None
    short = "file.fromLink(file.inLink(store.boardOf({ title: 'Cut' })).slice(6, -3))"
    cut = f"(() => {{ try {{ {short}; return 'read'; }} catch (slip) {{ return 'refused'; }} }})()"
    assert in_node(node, cut, FILE) == "refused"


CHECK = {
    "base": ASSETS / "base.js",
    "dating": ASSETS / "dating.js",
    "evidence": ASSETS / "evidence.js",
    "holdings": ASSETS / "holdings.js",
    **FILE,
    "check": ASSETS / "board-check.js",
}
CHECKED = """(() => {
  const held = check.hold(given.facts, given.facts.plates);
  return given.boards.map(([board, window]) => {
    const found = check.checkBoard(held, given.vocabulary, store.boardOf(board), window);
    return {
      verdicts: found.planned.map(({ finding }) => finding && finding.verdict),
      usual: found.planned.map(({ usual }) => usual.map((each) => each.term)),
      cite: found.planned.map(({ cite }) => cite),
      together: found.together && found.together.verdict,
      sides: found.gathered.map((each) => (each.known ? each.side : null)),
      shows: found.gathered.map((each) => each.shows || []),
      remarks: found.remarks,
      suggested: found.suggested.map(({ plate, shows }) => ({ plate, shows })),
    };
  });
})()"""


def random_boards(catalogue: Catalogue, count: int) -> list[dict[str, object]]:
    """Boards of recorded garments, with terms and plates good and bad mixed."""
    draw = random.Random(26)
    plates = sorted(catalogue.plates)
    terms = sorted(key for key in catalogue.vocabulary.terms if not key.startswith("garment/"))
    found = []
    for _ in range(count):
        model = catalogue.plates[draw.choice(plates)]
        seen = [each.term for each in model.features if each.term]
        features = draw.sample(seen, min(len(seen), draw.randint(0, 5))) + draw.sample(
            terms, draw.randint(0, 2)
        )
        if draw.random() < 0.2:
            features.append(f"{draw.choice(terms).partition('/')[0]}/none")
        gathered = []
        for key in [
            *draw.sample(plates, draw.randint(0, 5)),
            *(["no-such/p1"] if draw.random() < 0.2 else []),
        ]:
            gathered.append({"plate": key, "supports": draw.choice([*features, *terms[:3], None])})
        found.append(
            {
                "title": "Tried",
                "target": draw.choice(("1926", "1912-23", "191X", "1905~", "1938", "1926-08")),
                "garment": model.garment,
                "features": list(dict.fromkeys(features)),
                "plates": [{k: v for k, v in each.items() if v} for each in gathered],
            }
        )
    return found


def test_what_is_worked_out_is_the_same_in_both_languages(node, demo_catalogue, demo_facts):
    boards = random_boards(demo_catalogue, 120)
    expected, sent = [], []
    for board in boards:
        checked = read_board_file(json.dumps(board).encode(), "tried.yaml", demo_catalogue)
        assert checked.board is not None
        found = resolve(checked.board, demo_catalogue, demo_facts)
        data = as_json(found)
        expected.append(
            {
                "verdicts": [each["verdict"] for each in data["features"]],
                "usual": [[other["term"] for other in each["usual"]] for each in data["features"]],
                "cite": [list(each.to_cite) for each in found.planned],
                "together": found.together.verdict if found.together else None,
                "sides": [each["side"] for each in data["plates"]],
                "shows": [each["shows"] for each in data["plates"]],
                "remarks": data["remarks"],
                "suggested": data["suggested"],
            }
        )
        sent.append([board, {"earliest": found.window.earliest, "latest": found.window.latest}])
    data = {
        "facts": {**facts_to_json(demo_facts), "blocks": ""},
        "vocabulary": vocabulary_data(demo_catalogue),
        "boards": sent,
    }
    theirs = in_node(node, CHECKED, CHECK, data)
    for board, ours, other in zip(boards, expected, theirs, strict=True):
        assert differences(ours, other) == [], board
    kinds = {each["kind"] for ours in expected for each in ours["remarks"]}
    assert len(kinds) == 8, kinds

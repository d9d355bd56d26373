"""The browser's reader of YAML takes and refuses the same files as the checker's, with the same complaints.

The checker's reader stands on libyaml (through PyYAML), whose events the browser's own scanner mirrors.
"""

from __future__ import annotations

import base64
import re
import time
from typing import Any

import pytest

from inperiod.records.yaml_reading import Items, Node, Scalar, plain_value, read_yaml
from parity import in_node
from recording.yaml_files import CHECKOUT, all_files, slips

pytestmark = pytest.mark.node

SCRIPT = CHECKOUT / "site/assets/record-yaml.js"
READ = """(() => {
  const tree = (node) => node === null ? null
    : node.is === "scalar" ? [node.text, node.plain, node.line, node.column]
    : node.is === "items" ? [node.line, node.column, node.items.map(tree)]
    : [node.line, node.column, [...node.entries].map(([name, at]) => [name, node.keys.get(name), tree(at)])];
  return given.map((data) => {
    const { text, problems: undecoded } = yaml.decode(Buffer.from(data, "base64"));
    const { root, problems } = text === null ? { root: null, problems: undecoded } : yaml.read(text);
    const said = problems.map((each) => [each.line, each.column, each.severity, each.message, each.hint]);
    return [said, tree(root), root === null ? null : JSON.stringify(yaml.plainValue(root)).length > 0];
  });
})()"""


def tree(node: Node | None) -> Any:
    if node is None:
        return None
    if isinstance(node, Scalar):
        return [node.text, node.plain, node.line, node.column]
    if isinstance(node, Items):
        return [node.line, node.column, [tree(each) for each in node.items]]
    names = [[name, list(node.keys[name]), tree(each)] for name, each in node.entries.items()]
    return [node.line, node.column, names]


def in_the_checker(data: bytes) -> Any:
    document = read_yaml(data, "")
    said = [[each.line, each.column, each.severity, each.message, each.hint] for each in document.problems]
    return [said, tree(document.root), None if document.root is None else True]


def in_the_browser(node: str, files: list[bytes]) -> list[Any]:
    given = [base64.b64encode(each).decode() for each in files]
    found: list[Any] = in_node(node, READ, {"yaml": SCRIPT}, given)
    return found


def unlike(node: str, files: dict[str, bytes]) -> list[tuple[str, Any, Any]]:
    theirs = in_the_browser(node, list(files.values()))
    pairs = zip(files.items(), theirs, strict=True)
    return [
        (name, ours[0], other[0]) for (name, data), other in pairs if (ours := in_the_checker(data)) != other
    ]


def test_more_than_three_hundred_files_are_read_and_refused_alike_in_a_bounded_time(node: str) -> None:
    files = all_files()
    assert len(files) >= 300
    began = time.process_time()
    assert unlike(node, files) == []
    assert time.process_time() - began < 60


def test_each_of_the_complaints_about_yaml_is_made_by_one_of_the_files() -> None:
    """So that the words of both sides are compared, all of them."""
    made = {problem.message for data in all_files().values() for problem in read_yaml(data, "").problems}
    words = in_words()
    silent = [word for word in words if not any(word in message for message in made)]
    # libyaml refuses a lone surrogate in an escape itself, and with other words.
    assert silent == ["This text holds half a character (a lone surrogate)."]


def in_words() -> list[str]:
    """The longest fixed part of each complaint in the browser's table of words."""
    source = (CHECKOUT / "site/assets/record-yaml-read.js").read_text(encoding="utf-8")
    table = source[source.index("const WORDS = {") : source.index("\n  };", source.index("const WORDS = {"))]
    messages = re.findall(r'^    \w+: \[\s*"((?:[^"\\]|\\.)*)"', table, re.MULTILINE)
    assert len(messages) > 35
    return [max(re.split(r"\{\w+\}", each.replace("\\\\", "\\")), key=len) for each in messages]


def test_slips_of_the_pen_are_told_alike(node: str) -> None:
    assert unlike(node, dict(slips(800, seed=7))) == []


def test_values_are_the_same_by_the_core_rules(node: str) -> None:
    plain = "1912 012 -0 +5 0x1F 1e3 .5 5. -.5e-3 yes no on ~ null NULL True FALSE tRUE 12:30 1912-09-01 .inf"
    text = "".join(f"- {each}\n" for each in [*plain.split(), "1" * 15, "1" * 16, '"1912"', "'no'", ""])
    root = read_yaml(text.encode(), "").root
    assert root is not None
    expected = plain_value(root)
    found = in_node(node, "yaml.plainValue(yaml.read(given).root)", {"yaml": SCRIPT}, text)
    assert found == expected
    assert [type(each) is bool for each in found] == [type(each) is bool for each in expected]


def test_half_a_character_in_a_text_is_refused_and_not_passed_on(node: str) -> None:
    found = in_node(node, 'yaml.read("title: a" + String.fromCharCode(0xd800))', {"yaml": SCRIPT})
    assert found["root"] is None
    assert [(each["line"], each["column"]) for each in found["problems"]] == [(1, 9)]
    assert "U+D800" in found["problems"][0]["message"]

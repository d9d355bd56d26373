"""What is tried in the browser's own files, under Node.js, and held against the Python side."""

from __future__ import annotations

import base64
import json
import select
import subprocess
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from bench.fuzz import words
from bench.fuzz.loop import Outcome
from bench.fuzz.targets import is_sound

from inperiod.dating import Unreadable, lexicon, read_edtf, read_phrase
from inperiod.records.yaml_reading import plain_value, read_yaml

HANGS = 60
"""Seconds without an answer after which Node.js is taken to hang."""


class Node:
    """One Node.js that runs batch after batch."""

    def __init__(self, program: str) -> None:
        self.program = program
        self.running: subprocess.Popen[bytes] | None = None

    def ask(
        self, target: str, inputs: Sequence[bytes], watched: Sequence[bool]
    ) -> list[dict[str, Any]] | None:
        """What each input did; None where Node.js fell over or hung."""
        if self.running is None or self.running.poll() is not None:
            self.running = subprocess.Popen(
                [
                    self.program,
                    str(Path(__file__).with_name("browser.js")),
                    str(words.CHECKOUT / "site" / "assets"),
                    json.dumps(lexicon.as_data()),
                ],
                stdin=subprocess.PIPE,
                stdout=subprocess.PIPE,
            )
        asked = {
            "target": target,
            "inputs": [base64.b64encode(each).decode() for each in inputs],
            "watched": list(watched),
        }
        assert self.running.stdin is not None
        assert self.running.stdout is not None
        self.running.stdin.write(json.dumps(asked).encode() + b"\n")
        self.running.stdin.flush()
        ready, _, _ = select.select([self.running.stdout], [], [], HANGS)
        line = self.running.stdout.readline() if ready else b""
        if not line:
            self.close()
            return None
        found: list[dict[str, Any]] = json.loads(line)
        return found

    def close(self) -> None:
        if self.running is not None:
            self.running.kill()
            self.running.communicate()
            self.running = None


@dataclass(slots=True)
class InBrowser:
    """A target in JavaScript; ``differs`` holds what it gave against the Python side."""

    name: str
    node: Node
    seeds: Sequence[bytes]
    words: Sequence[bytes]
    differs: Any

    def run(self, inputs: Sequence[bytes], watched: Sequence[bool]) -> Iterable[Outcome]:
        answers = self.node.ask(self.name, inputs, watched)
        if answers is None:
            if len(inputs) == 1:
                yield Outcome(HANGS, "Hang: Node.js gave no answer at all")
                return
            middle = len(inputs) // 2
            yield from self.run(inputs[:middle], watched[:middle])
            yield from self.run(inputs[middle:], watched[middle:])
            return
        for data, answer in zip(inputs, answers, strict=True):
            fault = answer.get("fault") or self.differs(data, answer.get("value"))
            yield Outcome(answer["seconds"], fault, frozenset(answer.get("reached", ())))


def board_differs(data: bytes, value: Any) -> str | None:
    """A board that the browser reads is what the catalogue's reader reads, where that has no complaint."""
    if value is None or not is_sound(data):
        return None
    root = read_yaml(data, "").root
    ours = _as_text(plain_value(root)) if root is not None else None
    theirs = _as_text(value["read"])
    if ours != theirs:
        return f"Difference: read as {theirs!r:.200} and not as {ours!r:.200} at readYaml"
    written = read_yaml(value["written"].encode("utf-8", "surrogatepass"), "")
    if any(each.severity == "error" for each in written.problems):
        return f"Unreadable: {value['written']!r:.200}: {written.problems[0].message} at writeBoard"
    return None


def _as_text(value: Any) -> Any:
    """Numbers as text with their worth, since the browser keeps ``22.50`` as written."""
    if isinstance(value, dict):
        return {str(name): _as_text(each) for name, each in value.items()}
    if isinstance(value, list):
        return [_as_text(each) for each in value]
    if isinstance(value, bool) or value is None:
        return value
    try:
        return repr(float(value))
    except ValueError:
        return value


def date_differs(data: bytes, value: Any) -> str | None:
    """Both sides understand the same, or both refuse."""
    text = data.decode("utf-8", "replace")
    try:
        meant = read_phrase(text)
        phrase = [meant.edtf, meant.span.earliest, meant.span.latest, meant.words, meant.note]
    except Unreadable as refused:
        phrase = [type(refused).__name__]
    try:
        span = read_edtf(text)
        edtf = [span.earliest, span.latest, span.approximate, span.uncertain]
    except Unreadable:
        edtf = None
    if value["phrase"] != phrase:
        return f"Difference: {value['phrase']} and not {phrase} at readPhrase"
    return None if value["edtf"] == edtf else f"Difference: {value['edtf']} and not {edtf} at readEdtf"


@contextmanager
def browser_targets(program: str) -> Iterator[dict[str, InBrowser]]:
    """Every target by its name; one Node.js serves them as long as the context lasts."""
    node = Node(program)
    made = (
        InBrowser("browser-boards", node, words.board_files(), words.BOARD_WORDS, board_differs),
        InBrowser("browser-links", node, words.LINKS, words.LINK_WORDS, lambda data, value: None),
        InBrowser(
            "browser-dates",
            node,
            (*words.PHRASES, *words.EDTF),
            (*words.PHRASE_WORDS, *words.EDTF_WORDS),
            date_differs,
        ),
    )
    try:
        yield {each.name: each for each in made}
    finally:
        node.close()

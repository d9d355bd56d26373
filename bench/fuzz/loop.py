"""The loop: mutate, run, keep what reaches new code, note what falls over and what is slowest."""

from __future__ import annotations

import random
import resource
import signal
import sys
import time
import traceback
from collections.abc import Callable, Iterable, Sequence
from dataclasses import dataclass, field
from pathlib import Path
from types import FrameType
from typing import Any, Protocol

from bench.fuzz.mutation import LARGEST, Mutator

import inperiod

PACKAGE = str(Path(inperiod.__file__).parent)
LONGEST = 10
"""Seconds of the processor that one input may take before it counts as a hang."""

WATCHED = 25
"""One input in so many is run under watch, to see which code it reaches."""

BATCH = 250


class TooSlow(BaseException):
    """One input took longer than ``LONGEST``."""


@dataclass(frozen=True, slots=True)
class Outcome:
    """What one input did: ``fault`` is None where all was well; ``reached`` what code, where watched."""

    seconds: float
    fault: str | None = None
    reached: frozenset[Any] = frozenset()


class Target(Protocol):
    """Something that takes bytes. ``seeds`` are sound inputs, ``words`` what is typed into it."""

    name: str
    seeds: Sequence[bytes]
    words: Sequence[bytes]

    def run(self, inputs: Sequence[bytes], watched: Sequence[bool]) -> Iterable[Outcome]: ...


@dataclass(slots=True)
class InPython:
    """A target that is a function: it raises where something is wrong."""

    name: str
    check: Callable[[bytes], None]
    seeds: Sequence[bytes]
    words: Sequence[bytes]

    def run(self, inputs: Sequence[bytes], watched: Sequence[bool]) -> Iterable[Outcome]:
        for data, watch in zip(inputs, watched, strict=True):
            yield self.one(data, watch)

    def one(self, data: bytes, watch: bool = False) -> Outcome:
        reached: set[Any] = set()
        signal.signal(signal.SIGVTALRM, _ring)
        signal.setitimer(signal.ITIMER_VIRTUAL, LONGEST * (10 if watch else 1))
        began = time.thread_time()
        try:
            if watch:
                sys.settrace(_Watch(reached))
            self.check(data)
        except (Exception, TooSlow) as error:
            return Outcome(time.thread_time() - began, _told(error))
        finally:
            sys.settrace(None)
            signal.setitimer(signal.ITIMER_VIRTUAL, 0)
        return Outcome(0.0 if watch else time.thread_time() - began, None, frozenset(reached))


def _ring(number: int, frame: FrameType | None) -> None:
    raise TooSlow(f"took more than {LONGEST} seconds")


def _told(error: BaseException) -> str:
    """The error and where it came from, so that one fault met a thousand times is one fault."""
    frames = traceback.extract_tb(error.__traceback__)
    where = " < ".join(f"{Path(each.filename).name}:{each.lineno}" for each in reversed(frames[-3:]))
    return f"{type(error).__name__}: {str(error)[:300]!r} at {where}"


class _Watch:
    """A trace function that notes the lines of the package, by the line run before."""

    def __init__(self, reached: set[Any]) -> None:
        self.reached = reached

    def __call__(self, frame: FrameType, event: str, argument: Any) -> Any:
        return self.line if frame.f_code.co_filename.startswith(PACKAGE) else None

    def line(self, frame: FrameType, event: str, argument: Any) -> Any:
        self.reached.add((frame.f_code, frame.f_lineno))
        return self.line


@dataclass(slots=True)
class Fault:
    """One way to fall over: the shortest input that does it, what was said, and how often it was met."""

    data: bytes
    words: str
    times: int = 1


@dataclass(slots=True)
class Figures:
    """What a run came to. ``kept``: inputs that reached code no other had; ``memory`` in MB, the process's
    highest so far."""

    target: str
    inputs: int = 0
    seconds: float = 0.0
    slowest: float = 0.0
    slowest_input: bytes = b""
    reached: set[Any] = field(default_factory=set)
    kept: int = 0
    faults: dict[str, Fault] = field(default_factory=dict)
    memory: float = 0.0

    def note(self, data: bytes, words: str) -> None:
        known = self.faults.get(_kind(words))
        if known is None:
            self.faults[_kind(words)] = Fault(data, words)
            return
        known.times += 1
        if len(data) < len(known.data):
            known.data, known.words = data, words


def _kind(fault: str) -> str:
    """A fault without the part of its words that depends on the input."""
    name, _, rest = fault.partition(":")
    return f"{name} {rest.rpartition(' at ')[2]}"


def fuzz(target: Target, count: int, seed: int, seconds: float = 0.0) -> Figures:
    """Run ``count`` inputs (or as many as fit in ``seconds``, where given) made from ``seed``."""
    chance = random.Random(f"{target.name} {seed}")
    mutator = Mutator(chance, target.words)
    corpus = [each[:LARGEST] for each in target.seeds]
    found = Figures(target.name)
    began = time.perf_counter()
    fresh = list(corpus)
    while found.inputs < count and not (seconds and time.perf_counter() - began > seconds):
        inputs, fresh = fresh, []
        inputs += [mutator.mutated(corpus) for _ in range(min(BATCH, count - found.inputs) - len(inputs))]
        inputs = inputs[: count - found.inputs]
        watched = [
            found.inputs + at < len(target.seeds) or not chance.randrange(WATCHED)
            for at in range(len(inputs))
        ]
        for data, outcome in zip(inputs, target.run(inputs, watched), strict=True):
            found.inputs += 1
            if outcome.seconds > found.slowest:
                found.slowest, found.slowest_input = outcome.seconds, data
            if outcome.fault is not None:
                found.note(data, outcome.fault)
            elif not outcome.reached <= found.reached:
                found.reached |= outcome.reached
                corpus.append(data)
                found.kept += 1
    found.seconds = time.perf_counter() - began
    found.memory = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024
    return found

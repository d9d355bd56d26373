"""Work in many parts, over all the cores of the machine.

The processes are forks of this one: they see everything it has made ready, and hand back nothing but small
results. What a part gives must not depend on who does it, so that one hand and many come to the same. Where a
hand fails or is lost its parts are done again by this process, which then meets the same error itself.
"""

from __future__ import annotations

import contextlib
import ctypes
import gc
import json
import os
import signal
import struct
import sys
import threading
from collections.abc import Callable, Iterator, Sequence
from typing import Any

MOST = 8
"""More hands than these gain little: they would wait for the disk."""

ROOM = 2_500_000_000
"""Bytes that all hands together may come to hold. Each begins with what this process has made ready, and in
time has a copy of its own of all it looks at: many hands at a large catalogue would fill the memory."""

_TICKET = struct.Struct("=I")


def hands_here() -> int:
    """How many processes can work at once: the cores this process may use; one where it may not be forked
    (other threads are running, or the system's own libraries would not bear it)."""
    if not sys.platform.startswith("linux") or threading.active_count() > 1:
        return 1
    return max(1, min(MOST, len(os.sched_getaffinity(0))))


def done_by_all(
    parts: Sequence[Any], work: Callable[[Any], Any], hands: int, tell: Callable[[int], None]
) -> Iterator[tuple[int, Any]]:
    """What ``work`` makes of every part, with the part's number, in the order they come.

    Results are what JSON can hold. ``tell`` hears now and then how many parts have been begun. An error of
    ``work`` is raised here, whoever met it; the other hands are then stopped.
    """
    hands = min(hands, len(parts))
    if hands > 1:
        hands = min(hands, ROOM // _held())
    if hands < 2:
        for number, part in enumerate(parts):
            tell(number)
            yield number, work(part)
        return
    tickets, office = os.pipe()
    # One ticket for each part, taken by whoever is free. A pipe holds many more than there are parts: those
    # that do not fit are done at the end, with those that were lost.
    os.set_blocking(office, False)
    with contextlib.suppress(BlockingIOError):
        for number in range(len(parts)):
            os.write(office, _TICKET.pack(number))
    os.close(office)
    gc.freeze()  # so that no hand copies what is ready only to look through it
    others = [_Hand(parts, work, tickets) for _ in range(hands - 1)]
    try:
        missing = set(range(len(parts)))
        for number in _taken(tickets):
            tell(number)
            yield number, work(parts[number])
            missing.discard(number)
        for other in others:
            for number, result in other.results():
                yield number, result
                missing.discard(number)
        for number in sorted(missing):
            yield number, work(parts[number])
    finally:
        os.close(tickets)
        for other in others:
            other.stop()
        gc.unfreeze()


def _held() -> int:
    """The bytes this process has held at most."""
    import resource  # of POSIX systems, like forks

    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024  # which Linux counts in kilobytes


def _taken(tickets: int) -> Iterator[int]:
    while ticket := os.read(tickets, _TICKET.size):
        yield _TICKET.unpack(ticket)[0]


class _Hand:
    """A fork that takes tickets until there are none, then hands its results back."""

    def __init__(self, parts: Sequence[Any], work: Callable[[Any], Any], tickets: int) -> None:
        parent = os.getpid()
        self._reading, writing = os.pipe()
        self._process = os.fork()
        if self._process == 0:
            done: list[Any] = []
            try:
                _end_with(parent)
                os.close(self._reading)
                for number in _taken(tickets):
                    done.append([number, work(parts[number])])
            finally:
                # Handed over at the end, as the other side reads only then; then gone, without cleaning up
                # what belongs to the process this is a copy of.
                with contextlib.suppress(OSError), open(writing, "w", encoding="utf-8") as back:
                    back.writelines(json.dumps(each) + "\n" for each in done)
                os._exit(0)
        os.close(writing)

    def results(self) -> Iterator[tuple[int, Any]]:
        """All that came back whole; what is missing the hand failed in."""
        with open(self._reading, encoding="utf-8", closefd=False) as back:
            for line in back:
                if line.endswith("\n"):
                    number, result = json.loads(line)
                    yield number, result

    def stop(self) -> None:
        with contextlib.suppress(ProcessLookupError):
            os.kill(self._process, signal.SIGKILL)
        os.waitpid(self._process, 0)
        os.close(self._reading)


def _end_with(parent: int) -> None:
    """Have this process ended when its parent is, and keep it out of the keyboard's reach."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    with contextlib.suppress(AttributeError, OSError):
        ctypes.CDLL(None).prctl(1, signal.SIGKILL)  # PR_SET_PDEATHSIG of <sys/prctl.h>
    if os.getppid() != parent:
        os._exit(1)

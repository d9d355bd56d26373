"""Seconds, processor seconds and memory of one thing done in a process of its own."""

from __future__ import annotations

import json
import os
import resource
import subprocess
import sys
import threading
import time
from dataclasses import dataclass
from pathlib import Path
from typing import Any

ROOT = Path(__file__).parents[2]
EVERY = 0.05


@dataclass(frozen=True, slots=True)
class Cost:
    """``wall`` and ``cpu`` in seconds, of all processes together; ``memory`` the most that all of them held
    at once, in megabytes, shared pages counted once where the system tells (Linux); ``told`` what the work
    said of itself."""

    wall: float
    cpu: float
    memory: float
    told: dict[str, Any]


def cost_of(task: str, *arguments: str, hash_seed: str = "0") -> Cost:
    """What it costs to run a function of ``bench.scale.tasks`` in a fresh process. Raises where it fails."""
    before = resource.getrusage(resource.RUSAGE_CHILDREN)
    began = time.perf_counter()
    running = subprocess.Popen(
        [sys.executable, "-m", "bench.scale.tasks", task, *arguments],
        cwd=ROOT,
        stdout=subprocess.PIPE,
        text=True,
        env={**os.environ, "PYTHONHASHSEED": hash_seed},
    )
    most = [0.0]
    ended = threading.Event()
    watching = threading.Thread(target=_watch, args=(running.pid, most, ended))
    watching.start()
    said, _ = running.communicate()
    ended.set()
    watching.join()
    wall = time.perf_counter() - began
    if running.returncode:
        raise RuntimeError(f"{task} {' '.join(arguments)} ended with {running.returncode}")
    after = resource.getrusage(resource.RUSAGE_CHILDREN)
    cpu = after.ru_utime + after.ru_stime - before.ru_utime - before.ru_stime
    told = json.loads(said.splitlines()[-1]) if said.strip() else {}
    return Cost(wall, cpu, most[0] or after.ru_maxrss / 1024, told)


def _watch(process: int, most: list[float], ended: threading.Event) -> None:
    while not ended.wait(EVERY):
        most[0] = max(most[0], sum(map(_held, _family(process))))


def _family(process: int) -> list[int]:
    """The process and all that it started."""
    found, todo = [], [process]
    while todo:
        each = todo.pop()
        found.append(each)
        try:
            listed = Path(f"/proc/{each}/task/{each}/children").read_text()
        except OSError:
            continue
        todo.extend(map(int, listed.split()))
    return found


def _held(process: int) -> float:
    """Megabytes of a process, each shared page by its share."""
    try:
        lines = Path(f"/proc/{process}/smaps_rollup").read_text().splitlines()
    except OSError:
        return 0.0
    return sum(int(line.split()[1]) for line in lines if line.startswith("Pss:")) / 1024

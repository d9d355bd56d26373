"""The same records give the same bytes, whoever builds, when, where and with how many hands."""

from __future__ import annotations

import json
import os
import shutil
import subprocess
import sys
import time
from pathlib import Path

import pytest

from inperiod import hands as hands_room
from inperiod.hands import done_by_all
from inperiod.publishing import WillNotWrite
from inperiod.publishing import write as writing
from inperiod.publishing.write import alone, replace_site

WHOLE = Path(__file__).parents[1] / "records" / "whole"

# Builds with folders listed in an order of its own, and prints a digest of every file.
BUILD = """
import hashlib, json, os, random, sys
from pathlib import Path

folder, site, order, hands = Path(sys.argv[1]), Path(sys.argv[2]), int(sys.argv[3]), int(sys.argv[4])
chance = random.Random(order)
honest = os.scandir, os.listdir, Path.iterdir


class Listed(list):
    def __enter__(self):
        return self

    def __exit__(self, *_):
        pass

    def close(self):
        pass


def shuffled(entries):
    found = Listed(entries)
    chance.shuffle(found)
    return found


def iterdir(self):
    return iter(shuffled(honest[2](self)))


os.scandir = lambda *given: shuffled(honest[0](*given))
os.listdir = lambda *given: shuffled(honest[1](*given))
Path.iterdir = iterdir

from inperiod.publishing import build
from inperiod.records import read_catalogue

build(read_catalogue(folder).catalogue, site, hands=hands)
print(json.dumps({
    file.relative_to(site).as_posix(): hashlib.sha256(file.read_bytes()).hexdigest()
    for file in site.rglob("*") if file.is_file()
}, sort_keys=True))
"""


def built(folder: Path, site: Path, *, order: int, hands: int, **environment: str) -> dict[str, str]:
    ran = subprocess.run(
        [sys.executable, "-c", BUILD, str(folder), str(site), str(order), str(hands)],
        capture_output=True,
        text=True,
        check=False,
        env={**os.environ, **environment},
    )
    assert ran.returncode == 0, ran.stderr
    made: dict[str, str] = json.loads(ran.stdout)
    return made


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="elsewhere a build has one hand")
def test_chance_order_place_time_and_hands_change_nothing(tmp_path: Path) -> None:
    copies = []
    for name in ("here", "another place"):
        copies.append(
            shutil.copytree(WHOLE, tmp_path / name / "records", ignore=shutil.ignore_patterns(".inperiod"))
        )
        (copies[-1] / "inperiod.yaml").open("a").write("\nbase_address: https://dress.example/\n")
    for file in copies[1].rglob("*"):
        os.utime(file, (1_000_000_000, 1_000_000_000))
    first = built(
        copies[0], tmp_path / "one", order=1, hands=1, PYTHONHASHSEED="1", TZ="UTC", LC_ALL="C.UTF-8"
    )
    other = built(
        copies[1],
        tmp_path / "a longer way" / "two",
        order=2,
        hands=3,
        PYTHONHASHSEED="77",
        TZ="Pacific/Auckland",
        LC_ALL="C",
    )
    assert first.keys() == other.keys()
    assert [name for name in first if first[name] != other[name]] == []
    assert len(first) > 100


@pytest.mark.parametrize("hands", [1, 2, 5])
def test_what_many_hands_do_is_what_one_does(hands: int) -> None:
    told: list[int] = []
    done = dict(done_by_all(range(40), lambda part: [part, part * part], hands, told.append))
    assert {number: list(result) for number, result in done.items()} == {n: [n, n * n] for n in range(40)}
    assert all(0 <= each < 40 for each in told)


@pytest.mark.skipif(not sys.platform.startswith("linux"), reason="there is one hand elsewhere")
@pytest.mark.parametrize(("room", "several"), [(1, False), (10**12, True)])
def test_there_are_no_more_hands_than_there_is_room_for(
    room: int, several: bool, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(hands_room, "ROOM", room)

    def work(_: int) -> int:
        time.sleep(0.005)
        return os.getpid()

    busy = {process for _, process in done_by_all(range(40), work, 3, lambda _: None)}
    assert (len(busy) > 1) is several


def test_an_error_of_any_hand_is_met_by_the_one_who_asked() -> None:
    def work(part: int) -> int:
        if part == 31:
            raise ZeroDivisionError("the thirty-first")
        return part

    with pytest.raises(ZeroDivisionError, match="thirty-first"):
        list(done_by_all(range(40), work, 3, lambda _: None))


@pytest.mark.skipif(not hasattr(os, "fork"), reason="there is one hand without forks")
def test_what_a_lost_hand_left_undone_is_done_by_another() -> None:
    parent = os.getpid()

    def work(part: int) -> int:
        if part % 5 == 0 and os.getpid() != parent:
            os._exit(3)
        return part

    assert dict(done_by_all(range(40), work, 3, lambda _: None)) == {n: n for n in range(40)}


HOLD = """
import sys
import time
from pathlib import Path
from inperiod.publishing.write import alone
with alone(Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.read()
"""


@pytest.mark.skipif(os.name == "nt", reason="the lock is of POSIX systems")
def test_a_build_waits_for_another_and_says_so_where_it_waits_too_long(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    site = tmp_path / "public"
    with subprocess.Popen(
        [sys.executable, "-c", HOLD, str(site)], stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True
    ) as other:
        assert other.stdout is not None
        assert other.stdin is not None
        assert other.stdout.readline() == "held\n"
        monkeypatch.setattr(writing, "PATIENCE", 0.2)
        with pytest.raises(WillNotWrite, match="another build is at work"):
            replace_site(site, [("index.html", "")], {})
        assert not site.exists()
        other.stdin.close()
        monkeypatch.setattr(writing, "PATIENCE", 30.0)
        replace_site(site, [("index.html", "")], {})
    assert sorted(each.name for each in tmp_path.iterdir()) == ["public"]
    with alone(site):
        pass

"""The command ``build`` among mishaps: killed, out of room, read-only, in company. The last site always
stands complete, nothing of anybody else's is touched, and what went wrong is said in words."""

from __future__ import annotations

import contextlib
import os
import random
import shutil
import signal
import stat
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from pathlib import Path

import pytest

WHOLE = Path(__file__).parents[1] / "records" / "whole"
POSIX = pytest.mark.skipif(os.name == "nt", reason="signals, limits and owners are of POSIX systems")
LINUX = pytest.mark.skipif(not sys.platform.startswith("linux"), reason="mounts are of Linux")
KILLS = 50
SEED = 1926

# A build as the command does it, in a process that has loaded everything: a kill then falls into the build
# itself and not into the start of Python.
READY = """
import os, signal, sys
from inperiod import cli, publishing
from inperiod.records import read_catalogue
import importlib, pkgutil
for each in pkgutil.walk_packages(publishing.__path__, "inperiod.publishing."):
    importlib.import_module(each.name)
for line in sys.stdin:
    child = os.fork()
    if not child:
        os.setsid()
        nowhere = os.open(os.devnull, os.O_RDWR)
        for stream in range(3):
            os.dup2(nowhere, stream)
        os._exit(cli.main(line.rstrip("\\n").split("\\t")))
    print(child, flush=True)
    _, status = os.waitpid(child, 0)
    print(os.waitstatus_to_exitcode(status), flush=True)
"""


def catalogue(folder: Path, title: str) -> Path:
    """A small whole catalogue whose every page says ``title``."""
    shutil.copytree(WHOLE, folder)
    settings = folder / "inperiod.yaml"
    lines = [
        line for line in settings.read_text(encoding="utf-8").splitlines() if not line.startswith("title:")
    ]
    settings.write_text("\n".join([f"title: {title}", *lines]) + "\n", encoding="utf-8")
    return folder


def built(*arguments: str | Path, **more: object) -> subprocess.CompletedProcess[str]:
    """``inperiod build --anyway`` with these arguments; never with a traceback."""
    ran = subprocess.run(
        [sys.executable, "-m", "inperiod", "build", "--anyway", *map(str, arguments)],
        capture_output=True,
        text=True,
        check=False,
        timeout=120,
        **more,  # type: ignore[call-overload]
    )
    assert "Traceback" not in ran.stderr, ran.stderr
    return ran


def ready_made(records: Path) -> Path:
    """Where the site of one of the two catalogues stands, to be copied where a test wants one."""
    return records.parent / f"site-{records.name}"


def pages(site: Path) -> dict[str, bytes]:
    """Every file of a site that is not one of the builder's own notes."""
    return {
        path.relative_to(site).as_posix(): path.read_bytes()
        for path in site.rglob("*")
        if path.is_file() and not any(part.startswith(".") for part in path.relative_to(site).parts)
    }


def beside(site: Path, *known: str) -> list[str]:
    """What lies beside a site and should not."""
    return sorted(each.name for each in site.parent.iterdir() if each.name not in (site.name, *known))


@pytest.fixture(scope="module")
def two(tmp_path_factory: pytest.TempPathFactory) -> tuple[tuple[Path, dict[str, bytes]], ...]:
    """Two catalogues, each with the site it makes."""
    folder = tmp_path_factory.mktemp("two")
    made = []
    for title in ("First", "Second"):
        records = catalogue(folder / title.lower(), f"{title} catalogue")
        assert built(records, "--out", ready_made(records)).returncode == 0
        made.append((records, pages(ready_made(records))))
    assert made[0][1].keys() == made[1][1].keys()
    assert all(made[0][1][name] != made[1][1][name] for name in made[0][1] if name.endswith(".html"))
    return tuple(made)


Two = tuple[tuple[Path, dict[str, bytes]], ...]

# --- killed -------------------------------------------------------------------------------------------


class Ready:
    """Builds on demand, each in a process of its own that can be killed."""

    def __init__(self) -> None:
        self.running = subprocess.Popen(
            [sys.executable, "-c", READY],
            stdin=subprocess.PIPE,
            stdout=subprocess.PIPE,
            stderr=subprocess.PIPE,
            text=True,
        )

    def build(
        self, records: Path, site: Path, kill_after: float | None = None, whole_group: bool = True
    ) -> tuple[int, float]:
        """Exit status and seconds; killed after so many seconds, where given."""
        assert self.running.stdin is not None
        assert self.running.stdout is not None
        self.running.stdin.write("\t".join(["build", "--anyway", str(records), "--out", str(site)]) + "\n")
        self.running.stdin.flush()
        child = int(self.running.stdout.readline())
        began = time.monotonic()
        if kill_after is not None:
            time.sleep(kill_after)
            with_all = os.killpg if whole_group else os.kill
            with contextlib.suppress(ProcessLookupError):  # it may just have finished
                with_all(child, signal.SIGKILL)
        return int(self.running.stdout.readline()), time.monotonic() - began

    def close(self) -> None:
        self.running.kill()
        self.running.communicate()


@pytest.fixture
def ready() -> Iterator[Ready]:
    it = Ready()
    yield it
    it.close()


@POSIX
@pytest.mark.parametrize("at_first", [False, True], ids=["a site stands", "no site yet"])
def test_a_build_killed_at_any_moment_leaves_a_complete_site_or_none(
    at_first: bool, two: Two, ready: Ready, tmp_path: Path
) -> None:
    chance = random.Random(SEED + at_first)
    site = tmp_path / "public"
    states = [made for _, made in two]
    seconds = max(ready.build(records, site)[1] for records, _ in two)
    killed = finished = 0
    wanted = KILLS // 4 if at_first else KILLS
    for number in range(3 * wanted):
        if killed == wanted:
            break
        if at_first:
            shutil.rmtree(site, ignore_errors=True)
        records, made = two[number % 2]
        # Half of the moments anywhere, half in the last part, where the new site takes the place of the old.
        moment = chance.uniform(0, 1.05) if number % 2 else chance.uniform(0.7, 1.1)
        status, took = ready.build(records, site, moment * seconds, whole_group=bool(number % 3))
        killed += status == -signal.SIGKILL
        finished += status == 0
        assert status in (0, -signal.SIGKILL), status
        if status == 0:
            seconds = took  # a later build is quicker than the first
            assert pages(site) == made
        elif at_first:
            assert not site.exists() or pages(site) in states
        else:
            assert pages(site) in states
    assert killed >= wanted // 2, f"{killed} killed, {finished} finished: badly chosen moments"
    for records, made in two:
        assert ready.build(records, site)[0] == 0
        assert pages(site) == made
    assert beside(site) == []


@POSIX
def test_a_killed_build_leaves_no_process_behind(two: Two, ready: Ready, tmp_path: Path) -> None:
    site = tmp_path / "public"
    seconds = ready.build(two[0][0], site)[1]
    for part in (0.3, 0.6, 0.9):
        ready.build(two[1][0], site, part * seconds, whole_group=False)
    until = time.monotonic() + 10
    while (left := _naming(str(site))) and time.monotonic() < until:
        time.sleep(0.1)
    assert left == []


def _naming(text: str) -> list[str]:
    """Running processes whose working set of names holds ``text``: their open folder or their arguments."""
    found = []
    for each in Path("/proc").glob("[0-9]*"):
        try:
            opened = [os.readlink(handle) for handle in (each / "fd").iterdir()]
            said = (each / "cmdline").read_bytes().decode(errors="replace")
        except OSError:
            continue
        if int(each.name) != os.getpid() and (text in said or any(text in one for one in opened)):
            found.append(each.name)
    return found


# --- no room, no leave --------------------------------------------------------------------------------

CAPPED = """
import resource, signal, sys
from inperiod.cli import main
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, (int(sys.argv[1]), int(sys.argv[1])))
sys.exit(main(sys.argv[2:]))
"""


@POSIX
@pytest.mark.parametrize("largest", [0, 20_000])
def test_a_file_that_cannot_be_written_whole_leaves_the_last_site(
    largest: int, two: Two, tmp_path: Path
) -> None:
    """A limit on the size of files stands for a disk without room: a write fails in the middle of a file."""
    (first, made), (second, _) = two
    site = tmp_path / "public"
    shutil.copytree(ready_made(first), site)
    ran = subprocess.run(
        [sys.executable, "-c", CAPPED, str(largest), "build", "--anyway", str(second), "--out", str(site)],
        capture_output=True,
        text=True,
        check=False,
        timeout=60,
    )
    assert "Traceback" not in ran.stderr, ran.stderr
    assert ran.returncode == 1
    # Where several processes build, they want a little room for themselves as well.
    assert "too large" in ran.stderr or "temporary directory" in ran.stderr
    assert "public" in ran.stderr
    assert pages(site) == made
    assert beside(site) == []


@LINUX
@pytest.mark.parametrize("stands", [True, False], ids=["a site stands", "no site yet"])
def test_a_full_disk_is_named_and_leaves_the_last_site(stands: bool, two: Two, tmp_path: Path) -> None:
    """On a small disk of its own, in a name space of its own."""
    (first, made), (second, _) = two
    disk = tmp_path / "disk"
    disk.mkdir()
    room = sum(-(-len(data) // 4096) for data in made.values()) * 4096
    size = room + room // 8 if stands else room // 3
    build = f'"{sys.executable}" -m inperiod build --anyway'
    script = f"""
      mount -t tmpfs -o size={size} tmpfs "{disk}" || exit 77
      {f'{build} "{first}" --out "{disk}/public" >&2 || exit 78' if stands else ":"}
      {build} "{second}" --out "{disk}/public"; status=$?
      mkdir "{tmp_path}/kept" && cp -a "{disk}/." "{tmp_path}/kept/"
      exit $status
    """
    ran = _in_own_name_space(script)
    assert "Traceback" not in ran.stderr, ran.stderr
    assert ran.returncode == 1, ran.stderr
    assert "no space left" in ran.stderr.lower()
    kept = tmp_path / "kept"
    assert sorted(each.name for each in kept.iterdir()) == (["public"] if stands else [])
    assert not stands or pages(kept / "public") == made


@LINUX
def test_a_disk_that_may_only_be_read_is_named_and_left(two: Two, tmp_path: Path) -> None:
    (first, made), (second, _) = two
    disk = tmp_path / "disk"
    disk.mkdir()
    shutil.copytree(ready_made(first), disk / "public")
    ran = _in_own_name_space(
        f"""mount --bind "{disk}" "{disk}" && mount -o remount,ro,bind "{disk}" || exit 77
        "{sys.executable}" -m inperiod build --anyway "{second}" --out "{disk}/public" """
    )
    assert "Traceback" not in ran.stderr, ran.stderr
    assert ran.returncode == 1, ran.stderr
    assert "read-only" in ran.stderr.lower()
    assert pages(disk / "public") == made
    assert beside(disk / "public") == []


def _in_own_name_space(script: str) -> subprocess.CompletedProcess[str]:
    """A shell script that may mount; skipped where the system allows that to nobody."""
    tool = shutil.which("unshare")
    if tool is None:
        pytest.skip(
            "no unshare here: the limit on files and the folder of another owner are tried all the same"
        )
    flags = ["-m"] if os.geteuid() == 0 else ["-Urm"]
    ran = subprocess.run(
        [tool, *flags, "sh", "-c", script], capture_output=True, text=True, check=False, timeout=120
    )
    if ran.returncode == 77 or "unshare failed" in ran.stderr:
        pytest.skip(f"nothing can be mounted here: {ran.stderr.strip()[:100]}")
    return ran


UNPRIVILEGED = """
import os, sys
from inperiod.cli import main
records, rehearsal, target = sys.argv[1:]
if os.geteuid() == 0:
    # Root may write anywhere, so a user who owns nothing builds; what Python loads it has then loaded.
    assert main(["build", "--anyway", records, "--out", rehearsal]) == 0
    os.setgroups([])
    os.setgid(65534)
    os.setuid(65534)
sys.exit(main(["build", "--anyway", records, "--out", target]))
"""


@POSIX
def test_a_folder_one_may_not_write_into_is_named_and_left(two: Two) -> None:
    (first, made), (second, _) = two
    place = Path(tempfile.mkdtemp(prefix="inperiod-readonly-"))
    try:
        place.chmod(0o755)
        home = place / "home"
        home.mkdir()
        shutil.copytree(ready_made(first), home / "public")
        records = shutil.copytree(second, place / "records", ignore=shutil.ignore_patterns(".inperiod"))
        home.chmod(0o555)
        ran = subprocess.run(
            [sys.executable, "-c", UNPRIVILEGED, records, place / "rehearsal", home / "public"],
            capture_output=True,
            text=True,
            check=False,
        )
        assert "Traceback" not in ran.stderr, ran.stderr
        assert ran.returncode == 1, ran.stderr
        assert "permission denied" in ran.stderr.lower()
        assert str(home / "public") in ran.stderr
        assert pages(home / "public") == made
        assert beside(home / "public") == []
    finally:
        for each in (place, *place.rglob("*")):
            if each.is_dir():
                each.chmod(stat.S_IRWXU)
        shutil.rmtree(place)


# --- what is not ours ---------------------------------------------------------------------------------


def _everything(folder: Path) -> dict[str, bytes | str]:
    """All files with their bytes, links as where they lead."""
    return {
        each.relative_to(folder).as_posix(): os.readlink(each) if each.is_symlink() else each.read_bytes()
        for each in folder.rglob("*")
        if each.is_symlink() or each.is_file()
    }


@pytest.mark.parametrize(
    "put",
    ["plate/thesis.txt", "empty of ours/thesis.txt", ".git/HEAD", ".htaccess"],
)
def test_a_site_that_someone_added_to_is_refused_by_name_and_untouched(
    put: str, two: Two, tmp_path: Path
) -> None:
    site = tmp_path / "public"
    shutil.copytree(ready_made(two[0][0]), site)
    (site / put).parent.mkdir(parents=True, exist_ok=True)
    (site / put).write_text("years of work", encoding="utf-8")
    before = _everything(site)
    ran = built(two[1][0], "--out", site)
    assert ran.returncode == 1
    assert put in ran.stderr
    assert _everything(site) == before
    assert beside(site) == []


def test_a_folder_of_someone_elses_is_refused_and_untouched(two: Two, tmp_path: Path) -> None:
    site = tmp_path / "letters"
    (site / "1912").mkdir(parents=True)
    (site / "1912" / "index.html").write_text("dear", encoding="utf-8")
    ran = built(two[0][0], "--out", site)
    assert ran.returncode == 1
    assert "not empty" in ran.stderr
    assert _everything(site) == {"1912/index.html": b"dear"}
    assert beside(site) == []


def test_the_target_may_be_a_file_or_a_link_of_someone_elses_and_is_then_refused(
    two: Two, tmp_path: Path
) -> None:
    file, real = tmp_path / "file", tmp_path / "real"
    file.write_text("mine", encoding="utf-8")
    real.mkdir()
    link = tmp_path / "link"
    link.symlink_to(real)
    for target in (file, link, tmp_path / "file" / "public"):
        ran = built(two[0][0], "--out", target)
        assert ran.returncode == 1, target
        assert target.name in ran.stderr
    assert file.read_text(encoding="utf-8") == "mine"
    assert link.is_symlink()
    assert list(real.iterdir()) == []


@pytest.mark.parametrize("name", ["index.html", "assets/style.css"])
def test_a_link_in_the_place_of_a_page_is_never_written_through(name: str, two: Two, tmp_path: Path) -> None:
    site, thesis = tmp_path / "public", tmp_path / "thesis.txt"
    shutil.copytree(ready_made(two[0][0]), site)
    thesis.write_text("years of work", encoding="utf-8")
    (site / name).unlink()
    (site / name).symlink_to(thesis)
    ran = built(two[1][0], "--out", site)
    assert thesis.read_text(encoding="utf-8") == "years of work"
    assert ran.returncode == 1 or pages(site) == two[1][1]
    assert ran.returncode == 1 or not (site / name).is_symlink()


def test_a_link_in_the_place_of_a_folder_is_never_followed(two: Two, tmp_path: Path) -> None:
    site, letters = tmp_path / "public", tmp_path / "letters"
    shutil.copytree(ready_made(two[0][0]), site)
    shutil.move(site / "plate", letters)
    before = _everything(letters)
    (site / "plate").symlink_to(letters)
    ran = built(two[1][0], "--out", site)
    assert ran.returncode == 1
    assert "plate" in ran.stderr
    assert _everything(letters) == before


def test_a_page_that_someone_changed_or_took_away_is_made_again(two: Two, tmp_path: Path) -> None:
    """The pages are the builder's; what is not from the records does not stay in them."""
    records, made = two[0]
    site = tmp_path / "public"
    assert built(records, "--out", site).returncode == 0
    (site / "plates.html").write_text("defaced", encoding="utf-8")
    (site / "terms.html").unlink()
    assert built(records, "--out", site).returncode == 0
    assert pages(site) == made


@pytest.mark.parametrize(
    "place",
    [
        "static/leak.txt",
        "static/deep/leak.txt",
        "pages/about.md",
        "templates/base.html",
        "assets/x.js",
        "static",
        "",
    ],
)
def test_nothing_outside_the_folder_is_published_by_way_of_a_link(
    place: str, two: Two, tmp_path: Path
) -> None:
    records = shutil.copytree(two[0][0], tmp_path / "records", ignore=shutil.ignore_patterns(".inperiod"))
    outside = tmp_path / "outside"
    outside.mkdir()
    (outside / "key").write_text("the secret of the machine", encoding="utf-8")
    link = records / "site" / place if place else records / "site"
    link.parent.mkdir(parents=True, exist_ok=True)
    link.symlink_to(outside / "key" if "." in place else outside)
    ran = built(records, "--out", tmp_path / "public")
    assert ran.returncode == 1
    assert "is a link out of the folder" in ran.stderr
    assert str(link) in ran.stderr
    assert not (tmp_path / "public").exists()


def test_links_that_stay_in_the_folder_are_followed(two: Two, tmp_path: Path) -> None:
    records = shutil.copytree(two[0][0], tmp_path / "records", ignore=shutil.ignore_patterns(".inperiod"))
    (records / "site" / "static").mkdir(parents=True)
    (records / "site" / "static" / "name").write_text("dress.example", encoding="utf-8")
    (records / "site" / "static" / "CNAME").symlink_to("name")
    assert built(records, "--out", tmp_path / "public").returncode == 0
    assert (tmp_path / "public" / "CNAME").read_text(encoding="utf-8") == "dress.example"


# --- in company ---------------------------------------------------------------------------------------


def test_two_builds_at_once_do_not_mix(two: Two, tmp_path: Path) -> None:
    site = tmp_path / "public"
    states = [made for _, made in two]
    for round_ in range(2):
        running = [
            subprocess.Popen(
                [sys.executable, "-m", "inperiod", "build", "--anyway", str(records), "--out", str(site)],
                stdout=subprocess.PIPE,
                stderr=subprocess.PIPE,
                text=True,
            )
            for records, _ in (two if round_ % 2 else reversed(two))
        ]
        said = [each.communicate(timeout=120)[1] for each in running]
        statuses = [each.returncode for each in running]
        assert not any("Traceback" in each for each in said), said
        assert 0 in statuses, said
        for status, words in zip(statuses, said, strict=True):
            assert status == 0 or (status == 1 and words.strip()), (status, words)
        assert pages(site) in states
        assert beside(site) == []

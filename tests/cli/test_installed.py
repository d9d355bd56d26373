"""An installed package carries all it needs: schemas, site and vocabulary come with it."""

from __future__ import annotations

import os
import subprocess
import sys
import zipfile
from pathlib import Path

import pytest

CHECKOUT = Path(__file__).parents[2]


@pytest.fixture(scope="module")
def installed(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The wheel as ``pip install .`` makes it, unpacked as pip unpacks it."""
    made = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(made)]
    subprocess.run(command, cwd=CHECKOUT, check=True, capture_output=True)
    (wheel,) = made.glob("*.whl")
    with zipfile.ZipFile(wheel) as archive:
        archive.extractall(made / "site-packages")
    return made / "site-packages"


def run(installed: Path, folder: Path, *arguments: str) -> str:
    environment = {**os.environ, "PYTHONPATH": str(installed)}
    command = [sys.executable, *arguments]
    return subprocess.run(
        command, cwd=folder, env=environment, check=True, capture_output=True, text=True
    ).stdout


def test_it_runs_from_the_wheel_and_not_from_the_checkout(installed: Path, tmp_path: Path) -> None:
    where = run(installed, tmp_path, "-c", "import inperiod; print(inperiod.__file__)")
    assert Path(where.strip()).is_relative_to(installed)


def test_new_check_fit_and_build_work_anywhere(installed: Path, tmp_path: Path) -> None:
    run(installed, tmp_path, "-m", "inperiod", "new", "mine")
    assert "0 errors, 0 warnings" in run(installed, tmp_path, "-m", "inperiod", "check", "mine")
    fit = ("fit", "--garment", "day-dress", "--feature", "neckline/square", "--when", "1926", "mine")
    assert "UNRECORDED" in run(installed, tmp_path, "-m", "inperiod", *fit)
    run(installed, tmp_path, "-m", "inperiod", "build", "mine")
    style = (tmp_path / "public/assets/style.css").read_text(encoding="utf-8")
    assert (tmp_path / "public/index.html").is_file()
    assert len(style) > 1000


def test_it_carries_the_same_files_as_the_checkout(installed: Path) -> None:
    kept = installed / "inperiod/_kept"
    for name, origin in [("schemas", "schemas"), ("site", "site"), ("vocabulary", "catalogue/vocabulary")]:
        ours = {
            each.relative_to(CHECKOUT / origin) for each in (CHECKOUT / origin).rglob("*") if each.is_file()
        }
        theirs = {each.relative_to(kept / name) for each in (kept / name).rglob("*") if each.is_file()}
        assert theirs == ours

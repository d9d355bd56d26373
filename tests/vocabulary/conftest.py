"""The vocabulary alone, read from a copy, so that no slip in a source can hide or add a complaint."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from inperiod.records import Reading, Vocabulary, read_catalogue


@pytest.fixture(scope="session")
def reading(tmp_path_factory: pytest.TempPathFactory, demo_folder: Path) -> Reading:
    folder = tmp_path_factory.mktemp("vocabulary-alone")
    shutil.copytree(demo_folder / "vocabulary", folder / "vocabulary")
    return read_catalogue(folder)


@pytest.fixture(scope="session")
def vocabulary(reading: Reading) -> Vocabulary:
    return reading.catalogue.vocabulary

from __future__ import annotations

from pathlib import Path

import pytest

from inperiod.publishing import build
from publishing.pages import Read, read_all
from publishing.sample import sample


@pytest.fixture(scope="session")
def small_site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The sample catalogue's site."""
    folder = tmp_path_factory.mktemp("sample")
    build(sample(folder / "catalogue"), folder / "public")
    return folder / "public"


@pytest.fixture(scope="session")
def demo_pages(demo_site: Path) -> dict[Path, Read]:
    """Every page of the demonstration site, read once."""
    return read_all(demo_site)

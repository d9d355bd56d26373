"""A tool that is missing is never passed over silently on the machine that decides."""

from __future__ import annotations

import pytest

import conftest


def test_it_is_skipped_with_a_reason_on_a_desk(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.delenv("CI", raising=False)
    with pytest.raises(pytest.skip.Exception, match="no browser"):
        conftest.missing("no browser")


def test_it_fails_where_ci_is_set(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("CI", "true")
    with pytest.raises(pytest.fail.Exception, match="no browser; CI is set"):
        conftest.missing("no browser")

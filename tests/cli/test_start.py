"""The first command says what is missing, in words that can be typed, and needs nothing to say it."""

from __future__ import annotations

import ast
import importlib.util
import sys
from pathlib import Path
from types import ModuleType

import pytest

START = Path(__file__).parents[2] / "generator/start.py"


@pytest.fixture
def start(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> ModuleType:
    """The script as a module, with an environment folder of its own."""
    spec = importlib.util.spec_from_file_location("start", START)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    monkeypatch.setattr(module, "ENVIRONMENT", tmp_path / ".venv")
    monkeypatch.setattr(module, "PYTHON", tmp_path / ".venv/bin/python")
    monkeypatch.setattr(module, "STAMP", tmp_path / ".venv/inperiod-installed")
    return module


def test_it_needs_the_standard_library_alone() -> None:
    imported = {
        name.split(".")[0]
        for node in ast.walk(ast.parse(START.read_text(encoding="utf-8")))
        for name in (
            [each.name for each in node.names]
            if isinstance(node, ast.Import)
            else [node.module or ""]
            if isinstance(node, ast.ImportFrom)
            else []
        )
    }
    assert imported <= sys.stdlib_module_names


def test_an_old_python_can_read_it_far_enough_to_say_what_is_wrong() -> None:
    ast.parse(START.read_text(encoding="utf-8"), feature_version=(3, 7))


def test_a_python_too_old_says_what_to_install(
    start: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(start, "OLDEST", (99, 0))
    monkeypatch.setattr(start.shutil, "which", lambda name: None)
    with pytest.raises(SystemExit) as ended:
        start.use_newer_python()
    assert ended.value.code == 1
    assert "sudo apt install python3" in capsys.readouterr().err


def test_a_newer_python_beside_it_is_used(start: ModuleType, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(start, "OLDEST", (99, 0))
    monkeypatch.setattr(start.shutil, "which", lambda name: f"/opt/{name}" if name == "python3.12" else None)
    called: list[list[str]] = []
    monkeypatch.setattr(start.subprocess, "call", lambda command: called.append(command) or 7)
    with pytest.raises(SystemExit) as ended:
        start.use_newer_python()
    assert ended.value.code == 7
    assert called[0][0] == "/opt/python3.12"


def test_debian_without_venv_is_told_what_to_type(
    start: ModuleType, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(start, "can_make_environments", lambda: False)
    monkeypatch.setattr(start.os, "geteuid", lambda: 1000, raising=False)
    with pytest.raises(SystemExit) as ended:
        start.make_environment()
    assert ended.value.code == 1
    assert "sudo apt install python3-venv" in capsys.readouterr().err


def test_what_is_installed_already_is_not_installed_again(
    start: ModuleType, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / ".venv").mkdir()
    calls: list[list[str]] = []
    monkeypatch.setattr(start.subprocess, "call", lambda command: calls.append(command) or 0)
    start.install("test")
    start.install("test")
    start.install(None)
    assert len(calls) == 1
    start.STAMP.unlink()
    start.install(None)
    start.install("test")
    assert len(calls) == 3


def test_a_failed_installation_is_tried_again(
    start: ModuleType, monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    (tmp_path / ".venv").mkdir()
    monkeypatch.setattr(start.subprocess, "call", lambda command: 1)
    with pytest.raises(SystemExit):
        start.install(None)
    assert not start.STAMP.exists()

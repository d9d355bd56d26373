"""``inperiod add``: the questions of ``recording`` in a terminal, names completed with the tab key."""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from dataclasses import asdict

from inperiod import cli_words as words
from inperiod.cli_reply import CannotDo, Reply, counted, find_folder


class _Screen:
    """Asks on standard output and reads standard input, a line an answer."""

    def __init__(self) -> None:
        self._words: tuple[str, ...] = ()
        try:
            import readline
        except ImportError:  # not every Python is built with it; the questions are the same
            return
        if not sys.stdin.isatty():
            return
        readline.set_completer_delims("")
        readline.set_completer(self._completion)
        libedit = "libedit" in (readline.__doc__ or "")
        readline.parse_and_bind("bind ^I rl_complete" if libedit else "tab: complete")

    def ask(self, question: str, usual: str = "", words: Sequence[str] = ()) -> str:
        from inperiod.recording import Enough

        self._words = tuple(sorted(set(words)))
        try:
            given = input(f"{question}{f' [{usual}]' if usual else ''}: ").strip()
        except EOFError:
            print()
            raise Enough from None
        return given or usual

    def say(self, text: str) -> None:
        print(text)

    def _completion(self, begun: str, at: int) -> str | None:
        found = [each for each in self._words if each.casefold().startswith(begun.casefold())]
        return found[at] if at < len(found) else None


def add(arguments: argparse.Namespace) -> Reply:
    """``inperiod add``: 1 where the checker finds an error in what was recorded."""
    from inperiod.recording import CannotAdd, add

    folder = find_folder(arguments.folder)
    try:
        added = add(folder, _Screen())
    except CannotAdd as error:
        raise CannotDo(f"nothing was added: {error}", status=1) from None
    except OSError as error:
        raise CannotDo(f"{folder} cannot be written: {error.strerror}.", status=1) from None
    if added.file is None:
        return Reply("Nothing was recorded.")
    lines = [f"{counted(added.plates, 'plate')} recorded in {(folder / added.file).as_posix()}."]
    for each in added.problems:
        lines += words.complaint(each.file, asdict(each))
    return Reply(
        "\n".join(lines), status=1 if any(each.severity == "error" for each in added.problems) else 0
    )

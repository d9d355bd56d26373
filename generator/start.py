"""The first command of the README: make an environment, install, build the demonstration site.

    python3 generator/start.py            # .venv/, then public/, then where to open it
    python3 generator/start.py --prepare test   # only the environment, with what the tests need

Runs on the standard library alone, before anything is installed. The environment is ``.venv/`` in the
checkout, so nothing outside it is touched, not even on systems that forbid installing beside their own
Python. It is written for old Pythons too, so that they can say what is wrong.
"""

from __future__ import annotations

import hashlib
import os
import shutil
import subprocess
import sys
from pathlib import Path
from typing import NoReturn

OLDEST = (3, 11)
NEWER_NAMES = ("python3.14", "python3.13", "python3.12", "python3.11")
CHECKOUT = Path(__file__).resolve().parents[1]
ENVIRONMENT = CHECKOUT / ".venv"
PYTHON = ENVIRONMENT / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
STAMP = ENVIRONMENT / "inperiod-installed"


def say(text: str) -> None:
    print(text, file=sys.stderr, flush=True)


def give_up(text: str) -> NoReturn:
    say(text)
    sys.exit(1)


def use_newer_python() -> None:
    """Start again under a newer Python where this one is too old and another is on the path."""
    if sys.version_info >= OLDEST:
        return
    for name in NEWER_NAMES:
        found = shutil.which(name)
        if found:
            sys.exit(subprocess.call([found, __file__, *sys.argv[1:]]))
    give_up(
        f"In Period needs Python 3.11 or newer; this is Python {sys.version_info[0]}.{sys.version_info[1]}.\n"
        "On macOS: install it from https://www.python.org/downloads/ or with `brew install python`.\n"
        "On Debian 12 or newer: `sudo apt install python3 python3-venv`.\n"
        "Then type the same command again."
    )


def succeeds(*command: str) -> bool:
    """Whether a command ends well; what it prints is thrown away."""
    return subprocess.call(command, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL) == 0


def can_make_environments() -> bool:
    """Debian ships Python without the parts that make environments; both must import."""
    return succeeds(sys.executable, "-c", "import venv, ensurepip")


def install_system_package(name: str) -> bool:
    """With apt, as root, and saying so; False where that is not possible."""
    apt = shutil.which("apt-get")
    if not apt or not hasattr(os, "geteuid") or os.geteuid() != 0:
        return False
    say(f"Installing {name} with apt-get …")
    os.environ["DEBIAN_FRONTEND"] = "noninteractive"
    succeeds(apt, "update")
    return succeeds(apt, "install", "-y", "--no-install-recommends", name)


def make_environment() -> None:
    """``.venv/``, kept where it works already."""
    if PYTHON.exists() and succeeds(str(PYTHON), "-m", "pip", "--version"):
        return
    if not can_make_environments() and not install_system_package("python3-venv"):
        give_up(
            "This Python cannot make an environment of its own: its venv part is not installed.\n"
            "On Debian or Ubuntu type:  sudo apt install python3-venv\n"
            "Then type the same command again."
        )
    say(f"Making an environment in {ENVIRONMENT} …")
    if subprocess.call([sys.executable, "-m", "venv", "--clear", str(ENVIRONMENT)]) != 0:
        give_up("The environment could not be made; what Python said is above.")


def install(extra: str | None) -> None:
    """The package, editable, with the named extra; skipped where nothing changed since the last time."""
    wanted = hashlib.sha256((CHECKOUT / "pyproject.toml").read_bytes()).hexdigest() + f" {extra or ''}"
    if STAMP.exists() and STAMP.read_text().startswith(wanted):
        return
    say("Installing In Period and what it needs (a minute or two the first time) …")
    target = str(CHECKOUT) + (f"[{extra}]" if extra else "")
    command = [str(PYTHON), "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "-e", target]
    if subprocess.call(command) != 0:
        give_up("Installing failed; what pip said is above. Is the network there?")
    STAMP.write_text(wanted)


def main(arguments: list[str]) -> int:
    use_newer_python()
    if arguments[:1] == ["--prepare"]:
        make_environment()
        install(arguments[1] if len(arguments) > 1 else None)
        return 0
    if arguments:
        give_up(__doc__)
    make_environment()
    install(None)
    public = CHECKOUT / "public"
    command = [str(PYTHON), "-m", "inperiod", "build", str(CHECKOUT / "catalogue"), "--out", str(public)]
    return subprocess.call(command)


if __name__ == "__main__":
    try:
        sys.exit(main(sys.argv[1:]))
    except KeyboardInterrupt:
        sys.exit(130)

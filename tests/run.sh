#!/bin/sh
# The second command of the README: install what the tests need, then run every check.
# Sets up .venv/ as the first command does. On Debian, as root, what is missing of Chromium, Node.js and
# Python comes from apt; elsewhere a browser for tests alone is fetched, and anything else that is missing is
# named, and fails the run where CI is set.
# Arguments go to pytest: sh tests/run.sh tests/dating -k phrases
set -eu
cd "$(dirname "$0")/.."

say() { printf '%s\n' "$*" >&2; }

apt_install() {
    command -v apt-get >/dev/null 2>&1 && [ "$(id -u)" -eq 0 ] || return 1
    say "Installing $* with apt-get …"
    [ -n "${updated:-}" ] || { apt-get update -q >/dev/null && updated=yes; }
    DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "$@" >/dev/null
}

has_chromium() {
    [ -n "${INPERIOD_CHROMIUM:-}" ] && return 0
    for name in chromium chromium-browser google-chrome google-chrome-stable; do
        command -v "$name" >/dev/null 2>&1 && return 0
    done
    [ -x "/Applications/Chromium.app/Contents/MacOS/Chromium" ] ||
        [ -x "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome" ]
}

has_fonts() {
    ! command -v fc-list >/dev/null 2>&1 || fc-list | grep -qi liberation
}

command -v python3 >/dev/null 2>&1 || apt_install python3 python3-venv || {
    say "Python 3.11 or newer is needed and was not found."
    exit 1
}
python3 generator/start.py --prepare test
has_chromium || apt_install chromium || .venv/bin/playwright install chromium >&2 ||
    say "No Chromium or Chrome: tests that drive one will not run."
# The browser comes without the fonts it recommends, and pages are measured and printed in some.
has_fonts || apt_install fonts-liberation || say "No Liberation fonts: pages are measured in others."
command -v node >/dev/null 2>&1 || apt_install nodejs || say "No Node.js: tests that need it will not run."
# Debian's Java wants a folder for its manual pages that slim systems lack.
command -v java >/dev/null 2>&1 || { mkdir -p /usr/share/man/man1 2>/dev/null; apt_install default-jre-headless; } ||
    say "No Java: the HTML checker will not run."
if [ -f tests/package.json ]; then
    command -v npm >/dev/null 2>&1 || apt_install npm || say "No npm: tests that need its packages will not run."
    if command -v npm >/dev/null 2>&1 && ! cmp -s tests/package-lock.json tests/node_modules/.installed; then
        npm ci --prefix tests --no-audit --no-fund --loglevel=error >&2
        cp tests/package-lock.json tests/node_modules/.installed
    fi
fi

bin=.venv/bin
failed=
"$bin/ruff" check . || failed="$failed ruff-check"
"$bin/ruff" format --check --output-format=concise . || failed="$failed ruff-format"
"$bin/mypy" || failed="$failed mypy"
"$bin/pytest" -n auto --dist worksteal "$@" || failed="$failed pytest"
[ -z "$failed" ] || { say "Failed:$failed"; exit 1; }

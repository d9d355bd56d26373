#!/bin/sh
# Checks a catalogue that is kept in a repository and builds its site, on any machine that runs a script when
# something is pushed. It needs git, Python 3.11 or newer, and the program inperiod.
#
#   sh check-and-build.sh CATALOGUE SITE [REV]
#
# CATALOGUE  the folder with inperiod.yaml in it
# SITE       the folder the site is written to; publish that one
# REV        what the change is measured against, such as origin/main. Without one everything is checked; with
#            one a fault that was there before is named as well, but does not stop the change.
#
# INPERIOD names the program where it is not on the path, such as .venv/bin/inperiod.
# Beside SITE it leaves SITE.problems.json, what is wrong in a form for other programs.
# Exit status: 0 the site is built; 1 the records hold errors or are not tidy; 2 something is not there.
set -eu

catalogue=${1:?the folder of the catalogue}
site=${2:?the folder for the site}
since=${3:-}
inperiod=${INPERIOD:-inperiod}
failed=

echo "== Layout"
"$inperiod" tidy --check "$catalogue" || failed="$failed layout"

echo "== Records"
if [ -n "$since" ]; then
    "$inperiod" check --changed "$since" "$catalogue" || failed="$failed records"
    "$inperiod" check --changed "$since" --json "$catalogue" >"$site.problems.json" || [ $? -eq 1 ]
else
    "$inperiod" check "$catalogue" || failed="$failed records"
    "$inperiod" check --json "$catalogue" >"$site.problems.json" || [ $? -eq 1 ]
fi

if [ -n "$failed" ]; then
    echo "Not built:$failed." >&2
    exit 1
fi

echo "== Site"
# What was wrong before and is not touched by this change must not hold it up: it is left out of the site.
"$inperiod" build ${since:+--anyway} --out "$site" "$catalogue"

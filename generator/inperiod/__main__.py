"""``python -m inperiod`` is the command ``inperiod``."""

import sys

from inperiod.cli import main

sys.exit(main(sys.argv[1:]))

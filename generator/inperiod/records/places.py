"""Where records lie in a catalogue folder, and how large a file of them may be."""

SETTINGS_FILE = "inperiod.yaml"
FOLDERS = ("vocabulary", "sources", "boards")
MAX_BYTES = 5_000_000

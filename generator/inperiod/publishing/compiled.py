"""Templates as the engine has compiled them, kept so that not every build compiles them again."""

from __future__ import annotations

from base64 import b64decode, b64encode

from jinja2 import BytecodeCache
from jinja2.bccache import Bucket

from inperiod.records.keeping import Store

PART = "templates"
SPARE = 100
"""So many templates of other times are left."""


class Compiled(BytecodeCache):
    """Keeps compiled templates among the notes of a catalogue. What is compiled is run, so it must come from
    where notes come from: sealed with this user's own key (see ``records.keeping``). The engine names each by
    its file and its text."""

    def __init__(self, store: Store) -> None:
        self._store = store

    def load_bytecode(self, bucket: Bucket) -> None:
        note = self._store.read(bucket.key)
        if note is not None:
            bucket.bytecode_from_string(b64decode(note))

    def dump_bytecode(self, bucket: Bucket) -> None:
        self._store.write(bucket.key, b64encode(bucket.bytecode_to_string()).decode("ascii"))
        self._store.tidy(SPARE)

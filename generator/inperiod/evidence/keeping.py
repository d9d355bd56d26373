"""The facts of a catalogue, kept beside what was read of it, so that an answer need not open every record."""

from __future__ import annotations

from hashlib import blake2b
from pathlib import Path

from inperiod.evidence.exchange import facts_from_json, facts_to_json
from inperiod.evidence.facts import Facts, gather_facts
from inperiod.records.grounds import add_standing
from inperiod.records.keeping import Store
from inperiod.records.outcome import Reading

NOTE = "facts"


def kept_facts(reading: Reading) -> Facts:
    """As ``gather_facts`` of the catalogue that was read, from what is kept where it was read from the same
    grounds before."""
    store = Store.of(reading.catalogue.folder) if reading.grounds else None
    if store is None or reading.grounds is None:
        return gather_facts(reading.catalogue)
    found = blake2b(reading.grounds.encode(), digest_size=16)
    add_standing(found, Path(__file__).parent)
    grounds = found.hexdigest()
    known = store.read(NOTE)
    if known and known["grounds"] == grounds:
        return facts_from_json(known["facts"])
    facts = gather_facts(reading.catalogue)
    store.write(NOTE, {"grounds": grounds, "facts": facts_to_json(facts)})
    return facts

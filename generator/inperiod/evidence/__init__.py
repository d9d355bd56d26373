"""What the records say about a feature and a time: weights, shares, ranges, absence, verdicts, timelines.

``gather_facts`` takes from a catalogue all that evidence needs; everything after is computed from the facts
alone, and the facts have a JSON form, so that the browser computes the same from the same.
"""

from inperiod.evidence.as_json import as_json
from inperiod.evidence.exchange import facts_from_json, facts_to_json
from inperiod.evidence.facts import Facts, gather_facts
from inperiod.evidence.keeping import kept_facts
from inperiod.evidence.questions import Answer, Finding, Question, Sighted, Unknown, answer
from inperiod.evidence.sensitivity import Change, sensitivity
from inperiod.evidence.shares import Share
from inperiod.evidence.timelines import Alternative, Extent, Row, Timeline, extent, timeline, usual_in_window
from inperiod.evidence.verdicts import Verdict
from inperiod.evidence.weights import Window

__all__ = [
    "Alternative",
    "Answer",
    "Change",
    "Extent",
    "Facts",
    "Finding",
    "Question",
    "Row",
    "Share",
    "Sighted",
    "Timeline",
    "Unknown",
    "Verdict",
    "Window",
    "answer",
    "as_json",
    "extent",
    "facts_from_json",
    "facts_to_json",
    "gather_facts",
    "kept_facts",
    "sensitivity",
    "timeline",
    "usual_in_window",
]

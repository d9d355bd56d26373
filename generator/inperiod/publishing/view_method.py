"""The method page: every verdict, rule and figure, from the constants the code itself uses."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from inperiod.evidence import Facts
from inperiod.evidence import constants as c
from inperiod.publishing import method_example
from inperiod.publishing.method_figures import NOT_SIMULATED, calibration_view, left_out_view
from inperiod.publishing.wording import LEADS
from inperiod.records.model import Catalogue


@dataclass(frozen=True, slots=True)
class Explained:
    """A verdict: what it says, the rule it is given by, and what to do with it."""

    name: str
    says: str
    rule: str
    use: str


@dataclass(frozen=True, slots=True)
class Formula:
    """A step of the arithmetic: in words, as a formula, and whose it is."""

    name: str
    words: str
    formula: str
    source: str


def method_view(catalogue: Catalogue, facts: Facts) -> Mapping[str, Any]:
    """What the template ``method.html`` shows."""
    return {
        "verdicts": verdicts(),
        "formulas": formulas(),
        "circa_years": catalogue.settings.circa_years,
        "grades": catalogue.settings.grades,
        "seasons": catalogue.settings.seasons,
        "widest": c.WIDEST_YEARS,
        "usual": _per_cent(c.USUAL),
        "occasional": _per_cent(c.OCCASIONAL),
        "example": {
            "looked": method_example.LOOKED,
            "asked": method_example.ASKED,
            "says": method_example.example_says(),
            "steps": method_example.example_steps(),
        },
        "calibration": calibration_view(),
        "not_simulated": NOT_SIMULATED,
        "left_out": left_out_view(facts, catalogue.settings.grades),
        "circa_tried": c.CIRCA_TRIED,
    }


def _per_cent(share: float) -> str:
    return f"{100 * share:.0f} %"


def verdicts() -> tuple[Explained, ...]:
    """In the order in which they are tried: the first that holds is given."""
    entries = (
        (
            "too early",
            "The years asked about end before the term’s not-before date: a patent, a first sale, a "
            "first making.",
            "Leave it out, or show that the date is wrong.",
        ),
        (
            "attested",
            "At least two documents of those years show it; or one does, and another among the "
            f"{_word(c.BACKING)} documents before or after it agrees.",
            "Use it, and cite the plates named.",
        ),
        (
            "seen once",
            "Exactly one document of those years shows it, and none of its neighbours does. Half of "
            "such sightings are "
            "slips of dating or reading.",
            "Cite it and doubt it; look for a second.",
        ),
        (
            "unrecorded",
            "No document that counts shows the term on this garment at all. Sightings of weaker "
            "dates are mentioned.",
            "Nothing is said for or against: look further.",
        ),
        (
            "lapsed",
            "The years lie inside the range, yet enough plates were looked at in them, or in all the gap "
            f"between the sightings before and after, that a use of {_per_cent(c.USE)} would have shown: "
            "a gap, or an old use and a revival.",
            "Prefer what the plates of those years show.",
        ),
        (
            "bracketed",
            "The years lie strictly inside the range: not seen in them, but seen before and after.",
            "Use it where nothing better is at hand; cite both sides.",
        ),
        (
            "unsupported",
            "The years lie outside the range and either the documents between are too many for its "
            "absence to be "
            f"chance (p below {c.ALPHA:g}), or enough plates were looked at in those years that a use of "
            f"{_per_cent(c.USE)} would have shown.",
            "Choose something else, or argue for it with a source of your own. It never means “not in use”.",
        ),
        (
            "plausible",
            "The years overlap an end of the range, or lie outside it by no more than the guide in "
            "years allows, at "
            f"most {_word(c.NEAR_YEARS)}.",
            "Usable with a note: say that it stands at the edge.",
        ),
        (
            "unproven",
            "The years lie outside the range and too little has been looked at to say.",
            "Look further.",
        ),
    )
    return tuple(Explained(name, LEADS[name], rule, use) for name, rule, use in entries)


def _word(number: int) -> str:
    return {5: "five", 10: "ten", 12: "twelve", 15: "fifteen"}.get(number, str(number))


def formulas() -> tuple[Formula, ...]:
    """The arithmetic, step by step, each with its author or as the project’s own."""
    return (
        Formula(
            "Weight of a plate",
            "The share of the days of its date that lies in the years asked about. Over years that "
            "follow one another "
            "without a gap, the weights of a plate add up to one.",
            "w = days of the date inside the window ÷ days of the date",
            "J. H. Ratcliffe, “Aoristic analysis: the spatial interpretation of unspecific temporal events”, "
            "International Journal of Geographical Information Science 14 (2000) 669–679.",
        ),
        Formula(
            "Document",
            f"A source of a grade that is weighed, dated to {c.WIDEST_YEARS} years or less, that "
            "records the facet for "
            "the garment. Reprints and reused cuts count once, with the earliest. Only documents are "
            "counted.",
            "",
            "Ours, from simulation.",
        ),
        Formula(
            "Share",
            "Of the plates that record the facet, how many show the term, each by its weight.",
            "share = k ÷ n,  k = Σ weights showing the term,  n = Σ weights recording the facet",
            "",
        ),
        Formula(
            "Plates of one document resemble each other",
            "so that twenty plates from one catalogue say less than twenty from twenty; the number "
            "of plates is shrunk "
            "before the interval is drawn.",
            f"n′ = n ÷ (1 + (m − 1) · {c.ALIKE:g}),  m = Σ w n² ÷ Σ w n over documents,  never above n",
            f"L. Kish, Survey Sampling (1965), the design effect; {c.ALIKE:g} is ours, from simulation.",
        ),
        Formula(
            "Interval of a share",
            "Where the share would lie in 95 of 100 such samples.",
            "95 % score interval on k ÷ n with n′ plates",
            "E. B. Wilson, Journal of the American Statistical Association 22 (1927) 209–212; R. G. "
            "Newcombe, "
            "Statistics in Medicine 17 (1998) 857–872.",
        ),
        Formula(
            "Attested range",
            "From the first to the last sighting that is backed by another among the "
            f"{_word(c.BACKING)} documents on either side. Sightings outside it are set aside, shown, "
            "and never hidden.",
            "",
            "Ours, from simulation.",
        ),
        Formula(
            "Absence beyond an end",
            "How likely it is to meet so many documents without the term, had it still been in use "
            "as before. It is a "
            "bound, on the safe side.",
            f"p = (E in ÷ (E in + E gap)) ^ min(N − 1, {c.STRONGEST}),  E = documents looked at, N = "
            "sightings",
            "M. A. McCarthy, Biological Conservation 83 (1998) 9–17, after A. R. Solow, Ecology 74 "
            "(1993) 962–964; "
            "effort as in C. R. Marshall, Paleobiology 23 (1997) 165–173; the near edge and the cap "
            "are ours.",
        ),
        Formula(
            "How far it may reach",
            f"To the first document beyond an end at which that p falls below {c.ALPHA:g}; open where "
            "there is none. "
            "Beside it stands a guide in years, which takes no account of what was looked at.",
            f"guide = R · ({c.ALPHA:g} ^ (−1 ÷ (N − 1)) − 1),  R = length of the range in years",
            "D. Strauss and P. M. Sadler, Mathematical Geology 21 (1989) 411–427.",
        ),
        Formula(
            "Direct absence",
            f"Enough plates were looked at in those years that a term on {_per_cent(c.USE)} of them "
            "would have shown.",
            f"Σ documents Σ j = 0 … n − 1 of ln[({1 - c.USE:g} φ + j) ÷ (φ + j)] < ln {c.ALPHA:g},  φ "
            f"= {c.SPREAD:g}",
            f"J. G. Skellam, Journal of the Royal Statistical Society B 10 (1948) 257–261 (beta-binomial); "
            f"the correlation of {c.ALIKE:g} within a document is ours, from simulation.",
        ),
        Formula(
            "A silent gap",
            "For years inside the range that were looked at, the same over all documents from the last "
            "sighting before them to the first after. A gap found about a given year is longer than one met "
            f"by chance, so the level is stricter: {c.GAP_ALPHA:g} instead of {c.ALPHA:g}.",
            f"Π of the same terms over the gap < {c.GAP_ALPHA:g} = e^−x,  where (1 + x) · e^−x = {c.ALPHA:g}",
            "Ours: two waiting times, one back and one forth (gamma distribution of shape 2).",
        ),
    )

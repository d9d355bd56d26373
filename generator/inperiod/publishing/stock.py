"""Which pieces of a site can be left as they are, and which are to be made."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import partial

from inperiod.publishing.kept_pages import Kept
from inperiod.publishing.made_from import Ingredients, MadeFrom
from inperiod.publishing.pieces import Piece, pieces_of_source
from inperiod.publishing.plan import Plan
from inperiod.publishing.render import environment
from inperiod.publishing.write import Standing

OF_LISTS = frozenset({"evidence", "heads", "timeline", "term", "garment", "facet"})
"""What is made from these, or from lists alone, is the same where evidence and lists know the same."""


class Stock:
    """The pieces of a site as they are taken stock of: ``stands`` has the files of those that can be left as
    they are, by name; ``to_make`` are the others. ``groups``: by name the digest of what a group of pieces is
    made from by itself, its key, and the names of the pieces."""

    def __init__(
        self, plan: Plan, ingredients: Ingredients, before: Kept, last: Mapping[str, Standing]
    ) -> None:
        self._plan = plan
        self._ingredients = ingredients
        self._before = before
        self._last = last
        self._same_lists = before.lists == ingredients.lists.hex()
        self.keys: dict[str, str] = {}
        self.stands: dict[str, list[str]] = {}
        self.to_make: list[Piece] = []
        self.groups: dict[str, tuple[str, str, Sequence[str]]] = {}

    def take_stock(self, pieces: Iterable[Piece]) -> None:
        """Of those pieces, and of all that belongs to one source."""
        of_lists: list[Piece] = []
        others: list[Piece] = []
        for piece in pieces:
            by_lists = piece.made_from == ("lists",) or OF_LISTS.intersection(piece.made_from[:1])
            (of_lists if by_lists else others).append(piece)
        self._take(others)
        self._take_group("lists", "", ("lists",), lambda: of_lists)
        env = environment(self._plan.look.catalogue)
        for source in self._plan.look.outlines:
            self._take_group(
                f"of {source}",
                self._ingredients.own(source),
                ("all of", source),
                partial(pieces_of_source, self._plan, env, source),
            )

    def _take(self, pieces: Iterable[Piece]) -> list[str]:
        """Each by itself; their names."""
        names = []
        for piece in pieces:
            names.append(piece.name)
            key = self._ingredients.key(piece.made_from, piece.page)
            if not self._left(piece.name, key):
                self.to_make.append(piece)
        return names

    def _take_group(
        self, name: str, own: str, made_from: MadeFrom, pieces: Callable[[], Iterable[Piece]]
    ) -> None:
        """All together where nothing has changed that they are made from, without asking each piece."""
        known, key, names = self._before.groups.get(name, ("", "", ()))
        if not (self._same_lists and known == own and key):
            new = self._ingredients.key(made_from)
            names = names if key == new else ()
            key = new
        if not names or not all([self._left(each, self._before.pieces[each][0]) for each in names]):
            names = self._take(pieces())
        self.groups[name] = (own, key, names)

    def _left(self, name: str, key: str) -> bool:
        self.keys[name] = key
        paths = self._before.paths(name, key, self._last)
        if paths is None:
            return False
        self.stands[name] = paths
        return True

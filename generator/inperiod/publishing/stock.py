"""Which pieces of a site can be left as they are, and which are to be made."""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Sequence
from functools import partial

from inperiod.publishing.kept_pages import Kept
from inperiod.publishing.made_from import Ingredients, MadeFrom
from inperiod.publishing.pieces import Piece, pieces_of_source
from inperiod.publishing.plan import Plan
from inperiod.publishing.render import environment

OF_LISTS = frozenset({"evidence", "heads", "timeline", "term", "garment", "facet"})
"""What is made from these, or from lists alone, is the same where evidence and lists know the same."""


class Stock:
    """The pieces of a site as they are taken stock of: ``left`` are the names of those that can be left as
    they are, ``to_make`` the others with their keys. ``groups``: by name the digest of what a group of pieces
    is made from by itself, its key, and the names of the pieces."""

    def __init__(self, plan: Plan, ingredients: Ingredients, before: Kept, altered: Collection[str]) -> None:
        self._plan = plan
        self._ingredients = ingredients
        self._before = before
        self._altered = altered
        self._same_lists = before.lists == ingredients.lists.hex()
        self.left: list[str] = []
        self.to_make: list[tuple[str, Piece]] = []
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
            known = self._before.pieces.get(piece.name)
            if known and known[0] == key and self._stands(piece.name):
                self.left.append(piece.name)
            else:
                self.to_make.append((key, piece))
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
        if names and all(map(self._stands, names)):
            self.left.extend(names)
        else:
            names = self._take(pieces())
        self.groups[name] = (own, key, names)

    def _stands(self, piece: str) -> bool:
        return not self._altered or all(
            path not in self._altered for path, *_ in self._before.pieces[piece][1]
        )

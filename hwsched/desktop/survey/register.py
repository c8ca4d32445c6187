"""The register: all openings as rows of a grid that stays quick at tens of thousands, and what narrows it.

What is asked is judged over columns of values; a proxy that asks Python for every cell would take seconds.
"""

from collections.abc import Iterable, Sequence
from typing import Any, Final

from PySide6.QtCore import QObject

from hwsched.attributes import Attribute
from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.survey.opening_columns import Beside, opening_columns
from hwsched.desktop.survey.search_texts import SearchTexts, holding, negated
from hwsched.desktop.survey.states import STATES, state_colour, state_of, status_word
from hwsched.operations.findings.checked import Checked
from hwsched.operations.opening.facts_at_hand import CheckedFacts
from hwsched.query import Query, judge
from hwsched.survey import OPENING

__all__ = ["COLUMNS", "STATES", "Register", "state_colour", "state_of", "status_word"]

_STANDARD: Final = tuple(each for each in opening_columns(Beside()) if each.standard)
COLUMNS: Final = tuple(each.title for each in _STANDARD)
"""Titles of what is shown at first."""


class Register(GridModel[Checked]):
    """Openings that match words or a query, a place and a state."""

    def __init__(self, parent: QObject | None = None) -> None:
        self.beside = Beside()
        super().__init__(Contents(opening_columns(self.beside), lambda each: each.given.opening.id), parent)
        self.texts = SearchTexts(lambda: self.contents.rows, self._searched, self)
        self._facts = CheckedFacts(self.contents.rows)
        self._own: tuple[Attribute, ...] = ()
        self.words = ""
        self.query: Query | None = None
        """What is asked for in the language of queries, in the place of words."""
        self.state = ""
        self.place: tuple[str, str | None] | None = None

    def load(self, rows: Iterable[Checked], places: Sequence[int] | None = None) -> None:
        """Show these openings, narrowed as a person has asked for."""
        everything = list(rows)
        self.beginResetModel()
        own = tuple(each.attribute for each in everything[0].own if each.entity == OPENING.name) if everything else ()
        if own != self._own:
            self._own = own
            self.contents.declare(opening_columns(self.beside, own))
        self.contents.load(everything)
        self._facts = CheckedFacts(self.contents.rows)
        self.texts.begin()
        self._narrow()
        self.endResetModel()

    def renew(self, rows: Iterable[Checked]) -> list[int]:
        """Show changed openings anew, without a new search."""
        places = super().renew(rows)
        self._facts.renew(places)
        self.texts.renew(places)
        return places

    def narrow(self, *, words: str | None = None, state: str | None = None, place: Any = ..., query: Any = ...) -> None:
        """Change the words, the query, the state or the place; what is left out stays as it is."""
        self.beginResetModel()
        if words is not None:
            self.words = words
        if query is not ...:
            self.query = query
        if state is not None:
            self.state = state
        if place is not ...:
            self.place = place
        self._narrow()
        self.endResetModel()

    def _searched(self) -> list[Column[Checked]]:
        return [self.contents.known[each.name] for each in _STANDARD]

    def _narrow(self) -> None:
        rows = self.contents.rows
        shown: Sequence[int] | None = None
        if self.query is not None:
            shown = sorted(judge(self.query, self._facts).true)
        elif words := negated(self.words.casefold()).split():
            shown = holding(words, self.texts.all())
        if self.state:
            states = self.contents.values("result.state")
            shown = [place for place in _all(shown, rows) if states[place] == self.state]
        if self.place is not None:
            building, level = self.place
            buildings, levels = self.contents.values("opening.building"), self.contents.values("opening.level")
            shown = [
                place
                for place in _all(shown, rows)
                if (buildings[place] or "") == building and (level is None or (levels[place] or "") == level)
            ]
        self.contents.narrow(shown)


def _all(shown: Sequence[int] | None, rows: Sequence[Checked]) -> Sequence[int]:
    return range(len(rows)) if shown is None else shown

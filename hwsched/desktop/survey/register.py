"""The register: all openings as rows of a grid that stays quick at tens of thousands, and what narrows it.

What is asked is judged over columns of values; a proxy that asks Python for every cell would take seconds.
"""

import re
from collections.abc import Iterable, Sequence
from typing import Any, Final

from PySide6.QtCore import QObject

from hwsched.attributes import Attribute
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.survey.opening_columns import Beside, opening_columns
from hwsched.desktop.survey.states import STATES, state_colour, state_of, status_word
from hwsched.operations.findings.checking import Checked
from hwsched.operations.opening.asked_facts import CheckedFacts
from hwsched.quantities import LENGTH_STYLES, LengthStyle, format_length
from hwsched.query import Query, judge
from hwsched.rules.reading import active_leaf
from hwsched.survey import OPENING

__all__ = ["COLUMNS", "STATES", "Register", "state_colour", "state_of", "status_word"]

_APART: Final = re.compile(r"[(/,;+]")
_STANDARD: Final = tuple(each for each in opening_columns(Beside()) if each.standard)
COLUMNS: Final = tuple(each.title for each in _STANDARD)
"""Titles of what is shown at first."""


class Register(GridModel[Checked]):
    """Openings that match words or a query, a place and a state."""

    def __init__(self, parent: QObject | None = None) -> None:
        self.beside = Beside()
        super().__init__(Contents(opening_columns(self.beside), lambda each: each.given.opening.id), parent)
        self._texts: list[tuple[str, str]] | None = None
        """Of each opening its mark, and the other words in which a search looks; made when somebody first searches."""
        self._facts = CheckedFacts(self.contents.rows)
        self._own: tuple[Attribute, ...] = ()
        self.words = ""
        self.query: Query | None = None
        """What is asked for in the language of queries, in the place of words."""
        self.state = ""
        self.place: tuple[str, str | None] | None = None

    def load(self, rows: Iterable[Checked]) -> None:
        """Show these openings."""
        everything = list(rows)
        self.beginResetModel()
        own = tuple(each.attribute for each in everything[0].own if each.entity == OPENING.name) if everything else ()
        if own != self._own:
            self._own = own
            self.contents.declare(opening_columns(self.beside, own))
        self.contents.load(everything)
        self._texts, self._facts = None, CheckedFacts(self.contents.rows)
        self._narrow()
        self.endResetModel()

    def renew(self, rows: Iterable[Checked]) -> list[int]:
        """Show changed openings anew, without a new search."""
        places = super().renew(rows)
        self._facts.renew(places)
        if self._texts is not None:
            for place in places:
                self._texts[place] = self._searched(self.contents.rows[place])
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

    def _narrow(self) -> None:
        rows = self.contents.rows
        shown: Sequence[int] | None = None
        if self.query is not None:
            shown = sorted(judge(self.query, self._facts).true)
        elif words := _negated(self.words.casefold()).split():
            if self._texts is None:
                self._texts = [self._searched(each) for each in rows]
            texts = self._texts
            shown = [place for place in range(len(rows)) if _holds(words, *texts[place])]
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

    def _searched(self, checked: Checked) -> tuple[str, str]:
        """Return mark and text in which a search looks: cells shown first, own fields, the leaf's thickness, parts."""
        known = self.contents.known
        cells = [known[each.name].text(known[each.name].value(checked)) for each in _STANDARD]
        own = (f"{each.attribute.label} {each.value}" for each in checked.own if each.value is not None)
        leaf, wished = active_leaf(checked.given), checked.given.settings.length_style
        style: LengthStyle = next((each for each in LENGTH_STYLES if each == wished), "fraction")
        thick = "" if leaf is None or leaf.thickness_mm is None else f"thick {format_length(leaf.thickness_mm, style)}"
        parts = (f"{part.part} {part.description}" for part in checked.fit.parts) if checked.fit is not None else ()
        text = _negated(" ".join((*cells, thick, *own, *parts)).casefold())
        # A word of a search begins where a word of the text does: behind a blank, a bracket, a slash.
        return cells[0].casefold(), f" {text} {_APART.sub(' ', text)}"


def _all(shown: Sequence[int] | None, rows: Sequence[Checked]) -> Sequence[int]:
    return range(len(rows)) if shown is None else shown


def _negated(text: str) -> str:
    """Join what says no with what it denies: who looks for "rated" does not look for "not rated"."""
    return text.replace("not ", "not-").replace("no ", "no-")


def _holds(words: Sequence[str], mark: str, text: str) -> bool:
    return all(word in mark or f" {word}" in text for word in words)

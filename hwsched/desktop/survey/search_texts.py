"""The words of each opening in which a search looks, made a few at a time while nobody waits. No widgets."""

import re
from collections.abc import Callable, Mapping, Sequence
from typing import Any, Final

from PySide6.QtCore import QObject, QTimer

from hwsched.desktop.grid.column import Column
from hwsched.desktop.survey.ahead import Ahead
from hwsched.language import phrase
from hwsched.operations.findings.checked import Checked
from hwsched.quantities import LENGTH_STYLES, LengthStyle, format_length
from hwsched.values.lock_points import active_leaf

_APART: Final = re.compile(r"[(/,;+]")
_AT_ONCE: Final = 60
"""So many openings are gone through between two events of the screen."""


class SearchTexts(QObject):
    """Of each opening its mark and all other words, in the order of the rows.

    Parameters
    ----------
    rows : callable
        Returns the openings.
    columns : callable
        Returns the columns whose words are searched, the mark's first.
    """

    def __init__(
        self,
        rows: Callable[[], Sequence[Checked]],
        columns: Callable[[], Sequence[Column[Checked]]],
        parent: QObject,
    ) -> None:
        super().__init__(parent)
        self._rows, self._columns = rows, columns
        self._texts: list[tuple[str, str]] = []
        self._pieces: dict[tuple[str, Any], str] = {}
        self._timer = QTimer(self)
        self._timer.setInterval(0)
        self._timer.timeout.connect(self._go_on)

    def begin(self) -> None:
        """Begin anew: there are other rows."""
        self._texts, self._pieces = [], {}
        rows = self._rows()
        # Of openings that are judged in a moment they would be made twice.
        if rows and not isinstance(rows[0], Ahead):
            self._timer.start()

    def renew(self, places: Sequence[int]) -> None:
        """Make the texts of some rows anew."""
        columns = self._columns()
        for place in places:
            if place < len(self._texts):
                self._texts[place] = self._of(self._rows()[place], columns)

    @property
    def whole(self) -> bool:
        """Whether all are made."""
        return len(self._texts) >= len(self._rows())

    def all(self) -> Sequence[tuple[str, str]]:
        """Return the texts of all rows; what is not made yet is made now."""
        self._make(len(self._rows()))
        return self._texts

    def _go_on(self) -> None:
        self._make(len(self._texts) + _AT_ONCE)

    def _make(self, upto: int) -> None:
        rows, columns = self._rows(), self._columns()
        self._texts += [self._of(each, columns) for each in rows[len(self._texts) : upto]]
        if len(self._texts) >= len(rows):
            self._timer.stop()

    def _of(self, checked: Checked, columns: Sequence[Column[Checked]]) -> tuple[str, str]:
        """Return mark and words: shown cells, own fields, thickness of the leaf, parts."""
        mark = columns[0].value(checked).casefold()
        said = [self._piece(each.name, each.value(checked), each.text) for each in columns[1:]]
        leaf = active_leaf(checked.given.leaves)
        if leaf is not None and leaf.thickness_mm is not None:
            wished = checked.given.settings.length_style
            style: LengthStyle = next((each for each in LENGTH_STYLES if each == wished), "fraction")
            said.append(
                self._piece(
                    phrase("thick {style}", style=style),
                    leaf.thickness_mm,
                    lambda mm: phrase("thick {length}", length=format_length(mm, style)),
                )
            )
        said += [_piece(f"{each.attribute.label} {each.value}") for each in checked.own if each.value is not None]
        if checked.fit is not None:
            # Openings alike share the parts of their fit: by their identity their words are made once.
            said.append(self._piece("parts", tuple(part.part for part in checked.fit.parts), lambda _: _parts(checked)))
        # A word of a search begins where a word of the text does.
        return mark, f" {_piece(mark)} {' '.join(said)}"

    def _piece(self, name: str, value: Any, text: Callable[[Any], str]) -> str:
        found = self._pieces.get((name, value))
        if found is None:
            found = self._pieces[name, value] = _piece(text(value))
        return found


def _parts(checked: Checked) -> str:
    fit = checked.fit
    return " ".join(f"{part.part} {part.description}" for part in fit.parts) if fit is not None else ""


def _piece(text: str) -> str:
    """Return a cell as it is searched: a word begins behind a bracket or a slash too."""
    plain = negated(text.casefold())
    apart = _APART.sub(" ", plain)
    return plain if apart == plain else f"{plain} {apart}"


def negated(text: str) -> str:
    """Join what says no with what it denies: who looks for "rated" does not look for "not rated"."""
    return text.replace("not ", "not-").replace("no ", "no-")


def holding(words: Sequence[str], texts: Sequence[tuple[str, str]]) -> list[int]:
    """Return the places of texts that hold all words, in the mark or at the beginning of a word."""
    wanted: Mapping[str, str] = {word: f" {word}" for word in words}
    return [
        place
        for place, (mark, text) in enumerate(texts)
        if all(begun in text or word in mark for word, begun in wanted.items())
    ]

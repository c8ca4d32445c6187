"""The register: all openings as a table that stays quick at tens of thousands.

Rows are plain tuples and a list of positions; a proxy that asks Python for every cell would take seconds.
"""

import re
from collections.abc import Callable, Iterable, Mapping, Sequence
from typing import Any, Final

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt
from PySide6.QtGui import QColor, QPalette

from hwsched.desktop.parts.set_book import OpeningSet
from hwsched.operations.findings.checking import Checked
from hwsched.quantities import LENGTH_STYLES, LengthStyle, format_length
from hwsched.rules.reading import active_leaf, lock_item
from hwsched.survey import ITEM, LEAF, OPENING
from hwsched.telling.natural import natural

Index = QModelIndex | QPersistentModelIndex
_APART: Final = re.compile(r"[(/,;+]")

COLUMNS: Final = (
    "Mark",
    "State",
    "Findings",
    "Set",
    "Location",
    "Form",
    "Hand",
    "Rating",
    "Leaf",
    "Lock",
    "Building",
    "Level",
)
_STATE: Final = 1
_BUILDING: Final = 10
_LEVEL: Final = 11
STATES: Final = ("Fits", "Held", "Does not fit", "To measure", "Not worked out yet", "Earlier version")
_FITS: Final = {"fits": "Fits", "does-not-fit": "Does not fit", "to-measure": "To measure"}
_SEVERITIES: Final = ("error", "warning", "note")


def _word(entity: Any, name: str, value: str | None) -> str:
    if value is None:
        return "?"
    choice = entity.attribute(name).choice(value)
    return choice.label if choice else value


def status_word(status: str) -> str:
    """Return how a status of a fit is called on the screen; what is none stays as it is."""
    return "Held" if status == "held" else _FITS.get(status, status)


def state_of(checked: Checked) -> str:
    """Return one of STATES."""
    if checked.fit is None:
        return "Earlier version" if checked.standing == "earlier-version" else "Not worked out yet"
    if checked.fit.status == "fits" and any(f.severity == "error" and not f.waived for f in checked.findings):
        return "Held"
    return _FITS[checked.fit.status]


def row_of(checked: Checked, of_set: OpeningSet | None = None) -> tuple[str, ...]:
    """Return the texts of one opening, in the order of COLUMNS."""
    given = checked.given
    opening = given.opening
    leaf = active_leaf(given)
    locks = [lock for at in checked.points if (lock := lock_item(at.given)) is not None]
    counts = [sum(f.severity == s and not f.waived for f in checked.findings) for s in _SEVERITIES]
    words = [f"{n} {severity}{'s' if n > 1 else ''}" for n, severity in zip(counts, _SEVERITIES, strict=True) if n]
    waived = sum(f.waived for f in checked.findings)
    findings = "  ".join([*words, f"{waived} waived"] if waived else words)
    return (
        opening.mark,
        state_of(checked),
        findings,
        of_set.name if of_set is not None else "",
        " to ".join(room for room in (opening.room_from, opening.room_to) if room),
        _word(OPENING, "form", opening.form),
        opening.hand or "?",
        _word(OPENING, "rating", opening.rating),
        _word(LEAF, "material", leaf.material) if leaf else "no leaf",
        " + ".join(_word(ITEM, "lock_form", lock.lock_form) for lock in locks) or "none",
        opening.building or "",
        opening.level or "",
    )


class Register(QAbstractTableModel):
    """Openings that match a search, a place and a state."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self._ids: list[str] = []
        self._rows: list[tuple[str, ...]] = []
        self._texts: list[tuple[str, str]] = []
        """Of each opening its mark, and the other words in which a search looks."""
        self._shown: list[int] = []
        self._place_of: dict[str, int] = {}
        self.words = ""
        self.state = ""
        self.place: tuple[str, str | None] | None = None
        self.sets: Mapping[str, OpeningSet] = {}
        """Hardware set of each opening that has one."""
        self._sort: tuple[int, bool] | None = None

    def load(self, checked: Iterable[Checked]) -> None:
        """Show these openings."""
        self.beginResetModel()
        everything = list(checked)
        self._ids = [each.given.opening.id for each in everything]
        self._rows = [self._row(each) for each in everything]
        self._texts = [_searched(row, each) for row, each in zip(self._rows, everything, strict=True)]
        self._choose()
        self.endResetModel()

    def renew(self, checked: Iterable[Checked]) -> None:
        """Show changed openings anew, without a new search."""
        places = {id_: place for place, id_ in enumerate(self._ids)}
        for each in checked:
            place = places.get(each.given.opening.id)
            if place is None:
                continue
            self._rows[place] = self._row(each)
            self._texts[place] = _searched(self._rows[place], each)
            shown = self._place_of.get(each.given.opening.id)
            if shown is not None:
                self.dataChanged.emit(self.index(shown, 0), self.index(shown, len(COLUMNS) - 1))

    def _row(self, checked: Checked) -> tuple[str, ...]:
        return row_of(checked, self.sets.get(checked.given.opening.id))

    def narrow(self, *, words: str | None = None, state: str | None = None, place: Any = ...) -> None:
        """Change the search, the state or the place; what is left out stays as it is."""
        self.beginResetModel()
        if words is not None:
            self.words = words
        if state is not None:
            self.state = state
        if place is not ...:
            self.place = place
        self._choose()
        self.endResetModel()

    def id_at(self, row: int) -> str | None:
        """Return the opening of a shown row."""
        return self._ids[self._shown[row]] if 0 <= row < len(self._shown) else None

    def row_of_id(self, opening_id: str) -> int | None:
        """Return the shown row of an opening."""
        return self._place_of.get(opening_id)

    def shown_ids(self) -> list[str]:
        """Return the openings that are shown, in order."""
        return [self._ids[place] for place in self._shown]

    def total(self) -> int:
        """Return how many openings there are, shown or not."""
        return len(self._ids)

    def rowCount(self, parent: Index | None = None) -> int:  # noqa: N802
        """Return the number of shown openings."""
        return 0 if parent is not None and parent.isValid() else len(self._shown)

    def columnCount(self, parent: Index | None = None) -> int:  # noqa: N802
        """Return the number of columns."""
        return 0 if parent is not None and parent.isValid() else len(COLUMNS)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = 0) -> Any:  # noqa: N802
        """Return a column's title."""
        if orientation == Qt.Orientation.Horizontal and role == Qt.ItemDataRole.DisplayRole:
            return COLUMNS[section]
        return None

    def data(self, index: Index, role: int = 0) -> Any:
        """Return a cell's text, or how its state is coloured."""
        if role == Qt.ItemDataRole.DisplayRole or role == Qt.ItemDataRole.ToolTipRole:
            return self._rows[self._shown[index.row()]][index.column()]
        if role == Qt.ItemDataRole.ForegroundRole and index.column() == _STATE:
            return state_colour(self._rows[self._shown[index.row()]][_STATE])
        return None

    def sort(self, column: int, order: Qt.SortOrder = Qt.SortOrder.AscendingOrder) -> None:
        """Sort by a column; marks sort by their numbers. What is selected stays selected, wherever it goes."""
        self.layoutAboutToBeChanged.emit()
        before = self.persistentIndexList()
        ids = [self.id_at(index.row()) or "" for index in before]
        self._sort = (column, order == Qt.SortOrder.DescendingOrder) if column >= 0 else None
        self._choose()
        after = [self.index(self._place_of[id_], index.column()) for id_, index in zip(ids, before, strict=True)]
        self.changePersistentIndexList(before, after)
        self.layoutChanged.emit()

    def _choose(self) -> None:
        words = _negated(self.words.casefold()).split()
        shown: Sequence[int] = range(len(self._rows))
        if words:
            shown = [place for place in shown if _holds(words, *self._texts[place])]
        if self.state:
            shown = [place for place in shown if self._rows[place][_STATE] == self.state]
        if self.place is not None:
            building, level = self.place
            rows = self._rows
            shown = [p for p in shown if rows[p][_BUILDING] == building and (level is None or rows[p][_LEVEL] == level)]
        if self._sort is not None:
            column, down = self._sort
            key: Callable[[int], Any] = (
                (lambda p: natural(self._rows[p][0])) if column == 0 else (lambda p: self._rows[p][column])
            )
            shown = sorted(shown, key=key, reverse=down)
        self._shown = list(shown)
        self._place_of = {self._ids[place]: row for row, place in enumerate(self._shown)}


def _searched(row: tuple[str, ...], checked: Checked) -> tuple[str, str]:
    """Return mark and text in which a search looks: shown cells, own fields, thickness of the leaf, parts."""
    own = (f"{each.attribute.label} {each.value}" for each in checked.own if each.value is not None)
    leaf, wished = active_leaf(checked.given), checked.given.settings.length_style
    style: LengthStyle = next((each for each in LENGTH_STYLES if each == wished), "fraction")
    thick = "" if leaf is None or leaf.thickness_mm is None else f"thick {format_length(leaf.thickness_mm, style)}"
    parts = (f"{part.part} {part.description}" for part in checked.fit.parts) if checked.fit is not None else ()
    text = _negated(" ".join((*row, thick, *own, *parts)).casefold())
    # A word of a search begins where a word of the text does: behind a blank, a bracket, a slash.
    return row[0].casefold(), f" {text} {_APART.sub(' ', text)}"


def _negated(text: str) -> str:
    """Join what says no with what it denies: who looks for "rated" does not look for "not rated"."""
    return text.replace("not ", "not-").replace("no ", "no-")


def _holds(words: Sequence[str], mark: str, text: str) -> bool:
    return all(word in mark or f" {word}" in text for word in words)


def state_colour(state: str) -> QColor | None:
    """Return the colour of a state's word, readable on the present palette."""
    dark = QPalette().color(QPalette.ColorRole.Base).lightness() < 128
    hues = {
        "Fits": 150,
        "Held": 2,
        "Does not fit": 18,
        "To measure": 268,
        "Not worked out yet": 205,
        "Earlier version": 285,
    }
    hue = hues.get(state)
    return None if hue is None else QColor.fromHsl(hue, 150, 170 if dark else 80)

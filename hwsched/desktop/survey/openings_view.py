"""The register on the screen: search, state and place narrow it; what is selected in it is selected for all."""

from collections.abc import Sequence

from PySide6.QtCore import QItemSelection, QItemSelectionModel, Qt, QTimer
from PySide6.QtWidgets import (
    QAbstractItemView,
    QComboBox,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QLineEdit,
    QTableView,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.opening.earlier_line import EarlierLine
from hwsched.desktop.project_state import ProjectState
from hwsched.desktop.survey.building_tree import BuildingTree
from hwsched.desktop.survey.questions_line import QuestionsLine
from hwsched.desktop.survey.register import STATES, Register

_NAMED = 8
"""Marks that a line names."""
_SELECT = QItemSelectionModel.SelectionFlag.Select | QItemSelectionModel.SelectionFlag.Rows
_PAUSE_MS = 120
"""So long a person pauses in typing before the search follows."""


class OpeningsView(QWidget):
    """All openings as a table, with what narrows it above; the tree of places is put beside it by the window.

    Parameters
    ----------
    state : ProjectState
        Followed, and told what is selected.
    """

    def __init__(self, state: ProjectState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shared = state
        self._selecting = False
        self._wanted: tuple[str, ...] = ()
        """What a person has selected, whether it is in view or not."""
        self.register = Register(self)
        self.places = BuildingTree()
        self.earlier = EarlierLine()
        self.questions = QuestionsLine()
        self.search = QLineEdit()
        self.search.setPlaceholderText("Find: mark, room, lock, hand ...")
        self.search.setClearButtonEnabled(True)
        self._timer = QTimer(self)
        self._timer.setSingleShot(True)
        self._timer.setInterval(_PAUSE_MS)
        self._timer.timeout.connect(self._search_now)
        self.state = QComboBox()
        self.state.addItem("Any state", "")
        for word in STATES:
            self.state.addItem(word, word)
        self.count = QLabel()
        self.left = QLabel()
        self.left.setWordWrap(True)
        self.left.hide()
        self.table = _table(self.register)
        bar = QHBoxLayout()
        bar.addWidget(self.search, 1)
        bar.addWidget(self.state)
        bar.addWidget(self.count)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(4, 6, 4, 4)
        layout.addWidget(self.earlier)
        layout.addWidget(self.questions)
        layout.addLayout(bar)
        layout.addWidget(self.left)
        layout.addWidget(self.table, 1)
        self.search.textChanged.connect(lambda: self._timer.start())
        self.state.currentIndexChanged.connect(self._on_state)
        self.places.chosen.connect(self._on_place)
        self.table.selectionModel().selectionChanged.connect(self._on_selection)
        # Rows that come and go take the selection along, and no signal of Qt says so.
        self.register.modelReset.connect(self._select_again)
        self.register.layoutChanged.connect(lambda: state.reorder(self._selected()))
        state.opened.connect(self._on_opened)
        state.reloaded.connect(self._on_reloaded)
        state.touched.connect(self._on_touched)

    def select_openings(self, ids: Sequence[str]) -> None:
        """Select openings; where some are narrowed away, all are shown."""
        wanted, self._wanted = set(ids), tuple(ids)
        if any(self.register.row_of_id(each) is None for each in wanted):
            self._show_all()
        rows = sorted(row for each in wanted if (row := self.register.row_of_id(each)) is not None)
        flags = QItemSelectionModel.SelectionFlag.ClearAndSelect | QItemSelectionModel.SelectionFlag.Rows
        self.table.selectionModel().select(self._ranges(rows), flags)
        if rows:
            self.table.scrollTo(self.register.index(rows[0], 0))

    def select_one(self, opening: str | None) -> None:
        """Select one opening; the first where it is not shown."""
        row = self.register.row_of_id(opening) if opening is not None else None
        if row is None and self.register.rowCount():
            row = 0
        if row is None:
            self._wanted = ()
            self._shared.select((), None)
            self._say_left()
            return
        self._selecting = True
        self.table.selectRow(row)
        self._selecting = False
        self._wanted = tuple(self._selected())
        self._shared.select(self._wanted, self.register.id_at(row))
        self._say_left()

    def _show_all(self) -> None:
        for box in (self.search, self.state, self.places):
            box.blockSignals(True)
        self.search.clear()
        self.state.setCurrentIndex(0)
        root = self.places.topLevelItem(0)
        if root is not None:
            self.places.setCurrentItem(root)
        for box in (self.search, self.state, self.places):
            box.blockSignals(False)
        self.register.narrow(words="", state="", place=None)
        self._show_count()

    def _on_opened(self) -> None:
        """Begin with nothing selected and nothing narrowed: that was of the project before."""
        self._wanted = ()
        self.places.clear()
        self._show_all()

    def _select_again(self) -> None:
        """Select what of the selected openings is in view, and say what is not."""
        rows = sorted(row for each in self._wanted if (row := self.register.row_of_id(each)) is not None)
        self._selecting = True
        self.table.selectionModel().clearSelection()
        self.table.selectionModel().select(self._ranges(rows), _SELECT)
        self._selecting = False
        self._shared.reorder(self._selected())
        self._say_left()

    def _ranges(self, rows: Sequence[int]) -> QItemSelection:
        """Return shown rows, in order, as what Qt selects: neighbours as one range."""
        chosen, last, begin = QItemSelection(), self.register.columnCount() - 1, 0
        for place, row in enumerate(rows):
            if place + 1 == len(rows) or rows[place + 1] != row + 1:
                chosen.select(self.register.index(rows[begin], 0), self.register.index(row, last))
                begin = place + 1
        return chosen

    def _say_left(self) -> None:
        """Say which of the selected openings are not in view: commands leave those alone."""
        workspace = self._shared.workspace
        known = workspace.checked if workspace is not None else {}
        gone = [each for each in self._wanted if each in known and self.register.row_of_id(each) is None]
        marks = [known[each].given.opening.mark for each in gone]
        if not marks:
            words = ""
        elif len(marks) == 1:
            words = f"{marks[0]} is selected and not in this view: commands leave it alone."
        else:
            named = ", ".join(marks[:_NAMED]) + (f" and {len(marks) - _NAMED} more" if len(marks) > _NAMED else "")
            words = f"{len(marks)} selected openings are not in this view, and commands leave them alone: {named}."
        self.left.setText(words)
        self.left.setVisible(bool(words))

    def _on_reloaded(self) -> None:
        workspace = self._shared.workspace
        if workspace is None:
            return
        checked, before = list(workspace.checked.values()), self._shared.chosen
        self.register.sets = workspace.sets
        self.register.load(checked)
        self._show_earlier()
        self.places.show_places(workspace.project.title, checked)
        self._show_count()
        self._wanted = tuple(each for each in self._wanted if each in workspace.checked)
        if before in self._wanted:
            # What is selected stays so, be it of several and be some of it out of view.
            self._shared.select(self._selected(), before)
        else:
            self.select_one(before)

    def _on_touched(self, ids: frozenset[str]) -> None:
        workspace = self._shared.workspace
        if workspace is not None:
            self.register.sets = workspace.sets
            self.register.renew(workspace.checked[each] for each in ids)
            self._show_earlier()

    def _show_earlier(self) -> None:
        workspace = self._shared.workspace
        checked = workspace.checked.values() if workspace is not None else ()
        self.earlier.show_count(sum(each.standing == "earlier-version" for each in checked))
        self.questions.show_counts(workspace.questions if workspace is not None else {})

    def _on_place(self, place: object) -> None:
        self.register.narrow(place=place)
        self._show_count()

    def _on_state(self, _index: int) -> None:
        self.register.narrow(state=self.state.currentData())
        self._show_count()

    def _search_now(self) -> None:
        self.register.narrow(words=self.search.text())
        self._show_count()

    def _show_count(self) -> None:
        shown, total = self.register.rowCount(), self.register.total()
        text = f"{total} openings" if shown == total else f"{shown} of {total}"
        if total == 0:
            text = "No openings yet: take in a survey"
        self.count.setText(text)

    def _selected(self) -> list[str]:
        rows = sorted({index.row() for index in self.table.selectionModel().selectedRows()})
        return [found for found in (self.register.id_at(row) for row in rows) if found is not None]

    def _on_selection(self, _now: QItemSelection, _before: QItemSelection) -> None:
        if not self._selecting:
            rows = self.table.selectionModel().selectedRows()
            self._wanted = tuple(self._selected())
            self._shared.select(self._wanted, self.register.id_at(rows[0].row()) if rows else None)
            self._say_left()


def _table(register: Register) -> QTableView:
    table = QTableView()
    table.setModel(register)
    table.setSelectionBehavior(QAbstractItemView.SelectionBehavior.SelectRows)
    table.setSelectionMode(QAbstractItemView.SelectionMode.ExtendedSelection)
    table.setAlternatingRowColors(True)
    table.setShowGrid(False)
    table.setContextMenuPolicy(Qt.ContextMenuPolicy.ActionsContextMenu)
    # Tab goes on to what stands beside; cells are reached by arrow keys.
    table.setTabKeyNavigation(False)
    table.setSortingEnabled(True)
    table.horizontalHeader().setSortIndicator(-1, Qt.SortOrder.AscendingOrder)
    table.verticalHeader().hide()
    table.verticalHeader().setDefaultSectionSize(24)
    table.horizontalHeader().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
    for column, width in enumerate((64, 124, 172, 56, 190, 84, 48, 74, 116, 150, 96, 70)):
        table.setColumnWidth(column, width)
    table.horizontalHeader().setStretchLastSection(True)
    return table

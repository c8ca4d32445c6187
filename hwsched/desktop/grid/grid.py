"""The grid that every list of the desktop is: a table, what is selected in it by identity, its columns and its menu."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import cached_property
from typing import Any, Final

from PySide6.QtCore import QItemSelection, QItemSelectionModel, QPoint, Qt, Signal
from PySide6.QtWidgets import QHBoxLayout, QLabel, QVBoxLayout, QWidget

from hwsched.desktop.grid.arrangement import Arrangement
from hwsched.desktop.grid.cell_edits import EDITS, CellEdits
from hwsched.desktop.grid.cells import CellDelegate
from hwsched.desktop.grid.changes_pane import ChangesPane
from hwsched.desktop.grid.columns_pane import ColumnsPane
from hwsched.desktop.grid.drafts import cell_of, drafts_of
from hwsched.desktop.grid.filter_popup import FilterPopup
from hwsched.desktop.grid.menu import grid_menu
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.grid.proposals import Reading
from hwsched.desktop.grid.remembering import arrangement_of, keep_arrangement
from hwsched.desktop.grid.table import GridTable
from hwsched.desktop.grid.whole_row import WholeRow
from hwsched.desktop.looks.tokens import SPACE, colour
from hwsched.language import phrase
from hwsched.operations.survey.fact_edit import FactEdit

_FLAG = QItemSelectionModel.SelectionFlag
_SELECT: Final = _FLAG.Select | _FLAG.Rows
_ONLY: Final = _FLAG.ClearAndSelect | _FLAG.Rows


class Grid(QWidget):
    """A table over a `GridModel`. Here belongs what every list does alike, not which rows a place has.

    Parameters
    ----------
    model : GridModel
        Rows and columns.
    place : str
        Under which its layout is kept.
    title : str
        By which it is called.
    thing : callable
        Returns by what a person calls a row, given its identity.
    opens : bool
        Whether rows lead somewhere; else a cell that cannot be edited says why.
    empty : str
        Said where there are no rows, so that nobody takes it for not read yet.
    """

    picked = Signal()
    """A person selected other rows: see `ids`, `current`, `gone`."""
    moved = Signal()
    """What is selected stands elsewhere, or has left the view or come back."""
    opened = Signal(str)
    """Return or a double click on a row, of a grid whose rows lead somewhere."""
    edited = Signal(object, object)
    """Cells were edited: a list of FactEdit, and the newest step when the person saw what they change."""
    changed = Signal()
    """Other rows are shown."""
    said = Signal(str)
    """A sentence for the person: what cannot be, what was done."""

    def __init__(
        self,
        model: GridModel[Any],
        place: str,
        title: str,
        thing: Callable[[str], str],
        parent: QWidget | None = None,
        *,
        opens: bool = False,
        empty: str = "",
    ) -> None:
        super().__init__(parent)
        self.model, self.place = model, place
        self.reading = Reading()
        self.wanted: tuple[str, ...] = ()
        """What a person has selected, whether it is in view or not."""
        self.current: str | None = None
        """The selected row that the cursor stands on."""
        self._selecting = self._laying = False
        self._opens = opens
        self._waiting: list[Callable[[], None]] = []
        model.arrange(arrangement_of(place))
        self.table = GridTable(model)
        self.table.setAccessibleName(title)
        self.table.setAccessibleDescription(empty)
        self.table.empty = empty
        # Each view has its own: one that is shared is told that it shall close what the other has closed already.
        self.delegates = [CellDelegate(lambda: self.reading, self.table.marked, self) for _ in range(2)]
        self.echo = QLabel()
        self.echo.setWordWrap(True)
        self.echo.hide()
        self.edits = CellEdits(model, self.table, lambda: self.changes, lambda: self.reading, thing)
        self._beside = QHBoxLayout()
        self._beside.setContentsMargins(0, 0, 0, 0)
        self._beside.addWidget(self.table, 1)
        self._below = QVBoxLayout(self)
        self._below.setContentsMargins(0, 0, 0, 0)
        self._below.setSpacing(SPACE.hair)
        self._below.addLayout(self._beside, 1)
        self._below.addWidget(self.echo)
        self.whole: WholeRow | None = None
        """The sentences of the chosen row, of a grid that has any."""
        if any(column.sentence for column in model.contents.known.values()):
            self.whole = WholeRow(self.table, model)
            self._below.addWidget(self.whole)
        self._connect()

    @cached_property
    def changes(self) -> ChangesPane:
        """What edits would change; made when it is first asked for, as few grids of a page ever are."""
        made = ChangesPane()
        made.taken.connect(self.edits.write)
        made.left.connect(lambda: self.table.setFocus(Qt.FocusReason.OtherFocusReason))
        self._below.addWidget(made)
        return made

    @cached_property
    def columns(self) -> ColumnsPane:
        """Which columns there are; made when it is first asked for."""
        made = ColumnsPane(self._arrange)
        made.left.connect(lambda: self.table.setFocus(Qt.FocusReason.OtherFocusReason))
        self._beside.addWidget(made)
        return made

    def _read_row(self) -> None:
        if self.whole is not None:
            self.whole.show_row(self.current)

    def _connect(self) -> None:
        for view, delegate in zip((self.table, self.table.frozen), self.delegates, strict=True):
            view.setItemDelegate(delegate)
            delegate.echoed.connect(self._on_echo)
            delegate.begun.connect(self.edits.begin)
            delegate.taken.connect(self.edits.take)
            delegate.closeEditor.connect(lambda _editor, _hint: self._on_typed())
            header = view.horizontalHeader()
            header.setContextMenuPolicy(Qt.ContextMenuPolicy.CustomContextMenu)
            header.customContextMenuRequested.connect(self._on_header_menu)
            header.sectionMoved.connect(self._on_moved)
            header.sortIndicatorChanged.connect(lambda _column, _order: self._on_sorted())
        self.table.horizontalHeader().sectionResized.connect(self._on_resized)
        self.table.selectionModel().selectionChanged.connect(lambda _now, _before: self._on_selection())
        self.table.selectionModel().currentRowChanged.connect(lambda _now, _before: self._on_current())
        self.table.wants.connect(self.do)
        self.table.clipped.connect(self.say_why_not)
        self.table.entered.connect(self._on_entered)
        # Rows that come and go take the selection along, and no signal of Qt says so.
        self.model.modelReset.connect(self._select_again)
        self.model.layoutChanged.connect(self.moved)
        for signal in (self.picked, self.moved, self.changed):
            signal.connect(self._read_row)
        self.edits.edited.connect(self.edited)
        self.edits.said.connect(self.said)

    # --- what is selected -------------------------------------------------------------------------------------------

    @property
    def ids(self) -> list[str]:
        """The selected rows that are in view, in its order."""
        return self.table.selected_ids()

    @property
    def gone(self) -> list[str]:
        """What is selected and not in view."""
        contents = self.model.contents
        return [each for each in self.wanted if contents.row_of(each) is not None and contents.line_of(each) is None]

    def select(self, ids: Sequence[str], current: str | None = None) -> None:
        """Select what is known by these; the first of it, or another, comes into view."""
        self.wanted = tuple(ids)
        first = current if current is not None and current in self.wanted else None
        if first is None:
            lines = sorted(line for each in ids if (line := self.model.row_of_id(each)) is not None)
            first = self.model.id_at(lines[0]) if lines else None
        self.current = first
        self._select_again()
        line = self.model.row_of_id(first) if first is not None else None
        if line is not None:
            self.table.scrollTo(self.model.index(line, max(0, self.table.currentIndex().column())))

    def _select_again(self) -> None:
        """Select what of the selected rows is in view."""
        lines = sorted(line for each in self.wanted if (line := self.model.row_of_id(each)) is not None)
        selection, self._selecting = self.table.selectionModel(), True
        selection.clearSelection()
        line = self.model.row_of_id(self.current) if self.current is not None else None
        if line is not None:
            column = min(self._column, max(0, self.model.columnCount() - 1))
            selection.setCurrentIndex(self.model.index(line, column), _FLAG.NoUpdate)
        selection.select(self._ranges(lines), _SELECT)
        self._selecting = False
        self.changed.emit()
        self.moved.emit()

    _column = 0
    """Of the cursor: a model that is reset forgets it."""

    def _ranges(self, lines: Sequence[int]) -> QItemSelection:
        """Return lines, in order, as what Qt selects: neighbours as one range."""
        chosen, last, begin = QItemSelection(), self.model.columnCount() - 1, 0
        for place, line in enumerate(lines):
            if place + 1 == len(lines) or lines[place + 1] != line + 1:
                chosen.select(self.model.index(lines[begin], 0), self.model.index(line, last))
                begin = place + 1
        return chosen

    def _on_selection(self) -> None:
        if not self._selecting:
            self.wanted = tuple(self.ids)
            self._take_current()
            self.picked.emit()

    def _on_current(self) -> None:
        if not self._selecting and self.table.currentIndex().isValid():
            self._take_current()
            self._column = self.table.currentIndex().column()

    def _take_current(self) -> None:
        at = self.model.id_at(self.table.currentIndex().row())
        self.current = at if at in self.wanted else next(iter(self.wanted), None)

    def _on_entered(self, index: Any) -> None:
        identity = self.model.id_at(index.row())
        if not self._opens:
            self.say_why_not(index)
        elif identity is not None:
            self.opened.emit(identity)

    # --- what is shown anew -----------------------------------------------------------------------------------------

    def put_off(self, show: Callable[[], None]) -> bool:
        """Put off showing other rows while a person types; returns whether it was."""
        if not self.table.editing:
            return False
        if show not in self._waiting:
            self._waiting.append(show)
        return True

    def _on_typed(self) -> None:
        self._tell_drafts()
        waiting, self._waiting = self._waiting, []
        for show in waiting:
            show()

    def keep_drafts(self, edits: Sequence[FactEdit], why: str) -> None:
        """Let what could not be written stand in its cells, and say why below."""
        self.model.keep(drafts_of(edits, why))
        self._tell_drafts()

    def forget_drafts(self, edits: Sequence[FactEdit] | None = None) -> None:
        """Let go of what was written by now; of all of a project that is left."""
        self.model.forget(None if edits is None else map(cell_of, edits))
        self._tell_drafts()

    def _tell_drafts(self) -> None:
        why = "; ".join(dict.fromkeys(each.why for each in self.model.drafts.values()))
        self._on_echo(phrase("Not taken: {why}", why=why) if why else "", True)

    # --- columns ----------------------------------------------------------------------------------------------------

    def _arrange(self, names: tuple[str, ...], frozen: int) -> None:
        self._lay(columns=names, frozen=frozen)

    def lay_columns(self, names: tuple[str, ...]) -> None:
        """Show these columns, in this order."""
        self._lay(columns=names)

    def lay_as(self, arrangement: Arrangement) -> None:
        """Show columns and rows as they were laid out once."""
        self.model.arrange(arrangement)
        self._keep()

    def _lay(self, **said: Any) -> None:
        self._column = max(0, self.table.currentIndex().column())
        self.model.arrange(replace(self.model.contents.arrangement, **said))
        self._keep()

    def _keep(self) -> None:
        keep_arrangement(self.place, self.model.contents.arrangement)

    def _on_moved(self, _logical: int, old: int, new: int) -> None:
        if self._laying:
            return
        header, names = self.sender(), list(self.model.shown_names())
        # The order is the grid's own: the header goes back to its places, and the columns come in another order.
        self._laying = True
        header.moveSection(new, old)  # type: ignore[attr-defined]
        self._laying = False
        names.insert(new, names.pop(old))
        self._lay(columns=tuple(names))

    def _on_resized(self, section: int, _before: int, width: int) -> None:
        names = self.model.shown_names()
        # The last one takes what room is left; that is nobody's wish.
        if section < len(names) - 1:
            arrangement = self.model.contents.arrangement
            widths = {**arrangement.widths, names[section]: width}
            self.model.contents.arrangement = replace(arrangement, widths=widths)
            self._keep()

    def _on_sorted(self) -> None:
        self.table.show_sort()
        self._keep()

    # --- what keys and the menu ask for -----------------------------------------------------------------------------

    def do(self, wanted: str) -> None:
        """Do what a key or the menu asks for, in the current cell or the marked ones."""
        column = max(0, self.table.currentIndex().column())
        names = self.model.shown_names()
        if wanted in EDITS:
            self.edits.do(wanted)
        elif wanted == "menu":
            self._open_menu(column, self.table.viewport().mapToGlobal(self._below_current()))
        elif wanted == "filter":
            self.ask_filter(column)
        elif wanted == "columns":
            self.columns.show_columns(self.model.contents.known, names, self.model.contents.arrangement.frozen)
        elif wanted == "unfilter":
            self.model.allow(names[column], None)
        elif wanted == "group":
            self.group(None if self.model.contents.arrangement.group == names[column] else names[column])
        elif wanted == "freeze":
            self._lay(columns=names, frozen=0 if self.model.contents.arrangement.frozen == column + 1 else column + 1)
        elif wanted in ("left", "right"):
            at = max(0, min(len(names) - 1, column + (1 if wanted == "right" else -1)))
            moved = list(names)
            moved.insert(at, moved.pop(column))
            self._column = at
            self._lay(columns=tuple(moved))
        elif wanted == "hide" and len(names) > 1:
            self._lay(columns=tuple(name for name in names if name != names[column]))
        elif wanted in ("up", "down"):
            self.sort(names[column], down=wanted == "down")

    def sort(self, name: str | None, *, down: bool = False) -> None:
        """Put the rows into the order of a column."""
        place = self.model.place_of(name) if name is not None else -1
        self.model.sort(place, Qt.SortOrder.DescendingOrder if down else Qt.SortOrder.AscendingOrder)
        self._on_sorted()

    def group(self, name: str | None) -> None:
        """Let rows of one value of a column stand together."""
        self.model.group(name)
        self._keep()

    def ask_filter(self, column: int) -> None:
        """Let a person choose which values of a column are shown."""
        contents, shown = self.model.contents, self.model.contents.columns[column]
        counted = [(value, shown.said(value), count) for value, count in contents.counted(shown.name)]
        allowed = contents.filters.get(shown.name)
        self.popup = FilterPopup(
            phrase(shown.title), counted, allowed, lambda values: self.model.allow(shown.name, values), self
        )
        at = QPoint(max(0, self.table.columnViewportPosition(column)), 0)
        self.popup.show_at(self.table.viewport().mapToGlobal(at))

    popup: FilterPopup | None = None

    def _below_current(self) -> QPoint:
        return self.table.visualRect(self.table.currentIndex()).bottomLeft()

    def _on_header_menu(self, at: QPoint) -> None:
        header = self.sender()
        column = header.logicalIndexAt(at)  # type: ignore[attr-defined]
        if column >= 0:
            line = max(0, self.table.currentIndex().row())
            self.table.selectionModel().setCurrentIndex(self.model.index(line, column), _FLAG.NoUpdate)
            self.table.mark_only()
            self._open_menu(column, header.mapToGlobal(at))  # type: ignore[attr-defined]

    def _open_menu(self, column: int, at: QPoint) -> None:
        self.menu = grid_menu(self.model, column, len(self.ids), self.do, self)
        if self.table.actions():
            # What the window offers for the selected rows.
            self.menu.addSeparator()
            self.menu.addActions(self.table.actions())
        self.menu.popup(at)

    menu: Any = None

    # --- words ------------------------------------------------------------------------------------------------------

    def _on_echo(self, words: str, refused: bool) -> None:
        palette = self.echo.palette()
        palette.setColor(self.echo.foregroundRole(), colour("refused" if refused else "soft"))
        self.echo.setPalette(palette)
        self.echo.setText(words)
        self.echo.setVisible(bool(words))

    def say_why_not(self, index: Any) -> None:
        """Say why a cell cannot be edited."""
        if index.isValid():
            column = self.model.contents.columns[index.column()]
            why = phrase("there is none here") if column.target is not None else phrase("it is worked out, not typed")
            self.said.emit(phrase("{title} cannot be edited here: {why}.", title=phrase(column.title), why=why))

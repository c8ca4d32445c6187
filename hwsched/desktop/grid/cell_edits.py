"""Edits of the cells of a grid: one, the marked ones of all selected rows, what stands on the clipboard."""

from collections.abc import Callable, Iterable, Sequence
from typing import Any, Final

from PySide6.QtCore import QObject, Qt, Signal
from PySide6.QtGui import QGuiApplication

from hwsched.desktop.grid.changes_pane import ChangesPane
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.grid.proposals import Proposal, Reading, cells_of, proposed, spread, text_of
from hwsched.desktop.grid.table import GridTable
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.survey.fact_edit import FactEdit

EDITS: Final = ("copy", "paste", "fill", "clear", "many")


class CellEdits(QObject):
    """What keys and menu ask for with the marked columns of the selected rows.

    Parameters
    ----------
    model, table
        Of the grid.
    changes : callable
        Returns where the grid shows what would change.
    reading : callable
        Returns how texts are read at present.
    thing : callable
        Returns by what a person calls a row, given its identity.
    """

    edited = Signal(object, object)
    """Cells were edited: a list of FactEdit, and the newest step when the person saw what they change."""
    said = Signal(str)
    """A sentence for the person."""

    def __init__(
        self,
        model: GridModel[Any],
        table: GridTable,
        changes: Callable[[], ChangesPane],
        reading: Callable[[], Reading],
        thing: Callable[[str], str],
    ) -> None:
        super().__init__(table)
        self._model, self._table, self._changes = model, table, changes
        self._reading, self._thing = reading, thing
        self.seen: Callable[[Iterable[str]], int | None] = lambda _ids: None
        """Returns the newest step when the first of some rows was read; of rows that nobody edits there is none."""
        self._begun: int | None = None
        """What was seen when the editor of a cell was opened: rows are renewed beside it, what is typed is not."""
        self._offered: int | None = None
        """What was seen when it was worked out what edits would change."""

    def do(self, wanted: str) -> None:
        """Do one of EDITS."""
        acts = (self.copy, self.paste, self.fill, self.clear, self.ask_many)
        dict(zip(EDITS, acts, strict=True))[wanted]()

    def _marked(self) -> list[str]:
        first, last = self._table.marked()
        return list(self._model.shown_names()[first : last + 1])

    def copy(self) -> None:
        """Copy the marked columns of the selected rows, as a spreadsheet takes them."""
        contents, ids, names = self._model.contents, self._table.selected_ids(), self._marked()
        columns = [contents.known[name] for name in names]
        rows = [row for each in ids if (row := contents.row_of(each)) is not None]
        lines = [[column.text(column.value(row)) for column in columns] for row in rows]
        QGuiApplication.clipboard().setText(text_of(lines))
        self.said.emit(
            phrase_of_count(
                "Copied {count} row of {value}.",
                "Copied {count} rows of {value}.",
                len(rows),
                value=", ".join(phrase(column.title) for column in columns),
            )
        )

    def paste(self) -> None:
        """Show what the cells on the clipboard would change, laid from the current cell on."""
        text, index = QGuiApplication.clipboard().text(), self._table.currentIndex()
        if not text or not index.isValid():
            self.said.emit(phrase("There is nothing to paste, or no cell to paste it into."))
            return
        ids = self._model.shown_ids()
        chosen = self._table.selected_ids()
        first = min(chosen, key=ids.index) if chosen else self._model.id_at(index.row())
        start = ids.index(first) if first is not None else 0
        names = self._model.shown_names()[self._table.marked()[0] :]
        laid, left = spread(cells_of(text), ids, start, names, chosen)
        note = (
            phrase_of_count("{count} pasted cell has no place here.", "{count} pasted cells have no place here.", left)
            if left
            else ""
        )
        self._offer(laid, note)

    def fill(self) -> None:
        """Show what it would change to give the marked cells of the first selected row to the others."""
        contents, ids, names = self._model.contents, self._table.selected_ids(), self._marked()
        row = contents.row_of(ids[0]) if ids else None
        if row is None or len(ids) < 2:
            self.said.emit(phrase("Select the row to fill down from and those below it."))
            return
        texts = {name: contents.known[name].text(contents.known[name].value(row)) for name in names}
        self._offer([(each, name, texts[name]) for each in ids[1:] for name in names])

    def clear(self) -> None:
        """Show what it would change to make the marked facts of the selected rows unknown."""
        names = [name for name in self._marked() if self._model.contents.known[name].target is not None]
        if not names:
            self._table.clipped.emit(self._table.currentIndex())
            return
        self._offer([(each, name, "") for each in self._table.selected_ids() for name in names])

    def ask_many(self) -> None:
        """Let one value be typed for a fact of all selected rows."""
        contents, ids = self._model.contents, self._table.selected_ids()
        columns = [column for column in contents.columns if column.target is not None]
        rows = [row for each in ids if (row := contents.row_of(each)) is not None]
        if not columns or not rows:
            self.said.emit(phrase("Select rows, and show a column of a fact that can be typed."))
            return
        name = self._model.shown_names()[max(0, self._table.currentIndex().column())]
        self._offered = self.seen(ids)
        self._changes().ask(columns, name, rows, lambda fact, text: [self._proposed(each, fact, text) for each in ids])

    def _proposed(self, identity: str, name: str, text: str) -> Proposal:
        return proposed(self._model.contents, identity, name, text, self._reading(), self._thing(identity))

    def _offer(self, cells: Sequence[tuple[str, str, str]], note: str = "") -> None:
        """Show what texts in cells would change; whoever agrees has seen them as they stand now."""
        self._offered = self.seen(identity for identity, _, _ in cells)
        self._changes().show_proposals([self._proposed(*each) for each in cells], note)

    def begin(self, index: Any) -> None:
        """Note what is seen while a cell is about to be typed into."""
        identity = self._model.id_at(index.row())
        self._begun = self.seen([identity] if identity is not None else [])

    def take(self, index: Any, text: str, to_all: bool) -> None:
        """Take what was typed into a cell, for its row or for all selected ones."""
        identity = self._model.id_at(index.row())
        if identity is None:
            return
        name = self._model.shown_names()[index.column()]
        if to_all and len(self._table.selected_ids()) > 1:
            self._offer([(each, name, text) for each in self._table.selected_ids()])
            return
        cell = self._proposed(identity, name, text)
        if cell.refused:
            self.said.emit(f"{cell.thing}: {cell.fact} {cell.refused}")
        elif cell.target is not None and not cell.changes:
            # Typed as it stands: what could not be written is given up.
            self._model.forget([(cell.target.entity, cell.target.row_id, cell.target.name)])
        elif cell.target is not None:
            edit = FactEdit(cell.target.entity, cell.target.row_id, cell.target.name, cell.text)
            self._write([edit], self._begun)

    def write(self, edits: list[FactEdit]) -> None:
        """Hand over the edits that were offered and agreed to."""
        self._write(edits, self._offered)

    def _write(self, edits: list[FactEdit], seen: int | None) -> None:
        """Hand edits over to whoever writes them; the keyboard goes back to the table."""
        self._table.setFocus(Qt.FocusReason.OtherFocusReason)
        if edits:
            self.edited.emit(edits, seen)

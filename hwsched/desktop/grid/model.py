"""The contents of a grid as Qt asks for them: only cells that are looked at are put into words."""

from collections.abc import Iterable, Mapping, Sequence
from typing import Any, Final, Generic

from PySide6.QtCore import QAbstractTableModel, QModelIndex, QObject, QPersistentModelIndex, Qt

from hwsched.desktop.grid.arrangement import Arrangement
from hwsched.desktop.grid.column import Column, Row, Target
from hwsched.desktop.grid.contents import Contents, Group
from hwsched.desktop.grid.drafts import OF_DRAFT, Cell, Draft
from hwsched.language import phrase

Index = QModelIndex | QPersistentModelIndex
COLUMN: Final = int(Qt.ItemDataRole.UserRole)
"""The column of a cell."""
GROUP: Final = COLUMN + 1
"""The group whose line it is."""
_ROLE = Qt.ItemDataRole
_ANSWERED: Final = frozenset({*OF_DRAFT, COLUMN, GROUP, _ROLE.TextAlignmentRole, _ROLE.DecorationRole})
"""All that is told of a cell: Qt asks for as much again as often as it is painted."""
_WORDS: Final = frozenset({_ROLE.DisplayRole, _ROLE.EditRole, _ROLE.ToolTipRole, _ROLE.AccessibleTextRole})
_RIGHT: Final = int(Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
_GROUPED: Final = Qt.ItemFlag.ItemIsEnabled
_READ: Final = _GROUPED | Qt.ItemFlag.ItemIsSelectable
_EDITED: Final = _READ | Qt.ItemFlag.ItemIsEditable


class GridModel(QAbstractTableModel, Generic[Row]):
    """Rows of a grid; columns stand in the order in which a person has put them.

    Here belongs how a view is told of changes; what rows are, and by what they are narrowed, belongs to the grid of a
    place.
    """

    def __init__(self, contents: Contents[Row], parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.contents = contents
        self.drafts: dict[Cell, Draft] = {}
        """What could not be written, by its cell; it outlives the showing of other rows."""

    def load(self, rows: Iterable[Row], places: Sequence[int] | None = None) -> None:
        """Show these rows; only those at some places unless that is None."""
        self.beginResetModel()
        self.contents.load(rows, places)
        self.endResetModel()

    def renew(self, rows: Iterable[Row]) -> list[int]:
        """Show changed rows where they stand, without putting all into order again; returns their places."""
        last = self.columnCount() - 1
        places = self.contents.renew(rows)
        for place in places:
            line = self.contents.line_of(self.contents.ids[place])
            if line is not None:
                self.dataChanged.emit(self.index(line, 0), self.index(line, last))
        return places

    def declare(self, columns: Sequence[Column[Row]]) -> None:
        """Offer other columns."""
        self.beginResetModel()
        self.contents.declare(columns)
        self.endResetModel()

    def arrange(self, arrangement: Arrangement) -> None:
        """Show columns and rows as a person has laid them out."""
        self.beginResetModel()
        self.contents.arrange(arrangement)
        self.endResetModel()

    def allow(self, name: str, values: Iterable[Any] | None) -> None:
        """Show only rows with some values of a column; all with None."""
        self.beginResetModel()
        self.contents.allow(name, None if values is None else frozenset(values))
        self.endResetModel()

    def narrow_to(self, places: Sequence[int] | None) -> None:
        """Show only rows at some places; all with None."""
        self.beginResetModel()
        self.contents.narrow(places)
        self.endResetModel()

    def group(self, name: str | None) -> None:
        """Let rows of one value of a column stand together."""
        self.beginResetModel()
        self.contents.group(name)
        self.endResetModel()

    def fold(self, line: int) -> None:
        """Hide the rows of the group whose line it is, or show them again."""
        group = self.contents.group_at(line)
        if group is not None:
            self.beginResetModel()
            self.contents.fold(group.value, folded=group.value not in self.contents.folded)
            self.endResetModel()

    def id_at(self, row: int) -> str | None:
        """Return by what the row of a line is known."""
        return self.contents.id_at(row)

    def row_of_id(self, identity: str) -> int | None:
        """Return the line of what is known by that; None where it is not shown."""
        return self.contents.line_of(identity)

    def shown_ids(self) -> list[str]:
        """Return what is shown, in order."""
        return self.contents.shown_ids()

    def any_shown(self) -> bool:
        """Tell whether any row is shown."""
        return self.contents.any_shown()

    def total(self) -> int:
        """Return how many rows there are, shown or not."""
        return len(self.contents.ids)

    def shown_names(self) -> tuple[str, ...]:
        """Return the names of the shown columns, in order."""
        return tuple(column.name for column in self.contents.columns)

    def place_of(self, name: str) -> int:
        """Return where a column stands; -1 where it is not shown."""
        return next((n for n, column in enumerate(self.contents.columns) if column.name == name), -1)

    def target_at(self, index: Index) -> Target | None:
        """Return where an edit of a cell goes; None where it cannot be edited."""
        row = self.contents.row_at(index.row())
        column = self.contents.columns[index.column()]
        return None if row is None or column.target is None else column.target(row)

    def rowCount(self, parent: Index | None = None) -> int:  # noqa: N802
        """Return the number of lines."""
        return 0 if parent is not None and parent.isValid() else len(self.contents)

    def columnCount(self, parent: Index | None = None) -> int:  # noqa: N802
        """Return the number of shown columns."""
        return 0 if parent is not None and parent.isValid() else len(self.contents.columns)

    def headerData(self, section: int, orientation: Qt.Orientation, role: int = 0) -> Any:  # noqa: N802
        """Return a column's title, marked where only some of its values are shown; what it holds as its tip."""
        if orientation != Qt.Orientation.Horizontal or not 0 <= section < len(self.contents.columns):
            return None
        column = self.contents.columns[section]
        if role == _ROLE.DisplayRole:
            return f"{phrase(column.title)} ▾" if column.name in self.contents.filters else phrase(column.title)
        if role == _ROLE.ToolTipRole:
            # The title may be cut: it stands before what else is told.
            return "\n".join(dict.fromkeys((phrase(column.title), column.told())))
        return _RIGHT if role == _ROLE.TextAlignmentRole and column.right else None

    def flags(self, index: Index) -> Qt.ItemFlag:
        """Return that a row can be selected, and a cell edited that is somebody's fact."""
        if not index.isValid() or self.contents.group_at(index.row()) is not None:
            return _GROUPED
        return _EDITED if self.target_at(index) is not None else _READ

    def data(self, index: Index, role: int = 0) -> Any:
        """Return what a cell shows; of a group's line its title, in the first cell."""
        if role not in _ANSWERED:
            return None
        row = self.contents.row_at(index.row())
        column = self.contents.columns[index.column()]
        if role == COLUMN:
            return column
        if row is None:
            return self._of_group(index, role)
        if self.drafts and (draft := self._draft_of(column, row)) is not None and role in OF_DRAFT:
            return draft.shown(role)
        if role in _WORDS:
            return column.text(column.value(row))
        if role == _ROLE.TextAlignmentRole and column.right:
            return _RIGHT
        if role == _ROLE.ForegroundRole and column.colour is not None:
            return column.colour(column.value(row))
        if role == _ROLE.DecorationRole and column.icon is not None:
            return column.icon(column.value(row))
        return None

    def _draft_of(self, column: Column[Any], row: Any) -> Draft | None:
        target = column.target(row) if column.target is not None else None
        return None if target is None else self.drafts.get((target.entity, target.row_id, target.name))

    def keep(self, drafts: Mapping[Cell, Draft]) -> None:
        """Show what could not be written in its cells, until it is written or given up."""
        self.drafts |= drafts
        self._show_drafts()

    def forget(self, cells: Iterable[Cell] | None = None) -> None:
        """Show what stands in cells; in all of them when left out."""
        if not self.drafts:
            return
        for cell in list(self.drafts) if cells is None else cells:
            self.drafts.pop(cell, None)
        self._show_drafts()

    def _show_drafts(self) -> None:
        if self.rowCount() and self.columnCount():
            self.dataChanged.emit(self.index(0, 0), self.index(self.rowCount() - 1, self.columnCount() - 1))

    def _of_group(self, index: Index, role: int) -> Any:
        group = self.contents.group_at(index.row())
        if group is None:
            return None
        if role == GROUP:
            return group
        if role in (_ROLE.DisplayRole, _ROLE.ToolTipRole) and index.column() == 0:
            return group_line(group, folded=group.value in self.contents.folded)
        return None

    def sort(self, column: int, order: Qt.SortOrder = Qt.SortOrder.AscendingOrder) -> None:
        """Put the rows into the order of a column. What is selected stays selected, wherever it goes."""
        self.layoutAboutToBeChanged.emit()
        before = self.persistentIndexList()
        ids = [self.contents.id_at(index.row()) for index in before]
        name = self.contents.columns[column].name if 0 <= column < len(self.contents.columns) else None
        self.contents.sort(name, down=order == Qt.SortOrder.DescendingOrder)
        lines = [self.contents.line_of(id_) if id_ is not None else None for id_ in ids]
        after = [
            QModelIndex() if line is None else self.index(line, index.column())
            for line, index in zip(lines, before, strict=True)
        ]
        self.changePersistentIndexList(before, after)
        self.layoutChanged.emit()


def group_line(group: Group, *, folded: bool) -> str:
    """Return what stands on the line of a group."""
    return f"{'▸' if folded else '▾'} {group.title}  ({group.count})"

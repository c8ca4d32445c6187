"""The menu of a cell and of a column: what can be done with the column, the marked cells and the selected rows."""

from collections.abc import Callable
from typing import Any, Final

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QWidget

from hwsched.desktop.grid.model import GridModel
from hwsched.language import phrase, phrase_of_count, to_phrase

_EDITS: Final = (
    ("copy", to_phrase("Copy"), "Ctrl+C"),
    ("paste", to_phrase("Paste…"), "Ctrl+V"),
    ("fill", to_phrase("Fill down…"), "Ctrl+D"),
    ("many", to_phrase("Edit in {rows}…"), "Ctrl+E"),
    ("clear", to_phrase("Make unknown…"), "Del"),
)
_COLUMN: Final = (
    ("up", to_phrase("Sort upward"), ""),
    ("down", to_phrase("Sort downward"), ""),
    ("filter", to_phrase("Show only some values…"), "Alt+Down"),
    ("unfilter", to_phrase("Show all values"), ""),
    ("group", to_phrase("Group by {title}"), ""),
    ("freeze", to_phrase("Keep in view up to here"), ""),
    ("left", to_phrase("Move left"), ""),
    ("right", to_phrase("Move right"), ""),
    ("hide", to_phrase("Hide this column"), ""),
    ("columns", to_phrase("Columns…"), ""),
)


def grid_menu(model: GridModel[Any], column: int, rows: int, do: Callable[[str], None], parent: QWidget) -> QMenu:
    """Return the menu for a column and the selected rows.

    Parameters
    ----------
    model : GridModel
        Of the grid.
    column : int
        That was asked for.
    rows : int
        How many are selected.
    do : callable
        Does what is chosen.
    """
    contents = model.contents
    shown = contents.columns[column]
    menu = QMenu(parent)
    editable = any(each.target is not None for each in contents.columns)
    possible = {
        "copy": rows > 0,
        "paste": editable,
        "fill": editable and rows > 1,
        "many": editable and rows > 0,
        "clear": shown.target is not None and rows > 0,
        "unfilter": shown.name in contents.filters,
        "left": column > 0,
        "right": column < len(contents.columns) - 1,
        "hide": len(contents.columns) > 1,
    }
    words = {
        "rows": phrase_of_count("{rows} row", "{rows} rows", rows, rows=rows) if rows != 1 else phrase("this row"),
        "title": phrase(shown.title),
    }
    for part in (_EDITS, _COLUMN):
        for name, text, keys in part:
            if part is _EDITS and not editable and name != "copy":
                continue
            title = phrase(text, **words)
            if name == "group" and contents.arrangement.group == shown.name:
                title = phrase("Do not group")
            if name == "freeze" and contents.arrangement.frozen == column + 1:
                title = phrase("Let all columns scroll")
            action = QAction(f"{title}\t{keys}" if keys else title, menu)
            action.setEnabled(possible.get(name, True))
            action.triggered.connect(lambda _checked=False, name=name: do(name))
            menu.addAction(action)
        if part is _EDITS:
            menu.addSeparator()
    return menu

"""The menu of a cell and of a column: what can be done with the column, the marked cells and the selected rows."""

from collections.abc import Callable
from typing import Any, Final

from PySide6.QtGui import QAction
from PySide6.QtWidgets import QMenu, QWidget

from hwsched.desktop.grid.model import GridModel

_EDITS: Final = (
    ("copy", "Copy", "Ctrl+C"),
    ("paste", "Paste…", "Ctrl+V"),
    ("fill", "Fill down…", "Ctrl+D"),
    ("many", "Edit in {rows}…", "Ctrl+E"),
    ("clear", "Make unknown…", "Del"),
)
_COLUMN: Final = (
    ("up", "Sort upward", ""),
    ("down", "Sort downward", ""),
    ("filter", "Show only some values…", "Alt+Down"),
    ("unfilter", "Show all values", ""),
    ("group", "Group by {title}", ""),
    ("freeze", "Keep in view up to here", ""),
    ("left", "Move left", ""),
    ("right", "Move right", ""),
    ("hide", "Hide this column", ""),
    ("columns", "Columns…", ""),
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
    words = {"rows": f"{rows} rows" if rows != 1 else "this row", "title": shown.title}
    for part in (_EDITS, _COLUMN):
        for name, text, keys in part:
            if part is _EDITS and not editable and name != "copy":
                continue
            title = text.format(**words)
            if name == "group" and contents.arrangement.group == shown.name:
                title = "Do not group"
            if name == "freeze" and contents.arrangement.frozen == column + 1:
                title = "Let all columns scroll"
            action = QAction(f"{title}\t{keys}" if keys else title, menu)
            action.setEnabled(possible.get(name, True))
            action.triggered.connect(lambda _checked=False, name=name: do(name))
            menu.addAction(action)
        if part is _EDITS:
            menu.addSeparator()
    return menu

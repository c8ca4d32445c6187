"""The field in which one looks for something of a page is gone to by the key that every program has for it."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence, QShortcut
from PySide6.QtWidgets import QLineEdit, QWidget


def found_by_key(page: QWidget, field: QLineEdit) -> None:
    """Let the key for finding lead to a field, with its words selected, from wherever one is while the page is seen."""

    def go() -> None:
        field.setFocus(Qt.FocusReason.ShortcutFocusReason)
        field.selectAll()

    QShortcut(QKeySequence(QKeySequence.StandardKey.Find), page, go)

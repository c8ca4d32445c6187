"""Columns of numbers: they stand under one another at the right, and their titles stand above them."""

from collections.abc import Iterable
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QTableWidget, QTreeWidget

RIGHT: Final = Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter


def to_the_right(lines: QTreeWidget | QTableWidget, columns: Iterable[int]) -> None:
    """Put the titles of columns where their numbers stand."""
    for column in columns:
        if isinstance(lines, QTreeWidget):
            lines.headerItem().setTextAlignment(column, RIGHT)
        elif (title := lines.horizontalHeaderItem(column)) is not None:
            title.setTextAlignment(RIGHT)

"""Buttons that are made alike."""

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QPushButton

from hwsched.desktop.looks.tokens import TARGET, scaled


def button(text: str, slot: Callable[[], Any], tip: str = "") -> QPushButton:
    """Make a button that Return in a field does not press."""
    made = QPushButton(text)
    made.setAutoDefault(False)
    made.setToolTip(tip)
    made.setMinimumHeight(scaled(TARGET))
    made.clicked.connect(lambda _checked=False: slot())
    return made

"""Buttons that are made alike."""

from collections.abc import Callable
from typing import Any

from PySide6.QtWidgets import QPushButton

from hwsched.desktop.looks.text_size import in_pixels
from hwsched.desktop.looks.tokens import TARGET


def let_lead(button: QPushButton, *others: QPushButton) -> None:
    """Let one button of a pane have the accent: that which leads on from here; others of the pane lose it."""
    for each in (button, *others):
        if bool(each.property("leads")) != (each is button):
            each.setProperty("leads", each is button)
            # A property is looked at when a widget is polished, and not again by itself.
            each.style().unpolish(each)
            each.style().polish(each)


def button(text: str, slot: Callable[[], Any], tip: str = "") -> QPushButton:
    """Make a button that Return in a field does not press."""
    made = QPushButton(text)
    made.setAutoDefault(False)
    made.setToolTip(tip)
    in_pixels(made, minimumHeight=TARGET)
    made.clicked.connect(lambda _checked=False: slot())
    return made

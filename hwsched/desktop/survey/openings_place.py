"""The place for openings: the tree of buildings beside the register."""

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.keyboard_kept import begins_here
from hwsched.desktop.looks.tokens import SPACE, scaled, wide
from hwsched.desktop.survey.openings_view import OpeningsView


class OpeningsPlace(QSplitter):
    """Buildings and levels at the left, the register at the right."""

    def __init__(self, frame: Frame) -> None:
        super().__init__(Qt.Orientation.Horizontal)
        self.view = OpeningsView(frame.state)
        # Tree and register in line with one another, and with the pages of other places.
        self.setContentsMargins(scaled(SPACE.small), SPACE.small, 0, SPACE.hair)
        self.addWidget(self.view.places)
        self.addWidget(self.view)
        self.setSizes([wide(24), wide(80)])
        self.setStretchFactor(0, 0)
        self.setStretchFactor(1, 1)
        begins_here(self.view.table)

    def choose(self, thing: Any) -> None:
        """Select openings: one by its identifier, or several."""
        if thing is not None:
            self.view.select_openings([thing] if isinstance(thing, str) else list(thing))

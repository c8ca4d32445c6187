"""The page of the assembly: what goes in, drawn apart, numbered as the steps of the work."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.widgets.drawing_view import DrawingView
from hwsched.language import phrase
from hwsched.values import Fit, OpeningInput


class AssemblyPage(QWidget):
    """A drawing with what it does not show in words; it is drawn when it is looked at."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.view = DrawingView()
        self.view.setAccessibleName(phrase("What goes in, drawn apart"))
        self.notes = QLabel()
        self.notes.setWordWrap(True)
        self.notes.setTextFormat(Qt.TextFormat.PlainText)
        self.notes.setTextInteractionFlags(Qt.TextInteractionFlag.TextSelectableByMouse)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, SPACE.hair)
        layout.addWidget(self.view, 1)
        layout.addWidget(self.notes)

    def show_fit(self, given: OpeningInput, fit: Fit) -> None:
        """Show what goes in."""
        from hwsched.drawings.opening.exploded import exploded

        drawing = exploded(given, fit)
        self.view.show_drawings([drawing])
        self.notes.setText("\n".join(drawing.notes))

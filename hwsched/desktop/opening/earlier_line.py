"""A line over the register: how many openings an earlier version has worked out, and the way to what differs."""

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget

from hwsched.language import phrase
from hwsched.values.standing import earlier_words


class EarlierLine(QFrame):
    """Shown only while there are such openings."""

    asked = Signal()
    """A person wants to see what differs."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.show_them = QPushButton(phrase("Show what differs"))
        self.show_them.setToolTip(phrase("Worked out again and compared; nothing is changed before you take it"))
        self.show_them.clicked.connect(lambda _checked=False: self.asked.emit())
        layout = QHBoxLayout(self)
        layout.setContentsMargins(8, 4, 8, 4)
        layout.addWidget(self.words, 1)
        layout.addWidget(self.show_them)
        self.hide()

    def show_count(self, openings: int) -> None:
        """Say how many there are; none hides the line."""
        self.words.setText(
            phrase(
                "{earlier_words}. Until you have seen it, none of them counts as worked out.",
                earlier_words=earlier_words(openings),
            )
        )
        self.setVisible(openings > 0)

"""A line over the register: how many questions deliveries left to be decided, and the way to them."""

from collections.abc import Mapping

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget

from hwsched.language import phrase, phrase_of_count


class QuestionsLine(QFrame):
    """Shown only while there are such questions."""

    asked = Signal()
    """A person wants to see them."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.words = QLabel()
        self.words.setWordWrap(True)
        self.show_them = QPushButton(phrase("Decide"))
        self.show_them.setToolTip(
            phrase("What survey files said otherwise than the project, and nobody has decided yet")
        )
        self.show_them.clicked.connect(lambda _checked=False: self.asked.emit())
        layout = QHBoxLayout(self)
        layout.setContentsMargins(8, 4, 8, 4)
        layout.addWidget(self.words, 1)
        layout.addWidget(self.show_them)
        self.hide()

    def show_counts(self, counts: Mapping[int, int]) -> None:
        """Say how many there are by the number of their delivery; none hides the line."""
        words = [
            phrase_of_count(
                "{count} question from delivery {number}",
                "{count} questions from delivery {number}",
                count,
                number=number,
            )
            for number, count in counts.items()
        ]
        self.words.setText(
            phrase("{words}: until they are decided the project stays as it is.", words="; ".join(words))
        )
        self.setVisible(bool(words))

"""The line above the views that says that only what can be read of a damaged project is shown."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QWidget

from hwsched.desktop.project.remains import Remains
from hwsched.language import phrase


class RemainsLine(QFrame):
    """Shown only while what is open is what is left of a damaged project."""

    wants_saving = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.words = QLabel()
        self.words.setTextFormat(Qt.TextFormat.PlainText)
        self.words.setWordWrap(True)
        self.save = QPushButton(phrase("Save what can be read…"))
        self.save.setToolTip(phrase("Into a new project; the damaged file stays as it is"))
        self.save.clicked.connect(lambda _checked=False: self.wants_saving.emit())
        layout = QHBoxLayout(self)
        layout.setContentsMargins(8, 4, 8, 4)
        layout.addWidget(self.words, 1)
        layout.addWidget(self.save)
        self.hide()

    def show_remains(self, remains: Remains | None) -> None:
        """Say what is shown; None hides the line."""
        from hwsched.operations.project.rescuing import lost_words

        if remains is not None:
            self.words.setText(
                phrase(
                    "{name} is damaged. This is what can be read of it, and nothing can be changed here. Rows "
                    "lost: {lost_words}.",
                    name=remains.place.name,
                    lost_words=lost_words(remains.found),
                )
            )
        self.setVisible(remains is not None)

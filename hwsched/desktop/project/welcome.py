"""What stands in the window before a project is open."""

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel, QPushButton, QVBoxLayout, QWidget

from hwsched.desktop.tokens import font

WORDS = (
    "Survey what stands, fit what goes in, prove it before anything is ordered, "
    "and hand every installer one packet that is right."
)


class Welcome(QWidget):
    """Three ways to begin."""

    wants_new = Signal()
    wants_open = Signal()
    wants_sample = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        title = QLabel("hwsched")
        title.setFont(font("title", bold=True))
        title.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        words = QLabel(WORDS)
        words.setWordWrap(True)
        words.setAlignment(Qt.AlignmentFlag.AlignHCenter)
        words.setFixedWidth(460)
        # A wrapped label under an alignment gets the height of one line only, unless it is told.
        words.setMinimumHeight(words.heightForWidth(460))
        layout = QVBoxLayout(self)
        layout.addStretch(2)
        layout.addWidget(title)
        layout.addWidget(words, 0, Qt.AlignmentFlag.AlignHCenter)
        layout.addSpacing(18)
        for text, signal in (
            ("Open a project", self.wants_open),
            ("Make a new project", self.wants_new),
            ("Work out the sample", self.wants_sample),
        ):
            button = QPushButton(text)
            button.setFixedWidth(240)
            button.setMinimumHeight(34)
            button.clicked.connect(signal)
            layout.addWidget(button, 0, Qt.AlignmentFlag.AlignHCenter)
        layout.addStretch(3)

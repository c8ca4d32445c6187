"""Labels of forms whose fields are several lines high. Labels of a single field are what Qt makes of a text."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QLabel, QWidget

from hwsched.desktop.looks.tokens import SPACE


def of_first_line(words: str, field: QWidget) -> QLabel:
    """Return the label of a field that stands uppermost in a row of a form: beside it, not somewhat below."""
    made = QLabel(words)
    made.setBuddy(field)
    made.setAlignment(Qt.AlignmentFlag.AlignTop)
    made.setContentsMargins(0, SPACE.hair, 0, 0)
    return made

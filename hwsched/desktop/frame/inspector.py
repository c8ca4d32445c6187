"""The right side of the window: what is chosen, beside the places that ask for it."""

from PySide6.QtWidgets import QVBoxLayout, QWidget

from hwsched.desktop.frame.place import Place
from hwsched.language import phrase


class Inspector(QWidget):
    """Holds the sheet of what is chosen; a person may put it away.

    Parameters
    ----------
    sheet : QWidget
        Shows what is chosen.
    """

    def __init__(self, sheet: QWidget, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setAccessibleName(phrase("Inspector"))
        self.sheet = sheet
        self._wanted, self._asked = True, False
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(sheet)

    @property
    def wanted(self) -> bool:
        """Whether a person wants it beside the places that have one."""
        return self._wanted

    @property
    def asked(self) -> bool:
        """Whether the place that is shown has it beside itself."""
        return self._asked

    def want(self, wanted: bool) -> None:
        """Show it beside the places that have one, or put it away."""
        self._wanted = wanted
        self.setVisible(self._wanted and self._asked)

    def follow(self, place: Place) -> None:
        """Stand beside a place that asks for it."""
        self._asked = place.inspector
        self.setVisible(self._wanted and self._asked)

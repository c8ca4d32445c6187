"""What the inspector shows of the selection: the sheet of one opening, or what several have in common."""

from PySide6.QtWidgets import QStackedWidget, QWidget

from hwsched.desktop.opening.opening_sheet import OpeningSheet
from hwsched.desktop.opening.several import Several


class Inspected(QStackedWidget):
    """One of both, as many as are selected.

    Parameters
    ----------
    sheet : OpeningSheet
        Of one opening.
    """

    def __init__(self, sheet: OpeningSheet, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.sheet, self.several = sheet, Several()
        self.addWidget(sheet)
        self.addWidget(self.several)

    def show_count(self, selected: int) -> None:
        """Show what fits so many openings."""
        self.setCurrentWidget(self.several if selected > 1 else self.sheet)

"""Which openings a question is about: those selected, those of a building, or all."""

from collections import Counter

from PySide6.QtWidgets import QSizePolicy, QWidget

from hwsched.desktop.frame.tool_window import Desk
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.language import phrase


class ScopeBox(DropDown):
    """The selected openings, each building, the whole project; the counts follow."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._desk = desk
        self.setMinimumContentsLength(26)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        desk.selected.connect(self.follow)
        self.follow()

    def follow(self) -> None:
        """Count anew; what was chosen stays chosen."""
        before = self.currentData()
        checked = self._desk.workspace.checked
        counts = Counter(each.given.opening.building or "" for each in checked.values())
        self.blockSignals(True)
        self.clear()
        self.addItem(phrase("Selected in the register: {count}", count=len(self._desk.chosen())), "selected")
        for building in sorted(counts):
            self.addItem(f"{building or phrase('No building given')}: {counts[building]}", f"building {building}")
        self.addItem(phrase("All openings: {count}", count=len(checked)), "all")
        self.setCurrentIndex(max(self.findData(before), 0))
        self.blockSignals(False)

    def ids(self) -> list[str]:
        """Return the openings, in the project's order."""
        kind, _, building = str(self.currentData()).partition(" ")
        checked = self._desk.workspace.checked
        if kind == "selected":
            return self._desk.chosen()
        if kind == "all":
            return list(checked)
        return [id_ for id_, each in checked.items() if (each.given.opening.building or "") == building]

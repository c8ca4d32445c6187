"""Asks onto which circuit openings are moved, where their runs begin, and how long they are."""

from collections.abc import Callable, Mapping

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QDialog, QDialogButtonBox, QFormLayout, QLabel, QLineEdit, QVBoxLayout, QWidget
from shiboken6 import isValid

from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.room import give_room
from hwsched.desktop.widgets.typed import with_unit
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, run_unit
from hwsched.survey import RUN

Move = Callable[[str, str, str, Callable[[], None]], None]
"""Moves to a circuit (empty: off every one), from a node, with a length as typed; calls the last when done."""


class MoveDialog(QDialog):
    """A circuit, a node of it, a length.

    Parameters
    ----------
    about : str
        Which openings.
    circuits : mapping
        Names by identifier.
    nodes : callable
        Returns where runs of a circuit may begin, as people name it.
    move : callable
        Moves them; the dialog stays open where that was refused.
    at : str
        Circuit that is offered first.
    style : LengthStyle
        How the project shows lengths.
    """

    def __init__(
        self,
        about: str,
        circuits: Mapping[str, str],
        nodes: Callable[[str], list[str]],
        move: Move,
        at: str = "",
        *,
        style: LengthStyle,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(parent)
        self.setWindowTitle(phrase("Move to circuit"))
        self._nodes, self._move, self._style = nodes, move, style
        heading = QLabel(about)
        heading.setTextFormat(Qt.TextFormat.PlainText)
        heading.setWordWrap(True)
        self.circuit = DropDown()
        for identifier, name in circuits.items():
            self.circuit.addItem(name, identifier)
        self.circuit.addItem(phrase("Off every circuit"), "")
        self.circuit.setCurrentIndex(max(self.circuit.findData(at), 0))
        self.begin = DropDown()
        for box in (self.circuit, self.begin):
            box.setMinimumContentsLength(24)
        self.begin.setToolTip(phrase("The supply, a junction of the circuit, or an opening on it"))
        self.length = QLineEdit()
        self.length.setPlaceholderText(phrase("as measured, else as estimated"))
        self.length.setToolTip(
            phrase("Of each run, one way; empty: as measured, or estimated from level, plan and rise")
        )
        form = QFormLayout()
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        form.addRow(phrase("Circuit"), self.circuit)
        form.addRow(phrase("Runs begin at"), self.begin)
        form.addRow(phrase("Length, one way [{unit}]", unit=run_unit(style)), self.length)
        buttons = QDialogButtonBox(QDialogButtonBox.StandardButton.Ok | QDialogButtonBox.StandardButton.Cancel)
        buttons.accepted.connect(self.accept)
        buttons.rejected.connect(self.reject)
        self.ok = buttons.button(QDialogButtonBox.StandardButton.Ok)
        self.ok.setText(phrase("Move"))
        layout = QVBoxLayout(self)
        layout.addWidget(heading)
        layout.addLayout(form)
        layout.addWidget(buttons)
        self.circuit.currentIndexChanged.connect(lambda _index: self._offer_nodes())
        give_room(self, 56)
        self._offer_nodes()

    def accept(self) -> None:
        """Move them; stay open where that was refused."""
        circuit, begin = self.circuit.currentData(), self.begin.currentText()
        length = with_unit(RUN.attribute("length_m"), self.length.text().strip(), self._style)
        self._move(str(circuit), begin, length, self._moved)

    def _moved(self) -> None:
        # Closed by hand meanwhile, it has nothing left to close.
        if isValid(self):
            super().accept()

    def _offer_nodes(self) -> None:
        circuit = str(self.circuit.currentData())
        self.begin.clear()
        self.begin.addItems(self._nodes(circuit) if circuit else [])
        for field in (self.begin, self.length):
            field.setEnabled(bool(circuit))

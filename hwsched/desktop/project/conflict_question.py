"""The question that is asked when somebody else changed what an edit would overwrite: mine or theirs."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMessageBox, QWidget

from hwsched.model.errors import Clash, ConflictError, minute_of

_SHOWN = 6
"""So many facts are told at once; the others stand in the details."""


class ConflictQuestion(QMessageBox):
    """Both values of each fact, who changed it and when; nothing is changed until one is taken.

    Parameters
    ----------
    conflict : ConflictError
        What clashes.
    """

    def __init__(self, conflict: ConflictError, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.setWindowTitle("Changed meanwhile")
        self.setIcon(QMessageBox.Icon.Question)
        self.setTextFormat(Qt.TextFormat.PlainText)
        told = [_lines(clash) for clash in conflict.clashes]
        self.setText("\n\n".join(told[:_SHOWN]))
        more = f"{len(told) - _SHOWN} more facts stand in the details. " if len(told) > _SHOWN else ""
        self.setInformativeText(f"{more}Nothing is changed yet.")
        if len(told) > _SHOWN:
            self.setDetailedText("\n\n".join(told))
        self.mine = self.addButton("Take mine", QMessageBox.ButtonRole.AcceptRole)
        self.theirs = self.addButton("Keep theirs", QMessageBox.ButtonRole.RejectRole)
        self.setDefaultButton(self.theirs)
        self.setEscapeButton(self.theirs)


def _lines(clash: Clash) -> str:
    return (
        f"{clash.fact}\n"
        f"    you saw:\t{clash.seen}\n"
        f"    now:\t{clash.present} ({clash.who}, {minute_of(clash.when)})\n"
        f"    you want:\t{clash.wanted}"
    )

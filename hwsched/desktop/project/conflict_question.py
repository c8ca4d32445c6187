"""The question that is asked when somebody else changed what an edit would overwrite: mine or theirs."""

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QMessageBox, QWidget

from hwsched.desktop.looks.moments import moment_said
from hwsched.language import phrase, phrase_of_count
from hwsched.model.errors import Clash, ConflictError

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
        self.setWindowTitle(phrase("Changed meanwhile"))
        self.setIcon(QMessageBox.Icon.Question)
        self.setTextFormat(Qt.TextFormat.PlainText)
        told = [_lines(clash) for clash in conflict.clashes]
        self.setText("\n\n".join(told[:_SHOWN]))
        more = (
            phrase_of_count(
                "{count} more fact stands in the details. ",
                "{count} more facts stand in the details. ",
                len(told) - _SHOWN,
            )
            if len(told) > _SHOWN
            else ""
        )
        self.setInformativeText(phrase("{more}Nothing is changed yet.", more=more))
        if len(told) > _SHOWN:
            self.setDetailedText("\n\n".join(told))
        self.mine = self.addButton(phrase("Take mine"), QMessageBox.ButtonRole.AcceptRole)
        self.theirs = self.addButton(phrase("Keep theirs"), QMessageBox.ButtonRole.RejectRole)
        self.setDefaultButton(self.theirs)
        self.setEscapeButton(self.theirs)


def _lines(clash: Clash) -> str:
    return phrase(
        "{fact}\n    you saw:\t{seen}\n    now:\t{present} ({person}, {moment})\n    you want:\t{wanted}",
        fact=clash.fact,
        seen=clash.seen,
        present=clash.present,
        person=clash.who,
        moment=moment_said(clash.when),
        wanted=clash.wanted,
    )

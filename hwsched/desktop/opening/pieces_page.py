"""The page of an opening's pieces: what is known of each; writing down serial numbers, lots and bench work."""

from collections.abc import Sequence
from functools import partial
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtGui import QAction

from hwsched.desktop.widgets.lines import Lines, LinesPage
from hwsched.language import phrase, to_phrase
from hwsched.values import Catalogue
from hwsched.values.amounts import amount_words
from hwsched.values.piece import AT_BENCH, BENCH, Piece
from hwsched.values.role_words import role_said

_WORK: Final = {"built": to_phrase("Built"), "programmed": to_phrase("Programmed"), "tested": to_phrase("Tested")}


def _state(piece: Piece) -> str:
    said = ", ".join((piece.state, *(phrase(_WORK[word]).lower() for word in piece.done)))
    return said if piece.in_fit else phrase("{state}, no longer in the fit", state=said)


class PiecesPage(LinesPage):
    """Pieces with their serial numbers and lots."""

    wants_serial = Signal(object)
    """The piece whose serial number a person wants to write down."""
    wants_lot = Signal(object)
    wants_work = Signal(object, object)
    """A piece, and all that was done to it at the bench."""

    def __init__(self) -> None:
        super().__init__(
            Lines(
                (
                    phrase("Lock point"),
                    phrase("Role"),
                    phrase("Part"),
                    phrase("No."),
                    phrase("Qty"),
                    phrase("Serial"),
                    phrase("Lot"),
                    phrase("State"),
                ),
                5,
                numbers=(3, 4),
            )
        )
        self.table.empty.say(phrase("No pieces yet. They follow from the parts of the fit."))
        self.table.setToolTip(phrase("Double-click a piece to write down its serial number"))
        self.table.cellDoubleClicked.connect(lambda row, _column: self._ask_serial(row))
        self.act_serial = self.offer(phrase("Serial…"), phrase("Write down the serial number of the piece"))
        self.act_serial.triggered.connect(lambda: self._ask_serial(self.table.chosen_row()))
        self.act_lot = self.offer(phrase("Lot…"), phrase("Write down the lot that the piece comes from"))
        self.act_lot.triggered.connect(self._ask_lot)
        self.act_done = {word: self._offer_work(word) for word in BENCH}
        self._pieces: tuple[Piece, ...] = ()

    def _offer_work(self, word: str) -> QAction:
        made = self.offer(phrase(_WORK[word]), phrase("Write down whether this was done to the piece at the bench"))
        made.setCheckable(True)
        made.triggered.connect(partial(self._tell_work, word))
        return made

    def show_pieces(self, pieces: Sequence[Piece], catalogue: Catalogue, style: str) -> None:
        """Show these pieces; those that the fit has no longer stand aside."""
        self._pieces = tuple(pieces)
        several = any(piece.point_name for piece in pieces)
        self.table.setColumnHidden(0, not several)
        rows = [
            (
                piece.point_name,
                role_said(piece.role),
                piece.part,
                str(piece.number),
                amount_words(catalogue.get(piece.part), piece.quantity, style),
                piece.serial,
                piece.lot,
                _state(piece),
            )
            for piece in pieces
        ]
        self.table.show_rows(rows, aside={at for at, piece in enumerate(pieces) if not piece.in_fit})
        known = sum(bool(piece.serial) for piece in pieces)
        self.say(
            phrase("Serial numbers: {known} of {count}", known=known, count=len(pieces))
            if pieces
            else phrase("Nothing fits yet")
        )
        self.enable()

    def enable(self) -> None:
        """Let what is possible with the selected piece be done."""
        row = self.table.chosen_row()
        chosen = row >= 0
        piece = self._pieces[row] if 0 <= row < len(self._pieces) else None
        for word, action in self.act_done.items():
            action.setEnabled(piece is not None and word in AT_BENCH.get(piece.role, ()))
            action.setChecked(piece is not None and word in piece.done)
        self.act_serial.setEnabled(chosen)
        self.act_lot.setEnabled(chosen)

    def _tell_work(self, word: str) -> None:
        row = self.table.chosen_row()
        if 0 <= row < len(self._pieces):
            piece = self._pieces[row]
            self.wants_work.emit(piece, tuple(each for each in BENCH if (each in piece.done) != (each == word)))

    def _ask_serial(self, row: int) -> None:
        if 0 <= row < len(self._pieces):
            self.wants_serial.emit(self._pieces[row])

    def _ask_lot(self) -> None:
        row = self.table.chosen_row()
        if 0 <= row < len(self._pieces):
            self.wants_lot.emit(self._pieces[row])

"""One opening by hand in the main window: facts, parts, pieces, adding and removing."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from typing import TYPE_CHECKING

from PySide6.QtWidgets import QInputDialog, QMessageBox

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.jobs.trouble import why_of
from hwsched.desktop.opening.opening_sheet import OpeningSheet
from hwsched.language import phrase, to_phrase
from hwsched.model.errors import ChangeError, DuplicateValueError, ValueRefusedError
from hwsched.survey import ITEM
from hwsched.values.piece import Piece
from hwsched.values.role_words import role_said

if TYPE_CHECKING:
    from hwsched.operations.changes import Changes
    from hwsched.operations.opening.candidates import Candidate

_NAMED = 12
"""Marks that a question names."""
_ONE_STEP = to_phrase("It is one step, and Undo takes it back.")


class OpeningActions(Subject):
    """The sheet of the chosen opening, and edits of it, each one step of the journal.

    Parameters
    ----------
    frame : Frame
        Open project, jobs, edits, telling.
    sheet : OpeningSheet
        Shows the chosen opening.
    select : callable
        Selects an opening in the register.
    """

    def __init__(self, frame: Frame, sheet: OpeningSheet, select: Callable[[str], None]) -> None:
        super().__init__(frame)
        self.sheet, self._select = sheet, select
        self.removal: QMessageBox | None = None
        """The question whether openings are removed."""
        self.act_add = self.action(
            to_phrase("Add opening"), to_phrase("Add an opening by hand"), self.ask_opening, "project"
        )
        self.act_item = self.action(
            to_phrase("Add existing item"),
            to_phrase("Add an existing item to the chosen opening"),
            self.ask_item,
            "openings",
            acts_on="chosen",
        )
        self.act_remove = self.action(
            to_phrase("Remove openings"),
            to_phrase("Remove the selected openings with all their facts"),
            self.ask_removal,
            "openings",
            acts_on="selected",
        )
        self.act_retire = self.action(
            to_phrase("Retire openings"),
            to_phrase("Let the selected openings rest that the building has no more; they can be brought back"),
            self.ask_retiring,
            "openings",
            acts_on="selected",
        )
        sheet.edited.connect(self.type_fact)
        sheet.facts.given_up.connect(lambda: self.state.show_again())
        self.state.leaving.connect(sheet.facts.refused.clear)
        sheet.facts.echoed.connect(lambda words: frame.say(words, 0))
        sheet.wants_part.connect(self.ask_part)
        sheet.candidates.chosen.connect(self.take_candidate)
        sheet.wants_pieces.connect(self.show_pieces)
        sheet.pieces_page.wants_serial.connect(self.ask_serial)
        sheet.pieces_page.wants_lot.connect(self.ask_lot)
        sheet.pieces_page.wants_work.connect(self.tell_work)
        self.state.shown.connect(self._show_sheet)

    def enable(self) -> None:
        """Let what is possible at present be done."""
        super().enable()
        # Not while there is no project; during a job a person goes on typing, and the edit is made after it.
        self.sheet.facts.setEnabled(self.state.workspace is not None)

    def _show_sheet(self) -> None:
        if self.state.workspace is not None:
            self.sheet.sets = self.state.workspace.sets
            self.sheet.facts.bare_unit = self.state.workspace.project.bare_unit
        self.sheet.show_opening(self.state.checked, self.state.style_of_lengths)

    def choose_part(self, opening: str, role: str, part: str | None, base: int | None = None) -> None:
        """Choose a part by hand for a role, or leave it to the fit; the opening is looked at anew at once.

        Base is the newest step when the choice was shown; that of the views when left out.
        """
        from hwsched.operations.opening.hand_choices import choose_part, release_part

        workspace = self.state.workspace
        if workspace is None:
            return
        project, who, point = workspace.project, workspace.who, self.sheet.one_of_several()
        seen = self.state.seen_of(opening) if base is None else base
        if part is None:
            self.frame.edit_seen(
                lambda base: release_part(project, opening, role, who=who, base=base, point=point), seen
            )
        else:
            self.frame.edit_seen(
                lambda base: choose_part(project, opening, role, part, who=who, base=base, point=point), seen
            )

    def ask_part(self, role: str, _number: str = "") -> None:
        """Show what could take a role of the chosen opening: each part of the catalogue is tried beside the window."""
        from hwsched.operations.opening.candidates import candidates

        checked, pane, style = self.state.checked, self.sheet.candidates, self.state.style_of_lengths
        if checked is None or self.jobs.busy:
            return
        number = self.sheet.number

        def work(progress: Progress, cancelled: Cancelled) -> tuple[Candidate, ...]:
            return candidates(checked, role, style, number, progress=progress, cancelled=cancelled)

        def then(found: tuple[Candidate, ...]) -> None:
            # Meanwhile another opening may be shown, or this one otherwise.
            if self.state.checked is checked:
                pane.show_candidates(role, found, style)

        pane.wait_for(role)
        self.jobs.run(phrase("Trying parts as {role}", role=role_said(role)), work, then)

    def take_candidate(self, role: str, part: str) -> None:
        """Choose what was touched among the candidates; empty leaves the role to the fit."""
        if self.state.chosen is not None and not self.jobs.busy:
            self.sheet.candidates.close_up()
            self.choose_part(self.state.chosen, role, part or None)

    def show_pieces(self) -> None:
        """Fill the sheet's page of pieces."""
        from hwsched.operations.opening.pieces import pieces_on_record

        workspace, checked = self.state.workspace, self.state.checked
        if workspace is not None and checked is not None:
            pieces = pieces_on_record(workspace.project, checked)
            self.sheet.pieces_page.show_pieces(pieces, checked.given.catalogue, workspace.project.length_style)

    def ask_serial(self, piece: Piece) -> None:
        """Ask for the serial number of a piece and write it down."""
        seen = self.state.seen_of(self.state.chosen)
        text, stated = QInputDialog.getText(
            self.frame.window,
            phrase("Serial number"),
            phrase("Serial number of {role} {part}:", role=role_said(piece.role), part=piece.part),
            text=piece.serial,
        )
        if stated:
            self.record_piece(piece, seen, serial=text)

    def ask_lot(self, piece: Piece) -> None:
        """Ask for the lot of a piece and write it down."""
        seen = self.state.seen_of(self.state.chosen)
        text, stated = QInputDialog.getText(
            self.frame.window,
            phrase("Lot"),
            phrase("Lot of {role} {part}:", role=role_said(piece.role), part=piece.part),
            text=piece.lot,
        )
        if stated:
            self.record_piece(piece, seen, lot=text)

    def tell_work(self, piece: Piece, done: tuple[str, ...]) -> None:
        """Write down what was done to a piece at the bench."""
        self.record_piece(piece, self.state.seen_of(self.state.chosen), done=done)

    def record_piece(
        self,
        piece: Piece,
        seen: int | None,
        *,
        serial: str | None = None,
        lot: str | None = None,
        done: tuple[str, ...] | None = None,
    ) -> None:
        """Write down serial number, lot or bench work of a piece of the chosen opening, as seen at a step."""
        from hwsched.operations.opening.pieces import record_piece

        workspace, opening = self.state.workspace, self.state.chosen
        if workspace is not None and opening is not None and not self.jobs.busy:
            project, who = workspace.project, workspace.who
            self.frame.edit_seen(
                lambda base: record_piece(
                    project, opening, piece.id, who=who, serial=serial, lot=lot, done=done, base=base
                ),
                seen,
            )

    def type_fact(self, entity: str, row: str, attribute: str, text: str) -> None:
        """Take what was typed for a fact of the chosen opening; refused it stays beside its field with the reason."""
        from hwsched.operations.survey.typed_values import type_in

        workspace, facts = self.state.workspace, self.sheet.facts
        if workspace is None:
            return

        def act(base: int | None) -> Changes | ChangeError:
            try:
                return type_in(workspace.project, entity, row, attribute, text, who=workspace.who, base=base)
            except (ValueRefusedError, DuplicateValueError) as refused:
                return refused

        def keep(why: str, *, again: bool = False) -> None:
            facts.refused.keep((entity, row, attribute), text, why, again=again)
            self.state.show_again()

        def then(done: Changes | ChangeError) -> None:
            if isinstance(done, ChangeError):
                keep(str(done))
                self.frame.say(phrase("Not taken: {done}", done=done))
            elif facts.refused.forget((entity, row, attribute)):
                self.state.show_again()

        self.frame.edit_seen(act, facts.seen, then, lost=lambda error: keep(why_of(error), again=True))

    def ask_opening(self) -> None:
        """Ask for a mark and add an opening."""
        mark, stated = QInputDialog.getText(
            self.frame.window, phrase("Add opening"), phrase("Mark of the new opening:")
        )
        if stated and mark.strip():
            self.add_opening(mark.strip())

    def add_opening(self, mark: str) -> None:
        """Add an opening with one leaf; its facts are then typed into the sheet."""
        from hwsched.operations.survey.editing import add_opening

        workspace = self.state.workspace
        if workspace is None or self.jobs.busy:
            return

        def then(made: tuple[Changes, str]) -> None:
            self._select(made[1])

        self.frame.edit(lambda: add_opening(workspace.project, {"mark": mark}, who=workspace.who), then)

    def ask_item(self) -> None:
        """Ask what was found and add it to the chosen opening."""
        kinds = {phrase(choice.label): choice.value for choice in ITEM.attribute("kind").choices}
        label, stated = QInputDialog.getItem(
            self.frame.window, phrase("Add existing item"), phrase("What was found:"), list(kinds), 0, False
        )
        if stated:
            self.add_item(kinds[label])

    def add_item(self, kind: str) -> None:
        """Add an existing item of a kind to the chosen opening."""
        from hwsched.operations.survey.editing import add_item

        workspace, opening = self.state.workspace, self.state.chosen
        if workspace is None or opening is None or self.jobs.busy:
            return
        self.frame.edit(lambda: add_item(workspace.project, opening, {"kind": kind}, who=workspace.who))

    def ask_removal(self) -> None:
        """Ask by name and number whether the openings that are selected in the view are removed."""
        workspace, ids = self.state.workspace, self.state.ids
        if workspace is None or self.jobs.busy:
            return
        if not ids:
            # What is shown beside the view may have left it: nothing is removed that nobody sees selected.
            self.frame.say(phrase("No opening is selected in the view; select those that are to be removed."))
            return
        marks = [workspace.checked[each].given.opening.mark for each in ids]
        what = marks[0] if len(marks) == 1 else phrase("{count} openings", count=len(marks))
        question = QMessageBox(self.frame.window)
        question.setWindowTitle(phrase("Remove openings"))
        question.setText(
            phrase(
                "Remove {what} with all {part} facts?",
                what=what,
                part=phrase("its") if len(marks) == 1 else phrase("their"),
            )
        )
        more = ", ".join(marks[:_NAMED]) + (
            phrase(" and {count} more", count=len(marks) - _NAMED) if len(marks) > _NAMED else ""
        )
        question.setInformativeText(
            phrase("{more}. It is one step, and Undo takes it back.", more=more)
            if len(marks) > 1
            else phrase(_ONE_STEP)
        )
        go = question.addButton(phrase("Remove {what}", what=what), QMessageBox.ButtonRole.DestructiveRole)
        question.setDefaultButton(question.addButton(phrase("Keep"), QMessageBox.ButtonRole.RejectRole))
        go.clicked.connect(lambda _checked=False: self.remove_openings(ids))
        self.removal = question
        question.open()

    def ask_retiring(self) -> None:
        """Ask why the building has the openings no more that are selected in the view, and let them rest."""
        workspace, ids = self.state.workspace, self.state.ids
        if workspace is None or self.jobs.busy:
            return
        if not ids:
            self.frame.say(phrase("No opening is selected in the view; select those that the building has no more."))
            return
        marks = [workspace.checked[each].given.opening.mark for each in ids]
        more = ", ".join(marks[:_NAMED]) + (
            phrase(" and {count} more", count=len(marks) - _NAMED) if len(marks) > _NAMED else ""
        )
        why, stated = QInputDialog.getText(
            self.frame.window,
            phrase("Retire openings"),
            phrase("Why the building has {more} no more (may stay empty):", more=more),
        )
        if stated:
            self.retire_openings(ids, why)

    def retire_openings(self, ids: Sequence[str], why: str = "") -> None:
        """Let openings rest as one step; they come back from the list of retired ones, or by undo."""
        from hwsched.operations.survey.retiring import retire_openings

        workspace = self.state.workspace
        if workspace is None or self.jobs.busy:
            return
        seen = [base for each in ids if (base := self.state.seen_of(each)) is not None]
        self.frame.edit_seen(
            lambda base: retire_openings(workspace.project, ids, who=workspace.who, why=why, base=base),
            min(seen, default=None),
        )

    def remove_openings(self, ids: Sequence[str]) -> None:
        """Remove openings as one step; undo brings them back."""
        from hwsched.operations.survey.editing import remove_openings

        workspace = self.state.workspace
        if workspace is None or self.jobs.busy:
            return
        seen = [base for each in ids if (base := self.state.seen_of(each)) is not None]
        self.frame.edit_seen(
            lambda base: remove_openings(workspace.project, ids, who=workspace.who, base=base),
            min(seen, default=None),
        )

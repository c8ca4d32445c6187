"""What a person does to one opening by hand: facts, parts, the unit's place, adding and removing."""

from collections.abc import Callable
from typing import Any

from PySide6.QtCore import Qt, Slot
from PySide6.QtWidgets import (
    QInputDialog,
    QWidget,
)

from hwsched.desktop.frame import Frame
from hwsched.desktop.jobs import Failure
from hwsched.desktop.project.conflict_question import ConflictQuestion
from hwsched.model.errors import ConflictError
from hwsched.operations.changes import Changes
from hwsched.operations.findings.checking import Checked
from hwsched.operations.opening.hand_choices import choose_part, place_unit, release_part, release_unit
from hwsched.operations.opening.named_openings import parts_like
from hwsched.operations.opening.pieces import pieces_on_record, record_piece
from hwsched.operations.opening.trial_placement import against_place, with_unit_at
from hwsched.operations.survey.editing import add_item, add_opening, remove
from hwsched.operations.survey.typed_values import type_in
from hwsched.quantities import format_length
from hwsched.survey import ITEM
from hwsched.values.piece import Piece

LEAVE_TO_FIT = "(leave it to the fit)"


class HandWork(Frame):
    """Edits of the chosen opening, each one step of the journal."""

    def edit_seen(
        self,
        act: Callable[[int | None], Any],
        base: int | None,
        then: Callable[[Any], None] | None = None,
        *,
        asker: QWidget | None = None,
    ) -> None:
        """Make an edit of what was shown; where somebody else changed it meanwhile, ask whose value is taken.

        Parameters
        ----------
        act : callable
            Calls an operation, given the newest step that was seen; runs off the screen's thread.
        base : int or None
            The newest step when what is edited was shown; None: it does not matter.
        then, asker
            As in `edit`; what follows an edit that was asked about follows the answer.
        """
        seen = base

        def attempt() -> Any:
            nonlocal seen
            try:
                return act(seen)
            except ConflictError as conflict:
                # The question tells what is there: made once more, it overwrites that knowingly.
                seen = conflict.base
                raise

        self.edit(attempt, then, asker=asker)

    def _tell(self, failure: Failure) -> None:
        """Ask whose value is taken where somebody else changed it; tell all else."""
        if not isinstance(failure.error, ConflictError):
            super()._tell(failure)
            return
        near = failure.asker if failure.asker is not None and failure.asker.isVisible() else self
        question = ConflictQuestion(failure.error, near)
        question.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        theirs = Changes(failure.error.openings, entities=failure.error.entities)

        def answered() -> None:
            if question.clickedButton() is question.mine and failure.once_more is not None:
                failure.once_more()
            else:
                self._on_changed(theirs)

        question.finished.connect(answered)
        self.asked = question
        self._told_on_closing = True
        question.open()

    def seen_of(self, opening: str) -> int | None:
        """Return the newest step when an opening was read as the views show it."""
        checked = self.workspace.checked.get(opening) if self.workspace is not None else None
        return checked.base if checked is not None else None

    def choose_part(self, opening: str, role: str, part: str | None, base: int | None = None) -> None:
        """Choose a part by hand for a role, or leave it to the fit; the opening is looked at anew at once.

        Base is the newest step when the choice was shown; that of the views when left out.
        """
        workspace = self.workspace
        if workspace is None:
            return
        project, who, point = workspace.project, workspace.who, self._point()
        seen = self.seen_of(opening) if base is None else base
        if part is None:
            self.edit_seen(lambda base: release_part(project, opening, role, who=who, base=base, point=point), seen)
        else:
            self.edit_seen(
                lambda base: choose_part(project, opening, role, part, who=who, base=base, point=point), seen
            )

    def _point(self) -> str | None:
        """Return the lock point that the sheet shows, where it is one of several."""
        at = self.sheet.shown_point()
        return at.given.point.id if at is not None and at.given.point.others else None

    def ask_part(self, role: str, number: str) -> None:
        """Ask which part of the same kind shall take a role of the chosen opening, or leave it to the fit."""
        workspace, opening = self.workspace, self.chosen
        if workspace is None or opening is None or self.jobs.busy:
            return
        seen = self.seen_of(opening)
        offered = {f"{each}  {text}": each for each, text in parts_like(workspace.project, number)}
        words = [LEAVE_TO_FIT, *offered]
        at = next((place for place, word in enumerate(words) if offered.get(word) == number), 0)
        word, stated = QInputDialog.getItem(self, "Choose by hand", f"Part for the role {role}:", words, at, False)
        if stated:
            self.choose_part(opening, role, offered.get(word), seen)

    def _on_unit_dragged(self, x_mm: float, y_mm: float) -> None:
        workspace = self.workspace
        checked = workspace.checked.get(self.chosen) if workspace is not None and self.chosen else None
        if workspace is None or checked is None or self.jobs.busy:
            return
        tried = with_unit_at(checked, x_mm, y_mm, workspace.checker, self.sheet.number)
        self.sheet.show_tried(tried, self.style_of_lengths, self._said_of(tried))

    def _said_of(self, tried: Checked) -> str:
        style, fit_ = self.style_of_lengths, tried.point(self.sheet.number).fit
        against = against_place(tried)
        words = ["Does not fit here: " + against[0].message if against else "Fits here"]
        if fit_ is not None and fit_.cable is not None:
            words.append(f"lead {format_length(fit_.cable.available_mm - fit_.cable.length_mm, style)} to spare")
        if fit_ is not None and fit_.placement is not None and fit_.placement.clearances:
            name, free = fit_.placement.clearances[0]
            words.append(f"{format_length(free, style)} to {name}" if free >= 0 else f"overlaps {name}")
        return " · ".join(words)

    def move_unit(self, x_mm: float, y_mm: float) -> None:
        """Place the unit of the chosen opening by hand; a place that does not fit is refused with its reason."""
        workspace = self.workspace
        checked = workspace.checked.get(self.chosen) if workspace is not None and self.chosen else None
        if workspace is None or checked is None or self.jobs.busy:
            return
        tried = with_unit_at(checked, x_mm, y_mm, workspace.checker, self.sheet.number)
        against = against_place(tried)
        fit = tried.point(self.sheet.number).fit
        place = fit.placement if fit is not None else None
        if against or place is None:
            self._show_sheet()
            reason = against[0].message if against else "There is no place for the unit here."
            self.sheet.state.setText(f"Refused, the unit stays where it was: {reason}")
            return
        self.edit_seen(
            lambda base: place_unit(
                workspace.project,
                checked.given.opening.id,
                leaf=place.leaf,
                face=place.face,
                pattern=place.pattern,
                x_mm=round(x_mm, 2),
                y_mm=round(y_mm, 2),
                who=workspace.who,
                point=self._point(),
                base=base,
            ),
            checked.base,
        )

    def release_unit(self) -> None:
        """Leave the place of the chosen opening's unit to the fit again."""
        workspace, opening = self.workspace, self.chosen
        if workspace is not None and opening is not None and not self.jobs.busy:
            point = self._point()
            self.edit_seen(
                lambda base: release_unit(workspace.project, opening, who=workspace.who, base=base, point=point),
                self.seen_of(opening),
            )

    def show_pieces(self) -> None:
        """Fill the sheet's page of pieces."""
        workspace = self.workspace
        checked = workspace.checked.get(self.chosen) if workspace is not None and self.chosen else None
        if workspace is not None and checked is not None:
            self.sheet.pieces_page.show_pieces(pieces_on_record(workspace.project, checked))

    def ask_serial(self, piece: Piece) -> None:
        """Ask for the serial number of a piece and write it down."""
        seen = self._seen_of_chosen()
        text, stated = QInputDialog.getText(
            self, "Serial number", f"Serial number of {piece.role} {piece.part}:", text=piece.serial
        )
        if stated:
            self.record_piece(piece, seen, serial=text)

    def ask_lot(self, piece: Piece) -> None:
        """Ask for the lot of a piece and write it down."""
        seen = self._seen_of_chosen()
        text, stated = QInputDialog.getText(self, "Lot", f"Lot of {piece.role} {piece.part}:", text=piece.lot)
        if stated:
            self.record_piece(piece, seen, lot=text)

    def _seen_of_chosen(self) -> int | None:
        return self.seen_of(self.chosen) if self.chosen is not None else None

    def record_piece(
        self, piece: Piece, seen: int | None, *, serial: str | None = None, lot: str | None = None
    ) -> None:
        """Write down the serial number or the lot of a piece of the chosen opening, as seen at a step."""
        workspace, opening = self.workspace, self.chosen
        if workspace is not None and opening is not None and not self.jobs.busy:
            project, who = workspace.project, workspace.who
            self.edit_seen(
                lambda base: record_piece(project, opening, piece.id, who=who, serial=serial, lot=lot, base=base),
                seen,
            )

    @Slot(str, str, str, str)
    def _on_edited(self, entity: str, row: str, attribute: str, text: str) -> None:
        workspace = self.workspace
        if workspace is not None:
            self.edit_seen(
                lambda base: type_in(workspace.project, entity, row, attribute, text, who=workspace.who, base=base),
                self.sheet.facts.seen,
            )

    def ask_opening(self) -> None:
        """Ask for a mark and add an opening."""
        mark, stated = QInputDialog.getText(self, "Add opening", "Mark of the new opening:")
        if stated and mark.strip():
            self.add_opening(mark.strip())

    def add_opening(self, mark: str) -> None:
        """Add an opening with one leaf; its facts are then typed into the sheet."""
        workspace = self.workspace
        if workspace is None or self.jobs.busy:
            return

        def then(made: tuple[Changes, str]) -> None:
            self._select(made[1])

        self.edit(lambda: add_opening(workspace.project, {"mark": mark}, who=workspace.who), then)

    def ask_item(self) -> None:
        """Ask what was found and add it to the chosen opening."""
        kinds = {choice.label: choice.value for choice in ITEM.attribute("kind").choices}
        label, stated = QInputDialog.getItem(self, "Add existing item", "What was found:", list(kinds), 0, False)
        if stated:
            self.add_item(kinds[label])

    def add_item(self, kind: str) -> None:
        """Add an existing item of a kind to the chosen opening."""
        workspace, opening = self.workspace, self.chosen
        if workspace is None or opening is None or self.jobs.busy:
            return
        self.edit(lambda: add_item(workspace.project, opening, {"kind": kind}, who=workspace.who))

    def remove_opening(self) -> None:
        """Remove the chosen opening; undo brings it back."""
        workspace, opening = self.workspace, self.chosen
        if workspace is None or opening is None or self.jobs.busy:
            return
        self.edit_seen(
            lambda base: remove(workspace.project, "opening", opening, who=workspace.who, base=base),
            self.seen_of(opening),
        )

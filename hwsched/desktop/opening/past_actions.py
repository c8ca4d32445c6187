"""The past of the chosen opening in its sheet: read when it is looked at, steps of it taken back and done again."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.desktop.opening.opening_sheet import OpeningSheet

if TYPE_CHECKING:
    from hwsched.operations.changes import Changes


class PastActions(Subject):
    """Fills the page of the past, and takes steps of it back.

    Parameters
    ----------
    frame : Frame
        Open project, jobs, edits, telling.
    sheet : OpeningSheet
        Shows the chosen opening.
    """

    def __init__(self, frame: Frame, sheet: OpeningSheet) -> None:
        from hwsched.operations.project.history import redo_one, undo_one

        super().__init__(frame)
        self.sheet = sheet
        sheet.pages.turned.connect(self.show)
        sheet.past_page.wants_back.connect(lambda number: self._step(undo_one, number))
        sheet.past_page.wants_again.connect(lambda number: self._step(redo_one, number))
        self.state.shown.connect(self.show)

    def show(self) -> None:
        """Read the past of the chosen opening, where its page is looked at."""
        from hwsched.operations.opening.past import past_of

        workspace, checked = self.state.workspace, self.state.checked
        if self.sheet.pages.seen() is not self.sheet.past_page:
            return
        if workspace is None or checked is None:
            self.sheet.past_page.show_past(())
        else:
            self.frame.telling.guarded(
                lambda: self.sheet.past_page.show_past(past_of(workspace.project, checked.given.opening.id))
            )

    def _step(self, verb: Callable[..., Changes], number: int) -> None:
        workspace = self.state.workspace
        if workspace is not None and not self.jobs.busy:
            self.frame.edit(lambda: verb(workspace.project, number, who=workspace.who), lambda _changes: self.show())

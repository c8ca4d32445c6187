"""The steps of the journal: who, when, what; any step can be taken back when nothing depends on it, and done again."""

from collections.abc import Callable
from typing import Final

from PySide6.QtWidgets import QWidget

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.looks.moments import moment_said
from hwsched.language import phrase, to_phrase
from hwsched.model.journal.history import ChangeSetInfo
from hwsched.operations.changes import Changes
from hwsched.operations.project.history import history, redo_one, undo_one
from hwsched.operations.step_titles import step_said


def _seen(step: ChangeSetInfo) -> str:
    """Say where a step was made, and what its maker had seen where that was not all."""
    if not step.device:
        return phrase("Before machines were written down")
    if step.base is None or step.base == step.number - 1:
        return phrase("Made on the machine “{device}”", device=step.device)
    return phrase(
        "Made on the machine “{device}”, by somebody who had seen step {base}", device=step.device, base=step.base
    )


COLUMNS: Final[tuple[Column[ChangeSetInfo], ...]] = (
    Column("step", to_phrase("Step"), lambda step: step.number, right=True, width=8),
    Column("when", to_phrase("When"), lambda step: step.when, moment_said, width=27),
    Column("who", to_phrase("Who"), lambda step: step.who, width=14),
    Column("what", to_phrase("What"), lambda step: step.summary, step_said, width=60),
    Column("state", to_phrase("State"), lambda step: phrase("taken back") if step.undone else "", width=12),
    Column("rows", to_phrase("Rows"), lambda step: step.rows, right=True, width=8, standard=False),
    Column(
        "seen",
        to_phrase("Made"),
        _seen,
        width=32,
        standard=False,
        note=to_phrase("On which machine, and what its maker had seen."),
    ),
)


class HistoryWindow(ToolWindow):
    """All steps, the latest on top; what is done meanwhile shows at once."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("History"), parent)
        self.model = GridModel(Contents(COLUMNS, lambda step: str(step.number)), self)
        self.grid = Grid(
            self.model,
            "history",
            phrase("Steps"),
            lambda number: phrase("step {number}", number=number),
            empty=phrase("No step yet. Each change stands here, with who made it and when."),
        )
        self.grid.picked.connect(self.enable)
        self.back = self.button(
            phrase("Take back the chosen step"), lambda: self._do(undo_one), phrase("As a step of its own")
        )
        self.again = self.button(
            phrase("Do the chosen step again"), lambda: self._do(redo_one), phrase("One that was taken back")
        )
        self.body.addWidget(self.grid)
        self.foot.addWidget(self.again)
        self.foot.addWidget(self.back)
        self.listen(desk.workspace.changed, self.follow_change)
        self.follow()

    def follow(self) -> None:
        """Read the steps."""
        self.model.load(reversed(history(self.desk.workspace.project)))
        self.enable()

    def chosen(self) -> ChangeSetInfo | None:
        """Return the one step that is chosen; None where it is none or several."""
        ids = self.grid.ids
        return self.model.contents.row_of(ids[0]) if len(ids) == 1 else None

    def enable(self) -> None:
        """Let an edit be taken back, or done again where it was."""
        step = self.chosen()
        edit = step is not None and step.kind == "edit" and self.idle
        self.back.setEnabled(edit and step is not None and not step.undone)
        self.again.setEnabled(edit and step is not None and step.undone)
        self.told.setText(_seen(step) if step is not None else "")

    def _do(self, verb: Callable[..., Changes]) -> None:
        step, workspace = self.chosen(), self.desk.workspace
        if step is not None:
            number = step.number
            self.edit(lambda: verb(workspace.project, number, who=workspace.who), lambda _changes: self.follow())

"""The release gate: which openings may be picked for and installed, and what is missing at the others."""

from dataclasses import dataclass
from typing import Final

from PySide6.QtWidgets import QWidget

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.looks.capitals import capital
from hwsched.desktop.widgets.empty import NO_OPENINGS
from hwsched.kept_sentences import GATE, kept_phrase
from hwsched.language import phrase, to_phrase
from hwsched.operations.release.holding import Lack
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.release_gate import Passage, passages


@dataclass(frozen=True, slots=True)
class HeldLine:
    """One thing that is missing at an opening."""

    id: str
    opening: str
    mark: str
    lack: Lack


COLUMNS: Final[tuple[Column[HeldLine], ...]] = (
    Column("mark", to_phrase("Opening"), lambda line: line.mark, width=14),
    Column(
        "missing",
        to_phrase("What is missing until it may be picked for and installed"),
        lambda line: capital(kept_phrase(line.lack.said, GATE)),
        width=90,
    ),
)
_PLACES: Final[dict[str, str]] = {"circuit": "power", "delivery": "deliveries"}
"""Where what is to be looked at stands, beside openings and findings."""
_OF_PART: Final = "part "
"""Begins the name of a fact that the catalogue lacks."""


class GateWindow(ToolWindow):
    """What is missing at openings that are held; Return or a double click goes to what is to be looked at."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Release gate"), parent)
        self.model = GridModel(Contents(COLUMNS, lambda line: line.id), self)
        self.grid = Grid(self.model, "gate", phrase("Openings that are held"), lambda _line: "", opens=True,
                         empty=phrase(NO_OPENINGS))  # fmt: skip
        self.grid.opened.connect(lambda _line: self.go_to_it())
        self.grid.picked.connect(self.enable)
        self.grid.said.connect(self.told.setText)
        self.body.addWidget(self.grid)
        self.way = self.button(
            phrase("Go to it"),
            self.go_to_it,
            phrase("To the fact, the finding, the circuit or the question that is meant"),
        )
        self.again = self.button(phrase("Ask again"), self.ask)
        self.foot.addWidget(self.way)
        self.foot.addWidget(self.again)
        self._asked = False
        self.enable()

    def enable(self) -> None:
        """One job at a time; one line to go to."""
        self.again.setEnabled(self.idle)
        self.way.setEnabled(self._chosen() is not None)

    def follow(self) -> None:
        """Say that what stands here is of before."""
        if self._asked:
            self.told.setText(phrase("The project has changed since; ask again."))
        self.enable()

    def ask(self) -> None:
        """Ask the gate of all openings."""
        workspace = self.desk.workspace

        def work(_progress: Progress, _cancelled: Cancelled) -> tuple[Passage, ...]:
            return passages(project_view(workspace.project, checker=workspace.checker))

        self.run(phrase("Asking the gate"), work, self.show_passages)

    def show_passages(self, found: tuple[Passage, ...]) -> None:
        """Show what is held."""
        self._asked = True
        held = [each for each in found if not each.free]
        self.grid.table.empty = phrase("Every opening may be picked for and installed." if found else NO_OPENINGS)
        self.model.load(
            HeldLine(f"{each.opening_id} {n}", each.opening_id, each.mark, lack)
            for each in held
            for n, lack in enumerate(each.lacks)
        )
        self.told.setText(
            ""
            if not found
            else phrase(
                "{count} of {count_2} openings may be picked for and installed.",
                count=len(found) - len(held),
                count_2=len(found),
            )
        )

    def go_to_it(self) -> None:
        """Go to what is to be looked at for the chosen line."""
        line = self._chosen()
        if line is None or line.opening not in self.desk.workspace.checked:
            return
        self.desk.select([line.opening])
        if line.lack.of == "finding":
            self.desk.go("findings", (line.lack.rule, line.opening))
        elif line.lack.of in _PLACES:
            self.desk.go(_PLACES[line.lack.of])
        elif line.lack.need.startswith(_OF_PART):
            self.desk.go("parts", line.lack.need.removeprefix(_OF_PART).rpartition(".")[0])
        else:
            self.desk.go("openings", [line.opening])
            self.desk.show_fact(line.lack.need)

    def _chosen(self) -> HeldLine | None:
        ids = self.grid.ids
        return self.model.contents.row_of(ids[0]) if len(ids) == 1 else None

"""Missing facts, most useful first; the openings that need one are selected, and the return visit is written."""

from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtWidgets import QLabel, QWidget

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.jobs.ran import of_files
from hwsched.desktop.looks.capitals import capital
from hwsched.desktop.widgets.asked_files import folder_to_write
from hwsched.desktop.widgets.buttons import let_lead
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.empty import NO_OPENINGS
from hwsched.kept_sentences import GATE, kept_phrase
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.rules.missing import MissingFact, missing_facts

_TELLS: Final = {True: to_phrase("the catalogue"), False: to_phrase("the survey")}
_NAMED: Final = 12
"""Marks that a cell names."""


def _some(marks: tuple[str, ...]) -> str:
    return ", ".join(marks[:_NAMED]) + (
        phrase(" and {count} more", count=len(marks) - _NAMED) if len(marks) > _NAMED else ""
    )


COLUMNS: Final[tuple[Column[MissingFact], ...]] = (
    Column("fact", to_phrase("Fact"), lambda fact: capital(kept_phrase(fact.label, GATE)), width=44),
    Column("openings", to_phrase("Openings"), lambda fact: fact.needed, _some, width=60),
    Column(
        "of",
        to_phrase("Told by"),
        lambda fact: phrase(_TELLS[fact.of_catalogue]),
        width=11,
    ),
    Column(
        "alone",
        to_phrase("Unblocks"),
        lambda fact: len(fact.alone),
        right=True,
        width=11,
        note=to_phrase("Openings that need this fact and nothing else."),
    ),
    Column("needed", to_phrase("Needed by"), lambda fact: len(fact.needed), right=True, width=12),
)


class MissingWindow(ToolWindow):
    """Fact, where it comes from, how many openings it unblocks, and which need it."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Missing facts"), parent)
        note = QLabel(
            phrase(
                "Unblocks: openings that need this fact and nothing else. Return or a double click shows the openings."
            )
        )
        note.setWordWrap(True)
        self.model = GridModel(Contents(COLUMNS, lambda fact: fact.fact), self)
        self.grid = Grid(self.model, "missing", phrase("Missing facts"), self._label, opens=True,
                         empty=phrase(NO_OPENINGS))  # fmt: skip
        self.grid.opened.connect(self.select)
        self.grid.said.connect(self.told.setText)
        self.paper = DropDown()
        self.paper.setAccessibleName(phrase("Paper of the return visit"))
        self.paper.addItem(phrase("Letter"), "letter")
        self.paper.addItem("A4", "a4")
        self.write = self.button(
            phrase("Write return visit…"),
            self.ask_folder,
            phrase("The sheet as PDF, and a workbook a building to be imported back"),
        )
        self.body.addWidget(note)
        self.body.addWidget(self.grid, 1)
        named = QLabel(phrase("Paper"))
        named.setBuddy(self.paper)
        self.foot.addWidget(named)
        self.foot.addWidget(self.paper)
        self.foot.addWidget(self.write)
        let_lead(self.write)
        self.follow()

    def follow(self) -> None:
        """Rank what is missing now."""
        checked = self.desk.workspace.checked.values()
        found = missing_facts((each.given.opening.mark, each.fit, each.findings) for each in checked)
        self.grid.table.empty = phrase("No fact is missing." if checked else NO_OPENINGS)
        self.model.load(found)
        waiting = sum(each.fit is None for each in checked)
        words = ""
        if waiting:
            words = phrase_of_count(
                "{count} opening is not worked out yet; what is needed shows after Fit.",
                "{count} openings are not worked out yet; what is needed shows after Fit.",
                waiting,
            )
        self.told.setText(words)
        self.enable()

    def enable(self) -> None:
        """Offer the visit where something is missing."""
        self.write.setEnabled(self.idle and self.model.total() > 0)

    def select(self, fact: str) -> None:
        """Select the openings that need a fact in the register."""
        found = self.model.contents.row_of(fact)
        marks = set(found.needed) if found is not None else set()
        checked = self.desk.workspace.checked
        self.desk.show_openings([id_ for id_, each in checked.items() if each.given.opening.mark in marks])

    def _label(self, fact: str) -> str:
        found = self.model.contents.row_of(fact)
        return kept_phrase(found.label, GATE) if found is not None else ""

    def ask_folder(self) -> None:
        """Ask for a folder and write the return visit into it."""
        folder = folder_to_write(self, phrase("Folder for the return visit"))
        if folder:
            self.write_visit(Path(folder))

    def write_visit(self, folder: Path) -> None:
        """Write sheet and workbooks."""
        project, paper = self.desk.workspace.project, str(self.paper.currentData())

        def work(_progress: Progress, _cancelled: Cancelled) -> list[Path]:
            from hwsched.operations.survey.return_visit import issue_return_visit

            return issue_return_visit(project, folder, paper=paper)

        def then(files: list[Path]) -> None:
            self.told.setText(
                phrase_of_count(
                    "{count} file written into {folder}",
                    "{count} files written into {folder}",
                    len(files),
                    folder=folder,
                )
            )

        self.run(phrase("Writing the return visit"), work, then, partial(of_files, folder=folder))

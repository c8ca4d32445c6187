"""Deliveries: what they left to be decided, each looked at whole, openings that rest, and where facts come from."""

from typing import Any, Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QSplitter, QWidget

from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.looks.moments import moment_said
from hwsched.desktop.survey.deciding_page import DecidingPage
from hwsched.desktop.widgets.buttons import let_lead
from hwsched.desktop.widgets.lines import Lines
from hwsched.desktop.widgets.tabs import TabbedPages
from hwsched.exchange.survey.facts import Decisions
from hwsched.kept_sentences import kept_error
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.model.project import Project
from hwsched.operations.project.history import newest
from hwsched.operations.survey.answering import answer_questions
from hwsched.operations.survey.deliveries import (
    Delivery,
    deliveries,
    lines_of_delivery,
    open_questions,
    take_back,
)
from hwsched.operations.survey.origins import origins
from hwsched.operations.survey.retiring import restore_openings, retired
from hwsched.quantities import LENGTH_STYLES, LengthStyle

_MOST: Final = 2000
"""Lines shown of a delivery; the rest is counted."""

_COUNTED: Final = {
    "new": to_phrase("{count} new"),
    "changed": to_phrase("{count} changed"),
    "unchanged": to_phrase("{count} unchanged"),
    "retired": to_phrase("{count} retired"),
    "restored": to_phrase("{count} restored"),
}
"""What became of openings of a delivery, by the word under which it is kept."""


def _counted(name: str, count: int) -> str:
    return phrase(_COUNTED[name], count=count) if name in _COUNTED else f"{count} {name}"


FILES: Final[tuple[Column[Delivery], ...]] = (
    Column("number", to_phrase("No."), lambda each: each.number, right=True, width=7),
    Column("file", to_phrase("File"), lambda each: each.file, width=34),
    Column("taken", to_phrase("Taken in"), lambda each: each.at, moment_said, width=22),
    Column("by", to_phrase("By"), lambda each: each.person, width=16),
    Column(
        "did",
        to_phrase("What it did"),
        lambda each: ", ".join(_counted(name, n) for name, n in each.counts.items() if n),
        width=40,
    ),
    Column("left", to_phrase("Left to decide"), lambda each: each.open or None, right=True, width=14),
)
RESTING: Final[tuple[Column[Any], ...]] = (
    Column("mark", to_phrase("Mark"), lambda each: each.mark, width=12),
    Column("building", to_phrase("Building"), lambda each: each.building, width=18),
    Column("level", to_phrase("Level"), lambda each: each.level, width=12),
    Column("why", to_phrase("Why"), lambda each: each.why, width=50),
)
ORIGINS: Final[tuple[Column[tuple[int, Any]], ...]] = (
    Column("where", to_phrase("Of"), lambda each: kept_error(each[1].where), width=22),
    Column("fact", to_phrase("Fact"), lambda each: each[1].label, phrase, width=28),
    Column("value", to_phrase("Value"), lambda each: each[1].shown, width=22),
    Column("said", to_phrase("From"), lambda each: each[1].said, width=60),
)


class DeliveriesWindow(ToolWindow):
    """Questions with their answers; files; retired openings; origin of the chosen opening's facts."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Deliveries"), parent)
        self.resize(1000, 560)
        self._base: int | None = None
        self._found: dict[str, Delivery] = {}
        self.pages = TabbedPages()
        self.deciding = DecidingPage((), Decisions())
        self.files = GridModel(Contents(FILES, lambda each: str(each.number)), self)
        self.list = Grid(
            self.files,
            "deliveries",
            phrase("Deliveries"),
            lambda number: phrase("delivery {number}", number=number),
            empty=phrase("No survey was taken in yet. Take in survey begins with a file."),
        )
        self.rows = Lines((phrase("Row by row"),), 0)
        self.rows.setAccessibleName(phrase("What the delivery did"))
        self.rows.empty.say(phrase("Choose a delivery: what it did stands here, row by row."))
        both = QSplitter(Qt.Orientation.Vertical)
        both.addWidget(self.list)
        both.addWidget(self.rows)
        self.retired = GridModel(Contents(RESTING, lambda each: each.id), self)
        self.resting = Grid(self.retired, "retired", phrase("Retired openings"), self._mark_of,
                            empty=phrase("No opening is retired."))  # fmt: skip
        self.facts = GridModel(Contents(ORIGINS, lambda each: str(each[0])), self)
        none = phrase("Choose an opening: where each of its facts came from stands here.")
        self.origins = Grid(self.facts, "origins", phrase("Origin of facts"), str, empty=none)
        self.pages.addTab(self.deciding, phrase("To decide"))
        self.pages.addTab(both, phrase("Files"))
        self.pages.addTab(self.resting, phrase("Retired openings"))
        self.pages.addTab(self.origins, phrase("Origin of facts"))
        self.answer = self.button(phrase("Answer"), self.answer_now, phrase("Write what was said here as one step"))
        self.back = self.button(
            phrase("Take back"),
            self.take_back,
            phrase("Take the chosen delivery back whole, with what was decided on it"),
        )
        self.bring = self.button(
            phrase("Bring back"), self.bring_back, phrase("Bring the chosen openings back as they were")
        )
        self.body.addWidget(self.pages)
        for button in (self.answer, self.back, self.bring):
            self.foot.addWidget(button)
        let_lead(self.answer)
        self.list.picked.connect(self._on_delivery)
        self.resting.picked.connect(self.enable)
        for each in (self.list, self.resting, self.origins):
            each.said.connect(self.told.setText)
        self.pages.currentChanged.connect(lambda _place: self.enable())
        self.follow()

    def follow(self) -> None:
        """Read all anew."""
        project = self.desk.workspace.project
        self._base = newest(project)
        questions = open_questions(project)
        page = DecidingPage(
            [(each.undecided, "ask") for each in questions],
            Decisions(),
            unsaid=phrase("left open"),
            style=_style(project),
        )
        page.said.connect(lambda _said: self.enable())
        self._replace(page, phrase("To decide {count}", count=len(questions)))
        self._found = {str(each.number): each for each in deliveries(project)}
        self.files.load(self._found.values())
        self._show_rows()
        resting = retired(project)
        self.retired.load(resting)
        self.pages.setTabText(2, phrase("Retired openings {count}", count=len(resting)))
        counted: dict[int, int] = {}
        for question in questions:
            counted[question.delivery] = counted.get(question.delivery, 0) + 1
        said = [
            phrase_of_count(
                "{count} question from delivery {number}", "{count} questions from delivery {number}", count, number=n
            )
            for n, count in counted.items()
        ]
        self.told.setText("; ".join(said))
        self._show_origins()
        self.enable()

    def enable(self) -> None:
        """Let what belongs to the page shown be done."""
        place = self.pages.currentIndex()
        if place == 3:
            self._show_origins()
        for button, at in ((self.answer, 0), (self.back, 1), (self.bring, 2)):
            button.setVisible(place == at)
        self.answer.setEnabled(self.idle and bool(self.deciding.decisions.answers))
        self.back.setEnabled(self.idle and bool(self.list.ids))
        self.bring.setEnabled(self.idle and bool(self.resting.ids))

    def answer_now(self) -> None:
        """Answer the questions of which something was said."""
        workspace, said = self.desk.workspace, self.deciding.decisions
        self.desk.edit_seen(
            lambda base: answer_questions(workspace.project, said, who=workspace.who, base=base).changes,
            self._base,
            self._after,
            asker=self,
        )

    def take_back(self) -> None:
        """Take the chosen delivery back."""
        workspace, number = self.desk.workspace, self._found[self.list.ids[0]].number
        self.desk.edit(lambda: take_back(workspace.project, number, who=workspace.who), self._after, asker=self)

    def bring_back(self) -> None:
        """Bring the chosen openings back."""
        workspace, ids = self.desk.workspace, list(self.resting.ids)
        self.desk.edit_seen(
            lambda base: restore_openings(workspace.project, ids, who=workspace.who, base=base),
            self._base,
            self._after,
            asker=self,
        )

    def _after(self, _done: Any) -> None:
        self.follow()

    def _replace(self, page: DecidingPage, title: str) -> None:
        held, shown = self.deciding, self.pages.currentIndex()
        self.deciding = page
        self.pages.removeTab(0)
        self.pages.insertTab(0, page, title)
        self.pages.setCurrentIndex(max(shown, 0))
        held.deleteLater()

    def _mark_of(self, opening: str) -> str:
        held = self.retired.contents.row_of(opening)
        return held.mark if held is not None else ""

    def _on_delivery(self) -> None:
        self._show_rows()
        self.enable()

    def _show_rows(self) -> None:
        """Show what the chosen delivery did, row by row."""
        chosen = [self._found[each] for each in self.list.ids if each in self._found]
        lines = lines_of_delivery(self.desk.workspace.project, chosen[0]) if chosen else []
        more = [phrase("and {count} more", count=len(lines) - _MOST)] if len(lines) > _MOST else []
        self.rows.show_rows([(line,) for line in (*lines[:_MOST], *more)])

    def _show_origins(self) -> None:
        chosen = self.desk.chosen()
        shown = self.pages.currentIndex() == 3 and bool(chosen)
        self.facts.load(enumerate(origins(self.desk.workspace.project, chosen[0])) if shown else ())


def _style(project: Project) -> LengthStyle:
    return next((each for each in LENGTH_STYLES if each == project.length_style), "fraction")

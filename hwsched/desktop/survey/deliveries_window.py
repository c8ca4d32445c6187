"""Deliveries: what they left to be decided, each looked at whole, openings that rest, and where facts come from."""

from typing import Any, Final

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHeaderView, QSplitter, QTabWidget, QTreeWidget, QTreeWidgetItem, QWidget

from hwsched.desktop.side_place import SidePlace
from hwsched.desktop.survey.deciding_page import DecidingPage
from hwsched.desktop.tool_window import Desk, ToolWindow
from hwsched.exchange.survey.facts import Decisions
from hwsched.model.project import Project
from hwsched.model.time_zone import second_of
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

_ID: Final = int(Qt.ItemDataRole.UserRole)
_MOST: Final = 2000
"""Lines shown of a delivery; the rest is counted."""


class DeliveriesWindow(ToolWindow):
    """Questions with their answers; files; retired openings; origin of the chosen opening's facts."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, "Deliveries", parent)
        self.resize(1000, 560)
        self._base: int | None = None
        self._found: dict[int, Delivery] = {}
        self.pages = QTabWidget()
        self.deciding = DecidingPage((), Decisions())
        self.list = _tree("Deliveries", "No.", "File", "Taken in", "By", "What it did", "Left")
        self.rows = _tree("What the delivery did", "Row by row")
        both = QSplitter(Qt.Orientation.Vertical)
        both.addWidget(self.list)
        both.addWidget(self.rows)
        self.resting = _tree("Retired openings", "Mark", "Building", "Level", "Why")
        self.origins = _tree("Origin of facts", "Of", "Fact", "Value", "From")
        self.pages.addTab(self.deciding, "To decide")
        self.pages.addTab(both, "Files")
        self.pages.addTab(self.resting, "Retired openings")
        self.pages.addTab(self.origins, "Origin of facts")
        self.answer = self.button("Answer", self.answer_now, "Write what was said here as one step")
        self.back = self.button(
            "Take back", self.take_back, "Take the chosen delivery back whole, with what was decided on it"
        )
        self.bring = self.button("Bring back", self.bring_back, "Bring the chosen openings back as they were")
        self.body.addWidget(self.pages)
        for button in (self.answer, self.back, self.bring):
            self.foot.addWidget(button)
        self.list.itemSelectionChanged.connect(self._on_delivery)
        self.resting.setSelectionMode(QTreeWidget.SelectionMode.ExtendedSelection)
        self.resting.itemSelectionChanged.connect(self.enable)
        self.pages.currentChanged.connect(lambda _place: self.enable())
        self.follow()

    def follow(self) -> None:
        """Read all anew."""
        project = self.desk.workspace.project
        self._base = newest(project)
        questions = open_questions(project)
        page = DecidingPage(
            [(each.undecided, "ask") for each in questions], Decisions(), unsaid="left open", style=_style(project)
        )
        page.said.connect(lambda _said: self.enable())
        self._replace(page, f"To decide ({len(questions)})")
        self.list.clear()
        self.rows.clear()
        self._found = {each.number: each for each in deliveries(project)}
        for each in self._found.values():
            counts = ", ".join(f"{count} {name}" for name, count in each.counts.items() if count)
            words = [str(each.number), each.file, second_of(each.at), each.person, counts, str(each.open or "")]
            item = QTreeWidgetItem(self.list, words)
            item.setData(0, _ID, each.number)
        self.resting.clear()
        resting = retired(project)
        for held in resting:
            QTreeWidgetItem(self.resting, [held.mark, held.building or "", held.level or "", held.why]).setData(
                0, _ID, held.id
            )
        self.pages.setTabText(2, f"Retired openings ({len(resting)})")
        counted: dict[int, int] = {}
        for question in questions:
            counted[question.delivery] = counted.get(question.delivery, 0) + 1
        said = [f"{count} question{'s' if count > 1 else ''} from delivery {n}" for n, count in counted.items()]
        self.told.setText("; ".join(said) or "Nothing is left to be decided.")
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
        self.back.setEnabled(self.idle and bool(self.list.selectedItems()))
        self.bring.setEnabled(self.idle and bool(self.resting.selectedItems()))

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
        workspace, number = self.desk.workspace, self.list.selectedItems()[0].data(0, _ID)
        self.desk.edit(lambda: take_back(workspace.project, number, who=workspace.who), self._after, asker=self)

    def bring_back(self) -> None:
        """Bring the chosen openings back."""
        workspace, ids = self.desk.workspace, [str(each.data(0, _ID)) for each in self.resting.selectedItems()]
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

    def _on_delivery(self) -> None:
        self.rows.clear()
        chosen = self.list.selectedItems()
        if chosen:
            lines = lines_of_delivery(self.desk.workspace.project, self._found[chosen[0].data(0, _ID)])
            for line in lines[:_MOST]:
                QTreeWidgetItem(self.rows, [line]).setToolTip(0, line)
            if len(lines) > _MOST:
                QTreeWidgetItem(self.rows, [f"and {len(lines) - _MOST} more"])
        self.enable()

    def _show_origins(self) -> None:
        self.origins.clear()
        chosen = self.desk.chosen()
        if self.pages.currentIndex() != 3 or not chosen:
            return
        for each in origins(self.desk.workspace.project, chosen[0]):
            QTreeWidgetItem(self.origins, [each.where, each.label, each.shown, each.said]).setToolTip(3, each.said)


def _style(project: Project) -> LengthStyle:
    return next((each for each in LENGTH_STYLES if each == project.length_style), "fraction")


def _tree(name: str, *columns: str) -> QTreeWidget:
    tree = QTreeWidget()
    tree.setAccessibleName(name)
    tree.setHeaderLabels(list(columns))
    tree.setRootIsDecorated(False)
    tree.setAlternatingRowColors(True)
    tree.header().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
    return tree


DELIVERIES = SidePlace(
    "deliveries",
    "Deliveries",
    "Survey files taken in, what they left to decide, retired openings",
    DeliveriesWindow,
    within="survey",
)

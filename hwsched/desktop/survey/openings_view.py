"""The register on the screen: search, state and place narrow it; what is selected in it is selected for all."""

from collections.abc import Iterable, Sequence
from typing import Final

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.proposals import Reading
from hwsched.desktop.grid.query_line import Besides
from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.opening.earlier_line import EarlierLine
from hwsched.desktop.project.project_state import ProjectState
from hwsched.desktop.survey.ahead import Ahead
from hwsched.desktop.survey.building_tree import BuildingTree
from hwsched.desktop.survey.narrowing import Narrowing
from hwsched.desktop.survey.questions_line import QuestionsLine
from hwsched.desktop.survey.register import STATES, Register
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.empty import NO_OPENINGS
from hwsched.desktop.widgets.found_by_key import found_by_key
from hwsched.language import phrase, phrase_of_count
from hwsched.values import OpeningInput

_NAMED: Final = 8
"""Marks that a line names."""


class OpeningsView(QWidget):
    """All openings as a grid, with what narrows it above; the tree of places is put beside it by the window.

    Parameters
    ----------
    state : ProjectState
        Followed, and told what is selected.
    """

    edited = Signal(object, object)
    """Cells were edited: a list of FactEdit, and the newest step when the person saw what they change."""
    said = Signal(str)
    """A sentence for the person."""

    def __init__(self, state: ProjectState, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._shared = state
        self.register = Register(self)
        self.grid = Grid(self.register, "openings", phrase("Openings"), self._mark_of)
        self.table = self.grid.table
        self.places = BuildingTree()
        self.earlier = EarlierLine()
        self.questions = QuestionsLine()
        self.narrowing = Narrowing(state, self.grid, self.register, self._place_said)
        self.ask = self.narrowing.line
        self.search = self.ask.line
        found_by_key(self, self.search)
        self.state = DropDown()
        self.state.setAccessibleName(phrase("State"))
        self.state.addItem(phrase("Any state"), "")
        for word in STATES:
            self.state.addItem(phrase(word), word)
        self.count = QLabel()
        self.left = QLabel()
        self.left.setWordWrap(True)
        self.left.hide()
        self.ask.bar.addWidget(self.state)
        self.ask.bar.addWidget(self.count)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE.hair, 0, SPACE.hair, 0)
        layout.addWidget(self.earlier)
        layout.addWidget(self.questions)
        layout.addWidget(self.ask)
        layout.addWidget(self.narrowing.views)
        layout.addWidget(self.left)
        layout.addWidget(self.grid, 1)
        self.state.currentIndexChanged.connect(lambda _index: self.register.narrow(state=self.state.currentData()))
        self.places.chosen.connect(lambda place: self.register.narrow(place=place))
        self.grid.picked.connect(self._on_picked)
        self.grid.moved.connect(self._on_moved)
        self.grid.changed.connect(self._show_count)
        self.grid.edits.seen = self._seen_of
        self.grid.edited.connect(self.edited)
        self.grid.said.connect(self.said)
        state.opened.connect(self._on_opened)
        state.ahead.connect(self._on_ahead)
        state.reloaded.connect(self._on_reloaded)
        state.touched.connect(self._on_touched)

    def select_openings(self, ids: Sequence[str]) -> None:
        """Select openings; where some are narrowed away, all are shown."""
        if any(self.register.row_of_id(each) is None for each in ids):
            self._show_all()
        self.grid.select(ids)
        self._on_picked()

    def select_one(self, opening: str | None) -> None:
        """Select one opening; the first where it is not shown."""
        shown = opening is not None and self.register.row_of_id(opening) is not None
        first = opening if shown else next(iter(self.register.shown_ids()), None)
        self.grid.select((first,) if first is not None else (), first)
        self._on_picked()

    def _show_all(self) -> None:
        for box in (self.state, self.places):
            box.blockSignals(True)
        self.state.setCurrentIndex(0)
        root = self.places.topLevelItem(0)
        if root is not None:
            self.places.setCurrentItem(root)
        for box in (self.state, self.places):
            box.blockSignals(False)
        self.narrowing.ask_nothing()
        self.register.narrow(words="", state="", place=None, query=None)

    def _place_said(self) -> Besides | None:
        place = self.register.place
        if place is None:
            return None
        building, level = place
        return Besides(f"{building or phrase('no building')}{f', {level}' if level else ''}", self._show_all_places)

    def _show_all_places(self) -> None:
        root = self.places.topLevelItem(0)
        if root is not None:
            self.places.setCurrentItem(root)

    def _on_opened(self) -> None:
        """Begin with nothing selected and nothing narrowed: that was of the project before."""
        self.grid.wanted, self.grid.current = (), None
        self.places.clear()
        self._ahead = True
        self.grid.table.empty = phrase("Reading the project…")
        self._show_all()

    _ahead = False
    """Whether what is shown is not judged yet: what is selected of it is told once it is."""

    def _on_ahead(self, openings: Sequence[OpeningInput]) -> None:
        """Show openings as they stand in the survey: they are looked at and found while they are judged."""
        self._take_beside()
        if not openings:
            self.grid.table.empty = phrase("The project was not read to its end; open it again.")
        self.register.load(map(Ahead.read, openings))

    def _say_left(self) -> None:
        """Say which of the selected openings are not in view: commands leave those alone."""
        marks = [self._mark_of(each) for each in self.grid.gone]
        if not marks:
            words = ""
        elif len(marks) == 1:
            words = phrase("{marks} is selected and not in this view: commands leave it alone.", marks=marks[0])
        else:
            named = ", ".join(marks[:_NAMED]) + (
                phrase(" and {count} more", count=len(marks) - _NAMED) if len(marks) > _NAMED else ""
            )
            words = phrase(
                "{count} selected openings are not in this view, and commands leave them alone: {named}.",
                count=len(marks),
                named=named,
            )
        self.left.setText(words)
        self.left.setVisible(bool(words))

    def _mark_of(self, opening: str) -> str:
        row = self.register.contents.row_of(opening)
        return row.given.opening.mark if row is not None else ""

    def _on_reloaded(self) -> None:
        workspace = self._shared.workspace
        if workspace is None or self.grid.put_off(self._on_reloaded):
            return
        checked, before = list(workspace.checked.values()), self._shared.chosen
        if self._ahead:
            self._ahead, before = False, self.grid.current
        self.grid.table.empty = phrase(NO_OPENINGS)
        self._take_beside()
        self.grid.wanted = tuple(each for each in self.grid.wanted if each in workspace.checked)
        self.register.load(checked)
        self.narrowing.take_project()
        self._show_earlier()
        self._show_places()
        if before in self.grid.wanted:
            # What is selected stays so, be it of several and be some of it out of view.
            self._shared.select(self.grid.ids, before)
        else:
            self.select_one(before)

    def _on_touched(self, ids: frozenset[str]) -> None:
        workspace = self._shared.workspace
        if workspace is not None:
            self._take_beside()
            self.register.renew(workspace.checked[each] for each in ids if each in workspace.checked)
            self._show_earlier()
            if not self.grid.put_off(self._show_places):
                self._show_places()

    def _show_places(self) -> None:
        """Show where openings stand; where none stands any more in the place that was chosen, all are shown."""
        workspace = self._shared.workspace
        if workspace is not None:
            self.places.show_places(workspace.project.title, list(workspace.checked.values()), workspace.levels)

    def _take_beside(self) -> None:
        """Take over what columns show beside the openings, and how texts are read."""
        workspace, beside = self._shared.workspace, self.register.beside
        if workspace is not None:
            beside.sets, beside.levels, beside.style = workspace.sets, workspace.levels, self._shared.style_of_lengths
            self.grid.reading = Reading(workspace.project.bare_unit, self._shared.style_of_lengths)

    def _show_earlier(self) -> None:
        workspace = self._shared.workspace
        checked = workspace.checked.values() if workspace is not None else ()
        self.earlier.show_count(sum(each.standing == "earlier-version" for each in checked))
        self.questions.show_counts(workspace.questions if workspace is not None else {})

    def _show_count(self) -> None:
        shown, total = len(self.register.contents.shown_ids()), self.register.total()
        text = (
            phrase_of_count("{total} opening", "{total} openings", total, total=total)
            if shown == total
            else phrase("{shown} of {total}", shown=shown, total=total)
        )
        if total == 0:
            text = ""
        self.count.setText(text)

    def _on_picked(self) -> None:
        if self._ahead:
            return
        self._shared.select(self.grid.ids, self.grid.current)
        self._say_left()

    def _on_moved(self) -> None:
        if self._ahead:
            return
        self._shared.reorder(self.grid.ids)
        self._say_left()

    def _seen_of(self, ids: Iterable[str]) -> int | None:
        """Return the newest step when the first of some openings was read: what all of them were seen at."""
        seen = [base for each in ids if (base := self._shared.seen_of(each)) is not None]
        return min(seen, default=None)

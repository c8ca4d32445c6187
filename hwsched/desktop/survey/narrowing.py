"""What narrows the register: the query line, the state, values of columns, the place, and views kept under names."""

from collections.abc import Callable
from functools import partial

from PySide6.QtCore import QObject

from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.kept_views import COMMON, KeptViews
from hwsched.desktop.grid.query_line import Besides, QueryLine
from hwsched.desktop.grid.remembering import KeptView, keep_views, views_of
from hwsched.desktop.project.project_state import ProjectState
from hwsched.desktop.survey.askable_names import askable_in
from hwsched.desktop.survey.register import Register
from hwsched.language import phrase
from hwsched.query import Askable

_NAMED = 3
"""Values that a chip names."""


class Narrowing(QObject):
    """The query line and the views over the register.

    Parameters
    ----------
    state : ProjectState
        The open project.
    grid : Grid
        Of the register.
    place_said : callable
        Returns how the place is called that narrows it, and what shows all places again; None where none does.
    """

    def __init__(
        self, state: ProjectState, grid: Grid, register: Register, place_said: Callable[[], Besides | None]
    ) -> None:
        super().__init__(grid)
        self._shared, self._grid, self._register, self._place_said = state, grid, register, place_said
        self.line = QueryLine(phrase("Find, or ask: rating = 90"))
        self.line.askable = self.askable
        self.views = KeptViews(tuple(COMMON))
        self._askable = Askable()
        self._showing = False
        self.line.asked.connect(
            lambda found: register.narrow(words=found.words.strip() and found.words, query=found.query)
        )
        self.line.done.connect(grid.table.setFocus)
        grid.changed.connect(self._on_changed)
        self.views.chosen.connect(self.show_view)
        self.views.kept.connect(self._keep)
        self.views.forgotten.connect(self._forget)

    def askable(self) -> Askable:
        """Return what can be asked for in the open project."""
        return self._askable

    def take_project(self) -> None:
        """Offer the names of the open project, and the views that are kept of it."""
        workspace = self._shared.workspace
        if workspace is None:
            return
        self._askable = askable_in(workspace)
        self.views.show_views(tuple(views_of(workspace.project.id)), self._present())

    def ask_nothing(self) -> None:
        """Show all openings."""
        self._register.contents.filters.clear()
        self._register.contents.folded.clear()
        self.line.ask("")

    def show_view(self, name: str) -> None:
        """Show what a view of that name asks for; a kept one brings its columns and their order."""
        workspace = self._shared.workspace
        view = views_of(workspace.project.id).get(name) if workspace is not None else None
        self._showing = True
        contents = self._register.contents
        contents.filters.clear()
        if view is not None:
            for column, said in view.filters.items():
                if column in contents.known:
                    values = {each for each in contents.values(column) if contents.known[column].said(each) in said}
                    contents.filters[column] = frozenset(values)
            self._grid.lay_as(view.arrangement)
        self.line.ask(view.asked if view is not None else COMMON.get(name, ""))
        self._register.narrow()
        self._showing = False
        self._on_changed()
        self.views.mark(name)

    def _present(self) -> str:
        """Return the common view that asks for what is asked for; empty where it is none."""
        if self._register.contents.filters:
            return ""
        return next((name for name, query in COMMON.items() if query == self.line.line.text().strip()), "")

    def _on_changed(self) -> None:
        if self._showing:
            return
        contents, besides = self._register.contents, []
        for name, values in contents.filters.items():
            column = contents.known[name]
            said = sorted(map(column.said, values))
            more = phrase(" and {count} more", count=len(said) - _NAMED) if len(said) > _NAMED else ""
            told = f"{phrase(column.title)}: {', '.join(said[:_NAMED])}{more}"
            besides.append(Besides(told, partial(self._register.allow, name, None)))
        place = self._place_said()
        self.line.show_besides([*besides, *([place] if place is not None else [])])
        self.views.mark(self._present())

    def _keep(self, name: str) -> None:
        workspace, contents = self._shared.workspace, self._register.contents
        if workspace is None:
            return
        filters = {
            column: tuple(sorted(contents.known[column].said(each) for each in values))
            for column, values in contents.filters.items()
        }
        views = views_of(workspace.project.id)
        views[name] = KeptView(self.line.line.text(), contents.arrangement, filters)
        keep_views(workspace.project.id, views)
        self.views.show_views(tuple(views), name)

    def _forget(self, name: str) -> None:
        workspace = self._shared.workspace
        if workspace is not None:
            views = views_of(workspace.project.id)
            views.pop(name, None)
            keep_views(workspace.project.id, views)
            self.views.show_views(tuple(views), self._present())

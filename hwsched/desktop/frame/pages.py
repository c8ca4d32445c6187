"""The pages of the window: which places there are, the widget of each that was gone to, and when it is closed.

Here belongs what is kept of a place. Where a person is stands in `trail`, how a page is shown in `centre`.
"""

from collections.abc import Sequence

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QWidget
from shiboken6 import isValid

from hwsched.desktop.frame.place import Place
from hwsched.desktop.frame.tool_window import Desk, ToolWindow


class Pages(QObject):
    """At most one page of each place; those that are made of the desk are closed with their project.

    Parameters
    ----------
    frame : Frame
        Given to what makes a page.
    places : sequence of Place
        All that can be gone to.
    """

    made = Signal(str)
    """A page was made, of the place of this name."""
    closed = Signal(str)
    """A page was closed."""

    def __init__(self, frame: QObject, places: Sequence[Place]) -> None:
        super().__init__(frame)
        self._frame = frame
        self.places = {each.name: each for each in places}
        self.desk: Desk | None = None
        """What a page may see and do of the window; None while no project is open."""
        self.widgets: dict[str, QWidget] = {}

    @property
    def windows(self) -> dict[type[QWidget], QWidget]:
        """The pages that are made of the desk, by their kind."""
        return {type(each): each for each in self.widgets.values() if isinstance(each, ToolWindow)}

    def need_desk(self) -> Desk:
        """Return the desk, for a page that is only gone to while a project is open.

        Raises
        ------
        RuntimeError
            While none is.
        """
        if self.desk is None:
            raise RuntimeError("no project is open")
        return self.desk

    def can_go(self, name: str) -> bool:
        """Tell whether a place can be shown at present."""
        return self.places[name].needs in ("nothing", "no job") or self.desk is not None

    def resolved(self, name: str) -> Place:
        """Return the place whose page is shown for a name: for a room without one, its first page."""
        place = self.places[name]
        return place if place.make is not None else next(each for each in self.of_room(name) if each.make is not None)

    def room(self, name: str) -> str:
        """Return the place on the rail to which a place belongs; empty where it belongs to none."""
        place = self.places[name]
        return place.name if place.rail else place.within

    def of_room(self, name: str) -> list[Place]:
        """Return a place on the rail and its pages, in order; of no room: none."""
        return [each for each in self.places.values() if name and name in (each.name, each.within)]

    def page(self, name: str) -> QWidget:
        """Return the widget of a place; made where it is not there yet."""
        held = self.widgets.get(name)
        if held is not None and isValid(held):
            return held
        place = self.places[name]
        assert place.make is not None, name
        made = place.make(self._frame)
        self.widgets[name] = made
        if isinstance(made, ToolWindow):
            made.finished.connect(lambda: self._forget(name, made))
        self.made.emit(name)
        return made

    def close_page(self, name: str) -> None:
        """Close the page of a place."""
        held = self.widgets.get(name)
        if held is not None and isValid(held):
            held.close()
            if not isinstance(held, ToolWindow):
                self._forget(name, held)
                held.deleteLater()

    def close(self) -> None:
        """Close all pages that are made of the desk."""
        for name, each in list(self.widgets.items()):
            if isinstance(each, ToolWindow):
                each.close()
                self._forget(name, each)

    def _forget(self, name: str, page: QWidget) -> None:
        if self.widgets.get(name) is page:
            del self.widgets[name]
            self.closed.emit(name)

"""The menu of the projects that were open lately."""

from functools import partial
from pathlib import Path

from PySide6.QtCore import QObject, Signal
from PySide6.QtWidgets import QMenu

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.menus import Menus
from hwsched.language import phrase


class RecentMenu(QObject):
    """A menu within another one, filled as it is opened.

    Parameters
    ----------
    menus : Menus
        It stands in the menu of the project, behind opening one.
    frame : Frame
        Whose preferences tell the projects; none can be opened while a job is running.
    """

    wanted = Signal(str)
    """A project, by its file or address."""

    def __init__(self, menus: Menus, frame: Frame) -> None:
        within = menus.menus["Project"]
        super().__init__(within)
        self._frame = frame
        self.menu = QMenu(phrase("Open recent"), within)
        menus.insert("Project", "open-project", self.menu)
        self.menu.aboutToShow.connect(self._fill)
        frame.possible.connect(self._enable)
        frame.preferences.changed.connect(lambda _name: self._enable())
        self._enable()

    def _enable(self) -> None:
        self.menu.setEnabled(bool(self._frame.preferences.recent) and not self._frame.jobs.busy)

    def _fill(self) -> None:
        self.menu.clear()
        for target in self._frame.preferences.recent:
            place = Path(target)
            act = self.menu.addAction(f"{place.stem}   {place.parent}" if "://" not in target else target)
            act.setToolTip(target)
            act.triggered.connect(partial(self._want, target))

    def _want(self, target: str, _checked: bool = False) -> None:
        if "://" not in target and not Path(target).exists():
            self._frame.preferences.forget(target)
            self._frame.say(phrase("{target} is there no more", target=target))
            return
        self.wanted.emit(target)

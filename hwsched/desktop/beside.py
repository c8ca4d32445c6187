"""Windows beside the main one that only show themselves: one file each, one line below; menu and action follow.

A window that is told what to show, or is asked for elsewhere too, is shown by its subject instead.
"""

from functools import partial
from typing import Final

from PySide6.QtGui import QAction

from hwsched.desktop.frame import Frame
from hwsched.desktop.side_place import SidePlace
from hwsched.desktop.subject import Subject
from hwsched.family import imported

# Their order is that of the menu.
from hwsched.desktop.survey.deliveries_window import DELIVERIES
from hwsched.desktop.parts.sets_window import SETS
from hwsched.desktop.parts.fewest_window import FEWEST
from hwsched.desktop.parts.cost_window import COST
from hwsched.desktop.release.gate_window import GATE
from hwsched.desktop.release.transmittals_window import TRANSMITTALS_PLACE
from hwsched.desktop.release.office_window import OFFICE_PLACE
from hwsched.desktop.project.copies_window import COPIES
from hwsched.desktop.project.journal_window import JOURNAL

SIDE_PLACES: Final = imported(globals(), SidePlace)


class BesideActions(Subject):
    """An action for every window of the family, by its name."""

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self.acts: dict[str, QAction] = {}
        for place in SIDE_PLACES:
            show = partial(self.show_place, place)
            self.acts[place.name] = self.action(place.title, place.tip, show, place.needs)

    def show_place(self, place: SidePlace) -> None:
        """Show the window of a place."""
        window = self.frame.side.show(place.window, lambda desk: place.window(desk, self.frame.window))
        if window is not None and place.shown is not None:
            place.shown(window)

"""Power in the main window: the way to the place for it."""

from collections.abc import Sequence

from PySide6.QtGui import QAction

from hwsched.desktop.frame import Frame
from hwsched.desktop.power.power_window import PowerWindow
from hwsched.desktop.subject import Subject


class PowerActions(Subject):
    """Supplies, circuits and what hangs there.

    Parameters
    ----------
    frame : Frame
        Open project, jobs, edits, telling.
    there_too : sequence of QAction
        Actions of the main window whose keys work in the place for power too.
    """

    def __init__(self, frame: Frame, there_too: Sequence[QAction]) -> None:
        super().__init__(frame)
        self._there_too = list(there_too)
        self.act_power = self.action(
            "Supplies and circuits", "Lay them, see volts, site supplies", self.show_power, "project", "Ctrl+Shift+P"
        )

    def show_power(self) -> None:
        """Show supplies and circuits."""
        window = self.frame.side.show(PowerWindow, lambda desk: PowerWindow(desk, self.frame.window))
        if window is not None:
            window.addActions(self._there_too)

"""Leaving the project or the window: what is running is asked to stop, and the screen does not wait for it."""

from collections.abc import Callable

from PySide6.QtCore import QObject, Signal

from hwsched.desktop.frame.frame import Frame
from hwsched.language import phrase


class Leaving(QObject):
    """Closes the project, at once or as soon as what is running has stopped.

    Parameters
    ----------
    frame : Frame
        Whose project it is.
    """

    left = Signal()
    """The project was closed, and the window stays."""

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self._frame = frame
        self._again: Callable[[], object] | None = None
        frame.following.may_close.connect(self._go_on)

    def close_project(self) -> None:
        """Close the project and go back to where one begins."""
        if self.close(self.close_project):
            self.left.emit()
            self._frame.possible.emit()

    def close(self, again: Callable[[], object]) -> bool:
        """Close the project; where something is still running, `again` is called once that has stopped.

        Returns
        -------
        bool
            Whether it is closed; not where there is something to tell first, either.
        """
        self._again = None
        if self._frame.close():
            return True
        if self._frame.following.closing:
            self._again = again
            ran = self._frame.jobs.log.running
            what = f": {ran.title}" if ran is not None else ""
            self._frame.say(phrase("Stopping{what}. It is closed as soon as it can be.", what=what), 0)
        return False

    def _go_on(self) -> None:
        again, self._again = self._again, None
        if again is not None:
            again()

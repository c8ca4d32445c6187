"""What jobs came to: kept to be read after they ended, the latest first. No widgets.

Here belongs what is remembered of a job. How one is run stands in `jobs`, how it is shown in `drawer`.
"""

from typing import Final

from PySide6.QtCore import QObject, Signal

from hwsched.desktop.jobs.ran import Ran

_MOST: Final = 50


class JobLog(QObject):
    """The jobs of this session."""

    changed = Signal()
    """A job began, went on or ended."""
    ended = Signal(object)
    """A Ran that is over."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.entries: list[Ran] = []
        """The latest first."""

    def begin(self, ran: Ran) -> None:
        """Remember a job that begins."""
        self.entries.insert(0, ran)
        del self.entries[_MOST:]
        self.changed.emit()

    def go_on(self, _ran: Ran) -> None:
        """Tell that a job went on."""
        self.changed.emit()

    def end(self, ran: Ran) -> None:
        """Tell that a job is over."""
        self.changed.emit()
        self.ended.emit(ran)

    @property
    def running(self) -> Ran | None:
        """The job that is running."""
        return next((each for each in self.entries if each.outcome == "running"), None)

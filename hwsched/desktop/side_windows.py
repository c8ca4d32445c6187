"""The windows beside the main one: at most one of each kind, on the project that is open."""

from collections.abc import Callable
from typing import TypeVar

from PySide6.QtCore import QObject

from hwsched.desktop.tool_window import Desk, ToolWindow

Tool = TypeVar("Tool", bound=ToolWindow)


class SideWindows(QObject):
    """Shows them, and closes them with the project."""

    def __init__(self, parent: QObject) -> None:
        super().__init__(parent)
        self.desk: Desk | None = None
        """What they may see and do; None while no project is open."""
        self.windows: dict[type[ToolWindow], ToolWindow] = {}

    def show(self, kind: type[Tool], make: Callable[[Desk], Tool]) -> Tool | None:
        """Show a window: the one that is open already, or a new one; none while no project is open."""
        if self.desk is None:
            return None
        held = self.windows.get(kind)
        if not isinstance(held, kind):
            held = make(self.desk)
            held.finished.connect(lambda: self._forget(kind))
            self.windows[kind] = held
        held.show()
        held.raise_()
        held.activateWindow()
        return held

    def close(self) -> None:
        """Close all of them."""
        for each in list(self.windows.values()):
            each.close()
        self.windows.clear()

    def _forget(self, kind: type[ToolWindow]) -> None:
        self.windows.pop(kind, None)

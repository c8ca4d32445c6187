"""Lets a pane give the keyboard back to where it came from: once hidden it would go to whatever Tab goes to next."""

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QApplication, QWidget
from shiboken6 import isValid


class GivingBack(QObject):
    """Notes who has the keyboard when a pane is shown, and gives it back when the pane is hidden with it.

    Parameters
    ----------
    pane : QWidget
        Comes and goes beside what one works in.
    """

    def __init__(self, pane: QWidget) -> None:
        super().__init__(pane)
        self._pane = pane
        self._before: QWidget | None = None
        pane.installEventFilter(self)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Note and give back; nothing is kept from the pane."""
        if watched is self._pane and event.type() in (QEvent.Type.Show, QEvent.Type.Hide):
            now = QApplication.focusWidget()
            inside = now is not None and self._pane.isAncestorOf(now)
            if event.type() == QEvent.Type.Show and not inside:
                self._before = now
            elif event.type() == QEvent.Type.Hide and inside and self._pane.isHidden():
                before = self._before
                if before is not None and isValid(before) and before.isVisible() and before.isEnabled():
                    before.setFocus(Qt.FocusReason.OtherFocusReason)
        return super().eventFilter(watched, event)

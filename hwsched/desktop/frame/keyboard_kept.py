"""The keyboard stays where one works: a button that is switched off while it has it sends it on, as far as the rail.

Here belongs what becomes of the keyboard when what had it is switched off or hidden; which part of a page has it first
belongs to the page.
"""

from collections.abc import Callable, Iterator, Sequence
from functools import partial
from typing import Final

from PySide6.QtCore import QObject, QPoint, Qt, QTimer
from PySide6.QtWidgets import QApplication, QWidget
from shiboken6 import isValid

from hwsched.desktop.jobs.jobs import Jobs

_BEGINS: Final = "page begins here"


def first_reached(page: QWidget) -> QWidget | None:
    """Return what has the keyboard first on a page: its list, where it says so, else what stands first to the eye."""
    found = list(_by_tab(page))
    first = next((each for each in found if each.property(_BEGINS)), None)
    return first or min(found, key=partial(_as_read, page), default=None)


def begins_here(widget: QWidget) -> None:
    """Let a page begin with its list, whatever stands before it; Tab comes to all of it as before."""
    widget.setProperty(_BEGINS, True)


def _as_read(page: QWidget, widget: QWidget) -> tuple[int, int]:
    """Return the place of a widget by which it is read: from above, then from the left."""
    at = widget.mapTo(page, QPoint(0, 0))
    return at.y(), at.x()


def _by_tab(page: QWidget) -> Iterator[QWidget]:
    """Return what Tab reaches inside a page.

    Not by the chain of the focus: what Python holds of the widgets that are met there would go with the page.
    """
    for each in (page, *page.findChildren(QWidget)):
        if each.focusPolicy() & Qt.FocusPolicy.TabFocus and each.isEnabled() and each.isVisibleTo(page):
            yield each


class KeyboardKept(QObject):
    """Watches where the toolkit sends the keyboard.

    Parameters
    ----------
    homes : callable
        Returns the parts of the window that keep it: the page that is shown, what stands beside it.
    jobs : Jobs
        What a button began is over when they end: then it has the keyboard again.
    """

    def __init__(self, homes: Callable[[], Sequence[QWidget | None]], jobs: Jobs, parent: QObject) -> None:
        super().__init__(parent)
        self._homes = homes
        self._left: QWidget | None = None
        self._put: QWidget | None = None
        self._placing = False
        application = QApplication.instance()
        assert isinstance(application, QApplication)
        application.focusChanged.connect(self._on_moved)
        jobs.ended.connect(self._on_ended)

    def _on_moved(self, left: QWidget | None, come: QWidget | None) -> None:
        if left is None or come is None or self._placing or not isValid(left):
            return
        home = next((each for each in self._homes() if each is not None and each.isAncestorOf(left)), None)
        if home is not None:
            # Not at once: what is being hidden may still be seen, and others may be switched off after it.
            QTimer.singleShot(0, self, partial(self._judge, left, come, home, off=_is_off(left)))

    def _judge(self, left: QWidget, come: QWidget, home: QWidget, *, off: bool) -> None:
        if _is_off(home) or (not off and isValid(left) and left.isVisible()):
            # It went with its page, or the person goes on by their own will.
            self._left = None
            return
        # What the person pressed, and not the fields that are switched off after it.
        self._left = self._left or left
        if not isValid(come) or QApplication.focusWidget() is not come:
            return
        self._put = come
        if not home.isAncestorOf(come):
            first = first_reached(home)
            if first is not None:
                self._place(first)
                self._put = first

    def _on_ended(self) -> None:
        # What a job came to is shown first, and may switch the button off once more; where the keyboard went by that
        # is judged before.
        QTimer.singleShot(0, self, lambda: QTimer.singleShot(0, self, self._give_back))

    def _give_back(self) -> None:
        left, put, self._left, self._put = self._left, self._put, None, None
        if left is not None and not _is_off(left) and QApplication.focusWidget() is put:
            self._place(left)

    def _place(self, widget: QWidget) -> None:
        self._placing = True
        try:
            widget.setFocus(Qt.FocusReason.OtherFocusReason)
        finally:
            self._placing = False


def _is_off(widget: QWidget) -> bool:
    """Tell whether a widget is gone, hidden or switched off."""
    return not isValid(widget) or not (widget.isEnabled() and widget.isVisible())

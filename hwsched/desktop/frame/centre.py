"""The middle of the window: the page of the place where a person is, with the tabs of its room above.

A page can be torn off into a window of its own, for a second screen; closing that window brings it back.
"""

from typing import Final

from PySide6.QtCore import QPoint, Qt, Signal
from PySide6.QtGui import QCloseEvent
from PySide6.QtWidgets import (
    QApplication,
    QFrame,
    QHBoxLayout,
    QPushButton,
    QScrollArea,
    QStackedWidget,
    QVBoxLayout,
    QWidget,
)
from shiboken6 import isValid

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.keyboard_kept import first_reached
from hwsched.desktop.frame.place import Place
from hwsched.desktop.looks.icons import icon
from hwsched.desktop.looks.tokens import SPACE, scaled, wide
from hwsched.desktop.widgets.empty import empty_place
from hwsched.desktop.widgets.tabs import Tabs
from hwsched.language import phrase

_LEAST_WIDE: Final = 80
_LEAST_HIGH: Final = 50
"""Of a page in a window of its own [figures]."""


class OwnWindow(QWidget):
    """A window of its own for one page."""

    closing = Signal()

    def __init__(self, title: str, page: QWidget, size: QPoint, parent: QWidget) -> None:
        super().__init__(parent, Qt.WindowType.Window)
        self.setWindowTitle(title)
        self.page = page
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(page)
        self.resize(max(size.x(), wide(_LEAST_WIDE)), max(size.y(), wide(_LEAST_HIGH)))

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """Give the page back."""
        super().closeEvent(event)
        self.closing.emit()


class Centre(QWidget):
    """Shows the station of the trail.

    Parameters
    ----------
    frame : Frame
        Its trail and its pages are followed.
    """

    shown = Signal(object)
    """The Place whose page is shown."""

    def __init__(self, frame: Frame, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.frame = frame
        self.tabs = Tabs()
        self.tabs.setAccessibleName(phrase("Pages of this place"))
        self.tabs.setDrawBase(False)
        self.tabs.setExpanding(False)
        self.tabs.currentChanged.connect(self._on_tab)
        self.own = QPushButton(icon("tear-off"), phrase("Own window"))
        self.own.setFlat(True)
        self.own.setToolTip(phrase("Put this page into a window of its own, for a second screen"))
        self.own.clicked.connect(lambda _checked=False: self.tear_off())
        self.leave = QPushButton(icon("close"), phrase("Close"))
        self.leave.setFlat(True)
        self.leave.setToolTip(phrase("Close this page and go back"))
        self.leave.clicked.connect(lambda _checked=False: self.close_page())
        self.stack = QStackedWidget()
        self.away = empty_place(phrase("This page stands in a window of its own. Close that window to bring it back."))
        self.stack.addWidget(self.away)
        head = QHBoxLayout()
        head.setContentsMargins(scaled(SPACE.hair), scaled(SPACE.hair), scaled(SPACE.hair), 0)
        # Left out it would be that of the layout around it, which is none.
        head.setSpacing(scaled(SPACE.hair))
        head.addWidget(self.tabs, 1)
        head.addWidget(self.own)
        head.addWidget(self.leave)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.setSpacing(0)
        layout.addLayout(head)
        layout.addWidget(self.stack, 1)
        self._held: dict[str, QScrollArea] = {}
        self._torn: dict[str, OwnWindow] = {}
        frame.trail.moved.connect(self._on_moved)
        frame.pages.closed.connect(self._on_closed)

    @property
    def place(self) -> Place | None:
        """The place whose page is shown."""
        here = self.frame.trail.here
        return self.frame.pages.places[here.place] if here is not None else None

    @property
    def page(self) -> QWidget | None:
        """The page that is shown here, unless it stands in a window of its own."""
        area = self._held.get(self.place.name) if self.place is not None else None
        return area.widget() if area is not None else None

    @property
    def can_close(self) -> bool:
        """Whether the page that is shown is one that can be closed."""
        return self.place is not None and not self.place.rail

    @property
    def can_tear(self) -> bool:
        """Whether the page that is shown stands in this window."""
        return self.place is not None and self.place.name not in self._torn

    def tear_off(self) -> None:
        """Put the page that is shown into a window of its own."""
        place = self.place
        if place is None or not self.can_tear:
            return
        area = self._held.pop(place.name)
        page = area.takeWidget()
        self.stack.removeWidget(area)
        area.deleteLater()
        size = QPoint(page.width(), page.height())
        window = OwnWindow(page.windowTitle() or phrase(place.title), page, size, self.window())
        window.closing.connect(lambda: self._bring_back(place.name))
        self._torn[place.name] = window
        window.show()
        page.show()
        self._show()

    def hold(self, name: str) -> None:
        """Take in a page that will be shown; Tab comes to it before what is put beside the centre later."""
        if name not in self._held:
            self._hold(name, self.frame.pages.page(name))

    def close_page(self) -> None:
        """Close the page that is shown, unless it is a place of the rail."""
        place = self.place
        if place is not None and self.can_close:
            self.frame.pages.close_page(place.name)

    def _bring_back(self, name: str) -> None:
        window = self._torn.pop(name, None)
        if window is None:
            return
        page = self.frame.pages.widgets.get(name)
        if page is not None and isValid(page):
            self._hold(name, page)
            self._show()
        window.deleteLater()

    def _hold(self, name: str, page: QWidget) -> QScrollArea:
        area = QScrollArea()
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setWidgetResizable(True)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        area.setWidget(page)
        page.show()
        self._held[name] = area
        self.stack.addWidget(area)
        return area

    def _on_moved(self) -> None:
        came_with = QApplication.focusWidget()
        self._show()
        # Where the toolkit put the keyboard when the page before went out of sight: it asks for no reason.
        put = QApplication.focusWidget()
        here, place = self.frame.trail.here, self.place
        if here is None or place is None:
            return
        page, thing = self.frame.pages.page(place.name), here.thing
        if place.name in self._torn:
            self._torn[place.name].raise_()
            self._torn[place.name].activateWindow()
        if place.show is not None:
            show = place.show
            self.frame.telling.guarded(lambda: show(page, thing))
        if isValid(page):
            self._label()
            now = QApplication.focusWidget()
            shown_by_page = now is not None and now is not put and page.isAncestorOf(now)
            if not shown_by_page:
                self._give_focus(page, came_with)

    def _show(self) -> None:
        """Show the page of the station, and the tabs of its room."""
        place = self.place
        if place is None:
            return
        page = self.frame.pages.page(place.name)
        if place.name in self._torn:
            self.stack.setCurrentWidget(self.away)
        else:
            self.stack.setCurrentWidget(self._held.get(place.name) or self._hold(place.name, page))
        self._label()
        self.leave.setVisible(not place.rail)
        self.own.setEnabled(place.name not in self._torn)
        self.shown.emit(place)

    def _label(self) -> None:
        """Show the tabs: of the room, else of the pages that belong to none and are open."""
        pages, place = self.frame.pages, self.place
        if place is None:
            return
        room = pages.room(place.name)
        beside = pages.of_room(room) or [each for each in pages.places.values() if not pages.room(each.name)]
        wanted = [
            each
            for each in beside
            if each.make is not None and (each.name in pages.widgets or (bool(room) and each.listed))
        ]
        self.tabs.blockSignals(True)
        while self.tabs.count() > len(wanted):
            self.tabs.removeTab(self.tabs.count() - 1)
        for at, each in enumerate(wanted):
            held = pages.widgets.get(each.name)
            title = held.windowTitle() if held is not None and not each.listed else phrase(each.title)
            if at == self.tabs.count():
                self.tabs.addTab(title)
            self.tabs.setTabText(at, title)
            self.tabs.setTabData(at, each.name)
            self.tabs.setTabToolTip(at, phrase(each.tip))
        self.tabs.setCurrentIndex(next(at for at, each in enumerate(wanted) if each.name == place.name))
        self.tabs.blockSignals(False)

    def _on_tab(self, at: int) -> None:
        name = self.tabs.tabData(at)
        if isinstance(name, str):
            self.tabs.setProperty("keeps focus", True)
            try:
                self.frame.go(name)
            finally:
                self.tabs.setProperty("keeps focus", False)

    def _give_focus(self, page: QWidget, focus: QWidget | None) -> None:
        """Let the keyboard go along, unless a person is walking over tabs or rail with it, or was on the page."""
        if focus is not None and isValid(focus) and (focus.property("keeps focus") or page.isAncestorOf(focus)):
            return
        first = first_reached(page)
        if first is not None:
            first.setFocus(Qt.FocusReason.OtherFocusReason)

    def _on_closed(self, name: str) -> None:
        area, window = self._held.pop(name, None), self._torn.pop(name, None)
        if area is not None:
            self.stack.removeWidget(area)
            area.deleteLater()
        if window is not None:
            window.close()
            window.deleteLater()
        if self.place is not None:
            self._label()

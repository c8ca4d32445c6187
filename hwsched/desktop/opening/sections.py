"""The few sections of a sheet; what belongs together stands folded into one, with a second row of tabs in it."""

from collections.abc import Sequence

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QTabWidget, QWidget

from hwsched.desktop.widgets.tabs import TabbedPages
from hwsched.language import phrase


class Sections(TabbedPages):
    """Tabs of which some hold pages of their own; whoever asks for a page gets it, wherever it stands."""

    turned = Signal()
    """Another page is seen."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._folds: dict[int, QTabWidget] = {}
        self.currentChanged.connect(lambda _at: self.turned.emit())

    def fold(self, title: str, pages: Sequence[tuple[QWidget, str]]) -> QTabWidget:
        """Add a section of several pages."""
        inner = TabbedPages()
        inner.setDocumentMode(True)
        inner.tabBar().setDrawBase(False)
        inner.tabBar().setAccessibleName(phrase("Pages of {title}", title=title))
        for page, words in pages:
            inner.addTab(page, words)
        inner.currentChanged.connect(lambda _at: self.turned.emit())
        self._folds[self.addTab(inner, title)] = inner
        return inner

    def seen(self) -> QWidget | None:
        """Return the page that is seen, of a section that holds several the chosen one."""
        inner = self._folds.get(self.currentIndex())
        return inner.currentWidget() if inner is not None else self.currentWidget()

    def show_page(self, page: QWidget) -> None:
        """Show a page, whichever section holds it."""
        for at, inner in self._folds.items():
            if inner.indexOf(page) >= 0:
                inner.setCurrentWidget(page)
                self.setCurrentIndex(at)
                return
        self.setCurrentWidget(page)

    def name_page(self, page: QWidget, words: str) -> None:
        """Write other words on the tab of a page."""
        for inner in self._folds.values():
            if inner.indexOf(page) >= 0:
                inner.setTabText(inner.indexOf(page), words)
                return
        self.setTabText(self.indexOf(page), words)

"""The field of "find anything" and the list below it: typed, walked with arrow keys, taken by Return."""

from PySide6.QtCore import QPoint, Qt, QTimer
from PySide6.QtGui import QFocusEvent, QKeyEvent
from PySide6.QtWidgets import QFrame, QHeaderView, QLineEdit, QTreeWidget, QTreeWidgetItem, QWidget
from shiboken6 import isValid

from hwsched.desktop.find.finding import Finder, Found, load_rules
from hwsched.desktop.jobs.jobs import Jobs
from hwsched.desktop.looks.tokens import colour, wide
from hwsched.language import phrase

_WALK = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1, Qt.Key.Key_PageDown: 8, Qt.Key.Key_PageUp: -8}
_ROWS = 12
"""So many rows are seen at once."""


class FoundList(QTreeWidget):
    """What was found: title, what it is or on what it acts, of which kind."""

    def __init__(self, parent: QWidget) -> None:
        super().__init__(parent)
        self.setAccessibleName(phrase("Found"))
        self.setHeaderHidden(True)
        self.setColumnCount(3)
        self.setRootIsDecorated(False)
        self.setUniformRowHeights(True)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setFrameShape(QFrame.Shape.StyledPanel)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        header = self.header()
        header.setStretchLastSection(False)
        header.setSectionResizeMode(0, QHeaderView.ResizeMode.ResizeToContents)
        header.setSectionResizeMode(1, QHeaderView.ResizeMode.Stretch)
        header.setSectionResizeMode(2, QHeaderView.ResizeMode.ResizeToContents)
        self.found: list[Found] = []
        self.hide()

    def show_found(self, found: list[Found]) -> None:
        """Show these, the first of them chosen."""
        self.found = found
        self.clear()
        for each in found:
            item = QTreeWidgetItem([each.title, each.words, phrase(each.kind)])
            item.setToolTip(1, each.words)
            for column in range(3):
                if not each.possible:
                    item.setForeground(column, colour("disabled"))
                elif column:
                    item.setForeground(column, colour("soft"))
            self.addTopLevelItem(item)
        if not found:
            item = QTreeWidgetItem(
                [phrase("Nothing is called so"), phrase("Openings, parts, rules, commands, help and places"), ""]
            )
            item.setFlags(Qt.ItemFlag.NoItemFlags)
            self.addTopLevelItem(item)
        self.walk(0)

    def walk(self, by: int) -> None:
        """Choose another line."""
        if self.found:
            at = max(self._at(), 0) + by if by else 0
            self.setCurrentIndex(self.model().index(min(max(at, 0), len(self.found) - 1), 0))

    def walk_to(self, at: int) -> None:
        """Choose a line by its place."""
        if self.found:
            self.setCurrentIndex(self.model().index(at, 0))

    def chosen(self) -> Found | None:
        """Return the chosen one."""
        at = self._at()
        return self.found[at] if 0 <= at < len(self.found) else None

    def _at(self) -> int:
        return self.currentIndex().row()


class FindField(QLineEdit):
    """Words are typed here.

    Parameters
    ----------
    finder : Finder
        Finds what they mean.
    over : QWidget
        The window; the list is laid over what stands in it.
    jobs : Jobs
        Loads beside the screen's thread what can be found and is not loaded yet.
    """

    def __init__(self, finder: Finder, over: QWidget, jobs: Jobs) -> None:
        super().__init__()
        self._finder, self._over = finder, over
        self._jobs = jobs.beside(over)
        self._before: QWidget | None = None
        self.setPlaceholderText(phrase("Find anything: opening, part, rule, command …   (Ctrl+K)"))
        self.setAccessibleName(phrase("Find anything"))
        self.setToolTip(phrase("Openings by mark or room, parts, rules, commands, help pages and places"))
        self.setClearButtonEnabled(True)
        self.list = FoundList(over)
        self.list.itemClicked.connect(lambda _item: self._take())
        self.textEdited.connect(self._look)

    def begin(self) -> None:
        """Take the keyboard, with what stands here chosen."""
        before = self._over.focusWidget()
        self._before = before if before is not self else self._before
        self.setFocus(Qt.FocusReason.ShortcutFocusReason)
        self.selectAll()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Walk the list and take what is chosen; Escape leaves."""
        key = Qt.Key(event.key())
        if key in _WALK and self.list.isVisible():
            self.list.walk(_WALK[key])
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self._take()
        elif key == Qt.Key.Key_Escape:
            self._leave()
        else:
            super().keyPressEvent(event)

    def focusOutEvent(self, event: QFocusEvent) -> None:  # noqa: N802
        """Shut the list as the keyboard leaves."""
        super().focusOutEvent(event)
        self.list.hide()

    def _look(self, text: str) -> None:
        if not text.strip():
            self.list.hide()
            return
        self.list.show_found(self._finder.find(text))
        at = self.mapTo(self._over, QPoint(0, self.height()))
        row = self.list.sizeHintForRow(0) + 1
        self.list.setGeometry(
            at.x(), at.y(), max(self.width(), wide(70)), row * min(self.list.topLevelItemCount(), _ROWS) + row // 2
        )
        self.list.raise_()
        self.list.show()
        if not self._finder.whole:
            self._jobs.run("", load_rules, lambda _done: self._look_again(), kept=False)

    def _look_again(self) -> None:
        """Show what can be found now besides, where it is still asked; what was chosen stays chosen."""
        chosen = self.list.chosen()
        if not self.list.isVisible():
            return
        self._look(self.text())
        same = [at for at, each in enumerate(self.list.found) if chosen is not None and _alike(each, chosen)]
        self.list.walk_to(same[0] if same else 0)

    def _take(self) -> None:
        """Do what is chosen, once this key or click is dealt with: it may open a question."""
        found = self.list.chosen() if self.list.isVisible() else None
        if found is None or not found.possible:
            return
        self._leave()
        QTimer.singleShot(0, self, found.go)

    def _leave(self) -> None:
        """Give the keyboard back to where it was."""
        self.list.hide()
        self.clear()
        before, self._before = self._before, None
        if before is not None and isValid(before) and before.isVisible():
            before.setFocus(Qt.FocusReason.OtherFocusReason)
        else:
            self.clearFocus()


def _alike(one: Found, other: Found) -> bool:
    return (one.kind, one.title, one.words) == (other.kind, other.title, other.words)

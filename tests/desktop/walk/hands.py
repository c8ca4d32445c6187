"""Two ways to work in the window: by mouse, and by keyboard alone. Both send events and nothing else.

Typing is by keys in both. What is pressed, chosen or gone to is clicked by the one, and walked to by Tab and arrow keys
by the other: what the keyboard does not reach fails here.
"""

from PySide6.QtCore import QEvent, QPoint, QPointF, Qt, QTimer
from PySide6.QtGui import QMouseEvent, QWheelEvent
from PySide6.QtTest import QTest
from PySide6.QtWidgets import (
    QAbstractScrollArea,
    QApplication,
    QComboBox,
    QLineEdit,
    QScrollArea,
    QTabBar,
    QTreeView,
)

from tests.desktop.conftest import idle

KEY, LEFT = Qt.Key, Qt.MouseButton.LeftButton
NONE, CONTROL, SHIFT, ALT = (
    Qt.KeyboardModifier.NoModifier,
    Qt.KeyboardModifier.ControlModifier,
    Qt.KeyboardModifier.ShiftModifier,
    Qt.KeyboardModifier.AltModifier,
)
_FAR = 400
"""So many stops of Tab, or lines of a list, are walked at most."""


class Hands:
    """What both ways share.

    Parameters
    ----------
    qtbot, window
        The window that is worked in.
    """

    def __init__(self, qtbot, window):
        self.qtbot, self.window = qtbot, window
        window.activateWindow()
        qtbot.waitUntil(window.isActiveWindow)

    def wake(self):
        """Let the window be active again once a menu or a question is gone, as a window manager does."""
        QApplication.processEvents()
        if QApplication.focusWidget() is None and QApplication.activePopupWidget() is None:
            top = QApplication.activeModalWidget() or self.window
            top.activateWindow()
            self.qtbot.waitUntil(top.isActiveWindow)

    def key(self, key, modifier=NONE, times=1):
        """Press a key where the keyboard is."""
        self.wake()
        for _ in range(times):
            QTest.keyClick(QApplication.focusWidget() or self.window, key, modifier)

    @staticmethod
    def step(key, modifier=NONE):
        """Press a key where the keyboard is and stays: nothing is painted between one step of a walk and the next."""
        QTest.keyClick(QApplication.focusWidget(), key, modifier)

    def say(self, text):
        """Type words where the keyboard is."""
        self.wake()
        QTest.keyClicks(QApplication.focusWidget(), text)

    def over(self, text):
        """Type over what stands where the keyboard is."""
        self.key(KEY.Key_A, CONTROL)
        self.step(KEY.Key_Delete)
        QTest.keyClicks(QApplication.focusWidget(), text)

    def done(self):
        """Wait until no job runs."""
        idle(self.qtbot, self.window)

    def undo(self):
        """Take back the last step."""
        self.command("Undo")
        self.done()

    def answer(self, how):
        """When the next question holds the window and has the keyboard, answer it."""

        def look():
            asked = QApplication.activeModalWidget()
            if asked is None or not asked.isVisible() or not asked.isActiveWindow():
                QTimer.singleShot(20, look)
            else:
                try:
                    how(asked)
                except BaseException:
                    # Left open it would hold the test for ever.
                    asked.close()
                    raise

        QTimer.singleShot(0, look)

    def edit(self, text):
        """Open the editor of the cell that is current, type over it and take it."""
        self.key(KEY.Key_F2)
        editor = QApplication.focusWidget()
        assert isinstance(editor, QLineEdit), editor
        self.over(text)
        gone = []
        editor.destroyed.connect(lambda: gone.append(True))
        self.key(KEY.Key_Return)
        self.qtbot.waitUntil(lambda: bool(gone))
        self.done()


class Keyboard(Hands):
    """By keys alone."""

    def to(self, widget):
        """Walk to a widget by Tab."""
        self.wake()
        assert widget.isVisible(), _named(widget)
        met = []
        while True:
            focus = QApplication.focusWidget()
            if focus is widget or (focus is not None and focus.focusProxy() is widget):
                return
            if isinstance(focus, QComboBox) and focus.lineEdit() is widget:
                return
            if focus in met:
                raise AssertionError(f"Tab does not reach {_named(widget)} but {[_named(each) for each in met]}")
            met.append(focus)
            QTest.keyClick(focus or self.window, KEY.Key_Tab)

    def command(self, title):
        """Give a command, found by its words."""
        self.key(KEY.Key_K, CONTROL)
        assert QApplication.focusWidget() is self.window.field
        self.say(title)
        found = self.window.field.list
        names = [each.title for each in found.found if each.possible and each.kind in ("Command", "Place")]
        assert title in names, names
        while found.chosen().title != title or found.chosen().kind not in ("Command", "Place"):
            self.step(KEY.Key_Down)
        self.key(KEY.Key_Return)
        QApplication.processEvents()

    def press(self, button):
        """Press a button; of several of which one holds, Tab reaches that one and arrow keys the others."""
        group = button.group()
        if group is not None and group.exclusive() and group.checkedButton() is not None:
            self.to(group.checkedButton())
            # Those beside one another, or those below one another.
            for key in (KEY.Key_Right, KEY.Key_Down):
                for _ in group.buttons():
                    if QApplication.focusWidget() is button:
                        return
                    self.step(key)
        self.to(button)
        assert button.isEnabled(), button.text()
        self.step(KEY.Key_Space)

    def field(self, field, text):
        """Go to a field and type over what stands there."""
        self.to(field)
        self.over(text)

    def page(self, tabs, title):
        """Show a page by its tab."""
        bar = tabs.tabBar() if not isinstance(tabs, QTabBar) else tabs
        at = _tab(bar, title)
        self.to(bar)
        while bar.currentIndex() != at:
            self.step(KEY.Key_Right if bar.currentIndex() < at else KEY.Key_Left)

    def line(self, view, index, modifier=NONE):
        """Go to a line of a list or a cell of a table: the index, or an item of a tree."""
        index = _index(view, index)
        self.to(view)
        if not view.currentIndex().isValid():
            self.step(KEY.Key_Home)
        for _ in range(_FAR):
            here = view.currentIndex()
            if _line(here) == _line(index):
                break
            way = KEY.Key_Up if _before(view, index, here) else KEY.Key_Down
            self.step(way, modifier)
            if view.currentIndex() == here:
                raise AssertionError(f"arrow keys stay at {here.data()!r} and do not reach {index.data()!r}")
        if not modifier and not view.selectionModel().isSelected(view.currentIndex()):
            self.step(KEY.Key_Space)
        if isinstance(view, QTreeView):
            return
        for _ in range(_FAR):
            here = view.currentIndex()
            if here.column() == index.column():
                break
            self.step(KEY.Key_Left if index.column() < here.column() else KEY.Key_Right, modifier)
            if view.currentIndex() == here:
                break

    def more(self, view, index):
        """Select another line besides."""
        index = _index(view, index)
        self.to(view)
        for _ in range(_FAR):
            here = view.currentIndex()
            if _line(here) == _line(index):
                break
            self.step(KEY.Key_Up if _before(view, index, here) else KEY.Key_Down, CONTROL)
        self.step(KEY.Key_Space, CONTROL)

    def up_to(self, view, index):
        """Mark a block up to a cell."""
        self.line(view, index, SHIFT)

    def open(self, view, index):
        """Open what a line leads to."""
        self.line(view, index)
        self.key(KEY.Key_Return)

    def box(self, box, text):
        """Choose in a box."""
        at = box.findText(text)
        assert at >= 0, [box.itemText(n) for n in range(box.count())]
        self.to(box)
        while box.currentIndex() != at:
            self.step(KEY.Key_Down if box.currentIndex() < at else KEY.Key_Up)

    def menu(self, view, text):
        """Choose in the menu of the current line."""
        self.to(view)
        self.key(KEY.Key_F10, SHIFT)
        self.choose(text)

    def choose(self, text):
        """Choose in the menu that is open."""
        _walk_menu(QApplication.activePopupWidget(), text)


class Mouse(Hands):
    """By mouse; words are typed where it has clicked."""

    def to(self, widget):
        """Click into a widget."""
        self._bring(widget)
        where = QPoint(min(widget.width() // 2, 20), widget.height() // 2)
        if isinstance(widget, QAbstractScrollArea):
            QTest.mouseClick(widget.viewport(), LEFT, NONE, where)
        else:
            self._at(widget, where)

    def command(self, title):
        """Give a command by the menus."""
        bar = self.window.menuBar()
        for top in bar.actions():
            if top.menu() is None or not top.isVisible():
                continue
            act = next((each for each in top.menu().actions() if _plain(each.text()) == title), None)
            if act is None:
                continue
            QTest.mouseClick(bar, LEFT, NONE, bar.actionGeometry(top).center())
            menu = top.menu()
            assert menu.isVisible()
            assert act.isEnabled(), title
            QTest.mouseClick(menu, LEFT, NONE, menu.actionGeometry(act).center())
            QApplication.processEvents()
            return
        raise AssertionError(f"no menu has {title}")

    def press(self, button):
        """Press a button."""
        self._bring(button)
        assert button.isEnabled(), button.text()
        self._at(button, QPoint(12, button.height() // 2))

    def field(self, field, text):
        """Click into a field and type over what stands there."""
        self.to(field)
        self.over(text)

    def page(self, tabs, title):
        """Show a page by its tab."""
        bar = tabs.tabBar() if not isinstance(tabs, QTabBar) else tabs
        at = _tab(bar, title)
        scrolls = [each for each in bar.children() if type(each).__name__ == "QToolButton" and each.isVisible()]
        for _ in range(bar.count()):
            where = bar.tabRect(at).center()
            if bar.rect().contains(where) and not any(each.geometry().contains(where) for each in scrolls):
                break
            way = scrolls[-1] if where.x() >= scrolls[0].x() else scrolls[0]
            QTest.mouseClick(way, LEFT)
        self._at(bar, bar.tabRect(at).center())

    def line(self, view, index, modifier=NONE):
        """Click a line of a list or a cell of a table."""
        index = _index(view, index)
        seen, where = self._cell(view, index)
        QTest.mouseClick(seen.viewport(), LEFT, modifier, where)

    def more(self, view, index):
        """Select another line besides."""
        self.line(view, index, CONTROL)

    def up_to(self, view, index):
        """Mark a block up to a cell."""
        self.line(view, index, SHIFT)

    def open(self, view, index):
        """Open what a line leads to."""
        index = _index(view, index)
        seen, where = self._cell(view, index)
        QTest.mouseClick(seen.viewport(), LEFT, NONE, where)
        seen, where = self._cell(view, index)
        QTest.mouseDClick(seen.viewport(), LEFT, NONE, where)

    def box(self, box, text):
        """Choose in a box."""
        at = box.findText(text)
        assert at >= 0, [box.itemText(n) for n in range(box.count())]
        self._bring(box)
        self._at(box, QPoint(box.width() - 10, box.height() // 2))
        # Let go of sooner, a list that opens under the pointer stays open.
        self.qtbot.wait(QApplication.doubleClickInterval() + 5)
        view = box.view()
        index = box.model().index(at, box.modelColumn())
        _, where = self._cell(view, index)
        QTest.mouseClick(view.viewport(), LEFT, NONE, where)

    def menu(self, view, text):
        """Choose in the menu of the current line."""
        _, where = self._cell(view, view.currentIndex())
        QTest.mouseClick(view.viewport(), Qt.MouseButton.RightButton, NONE, where)
        menu = QApplication.activePopupWidget()
        if menu is None:
            from PySide6.QtGui import QContextMenuEvent

            # A synthetic click of the right button is no context menu event yet: the platform makes it.
            asked = QContextMenuEvent(QContextMenuEvent.Reason.Mouse, where, view.viewport().mapToGlobal(where))
            QApplication.sendEvent(view.viewport(), asked)
            menu = QApplication.activePopupWidget()
        self.choose(text)

    def choose(self, text):
        """Choose in the menu that is open."""
        menu = QApplication.activePopupWidget()
        act = next(each for each in menu.actions() if _plain(each.text()) == text)
        QTest.mouseClick(menu, LEFT, NONE, menu.actionGeometry(act).center())

    def double(self, widget, where):
        """Click twice."""
        self.wake()
        QTest.mouseClick(widget, LEFT, NONE, where)
        QTest.mouseDClick(widget, LEFT, NONE, where)
        QApplication.processEvents()

    @staticmethod
    def px(view, dx_mm, dy_mm):
        """How far a distance in the drawing is on the screen."""
        factor = view.look().factor
        return QPoint(round(dx_mm * factor), -round(dy_mm * factor))

    def drag(self, widget, start, end, held=NONE):
        """Drag from one place of a widget to another."""
        self.wake()
        QTest.mousePress(widget, LEFT, held, start)
        for at in ((start + end) / 2, end):
            move = QMouseEvent(
                QEvent.Type.MouseMove, QPointF(at), widget.mapToGlobal(QPointF(at)), Qt.MouseButton.NoButton, LEFT, held
            )
            QApplication.sendEvent(widget, move)
        QTest.mouseRelease(widget, LEFT, held, end)

    def _at(self, widget, where):
        assert widget.visibleRegion().contains(where), (widget, widget.accessibleName(), where)
        QTest.mouseClick(widget, LEFT, NONE, where)

    def _bring(self, widget):
        """Turn the wheel over the areas around a widget until it is seen."""
        self.wake()
        assert widget.isVisible(), (widget, widget.accessibleName())
        where = QPoint(min(widget.width() // 2, 12), widget.height() // 2)
        area = widget.parentWidget()
        while area is not None:
            if isinstance(area, QScrollArea):
                for _ in range(_FAR):
                    at = widget.mapTo(area.viewport(), where)
                    if area.viewport().rect().contains(at):
                        break
                    _wheel(area, at.x() < 0, at.x() > area.viewport().width(), at.y() < 0, at.y() > 0)
            area = area.parentWidget()

    def _cell(self, view, index):
        """Turn the wheel until a cell is seen; return the view in which it is clicked, and where."""
        self.wake()
        frozen = getattr(view, "frozen", None)
        for _ in range(_FAR):
            seen, left = view, 0
            if frozen is not None and frozen.isVisible():
                if not frozen.isColumnHidden(index.column()):
                    seen = frozen
                else:
                    left = frozen.width()
            room = seen.viewport().rect().adjusted(left, 0, 0, 0)
            box = seen.visualRect(index)
            where = QPoint(box.left() + min(box.width() // 2, 30), box.center().y())
            if room.contains(where):
                return seen, where
            _wheel(
                view, where.x() < room.left(), where.x() > room.right(), where.y() < room.top(),
                where.y() > room.bottom(),
            )  # fmt: skip
        raise AssertionError(f"the wheel does not bring {index.data()!r} into sight")


def _wheel(area: QAbstractScrollArea, left, right, up, down):
    turn = QPoint(40 * (left - right), 0) if left or right else QPoint(0, 40 * (up - down))
    at = QPointF(area.viewport().rect().center())
    event = QWheelEvent(
        at, area.viewport().mapToGlobal(at), QPoint(), turn, Qt.MouseButton.NoButton, NONE,
        Qt.ScrollPhase.NoScrollPhase, False,
    )  # fmt: skip
    QApplication.sendEvent(area.viewport(), event)


def _walk_menu(menu, text):
    assert menu is not None
    for _ in range(_FAR):
        act = menu.activeAction()
        if act is not None and _plain(act.text()) == text:
            QTest.keyClick(menu, KEY.Key_Return)
            return
        QTest.keyClick(menu, KEY.Key_Down)
    raise AssertionError([_plain(each.text()) for each in menu.actions()])


def _named(widget):
    """By what a failure names a widget."""
    words = getattr(widget, "text", str)() if not isinstance(widget, QLineEdit) else ""
    return f"{type(widget).__name__} {widget.accessibleName() or words}" if widget is not None else "nothing"


def _plain(text):
    return text.replace("&", "").partition("\t")[0]


def _tab(bar, title):
    found = [at for at in range(bar.count()) if _plain(bar.tabText(at)).startswith(title) and bar.isTabVisible(at)]
    assert found, (title, [bar.tabText(at) for at in range(bar.count())])
    return found[0]


def _index(view, index):
    return index if hasattr(index, "isValid") else view.indexFromItem(index)


def _line(index):
    return index.sibling(index.row(), 0)


def _before(view, index, here):
    """Whether an index stands above another one."""
    if isinstance(view, QTreeView):
        return view.visualRect(_line(index)).top() < view.visualRect(_line(here)).top()
    return index.row() < here.row()

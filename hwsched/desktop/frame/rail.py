"""The rail at the left: the places by the stage of the job."""

from PySide6.QtCore import QEvent, Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QButtonGroup, QFrame, QSizePolicy, QToolButton, QVBoxLayout, QWidget

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.place import Place
from hwsched.desktop.looks.icons import icon
from hwsched.desktop.looks.text_size import in_pixels, put_icons
from hwsched.desktop.looks.tokens import ROW, SPACE, scaled
from hwsched.language import phrase

_STEPS = {Qt.Key.Key_Down: 1, Qt.Key.Key_Up: -1}


class RailButton(QToolButton):
    """One place of the rail; arrow keys lead to the next one."""

    def __init__(self, rail: "Rail", place: Place) -> None:
        super().__init__(rail)
        self._rail, self.place = rail, place
        self.setText(phrase(place.title))
        self.setAccessibleName(phrase(place.title))
        self.setAccessibleDescription(phrase(place.tip))
        self.setToolTip(phrase(place.tip))
        self.setCheckable(True)
        if place.icon:
            self.setIcon(icon(place.icon))
        self.setAutoRaise(True)
        self.setToolButtonStyle(Qt.ToolButtonStyle.ToolButtonTextUnderIcon)
        self.setSizePolicy(QSizePolicy.Policy.Expanding, QSizePolicy.Policy.Fixed)
        self.measure()
        self.setFocusPolicy(Qt.FocusPolicy.StrongFocus)

    def measure(self) -> None:
        """Be as large as the text size asks."""
        put_icons(self)
        in_pixels(self, minimumHeight=ROW.form + SPACE.small)

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Walk over the places by arrow keys; Return goes there as Space does."""
        key = Qt.Key(event.key())
        if key in _STEPS:
            self._rail.step(self, _STEPS[key])
        elif key in (Qt.Key.Key_Return, Qt.Key.Key_Enter):
            self.click()
        else:
            super().keyPressEvent(event)


class Rail(QFrame):
    """A button for every place that stands on the rail.

    Parameters
    ----------
    frame : Frame
        Goes to the places.
    """

    def __init__(self, frame: Frame, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._frame = frame
        self.setAccessibleName(phrase("Places"))
        self.buttons: dict[str, RailButton] = {}
        self._group = QButtonGroup(self)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(scaled(SPACE.hair), scaled(SPACE.small), scaled(SPACE.hair), scaled(SPACE.small))
        layout.setSpacing(scaled(SPACE.hair))
        for place in frame.pages.places.values():
            if place.rail:
                button = RailButton(self, place)
                button.clicked.connect(lambda _checked=False, name=place.name: self._go(name))
                self.buttons[place.name] = button
                self._group.addButton(button)
                layout.addWidget(button)
        layout.addStretch(1)
        self._measure()
        frame.trail.moved.connect(self._on_moved)

    def changeEvent(self, event: QEvent) -> None:  # noqa: N802
        """Have room for the words of the places in another text size."""
        super().changeEvent(event)
        if event.type() in (QEvent.Type.StyleChange, QEvent.Type.FontChange):
            self._measure()

    def _measure(self) -> None:
        for button in self.buttons.values():
            button.measure()
        if self.buttons:
            self.setFixedWidth(max(each.sizeHint().width() for each in self.buttons.values()) + scaled(SPACE.large))

    def step(self, button: RailButton, by: int) -> None:
        """Go to the place beside, and take the keyboard along."""
        walked = list(self.buttons.values())
        at = walked.index(button) + by
        if 0 <= at < len(walked):
            walked[at].setFocus(Qt.FocusReason.TabFocusReason)
            walked[at].click()

    def _go(self, name: str) -> None:
        # Who walks over the places keeps the keys here; whoever goes by another way takes them along.
        self.buttons[name].setProperty("keeps focus", True)
        try:
            self._frame.go(name)
        finally:
            self.buttons[name].setProperty("keeps focus", False)
        # What cannot be gone to leaves the mark where it was.
        self._on_moved()

    def _on_moved(self) -> None:
        here = self._frame.trail.here
        room = self._frame.pages.room(here.place) if here is not None else ""
        self._group.setExclusive(False)
        for name, button in self.buttons.items():
            button.setChecked(name == room)
        self._group.setExclusive(True)
        # Of buttons that exclude one another Tab reaches the one that is down; where none is, the first. The group
        # sees to that itself only while it excludes.
        reached = self.buttons.get(room) or next(iter(self.buttons.values()), None)
        for button in self.buttons.values():
            button.setFocusPolicy(Qt.FocusPolicy.StrongFocus if button is reached else Qt.FocusPolicy.ClickFocus)

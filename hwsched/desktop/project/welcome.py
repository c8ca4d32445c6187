"""What stands in the window before a project is open: who is at work, and the ways to begin."""

from functools import partial
from pathlib import Path
from typing import Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QFormLayout,
    QFrame,
    QHBoxLayout,
    QLabel,
    QLineEdit,
    QPushButton,
    QScrollArea,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.looks.icons import icon
from hwsched.desktop.looks.text_size import in_figures, in_pixels, put_letters
from hwsched.desktop.looks.tokens import ROW, SPACE
from hwsched.desktop.project.preferences import Preferences
from hwsched.language import phrase, to_phrase
from hwsched.telling.masking import masked

WORDS = to_phrase(
    "Survey what stands, fit what goes in, prove it before anything is ordered, and hand every "
    "installer one packet that is right."
)
_SHOWN: Final = 6
"""So many recent projects are offered."""


class Welcome(QScrollArea):
    """The ways to begin, and the projects that were open.

    Parameters
    ----------
    preferences : Preferences
        Tells the person's name and their recent projects.
    who : str
        By which name they are known while they have told none.
    """

    wants_new = Signal()
    wants_open = Signal()
    wants_sample = Signal()
    wants_spreadsheet = Signal()
    wants_server = Signal()
    wants_recent = Signal(str)
    """A recent project, by its file or address."""
    named = Signal(str)
    """The person has told their name."""

    def __init__(self, preferences: Preferences, who: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._preferences = preferences
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        title = QLabel("hwsched")
        put_letters(title, "title", bold=True)
        words = QLabel(phrase(WORDS))
        words.setWordWrap(True)
        self.name = QLineEdit(preferences.name)
        self.name.setPlaceholderText(who)
        self.name.setAccessibleName(phrase("Your name, as journals write it"))
        in_pixels(self.name, minimumHeight=ROW.form)
        self.name.editingFinished.connect(self._on_name)
        asked = QFormLayout()
        asked.addRow(phrase("Your name, as &journals write it"), self.name)
        self.asked = QWidget()
        self.asked.setLayout(asked)
        asked.setContentsMargins(0, 0, 0, 0)
        # Asked once: who has told it changes it in their settings.
        self.asked.setVisible(not preferences.name)
        self.begin = QVBoxLayout()
        self.begin.setSpacing(SPACE.small)
        for text, image, tip, signal in (
            (
                phrase("Open a project"),
                "open",
                phrase("A project file that lies on this machine or a share"),
                self.wants_open,
            ),
            (phrase("Make a new project"), "new", phrase("Empty, in the units that you choose"), self.wants_new),
            (
                phrase("Start from a spreadsheet"),
                "take-in",
                phrase("A new project from a survey that somebody has written"),
                self.wants_spreadsheet,
            ),
            (
                phrase("Join an office's database"),
                "server",
                phrase("A project on a server, in which several people write"),
                self.wants_server,
            ),
            (
                phrase("Work out the sample"),
                "sample",
                phrase("An invented building with 167 openings, to look around in"),
                self.wants_sample,
            ),
        ):
            button = QPushButton(icon(image, "link"), text)
            button.setToolTip(tip)
            button.setAccessibleDescription(tip)
            button.clicked.connect(signal)
            self.begin.addWidget(_line(button))
        self.recent = QVBoxLayout()
        self.recent.setSpacing(SPACE.small)
        ways = QHBoxLayout()
        ways.setSpacing(SPACE.wide)
        ways.addLayout(_headed(phrase("Begin"), self.begin), 1)
        ways.addLayout(_headed(phrase("Open again"), self.recent), 1)
        body = QWidget()
        in_figures(body, maximumWidth=104)
        column = QVBoxLayout(body)
        column.setContentsMargins(SPACE.wide, SPACE.wide, SPACE.wide, SPACE.wide)
        column.setSpacing(SPACE.large)
        column.addStretch(1)
        for each in (title, words, self.asked):
            column.addWidget(each)
        column.addLayout(ways)
        column.addStretch(2)
        middle = QWidget()
        across = QHBoxLayout(middle)
        across.addStretch(1)
        across.addWidget(body, 8)
        across.addStretch(1)
        self.setWidget(middle)
        preferences.changed.connect(self._on_chosen)
        self._list_recent()

    def _list_recent(self) -> None:
        while (item := self.recent.takeAt(0)) is not None:
            gone = item.widget()
            if gone is not None:
                # At once, and not only once the event loop comes by: it is nobody's to press any more.
                gone.setParent(None)
                gone.deleteLater()
        for target in self._preferences.recent[:_SHOWN]:
            at = Path(target)
            name = masked(target) if "://" in target else at.stem
            button = QPushButton(icon("server" if "://" in target else "openings", "link"), name)
            button.setToolTip(masked(target))
            button.setAccessibleName(phrase("Open {name} again", name=name))
            button.clicked.connect(partial(self._again, target))
            self.recent.addWidget(_line(button))
        if not self._preferences.recent:
            none = QLabel(phrase("Projects that were open are listed here."))
            none.setWordWrap(True)
            self.recent.addWidget(none)
        self.recent.addStretch(1)

    def _again(self, target: str, _checked: bool = False) -> None:
        self.wants_recent.emit(target)

    def _on_name(self) -> None:
        if self.name.text().strip():
            self._preferences.name = self.name.text()
            self.named.emit(self._preferences.name)

    def _on_chosen(self, name: str) -> None:
        if name == "recent":
            self._list_recent()
        elif name == "name" and not self.name.hasFocus():
            self.asked.setVisible(not self._preferences.name)


def _line(button: QPushButton) -> QPushButton:
    in_pixels(button, minimumHeight=ROW.form)
    button.setProperty("line", True)
    return button


def _headed(title: str, lines: QVBoxLayout) -> QVBoxLayout:
    column = QVBoxLayout()
    column.setSpacing(SPACE.small)
    words = QLabel(title)
    put_letters(words, "large", bold=True)
    column.addWidget(words)
    column.addLayout(lines)
    column.addStretch(1)
    return column

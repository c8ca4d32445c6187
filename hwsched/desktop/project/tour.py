"""A short tour of the job: a line over the work with a few words on each place; it can be left at any step."""

from dataclasses import dataclass
from typing import Final

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeyEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QSizePolicy, QVBoxLayout, QWidget

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.looks.icons import icon
from hwsched.desktop.looks.text_size import in_pixels, put_letters
from hwsched.desktop.looks.tokens import SPACE, TARGET
from hwsched.language import phrase, to_phrase


@dataclass(frozen=True, slots=True)
class Step:
    """One station of the tour."""

    place: str
    title: str
    words: str


STEPS: Final = (
    Step(
        "today",
        to_phrase("Today"),
        to_phrase(
            "A project opens here: what each of the four people has to do next. Press a count, and its "
            "openings are shown; Back (Alt+Left) leads here again."
        ),
    ),
    Step(
        "survey",
        to_phrase("Survey"),
        to_phrase(
            "What stands at the building is taken in here, from a workbook or a form. What cannot be "
            "read is asked, and what is missing is listed for the next visit."
        ),
    ),
    Step(
        "openings",
        to_phrase("Openings"),
        to_phrase(
            "Every opening with its state, and beside it the drawing, the parts and the reasons. Choose "
            "one, or thirty: a fact is edited the same way for both."
        ),
    ),
    Step(
        "power",
        to_phrase("Power"),
        to_phrase(
            "Supplies, circuits and cables, with the volts at every door, and what would cure a circuit "
            "that is too low."
        ),
    ),
    Step("parts", to_phrase("Parts"), to_phrase("What openings are fitted with, in sets, and what it costs.")),
    Step(
        "release",
        to_phrase("Release"),
        to_phrase(
            "What leaves the office: schedules, packets, labels. What is not in order is held back "
            "everywhere, and the gate says why."
        ),
    ),
    Step(
        "",
        to_phrase("Anything else"),
        "Ctrl+K finds openings, parts, rules and commands by a few words. F1 tells about the "
        "place that is shown. This tour stands under Help.",
    ),
)
"""In the order of the job."""


class Tour(QFrame):
    """The line of the tour; it goes along to the place of which it tells.

    Parameters
    ----------
    frame : Frame
        Goes to the places.
    """

    def __init__(self, frame: Frame, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._frame = frame
        self.at = 0
        self.setObjectName("card")
        self.setAccessibleName(phrase("Tour"))
        self.setSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Maximum)
        self.title, self.words = QLabel(), QLabel()
        put_letters(self.title, "large", bold=True)
        self.words.setWordWrap(True)
        self.before = QPushButton(icon("back"), phrase("Step back"))
        self.next = QPushButton(icon("forward"), phrase("Next step"))
        self.leave = QPushButton(icon("close"), phrase("Leave the tour"))
        self.before.clicked.connect(lambda _checked=False: self.go(self.at - 1))
        self.next.clicked.connect(lambda _checked=False: self.go(self.at + 1))
        self.leave.clicked.connect(lambda _checked=False: self.end())
        told = QVBoxLayout()
        told.setSpacing(SPACE.hair)
        told.addWidget(self.title)
        told.addWidget(self.words)
        layout = QHBoxLayout(self)
        layout.setContentsMargins(SPACE.middle, SPACE.small, SPACE.middle, SPACE.small)
        layout.setSpacing(SPACE.small)
        layout.addLayout(told, 1)
        for button in (self.before, self.next, self.leave):
            button.setAutoDefault(False)
            # Who takes Next with the keyboard stays on it while the places change.
            button.setProperty("keeps focus", True)
            in_pixels(button, minimumHeight=TARGET)
            layout.addWidget(button)
        frame.commands.add(
            "tour",
            to_phrase("Tour"),
            to_phrase("A few words on each place, in the order of the job"),
            self.begin,
            menu=to_phrase("Help"),
            icon="tour",
        )
        self.hide()

    def begin(self) -> None:
        """Begin at the first step."""
        self.go(0)
        self.show()
        self.next.setFocus(Qt.FocusReason.OtherFocusReason)

    def offer(self) -> None:
        """Begin, unless the person has seen it; the keyboard stays where it is."""
        if not self._frame.preferences.toured:
            self.go(0)
            self.show()

    def go(self, at: int) -> None:
        """Go to a step; behind the last one it ends."""
        if at >= len(STEPS):
            self.end()
            return
        self.at = max(at, 0)
        step = STEPS[self.at]
        self.title.setText(
            phrase("{title} ({at} of {count})", title=phrase(step.title), at=self.at + 1, count=len(STEPS))
        )
        self.words.setText(phrase(step.words))
        self.before.setEnabled(self.at > 0)
        self.next.setText(phrase("Next step") if self.at + 1 < len(STEPS) else phrase("Done"))
        if step.place:
            self._frame.go(step.place)

    def end(self) -> None:
        """Leave it; it is not offered again."""
        self._frame.preferences.toured = True
        self.hide()

    def keyPressEvent(self, event: QKeyEvent) -> None:  # noqa: N802
        """Leave it by Escape."""
        if event.key() == Qt.Key.Key_Escape:
            self.end()
        else:
            super().keyPressEvent(event)

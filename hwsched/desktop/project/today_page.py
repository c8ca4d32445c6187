"""The landing place: what is to be done next by each of the four people, how far each level is, what has changed."""

from collections.abc import Sequence
from datetime import datetime
from functools import partial
from typing import Any, Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QHideEvent, QShowEvent
from PySide6.QtWidgets import QFrame, QHBoxLayout, QLabel, QPushButton, QScrollArea, QVBoxLayout, QWidget

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.looks.icons import Picture, icon
from hwsched.desktop.looks.moments import day_said
from hwsched.desktop.looks.text_size import put_letters
from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.project.today_rows import CountRow, Legend, LevelRow
from hwsched.desktop.widgets.buttons import let_lead
from hwsched.desktop.widgets.empty import empty_place
from hwsched.language import phrase, to_phrase
from hwsched.operations.project.today import PERSONS, LevelProgress, Person, SinceRelease, Task, Today, read_today

_OF: Final[dict[Person, tuple[str, str]]] = {
    "surveyor": (to_phrase("Surveyor"), "survey"),
    "specifier": (to_phrase("Specifier"), "openings"),
    "storekeeper": (to_phrase("Storekeeper"), "stock"),
    "installer": (to_phrase("Installer"), "site"),
}
_NONE: Final = to_phrase("Nothing was released under a letter yet.")


class TodayPage(QScrollArea):
    """What is to be done next in the open project; read beside the person's work, and again after each change.

    Parameters
    ----------
    frame : Frame
        Open project, jobs, telling.
    """

    wants_openings = Signal(list, str)
    """Openings behind a count, by their identifiers, and what they are."""
    wants_parts = Signal(list, str)
    """Parts behind a count, by their numbers, and what they are."""
    wants_differences = Signal()
    """What is otherwise since the last revision, whatever it is of."""
    wants_questions = Signal()
    """The questions that deliveries left."""

    def __init__(self, frame: Frame, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._frame = frame
        # Whoever closes the project waits for a count as for other reading: not on the screen's thread.
        self._reading = frame.jobs.beside(self)
        self._reading.failed.connect(frame.telling.tell)
        self._old, self._leaving = True, False
        self.today: Today | None = None
        # Its lines take the keyboard, one after another, and come into sight.
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self.setWidgetResizable(True)
        self.setFrameShape(QFrame.Shape.NoFrame)
        self.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        self.setAccessibleName(phrase("What is to be done today"))
        # One widget for good, in which bodies take turns: one that the area is given in place of another goes with what
        # Python holds of it, and not of it alone.
        self._inside = QWidget()
        self._turns = QVBoxLayout(self._inside)
        self._turns.setContentsMargins(0, 0, 0, 0)
        self.setWidget(self._inside)
        self._body = QWidget()
        self._show_alone(phrase("Reading the project…"))
        state = frame.state
        state.opened.connect(self._on_opened)
        state.reloaded.connect(self._on_changed)
        state.touched.connect(self._on_changed)
        state.leaving.connect(self._on_leaving)

    def showEvent(self, event: QShowEvent) -> None:  # noqa: N802
        """Read anew what has changed while it was out of sight."""
        super().showEvent(event)
        self.follow()

    def hideEvent(self, event: QHideEvent) -> None:  # noqa: N802
        """Stop reading: nobody looks."""
        super().hideEvent(event)
        self._reading.cancel()

    def follow(self) -> None:
        """Read the project anew, unless nothing has changed or nobody looks."""
        workspace = self._frame.state.workspace
        # Until the first reading of the project is handed over there is nothing to count.
        if workspace is None or not workspace.turn or self._leaving or self._frame.following.closing:
            return
        if not self._old or not self.isVisible() or self._reading.busy:
            return
        # Read as it is shown; what is changed meanwhile makes it old again.
        self._old = False
        project, checked = workspace.project, list(workspace.checked.values())

        def work(_progress: Any, cancelled: Any) -> Today | None:
            found = read_today(project, checked, cancelled=cancelled)
            return None if cancelled() else found

        self._reading.run(phrase("Counting what is to be done"), work, self._take, asker=self)

    def show_today(self, today: Today) -> None:
        """Show the counts."""
        focused = self._focused()
        self.today = today
        body = QWidget()
        column = QVBoxLayout(body)
        column.setContentsMargins(SPACE.wide, SPACE.large, SPACE.wide, SPACE.large)
        column.setSpacing(SPACE.large)
        title = QLabel(self._title())
        put_letters(title, "title", bold=True)
        title.setWordWrap(True)
        column.addWidget(title)
        people = QHBoxLayout()
        people.setSpacing(SPACE.large)
        for person in PERSONS:
            people.addWidget(self._card(person, today.of(person)), 1)
        column.addLayout(people)
        whole = QHBoxLayout()
        whole.setSpacing(SPACE.large)
        whole.addWidget(self._levels(today.levels), 3)
        whole.addWidget(self._since(today.since), 1)
        column.addLayout(whole)
        column.addStretch(1)
        self._take_turns(body)
        self._focus(focused)

    def rows(self) -> list[CountRow]:
        """Return the counts, in their order."""
        return self._body.findChildren(CountRow)

    def _title(self) -> str:
        workspace = self._frame.state.workspace
        return workspace.project.title if workspace is not None else ""

    def _card(self, person: Person, tasks: Sequence[Task]) -> QWidget:
        title, image = _OF[person]
        card, column = _card(phrase(title), image)
        for task in tasks:
            row = CountRow(task)
            row.clicked.connect(partial(self._lead, task))
            column.addWidget(row)
        column.addStretch(1)
        return card

    def _levels(self, levels: Sequence[LevelProgress]) -> QWidget:
        card, column = _card(phrase("Progress by building and level"), "openings")
        if levels:
            column.addWidget(Legend())
        for level in levels:
            row = LevelRow(level)
            row.clicked.connect(lambda _checked=False, said=level: self._lead_level(said))
            column.addWidget(row)
        if not levels:
            column.addWidget(QLabel(phrase("No openings yet: take in a survey.")))
            if "take-in-survey" in self._frame.commands:
                act = self._frame.commands["take-in-survey"].act
                begin = QPushButton(icon("take-in", "on-accent"), act.text())
                begin.setToolTip(act.toolTip())
                let_lead(begin)
                begin.clicked.connect(lambda _checked=False: act.trigger())
                column.addWidget(begin, 0, Qt.AlignmentFlag.AlignLeft)
        column.addStretch(1)
        return card

    def _since(self, since: SinceRelease | None) -> QWidget:
        if since is None:
            card, column = _card(phrase("Since the last release"), "revisions")
            words = QLabel(phrase(_NONE))
            words.setWordWrap(True)
            column.addWidget(words)
            column.addStretch(1)
            return card
        card, column = _card(
            phrase(
                "Since revision {letter} of {at}", letter=since.letter, at=day_said(datetime.fromisoformat(since.at))
            ),
            "revisions",
        )
        said = phrase("since revision {letter}", letter=since.letter)
        for task in (
            Task("since-new", "specifier", phrase("openings new {said}", said=said), len(since.new), since.new),
            Task(
                "since-changed",
                "specifier",
                phrase("openings otherwise {said}", said=said),
                len(since.changed),
                since.changed,
            ),
            Task("since-gone", "specifier", phrase("openings gone"), since.gone),
            Task("since-others", "specifier", phrase("settings, parts, supplies, rules otherwise"), since.others),
        ):
            row = CountRow(task)
            row.clicked.connect(partial(self._lead, task))
            column.addWidget(row)
        column.addStretch(1)
        return card

    def _lead(self, task: Task, _checked: bool = False) -> None:
        if task.name == "questions":
            self.wants_questions.emit()
        elif task.name in ("since-gone", "since-others"):
            self.wants_differences.emit()
        elif task.parts:
            self.wants_parts.emit(list(task.parts), task.says)
        else:
            self.wants_openings.emit(list(task.openings), task.says)

    def _lead_level(self, level: LevelProgress) -> None:
        self.wants_openings.emit(list(level.openings), f"{level.building}, {level.level}".strip(", "))

    def _take(self, today: Today | None) -> None:
        if today is not None:
            self.show_today(today)
        else:
            self._old = True
        self.follow()

    def _on_opened(self) -> None:
        self.today = None
        self._show_alone(phrase("Reading the project…"))
        self._on_changed()

    def _on_leaving(self) -> None:
        """Let go of the project before it is closed: what is being read of it is not begun again."""
        self._leaving = True
        self._reading.wait()
        self._leaving = False

    def _on_changed(self, _ids: object = None) -> None:
        self._old = True
        self.follow()

    def _show_alone(self, words: str) -> None:
        self._take_turns(empty_place(words))

    def _take_turns(self, body: QWidget) -> None:
        """Show another body in place of the one before."""
        self._turns.removeWidget(self._body)
        self._body.hide()
        self._body.deleteLater()
        self._body = body
        self._turns.addWidget(body)

    def _focused(self) -> str:
        """Return the name of the line that has the keyboard, so that it keeps it when the counts are read anew."""
        row = self._body.focusWidget()
        return row.task.name if isinstance(row, CountRow) and row.hasFocus() else ""

    def _focus(self, name: str) -> None:
        for row in self.rows():
            if name and row.task.name == name:
                row.setFocus()


def made(frame: Frame) -> TodayPage:
    """Make the page, with its ways to other places."""
    page = TodayPage(frame)
    page.wants_openings.connect(lambda ids, _said: frame.go("openings", tuple(ids)))
    page.wants_parts.connect(lambda numbers, _said: frame.go("parts", tuple(numbers)))
    page.wants_differences.connect(lambda: frame.go("revisions"))
    page.wants_questions.connect(lambda: frame.go("deliveries"))
    return page


def _card(title: str, image: str) -> tuple[QWidget, QVBoxLayout]:
    """Return a pane with a heading, and where its lines go."""
    card = QFrame()
    card.setObjectName("card")
    column = QVBoxLayout(card)
    column.setContentsMargins(SPACE.middle, SPACE.middle, SPACE.middle, SPACE.middle)
    column.setSpacing(SPACE.hair)
    heading = QHBoxLayout()
    heading.setSpacing(SPACE.small)
    words = QLabel(title)
    put_letters(words, "large", bold=True)
    words.setWordWrap(True)
    heading.addWidget(Picture(image, "link"))
    heading.addWidget(words, 1)
    column.addLayout(heading)
    return card, column

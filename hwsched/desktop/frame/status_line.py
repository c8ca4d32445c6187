"""The line at the bottom: openings by their state, the running job with its stop, who works and where."""

import time
from collections import Counter
from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QEvent, QObject, Qt
from PySide6.QtWidgets import QLabel, QProgressBar, QPushButton, QStatusBar

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.looks.text_size import in_figures, in_pixels
from hwsched.desktop.looks.tokens import SPACE, TARGET
from hwsched.desktop.survey.register import STATES, state_of
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.model.journal.written import Written
from hwsched.operations.step_titles import step_said
from hwsched.values import OpeningInput

_WORDS: Final = {
    "Fits": (to_phrase("fits"), to_phrase("fit")),
    "Held": (to_phrase("held"), to_phrase("held")),
    "Does not fit": (to_phrase("does not fit"), to_phrase("do not fit")),
    "To measure": (to_phrase("to measure"), to_phrase("to measure")),
    "Not worked out yet": (to_phrase("not worked out yet"), to_phrase("not worked out yet")),
    "Earlier version": (to_phrase("of an earlier version"), to_phrase("of an earlier version")),
}


def counts_in_words(states: Counter[str]) -> str:
    """Say how many openings there are in each state.

    Examples
    --------
    >>> counts_in_words(Counter({"Fits": 139, "Does not fit": 1, "To measure": 7}))
    '147 openings: 139 fit, 1 does not fit, 7 to measure'
    >>> counts_in_words(Counter())
    'No openings yet'
    """
    total = states.total()
    if not total:
        return phrase("No openings yet")
    parts = [f"{states[each]:,} {phrase(_WORDS[each][states[each] != 1])}" for each in STATES if states[each]]
    return phrase_of_count("{count:,} opening: {parts}", "{count:,} openings: {parts}", total, parts=", ".join(parts))


class StatusLine(QObject):
    """Fills a status bar.

    Parameters
    ----------
    frame : Frame
        What is open, and the jobs.
    bar : QStatusBar
        Of the window.
    """

    def __init__(self, frame: Frame, bar: QStatusBar) -> None:
        super().__init__(bar)
        self._frame, self._bar = frame, bar
        self._state: dict[str, str] = {}
        self.counts = QLabel()
        self.counts.setAccessibleName(phrase("Openings by state"))
        self.counts.installEventFilter(self)
        self.progress = QLabel()
        self.progress.setAccessibleName(phrase("Running job"))
        self.bar = QProgressBar()
        self.bar.setAccessibleName(phrase("Progress of the running job"))
        in_figures(self.bar, maximumWidth=16)
        self.bar.setTextVisible(False)
        self.stop = QPushButton(phrase("Stop"))
        self.stop.setToolTip(phrase("Ask the running job to stop; what it has not finished is not written"))
        in_pixels(self.stop, minimumHeight=TARGET)
        self.stop.clicked.connect(lambda _checked=False: self._ask_to_stop())
        self.where = QLabel()
        self.where.setAccessibleName(phrase("Who works, and where"))
        # What is told for a moment is painted so far from the edge.
        bar.setContentsMargins(SPACE.hair, 0, 0, 0)
        bar.addWidget(self.counts)
        for each in (self.progress, self.bar, self.stop, self.where):
            bar.addPermanentWidget(each)
        self._hide_job()
        self._told: tuple[str, float] = "", 0.0
        """What was told while a job runs, and until when: its end leaves it there."""
        frame.said.connect(self._say)
        frame.jobs.wrote.connect(self._on_wrote)
        frame.jobs.started.connect(self._on_started)
        frame.jobs.progressed.connect(self._on_progress)
        frame.jobs.ended.connect(self._on_ended)
        frame.jobs.log.changed.connect(self._on_log)
        frame.state.ahead.connect(self._on_ahead)
        frame.state.reloaded.connect(self._on_reloaded)
        frame.state.touched.connect(self._on_touched)
        frame.state.settled.connect(self._on_settled)
        frame.state.opened.connect(self._on_reloaded)
        frame.state.leaving.connect(self._on_leaving)

    def eventFilter(self, watched: QObject, event: QEvent) -> bool:  # noqa: N802
        """Keep the counts out of sight while something is told: the bar shows them again when its height changes."""
        if watched is self.counts and event.type() == QEvent.Type.Show and self._bar.currentMessage():
            self.counts.hide()
            # By this the bar knows that it may show them when nothing is told any more.
            self.counts.setAttribute(Qt.WidgetAttribute.WA_WState_ExplicitShowHide, False)
        return super().eventFilter(watched, event)

    def _on_settled(self) -> None:
        workspace = self._frame.state.workspace
        if workspace is not None:
            place = workspace.place
            where = place.name if place is not None else phrase("on a server")
            only_read = workspace.project.read_only
            if only_read:
                where = phrase("{place}, read only", place=where)
            self.where.setText(f"{self._frame.state.who} · {where}")
            self.where.setToolTip(
                phrase(
                    "{person} works on {place}",
                    person=self._frame.state.who,
                    place=place if place is not None else where,
                )
            )

    def _on_reloaded(self) -> None:
        workspace = self._frame.state.workspace
        checked = workspace.checked if workspace is not None else {}
        self._state = {id_: state_of(each) for id_, each in checked.items()}
        self._show()

    def _on_ahead(self, openings: Sequence[OpeningInput]) -> None:
        self.counts.setText(
            phrase_of_count("{count:,} opening, being checked", "{count:,} openings, being checked", len(openings))
            if openings
            else ""
        )

    def _on_leaving(self) -> None:
        self._state = {}
        self.counts.clear()
        self.where.clear()

    def _on_touched(self, ids: frozenset[str]) -> None:
        workspace = self._frame.state.workspace
        if workspace is not None:
            self._state.update({each: state_of(workspace.checked[each]) for each in ids})
            self._show()

    def _show(self) -> None:
        self.counts.setText(counts_in_words(Counter(self._state.values())))

    def _on_started(self, title: str) -> None:
        self._bar.showMessage(f"{title}…")
        self.bar.setRange(0, 0)
        self.progress.clear()
        self.stop.setEnabled(True)
        for each in (self.progress, self.bar, self.stop):
            each.show()

    def _ask_to_stop(self) -> None:
        self._frame.jobs.cancel()
        self._say_stopping()

    def _say_stopping(self) -> None:
        self.stop.setEnabled(False)
        self.progress.setText(phrase("stopping"))

    def _say(self, words: str, how_long_ms: int) -> None:
        self._told = (words, time.monotonic() + how_long_ms / 1000) if self._frame.jobs.busy else ("", 0.0)
        self._bar.showMessage(words, how_long_ms)

    def _on_wrote(self, written: Sequence[Written]) -> None:
        """Tell what a step did: of one that is taken back, or of many cells, nothing else is seen to be done."""
        last = written[-1]
        self._frame.say(
            phrase("Step {number}: {step}", number=last.number, step=step_said(last.summary)),
        )

    def _on_progress(self, done: int, total: int) -> None:
        if not self.stop.isEnabled():
            # How far it had come says nothing any more.
            return
        self.bar.setRange(0, max(total, 1))
        self.bar.setValue(done)
        self.progress.setText(phrase("{done:,} of {total:,}", done=done, total=total))

    def _on_log(self) -> None:
        running = self._frame.jobs.log.running
        if running is not None and running.stopping:
            self._say_stopping()

    def _on_ended(self) -> None:
        words, until = self._told
        left_ms = round(1000 * (until - time.monotonic()))
        if words and left_ms > 0:
            self._bar.showMessage(words, left_ms)
        else:
            self._bar.clearMessage()
        self._told = "", 0.0
        self._hide_job()

    def _hide_job(self) -> None:
        for each in (self.progress, self.bar, self.stop):
            each.hide()

"""One job as people are told of it: how far it is, what came of it, what was left out, what it made. No widgets."""

from collections.abc import Sequence
from dataclasses import dataclass, field
from pathlib import Path
from time import monotonic
from typing import Literal

from hwsched.language import phrase, phrase_of_count

Outcome = Literal["running", "done", "stopped", "failed"]
_MINUTE_S = 60
_SHORT_S = 10


@dataclass(frozen=True, slots=True)
class Report:
    """What came of a job."""

    words: str = ""
    """In a sentence."""
    left_out: tuple[tuple[str, str], ...] = ()
    """Mark of an opening, or name of a file, and why it was left out."""
    files: tuple[Path, ...] = ()
    """What was written."""
    openings: tuple[str, ...] = ()
    """Identifiers of the openings it was about, so that they can be shown."""


def of_files(written: Sequence[Path], folder: Path) -> Report:
    """Report what was written, so that files and their folder can be opened from there."""
    return Report(
        phrase_of_count(
            "{count} file written into {folder}", "{count} files written into {folder}", len(written), folder=folder
        ),
        files=tuple(written),
    )


@dataclass(slots=True)
class Ran:
    """A job that runs or ran."""

    title: str
    began: float = field(default_factory=monotonic)
    done: int = 0
    total: int = 0
    outcome: Outcome = "running"
    stopping: bool = False
    """Whether it was asked to stop."""
    seconds: float = 0.0
    report: Report = field(default_factory=Report)
    trouble: str = ""
    """Why it failed."""

    def end(self, outcome: Outcome) -> None:
        """Write down how it ended, and how long it took."""
        self.outcome, self.seconds = outcome, monotonic() - self.began

    @property
    def progress(self) -> str:
        """How far it is, in items.

        Examples
        --------
        >>> Ran("Fitting", done=4120, total=10000).progress
        '4,120 of 10,000'
        >>> Ran("Reading").progress
        ''
        """
        return phrase("{done:,} of {total:,}", done=self.done, total=self.total) if self.total else ""

    @property
    def words(self) -> str:
        """What came of it, in one line.

        Examples
        --------
        >>> Ran("Fitting", outcome="done", seconds=3.21, report=Report("2 fit")).words
        '2 fit · 3.2 s'
        >>> Ran("Fitting", outcome="stopped", seconds=75.0, done=3, total=9).words
        'stopped at 3 of 9; what was not finished was not written · 1 min 15 s'
        """
        if self.outcome == "running":
            return phrase("stopping") if self.stopping else self.progress or phrase("running")
        said = self.report.words
        if self.outcome == "stopped":
            at = phrase(" at {progress}", progress=self.progress) if self.total else ""
            said = said or phrase("stopped{at}; what was not finished was not written", at=at)
        elif self.outcome == "failed":
            said = self.trouble or phrase("failed")
        left = len(self.report.left_out)
        return " · ".join(
            each
            for each in (said or phrase("done"), phrase("{left} left out", left=left) if left else "", self.took)
            if each
        )

    @property
    def took(self) -> str:
        """How long it took."""
        minutes, seconds = divmod(self.seconds, _MINUTE_S)
        if minutes:
            return phrase("{minutes:.0f} min {seconds:.0f} s", minutes=minutes, seconds=seconds)
        return f"{seconds:.1f} s" if seconds < _SHORT_S else f"{seconds:.0f} s"

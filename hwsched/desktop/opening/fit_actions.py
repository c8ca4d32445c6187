"""Working out in the main window: fit and check, what would be otherwise, what an earlier version worked out."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.opening.fit_report import report_of
from hwsched.language import phrase_of_count, to_phrase
from hwsched.operations.changes import Changes

if TYPE_CHECKING:
    from hwsched.operations.opening.fitting_openings import FitOutcome


class FitActions(Subject):
    """Fits of many openings at once.

    Parameters
    ----------
    frame : Frame
        Open project, jobs, edits, telling.
    in_view : callable
        Returns the openings that the register shows, in order.
    """

    def __init__(self, frame: Frame, in_view: Callable[[], list[str]]) -> None:
        super().__init__(frame)
        self._in_view = in_view
        self.act_fit = self.action(
            to_phrase("Fit"),
            to_phrase("Work out parts, place, cable, power and holes"),
            self.fit,
            "openings",
            "F5",
            acts_on="in view",
            icon="fit",
        )
        self.act_check = self.action(
            to_phrase("Check"), to_phrase("Let every rule speak again"), self.check, "openings", "F6", icon="check"
        )
        self.act_what_if, self.act_upgrade = self.way_to("what-if"), self.way_to("upgrade")

    def fit(self) -> None:
        """Fit the openings that are shown; those whose fit is another one are read anew."""
        from hwsched.operations.opening.fitting_openings import fit_openings

        workspace = self.state.workspace
        if workspace is None:
            return
        ids = self._in_view()

        def work(progress: Progress, cancelled: Cancelled) -> tuple[Changes, list[FitOutcome]]:
            return fit_openings(workspace.project, ids, who=workspace.who, progress=progress, cancelled=cancelled)

        def then(done: tuple[Changes, list[FitOutcome]]) -> None:
            kept = sum(each.kept for each in done[1])
            if kept:
                self.frame.say(
                    phrase_of_count(
                        "{count} released opening keeps what an earlier version worked out",
                        "{count} released openings keep what an earlier version worked out",
                        kept,
                    ),
                    15000,
                )

        self.jobs.run(
            phrase_of_count("Fitting {count} opening", "Fitting {count} openings", len(ids)),
            work,
            then,
            tells=report_of,
        )

    def check(self) -> None:
        """Read and check everything anew."""
        self.frame.following.reload()

    def show_since_upgrade(self) -> None:
        """Show what this version says otherwise than the one that worked out the stored fits."""
        self.frame.go("upgrade")

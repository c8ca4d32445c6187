"""Working out in the main window: fit and check, what would be otherwise, what an earlier version worked out."""

from collections.abc import Callable

from hwsched.desktop.frame import Frame
from hwsched.desktop.jobs import Cancelled, Progress
from hwsched.desktop.opening.upgrade_window import UpgradeWindow
from hwsched.desktop.opening.what_if_window import WhatIfWindow
from hwsched.desktop.subject import Subject
from hwsched.operations.changes import Changes
from hwsched.operations.opening.fitting_openings import FitOutcome, fit_openings


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
        self.act_fit = self.action("Fit", "Work out parts, place, cable, power and holes", self.fit, "openings", "F5")
        self.act_check = self.action("Check", "Let every rule speak again", self.check, "openings", "F6")
        self.act_what_if = self.action("What if?", "Compare before anything is changed", self.show_what_if, "project")
        self.act_upgrade = self.action(
            "Since the upgrade",
            "What this version says otherwise than an earlier one",
            self.show_since_upgrade,
            "project",
        )

    def fit(self) -> None:
        """Fit the openings that are shown; those whose fit is another one are read anew."""
        workspace = self.state.workspace
        if workspace is None:
            return
        ids = self._in_view()

        def work(progress: Progress, cancelled: Cancelled) -> tuple[Changes, list[FitOutcome]]:
            return fit_openings(workspace.project, ids, who=workspace.who, progress=progress, cancelled=cancelled)

        def then(done: tuple[Changes, list[FitOutcome]]) -> None:
            kept = sum(each.kept for each in done[1])
            if kept:
                self.frame.say(f"{kept} released openings keep what an earlier version worked out", 15000)

        self.jobs.run(f"Fitting {len(ids)} openings", work, then)

    def check(self) -> None:
        """Read and check everything anew."""
        self.frame.following.reload()

    def show_what_if(self) -> None:
        """Show what would be different."""
        self.frame.side.show(WhatIfWindow, lambda desk: WhatIfWindow(desk, self.frame.window))

    def show_since_upgrade(self) -> None:
        """Show what this version says otherwise than the one that worked out the stored fits."""
        window = self.frame.side.show(UpgradeWindow, lambda desk: UpgradeWindow(desk, self.frame.window))
        if window is not None and window.found is None:
            window.compare()

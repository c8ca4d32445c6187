"""What a specifier does over many openings: hardware sets, what-if, fewest different parts, missing facts, cost."""

from hwsched.desktop.findings.finding_work import FindingWork
from hwsched.desktop.opening.upgrade_window import UpgradeWindow
from hwsched.desktop.opening.what_if_window import WhatIfWindow
from hwsched.desktop.parts.cost_window import CostWindow
from hwsched.desktop.parts.fewest_window import FewestWindow
from hwsched.desktop.parts.sets_window import SetsWindow
from hwsched.desktop.power.power_window import PowerWindow
from hwsched.desktop.survey.missing_window import MissingWindow


class SpecifyWork(FindingWork):
    """Windows beside the main one, each for one kind of work."""

    def show_sets(self) -> None:
        """Show the hardware sets."""
        self.tool(SetsWindow, lambda desk: SetsWindow(desk, self))

    def show_power(self) -> None:
        """Show supplies and circuits."""
        self.tool(PowerWindow, lambda desk: PowerWindow(desk, self))

    def show_what_if(self) -> None:
        """Show what would be different."""
        self.tool(WhatIfWindow, lambda desk: WhatIfWindow(desk, self))

    def show_fewest(self) -> None:
        """Show how few different parts would serve."""
        self.tool(FewestWindow, lambda desk: FewestWindow(desk, self))

    def show_since_upgrade(self) -> None:
        """Show what this version says otherwise than the one that worked out the stored fits."""
        window = self.tool(UpgradeWindow, lambda desk: UpgradeWindow(desk, self))
        if window is not None and window.found is None:
            window.compare()

    def show_missing(self) -> None:
        """Show the facts that are missing."""
        self.tool(MissingWindow, lambda desk: MissingWindow(desk, self))

    def show_cost(self) -> None:
        """Show what the project costs, and reckon it."""
        window = self.tool(CostWindow, lambda desk: CostWindow(desk, self))
        if window is not None:
            window.reckon()

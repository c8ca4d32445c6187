"""Parts in the main window: the catalogue taken in and written; hardware sets, fewest different parts, cost."""

from pathlib import Path
from typing import Any

from PySide6.QtWidgets import QFileDialog

from hwsched.desktop.frame import Frame
from hwsched.desktop.parts.cost_window import CostWindow
from hwsched.desktop.parts.fewest_window import FewestWindow
from hwsched.desktop.parts.sets_window import SetsWindow
from hwsched.desktop.subject import Subject
from hwsched.operations.parts.catalogue_export import export_catalogue
from hwsched.operations.parts.catalogue_import import import_catalogue

_WORKBOOKS = "Workbooks (*.xlsx)"


class PartsActions(Subject):
    """What openings are fitted with, over many of them."""

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self.act_catalogue = self.action(
            "Take in catalogue", "Read a catalogue workbook", self.ask_catalogue, "project"
        )
        self.act_export = self.action(
            "Write catalogue", "Write the catalogue as a workbook", self.ask_export, "project"
        )
        self.act_sets = self.action(
            "Hardware sets", "Make, propose, change and give hardware sets", self.show_sets, "project"
        )
        self.act_fewest = self.action(
            "Fewest different parts", "Few different parts, against cost", self.show_fewest, "project"
        )
        self.act_cost = self.action("Cost", "Totals, and the terms that the project pays", self.show_cost, "project")

    def ask_catalogue(self) -> None:
        """Ask for a catalogue and take it in."""
        path, _ = QFileDialog.getOpenFileName(self.frame.window, "Take in catalogue", "", _WORKBOOKS)
        if path:
            self.take_catalogue(Path(path))

    def take_catalogue(self, path: Path) -> None:
        """Take in a catalogue."""
        workspace = self.state.workspace
        if workspace is None:
            return

        def then(done: Any) -> None:
            self.frame.say(f"{done.parts} parts read: {done.added} new, {done.changed} changed")

        self.jobs.run(
            f"Taking in {path.name}",
            lambda _progress, _cancelled: import_catalogue(workspace.project, path, who=workspace.who),
            then,
        )

    def ask_export(self) -> None:
        """Ask for a file and write the catalogue."""
        path, _ = QFileDialog.getSaveFileName(self.frame.window, "Write catalogue", "catalogue.xlsx", _WORKBOOKS)
        workspace = self.state.workspace
        if path and workspace is not None:
            self.frame.write(path, lambda: export_catalogue(workspace.project, Path(path)), self.ask_export)

    def show_sets(self) -> None:
        """Show the hardware sets."""
        self.frame.side.show(SetsWindow, lambda desk: SetsWindow(desk, self.frame.window))

    def show_fewest(self) -> None:
        """Show how few different parts would serve."""
        self.frame.side.show(FewestWindow, lambda desk: FewestWindow(desk, self.frame.window))

    def show_cost(self) -> None:
        """Show what the project costs, and reckon it."""
        window = self.frame.side.show(CostWindow, lambda desk: CostWindow(desk, self.frame.window))
        if window is not None:
            window.reckon()

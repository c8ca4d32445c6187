"""The project as a whole in the main window: made, opened, upgraded; settings, own fields; calculators."""

from collections.abc import Callable
from pathlib import Path
from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QFileDialog, QInputDialog, QMessageBox

from hwsched.desktop.frame import Frame
from hwsched.desktop.jobs import Cancelled, Failure, Progress
from hwsched.desktop.project.calculators import CalculatorsDialog
from hwsched.desktop.project.settings_dialog import SettingsDialog
from hwsched.desktop.subject import Subject
from hwsched.model.errors import ChangeError, NeedsUpgradeError
from hwsched.model.project import Project, create_project, open_project
from hwsched.operations.project.demonstration import demonstrate
from hwsched.operations.project.history import newest
from hwsched.operations.project.reading_settings import settings_of
from hwsched.operations.project.settings import set_settings
from hwsched.operations.project.upgrading import Upgraded, upgrade
from hwsched.operations.survey.own_fields import define_field

_PROJECTS = "Projects (*.hwsched)"
_NOTICES = 8
"""So many sentences are shown; the last one says where the rest is."""


class ProjectActions(Subject):
    """Which project is open, and what it decides."""

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self.asked: QMessageBox | None = None
        """The question whether a project is upgraded."""
        self.upgraded: QMessageBox | None = None
        self.noticed: QMessageBox | None = None
        """What was noticed as the project was opened."""
        self.settings: SettingsDialog | None = None
        self.calculators: CalculatorsDialog | None = None
        standard = QKeySequence.StandardKey
        self.act_new = self.action("New project", "Make a project file", self.ask_new, "no job", standard.New)
        self.act_open = self.action("Open project", "Open a project file", self.ask_open, "no job", standard.Open)
        self.act_settings = self.action(
            "Settings and rules", "Units, limits, rules switched off", self.ask_settings, "project"
        )
        self.act_field = self.action(
            "New field of our own", "Define a field of the project's own", self.ask_field, "project"
        )
        self.act_calculators = self.action(
            "Calculators", "Work out one number by itself", self.show_calculators, "nothing", "F9"
        )

    def ask_new(self) -> None:
        """Ask for a place and a title, and make a project there."""
        path, _ = QFileDialog.getSaveFileName(self.frame.window, "New project", "", _PROJECTS)
        if not path:
            return
        target = Path(path).with_suffix(".hwsched")
        name, stated = QInputDialog.getText(self.frame.window, "New project", "Title of the project:", text=target.stem)
        if stated:
            self.new_project(str(target), name.strip() or target.stem, self.ask_new)

    def ask_open(self) -> None:
        """Ask for a project file and open it."""
        path, _ = QFileDialog.getOpenFileName(self.frame.window, "Open project", "", _PROJECTS)
        if path:
            self.open_project(path, self.ask_open)

    def ask_sample(self) -> None:
        """Ask for a folder and run the main job on the sample there."""
        folder = QFileDialog.getExistingDirectory(self.frame.window, "Folder for the sample")
        if folder:
            self.run_sample(Path(folder))

    def run_sample(self, folder: Path) -> None:
        """Run the main job on the sample, then open its project."""

        def work(progress: Progress, _cancelled: Cancelled) -> Any:
            return demonstrate(folder, who=self.state.who, progress=progress)

        self.jobs.run(
            "Working out the sample",
            work,
            lambda shown: self.open_project(str(shown.project)),
            ask_again=self.ask_sample,
        )

    def new_project(self, target: str, name: str, ask_again: Callable[[], None] | None = None) -> None:
        """Make a project and show it; where it cannot be made, another place is asked for on wish."""
        self.jobs.edit(
            "Making the project",
            lambda: create_project(target, name, length_style="fraction", bare_unit="in"),
            self.frame.following.show,
            ask_again=ask_again,
        )

    def open_project(self, target: str, ask_again: Callable[[], None] | None = None) -> None:
        """Open a project and show it; one of an earlier version is upgraded only on the person's word.

        Where it cannot be opened, another one is asked for on wish.
        """

        def act() -> Project | NeedsUpgradeError:
            try:
                return open_project(target)
            except NeedsUpgradeError as error:
                return error

        def then(found: Project | NeedsUpgradeError) -> None:
            if isinstance(found, NeedsUpgradeError):
                self._ask_upgrade(target, found)
            else:
                self.frame.following.show(found)
                self._tell_notices(found)

        self.jobs.edit("Opening the project", act, then, ask_again=ask_again)

    def _tell_notices(self, project: Project) -> None:
        if not project.notices:
            return
        box = QMessageBox(
            QMessageBox.Icon.Warning, "Noticed", "\n".join(project.notices[-_NOTICES:]), parent=self.frame.window
        )
        box.setTextFormat(Qt.TextFormat.PlainText)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.noticed = box
        box.open()

    def _ask_upgrade(self, target: str, error: NeedsUpgradeError) -> None:
        box = QMessageBox(
            QMessageBox.Icon.Question, "An earlier version's project", error.consequence, parent=self.frame.window
        )
        yes = box.addButton("Upgrade it", QMessageBox.ButtonRole.AcceptRole)
        no = box.addButton("Leave it as it is", QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(no)
        box.setEscapeButton(no)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.buttonClicked.connect(lambda pressed: self.upgrade_project(target) if pressed is yes else None)
        self.asked = box
        box.open()

    def upgrade_project(self, target: str) -> None:
        """Bring a project of an earlier version up to date, then open it and say where the copy is."""

        def then(done: Upgraded) -> None:
            self.open_project(target)
            if done.copy is not None:
                self.upgraded = QMessageBox(
                    QMessageBox.Icon.Information,
                    "Upgraded",
                    f"The project as it was is kept:\n{done.copy}",
                    parent=self.frame.window,
                )
                self.upgraded.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
                self.upgraded.open()

        self.jobs.run("Upgrading the project", lambda _progress, _cancelled: upgrade(target), then)

    def ask_settings(self) -> None:
        """Ask what the project decides."""
        if self.state.workspace is None:
            return
        project = self.state.workspace.project
        base = newest(project)
        dialog = SettingsDialog(project.title, settings_of(project), project.time_zone, self.frame.window)
        dialog.accepted.connect(lambda: self._on_settings(dialog, base))
        self.settings = dialog
        dialog.open()

    def _on_settings(self, dialog: SettingsDialog, seen: int) -> None:
        workspace = self.state.workspace
        if workspace is None:
            return
        try:
            name, lengths, prefer, limits, off = dialog.answer()
        except ValueError as error:
            self.frame.telling.tell(Failure("Settings", ChangeError(str(error)), ask_again=dialog.open))
            return
        self.frame.edit_seen(
            lambda base: set_settings(
                workspace.project, who=workspace.who, name=name, length_style=lengths, prefer=prefer,
                time_zone=dialog.zone_answer(), limits=limits or None, rules_off=off or None, base=base,
            ),
            seen,
        )  # fmt: skip

    def ask_field(self) -> None:
        """Ask for the name of a text field on openings, and define it."""
        label, stated = QInputDialog.getText(self.frame.window, "New field", "Label of the field on openings:")
        if stated and label.strip():
            self.define_field(label.strip())

    def define_field(self, label: str) -> None:
        """Define a text field of the project's own on openings."""
        workspace = self.state.workspace
        if workspace is None:
            return
        name = "_".join("".join(c if c.isalnum() else " " for c in label.casefold()).split())

        self.frame.edit(lambda: define_field(workspace.project, "opening", name, label, "text", who=workspace.who))

    def show_calculators(self) -> None:
        """Show the calculators; they need no project."""
        self.calculators = CalculatorsDialog(self.frame.window)
        self.calculators.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.calculators.show()

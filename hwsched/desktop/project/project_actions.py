"""The project as a whole in the main window: made, opened, upgraded; settings, own fields; calculators."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING, Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtGui import QKeySequence
from PySide6.QtWidgets import QInputDialog, QMessageBox

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.desktop.jobs.jobs import Cancelled, Failure, Progress
from hwsched.desktop.project.remains import Remains, remains_of, rescued_words
from hwsched.desktop.widgets.asked_files import file_to_read, file_to_write, folder_to_write
from hwsched.language import phrase, to_phrase
from hwsched.model.errors import ChangeError, DamagedProjectError, NeedsUpgradeError
from hwsched.model.project import Project, create_project, open_project

if TYPE_CHECKING:
    from hwsched.desktop.project.settings_dialog import SettingsDialog
    from hwsched.desktop.project.units import NewProjectDialog
    from hwsched.operations.project.rescuing import Rescued
    from hwsched.operations.project.upgrading import Upgraded

SURVEYS = to_phrase("Surveys (*.xlsx *.xlsm *.xlsb *.xls *.ods *.csv *.tsv *.txt)")
_PROJECTS = to_phrase("Projects (*.hwsched)")
_NOTICES = 8
"""So many sentences are shown; the last one says where the rest is."""


class ProjectActions(Subject):
    """Which project is open, and what it decides."""

    made_for = Signal(object)
    """A project was made and is open, to take in this survey, a Path."""

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self.asked: QMessageBox | None = None
        """The question whether a project is upgraded."""
        self.upgraded: QMessageBox | None = None
        self.noticed: QMessageBox | None = None
        """What was noticed as the project was opened."""
        self.damaged: QMessageBox | None = None
        """What is wrong with the project that was opened, and what is shown of it."""
        self.rescued: QMessageBox | None = None
        """What was saved of a damaged one."""
        self.beginning: NewProjectDialog | None = None
        """What is asked of a project that is to be made."""
        self.settings: SettingsDialog | None = None
        standard = QKeySequence.StandardKey
        self.act_new = self.action(
            to_phrase("New project"), to_phrase("Make a project file"), self.ask_new, "no job", standard.New
        )
        self.act_open = self.action(
            to_phrase("Open project"), to_phrase("Open a project file"), self.ask_open, "no job", standard.Open
        )
        self.act_rescue = self.action(
            to_phrase("Save what can be read of a damaged project…"),
            to_phrase("Into a new project; the damaged file stays as it is"),
            self.ask_rescue,
            "no job",
        )
        self.act_settings = self.action(
            to_phrase("Settings and rules"),
            to_phrase("Units, limits, rules switched off"),
            self.ask_settings,
            "project",
        )
        self.act_field = self.action(
            to_phrase("New field of our own"),
            to_phrase("Define a field of the project's own"),
            self.ask_field,
            "project",
        )
        self.act_calculators = self.way_to("calculators")

    def ask_new(self) -> None:
        """Ask for a place and a title, and make a project there."""
        path = file_to_write(self.frame.window, phrase("New project"), "", phrase(_PROJECTS))
        if not path:
            return
        self._ask_of_new(Path(path).with_suffix(".hwsched"))

    def _ask_of_new(self, target: Path, survey: Path | None = None) -> None:
        from hwsched.desktop.project.units import NewProjectDialog

        dialog = NewProjectDialog(target.stem, self.frame.window)
        dialog.accepted.connect(lambda: self._make(target, dialog, survey))
        self.beginning = dialog
        dialog.open()

    def _make(self, target: Path, dialog: NewProjectDialog, survey: Path | None) -> None:
        name, style, unit = dialog.answer()
        self.new_project(str(target), name or target.stem, self.ask_new, style=style, unit=unit, survey=survey)

    def ask_open(self) -> None:
        """Ask for a project file and open it."""
        path = file_to_read(self.frame.window, phrase("Open project"), phrase(_PROJECTS))
        if path:
            self.open_project(path, self.ask_open)

    def ask_spreadsheet(self) -> None:
        """Ask for a survey that somebody has written and where its project goes; make that, and take the survey in."""
        survey = file_to_read(self.frame.window, phrase("Survey to start from"), phrase(SURVEYS))
        if not survey:
            return
        proposed = str(Path(survey).with_suffix(".hwsched"))
        path = file_to_write(self.frame.window, phrase("New project"), proposed, phrase(_PROJECTS))
        if path:
            self._ask_of_new(Path(path).with_suffix(".hwsched"), Path(survey))

    def ask_server(self) -> None:
        """Ask for the address of a database on a server, and open the project in it."""
        text, stated = QInputDialog.getText(
            self.frame.window,
            phrase("Join an office's database"),
            phrase(
                "Address that you were given, as in postgresql://USER@HOST/NAME. A password belongs into a "
                "password file, never here:"
            ),
        )
        if stated and text.strip():
            self.open_project(text.strip(), self.ask_server)

    def ask_sample(self) -> None:
        """Ask for a folder and run the main job on the sample there."""
        folder = folder_to_write(self.frame.window, phrase("Folder for the sample"))
        if folder:
            self.run_sample(Path(folder))

    def run_sample(self, folder: Path) -> None:
        """Run the main job on the sample, then open its project."""
        from hwsched.operations.project.demonstration import demonstrate

        def work(progress: Progress, _cancelled: Cancelled) -> Any:
            return demonstrate(folder, who=self.state.who, progress=progress)

        self.jobs.run(
            phrase("Working out the sample"),
            work,
            lambda shown: self.open_project(str(shown.project)),
            ask_again=self.ask_sample,
        )

    def new_project(
        self,
        target: str,
        name: str,
        ask_again: Callable[[], None] | None = None,
        *,
        style: str = "fraction",
        unit: str = "in",
        survey: Path | None = None,
    ) -> None:
        """Make a project and show it; where it cannot be made, another place is asked for on wish.

        One that is made for a survey says so once it is shown.
        """

        def then(project: Project) -> None:
            self.frame.following.show(project)
            self.frame.preferences.opened(target)
            if survey is not None:
                # It is read first: one job at a time.
                self.jobs.edit(phrase("Opening the survey"), lambda: survey, self.made_for.emit)

        self.jobs.edit(
            phrase("Making the project"),
            lambda: create_project(target, name, length_style=style, bare_unit=unit),
            then,
            ask_again=ask_again,
        )

    def open_project(self, target: str, ask_again: Callable[[], None] | None = None) -> None:
        """Open a project and show it; one of an earlier version is upgraded only on the person's word.

        What can be read of a damaged one is shown, to be read only. Where it cannot be opened, another one is asked
        for on wish.
        """

        def act() -> Project | NeedsUpgradeError | Remains:
            try:
                return open_project(target)
            except NeedsUpgradeError as error:
                return error
            except DamagedProjectError as error:
                return remains_of(target, error)

        def then(found: Project | NeedsUpgradeError | Remains) -> None:
            if isinstance(found, NeedsUpgradeError):
                self._ask_upgrade(target, found)
            elif isinstance(found, Remains):
                self.frame.following.show(found.project, found)
                self._tell_damaged(found)
            else:
                self.frame.following.show(found)
                self.frame.preferences.opened(target)
                self._tell_notices(found)

        self.jobs.edit(phrase("Opening the project"), act, then, ask_again=ask_again)

    def _tell_notices(self, project: Project) -> None:
        if not project.notices:
            return
        box = QMessageBox(
            QMessageBox.Icon.Warning,
            phrase("Noticed"),
            "\n".join(project.notices[-_NOTICES:]),
            parent=self.frame.window,
        )
        box.setTextFormat(Qt.TextFormat.PlainText)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.noticed = box
        box.open()

    def _tell_damaged(self, remains: Remains) -> None:
        box = QMessageBox(
            QMessageBox.Icon.Warning, phrase("A damaged project"), remains.words, parent=self.frame.window
        )
        box.setTextFormat(Qt.TextFormat.PlainText)
        box.setDetailedText(remains.why)
        save = box.addButton(phrase("Save what can be read…"), QMessageBox.ButtonRole.AcceptRole)
        look = box.addButton(phrase("Only look at it"), QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(look)
        box.setEscapeButton(look)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.buttonClicked.connect(lambda pressed: self.ask_rescue() if pressed is save else None)
        self.damaged = box
        box.open()

    def ask_rescue(self) -> None:
        """Ask where what can be read is saved: of the damaged project that is shown, else of one that is asked for."""
        workspace = self.state.workspace
        if workspace is not None and workspace.remains is not None:
            source = str(workspace.remains.place)
        else:
            source = file_to_read(self.frame.window, phrase("Damaged project"), phrase(_PROJECTS))
        if not source:
            return
        damaged = Path(source)
        proposed = str(damaged.with_name(f"{damaged.stem} rescued.hwsched"))
        path = file_to_write(self.frame.window, phrase("Save into a new project"), proposed, phrase(_PROJECTS))
        if path:
            self.rescue_project(source, str(Path(path).with_suffix(".hwsched")))

    def rescue_project(self, source: str, target: str) -> None:
        """Save what can be read of a project into a new one, say what is lost, and open it."""
        from hwsched.operations.project.rescuing import rescue

        def then(found: Rescued) -> None:
            self.open_project(target)
            text, more = rescued_words(found, Path(target))
            box = QMessageBox(
                QMessageBox.Icon.Information, phrase("Saved what can be read"), text, parent=self.frame.window
            )
            box.setTextFormat(Qt.TextFormat.PlainText)
            if more:
                box.setDetailedText(more)
            box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
            self.rescued = box
            box.open()

        self.jobs.run(
            phrase("Saving what can be read"),
            lambda _progress, _cancelled: rescue(source, target),
            then,
            ask_again=self.ask_rescue,
        )

    def _ask_upgrade(self, target: str, error: NeedsUpgradeError) -> None:
        box = QMessageBox(
            QMessageBox.Icon.Question,
            phrase("An earlier version's project"),
            error.consequence,
            parent=self.frame.window,
        )
        yes = box.addButton(phrase("Upgrade it"), QMessageBox.ButtonRole.AcceptRole)
        no = box.addButton(phrase("Leave it as it is"), QMessageBox.ButtonRole.RejectRole)
        box.setDefaultButton(no)
        box.setEscapeButton(no)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.buttonClicked.connect(lambda pressed: self.upgrade_project(target) if pressed is yes else None)
        self.asked = box
        box.open()

    def upgrade_project(self, target: str) -> None:
        """Bring a project of an earlier version up to date, then open it and say where the copy is."""
        from hwsched.operations.project.upgrading import upgrade

        def then(done: Upgraded) -> None:
            self.open_project(target)
            if done.copy is not None:
                self.upgraded = QMessageBox(
                    QMessageBox.Icon.Information,
                    phrase("Upgraded"),
                    phrase("The project as it was is kept:\n{copy}", copy=done.copy),
                    parent=self.frame.window,
                )
                self.upgraded.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
                self.upgraded.open()

        self.jobs.run(phrase("Upgrading the project"), lambda _progress, _cancelled: upgrade(target), then)

    def ask_settings(self) -> None:
        """Ask what the project decides."""
        from hwsched.desktop.project.settings_dialog import SettingsDialog
        from hwsched.desktop.project.units import UnitsBox
        from hwsched.operations.project.history import newest
        from hwsched.operations.project.reading_settings import settings_of

        if self.state.workspace is None:
            return
        project = self.state.workspace.project
        base = newest(project)
        units = UnitsBox(project.length_style, project.bare_unit)
        dialog = SettingsDialog(project.title, settings_of(project), project.time_zone, units, self.frame.window)
        dialog.accepted.connect(lambda: self._on_settings(dialog, base))
        self.settings = dialog
        dialog.open()

    def _on_settings(self, dialog: SettingsDialog, seen: int) -> None:
        from hwsched.operations.project.settings import set_settings

        workspace = self.state.workspace
        if workspace is None:
            return
        try:
            name, prefer, limits, off = dialog.answer()
        except ValueError as error:
            self.frame.telling.tell(Failure(phrase("Settings"), ChangeError(str(error)), ask_again=dialog.open))
            return
        self.frame.edit_seen(
            lambda base: set_settings(
                workspace.project, who=workspace.who, name=name, length_style=dialog.units.style_answer(),
                bare_unit=dialog.units.unit_answer(), prefer=prefer,
                time_zone=dialog.zone_answer(), limits=limits or None, rules_off=off or None, base=base,
            ),
            seen,
        )  # fmt: skip

    def ask_field(self) -> None:
        """Ask for the name of a text field on openings, and define it."""
        label, stated = QInputDialog.getText(
            self.frame.window, phrase("New field"), phrase("Label of the field on openings:")
        )
        if stated and label.strip():
            self.define_field(label.strip())

    def define_field(self, label: str) -> None:
        """Define a text field of the project's own on openings."""
        from hwsched.operations.survey.own_fields import define_field

        workspace = self.state.workspace
        if workspace is None:
            return
        name = "_".join("".join(c if c.isalnum() else " " for c in label.casefold()).split())

        self.frame.edit(lambda: define_field(workspace.project, "opening", name, label, "text", who=workspace.who))

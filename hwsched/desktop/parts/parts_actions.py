"""Parts in the main window: the catalogue taken in and written."""

from pathlib import Path
from typing import Any

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.desktop.jobs.ran import Report
from hwsched.desktop.widgets.asked_files import file_to_read, file_to_write
from hwsched.language import phrase, phrase_of_count, to_phrase

_WORKBOOKS = to_phrase("Workbooks (*.xlsx)")


class PartsActions(Subject):
    """What openings are fitted with."""

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self.act_catalogue = self.action(
            to_phrase("Take in catalogue"), to_phrase("Read a catalogue workbook"), self.ask_catalogue, "project"
        )
        self.act_export = self.action(
            to_phrase("Write catalogue"), to_phrase("Write the catalogue as a workbook"), self.ask_export, "project"
        )

    def ask_catalogue(self) -> None:
        """Ask for a catalogue and take it in."""
        path = file_to_read(self.frame.window, phrase("Take in catalogue"), phrase(_WORKBOOKS))
        if path:
            self.take_catalogue(Path(path))

    def take_catalogue(self, path: Path) -> None:
        """Take in a catalogue."""
        from hwsched.operations.parts.catalogue_import import import_catalogue

        workspace = self.state.workspace
        if workspace is None:
            return

        def tells(done: Any) -> Report:
            return Report(
                phrase_of_count(
                    "{parts} part read: {added} new, {changed} changed",
                    "{parts} parts read: {added} new, {changed} changed",
                    done.parts,
                    parts=done.parts,
                    added=done.added,
                    changed=done.changed,
                )
            )

        self.jobs.run(
            phrase("Taking in {name}", name=path.name),
            lambda _progress, _cancelled: import_catalogue(workspace.project, path, who=workspace.who),
            lambda done: self.frame.say(tells(done).words),
            tells=tells,
        )

    def ask_export(self) -> None:
        """Ask for a file and write the catalogue."""
        from hwsched.operations.parts.catalogue_export import export_catalogue

        path = file_to_write(self.frame.window, phrase("Write catalogue"), "catalogue.xlsx", phrase(_WORKBOOKS))
        workspace = self.state.workspace
        if path and workspace is not None:
            self.frame.write(path, lambda: export_catalogue(workspace.project, Path(path)), self.ask_export)

"""People in the main window: who works on the project, and in which role."""

from __future__ import annotations

from collections.abc import Callable
from typing import TYPE_CHECKING

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.language import to_phrase

if TYPE_CHECKING:
    from hwsched.desktop.project.people_dialog import PeopleDialog
    from hwsched.operations.changes import Changes


class PeopleActions(Subject):
    """The list of people."""

    def __init__(self, frame: Frame) -> None:
        super().__init__(frame)
        self.dialog: PeopleDialog | None = None
        self.act_people = self.action(
            to_phrase("People"), to_phrase("Who works on the project, and in which role"), self.show_people, "project"
        )

    def show_people(self) -> None:
        """Show who works on the project, and in which role."""
        from hwsched.desktop.project.people_dialog import PeopleDialog

        workspace = self.state.workspace
        if workspace is None:
            return
        dialog = PeopleDialog(workspace.who, self.frame.window)
        dialog.wants_person.connect(self.list_person)
        dialog.wants_gone.connect(self.take_off_person)
        self.dialog = dialog
        self._show_people()
        dialog.open()

    def list_person(self, name: str, role: str) -> None:
        """List a person, or give another role."""
        from hwsched.operations.project.people import add_person

        workspace = self.state.workspace
        if workspace is not None:
            project, who = workspace.project, workspace.who
            self._edit_people(lambda base: add_person(project, name, role, who=who, base=base))

    def take_off_person(self, name: str) -> None:
        """Take a person off the list."""
        from hwsched.operations.project.people import remove_person

        workspace = self.state.workspace
        if workspace is not None:
            project, who = workspace.project, workspace.who
            self._edit_people(lambda base: remove_person(project, name, who=who, base=base))

    def _edit_people(self, act: Callable[[int | None], Changes]) -> None:
        if self.dialog is not None:
            self.frame.edit_seen(act, self.dialog.base, lambda _changes: self._show_people(), asker=self.dialog)

    def _show_people(self) -> None:
        from hwsched.operations.project.history import newest
        from hwsched.operations.project.people import people

        if self.state.workspace is not None and self.dialog is not None:
            base = newest(self.state.workspace.project)
            self.dialog.show_people(people(self.state.workspace.project), base)

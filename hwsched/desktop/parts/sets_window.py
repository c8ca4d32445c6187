"""Hardware sets: made, proposed, changed after a look at what changes, given to openings and taken from them."""

from typing import Any

from PySide6.QtCore import Qt
from PySide6.QtWidgets import QHBoxLayout, QLabel, QMessageBox, QSplitter, QVBoxLayout, QWidget

from hwsched.desktop.frame.keyboard_kept import begins_here
from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.looks.text_size import put_letters
from hwsched.desktop.opening.part_box import catalogue_of, part_names
from hwsched.desktop.parts.new_set_dialog import NewSetDialog
from hwsched.desktop.parts.proposed_sets_dialog import ProposedSetsDialog
from hwsched.desktop.parts.set_grids import EffectGrid, MemberGrid, SetGrid
from hwsched.desktop.parts.set_lines import SetLines
from hwsched.desktop.widgets.flow import Foot
from hwsched.desktop.widgets.tabs import TabbedPages
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.parts.hardware_sets import (
    HardwareSet,
    Line,
    SetEffect,
    accept_sets,
    assign_set,
    change_set_lines,
    effect_of_lines,
    hardware_sets,
    make_set,
    propose_sets,
    remove_set,
)
from hwsched.operations.project.history import newest


class SetsWindow(ToolWindow):
    """Sets at the left; lines and openings of the chosen one at the right."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Hardware sets"), parent)
        self.resize(1080, 620)
        self._shown: str | None = None
        """Identifier of the set that the form shows."""
        self._seen: tuple[str, tuple[Line, ...]] | None = None
        self._base: int | None = None
        self._was: tuple[tuple[Line, ...], int | None] = ((), None)
        """Lines of the chosen set when the form began to show it, and the newest step then."""
        self.names = part_names(catalogue_of(desk.workspace))
        self.list = SetGrid()
        self.list.picked.connect(self._on_picked)
        self.new = self.button(
            phrase("New…"), self.ask_new, phrase("Of what the selected openings have alike, or by hand")
        )
        self.propose = self.button(
            phrase("Propose…"), self.ask_proposals, phrase("Groups of openings that take the same parts")
        )
        self.remove = self.button(phrase("Remove"), self.remove_chosen, phrase("Its openings are left to the fit"))
        self.heading = QLabel(textFormat=Qt.TextFormat.PlainText, wordWrap=True)
        put_letters(self.heading, bold=True)
        self.lines = SetLines(self.names)
        self.lines.changed.connect(self.enable)
        self.look = self.button(
            phrase("What changes?"), self.look_at_effects, phrase("Work out which openings the lines change")
        )
        self.take = self.button(phrase("Accept lines"), self.accept_lines, phrase("First look at what changes"))
        self.lines.row.addWidget(self.look)
        self.lines.row.addWidget(self.take)
        self.members, self.effects = MemberGrid(), EffectGrid()
        self.members.opened.connect(lambda id_: self.desk.show_openings([id_]))
        self.effects.opened.connect(self._show_opening)
        self.pages = TabbedPages()
        self.pages.addTab(self.members, phrase("Openings"))
        self.pages.addTab(self.effects, phrase("What changes"))
        self.give = self.button(phrase("Give"), self.give_set)
        self.free = self.button(phrase("Free"), self.free_openings)
        self._build()
        self.follow()

    def _build(self) -> None:
        left, right = QWidget(), QWidget()
        row = QHBoxLayout()
        for each in (self.new, self.propose, self.remove):
            row.addWidget(each)
        row.addStretch(1)
        column = QVBoxLayout(left)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.list, 1)
        column.addLayout(row)
        column = QVBoxLayout(right)
        column.setContentsMargins(0, 0, 0, 0)
        column.addWidget(self.heading)
        halves = QSplitter(Qt.Orientation.Vertical)
        halves.addWidget(self.lines)
        halves.addWidget(self.pages)
        halves.setSizes([280, 260])
        column.addWidget(halves, 1)
        # Under what they act on, so that both panes end on one line.
        below = Foot()
        below.addWidget(QLabel())
        below.addWidget(self.give)
        below.addWidget(self.free)
        column.addLayout(below)
        split = QSplitter(Qt.Orientation.Horizontal)
        split.addWidget(left)
        split.addWidget(right)
        split.setSizes([390, 690])
        self.body.addWidget(split)
        begins_here(self.list.table)

    def chosen(self) -> HardwareSet | None:
        """Return the chosen set."""
        return self.list.chosen()

    def choose(self, name: str) -> None:
        """Choose a set by its name."""
        found = next((each.id for each in self.list.model.contents.rows if each.name == name), None)
        if found is not None:
            self.list.select((found,), found)
            self._show()

    def follow(self) -> None:
        """Read the sets anew; lines that are being changed stay as they were typed."""
        before, typed = self.chosen(), self.lines.lines()
        changing = before is not None and typed != before.lines
        self._base = newest(self.desk.workspace.project)
        self.list.show_sets(hardware_sets(self.desk.workspace.project))
        now = self.chosen()
        self._show(keep_lines=changing and now is not None and before is not None and now.id == before.id)

    def _on_picked(self) -> None:
        held = self.chosen()
        if (held.id if held is not None else None) != self._shown:
            self._show()

    def enable(self) -> None:
        """Let what is possible with the chosen set and the selected openings be done."""
        held, selected, idle = self.chosen(), len(self.desk.chosen()), self.idle
        self.new.setEnabled(idle)
        self.propose.setEnabled(idle and bool(self.desk.workspace.checked))
        self.remove.setEnabled(idle and held is not None)
        lines = self.lines.lines()
        other = held is not None and bool(lines) and lines != held.lines
        self.lines.setEnabled(held is not None)
        self.look.setEnabled(idle and other)
        self.take.setEnabled(idle and other and held is not None and self._seen == (held.id, lines))
        self.give.setText(
            phrase("Give the set to {openings} selected", openings=_openings(selected))
            if selected
            else phrase("Give the set to selected openings")
        )
        self.give.setEnabled(idle and held is not None and selected > 0)
        given = {each for a_set in self.list.model.contents.rows for each in a_set.openings}
        self.free.setText(
            phrase("Free {openings} selected", openings=_openings(selected))
            if selected
            else phrase("Free selected openings")
        )
        self.free.setEnabled(idle and any(each in given for each in self.desk.chosen()))

    def ask_new(self) -> None:
        """Ask for a new set."""
        checked = self.desk.workspace.checked
        ids = self.desk.chosen()
        fits = [fit for each in ids if each in checked and (fit := checked[each].fit) is not None]
        dialog = NewSetDialog(self.names, [fit for fit in fits if fit.status == "fits"], len(ids), self)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.wants_set.connect(self._make)
        self.new_set = dialog
        dialog.open()

    def _make(self) -> None:
        dialog, workspace = self.new_set, self.desk.workspace
        name, notes, lines = dialog.name.text(), dialog.notes.text(), dialog.lines.lines()
        openings = self.desk.chosen() if dialog.give.isChecked() else []

        def then(_made: Any) -> None:
            dialog.accept()
            self.follow()
            self.choose(" ".join(name.split()))

        self.desk.edit(
            lambda: make_set(workspace.project, name, lines, who=workspace.who, notes=notes, openings=openings),
            then,
            asker=dialog,
        )

    def ask_proposals(self) -> None:
        """Group openings alike, and ask which groups become sets."""
        project = self.desk.workspace.project

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            found = propose_sets(project, progress=progress, cancelled=cancelled)
            return None if cancelled() else found

        self.run(phrase("Grouping openings alike"), work, self._on_proposed)

    def _on_proposed(self, proposed: Any) -> None:
        if not proposed:
            words = (
                phrase("Stopped.") if proposed is None else phrase("No two openings without a set take the same parts.")
            )
            self.told.setText(words)
            return
        dialog = ProposedSetsDialog(proposed, self)
        dialog.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        dialog.wants_sets.connect(self._make_proposed)
        self.proposed = dialog
        dialog.open()

    def _make_proposed(self) -> None:
        dialog, workspace = self.proposed, self.desk.workspace
        chosen = dialog.accepted_sets()

        def then(_changes: Any) -> None:
            dialog.accept()
            self.follow()

        self.desk.edit(lambda: accept_sets(workspace.project, chosen, who=workspace.who), then, asker=dialog)

    def look_at_effects(self) -> None:
        """Work out which openings the lines as they stand would change."""
        held, lines, project = self.chosen(), self.lines.lines(), self.desk.workspace.project
        if held is None:
            return
        set_id = held.id

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            found = effect_of_lines(project, set_id, lines, progress=progress, cancelled=cancelled)
            return None if cancelled() else found

        self.run(phrase("Working out what changes"), work, lambda found: self._on_effects(set_id, lines, found))

    def _on_effects(self, set_id: str, lines: tuple[Line, ...], found: tuple[SetEffect, ...] | None) -> None:
        held = self.chosen()
        if found is None or held is None or held.id != set_id:
            self.told.setText(phrase("Stopped; nothing is changed."))
            return
        self._seen = (set_id, lines)
        self._show_effects(found)
        worse = sum(each.after != "fits" and each.before == "fits" for each in found)
        words = phrase("{count} of {openings} change", count=len(found), openings=_openings(len(held.openings)))
        self.told.setText(
            phrase("{words}; {worse} of them would no longer fit.", words=words, worse=worse) if worse else f"{words}."
        )
        self.pages.setCurrentWidget(self.effects)
        self.enable()

    def accept_lines(self) -> None:
        """Put the lines that were looked at into the set."""
        held, lines, workspace = self.chosen(), self.lines.lines(), self.desk.workspace
        if held is None:
            return
        set_id = held.id
        was, seen = self._was

        def then(_changes: Any) -> None:
            self._seen = None
            self.told.setText(phrase("Accepted. Run Fit to store the openings' fits."))
            self.follow()
            # Roles that were left as they were stand there as others may have changed them.
            self._show()

        self.edit_seen(
            lambda base: change_set_lines(workspace.project, set_id, lines, who=workspace.who, was=was, base=base),
            seen,
            then,
        )

    def give_set(self) -> None:
        """Give the chosen set to the openings selected in the register."""
        held = self.chosen()
        if held is not None:
            self._give(held.id, self.desk.chosen())

    def free_openings(self) -> None:
        """Take the openings selected in the register out of their sets."""
        self._give(None, self.desk.chosen())

    def _give(self, set_id: str | None, ids: list[str]) -> None:
        workspace = self.desk.workspace
        self.edit_seen(
            lambda base: assign_set(workspace.project, set_id, ids, who=workspace.who, base=base),
            self._base,
            lambda _done: self.follow(),
        )

    def remove_chosen(self) -> None:
        """Ask, and remove the chosen set."""
        held = self.chosen()
        if held is None:
            return
        seen = self._base
        text = phrase(
            "Remove {name}? {openings} are left to the fit. Undo brings it back.",
            name=held.name,
            openings=_openings(len(held.openings)),
        )
        box = QMessageBox(QMessageBox.Icon.Question, phrase("Remove hardware set"), text, parent=self)
        box.setStandardButtons(QMessageBox.StandardButton.Yes | QMessageBox.StandardButton.Cancel)
        box.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        box.accepted.connect(lambda: self._remove(held.id, seen))
        self.sure = box
        box.open()

    def _remove(self, set_id: str, seen: int | None) -> None:
        workspace = self.desk.workspace
        self.edit_seen(
            lambda base: remove_set(workspace.project, set_id, who=workspace.who, base=base),
            seen,
            lambda _done: self.follow(),
        )

    def _show(self, keep_lines: bool = False) -> None:
        held = self.chosen()
        self._shown = held.id if held is not None else None
        if not keep_lines:
            self._seen = None
            self._was = (held.lines if held is not None else (), self._base)
            self.lines.show_lines(held.lines if held is not None else ())
            self._show_effects(())
            self.pages.setCurrentWidget(self.members)
        self.members.show_members(held)
        if held is None:
            self.heading.clear()
        else:
            self.heading.setText(f"{held.name}: {held.notes}" if held.notes else held.name)
        self.heading.setVisible(held is not None)
        self.pages.setTabText(
            0, phrase("Openings {count}", count=len(held.openings)) if held is not None else phrase("Openings")
        )
        self.enable()

    def _show_effects(self, found: tuple[SetEffect, ...]) -> None:
        self.effects.model.load(found)
        self.pages.setTabText(
            1, phrase("What changes {count}", count=len(found)) if self._seen is not None else phrase("What changes")
        )

    def _show_opening(self, mark: str) -> None:
        held = self.chosen()
        if held is not None:
            self.desk.show_openings([id_ for id_, each in zip(held.openings, held.marks, strict=True) if each == mark])


def _openings(count: int) -> str:
    return phrase_of_count("{count} opening", "{count} openings", count)

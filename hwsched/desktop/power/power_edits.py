"""Edits of what is laid: rows added, typed into and removed, openings put on circuits; each one step of the journal.

Here belongs which operation is called; what is asked before and shown after stands with the place for power.
"""

from collections.abc import Callable
from pathlib import Path
from typing import Any, Final

from hwsched.desktop.frame.tool_window import ToolWindow
from hwsched.language import phrase, to_phrase
from hwsched.operations.changes import Changes
from hwsched.operations.power import connecting, power_editing
from hwsched.operations.power.power_import import import_power

_BUSY: Final = to_phrase("Not done: something else is being worked out. Try again when it is ready.")


class PowerEdits:
    """Made for a window, which says why one is not made; `then` is always called after the edit.

    Parameters
    ----------
    window : ToolWindow
        In which the edits are asked for.
    """

    def __init__(self, window: ToolWindow) -> None:
        self._window = window

    def connect(
        self,
        openings: list[str],
        circuit_id: str,
        begin: str,
        length: str,
        seen: int | None,
        then: Callable[[], None] | None,
    ) -> None:
        """Put openings on a circuit from a node on, or take them off every one where no circuit is named."""
        project, who = self._window.desk.workspace.project, self._window.desk.workspace.who

        def act(base: int | None) -> Changes:
            if not circuit_id:
                return connecting.disconnect_openings(project, openings, who=who, base=base)
            metres = power_editing.typed_power_fact("run", {"length_m": length})["length_m"] if length else None
            return connecting.connect_openings(
                project, circuit_id, openings, who=who, from_node=begin, length_m=metres, base=base
            )

        self._do_seen(act, seen, (lambda _changes: then()) if then is not None else None)

    def add(self, kind: str, owner: str, texts: dict[str, str], then: Callable[[str], None]) -> None:
        """Add a supply, a circuit of a supply, or a run of a circuit from what was typed; `then` gets which it is."""
        project, who = self._window.desk.workspace.project, self._window.desk.workspace.who

        def act() -> tuple[Changes, str]:
            facts = power_editing.typed_power_fact(kind, texts)
            if kind == "supply":
                return power_editing.add_supply(project, facts, who=who)
            if kind == "circuit":
                return power_editing.add_circuit(project, owner, facts, who=who)
            return power_editing.add_run(project, owner, facts, who=who)

        if self._may():
            self._window.edit(act, lambda made: then(made[1]))

    def remove(self, kind: str, identifier: str, seen: int | None, then: Callable[[], None]) -> None:
        """Remove a supply, circuit or run."""
        project, who = self._window.desk.workspace.project, self._window.desk.workspace.who
        self._do_seen(
            lambda base: power_editing.remove_power_row(project, kind, identifier, who=who, base=base),
            seen,
            lambda _changes: then(),
        )

    def type_fact(
        self,
        entity: str,
        row: str,
        attribute: str,
        text: str,
        seen: int | None,
        lost: Callable[[BaseException], object],
    ) -> None:
        """Take what was typed for a fact; where it cannot be written it is handed back."""
        project, who = self._window.desk.workspace.project, self._window.desk.workspace.who
        self._do_seen(
            lambda base: power_editing.edit_power_text(project, entity, row, {attribute: text}, who=who, base=base),
            seen,
            lost=lost,
        )

    def keep(self, opening: str, supply: str, pinned: bool, seen: int | None) -> None:
        """Tell the siting to leave an opening on its supply, or that it need not."""
        project, who = self._window.desk.workspace.project, self._window.desk.workspace.who
        self._do_seen(
            lambda base: connecting.set_route(project, opening, supply, who=who, pinned=pinned, base=base), seen
        )

    def take_in(self, path: Path) -> None:
        """Take in a power workbook."""
        project, who = self._window.desk.workspace.project, self._window.desk.workspace.who
        self._window.run(
            phrase("Taking in {name}", name=path.name),
            lambda _progress, _cancelled: import_power(project, path, who=who),
            lambda _done: None,
        )

    def _do_seen(
        self,
        act: Callable[[int | None], Changes],
        seen: int | None,
        then: Callable[[Any], None] | None = None,
        lost: Callable[[BaseException], object] | None = None,
    ) -> None:
        if self._may():
            self._window.edit_seen(act, seen, then, lost)

    def _may(self) -> bool:
        if not self._window.idle:
            self._window.told.setText(phrase(_BUSY))
        return self._window.idle

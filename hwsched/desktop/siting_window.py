"""Siting of a building's supplies: asked for, compared with what stands, accepted or left."""

from collections import Counter
from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import QComboBox, QFormLayout, QLabel, QSpinBox, QTreeWidget, QTreeWidgetItem, QWidget

from hwsched.cases import SEVERITIES
from hwsched.cases.power import PowerWork
from hwsched.desktop.jobs import Cancelled, Progress
from hwsched.desktop.part_box import catalogue_of
from hwsched.desktop.tool_window import Desk, ToolWindow
from hwsched.operations.fitting_openings import fit_openings
from hwsched.operations.siting import Proposal, accept_siting, propose_siting


class SitingWindow(ToolWindow):
    """Which building, which wire, for how long to look; before and after."""

    stepped = Signal(str)
    """What the search is at, from its own thread."""

    def __init__(self, desk: Desk, buildings: list[str], parent: QWidget | None = None) -> None:
        super().__init__(desk, "Site supplies", parent)
        self.resize(820, 560)
        self.found: Proposal | None = None
        self.building = QComboBox()
        self.building.addItems(buildings)
        self.wire = QComboBox()
        self.wire.addItem("The cheapest that reaches every opening", None)
        for part in catalogue_of(desk.workspace).of_kind("wire"):
            self.wire.addItem(f"{part.number}  {part.description}", part.number)
        self.seconds = QSpinBox()
        self.seconds.setRange(1, 3600)
        self.seconds.setValue(60)
        self.seconds.setSuffix(" s")
        form = QFormLayout()
        form.addRow("Building", self.building)
        form.addRow("Wire", self.wire)
        form.addRow("Look for at most", self.seconds)
        self.said = QLabel("Fewest supplies first, then least wire. Nothing is changed before you accept.")
        self.said.setWordWrap(True)
        self.list = QTreeWidget()
        self.list.setHeaderLabels(["What", "Before", "After"])
        self.list.setAlternatingRowColors(True)
        for column, width in enumerate((250, 250)):
            self.list.setColumnWidth(column, width)
        self.work = self.button("Look", self.look, "Nothing is changed by it")
        self.take = self.button("Accept", self.accept_it, "Lay the circuits and runs, and fit the openings")
        self.leave = self.button("Leave", self.close, "Nothing is changed")
        self.body.addLayout(form)
        self.body.addWidget(self.said)
        self.body.addWidget(self.list, 1)
        for each in (self.work, self.take, self.leave):
            self.foot.addWidget(each)
        self.stepped.connect(self.told.setText)
        self.building.currentIndexChanged.connect(self._forget)
        self.wire.currentIndexChanged.connect(self._forget)
        self.enable()

    def enable(self) -> None:
        """There must be a building with a place for a supply."""
        self.work.setEnabled(self.idle and self.building.count() > 0)
        self.take.setEnabled(self.idle and self.found is not None)

    def follow(self) -> None:
        """Forget an answer that was for the project as it was before."""
        if self.found is not None:
            self._forget()
            self.said.setText("The project has changed since. Look again.")
        self.enable()

    def look(self) -> None:
        """Work out the siting, off the screen's thread."""
        project, building = self.desk.workspace.project, self.building.currentText()
        wire, seconds = self.wire.currentData(), float(self.seconds.value())

        def tell(step: str, gap: float | None) -> None:
            self.stepped.emit(step if gap is None else f"{step}, gap {gap:.2%}")

        def work(_progress: Progress, cancelled: Cancelled) -> Any:
            return propose_siting(
                project, building, wire=wire, time_limit_s=seconds, progress=tell, cancelled=cancelled
            )

        self.run("Siting supplies", work, self._on_found)

    def accept_it(self) -> None:
        """Lay what is proposed as one step, then fit its openings."""
        found, workspace = self.found, self.desk.workspace
        if found is None:
            return

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            accept_siting(workspace.project, found, who=workspace.who)
            return fit_openings(
                workspace.project, list(found.siting.pairs), who=workspace.who, progress=progress, cancelled=cancelled
            )

        def then(_fitted: Any) -> None:
            self._forget()
            self.desk.reload()
            self.said.setText("Accepted. Undo takes the fits back, then what was laid.")

        self.run("Laying circuits", work, then)

    def _on_found(self, found: Proposal) -> None:
        self.found = found
        siting = found.siting
        proven = "proven least" if siting.optimal else f"within {siting.gap:.2%} of the least"
        left = f" Left out: {'; '.join(found.left_out[:3])}." if found.left_out else ""
        self.said.setText(
            f"{len(siting.open)} supplies for {len(siting.pairs)} openings, {siting.wire_m:.1f} m of {found.wire}, "
            f"{proven}; {found.measured} routes measured, the others estimated.{left} Nothing is changed yet."
        )
        self._show(found)
        self.enable()

    def _show(self, found: Proposal) -> None:
        self.list.clear()
        before, after = found.before, found.after
        rows = [
            ("Supplies in use", str(_used(before)), str(_used(after))),
            ("Wire", f"{found.before_wire_m:.1f} m", f"{found.siting.wire_m:.1f} m"),
            ("Least room above a lowest voltage", _room(before), _room(after)),
            ("Findings", _findings(before), _findings(after)),
        ]
        for row in rows:
            self.list.addTopLevelItem(QTreeWidgetItem(list(row)))
        was = {opening: supply.supply.name for supply in before.supplies for opening in supply.openings}
        moves = QTreeWidgetItem(["Openings", str(len(was)), str(len(found.siting.pairs))])
        for opening, supply in found.siting.pairs.items():
            length = found.lengths_m[opening]
            now = f"{found.names[supply]}, {length:.1f} m"
            moves.addChild(QTreeWidgetItem([found.names[opening], was.get(opening, "on no circuit"), now]))
        self.list.addTopLevelItem(moves)
        moves.setExpanded(True)

    def _forget(self) -> None:
        self.found = None
        self.list.clear()
        self.enable()


def _used(work: PowerWork) -> int:
    return sum(bool(supply.openings) for supply in work.supplies)


def _room(work: PowerWork) -> str:
    rooms = [
        node.margin_v
        for supply in work.supplies
        for circuit in supply.circuits
        for node in circuit.nodes
        if node.margin_v is not None
    ]
    return f"{min(rooms):.2f} V" if rooms else "nothing hangs there"


def _findings(work: PowerWork) -> str:
    counts = Counter(each.finding.severity for each in work.findings)
    return ", ".join(f"{counts[severity]} {severity}" for severity in SEVERITIES if counts[severity]) or "none"

"""Siting of a building's supplies: asked for, compared with what stands, accepted or left."""

from typing import Any, Final

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QFormLayout,
    QHeaderView,
    QLabel,
    QSpinBox,
    QTreeWidget,
    QTreeWidgetItem,
    QWidget,
)

from hwsched.desktop.frame.tool_window import CHANGED, Desk, ToolWindow
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.looks.severities import severities_in_words
from hwsched.desktop.looks.text_size import in_figures
from hwsched.desktop.looks.tokens import FIELD
from hwsched.desktop.power.power_words import NO_PLACE, buildings_of, style_of
from hwsched.desktop.widgets.buttons import let_lead
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.empty import Empty
from hwsched.desktop.widgets.number_columns import to_the_right
from hwsched.desktop.widgets.spin import spin
from hwsched.drawings.power.power_words import run_length_words
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.model.errors import ChangeError
from hwsched.operations.power.power_results import power_facts
from hwsched.operations.power.siting_accepting import accept_siting
from hwsched.operations.power.siting_comparison import Comparison, Standing, compare_siting
from hwsched.operations.power.supply_siting import Proposal, propose_siting
from hwsched.operations.shown import ShownOtherwiseError
from hwsched.quantities import LengthStyle
from hwsched.values import SEVERITIES, Catalogue

_NOTHING_YET: Final = to_phrase("Fewest supplies first, then least wire. Nothing is changed before you accept.")
_BEGIN: Final = to_phrase("Look works out where supplies stand, and which openings each of them feeds.")


class SitingWindow(ToolWindow):
    """Which building, which wire, for how long to look; before and after.

    Parameters
    ----------
    desk : Desk
        What may be seen and done of the main window.
    buildings : list of str
        In which a supply, or a place for one, is laid.
    catalogue : Catalogue
        Its wires are offered.
    building : str or None
        That is offered first.
    """

    stepped = Signal(str)
    """What the search is at, from its own thread."""

    def __init__(
        self,
        desk: Desk,
        buildings: list[str],
        catalogue: Catalogue,
        building: str | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(desk, phrase("Site supplies"), parent)
        self.resize(900, 600)
        self.found: Proposal | None = None
        self.building = DropDown()
        self.building.addItems(buildings)
        self.building.setPlaceholderText(phrase("none yet"))
        self.building.setCurrentIndex(max(self.building.findText(building or ""), 0))
        self.wire = DropDown()
        self.wire.addItem(phrase("The cheapest that reaches every opening"), None)
        for part in catalogue.of_kind("wire"):
            self.wire.addItem(f"{part.number}  {part.description}", part.number)
        self.seconds = spin(QSpinBox())
        self.seconds.setRange(1, 3600)
        self.seconds.setValue(60)
        self.seconds.setSuffix(" s")
        in_figures(self.seconds, maximumWidth=15)
        form = QFormLayout()
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        for field in (self.building, self.wire):
            in_figures(field, maximumWidth=FIELD)
        form.addRow(phrase("Building"), self.building)
        form.addRow(phrase("Wire"), self.wire)
        form.addRow(phrase("Look for at most"), self.seconds)
        self.said = QLabel(phrase(_NOTHING_YET))
        self.said.setWordWrap(True)
        self.said.setTextFormat(Qt.TextFormat.PlainText)
        self.list = QTreeWidget()
        self.list.setAccessibleName(phrase("Plans"))
        self.list.setHeaderLabels(
            [phrase("What"), phrase("Before"), phrase("After"), phrase("Run"), phrase("Volts at worst")]
        )
        self.list.setAlternatingRowColors(True)
        to_the_right(self.list, (3, 4))
        self.empty = Empty(self.list)
        header = self.list.header()
        header.setStretchLastSection(False)
        for column in range(5):
            stretch = column in (1, 2)
            mode = QHeaderView.ResizeMode.Stretch if stretch else QHeaderView.ResizeMode.ResizeToContents
            header.setSectionResizeMode(column, mode)
        self.work = self.button(phrase("Look"), self.look, phrase("Nothing is changed by it"))
        self.take = self.button(
            phrase("Accept"), self.accept_it, phrase("Lay the circuits and runs, and fit the openings")
        )
        self.body.addLayout(form)
        self.body.addWidget(self.said)
        self.body.addWidget(self.list, 1)
        for each in (self.work, self.take):
            self.foot.addWidget(each)
        self.stepped.connect(self.told.setText)
        self.building.currentIndexChanged.connect(lambda _index: self._forget())
        self.wire.currentIndexChanged.connect(lambda _index: self._forget())
        self.listen(desk.workspace.changed, self.follow_change)
        self.enable()

    def enable(self) -> None:
        """There must be a building with a place for a supply."""
        self.work.setEnabled(self.idle and self.building.count() > 0)
        self.empty.say(phrase(_BEGIN if self.building.count() else NO_PLACE))
        self.take.setEnabled(self.idle and self.found is not None)
        let_lead(*((self.work, self.take) if self.found is None else (self.take, self.work)))
        for field in (self.building, self.wire, self.seconds):
            field.setEnabled(self.idle)

    def follow(self) -> None:
        """Offer the buildings that there are now; say that a proposal may stand on what has changed."""
        offered = buildings_of(power_facts(self.desk.workspace.project))
        if offered != [self.building.itemText(at) for at in range(self.building.count())]:
            before = self.building.currentText()
            self.building.blockSignals(True)
            self.building.clear()
            self.building.addItems(offered)
            self.building.setCurrentIndex(max(self.building.findText(before), 0) if offered else -1)
            self.building.blockSignals(False)
            if self.building.currentText() != before:
                self._forget()
        if self.found is not None:
            self.said.setText(phrase(CHANGED))
        self.enable()

    def look(self) -> None:
        """Work out the siting, off the screen's thread."""
        project, building = self.desk.workspace.project, self.building.currentText()
        wire, seconds = self.wire.currentData(), float(self.seconds.value())

        def tell(step: str, gap: float | None) -> None:
            self.stepped.emit(step if gap is None else phrase("{step}, gap {gap:.2%}", step=step, gap=gap))

        def work(_progress: Progress, cancelled: Cancelled) -> Any:
            try:
                return propose_siting(
                    project, building, wire=wire, time_limit_s=seconds, progress=tell, cancelled=cancelled
                )
            except ChangeError:
                # Stopped before anything was found: whoever stopped it knows.
                if cancelled():
                    return None
                raise

        self._forget()
        self.run(phrase("Siting supplies"), work, self._on_found)

    def accept_it(self) -> None:
        """Lay what is proposed and fit its openings, as one step; shown again where it is not what was shown."""
        found, workspace = self.found, self.desk.workspace
        if found is None:
            return

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            try:
                done = accept_siting(
                    workspace.project, found, who=workspace.who, progress=progress, cancelled=cancelled
                )  # fmt: skip
            except ShownOtherwiseError as otherwise:
                return otherwise
            return None if cancelled() and done.number is None else done

        def then(done: Any) -> None:
            if isinstance(done, ShownOtherwiseError):
                self._forget()
                if isinstance(done.now, Proposal):
                    self._on_found(done.now)
                self.said.setText(phrase("Not laid: {done}.", done=done))
                return
            if done is None:
                self.said.setText(phrase("Stopped. Nothing is changed."))
                return
            self._forget()
            self.said.setText(phrase("Accepted. Undo takes all of it back."))

        self.run(phrase("Laying circuits"), work, then)

    def _on_found(self, found: Proposal | None) -> None:
        if found is None:
            self.said.setText(phrase("Stopped before a siting was found. Nothing is changed."))
            return
        self.found = found
        siting, compared = found.siting, compare_siting(found)
        proven = phrase("proven least") if siting.optimal else phrase("within {gap:.2%} of the least", gap=siting.gap)
        moves = sum(each.moves for each in compared.openings)
        measured = (
            phrase_of_count("{count} route measured", "{count} routes measured", found.measured)
            if found.measured
            else phrase("no route measured")
        )
        others = phrase(", the others estimated") if 0 < found.measured < len(siting.pairs) else ""
        estimated = others or (phrase(": all are estimated") if not found.measured else "")
        left = phrase(" Left out: {left_out}.", left_out="; ".join(found.left_out[:3])) if found.left_out else ""
        torn = (
            phrase_of_count(
                " {count} run that is laid is taken up or left leading nowhere.",
                " {count} runs that are laid are taken up or left leading nowhere.",
                len(found.torn_up),
            )
            if found.torn_up
            else ""
        )
        more = phrase(" And {count} more.", count=len(found.left_out) - 3) if len(found.left_out) > 3 else ""
        self.said.setText(
            phrase(
                "{count} for {count_2}, {length} of {wire}, {proven}; {measured}{estimated}. "
                "{count_3}.{left}{more}{torn} Nothing is changed yet.",
                count=phrase_of_count("{count} supply", "{count} supplies", len(siting.open)),
                count_2=phrase_of_count("{count} opening", "{count} openings", len(siting.pairs)),
                length=run_length_words(siting.wire_m, self._style()),
                wire=found.wire,
                proven=proven,
                measured=measured,
                estimated=estimated,
                count_3=phrase_of_count("{count} opening moves", "{count} openings move", moves),
                left=left,
                more=more,
                torn=torn,
            )
        )
        self.said.setToolTip("\n".join((*found.left_out, *found.torn_up)))
        self._show(compared)
        self.enable()

    def _style(self) -> LengthStyle:
        return style_of(self.desk.workspace.project.length_style)

    def _show(self, compared: Comparison) -> None:
        self.list.clear()
        style = self._style()
        for title, words in (
            (phrase("Supplies in use"), _supplies),
            (phrase("Wire"), lambda side: run_length_words(side.wire_m, style)),
            (phrase("Least room in volts"), _room),
            (phrase("Findings"), _findings),
            (phrase("Openings fed"), lambda side: str(side.openings)),
        ):
            row = QTreeWidgetItem([title, words(compared.before), words(compared.after)])
            for column in (1, 2):
                row.setToolTip(column, row.text(column))
            self.list.addTopLevelItem(row)
        groups = (
            (phrase("Openings that move"), [each for each in compared.openings if each.moves]),
            (phrase("Openings that stay"), [each for each in compared.openings if not each.moves]),
        )
        for title, openings in groups:
            if not openings:
                continue
            group = QTreeWidgetItem([f"{title}: {len(openings)}"])
            group.setFirstColumnSpanned(True)
            self.list.addTopLevelItem(group)
            for each in openings:
                now = "" if each.after_v is None else f"{each.after_v:.2f} V"
                volts = now or phrase("unknown")
                if now and each.before_v is not None:
                    volts = f"{each.before_v:.2f} V → {now}"
                length = run_length_words(each.length_m, style)
                line = [each.mark, each.before or phrase("on no circuit"), each.after, length, volts]
                item = QTreeWidgetItem(line)
                for column in (0, 1, 2):
                    item.setToolTip(column, item.text(column))
                for column in (3, 4):
                    item.setTextAlignment(column, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
                group.addChild(item)
            group.setFirstColumnSpanned(True)
            group.setExpanded(title.endswith("move"))

    def _forget(self) -> None:
        if self.found is not None:
            self.said.setText(phrase(_NOTHING_YET))
        self.found = None
        self.list.clear()
        self.enable()


def _supplies(side: Standing) -> str:
    return f"{len(side.supplies)}: {', '.join(side.supplies)}" if side.supplies else phrase("none")


def _room(side: Standing) -> str:
    if side.room_v is None:
        return phrase("nothing is connected there")
    return (
        phrase("{room_v:.2f} V at {room_at}", room_v=side.room_v, room_at=side.room_at)
        if side.room_v >= 0
        else phrase("LOW by {value:.2f} V at {room_at}", value=-side.room_v, room_at=side.room_at)
    )


def _findings(side: Standing) -> str:
    held = severities_in_words({each: side.findings.get(each, 0) for each in SEVERITIES})
    return ", ".join(held) or phrase("none")

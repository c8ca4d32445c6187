"""A plan of supplies, wires and runs: asked for, shown with what would be taken up, accepted or left."""

from collections.abc import Sequence
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

from hwsched.calc.parts.cost import Cost
from hwsched.calc.power.planning.question import Leg
from hwsched.desktop.frame.tool_window import CHANGED, Desk, ToolWindow
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.looks.text_size import in_figures
from hwsched.desktop.looks.tokens import FIELD
from hwsched.desktop.power.power_words import NO_PLACE, buildings_of, circuits_of, style_of
from hwsched.desktop.widgets.buttons import let_lead
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.desktop.widgets.empty import Empty
from hwsched.desktop.widgets.number_columns import to_the_right
from hwsched.desktop.widgets.spin import spin
from hwsched.drawings.power.power_words import run_length_words
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.model.errors import ChangeError
from hwsched.operations.power.planning_accepting import accept_plan
from hwsched.operations.power.power_planning import PowerProposal, propose_plan
from hwsched.operations.power.power_results import power_facts
from hwsched.operations.shown import ShownOtherwiseError
from hwsched.quantities import LengthStyle
from hwsched.quantities.money import rounded

_NOTHING_YET: Final = to_phrase(
    "Places, sizes and number of supplies, wires, runs of their own, daisy chains and junctions "
    "in one search. What is pinned to its supply stays as it is laid. Nothing is changed before "
    "you accept."
)
_BEGIN: Final = to_phrase("Look works out supplies, wires and runs, and what is to spare at each opening.")
_AIMS: Final = (
    (to_phrase("Least cost, parts and work"), "least-cost"),
    (to_phrase("Fewest supplies, then least cost"), "fewest-supplies"),
    (to_phrase("Least wire"), "least-wire"),
    (to_phrase("Most room in volts, then least cost"), "most-margin"),
)


class LayoutWindow(ToolWindow):
    """What is planned, with which aim, for how long; what would be laid and taken up.

    Parameters
    ----------
    desk : Desk
        What may be seen and done of the main window.
    buildings : list of str
        In which a supply, or a place for one, is laid.
    circuits : list of (str, str)
        Name, with its supply, and identifier of each circuit.
    chosen : str
        Building, or identifier of the circuit, that is offered first.
    """

    stepped = Signal(str)
    """What the search is at, from its own thread."""

    def __init__(
        self,
        desk: Desk,
        buildings: Sequence[str],
        circuits: Sequence[tuple[str, str]],
        chosen: str | None = None,
        parent: QWidget | None = None,
    ) -> None:
        super().__init__(desk, phrase("Plan supplies and runs"), parent)
        self.resize(900, 600)
        self.found: PowerProposal | None = None
        self.what = DropDown()
        self._offer(buildings, circuits)
        at = next((i for i in range(self.what.count()) if self.what.itemData(i)[1] == chosen), 0)
        self.what.setCurrentIndex(at)
        self.aim = DropDown()
        self.what.setPlaceholderText(phrase("none yet"))
        for words, aim in _AIMS:
            self.aim.addItem(phrase(words), aim)
        self.seconds = spin(QSpinBox())
        self.seconds.setRange(1, 3600)
        self.seconds.setValue(60)
        self.seconds.setSuffix(" s")
        in_figures(self.seconds, maximumWidth=15)
        form = QFormLayout()
        form.setFieldGrowthPolicy(QFormLayout.FieldGrowthPolicy.AllNonFixedFieldsGrow)
        for field in (self.what, self.aim):
            in_figures(field, maximumWidth=FIELD)
        form.addRow(phrase("What"), self.what)
        form.addRow(phrase("Aim"), self.aim)
        form.addRow(phrase("Look for at most"), self.seconds)
        self.said = QLabel(phrase(_NOTHING_YET))
        self.said.setWordWrap(True)
        self.said.setTextFormat(Qt.TextFormat.PlainText)
        self.list = QTreeWidget()
        self.list.setAccessibleName(phrase("Plans"))
        self.list.setHeaderLabels([phrase("What"), phrase("Wire"), phrase("Length"), phrase("To spare")])
        self.list.setAlternatingRowColors(True)
        to_the_right(self.list, (2, 3))
        self.empty = Empty(self.list)
        header = self.list.header()
        header.setStretchLastSection(False)
        for column in range(4):
            mode = QHeaderView.ResizeMode.ResizeToContents if column else QHeaderView.ResizeMode.Stretch
            header.setSectionResizeMode(column, mode)
        self.work = self.button(phrase("Look"), self.look, phrase("Nothing is changed by it"))
        self.take = self.button(
            phrase("Accept"), self.accept_it, phrase("Lay what is planned, and fit its openings, as one step")
        )
        self.body.addLayout(form)
        self.body.addWidget(self.said)
        self.body.addWidget(self.list, 1)
        for each in (self.work, self.take):
            self.foot.addWidget(each)
        self.stepped.connect(self.told.setText)
        for box in (self.what, self.aim):
            box.currentIndexChanged.connect(lambda _index: self._forget())
        self.listen(desk.workspace.changed, self.follow_change)
        self.enable()

    def enable(self) -> None:
        """There must be a building with a place for a supply."""
        self.work.setEnabled(self.idle and self.what.count() > 0)
        self.empty.say(phrase(_BEGIN if self.what.count() else NO_PLACE))
        self.take.setEnabled(self.idle and self.found is not None and not self.found.already)
        let_lead(*((self.take, self.work) if self.take.isEnabled() else (self.work, self.take)))
        for field in (self.what, self.aim, self.seconds):
            field.setEnabled(self.idle)

    def _offer(self, buildings: Sequence[str], circuits: Sequence[tuple[str, str]]) -> None:
        """Offer buildings, and circuits by themselves; what was chosen stays so."""
        offered = [
            *((building, ("building", building)) for building in buildings),
            *((phrase("Only circuit {name}", name=name), ("circuit", each)) for name, each in circuits),
        ]
        shown = [(self.what.itemText(at), tuple(self.what.itemData(at))) for at in range(self.what.count())]
        if offered == shown:
            return
        before = tuple(self.what.currentData() or ())
        self.what.blockSignals(True)
        self.what.clear()
        for words, data in offered:
            self.what.addItem(words, data)
        places = [data for _, data in offered]
        self.what.setCurrentIndex(places.index(before) if before in places else 0 if places else -1)
        self.what.blockSignals(False)

    def follow(self) -> None:
        """Offer what can be planned now; say that a plan may stand on what has changed."""
        facts = power_facts(self.desk.workspace.project)
        self._offer(buildings_of(facts), circuits_of(facts))
        if self.found is not None:
            self.said.setText(phrase(CHANGED))
        self.enable()

    def look(self) -> None:
        """Work out the plan, off the screen's thread."""
        project, (kind, name) = self.desk.workspace.project, self.what.currentData()
        aim, seconds = self.aim.currentData(), float(self.seconds.value())

        def tell(step: str, gap: float | None) -> None:
            self.stepped.emit(step if gap is None else phrase("{step}, gap {gap:.2%}", step=step, gap=gap))

        def work(_progress: Progress, cancelled: Cancelled) -> Any:
            try:
                return propose_plan(
                    project,
                    name if kind == "building" else "",
                    circuit_id=name if kind == "circuit" else None,
                    aim=aim,
                    time_limit_s=seconds,
                    progress=tell,
                    cancelled=cancelled,
                )
            except ChangeError:
                # Stopped before anything was found: whoever stopped it knows.
                if cancelled():
                    return None
                raise

        self._forget()
        self.run(phrase("Planning supplies and runs"), work, self._on_found)

    def accept_it(self) -> None:
        """Lay what is planned and fit its openings, as one step; shown again where it is not what was shown."""
        found, workspace = self.found, self.desk.workspace
        if found is None:
            return

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            try:
                done = accept_plan(workspace.project, found, who=workspace.who, progress=progress, cancelled=cancelled)
            except ShownOtherwiseError as otherwise:
                return otherwise
            return None if cancelled() and done.number is None else done

        def then(done: Any) -> None:
            if isinstance(done, ShownOtherwiseError):
                self._forget()
                if isinstance(done.now, PowerProposal):
                    self._on_found(done.now)
                self.said.setText(phrase("Not laid: {done}.", done=done))
                return
            if done is None:
                self.said.setText(phrase("Stopped. Nothing is changed."))
                return
            self._forget()
            self.said.setText(phrase("Accepted. Undo takes all of it back."))

        self.run(phrase("Laying the plan"), work, then)

    def _on_found(self, found: PowerProposal | None) -> None:
        if found is None:
            self.said.setText(phrase("Stopped before a plan was found. Nothing is changed."))
            return
        self.found = found
        plan = found.plan
        costs = phrase(
            "{money} as laid, {money_2} then", money=_money(found.before_cost), money_2=_money(found.after_cost)
        )
        if found.already:
            text = phrase("What is laid is as good: nothing would be changed.")
        else:
            text = phrase(
                "{count}, {length} of wire, {proved}. Cost of what is known: {costs}. {count_2} would be "
                "taken up. Proved in every state. Nothing is changed yet.",
                count=phrase_of_count("{count} supply", "{count} supplies", len(plan.sizes)),
                length=run_length_words(plan.wire_m, self._style()),
                proved=plan.proved,
                costs=costs,
                count_2=phrase_of_count("{count} run that is laid", "{count} runs that are laid", len(found.torn_up)),
            )
        self.said.setText(text)
        self._show(found)
        self.enable()

    def _style(self) -> LengthStyle:
        return style_of(self.desk.workspace.project.length_style)

    def _show(self, found: PowerProposal) -> None:
        self.list.clear()
        for place, part in found.plan.sizes.items():
            supply = QTreeWidgetItem([f"{found.names[place]}: {part}"])
            self.list.addTopLevelItem(supply)
            for leg in found.plan.legs:
                if leg.place == place:
                    supply.addChild(_line(leg, found, self._style()))
            supply.setExpanded(True)
        for title, told in (
            (to_phrase("Would be taken up"), found.torn_up),
            (to_phrase("Kept as laid"), found.kept),
            (to_phrase("Left out"), found.left_out),
            (to_phrase("Assumed"), found.assumed),
        ):
            if not told:
                continue
            group = QTreeWidgetItem([f"{phrase(title)}: {len(told)}"])
            self.list.addTopLevelItem(group)
            group.setFirstColumnSpanned(True)
            for text in told:
                item = QTreeWidgetItem([text])
                item.setToolTip(0, text)
                group.addChild(item)
                item.setFirstColumnSpanned(True)
            group.setExpanded(title == "Would be taken up")

    def _forget(self) -> None:
        if self.found is not None:
            self.said.setText(phrase(_NOTHING_YET))
        self.found = None
        self.list.clear()
        self.enable()


def _line(leg: Leg, found: PowerProposal, style: LengthStyle) -> QTreeWidgetItem:
    marks = ", ".join(found.names[opening] for opening in leg.openings)
    shape = leg.shape.replace("-", " ")
    item = QTreeWidgetItem(
        [f"{shape}: {marks}", leg.wire, run_length_words(leg.wire_m, style), f"{leg.margin_v:.2f} V"]
    )
    item.setToolTip(0, item.text(0))
    for column in (2, 3):
        item.setTextAlignment(column, Qt.AlignmentFlag.AlignRight | Qt.AlignmentFlag.AlignVCenter)
    return item


def _money(cost: Cost) -> str:
    return str(rounded(cost.total))

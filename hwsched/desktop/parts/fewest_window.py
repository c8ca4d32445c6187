"""Fewest kinds: few different parts over a building or the project, against their cost, before it is accepted."""

from typing import Any

from PySide6.QtCore import Signal
from PySide6.QtWidgets import (
    QButtonGroup,
    QFormLayout,
    QHBoxLayout,
    QHeaderView,
    QLabel,
    QLineEdit,
    QRadioButton,
    QSpinBox,
    QTreeWidget,
    QTreeWidgetItem,
    QWidget,
)

from hwsched.desktop.frame.tool_window import CHANGED, Desk, ToolWindow
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.looks.text_size import in_figures
from hwsched.desktop.looks.tokens import FIELD, scaled
from hwsched.desktop.opening.scope_box import ScopeBox
from hwsched.desktop.widgets.buttons import let_lead
from hwsched.desktop.widgets.empty import Empty
from hwsched.desktop.widgets.spin import spin
from hwsched.language import phrase, phrase_of_count
from hwsched.model.errors import ValueRefusedError
from hwsched.operations.parts.fewest_part_numbers import FewestPartNumbers, accept_fewest, fewest_part_numbers
from hwsched.operations.shown import ShownOtherwiseError
from hwsched.quantities.money import Money
from hwsched.values.role_words import role_said


class FewestWindow(ToolWindow):
    """What is wanted, for how long to look, and what was found."""

    stepped = Signal(str)
    """What the search is at, from its own thread."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Fewest different parts"), parent)
        self.resize(860, 560)
        self.found: FewestPartNumbers | None = None
        self.scope = ScopeBox(desk)
        self.scope.setCurrentIndex(self.scope.count() - 1)
        self.wish = QButtonGroup(self)
        self.fewest = QRadioButton(phrase("As few as serve, then least cost"))
        self.fewest.setChecked(True)
        self.by_price = QRadioButton(phrase("Least cost, one more different part counting as"))
        self.price = QLineEdit()
        self.price.setAccessibleName(phrase("What one more different part counts as"))
        in_figures(self.price, maximumWidth=14)
        self.price.setPlaceholderText(phrase("amount"))
        self.by_most = QRadioButton(phrase("Least cost with at most"))
        self.most = spin(QSpinBox())
        self.most.setAccessibleName(phrase("At most so many different parts"))
        self.most.setRange(1, 9999)
        self.most.setValue(20)
        self.most.setSuffix(phrase(" different parts"))
        for wish in (self.fewest, self.by_price, self.by_most):
            self.wish.addButton(wish)
        self.wish.buttonToggled.connect(lambda *_: self._forget())
        self.price.textChanged.connect(self._forget)
        self.most.valueChanged.connect(self._forget)
        self.scope.currentIndexChanged.connect(self._forget)
        self.seconds = spin(QSpinBox())
        self.seconds.setAccessibleName(phrase("Seconds to look for it"))
        self.seconds.setRange(1, 3600)
        self.seconds.setValue(60)
        self.seconds.setSuffix(" s")
        form = QFormLayout()
        in_figures(self.scope, maximumWidth=FIELD)
        form.addRow(phrase("For"), self.scope)
        form.addRow(phrase("Wanted"), self.fewest)
        form.addRow("", _row(self.by_price, self.price))
        form.addRow("", _row(self.by_most, self.most))
        form.addRow(phrase("Look for at most"), _row(self.seconds))
        self.said = QLabel()
        self.said.setWordWrap(True)
        self.list = QTreeWidget()
        self.list.setAccessibleName(phrase("Parts before and after"))
        self.list.setHeaderLabels([phrase("What"), phrase("Before"), phrase("After")])
        self.list.setAlternatingRowColors(True)
        Empty(self.list, phrase("Look works out with how few different parts the openings are served."))
        self.list.header().setSectionResizeMode(QHeaderView.ResizeMode.Interactive)
        for column, width in enumerate((260, 250)):
            self.list.setColumnWidth(column, scaled(width))
        self.work = self.button(phrase("Look"), self.look, phrase("Nothing is changed by it"))
        self.take = self.button(
            phrase("Accept"), self.accept_it, phrase("Choose the parts by hand, and fit the openings")
        )
        self.body.addLayout(form)
        self.body.addWidget(self.said)
        self.body.addWidget(self.list, 1)
        for each in (self.work, self.take):
            self.foot.addWidget(each)
        self.stepped.connect(self.told.setText)
        self._forget()

    def follow(self) -> None:
        """Say that an answer may stand on what has changed: that is seen to when it is accepted."""
        self.scope.follow()
        if self.found is not None:
            self.said.setText(phrase(CHANGED))
        self.enable()

    def enable(self) -> None:
        """There must be openings, and a price where one is wanted."""
        self.price.setEnabled(self.by_price.isChecked())
        self.most.setEnabled(self.by_most.isChecked())
        asked = bool(self.scope.ids()) and (not self.by_price.isChecked() or bool(self.price.text().strip()))
        self.work.setEnabled(self.idle and asked)
        self.take.setEnabled(self.idle and self.found is not None and bool(self.found.choices))
        let_lead(*((self.take, self.work) if self.take.isEnabled() else (self.work, self.take)))

    def look(self) -> None:
        """Look for the best choice, off the screen's thread."""
        project, ids = self.desk.workspace.project, self.scope.ids()
        price = self.price.text().strip().replace(",", ".") if self.by_price.isChecked() else None
        most = self.most.value() if self.by_most.isChecked() else None
        seconds = float(self.seconds.value())

        def tell(step: str, gap: float | None) -> None:
            self.stepped.emit(
                step if gap is None else phrase("{step}, within {gap:.2%} of the best", step=step, gap=gap)
            )

        def work(_progress: Progress, cancelled: Cancelled) -> Any:
            try:
                return fewest_part_numbers(
                    project, ids, price_per_kind=price, most=most, time_limit_s=seconds, progress=tell,
                    cancelled=cancelled,
                )  # fmt: skip
            except ValueRefusedError:
                if cancelled():
                    return None
                raise

        self.run(phrase("Looking for few different parts"), work, self._on_found)

    def _on_found(self, found: FewestPartNumbers | None) -> None:
        if found is None:
            self.said.setText(phrase("Stopped before anything was found. Nothing is changed."))
            return
        self.found = found
        proven = phrase("proven best") if found.gap == 0 else phrase("within {gap:.2%} of the best", gap=found.gap)
        left = phrase_of_count(
            " {count} opening is left out: it does not fit, or a part has no price.",
            " {count} openings are left out: they do not fit, or a part has no price.",
            len(found.left_out),
        ) * bool(found.left_out)
        self.said.setText(
            phrase(
                "{openings}, different parts: {count} → {count_2}, {proven}. List price {prices} → {prices_2}. "
                "{changing}.{left} Nothing is changed yet.",
                openings=phrase_of_count("{count} opening", "{count} openings", found.openings),
                count=len(found.before_kinds),
                count_2=len(found.after_kinds),
                proven=proven,
                prices=_prices(found)[0],
                prices_2=_prices(found)[1],
                changing=phrase_of_count(
                    "{count} opening would change", "{count} openings would change", len(found.changing)
                ),
                left=left,
            )
        )
        self._show(found)
        self.enable()

    def accept_it(self) -> None:
        """Choose the parts by hand and fit the openings that change, as one step."""
        found, workspace = self.found, self.desk.workspace
        if found is None:
            return

        def work(progress: Progress, cancelled: Cancelled) -> Any:
            try:
                done = accept_fewest(
                    workspace.project, found, who=workspace.who, progress=progress, cancelled=cancelled
                )  # fmt: skip
            except ShownOtherwiseError as otherwise:
                return otherwise
            return None if cancelled() and done.number is None else done

        def then(done: Any) -> None:
            if done is None:
                self.said.setText(phrase("Stopped. Nothing is changed."))
                return
            self._forget()
            refused = isinstance(done, ShownOtherwiseError)
            self.said.setText(
                phrase("Not done: {done}.", done=done) if refused else phrase("Accepted. Undo takes all of it back.")
            )

        self.run(phrase("Choosing"), work, then)

    def _forget(self) -> None:
        self.found = None
        self.list.clear()
        self.said.setText(phrase("Nothing is changed before you accept."))
        self.enable()

    def _show(self, found: FewestPartNumbers) -> None:
        self.list.clear()
        before, after = set(found.before_kinds), set(found.after_kinds)
        gone, new = sorted(before - after), sorted(after - before)
        parts = QTreeWidgetItem([phrase("Different parts"), str(len(before)), str(len(after))])
        self.list.addTopLevelItem(parts)
        for number in gone:
            parts.addChild(QTreeWidgetItem([phrase("no longer needed"), number, ""]))
        for number in new:
            parts.addChild(QTreeWidgetItem([phrase("needed now"), "", number]))
        cost = QTreeWidgetItem([phrase("List price"), *_prices(found)])
        self.list.addTopLevelItem(cost)
        checked = self.desk.workspace.checked
        changed = QTreeWidgetItem([phrase("Openings that change"), "", str(len(found.changing))])
        self.list.addTopLevelItem(changed)
        for point, lines in found.choices.items():
            held_points = checked[found.opening_of[point]].points if found.opening_of[point] in checked else ()
            now = next((each.fit for each in held_points if each.given.point.id == point), None)
            roles = {line.role: line.part for line in lines}
            held: dict[str, str] = {part.role: part.part for part in now.parts} if now is not None else {}
            other = {role: part for role, part in roles.items() if held.get(role) != part}
            was = ", ".join(f"{role_said(role)} {held[role]}" for role in other if role in held)
            will = ", ".join(f"{role_said(role)} {part}" for role, part in other.items())
            item = QTreeWidgetItem([found.marks[point], was, will])
            item.setToolTip(1, was)
            item.setToolTip(2, will)
            changed.addChild(item)
        if found.left_out:
            left = QTreeWidgetItem([phrase("Openings left out"), str(len(found.left_out)), ""])
            self.list.addTopLevelItem(left)
            for mark in found.left_out:
                left.addChild(QTreeWidgetItem([mark]))
        parts.setExpanded(True)
        changed.setExpanded(True)


def _row(*widgets: QWidget) -> QHBoxLayout:
    row = QHBoxLayout()
    for each in widgets:
        row.addWidget(each)
    row.addStretch(1)
    return row


def _prices(found: FewestPartNumbers) -> tuple[str, str]:
    return Money(found.before_cost, found.currency).shown(), Money(found.after_cost, found.currency).shown()

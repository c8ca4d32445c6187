"""What the project costs by building, hardware set and opening, and the terms that it pays."""

from collections.abc import Mapping
from typing import Any, Final

from PySide6.QtWidgets import QLabel, QWidget

from hwsched.calc.calculator import InputError
from hwsched.calc.parts.cost import Cost, combined
from hwsched.calc.project.labour import labour_table
from hwsched.desktop.frame.tool_window import Desk, ToolWindow
from hwsched.desktop.jobs.jobs import Cancelled, Progress
from hwsched.desktop.parts.cost_changes_page import LAST, CostChangesPage
from hwsched.desktop.parts.cost_table import CostTable, UnknownTable
from hwsched.desktop.parts.terms_form import TermsForm
from hwsched.desktop.widgets.tabs import TabbedPages
from hwsched.documents.parts.cost_estimate import totals
from hwsched.documents.view import ProjectView
from hwsched.fitting.costing import terms_of
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.model.errors import ValueRefusedError
from hwsched.operations.changes import Changes
from hwsched.operations.parts.cost_since import costs_of_revision
from hwsched.operations.parts.cost_terms import set_terms
from hwsched.operations.project.history import newest
from hwsched.operations.release.project_view import project_view
from hwsched.operations.release.revisions import revisions
from hwsched.quantities.money import rounded

_PLACE: Final = "cost"
"""Under which amounts are kept until something changes."""
_WAYS: Final = (
    ("building", to_phrase("Building")),
    ("set", to_phrase("Hardware set")),
    ("opening", to_phrase("Opening")),
)


class CostWindow(ToolWindow):
    """Totals at three pages, what is not counted, and the terms."""

    def __init__(self, desk: Desk, parent: QWidget | None = None) -> None:
        super().__init__(desk, phrase("Cost"), parent)
        self.resize(980, 600)
        self._view: ProjectView | None = None
        self._base: int | None = None
        self._fresh = False
        self.said = QLabel()
        self.said.setWordWrap(True)
        self.pages = TabbedPages()
        self.tables: dict[str, CostTable] = {}
        for way, title in _WAYS:
            self.tables[way] = table = CostTable(way, title)
            self.pages.addTab(table, phrase("By {way}", way=phrase(title).lower()))
        self.tables["opening"].opened.connect(self._show_opening)
        self.moved = CostChangesPage()
        self.moved.since_changed.connect(self.compare)
        self.moved.wants_opening.connect(self._show_opening)
        self.pages.addTab(self.moved, phrase("What changed"))
        self._by_opening: Mapping[str, Cost] | None = None
        self._before: Mapping[str, Cost] | None = None
        """By opening, as it was reckoned before, in the same currency."""
        self._currency = ""
        self.unknown = UnknownTable()
        self.pages.addTab(self.unknown, phrase("Not counted"))
        self.terms = TermsForm()
        self.terms.changed.connect(self.enable)
        self.pages.addTab(self.terms, phrase("Terms"))
        note = QLabel(
            phrase(
                "An estimate: list prices less discounts, and hours that come from memory until the project "
                "puts its own in their place. Taxes, freight, permits and mains work are not in it. Amounts "
                "are rounded for show only."
            )
        )
        note.setWordWrap(True)
        self.again = self.button(phrase("Reckon again"), self.reckon)
        self.set = self.button(phrase("Set terms"), self.set_terms, phrase("Write what was typed as one step"))
        self.body.addWidget(self.said)
        self.body.addWidget(self.pages, 1)
        self.body.addWidget(note)
        self.foot.addWidget(self.again)
        self.foot.addWidget(self.set)
        self.enable()

    def follow(self) -> None:
        """Say that the amounts are of before; terms that were set are reckoned with at once."""
        if self._fresh:
            self._fresh = False
            self.reckon()
        elif self._view is not None and self.desk.workspace.kept_for(_PLACE) is None:
            self._say(phrase("The project has changed since; reckon again."))
        self.enable()

    def enable(self) -> None:
        """Terms must be typed otherwise than they stand."""
        self.again.setEnabled(self.idle)
        self.terms.setEnabled(self._view is not None)
        self.set.setEnabled(self.idle and self._view is not None and bool(self.terms.answer()))

    def reckon(self) -> None:
        """Reckon what the project costs as it stands, off the screen's thread."""
        workspace = self.desk.workspace
        project, version = workspace.project, workspace.version

        def work(progress: Progress, _cancelled: Cancelled) -> Any:
            base = newest(project)
            view = project_view(project, checker=workspace.checker, progress=progress)
            try:
                found = {way: totals(view, way) for way, _ in _WAYS}
                whole = {way: combined(each.values()) for way, each in found.items()}
                return view, base, (found, whole), revisions(project)
            except InputError as error:
                # Parts in several currencies, and the project has none of its own.
                return view, base, f"{error.field} {error.message}", revisions(project)

        def then(answer: Any) -> None:
            workspace.keep(_PLACE, version, answer)
            self._on_reckoned(answer)

        self.run(phrase("Reckoning"), work, then)

    def show_kept(self) -> None:
        """Show what was reckoned before while nothing it reads has changed; else reckon."""
        kept = self.desk.workspace.kept_for(_PLACE)
        if kept is None:
            self.reckon()
        elif self._view is not kept[0]:
            self._on_reckoned(kept)

    def _on_reckoned(self, answer: Any) -> None:
        view, self._base, reckoned, frozen = answer
        self._view = view
        self.moved.offer([each.letter for each in frozen])
        self._show_terms(view)
        if isinstance(reckoned, str):
            for table in self.tables.values():
                table.clear()
            self.unknown.show_unknown(Cost())
            self._say(phrase("unknown: {found}. Set it among the terms.", found=reckoned))
        else:
            found, whole = reckoned
            for way, _ in _WAYS:
                self.tables[way].show_costs(
                    found[way],
                    whole[way],
                    labour=view.terms.labour_per_hour is not None,
                    currency=terms_of(view.terms, view.catalogue).currency or "",
                )
            self._show_unknown(whole["building"])
            self._keep(view, found["opening"])
        self.enable()

    def compare(self) -> None:
        """Set what was reckoned beside the last reckoning, or beside a revision."""
        view, now, letter = self._view, self._by_opening, self.moved.letter
        if view is None or now is None:
            return
        if letter == LAST:
            if self._before is None:
                self.moved.refuse(
                    phrase("Nothing was reckoned here before; choose a revision, or reckon again after an edit.")
                )
            else:
                self.moved.show_changes(self._before, now, self._currency)
            return
        project = self.desk.workspace.project

        def work(_progress: Progress, _cancelled: Cancelled) -> Any:
            try:
                return costs_of_revision(project, view, letter, "opening")
            except ValueRefusedError as refused:
                return str(refused)

        def then(before: Any) -> None:
            if isinstance(before, str):
                self.moved.refuse(before)
            else:
                self.moved.show_changes(before, now, self._currency)
            self.enable()

        self.run(phrase("Reckoning revision {letter}", letter=letter), work, then)

    def _keep(self, view: ProjectView, found: Mapping[str, Cost]) -> None:
        """Keep what was reckoned before, where it can be compared."""
        currency = terms_of(view.terms, view.catalogue).currency
        self._before = self._by_opening if currency == self._currency else None
        self._by_opening, self._currency = found, currency
        self.compare()

    def _say(self, words: str) -> None:
        """Say something above the pages; nothing takes no room."""
        self.said.setText(words)
        self.said.setVisible(bool(words))

    def _show_opening(self, mark: str) -> None:
        checked = self.desk.workspace.checked
        self.desk.show_openings([id_ for id_, each in checked.items() if each.given.opening.mark == mark])

    def _show_unknown(self, whole: Cost) -> None:
        view = self._view
        self.unknown.show_unknown(whole)
        self.pages.setTabText(self.pages.indexOf(self.unknown), phrase("Not counted {count}", count=len(whole.unknown)))
        if view is None:
            return
        if not any(each.fit is not None and each.fit.status == "fits" for each in view.openings):
            self._say("")
            return
        left = sum(each.fit is None or each.fit.status != "fits" for each in view.openings)
        currency = terms_of(view.terms, view.catalogue).currency or phrase("currency unknown")
        words = [
            phrase("Total of what is known: {rounded:,} {currency}", rounded=rounded(whole.total), currency=currency),
        ]
        if view.terms.labour_per_hour is None and whole.hours:
            words.append(phrase("labour unknown: Terms says what an hour costs"))
        if whole.at_list:
            words.append(
                phrase_of_count(
                    "{count} part at list price",
                    "{count} parts at list price",
                    len(whole.at_list),
                )
            )
        if left:
            words.append(
                phrase_of_count(
                    "{left} opening does not fit, or not yet, so it is not counted",
                    "{left} openings do not fit, or not yet, so they are not counted",
                    left,
                    left=left,
                )
            )
        self._say(" · ".join(words))

    def _show_terms(self, view: ProjectView) -> None:
        parts = view.catalogue.parts.values()
        self.terms.show_terms(
            view.terms, {part.supplier for part in parts}, {part.currency for part in parts}, labour_table()
        )

    def set_terms(self) -> None:
        """Write what was typed as one step, and reckon with it."""
        typed, workspace = self.terms.answer(), self.desk.workspace

        def act(base: int | None) -> Changes:
            return set_terms(
                workspace.project, who=workspace.who, base=base,
                currency=typed.currency, labour_per_hour=typed.labour_per_hour, learning_rate=typed.learning_rate,
                discounts=typed.discounts or None, rates=typed.rates or None, hours=typed.hours or None,
            )  # fmt: skip

        def then(_changes: Changes) -> None:
            self._fresh = True
            if self.idle:
                self.follow()

        self.edit_seen(act, self._base, then)

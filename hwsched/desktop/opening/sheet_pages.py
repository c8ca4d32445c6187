"""The lists of the opening's sheet: parts, holes, findings and refusals, each with what can be asked of it."""

from collections.abc import Sequence

from PySide6.QtCore import Signal

from hwsched.desktop.looks.severities import COLOURS as SEVERITY_COLOURS
from hwsched.desktop.looks.severities import severity_word
from hwsched.desktop.parts.set_book import OpeningSet
from hwsched.desktop.widgets.lines import Lines, LinesPage
from hwsched.kept_sentences import FIT, kept_phrase
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.values import Catalogue, Finding, Fit, FitPart, Hole
from hwsched.values.amounts import amount_words
from hwsched.values.role_words import role_said


class PartsPage(LinesPage):
    """Parts with where each comes from; one can be chosen otherwise."""

    wants_part = Signal(str, str)
    """Role and catalogue number of the part that a person wants to choose otherwise."""
    wants_why = Signal(str)
    """Role, or "place"."""

    def __init__(self) -> None:
        super().__init__(
            Lines(
                (phrase("Role"), phrase("Part"), phrase("Qty"), phrase("From"), phrase("What"), phrase("Reason")),
                4,
                {0: 92, 2: 50, 3: 46},
                numbers=(2,),
            )
        )
        self.table.setToolTip(phrase("Double-click a part to choose another by hand"))
        self.table.empty.say(phrase("No parts yet. Fit works them out."))
        self.table.cellDoubleClicked.connect(lambda row, _column: self._ask_part(row))
        self.act_choose = self.offer(phrase("Choose…"), phrase("Choose another part by hand, or leave it to the fit"))
        self.act_choose.triggered.connect(lambda: self._ask_part(self.table.chosen_row()))
        self.act_why = self.offer(phrase("Why this part?"), phrase("Facts, rules and numbers behind the part"))
        self.act_why.triggered.connect(lambda: self._ask_why(self.table.chosen_row()))
        self.act_place = self.offer(
            phrase("Why this place?"), phrase("Facts, rules and numbers behind the place of the unit")
        )
        self.act_place.triggered.connect(lambda: self.wants_why.emit("place"))
        self._placed = False
        self._parts: tuple[FitPart, ...] = ()

    def show_fit(self, fit: Fit, of_set: OpeningSet | None, catalogue: Catalogue, style: LengthStyle) -> None:
        """Show the parts of a fit; those that go before the hardware set's line are told apart."""
        self._placed, self._parts = fit.placement is not None, fit.parts
        roles = of_set.roles if of_set is not None else frozenset()
        rows = [
            (
                role_said(p.role),
                p.part,
                amount_words(catalogue.get(p.part), p.quantity, style),
                source_words(p, p.role in roles),
                p.description,
                kept_phrase(p.reason, FIT),
            )
            for p in fit.parts
        ]
        self.table.show_rows(rows)
        own = {p.role for p in fit.parts if p.source == "by-hand" and p.role in roles}
        for row, part in enumerate(fit.parts):
            cell = self.table.item(row, 3)
            if cell is not None and part.role in own:
                font = cell.font()
                font.setBold(True)
                cell.setFont(font)
        words = phrase("set {name}", name=of_set.name) if of_set is not None else ""
        self.say(phrase("{count} by hand instead of {words}", count=len(own), words=words) if own else words)
        self.enable()

    def enable(self) -> None:
        """Let what is possible with the selected part be done."""
        chosen = self.table.chosen_row() >= 0
        self.act_choose.setEnabled(chosen)
        self.act_why.setEnabled(chosen)
        self.act_place.setEnabled(self._placed)

    def _ask_part(self, row: int) -> None:
        if 0 <= row < len(self._parts):
            self.wants_part.emit(self._parts[row].role, self._parts[row].part)

    def _ask_why(self, row: int) -> None:
        if 0 <= row < len(self._parts):
            self.wants_why.emit(self._parts[row].role)


class HolesPage(LinesPage):
    """Holes to be made."""

    wants_why = Signal(int)
    """Place of the hole in the order of drilling."""

    def __init__(self) -> None:
        super().__init__(
            Lines(
                (
                    phrase("Hole"),
                    phrase("Face"),
                    phrase("From edge"),
                    phrase("Diameter"),
                    phrase("Pilot"),
                    phrase("Depth"),
                    phrase("Tool"),
                ),
                6,
                {0: 180},
                numbers=(2, 3, 4, 5),
            )
        )
        self.table.empty.say(phrase("No hole is made."))
        self.act_why = self.offer(phrase("Why this hole?"), phrase("Facts, rules and numbers behind the holes"))
        self.act_why.triggered.connect(self._ask)
        self._holes: tuple[Hole, ...] = ()

    def show_fit(self, fit: Fit, style: LengthStyle) -> None:
        """Show the holes of a fit."""
        from hwsched.values.place_words import face_words
        from hwsched.work.tools import WORDS as TOOLS
        from hwsched.work.tools import drill_words

        self._holes = fit.holes
        self.table.show_rows(
            [
                (
                    kept_phrase(h.name, FIT) + (f" ×{h.count}" if h.count > 1 else ""),
                    face_words(h.face),
                    format_length(h.x_mm, style),
                    drill_words(h.diameter_mm, style),
                    "" if h.pilot_mm is None else drill_words(h.pilot_mm, style),
                    phrase("through") if h.depth_mm is None else format_length(h.depth_mm, style),
                    phrase(TOOLS.get(h.tool, h.tool)) if h.tool else "",
                )
                for h in fit.holes
            ]
        )
        self.enable()

    def enable(self) -> None:
        """Let a selected hole be asked about."""
        self.act_why.setEnabled(self.table.chosen_row() >= 0)

    def _ask(self) -> None:
        row = self.table.chosen_row()
        if 0 <= row < len(self._holes):
            self.wants_why.emit(self._holes[row].order)


class FindingsPage(LinesPage):
    """What the rules say; what is waived stays, marked and counted."""

    wants_waiver = Signal(object)
    """The finding."""
    wants_back = Signal(object)
    """The finding whose waiver shall be taken back."""
    wants_why = Signal(str)
    wants_rule = Signal(str)

    def __init__(self) -> None:
        titles = (phrase("Severity"), phrase("Finding"), phrase("Cure"), phrase("Basis"))
        # What is found and what helps have most of the room.
        super().__init__(Lines(titles, 1, {0: 72, 3: 104}))
        self.table.empty.say(phrase("No rule says anything here."))
        self.act_waive = self.offer(phrase("Waive…"), phrase("Write down who accepts this finding, and why"))
        self.act_waive.triggered.connect(lambda: self.wants_waiver.emit(self.chosen()))
        self.act_back = self.offer(phrase("Take waiver back"), phrase("The finding counts again"))
        self.act_back.triggered.connect(lambda: self.wants_back.emit(self.chosen()))
        self.act_why = self.offer(phrase("Why?"), phrase("Facts and numbers behind the finding"))
        self.act_why.triggered.connect(lambda: self.wants_why.emit(self._rule()))
        self.act_rule = self.offer(phrase("Show rule"), phrase("The rule's page in the rulebook"))
        self.act_rule.triggered.connect(lambda: self.wants_rule.emit(self._rule()))
        self._findings: tuple[Finding, ...] = ()

    def show_findings(self, findings: Sequence[Finding]) -> None:
        """Show these findings; the selected one stays selected where it is still there."""
        from hwsched.rules.saying import cure_of, message_of

        before = self.chosen()
        self._findings = tuple(findings)
        waived = {place for place, finding in enumerate(findings) if finding.waived}
        rows = [
            (
                severity_word(f.severity, waived=f.waived),
                message_of(f) + (phrase("\nWaived by {waived_by}", waived_by=f.waived_by) if f.waived else ""),
                cure_of(f),
                phrase(f.basis),
            )
            for f in findings
        ]
        self.table.clearSelection()
        self.table.show_rows(rows, aside=waived, inks=[SEVERITY_COLOURS[f.severity] for f in findings])
        for place, finding in enumerate(findings):
            if before is not None and (finding.rule, finding.about) == (before.rule, before.about):
                self.table.selectRow(place)
                break
        self.say(phrase("{count} of {count_2} waived", count=len(waived), count_2=len(findings)) if waived else "")
        self.enable()

    def title(self) -> str:
        """Return the words of the page's tab."""
        waived = sum(finding.waived for finding in self._findings)
        return phrase("Findings {count}", count=len(self._findings) - waived) + (
            phrase(" + {waived} waived", waived=waived) if waived else ""
        )

    def chosen(self) -> Finding | None:
        """Return the selected finding."""
        row = self.table.chosen_row()
        return self._findings[row] if 0 <= row < len(self._findings) else None

    def enable(self) -> None:
        """Let what is possible with the selected finding be done."""
        finding = self.chosen()
        self.act_waive.setEnabled(finding is not None and not finding.waived)
        self.act_back.setEnabled(finding is not None and finding.waived)
        self.act_why.setEnabled(finding is not None)
        self.act_rule.setEnabled(finding is not None)

    def _rule(self) -> str:
        finding = self.chosen()
        return finding.rule if finding is not None else ""


class RefusedPage(LinesPage):
    """What is missing, and the parts that were refused with their reasons."""

    wants_rule = Signal(str)

    def __init__(self) -> None:
        super().__init__(Lines((phrase("Part"), phrase("Rule"), phrase("Why not")), 2))
        self.table.empty.say(phrase("Nothing is missing, and no part was refused."))
        self.act_rule = self.offer(phrase("Show rule"), phrase("The rule's page in the rulebook"))
        self.act_rule.triggered.connect(lambda: self.wants_rule.emit(self._rule()))
        self._rules: tuple[str, ...] = ()
        """Identifiers of the rules that refuse, below what is missing."""
        self._needs = 0

    def show_fit(self, fit: Fit) -> int:
        """Show what a fit lacks and refuses; returns how many lines."""
        from hwsched.rules import in_rulebook

        def title(rule_id: str) -> str:
            rule = in_rulebook(rule_id)
            return phrase(rule.title) if rule is not None else rule_id

        needs = [
            (
                "",
                phrase("unknown"),
                phrase("needs {label}: {blocks}", label=phrase(need.label), blocks=phrase(need.blocks)),
            )
            for need in fit.needs
        ]
        self._needs, self._rules = len(needs), tuple(r.rule for r in fit.refused)
        self.table.show_rows(
            [*needs, *((kept_phrase(r.part, FIT), title(r.rule), kept_phrase(r.reason, r.rule)) for r in fit.refused)]
        )
        self.enable()
        return self.table.rowCount()

    def enable(self) -> None:
        """Only a refusal has a rule."""
        self.act_rule.setEnabled(self.table.chosen_row() >= self._needs)

    def _rule(self) -> str:
        at = self.table.chosen_row() - self._needs
        return self._rules[at] if 0 <= at < len(self._rules) else ""


def source_words(part: FitPart, in_set: bool) -> str:
    """Say where a part comes from."""
    if part.source == "set":
        return phrase("set")
    if part.source == "by-hand":
        return phrase("by hand instead of set") if in_set else phrase("by hand")
    return phrase("fit")

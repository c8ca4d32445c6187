"""The sheet of the chosen opening: both faces drawn, facts, parts, findings, and what was refused."""

from collections.abc import Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import (
    QHeaderView,
    QLabel,
    QSplitter,
    QTableWidget,
    QTableWidgetItem,
    QTabWidget,
    QVBoxLayout,
    QWidget,
)

from hwsched.cases import Fit, FittedPart
from hwsched.desktop.drawing_view import DrawingView
from hwsched.desktop.facts_form import FactsForm
from hwsched.desktop.register import state_of
from hwsched.drawings import elevation
from hwsched.drawings.handing import lock_edge_left
from hwsched.operations.checking import Checked
from hwsched.quantities import LengthStyle, format_length


class _Lines(QTableWidget):
    """A small read-only table."""

    def __init__(self, titles: Sequence[str], stretch: int) -> None:
        super().__init__(0, len(titles))
        self.setHorizontalHeaderLabels(list(titles))
        self.verticalHeader().hide()
        self.verticalHeader().setSectionResizeMode(QHeaderView.ResizeMode.ResizeToContents)
        self.setEditTriggers(QTableWidget.EditTrigger.NoEditTriggers)
        self.setSelectionBehavior(QTableWidget.SelectionBehavior.SelectRows)
        self.setWordWrap(True)
        self.setAlternatingRowColors(True)
        self.setShowGrid(False)
        header = self.horizontalHeader()
        for column in range(len(titles)):
            mode = QHeaderView.ResizeMode.Stretch if column >= stretch else QHeaderView.ResizeMode.ResizeToContents
            header.setSectionResizeMode(column, mode)

    def show_rows(self, rows: Sequence[Sequence[str]]) -> None:
        self.setRowCount(len(rows))
        for r, row in enumerate(rows):
            for c, text in enumerate(row):
                cell = QTableWidgetItem(text)
                cell.setToolTip(text)
                cell.setTextAlignment(Qt.AlignmentFlag.AlignLeft | Qt.AlignmentFlag.AlignTop)
                self.setItem(r, c, cell)


class OpeningSheet(QWidget):
    """Everything about one opening."""

    edited = Signal(str, str, str, str)
    unit_dragged = Signal(float, float)
    """New lower left corner of the unit's plate while it is dragged, in leaf coordinates [mm]."""
    unit_dropped = Signal(float, float)
    wants_part = Signal(str, str)
    """Role and catalogue number of the part that a person wants to choose otherwise."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.title = QLabel()
        self.title.setTextFormat(Qt.TextFormat.PlainText)
        self.title.setWordWrap(True)
        font = self.title.font()
        font.setBold(True)
        font.setPointSizeF(font.pointSizeF() * 1.15)
        self.title.setFont(font)
        self.state = QLabel()
        self.state.setWordWrap(True)
        self.view = DrawingView()
        self.view.set_movable("unit")
        self.view.dragged.connect(self._on_dragged)
        self.view.dropped.connect(self._on_dropped)
        self._checked: Checked | None = None
        self.facts = FactsForm()
        self.facts.edited.connect(self.edited)
        self.parts = _Lines(("Role", "Part", "Qty", "What", "Reason"), 3)
        self.parts.setToolTip("Double-click a part to choose another by hand")
        self.parts.cellDoubleClicked.connect(self._ask_part)
        self.holes = _Lines(("Hole", "Face", "From edge", "Diameter", "Pilot", "Depth", "Tool"), 6)
        self.findings = _Lines(("Severity", "Finding", "Cure", "Basis"), 1)
        self.refused = _Lines(("Part", "Rule", "Why not"), 2)
        self.pages = QTabWidget()
        for page, name in (
            (self.facts, "Survey"),
            (self.parts, "Parts"),
            (self.holes, "Holes"),
            (self.findings, "Findings"),
            (self.refused, "Refused"),
        ):
            self.pages.addTab(page, name)
        split = QSplitter(Qt.Orientation.Vertical)
        split.addWidget(self.view)
        split.addWidget(self.pages)
        split.setSizes([340, 340])
        split.setStretchFactor(0, 3)
        split.setStretchFactor(1, 2)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(6, 6, 6, 6)
        layout.addWidget(self.title)
        layout.addWidget(self.state)
        layout.addWidget(split, 1)
        self.show_opening(None, "fraction")

    def show_tried(self, tried: Checked, style: LengthStyle, words: str) -> None:
        """Show where a dragged unit would stand, and what would follow."""
        self.state.setText(words)
        self._show_findings(tried)
        fit = tried.fit or Fit("unknown")
        self.view.show_drawings([elevation(tried.case, fit, face, style) for face in ("secured", "key")])

    def _show_findings(self, checked: Checked) -> None:
        self.findings.show_rows(
            [(f.severity + (" (waived)" if f.waived else ""), f.message, f.cure, f.basis) for f in checked.findings]
        )

    def _on_dragged(self, right: float, up: float) -> None:
        corner = self._corner(right, up)
        if corner is not None:
            self.unit_dragged.emit(*corner)

    def _on_dropped(self, right: float, up: float) -> None:
        corner = self._corner(right, up)
        if corner is not None:
            self.unit_dropped.emit(*corner)

    def _corner(self, right: float, up: float) -> tuple[float, float] | None:
        checked = self._checked
        place = checked.fit.placement if checked is not None and checked.fit is not None else None
        hand = checked.case.opening.hand if checked is not None else None
        if place is None or hand is None or place.face != "secured":
            return None
        # Seen from the secured side x runs from the lock edge to the right or to the left, as the hand has it.
        sign = 1.0 if lock_edge_left(hand, "secured") else -1.0
        return place.x_mm + sign * right, place.y_mm + up

    def show_opening(self, checked: Checked | None, style: LengthStyle) -> None:
        """Show an opening, or what to do to see one."""
        self._checked = checked
        self.facts.show_opening(checked, style)
        self.pages.setVisible(checked is not None)
        if checked is None:
            self.title.setText("No opening chosen")
            self.state.setText("")
            self.view.show_drawings((), "Choose an opening in the register to see both faces of its leaf.")
            return
        opening = checked.case.opening
        where = " · ".join(word for word in (opening.building, opening.level, opening.room_to) if word)
        self.title.setText(f"{opening.mark}   {where}")
        self.state.setText(_sentence(checked, style))
        fit = checked.fit or Fit("unknown")
        self.view.show_drawings([elevation(checked.case, fit, face, style) for face in ("secured", "key")])
        self.parts.show_rows(
            [
                (p.role, p.part, f"{p.quantity:g}", p.description, _reason(p))
                for p in fit.parts
            ]
        )  # fmt: skip
        self.holes.show_rows(
            [
                (
                    h.name + (f" ×{h.count}" if h.count > 1 else ""),
                    h.face,
                    format_length(h.x_mm, style),
                    format_length(h.diameter_mm, style),
                    "" if h.pilot_mm is None else format_length(h.pilot_mm, style),
                    "through" if h.depth_mm is None else format_length(h.depth_mm, style),
                    h.tool,
                )
                for h in fit.holes
            ]
        )
        self._show_findings(checked)
        needs = [("", "unknown", f"needs {need.label}: {need.blocks}") for need in fit.needs]
        self.refused.show_rows([*needs, *((r.part, r.rule, r.reason) for r in fit.refused)])
        counts = (None, len(fit.parts), len(fit.holes), len(checked.findings), len(needs) + len(fit.refused))
        for page, (name, count) in enumerate(
            zip(("Survey", "Parts", "Holes", "Findings", "Refused"), counts, strict=True)
        ):
            self.pages.setTabText(page, name if count is None else f"{name} {count}")

    def _ask_part(self, row: int, _column: int) -> None:
        role, part = self.parts.item(row, 0), self.parts.item(row, 1)
        if role is not None and part is not None:
            self.wants_part.emit(role.text(), part.text())


def _reason(part: FittedPart) -> str:
    return f"chosen by hand; {part.reason}" if part.source == "by-hand" else part.reason


def _sentence(checked: Checked, style: LengthStyle) -> str:
    state = state_of(checked)
    fit = checked.fit
    if fit is None:
        return "To be fitted: nothing is worked out for the facts as they stand."
    words = [state if checked.stored else f"{state}, worked out just now; run Fit to store it"]
    if fit.cable is not None:
        spare = fit.cable.available_mm - fit.cable.length_mm
        words.append(f"lead {format_length(spare, style)} to spare")
    if fit.battery is not None:
        words.append(f"pack lasts about {fit.battery.days:.0f} days")
    if fit.power == "supply":
        words.append("fed from a remote supply")
    return " · ".join(words)

"""What the project costs as grids: a line a building, set or opening with the total below, and what is not counted."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from decimal import Decimal
from typing import Any

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel, QVBoxLayout, QWidget

from hwsched.calc.parts.cost import LABOUR, Cost, Unknown
from hwsched.desktop.grid.column import Column
from hwsched.desktop.grid.contents import Contents
from hwsched.desktop.grid.grid import Grid
from hwsched.desktop.grid.model import GridModel
from hwsched.desktop.looks.text_size import put_letters
from hwsched.desktop.looks.tokens import SPACE
from hwsched.kept_sentences import FIT, kept_phrase
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.quantities.money import rounded


@dataclass(frozen=True, slots=True)
class CostLine:
    """What one building, hardware set or opening costs."""

    key: str
    cost: Cost


class CostTable(QWidget):
    """Costs by one kind of thing.

    Parameters
    ----------
    way : str
        Known by it where its layout is kept.
    title : str
        What a line is of.
    """

    opened = Signal(str)
    """Return or a double click on a line: its key."""

    def __init__(self, way: str, title: str, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._labour = True
        said = phrase("Cost by {way}", way=phrase(title).lower())
        self.model = GridModel(Contents(self._columns(title), lambda line: line.key), self)
        self.grid = Grid(
            self.model,
            f"cost-{way}",
            said,
            str,
            opens=True,
            empty=phrase("Nothing is priced yet. What openings cost stands here once Fit has found parts for them."),
        )
        self.grid.opened.connect(self.opened)
        self.total = QLabel()
        put_letters(self.total, bold=True, tabular=True)
        self.total.setWordWrap(True)
        self.total.hide()
        self.total.setContentsMargins(SPACE.small, SPACE.hair, SPACE.small, SPACE.hair)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.grid, 1)
        layout.addWidget(self.total)

    def show_costs(self, found: Mapping[str, Cost], whole: Cost, *, labour: bool, currency: str = "") -> None:
        """Show these costs and what they come to; labour: whether somebody has said what an hour costs."""
        self._labour = labour
        self.model.load(CostLine(key, cost) for key, cost in found.items())
        self.total.setText(self._total(whole, currency) if found else "")
        self.total.setVisible(bool(found))

    def clear(self) -> None:
        """Show nothing."""
        self.show_costs({}, Cost(), labour=True)

    def _total(self, whole: Cost, currency: str) -> str:
        hours = rounded(whole.hours)
        words = [
            phrase("Total {total:,} {currency}", total=rounded(whole.total), currency=currency).strip(),
            phrase_of_count("{hours:,} hour", "{hours:,} hours", 1 if hours == 1 else 2, hours=hours),
            phrase("parts {rounded:,}", rounded=rounded(whole.parts)),
            phrase("labour {labour}", labour=_amount(self._labour_of(whole))),
        ]
        if not whole.complete:
            words.append(phrase("{count} unknown", count=len(whole.unknown)))
        return " · ".join(words)

    def _labour_of(self, cost: Cost) -> Decimal | None:
        return cost.labour if self._labour or not cost.hours else None

    def _columns(self, title: str) -> tuple[Column[CostLine], ...]:
        def amount(name: str, said: str, value: Callable[[Cost], Decimal | None]) -> Column[CostLine]:
            return Column(name, said, lambda line: value(line.cost), _amount, width=15, right=True)

        return (
            Column("key", title, lambda line: line.key, width=32),
            amount("hours", to_phrase("Hours"), lambda cost: cost.hours),
            amount("parts", to_phrase("Parts"), lambda cost: cost.parts),
            amount("labour", to_phrase("Labour"), self._labour_of),
            amount("total", to_phrase("Total"), lambda cost: cost.total),
            Column(
                "unknown",
                to_phrase("Not counted"),
                lambda line: len(line.cost.unknown),
                _unknown,
                width=20,
                right=True,
            ),
        )


class UnknownTable(Grid):
    """What is not counted, with what it needs."""

    def __init__(self, parent: QWidget | None = None) -> None:
        columns: tuple[Column[tuple[int, Unknown]], ...] = (
            Column("about", to_phrase("What"), lambda line: line[1].about, _about, width=32),
            Column("quantity", to_phrase("Quantity"), lambda line: line[1].quantity, lambda n: f"{n:f}", width=12,
                   right=True),
            Column("needs", to_phrase("Needs"), lambda line: line[1].needs, _needs, ", ".join, width=60),
        )  # fmt: skip
        model: GridModel[Any] = GridModel(Contents(columns, lambda line: str(line[0])))
        super().__init__(model, "cost-unknown", phrase("Not counted"), lambda _line: "", parent, opens=True,
                         empty=phrase("All that is needed has a price and hours."))  # fmt: skip
        model.setParent(self)
        self.setFocusPolicy(Qt.FocusPolicy.NoFocus)

    def show_unknown(self, whole: Cost) -> None:
        """Show what of a cost is not counted."""
        self.model.load(enumerate(whole.unknown))


def _amount(value: Decimal | None) -> str:
    return phrase("unknown") if value is None else f"{rounded(value):,}"


def _about(about: str) -> str:
    return phrase(about) if about == LABOUR else about


def _needs(needs: tuple[str, ...]) -> str:
    return ", ".join(kept_phrase(each, FIT) for each in needs)


def _unknown(count: int) -> str:
    return phrase("{count} unknown", count=count) if count else ""

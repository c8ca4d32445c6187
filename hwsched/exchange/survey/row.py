"""What one row of a survey sheet says of an opening, its leaves and its existing items."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Any, Final

from hwsched.exchange.survey.column import LEAVES
from hwsched.exchange.survey.mapping import MARK, Target
from hwsched.exchange.survey.sheet import SheetFacts
from hwsched.exchange.survey.told import FileRow
from hwsched.exchange.survey.words import LOCK_FACTS, TYPE
from hwsched.stopping import asking

_PLACE: Final = frozenset({"building", "level"})
_POSITION: Final = Target("leaf", "position")


@dataclass(slots=True)
class Row:
    """What one row says."""

    place: FileRow
    mark: str | None
    position: str | None
    two_leaves: bool
    opening: dict[str, Any]
    leaf: dict[str, Any]
    leaf_slots: dict[str, dict[str, Any]]
    item: dict[str, Any]
    lock: dict[str, Any]
    item_slots: dict[str, dict[str, Any]]
    of_type: str | None = None
    """Type whose row says what this one does not."""
    count: int | None = None
    """Doors for which it stands, where a person said what becomes of them."""

    @property
    def holds_facts(self) -> bool:
        """Tell whether the row says anything; a building and a level may be those of the title above."""
        return bool(
            self.opening.keys() - _PLACE
            or self.leaf
            or self.leaf_slots
            or self.item
            or self.lock
            or self.item_slots
            or self.position
        )


def rows_of(sheet: SheetFacts) -> Iterator[tuple[int, Row]]:
    """Return what each entry of a sheet says, with its number among the sheet's entries."""
    blocks = _Blocks(sheet)
    file, name = sheet.grid.file, sheet.grid.sheet
    leaf_slots, item_slots = blocks.leaf_slots, blocks.item_slots
    for entry, row in enumerate(asking(sheet.rows)):
        yield (
            entry,
            Row(
                FileRow(file, name, row + 1),
                blocks.marks[entry],
                blocks.positions[entry],
                blocks.two_leaves[entry] is not None,
                blocks.opening[entry],
                blocks.leaf[entry],
                {slot: found for slot, rows in leaf_slots.items() if (found := rows[entry])} if leaf_slots else {},
                blocks.item[entry],
                blocks.lock[entry],
                {slot: found for slot, rows in item_slots.items() if (found := rows[entry])} if item_slots else {},
                blocks.types[entry],
                sheet.counts.get(entry),
            ),
        )


class _Blocks:
    """The columns of a sheet sorted by what they describe, as one dictionary of known facts an entry."""

    def __init__(self, sheet: SheetFacts) -> None:
        self._count = len(sheet.rows)
        columns = sheet.columns
        groups: dict[tuple[str, str], list[Target]] = {}
        for target in columns:
            if target not in (MARK, _POSITION, LEAVES, TYPE):
                groups.setdefault(_group(target), []).append(target)
        empty: list[Any] = [None] * self._count
        self.marks = columns.get(MARK, empty)
        self.positions = columns.get(_POSITION, empty)
        self.two_leaves = columns.get(LEAVES, empty)
        self.types = columns.get(TYPE, empty)
        self.opening = self._dicts(columns, groups.pop(("opening", ""), []))
        self.leaf = self._dicts(columns, groups.pop(("leaf", ""), []))
        self.item = self._dicts(columns, groups.pop(("item", ""), []))
        self.lock = self._dicts(columns, groups.pop(("lock", ""), []))
        self.leaf_slots = {s: self._dicts(columns, t) for (kind, s), t in groups.items() if kind == "leaf"}
        self.item_slots = {s: self._dicts(columns, t) for (kind, s), t in groups.items() if kind == "item"}

    def _dicts(self, columns: dict[Target, list[Any]], targets: list[Target]) -> Sequence[dict[str, Any]]:
        if not targets:
            return [{}] * self._count
        names = [target.attribute for target in targets]
        return [
            {name: value for name, value in zip(names, row, strict=True) if value is not None}
            for row in zip(*(columns[target] for target in targets), strict=True)
        ]


def _group(target: Target) -> tuple[str, str]:
    if target.entity != "existing_item":
        return target.entity, target.slot
    if not target.slot and target.attribute in LOCK_FACTS:
        return "lock", ""
    return "item", target.slot

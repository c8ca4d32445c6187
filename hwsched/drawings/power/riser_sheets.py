"""Which strings of a building stand on which sheet of its riser: whole supplies, else whole circuits, else strings."""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from hwsched.drawings.power.riser_layout import Building, Plan, Sheet, place
from hwsched.drawings.power.riser_strings import Key, String, with_below
from hwsched.language import phrase


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """A sheet and whose circuits stand on it."""

    sheet: Sheet
    supplies: tuple[int, ...]


def sheets_of(circuits: Mapping[int, Sequence[Sequence[String]]], building: Building) -> tuple[SheetPlan, ...]:
    """Spread supplies over sheets.

    Parameters
    ----------
    circuits : mapping
        Per supply, by index, the strings of each of its circuits.
    building : Building
        Its supplies, levels and style of lengths.
    """
    every = [string for members in circuits.values() for circuit in members for string in circuit]
    packing = _Packing(building, every)
    for index, members in circuits.items():
        strings = [string for circuit in members for string in circuit]
        if packing.add(strings, [] if strings else [index]):
            continue
        for circuit in members:
            if not packing.add(circuit):
                for string in circuit:
                    packing.add([string], always=True)
    return packing.sheets()


class _Packing:
    """Sheets as they fill."""

    def __init__(self, building: Building, every: Iterable[String]) -> None:
        self._building = building
        self._plans = [Plan()]
        self._names: dict[Key, str] = {}
        self._children: dict[Key, int] = {}
        for string in every:
            for stop in string.stops:
                self._names[stop.key] = " ".join(stop.name)
            if string.parent is not None:
                self._children[string.parent] = self._children.get(string.parent, 0) + 1
        self._where: dict[Key, int] = {}
        """Sheet on which a stop stands, from 1."""
        self._before: frozenset[int] = frozenset()
        """Supplies on the sheets before the last."""

    def add(self, strings: Sequence[String], bare: Sequence[int] = (), always: bool = False) -> bool:
        """Add strings to the last sheet, else to an empty one; False where not even that holds them."""
        last = self._plans[-1]
        tried = Plan([*last.strings, *strings], [*last.bare, *bare])
        if self._trial(tried, self._before).fits:
            self._plans[-1] = tried
        else:
            fresh = Plan(list(strings), list(bare))
            before = self._before | set(_supplies(last))
            if not always and not bare and not self._trial(fresh, before).fits:
                return False
            if _supplies(last):
                self._plans.append(fresh)
                self._before = before
            else:
                self._plans[-1] = fresh
        for string in strings:
            for stop in string.stops:
                self._where[stop.key] = len(self._plans)
        return True

    def _trial(self, plan: Plan, before: frozenset[int]) -> Sheet:
        """Place a sheet as if all that is not on it stood on another: words for that take room."""
        here: dict[Key, int] = {}
        for string in plan.strings:
            if string.parent is not None:
                here[string.parent] = here.get(string.parent, 0) + 1
        away = {
            stop.key: phrase("on: sheets 00")
            for string in plan.strings
            for stop in string.stops
            if self._children.get(stop.key, 0) > here.get(stop.key, 0)
        }
        stubs = {key: f"from {self._names[key]}, sheet 00" for key in here}
        strings = [with_below(string, away) for string in plan.strings]
        return place(Plan(strings, plan.bare), self._building, stubs, before)

    def sheets(self) -> tuple[SheetPlan, ...]:
        """Place all sheets, each with the numbers of those on which it goes on."""
        onto: dict[Key, set[int]] = {}
        for number, plan in enumerate(self._plans, start=1):
            for string in plan.strings:
                if string.parent is not None and self._where[string.parent] != number:
                    onto.setdefault(string.parent, set()).add(number)
        away = {key: _onward(sorted(numbers)) for key, numbers in onto.items()}
        stubs = {
            key: phrase("from {names}, sheet {where}", names=self._names[key], where=self._where[key]) for key in onto
        }
        found: list[SheetPlan] = []
        before: frozenset[int] = frozenset()
        for plan in self._plans:
            strings = [with_below(string, away) for string in plan.strings]
            sheet = place(Plan(strings, plan.bare), self._building, stubs, before)
            before |= set(_supplies(plan))
            found.append(SheetPlan(sheet, _supplies(plan)))
        return tuple(found)


def _supplies(plan: Plan) -> tuple[int, ...]:
    return tuple(sorted({string.supply for string in plan.strings} | set(plan.bare)))


def _onward(sheets: Sequence[int]) -> str:
    """Say on which sheets something goes on, in few words.

    Examples
    --------
    >>> _onward([3]), _onward([3, 4, 7])
    ('on: sheet 3', 'on: sheets 3–7')
    """
    return (
        phrase("on: sheet {sheets}", sheets=sheets[0])
        if len(sheets) == 1
        else phrase("on: sheets {sheets}–{sheets_2}", sheets=sheets[0], sheets_2=sheets[-1])
    )

"""Where strings of stops stand on a riser's sheet: bands of levels, rows in them, lanes between them [paper mm].

x runs from the left edge of the sheet, y down from its top is negative. No shapes here.
"""

import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Final

from hwsched.drawings.power.power_words import rating_words, run_length_words, share_words
from hwsched.drawings.power.riser_strings import Key, Stop, String
from hwsched.drawings.text_room import broken, line_step_mm, lines_tall_mm
from hwsched.language import phrase
from hwsched.quantities import LengthStyle
from hwsched.quantities.adding import added
from hwsched.values.power import SupplyResult

WIDE_MM: Final = 250.0
TALL_MM: Final = 146.0
"""Of a landscape letter page, without its head, title and notes."""
LEVEL_MM: Final = 23.0
SUPPLY_X: Final = (25.0, 60.0)
LIMITER_X: Final = (63.0, 87.0)
LANES_X: Final = 89.5
LANE_MM: Final = 2.2
TRACK_MM: Final = 1.9
MOST_LANES: Final = 22
HEAD_MM: Final = 2.4
"""For the line over strings that stand side by side."""
HEAD_GAP_MM: Final = 1.5
AIR_MM: Final = 1.0
"""Between a line and the words on it."""
NO_LEVEL: Final = "Level not recorded"


def box_tall_mm(stop: Stop) -> float:
    """Return the height of an opening's box."""
    return max(4.6, lines_tall_mm(len(stop.name)) + 2.2)


@dataclass(frozen=True, slots=True)
class SupplyWords:
    """What is written in a supply's box."""

    name: tuple[str, ...]
    rest: tuple[str, ...]

    @property
    def tall_mm(self) -> float:
        """Height of the words [paper mm]."""
        return lines_tall_mm(len(self.name), "label") + 0.8 + len(self.rest) * line_step_mm() + 2.6


def supply_words(supply: SupplyResult, again: bool) -> SupplyWords:
    """Return what is written in a supply's box; ``again`` where it stood on a sheet before."""
    facts = supply.supply
    wide = SUPPLY_X[1] - SUPPLY_X[0] - 3.0
    texts = [
        facts.part or phrase("part not chosen"),
        rating_words(supply),
        share_words(supply),
        facts.place or "",
        "continued" if again else "",
    ]
    return SupplyWords(broken(facts.name, wide, "label"), tuple(line for text in texts for line in broken(text, wide)))


@dataclass(frozen=True, slots=True)
class Building:
    """What a riser shows."""

    supplies: tuple[SupplyResult, ...]
    heights: Mapping[str, float | None]
    """Level's name to its height [m]."""
    style: LengthStyle

    def level_words(self, level: str) -> tuple[str, ...]:
        """Return what is written at a level."""
        words = broken(level or NO_LEVEL, LEVEL_MM - 2.0, "label")
        height = self.heights.get(level)
        if height is None or not level:
            return words
        sign = "" if height == 0 else "+" if height > 0 else "−"
        return (*words, sign + run_length_words(abs(height), self.style))


@dataclass(slots=True)
class Row:
    """One row of stops with its place on the sheet."""

    parent: Key | None
    """Where its strings hang; None for what begins at the supply."""
    limiter: Stop | None
    stops: tuple[Stop, ...]
    heads: tuple[int, ...]
    """At which of its stops a string begins; strings of one parent that stand side by side hang from a line above."""
    first: bool
    last: bool
    tag: tuple[str, ...]
    taps: tuple[Key, ...]
    """Stops from which a lane leaves through the gutter under the row."""
    y: float = 0.0
    next_y: float = 0.0
    """Where the next row of its string lies."""
    next_low: bool = False
    """Whether the run that goes on there leads to a place that is low."""
    more_mm: float = 0.0
    """Added under it, where the supply's box needs the room."""

    @property
    def up_mm(self) -> float:
        """What it needs above its line."""
        found = [2.6]
        if self.limiter is not None:
            found.append(lines_tall_mm(len(self.limiter.name)) + AIR_MM + 1.0)
        for stop in self.stops:
            found.append(lines_tall_mm(len(stop.conductor)) + AIR_MM)
            if stop.kind == "opening":
                found.append(box_tall_mm(stop) / 2)
        return max(lines_tall_mm(len(self.tag)) / 2 + 0.6, max(found) + (HEAD_MM if self.combed else 0.0))

    @property
    def down_mm(self) -> float:
        """What it needs under its line without the gutter."""
        found = [2.6, lines_tall_mm(len(self.tag)) / 2 + 0.6]
        if self.limiter is not None:
            found.append(lines_tall_mm(len(self.limiter.below)) + AIR_MM + 1.0)
        for stop in self.stops:
            found.append(lines_tall_mm(len(stop.length)) + AIR_MM)
            if stop.kind == "opening":
                found.append(box_tall_mm(stop) / 2 + (lines_tall_mm(len(stop.below)) + AIR_MM if stop.below else 0.0))
            else:
                found.append(1.5 + AIR_MM + lines_tall_mm(len(stop.name) + len(stop.below)))
        return max(found)

    @property
    def combed(self) -> bool:
        """Whether several strings stand in it."""
        return len(self.heads) > 1

    @property
    def entry_y(self) -> float:
        """Where the way from its parent comes in."""
        return self.y + self.up_mm - HEAD_MM / 2 if self.combed else self.y

    def places(self, start_x: float) -> Iterator[tuple[Stop, float, bool]]:
        """Yield its stops with their left ends, and whether a string begins there."""
        x = start_x
        for number, stop in enumerate(self.stops):
            head = number in self.heads
            x += HEAD_GAP_MM if head and number else 0.0
            yield stop, x, head
            x += stop.wide_mm

    @property
    def tracks(self) -> int:
        """Lines in the gutter under it."""
        return len(self.taps) + (not self.last)

    @property
    def tall_mm(self) -> float:
        """Height of all."""
        gutter = 0.8 + self.tracks * TRACK_MM if self.tracks else 0.0
        return 1.4 + self.up_mm + self.down_mm + gutter + 0.8 + self.more_mm

    def track_y(self, number: int) -> float:
        """Return where a line of the gutter lies."""
        return self.y - self.down_mm - 0.8 - (number + 0.5) * TRACK_MM


@dataclass(frozen=True, slots=True)
class Band:
    """A level with its rows."""

    level: str
    words: tuple[str, ...]
    top: float
    bottom: float
    rows: tuple[Row, ...]


@dataclass(frozen=True, slots=True)
class Block:
    """Box of a supply."""

    supply: int
    words: SupplyWords
    top: float
    bottom: float


@dataclass(frozen=True, slots=True)
class Sheet:
    """A sheet of a riser, all placed."""

    bands: tuple[Band, ...]
    blocks: tuple[Block, ...]
    lane_x: Mapping[Key, float]
    """Per parent of what hangs elsewhere on this sheet."""
    ends: Mapping[Key, tuple[float, ...]]
    """Per parent the levels at which its lane ends or is tapped."""
    start_x: float
    """Where rows of stops begin."""
    tall_mm: float
    lanes: int

    @property
    def fits(self) -> bool:
        """Whether it has room on a page."""
        return self.tall_mm <= TALL_MM and self.lanes <= MOST_LANES


@dataclass(slots=True)
class Plan:
    """What shall stand on a sheet."""

    strings: list[String] = field(default_factory=list)
    bare: list[int] = field(default_factory=list)
    """Supplies without circuits."""


def place(plan: Plan, building: Building, stubs: Mapping[Key, str], again: frozenset[int] = frozenset()) -> Sheet:
    """Place strings on a sheet.

    Parameters
    ----------
    plan : Plan
        Strings and supplies without circuits.
    building : Building
        Its supplies, which strings name by index, and the heights of its levels.
    stubs : mapping
        Words for parents that stand on another sheet.
    again : frozenset of int
        Supplies whose box stood on a sheet before.
    """
    lanes = 0
    while True:
        sheet = _place(plan, building, stubs, again, lanes)
        if sheet.lanes <= lanes or lanes > MOST_LANES:
            return sheet
        lanes = sheet.lanes


def level_key(level: str, heights: Mapping[str, float | None]) -> tuple[bool, float, list[tuple[int, str]]]:
    """Order levels: by height where it is known, the others above them by name, numbers in it as numbers.

    Examples
    --------
    >>> heights = {"B": -3.0, "1": 0.0, "Roof 10": None, "Roof 9": None}
    >>> sorted(heights, key=lambda level: level_key(level, heights))
    ['B', '1', 'Roof 9', 'Roof 10']
    """
    height = heights.get(level)
    known = height is not None and math.isfinite(height)
    digits: list[tuple[int, str]] = []
    word = ""
    for letter in f"{level} ":
        if word and letter.isdecimal() != word.isdecimal():
            digits.append((int(word) if word.isdecimal() else -1, word))
            word = ""
        word += letter
    return (level != "" and not known, height if height is not None and known else -math.inf, digits)


def _place(plan: Plan, building: Building, stubs: Mapping[Key, str], again: frozenset[int], lanes: int) -> Sheet:
    supplies = building.supplies
    start_x = LANES_X + lanes * LANE_MM + 1.8
    parents = {string.parent for string in plan.strings if string.parent is not None}
    branching = parents & {stop.key for string in plan.strings for stop in string.stops}
    roots: dict[tuple[str, int], list[Row]] = {}
    others: dict[tuple[str, int], dict[Key, list[String]]] = {}
    for index in plan.bare:
        row = Row(None, None, (), (), True, True, (phrase("no circuits"),), ())
        roots.setdefault((supplies[index].supply.level or "", index), []).append(row)
    for string in plan.strings:
        place = (string.level, string.supply)
        if string.parent is None:
            roots.setdefault(place, []).extend(_rows([string], supplies, start_x, branching, stubs))
        else:
            others.setdefault(place, {}).setdefault(string.parent, []).append(string)
    bands: list[Band] = []
    blocks: list[Block] = []
    y = 0.0
    levels = {level for level, _ in (*roots, *others)}
    for level in sorted(levels, key=lambda name: level_key(name, building.heights), reverse=True):
        top = y
        y -= 1.0
        every: list[Row] = []
        for supply in range(len(supplies)):
            block = roots.get((level, supply), [])
            if block:
                words = supply_words(supplies[supply], supply in again)
                block[-1].more_mm = max(0.0, words.tall_mm + 2.0 - added(row.tall_mm for row in block))
                begin = y
                y = _stack(block, y)
                blocks.append(Block(supply, words, begin - 1.0, y + 1.0))
            rows = [
                row
                for strings in others.get((level, supply), {}).values()
                for row in _rows(strings, supplies, start_x, branching, stubs)
            ]
            y = _stack(rows, y)
            every += [*block, *rows]
        written = building.level_words(level)
        y = min(y, top - len(written) * line_step_mm("label") - 3.0) - 1.0
        bands.append(Band(level, written, top, y, tuple(every)))
    ends = _lane_ends(bands, branching)
    lane_x, count = _lanes(ends)
    return Sheet(tuple(bands), tuple(blocks), lane_x, ends, start_x, -y, count)


def _stack(rows: Iterable[Row], y: float) -> float:
    before: Row | None = None
    for row in rows:
        row.y = y - 1.4 - row.up_mm
        y -= row.tall_mm
        if before is not None:
            before.next_y = row.y
            before.next_low = bool(row.stops) and row.stops[0].low
        before = row
    return y


def _rows(
    strings: Sequence[String],
    supplies: Sequence[SupplyResult],
    start_x: float,
    branching: set[Key],
    stubs: Mapping[Key, str],
) -> list[Row]:
    """Put strings of one parent into rows: side by side where they fit, a long one over several rows."""
    parent = strings[0].parent
    limiter = strings[0].stops[0] if parent is None else None
    tag: tuple[str, ...] = ()
    if parent is not None:
        wide = LIMITER_X[1] - SUPPLY_X[0]
        tag = broken(f"{supplies[strings[0].supply].supply.name} · {strings[0].circuit}", wide)
        if parent not in branching:
            tag += broken(stubs.get(parent, ""), wide)
    parts: list[tuple[list[Stop], list[int], bool, bool]] = []
    x = start_x
    for string in strings:
        stops = string.stops[1:] if parent is None else string.stops
        wide = added(stop.wide_mm for stop in stops)
        if parts and parts[-1][3] and x + HEAD_GAP_MM + wide <= WIDE_MM:
            parts[-1][1].append(len(parts[-1][0]))
            parts[-1][0].extend(stops)
            x += HEAD_GAP_MM + wide
            continue
        parts.append(([], [0], True, True))
        x = start_x
        for stop in stops:
            if parts[-1][0] and x + stop.wide_mm > WIDE_MM:
                held, heads, first, _ = parts.pop()
                parts += [(held, heads, first, False), ([], [], False, True)]
                x = start_x
            parts[-1][0].append(stop)
            x += stop.wide_mm
        if not parts[-1][2]:
            # The end of a string that came from the row before: nothing stands beside it.
            x = WIDE_MM
    return [
        Row(
            parent, limiter if first else None, tuple(stops), tuple(heads), first, last, tag if first else (),
            tuple(stop.key for stop in stops if stop.key in branching),
        )
        for stops, heads, first, last in parts
    ]  # fmt: skip


def _lane_ends(bands: Iterable[Band], branching: set[Key]) -> dict[Key, tuple[float, ...]]:
    ends: dict[Key, list[float]] = {}
    for band in bands:
        for row in band.rows:
            if row.limiter is not None and row.limiter.key in branching:
                ends.setdefault(row.limiter.key, []).append(row.y)
            for number, key in enumerate(row.taps):
                ends.setdefault(key, []).append(row.track_y(number))
            if row.first and row.parent in branching and row.parent is not None:
                ends.setdefault(row.parent, []).append(row.entry_y)
    return {key: tuple(sorted(levels)) for key, levels in ends.items()}


def _lanes(ends: Mapping[Key, tuple[float, ...]]) -> tuple[dict[Key, float], int]:
    """Give lanes that do not pass one another the same place."""
    free: list[float] = []
    found: dict[Key, float] = {}
    for key, levels in sorted(ends.items(), key=lambda each: (-each[1][-1], each[1][0])):
        number = next((lane for lane, low in enumerate(free) if low > levels[-1] + 1.0), len(free))
        if number == len(free):
            free.append(0.0)
        free[number] = levels[0]
        found[key] = LANES_X + (number + 0.5) * LANE_MM
    return found, len(free)

"""Riser diagram of a building: levels as bands, supplies, circuits, openings, conductor and length on every run.

A schematic in paper millimetres. What stands where is decided in `riser_strings`, `riser_layout` and `riser_sheets`.
"""

from collections.abc import Sequence
from typing import Final

from hwsched.calc.opening.placement import Rect
from hwsched.drawings.drawing import Circle, Drawing, Line, Pen, Shape, Text
from hwsched.drawings.not_drawn import unknown_drawing
from hwsched.drawings.opening.symbols import box
from hwsched.drawings.power.power_words import (
    STRANDING_NOTE,
    collapse_words,
    is_low,
    margin_words,
    problem_words,
    shortened,
)
from hwsched.drawings.power.riser_layout import (
    AIR_MM,
    LANES_X,
    LEVEL_MM,
    LIMITER_X,
    SUPPLY_X,
    WIDE_MM,
    Band,
    Block,
    Building,
    Row,
    Sheet,
    box_tall_mm,
)
from hwsched.drawings.power.riser_sheets import SheetPlan, sheets_of
from hwsched.drawings.power.riser_strings import TAP_MM, Key, Levels, Stop, String, strings_of
from hwsched.drawings.text_room import line_step_mm, lines_tall_mm
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle
from hwsched.values.power import PowerResult, SupplyResult

SCHEMATIC_NOTE: Final = to_phrase("Schematic, not to scale.")
_KEY_NOTE: Final = to_phrase(
    "On each run: conductor above its line, length one way below. Box: opening; with a double edge: its wires go on "
    "through a power transfer. Small square: junction. Dot: wires joined; lines that cross without a dot are not."
)
_LOW_NOTE: Final = to_phrase("Thick: a place under its least voltage, and the run that leads there.")
_MOST_NOTES: Final = 4
_MOST_MARGINS: Final = 3
_CAP: Final = 1.8
"""Height of small capitals [paper mm]."""


def risers(work: PowerResult, building: str, levels: Levels, style: LengthStyle) -> tuple[Drawing, ...]:
    """Draw the riser diagram of a building, on as many sheets as its supplies need.

    Parameters
    ----------
    work : PowerResult
        Power of the project, worked out.
    building : str
        Its supplies are drawn; empty for those of no building.
    levels : mapping
        Opening's identifier to its level's name and height [m]; openings that are missing stand on a band that says so.
    style : LengthStyle
        How the project shows lengths: metres with millimetres, else feet.

    Returns
    -------
    tuple of Drawing
        At least one. Coordinates are paper millimetres, 250 wide and about 150 tall at most; words where there is
        nothing to draw.
    """
    title = f"Riser, {building}" if building else phrase("Riser, supplies without a building")
    # A place where a supply may stand, and that nothing hangs on, is none of the building's supplies.
    supplies = [
        each
        for each in work.supplies
        if (each.supply.building or "") == building and (each.circuits or each.supply.use != "candidate")
    ]
    if not supplies:
        return (
            unknown_drawing(
                title, [phrase("No supply is laid in {building}.", building=building or phrase("no building"))]
            ),
        )
    heights: dict[str, float | None] = {}
    for level, height in levels.values():
        heights[level] = heights.get(level) if height is None else height
    for each in supplies:
        if each.supply.level is not None and each.supply.level_m is not None:
            heights[each.supply.level] = each.supply.level_m
    circuits: dict[int, list[tuple[String, ...]]] = {}
    loose: dict[int, list[str]] = {}
    for index, each in enumerate(supplies):
        circuits[index] = []
        loose[index] = []
        for circuit in each.circuits:
            strings, left_out = strings_of(index, each, circuit, levels, style)
            circuits[index].append(strings)
            loose[index] += [
                phrase("{name}: {name_2} is joined to nothing.", name=circuit.circuit.name, name_2=name)
                for name in left_out
            ]
    plans = sheets_of(circuits, Building(tuple(supplies), heights, style))
    found = []
    for number, plan in enumerate(plans, start=1):
        sheet_title = (
            phrase("{title}, sheet {number} of {count}", title=title, number=number, count=len(plans))
            if len(plans) > 1
            else title
        )
        notes = _notes(plan, supplies, [words for index in plan.supplies for words in loose[index]])
        sheet = plan.sheet
        bounds = (0.0, -sheet.tall_mm, WIDE_MM, 0.0)
        found.append(
            Drawing(sheet_title, tuple(_shapes(sheet, supplies)), bounds, notes, to_scale=False, schematic=True)
        )
    return tuple(found)


def _notes(plan: SheetPlan, supplies: Sequence[SupplyResult], loose: Sequence[str]) -> tuple[str, ...]:
    problems: list[str] = []
    low = False
    for index in plan.supplies:
        problems += [f"{supplies[index].supply.name}: {problem.message}" for problem in supplies[index].problems]
        for circuit in supplies[index].circuits:
            problems += [*collapse_words(circuit), *problem_words(circuit)]
            low = low or any(is_low(node) for node in circuit.nodes)
    stops = [stop for band in plan.sheet.bands for row in band.rows for stop in row.stops]
    notes = [f"{phrase(SCHEMATIC_NOTE)} {phrase(_KEY_NOTE)}", phrase(STRANDING_NOTE)]
    if low:
        notes.append(phrase(_LOW_NOTE))
    if any(stop.kind == "junction" for stop in stops):
        notes.append(phrase("Levels of junctions are not recorded: each is drawn on a level of what it feeds."))
    bears = [margin_words(supplies[index]) for index in plan.supplies if supplies[index].openings]
    return (
        *notes,
        *shortened(bears, _MOST_MARGINS, phrase("What else fails: see the power schedule.")),
        *shortened([*loose, *problems], _MOST_NOTES, phrase("See the power schedule.")),
    )


def _shapes(sheet: Sheet, supplies: Sequence[SupplyResult]) -> list[Shape]:
    shapes: list[Shape] = []
    for band in sheet.bands:
        shapes += _band(band)
    low = _low_ways(sheet)
    shapes += _lanes(sheet, low)
    for band in sheet.bands:
        for row in band.rows:
            shapes += _row(row, sheet, low)
    for block in sheet.blocks:
        shapes += _block(block, supplies[block.supply])
    return shapes


def _band(band: Band) -> list[Shape]:
    tall = len(band.words) * line_step_mm("label")
    y = (band.top + band.bottom) / 2 + tall / 2 - 2.5
    return [
        box(Rect(0.0, band.bottom, WIDE_MM, band.top), "frame", name=f"level {band.level}"),
        Line(((LEVEL_MM, band.bottom), (LEVEL_MM, band.top)), "frame"),
        *(
            Text(LEVEL_MM / 2, y - number * line_step_mm("label"), line, "label", "centre")
            for number, line in enumerate(band.words)
        ),
    ]


def _low_ways(sheet: Sheet) -> frozenset[Key]:
    """Return the parents whose lane leads to low places only."""
    led: dict[Key, list[bool]] = {}
    for band in sheet.bands:
        for row in band.rows:
            if row.parent is not None:
                led.setdefault(row.parent, []).extend(row.stops[head].low for head in row.heads)
    return frozenset(key for key, lows in led.items() if all(lows))


def _lanes(sheet: Sheet, low: frozenset[Key]) -> list[Shape]:
    shapes: list[Shape] = []
    for key, x in sheet.lane_x.items():
        ends = sheet.ends[key]
        shapes.append(Line(((x, ends[0]), (x, ends[-1])), "warning" if key in low else "outline", name="way"))
        shapes += [_dot(x, y) for y in ends[1:-1]]
    return shapes


def _dot(x: float, y: float) -> Circle:
    return Circle(x, y, 0.8, "outline", "metal", "joint")


def _row(row: Row, sheet: Sheet, low: frozenset[Key]) -> list[Shape]:
    shapes: list[Shape] = []
    y = row.y
    tag_top = min(row.entry_y + lines_tall_mm(len(row.tag)) / 2, y + row.up_mm) - _CAP
    for number, line in enumerate(row.tag):
        shapes.append(Text(LIMITER_X[1], tag_top - number * line_step_mm(), line, "small", "right"))
    first_low: Pen = "warning" if row.stops and row.stops[0].low else "outline"
    if row.limiter is not None:
        shapes += _limiter(row, row.limiter, sheet, first_low)
    elif row.first and row.parent is not None:
        shapes += _entry(row, row.parent, sheet)
    placed = list(row.places(sheet.start_x))
    x = sheet.start_x
    for number, (stop, left, _) in enumerate(placed):
        shapes += _stop(stop, left, y)
        x = left + stop.wide_mm
        following = placed[number + 1] if number + 1 < len(placed) else None
        goes_on = not row.last if following is None else not following[2]
        if goes_on:
            ahead = row.next_low if following is None else following[0].low
            shapes.append(Line(((x - TAP_MM, y), (x, y)), "warning" if ahead else "outline", name="run"))
        if stop.key in row.taps:
            shapes += _tap(row, stop, x, sheet, goes_on, low)
    if not row.last:
        down, back = row.track_y(row.tracks - 1), sheet.start_x - 0.9
        points = ((x, y), (x, down), (back, down), (back, row.next_y), (sheet.start_x, row.next_y))
        shapes.append(Line(points, "warning" if row.next_low else "outline", name="run goes on in the next row"))
    return shapes


def _entry(row: Row, parent: Key, sheet: Sheet) -> list[Shape]:
    """Draw the way from a lane, or from another sheet, to the strings of a row."""
    lane = sheet.lane_x.get(parent, LANES_X)
    heads = [(x, stop.low) for stop, x, head in row.places(sheet.start_x) if head]
    pen: Pen = "warning" if all(low for _, low in heads) else "outline"
    y = row.entry_y
    shapes: list[Shape] = [Line(((lane, y), (heads[-1][0], y)), pen, name="way")]
    if row.combed:
        for x, low in heads:
            shapes.append(Line(((x, y), (x, row.y)), "warning" if low else "outline", name="way"))
        shapes += [_dot(x, y) for x, _ in heads[:-1]]
    if parent not in sheet.lane_x:
        shapes.append(Circle(LANES_X, y, 1.6, pen, "none", "from another sheet"))
    return shapes


def _limiter(row: Row, limiter: Stop, sheet: Sheet, first_low: Pen) -> list[Shape]:
    left, right = LIMITER_X
    middle, y = (left + right) / 2, row.y
    lane = sheet.lane_x.get(limiter.key)
    pen: Pen = "warning" if limiter.low else "outline"
    shapes: list[Shape] = [
        Line(((SUPPLY_X[1], y), (lane if lane is not None else right, y)), pen, name="way"),
        box(Rect(middle - 3.0, y - 1.0, middle + 3.0, y + 1.0), pen, "none", "limiter"),
    ]
    if row.stops:
        shapes.append(Line(((right, y), (sheet.start_x, y)), first_low, name="way"))
        if lane is not None and y not in sheet.ends[limiter.key][1:-1]:
            shapes.append(_dot(lane, y))
    shapes += _above(middle, y + AIR_MM + 1.0, limiter.name)
    shapes += _under(middle, y - AIR_MM - 1.0, limiter.below)
    return shapes


def _stop(stop: Stop, x: float, y: float) -> list[Shape]:
    pen: Pen = "warning" if stop.low else "outline"
    begin, end = x + stop.run_mm, x + stop.run_mm + stop.body_mm
    middle, words = (begin + end) / 2, x + stop.run_mm / 2
    half = max(10.0, stop.body_mm) / 2 if stop.kind == "opening" else 1.3
    name = " ".join(stop.name)
    from_name = stop.run.from_name if stop.run is not None else ""
    shapes: list[Shape] = [
        Line(((x, y), (middle - half, y)), pen, name=f"run {from_name} to {name}"),
        *_above(words, y + AIR_MM, stop.conductor),
        *_under(words, y - AIR_MM, stop.length),
    ]
    if stop.kind == "opening":
        tall = box_tall_mm(stop)
        shapes.append(
            box(Rect(begin, y - tall / 2, end, y + tall / 2), pen, "warning" if stop.low else "leaf", f"opening {name}")
        )
        if stop.transfer:
            shapes.append(Line(((begin + 0.8, y - tall / 2), (begin + 0.8, y + tall / 2)), pen, name="power transfer"))
        top = y + lines_tall_mm(len(stop.name)) / 2 - _CAP
        shapes += [
            Text(middle, top - number * line_step_mm(), line, "small", "centre")
            for number, line in enumerate(stop.name)
        ]
        return [*shapes, *_under(middle, y - tall / 2 - AIR_MM, stop.below)]
    shapes += [
        box(Rect(middle - half, y - half, middle + half, y + half), pen, "frame", f"junction {name}"),
        Line(((middle + half, y), (end, y)), "outline"),
    ]
    return [*shapes, *_under(middle, y - 1.5 - AIR_MM, (*stop.name, *stop.below))]


def _tap(row: Row, stop: Stop, x: float, sheet: Sheet, goes_on: bool, low: frozenset[Key]) -> list[Shape]:
    track, lane = row.track_y(row.taps.index(stop.key)), sheet.lane_x[stop.key]
    pen: Pen = "warning" if stop.key in low else "outline"
    at = x - TAP_MM / 2
    points = ((at, row.y), (at, track), (lane, track))
    shapes: list[Shape] = [Line(points if goes_on else ((x - TAP_MM, row.y), *points), pen, name="way")]
    if goes_on:
        shapes.append(_dot(at, row.y))
    return shapes


def _block(block: Block, supply: SupplyResult) -> list[Shape]:
    over = supply.share is not None and supply.share > 1.0
    left, right = SUPPLY_X
    x = left + 1.5
    y = block.top - 1.3 - 2.5
    shapes: list[Shape] = [
        box(
            Rect(left, block.bottom, right, block.top),
            "warning" if over else "outline",
            "warning" if over else "metal",
            f"supply {supply.supply.name}",
        )
    ]
    for line in block.words.name:
        shapes.append(Text(x, y, line, "label"))
        y -= line_step_mm("label")
    y += line_step_mm("label") - line_step_mm() - 0.8
    for line in block.words.rest:
        shapes.append(Text(x, y, line, "small"))
        y -= line_step_mm()
    return shapes


def _above(x: float, y: float, lines: Sequence[str]) -> list[Text]:
    """Set lines whose lowest stands over a level."""
    return [
        Text(x, y + (len(lines) - 1 - number) * line_step_mm(), line, "small", "centre")
        for number, line in enumerate(lines)
    ]


def _under(x: float, y: float, lines: Sequence[str]) -> list[Text]:
    """Set lines whose first hangs from a level."""
    return [Text(x, y - _CAP - number * line_step_mm(), line, "small", "centre") for number, line in enumerate(lines)]

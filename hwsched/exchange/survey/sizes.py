"""Columns of sizes: width by height in one cell, of one leaf or of each leaf of a pair."""

import re
from collections import Counter
from collections.abc import Sequence
from typing import Final

from hwsched.attributes import CellError, accepted_by, as_text, within_limits
from hwsched.attributes.emptiness import is_stroke
from hwsched.attributes.reading import says_unknown
from hwsched.exchange.survey.column import LEAVES, Column, bare_unit_of, hashable, keep, say_assumed
from hwsched.exchange.survey.mapping import Target
from hwsched.exchange.survey.pairs import ANSWERS, leaf_width, pair_measures, unequal_leaves
from hwsched.exchange.survey.sheet import ask, refuse_cell
from hwsched.exchange.survey.signs import shown
from hwsched.quantities import BareUnit, LengthError, One, Pair, PairSize, ReadingError, Size, read_length
from hwsched.survey import LEAF

_WIDTH: Final = LEAF.attribute("width_mm")
_HEIGHT: Final = LEAF.attribute("height_mm")
_THICKNESS: Final = LEAF.attribute("thickness_mm")
_TIMES: Final = re.compile(r"\s*[x\u00d7]\s*", re.IGNORECASE)
_SIZES: Final = 'width by height, such as 3-0 x 7-0, 36" x 84", 910 x 2110 mm, 2(3\'-0" x 7\'-0")'


def read_sizes(reading: Column, unit: str | None) -> None:
    """Read width by height, of one leaf or of each leaf of a pair."""
    sheet, column = reading.sheet, reading.column
    cells = hashable(reading.cells)
    counts = Counter(cells)
    found: dict[object, tuple[float | None, float | None, int | None]] = {}
    assumed: dict[object, str] = {}
    errors: dict[object, CellError] = {}
    of_pairs: list[object] = []
    thick: dict[object, float] = {}
    unequal: dict[object, tuple[float, float]] = {}
    for cell in counts:
        found[cell] = None, None, None
        if cell is None or is_stroke(cell) or says_unknown(_WIDTH, cell):
            continue
        size, thickness_mm = _without_thickness(cell, bare_unit_of(unit))
        if thickness_mm is not None:
            thick[cell] = thickness_mm
        beside = _unequal(size, bare_unit_of(unit))
        if beside is not None:
            unequal[cell], found[cell] = beside[0], (None, beside[1], 2)
            continue
        pair = pair_measures(size, bare_unit_of(unit))
        if pair is not None and within_limits(_WIDTH, pair[0]):
            found[cell] = leaf_width(pair[0], reading.pairs), pair[1], 2
            if found[cell][0] is None:
                of_pairs.append(cell)
            continue
        try:
            width_mm, height_mm, leaves, unit_of_cell = _size(size, bare_unit_of(unit))
            found[cell] = width_mm, height_mm, leaves
            if unit_of_cell:
                assumed[cell] = unit_of_cell
        except ReadingError as error:
            errors[cell] = CellError(as_text(cell), error.problem, error.suggestion.removeprefix("write ") or _SIZES)
        except CellError as error:
            errors[cell] = error
    slot = column.target.slot
    for place, target in enumerate((Target("leaf", "width_mm", slot), Target("leaf", "height_mm", slot), LEAVES)):
        values = [found[cell][place] for cell in cells]
        if place < 2 or any(values):
            keep(reading, target, values)
    for place, of_leaf in enumerate(("active", "inactive") if unequal else ()):
        told = [unequal[cell][place] if cell in unequal else None for cell in cells]
        keep(reading, Target("leaf", "width_mm", of_leaf), told)
    if thick:
        keep(reading, Target("leaf", "thickness_mm", slot), [thick.get(cell) for cell in cells])
    if errors:
        for entry, cell in enumerate(cells):
            if cell in errors:
                refuse_cell(sheet, entry, column, errors[cell])
    say_assumed(reading, assumed, counts)
    ask_about_pairs(reading, of_pairs)


def ask_about_pairs(reading: Column, cells: Sequence[object]) -> None:
    """Ask once a column what the widths of pairs are that do not say it."""
    if not cells:
        return
    held, every = set(cells), hashable(reading.cells)
    entries = [entry for entry, cell in enumerate(every) if cell in held]
    ask(reading.sheet, reading.column, shown(cells, Counter(every)), entries, ANSWERS, "pair")


def _without_thickness(cell: object, bare: BareUnit | None) -> tuple[object, float | None]:
    """Return a size without the third of its measures, and that as a thickness, where there are three."""
    parts = _TIMES.split(cell) if isinstance(cell, str) else []
    if len(parts) != 3:
        return cell, None
    try:
        third = read_length(parts[2], bare)
    except ReadingError:
        return cell, None
    if not isinstance(third, One) or not within_limits(_THICKNESS, third.mm):
        return cell, None
    return f"{parts[0]} x {parts[1]}", third.mm


def _unequal(cell: object, bare: BareUnit | None) -> tuple[tuple[float, float], float] | None:
    """Return the widths of the active and the other leaf and their height of such as 926+426 x 2040; else None."""
    parts = _TIMES.split(cell) if isinstance(cell, str) else []
    if len(parts) != 2 or (widths := unequal_leaves(parts[0], bare)) is None:
        return None
    try:
        height = read_length(parts[1], bare)
    except ReadingError:
        return None
    if not isinstance(height, One) or not within_limits(_HEIGHT, height.mm):
        return None
    return widths, height.mm


def _size(cell: object, bare: BareUnit | None) -> tuple[float, float | None, int | None, str | None]:
    read = read_length(cell, bare)
    if isinstance(read, Size):
        width_mm, height_mm, leaves = read.width_mm, read.height_mm, None
    elif isinstance(read, PairSize):
        width_mm, height_mm, leaves = read.width_mm, read.height_mm, 2
    elif isinstance(read, Pair):
        width_mm, height_mm, leaves = read.leaf_mm, None, 2
    else:
        raise LengthError(as_text(cell), "is no width by height", "")
    for attribute, mm in ((_WIDTH, width_mm), (_HEIGHT, height_mm)):
        if mm is not None and not within_limits(attribute, mm):
            raise CellError(
                as_text(cell), f"gives a {attribute.label.lower()} that cannot be true", accepted_by(attribute)
            )
    return width_mm, height_mm, leaves, read.assumed_unit

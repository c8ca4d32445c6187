"""Which standard scale views get on paper, and what is said of it."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Final

from hwsched.drawings.drawing import Drawing
from hwsched.render.lower import OnPaper, lower

DENOMINATORS: Final = (0.5, 1.0, 2.0, 2.5, 4.0, 5.0, 10.0, 15.0, 20.0, 25.0, 30.0, 40.0, 50.0, 75.0, 100.0, 200.0)
"""Scales 2:1 to 1:200: those of ISO 5455 (from memory) and what a scale rule of the trade has between them."""

_TOO_SMALL: Final = 30.0
"""Smaller than 1:30 a lock is a few millimetres: a view then gets a row of its own."""


Kept = dict[tuple[int, float, float, bool], tuple[Drawing, OnPaper]]
"""Drawings on paper by identity, denominator and letters."""


def scale_words(denominator: float) -> str:
    """Say a scale.

    Examples
    --------
    >>> scale_words(20), scale_words(2.5), scale_words(0.5)
    ('1:20', '1:2.5', '2:1')
    """
    return f"{1 / denominator:g}:1" if denominator < 1 else f"1:{denominator:g}"


_BARS: Final = {
    "in": tuple((length * 25.4, f'{length:g}"') for length in (0.5, 1, 2, 3, 6, 12, 24, 36, 60, 120)),
    "mm": tuple((float(length), f"{length} mm") for length in (10, 20, 50, 100, 200, 500, 1000, 2000)),
}
_BAR_MM: Final = 14.0
"""Longest bar on paper."""


def scale_bar(scale: float, unit: str) -> tuple[float, str]:
    """Return how long a scale bar is on paper [mm], and what it says; the longest round length that is short enough.

    Examples
    --------
    >>> scale_bar(1 / 10, "mm"), scale_bar(1 / 24, "in")
    ((10.0, '100 mm'), (12.7, '12"'))
    """
    lengths = _BARS[unit]
    length, words = next((each for each in reversed(lengths) if each[0] * scale <= _BAR_MM), lengths[0])
    return round(length * scale, 6), words


@dataclass(frozen=True, slots=True)
class Row:
    """Views that stand side by side: at one scale with their floors on one level, else hung from one level."""

    drawings: tuple[Drawing, ...]
    views: tuple[OnPaper, ...]
    denominator: float
    """0 when each view has a scale of its own."""

    @property
    def tops(self) -> tuple[float, ...]:
        """Level of each view from which its paper hangs, in its own paper mm."""
        common = max((v.extent[3] for v, d in self._pairs if d.to_scale), default=0.0)
        return tuple(common if drawing.to_scale and self.denominator else v.extent[3] for v, drawing in self._pairs)

    @property
    def tall(self) -> float:
        """Height of the row [paper mm]."""
        return max(top - view.extent[1] for top, view in zip(self.tops, self.views, strict=True))

    @property
    def _pairs(self) -> list[tuple[OnPaper, Drawing]]:
        return list(zip(self.views, self.drawings, strict=True))

    @property
    def wide(self) -> float:
        """Width of all views without gaps [paper mm]."""
        return sum(view.extent[2] - view.extent[0] for view in self.views)


def fit_row(
    drawings: Sequence[Drawing],
    width_mm: float,
    height_mm: float,
    gap_mm: float = 6.0,
    most_mm: float | None = None,
    letters_mm: float = 0.0,
    narrow: bool = False,
    kept: Kept | None = None,
    coarse: float = 0.0,
) -> Row:
    """Bring views to paper side by side at the largest standard scale at which they fit.

    Parameters
    ----------
    drawings : sequence of Drawing
        At least one; those that are not to scale do not decide.
    width_mm, height_mm : float
        Room on paper, texts and dimensions included.
    gap_mm : float
        Between two views.
    most_mm : float, optional
        Height that may be taken where words beside a view need more than ``height_mm`` at every scale.
    letters_mm : float
        Least height of capitals.
    narrow : bool
        Whether letters are narrow ones.
    kept : dict, optional
        Views that were brought to paper before, with these letters; those that are brought now are added.
    coarse : float
        By how much coarser than they ask for they may come out for want of height; 0: any.

    Returns
    -------
    Row
        With the smallest scale of all when nothing fits.
    """
    if all(drawing.schematic for drawing in drawings):
        return Row(tuple(drawings), tuple(lower(drawing, 1.0, letters_mm, narrow) for drawing in drawings), 1.0)
    kept = {} if kept is None else kept
    room = width_mm - gap_mm * (len(drawings) - 1)
    # Where none is to scale, the largest size that fits is looked for all the same.
    sized = [drawing for drawing in drawings if drawing.to_scale] or drawings
    wide = sum(d.bounds[2] - d.bounds[0] for d in sized)
    tall = max(d.bounds[3] - d.bounds[1] for d in sized)
    around_wide = around_tall = 0.0
    coarsest = coarse * max(drawing.coarsest for drawing in drawings)
    for denominator in DENOMINATORS:
        # Bringing to paper costs: first the things themselves must fit, with what stood around them at the last try.
        fits = wide / denominator + around_wide <= room and tall / denominator + around_tall <= height_mm
        height_counts = not coarsest or denominator < coarsest
        if not fits and denominator < DENOMINATORS[-1] and (height_counts or wide / denominator + around_wide > room):
            continue
        row = Row(
            tuple(drawings),
            tuple(_lowered(drawing, denominator, letters_mm, narrow, kept) for drawing in drawings),
            denominator,
        )
        if row.wide <= room and (row.tall <= height_mm or not height_counts):
            return row
        around_wide = 0.9 * (row.wide - wide / denominator)
        around_tall = 0.9 * (row.tall - tall / denominator)
    if most_mm is not None and height_mm < most_mm and row.tall > height_mm:
        more = min(1.3 * height_mm, most_mm)
        return fit_row(drawings, width_mm, more, gap_mm, most_mm, letters_mm, narrow, kept, coarse)
    return row


def _lowered(drawing: Drawing, denominator: float, letters_mm: float, narrow: bool, kept: Kept) -> OnPaper:
    key = (id(drawing), denominator, letters_mm, narrow)
    found = kept.get(key)
    if found is None:
        # The drawing is kept with it: its identity is not given to another one meanwhile.
        found = kept[key] = (drawing, lower(drawing, 1.0 / denominator, letters_mm, narrow))
    return found[1]


def fit_views(
    drawings: Sequence[Drawing],
    width_mm: float,
    height_mm: float,
    *,
    same_scale: bool = True,
    paired: int = 0,
    gap_mm: float = 6.0,
    most_mm: float | None = None,
    letters_mm: float = 0.0,
    narrow: bool = False,
    kept: Kept | None = None,
    coarse: float = 0.0,
) -> tuple[Row, ...]:
    """Arrange views: in one row, or in a row each where they would come out too small.

    Parameters
    ----------
    drawings : sequence of Drawing
        At least one.
    width_mm, height_mm : float
        Room of a row.
    same_scale : bool
        Whether all views get one scale; else each gets the largest that fits its share of the width.
    paired : int
        So many of the first ones have one scale all the same.
    gap_mm, most_mm, letters_mm, narrow, kept, coarse
        See `fit_row`.

    Returns
    -------
    tuple of Row
    """
    if not same_scale and len(drawings) > 1:
        groups = [drawings[: max(paired, 1)], *([each] for each in drawings[max(paired, 1) :])]
        room = width_mm - gap_mm * (len(drawings) - 1)

        def row_of(group: Sequence[Drawing], wide: float) -> Row:
            inside = gap_mm * (len(group) - 1)
            return fit_row(group, wide + inside, height_mm, gap_mm, most_mm, letters_mm, narrow, kept, coarse)

        alone = [row_of(group, room * len(group) / len(drawings)) for group in groups]
        if coarse:
            alone = _given_way(alone, groups, room, coarse, letters_mm, narrow, {} if kept is None else kept)
        # What some leave of their share the others may take, the widest first.
        for at in sorted(range(len(alone)), key=lambda n: -alone[n].wide):
            free = room - sum(each.wide for n, each in enumerate(alone) if n != at)
            if free > room * len(groups[at]) / len(drawings):
                alone[at] = row_of(groups[at], free)
        return (Row(tuple(drawings), tuple(view for each in alone for view in each.views), 0.0),)
    row = fit_row(drawings, width_mm, height_mm, gap_mm, most_mm, letters_mm, narrow, kept, coarse)
    if row.denominator <= _TOO_SMALL or len(drawings) == 1:
        return (row,)
    alone = [
        fit_row([drawing], width_mm, height_mm, gap_mm, most_mm, letters_mm, narrow, kept, coarse)
        for drawing in drawings
    ]
    denominator = max((each.denominator for each in alone if each.drawings[0].to_scale), default=row.denominator)
    if denominator >= row.denominator:
        return (row,)
    return tuple(
        each
        if each.denominator == denominator
        else Row(each.drawings, (lower(each.drawings[0], 1.0 / denominator, letters_mm, narrow),), denominator)
        for each in alone
    )


def _given_way(
    rows: list[Row],
    groups: Sequence[Sequence[Drawing]],
    room: float,
    coarse: float,
    letters_mm: float,
    narrow: bool,
    kept: Kept,
) -> list[Row]:
    """Set views at the smallest scales that they ask for, where a share of the width was too narrow for one of them."""
    asked = [coarse * max(drawing.coarsest for drawing in group) for group in groups]
    if all(row.denominator <= least or not least for row, least in zip(rows, asked, strict=True)):
        return rows
    found = [
        Row(tuple(group), tuple(_lowered(drawing, least, letters_mm, narrow, kept) for drawing in group), least)
        if least
        else row
        for row, group, least in zip(rows, groups, asked, strict=True)
    ]
    return found if sum(row.wide for row in found) <= room else rows

"""Labels on sheets of labels: each at its place by the sheet's geometry, with a code for a camera."""

import csv
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import cache
from pathlib import Path
from typing import Any, Final, Literal

from hwsched.paths import RESOURCES
from hwsched.render import print_style as style
from hwsched.render.fonts import width_per_size
from hwsched.render.paint import Painter
from hwsched.render.pdf import new_canvas
from hwsched.render.qr import QR_PT, paint_qr
from hwsched.render.typeset import shown
from hwsched.render.wrap import wrap
from hwsched.writing import replacing

_PAD_MM: Final = 1.5
"""From the label's edge to what is on it: what is cut and how it is fed vary by as much."""
_MARK: Final = (18.0, 14.0, 11.0, 9.0, 7.0, 5.5)
"""Sizes that a mark may have [pt], the largest that fits."""
_SMALL: Final = (9.0, 8.0, 7.0, 6.0, 5.0)
_LEADING: Final = 1.12


@dataclass(frozen=True, slots=True)
class LabelSheet:
    """Where labels lie on a sheet."""

    name: str
    paper: Literal["letter", "a4"]
    columns: int
    rows: int
    width_mm: float
    height_mm: float
    pitch_x_mm: float
    pitch_y_mm: float
    left_mm: float
    top_mm: float
    source: str

    @property
    def count(self) -> int:
        """Labels of a sheet."""
        return self.columns * self.rows

    def place_mm(self, position: int) -> tuple[float, float]:
        """Return the upper left corner of a label from the sheet's upper left corner [mm].

        Parameters
        ----------
        position : int
            Counted from 0, along the rows.

        Examples
        --------
        >>> sheet = LabelSheet("x", "a4", 3, 7, 63.5, 38.1, 66.04, 38.1, 7.2, 15.15, "")
        >>> [round(each, 2) for each in sheet.place_mm(4)]
        [73.24, 53.25]
        """
        row, column = divmod(position, self.columns)
        return self.left_mm + column * self.pitch_x_mm, self.top_mm + row * self.pitch_y_mm


@dataclass(frozen=True, slots=True)
class Label:
    """What stands on one label."""

    mark: str
    lines: tuple[str, ...]
    """Under the mark: where it goes, and the like."""
    code: str = ""
    """As text, and for a camera."""


@cache
def label_sheets() -> tuple[LabelSheet, ...]:
    """Return the sheets that are known."""
    with (RESOURCES / "labels" / "sheets.csv").open(encoding="utf-8", newline="") as file:
        return tuple(_sheet_of(row) for row in csv.DictReader(file))


def _sheet_of(row: Mapping[str, str]) -> LabelSheet:
    return LabelSheet(
        name=row["name"],
        paper="a4" if row["paper"] == "a4" else "letter",
        columns=int(row["columns"]),
        rows=int(row["rows"]),
        width_mm=float(row["width_mm"]),
        height_mm=float(row["height_mm"]),
        pitch_x_mm=float(row["pitch_x_mm"]),
        pitch_y_mm=float(row["pitch_y_mm"]),
        left_mm=float(row["left_mm"]),
        top_mm=float(row["top_mm"]),
        source=row["source"],
    )


def render_labels(
    labels: Sequence[Label],
    path: Path,
    sheet: LabelSheet,
    *,
    start: int = 1,
    shift_mm: tuple[float, float] = (0.0, 0.0),
    title: str = "Labels",
    date: str = "",
) -> None:
    """Write labels onto sheets, at 1:1; the file appears whole or not at all.

    Parameters
    ----------
    labels : sequence of Label
        In their order.
    path : Path
        Where.
    sheet : LabelSheet
        Geometry.
    start : int
        Place of the first label on the first sheet, counted from 1 along the rows: what lies before is used already.
    shift_mm : tuple of float
        Right and down, where a printer feeds off the mark [mm].
    title, date : str
        Of the file.

    Raises
    ------
    ValueError
        For a start that the sheet does not have.
    UnwritableError
        Where it cannot be written.
    """
    if not 1 <= start <= sheet.count:
        raise ValueError(f"the sheet has labels 1 to {sheet.count}, not {start}")
    tall = style.PAPERS[sheet.paper][1]
    with replacing(path) as beside:
        canvas = new_canvas(beside, sheet.paper, date)
        canvas.setTitle(shown(title))
        canvas.setCreator("hwsched")
        canvas.setAuthor("")
        painter = Painter(canvas)
        for number, label in enumerate(labels, start=start - 1):
            position = number % sheet.count
            if position == 0 and number >= start:
                canvas.showPage()
                painter.forget()
            left, top = sheet.place_mm(position)
            x, y = (left + shift_mm[0]) * style.MM, tall - (top + shift_mm[1]) * style.MM
            _set_label(canvas, painter, label, x, y, sheet.width_mm * style.MM, sheet.height_mm * style.MM)
        canvas.save()


def _set_label(canvas: Any, painter: Painter, label: Label, x: float, y: float, wide: float, tall: float) -> None:
    """Set a label with its upper left corner at a place [pt]."""
    pad = _PAD_MM * style.MM
    painter.narrow = True
    room = wide - 2 * pad
    high = tall - 2 * pad
    if label.code:
        # Its quiet zone may lie over the margin: the label's edge is white as well.
        paint_qr(canvas, label.code, x + wide - QR_PT - pad / 2, y - tall / 2 - QR_PT / 2)
        painter.forget()
        room -= QR_PT
    text = [*label.lines, *([label.code] if label.code else [])]
    mark, small, lines = _fitted(label.mark, text, room, high)
    down = y - pad
    for line in wrap(label.mark, room, mark, True, True):
        down -= mark * _LEADING
        painter.lines([(x + pad, down + 0.24 * mark, line)], mark, True, style.INK)
    for line in lines:
        down -= small * _LEADING
        painter.lines([(x + pad, down + 0.24 * small, line)], small, False, style.INK)


def _fitted(mark: str, text: Sequence[str], room: float, high: float) -> tuple[float, float, list[str]]:
    """Return the largest sizes of mark and text at which both go into a label, and the text's lines."""
    for big in _MARK:
        for small in _SMALL:
            if small > big:
                continue
            marks = wrap(mark, room, big, True, True)
            lines = [line for each in text for line in wrap(each, room, small, False, True)]
            whole = max(width_per_size(word, True, True) for word in marks) * big <= room
            if whole and len(marks) == 1 and (big * len(marks) + small * len(lines)) * _LEADING <= high:
                return big, small, lines
    big, small = _MARK[-1], _SMALL[-1]
    marks = wrap(mark, room, big, True, True)
    most = max(0, int((high - big * _LEADING * len(marks)) / (small * _LEADING)))
    lines = [line for each in text for line in wrap(each, room, small, False, True)]
    # Too much for the label: the mark and the code stay, and of the rest what there is room for.
    kept = [*lines[: max(0, most - 1)], lines[-1]] if lines and most < len(lines) else lines
    return big, small, kept

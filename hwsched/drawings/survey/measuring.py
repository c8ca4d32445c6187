"""How each size of the survey is measured: small sketches for a sheet that is filled in by hand.

Drawn in paper millimetres. They show from where to where, not how long: nothing in them is to scale.
"""

from collections.abc import Mapping
from typing import Final

from hwsched.drawings.drawing import Circle, Dimension, Drawing, Fill, Line, Pen, Shape, Text
from hwsched.language import phrase

WIDE_MM: Final = 19.0
TALL_MM: Final = 13.0
"""Of a sketch of one size."""
_Rect = tuple[float, float, float, float]


def _box(x0: float, y0: float, x1: float, y1: float, pen: Pen = "thin", fill: Fill = "none") -> Line:
    return Line(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), pen, True, fill)


def _cut(x0: float, y0: float, x1: float, y1: float) -> tuple[Shape, ...]:
    """Return the lock edge of a leaf that goes on to the right."""
    body = Line(((x1, y1), (x0, y1), (x0, y0), (x1, y0)), "thin")
    end = Line(((x1, y0), (x1 - 0.7, y0 + (y1 - y0) * 0.35), (x1 + 0.7, y0 + (y1 - y0) * 0.65), (x1, y1)), "dimension")
    return body, end


def _across(x0: float, x1: float, y: float) -> Dimension:
    return Dimension(x0, y, x1, y, 0.0, "", "horizontal")


def _up(y0: float, y1: float, x: float) -> Dimension:
    return Dimension(x, y0, x, y1, 0.0, "", "vertical")


def _mark(x: float, y: float, reach: float = 3.0) -> tuple[Shape, ...]:
    """Return the centre lines of a cylinder."""
    return (
        Line(((x - reach, y), (x + reach, y)), "dimension"),
        Line(((x, y - reach), (x, y + reach)), "dimension"),
    )  # fmt: skip


def _floor(x0: float, x1: float, y: float) -> tuple[Shape, ...]:
    ticks = [Line(((x, y), (x - 0.9, y - 0.9)), "dimension") for x in range(int(x0) + 2, int(x1) + 1, 2)]
    return (Line(((x0, y), (x1, y)), "outline"), *ticks)


def _sketch(*shapes: Shape, bounds: _Rect = (0.0, 0.0, WIDE_MM, TALL_MM)) -> Drawing:
    return Drawing("", shapes, bounds, to_scale=False, schematic=True)


_LEAF: Final = (_box(5.5, 0.0, 13.5, 13.0, "thin", "leaf"), Circle(7.0, 6.0, 1.2, "thin", "hole"))
_SLAB: Final = (1.0, 3.0, 18.0, 7.0)
"""A leaf cut across, its key side up."""

SKETCHES: Final[Mapping[str, Drawing]] = {
    "leaf.width_mm": _sketch(*_LEAF, _across(5.5, 13.5, 9.5)),
    "leaf.height_mm": _sketch(*_LEAF, _up(0.0, 13.0, 10.5)),
    "leaf.thickness_mm": _sketch(_box(2.0, 4.5, 17.0, 8.5, "thin", "leaf"), _up(4.5, 8.5, 9.5)),
    "leaf.stile_mm": _sketch(*_cut(2.0, 0.0, 17.0, 13.0), _box(9.5, 2.0, 16.4, 11.0, "thin", "glass"),
                             Circle(5.75, 9.5, 1.4, "thin", "hole"), _across(2.0, 9.5, 6.5)),
    "leaf.undercut_mm": _sketch(Line(((4.0, 13.0), (4.0, 7.4), (15.0, 7.4), (15.0, 13.0)), "thin"),
                                *_floor(1.0, 18.0, 1.0), _up(1.0, 7.4, 9.5)),
    "opening.frame_stop_mm": _sketch(_box(6.0, 1.5, 18.5, 5.5, "thin", "leaf"),
                                     Line(((0.5, 1.5), (5.2, 1.5), (5.2, 5.9), (13.0, 5.9), (13.0, 11.5), (0.5, 11.5)),
                                          "thin", True, "frame"),
                                     _across(6.0, 13.0, 8.5), Line(((6.0, 5.5), (6.0, 9.5)), "dimension")),
    "opening.frame_face_mm": _sketch(_box(3.0, 0.0, 10.0, 13.0, "thin", "frame"), *_cut(10.6, 0.0, 17.5, 13.0),
                                     Circle(13.0, 6.5, 1.4, "thin", "hole"), _across(3.0, 10.0, 9.5)),
    "opening.header_depth_mm": _sketch(Line(((1.0, 12.5), (1.0, 9.5), (6.5, 9.5), (6.5, 7.5), (17.5, 7.5),
                                             (17.5, 12.5)), "thin", True, "frame"),
                                       Line(((2.5, 0.0), (2.5, 9.0), (6.0, 9.0), (6.0, 0.0)), "thin"),
                                       _across(6.5, 17.5, 4.5), Line(((6.5, 7.5), (6.5, 3.5)), "dimension"),
                                       Line(((17.5, 7.5), (17.5, 3.5)), "dimension")),
    "opening.reader_aside_mm": _sketch(_box(0.5, 0.0, 7.5, 13.0, "thin", "frame"),
                                       Line(((4.0, 0.0), (4.0, 13.0)), "thin"),
                                       _box(12.5, 7.0, 16.5, 11.5, "thin", "metal"),
                                       Line(((14.5, 10.0), (14.5, 1.5)), "dimension"), _across(7.5, 14.5, 3.0)),
    "existing_item.backset_mm": _sketch(*_cut(2.0, 0.0, 17.0, 13.0), Circle(11.0, 8.0, 3.0, "thin", "hole"),
                                        Line(((11.0, 10.5), (11.0, 1.5)), "dimension"), _across(2.0, 11.0, 3.0)),
    "existing_item.cylinder_height_mm": _sketch(Line(((5.0, 13.0), (5.0, 2.2), (15.5, 2.2)), "thin"),
                                                *_floor(1.0, 18.0, 1.0), Circle(9.0, 10.5, 2.4, "thin", "hole"),
                                                Line(((6.5, 10.5), (14.5, 10.5)), "dimension"), _up(1.0, 10.5, 13.5)),
    "existing_item.case_height_mm": _sketch(*_cut(2.0, 0.0, 17.0, 13.0), _box(2.0, 1.5, 9.0, 11.5, "hidden"),
                                            Circle(6.0, 8.5, 2.0, "thin", "hole"), _up(1.5, 11.5, 12.0),
                                            Line(((9.0, 1.5), (13.0, 1.5)), "dimension"),
                                            Line(((9.0, 11.5), (13.0, 11.5)), "dimension")),
    "existing_item.case_depth_mm": _sketch(*_cut(2.0, 0.0, 17.0, 13.0), _box(2.0, 1.5, 12.0, 11.5, "hidden"),
                                           Circle(8.0, 9.0, 2.0, "thin", "hole"), _across(2.0, 12.0, 4.5)),
    "existing_item.case_width_mm": _sketch(_box(3.5, 0.0, 15.5, 13.0, "thin", "leaf"),
                                           _box(6.3, 1.5, 12.7, 11.5, "thin", "metal"), _across(6.3, 12.7, 6.5)),
    "existing_item.case_above_mm": _sketch(*_cut(2.0, 0.0, 17.0, 13.0), _box(2.0, 0.8, 9.0, 12.0, "hidden"),
                                           Circle(6.0, 4.5, 2.0, "thin", "hole"), _up(4.5, 12.0, 12.0),
                                           Line(((4.5, 4.5), (13.0, 4.5)), "dimension"),
                                           Line(((9.0, 12.0), (13.0, 12.0)), "dimension")),
    "existing_item.case_offset_mm": _sketch(_box(3.5, 0.0, 15.5, 13.0, "thin", "leaf"),
                                            _box(9.0, 1.5, 14.5, 11.5, "thin", "metal"),
                                            Line(((9.5, -0.5), (9.5, 13.5)), "centre"),
                                            Line(((11.75, -0.5), (11.75, 13.5)), "centre"),
                                            _across(9.5, 11.75, 6.5), bounds=(0.0, -0.5, WIDE_MM, 13.5)),
    "existing_item.front_height_mm": _sketch(_box(4.0, 0.0, 12.0, 13.0, "thin", "leaf"),
                                             _box(6.0, 1.5, 10.0, 11.5, "thin", "metal"),
                                             Circle(8.0, 9.0, 1.6, "thin", "hole"), _up(1.5, 11.5, 15.0),
                                             Line(((10.0, 1.5), (16.0, 1.5)), "dimension"),
                                             Line(((10.0, 11.5), (16.0, 11.5)), "dimension")),
    "existing_item.front_width_mm": _sketch(_box(3.5, 0.0, 15.5, 13.0, "thin", "leaf"),
                                            _box(6.5, 1.5, 12.5, 11.5, "thin", "metal"), _across(6.5, 12.5, 6.5)),
    "existing_item.trim_key_mm": _sketch(_box(*_SLAB, "thin", "leaf"), _box(4.0, 7.0, 12.0, 9.0, "thin", "metal"),
                                         Line(((12.0, 9.0), (16.0, 9.0)), "dimension"), _up(7.0, 9.0, 15.0),
                                         Text(0.5, 11.0, "key side", "small"), Text(0.5, 0.3, "inside", "small")),
    "existing_item.trim_inside_mm": _sketch(_box(1.0, 6.0, 18.0, 10.0, "thin", "leaf"),
                                            _box(4.0, 4.0, 12.0, 6.0, "thin", "metal"),
                                            Line(((12.0, 4.0), (16.0, 4.0)), "dimension"), _up(4.0, 6.0, 15.0),
                                            Text(0.5, 11.0, "key side", "small"), Text(0.5, 0.3, "inside", "small")),
    "existing_item.cross_bore_mm": _sketch(*_cut(2.0, 0.0, 17.0, 13.0), Circle(10.0, 6.5, 8.0, "thin", "hole"),
                                           _across(6.0, 14.0, 6.5)),
    "existing_item.edge_bore_mm": _sketch(_box(3.5, 0.0, 15.5, 13.0, "thin", "leaf"),
                                          Circle(9.5, 6.5, 6.6, "thin", "hole"), _across(6.2, 12.8, 6.5)),
}  # fmt: skip
"""By ``entity.attribute``: every size that is asked but those of what else stands there, which `SURROUNDINGS` shows."""

LETTERS: Final[Mapping[str, str]] = {
    "x_mm": "A", "y_mm": "B", "width_mm": "C", "height_mm": "D", "cutout_height_mm": "E",
    "rod_x_mm": "F", "bolt_inset_mm": "G",
}  # fmt: skip
"""By which letter `SURROUNDINGS` shows a size of an existing item."""


def _lettered(shape: Dimension, letter: str) -> Dimension:
    return Dimension(shape.x0, shape.y0, shape.x1, shape.y1, 0.0, letter, shape.axis)


def _surroundings() -> Drawing:
    face = (
        Line(((0.0, 23.2), (0.0, 3.0), (42.0, 3.0), (42.0, 23.2)), "thin"),
        *_floor(-2.0, 44.0, 1.0),
        _box(20.0, 11.0, 34.0, 19.0, "existing", "existing"),
        *_mark(27.0, 15.0, 2.0),
        _lettered(_across(0.0, 27.0, 8.0), "A"),
        Line(((27.0, 12.5), (27.0, 7.0)), "dimension"),
        _lettered(_up(1.0, 15.0, 38.5), "B"),
        Line(((29.5, 15.0), (39.5, 15.0)), "dimension"),
        _lettered(_across(20.0, 34.0, 21.0), "C"),
        Line(((20.0, 19.5), (20.0, 22.0)), "dimension"),
        Line(((34.0, 19.5), (34.0, 22.0)), "dimension"),
        _lettered(_up(11.0, 19.0, 16.0), "D"),
        Line(((19.5, 11.0), (15.0, 11.0)), "dimension"),
        Line(((19.5, 19.0), (15.0, 19.0)), "dimension"),
        Text(0.0, 24.4, "lock edge", "small"),
    )
    jamb = (
        Line(((58.0, 23.2), (58.0, 3.0), (70.0, 3.0), (70.0, 23.2)), "thin"),
        _box(61.5, 9.0, 66.5, 20.0, "thin", "hole"),
        _lettered(_up(9.0, 20.0, 74.0), "E"),
        Line(((67.0, 9.0), (75.0, 9.0)), "dimension"),
        Line(((67.0, 20.0), (75.0, 20.0)), "dimension"),
        Text(58.0, 24.4, phrase("strike, in the frame"), "small"),
    )
    rods = (
        Line(((90.0, 23.2), (90.0, 3.0), (112.0, 3.0), (112.0, 23.2)), "thin"),
        _box(91.5, 10.0, 111.0, 13.0, "thin", "metal"),
        _box(96.5, 13.0, 97.5, 23.2, "thin", "metal"),
        _box(96.5, 3.0, 97.5, 10.0, "thin", "metal"),
        _lettered(_across(90.0, 97.0, 18.0), "F"),
        Text(90.0, 24.4, "rods", "small"),
    )
    pull = (
        _box(119.0, 4.0, 122.0, 22.0, "thin", "metal"),
        *_mark(120.5, 7.0, 1.0),
        *_mark(120.5, 19.0, 1.0),
        _lettered(_up(19.0, 22.0, 126.0), "G"),
        Line(((122.5, 22.0), (127.0, 22.0)), "dimension"),
        Line(((121.5, 19.0), (127.0, 19.0)), "dimension"),
        Text(117.0, 24.4, "fixings", "small"),
    )
    return _sketch(*face, *jamb, *rods, *pull, bounds=(-3.0, 0.0, 131.0, 26.5))


SURROUNDINGS: Final = _surroundings()
"""How existing items are measured: A from the lock edge, B above the floor, C wide, D high, E cut-out.

F is where an exit device's rods run, G how far from its ends something is fixed."""

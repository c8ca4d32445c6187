"""Small drawings of what a calculator was asked and answered, for its form in the desktop.

Input and output are the JSON objects of the calculator, the input with its defaults (`Calculator.completed`); what
cannot be drawn has no drawing.
"""

from collections.abc import Callable, Mapping
from typing import Any, Final

from hwsched.drawings.drawing import Circle, Drawing, Line, Shape, Text
from hwsched.language import phrase

Asked = Mapping[str, Any]


def calculated(name: str, asked: Asked, answered: Asked) -> Drawing | None:
    """Draw a calculation.

    Parameters
    ----------
    name : str
        The calculator.
    asked, answered : mapping
        Its input with its defaults, and an output without error.

    Returns
    -------
    Drawing or None
        None where the calculator has nothing to draw.
    """
    draw = _DRAWN.get(name)
    if draw is None:
        return None
    shapes, bounds = draw(asked, answered)
    return Drawing(name, tuple(shapes), bounds)


def _rectangle(x0: float, y0: float, x1: float, y1: float, **look: Any) -> Line:
    return Line(((x0, y0), (x1, y0), (x1, y1), (x0, y1)), closed=True, **look)


Bounds = tuple[float, float, float, float]


def _placement(asked: Asked, answered: Asked) -> tuple[list[Shape], Bounds]:
    leaf = asked["leaf"]
    wide, high = float(leaf["width_mm"]), float(leaf["height_mm"])
    shapes: list[Shape] = [_rectangle(0, 0, wide, high, fill="leaf", name="leaf")]
    for keepout in asked["keepouts"]:
        c = float(keepout["clearance_mm"])
        box = [float(keepout[key]) for key in ("x0", "y0", "x1", "y1")]
        shapes.append(_rectangle(box[0] - c, box[1] - c, box[2] + c, box[3] + c, pen="keepout", name="clearance"))
        shapes.append(_rectangle(*box, pen="existing", fill="existing", name=str(keepout["name"])))
    cylinder = asked["cylinder"]
    shapes.append(Circle(float(cylinder["x"]), float(cylinder["y"]), 33, "outline", "metal", "cylinder"))
    best = answered.get("best")
    if best:
        plate, hole, size = best["plate"], best["hole"], asked["plate"]
        x, y = float(plate["x"]), float(plate["y"])
        shapes.append(
            _rectangle(x, y, x + size["width_mm"], y + size["height_mm"], pen="new", fill="new", name="plate")
        )
        shapes.append(Circle(float(hole["x"]), float(hole["y"]), 13, "outline", "hole", "access hole"))
        ends = ((cylinder["x"], cylinder["y"]), (hole["x"], hole["y"]),
                (x + asked["connector"]["x"], y + asked["connector"]["y"]))  # fmt: skip
        shapes.append(Line(tuple((float(a), float(b)) for a, b in ends), "hidden", name="cable"))
    return shapes, (0, 0, wide, high)


def _cable(asked: Asked, answered: Asked) -> tuple[list[Shape], Bounds]:
    points = [(float(p[0]), float(p[1])) for p in asked["points_mm"]]
    shapes: list[Shape] = [Line(tuple(points), "new", name="cable")]
    tight = set(answered.get("tight_bends", ()))
    for place, (x, y) in enumerate(points):
        shapes.append(Circle(x, y, 4, "warning" if place in tight else "outline", "hole", f"point {place}"))
    return shapes, _around(points)


def _stack(asked: Asked, answered: Asked) -> tuple[list[Shape], Bounds]:
    thick, trim = float(asked["leaf_mm"]), float(asked["trim_mm"])
    middle = thick / 2 + float(asked.get("case_offset_mm") or 0.0)
    shapes: list[Shape] = [
        _rectangle(-60, 0, 60, thick, fill="leaf", name="leaf"),
        _rectangle(-30, thick, 30, thick + trim, pen="existing", fill="existing", name="trim"),
        Line(((-60, middle), (60, middle)), "centre", name="case's centre"),
    ]
    top = thick + trim
    fits = answered.get("fits") or []
    if fits:
        best = fits[0]
        cylinder = next(each for each in asked["cylinders"] if each["part"] == best["cylinder"])
        head = thick + trim + float(best["projection_mm"])
        shapes.append(
            _rectangle(-14.6, head - float(cylinder["length_mm"]), 14.6, head, pen="new", fill="metal", name="shell")
        )
        shapes.append(
            _rectangle(
                -20, thick + trim, 20, head - float(best["gap_mm"]), pen="new", fill="new", name="collar and rings"
            )
        )
        top = head
    return shapes, (-60, 0, 60, top)


def _bore(asked: Asked, answered: Asked) -> tuple[list[Shape], Bounds]:
    leaf, start = asked["leaf"], asked["start"]
    thick = float(leaf["thickness_mm"])
    direction, long = answered["direction"], float(answered["length_mm"])
    end = [float(s) + float(d) * long for s, d in zip(start, direction, strict=True)]
    y0, y1 = min(start[1], end[1]) - 40, max(start[1], end[1]) + 40
    shapes: list[Shape] = [
        _rectangle(0, y0, thick, y1, fill="leaf", name="leaf from the side"),
        Line(((float(start[2]), float(start[1])), (end[2], end[1])), "new", name="bore's axis"),
        Text(thick / 2, y1, phrase("inside face left, key face right"), "small", "centre"),
    ]
    target = asked.get("target")
    if target:
        low, high = target["min"], target["max"]
        shapes.insert(
            1,
            _rectangle(
                low[2], max(low[1], y0), high[2], min(high[1], y1), pen="existing", fill="existing", name="target"
            ),
        )
    return shapes, (0, y0, thick, y1)


def _euro(asked: Asked, answered: Asked) -> tuple[list[Shape], Bounds]:
    thick, key, inside = (float(asked[name]) for name in ("leaf_mm", "key_trim_mm", "inside_trim_mm"))
    screw = thick / 2 + float(asked.get("screw_offset_mm") or 0.0)
    shapes: list[Shape] = [
        _rectangle(-50, 0, 50, thick, fill="leaf", name="leaf"),
        _rectangle(-20, -inside, 20, 0, pen="existing", fill="existing", name="trim, inside"),
        _rectangle(-20, thick, 20, thick + key, pen="existing", fill="existing", name="trim, key side"),
        Line(((-50, screw), (50, screw)), "centre", name="fixing screw"),
    ]
    best = answered.get("best")
    low, high = -inside, thick + key
    if best:
        low, high = min(low, screw - float(best["b_mm"])), max(high, screw + float(best["a_mm"]))
        ends = (screw - float(best["b_mm"]), screw + float(best["a_mm"]))
        shapes.append(_rectangle(-8.5, ends[0], 8.5, ends[1], pen="new", fill="new", name="cylinder"))
    return shapes, (-50, low, 50, high)


def _tailpiece(asked: Asked, answered: Asked) -> tuple[list[Shape], Bounds]:
    thick, back = float(asked["leaf_mm"]), float(asked["cylinder_back_mm"])
    gap, left = float(asked.get("case_gap_mm") or 0.0), float(answered["left_mm"])
    start = thick - back
    supplied = float(asked["tailpiece_mm"])
    shapes: list[Shape] = [
        _rectangle(-45, 0, 45, thick, fill="leaf", name="leaf"),
        _rectangle(-30, -gap - 40, 30, -gap, pen="existing", fill="existing", name="lock's case"),
        _rectangle(-15, start, 15, thick + 5, pen="new", fill="metal", name="cylinder"),
        _rectangle(-3, start - left, 3, start, pen="new", fill="new", name="tailpiece"),
        _rectangle(-3, start - supplied, 3, start - left, pen="hidden", name="cut off"),
    ]
    return shapes, (-45, min(-gap - 40, start - supplied), 45, thick + 5)


def _bored(asked: Asked, answered: Asked) -> tuple[list[Shape], Bounds]:
    wanted, found = asked["wanted"], asked["found"]
    backset = answered.get("backset_mm") or found.get("backset_mm") or 70.0
    shapes: list[Shape] = [
        _rectangle(0, -80, backset + 70, 80, fill="leaf", name="leaf's face"),
        Circle(backset, 0, float(wanted["cross_bore_mm"]), "new", "hole", "cross bore wanted"),
    ]
    if found.get("cross_bore_mm"):
        shapes.append(Circle(backset, 0, float(found["cross_bore_mm"]), "hidden", name="cross bore found"))
    edge = float(wanted["edge_bore_mm"]) / 2
    for up in (edge, -edge):
        shapes.append(Line(((0, up), (backset, up)), "hidden", name="edge bore"))
    for hole in wanted.get("bolt_holes") or ():
        shapes.append(Circle(backset + hole["x_mm"], hole["y_mm"], hole["diameter_mm"], "new", "hole", "bolt hole"))
    return shapes, (0, -80, backset + 70, 80)


def _pocket(asked: Asked, answered: Asked) -> tuple[list[Shape], Bounds]:
    thick, high = float(asked["leaf_mm"]), float(asked["leaf_height_mm"])
    middle = thick / 2 + float(asked.get("offset_mm") or 0.0)
    wide = float(asked["pocket"]["width_mm"])
    lock = asked["lock"]
    shapes: list[Shape] = [
        _rectangle(0, 0, thick, high, fill="leaf", name="lock edge"),
        _rectangle(
            thick * 0.2, lock["y0"], thick * 0.8, lock["y1"], pen="existing", fill="existing", name="lock's pocket"
        ),
    ]
    for item in asked.get("items") or ():
        box = (thick * 0.2, item["y0"], thick * 0.8, item["y1"])
        shapes.append(_rectangle(*box, pen="existing", fill="existing", name=str(item["name"])))
    best = answered.get("best")
    if best:
        box = (middle - wide / 2, best["y0"], middle + wide / 2, best["y1"])
        shapes.append(_rectangle(*box, pen="new", fill="new", name="unit's pocket"))
    return shapes, (0, 0, thick, high)


def _channel(asked: Asked, answered: Asked) -> tuple[list[Shape], Bounds]:
    thick = float(asked["leaf"]["thickness_mm"])
    given, cylinder = asked["case"], asked["cylinder"]
    top = float(cylinder["y"]) + float(given["top_above_mm"])
    middle = thick / 2 + float(given.get("offset_mm") or 0.0)
    path = [(float(point[2]), float(point[1])) for point in answered["path"]]
    low, high = min(top - 60, *(y for _, y in path)) - 10, max(top, *(y for _, y in path)) + 30
    half = float(given["width_mm"]) / 2
    shapes: list[Shape] = [
        _rectangle(0, low, thick, high, fill="leaf", name="leaf from the side"),
        _rectangle(middle - half, low, middle + half, top, pen="existing", fill="existing", name="lock's pocket"),
        Line(tuple(path), "new", name="channel"),
        Text(thick / 2, high, phrase("inside face left, key face right"), "small", "centre"),
    ]
    return shapes, (0, low, thick, high)


def _around(points: list[tuple[float, float]]) -> Bounds:
    xs, ys = [x for x, _ in points], [y for _, y in points]
    return min(xs) - 5, min(ys) - 5, max(xs) + 5, max(ys) + 5


_DRAWN: Final[Mapping[str, Callable[[Asked, Asked], tuple[list[Shape], Bounds]]]] = {
    "placement": _placement,
    "cable": _cable,
    "cylinder-stack": _stack,
    "bore": _bore,
    "euro-halves": _euro,
    "tailpiece": _tailpiece,
    "bored-prep": _bored,
    "pocket": _pocket,
    "channel": _channel,
}

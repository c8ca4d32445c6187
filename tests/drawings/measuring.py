"""Finds shapes of a drawing by name."""

from hwsched.drawings.drawing import Callout, Circle, Dimension, Line, Text


def named(drawing, name):
    return [shape for shape in drawing.shapes if getattr(shape, "name", "") == name]


def one(drawing, name):
    found = named(drawing, name)
    assert len(found) == 1, f"{len(found)} shapes named {name}"
    return found[0]


def span(line):
    """Return x0, y0, x1, y1 of a line or circle."""
    if isinstance(line, Circle):
        half = line.diameter / 2
        return line.x - half, line.y - half, line.x + half, line.y + half
    assert isinstance(line, Line)
    xs, ys = [x for x, _ in line.points], [y for _, y in line.points]
    return min(xs), min(ys), max(xs), max(ys)


def words(drawing):
    """Return all texts, callouts and notes of a drawing in one string."""
    texts = [shape.text for shape in drawing.shapes if isinstance(shape, Text | Callout)]
    return " | ".join([*texts, *drawing.notes])


def dimensions(drawing):
    """Return what dimensions say and the distances between their points along their axis."""
    found = []
    for shape in drawing.shapes:
        if isinstance(shape, Dimension):
            length = abs(shape.x1 - shape.x0) if shape.axis == "horizontal" else abs(shape.y1 - shape.y0)
            found.append((shape.text, round(length, 3)))
    return found

"""What the drawing of an opening knows: its scene, layers, what is chosen, what is measured. No widgets, no work.

Whoever changes it calls a method; whoever shows it listens to `changed`.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot
from typing import Final

from PySide6.QtCore import QObject, Signal

from hwsched.drawings.drawing import View
from hwsched.drawings.layers import LAYERS, LEAD, LOCK, UNIT, Layer, on_layers
from hwsched.drawings.things import Box, Point, box_of, corners_of, nearest, shapes_of, thing_at, things_of
from hwsched.language import phrase, to_phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.render.scene import Scene, Standing, stand


@dataclass(frozen=True, slots=True)
class Thing:
    """What can be chosen in the drawing, as the list beside it shows it."""

    name: str
    """As shapes know it."""
    words: str
    view: str = ""
    """The face on which it may be moved; empty for none."""
    why_not: str = ""
    """Why it is not moved here."""
    by_hand: bool = False
    """Whether a person has set its place."""

    @property
    def movable(self) -> bool:
        """Whether it may be moved."""
        return bool(self.view)


@dataclass(frozen=True, slots=True)
class Measured:
    """A distance between two points of the scene."""

    start: Point
    end: Point
    level: bool
    """Both points are in one view: across counts too. Between views only heights do."""

    def words(self, style: LengthStyle) -> str:
        """Say it in the project's lengths."""
        dx, dy = abs(self.end[0] - self.start[0]), abs(self.end[1] - self.start[1])
        up = phrase("{length} up", length=format_length(dy, style))
        if not self.level:
            return phrase("{up} (two views: only heights can be compared)", up=up)
        return phrase(
            "{length} apart: {length_2} across, {up}",
            length=format_length(hypot(dx, dy), style),
            length_2=format_length(dx, style),
            up=up,
        )


NAMES: Final = {UNIT: to_phrase("Unit"), LOCK: to_phrase("New lock"), LEAD: to_phrase("Lead")}


class DrawingState(QObject):
    """Scene of one opening and how a person looks at it; layers and choice stay when another opening comes."""

    changed = Signal()
    """Something is to be shown otherwise."""
    chose = Signal(str)
    """Another thing is chosen, or none."""

    def __init__(self, parent: QObject | None = None) -> None:
        super().__init__(parent)
        self.views: tuple[View, ...] = ()
        self.things: tuple[Thing, ...] = ()
        self.scene: Scene | None = None
        self.style: LengthStyle = "fraction"
        self.layers: frozenset[Layer] = frozenset(LAYERS) - {"keep-outs"}
        self.chosen = ""
        self.measuring = False
        self.points: list[Point] = []
        """Of the measure that is being taken: none, one or two."""
        self._room = (300.0, 200.0)

    def show(self, views: Sequence[View], things: Sequence[Thing], style: LengthStyle, *, keep_places: bool) -> None:
        """Show these views; while something is moved they keep their places."""
        self.views, self.things, self.style = tuple(views), tuple(things), style
        if (
            keep_places
            and self.scene is not None
            and [v.name for v in views] == [each.view.name for each in self.scene.standings]
        ):
            old = self.scene
            standings = tuple(
                Standing(view, each.dx_mm, each.dy_mm) for view, each in zip(views, old.standings, strict=True)
            )
            self.scene = replace(old, standings=standings)
        else:
            self.points.clear()
            self.stand()
        if self.chosen and self.chosen not in {each.name for each in self.things}:
            self.choose("")
        self.changed.emit()

    def fit_room(self, wide_mm: float, tall_mm: float) -> None:
        """Put the views as paper of this size asks."""
        if (wide_mm, tall_mm) != self._room:
            self._room = wide_mm, tall_mm
            self.stand()

    def stand(self) -> None:
        """Put the views beside one another."""
        self.scene = stand(self.views, *self._room) if self.views else None

    def switch(self, layer: Layer, on: bool) -> None:
        """Show or hide a layer."""
        self.layers = self.layers | {layer} if on else self.layers - {layer}
        self.changed.emit()

    def choose(self, thing: str) -> None:
        """Choose a thing of the opening; empty for none."""
        if thing != self.chosen:
            self.chosen = thing
            self.chose.emit(thing)
            self.changed.emit()

    def chosen_thing(self) -> Thing | None:
        """Return what is chosen."""
        return next((each for each in self.things if each.name == self.chosen), None)

    def thing_at(self, x: float, y: float, reach: float) -> str:
        """Return what is seen at a place of the scene."""
        standing = self.scene.at(x, y) if self.scene is not None else None
        if standing is None:
            return ""
        seen = on_layers(standing.view.drawing, self.layers)
        known = {each.name for each in self.things}
        found = thing_at(seen, x - standing.dx_mm, y - standing.dy_mm, reach)
        return found if found in known else ""

    def boxes(self, thing: str) -> list[tuple[Standing, Box]]:
        """Return where a thing stands in each view, in the scene."""
        found = []
        for each in self.scene.standings if self.scene is not None else ():
            box = box_of(shapes_of(each.view.drawing, thing)) if thing else None
            if box is not None:
                dx, dy = each.dx_mm, each.dy_mm
                found.append((each, (box[0] + dx, box[1] + dy, box[2] + dx, box[3] + dy)))
        return found

    def measure(self, on: bool) -> None:
        """Begin or end measuring."""
        self.measuring = on
        self.points.clear()
        self.changed.emit()

    def measure_point(self, x: float, y: float, reach: float) -> None:
        """Take a point of a measure: the corner next to it, else the place itself; a third one begins anew."""
        if len(self.points) > 1:
            self.points.clear()
        self.points.append(self.corner(x, y, reach) or (x, y))
        self.changed.emit()

    def corner(self, x: float, y: float, reach: float) -> Point | None:
        """Return the corner nearest to a place of the scene, within a reach."""
        standing = self.scene.at(x, y) if self.scene is not None else None
        if standing is None:
            return None
        points = corners_of(on_layers(standing.view.drawing, self.layers))
        found = nearest(points, x - standing.dx_mm, y - standing.dy_mm, reach)
        return (found[0] + standing.dx_mm, found[1] + standing.dy_mm) if found is not None else None

    def measured(self) -> Measured | None:
        """Return the measure that was taken."""
        if self.scene is None or len(self.points) < 2:
            return None
        start, end = self.points
        return Measured(start, end, self.scene.at(*start) is self.scene.at(*end))


def known_things(views: Sequence[View], named: dict[str, Thing]) -> tuple[Thing, ...]:
    """Return the things that are drawn, each by what is known of it or by its own name."""
    found = dict.fromkeys(thing for view in views for thing in things_of(view.drawing))
    order = [UNIT, LOCK, *found]
    return tuple(
        named.get(each) or Thing(each, phrase(NAMES.get(each, each[:1].upper() + each[1:])))
        for each in sorted(found, key=order.index)
    )

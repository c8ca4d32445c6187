"""Moving a thing in a drawing: how far it was brought by mouse and keys, and on which lines it stands. No widgets."""

from dataclasses import dataclass
from typing import Final

from hwsched.drawings.things import Box, Lines, Snap, next_line, snapped
from hwsched.language import phrase

STEP_MM: Final = 10.0
FINE_MM: Final = 1.0
LEAST_MM: Final = 2.0
"""Nothing is made smaller than that."""
EDGES: Final = tuple((x, y) for x in (-1, 0, 1) for y in (-1, 0, 1) if (x, y) != (0, 0))
"""Edges and corners by which a thing is made larger: left or lower, none, right or upper."""


@dataclass(slots=True)
class Move:
    """One thing on its way in one view.

    Here belongs how far it was brought and on which lines it stands; what comes of it belongs to who asked.

    Parameters
    ----------
    thing : str
        What is moved.
    view : str
        In which view, so right and up are meant as this one shows them.
    box : Box
        Where it stood, in the view [mm].
    lines : Lines
        To which it keeps.
    """

    thing: str
    view: str
    box: Box
    lines: Lines
    dx: float = 0.0
    dy: float = 0.0
    upright: tuple[float, str] | None = None
    level: tuple[float, str] | None = None

    @property
    def moved(self) -> bool:
        """Whether it is elsewhere than it was."""
        return (self.dx, self.dy) != (0.0, 0.0)

    def to(self, dx: float, dy: float, reach: float) -> None:
        """Bring it somewhere, from where it stood; it goes on to lines within a reach [mm]."""
        snap = snapped(self._box(dx, dy), self.lines, reach) if reach > 0 else Snap(0.0, 0.0, None, None)
        self._take(dx, dy, snap)

    def step(self, dx: float, dy: float) -> None:
        """Bring it on by a step, exactly."""
        self._take(self.dx + dx, self.dy + dy, Snap(0.0, 0.0, None, None))

    def on(self, way: tuple[int, int]) -> None:
        """Bring it on to the next line in one way: (1, 0) is right, (0, 1) up."""
        self._take(self.dx, self.dy, next_line(self._box(self.dx, self.dy), self.lines, way))

    def words(self) -> str:
        """Say on which lines it stands."""
        return ", ".join(
            phrase("on the {line}", line=line[1]) for line in (self.upright, self.level) if line is not None
        )

    def _box(self, dx: float, dy: float) -> Box:
        x0, y0, x1, y1 = self.box
        return x0 + dx, y0 + dy, x1 + dx, y1 + dy

    def _take(self, dx: float, dy: float, snap: Snap) -> None:
        self.dx, self.dy = dx + snap.dx, dy + snap.dy
        self.upright, self.level = snap.upright, snap.level


@dataclass(slots=True)
class Stretch(Move):
    """An edge or a corner of a thing on its way: it becomes wider or higher, and its other edges stay."""

    edges: tuple[int, int] = (1, 1)
    """One of `EDGES`."""

    def to(self, dx: float, dy: float, reach: float) -> None:
        """Bring the edge somewhere; it goes on to lines within a reach [mm]."""
        x0, y0, x1, y1 = self.box
        across, up = self.edges
        x, y = (x0 if across < 0 else x1) + dx, (y0 if up < 0 else y1) + dy
        snap = snapped((x, y, x, y), self.lines, reach) if reach > 0 else Snap(0.0, 0.0, None, None)
        self.upright, self.level = snap.upright if across else None, snap.level if up else None
        self.dx = across * max(across * (dx + snap.dx), LEAST_MM - (x1 - x0)) if across else 0.0
        self.dy = up * max(up * (dy + snap.dy), LEAST_MM - (y1 - y0)) if up else 0.0

    @property
    def stretched(self) -> Box:
        """How it stands now."""
        x0, y0, x1, y1 = self.box
        across, up = self.edges
        return (
            x0 + (self.dx if across < 0 else 0.0),
            y0 + (self.dy if up < 0 else 0.0),
            x1 + (self.dx if across > 0 else 0.0),
            y1 + (self.dy if up > 0 else 0.0),
        )

"""Which part of a scene is seen, and how large: fitted, nearer and farther about a point, moved along.

Without widgets: the view asks where things stand on the screen, and turns wheel and keys into these few moves.
"""

from dataclasses import dataclass, replace
from typing import Final

from hwsched.render.scene import Region

PX_PER_MM: Final = 3.0
"""Screen pixels for one paper millimetre at 100 % of text: letters of 2.5 mm are then as high as ordinary text."""
_NEAREST: Final = 8.0
"""Paper mm per mm: a sixteenth of an inch is then 38 px wide."""
STEP: Final = 1.25


@dataclass(frozen=True, slots=True)
class Camera:
    """A scene's x and y [mm] to the screen's [px, down], at `scale` paper mm per mm."""

    wide_px: float
    tall_px: float
    ends: Region
    """Of the scene [mm]."""
    least: float
    """Scale at which all of it is seen: nobody goes farther away."""
    scale: float
    x_mm: float
    """What stands in the middle of the screen."""
    y_mm: float
    px_per_mm: float = PX_PER_MM

    @property
    def factor(self) -> float:
        """Screen pixels per mm of the thing drawn."""
        return self.scale * self.px_per_mm

    @property
    def whole(self) -> bool:
        """Whether all of the scene is seen."""
        return self.scale <= self.least * (1 + 1e-9)

    @property
    def region(self) -> Region:
        """Return what is in sight [mm]."""
        half_x, half_y = self.wide_px / self.factor / 2, self.tall_px / self.factor / 2
        return self.x_mm - half_x, self.y_mm - half_y, self.x_mm + half_x, self.y_mm + half_y

    def to_screen(self, x_mm: float, y_mm: float) -> tuple[float, float]:
        """Return where a place of the scene is on the screen."""
        return (
            self.wide_px / 2 + (x_mm - self.x_mm) * self.factor,
            self.tall_px / 2 - (y_mm - self.y_mm) * self.factor,
        )

    def to_scene(self, x_px: float, y_px: float) -> tuple[float, float]:
        """Return which place of the scene is at a point of the screen."""
        return (
            self.x_mm + (x_px - self.wide_px / 2) / self.factor,
            self.y_mm - (y_px - self.tall_px / 2) / self.factor,
        )

    def zoomed(self, by: float, x_px: float | None = None, y_px: float | None = None) -> "Camera":
        """Go nearer by a factor; what is at this point of the screen, or in its middle, stays there."""
        at = (self.wide_px / 2 if x_px is None else x_px, self.tall_px / 2 if y_px is None else y_px)
        x, y = self.to_scene(*at)
        nearer = replace(self, scale=min(max(self.scale * by, self.least), max(_NEAREST, self.least)))
        x2, y2 = nearer.to_scene(*at)
        return nearer.moved(x - x2, y - y2)

    def moved(self, dx_mm: float, dy_mm: float) -> "Camera":
        """Look at another place; no farther than to where the scene ends, and at all of it from the middle."""
        x0, y0, x1, y1 = self.ends
        if self.whole:
            return replace(self, x_mm=(x0 + x1) / 2, y_mm=(y0 + y1) / 2)
        return replace(self, x_mm=min(max(self.x_mm + dx_mm, x0), x1), y_mm=min(max(self.y_mm + dy_mm, y0), y1))

    def lettered(self, px_per_mm: float) -> "Camera":
        """Look at the same with letters of another size: whatever is drawn stays where it is, and as large."""
        by = self.px_per_mm / px_per_mm
        return replace(self, px_per_mm=px_per_mm, scale=self.scale * by, least=self.least * by)

    def at(self, region: Region) -> "Camera":
        """Look at a region, with some air about it."""
        wide, tall = max(region[2] - region[0], 1.0) * 1.15, max(region[3] - region[1], 1.0) * 1.15
        scale = min(self.wide_px / wide, self.tall_px / tall) / self.px_per_mm
        nearer = replace(
            self,
            scale=min(max(scale, self.least), max(_NEAREST, self.least)),
            x_mm=(region[0] + region[2]) / 2,
            y_mm=(region[1] + region[3]) / 2,
        )
        return nearer.moved(0.0, 0.0)


def whole_of(ends: Region, least: float, wide_px: float, tall_px: float, px_per_mm: float = PX_PER_MM) -> Camera:
    """Look at all of a scene."""
    x0, y0, x1, y1 = ends
    return Camera(wide_px, tall_px, ends, least, least, (x0 + x1) / 2, (y0 + y1) / 2, px_per_mm)

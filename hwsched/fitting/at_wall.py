"""Reader and unit of an opening without a leaf: on a wall or enclosure, the unit behind the reader."""

from dataclasses import replace

from hwsched.attributes.of_parts import DEPTH_MM, HOLE_MM, SLACK_MM
from hwsched.fitting.lead import with_lead
from hwsched.fitting.surface import housing_of
from hwsched.rules.reading import lock_item, lock_part
from hwsched.values import Fit, Hole, OpeningInput, Part, Placement


def at_wall(given: OpeningInput, bare: Fit, unit: Part) -> Fit:
    """Put the unit over the reader's back; x counts from the reader's centre.

    The way through the wall counts where its thickness was surveyed as that of the leaf; a rule says so where not.
    """
    lock, housing, reader = lock_item(given), housing_of(unit), lock_part(given, bare)
    if lock is None or lock.cylinder_height_mm is None or housing is None or reader is None:
        return bare
    high, window = lock.cylinder_height_mm, housing.window
    hx = min(max(housing.connector[0], window.x0), window.x1)
    hy = min(max(housing.connector[1], window.y0), window.y1)
    where = Placement(
        leaf="",
        face="wall",
        pattern="beside",
        x_mm=round(-hx, 4),
        y_mm=round(high - hy, 4),
        width_mm=housing.size[0],
        height_mm=housing.size[1],
        hole_x_mm=0.0,
        hole_y_mm=high,
    )
    # An opening without a leaf may have its wall or sheet noted as one; without it the way through is left out.
    thick = next((leaf.thickness_mm for leaf in given.leaves if leaf.thickness_mm is not None), 0.0)
    deep = reader.number_of(DEPTH_MM) or 0.0
    # The lead begins where the reader's body ends within the wall, not at its front.
    rear = max(thick - deep, 0.0)
    end = (housing.connector[0] - hx, high - hy + housing.connector[1], 0.0)
    base = replace(bare, placement=where, holes=_reader_hole(reader, high))
    stretches = [
        ("", (0.0, high, rear)),
        ("through wall or enclosure", (0.0, high, 0.0)),
        ("behind the plate to the connector", end),
    ]
    return with_lead(given, base, unit, stretches, unit.number_of(SLACK_MM) or 0.0)


def _reader_hole(reader: Part, high: float) -> tuple[Hole, ...]:
    diameter = reader.number_of(HOLE_MM)
    if diameter is None:
        return ()
    return (
        Hole(
            "hole for the reader and its lead",
            "",
            "wall",
            0.0,
            high,
            diameter,
            from_cylinder_mm=(0.0, 0.0),
            tool="hole-saw",
            order=1,
            purpose="function",
        ),
    )

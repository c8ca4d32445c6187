"""Reader and unit of an opening without a leaf: on a wall or enclosure, the unit behind the reader."""

from dataclasses import replace

from hwsched.attributes.of_parts import DEPTH_MM, FORM, HOLE_MM, SCREW_SIZE, SCREWS, SIZE, SLACK_MM, WALL_BUILD
from hwsched.fitting.candidate import by_hand, cheapest, fit_part, offered, with_parts
from hwsched.fitting.lead import with_lead
from hwsched.fitting.surface import housing_of
from hwsched.rules.practice import wall_fixing
from hwsched.rules.reading import lock_item, lock_part
from hwsched.values import Fit, FitPart, Hole, OpeningInput, Part, Placement


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
        x_mm=-hx,
        y_mm=high - hy,
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
    base = replace(bare, placement=where, holes=_reader_hole(given, reader, high))
    stretches = [
        ("", (0.0, high, rear)),
        ("through wall or enclosure", (0.0, high, 0.0)),
        ("behind the plate to the connector", end),
    ]
    held = with_parts(base, *_fixings(given, unit))
    return with_lead(given, held, unit, stretches, unit.number_of(SLACK_MM) or 0.0)


def _fixings(given: OpeningInput, unit: Part) -> list[FitPart]:
    """Return what holds the unit on the wall: as many as it takes screws, of their size, made for that wall."""
    wall, size, count = given.opening.wall_build, unit.text_of(SCREW_SIZE), unit.number_of(SCREWS)
    wanted = wall_fixing(wall) if wall is not None else None
    if wanted is None or not size or not count:
        return []
    stock = offered(given, "fastener", "fastener")
    if not by_hand(given, "fastener"):
        stock = tuple(
            part
            for part in stock
            if part.text_of(FORM) == wanted.form and part.text_of(WALL_BUILD) == wall and part.text_of(SIZE) == size
        )
    fixing = cheapest(given, stock)
    return [] if fixing is None else [fit_part(given, "fastener", fixing, wanted.reason, count)]


def _reader_hole(given: OpeningInput, reader: Part, high: float) -> tuple[Hole, ...]:
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
            # No saw for wood and metal goes through brick.
            tool="core-bit" if given.opening.wall_build == "masonry" else "hole-saw",
            order=1,
            purpose="function",
        ),
    )

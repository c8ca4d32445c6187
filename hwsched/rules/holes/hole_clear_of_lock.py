"""Rule: holes, and the lead on its way, stay clear of the leaf's other locks and of the holes made for them."""

from collections.abc import Iterable
from functools import partial
from itertools import pairwise

from hwsched.calc.opening.bore import Box, Rod, Vector, segment_to_box_mm, segment_to_segment_mm
from hwsched.calc.opening.solid import shrunk
from hwsched.rules.carried import Carried, of_case, of_centre
from hwsched.rules.reading import at_point, beside_here, leaf_name, lock_item, lock_leaf, on_leaf, other_locks
from hwsched.rules.rounding import apart_allowances, by_rounding, least_excuse
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.bores import as_rod
from hwsched.rules.solid.cavity import lock_body
from hwsched.rules.solid.clearances import ON_FACE, TOUCH_MM
from hwsched.rules.wording import length
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    if leaf is None or leaf.thickness_mm is None or not given.point.others:
        return
    thick = leaf.thickness_mm
    bodies: list[tuple[str, Box | Rod, Carried]] = []
    for lock in other_locks(given):
        body = lock_body(lock, thick) if on_leaf(lock, leaf) else None
        if body is not None:
            carried = of_case(lock, leaf) if isinstance(body, Box) else of_centre(lock)
            bodies.append((f"the {(lock.kind or 'lock').replace('-', ' ')}'s body", body, carried))
    bodies += [
        (f"the {hole.name} of the {each.point.name}", as_rod(hole, thick), of_centre(lock_item(at_point(given, each))))
        for each in beside_here(given)
        for hole in (each.fit.holes if each.fit is not None else ())
        if hole.face in ON_FACE and not hole.by_template and hole.leaf == leaf_name(leaf)
    ]
    for hole in fit.holes:
        # Holes by template have the place of their plate, not their own.
        if hole.face not in ON_FACE or hole.by_template:
            continue
        own = as_rod(hole, thick)
        for name, body, carried in bodies:
            wall = _apart(own, body)
            if wall >= limits["wall_mm"] - TOUCH_MM:
                continue
            axes = apart_allowances(of_centre(lock_item(given)), carried, (hole.diameter_mm,))
            excuse = least_excuse(axes, partial(_kept, own, body, limits["wall_mm"]))
            if excuse is not None:
                yield by_rounding(given, excuse, limits["wall_mm"] - wall, hole.name)
            else:
                yield Verdict(
                    f"The {hole.name} leaves {length(given, wall)} to {name}; {length(given, limits['wall_mm'])} is "
                    f"needed, short by {length(given, limits['wall_mm'] - wall)}.",
                    values={"wall_mm": wall, "needed_mm": limits["wall_mm"], "short_mm": limits["wall_mm"] - wall},
                    about=hole.name,
                )
    points = fit.cable.points_mm if fit.cable is not None else ()
    for name, body, _ in bodies:
        # Only cases: a lead may cross another hole in the open, but not go through a lock.
        if isinstance(body, Box) and any(segment_to_box_mm(a, b, body) <= TOUCH_MM for a, b in pairwise(points)):
            yield Verdict(f"The lead's way runs into {name}.", about="lead")


def _kept(rod: Rod, body: Box | Rod, wall_mm: float, more: Vector) -> bool:
    """Tell whether the wall is kept to a body that is so much smaller."""
    return _apart(rod, shrunk(body, more)) >= wall_mm - TOUCH_MM


def _apart(rod: Rod, body: Box | Rod) -> float:
    """Return the material between a hole and another body [mm]; negative where they overlap."""
    if isinstance(body, Box):
        return segment_to_box_mm(rod.start, rod.end, body) - rod.diameter_mm / 2
    return segment_to_segment_mm(rod.start, rod.end, body.start, body.end) - (rod.diameter_mm + body.diameter_mm) / 2


RULE = Rule(
    id="hole-clear-of-lock",
    title="Holes and lead clear of the leaf's other lock",
    discipline="holes",
    severity="error",
    basis="geometry; the least wall is common practice",
    cure="Take another place for the unit, away from the other lock.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "wall_mm",
            6.35,
            "Least material between a hole and another lock's body or its holes.",
            "from memory, unverified; as to the leaf's edge",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)

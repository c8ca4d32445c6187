"""The lead from the part to the unit: its length along the way, and an extension where it is short."""

import itertools
from math import dist

from hwsched.attributes.of_parts import CONNECTOR, LEAD_MM, LENGTH_MM, MATES_WITH
from hwsched.calc.opening.cable import route
from hwsched.fitting.candidate import chosen_by, fit_part, offered, with_parts, worth
from hwsched.fitting.ways import Point
from hwsched.rules.reading import lock_part
from hwsched.rules.solid.templates import template_mm
from hwsched.rules.wording import length
from hwsched.values import CablePath, Fit, OpeningInput, Part

_APART_MM = 1e-6


def with_lead(given: OpeningInput, bare: Fit, unit: Part, stretches: list[tuple[str, Point]], slack_mm: float) -> Fit:
    """Add the lead's path, and an extension where the lead alone is short.

    Parameters
    ----------
    given, bare : OpeningInput, Fit
        Lock and unit are chosen.
    unit : Part
        The unit whose socket the lead must reach.
    stretches : list
        Points of the way, each with the name of the stretch that ends there; the first starts it.
    slack_mm : float
        What handling needs on top [mm].
    """
    names, points = apart(stretches)
    needed = (
        slack_mm
        if len(points) < 2
        else route(points, template_mm(lock_part(given, bare), "bend-radius"), slack_mm).length_mm
    )
    found = [(name, round(dist(a, b), 3)) for name, (a, b) in zip(names[1:], itertools.pairwise(points), strict=True)]
    return with_cable(given, bare, unit, points, needed, slack_mm, (*found, ("slack", slack_mm)))


def with_cable(
    given: OpeningInput,
    bare: Fit,
    unit: Part,
    points: list[Point],
    needed_mm: float,
    slack_mm: float,
    segments: tuple[tuple[str, float], ...],
) -> Fit:
    """Add a lead whose length is known, and an extension where it is short."""
    part = lock_part(given, bare)
    lead = part.number_of(LEAD_MM) if part is not None else None
    if part is None or lead is None:
        return bare
    extended, available = bare, lead
    # What a person chose is fitted though the lead would do.
    if needed_mm > lead + _APART_MM or any(choice.role == "lead-extension" for choice in given.chosen):
        longer = _extension(given, part, unit, needed_mm - lead)
        if longer is not None:
            available += longer.number_of(LENGTH_MM) or 0.0
            reason = f"the lead of {length(given, lead)} is {length(given, needed_mm - lead)} short"
            if needed_mm <= lead:
                reason = chosen_by(given, "lead-extension")
            extended = with_parts(bare, fit_part(given, "lead-extension", longer, reason))
    path = CablePath(tuple(points), round(needed_mm, 3), available, slack_mm, segments)
    return _with_path(extended, path)


def _with_path(fit: Fit, path: CablePath) -> Fit:
    return Fit(
        fit.status,
        parts=fit.parts,
        stack=fit.stack,
        placement=fit.placement,
        cable=path,
        holes=fit.holes,
        power=fit.power,
    )


def apart(stretches: list[tuple[str, Point]]) -> tuple[list[str], list[Point]]:
    """Drop points that lie on the one before them."""
    names, points = [stretches[0][0]], [stretches[0][1]]
    for name, point in stretches[1:]:
        if dist(point, points[-1]) > _APART_MM:
            names.append(name)
            points.append(point)
    return names, points


def _extension(given: OpeningInput, part: Part, unit: Part, short_mm: float) -> Part | None:
    """Return the cheapest extension that mates and reaches; failing that the longest that mates."""
    plug, socket = part.text_of(CONNECTOR), unit.text_of(MATES_WITH)
    mating = [
        (each.number_of(LENGTH_MM) or 0.0, each)
        for each in offered(given, "lead-extension", "lead-extension")
        # Both ends: an extension that fits the lock's plug only ends in front of a unit that it cannot feed.
        if each.text_of(MATES_WITH) == plug and each.text_of(CONNECTOR) == socket
    ]
    reaching = [
        (worth(each, given.exchange), mm, each.number, each) for mm, each in mating if mm >= short_mm - _APART_MM
    ]
    if reaching:
        return min(reaching, key=lambda entry: entry[:3])[3]
    # The longest though it is short: the rule then names how much is lacking at least.
    return max(mating, key=lambda entry: (entry[0], entry[1].number))[1] if mating else None

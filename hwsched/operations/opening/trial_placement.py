"""Trying a place for the unit: what would follow from it, before anything is written."""

from dataclasses import dataclass, replace

from hwsched.fitting import fit
from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.checking import Checker
from hwsched.operations.findings.waiver_book import WaiverBook
from hwsched.operations.opening.lock_points import point_results
from hwsched.values import Finding, Fit, HandPlacement, OpeningInput
from hwsched.values.input_key import input_key

_GEOMETRY = ("placement", "cable", "holes")


def with_unit_at(
    checked: Checked, x_mm: float, y_mm: float, checker: Checker, book: WaiverBook | None, number: int = 1
) -> Checked:
    """Work out an opening with the unit of a lock point moved by hand; nothing is stored.

    Parameters
    ----------
    checked : Checked
        The opening as it stands, with a placed unit.
    x_mm, y_mm : float
        Lower left corner of the plate, from the lock edge and above the floor [mm].
    checker : Checker
        Remembers earlier judgements.
    book : WaiverBook or None
        Waivers of the project, which are laid over what is found at the new place; None where it has none.
    number : int
        Of the lock point.

    Raises
    ------
    ValueError
        When no unit of the lock point stands on a face.
    """
    at = checked.point(number)
    place = at.fit.placement if at.fit is not None else None
    if place is None or place.face not in ("inside", "key"):
        raise ValueError("no unit stands on a face of this opening")
    placed = HandPlacement(place.leaf, place.face, place.pattern, x_mm, y_mm)
    inputs = [replace(given, placed=placed) if given.point == at.given.point else given for given in checked.inputs]
    known = {input_key(each.given): each.fit for each in checked.points if each.fit is not None}

    def make(given: OpeningInput, key: str) -> Fit:
        return known.get(key) or fit(given)

    tried = checker.judge(point_results(inputs, {}, make))
    findings = tried.findings if book is None else book.lay_over(tried.inputs, tried.findings).findings
    return replace(tried, findings=findings, stored=False)


def against_place(tried: Checked) -> tuple[Finding, ...]:
    """Return what forbids a place: errors of placement, cable and holes that nobody has waived."""
    return tuple(f for f in tried.findings if f.severity == "error" and f.discipline in _GEOMETRY and not f.waived)


@dataclass(frozen=True, slots=True)
class PlaceCosts:
    """What the place of a unit costs: lead, holes, findings, and how near it stands to what is there."""

    lead_mm: float | None
    """Length that the lead needs; None where there is none, or nothing fits."""
    spare_mm: float | None
    holes: int
    errors: int
    warnings: int
    nearest: tuple[str, float] | None = None
    """Name of the nearest neighbour, and the free distance to it; less than 0 where it is overlapped."""
    against: str = ""
    """What forbids the place, with its numbers; empty where nothing does."""


def place_costs(checked: Checked, number: int = 1) -> PlaceCosts:
    """Return what the unit's place of a lock point costs, as the opening stands or was tried."""
    fit = checked.shown(number).fit if checked.stored else checked.point(number).fit
    counted = [each for each in checked.findings if not each.waived]
    lead = fit.cable if fit is not None else None
    free = fit.placement.clearances if fit is not None and fit.placement is not None else ()
    against = against_place(checked)
    return PlaceCosts(
        lead.length_mm if lead is not None else None,
        lead.available_mm - lead.length_mm if lead is not None else None,
        sum(hole.count for hole in fit.holes) if fit is not None else 0,
        sum(each.severity == "error" for each in counted),
        sum(each.severity == "warning" for each in counted),
        free[0] if free else None,
        against[0].message if against else "",
    )

"""Trying a place for the unit: what would follow from it, before anything is written."""

from dataclasses import replace

from hwsched.fitting import fit
from hwsched.operations.findings.checking import Checked, Checker
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

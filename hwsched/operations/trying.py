"""Trying a place for the unit: what would follow from it, before anything is written."""

from dataclasses import replace

from hwsched.cases import Finding, Placed
from hwsched.cases.case_key import case_key
from hwsched.fitting import fit
from hwsched.operations.checking import Checked, Checker

_GEOMETRY = ("placement", "cable", "holes")


def with_unit_at(checked: Checked, x_mm: float, y_mm: float, checker: Checker) -> Checked:
    """Work out an opening with its unit moved by hand; nothing is stored.

    Parameters
    ----------
    checked : Checked
        The opening as it stands, with a placed unit.
    x_mm, y_mm : float
        Lower left corner of the plate, from the lock edge and above the floor [mm].
    checker : Checker
        Remembers earlier judgements.

    Raises
    ------
    ValueError
        When the opening has no unit that stands on a face.
    """
    place = checked.fit.placement if checked.fit is not None else None
    if place is None or place.face not in ("secured", "key"):
        raise ValueError("no unit stands on a face of this opening")
    case = replace(checked.case, placed=Placed(place.leaf, place.face, place.pattern, x_mm, y_mm))
    tried = fit(case)
    return Checked(case, tried, checker.findings(case_key(case), case, tried), stored=False)


def against_place(tried: Checked) -> tuple[Finding, ...]:
    """Return what forbids a place: errors of placement, cable and holes that nobody has waived."""
    return tuple(f for f in tried.findings if f.severity == "error" and f.discipline in _GEOMETRY and not f.waived)

"""All views of an opening that stand beside one another: both faces, the lock edge and the section at the cylinder."""

from collections.abc import Sequence

from hwsched.calc.opening.placement import KeepOut
from hwsched.drawings.drawing import View
from hwsched.drawings.handing import FACES, Face
from hwsched.drawings.opening.edge_view import edge_view
from hwsched.drawings.opening.elevation import elevation
from hwsched.drawings.opening.section import section
from hwsched.fitting.keepouts import surroundings
from hwsched.quantities import LengthStyle
from hwsched.rules.reading import leafless, lock_leaf
from hwsched.values import Fit, OpeningInput, PointFit


def views_of(
    given: OpeningInput, fit: Fit, style: LengthStyle = "fraction", *, beside: Sequence[PointFit] = ()
) -> tuple[View, ...]:
    """Draw all views of an opening; of one without a leaf there are its two walls.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        Survey and fit of a lock point.
    style : LengthStyle
        How lengths are written.
    beside : sequence of PointFit
        The opening's other lock points.

    Returns
    -------
    tuple of View
        Faces with the keep-outs of a unit, then edge and section.
    """
    found = [
        View(face, elevation(given, fit, face, style, keepouts=_keepouts(given, fit, face), beside=beside), True)
        for face in FACES
    ]
    if not leafless(given):
        edge = edge_view(given, fit, style)
        found += [View("edge", edge, edge.to_scale), View("section", section(given, fit, style), False)]
    return tuple(found)


def _keepouts(given: OpeningInput, fit: Fit, face: Face) -> tuple[KeepOut, ...]:
    leaf = lock_leaf(given)
    return surroundings(given, fit, leaf, face).keepouts if leaf is not None else ()

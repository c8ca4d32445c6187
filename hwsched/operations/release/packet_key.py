"""What a packet shows, as a hash: two packets of an opening are alike when their keys are."""

import hashlib
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from hwsched.documents.stock.box_contents import contents
from hwsched.model.fit_record import fit_text
from hwsched.quantities.money import ZERO
from hwsched.values import Fit, Hole, Placement, PointFit
from hwsched.values.earlier_words import in_first_words
from hwsched.values.input_key import survey_key

_KEPT_MM: Final = 1e-3
"""By how much at most a place was once rounded."""


def packet_key(points: Sequence[PointFit]) -> str:
    """Return the key of what the packet of an opening shows.

    Mark and place, surveyed facts, parts and what lies in their boxes, the units' places, cables and holes count; who
    chose a part, what was refused and what else would fit do not: they are not what is drilled and fitted.

    Parameters
    ----------
    points : sequence of PointFit
        Lock points of the opening.

    Returns
    -------
    str
        64 hexadecimal digits; empty where one of them has none.
    """
    fits = [each.fit for each in points if each.fit is not None]
    if len(fits) < len(points):
        return ""
    given = points[0].given
    facts = survey_key(replace(given, chosen=(), placed=None, supply_link=None))
    opening = given.opening
    named = [opening.mark, opening.building, opening.level, opening.room_from, opening.room_to]
    parts = [part for fit in fits for part in fit.parts]
    boxes = [(h.number, h.quantity) for part in parts for h in contents(given.catalogue, part.part, part.quantity)]
    # Nothing is added where no box holds a part, so that packets that went out before are not told to be old.
    inside = f" {boxes}" if boxes else ""
    return hashlib.sha256(f"{facts} {named} {' '.join(map(_shown, fits))}{inside}".encode()).hexdigest()


def _shown(fit: Fit) -> str:
    """Return what of a fit stands in a packet, as text."""
    shown = replace(
        fit,
        parts=tuple(replace(part, source="worked-out", reason="") for part in fit.parts),
        refused=(),
        runners_up=(),
        cost=ZERO,
        currency="",
        cost_needs=(),
        placement=(place := _placed(fit.placement)),
        holes=tuple(_bored(hole, place) for hole in fit.holes),
    )
    return in_first_words(fit_text(shown))


# Places were once kept to three or four decimals. No packet shows more of them, and what went out before is not told to
# be old for digits that nobody can drill.


def _placed(place: Placement | None) -> Placement | None:
    if place is None:
        return None
    others = tuple(replace(each, x_mm=round(each.x_mm, 3), y_mm=round(each.y_mm, 3)) for each in place.alternatives)
    return replace(
        place,
        x_mm=round(place.x_mm, 4),
        y_mm=round(place.y_mm, 4),
        hole_x_mm=round(place.hole_x_mm, 4),
        hole_y_mm=round(place.hole_y_mm, 4),
        alternatives=others,
    )


def _bored(hole: Hole, place: Placement | None) -> Hole:
    x, y = hole.x_mm, hole.y_mm
    if hole.face == "lock-edge" and hole.purpose in ("pocket", "channel"):
        x, y = round(x, 3), round(y, 3)
    elif hole.purpose == "fixing" and hole.by_template and place is not None:
        # Pilots through the plate stand by its middle, as that was kept.
        across, up = place.x_mm + place.width_mm / 2, place.y_mm + place.height_mm / 2
        if abs(x - across) < _KEPT_MM and abs(y - up) < _KEPT_MM:
            x, y = round(across, 3), round(up, 3)
    return replace(hole, x_mm=x, y_mm=y, edge_deg=round(hole.edge_deg, 4))

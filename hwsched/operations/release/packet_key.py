"""What a packet shows, as a hash: two packets of an opening are alike when their keys are."""

import hashlib
from collections.abc import Sequence
from dataclasses import replace

from hwsched.documents.stock.box_contents import contents
from hwsched.model.fit_record import fit_text
from hwsched.quantities.money import ZERO
from hwsched.values import Fit, PointFit
from hwsched.values.earlier_words import in_first_words
from hwsched.values.input_key import survey_key


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
    )
    return in_first_words(fit_text(shown))

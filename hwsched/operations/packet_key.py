"""What a packet shows, as a hash: two packets of an opening are alike when their keys are."""

import hashlib
from dataclasses import replace

from hwsched.cases import Case, Fit
from hwsched.cases.case_key import survey_key
from hwsched.documents.box_contents import contents
from hwsched.model.fit_record import fit_text
from hwsched.quantities.money import ZERO


def packet_key(case: Case, fit: Fit | None) -> str:
    """Return the key of what the packet of an opening shows.

    Mark and place, surveyed facts, parts and what lies in their boxes, the unit's place, cable and holes count; who
    chose a part, what was refused and what else would fit do not: they are not what is drilled and fitted.

    Parameters
    ----------
    case, fit : Case, Fit or None
        Fit None where none is stored for the facts as they stand.

    Returns
    -------
    str
        64 hexadecimal digits; empty without a fit.
    """
    if fit is None:
        return ""
    shown = replace(
        fit,
        parts=tuple(replace(part, source="fitted", reason="") for part in fit.parts),
        refused=(),
        runners_up=(),
        cost=ZERO,
        currency="",
        cost_needs=(),
    )
    facts = survey_key(replace(case, chosen=(), placed=None, feed=None))
    opening = case.opening
    named = [opening.mark, opening.building, opening.level, opening.room_from, opening.room_to]
    boxes = [(h.number, h.quantity) for part in fit.parts for h in contents(case.catalogue, part.part, part.quantity)]
    # Nothing is added where no box holds a part, so that packets that went out before are not told to be old.
    inside = f" {boxes}" if boxes else ""
    return hashlib.sha256(f"{facts} {named} {fit_text(shown)}{inside}".encode()).hexdigest()

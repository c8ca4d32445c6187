"""The way of a tailpiece: from the cylinder's back into the case, and how deep the case is there.

Here belongs what fitting and rules share of it. Whether a tailpiece will do is said by a rule.
"""

from dataclasses import dataclass

from hwsched.attributes.of_parts import (
    BODY_LENGTH_MM,
    CAM_OFFSET_MM,
    LENGTH_MM,
    STEP_MM,
    TAIL_LENGTH_MM,
    TAIL_STEP_MM,
    THREAD_PITCH_MM,
    NumberName,
)
from hwsched.calc.opening.tailpiece import TailpieceResult, tailpiece
from hwsched.rules.reading import lock_item, lock_leaf, part_fact
from hwsched.rules.rounding import EQUAL_MM, Allowance, allowance
from hwsched.values import OpeningInput, Part


@dataclass(frozen=True, slots=True)
class TailWay:
    """Where a cylinder ends and where its case begins, from the key face inward."""

    case_mm: float
    """From where on the tailpiece is in the case."""
    back_mm: float
    """The cylinder's back."""
    room_mm: float
    """How far the case is open from there on, to the sheet of its far wall."""
    open_by: Allowance
    """What that may be off by the rounding of the case's thickness."""


def tail_way(given: OpeningInput, part: Part, turns: int, sheet_mm: float) -> tuple[TailWay | None, tuple[str, ...]]:
    """Return the way of a cylinder's tailpiece, or the facts that are missing to know it.

    Parameters
    ----------
    given, part : OpeningInput, Part
        The opening and its cylinder.
    turns : int
        Whole turns by which a mortise cylinder's cam stands past the case's centre.
    sheet_mm : float
        Thickness of the sheet that a case is made of: it is measured over it, and a tailpiece ends before it.
    """
    leaf, lock = lock_leaf(given), lock_item(given)
    thick = leaf.thickness_mm if leaf is not None else None
    trim, wide = (lock.trim_key_mm, lock.case_width_mm) if lock is not None else (None, None)
    facts: dict[str, float | None] = {"leaf.thickness_mm": thick}
    if part.kind == "rim-cylinder":
        body = part.number_of(BODY_LENGTH_MM)
        facts |= {"existing_item.trim_key_mm": trim, "existing_item.case_width_mm": wide}
        facts[part_fact(part, BODY_LENGTH_MM)] = body
        if thick is None or trim is None or wide is None or body is None:
            return None, _lacking(facts)
        # The case stands on the inside face; the trim lifts the cylinder, so that its body reaches less far in.
        return TailWay(thick, body - trim, wide - sheet_mm, _open_by(wide, 1.0, body)), ()
    offset, pitch = part.number_of(CAM_OFFSET_MM), part.number_of(THREAD_PITCH_MM)
    facts |= {"existing_item.case_width_mm": wide}
    facts |= {part_fact(part, CAM_OFFSET_MM): offset, part_fact(part, THREAD_PITCH_MM): pitch}
    if thick is None or wide is None or offset is None or pitch is None:
        return None, _lacking(facts)
    # The cam plane lies on the case's centre, or whole turns beyond it: whatever the shell's length, its rear is there.
    centre = thick / 2 - ((lock.case_offset_mm or 0.0) if lock is not None else 0.0)
    rear = centre + turns * pitch - offset
    near = max(centre - wide / 2, rear)
    # Where the rear stands in the case only the half of its thickness beyond the centre counts.
    share = 1.0 if near > rear else 0.5
    return TailWay(near, rear, centre + wide / 2 - sheet_mm - near, _open_by(wide, share, offset)), ()


def tail_size(part: Part, tail: Part | None) -> tuple[float | None, float | None, str]:
    """Return length and break-off step of the tailpiece that a cylinder carries, and the fact that names its length."""
    names: tuple[NumberName, NumberName] = (LENGTH_MM, STEP_MM) if tail is not None else (TAIL_LENGTH_MM, TAIL_STEP_MM)
    held = tail if tail is not None else part
    return held.number_of(names[0]), held.number_of(names[1]), part_fact(held, names[0])


def reach_off(given: OpeningInput, part: Part, long_mm: float) -> Allowance:
    """Return what the way to the case may be off by the rounding of leaf and trim."""
    leaf, lock = lock_leaf(given), lock_item(given)
    factor = 1.0 if part.kind == "rim-cylinder" else 0.5
    facts = [
        ("leaf.thickness_mm", leaf.thickness_mm if leaf is not None else None, factor),
        ("existing_item.trim_key_mm", lock.trim_key_mm if lock is not None else None, 1.0),
    ]
    return allowance(facts, (part.number_of(BODY_LENGTH_MM), long_mm))


def tail_cut(
    way: TailWay, long_mm: float, step_mm: float | None, engagement_mm: float, off: Allowance
) -> TailpieceResult:
    """Say what is cut off a tailpiece, by `reach_off` too; raises InputError where the case leaves it no room.

    Whether the cylinder's body ends before its case is another question: it is taken as if it did.
    """
    # Less than can be made is no lack of room, nor is what the rounding of the survey leaves open.
    room = engagement_mm if 0 < engagement_mm - way.room_mm <= way.open_by.mm + EQUAL_MM else way.room_mm
    cut = _cut(way, long_mm, step_mm, engagement_mm, room)
    if cut.method == "saw" and step_mm is not None and (more := way.open_by.mm + off.mm):
        # It is broken off at its scores and nowhere else: one of them may be right by the rounding.
        wider = _cut(way, long_mm, step_mm, engagement_mm, max(room, way.room_mm + more))
        return wider if wider.method != "saw" else cut
    return cut


def _cut(way: TailWay, long_mm: float, step_mm: float | None, engagement_mm: float, room_mm: float) -> TailpieceResult:
    return tailpiece(
        way.case_mm,
        min(way.back_mm, way.case_mm),
        long_mm,
        engagement_mm,
        maximum_engagement_mm=room_mm,
        break_off_mm=step_mm,
    )


def _open_by(wide: float, share: float, made: float) -> Allowance:
    return allowance([("existing_item.case_width_mm", wide, share)], (made,))


def _lacking(facts: dict[str, float | None]) -> tuple[str, ...]:
    return tuple(fact for fact, value in facts.items() if value is None)

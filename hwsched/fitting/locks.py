"""The lock's slot: which cylinder, lock or reader, with which cam or tailpiece, collar and rings.

Geometry is calculated in `calc`, and whether a candidate will do is said by the rules of the slot.
"""

from collections import Counter
from dataclasses import dataclass, replace
from typing import Final

from hwsched.attributes.of_parts import (
    BODY_LENGTH_MM,
    CAM_FIXING,
    CAM_FORM,
    CAM_OFFSET_MM,
    FITS,
    HEIGHT_MM,
    INSIDE_HALF_MM,
    KEY_HALF_MM,
    LENGTH_MM,
    STEP_MM,
    TAIL_FORM,
    TAIL_LENGTH_MM,
    TAIL_STEP_MM,
    THREAD_PITCH_MM,
    TextName,
)
from hwsched.calc.calculator import InputError
from hwsched.calc.opening.stack import StackCollar, StackCylinder, StackFit, StackMiss, StackRing, cylinder_stack
from hwsched.calc.opening.tailpiece import tailpiece
from hwsched.fitting.candidate import (
    Judged,
    chosen_by,
    fit_part,
    judged,
    missing_for_better,
    numbers_in,
    offered,
    rank_of,
    with_parts,
)
from hwsched.rules import limits_of, rule_named
from hwsched.rules.reading import KIND_OF_FORM, LOCK_ROLES, lock_form, lock_item, lock_leaf
from hwsched.rules.wording import length
from hwsched.values import Fit, FitPart, Item, Leaf, OpeningInput, Part, Role, Stack

_CYLINDER_FLUSH: Final = rule_named("cylinder-flush")
_TAIL_REACH: Final = rule_named("tail-reach")

_ROLES: dict[str, Role] = {
    "mortise-cylinder": "cylinder",
    "rim-cylinder": "cylinder",
    "euro-cylinder": "cylinder",
    "cabinet-lock": "lock",
    "bored-lever-lock": "lock",
    "gate-lock": "lock",
    "fixed-reader": "reader",
}
_MOST_RINGS = 3
"""Rings on one cylinder; our own."""
_SHAPE = (
    "connector",
    "trim_diameter_mm",
    "thread_diameter_mm",
    "case_width_mm",
    "case_height_mm",
    "cross_bore_mm",
    "hole_mm",
    "depth_mm",
    "body_length_mm",
    "inside_half_mm",
    "mounting",
)
"""Attributes of the lock on which the unit's place, and what goes with it, depend."""
_REACH = ("lead_mm", "cam_offset_mm")
"""Attributes on which, besides, depends how far its lead goes."""


@dataclass(frozen=True, slots=True)
class LockSlot:
    """All candidates of the lock's slot."""

    good: tuple[Judged, ...]
    """Best first; of those that leave the unit the same, the best only."""
    others: tuple[Judged, ...]
    needs: tuple[str, ...]
    """Facts of the survey without which a better candidate can be neither taken nor refused."""


def chosen_by_hand(given: OpeningInput) -> bool:
    """Tell whether a person chose the cylinder, lock or reader."""
    return any(choice.role in LOCK_ROLES for choice in given.chosen)


def lock_slot(given: OpeningInput) -> LockSlot:
    """Judge every cylinder, lock or reader that may take the existing lock's place."""
    good: list[Judged] = []
    others: list[Judged] = []
    for part, role in _offered(given):
        partial = _built(given, part, role)
        found = judged(given, partial, "lock", part.number, role)
        (good if found.good else others).append(found)
    # By number among equals, so that the order of the catalogue decides nothing.
    good.sort(key=lambda found: (rank_of(given, found.fit), numbers_in(found.fit)))
    first: dict[tuple[object, ...], Judged] = {}
    for found in good:
        # Locks alike for the unit differ in price only: the dearer ones could never win, but would be searched to the
        # end.
        first.setdefault((*shape_of(given, found.fit), *_reach_of(given, found.fit)), found)
    return LockSlot(tuple(first.values()), tuple(others), missing_for_better(given, good, others))


def _offered(given: OpeningInput) -> list[tuple[Part, Role]]:
    for choice in given.chosen:
        if choice.role in LOCK_ROLES and (part := given.catalogue.get(choice.part)) is not None:
            role: Role = next((known for known in _ROLES.values() if known == choice.role), "cylinder")
            # Of several choices for the lock the first counts: a lock point has one cylinder.
            return [(part, role)]
    kind = KIND_OF_FORM.get(lock_form(given) or "")
    if kind is None:
        return []
    return [(part, _ROLES[kind]) for part in given.catalogue.of_kind(kind) if not part.superseded_by]


def shape_of(given: OpeningInput, fit: Fit) -> tuple[object, ...]:
    """Return what of a lock decides where a unit can stand: equal for locks that leave a unit the same places."""
    part = given.catalogue.get(fit.parts[0].part)
    return tuple(part.attributes.get(name) for name in _SHAPE) if part is not None else ()


def _reach_of(given: OpeningInput, fit: Fit) -> tuple[object, ...]:
    part = given.catalogue.get(fit.parts[0].part)
    turns = fit.stack.turns if fit.stack is not None else 0
    return (turns, *(part.attributes.get(name) for name in _REACH)) if part is not None else ()


def _built(given: OpeningInput, part: Part, role: Role) -> Fit:
    leaf, lock = lock_leaf(given), lock_item(given)
    reason = f"the existing lock is of the form {lock_form(given) or 'unknown'}"
    bare = Fit("to-measure", parts=(fit_part(given, role, part, reason),))
    if leaf is None or lock is None:
        return bare
    if part.kind == "mortise-cylinder":
        return _threaded(given, bare, part, leaf, lock)
    if part.kind == "rim-cylinder":
        return _rim(given, bare, part, leaf, lock)
    if part.kind == "euro-cylinder":
        return _euro(given, bare, part, leaf, lock)
    return bare


# --- threaded cylinders -------------------------------------------------------------------------------------------


def _threaded(given: OpeningInput, bare: Fit, part: Part, leaf: Leaf, lock: Item) -> Fit:
    with_cam = with_parts(bare, *_carried(given, part, lock))
    thick, trim = leaf.thickness_mm, lock.trim_key_mm
    if thick is None or trim is None:
        return with_cam
    found = _stack(given, part, thick, trim, lock.case_offset_mm or 0.0)
    if found is None:
        return with_cam
    stands = length(given, found.projection_mm)
    turns = f"{found.turns} turn(s) beyond the case's centre" if found.turns else "on the case's centre"
    head = replace(
        bare.parts[0],
        reason=f"{bare.parts[0].reason}; in a leaf of {length(given, thick)} under {length(given, trim)} of trim its "
        f"cam lies {turns} and its head stands {stands} proud",
    )
    added: list[FitPart] = []
    if found.collar is not None and (collar := given.catalogue.get(found.collar)) is not None:
        added.append(fit_part(given, "collar", collar, f"the head stands {stands} proud of the trim"))
    # Sorted, so that equal stacks are listed the same way.
    for number, count in sorted(Counter(found.rings).items()):
        ring = given.catalogue.get(number)
        if ring is not None:
            added.append(fit_part(given, "ring", ring, f"fills what the collar leaves of {stands}", count))
    # The nearest miss goes on as if it fitted: the rule refuses it and says by how much.
    short = found.distance_mm if isinstance(found, StackMiss) else 0.0
    stack = Stack("threaded", found.projection_mm, found.gap_mm, found.turns, found.rings, short_mm=short)
    return Fit("to-measure", parts=(head, *with_cam.parts[1:], *added), stack=stack)


def _stack(
    given: OpeningInput, part: Part, thick: float, trim: float, case_offset: float
) -> StackFit | StackMiss | None:
    long, offset, pitch = (part.number_of(name) for name in (LENGTH_MM, CAM_OFFSET_MM, THREAD_PITCH_MM))
    if long is None or offset is None or pitch is None:
        return None
    limits = limits_of(_CYLINDER_FLUSH, given.settings)
    try:
        result = cylinder_stack(
            thick,
            trim,
            [StackCylinder(part.number, long, offset)],
            [StackCollar(each.number, high) for each, high in _heights(given, "collar")],
            # The calculation refuses a ring without height, and with it the whole stack.
            [StackRing(each.number, high) for each, high in _heights(given, "ring") if high > 0],
            case_offset_mm=case_offset,
            pitch_mm=pitch,
            max_turns_beyond=int(limits["turns_beyond"]),
            tolerance_mm=limits["tolerance_mm"],
            max_rings=_MOST_RINGS,
            max_fits=1,
        )
    except InputError:
        return None
    return result.fits[0] if result.fits else result.nearest_miss


def _heights(given: OpeningInput, role: Role) -> list[tuple[Part, float]]:
    return [(part, high) for part in offered(given, role, role) if (high := part.number_of(HEIGHT_MM)) is not None]


def _carried(given: OpeningInput, part: Part, lock: Item) -> list[FitPart]:
    """Return the cam, or the tailpiece conversion, that the lock's case needs and the cylinder takes."""
    wanted, fixing = lock.cam_form, part.text_of(CAM_FIXING)
    roles: tuple[tuple[Role, TextName], ...] = (("cam", CAM_FORM), ("tailpiece", TAIL_FORM))
    for role, attribute in roles:
        chosen = any(choice.role == role for choice in given.chosen)
        for each in offered(given, role, role):
            if chosen or (wanted is not None and each.text_of(FITS) == fixing and each.text_of(attribute) == wanted):
                why = chosen_by(given, role) if chosen else f"the lock's case needs {str(wanted).replace('-', ' ')}"
                return [fit_part(given, role, each, why)]
    return []


# --- rim and euro-profile -----------------------------------------------------------------------------------------


def _rim(given: OpeningInput, bare: Fit, part: Part, leaf: Leaf, lock: Item) -> Fit:
    thick, trim, body = leaf.thickness_mm, lock.trim_key_mm, part.number_of(BODY_LENGTH_MM)
    if thick is None or trim is None or body is None:
        return bare
    engagement = limits_of(_TAIL_REACH, given.settings)["engagement_mm"]
    # The trim lifts the cylinder off the leaf, so that its body reaches less far in.
    needed = thick - (body - trim) + engagement
    tails: list[tuple[float, float | None, Part | None]] = []
    own = part.number_of(TAIL_LENGTH_MM)
    # The cylinder's own tailpiece stands first: it costs nothing where it reaches.
    if own is not None and part.text_of(TAIL_FORM) == lock.cam_form:
        tails.append((own, part.number_of(TAIL_STEP_MM), None))
    chosen = any(choice.role == "tailpiece" for choice in given.chosen)
    for each in offered(given, "tailpiece", "tailpiece"):
        long = each.number_of(LENGTH_MM)
        if long is not None and (chosen or (each.text_of(FITS) == "rim" and each.text_of(TAIL_FORM) == lock.cam_form)):
            tails.append((long, each.number_of(STEP_MM), each))
    if not tails:
        return replace(bare, stack=Stack("rim", trim))
    # Where none reaches, the rule is to say how much is short; of nothing it could not.
    reaching = [tail for tail in tails if tail[0] >= needed] or tails
    long, step, extra = max(reaching, key=lambda t: t[2] is None and t[0] >= needed) if not chosen else tails[-1]
    # Behind the leaf the tailpiece may go as far into the case as the case is deep.
    deepest = lock.case_width_mm if lock.case_width_mm is not None and lock.case_width_mm > engagement else None
    try:
        cut = tailpiece(thick, body - trim, long, engagement, maximum_engagement_mm=deepest, break_off_mm=step)
    except InputError:
        return replace(bare, stack=Stack("rim", trim))
    stack = Stack("rim", trim, cut_off_mm=cut.cut_off_mm, short_mm=cut.short_mm)
    built = replace(bare, stack=stack)
    if extra is None:
        return built
    return with_parts(
        built, fit_part(given, "tailpiece", extra, f"the lock's case needs {lock.cam_form}, {long:g} mm long")
    )


def _euro(given: OpeningInput, bare: Fit, part: Part, leaf: Leaf, lock: Item) -> Fit:
    key, inside = part.number_of(KEY_HALF_MM), part.number_of(INSIDE_HALF_MM)
    thick, trim = leaf.thickness_mm, lock.trim_key_mm
    if key is None or inside is None or thick is None or trim is None:
        return bare
    stands = key - (thick / 2 - (lock.case_offset_mm or 0.0) + trim)
    why = f"{bare.parts[0].reason}; {length(given, thick)} of leaf under {length(given, trim)} of trim"
    head = replace(bare.parts[0], reason=why)
    return Fit(
        "to-measure",
        parts=(head,),
        stack=Stack("euro-profile", stands, key_half_mm=key, inside_half_mm=inside, short_mm=max(0.0, -stands)),
    )

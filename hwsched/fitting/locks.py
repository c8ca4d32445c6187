"""The lock's slot: which cylinder, lock or reader, with which cam or tailpiece, collar and rings.

Geometry is calculated in `calc`, and whether a candidate will do is said by the rules of the slot.
"""

from collections import Counter
from collections.abc import Iterator
from dataclasses import dataclass, replace

from hwsched.calc.stack import StackCollar, StackCylinder, StackRing, cylinder_stack
from hwsched.calc.tailpiece import tailpiece
from hwsched.cases import Case, Fit, FittedPart, Item, Leaf, Part, Stack
from hwsched.cases.fit import Role
from hwsched.fitting.candidate import Judged, cost_of, fitted, judged, offered, with_parts
from hwsched.quantities import MM_PER_INCH
from hwsched.rules import limits_of
from hwsched.rules.lock_and_cylinder.cylinder_flush import RULE as CYLINDER_FLUSH
from hwsched.rules.lock_and_cylinder.tail_reach import RULE as TAIL_REACH
from hwsched.rules.reading import KIND_OF_FORM, lock_form, lock_item, lock_leaf
from hwsched.rules.wording import length

_ROLES: dict[str, Role] = {
    "mortise-cylinder": "cylinder",
    "rim-cylinder": "cylinder",
    "euro-cylinder": "cylinder",
    "cabinet-lock": "lock",
    "bored-lever-lock": "lock",
    "gate-lock": "lock",
    "fixed-reader": "reader",
}
_STACK_RINGS = 3


@dataclass(frozen=True, slots=True)
class LockSlot:
    """All candidates of the lock's slot."""

    good: tuple[Judged, ...]
    """Cheapest first."""
    others: tuple[Judged, ...]


def lock_slot(case: Case) -> LockSlot:
    """Judge every cylinder, lock or reader that may take the existing lock's place."""
    form = lock_form(case)
    kind = KIND_OF_FORM.get(form or "")
    if kind is None:
        return LockSlot((), ())
    role = _ROLES[kind]
    leaf, lock = lock_leaf(case), lock_item(case)
    good: list[Judged] = []
    others: list[Judged] = []
    for part in offered(case, role, kind):
        for partial in _built(case, part, role, leaf, lock):
            found = judged(case, partial, "lock", part.number, role)
            (good if found.good else others).append(found)
    good.sort(key=lambda found: (cost_of(case, found.fit), found.fit.parts[0].part))
    return LockSlot(tuple(good), tuple(others))


def _built(case: Case, part: Part, role: Role, leaf: Leaf | None, lock: Item | None) -> Iterator[Fit]:
    reason = f"the existing lock is of the form {lock_form(case)}"
    bare = Fit("unknown", parts=(fitted(case, role, part, reason),))
    if part.kind == "mortise-cylinder":
        yield _threaded(case, bare, part, leaf, lock)
    elif part.kind == "rim-cylinder":
        yield _rim(case, bare, part, leaf, lock)
    elif part.kind == "euro-cylinder":
        yield _euro(bare, part, leaf, lock)
    else:
        yield bare


def _threaded(case: Case, bare: Fit, part: Part, leaf: Leaf | None, lock: Item | None) -> Fit:
    with_cam = _cam(case, bare, part, lock)
    long, offset = part.number_of("length_mm"), part.number_of("cam_offset_mm")
    pitch = part.number_of("thread_pitch_mm")
    thick = leaf.thickness_mm if leaf else None
    trim = lock.trim_key_mm if lock else None
    if long is None or offset is None or not pitch or thick is None or trim is None:
        return with_cam
    limits = limits_of(CYLINDER_FLUSH, case.settings)
    collars = _of_height(offered(case, "collar", "collar"))
    rings = _of_height(offered(case, "ring", "ring"))
    case_offset = (lock.case_offset_mm or 0.0) if lock else 0.0
    if abs(case_offset) >= thick / 2:
        return with_cam
    result = cylinder_stack(
        thick,
        trim,
        [StackCylinder(part.number, long, offset)],
        [StackCollar(each.number, height) for each, height in collars],
        [StackRing(each.number, height) for each, height in rings if height > 0],
        case_offset_mm=case_offset,
        pitch_mm=pitch,
        max_turns_beyond=int(limits["turns_beyond"]),
        tolerance_mm=limits["tolerance_mm"],
        max_rings=_STACK_RINGS,
        max_fits=1,
    )
    found = result.fits[0] if result.fits else result.nearest_miss
    if found is None:
        return with_cam
    stands = length(case, found.projection_mm)
    added: list[FittedPart] = []
    by_number = {each.number: each for each, _ in (*collars, *rings)}
    if found.collar is not None:
        added.append(fitted(case, "collar", by_number[found.collar], f"the head stands {stands} proud of the trim"))
    for number, count in sorted(Counter(found.rings).items()):
        reason = f"fills what the collar leaves under a head {stands} proud"
        added.append(fitted(case, "ring", by_number[number], reason, count))
    stack = Stack("threaded", found.projection_mm, found.gap_mm, found.turns, found.rings)
    turns = f", cam plane {found.turns} turns beyond the centre" if found.turns else ", cam plane on the centre"
    reason = f"{bare.parts[0].reason}; leaf {length(case, thick)} with {length(case, trim)} trim{turns}"
    head = replace(bare.parts[0], reason=reason)
    others = tuple(each for each in with_cam.parts if each.role != "cylinder")
    return Fit("unknown", parts=(head, *others, *added), stack=stack)


def _of_height(parts: tuple[Part, ...]) -> list[tuple[Part, float]]:
    return [(part, height) for part in parts if (height := part.number_of("height_mm")) is not None]


def _cam(case: Case, bare: Fit, part: Part, lock: Item | None) -> Fit:
    wanted = lock.cam_form if lock else None
    fixing = part.text_of("cam_fixing")
    for role, kind, attribute in (("cam", "cam", "cam_form"), ("tailpiece", "tailpiece", "tail_form")):
        for each in offered(case, role, kind):  # type: ignore[arg-type]
            if each.text_of("fits") == fixing and each.text_of(attribute) == wanted:
                reason = f"the lock's case needs {str(wanted).replace('-', ' ')}"
                return with_parts(bare, fitted(case, role, each, reason))  # type: ignore[arg-type]
    return bare


def _rim(case: Case, bare: Fit, part: Part, leaf: Leaf | None, lock: Item | None) -> Fit:
    thick = leaf.thickness_mm if leaf else None
    trim = lock.trim_key_mm if lock else None
    body, tail = part.number_of("body_length_mm"), part.number_of("tail_length_mm")
    if thick is None or trim is None or body is None or tail is None:
        return bare
    engagement = limits_of(TAIL_REACH, case.settings)["engagement_mm"]
    step = part.number_of("tail_step_mm")
    result = tailpiece(thick, body - trim, tail, engagement, break_off_mm=step)
    return Fit("unknown", parts=bare.parts, stack=Stack("rim", trim, cut_off_mm=result.cut_off_mm))


def _euro(bare: Fit, part: Part, leaf: Leaf | None, lock: Item | None) -> Fit:
    thick = leaf.thickness_mm if leaf else None
    trim = lock.trim_key_mm if lock else None
    key, secured = part.number_of("key_half_mm"), part.number_of("secured_half_mm")
    if thick is None or trim is None or key is None or secured is None:
        return bare
    offset = (lock.case_offset_mm or 0.0) if lock else 0.0
    stands = key - (thick / 2 - offset + trim)
    return Fit(
        "unknown", parts=bare.parts, stack=Stack("euro-profile", stands, key_half_mm=key, secured_half_mm=secured)
    )


def nearest_first(others: tuple[Judged, ...]) -> tuple[Judged, ...]:
    """Sort refused candidates: those short of least first."""

    def rank(found: Judged) -> tuple[int, float]:
        short = [abs(refusal.values.get("short_mm", MM_PER_INCH * 40)) for refusal in found.refusals]
        return len(found.refusals), max(short, default=0.0)

    return tuple(sorted(others, key=rank))

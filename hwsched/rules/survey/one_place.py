"""Rule: no two things are said to stand in one place of a face, and a case has the size of its own footprint."""

from collections.abc import Iterable, Iterator
from itertools import combinations

from hwsched.calc.opening.placement import Rect
from hwsched.rules.reading import leafless, lock_item, lock_leaf, on_leaf
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.footprints import face_of, face_unknown, rectangle
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, Item, Leaf, OpeningInput

_CARRIES = {
    "kick-plate": frozenset({"lock", "trim", "thumb-turn", "lever", "deadbolt", "exit-device", "push-plate", "pull",
                             "label", "viewer", "flush-bolt"}),
    "push-plate": frozenset({"lock", "trim", "thumb-turn", "lever", "deadbolt", "pull", "label", "viewer"}),
    "trim": frozenset({"lock", "thumb-turn", "lever", "deadbolt", "pull", "exit-device"}),
    "lock": frozenset({"thumb-turn", "lever", "deadbolt", "pull", "exit-device"}),
    "exit-device": frozenset({"thumb-turn", "lever", "label", "pull", "deadbolt"}),
}  # fmt: skip
"""What stands on a thing of a kind as its trim, or as part of it: a lever on its rose, a lock under its device."""
_FACES = ("inside", "key", "both")


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    if leaf is None or leafless(given):
        return
    placed = list(_placed(given, leaf))
    for (one, here), (other, there) in combinations(placed, 2):
        faces = {face_of(one), face_of(other)}
        if _goes_with(one, other) or (len(faces) == 2 and "both" not in faces):
            continue
        share = _shared(here, there)
        if share > limits["share"]:
            if _may_be_apart(one, other):
                yield unknown(("existing_item.face",), f"{_name(one)} and {_name(other)}")
                continue
            names = f"{_name(one)} and {_name(other)}"
            yield Verdict(
                f"{names.capitalize()} are said to stand in one place: {_at(given, here)}, and {_at(given, there)}; "
                f"{share:.0%} of the smaller one.",
                values={"share": share, "allowed_share": limits["share"]},
                about=names,
            )
    yield from _case(given, [(item, rect) for item, rect in placed if item.kind == "exit-device"], limits["off_mm"])


def _placed(given: OpeningInput, leaf: Leaf) -> Iterator[tuple[Item, Rect]]:
    for item in given.items:
        rect = rectangle(item)
        if item.kind not in (None, "other") and rect is not None and on_leaf(item, leaf) and face_of(item) in _FACES:
            yield item, rect


def _may_be_apart(one: Item, other: Item) -> bool:
    """Tell whether nobody said on which face one of them stands: on the other one it is not in the way."""
    told = {face_of(each) for each in (one, other) if not face_unknown(each)}
    return (face_unknown(one) or face_unknown(other)) and "both" not in told


def _goes_with(one: Item, other: Item) -> bool:
    return other.kind in _CARRIES.get(one.kind or "", ()) or one.kind in _CARRIES.get(other.kind or "", ())


def _shared(a: Rect, b: Rect) -> float:
    wide, high = min(a.x1, b.x1) - max(a.x0, b.x0), min(a.y1, b.y1) - max(a.y0, b.y0)
    if wide <= 0 or high <= 0:
        return 0.0
    return wide * high / min((r.x1 - r.x0) * (r.y1 - r.y0) for r in (a, b))


def _case(given: OpeningInput, devices: list[tuple[Item, Rect]], off_mm: float) -> Iterable[Verdict]:
    """Hold the case of an exit device as the lock's own facts give it against the device's footprint."""
    lock = lock_item(given)
    if lock is None or not devices:
        return
    y, above, high = lock.cylinder_height_mm, lock.case_above_mm, lock.case_height_mm
    if y is None or above is None or high is None:
        return
    low, top = y + above - high, y + above
    for _, rect in devices:
        # A device that hangs at quite another height is not the one that this cylinder works.
        if rect.y1 < low or rect.y0 > top:
            continue
        out = max(rect.y0 - low, top - rect.y1)
        if out > off_mm:
            yield Verdict(
                f"The exit device's case is said to reach from {length(given, low)} to {length(given, top)} above the "
                f"floor, its footprint from {length(given, rect.y0)} to {length(given, rect.y1)}: "
                f"{length(given, out)} of the case stands out of it.",
                "Measure the case at the lock edge again; the footprint of a device covers its case.",
                values={"off_mm": out, "allowed_mm": off_mm},
                about="exit device",
            )


def _name(item: Item) -> str:
    return (item.kind or "item").replace("-", " ")


def _at(given: OpeningInput, rect: Rect) -> str:
    return (
        f"{length(given, rect.x0)} to {length(given, rect.x1)} off the lock edge and {length(given, rect.y0)} to "
        f"{length(given, rect.y1)} above the floor"
    )


RULE = Rule(
    id="one-place",
    title="One thing in a place",
    discipline="survey",
    severity="error",
    basis="geometry; what stands on what is common practice",
    cure="Measure the footprints of both again: one of them is wrong.",
    judge=_judge,
    limits=(
        Limit(
            "share",
            0.5,
            "Share of the smaller footprint from which on two are one place; less is an overlap.",
            "from memory, unverified",
            unit="",
            low=0.0,
            high=1.0,
        ),
        Limit(
            "off_mm",
            6.35,
            "How far a case may stand out of its footprint: a survey's tolerance.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)

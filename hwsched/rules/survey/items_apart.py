"""Rule: no two things of the survey stand in the same place."""

from collections.abc import Iterable

from hwsched.rules.reading import leafless, lock_leaf, on_leaf
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import gap_mm
from hwsched.rules.solid.footprints import face_of, rectangle
from hwsched.rules.wording import length
from hwsched.values import Fit, OpeningInput

_LIE_ON_OTHERS = ("lock", "trim", "thumb-turn", "lever", "pull", "push-plate", "kick-plate", "exit-device", "label",
                  "viewer", "other", "deadbolt")  # fmt: skip
"""Kinds that often stand on or in one another: a lever on its trim, a viewer in a plate."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    if leaf is None or leafless(given):
        return
    placed = [
        (item, rect)
        for item in given.items
        if item.kind is not None and on_leaf(item, leaf) and (rect := rectangle(item)) is not None
    ]
    for i, (one, here) in enumerate(placed):
        for other, there in placed[i + 1 :]:
            if one.kind in _LIE_ON_OTHERS and other.kind in _LIE_ON_OTHERS:
                continue
            faces = {face_of(one), face_of(other)}
            if len(faces) == 2 and "both" not in faces:
                continue
            overlap = -gap_mm(here, there)
            if overlap > limits["overlap_mm"]:
                names = f"{one.kind} and {other.kind}".replace("-", " ")
                yield Verdict(
                    f"{names.capitalize()} overlap by {length(given, overlap)} on the same face.",
                    values={"overlap_mm": overlap, "allowed_mm": limits["overlap_mm"]},
                    about=names,
                )


RULE = Rule(
    id="items-apart",
    title="Existing items apart from each other",
    discipline="survey",
    severity="warning",
    basis="geometry",
    cure="Measure the footprints of both again.",
    judge=_judge,
    limits=(
        Limit(
            "overlap_mm",
            6.35,
            "Overlap that is taken for a survey's tolerance.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=200.0,
        ),
    ),
)

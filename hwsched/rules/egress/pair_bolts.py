"""Rule: the inactive leaf of a pair on an egress path or with a rating is not held by bolts that a person must work."""

from collections.abc import Iterable

from hwsched.rules.reading import rated, remains
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.ways_out import on_exit
from hwsched.rules.wording import unknown
from hwsched.values import Fit, Opening, OpeningInput

_ABOUT = "flush bolt"
_GROUPS = ("B", "F", "M", "S")
"""Groups in which the IBC has manual bolts on a pair of which only one leaf is needed."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if given.opening.form != "pair":
        return
    bolts = [i for i in given.items if i.kind == "flush-bolt" and remains(i) and i.leaf in ("inactive", None)]
    exits, carries = on_exit(given), rated(given)
    if not bolts or not (exits or carries):
        return
    if any(bolt.bolt_form is None for bolt in bolts):
        yield unknown(("existing_item.bolt_form",), _ABOUT)
    if not any(bolt.bolt_form == "manual" for bolt in bolts):
        return
    if exits:
        yield from _on_exit(given.opening, limits)
    if carries:
        yield Verdict(
            "Manual flush bolts hold the inactive leaf of a rated pair: nobody sees to it that they are thrown "
            "when the "
            "leaf must be shut.",
            about=_ABOUT,
        )


def _on_exit(opening: Opening, limits: Limits) -> Iterable[Verdict]:
    group, load = opening.occupancy_group, opening.occupant_load
    missing = [name for name in ("occupancy_group", "occupant_load") if getattr(opening, name) is None]
    if missing:
        yield unknown(tuple(f"opening.{name}" for name in missing), _ABOUT)
        return
    few = load is not None and load < limits["load_people"]
    if group in _GROUPS and not few and opening.sprinkler is None:
        yield unknown(("opening.sprinkler",), _ABOUT)
    elif group in _GROUPS and (few or opening.sprinkler):
        yield Verdict(
            f"Manual flush bolts on a pair on an egress path: group {group}, {load} people. They may stay only "
            "where the "
            "inactive leaf is not needed for the width and has no knob, handle or bar.",
            values={"load_people": float(load or 0), "allowed_people": limits["load_people"]},
            about=_ABOUT,
        )
    else:
        yield Verdict(
            f"Manual flush bolts hold a leaf on an egress path: group {group}, {load} people.",
            values={"load_people": float(load or 0), "allowed_people": limits["load_people"]},
            about=_ABOUT,
            severity="error",
        )


RULE = Rule(
    id="pair-bolts",
    title="Bolts on the inactive leaf",
    discipline="egress",
    severity="warning",
    basis="IBC 1010.2.5 (2021), secondary copies: fewer than 50 people, or sprinklers, in groups B, F, M and S; "
    "NFPA 101, "
    "7.2.1.5.11; NFPA 80 on manual bolts in rated pairs, from memory, unverified",
    cure="Take automatic or constant-latching bolts that the active leaf works, or have the authority allow what "
    "stands "
    "there.",
    judge=_judge,
    limits=(
        Limit(
            "load_people",
            50.0,
            "People from which manual bolts want sprinklers.",
            "IBC 1010.2.5 (2021), secondary copy",
            unit="",
            low=1.0,
            high=1000.0,
        ),
    ),
    defers=True,
)

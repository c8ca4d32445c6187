"""Rule: a gasket or smoke seal of a rated opening is not broken by a plate, a pocket or the lead."""

from collections.abc import Iterable

from hwsched.rules.reading import rated, stop_side
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.clearances import TOUCH_MM
from hwsched.rules.ways_out import is_door
from hwsched.rules.wording import length, unknown
from hwsched.values import Fit, OpeningInput

_ABOUT = "smoke seal"


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    if not rated(given) or not is_door(given):
        return
    place = fit.placement
    in_edge = [hole.name for hole in fit.holes if hole.face == "lock-edge"]
    # Only a plate near the edge on the face that closes against the stop can meet a seal there.
    near = place is not None and place.face == stop_side(given) and place.x_mm < _reach_mm(given, limits) - TOUCH_MM
    if not in_edge and not near:
        return
    seal = given.opening.smoke_seal
    if seal is None:
        yield unknown(("opening.smoke_seal",), _ABOUT)
    elif seal == "edge" and in_edge:
        yield Verdict(f"The {in_edge[0]} in the leaf's edge crosses the gasket or smoke seal there.", about=_ABOUT)
    elif seal == "stop" and near and place is not None:
        yield Verdict(
            f"The unit's plate begins {length(given, place.x_mm)} from the edge on the face that closes against "
            "the stop; with "
            f"the seal {length(given, _reach_mm(given, limits))} are to stay free.",
            values={"x_mm": place.x_mm, "needed_mm": _reach_mm(given, limits)},
            about=_ABOUT,
        )


def _reach_mm(given: OpeningInput, limits: Limits) -> float:
    """Return how far from the edge the stop with its seal covers the leaf; with an unknown stop only the seal."""
    return (given.opening.frame_stop_mm or 0.0) + limits["seal_mm"]


RULE = Rule(
    id="rated-seal",
    title="Gasket or smoke seal unbroken",
    discipline="fire-door",
    severity="error",
    basis="NFPA 80 and NFPA 105: gasketing of a rated opening stays whole and listed with it; from memory, unverified",
    cure="Move the unit off the seal, or have the maker of the seal say how it is carried on.",
    judge=_judge,
    limits=(
        Limit(
            "seal_mm",
            9.5,
            "How far a seal stands out beyond the frame's stop: 3/8 in.",
            "common practice",
            unit="mm",
            low=0.0,
            high=50.0,
        ),
    ),
    defers=True,
)

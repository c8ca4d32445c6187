"""Rule: the through-bolts' holes of a bored lock come square and first, its lead's hole leans as the jig holds it."""

from collections.abc import Iterable

from hwsched.rules.reading import lock_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.solid.templates import template_deg, template_mm
from hwsched.rules.wording import length
from hwsched.values import Fit, Hole, OpeningInput, Part

_EVEN_DEG = 1e-3
"""Angles closer than this are equal: holes hold theirs rounded."""


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    part = lock_part(given, fit)
    if part is None or part.kind != "bored-lever-lock":
        return
    leads = [hole for hole in fit.holes if hole.purpose == "cable"]
    bolts = [hole for hole in fit.holes if hole.purpose == "bolt"]
    for hole in leads:
        if hole.up_deg or hole.edge_deg:
            yield from _leans(part, hole, limits["angle_deg"])
        if any(bolt.order > hole.order for bolt in bolts):
            yield Verdict(
                f"The {hole.name} comes before the through-bolts' holes, on which its jig stands.",
                "Drill the through-bolts' holes first.",
                values={"order": float(hole.order)},
                about=hole.name,
            )
    for hole in bolts:
        yield from _bolt(given, part, hole, limits["diameter_mm"])


def _leans(part: Part, hole: Hole, off_deg: float) -> Iterable[Verdict]:
    # Toward the edge: away from the lock's case and its spindle, where a jig on the bolts' holes holds the bit.
    for what, is_deg, name in (
        ("up or down out of the cross bore", abs(hole.up_deg), "bored-up"),
        ("toward the lock edge", abs(hole.edge_deg), "bored-edge"),
    ):
        wanted = template_deg(part, name)
        off = abs(is_deg - wanted)
        if off > off_deg + _EVEN_DEG:
            yield Verdict(
                f"The {hole.name} leans {is_deg:.1f} degrees {what}; the jig holds {wanted:g} within {off_deg:g}.",
                values={"is_deg": is_deg, "wanted_deg": wanted, "off_deg": off},
                about=hole.name,
            )


def _bolt(given: OpeningInput, part: Part, hole: Hole, off_mm: float) -> Iterable[Verdict]:
    if abs(hole.up_deg) > _EVEN_DEG or abs(hole.edge_deg) > _EVEN_DEG:
        yield Verdict(
            f"The {hole.name} lean; through-bolts pass at 90 degrees.",
            values={"up_deg": hole.up_deg, "edge_deg": hole.edge_deg},
            about=hole.name,
        )
    wanted = template_mm(part, "bored-bolt-hole")
    if abs(hole.diameter_mm - wanted) > off_mm:
        yield Verdict(
            f"The {hole.name} are {length(given, hole.diameter_mm)}; the lock's bolts take {length(given, wanted)}.",
            values={"diameter_mm": hole.diameter_mm, "wanted_mm": wanted},
            about=hole.name,
        )


RULE = Rule(
    id="bored-lead",
    title="Holes of a bored lock's bolts and lead",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice: bolt holes 5/16 in, square and first; lead 45 degrees up and about 15 toward the edge",
    cure="Take another place for the unit, from which the lead's hole leans as the jig holds it.",
    judge=_judge,
    slot="unit",
    limits=(
        Limit(
            "angle_deg",
            2.0,
            "How far the lead's hole may be off 45 and 15 degrees.",
            "SDI 111-24, angles unless noted",
            unit="deg",
            low=0.0,
            high=45.0,
        ),
        Limit(
            "diameter_mm",
            0.4,
            "How far a bolt's hole may be off its size: one sixty-fourth of an inch.",
            "from memory, unverified",
            unit="mm",
            low=0.0,
            high=5.0,
        ),
    ),
)

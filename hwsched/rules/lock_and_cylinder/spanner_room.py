"""Rule: a spanner that turns a nut or a hexagon head can be swung from one of its sides to the next."""

from collections.abc import Iterable

from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.solid.spanners import LIMITS, Swing, hexagons, swing
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    worst: dict[str, tuple[Swing, str]] = {}
    for hexagon in hexagons(given, fit):
        found = swing(given, fit, hexagon, limits)
        if found is not None and found.needs:
            yield unknown(found.needs, hexagon.part.number)
        elif found is not None:
            # One sentence a part: bolts of a case are alike, and the one of the least room is the one to mend.
            before = worst.get(hexagon.part.number)
            if before is None or found.widest_deg < before[0].widest_deg:
                worst[hexagon.part.number] = found, hexagon.name
    for number, (found, name) in worst.items():
        beside = f" between {', '.join(found.beside)}" if found.beside else ""
        yield Verdict(
            f"A spanner on a {name} can be swung {found.widest_deg:.0f} degrees{beside}; "
            f"{found.needed_deg:g} are needed.",
            values={"swing_deg": found.widest_deg, "needed_deg": found.needed_deg},
            about=number,
        )


RULE = Rule(
    id="spanner-room",
    title="Room to swing a spanner",
    discipline="lock-and-cylinder",
    severity="error",
    basis="common practice: an open spanner is turned by 60 degrees and set anew, a ring of twelve points by 30; sizes "
    "from memory, unverified",
    cure="Take fasteners that a socket turns, and say so in the catalogue; or move the unit, or what stands beside.",
    judge=_judge,
    slot="unit",
    limits=LIMITS,
)

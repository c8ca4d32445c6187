"""Rule: the wire to an opening has as many conductors as its unit takes."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CONDUCTORS
from hwsched.rules.network.leaf_runs import leaf_wire, unit_conductors
from hwsched.rules.reading import unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    wire = leaf_wire(given, fit)
    if fit.power != "supply" or unit_part(given, fit) is None or wire is None:
        return
    has, wanted = wire.number_of(CONDUCTORS), unit_conductors(given, fit)
    if has is None:
        yield unknown((f"part {wire.number}.conductors",), wire.number)
    elif has < wanted:
        yield Verdict(
            f"It has {has:g} conductor{'s' if has != 1 else ''}; the unit takes {wanted}.",
            values={"conductors": has, "needed_conductors": float(wanted)},
            about=wire.number,
        )


RULE = Rule(
    id="wire-conductors",
    title="Conductors of the wire",
    discipline="power",
    severity="error",
    basis="current flows there and back: plus and minus at the least; the maker's declaration where it says more",
    cure="Take a wire of more conductors.",
    judge=_judge,
    slot="power",
)

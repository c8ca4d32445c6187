"""Rule: a supply on the frame reaches a unit on the leaf over a power transfer with conductors enough."""

from collections.abc import Iterable, Sequence

from hwsched.attributes.of_parts import CONDUCTORS
from hwsched.rules.network.leaf_runs import conductors_on_leaf, unit_conductors
from hwsched.rules.reading import carries_power, in_role, leafless, lock_leaf, remains, transfers_kept, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, Item, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit = unit_part(given, fit)
    if fit.power != "supply" or unit is None or leafless(given):
        return
    wanted = max(conductors_on_leaf(given, fit), round(limits["conductors"]))
    transfer, kept = in_role(given, fit, "power-transfer"), transfers_kept(given)
    if transfer is not None:
        has = transfer.number_of(CONDUCTORS)
        if has is None:
            yield unknown((f"part {transfer.number}.conductors",), transfer.number)
        elif has < wanted:
            yield _few(given, fit, has, wanted, transfer.number)
    elif kept:
        yield from _of_kept(given, fit, kept, wanted)
    elif not carries_power(given):
        other = any(item.kind == "power-transfer" and remains(item) for item in given.items)
        where = ": the power transfer that stays leads onto the other leaf" if other else ""
        yield Verdict(f"Nothing carries the supply from the frame onto the leaf{where}.", about=unit.number)


def _of_kept(given: OpeningInput, fit: Fit, kept: Sequence[Item], wanted: int) -> Iterable[Verdict]:
    leaf = lock_leaf(given)
    if len(given.leaves) > 1 and leaf is not None and all(item.leaf is None for item in kept):
        # On a pair one leaf has it, and the other has nothing.
        yield unknown(("existing_item.leaf",), "power-transfer")
        return
    if all(item.conductors is None for item in kept):
        yield unknown(("existing_item.conductors",), "power-transfer")
        return
    has = max(item.conductors or 0 for item in kept)
    if has < wanted:
        yield _few(given, fit, has, wanted, "power-transfer")


def _few(given: OpeningInput, fit: Fit, has: float, wanted: int, about: str) -> Verdict:
    own = unit_conductors(given, fit)
    what = f", {own} of them for the unit, the others for what it switches or for another unit" if wanted > own else ""
    return Verdict(
        f"It has one conductor; {wanted} are needed{what}."
        if has == 1
        else f"It has {has:g} conductors; {wanted} are needed{what}.",
        values={"conductors": float(has), "needed_conductors": float(wanted)},
        about=about,
    )


RULE = Rule(
    id="power-crosses-hinge",
    title="Power transfer onto the leaf",
    discipline="power",
    severity="error",
    basis="common practice; the maker's declaration of the unit's conductors, a pair for each strike that it switches",
    cure="Add a door loop or transfer hinge with conductors enough, listed where the opening is rated.",
    judge=_judge,
    slot="power",
    limits=(Limit("conductors", 2.0, "Least that is needed.", "common practice", unit="", low=1.0, high=40.0),),
)

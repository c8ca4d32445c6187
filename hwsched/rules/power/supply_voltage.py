"""Rule: the supply is regulated direct current of a voltage that every load takes, up to its highest tolerance."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import CURRENT, OUTPUT_V, REGULATED, TOLERANCE_SHARE
from hwsched.rules.network.devices import unsuited
from hwsched.rules.network.own_circuit import devices_of_opening
from hwsched.rules.reading import supply_part, unit_part
from hwsched.rules.rule import Limits, Rule, Verdict
from hwsched.rules.wording import short_v, unknown
from hwsched.values import Fit, OpeningInput, Part
from hwsched.values.power import Device


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, supply = unit_part(given, fit), supply_part(given, fit)
    if fit.power != "supply" or unit is None:
        return
    if supply is None and given.supply_link is not None:
        # The rules of circuits say that its supply is not chosen yet.
        return
    if supply is None:
        yield Verdict("No supply of the catalogue feeds this unit.", about=unit.number)
        return
    yield from _form(supply)
    volts, tolerance = supply.number_of(OUTPUT_V), supply.number_of(TOLERANCE_SHARE)
    if volts is None:
        yield unknown((f"part {supply.number}.output_v",), supply.number)
        return
    devices, problems = devices_of_opening(given, fit)
    for problem in problems:
        yield unknown(problem.needs, problem.about)
    said = False
    for device in dict.fromkeys(devices):
        found = _of_device(given, device, unit, supply, volts, tolerance)
        said = said or found is not None
        if found is not None:
            yield found
    if tolerance is None and not said and devices:
        yield unknown((f"part {supply.number}.tolerance_share",), supply.number)


def _form(supply: Part) -> Iterable[Verdict]:
    """Judge the kind of current: what hangs on a door's supply takes direct current, and smooth."""
    form, regulated = supply.text_of(CURRENT), supply.flag_of(REGULATED)
    if form is None:
        yield unknown((f"part {supply.number}.current",), supply.number)
    elif form != "dc":
        yield Verdict("The supply gives AC; the unit takes DC.", about=supply.number)
    if regulated is None:
        yield unknown((f"part {supply.number}.regulated",), supply.number)
    elif not regulated:
        yield Verdict("The supply is not regulated.", about=supply.number)


def _of_device(
    given: OpeningInput, device: Device, unit: Part, supply: Part, volts: float, tolerance: float | None
) -> Verdict | None:
    low, high = device.minimum_v, device.maximum_v
    who = "the unit" if device.part == unit.number else device.part
    if not low <= volts <= high:
        return Verdict(
            f"The supply gives {volts:g} V; {who} takes {low:g} to {high:g} V.",
            values={"supply_v": volts, "low_v": low, "high_v": high},
            about=supply.number,
        )
    part = given.catalogue.get(device.part)
    why = unsuited(device, part, volts, "dc")
    if why is not None and supply.text_of(CURRENT) == "dc":
        return Verdict(f"{who[:1].upper()}{who[1:]}: {why}.", about=supply.number)
    # The moment before anything draws it gives its highest. What the run takes of it is nothing then.
    rises = volts * (1 + (tolerance or 0.0))
    if rises > high + 1e-9:
        return Verdict(
            f"The supply rises to {rises:g} V at its upper tolerance of {tolerance:.0%}; {who} takes {high:g} V at "
            f"most, {short_v(rises - high)} V too much.",
            values={"supply_v": rises, "low_v": low, "high_v": high},
            about=supply.number,
        )
    return None


RULE = Rule(
    id="supply-voltage",
    title="Supply regulated and of the loads' voltage",
    discipline="power",
    severity="error",
    basis="common practice: remote supply 12 V DC regulated; the makers' declarations decide, at both ends of the "
    "supply's tolerance",
    cure="Take a regulated direct-current supply of the unit's voltage, with a tolerance that stays within it.",
    judge=_judge,
    slot="power",
)

"""Rule: at the end of its wire the unit still finds its lowest voltage."""

from collections.abc import Iterable

from hwsched.attributes.of_parts import GAUGE, OUTPUT_V, STRANDING, SUPPLY_LOW_V, TOLERANCE_SHARE
from hwsched.calc.calculator import InputError
from hwsched.calc.power.conductor import conductor, drop_v
from hwsched.rules.reading import drawn_a, in_role, on_supply, shared_supply, supply_part, unit_part
from hwsched.rules.rule import Limit, Limits, Rule, Verdict
from hwsched.rules.wording import unknown
from hwsched.values import Fit, OpeningInput


def _judge(given: OpeningInput, fit: Fit, limits: Limits) -> Iterable[Verdict]:
    unit, supply = unit_part(given, fit), supply_part(given, fit)
    shared = shared_supply(given) if fit.part("supply") is None else None
    wire = in_role(given, fit if shared is None else shared, "wire")
    run = given.opening.supply_distance_m
    if fit.power != "supply" or given.supply_link is not None or unit is None or supply is None or run is None:
        return
    tolerance = supply.number_of(TOLERANCE_SHARE)
    if tolerance is None:
        yield unknown((f"part {supply.number}.tolerance_share",), supply.number)
        return
    if wire is None:
        yield Verdict("No wire of the catalogue carries the unit's current this far.", about="wire")
        return
    units = [other for each in on_supply(given, fit) if (other := unit_part(given, each)) is not None]
    lows = [each.number_of(SUPPLY_LOW_V) for each in units]
    low = None if None in lows else max(each for each in lows if each is not None)
    volts, draws = supply.number_of(OUTPUT_V), drawn_a(given, fit)
    gauge = wire.text_of(GAUGE)
    if volts is None or low is None or draws is None or gauge is None:
        fact = f"{supply.number}.output_v" if volts is None else f"{unit.number}.supply_low_v"
        yield unknown((f"part {wire.number}.gauge" if gauge is None else f"part {fact}",), wire.number)
        return
    try:
        ohm_per_km = conductor(gauge, wire.text_of(STRANDING) or "stranded", limits["temperature_c"])
    except InputError as error:
        yield Verdict(f"Its gauge {gauge} cannot be read: {error.message}.", about=wire.number)
        return
    least = volts * (1 - tolerance)
    arrives = least - drop_v(run, draws, ohm_per_km.resistance_ohm_per_km)
    if arrives < low - 1e-9:
        yield Verdict(
            f"After {run:g} m of {gauge} {arrives:.2f} V of {least:.2f} V arrive; the unit needs {low:g} V, short by "
            f"{low - arrives:.2f} V.",
            values={"arrives_v": arrives, "needed_v": low, "short_v": low - arrives, "run_m": run},
            about=wire.number,
        )


RULE = Rule(
    id="supply-drop",
    title="Voltage at the end of the wire",
    discipline="power",
    severity="error",
    basis="Vd = 2 L I R'; resistivity 1/58 at 20 C (IEC 60028), stranding factor 1.02 common practice",
    cure="Take a thicker wire, a nearer supply, or a unit that takes a higher voltage.",
    judge=_judge,
    slot="power",
    limits=(
        Limit(
            "temperature_c",
            30.0,
            "Temperature of the conductor.",
            "common practice; 75 C is NEC Table 8",
            unit="C",
            low=-40.0,
            high=105.0,
        ),
    ),
)

"""The cabinet of a supply and the limiter of a circuit that a person has chosen, held against what they take."""

from dataclasses import replace

from hwsched.attributes.of_parts import BATTERIES, BATTERY_AH, CAPACITY_AH, FORM, RATING_A
from hwsched.values import Catalogue, Part
from hwsched.values.power import Circuit, Problem, Supply

_SAME_A = 1e-6


def cabinet_problems(supply: Supply, battery: Part | None, catalogue: Catalogue) -> list[Problem]:
    """Say why the chosen cabinet cannot be that of its supply, or what is missing to know it."""
    if not supply.cabinet:
        return []
    part, whose = catalogue.get(supply.cabinet), f"the cabinet of {supply.name}"
    if part is None or part.text_of(FORM) != "cabinet":
        what = "is not in the catalogue" if part is None else "is no cabinet"
        return [Problem("mismatch", f"{supply.cabinet}, {whose}, {what}", about=supply.cabinet)]
    count = (supply.batteries or 1) if supply.battery else 0
    if not count:
        return []
    room, largest = part.number_of(BATTERIES), part.number_of(BATTERY_AH)
    capacity = battery.number_of(CAPACITY_AH) if battery is not None else None
    if (room is not None and room < count) or (
        capacity is not None and largest is not None and largest < capacity - _SAME_A
    ):
        has = f"{room or 0:g} of {largest:g} Ah" if largest is not None else f"{room or 0:g}"
        wanted = f"{count} × {supply.battery}" + (f" of {capacity:g} Ah" if capacity is not None else "")
        text = f"{part.number}, {whose}, takes {has} at the most, and {wanted} stand in it"
        return [Problem("mismatch", text, about=part.number)]
    if room is None or largest is None:
        fact = f"part {part.number}.{'batteries' if room is None else 'battery_ah'}"
        return [Problem("unknown", f"whether {part.number}, {whose}, takes its batteries is unknown", (fact,),
                        about=part.number)]  # fmt: skip
    return []


def chosen_limiter(circuit: Circuit, catalogue: Catalogue) -> tuple[Circuit, Problem | None]:
    """Return a circuit with the rating of its chosen limiter, and why that cannot be its limiter."""
    part = catalogue.get(circuit.limiter) if circuit.limiter else None
    rating = part.number_of(RATING_A) if part is not None and part.kind == "limiter" else None
    who = f"{circuit.limiter}, the limiter of circuit {circuit.name},"
    if part is None or part.kind != "limiter":
        what = "is not in the catalogue" if part is None else f"is no limiter but of the kind {part.kind}"
        return circuit, Problem("mismatch", f"{who} {what}", about=circuit.limiter or "")
    if circuit.limiter_a is None:
        return replace(circuit, limiter_a=rating), None
    if rating is not None and abs(rating - circuit.limiter_a) > _SAME_A:
        text = f"{who} is one of {rating:g} A, and {circuit.limiter_a:g} A are stated"
        return circuit, Problem("mismatch", text, about=part.number)
    return circuit, None

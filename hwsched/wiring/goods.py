"""The bill of what is laid: what feeds the openings, as goods to order and pick; and what is licensed work instead.

Every list that counts supplies, cabinets, standby batteries, limiters, transfers, boxes, wire or raceway reads it here.
What it costs stands in `costing`; how wire is cut in `take_off`.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Final, Literal

from hwsched.attributes.of_parts import (
    BATTERIES,
    BATTERY_AH,
    CABINET,
    CAPACITY_AH,
    CONDUCTORS,
    FORM,
    INPUT,
    OWN_LIMITER_A,
    OWN_LIMITERS,
    RATING_A,
)
from hwsched.calc.parts.cost import exact
from hwsched.calc.power.circuit_tree import SUPPLY
from hwsched.calc.power.supply_practice import wire_waste
from hwsched.fitting.costing import order_of
from hwsched.fitting.order_units import held_by, lacking, price_told
from hwsched.quantities.money import product
from hwsched.values import Catalogue, Part, PointFit
from hwsched.values.power import CircuitResult, SupplyResult
from hwsched.wiring.take_off import WireLine, wire_lines

GoodsRole = Literal[
    "supply", "cabinet", "standby-battery", "limiter", "power-transfer", "junction-box", "wire", "raceway"
]
ROLES: Final[Mapping[GoodsRole, str]] = {
    "supply": "power supply",
    "cabinet": "cabinet",
    "standby-battery": "standby battery",
    "limiter": "fuse or limiter",
    "power-transfer": "power transfer",
    "junction-box": "junction box",
    "wire": "wire",
    "raceway": "surface raceway",
}
"""In the order in which lists show them."""
_OF_OPENING: Final[tuple[GoodsRole, ...]] = ("supply", "standby-battery", "power-transfer")
"""What an opening brings by the piece; its wire and raceway are cut with those of its building."""
_PLUS_AND_MINUS: Final = 2
_UNKNOWN_LENGTH: Final = ("run.length_m", "run.wire", "run.stranding")
_SAME_A: Final = 1e-6


@dataclass(frozen=True, slots=True)
class Goods:
    """One line: so many of one part at one place, and what for."""

    role: GoodsRole
    building: str
    level: str
    """Empty for wire and raceway: they are cut for the whole building."""
    part: str
    """Catalogue number; empty where none is chosen yet."""
    quantity: Decimal
    """Pieces; of wire and raceway order units: reels, bars, feet, metres."""
    text: str
    """What for, and where; of wire its conductor."""
    supply_id: str = ""
    """The supply with which it is put up; empty where it belongs to openings alone."""
    opening_ids: tuple[str, ...] = ()
    needs: tuple[str, ...] = ()
    """What is missing to order it."""
    line: WireLine | None = None
    """Of wire and raceway: how they are cut."""


@dataclass(frozen=True, slots=True)
class LicensedWork:
    """What somebody with a licence does and brings: no part of ours."""

    building: str
    level: str
    place: str
    supply: str
    supply_id: str
    text: str
    needs: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class Bill:
    """All that is needed for what is laid."""

    goods: tuple[Goods, ...] = ()
    licensed: tuple[LicensedWork, ...] = ()

    @property
    def wires(self) -> tuple[WireLine, ...]:
        """Wire and raceway as they are cut."""
        return tuple(each.line for each in self.goods if each.line is not None)

    @property
    def needs(self) -> tuple[str, ...]:
        """What is missing to order all of it."""
        told = [*(each.needs for each in self.goods), *(each.needs for each in self.licensed)]
        return tuple(dict.fromkeys(need for needs in told for need in needs))


def laid(supply: SupplyResult) -> bool:
    """Tell whether a supply is put up: one on which nothing hangs is a place where one may stand."""
    return any(circuit.openings or circuit.runs or circuit.unsolved_runs for circuit in supply.circuits)


def bill_of(supplies: Iterable[SupplyResult], openings: Iterable[Sequence[PointFit]], catalogue: Catalogue) -> Bill:
    """Add up what is laid.

    Parameters
    ----------
    supplies : iterable of SupplyResult
        Those that are put up are taken; see `laid`.
    openings : iterable of sequence of PointFit
        Lock points of each opening, with their fits; those that are fitted bring what carries power onto the leaf, and
        a supply of their own where they hang on no circuit.
    catalogue : Catalogue
        Where cabinets, limiters and boxes are taken from: the cheapest that suits, of equal ones the first by number.
    """
    put_up = [each for each in supplies if laid(each)]
    known = [points for points in openings if points]
    places = {points[0].given.opening.id: points[0].given.opening for points in known}
    # One lock point without a fit leaves out the whole opening: half of it would be taken for all.
    doors = [points for points in known if all(at.fit is not None and at.fit.status == "fits" for at in points)]
    goods: list[Goods] = []
    licensed: list[LicensedWork] = []
    for supply in put_up:
        goods += _of_supply(supply, catalogue)
        licensed.append(_mains(supply, catalogue))
        goods += boxes(supply, catalogue, {id_: (at.building, at.level) for id_, at in places.items()})
    for points in doors:
        found, work = _of_opening(points, catalogue)
        goods += found
        licensed += work
    goods += [_ordered(line, catalogue) for line in wire_lines(put_up, catalogue, doors)]
    goods += _unknown_wire(put_up)
    order = list(ROLES)
    return Bill(tuple(sorted(goods, key=lambda each: (each.building, order.index(each.role)))), tuple(licensed))


def _of_supply(result: SupplyResult, catalogue: Catalogue) -> list[Goods]:
    supply = result.supply
    building, level = supply.building or "", supply.level or ""
    part = catalogue.get(supply.part) if supply.part else None

    def goods(role: GoodsRole, number: str, quantity: int, text: str, needs: tuple[str, ...] = ()) -> Goods:
        return Goods(role, building, level, number, Decimal(quantity), text, supply.id, (), needs)

    where = f" at {supply.place}" if supply.place else ""
    found = [goods("supply", supply.part or "", 1, f"{supply.name}{where}", () if supply.part else ("supply.part",))]
    count = supply.batteries or 1
    if supply.battery:
        series = f", {count} in series" if count > 1 else ""
        found.append(goods("standby-battery", supply.battery, count, f"for {supply.name}{series}"))
    elif supply.standby_hours:
        text = f"for {supply.name}: {supply.standby_hours:g} h of standby are asked, and none is laid"
        found.append(goods("standby-battery", "", 0, text, ("supply.battery",)))
    housing = part.text_of(CABINET) if part is not None else None
    # One that a person has chosen is ordered, whatever the supply comes in.
    housing = "bare" if supply.cabinet and part is not None else housing
    if housing != "included" and part is not None:
        battery = catalogue.get(supply.battery) if supply.battery else None
        held = f"{count} × {supply.battery}" if supply.battery else ""
        text = f"for {supply.name}" + (f" with {held}" if held else "")
        if housing is None:
            found.append(goods("cabinet", "", 0, text, (f"part {part.number}.cabinet",)))
        else:
            number, needs = (
                (supply.cabinet, ()) if supply.cabinet else _cabinet(catalogue, count if supply.battery else 0, battery)
            )
            found.append(goods("cabinet", number, 1, text, needs))
    found += _limiters(result, part, catalogue, building, level)
    return found


def _cabinet(catalogue: Catalogue, batteries: int, battery: Part | None) -> tuple[str, tuple[str, ...]]:
    """Return the cheapest cabinet that takes supply and batteries, or what is missing to take one."""
    capacity = battery.number_of(CAPACITY_AH) if battery is not None else None
    if batteries and capacity is None:
        return "", ("supply.battery",)
    suited: list[Part] = []
    unsaid: list[str] = []
    for part in catalogue.of_kind("enclosure"):
        if part.text_of(FORM) != "cabinet":
            continue
        room, largest = part.number_of(BATTERIES), part.number_of(BATTERY_AH)
        if not batteries:
            suited.append(part)
        elif room is None or (room >= batteries and largest is None):
            unsaid.append(f"part {part.number}.{'batteries' if room is None else 'battery_ah'}")
        elif room >= batteries and capacity is not None and largest is not None and largest >= capacity - _SAME_A:
            suited.append(part)
    if suited:
        return _cheapest(suited), ()
    held = f" for {batteries} × {capacity:g} Ah" if batteries and capacity is not None else ""
    return "", (*unsaid[:1],) or (f"a cabinet{held} in the catalogue",)


def _limiters(result: SupplyResult, part: Part | None, catalogue: Catalogue, building: str, level: str) -> list[Goods]:
    """Return a fuse or limiter for each circuit that the supply does not limit itself."""
    own_a = part.number_of(OWN_LIMITER_A) if part is not None else None
    own = round((part.number_of(OWN_LIMITERS) or 0) if part is not None else 0)
    found = []
    for circuit in result.circuits:
        if not (circuit.openings or circuit.runs or circuit.unsolved_runs):
            continue
        name = f"{result.supply.name}/{circuit.circuit.name}"
        laid_a = circuit.circuit.limiter_a
        needs: tuple[str, ...] = ()
        number = ""
        if circuit.circuit.limiter:
            # Chosen by a person: it is ordered though the supply would limit the circuit itself.
            number = circuit.circuit.limiter
            text = f"circuit {name}" + ("" if laid_a is None else f", {laid_a:g} A")
        elif laid_a is None:
            proposed = "" if circuit.limiter_a is None else f"; {circuit.limiter_a:g} A would do"
            text, needs = f"circuit {name}: none is laid{proposed}", ("circuit.limiter_a",)
        elif own > 0 and part is not None and own_a is None:
            # Whether one of its outputs suits is not known: neither is one ordered in silence nor left out.
            text, needs = f"circuit {name}, {laid_a:g} A", (f"part {part.number}.own_limiter_a",)
        elif own > 0 and own_a is not None and abs(own_a - laid_a) < _SAME_A:
            # An output of the supply limits it: nothing is ordered.
            own -= 1
            continue
        else:
            text = f"circuit {name}, {laid_a:g} A"
            suited = [
                each
                for each in catalogue.of_kind("limiter")
                if abs((each.number_of(RATING_A) or 0.0) - laid_a) < _SAME_A
            ]
            number = _cheapest(suited)
            needs = () if number else (f"a limiter of {laid_a:g} A in the catalogue",)
        found.append(Goods("limiter", building, level, number, Decimal(1), text, result.supply.id, (), needs))
    return found


def boxes(
    result: SupplyResult, catalogue: Catalogue, places: Mapping[str, tuple[str | None, str | None]]
) -> list[Goods]:
    """Return a box at every place where runs meet; at the supply the terminals are its own."""
    supply = result.supply
    found = []
    for circuit in result.circuits:
        for node, (name, runs, wires) in _joints(circuit).items():
            if node == SUPPLY or runs < _PLUS_AND_MINUS:
                continue
            opening = node in circuit.openings
            # What hangs at the opening itself is joined there too.
            wires += _PLUS_AND_MINUS if opening else 0
            at = places.get(node) or (supply.building, supply.level)
            number, needs = _box(catalogue, wires)
            text = f"at {name} on {supply.name}/{circuit.circuit.name}, {wires} conductors"
            found.append(
                Goods(
                    "junction-box", at[0] or "", at[1] or "", number, Decimal(1), text, supply.id,
                    (node,) if opening else (), needs,
                )
            )  # fmt: skip
    return found


def _box(catalogue: Catalogue, wires: int) -> tuple[str, tuple[str, ...]]:
    """Return the cheapest box that joins so many conductors, or what is missing to take one."""
    every = [each for each in catalogue.of_kind("enclosure") if each.text_of(FORM) == "junction-box"]
    joins = {each.number: each.number_of(CONDUCTORS) for each in every}
    number = _cheapest([each for each in every if (joins[each.number] or 0) >= wires])
    if number:
        return number, ()
    unsaid = tuple(f"part {each}.conductors" for each, joined in joins.items() if joined is None)
    return "", unsaid[:1] or (f"a junction box for {wires} conductors in the catalogue",)


def _joints(circuit: CircuitResult) -> dict[str, tuple[str, int, int]]:
    """Return name, runs and conductors that end at each node."""
    found: dict[str, tuple[str, int, int]] = {}
    for run in (*circuit.runs, *circuit.unsolved_runs):
        if run.transfer:
            continue
        for node, name in ((run.from_node, run.from_name), (run.to_node, run.to_name)):
            _, runs, wires = found.get(node, (name, 0, 0))
            found[node] = name, runs + 1, wires + _PLUS_AND_MINUS * run.parallel
    return found


def _of_opening(points: Sequence[PointFit], catalogue: Catalogue) -> tuple[list[Goods], list[LicensedWork]]:
    opening = points[0].given.opening
    building, level = opening.building or "", opening.level or ""
    goods: list[Goods] = []
    licensed: list[LicensedWork] = []
    for at in points:
        for part in at.fit.parts if at.fit is not None else ():
            if part.role not in _OF_OPENING:
                continue
            quantity = exact(part.quantity, f"quantity of {part.part}")
            goods.append(Goods(part.role, building, level, part.part, quantity, opening.mark, "", (opening.id,)))
            entry = catalogue.get(part.part)
            if part.role == "supply" and entry is not None:
                licensed.append(LicensedWork(building, level, "", opening.mark, "", *_feed(entry)))
                if entry.text_of(CABINET) != "included":
                    goods.append(_own_cabinet(entry, catalogue, building, level, opening.mark, opening.id))
    return goods, licensed


def _own_cabinet(entry: Part, catalogue: Catalogue, building: str, level: str, mark: str, opening_id: str) -> Goods:
    needs: tuple[str, ...] = (f"part {entry.number}.cabinet",)
    number, quantity = "", 0
    if entry.text_of(CABINET) is not None:
        (number, needs), quantity = _cabinet(catalogue, 0, None), 1
    text = f"for the supply of {mark}"
    return Goods("cabinet", building, level, number, Decimal(quantity), text, "", (opening_id,), needs)


def _mains(result: SupplyResult, catalogue: Catalogue) -> LicensedWork:
    supply = result.supply
    part = catalogue.get(supply.part) if supply.part else None
    text, needs = (
        ("how it is fed is unknown: no power supply is chosen", ("supply.part",)) if part is None else _feed(part)
    )
    return LicensedWork(
        supply.building or "", supply.level or "", supply.place or "", supply.name, supply.id, text, needs
    )


def _feed(part: Part) -> tuple[str, tuple[str, ...]]:
    """Say what feeds a supply, which is not ours to bring."""
    told = part.text_of(INPUT)
    if told is None:
        return f"how {part.number} is fed is unknown", (f"part {part.number}.input",)
    if told == "poe":
        return (
            f"a network port with power for {part.number}, as its plate asks, and the cable to it: by whoever keeps "
            "the network",
            (),
        )
    return (
        f"mains for {part.number}: branch circuit with its protection, means of disconnecting, earthing or bonding, "
        "and the connection, as its plate and the code in force ask",
        (),
    )


def _ordered(line: WireLine, catalogue: Catalogue) -> Goods:
    """Turn a wire or raceway into what is ordered of it."""
    # To the millimetre: a sum of metres in binary has digits that nobody laid.
    laid_m = exact(round(line.length_m, 3), "length of wire")
    needed = product(laid_m, exact(wire_waste(), "waste")) + exact(round(line.leaf_m, 3), "length of wire")
    part = catalogue.get(line.part) if line.part else None
    named = f"{line.gauge} {line.stranding}".strip()
    needs: tuple[str, ...] = ()
    quantity = needed
    if part is None:
        needs = (f"{line.part} in the catalogue",) if line.part else ("run.wire",)
    else:
        held = held_by(part)
        needs = (lacking(part),) if held is None else ()
        # Whole reels as they are cut; of feet, and of a reel of which only the order unit is told, as many as it takes.
        units = line.reels if held is not None and held > 1 else None
        quantity = exact(order_of(part.number, needed, catalogue, units).quantity, "quantity")
    ids = tuple(dict.fromkeys(piece.opening_id for piece in line.pieces if piece.opening_id))
    return Goods(line.kind, line.building, "", line.part, quantity, named, "", ids, needs, line)


def _unknown_wire(supplies: Iterable[SupplyResult]) -> list[Goods]:
    """Say by building what is missing to know how much wire is laid: no number can stand for it."""
    found: dict[str, dict[str, None]] = {}
    for supply in supplies:
        told = (problem for circuit in supply.circuits for problem in circuit.problems if problem.kind == "unknown")
        needs = [need for problem in told for need in problem.needs if need in _UNKNOWN_LENGTH]
        if needs:
            found.setdefault(supply.supply.building or "", {}).update(dict.fromkeys(needs))
    return [
        Goods("wire", building, "", "", Decimal(0), "runs that are not known", needs=tuple(needs))
        for building, needs in found.items()
    ]


def _cheapest(parts: Sequence[Part]) -> str:
    """Return the number of the cheapest; those without a price come last, of equal ones the first by number."""
    # Prices in two currencies cannot be laid side by side without a rate.
    alike = len({part.currency for part in parts if part.list_price is not None}) <= 1

    def key(part: Part) -> tuple[bool, Decimal, str]:
        price = price_told(part) if alike else None
        return price is None, price or Decimal(0), part.number

    return min(parts, key=key).number if parts else ""

"""The power slot: batteries in the unit or a low-voltage supply elsewhere, every combination that there is.

Order among what passes: as wished, else by how busy the opening is; a pack that lasts as long as is asked before one
that does not; a Class 2 source before others; then as the project prefers (price, holes, stock). Whether one passes is
said by the rules of the slot.
"""

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, fields, replace
from functools import partial
from heapq import heappop, heappush
from math import inf
from typing import Final

from hwsched.attributes.of_parts import (
    CELL,
    CELLS,
    CLASS_2,
    COIN_CELL,
    DESIGNATION,
    GAUGE,
    LENGTH_MM,
    STRANDING,
    SUPPLY_A,
    SUPPLY_HIGH_V,
    SUPPLY_LOW_V,
)
from hwsched.calc.calculator import InputError
from hwsched.calc.power.conductor import conductor
from hwsched.calc.power.supply_practice import wire_waste
from hwsched.fitting.across import ways_across
from hwsched.fitting.candidate import (
    Judged,
    by_hand,
    cheapest,
    chosen_by,
    fit_part,
    judged,
    missing_for_better,
    numbers_in,
    offered,
    rank_of,
    with_parts,
)
from hwsched.fitting.slots import Slots
from hwsched.rules import judge, limits_of, rule_named, rules_in_slot
from hwsched.rules.network import across_leaf
from hwsched.rules.network.own_circuit import route_m
from hwsched.rules.network.pack_life import pack_life
from hwsched.rules.network.wire_pieces import wire_pieces
from hwsched.rules.reading import (
    carries_power,
    electric_release,
    in_role,
    leafless,
    lock_leaf,
    shared_supply,
    unit_part,
)
from hwsched.rules.rule import OpeningRule
from hwsched.values import BatteryLife, Fit, FitPart, Leaf, OpeningInput, Part, Role

_BUSY_ON_SUPPLY: Final = rule_named("busy-on-supply")
_BATTERY_LIFE: Final = rule_named("battery-life")
_SUPPLY_DROP: Final = rule_named("supply-drop")
_SUPPLY_SHARE: Final = rule_named("supply-share")
_BY_PLACE: Final = frozenset(("wire-across-leaf", "way-clear"))
"""Rules of the slot that ask where on the leaf a unit stands; no other one does."""
_OF_SUPPLY: Final = (rule_named("supply-voltage"), _SUPPLY_SHARE)
_OF_WIRE: Final = (rule_named("wire-conductors"),)
_OF_PACK: Final = tuple(rule for rule in rules_in_slot("power") if not rule.each_anew)
"""What is asked of a pack whatever the duty is: the others only warn, and refuse nothing."""
_OF_HAND: Final[tuple[Role, ...]] = ("unit", "battery", "supply", "power-transfer", "wire")
"""Roles of which a person's choice is kept and judged as it is."""
_OF_TRANSFER: Final = (rule_named("power-crosses-hinge"), rule_named("rated-power-listed"))


@dataclass(frozen=True, slots=True)
class PowerSlot:
    """The ways to feed a unit."""

    ways: tuple[Judged, ...]
    """One a source, the best that passes before the others; of a source that nothing passes its nearest miss."""
    needs: tuple[str, ...] = ()
    """Facts of the survey without which a better way than the one that passes can be neither taken nor refused."""
    by_place: bool = False
    """Whether a way that was tried is refused for nothing but the place of the unit: at another one it may pass."""


@dataclass(frozen=True, slots=True)
class _Best:
    """The best way of one source."""

    way: Judged
    needs: tuple[str, ...] = ()
    """Facts without which a better one can be neither taken nor refused."""
    by_place: bool = False
    beside: Judged | None = None
    """What is refused beside one that waits for a fact, with its reasons."""


def power_slot(base: Fit, slots: Slots) -> PowerSlot:
    """Judge the ways to feed the unit, the best first; as far as others asked before, with their answers."""
    given = slots.given
    unit = unit_part(given, base)
    if unit is None:
        return PowerSlot(())
    found: list[Judged] = []
    needs: tuple[str, ...] = ()
    by_place = False
    for source in _sources(given):
        # Sources come in the order of preference: what passes whole is not passed over for the next. Without a route no
        # supply can pass, and then nothing hangs on how long a pack has to last.
        good = [each for each in found if each.good]
        if good and (not _reachable(given) or not all(short_lived(given, each.fit) for each in good)):
            break
        if source == "battery":
            best = _by_battery(given, unit, slots.of("battery", base, partial(_packs, base=base, unit=unit)))
        else:
            best = slots.of("supply", base, partial(_by_supply, base=base, unit=unit))
        found += [best.way] if best.beside is None else [best.way, best.beside]
        by_place = by_place or best.by_place
        needs = needs or (best.needs if best.way.good and found[0] is best.way else ())
    # Stable: of two whose packs last long enough, or of which none has one that does, the preferred stays before.
    if len(found) > 1:
        found.sort(key=lambda each: (not each.good, short_lived(given, each.fit)))
    return PowerSlot(tuple(found), needs, by_place)


def _by_battery(given: OpeningInput, unit: Part, packs: Sequence[Judged]) -> _Best:
    # How busy it is changes how long each pack lasts and nothing else: no other opening has that answer.
    found = [replace(each, fit=replace(each.fit, battery=_life_of(given, unit, each.fit))) for each in packs]
    if len(found) > 1:
        found.sort(key=lambda each: short_lived(given, each.fit))
    return _best(given, found)


def _by_supply(slots: Slots, base: Fit, unit: Part) -> _Best:
    given, leaf = slots.given, lock_leaf(slots.given)
    best = _tried(given, base, unit)
    of_hand = any(by_hand(given, role) for role in _OF_HAND)
    if best.way.refusals and leaf is not None and leaf.raceway is None and not leafless(given) and not of_hand:
        # Nobody told whether the leaf has a way for the wire: asked only where none can be made, and it would serve.
        prepared = Leaf(**{each.name: getattr(leaf, each.name) for each in fields(Leaf)} | {"raceway": True})
        with_way = replace(given, leaves=tuple(prepared if each is leaf else each for each in given.leaves))
        there = _tried(with_way, base, unit).way
        if not there.refusals:
            waiting = replace(best.way, refusals=(), needs=("leaf.raceway", *there.needs))
            return replace(best, way=waiting, beside=best.way)
    return best


def _tried(given: OpeningInput, base: Fit, unit: Part) -> _Best:
    partials = _supplies(given, with_parts(base, *_strikes(given)), unit)
    return _best(given, (judged(given, each, "power", unit.number, "supply") for each in partials))


def _reachable(given: OpeningInput) -> bool:
    return given.supply_link is not None or route_m(given) is not None or shared_supply(given) is not None


def short_lived(given: OpeningInput, fit: Fit) -> bool:
    """Tell whether the pack of a fit lasts less than the project asks: a person would have to accept that."""
    life = fit.battery
    return life is not None and life.days < limits_of(_BATTERY_LIFE, given.settings)["days"]


def _best(given: OpeningInput, tried: Iterable[Judged]) -> _Best:
    """Return the first combination that passes, else what is nearest; and what is missing to know of a better one."""
    before: list[Judged] = []
    for found in tried:
        if found.good:
            return _Best(found, missing_for_better(given, (found,), before))
        before.append(found)
    lacking = [each for each in before if each.lacking]
    by_place = any(_only_by_place(given, each) for each in before)
    if lacking:
        # What lacks least: asking for the facts of all would send the surveyor for what never comes into question.
        return _Best(min(lacking, key=lambda each: (len(each.needs), each.needs)), by_place=by_place)
    return _Best(min(before, key=_short_of), by_place=by_place)


def _only_by_place(given: OpeningInput, found: Judged) -> bool:
    """Tell whether nothing refuses a way that another place of the unit would not change."""
    hanging = set(_BY_PLACE)
    if across_leaf.goes_round(given, found.fit):
        # The way round a panel is as long as the unit stands high, and so is what is lost on it.
        hanging.add(_SUPPLY_DROP.id)
    return all(refusal.rule in hanging for refusal in found.refusals)


def _short_of(found: Judged) -> tuple[int, float, float]:
    volts = [refusal.values.get("short_v", inf) for refusal in found.refusals]
    return *found.miss(), max(volts, default=inf)


def undecided(given: OpeningInput) -> tuple[str, ...]:
    """Name what is missing to choose between batteries and a supply."""
    if (
        given.supply_link is not None
        or given.opening.power_wish in ("battery", "supply")
        or by_hand(given, "battery")
        or by_hand(given, "supply")
    ):
        return ()
    # How busy it is decides between batteries and a supply; taken as idle, every unknown opening would get batteries.
    if given.opening.operations_per_day is None and not electric_release(given):
        return ("opening.operations_per_day",)
    return ()


def _sources(given: OpeningInput) -> tuple[str, ...]:
    wish = given.opening.power_wish
    if given.supply_link is not None or by_hand(given, "supply"):
        return ("supply",)
    if by_hand(given, "battery"):
        return ("battery",)
    if wish in ("battery", "supply"):
        return (wish,)
    most = limits_of(_BUSY_ON_SUPPLY, given.settings)["operations"]
    # An electric release is fed from a supply in any case.
    if (given.opening.operations_per_day or 0.0) > most or electric_release(given):
        return ("supply", "battery")
    return ("battery", "supply")


# --- batteries ----------------------------------------------------------------------------------------------------


def _packs(slots: Slots, base: Fit, unit: Part) -> tuple[Judged, ...]:
    """Judge the packs of every cell that may go into the unit, the best first; how long they last is not asked."""
    given = slots.given
    cell, count = unit.text_of(CELL), unit.number_of(CELLS)
    bare = replace(with_parts(base, *_strikes(given)), power="battery", battery=None)
    stock = offered(given, "battery", "primary-battery")
    right = [part for part in stock if by_hand(given, "battery") or part.text_of(DESIGNATION) == cell]
    coin = _coin(given, unit)
    found: list[Fit] = []
    if cell and count is not None and count > 0:
        why = f"the unit takes {count:g} cells {cell} in series"
        taken = right[:1] if by_hand(given, "battery") else right
        found = [with_parts(bare, fit_part(given, "battery", part, why, count), *coin) for part in taken]
    if len(found) > 1:
        found.sort(key=lambda fit: (*rank_of(given, fit), numbers_in(fit)))
    tried = found or [with_parts(bare, *coin)]
    return tuple(judged(given, fit, "power", unit.number, "battery", rules=_OF_PACK) for fit in tried)


def _coin(given: OpeningInput, unit: Part) -> list[FitPart]:
    coin = unit.text_of(COIN_CELL)
    stocked = cheapest(given, [p for p in offered(given, "coin-cell", "coin-cell") if p.text_of(DESIGNATION) == coin])
    return [fit_part(given, "coin-cell", stocked, "keeps the unit's clock and memory")] if coin and stocked else []


def _life_of(given: OpeningInput, unit: Part, fit: Fit) -> BatteryLife | None:
    cell = in_role(given, fit, "battery")
    try:
        return pack_life(given, unit, cell) if cell is not None else None
    except InputError:
        # The rule on the pack's life asks the same, and says what contradicts itself.
        return None


# --- supply -------------------------------------------------------------------------------------------------------


def _supplies(given: OpeningInput, base: Fit, unit: Part) -> Iterator[Fit]:
    """Yield the combinations of supply, wire, transfer and way across the leaf, the best first."""
    connected = replace(base, power="supply", battery=None)
    if any(unit.number_of(name) is None for name in (SUPPLY_LOW_V, SUPPLY_HIGH_V, SUPPLY_A)):
        yield connected
        return
    shared = shared_supply(given)
    if given.supply_link is not None or (shared is not None and not by_hand(given, "supply")):
        # Supply and run belong to the circuit, or to an earlier lock point: counted once for all that hang there.
        for each in _ordered(given, _on_leaf(given, connected, unit, own=False)):
            if given.supply_link is not None or not any(
                judge(rule, given, each, settings=given.settings) for rule in (_SUPPLY_SHARE, _SUPPLY_DROP)
            ):
                yield each
        if given.supply_link is not None:
            return
    stock = offered(given, "supply", "power-supply")
    sources = _passing(given, connected, "supply", stock[:1] if by_hand(given, "supply") else stock, _OF_SUPPLY)
    if not sources:
        yield from _ordered(given, _on_leaf(given, connected, unit, own=False))
        return
    rests = _ordered(given, _on_leaf(given, connected, unit, own=True))
    best = _losing_least(given, rests)
    # A supply over whose best way too little arrives has no way at all: it is named as it falls short there.
    near = {source.number: _from(given, connected, unit, source, best) for source in sources}
    live = [source for source in sources if not _falls_short(given, near[source.number])]
    yield from _merged(given, connected, unit, live, rests) if live else near.values()


def _from(given: OpeningInput, connected: Fit, unit: Part, source: Part, rest: Fit) -> Fit:
    """Put a supply in front of what leads from it."""
    held = len(connected.parts)
    front = fit_part(given, "supply", source, _why(given, unit))
    return replace(rest, parts=(*rest.parts[:held], front, *rest.parts[held:]))


def _merged(
    given: OpeningInput, connected: Fit, unit: Part, sources: Sequence[Part], rests: Sequence[Fit]
) -> Iterator[Fit]:
    """Yield supplies with what leads from them, the best combination first, each made when it is asked for.

    What ranks a fit is a sum over its parts: with supplies and rests each in their own order the next best is beside
    one that was taken.
    """

    def key(source: Part, fit: Fit) -> tuple[object, ...]:
        # With another source than Class 2 the wiring of the door is no longer that of a power-limited circuit.
        return not source.flag_of(CLASS_2), *rank_of(given, fit), numbers_in(fit)

    ranked = sorted(sources, key=lambda source: key(source, _from(given, connected, unit, source, rests[0])))
    if not _reachable(given):
        # None can pass, and what is missing is missing of each.
        ranked = ranked[:1]

    def at(i: int, j: int) -> tuple[tuple[object, ...], int, int, Fit]:
        fit = _from(given, connected, unit, ranked[i], rests[j])
        return key(ranked[i], fit), i, j, fit

    waiting, seen = [at(0, 0)], {(0, 0)}
    while waiting:
        _, i, j, fit = heappop(waiting)
        yield fit
        for beside in ((i + 1, j), (i, j + 1)):
            if beside not in seen and beside[0] < len(ranked) and beside[1] < len(rests):
                seen.add(beside)
                heappush(waiting, at(*beside))


def _ordered(given: OpeningInput, found: Iterable[Fit]) -> list[Fit]:
    return sorted(found, key=lambda fit: (*rank_of(given, fit), numbers_in(fit)))


def _on_leaf(given: OpeningInput, connected: Fit, unit: Part, *, own: bool) -> Iterator[Fit]:
    """Yield every transfer, wire and way across the leaf that may go together."""
    coin = _coin(given, unit)
    wires: list[Part | None] = [*_wires(given, connected, own=own)]
    for transfer in _transfers(given, connected):
        held = connected
        if transfer is not None:
            held = with_parts(
                held, fit_part(given, "power-transfer", transfer, "carries the supply from the frame onto the leaf")
            )
        for wire in wires or [None]:
            for way in ways_across(given, held, wire):
                yield with_parts(_with_wire(given, way, wire, transfer, own=own), *coin)


def _losing_least(given: OpeningInput, rests: Sequence[Fit]) -> Fit:
    """Return the way of the thickest wire, among these that over the least resistance onto the leaf."""

    def lost(fit: Fit) -> tuple[float, float]:
        wire, transfer = in_role(given, fit, "wire"), in_role(given, fit, "power-transfer")
        way = across_leaf.standing(given, fit)
        over = (transfer.number_of(LENGTH_MM) or 0.0) / 1000 * _ohm_per_km(transfer) if transfer is not None else 0.0
        across = ((way.wire_m if way is not None else None) or 0.0) * (_ohm_per_km(wire) if wire is not None else 0.0)
        return _ohm_per_km(wire) if wire is not None else inf, over + across

    return min(rests, key=lost)


def _falls_short(given: OpeningInput, fit: Fit) -> bool:
    if _SUPPLY_DROP.id in given.settings.rules_off:
        return False
    return any(not verdict.needs for verdict in judge(_SUPPLY_DROP, given, fit, settings=given.settings))


def _why(given: OpeningInput, unit: Part) -> str:
    low, high, draws = (unit.number_of(name) for name in (SUPPLY_LOW_V, SUPPLY_HIGH_V, SUPPLY_A))
    share = limits_of(_SUPPLY_SHARE, given.settings)["share"]
    return f"the unit takes {low:g} to {high:g} V and {draws:g} A; {share:.0%} of the rating is used"


def _with_wire(given: OpeningInput, fit: Fit, wire: Part | None, transfer: Part | None, *, own: bool) -> Fit:
    """Add the wire for the run, the leaf and what the unit switches in the frame, with what is lost at the ends."""
    if wire is None:
        return fit
    terms = wire_pieces(given, fit, wire, transfer, own=own)
    if not terms:
        return fit
    waste = wire_waste()
    why = f"{'; '.join(each.text for each in terms)}; {waste - 1:.0%} allowance"
    # Two decimals, since a product of floats would show as 12.600000000000001 m on the order.
    return with_parts(fit, fit_part(given, "wire", wire, why, round(sum(each.length_m for each in terms) * waste, 2)))


def _transfers(given: OpeningInput, connected: Fit) -> list[Part | None]:
    if leafless(given) or (carries_power(given) and not by_hand(given, "power-transfer")):
        return [None]
    stock = offered(given, "power-transfer", "power-transfer")
    return [*_passing(given, connected, "power-transfer", stock, _OF_TRANSFER)] or [None]


def _wires(given: OpeningInput, connected: Fit, *, own: bool) -> list[Part]:
    # Without a route no run is reckoned; a wire that only lies on the leaf is wanted where there is a leaf.
    if route_m(given) is None if own else leafless(given):
        return []
    return _passing(given, connected, "wire", offered(given, "wire", "wire"), _OF_WIRE)


def _passing(
    given: OpeningInput, connected: Fit, role: Role, stock: Sequence[Part], rules: Sequence[OpeningRule]
) -> list[Part]:
    """Leave out parts against which some rules speak whatever goes with them; all where they speak against all."""
    off = given.settings.rules_off
    right = [
        part
        for part in stock
        # What a rule only lacks a fact for may still do.
        if all(
            verdict.needs
            for rule in rules
            if rule.id not in off
            for verdict in judge(
                rule, given, with_parts(connected, fit_part(given, role, part, "")), settings=given.settings
            )
        )
    ]
    # Where none passes the nearest is named all the same.
    return right or list(stock)


def _ohm_per_km(wire: Part) -> float:
    gauge = wire.text_of(GAUGE)
    if gauge is None:
        return inf
    try:
        return conductor(gauge, wire.text_of(STRANDING) or "stranded", 20.0).resistance_ohm_per_km
    except InputError:
        return inf


def _strikes(given: OpeningInput) -> list[FitPart]:
    """Return what was chosen by hand, or by the hardware set, to let go of the latch from the frame."""
    return [
        fit_part(given, "strike", part, chosen_by(given, "strike"), choice.quantity)
        for choice in given.chosen
        if choice.role == "strike" and (part := given.catalogue.get(choice.part)) is not None
    ]

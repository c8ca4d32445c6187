"""One plan of a building: its question put together, and every answer proved before it is shown.

Where a proof finds an opening low the supply is taken to give less, and it is planned again; what does not prove is
never told.
"""

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from math import isnan
from typing import Final

from hwsched.calc.calculator import InputError
from hwsched.calc.power.planning.question import (
    Drawn,
    NoPlanError,
    Plan,
    PlanOpening,
    PlanPlace,
    Question,
    Size,
)
from hwsched.model.errors import ValueRefusedError
from hwsched.operations.opening.fits_within import FitMemory
from hwsched.operations.opening.lock_points import point_results
from hwsched.operations.power.plan_reading import Prices, between_m, drawn_of, standing_of, warmth_of, wires_of
from hwsched.operations.power.planned_runs import Laying, laying_of, with_laying
from hwsched.operations.power.siting_reach import limiter_left_a
from hwsched.operations.power.supply_siting import (
    CIRCUIT_NAME,
    limiter_of,
    taken_a,
)
from hwsched.rules import limits_of, rule_named
from hwsched.rules.network.circuit_source import SolvingLimits
from hwsched.rules.network.devices import devices_at
from hwsched.values import Catalogue, Settings, SupplyLink
from hwsched.values.power import Circuit, PowerFacts, PowerResult, Route, Run, Supply
from hwsched.values.terms import CostTerms
from hwsched.wiring import ConnectedOpening, solve_supplies
from hwsched.wiring.distances import Heights, LaidWays, distance, laid_ways

_CIRCUIT_VOLTAGE: Final = rule_named("circuit-voltage")

_CIRCUIT_LIMITER: Final = rule_named("circuit-limiter")

_SHORTEST_M: Final = 0.1

_TOUCH_M: Final = 1e-6

_MORE_V: Final = 0.01
"""Beyond what the proof found short, by which a supply is taken to be lower when it is planned again."""

_MOST_TIMES: Final = 8
"""That a plan is proved and, where it does not prove, planned again."""


@dataclass(frozen=True, slots=True)
class Asked:
    """What a person asks for."""

    building: str
    circuit_id: str | None
    aim: str
    wire: str | None
    keep: tuple[str, ...]
    """Openings that stay as they are laid, beside those that are pinned."""


Solve = Callable[[Question], Plan]
"""Answers a question; raises NoPlanError, InputError."""


class BuildingPlanning:
    """One plan of a building with all that it is made from."""

    def __init__(
        self,
        facts: PowerFacts,
        supplies: Sequence[Supply],
        catalogue: Catalogue,
        settings: Settings,
        terms: CostTerms,
        heights: Heights,
        planned: Mapping[str, ConnectedOpening],
        before: PowerResult,
        asked: Asked,
        marks: Mapping[str, str],
        every: Mapping[str, ConnectedOpening],
        left_out: Sequence[str],
        fits: FitMemory,
    ) -> None:
        self.facts, self.supplies, self.catalogue, self.settings = facts, supplies, catalogue, settings
        self.heights, self.planned, self.before, self.asked = heights, planned, before, asked
        self.marks, self.every = marks, every
        self.left_out, self.assumed = list(left_out), list[str]()
        self.prices = Prices(catalogue, terms)
        limits = limits_of(_CIRCUIT_VOLTAGE, settings)
        margin = limits_of(_CIRCUIT_LIMITER, settings)["margin"]
        self.limits = SolvingLimits(limits["temperature_c"], round(limits["at_once"]), margin)
        self.onto = self._onto()
        self.pinned: dict[str, set[str]] = {opening: set() for opening in planned}
        """Supplies to which an opening is pinned."""
        for route in facts.routes:
            if route.pinned and route.opening_id in self.pinned:
                self.pinned[route.opening_id].add(route.supply_id)
        self.circuits = {circuit.id: circuit for circuit in facts.circuits}
        self.fits = fits
        self._linked: dict[tuple[str, str], ConnectedOpening] = {}
        self._kinds: dict[tuple[str, tuple[Drawn | None, ...]], str] = {}
        self.lower_v: dict[str, float] = {}
        """By how much less a supply is taken to have than its sheet says, from proofs that failed [V]."""

    def circuit_name(self, circuit_id: str) -> str:
        """Name a circuit with its supply."""
        circuit = self.circuits[circuit_id]
        return f"{next(s.name for s in self.facts.supplies if s.id == circuit.supply_id)}/{circuit.name}"

    def _onto(self) -> dict[str, str]:
        found = {c.supply_id: c.id for c in self.facts.circuits if c.name == CIRCUIT_NAME}
        own = next((c for c in self.facts.circuits if c.id == self.asked.circuit_id), None)
        return found if own is None else found | {own.supply_id: own.id}

    def proved(self, solve: Solve) -> tuple[Plan, Laying, PowerResult]:
        """Plan, prove, and plan again where a proof fails; raises ValueRefusedError where none is found."""
        own = None if self.asked.circuit_id is None else self.circuits[self.asked.circuit_id].supply_id
        try:
            return self._proved(solve, [s for s in self.supplies if own is None or s.id == own])
        except ValueRefusedError:
            if own is None or len(self.supplies) == 1:
                raise
        # On its own supply nothing cures the circuit: others may.
        self.lower_v.clear()
        return self._proved(solve, self.supplies)

    def _proved(self, solve: Solve, supplies: Sequence[Supply]) -> tuple[Plan, Laying, PowerResult]:
        parts = {supply.id: supply.part for supply in self.facts.supplies if supply.part is not None}
        said = ""
        for _ in range(_MOST_TIMES):
            question = self._question(supplies)
            try:
                plan = solve(question)
            except NoPlanError as error:
                why = self._named(error.message)
                raise ValueRefusedError("plan", f"{why}; {said}" if said else why) from error
            except InputError as error:
                raise ValueRefusedError("plan", self._named(error.message)) from error
            laying = laying_of(self.facts, plan, self.planned, self.onto, parts)
            after = self._after(plan, laying)
            said, short = self._short(after, laying)
            if not said:
                return _as_proved(plan, after), laying, after
            if not short:
                break
            for supply, volts in short.items():
                self.lower_v[supply] = self.lower_v.get(supply, 0.0) + volts + _MORE_V
        raise ValueRefusedError("plan", f"no plan was found that proves: {said}")

    def as_good(self, plan: Plan, laying: Laying) -> bool:
        """Tell whether what is laid proves, and has no more of what is aimed at than a plan."""
        if not laying.taken_up and not laying.runs:
            return not laying.parts
        if self.asked.aim == "most-margin" or any(o not in self.facts.connected() for o in self.planned):
            return False
        proofs = {proof.opening_id: proof.standing for supply in self.before.supplies for circuit in supply.circuits
                  for proof in circuit.proofs}  # fmt: skip
        if any(proofs.get(opening) != "proved" for opening in self.planned):
            return False
        used = {self.facts.connected()[opening].supply_id for opening in self.planned}
        free = {supply.id for supply in self.supplies if supply.use == "candidate"}
        if used & free or not set(plan.sizes) >= {s.id for s in self.supplies if s.use == "must"}:
            return False
        gone = set(laying.taken_up)
        laid = [run for run in self.facts.runs if run.id in gone]
        added_m = sum(run.length_m or 0.0 for run in laying.runs)
        if any(run.length_m is None for run in laid):
            return False
        if self.asked.aim == "least-wire":
            return sum(run.length_m or 0.0 for run in laid) <= added_m + _TOUCH_M
        if self.asked.aim == "fewest-supplies" and len(used) > plan.supplies:
            return False
        costs = [self._wire_cost(run) for run in laid]
        new = [self._wire_cost(run) for run in laying.runs]
        supplies = plan.cost - sum(leg.cost for leg in plan.legs)
        if any(cost is None for cost in (*costs, *new)):
            return False
        return sum(filter(None, costs)) <= sum(filter(None, new)) + supplies + _TOUCH_M

    def _wire_cost(self, run: Run) -> float | None:
        """Return what a run costs by the metre with its work; None where that is not known."""
        circuit = self.circuits.get(run.circuit_id)
        number = None if run.gauge is not None else run.wire or (circuit.wire if circuit is not None else None)
        wire = None if number is None else self.catalogue.get(number)
        if wire is None or run.length_m is None or (run.parallel or 1) != 1:
            return None
        cost, lacking, _ = self.prices.wire(wire.number)
        return None if lacking else cost * run.length_m

    def touched(self, laying: Laying) -> list[str]:
        """Return the supplies that a plan uses, and those from which it takes something."""
        gone = set(laying.taken_up)
        left = {self.circuits[run.circuit_id].supply_id for run in self.facts.runs if run.id in gone}
        return [s.id for s in self.facts.supplies if s.id in left or s.id in laying.used]

    def _after(self, plan: Plan, laying: Laying) -> PowerResult:
        touched = set(self.touched(laying))
        linked = {o: self.linked(o, plan.sizes[leg.place]) for leg in plan.legs for o in leg.openings}
        openings = {**self.every, **linked}

        def solved(facts: PowerFacts) -> PowerResult:
            return solve_supplies(facts, openings, self.catalogue, self.settings, touched)

        # The limiter that is laid with a new circuit is the one that carries it, known once it is worked out.
        first = solved(with_laying(self.facts, laying))
        limiters = {circuit.supply_id: limiter_of(first, circuit.supply_id) for circuit in laying.circuits}
        return solved(with_laying(self.facts, laying, limiters))

    def _short(self, after: PowerResult, laying: Laying) -> tuple[str, dict[str, float]]:
        """Say which openings are low or not proved, and by how much the planned ones of each supply are short."""
        short: dict[str, float] = {}
        said = []
        for supply in after.supplies:
            for circuit in supply.circuits:
                standing = {proof.opening_id: proof for proof in circuit.proofs}
                for opening, mark in zip(circuit.openings, circuit.marks, strict=True):
                    proof, mine = standing.get(opening), opening in self.planned
                    if proof is None or proof.standing == "proved" or (proof.standing == "not-proved" and not mine):
                        continue
                    node = circuit.node_of_devices(opening)
                    told = self._told(node.lowest_v if node else None, node.minimum_v if node else None, proof.why)
                    said.append(f"{mark} on {supply.supply.name}/{circuit.circuit.name} {told}")
                    room = node.margin_v if node is not None else None
                    lacking = -room if room is not None else 0.0
                    # Of what is kept nothing is changed by planning the others otherwise, save over its supply.
                    if supply.supply.id in laying.used:
                        short[supply.supply.id] = max(short.get(supply.supply.id, 0.0), lacking, 0.0)
        return ("low remains: " + "; ".join(said[:5]) if said else ""), short

    @staticmethod
    def _told(volts: float | None, needed: float | None, why: str) -> str:
        if volts is None or needed is None:
            return why or "has no solution"
        return f"finds {volts:.2f} V, {needed:g} V needed" if volts < needed else why or "is not proved"

    def _question(self, supplies: Sequence[Supply]) -> Question:
        wires, left_out, unpriced = wires_of(self.catalogue, self.asked.wire, self.prices)
        if not wires:
            none = (
                f"'{self.asked.wire}' is no wire of the catalogue" if self.asked.wire else "the catalogue has no wire"
            )
            raise ValueRefusedError("wire", "; ".join(left_out[:5]) or none)
        self._leave_out(left_out)
        if unpriced:
            self._assume("work is not counted: an hour of labour has no price")
        priced = [wire for wire in wires if not isnan(wire.cost_per_m)]
        if not priced and self.asked.aim == "least-cost":
            raise ValueRefusedError("wire", "unknown: needs the price of a wire")
        if not priced:
            self._assume("wire is not counted: none has a price")
            priced = [replace(wire, cost_per_m=0.0) for wire in wires]
        openings: dict[str, dict[str, Drawn]] = {o: {} for o in self.planned}
        places = [self._place(supply, openings) for supply in supplies]
        if not any(place.sizes for place in places):
            raise ValueRefusedError("supplies", "; ".join(self.left_out[:5]) or "no supply is there")
        routes = {(route.opening_id, route.supply_id): route for route in self.facts.routes}
        laid = laid_ways(self.facts)
        to_place = [self._ways(o, supplies, routes, laid) for o in self.planned]
        given = [each.given.opening for each in self.planned.values()]
        return Question(
            tuple(places), tuple(PlanOpening(o, drawn_) for o, drawn_ in openings.items()), tuple(priced), to_place,
            between_m(given, self.heights, laid.between),
        )  # fmt: skip

    def _leave_out(self, told: Sequence[str]) -> None:
        self.left_out += [each for each in told if each not in self.left_out]

    def _assume(self, told: str) -> None:
        if told not in self.assumed:
            self.assumed.append(told)

    def _ways(
        self, opening: str, supplies: Sequence[Supply], routes: Mapping[tuple[str, str], Route], laid: LaidWays
    ) -> list[float | None]:
        row: list[float | None] = []
        missing: set[str] = set()
        pinned = self.pinned[opening]
        for supply in supplies:
            found, needs = distance(
                supply, self.planned[opening].given.opening, self.heights, routes.get((opening, supply.id)),
                laid_m=laid.supply.get((opening, supply.id)),
            )  # fmt: skip
            missing.update(needs)
            kept = not pinned or supply.id in pinned
            row.append(max(found.metres, _SHORTEST_M) if found is not None and kept else None)
            # From opening to opening nobody measures before a run lies there.
            if found is not None and kept and (not found.measured or len(self.planned) > 1):
                self._assume("ways that nobody has measured are estimated from level, plan and rise")
        if all(each is None for each in row):
            needs_said = ", ".join(sorted(missing)) or "a route to a supply"
            raise ValueRefusedError(self.marks[opening], f"unknown: needs {needs_said}")
        return row

    def _place(self, supply: Supply, openings: Mapping[str, dict[str, Drawn]]) -> PlanPlace:
        circuit = self.circuits.get(self.onto.get(supply.id, ""))
        shown = circuit or Circuit(f"circuit at {supply.id}", supply.id, CIRCUIT_NAME)
        stays = [
            run for run in self.facts.runs
            if self.circuits[run.circuit_id].supply_id == supply.id and run.opening_id is not None
            and run.opening_id not in self.planned
        ]  # fmt: skip
        free = supply.use == "candidate" and not any(
            self.circuits[run.circuit_id].supply_id == supply.id for run in self.facts.runs
        )
        numbers = [supply.part] if not free else [p.number for p in self.catalogue.of_kind("power-supply")]
        if free and supply.part is not None:
            numbers = [supply.part, *(n for n in numbers if n != supply.part)]
        taken = taken_a(self.before, supply, list(self.planned))
        limited_a = limiter_left_a(self.before, circuit, list(self.planned), self.catalogue, self.settings)
        sizes: list[Size] = []
        for number in numbers:
            part = self.catalogue.get(number) if number is not None else None
            if part is None or (part.superseded_by and number != supply.part):
                if not free:
                    self._leave_out([f"{supply.name}: unknown: needs the power supply that stands there"])
                continue
            found = standing_of(supply, part, self.catalogue, self.settings)
            if isinstance(found, str):
                if not free or number == supply.part:
                    self._leave_out([f"{supply.name}: {found}"])
                continue
            source, seen, used, least_v = found
            least_v = max(least_v - self.lower_v.get(supply.id, 0.0), 0.0)
            cost, lacking, _ = self.prices.supply(part.number) if free else (0.0, (), False)
            if lacking:
                self._leave_out([f"{part.number}: its price is unknown: needs {', '.join(lacking)}"])
                if self.asked.aim == "least-cost":
                    continue
            volts = f"{source.normal_v:g} V, {least_v:.9f} V at least, {source.highest_v or 0.0:g} V at most"
            # What is pinned elsewhere does not hang here, over a neighbour neither.
            drawn = [
                drawn_of(self.linked(opening, part.number), shown, seen, least_v, self.limits)
                if not self.pinned[opening] or supply.id in self.pinned[opening]
                else None
                for opening in openings
            ]
            if not any(drawn):
                self._leave_out([f"{part.number} in {supply.name}: {self._why_none(part.number)}"])
                continue
            # Supplies alike in volts that openings draw alike of are sizes of one kind.
            kind = self._kinds.setdefault((volts, tuple(drawn)), f"{volts} ({len(self._kinds)})")
            for own, each in zip(openings.values(), drawn, strict=True):
                if each is not None:
                    own[kind] = each
            sizes.append(Size(part.number, kind, min(max(used - taken, 0.0), limited_a), least_v, cost))
        at_once = self.limits.at_once if shown.at_once is None else shown.at_once
        return PlanPlace(
            supply.id, _worth_having(sizes), at_once, warmth_of(circuit, self.settings), supply.use == "must",
            counts=not stays,
        )  # fmt: skip

    def linked(self, opening: str, part: str) -> ConnectedOpening:
        """Return an opening as it hangs on a supply of some part: its fit may ask for what that part says."""
        key = opening, part
        if key not in self._linked:
            points = [replace(at.given, supply_link=SupplyLink(part)) for at in self.planned[opening].points]
            self._linked[key] = ConnectedOpening.of([each.at for each in point_results(points, {}, self.fits.of)])
        return self._linked[key]

    def _why_none(self, part: str) -> str:
        """Say why no opening can hang on a supply of some part."""
        for opening in self.planned:
            problems = devices_at(self.linked(opening, part))[1]
            if problems:
                return problems[0].message
        return "no opening takes its voltage and kind of current"

    def _named(self, text: str) -> str:
        for identifier, name in {**{s.id: s.name for s in self.facts.supplies}, **self.marks}.items():
            text = text.replace(identifier, name)
        return text


def _as_proved(plan: Plan, after: PowerResult) -> Plan:
    """Return a plan with the margins that its proof found: these count, and not what it was planned with."""
    margins: dict[str, float] = {}
    for supply in after.supplies:
        for circuit in supply.circuits:
            for node in circuit.nodes:
                if node.opening_id is not None and node.margin_v is not None:
                    margins[node.opening_id] = min(margins.get(node.opening_id, node.margin_v), node.margin_v)
    legs = tuple(replace(leg, margin_v=min(margins[opening] for opening in leg.openings)) for leg in plan.legs)
    return replace(plan, legs=legs, margin_v=min((leg.margin_v for leg in legs), default=None))


def _worth_having(sizes: Sequence[Size]) -> tuple[Size, ...]:
    """Return sizes without those than which another one of the same voltages costs no more and gives no less."""
    found: list[Size] = []
    for size in sorted(sizes, key=lambda s: (s.kind, s.cost, -s.left_a)):
        if not any(s.kind == size.kind and s.left_a >= size.left_a for s in found):
            found.append(size)
    return tuple(found)

"""Supplies, circuits and runs as they are laid, and what is worked out for them; plain values.

Facts are field for field what `hwsched.survey.power` declares. A node is named by its opening's identifier, by the name
of a junction, or "supply". Nothing here calculates.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Final

from hwsched.values.finding import Finding

_TOLD_V: Final = 0.005
"""Half of what a page shows of a voltage [V]."""


@dataclass(frozen=True, slots=True)
class Supply:
    """A low-voltage supply, or a place where one may stand."""

    id: str
    name: str
    building: str | None = None
    level: str | None = None
    level_m: float | None = None
    """Height of its level's floor [m]."""
    place: str | None = None
    x_m: float | None = None
    y_m: float | None = None
    rise_m: float | None = None
    part: str | None = None
    use: str | None = None
    """candidate, laid, must."""
    battery: str | None = None
    batteries: int | None = None
    standby_hours: float | None = None
    temperature_c: float | None = None
    notes: str | None = None
    cabinet: str | None = None
    """Catalogue number of the one that a person has chosen."""


@dataclass(frozen=True, slots=True)
class Circuit:
    """A circuit of a supply."""

    id: str
    supply_id: str
    name: str
    wire: str | None = None
    """Catalogue number for runs that name none of their own."""
    temperature_c: float | None = None
    at_once: int | None = None
    limiter_a: float | None = None
    alarm: str | None = None
    """drops or stays, on the fire alarm."""
    notes: str | None = None
    limiter: str | None = None
    """Catalogue number of the fuse or limiter that a person has chosen."""


@dataclass(frozen=True, slots=True)
class Run:
    """A two-wire run of a circuit."""

    id: str
    circuit_id: str
    from_node: str
    to_node: str
    """Opening, junction."""
    opening_id: str | None = None
    """The opening at its far end."""
    length_m: float | None = None
    wire: str | None = None
    gauge: str | None = None
    stranding: str | None = None
    parallel: int | None = None
    extra_ohm: float | None = None


@dataclass(frozen=True, slots=True)
class Route:
    """What is known of the cable route between an opening and a supply."""

    opening_id: str
    supply_id: str
    length_m: float | None = None
    """Measured, one way [m]."""
    pinned: bool = False
    """The opening must be fed by this supply."""


@dataclass(frozen=True, slots=True)
class PowerFacts:
    """All supplies of a project with their circuits."""

    supplies: tuple[Supply, ...] = ()
    circuits: tuple[Circuit, ...] = ()
    runs: tuple[Run, ...] = ()
    routes: tuple[Route, ...] = ()

    def connected(self) -> Mapping[str, Circuit]:
        """Return per opening the circuit that feeds it; the first where there are more."""
        circuits = {circuit.id: circuit for circuit in self.circuits}
        found: dict[str, Circuit] = {}
        for run in self.runs:
            if run.opening_id is not None and run.circuit_id in circuits:
                found.setdefault(run.opening_id, circuits[run.circuit_id])
        return found


@dataclass(frozen=True, slots=True)
class Device:
    """Something at an opening that a circuit feeds."""

    opening_id: str
    mark: str
    part: str
    role: str
    kind: str
    """current [A], power [W] or resistance [ohm]: how it draws."""
    holding: float
    peak: float
    inrush: float | None
    """None: not stated, and then the peak counts."""
    minimum_v: float
    maximum_v: float
    terminals: tuple[str, str] = ("", "")
    """Names of plus and minus, from the catalogue; empty where it does not say."""
    suppression: str = ""
    """What to fit across its coil; empty where it has none."""
    fail: str = ""
    """fail-safe, fail-secure; empty where the question does not arise."""
    assumed: tuple[str, ...] = ()
    """What was taken by common practice where the catalogue does not say."""
    leaf: str = ""
    """Position of the leaf of its lock point, where the opening's points are on several leaves."""
    least: float | None = None
    """What it surely draws at rest; None where nothing is stated."""
    current: str = "dc"
    """Of one that the catalogue does not hold: dc, ac or either, by its label."""
    untold: tuple[str, ...] = ()
    """Facts of the catalogue without which it is not known how its current follows the voltage."""
    most_share: float = 1.0
    """Whatever they are, it draws no more than so many times what is reckoned with, within its window."""


@dataclass(frozen=True, slots=True)
class RunResult:
    """A run, or the power transfer at an opening, with what flows in it."""

    run_id: str
    """Empty for a transfer."""
    from_name: str
    to_name: str
    """Marks, names of junctions, "supply"."""
    from_node: str
    to_node: str
    length_m: float
    gauge: str
    stranding: str
    parallel: int
    part: str
    """Catalogue number of its wire or transfer; empty where it was typed as a gauge."""
    ohm: float
    """Loop resistance at the circuit's temperature [ohm]."""
    amps: Mapping[str, float]
    """Per state [A]; a state without solution is left out."""
    transfer: bool = False

    @property
    def drop_v(self) -> dict[str, float]:
        """Voltage that stays on it there and back, per state [V]."""
        return {state: amps * self.ohm for state, amps in self.amps.items()}

    @property
    def loss_w(self) -> dict[str, float]:
        """Heat that it turns to, per state [W]."""
        return {state: amps * amps * self.ohm for state, amps in self.amps.items()}


@dataclass(frozen=True, slots=True)
class NodeResult:
    """Voltage at a place of a circuit."""

    node: str
    name: str
    opening_id: str | None
    distance_m: float
    """From the supply along the runs [m]."""
    volts: Mapping[str, float]
    """Per state, at peak under the operations that are worst for it [V]; a state without solution is left out. What is
    unknown is reckoned at the least that it can draw: a voltage that is low is low for sure."""
    minimum_v: float | None
    maximum_v: float | None
    """The narrowest window of the devices there; None where there is none."""
    bound_v: float | None = None
    """No state, no operations and nothing unknown bring it lower [V]; None where that cannot be said: there may be no
    solution."""
    operating: tuple[str, ...] = ()
    """Marks of the openings whose operations at one time are worst for it."""
    parts: tuple[str, ...] = ()
    """What is connected there, by catalogue number."""

    @property
    def lowest_v(self) -> float | None:
        """Lowest voltage over the states; at the upper tolerance, hardly anything drawn, it is never that."""
        lowest = None
        # Asked of every node by every rule: without a generator it takes half the time.
        for state, volts in self.volts.items():
            if state != "highest-mains" and (lowest is None or volts < lowest):
                lowest = volts
        return lowest

    @property
    def may_fall_v(self) -> float | None:
        """How low what is unknown, or was not tried, may bring it [V]; None where not below what is told."""
        lowest = self.lowest_v
        if lowest is None or self.bound_v is None or self.bound_v >= lowest - _TOLD_V:
            return None
        return max(self.bound_v, 0.0)

    @property
    def margin_v(self) -> float | None:
        """Room above the minimum in the worst state; negative where it is short."""
        if self.minimum_v is None:
            return None
        lowest = self.lowest_v
        return None if lowest is None else lowest - self.minimum_v


@dataclass(frozen=True, slots=True)
class Problem:
    """Why a circuit could not be worked out, or one of its openings was left out."""

    kind: str
    """unsound: the runs are no tree; unknown: a fact is missing; mismatch: wrong voltage or kind of current."""
    message: str
    needs: tuple[str, ...] = ()
    opening_id: str = ""
    about: str = ""


@dataclass(frozen=True, slots=True)
class CureOffer:
    """One way to mend a low voltage."""

    kind: str
    works: bool
    text: str


@dataclass(frozen=True, slots=True)
class Proof:
    """Whether an opening on a circuit finds its voltages in every state."""

    opening_id: str
    standing: str
    """proved, failed, not-proved."""
    missing: tuple[str, ...] = ()
    """Facts as ``entity.attribute`` without which it is not proved."""
    why: str = ""
    """Why it is not proved, where no fact is missing."""


@dataclass(frozen=True, slots=True)
class CircuitResult:
    """A circuit solved in its states."""

    circuit: Circuit
    supply: Supply
    source_v: Mapping[str, float] = field(default_factory=dict)
    """Of the supply in each state [V]."""
    devices: tuple[Device, ...] = ()
    nodes: tuple[NodeResult, ...] = ()
    runs: tuple[RunResult, ...] = ()
    current_a: Mapping[str, float] = field(default_factory=dict)
    """Out of the supply per state [A]."""
    collapsed: Mapping[str, str] = field(default_factory=dict)
    """States without a solution, and why."""
    operating: tuple[str, ...] = ()
    """Marks of the openings that operate at one time in the worst case."""
    holding_a: float | None = None
    inrush_a: float | None = None
    """Worst, with so many starting at one time [A]; None while a load is unknown."""
    known_inrush_a: float | None = None
    """The same of what is known: what is unknown can only add to it."""
    limiter_a: float | None = None
    """As laid, else as proposed [A]."""
    problems: tuple[Problem, ...] = ()
    cure_offers: Mapping[str, tuple[CureOffer, ...]] = field(default_factory=dict)
    """Per node that is low."""
    openings: tuple[str, ...] = ()
    """Identifiers of the openings that it feeds."""
    marks: tuple[str, ...] = ()
    wire: str = ""
    proofs: tuple[Proof, ...] = ()
    """One an opening."""
    at_once: int | None = None
    """Openings that operate at one time, each with all its devices; None while it is not solved."""
    unsolved_runs: tuple[RunResult, ...] = ()
    """Runs of known length and wire of which nothing else is worked out: they are bought and laid all the same."""
    held_a: tuple[float, float] | None = None
    """What is held at the least and at the most, while something is unknown [A]; None where nothing can be said."""
    assumed: tuple[str, ...] = ()
    """What of its runs and of what leads onto leaves was taken by common practice, since nothing is stated."""

    @property
    def solved(self) -> bool:
        """Whether its states were worked out, though one of them may have no solution."""
        return bool(self.source_v)

    @property
    def unproved(self) -> tuple[Proof, ...]:
        """Openings of which it is neither proved that they find their voltages nor that they do not."""
        return tuple(proof for proof in self.proofs if proof.standing == "not-proved")

    def node_of(self, opening_id: str) -> NodeResult | None:
        """Return the first node of an opening: in its frame, before its power transfers."""
        return next((node for node in self.nodes if node.opening_id == opening_id), None)

    def node_of_devices(self, opening_id: str) -> NodeResult | None:
        """Return the node of an opening's devices that has the least room; the first one where none has a device."""
        own = [node for node in self.nodes if node.opening_id == opening_id and node.margin_v is not None]
        return min(own, key=lambda node: node.margin_v or 0.0, default=None) or self.node_of(opening_id)


@dataclass(frozen=True, slots=True)
class Standby:
    """Standby battery of a supply."""

    hours: float
    load_a: float
    """Mean over the hours, operations included [A]."""
    margin: float
    ageing: float
    temperature_c: float | None
    needed_ah: float
    size_ah: float | None
    """Next standard size; None where none suffices."""
    held_ah: float | None
    """Of the battery that is laid; None where none is."""
    peukert: str = ""
    """Form and numbers of Peukert's law, where it is asked for."""
    at_least: bool = False
    """Whether something that it feeds is unknown, and counted with the least that it can draw."""
    needs: tuple[str, ...] = ()
    """Facts without which its operations are not counted."""
    assumed: tuple[str, ...] = ()
    """What was taken by common practice, since nothing is stated."""


@dataclass(frozen=True, slots=True)
class Growth:
    """Whether a circuit bears so many later openings at the place with the least room."""

    circuit_id: str
    circuit: str
    """Its name."""
    count: int
    borne: bool | None
    """None: unknown."""
    why: str = ""
    """What stops it, or what is not known."""
    rule: str = ""
    """By which rule."""


@dataclass(frozen=True, slots=True)
class SupplyResult:
    """A supply with its circuits."""

    supply: Supply
    circuits: tuple[CircuitResult, ...] = ()
    output_v: float | None = None
    rated_a: float | None = None
    lowest_v: float | None = None
    battery_end_v: float | None = None
    holding_a: float | None = None
    """Of all circuits, everything held at once [A]; None while a load is unknown."""
    peak_a: float | None = None
    standby: Standby | None = None
    problems: tuple[Problem, ...] = ()
    assumed: tuple[str, ...] = ()
    """What of it was taken by common practice, since nothing is stated."""
    class_2: bool | None = None
    """Whether the catalogue declares it as Class 2; None where it does not say."""
    limiting: str = "inherent"
    """What limits it, as the tables of power-limited sources have it: inherent, overcurrent-device."""
    held_a: tuple[float, float] | None = None
    """Of all circuits, everything held at once, at the least and at the most [A]; None where nothing can be said."""
    inrush_a: float | None = None
    """Worst of all circuits, on each so many openings starting as it says [A]; None while a load is unknown."""
    known_inrush_a: float | None = None
    """The same of what is known."""
    growth: tuple[Growth, ...] = ()
    """A line a circuit where room for later openings is asked."""

    @property
    def share(self) -> float | None:
        """Share of the rating that is held."""
        return self.holding_a / self.rated_a if self.holding_a is not None and self.rated_a else None

    @property
    def needs(self) -> tuple[str, ...]:
        """Facts of it and its circuits that are not known, as ``entity.attribute``."""
        told = [*self.problems, *(problem for circuit in self.circuits for problem in circuit.problems)]
        return tuple(dict.fromkeys(need for problem in told for need in problem.needs))

    @property
    def openings(self) -> tuple[str, ...]:
        """Identifiers of all openings that it feeds."""
        return tuple(opening for circuit in self.circuits for opening in circuit.openings)

    @property
    def marks(self) -> Mapping[str, str]:
        """Marks of all openings that it feeds, by identifier."""
        return {
            opening: mark
            for circuit in self.circuits
            for opening, mark in zip(circuit.openings, circuit.marks, strict=True)
        }


@dataclass(frozen=True, slots=True)
class PowerFinding:
    """What a rule has to say of a supply or a circuit."""

    finding: Finding
    supply_id: str
    circuit_id: str = ""
    opening_ids: tuple[str, ...] = ()
    """Openings that it concerns: it stands among their findings too."""


@dataclass(frozen=True, slots=True)
class PowerResult:
    """Power of a project, worked out."""

    supplies: tuple[SupplyResult, ...] = ()
    findings: tuple[PowerFinding, ...] = ()

    def circuit_of(self, opening_id: str) -> tuple[SupplyResult, CircuitResult] | None:
        """Return supply and circuit that feed an opening."""
        for supply in self.supplies:
            for circuit in supply.circuits:
                if opening_id in circuit.openings:
                    return supply, circuit
        return None

    def by_opening(self) -> dict[str, list[Finding]]:
        """Return the findings by the openings that they concern."""
        found: dict[str, list[Finding]] = {}
        for each in self.findings:
            for opening in each.opening_ids:
                found.setdefault(opening, []).append(each.finding)
        return found

    def of_opening(self, opening_id: str) -> tuple[Finding, ...]:
        """Return the findings that concern an opening."""
        return tuple(each.finding for each in self.findings if opening_id in each.opening_ids)

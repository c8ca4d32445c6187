"""A supply and its runs as their circuits see them: voltages and resistance inside, conductors, what is reckoned with.

Here belongs reading them from the catalogue; circuits are put together in `circuit_laying` and solved in
`circuit_solving`.
"""

from collections.abc import Mapping
from dataclasses import dataclass, field

from hwsched.attributes.of_parts import (
    CURRENT,
    END_V,
    GAUGE,
    INSIDE_OHM,
    OUTPUT_V,
    STRANDING,
    TOLERANCE_SHARE,
    VOLTAGE_V,
)
from hwsched.calc.power import circuit_states, circuit_tree
from hwsched.values import Catalogue, Part
from hwsched.values.power import Circuit, Problem, Run, Supply


def taken_of_supply(part: Part | None) -> list[str]:
    """Return what of a supply's voltages is reckoned with though nothing is stated."""
    if part is None or part.number_of(INSIDE_OHM) is not None:
        return []
    return [f"no resistance inside {part.number} beyond its tolerance"]


@dataclass(frozen=True, slots=True)
class SolvingLimits:
    """What is reckoned with where the circuit itself does not say."""

    temperature_c: float
    """Of the conductors [degC]."""
    at_once: int
    """Openings that operate at one time, each with all its devices."""
    limiter_margin: float
    """Fuse or limiter over the continuous current."""


@dataclass(frozen=True, slots=True)
class CircuitSource:
    """A supply as its circuits see it."""

    supply: Supply
    part: Part | None
    source: circuit_states.Source | None
    """None while a fact of it is missing."""
    catalogue: Catalogue
    wires: dict[str, tuple[str, str]] = field(default_factory=dict, compare=False, repr=False)
    """Gauge and stranding of the wires that were asked for, by number."""

    @classmethod
    def of(
        cls, supply: Supply, part: Part | None, battery: Part | None, catalogue: Catalogue, end_share: float
    ) -> "CircuitSource":
        """Read a supply from the catalogue.

        Parameters
        ----------
        supply : Supply
            As it stands.
        part, battery : Part or None
            Of the catalogue.
        catalogue : Catalogue
            For wires and devices.
        end_share : float
            End voltage of a battery that states none, as a share of its nominal voltage.
        """
        volts = part.number_of(OUTPUT_V) if part is not None and part.kind == "power-supply" else None
        tolerance = part.number_of(TOLERANCE_SHARE) if part is not None else None
        if part is None or volts is None or tolerance is None:
            return cls(supply, part, None, catalogue)
        end_v = battery_ohm = None
        if battery is not None:
            count = supply.batteries or 1
            one_v = battery.number_of(END_V)
            if one_v is None and (nominal := battery.number_of(VOLTAGE_V)) is not None:
                # A battery is judged at its end: what works with a full one may drop out in the last hour of standby.
                one_v = nominal * end_share
            end_v = None if one_v is None else one_v * count
            # In series volts add, and so do their inner resistances.
            battery_ohm = (battery.number_of(INSIDE_OHM) or 0.0) * count
        source = circuit_states.Source(
            volts, volts * (1 - tolerance), end_v, part.number_of(INSIDE_OHM) or 0.0, battery_ohm or 0.0,
            volts * (1 + tolerance),
        )  # fmt: skip
        return cls(supply, part, source, catalogue)

    @property
    def current(self) -> str | None:
        """Kind of current that it gives; None where the catalogue does not say."""
        return self.part.text_of(CURRENT) if self.part is not None else None

    def run(self, circuit: Circuit, run: Run, names: Mapping[str, str]) -> "RunWithConductor | Problem":
        """Return a run with its conductor, or what is missing of it."""
        ends = f"the run from {names.get(run.from_node, run.from_node)} to {names.get(run.to_node, run.to_node)}"
        about = names.get(run.to_node, run.to_node)
        where = run.opening_id or ""
        if run.length_m is None:
            return Problem("unknown", f"the length of {ends} is unknown", ("run.length_m",), where, about)
        gauge, stranding, number = run.gauge, run.stranding, ""
        if gauge is None:
            number = run.wire or circuit.wire or ""
            if not number:
                return Problem("unknown", f"the wire of {ends} is unknown", ("run.wire",), where, about)
            told = self.wires.get(number)
            if told is None:
                wire = self.catalogue.get(number)
                if wire is None or wire.kind != "wire":
                    return Problem(
                        "unsound", f"{number}, the wire of {ends}, is no wire of the catalogue", (), where, about
                    )
                gauge, stranding = wire.text_of(GAUGE), wire.text_of(STRANDING)
                if gauge is None or stranding is None:
                    fact = f"part {number}.{'gauge' if gauge is None else 'stranding'}"
                    return Problem("unknown", f"the conductor of {number} is unknown", (fact,), where, about)
                told = self.wires[number] = gauge, stranding
            gauge, stranding = told
        if stranding is None:
            return Problem(
                "unknown", f"whether {gauge} of {ends} is stranded is unknown", ("run.stranding",), where, about
            )
        made = circuit_tree.Run(
            run.from_node, run.to_node, run.length_m, gauge, stranding, run.parallel or 1, run.extra_ohm or 0.0
        )
        return RunWithConductor(made, run.id, number, False)


@dataclass(frozen=True, slots=True)
class RunWithConductor:
    """A run as it is solved."""

    run: circuit_tree.Run
    run_id: str
    """Empty for what leads onto a leaf."""
    part: str
    """Catalogue number; empty where a gauge was typed."""
    transfer: bool

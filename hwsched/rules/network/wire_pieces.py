"""The pieces of wire that a lock point takes from a reel: its run where it has a supply of its own, leaf and frame."""

from dataclasses import dataclass

from hwsched.attributes.of_parts import LENGTH_MM
from hwsched.rules.network import across_leaf
from hwsched.rules.network.devices import switched
from hwsched.rules.network.leaf_runs import cables, frame_wire_m
from hwsched.rules.network.own_circuit import route_m
from hwsched.rules.wording import run_length
from hwsched.values import Fit, OpeningInput, Part


@dataclass(frozen=True, slots=True)
class WirePieces:
    """Pieces of one length."""

    count: int
    each_m: float
    """Without the allowance for its ends [m]."""
    text: str
    """How long they are together, and where they lie."""
    where: str
    """Where each lies."""

    @property
    def length_m(self) -> float:
        """Of all of them [m]."""
        return self.count * self.each_m


def wire_pieces(
    given: OpeningInput, fit: Fit, wire: Part, transfer: Part | None, *, own: bool
) -> tuple[WirePieces, ...]:
    """Return what a lock point takes from a wire.

    Parameters
    ----------
    given, fit : OpeningInput, Fit
        With unit, place and way across the leaf.
    wire : Part
        Of the catalogue.
    transfer : Part or None
        New one that carries power onto the leaf.
    own : bool
        Whether it has a supply of its own, and with it a run.
    """
    style = given.settings.length_style
    found = []
    route = route_m(given) if own else None
    if route is not None:
        rise = given.opening.rise_m
        text = f"{run_length(style, given.opening.supply_distance_m or 0.0)} one way"
        text += f", {run_length(style, rise)} rise" if rise else ""
        found.append(WirePieces(1, route, text, "its run"))
    way = across_leaf.standing(given, fit) if across_leaf.needed(given, fit) else None
    if way is not None and way.wire_m is not None:
        count = cables(given, fit, wire)
        over = (transfer.number_of(LENGTH_MM) or 0.0) / 1000 if transfer is not None else 0.0
        each_m = way.wire_m + over
        text = f"{run_length(style, count * each_m, 2)} over hinge and leaf"
        found.append(WirePieces(count, each_m, text, "over hinge and leaf"))
    strikes = switched(given, fit)
    frame = frame_wire_m(given) if strikes else None
    if frame is not None:
        text = f"{run_length(style, strikes * frame, 2)} in the frame to what the unit switches"
        found.append(WirePieces(strikes, frame, text, "in the frame"))
    return tuple(found)

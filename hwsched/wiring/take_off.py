"""Wire and raceway by building: how much of which, and which piece is cut from which reel or bar.

What a building takes besides stands in `goods`.
"""

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, field, replace
from math import ceil, floor, fsum
from typing import Final, Literal

from hwsched.attributes.of_parts import GAUGE, REEL_M, STRANDING
from hwsched.calc.parts.cutting import cut
from hwsched.calc.power.supply_practice import raceway_kerf_mm, wire_waste
from hwsched.fitting.order_units import BY_THE_METRE
from hwsched.rules.network.wire_pieces import wire_pieces
from hwsched.rules.reading import in_role
from hwsched.values import Catalogue, FitPart, PointFit
from hwsched.values.power import RunResult, SupplyResult

_STEPS_A_METRE: Final = {"wire": 100, "raceway": 1000}
"""Wire is cut to the centimetre, a raceway to the millimetre."""
_TOUCH: Final = 1e-6
_SAME_M: Final = 0.006
"""A fit tells the length of its wire to the centimetre."""

Cut = Literal["wire", "raceway"]


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece that is cut from a reel or bar."""

    name: str
    """Where it lies."""
    length_m: float
    """As it is cut, with the allowance for its ends [m]."""
    supply_id: str = ""
    opening_id: str = ""
    """The opening on whose leaf or frame it lies, or at whose end."""


@dataclass(frozen=True, slots=True)
class WireLine:
    """One wire or raceway in one building."""

    building: str
    part: str
    """Catalogue number; empty where runs name a gauge only."""
    gauge: str
    stranding: str
    length_m: float
    """Of the runs, conductors in parallel counted [m]."""
    with_waste_m: float
    """Of runs and leaves together, with the allowance for ends [m]."""
    reel_m: float | None
    reels: int | None
    """Whole reels or bars, each piece cut from one; None where the catalogue does not say how long one is."""
    runs: int
    fewest: int | None = None
    """No cutting needs fewer reels; equal to the reels where that is proved."""
    cuts: tuple[tuple[Piece, ...], ...] = ()
    """Pieces that are cut from each reel; none where its length is not known."""
    spliced: int = 0
    """Pieces that are longer than a reel."""
    leaf_m: float = 0.0
    """Over leaves and in frames, and of openings with a supply of their own, with the allowance for ends [m]."""
    kind: Cut = "wire"
    pieces: tuple[Piece, ...] = ()
    """All of them, before those that are longer than a reel are cut in two."""

    @property
    def gap(self) -> int | None:
        """How many reels fewer might do; 0 where it is proved that none; None where there is no number."""
        return None if self.reels is None or self.fewest is None else self.reels - self.fewest

    @property
    def gap_text(self) -> str:
        """Whether fewer might do, as it is printed."""
        if self.gap is None:
            return ""
        return "exact" if self.gap == 0 else f"{self.fewest} or more; {self.gap} fewer not ruled out"

    def left_m(self, reel: int) -> float:
        """Return what stays on a reel [m], by its place in `cuts`; what cuts themselves take is not in it."""
        if self.reel_m is None:
            return 0.0
        kerf_m = raceway_kerf_mm() / 1000 if self.kind == "raceway" else 0.0
        cuts = self.cuts[reel]
        return max(0.0, self.reel_m - fsum(piece.length_m for piece in cuts) - kerf_m * len(cuts))


@dataclass(slots=True)
class _Taken:
    """What one wire takes in one building while it is added up."""

    gauge: str = ""
    stranding: str = ""
    length_m: float = 0.0
    leaf_m: float = 0.0
    runs: int = 0
    pieces: list[Piece] = field(default_factory=list)


def wire_lines(
    supplies: Iterable[SupplyResult], catalogue: Catalogue, openings: Iterable[Sequence[PointFit]] = ()
) -> tuple[WireLine, ...]:
    """Add up runs, and what lies on leaves and in frames, by building and wire; raceways follow the wires.

    Parameters
    ----------
    supplies : iterable of SupplyResult
        With their circuits.
    catalogue : Catalogue
        Says how long a reel is.
    openings : iterable of sequence of PointFit
        Lock points of each opening with their fits.
    """
    found: dict[tuple[Cut, str, str, str, str], _Taken] = {}
    for supply in supplies:
        openings_of = frozenset(supply.openings)
        for circuit in supply.circuits:
            for run in (*circuit.runs, *circuit.unsolved_runs):
                # A transfer is bought by the piece, its wire with it.
                if run.transfer:
                    continue
                typed = ("", "") if run.part else (run.gauge, run.stranding)
                taken = found.setdefault(("wire", supply.supply.building or "", run.part, *typed), _Taken())
                taken.gauge, taken.stranding = run.gauge, run.stranding
                taken.runs += 1
                # Conductors side by side are bought as often as they lie there.
                taken.length_m += run.length_m * run.parallel
                taken.pieces += [_of_run(supply, circuit.circuit.name, run, openings_of)] * run.parallel
    for points in openings:
        for kind, part, pieces in _on_leaf(points):
            building = points[0].given.opening.building or ""
            taken = found.setdefault((kind, building, part.part, "", ""), _Taken())
            entry = catalogue.get(part.part)
            if entry is not None and not taken.gauge:
                taken.gauge, taken.stranding = entry.text_of(GAUGE) or "", entry.text_of(STRANDING) or ""
            taken.leaf_m += part.quantity
            taken.pieces += pieces
    lines = []
    for (kind, building, number, *_), taken in sorted(found.items(), key=lambda each: (each[0][0] != "wire", each[0])):
        part_ = catalogue.get(number) if number else None
        reel = part_.number_of(REEL_M) if part_ is not None and part_.kind in BY_THE_METRE else None
        needed = taken.length_m * wire_waste() + taken.leaf_m
        line = WireLine(
            building, number, taken.gauge, taken.stranding, taken.length_m, needed, reel, None, taken.runs,
            leaf_m=taken.leaf_m, kind=kind, pieces=tuple(taken.pieces),
        )  # fmt: skip
        lines.append(_cut(line, reel) if reel else line)
    return tuple(lines)


def pieces_at(supply: SupplyResult | None, points: Sequence[PointFit]) -> list[tuple[Cut, str, str, Piece]]:
    """Return what is cut for one opening: kind, catalogue number, conductor where no wire is named, piece.

    Parameters
    ----------
    supply : SupplyResult or None
        On which it hangs; the runs that end at it are its own.
    points : sequence of PointFit
        Its lock points with their fits.
    """
    opening = points[0].given.opening.id
    found: list[tuple[Cut, str, str, Piece]] = []
    for circuit in supply.circuits if supply is not None else ():
        for run in (*circuit.runs, *circuit.unsolved_runs):
            if run.to_node == opening and not run.transfer and supply is not None:
                piece = _of_run(supply, circuit.circuit.name, run, (opening,))
                found += [("wire", run.part, f"{run.gauge} {run.stranding}".strip(), piece)] * run.parallel
    for kind, part, pieces in _on_leaf(points):
        found += [(kind, part.part, "", piece) for piece in pieces]
    return found


def _of_run(supply: SupplyResult, circuit: str, run: RunResult, openings: Collection[str]) -> Piece:
    name = f"{supply.supply.name}/{circuit} {run.from_name} to {run.to_name}"
    opening = run.to_node if run.to_node in openings else ""
    return Piece(name, run.length_m * wire_waste(), supply.supply.id, opening)


def _on_leaf(points: Sequence[PointFit]) -> Iterator[tuple[Cut, FitPart, list[Piece]]]:
    """Yield wire and raceway of the lock points of an opening with the pieces into which they are cut."""
    for at in points:
        if at.fit is None or at.fit.status != "fits":
            continue
        opening = at.given.opening
        where = opening.mark if len(points) == 1 else f"{opening.mark}, {at.given.point.name}"
        for part in at.fit.parts:
            if part.role == "raceway":
                yield "raceway", part, [Piece(f"{where}, over the leaf", part.quantity, opening_id=opening.id)]
            elif part.role == "wire":
                pieces = [
                    Piece(f"{where}, {what}", length_m, opening_id=opening.id) for what, length_m in _cut_of(at, part)
                ]
                yield "wire", part, pieces


def _cut_of(at: PointFit, part: FitPart) -> list[tuple[str, float]]:
    """Return where the wire of a fit lies, piece by piece; as one where it was not reckoned from today's facts."""
    assert at.fit is not None
    wire = at.given.catalogue.get(part.part)
    if wire is not None:
        own = at.fit.part("supply") is not None
        terms = wire_pieces(at.given, at.fit, wire, in_role(at.given, at.fit, "power-transfer"), own=own)
        if abs(fsum(each.length_m for each in terms) * wire_waste() - part.quantity) < _SAME_M:
            return [(each.where, each.each_m * wire_waste()) for each in terms for _ in range(each.count)]
    return [("its wire", part.quantity)]


def _cut(line: WireLine, reel_m: float) -> WireLine:
    """Cut every piece from one reel; one that is longer takes whole reels and its rest from another."""
    steps = _STEPS_A_METRE[line.kind]
    stock = floor(reel_m * steps + _TOUCH)
    held: list[Piece] = []
    lengths: list[int] = []
    spliced = 0
    for piece in line.pieces:
        # Up to the next step, less a touch of what binary adds.
        left = ceil(piece.length_m * steps - _TOUCH)
        spliced += left > stock
        while left > 0:
            taken = min(left, stock)
            held.append(replace(piece, length_m=taken / steps))
            lengths.append(taken)
            left -= taken
    found = cut(lengths, stock, round(raceway_kerf_mm() * steps / 1000) if line.kind == "raceway" else 0)
    cuts = tuple(tuple(held[i] for i in each) for each in found.stock)
    return replace(line, reels=len(cuts), fewest=found.fewest, cuts=cuts, spliced=spliced)

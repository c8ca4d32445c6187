"""Showing openings for machines: all facts, what was worked out, every hole and screw, power and findings.

The records below are the shape: `hwsched opening show --schema` prints it as a JSON Schema, and
``resources/schemas/show.json`` holds it. Lengths are in mm, words as the
survey holds them. What people read stands with the documents.
"""

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from math import radians, sqrt, tan
from typing import Any, Final, Literal

from hwsched.model.project import Project
from hwsched.model.queries import latest_change
from hwsched.operations.findings.checked import Checked
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.findings.finding_record import FindingRecord, finding_record
from hwsched.operations.opening.pieces import pieces_by_opening
from hwsched.operations.power.power_results import power_result
from hwsched.rules.reading import lock_leaf, unit_part
from hwsched.rules.solid.screws import screw_places
from hwsched.values import (
    BatteryLife,
    CablePath,
    Fit,
    FitPart,
    Hole,
    Item,
    Leaf,
    Need,
    Opening,
    OpeningInput,
    PointFit,
    Refusal,
)
from hwsched.values.fit import Placement, Stack
from hwsched.values.lock_points import leaf_name
from hwsched.values.opening_input import Chosen
from hwsched.values.piece import Piece
from hwsched.values.power import Device, PowerResult

_SCREWS: Final = frozenset({"fixing", "bolt"})
"""Purposes of holes that a screw or a through-bolt fills."""
_INTO: Final[Mapping[str, tuple[float, float, float]]] = {
    "inside": (0.0, 0.0, 1.0),
    "key": (0.0, 0.0, -1.0),
    "wall": (0.0, 0.0, 1.0),
    "lock-edge": (1.0, 0.0, 0.0),
    "hinge-edge": (-1.0, 0.0, 0.0),
    "frame": (-1.0, 0.0, 0.0),
}
"""Per face in which a hole starts: the way straight in."""

Point = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class HoleRecord:
    """A hole with its start and its direction: x from lock edge to hinge edge, y up, z from inside to key side."""

    hole: Hole
    through: bool
    start_mm: tuple[float, float, float | None]
    """z is null while the leaf's thickness is unknown. Of a hole by template: the centre of the part that is the
    template, not of the hole."""
    direction: Point
    """Of length 1."""
    places_mm: tuple[tuple[float, float, float | None], ...] | None
    """Starts of all its holes. Of a plate's screws as the catalogue gives them; where it gives none, 6 mm inside the
    plate's corners (common practice, unverified). Null where only the part itself tells: it is the template."""


@dataclass(frozen=True, slots=True, kw_only=True)
class FittedPoint:
    """A place on a leaf that is locked, and what was worked out for it."""

    id: str
    number: int
    """Counted from 1 in the opening."""
    name: str | None
    """Null where it needs none: the opening has only one."""
    leaf: str | None
    existing_item: str | None
    """Identifier of the lock that stands there; null where none does."""
    chosen: tuple[Chosen, ...]
    """What a person or a hardware set chose for it."""
    status: Literal["fits", "does-not-fit", "to-measure", "not-worked-out"]
    """not-worked-out: nothing is stored, or it belongs to other facts."""
    parts: tuple[FitPart, ...] = ()
    stack: Stack | None = None
    placement: Placement | None = None
    holes: tuple[HoleRecord, ...] = ()
    screws: tuple[HoleRecord, ...] = ()
    """Holes that a screw or a through-bolt fills."""
    lead: CablePath | None = None
    power: Literal["battery", "supply", "none"] = "none"
    battery: BatteryLife | None = None
    needs: tuple[Need, ...] = ()
    """Why it is unknown: the facts that are missing."""
    refused: tuple[Refusal, ...] = ()
    cost: Decimal | None = None
    """List prices of the parts, tools left out, as a decimal string; null where it does not fit."""
    currency: str | None = None
    cost_needs: tuple[str, ...] = ()
    """What is missing to know the whole cost."""


@dataclass(frozen=True, slots=True, kw_only=True)
class LockPointRecord(FittedPoint):
    """The same, with the pieces that were given out for it."""

    pieces: tuple[Piece, ...] = ()
    """What of the parts can be taken in the hand, each with its identifier and what is on record of it."""


@dataclass(frozen=True, slots=True)
class CircuitRecord:
    """The circuit that feeds an opening, and the volts that arrive at its devices in every state."""

    supply: str
    circuit: str
    volts: Mapping[str, float]
    """Behind the power transfer for what is on a leaf; of several places the one with the least room."""
    minimum_v: float | None
    maximum_v: float | None
    distance_m: float | None
    """Along the runs, to the frame."""
    devices: tuple[Device, ...]


@dataclass(frozen=True, slots=True)
class OpeningRecord:
    """One opening with all that is known of it."""

    mark: str
    facts: Opening
    own_fields: Mapping[str, str | float | bool | None]
    """Of the opening, by name; money as a decimal string."""
    leaves: tuple[Leaf, ...]
    existing_items: tuple[Item, ...]
    lock_points: tuple[LockPointRecord, ...]
    pieces_left: tuple[Piece, ...]
    """On record at a place that is locked no more."""
    circuit: CircuitRecord | None
    """None: it is on no circuit."""
    findings: tuple[FindingRecord, ...]


@dataclass(frozen=True, slots=True)
class ProjectRecord:
    """The project, and the step of its journal to which everything here belongs."""

    id: str
    title: str
    length_style: str
    bare_unit: str | None
    change_set: int


@dataclass(frozen=True, slots=True)
class Shown:
    """What `show` gives."""

    project: ProjectRecord
    openings: tuple[OpeningRecord, ...]


def show_openings(project: Project, ids: Iterable[str] | None = None) -> Shown:
    """Return openings with all that is known of them.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    ids : iterable of str, optional
        Openings; all when left out.
    """
    wanted = None if ids is None else list(ids)
    # One state for all that is shown: the readings inside are part of this one.
    with project.reading() as connection:
        checked = check_openings(project, wanted)
        power = power_result(project, wanted, fresh=False)
        pieces = pieces_by_opening(project, checked)
        change = latest_change(connection)
        own = ProjectRecord(project.id, project.title, project.length_style, project.bare_unit, change)
    return Shown(own, tuple(_opening(each, power, pieces[each.given.opening.id]) for each in checked))


def _opening(checked: Checked, power: PowerResult, pieces: Sequence[Piece]) -> OpeningRecord:
    given = checked.given
    return OpeningRecord(
        given.opening.mark,
        given.opening,
        {
            own.attribute.name: str(own.value) if isinstance(own.value, Decimal) else own.value
            for own in checked.own
            if own.entity == "opening"
        },
        given.leaves,
        given.items,
        tuple(_point(point, pieces) for point in checked.points),
        tuple(piece for piece in pieces if not any(piece.point_id == at.given.point.id for at in checked.points)),
        _circuit(power, given.opening.id),
        tuple(finding_record(given.opening.mark, finding) for finding in checked.findings),
    )


def _point(at: PointFit, pieces: Sequence[Piece]) -> LockPointRecord:
    own = tuple(piece for piece in pieces if piece.point_id == at.given.point.id)
    return LockPointRecord(**_fitted(at), pieces=own)


def fitted_point(at: PointFit) -> FittedPoint:
    """Return a lock point with what was worked out for it."""
    return FittedPoint(**_fitted(at))


def _fitted(at: PointFit) -> dict[str, Any]:
    given, fit, point = at.given, at.fit, at.given.point
    leaf = lock_leaf(given)
    place = {
        "id": point.id,
        "number": point.number,
        "name": point.name or None,
        "leaf": leaf_name(leaf) if leaf is not None else None,
        "existing_item": point.item_id,
        "chosen": given.chosen,
    }
    if fit is None:
        return {**place, "status": "not-worked-out"}
    return {
        **place,
        "status": fit.status,
        "parts": fit.parts,
        "stack": fit.stack,
        "placement": fit.placement,
        "holes": tuple(hole_record(given, hole, fit) for hole in fit.holes if hole.purpose not in _SCREWS),
        "screws": tuple(hole_record(given, hole, fit) for hole in fit.holes if hole.purpose in _SCREWS),
        "lead": fit.cable,
        "power": fit.power,
        "battery": fit.battery,
        "needs": fit.needs,
        "refused": fit.refused,
        "cost": fit.cost if fit.status == "fits" else None,
        "currency": fit.currency or None,
        "cost_needs": fit.cost_needs,
    }


def hole_record(given: OpeningInput, hole: Hole, fit: Fit | None = None) -> HoleRecord:
    """Return a hole with the point where it starts and its direction.

    Source: geometry. ``direction`` is proportional to normal + tan(up) y - tan(edge) x for a hole in a face, and to
    normal + tan(up) y + tan(edge) z for one in the lock edge.

    Examples
    --------
    >>> from hwsched.values import Catalogue
    >>> given = OpeningInput(Opening("o", "M1"), (Leaf("l", "single", thickness_mm=44.45),), (), Catalogue({}, ""))
    >>> made = hole_record(given, Hole("lead", "single", "key", 70.0, 1000.0, 12.7))
    >>> made.start_mm, made.direction
    ((70.0, 1000.0, 44.45), (0.0, 0.0, -1.0))
    """
    way = _INTO[hole.face]
    up, edge = tan(radians(hole.up_deg)), tan(radians(hole.edge_deg))
    thickness = next((leaf.thickness_mm for leaf in given.leaves if (leaf.position or "single") == hole.leaf), None)
    start: tuple[float, float, float | None]
    if way[2]:
        # In a face z follows from the face.
        face_mm = thickness if hole.face == "key" else 0.0
        start = (hole.x_mm, hole.y_mm, None if face_mm is None else face_mm + hole.from_depth_mm * way[2])
        whole = (-edge, up, way[2])
    else:
        # In an edge the hole's own x counts from the inside face.
        edge_mm = 0.0
        if hole.face == "hinge-edge":
            leaf = next((each for each in given.leaves if leaf_name(each) == hole.leaf), None)
            edge_mm = (leaf.width_mm if leaf is not None else None) or 0.0
        start = (edge_mm + hole.from_depth_mm * way[0], hole.y_mm, hole.x_mm)
        whole = (way[0], up, edge)
    long = sqrt(sum(each * each for each in whole))
    direction = (whole[0] / long + 0.0, whole[1] / long + 0.0, whole[2] / long + 0.0)
    return HoleRecord(hole, hole.depth_mm is None, start, direction, _places(given, hole, start, fit))


def _places(
    given: OpeningInput, hole: Hole, start: tuple[float, float, float | None], fit: Fit | None
) -> tuple[tuple[float, float, float | None], ...] | None:
    """Return where each of a record's holes starts."""
    if not hole.by_template:
        return (start,) if hole.count == 1 else None
    unit, plate = (None, None) if fit is None else (unit_part(given, fit), fit.placement)
    if hole.purpose != "fixing" or unit is None or plate is None:
        return None
    # As the rules have them: a screw must not be told at another place than where it was proved to end well.
    spots = screw_places(unit, plate.width_mm, plate.height_mm)
    if plate.face == "edge":
        # The plate lies in the edge: what runs across it runs through the leaf.
        return tuple((start[0], plate.y_mm + y, plate.x_mm + x) for x, y in spots)
    return tuple((plate.x_mm + x, plate.y_mm + y, start[2]) for x, y in spots)


def _circuit(power: PowerResult, opening_id: str) -> CircuitRecord | None:
    found = power.circuit_of(opening_id)
    if found is None:
        return None
    supply, circuit = found
    node, frame = circuit.node_of_devices(opening_id), circuit.node_of(opening_id)
    return CircuitRecord(
        supply.supply.name,
        circuit.circuit.name,
        {} if node is None else node.volts,
        None if node is None else node.minimum_v,
        None if node is None else node.maximum_v,
        None if frame is None else frame.distance_m,
        tuple(device for device in circuit.devices if device.opening_id == opening_id),
    )

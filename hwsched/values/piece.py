"""Pieces: what of a fit can be taken in the hand, each with an identity of its own.

A piece follows from the fit; what is known of it besides (serial number, lot, that it went out) is written down by an
operation under the same identifier. Fits are shared by openings alike, pieces never are.
"""

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass, replace
from typing import Final
from uuid import UUID, uuid5

from hwsched.values.fit import Fit
from hwsched.values.opening_input import LockPoint

_SPACE: Final = UUID("b1d2c1c2-6a4e-4f0e-8f8c-2f3f5d1f9a30")
COUNTED: Final = frozenset({"ring", "battery", "coin-cell", "wire", "mounting", "fastener", "consumable"})
"""Roles that are counted or measured as a lot; of every other role each piece is told apart."""
PLANNED, ISSUED = "planned", "issued"
"""States: in the fit; given out with a packet."""
BENCH: Final = ("built", "programmed", "tested")
"""What is done to a piece at the bench, in this order: a coin cell set in, or a cam screwed on; key and unit programmed
with each other; tried with a key that may and one that may not."""
AT_BENCH: Final = {"cylinder": ("built",), "unit": BENCH}
"""What of it can be done to a piece in which role."""


@dataclass(frozen=True, slots=True)
class Piece:
    """One piece, or one counted lot, at a lock point."""

    id: str
    """The same whenever it is worked out: of lock point, role, part and number."""
    point_id: str | None
    """None: the place is locked no more."""
    point_name: str
    role: str
    part: str
    number: int
    """Counted from 1 among equal ones."""
    quantity: float
    source: str
    """fitted, set, by-hand."""
    description: str = ""
    serial: str = ""
    lot: str = ""
    state: str = PLANNED
    in_fit: bool = True
    """False: it is on record, and the fit has it no longer."""
    version: int = 0
    """Of its row; 0 while nothing is on record of it."""
    done: tuple[str, ...] = ()
    """What was done to it at the bench."""


def state_text(piece: Piece) -> str:
    """Return state and bench work of a piece as its row holds them.

    Examples
    --------
    >>> state_text(Piece("i", "p", "", "unit", "U-1", 1, 1.0, "fitted", done=("built", "programmed")))
    'planned, built, programmed'
    """
    return ", ".join((piece.state, *piece.done))


def with_state(piece: Piece, text: str) -> Piece:
    """Return a piece with the state and bench work that its row holds.

    Examples
    --------
    >>> with_state(Piece("i", "p", "", "unit", "U-1", 1, 1.0, "fitted"), "issued, tested").done
    ('tested',)
    """
    state, *done = text.split(", ")
    return replace(piece, state=state, done=tuple(word for word in BENCH if word in done))


def piece_id(point_id: str, role: str, part: str, number: int) -> str:
    """Return the identifier of the n-th piece of a part in a role at a lock point.

    Examples
    --------
    >>> piece_id("p", "unit", "U-1", 1) == piece_id("p", "unit", "U-1", 1) != piece_id("p", "unit", "U-1", 2)
    True
    """
    # Named and not random: the same fit worked out anew must meet the serial numbers that are already on record.
    return uuid5(_SPACE, f"{point_id}/{role}/{part}/{number}").hex


def pieces_of(point: LockPoint, fit: Fit) -> tuple[Piece, ...]:
    """Return the pieces of a fit at a lock point, in the order of its parts; tools are brought, and are none."""
    counts: Counter[tuple[str, str]] = Counter()
    found = []
    for part in fit.parts:
        if part.role == "tool":
            continue
        # A broken quantity is a length, and no number of pieces.
        single = part.role not in COUNTED and part.quantity == int(part.quantity)
        for _ in range(int(part.quantity) if single else 1):
            counts[part.role, part.part] += 1
            number = counts[part.role, part.part]
            found.append(
                Piece(
                    piece_id(point.id, part.role, part.part, number),
                    point.id,
                    point.name,
                    part.role,
                    part.part,
                    number,
                    1.0 if single else part.quantity,
                    part.source,
                    part.description,
                )
            )
    return tuple(found)


@dataclass(frozen=True, slots=True)
class PieceThen:
    """What was on record of a piece from the bench: work, serial number, lot."""

    point_id: str
    role: str
    part: str
    number: int
    """Counted from 1 among equal ones."""
    done: tuple[str, ...] = ()
    serial: str = ""
    lot: str = ""


def bench_of(pieces: Iterable[PieceThen]) -> frozenset[tuple[str, str, str]]:
    """Return what was done at the bench: lock point, role of the piece, and built, programmed or tested.

    Of several pieces alike at a lock point the work stands there only where it was done to each that is on record.

    Examples
    --------
    >>> both = PieceThen("p", "unit", "U-1", 1, ("built", "tested")), PieceThen("p", "unit", "U-1", 2, ("built",))
    >>> bench_of(both)
    frozenset({('p', 'unit', 'built')})
    """
    found: dict[tuple[str, str], set[str]] = {}
    for each in pieces:
        place = (each.point_id, each.role)
        found[place] = set(each.done) & found.get(place, set(each.done))
    return frozenset((*place, word) for place, words in found.items() for word in words)

"""Where leaves stand on the sheet when a face is looked at: left or right, mirrored, in pairs, or without a floor.

x of a leaf counts from its lock edge toward its hinge edge, y from the finished floor; the sheet's x runs to the right.
"""

from dataclasses import dataclass, replace
from typing import Final

from hwsched.drawings.handing import Face, lock_edge_left
from hwsched.drawings.unknown import known, size_problem
from hwsched.language import phrase
from hwsched.rules.reading import leaf_hand, lock_item, lock_leaf
from hwsched.rules.saying import label_said
from hwsched.survey import LEAF
from hwsched.values import Leaf, OpeningInput

MEETING_GAP_MM: Final = 3.0
"""Between the leaves of a pair; drawn by convention."""
_SHOWN_AROUND_MM: Final = 180.0
"""Of a leaf whose height above the floor is unknown, so much is shown above and below its lock."""


@dataclass(frozen=True, slots=True)
class LeafOnSheet:
    """One leaf as it stands on the sheet."""

    leaf: Leaf
    left_mm: float
    width_mm: float
    bottom_mm: float
    top_mm: float
    lock_left: bool
    broken: bool = False
    """Upper and lower ends are not known: only a part is drawn, between break lines."""

    def across(self, x_mm: float) -> float:
        """Sheet's x of a distance from the lock edge [mm]."""
        return self.left_mm + x_mm if self.lock_left else self.left_mm + self.width_mm - x_mm

    @property
    def lock_edge(self) -> float:
        """Sheet's x of the lock edge."""
        return self.across(0.0)

    @property
    def hinge_edge(self) -> float:
        """Sheet's x of the hinge edge."""
        return self.across(self.width_mm)

    @property
    def toward_hinge(self) -> float:
        """1 when the hinge edge is to the right, else -1."""
        return 1.0 if self.lock_left else -1.0


def leaves_on_face(given: OpeningInput, face: Face) -> tuple[tuple[LeafOnSheet, ...], tuple[str, ...], tuple[str, ...]]:
    """Lay out the leaves of an opening as a face of them is seen; the lock's leaf comes first.

    Returns
    -------
    leaves : tuple of LeafOnSheet
        Empty when something that decides the picture is unknown or impossible.
    problems : tuple of str
        What is unknown or impossible.
    notes : tuple of str
        What was drawn although a fact is missing, and how.
    """
    opening = given.opening
    problems: list[str] = []
    if opening.hand is None:
        problems.append(phrase("unknown: needs {label_of}", label_of=label_said("opening.hand")))
    if opening.form is None and len(given.leaves) != 1:
        problems.append(phrase("unknown: needs {label_of}", label_of=label_said("opening.form")))
    active = lock_leaf(given)
    if active is None:
        problems.append(
            phrase("unknown: needs {label_of}", label_of=label_said("leaf.position"))
            if given.leaves
            else phrase("unknown: needs the leaf")
        )
        return (), tuple(problems), ()
    wanted = [active]
    if opening.form == "pair":
        other = next((leaf for leaf in given.leaves if leaf is not active), None)
        if other is None:
            problems.append(phrase("unknown: needs the inactive leaf of the pair"))
        else:
            wanted.append(other)
    for leaf in wanted:
        which = f" ({leaf.position} leaf)" if len(wanted) > 1 and leaf.position else ""
        for name in ("width_mm", "height_mm"):
            problem = size_problem(f"leaf.{name}", getattr(leaf, name))
            if problem:
                problems.append(problem + which)
    if problems or opening.hand is None:
        return (), tuple(problems), ()
    lock_left = lock_edge_left(leaf_hand(given) or opening.hand, face)
    notes: list[str] = []
    placed = [_standing(given, wanted[0], lock_left, problems, notes)]
    if len(wanted) > 1:
        other_leaf = _standing(given, wanted[1], not lock_left, problems, [])
        gap = MEETING_GAP_MM
        if lock_left:
            placed = [replace(placed[0], left_mm=other_leaf.width_mm + gap), other_leaf]
        else:
            placed.append(replace(other_leaf, left_mm=placed[0].width_mm + gap))
    return ((), tuple(problems), ()) if problems else (tuple(placed), (), tuple(notes))


def _standing(given: OpeningInput, leaf: Leaf, lock_left: bool, problems: list[str], notes: list[str]) -> LeafOnSheet:
    width, height, undercut = leaf.width_mm or 0.0, leaf.height_mm or 0.0, leaf.undercut_mm
    if known(undercut):
        if undercut < 0:
            problems.append(
                phrase(
                    "{label_of} of {undercut:g} mm is no size",
                    label_of=label_said("leaf.undercut_mm"),
                    undercut=undercut,
                )
            )
        return LeafOnSheet(leaf, 0.0, width, undercut, undercut + height, lock_left)
    if given.opening.form == "cabinet":
        lock = lock_item(given)
        middle = lock.cylinder_height_mm if lock is not None else None
        if not known(middle):
            problems.append(
                phrase(
                    "unknown: needs {label_of} (height of the cabinet's leaf above floor)",
                    label_of=label_said("leaf.undercut_mm"),
                )
            )
            return LeafOnSheet(leaf, 0.0, width, 0.0, height, lock_left)
        notes.append(phrase("How high the leaf hangs is not surveyed: only the part about the lock is drawn."))
        around = min(_SHOWN_AROUND_MM, height / 2)
        return LeafOnSheet(leaf, 0.0, width, middle - around, middle + around, lock_left, broken=True)
    notes.append(
        phrase(
            "{label} is not surveyed: the leaf is drawn down to the floor.", label=LEAF.attribute("undercut_mm").label
        )
    )
    return LeafOnSheet(leaf, 0.0, width, 0.0, height, lock_left)

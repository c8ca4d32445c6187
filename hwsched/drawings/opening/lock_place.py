"""Where the lock that is converted stands: its cylinder's centre, its case inside the leaf, and the new part's size."""

from dataclasses import dataclass

from hwsched.attributes.of_parts import HEAD_DIAMETER_MM, THREAD_DIAMETER_MM, TRIM_DIAMETER_MM
from hwsched.calc.opening.placement import Rect
from hwsched.drawings.unknown import known, positive
from hwsched.language import phrase
from hwsched.quantities import LengthStyle, format_length
from hwsched.rules.reading import CASE_IN_LEAF, lock_item, lock_part
from hwsched.rules.wording import label_of
from hwsched.values import Fit, Item, Leaf, OpeningInput, Part


@dataclass(frozen=True, slots=True)
class LockPlace:
    """A lock whose centre is known."""

    item: Item
    x_mm: float
    """Cylinder's centre from the lock edge."""
    y_mm: float
    """Cylinder's centre above the floor."""
    in_leaf: bool = True
    """Whether its case stands in a pocket of the leaf; else on the inside face, or round a pane of glass."""

    def case_rect(self) -> Rect | None:
        """Return the case as the face shows it, x from the lock edge; None while a size of it is unknown."""
        item = self.item
        if not (positive(item.case_height_mm) and positive(item.case_depth_mm) and known(item.case_above_mm)):
            return None
        top = self.y_mm + item.case_above_mm
        return Rect(0.0, top - item.case_height_mm, item.case_depth_mm, top)

    def case_across(self, thickness_mm: float) -> tuple[float, float] | None:
        """Return where the case stands through the leaf, z from the inside face; None while unknown.

        A case whose offset was not surveyed is taken as centred, as the survey form says; that of a rim lock stands on
        the inside face, before the leaf.
        """
        item = self.item
        if not positive(item.case_width_mm):
            return None
        if item.lock_form == "rim":
            return -item.case_width_mm, 0.0
        offset = item.case_offset_mm if known(item.case_offset_mm) else 0.0
        middle = thickness_mm / 2 + offset
        return middle - item.case_width_mm / 2, middle + item.case_width_mm / 2


def lock_place(
    given: OpeningInput, leaf: Leaf, style: LengthStyle
) -> tuple[LockPlace | None, tuple[str, ...], tuple[str, ...]]:
    """Find the centre of the lock on its leaf.

    Returns
    -------
    place : LockPlace or None
        None while its centre is unknown or impossible.
    problems : tuple of str
        A centre outside of the leaf: nothing may be drawn from it.
    needs : tuple of str
        Which facts are missing.
    """
    item = lock_item(given)
    if item is None:
        return None, (), ("existing lock",)
    x, y = item.backset_mm, item.cylinder_height_mm
    needs = [label_of(f"existing_item.{name}") for name in ("backset_mm", "cylinder_height_mm")
             if not known(getattr(item, name))]  # fmt: skip
    problems = []
    if known(x) and positive(leaf.width_mm) and not 0 < x < leaf.width_mm:
        problems.append(
            phrase(
                "the backset of {length} puts the cylinder outside of a leaf {length_2} wide",
                length=format_length(x, style),
                length_2=format_length(leaf.width_mm, style),
            )
        )
    if known(y) and positive(leaf.height_mm) and not _in_height(given, leaf, y):
        problems.append(
            phrase(
                "the cylinder at {length} above the floor stands outside of a leaf {length_2} high",
                length=format_length(y, style),
                length_2=format_length(leaf.height_mm, style),
            )
        )
    if problems or not known(x) or not known(y):
        return None, tuple(problems), tuple(needs)
    in_leaf = item.lock_form in CASE_IN_LEAF and leaf.material != "glass"
    return LockPlace(item, x, y, in_leaf), (), ()


def case_problem(place: LockPlace, thickness_mm: float, style: LengthStyle) -> tuple[str, ...]:
    """Say when the surveyed case does not fit into the leaf's thickness: one of the two facts is wrong."""
    through = place.case_across(thickness_mm) if place.in_leaf else None
    # What stands on a face, or clasps a pane, is rightly thicker than the leaf.
    if through is None or (through[0] >= -0.01 and through[1] <= thickness_mm + 0.01):
        return ()
    return (
        phrase(
            "a lock case {length} thick does not stand inside a leaf {length_2} thick: one of them is wrong",
            length=format_length(through[1] - through[0], style),
            length_2=format_length(thickness_mm, style),
        ),
    )


def _in_height(given: OpeningInput, leaf: Leaf, y: float) -> bool:
    low = leaf.undercut_mm if known(leaf.undercut_mm) else 0.0
    if given.opening.form == "cabinet" and not known(leaf.undercut_mm):
        return True
    return low < y < low + (leaf.height_mm or 0.0)


def face_diameter(given: OpeningInput, fit: Fit) -> tuple[Part | None, float | None]:
    """Return the new cylinder or lock and the diameter of what is seen of it on the key face; None while unknown."""
    part = lock_part(given, fit)
    if part is None:
        return None, None
    names = {"bored-lever-lock": TRIM_DIAMETER_MM, "cabinet-lock": THREAD_DIAMETER_MM}
    value = part.number_of(names.get(part.kind, HEAD_DIAMETER_MM))
    return part, value if positive(value) else None

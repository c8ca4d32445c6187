"""How facts, sizes and statuses are put into words on every document."""

from hwsched.attributes import Attribute
from hwsched.quantities import LengthStyle, format_feet_inches, format_length
from hwsched.survey import ITEM, LEAF, OPENING
from hwsched.values import Fit, Leaf

UNKNOWN = "unknown"
STATUS = {"fits": "Fits", "does-not-fit": "Does not fit", "to-measure": "To measure"}
SEVERITY = {"error": "Error", "warning": "Warning", "note": "Note"}
ADVICE = (
    "This is a planning note, not a code ruling. The adopted code edition, the authority having jurisdiction, "
    "the product and door listings, and a licensed or qualified person decide."
)
ABBREVIATIONS = {
    "LH": "left hand, seen from the key side",
    "RH": "right hand, seen from the key side",
    "LHR": "left hand reverse: swings toward the key side",
    "RHR": "right hand reverse: swings toward the key side",
    "EA": "each",
    "SET": "set",
    "PR": "pair",
    "AFF": "above finished floor",
}


def length(mm: float | None, style: LengthStyle) -> str:
    """Put a length into the project's units."""
    return UNKNOWN if mm is None else format_length(mm, style)


def size(leaf: Leaf | None, style: LengthStyle) -> str:
    """Return width by height of a leaf."""
    if leaf is None:
        return "no leaf"
    if leaf.width_mm is None or leaf.height_mm is None:
        return UNKNOWN
    show = format_feet_inches if style == "fraction" else lambda mm: format_length(mm, style)
    return f"{show(leaf.width_mm)} × {show(leaf.height_mm)}"


def choice(attribute: Attribute, value: str | None) -> str:
    """Return the label of a choice."""
    if value is None:
        return UNKNOWN
    found = attribute.choice(value)
    return found.label if found else value


def opening_word(name: str, value: str | None) -> str:
    """Return the label of a choice of the opening."""
    return choice(OPENING.attribute(name), value)


def leaf_word(name: str, value: str | None) -> str:
    """Return the label of a choice of the leaf."""
    return choice(LEAF.attribute(name), value)


def item_word(name: str, value: str | None) -> str:
    """Return the label of a choice of an existing item."""
    return choice(ITEM.attribute(name), value)


def yes_no(value: bool | None) -> str:
    """Return yes, no or unknown."""
    return UNKNOWN if value is None else ("yes" if value else "no")


def place(building: str | None, level: str | None) -> str:
    """Put building and level into one phrase."""
    return " · ".join(part for part in (building, level) if part) or "place not given"


def location(room_from: str | None, room_to: str | None) -> str:
    """Return room to room."""
    if room_from and room_to:
        return f"{room_from} to {room_to}"
    return room_from or room_to or ""


def quantity(value: float) -> int | float:
    """Return whole quantities as whole numbers."""
    rounded = round(value, 3)
    return int(rounded) if rounded == int(rounded) else rounded


def days(life: float) -> str:
    """Say how long a pack lasts: whole days that it surely lasts, as its calendar counts them.

    Examples
    --------
    >>> days(300.96)
    'about 300 days'
    """
    return f"about {int(life)} days"


def status(fit: Fit | None) -> str:
    """Put the status of a fit into words."""
    return "Not worked out" if fit is None else STATUS[fit.status]

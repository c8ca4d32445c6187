"""How facts, sizes and statuses are put into words on every document."""

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from hwsched.attributes import Attribute
from hwsched.catalogue import kind_of
from hwsched.kept_sentences import kept_phrase
from hwsched.language import phrase, phrase_of_count, to_phrase
from hwsched.quantities import LengthStyle, format_feet_inches, format_length
from hwsched.render.blocks import Column
from hwsched.rules.wording import label_of
from hwsched.survey import ITEM, LEAF, OPENING, POWER_ENTITIES
from hwsched.values import Catalogue, Fit, Leaf

UNKNOWN = to_phrase("unknown")
STATUS = {"fits": to_phrase("Fits"), "does-not-fit": to_phrase("Does not fit"), "to-measure": to_phrase("To measure")}
SEVERITY = {"error": to_phrase("Error"), "warning": to_phrase("Warning"), "note": to_phrase("Note")}
ADVICE = to_phrase(
    "This is a planning note, not a code ruling. The adopted code edition, the authority having jurisdiction, product "
    "and door listings, and a licensed or qualified person decide."
)
ABBREVIATIONS = {
    "LH": to_phrase("left hand, seen from the key side"),
    "RH": to_phrase("right hand, seen from the key side"),
    "LHR": to_phrase("left hand reverse: swings toward the key side"),
    "RHR": to_phrase("right hand reverse: swings toward the key side"),
    "EA": to_phrase("each"),
    "SET": to_phrase("set"),
    "PR": to_phrase("pair"),
    "AFF": to_phrase("above finished floor"),
}


_LAID = {entity.name: entity.attributes for entity in POWER_ENTITIES}


def said(columns: Sequence[Column]) -> tuple[Column, ...]:
    """Return columns with their headings said in the language in force."""
    return tuple(replace(each, title=phrase(each.title)) for each in columns)


def length(mm: float | None, style: LengthStyle) -> str:
    """Put a length into the project's units."""
    return phrase(UNKNOWN) if mm is None else format_length(mm, style)


def size(leaf: Leaf | None, style: LengthStyle) -> str:
    """Return width by height of a leaf."""
    if leaf is None:
        return phrase("no leaf")
    if leaf.width_mm is None or leaf.height_mm is None:
        return phrase(UNKNOWN)
    show = format_feet_inches if style == "fraction" else lambda mm: format_length(mm, style)
    return f"{show(leaf.width_mm)} × {show(leaf.height_mm)}"


def choice(attribute: Attribute, value: str | None) -> str:
    """Return the label of a choice."""
    if value is None:
        return phrase(UNKNOWN)
    found = attribute.choice(value)
    return phrase(found.label) if found else value


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
    return phrase(UNKNOWN) if value is None else phrase("yes" if value else "no")


def place(building: str | None, level: str | None) -> str:
    """Put building and level into one phrase."""
    return " · ".join(part for part in (building, level) if part) or phrase("place not given")


def location(room_from: str | None, room_to: str | None) -> str:
    """Return room to room."""
    if room_from and room_to:
        return phrase("{room_from} to {room_to}", room_from=room_from, room_to=room_to)
    return room_from or room_to or ""


_COMMAND: Final = re.compile(r"\bhwsched [a-z-]+ [a-z-]+")


def cure_at_door(cure: str, rule: str) -> str:
    """Say how what a rule found is cured to who stands at a door: a command line is for the office.

    Examples
    --------
    >>> cure_at_door("Fit it again: hwsched opening fit PROJECT.", "fit-complete")
    'The office sees to it.'
    >>> cure_at_door("Take a longer screw.", "fastener-fits")
    'Take a longer screw.'
    """
    return phrase("The office sees to it.") if _COMMAND.search(cure) else kept_phrase(cure, rule)


def days(life: float) -> str:
    """Say how long a pack lasts: whole days that it surely lasts, as its calendar counts them.

    Examples
    --------
    >>> days(300.96)
    'about 300 days'
    """
    return phrase_of_count("about {count} day", "about {count} days", int(life))


def needed(needs: Sequence[str], catalogue: Catalogue | None = None) -> str:
    """Put what is missing into words: of a part its number and what its kind calls it, else as the survey calls it.

    Examples
    --------
    >>> needed(("opening.installed_on", "circuit.limiter_a", "a fuse of 2 A"))
    'opening: Installed on, circuit: Fuse or limiter, a fuse of 2 A'
    """
    return ", ".join(_need(need, catalogue) for need in needs)


def _need(need: str, catalogue: Catalogue | None) -> str:
    about, _, name = need.rpartition(".")
    number = about.removeprefix("part ")
    part = catalogue.get(number) if catalogue is not None and number != about else None
    kind = kind_of(part.kind) if part is not None else None
    asked = kind.attributes if kind is not None else _LAID.get(about, ())
    declared = next((each.label for each in asked if each.name == name), None)
    return label_of(need) if declared is None else f"{about}: {phrase(declared)}"


def status(fit: Fit | None) -> str:
    """Put the status of a fit into words."""
    return phrase("Not worked out") if fit is None else phrase(STATUS[fit.status])

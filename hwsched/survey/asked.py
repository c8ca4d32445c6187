"""Of which forms of opening a fact is asked, where not of all: nothing is asked for that no rule reads."""

from typing import Final

DOORS: Final = ("single", "pair")
READERS: Final = ("lift", "turnstile")
ASKED: Final[dict[str, tuple[str, ...]]] = {
    **dict.fromkeys(
        ("no_exit_confirmed", "stair_release", "smoke_seal", "self_closes", "unused_holes", "stops"), DOORS
    ),
    **dict.fromkeys(("latch_form", "frame_face_mm", "header_depth_mm", "cutout_height_mm"), (*DOORS, "gate")),
    **dict.fromkeys(("closes_first", "bolt_form"), ("pair",)),
    **dict.fromkeys(("controller_output", "connected_by", "fire_recall"), READERS),
}
"""By the name of the fact; one that does not stand here is asked of every opening."""

OF_KINDS: Final[dict[str, tuple[str, ...]]] = {
    "fail": ("electric-strike", "electromagnetic-lock", "delayed-egress", "lock"),
    "bolt_form": ("flush-bolt",),
    "stops": ("lite",),
    "cutout_height_mm": ("strike", "electric-strike"),
    "latch_form": ("lock",),
}
"""Kinds of existing item of which a fact is asked, by its name; others are asked of locks, or of every item."""


def asked_of(name: str, form: str | None) -> bool:
    """Tell whether a fact is asked of an opening of that form; of one whose form nobody noted everything is.

    Examples
    --------
    >>> asked_of("closes_first", "pair"), asked_of("closes_first", "single"), asked_of("closes_first", None)
    (True, False, True)
    """
    forms = ASKED.get(name)
    return forms is None or form is None or form in forms

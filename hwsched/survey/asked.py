"""Of which openings, locks and items a fact is asked, where not of all: nothing is asked for that no rule reads."""

from collections.abc import Mapping
from typing import Final, Protocol

DOORS: Final = ("single", "pair")
READERS: Final = ("lift", "turnstile")
WITH_LEAF: Final = (*DOORS, "gate", "cabinet")
ASKED: Final[dict[str, tuple[str, ...]]] = {
    **dict.fromkeys(
        (
            "no_exit_confirmed",
            "stair_release",
            "smoke_seal",
            "self_closes",
            "unused_holes",
            "stops",
            "stair",
            "frame_rating",
        ),
        DOORS,
    ),
    **dict.fromkeys(
        ("latch_form", "frame_face_mm", "header_depth_mm", "cutout_height_mm", "frame_stop_mm"),
        (*DOORS, "gate"),
    ),
    **dict.fromkeys(
        (
            "hand",
            "frame_material",
            "function",
            "backset_mm",
            "material",
            "construction",
            "stile_mm",
            "undercut_mm",
            "core",
        ),
        WITH_LEAF,
    ),
    "raceway": WITH_LEAF,
    **dict.fromkeys(("closes_first", "bolt_form"), ("pair",)),
    **dict.fromkeys(("device_form", "rod_x_mm", "rod_ends", "bolt_inset_mm"), WITH_LEAF),
    **dict.fromkeys(("controller_output", "connected_by", "fire_recall", "wall_build", "reader_aside_mm"), READERS),
    # Whoever wants to note it may: how far an item stands proud tells no more than whether a long bit is wanted.
    "projection_mm": (),
}
"""By the name of the fact, forms of opening; one that does not stand here is asked of every opening."""

_CYLINDERS: Final = ("mortise", "rim", "euro-profile")
OF_LOCK_FORMS: Final[dict[str, tuple[str, ...]]] = {
    **dict.fromkeys(("cross_bore_mm", "edge_bore_mm"), ("bored",)),
    **dict.fromkeys(
        ("case_height_mm", "case_depth_mm", "case_above_mm", "case_width_mm", "trim_key_mm", "cam_form"), _CYLINDERS
    ),
    **dict.fromkeys(
        ("case_offset_mm", "front_height_mm", "front_width_mm", "trim_inside_mm", "thumb_turn"),
        ("mortise", "euro-profile"),
    ),
}
"""By the name of the fact, forms of lock; one that does not stand here is asked of every lock."""

OF_KINDS: Final[dict[str, tuple[str, ...]]] = {
    "fail": ("electric-strike", "electromagnetic-lock", "delayed-egress", "lock"),
    "bolt_form": ("flush-bolt",),
    "stops": ("lite",),
    "cutout_height_mm": ("strike", "electric-strike"),
    "latch_form": ("lock",),
    **dict.fromkeys(("rated_v", "rated_a", "current_form"), ("electric-strike", "electromagnetic-lock")),
    **dict.fromkeys(("conductors", "loop_ohm"), ("power-transfer",)),
    **dict.fromkeys(("device_form", "rod_x_mm", "rod_ends"), ("exit-device",)),
    "bolt_inset_mm": ("pull", "lever", "closer", "exit-device"),
}
"""Kinds of existing item of which a fact is asked, by its name; others are asked of locks, or of every item."""

WITH_RODS: Final = ("surface-rods", "concealed-rods")
OF_DEVICES: Final[dict[str, tuple[str, ...]]] = dict.fromkeys(("rod_x_mm", "rod_ends"), WITH_RODS)
"""Kinds of exit device of which a fact is asked, by its name; others are asked of every one."""

IDLE: Final[Mapping[str, tuple[str, object]]] = {
    "stair_release": ("stair", False),
    "storeys_served": ("stair", False),
    "smoke_seal": ("rating", "none"),
    "frame_rating": ("rating", "none"),
    "self_closes": ("rating", "none"),
    "unused_holes": ("rating", "none"),
    "stops": ("rating", "none"),
}
"""By the name of the fact, the opening's fact and its value beside which it decides nothing."""


class _Opening(Protocol):
    @property
    def stair(self) -> bool | None: ...
    @property
    def rating(self) -> str | None: ...


class _Leaf(Protocol):
    @property
    def construction(self) -> str | None: ...
    @property
    def material(self) -> str | None: ...


def asked_of(name: str, form: str | None) -> bool:
    """Tell whether a fact is asked of an opening of that form; of one whose form nobody noted everything is.

    Examples
    --------
    >>> asked_of("closes_first", "pair"), asked_of("closes_first", "single"), asked_of("closes_first", None)
    (True, False, True)
    """
    forms = ASKED.get(name)
    return forms is None or form is None or form in forms


def asked_of_lock(name: str, lock_form: str | None) -> bool:
    """Tell whether a fact is asked of a lock of that form; of one whose form nobody noted everything is.

    Examples
    --------
    >>> asked_of_lock("cross_bore_mm", "bored"), asked_of_lock("cross_bore_mm", "rim"), asked_of_lock("fail", "rim")
    (True, False, True)
    """
    forms = OF_LOCK_FORMS.get(name)
    return forms is None or lock_form is None or lock_form in forms


def asked_of_device(name: str, device_form: str | None) -> bool:
    """Tell whether a fact is asked of an exit device of that kind; of one whose kind nobody noted everything is.

    Examples
    --------
    >>> asked_of_device("rod_x_mm", "rim"), asked_of_device("rod_x_mm", None)
    (False, True)
    """
    forms = OF_DEVICES.get(name)
    return forms is None or device_form is None or device_form in forms


def decides(name: str, opening: _Opening, leaf: _Leaf | None = None) -> bool:
    """Tell whether a fact can decide anything beside what is known of the opening and the leaf already."""
    if name in IDLE:
        beside, value = IDLE[name]
        return bool(getattr(opening, beside) != value)
    if name == "stile_mm" and leaf is not None:
        # A flush leaf carries hardware anywhere on its face, glass anywhere on the pane.
        return leaf.construction not in ("flush", "frameless") or leaf.material in ("steel-gate", None)
    return True

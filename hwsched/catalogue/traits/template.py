"""What a part's template says of the holes that it needs; blank: the practice of the trade is taken, and so said."""

from typing import Final

from hwsched.attributes import Attribute

_BLANK: Final = "Blank: common practice is taken, and said."


def _length(name: str, label: str, note: str, high: float = 300.0, low: float = 1.0) -> Attribute:
    return Attribute(name, label, "length", "mm", low=low, high=high, note=f"{note} {_BLANK}")


def _angle(name: str, label: str, note: str, high: float = 80.0, low: float = 0.0) -> Attribute:
    return Attribute(name, label, "number", "deg", low=low, high=high, note=f"{note} {_BLANK}")


UNIT_TEMPLATE: Final[tuple[Attribute, ...]] = (
    _length(
        "hole_above_existing_mm",
        "Hole above existing hole",
        "In an aluminium stile, from the top of the cylinder's or thumb turn's hole to the centre of the lead's hole.",
    ),
    _length(
        "plate_above_existing_mm",
        "Plate above existing hole",
        "On a narrow stile, from the top of the existing hole to the lower edge of the plate.",
        low=0.0,
    ),
    _length(
        "hole_from_cylinder_mm",
        "Hole from cylinder",
        "Where the unit stands off the cylinder: from the cylinder's centre to the lead's hole.",
    ),
    _length(
        "channel_entry_mm", "Channel entry depth", "Depth of the square bore in which a channel begins.", high=60.0
    ),
    _length("channel_diameter_mm", "Channel diameter", "Of the bore along the leaf.", high=25.0),
    _angle("channel_angle_deg", "Channel angle", "Of the bore along the leaf to the leaf's face.", low=1.0, high=60.0),
)
BORED_TEMPLATE: Final[tuple[Attribute, ...]] = (
    _length("lead_hole_mm", "Lead hole", "Diameter of the lead's hole into the cross bore.", high=25.0),
    _angle("lead_hole_up_deg", "Lead hole, upward", "How far it leans up, or down, out of the cross bore.", low=10.0),
    _angle("lead_hole_edge_deg", "Lead hole, toward edge", "How far it leans toward the lock edge.", high=45.0),
)
LEAD_TEMPLATE: Final[tuple[Attribute, ...]] = (
    _length("lead_diameter_mm", "Lead diameter", "Or the greater width of a flat one.", high=15.0, low=0.5),
    _length("bend_radius_mm", "Bend radius of lead", "The least to which it may be bent.", high=100.0, low=0.5),
)
BACK_HOLE: Final = _length("back_hole_mm", "Hole behind case", "Of the lead, behind the lock's case.", high=60.0)
BRIDGE_HOLE: Final = _length(
    "bridge_hole_mm", "Hole through bridge", "Of the lead, between the lock's pocket and the unit's.", high=25.0
)

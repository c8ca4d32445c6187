"""Part kind: surface units."""

from hwsched.attributes import Attribute, Choice
from hwsched.catalogue.kind import PartKind
from hwsched.catalogue.traits.lead import MATES_WITH
from hwsched.catalogue.traits.place import EXPOSURE, FIRE_LISTED, TEMPERATURE_LOW
from hwsched.catalogue.traits.screws import SCREWS
from hwsched.catalogue.traits.template import UNIT_TEMPLATE
from hwsched.catalogue.traits.unit_power import UNIT_POWER

SURFACE_UNIT = PartKind(
    "surface-unit",
    "Surface units",
    (
        Attribute(
            "housing",
            "Housing",
            "choice",
            choices=(
                Choice("wide", "Wide"),
                Choice("narrow", "Narrow"),
                Choice("small", "Small"),
            ),
            required=True,
        ),
        Attribute("plate_width_mm", "Plate width", "length", "mm", low=10, high=400, required=True),
        Attribute("plate_height_mm", "Plate height", "length", "mm", low=10, high=600, required=True),
        Attribute("depth_mm", "Depth", "length", "mm", low=3, high=150, required=True),
        Attribute(
            "window_x0_mm",
            "Window, left",
            "length",
            "mm",
            low=-200,
            high=600,
            required=True,
            note="Where the access hole may be, from the plate's lower left.",
        ),
        Attribute("window_y0_mm", "Window, bottom", "length", "mm", low=-200, high=600, required=True),
        Attribute("window_x1_mm", "Window, right", "length", "mm", low=-200, high=600, required=True),
        Attribute("window_y1_mm", "Window, top", "length", "mm", low=-200, high=800, required=True),
        Attribute(
            "connector_x_mm",
            "Connector from left",
            "length",
            "mm",
            low=-50,
            high=600,
            required=True,
            note="From the plate's lower left.",
        ),
        Attribute("connector_y_mm", "Connector from bottom", "length", "mm", low=-50, high=800, required=True),
        MATES_WITH,
        Attribute("slack_mm", "Slack to open the cover", "length", "mm", low=0, high=500, required=True),
        *UNIT_POWER,
        *SCREWS,
        Attribute(
            "screw_places",
            "Screw places",
            synonyms=("screw positions",),
            note="In mm from the plate's lower left, such as 6, 6; 64, 6; blank: 6 mm inside each corner is taken.",
        ),
        Attribute(
            "screw_seat_mm",
            "Plate under screw heads",
            "length",
            "mm",
            low=0,
            high=50,
            note="How much of a screw's length stays in the plate; blank: nothing is taken off.",
        ),
        EXPOSURE,
        TEMPERATURE_LOW,
        FIRE_LISTED,
        Attribute("glass_mount", "May be bonded to glass", "flag"),
        *UNIT_TEMPLATE,
    ),
    note="Control units that stand on a face of the leaf.",
)

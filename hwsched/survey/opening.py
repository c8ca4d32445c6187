"""Facts of an opening and its frame."""

from hwsched.attributes import Attribute, Choice
from hwsched.survey.entity import Entity

FORMS = (
    Choice("single", "Single door", ("single leaf", "sgl", "1 leaf", "door")),
    Choice("pair", "Pair", ("pr", "double", "double door", "2 leaves", "dbl")),
    Choice("gate", "Gate", ("half-height gate", "swing gate")),
    Choice("cabinet", "Cabinet", ("cabinet door", "locker", "cupboard")),
    Choice("lift", "Reader at a lift", ("lift reader", "elevator", "elevator reader")),
    Choice("turnstile", "Reader at a turnstile", ("turnstile reader",)),
)
HANDS = (
    Choice("LH", "LH", ("left hand", "left")),
    Choice("RH", "RH", ("right hand", "right")),
    Choice("LHR", "LHR", ("left hand reverse", "lhrb")),
    Choice("RHR", "RHR", ("right hand reverse", "rhrb")),
)
RATINGS = (
    Choice("none", "Not rated", ("no", "n", "nr", "-", "0", "non-rated", "unrated")),
    Choice("20", "20 min", ("20m", "1/3 h")),
    Choice("45", "45 min", ("45m", "c", "c label", "3/4 h")),
    Choice("60", "60 min", ("60m", "b60", "1 h", "1 hr", "1h")),
    Choice("90", "90 min", ("90m", "b", "b label", "1 1/2 h", "1.5 h", "1-1/2 hr")),
    Choice("180", "180 min", ("180m", "a", "a label", "3 h", "3 hr", "3h")),
)
EGRESS_ROLES = (
    Choice("none", "Not on an egress path", ("no", "n", "not egress", "-")),
    Choice("egress", "On an egress path", ("yes", "y", "exit", "egress path")),
    Choice("panic", "Egress, panic hardware required", ("panic hardware", "panic device", "exit device required")),
)
FRAME_MATERIALS = (
    Choice("hollow-metal", "Hollow metal", ("hm", "steel", "hmf", "kd", "welded steel")),
    Choice("wood", "Wood", ("wd", "timber")),
    Choice("aluminium", "Aluminium", ("al", "alum", "aluminum", "storefront")),
    Choice("none", "No frame", ("no", "n/a", "frameless")),
)
EXPOSURES = (
    Choice("interior", "Interior", ("int", "inside", "indoor")),
    Choice("exterior", "Exterior", ("ext", "outside", "outdoor", "weather")),
)
POWER_WISHES = (
    Choice("any", "Whatever serves", ("no preference", "either", "-")),
    Choice("battery", "Battery", ("batteries", "batt")),
    Choice("supply", "Remote supply", ("wired", "low voltage", "12 v", "psu")),
)

OPENING = Entity(
    "opening",
    "Opening",
    (
        Attribute(
            "mark",
            "Mark",
            required=True,
            synonyms=("opening", "door no", "door number", "door", "no", "opening no", "door mark", "tag"),
            note="As on the drawings and on the frame. Text: 0012 and 9E4 stay as typed.",
        ),
        Attribute("building", "Building", synonyms=("bldg", "block")),
        Attribute("level", "Level", synonyms=("floor", "storey", "story")),
        Attribute(
            "room_from",
            "Room from",
            synonyms=("from", "from room", "key side room", "location", "location from"),
        ),
        Attribute("room_to", "Room to", synonyms=("to", "to room", "secured room", "location to")),
        Attribute(
            "form",
            "Opening form",
            "choice",
            choices=FORMS,
            synonyms=("form", "type", "sgl/pr", "opening type", "leaves"),
        ),
        Attribute(
            "hand",
            "Hand",
            "choice",
            choices=HANDS,
            synonyms=("handing", "swing"),
            note="Seen from the key side: hinges left or right; R when the leaf swings toward you.",
        ),
        Attribute(
            "rating",
            "Fire rating",
            "choice",
            choices=RATINGS,
            synonyms=("rating", "label", "fire label", "fire", "rating min"),
            note="From the label on the leaf and on the frame, never from memory.",
        ),
        Attribute("stair", "Stair door", "flag", synonyms=("stair", "stairwell", "stair side")),
        Attribute(
            "egress",
            "Egress role",
            "choice",
            choices=EGRESS_ROLES,
            synonyms=("egress", "exit", "means of egress"),
        ),
        Attribute(
            "accessible",
            "Accessible route",
            "flag",
            synonyms=("accessible", "access route", "ada", "barrier free"),
        ),
        Attribute(
            "exposure",
            "Exposure",
            "choice",
            choices=EXPOSURES,
            synonyms=("int/ext", "interior exterior", "location type"),
        ),
        Attribute(
            "temperature_low_c",
            "Lowest temperature",
            "number",
            "degC",
            synonyms=("min temp", "low temp", "temperature"),
            low=-60,
            high=60,
        ),
        Attribute(
            "operations_per_day",
            "Operations a day",
            "number",
            synonyms=("ops/day", "operations", "traffic", "cycles per day", "uses a day"),
            low=0,
            high=20000,
        ),
        Attribute(
            "operations_day_off",
            "Operations on a day off",
            "number",
            synonyms=("weekend operations", "operations weekend"),
            low=0,
            high=20000,
            note="On Saturday and Sunday, where they differ from the other days.",
        ),
        Attribute("power_wish", "Power wish", "choice", choices=POWER_WISHES, synonyms=("power", "power preference")),
        Attribute(
            "supply_distance_m",
            "Distance to a supply",
            "number",
            "m",
            synonyms=("distance to supply", "to supply", "supply run"),
            low=0,
            high=1000,
            note="Along the cable route, one way, to the nearest place for a low-voltage supply; the way up from the "
            "hinges is added where it is filled in apart.",
        ),
        Attribute("plan_x_m", "Along the plan", "number", "m", synonyms=("plan x",), low=-5000, high=5000),
        Attribute("plan_y_m", "Across the plan", "number", "m", synonyms=("plan y",), low=-5000, high=5000),
        Attribute(
            "rise_m",
            "Up to the cable way",
            "number",
            "m",
            synonyms=("rise",),
            low=0,
            high=100,
            note="From the hinge side up to the cable way of the level.",
        ),
        Attribute(
            "frame_material",
            "Frame material",
            "choice",
            choices=FRAME_MATERIALS,
            synonyms=("frame", "frame mat", "frame type"),
        ),
        Attribute(
            "frame_stop_mm",
            "Frame stop on the leaf",
            "length",
            "mm",
            synonyms=("stop", "stop width", "frame stop", "rebate stop"),
            low=0,
            high=80,
            note="Width of the band that the frame's stop hides on the face that closes against it.",
        ),
        Attribute("wave", "Wave", synonyms=("phase", "installation wave")),
        Attribute("priority", "Priority", "integer", synonyms=("prio",), low=0, high=999),
        Attribute(
            "difficulty",
            "Difficulty",
            "number",
            synonyms=("difficulty factor",),
            low=0.2,
            high=10,
            note="Factor on the hours of labour: 1 is usual work.",
        ),
        Attribute("installed_on", "Installed on", "date", synonyms=("installation date",)),
        Attribute("notes", "Notes", synonyms=("remarks", "remark", "comment", "comments")),
    ),
)

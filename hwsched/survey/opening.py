"""Facts of an opening and its frame."""

from hwsched.attributes import Attribute, Choice, Reading, Unclear
from hwsched.attributes.walls import WALLS
from hwsched.survey.entity import Entity
from hwsched.survey.place import PLACE_FACTS

FORMS = (
    Choice("single", "Single door", ("single leaf", "sgl", "1 leaf", "door")),
    Choice("pair", "Pair", ("pr", "double", "double door", "2 leaves", "dbl")),
    Choice("gate", "Gate", ("half-height gate", "swing gate")),
    Choice("cabinet", "Cabinet", ("cabinet door", "locker", "cupboard")),
    Choice("lift", "Reader at a lift", ("lift reader", "elevator", "elevator reader")),
    Choice("turnstile", "Reader at a turnstile", ("turnstile reader",)),
)
HANDS = (
    Choice("LH", "LH", ("left hand", "left", "l", "lha", "lh active")),
    Choice("RH", "RH", ("right hand", "right", "r", "rha", "rh active")),
    # Of a pair the hand is that of its active leaf, common practice: LHRA.
    Choice("LHR", "LHR", ("left hand reverse", "lhrb", "lh rev", "left reverse", "lhra", "lhr active")),
    Choice("RHR", "RHR", ("right hand reverse", "rhrb", "rh rev", "right reverse", "rhra", "rhr active")),
)


def _minutes(count: int) -> tuple[str, ...]:
    """Return how schedules write a rating in minutes: common practice of door schedules."""
    words = (f"{count}m", f"{count} mins", f"{count} minute", f"{count} minutes", f"{count} min rated")
    # FD60 and FD60S, of British lists, are minutes too; S is a seal against smoke.
    british = (f"fd{count}", f"fd{count}s", f"fd {count}", f"fd {count}s")
    # As European lists have them: classes of EN 13501-2 (E, EW, EI with or without C for closing and S for smoke) and
    # of DIN 4102-5 (T); common practice.
    european = tuple(
        f"{letters}{blank}{count}{ending}"
        for letters in ("e", "ew", "ei", "ei1", "ei2", "t")
        for blank in ("", " ")
        for ending in ("", "-c", "-c5", "-rs", "-s", "-sa", "-s200", "-c5s200", "-1", "-2")
        if (letters == "t" or ending not in ("-rs", "-1", "-2")) and (letters, count) != ("ei1", 20)
    )
    # S beside the minutes says that the leaf holds smoke too.
    smoke = tuple(
        f"{text} {word}" for text in (str(count), *words, f"{count} min") for word in ("w/ smoke", "w/s", "s")
    )
    return (
        *words, *british, *european, *smoke, f"s {count}", f"{count} min label", f"ul {count}", f"ul {count} min",
        f"{count} min fire rated", f"{count} rated",
    )  # fmt: skip


def _hours(*spelt: str) -> tuple[str, ...]:
    """Return how schedules write a rating in hours: common practice of door schedules."""
    return tuple(
        f"{hours}{blank}{word}"
        for hours in spelt
        for blank, word in ((" ", "h"), ("", "h"), (" ", "hr"), ("", "hr"), (" ", "hrs"), (" ", "hour"), (" ", "hours"))
    )


def _labels(letter: str, *times: str) -> tuple[str, ...]:
    """Return how schedules write a label by its letter, alone and behind its time: common practice."""
    alone = (letter, f"{letter} label", f"ul {letter}", f"ul {letter} label")
    return (*alone, *(f"{time}{letter}" for time in times))


RATINGS = (
    Choice(
        "none",
        "Not rated",
        (
            "no", "n", "nr", "nfr", "non-rated", "unrated", "non fire rated", "none required", "not required",
            "no rating",
        ),
    ),
    Choice("20", "20 min", (*_minutes(20), *_hours("1/3"), "1/3")),
    # Half an hour and two hours stand in British lists (FD30, FD120): common practice.
    Choice("30", "30 min", (*_minutes(30), *_hours("1/2", "0.5", ".5"), "1/2", "0.5", ".5")),
    Choice(
        "45",
        "45 min",
        (
            *_labels("c", "3/4 hr ", "45 min ", "45 "), *_minutes(45), *_hours("3/4", "0.75", ".75"), "3/4", "0.75",
            ".75",
        ),
    ),
    Choice("60", "60 min", (*_minutes(60), *_hours("1", "1.0"), "b60", "60 min b", "1 hr b")),
    Choice(
        "90",
        "90 min",
        (
            *_labels("b", "1 1/2 hr ", "1-1/2 hr ", "1.5 hr ", "90 min ", "90 "), *_minutes(90),
            *_hours("1 1/2", "1-1/2", "1.5"), "1 1/2", "1.5",
        ),
    ),
    Choice("120", "120 min", (*_minutes(120), *_hours("2", "2.0"))),
    Choice("180", "180 min", (*_labels("a", "3 hr ", "180 min ", "180 "), *_minutes(180), *_hours("3", "3.0"))),
)  # fmt: skip
# From published drafting lists: NL is no label or narrow lite; two ratings are a doors' and a frame's, or a range.
UNCLEAR_RATINGS = (
    Unclear(
        "NL",
        "may mean that there is no label, or a narrow lite",
        (Reading("no label", "none"), Reading("narrow lite")),
    ),
    Unclear("S", "says that the leaf holds smoke, and no time"),
    *(Unclear(word, "says that it is rated, and no time") for word in ("FR", "Rated", "Yes", "UL", "label", "labeled")),
    *(
        Unclear(f"{low}/{high}", "names two ratings", (Reading(f"{low} min", low), Reading(f"{high} min", high)))
        for low, high in (
            ("20", "45"),
            ("30", "60"),
            ("45", "60"),
            ("45", "90"),
            ("60", "90"),
            ("60", "120"),
            ("90", "180"),
        )
    ),
)
EGRESS_ROLES = (
    Choice("none", "Not on an egress path", ("no", "n", "not egress")),
    Choice("egress", "On an egress path", ("yes", "y", "exit", "egress path")),
    Choice("panic", "Egress, panic hardware required", ("panic hardware", "panic device", "exit device required")),
)
WAYS_OUT = (
    Choice("key", "Towards the key side", ("key side", "to key side", "key", "outwards", "out")),
    Choice("inside", "Towards the inside", ("to inside", "inwards", "in")),
    Choice("both", "Both ways", ("both directions", "either")),
    Choice("none", "Nobody leaves here", ("no", "n")),
)
STAIR_RELEASES = (
    Choice("none", "No release", ("no", "n", "not released")),
    Choice("one-place", "From one place, without unlatching", ("command centre", "command center", "one place")),
    Choice("fire-alarm", "On the fire alarm, without unlatching", ("alarm", "fire alarm")),
    Choice("both", "From one place and on the alarm", ("alarm and one place",)),
)
LEAVES_FIRST = (
    Choice("active", "Active leaf first", ("active", "a")),
    Choice("inactive", "Inactive leaf first", ("inactive", "i")),
    Choice("any", "Any order", ("either", "no matter")),
)
SMOKE_SEALS = (
    Choice("none", "No gasket or seal", ("no", "n", "without")),
    Choice("stop", "On the frame's stop", ("frame stop", "on stop", "rebate")),
    Choice("edge", "In or on the leaf's edge", ("leaf edge", "edge", "intumescent in leaf")),
)
UNCLEAR_SEALS = tuple(
    Unclear(
        word,
        "says that there is one, and not where",
        (Reading("on the frame's stop", "stop"), Reading("in or on the leaf's edge", "edge")),
    )
    for word in ("yes", "y", "true")
)
CONTROLLER_OUTPUTS = (
    Choice("dry-contact", "Dry contact", ("relay", "dry", "volt-free contact", "contact")),
    Choice("powered", "Powered output", ("wet", "12 v output", "24 v output")),
    Choice("none", "No output", ("no", "n")),
)
CONNECTORS = (
    Choice("lift-contractor", "Elevator contractor", ("elevator company", "lift contractor", "elevator")),
    Choice("turnstile-contractor", "Turnstile contractor", ("turnstile company", "turnstile maker")),
    Choice("shop", "Our own shop", ("we", "us", "own")),
    Choice("other", "Somebody else", ("others", "electrician")),
)
FRAME_MATERIALS = (
    Choice("hollow-metal", "Hollow metal", ("hm", "steel", "hmf", "kd", "welded steel", "stl", "fw")),
    Choice("wood", "Wood", ("wd", "timber", "wdf", "softwood", "hardwood", "sw", "hw", "swd", "hwd")),
    Choice("aluminium", "Aluminium", ("al", "alum", "aluminum", "storefront", "alf")),
    Choice("none", "No frame", ("no", "frameless")),
)
EXPOSURES = (
    Choice("interior", "Interior", ("int", "inside", "indoor")),
    Choice("exterior", "Exterior", ("ext", "outside", "outdoor", "weather")),
)
POWER_WISHES = (
    Choice("any", "Whatever serves", ("no preference", "either")),
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
            synonyms=("opening", "door no", "door number", "door", "no", "opening no", "door mark", "tag", "door tag"),
            note="As on the drawings and on the frame. Text: 0012 and 9E4 stay as typed.",
        ),
        Attribute("building", "Building", synonyms=("bldg", "block")),
        Attribute("level", "Level", synonyms=("floor", "storey", "story")),
        Attribute(
            "room_from",
            "Room from",
            synonyms=("from", "from room", "key side room", "location", "location from"),
        ),
        # A room named alone is that to which the door gives access, and by which doors are numbered: common practice.
        Attribute(
            "room_to",
            "Room to",
            synonyms=(
                "to",
                "to room",
                "secured room",
                "location to",
                "room",
                "room name",
                "room no",
                "room number",
                "room id",
                "room description",
            ),
        ),
        Attribute(
            "form",
            "Opening form",
            "choice",
            choices=FORMS,
            synonyms=(
                "form",
                "type",
                "sgl/pr",
                "opening type",
                "leaves",
                "no of leaves",
                "number of leaves",
                "leaf count",
                "leaf qty",
            ),
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
            unclear=UNCLEAR_RATINGS,
            synonyms=(
                "rating",
                "label",
                "fire label",
                "fire",
                "rating min",
                "door rating",
                "door label",
                "door fire rating",
                "opening rating",
                "ul label",
                "ul rating",
                "fire resistance",
                "fire resistance rating",
                "frr",
                "fr min",
                "fr mins",
                "fr minutes",
                "fire min",
                "fire minutes",
                "rating hr",
                "rating hours",
                "fire class",
                "fire rating min",
            ),
            note="From the label on the leaf and on the frame, never from memory.",
        ),
        Attribute(
            "frame_rating",
            "Frame's fire label",
            "choice",
            choices=RATINGS,
            unclear=UNCLEAR_RATINGS,
            synonyms=(
                "frame rating",
                "frame fr",
                "frame frr",
                "frame rtg",
                "frame fire rating",
                "frame label",
                "frame fire label",
                "rating of frame",
                "label of frame",
            ),
            note="Where the frame bears another label than the leaf; else it need not be told.",
        ),
        Attribute("stair", "Stair door", "flag", synonyms=("stair", "stairwell", "stair side")),
        Attribute(
            "egress",
            "Egress role",
            "choice",
            choices=EGRESS_ROLES,
            synonyms=("egress", "exit", "exit door", "means of egress"),
        ),
        Attribute(
            "egress_toward",
            "Direction of egress",
            "choice",
            choices=WAYS_OUT,
            synonyms=("egress direction", "direction of exit", "exit direction", "egress toward", "people leave"),
            note="Where people go who leave through the opening; usually out of the inside, towards the key side.",
        ),
        Attribute(
            "no_exit_confirmed",
            "No exit, confirmed",
            "flag",
            synonyms=("no exit confirmed", "not egress confirmed"),
            note="A person who knows the rooms on both sides has confirmed that nobody needs this opening to leave.",
        ),
        Attribute(
            "stair_release",
            "Re-entry release of the stair",
            "choice",
            choices=STAIR_RELEASES,
            synonyms=("re-entry", "stair re-entry", "reentry release", "stair release"),
            note="What unlocks the stair side of the stair's doors together, the leaf still latched.",
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
            synonyms=("int/ext", "ext/int", "interior exterior", "exterior interior", "location type"),
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
            synonyms=("frame", "frame mat", "frame type", "frame matl", "frame mat'l"),
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
        Attribute(
            "wall_build",
            "Wall",
            "choice",
            choices=WALLS,
            synonyms=("wall build", "wall construction", "wall type", "mounted on"),
            note="What carries reader and unit where there is no leaf; it decides their fixings.",
        ),
        Attribute(
            "reader_aside_mm",
            "Reader right (minus: left) of the entrance",
            "length",
            "mm",
            synonyms=("reader beside", "reader sideways", "reader from entrance", "reader from post"),
            low=-3000,
            high=3000,
            note="Of a reader at a lift or turnstile: its centre from the nearest edge of the entrance or post, as one "
            "faces it; to the right of that edge, and with a minus to the left.",
        ),
        Attribute(
            "frame_face_mm",
            "Face of the frame",
            "length",
            "mm",
            synonyms=("frame face", "jamb face", "face of jamb"),
            low=10,
            high=200,
            note="Width of the lock jamb's face, in which a strike is cut.",
        ),
        Attribute(
            "header_depth_mm",
            "Depth under the frame's head",
            "length",
            "mm",
            synonyms=("header depth", "head depth", "soffit depth"),
            low=0,
            high=500,
            note="Of the flat under the head on the side towards which the leaf does not swing: an "
            "electromagnetic lock "
            "stands there.",
        ),
        Attribute(
            "closes_first",
            "Leaf that closes first",
            "choice",
            choices=LEAVES_FIRST,
            synonyms=("closes first", "first to close"),
            note="Of a pair with both leaves open and let go together.",
        ),
        Attribute(
            "smoke_seal",
            "Gasket or smoke seal",
            "choice",
            choices=SMOKE_SEALS,
            unclear=UNCLEAR_SEALS,
            synonyms=("smoke seal", "gasket", "gasketing", "smoke gasket"),
        ),
        Attribute(
            "controller_output",
            "Output to the controller",
            "choice",
            choices=CONTROLLER_OUTPUTS,
            synonyms=("controller output", "output to controller"),
            note="Of a reader at a lift or turnstile: what it gives to the controller there.",
        ),
        Attribute(
            "connected_by",
            "Who connects the controller",
            "choice",
            choices=CONNECTORS,
            synonyms=("connected by", "who connects"),
        ),
        Attribute(
            "fire_recall",
            "Fire service goes before the reader",
            "flag",
            synonyms=("fire recall", "firefighters service", "recall"),
            note="A lift's recall and car key, or a turnstile's release on the alarm, work whatever the reader says.",
        ),
        *PLACE_FACTS,
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
        Attribute("notes", "Notes", synonyms=("remarks", "remark", "comment", "comments", "note", "observations")),
    ),
)

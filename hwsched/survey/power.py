"""Facts of supplies, circuits and runs: what a person lays, or what the siting proposes."""

from hwsched.attributes import Attribute, Choice
from hwsched.survey.entity import Entity

USES = (
    Choice("candidate", "May be used", ("possible", "may be used")),
    Choice("laid", "Laid", ("used", "placed")),
    Choice("must", "Must be used", ("fixed", "must be used")),
)
ALARMS = (
    Choice("drops", "Loses power on the fire alarm", ("drop", "released", "off")),
    Choice("stays", "Keeps power on the fire alarm", ("stay", "kept", "on")),
)
STRANDINGS = (Choice("solid", "Solid"), Choice("stranded", "Stranded"))

SUPPLY = Entity(
    "supply",
    "Supply",
    (
        Attribute("name", "Name", required=True, synonyms=("supply",)),
        Attribute("building", "Building"),
        Attribute("level", "Level"),
        Attribute("place", "Where it stands", note="Room or closet. Never on a leaf."),
        Attribute("x_m", "Along the plan", "number", "m", low=-5000, high=5000),
        Attribute("y_m", "Across the plan", "number", "m", low=-5000, high=5000),
        Attribute("rise_m", "Up to the cable way", "number", "m", low=0, high=100),
        Attribute("part", "Power supply", note="Number of a power supply of the catalogue."),
        Attribute("use", "Use", "choice", choices=USES),
        Attribute("battery", "Standby battery", note="Number of a standby battery of the catalogue."),
        Attribute("batteries", "Batteries in series", "integer", low=1, high=8),
        Attribute(
            "cabinet",
            "Its cabinet",
            synonyms=("cabinet", "enclosure"),
            note="Number of a cabinet of the catalogue, which is kept. Empty: the cheapest that suits.",
        ),
        Attribute("standby_hours", "Standby asked", "number", "h", low=0, high=240),
        Attribute("temperature_c", "Lowest at the battery", "number", "degC", low=-4, high=50),
        Attribute("notes", "Notes"),
    ),
)

CIRCUIT = Entity(
    "circuit",
    "Circuit",
    (
        Attribute("name", "Name", required=True),
        Attribute("wire", "Wire", note="Number of a wire of the catalogue, for runs that name none."),
        Attribute("temperature_c", "Conductors at most", "number", "degC", low=-40, high=150),
        Attribute(
            "at_once",
            "Operations at one time",
            "integer",
            low=0,
            high=1000,
            note="Openings that operate together, each with all its devices.",
        ),
        Attribute("limiter_a", "Fuse or limiter", "number", "A", low=0.05, high=100),
        Attribute(
            "limiter",
            "Limiter by number",
            synonyms=("limiter part", "fuse part"),
            note="Of the catalogue; it is kept, and so is its circuit. Empty: the cheapest of its rating.",
        ),
        Attribute("alarm", "On the fire alarm", "choice", choices=ALARMS),
        Attribute("notes", "Notes"),
    ),
)

RUN = Entity(
    "run",
    "Run",
    (
        Attribute("from_node", "From", required=True, note="supply, a junction, or a mark."),
        Attribute("to_node", "To", required=True, note="A junction or a mark."),
        Attribute("length_m", "Length, one way", "number", "m"),
        Attribute("wire", "Wire"),
        Attribute("gauge", "Gauge", note="Such as 18 AWG or 1.0 mm2, where no wire of the catalogue is named."),
        Attribute("stranding", "Stranding", "choice", choices=STRANDINGS),
        Attribute("parallel", "Conductors in parallel", "integer", low=1, high=20, note="Empty: one."),
        Attribute("extra_ohm", "Terminations", "number", "ohm", low=0, high=100, note="Both wires together."),
    ),
)

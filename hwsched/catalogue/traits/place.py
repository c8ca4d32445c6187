"""Where a part may be used: weather, cold, and a rated leaf."""

from typing import Final

from hwsched.attributes import Attribute, Choice

EXPOSURE: Final = Attribute(
    "exposure",
    "Exposure",
    "choice",
    choices=(
        Choice("interior", "Interior", ("int", "inside", "indoor")),
        Choice("exterior", "Exterior", ("ext", "outside", "outdoor", "weather")),
    ),
    synonyms=("int/ext", "use"),
    note="Exterior: made for weather, and serves inside as well.",
)
TEMPERATURE_LOW: Final = Attribute(
    "temperature_low_c",
    "Lowest temperature",
    "number",
    "degC",
    synonyms=("min temp", "low temp", "lowest operating temperature"),
    low=-60,
    high=60,
    note="Lowest at which it is declared to work.",
)
FIRE_LISTED: Final = Attribute(
    "fire_listed",
    "Listed for rated leaves",
    "flag",
    synonyms=("fire listed", "fire rated", "listed"),
    note="Yes only where its listing names use on a fire-rated leaf; the listing says on which, and how it is fitted.",
)

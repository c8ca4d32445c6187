"""How something draws from a supply, and what its terminals are called."""

from typing import Final

from hwsched.attributes import Attribute, Choice

DRAWS: Final = Attribute(
    "draws",
    "Draws",
    "choice",
    choices=(
        Choice("current", "Constant current", ("constant current", "a")),
        Choice("power", "Constant power", ("constant power", "w", "switching")),
        Choice("resistance", "As a resistance", ("resistance", "ohm", "coil")),
    ),
    synonyms=("load kind", "kind of load"),
    note="How its current follows the voltage. Empty: reckoned as constant current, and said so.",
)

TERMINALS: Final[tuple[Attribute, ...]] = (
    Attribute(
        "terminal_plus",
        "Terminal, plus",
        synonyms=("plus terminal", "positive terminal"),
        note="As printed on the product; for the wiring sheet.",
    ),
    Attribute("terminal_minus", "Terminal, minus", synonyms=("minus terminal", "negative terminal")),
)

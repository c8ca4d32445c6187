"""What a survey records: the declared facts of an opening, its leaves and its existing items.

Tables, sheets, forms and completeness rules follow from these declarations; values stand in `hwsched.values.facts`.
"""

from hwsched.survey.entity import Entity
from hwsched.survey.item import ITEM
from hwsched.survey.leaf import LEAF
from hwsched.survey.opening import OPENING
from hwsched.survey.place import BUILDING_PLACE, INHERITED, LEVEL_PLACE
from hwsched.survey.power import CIRCUIT, RUN, SUPPLY

ENTITIES: tuple[Entity, ...] = (OPENING, LEAF, ITEM)
"""What the survey of an opening consists of."""
PLACE_ENTITIES: tuple[Entity, ...] = (BUILDING_PLACE, LEVEL_PLACE)
"""Where openings stand, with the facts that they take from there."""
POWER_ENTITIES: tuple[Entity, ...] = (SUPPLY, CIRCUIT, RUN)
"""What is laid to feed openings."""

__all__ = [
    "BUILDING_PLACE",
    "CIRCUIT",
    "ENTITIES",
    "INHERITED",
    "ITEM",
    "LEAF",
    "LEVEL_PLACE",
    "OPENING",
    "PLACE_ENTITIES",
    "POWER_ENTITIES",
    "RUN",
    "SUPPLY",
    "Entity",
]

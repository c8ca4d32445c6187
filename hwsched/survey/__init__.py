"""What a survey records: the declared facts of an opening, its leaves and its existing items.

Tables, sheets, forms and completeness rules follow from these declarations; values stand in `hwsched.values.facts`.
"""

from hwsched.survey.entity import Entity
from hwsched.survey.item import ITEM
from hwsched.survey.leaf import LEAF
from hwsched.survey.opening import OPENING
from hwsched.survey.power import CIRCUIT, RUN, SUPPLY

ENTITIES: tuple[Entity, ...] = (OPENING, LEAF, ITEM)
"""What the survey of an opening consists of."""
POWER_ENTITIES: tuple[Entity, ...] = (SUPPLY, CIRCUIT, RUN)
"""What is laid to feed openings."""

__all__ = ["CIRCUIT", "ENTITIES", "ITEM", "LEAF", "OPENING", "POWER_ENTITIES", "RUN", "SUPPLY", "Entity"]

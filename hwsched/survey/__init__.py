"""What a survey records: the declared facts of an opening, its leaves and its existing items.

Tables, sheets, forms and completeness rules follow from these declarations; values stand in `hwsched.cases.facts`.
"""

from hwsched.survey.entity import Entity
from hwsched.survey.item import ITEM
from hwsched.survey.leaf import LEAF
from hwsched.survey.opening import OPENING

ENTITIES: tuple[Entity, ...] = (OPENING, LEAF, ITEM)

__all__ = ["ENTITIES", "ITEM", "LEAF", "OPENING", "Entity"]

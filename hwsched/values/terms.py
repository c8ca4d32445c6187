"""What a project pays: currency, discounts, exchange rates, labour. Plain values, kept as they were typed."""

from collections.abc import Mapping
from dataclasses import dataclass, field


@dataclass(frozen=True, slots=True)
class CostTerms:
    """What a project pays; numbers are decimal texts, so that none is rounded."""

    currency: str = ""
    """Of the project; empty while unknown: then the parts' own currency, where it is one."""
    discounts: Mapping[str, str] = field(default_factory=dict)
    """Supplier to the share that it takes off."""
    rates: Mapping[str, str] = field(default_factory=dict)
    """Currency to what one unit of it is worth in the project's."""
    labour_per_hour: str | None = None
    hours: Mapping[str, str] = field(default_factory=dict)
    """Own hours: task, or ``task/leaf material``, to hours for one."""
    learning_rate: str = "1"
    """Time of every doubled opening alike over the one before; 1: nothing is learnt."""

"""What a rule of records is: of stored fits, waivers, packets. They stand one a file in `hwsched.rules.records`."""

from collections.abc import Callable, Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from hwsched.rules.rule import Limit, Verdict
from hwsched.values import Discipline, Severity
from hwsched.values.record import Record

RecordJudge = Callable[[Record], Iterable[Verdict]]


@dataclass(frozen=True, slots=True)
class RecordRule:
    """One rule of what is on record of an opening."""

    id: str
    title: str
    discipline: Discipline
    severity: Severity
    basis: str
    cure: str
    judge: RecordJudge
    limits: tuple[Limit, ...] = ()
    defers: bool = False
    declared: Mapping[str, float] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        object.__setattr__(self, "declared", MappingProxyType({limit.name: limit.value for limit in self.limits}))

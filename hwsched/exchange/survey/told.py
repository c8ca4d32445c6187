"""What the rows of a survey have told of one thing so far, and rows that contradict each other."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Any, Final, NamedTuple

from hwsched.attributes import Attribute
from hwsched.exchange.problems import CellProblem
from hwsched.exchange.survey.facts import agree
from hwsched.survey import ITEM, LEAF, OPENING

_ENTITIES: Final = {"opening": OPENING, "leaf": LEAF, "item": ITEM}
_DECLARED: Final = {(name, a.name): a for name, entity in _ENTITIES.items() for a in entity.attributes}


class FileRow(NamedTuple):
    """A row of the file."""

    file: str
    sheet: str
    row: int
    """As the spreadsheet counts."""

    @property
    def origin(self) -> str:
        """Return the row as the journal writes it down."""
        return f"{self.file}, {self.sheet}, row {self.row}"


@dataclass(slots=True)
class Told:
    """Facts of one thing, with what each row said of it."""

    place: FileRow
    facts: dict[str, Any] = field(default_factory=dict)
    rows: list[tuple[FileRow, dict[str, Any]]] = field(default_factory=list)

    def place_of(self, name: str) -> FileRow:
        """Return the first row that told a fact."""
        return next((place for place, facts in self.rows if name in facts), self.place)

    def add(self, place: FileRow, facts: dict[str, Any]) -> None:
        """Take what a further row says; rows before it keep what they said."""
        if any(said is self.facts for _, said in self.rows):
            self.facts = dict(self.facts)
        self.facts.update(facts)
        self.rows.append((place, facts))


@dataclass(slots=True)
class Draft:
    """An opening while its rows come in."""

    mark: str
    told: Told
    leaves: dict[str, Told] = field(default_factory=dict)
    """By position; under an empty text what rows say without naming the leaf."""
    typed: set[str] = field(default_factory=set)
    """Positions that stand in a cell of their own, not in a heading."""
    items: list[tuple[Told, str]] = field(default_factory=list)
    """With the position that its row names, empty where none."""
    locks: dict[str, Told] = field(default_factory=dict)
    """Locks described by the opening's own columns, by the position that the row names."""
    two_leaves: FileRow | None = None
    """Row in which a size or width says that it is that of each leaf of a pair."""
    bad: bool = False
    count: int | None = None
    """Doors for which it stands, where a person said that marks are made of it."""
    of_type: str = ""


def tell(told: Told, facts: dict[str, Any], entity: str, place: FileRow) -> Iterator[CellProblem]:
    """Add facts; yields those that contradict what an earlier row says."""
    held = told.facts
    for name, value in facts.items():
        if name in held and not agree(name, held[name], value):
            yield contradiction(told, name, value, entity, place)
    told.add(place, {name: value for name, value in facts.items() if name not in held})


def contradiction(told: Told, name: str, value: Any, entity: str, place: FileRow) -> CellProblem:
    """Name two rows that disagree about a fact."""
    attribute = _DECLARED.get((entity, name))
    label = attribute.label if attribute else name.replace("_", " ")
    label = label[:1].lower() + label[1:]
    earlier = told.place_of(name)
    where = f"row {earlier.row}" if earlier.sheet == place.sheet else f"sheet {earlier.sheet}, row {earlier.row}"
    before = _shown(attribute, told.facts[name])
    message = f"says {label} {_shown(attribute, value)}, {where} of the same mark says {before}"
    return row_problem(place, message, "the same in both rows, or only in one")


def _shown(attribute: Attribute | None, value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, float):
        unit = attribute.unit if attribute else ""
        return f"{value:.6g} {unit}".rstrip()
    return str(value)


def row_problem(place: FileRow, message: str, accepted: str) -> CellProblem:
    """Return what is wrong with a row as a whole."""
    return CellProblem(place.file, place.sheet, place.row, "", "", "", message, accepted)

"""Where a part of the catalogue is used: at openings, in hardware sets, in boxes of others, as a supply."""

from collections import defaultdict
from dataclasses import dataclass

from sqlalchemy import select

from hwsched.model.project import Project
from hwsched.model.queries import read_fits, read_inputs
from hwsched.model.tables import ASSIGNED_PART, HARDWARE_SET, SET_LINE, SUPPLY_TABLE
from hwsched.operations.opening.standings import Standings
from hwsched.operations.snapshot import of_one_state
from hwsched.telling.natural import natural


@dataclass(frozen=True, slots=True)
class UsedAt:
    """An opening that uses a part."""

    opening_id: str
    mark: str
    role: str
    quantity: float
    by_hand: bool
    """It is chosen for the opening, or by its hardware set; else the fit took it."""
    in_fit: bool
    """It stands in a fit that counts; a choice may wait for its fit, or be refused by it."""


@dataclass(frozen=True, slots=True)
class PartUse:
    """Where one part is used."""

    number: str
    openings: tuple[UsedAt, ...]
    """In the natural order of their marks."""
    sets: tuple[tuple[str, str, float], ...]
    """Name, role and quantity."""
    boxes: tuple[tuple[str, float], ...]
    """Parts in whose box it is, and how many."""
    follows: tuple[str, ...]
    """Parts that it supersedes."""
    supplies: tuple[str, ...]
    issued: float
    """How many went out with packets."""

    @property
    def needed(self) -> float:
        """How many the fits of all openings need."""
        return sum(each.quantity for each in self.openings if each.in_fit)

    @property
    def used(self) -> bool:
        """Whether anything uses it."""
        return bool(self.openings or self.sets or self.boxes or self.follows or self.supplies)


@of_one_state
def where_used(project: Project, number: str) -> PartUse:
    """Look where a part is used; one that is in no catalogue may still be chosen somewhere.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    number : str
        Catalogue number.
    """
    standings = Standings()
    found: dict[tuple[str, str, str], list[tuple[float, bool, bool]]] = defaultdict(list)
    with project.reading() as connection:
        catalogue = project.catalogue.read(connection)
        stored = read_fits(connection)
        for given in read_inputs(connection, None, catalogue):
            opening = given.opening
            chosen = {each.role: each.quantity for each in given.chosen if each.part == number}
            held = stored.get(given.point.id)
            roles: dict[str, float] = defaultdict(float)
            # Asked only of the few whose fit has it: telling how a fit stands hashes facts.
            if held is not None and any(each.part == number for each in held.fit.parts):
                current = standings.current(given, held)
                for each in current.parts if current is not None else ():
                    if each.part == number:
                        roles[each.role] += each.quantity
            for role, quantity in roles.items():
                found[opening.id, opening.mark, role].append((quantity, role in chosen, True))
            for role, quantity in chosen.items():
                if role not in roles:
                    found[opening.id, opening.mark, role].append((quantity, True, False))
        lines = select(HARDWARE_SET.c.name, SET_LINE.c.role, SET_LINE.c.quantity).join(SET_LINE)
        sets = connection.execute(lines.where(SET_LINE.c.part == number)).all()
        supplies = connection.execute(select(SUPPLY_TABLE.c.name).where(SUPPLY_TABLE.c.part == number)).scalars()
        out = select(ASSIGNED_PART.c.quantity).where(
            ASSIGNED_PART.c.part == number, ASSIGNED_PART.c.state.startswith("issued")
        )
        issued = sum(connection.execute(out).scalars())
        named = sorted((str(name) for name in supplies), key=natural)
    used = [
        UsedAt(id_, mark, role, sum(q for q, _, _ in each), any(h for _, h, _ in each), any(f for _, _, f in each))
        for (id_, mark, role), each in found.items()
    ]
    return PartUse(
        number,
        tuple(sorted(used, key=lambda each: (natural(each.mark), each.role))),
        tuple(sorted(((row.name, row.role, row.quantity) for row in sets), key=lambda row: natural(row[0]))),
        tuple((part.number, count) for part in catalogue.parts.values() for held, count in part.kit if held == number),
        tuple(part.number for part in catalogue.parts.values() if part.superseded_by == number),
        tuple(named),
        float(issued),
    )

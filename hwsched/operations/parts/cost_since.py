"""What changed in a cost: since a revision, or between two reckonings."""

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from decimal import Decimal

from hwsched.calc.parts.cost import Cost, combined
from hwsched.documents.parts.cost_estimate import totals
from hwsched.documents.view import ProjectView
from hwsched.fitting.costing import terms_of
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import Project
from hwsched.operations.release.revision_view import revision_view
from hwsched.operations.release.revisions import read_revision
from hwsched.quantities.money import ZERO, summed


@dataclass(frozen=True, slots=True)
class CostChange:
    """A building, hardware set or opening that costs something else."""

    key: str
    before: Cost | None
    """None where it was not priced, or was not there."""
    now: Cost | None

    @property
    def change(self) -> Decimal:
        """What it costs more; less where negative [project's currency]. Of what is known."""
        was = self.before.total if self.before is not None else ZERO
        return summed((self.now.total if self.now is not None else ZERO, was.copy_negate()))

    @property
    def surely(self) -> bool:
        """Whether nothing of both costs is unknown."""
        return all(each is None or each.complete for each in (self.before, self.now))


def changed_costs(before: Mapping[str, Cost], now: Mapping[str, Cost]) -> tuple[CostChange, ...]:
    """Return what costs something else, the largest change first.

    Parameters
    ----------
    before, now : mapping
        Costs by the same kind of key, in the same currency.
    """
    found = []
    for key in dict.fromkeys((*now, *before)):
        was, is_now = before.get(key), now.get(key)
        same = was is not None and is_now is not None and _told(was) == _told(is_now)
        if not same:
            found.append(CostChange(key, was, is_now))
    return tuple(sorted(found, key=lambda each: -abs(each.change)))


def whole_change(before: Mapping[str, Cost], now: Mapping[str, Cost]) -> CostChange:
    """Return the change of all together."""
    return CostChange("Total", combined(before.values()), combined(now.values()))


def costs_of_revision(
    project: Project, view: ProjectView, letter: str, by: str, marks: Collection[str] | None = None
) -> Mapping[str, Cost]:
    """Return the costs of a revision, to be set beside those of a view.

    Parameters
    ----------
    project : Project
        Open project.
    view : ProjectView
        As the project stands.
    letter : str
        Of the revision.
    by : {"building", "set", "opening"}
        What is added up.
    marks : collection of str, optional
        Only these openings.

    Raises
    ------
    ValueRefusedError
        For a letter that there is not, or a revision in another currency.
    """
    then = revision_view(read_revision(project, letter, marks))
    was, is_now = (terms_of(each.terms, each.catalogue).currency for each in (then, view))
    if was != is_now:
        said = f"revision {letter} is reckoned in {was or 'no currency'}, the project in {is_now or 'no currency'}"
        raise ValueRefusedError("since", f"{said}: amounts of two currencies are not compared")
    return totals(then, by)


def _told(cost: Cost) -> tuple[Decimal, Decimal, Decimal, tuple[str, ...]]:
    return cost.parts, cost.labour, cost.hours, tuple(each.text for each in cost.unknown)

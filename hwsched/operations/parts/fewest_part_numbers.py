"""The warehouse's wish: as few different parts as serve, over a building or the project, traded against cost."""

from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from decimal import Decimal
from time import monotonic

from hwsched.calc.calculator import InputError
from hwsched.calc.parts.fewest_part_numbers import Alternative, Choice, Group, at_most, choose, fewest
from hwsched.calc.solver import Limits
from hwsched.fitting import alternatives
from hwsched.model.errors import ValueRefusedError
from hwsched.model.journal.journal import Change
from hwsched.model.journal.touched import touched_since
from hwsched.model.project import Project
from hwsched.model.queries import latest_change, read_inputs
from hwsched.operations.changes import Changes
from hwsched.operations.opening.fits_within import change_and_fit
from hwsched.operations.opening.hand_choices import write_choices
from hwsched.operations.parts.hardware_sets import Line, lines_of
from hwsched.operations.prepared import NotReadyError
from hwsched.operations.shown import ShownOtherwiseError, changed_meanwhile
from hwsched.quantities.money import ZERO, product, summed
from hwsched.values import Chosen, Fit, OpeningInput
from hwsched.values.input_key import input_key


@dataclass(frozen=True, slots=True)
class FewestPartNumbers:
    """A choice of alternatives, before it is accepted."""

    before_kinds: tuple[str, ...]
    """Different parts as every opening would choose for itself."""
    after_kinds: tuple[str, ...]
    before_cost: Decimal
    after_cost: Decimal
    currency: str
    """Of the costs; empty where the parts tell none."""
    gap: float
    """0 where it is proven that nothing is better."""
    choices: Mapping[str, tuple[Line, ...]]
    """Lock point to the parts to choose, where they differ from its own choice."""
    marks: Mapping[str, str]
    """Of the opening of each lock point, with the point's name where it has several."""
    opening_of: Mapping[str, str]
    """Opening of each lock point whose choice differs."""
    openings: int
    """That have an alternative at all."""
    left_out: tuple[str, ...]
    """Marks of those that have none, or whose parts have no price that can be told in one currency."""
    basis: "Basis" = field(compare=False, repr=False)

    @property
    def changing(self) -> tuple[str, ...]:
        """Openings whose choice differs."""
        return tuple(dict.fromkeys(self.opening_of.values()))


Offer = tuple[Decimal, str, tuple[str, ...], tuple[Line, ...]]
"""An alternative of a lock point: cost, currency, different parts, and the lines by which it is chosen."""
_Known = dict[str, tuple[Fit, ...]]
"""Alternatives by the key of the input."""
_Groups = dict[str, tuple[list[OpeningInput], tuple[Fit, ...]]]
"""Key of an input to the lock points that have it, and its priced alternatives."""


@dataclass(slots=True)
class Basis:
    """What a choice stands on, and what was worked out for it."""

    state: int
    """Change set at which it held last."""
    offers: Mapping[str, tuple[Offer, ...]]
    """What was chosen among, by lock point."""
    openings: tuple[str, ...]
    """Openings of these points."""
    known: _Known


def fewest_part_numbers(
    project: Project,
    ids: Sequence[str] | None = None,
    *,
    price_per_kind: str | None = None,
    most: int | None = None,
    time_limit_s: float = 60.0,
    progress: Callable[[str, float | None], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> FewestPartNumbers:
    """Choose among the openings' alternatives so that few different parts are needed.

    Parameters
    ----------
    project : Project
        Open project; it is only read.
    ids : sequence of str, optional
        Openings; all when left out.
    price_per_kind : str, optional
        What one more different part is worth, in the catalogue's currency: least of cost and so much a part.
    most : int, optional
        At most so many different parts, at least cost. Without both: the fewest of all, then least cost.
    time_limit_s : float
        The best found by then is given, with its gap [s].
    progress, cancelled : callable, optional
        Told the step and the gap; asked whether to stop.

    Returns
    -------
    FewestPartNumbers
        Exact by integer programming; the gap says what is proven.

    Raises
    ------
    ValueRefusedError
        Where no choice keeps the limit, or nothing was found in time.
    """
    known: _Known = {}
    state, groups, left_out, unpriced = _offered(project, ids, known, progress, cancelled)
    asked = [
        Group(key, len(here), [Alternative(each.cost, _kinds(each)) for each in ways])
        for key, (here, ways) in groups.items()
        if here
    ]
    if not asked:
        raise ValueRefusedError("fewest kinds", _unpriced(unpriced))
    limits = Limits(until=monotonic() + time_limit_s, cancelled=cancelled, progress=progress)
    try:
        if most is not None:
            choice = at_most(asked, most, limits)
        elif price_per_kind is not None:
            choice = choose(asked, price_per_kind, limits)
        else:
            choice = fewest(asked, limits)
    except InputError as error:
        raise ValueRefusedError(error.field, error.message) from error
    openings = dict.fromkeys(given.opening.id for here, _ in groups.values() for given in here)
    return _told(groups, choice, left_out, Basis(state, _offers(groups), tuple(openings), known))


def _offered(
    project: Project,
    ids: Sequence[str] | None,
    known: _Known,
    progress: Callable[[str, float | None], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> tuple[int, _Groups, list[str], Iterable[str]]:
    """Return the state that was read, what can be chosen among, marks without anything, and the prices they need."""
    with project.reading() as connection:
        state = latest_change(connection)
        inputs = list(read_inputs(connection, None if ids is None else list(ids), project.catalogue.read(connection)))
    groups: _Groups = {}
    left_out: list[str] = []
    unpriced: dict[str, None] = {}
    for done, given in enumerate(inputs):
        if cancelled is not None and cancelled():
            raise ValueRefusedError("fewest kinds", "stopped before anything was found")
        if progress is not None and done % 16 == 0:
            progress(f"alternatives of opening {done + 1} of {len(inputs)}", None)
        key = input_key(given)
        if key not in known:
            known[key] = tuple(alternatives(given))
        if key not in groups:
            groups[key] = ([], tuple(each for each in known[key] if not each.cost_needs))
            unpriced.update((need, None) for each in known[key] for need in each.cost_needs)
        if groups[key][1]:
            groups[key][0].append(given)
        elif given.opening.mark not in left_out:
            left_out.append(given.opening.mark)
    return state, groups, left_out, unpriced


def _offers(groups: _Groups) -> dict[str, tuple[Offer, ...]]:
    return {
        given.point.id: tuple((each.cost, each.currency, _kinds(each), lines_of(each)) for each in found)
        for here, found in groups.values()
        for given in here
    }


def accept_fewest(
    project: Project,
    found: FewestPartNumbers,
    *,
    who: str,
    progress: Callable[[int, int], None] | None = None,
    cancelled: Callable[[], bool] | None = None,
) -> Changes:
    """Choose the parts by hand at the openings whose choice differs, and fit them, as one step.

    Parameters
    ----------
    project : Project
        Open project.
    found : FewestPartNumbers
        As it was shown.
    who : str
        For the journal.
    progress, cancelled : callable, optional
        Told how far the fits are; asked whether to stop: then nothing is changed.

    Raises
    ------
    ShownOtherwiseError
        Where others changed what was chosen among.
    ValueRefusedError
        For a part that is gone.
    """
    basis = found.basis
    choices = {
        point: tuple(Chosen(line.role, line.part, line.quantity) for line in lines)
        for point, lines in found.choices.items()
    }
    summary = f"Choose parts of {len(found.changing)} openings for {len(found.after_kinds)} different parts in all"

    def look() -> None:
        state, groups, _, _ = _offered(project, basis.openings, basis.known)
        now = _offers(groups)
        if now != basis.offers:
            other = [found.marks[each] for each, offers in basis.offers.items() if now.get(each) != offers]
            raise ShownOtherwiseError(changed_meanwhile(other))
        basis.state = state

    def write(change: Change, last: bool) -> Collection[str]:
        if touched_since(change.connection, basis.state):
            if not last:
                raise NotReadyError(look)
            look()
        write_choices(change, choices)
        return list(found.changing)

    return change_and_fit(project, "choose-parts", summary, who, write, progress=progress, cancelled=cancelled)


def _told(
    groups: Mapping[str, tuple[list[OpeningInput], tuple[Fit, ...]]],
    choice: Choice,
    left_out: Sequence[str],
    basis: Basis,
) -> FewestPartNumbers:
    choices: dict[str, tuple[Line, ...]] = {}
    marks: dict[str, str] = {}
    before: set[str] = set()
    openings: set[str] = set()
    opening_of: dict[str, str] = {}
    cost = ZERO
    currency = ""
    held = [(here, found) for here, found in groups.values() if here]
    for (here, found), number in zip(held, choice.chosen, strict=True):
        before |= set(_kinds(found[0]))
        cost = summed((cost, product(found[0].cost, Decimal(len(here)))))
        currency = found[0].currency
        for given in here:
            name = given.point.name
            marks[given.point.id] = f"{given.opening.mark}, {name}" if name else given.opening.mark
            openings.add(given.opening.id)
            if _kinds(found[number]) != _kinds(found[0]):
                choices[given.point.id] = lines_of(found[number])
                opening_of[given.point.id] = given.opening.id
    return FewestPartNumbers(
        tuple(sorted(before)), choice.kinds, cost, choice.cost, currency, choice.gap, choices, marks, opening_of,
        len(openings),
        tuple(left_out), basis,
    )  # fmt: skip


def _unpriced(needs: Iterable[str]) -> str:
    """Say why there is nothing to compare: without every price in one currency no cost can be."""
    said = f"; unknown: needs {', '.join(needs)}" if needs else ""
    return f"no opening has an alternative whose parts are all priced{said}"


def _kinds(found: Fit) -> tuple[str, ...]:
    """Different parts of a fit that are ordered: tools are there already."""
    return tuple(sorted({part.part for part in found.parts if part.role != "tool"}))

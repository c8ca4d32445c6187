"""Building a fit: slot by slot, refused early by the rules, the best complete chain taken."""

from collections.abc import Iterable
from dataclasses import dataclass, field, replace
from functools import partial
from math import inf
from typing import Final

from hwsched.fitting.bolts import GATE_BOLTS, OF_BOLTS, lock_bolts
from hwsched.fitting.candidate import (
    Judged,
    by_hand,
    holes_in,
    judged,
    needs_of,
    numbers_in,
    priced,
    rank_of,
)
from hwsched.fitting.locks import chosen_by_hand, lock_slot, shape_of
from hwsched.fitting.power import power_slot, short_lived, undecided
from hwsched.fitting.slots import Slots
from hwsched.fitting.sundries import lock_holes, with_sundries
from hwsched.fitting.units import UnitSlot, kept, other_places, unit_slot
from hwsched.fitting.ways import ORDER
from hwsched.rules import RULES, rule_named
from hwsched.rules.impossible_facts import without_impossible
from hwsched.rules.reading import LOCK_ROLES, SURVEY, in_role, lock_form, unit_in_lock
from hwsched.rules.rule import Slot
from hwsched.rules.ways_out import keeps_in
from hwsched.values import Fit, OpeningInput, Refusal, Role, RunnerUp
from hwsched.values.facts_memory import FactsMemory
from hwsched.values.facts_read import FactsRead
from hwsched.values.watching import Watch

_LEAD_REACHES: Final = rule_named("lead-reaches")

_RUNNERS_UP = 5
_FARTHEST: dict[Slot, int] = {"power": 0, "unit": 1, "lock": 2, "whole": 3}
"""The nearest miss is looked for where chains came farthest."""
_MAIN_ROLES = (*LOCK_ROLES, "unit", "lead-extension", "battery", "supply")


_OF_SURVEY = tuple(
    rule for rule in RULES
    if rule.id in ("case-within-stile", "lite-clear-of-lock", "lock-converted", "one-place", "stile-told")
)  # fmt: skip
"""What of the survey must be right before anything is fitted to it."""
_OF_BORES = tuple(rule for rule in RULES if rule.slot != "whole" and rule.discipline in ("fire-door", "holes"))


@dataclass
class _Search:
    """What the search has found so far."""

    complete: list[Fit] = field(default_factory=list)
    refused: list[Refusal] = field(default_factory=list)
    stopped: list[tuple[Slot, Judged]] = field(default_factory=list)
    """Candidates that ended a chain, with the slot in which they did."""
    needs: dict[str, Slot] = field(default_factory=dict)
    """Facts of the survey that decide, with the slot that asks for them."""
    stuck: list[tuple[Fit, Fit]] = field(default_factory=list)
    """Locks with units in their best place, against which only what comes after the place speaks."""


def fit(given: OpeningInput) -> Fit:
    """Work out parts, place, cable, power and holes of one opening.

    Parameters
    ----------
    given : OpeningInput
        Survey facts, catalogue, settings, choices by hand.

    Returns
    -------
    Fit
        ``fits`` with the best complete chain; ``unknown`` with the facts that are missing; ``does-not-fit`` with all
        refusals and the nearest miss. What a person chose is kept even where rules refuse it: the fit is then
        ``fits``, and `rules.check` says what is wrong. Equal inputs have equal fits.
    """
    return _built(without_impossible(given))


def fit_with_facts(given: OpeningInput, slots: FactsMemory | None = None) -> tuple[Fit, FactsRead]:
    """Do as `fit`, and tell which facts were read for it: while those hold, so does the fit.

    Parameters
    ----------
    given : OpeningInput
        As for `fit`.
    slots : FactsMemory, optional
        What slots found for openings that are alike in the facts that the slot reads.
    """
    # Whether a fact can be true is asked before it is read: that hangs on this fact alone.
    watch = Watch(without_impossible(given))
    return _built(watch.given, watch, slots), watch.read()


def _built(given: OpeningInput, watch: Watch | None = None, slots: FactsMemory | None = None) -> Fit:
    if (wrong := _contradicted(given)) is not None:
        return wrong
    # The existing lock decides the cylinder or lock that replaces it (common practice): without its form nothing can
    # be chosen, only guessed.
    if lock_form(given) is None and not chosen_by_hand(given):
        return Fit("to-measure", needs=needs_of(("existing_item.lock_form",), "lock"))
    return _settled(given, _searched(given, every=False, slots=Slots(given, watch, slots)))


def _contradicted(given: OpeningInput) -> Fit | None:
    """Return what is wrong with the survey itself, before anything is fitted to it; None where nothing is.

    What a person chose is fitted all the same, and the rules speak when the whole is checked.
    """
    if chosen_by_hand(given):
        return None
    found = judged(given, Fit("to-measure"), "lock", SURVEY, "lock", rules=_OF_SURVEY)
    if found.refusals:
        return Fit("does-not-fit", refused=found.refusals, nearest_miss=_worst(found.refusals))
    return Fit("to-measure", needs=needs_of(found.needs, "lock")) if found.needs else None


def alternatives(given: OpeningInput) -> tuple[Fit, ...]:
    """Work out every complete chain of an opening, best first.

    Parameters
    ----------
    given : OpeningInput
        As for `fit`.

    Returns
    -------
    tuple of Fit
        Each ``fits``, without refusals and runners-up; empty where the fit is unknown or nothing fits. The first is
        what `fit` takes.
    """
    given = without_impossible(given)
    if _contradicted(given) is not None or (lock_form(given) is None and not chosen_by_hand(given)):
        return ()
    search = _searched(given, every=True, slots=Slots(given))
    if search.needs:
        return ()
    return tuple(replace(each, status="fits") for each in _ranked(given, search))


def _searched(given: OpeningInput, *, every: bool, slots: Slots) -> _Search:
    """Search slot by slot; ``every``: also what has no chance to be the best."""
    search = _Search()
    slot = slots.of("lock", None, lock_slot)
    locks = slot.good
    if not locks and chosen_by_hand(given):
        # A choice made by hand is kept and checked, not taken back: what the rules have against it becomes findings.
        locks = slot.others[:1]
        for each in locks:
            search.needs.update(dict.fromkeys(each.needs, "lock"))
    else:
        _stop(search, "lock", slot.others)
        search.needs.update(dict.fromkeys(slot.needs, "lock"))
    easy: set[tuple[object, ...]] = set()
    for lock in locks:
        # A lock of the same shape that ranks before this one, with lead enough for every unit, leaves it no chance.
        shape = shape_of(given, lock.fit)
        if shape in easy:
            continue
        # Only where the lead sufficed for every unit: otherwise a dearer lock of the same shape with a longer lead
        # may still win.
        if unit_in_lock(given, lock.fit):
            # Its unit is in its case: there is nothing to place, to lead or to fix besides.
            units = UnitSlot((lock,), (), ())
        else:
            units = slots.of("unit", base := slots.same(lock.fit), partial(unit_slot, base=base))
        if _with_units(given, lock, units, search, slots) and not every:
            easy.add(shape)
    if not (search.complete or search.needs or _lacking(search) or chosen_by_hand(given) or given.placed is not None):
        _elsewhere(given, search, slots)
    return search


def _with_units(given: OpeningInput, lock: Judged, slot: UnitSlot, search: _Search, slots: Slots) -> bool:
    """Go on from a lock with its units; tells whether its lead sufficed for every unit."""
    going = slot.good if unit_in_lock(given, lock.fit) else kept(given, slot)
    search.needs.update(dict.fromkeys(slot.needs, "unit"))
    _stop(search, "unit", (each for each in slot.others if each not in going))
    for unit in going:
        search.needs.update(dict.fromkeys(unit.needs, "unit"))
        found = _onward(given, unit, search, slots)
        if found is not None:
            search.complete.append(found)
        elif unit.fit.placement is not None and not unit.refusals and _by_place(unit, slots):
            search.stuck.append((slots.same(lock.fit), slots.same(unit.fit)))
    short = any(refusal.rule == _LEAD_REACHES.id for each in slot.others for refusal in each.refusals)
    # Where an extension was put in, the lock's lead did not suffice, though no rule had to say so.
    extended = any(each.fit.part("lead-extension") is not None for each in (*slot.good, *slot.others))
    return not short and not extended


def _onward(given: OpeningInput, unit: Judged, search: _Search, slots: Slots) -> Fit | None:
    """Go on from a unit in its place: the lock's own bores, power, sundries; None where something speaks against it."""
    base = slots.same(unit.fit)
    late = slots.of("late", base, partial(_late, unit=base))
    if (late.refusals or late.needs) and not chosen_by_hand(given):
        # No way to feed it mends what the lock's own bores and bolts may not be.
        _stop(search, "unit", [late])
        return None
    power = power_slot(base, slots)
    ways = power.ways
    good = [way for way in ways if way.good]
    search.needs.update(dict.fromkeys(power.needs, "power"))
    if not good and (unit.refusals or _supply_by_hand(given)):
        # What a person chose goes on though nothing feeds it well, so that the findings speak of the whole opening.
        good = list(ways[:1])
        search.needs.update((need, "power") for way in good for need in way.needs)
    _stop(search, "power", (way for way in ways if way not in good))
    if undecided(given):
        search.needs.update(dict.fromkeys(undecided(given), "power"))
    # Ways come in the order of preference, and sundries add the same to each: the others could not win.
    return _complete(good[0].fit, base, slots) if good else None


def _by_place(unit: Judged, slots: Slots) -> bool:
    """Tell whether what stopped a chain may pass where the unit stands in another place."""
    base = slots.same(unit.fit)
    late = slots.of("late", base, partial(_late, unit=base))
    if late.refusals or late.needs:
        return all(refusal.rule != GATE_BOLTS.id for refusal in late.refusals)
    return power_slot(base, slots).by_place


def _elsewhere(given: OpeningInput, search: _Search, slots: Slots) -> None:
    """Where nothing is complete, try the units again in places of theirs that rank after the one that led nowhere."""
    for base, unit in search.stuck:
        for other in slots.of("elsewhere", unit, partial(_others, base=base, unit=unit)):
            trial = _Search()
            found = _onward(given, other, trial, slots)
            needs = dict.fromkeys((*other.needs, *trial.needs))
            if found is not None and not needs:
                search.complete.append(found)
                break
            # Nothing is refused for good of which a fact may still say that it fits.
            search.stopped += _lacking(trial)
            if found is not None:
                search.stopped.append(("unit", replace(other, needs=tuple(needs))))


def _lacking(search: _Search) -> list[tuple[Slot, Judged]]:
    """Return what only a missing fact keeps from being judged."""
    return [(slot, each) for slot, each in search.stopped if each.lacking]


def _others(slots: Slots, base: Fit, unit: Fit) -> tuple[Judged, ...]:
    part = in_role(slots.given, unit, "unit")
    return () if part is None else other_places(slots.given, base, part, unit.placement)


def _complete(way: Fit, unit: Fit, slots: Slots) -> Fit:
    # Sundries and price hang on what is chosen, not on how long its pack lasts.
    chosen = ("sundries", way.power, way.parts, way.holes)
    bare = replace(way, battery=None)
    found = slots.of(chosen, unit, lambda inner: priced(inner.given, with_sundries(inner.given, bare)))
    return replace(found, battery=way.battery) if way.battery is not None else found


def _late(slots: Slots, unit: Fit) -> Judged:
    """Let the rules of holes and labels speak of the lock's own bores, and of its bolts, that a chain gets last."""
    given = slots.given
    lock, holes = in_role(given, unit, *LOCK_ROLES), lock_holes(given, unit)
    bolted = lock is not None and lock.kind == "gate-lock"
    if lock is None or not (holes or bolted):
        return Judged(unit, (), ())
    role = next(part.role for part in unit.parts if part.role in LOCK_ROLES)
    whole = replace(unit, holes=(*unit.holes, *holes), parts=(*unit.parts, *lock_bolts(given, unit)))
    rules = (*(_OF_BORES if holes else ()), *(OF_BOLTS if bolted else ()))
    late = judged(given, whole, "lock", lock.number, role, rules=rules)
    # What of a bore is unknown the rules ask for when the whole is checked; bolts are chosen here, or never.
    return late if bolted else replace(late, needs=())


def _supply_by_hand(given: OpeningInput) -> bool:
    roles: tuple[Role, ...] = ("unit", "battery", "supply")
    return any(by_hand(given, role) for role in roles)


def _stop(search: _Search, slot: Slot, found: Iterable[Judged]) -> None:
    for each in found:
        search.stopped.append((slot, each))
        search.refused += each.refusals


def _settled(given: OpeningInput, search: _Search) -> Fit:
    every = _distinct(search.refused)
    # A missing fact goes before a fit that was found without it: what is ordered must not hang on a measure that
    # nobody took.
    if search.complete and not search.needs:
        ranked = _ranked(given, search)
        best = ranked[0]
        others = tuple(_runner_up(each) for each in ranked[1 : 1 + _RUNNERS_UP])
        return replace(best, status="fits", refused=every, runners_up=others)
    if search.needs:
        needs = tuple(need for fact, slot in search.needs.items() for need in needs_of((fact,), slot))
        return Fit("to-measure", refused=every, needs=needs)
    lacking = _lacking(search)
    if lacking:
        # The candidate that lacks least: asking for all facts of all candidates would send the surveyor for measures
        # of locks that never come into question.
        slot, fewest = min(lacking, key=lambda entry: (len(entry[1].needs), entry[1].needs))
        return Fit("to-measure", refused=every, needs=needs_of(fewest.needs, slot))
    refused = [(slot, each) for slot, each in search.stopped if each.refusals]
    # By number where all else is equal, so that the same opening always names the same miss.
    _, nearest = min(
        refused, key=lambda entry: (_FARTHEST[entry[0]], *_off(entry[1]), numbers_in(entry[1].fit)), default=("", None)
    )
    miss = _worst(nearest.refusals) if nearest is not None else None
    return Fit("does-not-fit", refused=every, nearest_miss=miss)


def _ranked(given: OpeningInput, search: _Search) -> list[Fit]:
    if len(search.complete) < 2:
        return search.complete
    # Where all packs last alike, or none is there, how long one has to last decides nothing and is not asked.
    lives = {None if each.battery is None else each.battery.days for each in search.complete}
    return sorted(search.complete, key=lambda each: _rank(given, each, by_life=len(lives) > 1))


def _rank(given: OpeningInput, found: Fit, *, by_life: bool) -> tuple[object, ...]:
    # One that keeps people in, or whose pack lasts too short, passes only where a person accepts it: any that passes by
    # itself goes before.
    accepted = (keeps_in(given, found), by_life and short_lived(given, found))
    return *accepted, rank_of(given, found), _order(found), numbers_in(found)


def _order(found: Fit) -> int:
    return ORDER.get(found.placement.pattern, 9) if found.placement is not None else 9


def _off(found: Judged) -> tuple[bool, int, float]:
    """Tell how far a candidate is from fitting: one that found its place is nearer than one refused for what it is."""
    return found.fit.placement is None, *found.miss()


def _worst(refusals: tuple[Refusal, ...]) -> Refusal:
    # A chain is as far from fitting as what it is shortest of; what no millimetre mends is farther than that.
    return max(refusals, key=lambda refusal: abs(refusal.values.get("short_mm", inf)))


def _runner_up(found: Fit) -> RunnerUp:
    return RunnerUp(
        tuple(part.part for part in found.parts if part.role in _MAIN_ROLES),
        found.placement.pattern if found.placement is not None else "",
        found.power,
        found.cost,
        holes_in(found),
        found.cost_needs,
    )


def _distinct(refused: Iterable[Refusal]) -> tuple[Refusal, ...]:
    seen: dict[tuple[str, str, str], Refusal] = {}
    for refusal in refused:
        seen.setdefault((refusal.part, refusal.rule, refusal.reason), refusal)
    return tuple(seen.values())

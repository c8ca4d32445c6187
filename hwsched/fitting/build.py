"""Building a fit: slot by slot, refused early by the rules, the best complete chain taken."""

from collections.abc import Iterable
from dataclasses import replace

from hwsched.cases import Case, Fit, Need, Refusal
from hwsched.fitting.candidate import Judged, by_hand, cost_of, needs_of
from hwsched.fitting.locks import lock_slot, nearest_first
from hwsched.fitting.power import power_slot
from hwsched.fitting.sundries import with_sundries
from hwsched.fitting.units import unit_slot
from hwsched.rules.reading import LOCK_ROLES, lock_form
from hwsched.rules.rule import Slot

_LOCKS_TRIED = 6
"""Cheapest locks with which units are tried; longer leads and other stacks come with dearer ones."""


def fit(case: Case) -> Fit:
    """Work out parts, place, cable, power and holes of one opening.

    Parameters
    ----------
    case : Case
        Survey facts, catalogue, settings, choices by hand.

    Returns
    -------
    Fit
        ``fitted`` with the best chain; ``unknown`` with the facts that are missing; ``not-fitted`` with what was
        refused, nearest miss first. Equal cases have equal fits.
    """
    if lock_form(case) is None:
        return Fit("unknown", needs=needs_of(("existing_item.lock_form",), "lock"))
    slot = lock_slot(case)
    kept = any(by_hand(case, role) for role in LOCK_ROLES)
    locks = slot.good or (slot.others[:1] if kept else ())
    if not locks:
        return _stopped(slot.others, "lock", Fit("unknown"))
    refused = list(_refusals(nearest_first(slot.others)))
    best: tuple[tuple[int, float], Fit] | None = None
    stopped: list[Judged] = []
    for lock in locks[:_LOCKS_TRIED]:
        units = unit_slot(case, lock.fit)
        chosen = units.good or (units.others[:1] if by_hand(case, "unit") or case.placed is not None else ())
        stopped += units.others
        for unit in chosen:
            powered = _powered(case, unit.fit)
            if powered is None:
                continue
            rank = cost_of(case, powered)
            if best is None or rank < best[0]:
                best = (rank, powered)
            break
        if best is not None:
            break
    if best is None:
        return _stopped(
            tuple(stopped), "unit", Fit("unknown", parts=locks[0].fit.parts, stack=locks[0].fit.stack), refused
        )
    whole = with_sundries(case, best[1])
    refused += _refusals(stopped)
    return replace(whole, status="fitted", refused=_distinct(refused), cost=cost_of(case, whole)[1])


def _powered(case: Case, base: Fit) -> Fit | None:
    ways = power_slot(case, base)
    if not ways:
        return base
    good = [way for way in ways if way.good]
    return (good or ways)[0].fit


def _stopped(others: tuple[Judged, ...], slot: Slot, partial: Fit, refused: Iterable[Refusal] = ()) -> Fit:
    """Say why there is no chain: unknown where a candidate only lacks facts, else not fitted."""
    lacking = [found for found in others if found.needs and not found.refusals]
    every = _distinct([*refused, *_refusals(nearest_first(others))])
    if lacking:
        fewest = min(lacking, key=lambda found: (len(found.needs), found.needs))
        needs: tuple[Need, ...] = needs_of(fewest.needs, slot)
        return replace(partial, status="unknown", needs=needs, refused=every)
    return replace(partial, status="not-fitted", refused=every)


def _refusals(found: Iterable[Judged]) -> list[Refusal]:
    return [refusal for each in found for refusal in each.refusals]


def _distinct(refused: Iterable[Refusal]) -> tuple[Refusal, ...]:
    seen: dict[tuple[str, str, str], Refusal] = {}
    for refusal in refused:
        seen.setdefault((refusal.part, refusal.rule, refusal.reason), refusal)
    return tuple(seen.values())

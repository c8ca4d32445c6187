"""Puts the steps of a lock point in order: each is printed after all that must be done before it."""

from functools import cache
from heapq import heappop, heappush
from typing import Final

from hwsched.language import phrase
from hwsched.values import FitPart
from hwsched.work.checks import checks
from hwsched.work.situation import Situation
from hwsched.work.step import Plan, Step, StepKind
from hwsched.work.steps import STEPS

NO_STEP: Final = ("tool",)
"""Roles of parts that are used and brought back, and no step takes out of the box."""


def plan(situation: Situation) -> Plan:
    """Return the work at a lock point as ordered steps.

    Parameters
    ----------
    situation : Situation
        A lock point that fits.

    Returns
    -------
    Plan
        Every part of the fit but its tools is taken by one step, every hole made by one.
    """
    due = {kind.name: kind for kind in STEPS if kind.at(situation)}
    taken = {name: kind.parts(situation) for name, kind in due.items()}
    rest = _rest(situation, taken)
    for name, kind in list(due.items()):
        if kind.takes_rest:
            taken[name] = rest
            if not rest:
                del due[name]
    steps = tuple(
        _step(situation, due[name], number, taken[name]) for number, name in enumerate(_ordered(tuple(due)), start=1)
    )
    tools = tuple(dict.fromkeys(tool for step in steps if not step.done for tool in step.tools))
    return Plan(steps, checks(situation), tools)


def _rest(situation: Situation, taken: dict[str, tuple[FitPart, ...]]) -> tuple[FitPart, ...]:
    held = {id(part) for parts in taken.values() for part in parts}
    return tuple(part for part in situation.fit.parts if part.role not in NO_STEP and id(part) not in held)


def _step(situation: Situation, kind: StepKind, number: int, parts: tuple[FitPart, ...]) -> Step:
    where = kind.where if isinstance(kind.where, str) else kind.where(situation)
    text = phrase(kind.text) if isinstance(kind.text, str) else kind.text(situation)
    done = bool(kind.on_record) and all(work in situation.bench for work in kind.on_record)
    if done:
        text = phrase(kind.done_text)
    if kind.takes_rest:
        text += f" {', '.join(part.description or part.part for part in parts)}."
    return Step(
        number,
        kind.name,
        where,
        text,
        kind.holes(situation),
        parts,
        kind.tools(situation),
        tuple(caution for caution in kind.cautions if caution.when(situation)),
        () if done else kind.readings(situation),
        kind.tasks,
        done,
        bool(kind.on_record),
    )


# --- order ----------------------------------------------------------------------------------------------------------


@cache
def before() -> dict[str, frozenset[str]]:
    """Return for every step all steps that must be done before it, at whatever remove.

    Raises
    ------
    ValueError
        Where a step is declared after itself, or after what nobody brings about.
    """
    states: dict[str, list[str]] = {}
    for kind in STEPS:
        states.setdefault(kind.name, []).append(kind.name)
        if kind.brings:
            states.setdefault(kind.brings, []).append(kind.name)
    direct = {kind.name: _direct(kind, states) for kind in STEPS}
    found: dict[str, frozenset[str]] = {}

    def reach(name: str, way: tuple[str, ...]) -> frozenset[str]:
        if name in way:
            raise ValueError(f"steps wait for each other: {', '.join((*way, name))}")
        if name not in found:
            earlier = direct[name]
            found[name] = earlier.union(*(reach(each, (*way, name)) for each in sorted(earlier)))
        return found[name]

    for kind in STEPS:
        reach(kind.name, ())
    return found


def _direct(kind: StepKind, states: dict[str, list[str]]) -> frozenset[str]:
    unknown = [name for name in kind.after if name not in states]
    if unknown:
        raise ValueError(f"step {kind.name} waits for what nobody brings about: {', '.join(unknown)}")
    return frozenset(each for name in kind.after for each in states[name] if each != kind.name)


def _ordered(due: tuple[str, ...]) -> list[str]:
    """Order some steps: what waits for nothing comes in the order in which steps are declared."""
    place = {kind.name: number for number, kind in enumerate(STEPS)}
    # A step that is not due hands on what it waits for, so that the order holds across it.
    waits = {name: {each for each in before()[name] if each in due} for name in due}
    free = [place[name] for name in due if not waits[name]]
    free.sort()
    names = [kind.name for kind in STEPS]
    done: list[str] = []
    while free:
        name = names[heappop(free)]
        done.append(name)
        for other, open_ in waits.items():
            if name in open_:
                open_.remove(name)
                if not open_:
                    heappush(free, place[other])
    return done

"""Fault finding at a lock point: symptoms, and under each what to look at, with what is expected at this door.

Cells come first, then contacts and leads, the key held straight, a second cylinder, and last board and key: what is
looked at soonest costs least. The table `resources/service/faults.csv` holds the lines, each with its source; an office
that finds faults in another way edits it.
"""

import csv
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from functools import cache
from typing import Final

from hwsched.attributes.of_parts import SIGNAL_OPENS, SIGNAL_REFUSES, SIGNAL_WEAK, STANDING_UA, TextName
from hwsched.language import phrase, phrase_of_count
from hwsched.paths import RESOURCES
from hwsched.work.situation import Situation
from hwsched.work.steps.bench import at_unit

STAGES: Final = {
    "cells": "Cells and feed",
    "contacts": "Contacts and leads",
    "key": "Key and leaf",
    "second": "Second cylinder",
    "board": "Board and key",
}
"""In the order in which they are looked at."""
UNVERIFIED: Final = "from memory"

_WHEN: Final[Mapping[str, Callable[[Situation], bool]]] = {
    "battery": lambda s: s.fit.power == "battery",
    "supply": lambda s: s.on_supply,
    "lead": lambda s: s.fit.cable is not None,
    "leaf": lambda s: s.leaf is not None,
    "cylinder": lambda s: s.new_lock.endswith("cylinder"),
    "tail": lambda s: s.has("tailpiece"),
    "cam": lambda s: s.has("cam"),
    "threaded": lambda s: s.new_lock == "mortise-cylinder",
    "euro": lambda s: s.new_lock == "euro-cylinder",
    "rim": lambda s: s.new_lock == "rim-cylinder",
    "bored": lambda s: s.new_lock == "bored-lever-lock",
}


@dataclass(frozen=True, slots=True)
class Look:
    """One thing to look at."""

    stage: str
    text: str
    source: str


@dataclass(frozen=True, slots=True)
class Symptom:
    """What a person meets at the door, and what to look at in which order."""

    name: str
    title: str
    looks: tuple[Look, ...]


def symptoms(situation: Situation) -> tuple[Symptom, ...]:
    """Return the symptoms that a lock point can show, each with what to look at.

    Parameters
    ----------
    situation : Situation
        A lock point that fits.

    Returns
    -------
    tuple of Symptom
        In the order of the table; within one by stage. One of which nothing can be looked at here is left out.
    """
    expected = _expected(situation)
    order = list(STAGES)
    found: dict[str, list[Look]] = {}
    titles: dict[str, str] = {}
    for row in _rows():
        if all(_WHEN[condition](situation) for condition in row["when"].split()):
            titles[row["symptom"]] = phrase(row["title"])
            look = Look(row["stage"], phrase(row["look"], **expected), row["source"])
            found.setdefault(row["symptom"], []).append(look)
    return tuple(
        Symptom(name, titles[name], tuple(sorted(looks, key=lambda look: order.index(look.stage))))
        for name, looks in found.items()
    )


@cache
def _rows() -> tuple[Mapping[str, str], ...]:
    with (RESOURCES / "service" / "faults.csv").open(encoding="utf-8", newline="") as file:
        return tuple(csv.DictReader(file))


def _expected(s: Situation) -> dict[str, str]:
    """Return what is expected at this door, by the names that the table uses."""
    rest = next((reading.expected for reading in at_unit(s, "")), phrase("unknown: needs a unit"))
    work = next((reading.expected for reading in at_unit(s, "", operating=True)), phrase("unknown: needs a unit"))
    standing = s.unit.number_of(STANDING_UA) if s.unit is not None else None
    return {
        "resting": rest,
        "working": work,
        "opens": _signal(s, SIGNAL_OPENS, phrase("when it opens")),
        "refuses": _signal(s, SIGNAL_REFUSES, phrase("when it refuses")),
        "weak": _signal(s, SIGNAL_WEAK, phrase("when its cells are weak")),
        "standing": phrase("unknown: needs the unit's standing current") if standing is None else f"{standing:g} µA",
        "life": phrase("unknown: needs the use of the opening")
        if s.fit.battery is None
        else phrase_of_count("{count} day", "{count} days", int(s.fit.battery.days)),
        "turns": phrase("unknown: needs the cylinder's length and thread")
        if s.turns is None
        else phrase("about {turns} turns in", turns=s.turns),
        "cam": _cam(s),
    }


def _signal(s: Situation, name: TextName, when: str) -> str:
    if s.unit is None:
        return phrase("unknown: needs a unit")
    return s.unit.text_of(name) or phrase(
        "unknown: needs part {number}, light and tone {when}", number=s.unit.number, when=when
    )


def _cam(s: Situation) -> str:
    turns = s.fit.stack.turns if s.fit.stack is not None else 0
    if not turns:
        return phrase("at centre")
    return phrase_of_count("{count} turn beyond centre", "{count} turns beyond centre", turns)

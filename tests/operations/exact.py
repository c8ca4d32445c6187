"""Findings as plain sets, for comparing completely; and a small project of usual openings."""

from collections import Counter
from datetime import date

from hwsched.model.project import create_project, open_project
from hwsched.model.queries import opening_ids
from hwsched.operations.findings.checking import check_openings
from tests.once import copied
from tests.operations.powered import door, fit_all, write_catalogue

TODAY = date(2031, 5, 1)
PILOTS = "pilots for the unit's screws #6, through its plate"
USUAL = frozenset(
    {
        ("case-offset-taken", "lock", "note", False),
        ("tool-known", PILOTS, "note", False),
        ("coin-cell-drain", "UNIT", "note", False),
        ("programmed-before-work", "UNIT", "note", False),
        ("sleeve-fits", "lead", "note", False),
    }
)
"""What is said of every usual opening of `tests.rules.scenario`: nobody measured where the case stands; the parts have
no 2 mm bit for #6 screws (pilot of a #6 in wood: 5/64 in) and no sleeve for the lead's hole of 1/2 in; the unit has a
coin cell; a key and it are programmed."""


def small(path, marks=("1", "2", "3"), **facts):
    """Make a project of usual openings that are fitted, alike but for what `facts` says by mark."""

    def make(place):
        with create_project(str(place), "Yard", length_style="mm", bare_unit="mm") as project:
            write_catalogue(project)
            for mark in marks:
                door(project, mark, **{"power_wish": None, "plan_x_m": None, "plan_y_m": None, "rise_m": None,
                                       **facts.get(f"m{mark}", {})})  # fmt: skip
            fit_all(project)

    copied(f"small {tuple(marks)} {facts}", path, make)
    return open_project(str(path))


def id_of(project, mark):
    with project.reading() as connection:
        return opening_ids(connection)[mark]


def findings(project, marks=None, today=TODAY):
    """Return per mark the findings as (rule, about, severity, waived), none twice."""
    found = {}
    for each in check_openings(project, today=today):
        if marks is None or each.given.opening.mark in marks:
            said = Counter((f.rule, f.about, f.severity, f.waived) for f in each.findings)
            assert max(said.values(), default=1) == 1, said
            found[each.given.opening.mark] = set(said)
    return found


def waived(entries, *rules):
    """Return the same findings with those of some rules waived."""
    return {(rule, about, severity, done or rule in rules) for rule, about, severity, done in entries}


def without(entries, *rules):
    """Return the findings but those of some rules."""
    return {entry for entry in entries if entry[0] not in rules}

"""`hwsched project today`: what is to be done next, by the person whose work it is, and how far each level is."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.counting import counted
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.operations.project.today import SinceRelease, Today


class TaskRecord(TypedDict):
    """Something to be done: how many, and which openings or parts."""

    name: str
    person: str
    says: str
    count: int
    openings: list[str]
    """Marks."""
    parts: list[str]


class LevelRecord(TypedDict):
    """How many openings of a level are in which state."""

    building: str
    level: str
    states: dict[str, int]


class SinceRecord(TypedDict):
    """What is otherwise since the last revision."""

    letter: str
    at: str
    new: list[str]
    changed: list[str]
    """Marks."""
    gone: int
    others: int


class TodayRecord(TypedDict):
    """What is to be done next, how far each level is, and what has changed since the last revision, if there is one."""

    tasks: list[TaskRecord]
    levels: list[LevelRecord]
    since: SinceRecord | None


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json
    from hwsched.operations.project.today import read_today

    with opened(arguments) as project:
        found = read_today(project)
    print_json(_record(found))
    if not arguments.json:
        print("\n".join(_lines(found)))
    return DONE


def _record(found: Today) -> TodayRecord:
    since, marks = found.since, found.marks
    return {
        "tasks": [
            {
                "name": each.name,
                "person": each.person,
                "says": each.says,
                "count": each.count,
                "openings": [marks[key] for key in each.openings],
                "parts": list(each.parts),
            }
            for each in found.tasks
        ],
        "levels": [
            {
                "building": each.building,
                "level": each.level,
                "states": dict(each.states.items()),
            }
            for each in found.levels
        ],
        "since": None
        if since is None
        else {
            "letter": since.letter,
            "at": since.at,
            "new": [marks[key] for key in since.new],
            "changed": [marks[key] for key in since.changed],
            "gone": since.gone,
            "others": since.others,
        },
    }


def _lines(found: Today) -> list[str]:
    from hwsched.operations.project.today import PERSONS

    lines = []
    for person in PERSONS:
        lines.append(person.capitalize())
        lines += [f"{each.count:>6}  {each.words}" for each in found.of(person)]
    lines.append("Levels")
    for level in found.levels:
        told = ", ".join(f"{count} {state.replace('-', ' ')}" for state, count in level.states.items() if count)
        lines.append(f"  {level.building or 'no building'}, {level.level or 'no level'}: {told}")
    lines.append(_since(found.since))
    return lines


def _since(since: SinceRelease | None) -> str:
    if since is None:
        return "Nothing was released under a letter yet"
    counts = (
        f"{counted(len(since.new), 'opening')} new, {len(since.changed)} changed, {since.gone} gone; "
        f"{since.others} other changes"
    )
    return f"Since revision {since.letter} of {since.at}: {counts}"


VERB = Verb(_arguments, _run, result=TodayRecord)

"""`hwsched parts set`: hardware sets: made, proposed, changed, assigned, removed."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.counting import counted
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Callable

    from hwsched.model.project import Project
    from hwsched.operations.changes import Changes
    from hwsched.operations.parts.hardware_sets import HardwareSet, Line


class SetLine(TypedDict):
    """A line of a set."""

    role: str
    part: str
    quantity: float


class Own(TypedDict):
    """Roles that an opening decides for itself."""

    mark: str
    roles: list[str]


class SetShown(TypedDict):
    """A hardware set, or one that is proposed."""

    name: str
    lines: list[SetLine]
    marks: list[str]
    own: list[Own]


class Effect(TypedDict):
    """What a changed set does to an opening."""

    mark: str
    before: str
    after: str
    gone: list[str]
    new: list[str]
    why: str | None


class Sets(TypedDict):
    """Sets that are there, proposed or touched; openings that were touched; what a change does to them."""

    sets: list[SetShown]
    marks: list[str]
    effects: list[Effect]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from argparse import SUPPRESS

    from hwsched.cli.session import add_dry_run, add_project

    add_project(parser)
    parser.add_argument("action", choices=list(_ACTIONS))
    parser.add_argument("name", nargs="?", help="of the set")
    parser.add_argument("items", nargs="*", metavar="ROLE=PART[*N] | MARK", help="lines of make and change; marks else")
    add_dry_run(parser, "change: only show which openings change")
    parser.add_argument("--try", dest="dry_run", action="store_true", help=SUPPRESS)
    parser.add_argument("--accept", action="store_true", help="propose: make the proposed sets and assign them")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, wrong_usage

    act, needs_name = _ACTIONS[arguments.action]
    lacks = "the name of a set" if needs_name and not arguments.name else ""
    if not lacks and arguments.action == "assign" and not arguments.items:
        lacks = "the marks of openings"
    if arguments.action == "free" and not arguments.name:
        lacks = "the marks of openings"
    if lacks:
        return wrong_usage(f"set {arguments.action} needs {lacks}")
    if arguments.dry_run and arguments.action != "change":
        return wrong_usage("--dry-run goes with change; propose shows what it would make without --accept")
    with opened(arguments) as project:
        return act(project, arguments)


def _list(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json, said
    from hwsched.operations.parts.hardware_sets import hardware_sets

    found = hardware_sets(project)
    print_json(_sets([_set(each) for each in found]))
    if arguments.json:
        return DONE
    for each in found:
        print(f"{each.name}: {counted(len(each.openings), 'opening')}: {', '.join(each.marks)}")
        for line in each.lines:
            print(f"  {line.role} {line.part}" + ("" if line.quantity == 1 else f" x {line.quantity:g}"))
        for mark, roles in each.overridden.items():
            print(f"  {mark} decides for itself: {', '.join(roles)}")
    if not found:
        said(arguments, "There is no hardware set yet.")
    return DONE


def _propose(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json, said, step_of, tell_step, who
    from hwsched.operations.parts.hardware_sets import accept_sets, propose_sets

    found = propose_sets(project)
    proposed: list[SetShown] = [
        {"name": each.name, "lines": _json_lines(each.lines), "marks": list(each.marks), "own": []} for each in found
    ]
    if arguments.accept:
        changes = accept_sets(project, found, who=who(arguments))
        return tell_step(arguments, "Made", changes, _sets(proposed, step_of(project, changes)["marks"]))
    print_json(_sets(proposed))
    if arguments.json:
        return DONE
    for each in found:
        print(f"{each.name}: {', '.join(f'{line.role} {line.part}' for line in each.lines)}")
        print(f"  {counted(len(each.marks), 'opening')}: {', '.join(each.marks)}")
    said(arguments, f"{len(found)} sets proposed; --accept makes them.")
    return DONE


def _make(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import who
    from hwsched.operations.parts.hardware_sets import make_set

    changes, set_id = make_set(project, arguments.name, _lines(arguments.items), who=who(arguments))
    return _tell(project, arguments, "Made", changes, set_id)


def _change(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json, who
    from hwsched.operations.parts.hardware_sets import change_set_lines, effect_of_lines, set_named

    held, lines = set_named(project, arguments.name), _lines(arguments.items)
    effects = effect_of_lines(project, held.id, lines)
    told: list[Effect] = [
        {
            "mark": each.mark,
            "before": each.before,
            "after": each.after,
            "gone": list(each.gone),
            "new": list(each.new),
            "why": each.why or None,
        }
        for each in effects
    ]
    if not arguments.json:
        for each in effects:
            print(f"{each.mark}: {each.before} -> {each.after}")
            print(f"  - {', '.join(each.gone)}\n  + {', '.join(each.new)}\n  {each.why}".rstrip())
        print(f"{len(effects)} of {len(held.openings)} openings change.")
    if arguments.dry_run:
        print_json(_sets([_set(held)], effects=told))
        return DONE
    changes = change_set_lines(project, held.id, lines, who=who(arguments))
    return _tell(project, arguments, "Changed", changes, held.id, told)


def _assign(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import who
    from hwsched.operations.opening.named_openings import openings_of_marks
    from hwsched.operations.parts.hardware_sets import assign_set, set_named

    openings, held = openings_of_marks(project, arguments.items), set_named(project, arguments.name)
    changes = assign_set(project, held.id, openings, who=who(arguments))
    return _tell(project, arguments, "Assigned", changes, held.id)


def _free(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import who
    from hwsched.operations.opening.named_openings import openings_of_marks
    from hwsched.operations.parts.hardware_sets import assign_set

    marks = [each for each in (arguments.name, *arguments.items) if each]
    changes = assign_set(project, None, openings_of_marks(project, marks), who=who(arguments))
    return _tell(project, arguments, "Freed", changes)


def _remove(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import who
    from hwsched.operations.parts.hardware_sets import remove_set, set_named

    changes = remove_set(project, set_named(project, arguments.name).id, who=who(arguments))
    return _tell(project, arguments, "Removed", changes)


_ACTIONS: dict[str, tuple[Callable[[Project, argparse.Namespace], int], bool]] = {
    "list": (_list, False),
    "propose": (_propose, False),
    "make": (_make, True),
    "change": (_change, True),
    "assign": (_assign, True),
    "free": (_free, False),
    "remove": (_remove, True),
}
"""What can be done with sets, and whether it needs the name of one."""


def _lines(items: list[str]) -> list[Line]:
    from hwsched.model.errors import ValueRefusedError
    from hwsched.operations.parts.hardware_sets import Line

    lines = []
    for item in items:
        role, equals, part = item.partition("=")
        number, times, count = part.rpartition("*")
        try:
            quantity = float(count) if times else 1.0
        except ValueError:
            quantity = -1.0
        if not equals or quantity <= 0:
            raise ValueRefusedError("line", f"'{item}' cannot be read; accepted: ROLE=PART or ROLE=PART*N")
        lines.append(Line(role, number if times else part, quantity))
    return lines


def _tell(
    project: Project,
    arguments: argparse.Namespace,
    what: str,
    changes: Changes,
    set_id: str | None = None,
    effects: list[Effect] | None = None,
) -> int:
    from hwsched.cli.session import step_of, tell_step
    from hwsched.operations.parts.hardware_sets import hardware_sets

    sets = [_set(each) for each in hardware_sets(project) if each.id == set_id]
    return tell_step(arguments, what, changes, _sets(sets, step_of(project, changes)["marks"], effects))


def _sets(sets: list[SetShown], marks: list[str] | None = None, effects: list[Effect] | None = None) -> Sets:
    return {"sets": sets, "marks": marks or [], "effects": effects or []}


def _set(held: HardwareSet) -> SetShown:
    return {
        "name": held.name,
        "lines": _json_lines(held.lines),
        "marks": list(held.marks),
        "own": [{"mark": mark, "roles": list(roles)} for mark, roles in held.overridden.items()],
    }


def _json_lines(lines: tuple[Line, ...]) -> list[SetLine]:
    return [{"role": line.role, "part": line.part, "quantity": line.quantity} for line in lines]


VERB = Verb(_arguments, _run, result=Sets, in_batch=True)

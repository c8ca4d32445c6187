"""`hwsched parts set`: hardware sets: made, proposed, changed, assigned, removed."""

from __future__ import annotations

from hwsched.cli.verb import DONE, WRONG_USAGE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Callable

    from hwsched.model.project import Project
    from hwsched.operations.parts.hardware_sets import Line


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("action", choices=list(_ACTIONS))
    parser.add_argument("name", nargs="?", help="of the set")
    parser.add_argument("items", nargs="*", metavar="ROLE=PART[*N] | MARK", help="lines of make and change; marks else")
    parser.add_argument("--try", dest="only_try", action="store_true", help="change: only show which openings change")
    parser.add_argument("--accept", action="store_true", help="propose: make the proposed sets and assign them")


def _run(arguments: argparse.Namespace) -> int:
    import sys

    from hwsched.cli.session import opened

    act, needs_name = _ACTIONS[arguments.action]
    lacks = "the name of a set" if needs_name and not arguments.name else ""
    if not lacks and arguments.action == "assign" and not arguments.items:
        lacks = "the marks of openings"
    if arguments.action == "free" and not arguments.name:
        lacks = "the marks of openings"
    if lacks:
        print(f"hwsched set {arguments.action}: needs {lacks}", file=sys.stderr)
        return WRONG_USAGE
    with opened(arguments) as project:
        return act(project, arguments)


def _list(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json
    from hwsched.operations.parts.hardware_sets import hardware_sets

    found = hardware_sets(project)
    if arguments.json:
        print_json(
            [
                {
                    "name": each.name,
                    "lines": _json_lines(each.lines),
                    "marks": list(each.marks),
                    "overridden": {mark: list(roles) for mark, roles in each.overridden.items()},
                }
                for each in found
            ]
        )
        return DONE
    for each in found:
        print(f"{each.name}: {len(each.openings)} openings: {', '.join(each.marks)}")
        for line in each.lines:
            print(f"  {line.role} {line.part}" + ("" if line.quantity == 1 else f" x {line.quantity:g}"))
        for mark, roles in each.overridden.items():
            print(f"  {mark} decides for itself: {', '.join(roles)}")
    if not found:
        print("There is no hardware set yet.")
    return DONE


def _propose(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json, tell_step, who
    from hwsched.operations.parts.hardware_sets import accept_sets, propose_sets

    found = propose_sets(project)
    if arguments.accept:
        return tell_step(arguments, "Made", accept_sets(project, found, who=who(arguments)))
    if arguments.json:
        print_json([{"name": p.name, "lines": _json_lines(p.lines), "marks": list(p.marks)} for p in found])
        return DONE
    for each in found:
        print(f"{each.name}: {', '.join(f'{line.role} {line.part}' for line in each.lines)}")
        print(f"  {len(each.marks)} openings: {', '.join(each.marks)}")
    print(f"{len(found)} sets proposed; --accept makes them.")
    return DONE


def _make(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import tell_step, who
    from hwsched.operations.parts.hardware_sets import make_set

    changes, _ = make_set(project, arguments.name, _lines(arguments.items), who=who(arguments))
    return tell_step(arguments, "Made", changes)


def _change(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json, tell_step, who
    from hwsched.operations.parts.hardware_sets import change_set_lines, effect_of_lines, set_named

    held, lines = set_named(project, arguments.name), _lines(arguments.items)
    effects = effect_of_lines(project, held.id, lines)
    if arguments.json and arguments.only_try:
        print_json(
            [
                {
                    "mark": each.mark,
                    "before": each.before,
                    "after": each.after,
                    "gone": list(each.gone),
                    "new": list(each.new),
                    "why": each.why,
                }
                for each in effects
            ]
        )
    if not arguments.json:
        for each in effects:
            print(f"{each.mark}: {each.before} -> {each.after}")
            print(f"  - {', '.join(each.gone)}\n  + {', '.join(each.new)}\n  {each.why}".rstrip())
        print(f"{len(effects)} of {len(held.openings)} openings change.")
    if arguments.only_try:
        return DONE
    return tell_step(arguments, "Changed", change_set_lines(project, held.id, lines, who=who(arguments)))


def _assign(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import tell_step, who
    from hwsched.operations.opening.named_openings import openings_of_marks
    from hwsched.operations.parts.hardware_sets import assign_set, set_named

    openings = openings_of_marks(project, arguments.items)
    changes = assign_set(project, set_named(project, arguments.name).id, openings, who=who(arguments))
    return tell_step(arguments, "Assigned", changes)


def _free(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import tell_step, who
    from hwsched.operations.opening.named_openings import openings_of_marks
    from hwsched.operations.parts.hardware_sets import assign_set

    marks = [each for each in (arguments.name, *arguments.items) if each]
    changes = assign_set(project, None, openings_of_marks(project, marks), who=who(arguments))
    return tell_step(arguments, "Freed", changes)


def _remove(project: Project, arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import tell_step, who
    from hwsched.operations.parts.hardware_sets import remove_set, set_named

    changes = remove_set(project, set_named(project, arguments.name).id, who=who(arguments))
    return tell_step(arguments, "Removed", changes)


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


def _json_lines(lines: tuple[Line, ...]) -> list[dict[str, str | float]]:
    return [{"role": line.role, "part": line.part, "quantity": line.quantity} for line in lines]


VERB = Verb(_arguments, _run, in_batch=True)

"""`hwsched project people`: who works on a project, and in which role."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Listed(TypedDict):
    """Somebody who works on the project."""

    name: str
    role: str


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.choices import ROLES
    from hwsched.cli.session import add_project

    add_project(parser)
    either = parser.add_mutually_exclusive_group()
    either.add_argument("--add", metavar="NAME", help="list a person, or give one who is listed another role")
    either.add_argument("--remove", metavar="NAME", help="take a person off the list")
    roles = "; ".join(f"{name}: {does}" for name, does in ROLES.items())
    parser.add_argument("--role", choices=tuple(ROLES), help=f"for --add. {roles}")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json, said, who, wrong_usage
    from hwsched.operations.project.people import add_person, people, remove_person

    if bool(arguments.add) != bool(arguments.role):
        return wrong_usage("--add NAME and --role ROLE go together")
    with opened(arguments) as project:
        if arguments.add:
            add_person(project, arguments.add, arguments.role, who=who(arguments))
        elif arguments.remove:
            remove_person(project, arguments.remove, who=who(arguments))
        found = people(project)
    print_json([{"name": person.name, "role": person.role} for person in found])
    if arguments.json:
        return DONE
    if not found:
        said(arguments, "Nobody is listed: the project is open to all.")
    for person in found:
        print(f"{person.role:<12} {person.name}")
    return DONE


VERB = Verb(_arguments, _run, result=list[Listed], in_batch=True)

"""`hwsched project new`: makes a project file."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


_METRIC = ("mm", "cm", "m")
"""Who writes lengths so reads them so too."""


class Made(TypedDict):
    """A project that was made."""

    project: str
    name: str
    time_zone: str | None


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.choices import BARE_UNITS, LENGTH_STYLES
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("--name", help="title of the project (default: the file's name)")
    parser.add_argument(
        "--lengths",
        choices=LENGTH_STYLES,
        help="how lengths are shown (default: mm where numbers without a unit are metric, else fraction)",
    )
    parser.add_argument("--bare-unit", choices=BARE_UNITS, help="unit of numbers written without one")
    parser.add_argument(
        "--time-zone", metavar="ZONE", help="whose days count, such as Europe/Lisbon (default: this machine's)"
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json, said
    from hwsched.model.file.address import named_after
    from hwsched.model.project import create_project

    name = arguments.name or named_after(arguments.project)
    project = create_project(
        arguments.project,
        name,
        length_style=arguments.lengths or ("mm" if arguments.bare_unit in _METRIC else "fraction"),
        bare_unit=arguments.bare_unit,
        time_zone=arguments.time_zone,
    )
    # Of a database's address without its password.
    place, zone = project.place, project.time_zone
    project.close()
    print_json({"project": place, "name": name, "time_zone": zone})
    said(arguments, f"Made {place}: {name}")
    return DONE


VERB = Verb(_arguments, _run, result=Made)

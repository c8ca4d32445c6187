"""`hwsched settings`: changes what the project decides for its fits and checks."""

from __future__ import annotations

from hwsched.cli.verb import WRONG_USAGE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project
    from hwsched.operations.project.settings import PREFERENCES
    from hwsched.quantities import LENGTH_STYLES

    add_project(parser)
    parser.add_argument("--name", help="title of the project")
    parser.add_argument("--lengths", choices=LENGTH_STYLES, help="how lengths are shown")
    parser.add_argument("--prefer", choices=PREFERENCES, help="what ranks alternatives first")
    parser.add_argument(
        "--rule-off", action="append", default=[], metavar="ID", help="switch a rule off; may be repeated"
    )
    parser.add_argument("--rule-on", action="append", default=[], metavar="ID", help="switch a rule on again")
    parser.add_argument(
        "--limit",
        action="append",
        default=[],
        metavar="ID.LIMIT=NUMBER",
        help="change a rule's limit, in the unit of its name; an empty number goes back to the rule's own",
    )


def _run(arguments: argparse.Namespace) -> int:
    import sys

    from hwsched.cli.session import opened, tell_step, who
    from hwsched.operations.changes import Changes
    from hwsched.operations.project.settings import set_settings

    limits: dict[str, float | None] = {}
    for entry in arguments.limit:
        name, equals, number = entry.partition("=")
        try:
            limits[name] = float(number) if number.strip() else None
        except ValueError:
            equals = ""
        if not equals:
            print(f"hwsched settings: '{entry}' is not of the form ID.LIMIT=NUMBER", file=sys.stderr)
            return WRONG_USAGE
    off = {**dict.fromkeys(arguments.rule_off, True), **dict.fromkeys(arguments.rule_on, False)}
    asked = {
        "name": arguments.name,
        "length_style": arguments.lengths,
        "prefer": arguments.prefer,
        "limits": limits or None,
        "rules_off": off or None,
    }
    with opened(arguments) as project:
        # Where nothing is asked nothing is written, whoever asks and wherever the project lies.
        wanted = any(each is not None for each in asked.values())
        changes = set_settings(project, who=who(arguments), **asked) if wanted else Changes()
    return tell_step(arguments, "Settings changed", changes)


SETTINGS = Verb("settings", "Change units, limits, rules switched off, and what is preferred.", _arguments, _run)

"""`hwsched project settings`: changes what the project decides for its fits and checks."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Decided(TypedDict):
    """What the project decides, as it stands after the verb."""

    name: str
    lengths: str
    bare_unit: str | None
    time_zone: str | None
    prefer: str
    limits: dict[str, float]
    rules_off: list[str]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.choices import LENGTH_STYLES, PREFERENCES
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("--name", help="title of the project")
    parser.add_argument("--lengths", choices=LENGTH_STYLES, help="how lengths are shown")
    parser.add_argument(
        "--time-zone", metavar="ZONE", help="whose days count and whose hours are shown, such as Europe/Lisbon"
    )
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
    from hwsched.cli.session import opened, tell_step, who, wrong_usage
    from hwsched.operations.changes import Changes
    from hwsched.operations.project.reading_settings import settings_of
    from hwsched.operations.project.settings import set_settings

    limits: dict[str, float | None] = {}
    for entry in arguments.limit:
        name, equals, number = entry.partition("=")
        try:
            limits[name] = float(number) if number.strip() else None
        except ValueError:
            equals = ""
        if not equals:
            return wrong_usage(f"'{entry}' is not of the form ID.LIMIT=NUMBER")
    off = {**dict.fromkeys(arguments.rule_off, True), **dict.fromkeys(arguments.rule_on, False)}
    asked = {
        "name": arguments.name,
        "length_style": arguments.lengths,
        "prefer": arguments.prefer,
        "limits": limits or None,
        "rules_off": off or None,
        "time_zone": arguments.time_zone,
    }
    with opened(arguments) as project:
        # Where nothing is asked nothing is written, whoever asks and wherever the project lies.
        wanted = any(each is not None for each in asked.values())
        changes = set_settings(project, who=who(arguments), **asked) if wanted else Changes()
        settings = settings_of(project)
        decided: Decided = {
            "name": project.title,
            "lengths": project.length_style,
            "bare_unit": project.bare_unit,
            "time_zone": project.time_zone,
            "prefer": settings.prefer,
            "limits": dict(settings.limits),
            "rules_off": sorted(settings.rules_off),
        }
    if not arguments.json and changes.number is None:
        for name, value in decided.items():
            told = value if isinstance(value, str) else ", ".join(_lines(value))
            print(f"{name.replace('_', ' '):<10} {told or 'none'}")
        return 0
    return tell_step(arguments, "Settings changed", changes, decided)


def _lines(value: object) -> list[str]:
    if isinstance(value, dict):
        return [f"{name}={number:g}" for name, number in sorted(value.items())]
    return list(value) if isinstance(value, list) else []


VERB = Verb(_arguments, _run, result=Decided, in_batch=True)

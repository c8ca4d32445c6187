"""`hwsched findings waive`: accepts the findings of a rule, or takes a waiver back."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Waived(Step):
    """The rule, and the openings at which its findings are accepted, or are no more."""

    rule: str


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("rule")
    parser.add_argument("mark", nargs="?", help="at which opening; left out with --supply and --scope project")
    parser.add_argument("--scope", choices=("opening", "alike", "supply", "project"))
    parser.add_argument("--supply", metavar="NAME", help="at which supply; its own findings, those of no opening")
    parser.add_argument("--about", help="only findings about this, such as a part number")
    parser.add_argument("--person", default="", help="who accepts it (default: who is at work)")
    parser.add_argument("--reason", default="", help="why; must be said")
    parser.add_argument("--until", metavar="DAY", help="last day, such as 2031-12-24; without it no end")
    parser.add_argument("--back", action="store_true", help="take the waiver back")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.findings.waivers import unwaive, waive, waivers_of
    from hwsched.operations.opening.named_openings import openings_of_marks

    with opened(arguments) as project:
        opening = openings_of_marks(project, [arguments.mark])[0] if arguments.mark else None
        if arguments.back:
            found = waivers_of(project, arguments.rule, opening, arguments.supply)
            changes = unwaive(project, [each.id for each in found], who=who(arguments))
        else:
            changes = waive(
                project,
                arguments.rule,
                person=arguments.person or who(arguments),
                reason=arguments.reason,
                who=who(arguments),
                opening_id=opening,
                supply=arguments.supply,
                scope=arguments.scope or ("opening" if arguments.supply is None else "supply"),
                about=arguments.about,
                until=arguments.until,
            )
        touched: Waived = {"rule": arguments.rule, **step_of(project, changes)}
    return tell_step(arguments, "Taken back" if arguments.back else "Waived", changes, touched)


VERB = Verb(_arguments, _run, result=Waived, in_batch=True)

"""`hwsched survey add`: adds an opening, or an existing item of one."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("mark", help="the opening; a new one unless --item is given")
    parser.add_argument("facts", nargs="*", metavar="FACT=VALUE", help="as typed in a survey, such as hand=LH")
    parser.add_argument("--leaves", type=int, choices=(0, 1, 2), default=1, help="leaves of a new opening (default: 1)")
    parser.add_argument("--item", action="store_true", help="add an existing item to the opening")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.opening.named_openings import openings_of_marks
    from hwsched.operations.survey.editing import add_item, add_opening, typed_facts

    pairs = [entry.partition("=")[::2] for entry in arguments.facts]
    with opened(arguments) as project:
        if arguments.item:
            facts = typed_facts(project, "existing_item", dict(pairs))
            opening = openings_of_marks(project, [arguments.mark])[0]
            changes, _ = add_item(project, opening, facts, who=who(arguments))
        else:
            facts = typed_facts(project, "opening", {**dict(pairs), "mark": arguments.mark})
            changes, _ = add_opening(project, facts, who=who(arguments), leaves=arguments.leaves)
        touched = step_of(project, changes)
    return tell_step(arguments, "Added", changes, touched)


VERB = Verb(_arguments, _run, result=Step, in_batch=True)

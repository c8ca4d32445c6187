"""`hwsched opening unchoose`: leaves a choice by hand to the fit again."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_point, add_project

    add_project(parser)
    parser.add_argument("mark", help="the opening")
    parser.add_argument("role", help="the part's role, or: place, for the unit's place")
    add_point(parser)


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.opening.hand_choices import release_part, release_unit
    from hwsched.operations.opening.lock_points import point_named
    from hwsched.operations.opening.named_openings import openings_of_marks

    with opened(arguments) as project:
        opening = openings_of_marks(project, [arguments.mark])[0]
        point = point_named(project, opening, arguments.point)
        if arguments.role == "place":
            changes = release_unit(project, opening, who=who(arguments), point=point)
        else:
            changes = release_part(project, opening, arguments.role, who=who(arguments), point=point)
        touched = step_of(project, changes)
    return tell_step(arguments, "Left to the fit", changes, touched)


VERB = Verb(_arguments, _run, result=Step, in_batch=True)

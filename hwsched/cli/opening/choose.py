"""`hwsched opening choose`: chooses a part by hand; every fit keeps it, every check judges it."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.operations.changes import Changes


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_point, add_project

    add_project(parser)
    parser.add_argument("mark", help="the opening")
    parser.add_argument("role", help="such as cylinder, unit, collar")
    parser.add_argument("part", help="catalogue number")
    parser.add_argument("--quantity", type=float, default=1.0)
    add_point(parser)
    parser.add_argument("--fit", action="store_true", help="fit the opening in the same step")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.opening.fits_within import and_fit
    from hwsched.operations.opening.hand_choices import choose_part
    from hwsched.operations.opening.lock_points import point_named
    from hwsched.operations.opening.named_openings import openings_of_marks

    with opened(arguments) as project:
        opening = openings_of_marks(project, [arguments.mark])[0]
        point = point_named(project, opening, arguments.point)

        def choose() -> Changes:
            return choose_part(
                project,
                opening,
                arguments.role,
                arguments.part,
                who=who(arguments),
                quantity=arguments.quantity,
                point=point,
            )

        changes = and_fit(project, choose, verb="choose-part", who=who(arguments)) if arguments.fit else choose()
        touched = step_of(project, changes)
    return tell_step(arguments, "Chosen", changes, touched)


VERB = Verb(_arguments, _run, result=Step, in_batch=True)

"""`hwsched opening place`: places the control unit by hand; every fit keeps it, every check judges it."""

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
    parser.add_argument("x", help='lower left corner of the plate from the lock edge, such as 1 1/4" or 32 mm')
    parser.add_argument("y", help="the same above the floor")
    parser.add_argument("--leaf", default="single", choices=("single", "active", "inactive"))
    parser.add_argument("--face", default="inside", choices=("inside", "key", "edge"))
    add_point(parser)
    parser.add_argument("--pattern", default="above", choices=("straight", "above", "below", "in-edge"))


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.opening.hand_choices import place_unit
    from hwsched.operations.opening.lock_points import point_named
    from hwsched.operations.opening.named_openings import openings_of_marks, typed_length_mm

    with opened(arguments) as project:
        opening = openings_of_marks(project, [arguments.mark])[0]
        changes = place_unit(
            project,
            opening,
            leaf=arguments.leaf,
            face=arguments.face,
            pattern=arguments.pattern,
            x_mm=typed_length_mm(project, "x", arguments.x),
            y_mm=typed_length_mm(project, "y", arguments.y),
            who=who(arguments),
            point=point_named(project, opening, arguments.point),
        )
        touched = step_of(project, changes)
    return tell_step(arguments, "Placed", changes, touched)


VERB = Verb(_arguments, _run, result=Step, in_batch=True)

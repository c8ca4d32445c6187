"""`hwsched opening draw`: one view of an opening as SVG."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_point, add_project
    from hwsched.operations.opening.drawing_views import POWER_VIEWS, VIEWS

    add_project(parser)
    parser.add_argument("mark", help="the opening; for riser a building, for voltages SUPPLY/CIRCUIT")
    parser.add_argument("view", choices=[*VIEWS, *POWER_VIEWS])
    parser.add_argument("file", help="file to write, ending .svg; - is standard output")
    add_point(parser)
    parser.add_argument("--dark", action="store_true", help="for a dark screen")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, output_file, tell_wrote
    from hwsched.operations.opening.drawing_views import draw

    with opened(arguments) as project, output_file(arguments.file, ".svg") as path:
        draw(project, arguments.mark, arguments.view, path, dark=arguments.dark, point=arguments.point)
    tell_wrote(arguments, {})
    return DONE


VERB = Verb(_arguments, _run)

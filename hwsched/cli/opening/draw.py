"""`hwsched opening draw`: one view of an opening as SVG or PDF."""

from __future__ import annotations

from hwsched.cli.session import Wrote
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.choices import ALL_VIEWS, DRAWING_LAYERS, OPENING_VIEWS, POWER_VIEWS
    from hwsched.cli.session import add_output, add_point, add_project

    add_project(parser)
    parser.add_argument("mark", help="the opening; for riser a building, for voltages SUPPLY/CIRCUIT")
    parser.add_argument("view", choices=[*OPENING_VIEWS, ALL_VIEWS, *POWER_VIEWS])
    add_output(parser, "file to write, ending .svg or .pdf", "file")
    add_point(parser)
    parser.add_argument(
        "--layer", action="append", choices=DRAWING_LAYERS, dest="layers", help="of all: only this; may be repeated"
    )
    parser.add_argument("--dark", action="store_true", help="for a dark screen")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, output_file, output_wanted, tell_wrote, wrong_usage
    from hwsched.drawings.layers import LAYERS
    from hwsched.operations.opening.drawing_views import draw

    wanted = output_wanted(arguments)
    if wanted:
        return wrong_usage(wanted)
    with opened(arguments) as project, output_file(arguments.output, ".svg") as path:
        files = draw(
            project,
            arguments.mark,
            arguments.view,
            path,
            dark=arguments.dark,
            point=arguments.point,
            layers=arguments.layers or tuple(LAYERS),
        )
    tell_wrote(arguments, {} if arguments.output == "-" else {"files": [str(each) for each in files]})
    return DONE


VERB = Verb(_arguments, _run, result=Wrote)

"""`hwsched release detach`: takes an attached file off its thing."""

from __future__ import annotations

from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("attachment", nargs="+", help="as hwsched attachments lists it in front")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, tell_step, who
    from hwsched.operations.release.attachments import attachment_with, detach

    with opened(arguments) as project:
        ids = [attachment_with(project, short).id for short in arguments.attachment]
        changes = detach(project, ids, who=who(arguments))
    return tell_step(arguments, "Taken off", changes)


VERB = Verb(_arguments, _run, in_batch=True)

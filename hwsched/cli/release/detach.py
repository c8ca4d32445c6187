"""`hwsched release detach`: takes an attached file off its thing."""

from __future__ import annotations

from hwsched.cli.session import Step
from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Detached(Step):
    """The attachments that were taken off."""

    ids: list[str]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument(
        "attachment", nargs="+", help="its id, or how that begins, as hwsched release attachments lists it"
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, step_of, tell_step, who
    from hwsched.operations.release.attachments import attachment_with, detach

    with opened(arguments) as project:
        ids = [attachment_with(project, short).id for short in arguments.attachment]
        changes = detach(project, ids, who=who(arguments))
        detached: Detached = {**step_of(project, changes), "ids": ids}
    return tell_step(arguments, "Taken off", changes, detached)


VERB = Verb(_arguments, _run, result=Detached, in_batch=True)

"""`hwsched survey decide`: answers what deliveries left to be decided, without their files."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.survey.deciding import Open
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class Decided(TypedDict):
    """What answers did, and what still stands open."""

    answered_count: int
    new_marks: list[str]
    changed_marks: list[str]
    retired_marks: list[str]
    restored_marks: list[str]
    open: list[Open]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_dry_run, add_project
    from hwsched.cli.survey.deciding import add_decisions

    add_project(parser)
    parser.add_argument("--delivery", type=int, metavar="NUMBER", help="of this delivery only")
    add_decisions(parser)
    add_dry_run(parser)


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json, said, who, wrong_usage
    from hwsched.cli.survey.deciding import decisions_of, open_row, write_decisions
    from hwsched.operations.survey.answering import answer_questions, preview_answers
    from hwsched.operations.survey.deliveries import delivery_numbered

    try:
        decisions = decisions_of(arguments)
    except ValueError as error:
        return wrong_usage(str(error))
    number = arguments.delivery
    with opened(arguments) as project:
        if number is not None:
            delivery_numbered(project, number)
        if arguments.dry_run:
            done = preview_answers(project, decisions, delivery=number)
        else:
            done = answer_questions(project, decisions, who=who(arguments), delivery=number)
    preview = done.preview
    result: Decided = {
        "answered_count": done.count,
        "new_marks": [each.mark for each in preview.new],
        "changed_marks": [each.mark for each in preview.changed],
        "retired_marks": [mark for mark, _ in preview.retired],
        "restored_marks": [mark for mark, _ in preview.restored],
        "open": [open_row(each.undecided, each.delivery) for each in done.left],
    }
    print_json(result)
    write_decisions(arguments, (each.undecided for each in done.left), "what deliveries left")
    if not arguments.json:
        for line in preview.describe()[1:]:
            print(line)
        print(f"{done.count} answered, {len(done.left)} left.")
    if arguments.dry_run:
        said(arguments, "Dry run; nothing was written.")
    elif done.changes.number is None:
        said(arguments, "Nothing to change.")
    else:
        said(arguments, f"Change set {done.changes.number} written.")
    return DONE


VERB = Verb(_arguments, _run, result=Decided, in_batch=True)

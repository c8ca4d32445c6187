"""`hwsched survey edit`: sets one surveyed fact of an opening or of several, or one that it takes from its level."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.verb import Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.model.errors import Clash


class Conflict(TypedDict):
    """A fact that somebody else changed; values as the project shows them."""

    fact: str
    seen: str
    present: str
    wanted: str
    who: str
    when: str
    change_set: int


class Edited(TypedDict):
    """What was touched, or what stood in the way."""

    marks: list[str]
    conflicts: list[Conflict]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("mark", help="the opening")
    parser.add_argument(
        "where",
        help="opening, leaf, leaf:inactive, lock, item:2 for the second existing item; level or building for what all "
        "openings there take from it, such as occupancy_group",
    )
    parser.add_argument("fact", help="such as hand, thickness_mm, or a field of the project's own")
    parser.add_argument("value", help="as typed in a survey; empty text means unknown")
    parser.add_argument(
        "--also",
        action="append",
        default=[],
        metavar="MARK",
        help="set it at this opening too, in the same step; repeatable",
    )
    parser.add_argument(
        "--was",
        metavar="OLD",
        help="write only where the fact holds this (an equal length or word; empty text means unknown), or the value "
        "already; else exit status 3 with what it holds, who set it and when",
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json, step_of, tell_step, who, wrong_usage
    from hwsched.model.errors import ConflictError
    from hwsched.operations.opening.named_openings import row_of
    from hwsched.operations.survey.fact_edit import FactEdit
    from hwsched.operations.survey.many_facts import edit_many
    from hwsched.operations.survey.typed_values import type_in

    if arguments.also and arguments.was is not None:
        return wrong_usage("--was is asked of one opening; leave --also out")
    with opened(arguments) as project:
        marks = dict.fromkeys((arguments.mark, *arguments.also))
        rows = dict.fromkeys(row_of(project, mark, arguments.where) for mark in marks)
        try:
            if len(rows) == 1:
                ((entity, row),) = rows
                changes = type_in(
                    project, entity, row, arguments.fact, arguments.value, who=who(arguments), was=arguments.was
                )
            else:
                edits = [FactEdit(entity, row, arguments.fact, arguments.value) for entity, row in rows]
                changes = edit_many(project, edits, who=who(arguments))
        except ConflictError as conflict:
            print_json({"marks": [], "conflicts": [_conflict(clash) for clash in conflict.clashes]})
            raise
        edited: Edited = {**step_of(project, changes), "conflicts": []}
    return tell_step(arguments, "Edited", changes, edited)


def _conflict(clash: Clash) -> Conflict:
    return {
        "fact": clash.fact,
        "seen": clash.seen,
        "present": clash.present,
        "wanted": clash.wanted,
        "who": clash.who,
        "when": clash.when,
        "change_set": clash.step,
    }


VERB = Verb(_arguments, _run, result=Edited, in_batch=True)

"""`hwsched parts fewest`: as few different parts as serve, traded against cost."""

from __future__ import annotations

from typing import TypedDict

from hwsched.cli.counting import counted
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class PartChosen(TypedDict):
    """A part in its role."""

    role: str
    part: str
    quantity: float


class Chosen(TypedDict):
    """What is chosen at a lock point where it differs from the opening's own choice."""

    mark: str
    point: str
    parts: list[PartChosen]


class Fewest(TypedDict):
    """As few parts as serve; `shown` is the key by which exactly this is accepted."""

    opening_count: int
    before: list[str]
    after: list[str]
    cost_before: str
    cost_after: str
    currency: str | None
    proven: bool
    gap: float
    choices: list[Chosen]
    left_out: list[str]
    accepted: bool
    shown: str


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_project, add_shown

    add_project(parser)
    add_shown(parser, "the same parts at the same openings")
    add_scope(parser)
    parser.add_argument("--price", metavar="AMOUNT", help="what one more different part is worth")
    parser.add_argument("--most", type=int, metavar="N", help="at most so many different parts, at least cost")
    parser.add_argument("--seconds", type=float, default=60.0, help="give the best found by then (default: 60)")
    parser.add_argument("--accept", action="store_true", help="choose the parts, and fit the openings again")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json, said, told_steps, who
    from hwsched.operations.opening.named_openings import marks_by_id
    from hwsched.operations.parts.fewest_part_numbers import accept_fewest, fewest_part_numbers
    from hwsched.operations.shown import check_shown, shown_key
    from hwsched.quantities.money import Money

    with opened(arguments) as project:
        ids = openings_asked(project, arguments)
        with told_steps(arguments.json or arguments.quiet) as progress:
            found = fewest_part_numbers(
                project,
                ids,
                price_per_kind=arguments.price,
                most=arguments.most,
                time_limit_s=arguments.seconds,
                progress=progress,
            )
        key, change_set = shown_key(found), None
        if arguments.accept and found.choices:
            check_shown(arguments.shown, key)
            change_set = accept_fewest(project, found, who=who(arguments)).number
        marks = marks_by_id(project, found.changing)
    fewest: Fewest = {
        "opening_count": found.openings,
        "before": list(found.before_kinds),
        "after": list(found.after_kinds),
        "cost_before": f"{found.before_cost:f}",
        "cost_after": f"{found.after_cost:f}",
        "currency": found.currency or None,
        "proven": found.gap == 0,
        "gap": found.gap,
        "choices": [
            {
                "mark": marks[found.opening_of[each]],
                "point": found.marks[each],
                "parts": [{"role": line.role, "part": line.part, "quantity": line.quantity} for line in lines],
            }
            for each, lines in found.choices.items()
        ],
        "left_out": list(found.left_out),
        "accepted": change_set is not None,
        "shown": key,
    }
    print_json(fewest)
    if arguments.json:
        return DONE
    proven = "proven best" if found.gap == 0 else f"within {found.gap:.2%} of the best"
    print(f"{len(found.before_kinds)} different parts -> {len(found.after_kinds)}, {proven}")
    before, after = (Money(cost, found.currency).shown() for cost in (found.before_cost, found.after_cost))
    print(f"list price {before} -> {after}; {counted(len(found.changing), 'opening changes', 'openings change')}")
    for opening, lines in found.choices.items():
        print(f"  {found.marks[opening]}: {', '.join(f'{line.role} {line.part}' for line in lines)}")
    if change_set is None:
        said(arguments, f"Nothing is changed yet; --accept makes it so. Shown as {key}.")
    return DONE


VERB = Verb(_arguments, _run, result=Fewest)

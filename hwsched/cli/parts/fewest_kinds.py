"""`hwsched fewest-kinds`: as few different parts as serve, traded against cost."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


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
    from hwsched.cli.session import opened, print_json, told_steps, who
    from hwsched.operations.parts.fewest_part_numbers import accept_fewest, fewest_part_numbers
    from hwsched.operations.shown import check_shown, shown_key
    from hwsched.quantities.money import Money

    with opened(arguments) as project:
        ids = openings_asked(project, arguments)
        with told_steps(arguments.json) as progress:
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
    if arguments.json:
        print_json(
            {
                "openings": found.openings,
                "before": list(found.before_kinds),
                "after": list(found.after_kinds),
                "cost_before": f"{found.before_cost:f}",
                "cost_after": f"{found.after_cost:f}",
                "currency": found.currency,
                "optimal": True if found.gap == 0 else found.gap,
                "changed": [found.marks[each] for each in found.choices],
                "left_out": list(found.left_out),
                "change_set": change_set,
                "shown": key,
            }
        )
        return DONE
    proven = "proven best" if found.gap == 0 else f"within {found.gap:.2%} of the best"
    print(f"{len(found.before_kinds)} different parts -> {len(found.after_kinds)}, {proven}")
    before, after = (Money(cost, found.currency).shown() for cost in (found.before_cost, found.after_cost))
    print(f"list price {before} -> {after}; {len(found.changing)} openings change")
    for opening, lines in found.choices.items():
        print(f"  {found.marks[opening]}: {', '.join(f'{line.role} {line.part}' for line in lines)}")
    if change_set is None:
        print(f"Nothing is changed yet; --accept makes it so. Shown as {key}.")
    return DONE


FEWEST_KINDS = Verb("fewest-kinds", "Choose parts so that few different ones are needed.", _arguments, _run)

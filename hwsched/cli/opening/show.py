"""`hwsched opening show`: openings with all that is known of them, for machines and for a look at the terminal."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.operations.opening.showing import OpeningRecord
    from hwsched.values import Catalogue


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.scope import add_scope
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("named", nargs="*", metavar="mark", help="openings to show, as --mark has them (default: all)")
    add_scope(parser)


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.scope import openings_asked
    from hwsched.cli.session import opened, print_json
    from hwsched.operations.opening.showing import show_openings
    from hwsched.operations.parts.part_edits import part_form

    with opened(arguments) as project:
        shown = show_openings(project, openings_asked(project, arguments, arguments.named))
        catalogue, style = part_form(project).catalogue, project.length_style
    if arguments.json:
        print_json(shown)
        return DONE
    for opening in shown.openings:
        _tell(opening, catalogue, style)
    return DONE


def _in_force(opening: OpeningRecord) -> list[str]:
    """Return what egress is judged by, as it holds at the opening, whoever said it."""
    from hwsched.attributes import show_value
    from hwsched.survey import INHERITED, OPENING

    facts = [OPENING.attribute(name) for name in ("egress", "egress_toward", *INHERITED)]
    known = [(each.label, show_value(each, getattr(opening.facts, each.name), unknown="")) for each in facts]
    return [f"{label}: {value}" for label, value in known if value]


def _tell(opening: OpeningRecord, catalogue: Catalogue, style: str) -> None:
    from hwsched.values.amounts import times_words

    place = ", ".join(each for each in (opening.facts.building, opening.facts.level) if each)
    print(f"{opening.mark}: {place}" if place else opening.mark)
    for line in _in_force(opening):
        print(f"  {line}")
    for point in opening.lock_points:
        print(f"  {point.name or 'lock point'}: {point.status}")
        for part in point.parts:
            much = times_words(catalogue.get(part.part), part.quantity, style)
            print(f"    {part.role:<15} {part.part:<12} {much}")
        for each in (*point.holes, *point.screws):
            print(f"    hole {each.hole.order}: {each.hole.name}, in {each.hole.face}")
        for need in point.needs:
            print(f"    unknown: needs {need.label} ({need.blocks})")
    for finding in opening.findings:
        print(f"  {finding['severity']}: {finding['rule']}: {finding['message']}")


VERB = Verb(_arguments, _run, result="hwsched.operations.opening.showing:Shown")

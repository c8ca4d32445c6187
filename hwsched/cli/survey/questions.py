"""`hwsched survey questions`: what deliveries left for a person to decide."""

from __future__ import annotations

from hwsched.cli.survey.deciding import Open
from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("--delivery", type=int, metavar="NUMBER", help="of this delivery only")
    parser.add_argument(
        "--write-decisions", metavar="FILE", help="write them as a text to be filled in, for survey decide --decisions"
    )


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json
    from hwsched.cli.survey.deciding import open_row, write_decisions
    from hwsched.operations.survey.deliveries import delivery_numbered, open_questions

    with opened(arguments) as project:
        if arguments.delivery is not None:
            delivery_numbered(project, arguments.delivery)
        found = open_questions(project, arguments.delivery)
    print_json([open_row(each.undecided, each.delivery) for each in found])
    heading = f"delivery {arguments.delivery}" if arguments.delivery is not None else "what deliveries left"
    write_decisions(arguments, (each.undecided for each in found), heading)
    if not arguments.json:
        counts: dict[int, int] = {}
        for each in found:
            counts[each.delivery] = counts.get(each.delivery, 0) + 1
            print(f"delivery {each.delivery}: {each.undecided.describe()}")
        for number, count in counts.items():
            print(f"{count} question{'s' if count > 1 else ''} from delivery {number}.")
        print("Answer with: hwsched survey decide." if found else "Nothing is left to be decided.")
    return DONE


VERB = Verb(_arguments, _run, result=list[Open])

"""`hwsched release verify`: whether the sheet that carries a code is the one that counts."""

from __future__ import annotations

from typing import Literal, TypedDict

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


class SheetRecord(TypedDict):
    """What stands behind a code; mark and current empty where there is none."""

    code: str
    state: Literal["current", "withdrawn", "superseded", "unknown"]
    mark: str
    said: str
    current: str
    changed: list[str]


def _arguments(parser: argparse.ArgumentParser) -> None:
    from hwsched.cli.session import add_project

    add_project(parser)
    parser.add_argument("code", help="as it stands in the head of the sheet, such as K7M2QF4P")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import opened, print_json
    from hwsched.operations.release.sheet_codes import verify_sheet

    with opened(arguments) as project:
        found = verify_sheet(project, arguments.code)
    told: list[SheetRecord] = [
        {
            "code": each.code,
            "state": each.state,
            "mark": each.mark,
            "said": each.said,
            "current": each.current,
            "changed": list(each.changed),
        }
        for each in found
    ]
    print_json(told)
    if arguments.json:
        return DONE
    for each in found:
        print(f"{each.code}: {each.state}{f', opening {each.mark}' if each.mark else ''}. {each.said}")
        for line in each.changed:
            print(f"  {line}")
    return DONE


VERB = Verb(_arguments, _run, result=list[SheetRecord])

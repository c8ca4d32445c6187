"""What the verbs that change one part share: its facts as they are typed, what they answer, trying it first."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    import argparse

    from hwsched.cli.parts.shapes import EditedPart
    from hwsched.operations.parts.part_form import PartEdit


def add_facts(parser: argparse.ArgumentParser) -> None:
    """Add the facts of a part."""
    parser.add_argument(
        "facts",
        nargs="*",
        metavar="FACT=VALUE",
        help="such as list_price=84.50, length_mm='1 1/4', superseded_by=NUMBER, kit='SCREW-1*4; PLATE-2'; nothing "
        "after = means unknown; parts list PROJECT kinds lists the facts of each kind",
    )


def typed(arguments: argparse.Namespace) -> dict[str, str]:
    """Return the facts as they were typed; raises ValueRefusedError for what is none."""
    from hwsched.model.errors import ValueRefusedError

    found: dict[str, str] = {}
    for fact in arguments.facts:
        name, equals, value = fact.partition("=")
        if not equals:
            raise ValueRefusedError("fact", f"'{fact}' cannot be read; accepted: FACT=VALUE")
        found[name] = value
    return found


def edit(arguments: argparse.Namespace, asked: PartEdit, done: str) -> int:
    """Change a part, or show which openings that would change."""
    from hwsched.cli.opening.what_if import differences_json, print_differences
    from hwsched.cli.session import opened, print_json, progress_bar, step_of, tell_step, who
    from hwsched.operations.opening.what_if import Question, what_if
    from hwsched.operations.parts.part_edits import edit_part

    with opened(arguments) as project:
        if arguments.dry_run:
            with progress_bar("What if", arguments.json) as progress:
                answer = what_if(project, Question(part=asked), progress=progress)
            would: EditedPart = {
                "number": asked.number,
                "marks": [],
                "differences": differences_json(answer.differences),
            }
            print_json(would)
            if not arguments.json:
                print_differences(answer.differences)
                print(f"{len(answer.differences)} of {len(answer.asked)} openings would be different.")
            return 0
        changes = edit_part(project, asked, who=who(arguments))
        told: EditedPart = {**step_of(project, changes), "number": asked.number, "differences": []}
    return tell_step(arguments, done, changes, told)

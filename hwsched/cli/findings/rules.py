"""`hwsched findings rules`: the rulebook, or one rule."""

from __future__ import annotations

from hwsched.cli.verb import DONE, WRONG_USAGE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse


def _arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("id", nargs="?", help="one rule; all without it")
    parser.add_argument("--json", action="store_true", help="print JSON for machines")


def _run(arguments: argparse.Namespace) -> int:
    import sys

    from hwsched.cli.session import print_json
    from hwsched.rules import RULEBOOK
    from hwsched.rules.page import page_of
    from hwsched.values import DISCIPLINES

    chosen = [rule for rule in RULEBOOK if arguments.id in (None, rule.id)]
    if not chosen:
        print(f"hwsched rules: there is no rule '{arguments.id}'", file=sys.stderr)
        return WRONG_USAGE
    if arguments.json:
        print_json(
            [
                {
                    "id": rule.id,
                    "title": rule.title,
                    "discipline": rule.discipline,
                    "severity": rule.severity,
                    "basis": rule.basis,
                    "limits": [
                        {"name": limit.name, "value": limit.value, "text": limit.text, "source": limit.source}
                        for limit in rule.limits
                    ],
                    "cure": rule.cure,
                }
                for rule in chosen
            ]
        )
    elif arguments.id is None:
        for rule in chosen:
            print(f"{rule.id:<28} {rule.severity:<8} {DISCIPLINES[rule.discipline]}: {rule.title}")
    else:
        print(page_of(chosen[0]))
    return DONE


VERB = Verb(_arguments, _run)

"""`hwsched findings rules`: the rulebook, or one rule."""

from __future__ import annotations

from hwsched.cli.verb import DONE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse

    from hwsched.cli.findings.shapes import RuleRecord


def _arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("id", nargs="?", help="one rule; all without it")
    parser.add_argument("--json", action="store_true", help="print JSON for machines")


def _run(arguments: argparse.Namespace) -> int:
    from hwsched.cli.session import print_json, wrong_usage
    from hwsched.rules import RULEBOOK
    from hwsched.rules.page import page_of
    from hwsched.telling.nearest import nearest_words
    from hwsched.values import DISCIPLINES

    chosen = [rule for rule in RULEBOOK if arguments.id in (None, rule.id)]
    if not chosen:
        near = nearest_words(arguments.id, (rule.id for rule in RULEBOOK))
        return wrong_usage(f"there is no rule '{arguments.id}'{near}")
    records: list[RuleRecord] = [
        {
            "id": rule.id,
            "title": rule.title,
            "discipline": rule.discipline,
            "severity": rule.severity,
            "basis": rule.basis,
            "limits": [
                {
                    "name": limit.name,
                    "value": limit.value,
                    "unit": limit.unit or None,
                    "low": limit.low,
                    "high": limit.high,
                    "text": limit.text,
                    "source": limit.source,
                }
                for limit in rule.limits
            ],
            "cure": rule.cure,
        }
        for rule in chosen
    ]
    print_json(records)
    if arguments.json:
        return DONE
    if arguments.id is None:
        for rule in chosen:
            print(f"{rule.id:<28} {rule.severity:<8} {DISCIPLINES[rule.discipline]}: {rule.title}")
    else:
        print(page_of(chosen[0]))
    return DONE


VERB = Verb(_arguments, _run, result="hwsched.cli.findings.shapes:Rules")

"""`hwsched project calc`: one JSON object a line in, one a line out, in the same order."""

from __future__ import annotations

import sys

from hwsched.cli.verb import DONE, REJECTED, WRONG_USAGE, Verb

TYPE_CHECKING = False
if TYPE_CHECKING:
    import argparse
    from collections.abc import Iterable, Iterator, Mapping
    from typing import Any

    from hwsched.calc.calculator import Calculator, Field

_USAGE = """usage: hwsched project calc NAME < input.jsonl    (one JSON object a line in, one a line out)
       hwsched project calc --help NAME
"""


def _arguments(parser: argparse.ArgumentParser) -> None:
    parser.add_argument("name", nargs="?", help="which calculator; without it, all are listed")
    parser.add_argument("-h", "--help", action="store_true", help="describe the calculator's fields")
    parser.add_argument("--json", action="store_true", help="describe it, or all of them, for machines")


def _run(arguments: argparse.Namespace) -> int:
    if arguments.help and arguments.name is None and not arguments.json:
        from hwsched.calc import LINES

        print(_USAGE)
        print("\n".join(f"  {line.name}" for line in LINES))
        return DONE
    import json

    from hwsched.calc.calculators import CALCULATORS

    calculator = next((c for c in CALCULATORS if c.name == arguments.name), None)
    if arguments.name and calculator is None:
        names = ", ".join(c.name for c in CALCULATORS)
        from hwsched.cli.session import wrong_usage

        return wrong_usage(f"there is no calculator '{arguments.name}'; there are: {names}")
    if arguments.json and (calculator is None or arguments.help):
        # Like its answers: an object a line.
        for each in CALCULATORS if calculator is None else (calculator,):
            sys.stdout.write(json.dumps(_described(each)) + "\n")
        return DONE
    if calculator is None:
        wide = max(len(c.name) for c in CALCULATORS)
        listed = "\n".join(f"  {each.name:<{wide}}  {each.title}" for each in CALCULATORS)
        print(f"{_USAGE}\n{listed}", file=sys.stderr)
        return WRONG_USAGE
    if arguments.help:
        print("\n".join(_description(calculator)))
        return DONE
    from hwsched.cli.streams import reader_gone

    failed = False
    # As bytes: JSON is UTF-8 whatever the console is (RFC 8259, 8.1).
    for answer in answers(calculator, sys.stdin.buffer if sys.stdin is not None else ()):
        # A wrong line does not stop the others: answers keep the order of the questions.
        failed = failed or "error" in answer
        sys.stdout.write(json.dumps(answer, allow_nan=False) + "\n")
        if reader_gone():
            break
    return REJECTED if failed else DONE


def answers(calculator: Calculator, lines: Iterable[str | bytes]) -> Iterator[Mapping[str, Any]]:
    """Answer each line in its order; a wrong one gives an object with `error` in its place."""
    import json

    from hwsched.calc.calculator import InputError

    for line in lines:
        if not line.strip():
            continue
        try:
            yield calculator.run(json.loads(line))
        except json.JSONDecodeError as error:
            yield {"error": {"field": "input", "message": f"is not a JSON object: {error}"}}
        except UnicodeDecodeError:
            yield {"error": {"field": "input", "message": "is not UTF-8 text"}}
        except RecursionError:
            yield {"error": {"field": "input", "message": "is nested too deeply"}}
        except InputError as error:
            yield {"error": {"field": error.field, "message": error.message}}


def _description(calculator: Calculator) -> list[str]:
    import json

    lines = [f"hwsched project calc {calculator.name}: {calculator.title}", f"basis: {calculator.basis}", "", "in:"]
    for title, fields in (("", calculator.inputs), ("out:", calculator.outputs)):
        if title:
            lines += ["", title]
        lines += _lines(fields, "  ")
    return [*lines, "", "example:", "  " + json.dumps(calculator.example)]


def _described(calculator: Calculator) -> dict[str, Any]:
    return {
        "name": calculator.name,
        "title": calculator.title,
        "basis": calculator.basis,
        "inputs": [_field(each) for each in calculator.inputs],
        "outputs": [_field(each) for each in calculator.outputs],
        "example": dict(calculator.example),
    }


def _field(field: Field) -> dict[str, Any]:
    return {
        "name": field.name,
        "kind": field.kind,
        "terms": field.terms,
        "about": field.about,
        "choices": list(field.choices),
        "fields": [_field(each) for each in field.fields],
    }


def _lines(fields: Iterable[Field], indent: str) -> Iterator[str]:
    for field in fields:
        yield f"{indent}{field.name} ({field.terms}): {field.about}"
        yield from _lines(field.told, f"{indent}  ")


VERB = Verb(_arguments, _run, own_help=True, lines=True, quick=True)

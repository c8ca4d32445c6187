"""Writes the handbook's page on calculators from their declarations: ``python -m tests.house.guide``."""

from collections.abc import Iterable, Iterator
from pathlib import Path

from hwsched.calc.calculator import Field
from hwsched.calc.calculators import CALCULATORS

GUIDE = Path(__file__).parents[2] / "resources" / "handbook" / "calculators.md"
BEGIN, END = "<!-- calculators: written by tests/house/guide.py -->\n", "<!-- end of calculators -->\n"


def section() -> str:
    lines = []
    for calculator in CALCULATORS:
        lines += [f"## `{calculator.name}`: {calculator.title}", "", f"Basis: {calculator.basis}.", ""]
        for title, fields in (("In", calculator.inputs), ("Out", calculator.outputs)):
            lines.append(f"{title}:")
            lines.append("")
            lines += described(fields, "")
            lines.append("")
    return "\n".join(lines) + "\n"


def described(fields: Iterable[Field], indent: str) -> Iterator[str]:
    for field in fields:
        yield f"{indent}- `{field.name}` ({field.terms}): {field.about}"
        yield from described(field.told, f"{indent}  ")


def written(text: str) -> str:
    before, rest = text.split(BEGIN)
    return before + BEGIN + "\n" + section() + END + rest.split(END)[1]


if __name__ == "__main__":
    GUIDE.write_text(written(GUIDE.read_text(encoding="utf-8")), encoding="utf-8")

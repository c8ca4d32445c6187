"""Writes the handbook's page of sizes with their sources, from tables and rules: ``python -m tests.house.sources``."""

import csv
from collections.abc import Iterator
from pathlib import Path

from hwsched.rules import RULEBOOK
from hwsched.values import DISCIPLINES

ROOT = Path(__file__).parents[2]
GUIDE = ROOT / "resources" / "handbook" / "sources.md"
_HEAD = """# Sizes and limits, and where they come from

What the program takes for sizes of bodies, drills, preparations, screws and holes, for practice of the trade, and for
the limits of its rules. Beside each stands its source: a publication with its section; *common practice* for a fact of
the trade; *from memory, unverified* or *our own* for what is a default to be changed, and is said to be unverified
where it is printed. The label, the local code, the authority that has jurisdiction and licensed practice go before all.

This page is written by `python -m tests.house.sources`; a test holds it against the tables and the rulebook.
"""


def _cell(text: str) -> str:
    return " ".join(text.split()).replace("|", "\\|")


def _tables() -> Iterator[str]:
    yield "## Practice of the trade"
    for path in sorted((ROOT / "resources" / "practice").glob("*.csv")):
        with path.open(encoding="utf-8", newline="") as file:
            header, *rows = csv.reader(file)
        yield from ("", f"### {path.stem.replace('_', ' ').capitalize()}", "")
        yield from (f"| {' | '.join(name.replace('_', ' ') for name in header)} |", "|---" * len(header) + "|")
        yield from (f"| {' | '.join(map(_cell, row))} |" for row in rows)
    yield ""


def _rules() -> Iterator[str]:
    yield from ("## Rules: what they stand on", "")
    for discipline, title in DISCIPLINES.items():
        rules = [rule for rule in RULEBOOK if rule.discipline == discipline]
        if not rules:
            continue
        yield from (f"### {title}", "", "| rule | says | stands on |", "|---|---|---|")
        yield from (f"| `{rule.id}` | {_cell(rule.title)} | {_cell(rule.basis)} |" for rule in rules)
        limits = [(rule, limit) for rule in rules for limit in rule.limits]
        if limits:
            yield from ("", "| limit | is | default | source |", "|---|---|---|---|")
        for rule, limit in limits:
            name, value = f"`{rule.id}.{limit.name}`", f"{limit.value:g} {limit.unit}".strip()
            yield f"| {name} | {_cell(limit.text)} | {value} | {_cell(limit.source)} |"
        yield ""


def written() -> str:
    """Return the whole page."""
    return "\n".join((_HEAD, *_tables(), *_rules())).rstrip() + "\n"


if __name__ == "__main__":
    GUIDE.write_text(written(), encoding="utf-8")

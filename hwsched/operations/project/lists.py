"""Rows of the project's lists that are worked out; see `hwsched.operations.lists`."""

from collections.abc import Collection, Iterator
from typing import Any

from hwsched.model.project import Project
from hwsched.operations.project.reading_settings import settings_of
from hwsched.quantities.money import decimal_text
from hwsched.rules import RULEBOOK


def settings(project: Project, _openings: Collection[str] | None) -> Iterator[dict[str, Any]]:
    """Yield every setting with its value; a limit also with what it is when nobody changes it."""
    held = settings_of(project)
    for name, value in (
        ("length-style", held.length_style),
        ("bare-unit", project.bare_unit),
        ("prefer", held.prefer),
        ("currency", held.currency or None),
    ):
        yield {"setting": name, "value": value, "usual": None, "unit": None}
    for currency, rate in held.rates.items():
        yield {"setting": f"rate {currency}", "value": decimal_text(rate), "usual": None, "unit": held.currency or None}
    for rule in RULEBOOK:
        present = held.limits_for(rule.id, {limit.name: limit.value for limit in rule.limits})
        for limit in rule.limits:
            yield {
                "setting": f"limit {rule.id}.{limit.name}",
                "value": present[limit.name],
                "usual": limit.value,
                "unit": getattr(limit, "unit", None) or None,
            }
    for rule_id in sorted(held.rules_off):
        yield {"setting": f"rule-off {rule_id}", "value": True, "usual": False, "unit": None}

"""Rows of the table that tests rules of supplies and circuits: what a rule says of a supply with its circuits."""

from dataclasses import dataclass, field

from hwsched.rules import CIRCUIT_RULES, judge
from hwsched.values import Settings
from hwsched.values.power import SupplyResult
from tests.rules.rows import compare_first

BY_ID = {rule.id: rule for rule in CIRCUIT_RULES}


@dataclass(frozen=True)
class CircuitRow:
    """One statement expected of a rule."""

    rule: str
    kind: str
    """passes: it says nothing; speaks: it says something; boundary: at the limit, or where a fact is missing."""
    result: SupplyResult
    inputs: dict
    says: int = 0
    values: dict = field(default_factory=dict)
    needs: tuple = ()
    severity: str = ""
    about: str = ""
    openings: tuple | None = None
    """Openings that the first verdict concerns."""
    words: tuple = ()

    def __str__(self):
        return f"{self.rule}: {self.kind}"


def run_row(row):
    """Judge a row and compare."""
    rule = BY_ID[row.rule]
    verdicts = judge(rule, row.result, row.inputs, settings=Settings())
    assert len(verdicts) == row.says, [v.message for v in verdicts]
    for verdict in verdicts:
        assert verdict.message[0].isupper() or verdict.message[0].isdigit()
        assert verdict.message.endswith(".")
        assert verdict.cure or rule.cure
        assert set(verdict.opening_ids) <= set(row.result.openings)
        assert verdict.circuit_id in {"", *(c.circuit.id for c in row.result.circuits)}
    if not verdicts:
        return
    first = verdicts[0]
    compare_first(row, rule, first, "Unknown:")
    if row.openings is not None:
        assert first.opening_ids == row.openings
    for word in row.words:
        assert word in first.message

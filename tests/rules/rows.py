"""Rows of the tables that test rules: what a rule says of a case and its fit."""

from dataclasses import dataclass, field

from hwsched.rules import judge, rule_named, severity_of
from hwsched.values import Fit, OpeningInput


@dataclass(frozen=True)
class Row:
    """One statement expected of a rule."""

    rule: str
    kind: str
    """passes: it says nothing; speaks: it says something; boundary: at the limit, or where a fact is missing."""
    given: OpeningInput
    fit: Fit
    says: int = 0
    """How many verdicts."""
    values: dict = field(default_factory=dict)
    """Numbers expected in the first verdict."""
    needs: tuple = ()
    severity: str = ""
    about: str = ""
    words: tuple[str, ...] = ()
    """What the first verdict says among others."""

    def __str__(self):
        return f"{self.rule}: {self.kind}"


def passes(rule, given, fit):
    return Row(rule, "passes", given, fit)


def speaks(rule, given, fit, says=1, severity="", about="", words=(), **values):
    return Row(rule, "speaks", given, fit, says, values, severity=severity, about=about, words=words)


def boundary(rule, given, fit, says=0, severity="", words=(), **values):
    return Row(rule, "boundary", given, fit, says, values, severity=severity, words=words)


def unknown(rule, given, fit, *needs):
    """Where a fact is missing nothing is passed in silence."""
    return Row(rule, "boundary", given, fit, 1, needs=needs)


def run(row):
    """Judge a row and compare."""
    rule = rule_named(row.rule)
    said = judge(rule, row.given, row.fit, settings=row.given.settings)
    assert len(said) == row.says, [v.message for v in said]
    if not said:
        return
    compare_first(row, rule, said[0], "Unknown: needs")
    for word in row.words:
        assert word in said[0].message


def compare_first(row, rule, first, begins):
    """Compare the first verdict with what a row expects; ``begins``: how one about a missing fact begins."""
    assert first.message[0].isupper() or first.message[0].isdigit()
    assert first.message.endswith(".")
    assert first.cure or rule.cure
    for name, value in row.values.items():
        assert abs(first.values[name] - value) < 0.005, (name, first.values)
    if row.needs:
        assert first.needs == row.needs
        assert first.message.startswith(begins)
        assert severity_of(rule, first) != "error"
    elif row.kind == "speaks":
        assert not first.needs
    if row.severity:
        assert severity_of(rule, first) == row.severity
    if row.about:
        assert first.about == row.about

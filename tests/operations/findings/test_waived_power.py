"""A finding of a circuit is waived where it is at every opening that it concerns; one of a supply at the supply."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from hwsched.operations.findings.of_circuit import waived_power
from hwsched.values import Finding
from hwsched.values.power import PowerFinding, PowerResult

LOW = Finding("circuit-voltage", "power", "warning", "Low.", "common practice", "Lay thicker wire.", about="circuit C")
BY_ANN, BY_BOB = (replace(LOW, waived=True, waived_by=name) for name in ("Ann", "Bob"))


def after(*at, concerns=("a", "b")):
    """Return the finding of a circuit once what openings say is laid over, by their identifiers."""
    checked = [
        SimpleNamespace(given=SimpleNamespace(opening=SimpleNamespace(id=name)), findings=tuple(findings))
        for name, findings in at
    ]
    work = PowerResult((), (PowerFinding(LOW, "s", "c", concerns),))
    (told,) = waived_power(work, checked, None).findings
    return told.finding


@pytest.mark.parametrize(
    ("at", "found"),
    [
        # Each for itself, and told by whom at the first.
        ([("a", [BY_ANN]), ("b", [BY_BOB])], BY_ANN),
        # At one of both alone, whether the other says it openly or is not looked at.
        ([("a", [BY_ANN]), ("b", [LOW])], LOW),
        ([("a", [LOW]), ("b", [BY_ANN])], LOW),
        ([("a", [BY_ANN])], LOW),
        ([("b", [BY_ANN])], LOW),
        ([("a", [LOW]), ("b", [LOW])], LOW),
        ([], LOW),
        # Of another place, another rule, with other numbers: somebody has accepted something else.
        ([("a", [BY_ANN]), ("b", [replace(BY_ANN, about="circuit D")])], LOW),
        ([("a", [BY_ANN]), ("b", [replace(BY_ANN, rule="circuit-known")])], LOW),
        ([("a", [BY_ANN]), ("b", [replace(BY_ANN, message="Lower.")])], LOW),
    ],
)
def test_what_concerns_several_is_waived_where_it_is_at_all(at, found):
    assert after(*at) == found


def test_of_one_alone_its_own_waiver_counts():
    assert after(("b", [BY_BOB]), concerns=("b",)) == BY_BOB
    assert after(("a", [BY_ANN]), concerns=("b",)) == LOW

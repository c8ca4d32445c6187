"""What a project pays: terms as typed, worked examples by hand, the same whole by building, set and opening."""

from dataclasses import replace
from decimal import Decimal

import pytest

from hwsched.calc.parts.cost import combined
from hwsched.calc.project.labour import series_share
from hwsched.documents.parts.cost_estimate import COST_ESTIMATE, NO_SET, totals
from hwsched.fitting.tasks import tasks_of
from hwsched.model.errors import ValueRefusedError
from hwsched.model.project import open_project
from hwsched.model.queries import read_terms
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part
from hwsched.operations.opening.what_if import Question, what_if
from hwsched.operations.parts.cost_terms import set_terms
from hwsched.operations.parts.hardware_sets import accept_sets, propose_sets
from hwsched.operations.power.connecting import connect_openings
from hwsched.operations.power.power_import import import_power
from hwsched.operations.project.history import undo
from hwsched.operations.release.project_view import project_view
from hwsched.paths import SAMPLE
from hwsched.quantities.money import rounded
from hwsched.values.terms import CostTerms
from hwsched.wiring.costing import price_supplies
from tests.model.states import state
from tests.once import copied
from tests.operations.exact import id_of, small
from tests.operations.powered import circuit, closet, more_parts
from tests.rules.scenario import catalogue

WHO = "ann"


@pytest.fixture
def yard(tmp_path):
    """1 to 3 alike but for the difficulty of 2; 4 in the annexe, to a stair."""

    def make(path):
        with small(path, marks="1234", m2={"difficulty": 1.25}, m4={"stair": True, "building": "Annexe"}) as made:
            yard_parts(made)
            fit_openings(made, who=WHO)

    copied("cost terms", tmp_path / "y.hwsched", make)
    with open_project(tmp_path / "y.hwsched") as made:
        yield made


def yard_parts(project):
    usual = catalogue()
    more_parts(
        project,
        replace(usual.get("CYL"), supplier="North", currency="EUR"),
        replace(usual.get("UNIT"), supplier="North"),
    )


def terms(project):
    with project.reading() as connection:
        return read_terms(connection)


def usual_terms(project):
    set_terms(
        project, who=WHO, currency="usd", labour_per_hour="80", discounts={"North": "0.35"}, rates={"eur": "1.08"}
    )
    # Parts have two currencies: which of them is cheaper hangs on the rate, so the fits are out of date.
    assert totals(project_view(project), "opening") == {}
    fit_openings(project, who=WHO)


def test_a_worked_example(yard):
    usual_terms(yard)
    found = totals(project_view(yard), "opening")
    # Cylinder 100 EUR less 35 % at 1.08; unit 200 less 35 %; cam 10, collar 10, four screws of 0.10, six cells of 1,
    # coin cell 1, key 10. Tools are there already.
    parts = Decimal("70.2") + 130 + 10 + 10 + Decimal("0.4") + 6 + 1 + 10
    assert parts == Decimal("237.6")
    # Take off 0.10, fit 0.20, hole in wood 0.15, mount 0.40, programme 0.30, clean up 0.15 h: resources/labour, from
    # memory.
    hours = Decimal("1.30")
    for mark, difficulty in (("1", 1), ("2", Decimal("1.25")), ("3", 1), ("4", 1)):
        assert found[mark].parts == parts
        assert found[mark].hours == hours * difficulty
        assert found[mark].labour == 80 * hours * difficulty
        assert found[mark].total == parts + 80 * hours * difficulty
        assert found[mark].complete
        assert "CAM" in found[mark].at_list
        assert "UNIT" not in found[mark].at_list
    # Ranked is by list price: 100 EUR at 1.08 for the cylinder, 200 for the unit, 37.40 for the rest.
    fits = [view.fit for view in project_view(yard).openings]
    assert {(fit.cost, fit.currency, fit.cost_needs) for fit in fits} == {(Decimal("345.4"), "USD", ())}


def test_learning_falls_with_every_opening_alike(yard):
    usual_terms(yard)
    set_terms(yard, who=WHO, learning_rate="0.8")
    found = totals(project_view(yard), "opening")
    # Unit curve (Crawford): 1, 0.8, 0.8^log2(3) = 0.7021 of the first; 4 is another kind.
    assert found["1"].hours == Decimal("1.30")
    assert float(found["2"].hours) == pytest.approx(1.30 * 1.25 * 0.8)
    assert float(found["3"].hours) == pytest.approx(1.30 * (series_share(3, 0.8) - 1.8))
    assert float(found["3"].hours) == pytest.approx(1.30 * 0.7021, abs=1e-4)
    assert found["4"].hours == Decimal("1.30")


def test_own_hours(yard):
    usual_terms(yard)
    set_terms(yard, who=WHO, hours={"mount-unit-surface": "1", "drill-access-hole/wood": "0.5"})
    assert totals(project_view(yard), "opening")["1"].hours == Decimal("1.30") + Decimal("0.60") + Decimal("0.35")
    set_terms(yard, who=WHO, hours={"mount-unit-surface": None})
    assert totals(project_view(yard), "opening")["1"].hours == Decimal("1.30") + Decimal("0.35")


def test_what_is_unknown_is_named_and_never_nought_in_silence(yard):
    set_terms(yard, who=WHO, currency="USD", discounts={"North": "0.35"})
    more_parts(yard, replace(catalogue().get("CAM"), list_price=None))
    fit_openings(yard, who=WHO)
    cost = totals(project_view(yard), "opening")["1"]
    assert [each.text for each in cost.unknown] == [
        "unknown: needs exchange rate EUR to USD (CYL)",
        "unknown: needs list price (CAM)",
        "unknown: needs labour price per hour (labour)",
    ]
    # Unit, collar, screws, cells, coin cell, key.
    assert (cost.parts, cost.labour, cost.hours) == (Decimal("157.4"), 0, Decimal("1.30"))
    whole = combined(totals(project_view(yard), "building").values())
    assert {(u.about, u.quantity) for u in whole.unknown} == {
        ("CYL", 4), ("CAM", 4), ("labour", Decimal("1.30") * 4 + Decimal("0.325")),
    }  # fmt: skip
    text = str(COST_ESTIMATE.build(project_view(yard), None))
    assert "exchange rate EUR to USD" in text
    assert "Not counted, since something is unknown" in text


def test_without_a_currency_all_is_unknown_and_nothing_falls_over(yard):
    """Parts in two currencies: which one the project pays in nobody has said."""
    assert terms(yard).currency == ""
    set_terms(yard, who=WHO, labour_per_hour="80")
    for cost in totals(project_view(yard), "opening").values():
        assert (cost.parts, cost.labour) == (0, 0)
        assert {need for each in cost.unknown for need in each.needs} == {"currency of the project"}
        assert {each.about for each in cost.unknown} >= {"CYL", "UNIT", "labour"}
    assert "currency of the project" in str(COST_ESTIMATE.build(project_view(yard), None))
    assert what_if(yard, Question(prefer="holes")).asked


def test_without_a_currency_that_of_the_parts_counts_where_it_is_one(yard):
    more_parts(yard, catalogue().get("CYL"))
    fit_openings(yard, who=WHO)
    cost = totals(project_view(yard), "opening")["1"]
    assert cost.parts == Decimal("337.4")
    more_parts(yard, replace(catalogue().get("CAM"), currency=""))
    fit_openings(yard, who=WHO)
    cost = totals(project_view(yard), "opening")["1"]
    assert next(each.text for each in cost.unknown) == "unknown: needs currency (CAM)"


def test_what_is_not_fitted_is_not_counted(yard):
    usual_terms(yard)
    choose_part(yard, id_of(yard, "3"), "unit", "EDGE", who=WHO)
    view = project_view(yard)
    assert set(totals(view, "opening")) == {"1", "2", "4"}
    assert "Without a fit, so not counted: 1 opening." in str(COST_ESTIMATE.build(view, None))


def test_supplies_and_their_wire_stand_under_their_building(yard):
    usual_terms(yard)
    more_parts(yard, *catalogue(LOOP={"length_mm": 500.0}).parts.values())
    yard_parts(yard)
    supply = closet(yard, battery=None)
    connect_openings(yard, circuit(yard, supply), [id_of(yard, "1"), id_of(yard, "2")], who=WHO, length_m=10.1)
    fit_openings(yard, who=WHO)
    view = project_view(yard)
    cost = price_supplies(view.power.supplies, view.catalogue, view.terms)["Main"]
    # 80 for the supply; 2 runs of 10.1 m and a tenth more at 0.50 a metre; 1.5 h and 0.04 h a metre.
    assert cost.parts == 80 + Decimal("11.11")
    assert cost.hours == Decimal("1.5") + Decimal("0.04") * Decimal("20.2")
    # Neither stands at an opening again; the loop onto the leaf does.
    for mark in "12":
        view_of = next(each for each in view.openings if each.mark == mark)
        assert view_of.fit.power == "supply"
        assert {p.role for p in view_of.fit.parts} >= {"power-transfer"}
        assert view_of.fit.part("supply") is None
        # Of the wire only what goes onto the leaf: 914.4 mm across it, 300 loose, the loop's 500, and a tenth more.
        assert [p.quantity for p in view_of.fit.parts if p.role == "wire"] == [
            pytest.approx(1.1 * (0.9144 + 0.3 + 0.5), abs=0.005)
        ]
        # As with a battery, and connect 0.40, door loop 0.50; the way across the leaf 1.50, 0.04 a metre of its wire.
        hours = Decimal("1.30") + Decimal("0.90") + Decimal("1.50") + Decimal("0.04") * Decimal("1.89")
        assert totals(view, "opening")[mark].hours == hours * (Decimal("1.25") if mark == "2" else 1)
    by_building = totals(view, "building")
    assert set(by_building) == {"Main", "Annexe"}
    assert set(totals(view, "opening")) == {"1", "2", "3", "4", "supplies and wire of Main"}
    same_whole(view)


def same_whole(view):
    whole = [combined(totals(view, by).values()) for by in ("building", "set", "opening")]
    for each in whole[1:]:
        assert (each.parts, each.labour, each.hours, each.total) == (
            whole[0].parts, whole[0].labour, whole[0].hours, whole[0].total,
        )  # fmt: skip
        assert {(u.about, u.needs, u.quantity) for u in each.unknown} == {
            (u.about, u.needs, u.quantity) for u in whole[0].unknown
        }
    return whole[0]


def test_the_sample_s_totals_are_one_whole(sample_file):
    with open_project(sample_file) as project:
        import_power(project, SAMPLE / "power.xlsx", who=WHO)
        set_terms(project, who=WHO, labour_per_hour="83.33", learning_rate="0.93")
        proposed = propose_sets(project)
        accept_sets(project, proposed, who=WHO)
        fit_openings(project, who=WHO)
        view = project_view(project)
        whole = same_whole(view)
        assert whole.parts > 10_000
        assert whole.labour > 1_000
        assert {NO_SET, *(each.name for each in proposed)} <= set(totals(view, "set"))
        document = str(COST_ESTIMATE.build(view, None))
        assert f"{rounded(whole.total):,}" in document
        for each in view.openings:
            if each.fit is not None and each.fit.status == "fits":
                assert tasks_of(each.given, each.fit)


# --- terms ----------------------------------------------------------------------------------------------------------


def test_what_is_left_out_stays_and_none_takes_away(yard):
    before = state(yard)
    usual_terms(yard)
    set_terms(yard, who=WHO, discounts={"South": "0.1"}, hours={"clean-up": "0.2"})
    assert terms(yard) == CostTerms(
        "USD", {"North": "0.35", "South": "0.1"}, {"EUR": "1.08"}, "80", {"clean-up": "0.2"}, "1"
    )
    set_terms(yard, who=WHO, discounts={"North": None}, rates={"eur": None}, hours={"clean-up": None})
    set_terms(yard, who=WHO, labour_per_hour="", currency="", learning_rate="")
    assert terms(yard) == CostTerms("", {"South": "0.1"}, {}, None, {}, "1")
    assert set_terms(yard, who=WHO).number is None
    # The fits that followed the first of them too.
    for _ in range(5):
        undo(yard, who=WHO)
    assert state(yard) == before


def test_a_rate_typed_in_small_letters_changes_the_one_that_is_there(yard):
    usual_terms(yard)
    # And one of a currency of which a hundred are worth one.
    set_terms(yard, who=WHO, rates={"eur": "1.10", "xts": "0.01"})
    assert terms(yard).rates == {"EUR": "1.10", "XTS": "0.01"}


REFUSED = {
    "currency": ({"currency": "dollars"}, "three letters"),
    "rate of no currency": ({"rates": {"": "1.2"}}, "three letters"),
    "rate of nothing": ({"rates": {"EUR": "0"}}, "more than 0"),
    "own currency": ({"currency": "USD", "rates": {"USD": "1.2"}}, "must be 1"),
    "discount": ({"discounts": {"North": "1.1"}}, "at most 1"),
    "discount in per cent": ({"discounts": {"North": "35%"}}, "must be a number"),
    "labour": ({"labour_per_hour": "-1"}, "at least 0"),
    "learning": ({"learning_rate": "0.4"}, "at least 0.5"),
    "learning the wrong way": ({"learning_rate": "1.2"}, "at most 1"),
    "hours": ({"hours": {"clean-up": "long"}}, "must be a number"),
    "no such task": ({"hours": {"clean-upp": "1"}}, "accepted: .*clean-up"),
    "no such material": ({"hours": {"drill-access-hole/cheese": "1"}}, "accepted: .*wood"),
}


@pytest.mark.parametrize("name", REFUSED)
def test_what_cannot_be_is_refused_whole(yard, name):
    before = state(yard)
    wrong, word = REFUSED[name]
    with pytest.raises(ValueRefusedError, match=word):
        set_terms(yard, who=WHO, **{"labour_per_hour": "80", **wrong})
    assert state(yard) == before

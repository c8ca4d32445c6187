"""What ranks alternatives first: cost, holes, stock, preference; by hand on two units that serve alike."""

from dataclasses import replace
from decimal import Decimal

import pytest

from hwsched.calc.project.labour import labour_table
from hwsched.fitting import alternatives, fit
from hwsched.fitting.candidate import holes_in, rank_of
from hwsched.fitting.tasks import tasks_of
from hwsched.values import Catalogue, Settings
from hwsched.values.input_key import input_key, survey_key
from tests.rules.scenario import catalogue, chosen, fp, given, hole, leaf, lock, opening, place
from tests.rules.scenario import fit as usual_fit

LIKE = ("UNIT", "U-B")


def cat(more=(), **changed):
    """The usual parts and a second unit like the first, 10 dearer; stock and rank by part number."""
    held = dict(catalogue().parts)
    held["U-B"] = replace(held["UNIT"], number="U-B", list_price=210.0)
    held.update({part.number: part for part in more})
    for number, facts in changed.items():
        number = number.replace("_", "-")
        held[number] = replace(held[number], **facts)
    return Catalogue(held, "test", "ranks")


def best(prefer, parts, **more):
    settings = Settings(length_style="mm", prefer=prefer)
    found = fit(given(opening(power_wish="battery"), cat=parts, settings=settings, **more))
    assert found.status == "fits"
    assert alternatives(given(opening(power_wish="battery"), cat=parts, settings=settings, **more))[0] == replace(
        found, refused=(), runners_up=()
    )
    return found


def unit(prefer, parts, **more):
    return best(prefer, parts, **more).part("unit").part


def test_cost():
    assert unit("cost", cat()) == "UNIT"
    assert unit("cost", cat(UNIT={"list_price": 211.0})) == "U-B"
    # Equal cost: what comes first by number.
    assert unit("cost", cat(UNIT={"list_price": 210.0})) == "U-B"
    # A part without a price comes after all that have one.
    assert unit("cost", cat(UNIT={"list_price": None})) == "U-B"


def screws(**box):
    """The usual parts, where the screws of the unit stand at 0.20 each, and others like them in a box at 9.00."""
    parts = cat()
    number = best("cost", parts).part("fastener").part
    usual = replace(parts.parts[number], list_price=Decimal("0.20"), unit="EA")
    held = replace(usual, number="A-BOX", list_price=Decimal(9), unit="BOX", attributes={**usual.attributes, **box})
    return Catalogue({**parts.parts, number: usual, "A-BOX": held}, "test", "boxes"), number


def test_screws_are_ranked_by_the_piece_and_not_by_the_box():
    """9.00 for 100 are 0.09 each, under 0.20; of 40 each is 0.225; of an unknown count none is told."""
    for pieces, boxed in ((100, True), (40, False), (None, False)):
        parts, number = screws(pieces=pieces)
        assert best("cost", parts).part("fastener").part == ("A-BOX" if boxed else number)


def test_a_fit_of_boxed_screws_costs_what_its_screws_cost():
    parts, number = screws(pieces=100)
    alone = best("cost", Catalogue({**parts.parts, number: replace(parts.parts[number], list_price=0)}, "test", "free"))
    found = best("cost", parts)
    assert found.cost == alone.cost + Decimal("0.09") * int(found.part("fastener").quantity)
    # Chosen by hand from a box of nobody knows how many: what it holds is what is missing of the price.
    parts, _ = screws(pieces=None)
    assert best("cost", parts, chosen=(chosen("fastener", "A-BOX"),)).cost_needs == ("part A-BOX.pieces",)


EUROS = {"currency": "EUR"}


def in_terms(parts, currency="", prefer="cost", **rates):
    """The fit in a project of that currency and those rates."""
    settings = Settings(
        length_style="mm", prefer=prefer, currency=currency, rates={c: Decimal(r) for c, r in rates.items()}
    )
    return fit(given(opening(power_wish="battery"), cat=parts, settings=settings))


def test_prices_in_two_currencies_are_compared_by_the_projects_rates():
    """210 EUR against 200 USD: at 1.08 dollars 226.80, at 0.9 dollars 189; the rest of the parts is in USD."""
    mixed = cat(U_B=EUROS)
    for rate, number, in_usd in (("1.08", "UNIT", "200"), ("0.9", "U-B", "189")):
        found = in_terms(mixed, "USD", EUR=rate)
        assert found.part("unit").part == number
        rest = in_terms(cat(UNIT={"list_price": 0}), "USD").cost
        assert (found.cost, found.currency, found.cost_needs) == (rest + Decimal(in_usd), "USD", ())
    # In euros the same parts are cheaper, and the cost is told in euros: 200 USD at 0.95 are 190 EUR.
    found = in_terms(mixed, "EUR", USD="0.95")
    assert (found.part("unit").part, found.currency) == ("UNIT", "EUR")
    assert found.cost == (rest + 200) * Decimal("0.95")


def test_without_the_rate_the_cost_is_unknown_and_comes_after_what_is_known():
    mixed = cat(UNIT={**EUROS, "list_price": 1})
    found = in_terms(mixed, "USD")
    assert (found.part("unit").part, found.cost_needs) == ("U-B", ())
    other = next(each for each in found.runners_up if "UNIT" in each.parts)
    assert other.cost_needs == ("exchange rate EUR to USD",)
    only = in_terms(Catalogue({n: p for n, p in mixed.parts.items() if n not in ("U-B", "EDGE")}, "test"), "USD")
    assert (only.part("unit").part, only.cost_needs) == ("UNIT", ("exchange rate EUR to USD",))
    # A project that has not told its currency knows none of the sums.
    assert in_terms(mixed).cost_needs == ("currency of the project",)


def test_a_part_without_a_currency_among_priced_ones_is_unknown():
    found = in_terms(cat(UNIT={"currency": "", "list_price": 1}))
    assert found.part("unit").part == "U-B"
    assert {need for each in found.runners_up if "UNIT" in each.parts for need in each.cost_needs} == {
        "currency (UNIT)"
    }


def test_in_one_currency_neither_rate_nor_currency_of_the_project_matters():
    usual = given(opening(power_wish="battery"), cat=cat())
    told = replace(usual, settings=replace(usual.settings, currency="EUR", rates={"USD": Decimal("0.9")}))
    assert fit(told) == fit(usual)
    assert input_key(told) == input_key(usual)
    # Where parts have two, both matter; a rate of a third currency does not.
    mixed = replace(usual, catalogue=cat(U_B=EUROS))
    keys = [
        input_key(replace(mixed, settings=replace(mixed.settings, currency=currency, rates=rates)))
        for currency, rates in (
            ("", {}),
            ("USD", {}),
            ("USD", {"EUR": Decimal("1.08")}),
            ("USD", {"EUR": Decimal("1.09")}),
        )
    ]
    assert len(set(keys)) == 4
    third = replace(mixed.settings, currency="USD", rates={"EUR": Decimal("1.080"), "SEK": Decimal(1)})
    assert input_key(replace(mixed, settings=third)) == keys[2]


def test_the_last_digit_of_a_price_decides_and_is_in_the_cost():
    tiny = Decimal("0.000000000001")
    assert in_terms(cat(UNIT={"list_price": 210 + tiny})).part("unit").part == "U-B"
    found = in_terms(cat(UNIT={"list_price": 210 - tiny}))
    assert found.part("unit").part == "UNIT"
    assert found.cost == in_terms(cat(UNIT={"list_price": 209})).cost + 1 - tiny


def test_stock():
    assert unit("stock", cat()) == "UNIT"
    assert unit("stock", cat(UNIT={"stock": 0.0}, U_B={"stock": 3.0})) == "U-B"
    assert unit("stock", cat(UNIT={"stock": 1.0}, U_B={"stock": 1.0})) == "UNIT"
    # Not counted is better than too few, and worse than enough.
    assert unit("stock", cat(UNIT={"stock": 0.0})) == "U-B"
    assert unit("stock", cat(U_B={"stock": 1.0})) == "U-B"
    assert unit("cost", cat(UNIT={"stock": 0.0}, U_B={"stock": 3.0})) == "UNIT"


def test_as_many_as_are_needed():
    """Six cells: five are too few, six are enough."""
    for stock, short in ((5.0, 1.0), (6.0, 0.0)):
        held = given(cat=cat(CELL={"stock": stock}), settings=Settings(prefer="stock"))
        assert rank_of(held, usual_fit())[0] == short
    # Cylinder, cam, collar, unit, screws, coin cell: nobody has counted them; tools do not count.
    held = given(cat=cat(CELL={"stock": 6.0}), settings=Settings(prefer="stock"))
    assert rank_of(held, usual_fit(fp("tool", "BIT")))[:2] == (0.0, 6.0)


def test_preferred():
    assert unit("preferred", cat()) == "UNIT"
    assert unit("preferred", cat(U_B={"preferred": 2})) == "U-B"
    assert unit("preferred", cat(U_B={"preferred": 2}, UNIT={"preferred": 1})) == "UNIT"
    assert unit("preferred", cat(U_B={"preferred": 1}, UNIT={"preferred": 1})) == "UNIT"
    assert unit("cost", cat(U_B={"preferred": 1})) == "UNIT"


def test_what_goes_with_a_preferred_part_does_not_outweigh_it():
    """The preferred unit wants a lead extension, of which kind nobody prefers any."""
    far = cat()
    short = {**far.get("CYL").attributes, "lead_mm": 120.0}
    wide = {**far.get("UNIT").attributes, "slack_mm": 110.0}
    parts = cat(CYL={"attributes": short}, U_B={"attributes": wide, "preferred": 1})
    plain, liked = best("cost", parts), best("preferred", parts)
    assert (plain.part("unit").part, plain.part("lead-extension")) == ("UNIT", None)
    assert (liked.part("unit").part, liked.part("lead-extension").part) == ("U-B", "EXT")


def test_holes():
    """The edge unit stands behind no plate: other holes, at another cost; the fewer are taken first."""
    found = alternatives(given(opening(power_wish="battery"), cat=cat(), settings=Settings(prefer="holes")))
    counted = [holes_in(each) for each in found]
    assert counted == sorted(counted)
    assert len(set(counted)) > 1


@pytest.mark.parametrize("prefer", ["cost", "holes", "stock", "preferred"])
def test_ranked_best_first_and_the_fit_is_the_first(prefer):
    held = given(cat=cat(U_B={"preferred": 1, "stock": 4.0}), settings=Settings(length_style="mm", prefer=prefer))
    found = alternatives(held)
    ranks = [rank_of(held, each) for each in found]
    assert ranks == sorted(ranks)
    assert found[0] == replace(fit(held), refused=(), runners_up=())
    assert {each.status for each in found} == {"fits"}


def test_nothing_to_choose_from():
    assert alternatives(given(lk=lock(lock_form=None))) == ()
    assert alternatives(given(lf=leaf(thickness_mm=None))) == ()
    assert alternatives(given(cat=catalogue(drop=("UNIT", "EDGE")))) == ()


def test_a_key_follows_stock_only_where_stock_ranks():
    one, two = cat(), cat()
    two.ranks = "others"
    for prefer, same in (("cost", True), ("holes", True), ("stock", False), ("preferred", False)):
        settings = Settings(prefer=prefer)
        pair = given(cat=one, settings=settings), given(cat=two, settings=settings)
        assert (input_key(pair[0]) == input_key(pair[1])) is same
        # What was surveyed and chosen is the same whatever ranks.
        assert survey_key(pair[0]) == survey_key(pair[1]) == survey_key(given())


# --- the work that a fit asks for -----------------------------------------------------------------------------------


def tasks(found, held=None):
    return {task.task: (float(task.count), task.material) for task in tasks_of(held or given(), found)}


def test_tasks_of_the_usual_opening():
    assert tasks(usual_fit()) == {
        "fit-mortise": (1, "wood"), "take-off-cylinder": (1, "wood"), "drill-access-hole": (1, "wood"),
        "mount-unit-surface": (1, "wood"), "programme-and-test": (1, "any"), "clean-up": (1, "any"),
    }  # fmt: skip


def test_tasks_by_holes_place_and_power():
    holes = (hole(), hole(purpose="channel", count=2), hole(up_deg=80.0), hole(purpose="pocket", diameter=0.0),
             hole(purpose="fixing", count=4), hole(purpose="function"))  # fmt: skip
    found = tasks(usual_fit(power="supply", holes=holes, placement=place(face="edge")))
    assert found["drill-access-hole"] == (1, "wood")
    assert found["drill-channel"] == (2, "wood")
    assert found["drill-compound-bore"] == (1, "wood")
    assert found["cut-edge-pocket"] == (1, "wood")
    assert found["mount-unit-edge"] == (1, "wood")
    assert found["fit-door-loop"] == (1, "wood")
    assert found["connect-opening"] == (1, "any")
    assert found["mount-supply"] == (1, "any")
    assert found["lay-wire"] == (20, "any")
    glass = given(lf=leaf(material="glass"))
    assert "bond-to-glass" in tasks(usual_fit(), glass)
    assert "mount-unit-surface" not in tasks(usual_fit(), glass)
    reader = given(lk=lock("reader"))
    assert "take-off-cylinder" not in tasks(usual_fit(), reader)
    assert "fit-reader" in tasks(usual_fit(), reader)


def test_tasks_across_the_leaf_at_its_hinges_and_on_a_wall():
    """A raceway over the face, a way that is bored and one by which the wire is pulled are three kinds of work."""
    over = tasks(usual_fit(fp("raceway", "CHANNEL", 0.91)))
    assert over["fit-surface-raceway"] == (1, "wood")
    assert not {"fit-surface-raceway", "bore-raceway", "pull-leaf-wire"} & set(tasks(usual_fit()))
    bored = tasks(usual_fit(holes=(hole(purpose="raceway", tool="installer-bit"),)))
    pulled = tasks(usual_fit(holes=(hole(purpose="raceway", tool="twist-drill"),)))
    assert (bored["bore-raceway"], "pull-leaf-wire" in bored) == ((1, "wood"), False)
    assert (pulled["pull-leaf-wire"], "bore-raceway" in pulled) == ((1, "wood"), False)
    hinge = given(cat=catalogue(LOOP={"form": "transfer-hinge"}))
    supplied = usual_fit(power="supply")
    assert (tasks(supplied, hinge)["fit-transfer-hinge"], "fit-door-loop" in tasks(supplied, hinge)) == (
        (1, "wood"),
        False,
    )
    assert tasks(usual_fit(placement=place(face="wall")))["mount-unit-wall"] == (1, "wood")
    # A lift has no leaf of any material.
    elevator = given(opening(form="lift"), lk=lock("reader"), leaves=())
    assert tasks(usual_fit(placement=place(face="wall"), holes=()), elevator)["mount-unit-wall"] == (1, "any")


def test_an_opening_is_cleaned_up_once():
    second = replace(given(), point=replace(given().point, number=2))
    assert "clean-up" not in tasks(usual_fit(), second)
    assert "programme-and-test" in tasks(usual_fit(), second)


def test_every_task_stands_in_the_labour_table():
    known = {task for task, _ in labour_table()}
    for form in ("mortise", "rim", "euro-profile", "bored", "cabinet", "gate", "reader"):
        for power in ("battery", "supply"):
            for face in ("inside", "key", "edge", "wall"):
                found = tasks(usual_fit(power=power, placement=place(face=face)), given(lk=lock(form)))
                assert set(found) <= known


def test_chosen_parts_stay_whatever_ranks():
    for prefer in ("cost", "stock", "preferred"):
        parts = cat(UNIT={"preferred": 1, "stock": 5.0})
        assert unit(prefer, parts, chosen=[chosen("unit", "U-B")]) == "U-B"


def test_the_first_runner_up_is_the_very_next():
    """A unit that is like the first and 10 dearer comes right behind it, before any that costs more holes or money."""
    held = given(cat=cat(), settings=Settings(prefer="cost"))
    found = fit(held)
    first = found.runners_up[0]
    assert "UNIT" in [part.part for part in found.parts]
    assert ("U-B" in first.parts, first.cost - found.cost) == (True, 10)
    assert [each.cost for each in found.runners_up] == [
        each.cost for each in alternatives(held)[1 : 1 + len(found.runners_up)]
    ]

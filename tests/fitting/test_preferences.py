"""What ranks alternatives first: cost, holes, stock, preference; by hand on two units that serve alike."""

from dataclasses import replace

import pytest

from hwsched.calc.labour import labour_table
from hwsched.cases import Catalogue, Settings
from hwsched.cases.case_key import case_key, survey_key
from hwsched.fitting import alternatives, fit
from hwsched.fitting.candidate import holes_in, rank_of
from hwsched.fitting.tasks import tasks_of
from tests.rules.scenario import case, catalogue, chosen, fp, hole, leaf, lock, opening, place
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
    found = fit(case(opening(power_wish="battery"), cat=parts, settings=settings, **more))
    assert found.status == "fitted"
    assert alternatives(case(opening(power_wish="battery"), cat=parts, settings=settings, **more))[0] == replace(
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
        held = case(cat=cat(CELL={"stock": stock}), settings=Settings(prefer="stock"))
        assert rank_of(held, usual_fit())[0] == short
    # Cylinder, cam, collar, unit, screws, coin cell: nobody has counted them; tools do not count.
    held = case(cat=cat(CELL={"stock": 6.0}), settings=Settings(prefer="stock"))
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
    found = alternatives(case(opening(power_wish="battery"), cat=cat(), settings=Settings(prefer="holes")))
    counted = [holes_in(each) for each in found]
    assert counted == sorted(counted)
    assert len(set(counted)) > 1


@pytest.mark.parametrize("prefer", ["cost", "holes", "stock", "preferred"])
def test_ranked_best_first_and_the_fit_is_the_first(prefer):
    held = case(cat=cat(U_B={"preferred": 1, "stock": 4.0}), settings=Settings(length_style="mm", prefer=prefer))
    found = alternatives(held)
    ranks = [rank_of(held, each) for each in found]
    assert ranks == sorted(ranks)
    assert found[0] == replace(fit(held), refused=(), runners_up=())
    assert {each.status for each in found} == {"fitted"}


def test_nothing_to_choose_from():
    assert alternatives(case(lk=lock(lock_form=None))) == ()
    assert alternatives(case(lf=leaf(thickness_mm=None))) == ()
    assert alternatives(case(cat=catalogue(drop=("UNIT", "EDGE")))) == ()


def test_a_key_follows_stock_only_where_stock_ranks():
    one, two = cat(), cat()
    two.ranks = "others"
    for prefer, same in (("cost", True), ("holes", True), ("stock", False), ("preferred", False)):
        settings = Settings(prefer=prefer)
        pair = case(cat=one, settings=settings), case(cat=two, settings=settings)
        assert (case_key(pair[0]) == case_key(pair[1])) is same
        # What was surveyed and chosen is the same whatever ranks.
        assert survey_key(pair[0]) == survey_key(pair[1]) == survey_key(case())


# --- the work that a fit asks for -----------------------------------------------------------------------------------


def tasks(found, held=None):
    return {task.task: (float(task.count), task.material) for task in tasks_of(held or case(), found)}


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
    glass = case(lf=leaf(material="glass"))
    assert "bond-to-glass" in tasks(usual_fit(), glass)
    assert "mount-unit-surface" not in tasks(usual_fit(), glass)
    reader = case(lk=lock("reader"))
    assert "take-off-cylinder" not in tasks(usual_fit(), reader)
    assert "fit-reader" in tasks(usual_fit(), reader)


def test_every_task_stands_in_the_labour_table():
    known = {task for task, _ in labour_table()}
    for form in ("mortise", "rim", "euro-profile", "bored", "cabinet", "gate", "reader"):
        for power in ("battery", "supply"):
            for face in ("secured", "key", "edge", "wall"):
                found = tasks(usual_fit(power=power, placement=place(face=face)), case(lk=lock(form)))
                assert set(found) <= known


def test_chosen_parts_stay_whatever_ranks():
    for prefer in ("cost", "stock", "preferred"):
        parts = cat(UNIT={"preferred": 1, "stock": 5.0})
        assert unit(prefer, parts, chosen=[chosen("unit", "U-B")]) == "U-B"

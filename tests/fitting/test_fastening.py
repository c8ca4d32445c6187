"""What holds the unit: screws by what stands before them, 6 mm inside the plate's corners where nobody says otherwise.

The plate stands at x 29.85 to 109.85, y 940 to 1100, the hole opposite the cylinder; the case at x 0 to 105, y 894.45
to 1044.45. Screws #6 for wood are 1 in, 1/2 in and 3/8 in: LONG, SHORT and SCREW.
"""

from dataclasses import replace

import pytest

from hwsched.fitting import fit
from hwsched.rules.judging import check
from hwsched.values import Chosen, HandPlacement, Settings
from tests.fitting.door import INCH, door, item, leaf, lock, opening, part, stock

# On a rated leaf nothing is bored along the leaf and no pocket is cut: the straight place is the only one.
RATED = opening(rating="45")


def screw(found):
    return found.part("fastener").part


def refusals(found, unit, rule="screw-clear"):
    return [each for each in found.refused if (each.part, each.rule) == (unit, rule)]


def errors(given, found):
    return {each.rule for each in check(given, found) if each.severity == "error"}


@pytest.mark.parametrize(
    ("wide", "before", "number"),
    [
        # What is left before a case in the middle of 44.45: the longest that ends there is taken.
        (25.4, 9.525, "SCREW"),
        (19.05, 12.7, "SHORT"),
        (19.15, 12.65, "SHORT"),  # 0.05 too long is the measuring tolerance
        (19.25, 12.6, "SCREW"),
        (20.0, 12.225, "SCREW"),
    ],
)
def test_a_screw_that_would_end_in_the_case_gives_way_to_a_shorter_one(wide, before, number):
    given = door(RATED, lk=lock(case_width_mm=wide))
    found = fit(given)
    assert (found.status, found.placement.pattern, screw(found)) == ("fits", "straight", number)
    assert (44.45 - wide) / 2 == pytest.approx(before)
    assert not errors(given, found)
    assert found.part("fastener").quantity == 4


def test_nearer_to_the_inside_face_less_is_left_before_the_case():
    # 9.525 less 3.0 is 6.525: not even 3/8 in ends before it.
    given = door(RATED, lk=lock(case_offset_mm=-3.0))
    assert fit(given).status == "does-not-fit"
    assert screw(fit(door(RATED, lk=lock(case_offset_mm=3.175)))) == "SHORT"


def test_a_catalogue_without_a_short_screw_says_by_how_much():
    given = door(RATED, cat=stock(drop=("SCREW",)))
    found = fit(given)
    assert found.status == "does-not-fit"
    # The shortest that there is stays, so that it is told how much too long that is: 12.7 - 9.525.
    miss = found.nearest_miss
    assert (miss.rule, miss.values["short_mm"]) == ("screw-clear", pytest.approx(3.175))
    said = refusals(found, "UNIT")[0]
    assert said.reason == (
        "Straight: SHORT: A screw of the unit runs 3.2 mm into the lock's case. Take a shorter screw of that size into "
        "the catalogue, or another place for the unit."
    )
    none = fit(door(RATED, cat=stock(drop=("SCREW", "SHORT"))))
    assert none.nearest_miss.values["short_mm"] == pytest.approx(25.4 - 9.525)
    # Taking the rule off takes the longest again that leaves 1/8 in of the leaf.
    off = Settings(length_style="mm", rules_off=frozenset({"screw-clear"}))
    assert screw(fit(replace(given, settings=off))) == "LONG"


def test_beside_the_case_a_long_screw_holds():
    # The cylinder's case is 80 deep at most and ends at 1010: the plate that stands above it takes the longest.
    turn = item("thumb-turn", 69.85, 1015.0, 40.0, 40.0)
    # 2 1/2 in above is 1063.5, the turn's top 1035 and 3/16 in: the plate begins at 1039.7625, its screws at 1045.7625.
    low = door(lk=lock(thumb_turn=True, case_above_mm=1045.7625 - 1000 - 3.505 / 2), items=[turn])
    assert fit(low).placement.y_mm == pytest.approx(1039.7625)
    assert screw(fit(low)) == "LONG"
    # 0.1 higher the case touches the screws.
    high = door(lk=lock(thumb_turn=True, case_above_mm=1045.7625 - 1000 - 3.505 / 2 + 0.1), items=[turn])
    assert screw(fit(high)) == "SCREW"


def test_what_the_plate_takes_of_a_screw_does_not_go_into_the_leaf():
    # Of 12.7 the plate takes 3.175.
    assert screw(fit(door(RATED, cat=stock(UNIT={"screw_seat_mm": 3.175})))) == "SHORT"
    assert screw(fit(door(RATED, cat=stock(UNIT={"screw_seat_mm": 3.0})))) == "SCREW"


def test_where_the_catalogue_puts_the_screws():
    # Both above the case, at 940 + 110 and more.
    own = fit(door(RATED, cat=stock(UNIT={"screw_places": "40, 150; 40, 110", "screws": 2})))
    assert (screw(own), own.part("fastener").quantity) == ("LONG", 2)
    assert own.part("fastener").reason == "the unit takes 2 screws #6; the leaf is wood"
    taken = fit(door(RATED, cat=stock(UNIT={"screw_places": None}))).part("fastener").reason
    assert taken == "the unit takes 4 screws #6; taken to stand 6 mm inside the plate's corners; the leaf is wood"


def test_among_screws_of_one_length_the_cheaper_is_taken():
    same = part("CHEAP", "fastener", 0.05, form="wood-screw", size="#6", length_mm=9.525, leaf_material="wood")
    assert screw(fit(door(RATED, cat=stock(add=(same,))))) == "CHEAP"
    dear = replace(same, list_price=same.list_price * 3)
    assert screw(fit(door(RATED, cat=stock(add=(dear,))))) == "SCREW"


def test_screws_of_another_size_or_material_are_not_taken():
    others = [
        part("WIDE", "fastener", 0.01, form="wood-screw", size="#8", length_mm=9.525, leaf_material="wood"),
        part("SOFT", "fastener", 0.01, form="wood-screw", size="#6", length_mm=9.525, leaf_material="composite"),
        part("GLUE", "fastener", 0.01, form="adhesive", size="#6", leaf_material="wood"),
    ]
    assert screw(fit(door(RATED, cat=stock(add=others)))) == "SCREW"


def test_a_screw_chosen_by_hand_is_not_exchanged():
    found = fit(door(RATED, chosen=[Chosen("fastener", "LONG")]))
    assert found.status == "does-not-fit"
    assert (found.nearest_miss.rule, found.nearest_miss.values["short_mm"]) == ("screw-clear", pytest.approx(15.875))
    assert "LONG" in found.nearest_miss.reason


def test_through_bolts_pass_the_leaf_beside_the_case_and_never_the_case():
    thru = part("THRU", "fastener", 0.1, form="through-bolt", size="#6", length_mm=60.0, leaf_material="wood")
    no_screws = ("SCREW", "SHORT", "LONG")
    # Two above the case, at 940 + 110 and more.
    above = {"screw_places": "40, 150; 40, 110", "screws": 2}
    free = stock(drop=no_screws, add=(thru,), UNIT=above)
    given = door(RATED, cat=free)
    found = fit(given)
    assert (found.status, screw(found)) == ("fits", "THRU")
    assert not errors(given, found)
    # Longer than the leaf is thick, and meant to be: its hole goes through.
    (pilots,) = [each for each in found.holes if each.purpose == "fixing"]
    assert pilots.depth_mm is None
    # In the corners of the plate the lower two would go through the case.
    refused = fit(door(RATED, cat=stock(drop=no_screws, add=(thru,))))
    assert refused.status == "does-not-fit"
    assert refusals(refused, "UNIT")[0].reason.startswith("Straight: THRU: A screw of the unit runs ")
    # From its edge nothing passes a leaf: the unit in the edge has no screw here.
    edge = fit(door(cat=stock(drop=(*no_screws, "UNIT", "NARROW", "SEALED"), add=(thru,))))
    assert edge.status == "does-not-fit"
    assert {each.rule for each in edge.refused if each.part == "EDGE"} == {"fastener-for-material"}


def test_a_screw_that_passes_the_leaf_reaches_its_nut():
    """A leaf of 44.45, a sleeve nut of 12.7 (from memory): 31.75 at least, and the longer of two is taken."""
    short, long = (
        part(number, "fastener", 0.1, form="machine-screw", size="#6", length_mm=mm, leaf_material="wood")
        for number, mm in (("PASS4", 31.0), ("PASS5", 38.1))
    )
    above = {"screw_places": "40, 150; 40, 110", "screws": 2}
    no_screws = ("SCREW", "SHORT", "LONG")
    found = fit(door(RATED, cat=stock(drop=no_screws, add=(short, long), UNIT=above)))
    assert (found.status, screw(found)) == ("fits", "PASS5")
    found = fit(door(RATED, cat=stock(drop=no_screws, add=(short,), UNIT=above)))
    assert refusals(found, "UNIT", "screw-length")[0].values["short_mm"] == pytest.approx(0.75)


def test_over_the_channel_a_short_screw_ends_before_it():
    """A rim lock in wood: the channel begins 3/8 in under the face and goes down at 10 degrees at most, under a screw.

    Where the plate's lower screw stands, 37.7 below the hole, its upper side is no deeper than 9.525 + 37.7 tan 10 less
    half of 9.525 over cos 10: 11.34. At the angle that leads into the hole there 3/8 in
    leaves less than 1/16 in to it; 1/4 in ends before it.
    """
    lk = lock("rim", case_width_mm=22.225, case_depth_mm=76.2, case_height_mm=60.0, case_above_mm=20.0)
    tiny = part("TINY", "fastener", 0.1, form="wood-screw", size="#6", length_mm=6.35, leaf_material="wood")
    unit = {
        "screw_places": "40, 1; 40, 152", "screws": 2, "window_x0_mm": 40.0, "window_x1_mm": 40.0, "window_y0_mm": 38.0
    }  # fmt: skip
    drop = ("NARROW", "SEALED", "EDGE")
    given = door(lk=lk, cat=stock(drop=drop, add=(tiny,), UNIT=unit))
    found = fit(given)
    assert (found.status, screw(found)) == ("fits", "TINY")
    assert "screw-beside-hole" not in errors(given, found)
    without = fit(door(lk=lk, cat=stock(drop=drop, UNIT=unit)))
    assert refusals(without, "UNIT", "screw-beside-hole")[0].reason.startswith("Above: SCREW: A screw of the unit ")


def test_a_hollow_leaf_is_no_way_out_for_a_long_screw():
    # 44.45 less 1/8 in: 41.275 is the most, and 3/8 in ends before the case.
    hollow = leaf(material="hollow-metal")
    assert screw(fit(door(RATED, hollow))) == "THIN"
    far = part(
        "FAR", "fastener", 0.1, form="sheet-metal-screw", size="#6", length_mm=44.0, leaf_material="hollow-metal"
    )
    found = fit(door(RATED, hollow, cat=stock(add=(far,)), chosen=[Chosen("fastener", "FAR")]))
    assert refusals(found, "UNIT", "screw-length")[0].values["short_mm"] == pytest.approx(44.0 - 41.275)


def test_the_pilots_are_as_deep_as_the_screws():
    found = fit(door(RATED))
    (pilots,) = [each for each in found.holes if each.purpose == "fixing"]
    # 3/8 in screws #6 in wood: 5/64 in (shop tables).
    assert (pilots.depth_mm, pilots.diameter_mm, pilots.count) == (9.525, 5 / 64 * INCH, 4)
    # Told by the plate, their template: at its middle, and by nothing else of theirs.
    plate = found.placement
    assert (pilots.x_mm, pilots.y_mm) == pytest.approx(
        (plate.x_mm + plate.width_mm / 2, plate.y_mm + plate.height_mm / 2)
    )
    assert (pilots.face, pilots.leaf, pilots.by_template) == ("inside", "single", True)


def test_a_screw_on_a_spindle_is_refused_whatever_its_length():
    # A viewer of 14 through the leaf where the upper screw stands, at 29.85 + 74, 940 + 154.
    place = HandPlacement("single", "inside", "straight", 29.85, 940.0)
    given = door(RATED, items=[item("viewer", 103.85, 1094.0, 14.0, 14.0)], placed=place)
    found = fit(given)
    # The shortest there is, and by how much it would have to stand elsewhere.
    assert screw(found) == "SCREW"
    (said,) = [each for each in check(given, found) if each.rule == "screw-clear"]
    assert said.values["short_mm"] == pytest.approx((14 + 3.505) / 2)


def test_screws_that_a_person_chose_are_not_chosen_again():
    """Of two that were chosen the cheaper is taken, though the longer would end before the case as well."""
    facts = {"o": RATED, "lk": lock(case_width_mm=19.05)}
    chosen = [Chosen("fastener", "SHORT"), Chosen("fastener", "SCREW")]
    assert screw(fit(door(**facts))) == "SHORT"
    assert screw(fit(door(**facts, chosen=chosen))) == "SCREW"

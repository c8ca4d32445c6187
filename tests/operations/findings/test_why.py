"""Why: every part, place, hole and finding has its chain; the facts in it are facts, with where they came from."""

import re
from dataclasses import replace

import pytest

from hwsched.fitting.costing import price_openings
from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.project import open_project
from hwsched.model.queries import read_catalogue, read_terms
from hwsched.operations.findings.checking import check_openings
from hwsched.operations.findings.waivers import waive
from hwsched.operations.findings.why import as_lines, why
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part, place_unit
from hwsched.operations.power.connecting import connect_openings
from hwsched.operations.project.history import redo, undo, undo_one
from hwsched.operations.project.settings import set_settings
from hwsched.operations.survey.editing import edit_facts
from hwsched.rules import RULEBOOK
from hwsched.rules.rule_titles import title_of
from hwsched.survey import ENTITIES
from hwsched.values import SEVERITIES
from tests.operations.exact import id_of, small
from tests.operations.powered import circuit, closet, more_parts
from tests.rules.scenario import catalogue
from tests.turns import SEED

WHO = "ann"
LABELS = {attribute.label for entity in ENTITIES for attribute in entity.attributes}


@pytest.fixture
def yard(tmp_path):
    made = small(tmp_path / "y.hwsched", m2={"stair": True})
    yield made
    made.close()


def under(told, begins):
    """Lines under the reasons that begin so."""
    return [line for each in told for reason in each.reasons if reason.text.startswith(begins) for line in reason.under]


def facts(told):
    return under(told, "Facts that")


def test_everything_of_openings_of_the_sample(sample_folder):
    with open_project(sample_folder / "quayside-works.hwsched") as project:
        checked = check_openings(project)
        marks = [each.given.opening.mark for each in checked]
        chosen = marks[SEED % 16 :: 16] + [each.given.opening.mark for each in checked if each.fit.status != "fits"][:4]
        assert len(chosen) >= 12
        for each in checked:
            if each.given.opening.mark not in chosen:
                continue
            told = why(project, each.given.opening.mark)
            roles = {part.role for part in each.fit.parts}
            expected = roles | {f.rule for f in each.findings}
            expected |= {"place"} if each.fit.placement is not None else set()
            expected |= {"holes"} if each.fit.holes else set()
            assert [w.about for w in told] == list(dict.fromkeys(w.about for w in told))
            assert {w.about for w in told} == expected
            for one in told:
                assert why(project, each.given.opening.mark, one.about) == (one,)
                assert one.headline
                assert one.reasons or one.about == "holes"
            for finding in each.findings:
                (chain,) = why(project, each.given.opening.mark, finding.rule)
                text = "\n".join(as_lines([chain]))
                assert finding.message in text
                assert finding.cure in text
                assert finding.basis in text
                assert all(f"{name} = {value:g}" in text for name, value in finding.values.items())
            for part in each.fit.parts:
                (chain,) = why(project, each.given.opening.mark, part.role)
                assert part.part in chain.headline
                assert any(part.reason in reason.text for reason in chain.reasons)
            for refusal in each.fit.refused:
                if refusal.role in roles:
                    assert any(
                        refusal.part in line and title_of(refusal.rule) in line and refusal.reason in line
                        for line in under(why(project, each.given.opening.mark, refusal.role), "Refused")
                    )
            for line in facts(told):
                _, label_and_value = line.split(": ", 1)
                assert any(label_and_value.startswith(f"{label} ") for label in LABELS), line
                # Each came out of a workbook, the survey or the sheets of buildings and places, and says its row.
                origin = re.search(r"\(([^()]*)\)$", line)
                assert origin, line
                of_building = line.startswith("Building ")
                of_place = label_and_value.startswith(("Along the plan ", "Across the plan ", "Up to the cable way "))
                wanted = "power.xlsx, Places, row" if of_place else "survey"
                assert ("power.xlsx, Buildings, row" if of_building else wanted) in origin.group(1), line


def test_facts_with_value_and_origin(yard):
    edited = edit_facts(yard, "opening", id_of(yard, "2"), {"operations_per_day": 31.0}, who="bob").number
    fit_openings(yard, who=WHO)
    (chain,) = why(yard, "2", "stair-re-entry")
    lines = facts([chain])
    assert any(re.search(r"stair.*yes.*\(added by ann\)", line, re.I) for line in lines), lines
    undo(yard, who=WHO)
    told = facts(why(yard, "2", "battery"))
    assert any("31" in line and "edited by bob" in line for line in told), told
    undo_one(yard, edited, who="cid")
    told = facts(why(yard, "2", "battery"))
    # What comes back comes back with its origin, whoever took the edit back.
    assert any("30" in line and "(added by ann)" in line for line in told), told
    redo(yard, who="cid")
    assert any("31" in line and "edited by bob" in line for line in facts(why(yard, "2", "battery")))


def test_rules_that_a_part_had_to_pass_with_their_limits(yard):
    set_settings(yard, who=WHO, limits={"supply-drop.temperature_c": 31.0})
    fit_openings(yard, who=WHO)
    passed = under(why(yard, "1", "battery"), "Rules that it had to pass")
    ids = [line.split(" ")[0].rstrip(":") for line in passed]
    assert set(ids) == {rule.id for rule in RULEBOOK if rule.slot == "power"}
    assert any(line.startswith("supply-drop (") and "temperature_c 31" in line for line in passed)
    set_settings(yard, who=WHO, rules_off={"supply-drop": True})
    fit_openings(yard, who=WHO)
    assert not any(line.startswith("supply-drop") for line in under(why(yard, "1", "battery"), "Rules that"))


def test_a_changed_limit_is_said_beside_the_rule_s_own(yard):
    set_settings(yard, who=WHO, limits={"battery-life.days": 320.0})
    fit_openings(yard, who=WHO)
    (chain,) = why(yard, "1", "battery-life")
    limit, margin = under([chain], "Limits")
    assert margin.startswith("margin_share 0.1")
    assert limit.startswith("days 320 (the rule's own: 180)")


def test_who_decided(yard):
    choose_part(yard, id_of(yard, "1"), "unit", "UNIT", who=WHO)
    place_unit(yard, id_of(yard, "1"), leaf="single", face="inside", pattern="straight", x_mm=30, y_mm=1010, who=WHO)
    fit_openings(yard, who=WHO)
    (unit,) = why(yard, "1", "unit")
    assert any("(chosen by hand)" in reason.text for reason in unit.reasons)
    (place,) = why(yard, "1", "place")
    assert place.reasons[0].text == "placed by hand"
    (cam,) = why(yard, "1", "cam")
    assert any("(by the fit)" in reason.text for reason in cam.reasons)
    waive(yard, "stair-re-entry", person="Jo", reason="alarm", who=WHO, opening_id=id_of(yard, "2"))
    (chain,) = why(yard, "2", "stair-re-entry")
    assert any("waived by Jo on " in reason.text for reason in chain.reasons)


def own_words(project, about):
    """What is told of opening 1, without the facts and rules that stand under it."""
    told = as_lines(why(project, "1", about))
    return told[: next((i for i, line in enumerate(told) if line == "  Facts that decided"), len(told))]


def test_the_words_of_a_place(yard):
    """By hand: the plate of 80 by 160 mm with its connector at 40 stands over the hole on the backset of 69.85 mm; the
    leaf of 914.4 by 2133.6 mm hangs 10 mm over the floor. The lead of the cylinder has 228.6 mm; half the leaf of 44.45
    mm is its first stretch, the slack of the unit its last. Above, a channel would do too: of its bit's slot of 81.4 mm
    the plate of 160 covers all; below it does not, since its window ends 60 above its lower edge."""
    words = own_words(yard, "place")
    begin = re.fullmatch(
        r"place: straight, inside face, 29\.9 mm from the lock edge, ([\d.]+) mm above the floor", words[0]
    )
    assert begin
    y = float(begin.group(1))
    assert words[1:7] == [
        "  placed by the fit: the shortest lead first",
        "  Free distances",
        "    lock edge: 29.9 mm free",
        "    hinge edge: 804.6 mm free",
        f"    bottom edge: {y - 10:g} mm free",
        f"    top edge: {2133.6 + 10 - 160 - y:.1f} mm free",
    ]
    assert words[7] == "  Other places that would do"
    # 2 1/2 in above the cylinder at 1000, the hole 60 above the plate's lower edge: 1063.5 - 60.
    assert re.fullmatch(r"    above at 29\.9 mm, 1003\.5 mm: lead [\d.]+ mm", words[8])
    assert re.fullmatch(r"  Lead: needs [\d.]+ mm, has 228\.6 mm", words[9])
    assert re.fullmatch(r"    through the hole .*: 22\.2 mm", words[10])
    assert words[-1] == "    slack: 60 mm"


def test_the_words_of_the_holes(yard):
    """The lead's hole as the 12.7 mm bit drills it, at backset and height of the lock; a pilot of 5/64 in a screw."""
    assert own_words(yard, "holes") == [
        "holes: 5 holes",
        "  In the order of drilling",
        "    1. access hole for the lead: diameter 12.7 mm, inside face, 69.9 mm from the lock edge, "
        "1000 mm above the floor, with hole saw",
        "    2. pilots for the unit's screws #6, through its plate: diameter 2 mm, inside face, through the part as "
        "template, with twist drill",
    ]
    choose_part(yard, id_of(yard, "1"), "unit", "EDGE", who=WHO)
    fit_openings(yard, who=WHO)
    (pocket,) = [line for line in own_words(yard, "holes") if re.match(r"    \d+\. [^:]*: pocket, .* edge, ", line)]
    # In the edge a hole counts from the inside face: half of 44.45 mm is its middle, and no backset.
    assert "22.2 mm from the inside face" in pocket


def test_the_words_of_a_battery_and_of_what_comes_after_it(yard):
    """2500 mAh x 0.8 over 0.06 mA x 24 h + 30 x 150 mA x 4 s / 3600 + 2500 mAh x 0.03 / 365.25 = 6.645 mAh a day."""
    told = as_lines(why(yard, "1", "battery"))
    assert told[0] == "battery: CELL × 6 primary-battery CELL"
    life = "  Lasts about 300 days: 2500 mAh × 0.8 usable × 1 in the cold, over 6.645 mAh a day"
    assert told.count(life) == 1
    # The other unit is 100 dearer, and the rest is the same.
    with yard.reading() as connection:
        parts, terms = read_catalogue(connection), read_terms(connection)
    (checked,) = [each for each in check_openings(yard) if each.given.opening.mark == "1"]
    cost = price_openings([(checked.given, checked.fit)], parts, terms)[checked.given.opening.id].parts
    assert told[-2] == "  Ranked by cost; runners-up"
    assert re.fullmatch(rf"    CYL, EDGE, CELL: cost {cost + 100:.2f} USD, \d+ holes, on battery", told[-1])
    assert life not in as_lines(why(yard, "1", "unit"))
    more_parts(yard, replace(catalogue().get("EDGE"), list_price=None))
    fit_openings(yard, who=WHO)
    assert re.search(r"EDGE, CELL: cost unknown: needs .*EDGE", as_lines(why(yard, "1", "unit"))[-1])


def test_what_a_circuit_says_has_its_chain_too(yard):
    more_parts(yard, *catalogue(LOOP={"length_mm": 500.0}).parts.values())
    connect_openings(yard, circuit(yard, closet(yard)), [id_of(yard, "1")], who=WHO, length_m=900.0)
    assert "circuit-voltage" in {each.about for each in why(yard, "1")}
    (chain,) = why(yard, "1", "circuit-voltage")
    assert any(reason.text.split(":")[0].split(" ")[0] in SEVERITIES for reason in chain.reasons)
    assert any(reason.text.startswith("Basis: ") for reason in chain.reasons)


def test_what_there_is_not(yard):
    with pytest.raises(MissingRowError, match="77"):
        why(yard, "77")
    with pytest.raises(ValueRefusedError, match=r"1 has no 'hat'; it has cylinder, cam, .*place, holes, .*tool-known"):
        why(yard, "1", "hat")

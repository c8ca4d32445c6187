"""Why: every part, place, hole and finding has its chain; the facts in it are facts, with where they came from."""

import re

import pytest

from hwsched.model.errors import MissingRowError, ValueRefusedError
from hwsched.model.project import open_project
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
from hwsched.survey import ENTITIES
from hwsched.values import SEVERITIES
from tests.operations.exact import id_of, small
from tests.operations.powered import circuit, closet, more_parts
from tests.rules.scenario import catalogue

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
        chosen = marks[::8] + [each.given.opening.mark for each in checked if each.fit.status != "fits"][:4]
        assert len(chosen) >= 20
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
                        refusal.part in line and refusal.rule in line and refusal.reason in line
                        for line in under(why(project, each.given.opening.mark, refusal.role), "Refused")
                    )
            for line in facts(told):
                _, label_and_value = line.split(": ", 1)
                assert any(label_and_value.startswith(f"{label} ") for label in LABELS), line
                # Each came out of the survey's workbook, and says from which sheet and row.
                origin = re.search(r"\(([^()]*)\)$", line)
                assert origin, line
                assert "survey" in origin.group(1), line


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
    (limit,) = under([chain], "Limits")
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

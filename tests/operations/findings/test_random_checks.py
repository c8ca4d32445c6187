"""A random walk of edits: what is checked one opening at a time, by a checker that remembers, equals the whole check.

The whole check is made by a project that was opened anew, with nothing remembered. Dates are fixed. After each step the
opening that was edited and one other are looked at in every way, and after each eighth step all of them; with
``HWSCHED_FUZZ`` set all are after each, and the longer walks are four times as long.
"""

import os
import random
from dataclasses import replace
from datetime import timedelta

import pytest

from hwsched.model.errors import ChangeError
from hwsched.model.project import open_project
from hwsched.model.queries import opening_ids, read_inputs
from hwsched.model.tables import ITEM_TABLE
from hwsched.operations.findings.checking import Checker, check_openings, look_again
from hwsched.operations.findings.waivers import unwaive, waive, waivers
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.opening.hand_choices import choose_part, place_unit, release_part, release_unit
from hwsched.operations.parts.hardware_sets import (
    Line,
    assign_set,
    change_set_lines,
    hardware_sets,
    make_set,
    remove_set,
)
from hwsched.operations.power.connecting import connect_openings, disconnect_openings
from hwsched.operations.power.power_editing import remove_power_row
from hwsched.operations.power.power_results import on_same_supplies
from hwsched.operations.project.history import history, redo, undo, undo_one
from hwsched.operations.project.settings import set_settings
from hwsched.operations.release.issued_packets import write_down_packets
from hwsched.operations.release.project_view import project_view
from hwsched.operations.survey.editing import add_item, add_opening, edit_facts, remove
from hwsched.operations.survey.retiring import restore_openings, retire_openings, retired
from hwsched.values import SEVERITIES, Fit, Part
from tests.operations.exact import TODAY, id_of, small
from tests.operations.powered import circuit, closet, door, more_parts, stated
from tests.operations.powered import power as present
from tests.rules.scenario import lock
from tests.wiring.power_rows import parts

WHO = "w"
EACH = 1 if os.environ.get("HWSCHED_FUZZ") else 8
"""After how many steps every opening is looked at."""
LONG = 120 if os.environ.get("HWSCHED_FUZZ") else 20
"""Steps of a longer walk."""
PARTS = {part.number: part for part in parts(UNIT={"plate_width_mm": 80.0}).parts.values()}
OPENING_FACTS = {
    "stair": (True, False, None),
    "accessible": (True, False, None),
    "rating": ("none", "90", "20", None),
    "exposure": ("interior", "exterior", None),
    "operations_per_day": (30.0, 31.0, 400.0, None),
    "power_wish": ("battery", "supply", None),
    "egress": ("none", "egress", None),
    "hand": ("LH", "RH", None),
    "building": ("Main", "Annexe", None),
    "notes": ("seen", None),
    "difficulty": (1.5, None),
}
LEAF_FACTS = {"thickness_mm": (44.45, 57.15, 35.0, None), "material": ("wood", "hollow-metal", "glass", None),
              "width_mm": (914.4, 800.0, None)}  # fmt: skip
LOCK_FACTS = {"backset_mm": (69.85, 60.0, None), "case_offset_mm": (0.0, None), "trim_key_mm": (0.0, 3.0, None),
              "lock_form": ("mortise", "rim", "bored", None)}  # fmt: skip
BOLT_FACTS = {"disposition": ("replace", "replace", "keep", "remove", None), "backset_mm": (69.85, 60.0, None),
              "cylinder_height_mm": (1150.0, 1300.0, None), "thumb_turn": (True, False, None)}  # fmt: skip
RULES = ("stair-re-entry", "tool-known", "coin-cell-drain", "battery-life", "clear-width", "case-offset-taken",
         "known-before-order", "circuit-known", "fit-complete", "fit-out-of-date", "packet-out-of-date")  # fmt: skip
LIMITS = {"battery-life.days": (180.0, 301.0, 400.0, None), "clear-width.clear_mm": (812.8, 870.0, None),
          "busy-on-supply.operations": (100.0, 20.0, None)}  # fmt: skip
CHOICES = (("unit", "UNIT"), ("unit", "EDGE"), ("cylinder", "CYL"), ("cam", "CAM"), ("strike", "STRIKE"),
           ("battery", "CELL"))  # fmt: skip


def bolt(height_mm):
    """A deadbolt to be replaced."""
    usual = {"kind": "deadbolt", "disposition": "replace", "function": "deadlock", "cylinder_height_mm": height_mm,
             "case_height_mm": 90.0, "case_above_mm": 45.0, "case_depth_mm": 100.0}  # fmt: skip
    return stated(lock(**usual), ITEM_TABLE)


class Walk:
    """A project of seven openings, edited at random."""

    def __init__(self, path, seed):
        self.random = random.Random(seed)
        self.path = str(path)
        self.project = small(path, "12345", m2={"stair": True}, m3={"stair": True}, m4={"accessible": True})
        door(self.project, "6", power_wish="supply", supply_distance_m=20.0)
        add_opening(self.project, {"mark": "7"}, who=WHO)
        more_parts(self.project, *PARTS.values())
        for mark, height in (("2", 1300.0), ("5", 1150.0)):
            add_item(self.project, id_of(self.project, mark), bolt(height), who=WHO)
        self.supply = closet(self.project)
        self.circuit = circuit(self.project, self.supply)
        fit_openings(self.project, who=WHO)
        self.checker = Checker()
        self.log = []
        self.edited = None
        # Of its own, so that the steps of a seed are the same however much is looked at.
        self.drawing = random.Random(f"looking {seed}")
        self.times = 0

    def openings(self):
        with self.project.reading() as connection:
            return sorted(opening_ids(connection).values())

    def some(self, ids):
        return self.random.sample(ids, self.random.randint(1, len(ids))) if ids else []

    def given(self, opening):
        with self.project.reading() as connection:
            return next(read_inputs(connection, [opening]))

    # --- edits ------------------------------------------------------------------------------------------------------

    def of_opening(self, opening):
        name, values = self.random.choice(list(OPENING_FACTS.items()))
        edit_facts(self.project, "opening", opening, {name: self.random.choice(values)}, who=WHO)

    def of_leaf(self, opening):
        leaves = self.given(opening).leaves
        if leaves:
            name, values = self.random.choice(list(LEAF_FACTS.items()))
            edit_facts(self.project, "leaf", leaves[0].id, {name: self.random.choice(values)}, who=WHO)

    def of_lock(self, opening):
        items = [item for item in self.given(opening).items if item.kind == "lock"]
        if items:
            name, values = self.random.choice(list(LOCK_FACTS.items()))
            edit_facts(self.project, "existing_item", items[0].id, {name: self.random.choice(values)}, who=WHO)

    def of_items(self, opening):
        facts = {"kind": "closer", "face": "inside", "x_mm": 100.0, "y_mm": 1900.0, "width_mm": 60.0}
        add_item(self.project, opening, facts, who=WHO)

    def of_bolt(self, opening):
        """A second lock comes, changes or goes: its lock point follows."""
        bolts = [item for item in self.given(opening).items if item.kind == "deadbolt"]
        act = self.random.choice(["change", "change", "add", "remove"])
        if act == "remove" and bolts:
            remove(self.project, "existing_item", bolts[0].id, who=WHO)
        elif bolts:
            name, values = self.random.choice(list(BOLT_FACTS.items()))
            edit_facts(self.project, "existing_item", bolts[0].id, {name: self.random.choice(values)}, who=WHO)
        else:
            add_item(self.project, opening, bolt(self.random.choice([1150.0, 1300.0])), who=WHO)

    def point(self, opening):
        with self.project.reading() as connection:
            return self.random.choice([given.point.id for given in read_inputs(connection, [opening])])

    def gone(self, opening):
        if len(self.openings()) > 5:
            if self.random.random() < 0.5:
                remove(self.project, "opening", opening, who=WHO)
            else:
                retire_openings(self.project, [opening], who=WHO)

    def come_back(self, _opening):
        """Openings that rest come back, with what hangs on circuits since."""
        resting = [each.id for each in retired(self.project)]
        if resting:
            restore_openings(self.project, self.some(resting), who=WHO)

    def choose(self, opening):
        role, part = self.random.choice(CHOICES)
        choose_part(self.project, opening, role, part, who=WHO, point=self.point(opening))

    def release(self, opening):
        release_part(self.project, opening, self.random.choice(CHOICES)[0], who=WHO, point=self.point(opening))

    def place(self, opening):
        if self.random.random() < 0.4:
            release_unit(self.project, opening, who=WHO, point=self.point(opening))
            return
        x_mm = self.random.choice([30.0, 900.0])
        place_unit(self.project, opening, leaf="single", face="inside", pattern="straight", x_mm=x_mm, y_mm=1010.0,
                   who=WHO, point=self.point(opening))  # fmt: skip

    def sets(self, _):
        held = hardware_sets(self.project)
        act = self.random.choice(["make", "change", "assign", "free", "remove"])
        lines = [Line(role, part) for role, part in self.random.sample(CHOICES[1:], 2)]
        if act == "make" or not held:
            make_set(
                self.project, f"HS-{self.random.randint(1, 9)}", lines, who=WHO, openings=self.some(self.openings())
            )
            return
        chosen = self.random.choice(held).id
        if act == "change":
            change_set_lines(self.project, chosen, lines, who=WHO)
        elif act == "remove":
            remove_set(self.project, chosen, who=WHO)
        else:
            to = chosen if act == "assign" else None
            assign_set(self.project, to, self.some(self.openings()), who=WHO)

    def give(self, opening):
        if self.random.random() < 0.3:
            held = waivers(self.project)
            unwaive(self.project, [each.id for each in self.some(held)], who=WHO)
            return
        (looked,) = look_again(self.project, [opening], checker=Checker(), today=TODAY)
        spoken = [f.rule for f in looked.findings if not f.rule.startswith("waiver-")] or list(RULES)
        scope = self.random.choice(["opening", "alike", "project"])
        stated = TODAY - timedelta(days=30)
        until = self.random.choice([None, None, TODAY, TODAY - timedelta(days=2)])
        waive(self.project, self.random.choice(spoken), person="p", reason="r", who=WHO, scope=scope, today=stated,
              opening_id=opening, until=until.isoformat() if until else None)  # fmt: skip

    def limit(self, _):
        name, values = self.random.choice(list(LIMITS.items()))
        set_settings(self.project, who=WHO, limits={name: self.random.choice(values)})

    def off(self, _):
        set_settings(self.project, who=WHO, rules_off={self.random.choice(RULES): self.random.random() < 0.5})

    def prefer(self, _):
        style = self.random.choice(["mm", "mm", "fraction"])
        prefer = self.random.choice(["cost", "holes", "stock", "preferred"])
        set_settings(self.project, who=WHO, prefer=prefer, length_style=style)

    def catalogue(self, _):
        part = PARTS[self.random.choice(["CYL", "UNIT", "CELL", "CAM", "PSU", "BIT"])]
        act = self.random.choice(["as-it-was", "supersede", "attribute", "price", "stock", "preferred", "new"])
        if act == "supersede":
            part = replace(part, superseded_by=f"{part.number}-2")
        elif act == "attribute":
            wider = {"plate_width_mm": 90.0, "capacity_mah": 2000.0, "output_v": 24.0, "diameter_mm": 12.0}
            more = {name: value for name, value in wider.items() if name in part.attributes}
            part = replace(part, attributes={**part.attributes, **more})
        elif act == "price":
            part = replace(part, list_price=self.random.choice([1.0, 500.0]))
        elif act == "stock":
            part = replace(part, stock=self.random.choice([0.0, 9.0]))
        elif act == "preferred":
            part = replace(part, preferred=self.random.choice([1, 2]))
        elif act == "new":
            part = Part("CAM-2", "cam", "another", list_price=9.0, currency="USD", attributes=PARTS["CAM"].attributes)
        more_parts(self.project, part)

    def power(self, opening):
        if not present(self.project).circuits or self.random.random() < 0.3:
            disconnect_openings(self.project, [opening], who=WHO)
        else:
            length = self.random.choice([None, 10.0, 2000.0])
            connect_openings(self.project, self.circuit, self.some(self.openings())[:3], who=WHO, length_m=length)

    def add_power(self, _):
        if self.random.random() < 0.2:
            remove_power_row(self.project, "circuit", self.circuit, who=WHO)
        elif not present(self.project).circuits:
            self.circuit = circuit(self.project, self.supply, f"C{self.random.randint(2, 99)}")

    def packets(self, _):
        write_down_packets(self.project, project_view(self.project), who=WHO, today=TODAY)

    def fit(self, _):
        chosen = self.some(self.openings())
        looked = {
            each.given.opening.id: each for each in look_again(self.project, chosen, checker=self.checker, today=TODAY)
        }
        fit_openings(self.project, chosen, who=WHO)
        for each in check_openings(self.project, chosen, checker=self.checker, today=TODAY):
            before = looked[each.given.opening.id]
            assert [point.fit for point in each.points] == [point.fit for point in before.points]
            if each.given.supply_link is None:
                assert each.findings == before.findings

    def back(self, _):
        for _ in range(self.random.randint(1, 3)):
            undo(self.project, who=WHO)
            self.holds()
        if self.random.random() < 0.5:
            redo(self.project, who=WHO)

    def again(self, _):
        redo(self.project, who=WHO)

    def back_one(self, _):
        numbers = [step.number for step in history(self.project) if step.kind == "edit" and not step.undone]
        undo_one(self.project, self.random.choice(numbers[-12:]), who=WHO)

    EDITS = (
        *(of_opening, of_opening, of_leaf, of_lock, of_bolt, of_bolt, of_items, gone, come_back, choose, release),
        *(place, sets, sets, give, give, give, limit, off, prefer, catalogue, catalogue, power, power, add_power),
        *(packets, fit, fit, fit, back, again, back_one),
    )

    def step(self):
        edit = self.random.choice(self.EDITS)
        self.log.append(edit.__name__)
        self.edited = self.random.choice(self.openings())
        try:
            edit(self, self.edited)
        except ChangeError as error:
            # Refused, and so without effect: that must leave all as it was, too.
            self.log[-1] += f" (refused: {error})"

    # --- what must hold ---------------------------------------------------------------------------------------------

    def to_look_at(self, openings):
        self.times += 1
        if self.times % EACH == 0 or self.edited is None:
            return openings
        return sorted({self.drawing.choice(openings), *({self.edited} & set(openings))})

    def holds(self):
        with open_project(self.path) as anew:
            whole = {each.given.opening.id: each for each in check_openings(anew, today=TODAY)}
            chosen = self.to_look_at(list(whole))
            looked = {id_: look_again(anew, [id_], checker=Checker(), today=TODAY)[0] for id_ in chosen}
        assert set(whole) == set(self.openings()), self.log
        for opening in chosen:
            full = whole[opening]
            (one,) = check_openings(self.project, [opening], checker=self.checker, today=TODAY)
            assert told(one) == told(full), self.log
            (again,) = look_again(self.project, [opening], checker=self.checker, today=TODAY)
            assert told(again) == told(looked[opening]), self.log
            # Looking again works out those on the same supply too: a check has only what is stored of them.
            together = on_same_supplies(self.project, [opening])
            if all(point.fit is not None for each in together for point in whole[each].points):
                assert told(again) == told(full), self.log
            order = [SEVERITIES.index(finding.severity) for finding in full.findings]
            assert order == sorted(order)
            assert isinstance(again.fit, Fit)

    def close(self):
        self.project.close()


def told(checked):
    """What is said of an opening, without the catalogue, which is another object each time that it is read."""
    given = checked.given
    points = [(each.given.point, each.given.beside, each.given.chosen, each.given.placed, each.fit)
              for each in checked.points]  # fmt: skip
    return (given.opening, given.leaves, given.items, given.supply_link, given.settings, given.catalogue.key, points,
            checked.fit, checked.findings, checked.stored)  # fmt: skip


def walked(path, seed, steps):
    walk = Walk(path, seed)
    try:
        walk.holds()
        for _ in range(steps):
            walk.step()
            walk.holds()
        fit_openings(walk.project, who=WHO)
        whole = check_openings(walk.project, today=TODAY)
        assert [
            told(each) for each in look_again(walk.project, walk.openings(), checker=walk.checker, today=TODAY)
        ] == [told(each) for each in whole]
        return walk.log, {f.rule for each in whole for f in each.findings}
    finally:
        walk.close()


@pytest.mark.turns(4)
@pytest.mark.parametrize("seed", range(4))
def test_one_at_a_time_equals_all_at_once(tmp_path, seed):
    walked(tmp_path / "w.hwsched", seed, 30)


@pytest.mark.fuzz
@pytest.mark.parametrize("seed", range(100, 100 + int(os.environ.get("HWSCHED_CHECK_WALKS", "1"))))
def test_longer_walks(tmp_path, seed):
    walked(tmp_path / "w.hwsched", seed, LONG)

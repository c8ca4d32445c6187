"""Power schedule, wire list, battery calendar and the power page of a packet: empty, the sample, 300 openings."""

import random
import re
from dataclasses import replace
from datetime import date
from decimal import Decimal
from math import fsum

import pytest
from openpyxl import load_workbook
from pypdf import PdfReader

from hwsched.documents.power.battery_calendar import BATTERY_CALENDAR
from hwsched.documents.power.packet_power import power_blocks, unproved_blocks
from hwsched.documents.power.power_schedule import POWER_SCHEDULE
from hwsched.documents.power.wire_list import WIRE_LIST
from hwsched.documents.release.packet import PACKET
from hwsched.documents.release.schedule import SCHEDULE
from hwsched.documents.stock.pick_list import PICK_LIST
from hwsched.documents.view import OpeningView, ProjectView
from hwsched.drawings.drawing import Text
from hwsched.model.project import open_project
from hwsched.operations.release.project_view import project_view
from hwsched.render.blocks import Drawings, Facts, Heading, Paragraph, Table
from hwsched.render.ics import calendar_text
from hwsched.render.pdf import render_pdf
from hwsched.render.xlsx import render_xlsx
from hwsched.values import Catalogue, PointFit, Settings
from hwsched.values.power import PowerResult
from hwsched.wiring import ConnectedOpening
from hwsched.wiring.goods import Bill, Goods
from hwsched.wiring.take_off import Piece, WireLine
from tests.rules.scenario import fit, fp, given, opening, part
from tests.wiring.power_rows import circuit, connected, parts, run, supply, work

NEW = (POWER_SCHEDULE, WIRE_LIST, BATTERY_CALENDAR)


def blocks(document):
    return [block for section in document.sections for block in section.blocks]


def table(document, title):
    return next(b for b in blocks(document) if isinstance(b, Table) and b.title == title)


def texts(found):
    words = []
    for block in found:
        if isinstance(block, Paragraph | Heading):
            words.append(block.text)
        elif isinstance(block, Facts):
            words += [f"{name}: {value}" for name, value in block.pairs]
        elif isinstance(block, Table):
            words += [str(cell) for row in block.rows for cell in row]
    return "\n".join(words)


def view_of(power, openings, cat):
    views = tuple(OpeningView(each.given, each.fit, power.of_opening(name)) for name, each in openings.items())
    return ProjectView("Yard", "working state 3", "2026-01-05", "mm", views, cat, power=power)


def yard(runs, cat=None, openings=None, **more):
    """A project of what hangs on these runs."""
    cat = cat or parts()
    openings = openings or {r.opening_id: connected(r.opening_id, cat, without=()) for r in runs if r.opening_id}
    return view_of(work(runs, openings, cat, **more), openings, cat)


EMPTY = ProjectView("Empty", "working state 0", "2026-01-01", "mm", (), Catalogue({}, ""))


@pytest.fixture(scope="module")
def sample(sample_folder):
    project = open_project(sample_folder / "quayside-works.hwsched")
    try:
        return project_view(project)
    finally:
        project.close()


@pytest.fixture(scope="module")
def large():
    """300 openings of three buildings on 30 circuits of 15 supplies, in chains and trees; ten of them on batteries."""
    rng = random.Random(8)
    cat = parts(PSU={"output_a": 8.0}, UNIT={"supply_rest_a": 0.02})
    supplies, circuits, runs, openings = [], [], [], {}
    for s in range(15):
        level = str(1 + s % 4)
        supplies.append(supply(f"s{s}", building=f"Building {s % 3}", level=level, standby_hours=4.0, battery="BAT",
                               temperature_c=15.0))  # fmt: skip
        for c in range(2):
            name = f"s{s}c{c}"
            circuits.append(circuit(name, f"s{s}", limiter_a=2.0, alarm="drops"))
            nodes = ["supply"]
            for i in range(10):
                mark = f"o{s:02}{c}{i}"
                begin = rng.choice(nodes[-2:])
                if i == 4:
                    runs.append(run(begin, f"J{name}", 5.0, name))
                    begin = f"J{name}"
                runs.append(run(begin, mark, rng.uniform(2, 12), name))
                nodes.append(mark)
                openings[mark] = connected(mark, cat, without=(), building=f"Building {s % 3}", level=level)
    for i in range(10):
        openings[f"b{i}"] = ConnectedOpening(
            given(opening(id=f"b{i}", mark=f"B{i}", installed_on="2025-03-01", operations_per_day=10.0 + i), cat=cat),
            fit(),
        )
    return view_of(work(runs, openings, cat, supplies=supplies, circuits=circuits), openings, cat)


@pytest.mark.turns(2)
@pytest.mark.parametrize("kind", NEW, ids=lambda kind: kind.name)
@pytest.mark.parametrize("which", ["empty", "sample", "large"])
def test_every_document_is_written_in_all_its_forms(kind, which, request, tmp_path):
    view = EMPTY if which == "empty" else request.getfixturevalue(which)
    document = kind.build(view, None)
    render_pdf(document, tmp_path / "d.pdf")
    pages = PdfReader(tmp_path / "d.pdf").pages
    shown = " ".join(" ".join(page.extract_text() for page in pages).split())
    assert document.title in shown
    assert f"Page 1 of {len(pages)}" in shown
    render_xlsx(document, tmp_path / "d.xlsx")
    assert load_workbook(tmp_path / "d.xlsx").sheetnames
    if "ics" in kind.formats:
        assert calendar_text(document).count("BEGIN:VEVENT") == len(document.events)


def test_nothing_laid_is_said():
    assert "no supply has a circuit" in texts(blocks(POWER_SCHEDULE.build(EMPTY, None)))
    assert "No run is laid yet" in texts(blocks(WIRE_LIST.build(EMPTY, None)))
    assert "No opening runs on batteries" in texts(blocks(BATTERY_CALENDAR.build(EMPTY, None)))


@pytest.mark.parametrize("which", ["sample", "large"])
def test_the_schedule_has_every_load_with_its_volts(which, request):
    view = request.getfixturevalue(which)
    document = POWER_SCHEDULE.build(view, None)
    rows = {}
    for block in blocks(document):
        if isinstance(block, Table) and (block.title or "").startswith("Circuit "):
            for row in block.rows:
                rows[block.title.removeprefix("Circuit "), row[0]] = row
    expected = 0
    for result in view.power.supplies:
        for each in result.circuits:
            for node in each.nodes:
                if node.minimum_v is None:
                    continue
                row = rows[f"{result.supply.name}/{each.circuit.name}", node.name]
                states = [
                    state
                    for state in ("normal", "lowest-mains", "highest-mains", "standby-end", "peak")
                    if state in each.source_v
                ]
                assert list(row[3 : 3 + len(states)]) == [round(node.volts[state], 2) for state in states]
                assert row[-1] == ("LOW" if node.margin_v < 0 else "")
                expected += 1
    assert len(rows) == expected > 0
    summary = table(document, "Supplies")
    assert [row[6] for row in summary.rows] == [len(s.openings) for s in view.power.supplies if s.circuits]


def test_every_finding_stands_in_the_schedule(large):
    shown = texts(blocks(POWER_SCHEDULE.build(large, None)))
    assert large.power.findings
    for each in large.power.findings:
        assert each.finding.message in shown


@pytest.mark.parametrize("which", ["sample", "large"])
def test_the_wire_list_adds_up(which, request):
    view = request.getfixturevalue(which)
    document = WIRE_LIST.build(view, None)
    present = [r for s in view.power.supplies for c in s.circuits for r in c.runs]
    listed = [row for b in blocks(document) if isinstance(b, Table) and b.title.startswith("Runs") for row in b.rows]
    assert len(listed) == len(present)
    wires = table(document, "Wire")
    metres = 1.0 if view.length_style == "mm" else 0.3048
    assert fsum(row[4] for row in wires.rows) * metres == pytest.approx(
        fsum(r.length_m * r.parallel for r in present if not r.transfer), abs=0.06 * len(wires.rows)
    )
    assert sum(row[3] for row in wires.rows) == sum(not r.transfer for r in present)
    others = table(document, "Goods by the piece")
    of_fits = [part for o in view.openings if o.fit.status == "fits" for part in o.fit.parts]
    assert sum(row[4] for row in others.rows if row[2] == "power transfer") == sum(
        part.quantity for part in of_fits if part.role == "power-transfer"
    )


def test_the_schedule_and_the_riser_say_what_is_borne():
    cat = parts()
    runs = [run("supply", "a", 5.0), run("a", "b", 5.0)]
    openings = {name: connected(name, cat) for name in "ab"}
    laid = {"circuits": [circuit(alarm="drops", limiter_a=2.0)], "supplies": [supply(building="Main", level="1")]}
    asked = Settings(length_style="mm", limits={"supply-growth.openings": 2.0})
    view = view_of(work(runs, openings, cat, settings=asked, **laid), openings, cat)
    document = POWER_SCHEDULE.build(view, None)
    fails = {(row[0], row[1]): row[3] for row in table(document, "When something fails").rows}
    assert fails["The supply", "PS-s"] == "A, B"
    assert fails["A run, cut", "PS-s/C A to B"] == "B"
    shown = texts(blocks(document))
    assert "Lose power: A, B" in shown
    assert "Circuit C, 2 later openings: not borne." in shown or "Circuit C bears 2 later openings" in shown
    notes = [
        note for block in blocks(document) if isinstance(block, Drawings) for d in block.drawings for note in d.notes
    ]
    (margin,) = [note for note in notes if note.startswith("PS-s: with it 2 lose power")]
    assert "without mains at once; on the fire alarm C loses power. C bears 2 more." in margin


@pytest.mark.parametrize(("style", "other"), [("mm", r"\bft\b"), ("fraction", r"\bm\b")])
def test_runs_are_in_metres_or_in_feet_and_never_in_both(style, other):
    """On schedule with its plot and riser, wire list, pick list, hardware schedule and the wiring of a packet."""
    cat = parts(add=(part("RW", "surface-raceway", inside_mm=10.0, width_mm=16.0, reel_m=3.0),))
    runs = [run("supply", "a", 95.0), run("a", "b", 20.0)]
    openings = {}
    for name in "ab":
        at = connected(name, cat, fp("raceway", "RW", 0.9), without=(), building="Main")
        openings[name] = ConnectedOpening(replace(at.given, settings=Settings(length_style=style)), at.fit)
    power = work(runs, openings, cat, supplies=[supply(building="Main", level="1")],
                 settings=Settings(length_style=style))  # fmt: skip
    assert any("supply within" in each.finding.cure for each in power.findings)
    view = replace(view_of(power, openings, cat), length_style=style)
    pages = [kind.build(view, None) for kind in (POWER_SCHEDULE, WIRE_LIST, PICK_LIST)]
    found = [block for page in pages for block in blocks(page)]
    found += [block for each in view.openings for block in power_blocks(view, each)]
    words = [texts([block]) for block in found]
    words += [column.title for block in found if isinstance(block, Table) for column in block.columns]
    for block in found:
        for drawing in block.drawings if isinstance(block, Drawings) else ():
            words += [shape.text for shape in drawing.shapes if isinstance(shape, Text)]
            words += drawing.notes
    wrong = [each for each in words if re.search(other, each)]
    assert not wrong
    unit = r"\bm\b" if style == "mm" else r"\bft\b"
    assert sum(bool(re.search(unit, each)) for each in words) > 10


def test_the_calendar_has_an_event_a_battery_opening(large):
    document = BATTERY_CALENDAR.build(large, None)
    assert len(document.events) == 10
    weakest = table(document, "Weakest first")
    assert [row[0] for row in weakest.rows] == [f"B{i}" for i in range(9, -1, -1)]
    days = [row[5] for row in weakest.rows]
    assert days == sorted(days)
    by_mark = {event.title.split()[3].rstrip(":"): event.day for event in document.events}
    # 1.44 + 10 x 0.16667 + 0.20534 = 3.31201 mAh a day; 2000 / 3.31201 = 603.86 days after 2025-03-01.
    assert by_mark["B0"] == date(2026, 10, 25)
    assert len({event.key for event in document.events}) == 10
    shown = texts(blocks(document))
    assert "never mix old and new" in shown
    assert "unverified" in shown


def test_a_calendar_without_days_says_what_it_needs():
    cat = parts()
    openings = {"a": ConnectedOpening(given(opening(id="a", mark="A"), cat=cat), fit())}
    document = BATTERY_CALENDAR.build(view_of(PowerResult(), openings, cat), None)
    assert document.events == ()
    assert table(document, "Without a day").rows == (("A", "opening: Installed on"),)


def test_what_is_not_worked_out_is_said_on_every_document():
    for runs, cat, more, word in (
        ([run("supply", "a", None)], None, {}, "the length of the run from supply to A is unknown"),
        ([run("supply", "a")], None, {"supplies": [supply(part=None)]}, "no power supply is chosen for PS-s"),
        ([run("supply", "a")], parts(PSU={"tolerance_share": None}), {}, "does not say its tolerance"),
        ([run("J1", "a")], None, {}, "J1 is not fed from the supply"),
    ):
        view = yard(runs, cat, **more)
        assert word in texts(blocks(POWER_SCHEDULE.build(view, None)))
        assert word in texts(blocks(WIRE_LIST.build(view, None)))
        assert word in texts(power_blocks(view, view.openings[0]))


def test_collapse_is_said_on_the_schedule():
    view = yard([run("supply", "a", 300.0)], parts(UNIT={"draws": "power"}))
    stops = [b.text for b in blocks(POWER_SCHEDULE.build(view, None)) if isinstance(b, Paragraph) and b.style == "stop"]
    assert len(stops) == 3
    assert "no voltage satisfies" in stops[0]


def test_a_limiter_that_is_only_proposed_is_called_so():
    shown = texts(blocks(POWER_SCHEDULE.build(yard([run("supply", "a")]), None)))
    assert "Fuse or limiter: 0.50 A (proposed, none is laid)" in shown
    shown = texts(blocks(POWER_SCHEDULE.build(yard([run("supply", "a")], circuits=[circuit(limiter_a=1.0)]), None)))
    assert "Fuse or limiter: 1.00 A\n" in shown
    shown = texts(blocks(POWER_SCHEDULE.build(yard([run("supply", "a", None)]), None)))
    assert "proposed" not in shown


def test_wired_openings_on_no_circuit_are_listed():
    cat = parts()
    openings = {"a": connected("a", cat, without=()), "b": connected("b", cat, without=())}
    view = view_of(work([run("supply", "a")], openings, cat), openings, cat)
    assert "On no circuit yet: B." in texts(blocks(POWER_SCHEDULE.build(view, None)))


def test_the_power_page_of_an_opening_on_a_circuit():
    view = yard([run("supply", "a", 30.0), run("a", "b", 5.0)], supplies=[supply(building="Main", place="Closet")])
    second = view.openings[1]
    found = power_blocks(view, second)
    shown = texts(found)
    for word in ("Supply: PS-s, PSU", "It stands: Main · Closet", "Circuit: PS-s/C", "Needs at the unit: 10 to 14 V"):
        assert word in shown
    volts = next(b for b in found if isinstance(b, Table))
    node = next(n for n in view.power.supplies[0].circuits[0].nodes if n.node == "b/leaf")
    assert list(volts.rows[0][:4]) == [
        round(node.volts[s], 2) for s in ("normal", "lowest-mains", "highest-mains", "peak")
    ]
    assert volts.rows[0][4] == "........"
    assert sum(isinstance(b, Drawings) for b in found) == 1
    assert "Never bring mains" in shown


def test_the_power_page_of_others():
    cat = parts()
    own = {"a": connected("a", cat, without=())}
    view = view_of(PowerResult(), own, cat)
    assert "is on no circuit" in texts(power_blocks(view, view.openings[0]))
    for power, word in (("battery", "Cells: 6 × AA"), ("none", "")):
        openings = {"a": ConnectedOpening(given(opening(id="a", mark="A"), cat=cat), fit(power=power))}
        view = view_of(PowerResult(), openings, cat)
        found = power_blocks(view, view.openings[0])
        assert word in texts(found)
        assert bool(found) == (power == "battery")
    assert power_blocks(view, replace(view.openings[0], fit=None)) == []


@pytest.mark.parametrize("which", ["sample", "large"])
def test_packets_carry_their_power_page(which, request, tmp_path):
    view = request.getfixturevalue(which)
    on_circuits = [o for o in view.openings if view.power.circuit_of(o.given.opening.id)]
    assert on_circuits
    for each in on_circuits[:: max(1, len(on_circuits) // 3)]:
        render_pdf(PACKET.build(view, each), tmp_path / "p.pdf")
        shown = " ".join(" ".join(p.extract_text() for p in PdfReader(tmp_path / "p.pdf").pages).split())
        result, its_circuit = view.power.circuit_of(each.given.opening.id)
        assert f"{result.supply.name}/{its_circuit.circuit.name}" in shown
        assert "Never bring mains onto the leaf" in shown


def test_the_calendar_and_a_packet_count_the_same_days(large):
    """Both count days that a pack surely lasts: one of 300.96 days is not promised for 301."""
    view = large
    document = BATTERY_CALENDAR.build(view, None)
    days = {row[0]: row[5] for row in table(document, "Weakest first").rows}
    assert len(days) == 10
    for each in view.openings:
        if each.mark in days:
            (said,) = [
                value
                for block in power_blocks(view, each)
                if isinstance(block, Facts)
                for label, value in block.pairs
                if label == "Life at the surveyed use"
            ]
            assert said == f"about {days[each.mark]} days"


def test_what_is_not_known_makes_standby_at_least_so_much():
    """0.4 A for 4 h by 1.25 and 1.25 are 2.5 Ah (form used with NFPA 72); what the other opening draws comes on top."""
    cat = parts()
    openings = {"a": connected("a", cat), "x": ConnectedOpening(connected("x", cat).given, None)}
    laid = [supply(battery="BAT", standby_hours=4.0, temperature_c=25.0)]
    for runs, told in (
        ([run("supply", "a")], "Standby: 4 h at 0.400 A: 2.50 Ah"),
        ([run("supply", "a"), run("supply", "x")], "Standby: 4 h at 0.400 A or more: 2.50 Ah or more"),
    ):
        power = work(runs, openings, cat, supplies=laid)
        view = view_of(power, {"a": openings["a"]}, cat)
        assert told in texts(blocks(POWER_SCHEDULE.build(view, None)))


def test_the_schedule_lists_what_feeds_openings_from_elsewhere(large):
    """Fifteen supplies with two circuits each, ten openings on a circuit, limiters of 2 A, a battery for standby."""
    rows = table(SCHEDULE.build(large, None), "Supplies").rows
    assert len(rows) == 15
    for name, _, number, standby, limiters, marks in rows:
        assert number == "PSU"
        assert "BAT" in standby
        assert limiters.count("2 A") == 2
        assert len(marks.split(", ")) == 20, name


@pytest.mark.parametrize(("far_m", "said"), [(20.0, "{may:.2f} V or more"), (40.0, "NOT PROVED, {may:.2f} V or more"),
                                             (90.0, "LOW")])  # fmt: skip
def test_of_each_load_it_is_said_whether_its_volts_are_proved(far_m, said):
    """A wants 10 V; what X draws beside it nobody knows. Near the supply A has them whatever X is, far off never."""
    cat = parts()
    openings = {"a": connected("a", cat, without=()), "x": ConnectedOpening(connected("x", cat).given, None)}
    view = view_of(work([run("supply", "a", far_m), run("a", "x")], openings, cat), openings, cat)
    node = next(each for each in view.power.supplies[0].circuits[0].nodes if each.minimum_v is not None)
    assert (node.minimum_v + node.margin_v >= 10.0) == (far_m < 90.0)
    assert (node.may_fall_v >= 10.0) == (far_m < 40.0)
    document = POWER_SCHEDULE.build(view, None)
    (row,) = table(document, "Circuit PS-s/C").rows
    assert row[-1] == said.format(may=node.may_fall_v)
    # Of one that has no load to stand in the table it is said below, once, with what is missing as people call it.
    stops = [block.text for block in blocks(document) if isinstance(block, Paragraph) and block.style == "stop"]
    assert stops == ["Not proved: X (a fit that counts)."]


def test_what_a_load_is_not_proved_for_is_named_as_the_catalogue_calls_it():
    view = yard([run("supply", "a"), run("supply", "b")], parts(UNIT={"supply_low_v": None}))
    shown = texts(blocks(POWER_SCHEDULE.build(view, None)))
    assert "Not proved: A (part UNIT: Supply, lowest voltage); B (part UNIT: Supply, lowest voltage)." in shown
    (held,) = unproved_blocks(view, view.openings[0])
    assert held.text.endswith("finds its voltage; needs part UNIT: Supply, lowest voltage.")
    assert unproved_blocks(yard([run("supply", "a")]), view.openings[0]) == []


def test_a_life_that_nobody_can_tell_is_unknown():
    """Nobody said how often the opening is used, nor when its cells went in."""
    cat = parts()
    for use, days in ((None, "unknown"), (30.0, "about ")):
        openings = {"a": ConnectedOpening(given(opening(id="a", mark="A", operations_per_day=use), cat=cat), fit())}
        view = view_of(PowerResult(), openings, cat)
        shown = texts(power_blocks(view, view.openings[0]))
        assert f"Life at the surveyed use: {days}" in shown
        assert "Change by: write down the day of installation" in shown


def test_whether_fewer_reels_would_do_is_said_where_it_is_not_proved_and_so_are_splices():
    """Three reels of 100 m where two may do; two pieces are longer than a reel. Bars are called bars."""
    pieces = (Piece("PS to A", 60.0), Piece("PS to B", 25.0)), (Piece("A to B", 99.5),)
    line = WireLine(
        "Main",
        "W18",
        "18 AWG",
        "stranded",
        170.0,
        184.5,
        100.0,
        3,
        3,
        fewest=2,
        cuts=pieces,
        spliced=2,
        pieces=pieces[0],
    )
    bars = replace(
        line, part="RW", kind="raceway", reel_m=2.0, reels=4, fewest=4, cuts=((Piece("A", 0.5),),), spliced=0
    )
    goods = tuple(Goods(each.kind, "Main", "", each.part, Decimal(3), "", line=each) for each in (line, bars))
    view = replace(EMPTY)
    view.__dict__["bill"] = Bill(goods)
    document = WIRE_LIST.build(view, None)
    said = [block.text for block in blocks(document) if isinstance(block, Paragraph)]
    assert "W18: 3 reels; whether 2 would do is not proved." in said
    assert "W18: 2 pieces are longer than a reel and are spliced; order them in one length." in said
    assert not [text for text in said if text.startswith("RW")]
    # 100 less 60 and 25; 100 less 99.5.
    wire = [row[1:] for row in table(document, "Reels").rows if row[1] == "W18"]
    assert wire == [("W18", 1, "PS to A, 60.0 m; PS to B, 25.0 m", 15.0), ("W18", 2, "A to B, 99.5 m", 0.5)]
    rows = {row[1]: row for row in table(document, "Wire").rows}
    assert rows["W18"][2:] == ("18 AWG stranded", 3, 170.0, 0.0, 184.5, 100.0, 3, "2 or more; 1 fewer not ruled out")
    assert (rows["RW"][2], rows["RW"][7:]) == ("surface raceway", (2.0, 4, "exact"))
    joined = replace(bars, fewest=3, spliced=2)
    view.__dict__["bill"] = Bill((Goods("raceway", "Main", "", "RW", Decimal(4), "", line=joined),))
    said = [block.text for block in blocks(WIRE_LIST.build(view, None)) if isinstance(block, Paragraph)]
    assert "RW: 4 bars; whether 3 would do is not proved." in said
    assert "RW: 2 pieces are longer than a bar and are joined; order them in one length." in said


def test_the_calendar_says_of_each_pack_what_is_known_and_what_ends_it():
    """1.44 + 0.20534 mAh a day and 0.16667 an operation, of 2000: 603.86 days at ten, 1215.55 at none.

    At -20 degrees an alkaline cell gives 0.15 of it (from memory): 90.58 days. With a unit that draws 10 uA a pack of
    0.24 + 0.20534 mAh a day would last 4491 days, but alkaline cells keep five years.
    """
    cat, frugal = parts(), parts(UNIT={"standing_ua": 10.0})
    in_use, packs = {"installed_on": "2025-03-01"}, {}
    for mark, its, more in (
        ("A", cat, {"operations_per_day": 10.0, **in_use}),
        ("B", cat, {"operations_per_day": None}),
        (
            "C",
            cat,
            {"operations_per_day": 10.0, "temperature_low_c": -20.0, **in_use, "building": "Main", "level": "1"},
        ),
        ("D", cat, {"operations_per_day": 0.0, **in_use}),
        ("E", cat, {"operations_per_day": 10.0}),
        ("S", frugal, {"operations_per_day": 0.0, **in_use}),
    ):
        packs[mark] = ConnectedOpening(given(opening(id=mark, mark=mark, **more), cat=its), fit())
    document = BATTERY_CALENDAR.build(view_of(PowerResult(), packs, cat), None)
    cells, nowhere = "6 × AA", "place not given"
    assert table(document, "Weakest first").rows == (
        ("C", "Main · 1", cells, 10, 3.31, 90, "2025-05-30", " cold *"),
        ("A", nowhere, cells, 10, 3.31, 603, "2026-10-25", ""),
        ("E", nowhere, cells, 10, 3.31, 603, "unknown", ""),
        ("D", nowhere, cells, 0, 1.65, 1215, "2028-06-28", ""),
        ("S", nowhere, cells, 0, 0.45, 4490, "2030-03-01", "shelf life"),
        ("B", nowhere, cells, "unknown", "unknown", "unknown", "unknown", ""),
    )
    days = [("2025-05-30", "C"), ("2026-10-25", "A"), ("2028-06-28", "D"), ("2030-03-01", "S")]
    assert [row[:2] for row in table(document, "By day").rows] == days
    assert [(event.day.isoformat(), event.key) for event in document.events] == [
        (day, f"battery-{mark}") for day, mark in days
    ]
    assert document.events[0].text == "About 90 days by charge at the surveyed use."
    assert table(document, "Without a day").rows == (("E", "opening: Installed on"), ("B", "opening: Operations a day"))
    said = texts(blocks(document))
    # Not 91: what is promised is what a pack surely lasts, on every line.
    for told in ("Openings on batteries: 6", "Shortest life: 90 days", "With a day of change: 4",
                 "Installation date unknown: 2"):  # fmt: skip
        assert told in said


def test_an_opening_of_which_one_lock_point_has_no_fit_has_no_power_page():
    view = yard([run("supply", "a")])
    (point,) = view.openings[0].points
    assert power_blocks(view, replace(view.openings[0], points=(point, PointFit(point.given, None)))) == []
    assert power_blocks(view, replace(view.openings[0], points=(point, point))) != []


def test_a_supply_on_which_nothing_hangs_yet_takes_no_goods():
    """Its circuit has neither opening nor run: it is listed, and nothing is put up for it."""
    for runs, titles in (([], ["Supplies"]), ([run("supply", "a")], ["Supplies", "Goods of supplies and wire"])):
        cat = parts()
        openings = {"a": connected("a", cat, without=())} if runs else {}
        document = SCHEDULE.build(view_of(work(runs, openings, cat), openings, cat), None)
        found = [block for block in blocks(document) if isinstance(block, Table)]
        assert [block.title for block in found if "upplies" in block.title] == titles
        (row,) = table(document, "Supplies").rows
        assert row[-1] == ("A" if runs else "nothing")

"""Pick list, cost, wire list, schedules and packets of random projects hold the same quantities, counted apart.

What is counted here is counted from what was drawn: supplies, circuits, runs and parts, never from what the program
made of them. A few projects in every run; ``HWSCHED_FUZZ=100`` draws a hundred.
"""

import os
import random
from collections import Counter
from dataclasses import dataclass, field, replace
from decimal import ROUND_CEILING, Decimal
from math import ceil, fsum

import pytest

from hwsched.documents.parts.cost_estimate import totals
from hwsched.documents.power.packet_power import power_blocks
from hwsched.documents.power.power_schedule import POWER_SCHEDULE
from hwsched.documents.power.wire_list import WIRE_LIST
from hwsched.documents.release.schedule import SCHEDULE
from hwsched.documents.stock.pick_list import PICK_LIST
from hwsched.documents.view import OpeningView, ProjectView
from hwsched.render.blocks import Table
from hwsched.values import Catalogue, Finding
from hwsched.values.terms import CostTerms
from hwsched.wiring import ConnectedOpening
from tests.documents.reading import blocks
from tests.rules.scenario import fp, part
from tests.wiring.power_rows import BATTERY, circuit, connected, parts, run, supply, work

PROJECTS = min(100, max(8, int(os.environ.get("HWSCHED_FUZZ", "0"))))
WASTE = Decimal("1.1")
FOOT = Decimal("0.3048")
REELS = {"WIRE": 100.0, "THIN": 50.0, "RW": 3.0}
PRICES = {
    "CAB-S": 40, "CAB-L": 65, "JB-4": 3, "JB-8": 5, "JB-40": 11, "F-1": 4, "F-2": 6, "BAT": 32, "THIN": 21, "RW": 12,
}  # fmt: skip


@dataclass
class Yard:
    """A drawn project: as the program sees it, and as it was drawn."""

    view: ProjectView
    wire_units: dict
    cabinet: str | None
    own_limiters: int
    supplies: list
    circuits: list
    runs: list
    leaf_wire: dict = field(default_factory=dict)
    raceway: dict = field(default_factory=dict)
    transfer: dict = field(default_factory=dict)


def drawn(seed):
    rng = random.Random(seed)
    cabinet, own = rng.choice(["bare", "bare", "included", None]), rng.choice([0, 0, 1, 2])
    units = {"WIRE": rng.choice(["M", "FT", "REEL"]), "THIN": rng.choice(["M", "REEL"]), "RW": rng.choice(["M", "BAR"])}
    cat = parts(
        add=(
            replace(BATTERY, list_price=Decimal(32)),
            part("CAB-S", "enclosure", 40, form="cabinet", batteries=1, battery_ah=7.0),
            part("CAB-L", "enclosure", 65, form="cabinet", batteries=2, battery_ah=18.0),
            part("JB-4", "enclosure", 3, form="junction-box", conductors=4),
            part("JB-8", "enclosure", 5, form="junction-box", conductors=8),
            part("JB-40", "enclosure", 11, form="junction-box", conductors=40),
            part("F-1", "limiter", 4, rating_a=1.0),
            part("F-2", "limiter", 6, rating_a=2.0),
            part("THIN", "wire", 21, gauge="22 AWG", conductors=2, stranding="solid", reel_m=50.0),
            part("RW", "surface-raceway", 12, inside_mm=10.0, width_mm=16.0, reel_m=3.0),
        ),
        PSU={"output_a": 20.0, "cabinet": cabinet, "input": "mains", "own_limiters": own, "own_limiter_a": 2.0},
        UNIT={"supply_rest_a": 0.01, "supply_a": 0.05},
    )
    cat = Catalogue({n: replace(p, unit=units.get(n, "EA")) for n, p in cat.parts.items()}, "")
    yard = Yard(None, units, cabinet, own, [], [], [])
    openings = {}
    for s in range(rng.randint(1, 4)):
        building = rng.choice(["Mill", "Shed"])
        more = {"battery": "BAT"} if rng.random() < 0.5 else {}
        yard.supplies.append(supply(f"s{s}", building=building, level=str(rng.randint(1, 2)), **more))
        for c in range(rng.randint(0, 2)):
            name = f"s{s}c{c}"
            limiter = rng.choice([1.0, 2.0, 2.0, None])
            yard.circuits.append(circuit(name, f"s{s}", limiter_a=limiter))
            nodes = ["supply"]
            for i in range(rng.randint(1, 5)):
                begin = rng.choice(nodes[-3:])
                facts = {"parallel": 2} if rng.random() < 0.15 else {}
                facts |= {"wire": "THIN"} if rng.random() < 0.2 else {}
                if rng.random() < 0.2:
                    yard.runs.append(run(begin, f"J{name}{i}", round(rng.uniform(1, 20), 2), name, **facts))
                    begin = f"J{name}{i}"
                mark = f"o{s}{c}{i}"
                yard.runs.append(run(begin, mark, round(rng.uniform(1, 30), 2), name, **facts))
                nodes.append(mark)
                brought = []
                if rng.random() < 0.6:
                    yard.transfer[mark] = 1
                    brought.append(fp("power-transfer", "LOOP"))
                if rng.random() < 0.5:
                    yard.leaf_wire[mark] = round(rng.uniform(0.5, 5), 2)
                    brought.append(fp("wire", "WIRE", yard.leaf_wire[mark]))
                if rng.random() < 0.3:
                    yard.raceway[mark] = round(rng.uniform(0.7, 1.2), 2)
                    brought.append(fp("raceway", "RW", yard.raceway[mark]))
                bare = connected(mark, cat, without=("power-transfer", "supply", "wire"), building=building, level="1")
                openings[mark] = ConnectedOpening(bare.given, replace(bare.fit, parts=(*bare.fit.parts, *brought)))
    power = work(yard.runs, openings, cat, supplies=yard.supplies, circuits=yard.circuits)
    error = Finding("made-up", "egress", "error", "Held.", "drawn", "Wait.")
    views = tuple(
        OpeningView(each.given, each.fit, (*power.of_opening(name), *((error,) if rng.random() < 0.2 else ())))
        for name, each in openings.items()
    )
    style = rng.choice(["mm", "fraction"])
    terms = CostTerms(currency="USD", labour_per_hour="60")
    yard.view = ProjectView("Yard", "working state 1", "2026-01-05", style, views, cat, power=power, terms=terms)
    return yard


# --- counted apart ------------------------------------------------------------------------------------------------


def counted(yard, going):
    """Count parts by building and number, and cut lengths by building and wire [m]; going: only what goes out."""
    ready = {view.given.opening.id for view in yard.view.openings if view.ready or not going}
    wrong = {
        found.supply_id
        for found in yard.view.power.findings
        if found.finding.severity == "error" and not found.opening_ids and going
    }
    pieces, metres = Counter(), {}
    for each in yard.supplies:
        own = [c for c in yard.circuits if c.supply_id == each.id]
        hanging = {r.opening_id for c in own for r in yard.runs if r.circuit_id == c.id and r.opening_id}
        if not hanging & ready or each.id in wrong:
            continue
        at = each.building
        pieces[at, "PSU"] += 1
        if each.battery:
            pieces[at, "BAT"] += 1
        if yard.cabinet == "bare":
            pieces[at, "CAB-S"] += 1
        limited = yard.own_limiters
        for c in own:
            if c.limiter_a == 2.0 and limited:
                limited -= 1
            elif c.limiter_a is not None:
                pieces[at, {1.0: "F-1", 2.0: "F-2"}[c.limiter_a]] += 1
            laid = [r for r in yard.runs if r.circuit_id == c.id]
            ends = [end for r in laid for end in (r.from_node, r.to_node) for _ in range(r.parallel or 1)]
            for node in {end for r in laid for end in (r.from_node, r.to_node)} - {"supply"}:
                if sum(node in (r.from_node, r.to_node) for r in laid) < 2:
                    continue
                joined = 2 * ends.count(node) + (2 if node[0] != "J" else 0)
                pieces[at, next(f"JB-{room}" for room in (4, 8, 40) if joined <= room)] += 1
            for r in laid:
                cuts = metres.setdefault((at, r.wire or "WIRE"), [])
                cuts += [Decimal(str(r.length_m)) * WASTE] * (r.parallel or 1)
    for view in yard.view.openings:
        mark, at = view.given.opening.id, view.given.opening.building
        if mark not in ready:
            continue
        pieces[at, "LOOP"] += yard.transfer.get(mark, 0)
        for drawn_of, number in ((yard.leaf_wire, "WIRE"), (yard.raceway, "RW")):
            if mark in drawn_of:
                metres.setdefault((at, number), []).append(Decimal(str(drawn_of[mark])))
    return +pieces, metres


def packed(cuts, number):
    """Say between how many reels or bars the least lies, and give it where there are few pieces: each set tried."""
    kerf = Decimal("0.003") if number == "RW" else Decimal(0)
    step = Decimal("0.001") if number == "RW" else Decimal("0.01")
    room = Decimal(str(REELS[number])) + kerf
    sizes = sorted(((cut / step).to_integral_value(ROUND_CEILING) * step + kerf for cut in cuts), reverse=True)
    assert all(size <= room for size in sizes)
    least = ceil(sum(sizes) / room)
    if len(sizes) > 9:
        return least, None

    def fits(at, left):
        if at == len(sizes):
            return True
        for i, free in enumerate(left):
            room_for = free >= sizes[at] and free not in left[:i]
            if room_for and fits(at + 1, (*left[:i], free - sizes[at], *left[i + 1 :])):
                return True
        return False

    return least, next(n for n in range(least, len(sizes) + 1) if fits(0, (room,) * n))


def ordered(yard, number, cuts, reels):
    """Say how much is ordered of a wire or raceway: metres, whole feet, or whole reels."""
    needed, unit = sum(cuts), yard.wire_units[number]
    if unit == "FT":
        return (needed / FOOT).to_integral_value(ROUND_CEILING)
    return needed if unit == "M" else Decimal(reels)


def rows(document, title):
    return [row for b in blocks(document) if isinstance(b, Table) and b.title == title for row in b.rows]


@pytest.mark.parametrize("seed", range(PROJECTS))
def test_all_pages_hold_what_is_laid(seed):
    yard = drawn(seed)
    view = yard.view
    pieces, metres = counted(yard, going=False)
    shown_m = 1.0 if view.length_style == "mm" else 0.3048

    # The wire list: length by wire, every piece on one reel, and as few reels as each set tried gives.
    wire_list = WIRE_LIST.build(view, None)
    reels = {}
    for row in rows(wire_list, "Wire"):
        key = row[0], row[1]
        needed = float(sum(metres[key]))
        assert row[6] * shown_m == pytest.approx(needed, abs=0.051)
        reels[key] = row[8]
        least, exact = packed(metres[key], row[1])
        assert row[8] >= least
        if exact is not None:
            assert row[8] == exact, key
            assert row[9] == "exact" or int(row[9].split()[0]) <= exact
    assert reels.keys() == metres.keys()
    cut = Counter()
    for building, number, _, told, left in rows(wire_list, "Reels"):
        lengths = [float(each.rsplit(", ", 1)[1].split()[0]) * shown_m for each in told.split("; ")]
        assert fsum(lengths) <= REELS[number] + 0.01 * len(lengths)
        assert left * shown_m == pytest.approx(REELS[number] - fsum(lengths), abs=0.02 * (1 + len(lengths)))
        cut[building, number] += len(lengths)
    assert cut == {key: len(cuts) for key, cuts in metres.items()}
    by_piece = Counter()
    for row in rows(wire_list, "Goods by the piece"):
        by_piece[row[0], row[3]] += row[4] if row[3] != "-" else 0
    assert +by_piece == pieces

    # The hardware schedule: goods by building; transfers stand under their openings' headings.
    wires = {key: ordered(yard, key[1], cuts, reels[key]) for key, cuts in metres.items()}
    expected = {key: float(n) for key, n in (pieces | wires).items() if key[1] != "LOOP"}
    goods = {(r[0], r[2]): r[3] for r in rows(SCHEDULE.build(view, None), "Goods of supplies and wire") if r[2] != "-"}
    assert goods == pytest.approx(expected)

    # The power schedule: what is put up with each supply.
    put_up = Counter()
    for row in rows(POWER_SCHEDULE.build(view, None), "Goods"):
        put_up[row[1]] += row[2] if row[1] != "-" else 0
    assert +put_up == sum_by_number({key: n for key, n in pieces.items() if key[1] != "LOOP"})

    # Cost: each part at its price, openings by their own fits, wire once and whole.
    price = {n: Decimal(p.list_price) for n, p in view.catalogue.parts.items() if p.list_price is not None}
    money = sum(price[key[1]] * n for key, n in pieces.items() if key[1] != "LOOP")
    money += sum(price[key[1]] * n for key, n in wires.items())
    for each in view.openings:
        own = [p for p in each.fit.parts if p.role not in ("wire", "raceway", "tool")]
        money += sum(price[p.part] * Decimal(str(p.quantity)) for p in own)
    found = totals(view, "building").values()
    assert sum(cost.parts for cost in found) == money

    # Packets: what ends at the opening and lies on its leaf; with runs to junctions that is all wire.
    in_packets = Counter()
    for each in view.openings:
        for block in power_blocks(view, each):
            if isinstance(block, Table) and block.title == "Wire of this opening":
                for count, number, _, length in block.rows:
                    in_packets[number] += count * length * shown_m if length != "" else 0
    junctions = Counter()
    for each in yard.runs:
        if each.opening_id is None:
            junctions[each.wire or "WIRE"] += each.length_m * 1.1 * (each.parallel or 1)
    for number in REELS:
        all_of_it = fsum(float(sum(cuts)) for key, cuts in metres.items() if key[1] == number)
        assert in_packets[number] + junctions[number] == pytest.approx(all_of_it, abs=0.01 * (1 + 2 * len(yard.runs)))

    # The pick list: what goes out, with the openings' own parts.
    pieces, metres = counted(yard, going=True)
    picked = Counter()
    for row in rows(PICK_LIST.build(view, None), "Totals"):
        if row[0]:
            picked[row[1]] = row[3]
    wanted = sum_by_number(pieces)
    for each in view.openings:
        for p in each.fit.parts if each.ready else ():
            if p.role not in ("wire", "raceway", "power-transfer", "tool"):
                wanted[p.part] += p.quantity
    for number in REELS:
        cuts = {key[0]: all_ for key, all_ in metres.items() if key[1] == number}
        if not cuts:
            assert number not in picked
        elif yard.wire_units[number] in ("M", "FT"):
            told = fsum(float(ordered(yard, number, each, 0)) for each in cuts.values())
            assert picked.pop(number) == pytest.approx(told, abs=0.01)
        else:
            tried = [packed(each, number) for each in cuts.values()]
            assert picked[number] >= sum(least for least, _ in tried)
            if all(exact is not None for _, exact in tried):
                assert picked[number] == sum(exact for _, exact in tried)
            del picked[number]
    assert picked == wanted


def sum_by_number(pieces):
    found = Counter()
    for (_, number), quantity in pieces.items():
        found[number] += quantity
    return found

"""Small cases and fits for tests of rules: one of everything that serves, changed fact by fact.

Lengths in mm. The parts are invented; what is published or common practice stands beside the test that uses it.
"""

from dataclasses import replace
from functools import cache

from hwsched.values import (
    BatteryLife,
    CablePath,
    Catalogue,
    Chosen,
    Fit,
    FitPart,
    Hole,
    Item,
    Leaf,
    Opening,
    OpeningInput,
    Part,
    Placement,
    Settings,
    Stack,
)

INCH = 25.4


def part(number, kind, price=10.0, *, superseded_by="", kit=(), currency="USD", **attributes):
    return Part(
        number,
        kind,
        f"{kind} {number}",
        list_price=price,
        currency=currency,
        superseded_by=superseded_by,
        kit=kit,
        attributes=attributes,
    )


@cache
def parts():
    """One part of each kind that serves the usual opening; made once, since parts are never changed."""
    lead = {"lead_mm": 228.6, "connector": "p4", "lead_diameter_mm": 2.5, "bend_radius_mm": 10.0}
    # By common practice, so that what practice is taken for where a template is silent comes to the same.
    bored = {"lead_hole_mm": 9.525, "lead_hole_up_deg": 45.0, "lead_hole_edge_deg": 15.0, "bolt_hole_mm": 7.9375}
    template = {
        "hole_above_existing_mm": 34.925,
        "plate_above_existing_mm": 19.05,
        "hole_from_cylinder_mm": 63.5,
        "channel_entry_mm": 9.525,
        "channel_diameter_mm": 9.525,
        "channel_angle_deg": 10.0,
        "screw_places": "6, 6; 74, 6; 6, 154; 74, 154",
    }
    listed = {"exposure": "exterior", "fire_listed": True}
    use = {
        "standing_ua": 60.0,
        "operation_ma": 150.0,
        "operation_s": 4.0,
        "supply_low_v": 10.0,
        "supply_high_v": 14.0,
        "supply_a": 0.4,
        "draws": "current",
        "cell": "AA",
        "cells": 6,
        "coin_cell": "K32",
        "temperature_low_c": -20.0,
        "fire_listed": True,
        "mates_with": "p4",
        "screw_size": "#6",
        "screws": 4,
    }
    return [
        part(
            "CYL",
            "mortise-cylinder",
            100.0,
            length_mm=25.4,
            cam_offset_mm=0.0,
            thread_pitch_mm=25.4 / 32,
            thread_diameter_mm=29.21,
            cam_fixing="f2",
            **lead,
            **listed,
        ),
        part(
            "RIM",
            "rim-cylinder",
            body_length_mm=25.4,
            tail_form="flat-tail",
            tail_length_mm=76.2,
            tail_step_mm=3.175,
            **lead,
            **listed,
        ),
        part(
            "EURO",
            "euro-cylinder",
            key_half_mm=30.0,
            inside_half_mm=30.0,
            cam_form="euro",
            thumb_turn=True,
            **lead,
            **listed,
        ),
        part(
            "HALF",
            "euro-cylinder",
            key_half_mm=30.0,
            inside_half_mm=10.0,
            cam_form="euro",
            thumb_turn=False,
            **lead,
            **listed,
        ),
        part("CAB", "cabinet-lock", thread_diameter_mm=19.05, grip_low_mm=12.0, grip_mm=22.0, **lead),
        part(
            "READ",
            "fixed-reader",
            hole_mm=28.0,
            depth_mm=32.0,
            face_width_mm=44.0,
            face_height_mm=44.0,
            **lead,
            **listed,
        ),
        part(
            "BORED",
            "bored-lever-lock",
            backset_mm=69.85,
            cross_bore_mm=53.975,
            edge_bore_mm=25.4,
            leaf_low_mm=34.925,
            leaf_high_mm=50.8,
            function="office",
            trim_diameter_mm=80.0,
            **bored,
            **lead,
            **listed,
        ),
        part(
            "GATE",
            "gate-lock",
            mounting="bolt-on",
            case_width_mm=90.0,
            case_height_mm=150.0,
            case_depth_mm=30.0,
            back_hole_mm=19.05,
            **lead,
            exposure="exterior",
        ),
        part(
            "UNIT",
            "surface-unit",
            200.0,
            housing="wide",
            plate_width_mm=80.0,
            plate_height_mm=160.0,
            depth_mm=32.0,
            window_x0_mm=10.0,
            window_y0_mm=15.0,
            window_x1_mm=70.0,
            window_y1_mm=60.0,
            connector_x_mm=40.0,
            connector_y_mm=80.0,
            slack_mm=60.0,
            exposure="interior",
            glass_mount=False,
            **template,
            **use,
        ),
        part(
            "EDGE",
            "edge-unit",
            300.0,
            pocket_length_mm=349.25,
            pocket_depth_mm=44.45,
            pocket_width_mm=17.4625,
            connector_y_mm=20.0,
            service_mm=30.0,
            bridge_hole_mm=9.525,
            **use,
        ),
        part("CAM", "cam", fits="f2", cam_form="straight"),
        part("TAIL", "tailpiece", fits="f2", tail_form="flat-tail", length_mm=76.2, step_mm=3.175),
        part("COL", "collar", height_mm=3.175, inner_diameter_mm=29.5),
        part("RING", "ring", height_mm=1.5875, inner_diameter_mm=29.5),
        part("EXT", "lead-extension", length_mm=150.0, connector="p4", mates_with="p4"),
        part(
            "CELL",
            "primary-battery",
            1.0,
            designation="AA",
            voltage_v=1.5,
            capacity_mah=2500.0,
            usable_share=0.8,
            self_discharge_share=0.03,
            temperature_low_c=-20.0,
            chemistry="alkaline",
        ),
        part("COIN", "coin-cell", 1.0, designation="K32", voltage_v=3.0, capacity_mah=220.0),
        part(
            "PSU",
            "power-supply",
            80.0,
            output_v=12.0,
            output_a=2.5,
            tolerance_share=0.05,
            class_2=True,
            regulated=True,
            current="dc",
        ),
        part(
            "LOOP", "power-transfer", form="door-loop", conductors=4, gauge="22 AWG", length_mm=457.2, fire_listed=True
        ),
        part("WIRE", "wire", 0.5, gauge="18 AWG", conductors=2, stranding="stranded", outside_diameter_mm=5.2),
        part("STRIKE", "electric-strike", supply_v=12.0, holding_a=0.35, fail="fail-secure", fire_listed=True),
        part("MAG", "electromagnetic-lock", supply_v=12.0, holding_a=0.5),
        # 3/8 in: what stands before a case of 1 in in the middle of a leaf of 1 3/4 in, (44.45 - 25.4) / 2 = 9.525.
        part("SCREW", "fastener", 0.1, form="wood-screw", size="#6", length_mm=9.525, leaf_material="wood"),
        part("PLUG", "fastener", 0.1, form="screw-and-plug", size="#6", wall_build="masonry"),
        part("PAD", "fastener", 5.0, form="adhesive", size="pad", leaf_material="glass"),
        part("BIT", "tool", form="hole-saw", diameter_mm=12.7),
        part("DRILL", "tool", form="twist-drill", diameter_mm=6.35),
        part("MORT", "tool", form="mortiser"),
        part("KEY", "credential", form="electronic-key"),
        part("PROG", "credential", form="programming-key"),
    ]


def catalogue(*, drop=(), add=(), **changed):
    """The usual parts, some dropped, some added, some with changed attributes: ``UNIT={"screws": 0}``."""
    found = {}
    for each in (*parts(), *add):
        if each.number in drop:
            continue
        change = changed.get(each.number)
        if not change:
            found[each.number] = each
            continue
        fields = {k: v for k, v in change.items() if k in ("superseded_by", "list_price", "kit", "currency", "kind")}
        attributes = {**each.attributes, **{k: v for k, v in change.items() if k not in fields}}
        found[each.number] = replace(each, attributes=attributes, **fields)
    return Catalogue(found, "test")


def opening(**facts):
    usual = {
        "form": "single",
        "hand": "LH",
        "rating": "none",
        "stair": False,
        "egress": "none",
        "accessible": False,
        "exposure": "interior",
        "temperature_low_c": 20.0,
        "operations_per_day": 30.0,
        "frame_material": "hollow-metal",
        "frame_stop_mm": 15.875,
        "wall_build": "masonry",
        "stair_release": "both",
        "code": "ibc",
        "code_edition": 2021,
        "occupancy_group": "B",
        "occupant_load": 20,
        "storeys_served": 3,
        "sprinkler": True,
        "fire_alarm": True,
        "access_policy": "staff keys, events kept",
    }
    if facts.get("egress") in ("egress", "panic"):
        # As most doors: people leave out of the inside, where no key is needed.
        usual["egress_toward"] = "key"
    if facts.get("form") in ("lift", "turnstile"):
        usual |= {"controller_output": "dry-contact", "connected_by": "lift-contractor", "fire_recall": True}
        usual["reader_aside_mm"] = 150.0
    return Opening(**{"id": "o", "mark": "1", **usual, **facts})


def leaf(**facts):
    usual = {
        "position": "single",
        "width_mm": 914.4,
        "height_mm": 2133.6,
        "thickness_mm": 44.45,
        "material": "wood",
        "construction": "flush",
        "undercut_mm": 10.0,
        "self_closes": True,
        "unused_holes": "none",
    }
    return Leaf("l", **{**usual, **facts})


def lock(form="mortise", **facts):
    usual = {
        "kind": "lock",
        "lock_form": form,
        "function": "office",
        "backset_mm": 69.85,
        "cylinder_height_mm": 1000.0,
        "case_height_mm": 150.0,
        "case_depth_mm": 105.0,
        "case_width_mm": 25.4,
        "front_height_mm": 150.0,
        "front_width_mm": 25.4,
        "case_above_mm": 44.45,
        "trim_key_mm": 0.0,
        "trim_inside_mm": 0.0,
        "thumb_turn": False,
        "cam_form": "straight",
        "latch_form": "latch",
    }
    if form == "rim":
        usual |= {"cam_form": "flat-tail"}
    if form == "euro-profile":
        usual |= {
            "cam_form": "euro",
            "case_width_mm": 14.0,
            "trim_key_mm": 6.0,
            "trim_inside_mm": 6.0,
            "thumb_turn": True,
        }
    if form == "bored":
        usual |= {
            "cross_bore_mm": 53.975,
            "edge_bore_mm": 25.4,
            "case_height_mm": None,
            "case_width_mm": None,
            "case_above_mm": None,
            "case_depth_mm": None,
            "front_height_mm": None,
            "front_width_mm": None,
            "cam_form": None,
        }
    return Item("k", **{**usual, **facts})


# A pull bolted 15 from its ends; levers, closers and exit devices of which only what a test says enters the leaf.
TOLD = {
    "pull": {"bolt_inset_mm": 15.0},
    "lever": {"bolt_inset_mm": 0.0},
    "closer": {"bolt_inset_mm": 0.0},
    "exit-device": {"bolt_inset_mm": 0.0, "device_form": "rim"},
}


def item(kind, x=500.0, y=1500.0, w=100.0, h=100.0, **facts):
    usual = {"face": "inside", "disposition": "keep", **TOLD.get(kind, {})}
    return Item(f"i-{kind}", kind=kind, x_mm=x, y_mm=y, width_mm=w, height_mm=h, **{**usual, **facts})


def given(o=None, lf=None, lk=None, items=(), *, cat=None, settings=None, chosen=(), placed=None, leaves=None):
    return OpeningInput(
        o or opening(),
        leaves if leaves is not None else (lf or leaf(),),
        ((lk or lock()), *items) if lk != "none" else tuple(items),
        cat or catalogue(),
        settings or Settings(length_style="mm"),
        tuple(chosen),
        placed,
    )


_KINDS = {p.number: p.kind for p in parts()}


def fp(role, number, quantity=1.0, kind=None):
    return FitPart(role, number, kind or _KINDS.get(number, "other"), quantity, "test")


def place(x=30.0, y=1010.0, **facts):
    """A plate clear of everything, its hole at (69.85, 1030)."""
    usual = {
        "leaf": "single",
        "face": "inside",
        "pattern": "straight",
        "width_mm": 80.0,
        "height_mm": 160.0,
        "hole_x_mm": 69.85,
        "hole_y_mm": y + 20.0,
    }
    return Placement(x_mm=x, y_mm=y, **{**usual, **facts})


def cable(needed=200.0, available=228.6, slack_mm=60.0):
    points = ((69.85, 1000.0, 22.0), (69.85, 1000.0, 0.0), (69.85, 1100.0, 0.0))
    return CablePath(points, needed, available, slack_mm)


def hole(diameter=12.7, purpose="cable", **facts):
    usual = {
        "name": "lead",
        "leaf": "single",
        "face": "inside",
        "x_mm": 69.85,
        "y_mm": 1030.0,
        "depth_mm": 9.5,
        "pilot_mm": 6.35,
    }
    return Hole(**{**usual, "diameter_mm": diameter, "purpose": purpose, **facts})


def fit(*more, lock_number="CYL", role="cylinder", unit="UNIT", power="battery", without=(), **facts):
    """A complete fit of the usual parts; `more` adds parts, `without` drops roles."""
    usual = [fp(role, lock_number), fp("cam", "CAM"), fp("collar", "COL"), fp("unit", unit), fp("fastener", "SCREW", 4)]
    if power == "battery":
        usual += [fp("battery", "CELL", 6), fp("coin-cell", "COIN")]
    elif power == "supply":
        usual += [fp("supply", "PSU"), fp("power-transfer", "LOOP"), fp("wire", "WIRE", 20), fp("coin-cell", "COIN")]
    if lock_number != "CYL":
        usual = [p for p in usual if p.role not in ("cam", "collar")]
    kept = tuple(p for p in (*usual, *more) if p.role not in without)
    default = {
        "stack": Stack("threaded", 3.175, 0.0),
        "placement": place(),
        "cable": cable(),
        "holes": (hole(),),
        "battery": BatteryLife(300.0, 6.44, 2500.0, 0.8) if power == "battery" else None,
    }
    return Fit("fits", parts=kept, power=power, **{**default, **facts})


def chosen(role, number):
    return Chosen(role, number)

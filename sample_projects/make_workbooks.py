"""Writes the sample's two workbooks: an invented catalogue and a survey of three invented buildings.

The survey is typed as a surveyor types: mixed spellings of lengths, gaps, continuation rows for existing items, and two
wrong cells that the import must name and leave out. Run from the repository: ``python sample_projects/make_workbooks.py``.
"""

import random
from pathlib import Path

from openpyxl import Workbook
from openpyxl.styles import Font

from hwsched.exchange.parts.catalogue_book import write_catalogue
from hwsched.values import Part

HERE = Path(__file__).parent
INCH = 25.4
NORTH = "Tarnside Lock Supply"
SOUTH = "Fennel Yard Trading"
POWER = "Ropewalk Electric Stores"


_ROUND = {"lead_diameter_mm": 2.8, "bend_radius_mm": 9.0, "connector": "tern-4"}
_FLAT = {"lead_diameter_mm": 3.4, "bend_radius_mm": 12.0, "connector": "gull-6"}
_THIN = {"lead_diameter_mm": 2.0, "bend_radius_mm": 7.0, "connector": "wren-3"}
"""Three leads of three makers: no two of their plugs go into one socket."""
TEMPLATES = {
    "ARC-UW": {"hole_above_existing_mm": 36.0, "plate_above_existing_mm": 20.0, "hole_from_cylinder_mm": 60.0,
               "channel_entry_mm": 11.0, "channel_diameter_mm": 9.525, "channel_angle_deg": 12.0},
    "ARC-UN": {"hole_above_existing_mm": 38.0, "plate_above_existing_mm": 16.0, "hole_from_cylinder_mm": 66.0,
               "channel_entry_mm": 9.0, "channel_diameter_mm": 9.525, "channel_angle_deg": 11.0},
    "ARC-UX": {"hole_above_existing_mm": 40.0, "plate_above_existing_mm": 24.0, "hole_from_cylinder_mm": 72.0,
               "channel_entry_mm": 12.0, "channel_diameter_mm": 9.525, "channel_angle_deg": 14.0},
    "ARC-UC": {"hole_above_existing_mm": 30.0, "plate_above_existing_mm": 16.0, "hole_from_cylinder_mm": 48.0,
               "channel_entry_mm": 8.0, "channel_diameter_mm": 7.9375, "channel_angle_deg": 15.0},
    "ARC-UE": {"bridge_hole_mm": 9.525},
}  # fmt: skip
"""What the template says that comes with each unit."""


def part(number, kind, description, price, supplier=NORTH, finish="", unit="EA", kit=(), **attributes):
    """Return one catalogue entry."""
    return Part(
        number=number, kind=kind, description=description, supplier=supplier, finish=finish, unit=unit,
        list_price=price, currency="USD", attributes=TEMPLATES.get(number, {}) | attributes, kit=tuple(kit),
    )  # fmt: skip


def cylinders():
    """Return cylinders and locks that carry the reader."""
    parts = []
    for sixteenths, price in ((14, 168), (16, 168), (18, 170), (20, 172), (22, 174), (24, 176), (28, 181), (32, 186)):
        length = sixteenths / 16 * INCH
        parts.append(
            part(
                f"ARC-M{sixteenths:02d}", "mortise-cylinder", f"Mortise cylinder, {_inches(sixteenths)} in, reader in the head",
                price, finish="626", length_mm=length, cam_offset_mm=0.0, thread_pitch_mm=INCH / 32,
                thread_diameter_mm=29.21, head_diameter_mm=34.0, cam_fixing="twin-2", lead_mm=240.0, **_ROUND,
                exposure="interior", fire_listed=True,
            )
        )  # fmt: skip
    for sixteenths, price in ((18, 205), (20, 207), (24, 211)):
        parts.append(
            part(
                f"ARC-MX{sixteenths:02d}", "mortise-cylinder", f"Mortise cylinder, {_inches(sixteenths)} in, sealed head",
                price, finish="630", length_mm=sixteenths / 16 * INCH, cam_offset_mm=0.0, thread_pitch_mm=INCH / 32,
                thread_diameter_mm=29.21, head_diameter_mm=35.0, cam_fixing="twin-2", lead_mm=265.0, **_ROUND,
                exposure="exterior", fire_listed=True,
            )
        )  # fmt: skip
    for tail, form, price in ((76.2, "flat-tail", 166), (76.2, "cross-tail", 169), (114.3, "flat-tail", 171)):
        parts.append(
            part(
                f"ARC-R{round(tail)}{'F' if form == 'flat-tail' else 'C'}", "rim-cylinder",
                f"Rim cylinder, {'flat' if form == 'flat-tail' else 'cross'} tailpiece {_inches(round(tail / INCH * 16))} in",
                price, finish="626", body_length_mm=25.4, tail_form=form, tail_length_mm=tail, tail_step_mm=3.175,
                body_diameter_mm=29.0, head_diameter_mm=34.0, lead_mm=216.0, **_ROUND, exposure="interior",
                fire_listed=True,
            )
        )  # fmt: skip
    for key, inside in (
        (30, 30),
        (30, 35),
        (35, 30),
        (35, 35),
        (40, 30),
        (30, 40),
        (40, 40),
        (45, 35),
        (45, 45),
        (30, 10),
        (40, 10),
    ):
        half = inside == 10
        parts.append(
            part(
                f"ARC-E{key}{inside}", "euro-cylinder",
                f"Euro-profile {'half ' if half else ''}cylinder {key}/{inside}, reader on the key side", 158 + key + inside / 2,
                supplier=SOUTH, finish="nickel", key_half_mm=float(key), inside_half_mm=float(inside), cam_form="euro",
                lead_mm=190.0, lead_diameter_mm=3.4, bend_radius_mm=12.0, connector="tern-4", thumb_turn=not half, exposure="interior", fire_listed=True,
            )
        )  # fmt: skip
    parts += [
        part("ARC-C22", "cabinet-lock", "Cabinet bolt with reader, panels of 13 to 22 mm", 96, finish="626", thread_diameter_mm=20.0,
             grip_low_mm=13.0, grip_mm=22.0, bolt_throw_mm=13.0, lead_mm=160.0, **_THIN),
        part("ARC-C32", "cabinet-lock", "Cabinet bolt with reader, panels of 20 to 32 mm", 99, finish="626", thread_diameter_mm=20.0,
             grip_low_mm=20.0, grip_mm=32.0, bolt_throw_mm=13.0, lead_mm=180.0, **_THIN),
        part("ARC-F28", "fixed-reader", "Fixed reader without rotation, 1-1/8 in hole", 88, finish="630", hole_mm=28.575,
             depth_mm=36.0, face_width_mm=48.0, face_height_mm=48.0, lead_mm=550.0, **_ROUND, exposure="exterior"),
        part("ARC-F28L", "fixed-reader", "Fixed reader, long lead", 97, finish="630", hole_mm=28.575, depth_mm=36.0,
             face_width_mm=48.0, face_height_mm=48.0, lead_mm=1400.0, **_ROUND, exposure="exterior"),
    ]  # fmt: skip
    for backset, function, price in (
        (69.85, "office", 312),
        (69.85, "storeroom", 312),
        (69.85, "classroom", 318),
        (60.325, "storeroom", 309),
        (60.325, "office", 309),
        (69.85, "passage", 300),
    ):
        parts.append(
            part(
                f"ARC-B{'70' if backset > 65 else '60'}{function[0].upper()}", "bored-lever-lock",
                f"Electronic bored lever lock, {function}, backset {_inches(round(backset / INCH * 16))} in", price, finish="626",
                backset_mm=backset, cross_bore_mm=53.975, edge_bore_mm=25.4, leaf_low_mm=34.0, leaf_high_mm=52.0,
                latch_length_mm=backset + 6, bolt_hole_mm=7.9375, function=function, trim_diameter_mm=84.0, lead_mm=232.0,
                lead_hole_mm=9.525, lead_hole_up_deg=45.0, lead_hole_edge_deg=14.0, **_ROUND,
                exposure="interior", fire_listed=True,
            )
        )  # fmt: skip
    parts += [
        part("ARC-G1", "gate-lock", "Electronic gate lock, bolt-on", 342, supplier=SOUTH, finish="galvanised", mounting="bolt-on",
             throw_mm=24.0, case_width_mm=92.0, case_height_mm=150.0, case_depth_mm=30.0, lead_mm=320.0, back_hole_mm=20.0, **_FLAT,
             exposure="exterior"),
        part("ARC-G2", "gate-lock", "Electronic gate lock, weld-on box", 351, supplier=SOUTH, finish="raw steel", mounting="weld-on",
             throw_mm=20.0, case_width_mm=98.0, case_height_mm=168.0, case_depth_mm=36.0, lead_mm=360.0, back_hole_mm=22.0, **_FLAT,
             exposure="exterior"),
    ]  # fmt: skip
    return parts


def stack_parts():
    """Return cams, tailpieces, collars and rings."""
    parts = [
        part(f"ARC-K{form[0].upper()}", "cam", f"Cam, {form}", 4.2, fits="twin-2", cam_form=form, radius_mm=radius)
        for form, radius in (("straight", 14.0), ("clover", 13.0), ("hook", 15.5))
    ]
    parts += [
        part("ARC-T76F", "tailpiece", "Tailpiece conversion, flat, 3 in", 6.5, fits="twin-2", tail_form="flat-tail", length_mm=76.2, step_mm=3.175),
        part("ARC-T76C", "tailpiece", "Tailpiece conversion, cross, 3 in", 6.9, fits="twin-2", tail_form="cross-tail", length_mm=76.2, step_mm=3.175),
    ]  # fmt: skip
    for thirty_seconds in (4, 6, 8, 10, 12):
        parts.append(
            part(f"ARC-L{thirty_seconds:02d}", "collar", f"Collar, {_inches(thirty_seconds / 2)} in", 5.5, finish="626",
                 height_mm=thirty_seconds / 32 * INCH, inner_diameter_mm=29.6, outer_diameter_mm=40.0)
        )  # fmt: skip
    for thirty_seconds in (1, 2, 4):
        parts.append(
            part(f"ARC-N{thirty_seconds}", "ring", f"Blocking ring, {_inches(thirty_seconds / 2)} in", 1.9, finish="626",
                 height_mm=thirty_seconds / 32 * INCH, inner_diameter_mm=29.6)
        )  # fmt: skip
    return parts


def units():
    """Return control units, what covers them and what connects to them."""
    return [
        part("ARC-UW", "surface-unit", "Control unit, broad housing", 265, kit=[("ARC-HW", 1)], housing="wide",
             plate_width_mm=80.0, plate_height_mm=146.0, depth_mm=31.0, window_x0_mm=14.0, window_y0_mm=14.0,
             window_x1_mm=66.0, window_y1_mm=70.0, connector_x_mm=40.0, connector_y_mm=94.0, mates_with="tern-4",
             slack_mm=55.0, cell="AA-L", cells=4, pack_low_v=3.6, pack_high_v=6.8, coin_cell="C32",
             standing_ua=48.0, operation_ma=118.0, operation_s=3.05, screw_size="#6", screws=4,
             screw_places="7, 9; 73, 9; 7, 137; 73, 137", exposure="interior", temperature_low_c=-10.0, fire_listed=True,
             glass_mount=False, supply_low_v=10.0, supply_high_v=15.0, supply_a=0.32, supply_inrush_a=0.32, draws="current", terminal_plus="+12 V",
             terminal_minus="0 V", signal_opens="Green ring, two rising notes", signal_refuses="Amber ring, one low note",
             signal_weak="Amber ring three times, then what it tells otherwise"),
        part("ARC-UN", "surface-unit", "Control unit, slim housing", 279, kit=[("ARC-HN", 1)], housing="narrow",
             plate_width_mm=38.0, plate_height_mm=218.0, depth_mm=28.0, window_x0_mm=9.0, window_y0_mm=12.0,
             window_x1_mm=29.0, window_y1_mm=58.0, connector_x_mm=19.0, connector_y_mm=84.0, mates_with="tern-4",
             slack_mm=45.0, cell="LM-18", cells=2, pack_low_v=4.0, pack_high_v=6.8, standing_ua=30.0, operation_ma=90.0,
             operation_s=2.4, screw_size="#8", screws=3, screw_places="7, 11.5; 31, 11.5; 19, 209", exposure="interior",
             temperature_low_c=-25.0, fire_listed=True, glass_mount=False, supply_low_v=10.0, supply_high_v=26.0,
             supply_a=0.24, supply_inrush_a=0.24, draws="current", terminal_plus="L+", terminal_minus="L-", signal_opens="White bar runs upward, a click",
             signal_refuses="Red bar stands, two clicks", signal_weak="White bar runs upward by half"),
        part("ARC-UX", "surface-unit", "Control unit, sealed housing", 318, supplier=SOUTH, kit=[("FEN-HX", 1)],
             housing="wide", plate_width_mm=88.0, plate_height_mm=158.0, depth_mm=40.0, window_x0_mm=16.0,
             window_y0_mm=15.0, window_x1_mm=72.0, window_y1_mm=66.0, connector_x_mm=44.0, connector_y_mm=98.0,
             mates_with="gull-6", slack_mm=70.0, cell="AA-F", cells=8, pack_low_v=7.2, pack_high_v=15.0, coin_cell="C50",
             standing_ua=60.0, operation_ma=82.0, operation_s=3.4, screw_size="#8", screws=6,
             screw_places="8, 8; 80, 8; 8, 79; 80, 79; 8, 150; 80, 150", exposure="exterior", temperature_low_c=-35.0,
             fire_listed=False, glass_mount=False, supply_low_v=9.0, supply_high_v=28.0, supply_a=0.3, supply_inrush_a=0.3, draws="current",
             terminal_plus="P", terminal_minus="M", signal_opens="Blue lamp, one long note",
             signal_refuses="Blue lamp off, three short notes", signal_weak="One short note every minute"),
        part("ARC-UG", "surface-unit", "Control unit for glass, bonded pad", 298, housing="wide", plate_width_mm=86.0,
             plate_height_mm=150.0, depth_mm=38.0, window_x0_mm=0.0, window_y0_mm=0.0, window_x1_mm=86.0, window_y1_mm=20.0,
             connector_x_mm=43.0, connector_y_mm=20.0, mates_with="tern-4", slack_mm=35.0, cell="BC-L", cells=3,
             pack_low_v=2.7, pack_high_v=5.2, standing_ua=55.0, operation_ma=150.0, operation_s=3.0, screw_size="",
             screws=0, exposure="interior", temperature_low_c=0.0, fire_listed=False, glass_mount=True,
             supply_low_v=10.0, supply_high_v=15.0, supply_a=0.36, supply_inrush_a=0.36, draws="current", terminal_plus="+12 V", terminal_minus="0 V",
             signal_opens="Whole rim green, no tone", signal_refuses="Whole rim red, no tone",
             signal_weak="Rim yellow for five seconds"),
        part("ARC-UE", "edge-unit", "Control unit for the leaf's edge", 334, pocket_length_mm=322.0, pocket_depth_mm=41.0,
             pocket_width_mm=18.0, connector_y_mm=24.0, mates_with="tern-4", service_mm=25.0, cell="AA-F", cells=4,
             pack_low_v=3.6, pack_high_v=7.6, standing_ua=40.0, operation_ma=115.0, operation_s=2.8, screw_size="#8",
             screws=2, temperature_low_c=-30.0, fire_listed=False, supply_low_v=10.0, supply_high_v=15.0, supply_a=0.3, supply_inrush_a=0.3, draws="current",
             terminal_plus="+12 V", terminal_minus="0 V", signal_opens="No light, one rising call",
             signal_refuses="No light, one falling call", signal_weak="Rising call twice"),
        part("ARC-UC", "surface-unit", "Control unit, small box for cabinets", 172, supplier=SOUTH, kit=[("FEN-HC", 1)],
             housing="small", plate_width_mm=58.0, plate_height_mm=104.0, depth_mm=24.0, window_x0_mm=0.0, window_y0_mm=0.0,
             window_x1_mm=58.0, window_y1_mm=40.0, connector_x_mm=29.0, connector_y_mm=52.0, mates_with="wren-3",
             slack_mm=40.0, cell="AAA-L", cells=3, pack_low_v=2.7, pack_high_v=5.2, standing_ua=20.0, operation_ma=85.0,
             operation_s=1.8, screw_size="#6", screws=2, screw_places="29, 6; 29, 98", exposure="interior",
             temperature_low_c=0.0, fire_listed=False, glass_mount=False, signal_opens="Green point, no tone",
             signal_refuses="Red point, one buzz", signal_weak="Green and red together"),
        part("ARC-XT150", "lead-extension", "Lead extension, 160 mm", 11.5, length_mm=160.0, connector="tern-4", mates_with="tern-4"),
        part("ARC-XT300", "lead-extension", "Lead extension, 320 mm", 13.0, length_mm=320.0, connector="tern-4", mates_with="tern-4"),
        part("ARC-GW", "mounting", "Gasket for the sealed housing", 3.8, supplier=SOUTH, form="gasket", for_part="ARC-UX", plate_width_mm=88.0, plate_height_mm=158.0, thickness_mm=1.6),
        part("ARC-PW", "mounting", "Cover plate over old trim, broad", 14.0, form="mounting-plate", for_part="ARC-UW", plate_width_mm=94.0, plate_height_mm=192.0, thickness_mm=1.5),
        part("ARC-PC", "mounting", "Cover for the slim housing", 9.0, form="cover", for_part="ARC-UN", plate_width_mm=38.0, plate_height_mm=218.0, thickness_mm=1.2),
        part("ARC-HW", "consumable", "Screw bag of the broad housing", 2.0, form="other"),
        part("ARC-HN", "consumable", "Screw bag of the slim housing", 2.0, form="other"),
        part("FEN-HX", "consumable", "Screw bag of the sealed housing", 2.4, supplier=SOUTH, form="other"),
        part("FEN-HC", "consumable", "Screw bag of the small box", 1.1, supplier=SOUTH, form="other"),
    ]  # fmt: skip


def power():
    """Return cells, supplies, wire and electric release."""
    return [
        part("ROP-AAL", "primary-battery", "AA alkaline cell", 0.9, supplier=POWER, designation="AA-L", voltage_v=1.5, capacity_mah=2200.0, usable_share=0.8, self_discharge_share=0.03, chemistry="alkaline", end_v=0.9, temperature_low_c=-20.0),
        part("ROP-AAF", "primary-battery", "AA lithium iron disulfide cell", 2.6, supplier=POWER, designation="AA-F", voltage_v=1.5, capacity_mah=3000.0, usable_share=0.85, self_discharge_share=0.015, chemistry="lithium-iron-disulfide", end_v=0.9, temperature_low_c=-35.0),
        part("ROP-AAAL", "primary-battery", "AAA alkaline cell", 0.7, supplier=POWER, designation="AAA-L", voltage_v=1.5, capacity_mah=1000.0, usable_share=0.8, self_discharge_share=0.03, chemistry="alkaline", end_v=0.9, temperature_low_c=-20.0),
        part("ROP-BCL", "primary-battery", "C alkaline cell", 1.9, supplier=POWER, designation="BC-L", voltage_v=1.5, capacity_mah=7000.0, usable_share=0.8, self_discharge_share=0.03, chemistry="alkaline", end_v=0.9, temperature_low_c=-20.0),
        part("ROP-LM18", "primary-battery", "18 mm lithium manganese dioxide cell", 3.1, supplier=POWER, designation="LM-18", voltage_v=3.0, capacity_mah=2000.0, usable_share=0.85, self_discharge_share=0.015, chemistry="lithium-manganese-dioxide", end_v=2.0, temperature_low_c=-30.0, cold_c=-20.0, cold_share=0.7),
        part("ROP-C32", "coin-cell", "Coin backup cell, 20 mm", 1.2, supplier=POWER, designation="C32", voltage_v=3.0, capacity_mah=220.0),
        part("ROP-C50", "coin-cell", "Coin backup cell, 24 mm", 1.8, supplier=POWER, designation="C50", voltage_v=3.0, capacity_mah=540.0),
        part("ROP-S12A", "power-supply", "Supply 12 V DC regulated, 2.5 A, Class 2", 84, supplier=POWER, output_v=12.0, output_a=2.5, tolerance_share=0.05, class_2=True, regulated=True, current="dc", terminal_plus="V+", terminal_minus="V-", standby_v=12.0, input="mains", cabinet="bare"),
        part("ROP-S12B", "power-supply", "Supply 12 V DC regulated, 5 A, Class 2", 119, supplier=POWER, output_v=12.0, output_a=5.0, tolerance_share=0.05, class_2=True, regulated=True, current="dc", terminal_plus="V+", terminal_minus="V-", standby_v=12.0, input="mains", cabinet="bare"),
        part("ROP-S24A", "power-supply", "Supply 24 V DC regulated, 4 A, Class 2", 126, supplier=POWER, output_v=24.0, output_a=4.0, tolerance_share=0.05, class_2=True, regulated=True, current="dc", terminal_plus="V+", terminal_minus="V-", standby_v=24.0, input="mains", cabinet="bare"),
        part("ROP-A7", "standby-battery", "Standby battery 12 V, 7 Ah", 32, supplier=POWER, voltage_v=12.0, capacity_ah=7.0, end_v=10.5, hours_rate=20.0),
        part("ROP-A12", "standby-battery", "Standby battery 12 V, 12 Ah", 46, supplier=POWER, voltage_v=12.0, capacity_ah=12.0, end_v=10.5, hours_rate=20.0),
        part("ROP-A18", "standby-battery", "Standby battery 12 V, 18 Ah", 61, supplier=POWER, voltage_v=12.0, capacity_ah=18.0, end_v=10.5, hours_rate=20.0),
        part("ROP-CB1", "enclosure", "Cabinet for a supply and one battery to 12 Ah", 48, supplier=POWER, form="cabinet", batteries=1, battery_ah=12.0),
        part("ROP-CB2", "enclosure", "Cabinet for a supply and two batteries to 18 Ah", 71, supplier=POWER, form="cabinet", batteries=2, battery_ah=18.0),
        part("ROP-J6", "enclosure", "Junction box, 6 conductors", 4.2, supplier=POWER, form="junction-box", conductors=6),
        part("ROP-J12", "enclosure", "Junction box, 12 conductors", 6.8, supplier=POWER, form="junction-box", conductors=12),
        part("ROP-L1", "limiter", "Fuse with holder, 1 A", 5.5, supplier=POWER, rating_a=1.0, form="fuse"),
        part("ROP-L2", "limiter", "Fuse with holder, 2 A", 5.5, supplier=POWER, rating_a=2.0, form="fuse"),
        part("ROP-L3", "limiter", "Fuse with holder, 3 A", 5.5, supplier=POWER, rating_a=3.0, form="fuse"),
        part("ROP-D4", "power-transfer", "Door loop, 4 conductors, 18 in", 38, supplier=POWER, form="door-loop", conductors=4, gauge="22 AWG", length_mm=457.2, conductor_names="red, black", fire_listed=False),
        part("ROP-H4", "power-transfer", "Transfer hinge, 4 conductors", 142, supplier=POWER, form="transfer-hinge", conductors=4, gauge="24 AWG", length_mm=900.0, conductor_names="1, 2", hinge_height_mm=114.3, hinge_width_mm=114.3, fire_listed=True),
        part("ROP-W18", "wire", "Wire 18 AWG, 2 conductors, stranded", 0.62, supplier=POWER, unit="M", gauge="18 AWG", conductors=2, stranding="stranded", jacket="CL2", outside_diameter_mm=5.2, reel_m=152.0),
        part("ROP-W16", "wire", "Wire 16 AWG, 2 conductors, stranded", 0.86, supplier=POWER, unit="M", gauge="16 AWG", conductors=2, stranding="stranded", jacket="CL2", outside_diameter_mm=6.1, reel_m=152.0),
        part("ROP-W18P", "wire", "Wire 18 AWG, 2 conductors, plenum", 1.05, supplier=POWER, unit="M", gauge="18 AWG", conductors=2, stranding="stranded", jacket="CL2P", outside_diameter_mm=4.9, reel_m=152.0),
        part("ROP-W184", "wire", "Wire 18 AWG, 4 conductors, stranded", 1.18, supplier=POWER, unit="M", gauge="18 AWG", conductors=4, stranding="stranded", jacket="CL2", outside_diameter_mm=6.6, reel_m=152.0),
        part("ROP-R10", "surface-raceway", "Surface raceway, aluminium, 10 mm", 6.4, supplier=POWER, unit="M", inside_mm=10.0, width_mm=16.0, reel_m=2.0, glass_mount=False, fire_listed=False),
        part("ROP-R10F", "surface-raceway", "Surface raceway, steel, 10 mm, listed", 14.5, supplier=POWER, unit="M", inside_mm=10.0, width_mm=18.0, reel_m=2.0, glass_mount=False, fire_listed=True),
        part("ROP-K1", "electric-strike", "Electric strike 12 V DC, fail-secure", 155, supplier=POWER, supply_v=12.0, holding_a=0.35, inrush_a=1.0, fail="fail-secure", fire_listed=True, current="dc", draws="current", terminal_plus="A", terminal_minus="B"),
        part("ROP-K2", "electric-strike", "Electric strike 12 V DC, fail-safe", 149, supplier=POWER, supply_v=12.0, holding_a=0.35, inrush_a=0.5, fail="fail-safe", fire_listed=False, current="dc", draws="current"),
        part("ROP-E6", "electromagnetic-lock", "Electromagnetic lock 600 lbf, 12 V DC", 188, supplier=POWER, supply_v=12.0, holding_a=0.5, inrush_a=0.5, current="dc", draws="current", force_n=2669.0),
        part("ROP-X1", "electrified-lock", "Electrified mortise lock, fail-secure", 410, supplier=POWER, form="mortise", supply_v=12.0, holding_a=0.4, inrush_a=0.8, fail="fail-secure", fire_listed=True, current="dc", draws="current", terminal_plus="A", terminal_minus="B"),
        part("ROP-X2", "electrified-lock", "Electrified exit device, fail-secure", 890, supplier=POWER, form="exit-device", supply_v=24.0, holding_a=0.4, inrush_a=1.6, fail="fail-secure", fire_listed=True, current="dc", draws="current", terminal_plus="A", terminal_minus="B"),
    ]  # fmt: skip


def sundries():
    """Return fasteners, tools, consumables and credentials."""
    parts = []
    for number, form, size, length, material, text in (
        ("FEN-W6", "wood-screw", "#6", 25.4, "wood", "Wood screw #6 × 1 in"),
        ("FEN-W6S", "wood-screw", "#6", 12.7, "wood", "Wood screw #6 × 1/2 in"),
        ("FEN-W6T", "wood-screw", "#6", 9.525, "wood", "Wood screw #6 × 3/8 in"),
        ("FEN-W8", "wood-screw", "#8", 31.75, "wood", "Wood screw #8 × 1-1/4 in"),
        ("FEN-W8T", "wood-screw", "#8", 9.525, "wood", "Wood screw #8 × 3/8 in"),
        ("FEN-W8MT", "wood-screw", "#8", 9.525, "mineral-core", "Wood screw #8 × 3/8 in for mineral core"),
        ("FEN-W6MT", "wood-screw", "#6", 9.525, "mineral-core", "Wood screw #6 × 3/8 in for mineral core"),
        ("FEN-S6T", "sheet-metal-screw", "#6", 9.525, "hollow-metal", "Sheet-metal screw #6 × 3/8 in"),
        ("FEN-S8T", "sheet-metal-screw", "#8", 9.525, "hollow-metal", "Sheet-metal screw #8 × 3/8 in"),
        ("FEN-W6M", "wood-screw", "#6", 31.75, "mineral-core", "Wood screw #6 × 1-1/4 in for mineral core"),
        ("FEN-W8M", "wood-screw", "#8", 38.1, "mineral-core", "Wood screw #8 × 1-1/2 in for mineral core"),
        ("FEN-S6", "sheet-metal-screw", "#6", 19.05, "hollow-metal", "Sheet-metal screw #6 × 3/4 in"),
        ("FEN-S8", "sheet-metal-screw", "#8", 19.05, "hollow-metal", "Sheet-metal screw #8 × 3/4 in"),
        ("FEN-S6A", "sheet-metal-screw", "#6", 15.875, "aluminium", "Sheet-metal screw #6 × 5/8 in, stainless"),
        ("FEN-S8A", "sheet-metal-screw", "#8", 15.875, "aluminium", "Sheet-metal screw #8 × 5/8 in, stainless"),
        ("FEN-M8C", "machine-screw", "#6", 50.8, "composite", "Through screw #6 × 2 in with sleeve nut"),
        ("FEN-S8G", "sheet-metal-screw", "#8", 25.4, "steel-gate", "Self-drilling screw #8 × 1 in"),
        ("FEN-S6G", "sheet-metal-screw", "#6", 25.4, "steel-gate", "Self-drilling screw #6 × 1 in"),
        ("FEN-B5", "through-bolt", "M8", 70.0, "steel-gate", "Carriage bolt M8 × 70"),
        ("FEN-B9", "through-bolt", "M8", 100.0, "steel-gate", "Hexagon bolt M8 × 100 with washer and nut"),
        ("FEN-AD", "adhesive", "pad", 0.0, "glass", "Bonding pad for glass"),
    ):
        attributes = {"form": form, "size": size, "leaf_material": material}
        if material == "steel-gate":
            # Round heads and pin drives: gates stand where everybody passes.
            attributes["security_drive"] = True
        if length:
            attributes["length_mm"] = length
        if form == "through-bolt":
            attributes["head"] = "carriage" if text.startswith("Carriage") else "hexagon"
        parts.append(part(number, "fastener", text, 0.15 if form != "adhesive" else 7.5, supplier=SOUTH, **attributes))
    for number, form, size, wall, text in (
        ("FEN-P6", "screw-and-plug", "#6", "masonry", "Screw #6 × 1-1/2 in with plug"),
        ("FEN-P8", "screw-and-plug", "#8", "masonry", "Screw #8 × 1-1/2 in with plug"),
        ("FEN-H6", "hollow-wall-anchor", "#6", "hollow", "Anchor for board on studs, screw #6"),
        ("FEN-H8", "hollow-wall-anchor", "#8", "hollow", "Anchor for board on studs, screw #8"),
        ("FEN-T6", "machine-screw", "#6", "steel", "Machine screw #6-32 × 5/8 in for a tapped hole"),
        ("FEN-T8", "machine-screw", "#8", "steel", "Machine screw #8-32 × 5/8 in for a tapped hole"),
        ("FEN-X6", "wood-screw", "#6", "wood", "Wood screw #6 × 1 in for panelling"),
    ):
        parts.append(part(number, "fastener", text, 0.2, supplier=SOUTH, form=form, size=size, wall_build=wall))
    for number, form, diameter, material, text, price in (
        ("FEN-J1", "drilling-jig", None, None, "Drilling jig for the lead's hole", 64.0),
        ("FEN-J2", "drilling-jig", 53.975, None, "Jig for cross bore and edge bore", 118.0),
        ("FEN-T14", "twist-drill", 6.35, None, "Twist drill 1/4 in", 4.0),
        ("FEN-T764", "twist-drill", 2.778125, None, "Twist drill 7/64 in", 2.4),
        ("FEN-N29", "twist-drill", 3.4544, None, "Twist drill No. 29", 2.1),
        ("FEN-T116", "twist-drill", 1.5875, None, "Twist drill 1/16 in", 2.0),
        ("FEN-T38", "twist-drill", 9.525, None, "Twist drill 3/8 in, 12 in long", 11.0),
        ("FEN-I38", "installer-bit", 9.525, None, "Installer bit 3/8 in, 54 in long", 34.0),
        ("FEN-T516", "twist-drill", 7.9375, None, "Twist drill 5/16 in", 5.0),
        ("FEN-H12", "hole-saw", 12.7, "wood", "Hole saw 1/2 in", 6.0),
        ("FEN-D34", "step-drill", 19.05, "aluminium", "Step drill to 3/4 in", 28.0),
        ("FEN-D12", "step-drill", 12.7, "hollow-metal", "Step drill to 1/2 in", 24.0),
        ("FEN-H218", "hole-saw", 53.975, None, "Hole saw 2-1/8 in", 22.0),
        ("FEN-H118", "hole-saw", 28.575, None, "Hole saw 1-1/8 in", 17.0),
        ("FEN-M2", "mill", None, "aluminium", "Milling jig for pockets in aluminium", 420.0),
        ("FEN-M1", "mortiser", None, "wood", "Mortiser for the edge pocket", 390.0),
    ):
        attributes = {"form": form}
        if diameter:
            attributes["diameter_mm"] = diameter
        if material:
            attributes["leaf_material"] = material
        parts.append(part(number, "tool", text, price, supplier=SOUTH, **attributes))
    parts += [
        part("FEN-SL", "consumable", "Sleeve for the lead, 1/2 in", 0.8, supplier=SOUTH, form="sleeve", hole_mm=12.7),
        part("FEN-SL38", "consumable", "Sleeve for the lead, 3/8 in", 0.8, supplier=SOUTH, form="sleeve", hole_mm=9.525),
        part("FEN-SL34", "consumable", "Sleeve for the lead, 3/4 in", 0.9, supplier=SOUTH, form="sleeve", hole_mm=19.05),
        part("FEN-GR", "consumable", "Grommet for sheet metal, 1/2 in", 0.4, supplier=SOUTH, form="grommet", hole_mm=12.7),
        part("FEN-GR20", "consumable", "Grommet for sheet metal, 20 mm", 0.5, supplier=SOUTH, form="grommet", hole_mm=20.0),
        part("FEN-GR34", "consumable", "Grommet for sheet metal, 3/4 in", 0.5, supplier=SOUTH, form="grommet", hole_mm=19.05),
        part("FEN-SE", "consumable", "Weather sealant, cartridge", 8.5, supplier=SOUTH, form="sealant", exposure="exterior"),
        part("FEN-TL", "consumable", "Thread lock, 10 ml", 6.2, supplier=SOUTH, form="thread-lock"),
        part("FEN-LB", "consumable", "Opening label", 0.1, supplier=SOUTH, form="label"),
        part("ARC-KEY", "credential", "Electronic key", 28.0, form="electronic-key"),
        part("ARC-PRG", "credential", "Programming key", 140.0, form="programming-key"),
    ]  # fmt: skip
    return parts


def _inches(sixteenths):
    whole, rest = divmod(sixteenths, 16)
    if not rest:
        return f"{int(whole)}"
    top, bottom = rest, 16
    while top % 1:
        top, bottom = top * 2, bottom * 2
    while top % 2 == 0:
        top, bottom = top / 2, bottom / 2
    return (f"{int(whole)}-" if whole else "") + f"{int(top)}/{int(bottom)}"


LEVELS = (("Mill House", "Ground", 0.0), ("Mill House", "1", 4.2), ("Mill House", "2", 8.0), ("Mill House", "3", 11.8),
          ("Glass Annexe", "Ground", 0.0))  # fmt: skip
BUILDINGS = (
    (
        "Mill House",
        None,
        "IBC",
        2021,
        "B",
        40,
        4,
        "y",
        "y",
        "Owner's key plan of the mill: staff by department, events kept 90 days",
    ),
    ("Glass Annexe", None, "IBC", 2021, "B", 30, 2, "y", "y", "Studio tenants by contract, events kept 30 days"),
    ("Boat Store", None, "IBC", 2021, "S", 20, 2, "n", "y", "Yard crew, no events kept"),
)
PLACES = (("M016", 31.5, 6.0, 1.2), ("M116", 31.5, 6.0, 1.2), ("M216", 31.5, 6.0, 1.2), ("M316", 31.5, 6.0, 1.2),
          ("LIFT-1", 4.0, 11.0, 1.5), ("TURN-1", 2.0, 1.5, 1.0))  # fmt: skip
SUPPLIES = (
    ("MILL-G", "Mill House", "Ground", "Meter closet", 22.0, 3.0, 1.0, "ROP-S12A", "candidate", "ROP-A7", 4, 10),
    ("MILL-1", "Mill House", "1", "Store under the stair", 24.0, 5.0, 1.5, "ROP-S12A", "candidate", "ROP-A7", 4, 10),
    ("MILL-3", "Mill House", "3", "Roof closet", 20.0, 2.0, 1.0, "ROP-S12B", "candidate", "ROP-A12", 4, 5),
    ("GLASS-G", "Glass Annexe", "Ground", "Porter's desk", 6.0, 5.0, 1.0, "ROP-S12A", "candidate", "ROP-A7", 2, 15),
)  # fmt: skip
ROUTES = (("LIFT-1", "GLASS-G", 12.0), ("TURN-1", "GLASS-G", 9.0))


def write_power(path, workbook_class, font_class):
    """Write the power workbook: levels, what is asked once of buildings, places on the plan, where a supply may stand, measured routes."""
    book = workbook_class()
    book.remove(book.active)
    for title, headers, rows in (
        ("Levels", ("Building", "Level", "Height of the floor [m]"), LEVELS),
        ("Buildings", ("Building", "Level", "Code in force", "Edition of the code", "Occupancy group", "Occupant load",
                       "Storeys served by the stair", "Sprinklered throughout", "Smoke or heat detection throughout",
                       "Credentials and audit"), BUILDINGS),
        ("Places", ("Mark", "Along the plan [m]", "Across the plan [m]", "Up to the cable way [m]"), PLACES),
        ("Supplies", ("Name", "Building", "Level", "Where it stands", "Along the plan [m]", "Across the plan [m]",
                      "Up to the cable way [m]", "Power supply", "Use", "Standby battery", "Standby asked [h]",
                      "Lowest at the battery [°C]"), SUPPLIES),
        ("Routes", ("Mark", "Supply", "Length, one way [m]"), ROUTES),
    ):  # fmt: skip
        sheet = book.create_sheet(title)
        sheet.append(headers)
        for cell in sheet[1]:
            cell.font = font_class(bold=True)
        for row in rows:
            sheet.append(row)
        sheet.freeze_panes = "A2"
    book.save(path)


def catalogue():
    """Return every part of the sample catalogue."""
    return cylinders() + stack_parts() + units() + power() + sundries()


if __name__ == "__main__":
    from survey_rows import write_survey

    parts = catalogue()
    write_catalogue(HERE / "catalogue.xlsx", parts)
    count = write_survey(HERE / "survey.xlsx", random.Random(20261125), Workbook, Font)
    write_power(HERE / "power.xlsx", Workbook, Font)
    print(f"{len(parts)} parts, {count} openings")

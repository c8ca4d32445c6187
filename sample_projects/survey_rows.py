"""The survey of the invented scenario, typed as a surveyor types. Used by make_workbooks.py only."""

HEADERS = (
    "Mark", "Bldg", "Floor", "Room from", "Room to", "Type", "Hand", "Label", "Stair", "Egress", "Accessible route",
    "Int/Ext", "Lowest temperature", "Ops/day", "Power", "Distance to supply", "Frame", "Stop (in)", "Size", "Leaf",
    "Thickness (in)", "Material", "Construction", "Stile (in)", "Lock type", "Function", "B/S", "Cyl AFF", "Case height",
    "Case depth", "Case thickness", "Top of case above cylinder", "Trim outside", "Trim inside", "TT", "Cross bore",
    "Edge bore", "Cam", "Existing item", "Side", "From lock edge", "Above floor", "Item W", "Item H", "Proud",
    "Keep/replace", "Undercut", "Core", "Wall", "Direction of egress", "No exit, confirmed", "Re-entry", "Smoke seal", "Output to controller",
    "Who connects", "Fire recall", "Closes by itself", "Old holes", "Latch form", "Lite stops", "Bolt form",
    "Leaf that closes first", "Without power", "Voltage on its label", "Current on its label", "AC or DC on its label",
    "Kind of exit device", "Remarks",
)  # fmt: skip

MILL, ANNEXE, STORE = "Mill House", "Glass Annexe", "Boat Store"
WIDTHS = ("3-0 x 7-0", "3'-0\" x 7'-0\"", "3070", '36" x 84"', "3' - 0\" x 7' - 0\"")
NARROW = ("2-8 x 6-8", "2868", '32" x 80"', "2'-8\" x 6'-8\"")
THICK = ("1 3/4", '1-3/4"', '1¾"', "1.75", "1.75 in", "44.5mm")
BACKSETS = ("2 3/4", '2-3/4"', "2 3/4in.", "2.75", "70 mm")
HEIGHTS = ("40", '40"', "3'-4\"", "40 in", "1016mm", "39 15/16")


def write_survey(path, rng, workbook_class, font_class):
    """Write the survey workbook; returns how many openings it holds."""
    book = workbook_class()
    sheet = book.active
    sheet.title = "Door survey"
    sheet.append(["Door survey, Quayside Works: three buildings, walked in two days"])
    sheet.append(["Lengths in inches where nothing else is written. Blank: not seen."])
    sheet.append([])
    sheet.append(list(HEADERS))
    for cell in sheet[4]:
        cell.font = font_class(bold=True)
    count = 0
    for opening in openings(rng):
        count += 1
        # Read off the building's own records, once a building; outside the surveyor wrote it door by door.
        if opening[0].get("Lowest temperature") is None:
            opening[0]["Lowest temperature"] = {MILL: 18, ANNEXE: 18, STORE: 10}[opening[0]["Bldg"]]
        for row in opening:
            sheet.append([row.get(header) for header in HEADERS])
    sheet.freeze_panes = "B5"
    notes = book.create_sheet("Read me")
    notes.append(
        ["Walked by the survey crew of an invented shop. Continuation rows carry further items of the same mark."]
    )
    book.save(path)
    return count


def openings(rng):
    """Yield each opening as its rows, with what decides egress and fire: none of it is drawn by lot."""
    for opening in (*mill(rng), *annexe(rng), *store(rng), *later()):
        yield _with_ways_out(opening)


def _with_ways_out(rows):
    """Add what egress and fire rules ask for, as the crew found it on its second walk."""
    first = rows[0]
    form, label, stair = first["Type"], str(first["Label"] or ""), first["Stair"] == "y"
    if first["Egress"] in ("yes", "exit", "panic hardware"):
        # People leave out of rooms into corridor and street, and out of the corridor into the stair.
        first["Direction of egress"] = "towards the key side"
    elif form in ("SGL", "single", "pair"):
        # Stores, archives and show rooms: the porter knows that each has another way out, or that nobody stays there.
        first["No exit, confirmed"] = "y"
    if stair:
        # The key is used from the stair: it is there that the lock keeps people out.
        first["Room from"], first["Room to"] = first["Room to"], first["Room from"]
        first["Re-entry"] = "alarm and one place"
    if form in ("lift", "turnstile"):
        first.update({"Output to controller": "dry contact", "Fire recall": "y",
                      "Who connects": "elevator contractor" if form == "lift" else "turnstile contractor"})  # fmt: skip
    rated = label not in ("none", "NR", "")
    if rated:
        for row in rows:
            if row.get("Material"):
                row.update({"Closes by itself": "y", "Old holes": "none"})
        first.update({"Smoke seal": "frame stop", "Latch form": "latch bolt"})
        for row in rows:
            if row.get("Existing item") in ("vision panel", "lite"):
                row["Lite stops"] = "listed"
    if form == "pair":
        if rated:
            first["Leaf that closes first"] = "inactive"
        rows.append({"Mark": first["Mark"], "Existing item": "flush bolt", "Leaf": "inactive", "Side": "edge",
                     "Keep/replace": "keep", "Bolt form": "automatic" if rated else "manual"})  # fmt: skip
    return rows


def mortise(rng, **more):
    """Return the columns of a mortise lock."""
    row = {
        "Lock type": rng.choice(("mortise", "Mortise lock", "86", "mort")), "Function": rng.choice(("office", "F04", "storeroom", "F07")),
        "B/S": rng.choice(BACKSETS), "Cyl AFF": rng.choice(HEIGHTS), "Case height": "6", "Case depth": "4 1/4", "Case thickness": "1",
        "Top of case above cylinder": "1.75", "Trim outside": rng.choice((0, "1/16\"", "1/8", "0.125")), "Trim inside": "1/8",
        "TT": "n", "Cam": rng.choice(("straight", "straight", "cloverleaf")),
    }  # fmt: skip
    row.update(more)
    return row


def items(mark, *found):
    """Return continuation rows for existing items: kind, side, x, y, width, height, proud, disposition."""
    names = ("Existing item", "Side", "From lock edge", "Above floor", "Item W", "Item H", "Proud", "Keep/replace")
    kinds = {"exit device": {"Kind of exit device": "rim device"}}
    return [{"Mark": mark, **dict(zip(names, item, strict=True)), **kinds.get(item[0], {})} for item in found]


def lever(face):
    """Return a lever beside the lock, as an item that stays."""
    return ("lever", face, "2 3/4", "36 5/8", "5", "2 1/2", "2 1/2", "keep")


# The lever's rose is the lock's trim on the inside; on the key side it stands under the cylinder's.
ROSE = ("trim", "inside", "2 3/4", "36 5/8", "2 1/2", "2 1/2", "1/8", "keep")


CLOSER = ("closer", "inside", "30", "6'-9\"", "10", "3", "2 1/4", "keep")
KICK = ("kick plate", "key", "18", "6", "34", "10", "1/16", "keep")
LITE = ("vision panel", "both", "8", "60", "5", "26", "0", "keep")
LABEL = ("label", "edge", "0", "70", "1", "3", "0", "keep")
HALF_LITE = ("lite", "both", "18", "58", "24", "34", "0", "keep")


def mill(rng):
    """Yield the Mill House: offices, stores and stairs, hollow metal and wood, many rated."""
    rooms = ("Counting room", "Pattern store", "Drawing office", "Sample room", "Records", "Server closet", "Meeting room",
             "Pay office", "Dye store", "Stair lobby", "Loom hall", "Press room")  # fmt: skip
    number = 0
    for level in ("Ground", "1", "2", "3"):
        for index in range(20):
            number += 1
            mark = f"M{level[0] if level != 'Ground' else '0'}{index + 1:02d}"
            stair = index in (0, 19)
            rated = "90" if stair else rng.choice(("none", "NR", "20", "45 min", "C", "none"))
            metal = stair or index % 3 == 0
            row = {
                "Mark": mark, "Bldg": MILL, "Floor": level, "Room from": "Corridor " + level, "Room to": "Stair " + ("A" if index == 0 else "B") if stair else rng.choice(rooms),
                "Type": "SGL", "Hand": rng.choice(("LH", "RH", "LHR", "RHR")), "Label": rated, "Stair": "y" if stair else "n",
                "Egress": "yes" if stair or rng.random() < 0.3 else "no", "Accessible route": rng.choice(("y", "n", "y")), "Int/Ext": "int",
                "Ops/day": rng.choice((8, 12, 20, 30, "45", 60)), "Frame": "HM" if metal else rng.choice(("HM", "WD")), "Stop (in)": "5/8",
                "Size": rng.choice(WIDTHS), "Thickness (in)": rng.choice(THICK), "Material": "HM" if metal else ("mineral core" if rated == "45 min" else "SCW"),
                "Construction": "flush", **mortise(rng),
            }  # fmt: skip
            extra = [lever("both"), ROSE]
            if stair:
                extra += [CLOSER, LABEL]
            elif index % 4 == 1:
                extra += [KICK]
            elif index % 5 == 2:
                extra += [LITE]
            if index == 7:
                # A thumb turn right above the cylinder: the straight place is taken.
                extra.append(("thumb turn", "inside", "2 3/4", "44", "2", "3", "1", "keep"))
                row["TT"] = "y"
            if index == 11:
                row.update(
                    {
                        "Lock type": "bored",
                        "Function": rng.choice(("office", "storeroom")),
                        "Case height": None,
                        "Case depth": None,
                        "Case thickness": None,
                        "Top of case above cylinder": None,
                        "Cross bore": "2 1/8",
                        "Edge bore": "1",
                        "Cam": None,
                        "Trim outside": None,
                        "Trim inside": None,
                        "B/S": "2 3/4",
                    }
                )
                extra = []
            if index == 13:
                row["Thickness (in)"] = None if level in ("1", "2") else "2 1/4"
            if index == 15:
                row["Ops/day"] = 600
                row["Distance to supply"] = 18
                # The middle hinge, on whose place a transfer hinge would go.
                extra.append(("hinge", "frame", "36", "42", "4 1/2", "4 1/2", "0", "keep"))
                row["Core"] = "honeycomb"
            if index == 16:
                row.update(
                    {
                        "Type": "pair",
                        "Size": "2(3'-0\" x 7'-0\")" if level == "9" else "3-0 x 7-0",
                        "Leaf": "active",
                        "Hand": "LHR",
                    }
                )
            yield [row] + (
                [{"Mark": mark, "Leaf": "inactive", "Size": "3-0 x 7-0", "Thickness (in)": "1 3/4", "Material": "HM" if metal else "SCW", "Construction": "flush"}]
                if index == 16 else []
            ) + items(mark, *extra)  # fmt: skip


def annexe(rng):
    """Yield the Glass Annexe: aluminium stiles, glass, euro-profile, a lift and a turnstile."""
    for index in range(22):
        mark = f"A-{index + 1:02d}"
        wide = index % 5 == 4
        row = {
            "Mark": mark, "Bldg": ANNEXE, "Floor": "Ground" if index < 12 else "Gallery", "Room from": "Arcade", "Room to": f"Studio {index + 1}",
            "Type": "single", "Hand": rng.choice(("LHR", "RHR", "LH", "RH")), "Label": "none", "Stair": "n", "Egress": rng.choice(("exit", "no")),
            "Accessible route": "y", "Int/Ext": "ext" if index % 6 == 0 else "int", "Lowest temperature": -15 if index % 6 == 0 else None, "Ops/day": rng.choice((25, 40, 80)),
            "Frame": "alum", "Stop (in)": "3/8", "Size": rng.choice(WIDTHS), "Thickness (in)": "1 3/4", "Material": "AL", "Construction": "stile and rail" if wide else "narrow stile",
            "Stile (in)": "5" if wide else "2 1/8",
            **mortise(rng, **{"Function": "deadlock", "B/S": "2 3/4" if wide else "1 1/8", "Case height": "5 7/8", "Case depth": "4 1/4" if wide else "1 7/8",
                              "Trim outside": 0, "Trim inside": 0, "Top of case above cylinder": "1 1/2", "Cam": "straight", "TT": "y"}),
        }  # fmt: skip
        if index == 9:
            row["Stile (in)"] = "1 3/8"
            row["B/S"] = "31/32"
        # Two leaves of the gallery stood open against a wall: nobody saw their thumb turn.
        turn = ("thumb turn", "inside", row["B/S"], row["Cyl AFF"], "1 3/8", "1 3/8", "1", "keep")
        pull = ("pull", "key", "3 1/2" if wide else "1 1/16", "32", "1", "9", "2 1/2", "keep")
        yield [row, *items(mark, pull, *([] if index in (14, 17) else [turn]))]
    for index in range(16):
        mark = f"E{index + 1}"
        thick = rng.choice(("40 mm", "40", "45mm", "4,5 cm", "54 mm"))
        row = {
            "Mark": mark, "Bldg": ANNEXE, "Floor": "Upper", "Room from": "Landing", "Room to": f"Archive {index + 1}", "Type": "SGL", "Hand": rng.choice(("LH", "RH")),
            "Label": rng.choice(("none", "none", "45")), "Stair": "n", "Egress": "no", "Accessible route": rng.choice(("y", "n")), "Int/Ext": "int", "Ops/day": 15, "Frame": "WD",
            "Stop (in)": "15 mm", "Size": rng.choice(("860 x 2010mm", "0,86 x 2,01 m", "88,5 x 201 cm")), "Thickness (in)": "40 mm" if thick == "40" else thick, "Material": "wood",
            "Construction": "flush", "Lock type": rng.choice(("euro", "PZ", "profile cylinder")), "Function": "office", "B/S": "55 mm", "Cyl AFF": "97,8 cm",
            "Case height": "165mm", "Case depth": "85 mm", "Case thickness": "14 mm", "Top of case above cylinder": "118 mm", "Trim outside": "8 mm",
            "Trim inside": "8mm", "TT": "y", "Cam": "euro",
        }  # fmt: skip
        if index == 5:
            row["Trim outside"] = None
        yield [row, *items(mark, ("escutcheon", "both", "55 mm", "1010 mm", "42 mm", "230 mm", "8 mm", "keep"))]
    for index in range(6):
        mark = f"GL-{index + 1}"
        yield [{
            "Mark": mark, "Bldg": ANNEXE, "Floor": "Ground", "Room from": "Foyer", "Room to": f"Show room {index + 1}", "Type": "single", "Hand": "RHR", "Label": "none",
            "Stair": "n", "Egress": "exit" if index == 0 else "no", "Accessible route": "y", "Int/Ext": "int", "Ops/day": 50, "Frame": "frameless", "Stop (in)": 0,
            "Size": "3-0 x 8-0", "Thickness (in)": "1/2", "Material": "glass", "Construction": "frameless glass",
            **mortise(rng, **{"Function": "deadlock", "B/S": "2 3/4", "Case height": "6", "Case depth": "4 1/4", "Cam": "straight", "Trim outside": "1/2", "Trim inside": "1/2", "Cyl AFF": "40"}),
            # The patch lock's own footprint was measured on all but one.
            **(dict(zip(("Existing item", "Side", "From lock edge", "Above floor", "Item W", "Item H", "Proud", "Keep/replace"),
                        ("lock", "both", "2 3/4", "40", "4", "7", "1/2", "keep"), strict=True)) if index != 4 else {}),
        }, *items(mark, ("pull", "both", "6", "42", "1 1/4", "24", "3", "keep"))]  # fmt: skip
    yield [{"Mark": "LIFT-1", "Bldg": ANNEXE, "Floor": "Ground", "Room from": "Foyer", "Room to": "Lift 1", "Type": "lift", "Label": "none", "Stair": "n", "Egress": "no",
            "Accessible route": "y", "Int/Ext": "int", "Ops/day": 300, "Power": "wired", "Distance to supply": 12, "Wall": "brick", "Lock type": "reader only, no lock", "Cyl AFF": "42"}]  # fmt: skip
    yield [{"Mark": "TURN-1", "Bldg": ANNEXE, "Floor": "Ground", "Room from": "Street", "Room to": "Foyer", "Type": "turnstile", "Label": "none", "Stair": "n", "Egress": "yes",
            "Accessible route": "n", "Int/Ext": "int", "Ops/day": 900, "Power": "wired", "Distance to supply": 9, "Wall": "steel post", "Lock type": "reader", "Cyl AFF": "40"}]  # fmt: skip


def store(rng):
    """Yield the Boat Store: gates, cabinets, rim locks, exit devices, bored locks, and the survey's two wrong cells."""
    for index in range(12):
        mark = f"00{index + 11}"
        row = {
            "Mark": mark, "Bldg": STORE, "Floor": "Quay", "Room from": "Slip", "Room to": f"Bay {index + 1}", "Type": "SGL", "Hand": rng.choice(("RH", "LH")), "Label": "none",
            "Stair": "n", "Egress": "no", "Accessible route": "n", "Int/Ext": "int", "Ops/day": 10, "Frame": rng.choice(("WD", "HM")), "Stop (in)": "5/8", "Size": rng.choice(NARROW),
            "Thickness (in)": rng.choice(("1 3/8", "1-3/8\"", "35 mm")) if index % 4 == 3 else "1 3/4", "Material": "solid core", "Construction": "flush", "Lock type": "rim", "Function": "storeroom", "B/S": "2 3/8",
            "Cyl AFF": "44", "Trim outside": "1/8", "Case height": "3 1/2", "Case depth": "3", "Case thickness": "7/8", "Top of case above cylinder": "1 1/2",
            "Cam": "flat" if index % 3 else "cross",
        }  # fmt: skip
        yield [row]
    for index in range(10):
        mark = f"B/{index + 1}"
        yield [{
            "Mark": mark, "Bldg": STORE, "Floor": "Loft", "Room from": "Loft landing", "Room to": f"Sail room {index + 1}", "Type": "SGL", "Hand": rng.choice(("RH", "LH", "RHR")),
            "Label": rng.choice(("none", "20")), "Stair": "n", "Egress": "no", "Accessible route": "n", "Int/Ext": "int", "Ops/day": 14, "Frame": "WD", "Stop (in)": "1/2",
            "Size": rng.choice(NARROW), "Thickness (in)": "1 3/4" if index != 6 else "1", "Material": "solid wood", "Construction": "flush", "Lock type": rng.choice(("cylindrical", "161", "bored lever")),
            "Function": rng.choice(("F86", "office", "F84")), "B/S": "2 3/8" if index == 3 else "2 3/4", "Cyl AFF": "38", "Cross bore": "2 1/8" if index != 4 else "1 1/2", "Edge bore": "1",
        }]  # fmt: skip
    for index in range(5):
        mark = f"X{index + 1}"
        yield [{
            "Mark": mark, "Bldg": STORE, "Floor": "Quay", "Room from": "Quay", "Room to": f"Hall {index + 1}", "Type": "SGL", "Hand": rng.choice(("RHR", "LHR")), "Label": "90" if index == 1 else "none",
            "Stair": "n", "Egress": "panic hardware", "Accessible route": "y", "Int/Ext": "ext" if index > 2 else "int", "Lowest temperature": -18 if index > 2 else None, "Ops/day": 60, "Frame": "HM",
            "Stop (in)": "5/8", "Size": "3-0 x 7-0", "Thickness (in)": "1 3/4", "Material": "HM", "Construction": "flush", "Lock type": "rim device", "Function": "exit device", "B/S": "2 3/4",
            "Cyl AFF": "40", "Trim outside": "1/8", "Trim inside": 0, "Case height": "8", "Case depth": "3", "Case thickness": "2", "Top of case above cylinder": "2 1/2", "Cam": "flat",
        }, *items(mark, ("exit device", "inside", "17", "38 1/2", "32", "8", "3", "keep"), CLOSER)]  # fmt: skip
    for index in range(4):
        yield [{
            "Mark": f"GATE {index + 1}", "Bldg": STORE, "Floor": "Yard", "Room from": "Lane", "Room to": "Yard", "Type": "gate", "Hand": "LHR", "Label": "none", "Stair": "n", "Egress": "no",
            "Accessible route": "n", "Int/Ext": "ext", "Lowest temperature": -20, "Ops/day": 35, "Frame": "none", "Stop (in)": 0, "Size": "42\" x 48\"" if index < 2 else "3-6 x 7-0",
            "Thickness (in)": "2", "Material": "steel tube", "Construction": None, "Stile (in)": "4" if index != 3 else "2", "Lock type": "gate latch", "Function": "storeroom", "B/S": "2 1/2", "Cyl AFF": "36",
        }]  # fmt: skip
    for index in range(9):
        yield [{
            "Mark": f"CAB-{index + 1}", "Bldg": STORE, "Floor": "Quay", "Room from": "Tool crib", "Room to": f"Cabinet {index + 1}", "Type": "cabinet", "Hand": "RHR", "Label": "none", "Stair": "n",
            "Egress": "no", "Accessible route": "n", "Int/Ext": "int", "Ops/day": 6, "Frame": "WD", "Stop (in)": 0, "Size": "18\" x 30\"" if index < 7 else "12\" x 9\"", "Thickness (in)": "3/4" if index != 8 else "1 1/2",
            "Material": "wood", "Construction": "flush", "Lock type": "cam lock", "Function": "deadlock", "B/S": "1 1/4", "Cyl AFF": "34", "Cam": None, "Undercut": "20" if index < 7 else "30",
        }]  # fmt: skip
    wrong = {
        "Mark": "9E4", "Bldg": STORE, "Floor": "Loft", "Room from": "Loft landing", "Room to": "Paint store", "Type": "SGL", "Hand": "LH", "Label": "45", "Stair": "n", "Egress": "no",
        "Accessible route": "n", "Int/Ext": "int", "Ops/day": 9, "Frame": "HM", "Stop (in)": "5/8", "Size": "3-0 x 7-0", "Thickness (in)": "6/8", "Material": "HM", "Construction": "flush", **mortise(rng),
    }  # fmt: skip
    yield [wrong]
    yield [{**wrong, "Mark": "3-4", "Room to": "Rope walk", "Hand": "sideways", "Thickness (in)": "1 3/4"}]
    yield [{**wrong, "Mark": "0099", "Room to": "Chandlery", "Thickness (in)": "1 3/4", "B/S": None, "Label": None}]


def later():
    """Yield what was built in later: an electric strike, an electromagnet, a deadbolt above a latch, a second lift."""
    door = {
        "Bldg": STORE, "Floor": "Office", "Room from": "Office landing", "Type": "SGL", "Hand": "RH", "Label": "none", "Stair": "n", "Egress": "no", "Accessible route": "y",
        "Int/Ext": "int", "Ops/day": 40, "Frame": "HM", "Stop (in)": "5/8", "Size": "3-0 x 7-0", "Thickness (in)": "1 3/4", "Material": "SCW", "Construction": "flush",
        "Core": "particleboard", "Lock type": "mortise", "Function": "storeroom", "B/S": "2 3/4", "Cyl AFF": "40", "Case height": "6", "Case depth": "4 1/4", "Case thickness": "1",
        "Top of case above cylinder": "1 3/4", "Trim outside": "1/8", "Trim inside": "1/8", "TT": "n", "Cam": "straight",
    }  # fmt: skip
    around = (lever("both"), ROSE)
    yield [
        {"Mark": "OF-1", **door, "Room to": "Cash office", "Power": "wired", "Distance to supply": 15},
        *items("OF-1", *around),
        {"Mark": "OF-1", "Existing item": "electric strike", "Side": "frame", "Keep/replace": "keep", "Without power": "fail-secure",
         "Voltage on its label": 12, "Current on its label": 0.35, "AC or DC on its label": "DC"},
    ]  # fmt: skip
    yield [
        {"Mark": "OF-2", **door, "Room to": "Chart room", "Egress": "exit", "Power": "wired", "Distance to supply": 15},
        *items("OF-2", *around),
        {"Mark": "OF-2", "Existing item": "electromagnetic lock", "Side": "frame", "Keep/replace": "keep", "Without power": "fail-safe",
         "Voltage on its label": 12, "Current on its label": 0.5, "AC or DC on its label": "DC"},
        # The sensor over the head, the button on the wall beside the frame.
        {"Mark": "OF-2", "Existing item": "release sensor", "Side": "inside", "Keep/replace": "keep"},
        {"Mark": "OF-2", "Existing item": "release button", "Side": "inside", "Keep/replace": "keep"},
    ]  # fmt: skip
    bolt = ("deadbolt", "both", "2 3/4", "46", "2 1/2", "2 1/2", "1", "keep")
    rows = [{"Mark": "OF-3", **door, "Room to": "Instrument store"}, *items("OF-3", *around, bolt)]
    rows[-1]["TT"] = "y"
    yield rows
    yield [{"Mark": "LIFT-2", "Bldg": STORE, "Floor": "Quay", "Room from": "Yard", "Room to": "Goods lift", "Type": "lift", "Label": "none", "Stair": "n", "Egress": "no",
            "Accessible route": "n", "Int/Ext": "int", "Ops/day": 60, "Power": "wired", "Distance to supply": 20, "Wall": "board on studs", "Lock type": "reader", "Cyl AFF": "44"}]  # fmt: skip

"""Invented lists that break the usual form, each with what a person reads in it, written by hand, and what is asked.

Lengths stand in inches as read, to a tenth; a fact that is not named must not be there.
"""

from dataclasses import dataclass, field
from typing import Any

import pytest

from hwsched.exchange.problems import causes
from hwsched.exchange.survey.book import SurveyOptions, read_survey


@dataclass
class Stranger:
    """One list."""

    text: str
    reads: dict[str, dict[str, Any]]
    """By mark; w, h, t of the first leaf in inches, leaves where there are two."""
    asks: tuple[str, ...] = ()
    """Words of each question that has to be asked; their number is the ceiling too."""
    refuses: tuple[str, ...] = ()
    """Words of each cause of refusals; their number is the ceiling too."""
    options: dict[str, Any] = field(default_factory=dict)
    name: str = "list.csv"
    encoding: str = "utf-8"


DOOR = {"w": 36.0, "h": 84.0}
LISTS = {
    "three lines of header, the last of units": Stranger(
        "Doors,,,,\n,Leaf,,,Fire\nMark,Width,Height,Thickness,rating\n,(mm),(mm),(in),(min)\n101,914.4,2133.6,1.75,90\n",
        {"101": {**DOOR, "t": 1.8, "rating": "90"}},
    ),
    "title block above and notes below": Stranger(
        "Yard works,,\nRevision B,,\n,,\nMark,Width,Height\n101,36,84\n102,36,84\n,,\nNote: clear of the frame,,\n",
        {"101": DOOR, "102": DOOR},
    ),
    "totals and subtotals": Stranger(
        "Mark,Level,Width,Height\n101,1,36,84\nSub-Totals,,,1\n201,2,36,84\nSub-Totals,,,1\nGrand total: 2,,,\n",
        {"101": {**DOOR, "level": "1"}, "201": {**DOOR, "level": "2"}},
    ),
    "sections that say the level": Stranger(
        "LEVEL 1,,\nMark,Width,Height\n101,36,84\nLEVEL 2,,\n201,36,84\n202,36,84\n",
        {
            "101": {**DOOR, "level": "LEVEL 1"},
            "201": {**DOOR, "level": "LEVEL 2"},
            "202": {**DOOR, "level": "LEVEL 2"},
        },
    ),
    "the header again on each page": Stranger(
        "Mark,Width,Height\n101,36,84\nPage 1 of 2,,\nMark,Width,Height\n102,36,84\nPage 2 of 2,,\n",
        {"101": DOOR, "102": DOOR},
    ),
    "dashes beside values": Stranger(
        "Mark,Fire rating,Egress,Hand\n1,-,-,-\n2,90 MIN,YES,LH\n3,-,\u2014,RH\n",
        {"1": {}, "2": {"rating": "90", "egress": "egress", "hand": "LH"}, "3": {"hand": "RH"}},
        asks=("Fire rating", "Egress"),
    ),
    "crosses in a tick list": Stranger(
        "Mark,Stair door,Accessible route\n1,x,\n2,,X\n3,x,x\n",
        {"1": {"stair": True}, "2": {"accessible": True}, "3": {"stair": True, "accessible": True}},
    ),
    "zeros for not rated": Stranger(
        "Mark,Fire rating\n1,0\n2,90\n3,0\n", {"1": {}, "2": {"rating": "90"}, "3": {}}, asks=("Fire rating",)
    ),
    "inch marks that nobody quoted": Stranger(
        'Mark,Width,Height,Notes\n101,36",84",plain\n102,"36"",84"",doubled\n103,"36"","84"",each\n',
        {m: {**DOOR, "notes": n} for m, n in (("101", "plain"), ("102", "doubled"), ("103", "each"))},
    ),
    "a quotation that is opened and never closed": Stranger(
        'Mark,Width,Height\n101,"36,84\n102,36,84\n103,"36,84\n', {"101": DOOR, "102": DOOR, "103": DOOR}
    ),
    "semicolons and decimal commas": Stranger(
        "Mark;Width;Height\n101;91,44;213,36\n", {"101": DOOR}, options={"bare_unit": "cm"}, name="list.txt"
    ),
    "tabs": Stranger("Mark\tWidth\tHeight\n101\t3'-0\"\t7'-0\"\n", {"101": DOOR}, name="list.tsv"),
    "text of two bytes a letter": Stranger("Mark\tWidth\tHeight\n101\t36\t84\n", {"101": DOOR}, encoding="utf-16"),
    "a first line that names the separator": Stranger("sep=|\nMark|Width|Height\n101|36|84\n", {"101": DOOR}),
    "letters of an old code page": Stranger(
        "Mark,Notes\n101,caf\xe9\n", {"101": {"notes": "caf\xe9"}}, encoding="cp1252"
    ),
    "widths of pairs, counted": Stranger(
        'Mark,Size\n101,"2(3\'-0"") x 7\'-0"""\n102,"1(3\'-0"") x 7\'-0"""\n',
        {"101": {**DOOR, "form": "pair", "leaves": 2}, "102": DOOR},
    ),
    "a pair's width that may be that of both leaves": Stranger(
        "Mark,Type,Size\n101,PR,PR 762 x 2134 mm\n102,SGL,3-0 x 7-0\n",
        {"101": {"form": "pair", "h": 84.0, "leaves": 2}, "102": {**DOOR, "form": "single"}},
        asks=("is the width that of each leaf or of both",),
    ),
    "that pair's width, told": Stranger(
        "Mark,Width,Height\n101,6'-0\" PR,84\n102,36,84\n103,PR 72,84\n",
        {"101": {**DOOR, "form": "pair", "leaves": 2}, "102": DOOR, "103": {**DOOR, "form": "pair", "leaves": 2}},
        options={"pairs": "both"},
    ),
    "ratings as schedules write them": Stranger(
        "Mark,Fire rating\n1,3/4 HR\n2,1.5 hr\n3,B label\n4,90 MIN\n5,60/90\n"
        "6,20 MINUTE\n7,UL 90\n8,NL\n9,NR\n10,1-1/2 HOUR\n",
        {
            "1": {"rating": "45"},
            "2": {"rating": "90"},
            "3": {"rating": "90"},
            "4": {"rating": "90"},
            "5": {},
            "8": {},
            "6": {"rating": "20"},
            "7": {"rating": "90"},
            "9": {"rating": "none"},
            "10": {"rating": "90"},
        },
        asks=("taken as unknown; it may mean 60 min or 90 min", "may mean no label or narrow lite"),
    ),
    "one unknown word in many rows": Stranger(
        "Mark,Leaf material\n" + "".join(f"{n},STIL\n" for n in range(1, 187)) + "200,HM\n",
        {"200": {"material": "hollow-metal"}},
        refuses=("186 rows (2-187)",),
    ),
    "words of two readings": Stranger(
        "Mark,Leaf material\n1,WD\n2,wd\n3,STL\n4,SCW\n5,HC/WD\n",
        {"1": {}, "2": {}, "3": {}, "4": {"material": "wood"}, "5": {}},
        asks=(
            '"WD" (1), "wd" (1) mean? taken as unknown; it may mean wood, solid core or wood, hollow core',
            "hollow metal door or steel gate",
            "HC/WD",
        ),
    ),
    "words of two readings, told": Stranger(
        "Mark,Leaf material\n1,WD\n2,HC/WD\n3,STL\n",
        {"1": {"material": "wood"}, "2": {"core": "honeycomb"}, "3": {"material": "hollow-metal"}},
        options={
            "words": {
                "Leaf material": {"wd": "wood, solid core", "HC/WD": "Wood, hollow core", "STL": "hollow metal door"}
            }
        },
    ),
    "that word, told": Stranger(
        "Mark,Leaf material\n1,STL\n2,HC/WD\n",
        {"1": {"material": "hollow-metal"}, "2": {"material": "wood"}},
        options={"words": {"Leaf material": {"STL": "hollow metal", "HC/WD": "wood"}}},
    ),
    "frames and functions in short": Stranger(
        "Mark,Frame material,Lock function\n1,HMF,PASS\n2,WDF,PRIV\n3,ALF,CLRM\n4,FW,STRM\n",
        {
            "1": {"frame_material": "hollow-metal"},
            "2": {"frame_material": "wood"},
            "3": {"frame_material": "aluminium"},
            "4": {"frame_material": "hollow-metal"},
        },
    ),
    "a quantity that stands for several doors": Stranger(
        "Mark,Qty,Width,Height\nA,3,36,84\nB,1,36,84\n", {"A": DOOR, "B": DOOR}, asks=("Qty",)
    ),
    "values shifted by a column": Stranger(
        "Mark,Hand,Width,Height\n101,LH,36,84\n102,,RH,36\n103,LH,36,84\n",
        {"101": {**DOOR, "hand": "LH"}, "103": {**DOOR, "hand": "LH"}},
        refuses=("row 3: read '102 | | RH | 36'; has its values from column C on one column too far to the right",),
    ),
    "values shifted by a column, moved": Stranger(
        "Mark,Hand,Width,Height\n101,LH,36,84\n102,,RH,36,84\n103,36,84\n",
        {m: {**DOOR, "hand": h} for m, h in (("101", "LH"), ("102", "RH"))} | {"103": DOOR},
        options={"cures": frozenset({"shifted"})},
    ),
    "an unknown word before a column of notes": Stranger(
        "Mark,Width,Leaf material,Notes\n1,36,honey,seen\n2,36,HM,\n",
        {"2": {"w": 36.0, "material": "hollow-metal"}},
        refuses=("read 'honey'; is none of the words for Leaf material",),
    ),
    "a title, a row of groups, names, units": Stranger(
        "Doors of the yard,,\nDOOR,,FIRE\nNO.,WIDTH,RATING\n,(in),(min)\n1,36,-\n2,36,90\n",
        {"1": {"w": 36.0}, "2": {"w": 36.0, "rating": "90"}},
        asks=("column C (FIRE RATING",),
    ),
    "three rows of names": Stranger(
        "DOOR,,,,FRAME,,FIRE\n,SIZE,,,,,\nNO.,W,H,T,MATERIAL,FINISH,RATING\n101,36,84,1.75,HM,x,90 MIN\n",
        {"101": {**DOOR, "t": 1.8, "frame_material": "hollow-metal", "rating": "90"}},
    ),
    "columns that blanks set apart": Stranger(
        "Mark   Width   Height   Hand\n101    36      84       LH\n102            84       RH\n103    36      84\n",
        {"101": {**DOOR, "hand": "LH"}, "102": {"h": 84.0, "hand": "RH"}, "103": DOOR},
        name="list.txt",
    ),
    "an unusual mark between cells": Stranger("Mark^Width^Height\n101^36^84\n102^36^84\n", {"101": DOOR, "102": DOOR}),
    "two bytes a letter, and no mark of it": Stranger(
        "Mark,Width,Height\n101,36,84\n", {"101": DOOR}, encoding="utf-16-le"
    ),
    "an older code page": Stranger(
        "Mark,Notes\n101,\xfcber \xc5\n", {"101": {"notes": "\xfcber \xc5"}}, encoding="cp850"
    ),
    "thousands grouped by points": Stranger(
        "Mark;Width\n1;1.016 mm\n2;914,4 mm\n", {"1": {"w": 40.0}, "2": {"w": 36.0}}, options={"decimal": "comma"}
    ),
    "a text that is called a workbook": Stranger("Mark\tWidth\tHeight\n101\t36\t84\n", {"101": DOOR}, name="list.xls"),
    "numbers that are marks since nothing else is": Stranger(
        "Number,Room,Width\n101,A,36\n", {"101": {"w": 36.0, "room_to": "A"}}
    ),
    "marks that are one but for their spelling": Stranger(
        "Mark,Hand\nD-1,LH\nd-1,RH\nD-2,LH\n",
        {"D-1": {"hand": "LH"}, "d-1": {"hand": "RH"}, "D-2": {"hand": "LH"}},
    ),
    "as drawing programs export it": Stranger(
        '"Door Schedule"\n"Mark","Level","From Room: Name","To Room: Name","Type","Width","Height","Thickness",'
        '"Fire Rating","Frame Material","Head Detail","Comments"\n"","","","","","","","","","","",""\n'
        '"Level 1","","","","","","","","","","",""\n'
        '"101","Level 1","Hall","Office","Flush: 36"" x 84""","3\' - 0""","7\' - 0""","0\' - 1 3/4""","","HM","5",""\n'
        '"102","Level 1","Hall","Store","Flush: 36"" x 84""","3\' - 0""","7\' - 0""","0\' - 1 3/4""","90 min","HM",'
        '"","X"\n'
        '"Level 1: 2","","","","","","","","","","",""\n"Grand total: 2","","","","","","","","","","",""\n',
        {
            "101": {
                **DOOR,
                "t": 1.8,
                "level": "Level 1",
                "room_from": "Hall",
                "room_to": "Office",
                "frame_material": "hollow-metal",
            },
            "102": {
                **DOOR,
                "t": 1.8,
                "level": "Level 1",
                "room_from": "Hall",
                "room_to": "Store",
                "rating": "90",
                "frame_material": "hollow-metal",
                "notes": "X",
            },
        },
    ),
    "a hospital's, with British ratings": Stranger(
        "Door No,Department,Room,Clear width (mm),Leaf width,Leaf height,Fire rating,Handing,Access control\n"
        "W1-01,Ward 1,Utility,850,914.4,2133.6,FD60S,LH,Y\nW1-02,Ward 1,Entrance,1300,914.4 + 508,2133.6,FD60,,Y\n"
        "W1-03,Ward 1,Linen,800,914.4,2133.6,NFR,RH,N\nW1-04,Ward 1,Sluice,850,914.4,2133.6,FD30,RH,N\n",
        {
            "W1-01": {**DOOR, "rating": "60", "hand": "LH", "room_to": "Utility"},
            "W1-02": {**DOOR, "form": "pair", "rating": "60", "leaves": 2, "room_to": "Entrance"},
            "W1-03": {**DOOR, "rating": "none", "hand": "RH", "room_to": "Linen"},
            "W1-04": {**DOOR, "rating": "30", "hand": "RH", "room_to": "Sluice"},
        },
        options={"bare_unit": "mm"},
    ),
    "an estate's, in mm with floors as titles": Stranger(
        "Wharf Street Health Centre;;;;;;;;;;;;;;\nDoor list issued for security survey;;;;;;;;;;;;;;\n;;;;;;;;;;;;;;\n"
        "Door Ref;Room;S.O. W;S.O. H;Leaf W;Leaf H;Leaf T;FR;dB;Matl;Frame;I/mongery;Closer;VP;Remarks\n"
        ";;(mm);(mm);(mm);(mm);(mm);;;;;;;;\nGROUND FLOOR;;;;;;;;;;;;;;\n"
        "G.01;Reception;1 010;2 110;914.4;2 133.6;44.45;FD30S;35;Timber;SW;Set 3;Y;Y;\n"
        "G.02;Record store;1 010;2 110;914.4;2 133.6;44.45;FD60S;\u2013;Timber;HW;Set 4;Y;\u2013;keep locked\n"
        "G.03;Plant;1 810;2 110;914.4/914.4;2 133.6;44.45;\u2013;\u2013;Steel;Steel;Set 9;\u2013;\u2013;\n"
        "FIRST FLOOR;;;;;;;;;;;;;;\n1.01;Office;1 010;2 110;914.4;2 133.6;44.45;FD30;\u2013;timbr;SW;Set 3;Y;Y;\n"
        "Total No. of doors: 4;;;;;;;;;;;;;;\nNotes: 1. All sizes to be checked on site.;;;;;;;;;;;;;;\n",
        {
            "G.01": {
                **DOOR,
                "room_to": "Reception",
                "t": 1.8,
                "level": "GROUND FLOOR",
                "rating": "30",
                "material": "wood",
                "frame_material": "wood",
            },
            "G.02": {
                **DOOR,
                "room_to": "Record store",
                "t": 1.8,
                "level": "GROUND FLOOR",
                "rating": "60",
                "material": "wood",
                "frame_material": "wood",
                "notes": "keep locked",
            },
            "G.03": {
                **DOOR,
                "room_to": "Plant",
                "t": 1.8,
                "level": "GROUND FLOOR",
                "form": "pair",
                "leaves": 2,
                "material": "hollow-metal",
                "frame_material": "hollow-metal",
            },
        },
        asks=("column H (FR): what does",),
        refuses=("read 'timbr'; is none of the words for Leaf material; nearest: Wood, solid core",),
    ),
    "a district's database, its headings in short": Stranger(
        "door_tag|bldg|flr|wd|ht|thk|matl|fr|lk|hdw|egr|surveyed\n"
        "101|Main|1|36|84|1.75|HM|20|classroom|12|Y|2024-05-01\n102|Main|1|36|84|1.75|HM|-|storeroom|12|N|NULL\n"
        "103|Main|2|36|84|1.75|HM|90|office|14|Y|NULL\n",
        {
            "101": {
                **DOOR,
                "t": 1.8,
                "building": "Main",
                "level": "1",
                "material": "hollow-metal",
                "rating": "20",
                "egress": "egress",
            },
            "102": {**DOOR, "t": 1.8, "building": "Main", "level": "1", "material": "hollow-metal", "egress": "none"},
            "103": {
                **DOOR,
                "t": 1.8,
                "building": "Main",
                "level": "2",
                "material": "hollow-metal",
                "rating": "90",
                "egress": "egress",
            },
        },
        asks=("column H (fr): what does",),
        name="list.txt",
    ),
    "a gatehouse's, on its side": Stranger(
        "Gatehouse doors,,,\nOpening,GH-1,GH-2,GH-3\nLocation,Porch,Post room,Switch room\n"
        'Width,"3\'-0""","3\'-0""","PR 3\'-0"""\nHeight,"7\'-0""","7\'-0""","7\'-0"""\nMaterial,HM,HM,HM\n'
        "Fire label,\u2014,C,B\nHanding,LH,RHR,LHR\n",
        {
            "GH-1": {**DOOR, "material": "hollow-metal", "hand": "LH", "room_from": "Porch"},
            "GH-2": {**DOOR, "material": "hollow-metal", "hand": "RHR", "room_from": "Post room", "rating": "45"},
            "GH-3": {
                "h": 84.0,
                "form": "pair",
                "leaves": 2,
                "material": "hollow-metal",
                "hand": "LHR",
                "room_from": "Switch room",
                "rating": "90",
            },
        },
        asks=("is the width that of each leaf or of both", "column G (Fire label): what does"),
    ),
    "a school's, typed by hand": Stranger(
        "Lower school - doors walked 3/4 and 3/5\nRm,Dr #,Size,Swing,Matl,Remarks\n"
        "101,1,3/0 x 7/0 x 1 3/4,LH,HM,leaks\n"
        "101,2,3/0 x 7/0 x 1 3/4,RH,WD,rubs - 36 1/2 in. wide at the bottom\nGym,3,PR 3/0 x 7/0 x 1 3/4,,HM,photo 12\n"
        ",,,,,\nsee also the sheet of the boiler room,,,,,\n",
        {
            "1": {**DOOR, "t": 1.8, "hand": "LH", "material": "hollow-metal", "notes": "leaks", "room_to": "101"},
            "2": {**DOOR, "t": 1.8, "hand": "RH", "notes": "rubs - 36 1/2 in. wide at the bottom", "room_to": "101"},
            "3": {
                "form": "pair",
                "leaves": 2,
                "h": 84.0,
                "t": 1.8,
                "material": "hollow-metal",
                "notes": "photo 12",
                "room_to": "Gym",
            },
        },
        asks=("is the width that of each leaf or of both", '"WD"'),
    ),
    "columns of a key system": Stranger(
        "Key Mark,Door,Keyset,Cyl Type,Qty Cyl,Core Mark,Width,Height,Location\n"
        "A1AA,101,AA1,Mortise,1,X12,36,84,Office\n"
        "A1AB,102,AA2,Rim,1,X13,36,84,Store\nA1AB,103,AA2,Mortise,2,X14,36,84,Store east\n",
        {
            "101": {**DOOR, "room_from": "Office"},
            "102": {**DOOR, "room_from": "Store"},
            "103": {**DOOR, "room_from": "Store east"},
        },
    ),
    "sizes in words, and others in remarks": Stranger(
        "Opening,Size,Notes\nA,3 ft x 7 ft,two inch undercut\nB,3 ft. 0 in. x 6 ft. 8 in.,trim 1 inch proud\n"
        "C,three foot by seven foot,\nD,36 in wide x 84 in high,36 x 80 before\n",
        {
            "A": {**DOOR, "notes": "two inch undercut"},
            "B": {"w": 36.0, "h": 80.0, "notes": "trim 1 inch proud"},
            "C": DOOR,
            "D": {**DOOR, "notes": "36 x 80 before"},
        },
    ),
    "millimetres and inches in one column": Stranger(
        'Door ID,Width,Height,Thk\nN-1,914.4 mm,2133.6 mm,44 mm\nN-2,"36""","84""","1 3/4"""\n'
        'N-3,3\'-0",7\'-0",1.75"\n'
        "N-4,914,2134,44\nN-5,36,84,1.75\n",
        {"N-1": {**DOOR, "t": 1.7}, "N-2": {**DOOR, "t": 1.8}, "N-3": {**DOOR, "t": 1.8}, "N-5": {**DOOR, "t": 1.8}},
        # A number without a unit that is no inches: one row, and three of its cells.
        refuses=("read '914'; ", "read '2134'; ", "read '44'; "),
    ),
    "remarks of an office between the rows": Stranger(
        "DOOR,ROOM,W,H,RATING,REMARKS\n101,Lobby,36,84,20,\nDoor 101 is held open by day - check with the porter,,,,,\n"
        "102,Office,36,84,,\n103,Stair 1,36,84,90,\n*** all doors below are on the mezzanine ***,,,,,\n"
        "104,Store,30,80,,\n",
        {
            "101": {**DOOR, "rating": "20", "room_to": "Lobby"},
            "102": {**DOOR, "room_to": "Office"},
            "103": {**DOOR, "rating": "90", "room_to": "Stair 1"},
            "104": {"w": 30.0, "h": 80.0, "room_to": "Store"},
        },
    ),
    "types that stand on a drawing": Stranger(
        "Mark,Type,Width\n101,A,36\n102,B,36\n103,F1,36\n", {m: {"w": 36.0} for m in ("101", "102", "103")}
    ),
    "headings that nobody knows, told": Stranger(
        "Q,Broad,Tall\n101,36,84\n",
        {"101": DOOR},
        options={"columns": {"Q": "opening.mark", "Broad": "leaf.width_mm", "Tall": "leaf.height_mm"}},
    ),
}


def as_person_reads(opening):
    leaf = opening.leaves[0].facts
    short = {"width_mm": "w", "height_mm": "h", "thickness_mm": "t"}
    measures = {short[name]: round(leaf[name] / 25.4, 1) for name in short if name in leaf}
    leaves = {"leaves": 2} if len(opening.leaves) > 1 else {}
    material = {name: leaf[name] for name in ("material", "core") if name in leaf}
    return {**{k: v for k, v in opening.facts.items() if k != "mark"}, **measures, **material, **leaves}


@pytest.mark.parametrize("name", LISTS)
def test_it_is_read_as_a_person_reads_it(tmp_path, name):
    check(tmp_path, LISTS[name])


def check(tmp_path, stranger):
    """Read a list, and compare openings, facts, questions and refusals with what stands beside it."""
    path = tmp_path / stranger.name
    path.write_bytes(stranger.text.encode(stranger.encoding))
    found = read_survey(path, SurveyOptions(**{"bare_unit": "in", **stranger.options}))
    assert {opening.mark: as_person_reads(opening) for opening in found.openings} == stranger.reads
    asked = [question.describe() for question in found.questions]
    refused = [cause.describe() for cause in causes(found.problems)]
    for wanted, said in ((stranger.asks, asked), (stranger.refuses, refused)):
        assert len(said) == len(wanted), said
        assert all(any(words in line for line in said) for words in wanted), said
    return found

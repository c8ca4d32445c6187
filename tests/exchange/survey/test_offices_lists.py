"""Invented lists in the shapes that architects, hardware consultants, keepers of buildings and databases hand out.

As in `test_strangers_lists`: beside each stands what a person reads in it, written by hand, and what has to be asked.
The shapes are common practice of published door schedules.
"""

from dataclasses import dataclass

import pytest

from hwsched.exchange.problems import InputRejected
from hwsched.exchange.survey.book import SurveyOptions, read_survey
from tests.exchange.survey.test_strangers_lists import DOOR, Stranger, check
from tests.exchange.surveys import write


@dataclass
class Listed(Stranger):
    """One list, with the oddities that are asked about as well."""

    odd: tuple[str, ...] = ()
    passed: tuple[str, ...] = ()
    """Words of what is named as not read, beside columns."""


HM = {"material": "hollow-metal"}
FRAME = {"frame_material": "hollow-metal"}
SERIES = {m: {**DOOR, **HM} for m in ("101", "102", "103")}
ALUMINIUM = {"material": "aluminium", "frame_material": "aluminium"}
HOUSE_A = {**FRAME, "building": "House A", "material": "wood"}
KEEPER = (
    "DOOR_ID,BLDG_NM,FLOOR_CD,RM_NBR,DR_WIDTH_IN,DR_HGT_IN,DR_MATL_CD,FRM_MATL_CD,FIRE_RTG_MIN,EXIT_DR_FL,ADA_FL,"
    "LAST_INSP_DT,CMNT_TXT\n"
)
LISTS = {
    "an architect's, in three rows of headings, with types and details": Listed(
        "DOOR SCHEDULE,,,,,,,,,,,,,,,,,\n,,DOOR,,,,,,,FRAME,,,DETAILS,,,,,\n"
        "NO.,ROOM NAME,SIZE,,,TYPE,MATL.,FIN.,GLAZ.,TYPE,MATL.,FIN.,HEAD,JAMB,SILL,FIRE RATING,HDWR. SET,NOTES\n"
        ",,W,H,THK,,,,,,,,,,,,,\n"
        '100A,VESTIBULE,PR 3\'-0",7\'-0",1 3/4",FG,ALUM,ANOD.,G1,A,ALUM,ANOD.,1/A8.1,2/A8.1,3/A8.1,---,1,1\n'
        '101,OFFICE,3\'-0",7\'-0",1 3/4",F,WD,STAIN,---,1,HM,PT,4/A8.1,5/A8.1,---,20 MIN,2,\n'
        '102,ELEC.,3\'-0",7\'-0",1 3/4",F,HM,PT,---,1,HM,PT,4/A8.1,5/A8.1,---,90 MIN,3,"2, 3"\n'
        "DOOR SCHEDULE NOTES:,,,,,,,,,,,,,,,,,\n1. CARD READER BY OWNER.,,,,,,,,,,,,,,,,,\n"
        "2. PROVIDE LOUVER PER MECHANICAL.,,,,,,,,,,,,,,,,,\n",
        {
            "100A": {
                "form": "pair",
                "room_to": "VESTIBULE",
                "leaves": 2,
                "h": 84.0,
                "t": 1.8,
                "material": "aluminium",
                "frame_material": "aluminium",
                "notes": "1",
            },
            "101": {**DOOR, **FRAME, "t": 1.8, "rating": "20", "room_to": "OFFICE"},
            "102": {**DOOR, **HM, **FRAME, "t": 1.8, "rating": "90", "notes": "2, 3", "room_to": "ELEC."},
        },
        asks=("is the width that of each leaf or of both", '"WD"', '"---"'),
        passed=("a title (DOOR SCHEDULE NOTES:)", "1. CARD", "2. PROVIDE", "type FG", "type F,"),
    ),
    "typed by hand, with dittos": Listed(
        'Mark,Width,Height,Material,Frame,Rating,Notes\n101,3-0,7-0,HM,HM,90,\n102,"""","""",DO.,ditto,do,same as 101\n'
        '103,\'\',"""",same,"""","""",\n104,2-8,\u3003,\u3003,\u3003,NR,\n105,-"-,-"-,-"-,,,\n',
        {
            "101": {**DOOR, **HM, **FRAME, "rating": "90"},
            "102": {**DOOR, **HM, **FRAME, "rating": "90", "notes": "same as 101"},
            "103": {**DOOR, **HM, **FRAME, "rating": "90"},
            "104": {"w": 32.0, "h": 84.0, **HM, **FRAME, "rating": "none"},
            "105": {"w": 32.0, "h": 84.0, **HM},
        },
    ),
    "feet and inches with a hyphen, in widths and heights": Listed(
        "Mark,Width,Height\n101,3-0,7-0\n102,2-6,6-8\n103,3/0,8/0\n104,36,84\n",
        {"101": DOOR, "102": {"w": 30.0, "h": 80.0}, "103": {"w": 36.0, "h": 96.0}, "104": DOOR},
    ),
    "rows that name several doors": Listed(
        'Door,Width,Height,Material\n101-103,36,84,HM\n"105, 106",36,84,HM\n201A/B,36,84,HM\nW1-01,36,84,HM\n',
        {m: {**DOOR, **HM} for m in ("101-103", "105, 106", "201A/B", "W1-01")},
        odd=("several-marks",),
    ),
    "rows that name several doors, told": Listed(
        'Door,Width,Height,Material\n101-103,36,84,HM\n"105, 106",36,84,HM\n201A/B,36,84,HM\nW1-01,36,84,HM\n',
        {**SERIES, **{m: {**DOOR, **HM} for m in ("105", "106", "201A", "201B", "W1-01")}},
        options={"cures": frozenset({"several-marks"})},
    ),
    "numbers that are free, and doors that were deleted": Listed(
        "Mark,Width,Height,Material,Remarks\n101,36,84,HM,\n102,NOT USED,,,\n103,,,,NOT USED\n104,Deleted,,,\n"
        "105,36,84,HM,DELETED\n106,VOID,VOID,VOID,VOID\n107,-,-,-,OMITTED\n108,36,84,HM,closer removed\n",
        {
            "101": {**DOOR, **HM},
            "105": {**DOOR, **HM, "notes": "DELETED"},
            "108": {**DOOR, **HM, "notes": "closer removed"},
        },
        odd=("said-deleted",),
        passed=("102, not used", "103, not used", "104, deleted", "106, void", "107, omitted"),
    ),
    "a door that was deleted, told": Listed(
        "Mark,Width,Height,Remarks\n101,36,84,\n105,36,84,DELETED\n",
        {"101": DOOR},
        options={"cures": frozenset({"said-deleted"})},
    ),
    "two blocks beside each other": Listed(
        "Mark,Width,Height,Remarks,,Mark,Width,Height,Remarks\n101,36,84,rubs,,201,30,80,\n102,36,84,,,202,36,84,new\n"
        "103,36,84,,,,,,\n",
        {
            "101": {**DOOR, "notes": "rubs"},
            "102": DOOR,
            "103": DOOR,
            "201": {"w": 30.0, "h": 80.0},
            "202": {**DOOR, "notes": "new"},
        },
    ),
    "what a database prints": Listed(
        "DOOR_NO\tBLDG\tFLR\tDR_WIDTH\tDR_HT\tFIRE_RTG\tFRM_MATL\tREMARKS\n"
        "-------\t----\t---\t--------\t-----\t--------\t--------\t-------\n"
        "0101\tA\t1\t36.00\t84.00\t90\tHM\tNULL\n0102\tA\t1\t36.00\t84.00\tNULL\tNULL\tsticks\n\n(2 rows affected)\n",
        {
            "0101": {**DOOR, **FRAME, "building": "A", "level": "1", "rating": "90"},
            "0102": {**DOOR, "building": "A", "level": "1", "notes": "sticks"},
        },
        name="list.txt",
        passed=("a rule (-------)", "(2 rows affected)"),
    ),
    "a report in pages, its columns under rules": Listed(
        "REPORT DR-12                   DOOR INVENTORY                   PAGE 1\n"
        "SITE: YARD                     RUN 03/04/19\n"
        "----------------------------------------------------------------------\n"
        "DOOR    BLDG  FLR  WIDTH  HEIGHT  MATL   RATING  REMARKS\n"
        "------  ----  ---  -----  ------  -----  ------  --------------------\n"
        "1001    A     1    36.00  84.00   HM     90      STAIR\n"
        "1002    A     1    36.00  84.00   HM             OFFICE\n\n"
        "REPORT DR-12                   DOOR INVENTORY                   PAGE 2\n"
        "SITE: YARD                     RUN 03/04/19\n"
        "----------------------------------------------------------------------\n"
        "DOOR    BLDG  FLR  WIDTH  HEIGHT  MATL   RATING  REMARKS\n"
        "------  ----  ---  -----  ------  -----  ------  --------------------\n"
        "2001    A     2    36.00  84.00   HM     90      STAIR\n*** END OF REPORT ***\n",
        {
            "1001": {**DOOR, **HM, "building": "A", "level": "1", "rating": "90", "notes": "STAIR"},
            "1002": {**DOOR, **HM, "building": "A", "level": "1", "notes": "OFFICE"},
            "2001": {**DOOR, **HM, "building": "A", "level": "2", "rating": "90", "notes": "STAIR"},
        },
        name="list.txt",
        passed=(
            "a rule",
            "a title again (REPORT",
            "a title again (SITE",
            "a rule",
            "the header again",
            "a rule",
            "END OF",
        ),
    ),
    "ticks under hands and ratings": Listed(
        ",,,FIRE RATING,,,HAND,,,\nMark,Width,Height,20,45,90,LH,RH,LHR,RHR\n"
        "101,36,84,,,X,X,,,\n102,36,84,x,,,,,x,\n103,36,84,,,,,,,\u2713\n",
        {
            "101": {**DOOR, "rating": "90", "hand": "LH"},
            "102": {**DOOR, "rating": "20", "hand": "LHR"},
            "103": {**DOOR, "hand": "RHR"},
        },
    ),
    "texts that are kept from a spreadsheet's guesses": Listed(
        '"Mark","Width","Height"\n"=""0101""","=""36""","84"\n\'0102,36,84\n="1-3",36,84\n',
        {"0101": DOOR, "0102": DOOR, "1-3": DOOR},
    ),
    "feet in one column, inches in the next": Listed(
        "Mark,Width,,Height,,Leaves\n,ft,in,ft,in,\n101,3,0,7,0,1\n102,2,8 1/2,6,8,2\n",
        {
            "101": {**DOOR, "form": "single"},
            "102": {"w": 32.5, "h": 80.0, "form": "pair", "leaves": 2},
        },
    ),
    "measures left to the site, doors that stand already": Listed(
        "Mark,Width,Height,Door Matl,Frame Matl\n101,VIF,V.I.F.,EXIST,ETR\n102,varies,verify in field,(E) HM,EX. HM\n"
        "103,3'-0\" VIF,84 +/-,EXIST. WD,HM\n104,MATCH EXIST.,84,HM,HM\n",
        {
            "101": {},
            "102": {**HM, **FRAME},
            "103": {**DOOR, **FRAME},
            "104": {"h": 84.0, **HM, **FRAME},
        },
        asks=('"EXIST. WD" (1)',),
    ),
    "a hardware consultant's, by set": Listed(
        "Opening #,Qty,Nominal Size,Handing,Door Matl,Frame Matl,Fire Label,Hdwe\nHW SET 1,,,,,,,\n"
        '101,1 SGL,3070,LHRA,HMD,HMF,"1 1/2 HR ""B""",HW-1\n102,1 SGL,3068,L.H.,HMD,HMF,90 MIN W/ SMOKE,HW-1\n'
        "Hardware Group No. 04A,,,,,,,\n103,1 SGL,30 x 70,RH REV,HMD,HMF,none required,HW-3\nSET: 05,,,,,,,\n"
        "104,1 SGL,3070,R,HMD,HMF,UL-B,HW-5\n",
        {
            "101": {**DOOR, **HM, **FRAME, "hand": "LHR", "rating": "90"},
            "102": {"w": 36.0, "h": 80.0, **HM, **FRAME, "hand": "LH", "rating": "90"},
            "103": {"w": 30.0, "h": 70.0, **HM, **FRAME, "hand": "RHR", "rating": "none"},
            "104": {**DOOR, **HM, **FRAME, "hand": "RH", "rating": "90"},
        },
        odd=("run-together",),
        passed=("a title (HW SET 1)", "a title (Hardware Group No. 04A)", "a title (SET: 05)"),
    ),
    "short headings, two columns of remarks, types on a drawing": Listed(
        "DR. NO.,RM. NAME,DR. TYPE,DR. WD.,DR. HT.,DR. THK.,DR. MAT'L,FR. TYPE,FR. MAT'L,REMARKS,COMMENTS\n"
        '101,LOBBY,A,3\'-0",7\'-0",1 3/4",HM,F1,HM,see plan,ok\n102,HALL,B,3\'-0",7\'-0",1 3/4",SCWD,F1,HM,,sticks\n'
        '103,STAIR,A,(2) 3\'-0",7\'-0",1 3/4",HM,F2,HM,,\n',
        {
            "101": {**DOOR, **HM, **FRAME, "t": 1.8, "notes": "see plan; ok", "room_to": "LOBBY"},
            "102": {**DOOR, **FRAME, "t": 1.8, "material": "wood", "notes": "sticks", "room_to": "HALL"},
            "103": {**DOOR, **HM, **FRAME, "t": 1.8, "form": "pair", "leaves": 2, "room_to": "STAIR"},
        },
        passed=("type A", "type B"),
    ),
    "building and floor in the title, levels written once": Listed(
        "Project:,Yard\nBuilding:,East Hall\nFloors:,2\nDate:,3/4/20\n\nFloor,Mark,Width,Height\n"
        "1st,101,36,84\n,102,36,84\n2nd,201,36,84\n,202,36,84\n",
        {
            m: {**DOOR, "building": "East Hall", "level": level}
            for m, level in (("101", "1st"), ("102", "1st"), ("201", "2nd"), ("202", "2nd"))
        },
    ),
    "an inspector's list of fire doors": Listed(
        "Door ID,Location,Asset Tag,Fire Rating,Self Closing,Label Present,Gap > 1/8,Pass/Fail,Inspected,Inspector\n"
        "FD-001,L1 Corridor by 104,00123,90 min,Y,Y,N,Pass,3/4/2019,R. P.\n"
        "FD-002,L1 Stair A,00124,90 min,N,N,Y,FAIL,3/4/2019,R. P.\nFD-003,L2 Corridor,,20 min,,,,N/A,,\n",
        {
            "FD-001": {"room_from": "L1 Corridor by 104", "rating": "90"},
            "FD-002": {"room_from": "L1 Stair A", "rating": "90"},
            "FD-003": {"room_from": "L2 Corridor", "rating": "20"},
        },
    ),
    "numbers as a script writes them": Listed(
        "mark,width,height,rating\n101.0,36.0,84.0,90.0\n102.0,36.0,84.0,nan\nA-3,36.0,84.0,NaN\n",
        {"101": {**DOOR, "rating": "90"}, "102": DOOR, "A-3": DOOR},
    ),
    "metric, its thousands set apart by blanks": Listed(
        'Mark;Width;Height\n101;914,4;2 133,6\n102;"1 016,0";2\u202f133,6\n',
        {"101": DOOR, "102": {"w": 40.0, "h": 84.0}},
        options={"bare_unit": "mm"},
    ),
    "clear openings, which are no leaves, under two rows of headings": Listed(
        ';;;;Door list ;;\n"Bldg: North";;;;;;\nPos;Door;;Clear opening;;Fire;Remark\n;No.;Type;W;H;;"with\nline"\n'
        '1;N 01;A;1,010;2,135;1\u00bd;"glass, ""frosted"""\n2;N 02;A;885;2.135;-;\n;;;;;;\nLast: 2;;;;;;\n',
        {
            "N 01": {"building": "North", "rating": "90"},
            "N 02": {"building": "North"},
        },
        asks=('"-" (1)',),
        passed=("row 8: no mark", "type A, to which 2 rows refer"),
    ),
    "numbers without a unit, in a project that has none": Listed(
        "Mark,Width,Height,Hand\n101,36,84,LH\n102,32,80,RH\n103,30.5,84,LH\n",
        {},
        # One cause a column, however many numbers stand in it.
        refuses=(
            "3 rows (2-4), column B (Width): read '36' and 2 others; has no unit",
            "column C (Height): read '84' and 1 other;",
        ),
        options={"bare_unit": None},
    ),
    "what stands in the marks of an old list": Listed(
        "Door #|Rm|W|H|Lbl\n101|Off.|3'|7'|90\n103 (deleted)||||\n104|?|3'0\"|6'8\"|C\n105 - NOT USED||||\nn/a||||\n",
        {"101": {**DOOR, "rating": "90", "room_to": "Off."}, "104": {"w": 36.0, "h": 80.0, "rating": "45"}},
        passed=("103 (deleted)", "105 - NOT USED", "row 6: no mark"),
    ),
    "an architect's of one building, pairs in three ways, codes for all the rest": Listed(
        "DOOR AND FRAME SCHEDULE - BUILDING 2,,,,,,,,,,,,,,\n"
        "MARK,ROOM,DOOR,,,,,,FRAME,,,LABEL,HDWE,UNDERCUT,REMARKS\n"
        ",,W,H,T (IN),TYPE,MAT'L,GLASS,TYPE,MAT'L,DEPTH,,GROUP,(IN),\n"
        'B-101A,LOBBY,PR 3\'-0",7\'-0",1.75,FG,AL,G-1,1,AL,5,,1,0.5,"PAIR, READER ON ""A"" LEAF"\n'
        "B-101B,DO,3'-0\",DO,DO,FG,AL,G-1,1,AL,5,,2,0.5,\n"
        "B-102,OFFICE,3'-0\",7'-0\",1.75,F,SCWD,,2,HM,5 3/4,20 MIN.,3,0.75,SEE NOTE 2\n"
        "B-103,CORRIDOR,3'-4\",7'-0\",1.75,N,HM,G-2,2,HM,5 3/4,45 MIN.,4,0.75,\n"
        "B-104,ELECTRICAL,(2)3'-0\",8'-0\",1.75,F,HM,,3,HM,5 3/4,1-1/2 HR,5,0.75,W/ FLUSH BOLTS\n"
        "TOTAL DOORS: 5,,,,,,,,,,,,,,\nNOTES:,,,,,,,,,,,,,,\n1. FIELD VERIFY ALL OPENINGS.,,,,,,,,,,,,,,\n",
        {
            "B-101A": {
                **ALUMINIUM,
                "room_to": "LOBBY",
                "form": "pair",
                "leaves": 2,
                "h": 84.0,
                "t": 1.8,
                "notes": 'PAIR, READER ON "A" LEAF',
            },
            "B-101B": {**DOOR, **ALUMINIUM, "room_to": "LOBBY", "t": 1.8},
            "B-102": {
                **DOOR,
                **FRAME,
                "room_to": "OFFICE",
                "t": 1.8,
                "material": "wood",
                "rating": "20",
                "notes": "SEE NOTE 2",
            },
            "B-103": {**HM, **FRAME, "room_to": "CORRIDOR", "w": 40.0, "h": 84.0, "t": 1.8, "rating": "45"},
            "B-104": {
                **HM,
                **FRAME,
                "room_to": "ELECTRICAL",
                "form": "pair",
                "leaves": 2,
                "w": 36.0,
                "h": 96.0,
                "t": 1.8,
                "rating": "90",
                "notes": "W/ FLUSH BOLTS",
            },
        },
        asks=("is the width that of each leaf or of both",),
        passed=("TOTAL DOORS: 5", "NOTES:", "1. FIELD VERIFY", "type FG", "type F,", "type N"),
    ),
    "openings with the sets of their hardware in a table below": Listed(
        "Clinic refit - openings,,,,,,\nOpening,Location,Leaf (mm),Fire,Handing,Set,Comments\n"
        "E01,Main entrance,1000 x 2100,,RH,1,\nE02,Pharmacy,900 x 2100,FD30S,LH,2,keep locked\n"
        "E03,Riser,600 x 1800,FD60,LH,3,\n,,,,,,\nIronmongery sets,,,,,,\nSet,Item,Qty,Finish,,,\n"
        "1,Pull handle,2,SSS,,,\n1,Euro cylinder,1,SN,,,\n2,Mortise lock,1,SSS,,,\n3,Budget lock,1,SN,,,\n",
        {
            "E01": {"room_from": "Main entrance", "hand": "RH", "w": 39.4, "h": 82.7},
            "E02": {
                "room_from": "Pharmacy",
                "hand": "LH",
                "w": 35.4,
                "h": 82.7,
                "rating": "30",
                "notes": "keep locked",
            },
            "E03": {"room_from": "Riser", "hand": "LH", "w": 23.6, "h": 70.9, "rating": "60"},
        },
        passed=("a title (Ironmongery sets)", "rows 8-12: another table (Set), not read"),
    ),
    "an estate's in metres with commas, houses and floors as titles": Listed(
        "Estate:;Hill Side;;;;;;;\nAs of:;12.03.2024;;;;;;;\n;;;;;;;;\n"
        "Nr.;Room no.;Width (m);Height (m);Thickness (cm);Leaf material;Frame;Fire class;Pcs\nHouse A;;;;;;;;\n"
        "1st floor;;;;;;;;\nA1.1;101;0,90;2,10;4,2;wood;steel;;1\nA1.2;102;0,985;2,10;4,2;wood;steel;T30;1\n"
        "2nd floor;;;;;;;;\nA2.1;201;1,01;2,13;6,5;steel;steel;EI90;1\nA2.2;202;0,76;2,03;4,0 *);wood;wood;;1\n"
        "House B;;;;;;;;\n1st floor;;;;;;;;\nB1.1;101;0,90;2,10;4,2;wood;steel;E30;1\nSum;;;;;;;;5\n"
        "*) to be measured again;;;;;;;;\n",
        {
            "A1.1": {**HOUSE_A, "level": "1st floor", "room_to": "101", "w": 35.4, "h": 82.7, "t": 1.7},
            "A1.2": {**HOUSE_A, "level": "1st floor", "room_to": "102", "w": 38.8, "h": 82.7, "t": 1.7, "rating": "30"},
            "A2.1": {
                **HOUSE_A,
                **HM,
                "level": "2nd floor",
                "room_to": "201",
                "w": 39.8,
                "h": 83.9,
                "t": 2.6,
                "rating": "90",
            },
            "B1.1": {
                **HOUSE_A,
                "building": "House B",
                "level": "1st floor",
                "room_to": "101",
                "w": 35.4,
                "h": 82.7,
                "t": 1.7,
                "rating": "30",
            },
        },
        refuses=("read '4,0 *)'",),
        options={"bare_unit": None},
        passed=(
            "(House A)",
            "(1st floor)",
            "(2nd floor)",
            "(House B)",
            "(1st floor)",
            "a total (Sum)",
            "*) to be measured",
        ),
    ),
    "a database of a keeper, its columns named by their kind": Listed(
        f"{KEEPER}0010,MAIN HALL,01,110,36.00,84.00,STL,STL,90,Y,Y,2021-04-05,closer leaks\n"
        '0011,MAIN HALL,01,111,36.00,84.00,WOOD,STL,N/A,N,Y,2021-04-05,"sticks at head,\nneeds planing"\n'
        f"Page 1 of 2,,,,,,,,,,,,\n{KEEPER}0012,MAIN HALL,02,210,32.00,80.00,STL,STL,UNK,N,N,NULL,\n"
        "0013,ANNEX,B1,B12,42.00,84.00,STL,STL,0,Y,UNK,2020-11-30,x\nPage 2 of 2,,,,,,,,,,,,\n"
        "4 record(s) selected,,,,,,,,,,,,\n",
        {
            "0010": {
                **DOOR,
                **FRAME,
                "building": "MAIN HALL",
                "level": "01",
                "room_to": "110",
                "rating": "90",
                "egress": "egress",
                "accessible": True,
                "notes": "closer leaks",
            },
            "0011": {
                **DOOR,
                **FRAME,
                "building": "MAIN HALL",
                "level": "01",
                "room_to": "111",
                "egress": "none",
                "accessible": True,
                "material": "wood",
                "notes": "sticks at head,\nneeds planing",
            },
            "0012": {
                **FRAME,
                "w": 32.0,
                "h": 80.0,
                "building": "MAIN HALL",
                "level": "02",
                "room_to": "210",
                "egress": "none",
                "accessible": False,
            },
            "0013": {
                **FRAME,
                "w": 42.0,
                "h": 84.0,
                "building": "ANNEX",
                "level": "B1",
                "room_to": "B12",
                "egress": "egress",
                "notes": "x",
            },
        },
        asks=('"STL"', '"N/A" (1), "0" (1)'),
        passed=("Page 1 of 2", "the header again", "Page 2 of 2", "4 record(s) selected"),
    ),
    "components of a hand-over": Listed(
        "Name,CreatedBy,TypeName,Space,Description,SerialNumber,InstallationDate,TagNumber\n"
        "Door_101,a@b.example,Single-Flush 36 x 84,101,Office door,n/a,2020-05-01T00:00:00,101\n"
        'Door_102,a@b.example,Single-Flush 36 x 84,"102,103",Store door,n/a,n/a,102\n',
        {"Door_101": {"installed_on": "2020-05-01"}, "Door_102": {}},
        passed=("type Single-Flush 36 x 84, to which 2 rows refer",),
    ),
}


@pytest.mark.parametrize("name", LISTS)
def test_it_is_read_as_a_person_reads_it(tmp_path, name):
    listed = LISTS[name]
    found = check(tmp_path, listed)
    assert tuple(oddity.id for oddity in found.oddities) == listed.odd
    assert len(found.passed_over) == len(listed.passed), found.passed_over
    assert all(words in line for words, line in zip(listed.passed, found.passed_over, strict=True)), found.passed_over


ON_SIDE = "Door,101,102\nWidth,36,30\nHeight,84,80\nFire rating,90,NR\nHand,LH,LHR\n"


def test_a_table_on_its_side_is_read_turned(tmp_path):
    path = tmp_path / "list.csv"
    path.write_text("Yard,,\n" + ON_SIDE + "Frame,HN,HM\n", encoding="utf-8")
    found = read_survey(path, SurveyOptions(bare_unit="in", corrections={"list, turned!G2": "HM"}))
    facts = [(opening.mark, opening.facts["hand"], opening.facts["rating"]) for opening in found.openings]
    assert (facts, found.problems) == ([("101", "LH", "90"), ("102", "LHR", "none")], ())
    assert any("an opening in each column" in each.text for each in found.assumptions)
    # A cell that is refused is called by its place once turned, in a sheet whose name says so.
    refused = read_survey(path, SurveyOptions(bare_unit="in"))
    assert refused.problems[0].describe().startswith("list.csv, sheet list, turned, row 2, column G (Frame): read 'HN'")


def test_where_an_opening_stands_is_a_persons_word(tmp_path):
    path = tmp_path / "list.csv"
    path.write_text(ON_SIDE, encoding="utf-8")
    upright = read_survey(path, SurveyOptions(bare_unit="in", openings_in="rows"))
    assert "101" not in [opening.mark for opening in upright.openings]
    path.write_text("Nr of door,101,102\nWidth of leaf,36,30\nHgt.,84,80\n", encoding="utf-8")
    with pytest.raises(InputRejected):
        read_survey(path, SurveyOptions(bare_unit="in"))
    columns = {"Nr of door": "opening.mark", "Width of leaf": "leaf.width_mm"}
    told = read_survey(path, SurveyOptions(bare_unit="in", columns=columns, openings_in="columns"))
    assert [opening.mark for opening in told.openings] == ["101", "102"]
    (mapping,) = told.mapping
    known = {mapping.fingerprint: mapping.remembered()}
    again = read_survey(path, SurveyOptions(bare_unit="in", remembered=known))
    assert again.openings == told.openings


def test_merged_and_named_cells_of_a_table_on_its_side(tmp_path):
    rows = [
        ["Mark", "101", "102", "103"],
        ["Level", "2", "", ""],
        ["Width", "36", "36", "30"],
        ["Hand", "LH", "RH", "LH"],
    ]
    path = write(tmp_path / "list.xlsx", {"Doors": rows, "Legend": [["HM", "hollow metal"]]}, merged=["B2:D2"])
    found = read_survey(path, SurveyOptions(bare_unit="in", sheet="Doors"))
    assert [(each.mark, each.facts["level"], each.facts["hand"]) for each in found.openings] == [
        ("101", "2", "LH"), ("102", "2", "RH"), ("103", "2", "LH"),
    ]  # fmt: skip


def test_of_two_columns_of_marks_that_of_the_doors_is_taken(tmp_path):
    path = tmp_path / "list.csv"
    path.write_text("Tag,Door No,Width\nA,101,36\nA,102,36\nB,103,36\n", encoding="utf-8")
    found = read_survey(path, SurveyOptions(bare_unit="in"))
    assert [opening.mark for opening in found.openings] == ["101", "102", "103"]
    assert [(each.header, each.filled) for each in found.unmapped] == [("Tag", 3)]


def test_a_column_that_somebody_named_goes_before_another_of_its_fact(tmp_path):
    path = tmp_path / "list.csv"
    path.write_text("Mark,Width,Clear,Height\n101,36,34,84\n", encoding="utf-8")
    found = read_survey(path, SurveyOptions(bare_unit="in", columns={"Clear": "leaf.width_mm"}))
    (opening,) = found.openings
    assert round(opening.leaves[0].facts["width_mm"] / 25.4) == 34


def test_what_ticks_say_is_found_again_and_not_remembered_as_a_column(tmp_path):
    path = tmp_path / "list.csv"
    path.write_text("Mark,Level,LH,RH\n101,1,x,\n102,1,,x\n", encoding="utf-8")
    first = read_survey(path, SurveyOptions())
    (mapping,) = first.mapping
    again = read_survey(path, SurveyOptions(remembered={mapping.fingerprint: mapping.remembered()}))
    for found in (first, again):
        assert ([opening.facts.get("hand") for opening in found.openings], found.problems) == (["LH", "RH"], ())

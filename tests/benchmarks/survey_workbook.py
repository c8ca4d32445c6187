"""A survey workbook as large as a campus: 10,000 openings by 30 columns, typed in mixed spellings."""

import random
from pathlib import Path

from openpyxl import Workbook, load_workbook

HEADER = (
    "Mark", "Building", "Level", "Lowest temperature (C)", "Room to", "Opening form", "Hand", "Fire rating",
    "Stair door", "Egress role", "Accessible route", "Exposure", "Ops/day", "TT", "Trim inside (in)",
    "Frame material", "Stop (in)", "Size", "Leaf thickness (in)", "Leaf material", "Construction", "Lock form",
    "Function", "Backset (in)", "Cyl AFF (in)", "Case height (in)", "Case thickness (in)",
    "Top of case above cylinder (in)", "Trim outside (in)", "Cam",
)  # fmt: skip


DUTY, HEIGHT = HEADER.index("Ops/day"), HEADER.index("Cyl AFF (in)")


def write_survey(path: Path, openings: int = 10_000, distinct: int = 400, differs: str = "") -> None:
    """Write the workbook; ``distinct`` openings differ in what matters, the others repeat them.

    ``differs``: all of them differ besides in their "duty" alone, or in their "geometry".
    """
    rng = random.Random(7)
    kinds = []
    for number in range(distinct):
        metal = number % 2
        choose = rng.choice
        opening = ("SGL", choose(("LH", "RH", "LHR", "RHR")), choose(("none", "20", "45 min", "C", "90")), "n")
        use = (choose(("yes", "no")), choose(("y", "n")), "int", 5 + number, "n", 0, "HM", "5/8")
        size = (choose(("3-0 x 7-0", "3070", '36" x 84"', "2868")), choose(("1 3/4", '1-3/4"', "1.75", "44.5mm")))
        lock = (choose(("mortise", "86")), choose(("office", "F07")), choose(("2 3/4", '2-3/4"', 2.75)))
        given = (choose((40, '40"', "39 15/16")), 6, 1, 1.75, choose((0, "1/8")), choose(("straight", "clover")))
        kinds.append((*opening, *use, *size, "HM" if metal else "WD", "flush", *lock, *given))
    book = Workbook(write_only=True)
    sheet = book.create_sheet("Doors")
    sheet.append(HEADER)
    for number in range(openings):
        place = (
            f"D{number:05d}",
            f"Building {number % 17}",
            f"{number % 9}",
            15 + number % distinct % 3,
            f"Room {number}",
        )
        row = [*place, *kinds[number % distinct]]
        if differs == "duty":
            row[DUTY] = 5 + number / 10
        elif differs == "geometry":
            row[HEIGHT] = 38 + number / 2500
        sheet.append(row)
    book.save(path)


def read_bare(path: Path) -> None:
    """Read every cell with the library alone: what ratios are told to."""
    book = load_workbook(path, read_only=True)
    for row in book.active.iter_rows(values_only=True):
        len(row)
    book.close()

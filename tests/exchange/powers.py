"""Power workbooks for tests: sheets by title, rows by label."""

from openpyxl import Workbook, load_workbook

from hwsched.exchange.power.power_book import SHEETS

LEVELS = [{"Building": "Main", "Level": "1", "Height of the floor [m]": 0.0}]
PLACES = [
    {"Mark": "1", "Along the plan [m]": 10.0, "Across the plan [m]": 0.0, "Up to the cable way [m]": 0.0},
    {"Mark": "2", "Along the plan [m]": 20.0, "Across the plan [m]": 5.0, "Up to the cable way [m]": 1.0},
]
SUPPLIES = [
    {"Name": "PS1", "Building": "Main", "Level": "1", "Where it stands": "Closet", "Along the plan [m]": 0.0,
     "Across the plan [m]": 0.0, "Up to the cable way [m]": 1.0, "Power supply": "PSU", "Use": "Laid",
     "Standby battery": "BAT", "Standby asked [h]": 4},
    {"Name": "PS2", "Building": "Main", "Level": "2", "Power supply": "PSU", "Use": "May be used"},
]  # fmt: skip
CIRCUITS = [{"Supply": "PS1", "Name": "C1", "Wire": "WIRE", "Operations at one time": 2, "Fuse or limiter [A]": 2.0,
             "On the fire alarm": "Keeps power on the fire alarm"}]  # fmt: skip
RUNS = [
    {"Supply": "PS1", "Circuit": "C1", "From": "J1", "To": "1", "Length, one way [m]": 4.0},
    {"Supply": "PS1", "Circuit": "C1", "From": "supply", "To": "J1", "Length, one way [m]": 12.5},
    {"Supply": "PS1", "Circuit": "C1", "From": "1", "To": "2", "Length, one way [m]": 6.0, "Gauge": "16 AWG",
     "Stranding": "Solid", "Conductors in parallel": 2},
]  # fmt: skip
ROUTES = [
    {"Mark": "1", "Supply": "PS1", "Length, one way [m]": 15.0, "Must be fed by it": "yes"},
    {"Mark": "1", "Supply": "PS2", "Length, one way [m]": 33.0, "Must be fed by it": None},
]
WHOLE = {"Levels": LEVELS, "Places": PLACES, "Supplies": SUPPLIES, "Circuits": CIRCUITS, "Runs": RUNS, "Routes": ROUTES}


def write_power(path, **sheets):
    """Write sheets, each a list of rows; a row is a mapping of header to value."""
    book = Workbook()
    book.remove(book.active)
    for title, rows in sheets.items():
        sheet = book.create_sheet(title)
        headers = list(dict.fromkeys(header for row in rows for header in row))
        sheet.append(headers)
        for row in rows:
            sheet.append([row.get(header) for header in headers])
    book.save(path)
    return path


def with_cell(sheet, row, header, value):
    """The whole workbook with one cell changed; a row beyond the last is a new one like the last."""
    rows = [dict(each) for each in WHOLE[sheet]]
    while len(rows) <= row:
        rows.append(dict(rows[-1]))
    rows[row][header] = value
    return {**WHOLE, sheet: rows}


__all__ = ["SHEETS", "WHOLE", "load_workbook", "with_cell", "write_power"]

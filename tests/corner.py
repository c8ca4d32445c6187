"""A corner of the sample: of its survey some openings of each building and kind, with its whole catalogue and power.

Where a test clicks through a project it does as well as all of the sample, and is opened in a part of the time.
"""

from pathlib import Path

from openpyxl import load_workbook

from hwsched.exchange.survey.book import SurveyOptions
from hwsched.model.project import create_project
from hwsched.operations.opening.fitting_openings import fit_openings
from hwsched.operations.parts.catalogue_import import import_catalogue
from hwsched.operations.power.power_import import import_power
from hwsched.operations.power.siting_accepting import accept_siting
from hwsched.operations.power.supply_siting import propose_siting
from hwsched.operations.survey.survey_import import import_survey
from hwsched.paths import SAMPLE

MARKS = frozenset(
    {
        # Mill House: corridors, one with a thumb turn over the cylinder, bored, a thickness not seen, on a supply.
        "M003", "M004", "M005", "M006", "M007", "M008", "M012", "M114", "M016", "M116", "M216", "M316",
        # Glass Annexe: narrow stiles, a thumb turn not seen, euro-profile, glass, a lift and a turnstile.
        "A-02", "A-10", "A-13", "A-15", "E1", "E6", "GL-1", "GL-5", "LIFT-1", "TURN-1",
        # Boat Store.
        "B/1", "X1", "GATE 1", "CAB-1",
    }
)  # fmt: skip
"""The openings."""
_HEADING = 4
NAME = "corner.hwsched"


def make(folder: Path) -> None:
    """Take these openings in, fit them and lay their power, as the sample is made."""
    book = load_workbook(SAMPLE / "survey.xlsx")
    sheet = book["Door survey"]
    rows = [row for row in sheet.iter_rows(min_row=_HEADING + 1, values_only=True) if row[0] in MARKS]
    assert {row[0] for row in rows} == MARKS
    sheet.delete_rows(_HEADING + 1, sheet.max_row)
    for row in rows:
        sheet.append(row)
    book.save(folder / "survey.xlsx")
    with create_project(str(folder / NAME), "Quayside Works", length_style="fraction", bare_unit="in") as project:
        import_catalogue(project, SAMPLE / "catalogue.xlsx", who="tests")
        taken = import_survey(project, folder / "survey.xlsx", SurveyOptions(bare_unit="in"), who="tests")
        assert taken.problems == ()
        # With it come facts of the buildings, from which fits follow.
        import_power(project, SAMPLE / "power.xlsx", who="tests")
        fit_openings(project, who="tests")
        for building in ("Mill House", "Glass Annexe"):
            accept_siting(project, propose_siting(project, building), who="tests")
        fit_openings(project, who="tests")

"""A workbook that the usual reader cannot open, tried with another library, slower and laxer.

What may be dangerous is refused before: the container is checked, and so is each part, by how far it reaches and
whether it defines entities. Here belongs only the second attempt.
"""

import io
import warnings
from pathlib import Path

from openpyxl import load_workbook

from hwsched.exchange.container import Container
from hwsched.exchange.problems import InputRejected
from hwsched.exchange.sheet_scan import inspect

Rows = list[list[object]]


def read_again(path: Path, most_cells: int) -> list[tuple[str, bool, Rows]] | None:
    """Read the sheets of a workbook a second way.

    Parameters
    ----------
    path : Path
        An .xlsx or .xlsm file.
    most_cells : int
        Cells in the rectangles of all sheets together.

    Returns
    -------
    list of tuple or None
        Name, whether it is hidden, and cells of each sheet; None where this reader cannot read it either.

    Raises
    ------
    InputRejected
        For a file that may be dangerous.
    """
    container = Container(path)
    span = 0
    for name in container.names():
        if name.endswith((".xml", ".rels")):
            container.refuse_declarations(name, next(container.chunks(name), b""))
    try:
        for part in container.sheet_parts().values():
            seen = inspect(container.chunks(part))
            span += (seen.last_row + 1) * (seen.last_column + 1)
            if seen.beyond or span > most_cells:
                raise container.rejected(f"reaches over {span:,} cells; {most_cells:,} are read")
        with warnings.catch_warnings():
            # It warns of what it leaves out, such as lists to choose from: of no interest for the cells.
            warnings.simplefilter("ignore")
            # Whole, not row by row: a part without its stated size would then read as empty.
            book = load_workbook(io.BytesIO(container.content), data_only=True)
    except InputRejected:
        raise
    except Exception:
        # Damage shows in as many ways as that library has lines; whatever it is, the first refusal stands.
        return None
    return [
        (
            sheet.title,
            sheet.sheet_state != "visible",
            [[_cell(cell) for cell in row] for row in sheet.iter_rows(values_only=True)],
        )
        for sheet in book.worksheets
    ]


def _cell(cell: object) -> object:
    # As the first reader delivers them: no cell is None, and each number a float.
    if cell is None:
        return ""
    return float(cell) if isinstance(cell, int) and not isinstance(cell, bool) else cell

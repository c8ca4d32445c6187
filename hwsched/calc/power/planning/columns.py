"""A model for the solver put together row by row."""

from collections.abc import Sequence

import numpy as np

from hwsched.calc.solver import Model


class RowsOfModel:
    """Columns of 0 to 1, and rows over them.

    Parameters
    ----------
    columns : int
        Without weight, to begin with.
    whole : bool
        Whether all columns take whole numbers.
    """

    def __init__(self, columns: int = 0, *, whole: bool) -> None:
        self.whole = whole
        self._cost, self._high = [0.0] * columns, [1.0] * columns
        self._rows: list[tuple[Sequence[tuple[int, float]], float, float]] = []

    def column(self, weight: float, high: float = 1.0) -> int:
        """Add a column; returns its index."""
        self._cost.append(weight)
        self._high.append(high)
        return len(self._cost) - 1

    def row(self, entries: Sequence[tuple[int, float]], low: float, high: float) -> int:
        """Add a row of (column, factor); returns its index."""
        self._rows.append((entries, low, high))
        return len(self._rows) - 1

    def model(self) -> Model:
        """Return the model."""
        start = np.cumsum([0, *(len(entries) for entries, _, _ in self._rows)]).astype(np.int32)
        return Model(
            np.array(self._cost),
            np.zeros(len(self._cost)),
            np.array(self._high),
            np.full(len(self._cost), self.whole),
            np.array([low for _, low, _ in self._rows]),
            np.array([high for _, _, high in self._rows]),
            start,
            np.array([c for entries, _, _ in self._rows for c, _ in entries], dtype=np.int32),
            np.array([v for entries, _, _ in self._rows for _, v in entries], dtype=float),
        )

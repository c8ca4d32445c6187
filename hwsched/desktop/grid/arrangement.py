"""How a person has laid a grid out: which columns, in which order, how wide; order and groups of rows. No widgets."""

import json
from collections.abc import Iterable, Mapping
from dataclasses import asdict, dataclass, field, replace
from typing import Any


@dataclass(frozen=True, slots=True)
class Arrangement:
    """What is remembered of a grid by its place."""

    columns: tuple[str, ...] = ()
    """Names in their order; empty: as declared."""
    frozen: int = 0
    """So many columns stay in view at the left."""
    widths: Mapping[str, int] = field(default_factory=dict)
    sort: tuple[str, bool] | None = None
    """Column, and whether downward."""
    group: str | None = None
    """Column by whose values rows stand together."""

    def of_known(self, names: Iterable[str]) -> "Arrangement":
        """Return it for the columns that there are: another program's version, another project may have had others."""
        known = set(names)
        columns = tuple(each for each in dict.fromkeys(self.columns) if each in known)
        return replace(
            self,
            columns=columns,
            frozen=max(0, min(self.frozen, len(columns) - 1)),
            widths={name: width for name, width in self.widths.items() if name in known and 20 <= width <= 2000},
            sort=self.sort if self.sort is not None and self.sort[0] in known else None,
            group=self.group if self.group in known else None,
        )

    def as_text(self) -> str:
        """Write it, to be kept."""
        return json.dumps(asdict(self))

    @classmethod
    def of_text(cls, text: str) -> "Arrangement":
        """Read what was kept; what cannot be read is as if nothing was.

        Examples
        --------
        >>> Arrangement.of_text(Arrangement(("mark", "level"), 1, sort=("level", True)).as_text()).sort
        ('level', True)
        >>> Arrangement.of_text("[1, 2") == Arrangement()
        True
        """
        try:
            held: dict[str, Any] = json.loads(text)
            sort = held["sort"]
            return cls(
                tuple(str(each) for each in held["columns"]),
                int(held["frozen"]),
                {str(name): int(width) for name, width in held["widths"].items()},
                (str(sort[0]), bool(sort[1])) if sort is not None else None,
                str(held["group"]) if held["group"] is not None else None,
            )
        except (ValueError, KeyError, TypeError, AttributeError, IndexError):
            return cls()

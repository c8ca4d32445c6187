"""How many questions deliveries have left; apart from the questions: a window that shows openings asks no more."""

from typing import Final

from sqlalchemy import Connection, func, select

from hwsched.model.project import Project
from hwsched.model.tables import DELIVERY, IN_USE, OPEN_QUESTION, OPENING_TABLE

OPEN: Final = (
    OPEN_QUESTION.c.answer.is_(None),
    OPEN_QUESTION.c.opening_id.is_(None) | IN_USE | (OPEN_QUESTION.c.kind == "again"),
)
"""Of openings that rest only their return is asked."""
_COUNTS: Final = (
    select(DELIVERY.c.number, func.count())
    .select_from(OPEN_QUESTION)
    .join(DELIVERY, OPEN_QUESTION.c.delivery_id == DELIVERY.c.id)
    .outerjoin(OPENING_TABLE, OPEN_QUESTION.c.opening_id == OPENING_TABLE.c.id)
    .where(*OPEN)
    .group_by(DELIVERY.c.number)
    .order_by(DELIVERY.c.number)
)
_ASKED: Final = (
    select(OPEN_QUESTION.c.opening_id)
    .join(OPENING_TABLE, OPEN_QUESTION.c.opening_id == OPENING_TABLE.c.id)
    .where(*OPEN)
    .distinct()
)


def questioned(connection: Connection) -> frozenset[str]:
    """Return the openings about which a question is left."""
    return frozenset(connection.execute(_ASKED).scalars())


def open_counts(project: Project) -> dict[int, int]:
    """Return how many questions are left by the number of their delivery; those without any are left out."""
    with project.reading() as connection:
        return {row[0]: row[1] for row in connection.execute(_COUNTS)}

"""Storing fits: each content once, and per lock point a pointer with the key of its case."""

import hashlib
from collections.abc import Mapping

from sqlalchemy import insert, select

from hwsched.cases import Fit
from hwsched.model.bulk import among, execute_many
from hwsched.model.fit_record import fit_text
from hwsched.model.journal import Change
from hwsched.model.lock_points import points_to_openings
from hwsched.model.tables import FIT_CONTENT, OPENING_FIT


def store_fits(change: Change, fits: Mapping[str, tuple[str, Fit]]) -> None:
    """Store fits.

    Parameters
    ----------
    change : Change
        Open change set; the pointers are journalled, the contents are immutable.
    fits : mapping
        Lock point to the key of its case and the fit.
    """
    if not fits:
        return
    keys: dict[int, str] = {}
    contents: dict[str, tuple[str, str]] = {}
    for _, fit in fits.values():
        # Openings alike share one object, so its text is made once.
        if id(fit) not in keys:
            content = fit_text(fit)
            key = keys[id(fit)] = hashlib.sha256(content.encode()).hexdigest()
            contents[key] = (fit.status, content)
    connection = change.connection
    held = {row[0] for row in among(connection, select(FIT_CONTENT.c.key), FIT_CONTENT.c.key, list(contents))}
    fresh = [
        {"key": key, "status": status, "content": content}
        for key, (status, content) in contents.items()
        if key not in held
    ]
    execute_many(connection, insert(FIT_CONTENT), fresh)
    rows = {point: {"case_key": key, "fit_key": keys[id(fit)]} for point, (key, fit) in fits.items()}
    known = {row[0] for row in among(connection, select(OPENING_FIT.c.id), OPENING_FIT.c.id, list(rows))}
    opening_of = points_to_openings(connection, [point for point in rows if point not in known])
    change.insert(OPENING_FIT, [{"id": p, "opening_id": opening, **rows[p]} for p, opening in opening_of.items()])
    change.update(OPENING_FIT, [(point, row) for point, row in rows.items() if point in known])

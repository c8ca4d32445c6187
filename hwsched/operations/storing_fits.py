"""Storing fits: each content once, and per opening a pointer with the key of its case."""

import hashlib
from collections.abc import Mapping

from sqlalchemy import insert, select

from hwsched.cases import Fit
from hwsched.model.bulk import among, execute_many
from hwsched.model.fit_record import fit_text
from hwsched.model.journal import Change
from hwsched.model.tables import FIT_CONTENT, OPENING_FIT


def store_fits(change: Change, fits: Mapping[str, tuple[str, Fit]]) -> None:
    """Store fits.

    Parameters
    ----------
    change : Change
        Open change set; the pointers are journalled, the contents are immutable.
    fits : mapping
        Opening to the key of its case and the fit.
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
    rows = {opening: {"case_key": key, "fit_key": keys[id(fit)]} for opening, (key, fit) in fits.items()}
    known = {row[0] for row in among(connection, select(OPENING_FIT.c.id), OPENING_FIT.c.id, list(rows))}
    change.insert(OPENING_FIT, [{"id": opening, **row} for opening, row in rows.items() if opening not in known])
    change.update(OPENING_FIT, [(opening, row) for opening, row in rows.items() if opening in known])

"""What a screen reader gets of the desktop, as JSON: run by the system's Python, which has pyatspi, beside the desktop.

Usage: read_aloud.py MARK, the opening that is shown when the project was opened.
"""

import json
import sys
import time

import pyatspi  # type: ignore[import-not-found]

LISTS = (pyatspi.ROLE_TABLE, pyatspi.ROLE_TREE_TABLE, pyatspi.ROLE_TREE)
STATE_SHOWING = pyatspi.STATE_SHOWING
STARTED_S, THEN_S = 30, 8
"""The desktop and its register may take so long to come up on a loaded machine; what follows in them comes at once."""
BETWEEN_S = 0.3
"""Each look walks the whole window over the bus, at the cost of both sides."""


def walk(node, deep=0):
    """All that stands in a node, itself first; what goes while it is looked at is passed over."""
    yield node
    if deep > 40 or node.getRole() in LISTS:
        return
    for at in range(node.childCount):
        child = node.getChildAtIndex(at)
        if child is not None:
            yield from walk(child, deep + 1)


def waited(what, look, at_most_s=THEN_S, otherwise=lambda: ""):
    """Return what a look finds, as soon as it finds something; what was there instead is said when it never does."""
    end = time.monotonic() + at_most_s
    while time.monotonic() < end:
        try:
            found = look()
        except Exception:  # The bus says so of what has just gone, in many ways.
            found = None
        if found:
            return found
        time.sleep(BETWEEN_S)
    sys.exit(f"never came: {what}. {otherwise()}")


def named(app, name):
    """The list of that name that is in sight and holds something."""
    for node in walk(app):
        seen = node.getRole() in LISTS and node.getState().contains(pyatspi.STATE_SHOWING)
        if seen and node.name == name and node.childCount > 0:
            return node
    return None


def pressed(app, name):
    """Press the page of that name that is in sight; tells whether there is one."""
    for node in walk(app):
        if node.getRole() == pyatspi.ROLE_PAGE_TAB and node.name == name and node.getState().contains(STATE_SHOWING):
            actions = node.queryAction()
            return any(actions.doAction(at) for at in range(actions.nActions))
    return False


def tabs(app):
    """Words of all tabs that are in sight."""
    seen = [node for node in walk(app) if node.getRole() == pyatspi.ROLE_PAGE_TAB]
    return f"Tabs in sight: {[node.name for node in seen if node.getState().contains(STATE_SHOWING)]}"


def application():
    for app in pyatspi.Registry.getDesktop(0):
        if app is not None and app.name == "hwsched":
            return app
    return None


def row_of(table, mark):
    """Cells of the row of a mark, by their names."""
    cells = table.queryTable()
    for row in range(cells.nRows):
        first = cells.getAccessibleAt(row, 0)
        if first.name == mark:
            return [cells.getAccessibleAt(row, column) for column in range(min(cells.nColumns, 8))]
    return None


def main():
    app = waited("the desktop", application, STARTED_S)
    table = waited("the register", lambda: named(app, "Openings"), STARTED_S, lambda: tabs(app))
    row = waited("the opening", lambda: row_of(table, sys.argv[1]))
    said = {"cells": [each.name for each in row], "rows": table.queryTable().nRows}
    said["columns"] = [table.queryTable().getColumnHeader(at).name for at in range(len(row))]
    waited("the inspector's facts", lambda: pressed(app, "Facts"), otherwise=lambda: tabs(app))
    facts = waited("the facts", lambda: named(app, "Facts"))

    def told():
        names = [child.name for child in (facts.getChildAtIndex(at) for at in range(facts.childCount)) if child]
        return names if sys.argv[1] in names else None

    said["facts"] = waited("its facts", told)
    print(json.dumps(said))


main()

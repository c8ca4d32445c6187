"""What a screen reader gets of the desktop, as JSON: run by the system's Python, which has pyatspi, beside the desktop.

Usage: read_aloud.py MARK, the opening that is shown when the project was opened.
"""

import json
import sys
import time

import pyatspi  # type: ignore[import-not-found]

LISTS = (pyatspi.ROLE_TABLE, pyatspi.ROLE_TREE_TABLE, pyatspi.ROLE_TREE)
STATE_SHOWING = pyatspi.STATE_SHOWING
DEADLINE = time.monotonic() + 60


def walk(node, deep=0):
    """All that stands in a node, itself first; what goes while it is looked at is passed over."""
    yield node
    if deep > 40 or node.getRole() in LISTS:
        return
    for at in range(node.childCount):
        child = node.getChildAtIndex(at)
        if child is not None:
            yield from walk(child, deep + 1)


def waited(what, look):
    """Return what a look finds, as soon as it finds something."""
    while time.monotonic() < DEADLINE:
        try:
            found = look()
        except Exception:  # The bus says so of what has just gone, in many ways.
            found = None
        if found:
            return found
        time.sleep(0.1)
    sys.exit(f"never came: {what}")


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
    app = waited("the desktop", application)
    table = waited("the register", lambda: named(app, "Openings"))
    row = waited("the opening", lambda: row_of(table, sys.argv[1]))
    said = {"cells": [each.name for each in row], "rows": table.queryTable().nRows}
    said["columns"] = [table.queryTable().getColumnHeader(at).name for at in range(len(row))]
    waited("the inspector", lambda: pressed(app, "Facts"))
    facts = waited("the facts", lambda: named(app, "Facts"))

    def told():
        names = [child.name for child in (facts.getChildAtIndex(at) for at in range(facts.childCount)) if child]
        return names if sys.argv[1] in names else None

    said["facts"] = waited("its facts", told)
    print(json.dumps(said))


main()

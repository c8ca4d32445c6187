"""Every text that a person can see of a window: what widgets show and tell, what stands in cells and over them, menus.

With which of them is data: what people wrote, what the maker calls a part, identifiers by which things are known.
"""

from PySide6.QtCore import QAbstractListModel, QModelIndex, Qt
from PySide6.QtWidgets import (
    QAbstractButton,
    QAbstractItemView,
    QComboBox,
    QGroupBox,
    QHeaderView,
    QLabel,
    QLineEdit,
    QListWidget,
    QMenu,
    QPlainTextEdit,
    QSpinBox,
    QTabBar,
    QTreeWidget,
    QWidget,
)
from sqlalchemy import select

from hwsched.catalogue import kind_of
from hwsched.model.tables import BUILDING, CHANGE_ENTRY, CIRCUIT_TABLE, DELIVERY, HARDWARE_SET, SUPPLY_TABLE
from hwsched.rules import RULEBOOK
from hwsched.survey import ITEM, LEAF, OPENING
from tests.language.plainness import longest_first, unsaid


def data_of(window):
    """Everything that people wrote into the project, the longest first."""
    project = window.frame.state.workspace.project
    found = {project.title, project.path, project.path.name, "tester", "tests", "hwsched", "USD", "AWG"}
    for each in window.frame.state.workspace.checked.values():
        opening = each.given.opening
        found |= {opening.mark, opening.building, opening.level, opening.room_from, opening.room_to}
        for number, part in each.given.catalogue.parts.items():
            found |= {number, part.description}
        for at in each.points:
            for hole in at.fit.holes if at.fit is not None else ():
                found.add(hole.name)
        found |= {f.message for f in each.findings} | {f.cure for f in each.findings}
    return longest_first(found)


def texts_of(each):
    """Every text that a widget shows or tells."""
    yield from (each.toolTip(), each.accessibleName(), each.accessibleDescription(), each.statusTip())
    if each.isWindow():
        yield each.windowTitle()
    if isinstance(each, (QLabel, QAbstractButton)):
        yield each.text()
    if isinstance(each, QGroupBox):
        yield each.title()
    if isinstance(each, (QLineEdit, QPlainTextEdit)):
        yield each.placeholderText()
    if isinstance(each, QTabBar):
        for at in range(each.count()):
            yield from (each.tabText(at), each.tabToolTip(at))
    if isinstance(each, QComboBox):
        yield from (each.itemText(at) for at in range(each.count()))
    if isinstance(each, QSpinBox):
        yield each.specialValueText()
    if isinstance(each, QMenu):
        for act in each.actions():
            yield from (act.text().partition("\t")[0], act.toolTip())
    if isinstance(each, QListWidget):
        yield from (each.item(at).text() for at in range(each.count()))
    if isinstance(each, QHeaderView) and each.orientation() == Qt.Orientation.Horizontal and each.model() is not None:
        for column in range(each.count()):
            for role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
                yield str(each.model().headerData(column, Qt.Orientation.Horizontal, role) or "")
    if isinstance(each, QTreeWidget) and each.isHeaderHidden() is False:
        yield from (each.headerItem().text(column) for column in range(each.columnCount()))


def faults(part, data):
    """Tell each text of a widget and of what is in it that did not come through the catalogue."""
    for each in [part, *part.findChildren(QWidget)]:
        if not each.isVisibleTo(part.window()) and not isinstance(each, QMenu) and each is not part:
            continue
        for text in texts_of(each):
            left = unsaid(text, data)
            if left:
                yield f"{left!r} in {text!r} ({type(each).__name__})"


def models_of(part):
    """What the lists of a page show, each once: a table, its headers and its frozen columns show one model."""
    return list(dict.fromkeys(filter(None, (view.model() for view in part.findChildren(QAbstractItemView)))))


def cells(part):
    """Every text that stands in the lists of a page, spoken or shown."""
    for model in models_of(part):
        waiting = [QModelIndex()]
        while waiting:
            above = waiting.pop()
            for row in range(model.rowCount(above)):
                for column in range(1 if isinstance(model, QAbstractListModel) else model.columnCount(above)):
                    here = model.index(row, column, above)
                    for role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
                        yield str(model.data(here, role) or "")
                waiting.append(model.index(row, 0, above))


def unsaid_cells(part, data):
    """Tell each text of a list that did not come through the catalogue."""
    return {f"{left!r} in {text!r}" for text in set(cells(part)) if (left := unsaid(text, data))}


def rules_and_limits():
    """Identifiers that a person knows rules and their limits by, in every language."""
    return {rule.id for rule in RULEBOOK} | {limit.name for rule in RULEBOOK for limit in rule.limits}


def things(window):
    """Data, and what is called by its identifier."""
    data = {*data_of(window), *rules_and_limits()}
    for each in window.frame.state.workspace.checked.values():
        for finding in each.findings:
            data -= {finding.message, finding.cure}
            data |= {finding.point, *finding.values, "No.", "Ah", "(leaf)"}
        for part in each.given.catalogue.parts.values():
            # Names of plugs, cells and the like are the maker's.
            data |= {
                value for value in part.attributes.values() if isinstance(value, str) and any(map(str.isdigit, value))
            }
        for at in each.points:
            data |= {at.given.point.name}
            data -= {hole.name for hole in at.fit.holes} if at.fit is not None else set()
    with window.frame.state.workspace.project.reading() as connection:
        for query in (
            select(SUPPLY_TABLE.c.name), select(CIRCUIT_TABLE.c.name), select(HARDWARE_SET.c.name),
            select(BUILDING.c.access_policy), select(CHANGE_ENTRY.c.origin).distinct(),
        ):  # fmt: skip
            data |= set(connection.execute(query).scalars())
    return longest_first(data)


def headings(part):
    """Yield every text over and beside the lists of a page, shown or told."""
    for model in models_of(part):
        if isinstance(model, QAbstractListModel):
            continue
        for way, count in (
            (Qt.Orientation.Horizontal, model.columnCount()),
            (Qt.Orientation.Vertical, model.rowCount()),
        ):
            for at in range(count):
                for role in (Qt.ItemDataRole.DisplayRole, Qt.ItemDataRole.ToolTipRole):
                    yield str(model.headerData(at, way, role) or "")


def written(window):
    """Return whatever people, the makers' catalogue and files brought into the project, the longest first."""
    data = {*things(window)}
    workspace = window.frame.state.workspace
    for each in workspace.checked.values():
        rows = [(OPENING, each.given.opening), *((LEAF, leaf) for leaf in each.given.leaves)]
        for entity, row in (*rows, *((ITEM, item) for item in each.given.items)):
            data |= {getattr(row, fact.name) for fact in entity.attributes if fact.kind == "text"}
    for part in next(iter(workspace.checked.values())).given.catalogue.parts.values():
        data |= {part.supplier, part.finish, part.superseded_by}
        kind = kind_of(part.kind)
        texts = [fact.name for fact in kind.attributes if fact.kind == "text"] if kind is not None else []
        data |= {part.attributes.get(name) for name in texts}
    with workspace.project.reading() as connection:
        for query in (select(SUPPLY_TABLE.c.place), select(DELIVERY.c.file)):
            data |= set(connection.execute(query).scalars())
        origins = connection.execute(select(CHANGE_ENTRY.c.origin).distinct()).scalars().all()
    # File, sheet and row.
    data |= {part for origin in origins if origin for part in origin.split(", ")[:2]}
    return longest_first(data)

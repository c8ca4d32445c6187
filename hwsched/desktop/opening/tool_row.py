"""A row of buttons that goes on in a next row where it has no room: none is hidden behind an arrow."""

from PySide6.QtCore import Qt
from PySide6.QtGui import QAction
from PySide6.QtWidgets import QSizePolicy, QToolButton, QWidget

from hwsched.desktop.looks.icons import icon
from hwsched.desktop.looks.text_size import put_icons
from hwsched.desktop.widgets.flow import Flow


class ToolRow(QWidget):
    """Buttons of actions."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self._flow = Flow(self)
        self._flow.setContentsMargins(0, 0, 0, 0)
        policy = QSizePolicy(QSizePolicy.Policy.Preferred, QSizePolicy.Policy.Fixed)
        policy.setHeightForWidth(True)
        self.setSizePolicy(policy)

    def add(self, act: QAction, picture: str = "") -> QToolButton:
        """Add a button of an action: its words, or an icon where the words are not needed."""
        made = QToolButton()
        if picture:
            act.setIcon(icon(picture))
            put_icons(made)
        made.setDefaultAction(act)
        style = Qt.ToolButtonStyle
        made.setToolButtonStyle(style.ToolButtonIconOnly if picture else style.ToolButtonTextOnly)
        made.setAccessibleName(act.toolTip() or act.text())
        self._flow.addWidget(made)
        return made

    def add_gap(self) -> None:
        """Let more room before what comes next."""
        self._flow.gaps.add(self._flow.count())

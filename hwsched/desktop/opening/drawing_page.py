"""The page of the drawing: the scene, its layers and tools, the list of things, and their places as numbers."""

from collections.abc import Sequence
from typing import Final

from PySide6.QtCore import QPoint, QSize, Qt, Signal
from PySide6.QtGui import QAction, QCloseEvent, QKeySequence, QResizeEvent
from PySide6.QtWidgets import (
    QFrame,
    QHBoxLayout,
    QLabel,
    QListWidget,
    QListWidgetItem,
    QPushButton,
    QScrollArea,
    QSplitter,
    QVBoxLayout,
    QWidget,
)

from hwsched.desktop.looks.tokens import SPACE, wide
from hwsched.desktop.opening.drawing_state import DrawingState, Thing
from hwsched.desktop.opening.place_form import PlaceForm
from hwsched.desktop.opening.scene_view import SceneView
from hwsched.desktop.opening.tool_row import ToolRow
from hwsched.desktop.widgets.empty import Empty
from hwsched.drawings.drawing import View
from hwsched.drawings.layers import LAYERS, Layer
from hwsched.language import phrase
from hwsched.quantities import LengthStyle

_KEYS: Final[dict[Layer, str]] = {
    "stands": "S",
    "new": "N",
    "holes": "H",
    "lead": "L",
    "keep-outs": "K",
    "dimensions": "D",
}
_WIDE: Final = 98
"""From this width on [figures] the list stands beside the drawing, else below it."""
_NAME: Final = Qt.ItemDataRole.UserRole


class _Torn(QWidget):
    """The drawing in a window of its own, for a second screen."""

    closed = Signal()

    def closeEvent(self, event: QCloseEvent) -> None:  # noqa: N802
        """Give the drawing back."""
        super().closeEvent(event)
        self.closed.emit()


class _Inner(QWidget):
    """What is torn off and comes back; the list stands beside the drawing where there is room for it."""

    resized = Signal(int)

    def resizeEvent(self, event: QResizeEvent) -> None:  # noqa: N802
        """Tell its width."""
        super().resizeEvent(event)
        self.resized.emit(self.width())


class DrawingPage(QWidget):
    """The drawing with all that is done in it."""

    wants_print = Signal()

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.state = DrawingState(self)
        self.view = SceneView(self.state)
        self.form = PlaceForm()
        self.list = QListWidget()
        self.list.setAccessibleName(phrase("Things in the drawing"))
        self.list.setToolTip(phrase("What is chosen here is marked in the drawing (Page up and down in the drawing)"))
        self.list.setTextElideMode(Qt.TextElideMode.ElideRight)
        self.list.setHorizontalScrollBarPolicy(Qt.ScrollBarPolicy.ScrollBarAlwaysOff)
        Empty(self.list, phrase("What the drawing shows is listed here."))
        self.list.currentItemChanged.connect(lambda item, _before: self._choose(item))
        self.torn: _Torn | None = None
        self.layer_acts: dict[Layer, QAction] = {}
        self._build()
        self.state.changed.connect(self._follow)
        self.state.chose.connect(self._mark)

    def _build(self) -> None:
        self.tools = ToolRow()
        for layer, title in LAYERS.items():
            act = self._action(
                phrase(title), phrase("Show or hide in the drawing: {layer}", layer=phrase(title).lower()), _KEYS[layer]
            )
            act.setCheckable(True)
            act.setChecked(layer in self.state.layers)
            act.toggled.connect(lambda on, layer=layer: self.state.switch(layer, on))
            self.layer_acts[layer] = act
            self.tools.add(act)
        self.tools.add_gap()
        self.act_smaller = self._act("−", phrase("Farther away (the wheel, or -)"), lambda: self.view.zoom(-1))
        self.act_larger = self._act("+", phrase("Nearer (the wheel at the pointer, or +)"), lambda: self.view.zoom(1))
        self.act_all = self._act(
            phrase("All"), phrase("See all of it (0; 1 to 4 show one view each)"), self.view.see_all
        )
        self.act_near = self._act(phrase("Chosen"), phrase("Look at what is chosen (F)"), self._look_at_chosen, "F")
        self.act_measure = self._action(
            phrase("Measure"), phrase("Measure between two points: click them, or arrows and Space (M)"), "M"
        )
        self.act_measure.setCheckable(True)
        self.act_measure.toggled.connect(self.state.measure)
        self.tools.add(self.act_measure)
        self.act_print = self._act(
            phrase("Print…"), phrase("Print what is seen to scale, as PDF (P)"), self.wants_print.emit, "P"
        )
        self.act_tear = self._act(
            phrase("Own window"), phrase("The drawing in a window of its own, and back (W)"), self.tear, "W", "tear-off"
        )
        self.side = QFrame()
        self._side = QHBoxLayout(self.side)
        self._side.setContentsMargins(0, 0, 0, 0)
        self._side.addWidget(self.list, 1)
        area = QScrollArea()
        area.setWidgetResizable(True)
        area.setFrameShape(QFrame.Shape.NoFrame)
        area.setWidget(self.form)
        area.setFocusPolicy(Qt.FocusPolicy.NoFocus)
        self._side.addWidget(area, 2)
        self.split = QSplitter(Qt.Orientation.Vertical)
        self.split.addWidget(self.view)
        self.split.addWidget(self.side)
        self.split.setStretchFactor(0, 1)
        self.split.setSizes([wide(60), wide(28)])
        self._beside = False
        self.inner = _Inner()
        self.inner.resized.connect(self._turn)
        inner = QVBoxLayout(self.inner)
        inner.setContentsMargins(0, 0, 0, 0)
        inner.setSpacing(SPACE.hair)
        inner.addWidget(self.tools)
        inner.addWidget(self.split, 1)
        self.back = QPushButton(phrase("Bring the drawing back"))
        self.back.clicked.connect(lambda _checked=False: self.bring_back())
        self.away = QLabel(phrase("The drawing is in a window of its own."))
        layout = QVBoxLayout(self)
        layout.setContentsMargins(0, 0, 0, 0)
        layout.addWidget(self.inner, 1)
        layout.addWidget(self.away)
        layout.addWidget(self.back, 0, Qt.AlignmentFlag.AlignLeft)
        self.away.hide()
        self.back.hide()

    def _action(self, text: str, tip: str, key: str = "") -> QAction:
        made = QAction(text, self.view)
        # Left to itself a button leaves out the dots that say: something is asked first.
        made.setIconText(text)
        made.setToolTip(tip if not key or f"({key}" in tip else f"{tip} ({key})")
        if key:
            # Letters are keys of the drawing, not of the window: in a field they are typed.
            made.setShortcut(QKeySequence(key))
            made.setShortcutContext(Qt.ShortcutContext.WidgetShortcut)
            self.view.addAction(made)
        return made

    def _act(self, text: str, tip: str, slot: object, key: str = "", picture: str = "") -> QAction:
        made = self._action(text, tip, key)
        made.triggered.connect(lambda _checked=False: slot())  # type: ignore[operator]
        self.tools.add(made, picture)
        return made

    def sizeHint(self) -> QSize:  # noqa: N802
        """Return the size it likes to have."""
        return QSize(wide(72), wide(67))

    def show_scene(
        self, views: Sequence[View], things: Sequence[Thing], style: LengthStyle, *, moving: bool = False
    ) -> None:
        """Show the views of an opening; while something is moved they keep their places."""
        same = [each.name for each in things] == [each.name for each in self.state.things]
        if not moving:
            # What was on its way was on its way in another picture.
            self.view.move_ = None
        self.state.show(views, things, style, keep_places=moving)
        if not same:
            self._fill()
        for act in (self.act_smaller, self.act_larger, self.act_all, self.act_measure, self.act_print):
            act.setEnabled(bool(views))
        self._enable()

    def _enable(self) -> None:
        """Let be done what can be with what is chosen in the drawing."""
        thing = self.state.chosen_thing()
        self.act_near.setEnabled(thing is not None)
        self.form.enable(thing)

    def show_nothing(self, words: str) -> None:
        """Show a sentence in place of a drawing."""
        self.view.empty = words
        self.view.camera = None
        self.show_scene((), (), self.state.style)

    def tear(self) -> None:
        """Show the drawing in a window of its own; asked again it comes back."""
        if self.torn is not None:
            self.bring_back()
            return
        self.torn = _Torn(self.window(), Qt.WindowType.Window)
        self.torn.setWindowTitle(phrase("Drawing"))
        self.torn.setAttribute(Qt.WidgetAttribute.WA_DeleteOnClose)
        self.torn.closed.connect(self._take_back)
        layout = QVBoxLayout(self.torn)
        layout.setContentsMargins(SPACE.hair, SPACE.hair, SPACE.hair, SPACE.hair)
        layout.addWidget(self.inner)
        self.inner.show()
        self.torn.resize(wide(140), wide(92))
        self.away.show()
        self.back.show()
        self.torn.move(self.window().pos() + QPoint(60, 60))
        self.torn.show()
        self.torn.activateWindow()
        self.view.setFocus()

    def bring_back(self) -> None:
        """Close the drawing's own window."""
        if self.torn is not None:
            self.torn.close()

    def _take_back(self) -> None:
        layout = self.layout()
        if self.torn is not None and isinstance(layout, QVBoxLayout):
            self.torn = None
            self.away.hide()
            self.back.hide()
            layout.insertWidget(0, self.inner, 1)
            self.inner.show()
            self.window().activateWindow()
            self.view.setFocus()

    def _turn(self, width: int) -> None:
        beside = width >= wide(_WIDE)
        self.split.setOrientation(Qt.Orientation.Horizontal if beside else Qt.Orientation.Vertical)
        if beside != self._beside:
            self._beside = beside
            self.split.setSizes([wide(72), wide(34)] if beside else [wide(60), wide(22)])
        self._side.setDirection(QHBoxLayout.Direction.TopToBottom if beside else QHBoxLayout.Direction.LeftToRight)

    def _fill(self) -> None:
        self.list.blockSignals(True)
        self.list.clear()
        for thing in self.state.things:
            item = QListWidgetItem(thing.words)
            item.setData(_NAME, thing.name)
            item.setToolTip(f"{thing.words}: {thing.why_not}" if thing.why_not else thing.words)
            self.list.addItem(item)
        self.list.blockSignals(False)
        self._mark(self.state.chosen)

    def _choose(self, item: QListWidgetItem | None) -> None:
        self.state.choose(str(item.data(_NAME)) if item is not None else "")

    def _mark(self, thing: str) -> None:
        self.list.blockSignals(True)
        row = next((at for at in range(self.list.count()) if self.list.item(at).data(_NAME) == thing), -1)
        self.list.setCurrentRow(row)
        self.list.blockSignals(False)
        self._enable()

    def _look_at_chosen(self) -> None:
        if self.state.chosen:
            self.view.look_at(self.state.chosen)

    def _follow(self) -> None:
        for layer, act in self.layer_acts.items():
            act.setChecked(layer in self.state.layers)
        if self.act_measure.isChecked() != self.state.measuring:
            self.act_measure.blockSignals(True)
            self.act_measure.setChecked(self.state.measuring)
            self.act_measure.blockSignals(False)
        measured = self.state.measured()
        self.form.measured.setText(
            phrase("Measured: {words}", words=measured.words(self.state.style)) if measured is not None else ""
        )
        self.form.measured.setVisible(measured is not None)

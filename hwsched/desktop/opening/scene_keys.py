"""Keys of the drawing: what each does there."""

from typing import Final

from PySide6.QtCore import QPointF, Qt
from PySide6.QtGui import QKeyEvent

from hwsched.desktop.opening.drawing_move import FINE_MM, STEP_MM
from hwsched.desktop.opening.scene_seen import Keyed
from hwsched.drawings.layers import UNIT

_CROSS_PX: Final = (10.0, 1.0)
_ALONG_PX: Final = 60.0
_WAYS: Final = {
    Qt.Key.Key_Left: (-1, 0),
    Qt.Key.Key_Right: (1, 0),
    Qt.Key.Key_Up: (0, 1),
    Qt.Key.Key_Down: (0, -1),
}
_LOOKS: Final = {Qt.Key.Key_1: "inside", Qt.Key.Key_2: "key", Qt.Key.Key_3: "edge", Qt.Key.Key_4: "section"}
_NONE: Final = Qt.KeyboardModifier.NoModifier
_SHIFT: Final = Qt.KeyboardModifier.ShiftModifier
_CTRL: Final = Qt.KeyboardModifier.ControlModifier
_ALT: Final = Qt.KeyboardModifier.AltModifier


def press(view: Keyed, event: QKeyEvent) -> bool:
    """Do what a key says; tells whether it says something here."""
    key, held, state = Qt.Key(event.key()), event.modifiers(), view.state
    enter = key in (Qt.Key.Key_Return, Qt.Key.Key_Enter)
    way = _WAYS.get(key)
    if way is not None and not held & _ALT:
        _arrow(view, way, held)
    elif state.measuring and (enter or key == Qt.Key.Key_Space):
        view.take_point(view.cross)
    elif enter and view.move_ is not None:
        view.let_go()
    elif key == Qt.Key.Key_Escape:
        return _escape(view)
    elif key in (Qt.Key.Key_PageDown, Qt.Key.Key_PageUp):
        _next_thing(view, 1 if key == Qt.Key.Key_PageDown else -1)
    elif key in _LOOKS and not held & (_CTRL | _ALT):
        view.look_at(_LOOKS[key])
    elif key == Qt.Key.Key_0 and not held & _CTRL:
        view.see_all()
    elif event.text() in ("+", "=", "-"):
        view.zoom(-1 if event.text() == "-" else 1)
    else:
        return False
    return True


def _arrow(view: Keyed, way: tuple[int, int], held: Qt.KeyboardModifier) -> None:
    chosen = view.state.chosen_thing()
    if view.state.measuring:
        step = _CROSS_PX[bool(held & _SHIFT)]
        view.cross += QPointF(step * way[0], -step * way[1])
        view.repaint_soon()
    elif (held & _CTRL and held & _SHIFT) or (chosen is not None and not chosen.movable):
        _along(view, way)
    elif view.move_ is not None or view.begin_move(view.state.chosen or UNIT):
        move = view.move_
        # What moves is chosen: beside it stands its name and where it is.
        view.state.choose(view.state.chosen or UNIT)
        if move is None:
            return
        if held & _CTRL:
            move.on(way)
        else:
            step = STEP_MM if held & _SHIFT else FINE_MM
            move.step(step * way[0], step * way[1])
        view.tell_move()
    else:
        _along(view, way)


def _along(view: Keyed, way: tuple[int, int]) -> None:
    camera = view.look()
    if camera is not None:
        step = _ALONG_PX / camera.factor
        view.camera = camera.moved(step * way[0], step * way[1])
        view.repaint_soon()


def _escape(view: Keyed) -> bool:
    if view.move_ is not None:
        view.drop_move()
    elif view.state.points:
        view.state.measure(True)
    elif view.state.measuring:
        view.state.measure(False)
    elif view.state.chosen:
        view.state.choose("")
    else:
        return False
    return True


def _next_thing(view: Keyed, by: int) -> None:
    names = [each.name for each in view.state.things]
    if names:
        at = names.index(view.state.chosen) if view.state.chosen in names else (-1 if by > 0 else 0)
        view.state.choose(names[(at + by) % len(names)])

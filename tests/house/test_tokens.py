"""Colours and sizes of the desktop stand in one module: nothing else there names a colour or a number of pixels."""

import ast
import re
from pathlib import Path

import hwsched.desktop

ROOT = Path(hwsched.desktop.__file__).parent
TOKENS = "looks/tokens.py"
IN_TEXT = re.compile(r"#[0-9a-fA-F]{3,8}\b|\b[1-9][0-9]*(px|pt)\b")
# Calls whose numbers are colours or pixels.
COLOURS = {"QColor", "fromHsl", "fromHsv", "fromRgb", "fromRgba", "setNamedColor"}
SIZES = {
    "resize", "setFixedSize", "setFixedWidth", "setFixedHeight", "setMinimumSize", "setMinimumWidth",
    "setMinimumHeight", "setMaximumSize", "setMaximumWidth", "setMaximumHeight", "setContentsMargins", "setSpacing",
    "addSpacing", "setHorizontalSpacing", "setVerticalSpacing", "setPixelSize", "setPointSize", "setPointSizeF",
    "setIconSize", "setDefaultSectionSize", "setColumnWidth", "setSizes", "QSize", "setIndentation",
}  # fmt: skip
# Written before there were tokens, each with how many it names: a number here goes down and never up.
OLDER = {
    "findings/rulebook_window.py": 6,
    "findings/waive_dialog.py": 1,
    "findings/waivers_window.py": 1,
    "findings/why_window.py": 2,
    "frame/tool_window.py": 1,
    "jobs/trouble.py": 1,
    "opening/earlier_line.py": 1,
    "opening/opening_sheet.py": 3,
    "opening/question_form.py": 2,
    "opening/upgrade_window.py": 1,
    "opening/what_if_window.py": 1,
    "parts/cost_window.py": 2,
    "parts/fewest_window.py": 2,
    "parts/new_set_dialog.py": 1,
    "parts/proposed_sets_dialog.py": 1,
    "parts/set_lines.py": 3,
    "parts/sets_window.py": 3,
    "parts/terms_form.py": 1,
    "power/layout_window.py": 2,
    "power/move_dialog.py": 1,
    "power/power_facts_form.py": 1,
    "power/power_sheet.py": 2,
    "power/power_tree.py": 2,
    "power/power_window.py": 2,
    "power/siting_window.py": 2,
    "project/copies_window.py": 1,
    "project/journal_window.py": 1,
    "project/people_dialog.py": 1,
    "project/remains_line.py": 1,
    "project/settings_dialog.py": 1,
    "project/welcome.py": 6,
    "release/print_dialog.py": 2,
    "release/revisions_window.py": 4,
    "survey/building_tree.py": 1,
    "survey/deliveries_window.py": 1,
    "survey/missing_window.py": 1,
    "survey/openings_view.py": 2,
    "survey/preview_dialog.py": 1,
    "survey/questions_line.py": 1,
    "survey/register.py": 1,
    "survey/sheet_model.py": 3,
    "survey/sheet_page.py": 1,
    "widgets/drawing_view.py": 3,
    "widgets/lines.py": 2,
    "widgets/sheet_view.py": 4,
    "widgets/wrapping.py": 1,
    "window.py": 3,
}


def numbers(node):
    """Numbers but nought that stand in an argument, save those of figures that `wide` makes room for."""
    if isinstance(node, ast.Call) and getattr(node.func, "id", "") == "wide":
        return
    if isinstance(node, ast.Constant) and type(node.value) in (int, float) and node.value:
        yield node.value
    for child in ast.iter_child_nodes(node):
        yield from numbers(child)


def names(node):
    """Whether a piece of a program names a colour or a size."""
    match node:
        case ast.Constant(value=str(text)):
            return bool(IN_TEXT.search(text))
        case ast.Attribute(attr="GlobalColor"):
            return True
        case ast.Call(func=ast.Attribute(attr=name) | ast.Name(id=name)) if name in COLOURS | SIZES:
            given = node.args[1:] if name == "setColumnWidth" else node.args
            return any(any(numbers(each)) for each in given)
    return False


def named(path):
    """Lines of a file that name a colour or a size."""
    return [node.lineno for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))) if names(node)]


def test_nothing_but_the_tokens_names_a_colour_or_a_size():
    found = {str(path.relative_to(ROOT)): len(named(path)) for path in sorted(ROOT.rglob("*.py"))}
    assert found.pop(TOKENS) > 30
    assert not {name: count for name, count in found.items() if count > OLDER.get(name, 0)}


def test_a_colour_and_a_size_are_found(tmp_path):
    path = tmp_path / "one.py"
    found = ('QColor("#a3200d")', "QColor(1, 2, 3)", "Qt.GlobalColor.red")
    for line in (*found, "x.setSpacing(7)", "x.resize(900, 600)", "'a { padding: 3px }'"):
        path.write_text(line, encoding="utf-8")
        assert named(path) == [1], line
    fine = ("x.setContentsMargins(0, 0, 0, 0)", "x.setSpacing(SPACE.small)", "x.setFixedWidth(wide(24))")
    path.write_text("\n".join((*fine, "x.setColumnWidth(2, scaled(ROW.grid))")), encoding="utf-8")
    assert not named(path)

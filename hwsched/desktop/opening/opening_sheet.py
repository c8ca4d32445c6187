"""The sheet of the chosen opening: both faces drawn, facts, parts, findings, and what was refused."""

from collections.abc import Mapping, Sequence

from PySide6.QtCore import Qt, Signal
from PySide6.QtWidgets import QLabel, QSplitter, QVBoxLayout, QWidget

from hwsched.desktop.looks.text_size import put_letters
from hwsched.desktop.looks.tokens import SPACE
from hwsched.desktop.opening.assembly_page import AssemblyPage
from hwsched.desktop.opening.candidates_pane import CandidatesPane
from hwsched.desktop.opening.drawing_move import Move, Stretch
from hwsched.desktop.opening.drawing_page import DrawingPage
from hwsched.desktop.opening.opening_scene import cost_words, item_centre, item_sized, scene_of, stands_at, unit_corner
from hwsched.desktop.opening.past_page import PastPage
from hwsched.desktop.opening.pieces_page import PiecesPage
from hwsched.desktop.opening.sections import Sections
from hwsched.desktop.opening.sheet_pages import FindingsPage, HolesPage, PartsPage, RefusedPage
from hwsched.desktop.parts.set_book import OpeningSet
from hwsched.desktop.release.files_page import FilesPage
from hwsched.desktop.survey.facts_form import FactsForm
from hwsched.desktop.survey.register import state_of
from hwsched.desktop.widgets.drop_down import DropDown
from hwsched.drawings.layers import UNIT
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.findings.checked import Checked
from hwsched.operations.release.attachments import Attached
from hwsched.quantities import LengthStyle, format_length
from hwsched.values import Fit, PointFit
from hwsched.values.standing import WHY


class OpeningSheet(QWidget):
    """Everything about one opening."""

    edited = Signal(str, str, str, str)
    unit_dragged = Signal(float, float)
    """New lower left corner of the unit's plate while it is dragged, in leaf coordinates [mm]."""
    unit_dropped = Signal(float, float)
    item_dropped = Signal(str, float, float)
    """An existing item, and where its middle is brought, from the lock edge and above the floor [mm]."""
    item_sized = Signal(str, float, float, float, float)
    """An existing item, width and height, and where its middle is then, from lock edge and floor [mm]."""
    place_typed = Signal(str, str, str)
    """A thing, and its place as typed: from the lock edge, above the floor."""
    wants_part = Signal(str, str)
    """Role and catalogue number of the part that a person wants to choose otherwise."""
    wants_pieces = Signal()
    """The page of pieces is in sight and shall be filled."""

    def __init__(self, parent: QWidget | None = None) -> None:
        super().__init__(parent)
        self.title = QLabel()
        self.title.setTextFormat(Qt.TextFormat.PlainText)
        self.title.setWordWrap(True)
        put_letters(self.title, "large", bold=True)
        self.state = QLabel()
        self.state.setWordWrap(True)
        self.point_box = DropDown()
        self.point_box.setToolTip(phrase("Which lock point of the opening is shown; parts and place are chosen for it"))
        self.point_box.activated.connect(lambda _index: self._show())
        self.drawing = DrawingPage()
        self.view = self.drawing.view
        self.view.moving.connect(self._on_moving)
        self.view.moved.connect(self._on_moved)
        self.view.taken_back.connect(self._show_as_it_is)
        self.drawing.state.chose.connect(self._on_chose)
        self.drawing.form.typed.connect(self._on_typed)
        self._checked: Checked | None = None
        self._style: LengthStyle = "fraction"
        self.facts = FactsForm()
        self.facts.edited.connect(self.edited)
        self.sets: Mapping[str, OpeningSet] = {}
        """Hardware set of each opening that has one."""
        self.parts_page, self.holes_page = PartsPage(), HolesPage()
        self.findings_page, self.refused_page = FindingsPage(), RefusedPage()
        self.pieces_page = PiecesPage()
        self.files_page = FilesPage()
        self.past_page = PastPage()
        self.assembly_page = AssemblyPage()
        self.parts, self.holes = self.parts_page.table, self.holes_page.table
        self.findings, self.refused = self.findings_page.table, self.refused_page.table
        self.parts_page.wants_part.connect(self.wants_part)
        self.candidates = CandidatesPane()
        self.parts_and_candidates = QSplitter(Qt.Orientation.Vertical)
        self.parts_and_candidates.addWidget(self.parts_page)
        self.parts_and_candidates.addWidget(self.candidates)
        self.view.setContextMenuPolicy(Qt.ContextMenuPolicy.ActionsContextMenu)
        self.view.addAction(self.parts_page.act_place)
        self.pages = Sections()
        self.pages.addTab(self.drawing, phrase("Drawing"))
        self.pages.addTab(self.facts, phrase("Facts"))
        self.folded = self.pages.fold(
            phrase("Parts"),
            (
                (self.parts_and_candidates, phrase("Parts")),
                (self.holes_page, phrase("Holes")),
                (self.refused_page, phrase("Refused")),
                (self.pieces_page, phrase("Pieces")),
                (self.assembly_page, phrase("Assembly")),
            ),
        )
        self.pages.addTab(self.findings_page, phrase("Findings"))
        self.pages.addTab(self.files_page, phrase("Documents"))
        self.pages.addTab(self.past_page, phrase("History"))
        self.pages.turned.connect(self._fill_page)
        layout = QVBoxLayout(self)
        layout.setContentsMargins(SPACE.small, SPACE.small, SPACE.small, SPACE.small)
        layout.addWidget(self.title)
        layout.addWidget(self.state)
        layout.addWidget(self.point_box)
        layout.addWidget(self.pages, 1)
        self._opening = ""
        self.show_opening(None, "fraction")

    def show_files(self, attached: Sequence[Attached]) -> None:
        """Show the files at the opening."""
        self.files_page.show_files(attached)
        self.pages.name_page(self.files_page, self.files_page.title())

    def show_fact(self, fact: str) -> None:
        """Show a fact of the opening where it is typed; without one, what is found."""
        self.pages.show_page(self.facts if fact else self.findings_page)
        if fact:
            self.facts.go_to_fact(*fact.split(".", 1))

    def show_tried(self, tried: Checked, style: LengthStyle, words: str) -> None:
        """Show where a dragged unit would stand, and what would follow."""
        from hwsched.operations.opening.trial_placement import place_costs

        self.state.setText(words)
        self._show_findings(tried)
        self._draw(tried, style, moving=True)
        form = self.drawing.form
        before = place_costs(self._checked, self.number) if self._checked is not None else None
        form.say(words)
        form.show_costs(cost_words(place_costs(tried, self.number), before, style))

    def _draw(self, checked: Checked, style: LengthStyle, *, moving: bool = False) -> None:
        self.drawing.show_scene(*scene_of(checked, self.number, style), style, moving=moving)

    @property
    def number(self) -> int:
        """Of the lock point that is shown."""
        return int(self.point_box.currentData() or 1)

    def shown_point(self) -> PointFit | None:
        """Return the lock point that is shown."""
        return self._checked.point(self.number) if self._checked is not None else None

    def one_of_several(self) -> str | None:
        """Return the lock point that is shown, where it is one of several."""
        at = self.shown_point()
        return at.given.point.id if at is not None and at.given.point.others else None

    def _offer_points(self, checked: Checked | None) -> None:
        """List the lock points of an opening; the one that was shown stays where it is the same opening."""
        before = self.number
        same = checked is not None and self._opening == checked.given.opening.id
        self._opening = checked.given.opening.id if checked is not None else ""
        self.point_box.clear()
        for each in checked.points if checked is not None else ():
            name = each.given.point.name
            self.point_box.addItem(
                phrase("Lock point {number}: {name}", number=each.given.point.number, name=name),
                each.given.point.number,
            )
        self.point_box.setCurrentIndex(max(self.point_box.findData(before), 0) if same else 0)
        self.point_box.setVisible(checked is not None and len(checked.points) > 1)

    def _fill_page(self) -> None:
        if self.pages.seen() is self.pieces_page:
            self.wants_pieces.emit()
        elif self.pages.seen() is self.assembly_page and self._checked is not None:
            at = self._checked.shown(self.number)
            self.assembly_page.show_fit(at.given, at.fit or Fit("to-measure"))

    def _show_findings(self, checked: Checked) -> None:
        self.findings_page.show_findings(checked.findings)

    def _on_moving(self, move: Move) -> None:
        at = self.shown_point()
        sized = item_sized(at, move) if at is not None and isinstance(move, Stretch) else None
        if sized is not None:
            wide, high = (format_length(each, self._style) for each in sized[:2])
            self._show_place(*sized[2:])
            size = phrase("{wide} wide, {high} high", wide=wide, high=high)
            self.drawing.form.say(f"{size}  {move.words()}".rstrip())
            return
        corner = unit_corner(at, move) if at is not None and move.thing == UNIT else None
        if corner is not None:
            self.unit_dragged.emit(*corner)
            self._show_place(*corner)
        elif at is not None and (centre := item_centre(at, move)) is not None:
            self._show_place(*centre)
            self.drawing.form.say(move.words())

    def _on_moved(self, move: Move) -> None:
        at = self.shown_point()
        if at is None:
            return
        if isinstance(move, Stretch):
            sized = item_sized(at, move)
            if sized is not None:
                self.item_sized.emit(move.thing, *sized)
            return
        corner, centre = unit_corner(at, move), item_centre(at, move)
        if move.thing == UNIT and corner is not None:
            self.unit_dropped.emit(*corner)
        elif centre is not None:
            self.item_dropped.emit(move.thing, *centre)

    def _on_typed(self, across: str, up: str) -> None:
        self.place_typed.emit(self.drawing.state.chosen, across, up)

    def _show_place(self, x_mm: float, y_mm: float) -> None:
        self.drawing.form.show_place(format_length(x_mm, self._style), format_length(y_mm, self._style))

    def _on_chose(self, thing: str) -> None:
        self.drawing.form.forget_typing()
        self._show_numbers(thing)

    def _show_numbers(self, thing: str) -> None:
        """Show the place of what is chosen, and what it costs."""
        from hwsched.operations.opening.trial_placement import place_costs

        form, at = self.drawing.form, self.shown_point()
        where = stands_at(at, thing) if at is not None and thing else None
        if where is not None:
            self._show_place(*where)
        costs = self._checked is not None and thing == UNIT and where is not None
        form.show_costs(
            cost_words(place_costs(self._checked, self.number), None, self._style)
            if costs and self._checked is not None
            else ""
        )

    def _show_as_it_is(self) -> None:
        if self._checked is not None:
            self._show_findings(self._checked)
            self._show()

    def show_opening(self, checked: Checked | None, style: LengthStyle) -> None:
        """Show an opening, or what to do to see one."""
        if checked is not self._checked:
            # What was tried was tried on what the opening was.
            self.candidates.close_up()
        self._checked, self._style = checked, style
        self._offer_points(checked)
        self.facts.show_opening(checked, style)
        for page in range(self.pages.count()):
            self.pages.setTabEnabled(page, checked is not None or self.pages.widget(page) is self.drawing)
        if checked is None:
            self.title.setText(phrase("No opening chosen"))
            self.state.setText("")
            self.drawing.show_nothing(phrase("Choose an opening in the register to see both faces of its leaf."))
            return
        opening = checked.given.opening
        where = " · ".join(word for word in (opening.building, opening.level, opening.room_to) if word)
        self.title.setText(f"{opening.mark}   {where}")
        self._show_findings(checked)
        self._show()

    def _show(self) -> None:
        """Show the chosen lock point of the opening."""
        checked, style = self._checked, self._style
        if checked is None:
            return
        # What an earlier version worked out is shown, and the sentence above it says that it does not count.
        at = checked.shown(self.number)
        fit = at.fit or Fit("to-measure")
        self.state.setText(_sentence(checked, at, style))
        self._draw(checked, style)
        self._show_numbers(self.drawing.state.chosen)
        # A hardware set speaks of the first lock point.
        of_set = self.sets.get(checked.given.opening.id) if at.given.point.number == 1 else None
        self.parts_page.show_fit(fit, of_set, at.given.catalogue, style)
        self.holes_page.show_fit(fit, style)
        refused = self.refused_page.show_fit(fit)
        for page, words in (
            (self.parts_and_candidates, phrase("Parts {count}", count=len(fit.parts))),
            (self.holes_page, phrase("Holes {count}", count=len(fit.holes))),
            (self.refused_page, phrase("Refused {refused}", refused=refused)),
            (self.findings_page, self.findings_page.title()),
        ):
            self.pages.name_page(page, words)
        self._fill_page()


def _sentence(checked: Checked, at: PointFit, style: LengthStyle) -> str:
    state = phrase(state_of(checked))
    fit = at.fit
    if checked.fit is None or fit is None:
        return phrase(
            "{state}: no fit counts; {why}.", state=state, why=phrase(WHY[checked.standing] or "none is stored")
        )
    words = [state if checked.stored else phrase("{state}, worked out just now; run Fit to store it", state=state)]
    if fit.cable is not None:
        spare = fit.cable.available_mm - fit.cable.length_mm
        words.append(phrase("lead {length} to spare", length=format_length(spare, style)))
    if fit.battery is not None:
        words.append(
            phrase_of_count("pack lasts about {count} day", "pack lasts about {count} days", int(fit.battery.days))
        )
    if fit.power == "supply":
        words.append(phrase("fed from a remote supply"))
    return " · ".join(words)

"""Places of an opening by hand: the unit, and what stands there, moved in the drawing or by numbers; printing it."""

from pathlib import Path

from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.frame.subject import Subject
from hwsched.desktop.opening.opening_sheet import OpeningSheet
from hwsched.desktop.widgets.asked_files import file_to_write
from hwsched.drawings.layers import UNIT
from hwsched.kept_sentences import kept_error
from hwsched.language import phrase, to_phrase
from hwsched.operations.findings.checked import Checked
from hwsched.quantities import LengthError, format_length, parse_length


class PlaceActions(Subject):
    """What is done in the drawing of the chosen opening, each one step of the journal.

    Parameters
    ----------
    frame : Frame
        Open project, jobs, edits, telling.
    sheet : OpeningSheet
        Shows the chosen opening.
    """

    def __init__(self, frame: Frame, sheet: OpeningSheet) -> None:
        super().__init__(frame)
        self.sheet = sheet
        self.act_release = self.action(
            to_phrase("Release unit"),
            to_phrase("Leave the place of the chosen opening's unit to the fit again"),
            self.release_unit,
            "openings",
            acts_on="chosen",
            at_present=self._placed_by_hand,
        )
        self.state.shown.connect(frame.possible)
        sheet.unit_dragged.connect(self._on_unit_dragged)
        sheet.unit_dropped.connect(self.move_unit)
        sheet.item_dropped.connect(self.move_item)
        sheet.item_sized.connect(self.size_item)
        sheet.place_typed.connect(self.type_place)
        sheet.drawing.form.wants_release.connect(self.release_unit)
        sheet.drawing.wants_print.connect(self.ask_print)

    def _on_unit_dragged(self, x_mm: float, y_mm: float) -> None:
        from hwsched.operations.opening.trial_placement import with_unit_at

        workspace, checked = self.state.workspace, self.state.checked
        if workspace is None or checked is None or self.jobs.busy:
            return
        tried = with_unit_at(checked, x_mm, y_mm, workspace.checker, workspace.waiver_book(), self.sheet.number)
        self.sheet.show_tried(tried, self.state.style_of_lengths, self._said_of(tried))

    def _said_of(self, tried: Checked) -> str:
        from hwsched.operations.opening.trial_placement import against_place
        from hwsched.rules.saying import message_of

        style, fit_ = self.state.style_of_lengths, tried.point(self.sheet.number).fit
        against = against_place(tried)
        words = [phrase("Does not fit here: ") + message_of(against[0]) if against else phrase("Fits here")]
        if fit_ is not None and fit_.cable is not None:
            words.append(
                phrase(
                    "lead {length} to spare",
                    length=format_length(fit_.cable.available_mm - fit_.cable.length_mm, style),
                )
            )
        if fit_ is not None and fit_.placement is not None and fit_.placement.clearances:
            name, free = fit_.placement.clearances[0]
            words.append(
                phrase("{length} to {name}", length=format_length(free, style), name=name)
                if free >= 0
                else phrase("overlaps {name}", name=name)
            )
        return " · ".join(words)

    def move_unit(self, x_mm: float, y_mm: float) -> None:
        """Place the unit of the chosen opening by hand; a place that does not fit is refused with its reason."""
        from hwsched.operations.opening.hand_choices import place_unit
        from hwsched.operations.opening.trial_placement import against_place, with_unit_at
        from hwsched.rules.saying import message_of

        workspace, checked = self.state.workspace, self.state.checked
        if workspace is None or checked is None or self.jobs.busy:
            return
        tried = with_unit_at(checked, x_mm, y_mm, workspace.checker, workspace.waiver_book(), self.sheet.number)
        against = against_place(tried)
        fit = tried.point(self.sheet.number).fit
        place = fit.placement if fit is not None else None
        if against or place is None:
            self.state.show_again()
            reason = message_of(against[0]) if against else phrase("There is no place for the unit here.")
            self.sheet.state.setText(phrase("Refused, the unit stays where it was: {reason}", reason=reason))
            self.sheet.drawing.form.say(phrase("Refused, the unit stays where it was: {reason}", reason=reason))
            return
        self.frame.edit_seen(
            lambda base: place_unit(
                workspace.project,
                checked.given.opening.id,
                leaf=place.leaf,
                face=place.face,
                pattern=place.pattern,
                x_mm=round(x_mm, 2),
                y_mm=round(y_mm, 2),
                who=workspace.who,
                point=self.sheet.one_of_several(),
                base=base,
            ),
            checked.base,
        )

    def move_item(self, item: str, x_mm: float, y_mm: float) -> None:
        """Write down where the middle of an existing item stands, as one step."""
        self._set_item(item, {"x_mm": round(x_mm, 2), "y_mm": round(y_mm, 2)})

    def size_item(self, item: str, wide_mm: float, high_mm: float, x_mm: float, y_mm: float) -> None:
        """Write down how large an existing item is and where its middle stands, as one step."""
        values = {"width_mm": wide_mm, "height_mm": high_mm, "x_mm": x_mm, "y_mm": y_mm}
        self._set_item(item, {name: round(value, 2) for name, value in values.items()})

    def _set_item(self, item: str, values: dict[str, float]) -> None:
        from hwsched.operations.survey.editing import edit_facts

        workspace, checked = self.state.workspace, self.state.checked
        if workspace is None or checked is None or self.jobs.busy:
            return
        self.frame.edit_seen(
            lambda base: edit_facts(workspace.project, "existing_item", item, values, who=workspace.who, base=base),
            checked.base,
        )

    def type_place(self, thing: str, across: str, up: str) -> None:
        """Bring a thing to the place that was typed; what cannot be read, or does not fit, stays to be mended."""
        workspace, form = self.state.workspace, self.sheet.drawing.form
        if workspace is None or self.jobs.busy:
            return
        try:
            x_mm, y_mm = (parse_length(text, workspace.project.bare_unit) for text in (across, up))
        except LengthError as error:
            form.say(kept_error(str(error)))
            return
        if thing == UNIT:
            self.move_unit(x_mm, y_mm)
        else:
            self.move_item(thing, x_mm, y_mm)

    def _placed_by_hand(self) -> tuple[bool, str]:
        """Tell whether the unit of the chosen opening was placed by hand."""
        at = self.sheet.shown_point()
        placed = at is not None and at.given.placed is not None
        return placed, "" if placed else phrase("it was not placed by hand")

    def release_unit(self) -> None:
        """Leave the place of the chosen opening's unit to the fit again."""
        from hwsched.operations.opening.hand_choices import release_unit

        workspace, opening = self.state.workspace, self.state.chosen
        if workspace is not None and opening is not None and not self.jobs.busy:
            point = self.sheet.one_of_several()
            self.frame.edit_seen(
                lambda base: release_unit(workspace.project, opening, who=workspace.who, base=base, point=point),
                self.state.seen_of(opening),
            )

    def ask_print(self) -> None:
        """Ask for a file and print what is seen of the drawing, to scale."""
        checked, drawing = self.state.checked, self.sheet.drawing
        if checked is None or drawing.state.scene is None:
            return
        name = f"{checked.given.opening.mark.replace('/', '-')} drawing.pdf"
        path = file_to_write(self.frame.window, phrase("Print the drawing"), name, phrase("PDF (*.pdf)"))
        if path:
            self.print_drawing(path)

    def print_drawing(self, path: str) -> None:
        """Write what is seen of the drawing as PDF: its layers, what is in sight, at a standard scale."""
        from hwsched.operations.opening.drawing_views import print_seen

        checked, view = self.state.checked, self.sheet.view
        scene, camera = self.sheet.drawing.state.scene, view.camera
        if checked is None or scene is None:
            return
        within = camera.region if camera is not None and not camera.whole else None
        layers, mark, style = self.sheet.drawing.state.layers, checked.given.opening.mark, self.state.style_of_lengths
        self.frame.write(
            path,
            lambda: print_seen(scene, Path(path), mark, layers=layers, within=within, lengths=style),
            self.ask_print,
        )

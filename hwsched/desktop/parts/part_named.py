"""The catalogue is gone to for a part that is named elsewhere: by find, the release gate, or what runs short."""

from collections.abc import Sequence

from hwsched.desktop.parts.parts_window import PartsWindow


def show_named(page: PartsWindow, thing: str | Sequence[str]) -> None:
    """Choose the part that is named, of several the first; what narrows the list is taken away where it hides it."""
    numbers = [thing] if isinstance(thing, str) else list(thing)
    number = next((each for each in numbers if each in page.form.catalogue.parts), "")
    if not number:
        return
    page.grid.choose(number)
    if not page.grid.in_view:
        page.search.clear()
        page.kinds.setCurrentIndex(0)
        page.grid.choose(number)
    page.grid.table.setFocus()

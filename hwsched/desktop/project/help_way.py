"""The ways to help: the key that shows the page of where one is, and finding pages by their words."""

from collections.abc import Iterator
from functools import partial

from hwsched.desktop.find.finding import Found
from hwsched.desktop.frame.frame import Frame
from hwsched.desktop.project.help_topics import pages, place_topic
from hwsched.language import phrase, to_phrase


def topic_here(frame: Frame) -> str:
    """Return the help page of what a person looks at: of the thing that is shown, else of the place."""
    here = frame.trail.here
    if here is None:
        return place_topic(())
    page = frame.pages.widgets.get(here.place)
    told = getattr(page, "help_topic", None)
    return (told() if callable(told) else "") or place_topic((here.place, frame.pages.room(here.place)))


def offer_help(frame: Frame) -> None:
    """Add the command that leads from any place to its page, and let pages be found by their words."""

    def found() -> Iterator[Found]:
        # A rule is found as such already.
        for each in pages():
            yield Found("Help", each.title, phrase(each.group), partial(frame.go, "help", each.name))

    frame.commands.add(
        "help-here",
        to_phrase("Help on this place"),
        to_phrase("What this place is for and how it is worked in"),
        lambda: frame.go("help", topic_here(frame)),
        menu=to_phrase("Help"),
        keys="F1",
        icon="help",
    )
    frame.finder.sources.append(found)

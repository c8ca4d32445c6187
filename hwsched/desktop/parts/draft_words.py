"""How an edit of a part that nobody has taken yet is called above its form."""

from hwsched.catalogue import kind_of
from hwsched.language import phrase, phrase_of_count
from hwsched.operations.parts.part_form import PartEdit
from hwsched.values import Part


def draft_said(asked: PartEdit | None, held: Part | None) -> str:
    """Return the heading of what was typed, and of the part as it is held; empty where there is neither."""
    if asked is not None and asked.new:
        kind = kind_of(asked.kind)
        like = (
            phrase("like {part}", part=asked.like)
            if asked.like
            else phrase("among {lower}", lower=phrase(kind.label).lower() if kind else asked.kind)
        )
        return phrase("New part {like}, not taken yet", like=like)
    if held is None:
        return ""
    n = len(asked.typed) if asked is not None else 0
    draft = phrase_of_count(" · {count} edit not taken yet", " · {count} edits not taken yet", n) if n else ""
    return f"{held.number} · {held.description}{draft}"

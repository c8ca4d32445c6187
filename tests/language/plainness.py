"""Finds words that did not come through the catalogue: in the stretched English every other one has an accent."""

import re

from hwsched.choices import BARE_UNITS

_ACCENT = re.compile("[áéîöüýçñšţÁÉÎÖÜÝÇÑŠŢ]")
_VOWEL = re.compile("[aeiouAEIOU]")
_WORDS = re.compile(r"[A-Za-z&áéîöüýçñšţÁÉÎÖÜÝÇÑŠŢ']{2,}")


class Pieces(tuple):
    """Pieces of data, with what they left of each text: the same texts stand on page after page."""

    def __init__(self, _pieces):
        self.left = {}


def unsaid(text, data=()):
    """Return the words of a text that have no accent, besides units and what is data, the longest first."""
    known = data.left if isinstance(data, Pieces) else {}
    if text not in known:
        known[text] = _unsaid(text, data)
    return known[text]


def _unsaid(text, data):
    if text in BARE_UNITS or not plain(text):
        return ""
    for each in data:
        text = text.replace(each, " ")
    return " ".join(plain(text))


def plain(text):
    """Return the words without an accent; those in capitals are marks and numbers of parts."""
    found = _WORDS.findall(text)
    return [word for word in found if _VOWEL.search(word) and not _ACCENT.search(word) and not word.isupper()]


def longest_first(found):
    """Return pieces of data in the order in which they are taken out of a text."""
    return Pieces(sorted({str(each) for each in found if each and len(str(each)) > 1}, key=len, reverse=True))
